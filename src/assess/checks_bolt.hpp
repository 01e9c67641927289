// SPDX-License-Identifier: MIT
#pragma once

#include "assess/outcome.hpp"
#include "assess/state.hpp"
#include "mechanics/bolt_fatigue.hpp"
#include "mechanics/bolt_interaction.hpp"
#include "mechanics/pull_through.hpp"
#include "mechanics/surface_pressure.hpp"

#include <charconv>

/// Checks of the bolt, its nut and what they press on.
namespace faywright::checks {

/// Greatest force the bolt meets in a case.
[[nodiscard]] inline Force greatest_in(const State& s, const Where& w) {
    return s.greatest + s.factor_of(w.load_case) * s.bolt_share * s.load(w.load_case, w.bolt).tension;
}

/// Stress at the end of tightening, at the greatest preload.
template <class Steps>
[[nodiscard]] AssemblyStress::Answer assembly_stress(const State& s, Steps&& steps) {
    return AssemblyStress::compute({.preload = s.preload.greatest,
                                    .stress_area = s.thread.stress_area,
                                    .pitch_diameter = s.thread.pitch_diameter,
                                    .stress_diameter = s.thread.stress_diameter,
                                    .pitch = s.joint->bolt.thread.pitch,
                                    .thread_friction = s.thread_friction_low,
                                    .proof_strength = s.joint->bolt.property_class.proof_strength},
                                   steps);
}

struct BoltAssemblyStress {
    static constexpr CheckInfo info{"bolt-assembly-stress", "Bolt stress while tightening", Scope::joint};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where&, Steps&& steps = Steps{}) {
        const auto& bolt = s.joint->bolt;
        steps.heading(AssemblyStress::formula.title, AssemblyStress::formula.source);
        const auto answer = assembly_stress(s, steps);
        return limited(answer.reduced, bolt.property_class.proof_strength, AssemblyStress::formula.source);
    }

    /// The greatest preload that the bolt stands while it is tightened: tension and torsion both grow with it.
    static Force allowed(const State& s) {
        return s.preload.greatest * static_cast<double>(s.joint->bolt.property_class.proof_strength / s.constants.assembly.reduced);
    }
};

struct BoltWorkingStress {
    static constexpr CheckInfo info{"bolt-working-stress", "Bolt stress under the greatest preload and the load", Scope::joint, true, true,
                                    Leading::most_pulled};
    static constexpr Source source{"VDI 2230 Part 1", "2003", "R8, half of the tightening torsion kept", Basis::memory};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        const auto& bolt = s.joint->bolt;
        const auto torsion = s.constants.assembly.torsion;
        steps.heading(info.title, source);
        FAYWRIGHT_STATED(F_V_max, "greatest preload of life", s.greatest);
        FAYWRIGHT_STATED(n_F, "factor on the load", s.factor_of(w.load_case));
        FAYWRIGHT_STATED(Phi_n, "share of a pull that reaches the bolt", s.bolt_share);
        FAYWRIGHT_STATED(F_A, "pull on the bolt", s.load(w.load_case, w.bolt).tension);
        FAYWRIGHT_STATED(A_s, "stress area", s.thread.stress_area);
        FAYWRIGHT_STATED(tau, "torsion at the end of tightening", torsion);
        FAYWRIGHT_STATED(R_p02, "proof strength", bolt.property_class.proof_strength);
        FAYWRIGHT_STEP(sigma_z, (F_V_max + n_F * Phi_n * F_A) / A_s);
        FAYWRIGHT_STEP(sigma_red, sqrt(squared(sigma_z) + 3.0 * squared(0.5 * tau)));
        auto outcome = limited(sigma_red, R_p02, source);
        const auto room = squared(R_p02) - 3.0 * squared(0.5 * tau);
        if (Phi_n * F_A > newton(0) && room > squared(MPa(0))) {
            const double factor = max(static_cast<double>((sqrt(room) * A_s - F_V_max) / (Phi_n * F_A)), 0.0);
            if (factor < 1e6) outcome.design_factor = factor;
        }
        return outcome;
    }

    /// The greatest clamp of life, load apart, that the bolt stands; none where torsion and load leave no room for it.
    static Force allowed(const State& s, const Where& w) {
        const auto room = squared(s.joint->bolt.property_class.proof_strength) - 3.0 * squared(0.5 * s.constants.assembly.torsion);
        if (room <= squared(MPa(0))) return newton(0);
        return max(sqrt(room) * s.thread.stress_area - s.factor_of(w.load_case) * s.bolt_share * s.load(w.load_case, w.bolt).tension,
                   newton(0));
    }
};

/// The code a bolt is checked by: that of the aluminium where there is any, which is the stricter or equal one here.
[[nodiscard]] inline DesignMethod bolt_method(const State& s) {
    for (const auto& ply : s.joint->plies)
        if (ply.is_aluminium()) return ply.method;
    return s.joint->plies.front().method;
}

template <class Steps>
[[nodiscard]] BoltTension::Answer derived_tension_resistance(const State& s, Steps&& steps) {
    const auto method = bolt_method(s);
    steps.heading(BoltTension::formula.title, BoltTension::source(method));
    return BoltTension::compute({.stress_area = s.thread.stress_area,
                                 .bolt_ultimate_strength = s.joint->bolt.property_class.nominal_ultimate_strength,
                                 .method = method},
                                steps);
}

/// Where no steps are kept, what is the same for every bolt and load case is read from the state.
template <class Steps = NoSteps>
[[nodiscard]] BoltTension::Answer bolt_tension_resistance(const State& s, Steps&& steps = Steps{}) {
    if constexpr (keeps_steps<Steps>) return derived_tension_resistance(s, steps);
    return s.constants.tension;
}

struct BoltTensionCheck {
    static constexpr CheckInfo info{"bolt-tension", "Bolt in tension, ultimate", Scope::joint, true, true, Leading::most_pulled};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        const auto resistance = bolt_tension_resistance(s, steps);
        return compared(*s.joint, s.load_case(w.load_case), s.load(w.load_case, w.bolt).tension, resistance.characteristic,
                        resistance.resistance, BoltTension::source(bolt_method(s)));
    }
};

/// Whether every faying plane cuts the plain shank, and not the thread or its run-out.
[[nodiscard]] inline bool thread_in_a_plane(const State& s) {
    auto depth = mm(0);
    const auto run_out = 2.0 * s.joint->bolt.thread.pitch;
    const auto shank = s.joint->bolt.length - s.joint->bolt.thread_length - run_out;
    for (const auto& entry : s.joint->stack) {
        if (entry.kind == StackKind::ply)
            for (const auto& plane : s.joint->planes)
                if (plane.nut_ply == entry.index && depth > shank) return true;
        depth += s.thickness_of(entry);
    }
    return false;
}

template <class Steps>
[[nodiscard]] BoltShear::Answer derived_shear_resistance(const State& s, Steps&& steps) {
    const auto method = bolt_method(s);
    const auto& bolt = s.joint->bolt;
    const bool thread = thread_in_a_plane(s);
    const auto in_thread = method == DesignMethod::as_4100 ? s.thread.root_area : s.thread.stress_area;
    BoltShear::Inputs in{.bolt_diameter = bolt.thread.diameter,
                         .area = thread ? in_thread : s.thread.nominal_area,
                         .bolt_ultimate_strength = bolt.property_class.nominal_ultimate_strength,
                         .thread_in_plane = thread,
                         .shear_factor = bolt.property_class.shear_factor_thread,
                         .planes = static_cast<int>(s.joint->planes.size()),
                         .packing = {},
                         .joint_length = {},
                         .method = method};
    auto packing = mm(0);
    for (const auto& plane : s.joint->planes)
        if (plane.layer) packing = max(packing, s.joint->layers[static_cast<std::size_t>(*plane.layer)].thickness);
    if (packing > mm(0)) in.packing = packing;
    auto longest = mm(0);
    for (const auto& p : s.joint->positions) longest = max(longest, abs(p.x - s.joint->positions.front().x));
    if (longest > mm(0)) in.joint_length = longest;
    steps.heading(BoltShear::formula.title, BoltShear::source(method));
    return BoltShear::compute(in, steps);
}

template <class Steps = NoSteps>
[[nodiscard]] BoltShear::Answer bolt_shear_resistance(const State& s, Steps&& steps = Steps{}) {
    if constexpr (keeps_steps<Steps>) return derived_shear_resistance(s, steps);
    return s.constants.shear;
}

struct BoltShearCheck {
    static constexpr CheckInfo info{"bolt-shear", "Bolt in shear, ultimate", Scope::joint, true, true, Leading::most_sheared};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        const auto resistance = bolt_shear_resistance(s, steps);
        return compared(*s.joint, s.load_case(w.load_case), s.load(w.load_case, w.bolt).resultant, resistance.characteristic,
                        resistance.resistance, BoltShear::source(bolt_method(s)), resistance.outside_range);
    }
};

struct BoltInteractionCheck {
    static constexpr CheckInfo info{"bolt-interaction", "Bolt in shear and tension together, ultimate", Scope::joint, true, true};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        const auto method = bolt_method(s);
        const auto shear = bolt_shear_resistance(s, steps);
        const auto tension = bolt_tension_resistance(s, steps);
        const auto& load = s.load(w.load_case, w.bolt);
        const bool is_static = s.load_case(w.load_case).is_static();
        steps.heading(BoltInteraction::formula.title, BoltInteraction::source(method));
        // Every form of the rule is in proportion to the load, so the factor comes last.
        const auto at = [&](bool characteristic, auto&& keep) {
            return BoltInteraction::compute({.shear = load.resultant,
                                             .shear_resistance = characteristic ? shear.characteristic : shear.resistance,
                                             .tension = load.tension,
                                             .tension_resistance = characteristic ? tension.characteristic : tension.resistance,
                                             .method = method},
                                            keep)
                .utilisation;
        };
        FAYWRIGHT_STATED(u_1, "utilisation at the load without factor", at(is_static, steps));
        FAYWRIGHT_STATED(n_F, "factor on the load", s.factor_of(w.load_case));
        FAYWRIGHT_STEP(u_F, n_F * u_1);
        auto outcome = limited(u_F, 1.0, BoltInteraction::source(method));
        if (const double plain = at(true, NoSteps{}); plain > 1e-6) outcome.design_factor = 1.0 / plain;
        return outcome;
    }
};

struct BoltFatigueCheck {
    static constexpr CheckInfo info{"bolt-fatigue", "Bolt fatigue", Scope::joint, true, true};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        const auto& l = s.load_case(w.load_case);
        if (!l.cycles) return Outcome::none("no load case gives a number of cycles");
        const auto& bolt = s.joint->bolt;
        const auto method = bolt.property_class.is_carbon()
                                ? (bolt.rolled_after_heat_treatment ? FatigueMethod::rolled_after : FatigueMethod::rolled_before)
                                : FatigueMethod::en_1993_1_9;
        // A load that reverses swings the bolt by its share up and down; one that returns to nothing by half of it.
        const auto& load = s.load(w.load_case, w.bolt);
        const Force swing = s.bolt_share * l.load_factor * load.tension;
        const Force amplitude = l.reverses ? swing : swing / 2.0;
        const Force proof = bolt.property_class.proof_strength * s.thread.stress_area;
        steps.heading(BoltFatigue::formula.title, BoltFatigue::source(method));
        const auto answer = BoltFatigue::compute({.force_amplitude = amplitude,
                                                  .stress_area = s.thread.stress_area,
                                                  .nominal_diameter = bolt.thread.diameter,
                                                  .mean_force = min(s.settled_least + amplitude, proof),
                                                  .proof_force = proof,
                                                  .coating_factor = bolt.finish.fatigue_factor,
                                                  .cycles = *l.cycles,
                                                  .method = method},
                                                 steps);
        auto outcome = limited(answer.amplitude, answer.endurance, BoltFatigue::source(method), answer.outside_range);
        if (answer.amplitude > MPa(1e-3)) outcome.design_factor = answer.endurance / answer.amplitude;
        return outcome;
    }
};

/// What the bolt's head (part 0) or nut (part 1) presses on.
struct BearingFacePressure {
    static constexpr CheckInfo info{"face-pressure", "Pressure under head or nut", Scope::end, true, true, Leading::most_pulled};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        const bool at_head = w.part == 0;
        const auto& bolt = s.joint->bolt;
        const auto& ply = at_head ? s.joint->plies.front() : s.joint->plies.back();
        if (s.tube_passes_walls() && ply.role != PlyRole::plate)
            return Outcome::none("the washer stands on the tube's end: see tube-end-pressure");
        const auto& washer = bolt.washer(at_head);
        SurfacePressure::Inputs in{.force = greatest_in(s, w),
                                   .bearing_diameter = bolt.bearing_diameter(at_head),
                                   .bearing_hole = max(ply.hole_diameter, washer ? washer->inside_diameter : mm(0)),
                                   .permissible_pressure = ply.material.surface_pressure,
                                   .washer_diameter = {}};
        if (washer) {
            in.washer_thickness = washer->thickness;
            in.washer_diameter = washer->outside_diameter;
        }
        if (SurfacePressure::refusal(in) != nullptr)
            return limited(in.force, newton(0), SurfacePressure::formula.source, "the hole is as large as the bearing face");
        steps.heading(SurfacePressure::formula.title, SurfacePressure::formula.source);
        const auto answer = SurfacePressure::compute(in, steps);
        return limited(answer.pressure, in.permissible_pressure, SurfacePressure::formula.source, answer.outside_range);
    }
};

/// Nut strength as this program takes it: 80 MPa for each unit of a steel class, 10 MPa for each of a stainless one.
[[nodiscard]] inline Stress nut_strength(const Nut& nut) {
    double number = 0;
    std::from_chars(nut.nut_class.data(), nut.nut_class.data() + nut.nut_class.size(), number);
    return number >= 20 ? MPa(10.0 * number) : MPa(80.0 * max(number, 4.0));
}

template <class Steps>
[[nodiscard]] StrippingState thread_stripping(const State& s, Steps&& steps) {
    const auto& bolt = s.joint->bolt;
    const auto& t = bolt.thread;
    const ThreadStripping::Inputs in{.nominal_diameter = t.diameter,
                                     .pitch = t.pitch,
                                     .engagement = t.nut_height_least - t.pitch,
                                     .bolt_major_least = t.major_diameter_least,
                                     .bolt_pitch_least = t.pitch_diameter_least,
                                     .nut_minor_greatest = t.nut_minor_diameter_most + bolt.nut_oversize,
                                     .nut_pitch_greatest = t.nut_pitch_diameter_most + bolt.nut_oversize,
                                     .width_across_flats = t.across_flats,
                                     .bolt_strength = bolt.property_class.ultimate_strength,
                                     .nut_strength = nut_strength(bolt.nut),
                                     .bolt_shear_ratio = bolt.property_class.shear_strength_ratio,
                                     .nut_shear_ratio = 0.7};
    if (const char* why = ThreadStripping::refusal(in); why != nullptr) return {{}, why};
    steps.heading(ThreadStripping::formula.title, ThreadStripping::formula.source);
    return {ThreadStripping::compute(in, steps), nullptr};
}

struct ThreadStrippingCheck {
    static constexpr CheckInfo info{"thread-stripping", "Stripping of bolt or nut thread", Scope::joint, true, true, Leading::most_pulled};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        const auto [answer, refused] = keeps_steps<Steps> ? thread_stripping(s, steps) : s.constants.stripping;
        if (refused != nullptr) return limited(greatest_in(s, w), newton(0), ThreadStripping::formula.source, refused);
        const char* note = answer.outside_range;
        if (note == nullptr && answer.margin < 1.0)
            note = "by this reckoning the thread strips before the bolt breaks: overtightening gives no warning";
        return limited(greatest_in(s, w), min(answer.bolt_thread_force, answer.nut_thread_force), ThreadStripping::formula.source, note);
    }
};

struct NutMatch {
    static constexpr CheckInfo info{"nut-match", "Nut at least as strong as the bolt", Scope::joint};
    static constexpr Source source{"ISO 898-2", "2012", "Table 2 and proof loads", Basis::memory};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where&, Steps&& steps = Steps{}) {
        const auto& bolt = s.joint->bolt;
        steps.heading(info.title, source);
        FAYWRIGHT_STATED(A_s, "stress area", s.thread.stress_area);
        FAYWRIGHT_STATED(F_nut, "proof load of the nut", bolt.nut.proof_load);
        if (bolt.nut.oversize) {
            // ISO 10684 lowers the nut's load in these sizes; the bolt's proof load is what the pair must still hold.
            FAYWRIGHT_STATED(S_p, "stress under the bolt's proof load",
                             bolt.property_class.proof_stress.value_or(bolt.property_class.proof_strength));
            FAYWRIGHT_STEP(F_bolt, A_s * S_p);
            return limited(F_bolt, F_nut, source, "oversize nut of this size: held against the bolt's proof load, not its breaking load");
        }
        FAYWRIGHT_STATED(R_m, "least tensile strength of the bolt", bolt.property_class.ultimate_strength);
        FAYWRIGHT_STEP(F_bolt, A_s * R_m);
        FAYWRIGHT_STATED(q, "tables give proof loads to three figures: half a percent", 1.005);
        FAYWRIGHT_STEP(F_allow, q * F_nut);
        return limited(F_bolt, F_allow, source);
    }
};

/// Punching of the outer ply under head (part 0) or nut (part 1).
struct PullThroughCheck {
    static constexpr CheckInfo info{"pull-through", "Head or nut pulled through the ply", Scope::end, true, true, Leading::most_pulled};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        const bool at_head = w.part == 0;
        const auto& bolt = s.joint->bolt;
        const auto& ply = at_head ? s.joint->plies.front() : s.joint->plies.back();
        if (ply.role != PlyRole::plate && s.arrangement() == TubeArrangement::between_walls)
            return Outcome::none("the tube stands behind this wall");
        const auto& washer = bolt.washer(at_head);
        PullThrough::Inputs in{.across_flats = bolt.thread.across_flats,
                               .across_corners = bolt.thread.across_corners,
                               .washer_diameter = {},
                               .thickness = ply.thickness,
                               .ultimate_strength = ply.ultimate_strength};
        if (washer && washer->outside_diameter >= bolt.thread.across_flats) {
            in.washer_diameter = washer->outside_diameter;
            in.edge = PullThroughEdge::washer;
        }
        steps.heading(PullThrough::formula.title, PullThrough::source(in.edge));
        const auto answer = PullThrough::compute(in, steps);
        const auto& load_case = s.load_case(w.load_case);
        const auto tension = s.load(w.load_case, w.bolt).tension;
        const auto through = in.washer_diameter.value_or(in.across_flats);
        if (through <= ply.hole_diameter)
            return limited(tension, newton(0), PullThrough::source(in.edge), "the hole is as large as what should hold in it");
        // A washer that overlaps a wide hole by a narrow rim crushes the rim first.
        FAYWRIGHT_STATED(A_rim, "rim of metal under the washer or head", pi / 4.0 * (squared(through) - squared(ply.hole_diameter)));
        FAYWRIGHT_STATED(p_G, "permissible pressure of the ply", ply.material.surface_pressure);
        FAYWRIGHT_STEP(F_rim, A_rim * p_G);
        return compared(*s.joint, load_case, tension, min(answer.characteristic, F_rim), min(answer.resistance, F_rim),
                        PullThrough::source(in.edge), answer.outside_range);
    }
};

struct Protrusion {
    static constexpr CheckInfo info{"protrusion", "Thread beyond the nut", Scope::joint};
    static constexpr Source source{"EN 1090-2", "2018", "8.2.2", Basis::memory};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where&, Steps&& steps = Steps{}) {
        const auto& bolt = s.joint->bolt;
        steps.heading(info.title, source);
        FAYWRIGHT_STATED(L, "bolt length", bolt.length);
        FAYWRIGHT_STATED(l_K, "grip", s.grip);
        FAYWRIGHT_STATED(m, "nut height", bolt.thread.nut_height);
        FAYWRIGHT_STATED(P, "one pitch", bolt.thread.pitch);
        FAYWRIGHT_STEP(v, L - l_K - m);
        return limited(P, v, source);
    }
};

struct FreeThread {
    static constexpr CheckInfo info{"free-thread", "Free thread between shank and nut", Scope::joint};
    static constexpr Source source{"EN 1090-2", "2018", "8.2.2", Basis::memory};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where&, Steps&& steps = Steps{}) {
        steps.heading(info.title, source);
        FAYWRIGHT_STATED(l_K, "grip", s.grip);
        FAYWRIGHT_STATED(l_1, "plain shank in the grip", s.shank_in_grip);
        FAYWRIGHT_STATED(P, "pitch", s.joint->bolt.thread.pitch);
        FAYWRIGHT_STEP(l_4, 4.0 * P);
        FAYWRIGHT_STEP(l_free, l_K - l_1);
        return limited(l_4, l_free, source);
    }
};

/// What is the same for every bolt and load case, worked out once.
inline void work_out_constants(State& s) {
    s.constants = {derived_shear_resistance(s, NoSteps{}), derived_tension_resistance(s, NoSteps{}), thread_stripping(s, NoSteps{}),
                   assembly_stress(s, NoSteps{})};
}

}  // namespace faywright::checks
