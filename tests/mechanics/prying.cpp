// SPDX-License-Identifier: MIT
#include "mechanics/prying.hpp"

#include <doctest/doctest.h>

using namespace faywright;

namespace {
/// Two M16 8.8 in a 10 mm flange.
Prying::Inputs flange() {
    return {.effective_length = mm(120),
            .thickness = mm(10),
            .yield_strength = MPa(355),
            .bolt_to_web = mm(35),
            .bolt_to_edge = mm(40),
            .bolt_tension_resistance = kN(0.9 * 0.8 * 157 / 1.25),
            .washer_diameter = {}};
}
}  // namespace

TEST_SUITE("mechanics/prying") {
    TEST_CASE("two M16 8.8 in a 10 mm flange: own arithmetic") {
        const auto answer = Prying::compute(flange());
        CHECK(in_kN(answer.mode_1) == doctest::Approx(121.7).epsilon(4e-4));
        CHECK(in_kN(answer.mode_2) == doctest::Approx(124.9).epsilon(4e-4));
        CHECK(in_kN(answer.mode_3) == doctest::Approx(180.9).epsilon(3e-4));
        CHECK(in_kN(answer.no_prying) == doctest::Approx(60.9).epsilon(9e-4));
        CHECK(answer.mode == 1);
    }

    TEST_CASE("the bolts' force is load and prying, at most what they carry") {
        auto in = flange();
        for (double t = 1; t <= 60; t += 1) {
            in.thickness = mm(t);
            const auto a = Prying::compute(in);
            CHECK(in_kN(a.resistance + a.prying_force) <= in_kN(a.mode_3) + 1e-9);
            CHECK(a.prying_force >= newton(0));
            if (a.mode == 2) CHECK(in_kN(a.resistance + a.prying_force) == doctest::Approx(in_kN(a.mode_3)));
            if (a.mode == 1) CHECK(in_kN(a.prying_force) == doctest::Approx(in_kN(a.no_prying * (mm(35) / mm(40)))));
            if (a.mode == 3) CHECK(a.bolt_ratio == doctest::Approx(1));
        }
        CHECK(Prying::compute(in).mode == 3);
    }

    TEST_CASE("thicker flanges never carry less, in the order of the modes") {
        for (const auto edge : {FlangeEdge::pries, FlangeEdge::free}) {
            auto in = flange();
            in.edge = edge;
            Force before = newton(0);
            int mode = 1;
            for (double t = 1; t <= 60; t += 0.5) {
                in.thickness = mm(t);
                const auto a = Prying::compute(in);
                CHECK(a.resistance >= before);
                CHECK(a.mode >= mode);
                before = a.resistance;
                mode = a.mode;
            }
        }
    }

    TEST_CASE("a washer raises mode 1; one as wide as the flange is refused") {
        auto in = flange();
        const Force without = Prying::compute(in).mode_1;
        in.washer_diameter = mm(30);
        CHECK(Prying::refusal(in) == nullptr);
        CHECK(Prying::compute(in).mode_1 > without);
        in.washer_diameter = mm(100);
        CHECK(Prying::refusal(in) != nullptr);
        CHECK(Prying::compute(in).mode_1 == without);
    }

    TEST_CASE("the far edge counts to 1.25 m only") {
        auto in = flange();
        in.bolt_to_edge = mm(35 * 1.25);
        const Force at_limit = Prying::compute(in).mode_2;
        in.bolt_to_edge = mm(200);
        CHECK(in_N(Prying::compute(in).mode_2) == doctest::Approx(in_N(at_limit)));
    }
}
