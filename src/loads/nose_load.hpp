// SPDX-License-Identifier: MIT
#pragma once

#include "loads/trailer_body.hpp"
#include "quantity/field.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

namespace faywright {

/// Nose load of a centre-axle trailer, standing and while it brakes.
struct NoseLoad {
    static constexpr Formula formula{.name = "nose-load",
                                     .title = "Nose load and axle load of a centre-axle trailer, standing and braking",
                                     .range = "one rigid body, ball coupling, axle group with load-sharing springs",
                                     .source = {"elementary statics", "", "trailer as one rigid body", Basis::practice}};

    struct Inputs {
        Mass mass;
        Length centre, axle, centre_height = mm(1000), coupling_height = mm(430);
        Acceleration braking{};
        Force thrust{};

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"mass", "m", "mass of the trailer"}, self.mass, Range{kg(50), kg(100000)});
            field(Name{"centre", "x_G", "coupling to the centre of gravity"}, self.centre, Range{mm(100), mm(20000)});
            field(Name{"axle", "L_a", "coupling to the middle of the axle group"}, self.axle, Range{mm(100), mm(20000)});
            field(Name{"centre-height", "h_G", "height of the centre of gravity"}, self.centre_height, Range{mm(0), mm(5000)}, defaulted);
            field(Name{"coupling-height", "h_c", "height of the coupling"}, self.coupling_height, Range{mm(0), mm(2000)}, defaulted);
            field(Name{"braking", "a", "deceleration"}, self.braking, Range{m_per_s2(0), m_per_s2(20)}, defaulted);
            field(Name{"thrust", "H", "push of the towing vehicle at the coupling while braking"}, self.thrust, Range{newton(0), kN(1000)},
                  defaulted);
        }
    };

    struct Answer {
        Force nose, axle_load, braked;
        double share = 0.0;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"nose-load", "V_0", "force of the coupling on the trailer, standing, upward"}, self.nose);
            field(Name{"axle-load", "N_0", "on the axle group, standing"}, self.axle_load);
            field(Name{"nose-load-braking", "V", "the same force while braking"}, self.braked);
            field(Name{"nose-share", "p", "nose load over weight"}, self.share);
        }
    };

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [m, x_G, L_a, h_G, h_c, a, H] = in;
        FAYWRIGHT_STATED(W, "9.81 m/s2 · m", m * gravity);
        FAYWRIGHT_STEP(V_0, W * (1.0 - x_G / L_a));
        FAYWRIGHT_STEP(N_0, W - V_0);
        FAYWRIGHT_STEP(V, V_0 + (m * a * h_G - H * h_c) / L_a);
        FAYWRIGHT_STEP(p, V_0 / W);
        return {V_0, N_0, V, p};
    }
};

}  // namespace faywright
