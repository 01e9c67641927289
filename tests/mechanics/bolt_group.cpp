// SPDX-License-Identifier: MIT
#include "mechanics/bolt_group_in_plane.hpp"
#include "mechanics/bolt_group_out_of_plane.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <random>

using namespace faywright;

namespace {

std::vector<Position> random_pattern(std::mt19937& random) {
    std::uniform_real_distribution<double> place(-300, 300);
    std::vector<Position> bolts(std::uniform_int_distribution<std::size_t>(3, 12)(random));
    for (auto& bolt : bolts) bolt = {mm(place(random)), mm(place(random))};
    return bolts;
}

BoltGroupOutOfPlane::Inputs pulled(std::vector<Position> bolts, Force force, Moment x, Moment y) {
    return {.positions = std::move(bolts), .force_z = force, .moment_x = x, .moment_y = y, .heel_x = {}, .heel_y = {}};
}

}  // namespace

TEST_SUITE("mechanics/bolt_group") {
    TEST_CASE("in-plane bolt forces balance the load on random patterns, and the answer tells the worst") {
        std::mt19937 random(1);
        std::uniform_real_distribution<double> load(-50, 50);
        for (int round = 0; round < 200; ++round) {
            BoltGroupInPlane::Inputs in{.positions = random_pattern(random),
                                        .force_x = kN(load(random)),
                                        .force_y = kN(load(random)),
                                        .moment = kNm(load(random)),
                                        .reference_x = mm(10 * load(random)),
                                        .reference_y = mm(10 * load(random))};
            REQUIRE(BoltGroupInPlane::refusal(in) == nullptr);
            const auto answer = BoltGroupInPlane::compute(in);
            std::vector<PlaneForce> forces(in.positions.size());
            REQUIRE(in_plane_bolt_forces(in.positions, inertia_of(in.positions), {in.force_x, in.force_y}, answer.centroid_moment, forces));
            PlaneForce sum{};
            Moment about = Nm(0);
            Force most = newton(0);
            for (std::size_t i = 0; i < forces.size(); ++i) {
                sum.x += forces[i].x;
                sum.y += forces[i].y;
                about += (in.positions[i].x - in.reference_x) * forces[i].y - (in.positions[i].y - in.reference_y) * forces[i].x;
                most = max(most, magnitude(forces[i]));
            }
            CHECK(in_kN(sum.x - in.force_x) == doctest::Approx(0).epsilon(1e-9));
            CHECK(in_kN(sum.y - in.force_y) == doctest::Approx(0).epsilon(1e-9));
            CHECK(in_kNm(about - in.moment) == doctest::Approx(0).epsilon(1e-9));
            CHECK(in_kN(answer.resultant) == doctest::Approx(in_kN(most)));
            CHECK(in_kN(magnitude(forces[static_cast<std::size_t>(answer.worst_bolt - 1)])) == doctest::Approx(in_kN(most)));
        }
    }

    TEST_CASE("in-plane cases A, B and C of own arithmetic") {
        BoltGroupInPlane::Inputs in{.positions = {{mm(0), mm(0)}, {mm(60), mm(0)}, {mm(0), mm(80)}, {mm(60), mm(80)}},
                                    .force_x = kN(0),
                                    .force_y = kN(-10),
                                    .moment = Nm(0),
                                    .reference_x = mm(180),
                                    .reference_y = mm(40)};
        CHECK(in_kN(BoltGroupInPlane::compute(in).resultant) == doctest::Approx(9.2195).epsilon(1e-5));
        in.force_x = kN(5);
        in.force_y = kN(-10 * std::sqrt(0.75));
        CHECK(in_kN(BoltGroupInPlane::compute(in).resultant) == doctest::Approx(8.8489).epsilon(1e-5));
        BoltGroupInPlane::Inputs corner{.positions = {{mm(0), mm(0)}, {mm(70), mm(0)}, {mm(0), mm(70)}},
                                        .force_x = kN(0),
                                        .force_y = kN(-10),
                                        .moment = Nm(0),
                                        .reference_x = mm(150),
                                        .reference_y = mm(35)};
        CHECK(in_kN(BoltGroupInPlane::compute(corner).resultant) == doctest::Approx(13.1815).epsilon(1e-5));
    }

    TEST_CASE("four M16 of the fifth textbook example, lever the wrong way round") {
        // The 40 mm half-spacing along the load instead of across it: 6.80 kN.
        const auto answer =
            BoltGroupInPlane::compute({.positions = {{mm(30), mm(40)}, {mm(30), mm(-40)}, {mm(-30), mm(40)}, {mm(-30), mm(-40)}},
                                       .force_x = kN(0),
                                       .force_y = kN(-10),
                                       .moment = Nm(0),
                                       .reference_x = mm(100)});
        CHECK(in_kN(answer.resultant) == doctest::Approx(6.80).epsilon(0.001));
    }

    TEST_CASE("in-plane: a single bolt takes force, not moment") {
        BoltGroupInPlane::Inputs in{.positions = {{mm(10), mm(20)}},
                                    .force_x = kN(3),
                                    .force_y = kN(4),
                                    .moment = Nm(0),
                                    .reference_x = mm(10),
                                    .reference_y = mm(20)};
        CHECK(BoltGroupInPlane::refusal(in) == nullptr);
        CHECK(in_kN(BoltGroupInPlane::compute(in).resultant) == doctest::Approx(5));
        in.moment = Nm(1);
        CHECK(BoltGroupInPlane::refusal(in) != nullptr);
        CHECK(std::isfinite(in_kN(BoltGroupInPlane::compute(in).resultant)));
        in.positions = {};
        CHECK(BoltGroupInPlane::refusal(in) != nullptr);
        in.positions = {{mm(0), mm(0)}, {mm(0), mm(0)}};
        CHECK(BoltGroupInPlane::refusal(in) != nullptr);
    }

    TEST_CASE("out-of-plane tensions about the centroid balance the load on random patterns") {
        std::mt19937 random(2);
        std::uniform_real_distribution<double> load(-50, 50);
        for (int round = 0; round < 200; ++round) {
            auto in = pulled(random_pattern(random), kN(load(random)), kNm(load(random)), kNm(load(random)));
            in.reference_x = mm(load(random));
            in.reference_y = mm(load(random));
            REQUIRE(BoltGroupOutOfPlane::refusal(in) == nullptr);
            const auto answer = BoltGroupOutOfPlane::compute(in);
            std::vector<Force> tensions(in.positions.size());
            REQUIRE(out_of_plane_bolt_forces(in.positions, inertia_of(in.positions),
                                             {in.force_z, answer.centroid_moment_x, answer.centroid_moment_y}, tensions));
            Force sum = newton(0), most = tensions[0];
            Moment x = Nm(0), y = Nm(0);
            for (std::size_t i = 0; i < tensions.size(); ++i) {
                sum += tensions[i];
                x += (in.positions[i].y - in.reference_y) * tensions[i];
                y -= (in.positions[i].x - in.reference_x) * tensions[i];
                most = max(most, tensions[i]);
            }
            CHECK(in_kN(sum - in.force_z) == doctest::Approx(0).epsilon(1e-8));
            CHECK(in_kNm(x - in.moment_x) == doctest::Approx(0).epsilon(1e-8));
            CHECK(in_kNm(y - in.moment_y) == doctest::Approx(0).epsilon(1e-8));
            CHECK(in_kN(answer.tension) == doctest::Approx(in_kN(most)));
        }
    }

    TEST_CASE("out-of-plane rows at 40, 110 and 180 mm from the toe: own arithmetic") {
        auto in = pulled({{mm(0), mm(40)}, {mm(50), mm(40)}, {mm(0), mm(110)}, {mm(50), mm(110)}, {mm(0), mm(180)}, {mm(50), mm(180)}},
                         kN(0), kNm(4), Nm(0));
        const auto about_centroid = BoltGroupOutOfPlane::compute(in);
        CHECK(in_kN(about_centroid.tension) == doctest::Approx(14.286).epsilon(4e-5));
        CHECK(in_kN(about_centroid.least) == doctest::Approx(-14.286).epsilon(4e-5));
        CHECK(about_centroid.worst_bolt == 5);
        in.pivot = Pivot::heel;
        CHECK(BoltGroupOutOfPlane::refusal(in) != nullptr);  // which edge is pressed?
        in.heel_y = mm(110);
        CHECK(BoltGroupOutOfPlane::refusal(in) == nullptr);
        std::array<Force, 6> tensions{};
        REQUIRE(out_of_plane_bolt_forces(in.positions, inertia_of(in.positions), {kN(0), kNm(4), Nm(0), Pivot::heel, mm(0), mm(110)},
                                         tensions));
        CHECK(in_kN(tensions[0]) == doctest::Approx(1.735).epsilon(3e-4));
        CHECK(in_kN(tensions[2]) == doctest::Approx(4.772).epsilon(1e-4));
        CHECK(in_kN(tensions[4]) == doctest::Approx(7.809).epsilon(1e-4));
        CHECK(in_kN(BoltGroupOutOfPlane::compute(in).tension) == doctest::Approx(7.809).epsilon(1e-4));
        // The other way round the toe is on the other side, as far from the centroid: the same forces mirrored.
        in.moment_x = kNm(-4);
        CHECK(in_kN(BoltGroupOutOfPlane::compute(in).tension) == doctest::Approx(7.809).epsilon(1e-4));
        CHECK(BoltGroupOutOfPlane::compute(in).worst_bolt == 1);
    }

    TEST_CASE("out-of-plane signs: a moment about x pulls at +y, about y at -x") {
        const std::vector<Position> square{{mm(-50), mm(-50)}, {mm(50), mm(-50)}, {mm(-50), mm(50)}, {mm(50), mm(50)}};
        for (const Pivot pivot : {Pivot::centroid, Pivot::heel}) {
            auto in = pulled(square, kN(0), kNm(1), kNm(0.5));
            in.pivot = pivot;
            in.heel_x = in.heel_y = mm(80);
            CHECK(BoltGroupOutOfPlane::compute(in).worst_bolt == 3);
        }
    }

    TEST_CASE("out-of-plane: a line of bolts takes no moment about itself") {
        const std::vector<Position> line{{mm(0), mm(0)}, {mm(30), mm(40)}, {mm(60), mm(80)}};
        CHECK(BoltGroupOutOfPlane::refusal(pulled(line, kN(1), kNm(0.6), kNm(0.8))) != nullptr);
        const auto across = pulled(line, kN(0), kNm(0.8), kNm(-0.6));  // at right angles to the line: M = 1 kNm, T = M s/Σs²
        REQUIRE(BoltGroupOutOfPlane::refusal(across) == nullptr);
        CHECK(in_kN(BoltGroupOutOfPlane::compute(across).tension) == doctest::Approx(10.0));
        CHECK(BoltGroupOutOfPlane::refusal(pulled({{mm(0), mm(0)}}, kN(1), Nm(1), Nm(0))) != nullptr);
        CHECK(BoltGroupOutOfPlane::refusal(pulled({{mm(0), mm(0)}}, kN(1), Nm(0), Nm(0))) == nullptr);
    }
}
