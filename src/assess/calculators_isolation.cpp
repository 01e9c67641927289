// SPDX-License-Identifier: MIT
#include "assess/make_calculator.hpp"

namespace faywright {

std::vector<Calculator> isolation_calculators() { return {}; }

}  // namespace faywright
