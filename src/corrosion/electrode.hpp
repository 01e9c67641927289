// SPDX-License-Identifier: MIT
#pragma once

#include "corrosion/faraday_rate.hpp"
#include "quantity/field.hpp"
#include "quantity/quantity.hpp"

#include <array>
#include <cmath>
#include <optional>

/// One metal in one electrolyte: how its anodic and cathodic current follow its potential. Potentials are against the saturated
/// calomel electrode (SCE) unless said. Standard theory of Wagner and Traud, Evans, Stern: recalled, not looked up.
namespace faywright {

/// How a metal's own dissolution follows its potential.
enum class AnodicBehaviour {
    active,   ///< grows tenfold with each slope: zinc, bare steel
    pitting,  ///< passive below its pitting potential, grows tenfold with each slope above it: aluminium in chloride
    passive,  ///< the same at every potential: stainless that does not pit
};

template <>
struct Words<AnodicBehaviour> {
    static constexpr std::array<std::pair<AnodicBehaviour, std::string_view>, 3> all{
        {{AnodicBehaviour::active, "active"}, {AnodicBehaviour::pitting, "pitting"}, {AnodicBehaviour::passive, "passive"}}};
};

namespace detail {
/// 10 to the share of two potentials. No electrode carries 10^100 times its reference current: the limit keeps numbers finite.
[[nodiscard]] inline double decades(Potential over, Potential slope) {
    return std::exp(std::numbers::ln10 * std::clamp(double(over / slope), -100.0, 100.0));
}
}  // namespace detail

/// Polarisation of a metal's surface.
struct Polarisation {
    AnodicBehaviour behaviour = AnodicBehaviour::active;
    CurrentDensity anodic_reference;            ///< at the anodic potential; below it, for pitting; everywhere, for passive
    std::optional<Potential> anodic_potential;  ///< for pitting the pitting potential; a passive metal has none
    std::optional<Potential> anodic_slope;      ///< a decade, upwards
    CurrentDensity cathodic_reference;          ///< at the cathodic potential, oxygen not yet scarce
    Potential cathodic_potential;
    Potential cathodic_slope = volt(0.12);  ///< a decade, downwards
    double limit_share = 1.0;               ///< share of the electrolyte's oxygen limit that this surface can use

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        const Range current{uA_per_cm2(1e-8), uA_per_cm2(1e5)};
        const Range potential{volt(-2.5), volt(1.5)};
        const Range slope{volt(0.01), volt(0.5)};
        field(Name{"behaviour", "", "how its dissolution follows the potential"}, self.behaviour);
        field(Name{"anodic-reference", "", "anodic current density at the anodic potential (passive current of a passive metal)"},
              self.anodic_reference, current);
        field(Name{"anodic-potential", "", "potential of the anodic reference, or the pitting potential"}, self.anodic_potential,
              potential);
        field(Name{"anodic-slope", "", "rise of potential for ten times the anodic current"}, self.anodic_slope, slope);
        field(Name{"cathodic-reference", "", "cathodic current density at the cathodic potential, oxygen not yet scarce"},
              self.cathodic_reference, current);
        field(Name{"cathodic-potential", "", "potential of the cathodic reference"}, self.cathodic_potential, potential);
        field(Name{"cathodic-slope", "", "fall of potential for ten times the cathodic current"}, self.cathodic_slope, slope, defaulted);
        field(Name{"limit-share", "", "share of the oxygen limit that the surface can use as a cathode"}, self.limit_share,
              Range{1e-4, 1.0}, defaulted);
    }

    [[nodiscard]] const char* fault() const {
        const bool given = anodic_potential && anodic_slope;
        return behaviour == AnodicBehaviour::passive || given ? nullptr
                                                              : "a metal that is not passive needs its anodic potential and slope";
    }

    /// active: i_ref 10^((E - E_ref)/b_a); pitting: i_p (1 + 10^((E - E_pit)/b_pit)); passive: i_p.
    [[nodiscard]] CurrentDensity anodic_current(Potential E) const {
        if (behaviour == AnodicBehaviour::passive || fault() != nullptr) return anodic_reference;
        const double growth = detail::decades(E - *anodic_potential, *anodic_slope);
        return anodic_reference * (behaviour == AnodicBehaviour::pitting ? 1.0 + growth : growth);
    }

    /// Size of the cathodic current, activation and oxygen's diffusion in series (Koutecky and Levich): 1/i_c = 1/i_act + 1/(share i_L),
    /// i_act = i_ref 10^((E_ref - E)/b_c).
    [[nodiscard]] CurrentDensity cathodic_current(Potential E, CurrentDensity i_L) const {
        const CurrentDensity activated = cathodic_reference * detail::decades(cathodic_potential - E, cathodic_slope);
        const CurrentDensity limit = limit_share * i_L;
        return activated * double(limit / (activated + limit));
    }
};

/// Pitting potential of aluminium where the water holds `chloride`, from that at 0.6 mol/L: it rises as chloride thins out, by 0.09 to 0.12
/// V a decade (recalled). Chloride is taken within 1e-5 and 6 mol/L.
[[nodiscard]] inline Potential pitting_potential(Potential at_0_6, Concentration chloride, Potential per_decade = volt(0.10)) {
    return at_0_6 - per_decade * std::log10(std::clamp(in_mol_per_L(chloride), 1e-5, 6.0) / 0.6);
}

/// Oxygen dissolved from air at 25 °C.
struct DissolvedOxygen {
    Diffusivity diffusivity;
    Concentration concentration;
};
[[nodiscard]] inline DissolvedOxygen oxygen_in_seawater() { return {cm2_per_s(2.0e-5), mol_per_L(2.1e-4)}; }
[[nodiscard]] inline DissolvedOxygen oxygen_in_fresh_water() { return {cm2_per_s(2.1e-5), mol_per_L(2.6e-4)}; }

/// What the surface of a film takes up from the air: no thinner film lets more through.
[[nodiscard]] inline CurrentDensity oxygen_uptake_limit() { return uA_per_cm2(1000); }
/// Water deeper than this stirs itself: the still layer of textbooks.
[[nodiscard]] inline Length still_layer() { return mm(0.5); }
/// Below this film thickness the diffusion law promises more oxygen than is found.
[[nodiscard]] inline Length thinnest_law_film() { return um(20); }

/// Limiting current of oxygen reduction through a film or still layer: n F D C/δ with n = 4, δ no more than the still layer, and no more
/// current than the air's uptake. An upper bound; below 20 µm the law promises too much.
[[nodiscard]] inline CurrentDensity limiting_current(Length film, const DissolvedOxygen& oxygen) {
    const Length layer = max(min(film, still_layer()), um(0.001));
    return min(CurrentDensity(4.0 * faraday * oxygen.diffusivity * oxygen.concentration / layer), oxygen_uptake_limit());
}

/// B of Stern and Geary, i_corr = B/R_p: b_a b_c/(ln 10 (b_a + b_c)).
[[nodiscard]] inline Potential stern_geary(Potential anodic_slope, Potential cathodic_slope) {
    return anodic_slope * double(cathodic_slope / (anodic_slope + cathodic_slope)) / std::numbers::ln10;
}

/// Attack on an anode beside a cathode on its oxygen limit: r (1 + A_c/A_a), r the attack alone. Found by test on aluminium in 3.5 % NaCl.
[[nodiscard]] inline Speed catchment_rate(Speed alone, double cathode_over_anode) { return alone * (1.0 + cathode_over_anode); }

}  // namespace faywright
