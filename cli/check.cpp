// SPDX-License-Identifier: MIT
#include "command.hpp"
#include "report/assessment.hpp"

#include <fmt/format.h>

#include <memory>

namespace faywright::cli {

int check(const CheckOptions& options) {
    Diagnostics diagnostics;
    const auto tables = load_tables(options.data, diagnostics);
    if (diagnostics.any()) return refuse(diagnostics);
    std::string name;
    const auto text = read_input(options.input, name, diagnostics);
    if (!text) return refuse(diagnostics);
    // Paths in a joint file start from its folder; standard input has none.
    const auto beside = [&](const std::string& path) -> std::optional<NamedText> {
        NamedText file;
        Diagnostics unreadable;
        auto read = read_input((std::filesystem::path(options.input).parent_path() / path).string(), file.name, unreadable);
        if (!read) return std::nullopt;
        file.text = std::move(*read);
        return file;
    };
    const auto joint = read_joint(*text, name, tables, diagnostics, options.input == "-" ? FileReader{} : FileReader(beside));
    if (!joint) return refuse(diagnostics);
    const auto assessment = std::make_unique<Assessment>();
    assess(*joint, *assessment);
    const bool json = options.format == Format::json;
    const int status = assessment->passes ? passed : failed;
    if (!options.explain)
        return deliver(json ? assessment_json(*assessment) : assessment_text(*assessment, may_color(options)), options, status);
    const auto explanation = json ? explanation_json(*assessment, *options.explain) : explanation_text(*assessment, *options.explain);
    if (!explanation) {
        std::vector<std::string> words(explained_topics.begin(), explained_topics.end());
        for (const auto* info : all_checks()) words.emplace_back(info->id);
        complain(diagnostics, "name.unknown", "there is no check " + quoted_with_nearest(*options.explain, words),
                 fmt::format("known: {}", fmt::join(words, ", ")));
        return refuse(diagnostics);
    }
    return deliver(*explanation, options, status);
}

}  // namespace faywright::cli
