// SPDX-License-Identifier: MIT
#include "quantity/text.hpp"
#include "report/chart.hpp"
#include "report/corrosion.hpp"
#include "report/page.hpp"
#include "report/pictures.hpp"
#include "report/typography.hpp"

#include <fmt/format.h>

namespace faywright {

namespace {

/// What is used up of a thickness has a course; paint and stainless have not.
bool has_course(const MemberOutlook& m) { return !m.lasts && m.thickness > mm(0); }

/// The course from left to right, to its end or that of the axis.
std::vector<PlanePoint> curve_of(const Course& course, const Axis<Duration>& time, const Axis<double>& used) {
    std::vector<PlanePoint> out;
    for (const auto& t : {years(0), course.bend, min(course.end, time.greatest())})
        if (time.holds(t) && t <= course.end) out.push_back({time.at(t), used.at(100.0 * course.used(t))});
    return out;
}

/// One part: its name, what it has to lose and for how long, and below the courses of the estimate and of both ends of the rates.
void draw_member(Drawing& drawing, const MemberOutlook& m, PlanePoint corner, Duration until, Duration promised) {
    const auto width = mm(64), height = mm(26);
    const auto time = Axis<Duration>::even(years(0), until, years(1), corner.x, corner.x + width, 5);
    const auto used = Axis<double>::even(0.0, 100.0, 1.0, corner.y, corner.y + height, 2);
    const auto right = corner.x + width, top = corner.y + height;
    drawing.text({corner.x - mm(7), top + mm(10)}, cut(m.name, 42), chart_text);
    drawing.text({corner.x - mm(7), top + mm(6.2)}, cut(typographic(m.stake), 47), tick_text);
    drawing.text({corner.x - mm(7), top + mm(2.6)}, fmt::format("{} years: {}", life_band_text(m), m.passes ? "lasts" : "DOES NOT LAST"),
                 tick_text);
    const auto fast = curve_of(m.fast, time, used), central = curve_of(m.central, time, used), slow = curve_of(m.slow, time, used);
    // Where the bad end is reached, the band goes on below the line of 100 %.
    auto band = fast;
    band.push_back({slow.back().x, fast.back().y});
    band.insert(band.end(), slow.rbegin(), slow.rend());
    drawing.polygon(band, Fill::pale, Pen::grid);
    draw_scale_below(drawing, time.scale(), corner.y, top, "");
    draw_scale_left(drawing, used.scale(), corner.x, right, "");
    drawing.line({corner.x, used.at(100.0)}, {right, used.at(100.0)});
    drawing.path(fast, Pen::greatest);
    drawing.path(slow, Pen::greatest);
    drawing.path(central, Pen::outline);
    drawing.line({time.at(promised), corner.y}, {time.at(promised), top + mm(1)}, Pen::limit);
    if (time.holds(m.life)) draw_mark(drawing, {time.at(m.life), used.at(100.0)}, m.passes ? Mark::disc : Mark::cross);
}

}  // namespace

Drawing life_picture(const ExposureOutlook& outlook, Duration promised) {
    const auto& first = outlook.first_to_go();
    const auto title = fmt::format("What is used up over the years in \"{}\"", shown(outlook.exposure->name));
    const auto words = first.lasts ? std::string("No part has an end in sight.")
                                   : fmt::format("First to go: {}, {}: {} years, of {} promised; {}.", first.name, typographic(first.stake),
                                                 life_band_text(first), told(Value(promised)),
                                                 outlook.passes ? "every part lasts" : "not every part lasts");
    Drawing drawing(title, words, 1.0);
    auto longest = promised;
    for (const auto& m : outlook.members)
        if (has_course(m)) longest = max(longest, m.life);
    const auto until = max(min(1.1 * longest, 2.5 * promised), 1.25 * promised);

    std::size_t drawn = 0;
    const auto across = mm(82), down = mm(47);
    for (const auto& m : outlook.members) {
        if (!has_course(m)) continue;
        const auto line = drawn / 2 + 1, column = drawn % 2;
        draw_member(drawing, m, {mm(8) + static_cast<double>(column) * across, mm(10) - static_cast<double>(line) * down}, until, promised);
        ++drawn;
    }
    const auto lines = (drawn + 1) / 2;
    auto below = mm(3) - static_cast<double>(lines) * down;
    if (drawn > 0) {
        below = draw_paragraph(
            drawing, {mm(0), below},
            fmt::format("Across: years; dashed upright line: the promised {}. Up: % used up of the zinc, or of the pit depth that is "
                        "stood. Full line: "
                        "estimate; dashed: good and bad end of the rates. Disc: end of a life that keeps the promise; cross: of "
                        "one that does not.",
                        told(Value(promised))),
            tick_text);
    }
    for (const auto& m : outlook.members) {
        if (has_course(m)) continue;
        below =
            draw_paragraph(drawing, {mm(0), below},
                           m.lasts ? fmt::format("{}: {}; no end seen.", m.name, m.stake)
                                   : fmt::format("{}: {}, {} years; {}.", m.name, m.stake, life_band_text(m), m.passes ? "lasts" : "FAILS"),
                           tick_text);
    }
    return drawing;
}

}  // namespace faywright
