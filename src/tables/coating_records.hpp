// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/field.hpp"
#include "quantity/quantity.hpp"

#include <optional>
#include <string>

namespace faywright {

/// How a coating of zinc was made.
enum class CoatingKind { hot_dip, centrifuged, electroplate, zinc_flake, sherardised, mechanical };

template <>
struct Words<CoatingKind> {
    static constexpr std::array<std::pair<CoatingKind, std::string_view>, 6> all{{{CoatingKind::hot_dip, "hot-dip galvanised"},
                                                                                  {CoatingKind::centrifuged, "centrifuged"},
                                                                                  {CoatingKind::electroplate, "electroplate"},
                                                                                  {CoatingKind::zinc_flake, "zinc flake"},
                                                                                  {CoatingKind::sherardised, "sherardised"},
                                                                                  {CoatingKind::mechanical, "mechanical"}}};
};

/// The zinc on an article of steel, as its standard asks for it: least local thickness, and where given least mean.
struct Coating {
    static constexpr std::string_view table = "coatings", row_key = "coating";
    CoatingKind kind = CoatingKind::hot_dip;
    std::string article;
    std::optional<Length> steel_thickness_above, steel_thickness_up_to;
    Length local_thickness;
    std::optional<Length> mean_thickness;
    std::optional<ArealMass> local_mass, mean_mass;
    double life_factor_low = 1, life_factor_high = 1;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        const Range thickness{um(1), um(500)};
        const Range mass{g_per_m2(5), g_per_m2(4000)};
        field(Name{"kind", "", "how it was made"}, self.kind);
        field(Name{"article", "", "what it is on"}, self.article);
        field(Name{"steel-thickness-above", "", "holds above this thickness of the steel"}, self.steel_thickness_above,
              Range{mm(0), mm(500)});
        field(Name{"steel-thickness-up-to", "", "holds up to this thickness of the steel"}, self.steel_thickness_up_to,
              Range{mm(0.1), mm(1000)});
        field(Name{"local-thickness", "d", "least local thickness"}, self.local_thickness, thickness);
        field(Name{"mean-thickness", "d_m", "least mean thickness"}, self.mean_thickness, thickness);
        field(Name{"local-mass", "", "least local mass on an area"}, self.local_mass, mass);
        field(Name{"mean-mass", "", "least mean mass on an area"}, self.mean_mass, mass);
        field(Name{"life-factor-low", "", "life against that of as thick a coat of zinc, low end"}, self.life_factor_low, Range{0.1, 10.0},
              defaulted);
        field(Name{"life-factor-high", "", "life against that of as thick a coat of zinc, high end"}, self.life_factor_high,
              Range{0.1, 10.0}, defaulted);
    }
    static const char* fault(const Coating& c) {
        if (c.mean_thickness && *c.mean_thickness < c.local_thickness) return "the least mean is below the least local thickness";
        if (c.local_mass && c.mean_mass && *c.mean_mass < *c.local_mass) return "the least mean is below the least local mass";
        if (c.life_factor_low > c.life_factor_high) return "the life factors are upside down";
        if (c.steel_thickness_above && c.steel_thickness_up_to && *c.steel_thickness_above >= *c.steel_thickness_up_to)
            return "the range of steel thickness is empty";
        return nullptr;
    }
};

}  // namespace faywright
