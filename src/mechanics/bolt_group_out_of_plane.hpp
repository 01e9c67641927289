// SPDX-License-Identifier: MIT
#pragma once

#include "mechanics/position.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <cmath>
#include <optional>
#include <span>
#include <vector>

namespace faywright {

/// What a joint turns about when a moment tries to open it.
enum class Pivot {
    centroid,  ///< faces stay in contact: plane strain of the clamp about the centroid
    heel,      ///< the joint opens about the edge that stays pressed
};

template <>
struct Words<Pivot> {
    static constexpr std::array<std::pair<Pivot, std::string_view>, 2> all{{{Pivot::centroid, "centroid"}, {Pivot::heel, "heel"}}};
};

namespace detail {

/// Tension of a bolt per unit of the plane T = F_z/n + slope_x·dx + slope_y·dy, from the moments about the centroid.
struct TensionPlane {
    Stiffness slope_x, slope_y;
    bool holds = true;  ///< false: a moment about the bolts' own line was left out
};

inline TensionPlane tension_plane(const PatternInertia& p, Moment M_x, Moment M_y) {
    const Moment none = Nm(0);
    if (p.is_point()) return {N_per_mm(0), N_per_mm(0), M_x == none && M_y == none};
    if (!p.is_line()) {
        const auto D = p.xx * p.yy - squared(p.xy);
        return {-(M_y * p.yy + M_x * p.xy) / D, (M_x * p.xx + M_y * p.xy) / D, true};
    }
    // Direction of the line: the larger row of the (rank one) inertia matrix.
    const Area ax = p.xx >= p.yy ? p.xx : p.xy, ay = p.xx >= p.yy ? p.xy : p.yy;
    const Area size = sqrt(squared(ax) + squared(ay));
    const double ux = ax / size, uy = ay / size;
    const auto k = (M_x * uy - M_y * ux) / p.polar();
    const Moment own = M_x * ux + M_y * uy;
    return {k * ux, k * uy, squared(own) <= 1e-12 * (squared(M_x) + squared(M_y))};
}

/// Arm of a bolt from the heel, the moment opening towards +offset or -offset; none beyond the heel.
inline Length heel_arm(Length offset, Length heel, bool towards_positive) {
    return max(heel + (towards_positive ? offset : -offset), mm(0));
}

}  // namespace detail

/// The load of an out-of-plane force and moments on a pattern, and what it turns about.
/// Moments are about the centroid. `heel_x`, `heel_y`: centroid to the pressed edge; not read with Pivot::centroid.
struct OutOfPlaneLoad {
    Force force;
    Moment moment_x, moment_y;
    Pivot pivot = Pivot::centroid;
    Length heel_x = mm(0), heel_y = mm(0);
};

/// The tension of a bolt by its place: what the pattern makes of a load, worked out once.
struct TensionField {
    Force mean;
    Position centroid;
    Pivot pivot;
    Stiffness per_x, per_y;  ///< per offset from the centroid, or per arm from the heel
    Length heel_x, heel_y;
    bool towards_x, towards_y;  ///< heel: the moment opens the side of greater x, of greater y
    bool holds;                 ///< false: the pattern cannot take a moment asked of it, which is left out

    TensionField(std::span<const Position> bolts, const PatternInertia& pattern, const OutOfPlaneLoad& load)
        : mean(load.force / static_cast<double>(max(bolts.size(), std::size_t{1}))),
          centroid(pattern.centroid),
          pivot(load.pivot),
          per_x(N_per_mm(0)),
          per_y(N_per_mm(0)),
          heel_x(load.heel_x),
          heel_y(load.heel_y),
          towards_x(load.moment_y < Nm(0)),
          towards_y(load.moment_x >= Nm(0)),
          holds(true) {
        if (pivot == Pivot::centroid) {
            const auto plane = detail::tension_plane(pattern, load.moment_x, load.moment_y);
            per_x = plane.slope_x;
            per_y = plane.slope_y;
            holds = plane.holds;
            return;
        }
        Area sum_x = mm2(0), sum_y = mm2(0);
        for (const auto& bolt : bolts) {
            sum_x += squared(arm_x(bolt));
            sum_y += squared(arm_y(bolt));
        }
        if (sum_y > squared(um(1)))
            per_y = (towards_y ? load.moment_x : -load.moment_x) / sum_y;
        else
            holds = holds && load.moment_x == Nm(0);
        if (sum_x > squared(um(1)))
            per_x = (towards_x ? -load.moment_y : load.moment_y) / sum_x;
        else
            holds = holds && load.moment_y == Nm(0);
    }

    [[nodiscard]] Length arm_x(const Position& bolt) const { return detail::heel_arm(bolt.x - centroid.x, heel_x, towards_x); }
    [[nodiscard]] Length arm_y(const Position& bolt) const { return detail::heel_arm(bolt.y - centroid.y, heel_y, towards_y); }

    [[nodiscard]] Force at(const Position& bolt) const {
        if (pivot == Pivot::centroid) return mean + per_x * (bolt.x - centroid.x) + per_y * (bolt.y - centroid.y);
        return mean + per_x * arm_x(bolt) + per_y * arm_y(bolt);
    }
};

/// Tension of every bolt into the caller's array (as long as `bolts`); no allocation. Negative: relief.
/// False where the pattern cannot take a moment asked of it, which is then left out.
inline bool out_of_plane_bolt_forces(std::span<const Position> bolts, const PatternInertia& pattern, const OutOfPlaneLoad& load,
                                     std::span<Force> tensions) {
    const TensionField field(bolts, pattern, load);
    for (std::size_t i = 0; i < bolts.size(); ++i) tensions[i] = field.at(bolts[i]);
    return field.holds;
}

/// Tension of the bolts of a pattern from a force and moments out of its plane.
///
/// z points out of the rail towards the attached part; x, y, z right-handed; the load acts on the attached part, and F_z > 0
/// pulls the parts apart. M_x > 0 pulls on bolts at +y, M_y > 0 on bolts at -x. While the faces stay in contact
/// the tensions lie on a plane about the centroid, found with the full 2×2 inertia: the pattern need not be
/// symmetric. Once the joint opens it turns about the pressed heel and T_i = M y_i/Σy_i², y from the heel, about
/// each axis on its own and added; bolts beyond the heel take none. Prying is not in it (see Prying).
/// On a hollow wall a heel away from web or tube is soft: put the pivot at the last bolt row or the tube.
struct BoltGroupOutOfPlane {
    static constexpr Formula formula{
        .name = "bolt-group-out-of-plane",
        .title = "Tension of the bolts of a pattern from a force and moments out of its plane",
        .range = "stiff parts, equal bolts; bolts in one line take no moment about that line (pivot at the centroid)",
        .source = {"statics of a rigid plate on equal springs", "", "rigid-plate equilibrium, derived here", Basis::practice}};

    /// In the order of Pivot.
    static constexpr std::array<Source, 2> sources{
        {formula.source,
         Source{"A Textbook of Machine Design (Khurmi)", "", "eccentric load on a bracket, bolts in tension", Basis::memory}}};
    static constexpr const Source& source(Pivot pivot) { return sources[static_cast<std::size_t>(pivot)]; }

    struct Inputs {
        std::vector<Position> positions;
        Force force_z;
        Moment moment_x, moment_y;
        Length reference_x = mm(0), reference_y = mm(0);
        Pivot pivot = Pivot::centroid;
        std::optional<Length> heel_x, heel_y;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"positions", "", "positions of the bolts, x along and y across the rail"}, self.positions);
            field(Name{"force-z", "F_z", "force along z, positive pulls the parts apart"}, self.force_z, Range{kN(-100000), kN(100000)});
            field(Name{"moment-x", "M_x", "moment about x at the reference point"}, self.moment_x, Range{kNm(-100000), kNm(100000)});
            field(Name{"moment-y", "M_y", "moment about y at the reference point"}, self.moment_y, Range{kNm(-100000), kNm(100000)});
            field(Name{"reference-x", "x_ref", "reference point of the load, along x"}, self.reference_x, Range{mm(-100000), mm(100000)},
                  defaulted);
            field(Name{"reference-y", "y_ref", "reference point of the load, along y"}, self.reference_y, Range{mm(-100000), mm(100000)},
                  defaulted);
            field(Name{"pivot", "", "what the joint turns about"}, self.pivot, defaulted);
            field(Name{"heel-x", "h_x", "centroid to the pressed edge, along x"}, self.heel_x, Range{mm(0.1), mm(10000)});
            field(Name{"heel-y", "h_y", "centroid to the pressed edge, along y"}, self.heel_y, Range{mm(0.1), mm(10000)});
        }
    };

    struct Answer {
        Length centroid_x, centroid_y;
        Moment centroid_moment_x, centroid_moment_y;
        int worst_bolt = 0;  ///< counted from 1
        Force tension;       ///< of that bolt
        Force least;         ///< of the bolt relieved most
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"centroid-x", "x_c", "centroid of the pattern along x"}, self.centroid_x);
            field(Name{"centroid-y", "y_c", "centroid of the pattern along y"}, self.centroid_y);
            field(Name{"centroid-moment-x", "M_xc", "moment about x at the centroid"}, self.centroid_moment_x);
            field(Name{"centroid-moment-y", "M_yc", "moment about y at the centroid"}, self.centroid_moment_y);
            field(Name{"worst-bolt", "", "bolt with most tension, counted from 1"}, self.worst_bolt);
            field(Name{"tension", "T", "tension of that bolt"}, self.tension);
            field(Name{"least", "T_least", "least tension of any bolt, negative where the clamp grows"}, self.least);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (const char* why = pattern_refusal(in.positions)) return why;
        const auto [pattern, M_x, M_y] = about_centroid(in);
        if (in.pivot == Pivot::heel) {
            if (M_x != Nm(0) && !in.heel_y) return "a moment about x that opens about the heel needs heel-y";
            if (M_y != Nm(0) && !in.heel_x) return "a moment about y that opens about the heel needs heel-x";
            return nullptr;
        }
        if (!detail::tension_plane(pattern, M_x, M_y).holds)
            return pattern.is_point() ? "a single bolt cannot take a moment" : "bolts in one line cannot take a moment about that line";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [positions, F_z, M_x, M_y, x_ref, y_ref, pivot, h_x, h_y] = in;
        if (positions.empty()) return {};
        const std::span<const Position> bolts = positions;
        const auto pattern = inertia_of(bolts);
        FAYWRIGHT_STATED(n, "number of bolts", static_cast<double>(bolts.size()));
        FAYWRIGHT_STATED(x_c, "Σx/n", pattern.centroid.x);
        FAYWRIGHT_STATED(y_c, "Σy/n", pattern.centroid.y);
        FAYWRIGHT_STEP(M_xc, M_x + (y_ref - y_c) * F_z);
        FAYWRIGHT_STEP(M_yc, M_y - (x_ref - x_c) * F_z);
        const TensionField field(bolts, pattern, {F_z, M_xc, M_yc, pivot, h_x.value_or(mm(0)), h_y.value_or(mm(0))});
        std::size_t worst = 0;
        Force most = newton(0), least = newton(0);
        for (std::size_t i = 0; i < bolts.size(); ++i) {
            const Force one = field.at(bolts[i]);
            if (i == 0 || one > most + 1e-12 * magnitude({most, one})) {
                most = one;
                worst = i;
            }
            if (i == 0 || one < least) least = one;
        }
        const int number = static_cast<int>(worst) + 1;
        FAYWRIGHT_STATED(x_w, "x of the bolt with most tension", bolts[worst].x);
        FAYWRIGHT_STATED(y_w, "y of the bolt with most tension", bolts[worst].y);
        if (pivot == Pivot::centroid) {
            if (pattern.is_point() || pattern.is_line()) {
                FAYWRIGHT_STATED(T, "F_z/n + M s/Σs², s along the line of the bolts", most);
                return {x_c, y_c, M_xc, M_yc, number, T, least};
            }
            FAYWRIGHT_STATED(S_xx, "Σ(x - x_c)²", pattern.xx);
            FAYWRIGHT_STATED(S_yy, "Σ(y - y_c)²", pattern.yy);
            FAYWRIGHT_STATED(S_xy, "Σ(x - x_c)(y - y_c)", pattern.xy);
            FAYWRIGHT_STEP(D, S_xx * S_yy - squared(S_xy));
            FAYWRIGHT_STEP(q_x, (M_yc * S_yy + M_xc * S_xy) / D);
            FAYWRIGHT_STEP(q_y, (M_xc * S_xx + M_yc * S_xy) / D);
            FAYWRIGHT_STEP(T, F_z / n - q_x * (x_w - x_c) + q_y * (y_w - y_c));
            return {x_c, y_c, M_xc, M_yc, number, T, least};
        }
        FAYWRIGHT_STATED(T, "F_z/n + |M_xc| y/Σy² + |M_yc| x/Σx², x and y from the heel, none below 0", most);
        return {x_c, y_c, M_xc, M_yc, number, T, least};
    }

private:
    struct AboutCentroid {
        PatternInertia pattern;
        Moment M_x, M_y;
    };
    static AboutCentroid about_centroid(const Inputs& in) {
        const auto pattern = inertia_of(in.positions);
        return {pattern, in.moment_x + (in.reference_y - pattern.centroid.y) * in.force_z,
                in.moment_y - (in.reference_x - pattern.centroid.x) * in.force_z};
    }
};

}  // namespace faywright
