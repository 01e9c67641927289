// SPDX-License-Identifier: MIT
#include "assess/substitute_list.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

namespace faywright {

namespace {

/// A fault of a field, at the row and column of the list where it stands.
OfferProblem placed(const OfferFault& fault, const OfferRow& row, const OfferList& list) {
    OfferProblem out{"name.unknown", row.row, row.line, 0, "", fault.found, fault.wanted};
    for (const auto& column : list.columns)
        if (column.key == fault.field) {
            out.column = column.number;
            out.name = column.name;
        }
    return out;
}

bool better(const ReviewedRow& a, const ReviewedRow& b) {
    const auto key = [](const ReviewedRow& r) {
        const bool built = r.review && r.review->right && r.review->right->is_built();
        return std::make_tuple(!r.review, r.review ? r.review->verdict : Verdict::refuse, r.review ? r.review->changes.size() : 0, !built,
                               built ? r.review->right->utilisation : 0.0);
    };
    return key(a) < key(b);
}

}  // namespace

bool ReviewedList::has_usable() const {
    return std::any_of(rows.begin(), rows.end(), [](const ReviewedRow& r) { return r.review && r.review->is_accepted(); });
}

ReviewedList review_list(const OfferList& list, Reviewer& reviewer, const Tables& tables) {
    ReviewedList out{reviewer.joint().title, list.header, {}, reviewer.warnings()};
    for (const auto& row : list.rows) {
        ReviewedRow reviewed{&row, row.problems, {}};
        std::vector<OfferFault> faults;
        auto offer = understand(row.offer, tables, faults);
        for (const auto& fault : faults) reviewed.problems.push_back(placed(fault, row, list));
        for (const auto& each : row.passed_over)
            offer.asked.push_back(
                {Topic::part,
                 fmt::format("the column \"{}\" says \"{}\" and is passed over: what does it say of the offer?", each.column, each.says)});
        if (reviewed.problems.empty()) reviewed.review = reviewer.review(std::move(offer));
        out.rows.push_back(std::move(reviewed));
    }
    std::stable_sort(out.rows.begin(), out.rows.end(), better);
    return out;
}

}  // namespace faywright
