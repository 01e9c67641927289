// SPDX-License-Identifier: MIT
#include "quantity/quantity.hpp"

using namespace faywright;

double tightened_to(Moment torque) { return in_Nm(torque); }

#ifdef CORRECT
double done() { return tightened_to(kN(5) * mm(17)); }
#else
double done() { return tightened_to(kN(5)); }  // a force without its lever
#endif
