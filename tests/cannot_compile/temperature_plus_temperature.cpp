// SPDX-License-Identifier: MIT
#include "quantity/quantity.hpp"

using namespace faywright;

#ifdef CORRECT
const auto span = degC(60) - degC(20);
#else
const auto sum = degC(60) + degC(20);
#endif
