// SPDX-License-Identifier: MIT
#include "quantity/quantity.hpp"

using namespace faywright;

Temperature warmed() {
    Temperature t = degC(20);
#ifdef CORRECT
    t += kelvin(5);
#else
    t = kelvin(5);
#endif
    return t;
}
