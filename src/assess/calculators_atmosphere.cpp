// SPDX-License-Identifier: MIT
#include "assess/make_calculator.hpp"
#include "corrosion/atmosphere_category.hpp"
#include "corrosion/chloride_from_distance.hpp"
#include "corrosion/coating_life.hpp"
#include "corrosion/first_year_loss.hpp"
#include "corrosion/long_term_loss.hpp"

namespace faywright {

std::vector<Calculator> atmosphere_calculators() {
    using detail::make_calculator;
    return {make_calculator<ChlorideFromDistance>(), make_calculator<FirstYearLoss>(), make_calculator<AtmosphereCategory>(),
            make_calculator<LongTermLoss>(), make_calculator<CoatingLife>()};
}

}  // namespace faywright
