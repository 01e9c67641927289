// SPDX-License-Identifier: MIT
#include "mechanics/tube_wall.hpp"

#include "published/published.hpp"

using namespace faywright;

TEST_SUITE("published/crush_tube") {
    TEST_CASE("Roark's Formulas for Stress and Strain, 7th, Table 15.2 case 15: cylinder in axial compression") {
        const auto tube = TubeWall::compute({.force = kN(10),
                                             .outside_diameter = mm(51),
                                             .wall = mm(1),
                                             .wall_tolerance = 0.0,
                                             .length = mm(50),
                                             .elastic_modulus = GPa(210),
                                             .proof_strength = MPa(235),
                                             .contact_outside = {},
                                             .contact_inside = {},
                                             .permissible_pressure = MPa(260)});
        // Without the knock-down, and made free of E, t and r (here 25 t).
        published::check({"Roark's Formulas for Stress and Strain", "7th", "Table 15.2 case 15", Basis::memory}, "sigma_cr r/(E t)",
                         double(tube.buckling_stress / GPa(210)) * 25.0 / tube.knock_down, {"0.605"}, "");
    }
}
