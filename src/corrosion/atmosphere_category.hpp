// SPDX-License-Identifier: MIT
#pragma once

#include "corrosion/atmosphere_metal.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <array>
#include <cstddef>
#include <optional>

namespace faywright {

/// Density by which a mass lost is a mean depth, of the standard specimens or of a zinc layer (practice: handbook values).
[[nodiscard]] inline Density density(AtmosphereMetal metal) {
    switch (metal) {
        case AtmosphereMetal::zinc: return kg_per_m3(7140);
        case AtmosphereMetal::carbon_steel: return kg_per_m3(7860);
        case AtmosphereMetal::copper: return kg_per_m3(8960);
        case AtmosphereMetal::aluminium: return kg_per_m3(2700);
    }
    return kg_per_m3(7140);
}

namespace detail {

/// First-year loss at which each category ends, C1 to CX: um and g/m2, each rounded on its own in ISO 9223:2012 Table 2. 0: none given.
/// In the order of AtmosphereMetal. Seen in reprints: um of zinc and steel, g/m2 of both up to C5. The rest is memory.
struct CategoryEnds {
    std::array<double, 6> um, g_per_m2;
};
inline constexpr std::array<CategoryEnds, 4> category_ends{{
    {{0.1, 0.7, 2.1, 4.2, 8.4, 25}, {0.7, 5, 15, 30, 60, 180}},
    {{1.3, 25, 50, 80, 200, 700}, {10, 200, 400, 650, 1500, 5500}},
    {{0.1, 0.6, 1.3, 2.8, 5.6, 10}, {0.9, 5, 12, 25, 50, 90}},
    {{0, 0, 0, 0, 0, 0}, {0, 0.6, 2, 5, 10, 0}},
}};
[[nodiscard]] constexpr const CategoryEnds& ends_of(AtmosphereMetal metal) { return category_ends[static_cast<std::size_t>(metal)]; }

/// The category that ends at or above the loss; a limit belongs to the category it ends, read from text or worked out.
[[nodiscard]] constexpr Corrosivity category_among(const std::array<double, 6>& ends, double loss) {
    constexpr double same = 1.0 + 1e-9;
    for (std::size_t i = 0; i < 5; ++i)
        if (loss <= ends[i] * same) return static_cast<Corrosivity>(i);
    return Corrosivity::cx;
}

}  // namespace detail

/// Mass lost in the first year at which a category ends; none where the standard prints none: C1 ("negligible") and CX of aluminium.
[[nodiscard]] inline std::optional<ArealMass> upper_mass_limit(AtmosphereMetal metal, Corrosivity category) {
    const double end = detail::ends_of(metal).g_per_m2[static_cast<std::size_t>(category)];
    return end > 0.0 ? std::optional(g_per_m2(end)) : std::nullopt;
}

/// First-year rate at which a category ends, as printed; of aluminium, which has limits of mass only, the mean depth by density.
[[nodiscard]] inline std::optional<Speed> upper_limit(AtmosphereMetal metal, Corrosivity category) {
    const double end = detail::ends_of(metal).um[static_cast<std::size_t>(category)];
    if (end > 0.0) return um_per_a(end);
    const auto mass = upper_mass_limit(metal, category);
    return mass ? std::optional<Speed>(*mass / density(metal) / years(1)) : std::nullopt;
}

namespace detail {
template <class Limit>
std::optional<Limit> lower_of(std::optional<Limit> (*upper)(AtmosphereMetal, Corrosivity), AtmosphereMetal metal, Corrosivity category) {
    if (category == Corrosivity::c1) return Limit::from_value(0);
    const auto below = upper(metal, static_cast<Corrosivity>(static_cast<int>(category) - 1));
    return below ? below : Limit::from_value(0);
}
}  // namespace detail

/// The upper limit of the category below; nothing at all for C1, and for C2 of aluminium.
[[nodiscard]] inline std::optional<Speed> lower_limit(AtmosphereMetal metal, Corrosivity category) {
    return detail::lower_of(upper_limit, metal, category);
}
[[nodiscard]] inline std::optional<ArealMass> lower_mass_limit(AtmosphereMetal metal, Corrosivity category) {
    return detail::lower_of(upper_mass_limit, metal, category);
}

/// The category of a mass lost in the first year; CX also beyond its end.
[[nodiscard]] inline Corrosivity category_of(AtmosphereMetal metal, ArealMass first_year) {
    return detail::category_among(detail::ends_of(metal).g_per_m2, in_g_per_m2(first_year));
}

/// The category of a first-year rate; of aluminium, that of the mass it stands for.
[[nodiscard]] inline Corrosivity category_of(AtmosphereMetal metal, Speed first_year) {
    if (metal == AtmosphereMetal::aluminium) return category_of(metal, ArealMass(first_year * years(1) * density(metal)));
    return detail::category_among(detail::ends_of(metal).um, in_um_per_a(first_year));
}

/// Atmosphere category: corrosivity towards one metal, told by what a standard specimen loses in its first year.
///
/// Limits in um and in g/m2 are rounded independently (1500 g/m2 of steel is 191 um, its printed fellow 200), so a loss is classed
/// in the unit it was measured in. Aluminium has limits of mass only, its attack being local: a rate is turned into mass and marked.
/// Metals at one place need not share a category.
struct AtmosphereCategory {
    static constexpr Formula formula{.name = "atmosphere-category",
                                     .title = "Corrosivity category from the loss of the first year",
                                     .range = "standard specimens of the metal, one year in the open; limits end at CX",
                                     .source = {"ISO 9223", "2012", "Table 2", Basis::memory}};

    struct Inputs {
        AtmosphereMetal metal = AtmosphereMetal::zinc;
        std::optional<Speed> first_year_rate;
        std::optional<ArealMass> first_year_mass;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"metal", "", "metal exposed"}, self.metal, defaulted);
            field(Name{"first-year-rate", "r_corr", "mean depth lost in the first year, or:"}, self.first_year_rate,
                  Range{um_per_a(0), um_per_a(10000)});
            field(Name{"first-year-mass", "m_A", "mass lost from an area in the first year"}, self.first_year_mass,
                  Range{g_per_m2(0), g_per_m2(100000)});
        }
    };

    struct Answer {
        Corrosivity category = Corrosivity::c1;
        std::optional<Speed> lower_rate, upper_rate;      ///< the limits, where a rate was classed
        std::optional<ArealMass> lower_mass, upper_mass;  ///< the limits, where a mass was classed
        Speed rate;                                       ///< given, or of the mass by density
        ArealMass mass;                                   ///< given, or of the rate by density
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"category", "", "corrosivity towards this metal"}, self.category);
            field(Name{"lower-rate", "", "the category begins above this rate"}, self.lower_rate);
            field(Name{"upper-rate", "", "and ends with it"}, self.upper_rate);
            field(Name{"lower-mass", "", "the category begins above this mass"}, self.lower_mass);
            field(Name{"upper-mass", "", "and ends with it"}, self.upper_mass);
            field(Name{"rate", "r", "mean depth lost in the first year"}, self.rate);
            field(Name{"mass", "m", "mass lost in the first year"}, self.mass);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (in.first_year_rate.has_value() == in.first_year_mass.has_value())
            return "give either first-year-rate or first-year-mass: a loss is classed in the unit it was measured in";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [metal, r_corr, m_A] = in;
        Answer answer;
        FAYWRIGHT_STATED(rho, "density of the metal", density(metal));
        if (r_corr) {
            FAYWRIGHT_STEP(m, *r_corr * years(1) * rho);
            answer.rate = *r_corr;
            answer.mass = m;
        } else {
            FAYWRIGHT_STEP(r, *m_A / rho / years(1));
            answer.rate = r;
            answer.mass = *m_A;
        }
        const bool by_rate = r_corr && metal != AtmosphereMetal::aluminium;
        answer.category = by_rate ? category_of(metal, answer.rate) : category_of(metal, answer.mass);
        if (by_rate) {
            answer.lower_rate = lower_limit(metal, answer.category);
            answer.upper_rate = upper_limit(metal, answer.category);
        } else {
            answer.lower_mass = lower_mass_limit(metal, answer.category);
            answer.upper_mass = upper_mass_limit(metal, answer.category);
        }
        constexpr double same = 1.0 + 1e-9;
        if ((answer.upper_rate && answer.rate > *answer.upper_rate * same) ||
            (answer.upper_mass && answer.mass > *answer.upper_mass * same))
            answer.outside_range = "the loss is beyond the end of CX: such places exist, but the table has no category for them";
        else if (r_corr && metal == AtmosphereMetal::aluminium)
            answer.outside_range =
                "the table has limits of mass only for aluminium: the rate was turned into mass at 2.70 g/cm3, and "
                "where attack is local its mean depth is not the damage";
        return answer;
    }
};

}  // namespace faywright
