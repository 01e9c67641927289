// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <optional>

namespace faywright {

/// A rate of attack and where it lies with two chances in three.
struct RateBand {
    Speed low, rate, high;
};

/// A rate with the spread of its logarithm as a band of one standard deviation.
[[nodiscard]] inline RateBand spread_about(Speed rate, double scatter) {
    return {rate * std::exp(-scatter), rate, rate * std::exp(scatter)};
}

/// Multiplier of zinc beside aluminium against that of zinc beside steel: fitted to one published rating, that zinc in contact with
/// aluminium in marine air suffers no extra or slight extra attack (PD 6484, recalled).
inline constexpr double zinc_beside_aluminium = 1.0 / 3.0;

/// Galvanic couple in the open: what contact with a nobler metal adds to the anode's own rate of attack.
///
/// G = r_0 m f s min(A_c/A_a, 10). r_0 is the anode's own first-year rate at the site; m the multiplier of the electrolyte's class;
/// f a fit to experience with the pair, 1 but for zinc beside aluminium; s the strength of the partner as a cathode, 1 for rusty steel.
/// Where electrode kinetics allow no more than r_b (a year's mean), they have the last word downwards; upwards they have not, because most
/// of the loss seen outdoors beside a nobler metal is local attack and not the couple's current. m and s are judgement: one field ceiling
/// of about 20 times the uncoupled rate is all that anchors them. The band combines the scatter of r_0 with that of m (factor b_m), of s
/// (0.4) and of the areas (0.2) in quadrature.
struct Couple {
    static constexpr Formula formula{.name = "couple",
                                     .title = "Rate that a galvanic couple adds to its anode",
                                     .range = "rain, dew and salt films in the open; up to about 20 times the uncoupled rate was seen",
                                     .source = {"estimate of ours, anchored on one field study of coupled aluminium", "",
                                                "area law of aluminium in salt water; classes interpolated", Basis::practice}};

    struct Inputs {
        Speed own_rate;
        double own_scatter = 0.4;
        double multiplier;
        double multiplier_band = 3.0;
        double pair_fit = 1.0;
        double cathode_strength = 1.0;
        double area_ratio = 1.0;
        std::optional<Speed> kinetic_bound;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            const Range rate{um_per_a(0), um_per_a(10000)};
            field(Name{"own-rate", "r_0", "rate of the anode alone at the site"}, self.own_rate, rate);
            field(Name{"own-scatter", "s_0", "standard deviation of its natural logarithm"}, self.own_scatter, Range{0.0, 2.0}, defaulted);
            field(Name{"multiplier", "m", "multiplier of the electrolyte's class"}, self.multiplier, Range{0.0, 50.0});
            field(Name{"multiplier-band", "b_m", "factor either way within which the multiplier lies, one standard deviation"},
                  self.multiplier_band, Range{1.0, 20.0}, defaulted);
            field(Name{"pair-fit", "f", "fit of the multiplier to experience with the pair: a third for zinc beside aluminium"},
                  self.pair_fit, Range{0.01, 1.0}, defaulted);
            field(Name{"cathode-strength", "s", "strength of the partner as a cathode, 1 for rusty steel"}, self.cathode_strength,
                  Range{0.0, 2.0}, defaulted);
            field(Name{"area-ratio", "R", "wetted area of the cathode within reach over that of the anode"}, self.area_ratio,
                  Range{1e-4, 1e4}, defaulted);
            field(Name{"kinetic-bound", "r_b", "mean rate of a year that electrode kinetics allow; absent: no such bound"},
                  self.kinetic_bound, rate);
        }
    };

    struct Answer {
        Speed rate, low, high;
        bool bounded = false;  ///< the kinetic bound governs
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"rate", "G", "rate the couple adds"}, self.rate);
            field(Name{"low", "G_low", "low end, one standard deviation"}, self.low);
            field(Name{"high", "G_high", "high end, one standard deviation"}, self.high);
            field(Name{"bounded", "", "electrode kinetics govern"}, self.bounded);
        }
        [[nodiscard]] RateBand band() const { return {low, rate, high}; }
    };

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [r_0, s_0, m, b_m, f, s, R, r_b] = in;
        FAYWRIGHT_STEP(R_e, min(R, 10.0));
        FAYWRIGHT_STEP(G_f, r_0 * (m * f * s * R_e));
        const bool bounded = r_b && *r_b < G_f;
        FAYWRIGHT_STATED(G, bounded ? "the kinetic bound, which is less" : "the field estimate", bounded ? *r_b : G_f);
        FAYWRIGHT_STEP(s_G, sqrt(squared(s_0) + squared(log(b_m)) + squared(0.4) + squared(0.2)));
        FAYWRIGHT_STEP(G_low, G * exp(-s_G));
        FAYWRIGHT_STEP(G_high, G * exp(s_G));
        return {G, G_low, G_high, bounded, G > 20.0 * r_0 ? "above 20 times the rate alone, the most that was seen in the field" : nullptr};
    }
};

}  // namespace faywright
