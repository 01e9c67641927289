// SPDX-License-Identifier: MIT
#include "mechanics/assembly_stress.hpp"
#include "mechanics/nut_factor_torque.hpp"
#include "mechanics/preload_from_torque.hpp"
#include "mechanics/thread_geometry.hpp"
#include "mechanics/tightening_torque.hpp"

#include <doctest/doctest.h>

using namespace faywright;
using doctest::Approx;

namespace {
ThreadGeometry::Answer thread(double d, double pitch) { return ThreadGeometry::compute({mm(d), mm(pitch)}); }

TighteningTorque::Inputs m12() {
    return {.preload = kN(43),
            .nominal_diameter = mm(12),
            .pitch = mm(1.75),
            .pitch_diameter = mm(10.863),
            .thread_friction = 0.12,
            .head_friction = 0.12,
            .bearing_diameter = mm(16.63),
            .bearing_hole = mm(13.5)};
}
PreloadFromTorque::Inputs m12_torque() {
    return {.torque = Nm(84),
            .tool_scatter = 0.05,
            .thread_friction_low = 0.08,
            .thread_friction_high = 0.16,
            .head_friction_low = 0.08,
            .head_friction_high = 0.16,
            .pitch = mm(1.75),
            .pitch_diameter = mm(10.863),
            .bearing_diameter = mm(16.63),
            .bearing_hole = mm(13.5)};
}
AssemblyStress::Inputs m12_stress(double friction) {
    return {.preload = kN(43),
            .stress_area = mm2(84.267),
            .pitch_diameter = mm(10.863),
            .stress_diameter = mm(10.358),
            .pitch = mm(1.75),
            .thread_friction = friction,
            .proof_strength = MPa(640)};
}
}  // namespace

TEST_SUITE("mechanics/tightening") {
    TEST_CASE("thread geometry, own arithmetic") {
        const auto m10 = thread(10, 1.5);
        CHECK(in_mm(m10.pitch_diameter) == Approx(9.026).epsilon(5e-5));
        CHECK(in_mm(m10.root_diameter) == Approx(8.160).epsilon(6e-5));
        CHECK(in_mm(m10.minor_diameter) == Approx(8.376).epsilon(6e-5));
        CHECK(in_mm(m10.stress_diameter) == Approx(8.593).epsilon(6e-5));
        CHECK(in_mm2(m10.root_area) == Approx(52.29).epsilon(1e-4));
        CHECK(in_mm2(m10.stress_area) == Approx(57.990).epsilon(1e-5));
        CHECK(in_mm2(m10.nominal_area) == Approx(78.54).epsilon(1e-4));
        CHECK(in_degrees(m10.lead_angle) == Approx(3.03).epsilon(2e-3));
        CHECK(in_degrees(thread(24, 3).lead_angle) == Approx(2.48).epsilon(2e-3));
        CHECK(ThreadGeometry::refusal({mm(2), mm(1.5)}) != nullptr);
        CHECK(ThreadGeometry::refusal({mm(12), mm(1.75)}) == nullptr);
    }

    TEST_CASE("torque split of M12 at friction 0.12, own arithmetic") {
        auto in = m12();
        in.method = TorqueForm::linear;
        const auto answer = TighteningTorque::compute(in);
        CHECK(answer.pitch_share == Approx(0.14).epsilon(0.04));
        CHECK(answer.thread_share == Approx(0.39).epsilon(0.02));
        CHECK(answer.head_share == Approx(0.47).epsilon(0.02));
        CHECK(answer.pitch_share + answer.thread_share + answer.head_share == Approx(1.0));
        CHECK(answer.nut_factor == Approx(0.162).epsilon(3.1e-3));
        CHECK(in_Nm(NutFactorTorque::compute({in.preload, in.nominal_diameter, answer.nut_factor}).torque) == Approx(in_Nm(answer.torque)));
    }

    TEST_CASE("the linear torque is below the exact one by no more than a hundredth up to friction 0.2") {
        for (const double mu : {0.04, 0.08, 0.12, 0.16, 0.20}) {
            auto in = m12();
            in.thread_friction = in.head_friction = mu;
            const auto exact = TighteningTorque::compute(in).torque;
            in.method = TorqueForm::linear;
            const auto linear = TighteningTorque::compute(in).torque;
            CHECK(linear < exact);
            CHECK(linear > 0.99 * exact);
        }
    }

    TEST_CASE("torque grows with preload, frictions and bearing face, and refuses what cannot be") {
        const auto base = TighteningTorque::compute(m12()).torque;
        for (const auto change : {0, 1, 2, 3}) {
            auto in = m12();
            if (change == 0) in.preload = kN(44);
            if (change == 1) in.thread_friction = 0.13;
            if (change == 2) in.head_friction = 0.13;
            if (change == 3) in.bearing_diameter = mm(24);
            CHECK(TighteningTorque::compute(in).torque > base);
        }
        auto in = m12();
        in.bearing_hole = mm(20);
        CHECK(TighteningTorque::refusal(in) != nullptr);
        in = m12();
        in.pitch_diameter = mm(13);
        CHECK(TighteningTorque::refusal(in) != nullptr);
        in = m12();
        in.nominal_diameter = mm(12), in.pitch_diameter = mm(3), in.pitch = mm(4);
        CHECK(TighteningTorque::refusal(in) != nullptr);
        CHECK(TighteningTorque::refusal(m12()) == nullptr);
    }

    TEST_CASE("torque fixed for friction 0.12, friction varied: preloads, own arithmetic with the linear form") {
        struct Row {
            double d, pitch, bearing, hole, torque;
            double preload[8];
        };
        constexpr double frictions[] = {0.08, 0.10, 0.12, 0.14, 0.16, 0.18, 0.20, 0.24};
        constexpr Row rows[] = {
            {8, 1.25, 11.63, 9, 24.6, {26.0, 21.7, 18.6, 16.3, 14.5, 13.1, 11.9, 10.1}},
            {10, 1.5, 14.63, 11, 48.4, {41.4, 34.5, 29.6, 25.9, 23.0, 20.7, 18.9, 16.0}},
            {12, 1.75, 16.63, 13.5, 83.6, {60.3, 50.3, 43.1, 37.7, 33.5, 30.2, 27.4, 23.2}},
            {16, 2, 22.49, 17.5, 205.8, {114.3, 94.8, 81.0, 70.7, 62.7, 56.3, 51.2, 43.2}},
        };
        for (const auto& row : rows)
            for (std::size_t i = 0; i < std::size(frictions); ++i) {
                CAPTURE(row.d);
                CAPTURE(frictions[i]);
                const double mu = frictions[i];
                const auto answer = PreloadFromTorque::compute({.torque = Nm(row.torque),
                                                                .tool_scatter = 0.0,
                                                                .thread_friction_low = mu,
                                                                .thread_friction_high = mu,
                                                                .head_friction_low = mu,
                                                                .head_friction_high = mu,
                                                                .pitch = mm(row.pitch),
                                                                .pitch_diameter = thread(row.d, row.pitch).pitch_diameter,
                                                                .bearing_diameter = mm(row.bearing),
                                                                .bearing_hole = mm(row.hole),
                                                                .prevailing_torque = Nm(0),
                                                                .method = TorqueForm::linear});
                CHECK(in_kN(answer.mean) == Approx(row.preload[i]).epsilon(0.006));
                CHECK(answer.tightening_factor == Approx(1.0));
            }
        // Waxed instead of dry, same torque: an M12 8.8 passes its proof load of 48.9 kN.
        CHECK(rows[2].preload[0] > 48.9);
    }

    TEST_CASE("preload band: order, inverse of the torque, prevailing torque, refusals") {
        const auto band = PreloadFromTorque::compute(m12_torque());
        CHECK(band.least < band.mean);
        CHECK(band.mean < band.greatest);
        CHECK(band.tightening_factor == Approx(double(band.greatest / band.least)));

        auto exact = m12_torque();
        exact.tool_scatter = 0.0;
        exact.thread_friction_low = exact.thread_friction_high = exact.head_friction_low = exact.head_friction_high = 0.12;
        auto torque = m12();
        torque.preload = PreloadFromTorque::compute(exact).mean;
        CHECK(in_Nm(TighteningTorque::compute(torque).torque) == Approx(84.0));

        auto locking = m12_torque();
        locking.prevailing_torque = Nm(15.5);
        const auto locked = PreloadFromTorque::compute(locking);
        CHECK(locked.least < band.least);
        CHECK(locked.mean < band.mean);
        CHECK(in_N(locked.greatest) == Approx(in_N(band.greatest)));
        locking.prevailing_torque = Nm(80);
        CHECK(PreloadFromTorque::refusal(locking) != nullptr);

        auto crossed = m12_torque();
        crossed.thread_friction_low = 0.2;
        CHECK(PreloadFromTorque::refusal(crossed) != nullptr);
        crossed = m12_torque();
        crossed.head_friction_low = 0.2;
        CHECK(PreloadFromTorque::refusal(crossed) != nullptr);
        CHECK(PreloadFromTorque::refusal(m12_torque()) == nullptr);
    }

    TEST_CASE("tightening factor of a scatter: (1 + x)/(1 - x), own arithmetic") {
        for (const auto& [scatter, factor] : {std::pair{0.17, 1.41}, {0.23, 1.60}, {0.26, 1.70}, {0.43, 2.51}, {0.60, 4.0}}) {
            auto in = m12_torque();
            in.tool_scatter = scatter;
            in.thread_friction_low = in.thread_friction_high = in.head_friction_low = in.head_friction_high = 0.12;
            CHECK(PreloadFromTorque::compute(in).tightening_factor == Approx(factor).epsilon(0.004));
        }
    }

    TEST_CASE("assembly stress: at the permitted preload the utilisation is the wanted one") {
        for (const auto model : {TorsionModel::plastic, TorsionModel::elastic}) {
            auto in = m12_stress(0.14);
            in.method = model;
            in.preload = AssemblyStress::compute(in).permitted;
            const auto answer = AssemblyStress::compute(in);
            CHECK(answer.utilisation == Approx(0.9));
            CHECK(answer.outside_range == nullptr);
            in.preload = in.preload * 1.2;
            CHECK(AssemblyStress::compute(in).outside_range != nullptr);
        }
    }

    TEST_CASE("assembly stress: elastic torsion permits less, and so does friction") {
        auto elastic = m12_stress(0.12);
        elastic.method = TorsionModel::elastic;
        const auto plastic = AssemblyStress::compute(m12_stress(0.12)).permitted;
        const auto ratio = double(AssemblyStress::compute(elastic).permitted / plastic);
        CHECK(ratio < 0.95);
        CHECK(ratio > 0.88);
        CHECK(AssemblyStress::compute(m12_stress(0.20)).permitted < plastic);
        auto refused = m12_stress(0.12);
        refused.stress_diameter = mm(11.5);
        CHECK(AssemblyStress::refusal(refused) != nullptr);
        CHECK(AssemblyStress::refusal(m12_stress(0.12)) == nullptr);
    }

    TEST_CASE("substitution of 8.8 by A2-70, M12, friction 0.12, own arithmetic") {
        auto in = m12_stress(0.12);
        const auto steel = AssemblyStress::compute(in).permitted;
        in.proof_strength = MPa(450);
        const auto stainless = AssemblyStress::compute(in).permitted;
        CHECK(in_kN(steel) == Approx(43.0).epsilon(2e-3));
        CHECK(in_kN(stainless) == Approx(30.3).epsilon(3e-3));
        CHECK(double(stainless / steel) == Approx(0.70).epsilon(0.01));
        auto torque = m12();
        torque.preload = stainless;
        CHECK(in_Nm(TighteningTorque::compute(torque).torque) == Approx(59.0).epsilon(0.01));
    }

    TEST_CASE("M10 8.8 cut undersize for galvanising (6az): the preload scales with the stress area, own arithmetic") {
        auto full = m12_stress(0.12);
        full.stress_area = mm2(58.0), full.pitch_diameter = mm(9.026), full.stress_diameter = mm(8.593), full.pitch = mm(1.5);
        auto undersize = full;
        undersize.stress_area = mm2(53.6);
        const auto ratio = AssemblyStress::compute(undersize).permitted / AssemblyStress::compute(full).permitted;
        CHECK(double(ratio) == Approx(0.924).epsilon(1e-3));
        CHECK(in_kN(AssemblyStress::compute(undersize).permitted) == Approx(27.4).epsilon(3e-3));
    }
}
