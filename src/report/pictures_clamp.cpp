// SPDX-License-Identifier: MIT
#include "assess/clamp_needed.hpp"
#include "quantity/text.hpp"
#include "report/chart.hpp"
#include "report/page.hpp"
#include "report/pictures.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace faywright {

namespace {

struct LimitLine {
    Force force;
    std::string words;
    Pen pen;
};

/// From the least to the greatest.
std::vector<LimitLine> limit_lines(const Assessment& a, const ClampLimits& limits) {
    std::vector<LimitLine> out;
    if (limits.slip && limits.slip->clamp) out.push_back({*limits.slip->clamp, "slip asks for", Pen::limit});
    if (limits.separation.clamp && *limits.separation.clamp > newton(0))
        out.push_back({*limits.separation.clamp, "closed faces ask for", Pen::load});
    if (a.state.is_open_cavity()) out.push_back({a.state.open_capacity, "the open walls stand", Pen::hidden});
    out.push_back({limits.tightening, "bolt, tightened:", Pen::centre});
    if (limits.working.clamp) out.push_back({*limits.working.clamp, "bolt, loaded:", Pen::greatest});
    std::stable_sort(out.begin(), out.end(), [](const LimitLine& x, const LimitLine& y) { return x.force < y.force; });
    return out;
}

/// What the lines stand for, and why one is not there.
std::vector<std::string> notes_of(const Assessment& a, const ClampLimits& limits) {
    const auto& joint = *a.state.joint;
    std::vector<std::string> out;
    out.emplace_back(
        "* least of life, load apart: with it slip and separation are checked. The last row has the worst load in it already.");
    if (a.state.is_open_cavity() && a.state.open_capacity < a.state.settled_least)
        out.push_back(fmt::format("No more than the open walls stand is counted on: {}.", told(Value(a.state.least_clamp()), 3)));
    if (limits.slip && limits.slip->clamp)
        out.push_back(fmt::format("Slip asks most in {}: {} with its factor.", bolt_case(joint, limits.slip->where),
                                  told(Value(*limits.slip->clamp), 3)));
    else if (limits.slip)
        out.emplace_back("Slip has no line: no clamp is enough, the faces have no friction.");
    if (limits.slip_barred != nullptr)
        out.push_back(
            fmt::format("{}: {}.", limits.slip ? "At another plane friction is not counted on" : "No line for slip", limits.slip_barred));
    if (limits.separation.clamp && *limits.separation.clamp > newton(0))
        out.push_back(fmt::format("A pull opens the faces first in {}.", bolt_case(joint, limits.separation.where)));
    else
        out.emplace_back("No load pulls on a bolt: nothing opens the faces.");
    out.emplace_back(
        "Bolt, tightened: at its proof strength with the torsion of the wrench. Bolt, loaded: with half of it and the worst pull.");
    return out;
}

std::string clamp_words(const Assessment& a, const ClampLimits& limits) {
    const auto& least = a.clamp[checked_stage(a)];
    auto out = fmt::format("One bolt is tightened to {} to {}; the least clamp of life is {}, {}", told(Value(a.clamp[0].least), 3),
                           told(Value(a.clamp[0].greatest), 3), told(Value(least.least), 3), least.title);
    if (limits.slip && limits.slip->clamp) out += fmt::format("; slip asks for {}", told(Value(*limits.slip->clamp), 3));
    if (!limits.slip) out += "; friction is not counted on";
    if (limits.separation.clamp) out += fmt::format("; closed faces ask for {}", told(Value(*limits.separation.clamp), 3));
    return out + fmt::format("; the bolt stands {} while it is tightened.", told(Value(limits.tightening), 3));
}

}  // namespace

Drawing clamp_picture(const Assessment& a) {
    const auto limits = clamp_limits(a.state);
    const auto lines = limit_lines(a, limits);
    Drawing drawing("Clamp force of one bolt through life", clamp_words(a, limits), 1.0);
    const auto row = mm(6), least_column = mm(147), greatest_column = mm(161);
    const auto bottom = -row * static_cast<double>(a.clamp.size());
    auto most = newton(0), beyond = newton(0);
    for (const auto& stage : a.clamp) most = max(most, stage.greatest);
    for (const auto& line : lines) beyond = max(beyond, line.force);
    // A limit far off would leave no room for the bars.
    const auto axis = Axis<Force>::even(newton(0), max(min(beyond, 1.6 * most), most), kN(1), mm(58), mm(120));
    draw_scale_below(drawing, axis.scale(), bottom, mm(0), "clamp force, kN");

    const auto kilonewtons = [&](Force force) { return fmt::format("{:.{}f}", in_kN(force), most < kN(10) ? 2 : 1); };
    const auto checked = checked_stage(a);
    for (std::size_t i = 0; i < a.clamp.size(); ++i) {
        const auto& stage = a.clamp[i];
        const auto middle = -row * (static_cast<double>(i) + 0.5), base = middle - 0.35 * chart_text;
        drawing.text({mm(0), base}, fmt::format("{}{}", stage.title, i == checked ? " *" : ""), chart_text);
        drawing.rectangle({axis.at(stage.least), middle - mm(1.7)}, {axis.at(stage.greatest), middle + mm(1.7)},
                          i == checked              ? Fill::steel
                          : i + 1 == a.clamp.size() ? Fill::none
                                                    : Fill::pale);
        drawing.text({least_column, base}, kilonewtons(stage.least), chart_text, Anchor::right);
        drawing.text({greatest_column, base}, kilonewtons(stage.greatest), chart_text, Anchor::right);
    }
    drawing.text({least_column, mm(1)}, "kN: least", chart_text, Anchor::right);
    drawing.text({greatest_column, mm(1)}, "greatest", chart_text, Anchor::right);

    // The words of each line stand to its right, and those further left higher: no line crosses them.
    const auto step = mm(4.2);
    for (std::size_t i = 0; i < lines.size(); ++i) {
        const auto& [force, words, pen] = lines[i];
        const auto top = mm(4) + step * static_cast<double>(lines.size() - i);
        const bool holds = axis.holds(force);
        if (holds) drawing.line({axis.at(force), bottom}, {axis.at(force), top}, pen);
        drawing.text({axis.at(force) + mm(1), top - chart_text}, fmt::format("{} {}{}", words, told(Value(force), 3), holds ? "" : " →"),
                     chart_text);
    }
    auto below = bottom - mm(10);
    for (const auto& note : notes_of(a, limits)) below = draw_paragraph(drawing, {mm(0), below}, note, tick_text);
    return drawing;
}

}  // namespace faywright
