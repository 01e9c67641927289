// SPDX-License-Identifier: MIT
#pragma once

#include "assess/uncertainty.hpp"

#include <string>

namespace faywright {

/// "0.12 %, from 0.1 % to 0.14 %", or why nothing is told.
[[nodiscard]] std::string likelihood_text(const EventTold& event);

/// "normal, mean 400 MPa, standard deviation 12 MPa".
[[nodiscard]] std::string distribution_text(const InputTold& input);

/// The sampling for a terminal, to stand below the assessment: how likely, how much, why, from which inputs.
[[nodiscard]] std::string uncertainty_text(const Uncertainty& uncertainty);

/// The assessment for programs with the sampling under "uncertainty".
[[nodiscard]] std::string assessment_json(const Assessment& assessment, const Uncertainty& uncertainty);

}  // namespace faywright
