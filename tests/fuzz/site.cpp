// SPDX-License-Identifier: MIT
// Any bytes as a site file: a diagnostic or an atmosphere of finite rates, and an outlook of a joint there.
#include "fuzz.hpp"
#include "report/corrosion.hpp"

#include <cmath>
#include <cstdlib>
#include <fstream>
#include <iterator>

namespace {

const faywright::Joint& demo_joint() {
    using namespace faywright;
    static const Joint joint = [] {
        std::ifstream file("cli/demo/drawbar.toml");
        Diagnostics diagnostics;
        return read_joint({std::istreambuf_iterator<char>(file), {}}, "drawbar.toml", fuzz::built_in(), diagnostics).value();
    }();
    return joint;
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
    using namespace faywright;
    Diagnostics diagnostics;
    const auto site = read_site(fuzz::text_of(data, size), "fuzz.toml", diagnostics);
    if (!site) {
        fuzz::must_be_told(diagnostics);
        return 0;
    }
    Place place(*site, fuzz::built_in());
    const auto outlook = outlook_in(demo_joint(), place, fuzz::built_in());
    for (const auto& m : outlook.members)
        for (const double number : {in_um_per_a(m.total.low), in_um_per_a(m.total.rate), in_um_per_a(m.total.high), in_years(m.life_low),
                                    in_years(m.life), in_years(m.life_high)})
            if (!std::isfinite(number) || number < 0.0) std::abort();
    if (exposure_text(outlook, years(20)).empty()) std::abort();
    return 0;
}
