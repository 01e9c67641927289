// SPDX-License-Identifier: MIT
// The peers' sweep by the library: bearing, tightening torque and a bolt group for a row of joints. Prints the sums of the three and
// the microseconds of one joint.
#include "mechanics/bearing.hpp"
#include "mechanics/bolt_group_in_plane.hpp"
#include "mechanics/tightening_torque.hpp"

#include <fmt/format.h>

#include <array>
#include <chrono>
#include <cstdlib>

using namespace faywright;

int main(int argc, char** argv) {
    const int count = argc > 1 ? std::atoi(argv[1]) : 1'000'000;
    const std::array<Position, 4> bolts{{{mm(-60), mm(-40)}, {mm(60), mm(-40)}, {mm(-60), mm(40)}, {mm(60), mm(40)}}};
    const auto pattern = inertia_of(bolts);
    std::array<PlaneForce, 4> forces;
    auto bearing = newton(0), greatest = newton(0);
    auto torque = Nm(0);
    const auto begin = std::chrono::steady_clock::now();
    for (int i = 0; i < count; ++i) {
        const double u = static_cast<double>(i) / count;
        bearing += Bearing::compute({.bolt_diameter = mm(12),
                                     .hole_diameter = mm(13.5),
                                     .thickness = mm(4 + 8 * u),
                                     .ultimate_strength = MPa(290),
                                     .bolt_ultimate_strength = MPa(800),
                                     .end_distance = mm(20 + 20 * u),
                                     .edge_distance = mm(25),
                                     .pitch = {},
                                     .gauge = {},
                                     .method = DesignMethod::en_1993})
                       .resistance;
        torque += TighteningTorque::compute({.preload = kN(30 + 20 * u),
                                             .nominal_diameter = mm(12),
                                             .pitch = mm(1.75),
                                             .pitch_diameter = mm(10.863),
                                             .thread_friction = 0.12,
                                             .head_friction = 0.14,
                                             .bearing_diameter = mm(16.6),
                                             .bearing_hole = mm(13.5)})
                      .torque;
        static_cast<void>(in_plane_bolt_forces(bolts, pattern, {kN(3), kN(10)}, Nm(500 + 1500 * u), forces));
        auto most = newton(0);
        for (const auto& force : forces) most = max(most, magnitude(force));
        greatest += most;
    }
    const double seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() - begin).count();
    fmt::print("{:.9g} {:.9g} {:.9g} {:.6g}\n", in_N(bearing) / count, in_Nm(torque) / count, in_N(greatest) / count,
               seconds / count * 1e6);
}
