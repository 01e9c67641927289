// SPDX-License-Identifier: MIT
#include "assess/make_calculator.hpp"
#include "mechanics/assembly_stress.hpp"
#include "mechanics/bolt_fatigue.hpp"
#include "mechanics/bolt_stiffness.hpp"
#include "mechanics/clamp_life.hpp"
#include "mechanics/embedding_loss.hpp"
#include "mechanics/load_factor.hpp"
#include "mechanics/nut_factor_torque.hpp"
#include "mechanics/preload_from_torque.hpp"
#include "mechanics/surface_pressure.hpp"
#include "mechanics/thermal_change.hpp"
#include "mechanics/thread_geometry.hpp"
#include "mechanics/thread_stripping.hpp"
#include "mechanics/tightening_torque.hpp"

namespace faywright {

std::vector<Calculator> bolt_calculators() {
    using detail::make_calculator;
    return {
        make_calculator<ThreadGeometry>(),    make_calculator<TighteningTorque>(), make_calculator<NutFactorTorque>(),
        make_calculator<PreloadFromTorque>(), make_calculator<AssemblyStress>(),   make_calculator<BoltStiffness>(),
        make_calculator<LoadFactor>(),        make_calculator<EmbeddingLoss>(),    make_calculator<ThermalChange>(),
        make_calculator<ClampLife>(),         make_calculator<ThreadStripping>(),  make_calculator<BoltFatigue>(),
        make_calculator<SurfacePressure>(),
    };
}

}  // namespace faywright
