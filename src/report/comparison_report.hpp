// SPDX-License-Identifier: MIT
#pragma once

#include "assess/comparison.hpp"
#include "assess/substitute.hpp"
#include "report/page.hpp"

namespace faywright {

struct ComparedSide {
    std::string name;  ///< "drawbar.toml", "as specified"
    const Assessment& assessment;
};

/// Two joints, or one joint with a specified and an offered part.
struct ComparisonMatter {
    ComparedSide before, after;
    std::vector<ChangedField> fields;      ///< of two joint files
    const Substitution* review = nullptr;  ///< of an offered part
    Identification identification;
};

/// What changed, and what it did to each check, to the clamp and to what is used up.
[[nodiscard]] Page comparison_report(const ComparisonMatter& matter);

/// A review whose part cannot be built into the joint at all: what changed and why it is refused; there is nothing to compare.
[[nodiscard]] Page refused_offer_report(const Substitution& review, const std::string& title, const Identification& identification);

}  // namespace faywright
