// SPDX-License-Identifier: MIT
#pragma once

#include "assess/checks_ply.hpp"
#include "mechanics/hollow_section.hpp"

/// Checks of the crush tube and of the hollow section's walls.
namespace faywright::checks {

inline constexpr const char* no_section = "the joint has no hollow section";
inline constexpr const char* no_tube = "the joint has no tube";

/// The answers on tube and walls stand in the state; for people their steps come first.
template <class Steps>
void derive_tube(const State& s, Steps&& steps) {
    if constexpr (keeps_steps<Steps>) derive(s, "tube", steps);
}

struct TubeYield {
    static constexpr CheckInfo info{"tube-yield", "Tube under the greatest clamp: yield, less buckling as a column", Scope::joint};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where&, Steps&& steps = Steps{}) {
        if (!s.tube.present) return Outcome::none(s.joint->section ? no_tube : no_section);
        derive_tube(s, steps);
        const auto& answer = s.tube.wall;
        return limited(answer.stress, answer.column_strength, TubeWall::formula.source, answer.outside_range);
    }
};

struct TubeBuckling {
    static constexpr CheckInfo info{"tube-buckling", "Tube under the greatest clamp: buckling of its wall", Scope::joint};
    static constexpr Source source{"NASA SP-8007", "1968", "knock-down of the elastic cylinder", Basis::memory};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where&, Steps&& steps = Steps{}) {
        if (!s.tube.present) return Outcome::none(s.joint->section ? no_tube : no_section);
        derive_tube(s, steps);
        const auto& answer = s.tube.wall;
        return limited(answer.stress, min(answer.buckling_stress, s.joint->section->tube.material.proof_strength), source);
    }
};

struct TubeEndPressure {
    static constexpr CheckInfo info{"tube-end-pressure", "Tube end pressed into the metal it stands on", Scope::joint};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where&, Steps&& steps = Steps{}) {
        if (!s.tube.present) return Outcome::none(s.joint->section ? no_tube : no_section);
        derive_tube(s, steps);
        return limited(s.tube.wall.end_pressure, s.pressure_under_tube(), SurfacePressure::formula.source);
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
                         max(s.tube.bore, s.tube_passes_walls() ? mm(0) : s.joint->near_wall()->hole_diameter));
        FAYWRIGHT_STATED(d_W, "bearing face", bolt.bearing_diameter(at_head));
        FAYWRIGHT_STATED(h, "metal between bearing face and tube", between);
        FAYWRIGHT_STEP(d_eff, d_W + 2.0 * h * tan(pi / 6.0));
        return limited(D_i, d_eff, source);
    }
};

/// Greatest force, either way, between walls and tube at the extremes of their lengths. A tube that stands out of the walls it
/// passes does not spread them.
[[nodiscard]] inline Force worst_closing(const State& s) {
    const auto& answer = s.tube.length_check;
    if (s.tube_passes_walls()) return answer.closing_force;
    return max(abs(answer.closing_force_least), abs(answer.closing_force_greatest));
}

struct WallClosing {
    static constexpr CheckInfo info{"wall-closing", "Wall bent until the tube carries: worst length of tube and cavity", Scope::joint};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where&, Steps&& steps = Steps{}) {
        if (!s.tube.present) return Outcome::none(s.joint->section ? no_tube : no_section);
        derive_tube(s, steps);
        return limited(worst_closing(s), s.walls_first_yield(), WallBending::formula.source,
                       s.tube_passes_walls() ? nullptr : s.tube.length_check.outside_range);
    }
};

struct TubeShare {
    static constexpr CheckInfo info{"tube-share", "Preload spent on closing the gap", Scope::joint};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where&, Steps&& steps = Steps{}) {
        if (!s.tube.present) return Outcome::none(s.joint->section ? no_tube : no_section);
        steps.heading(info.title, TubeLength::formula.source);
        FAYWRIGHT_STATED(F_close, "worst force that closes the gap", worst_closing(s));
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
    static constexpr Source source{"yield lines of a wall under a patch, after Save and Massonnet", "", "circular fan, edges free to turn",
                                   Basis::memory};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where&, Steps&& steps = Steps{}) {
        if (!s.joint->section) return Outcome::none(no_section);
        if (s.tube.present) return Outcome::none("the tube carries the clamp");
        derive_tube(s, steps);
        return limited(s.greatest, s.open_capacity, source);
    }
};

/// A pull on the attached part reaches the webs through the walls' bending; a tube lets both walls share it.
struct WallPull {
    static constexpr CheckInfo info{"wall-pull",         "Walls pulled or pushed by a tension on the bolt", Scope::joint, true, true,
                                    Leading::most_pulled};
    static constexpr Source source{"yield lines of a wall under a patch, after Save and Massonnet", "",
                                   "circular fan, edges free to turn; two walls share through the tube", Basis::memory};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        if (!s.joint->section) return Outcome::none(no_section);
        if (s.tube_passes_walls()) return Outcome::none("the walls are not clamped: see pull-through");
        derive_tube(s, steps);
        steps.heading(info.title, source);
        FAYWRIGHT_STATED(n_w, "walls that share the pull", s.tube.present ? 2.0 : 1.0);
        FAYWRIGHT_STATED(F_u, "collapse of the weaker wall", s.open_capacity);
        FAYWRIGHT_STEP(F_w_Rk, n_w * F_u);
        FAYWRIGHT_STEP(F_w_Rd, F_w_Rk / 1.10);
        return compared(*s.joint, s.load_case(w.load_case), s.load(w.load_case, w.bolt).tension, F_w_Rk, F_w_Rd, source);
    }
};

/// Stress of the rail's section at the line of bolts at x, from the whole load.
template <class Steps>
[[nodiscard]] HollowSection::Answer rail_stress_at(const State& s, const LoadCase& l, Length x, Length hole, Steps&& steps) {
    const auto& joint = *s.joint;
    const auto& section = *joint.section;
    int side_by_side = 0;
    auto offset = mm(0);
    auto offsets = squared(mm(0));
    for (const auto& p : joint.positions)
        if (abs(p.x - x) < hole) {
            ++side_by_side;
            offset += p.y - section.offset_y;
            offsets += squared(p.y - section.offset_y);
        }
    steps.heading("Load on the rail at its last line of bolts",
                  Source{"statics of the whole load about the rail's centre line", "", "", Basis::practice});
    FAYWRIGHT_STATED(F_x, "load along x", l.force_x);
    FAYWRIGHT_STATED(F_y, "load along y", l.force_y);
    FAYWRIGHT_STATED(F_z, "load along z", l.force_z);
    FAYWRIGHT_STATED(m_y, "moment of the load about y", l.moment_y);
    FAYWRIGHT_STATED(m_z, "moment of the load about z", l.moment_z);
    FAYWRIGHT_STATED(a_x, "from the bolt line to the load, along x", l.at_x - x);
    FAYWRIGHT_STATED(a_y, "from the rail's centre line to the load, along y", l.at_y - section.offset_y);
    FAYWRIGHT_STATED(a_z, "from the rail's centre line to the load, along z", l.at_z - joint.rail_axis_z());
    FAYWRIGHT_STEP(N, abs(F_x));
    FAYWRIGHT_STEP(M_y, abs(m_y + a_z * F_x - a_x * F_z));
    FAYWRIGHT_STEP(M_z, abs(m_z + a_x * F_y - a_y * F_x));
    HollowSection::Inputs in{.width = section.width,
                             .height = section.height,
                             .wall = section.wall,
                             .web = section.web,
                             .hole_diameter = hole,
                             .holes = static_cast<double>(side_by_side),
                             .hole_offset = sqrt(offsets / static_cast<double>(side_by_side)),
                             .hole_shift = abs(offset) / static_cast<double>(side_by_side),
                             .axial = N,
                             .bending_y = M_y,
                             .bending_z = M_z};
    // Staggered holes nearer than one hole along the rail count as one line, which can take more than the wall has.
    if (HollowSection::refusal(in) != nullptr) {
        in.holes = min(in.holes, 0.95 * static_cast<double>(section.clear_width() / hole));
        in.hole_offset = max(in.hole_offset, HollowSection::least_offset(in.holes, hole));
    }
    steps.heading(HollowSection::formula.title, HollowSection::formula.source);
    return HollowSection::compute(in, steps);
}

/// Behind the last bolt the rail alone carries the load: on the side where it runs on, or on the worse where both or neither do.
template <class Steps>
[[nodiscard]] HollowSection::Answer rail_stress(const State& s, int load_case, Steps&& steps) {
    const auto& joint = *s.joint;
    const auto& l = s.load_case(load_case);
    const auto& wall = *joint.near_wall();
    const auto [low, high] = joint.ends_along_x();
    const bool runs_low = wall.outline.x_min <= -far_away, runs_high = wall.outline.x_max >= far_away;
    const bool take_low = runs_low == runs_high ? rail_stress_at(s, l, low, wall.hole_diameter, NoSteps{}).stress >=
                                                      rail_stress_at(s, l, high, wall.hole_diameter, NoSteps{}).stress
                                                : runs_low;
    return rail_stress_at(s, l, take_low ? low : high, wall.hole_diameter, steps);
}

struct RailBending {
    static constexpr CheckInfo info{"rail-section", "Rail at its last line of bolts: axial force and bending", Scope::joint, true, false};
    static constexpr Source source{"EN 1999-1-1", "2007", "6.2.5, elastic on the net section against f_o", Basis::memory};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        if (!s.joint->section) return Outcome::none(no_section);
        const auto answer = rail_stress(s, w.load_case, steps);
        const auto proof = s.joint->near_wall()->proof_strength;
        return compared(*s.joint, s.load_case(w.load_case), answer.stress, proof, proof / 1.10, source);
    }
};

struct RailFatigue {
    static constexpr CheckInfo info{"rail-fatigue", "Fatigue of the rail at its last line of bolts", Scope::joint, true, false};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        if (!s.joint->section) return Outcome::none(no_section);
        const auto& l = s.load_case(w.load_case);
        if (!l.cycles) return Outcome::none("no load case gives a number of cycles");
        const auto detail = hole_detail(s.joint->section->material.family == Family::aluminium);
        const auto answer = rail_stress(s, w.load_case, steps);
        steps.heading(MemberFatigue::formula.title, detail.source);
        FAYWRIGHT_STATED(sigma, "stress of the load", answer.stress);
        FAYWRIGHT_STATED(gamma_F, "load factor of the case", l.load_factor);
        FAYWRIGHT_STATED(r, "2 where the load reverses, else 1", l.reverses ? 2.0 : 1.0);
        FAYWRIGHT_STEP(dsigma, r * gamma_F * sigma);
        return endured_at_hole(dsigma, *l.cycles, detail, steps);
    }
};

/// The wall bends to and fro at its hole as the pull on the bolt passes through it to the webs.
struct WallFatigue {
    static constexpr CheckInfo info{
        "wall-fatigue", "Fatigue of the rail's walls at the hole, bent by the pull", Scope::joint, true, true, Leading::most_pulled};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        if (!s.joint->section) return Outcome::none(no_section);
        if (s.tube_passes_walls()) return Outcome::none("the walls are not clamped: see pull-through");
        const auto& l = s.load_case(w.load_case);
        if (!l.cycles) return Outcome::none("no load case gives a number of cycles");
        const auto detail = hole_detail(s.joint->section->material.family == Family::aluminium);
        // A press goes from plate to webs; a pull bends the walls, and the tube shares it among them by their stiffness.
        const auto& worse = s.walls[0].wall.first_yield_force <= s.walls[1].wall.first_yield_force ? s.walls[0] : s.walls[1];
        const auto& other = &worse == &s.walls[0] ? s.walls[1] : s.walls[0];
        steps.heading("Stress at the hole's edge from the pull", WallBending::formula.source);
        FAYWRIGHT_STATED(F_A, "pull on the bolt", s.load(w.load_case, w.bolt).tension);
        FAYWRIGHT_STATED(gamma_F, "load factor of the case", l.load_factor);
        FAYWRIGHT_STATED(F_y, "force on this wall at first yield", worse.wall.first_yield_force);
        FAYWRIGHT_STATED(f_o, "proof strength of the wall", worse.inputs.proof_strength);
        FAYWRIGHT_STATED(q, "share of this wall, by stiffness",
                         s.tube.present ? static_cast<double>(worse.wall.stiffness / (worse.wall.stiffness + other.wall.stiffness)) : 1.0);
        FAYWRIGHT_STEP(dsigma, q * gamma_F * F_A * f_o / F_y);
        steps.heading(MemberFatigue::formula.title, detail.source);
        return endured_at_hole(dsigma, *l.cycles, detail, steps);
    }
};

}  // namespace faywright::checks
