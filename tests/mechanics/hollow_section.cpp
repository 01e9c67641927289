// SPDX-License-Identifier: MIT
#include "mechanics/hollow_section.hpp"

#include <doctest/doctest.h>

#include <vector>

namespace {

using namespace faywright;

/// Properties of the section by adding up thin strips across the width, and the stress from them.
struct Strips {
    double area = 0, first = 0, second = 0, second_y = 0;

    /// Lengths in mm; holes at `at` in both walls.
    Strips(double b, double h, double t, double t_w, double d, const std::vector<double>& at) {
        constexpr int count = 40000;
        const double width = b / count;
        for (int i = 0; i < count; ++i) {
            const double y = -b / 2.0 + (i + 0.5) * width;
            bool hole = false;
            for (const double each : at) hole = hole || std::abs(y - each) < d / 2.0;
            const bool web = std::abs(y) > b / 2.0 - t_w;
            const double metal = web ? h : hole ? 0.0 : 2.0 * t;
            area += metal * width;
            first += metal * width * y;
            second += metal * width * y * y;
            second_y += web    ? width * h * h * h / 12.0
                        : hole ? 0.0
                               : width * (h * h * h - (h - 2.0 * t) * (h - 2.0 * t) * (h - 2.0 * t)) / 12.0;
        }
    }
    [[nodiscard]] double shift() const { return std::abs(first / area); }
    [[nodiscard]] double second_net() const { return second - first * first / area; }
};

}  // namespace

TEST_SUITE("mechanics/hollow_section") {
    TEST_CASE("a section with any holes agrees with the sum of its strips") {
        const auto run = [](const std::vector<double>& at) {
            const Strips strips(80, 100, 5, 4, 18, at);
            double sum = 0, squares = 0;
            for (const double y : at) {
                sum += y;
                squares += y * y;
            }
            const double n = static_cast<double>(at.size());
            const HollowSection::Inputs in{.width = mm(80),
                                           .height = mm(100),
                                           .wall = mm(5),
                                           .web = mm(4),
                                           .hole_diameter = mm(18),
                                           .holes = n,
                                           .hole_offset = mm(std::sqrt(squares / n)),
                                           .hole_shift = mm(std::abs(sum) / n),
                                           .axial = kN(30),
                                           .bending_y = Nm(1500),
                                           .bending_z = Nm(900)};
            REQUIRE(HollowSection::refusal(in) == nullptr);
            const auto answer = HollowSection::compute(in);
            CHECK(in_mm2(answer.net_area) == doctest::Approx(strips.area).epsilon(2e-4));
            CHECK(in_mm4(answer.second_moment_z) == doctest::Approx(strips.second_net()).epsilon(2e-4));
            CHECK(in_mm4(answer.second_moment_y) == doctest::Approx(strips.second_y).epsilon(2e-4));
            const double sigma = 30e3 / strips.area + 1500e3 * 50.0 / strips.second_y +
                                 (900e3 + 30e3 * strips.shift()) * (40.0 + strips.shift()) / strips.second_net();
            CHECK(in_MPa(answer.stress) == doctest::Approx(sigma).epsilon(4e-4));
        };
        run({0});
        run({20});
        run({-22, 22});
        run({-9, 9});
        run({-20, 5});
        run({-24, -2, 24});
    }

    TEST_CASE("holes farther apart never leave the section stronger") {
        HollowSection::Inputs in{.width = mm(80),
                                 .height = mm(100),
                                 .wall = mm(5),
                                 .web = mm(4),
                                 .hole_diameter = mm(18),
                                 .holes = 2,
                                 .hole_offset = mm(9),
                                 .axial = kN(0),
                                 .bending_y = Nm(0),
                                 .bending_z = Nm(900)};
        auto before = HollowSection::compute(in).stress;
        for (double e = 10; e <= 27; e += 1) {
            in.hole_offset = mm(e);
            REQUIRE(HollowSection::refusal(in) == nullptr);
            const auto stress = HollowSection::compute(in).stress;
            CHECK(stress > before);
            before = stress;
        }
        in.hole_offset = mm(28);
        CHECK(HollowSection::refusal(in) != nullptr);
        in.hole_offset = mm(8);
        CHECK(HollowSection::refusal(in) != nullptr);
    }
}
