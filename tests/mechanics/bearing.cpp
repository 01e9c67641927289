// SPDX-License-Identifier: MIT
#include "mechanics/bearing.hpp"
#include "mechanics/tear_out.hpp"

#include <doctest/doctest.h>

#include <cmath>

using namespace faywright;

namespace {

/// M12 8.8 in a 3 mm wall of 6082-T6.
Bearing::Inputs wall(double e_1, double e_2, DesignMethod method = DesignMethod::en_1999) {
    return {.bolt_diameter = mm(12),
            .hole_diameter = mm(13),
            .thickness = mm(3),
            .ultimate_strength = MPa(290),
            .bolt_ultimate_strength = MPa(800),
            .end_distance = mm(e_1),
            .edge_distance = mm(e_2),
            .pitch = {},
            .gauge = {},
            .method = method};
}

TearOut::Inputs end_of(double e_1, DesignMethod method) {
    return {.bolt_diameter = mm(12),
            .hole_diameter = mm(13),
            .thickness = mm(3),
            .ultimate_strength = MPa(290),
            .end_distance = mm(e_1),
            .method = method};
}

}  // namespace

TEST_SUITE("mechanics/bearing") {
    TEST_CASE("M12 in a 3 mm wall: own arithmetic") {
        CHECK(in_kN(Bearing::compute(wall(24, 20)).resistance) == doctest::Approx(12.85).epsilon(4e-4));
        CHECK(in_kN(Bearing::compute(wall(26, 19.5)).resistance) == doctest::Approx(13.92).epsilon(4e-4));
        auto soft = wall(24, 20);
        soft.ultimate_strength = MPa(195);
        CHECK(in_kN(Bearing::compute(soft).resistance) == doctest::Approx(8.64).epsilon(6e-4));
        const auto adm = TearOut::compute(end_of(24, DesignMethod::adm));
        CHECK(in_kN(adm.characteristic) == doctest::Approx(20.88).epsilon(3e-4));
        CHECK(in_kN(adm.resistance) == doctest::Approx(15.7).epsilon(4e-3));
        CHECK(in_kN(Bearing::compute(wall(24, 20, DesignMethod::adm)).characteristic) == doctest::Approx(20.88).epsilon(3e-4));
        // Planes from the hole edge, 6.5 mm from its centre, where the pack counts from the bolt's, 6 mm: 18.07 (24 - 6.5)/(24 - 6).
        CHECK(in_kN(TearOut::compute(end_of(24, DesignMethod::en_1999)).characteristic) ==
              doctest::Approx(18.07 * 17.5 / 18.0).epsilon(1e-3));
    }

    TEST_CASE("the full resistance is earned at 3 d_0 along and 1.5 d_0 across") {
        const auto full = Bearing::compute(wall(39, 19.5));
        CHECK(*full.end_factor == doctest::Approx(1));
        CHECK(*full.edge_factor == doctest::Approx(2.5));
        CHECK(full.outside_range == nullptr);
        CHECK(in_N(Bearing::compute(wall(500, 500)).resistance) == doctest::Approx(in_N(full.resistance)));
    }

    TEST_CASE("more end, edge, thickness or strength never carries less") {
        for (const auto method : {DesignMethod::en_1993, DesignMethod::en_1999, DesignMethod::adm, DesignMethod::as_4100}) {
            Force before = newton(-1), torn_before = newton(-1);
            for (double e = 1; e < 60; e += 0.5) {
                const auto b = Bearing::compute(wall(e, e, method));
                const auto t = TearOut::compute(end_of(e, method));
                CHECK(b.resistance >= before);
                CHECK(t.resistance >= torn_before);
                before = b.resistance;
                torn_before = t.resistance;
            }
        }
    }

    TEST_CASE("a hole on the edge carries nothing, never less, and is marked") {
        const auto b = Bearing::compute(wall(30, 1));
        CHECK(b.resistance == newton(0));
        CHECK(b.characteristic == newton(0));
        CHECK(b.outside_range != nullptr);
        auto crowded = wall(30, 30);
        crowded.pitch = mm(1);
        CHECK(Bearing::compute(crowded).resistance == newton(0));
        CHECK(Bearing::compute(wall(17, 20, DesignMethod::adm)).outside_range != nullptr);
        CHECK(Bearing::compute(wall(14, 20, DesignMethod::as_4100)).outside_range != nullptr);
    }

    TEST_CASE("a neighbour lowers bearing") {
        auto in = wall(30, 30);
        const auto alone = Bearing::compute(in).resistance;
        in.pitch = mm(30);
        CHECK(Bearing::compute(in).resistance < alone);
        in.pitch = {};
        in.gauge = mm(32);
        CHECK(Bearing::compute(in).resistance < alone);
    }

    TEST_CASE("AS 4100: bearing 3.2 d t f_u, tear-out from hole edge plus half a bolt") {
        CHECK(in_kN(Bearing::compute(wall(24, 20, DesignMethod::as_4100)).resistance) == doctest::Approx(0.9 * 3.2 * 12 * 3 * 0.290));
        CHECK(in_kN(TearOut::compute(end_of(24, DesignMethod::as_4100)).resistance) == doctest::Approx(0.9 * (24 - 6.5 + 6) * 3 * 0.290));
    }

    TEST_CASE("refusals") {
        auto in = wall(24, 20);
        CHECK(Bearing::refusal(in) == nullptr);
        in.hole_diameter = mm(11);
        CHECK(Bearing::refusal(in) != nullptr);
        CHECK(TearOut::refusal(end_of(24, DesignMethod::adm)) == nullptr);
        CHECK(TearOut::refusal(end_of(6, DesignMethod::adm)) != nullptr);
        for (const auto method : {DesignMethod::en_1999, DesignMethod::adm, DesignMethod::as_4100})
            CHECK(TearOut::compute(end_of(6, method)).resistance == newton(0));
    }
}
