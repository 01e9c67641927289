// SPDX-License-Identifier: MIT
#include "mechanics/member_stiffness.hpp"
#include "mechanics/tube_length.hpp"
#include "mechanics/wall_bending.hpp"

#include "published/published.hpp"

#include <string>

// Our closed forms against a solver. This is the only place where the tolerance is not that of the digits: it is the model error
// which the calculator's own description states, and these cases hold it to its word.

using namespace faywright;

namespace {

/// A stated model error, in percent of the solver's value; rounded as stated, hence half a unit of the last digit is granted.
struct StatedError {
    std::string_view least, most;
};

void within(std::string_view id, std::string_view what, double ours, double theirs, std::string_view unit, StatedError error) {
    const Source source{"finite-element series", "project reference pack", id, Basis::practice};
    const published::Printed least{error.least}, most{error.most};
    const double percent = (ours / theirs - 1.0) * 100.0;
    CAPTURE(id);
    CAPTURE(what);
    CAPTURE(ours);
    CAPTURE(theirs);
    CAPTURE(percent);
    const bool agrees = percent >= least.value() - least.tolerance() && percent <= most.value() + most.tolerance();
    if (const char* path = std::getenv("FAYWRIGHT_PUBLISHED_LOG"); path != nullptr) {
        std::ofstream log(path, std::ios::app);
        log.precision(6);
        log << source.document << '\t' << source.edition << '\t' << source.place << '\t' << word(source.basis) << '\t' << what
            << ", stated error " << error.least << " to " << error.most << " %" << '\t' << theirs << '\t' << ours << '\t' << unit << '\t'
            << (agrees ? "agrees" : "differs") << '\n';
    }
    CHECK(agrees);
}

const Stress steel = GPa(210), aluminium = GPa(70);
constexpr const char* stiffness_unit = "N/mm";

/// Group A: two plates between bearing faces of 24 mm, hole 13.5 mm.
double plates(double t_1, Stress E_1, double t_2, Stress E_2, double outside) {
    const auto answer = MemberStiffness::compute({.layers = {{mm(t_1), E_1, mm(outside)}, {mm(t_2), E_2, mm(outside)}},
                                                  .head_bearing_diameter = mm(24),
                                                  .nut_bearing_diameter = mm(24),
                                                  .hole_diameter = mm(13.5),
                                                  .tube_outside_diameter = {},
                                                  .tube_inside_diameter = {},
                                                  .tube_length = {},
                                                  .tube_modulus = {}});
    return in_N_per_mm(answer.stiffness);
}

/// Group B: washer 30 x 3, wall, tube of bore 17 and length 92, wall, plate 8, washer; pressed on 17 to `face`.
MemberStiffness::Answer stack(double tube, double wall, double face) {
    const ClampedLayer washer{mm(3), steel, mm(30)}, side{mm(wall), aluminium, mm(100)}, plate{mm(8), steel, mm(100)};
    return MemberStiffness::compute({.layers = {washer, side, side, plate, washer},
                                     .head_bearing_diameter = mm(face),
                                     .nut_bearing_diameter = mm(face),
                                     .hole_diameter = mm(17.5),
                                     .tube_outside_diameter = mm(tube),
                                     .tube_inside_diameter = mm(17),
                                     .tube_length = mm(92),
                                     .tube_modulus = steel,
                                     .layers_above_tube = 2});
}

/// Group C: a wall of the 50 x 100 section, hole 17.5, washer 30; per newton.
WallBending::Answer wall(WallSupport support, double b, double t, WallLoading loading) {
    return WallBending::compute({.clear_width = mm(b),
                                 .wall_thickness = mm(t),
                                 .web_thickness = {},
                                 .inside_height = mm(134 - b),
                                 .hole_diameter = mm(17.5),
                                 .washer_diameter = mm(30),
                                 .head_diameter = mm(22.5),
                                 .washer_thickness = mm(3),
                                 .elastic_modulus = aluminium,
                                 .proof_strength = MPa(240),
                                 .force = newton(1),
                                 .support = support,
                                 .loading = loading});
}

struct WallCase {
    std::string_view id;
    WallSupport support;
    double b, t;
    double stiffness, hole, root, first_yield;  ///< even pressure
    double rigid_stiffness, rigid_hole, rigid_root, rigid_first_yield;
};

constexpr auto closed = WallSupport::closed, clamped = WallSupport::clamped, hinged = WallSupport::simply_supported;
constexpr WallCase walls[]{
    {"C-closed-b42-t4", closed, 42, 4, 21528.5, 0.06281, 0.01998, 3833.44, 40919.7, 0.03665, 0.01513, 6522.43},
    {"C-closed-b42-t3", closed, 42, 3, 9839.46, 0.1095, 0.03722, 2204.31, 20303.5, 0.06373, 0.03056, 3718.85},
    {"C-closed-b92-t3", closed, 92, 3, 1843.23, 0.1926, 0.05512, 1252.26, 2193.37, 0.1611, 0.05233, 1487.03},
    {"C-closed-b92-t6", closed, 92, 6, 13618.8, 0.04935, 0.01257, 4891.66, 15965.0, 0.03888, 0.01188, 6138.94},
    {"C-clamped-b42-t4", clamped, 42, 4, 75030.7, 0.03356, 0.05138, 5293.11, 184673.0, 0.01185, 0.0451, 6029.23},
    {"C-clamped-b42-t3", clamped, 42, 3, 33207.3, 0.0596, 0.09246, 2941.25, 91569.3, 0.02242, 0.08561, 3176.65},
    {"C-clamped-b92-t3", clamped, 92, 3, 3150.64, 0.1542, 0.1174, 1560.73, 3950.43, 0.1219, 0.1188, 1964.67},
    {"C-clamped-b92-t6", clamped, 92, 6, 24420.7, 0.03882, 0.02889, 6201.91, 30104.4, 0.02855, 0.0288, 8351.63},
    {"C-ss-b42-t4", hinged, 42, 4, 17853.2, 0.08366, 0, 2878.36, 40264.6, 0.04421, 0, 5398.49},
    {"C-ss-b42-t3", hinged, 42, 3, 7592.43, 0.148, 0, 1627.15, 17733.2, 0.08054, 0, 2937.07},
    {"C-ss-b92-t3", hinged, 92, 3, 1175.35, 0.2557, 0, 941.161, 1382.88, 0.2095, 0, 1142.13},
    {"C-ss-b92-t6", hinged, 92, 6, 9314.08, 0.06459, 0, 3726.85, 10855.8, 0.04948, 0, 4817.26},
};

}  // namespace

TEST_SUITE("published/finite_element") {
    TEST_CASE("finite elements, A1: the tube alone") {
        const auto tube = MemberStiffness::compute({.layers = {},
                                                    .head_bearing_diameter = mm(30),
                                                    .nut_bearing_diameter = mm(30),
                                                    .hole_diameter = mm(17),
                                                    .tube_outside_diameter = mm(25),
                                                    .tube_inside_diameter = mm(17),
                                                    .tube_length = mm(92),
                                                    .tube_modulus = steel});
        // No model error: a sleeve under rigid ends.
        published::check({"finite-element series", "project reference pack", "A1", Basis::practice}, "k", in_N_per_mm(tube.stiffness),
                         {"602366.2"}, stiffness_unit);
    }

    TEST_CASE("finite elements, A2, A3, A5: plates") {
        struct Case {
            std::string_view id;
            double ours, uniform, rigid;
        };
        const Case cases[]{
            {"A2", plates(10, steel, 10, steel, 120), 4485400, 5074410},
            {"A3", plates(10, steel, 10, aluminium, 120), 2274340, 2574500},
            {"A5-A2", plates(10, steel, 10, steel, 36), 4217800, 4765750},
            {"A5-A3", plates(10, steel, 10, aluminium, 36), 2125740, 2400990},
            {"A2-5+5", plates(5, steel, 5, steel, 120), 7914000, 8603060},
            {"A3-OD24", plates(10, steel, 10, aluminium, 24), 1623570, 1623570},
        };
        for (const auto& one : cases) {
            within(one.id, "k, rigid faces", one.ours, one.rigid, stiffness_unit, {"-8", "6.4"});
            within(one.id, "k, mean of both resiliences", one.ours, 2.0 / (1.0 / one.uniform + 1.0 / one.rigid), stiffness_unit,
                   {"-8", "6.4"});
            within(one.id, "k, uniform pressure", one.ours, one.uniform, stiffness_unit, {"0", "13"});
        }
    }

    TEST_CASE("finite elements, B: stacks with a tube") {
        struct Case {
            std::string_view id;
            double tube, wall, face, uniform, rigid;
        };
        constexpr Case cases[]{
            {"B-OD20-t4", 20, 4, 22.5, 154533, 155341}, {"B-OD25-t3", 25, 3, 22.5, 426482, 451371},
            {"B-OD25-t3", 25, 3, 30, 442630, 0},        {"B-OD25-t4", 25, 4, 22.5, 409379, 434967},
            {"B-OD25-t4", 25, 4, 30, 435303, 0},        {"B-OD25-t6", 25, 6, 22.5, 382329, 407463},
            {"B-OD25-t6", 25, 6, 30, 422577, 0},        {"B-OD30-t4", 30, 4, 30, 802577, 0},
        };
        for (const auto& one : cases) {
            const auto answer = stack(one.tube, one.wall, one.face);
            CHECK(answer.circle_offset <= 0.25);
            CHECK(answer.outside_range == nullptr);
            const auto k = in_N_per_mm(answer.stiffness);
            const auto face = " on 17 to " + std::string(one.face > 25 ? "30" : "22.5");
            within(one.id, "k, uniform pressure" + face, k, one.uniform, stiffness_unit, {"0", "7.4"});
            if (one.rigid > 0) within(one.id, "k, rigid face" + face, k, one.rigid, stiffness_unit, {"-0.6", "2.3"});
        }
    }

    TEST_CASE("finite elements, B: load beside the tube is told as outside the range") {
        const auto inside = stack(20, 4, 30), outside = stack(30, 4, 22.5);
        CHECK(inside.circle_offset == doctest::Approx(0.394).epsilon(2e-3));
        CHECK(outside.circle_offset == doctest::Approx(0.300).epsilon(2e-3));
        CHECK(inside.outside_range != nullptr);
        CHECK(outside.outside_range != nullptr);
        // It is too stiff there, as told.
        CHECK(in_N_per_mm(inside.stiffness) > 128826);
        CHECK(in_N_per_mm(outside.stiffness) > 587104);
    }

    TEST_CASE("finite elements, C: walls under uniform pressure") {
        for (const auto& one : walls) {
            const auto answer = wall(one.support, one.b, one.t, WallLoading::uniform);
            within(one.id, "k, uniform", in_N_per_mm(answer.stiffness), one.stiffness, stiffness_unit, {"-2.5", "2.5"});
            within(one.id, "stress at the hole, uniform", in_MPa(answer.hole_edge_stress), one.hole, "MPa per N", {"-3.2", "3.2"});
            within(one.id, "first yield, uniform", in_N(answer.first_yield_force), one.first_yield, "N", {"-4", "4"});
            if (one.support == closed)
                within(one.id, "stress at the web, uniform", in_MPa(answer.web_root_stress), one.root, "MPa per N", {"5", "22"});
            if (one.support == clamped)
                within(one.id, "stress at the web, uniform", in_MPa(answer.web_root_stress), one.root, "MPa per N", {"-8", "2"});
        }
    }

    TEST_CASE("finite elements, C: walls under a rigid washer") {
        for (const auto& one : walls) {
            const auto answer = wall(one.support, one.b, one.t, WallLoading::rigid_washer);
            within(one.id, "k, rigid washer", in_N_per_mm(answer.stiffness), one.rigid_stiffness, stiffness_unit, {"-16", "1.2"});
            within(one.id, "stress at the hole, rigid washer", in_MPa(answer.hole_edge_stress), one.rigid_hole, "MPa per N", {"-13", "7"});
            within(one.id, "first yield, rigid washer", in_N(answer.first_yield_force), one.rigid_first_yield, "N", {"-6", "15"});
            if (one.support == closed)
                within(one.id, "stress at the web, rigid washer", in_MPa(answer.web_root_stress), one.rigid_root, "MPa per N", {"5", "22"});
            if (one.support == clamped)
                within(one.id, "stress at the web, rigid washer", in_MPa(answer.web_root_stress), one.rigid_root, "MPa per N", {"-8", "2"});
        }
    }

    TEST_CASE("finite elements, C: walls under a 3 mm washer") {
        const auto narrow = wall(closed, 42, 4, WallLoading::elastic_washer), wide = wall(closed, 92, 4, WallLoading::elastic_washer);
        within("C-washer3mm-b42", "k, elastic washer", in_N_per_mm(narrow.stiffness), 25093.6, stiffness_unit, {"-5", "5"});
        within("C-washer3mm-b92", "k, elastic washer", in_N_per_mm(wide.stiffness), 4622.43, stiffness_unit, {"-5", "5"});
        within("C-washer3mm-b42", "stress at the hole, elastic washer", in_MPa(narrow.hole_edge_stress), 0.0489008, "MPa per N",
               {"-6", "6"});
        within("C-washer3mm-b92", "stress at the hole, elastic washer", in_MPa(wide.hole_edge_stress), 0.088932, "MPa per N", {"-6", "6"});
    }

    TEST_CASE("finite elements, C-ep: force that closes a gap, the wall elastic and plastic") {
        const auto force = [](double b, double gap) {
            const auto one = wall(closed, b, 4, WallLoading::uniform);
            const auto answer = TubeLength::compute({.inside_height = mm(134 - b),
                                                     .height_tolerance = mm(0),
                                                     .tube_length = mm(134 - b - gap),
                                                     .length_tolerance = mm(0),
                                                     .wall_stiffness = one.stiffness,
                                                     .first_yield_force = one.first_yield_force,
                                                     .preload_least = kN(60)});
            return in_N(answer.closing_force_greatest);
        };
        // The error of the stiffness, and 1.5 % that the series gives for its own coarser mesh here.
        constexpr StatedError error{"-4.0", "4.0"};
        within("C-ep-closed-b42-t4", "F for 0.1 mm", force(42, 0.1), 1083.84, "N", error);
        within("C-ep-closed-b42-t4", "F for 0.2 mm", force(42, 0.2), 2167.67, "N", error);
        within("C-ep-closed-b92-t4", "F for 0.1 mm", force(92, 0.1), 214.03, "N", error);
        within("C-ep-closed-b92-t4", "F for 0.2 mm", force(92, 0.2), 428.059, "N", error);
        within("C-ep-closed-b92-t4", "F for 0.5 mm", force(92, 0.5), 1070.15, "N", error);
        within("C-ep-closed-b92-t4", "F for 1.0 mm", force(92, 1.0), 2140.3, "N", error);
        // Beyond first yield the elastic estimate becomes too high, as TubeLength says: still near at 1.4 times, not at 2.8 times.
        within("C-ep-closed-b42-t4", "F for 0.5 mm", force(42, 0.5), 5407.23, "N", error);
        CHECK(force(42, 1.0) > 1.05 * 9813.13);
    }
}
