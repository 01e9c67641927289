// SPDX-License-Identifier: MIT
#include "mechanics/prying.hpp"
#include "published/published.hpp"

using namespace faywright;

TEST_SUITE("published/prying") {
    // The guide works with arms rounded to 31 and 39 mm and M_pl to 4.2 kNm: from there on as printed.
    TEST_CASE("Steel Buildings in Europe, Multi-Storey Part 5, pp. 89-90: end plate as a T-stub, twelve M20") {
        constexpr Source source{"Steel Buildings in Europe: Multi-Storey Steel Buildings, Part 5", "2010", "pages 89-90", Basis::published};
        const auto whole = Prying::compute({.effective_length = mm(430),
                                            .thickness = mm(10),
                                            .yield_strength = MPa(430),
                                            .bolt_to_web = mm(31),
                                            .bolt_to_edge = mm(39),
                                            .bolt_tension_resistance = kN(160),
                                            .bolts = 12,
                                            .washer_diameter = mm(37),
                                            .gamma_M0 = 1.1});
        published::check(source, "M_pl", in_kNm(whole.no_prying * mm(31) / 2.0), {"4.2"}, "kNm");
        const auto answer = Prying::modes(kNm(4.2), mm(31), mm(39), 12.0 * kN(160), mm(9.25), FlangeEdge::pries);
        published::check(source, "F_T,1", in_kN(answer.mode_1), {"696"}, "kN");
        published::check(source, "F_T,2", in_kN(answer.mode_2), {"1190"}, "kN");
        published::check(source, "F_T,3", in_kN(answer.mode_3), {"1920"}, "kN");
        CHECK(answer.mode == 1);
    }
}
