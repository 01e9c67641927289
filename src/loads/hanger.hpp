// SPDX-License-Identifier: MIT
#pragma once

#include "loads/trailer_body.hpp"

namespace faywright {

/// A suspension's hangers under the rails: they share the axle group's forces alike on each side.
struct Hangers {
    double count = 2;   ///< of all hangers, both sides together: even
    Length eye_offset;  ///< of the eye below the joint's plane
    Length eye_height;  ///< of the eye above the ground
    Length spacing;     ///< front to rear hanger of a side; 0: no couple of the brakes is counted
};

/// What one hanger of one side brings to its joint, at the eye; trailer axes. `share` of what is vertical stands on the worse side while
/// the trailer stands straight. A brake's couple about the eyes' height goes half up, half down over the spacing: `rear` says which.
/// The coupling's own forces never come here. Elementary statics (practice).
[[nodiscard]] inline Force3 hanger_load(const TrailerBody& body, const TrailerMotion& motion, const Hangers& hangers, double share,
                                        bool left, bool rear) {
    const auto wheels = wheel_loads(body, motion);
    const auto side = hangers.count / 2.0;
    const auto own = left ? wheels.left : wheels.right, other = left ? wheels.right : wheels.left;
    // Both wheels' mean in the worse side's share, and half of what cornering moves from one to the other.
    const auto vertical = (own + other) * share + (own - other) / 2.0;
    auto up = vertical / side;
    if (hangers.spacing > mm(0)) {
        // The group's brake force acts at the ground; front hangers are pulled down by it, rear ones pressed up, or the other way about.
        const auto couple = wheels.brake * hangers.eye_height / (2.0 * hangers.spacing);
        up += couple / max(side / 2.0, 1.0) * (rear ? 1.0 : -1.0);
    }
    const auto kerb = motion.kerb_right == left ? newton(0) : motion.kerb / side;
    return {kerb - wheels.brake / hangers.count, wheels.sideways / hangers.count, -up};
}

}  // namespace faywright
