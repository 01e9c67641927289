// SPDX-License-Identifier: MIT
#pragma once

#include "loads/lap_forces.hpp"
#include "loads/trailer_body.hpp"

#include <array>

/// The lap of a two-legged drawbar on the rails: a front and a rear bolt group on each leg.
///
/// Up and down the drawbar is a lever over the two rows of groups: with x_A, x_B from the coupling to the front and rear row and
/// e_v the height of the lap's plane over the coupling, M_A = V x_A - e_v H, R_B = M_A / (x_B - x_A) and R_A = V + R_B.
/// In plan the four groups are an elastic bolt group under H, Y and Y times its arm; the tilt Y e_v is a couple of the two legs.
/// The drawbar counts as stiff in plan; an A-frame that is flexible there shifts load to the front groups.
namespace faywright {

/// On which side of the rail the attached part lies: it sets the joint's axes.
enum class Placing { under, beside, on_top };

/// Distances from the coupling rearwards; heights above the ground.
struct Lap {
    Length middle;       ///< coupling to the middle of the lap: the joint's origin
    Length front, rear;  ///< middle of the lap to the middle of the front group (forwards) and of the rear group (rearwards)
    Length height;       ///< of the lap's plane
    Length legs_apart;   ///< b, between the two legs' bolt lines

    [[nodiscard]] Length x_A() const { return middle - front; }
    [[nodiscard]] Length x_B() const { return middle + rear; }
};

/// M_A, R_A, R_B for both legs together.
[[nodiscard]] inline LapForces::Answer lap_couple(const CouplingLoad& load, const Lap& lap, Length coupling_height) {
    return LapForces::compute({load.up, load.rearward, lap.x_A(), lap.x_B(), lap.height - coupling_height});
}

/// What the coupling brings to one group of one leg. `left` and `front` say which. Trailer axes, at the group's middle: the load on
/// the attached part, so opposite to the rail's reaction.
/// `leg_share` of what is vertical, half of the rest.
[[nodiscard]] inline Force3 group_load(const CouplingLoad& load, const Lap& lap, Length coupling_height, double leg_share, bool left,
                                       bool front) {
    const auto couple = lap_couple(load, lap, coupling_height);
    const auto half_length = (lap.x_B() - lap.x_A()) / 2.0, half_width = lap.legs_apart / 2.0;
    const auto inertia = 4.0 * (squared(half_length) + squared(half_width));
    const Moment turning = load.right * (lap.x_A() + half_length);
    const auto above = lap.height - coupling_height;
    const Force tilt = load.right * above / lap.legs_apart;
    const double side = left ? 1.0 : -1.0, end = front ? 1.0 : -1.0;
    return {-load.rearward / 4.0 + turning * half_width / inertia * side, load.right / 4.0 + turning * half_length / inertia * end,
            (front ? -couple.front : couple.rear) * leg_share + tilt / 2.0 * side};
}

/// What the coupling brings to one leg, about the middle of its lap: force and moment, trailer axes.
[[nodiscard]] inline Wrench leg_load(const CouplingLoad& load, const Lap& lap, Length coupling_height, double leg_share, bool left) {
    const auto above = lap.height - coupling_height;
    std::array<PlacedForce, 2> groups;
    for (const bool front : {true, false})
        groups[front ? 0 : 1] = {
            "", {front ? lap.front : -lap.rear, mm(0), mm(0)}, group_load(load, lap, coupling_height, leg_share, left, front)};
    auto sum = resultant(groups);
    // The groups carry the whole of M_A in the leg's share; of what a push or pull brings to it the leg takes half.
    sum.moment.y += above * load.rearward * (leg_share - 0.5);
    return sum;
}

/// Y x / b: the force along each leg at the middle of the lap, were the legs of the A-frame pinned at their ends: forward in the left leg
/// for a load to the right. For legs and cross-member; the bolts of a stiff drawbar get less.
[[nodiscard]] inline Force pinned_leg_force(const CouplingLoad& load, const Lap& lap) { return load.right * (lap.middle / lap.legs_apart); }

/// The drawbar ahead of the rails, with the rails' reactions at its four groups: they balance the coupling.
[[nodiscard]] inline std::vector<PlacedForce> drawbar_free_body(const CouplingLoad& load, const Lap& lap, Length coupling_height) {
    std::vector<PlacedForce> forces{{"coupling", {}, load.on_trailer()}};
    const auto z = coupling_height - lap.height;
    for (const bool front : {true, false})
        for (const bool left : {true, false})
            forces.push_back({std::string(left ? "left leg, " : "right leg, ") + (front ? "front group" : "rear group"),
                              {-(front ? lap.x_A() : lap.x_B()), lap.legs_apart * (left ? -0.5 : 0.5), z},
                              -group_load(load, lap, coupling_height, 0.5, left, front)});
    return forces;
}

/// Trailer axes to the axes of a joint: x forward along the rail, z out of the rail towards the attached part.
template <class Q>
[[nodiscard]] Triple<Q> in_joint_axes(const Triple<Q>& v, Placing placing) {
    switch (placing) {
        case Placing::under: return v;
        case Placing::beside: return {v.x, -v.z, v.y};
        case Placing::on_top: return {v.x, -v.y, -v.z};
    }
    return v;
}

}  // namespace faywright
