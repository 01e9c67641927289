// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <optional>

namespace faywright {

/// Whether the edges of the flange press on something when it bends.
enum class FlangeEdge { pries, free };

template <>
struct Words<FlangeEdge> {
    static constexpr std::array<std::pair<FlangeEdge, std::string_view>, 2> all{{{FlangeEdge::pries, "pries"}, {FlangeEdge::free, "free"}}};
};

/// Prying: a flange bends under the pull of its web, its edges press, and the bolts carry more than the load.
///
/// The T-stub of EN 1993-1-8 6.2.4, for one row of bolts (both sides of the web). M_pl = l_eff t² f_y/(4 γ_M0); n = e_min, at most 1.25 m.
/// Mode 1, flange yields at web and bolts: 4 M_pl/m, or with the head's or washer's width (e_w = d_w/4) the second method.
/// Mode 2, flange yields at the web and bolts break: (2 M_pl + n ΣF_t)/(m + n). Mode 3, bolts break: ΣF_t. Without pressing edges modes 1
/// and 2 give way to 2 M_pl/m. The prying force is what the edges press with at that resistance, by equilibrium.
struct Prying {
    static constexpr Formula formula{.name = "prying",
                                     .title = "Tension resistance of a flange and its bolts with prying (T-stub)",
                                     .range = "flat flange, effective length from the yield pattern; ductile plate",
                                     .source = {"EN 1993-1-8", "2005 (draft of 2000 read)", "6.2.4, Table 6.2", Basis::published}};

    struct Inputs {
        Length effective_length, thickness;
        Stress yield_strength;
        Length bolt_to_web, bolt_to_edge;
        Force bolt_tension_resistance;
        int bolts = 2;
        std::optional<Length> washer_diameter;
        double gamma_M0 = 1.0;
        FlangeEdge edge = FlangeEdge::pries;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"effective-length", "l_eff", "effective length of the yield lines for the row"}, self.effective_length,
                  Range{mm(1), mm(10000)});
            field(Name{"thickness", "t", "thickness of the flange"}, self.thickness, Range{mm(0.5), mm(200)});
            field(Name{"yield-strength", "f_y", "yield strength of the flange"}, self.yield_strength, Range{MPa(10), MPa(2000)});
            field(Name{"bolt-to-web", "m", "bolt line to the yield line at the web"}, self.bolt_to_web, Range{mm(1), mm(1000)});
            field(Name{"bolt-to-edge", "e_min", "bolt line to the pressed edge"}, self.bolt_to_edge, Range{mm(1), mm(1000)});
            field(Name{"bolt-tension-resistance", "F_t_Rd", "tension resistance of one bolt"}, self.bolt_tension_resistance,
                  Range{newton(1), kN(100000)});
            field(Name{"bolts", "n_b", "bolts in the row, both sides of the web"}, self.bolts, Range{1, 1000}, defaulted);
            field(Name{"washer-diameter", "d_w", "diameter of washer, or width across points of head; asks for the second method"},
                  self.washer_diameter, Range{mm(1), mm(500)});
            field(Name{"gamma-M0", "gamma_M0", "partial factor"}, self.gamma_M0, Range{1.0, 3.0}, defaulted);
            field(Name{"edge", "", "whether the edges press"}, self.edge, defaulted);
        }
    };

    struct Answer {
        Force resistance;  ///< of the row, the least of the modes that apply
        int mode = 0;      ///< 1 flange, 2 flange and bolts, 3 bolts
        Force mode_1, mode_2, mode_3;
        Force no_prying;          ///< flange alone, edges free
        Force prying_force;       ///< pressing of all edges together at the resistance
        double bolt_ratio = 1.0;  ///< bolt force over load at the resistance
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"resistance", "F_T_Rd", "design tension resistance of the row"}, self.resistance);
            field(Name{"mode", "", "1 flange, 2 flange and bolts, 3 bolts"}, self.mode);
            field(Name{"mode-1", "F_T_1", "flange yields fully"}, self.mode_1);
            field(Name{"mode-2", "F_T_2", "flange yields at the web, bolts break"}, self.mode_2);
            field(Name{"mode-3", "F_T_3", "bolts break"}, self.mode_3);
            field(Name{"no-prying", "F_T_12", "flange yields, edges free"}, self.no_prying);
            field(Name{"prying-force", "Q", "force of the pressed edges at the resistance"}, self.prying_force);
            field(Name{"bolt-ratio", "rho_Q", "force in the bolts over load, at the resistance"}, self.bolt_ratio);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (!in.washer_diameter) return nullptr;
        const Length n = min(in.bolt_to_edge, 1.25 * in.bolt_to_web);
        // Beyond half of either arm the washer spans what should bend.
        if (*in.washer_diameter / 4.0 > 0.5 * min(n, in.bolt_to_web)) return "the washer is too wide for the flange to bend beside it";
        return nullptr;
    }

    /// The modes from the moment of the flange and the arms: for those who know them already.
    template <class Steps = NoSteps>
    static Answer modes(Moment M_pl, Length m, Length n, Force sum_F_t, Length e_w, FlangeEdge edge, Steps&& steps = Steps{}) {
        Answer answer;
        FAYWRIGHT_STEP(F_T_3, sum_F_t);
        FAYWRIGHT_STEP(F_T_12, 2.0 * M_pl / m);
        answer.mode_3 = F_T_3;
        answer.no_prying = F_T_12;
        FAYWRIGHT_STEP(F_T_2, (2.0 * M_pl + n * sum_F_t) / (m + n));
        answer.mode_2 = F_T_2;
        // Half the arm at most (see refusal): the second method's denominator stays positive.
        if (e_w > mm(0) && e_w <= 0.5 * min(m, n)) {
            FAYWRIGHT_STEP(F_T_1, (8.0 * n - 2.0 * e_w) * M_pl / (2.0 * m * n - e_w * (m + n)));
            answer.mode_1 = F_T_1;
        } else {
            FAYWRIGHT_STEP(F_T_1, 4.0 * M_pl / m);
            answer.mode_1 = F_T_1;
        }
        if (edge == FlangeEdge::free) {
            FAYWRIGHT_STEP(F_T_Rd, min(F_T_12, F_T_3));
            answer.resistance = F_T_Rd;
            answer.mode = F_T_12 <= F_T_3 ? 1 : 3;
            answer.prying_force = newton(0);
            return answer;
        }
        FAYWRIGHT_STATED(F_T_Rd, "min(F_T,1, F_T,2, F_T,3)", min(min(answer.mode_1, F_T_2), F_T_3));
        answer.resistance = F_T_Rd;
        answer.mode = F_T_Rd == answer.mode_1 ? 1 : F_T_Rd == F_T_2 ? 2 : 3;
        // Moments about the web's yield line, one side: M_pl = (F + Q)/2 m - Q/2 (m + n).
        FAYWRIGHT_STEP(Q, max((F_T_Rd * m - 2.0 * M_pl) / n, newton(0)));
        FAYWRIGHT_STEP(rho_Q, 1.0 + Q / F_T_Rd);
        answer.prying_force = Q;
        answer.bolt_ratio = rho_Q;
        return answer;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [l_eff, t, f_y, m, e_min, F_t_Rd, n_b, d_w, gamma_M0, edge] = in;
        FAYWRIGHT_STEP(M_pl, 0.25 * l_eff * squared(t) * f_y / gamma_M0);
        FAYWRIGHT_STEP(n, min(e_min, 1.25 * m));
        FAYWRIGHT_STEP(sum_F_t, 1.0 * n_b * F_t_Rd);
        if (!d_w) return modes(M_pl, m, n, sum_F_t, mm(0), edge, steps);
        FAYWRIGHT_STEP(e_w, *d_w / 4.0);
        return modes(M_pl, m, n, sum_F_t, e_w, edge, steps);
    }
};

}  // namespace faywright
