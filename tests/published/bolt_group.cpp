// SPDX-License-Identifier: MIT
#include "mechanics/bolt_group_in_plane.hpp"
#include "mechanics/bolt_group_out_of_plane.hpp"
#include "mechanics/bolt_shear.hpp"
#include "published/published.hpp"

#include <array>

using namespace faywright;

namespace {
Length inch(double v) { return mm(25.4 * v); }
Force kip(double v) { return newton(4448.2216152605 * v); }
double in_kip(Force f) { return f / kip(1); }
}  // namespace

TEST_SUITE("published/bolt_group") {
    TEST_CASE("Shigley 9th edition, Example 8-7, pp. 457-458: four M16 under an eccentric load") {
        constexpr Source source{"Shigley's Mechanical Engineering Design", "9th edition", "Example 8-7, pp. 457-458", Basis::published};
        const std::vector<Position> bolts{{mm(-75), mm(60)}, {mm(-75), mm(-60)}, {mm(75), mm(60)}, {mm(75), mm(-60)}};
        const auto answer =
            BoltGroupInPlane::compute({.positions = bolts, .force_x = kN(0), .force_y = kN(-16), .moment = Nm(0), .reference_x = mm(425)});
        published::check(source, "r", in_mm(sqrt(answer.polar_sum / 4.0)), {"96.0"}, "mm");
        std::array<PlaneForce, 4> forces{};
        const auto pattern = inertia_of(bolts);
        REQUIRE(in_plane_bolt_forces(bolts, pattern, {kN(0), kN(0)}, answer.centroid_moment, forces));
        published::check(source, "F''", in_kN(magnitude(forces[0])), {"17.7"}, "kN");
        REQUIRE(in_plane_bolt_forces(bolts, pattern, {kN(0), kN(-16)}, Nm(0), forces));
        published::check(source, "F'", in_kN(magnitude(forces[0])), {"4"}, "kN");
        REQUIRE(in_plane_bolt_forces(bolts, pattern, {kN(0), kN(-16)}, answer.centroid_moment, forces));
        published::check(source, "F_A = F_B", in_kN(answer.resultant), {"21.0"}, "kN");
        published::check(source, "F_B", in_kN(magnitude(forces[3])), {"21.0"}, "kN");
        published::check(source, "F_C = F_D", in_kN(magnitude(forces[0])), {"14.8"}, "kN");
        published::check(source, "tau", in_MPa(answer.resultant / mm2(144)), {"146"}, "MPa");
    }

    TEST_CASE("Steel Buildings in Europe, Multi-Storey Part 5, p. 52: fin plate, two lines of five M20") {
        constexpr Source source{"Steel Buildings in Europe: Multi-Storey Steel Buildings, Part 5", "2010", "page 52", Basis::published};
        BoltGroupInPlane::Inputs in{.positions = {}, .force_x = kN(0), .force_y = kN(1), .moment = Nm(0), .reference_x = mm(30 + 80)};
        for (int row = 0; row < 5; ++row)
            for (int line = 0; line < 2; ++line) in.positions.push_back({mm(60 * line), mm(70 * row)});
        const auto unit = BoltGroupInPlane::compute(in);
        published::check(source, "I", in_mm2(unit.polar_sum) * 1e-3, {"107"}, "1000 mm2");
        published::check(source, "alpha", (unit.worst_y - kN(0.1)) / kN(1), {"0.022"}, "");
        published::check(source, "beta", std::abs(double(unit.worst_x / kN(1))), {"0.105"}, "");
        published::check(source, "V_Rd", 94.0 / in_kN(unit.resultant), {"584"}, "kN");
    }

    TEST_CASE("Examination question in steel structures: four bolts, 10 kN at 100 mm") {
        constexpr Source source{"examination questions in steel structures", "", "four bolts at (40, 30) mm", Basis::published};
        const auto answer =
            BoltGroupInPlane::compute({.positions = {{mm(40), mm(30)}, {mm(40), mm(-30)}, {mm(-40), mm(30)}, {mm(-40), mm(-30)}},
                                       .force_x = kN(0),
                                       .force_y = kN(-10),
                                       .moment = Nm(0),
                                       .reference_x = mm(100)});
        published::check(source, "R", in_kN(answer.resultant), {"7.16"}, "kN");
    }

    TEST_CASE("Salmon and Johnson, Example 4.12.1: two lines of three, 24 kip at 5 in") {
        constexpr Source source{"Steel Structures: Design and Behavior (Salmon and Johnson)", "", "Example 4.12.1", Basis::memory};
        BoltGroupInPlane::Inputs in{.positions = {}, .force_x = kN(0), .force_y = kip(-24), .moment = Nm(0), .reference_x = inch(2 + 5)};
        for (int row = 0; row < 3; ++row)
            for (int line = 0; line < 2; ++line) in.positions.push_back({inch(4 * line), inch(3 * row)});
        published::check(source, "R", in_kip(BoltGroupInPlane::compute(in).resultant), {"10.0"}, "kip");
    }

    TEST_CASE("Khurmi, bracket with 12 kN at 400 mm: greatest bolt tension about the lower edge") {
        constexpr Source source{"A Textbook of Machine Design (Khurmi)", "", "eccentric load on a bracket, bolts in tension",
                                Basis::memory};
        const auto answer =
            BoltGroupOutOfPlane::compute({.positions = {{mm(0), mm(50)}, {mm(100), mm(50)}, {mm(0), mm(375)}, {mm(100), mm(375)}},
                                          .force_z = kN(0),
                                          .moment_x = kNm(12 * 0.4),
                                          .moment_y = Nm(0),
                                          .pivot = Pivot::heel,
                                          .heel_x = {},
                                          .heel_y = mm(212.5)});
        published::check(source, "W_t", in_kN(answer.tension), {"6.29"}, "kN");
    }
}
