// SPDX-License-Identifier: MIT
#include "command.hpp"
#include "progress.hpp"
#include "report/search.hpp"

#include <fmt/format.h>

namespace faywright::cli {

int size(const SizeOptions& options) {
    Diagnostics diagnostics;
    const auto tables = load_tables(options.data, diagnostics);
    if (diagnostics.any()) return refuse(diagnostics);
    std::string name;
    const auto text = read_input(options.input, name, diagnostics);
    if (!text) return refuse(diagnostics);
    const auto root = parse_toml(*text, name, diagnostics);
    if (!root) return refuse(diagnostics);
    const auto choices = read_choices(*root, diagnostics);
    if (diagnostics.any()) return refuse(diagnostics);
    const SearchTask task{.root = *root,
                          .choices = choices,
                          .tables = tables,
                          .objective = options.objective,
                          .target = options.target,
                          .best = options.best,
                          .quick = options.quick,
                          .threads = options.threads == 0 ? usable_threads() : options.threads};
    check_options(task, diagnostics);
    if (diagnostics.any()) return refuse(diagnostics);
    Progress progress;
    const auto answer = [&] {
        const Watch watch(progress, "searching");
        return search(task, progress);
    }();
    const Node* title = root->find("title");
    const auto told = options.format == Format::json ? search_json(task, answer, title->text) : search_text(task, answer, title->text);
    // The file asked for is the chosen joint; what is told goes to standard output.
    if (options.output && !answer.best.empty())
        if (const int status = deliver(variant_file(task, answer.best.front()), options, passed); status != passed) return status;
    return deliver(told, {}, answer.best.empty() ? failed : passed);
}

}  // namespace faywright::cli
