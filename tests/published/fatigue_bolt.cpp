// SPDX-License-Identifier: MIT
#include "published/published.hpp"

#include "mechanics/bolt_fatigue.hpp"
#include "mechanics/load_factor.hpp"

using namespace faywright;

namespace {
double detail_range(double cycles) {
    return 2.0 * in_MPa(BoltFatigue::compute({.force_amplitude = kN(1),
                                              .stress_area = mm2(84.3),
                                              .nominal_diameter = mm(12),
                                              .mean_force = kN(30),
                                              .proof_force = kN(53.9),
                                              .coating_factor = 1.0,
                                              .cycles = cycles,
                                              .method = FatigueMethod::en_1993_1_9})
                            .endurance);
}
}  // namespace

TEST_SUITE("published/fatigue_bolt") {
    TEST_CASE("EN 1993-1-9, 2005, Table 8.1 detail 14: category, constant-amplitude limit and cut-off of detail 50") {
        constexpr Source source{"EN 1993-1-9", "2005", "Table 8.1 detail 14, figure 7.1", Basis::memory};
        published::check(source, "range at 2e6", detail_range(2e6), {"50"}, "MPa");
        published::check(source, "range at 5e6", detail_range(5e6), {"36.8"}, "MPa");
        published::check(source, "range at 1e8", detail_range(1e8), {"20.2"}, "MPa");
    }

    TEST_CASE("Shigley solutions, 8th, problem 8-31, p. 219: stress amplitude in the bolt") {
        constexpr Source source{"Shigley's Mechanical Engineering Design, solutions", "8th", "8-31, p. 219-220", Basis::published};
        const auto swing = LoadFactor::compute({.bolt_resilience = mm_per_N((1.0 - 0.2346) * 1e-6),
                                                .part_resilience = mm_per_N(0.2346e-6),
                                                .introduction_factor = 1.0,
                                                .service_force = kN(10.6)});
        const auto answer = BoltFatigue::compute({.force_amplitude = swing.bolt_force / 2.0,
                                                  .stress_area = mm2(84.3),
                                                  .nominal_diameter = mm(12),
                                                  .mean_force = kN(37.9),
                                                  .proof_force = kN(53.9)});
        published::check(source, "sigma_a", in_MPa(answer.amplitude), {"14.75"}, "MPa");
    }

    TEST_CASE("Shigley solutions, 8th, problem 8-35, p. 225: stress amplitude per load") {
        constexpr Source source{"Shigley's Mechanical Engineering Design, solutions", "8th", "8-35, p. 225", Basis::published};
        const auto stress_per_load = 0.236 / (2.0 * 0.1419);
        published::check(source, "sigma_a/P", stress_per_load, {"0.832"}, "1/in^2");
    }
}
