// SPDX-License-Identifier: MIT
#include "mechanics/slip.hpp"

#include <doctest/doctest.h>

using namespace faywright;

namespace {
Slip::Inputs m12(double friction, int planes, SlipMethod method) {
    return {.clamp = kN(47.2), .friction = friction, .planes = planes, .proof_strength = {}, .method = method};
}
}  // namespace

TEST_SUITE("mechanics/slip") {
    TEST_CASE("M12 8.8: own arithmetic") {
        CHECK(in_kN(Slip::compute(m12(0.15, 2, SlipMethod::en_1993)).resistance) == doctest::Approx(11.3).epsilon(4e-3));
        CHECK(in_kN(Slip::compute(m12(0.27, 1, SlipMethod::en_1999)).resistance) == doctest::Approx(10.2).epsilon(4e-3));
    }

    TEST_CASE("tension relieves; nothing is left below zero") {
        for (const auto& [method, text] : Words<SlipMethod>::all) {
            auto in = m12(0.3, 1, method);
            Force before = Slip::compute(in).resistance;
            for (double t = 5; t <= 100; t += 5) {
                in.tension = kN(t);
                const Force now = Slip::compute(in).resistance;
                CHECK(now <= before);
                CHECK(now >= newton(0));
                before = now;
            }
            CHECK(before == newton(0));
        }
    }

    TEST_CASE("the share of tension is the user's only in the plain form") {
        auto plain = m12(0.3, 1, SlipMethod::clamp_friction), code = m12(0.3, 1, SlipMethod::en_1993);
        plain.tension = code.tension = kN(10);
        plain.tension_share = code.tension_share = 0.2;
        CHECK(in_kN(Slip::compute(plain).residual_clamp) == doctest::Approx(45.2));
        CHECK(in_kN(Slip::compute(code).residual_clamp) == doctest::Approx(39.2));
    }

    TEST_CASE("soft aluminium stands outside EN 1999-1-1") {
        auto in = m12(0.27, 1, SlipMethod::en_1999);
        CHECK(Slip::compute(in).outside_range != nullptr);
        in.proof_strength = MPa(200);
        CHECK(Slip::compute(in).outside_range != nullptr);
        in.proof_strength = MPa(250);
        CHECK(Slip::compute(in).outside_range == nullptr);
        in.hole_factor = 0.7;
        CHECK(Slip::compute(in).outside_range != nullptr);
    }

    TEST_CASE("AS 4100: 0.7 of clamp times friction, and a straight line to 0.7 of the clamp in tension") {
        auto in = m12(0.35, 1, SlipMethod::as_4100);
        CHECK(in_kN(Slip::compute(in).resistance) == doctest::Approx(0.7 * 0.35 * 47.2));
        in.tension = kN(0.35 * 47.2);
        CHECK(in_kN(Slip::compute(in).resistance) == doctest::Approx(0.5 * 0.7 * 0.35 * 47.2));
    }
}
