// SPDX-License-Identifier: MIT
#include "mechanics/block_tearing.hpp"
#include "published/published.hpp"

using namespace faywright;

namespace {
constexpr std::string_view guide = "Steel Buildings in Europe: Multi-Storey Steel Buildings, Part 5";

double block(double tension, double shear, BlockPull pull, double gamma_M2) {
    return in_kN(BlockTearing::compute({.net_tension_area = mm2(tension),
                                        .net_shear_area = mm2(shear),
                                        .gross_shear_area = {},
                                        .yield_strength = MPa(275),
                                        .ultimate_strength = MPa(430),
                                        .pull = pull,
                                        .gamma_M2 = gamma_M2,
                                        .method = DesignMethod::en_1993})
                     .resistance);
}
}  // namespace

TEST_SUITE("published/block_tearing") {
    TEST_CASE("Steel Buildings in Europe, Multi-Storey Part 5, p. 54: fin plate, eccentric") {
        constexpr Source source{guide, "2010", "page 54", Basis::published};
        published::check(source, "V_Rd,b", block(770, 2210, BlockPull::eccentric, 1.25), {"483"}, "kN");
    }
    TEST_CASE("Steel Buildings in Europe, Multi-Storey Part 5, p. 59: fin plate in tension, concentric") {
        constexpr Source source{guide, "2010", "page 59", Basis::published};
        published::check(source, "N_Rd,b", block(1920, 1540, BlockPull::concentric, 1.1), {"995"}, "kN");
    }
    TEST_CASE("Steel Buildings in Europe, Multi-Storey Part 5, p. 107: cover plate, concentric") {
        constexpr Source source{guide, "2010", "page 107", Basis::published};
        published::check(source, "V_eff,Rd", block(1056, 4008, BlockPull::concentric, 1.25), {"1000"}, "kN");
    }
}
