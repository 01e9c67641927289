// SPDX-License-Identifier: MIT
#pragma once

#include <string_view>

namespace faywright {

/// data/<table>.toml as it was read and checked when the program was built, packed; empty if there is no such table.
[[nodiscard]] std::string_view embedded_table(std::string_view table);

}  // namespace faywright
