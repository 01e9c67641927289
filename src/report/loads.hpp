// SPDX-License-Identifier: MIT
#pragma once

#include "joint/trailer.hpp"

#include <string>

namespace faywright {

/// A trailer's loads for a terminal: equilibrium first, then coupling values, cases at the coupling, and each joint's load cases as blocks
/// ready for a joint file.
[[nodiscard]] std::string loads_text(const TrailerLoads& loads);
[[nodiscard]] std::string loads_json(const TrailerLoads& loads);

}  // namespace faywright
