// SPDX-License-Identifier: MIT
// Any bytes as a designation: no crash, words fit to be shown, a length of a bolt or none.
#include "joint/designation.hpp"

#include "fuzz.hpp"
#include "quantity/characters.hpp"

#include <cstdlib>

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
    using namespace faywright;
    const auto read = read_designation(fuzz::text_of(data, size), fuzz::built_in());
    const auto must = [](bool right) {
        if (!right) std::abort();
    };
    for (const auto& each : read.understood) must(is_fit(each.token) && !each.meaning.empty());
    for (const auto& each : read.unknown) must(is_fit(each.token) && is_fit(each.nearest));
    for (const auto& each : read.asked) must(is_fit(each.text) && each.text.ends_with('?'));
    const auto& offer = read.offer;
    must(!offer.length || (*offer.length >= mm(5) && *offer.length <= mm(1000)));
    must(!offer.finish || fuzz::built_in().of<Finish>().find(*offer.finish) != nullptr);
    must(!offer.standard || fuzz::built_in().of<ProductStandard>().find(*offer.standard) != nullptr);
    return 0;
}
