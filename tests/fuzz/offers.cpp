// SPDX-License-Identifier: MIT
// Any bytes as a supplier's list: one error, or rows of which every problem is told with its place.
#include "reviewed.hpp"

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
    using namespace faywright;
    Diagnostics diagnostics;
    const auto list = read_offers(fuzz::text_of(data, size), "fuzz.csv", diagnostics);
    if (diagnostics.any()) {
        fuzz::must_be_told(diagnostics);
        if (diagnostics.count() != 1 || !list.rows.empty()) std::abort();
        return 0;
    }
    if (list.rows.empty() || list.rows.size() > most_offers) std::abort();
    for (const auto& row : list.rows) {
        if (row.offer.length && !(*row.offer.length >= mm(5) && *row.offer.length <= mm(1000))) std::abort();
        for (const auto& problem : row.problems)
            if (problem.row != row.row || problem.column < 0 || problem.found.empty() || problem.wanted.empty() || !is_fit(problem.text()))
                std::abort();
    }
    // One row is reviewed: the others would be no different.
    auto some = list;
    if (some.rows.size() > 1) some.rows.resize(1);
    const auto reviewed = review_list(some, fuzz::reviewer(), fuzz::built_in());
    for (const auto& row : reviewed.rows) {
        if (row.review.has_value() == !row.problems.empty()) std::abort();
        if (row.review) fuzz::must_be_sound(*row.review);
    }
    if (offers_text(reviewed).empty() || offers_csv(reviewed).empty() || offers_json(reviewed).empty() || offers_markdown(reviewed).empty())
        std::abort();
    return 0;
}
