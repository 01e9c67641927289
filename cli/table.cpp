// SPDX-License-Identifier: MIT
#include "command.hpp"
#include "report/tables.hpp"

#include <fmt/format.h>

namespace faywright::cli {

int table(const TableOptions& options) {
    Diagnostics diagnostics;
    const auto tables = load_tables(options.data, diagnostics);
    if (diagnostics.any()) return refuse(diagnostics);
    const bool json = options.format == Format::json;
    if (options.name.empty()) return deliver(json ? table_list_json(tables) : table_list_text(tables), options, passed);
    const auto text = json ? table_json(tables, options.name) : table_text(tables, options.name);
    if (!text) {
        std::vector<std::string> names;
        tables.each([&](std::string_view name, const auto&) { names.emplace_back(name); });
        complain(diagnostics, "name.unknown", "there is no table " + quoted_with_nearest(options.name, names),
                 fmt::format("tables: {}", fmt::join(names, ", ")));
        return refuse(diagnostics);
    }
    return deliver(*text, options, passed);
}

}  // namespace faywright::cli
