// SPDX-License-Identifier: MIT
#pragma once

#include "assess/assessment.hpp"

#include <string>

namespace faywright {

/// The parts of `joints` equal joints, comma separated, a line each with quantity, designation, finish, mass and, where the table prices
/// has it, price. Cells are quoted, and none is a formula. The rail itself is not among them.
[[nodiscard]] std::string parts_list_csv(const Assessment& assessment, const Tables& tables, int joints);

}  // namespace faywright
