// SPDX-License-Identifier: MIT
#pragma once

#include "tables/table.hpp"

#include <string>

namespace faywright {

/// A sentence of a sheet, and what it stands on: the row of a table that says it, or practice of the trade.
struct Statement {
    std::string words;
    RowSource source = {};  ///< without a document: practice
};

}  // namespace faywright
