// SPDX-License-Identifier: MIT
// Any bytes as a trailer file: a diagnostic or loads that balance, never a crash, never a number that is none.
#include "fuzz.hpp"
#include "report/loads.hpp"

#include <cmath>
#include <cstdlib>

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
    using namespace faywright;
    Diagnostics diagnostics;
    const auto loads = read_trailer(fuzz::text_of(data, size), "fuzz.toml", fuzz::built_in(), diagnostics);
    if (!loads) {
        fuzz::must_be_told(diagnostics);
        return 0;
    }
    for (const auto& joint : loads->joints)
        for (const auto& each : joint.cases)
            for (const auto& force : {each.load_case.force.x, each.load_case.force.y, each.load_case.force.z})
                if (!std::isfinite(in_N(force))) std::abort();
    for (const auto& each : loads->coupling)
        if (!(in_N(magnitude(resultant(each.free_body).force)) < 1e-3)) std::abort();
    if (loads_text(*loads).empty() || loads_json(*loads).empty()) std::abort();
    return 0;
}
