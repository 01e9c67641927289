// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <optional>

namespace faywright {

/// The rule a slip resistance follows.
enum class SlipMethod {
    clamp_friction,  ///< clamp at the plane times friction, nothing else
    en_1993,
    en_1999,
    as_4100,
};

template <>
struct Words<SlipMethod> {
    static constexpr std::array<std::pair<SlipMethod, std::string_view>, 4> all{{
        {SlipMethod::clamp_friction, "clamp friction"},
        {SlipMethod::en_1993, "EN 1993-1-8"},
        {SlipMethod::en_1999, "EN 1999-1-1"},
        {SlipMethod::as_4100, "AS 4100"},
    }};
};

/// Least preload of a controlled tightening, 0.7 f_ub A_s (EN 1993-1-8 3.9.1, EN 1090-2).
[[nodiscard]] inline Force standard_preload(Stress f_ub, Area A_s) { return 0.7 * f_ub * A_s; }

/// Slip: what friction between the faying faces holds for one bolt.
///
/// Plain: n μ (F_C - ψ F_t)/γ, F_C the clamp that reaches the plane (not the bolt's force where a tube takes part of it) and
/// ψ the share of a service tension that relieves it. EN 1993-1-8: k_s n μ (F_C - 0.8 F_t)/γ_M3, k_s for the hole; EN 1999-1-1 the
/// same without k_s, and only for parts of proof strength above 200 MPa. AS 4100: 0.7 k_h μ n F_C, tension by a straight
/// line to the full clamp times 0.7. The factor for friction carries most of the doubt: coatings, tapes and wet compounds need tests.
struct Slip {
    static constexpr Formula formula{.name = "slip",
                                     .title = "Slip resistance of the faying faces at one bolt",
                                     .range = "clamp sustained at the plane; friction from tests for the surfaces at hand",
                                     .source = {"Coulomb friction", "", "clamp times friction", Basis::practice}};

    /// In the order of SlipMethod.
    static constexpr std::array<Source, 4> sources{{formula.source, Source{"EN 1993-1-8", "2005", "3.9.1, 3.9.2", Basis::memory},
                                                    Source{"EN 1999-1-1", "2007", "8.5.9", Basis::memory},
                                                    Source{"AS 4100", "1998", "9.3.3", Basis::memory}}};
    static constexpr const Source& source(SlipMethod method) { return sources[static_cast<std::size_t>(method)]; }

    struct Inputs {
        Force clamp;
        double friction;
        int planes = 1;
        Force tension = newton(0);
        double tension_share = 0.8;
        double hole_factor = 1.0;
        double gamma_M3 = 1.25;
        std::optional<Stress> proof_strength;
        SlipMethod method = SlipMethod::clamp_friction;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"clamp", "F_C", "clamp force that reaches the faying plane"}, self.clamp, Range{kN(0), kN(100000)});
            field(Name{"friction", "mu", "friction (slip factor) of the faying faces"}, self.friction, Range{0.0, 1.5});
            field(Name{"planes", "n", "number of friction planes"}, self.planes, Range{1, 20}, defaulted);
            field(Name{"tension", "F_t", "external tension on the bolt"}, self.tension, Range{kN(0), kN(100000)}, defaulted);
            field(Name{"tension-share", "psi", "share of the tension that relieves the clamp (EN: 0.8 always)"}, self.tension_share,
                  Range{0.0, 1.0}, defaulted);
            field(Name{"hole-factor", "k_s", "1 normal holes; less for oversize and slots"}, self.hole_factor, Range{0.3, 1.0}, defaulted);
            field(Name{"gamma-M3", "gamma_M3", "partial factor on slip (AS 4100: 0.7 instead)"}, self.gamma_M3, Range{1.0, 5.0}, defaulted);
            field(Name{"proof-strength", "f_o", "least 0.2 % proof strength of the parts (EN 1999-1-1)"}, self.proof_strength,
                  Range{MPa(10), MPa(2000)});
            field(Name{"method", "", "rule followed"}, self.method, defaulted);
        }
    };

    struct Answer {
        Force resistance;
        Force residual_clamp;  ///< clamp left at the plane under the tension
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"resistance", "F_s_Rd", "design slip resistance"}, self.resistance);
            field(Name{"residual-clamp", "F_r", "clamp left under the tension"}, self.residual_clamp);
        }
    };

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [F_C, mu, n, F_t, psi, k_s, gamma_M3, f_o, method] = in;
        switch (method) {
            case SlipMethod::clamp_friction: {
                FAYWRIGHT_STEP(F_r, max(F_C - psi * F_t, newton(0)));
                FAYWRIGHT_STEP(F_s_Rd, k_s * n * mu * F_r / gamma_M3);
                return {F_s_Rd, F_r};
            }
            case SlipMethod::en_1993: {
                FAYWRIGHT_STEP(F_r, max(F_C - 0.8 * F_t, newton(0)));
                FAYWRIGHT_STEP(F_s_Rd, k_s * n * mu * F_r / gamma_M3);
                return {F_s_Rd, F_r};
            }
            case SlipMethod::en_1999: {
                FAYWRIGHT_STEP(F_r, max(F_C - 0.8 * F_t, newton(0)));
                FAYWRIGHT_STEP(F_s_Rd, n * mu * F_r / gamma_M3);
                const char* outside = nullptr;
                if (!f_o)
                    outside = "EN 1999-1-1 covers slip only above 200 MPa of proof strength, which is not given";
                else if (*f_o <= MPa(200))
                    outside = "EN 1999-1-1 covers slip only for parts above 200 MPa of proof strength";
                else if (k_s < 1.0)
                    outside = "EN 1999-1-1 has no slip rule for other than normal holes";
                return {F_s_Rd, F_r, outside};
            }
            case SlipMethod::as_4100: {
                FAYWRIGHT_STEP(F_r, max(F_C - F_t / 0.7, newton(0)));
                FAYWRIGHT_STEP(F_s_Rd, 0.7 * k_s * n * mu * F_r);
                return {F_s_Rd, F_r};
            }
        }
        return {};
    }
};

}  // namespace faywright
