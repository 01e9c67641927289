// SPDX-License-Identifier: MIT
#pragma once

#include "assess/checks_bolt.hpp"
#include "mechanics/slip.hpp"

/// Checks of the clamped joint as a whole: slip, separation, layers.
namespace faywright::checks {

/// Slip at a faying plane (part), bolt by bolt, at the least clamp of life.
struct SlipCheck {
    static constexpr CheckInfo info{"slip", "Slip of the faying surfaces", Scope::plane, true, true};
    static constexpr Stress least_proof() { return Stress::from_value(200e6); }

    /// Why friction may not be counted on at a plane, or nullptr.
    static const char* barred(const State& s, const FayingPlane& plane) {
        if (s.tube_passes_walls()) return "the tube passes the walls: they are not clamped, the load goes by bearing of the tube";
        for (const int index : {plane.head_ply, plane.nut_ply})
            if (s.ply(index).is_aluminium() && s.ply(index).proof_strength <= MPa(200))
                return "aluminium of at most 200 MPa proof strength is outside the code's slip-resistant use: the load goes by bearing";
        if (plane.layer && !s.joint->layers[static_cast<std::size_t>(*plane.layer)].material.sustained_clamp)
            return "the layer between does not keep a clamp: the load goes by bearing";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        const auto& plane = s.joint->planes[static_cast<std::size_t>(w.part)];
        if (const char* why = barred(s, plane); why != nullptr) return Outcome::none(why);
        return resisted(s, w, steps);
    }

    /// The same where friction is counted on.
    template <class Steps = NoSteps>
    static Outcome resisted(const State& s, const Where& w, Steps&& steps = Steps{}) {
        const auto& plane = s.joint->planes[static_cast<std::size_t>(w.part)];
        const auto& load = s.load(w.load_case, w.bolt);
        const double factor = s.factor_of(w.load_case);
        const auto planes = static_cast<double>(s.joint->planes.size());
        const Force clamp = s.least_clamp();
        const double gamma_M3 = s.load_case(w.load_case).is_static() ? 1.0 : 1.25;
        steps.heading(Slip::formula.title, Slip::source(SlipMethod::clamp_friction));
        FAYWRIGHT_STATED(
            F_least,
            s.is_open_cavity() ? "least of life and of what the open walls stand" : "least clamp of life, load apart (see --explain clamp)",
            clamp);
        static_cast<void>(F_least);
        const auto answer = Slip::compute({.clamp = clamp,
                                           .friction = plane.slip_factor,
                                           .planes = 1,
                                           .tension = factor * load.tension,
                                           .tension_share = s.clamp_share,
                                           .gamma_M3 = gamma_M3,
                                           .proof_strength = {},
                                           .method = SlipMethod::clamp_friction},
                                          steps);
        steps.heading("Shear of one bolt at one plane", Source{"", "", "", Basis::practice});
        FAYWRIGHT_STATED(n_F, "factor on the load", factor);
        FAYWRIGHT_STATED(F_v, "in-plane force of the bolt", load.resultant);
        FAYWRIGHT_STATED(n_p, "faying planes that share it", planes);
        FAYWRIGHT_STEP(F_v_Ed, n_F * F_v / n_p);
        auto outcome = limited(F_v_Ed, answer.resistance, Slip::source(SlipMethod::clamp_friction), answer.outside_range);
        const Force pulls = load.resultant / planes + plane.slip_factor * s.clamp_share * load.tension;
        if (pulls > newton(1e-3)) outcome.design_factor = plane.slip_factor * clamp / pulls;
        return outcome;
    }

    /// The least clamp that resists, where friction is counted on; nothing where the faces have none to resist with.
    static std::optional<Force> needed(const State& s, const Where& w) {
        const auto& plane = s.joint->planes[static_cast<std::size_t>(w.part)];
        const auto& load = s.load(w.load_case, w.bolt);
        const double gamma_M3 = s.load_case(w.load_case).is_static() ? 1.0 : 1.25;
        const Force shear = s.factor_of(w.load_case) * load.resultant / static_cast<double>(s.joint->planes.size());
        const Force relief = s.clamp_share * s.factor_of(w.load_case) * load.tension;
        if (shear <= newton(0)) return newton(0);
        if (plane.slip_factor <= 0.0) return std::nullopt;
        return relief + gamma_M3 * shear / plane.slip_factor;
    }
};

struct Separation {
    static constexpr CheckInfo info{"separation", "Opening of the clamped faces", Scope::joint, true, true, Leading::most_pulled};
    static constexpr Source source{"VDI 2230 Part 1", "2003", "5.3 with the load introduced at the outer plates", Basis::memory};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        steps.heading(info.title, source);
        FAYWRIGHT_STATED(n_F, "factor on the load", s.factor_of(w.load_case));
        FAYWRIGHT_STATED(c_P, "share of the pull that leaves the clamp", s.clamp_share);
        FAYWRIGHT_STATED(F_A, "pull on the bolt", s.load(w.load_case, w.bolt).tension);
        FAYWRIGHT_STATED(F_K, "least clamp of life, load apart", s.least_clamp());
        FAYWRIGHT_STEP(F_PA, n_F * c_P * F_A);
        auto outcome = limited(F_PA, F_K, source);
        if (c_P * F_A > newton(1e-3)) outcome.design_factor = F_K / (c_P * F_A);
        return outcome;
    }

    /// The least clamp that keeps the faces closed.
    static Force needed(const State& s, const Where& w) {
        return s.factor_of(w.load_case) * s.clamp_share * s.load(w.load_case, w.bolt).tension;
    }
};

/// Pressure on a layer under the bolt's pressure cone.
struct LayerPressure {
    static constexpr CheckInfo info{"layer-pressure", "Pressure on the isolation layer", Scope::layer};
    static constexpr Source source{"pressure cone of 30 degrees from the bearing face", "", "", Basis::practice};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        const auto& joint = *s.joint;
        auto before = mm(0), after = mm(0), hole = joint.bolt.hole_diameter;
        bool past = false;
        for (const auto& entry : joint.stack) {
            if (entry.kind == StackKind::ply) hole = max(hole, s.ply(entry.index).hole_diameter);
            if (entry.kind == StackKind::layer && entry.index == w.part) {
                past = true;
                continue;
            }
            // The cone starts afresh at a tube's end.
            if (entry.kind == StackKind::cavity) {
                if (past) break;
                before = mm(0);
            } else {
                (past ? after : before) += entry.thickness;
            }
        }
        const auto& layer = joint.layers[static_cast<std::size_t>(w.part)];
        steps.heading(info.title, source);
        FAYWRIGHT_STATED(F_max, "greatest bolt force", s.greatest);
        FAYWRIGHT_STATED(d_W, "bearing face of head or nut", min(joint.bolt.bearing_diameter(true), joint.bolt.bearing_diameter(false)));
        FAYWRIGHT_STATED(h, "metal between bearing face and layer, on the thinner side", min(before, after));
        FAYWRIGHT_STATED(d_h, "largest hole of the plies", hole);
        FAYWRIGHT_STEP(D, d_W + 2.0 * h * tan(pi / 6.0));
        if (D <= d_h) return limited(s.greatest, newton(0), source, "the pressure cone falls through the hole");
        FAYWRIGHT_STEP(A, pi / 4.0 * (squared(D) - squared(d_h)));
        FAYWRIGHT_STEP(p, F_max / A);
        return limited(p, layer.material.pressure_limit, source);
    }
};

struct LayerTemperature {
    static constexpr CheckInfo info{"layer-temperature", "Temperature limits of the isolation layer", Scope::layer};
    static constexpr Source source{"data/layers.toml", "", "temperature limits of the row", Basis::practice};

    template <class Steps = NoSteps>
    static Outcome evaluate(const State& s, const Where& w, Steps&& steps = Steps{}) {
        const auto& joint = *s.joint;
        const auto& layer = joint.layers[static_cast<std::size_t>(w.part)].material;
        const TemperatureDifference heat = joint.hottest - joint.assembly, cold = joint.assembly - joint.coldest;
        const TemperatureDifference hot_room = layer.temperature_most - joint.assembly,
                                    cold_room = joint.assembly - layer.temperature_least;
        const auto share = [](TemperatureDifference used, TemperatureDifference room) {
            return room > kelvin(0) ? static_cast<double>(used / room) : used > kelvin(0) ? 1e6 : 0.0;
        };
        const bool heat_governs = share(heat, hot_room) >= share(cold, cold_room);
        steps.heading(info.title, source);
        FAYWRIGHT_STATED(dT, heat_governs ? "rise from assembly to the hottest" : "fall from assembly to the coldest",
                         heat_governs ? heat : cold);
        FAYWRIGHT_STATED(dT_lim, "from assembly to the layer's limit", max(heat_governs ? hot_room : cold_room, kelvin(0)));
        return limited(dT, dT_lim, source);
    }
};

}  // namespace faywright::checks
