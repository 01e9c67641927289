// SPDX-License-Identifier: MIT
#include "mechanics/bearing.hpp"

using namespace faywright;

Bearing::Inputs wall() {
    Bearing::Inputs in;
#ifdef CORRECT
    in.thickness = mm(3.0);
#else
    in.thickness = 3.0;
#endif
    return in;
}
