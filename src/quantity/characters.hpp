// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

/// Text as people wrote it: UTF-8, and what of it may be shown on a terminal or in a document.
namespace faywright {

/// Length of the well-formed UTF-8 sequence at `at`, or 0.
[[nodiscard]] std::size_t sequence_length(std::string_view text, std::size_t at);

/// The code point of the well-formed UTF-8 sequence of `length` bytes at `at`.
[[nodiscard]] char32_t code_point(std::string_view text, std::size_t at, std::size_t length);

/// Letters A to Z in lower case; whatever else stays.
[[nodiscard]] std::string lowered(std::string text);

/// The same in upper case.
[[nodiscard]] std::string raised(std::string text);

/// A byte that goes on with the character before it.
[[nodiscard]] constexpr bool continues_character(char c) { return (static_cast<unsigned char>(c) & 0xc0U) == 0x80U; }

/// Bytes of the first `characters` characters.
[[nodiscard]] std::size_t bytes_of(std::string_view text, std::size_t characters);

/// Characters of the text; each is taken as one column wide.
[[nodiscard]] std::size_t display_width(std::string_view text);

/// What is wrong with the character of `length` bytes at `at`, as a phrase; nullptr where it may be shown. Control characters and
/// those that are not seen themselves but turn or hide what is seen may not.
[[nodiscard]] const char* unfit(std::string_view text, std::size_t at, std::size_t length);

/// Whether anything of the text is unfit to be shown, or not UTF-8.
[[nodiscard]] bool is_fit(std::string_view text);

/// Whether there is nothing to be seen: empty, or spaces of whatever kind.
[[nodiscard]] bool is_blank(std::string_view text);

/// The text for a message: no more than `most` characters, and a question mark for each that may not be shown.
[[nodiscard]] std::string shown(std::string_view text, std::size_t most = 60);

}  // namespace faywright
