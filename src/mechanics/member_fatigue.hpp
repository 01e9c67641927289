// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <cmath>

namespace faywright {

/// Stress range a ply endures beside a bolt hole, by the detail categories of the fatigue codes.
///
/// A category Δσ_C is the range at 2 million cycles; the curve falls with slope m_1 to 5 million cycles and with m_2 to
/// 100 million, and is level beyond. The stress is the nominal one on the net section.
struct MemberFatigue {
    static constexpr Formula formula{.name = "member-fatigue",
                                     .title = "Fatigue of a ply at a bolt hole by detail category",
                                     .range = "nominal stress range on the net section; 1e4 cycles and more; constant amplitude",
                                     .source = {"EN 1993-1-9", "2005", "7.1 and Table 8.1", Basis::memory}};

    struct Inputs {
        Stress stress_range, category;
        double slope = 3.0, second_slope = 5.0, cycles = 2e6, gamma_Mf = 1.0;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"stress-range", "dsigma", "nominal stress range"}, self.stress_range, Range{MPa(0), MPa(2000)});
            field(Name{"category", "dsigma_C", "detail category: range at 2 million cycles"}, self.category, Range{MPa(5), MPa(200)});
            field(Name{"slope", "m_1", "slope up to 5 million cycles"}, self.slope, Range{2.0, 16.0}, defaulted);
            field(Name{"second-slope", "m_2", "slope from 5 to 100 million cycles"}, self.second_slope, Range{2.0, 20.0}, defaulted);
            field(Name{"cycles", "N", "number of cycles"}, self.cycles, Range{1e4, 1e9}, defaulted);
            field(Name{"gamma-Mf", "gamma_Mf", "partial factor"}, self.gamma_Mf, Range{1.0, 2.0}, defaulted);
        }
    };

    struct Answer {
        Stress endured;  ///< range endured for the given cycles
        double utilisation = 0.0;
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"endured", "dsigma_R", "range endured for the given cycles"}, self.endured);
            field(Name{"utilisation", "u", "range over range endured"}, self.utilisation);
        }
    };

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [dsigma, dsigma_C, m_1, m_2, N, gamma_Mf] = in;
        FAYWRIGHT_STEP(N_1, min(N, 5e6));
        FAYWRIGHT_STEP(N_2, min(max(N, 5e6), 1e8));
        FAYWRIGHT_STEP(dsigma_R, dsigma_C / gamma_Mf * pow(2e6 / N_1, 1.0 / m_1) * pow(5e6 / N_2, 1.0 / m_2));
        FAYWRIGHT_STEP(u, dsigma / dsigma_R);
        return {dsigma_R, u};
    }
};

}  // namespace faywright
