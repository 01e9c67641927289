// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/field.hpp"
#include "quantity/quantity.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

namespace faywright {

/// A coupling's characteristic value at another speed than the 80 km/h for which it is rated: what is asked for grows with the root of the
/// speed, so the same coupling serves a greater value at a lower speed. A proposal for heavy transport, no law.
struct SpeedScaling {
    static constexpr Formula formula{.name = "speed-scaling",
                                     .title = "Coupling value that serves at another speed than 80 km/h",
                                     .range = "heavy transport at restricted speed; a working group's proposal, no law",
                                     .source = {"Working group on UN Regulation 55", "slides R55_07_18", "item 20", Basis::published}};

    struct Inputs {
        Force rated;
        Speed speed;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"rated", "X_80", "D, D_c or V at 80 km/h"}, self.rated, Range{newton(1), kN(2000)});
            field(Name{"speed", "v", "speed in use"}, self.speed, Range{m_per_s(1), m_per_s(40)});
        }
    };

    struct Answer {
        double factor = 1.0;
        Force serves;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"factor", "k", "value asked for at this speed over that at 80 km/h"}, self.factor);
            field(Name{"serves", "X_v", "value for which the coupling serves at this speed"}, self.serves);
        }
    };

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [X_80, v] = in;
        FAYWRIGHT_STATED(k, "√(v / 80 km/h)", std::sqrt(double(v / m_per_s(80.0 / 3.6))));
        FAYWRIGHT_STEP(X_v, X_80 / k);
        return {k, X_v};
    }
};

}  // namespace faywright
