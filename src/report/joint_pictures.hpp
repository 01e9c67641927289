// SPDX-License-Identifier: MIT
#pragma once

#include "assess/assessment.hpp"
#include "report/drawing.hpp"

/// The joint as it is built, to scale.
namespace faywright {

/// How far the section picture goes: all dimensions for the certifier, or the parts only, larger and numbered, for the fitter.
enum class SectionDetail { dimensions, parts };

/// Across the rail through the bolts, head above. Bolts, nuts and washers are not cut, tubes are; layers thinner than a line are drawn
/// thicker, and marked so.
[[nodiscard]] Drawing section_picture(const Assessment& assessment, SectionDetail detail);

/// The pattern in plan, as seen from the head: edges, holes, each bolt's load in the plane as an arrow, and its utilisation.
[[nodiscard]] Drawing pattern_picture(const Assessment& assessment);

/// The pattern with the numbers of the bolts, for a sheet: they are the same in every document.
[[nodiscard]] Drawing numbers_picture(const Joint& joint);

}  // namespace faywright
