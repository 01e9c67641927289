// SPDX-License-Identifier: MIT
#include "mechanics/bearing.hpp"
#include "published/published.hpp"

using namespace faywright;

namespace {
constexpr std::string_view guide = "Steel Buildings in Europe: Multi-Storey Steel Buildings, Part 5";

/// M20 8.8 in a 22 mm hole of S275 plate: the examples' common case.
Bearing::Inputs m20(double thickness, double end, double edge) {
    return {.bolt_diameter = mm(20),
            .hole_diameter = mm(22),
            .thickness = mm(thickness),
            .ultimate_strength = MPa(430),
            .bolt_ultimate_strength = MPa(800),
            .end_distance = mm(end),
            .edge_distance = mm(edge),
            .pitch = {},
            .gauge = {},
            .method = DesignMethod::en_1993};
}
}  // namespace

// The guide rounds the two factors to two places and goes on from there: link by link.
TEST_SUITE("published/bearing") {
    TEST_CASE("Steel Buildings in Europe, Multi-Storey Part 5, p. 28: end plate 12 mm") {
        constexpr Source source{guide, "2010", "page 28", Basis::published};
        auto end = m20(12, 40, 30);
        auto answer = Bearing::compute(end);
        published::check(source, "k_1", answer.edge_factor.value(), {"2.12"}, "");
        published::check(source, "alpha_b, end bolt", answer.end_factor.value(), {"0.61"}, "");
        auto inner = end;
        inner.end_distance = mm(110);
        inner.pitch = mm(70);
        answer = Bearing::compute(inner);
        published::check(source, "alpha_b, inner bolt", answer.end_factor.value(), {"0.81"}, "");
        // Distances that give the rounded factors exactly.
        end.end_distance = mm(0.61 * 66);
        end.edge_distance = inner.edge_distance = mm((2.12 + 1.7) / 2.8 * 22);
        inner.pitch = mm((0.81 + 0.25) * 66);
        published::check(source, "F_b,Rd, end bolt", in_kN(Bearing::compute(end).resistance), {"107"}, "kN");
        published::check(source, "F_b,Rd, inner bolt", in_kN(Bearing::compute(inner).resistance), {"142"}, "kN");
    }

    TEST_CASE("Steel Buildings in Europe, Multi-Storey Part 5, p. 59: fin plate pulled, M20 at 60 mm along the force") {
        constexpr Source source{guide, "2010", "page 59", Basis::published};
        auto in = m20(10, 100, 50);  // end and edge do not govern
        in.pitch = mm(60);
        in.gauge = mm(70);
        in.gamma_M2 = 1.1;
        published::check(source, "F_b,hor", in_kN(Bearing::compute(in).resistance), {"129"}, "kN");
    }

    TEST_CASE("Steel Buildings in Europe, Multi-Storey Part 5, p. 85: cleat 10 mm, e_1 40, e_2 40") {
        constexpr Source source{guide, "2010", "page 85", Basis::published};
        auto end = m20(10, 0.61 * 66, 40);  // the factor 0.606 is rounded to 0.61 there
        published::check(source, "F_b,Rd, end bolt", in_kN(Bearing::compute(end).resistance), {"105"}, "kN");
        auto inner = m20(10, 110, 40);
        inner.pitch = mm(70);
        published::check(source, "F_b,Rd, inner bolt", in_kN(Bearing::compute(inner).resistance), {"139"}, "kN");
    }
}
