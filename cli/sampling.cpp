// SPDX-License-Identifier: MIT
#include "command.hpp"
#include "progress.hpp"
#include "quantity/text.hpp"

#include <fmt/format.h>

#include <cmath>

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
}  // namespace

Sampling sampling_of(const SamplingOptions& options, Diagnostics& diagnostics) {
    return {.samples = whole("--samples", options.samples, 100000, 100, 100000000, diagnostics),
            .seed = whole("--seed", options.seed, 1, 0, 1000000000000000, diagnostics),
            .threads = static_cast<unsigned>(whole("--threads", options.threads, usable_threads(), 1, 256, diagnostics))};
}

Uncertainty sampled(const Assessment& assessment, const Sampling& sampling) {
    UncertaintySettings settings;
    settings.sampling = sampling;
    Progress progress;
    const Watch watch(progress, "drawing joints");
    return uncertainty(assessment, settings, progress);
}

}  // namespace faywright::cli
