// SPDX-License-Identifier: MIT
#include "mechanics/slip.hpp"
#include "published/published.hpp"

using namespace faywright;

TEST_SUITE("published/slip_preload") {
    TEST_CASE("US connection guide, Example 4.1: slip of eleven 3/4 in A325-X, class A") {
        constexpr Source source{"US connection design guide (AISC 360-05)", "2005", "Example 4.1", Basis::published};
        const Force kip = newton(4448.2216152605);
        // D_u T_b, 1.13 times 28 kip, is the clamp.
        Slip::Inputs in{
            .clamp = 1.13 * 28.0 * kip, .friction = 0.35, .gamma_M3 = 1.0, .proof_strength = {}, .method = SlipMethod::clamp_friction};
        published::check(source, "r_n", Slip::compute(in).resistance / kip, {"11.1"}, "kip");
        published::check(source, "R_n", 11.0 * Slip::compute(in).resistance / kip, {"122"}, "kip");
        in.gamma_M3 = 1.5;
        published::check(source, "R_n/Omega", 11.0 * Slip::compute(in).resistance / kip, {"81.2"}, "kip");
        in.gamma_M3 = 1.44;
        published::check(source, "P_s,eq", 11.0 * Slip::compute(in).resistance / kip, {"84.6"}, "kip");
    }

    TEST_CASE("EN 1090-2, Table 19: least preload of class 8.8") {
        constexpr Source source{"EN 1090-2", "2008", "Table 19", Basis::memory};
        struct Row {
            double area;
            std::string_view printed;
        };
        for (const Row& row : {Row{84.3, "47"}, Row{157, "88"}, Row{245, "137"}, Row{353, "198"}, Row{561, "314"}})
            published::check(source, "F_p,C", in_kN(standard_preload(MPa(800), mm2(row.area))), {row.printed}, "kN");
    }
}
