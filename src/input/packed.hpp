// SPDX-License-Identifier: MIT
#pragma once

#include "input/node.hpp"

#include <string>
#include <string_view>

namespace faywright {

/// A node tree as bytes, so that a table parsed when the program is built need not be parsed when it runs.
[[nodiscard]] std::string packed(const Node& node);

/// The tree again, every place in `file`. The bytes must be those `packed` made, on a machine of the same kind.
[[nodiscard]] Node unpacked(std::string_view bytes, const std::string& file);

}  // namespace faywright
