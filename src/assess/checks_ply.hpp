// SPDX-License-Identifier: MIT
#pragma once

#include "assess/checks_joint.hpp"
#include "mechanics/bearing.hpp"
#include "mechanics/block_tearing.hpp"
#include "mechanics/edge_distance.hpp"
#include "mechanics/member_fatigue.hpp"
#include "mechanics/net_section.hpp"
#include "mechanics/prying.hpp"
#include "mechanics/tear_out.hpp"

/// Checks of each ply (part): what the bolts do to the metal around their holes.
namespace faywright::checks {

/// What one bolt puts on a ply that takes this share of its in-plane force.
template <class Steps>
[[nodiscard]] Force force_on_ply(const State& s, const Where& w, double share, Steps&& steps) {
    steps.heading("Force of the bolt on this ply", Source{"", "", "", Basis::practice});
    FAYWRIGHT_STATED(F_v, "in-plane force of the bolt", s.load(w.load_case, w.bolt).resultant);
    FAYWRIGHT_STATED(q, "share of this ply", share);
    FAYWRIGHT_STEP(F_b, q * F_v);
    return F_b;
}

struct BearingCheck {
    static constexpr CheckInfo info{"bearing", "Bearing on the wall of the hole", Scope::ply, true, true};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        const double share = s.share[static_cast<std::size_t>(w.part)];
        if (share == 0.0) return Outcome::none("no faying plane brings load to this ply");
        const auto& ply = s.ply(w.part);
        const auto& edges = s.pushed_edges(w.part, w.load_case, w.bolt);
        const Bearing::Inputs in{.bolt_diameter = ply.bearing_diameter,
                                 .hole_diameter = ply.hole_diameter,
                                 .thickness = ply.thickness,
                                 .ultimate_strength = ply.ultimate_strength,
                                 .bolt_ultimate_strength = s.joint->bolt.property_class.nominal_ultimate_strength,
                                 .end_distance = edges.end,
                                 .edge_distance = edges.edge,
                                 .pitch = edges.pitch,
                                 .gauge = edges.gauge,
                                 .method = ply.method};
        steps.heading(Bearing::formula.title, Bearing::source(ply.method));
        const auto answer = Bearing::compute(in, steps);
        const Force pushed = force_on_ply(s, w, share, steps);
        return compared(*s.joint, s.load_case(w.load_case), pushed, answer.characteristic, answer.resistance, Bearing::source(ply.method),
                        answer.outside_range);
    }
};

struct TearOutCheck {
    static constexpr CheckInfo info{"tear-out", "Tear-out to the end or the next hole", Scope::ply, true, true};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        const double share = s.share[static_cast<std::size_t>(w.part)];
        if (share == 0.0) return Outcome::none("no faying plane brings load to this ply");
        const auto& ply = s.ply(w.part);
        const auto& edges = s.pushed_edges(w.part, w.load_case, w.bolt);
        auto end = edges.end;
        // Towards the next hole only the ligament between the two tears.
        if (edges.pitch) end = min(end, *edges.pitch - 0.5 * ply.hole_diameter);
        end = max(end, 0.51 * ply.hole_diameter);
        const TearOut::Inputs in{.bolt_diameter = ply.bearing_diameter,
                                 .hole_diameter = ply.hole_diameter,
                                 .thickness = ply.thickness,
                                 .ultimate_strength = ply.ultimate_strength,
                                 .end_distance = end,
                                 .method = ply.method};
        steps.heading(TearOut::formula.title, TearOut::source(ply.method));
        const auto answer = TearOut::compute(in, steps);
        const Force pushed = force_on_ply(s, w, share, steps);
        return compared(*s.joint, s.load_case(w.load_case), pushed, answer.characteristic, answer.resistance, TearOut::source(ply.method),
                        answer.outside_range);
    }
};

struct NetSectionCheck {
    static constexpr CheckInfo info{"net-section", "Net section", Scope::ply, true, false};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        const double share = s.share[static_cast<std::size_t>(w.part)];
        if (share == 0.0) return Outcome::none("no faying plane brings load to this ply");
        const auto& ply = s.ply(w.part);
        const auto& l = s.load_case(w.load_case);
        Outcome worst = Outcome::none("the ply runs on across the load: no net section to check here");
        for (const bool x_axis : {true, false}) {
            const Force total = abs(x_axis ? l.force_x : l.force_y);
            const auto& view = s.seen_along(w.part, x_axis);
            if (view.width > far_away / 2.0 || total < newton(1e-3)) continue;
            const bool wall = ply.role != PlyRole::plate;
            const auto compute = [&](bool bare, auto&& keep) {
                auto& steps = keep;
                steps.heading(NetSection::formula.title, NetSection::source(ply.method));
                FAYWRIGHT_STATED(w_p, wall ? "width of the wall" : "width across the load", view.width);
                FAYWRIGHT_STATED(t, "thickness", ply.thickness);
                FAYWRIGHT_STATED(n_h, "holes in the fullest line across the load", static_cast<double>(view.across));
                FAYWRIGHT_STATED(d_0, "hole", ply.hole_diameter);
                FAYWRIGHT_STEP(A_g, w_p * t);
                FAYWRIGHT_STEP(A_n, max((w_p - n_h * d_0) * t, 0.001 * A_g));
                NetSection::Inputs in{.gross_area = A_g,
                                      .net_area = A_n,
                                      .yield_strength = ply.proof_strength,
                                      .ultimate_strength = ply.ultimate_strength,
                                      .method = ply.method};
                // Without partial factors the smaller of yield and rupture, as the rule weighs them.
                if (bare) in.gamma_M0 = in.gamma_M1 = in.gamma_M2 = 1.0;
                return NetSection::compute(in, steps);
            };
            const auto design = compute(false, NoSteps{}), bare = compute(true, NoSteps{});
            auto outcome = compared(*s.joint, l, share * total, bare.resistance, design.resistance, NetSection::source(ply.method),
                                    design.outside_range);
            if (!worst.applicable || outcome.utilisation > worst.utilisation) {
                worst = outcome;
                if constexpr (keeps_steps<Steps>) static_cast<void>(compute(false, steps));
            }
        }
        return worst;
    }
};

struct BlockTearingCheck {
    static constexpr CheckInfo info{"block-tearing", "Block tearing of the group", Scope::ply, true, false};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        const double share = s.share[static_cast<std::size_t>(w.part)];
        if (share == 0.0) return Outcome::none("no faying plane brings load to this ply");
        const auto& ply = s.ply(w.part);
        const auto& l = s.load_case(w.load_case);
        Outcome worst = Outcome::none("no end of this ply lies before the bolts in this direction");
        for (const bool x_axis : {true, false}) {
            const Force along = x_axis ? l.force_x : l.force_y;
            if (abs(along) < newton(1e-3)) continue;
            const bool positive = (along > newton(0)) == (ply.side == Side::rail);
            const auto& view = s.seen_along(w.part, x_axis);
            const Length end = positive ? view.end_high : view.end_low;
            if (end > far_away / 2.0) continue;
            // Any lever counts, be it more than rounding.
            const bool eccentric = abs(l.turning_about(s.pattern.centroid)) > um(1) * sqrt(squared(l.force_x) + squared(l.force_y));
            const auto compute = [&](bool bare, auto&& keep) {
                auto& steps = keep;
                steps.heading(BlockTearing::formula.title, BlockTearing::source(ply.method));
                FAYWRIGHT_STATED(b, "between the outermost bolts, across the load", view.span);
                FAYWRIGHT_STATED(n_a, "bolts in the fullest line across", static_cast<double>(view.across));
                FAYWRIGHT_STATED(L_v, "outermost bolt line to the end", view.length + end);
                FAYWRIGHT_STATED(n_v, "bolts in the fullest line along", static_cast<double>(view.along));
                FAYWRIGHT_STATED(t, "thickness", ply.thickness);
                FAYWRIGHT_STATED(d_0, "hole", ply.hole_diameter);
                FAYWRIGHT_STEP(A_nt, max((b - (n_a - 1.0) * d_0) * t, 0.0 * b * t));
                FAYWRIGHT_STEP(A_nv, max(2.0 * (L_v - (n_v - 0.5) * d_0) * t, 0.001 * L_v * t));
                BlockTearing::Inputs in{.net_tension_area = A_nt,
                                        .net_shear_area = A_nv,
                                        .gross_shear_area = 2.0 * L_v * t,
                                        .yield_strength = ply.proof_strength,
                                        .ultimate_strength = ply.ultimate_strength,
                                        .pull = eccentric ? BlockPull::eccentric : BlockPull::concentric,
                                        .method = ply.method};
                if (bare) in.gamma_M0 = in.gamma_M1 = in.gamma_M2 = 1.0;
                return BlockTearing::compute(in, steps);
            };
            const auto design = compute(false, NoSteps{}), bare = compute(true, NoSteps{});
            auto outcome = compared(*s.joint, l, share * abs(along), bare.resistance, design.resistance, BlockTearing::source(ply.method),
                                    design.outside_range);
            if (!worst.applicable || outcome.utilisation > worst.utilisation) {
                worst = outcome;
                if constexpr (keeps_steps<Steps>) static_cast<void>(compute(l.is_static(), steps));
            }
        }
        return worst;
    }
};

/// Least distances to edges and neighbours, whatever the load.
struct EdgeDistanceCheck {
    static constexpr CheckInfo info{"edge-distance", "Least edge distance and pitch", Scope::ply, false, true};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        const auto& ply = s.ply(w.part);
        const auto ahead = edges_of(ply, s.joint->positions, w.bolt, 1, 0), back = edges_of(ply, s.joint->positions, w.bolt, -1, 0);
        const auto nearer = [](const std::optional<Length>& a, const std::optional<Length>& b) {
            return a && b ? std::optional(min(*a, *b)) : a ? a : b;
        };
        EdgeDistance::Inputs in{.bolt_diameter = ply.bearing_diameter,
                                .hole_diameter = ply.hole_diameter,
                                .thickness = ply.thickness,
                                .end_distance = min(ahead.end, back.end),
                                .edge_distance = ahead.edge,
                                .pitch = nearer(ahead.pitch, back.pitch),
                                .gauge = nearer(ahead.gauge, back.gauge),
                                .method = ply.method};
        steps.heading(EdgeDistance::formula.title, EdgeDistance::source(ply.method));
        const auto answer = EdgeDistance::compute(in, steps);
        return limited(answer.utilisation, 1.0, EdgeDistance::source(ply.method), answer.outside_range);
    }
};

/// Prying of a plate held by a web or weld beside the bolt line.
struct PlatePrying {
    static constexpr CheckInfo info{"plate-prying", "Plate bending and prying beside the bolt", Scope::ply, true, true};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        const auto& ply = s.ply(w.part);
        if (!ply.lever_to_web) return Outcome::none("the joint file gives no lever-to-web for this plate");
        const auto edges = edges_of(ply, s.joint->positions, w.bolt, 0, 1);
        const auto back = edges_of(ply, s.joint->positions, w.bolt, 0, -1);
        const auto m = *ply.lever_to_web;
        const auto gauge = edges.gauge.value_or(2.0 * edges.edge);
        const auto tension = bolt_tension_resistance(s);
        const bool is_static = s.load_case(w.load_case).is_static();
        const Prying::Inputs in{.effective_length = min(4.0 * m + 1.25 * min(edges.end, back.end), min(2.0 * pi * m, gauge)),
                                .thickness = ply.thickness,
                                .yield_strength = ply.proof_strength,
                                .bolt_to_web = m,
                                .bolt_to_edge = max(min(edges.end, back.end), 0.6 * ply.hole_diameter),
                                .bolt_tension_resistance = is_static ? tension.characteristic : tension.resistance,
                                .bolts = 1,
                                .washer_diameter = {}};
        if (Prying::refusal(in) != nullptr)
            return limited(s.load(w.load_case, w.bolt).tension, newton(0), Prying::formula.source, Prying::refusal(in));
        steps.heading(Prying::formula.title, Prying::formula.source);
        const auto answer = Prying::compute(in, steps);
        return compared(*s.joint, s.load_case(w.load_case), s.load(w.load_case, w.bolt).tension, answer.resistance, answer.resistance,
                        Prying::formula.source, answer.outside_range);
    }
};

/// The metal beside a bolt's hole as a detail of the fatigue codes.
struct HoleDetail {
    Stress category;
    double slope, second_slope;
    const Source& source;
};
inline constexpr Source aluminium_hole{"EN 1999-1-3", "2007", "Table J.15, bolted joint 56-4", Basis::memory};
inline constexpr Source steel_hole{"EN 1993-1-9", "2005", "Table 8.1, category 50: holes in bearing without preload", Basis::memory};
[[nodiscard]] inline HoleDetail hole_detail(bool aluminium) {
    if (aluminium) return {MPa(56), 4.0, 4.0, aluminium_hole};
    return {MPa(50), 3.0, 5.0, steel_hole};
}

/// A stress range beside a hole against what its metal endures for the cycles of the load.
template <class Steps>
[[nodiscard]] Outcome endured_at_hole(Stress range, double cycles, const HoleDetail& detail, Steps&& steps) {
    const auto endured = MemberFatigue::compute({.stress_range = range,
                                                 .category = detail.category,
                                                 .slope = detail.slope,
                                                 .second_slope = detail.second_slope,
                                                 .cycles = cycles},
                                                steps)
                             .endured;
    auto outcome = limited(range, endured, detail.source);
    if (range > MPa(1e-3)) outcome.design_factor = endured / range;
    return outcome;
}

/// Fatigue of the metal beside the hole from the force the bolt brings into it.
struct PlyFatigue {
    static constexpr CheckInfo info{"ply-fatigue", "Fatigue of the ply beside the hole", Scope::ply, true, true};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        const auto& l = s.load_case(w.load_case);
        const double share = s.share[static_cast<std::size_t>(w.part)];
        if (share == 0.0) return Outcome::none("no faying plane brings load to this ply");
        if (!l.cycles) return Outcome::none("no load case gives a number of cycles");
        const auto& ply = s.ply(w.part);
        const auto& edges = s.pushed_edges(w.part, w.load_case, w.bolt);
        const auto detail = hole_detail(ply.is_aluminium());
        // The line of bolts along the force passes its load on: the last of them sees what all have brought in.
        int in_line = 1;
        const auto& load = s.load(w.load_case, w.bolt);
        const auto& here = s.joint->positions[static_cast<std::size_t>(w.bolt)];
        for (const auto& other : s.joint->positions) {
            const auto dx = other.x - here.x, dy = other.y - here.y;
            const bool itself = squared(dx) + squared(dy) < squared(um(1));
            if (!itself && abs(load.along_x * dy - load.along_y * dx) < ply.hole_diameter) ++in_line;
        }
        steps.heading("Nominal stress on the strip of one line of bolts", Source{"", "", "", Basis::practice});
        FAYWRIGHT_STATED(F_v, "in-plane force of the bolt", load.resultant);
        FAYWRIGHT_STATED(q, "share of this ply", share);
        FAYWRIGHT_STATED(n_l, "bolts in its line along the force", static_cast<double>(in_line));
        FAYWRIGHT_STATED(gamma_F, "load factor of the case", l.load_factor);
        FAYWRIGHT_STATED(r, "2 where the load reverses, else 1", l.reverses ? 2.0 : 1.0);
        // Further than eight diameters out the metal hardly shares in this line's force.
        FAYWRIGHT_STATED(w_s, "strip of metal of the line: to the edge or half-way to the next, both sides, at most 8 hole diameters",
                         min(min(2.0 * edges.edge, edges.gauge.value_or(2.0 * edges.edge)), 8.0 * ply.hole_diameter));
        FAYWRIGHT_STATED(d_0, "hole", ply.hole_diameter);
        FAYWRIGHT_STATED(t, "thickness", ply.thickness);
        FAYWRIGHT_STEP(dsigma, r * gamma_F * q * n_l * F_v / (max(w_s - d_0, 0.05 * d_0) * t));
        steps.heading(MemberFatigue::formula.title, detail.source);
        return endured_at_hole(dsigma, *l.cycles, detail, steps);
    }
};

}  // namespace faywright::checks
