// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

namespace faywright {

/// Length of a crush tube between the walls of a section: what its mismatch costs, and the band that may be allowed.
///
/// A tube shorter than the section is high by the gap g loads only when both walls have bent by g/2: F = k_pair g,
/// k_pair = k/2 with k the stiffness of one wall. That force stays in the walls and is missing in the tube; a preload
/// below it never reaches the tube and folds the section. A tube too long spreads the walls by the same law with
/// the sign reversed; it takes nothing from the preload but bends the walls as much, and the plates seat on the tube alone.
/// The allowed gap keeps the force below first yield of the walls and below a stated share of the least preload.
/// Linear, for small deflections: our own theory. Against elastic-plastic finite elements (two sections, wall 4 mm) the closing force is
/// 3 % low to 0.5 % high up to 1.4 times first yield; beyond, the walls give way and it is told too high (7 % at 2.8 times).
struct TubeLength {
    static constexpr Formula formula{.name = "tube-length",
                                     .title = "Gap between crush tube and walls, and the length to cut",
                                     .range = "walls elastic and alike, bolt away from the section's end",
                                     .source = {"walls as springs beside the tube", "", "our derivation", Basis::practice}};

    struct Inputs {
        Length inside_height, height_tolerance;
        Length tube_length, length_tolerance;
        Stiffness wall_stiffness;
        Force first_yield_force;
        Force preload_least;
        double closing_share = 0.1;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"inside-height", "H", "inside height of the section; outside height for a tube through the walls"},
                  self.inside_height, Range{mm(1), mm(5000)});
            field(Name{"height-tolerance", "Delta_H", "tolerance of the inside height, plus and minus"}, self.height_tolerance,
                  Range{mm(0), mm(50)});
            field(Name{"tube-length", "L", "length of the tube"}, self.tube_length, Range{mm(1), mm(5000)});
            field(Name{"length-tolerance", "Delta_L", "tolerance of the tube's length, plus and minus"}, self.length_tolerance,
                  Range{mm(0), mm(50)});
            field(Name{"wall-stiffness", "k", "stiffness of one wall; both are alike"}, self.wall_stiffness,
                  Range{N_per_mm(0.1), N_per_mm(1e8)});
            field(Name{"first-yield-force", "F_y", "force at which a wall first yields"}, self.first_yield_force,
                  Range{newton(0.1), kN(100000)});
            field(Name{"preload-least", "F_V", "least preload of the bolt"}, self.preload_least, Range{newton(1), kN(100000)});
            field(Name{"closing-share", "c", "greatest share of the least preload that closing may take"}, self.closing_share,
                  Range{0.001, 1.0}, defaulted);
        }
    };

    struct Answer {
        Length gap_least, gap_greatest;  ///< negative: the tube is too long
        Force closing_force_least, closing_force_greatest, closing_force;
        double share_left = 0.0;  ///< of the least preload, for the tube that is the most too short
        Length deflection;
        double yield_utilisation = 0.0;
        Length allowed_gap, length_least, length_greatest;
        Length cut_length, cut_tolerance;
        bool closes = false;  ///< the least preload brings the walls onto the shortest tube
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"gap-least", "g_min", "least gap; negative where the tube is too long"}, self.gap_least);
            field(Name{"gap-greatest", "g_max", "greatest gap"}, self.gap_greatest);
            field(Name{"closing-force-least", "F_min", "least force that bends the walls onto the tube, or spreads them"},
                  self.closing_force_least);
            field(Name{"closing-force-greatest", "F_max", "greatest such force"}, self.closing_force_greatest);
            field(Name{"closing-force", "F_close", "force that bends the walls onto the shortest tube"}, self.closing_force);
            field(Name{"share-left", "s", "share of the least preload left for the tube, at worst"}, self.share_left);
            field(Name{"deflection", "w", "greatest deflection of a wall"}, self.deflection);
            field(Name{"yield-utilisation", "eta_y", "greatest force over that of first yield"}, self.yield_utilisation);
            field(Name{"allowed-gap", "g_a", "gap either way that may be allowed"}, self.allowed_gap);
            field(Name{"length-least", "L_min", "least length of the tube at the nominal inside height"}, self.length_least);
            field(Name{"length-greatest", "L_max", "greatest length of the tube at the nominal inside height"}, self.length_greatest);
            field(Name{"cut-length", "L_cut", "length to cut"}, self.cut_length);
            field(Name{"cut-tolerance", "Delta_cut", "tolerance of the cut, plus and minus; zero: cut each tube to its section"},
                  self.cut_tolerance);
            field(Name{"closes", "", "whether the least preload brings the walls onto the shortest tube"}, self.closes);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (in.height_tolerance >= in.inside_height) return "the tolerance is as large as the inside height";
        if (in.length_tolerance >= in.tube_length) return "the tolerance is as large as the tube's length";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [H, Delta_H, L, Delta_L, k, F_y, F_V, c] = in;
        FAYWRIGHT_STEP(g_min, H - Delta_H - (L + Delta_L));
        FAYWRIGHT_STEP(g_max, H + Delta_H - (L - Delta_L));
        FAYWRIGHT_STEP(k_pair, k / 2.0);
        // Where the band holds a perfect fit the least force is none.
        FAYWRIGHT_STEP(F_min, k_pair * max(max(g_min, -g_max), mm(0)));
        FAYWRIGHT_STEP(F_max, k_pair * max(g_max, -g_min));
        FAYWRIGHT_STEP(F_close, k_pair * max(g_max, mm(0)));
        FAYWRIGHT_STEP(s, max(1.0 - double(F_close / F_V), 0.0));
        FAYWRIGHT_STEP(w, max(g_max, -g_min) / 2.0);
        FAYWRIGHT_STEP(eta_y, F_max / F_y);
        FAYWRIGHT_STEP(g_a, min(F_y, c * F_V) / k_pair);
        FAYWRIGHT_STEP(L_min, max(H - g_a, mm(0)));
        FAYWRIGHT_STEP(L_max, H + g_a);
        FAYWRIGHT_STEP(L_cut, H);
        FAYWRIGHT_STEP(Delta_cut, max(g_a - Delta_H, mm(0)));

        Answer answer{g_min, g_max, F_min, F_max, F_close, s, w, eta_y, g_a, L_min, L_max, L_cut, Delta_cut, F_close < F_V};
        if (!answer.closes)
            answer.outside_range = "the least preload does not bring the walls onto the shortest tube";
        else if (eta_y > 1.0)
            answer.outside_range = "a wall yields before tube and walls have met: forces are elastic estimates";
        else if (g_a < Delta_H)
            answer.outside_range = "the section's own tolerance exceeds the allowed gap: cut each tube to its section";
        return answer;
    }
};

}  // namespace faywright
