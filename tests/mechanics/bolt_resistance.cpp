// SPDX-License-Identifier: MIT
#include "mechanics/bolt_interaction.hpp"
#include "mechanics/bolt_shear.hpp"
#include "mechanics/bolt_tension.hpp"

#include <doctest/doctest.h>

using namespace faywright;

namespace {
BoltShear::Inputs m12(DesignMethod method) {
    return {.bolt_diameter = mm(12),
            .area = mm2(84.3),
            .bolt_ultimate_strength = MPa(800),
            .packing = {},
            .joint_length = {},
            .method = method};
}
}  // namespace

TEST_SUITE("mechanics/bolt_resistance") {
    TEST_CASE("M12 8.8: own arithmetic") {
        CHECK(in_kN(BoltTension::compute({.stress_area = mm2(84.3), .bolt_ultimate_strength = MPa(800)}).resistance) ==
              doctest::Approx(48.6).epsilon(1e-3));
        CHECK(in_kN(BoltShear::compute(m12(DesignMethod::en_1993)).resistance) == doctest::Approx(0.6 * 0.8 * 84.3 / 1.25));
    }

    TEST_CASE("planes add; packing and length take away, within their limits") {
        auto in = m12(DesignMethod::en_1999);
        const Force one = BoltShear::compute(in).resistance;
        in.planes = 2;
        CHECK(in_N(BoltShear::compute(in).resistance) == doctest::Approx(2 * in_N(one)));
        in.planes = 1;
        in.packing = mm(4);  // d/3: not yet
        CHECK(BoltShear::compute(in).resistance == one);
        in.packing = mm(12);
        CHECK(in_N(BoltShear::compute(in).resistance) == doctest::Approx(9.0 / 11.0 * in_N(one)));
        CHECK(BoltShear::compute(in).outside_range == nullptr);
        in.packing = mm(17);
        CHECK(BoltShear::compute(in).outside_range != nullptr);
        in.packing = {};
        in.joint_length = mm(15 * 12);
        CHECK(BoltShear::compute(in).resistance == one);
        in.joint_length = mm(25 * 12);
        CHECK(in_N(BoltShear::compute(in).resistance) == doctest::Approx(0.95 * in_N(one)));
        in.joint_length = metre(50);
        CHECK(in_N(BoltShear::compute(in).resistance) == doctest::Approx(0.75 * in_N(one)));
    }

    TEST_CASE("the shank keeps 0.6 whatever the class gives for thread") {
        auto in = m12(DesignMethod::en_1993);
        in.shear_factor = 0.5;
        const Force thread = BoltShear::compute(in).resistance;
        in.thread_in_plane = false;
        CHECK(in_N(BoltShear::compute(in).resistance) == doctest::Approx(1.2 * in_N(thread)));
    }

    TEST_CASE("AS 4100: long joints by their length") {
        auto in = m12(DesignMethod::as_4100);
        const Force one = BoltShear::compute(in).resistance;
        in.joint_length = mm(300);
        CHECK(in_N(BoltShear::compute(in).resistance) == doctest::Approx(in_N(one)));
        in.joint_length = mm(800);
        CHECK(in_N(BoltShear::compute(in).resistance) == doctest::Approx(0.875 * in_N(one)));
        in.joint_length = mm(5000);
        CHECK(in_N(BoltShear::compute(in).resistance) == doctest::Approx(0.75 * in_N(one)));
    }

    TEST_CASE("interaction: full tension still leaves 2/7 of shear in the Eurocodes, none on the circle") {
        const auto use = [](double shear, double tension, DesignMethod method) {
            return BoltInteraction::compute({kN(shear), kN(10), kN(tension), kN(20), method}).utilisation;
        };
        CHECK(use(10.0 * 2 / 7, 20, DesignMethod::en_1993) == doctest::Approx(1));
        CHECK(use(0, 20, DesignMethod::en_1999) == doctest::Approx(1));
        CHECK(use(10, 0, DesignMethod::en_1999) == doctest::Approx(1));
        CHECK(use(6, 16, DesignMethod::as_4100) == doctest::Approx(1));
        CHECK(use(12, 32, DesignMethod::as_4100) == doctest::Approx(2));
        for (const auto method : {DesignMethod::en_1993, DesignMethod::en_1999, DesignMethod::adm, DesignMethod::as_4100})
            for (double share = 0; share < 20; share += 1) {
                CHECK(use(5, share + 1, method) > use(5, share, method));
                CHECK(use(share + 1, 5, method) >= use(share, 5, method));
            }
    }
}
