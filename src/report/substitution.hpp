// SPDX-License-Identifier: MIT
#pragma once

#include "assess/substitute_list.hpp"

#include <string>
#include <vector>

namespace faywright {

/// A rule's title, and the words that end its sentence.
[[nodiscard]] std::string reason_text(const Reason& reason);

[[nodiscard]] std::string substitution_text(const Substitution& review, const Joint& joint, const std::vector<std::string>& warnings);
[[nodiscard]] std::string substitution_markdown(const Substitution& review, const Joint& joint, const std::vector<std::string>& warnings);
[[nodiscard]] std::string substitution_json(const Substitution& review, const Joint& joint, const std::vector<std::string>& warnings);

[[nodiscard]] std::string offers_text(const ReviewedList& list);
[[nodiscard]] std::string offers_markdown(const ReviewedList& list);
/// One line an offer; cells that a spreadsheet would take for formulas are quoted off.
[[nodiscard]] std::string offers_csv(const ReviewedList& list);
[[nodiscard]] std::string offers_json(const ReviewedList& list);

}  // namespace faywright
