// SPDX-License-Identifier: MIT
#pragma once

#include "assess/outlook.hpp"
#include "report/json.hpp"

#include <string>
#include <string_view>

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
/// The same, or "no end seen" of what lasts.
[[nodiscard]] std::string life_words(const MemberOutlook& member);

/// The climate at the joint, in a line.
[[nodiscard]] std::string climate_text(const ExposureOutlook& outlook);
/// One contact: who pays, and how much.
[[nodiscard]] std::string contact_text(const ContactOutlook& contact);
/// What the lives of an outlook stand on.
inline constexpr std::string_view outlook_note =
    "Lives are those of the estimated rates, pits 5.5 times as deep as the mean loss, against the promise: an estimate that just keeps it "
    "is "
    "broken as often as not. Zinc and climate stand on published laws with a stated scatter; what couples, crevices, paint and seals do is "
    "judged. --explain corrosion derives every line. Steps of a couple: still up to 0.2 um/a, slow 1, marked 5, fast 20, ruinous above, or "
    "by "
    "what it eats in the promised life; one worse where nobody sees it or the anode is small.";

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
