// SPDX-License-Identifier: MIT
#pragma once

#include "corrosion/site.hpp"

#include <string>

namespace faywright {

/// A place where buyers live, by name. A site file holds one of these.
struct Exposure : Site {
    static constexpr std::string_view table = "exposures", row_key = "exposure";
    std::string description;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"description", "", "what it is like"}, self.description);
        Site::describe(field, self);
    }
};

/// What a joint is wetted with in one category of corrosivity, and what that does to couples and crevices.
struct Electrolyte {
    static constexpr std::string_view table = "electrolytes", row_key = "electrolyte";
    Corrosivity category = Corrosivity::c1;
    Conductivity conductivity;
    Length film;
    double wet_share = 0;
    Concentration chloride;
    double multiplier = 0, multiplier_band = 1, crevice = 1, crevice_band = 1, zinc_crevice = 1;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"category", "", "category at the joint"}, self.category);
        field(Name{"conductivity", "k", "conductivity"}, self.conductivity, Range{S_per_cm(1e-7), S_per_cm(1)});
        field(Name{"film", "d", "thickness of the wet film"}, self.film, Range{um(0.01), mm(10)});
        field(Name{"wet-share", "f_w", "share of the year that it is wet"}, self.wet_share, Range{0.01, 1.0});
        field(Name{"chloride", "c", "chloride in the film"}, self.chloride, Range{mol_per_L(1e-6), mol_per_L(6)});
        field(Name{"multiplier", "m", "what a couple of equal areas with rusty steel adds, as a multiple of the anode's own rate"},
              self.multiplier, Range{0.0, 50.0});
        field(Name{"multiplier-band", "b_m", "factor either way within which that lies"}, self.multiplier_band, Range{1.0, 20.0});
        field(Name{"crevice", "c_0", "factor on aluminium's own rate in an unsealed crevice"}, self.crevice, Range{1.0, 20.0});
        field(Name{"crevice-band", "", "factor either way within which that lies"}, self.crevice_band, Range{1.0, 20.0});
        field(Name{"zinc-crevice", "", "factor on zinc's own rate in an unsealed crevice"}, self.zinc_crevice, Range{1.0, 20.0});
    }
};

}  // namespace faywright
