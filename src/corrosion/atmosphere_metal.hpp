// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/field.hpp"

namespace faywright {

/// The four standard metals whose first-year loss the atmosphere's corrosivity is told by (ISO 9223).
enum class AtmosphereMetal { zinc, carbon_steel, copper, aluminium };

template <>
struct Words<AtmosphereMetal> {
    static constexpr std::array<std::pair<AtmosphereMetal, std::string_view>, 4> all{{{AtmosphereMetal::zinc, "zinc"},
                                                                                      {AtmosphereMetal::carbon_steel, "carbon steel"},
                                                                                      {AtmosphereMetal::copper, "copper"},
                                                                                      {AtmosphereMetal::aluminium, "aluminium"}}};
};

/// Corrosivity of an atmosphere towards one metal, by its loss in the first year (ISO 9223).
enum class Corrosivity { c1, c2, c3, c4, c5, cx };

template <>
struct Words<Corrosivity> {
    static constexpr std::array<std::pair<Corrosivity, std::string_view>, 6> all{{{Corrosivity::c1, "C1"},
                                                                                  {Corrosivity::c2, "C2"},
                                                                                  {Corrosivity::c3, "C3"},
                                                                                  {Corrosivity::c4, "C4"},
                                                                                  {Corrosivity::c5, "C5"},
                                                                                  {Corrosivity::cx, "CX"}}};
};

}  // namespace faywright
