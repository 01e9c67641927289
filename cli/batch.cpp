// SPDX-License-Identifier: MIT
#include "command.hpp"
#include "quantity/characters.hpp"
#include "report/assessment.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <iostream>
#include <memory>

namespace faywright::cli {

namespace {

/// One line of a batch: its JSON line, and the exit status it alone would give.
std::pair<std::string, int> batch_line(const std::string& text, std::size_t number, const CheckOptions& options, const Tables& tables,
                                       Assessment& assessment) {
    Diagnostics diagnostics;
    auto input = text;
    std::optional<Joint> joint;
    if (text.front() == '{') {
        input = fmt::format("line {}", number);
        const TextPosition place{std::make_shared<const std::string>(input)};
        if (const auto root = parse_json(text, place, diagnostics); root) joint = read_joint(*root, tables, diagnostics);
    } else if (text == "-") {
        complain(diagnostics, "file.unreadable", "a line of a batch is the path of a file, not standard input again");
    } else if (const auto file = read_input(text, input, diagnostics); file) {
        joint = read_joint(*file, text, tables, diagnostics, files_beside(text, options));
    }
    if (!joint) return {errors_line(diagnostics, input), unusable};
    assess(*joint, assessment);
    add_outlook(tables, assessment);
    return {assessment_line(assessment, input), assessment.passes ? passed : failed};
}

}  // namespace

int check_batch(const CheckOptions& options) {
    Diagnostics diagnostics;
    if (!options.input.empty() || options.explain || options.sampling.uncertainty || options.output)
        complain(diagnostics, "batch.options",
                 "--batch reads its joints from standard input and writes to standard output: no file, --explain, --uncertainty or -o");
    const auto tables = load_tables(options.data, diagnostics);
    if (diagnostics.any()) return refuse(diagnostics);
    const auto assessment = std::make_unique<Assessment>();
    int status = passed;
    std::string text;
    bool any = false;
    for (std::size_t number = 1; std::getline(std::cin, text); ++number) {
        if (number == 1 && text.compare(0, 3, "\xef\xbb\xbf") == 0) text.erase(0, 3);
        text.erase(0, std::min(text.find_first_not_of(" \t"), text.size()));
        while (!text.empty() && std::string_view(" \t\r").find(text.back()) != std::string_view::npos) text.pop_back();
        if (is_blank(text)) continue;
        any = true;
        const auto [line, own] = batch_line(text, number, options, tables, *assessment);
        status = std::max(status, own);
        if (const int sent = deliver(line, {}, passed); sent != passed) return sent;
    }
    if (any) return status;
    complain(diagnostics, "batch.empty", "standard input holds no line with a joint");
    return refuse(diagnostics);
}

}  // namespace faywright::cli
