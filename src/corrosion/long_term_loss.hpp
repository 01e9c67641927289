// SPDX-License-Identifier: MIT
#pragma once

#include "corrosion/atmosphere_category.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <array>
#include <cmath>
#include <cstddef>
#include <optional>

namespace faywright {

/// The exponent of the power law: that of the mean, B1, or of the mean and two standard deviations, B2.
enum class LossExponent { mean, upper };

template <>
struct Words<LossExponent> {
    static constexpr std::array<std::pair<LossExponent, std::string_view>, 2> all{
        {{LossExponent::mean, "mean"}, {LossExponent::upper, "upper"}}};
};

/// Time exponent of ISO 9224:2012 Table 2 (memory).
[[nodiscard]] constexpr double loss_exponent(AtmosphereMetal metal, LossExponent which) {
    constexpr std::array<std::array<double, 2>, 4> all{{{0.813, 0.873}, {0.523, 0.575}, {0.667, 0.726}, {0.728, 0.807}}};
    return all[static_cast<std::size_t>(metal)][static_cast<std::size_t>(which)];
}

/// Long-term loss: what a metal has lost after t years in the open, from its first-year rate.
///
/// D = r t^b up to 20 years, from there on along its tangent; in the first year D = r t, where the power would run ahead of the first
/// year's own loss. B1 is the mean of the fits, B2 their mean and two standard deviations.
struct LongTermLoss {
    static constexpr Formula formula{
        .name = "long-term-loss",
        .title = "Loss of a metal over the years from that of the first",
        .range = "solid metal in the open, washed by rain; not sheltered, salted, abraded, immersed or in crevices",
        .source = {"ISO 9224", "2012", "clause 6, Table 2", Basis::memory}};

    struct Inputs {
        AtmosphereMetal metal = AtmosphereMetal::zinc;
        Speed first_year_rate;
        Duration time;
        LossExponent exponent = LossExponent::mean;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"metal", "", "metal exposed"}, self.metal, defaulted);
            field(Name{"first-year-rate", "r_corr", "loss in the first year"}, self.first_year_rate, Range{um_per_a(0), um_per_a(10000)});
            field(Name{"time", "tau", "time exposed"}, self.time, Range{years(0), years(200)});
            field(Name{"exponent", "", "mean (B1), or upper (B2)"}, self.exponent, defaulted);
        }
    };

    struct Answer {
        Length loss;
        Speed rate;  ///< at that time
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"loss", "D", "depth lost by then"}, self.loss);
            field(Name{"rate", "v", "rate of attack by then"}, self.rate);
        }
    };

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [metal, r_corr, tau, exponent] = in;
        const char* outside = exponent == LossExponent::mean && category_of(metal, r_corr) == Corrosivity::cx
                                  ? "in CX chloride keeps the attack up: the mean exponent is unsafe, take the upper one or a constant rate"
                                  : nullptr;
        FAYWRIGHT_STEP(t, tau / years(1));
        if (t <= 1.0) {
            FAYWRIGHT_STEP(D, r_corr * tau);
            FAYWRIGHT_STEP(v, r_corr);
            return {D, v, outside};
        }
        FAYWRIGHT_STATED(b, "exponent of the metal, B1 or B2", loss_exponent(metal, exponent));
        if (t <= 20.0) {
            FAYWRIGHT_STEP(D, r_corr * years(1) * std::pow(t, b));
            FAYWRIGHT_STEP(v, r_corr * b * std::pow(t, b - 1.0));
            return {D, v, outside};
        }
        FAYWRIGHT_STEP(v, r_corr * b * std::pow(20.0, b - 1.0));
        FAYWRIGHT_STEP(D, r_corr * years(1) * std::pow(20.0, b) + v * (tau - years(20)));
        return {D, v, outside};
    }
};

/// The time in which a depth is lost: `LongTermLoss` turned round, in closed form. Both are above zero.
template <class Steps = NoSteps>
[[nodiscard]] Duration time_to_lose(Length d, AtmosphereMetal metal, Speed r_high, LossExponent exponent, Steps&& steps = Steps{}) {
    FAYWRIGHT_STEP(n, d / (r_high * years(1)));
    if (n <= 1.0) {
        FAYWRIGHT_STEP(t, n * years(1));
        return t;
    }
    FAYWRIGHT_STATED(b, exponent == LossExponent::mean ? "mean exponent of ISO 9224, B1" : "upper exponent of ISO 9224, B2",
                     loss_exponent(metal, exponent));
    FAYWRIGHT_STEP(n_20, std::pow(20.0, b));
    if (n <= n_20) {
        FAYWRIGHT_STEP(t, years(1) * std::pow(n, 1.0 / b));
        return t;
    }
    FAYWRIGHT_STEP(t, years(20) + years(1) * (n - n_20) / (b * std::pow(20.0, b - 1.0)));
    return t;
}

}  // namespace faywright
