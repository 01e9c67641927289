// SPDX-License-Identifier: MIT
#pragma once

#include "corrosion/long_term_loss.hpp"

#include <optional>

namespace faywright {

/// Coating life: the years until a zinc coating is used up.
///
/// Headline as in ISO 14713-1: thickness over rate, at the two ends of the category's band. Beside it the power law of ISO 9224 at the
/// high rate, by its upper exponent (the bold estimate) and its mean one (bolder still): both are for zinc washed by rain; a sheltered,
/// salted or abraded coating is used up linearly. A pit or the first rust is earlier than the mean.
struct CoatingLife {
    static constexpr Formula formula{.name = "coating-life",
                                     .title = "Years until a coating of zinc is used up",
                                     .range = "even attack from one side; category C2 to CX; no salt-spray hours, no immersion",
                                     .source = {"ISO 14713-1", "2017", "Table 2: thickness over rate; ISO 9224 beside it", Basis::memory}};

    struct Inputs {
        Length thickness;
        std::optional<Speed> rate_low;
        Speed rate_high;
        AtmosphereMetal metal = AtmosphereMetal::zinc;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"thickness", "d", "thickness to be used up"}, self.thickness, Range{um(0.1), mm(20)});
            field(Name{"rate-low", "r_low", "rate of attack, low end of the band; left out: one rate"}, self.rate_low,
                  Range{um_per_a(0.001), um_per_a(10000)});
            field(Name{"rate-high", "r_high", "rate of attack in the first year, high end of the band"}, self.rate_high,
                  Range{um_per_a(0.001), um_per_a(10000)});
            field(Name{"metal", "", "metal of the coating"}, self.metal, defaulted);
        }
    };

    struct Answer {
        Duration least, most;        ///< linear, at the high and at the low rate
        Duration by_upper, by_mean;  ///< ISO 9224 at the high rate, B2 and B1
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"least", "t_least", "life at the high rate, constant"}, self.least);
            field(Name{"most", "t_most", "life at the low rate, constant"}, self.most);
            field(Name{"by-upper", "t_B2", "life at the high rate by ISO 9224, upper exponent"}, self.by_upper);
            field(Name{"by-mean", "t_B1", "life at the high rate by ISO 9224, mean exponent"}, self.by_mean);
        }
    };

    static const char* refusal(const Inputs& in) {
        return in.rate_low && *in.rate_low > in.rate_high ? "rate-low is above rate-high" : nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [d, r_low, r_high, metal] = in;
        Answer answer;
        FAYWRIGHT_STEP(t_least, d / r_high);
        answer.least = answer.most = t_least;
        if (r_low) {
            FAYWRIGHT_STEP(t_most, d / *r_low);
            answer.most = t_most;
        }
        answer.by_upper = time_to_lose(d, metal, r_high, LossExponent::upper, steps);
        answer.by_mean = time_to_lose(d, metal, r_high, LossExponent::mean, steps);
        const auto end = upper_limit(metal, Corrosivity::cx);
        if (metal != AtmosphereMetal::zinc)
            answer.outside_range = "ISO 14713-1 is for coatings of zinc: of another metal these are the years until its own depth is lost";
        else if (end && r_high > *end * (1.0 + 1e-9))
            answer.outside_range = "the high rate is beyond the end of CX";
        return answer;
    }
};

}  // namespace faywright
