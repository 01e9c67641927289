// SPDX-License-Identifier: MIT
#include "quantity/text.hpp"
#include "report/chart.hpp"
#include "report/corrosion.hpp"
#include "report/page.hpp"
#include "report/pictures.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>

namespace faywright {

namespace {

/// Lives are told up to this, and drawn up to it.
const Duration longest_told = years(200);
/// Shorter ones stand on the lower edge and ask for no room.
const Duration shortest_drawn = years(0.1);

/// Years by decades, from the round number below the shortest life; what lies beyond an edge stands on it, and the edge says so.
Scale life_scale(Duration shortest, Length height) {
    double first = in_years(shortest_drawn);
    for (const double tick : {0.2, 0.5, 1.0, 2.0, 5.0, 10.0})
        if (years(tick) < shortest) first = tick;
    auto scale = decade_scale(first, in_years(longest_told), mm(0), height);
    scale.ticks.front().label = "≤ " + scale.ticks.front().label;
    scale.ticks.back().label = "≥ " + scale.ticks.back().label;
    return scale;
}

Mark mark_of(const MethodResult& r) { return r.passes ? Mark::disc : r.holds ? Mark::ring : Mark::cross; }

/// A rectangle of paper that words or a mark take up.
struct Box {
    Length left, right, low, high;

    [[nodiscard]] bool meets(const Box& other) const {
        return left < other.right && other.left < right && low < other.high && other.low < high;
    }
    [[nodiscard]] bool within(const Box& other) const {
        return left >= other.left && right <= other.right && low >= other.low && high <= other.high;
    }
};

Box around(PlanePoint at, Length half) { return {at.x - half, at.x + half, at.y - half, at.y + half}; }

/// Room for words near a point: the nearest place of those tried that is free.
struct Places {
    Box frame;
    std::vector<Box> taken = {};

    [[nodiscard]] PlanePoint find(PlanePoint about, Length width, Length height) const {
        static constexpr std::array<std::pair<double, double>, 12> directions{
            {{1, 0}, {1, 1}, {0, 1}, {-1, 1}, {-1, 0}, {-1, -1}, {0, -1}, {1, -1}, {2, 1}, {-2, 1}, {2, -1}, {-2, -1}}};
        for (int ring = 0; ring < 12; ++ring)
            for (const auto& [dx, dy] : directions) {
                const auto away = mm(3) + mm(1.8) * static_cast<double>(ring);
                PlanePoint middle{about.x + dx * (away + 0.5 * width - mm(0.8)), about.y + dy * away};
                const Box box{middle.x - 0.5 * width, middle.x + 0.5 * width, middle.y - 0.5 * height, middle.y + 0.5 * height};
                if (box.within(frame) && std::none_of(taken.begin(), taken.end(), [&](const Box& b) { return b.meets(box); }))
                    return middle;
            }
        return about;
    }
};

/// A method in the chart, and how it is called there.
struct Placed {
    const MethodResult* result;
    std::string label;
};

/// The best with each element, and the joint as written where that is not among them.
std::vector<Placed> placed(const IsolationRanking& ranking) {
    std::vector<Placed> out;
    bool written = false;
    for (const auto index : ranking.of_each_faying) {
        const auto& r = ranking.results[index];
        written = written || r.as_written;
        out.push_back({&r, fmt::format("{}{}", index + 1, r.as_written ? " W" : "")});
    }
    if (ranking.as_written && !written)
        out.push_back({&ranking.results[*ranking.as_written], fmt::format("{} W", *ranking.as_written + 1)});
    return out;
}

const char* verdict_of(const MethodResult& r) {
    return !r.refused.empty() ? "cannot be built" : r.passes ? "passes" : r.holds ? "does not last" : "does not hold";
}

/// A line for each method: number, mark, name, clamp, life, and what stands against it.
void draw_legend(Drawing& drawing, const std::vector<Placed>& list, Length top) {
    const auto clamp_column = mm(115), life_column = mm(125), words_column = mm(128);
    drawing.text({mm(16), top}, "method", tick_text);
    drawing.text({clamp_column, top}, "kN", tick_text, Anchor::right);
    drawing.text({life_column, top}, "years", tick_text, Anchor::right);
    drawing.line({mm(0), top - mm(1.2)}, {chart_width, top - mm(1.2)});
    auto base = top - mm(5);
    for (const auto& [result, label] : list) {
        drawing.text({mm(9), base}, label, tick_text, Anchor::right);
        drawing.text({mm(16), base}, cut(result->method.name(), 68), tick_text);
        if (result->refused.empty()) {
            draw_mark(drawing, {mm(12.5), base + 0.35 * tick_text}, mark_of(*result));
            drawing.text({clamp_column, base}, fmt::format("{:.1f}", in_kN(result->clamp)), tick_text, Anchor::right);
            drawing.text({life_column, base}, life_text(result->shortest_life()), tick_text, Anchor::right);
        }
        drawing.text({words_column, base},
                     cut(result->refused.empty() && !result->holds ? result->what_governs() : verdict_of(*result), 22), tick_text);
        base -= mm(4.2);
    }
}

}  // namespace

Drawing isolation_picture(const IsolationRanking& ranking) {
    const auto list = placed(ranking);
    const auto& best = ranking.best();
    Drawing drawing("Methods of isolation: what they leave of the clamp, and how long the joint lasts",
                    best.refused.empty()
                        ? fmt::format("The best is {}: {} of clamp and {} years to the first end of a part, of {} promised; it {}.",
                                      best.method.name(), told(Value(best.clamp), 3), life_text(best.shortest_life()),
                                      told(Value(ranking.promised)), best.passes ? "passes" : "does not pass")
                        : fmt::format("None can be built: {}.", best.refused),
                    1.0);
    auto clamp_most = newton(0);
    auto life_least = ranking.promised;
    for (const auto& [result, label] : list) {
        if (!result->refused.empty()) continue;
        clamp_most = max(clamp_most, result->clamp);
        if (result->shortest_life() > shortest_drawn) life_least = min(life_least, result->shortest_life());
    }
    const auto x = Axis<Force>::even(newton(0), max(1.05 * clamp_most, kN(1)), kN(1), mm(16), mm(156), 8);
    const Axis<Duration> y(life_scale(life_least, mm(80)), years(1));
    draw_scale_below(drawing, x.scale(), mm(0), mm(80), "least clamp of one bolt in its life, load apart, kN");
    draw_scale_left(drawing, y.scale(), mm(16), mm(156), "years to the first end of a part");
    drawing.line({mm(16), y.at(ranking.promised)}, {mm(156), y.at(ranking.promised)}, Pen::limit);

    const Box frame{mm(17), mm(160), mm(0.5), mm(84)};
    Places places{frame};
    const auto words = fmt::format("promised: {}", told(Value(ranking.promised)));
    drawing.text({mm(17), y.at(ranking.promised) + mm(0.8)}, words, tick_text);
    places.taken.push_back({mm(17), mm(17) + width_of(words, tick_text), y.at(ranking.promised), y.at(ranking.promised) + mm(3.5)});
    const auto at = [&](const MethodResult& r) { return PlanePoint{x.at(r.clamp), y.at(r.shortest_life())}; };
    for (const auto& [result, label] : list)
        if (result->refused.empty()) places.taken.push_back(around(at(*result), result->as_written ? mm(2.1) : mm(1.3)));
    for (const auto& [result, label] : list) {
        if (!result->refused.empty()) continue;
        const auto width = width_of(label, tick_text) + mm(1);
        const auto middle = places.find(at(*result), width, tick_text);
        const Box box{middle.x - 0.5 * width, middle.x + 0.5 * width, middle.y - 0.5 * tick_text, middle.y + 0.5 * tick_text};
        places.taken.push_back(box);
        const auto point = at(*result);
        if (middle.y != point.y)
            drawing.line(point, {std::clamp(point.x, box.left + mm(0.5), box.right - mm(0.5)), std::clamp(point.y, box.low, box.high)},
                         Pen::grid);
        draw_mark(drawing, at(*result), mark_of(*result));
        if (result->as_written) drawing.circle(at(*result), mm(1.9), Pen::thin);
        drawing.text({middle.x, middle.y - 0.35 * tick_text}, label, tick_text, Anchor::middle);
    }

    auto below = mm(-13);
    auto across = mm(2);
    for (const auto& [mark, meaning] :
         {std::pair{Mark::disc, "passes"}, std::pair{Mark::ring, "holds but does not last"}, std::pair{Mark::cross, "does not hold"}}) {
        draw_mark(drawing, {across, below}, mark);
        drawing.text({across + mm(3), below - 0.35 * chart_text}, meaning, chart_text);
        across += mm(7) + width_of(meaning, chart_text);
    }
    drawing.circle({across, below}, mm(1.9), Pen::thin);
    drawing.text({across + mm(3), below - 0.35 * chart_text}, "W: as the joint file has it", chart_text);
    draw_legend(drawing, list, below - mm(7.5));
    return drawing;
}

}  // namespace faywright
