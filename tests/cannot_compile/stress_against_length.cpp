// SPDX-License-Identifier: MIT
#include "quantity/quantity.hpp"

using namespace faywright;

#ifdef CORRECT
const bool yields = MPa(240) < MPa(3);
#else
const bool yields = MPa(240) < mm(3);
#endif
