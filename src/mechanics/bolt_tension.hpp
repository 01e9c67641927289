// SPDX-License-Identifier: MIT
#pragma once

#include "mechanics/design_method.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

namespace faywright {

/// Tension of a bolt on its stress area.
///
/// EN 1993-1-8 and EN 1999-1-1: F_t,Rd = k_2 f_ub A_s/γ_M2, k_2 0.9 (0.63 countersunk). AS 4100: 0.8 f_uf A_s. American rules
/// take 0.75 f_u on the gross area, about f_u A_s, times 0.75: the stress area is used here.
struct BoltTension {
    static constexpr Formula formula{.name = "bolt-tension",
                                     .title = "Tension resistance of a bolt",
                                     .range = "nut or thread able to break the bolt; no prying in the demand unless added (see prying)",
                                     .source = {"EN 1993-1-8", "2005", "Table 3.4", Basis::published}};

    /// In the order of DesignMethod.
    static constexpr std::array<Source, 4> sources{{formula.source, Source{"EN 1999-1-1", "2007", "Table 8.5", Basis::memory},
                                                    Source{"AISC 360", "2010", "J3.6, gross area turned into stress area", Basis::practice},
                                                    Source{"AS 4100", "1998", "9.3.2.2", Basis::memory}}};
    static constexpr const Source& source(DesignMethod method) { return sources[static_cast<std::size_t>(method)]; }

    struct Inputs {
        Area stress_area;
        Stress bolt_ultimate_strength;
        double head_factor = 0.9;
        double gamma_M2 = 1.25;
        DesignMethod method = DesignMethod::en_1999;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"stress-area", "A_s", "stress area of the thread"}, self.stress_area, Range{mm2(0.5), mm2(40000)});
            field(Name{"bolt-ultimate-strength", "f_ub", "ultimate strength of the bolt"}, self.bolt_ultimate_strength,
                  Range{MPa(10), MPa(2000)});
            field(Name{"head-factor", "k_2", "0.9, countersunk 0.63"}, self.head_factor, Range{0.1, 1.0}, defaulted);
            field(Name{"gamma-M2", "gamma_M2", "partial factor"}, self.gamma_M2, Range{1.0, 3.0}, defaulted);
            field(Name{"method", "", "code of practice"}, self.method, defaulted);
        }
    };

    struct Answer {
        Force resistance;
        Force characteristic;
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"resistance", "F_t_Rd", "design tension resistance"}, self.resistance);
            field(Name{"characteristic", "F_t_Rk", "characteristic tension resistance"}, self.characteristic);
        }
    };

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [A_s, f_ub, k_2, gamma_M2, method] = in;
        switch (method) {
            case DesignMethod::en_1993:
            case DesignMethod::en_1999: {
                FAYWRIGHT_STEP(F_t_Rk, k_2 * f_ub * A_s);
                FAYWRIGHT_STEP(F_t_Rd, F_t_Rk / gamma_M2);
                return {F_t_Rd, F_t_Rk};
            }
            case DesignMethod::adm: {
                FAYWRIGHT_STEP(F_t_Rk, f_ub * A_s);
                FAYWRIGHT_STEP(F_t_Rd, 0.75 * F_t_Rk);
                return {F_t_Rd, F_t_Rk};
            }
            case DesignMethod::as_4100: {
                FAYWRIGHT_STEP(F_t_Rk, f_ub * A_s);
                FAYWRIGHT_STEP(F_t_Rd, 0.8 * F_t_Rk);
                return {F_t_Rd, F_t_Rk};
            }
        }
        return {};
    }
};

}  // namespace faywright
