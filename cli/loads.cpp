// SPDX-License-Identifier: MIT
#include "report/loads.hpp"
#include "command.hpp"

namespace faywright::cli {

int loads(const LoadsOptions& options) {
    Diagnostics diagnostics;
    const auto tables = load_tables(options.data, diagnostics);
    if (diagnostics.any()) return refuse(diagnostics);
    std::string name;
    const auto text = read_input(options.input, name, diagnostics);
    if (!text) return refuse(diagnostics);
    const auto trailer = read_trailer(*text, name, tables, diagnostics);
    if (!trailer) return refuse(diagnostics);
    return deliver(options.format == Format::json ? loads_json(*trailer) : loads_text(*trailer), options, passed);
}

}  // namespace faywright::cli
