// SPDX-License-Identifier: MIT
#include "assess/wall_grid.hpp"

#include <algorithm>
#include <cmath>

namespace faywright {

namespace {

/// A step that is no rounding, where nothing scatters.
Length step_of(Length deviation, Length about, std::size_t nodes) {
    return max(2.0 * WallGrid::reach * deviation, 1e-4 * about) / static_cast<double>(nodes - 1);
}

/// Where a value stands among the nodes: the lower node of its pair, and its distance from that as a share of the step.
struct Place {
    std::size_t node;
    double beyond;
};
Place place_of(Length value, Length first, Length step, std::size_t nodes) {
    const double at = static_cast<double>((value - first) / step);
    const double node = std::clamp(std::floor(at), 0.0, static_cast<double>(nodes - 2));
    return {static_cast<std::size_t>(node), at - node};
}

}  // namespace

void set_section(Joint& joint, Length wall, Length inside_height) {
    auto& section = *joint.section;
    section.wall = wall;
    section.height = inside_height + 2.0 * wall;
    const bool through = section.tube.arrangement == TubeArrangement::through_walls;
    for (auto& entry : joint.stack) {
        if (entry.kind == StackKind::cavity) entry.thickness = through ? *section.tube.length - 2.0 * wall : inside_height;
        if (entry.kind != StackKind::ply) continue;
        auto& ply = joint.plies[static_cast<std::size_t>(entry.index)];
        if (ply.role != PlyRole::plate) ply.thickness = entry.thickness = wall;
    }
}

WallGrid::WallGrid(Joint& joint, State& state, Length wall_deviation, Length height_deviation) {
    const auto wall = joint.section->wall, height = joint.section->inside_height();
    wall_step_ = step_of(wall_deviation, wall, thicknesses);
    height_step_ = step_of(height_deviation, height, heights);
    thinnest_ = wall - 0.5 * static_cast<double>(thicknesses - 1) * wall_step_;
    lowest_ = height - 0.5 * static_cast<double>(heights - 1) * height_step_;
    nodes_.reserve(thicknesses * heights);
    for (std::size_t t = 0; t < thicknesses; ++t)
        for (std::size_t h = 0; h < heights; ++h) {
            set_section(joint, thinnest_ + static_cast<double>(t) * wall_step_, lowest_ + static_cast<double>(h) * height_step_);
            work_out_walls(joint, state);
            Node node;
            for (std::size_t i = 0; i < node.sides.size(); ++i) {
                const auto& side = state.walls[i];
                node.sides[i] = {side.wall.stiffness, side.plate.stiffness, side.wall.first_yield_force, side.wall.collapse_least,
                                 side.plate.first_yield_force};
            }
            nodes_.push_back(node);
        }
    set_section(joint, wall, height);
    work_out_walls(joint, state);
}

void WallGrid::read(State& state, Length wall, Length inside_height, double wall_strength, double plate_strength) const {
    const auto t = place_of(wall, thinnest_, wall_step_, thicknesses), h = place_of(inside_height, lowest_, height_step_, heights);
    const auto* first = &nodes_[t.node * heights + h.node];
    for (std::size_t i = 0; i < state.walls.size(); ++i) {
        const auto between = [&](auto Node::Side::*what) {
            const auto along = [&](const Node* node) {
                return node->sides[i].*what + h.beyond * ((node + 1)->sides[i].*what - node->sides[i].*what);
            };
            const auto here = along(first);
            return here + t.beyond * (along(first + heights) - here);
        };
        auto& side = state.walls[i];
        side.wall.stiffness = between(&Node::Side::wall_stiffness);
        side.wall.first_yield_force = wall_strength * between(&Node::Side::wall_yield);
        side.wall.collapse_least = wall_strength * between(&Node::Side::wall_collapse);
        side.plate.stiffness = between(&Node::Side::plate_stiffness);
        side.plate.first_yield_force = plate_strength * between(&Node::Side::plate_yield);
        side.worked_out = false;
    }
    join_walls(state);
}

}  // namespace faywright
