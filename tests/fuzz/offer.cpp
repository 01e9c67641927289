// SPDX-License-Identifier: MIT
// Any bytes as an offer file: what is refused is told, what is read is reviewed.
#include "reviewed.hpp"

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
    using namespace faywright;
    Diagnostics diagnostics;
    const auto root = parse_toml(fuzz::text_of(data, size), "fuzz.toml", diagnostics);
    auto offer = root ? read_offer(*root, fuzz::built_in(), diagnostics) : std::nullopt;
    if (!offer) {
        fuzz::must_be_told(diagnostics);
        return 0;
    }
    auto& reviewer = fuzz::reviewer();
    const auto review = reviewer.review(std::move(*offer));
    fuzz::must_be_sound(review);
    if (substitution_text(review, reviewer.joint(), {}).empty() || substitution_markdown(review, reviewer.joint(), {}).empty() ||
        substitution_json(review, reviewer.joint(), {}).empty())
        std::abort();
    return 0;
}
