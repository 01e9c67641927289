// SPDX-License-Identifier: MIT
// A current density is no rate of attack: Faraday's law stands between.
#include "corrosion/couple.hpp"
#include "corrosion/faraday_rate.hpp"

faywright::Couple::Answer couple() {
    using namespace faywright;
    const auto drawn = uA_per_cm2(30);
#ifdef CORRECT
    const auto bound = penetration_rate(drawn, dissolution_of(DissolvingMetal::zinc));
#else
    const auto bound = drawn;
#endif
    return Couple::compute({.own_rate = um_per_a(2), .multiplier = 4, .kinetic_bound = bound});
}
