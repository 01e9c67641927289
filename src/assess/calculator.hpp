// SPDX-License-Identifier: MIT
#pragma once

#include "input/listing.hpp"
#include "quantity/steps.hpp"

#include <string>
#include <vector>

/// Any calculator on its own, by name: what `calc` runs. A calculator needs nothing but its header; the
/// lists in calculators_*.cpp name it once.
namespace faywright {

struct Calculation {
    std::vector<NamedValue> inputs, results;
    std::vector<Step> steps;
    Source source;
    std::string outside_range;  ///< empty inside the formula's stated range
};

struct Calculator {
    Formula formula;
    std::vector<FieldHelp> (*fields)();
    /// Reads the inputs from a table and computes; nothing after an error.
    std::optional<Calculation> (*run)(const Node& inputs, Diagnostics& diagnostics);
};

/// All calculators, in the order in which a joint is worked.
[[nodiscard]] const std::vector<Calculator>& calculators();

[[nodiscard]] std::vector<Calculator> load_calculators();
[[nodiscard]] std::vector<Calculator> bolt_calculators();
[[nodiscard]] std::vector<Calculator> member_calculators();
[[nodiscard]] std::vector<Calculator> tube_calculators();
[[nodiscard]] std::vector<Calculator> atmosphere_calculators();
[[nodiscard]] std::vector<Calculator> galvanic_calculators();
[[nodiscard]] std::vector<Calculator> isolation_calculators();

}  // namespace faywright
