// SPDX-License-Identifier: MIT
#pragma once

#include "assess/substitute.hpp"
#include "joint/offer_list.hpp"

#include <optional>
#include <string>
#include <vector>

/// A supplier's list, reviewed row by row.
namespace faywright {

/// A row of a supplier's list, reviewed or not to be read.
struct ReviewedRow {
    const OfferRow* row = nullptr;
    std::vector<OfferProblem> problems;  ///< what cannot be read of it
    std::optional<Substitution> review;  ///< nothing where it cannot be read
};

/// A supplier's list reviewed: what can be read comes first, the best of it at the top.
struct ReviewedList {
    std::string title;                 ///< of the joint
    std::vector<OfferProblem> header;  ///< columns passed over
    std::vector<ReviewedRow> rows;
    std::vector<std::string> warnings;

    /// Whether any of it may be used.
    [[nodiscard]] bool has_usable() const;
};

/// Reviews every row that can be read: those to be accepted first, each kind by the least changes, then the least utilisation. List and
/// what the reviewer stands on must outlive the answer.
[[nodiscard]] ReviewedList review_list(const OfferList& list, Reviewer& reviewer, const Tables& tables);

}  // namespace faywright
