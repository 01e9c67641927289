// SPDX-License-Identifier: MIT
#pragma once

#include "assess/couples.hpp"

#include <string>

namespace faywright {

/// One metal against the others, by category C2 to CX: what an unnamed place may do.
[[nodiscard]] std::string couples_by_category_text(const Tables& tables, const Row<Metal>& metal, const Row<IsolationElement>* isolation,
                                                   double area_ratio);
/// One metal against the others in one exposure, with what is published beside it.
[[nodiscard]] std::string couples_text(const CouplesTask& task, const Row<Metal>& metal);
/// Every metal against every other in one exposure, by the number of the step.
[[nodiscard]] std::string couples_matrix_text(const CouplesTask& task);
/// How one cell came about.
[[nodiscard]] std::string couple_explanation_text(const CouplesTask& task, const Row<Metal>& a, const Row<Metal>& b);

[[nodiscard]] std::string couples_json(const CouplesTask& task, const Row<Metal>& metal);
[[nodiscard]] std::string couples_matrix_json(const CouplesTask& task);
[[nodiscard]] std::string couple_explanation_json(const CouplesTask& task, const Row<Metal>& a, const Row<Metal>& b);

}  // namespace faywright
