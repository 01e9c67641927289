// SPDX-License-Identifier: MIT
#include "assess/make_calculator.hpp"
#include "corrosion/couple.hpp"
#include "corrosion/isolation_effect.hpp"

namespace faywright {

std::vector<Calculator> isolation_calculators() {
    using detail::make_calculator;
    return {make_calculator<Couple>(), make_calculator<IsolationEffect>()};
}

}  // namespace faywright
