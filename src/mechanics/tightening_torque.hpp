// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

namespace faywright {

/// How the thread's share of the torque is worked.
enum class TorqueForm {
    exact,   ///< tangent of lead and friction angle together: what printed torque tables are made with
    linear,  ///< their tangents added: the everyday formula, up to 1 % lower
};

template <>
struct Words<TorqueForm> {
    static constexpr std::array<std::pair<TorqueForm, std::string_view>, 2> all{{
        {TorqueForm::exact, "exact"},
        {TorqueForm::linear, "linear"},
    }};
};

/// Tightening torque: what turns the nut until the bolt holds its preload.
///
/// M_A = F_M [d_2/2 tan(phi + rho) + D_Km/2 mu_head], phi the lead angle, rho the friction angle of the flank (friction raised by
/// 1/cos 30 degrees). To first order that is F_M [P/(2 pi) + 0.577 d_2 mu_th + D_Km/2 mu_head], the linear form: about a tenth
/// stretches the bolt, the rest rubs in the thread and under the head, so a small change of friction is a large change of
/// preload. The nut factor K = M_A/(F_M d) is the one-number shorthand. Where only a mean bearing diameter is known, give
/// it as outer and as hole diameter. The exact form, not the linear one, gives back the printed torque table.
struct TighteningTorque {
    static constexpr Formula formula{.name = "tightening-torque",
                                     .title = "Tightening torque for a preload",
                                     .range = "60 degree thread, plane ring under the head or nut, no prevailing torque",
                                     .source = {"VDI 2230 Part 1", "2003", "eq. R13/2, Table A1", Basis::memory}};

    struct Inputs {
        Force preload;
        Length nominal_diameter, pitch, pitch_diameter;
        double thread_friction, head_friction;
        Length bearing_diameter, bearing_hole;
        TorqueForm method = TorqueForm::exact;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"preload", "F_M", "preload of the bolt"}, self.preload, Range{newton(1), kN(10000)});
            field(Name{"nominal-diameter", "d", "nominal diameter"}, self.nominal_diameter, Range{mm(1), mm(200)});
            field(Name{"pitch", "P", "pitch of the thread"}, self.pitch, Range{mm(0.1), mm(10)});
            field(Name{"pitch-diameter", "d_2", "pitch diameter of the thread"}, self.pitch_diameter, Range{mm(0.5), mm(200)});
            field(Name{"thread-friction", "mu_th", "coefficient of friction in the thread"}, self.thread_friction, Range{0.01, 1.0});
            field(Name{"head-friction", "mu_head", "coefficient of friction under the turned head or nut"}, self.head_friction,
                  Range{0.01, 1.0});
            field(Name{"bearing-diameter", "d_W", "outer diameter of the bearing face"}, self.bearing_diameter, Range{mm(1), mm(500)});
            field(Name{"bearing-hole", "d_h", "inner diameter of the bearing face"}, self.bearing_hole, Range{mm(1), mm(500)});
            field(Name{"method", "", "form of the thread torque"}, self.method, defaulted);
        }
    };

    struct Answer {
        Moment torque;
        Moment thread_torque;  ///< pitch and friction: what twists the shank
        Moment head_torque;
        double pitch_share, thread_share, head_share;
        double nut_factor;
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"torque", "M_A", "tightening torque"}, self.torque);
            field(Name{"thread-torque", "M_G", "torque in the thread, which twists the bolt"}, self.thread_torque);
            field(Name{"head-torque", "M_K", "torque of friction under the head or nut"}, self.head_torque);
            field(Name{"pitch-share", "s_P", "share of the torque that stretches the bolt"}, self.pitch_share);
            field(Name{"thread-share", "s_th", "share lost in the thread"}, self.thread_share);
            field(Name{"head-share", "s_head", "share lost under the head or nut"}, self.head_share);
            field(Name{"nut-factor", "K", "nut factor"}, self.nut_factor);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (in.bearing_hole > in.bearing_diameter) return "the hole is larger than the bearing face";
        if (in.pitch_diameter > in.nominal_diameter) return "the pitch diameter is larger than the nominal diameter";
        if (in.pitch > in.pitch_diameter) return "the pitch is larger than the pitch diameter";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [F_M, d, P, d_2, mu_th, mu_head, d_W, d_h, method] = in;
        FAYWRIGHT_STEP(D_Km, (d_W + d_h) / 2.0);
        FAYWRIGHT_STEP(t_phi, P / (pi * d_2));
        FAYWRIGHT_STEP(t_rho, mu_th / cos(pi / 6.0));
        FAYWRIGHT_STATED(e, "1 for the exact, 0 for the linear form", method == TorqueForm::exact ? 1.0 : 0.0);
        FAYWRIGHT_STEP(M_G, F_M * d_2 / 2.0 * (t_phi + t_rho) / (1.0 - e * t_phi * t_rho));
        FAYWRIGHT_STEP(M_K, F_M * D_Km / 2.0 * mu_head);
        FAYWRIGHT_STEP(M_A, M_G + M_K);
        FAYWRIGHT_STEP(s_P, F_M * P / (2.0 * pi) / M_A);
        FAYWRIGHT_STEP(s_head, M_K / M_A);
        FAYWRIGHT_STEP(s_th, 1.0 - s_P - s_head);
        FAYWRIGHT_STEP(K, M_A / (F_M * d));
        return {M_A, M_G, M_K, s_P, s_th, s_head, K};
    }
};

}  // namespace faywright
