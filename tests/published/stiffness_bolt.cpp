// SPDX-License-Identifier: MIT
#include "published/published.hpp"

#include "mechanics/bolt_stiffness.hpp"
#include "mechanics/load_factor.hpp"
#include "mechanics/thermal_change.hpp"

using namespace faywright;

namespace {
Length inch(double v) { return mm(25.4 * v); }
Area square_inch(double v) { return mm2(645.16 * v); }
Force lbf(double v) { return newton(4.4482216152605 * v); }
Stress psi(double v) { return lbf(1) * v / square_inch(1); }
double in_inch(Length v) { return in_mm(v) / 25.4; }
double in_lbf(Force v) { return in_N(v) / 4.4482216152605; }
double in_Mlbf_per_inch(Stiffness v) { return double(v / (lbf(1e6) / inch(1))); }
double in_kN_per_mm(Stiffness v) { return in_N_per_mm(v) * 1e-3; }

/// The diameter of a shank whose area the source prints rounded.
Length diameter_of(Area a) { return inch(std::sqrt(in_mm2(a) / 645.16 * 4.0 / pi)); }

Stiffness grip_only(Area shank, Area stress, Length shank_length, Length thread_length, Stress modulus) {
    return BoltStiffness::compute({.nominal_diameter = diameter_of(shank),
                                   .root_area = 0.9 * stress,
                                   .stress_area = stress,
                                   .shank_length = shank_length,
                                   .thread_length = thread_length,
                                   .elastic_modulus = modulus,
                                   .nut_modulus = {},
                                   .method = BoltModel::shigley})
        .stiffness;
}

/// Stiffnesses of bolt and members as printed, in any one unit, to the load factor.
LoadFactor::Answer factor(double bolt, double members, Force service = newton(0)) {
    return LoadFactor::compute({.bolt_resilience = mm_per_N(1e-6 / bolt),
                                .part_resilience = mm_per_N(1e-6 / members),
                                .introduction_factor = 1.0,
                                .service_force = service});
}

constexpr Source text(std::string_view place) { return {"Shigley's Mechanical Engineering Design", "9th", place, Basis::memory}; }
constexpr Source solution(std::string_view place) {
    return {"Shigley's Mechanical Engineering Design, solutions", "8th", place, Basis::published};
}
const auto Mpsi30 = psi(30e6);
}  // namespace

TEST_SUITE("published/stiffness_bolt") {
    TEST_CASE("Shigley, 9th, example 8-2: bolt of 1/2-20 with a washer") {
        const auto k = grip_only(square_inch(0.1963), square_inch(0.1599), inch(0.25), inch(1.095), Mpsi30);
        published::check(text("example 8-2"), "k_b", in_Mlbf_per_inch(k), {"3.69"}, "Mlbf/in");
    }

    TEST_CASE("Shigley, 9th, examples 8-4 and 8-5: bolts of 5/8-11 and their load factors") {
        published::check(text("example 8-4"), "k_b",
                         in_Mlbf_per_inch(grip_only(square_inch(0.3068), square_inch(0.226), inch(0.75), inch(0.75), Mpsi30)), {"5.21"},
                         "Mlbf/in");
        published::check(text("example 8-4"), "C", factor(5.21, 8.95).load_factor, {"0.368"}, "");
        published::check(text("example 8-5"), "k_b",
                         in_Mlbf_per_inch(grip_only(square_inch(0.3068), square_inch(0.226), inch(0), inch(1), Mpsi30)), {"6.78"},
                         "Mlbf/in");
        published::check(text("example 8-5"), "C", factor(6.78, 17.40).load_factor, {"0.280"}, "");
    }

    TEST_CASE("Shigley solutions, 8th, problem 8-20, p. 211: M12 and its load factor") {
        const auto place = solution("8-20, p. 211-212");
        published::check(place, "k_b", in_kN_per_mm(grip_only(mm2(113), mm2(84.3), mm(30), mm(15), GPa(207))), {"466.8"}, "kN/mm");
        published::check(place, "C", factor(466.8, 1523).load_factor, {"0.2346"}, "");
    }

    TEST_CASE("Shigley solutions, 8th, problem 8-23, p. 213: M12 cap screw") {
        const auto k = grip_only(mm2(113), mm2(84.3), mm(10), mm(16), GPa(207));
        published::check(solution("8-23, p. 213-214"), "k_b", in_kN_per_mm(k), {"744"}, "kN/mm");
    }

    TEST_CASE("Shigley solutions, 8th, problem 8-24, p. 214: 1/2-13, thread and shank in series") {
        const auto place = solution("8-24, p. 214-215");
        const auto answer = BoltStiffness::compute({.nominal_diameter = diameter_of(square_inch(0.1963)),
                                                    .root_area = square_inch(0.1257),
                                                    .stress_area = square_inch(0.1419),
                                                    .shank_length = inch(0.5),
                                                    .thread_length = inch(0.72),
                                                    .elastic_modulus = Mpsi30,
                                                    .nut_modulus = {},
                                                    .method = BoltModel::shigley});
        published::check(place, "k_t", in_Mlbf_per_inch(1.0 / answer.thread), {"5.9125"}, "Mlbf/in");
        published::check(place, "k_d", in_Mlbf_per_inch(1.0 / answer.shank), {"11.778"}, "Mlbf/in");
        published::check(place, "k_b", in_Mlbf_per_inch(answer.stiffness), {"3.936"}, "Mlbf/in");
        published::check(place, "C", factor(3.936, 10.79).load_factor, {"0.267"}, "");
    }

    TEST_CASE("Shigley solutions, 8th, problem 8-25, p. 215: cap screw threaded to the head") {
        const auto place = solution("8-25, p. 215");
        published::check(place, "k_b", in_Mlbf_per_inch(grip_only(square_inch(0.1963), square_inch(0.1419), inch(0), inch(0.845), Mpsi30)),
                         {"5.04"}, "Mlbf/in");
        published::check(place, "C", factor(5.04, 12.87).load_factor, {"0.281"}, "");
    }

    TEST_CASE("Shigley solutions, 8th, problem 8-26, p. 216: preload and margin of ten 1/2-13 bolts") {
        const auto place = solution("8-26, p. 216");
        const auto share = LoadFactor::compute({.bolt_resilience = mm_per_N((1.0 - 0.267) * 1e-6),
                                                .part_resilience = mm_per_N(0.267e-6),
                                                .introduction_factor = 1.0,
                                                .service_force = lbf(2128)});
        published::check(place, "P", in_lbf(psi(1500) * (pi / 4.0) * squared(inch(4.25)) / 10.0), {"2128"}, "lbf");
        published::check(place, "F_i", in_lbf(0.75 * square_inch(0.1419) * psi(85000)) * 1e-3, {"9.046"}, "kip");
        published::check(place, "n", double((square_inch(0.1419) * psi(85000) - lbf(9046)) / share.bolt_force), {"5.31"}, "");
    }

    TEST_CASE("Shigley solutions, 8th, problem 8-35, p. 225: load factor of 1/2-13") {
        published::check(solution("8-35, p. 225"), "C", factor(4.94, 15.97).load_factor, {"0.236"}, "");
    }

    TEST_CASE("Shigley solutions, 8th, problem 8-38, p. 227: plain rod of 3/8 in") {
        const auto answer = BoltStiffness::compute({.nominal_diameter = inch(0.375),
                                                    .root_area = square_inch(0.06),
                                                    .stress_area = square_inch(0.0775),
                                                    .shank_length = inch(13.5),
                                                    .thread_length = mm(0),
                                                    .elastic_modulus = Mpsi30,
                                                    .nut_modulus = {},
                                                    .method = BoltModel::shigley});
        published::check(solution("8-38, p. 227"), "k_b", in_Mlbf_per_inch(answer.stiffness), {"0.245"}, "Mlbf/in");
    }

    TEST_CASE("engineering review problem M1a: load that leaves a tenth of the clamp") {
        constexpr Source review{"FE review problems, machine design", "undated", "M1a", Basis::published};
        const auto phi = factor(2.0, 1.0).load_factor;
        published::check(review, "P", (2250.0 - 225.0) / (1.0 - phi), {"6075"}, "lbf");
        const auto answer = factor(2.0, 1.0, lbf(6075));
        published::check(review, "F_c", in_lbf(lbf(2250) - answer.clamp_reduction), {"225"}, "lbf");
        published::check(review, "F_b", in_lbf(lbf(2250) + answer.bolt_force), {"6300"}, "lbf");
    }

    TEST_CASE("Bhandari, example 7.17: area of a preloaded bolt") {
        constexpr Source bhandari{"Bhandari, Design of Machine Elements, companion data", "not stated", "7.17", Basis::published};
        const auto answer = factor(1.0, 2.5, kN(5));
        published::check(bhandari, "A", in_mm2((kN(2.5) + answer.bolt_force) * 2.5 / MPa(400)), {"24.553571"}, "mm^2");
    }

    TEST_CASE("Wentzell, examples 6.2 and 6.3, p. 121: elongation as an angle of turn and as a temperature") {
        constexpr Source wentzell{"Wentzell, Machine Design, companion data", "not stated", "6.2 and 6.3, p. 121-122", Basis::published};
        const auto preload = 0.85 * square_inch(0.334) * psi(85000);
        const auto rod = BoltStiffness::compute({.nominal_diameter = inch(0.75),
                                                 .root_area = square_inch(0.302),
                                                 .stress_area = square_inch(0.334),
                                                 .shank_length = mm(0),
                                                 .thread_length = inch(5),
                                                 .elastic_modulus = Mpsi30,
                                                 .nut_modulus = {},
                                                 .method = BoltModel::shigley});
        const auto stretch = in_inch(preload * rod.resilience);
        published::check(wentzell, "delta", stretch, {"0.01204"}, "in");
        published::check(wentzell, "angle", 360.0 * stretch / 0.1, {"43.35"}, "degree");
        const auto heated = ThermalChange::compute({.grip = inch(5),
                                                    .bolt_expansion = per_K(6.5e-6 * 1.8),
                                                    .part_expansion = per_K(6.5e-6 * 1.8),
                                                    .bolt_change = kelvin(370.46 / 1.8),
                                                    .part_change = kelvin(0),
                                                    .bolt_resilience = rod.resilience,
                                                    .part_resilience = rod.resilience});
        published::check(wentzell, "delta at 370.46 F", -in_inch(heated.mismatch), {"0.01204"}, "in");
    }

    TEST_CASE("Wentzell, example 6.4, p. 124: ten studs on a flange") {
        constexpr Source wentzell{"Wentzell, Machine Design, companion data", "not stated", "6.4, p. 124", Basis::published};
        const auto separating = psi(500) * (pi / 4.0) * squared(inch(20));
        const auto share = LoadFactor::compute({.bolt_resilience = inch(6) / (10.0 * square_inch(1.073) * Mpsi30),
                                                .part_resilience = inch(6) / (square_inch(50) * Mpsi30),
                                                .introduction_factor = 1.0,
                                                .service_force = separating});
        published::check(wentzell, "total load", in_lbf(10.0 * 0.9 * psi(120000) * square_inch(1.073) + share.bolt_force), {"1186593.41"},
                         "lbf");
    }
}
