// SPDX-License-Identifier: MIT
#pragma once

#include "mechanics/position.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <span>
#include <vector>

namespace faywright {

/// Force of the load on every bolt, into the caller's array (as long as `bolts`); no allocation.
/// `moment` is about the centroid, anticlockwise positive. False, with the moment left out, where the
/// pattern is a point and cannot take the moment asked of it.
inline bool in_plane_bolt_forces(std::span<const Position> bolts, const PatternInertia& pattern, const PlaneForce& load, Moment moment,
                                 std::span<PlaneForce> forces) {
    const auto n = static_cast<double>(bolts.size());
    const bool turns = !pattern.is_point();
    for (std::size_t i = 0; i < bolts.size(); ++i) {
        forces[i] = {load.x / n, load.y / n};
        if (!turns) continue;
        forces[i].x -= moment * (bolts[i].y - pattern.centroid.y) / pattern.polar();
        forces[i].y += moment * (bolts[i].x - pattern.centroid.x) / pattern.polar();
    }
    return turns || moment == Nm(0);
}

/// In-plane load on a bolt pattern by the elastic (vector) method.
///
/// The parts are rigid against the bolts, which are alike: the force is shared evenly, and the moment about the
/// centroid turns the pattern about it, each bolt answering in proportion to its distance r from the centroid and
/// at right angles to it: F_i = F/n + M × r_i / J, J = Σr². Linear, so safe where bolts are not ductile
/// links; the ultimate method (BoltGroupUltimate) finds some 10 to 20 % more in ductile steel joints.
struct BoltGroupInPlane {
    static constexpr Formula formula{
        .name = "bolt-group-in-plane",
        .title = "Forces on the bolts of a pattern loaded in its plane, elastic method",
        .range = "rigid parts, equal bolts; one bolt takes no moment",
        .source = {"Shigley's Mechanical Engineering Design", "9th edition", "section 8-12, eq. 8-57", Basis::published}};

    struct Inputs {
        std::vector<Position> positions;
        Force force_x, force_y;
        Moment moment;
        Length reference_x = mm(0), reference_y = mm(0);

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"positions", "", "positions of the bolts, x along and y across the rail"}, self.positions);
            field(Name{"force-x", "F_x", "force along x"}, self.force_x, Range{kN(-100000), kN(100000)});
            field(Name{"force-y", "F_y", "force along y"}, self.force_y, Range{kN(-100000), kN(100000)});
            field(Name{"moment", "M_z", "moment about the reference point, anticlockwise (x to y) positive"}, self.moment,
                  Range{kNm(-100000), kNm(100000)});
            field(Name{"reference-x", "x_ref", "reference point of the load, along x"}, self.reference_x, Range{mm(-100000), mm(100000)},
                  defaulted);
            field(Name{"reference-y", "y_ref", "reference point of the load, along y"}, self.reference_y, Range{mm(-100000), mm(100000)},
                  defaulted);
        }
    };

    struct Answer {
        Length centroid_x, centroid_y;
        Area polar_sum;          ///< Σr² about the centroid
        Moment centroid_moment;  ///< the load's moment about the centroid
        int worst_bolt = 0;      ///< counted from 1
        Force worst_x, worst_y;  ///< the load on that bolt
        Force resultant;
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"centroid-x", "x_c", "centroid of the pattern along x"}, self.centroid_x);
            field(Name{"centroid-y", "y_c", "centroid of the pattern along y"}, self.centroid_y);
            field(Name{"polar-sum", "J", "sum of squared distances from the centroid"}, self.polar_sum);
            field(Name{"centroid-moment", "M_c", "moment about the centroid"}, self.centroid_moment);
            field(Name{"worst-bolt", "", "most heavily loaded bolt, counted from 1"}, self.worst_bolt);
            field(Name{"worst-x", "R_x", "force on it along x"}, self.worst_x);
            field(Name{"worst-y", "R_y", "force on it along y"}, self.worst_y);
            field(Name{"resultant", "R", "resultant force on it"}, self.resultant);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (const char* why = pattern_refusal(in.positions)) return why;
        const auto pattern = inertia_of(in.positions);
        const Moment about =
            in.moment + (in.reference_x - pattern.centroid.x) * in.force_y - (in.reference_y - pattern.centroid.y) * in.force_x;
        if (pattern.is_point() && about != Nm(0)) return "a single bolt cannot take a moment";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [positions, F_x, F_y, M_z, x_ref, y_ref] = in;
        if (positions.empty()) return {};
        const std::span<const Position> bolts = positions;
        const auto pattern = inertia_of(bolts);
        FAYWRIGHT_STATED(n, "number of bolts", static_cast<double>(bolts.size()));
        FAYWRIGHT_STATED(x_c, "Σx/n", pattern.centroid.x);
        FAYWRIGHT_STATED(y_c, "Σy/n", pattern.centroid.y);
        FAYWRIGHT_STATED(J, "Σ((x - x_c)² + (y - y_c)²)", pattern.polar());
        FAYWRIGHT_STEP(M_c, M_z + (x_ref - x_c) * F_y - (y_ref - y_c) * F_x);

        // One pass without an array: only the worst bolt is told here.
        std::size_t worst = 0;
        auto most = squared(newton(0));
        const bool turns = !pattern.is_point();
        for (std::size_t i = 0; i < bolts.size(); ++i) {
            PlaneForce one{F_x / n, F_y / n};
            if (turns) {
                one.x -= M_c * (bolts[i].y - y_c) / J;
                one.y += M_c * (bolts[i].x - x_c) / J;
            }
            // A hair's margin keeps the first of equals, whatever the rounding.
            if (squared(one.x) + squared(one.y) > most * (1.0 + 1e-12)) {
                most = squared(one.x) + squared(one.y);
                worst = i;
            }
        }
        const int number = static_cast<int>(worst) + 1;
        if (!turns) {
            FAYWRIGHT_STEP(R_x, F_x / n);
            FAYWRIGHT_STEP(R_y, F_y / n);
            FAYWRIGHT_STEP(R, sqrt(squared(R_x) + squared(R_y)));
            return {x_c, y_c, J, M_c, number, R_x, R_y, R};
        }
        FAYWRIGHT_STATED(x_w, "x of the most heavily loaded bolt", bolts[worst].x);
        FAYWRIGHT_STATED(y_w, "y of the most heavily loaded bolt", bolts[worst].y);
        FAYWRIGHT_STEP(R_x, F_x / n - M_c * (y_w - y_c) / J);
        FAYWRIGHT_STEP(R_y, F_y / n + M_c * (x_w - x_c) / J);
        FAYWRIGHT_STEP(R, sqrt(squared(R_x) + squared(R_y)));
        return {x_c, y_c, J, M_c, number, R_x, R_y, R};
    }
};

}  // namespace faywright
