// SPDX-License-Identifier: MIT
#include "assess/make_calculator.hpp"
#include "corrosion/faraday_rate.hpp"
#include "corrosion/mixed_potential.hpp"
#include "corrosion/throwing_length.hpp"

namespace faywright {

std::vector<Calculator> galvanic_calculators() {
    using detail::make_calculator;
    return {make_calculator<FaradayRate>(), make_calculator<MixedPotential>(), make_calculator<ThrowingLength>()};
}

}  // namespace faywright
