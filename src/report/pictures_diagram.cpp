// SPDX-License-Identifier: MIT
#include "assess/clamp_needed.hpp"
#include "quantity/text.hpp"
#include "report/chart.hpp"
#include "report/page.hpp"
#include "report/pictures.hpp"

#include <fmt/format.h>

namespace faywright {

namespace {

/// Bolt and parts as two springs: the clamp lengthens the one and shortens the other.
struct Springs {
    Resilience bolt, parts;

    [[nodiscard]] Length stretched(Force clamp) const { return bolt * clamp; }
    /// Elongation at which the parts, clamped by `clamp`, press with `force` only.
    [[nodiscard]] Length relieved(Force clamp, Force force) const { return bolt * clamp + parts * (clamp - force); }
};

std::string diagram_words(const State& s, const Springs& springs, const WorstPull& worst) {
    const auto words = fmt::format("The bolt stretches {} and the parts give {} under the greatest clamp of {}; the least is {}. ",
                                   told(Value(springs.stretched(s.greatest)), 3), told(Value(springs.parts * s.greatest), 3),
                                   told(Value(s.greatest), 3), told(Value(s.least_clamp()), 3));
    if (worst.pull <= newton(0)) return words + "No load pulls on a bolt.";
    return words + fmt::format("A pull of {} leaves {} of the least clamp and brings the bolt to {} at most.", told(Value(worst.pull), 3),
                               told(Value(worst.clamp_left), 3), told(Value(worst.bolt_most), 3));
}

struct Key {
    Mark mark;
    std::string words;
};

std::vector<Key> keys_of(const State& s, const WorstPull& worst) {
    std::vector<Key> out;
    out.push_back({Mark::disc,
                   fmt::format("clamp without load: least {}, greatest {}", told(Value(s.least_clamp()), 3), told(Value(s.greatest), 3))});
    if (worst.pull <= newton(0)) return out;
    out.push_back(
        {Mark::square, fmt::format("clamp left of the least: {}; share of the pull off the clamp {}: {}", told(Value(worst.clamp_left), 3),
                                   print_number(s.clamp_share, 3), told(Value(worst.off_clamp), 3))});
    out.push_back(
        {Mark::triangle, fmt::format("most force in the bolt: {}; share of the pull to the bolt {}: {}", told(Value(worst.bolt_most), 3),
                                     print_number(s.bolt_share, 3), told(Value(worst.to_bolt), 3))});
    return out;
}

std::string note_of(const State& s, const WorstPull& worst) {
    const auto factor = fmt::format("Load factor of the joint {}.", print_number(s.load_factor, 3));
    if (worst.pull <= newton(0)) return "No load pulls on a bolt: the diagram is drawn without. " + factor;
    auto out = fmt::format("Pull, with its factor: {} in {}. {}", told(Value(worst.pull), 3), bolt_case(*s.joint, worst.where), factor);
    if (!s.joint->overrides.introduction_factor)
        out += " Where the load enters between the plates is not known: bolt and clamp are each taken at the worse end.";
    return out;
}

}  // namespace

Drawing joint_diagram(const Assessment& a) {
    const auto& s = a.state;
    const auto height = mm(58);
    const auto worst = worst_pull(s);
    const Force least = s.least_clamp(), greatest = s.greatest, nothing = newton(0);
    const Springs springs{s.bolt_resilience, s.part_resilience};
    Drawing drawing("Force and elongation of a bolt and what it clamps", diagram_words(s, springs, worst), 1.0);

    const auto x =
        Axis<Length>::even(um(0), max(springs.relieved(greatest, nothing), springs.stretched(worst.bolt_most)), um(1), mm(14), mm(156), 8);
    const auto y = Axis<Force>::even(nothing, 1.03 * worst.bolt_most, kN(1), mm(0), height, 7);
    draw_scale_below(drawing, x.scale(), mm(0), height, "elongation, µm");
    draw_scale_left(drawing, y.scale(), mm(14), mm(156), "force of one bolt, kN");
    const auto on_bolt = [&](Force force) { return PlanePoint{x.at(springs.stretched(force)), y.at(force)}; };
    const auto on_parts = [&](Force clamp, Force force) { return PlanePoint{x.at(springs.relieved(clamp, force)), y.at(force)}; };

    // Between the parts' lines of least and greatest clamp lies every joint of this kind.
    drawing.polygon({on_bolt(least), on_parts(least, nothing), on_parts(greatest, nothing), on_bolt(greatest)}, Fill::pale, Pen::grid);
    drawing.line(on_bolt(least), on_parts(least, nothing), Pen::least);
    drawing.line(on_bolt(greatest), on_parts(greatest, nothing), Pen::greatest);
    drawing.line(on_bolt(nothing), on_bolt(worst.bolt_most), Pen::outline);
    const auto middle = on_bolt(0.6 * greatest);
    const bool steep = middle.x < mm(28);
    drawing.text({middle.x + (steep ? mm(3) : mm(-3)), middle.y}, "bolt", chart_text, steep ? Anchor::left : Anchor::right);
    // At two heights, that they stay apart where the band is narrow.
    const Force low = 0.02 * y.greatest(), high = 0.1 * y.greatest(), tall = static_cast<double>(chart_text / height) * y.greatest();
    drawing.text({on_parts(least, low).x + mm(2.5), y.at(low)}, "parts, least clamp", chart_text);
    drawing.text({on_parts(greatest, high + tall).x - mm(2), y.at(high)}, "parts, greatest clamp", chart_text, Anchor::right);

    for (const auto& clamp : {least, greatest}) draw_mark(drawing, on_bolt(clamp), Mark::disc);
    if (worst.pull > nothing) {
        // The pull takes from the least clamp along the parts' line, and adds to the greatest along the bolt's.
        drawing.arrow(on_bolt(least), on_parts(least, worst.clamp_left));
        drawing.arrow(on_bolt(greatest), on_bolt(worst.bolt_most));
        draw_mark(drawing, on_parts(least, worst.clamp_left), Mark::square);
        draw_mark(drawing, on_bolt(worst.bolt_most), Mark::triangle);
    }

    auto below = mm(-13);
    for (const auto& [mark, words] : keys_of(s, worst)) {
        draw_mark(drawing, {mm(2), below}, mark);
        drawing.text({mm(5), below - 0.35 * chart_text}, words, chart_text);
        below -= mm(4.4);
    }
    draw_paragraph(drawing, {mm(0), below + mm(2)}, note_of(s, worst), tick_text);
    return drawing;
}

}  // namespace faywright
