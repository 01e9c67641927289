// SPDX-License-Identifier: MIT
#pragma once

#include "corrosion/atmosphere_metal.hpp"
#include "corrosion/electrode.hpp"
#include "tables/table.hpp"

#include <optional>
#include <string>

namespace faywright {

/// A metal as corrosion knows it.
struct Metal {
    static constexpr std::string_view table = "metals", row_key = "metal";
    std::optional<AtmosphereMetal> atmosphere;
    std::optional<MolarMass> molar_mass;
    std::optional<double> valence;
    std::optional<Density> density;
    double cathode_strength_low = 0, cathode_strength = 0, cathode_strength_high = 0;
    std::optional<Polarisation> polarisation;
    std::optional<std::string> compatibility_group;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        const Range strength{0.0, 1.0};
        field(Name{"atmosphere", "", "the standard metal whose loss in air is its own"}, self.atmosphere);
        field(Name{"molar-mass", "M", "molar mass (equivalent weight of an alloy, with valence 1)"}, self.molar_mass,
              Range{g_per_mol(1), g_per_mol(300)});
        field(Name{"valence", "z", "electrons given up by an atom"}, self.valence, Range{1.0, 8.0});
        field(Name{"density", "rho", "density"}, self.density, Range{kg_per_m3(500), kg_per_m3(25000)});
        field(Name{"cathode-strength-low", "", "low end of the band"}, self.cathode_strength_low, strength);
        field(Name{"cathode-strength", "", "share of the oxygen limit it uses as a cathode on aluminium"}, self.cathode_strength, strength);
        field(Name{"cathode-strength-high", "", "high end of the band"}, self.cathode_strength_high, strength);
        field(Name{"polarisation", "", "its curves in seawater, V (SCE)"}, self.polarisation);
        field(Name{"compatibility-group", "", "letter of its group in the matrix of MIL-STD-889C"}, self.compatibility_group);
    }
    static const char* fault(const Metal& m) {
        if (m.molar_mass.has_value() != m.valence.has_value() || m.valence.has_value() != m.density.has_value())
            return "molar mass, valence and density belong together";
        if (m.cathode_strength_low > m.cathode_strength || m.cathode_strength > m.cathode_strength_high) return "the band is not in order";
        return m.polarisation ? m.polarisation->fault() : nullptr;
    }

    /// What Faraday's law needs; nothing for what does not dissolve.
    [[nodiscard]] std::optional<Dissolution> dissolution() const {
        if (!molar_mass) return std::nullopt;
        return Dissolution{*molar_mass, *valence, *density};
    }
};

/// A published series of potentials. Numbers of different series have different electrodes and waters and never meet in one sum.
enum class PotentialSeries {
    astm_g82,      ///< flowing seawater, SCE
    boat_survey,   ///< quiet seawater, Ag/AgCl
    galvanizers,   ///< seawater, electrode not named (by its shift very probably Cu/CuSO4)
    astm_g69,      ///< aluminium alloys in chloride with peroxide, SCE
    anodic_index,  ///< volts below gold: a common practice, not to be taken for a rate
};

template <>
struct Words<PotentialSeries> {
    static constexpr std::array<std::pair<PotentialSeries, std::string_view>, 5> all{{{PotentialSeries::astm_g82, "ASTM G82"},
                                                                                      {PotentialSeries::boat_survey, "boat survey"},
                                                                                      {PotentialSeries::galvanizers, "galvanizers"},
                                                                                      {PotentialSeries::astm_g69, "ASTM G69"},
                                                                                      {PotentialSeries::anodic_index, "anodic index"}}};
};

/// One entry of a series.
struct SeriesPotential {
    static constexpr std::string_view table = "potentials", row_key = "potential";
    PotentialSeries series = PotentialSeries::astm_g82;
    std::string metal;
    std::optional<std::string> state;
    Potential potential;
    std::optional<Potential> low, high;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        const Range against{volt(-2.5), volt(1)};
        field(Name{"series", "", "series it belongs to"}, self.series);
        field(Name{"metal", "", "metal of the table of metals"}, self.metal);
        field(Name{"state", "", "alloy, surface or state, where it matters"}, self.state);
        field(Name{"potential", "E", "potential in that series"}, self.potential, against);
        field(Name{"low", "", "most active end of the range"}, self.low, against);
        field(Name{"high", "", "noblest end of the range"}, self.high, against);
    }
    // A middle taken from another reading than the range may lie a little outside it.
    static const char* fault(const SeriesPotential& p) {
        if (p.low.has_value() != p.high.has_value()) return "low and high belong together";
        return p.low && *p.low > *p.high ? "the range is upside down" : nullptr;
    }
};

/// By how much `b` is nobler than `a`; nothing for numbers of different series.
[[nodiscard]] inline std::optional<Potential> difference(const SeriesPotential& a, const SeriesPotential& b) {
    if (a.series != b.series) return std::nullopt;
    return b.potential - a.potential;
}

/// Who rates a pair.
enum class CompatibilityScheme {
    mil_std_889c,        ///< C compatible, I not, without treatment; the damage to the anode, either order
    pd_6484,             ///< extra corrosion of the metal considered: 0 none, 1 slight to moderate, 2 fairly severe, 3 severe
    aluminium_handbook,  ///< statements of handbooks about aluminium
    adm,                 ///< rule of a design standard for aluminium
};

template <>
struct Words<CompatibilityScheme> {
    static constexpr std::array<std::pair<CompatibilityScheme, std::string_view>, 4> all{
        {{CompatibilityScheme::mil_std_889c, "MIL-STD-889C"},
         {CompatibilityScheme::pd_6484, "PD 6484"},
         {CompatibilityScheme::aluminium_handbook, "handbooks on aluminium"},
         {CompatibilityScheme::adm, "ADM M.7"}}};
};

/// What a published table or rule says of two metals in contact.
struct Compatibility {
    static constexpr std::string_view table = "compatibility", row_key = "compatibility";
    CompatibilityScheme scheme = CompatibilityScheme::mil_std_889c;
    std::string considered, contact;
    std::optional<std::string> rural, industrial, marine, fresh_water, sea_water, statement;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"scheme", "", "who rates"}, self.scheme);
        field(Name{"considered", "", "metal whose attack is rated (MIL-STD-889C: either)"}, self.considered);
        field(Name{"contact", "", "metal it touches"}, self.contact);
        field(Name{"rural", "", "in rural air"}, self.rural);
        field(Name{"industrial", "", "in industrial or urban air"}, self.industrial);
        field(Name{"marine", "", "in marine air"}, self.marine);
        field(Name{"fresh-water", "", "in fresh water"}, self.fresh_water);
        field(Name{"sea-water", "", "in sea water"}, self.sea_water);
        field(Name{"statement", "", "what it says in words"}, self.statement);
    }
    static const char* fault(const Compatibility& c) {
        const bool says = c.rural || c.industrial || c.marine || c.fresh_water || c.sea_water || c.statement;
        return says ? nullptr : "it says nothing";
    }
};

/// The cell of MIL-STD-889C for two metals by their groups, in either order; nothing where the matrix has none for them.
[[nodiscard]] inline const Row<Compatibility>* matrix_cell(const Table<Compatibility>& cells, const Table<Metal>& metals, const Metal& a,
                                                           const Metal& b) {
    if (!a.compatibility_group || !b.compatibility_group) return nullptr;
    for (const auto& cell : cells.rows) {
        if (cell.scheme != CompatibilityScheme::mil_std_889c) continue;
        const auto* first = metals.find(cell.considered);
        const auto* second = metals.find(cell.contact);
        if (first == nullptr || second == nullptr) continue;
        const auto pair = std::minmax(first->compatibility_group, second->compatibility_group);
        if (pair == std::minmax(a.compatibility_group, b.compatibility_group)) return &cell;
    }
    return nullptr;
}

}  // namespace faywright
