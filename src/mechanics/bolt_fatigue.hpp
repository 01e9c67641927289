// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

namespace faywright {

/// Which endurance the thread is held against.
enum class FatigueMethod {
    rolled_before,  ///< thread rolled before heat treatment: the usual bolt
    rolled_after,   ///< thread rolled after heat treatment: keeps its pressed-in stresses
    en_1993_1_9,    ///< detail 50 of the structural code, a range on the stress area
};

template <>
struct Words<FatigueMethod> {
    static constexpr std::array<std::pair<FatigueMethod, std::string_view>, 3> all{{
        {FatigueMethod::rolled_before, "VDI 2230 rolled before heat treatment"},
        {FatigueMethod::rolled_after, "VDI 2230 rolled after heat treatment"},
        {FatigueMethod::en_1993_1_9, "EN 1993-1-9 detail 50"},
    }};
};

/// Fatigue of the bolt: the swing of its stress against what its first loaded thread endures.
///
/// sigma_a = F_a/A_s, F_a half the swing of the force in the bolt. Endurance by VDI 2230 is an amplitude, 0.85 (150/d + 45) MPa with d in
/// mm, whatever the class; rolled after heat treatment it grows by (2 - F_Sm/F_02); below two million cycles it rises with exponent 1/3 or
/// 1/6. Detail 50 is a range, so half of it is compared here: it is about twice as severe because it covers any bending. Hot-dip
/// galvanising takes about 20 % (coating factor 0.8). Bending of the bolt must be in F_a.
struct BoltFatigue {
    static constexpr Formula formula{
        .name = "bolt-fatigue",
        .title = "Fatigue of the bolt in tension",
        .range = "M4 to M39, classes 8.8 to 12.9, at least 10 000 cycles; rolled after: mean force 0.3 to 1 of the 0.2 % force",
        .source = {"VDI 2230 Part 1", "2003", "5.5.3", Basis::memory}};

    /// In the order of FatigueMethod.
    static constexpr std::array<Source, 3> sources{
        {formula.source, formula.source, Source{"EN 1993-1-9", "2005", "Table 8.1 detail 14", Basis::memory}}};
    static constexpr const Source& source(FatigueMethod method) { return sources[static_cast<std::size_t>(method)]; }

    struct Inputs {
        Force force_amplitude;
        Area stress_area;
        Length nominal_diameter;
        Force mean_force, proof_force;
        double coating_factor = 1.0;
        double cycles = 2e6;
        FatigueMethod method = FatigueMethod::rolled_before;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"force-amplitude", "F_a", "half the swing of the force in the bolt"}, self.force_amplitude,
                  Range{newton(0), kN(10000)});
            field(Name{"stress-area", "A_s", "stress area of the thread"}, self.stress_area, Range{mm2(0.1), mm2(40000)});
            field(Name{"nominal-diameter", "d", "nominal diameter"}, self.nominal_diameter, Range{mm(1), mm(200)});
            field(Name{"mean-force", "F_Sm", "mean force in the bolt"}, self.mean_force, Range{newton(0), kN(10000)});
            field(Name{"proof-force", "F_02", "force at 0.2 % permanent strain"}, self.proof_force, Range{newton(1), kN(20000)});
            field(Name{"coating-factor", "k_c", "factor for the coating, 0.8 for hot-dip galvanised"}, self.coating_factor, Range{0.1, 1.0},
                  defaulted);
            field(Name{"cycles", "N", "number of cycles"}, self.cycles, Range{1e4, 1e12}, defaulted);
            field(Name{"method", "", "endurance to compare with"}, self.method, defaulted);
        }
    };

    struct Answer {
        Stress amplitude;
        Stress endurance;  ///< amplitude endured for the given cycles
        double utilisation;
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"amplitude", "sigma_a", "stress amplitude"}, self.amplitude);
            field(Name{"endurance", "sigma_A", "endured stress amplitude"}, self.endurance);
            field(Name{"utilisation", "eta", "amplitude over endurance"}, self.utilisation);
        }
    };

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [F_a, A_s, d, F_Sm, F_02, k_c, N, method] = in;
        FAYWRIGHT_STEP(sigma_a, F_a / A_s);
        if (method == FatigueMethod::en_1993_1_9) {
            FAYWRIGHT_STEP(q_d, mm(30) / d);
            FAYWRIGHT_STEP(k_s, pow(min(q_d, 1.0), 0.25));
            FAYWRIGHT_STEP(D_C, k_c * k_s * MPa(50));
            if (N <= 5e6) {
                FAYWRIGHT_STEP(D_R, D_C * pow(2000000.0 / N, 1.0 / 3.0));
                return finish(sigma_a, D_R, nullptr, steps);
            }
            // The long-life branch of the code for mixed amplitudes: lower slope to 1e8 cycles, constant from there.
            FAYWRIGHT_STEP(D_D, D_C * pow(0.4, 1.0 / 3.0));
            FAYWRIGHT_STEP(D_R, D_D * pow(5000000.0 / min(N, 100000000.0), 1.0 / 5.0));
            return finish(sigma_a, D_R, nullptr, steps);
        }
        const bool odd_size = d < mm(3.9) || d > mm(39.1);
        FAYWRIGHT_STEP(sigma_ASV, 0.85 * (150.0 * mm(1) / d + 45.0) * MPa(1));
        FAYWRIGHT_STEP(q_N, max(2000000.0 / N, 1.0));
        if (method == FatigueMethod::rolled_before) {
            FAYWRIGHT_STEP(sigma_A, k_c * sigma_ASV * pow(q_N, 1.0 / 3.0));
            FAYWRIGHT_STEP(eta, sigma_a / sigma_A);
            return {sigma_a, sigma_A, eta, odd_size ? "size outside M4 to M39" : nullptr};
        }
        FAYWRIGHT_STEP(q_m, F_Sm / F_02);
        FAYWRIGHT_STEP(sigma_ASG, max(2.0 - q_m, 1.0) * sigma_ASV);
        FAYWRIGHT_STEP(sigma_A, k_c * sigma_ASG * pow(q_N, 1.0 / 6.0));
        FAYWRIGHT_STEP(eta, sigma_a / sigma_A);
        const char* beyond = odd_size ? "size outside M4 to M39" : nullptr;
        if (q_m < 0.3 || q_m >= 1.0) beyond = "mean force outside 0.3 to 1 of the 0.2 % force";
        return {sigma_a, sigma_A, eta, beyond};
    }

private:
    template <class Steps>
    static Answer finish(Stress sigma_a, Stress D_R, const char* beyond, Steps&& steps) {
        FAYWRIGHT_STEP(sigma_A, D_R / 2.0);
        FAYWRIGHT_STEP(eta, sigma_a / sigma_A);
        return {sigma_a, sigma_A, eta, beyond};
    }
};

}  // namespace faywright
