// SPDX-License-Identifier: MIT
#pragma once

#include "assess/checks_ply.hpp"

/// Checks of the crush tube and of the hollow section's walls.
namespace faywright::checks {

inline constexpr const char* no_section = "the joint has no hollow section";
inline constexpr const char* no_tube = "the joint has no tube";

template <class Steps>
[[nodiscard]] inline TubeWall::Answer tube_wall_again(const State& s, Steps&& steps) {
    if constexpr (!std::same_as<std::remove_cvref_t<Steps>, NoSteps>) derive(s, "tube", steps);
    return s.tube.wall;
}

struct TubeYield {
    static constexpr CheckInfo info{"tube-yield", "Tube under the greatest clamp: yield", Scope::joint};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where&, Steps&& steps = Steps{}) {
        if (!s.tube.present) return Outcome::none(s.joint->section ? no_tube : no_section);
        const auto answer = tube_wall_again(s, steps);
        return limited(answer.stress, s.joint->section->tube.material.proof_strength, TubeWall::formula.source, answer.outside_range);
    }
};

struct TubeBuckling {
    static constexpr CheckInfo info{"tube-buckling", "Tube under the greatest clamp: buckling of its wall", Scope::joint};
    static constexpr Source source{"NASA SP-8007", "1968", "knock-down of the elastic cylinder", Basis::memory};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where&, Steps&& steps = Steps{}) {
        if (!s.tube.present) return Outcome::none(s.joint->section ? no_tube : no_section);
        const auto answer = tube_wall_again(s, steps);
        return limited(answer.stress, answer.buckling_stress, source);
    }
};

struct TubeEndPressure {
    static constexpr CheckInfo info{"tube-end-pressure", "Tube end pressed into the metal it stands on", Scope::joint};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where&, Steps&& steps = Steps{}) {
        if (!s.tube.present) return Outcome::none(s.joint->section ? no_tube : no_section);
        const auto answer = tube_wall_again(s, steps);
        auto pressure = MPa(1e6);
        for (const auto& ply : s.joint->plies)
            if ((ply.role == PlyRole::plate) == s.tube_passes_walls()) pressure = min(pressure, ply.material.surface_pressure);
        return limited(answer.end_pressure, pressure, SurfacePressure::formula.source);
    }
};

/// The washer's or plate's line of force must meet the tube's wall in plan, or the wall between dishes.
struct TubeOverlap {
    static constexpr CheckInfo info{"tube-overlap", "Bearing face and tube overlap in plan", Scope::end};
    static constexpr Source source{"line of force from head or nut to tube", "", "", Basis::practice};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        if (!s.tube.present) return Outcome::none(s.joint->section ? no_tube : no_section);
        const auto& bolt = s.joint->bolt;
        const bool at_head = w.part == 0;
        // Every millimetre of metal between spreads the load; a plate thus reaches any tube.
        auto between = mm(0);
        bool beyond = false;
        for (const auto& entry : s.joint->stack) {
            if (entry.kind == StackKind::cavity)
                beyond = true;
            else if (beyond != at_head)
                between += entry.thickness;
        }
        steps.heading(info.title, source);
        FAYWRIGHT_STATED(D_i, "bore of the tube, or the wall's hole where that is larger",
                         max(s.tube.bore, s.tube_passes_walls() ? mm(0) : wall_hole(s)));
        FAYWRIGHT_STATED(d_W, "bearing face", at_head ? bolt.thread.head_bearing_diameter : bolt.thread.nut_bearing_diameter);
        FAYWRIGHT_STATED(h, "metal between bearing face and tube", between);
        FAYWRIGHT_STEP(d_eff, d_W + 2.0 * h * tan(pi / 6.0));
        return limited(D_i, d_eff, source);
    }

private:
    static Length wall_hole(const State& s) {
        for (const auto& ply : s.joint->plies)
            if (ply.role == PlyRole::near_wall) return ply.hole_diameter;
        return mm(0);
    }
};

struct WallClosing {
    static constexpr CheckInfo info{"wall-closing", "Wall bent until the tube carries: worst length of tube and cavity", Scope::joint};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where&, Steps&& steps = Steps{}) {
        if (!s.tube.present) return Outcome::none(s.joint->section ? no_tube : no_section);
        if (s.tube_passes_walls()) return Outcome::none("a tube through the walls does not need them to close");
        if constexpr (!std::same_as<std::remove_cvref_t<Steps>, NoSteps>) derive(s, "tube", steps);
        const auto& answer = s.tube.length_check;
        const Force closing = max(abs(answer.closing_force_least), abs(answer.closing_force_greatest));
        return limited(closing, min(s.walls[0].first_yield, s.walls[1].first_yield), WallBending::formula.source, answer.outside_range);
    }
};

struct TubeShare {
    static constexpr CheckInfo info{"tube-share", "Preload spent on closing the gap", Scope::joint};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where&, Steps&& steps = Steps{}) {
        if (!s.tube.present) return Outcome::none(s.joint->section ? no_tube : no_section);
        if (s.tube_passes_walls()) return Outcome::none("a tube through the walls does not need them to close");
        steps.heading(info.title, TubeLength::formula.source);
        const auto& answer = s.tube.length_check;
        FAYWRIGHT_STATED(F_close, "worst force that closes the gap",
                         max(abs(answer.closing_force_least), abs(answer.closing_force_greatest)));
        FAYWRIGHT_STATED(F_M_min, "least preload", s.preload.least);
        FAYWRIGHT_STATED(q, "share closing may take", largest_share);
        FAYWRIGHT_STEP(F_allow, q * F_M_min);
        return limited(F_close, F_allow, TubeLength::formula.source);
    }

    static constexpr double largest_share = 0.25;
};

/// Out of square, one side of the tube carries first.
struct TubeSquareness {
    static constexpr CheckInfo info{"tube-squareness", "Clamp taken up before an out-of-square end bears all round", Scope::joint};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where&, Steps&& steps = Steps{}) {
        if (!s.tube.present) return Outcome::none(s.joint->section ? no_tube : no_section);
        steps.heading(info.title, TubeWall::formula.source);
        FAYWRIGHT_STATED(F_sq, "force that levels the end", s.tube.wall.squareness_force);
        FAYWRIGHT_STATED(F_M_min, "least preload", s.preload.least);
        return limited(F_sq, F_M_min, TubeWall::formula.source);
    }
};

/// With no tube, the walls alone stand between head and nut.
struct SectionCrush {
    static constexpr CheckInfo info{"section-crush", "Hollow section crushed by the clamp", Scope::joint};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where&, Steps&& steps = Steps{}) {
        if (!s.joint->section) return Outcome::none(no_section);
        if (s.tube.present) return Outcome::none("the tube carries the clamp");
        if constexpr (!std::same_as<std::remove_cvref_t<Steps>, NoSteps>) derive(s, "tube", steps);
        return limited(
            s.greatest, s.open_capacity,
            {"yield lines of a wall under a patch, after Save and Massonnet", "", "circular fan, edges free to turn", Basis::memory});
    }
};

/// A pull on the attached part reaches the webs through the walls' bending; a tube lets both walls share it.
struct WallPull {
    static constexpr CheckInfo info{"wall-pull", "Walls pulled or pushed by a tension on the bolt", Scope::joint, true, true};
    static constexpr Source source{"yield lines of a wall under a patch, after Save and Massonnet", "",
                                   "circular fan, edges free to turn; two walls share through the tube", Basis::memory};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        if (!s.joint->section) return Outcome::none(no_section);
        if (s.tube_passes_walls()) return Outcome::none("the walls are not clamped: see pull-through");
        if constexpr (!std::same_as<std::remove_cvref_t<Steps>, NoSteps>) derive(s, "tube", steps);
        steps.heading(info.title, source);
        FAYWRIGHT_STATED(n_w, "walls that share the pull", s.tube.present ? 2.0 : 1.0);
        FAYWRIGHT_STATED(F_u, "collapse of the weaker wall", s.open_capacity);
        FAYWRIGHT_STEP(F_w_Rk, n_w * F_u);
        FAYWRIGHT_STEP(F_w_Rd, F_w_Rk / 1.10);
        return compared(*s.joint, s.load_case(w.load_case), s.load(w.load_case, w.bolt).tension, F_w_Rk, F_w_Rd, source);
    }
};

}  // namespace faywright::checks
