// SPDX-License-Identifier: MIT
#include "mechanics/bolt_group_ultimate.hpp"
#include "published/published.hpp"

using namespace faywright;

TEST_SUITE("published/bolt_group_ultimate") {
    // The source searches on a line; the search in the plane gives 2.7724 against 2.7895 for the coefficient.
    TEST_CASE("Segui, Example 8.2: seven bolts, centre of rotation by the search on a line") {
        constexpr Source source{"Steel Design (Segui)", "", "Example 8.2", Basis::memory};
        const auto inch = [](double v) { return mm(25.4 * v); };
        BoltGroupUltimate::Inputs in{.positions = {},
                                     .force_x = kN(0),
                                     .force_y = kN(-1),
                                     .moment = Nm(0),
                                     .reference_x = inch(8),
                                     .bolt_ultimate = kN(100),
                                     .search = CentreSearch::line};
        for (int row = 0; row < 4; ++row)
            for (int line = 0; line < 2; ++line)
                if (row != 3 || line != 1) in.positions.push_back({inch(3 * line), inch(3 * row)});
        const auto answer = BoltGroupUltimate::compute(in);
        REQUIRE(answer.converged);
        REQUIRE(answer.centre_x);
        const Length centroid = inch(9.0 / 7.0);
        published::check(source, "r_0", (centroid - *answer.centre_x) / inch(1), {"1.57104"}, "in");
    }
}
