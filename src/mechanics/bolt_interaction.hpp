// SPDX-License-Identifier: MIT
#pragma once

#include "mechanics/design_method.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

namespace faywright {

/// Shear and tension together on one bolt, outside its preload.
///
/// EN: F_v/F_v,Rd + F_t/(1.4 F_t,Rd) <= 1, and the tension alone within F_t,Rd. AS 4100, and here the American rule:
/// (F_v/F_v,Rd)² + (F_t/F_t,Rd)² <= 1, of which the root is given, so that the utilisation grows with the load.
struct BoltInteraction {
    static constexpr Formula formula{.name = "bolt-interaction",
                                     .title = "Bolt in shear and tension together",
                                     .range = "tension includes prying",
                                     .source = {"EN 1993-1-8", "2005", "Table 3.4", Basis::published}};

    /// In the order of DesignMethod.
    static constexpr std::array<Source, 4> sources{
        {formula.source, Source{"EN 1999-1-1", "2007", "Table 8.5", Basis::memory},
         Source{"ellipse of shear and tension", "", "taken over from AS 4100 9.3.2.3", Basis::practice},
         Source{"AS 4100", "1998", "9.3.2.3", Basis::memory}}};
    static constexpr const Source& source(DesignMethod method) { return sources[static_cast<std::size_t>(method)]; }

    struct Inputs {
        Force shear, shear_resistance;
        Force tension, tension_resistance;
        DesignMethod method = DesignMethod::en_1999;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"shear", "F_v", "shear on the bolt"}, self.shear, Range{kN(0), kN(100000)});
            field(Name{"shear-resistance", "F_v_Rd", "shear resistance"}, self.shear_resistance, Range{newton(1), kN(100000)});
            field(Name{"tension", "F_t", "tension on the bolt"}, self.tension, Range{kN(0), kN(100000)});
            field(Name{"tension-resistance", "F_t_Rd", "tension resistance"}, self.tension_resistance, Range{newton(1), kN(100000)});
            field(Name{"method", "", "code of practice"}, self.method, defaulted);
        }
    };

    struct Answer {
        double utilisation = 0.0;  ///< 1 where the bolt is used up
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"utilisation", "U", "share of the resistance used"}, self.utilisation);
        }
    };

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [F_v, F_v_Rd, F_t, F_t_Rd, method] = in;
        switch (method) {
            case DesignMethod::en_1993:
            case DesignMethod::en_1999: {
                FAYWRIGHT_STEP(U_vt, F_v / F_v_Rd + F_t / (1.4 * F_t_Rd));
                FAYWRIGHT_STEP(U_t, F_t / F_t_Rd);
                FAYWRIGHT_STEP(U, max(U_vt, U_t));
                return {U};
            }
            case DesignMethod::adm:
            case DesignMethod::as_4100: {
                FAYWRIGHT_STEP(U_v, F_v / F_v_Rd);
                FAYWRIGHT_STEP(U_t, F_t / F_t_Rd);
                FAYWRIGHT_STEP(U, sqrt(squared(U_v) + squared(U_t)));
                return {U};
            }
        }
        return {};
    }
};

}  // namespace faywright
