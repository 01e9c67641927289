// SPDX-License-Identifier: MIT
#pragma once

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace faywright {

/// The candidate closest in spelling to `word`, or "" when none is near enough to be a slip of the fingers.
[[nodiscard]] std::string nearest(std::string_view word, std::span<const std::string> candidates);

/// `the nearest is "words"`, or empty: what a label beside a misspelt name says.
[[nodiscard]] std::string nearest_label(std::string_view word, std::span<const std::string> candidates);

/// `"word"; the nearest is "words"`: what was written, as far as it may be shown, and the nearest candidate if there is one.
[[nodiscard]] std::string quoted_with_nearest(std::string_view word, std::span<const std::string> candidates);

/// The candidates that contain every word of `text`, whatever case, spaces and hyphens: at most eight.
[[nodiscard]] std::vector<std::string> containing(std::string_view text, std::span<const std::string> candidates);

}  // namespace faywright
