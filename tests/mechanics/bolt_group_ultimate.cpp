// SPDX-License-Identifier: MIT
#include "mechanics/bolt_group_ultimate.hpp"
#include "mechanics/bolt_group_in_plane.hpp"

#include <doctest/doctest.h>

#include <array>
#include <cmath>
#include <random>

using namespace faywright;

namespace {

Length inch(double v) { return mm(25.4 * v); }

BoltGroupUltimate::Inputs loaded(std::vector<Position> bolts, Force x, Force y, Length at_x, Length at_y) {
    return {.positions = std::move(bolts),
            .force_x = x,
            .force_y = y,
            .moment = Nm(0),
            .reference_x = at_x,
            .reference_y = at_y,
            .bolt_ultimate = kN(100)};
}

Length magnitude_of(const Position& bolt, Length x, Length y) { return sqrt(squared(bolt.x - x) + squared(bolt.y - y)); }

/// The load's moment about the centre found.
Moment about_centre(const BoltGroupUltimate::Inputs& in, const BoltGroupUltimate::Answer& answer) {
    return (in.reference_x - *answer.centre_x) * in.force_y - (in.reference_y - *answer.centre_y) * in.force_x;
}

/// Lines 3 in apart of n bolts 3 in apart, load along the lines at `e` inches from the centroid.
double lines(int count, int n, double e) {
    std::vector<Position> bolts;
    for (int row = 0; row < n; ++row)
        for (int line = 0; line < count; ++line) bolts.push_back({inch(3 * line), inch(3 * row)});
    const auto answer = BoltGroupUltimate::compute(loaded(std::move(bolts), kN(0), kN(-1), inch(1.5 * (count - 1) + e), mm(0)));
    CHECK(answer.converged);
    return answer.coefficient;
}

}  // namespace

TEST_SUITE("mechanics/bolt_group_ultimate") {
    // Own arithmetic, rounded to four figures: no published table.
    TEST_CASE("coefficients of a single line") {
        struct Row {
            double e;
            std::array<double, 7> C;
        };
        for (const Row& row :
             {Row{2, {1.178, 2.225, 3.319, 4.393, 5.445, 6.482, 7.507}}, Row{3, {0.878, 1.754, 2.814, 3.899, 4.984, 6.058, 7.118}},
              Row{4, {0.689, 1.400, 2.365, 3.399, 4.474, 5.560, 6.643}}, Row{5, {0.564, 1.148, 2.007, 2.955, 3.983, 5.049, 6.132}},
              Row{6, {0.476, 0.967, 1.730, 2.585, 3.545, 4.567, 5.625}}, Row{8, {0.362, 0.732, 1.343, 2.036, 2.854, 3.753, 4.720}},
              Row{12, {0.243, 0.490, 0.919, 1.402, 2.005, 2.683, 3.442}}})
            for (int n = 2; n <= 8; ++n) {
                CAPTURE(row.e);
                CAPTURE(n);
                CHECK(std::abs(lines(1, n, row.e) - row.C[static_cast<std::size_t>(n - 2)]) <= 0.000501);
            }
    }

    TEST_CASE("coefficients of two lines") {
        struct Row {
            double e;
            std::array<double, 6> C;
        };
        for (const Row& row : {Row{2, {0.841, 2.542, 4.478, 6.591, 8.716, 10.82}}, Row{3, {0.654, 2.032, 3.676, 5.668, 7.769, 9.908}},
                               Row{4, {0.535, 1.675, 3.056, 4.860, 6.836, 8.930}}, Row{6, {0.393, 1.224, 2.250, 3.687, 5.318, 7.174}},
                               Row{8, {0.310, 0.958, 1.775, 2.931, 4.265, 5.855}}, Row{12, {0.218, 0.663, 1.242, 2.055, 3.010, 4.193}}})
            for (int n = 1; n <= 6; ++n) {
                CAPTURE(row.e);
                CAPTURE(n);
                const double C = row.C[static_cast<std::size_t>(n - 1)];
                CHECK(std::abs(lines(2, n, row.e) - C) <= (C < 10 ? 0.000501 : 0.00501));
            }
    }

    TEST_CASE("cases A, B and C of own arithmetic, constants in metric rounding") {
        struct Case {
            std::vector<Position> bolts;
            double fx, fy, x, y, C, x0, y0;
        };
        const std::vector<Position> four{{mm(0), mm(0)}, {mm(60), mm(0)}, {mm(0), mm(80)}, {mm(60), mm(80)}};
        for (const Case& c :
             {Case{four, 0, -10, 180, 40, 1.19071, 7.997, 40.0}, Case{four, 5, -8.66025403784, 180, 40, 1.29035, 8.059, 20.089},
              Case{{{mm(0), mm(0)}, {mm(70), mm(0)}, {mm(0), mm(70)}}, 0, -10, 150, 35, 0.89096, 1.027, 16.892}}) {
            auto in = loaded(c.bolts, kN(c.fx), kN(c.fy), mm(c.x), mm(c.y));
            in.greatest_deformation = mm(8.64);
            in.deformation_scale = mm(1 / 0.3937);
            const auto answer = BoltGroupUltimate::compute(in);
            REQUIRE(answer.converged);
            CHECK(answer.coefficient == doctest::Approx(c.C).epsilon(1e-5));
            CHECK(std::abs(in_mm(answer.centre_x.value()) - c.x0) <= 0.00051);
            CHECK(std::abs(in_mm(answer.centre_y.value()) - c.y0) <= 0.00051);
            CHECK(in_kN(answer.ultimate) == doctest::Approx(100 * answer.coefficient));
        }
    }

    TEST_CASE("seven bolts with a corner missing: 2.7724 in the plane, 2.7895 on the line") {
        std::vector<Position> bolts;
        for (int row = 0; row < 4; ++row)
            for (int line = 0; line < 2; ++line)
                if (row != 3 || line != 1) bolts.push_back({inch(3 * line), inch(3 * row)});
        auto in = loaded(bolts, kN(0), kN(-1), inch(8), mm(0));
        CHECK(std::abs(BoltGroupUltimate::compute(in).coefficient - 2.7724) <= 0.0000501);
        in.search = CentreSearch::line;
        const auto on_line = BoltGroupUltimate::compute(in);
        CHECK(std::abs(on_line.coefficient - 2.7895) <= 0.0000501);
        CHECK(on_line.residual > 0.01);
    }

    TEST_CASE("two lines of three, 4 in by 3 in, load 5 in out: 2.7454") {
        std::vector<Position> bolts;
        for (int row = 0; row < 3; ++row)
            for (int line = 0; line < 2; ++line) bolts.push_back({inch(4 * line), inch(3 * row)});
        CHECK(std::abs(BoltGroupUltimate::compute(loaded(bolts, kN(0), kN(-24), inch(7), mm(0))).coefficient - 2.7454) <= 0.0000501);
    }

    TEST_CASE("random patterns and loads: settled, in balance when checked bolt by bolt, not below the elastic method") {
        std::mt19937 random(3);
        std::uniform_real_distribution<double> place(-200, 200), load(-1, 1);
        for (int round = 0; round < 400; ++round) {
            std::vector<Position> bolts(std::uniform_int_distribution<std::size_t>(2, 14)(random));
            for (auto& bolt : bolts) bolt = {mm(place(random)), mm(place(random))};
            auto in = loaded(bolts, kN(load(random)), kN(load(random)), mm(5 * place(random)), mm(5 * place(random)));
            if (round % 4 == 0) in.reference_x = in.reference_y = mm(place(random) * 1e-3);
            const auto answer = BoltGroupUltimate::compute(in);
            REQUIRE(answer.converged);
            REQUIRE(answer.centre_x);
            Length far = mm(0);
            for (const auto& bolt : bolts) far = max(far, magnitude_of(bolt, *answer.centre_x, *answer.centre_y));
            Force sum_x = newton(0), sum_y = newton(0);
            Moment sum = Nm(0);
            for (const auto& bolt : bolts) {
                const Length dx = bolt.x - *answer.centre_x, dy = bolt.y - *answer.centre_y,
                             r = magnitude_of(bolt, *answer.centre_x, *answer.centre_y);
                const Force R = kN(100) * std::pow(1 - std::exp(-10 * 0.34 * double(r / far)), 0.55);
                sum_x -= R * double(dy / r);
                sum_y += R * double(dx / r);
                sum += R * r;
            }
            const double turn = in_kNm(about_centre(in, answer)) > 0 ? 1.0 : -1.0;
            CHECK(turn * in_kN(sum_x) == doctest::Approx(in_kN(in.force_x) * answer.load_factor).epsilon(1e-5).scale(100));
            CHECK(turn * in_kN(sum_y) == doctest::Approx(in_kN(in.force_y) * answer.load_factor).epsilon(1e-5).scale(100));
            CHECK(turn * in_kNm(sum) == doctest::Approx(in_kNm(about_centre(in, answer)) * answer.load_factor).epsilon(1e-5).scale(10));
            const auto elastic =
                BoltGroupInPlane::compute({in.positions, in.force_x, in.force_y, in.moment, in.reference_x, in.reference_y});
            CHECK(answer.load_factor >= 0.98 * double(kN(100) / elastic.resultant));
        }
    }

    TEST_CASE("load through the centroid, pure moment, one bolt, refusals") {
        const std::vector<Position> four{{mm(-30), mm(-40)}, {mm(30), mm(-40)}, {mm(-30), mm(40)}, {mm(30), mm(40)}};
        const double one = std::pow(1 - std::exp(-3.4), 0.55);
        for (const CentreSearch search : {CentreSearch::plane, CentreSearch::line}) {
            auto in = loaded(four, kN(1), kN(2), mm(0), mm(0));
            in.search = search;
            const auto answer = BoltGroupUltimate::compute(in);
            CHECK(answer.converged);
            CHECK(answer.coefficient == doctest::Approx(4 * one));
            CHECK_FALSE(answer.centre_x.has_value());
        }
        auto moment = loaded(four, kN(0), kN(0), mm(0), mm(0));
        CHECK(BoltGroupUltimate::refusal(moment) != nullptr);
        moment.moment = kNm(-3);
        CHECK(BoltGroupUltimate::refusal(moment) == nullptr);
        const auto turned = BoltGroupUltimate::compute(moment);
        CHECK(turned.converged);
        CHECK(in_kNm(turned.ultimate_moment) == doctest::Approx(-100 * 0.2 * one));
        CHECK(turned.load_factor == doctest::Approx(100 * 0.2 * one / 3));
        auto single = loaded({{mm(5), mm(5)}}, kN(1), kN(0), mm(0), mm(5));
        CHECK(BoltGroupUltimate::refusal(single) == nullptr);
        CHECK(BoltGroupUltimate::compute(single).coefficient == doctest::Approx(one));
        single.reference_y = mm(6);
        CHECK(BoltGroupUltimate::refusal(single) != nullptr);
    }

    TEST_CASE("the ends of the ranges stay finite") {
        const std::vector<Position> line{{mm(-10000), mm(0)}, {mm(0), mm(0.1)}, {mm(10000), mm(0)}};
        for (const double most : {0.1, 8.6, 100.0})
            for (const double scale : {0.1, 2.54, 100.0})
                for (const double exponent : {0.1, 0.55, 1.0})
                    for (const double at : {0.0, 1e-4, 1.0, 1e5})
                        for (const CentreSearch search : {CentreSearch::plane, CentreSearch::line}) {
                            auto in = loaded(line, kN(1), kN(1e5), mm(at), mm(0));
                            in.greatest_deformation = mm(most);
                            in.deformation_scale = mm(scale);
                            in.exponent = exponent;
                            in.search = search;
                            const auto answer = BoltGroupUltimate::compute(in);
                            CAPTURE(most);
                            CAPTURE(scale);
                            CAPTURE(exponent);
                            CAPTURE(at);
                            CHECK(std::isfinite(answer.coefficient));
                            CHECK(std::isfinite(answer.residual));
                            if (search == CentreSearch::plane) CHECK(answer.converged);
                            if (answer.centre_x) CHECK(std::isfinite(in_mm(*answer.centre_x)));
                        }
    }
}
