// SPDX-License-Identifier: MIT
#include "mechanics/bolt_stiffness.hpp"
#include "mechanics/clamp_life.hpp"
#include "mechanics/embedding_loss.hpp"
#include "mechanics/load_factor.hpp"
#include "mechanics/thermal_change.hpp"

#include <doctest/doctest.h>

using namespace faywright;
using doctest::Approx;

namespace {
constexpr double bolt = 3.2147e-6, aluminium = 2.1187e-6;  ///< mm/N, of the M12 joint the regressions share

BoltStiffness::Inputs m12(BoltModel model) {
    return {.nominal_diameter = mm(12),
            .root_area = mm2(76.247),
            .stress_area = mm2(84.267),
            .shank_length = mm(40),
            .thread_length = mm(10),
            .elastic_modulus = GPa(205),
            .nut_modulus = {},
            .method = model};
}
ThermalChange::Inputs warm(double change) {
    return {.grip = mm(50),
            .bolt_expansion = per_K(11.5e-6),
            .part_expansion = per_K(23e-6),
            .bolt_change = kelvin(change),
            .part_change = kelvin(change),
            .bolt_resilience = mm_per_N(bolt),
            .part_resilience = mm_per_N(aluminium)};
}
ClampLife::Inputs life() {
    return {.assembled_least = kN(30),
            .assembled_greatest = kN(50),
            .embedding_loss = kN(2),
            .coating_creep = 0.06,
            .layer_creep = 0.1,
            .retightened = false,
            .later_share = 0.3,
            .cold_change = kN(-4),
            .hot_change = kN(5),
            .load_relief = kN(6)};
}
}  // namespace

TEST_SUITE("mechanics/resilience_and_loss") {
    TEST_CASE("resilience of an M12 by both models, own arithmetic") {
        const auto vdi = BoltStiffness::compute(m12(BoltModel::vdi));
        CHECK(in_mm_per_N(vdi.head) == Approx(0.2588e-6).epsilon(3e-4));
        CHECK(in_mm_per_N(vdi.shank) == Approx(1.7253e-6).epsilon(3e-5));
        CHECK(in_mm_per_N(vdi.thread) == Approx(0.6398e-6).epsilon(1e-4));
        CHECK(in_mm_per_N(vdi.engaged_thread + vdi.nut) == Approx(0.5909e-6).epsilon(1e-4));
        CHECK(in_mm_per_N(vdi.resilience) == Approx(bolt).epsilon(2e-5));
        const auto grip = BoltStiffness::compute(m12(BoltModel::shigley));
        CHECK(in_mm_per_N(grip.thread) == Approx(0.5789e-6).epsilon(1e-4));
        CHECK(in_mm_per_N(grip.resilience) == Approx(2.3042e-6).epsilon(3e-5));
        CHECK(double(grip.resilience / vdi.resilience) == Approx(0.72).epsilon(0.01));
        CHECK(double(grip.resilience * grip.stiffness) == Approx(1.0));
    }

    TEST_CASE("a softer nut gives, and a bolt without length is refused") {
        auto in = m12(BoltModel::vdi);
        in.nut_modulus = GPa(70);
        CHECK(BoltStiffness::compute(in).resilience > BoltStiffness::compute(m12(BoltModel::vdi)).resilience);
        in.shank_length = in.thread_length = mm(0);
        CHECK(BoltStiffness::refusal(in) != nullptr);
        in = m12(BoltModel::vdi);
        in.root_area = mm2(90);
        CHECK(BoltStiffness::refusal(in) != nullptr);
        CHECK(BoltStiffness::refusal(m12(BoltModel::vdi)) == nullptr);
    }

    TEST_CASE("load factors of the M12 joint, own arithmetic") {
        for (const auto& [part, phi] : {std::pair{1.9435, 0.3768},
                                        {0.6636, 0.1711},
                                        {2.1187, 0.3973},
                                        {0.7235, 0.1837},
                                        {2.8946, 0.4738},
                                        {0.9884, 0.2352},
                                        {12.332, 0.7932},
                                        {4.2108, 0.5671}}) {
            const auto answer = LoadFactor::compute({.bolt_resilience = mm_per_N(bolt), .part_resilience = mm_per_N(part * 1e-6)});
            CHECK(answer.load_factor == Approx(phi).epsilon(3e-4));
        }
    }

    TEST_CASE("a service force is shared whole between bolt and clamp") {
        const auto answer = LoadFactor::compute({.bolt_resilience = mm_per_N(bolt),
                                                 .part_resilience = mm_per_N(aluminium),
                                                 .introduction_factor = 0.5,
                                                 .service_force = kN(10)});
        CHECK(answer.effective_factor == Approx(0.5 * answer.load_factor));
        CHECK(in_kN(answer.bolt_force + answer.clamp_reduction) == Approx(10.0));
    }

    TEST_CASE("embedding of the M12 joint, own arithmetic") {
        const auto rough = EmbeddingLoss::compute({.thread_amount = um(3),
                                                   .face_amount = um(3),
                                                   .interface_amount = um(2),
                                                   .thread_count = 1,
                                                   .face_count = 2,
                                                   .interface_count = 2,
                                                   .bolt_resilience = mm_per_N(bolt),
                                                   .part_resilience = mm_per_N(aluminium)});
        CHECK(in_um(rough.amount) == Approx(13.0));
        CHECK(in_N(rough.loss) == Approx(2437.0).epsilon(3e-4));
        const auto smooth = EmbeddingLoss::compute({.thread_amount = um(3),
                                                    .face_amount = um(2.5),
                                                    .interface_amount = um(1.5),
                                                    .thread_count = 1,
                                                    .face_count = 2,
                                                    .interface_count = 1,
                                                    .bolt_resilience = mm_per_N(bolt),
                                                    .part_resilience = mm_per_N(aluminium)});
        CHECK(in_um(smooth.amount) == Approx(9.5));
        CHECK(in_N(smooth.loss) == Approx(1781.0).epsilon(3e-4));
    }

    TEST_CASE("thermal change of steel bolt in aluminium, own arithmetic; none in steel") {
        CHECK(in_N(ThermalChange::compute(warm(20)).change) == Approx(2156.0).epsilon(3e-4));
        CHECK(in_N(ThermalChange::compute(warm(50)).change) == Approx(5391.0).epsilon(3e-4));
        CHECK(in_N(ThermalChange::compute(warm(-40)).change) == Approx(-4312.0).epsilon(3e-4));
        auto tube = warm(50);
        tube.part_expansion = tube.bolt_expansion;
        CHECK(in_N(ThermalChange::compute(tube).change) == Approx(0.0));
        CHECK(ThermalChange::compute(warm(50)).outside_range == nullptr);
        CHECK(ThermalChange::compute(warm(120)).outside_range != nullptr);
    }

    TEST_CASE("a bolt hotter than its parts loses") {
        auto in = warm(0);
        in.bolt_change = kelvin(30);
        CHECK(ThermalChange::compute(in).change < newton(0));
    }

    TEST_CASE("clamp through life, left alone") {
        const auto answer = ClampLife::compute(life());
        CHECK(in_kN(answer.embedded_least) == Approx(28.0));
        CHECK(in_kN(answer.crept_least) == Approx(28.0 * 0.94 * 0.9));
        CHECK(in_kN(answer.settled_least) == Approx(in_kN(answer.crept_least)));
        CHECK(in_kN(answer.cold_least) == Approx(28.0 * 0.94 * 0.9 - 4.0));
        CHECK(in_kN(answer.hot_greatest) == Approx(48.0 * 0.94 * 0.9 + 5.0));
        CHECK(in_kN(answer.end_least) == Approx(28.0 * 0.94 * 0.9 - 10.0));
        CHECK(in_kN(answer.end_greatest) == Approx(in_kN(answer.hot_greatest)));
    }

    TEST_CASE("re-tightening recovers the early loss and never leaves less clamp") {
        auto in = life();
        const auto alone = ClampLife::compute(in);
        in.retightened = true;
        const auto again = ClampLife::compute(in);
        CHECK(in_kN(again.retightened_least) == Approx(30.0));
        CHECK(in_kN(again.settled_least) == Approx(30.0 - 0.3 * (30.0 - 28.0 * 0.94 * 0.9)));
        CHECK(again.end_least > alone.end_least);
        in.later_share = 1.0;
        CHECK(in_kN(ClampLife::compute(in).end_least) == Approx(in_kN(alone.end_least)));
    }

    TEST_CASE("the clamp never falls below zero and the least never passes the greatest") {
        auto in = life();
        in.load_relief = kN(100), in.cold_change = kN(-100);
        auto answer = ClampLife::compute(in);
        CHECK(in_kN(answer.end_least) == Approx(0.0));
        CHECK(in_kN(answer.cold_greatest) == Approx(0.0));
        in.embedding_loss = kN(100);
        answer = ClampLife::compute(in);
        CHECK(in_kN(answer.embedded_greatest) == Approx(0.0));
        CHECK(answer.end_least <= answer.end_greatest);
        in.assembled_least = kN(60);
        CHECK(ClampLife::refusal(in) != nullptr);
        CHECK(ClampLife::refusal(life()) == nullptr);
    }
}
