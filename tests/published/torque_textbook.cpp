// SPDX-License-Identifier: MIT
#include "published/published.hpp"

#include "mechanics/nut_factor_torque.hpp"
#include "mechanics/tightening_torque.hpp"

using namespace faywright;

namespace {
Length inch(double v) { return mm(25.4 * v); }
Force lbf(double v) { return newton(4.4482216152605 * v); }
double in_lbf_inch(Moment v) { return double(v / (lbf(1) * inch(1))); }

TighteningTorque::Answer torque(Force preload, Length d, Length pitch, Length pitch_diameter, double thread, double head,
                                Length mean_bearing) {
    return TighteningTorque::compute({.preload = preload,
                                      .nominal_diameter = d,
                                      .pitch = pitch,
                                      .pitch_diameter = pitch_diameter,
                                      .thread_friction = thread,
                                      .head_friction = head,
                                      .bearing_diameter = mean_bearing,
                                      .bearing_hole = mean_bearing,
                                      .method = TorqueForm::exact});
}
Moment by_factor(Force preload, Length d, double factor) { return NutFactorTorque::compute({preload, d, factor}).torque; }
}  // namespace

TEST_SUITE("published/torque_textbook") {
    TEST_CASE("Shigley, 9th, example 8-3: nut factor and full equation, 3/4-16 at 25 kip") {
        constexpr Source source{"Shigley's Mechanical Engineering Design", "9th", "example 8-3", Basis::memory};
        published::check(source, "T by K", in_lbf_inch(by_factor(lbf(25000), inch(0.75), 0.2)), {"3750"}, "lbf in");
        published::check(source, "T",
                         in_lbf_inch(torque(lbf(25000), inch(0.75), inch(1.0 / 16.0), inch(0.7093), 0.15, 0.15, inch(1.25 * 0.75)).torque),
                         {"3551"}, "lbf in");
    }

    TEST_CASE("Shigley solutions, 8th, problem 8-7, p. 206: thread torque of 7/16-14") {
        constexpr Source source{"Shigley's Mechanical Engineering Design, solutions", "8th", "8-7, p. 206", Basis::published};
        const auto d = inch(7.0 / 16.0);
        const auto pitch = inch(1.0 / 14.0);
        const auto answer = torque(lbf(1), d, pitch, d - 0.649519 * pitch, 0.075, 0.075, d);
        published::check(source, "T/F in the thread", in_lbf_inch(answer.thread_torque), {"0.02845"}, "in");
        published::check(source, "F at 29.2 lbf in", 29.2 / 0.02845, {"1.03e3"}, "lbf");
    }

    TEST_CASE("Shigley solutions, 8th, problem 8-29, p. 217: M20 8.8 at 90 % of proof") {
        constexpr Source source{"Shigley's Mechanical Engineering Design, solutions", "8th", "8-29, p. 217", Basis::published};
        published::check(source, "F_i", in_kN(0.9 * MPa(600) * mm2(245)), {"132.3"}, "kN");
        published::check(source, "T", in_Nm(by_factor(kN(132.3), mm(20), 0.18)), {"476"}, "Nm");
    }

    TEST_CASE("Jindal, example 9-3, p. 267: nut factor of M18 from its frictions") {
        constexpr Source source{"Jindal, Machine Design, companion data", "not stated", "9-3, p. 267", Basis::published};
        // Its mean diameter lies midway between nominal and root diameter, d - 1.2268 P.
        const auto mean = mm(18 - 1.2268 * 2.5 / 2.0);
        published::check(source, "K", torque(kN(10), mm(18), mm(2.5), mean, 0.15, 0.13, mm(1.25 * 18)).nut_factor, {"0.18343"}, "");
    }

    TEST_CASE("Jindal, example 9-5, p. 268: M14 at 75 % of proof") {
        constexpr Source source{"Jindal, Machine Design, companion data", "not stated", "9-5, p. 268", Basis::published};
        published::check(source, "T", in_Nm(by_factor(0.75 * MPa(650) * mm2(115), mm(14), 0.2)), {"156.97"}, "Nm");
    }

    TEST_CASE("Wentzell, examples 6.1 and 6.4, p. 120: 3/4 coarse bolt and 1 1/4 studs") {
        constexpr Source source{"Wentzell, Machine Design, companion data", "not stated", "6.1 and 6.4, p. 120-124", Basis::published};
        published::check(source, "T of the bolt", in_lbf_inch(by_factor(lbf(0.85 * 0.334 * 85000), inch(0.75), 0.2)), {"3619.73"},
                         "lbf in");
        published::check(source, "T of a stud", in_lbf_inch(by_factor(lbf(0.9 * 1.073 * 120000), inch(1.25), 0.15)), {"21728.25"},
                         "lbf in");
    }
}
