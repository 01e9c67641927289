// SPDX-License-Identifier: MIT
#include "report/chart.hpp"

#include "quantity/characters.hpp"
#include "quantity/text.hpp"
#include "report/layout.hpp"

#include <fmt/format.h>

#include <cmath>

namespace faywright {

namespace {

/// The least of 1, 2 and 5 times a power of ten that is no less.
double round_step(double step) {
    const double power = std::pow(10.0, std::floor(std::log10(step)));
    for (const double times : {1.0, 2.0, 5.0})
        if (times * power >= step * (1.0 - 1e-9)) return times * power;
    return 10.0 * power;
}

}  // namespace

Length Scale::at(double value) const {
    const double within = std::clamp(value, least, greatest);
    const double share = decades ? std::log(within / least) / std::log(greatest / least) : (within - least) / (greatest - least);
    return from + share * (to - from);
}

Scale even_scale(double least, double greatest, Length from, Length to, int steps) {
    const double width = greatest > least ? greatest - least : std::max(std::abs(least), 1.0);
    const double step = round_step(width / steps);
    const auto first = std::floor(least / step + 1e-9);
    const auto last = std::max(std::ceil(greatest / step - 1e-9), first + 1.0);
    Scale out{first * step, last * step, from, to, false, {}};
    const auto count = static_cast<int>(last - first);
    for (int i = 0; i <= count; ++i) {
        const double value = (first + i) * step;
        out.ticks.push_back({value, print_number(value, 7)});
    }
    return out;
}

Scale decade_scale(double least, double greatest, Length from, Length to) {
    Scale out{least, greatest, from, to, true, {}};
    for (int power = static_cast<int>(std::floor(std::log10(least))); std::pow(10.0, power) <= greatest * (1.0 + 1e-9); ++power)
        for (const double times : {1.0, 2.0, 5.0}) {
            const double value = times * std::pow(10.0, power);
            if (value >= least * (1.0 - 1e-9) && value <= greatest * (1.0 + 1e-9)) out.ticks.push_back({value, print_number(value, 4)});
        }
    return out;
}

void draw_scale_below(Drawing& drawing, const Scale& scale, Length y, Length top, const std::string& words) {
    for (const auto& tick : scale.ticks) {
        const auto x = scale.at(tick.value);
        drawing.line({x, y}, {x, top}, Pen::grid);
        drawing.line({x, y}, {x, y - mm(1)});
        drawing.text({x, y - mm(1.6) - tick_text}, tick.label, tick_text, Anchor::middle);
    }
    drawing.line({scale.from, y}, {scale.to, y});
    if (!words.empty())
        drawing.text({0.5 * (scale.from + scale.to), y - mm(3) - tick_text - chart_text}, words, chart_text, Anchor::middle);
}

void draw_scale_left(Drawing& drawing, const Scale& scale, Length x, Length right, const std::string& words) {
    Length widest = mm(0);
    for (const auto& tick : scale.ticks) {
        const auto y = scale.at(tick.value);
        drawing.line({x, y}, {right, y}, Pen::grid);
        drawing.line({x, y}, {x - mm(1), y});
        drawing.text({x - mm(1.6), y - 0.35 * tick_text}, tick.label, tick_text, Anchor::right);
        widest = max(widest, width_of(tick.label, tick_text));
    }
    drawing.line({x, scale.from}, {x, scale.to});
    if (!words.empty()) drawing.text({x - mm(2.6) - widest, 0.5 * (scale.from + scale.to)}, words, chart_text, Anchor::middle, true);
}

void draw_mark(Drawing& drawing, PlanePoint at, Mark mark) {
    const auto r = mm(1.1);
    switch (mark) {
        case Mark::disc: return drawing.circle(at, r, Pen::thin, Fill::layer);
        case Mark::ring: return drawing.circle(at, r, Pen::outline, Fill::fastener);
        case Mark::square:
            return drawing.rectangle({at.x - 0.9 * r, at.y - 0.9 * r}, {at.x + 0.9 * r, at.y + 0.9 * r}, Fill::fastener, Pen::outline);
        case Mark::triangle:
            return drawing.polygon({{at.x - r, at.y - 0.8 * r}, {at.x + r, at.y - 0.8 * r}, {at.x, at.y + r}}, Fill::fastener);
        case Mark::cross:
            drawing.line({at.x - 0.8 * r, at.y - 0.8 * r}, {at.x + 0.8 * r, at.y + 0.8 * r}, Pen::outline);
            return drawing.line({at.x - 0.8 * r, at.y + 0.8 * r}, {at.x + 0.8 * r, at.y - 0.8 * r}, Pen::outline);
    }
}

std::string cut(std::string_view text, std::size_t most) { return display_width(text) <= most ? std::string(text) : fitted(text, most); }

std::string bolt_case(const Joint& joint, const Where& where) {
    return fmt::format("\"{}\", bolt {}", cut(joint.load_cases[static_cast<std::size_t>(where.load_case)].name, 40), where.bolt + 1);
}

Length draw_paragraph(Drawing& drawing, PlanePoint top, std::string_view words, Length height) {
    const auto columns = static_cast<std::size_t>((chart_width - top.x) / width_of("m", height));
    const auto lines = wrapped(words, "", "", columns);
    auto y = top.y;
    for (std::size_t at = 0; at < lines.size();) {
        const auto end = lines.find('\n', at);
        y -= 1.4 * height;
        drawing.text({top.x, y}, lines.substr(at, end - at), height);
        at = end + 1;
    }
    return y;
}

}  // namespace faywright
