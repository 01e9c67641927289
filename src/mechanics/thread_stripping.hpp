// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

namespace faywright {

/// Thread stripping: whether the thread of bolt or nut shears off before the bolt breaks.
///
/// Each thread shears on a cylinder through the tips of the other one, over the engaged length m_eff (without chamfers), worked at
/// the limits of size that leave least metal. The nut dilates (C_1, from its width across flats; none in a tapped block) and the
/// threads bend (C_2 for the bolt's, C_3 for the nut's, from the ratio R_S of the two shear strengths). A sound joint breaks its
/// bolt first: margin at or above 1. The required length is the m_eff at which it does; add about two pitches for run-in. Below
/// R_S = 0.4 (soft aluminium against 8.8 and more) C_3 is extrapolated downwards: confirm by test.
struct ThreadStripping {
    static constexpr Formula formula{.name = "thread-stripping",
                                     .title = "Stripping strength of engaged threads",
                                     .range = "60 degree thread; s/d from 1.4; R_S from 0.4 to 2.2",
                                     .source = {"VDI 2230 Part 1", "2003", "5.5.5, after Alexander 1977", Basis::memory}};

    struct Inputs {
        Length nominal_diameter, pitch, engagement;
        Length bolt_major_least, bolt_pitch_least, nut_minor_greatest, nut_pitch_greatest;
        std::optional<Length> width_across_flats;  ///< absent: thread tapped in a block
        Stress bolt_strength, nut_strength;
        double bolt_shear_ratio, nut_shear_ratio;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"nominal-diameter", "d", "nominal diameter"}, self.nominal_diameter, Range{mm(1), mm(200)});
            field(Name{"pitch", "P", "pitch of the thread"}, self.pitch, Range{mm(0.1), mm(10)});
            field(Name{"engagement", "m_eff", "effective length of engagement"}, self.engagement, Range{mm(0.1), mm(1000)});
            field(Name{"bolt-major-least", "d_min", "least outside diameter of the bolt thread"}, self.bolt_major_least,
                  Range{mm(0.5), mm(200)});
            field(Name{"bolt-pitch-least", "d_2min", "least pitch diameter of the bolt thread"}, self.bolt_pitch_least,
                  Range{mm(0.5), mm(200)});
            field(Name{"nut-minor-greatest", "D_1max", "greatest minor diameter of the nut thread"}, self.nut_minor_greatest,
                  Range{mm(0.5), mm(200)});
            field(Name{"nut-pitch-greatest", "D_2max", "greatest pitch diameter of the nut thread"}, self.nut_pitch_greatest,
                  Range{mm(0.5), mm(200)});
            field(Name{"width-across-flats", "s", "width across flats of the nut"}, self.width_across_flats, Range{mm(1), mm(500)});
            field(Name{"bolt-strength", "R_mB", "tensile strength of the bolt"}, self.bolt_strength, Range{MPa(10), MPa(3000)});
            field(Name{"nut-strength", "R_mM", "tensile strength of the nut or tapped part"}, self.nut_strength, Range{MPa(10), MPa(3000)});
            field(Name{"bolt-shear-ratio", "q_B", "shear over tensile strength of the bolt"}, self.bolt_shear_ratio, Range{0.3, 1.5});
            field(Name{"nut-shear-ratio", "q_M", "shear over tensile strength of the nut or tapped part"}, self.nut_shear_ratio,
                  Range{0.3, 1.5});
        }
    };

    struct Answer {
        Area bolt_shear_area, nut_shear_area;
        double strength_ratio, dilation_factor, bolt_bending_factor, nut_bending_factor;
        Force bolt_thread_force, nut_thread_force;
        Force bolt_breaking_force;
        double margin;               ///< weaker thread over bolt breaking force
        Length required_engagement;  ///< effective length at which the bolt breaks first
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"bolt-shear-area", "A_SB", "shear area of the bolt thread"}, self.bolt_shear_area);
            field(Name{"nut-shear-area", "A_SM", "shear area of the nut thread"}, self.nut_shear_area);
            field(Name{"strength-ratio", "R_S", "shear strength of the nut thread over that of the bolt thread"}, self.strength_ratio);
            field(Name{"dilation-factor", "C_1", "factor for dilation of the nut"}, self.dilation_factor);
            field(Name{"bolt-bending-factor", "C_2", "factor for bending of the bolt thread"}, self.bolt_bending_factor);
            field(Name{"nut-bending-factor", "C_3", "factor for bending of the nut thread"}, self.nut_bending_factor);
            field(Name{"bolt-thread-force", "F_mGB", "force that strips the bolt thread"}, self.bolt_thread_force);
            field(Name{"nut-thread-force", "F_mGM", "force that strips the nut thread"}, self.nut_thread_force);
            field(Name{"bolt-breaking-force", "F_mS", "force that breaks the bolt"}, self.bolt_breaking_force);
            field(Name{"margin", "S", "weaker stripping force over breaking force"}, self.margin);
            field(Name{"required-engagement", "m_req", "effective engagement at which the bolt breaks first"}, self.required_engagement);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (in.nominal_diameter < 2.0 * in.pitch) return "a pitch more than half the diameter leaves no core";
        if (in.bolt_major_least > 1.001 * in.nominal_diameter) return "the bolt thread is larger than its nominal diameter";
        if (in.bolt_pitch_least > in.bolt_major_least) return "the pitch diameter is larger than the outside of the bolt thread";
        if (in.nut_minor_greatest > in.nut_pitch_greatest) return "the minor diameter of the nut is larger than its pitch diameter";
        if (in.nut_minor_greatest >= in.bolt_major_least) return "the threads do not overlap";
        // A shear width below a tenth of the pitch is no engagement worth the name, and must not divide.
        if (in.pitch * 0.4 + (in.bolt_pitch_least - in.nut_minor_greatest) * 0.57735 < mm(0) ||
            in.pitch * 0.4 + (in.bolt_major_least - in.nut_pitch_greatest) * 0.57735 < mm(0))
            return "the threads hardly overlap";
        if (in.width_across_flats && *in.width_across_flats <= in.nominal_diameter) return "the nut is smaller than its thread";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [d, P, m_eff, d_min, d_2min, D_1max, D_2max, s, R_mB, R_mM, q_B, q_M] = in;
        FAYWRIGHT_STEP(A_SB, pi * D_1max * m_eff / P * (P / 2.0 + (d_2min - D_1max) * tan(pi / 6.0)));
        FAYWRIGHT_STEP(A_SM, pi * d_min * m_eff / P * (P / 2.0 + (d_min - D_2max) * tan(pi / 6.0)));
        FAYWRIGHT_STEP(R_S, q_M * R_mM * A_SM / (q_B * R_mB * A_SB));
        const double flats = s ? static_cast<double>(*s / d) : 1.9;
        FAYWRIGHT_STATED(x, "s/d, not below 1.4 nor above 1.9; 1.9 for a tapped block", min(max(flats, 1.4), 1.9));
        FAYWRIGHT_STEP(C_1, 3.8 * x - squared(x) - 2.61);
        FAYWRIGHT_STEP(y, min(R_S, 2.2));
        FAYWRIGHT_STATED(C_2, "0.897 for R_S <= 1, else 5.594 - 13.682 y + 14.107 y^2 - 6.057 y^3 + 0.9353 y^4",
                         y <= 1.0 ? 0.897 : 5.594 - 13.682 * y + 14.107 * squared(y) - 6.057 * cubed(y) + 0.9353 * squared(squared(y)));
        FAYWRIGHT_STEP(z, min(R_S, 1.0));
        FAYWRIGHT_STEP(C_3, 0.728 + 1.769 * z - 2.896 * squared(z) + 1.296 * cubed(z));
        FAYWRIGHT_STEP(F_mGB, C_1 * C_2 * q_B * R_mB * A_SB);
        FAYWRIGHT_STEP(F_mGM, C_1 * C_3 * q_M * R_mM * A_SM);
        FAYWRIGHT_STEP(F_mS, R_mB * pi / 4.0 * squared(d - 0.938194 * P));
        FAYWRIGHT_STEP(S, min(F_mGB, F_mGM) / F_mS);
        FAYWRIGHT_STEP(m_req, m_eff / S);
        const char* beyond = nullptr;
        if (R_S < 0.4) beyond = "tapped metal so soft that C_3 is extrapolated: confirm by test";
        if (R_S > 2.2) beyond = "nut thread so strong that C_2 is held at its last value";
        if (flats < 1.4) beyond = "nut thinner in the wall than C_1 covers";
        return {A_SB, A_SM, R_S, C_1, C_2, C_3, F_mGB, F_mGM, F_mS, S, m_req, beyond};
    }
};

}  // namespace faywright
