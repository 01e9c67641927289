// SPDX-License-Identifier: MIT
#pragma once

#include "mechanics/design_method.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <optional>

namespace faywright {

/// Bearing: what the wall of a hole carries from the bolt pressed against it.
///
/// EN 1993-1-8 and EN 1999-1-1 share one form: F_b,Rd = k_1 α_b f_u d t / γ_M2, where α_b falls with a short
/// end or pitch along the force and k_1 with a short edge or gauge across it; neither falls below 0. The Aluminum
/// Design Manual and AS 4100 limit the bearing stress alone and check the end separately (TearOut).
struct Bearing {
    static constexpr Formula formula{.name = "bearing",
                                     .title = "Bearing resistance of a ply at one bolt",
                                     .range = "normal round holes; e_1, e_2 >= 1.2 d_0; p_1 >= 2.2 d_0; p_2 >= 2.4 d_0",
                                     .source = {"EN 1993-1-8", "2005", "Table 3.4", Basis::published}};

    /// The rule differs by code, and so does its source. In the order of DesignMethod.
    static constexpr std::array<Source, 4> sources{{formula.source, Source{"EN 1999-1-1", "2007", "Table 8.5", Basis::memory},
                                                    Source{"Aluminum Design Manual", "2015", "J.3.6", Basis::memory},
                                                    Source{"AS 4100", "1998", "9.3.2.4", Basis::memory}}};
    static constexpr const Source& source(DesignMethod method) { return sources[static_cast<std::size_t>(method)]; }

    struct Inputs {
        Length bolt_diameter, hole_diameter, thickness;
        Stress ultimate_strength, bolt_ultimate_strength;
        Length end_distance, edge_distance;
        std::optional<Length> pitch, gauge;  ///< absent: no neighbouring bolt along or across the force
        double gamma_M2 = 1.25;
        DesignMethod method = DesignMethod::en_1999;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"bolt-diameter", "d", "nominal diameter of the bolt"}, self.bolt_diameter, Range{mm(1), mm(200)});
            field(Name{"hole-diameter", "d_0", "diameter of the hole"}, self.hole_diameter, Range{mm(1), mm(220)});
            field(Name{"thickness", "t", "thickness of the ply"}, self.thickness, Range{mm(0.5), mm(200)});
            field(Name{"ultimate-strength", "f_u", "ultimate strength of the ply"}, self.ultimate_strength, Range{MPa(10), MPa(2000)});
            field(Name{"bolt-ultimate-strength", "f_ub", "ultimate strength of the bolt"}, self.bolt_ultimate_strength,
                  Range{MPa(10), MPa(2000)});
            field(Name{"end-distance", "e_1", "centre of hole to the end, along the force"}, self.end_distance, Range{mm(1), mm(10000)});
            field(Name{"edge-distance", "e_2", "centre of hole to the edge, across the force"}, self.edge_distance,
                  Range{mm(1), mm(10000)});
            field(Name{"pitch", "p_1", "distance to the next bolt along the force"}, self.pitch, Range{mm(1), mm(10000)});
            field(Name{"gauge", "p_2", "distance to the next bolt across the force"}, self.gauge, Range{mm(1), mm(10000)});
            field(Name{"gamma-M2", "gamma_M2", "partial factor"}, self.gamma_M2, Range{1.0, 3.0}, defaulted);
            field(Name{"method", "", "code of practice"}, self.method, defaulted);
        }
    };

    struct Answer {
        Force resistance;                     ///< design resistance of the ply at this bolt
        Force characteristic;                 ///< the same with partial factor 1
        std::optional<double> end_factor;     ///< α_b, where the code has one
        std::optional<double> edge_factor;    ///< k_1, where the code has one
        const char* outside_range = nullptr;  ///< why the result is beyond the rule's stated range

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"resistance", "F_b_Rd", "design bearing resistance"}, self.resistance);
            field(Name{"characteristic", "F_b_Rk", "characteristic bearing resistance"}, self.characteristic);
            field(Name{"end-factor", "alpha_b", "share for end, pitch and bolt strength"}, self.end_factor);
            field(Name{"edge-factor", "k_1", "factor for edge and gauge"}, self.edge_factor);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (in.hole_diameter < in.bolt_diameter) return "the hole is smaller than the bolt";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [d, d_0, t, f_u, f_ub, e_1, e_2, p_1, p_2, gamma_M2, method] = in;
        switch (method) {
            case DesignMethod::en_1993:
            case DesignMethod::en_1999: {
                FAYWRIGHT_STEP(alpha_e, e_1 / (3.0 * d_0));
                auto alpha_least = alpha_e;
                auto k_least = 2.5;
                FAYWRIGHT_STEP(k_e, 2.8 * e_2 / d_0 - 1.7);
                k_least = min(k_least, k_e);
                if (p_1) {
                    FAYWRIGHT_STEP(alpha_p, *p_1 / (3.0 * d_0) - 0.25);
                    alpha_least = min(alpha_least, alpha_p);
                }
                if (p_2) {
                    FAYWRIGHT_STEP(k_p, 1.4 * *p_2 / d_0 - 1.7);
                    k_least = min(k_least, k_p);
                }
                FAYWRIGHT_STATED(alpha_b, "min(α_e, α_p, f_ub/f_u, 1), not below 0", max(min({alpha_least, double(f_ub / f_u), 1.0}), 0.0));
                FAYWRIGHT_STATED(k_1, "min(k_e, k_p, 2.5), not below 0", max(k_least, 0.0));
                FAYWRIGHT_STEP(F_b_Rk, k_1 * alpha_b * f_u * d * t);
                FAYWRIGHT_STEP(F_b_Rd, F_b_Rk / gamma_M2);
                const bool close =
                    e_1 < 1.2 * d_0 || e_2 < 1.2 * d_0 || p_1.value_or(3.0 * d_0) < 2.2 * d_0 || p_2.value_or(3.0 * d_0) < 2.4 * d_0;
                return {F_b_Rd, F_b_Rk, alpha_b, k_1, close ? "end, edge or pitch below the least the rule covers" : nullptr};
            }
            case DesignMethod::adm: {
                FAYWRIGHT_STEP(F_b_Rk, 2.0 * d * t * f_u);
                FAYWRIGHT_STEP(F_b_Rd, 0.75 * F_b_Rk);
                return {F_b_Rd, F_b_Rk, {}, {}, e_1 < 1.5 * d ? "end distance below 1.5 bolt diameters" : nullptr};
            }
            case DesignMethod::as_4100: {
                FAYWRIGHT_STEP(F_b_Rk, 3.2 * d * t * f_u);
                FAYWRIGHT_STEP(F_b_Rd, 0.9 * F_b_Rk);
                return {F_b_Rd, F_b_Rk, {}, {}, e_1 < 1.25 * d ? "end distance below 1.25 bolt diameters" : nullptr};
            }
        }
        return {};
    }
};

}  // namespace faywright
