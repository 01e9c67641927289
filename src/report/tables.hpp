// SPDX-License-Identifier: MIT
#pragma once

#include "tables/tables.hpp"

#include <optional>
#include <string>

namespace faywright {

/// The names of the tables with their row counts and how many rows stand on which basis.
[[nodiscard]] std::string table_list_text(const Tables& tables);
[[nodiscard]] std::string table_list_json(const Tables& tables);

/// Every row of a table, or the row of that name only, with its source and the source of each value that has its own.
/// Nothing if there is no such table.
[[nodiscard]] std::optional<std::string> table_text(const Tables& tables, const std::string& name);
[[nodiscard]] std::optional<std::string> table_json(const Tables& tables, const std::string& name);

}  // namespace faywright
