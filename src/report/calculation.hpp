// SPDX-License-Identifier: MIT
#pragma once

#include "assess/calculator.hpp"

#include <string>

namespace faywright {

/// One calculator's answer with its steps and source.
[[nodiscard]] std::string calculation_text(const Calculator& calculator, const Calculation& calculation);
[[nodiscard]] std::string calculation_json(const Calculator& calculator, const Calculation& calculation);

/// Keys, units, ranges and defaults of one calculator.
[[nodiscard]] std::string calculator_help(const Calculator& calculator);
[[nodiscard]] std::string calculator_help_json(const Calculator& calculator);
/// The list of all calculators, a line each.
[[nodiscard]] std::string calculator_list();
[[nodiscard]] std::string calculator_list_json();

}  // namespace faywright
