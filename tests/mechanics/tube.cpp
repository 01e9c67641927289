// SPDX-License-Identifier: MIT
#include "mechanics/tube_length.hpp"
#include "mechanics/tube_wall.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

using namespace faywright;

namespace {

TubeWall::Inputs tube(double outside, double bore, Stress proof = MPa(235)) {
    return {.force = kN(47.2),
            .outside_diameter = mm(outside),
            .wall = mm((outside - bore) / 2),
            .wall_tolerance = 0.0,
            .length = mm(44),
            .elastic_modulus = GPa(210),
            .proof_strength = proof,
            .contact_outside = {},
            .contact_inside = {},
            .permissible_pressure = MPa(260)};
}

TubeLength::Inputs gap(double g, double k, double first_yield = 2000) {
    return {.inside_height = mm(94),
            .height_tolerance = mm(0),
            .tube_length = mm(94 - g),
            .length_tolerance = mm(0),
            .wall_stiffness = N_per_mm(k),
            .first_yield_force = newton(first_yield),
            .preload_least = kN(47)};
}

}  // namespace

TEST_SUITE("mechanics/tube") {
    TEST_CASE("sections and yield: own arithmetic") {
        struct Row {
            double outside, bore, area, mild, stainless, aluminium;
        };
        for (const auto& row :
             {Row{18, 10.5, 167.9, 39.5, 34.4, 42.0}, Row{20, 13, 181.4, 42.6, 37.2, 45.4}, Row{22, 13, 247.4, 58.1, 50.7, 61.9},
              Row{25, 13, 358.1, 84.2, 73.4, 89.5}, Row{25, 17, 263.9, 62.0, 54.1, 66.0}, Row{28, 17, 388.8, 91.4, 79.7, 97.2},
              Row{30, 17, 479.9, 112.8, 98.4, 120.0}, Row{30, 21, 360.5, 84.7, 73.9, 90.1}, Row{35, 21, 615.8, 144.7, 126.2, 153.9}}) {
            CHECK(in_mm2(TubeWall::compute(tube(row.outside, row.bore)).area_least) == doctest::Approx(row.area).epsilon(0.051 / row.area));
            CHECK(in_kN(TubeWall::compute(tube(row.outside, row.bore)).yield_force) == doctest::Approx(row.mild).epsilon(0.051 / row.mild));
            CHECK(in_kN(TubeWall::compute(tube(row.outside, row.bore, MPa(205))).yield_force) ==
                  doctest::Approx(row.stainless).epsilon(0.051 / row.stainless));
            CHECK(in_kN(TubeWall::compute(tube(row.outside, row.bore, MPa(250))).yield_force) ==
                  doctest::Approx(row.aluminium).epsilon(0.051 / row.aluminium));
        }
        // M12 8.8 over-stresses the one and not the other.
        CHECK(in_MPa(TubeWall::compute(tube(20, 13)).stress) == doctest::Approx(260).epsilon(2e-3));
        CHECK(TubeWall::compute(tube(20, 13)).yield_utilisation > 1.0);
        CHECK(in_MPa(TubeWall::compute(tube(22, 13)).stress) == doctest::Approx(191).epsilon(3e-3));
        CHECK(TubeWall::compute(tube(22, 13)).yield_utilisation < 1.0);
    }

    TEST_CASE("buckling: own arithmetic") {
        CHECK(TubeWall::compute(tube(22, 13)).slenderness == doctest::Approx(0.073).epsilon(7e-3));
        const auto thick = TubeWall::compute(tube(20, 13));
        CHECK(in_MPa(thick.buckling_stress) / thick.knock_down == doctest::Approx(53900).epsilon(1e-3));
        struct Row {
            double r_over_t, gamma;
        };
        for (const auto& row : {Row{3, 0.908}, Row{5, 0.882}, Row{10, 0.838}, Row{20, 0.780}, Row{50, 0.678}, Row{100, 0.581}}) {
            const double D = 2 * row.r_over_t + 1;
            CHECK(TubeWall::compute(tube(D, D - 2)).knock_down == doctest::Approx(row.gamma).epsilon(1e-3));
        }
        CHECK(in_MPa(TubeWall::compute(tube(41, 39)).buckling_stress) == doctest::Approx(4950).epsilon(2e-3));
        auto slender = tube(22, 13);
        slender.length = mm(200);
        CHECK(TubeWall::compute(slender).column_strength < slender.proof_strength);
        CHECK(TubeWall::compute(tube(101, 99.9)).outside_range != nullptr);
        CHECK(thick.outside_range == nullptr);
    }

    TEST_CASE("pressure of the end: own arithmetic") {
        auto in = tube(22, 13);
        in.contact_inside = mm(13);
        CHECK(in_MPa(TubeWall::compute(in).end_pressure) == doctest::Approx(190.8).epsilon(3e-4));
        CHECK(TubeWall::compute(in).pressure_utilisation < 1.0);
        in.permissible_pressure = MPa(175);
        CHECK(TubeWall::compute(in).pressure_utilisation > 1.0);
        // A wider hole or a narrower washer leaves less of the ring.
        const auto whole = in_MPa(TubeWall::compute(in).end_pressure);
        in.contact_inside = mm(14);
        CHECK(in_MPa(TubeWall::compute(in).end_pressure) > 1.01 * whole);
        in.contact_inside = mm(10);
        CHECK(in_MPa(TubeWall::compute(in).end_pressure) == doctest::Approx(whole));
        in.contact_outside = mm(20);
        CHECK(in_MPa(TubeWall::compute(in).end_pressure) > 1.01 * whole);
        in.contact_outside = mm(30);
        CHECK(in_MPa(TubeWall::compute(in).end_pressure) == doctest::Approx(whole));
    }

    TEST_CASE("an end out of square: own arithmetic") {
        auto in = tube(22, 13);
        in.squareness = mm(0.05);
        CHECK(in_kN(TubeWall::compute(in).squareness_force) == doctest::Approx(29.5).epsilon(2e-3));
    }

    TEST_CASE("tubes that cannot be") {
        CHECK(TubeWall::refusal(tube(22, 13)) == nullptr);
        CHECK(TubeWall::refusal(tube(22, 0)) != nullptr);
        auto in = tube(22, 13);
        in.contact_inside = mm(22);
        CHECK(TubeWall::refusal(in) != nullptr);
        in = tube(22, 13);
        in.contact_outside = mm(13);
        CHECK(TubeWall::refusal(in) != nullptr);
    }

    TEST_CASE("a thinner wall is worse in every way") {
        auto in = tube(22, 13);
        const auto nominal = TubeWall::compute(in);
        in.wall_tolerance = 0.1;
        const auto least = TubeWall::compute(in);
        CHECK(least.yield_utilisation > nominal.yield_utilisation);
        CHECK(least.buckling_stress < nominal.buckling_stress);
        CHECK(least.end_pressure > nominal.end_pressure);
    }

    TEST_CASE("force that closes half a millimetre: own arithmetic") {
        struct Row {
            double stiffness, kilonewton;
        };
        for (const auto& row : {Row{1312, 0.33}, Row{3070, 0.77}, Row{4619, 1.15}, Row{10807, 2.70}, Row{11431, 2.86}, Row{26742, 6.69},
                                Row{23330, 5.83}, Row{54579, 13.64}}) {
            const auto answer = TubeLength::compute(gap(0.5, row.stiffness));
            CHECK(in_kN(answer.closing_force_greatest) == doctest::Approx(row.kilonewton).epsilon(0.0051 / row.kilonewton));
            CHECK(in_mm(answer.deflection) == doctest::Approx(0.25));
            CHECK(answer.closes);
            CHECK(answer.share_left == doctest::Approx(1 - in_kN(answer.closing_force_greatest) / 47));
        }
    }

    TEST_CASE("a tube too long bends the walls as much and costs no preload") {
        const auto tight = TubeLength::compute(gap(-0.2, 10000)), loose = TubeLength::compute(gap(0.2, 10000));
        CHECK(in_N(tight.closing_force_greatest) == doctest::Approx(in_N(loose.closing_force_greatest)));
        CHECK(tight.yield_utilisation == doctest::Approx(loose.yield_utilisation));
        CHECK(tight.share_left == 1.0);
        CHECK(loose.share_left < 1.0);
    }

    TEST_CASE("tolerances open the band both ways") {
        auto in = gap(0.1, 10000);
        in.height_tolerance = mm(0.3);
        in.length_tolerance = mm(0.1);
        const auto answer = TubeLength::compute(in);
        CHECK(in_mm(answer.gap_least) == doctest::Approx(-0.3));
        CHECK(in_mm(answer.gap_greatest) == doctest::Approx(0.5));
        CHECK(in_N(answer.closing_force_least) == 0.0);
        CHECK(in_N(answer.closing_force_greatest) == doctest::Approx(2500));
        // First yield at 2 kN is less than a tenth of 47 kN, and allows 0.4 mm.
        CHECK(in_mm(answer.allowed_gap) == doctest::Approx(0.4));
        CHECK(in_mm(answer.length_least) == doctest::Approx(93.6));
        CHECK(in_mm(answer.length_greatest) == doctest::Approx(94.4));
        CHECK(in_mm(answer.cut_length) == doctest::Approx(94));
        CHECK(in_mm(answer.cut_tolerance) == doctest::Approx(0.1));
        CHECK(answer.outside_range != nullptr);  // 2.5 kN is beyond first yield
        in.first_yield_force = kN(50);
        CHECK(in_mm(TubeLength::compute(in).allowed_gap) == doctest::Approx(0.94));
        CHECK(TubeLength::compute(in).outside_range == nullptr);
        in.closing_share = 0.02;
        CHECK(in_mm(TubeLength::compute(in).cut_tolerance) == 0.0);
        CHECK(TubeLength::compute(in).outside_range != nullptr);
    }

    TEST_CASE("the worst tube of the band of cut lengths just keeps to the allowed force") {
        auto in = gap(0, 10000);
        in.height_tolerance = mm(0.2);
        const auto first = TubeLength::compute(in);
        in.tube_length = first.cut_length;
        in.length_tolerance = first.cut_tolerance;
        const auto second = TubeLength::compute(in);
        CHECK(second.yield_utilisation == doctest::Approx(1.0));
        CHECK(second.share_left >= 0.9);
    }

    TEST_CASE("too weak a preload never closes") {
        auto in = gap(2, 54579, 1e6);
        CHECK_FALSE(TubeLength::compute(in).closes);
        CHECK(TubeLength::compute(in).share_left == 0.0);
        CHECK(TubeLength::compute(in).outside_range != nullptr);
        in.height_tolerance = mm(94);
        CHECK(TubeLength::refusal(in) != nullptr);
        in = gap(0, 1000);
        in.length_tolerance = mm(94);
        CHECK(TubeLength::refusal(in) != nullptr);
    }

    TEST_CASE("random tubes give finite answers") {
        std::mt19937 random(40);
        const auto between = [&random](double least, double most) {
            return least * std::exp(std::uniform_real_distribution<>(0, 1)(random) * std::log(most / least));
        };
        int walls = 0, lengths = 0;
        for (int i = 0; i < 20000; ++i) {
            const TubeWall::Inputs one{.force = kN(between(0.001, 1e5)),
                                       .outside_diameter = mm(between(2, 1000)),
                                       .wall = mm(between(0.1, 300)),
                                       .wall_tolerance = between(0.001, 0.5),
                                       .length = mm(between(1, 5000)),
                                       .elastic_modulus = GPa(between(1, 1000)),
                                       .proof_strength = MPa(between(10, 2000)),
                                       .poisson_ratio = between(0.01, 0.49),
                                       .squareness = mm(between(0.001, 10)),
                                       .contact_outside = mm(between(2, 1000)),
                                       .contact_inside = mm(between(0.5, 1000)),
                                       .permissible_pressure = MPa(between(1, 5000)),
                                       .gamma_M0 = between(1, 3)};
            if (TubeWall::refusal(one) == nullptr) {
                ++walls;
                const auto answer = TubeWall::compute(one);
                const bool sound = std::isfinite(answer.yield_utilisation) && std::isfinite(answer.buckling_utilisation) &&
                                   answer.buckling_utilisation > 0 && std::isfinite(answer.pressure_utilisation) &&
                                   answer.pressure_utilisation > 0 && std::isfinite(answer.slenderness);
                REQUIRE(sound);
            }
            const TubeLength::Inputs other{.inside_height = mm(between(1, 5000)),
                                           .height_tolerance = mm(between(0.001, 50)),
                                           .tube_length = mm(between(1, 5000)),
                                           .length_tolerance = mm(between(0.001, 50)),
                                           .wall_stiffness = N_per_mm(between(0.1, 1e8)),
                                           .first_yield_force = newton(between(0.1, 1e8)),
                                           .preload_least = newton(between(1, 1e8)),
                                           .closing_share = between(0.001, 1)};
            if (TubeLength::refusal(other) == nullptr) {
                ++lengths;
                const auto answer = TubeLength::compute(other);
                const bool sound = std::isfinite(answer.yield_utilisation) && answer.share_left >= 0 && answer.share_left <= 1 &&
                                   answer.allowed_gap > mm(0) && answer.cut_tolerance >= mm(0) && answer.length_least >= mm(0) &&
                                   answer.closing_force_least <= answer.closing_force_greatest;
                REQUIRE(sound);
            }
        }
        CHECK(walls > 500);
        CHECK(lengths > 500);
    }
}
