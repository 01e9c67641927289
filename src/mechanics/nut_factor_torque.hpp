// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

namespace faywright {

/// Torque by nut factor: M_A = K F_M d, one number for all friction.
///
/// A cross-check of the full torque equation and the form in which makers of assemblies give their own test values (k_m).
/// K of about 0.12 to 0.16 stands for waxed, 0.2 for as-received, 0.3 and more for dry galvanised or stainless bolts.
struct NutFactorTorque {
    static constexpr Formula formula{.name = "nut-factor-torque",
                                     .title = "Tightening torque by nut factor",
                                     .range = "nut factor from a test of the same bolt, nut, washer and lubricant",
                                     .source = {"Shigley's Mechanical Engineering Design", "9th", "eq. 8-27", Basis::memory}};

    struct Inputs {
        Force preload;
        Length nominal_diameter;
        double nut_factor;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"preload", "F_M", "preload of the bolt"}, self.preload, Range{newton(1), kN(10000)});
            field(Name{"nominal-diameter", "d", "nominal diameter"}, self.nominal_diameter, Range{mm(1), mm(200)});
            field(Name{"nut-factor", "K", "nut factor"}, self.nut_factor, Range{0.02, 1.5});
        }
    };

    struct Answer {
        Moment torque;
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"torque", "M_A", "tightening torque"}, self.torque);
        }
    };

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [F_M, d, K] = in;
        FAYWRIGHT_STEP(M_A, K * F_M * d);
        return {M_A};
    }
};

}  // namespace faywright
