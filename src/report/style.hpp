// SPDX-License-Identifier: MIT
#pragma once

#include <string_view>

namespace faywright {

/// reports/style.css, as it was when the program was built.
[[nodiscard]] std::string_view style_sheet();

}  // namespace faywright
