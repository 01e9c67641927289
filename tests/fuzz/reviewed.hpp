// SPDX-License-Identifier: MIT
#pragma once

#include "assess/substitute_list.hpp"
#include "fuzz.hpp"
#include "joint/joints.hpp"
#include "quantity/characters.hpp"
#include "report/substitution.hpp"

#include <algorithm>
#include <cstdlib>

/// What holds of every review, whatever is offered.
namespace fuzz {

inline faywright::Reviewer& reviewer() {
    using namespace faywright;
    static Reviewer made = [] {
        Diagnostics diagnostics;
        auto root = parse_toml(joint_tests::sound_lap, "joint.toml", diagnostics);
        auto out = root ? Reviewer::make({*root, built_in()}, diagnostics) : std::nullopt;
        if (!out) std::abort();
        return std::move(*out);
    }();
    return made;
}

inline void must_be_sound(const faywright::Substitution& review) {
    using namespace faywright;
    const auto weighs = [&](Weight weight) {
        return std::any_of(review.reasons.begin(), review.reasons.end(), [&](const Reason& r) { return r.weight == weight; });
    };
    if (review.reasons.empty()) std::abort();
    const auto wanted = weighs(Weight::refuse)    ? Verdict::refuse
                        : weighs(Weight::ask)     ? Verdict::ask
                        : !review.changes.empty() ? Verdict::accept_with_changes
                                                  : Verdict::accept;
    if (weighs(Weight::change) && wanted == Verdict::accept) std::abort();
    if (review.verdict != wanted) std::abort();
    // Nobody is told yes to what was not assessed, or fails, or wears out too soon.
    const bool yes = review.verdict == Verdict::accept || review.verdict == Verdict::accept_with_changes;
    if (yes && !(review.right && review.right->is_built() && review.right->holds && review.right->lasts)) std::abort();
    if (review.verdict == Verdict::ask && review.questions.empty()) std::abort();
    for (const auto& reason : review.reasons)
        if (!is_fit(reason.words) || (reason.weight == Weight::ask && reason.words.find('?') == std::string::npos)) std::abort();
}

}  // namespace fuzz
