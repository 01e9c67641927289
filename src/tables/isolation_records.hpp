// SPDX-License-Identifier: MIT
#pragma once

#include "corrosion/isolation_effect.hpp"

#include <optional>
#include <string>

namespace faywright {

/// Where an element of isolation has its place. One of each place makes a method.
enum class IsolationPlace { faying, fixing, tube, edge };
template <>
struct Words<IsolationPlace> {
    static constexpr std::array<std::pair<IsolationPlace, std::string_view>, 4> all{{{IsolationPlace::faying, "faying faces"},
                                                                                     {IsolationPlace::fixing, "bolt"},
                                                                                     {IsolationPlace::tube, "crush tube"},
                                                                                     {IsolationPlace::edge, "edges"}}};
};

/// One element of isolation: what it does to the joint's parts, to the metallic path and to the electrolyte, and how it ages.
struct IsolationElement {
    static constexpr std::string_view table = "isolation", row_key = "element";
    IsolationPlace place = IsolationPlace::faying;
    std::optional<std::string> layer, plate_surface, rail_surface, tube_material, tube_coating;
    bool keeps_zinc = false;
    std::optional<Length> sleeve;
    std::optional<std::string> washer_layer;
    bool insulates = false;
    double path_new = 1, path_aged = 1;
    double electrolyte_new = 1, electrolyte_middle = 1, electrolyte_neglected = 1;
    Duration life_low = years(20), life_high = years(20);
    Duration inspection = years(1);
    std::string absorbs = "no";
    std::string steps, inspect;
    std::optional<std::string> hazards;

    [[nodiscard]] Duration life() const { return 0.5 * (life_low + life_high); }
    [[nodiscard]] Ageing electrolyte() const { return {electrolyte_new, electrolyte_middle, electrolyte_neglected}; }

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        const Range share{0.0, 1.0};
        const Range span{hours(720), years(100)};
        field(Name{"place", "", "where it goes"}, self.place);
        field(Name{"layer", "", "row of the layers table that it puts between the faying faces"}, self.layer);
        field(Name{"plate-surface", "", "surface it gives the attached plates, unless they have that kind of coat already"},
              self.plate_surface);
        field(Name{"rail-surface", "", "surface it gives the rail, unless it has that kind of coat already"}, self.rail_surface);
        field(Name{"keeps-zinc", "", "a plate that was galvanised stays so under the new surface"}, self.keeps_zinc, defaulted);
        field(Name{"tube-material", "", "material of the crush tube"}, self.tube_material);
        field(Name{"tube-coating", "", "row of the coatings table on the crush tube"}, self.tube_coating);
        field(Name{"sleeve", "", "wall of the sleeve round the bolt"}, self.sleeve, Range{mm(0.1), mm(5)});
        field(Name{"washer-layer", "", "row of the layers table that insulates head or nut from the rail"}, self.washer_layer);
        field(Name{"insulates", "", "no metal passes through it"}, self.insulates, defaulted);
        field(Name{"path-new", "P_n", "share of a couple's current that passes it when new, nothing else bridging"}, self.path_new, share,
              defaulted);
        field(Name{"path-aged", "P_a", "the same when aged"}, self.path_aged, share, defaulted);
        field(Name{"electrolyte-new", "W_n", "share of the electrolyte that reaches the contact when new"}, self.electrolyte_new, share,
              defaulted);
        field(Name{"electrolyte-middle", "W_m", "the same at half its life"}, self.electrolyte_middle, share, defaulted);
        field(Name{"electrolyte-neglected", "W_a", "the same when neglected beyond its life"}, self.electrolyte_neglected, share,
              defaulted);
        field(Name{"life-low", "", "its life on the road by the sea, low end"}, self.life_low, span);
        field(Name{"life-high", "", "the same, high end"}, self.life_high, span);
        field(Name{"inspection", "", "between inspections"}, self.inspection, span);
        field(Name{"absorbs", "", "water it takes up or wicks"}, self.absorbs, defaulted);
        field(Name{"steps", "", "what the fitter does"}, self.steps);
        field(Name{"inspect", "", "what is looked at"}, self.inspect);
        field(Name{"hazards", "", "what goes wrong with it"}, self.hazards);
    }
    static const char* fault(const IsolationElement& e) {
        if (e.path_new > e.path_aged) return "isolation that improves with age";
        if (e.electrolyte_new > e.electrolyte_middle || e.electrolyte_middle > e.electrolyte_neglected)
            return "a seal that improves with age";
        if (e.life_low > e.life_high) return "the band of life is upside down";
        const bool right = e.place == IsolationPlace::faying   ? !e.tube_material && !e.tube_coating && !e.sleeve && !e.washer_layer
                           : e.place == IsolationPlace::fixing ? !e.layer && !e.plate_surface && !e.rail_surface && !e.tube_material
                           : e.place == IsolationPlace::tube
                               ? e.tube_material && !e.layer && !e.plate_surface && !e.rail_surface && !e.sleeve
                               : !e.layer && !e.plate_surface && !e.rail_surface && !e.tube_material && !e.sleeve;
        return right ? nullptr : "it changes what its place does not have";
    }
};

}  // namespace faywright
