// SPDX-License-Identifier: MIT
#include "quantity/quantity.hpp"

using namespace faywright;

#ifdef CORRECT
const Force f = newton(5.0);
#else
const Force f = 5.0;
#endif
