// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/field.hpp"
#include "quantity/quantity.hpp"

#include <cstddef>
#include <span>

namespace faywright {

/// A point in the plane of the faying surfaces: x along the rail, y across it.
struct Position {
    static constexpr bool positional = true;  ///< may be written [x, y]
    Length x, y;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"x", "x", "along the rail"}, self.x, Range{mm(-10000), mm(10000)});
        field(Name{"y", "y", "across the rail"}, self.y, Range{mm(-10000), mm(10000)});
    }
};

/// A force in the plane of the faying surfaces.
struct PlaneForce {
    Force x, y;
};

[[nodiscard]] inline Force magnitude(const PlaneForce& f) { return sqrt(squared(f.x) + squared(f.y)); }

/// What the elastic methods need of a pattern: its centroid, and the sums of squares about it.
/// Bolts count alike: one pattern has one size of bolt.
struct PatternInertia {
    Position centroid;
    Area xx, yy, xy;  ///< sums of dx², dy², dx·dy

    [[nodiscard]] Area polar() const { return xx + yy; }
    /// One bolt, or all in one place: no arm for any moment. Below a micrometre an arm is rounding.
    [[nodiscard]] bool is_point() const { return polar() < squared(um(1)); }
    /// All on one line: no arm for a moment about that line.
    [[nodiscard]] bool is_line() const { return xx * yy - squared(xy) <= 1e-12 * squared(polar()); }
};

/// An empty pattern gives zeros.
[[nodiscard]] inline PatternInertia inertia_of(std::span<const Position> bolts) {
    PatternInertia sum{};
    if (bolts.empty()) return sum;
    const auto n = static_cast<double>(bolts.size());
    for (const auto& bolt : bolts) {
        sum.centroid.x += bolt.x / n;
        sum.centroid.y += bolt.y / n;
    }
    // Of positions about zero, what is left below a picometre is rounding.
    for (auto* middle : {&sum.centroid.x, &sum.centroid.y})
        if (abs(*middle) < 1e-6 * um(1)) *middle = mm(0);
    for (const auto& bolt : bolts) {
        const Length dx = bolt.x - sum.centroid.x, dy = bolt.y - sum.centroid.y;
        sum.xx += dx * dx;
        sum.yy += dy * dy;
        sum.xy += dx * dy;
    }
    return sum;
}

/// Why a list of positions is no bolt pattern, or nullptr. The pairwise look is for the door, not for inner loops.
[[nodiscard]] inline const char* pattern_refusal(std::span<const Position> bolts) {
    if (bolts.empty()) return "a pattern without bolts carries nothing";
    if (bolts.size() > 1000) return "more than 1000 bolts in one pattern";
    for (std::size_t i = 0; i < bolts.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            if (squared(bolts[i].x - bolts[j].x) + squared(bolts[i].y - bolts[j].y) < squared(um(1)))
                return "two bolts stand in the same place";
    return nullptr;
}

}  // namespace faywright
