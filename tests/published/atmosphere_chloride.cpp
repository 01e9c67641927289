// SPDX-License-Identifier: MIT
#include "corrosion/chloride_from_distance.hpp"
#include "published/data/rows.hpp"
#include "published/published.hpp"

#include <fmt/format.h>

#include <array>
#include <cmath>
#include <string>
#include <vector>

// Our own fits, made again from the stations they stand on. They are no published answers and stay out of the dossier.

using namespace faywright;

namespace {

struct Station {
    double km, deposition;
};

std::vector<Station> stations(const std::string& programme = "") {
    std::vector<Station> out;
    for (const auto& row : published::data_rows("atmosphere-chloride.csv"))
        if (programme.empty() || row[0] == programme) out.push_back({std::stod(row[2]), std::stod(row[3])});
    return out;
}

struct Law {
    double factor, exponent, scatter, explained;
};

/// Least squares of ln S = ln a + m ln x.
Law power_law(const std::vector<Station>& all) {
    const auto n = static_cast<double>(all.size());
    double x = 0, y = 0, xx = 0, xy = 0, yy = 0;
    for (const auto& s : all) {
        const double u = std::log(s.km), v = std::log(s.deposition);
        x += u, y += v, xx += u * u, xy += u * v, yy += v * v;
    }
    const double s_xx = xx - x * x / n, s_xy = xy - x * y / n, s_yy = yy - y * y / n, m = s_xy / s_xx;
    const double left = s_yy - m * s_xy;
    return {std::exp((y - m * x) / n), m, std::sqrt(left / (n - 2.0)), 1.0 - left / s_yy};
}

ChlorideFromDistance::Answer at(double km, Shore shore = Shore::all_stations) {
    return ChlorideFromDistance::compute({metre(1000.0 * km), shore});
}

bool comes_out(double ours, published::Printed coded) { return std::abs(ours - coded.value()) <= coded.tolerance(); }

/// Sum of squares of ln S about S_0 exp(-x/L) + B, by the logarithms of the three.
double misfit(const std::vector<Station>& all, const std::array<double, 3>& q) {
    double sum = 0;
    for (const auto& s : all) {
        const double error = std::log(s.deposition) - std::log(std::exp(q[0] - s.km / std::exp(q[1])) + std::exp(q[2]));
        sum += error * error;
    }
    return sum;
}

}  // namespace

TEST_SUITE("published/atmosphere_chloride") {
    TEST_CASE("217 stations: the fit made again is the law as coded") {
        const auto all = stations();
        CHECK(all.size() == 217);
        const auto law = power_law(all);
        MESSAGE(
            fmt::format("S = {:.3f} x^{:.4f}, scatter of ln S {:.4f}, R2 {:.3f}", law.factor, law.exponent, law.scatter, law.explained));
        CHECK(comes_out(law.factor, {"29.1"}));
        CHECK(comes_out(law.exponent, {"-0.351"}));
        CHECK(comes_out(law.scatter, {"0.86"}));
        CHECK(comes_out(law.explained, {"0.54"}));
        // And the code has these: at 1 km the factor, over a decade the exponent.
        CHECK(in_mg_per_m2_d(at(1).median) == doctest::Approx(29.1));
        CHECK(std::log10(double(at(10).median / at(1).median)) == doctest::Approx(-0.351));
        CHECK(at(1).scatter == doctest::Approx(0.86));
    }

    TEST_CASE("217 stations: two in three within the scatter, about one in ten above p90, by distance") {
        constexpr double ends[] = {0, 0.05, 0.25, 1, 5, 25, 100, 1e9};
        std::string table = "\n      km from      to    n  geometric mean over law  within s  above p90\n";
        std::size_t within = 0, above = 0;
        const auto all = stations();
        for (std::size_t i = 0; i + 1 < std::size(ends); ++i) {
            std::size_t n = 0, inside = 0, over = 0;
            double sum = 0;
            for (const auto& s : all) {
                if (s.km < ends[i] || s.km >= ends[i + 1]) continue;
                const auto answer = at(s.km);
                const auto measured = mg_per_m2_d(s.deposition);
                ++n;
                sum += std::log(double(measured / answer.median));
                inside += answer.low <= measured && measured <= answer.high ? 1U : 0U;
                over += measured > answer.p90 ? 1U : 0U;
            }
            table += fmt::format("{:>13} {:>7} {:>4} {:>24.2f} {:>9.0f} % {:>8.0f} %\n", ends[i], ends[i + 1], n,
                                 std::exp(sum / static_cast<double>(n)), 100.0 * static_cast<double>(inside) / static_cast<double>(n),
                                 100.0 * static_cast<double>(over) / static_cast<double>(n));
            within += inside;
            above += over;
            // What the calculator says of the first 50 m.
            if (i == 0) {
                CHECK(over * 2 == n);
                CHECK(comes_out(std::exp(sum / static_cast<double>(n)), {"2"}));
            }
        }
        MESSAGE(table);
        // Of 217, within two standard deviations of the binomial count.
        CHECK(std::abs(static_cast<double>(within) - 217 * 0.6827) <= 2.0 * std::sqrt(217 * 0.6827 * 0.3173));
        CHECK(std::abs(static_cast<double>(above) - 217 * 0.1) <= 2.0 * std::sqrt(217 * 0.1 * 0.9));
    }

    TEST_CASE("Brazil, Portella 2012: the transect fitted again is the exponential with background as coded") {
        const auto all = stations("brazil_portella_2012");
        REQUIRE(all.size() == 7);
        // Down the valley by steps along each axis, halved where none helps.
        std::array<double, 3> q{std::log(300), std::log(0.4), std::log(5)};
        double best = misfit(all, q);
        for (double step = 0.5; step > 1e-8;) {
            bool better = false;
            for (std::size_t axis = 0; axis < 3; ++axis)
                for (const double way : {-step, step}) {
                    auto next = q;
                    next[axis] += way;
                    if (const double now = misfit(all, next); now < best) {
                        best = now;
                        q = next;
                        better = true;
                    }
                }
            if (!better) step *= 0.5;
        }
        MESSAGE(fmt::format("S = {:.1f} exp(-x/{:.4f}) + {:.3f}, scatter of ln S {:.3f}", std::exp(q[0]), std::exp(q[1]), std::exp(q[2]),
                            std::sqrt(best / 4.0)));
        CHECK(comes_out(std::exp(q[0]), {"5.0e2"}));
        CHECK(comes_out(std::exp(q[1]), {"0.25"}));
        CHECK(comes_out(std::exp(q[2]), {"8.8"}));
        CHECK(comes_out(std::sqrt(best / 4.0), {"0.28"}));
        CHECK(at(1, Shore::surf_transect).scatter == doctest::Approx(0.28));
        CHECK(in_mg_per_m2_d(at(0.25, Shore::surf_transect).median) == doctest::Approx(500 / std::exp(1.0) + 8.8));
    }
}
