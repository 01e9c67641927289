// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <optional>

namespace faywright {

/// Charge of a mole of electrons.
inline constexpr MolarCharge faraday = MolarCharge::from_value(96485.332);

/// What Faraday's law needs to know of a metal. An alloy is given by its equivalent weight with valence 1.
struct Dissolution {
    MolarMass molar_mass;
    double valence = 1;
    Density density;
};

/// Rate at which a current leaving a surface eats into it: i M/(z F ρ).
[[nodiscard]] inline Speed penetration_rate(CurrentDensity i, const Dissolution& metal) {
    return i * metal.molar_mass / (metal.valence * faraday * metal.density);
}

/// The current that a rate of attack stands for.
[[nodiscard]] inline CurrentDensity dissolution_current(Speed rate, const Dissolution& metal) {
    return rate * metal.valence * faraday * metal.density / metal.molar_mass;
}

/// Mass a current takes in a time: I M/(z F).
[[nodiscard]] inline auto mass_rate(Current I, const Dissolution& metal) { return I * metal.molar_mass / (metal.valence * faraday); }

/// Metals whose molar mass, usual valence and density are known here.
enum class DissolvingMetal { zinc, aluminium, iron, cadmium, magnesium, copper, nickel };

template <>
struct Words<DissolvingMetal> {
    static constexpr std::array<std::pair<DissolvingMetal, std::string_view>, 7> all{{{DissolvingMetal::zinc, "zinc"},
                                                                                      {DissolvingMetal::aluminium, "aluminium"},
                                                                                      {DissolvingMetal::iron, "iron"},
                                                                                      {DissolvingMetal::cadmium, "cadmium"},
                                                                                      {DissolvingMetal::magnesium, "magnesium"},
                                                                                      {DissolvingMetal::copper, "copper"},
                                                                                      {DissolvingMetal::nickel, "nickel"}}};
};

[[nodiscard]] inline Dissolution dissolution_of(DissolvingMetal metal) {
    switch (metal) {
        case DissolvingMetal::zinc: return {g_per_mol(65.38), 2, kg_per_m3(7140)};
        case DissolvingMetal::aluminium: return {g_per_mol(26.982), 3, kg_per_m3(2700)};
        case DissolvingMetal::iron: return {g_per_mol(55.845), 2, kg_per_m3(7860)};
        case DissolvingMetal::cadmium: return {g_per_mol(112.41), 2, kg_per_m3(8650)};
        case DissolvingMetal::magnesium: return {g_per_mol(24.305), 2, kg_per_m3(1738)};
        case DissolvingMetal::copper: return {g_per_mol(63.546), 2, kg_per_m3(8960)};
        case DissolvingMetal::nickel: return {g_per_mol(58.693), 2, kg_per_m3(8900)};
    }
    return {};
}

/// Faraday's law: what a current that leaves a metal's surface takes away of it.
///
/// r = i M/(η z F ρ), m = r ρ, and the charge that eats 1 µm off 1 cm². η is the share of the loss that the current accounts for:
/// 1 by the law itself; aluminium in chloride also loses metal without current, so that η is 0.6 to 0.9.
struct FaradayRate {
    static constexpr Formula formula{.name = "faraday-rate",
                                     .title = "Rate of attack from the current that leaves a metal (Faraday's law)",
                                     .range = "attack even over the surface; local attack is deeper than this mean",
                                     .source = {"ASTM G102", "edition not recalled", "corrosion rate from current density", Basis::memory}};

    struct Inputs {
        CurrentDensity current_density;
        std::optional<DissolvingMetal> metal;
        std::optional<MolarMass> molar_mass;
        std::optional<double> valence;
        std::optional<Density> density;
        double current_share = 1.0;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"current-density", "i", "anodic current over the area it leaves"}, self.current_density,
                  Range{uA_per_cm2(0), uA_per_cm2(1e6)});
            field(Name{"metal", "", "metal whose values serve where none is given"}, self.metal);
            field(Name{"molar-mass", "", "molar mass (equivalent weight of an alloy, with valence 1)"}, self.molar_mass,
                  Range{g_per_mol(1), g_per_mol(300)});
            field(Name{"valence", "", "electrons given up by an atom"}, self.valence, Range{1.0, 8.0});
            field(Name{"density", "", "density"}, self.density, Range{kg_per_m3(500), kg_per_m3(25000)});
            field(Name{"current-share", "eta", "share of the loss that the current accounts for (aluminium in chloride 0.6 to 0.9)"},
                  self.current_share, Range{0.2, 1.0}, defaulted);
        }
    };

    struct Answer {
        Speed penetration_rate;
        Deposition mass_loss;
        Charge charge;
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"penetration-rate", "r", "depth lost in a time"}, self.penetration_rate);
            field(Name{"mass-loss", "m", "mass lost off an area in a time"}, self.mass_loss);
            field(Name{"charge", "Q", "charge that eats 1 um off 1 cm2"}, self.charge);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (!in.metal && !(in.molar_mass && in.valence && in.density)) return "name a metal, or give molar mass, valence and density";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const Dissolution named = in.metal ? dissolution_of(*in.metal) : Dissolution{};
        const auto& i = in.current_density;
        const auto& eta = in.current_share;
        FAYWRIGHT_STATED(F, "charge of a mole of electrons", faraday);
        FAYWRIGHT_STATED(M, "molar mass, as given or of the metal named", in.molar_mass.value_or(named.molar_mass));
        FAYWRIGHT_STATED(z, "valence, as given or of the metal named", in.valence.value_or(named.valence));
        FAYWRIGHT_STATED(rho, "density, as given or of the metal named", in.density.value_or(named.density));
        FAYWRIGHT_STEP(r, i * M / (eta * z * F * rho));
        FAYWRIGHT_STEP(m, r * rho);
        FAYWRIGHT_STEP(Q, eta * z * F * rho * um(1) * mm2(100) / M);
        return {r, m, Q};
    }
};

}  // namespace faywright
