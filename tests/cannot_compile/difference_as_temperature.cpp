// SPDX-License-Identifier: MIT
#include "quantity/quantity.hpp"

using namespace faywright;

double shown(Temperature t) { return in_degC(t); }

#ifdef CORRECT
const double reading = shown(degC(20) + kelvin(40));
#else
const double reading = shown(kelvin(40));  // a difference has no place on the scale
#endif
