// SPDX-License-Identifier: MIT
#include "command.hpp"
#include "joint/resolve.hpp"
#include "report/isolation.hpp"

namespace faywright::cli {

int isolate(const IsolateOptions& options) {
    Diagnostics diagnostics;
    const auto tables = load_tables(options.data, diagnostics);
    if (diagnostics.any()) return refuse(diagnostics);
    std::string name;
    const auto text = read_input(options.input, name, diagnostics);
    if (!text) return refuse(diagnostics);
    auto exposures = exposures_named(options.exposures, tables, options, diagnostics);
    const auto root = parse_toml(*text, name, diagnostics);
    if (!root) return refuse(diagnostics);
    const IsolationTask task{*root, tables, std::move(exposures), files_beside(options.input, options)};
    const auto ranking = rank_isolation(task, diagnostics);
    if (!ranking || diagnostics.any()) return refuse(diagnostics);
    const auto extent = options.all ? RankingExtent::all : RankingExtent::of_each_faying;
    const int status = ranking->best().passes ? passed : failed;
    switch (options.format) {
        case Format::json: return deliver(ranking_json(*ranking, extent), options, status);
        case Format::csv: return deliver(ranking_csv(*ranking, extent), options, status);
        case Format::markdown: return deliver(ranking_markdown(*ranking, extent), options, status);
        case Format::text: break;
    }
    return deliver(ranking_text(*ranking, extent), options, status);
}

}  // namespace faywright::cli
