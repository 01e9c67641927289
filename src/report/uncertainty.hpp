// SPDX-License-Identifier: MIT
#pragma once

#include "assess/uncertainty.hpp"

#include <string>

namespace faywright {

/// The sampling for a terminal, to stand below the assessment: how likely, how much, why, from which inputs.
[[nodiscard]] std::string uncertainty_text(const Uncertainty& uncertainty);

/// The assessment for programs with the sampling under "uncertainty".
[[nodiscard]] std::string assessment_json(const Assessment& assessment, const Uncertainty& uncertainty);

}  // namespace faywright
