// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/field.hpp"
#include "quantity/quantity.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

namespace faywright {

/// The couple by which a lap holds its drawbar, both legs together.
struct LapForces {
    static constexpr Formula formula{.name = "lap-couple",
                                     .title = "Forces of a lap's front and rear bolt groups from the coupling's",
                                     .range = "drawbar pivots on its front group; own weight of the drawbar left out",
                                     .source = {"elementary statics", "", "drawbar ahead of the lap", Basis::practice}};

    struct Inputs {
        Force up{}, rearward{};
        Length to_front, to_rear, above = mm(0);

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"up", "V", "force up on the drawbar at the coupling"}, self.up, Range{kN(-2000), kN(2000)});
            field(Name{"rearward", "H", "force rearward on the drawbar at the coupling"}, self.rearward, Range{kN(-2000), kN(2000)},
                  defaulted);
            field(Name{"to-front", "x_A", "coupling to the front group"}, self.to_front, Range{mm(50), mm(20000)});
            field(Name{"to-rear", "x_B", "coupling to the rear group"}, self.to_rear, Range{mm(60), mm(20000)});
            field(Name{"above", "e_v", "lap plane above the coupling"}, self.above, Range{mm(-2000), mm(2000)}, defaulted);
        }
    };

    struct Answer {
        Moment at_front;
        Force front, rear;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"front", "R_A", "rail pressing down on the drawbar at the front group"}, self.front);
            field(Name{"rear", "R_B", "rail pulling the drawbar's tail up at the rear group"}, self.rear);
            field(Name{"moment", "M_A", "moment at the front group, nose-up"}, self.at_front);
        }
    };

    static const char* refusal(const Inputs& in) {
        return in.to_rear - in.to_front < mm(1) ? "the rear group does not stand behind the front group" : nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [V, H, x_A, x_B, e_v] = in;
        FAYWRIGHT_STEP(M_A, V * x_A - e_v * H);
        FAYWRIGHT_STEP(R_B, M_A / (x_B - x_A));
        FAYWRIGHT_STEP(R_A, V + R_B);
        return {M_A, R_A, R_B};
    }
};

}  // namespace faywright
