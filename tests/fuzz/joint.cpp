// SPDX-License-Identifier: MIT
// Any bytes as a joint file: a diagnostic or an assessment, never a crash, never a number that is none.
#include "assess/assessment.hpp"
#include "fuzz.hpp"
#include "report/assessment.hpp"

#include <cmath>
#include <cstdlib>
#include <memory>

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
    using namespace faywright;
    Diagnostics diagnostics;
    const auto joint = read_joint(fuzz::text_of(data, size), "fuzz.toml", fuzz::built_in(), diagnostics);
    if (!joint) {
        fuzz::must_be_told(diagnostics);
        return 0;
    }
    const auto assessment = std::make_unique<Assessment>();
    assess(*joint, *assessment);
    for (const auto& result : assessment->checks())
        if (result.outcome.applicable && !(std::isfinite(result.outcome.utilisation) && std::isfinite(result.outcome.demand().si()) &&
                                           std::isfinite(result.outcome.resistance().si())))
            std::abort();
    if (assessment_text(*assessment, false).empty() || assessment_json(*assessment).empty()) std::abort();
    return 0;
}
