// SPDX-License-Identifier: MIT
#pragma once

#include "mechanics/design_method.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <optional>

namespace faywright {

/// Shear of a bolt across one or more planes.
///
/// EN 1993-1-8 and EN 1999-1-1: F_v,Rd = n α_v f_ub A/γ_M2. With thread in the plane A is the stress area and α_v
/// follows the class (0.6 or 0.5); in the shank A is gross and α_v 0.6. A packing thicker than d/3 and a joint longer
/// than 15 d reduce it (the length rule, 3.8, from memory). AS 4100 takes 0.62 f_uf on the core (minor) area or the shank, times 0.8; the
/// American rule takes a share α_v of f_ub on the gross area (0.5 with threads excluded, in the edition seen), times 0.75.
struct BoltShear {
    static constexpr Formula formula{.name = "bolt-shear",
                                     .title = "Shear resistance of a bolt",
                                     .range = "steel bolts in holes of normal clearance; packing up to 4 d/3",
                                     .source = {"EN 1993-1-8", "2005", "Table 3.4, 3.6.1(12)", Basis::published}};

    /// In the order of DesignMethod.
    static constexpr std::array<Source, 4> sources{{formula.source, Source{"EN 1999-1-1", "2007", "Table 8.5", Basis::memory},
                                                    Source{"AISC 360", "2005", "J3.6", Basis::published},
                                                    Source{"AS 4100", "1998", "9.3.2.1", Basis::memory}}};
    static constexpr const Source& source(DesignMethod method) { return sources[static_cast<std::size_t>(method)]; }

    struct Inputs {
        Length bolt_diameter;
        Area area;
        Stress bolt_ultimate_strength;
        bool thread_in_plane = true;
        double shear_factor = 0.6;
        int planes = 1;
        std::optional<Length> packing, joint_length;
        double gamma_M2 = 1.25;
        DesignMethod method = DesignMethod::en_1999;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"bolt-diameter", "d", "nominal diameter of the bolt"}, self.bolt_diameter, Range{mm(1), mm(200)});
            field(Name{"area", "A",
                       "area in the shear plane: shank, or with thread in it the stress area (AS 4100: core area; ADM: always gross)"},
                  self.area, Range{mm2(0.5), mm2(40000)});
            field(Name{"bolt-ultimate-strength", "f_ub", "ultimate strength of the bolt"}, self.bolt_ultimate_strength,
                  Range{MPa(10), MPa(2000)});
            field(Name{"thread-in-plane", "", "whether thread lies in a shear plane"}, self.thread_in_plane, defaulted);
            field(Name{"shear-factor", "alpha_v", "shear strength over tensile strength, by class"}, self.shear_factor, Range{0.1, 1.0},
                  defaulted);
            field(Name{"planes", "n", "number of shear planes"}, self.planes, Range{1, 20}, defaulted);
            field(Name{"packing", "t_p", "thickness of packing at the plane"}, self.packing, Range{mm(0.1), mm(500)});
            field(Name{"joint-length", "L_j", "first to last bolt of the joint, along the force"}, self.joint_length,
                  Range{mm(1), mm(100000)});
            field(Name{"gamma-M2", "gamma_M2", "partial factor"}, self.gamma_M2, Range{1.0, 3.0}, defaulted);
            field(Name{"method", "", "code of practice"}, self.method, defaulted);
        }
    };

    struct Answer {
        Force resistance;      ///< design resistance of the bolt, all planes together
        Force characteristic;  ///< before partial factor
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"resistance", "F_v_Rd", "design shear resistance, all planes"}, self.resistance);
            field(Name{"characteristic", "F_v_Rk", "characteristic shear resistance, all planes"}, self.characteristic);
        }
    };

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [d, A, f_ub, thread, alpha_v, n, t_p, L_j, gamma_M2, method] = in;
        switch (method) {
            case DesignMethod::en_1993:
            case DesignMethod::en_1999: {
                auto beta = 1.0;
                const char* outside = nullptr;
                if (t_p && *t_p > d / 3.0) {
                    FAYWRIGHT_STEP(beta_p, 9.0 * d / (8.0 * d + 3.0 * *t_p));
                    beta *= beta_p;
                    if (*t_p > 4.0 / 3.0 * d) outside = "packing thicker than 4 d/3";
                }
                if (L_j && *L_j > 15.0 * d) {
                    FAYWRIGHT_STEP(beta_Lf, max(1.0 - (*L_j - 15.0 * d) / (200.0 * d), 0.75));
                    beta *= beta_Lf;
                }
                FAYWRIGHT_STATED(alpha, "α_v with thread in the plane, 0.6 in the shank", thread ? alpha_v : 0.6);
                FAYWRIGHT_STATED(beta_v, "reductions for packing and length", beta);
                FAYWRIGHT_STEP(F_v_Rk, n * alpha * beta_v * f_ub * A);
                FAYWRIGHT_STEP(F_v_Rd, F_v_Rk / gamma_M2);
                return {F_v_Rd, F_v_Rk, outside};
            }
            case DesignMethod::adm: {
                FAYWRIGHT_STEP(F_v_Rk, n * alpha_v * f_ub * A);
                FAYWRIGHT_STEP(F_v_Rd, 0.75 * F_v_Rk);
                return {F_v_Rd, F_v_Rk};
            }
            case DesignMethod::as_4100: {
                FAYWRIGHT_STATED(k_r, "1 up to 300 mm of joint, 1.075 - L_j/4000 mm, 0.75 from 1300 mm",
                                 L_j ? min(1.0, max(double(1.075 - *L_j / mm(4000)), 0.75)) : 1.0);
                FAYWRIGHT_STEP(F_v_Rk, n * 0.62 * k_r * f_ub * A);
                FAYWRIGHT_STEP(F_v_Rd, 0.8 * F_v_Rk);
                return {F_v_Rd, F_v_Rk};
            }
        }
        return {};
    }
};

}  // namespace faywright
