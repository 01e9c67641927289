// SPDX-License-Identifier: MIT
#include "assess/sampling.hpp"

#include "assess/spread.hpp"

#include <doctest/doctest.h>
#include <boost/math/distributions/binomial.hpp>
#include <boost/math/distributions/chi_squared.hpp>

using namespace faywright;

namespace {

/// A straight line in four scores, and a curve in the fifth that no straight line explains: variance 1 times the square of `curved`.
struct Line {
    std::array<double, 4> slopes{3.0, -2.0, 1.0, 0.0};
    double curved = 0.0, about = 50.0;

    [[nodiscard]] double operator()(std::span<const double> z) const {
        double sum = about + curved * (z[4] * z[4] - 1.0) / std::sqrt(2.0);
        for (std::size_t i = 0; i < slopes.size(); ++i) sum += slopes[i] * z[i];
        return sum;
    }
    [[nodiscard]] double straight() const {
        double sum = 0.0;
        for (const double s : slopes) sum += s * s;
        return sum;
    }
};

Sampled drawn(const Line& line, const Sampling& sampling) {
    Progress progress;
    return sample(sampling, 5, 1, progress, [&] {
        return [line](std::span<const double> z, Sample& out) {
            out.response[0] = line(z);
            out.event[0] = z[0] > 1.0;
        };
    });
}

/// Beyond this many deviations either way lies 1 in 1000: the chance of a false alarm of each comparison, when the seed was chosen.
constexpr double rare = 3.290527;

}  // namespace

TEST_SUITE_BEGIN("assess/sampling");

TEST_CASE("mean, variance and shares of a straight line are those of its closed form") {
    const Line line;
    const Sampling sampling{30000, 11, 2};
    const auto all = drawn(line, sampling);
    const double n = static_cast<double>(sampling.samples), variance = line.straight();
    REQUIRE(all.done == sampling.samples);
    CHECK(std::abs(all.moments.mean(5) - line.about) < rare * std::sqrt(variance / n));
    const boost::math::chi_squared chi(n - 1.0);
    CHECK(all.moments.variance(5) > variance * boost::math::quantile(chi, 0.0005) / (n - 1.0));
    CHECK(all.moments.variance(5) < variance * boost::math::quantile(boost::math::complement(chi, 0.0005)) / (n - 1.0));
    const auto told = ranking(all.moments, 5, 0);
    CHECK(told.explained == doctest::Approx(1.0).epsilon(1e-9));
    REQUIRE(told.shares.size() == 5);
    for (std::size_t i = 0; i < 4; ++i) {
        const double share = line.slopes[i] * line.slopes[i] / variance;
        INFO("share " << i);
        // ln of the share has the variance 4 (1 - share)/n.
        if (share > 0.0)
            CHECK(std::abs(std::log(told.shares[i] / share)) < rare * std::sqrt(4.0 * (1.0 - share) / n));
        else
            CHECK(told.shares[i] < 1e-12);
    }
    CHECK(told.shares[4] < 1e-12);
    // One normal score above 1.
    const Proportion above{all.happened[0], all.done};
    const double truth = 0.5 * std::erfc(std::sqrt(0.5));
    CHECK(std::abs(above.estimate() - truth) < rare * std::sqrt(truth * (1.0 - truth) / n));
}

TEST_CASE("what straight lines cannot explain is told by R2") {
    Line line;
    line.curved = 4.0;
    const Sampling sampling{30000, 12, 1};
    const auto all = drawn(line, sampling);
    const double n = static_cast<double>(sampling.samples), variance = line.straight() + 16.0, left = 16.0 / variance;
    const auto told = ranking(all.moments, 5, 0);
    // The curve's fourth moment is 15 times its squared variance, so ln of what is left scatters by at most these two together.
    const double of_curve = std::sqrt(14.0 / n), of_all = std::sqrt((2.0 + 12.0 * left * left) / n);
    CHECK(std::abs(std::log((1.0 - told.explained) / left)) < rare * (of_curve + of_all));
    // An input that only bends the line has no share by this method: the slope is none, up to its own scatter.
    CHECK(told.shares[4] < rare * rare * 15.0 / n);
    CHECK(told.shares[0] == doctest::Approx(9.0 / variance).epsilon(0.05));
}

TEST_CASE("nothing varies, nothing is ranked") {
    Line still;
    still.slopes = {};
    CHECK(ranking(drawn(still, {3000, 1, 1}).moments, 5, 0).shares.empty());
    CHECK(ranking(Moments(6), 5, 0).shares.empty());
}

TEST_CASE("the interval holds the probability at least as often as it says") {
    // By summing over every outcome: no draw.
    for (const std::size_t n : {20U, 200U, 1500U})
        for (const double p : {0.0007, 0.003, 0.02, 0.3, 0.5, 0.97, 0.9995}) {
            INFO(p << " in " << n);
            const boost::math::binomial truth(static_cast<double>(n), p);
            double held = 0.0, missed_low = 0.0, missed_high = 0.0;
            for (std::size_t k = 0; k <= n; ++k) {
                const Proportion seen{k, n};
                const double chance = boost::math::pdf(truth, static_cast<double>(k));
                if (p < seen.low())
                    missed_low += chance;
                else if (p > seen.high())
                    missed_high += chance;
                else
                    held += chance;
            }
            CHECK(held >= 0.95 - 1e-9);
            CHECK(missed_low <= 0.025 + 1e-9);
            CHECK(missed_high <= 0.025 + 1e-9);
        }
}

TEST_CASE("an interval by hand") {
    // The ends for 2 of 20 by the binomial's own sums: 2.5 % at either end.
    const Proportion seen{2, 20};
    CHECK(boost::math::cdf(boost::math::complement(boost::math::binomial(20, seen.low()), 1.0)) == doctest::Approx(0.025).epsilon(1e-9));
    CHECK(boost::math::cdf(boost::math::binomial(20, seen.high()), 2.0) == doctest::Approx(0.025).epsilon(1e-9));
    CHECK(Proportion{0, 100}.low() == 0.0);
    CHECK(Proportion{0, 100}.high() == doctest::Approx(1.0 - std::pow(0.025, 0.01)).epsilon(1e-12));
    CHECK(Proportion{100, 100}.low() == doctest::Approx(std::pow(0.025, 0.01)).epsilon(1e-12));
    CHECK(Proportion{}.high() == 1.0);
}

TEST_CASE("joined blocks are one set of samples") {
    Moments one(3), first(3), second(3);
    std::vector<std::array<double, 3>> rows;
    for (int i = 0; i < 200; ++i) rows.push_back({std::sin(i * 1.7), 1e6 + std::cos(i * 0.9), i * 0.01});
    for (std::size_t i = 0; i < rows.size(); ++i) {
        one.add(rows[i]);
        (i < 70 ? first : second).add(rows[i]);
    }
    first.join(second);
    first.join(Moments(3));
    CHECK(first.count() == 200);
    for (std::size_t i = 0; i < 3; ++i) {
        CHECK(first.mean(i) == doctest::Approx(one.mean(i)).epsilon(1e-12));
        CHECK(first.variance(i) == doctest::Approx(one.variance(i)).epsilon(1e-9));
    }
    // By the two-pass definition.
    double mean = 0.0, squares = 0.0;
    for (const auto& row : rows) mean += row[1] / 200.0;
    for (const auto& row : rows) squares += (row[1] - mean) * (row[1] - mean);
    CHECK(one.variance(1) == doctest::Approx(squares / 199.0).epsilon(1e-8));
}

TEST_CASE("quantiles are those of the sorted numbers within the bins' width") {
    std::vector<double> numbers;
    Quantiles whole, half, other;
    for (int i = 1; i <= 5000; ++i) {
        numbers.push_back(std::exp(0.002 * ((i * 1237) % 5003)));
        whole.add(numbers.back());
        (i % 2 == 0 ? half : other).add(numbers.back());
    }
    half.join(other);
    std::sort(numbers.begin(), numbers.end());
    for (const double share : {0.01, 0.05, 0.5, 0.95, 0.999}) {
        const double exact = numbers[static_cast<std::size_t>(share * 5000.0) - 1];
        CHECK(whole.at(share) == doctest::Approx(exact).epsilon(0.002));
        CHECK(half.at(share) == whole.at(share));
    }
    Quantiles nothing;
    CHECK(nothing.at(0.5) == 0.0);
    for (int i = 0; i < 10; ++i) nothing.add(i < 6 ? 0.0 : 5.0);
    CHECK(nothing.at(0.5) == 0.0);
    CHECK(nothing.at(0.95) == doctest::Approx(5.0).epsilon(0.002));
}

TEST_CASE("shares below a value are those of the sorted numbers, and of bins add up to one") {
    std::vector<double> numbers;
    Quantiles quantiles;
    for (int i = 1; i <= 5000; ++i) {
        numbers.push_back(i % 50 == 0 ? 0.0 : std::exp(0.002 * ((i * 1237) % 5003)));
        quantiles.add(numbers.back());
    }
    std::sort(numbers.begin(), numbers.end());
    const auto below = [&](double x) {
        return static_cast<double>(std::lower_bound(numbers.begin(), numbers.end(), x) - numbers.begin()) / 5000.0;
    };
    for (const double x : {1e-9, 1.5, 7.0, 400.0, 1e4, 1e5}) CHECK(quantiles.share_below(x) == doctest::Approx(below(x)).epsilon(0.002));
    CHECK(quantiles.share_below(0.0) == 0.0);
    CHECK(quantiles.share_below(1e30) == 1.0);
    for (const double share : {0.05, 0.5, 0.95}) CHECK(quantiles.share_below(quantiles.at(share)) == doctest::Approx(share).epsilon(1e-9));

    const auto h = histogram(quantiles, 40);
    REQUIRE(h.shares.size() == 40);
    double sum = h.below + h.above;
    for (const double share : h.shares) {
        CHECK(share >= 0.0);
        sum += share;
    }
    CHECK(sum == doctest::Approx(1.0).epsilon(1e-12));
    // The first bin holds those that are none.
    CHECK(h.least == 0.0);
    CHECK(h.shares.front() == doctest::Approx(below(h.greatest / 40.0)).epsilon(0.002));
    CHECK(h.above == doctest::Approx(0.001).epsilon(1e-6));

    CHECK(histogram(Quantiles{}, 40).shares.empty());
    Quantiles none;
    none.add(0.0);
    CHECK(histogram(none, 40).shares == std::vector<double>{1.0});
}

TEST_CASE("a spread's ends and middle") {
    const auto wall = Spread<Length>::tolerance(mm(5), mm(0.5));
    CHECK(in_mm(wall.at(0.0)) == doctest::Approx(5.0));
    CHECK(in_mm(wall.at(ends_of_95)) == doctest::Approx(5.5));
    const auto friction = Spread<double>::band(0.08, 0.16);
    CHECK(friction.at(-ends_of_95) == doctest::Approx(0.08));
    CHECK(friction.at(ends_of_95) == doctest::Approx(0.16));
    const auto strength = Spread<Stress>::above(MPa(240), 0.06);
    CHECK(in_MPa(strength.at(-fractile_of_5)) == doctest::Approx(240.0));
    CHECK(in_MPa(strength.at(0.0)) > 240.0);
    const auto nut = Spread<Moment>::uniform(Nm(0), Nm(20));
    CHECK(in_Nm(nut.at(0.0)) == doctest::Approx(10.0));
    CHECK(in_Nm(nut.at(0.6744898)) == doctest::Approx(15.0));
    CHECK(in_Nm(nut.at(-40.0)) == doctest::Approx(0.0));
    CHECK(in_degC(Spread<Temperature>::normal(degC(-15), kelvin(3)).at(-1.0)) == doctest::Approx(-18.0));
    // The normal quantiles behind them.
    CHECK(0.5 * std::erfc(-ends_of_95 / std::sqrt(2.0)) == doctest::Approx(0.975).epsilon(1e-6));
    CHECK(0.5 * std::erfc(-fractile_of_5 / std::sqrt(2.0)) == doctest::Approx(0.95).epsilon(1e-6));
}

TEST_CASE("asked to stop, no other block is begun and what was drawn stands") {
    Progress progress;
    std::size_t seen = 0;
    const auto all = sample({10000, 1, 1}, 1, 1, progress, [&] {
        return [&](std::span<const double> z, Sample& out) {
            out.response[0] = z[0] + 10.0;
            if (++seen == 2500) progress.stop = true;
        };
    });
    CHECK(all.wanted == 10000);
    CHECK(all.done == 3000);
    CHECK(progress.done == 3000);
    CHECK(all.moments.count() == 3000);
}

TEST_CASE("blocks differ from each other, and memory is kept for no more than so many") {
    Progress progress;
    std::vector<double> firsts;
    std::size_t calls = 0;
    const auto all = sample({most_blocks * least_block + 7, 3, 1}, 1, 1, progress, [&] {
        return [&](std::span<const double> z, Sample& out) {
            if (calls++ % (least_block + 1) == 0) firsts.push_back(z[0]);
            out.response[0] = 1.0;
        };
    });
    CHECK(all.done == most_blocks * least_block + 7);
    CHECK(firsts.size() <= most_blocks);
    std::sort(firsts.begin(), firsts.end());
    CHECK(std::adjacent_find(firsts.begin(), firsts.end()) == firsts.end());
}

TEST_SUITE_END();
