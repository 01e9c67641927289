// SPDX-License-Identifier: MIT
#include "assess/make_calculator.hpp"
#include "loads/coupling_values.hpp"
#include "loads/lap_forces.hpp"
#include "loads/nose_load.hpp"
#include "loads/speed_scaling.hpp"

namespace faywright {

std::vector<Calculator> load_calculators() {
    using detail::make_calculator;
    return {make_calculator<NoseLoad>(), make_calculator<CouplingValues>(), make_calculator<SpeedScaling>(), make_calculator<LapForces>()};
}

}  // namespace faywright
