// SPDX-License-Identifier: MIT
#include "command.hpp"
#include "quantity/text.hpp"
#include "report/assessment.hpp"
#include "report/corrosion.hpp"
#include "report/uncertainty.hpp"

#include <fmt/format.h>

#include <memory>

namespace faywright::cli {

int check(const CheckOptions& options) {
    Diagnostics diagnostics;
    if (options.input.empty()) {
        complain(diagnostics, "file.missing", "check wants the path of a joint file, or - for standard input", "faywright check --help");
        return refuse(diagnostics);
    }
    const auto sampling = sampling_of(options.sampling, diagnostics);
    if (diagnostics.any()) return refuse(diagnostics);
    const auto tables = load_tables(options.data, diagnostics);
    if (diagnostics.any()) return refuse(diagnostics);
    const auto joint = joint_named(options, tables, diagnostics);
    if (!joint) return refuse(diagnostics);
    const auto assessment = std::make_unique<Assessment>();
    assess(*joint, *assessment);
    add_outlook(tables, *assessment);
    const bool json = options.format == Format::json;
    const int status = assessment->passes ? passed : failed;
    if (options.sampling.uncertainty) {
        const auto told = sampled(*assessment, sampling);
        return deliver(
            json ? assessment_json(*assessment, told) : assessment_text(*assessment, may_color(options)) + uncertainty_text(told), options,
            status);
    }
    if (!options.explain)
        return deliver(json ? assessment_json(*assessment) : assessment_text(*assessment, may_color(options)), options, status);
    if (*options.explain == "corrosion") {
        if (joint->surroundings.exposures.empty()) {
            complain(diagnostics, "key.missing", "corrosion is not assessed: the joint file names no exposures under [corrosion]",
                     "faywright table exposures lists them");
            return refuse(diagnostics);
        }
        return deliver(json ? corrosion_explanation_json(*joint, tables) : corrosion_explanation_text(*joint, tables), options, status);
    }
    const auto explanation = json ? explanation_json(*assessment, *options.explain) : explanation_text(*assessment, *options.explain);
    if (!explanation) {
        std::vector<std::string> words(explained_topics.begin(), explained_topics.end());
        words.emplace_back("corrosion");
        for (const auto* info : all_checks()) words.emplace_back(info->id);
        complain(diagnostics, "name.unknown", "there is no check " + quoted_with_nearest(*options.explain, words),
                 fmt::format("known: {}", fmt::join(words, ", ")));
        return refuse(diagnostics);
    }
    return deliver(*explanation, options, status);
}

}  // namespace faywright::cli
