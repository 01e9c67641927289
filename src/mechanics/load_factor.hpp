// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

namespace faywright {

/// Load factor: how much of a pull on the joint reaches the bolt while the faces stay closed.
///
/// Phi = delta_P/(delta_S + delta_P), the same as k_b/(k_b + k_m). Where the load enters nearer the faying face only the share n
/// of the clamped length is relieved and Phi_n = n Phi. The bolt gains Phi_n F_A, the clamp loses (1 - Phi_n) F_A. No credit for n:
/// take n = 1 for the bolt and n = 0 for the residual clamp.
struct LoadFactor {
    static constexpr Formula formula{.name = "load-factor",
                                     .title = "Share of an axial service force that the bolt takes",
                                     .range = "concentric load and clamping, faces closed, elastic",
                                     .source = {"VDI 2230 Part 1", "2003", "5.3", Basis::memory}};

    struct Inputs {
        Resilience bolt_resilience, part_resilience;
        double introduction_factor = 1.0;
        Force service_force = newton(0);

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"bolt-resilience", "delta_S", "resilience of the bolt"}, self.bolt_resilience, Range{mm_per_N(1e-9), mm_per_N(1)});
            field(Name{"part-resilience", "delta_P", "resilience of the clamped parts"}, self.part_resilience,
                  Range{mm_per_N(1e-9), mm_per_N(1)});
            field(Name{"introduction-factor", "n", "load introduction factor"}, self.introduction_factor, Range{0.0, 1.0}, defaulted);
            field(Name{"service-force", "F_A", "axial service force on the joint at the bolt"}, self.service_force,
                  Range{newton(0), kN(10000)}, defaulted);
        }
    };

    struct Answer {
        double load_factor;       ///< with the load at the outer faces
        double effective_factor;  ///< with the introduction factor
        Force bolt_force;         ///< added to the bolt
        Force clamp_reduction;    ///< taken from the clamp
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"load-factor", "Phi", "load factor at the outer faces"}, self.load_factor);
            field(Name{"effective-factor", "Phi_n", "load factor with load introduction"}, self.effective_factor);
            field(Name{"bolt-force", "F_SA", "extra force in the bolt"}, self.bolt_force);
            field(Name{"clamp-reduction", "F_PA", "force taken from the clamp"}, self.clamp_reduction);
        }
    };

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [delta_S, delta_P, n, F_A] = in;
        FAYWRIGHT_STEP(Phi, delta_P / (delta_S + delta_P));
        FAYWRIGHT_STEP(Phi_n, n * Phi);
        FAYWRIGHT_STEP(F_SA, Phi_n * F_A);
        FAYWRIGHT_STEP(F_PA, (1.0 - Phi_n) * F_A);
        return {Phi, Phi_n, F_SA, F_PA};
    }
};

}  // namespace faywright
