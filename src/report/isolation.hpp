// SPDX-License-Identifier: MIT
#pragma once

#include "assess/isolate.hpp"

#include <string>

namespace faywright {

/// How much of a ranking is shown: the best of each element for the faying faces, or every composition.
enum class RankingExtent { of_each_faying, all };

[[nodiscard]] std::string ranking_text(const IsolationRanking& ranking, RankingExtent extent);
[[nodiscard]] std::string ranking_markdown(const IsolationRanking& ranking, RankingExtent extent);
/// One line a method and exposure, comma separated; cells that a spreadsheet would take for formulas are quoted off.
[[nodiscard]] std::string ranking_csv(const IsolationRanking& ranking, RankingExtent extent);
[[nodiscard]] std::string ranking_json(const IsolationRanking& ranking, RankingExtent extent);

}  // namespace faywright
