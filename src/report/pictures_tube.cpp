// SPDX-License-Identifier: MIT
#include "quantity/text.hpp"
#include "report/chart.hpp"
#include "report/page.hpp"
#include "report/pictures.hpp"

#include <fmt/format.h>

namespace faywright {

namespace {

/// A small length to a hundredth of a millimetre.
std::string hundredths(Length length) { return fmt::format("{:.2f} mm", in_mm(abs(length))); }

/// How a gap shows: between the walls the tube is too short or too long, through them it stands out or not.
std::string gap_text(const State& s, Length gap) {
    const bool is_short = gap > mm(0);
    if (s.tube_passes_walls()) return (is_short ? "short of the walls by " : "stands out by ") + hundredths(gap);
    return (is_short ? "too short by " : "too long by ") + hundredths(gap);
}

/// A length with its tolerance: a bar to the least, and the band in which it ends.
struct Band {
    std::string words, numbers;
    Length least, greatest;
    Fill fill;
};

std::vector<Band> bands_of(const State& s) {
    const auto& section = *s.joint->section;
    const auto& check = s.tube.length_check;
    const bool through = s.tube_passes_walls();
    const auto height = through ? section.height : section.inside_height();
    const auto with = [](Length length, Length tolerance) {
        return fmt::format("{} ± {}", dimension_text(length), dimension_text(tolerance));
    };
    std::vector<Band> out{{through ? "section, outside" : "cavity between the walls", with(height, section.height_tolerance),
                           height - section.height_tolerance, height + section.height_tolerance, Fill::aluminium},
                          {"crush tube", with(s.tube.length, section.tube.length_tolerance), s.tube.length - section.tube.length_tolerance,
                           s.tube.length + section.tube.length_tolerance, Fill::tube}};
    if (!through)
        out.push_back({"length the walls allow",
                       fmt::format("{} to {}", dimension_text(check.length_least), dimension_text(check.length_greatest)),
                       check.length_least, check.length_greatest, Fill::pale});
    return out;
}

std::string fit_words(const State& s) {
    const auto& check = s.tube.length_check;
    const char* is = s.tube_passes_walls() ? "" : "is ";
    const auto ends = fmt::format("At one extreme of tolerance the tube {}{}, at the other it {}{}", is, gap_text(s, check.gap_greatest),
                                  is, gap_text(s, check.gap_least));
    return s.tube_passes_walls() ? ends + "." : ends + fmt::format("; the walls allow {} either way.", hundredths(check.allowed_gap));
}

std::string cutting_words(const State& s) {
    const auto& section = *s.joint->section;
    const auto& check = s.tube.length_check;
    const auto square = fmt::format("ends square within {} mm", dimension_text(section.tube.squareness));
    if (s.tube_passes_walls())
        return fmt::format("Cut each tube to {} ± {} mm, {}.", dimension_text(s.tube.length), dimension_text(section.tube.length_tolerance),
                           square);
    return fmt::format("Cut each tube to its measured cavity, within {}, {}.", hundredths(check.allowed_gap), square);
}

}  // namespace

std::optional<Drawing> tube_fit_picture(const Assessment& a) {
    const auto& s = a.state;
    if (!s.tube.present) return std::nullopt;
    const auto bands = bands_of(s);
    const auto& check = s.tube.length_check;
    auto least = bands.front().least, greatest = bands.front().greatest;
    for (const auto& band : bands) {
        least = min(least, band.least);
        greatest = max(greatest, band.greatest);
    }
    const auto margin = max(0.08 * (greatest - least), mm(0.01));
    const auto axis = Axis<Length>::even(least - margin, greatest + margin, mm(1), mm(62), mm(126), 5);
    const double enlarged = (axis.at(axis.greatest()) - axis.at(axis.least())) / (axis.greatest() - axis.least());

    Drawing drawing("Length of the crush tube against the section", fit_words(s), 1.0);
    const auto row = mm(15), start = mm(48);
    const auto bottom = -row * static_cast<double>(bands.size()) - mm(2);
    draw_scale_below(drawing, axis.scale(), bottom, mm(2), "length from the end at the left, mm");
    for (std::size_t i = 0; i < bands.size(); ++i) {
        const auto& band = bands[i];
        const auto top = -row * static_cast<double>(i), low = top - mm(6);
        drawing.text({mm(0), top - mm(2.4)}, band.words, chart_text);
        drawing.text({mm(0), top - mm(6)}, band.numbers + " mm", chart_text);
        drawing.rectangle({start, low}, {axis.at(band.least), top}, Fill::none);
        drawing.rectangle({axis.at(band.least), low}, {axis.at(band.greatest), top}, band.fill);
        // Broken: what lies between the common face and the tolerances is left out.
        for (const auto& x : {start + mm(4), start + mm(5.5)})
            drawing.path({{x - mm(0.6), low - mm(1)},
                          {x + mm(0.8), 0.5 * (top + low) - mm(0.6)},
                          {x - mm(0.8), 0.5 * (top + low) + mm(0.6)},
                          {x + mm(0.6), top + mm(1)}},
                         Pen::thin);
    }
    drawing.line({start, mm(2)}, {start, bottom}, Pen::outline);

    // Gaps at the extremes: shortest tube in the highest cavity, longest in the lowest.
    const auto& cavity = bands[0];
    const auto& tube = bands[1];
    const auto gap = [&](Length from, Length to, Length y, const std::string& words) {
        const auto x1 = axis.at(from), x2 = axis.at(to);
        drawing.line({x1, -row}, {x1, y}, Pen::thin);
        drawing.line({x2, -mm(6)}, {x2, y}, Pen::thin);
        drawing.arrow({x1, y}, {x2, y}, Pen::thin);
        drawing.arrow({x2, y}, {x1, y}, Pen::thin);
        drawing.text({max(x1, x2) + mm(1), y - 0.35 * tick_text}, words, tick_text);
    };
    gap(tube.least, cavity.greatest, -mm(9), gap_text(s, check.gap_greatest));
    gap(tube.greatest, cavity.least, -mm(12.5), gap_text(s, check.gap_least));

    auto below =
        draw_paragraph(drawing, {mm(0), bottom - mm(10)},
                       fmt::format("Exaggerated: tolerances are drawn {} times as large as they are; the rest is left out at the breaks.",
                                   print_number(enlarged, 2)),
                       tick_text);
    below = draw_paragraph(drawing, {mm(0), below}, fit_words(s), tick_text);
    draw_paragraph(drawing, {mm(0), below}, cutting_words(s), tick_text);
    return drawing;
}

}  // namespace faywright
