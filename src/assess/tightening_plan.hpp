// SPDX-License-Identifier: MIT
#pragma once

#include "mechanics/assembly_stress.hpp"
#include "mechanics/preload_from_torque.hpp"
#include "mechanics/thread_geometry.hpp"
#include "mechanics/tightening_torque.hpp"
#include "tables/fastener_records.hpp"

#include <cmath>
#include <optional>

namespace faywright {

/// What is known of a bolt before it is tightened.
struct TighteningTask {
    ThreadGeometry::Answer thread{};
    Length diameter, pitch, bearing_diameter, bearing_hole;
    double thread_friction_low = 0, thread_friction_high = 0, head_friction_low = 0, head_friction_high = 0;
    Stress proof_strength;
    double proof_utilisation = 0.75;  ///< reached at the low end of friction where the torque is to be chosen
    std::optional<Moment> torque;     ///< absent: to be chosen
    std::optional<double> factor;     ///< tightening factor in place of the friction's band
    bool by_torque = true;            ///< a given torque sets the preload; else it is told for information only
    double tool_scatter = 0;
    Moment prevailing_torque = Nm(0);
};

struct TighteningPlan {
    Moment torque;
    PreloadFromTorque::Answer preload{};
};

/// Rounded down to the marks of a torque wrench: 0.1 N*m below 10 N*m, 1 N*m below 100 N*m, 5 N*m above.
[[nodiscard]] inline Moment on_the_wrench(Moment torque) {
    const Moment mark = torque < Nm(10) ? Nm(0.1) : torque < Nm(100) ? Nm(1) : Nm(5);
    return torque < mark ? torque : std::floor(torque / mark) * mark;
}

/// Torque and preload band. The torque is chosen so that the stiffest pull of the tool on the slipperiest bolt stays at the
/// proof utilisation, and rounded down to what a wrench can be set to.
template <class Steps = NoSteps>
[[nodiscard]] TighteningPlan tightening_plan(const TighteningTask& task, Steps&& steps = Steps{}) {
    TighteningPlan plan;
    const AssemblyStress::Inputs at_low_friction{.preload = kN(1),
                                                 .stress_area = task.thread.stress_area,
                                                 .pitch_diameter = task.thread.pitch_diameter,
                                                 .stress_diameter = task.thread.stress_diameter,
                                                 .pitch = task.pitch,
                                                 .thread_friction = task.thread_friction_low,
                                                 .proof_strength = task.proof_strength,
                                                 .utilisation = task.proof_utilisation};
    if (task.torque) {
        plan.torque = *task.torque;
    } else {
        steps.heading("Greatest preload the proof utilisation allows at the low end of friction", AssemblyStress::formula.source);
        const auto permitted = AssemblyStress::compute(at_low_friction, steps).permitted;
        steps.heading("Torque that gives it", TighteningTorque::formula.source);
        const auto most = TighteningTorque::compute({.preload = permitted,
                                                     .nominal_diameter = task.diameter,
                                                     .pitch = task.pitch,
                                                     .pitch_diameter = task.thread.pitch_diameter,
                                                     .thread_friction = task.thread_friction_low,
                                                     .head_friction = task.head_friction_low,
                                                     .bearing_diameter = task.bearing_diameter,
                                                     .bearing_hole = task.bearing_hole},
                                                    steps)
                              .torque /
                          (1.0 + task.tool_scatter);
        FAYWRIGHT_STATED(M_A, "that torque over (1 + tool scatter), rounded down to the wrench's marks", on_the_wrench(most));
        plan.torque = M_A;
    }
    const auto from_torque = [&]<class Into>(Into&& into) {
        return PreloadFromTorque::compute({.torque = plan.torque,
                                           .tool_scatter = task.tool_scatter,
                                           .thread_friction_low = task.thread_friction_low,
                                           .thread_friction_high = task.thread_friction_high,
                                           .head_friction_low = task.head_friction_low,
                                           .head_friction_high = task.head_friction_high,
                                           .pitch = task.pitch,
                                           .pitch_diameter = task.thread.pitch_diameter,
                                           .bearing_diameter = task.bearing_diameter,
                                           .bearing_hole = task.bearing_hole,
                                           .prevailing_torque = task.prevailing_torque},
                                          into);
    };
    if (task.factor) {
        const bool given = task.torque && task.by_torque;
        const auto most = given ? from_torque(NoSteps{}).greatest : AssemblyStress::compute(at_low_friction).permitted;
        steps.heading("Preload band from the tightening factor", Source{"VDI 2230 Part 1", "2003", "Table A8", Basis::memory});
        FAYWRIGHT_STATED(
            F_M_max, given ? "preload of the given torque at the low end of friction" : "preload permitted by the proof utilisation", most);
        FAYWRIGHT_STATED(alpha_A, "tightening factor", *task.factor);
        FAYWRIGHT_STEP(F_M_min, F_M_max / alpha_A);
        plan.preload = {F_M_min, (F_M_max + F_M_min) / 2.0, F_M_max, *task.factor};
    } else {
        steps.heading(PreloadFromTorque::formula.title, PreloadFromTorque::formula.source);
        plan.preload = from_torque(steps);
    }
    plan.preload.least = max(plan.preload.least, newton(1));
    plan.preload.greatest = max(plan.preload.greatest, plan.preload.least);
    return plan;
}

}  // namespace faywright
