// SPDX-License-Identifier: MIT
#pragma once

#include "assess/search.hpp"

#include <string>

namespace faywright {

/// What a search found, for people: the best joints, the front of the objective against reserve, and why the rest is ruled out.
[[nodiscard]] std::string search_text(const SearchTask& task, const SearchAnswer& answer, const std::string& title);

[[nodiscard]] std::string search_json(const SearchTask& task, const SearchAnswer& answer, const std::string& title);

/// A joint file of one variant, complete, for `check`; it names the rows of a shop's own tables it needs.
[[nodiscard]] std::string variant_file(const SearchTask& task, const Candidate& candidate, const std::vector<std::string>& own_tables = {});

}  // namespace faywright
