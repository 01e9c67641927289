// SPDX-License-Identifier: MIT
#include "mechanics/member_stiffness.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <random>

using namespace faywright;

namespace {

/// M12 with 50 mm of one metal in layers of the thicknesses given.
MemberStiffness::Inputs joint(double outside, Stress modulus, std::initializer_list<double> thicknesses = {50}) {
    MemberStiffness::Inputs in{.layers = {},
                               .head_bearing_diameter = mm(16.63),
                               .nut_bearing_diameter = mm(16.63),
                               .hole_diameter = mm(13.5),
                               .tube_outside_diameter = {},
                               .tube_inside_diameter = {},
                               .tube_length = {},
                               .tube_modulus = {}};
    for (const double t : thicknesses) in.layers.push_back({mm(t), modulus, mm(outside)});
    return in;
}

MemberStiffness::Inputs with_tube(double outside, double bore) {
    auto in = joint(100, GPa(70), {3, 3});
    in.head_bearing_diameter = in.nut_bearing_diameter = mm(24);
    in.tube_outside_diameter = mm(outside);
    in.tube_inside_diameter = mm(bore);
    in.tube_length = mm(50);
    in.tube_modulus = GPa(210);
    in.layers_above_tube = 1;
    return in;
}

double resilience(const MemberStiffness::Inputs& in) { return in_mm_per_N(MemberStiffness::compute(in).resilience) * 1e6; }

}  // namespace

TEST_SUITE("mechanics/member_stiffness") {
    TEST_CASE("cone, cone with sleeve, sleeve: own arithmetic") {
        struct Row {
            double outside, aluminium, steel;
        };
        for (const auto& row : {Row{60, 1.9435, 0.6636}, Row{40, 2.1187, 0.7235}, Row{25, 2.8946, 0.9884}, Row{16, 12.332, 4.2108}}) {
            CHECK(resilience(joint(row.outside, GPa(70))) == doctest::Approx(row.aluminium).epsilon(5e-5));
            CHECK(resilience(joint(row.outside, GPa(205))) == doctest::Approx(row.steel).epsilon(1e-4));
        }
        CHECK(cone_tangent(mm(50), mm(16.63), mm(60)) == doctest::Approx(0.5714).epsilon(1e-4));
        CHECK(cone_tangent(mm(50), mm(16.63), mm(40)) == doctest::Approx(0.5093).epsilon(1e-4));
        CHECK(cone_tangent(mm(50), mm(16.63), mm(25)) == doctest::Approx(0.4374).epsilon(2e-4));
    }

    TEST_CASE("cutting one metal into layers, or turning the joint over, changes nothing") {
        for (const double outside : {16.0, 25.0, 40.0, 60.0, 200.0}) {
            const auto whole = resilience(joint(outside, GPa(70)));
            CHECK(resilience(joint(outside, GPa(70), {10, 15, 25})) == doctest::Approx(whole));
            CHECK(resilience(joint(outside, GPa(70), {49.9, 0.1})) == doctest::Approx(whole));
        }
        auto in = joint(40, GPa(70), {20, 30});
        in.layers[0].elastic_modulus = GPa(205);
        in.nut_bearing_diameter = mm(20);
        auto turned = in;
        std::swap(turned.layers[0], turned.layers[1]);
        std::swap(turned.head_bearing_diameter, turned.nut_bearing_diameter);
        CHECK(resilience(turned) == doctest::Approx(resilience(in)));
    }

    TEST_CASE("more material and wider faces are stiffer") {
        double last = 1e9;
        for (double outside = 14; outside < 80; outside += 0.5) {
            const auto now = resilience(joint(outside, GPa(70)));
            CHECK(now <= last * (1 + 1e-12));
            last = now;
        }
        auto wide = joint(60, GPa(70));
        wide.head_bearing_diameter = mm(24);
        CHECK(resilience(wide) < resilience(joint(60, GPa(70))));
    }

    TEST_CASE("tubes 50 mm long, by themselves: own arithmetic") {
        struct Row {
            double outside, bore, steel, aluminium;
        };
        for (const auto& row :
             {Row{18, 10.5, 705, 235}, Row{20, 13, 762, 254}, Row{22, 13, 1039, 346}, Row{25, 13, 1504, 501}, Row{25, 17, 1108, 369},
              Row{28, 17, 1633, 544}, Row{30, 17, 2015, 672}, Row{30, 21, 1514, 505}, Row{35, 21, 2586, 862}}) {
            auto in = with_tube(row.outside, row.bore);
            CHECK(in_N_per_mm(1.0 / MemberStiffness::compute(in).tube) * 1e-3 == doctest::Approx(row.steel).epsilon(0.5 / row.steel));
            in.tube_modulus = GPa(70);
            CHECK(in_N_per_mm(1.0 / MemberStiffness::compute(in).tube) * 1e-3 ==
                  doctest::Approx(row.aluminium).epsilon(0.5 / row.aluminium));
        }
    }

    TEST_CASE("the parts with a tube add up, and a tube aside of the load is marked") {
        const auto answer = MemberStiffness::compute(with_tube(22, 13));
        CHECK(in_mm_per_N(answer.resilience) == doctest::Approx(in_mm_per_N(answer.head_side + answer.tube + answer.nut_side)));
        CHECK(answer.outside_range == nullptr);
        auto wide = with_tube(40, 34);
        CHECK(MemberStiffness::compute(wide).outside_range != nullptr);
        // Layers all on one side, or none at all, are joints too.
        for (const int above : {0, 2}) {
            auto in = with_tube(22, 13);
            in.layers_above_tube = above;
            CHECK(MemberStiffness::refusal(in) == nullptr);
            CHECK(resilience(in) > in_mm_per_N(answer.tube) * 1e6);
        }
    }

    TEST_CASE("the frusta are the textbook's closed form") {
        auto in = joint(1000, GPa(207), {20, 20});
        in.head_bearing_diameter = in.nut_bearing_diameter = mm(18);
        in.hole_diameter = mm(12);
        in.method = MemberModel::frustum;
        const double d = 12, l = 40, k = 0.5774 * pi * 207e3 * d / (2 * std::log(5 * (0.5774 * l + 0.5 * d) / (0.5774 * l + 2.5 * d)));
        CHECK(in_N_per_mm(MemberStiffness::compute(in).stiffness) == doctest::Approx(k).epsilon(3e-4));
        CHECK(MemberStiffness::source(MemberModel::frustum).document != MemberStiffness::source(MemberModel::cone).document);
    }

    TEST_CASE("refusals") {
        CHECK(MemberStiffness::refusal(joint(40, GPa(70))) == nullptr);
        CHECK(MemberStiffness::refusal(joint(13, GPa(70))) != nullptr);
        CHECK(MemberStiffness::refusal(joint(40, GPa(70), {})) != nullptr);
        auto in = with_tube(22, 13);
        CHECK(MemberStiffness::refusal(in) == nullptr);
        in.layers_above_tube = 3;
        CHECK(MemberStiffness::refusal(in) != nullptr);
        in = with_tube(22, 13);
        in.tube_length = {};
        CHECK(MemberStiffness::refusal(in) != nullptr);
        CHECK(MemberStiffness::refusal(with_tube(22, 22)) != nullptr);
        CHECK(MemberStiffness::refusal(with_tube(13, 10)) != nullptr);
        in = with_tube(22, 13);
        in.hole_diameter = mm(24);
        CHECK(MemberStiffness::refusal(in) != nullptr);
    }

    TEST_CASE("random joints give finite positive answers") {
        std::mt19937 random(20);
        const auto between = [&random](double least, double most) {
            return least * std::exp(std::uniform_real_distribution<>(0, 1)(random) * std::log(most / least));
        };
        int computed = 0;
        for (int i = 0; i < 20000; ++i) {
            auto in = with_tube(between(1, 1000), between(0.5, 1000));
            if (i % 2 == 0) in.tube_outside_diameter = {}, in.tube_inside_diameter = {}, in.tube_length = {}, in.tube_modulus = {};
            in.hole_diameter = mm(between(0.5, 500));
            in.head_bearing_diameter = mm(between(1, 1000));
            in.nut_bearing_diameter = mm(between(1, 1000));
            for (auto& layer : in.layers) layer = {mm(between(0.001, 5000)), MPa(between(0.1, 1e6)), mm(between(1, 10000))};
            in.layers_above_tube = i % 3;
            in.method = i % 5 == 0 ? MemberModel::frustum : MemberModel::cone;
            if (MemberStiffness::refusal(in) != nullptr) continue;
            ++computed;
            const auto answer = MemberStiffness::compute(in);
            const bool sound = std::isfinite(answer.resilience.value()) && answer.resilience > mm_per_N(0) &&
                               std::isfinite(answer.stiffness.value()) && answer.head_side >= mm_per_N(0) &&
                               answer.nut_side >= mm_per_N(0) && std::isfinite(answer.circle_offset);
            REQUIRE(sound);
        }
        CHECK(computed > 500);
    }
}
