// SPDX-License-Identifier: MIT
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace faywright {

/// The candidate closest in spelling to `word`, or "" when none is near enough to be a slip of the fingers.
[[nodiscard]] std::string nearest(std::string_view word, std::span<const std::string> candidates);

}  // namespace faywright
