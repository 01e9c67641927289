// SPDX-License-Identifier: MIT
#pragma once

#include "joint/joint.hpp"

namespace faywright {

/// Visits every row of the tables that a joint uses; one that is used twice comes twice.
template <class Visit>
void each_row(const Joint& joint, Visit&& visit) {
    visit(joint.service);
    visit(joint.bolt.thread);
    visit(joint.bolt.property_class);
    visit(joint.bolt.finish);
    visit(joint.bolt.nut);
    visit(joint.tightening.method);
    visit(joint.embedding);
    for (const auto* washer : {&joint.bolt.head_washer, &joint.bolt.nut_washer})
        if (*washer) visit(**washer);
    for (const auto& ply : joint.plies) {
        visit(ply.material);
        visit(ply.surface);
    }
    for (const auto& layer : joint.layers) visit(layer.material);
    if (joint.section && joint.section->tube.arrangement != TubeArrangement::none) {
        const auto& tube = joint.section->tube;
        visit(tube.material);
        if (tube.stock) visit(*tube.stock);
        if (tube.coating) visit(*tube.coating);
    }
    for (const auto& exposure : joint.surroundings.exposures) visit(exposure);
    for (const auto* element : {&joint.surroundings.fixing, &joint.surroundings.edges})
        if (*element) visit(**element);
}

}  // namespace faywright
