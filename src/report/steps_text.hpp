// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <string>
#include <vector>

namespace faywright {

/// "EN 1993-1-8, 2005, Table 3.4".
[[nodiscard]] std::string citation(const Source& source);

/// "EN 1993-1-8, 2005, Table 3.4 (published)".
[[nodiscard]] std::string source_text(const Source& source);

/// A derivation line by line: symbol = formula = substituted = value, within 80 columns.
[[nodiscard]] std::string steps_text(const std::vector<Step>& steps);

}  // namespace faywright
