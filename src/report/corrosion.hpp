// SPDX-License-Identifier: MIT
#pragma once

#include "assess/outlook.hpp"
#include "report/json.hpp"

#include <string>

/// The corrosion outlook of a joint as a part of other documents, and the pieces that they share.
namespace faywright {

/// Micrometres a year, without the unit: "0.62".
[[nodiscard]] std::string rate_text(Speed rate);
/// "0.62 (0.3 to 1.3)".
[[nodiscard]] std::string band_text(const RateBand& band);
/// Years without the unit; a life beyond 200 years is told as "200+".
[[nodiscard]] std::string life_text(Duration life);
/// "34 (17 to 69)".
[[nodiscard]] std::string life_band_text(const MemberOutlook& member);

[[nodiscard]] std::string exposure_text(const ExposureOutlook& outlook, Duration promised);
[[nodiscard]] std::string outlook_text(const Joint& joint, const CorrosionOutlook& outlook);

/// The outlook derived line by line, exposure by exposure.
[[nodiscard]] std::string corrosion_explanation_text(const Joint& joint, const Tables& tables);
[[nodiscard]] std::string corrosion_explanation_json(const Joint& joint, const Tables& tables);

namespace json {
[[nodiscard]] Json of(const RateBand& band);
[[nodiscard]] Json of(const PairAttack& pair);
[[nodiscard]] Json of(const ExposureOutlook& outlook);
[[nodiscard]] Json of(const CorrosionOutlook& outlook);
}  // namespace json

}  // namespace faywright
