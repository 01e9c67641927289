// SPDX-License-Identifier: MIT
#pragma once

#include "assess/state.hpp"

#include <vector>

namespace faywright {

/// Gives the section of a joint another thickness of walls and inside height, and the stack with it.
void set_section(Joint& joint, Length wall, Length inside_height);

/// Bending of a section's walls (and of plates over them) for thicknesses and heights about the nominal ones, worked out at the nodes of a
/// grid and read between them: linearly in thickness, height and beyond the edges. Between nodes 1 % of the thickness apart that is within
/// 0.02 % of the calculator's own answer, which takes some twenty times as long. Forces at yield and collapse are in proportion to
/// strength.
class WallGrid {
public:
    WallGrid() = default;
    /// `joint` is changed and given back as it was. The state knows the joint's pattern and has its walls worked out.
    WallGrid(Joint& joint, State& state, Length wall_deviation, Length height_deviation);

    /// Puts what the walls come to into the state.
    void read(State& state, Length wall, Length inside_height, double wall_strength, double plate_strength) const;

    static constexpr std::size_t thicknesses = 33, heights = 3;
    static constexpr double reach = 4.5;  ///< standard deviations to the grid's edge

private:
    struct Node {
        struct Side {
            Stiffness wall_stiffness, plate_stiffness;
            Force wall_yield, wall_collapse, plate_yield;
        };
        std::array<Side, 2> sides;
    };

    Length thinnest_, wall_step_, lowest_, height_step_;
    std::vector<Node> nodes_;  ///< heights run fastest
};

}  // namespace faywright
