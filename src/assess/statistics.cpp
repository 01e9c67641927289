// SPDX-License-Identifier: MIT
#include "assess/statistics.hpp"

#include <Eigen/Cholesky>
#include <boost/math/distributions/binomial.hpp>

#include <algorithm>

namespace faywright {

namespace {

using Binomial = boost::math::binomial_distribution<double>;
constexpr double doubt = 0.05;

}  // namespace

double Proportion::low() const {
    if (happened == 0) return 0.0;
    return Binomial::find_lower_bound_on_p(static_cast<double>(samples), static_cast<double>(happened), doubt / 2.0);
}

double Proportion::high() const {
    if (happened == samples) return 1.0;
    return Binomial::find_upper_bound_on_p(static_cast<double>(samples), static_cast<double>(happened), doubt / 2.0);
}

void Moments::join(const Moments& other) {
    if (other.count_ == 0) return;
    if (count_ == 0) {
        *this = other;
        return;
    }
    const auto here = static_cast<double>(count_), there = static_cast<double>(other.count_);
    const Vector off = other.mean_ - mean_;
    mean_ += off * (there / (here + there));
    about_ += other.about_;
    about_.selfadjointView<Eigen::Lower>().rankUpdate(off, here * there / (here + there));
    count_ += other.count_;
}

Ranking ranking(const Moments& moments, std::size_t inputs, std::size_t response) {
    const auto n = static_cast<Eigen::Index>(inputs), y = static_cast<Eigen::Index>(inputs + response);
    const auto& about = moments.about_means();
    // Differences in the last digits of a mean are no variance.
    const double least = static_cast<double>(moments.count()) * std::pow(1e-12 * moments.mean(inputs + response), 2);
    if (moments.count() <= inputs + 1 || about(y, y) <= least) return {};
    const Moments::Matrix among = Moments::Matrix(about.topLeftCorner(n, n)).selfadjointView<Eigen::Lower>();
    const Moments::Vector with = about.row(y).head(n).transpose();
    const Moments::Vector slopes = among.ldlt().solve(with);
    Ranking result;
    for (Eigen::Index i = 0; i < n; ++i) result.shares.push_back(slopes(i) * slopes(i) * about(i, i) / about(y, y));
    result.explained = slopes.dot(with) / about(y, y);
    return result;
}

void Quantiles::join(const Quantiles& other) {
    if (other.counts_.empty()) return;
    if (counts_.empty()) counts_.assign(bins, 0);
    for (std::size_t i = 0; i < bins; ++i) counts_[i] += other.counts_[i];
    total_ += other.total_;
}

double Quantiles::at(double share) const {
    if (total_ == 0) return 0.0;
    const double wanted = share * static_cast<double>(total_);
    double below = 0.0;
    for (std::size_t i = 0; i < bins; ++i) {
        const auto here = static_cast<double>(counts_[i]);
        if (here > 0.0 && below + here >= wanted) {
            if (i == 0) return 0.0;
            const auto octave = static_cast<int>((i - 1) / each);
            const double inside = static_cast<double>((i - 1) % each) + std::max(wanted - below, 0.0) / here;
            return std::ldexp(1.0 + inside / static_cast<double>(each), octave + lowest);
        }
        below += here;
    }
    return 0.0;
}

double Quantiles::share_below(double x) const {
    if (total_ == 0 || !(x > 0.0)) return 0.0;
    const auto last = bin_of(x);
    std::uint64_t below = 0;
    for (std::size_t i = 0; i < last; ++i) below += counts_[i];
    double part = 1.0;  // what counts as none lies below anything
    if (last > 0) {
        const auto octave = static_cast<int>((last - 1) / each);
        const double inside = std::ldexp(x, -(octave + lowest)) - 1.0;  // of the octave
        part = inside * static_cast<double>(each) - static_cast<double>((last - 1) % each);
    }
    return (static_cast<double>(below) + std::clamp(part, 0.0, 1.0) * static_cast<double>(counts_[last])) / static_cast<double>(total_);
}

Histogram histogram(const Quantiles& quantiles, std::size_t bins) {
    constexpr double tail = 0.001;
    Histogram out{quantiles.at(tail), quantiles.at(1.0 - tail), {}, 0.0, 0.0};
    if (out.greatest <= 0.0 && quantiles.share_below(0x1p24) <= 0.0) return out;
    if (out.greatest <= out.least) {
        out.shares = {1.0};
        return out;
    }
    const auto edge = [&](std::size_t i) {
        return out.least + (out.greatest - out.least) * static_cast<double>(i) / static_cast<double>(bins);
    };
    double below = out.below = quantiles.share_below(out.least);
    for (std::size_t i = 1; i <= bins; ++i) {
        const double upto = quantiles.share_below(i == bins ? out.greatest : edge(i));
        out.shares.push_back(upto - below);
        below = upto;
    }
    out.above = 1.0 - below;
    return out;
}

}  // namespace faywright
