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

/// One assessment of many on one line: verdict, governing check, least design factor, torque, least clamp. `input` is what it was read
/// from.
[[nodiscard]] std::string assessment_line(const Assessment& assessment, const std::string& input);
/// What could not be used, on one line.
[[nodiscard]] std::string errors_line(const Diagnostics& diagnostics, const std::string& input);

/// Topics besides the checks that can be explained.
inline constexpr std::array<std::string_view, 5> explained_topics{"loads", "preload", "stiffness", "clamp", "tube"};

/// One check, or one of the topics, derived line by line; nothing if the word is neither.
[[nodiscard]] std::optional<std::string> explanation_text(const Assessment& assessment, const std::string& word);
[[nodiscard]] std::optional<std::string> explanation_json(const Assessment& assessment, const std::string& word);

}  // namespace faywright
