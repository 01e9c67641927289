// SPDX-License-Identifier: MIT
#pragma once

#include "assess/statement.hpp"
#include "report/steps_text.hpp"
#include "report/typography.hpp"

#include <fmt/format.h>

#include <string>

namespace faywright {

/// A sentence of a sheet with where it comes from; practice of the trade is said once for the whole sheet.
[[nodiscard]] inline std::string sheet_text(const Statement& statement) {
    const auto words = typographic(statement.words);
    return statement.source.document.empty() ? words : fmt::format("{} [{}]", words, source_text(statement.source.view()));
}

inline constexpr const char* sheet_caution =
    "A failed towing joint can kill. Local rules and a licensed engineer decide. What names no source in brackets is practice of the trade.";

}  // namespace faywright
