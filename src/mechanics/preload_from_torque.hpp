// SPDX-License-Identifier: MIT
#pragma once

#include "mechanics/tightening_torque.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

namespace faywright {

/// Preload from torque: the band of preload that a set torque leaves in the bolt.
///
/// F = torque / [d_2/2 tan(phi + rho) + D_Km/2 mu_head], the tightening torque solved for the preload. The least preload goes with the low
/// end of the tool and the high end of both frictions, the greatest the other way round; all extremes at once, so the band is an outer
/// bound. Prevailing torque (locking nuts) is a listed maximum: it is taken off in full for the least and the mean preload and not at all
/// for the greatest. alpha_A is the ratio of greatest to least, to be held against tabulated tightening factors.
struct PreloadFromTorque {
    static constexpr Formula formula{.name = "preload-from-torque",
                                     .title = "Band of preload from a tightening torque",
                                     .range = "torque-controlled tightening below yield; extremes combined, not statistics",
                                     .source = {"VDI 2230 Part 1", "2003", "eq. R13/2, solved for the preload", Basis::memory}};

    struct Inputs {
        Moment torque;
        double tool_scatter;
        double thread_friction_low, thread_friction_high, head_friction_low, head_friction_high;
        Length pitch, pitch_diameter, bearing_diameter, bearing_hole;
        Moment prevailing_torque = Nm(0);
        TorqueForm method = TorqueForm::exact;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"torque", "M_A", "torque set on the tool"}, self.torque, Range{Nm(0.01), kNm(1000)});
            field(Name{"tool-scatter", "x", "scatter of the applied torque, plus or minus"}, self.tool_scatter, Range{0.0, 0.9});
            field(Name{"thread-friction-low", "mu_th_low", "least friction in the thread"}, self.thread_friction_low, Range{0.01, 1.0});
            field(Name{"thread-friction-high", "mu_th_high", "greatest friction in the thread"}, self.thread_friction_high,
                  Range{0.01, 1.0});
            field(Name{"head-friction-low", "mu_head_low", "least friction under the turned head or nut"}, self.head_friction_low,
                  Range{0.01, 1.0});
            field(Name{"head-friction-high", "mu_head_high", "greatest friction under the turned head or nut"}, self.head_friction_high,
                  Range{0.01, 1.0});
            field(Name{"pitch", "P", "pitch of the thread"}, self.pitch, Range{mm(0.1), mm(10)});
            field(Name{"pitch-diameter", "d_2", "pitch diameter of the thread"}, self.pitch_diameter, Range{mm(0.5), mm(200)});
            field(Name{"bearing-diameter", "d_W", "outer diameter of the bearing face"}, self.bearing_diameter, Range{mm(1), mm(500)});
            field(Name{"bearing-hole", "d_h", "inner diameter of the bearing face"}, self.bearing_hole, Range{mm(1), mm(500)});
            field(Name{"prevailing-torque", "M_p", "torque a locking nut takes before it clamps"}, self.prevailing_torque,
                  Range{Nm(0), kNm(10)}, defaulted);
            field(Name{"method", "", "form of the thread torque"}, self.method, defaulted);
        }
    };

    struct Answer {
        Force least, mean, greatest;
        double tightening_factor;
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"least", "F_M_min", "least preload"}, self.least);
            field(Name{"mean", "F_M_mean", "preload at the set torque and middle friction"}, self.mean);
            field(Name{"greatest", "F_M_max", "greatest preload"}, self.greatest);
            field(Name{"tightening-factor", "alpha_A", "greatest over least preload"}, self.tightening_factor);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (in.thread_friction_low > in.thread_friction_high) return "the least thread friction is above the greatest";
        if (in.head_friction_low > in.head_friction_high) return "the least head friction is above the greatest";
        if (in.bearing_hole > in.bearing_diameter) return "the hole is larger than the bearing face";
        if (in.pitch > in.pitch_diameter) return "the pitch is larger than the pitch diameter";
        if (in.prevailing_torque >= 0.99 * (1.0 - in.tool_scatter) * in.torque)
            return "the prevailing torque takes all of the tightening torque";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [M_A, x, mu_th_low, mu_th_high, mu_head_low, mu_head_high, P, d_2, d_W, d_h, M_p, method] = in;
        FAYWRIGHT_STEP(D_Km, (d_W + d_h) / 2.0);
        FAYWRIGHT_STEP(t_phi, P / (pi * d_2));
        FAYWRIGHT_STATED(e, "1 for the exact, 0 for the linear form", method == TorqueForm::exact ? 1.0 : 0.0);
        FAYWRIGHT_STEP(t_low, mu_th_low / cos(pi / 6.0));
        FAYWRIGHT_STEP(t_high, mu_th_high / cos(pi / 6.0));
        FAYWRIGHT_STEP(t_mean, (t_low + t_high) / 2.0);
        FAYWRIGHT_STEP(r_low, d_2 / 2.0 * (t_phi + t_low) / (1.0 - e * t_phi * t_low) + D_Km / 2.0 * mu_head_low);
        FAYWRIGHT_STEP(r_high, d_2 / 2.0 * (t_phi + t_high) / (1.0 - e * t_phi * t_high) + D_Km / 2.0 * mu_head_high);
        FAYWRIGHT_STEP(r_mean, d_2 / 2.0 * (t_phi + t_mean) / (1.0 - e * t_phi * t_mean) + D_Km / 4.0 * (mu_head_low + mu_head_high));
        FAYWRIGHT_STEP(F_M_min, ((1.0 - x) * M_A - M_p) / r_high);
        FAYWRIGHT_STEP(F_M_mean, (M_A - M_p) / r_mean);
        FAYWRIGHT_STEP(F_M_max, (1.0 + x) * M_A / r_low);
        FAYWRIGHT_STEP(alpha_A, F_M_max / F_M_min);
        return {F_M_min, F_M_mean, F_M_max, alpha_A, alpha_A > 4.0 ? "scatter beyond any tabulated tightening method" : nullptr};
    }
};

}  // namespace faywright
