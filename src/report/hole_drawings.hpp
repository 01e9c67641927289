// SPDX-License-Identifier: MIT
#pragma once

#include "assess/assessment.hpp"
#include "report/drawing.hpp"

#include <string>
#include <vector>

/// The holes of each plate and of the rail's faces, for a drill, a laser or a plasma cutter.
namespace faywright {

struct HoleDrawing {
    std::string stem;  ///< of a file name: the number and the name of the part, of letters, digits and hyphens
    Drawing drawing;   ///< at 1 : 1 in millimetres; lower left corner of the outline is the origin, x along the rail
};

/// One drawing a plate, and one for each wall of the section, in the order of the joint file. All are seen against z, from outside the
/// attached part. What an outline leaves open is told on the drawing, and drawn to four hole diameters beyond the outermost hole. Where
/// the joint does not pass, every drawing says that it is not to be built.
[[nodiscard]] std::vector<HoleDrawing> hole_drawings(const Assessment& assessment);

}  // namespace faywright
