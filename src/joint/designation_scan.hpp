// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/quantity.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// The text of a designation made even, and what can be told of it without knowing fasteners.
namespace faywright::designation {

/// A number with what stands around it.
struct Measure {
    enum class Unit { none, millimetre, centimetre, inch };
    double value = 0;
    std::string digits;  ///< as written, with a decimal point
    Unit unit = Unit::none;
    bool fraction = false;
    std::size_t end = 0;

    [[nodiscard]] Length inches() const { return mm(25.4 * value); }
    [[nodiscard]] Length length() const { return unit == Unit::inch ? inches() : unit == Unit::centimetre ? mm(10.0 * value) : mm(value); }
};

/// Lower case, one kind each of space, dash, quote and multiplication sign; every character knows where it comes from.
class EvenText {
public:
    explicit EvenText(std::string_view text);

    [[nodiscard]] std::size_t size() const { return even_.size(); }
    [[nodiscard]] char operator[](std::size_t at) const { return at < even_.size() ? even_[at] : '\0'; }
    /// The same stretch of the text as written, fit to be shown.
    [[nodiscard]] std::string written(std::size_t from, std::size_t to) const;

    [[nodiscard]] bool digit(std::size_t at) const { return (*this)[at] >= '0' && (*this)[at] <= '9'; }
    /// Letter, digit or any character that is no sign: a word goes on there.
    [[nodiscard]] bool goes_on(std::size_t at) const;
    [[nodiscard]] std::size_t after_spaces(std::size_t at) const;

    /// End of the words at `at`, or 0. A space in the words is any number of spaces, dashes, points and underscores. `open`: a word may
    /// go on behind.
    [[nodiscard]] std::size_t words(std::size_t at, std::string_view words, bool open = false) const;
    /// End of "x", "*" or "by" with spaces about it, or 0.
    [[nodiscard]] std::size_t by(std::size_t at) const;
    /// "140", "1.25", "1,25", "5-1/2", "3/8", ".5", with "mm", "in" or an inch mark if there is one. "in" behind a space is a unit only
    /// where `inches` are expected.
    [[nodiscard]] std::optional<Measure> measure(std::size_t at, bool inches = false) const;
    /// "12", "2.5", "1,25".
    [[nodiscard]] std::optional<Measure> decimal(std::size_t at) const;
    /// A whole number without sign, point or fraction.
    [[nodiscard]] std::optional<Measure> whole(std::size_t at) const;

private:
    [[nodiscard]] std::optional<Measure> proper_fraction(std::size_t at) const;
    void read_unit(Measure& measure, bool inches) const;

    std::string_view text_;
    std::string even_;
    std::vector<std::size_t> from_;  ///< place in the text of every character of `even_`, and of the end
};

}  // namespace faywright::designation
