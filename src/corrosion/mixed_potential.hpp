// SPDX-License-Identifier: MIT
#pragma once

#include "corrosion/electrode.hpp"
#include "corrosion/faraday_rate.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <boost/math/tools/toms748_solve.hpp>

#include <array>
#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace faywright {

/// The metals of the pack's working set: bulk seawater, tuned so that each alone shows about its known potential and rate.
enum class WorkingMetal { zinc, aluminium, carbon_steel, stainless };

template <>
struct Words<WorkingMetal> {
    static constexpr std::array<std::pair<WorkingMetal, std::string_view>, 4> all{{{WorkingMetal::zinc, "zinc"},
                                                                                   {WorkingMetal::aluminium, "aluminium"},
                                                                                   {WorkingMetal::carbon_steel, "carbon steel"},
                                                                                   {WorkingMetal::stainless, "stainless"}}};
};

[[nodiscard]] inline Polarisation working_polarisation(WorkingMetal metal) {
    using enum AnodicBehaviour;
    switch (metal) {
        case WorkingMetal::zinc: return {active, uA_per_cm2(5), volt(-1.03), volt(0.040), uA_per_cm2(1.0), volt(-0.80), volt(0.12), 0.5};
        case WorkingMetal::aluminium:
            return {pitting, uA_per_cm2(0.5), volt(-0.76), volt(0.020), uA_per_cm2(0.5), volt(-0.72), volt(0.12), 0.3};
        case WorkingMetal::carbon_steel:
            return {active, uA_per_cm2(20), volt(-0.65), volt(0.060), uA_per_cm2(20), volt(-0.50), volt(0.12), 1.0};
        case WorkingMetal::stainless: return {passive, uA_per_cm2(0.1), {}, {}, uA_per_cm2(0.1), volt(-0.05), volt(0.13), 1.0};
    }
    return {};
}

/// Stainless by the equivalent weight of 316 (ASTM G102, recalled).
[[nodiscard]] inline Dissolution working_dissolution(WorkingMetal metal) {
    switch (metal) {
        case WorkingMetal::zinc: return dissolution_of(DissolvingMetal::zinc);
        case WorkingMetal::aluminium: return dissolution_of(DissolvingMetal::aluminium);
        case WorkingMetal::carbon_steel: return dissolution_of(DissolvingMetal::iron);
        case WorkingMetal::stainless: return {g_per_mol(25.50), 1, kg_per_m3(7980)};
    }
    return {};
}

/// One metal of a couple: the surface the water reaches, its polarisation, and what it dissolves as.
struct ElectrodeMember {
    Area area;
    Polarisation polarisation;
    Dissolution dissolution;
};

inline constexpr std::size_t most_members = 8;

/// What becomes of one member.
struct MemberState {
    std::optional<Potential> own_potential;  ///< alone in the same water; none where oxygen cannot keep up with its passive current
    CurrentDensity anodic;                   ///< its dissolution at the common potential
    CurrentDensity own_anodic;               ///< its dissolution alone; what it is coupled, where it has no potential of its own
    CurrentDensity net;                      ///< dissolution less oxygen reduction on it: positive for an anode
    Current current;                         ///< net times area; the members' sum is nought
    Speed rate, own_rate;                    ///< by Faraday's law
};

struct MixedState {
    Potential potential;
    std::array<MemberState, most_members> members;  ///< in the order given; the rest is idle
};

namespace detail {

/// No metal in aerated water stands outside these (V, SCE).
[[nodiscard]] inline std::array<Potential, 2> potential_window() { return {volt(-3.0), volt(3.0)}; }

/// The potential between two others at which the members' dissolution and reduction are equal; nothing if it lies outside. Dissolution
/// rises with the potential and reduction falls, so there is one at most; their logarithms are nearly straight, which the search likes.
[[nodiscard]] inline std::optional<Potential> balance(std::span<const ElectrodeMember> members, CurrentDensity i_L, Potential low,
                                                      Potential high, double slack = 0.0) {
    const auto excess = [&](double E) {
        Current dissolved{}, reduced{};
        for (const auto& member : members) {
            dissolved += member.area * member.polarisation.anodic_current(volt(E));
            reduced += member.area * member.polarisation.cathodic_current(volt(E), i_L);
        }
        return std::log(double(dissolved / reduced));
    };
    const double at_low = excess(low.value()), at_high = excess(high.value());
    if (at_low >= 0.0) return at_low <= slack ? std::optional(low) : std::nullopt;
    if (at_high <= 0.0) return at_high >= -slack ? std::optional(high) : std::nullopt;
    std::uintmax_t most_steps = 200;
    const auto [from, to] = boost::math::tools::toms748_solve(excess, low.value(), high.value(), at_low, at_high,
                                                              boost::math::tools::eps_tolerance<double>(51), most_steps);
    return volt(0.5 * (from + to));
}

}  // namespace detail

/// Potential of one member alone, where its dissolution equals the oxygen reduced on it.
[[nodiscard]] inline std::optional<Potential> open_circuit_potential(const Polarisation& polarisation, CurrentDensity i_L) {
    const ElectrodeMember alone{mm2(100), polarisation, {}};
    const auto [low, high] = detail::potential_window();
    return detail::balance(std::span(&alone, 1), i_L, low, high);
}

/// Up to eight metals touching each other under one water of no resistance share one potential, at which what dissolves equals what is
/// reduced: Σ A_k (i_a,k - i_c,k) = 0. It lies between the members' own potentials. Nothing without members, beyond eight, or where no
/// potential between -3 and 3 V balances them. No allocation.
[[nodiscard]] inline std::optional<MixedState> mixed_potential(std::span<const ElectrodeMember> members, CurrentDensity i_L) {
    if (members.empty() || members.size() > most_members) return std::nullopt;
    const auto window = detail::potential_window();
    MixedState out;
    Potential low = window[1], high = window[0];
    for (std::size_t k = 0; k < members.size(); ++k) {
        const auto own = open_circuit_potential(members[k].polarisation, i_L);
        out.members[k].own_potential = own;
        low = min(low, own.value_or(window[0]));
        high = max(high, own.value_or(window[1]));
    }
    // At the outermost member's own potential the others push one way only; what is left of the wrong sign is the search's rounding.
    const bool straddled = low > window[0] && high < window[1];
    const auto common = detail::balance(members, i_L, low, high, straddled ? 1e-9 : 0.0);
    if (!common) return std::nullopt;
    out.potential = *common;
    for (std::size_t k = 0; k < members.size(); ++k) {
        const auto& [area, polarisation, dissolution] = members[k];
        auto& state = out.members[k];
        state.anodic = polarisation.anodic_current(*common);
        state.own_anodic = state.own_potential ? polarisation.anodic_current(*state.own_potential) : state.anodic;
        state.net = state.anodic - polarisation.cathodic_current(*common, i_L);
        state.current = state.net * area;
        state.rate = penetration_rate(state.anodic, dissolution);
        state.own_rate = penetration_rate(state.own_anodic, dissolution);
    }
    return out;
}

/// A member as a person writes it: one of the working set by name, or its polarisation in full.
struct CoupleMember {
    std::optional<WorkingMetal> metal;
    Area area;
    std::optional<Polarisation> polarisation;
    std::optional<DissolvingMetal> dissolves_as;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"metal", "", "metal of the working set"}, self.metal);
        field(Name{"area", "", "surface the water reaches"}, self.area, Range{mm2(1e-3), mm2(1e9)});
        field(Name{"polarisation", "", "instead of the working set's"}, self.polarisation);
        field(Name{"dissolves-as", "", "what the rate counts, instead of the metal's own"}, self.dissolves_as);
    }

    [[nodiscard]] ElectrodeMember electrode() const {
        return {area, polarisation ? *polarisation : working_polarisation(*metal),
                dissolves_as ? dissolution_of(*dissolves_as) : working_dissolution(*metal)};
    }
};

/// Mixed potential: metals that touch and share one water, each driven by the others.
///
/// Σ A_k (i_a,k(E) - i_c,k(E)) = 0. The working set is judgement, tuned to known potentials and rates in bulk seawater; rates are those of
/// well-mixed water without resistance and so an upper bound, and a mean: pits go deeper.
struct MixedPotential {
    static constexpr Formula formula{.name = "mixed-potential",
                                     .title = "Common potential and rates of attack of metals in contact under one water",
                                     .range = "water that conducts well and is mixed; up to eight metals; between -3 and 3 V",
                                     .source = {"Wagner and Traud, Zeitschrift fuer Elektrochemie 44", "1938",
                                                "mixed potentials; curves after Evans, Stern, Koutecky and Levich", Basis::memory}};

    struct Inputs {
        std::vector<CoupleMember> members;
        CurrentDensity oxygen_limit = uA_per_cm2(30);

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"members", "", "metals in contact"}, self.members);
            field(Name{"oxygen-limit", "i_L", "limiting current density of oxygen in this water (still seawater 30, thin films more)"},
                  self.oxygen_limit, Range{uA_per_cm2(0.01), uA_per_cm2(10000)}, defaulted);
        }
    };

    struct Answer {
        Potential potential;
        std::vector<Potential> own_potentials;
        std::vector<CurrentDensity> anodic, net;
        std::vector<Current> currents;
        std::vector<Speed> rates, own_rates;
        Speed worst_rate;
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"potential", "E", "common potential (SCE, with the working set)"}, self.potential);
            field(Name{"own-potentials", "", "each member's potential alone, in the order given (none if one has none)"},
                  self.own_potentials);
            field(Name{"anodic", "", "each member's dissolution current density"}, self.anodic);
            field(Name{"net", "", "each member's net current density, an anode's positive"}, self.net);
            field(Name{"currents", "", "each member's net current; they sum to nought"}, self.currents);
            field(Name{"rates", "", "each member's rate of attack"}, self.rates);
            field(Name{"own-rates", "", "each member's rate of attack alone"}, self.own_rates);
            field(Name{"worst-rate", "", "the greatest rate of attack"}, self.worst_rate);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (in.members.empty()) return "no metal is given";
        if (in.members.size() > most_members) return "at most eight metals are accepted";
        for (const auto& member : in.members) {
            if (!member.metal && !member.polarisation) return "a member needs its metal's name or its polarisation";
            if (!member.metal && !member.dissolves_as) return "a member given by its polarisation needs what it dissolves as";
            if (member.polarisation && member.polarisation->fault() != nullptr) return member.polarisation->fault();
        }
        if (!solved(in)) return "no potential between -3 and 3 V balances the metals: too little oxygen for their passive currents";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto state = solved(in).value_or(MixedState{});
        FAYWRIGHT_STATED(E, "root of Σ A_k·(i_a,k(E) - i_c,k(E)) between the metals' own potentials", state.potential);
        FAYWRIGHT_STATED(F, "charge of a mole of electrons", faraday);
        Answer answer{};
        answer.potential = E;
        for (std::size_t k = 0; k < in.members.size(); ++k) {
            const auto member = in.members[k].electrode();
            const auto& found = state.members[k];
            if (found.own_potential) {
                FAYWRIGHT_STATED(E_k, "the next metal's potential alone", *found.own_potential);
                answer.own_potentials.push_back(E_k);
            }
            FAYWRIGHT_STATED(A, "its wetted area", member.area);
            FAYWRIGHT_STATED(i_a, "its dissolution at the common potential", found.anodic);
            FAYWRIGHT_STATED(i_c, "oxygen reduced on it, activation and diffusion in series",
                             member.polarisation.cathodic_current(E, in.oxygen_limit));
            FAYWRIGHT_STEP(I, A * (i_a - i_c));
            FAYWRIGHT_STATED(M, "its molar mass", member.dissolution.molar_mass);
            FAYWRIGHT_STATED(z, "its valence", member.dissolution.valence);
            FAYWRIGHT_STATED(rho, "its density", member.dissolution.density);
            FAYWRIGHT_STEP(r, i_a * M / (z * F * rho));
            answer.anodic.push_back(i_a);
            answer.net.push_back(found.net);
            answer.currents.push_back(I);
            answer.rates.push_back(r);
            answer.own_rates.push_back(found.own_rate);
            answer.worst_rate = max(answer.worst_rate, r);
        }
        if (answer.own_potentials.size() != in.members.size()) answer.own_potentials.clear();
        if (in.oxygen_limit > oxygen_uptake_limit()) answer.outside_range = "more oxygen than a film's surface takes up from the air";
        return answer;
    }

private:
    static std::optional<MixedState> solved(const Inputs& in) {
        std::array<ElectrodeMember, most_members> members{};
        for (std::size_t k = 0; k < in.members.size(); ++k) members[k] = in.members[k].electrode();
        return mixed_potential(std::span<const ElectrodeMember>(members).first(in.members.size()), in.oxygen_limit);
    }
};

}  // namespace faywright
