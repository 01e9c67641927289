// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

namespace faywright {

/// Thermal change of preload: bolt and grip expand by different amounts, and the joint's springs turn the difference into force.
///
/// dF = l_K (alpha_P dT_P - alpha_S dT_S)/(delta_S + delta_P): a gain is positive, a loss negative. Aluminium gripped by a
/// steel bolt gains when warm and loses in frost. alpha_P is the mean over the grip, sum(alpha_i l_i)/l_K: a steel tube brings
/// it to that of the bolt. Elastic; the fall of the moduli with temperature is neglected.
struct ThermalChange {
    static constexpr Formula formula{.name = "thermal-change",
                                     .title = "Change of preload with temperature",
                                     .range = "elastic, moduli as at room temperature; relaxation apart",
                                     .source = {"VDI 2230 Part 1", "2003", "5.4.2.3", Basis::memory}};

    struct Inputs {
        Length grip;
        Expansion bolt_expansion, part_expansion;
        TemperatureDifference bolt_change, part_change;
        Resilience bolt_resilience, part_resilience;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"grip", "l_K", "clamped length"}, self.grip, Range{mm(0.5), mm(5000)});
            field(Name{"bolt-expansion", "alpha_S", "thermal expansion of the bolt"}, self.bolt_expansion, Range{per_K(1e-7), per_K(1e-3)});
            field(Name{"part-expansion", "alpha_P", "thermal expansion of the clamped parts, mean over the grip"}, self.part_expansion,
                  Range{per_K(1e-7), per_K(1e-3)});
            field(Name{"bolt-change", "dT_S", "temperature of the bolt above that at assembly"}, self.bolt_change,
                  Range{kelvin(-250), kelvin(500)});
            field(Name{"part-change", "dT_P", "temperature of the parts above that at assembly"}, self.part_change,
                  Range{kelvin(-250), kelvin(500)});
            field(Name{"bolt-resilience", "delta_S", "resilience of the bolt"}, self.bolt_resilience, Range{mm_per_N(1e-9), mm_per_N(1)});
            field(Name{"part-resilience", "delta_P", "resilience of the clamped parts"}, self.part_resilience,
                  Range{mm_per_N(1e-9), mm_per_N(1)});
        }
    };

    struct Answer {
        Length mismatch;  ///< by which the parts outgrow the bolt
        Force change;     ///< added to the preload
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"mismatch", "f_th", "growth of the parts beyond that of the bolt"}, self.mismatch);
            field(Name{"change", "dF_th", "change of preload, a gain positive"}, self.change);
        }
    };

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [l_K, alpha_S, alpha_P, dT_S, dT_P, delta_S, delta_P] = in;
        FAYWRIGHT_STEP(f_th, l_K * (alpha_P * dT_P - alpha_S * dT_S));
        FAYWRIGHT_STEP(dF_th, f_th / (delta_S + delta_P));
        const bool hot = max(abs(dT_S), abs(dT_P)) > kelvin(80);
        return {f_th, dF_th, hot ? "far from the temperature of assembly: moduli change and aluminium relaxes" : nullptr};
    }
};

}  // namespace faywright
