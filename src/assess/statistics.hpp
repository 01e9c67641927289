// SPDX-License-Identifier: MIT
#pragma once

#include <Eigen/Core>

#include <array>
#include <cmath>
#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

/// What is kept of many samples, in memory that does not grow with them.
namespace faywright {

inline constexpr std::size_t most_scores = 24, most_responses = 2, most_events = 6;

/// How often something happened, and what that says of its probability.
struct Proportion {
    std::size_t happened = 0, samples = 0;

    [[nodiscard]] double estimate() const { return samples == 0 ? 0.0 : static_cast<double>(happened) / static_cast<double>(samples); }
    /// Ends of the interval that holds the probability with 95 % confidence (Clopper and Pearson 1934, from quantiles of the beta
    /// distribution: at most 2.5 % of doubt at either end, so it holds the probability at least as often as it says).
    [[nodiscard]] double low() const;
    [[nodiscard]] double high() const;
};

/// Means and co-moments of several numbers.
class Moments {
public:
    using Matrix = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, 0, most_scores + most_responses, most_scores + most_responses>;
    using Vector = Eigen::Matrix<double, Eigen::Dynamic, 1, 0, most_scores + most_responses, 1>;

    Moments() = default;
    explicit Moments(std::size_t size)
        : mean_(Vector::Zero(static_cast<Eigen::Index>(size))),
          about_(Matrix::Zero(static_cast<Eigen::Index>(size), static_cast<Eigen::Index>(size))) {}

    /// One sample (Welford).
    void add(std::span<const double> row) {
        const Eigen::Map<const Eigen::VectorXd> x(row.data(), static_cast<Eigen::Index>(row.size()));
        ++count_;
        const auto n = static_cast<double>(count_);
        const Vector off = x - mean_;
        mean_ += off / n;
        about_.selfadjointView<Eigen::Lower>().rankUpdate(off, (n - 1.0) / n);
    }
    /// Those of other samples (Chan, Golub and LeVeque).
    void join(const Moments& other);

    [[nodiscard]] std::size_t count() const { return count_; }
    [[nodiscard]] double mean(std::size_t i) const { return mean_(static_cast<Eigen::Index>(i)); }
    [[nodiscard]] double variance(std::size_t i) const {
        return count_ < 2 ? 0.0 : about_(static_cast<Eigen::Index>(i), static_cast<Eigen::Index>(i)) / static_cast<double>(count_ - 1);
    }
    /// Sum of products about the means; the lower half is kept.
    [[nodiscard]] const Matrix& about_means() const { return about_; }

private:
    std::size_t count_ = 0;
    Vector mean_;
    Matrix about_;
};

/// Share of a response's variance that each input stands for.
struct Ranking {
    std::vector<double> shares;  ///< squared standardised regression coefficients, in the order of the inputs
    double explained = 0.0;      ///< R²: what the straight lines explain of the variance; the rest is curvature and interplay
};

/// Least-squares plane through the response over the first `inputs` numbers. Nothing where the response does not vary.
[[nodiscard]] Ranking ranking(const Moments& moments, std::size_t inputs, std::size_t response);

/// Quantiles of numbers from 0 to 2^24 by counting them in bins: 512 to each doubling, so the quantile is within 0.2 % of the samples' own.
/// Below 2^-24 counts as none.
class Quantiles {
public:
    void add(double x) {
        if (counts_.empty()) counts_.assign(bins, 0);
        ++counts_[bin_of(x)];
        ++total_;
    }
    void join(const Quantiles& other);
    /// The value below which the share lies, from 0 to 1; 0 without samples.
    [[nodiscard]] double at(double share) const;
    /// The share that lies below the value, evenly spread within a bin; 0 without samples.
    [[nodiscard]] double share_below(double x) const;

private:
    static constexpr int octaves = 48, lowest = -24;
    static constexpr std::size_t each = 512, bins = octaves * each + 1;

    [[nodiscard]] static std::size_t bin_of(double x) {
        if (!(x >= 0x1p-24)) return 0;
        if (x >= 0x1p24) return bins - 1;
        int exponent = 0;
        const double mantissa = std::frexp(x, &exponent);  // 0.5 to 1
        return 1 + static_cast<std::size_t>(exponent - 1 - lowest) * each +
               static_cast<std::size_t>((mantissa - 0.5) * 2.0 * static_cast<double>(each));
    }

    std::vector<std::uint64_t> counts_;
    std::uint64_t total_ = 0;
};

/// Shares of samples in equal bins from `least` to `greatest`, and of what lies beyond: together they are one.
struct Histogram {
    double least = 0.0, greatest = 0.0;
    std::vector<double> shares;
    double below = 0.0, above = 0.0;
};

/// Of all but a thousandth at either end, in so many bins. A single bin where the samples do not differ, none without samples.
[[nodiscard]] Histogram histogram(const Quantiles& quantiles, std::size_t bins);

}  // namespace faywright
