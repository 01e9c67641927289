// SPDX-License-Identifier: MIT
#pragma once

#include "assess/assessment.hpp"
#include "assess/isolate.hpp"
#include "assess/uncertainty.hpp"
#include "report/drawing.hpp"

#include <optional>

/// Charts of an assessment, on paper 1 : 1. Title and description of each say the same in words.
namespace faywright {

/// The clamp of one bolt through life, stage by stage, from least to greatest, with the limits that slip, separation and the bolt's
/// own strength set to it.
[[nodiscard]] Drawing clamp_picture(const Assessment& assessment);

/// Force over elongation of bolt and clamped parts, at the least and the greatest clamp, with the pull on the bolt that asks most.
[[nodiscard]] Drawing joint_diagram(const Assessment& assessment);

/// Every check that applies as a bar, the greatest utilisation first.
[[nodiscard]] Drawing utilisation_picture(const Assessment& assessment);

/// Lengths of crush tube and section with their tolerances, side by side and enlarged. Nothing without a tube.
[[nodiscard]] std::optional<Drawing> tube_fit_picture(const Assessment& assessment);

/// How zinc and aluminium are used up over the years in an exposure, each by itself.
[[nodiscard]] Drawing life_picture(const ExposureOutlook& outlook, Duration promised);

/// The best with each element between the faces: what it leaves of the clamp, and how long its first part lasts.
[[nodiscard]] Drawing isolation_picture(const IsolationRanking& ranking);

/// How often a response of the sampled joint came to what.
[[nodiscard]] Drawing histogram_picture(const ResponseTold& response);

}  // namespace faywright
