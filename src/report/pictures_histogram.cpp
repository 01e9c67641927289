// SPDX-License-Identifier: MIT
#include "quantity/text.hpp"
#include "report/chart.hpp"
#include "report/page.hpp"
#include "report/pictures.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace faywright {

namespace {

std::string percent(double share) { return fmt::format("{} %", print_number(100.0 * share, 2)); }

}  // namespace

Drawing histogram_picture(const ResponseTold& r) {
    const auto title = fmt::format("How the {} scatters", r.info->title);
    if (r.barred != nullptr) {
        Drawing drawing(title, fmt::format("Not counted: {}.", r.barred), 1.0);
        draw_paragraph(drawing, {mm(0), mm(0)}, drawing.description());
        return drawing;
    }
    Drawing drawing(title,
                    fmt::format("One in twenty is below {}, half below {}, one in twenty above {}.", told(r.low, 3), told(r.median, 3),
                                told(r.high, 3)),
                    1.0);
    const auto& bins = r.histogram;
    if (bins.shares.size() < 2) {
        draw_paragraph(drawing, {mm(0), mm(0)}, "The samples do not differ.");
        return drawing;
    }
    // All in the unit of the median, that none is told in another.
    const auto number_of = [&](const Value& value) { return in_unit_of(value, r.median).number; };
    const auto unit = in_customary_unit(r.median).unit;
    const double least = number_of(bins.least), greatest = number_of(bins.greatest);
    const auto x = Axis<double>::even(least, greatest, 1.0, mm(16), mm(152), 8);
    const auto top = *std::max_element(bins.shares.begin(), bins.shares.end());
    const auto y = Axis<double>::even(0.0, 100.0 * top, 1.0, mm(0), mm(60), 5);
    draw_scale_below(drawing, x.scale(), mm(0), mm(60),
                     unit.empty() ? std::string(r.info->title) : fmt::format("{}, {}", r.info->title, unit));
    draw_scale_left(drawing, y.scale(), mm(16), mm(152), "share of the samples in a bar, %");
    const double width = (greatest - least) / static_cast<double>(bins.shares.size());
    for (std::size_t i = 0; i < bins.shares.size(); ++i) {
        const double from = least + width * static_cast<double>(i);
        drawing.rectangle({x.at(from), mm(0)}, {x.at(from + width), y.at(100.0 * bins.shares[i])}, Fill::pale, Pen::thin);
    }
    const std::array<std::pair<const Value*, const char*>, 3> marks{{{&r.low, "5 %"}, {&r.median, "50 %"}, {&r.high, "95 %"}}};
    for (std::size_t i = 0; i < marks.size(); ++i) {
        const auto& [value, words] = marks[i];
        const auto place = x.at(number_of(*value)), high = mm(63) + mm(4.2) * static_cast<double>(marks.size() - 1 - i);
        drawing.line({place, mm(0)}, {place, high + chart_text}, i == 1 ? Pen::outline : Pen::limit);
        drawing.text({place + mm(1), high}, fmt::format("{} below {}", words, told(*value, 3)), chart_text);
    }
    draw_paragraph(drawing, {mm(0), mm(-9)},
                   fmt::format("Not drawn: {} of the samples below, {} above.", percent(bins.below), percent(std::max(bins.above, 0.0))),
                   tick_text);
    return drawing;
}

}  // namespace faywright
