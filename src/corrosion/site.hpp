// SPDX-License-Identifier: MIT
#pragma once

#include "corrosion/atmosphere_category.hpp"
#include "corrosion/chloride_from_distance.hpp"
#include "corrosion/couple.hpp"
#include "corrosion/first_year_loss.hpp"

#include <array>
#include <optional>

/// The place where a joint lives: the atmosphere in the open, and what the underside of a trailer makes of it.
namespace faywright {

/// How chloride was caught.
enum class ChlorideMethod { wet_candle, dry_plate };
template <>
struct Words<ChlorideMethod> {
    static constexpr std::array<std::pair<ChlorideMethod, std::string_view>, 2> all{
        {{ChlorideMethod::wet_candle, "wet candle"}, {ChlorideMethod::dry_plate, "dry plate"}}};
};

enum class RoadSalt { none, sodium_chloride, hygroscopic };
template <>
struct Words<RoadSalt> {
    static constexpr std::array<std::pair<RoadSalt, std::string_view>, 3> all{{{RoadSalt::none, "none"},
                                                                               {RoadSalt::sodium_chloride, "sodium chloride"},
                                                                               {RoadSalt::hygroscopic, "magnesium or calcium chloride"}}};
};

enum class Rain { washed, sheltered };
template <>
struct Words<Rain> {
    static constexpr std::array<std::pair<Rain, std::string_view>, 2> all{{{Rain::washed, "washed"}, {Rain::sheltered, "sheltered"}}};
};

enum class Launching { none, rinsed, unrinsed };
template <>
struct Words<Launching> {
    static constexpr std::array<std::pair<Launching, std::string_view>, 3> all{
        {{Launching::none, "none"}, {Launching::rinsed, "in the sea, rinsed each time"}, {Launching::unrinsed, "in the sea, not rinsed"}}};
};

enum class Deposits { washed_off, left };
template <>
struct Words<Deposits> {
    static constexpr std::array<std::pair<Deposits, std::string_view>, 2> all{
        {{Deposits::washed_off, "washed off"}, {Deposits::left, "left"}}};
};

/// A site as a person knows it: a category by name, or climate and deposits from which it is worked out.
struct Site {
    std::optional<Corrosivity> category;
    std::optional<Temperature> temperature;
    std::optional<double> humidity;
    std::optional<Deposition> sulfur_dioxide, chloride;
    ChlorideMethod chloride_method = ChlorideMethod::wet_candle;
    std::optional<Length> distance;
    std::optional<Shore> shore;
    RoadSalt road_salt = RoadSalt::none;
    Rain rain = Rain::sheltered;
    Launching launching = Launching::none;
    std::optional<Duration> immersion;
    Deposits deposits = Deposits::washed_off;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"category", "", "corrosivity category of the open site, in place of climate and deposits"}, self.category);
        field(Name{"temperature", "", "mean air temperature of the year"}, self.temperature, Range{degC(-30), degC(40)});
        field(Name{"humidity", "", "mean relative humidity of the year"}, self.humidity, Range{0.05, 1.0});
        field(Name{"sulfur-dioxide", "", "deposition of sulfur dioxide"}, self.sulfur_dioxide, Range{mg_per_m2_d(0), mg_per_m2_d(1000)});
        field(Name{"chloride", "", "deposition of chloride; absent: from distance and shore"}, self.chloride,
              Range{mg_per_m2_d(0), mg_per_m2_d(3000)});
        field(Name{"chloride-method", "", "how chloride was caught"}, self.chloride_method, defaulted);
        field(Name{"distance", "", "distance to the shore"}, self.distance, Range{metre(5), metre(100000)});
        field(Name{"shore", "", "what the shore is like"}, self.shore);
        field(Name{"road-salt", "", "salt on winter roads"}, self.road_salt, defaulted);
        field(Name{"rain", "", "whether rain washes the joint; the underside of a trailer is sheltered"}, self.rain, defaulted);
        field(Name{"launching", "", "whether the trailer goes into the sea weekly"}, self.launching, defaulted);
        field(Name{"immersion", "", "time under sea water each year"}, self.immersion, Range{hours(0), hours(8766)});
        field(Name{"deposits", "", "mud and dung on the joint"}, self.deposits, defaulted);
    }
    static const char* fault(const Site& s) {
        const bool climate = s.temperature || s.humidity || s.sulfur_dioxide || s.chloride || s.distance || s.shore;
        if (s.category && climate) return "a category and a climate are given; one of the two is wanted";
        if (s.category) return nullptr;
        if (!s.temperature || !s.humidity || !s.sulfur_dioxide)
            return "neither a category nor a whole climate: temperature, humidity and sulfur-dioxide are wanted";
        if (s.chloride && (s.distance || s.shore)) return "chloride is given twice: measured, and by distance and shore";
        if (!s.chloride && (!s.distance || !s.shore)) return "chloride is wanted, or distance and shore";
        return nullptr;
    }
};

/// What the site does to one of the four standard metals.
struct MetalAttack {
    RateBand rate;           ///< first-year rate at the joint, modifiers in it
    Corrosivity open;        ///< category of the open site for this metal
    double scatter = 0.405;  ///< standard deviation of the rate's natural logarithm
};

/// What comes of a site.
struct SiteAtmosphere {
    std::array<MetalAttack, 4> metals;
    Corrosivity open = Corrosivity::c1;   ///< worst of zinc, steel and aluminium in the open, rain-washed
    Corrosivity joint = Corrosivity::c1;  ///< at the joint: shelter, launching and road salt in it
    int raised = 0;                       ///< categories by which the joint is worse than the open site
    std::optional<Deposition> chloride;   ///< used
    double wetness_added = 0.0;           ///< to the wet share of the year
    double wetness_least = 0.0;           ///< that wet deposits alone keep
    double immersed = 0.0;                ///< share of the year under water
    const char* outside_range = nullptr;

    [[nodiscard]] const MetalAttack& of(AtmosphereMetal metal) const { return metals[static_cast<std::size_t>(metal)]; }
};

namespace detail {

[[nodiscard]] inline Corrosivity stepped(Corrosivity category, int steps) {
    return static_cast<Corrosivity>(std::clamp(static_cast<int>(category) + steps, 0, static_cast<int>(Corrosivity::cx)));
}

/// The category's upper limit; where the standard has none (aluminium in CX) three times the lower one.
[[nodiscard]] inline Speed upper_end(AtmosphereMetal metal, Corrosivity category) {
    if (const auto upper = upper_limit(metal, category)) return *upper;
    const auto lower = lower_limit(metal, category);
    // Nothing is told of aluminium in C1: negligible, taken as a third of C2.
    return lower && *lower > um_per_a(0) ? 3.0 * *lower : *upper_limit(metal, Corrosivity::c2) / 3.0;
}

[[nodiscard]] inline Speed lower_end(AtmosphereMetal metal, Corrosivity category) {
    return category == Corrosivity::c1 ? um_per_a(0) : upper_end(metal, stepped(category, -1));
}

}  // namespace detail

/// Rates at the joint from a site. Of a named category the band is the category's, its middle the geometric mean (half the limit in C1).
/// A joint sheltered from rain on a salty site stands one category worse, weekly launching without rinsing another one, salted winter
/// roads at least in C4: practice after ISO 9223 Table C.1 and galvanizers' guidance; a computed rate rises as its category's limit does.
/// Fault-free sites only.
[[nodiscard]] inline SiteAtmosphere atmosphere_at(const Site& site) {
    SiteAtmosphere out;
    constexpr std::array metals{AtmosphereMetal::zinc, AtmosphereMetal::carbon_steel, AtmosphereMetal::copper, AtmosphereMetal::aluminium};
    std::array<Speed, 4> computed{};
    bool salty = false;
    if (site.category) {
        out.open = *site.category;
        salty = *site.category >= Corrosivity::c3;
        for (auto& each : out.metals) each.open = *site.category;
    } else {
        Deposition chloride = site.chloride.value_or(mg_per_m2_d(0));
        if (site.chloride && site.chloride_method == ChlorideMethod::dry_plate) chloride = as_wet_candle(chloride);
        double spread = 0.0;
        if (!site.chloride) {
            const auto found = ChlorideFromDistance::compute({.distance = *site.distance, .shore = *site.shore});
            chloride = found.design;
            out.outside_range = found.outside_range;
            spread = found.scatter;
        }
        out.chloride = chloride;
        salty = chloride > mg_per_m2_d(3);
        for (const auto metal : metals) {
            const auto i = static_cast<std::size_t>(metal);
            const FirstYearLoss::Inputs in{.metal = metal,
                                           .temperature = *site.temperature,
                                           .humidity = *site.humidity,
                                           .sulfur_dioxide = *site.sulfur_dioxide,
                                           .chloride = chloride};
            const auto loss = FirstYearLoss::compute(in);
            if (loss.outside_range != nullptr) out.outside_range = loss.outside_range;
            computed[i] = loss.rate;
            out.metals[i].open = category_of(metal, loss.rate);
            auto salt_free = in;
            salt_free.chloride = mg_per_m2_d(0.4);
            // Chloride's own scatter counts as far as chloride is in the rate.
            const double from_salt = 1.0 - static_cast<double>(FirstYearLoss::compute(salt_free).rate / loss.rate);
            out.metals[i].scatter = std::hypot(first_year_scatter(metal), spread * 0.6 * from_salt);
            if (metal != AtmosphereMetal::copper) out.open = std::max(out.open, out.metals[i].open);
        }
    }
    auto joint = out.open;
    if (site.rain == Rain::sheltered && salty) joint = detail::stepped(joint, 1);
    if (site.launching == Launching::unrinsed) joint = detail::stepped(joint, 1);
    if (site.road_salt != RoadSalt::none) joint = std::max(joint, Corrosivity::c4);
    out.joint = joint;
    out.raised = static_cast<int>(joint) - static_cast<int>(out.open);
    out.wetness_added = site.road_salt == RoadSalt::hygroscopic ? 0.2 : 0.0;
    out.wetness_least = site.deposits == Deposits::left ? 0.9 : 0.0;
    out.immersed = static_cast<double>(site.immersion.value_or(hours(0)) / years(1));
    for (const auto metal : metals) {
        auto& each = out.metals[static_cast<std::size_t>(metal)];
        const auto raised = detail::stepped(each.open, out.raised);
        if (site.category) {
            const auto low = detail::lower_end(metal, raised), high = detail::upper_end(metal, raised);
            each.rate = {low, low > um_per_a(0) ? high * std::sqrt(static_cast<double>(low / high)) : 0.5 * high, high};
            each.scatter = std::max(std::log(static_cast<double>(high / each.rate.rate)), first_year_scatter(metal));
        } else {
            const double worse = detail::upper_end(metal, raised) / detail::upper_end(metal, each.open);
            each.rate = spread_about(computed[static_cast<std::size_t>(metal)] * worse, each.scatter);
        }
    }
    return out;
}

}  // namespace faywright
