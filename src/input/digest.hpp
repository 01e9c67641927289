// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>

namespace faywright {

/// SHA-256 of the bytes (FIPS 180-4) as 64 hexadecimal digits, as `sha256sum` prints it.
[[nodiscard]] std::string sha256_of(std::string_view bytes);

}  // namespace faywright
