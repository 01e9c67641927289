// SPDX-License-Identifier: MIT
#pragma once

#include "mechanics/assembly_stress.hpp"
#include "mechanics/thread_geometry.hpp"
#include "mechanics/tightening_torque.hpp"
#include "published/published.hpp"

/// What the preload and torque tables of VDI 2230 and their like are made of: geometry from size and pitch unrounded, preload at
/// 90 % of the proof strength, torque from the unrounded preload.
namespace faywright::published {

struct Bolt {
    const char* size;
    double diameter, pitch, proof_strength;
    double bearing_diameter, hole;  ///< hexagon head on a hole of ISO 273 medium
};

inline Force table_preload(const Bolt& bolt, double friction, TorsionModel model = TorsionModel::plastic) {
    const auto thread = ThreadGeometry::compute({mm(bolt.diameter), mm(bolt.pitch)});
    return AssemblyStress::compute({.preload = kN(1),
                                    .stress_area = thread.stress_area,
                                    .pitch_diameter = thread.pitch_diameter,
                                    .stress_diameter = thread.stress_diameter,
                                    .pitch = mm(bolt.pitch),
                                    .thread_friction = friction,
                                    .proof_strength = MPa(bolt.proof_strength),
                                    .utilisation = 0.9,
                                    .method = model})
        .permitted;
}

inline Moment table_torque(const Bolt& bolt, double friction) {
    const auto thread = ThreadGeometry::compute({mm(bolt.diameter), mm(bolt.pitch)});
    return TighteningTorque::compute({.preload = table_preload(bolt, friction),
                                      .nominal_diameter = mm(bolt.diameter),
                                      .pitch = mm(bolt.pitch),
                                      .pitch_diameter = thread.pitch_diameter,
                                      .thread_friction = friction,
                                      .head_friction = friction,
                                      .bearing_diameter = mm(bolt.bearing_diameter),
                                      .bearing_hole = mm(bolt.hole)})
        .torque;
}

}  // namespace faywright::published
