// SPDX-License-Identifier: MIT
#include "mechanics/bolt_fatigue.hpp"
#include "mechanics/surface_pressure.hpp"
#include "mechanics/thread_stripping.hpp"

#include <doctest/doctest.h>

using namespace faywright;
using doctest::Approx;

namespace {
ThreadStripping::Inputs m10() {
    return {.nominal_diameter = mm(10),
            .pitch = mm(1.5),
            .engagement = mm(10),
            .bolt_major_least = mm(9.732),
            .bolt_pitch_least = mm(8.862),
            .nut_minor_greatest = mm(8.676),
            .nut_pitch_greatest = mm(9.206),
            .width_across_flats = {},
            .bolt_strength = MPa(800),
            .nut_strength = MPa(260),
            .bolt_shear_ratio = 0.65,
            .nut_shear_ratio = 0.70};
}
BoltFatigue::Inputs m12(FatigueMethod method) {
    return {.force_amplitude = kN(2),
            .stress_area = mm2(84.3),
            .nominal_diameter = mm(12),
            .mean_force = kN(0.7 * 53.952),
            .proof_force = kN(53.952),
            .coating_factor = 1.0,
            .cycles = 2e6,
            .method = method};
}
double endurance(FatigueMethod method, double cycles) {
    auto in = m12(method);
    in.cycles = cycles;
    return in_MPa(BoltFatigue::compute(in).endurance);
}
}  // namespace

TEST_SUITE("mechanics/bolt_strength") {
    TEST_CASE("M10 8.8 in aluminium of 260 MPa, own arithmetic") {
        const auto answer = ThreadStripping::compute(m10());
        CHECK(answer.strength_ratio == Approx(0.483).epsilon(1.1e-3));
        CHECK(in_mm(answer.required_engagement) == Approx(11.27).epsilon(1e-3));
        CHECK(in_mm(answer.required_engagement + 2.0 * mm(1.5)) == Approx(14.27).epsilon(1e-3));
        CHECK(answer.dilation_factor == Approx(1.0));
        CHECK(answer.bolt_bending_factor == 0.897);
        CHECK(answer.outside_range == nullptr);
        CHECK(in_mm2(answer.bolt_shear_area) == Approx(155.75).epsilon(3e-4));
        CHECK(in_mm2(answer.nut_shear_area) == Approx(214.80).epsilon(3e-4));
    }

    TEST_CASE("at the required engagement the margin is one") {
        auto in = m10();
        in.engagement = ThreadStripping::compute(in).required_engagement;
        CHECK(ThreadStripping::compute(in).margin == Approx(1.0));
    }

    TEST_CASE("nut dilation factor, own arithmetic") {
        for (const auto& [ratio, factor] : {std::pair{1.4, 0.75}, {1.5, 0.84}, {1.6, 0.91}, {1.8, 0.99}, {2.2, 1.0}}) {
            auto in = m10();
            in.width_across_flats = mm(10 * ratio);
            CHECK(ThreadStripping::compute(in).dilation_factor == Approx(factor).epsilon(6e-3));
        }
        auto thin = m10();
        thin.width_across_flats = mm(13);
        CHECK(ThreadStripping::compute(thin).outside_range != nullptr);
    }

    TEST_CASE("bending factors: weaker nut, equal threads, stronger nut; the ends of the ranges are told") {
        auto in = m10();
        in.nut_strength = MPa(195);
        CHECK(ThreadStripping::compute(in).outside_range != nullptr);
        in.nut_strength = MPa(800);
        auto answer = ThreadStripping::compute(in);
        CHECK(answer.strength_ratio > 1.0);
        CHECK(answer.nut_bending_factor == Approx(0.897));
        CHECK(answer.bolt_bending_factor > 0.897);
        in.nut_strength = MPa(2500);
        answer = ThreadStripping::compute(in);
        CHECK(answer.outside_range != nullptr);
        CHECK(answer.bolt_bending_factor < 1.3);
        CHECK(answer.bolt_thread_force < answer.nut_thread_force);
    }

    TEST_CASE("an oversize nut strips sooner: M8 and M10 6AZ, own arithmetic") {
        const auto normal = ThreadStripping::compute(m10());
        auto in = m10();
        in.nut_minor_greatest = mm(8.676 + 0.330), in.nut_pitch_greatest = mm(9.206 + 0.330);
        const auto oversize = ThreadStripping::compute(in);
        CHECK(double(oversize.bolt_shear_area / normal.bolt_shear_area) == Approx(0.81).epsilon(0.007));
        CHECK(double(oversize.nut_shear_area / normal.nut_shear_area) == Approx(0.82).epsilon(0.007));
    }

    TEST_CASE("threads that do not meet are refused") {
        auto in = m10();
        in.nut_minor_greatest = mm(9.8), in.nut_pitch_greatest = mm(9.9);
        CHECK(ThreadStripping::refusal(in) != nullptr);
        in = m10();
        in.nut_pitch_greatest = mm(12);
        CHECK(ThreadStripping::refusal(in) != nullptr);
        in = m10();
        in.bolt_major_least = mm(11);
        CHECK(ThreadStripping::refusal(in) != nullptr);
        in = m10();
        in.width_across_flats = mm(9);
        CHECK(ThreadStripping::refusal(in) != nullptr);
        CHECK(ThreadStripping::refusal(m10()) == nullptr);
    }

    TEST_CASE("endurance by size, own arithmetic") {
        for (const auto& [size, amplitude] : {std::pair{6, 59.5}, {8, 54.2}, {10, 51.0}, {12, 48.9}, {16, 46.2}, {20, 44.6}, {24, 43.6}}) {
            auto in = m12(FatigueMethod::rolled_before);
            in.nominal_diameter = mm(size);
            CHECK(in_MPa(BoltFatigue::compute(in).endurance) == Approx(amplitude).epsilon(1.2e-3));
            in.coating_factor = 0.8;
            CHECK(in_MPa(BoltFatigue::compute(in).endurance) == Approx(0.8 * amplitude).epsilon(1.2e-3));
        }
    }

    TEST_CASE("finite life of M12, own arithmetic") {
        CHECK(endurance(FatigueMethod::rolled_after, 2e6) == Approx(63.5).epsilon(1e-3));
        CHECK(endurance(FatigueMethod::rolled_before, 1e5) == Approx(132.7).epsilon(5e-4));
        CHECK(endurance(FatigueMethod::rolled_after, 1e5) == Approx(104.7).epsilon(1e-3));
        CHECK(endurance(FatigueMethod::rolled_before, 5e5) == Approx(77.6).epsilon(1e-3));
        CHECK(endurance(FatigueMethod::rolled_after, 5e5) == Approx(80.1).epsilon(1e-3));
        CHECK(endurance(FatigueMethod::rolled_before, 1e6) == Approx(61.6).epsilon(1e-3));
        CHECK(endurance(FatigueMethod::rolled_after, 1e6) == Approx(71.3).epsilon(1e-3));
        CHECK(2.0 * endurance(FatigueMethod::en_1993_1_9, 1e5) == Approx(135.7).epsilon(5e-4));
        CHECK(2.0 * endurance(FatigueMethod::en_1993_1_9, 1e6) == Approx(63.0).epsilon(1e-3));
    }

    TEST_CASE("endurance falls with cycles by every method and is flat at the end") {
        for (const auto method : {FatigueMethod::rolled_before, FatigueMethod::rolled_after, FatigueMethod::en_1993_1_9}) {
            double last = 1e9;
            for (double cycles = 1e4; cycles < 1e10; cycles *= 3.0) {
                const double now = endurance(method, cycles);
                CHECK(now <= last);
                last = now;
            }
            CHECK(endurance(method, 1e9) == Approx(endurance(method, 1e12)));
        }
    }

    TEST_CASE("mean force beyond the range of rolling after heat treatment is told and never weakens below the other bolt") {
        auto in = m12(FatigueMethod::rolled_after);
        in.mean_force = kN(200);
        const auto answer = BoltFatigue::compute(in);
        CHECK(answer.outside_range != nullptr);
        CHECK(in_MPa(answer.endurance) == Approx(in_MPa(BoltFatigue::compute(m12(FatigueMethod::rolled_before)).endurance)));
        CHECK(BoltFatigue::compute(m12(FatigueMethod::rolled_after)).outside_range == nullptr);
    }

    TEST_CASE("large bolts are weaker by detail 50") {
        auto in = m12(FatigueMethod::en_1993_1_9);
        in.nominal_diameter = mm(36);
        CHECK(2.0 * in_MPa(BoltFatigue::compute(in).endurance) == Approx(50.0 * std::pow(30.0 / 36.0, 0.25)));
    }

    TEST_CASE("surface pressure of 8.8 on aluminium, own arithmetic") {
        struct Row {
            double force, face, hole, thickness, normal, large_thickness, large, bare_pressure, normal_pressure, large_pressure;
        };
        constexpr Row rows[] = {
            {18.6, 11.63, 9, 1.6, 16, 2, 24, 436, 197, 170},
            {29.6, 14.63, 11, 2, 20, 2.5, 30, 405, 191, 167},
            {43.0, 16.63, 13.5, 2.5, 24, 3, 37, 581, 225, 198},
            {80.9, 22.49, 17.5, 3, 30, 3, 50, 516, 235, 235},
        };
        for (const auto& row : rows) {
            CAPTURE(row.force);
            SurfacePressure::Inputs in{.force = kN(row.force),
                                       .bearing_diameter = mm(row.face),
                                       .bearing_hole = mm(row.hole),
                                       .permissible_pressure = MPa(260),
                                       .washer_thickness = mm(0),
                                       .washer_diameter = {}};
            CHECK(in_MPa(SurfacePressure::compute(in).pressure) == Approx(row.bare_pressure).epsilon(3e-3));
            CHECK(SurfacePressure::compute(in).utilisation > 1.0);
            in.washer_thickness = mm(row.thickness), in.washer_diameter = mm(row.normal);
            CHECK(in_MPa(SurfacePressure::compute(in).pressure) == Approx(row.normal_pressure).epsilon(4e-3));
            in.washer_thickness = mm(row.large_thickness), in.washer_diameter = mm(row.large);
            CHECK(in_MPa(SurfacePressure::compute(in).pressure) == Approx(row.large_pressure).epsilon(4e-3));
        }
    }

    TEST_CASE("a thick small washer spreads no further than its edge, and a hole as large as the face is refused") {
        SurfacePressure::Inputs in{.force = kN(43),
                                   .bearing_diameter = mm(16.63),
                                   .bearing_hole = mm(13.5),
                                   .permissible_pressure = MPa(260),
                                   .washer_thickness = mm(10),
                                   .washer_diameter = mm(24)};
        CHECK(in_mm(SurfacePressure::compute(in).effective_diameter) == Approx(24.0));
        CHECK(SurfacePressure::refusal(in) == nullptr);
        in.bearing_hole = mm(17);
        CHECK(SurfacePressure::refusal(in) != nullptr);
        in.bearing_hole = mm(13.5), in.washer_diameter = mm(13);
        CHECK(SurfacePressure::refusal(in) != nullptr);
    }
}
