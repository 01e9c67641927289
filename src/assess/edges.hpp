// SPDX-License-Identifier: MIT
#pragma once

#include "joint/joint.hpp"

#include <cmath>
#include <optional>
#include <span>

namespace faywright {

/// Distances from a bolt's centre that a code asks for, along and across the force the bolt puts on a ply.
struct Edges {
    Length end;                   ///< to the outline, the way the bolt pushes
    Length edge;                  ///< to the outline, across, on the nearer side
    std::optional<Length> pitch;  ///< to the next hole ahead
    std::optional<Length> gauge;  ///< to the next hole beside
};

namespace detail {

/// From a point along a direction to the outline.
inline Length reach(const Outline& o, const Position& p, double ux, double uy) {
    auto least = 2.0 * far_away;
    if (ux > 1e-9) least = min(least, (o.x_max - p.x) / ux);
    if (ux < -1e-9) least = min(least, (o.x_min - p.x) / ux);
    if (uy > 1e-9) least = min(least, (o.y_max - p.y) / uy);
    if (uy < -1e-9) least = min(least, (o.y_min - p.y) / uy);
    return max(least, mm(0));
}

}  // namespace detail

/// `ux`, `uy`: unit vector of the push. Holes count as ahead where the push would tear into them (within one hole
/// diameter of its line) and as beside where they stand level with the bolt.
[[nodiscard]] inline Edges edges_of(const Ply& ply, std::span<const Position> bolts, int bolt, double ux, double uy) {
    const auto& here = bolts[static_cast<std::size_t>(bolt)];
    Edges edges{detail::reach(ply.outline, here, ux, uy),
                min(detail::reach(ply.outline, here, -uy, ux), detail::reach(ply.outline, here, uy, -ux)),
                {},
                {}};
    for (std::size_t i = 0; i < bolts.size(); ++i) {
        if (static_cast<int>(i) == bolt) continue;
        const auto dx = bolts[i].x - here.x, dy = bolts[i].y - here.y;
        const Length ahead = ux * dx + uy * dy, beside = abs(ux * dy - uy * dx);
        if (ahead > mm(0) && beside < ply.hole_diameter && (!edges.pitch || ahead < *edges.pitch)) edges.pitch = ahead;
        if (abs(ahead) < ply.hole_diameter && beside > mm(0) && (!edges.gauge || beside < *edges.gauge)) edges.gauge = beside;
    }
    return edges;
}

/// The pattern's extent and the ply's metal seen along one axis.
struct AxisView {
    Length width;              ///< of the ply across the axis; more than `far_away` where it runs on
    Length span;               ///< between the outermost bolts, across the axis
    Length length;             ///< between the outermost bolts, along the axis
    Length end_low, end_high;  ///< from the outermost bolt to the ply's end, towards less and towards more
    int across = 0;            ///< bolts in the fullest line across the axis
    int along = 0;             ///< bolts in the fullest line along the axis
};

[[nodiscard]] inline AxisView view_along(const Ply& ply, std::span<const Position> bolts, bool x_axis) {
    const auto along = [x_axis](const Position& p) { return x_axis ? p.x : p.y; };
    const auto across = [x_axis](const Position& p) { return x_axis ? p.y : p.x; };
    const auto& o = ply.outline;
    AxisView view;
    auto a_min = along(bolts.front()), a_max = a_min, c_min = across(bolts.front()), c_max = c_min;
    for (const auto& p : bolts) {
        a_min = min(a_min, along(p));
        a_max = max(a_max, along(p));
        c_min = min(c_min, across(p));
        c_max = max(c_max, across(p));
        int in_row = 0, in_line = 0;
        for (const auto& q : bolts) {
            in_row += abs(along(q) - along(p)) < ply.hole_diameter ? 1 : 0;
            in_line += abs(across(q) - across(p)) < ply.hole_diameter ? 1 : 0;
        }
        view.across = max(view.across, in_row);
        view.along = max(view.along, in_line);
    }
    view.width = x_axis ? o.y_max - o.y_min : o.x_max - o.x_min;
    view.span = c_max - c_min;
    view.length = a_max - a_min;
    view.end_low = a_min - (x_axis ? o.x_min : o.y_min);
    view.end_high = (x_axis ? o.x_max : o.y_max) - a_max;
    return view;
}

}  // namespace faywright
