// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/field.hpp"
#include "quantity/value.hpp"

#include <cmath>
#include <numbers>

namespace faywright {

/// The distribution of an input. Its parameters, in the order in which they are told:
/// normal: mean and standard deviation; log-normal: median and standard deviation of the natural logarithm; uniform: least and greatest.
enum class Shape { normal, log_normal, uniform };
template <>
struct Words<Shape> {
    static constexpr std::array<std::pair<Shape, std::string_view>, 3> all{
        {{Shape::normal, "normal"}, {Shape::log_normal, "log-normal"}, {Shape::uniform, "uniform"}}};
};

/// Standard deviations from the middle to either end of what holds 95 % of a normal distribution.
inline constexpr double ends_of_95 = 1.959964;
/// From the 5 % fractile to the middle.
inline constexpr double fractile_of_5 = 1.644854;

/// How an input scatters. A standard score, normal with mean 0 and deviation 1, stands for each value.
template <class Q>
class Spread {
public:
    using Difference = decltype(Q{} - Q{});

    [[nodiscard]] static Spread normal(Q mean, Difference deviation) { return {Shape::normal, mean, deviation, 0.0}; }
    [[nodiscard]] static Spread log_normal(Q median, double deviation) { return {Shape::log_normal, median, {}, deviation}; }
    [[nodiscard]] static Spread uniform(Q least, Q greatest) { return {Shape::uniform, least, greatest - least, 0.0}; }
    /// A tolerance or band, plus and minus, taken for what holds 95 %.
    [[nodiscard]] static Spread tolerance(Q middle, Difference half) { return normal(middle, half / ends_of_95); }
    /// A band of positive ends taken for what holds 95 %.
    [[nodiscard]] static Spread band(Q low, Q high) {
        return log_normal(low * std::sqrt(static_cast<double>(high / low)), std::log(static_cast<double>(high / low)) / (2.0 * ends_of_95));
    }
    /// A characteristic value taken for the 5 % fractile.
    [[nodiscard]] static Spread above(Q characteristic, double deviation) {
        return log_normal(characteristic * std::exp(fractile_of_5 * deviation), deviation);
    }

    [[nodiscard]] Q at(double score) const {
        if constexpr (!std::same_as<Q, Temperature>)
            if (shape_ == Shape::log_normal) return first_ * std::exp(score * log_deviation_);
        if (shape_ == Shape::uniform) return first_ + 0.5 * std::erfc(-score / std::numbers::sqrt2) * second_;
        return first_ + score * second_;
    }

    [[nodiscard]] Shape shape() const { return shape_; }
    [[nodiscard]] Value first() const { return first_; }
    [[nodiscard]] Value second() const {
        if (shape_ == Shape::log_normal) return log_deviation_;
        if (shape_ == Shape::uniform) return first_ + second_;
        return second_;
    }

private:
    Spread(Shape shape, Q first, Difference second, double log_deviation)
        : shape_(shape), first_(first), second_(second), log_deviation_(log_deviation) {}

    Shape shape_;
    Q first_;
    Difference second_;
    double log_deviation_;
};

}  // namespace faywright
