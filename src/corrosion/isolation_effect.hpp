// SPDX-License-Identifier: MIT
#pragma once

#include "corrosion/couple.hpp"

#include <algorithm>
#include <array>

namespace faywright {

/// A share that ages: when new, at half its life, and when neglected beyond its life.
struct Ageing {
    double fresh = 1, middle = 1, neglected = 1;
};

/// Mean over `span` of a share that ages in straight lines from new over the middle to neglected at `life`, and stays there.
[[nodiscard]] inline double mean_over(const Ageing& share, Duration life, Duration span) {
    // Area under the two lines up to `t`, in units of life.
    const auto area = [&](double t) {
        const double first = min(t, 0.5), second = min(max(t - 0.5, 0.0), 0.5), rest = max(t - 1.0, 0.0);
        return first * share.fresh + first * first * (share.middle - share.fresh) + second * share.middle +
               second * second * (share.neglected - share.middle) + rest * share.neglected;
    };
    const double t = span / life;
    return t > 0.0 ? area(t) / t : share.fresh;
}

/// The share at a time after assembly.
[[nodiscard]] inline double share_at(const Ageing& share, Duration life, Duration time) {
    const double t = static_cast<double>(time / life);
    return t >= 1.0   ? share.neglected
           : t >= 0.5 ? share.middle + (2.0 * t - 1.0) * (share.neglected - share.middle)
                      : share.fresh + 2.0 * t * (share.middle - share.fresh);
}

/// Mean over `span` of the product of two shares. Between the bends of both it is a parabola, for which Simpson's rule is exact.
[[nodiscard]] inline double mean_of_product(const Ageing& a, Duration life_a, const Ageing& b, Duration life_b, Duration span) {
    std::array<Duration, 6> bends{years(0), 0.5 * life_a, life_a, 0.5 * life_b, life_b, span};
    std::sort(bends.begin(), bends.end());
    const auto at = [&](Duration t) { return share_at(a, life_a, t) * share_at(b, life_b, t); };
    double area = 0.0;
    for (std::size_t i = 0; i + 1 < bends.size() && bends[i] < span; ++i) {
        const auto from = bends[i], to = min(bends[i + 1], span);
        area += static_cast<double>((to - from) / span) * (at(from) + 4.0 * at(0.5 * (from + to)) + at(to)) / 6.0;
    }
    return area;
}

/// What isolation does to a couple: it breaks the metallic path, keeps the electrolyte out, or both, and ages.
///
/// Attack = r_0 c + G P W, c = 1 + (c_0 - 1) W. P is the metallic path, 1 where any metal bridges the two (a bare bolt does), else
/// R_film/(R_film + R_iso), told as a share when new and when aged; W the share of the electrolyte that still reaches the contact; both are
/// means over the promised life. c_0 is what an unsealed crevice does to the member's own rate.
struct IsolationEffect {
    static constexpr Formula formula{
        .name = "isolation-effect",
        .title = "Effect of an isolation method on one member of a couple",
        .range = "shares of judgement; ranking is meant, the absolute number is a decade",
        .source = {"circuit logic", "", "path and electrolyte as shares; ageing of seals is judgement", Basis::practice}};

    struct Inputs {
        Speed own_rate, couple_rate;
        bool bridged = true;
        double path_new = 1, path_aged = 1;
        double electrolyte_new = 1, electrolyte_middle = 1, electrolyte_neglected = 1;
        double crevice = 1;
        Duration seal_life = years(10), promised = years(20);

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            const Range rate{um_per_a(0), um_per_a(10000)};
            const Range share{0.0, 1.0};
            const Range span{hours(720), years(100)};
            field(Name{"own-rate", "r_0", "rate of the member alone"}, self.own_rate, rate);
            field(Name{"couple-rate", "G", "rate the couple adds where nothing isolates"}, self.couple_rate, rate);
            field(Name{"bridged", "", "metal joins the two members: a bare bolt, a bracket, the earth of the lamps"}, self.bridged,
                  defaulted);
            field(Name{"path-new", "P_n", "share of the current that passes the isolation when new"}, self.path_new, share, defaulted);
            field(Name{"path-aged", "P_a", "the same when aged"}, self.path_aged, share, defaulted);
            field(Name{"electrolyte-new", "W_n", "share of the electrolyte that reaches the contact when new"}, self.electrolyte_new, share,
                  defaulted);
            field(Name{"electrolyte-middle", "W_m", "the same at half the seal's life"}, self.electrolyte_middle, share, defaulted);
            field(Name{"electrolyte-neglected", "W_a", "the same when neglected"}, self.electrolyte_neglected, share, defaulted);
            field(Name{"crevice", "c_0", "factor on the member's own rate in an unsealed crevice"}, self.crevice, Range{1.0, 10.0},
                  defaulted);
            field(Name{"seal-life", "L", "life of the seal"}, self.seal_life, span, defaulted);
            field(Name{"promised", "T", "promised life of the joint"}, self.promised, span, defaulted);
        }
    };

    struct Answer {
        Speed rate;                        ///< mean total rate over the promised life
        double path = 1, electrolyte = 1;  ///< means over the promised life
        Speed galvanic;                    ///< of it, what the couple adds

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"rate", "r", "mean rate of attack over the promised life"}, self.rate);
            field(Name{"galvanic", "r_g", "of it, what the couple adds"}, self.galvanic);
            field(Name{"path", "P", "metallic path, mean over the promised life"}, self.path);
            field(Name{"electrolyte", "W", "electrolyte at the contact, mean over the promised life"}, self.electrolyte);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (in.path_new > in.path_aged) return "isolation that improves with age: path-new is above path-aged";
        if (in.electrolyte_new > in.electrolyte_middle || in.electrolyte_middle > in.electrolyte_neglected)
            return "a seal that improves with age: electrolyte-new, -middle and -neglected must not fall";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [r_0, G, bridged, P_n, P_a, W_n, W_m, W_a, c_0, L, T] = in;
        FAYWRIGHT_STATED(P, bridged ? "1: metal bridges the two members" : "mean over T of a share that rises in a straight line over L",
                         bridged ? 1.0 : mean_over({P_n, 0.5 * (P_n + P_a), P_a}, L, T));
        FAYWRIGHT_STATED(W, "mean over T of a share that rises from W_n over W_m at L/2 to W_a at L and stays there",
                         mean_over({W_n, W_m, W_a}, L, T));
        FAYWRIGHT_STEP(c, 1.0 + (c_0 - 1.0) * W);
        FAYWRIGHT_STEP(r_g, G * (P * W));
        FAYWRIGHT_STEP(r, r_0 * c + r_g);
        return {r, P, W, r_g};
    }
};

}  // namespace faywright
