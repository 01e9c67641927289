// SPDX-License-Identifier: MIT
#include "quantity/text.hpp"
#include "report/layout.hpp"
#include "report/uncertainty.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <numeric>

namespace faywright {

namespace {

constexpr std::size_t label_width = 36;

/// Two digits, of what is missing where that is little.
std::string percent(double share) {
    const double missing = 1.0 - share;
    const int more = share > 0.9 && missing > 0.0 ? static_cast<int>(-std::floor(std::log10(missing))) - 1 : 0;
    return print_number(100.0 * share, 2 + more) + " %";
}

/// A share of variance as a person reads it: whole percents.
std::string whole_percent(double share) { return fmt::format("{:.0f} %", 100.0 * share); }

std::string events_text(const Uncertainty& u) {
    std::string out = "\n  HOW LIKELY in the joint's life; each bound with 95 % confidence\n";
    for (const auto& event : u.events)
        out += wrapped(likelihood_text(event), "  " + fitted(event.info->title, label_width), std::string(label_width + 2, ' '));
    out += wrapped(
        "only these are drawn: fatigue, bearing, tear-out, the rail's section, the nut and its thread are not, so this is no probability "
        "that "
        "the joint holds",
        "  ", "  ");
    return out + wrapped("the bounds are those of the drawing alone; what the assumed distributions leave open is not in them", "  ", "  ");
}

std::string responses_text(const Uncertainty& u) {
    std::string out = "\n  " + fitted("HOW MUCH", label_width);
    for (const auto* head : {"mean", "dev.", "5 %", "50 %", "95 %"}) out += fitted_right(head, 8);
    out += '\n';
    for (const auto& r : u.responses) {
        if (r.barred != nullptr) {
            out += wrapped(fmt::format("{}: not counted: {}", r.info->title, r.barred), "  ", "      ");
            continue;
        }
        const auto unit = in_customary_unit(r.mean).unit;
        out += "  " + fitted(fmt::format("{}{}", r.info->title, unit.empty() ? "" : ", " + unit), label_width);
        for (const auto& value : {r.mean, r.deviation, r.low, r.median, r.high})
            out += fitted_right(print_number(in_unit_of(value, r.mean).number, 3), 8);
        out += '\n';
    }
    return out;
}

std::string ranking_text(const Uncertainty& u, const ResponseTold& r) {
    if (r.barred != nullptr) return "";
    std::string out = fmt::format("\n  WHY it scatters: {}\n", r.info->title);
    if (r.ranking.shares.empty()) return out + "  it does not vary, or too few joints were drawn\n";
    std::vector<std::size_t> order(u.inputs.size());
    std::iota(order.begin(), order.end(), 0U);
    std::stable_sort(order.begin(), order.end(), [&](auto a, auto b) { return r.ranking.shares[a] > r.ranking.shares[b]; });
    std::string small;
    for (const auto i : order) {
        const auto share = r.ranking.shares[i];
        if (share >= 0.005)
            out += fmt::format("  {} {}\n", fitted_right(whole_percent(share), 6), u.inputs[i].info->title);
        else
            small += (small.empty() ? "" : ", ") + std::string(u.inputs[i].info->id);
    }
    if (!small.empty()) out += wrapped(small, "  below half a percent each: ", "      ");
    out += wrapped(fmt::format("explained by straight lines (R2){}", r.ranking.explained < 0.8
                                                                         ? ": the rest is curvature and interplay, so take the order with "
                                                                           "care"
                                                                         : ""),
                   fmt::format("  {} ", fitted_right(whole_percent(r.ranking.explained), 6)), "         ");
    return out;
}

}  // namespace

std::string likelihood_text(const EventTold& event) {
    const auto& p = event.proportion;
    if (event.barred != nullptr) return std::string("not counted: ") + event.barred;
    if (p.samples == 0) return "nothing was drawn";
    if (p.happened == 0) return fmt::format("none seen: fewer than {}", percent(p.high()));
    if (p.happened == p.samples) return fmt::format("always seen: more than {}", percent(p.low()));
    return fmt::format("{}, from {} to {}", percent(p.estimate()), percent(p.low()), percent(p.high()));
}

std::string distribution_text(const InputTold& input) {
    const auto first = print(input.first), second = print(input.second, 3);
    switch (input.shape) {
        case Shape::normal: return fmt::format("normal, mean {}, standard deviation {}", first, second);
        case Shape::log_normal: return fmt::format("log-normal, median {}, standard deviation of the logarithm {}", first, second);
        case Shape::uniform: return fmt::format("uniform from {} to {}", first, second);
    }
    return "";
}

std::string uncertainty_text(const Uncertainty& u) {
    std::string out = fmt::format("\nUNCERTAINTY  {} joints drawn, seed {}\n", u.done, u.seed);
    if (!u.complete()) out += fmt::format("  INCOMPLETE: stopped after {} of {} joints\n", u.done, u.wanted);
    out += events_text(u) + responses_text(u);
    for (const auto& response : u.responses) out += ranking_text(u, response);
    out += wrapped(fmt::format("shares are {}", ranking_method), "  ", "  ");
    out += "\n  INPUTS and what their distributions stand on\n";
    for (const auto& input : u.inputs)
        out += wrapped(
            fmt::format("{}: {} ({}: {})", input.info->title, distribution_text(input), word(input.info->basis), input.info->basis_words),
            "  ", "      ");
    out += "\n  HOW the sampling takes the joint\n";
    for (const auto& note : uncertainty_notes()) out += wrapped(note, "  * ", "    ");
    return out;
}

}  // namespace faywright
