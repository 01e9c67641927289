// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>

namespace faywright {

/// The text with the units that stand after numbers as books write them: "120 N*m" becomes "120 N·m", "40 um" "40 µm", "+- 0.2" "± 0.2".
/// For our own words only: a name from a file stays as it was written.
[[nodiscard]] std::string typographic(std::string_view text);

}  // namespace faywright
