// SPDX-License-Identifier: MIT
#include "report/search.hpp"

#include "input/toml_writer.hpp"
#include "quantity/text.hpp"
#include "report/json.hpp"
#include "report/layout.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace faywright {

namespace {

/// The checks that govern the most of what fails, the most frequent first.
std::vector<std::pair<std::string_view, std::size_t>> by_check(const Tally& tally) {
    std::vector<std::pair<std::string_view, std::size_t>> out;
    const auto checks = all_checks();
    for (std::size_t i = 0; i < checks.size(); ++i)
        if (tally.failed_by[i] > 0) out.emplace_back(checks[i]->id, tally.failed_by[i]);
    std::stable_sort(out.begin(), out.end(), [](const auto& a, const auto& b) { return a.second > b.second; });
    return out;
}

std::string percent(std::size_t part, std::size_t whole) {
    const double share = 100.0 * static_cast<double>(part) / static_cast<double>(whole);
    return share > 0.0 && share < 1.0 ? "under 1 %" : share < 100.0 && share > 99.0 ? "over 99 %" : fmt::format("{:.0f} %", share);
}

std::string grouped(std::size_t number) {
    const auto text = fmt::format("{}", number);
    std::string out;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (i > 0 && (text.size() - i) % 3 == 0) out += ' ';
        out += text[i];
    }
    return out;
}

std::string objective_text(const SearchTask& task, const Candidate& candidate) {
    switch (task.objective) {
        case Objective::mass: return print(Value(candidate.bill.mass), 4);
        case Objective::parts: return fmt::format("{} parts", candidate.bill.pieces);
        case Objective::cost: return print_number(candidate.objective, 5);
    }
    return "";
}

std::string options_text(const SearchTask& task, const Candidate& candidate) {
    std::string out;
    const auto options = options_of(task.choices, candidate.index);
    for (std::size_t i = 0; i < options.size(); ++i)
        out += fmt::format("{}{} {}", out.empty() ? "" : "; ", task.choices[i].path, task.choices[i].names[options[i]]);
    return out;
}

std::string candidate_text(const SearchTask& task, const Candidate& candidate, const std::string& label) {
    return fmt::format("  {}{}{}  {}\n", fitted(label, 4), fitted_right(objective_text(task, candidate), 11),
                       fitted_right(fmt::format("{:.3f}", candidate.utilisation), 9), candidate.governing->id) +
           wrapped(options_text(task, candidate), "        ", "        ");
}

/// Why variants are refused before any check: some may be buildable and corrode too soon.
std::string refused_words(const SearchAnswer& answer) {
    return answer.refusals.contains("corrosion.life") ? "cannot be built or corrode too soon" : "cannot be built";
}

std::string why_not_text(const SearchTask& task, const SearchAnswer& answer) {
    std::string out = "\nWHY NOT: what becomes of the variants with each option\n";
    for (std::size_t i = 0; i < task.choices.size(); ++i) {
        out += wrapped(task.choices[i].path, "  ", "    ");
        for (std::size_t o = 0; o < task.choices[i].options.size(); ++o) {
            const auto& tally = answer.options[i][o];
            if (tally.variants == 0) continue;
            std::string words =
                tally.passed == 0 ? std::string("none passes") : fmt::format("{} pass", percent(tally.passed, tally.variants));
            std::size_t told = 0;
            for (const auto& [id, count] : by_check(tally)) {
                if (++told > 3) break;
                words += fmt::format("; fails {} in {}", id, percent(count, tally.variants));
            }
            if (tally.refused > 0) words += fmt::format("; {} in {}", refused_words(answer), percent(tally.refused, tally.variants));
            out += wrapped(words, fmt::format("    {}: ", task.choices[i].names[o]), "      ");
        }
    }
    if (!answer.refusals.empty()) {
        std::string reasons;
        for (const auto& [code, count] : answer.refusals)
            reasons += fmt::format("{}{} {}", reasons.empty() ? "" : ", ", grouped(count), code);
        out += wrapped(fmt::format("{}; the first: {}", reasons, answer.refusal_example), fmt::format("  {}: ", refused_words(answer)),
                       "    ");
    }
    return out;
}

json::Json candidate_json(const SearchTask& task, const Candidate& candidate) {
    json::Json out;
    const auto options = options_of(task.choices, candidate.index);
    for (std::size_t i = 0; i < options.size(); ++i) out["choices"][task.choices[i].path] = task.choices[i].names[options[i]];
    out["objective"] = candidate.objective;
    out["mass"] = json::of(candidate.bill.mass);
    out["parts"] = candidate.bill.pieces;
    out["utilisation"] = candidate.utilisation;
    out["governing"] = candidate.governing->id;
    return out;
}

json::Json tally_json(const Tally& tally) {
    json::Json out{{"variants", tally.variants}, {"passed", tally.passed}, {"failed", tally.failed}, {"refused", tally.refused}};
    out["failed_by"] = json::Json::object();
    for (const auto& [id, count] : by_check(tally)) out["failed_by"][std::string(id)] = count;
    return out;
}

}  // namespace

std::string search_text(const SearchTask& task, const SearchAnswer& answer, const std::string& title) {
    std::string out = wrapped(title,
                              !answer.best.empty() ? "FOUND  "
                              : answer.complete    ? "NONE PASSES  "
                                                   : "NONE FOUND SO FAR  ",
                              "      ");
    if (!answer.complete)
        out += wrapped(fmt::format("INCOMPLETE: ended early after {} of {} variants; what is not told was not looked at",
                                   grouped(answer.seen), grouped(answer.variants)));
    if (task.quick)
        out += wrapped(fmt::format("{} variants, quick: what cannot be among the best was not assessed", grouped(answer.variants)));
    else
        out += wrapped(fmt::format("{} variants: {} pass, {} fail, {} {}", grouped(answer.total.variants), grouped(answer.total.passed),
                                   grouped(answer.total.failed), grouped(answer.total.refused), refused_words(answer)));
    out += wrapped(
        fmt::format("every check at a utilisation of {} or less; least {} first", print_number(task.target, 3), word_of(task.objective)));
    if (!answer.best.empty()) {
        out += fmt::format("\nBEST  {}{}  governing check\n", fitted_right(word_of(task.objective), 11), fitted_right("use", 9));
        for (std::size_t i = 0; i < answer.best.size(); ++i) out += candidate_text(task, answer.best[i], fmt::format("{}", i + 1));
    }
    if (!answer.front.empty()) {
        out += fmt::format("\nFRONT of {} against reserve: what less utilisation costs\n", word_of(task.objective));
        constexpr std::size_t most = 12;
        const auto step = std::max<std::size_t>(1, (answer.front.size() + most - 1) / most);
        for (std::size_t i = 0; i < answer.front.size(); i += step) out += candidate_text(task, answer.front[i], "");
    }
    if (!task.quick) out += why_not_text(task, answer);
    out += '\n';
    out += wrapped(
        "Mass and parts are those of bolts, nuts, washers, tubes, layers and plates; a plate that runs on has no mass here, nor has a "
        "layer.");
    for (const auto& caution : cautions()) out += wrapped(caution, "caution: ", "  ");
    return out;
}

std::string search_json(const SearchTask& task, const SearchAnswer& answer, const std::string& title) {
    json::Json out;
    out["program"] = "faywright";
    out["version"] = FAYWRIGHT_VERSION;
    out["joint"] = title;
    out["objective"] = word_of(task.objective);
    out["target"] = task.target;
    out["complete"] = answer.complete;
    out["variants"] = answer.variants;
    out["best"] = json::Json::array();
    for (const auto& candidate : answer.best) out["best"].push_back(candidate_json(task, candidate));
    if (!task.quick) {
        out["seen"] = answer.seen;
        out["front"] = json::Json::array();
        for (const auto& candidate : answer.front) out["front"].push_back(candidate_json(task, candidate));
        out["total"] = tally_json(answer.total);
        out["why_not"] = json::Json::array();
        for (std::size_t i = 0; i < task.choices.size(); ++i)
            for (std::size_t o = 0; o < task.choices[i].options.size(); ++o) {
                auto one = tally_json(answer.options[i][o]);
                one["choice"] = task.choices[i].path;
                one["option"] = task.choices[i].names[o];
                out["why_not"].push_back(std::move(one));
            }
        out["refusals"] = json::Json::object();
        for (const auto& [code, count] : answer.refusals) out["refusals"][code] = count;
    }
    out["own_tables"] = answer.own_tables;
    out["warnings"] = search_warnings(task);
    out["cautions"] = cautions();
    return json::printed(out);
}

std::string variant_file(const SearchTask& task, const Candidate& candidate, const std::vector<std::string>& own_tables) {
    std::string own;
    for (const auto& row : own_tables) own += fmt::format("# With the own row {}\n", row);
    const auto variant = variant_of(task.root, task.choices, options_of(task.choices, candidate.index));
    return fmt::format("# Chosen by faywright size: {}\n{}\n{}", options_text(task, candidate), own, TomlWriter(variant).text());
}

}  // namespace faywright
