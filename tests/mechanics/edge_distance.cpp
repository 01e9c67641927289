// SPDX-License-Identifier: MIT
#include "mechanics/edge_distance.hpp"

#include <doctest/doctest.h>

using namespace faywright;

namespace {
EdgeDistance::Inputs m12(DesignMethod method) {
    return {.bolt_diameter = mm(12),
            .hole_diameter = mm(13),
            .thickness = mm(4),
            .end_distance = mm(26),
            .edge_distance = mm(20),
            .pitch = mm(40),
            .gauge = mm(40),
            .method = method};
}
}  // namespace

TEST_SUITE("mechanics/edge_distance") {
    TEST_CASE("Eurocodes: in hole diameters, edges to 4 t + 40 mm") {
        for (const auto method : {DesignMethod::en_1993, DesignMethod::en_1999}) {
            const auto a = EdgeDistance::compute(m12(method));
            CHECK(in_mm(a.least_edge) == doctest::Approx(15.6));
            CHECK(in_mm(a.least_pitch) == doctest::Approx(28.6));
            CHECK(in_mm(a.least_gauge) == doctest::Approx(31.2));
            CHECK(in_mm(a.most_edge.value()) == doctest::Approx(56));
            CHECK(in_mm(a.most_pitch.value()) == doctest::Approx(56));
            CHECK(a.utilisation == doctest::Approx(15.6 / 20));
            CHECK(a.openness == doctest::Approx(40.0 / 56));
        }
    }

    TEST_CASE("under a roof steel has no greatest edge, aluminium 150 mm or 12 t") {
        auto in = m12(DesignMethod::en_1993);
        in.exposed = false;
        CHECK_FALSE(EdgeDistance::compute(in).most_edge.has_value());
        in.method = DesignMethod::en_1999;
        CHECK(in_mm(EdgeDistance::compute(in).most_edge.value()) == doctest::Approx(150));
    }

    TEST_CASE("American and Australian rules: in bolt diameters") {
        const auto adm = EdgeDistance::compute(m12(DesignMethod::adm));
        CHECK(in_mm(adm.least_edge) == doctest::Approx(18));
        CHECK(in_mm(adm.least_pitch) == doctest::Approx(30));
        CHECK_FALSE(adm.most_edge.has_value());
        CHECK(adm.openness == 0.0);
        auto in = m12(DesignMethod::as_4100);
        in.cut = EdgeCut::sheared;
        const auto as = EdgeDistance::compute(in);
        CHECK(in_mm(as.least_edge) == doctest::Approx(21));
        CHECK(in_mm(as.most_edge.value()) == doctest::Approx(48));
        CHECK(in_mm(as.most_pitch.value()) == doctest::Approx(60));
        CHECK(as.utilisation > 1.0);  // 20 mm is short of 21
    }

    TEST_CASE("a bolt alone has no pitch to check") {
        auto in = m12(DesignMethod::en_1999);
        in.pitch = in.gauge = {};
        in.end_distance = in.edge_distance = mm(7.8);
        CHECK(EdgeDistance::compute(in).utilisation == doctest::Approx(2));
        in.hole_diameter = mm(11);
        CHECK(EdgeDistance::refusal(in) != nullptr);
    }
}
