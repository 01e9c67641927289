// SPDX-License-Identifier: MIT
#include "command.hpp"
#include "progress.hpp"
#include "report/search.hpp"

#include <cmath>
#include <filesystem>
#include <map>
#include <memory>
#include <mutex>

namespace faywright::cli {

namespace {

/// Remembers what it has read; safe to call from several threads.
FileReader once_each(FileReader read) {
    if (!read) return {};
    struct Memory {
        std::mutex guard;
        std::map<std::string, std::optional<NamedText>> files;
    };
    return [read = std::move(read), memory = std::make_shared<Memory>()](const std::string& path) {
        const std::lock_guard lock(memory->guard);
        const auto [held, fresh] = memory->files.try_emplace(path);
        if (fresh) held->second = read(path);
        return held->second;
    };
}

/// The joint's tree for a file in another folder: the path of its trailer file starts from there.
Node moved(Node root, const std::string& from, const std::string& to) {
    for (auto& entry : root.entries)
        if (entry.key == "loads" && entry.value.kind == Node::Kind::string) {
            const auto file = std::filesystem::absolute(from).parent_path() / entry.value.text;
            entry.value.text = std::filesystem::proximate(file, std::filesystem::absolute(to).parent_path()).string();
        }
    return root;
}

}  // namespace

int size(const SizeOptions& options) {
    Diagnostics diagnostics;
    if (!std::isfinite(options.target)) complain(diagnostics, "number.range", "--target is no number");
    if (options.output == "-")
        complain(diagnostics, "size.output", "-o names the file of the chosen joint; the report stands on standard output already");
    if (diagnostics.any()) return refuse(diagnostics);
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
                          .threads = options.threads == 0 ? usable_threads() : options.threads,
                          .read_file = once_each(files_beside(options.input, options))};
    Progress progress;
    std::optional<SearchAnswer> found;
    {
        const Watch watch(progress, "searching");
        check_options(task, diagnostics);
        if (!diagnostics.any()) found = search(task, progress);
    }
    if (!found) return refuse(diagnostics);
    const auto& answer = *found;
    const Node* title = root->find("title");
    const auto told = options.format == Format::json ? search_json(task, answer, title->text) : search_text(task, answer, title->text);
    // The file asked for is the chosen joint; what is told goes to standard output.
    if (options.output && !answer.best.empty()) {
        const auto there = moved(*root, options.input, *options.output);
        const SearchTask written{there, choices, tables};
        if (const int status = deliver(variant_file(written, answer.best.front(), answer.own_tables), options, passed); status != passed)
            return status;
    }
    return deliver(told, {}, answer.best.empty() ? failed : passed);
}

}  // namespace faywright::cli
