// SPDX-License-Identifier: MIT
#pragma once

#include "assess/assessment.hpp"
#include "report/drawing.hpp"

#include <optional>
#include <vector>

/// The joint as it is built, to scale.
namespace faywright {

/// How far the section picture goes: all dimensions for the certifier, or the parts only, larger and numbered, for the fitter.
enum class SectionDetail { dimensions, parts };

/// Across the rail through the bolts, head above. Bolts, nuts and washers are not cut, tubes are; layers thinner than a line are drawn
/// thicker, and marked so.
[[nodiscard]] Drawing section_picture(const Assessment& assessment, SectionDetail detail);

/// The result whose case is drawn in the plan: of the checks that look at one bolt in one load case, the one with the greatest
/// utilisation, and before others one whose load lies in the plane. Nothing where no check does.
[[nodiscard]] const CheckResult* governing_of_bolts(const Assessment& assessment);

/// What the bolts feel of the case of a result, and how far each is used.
struct BoltUse {
    BoltLoad load;
    double utilisation = 0.0;
};
[[nodiscard]] std::vector<BoltUse> use_of_bolts(const Assessment& assessment, const CheckResult& result);

/// The pattern in plan, as seen from the head: edges, holes, each bolt's load in the plane as an arrow, and its utilisation.
[[nodiscard]] Drawing pattern_picture(const Assessment& assessment);

/// The pattern with the numbers of the bolts, for a sheet: they are the same in every document.
[[nodiscard]] Drawing numbers_picture(const Joint& joint);

}  // namespace faywright
