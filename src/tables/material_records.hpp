// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/field.hpp"
#include "quantity/quantity.hpp"

#include <optional>
#include <string>

namespace faywright {

enum class Family { aluminium, steel, stainless };

template <>
struct Words<Family> {
    static constexpr std::array<std::pair<Family, std::string_view>, 3> all{
        {{Family::aluminium, "aluminium"}, {Family::steel, "steel"}, {Family::stainless, "stainless"}}};
};

/// A material as its standard delivers it: alloy and temper alone are not enough, form and thickness belong to it.
struct Material {
    static constexpr std::string_view table = "materials", row_key = "material";
    std::optional<std::string> alloy, temper;
    Family family = Family::steel;
    std::string standard, form;
    std::optional<Length> thickness_above, thickness_up_to;
    Stress proof_strength, ultimate_strength;
    std::optional<Stress> haz_proof_strength, haz_ultimate_strength;
    Stress elastic_modulus;
    double poisson_ratio = 0.3;
    Expansion expansion;
    Density density;
    Stress surface_pressure;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        const Range strength{MPa(30), MPa(2000)};
        field(Name{"alloy", "", "alloy number"}, self.alloy);
        field(Name{"temper", "", "temper"}, self.temper);
        field(Name{"family", "", "family"}, self.family);
        field(Name{"standard", "", "standard that gives the strengths"}, self.standard);
        field(Name{"form", "", "product form"}, self.form);
        field(Name{"thickness-above", "", "holds above this thickness"}, self.thickness_above, Range{mm(0), mm(500)});
        field(Name{"thickness-up-to", "", "holds up to this thickness"}, self.thickness_up_to, Range{mm(0.1), mm(1000)});
        field(Name{"proof-strength", "f_o", "yield or 0.2 % proof strength"}, self.proof_strength, strength);
        field(Name{"ultimate-strength", "f_u", "ultimate strength"}, self.ultimate_strength, strength);
        field(Name{"haz-proof-strength", "f_o_haz", "proof strength beside a weld"}, self.haz_proof_strength, strength);
        field(Name{"haz-ultimate-strength", "f_u_haz", "ultimate strength beside a weld"}, self.haz_ultimate_strength, strength);
        field(Name{"elastic-modulus", "E", "modulus of elasticity"}, self.elastic_modulus, Range{GPa(40), GPa(250)});
        field(Name{"poisson-ratio", "nu", "Poisson's ratio"}, self.poisson_ratio, Range{0.2, 0.4});
        field(Name{"expansion", "alpha", "thermal expansion"}, self.expansion, Range{per_K(5e-6), per_K(30e-6)});
        field(Name{"density", "rho", "density"}, self.density, Range{kg_per_m3(1500), kg_per_m3(9000)});
        field(Name{"surface-pressure", "p_G", "permissible surface pressure"}, self.surface_pressure, strength);
    }
    static const char* fault(const Material& m) {
        if (m.proof_strength > m.ultimate_strength) return "proof strength above ultimate strength";
        if (m.haz_proof_strength && *m.haz_proof_strength > m.proof_strength) return "stronger beside a weld than away from it";
        if (m.haz_ultimate_strength && *m.haz_ultimate_strength > m.ultimate_strength) return "stronger beside a weld than away from it";
        if (m.haz_proof_strength && m.haz_ultimate_strength && *m.haz_proof_strength > *m.haz_ultimate_strength)
            return "proof strength above ultimate strength beside a weld";
        if (m.thickness_above && m.thickness_up_to && *m.thickness_above >= *m.thickness_up_to) return "the thickness range is empty";
        return nullptr;
    }
};

/// What covers a metal.
enum class Coat { none, zinc, organic, oxide };
template <>
struct Words<Coat> {
    static constexpr std::array<std::pair<Coat, std::string_view>, 4> all{
        {{Coat::none, "none"}, {Coat::zinc, "zinc"}, {Coat::organic, "organic"}, {Coat::oxide, "oxide"}}};
};

/// The condition of a faying surface.
struct Surface {
    static constexpr std::string_view table = "surfaces", row_key = "surface";
    Coat coat = Coat::none;
    std::string roughness;
    Length coating_thickness;
    double creep_loss_fraction = 0;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"coat", "", "what covers the metal"}, self.coat);
        field(Name{"roughness", "", "class of roughness Rz, a word of the embedding table"}, self.roughness);
        field(Name{"coating-thickness", "", "thickness of the coating"}, self.coating_thickness, Range{um(0), um(1000)});
        field(Name{"creep-loss-fraction", "", "share of preload lost by creep of the coating at one faying interface"},
              self.creep_loss_fraction, Range{0.0, 0.9});
    }
};

/// Friction between two faying surfaces, with a layer between them where one is named.
struct SlipFactor {
    static constexpr std::string_view table = "slip-factors", row_key = "slip-factor";
    std::string a, b;
    std::optional<std::string> between;
    double low = 0, design = 0, high = 0;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"a", "", "one surface"}, self.a);
        field(Name{"b", "", "the other surface"}, self.b);
        field(Name{"between", "", "layer between them"}, self.between);
        field(Name{"slip-factor-low", "", "low end of the band"}, self.low, Range{0.0, 1.0});
        field(Name{"slip-factor", "mu", "value for design"}, self.design, Range{0.0, 1.0});
        field(Name{"slip-factor-high", "", "high end of the band"}, self.high, Range{0.0, 1.0});
    }
    static const char* fault(const SlipFactor& s) { return s.low <= s.design && s.design <= s.high ? nullptr : "the band is not in order"; }
};

/// Embedding amounts by roughness and kind of loading.
struct Embedding {
    static constexpr std::string_view table = "embedding", row_key = "embedding";
    std::string roughness, loading;
    Length thread, head, interface;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        const Range amount{um(0), um(50)};
        field(Name{"roughness", "", "class of roughness Rz"}, self.roughness);
        field(Name{"loading", "", "axial or shear"}, self.loading);
        field(Name{"thread", "", "in the thread"}, self.thread, amount);
        field(Name{"head", "", "at each head or nut face"}, self.head, amount);
        field(Name{"interface", "", "at each inner interface"}, self.interface, amount);
    }
};

/// A stocked tube for crush tubes.
struct StockTube {
    static constexpr std::string_view table = "tubes", row_key = "tube";
    Length outside_diameter, wall;
    std::string material_group;
    Length outside_tolerance;
    double wall_tolerance = 0.1;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"outside-diameter", "D_o", "outside diameter"}, self.outside_diameter, Range{mm(4), mm(150)});
        field(Name{"wall", "t", "wall thickness"}, self.wall, Range{mm(0.5), mm(20)});
        field(Name{"material-group", "", "steel, stainless or aluminium"}, self.material_group);
        field(Name{"outside-tolerance", "", "tolerance of the outside diameter, plus or minus"}, self.outside_tolerance,
              Range{mm(0), mm(2)});
        field(Name{"wall-tolerance", "", "tolerance of the wall, plus or minus, as a share"}, self.wall_tolerance, Range{0.0, 0.3});
    }
    static const char* fault(const StockTube& t) { return 2.0 * t.wall < t.outside_diameter ? nullptr : "the wall fills the tube"; }
};

/// How hard the joint's life is, and the design factor on static loads that custom asks for it.
struct ServiceClass {
    static constexpr std::string_view table = "service", row_key = "service-class";
    double design_factor = 1;
    std::string description;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"design-factor", "", "design factor on static load"}, self.design_factor, Range{1.0, 20.0});
        field(Name{"description", "", "what it covers"}, self.description);
    }
};

/// A layer between faying surfaces: compound, sealant, tape, gasket.
/// How a layer comes into the joint: laid dry, or spread wet, when it is pressed out by the bolts and may set after that.
enum class LayerForm { dry, wet, setting };
template <>
struct Words<LayerForm> {
    static constexpr std::array<std::pair<LayerForm, std::string_view>, 3> all{
        {{LayerForm::dry, "dry"}, {LayerForm::wet, "wet"}, {LayerForm::setting, "wet, sets"}}};
};

struct LayerMaterial {
    static constexpr std::string_view table = "layers", row_key = "layer";
    Length thickness;
    Stress elastic_modulus;
    double creep_loss_fraction = 0;
    Stress pressure_limit;
    Temperature temperature_least = degC(-40), temperature_most = degC(80);
    double slip_factor = 0;
    bool sustained_clamp = true;
    LayerForm form = LayerForm::dry;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"thickness", "", "usual thickness as assembled"}, self.thickness, Range{um(1), mm(20)});
        field(Name{"elastic-modulus", "E", "modulus in compression"}, self.elastic_modulus, Range{MPa(0.5), GPa(250)});
        field(Name{"creep-loss-fraction", "", "share of preload lost to creep of this layer over life"}, self.creep_loss_fraction,
              Range{0.0, 1.0});
        field(Name{"pressure-limit", "", "pressure the layer stands"}, self.pressure_limit, Range{MPa(0.1), MPa(1000)});
        field(Name{"temperature-least", "", "least service temperature"}, self.temperature_least, Range{degC(-100), degC(50)});
        field(Name{"temperature-most", "", "greatest service temperature"}, self.temperature_most, Range{degC(20), degC(500)});
        field(Name{"slip-factor", "", "slip factor across the layer for design"}, self.slip_factor, Range{0.0, 1.0});
        field(Name{"sustained-clamp", "", "a clamp force through the layer may be relied on"}, self.sustained_clamp);
        field(Name{"form", "", "laid dry, or spread wet and pressed out, and whether it sets then"}, self.form, defaulted);
    }
    static const char* fault(const LayerMaterial& l) {
        return l.temperature_least < l.temperature_most ? nullptr : "the temperature range is empty";
    }
};

}  // namespace faywright
