// SPDX-License-Identifier: MIT
#include "mechanics/net_section.hpp"
#include "published/published.hpp"

using namespace faywright;

TEST_SUITE("published/net_section") {
    TEST_CASE("Steel Buildings in Europe, Multi-Storey Part 5, p. 59: plate with net area 2500 mm2") {
        constexpr Source source{"Steel Buildings in Europe: Multi-Storey Steel Buildings, Part 5", "2010", "page 59", Basis::published};
        const auto answer = NetSection::compute({.gross_area = mm2(3600),
                                                 .net_area = mm2(2500),
                                                 .yield_strength = MPa(275),
                                                 .ultimate_strength = MPa(430),
                                                 .gamma_M2 = 1.1,
                                                 .method = DesignMethod::en_1993});
        published::check(source, "N_u,Rd", in_kN(answer.net), {"880"}, "kN");
    }

    TEST_CASE("Steel Buildings in Europe, Multi-Storey Part 5, p. 107: cover plate 260 x 12, two holes of 22") {
        constexpr Source source{"Steel Buildings in Europe: Multi-Storey Steel Buildings, Part 5", "2010", "page 107", Basis::published};
        const auto answer = NetSection::compute({.gross_area = mm2(260 * 12),
                                                 .net_area = mm2((260 - 2 * 22) * 12),
                                                 .yield_strength = MPa(275),
                                                 .ultimate_strength = MPa(430),
                                                 .method = DesignMethod::en_1993});
        published::check(source, "N_pl,Rd", in_kN(answer.gross), {"858"}, "kN");
        published::check(source, "N_u,Rd", in_kN(answer.net), {"802"}, "kN");
    }

    TEST_CASE("Shigley 9th edition, Example 8-6, p. 454: members in tension across two holes") {
        constexpr Source source{"Shigley's Mechanical Engineering Design", "9th edition", "Example 8-6, p. 454", Basis::published};
        const auto inch = mm(25.4);
        const Area net = (4.0 - 2.0 * 0.75) * squared(inch);
        // The example yields the net section: the gross-section rule with the net area.
        const auto answer = NetSection::compute({.gross_area = net,
                                                 .net_area = net,
                                                 .yield_strength = MPa(6.894757293168 * 54),
                                                 .ultimate_strength = MPa(6.894757293168 * 85),
                                                 .gamma_M0 = 1.5,
                                                 .method = DesignMethod::en_1993});
        published::check(source, "F", in_N(answer.gross) / 4448.2216152605, {"90"}, "kip");
    }
}
