// SPDX-License-Identifier: MIT
#pragma once

#include "mechanics/design_method.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

namespace faywright {

/// Tension of a part across its bolt holes: yield of the gross section, rupture of the net.
///
/// EN 1993-1-1: A f_y/γ_M0 and 0.9 A_net f_u/γ_M2. EN 1999-1-1: A f_o/γ_M1 and 0.9 A_net f_u/γ_M2. American rule: 0.9 A f_y and
/// 0.75 A_net f_u. AS 4100: 0.9 times A f_y and 0.85 A_net f_u (even pull, k_t = 1). The smaller holds.
/// Holes in the net section count with their full diameter, a tube through the wall with its hole.
struct NetSection {
    static constexpr Formula formula{.name = "net-section",
                                     .title = "Tension resistance of a part across its holes",
                                     .range = "pull in line with the section; every part of it connected",
                                     .source = {"EN 1993-1-1", "2005", "6.2.3", Basis::published}};

    /// In the order of DesignMethod.
    static constexpr std::array<Source, 4> sources{{formula.source, Source{"EN 1999-1-1", "2007", "6.2.3", Basis::memory},
                                                    Source{"Aluminum Design Manual", "2015", "D.2", Basis::memory},
                                                    Source{"AS 4100", "1998", "7.2", Basis::memory}}};
    static constexpr const Source& source(DesignMethod method) { return sources[static_cast<std::size_t>(method)]; }

    struct Inputs {
        Area gross_area, net_area;
        Stress yield_strength, ultimate_strength;
        double gamma_M0 = 1.0, gamma_M1 = 1.10, gamma_M2 = 1.25;
        DesignMethod method = DesignMethod::en_1999;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"gross-area", "A", "area without holes"}, self.gross_area, Range{mm2(1), mm2(1e7)});
            field(Name{"net-area", "A_net", "area less the holes"}, self.net_area, Range{mm2(0.1), mm2(1e7)});
            field(Name{"yield-strength", "f_y", "yield or 0.2 % proof strength"}, self.yield_strength, Range{MPa(10), MPa(2000)});
            field(Name{"ultimate-strength", "f_u", "ultimate strength"}, self.ultimate_strength, Range{MPa(10), MPa(2000)});
            field(Name{"gamma-M0", "gamma_M0", "partial factor on yield of steel"}, self.gamma_M0, Range{1.0, 3.0}, defaulted);
            field(Name{"gamma-M1", "gamma_M1", "partial factor on proof strength of aluminium"}, self.gamma_M1, Range{1.0, 3.0}, defaulted);
            field(Name{"gamma-M2", "gamma_M2", "partial factor on rupture"}, self.gamma_M2, Range{1.0, 3.0}, defaulted);
            field(Name{"method", "", "code of practice"}, self.method, defaulted);
        }
    };

    struct Answer {
        Force resistance;  ///< the smaller of the two
        Force gross;       ///< yield of the gross section
        Force net;         ///< rupture of the net section
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"resistance", "N_t_Rd", "design tension resistance"}, self.resistance);
            field(Name{"gross", "N_pl_Rd", "yield of the gross section"}, self.gross);
            field(Name{"net", "N_u_Rd", "rupture of the net section"}, self.net);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (in.net_area > in.gross_area) return "the net area is greater than the gross area";
        if (in.yield_strength > in.ultimate_strength) return "the yield strength is above the ultimate strength";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [A, A_net, f_y, f_u, gamma_M0, gamma_M1, gamma_M2, method] = in;
        switch (method) {
            case DesignMethod::en_1993: {
                FAYWRIGHT_STEP(N_pl_Rd, A * f_y / gamma_M0);
                FAYWRIGHT_STEP(N_u_Rd, 0.9 * A_net * f_u / gamma_M2);
                FAYWRIGHT_STEP(N_t_Rd, min(N_pl_Rd, N_u_Rd));
                return {N_t_Rd, N_pl_Rd, N_u_Rd};
            }
            case DesignMethod::en_1999: {
                FAYWRIGHT_STEP(N_pl_Rd, A * f_y / gamma_M1);
                FAYWRIGHT_STEP(N_u_Rd, 0.9 * A_net * f_u / gamma_M2);
                FAYWRIGHT_STEP(N_t_Rd, min(N_pl_Rd, N_u_Rd));
                return {N_t_Rd, N_pl_Rd, N_u_Rd};
            }
            case DesignMethod::adm: {
                FAYWRIGHT_STEP(N_pl_Rd, 0.9 * A * f_y);
                FAYWRIGHT_STEP(N_u_Rd, 0.75 * A_net * f_u);
                FAYWRIGHT_STEP(N_t_Rd, min(N_pl_Rd, N_u_Rd));
                return {N_t_Rd, N_pl_Rd, N_u_Rd};
            }
            case DesignMethod::as_4100: {
                FAYWRIGHT_STEP(N_pl_Rd, 0.9 * A * f_y);
                FAYWRIGHT_STEP(N_u_Rd, 0.9 * 0.85 * A_net * f_u);
                FAYWRIGHT_STEP(N_t_Rd, min(N_pl_Rd, N_u_Rd));
                return {N_t_Rd, N_pl_Rd, N_u_Rd};
            }
        }
        return {};
    }
};

}  // namespace faywright
