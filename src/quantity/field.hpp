// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <string_view>
#include <utility>

/// One description of a record's fields serves its reader, its help, its printers and its tests.
///
/// A record offers `template <class Visit, class Self> static void describe(Visit&& field, Self& self)`
/// and calls `field` once for each member:
///   field(Name{"key", "symbol", "meaning"}, self.member, Range{least, most});              required
///   field(Name{...}, self.member, Range{least, most}, defaulted);     the member's initial value serves
/// Members that are no number take no range; a `std::optional` member may be absent.
namespace faywright {

struct Name {
    const char* key;      ///< kebab-case word in files and on the command line
    const char* symbol;   ///< C++ identifier of the symbol in the formula, or "" where there is none
    const char* meaning;  ///< what it is, in the words of the field
};

/// Accepted values, both ends included.
template <class T>
struct Range {
    T least;
    T most;
};
template <class T>
Range(T, T) -> Range<T>;

struct Defaulted {};
/// Marks a field whose initial value serves when the file does not give one.
inline constexpr Defaulted defaulted{};

/// The words of an enumeration: specialise with `static constexpr std::array<std::pair<E, std::string_view>, N> all`.
template <class E>
struct Words;

template <class E>
[[nodiscard]] constexpr std::string_view word_of(E value) {
    for (const auto& [candidate, text] : Words<E>::all)
        if (candidate == value) return text;
    return "";
}

}  // namespace faywright
