// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/quantity.hpp"

#include <concepts>
#include <string>
#include <string_view>

namespace faywright {

/// Exponents of the base dimensions. A point on the temperature scale is told from a difference.
struct Dimension {
    signed char length = 0, mass = 0, time = 0, temperature = 0, angle = 0, current = 0, amount = 0;
    bool point = false;
    constexpr bool operator==(const Dimension&) const = default;
    [[nodiscard]] constexpr bool is_ratio() const { return *this == Dimension{}; }
};

namespace detail {

template <class List>
struct Exponents;

template <>
struct Exponents<boost::units::dimensionless_type> {
    static constexpr void add(Dimension&) {}
};

template <class Base, class Exponent, class Next>
struct Exponents<boost::units::list<boost::units::dim<Base, Exponent>, Next>> {
    static constexpr void add(Dimension& to) {
        static_assert(Exponent::Denominator == 1, "a recorded quantity has whole exponents");
        constexpr auto n = static_cast<signed char>(Exponent::Numerator);
        if constexpr (std::same_as<Base, boost::units::length_base_dimension>) to.length = n;
        if constexpr (std::same_as<Base, boost::units::mass_base_dimension>) to.mass = n;
        if constexpr (std::same_as<Base, boost::units::time_base_dimension>) to.time = n;
        if constexpr (std::same_as<Base, boost::units::temperature_base_dimension>) to.temperature = n;
        if constexpr (std::same_as<Base, boost::units::plane_angle_base_dimension>) to.angle = n;
        if constexpr (std::same_as<Base, boost::units::current_base_dimension>) to.current = n;
        if constexpr (std::same_as<Base, boost::units::amount_base_dimension>) to.amount = n;
        Exponents<Next>::add(to);
    }
};

template <class Q>
struct DimensionOf;

template <std::floating_point T>
struct DimensionOf<T> {
    static constexpr Dimension value{};
};

template <class Unit>
struct DimensionOf<boost::units::quantity<Unit, double>> {
    static constexpr Dimension value = [] {
        Dimension result;
        Exponents<typename boost::units::get_dimension<Unit>::type>::add(result);
        return result;
    }();
};

template <>
struct DimensionOf<Temperature> {
    static constexpr Dimension value{.temperature = 1, .point = true};
};

}  // namespace detail

template <class Q>
inline constexpr Dimension dimension_of = detail::DimensionOf<Q>::value;

/// A quantity of any dimension, for printers and recorders: made from a typed quantity only.
class Value {
public:
    Value() = default;
    Value(double ratio) : si_(ratio) {}
    template <class Unit>
    Value(const boost::units::quantity<Unit, double>& q) : si_(q.value()), dimension_(dimension_of<boost::units::quantity<Unit, double>>) {}

    /// What the unit reader makes of a magnitude in SI base units once it has checked the dimension.
    [[nodiscard]] static Value of(double si, const Dimension& dimension) {
        Value result(si);
        result.dimension_ = dimension;
        return result;
    }

    /// Magnitude in SI base units.
    [[nodiscard]] double si() const { return si_; }
    [[nodiscard]] const Dimension& dimension() const { return dimension_; }

private:
    double si_ = 0.0;
    Dimension dimension_{};
};

}  // namespace faywright
