// SPDX-License-Identifier: MIT
#pragma once

#include "assess/assessment.hpp"

#include <optional>
#include <string>

namespace faywright {

/// The assessment for a terminal: verdict and governing check first, then clamp, checks by utilisation, tube, assumptions, cautions.
[[nodiscard]] std::string assessment_text(const Assessment& assessment, bool color);
/// The assessment for programs; keys as in the schema in reports/.
[[nodiscard]] std::string assessment_json(const Assessment& assessment);

/// Topics besides the checks that can be explained.
inline constexpr std::array<std::string_view, 5> explained_topics{"loads", "preload", "stiffness", "clamp", "tube"};

/// One check, or one of the topics, derived line by line; nothing if the word is neither.
[[nodiscard]] std::optional<std::string> explanation_text(const Assessment& assessment, const std::string& word);
[[nodiscard]] std::optional<std::string> explanation_json(const Assessment& assessment, const std::string& word);

}  // namespace faywright
