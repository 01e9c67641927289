// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/value.hpp"

#include <tl/expected.hpp>

#include <string>
#include <string_view>

/// Reading and printing of values with units.
namespace faywright {

/// A number with the given significant digits, without exponent between 1e-4 and 1e7; same bytes everywhere.
[[nodiscard]] std::string print_number(double number, int significant = 4);

/// A number and the unit it is counted in.
struct Printed {
    double number;
    std::string unit;  ///< empty for a ratio
};

/// The value in the unit people use for its dimension: mm, kN or N, N*m, MPa, degC, ...
[[nodiscard]] Printed in_customary_unit(const Value& value);

/// The value in the unit `like` prints in; both must have the same dimension.
[[nodiscard]] Printed in_unit_of(const Value& value, const Value& like);

/// For example "13.4 kN"; a ratio prints without unit.
[[nodiscard]] std::string print(const Value& value, int significant = 4);

/// "length", "force", ...: the name of a dimension for messages.
[[nodiscard]] std::string_view dimension_name(const Dimension& dimension);
/// "16 mm", "70 kN", ...: what a person could have typed.
[[nodiscard]] std::string_view dimension_example(const Dimension& dimension);

/// "a length is wanted, for example \"16 mm\"".
[[nodiscard]] std::string wanted_phrase(const Dimension& wanted);

/// Reads "16 mm", "63 lbf*ft", "-15 K", "20 degC" as a value of the wanted dimension.
/// The error is a phrase: what was found and what would be accepted.
[[nodiscard]] tl::expected<Value, std::string> read_value(std::string_view text, const Dimension& wanted);

template <class Q>
[[nodiscard]] tl::expected<Q, std::string> read_quantity(std::string_view text) {
    auto value = read_value(text, dimension_of<Q>);
    if (!value) return tl::make_unexpected(value.error());
    if constexpr (std::same_as<Q, double>)
        return value->si();
    else
        return Q::from_value(value->si());
}

}  // namespace faywright
