// SPDX-License-Identifier: MIT
#pragma once

#include "loads/placed_force.hpp"

#include <vector>

/// The trailer as one rigid body on one axle group, held at its coupling by a ball that passes no moment.
///
/// Axes: origin at the coupling's centre, x forward, y to the right, z down. V, H, Y are the force of the towing vehicle
/// on the trailer at the coupling: V up, H rearward (a push), Y to the right. A load-sharing axle group stands as one axle in its middle.
namespace faywright {

/// As UN Regulation 55 counts it.
inline const Acceleration gravity = m_per_s2(9.81);

struct TrailerBody {
    Mass mass;               ///< m, all of it
    Mass unsprung;           ///< m_u, axles and wheels
    Length centre;           ///< x_G, coupling to centre of gravity, rearwards
    Length centre_height;    ///< h_G, above the ground
    Length axle;             ///< L_a, coupling to the middle of the axle group
    Length gyration;         ///< k, radius of gyration about G, in pitch and in yaw
    Length track;            ///< t, between the wheels of an axle
    Length coupling_height;  ///< h_c, above the ground

    [[nodiscard]] Force weight() const { return mass * gravity; }
    [[nodiscard]] Force sprung_weight() const { return (mass - unsprung) * gravity; }
    /// V_0 = m g (1 - x_G / L_a).
    [[nodiscard]] Force nose_load() const { return weight() * (1.0 - centre / axle); }
    [[nodiscard]] Force axle_load() const { return weight() - nose_load(); }
    [[nodiscard]] Mass nose_mass() const { return nose_load() / gravity; }
    [[nodiscard]] double nose_share() const { return nose_load() / weight(); }
    /// m_c = m [k² + (L_a - x_G)²] / L_a²: the mass the coupling feels when it is heaved while the axle stays.
    [[nodiscard]] Mass mass_at_coupling() const { return mass * (squared(gyration) + squared(axle - centre)) / squared(axle); }
    /// L_a x_G / (k² + x_G²) - 1: force on the coupling for a bump of 1 under the axle; 0 where the coupling is the centre of percussion.
    [[nodiscard]] double percussion_factor() const { return axle * centre / (squared(gyration) + squared(centre)) - 1.0; }
};

/// What happens to the trailer beside its weight. All zero: it stands.
struct TrailerMotion {
    Acceleration braking{};     ///< a, deceleration
    Force thrust{};             ///< H, push of the towing vehicle while braking; the rest of m a is braked at the ground
    Acceleration sideways{};    ///< a_y, to the right
    AngularAcceleration yaw{};  ///< α, nose to the right
    Force bump{};               ///< dN, upward under both wheels together
    Acceleration heave{};       ///< a_c, of the coupling, upward
    Force kerb{};               ///< push of the towing vehicle while one wheel stands against a kerb, at the coupling's height
    bool kerb_right = true;     ///< which wheel
};

struct CouplingLoad {
    Force up{}, rearward{}, right{};  ///< V, H, Y

    [[nodiscard]] Force3 on_trailer() const { return {-rearward, right, -up}; }
};

/// V = V_0 + (m a h_G - H h_c) / L_a + dN [L_a x_G / (k² + x_G²) - 1] + m_c a_c;  H;
/// Y = m a_y (L_a - x_G) / L_a + m k² α / L_a, and H t / (2 L_a) with one wheel against a kerb.
/// Elementary statics (practice): no published source is needed, the free body shows that they balance.
[[nodiscard]] inline CouplingLoad coupling_load(const TrailerBody& body, const TrailerMotion& motion) {
    const auto inertia = body.mass * squared(body.gyration);
    CouplingLoad load;
    load.up = body.nose_load() + (body.mass * motion.braking * body.centre_height - motion.thrust * body.coupling_height) / body.axle +
              motion.bump * body.percussion_factor() + body.mass_at_coupling() * motion.heave;
    load.rearward = motion.thrust + motion.kerb;
    load.right = body.mass * motion.sideways * ((body.axle - body.centre) / body.axle) + inertia * motion.yaw / body.axle +
                 motion.kerb * (body.track / (2.0 * body.axle)) * (motion.kerb_right ? 1.0 : -1.0);
    return load;
}

/// Forces of the ground on the wheels: each upward, the brake's rearward on the group, the tyres' to the right on the group.
struct WheelLoads {
    Force left, right, brake, sideways;
};

[[nodiscard]] inline WheelLoads wheel_loads(const TrailerBody& body, const TrailerMotion& motion) {
    const auto load = coupling_load(body, motion);
    const auto lift = motion.bump * (body.axle * body.centre / (squared(body.gyration) + squared(body.centre)));
    const auto heave = body.mass * motion.heave * ((body.axle - body.centre) / body.axle);
    const auto together = body.weight() + lift + heave - load.up;
    const auto sideways = body.mass * motion.sideways - load.right;
    const auto above = body.centre_height - body.coupling_height;
    // Roll about the line through the coupling: the outer wheel gains what the inner loses.
    const auto shifted = (above * (body.mass * motion.sideways) + body.coupling_height * sideways) / body.track;
    return {together / 2.0 + shifted, together / 2.0 - shifted, body.mass * motion.braking - motion.thrust, sideways};
}

/// Every force on the trailer; those of inertia included, they balance.
[[nodiscard]] inline std::vector<PlacedForce> trailer_free_body(const TrailerBody& body, const TrailerMotion& motion) {
    const auto load = coupling_load(body, motion);
    const auto wheels = wheel_loads(body, motion);
    const Point coupling{}, centre{-body.centre, mm(0), body.coupling_height - body.centre_height};
    const auto wheel = [&](double side) { return Point{-body.axle, body.track * (0.5 * side), body.coupling_height}; };
    const auto none = newton(0);
    std::vector<PlacedForce> forces{{"coupling", coupling, load.on_trailer()}, {"weight", centre, {none, none, body.weight()}}};
    const auto add = [&forces](const char* name, const Point& at, const Force3& force, const Moment3& moment = {}) {
        if (force != Force3{} || moment != Moment3{}) forces.push_back({name, at, force, moment});
    };
    add("inertia, braking and cornering", centre, {body.mass * motion.braking, -(body.mass * motion.sideways), none});
    const auto inertia = body.mass * squared(body.gyration);
    add("inertia, yaw", centre, {}, {Nm(0), Nm(0), -(inertia * motion.yaw)});
    const auto pitch = motion.bump * body.axle / (body.mass * (squared(body.gyration) + squared(body.centre)));
    add("inertia, bump", centre, {none, none, body.mass * body.centre * pitch}, {Nm(0), inertia * pitch, Nm(0)});
    const auto heave = motion.heave / body.axle;
    add("inertia, heave", centre, {none, none, body.mass * (body.axle - body.centre) * heave}, {Nm(0), -(inertia * heave), Nm(0)});
    for (const double side : {-1.0, 1.0})
        forces.push_back({side < 0 ? "left wheel" : "right wheel",
                          wheel(side),
                          {-wheels.brake / 2.0, wheels.sideways / 2.0, -(side < 0 ? wheels.left : wheels.right)}});
    auto kerb = wheel(motion.kerb_right ? 1.0 : -1.0);
    kerb.z = mm(0);
    add("kerb", kerb, {motion.kerb, none, none});
    return forces;
}

}  // namespace faywright
