// SPDX-License-Identifier: MIT
#include "mechanics/block_tearing.hpp"
#include "mechanics/net_section.hpp"
#include "mechanics/pull_through.hpp"

#include <doctest/doctest.h>

using namespace faywright;

TEST_SUITE("mechanics/ply_strength") {
    TEST_CASE("net section by each method") {
        NetSection::Inputs in{.gross_area = mm2(1000), .net_area = mm2(800), .yield_strength = MPa(200), .ultimate_strength = MPa(250)};
        CHECK(in_kN(NetSection::compute(in).gross) == doctest::Approx(200 / 1.1));
        CHECK(in_kN(NetSection::compute(in).net) == doctest::Approx(0.9 * 200 / 1.25));
        in.method = DesignMethod::en_1993;
        CHECK(in_kN(NetSection::compute(in).gross) == doctest::Approx(200));
        in.method = DesignMethod::adm;
        CHECK(in_kN(NetSection::compute(in).resistance) == doctest::Approx(150));
        in.method = DesignMethod::as_4100;
        CHECK(in_kN(NetSection::compute(in).resistance) == doctest::Approx(153));
        for (const auto& [method, text] : Words<DesignMethod>::all) {
            in.method = method;
            in.net_area = mm2(800);
            const auto answer = NetSection::compute(in);
            CHECK(answer.resistance == min(answer.gross, answer.net));
            in.net_area = mm2(700);
            CHECK(NetSection::compute(in).net < answer.net);
        }
    }

    TEST_CASE("net section refusals") {
        NetSection::Inputs in{.gross_area = mm2(1000), .net_area = mm2(1001), .yield_strength = MPa(200), .ultimate_strength = MPa(250)};
        CHECK(NetSection::refusal(in) != nullptr);
        in.net_area = mm2(1000);
        CHECK(NetSection::refusal(in) == nullptr);
        in.yield_strength = MPa(300);
        CHECK(NetSection::refusal(in) != nullptr);
    }

    TEST_CASE("block tearing: the eccentric pull loses half the torn face; aluminium divides its shear") {
        BlockTearing::Inputs in{.net_tension_area = mm2(100),
                                .net_shear_area = mm2(300),
                                .gross_shear_area = {},
                                .yield_strength = MPa(160),
                                .ultimate_strength = MPa(200)};
        const auto even = BlockTearing::compute(in);
        CHECK(in_kN(even.tension_part) == doctest::Approx(0.2 * 100 / 1.25));
        CHECK(in_kN(even.shear_part) == doctest::Approx(0.16 * 300 / 1.7320508 / 1.1));
        in.pull = BlockPull::eccentric;
        CHECK(in_kN(even.resistance - BlockTearing::compute(in).resistance) == doctest::Approx(8));
        in.method = DesignMethod::adm;
        CHECK(BlockTearing::refusal(in) != nullptr);
        in.gross_shear_area = mm2(200);
        CHECK(BlockTearing::refusal(in) != nullptr);
        in.gross_shear_area = mm2(400);
        CHECK(BlockTearing::refusal(in) == nullptr);
        CHECK(in_kN(BlockTearing::compute(in).resistance) == doctest::Approx(0.75 * (0.5 * 20 + 0.6 * 0.2 * 300)));
    }

    TEST_CASE("M12 head on a 3 mm wall of 6082-T6: own arithmetic") {
        PullThrough::Inputs in{
            .across_flats = mm(18), .across_corners = mm(20.03), .washer_diameter = {}, .thickness = mm(3), .ultimate_strength = MPa(290)};
        const auto head = PullThrough::compute(in);
        CHECK(in_kN(head.resistance) == doctest::Approx(24.9).epsilon(2e-3));
        CHECK(in_mm(head.mean_diameter) == doctest::Approx(19.015));
        in.edge = PullThroughEdge::washer;
        CHECK(PullThrough::refusal(in) != nullptr);
        in.washer_diameter = mm(30);
        CHECK(PullThrough::refusal(in) == nullptr);
        CHECK(PullThrough::compute(in).resistance / head.resistance == doctest::Approx(30 / 19.015));
        in.washer_diameter = mm(17);
        CHECK(PullThrough::refusal(in) != nullptr);
        CHECK(PullThrough::source(PullThroughEdge::head).basis == Basis::published);
        CHECK(PullThrough::source(PullThroughEdge::washer).basis == Basis::practice);
    }
}
