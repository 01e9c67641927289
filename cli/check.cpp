// SPDX-License-Identifier: MIT
#include "command.hpp"
#include "progress.hpp"
#include "quantity/text.hpp"
#include "report/assessment.hpp"
#include "report/corrosion.hpp"
#include "report/uncertainty.hpp"

#include <fmt/format.h>

#include <cmath>
#include <memory>

namespace faywright::cli {

namespace {

/// A whole number of the command line, or `usual` where none is given.
std::uint64_t whole(const char* option, const std::optional<std::string>& given, std::uint64_t usual, std::uint64_t least,
                    std::uint64_t most, Diagnostics& diagnostics) {
    if (!given) return usual;
    const auto value = read_quantity<double>(*given);
    if (!value)
        complain(diagnostics, "unit.dimension", fmt::format("{} {}", option, value.error()));
    else if (*value != std::floor(*value) || *value < static_cast<double>(least) || *value > static_cast<double>(most))
        complain(diagnostics, "number.range",
                 fmt::format("{} is {}; a whole number, at least {} and at most {}, is accepted", option, print_number(*value, 12), least,
                             most));
    else
        return static_cast<std::uint64_t>(*value);
    return usual;
}

Uncertainty sampled(const Assessment& assessment, const Sampling& sampling) {
    UncertaintySettings settings;
    settings.sampling = sampling;
    Progress progress;
    const Watch watch(progress, "drawing joints");
    return uncertainty(assessment, settings, progress);
}

}  // namespace

int check(const CheckOptions& options) {
    Diagnostics diagnostics;
    if (options.input.empty()) {
        complain(diagnostics, "file.missing", "check wants the path of a joint file, or - for standard input", "faywright check --help");
        return refuse(diagnostics);
    }
    const Sampling sampling{.samples = whole("--samples", options.samples, 100000, 100, 100000000, diagnostics),
                            .seed = whole("--seed", options.seed, 1, 0, 1000000000000000, diagnostics),
                            .threads = static_cast<unsigned>(whole("--threads", options.threads, usable_threads(), 1, 256, diagnostics))};
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
    if (options.uncertainty) {
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
