// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/characters.hpp"

#include <string>
#include <string_view>

/// Laying out plain text for a terminal of 80 columns, and making text safe for other forms.
namespace faywright {

inline constexpr std::size_t page_width = 80;

/// The text filled with spaces to the width; longer text is cut with "..".
[[nodiscard]] std::string fitted(std::string_view text, std::size_t width);
/// The same, aligned to the right.
[[nodiscard]] std::string fitted_right(std::string_view text, std::size_t width);

/// Paragraph broken between words to the page width. `first` begins the first line, `rest` the others. A word too long
/// for the line is broken after an operator or, failing that, where the line ends.
[[nodiscard]] std::string wrapped(std::string_view text, std::string_view first = "", std::string_view rest = "",
                                  std::size_t width = page_width);

/// A cell of a comma separated line: always quoted, and never a formula.
[[nodiscard]] std::string csv_cell(std::string text);

/// Text that Markdown shows as it is.
[[nodiscard]] std::string markdown_text(std::string_view text);

/// A line of a list: the label in its column, the value beside it.
[[nodiscard]] std::string labelled(std::string_view label, std::string_view value);

}  // namespace faywright
