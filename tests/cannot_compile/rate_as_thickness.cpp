// SPDX-License-Identifier: MIT
// Micrometres a year are no micrometres.
#include "corrosion/coating_life.hpp"

faywright::CoatingLife::Answer life() {
    using namespace faywright;
#ifdef CORRECT
    const auto zinc = um(50);
#else
    const auto zinc = um_per_a(50);
#endif
    return CoatingLife::compute({.thickness = zinc, .rate_low = {}, .rate_high = um_per_a(2.1)});
}
