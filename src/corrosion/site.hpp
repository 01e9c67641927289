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

enum class Rain { washed, hosed_down, sheltered };
template <>
struct Words<Rain> {
    static constexpr std::array<std::pair<Rain, std::string_view>, 3> all{
        {{Rain::washed, "washed"}, {Rain::hosed_down, "hosed down monthly"}, {Rain::sheltered, "sheltered"}}};
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
        field(Name{"rain", "", "whether rain or a hose washes the joint; the underside of a trailer is sheltered"}, self.rain, defaulted);
        field(Name{"launching", "", "whether the trailer goes into the sea weekly"}, self.launching, defaulted);
        field(Name{"immersion", "", "time under sea water each year"}, self.immersion, Range{hours(0), hours(8766)});
        field(Name{"deposits", "", "mud and dung on the joint"}, self.deposits, defaulted);
    }
    /// Calls `say(field, words)` for everything that does not fit together.
    template <class Say>
    static void each_fault(const Site& s, Say&& say) {
        const bool climate = s.temperature || s.humidity || s.sulfur_dioxide || s.chloride || s.distance || s.shore;
        if (s.category && climate) say("category", "a category and a climate are given; one of the two is wanted");
        if (!s.category && !climate) say("category", "neither a category nor a climate is given; one of the two is wanted");
        if (s.category || !climate) return;
        if (!s.temperature) say("temperature", "temperature is missing: without a category the whole climate is wanted");
        if (!s.humidity) say("humidity", "humidity is missing: without a category the whole climate is wanted");
        if (!s.sulfur_dioxide) say("sulfur-dioxide", "sulfur-dioxide is missing: without a category the whole climate is wanted");
        if (s.chloride && (s.distance || s.shore)) say("chloride", "chloride is given twice: measured, and by distance and shore");
        if (s.chloride) return;
        if (!s.distance && !s.shore) say("chloride", "chloride is missing: measured, or distance and shore");
        if (!s.distance && s.shore) say("shore", "shore is given without distance");
        if (s.distance && !s.shore) say("distance", "distance is given without shore");
    }
    static const char* fault(const Site& s) {
        const char* first = nullptr;
        each_fault(s, [&first](const char*, const char* words) { first = first == nullptr ? words : first; });
        return first;
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
    Corrosivity open = Corrosivity::c1;         ///< worst of zinc, steel and aluminium in the open, rain-washed
    Corrosivity joint = Corrosivity::c1;        ///< the same at the joint: shelter, launching and road salt in it
    double unwashed = 1.0, unrinsed = 1.0;      ///< factors on the open rates
    bool salted_road = false;                   ///< adds the middle of C4 in quadrature
    bool muddy = false;                         ///< deposits stay on the joint
    std::optional<Deposition> chloride;         ///< used
    std::optional<Deposition> chloride_median;  ///< where distance and shore gave it
    double wetness_added = 0.0;                 ///< to the wet share of the year
    double wetness_least = 0.0;                 ///< that wet deposits alone keep
    double immersed = 0.0;                      ///< share of the year under water
    const char* outside_range = nullptr;

    [[nodiscard]] const MetalAttack& of(AtmosphereMetal metal) const { return metals[static_cast<std::size_t>(metal)]; }
};

namespace detail {

/// The category's upper limit; where the standard has none (aluminium in CX) three times the lower one.
[[nodiscard]] inline Speed upper_end(AtmosphereMetal metal, Corrosivity category) {
    if (const auto upper = upper_limit(metal, category)) return *upper;
    const auto lower = lower_limit(metal, category);
    // Nothing is told of aluminium in C1: negligible, taken as a third of C2.
    return lower && *lower > um_per_a(0) ? 3.0 * *lower : *upper_limit(metal, Corrosivity::c2) / 3.0;
}

/// The whole category as a band: its middle is the geometric mean of its ends, in C1 half its limit.
[[nodiscard]] inline RateBand band_of(AtmosphereMetal metal, Corrosivity category) {
    const auto high = upper_end(metal, category);
    if (category == Corrosivity::c1) return {um_per_a(0), 0.5 * high, high};
    const auto low = upper_end(metal, static_cast<Corrosivity>(static_cast<int>(category) - 1));
    return {low, low * std::sqrt(static_cast<double>(high / low)), high};
}

}  // namespace detail

/// What shelter, launching and salted roads do.
inline constexpr Source at_joint{"shelter, launching and road salt at the joint", "", "after ISO 9223 Table C.1 and galvanizers' guidance",
                                 Basis::practice};

/// One category worse, as a factor on the rate: what zinc and steel gain from C3 to C4 and from C4 to C5 (ISO 9223 Table 2), about.
inline constexpr double one_category = 2.0;
/// Monthly hosing takes off a part of that: practice.
inline constexpr double hosed_down = 1.4;

/// How much of the salt that rain would wash off is there: nothing below 3 mg/(m2 d) of chloride, all from 60 on (the ends of S1 of ISO
/// 9223), by its logarithm between.
[[nodiscard]] inline double saltiness(Deposition chloride) {
    return std::clamp(std::log(in_mg_per_m2_d(max(chloride, mg_per_m2_d(0.1))) / 3.0) / std::log(20.0), 0.0, 1.0);
}

/// Rates at the joint from a site. Of a named category the band is the category's. A joint that no rain washes on a salty site (above
/// 3 mg/(m2 d) of chloride, or C3 and worse) stands one category worse, weekly launching without rinsing another one; on salted winter
/// roads no rate is below the middle of C4: practice after ISO 9223 Table C.1 and galvanizers' guidance. A category worse is a factor of 2,
/// so that more salt is never less attack. Fault-free sites only.
template <class Steps = NoSteps>
[[nodiscard]] SiteAtmosphere atmosphere_at(const Site& site, Steps&& steps = Steps{}) {
    SiteAtmosphere out;
    constexpr std::array metals{AtmosphereMetal::zinc, AtmosphereMetal::carbon_steel, AtmosphereMetal::copper, AtmosphereMetal::aluminium};
    double salty = !site.category || *site.category < Corrosivity::c3 ? 0.0 : *site.category == Corrosivity::c3 ? 0.5 : 1.0;
    double chloride_scatter = 0.0;
    if (!site.category) {
        out.chloride = site.chloride;
        if (site.chloride && site.chloride_method == ChlorideMethod::dry_plate) {
            out.chloride = as_wet_candle(*site.chloride);
            steps.heading("Chloride of a dry plate as a wet candle catches it", at_joint);
            static_cast<void>(steps.stated("S", "2.4 times", *out.chloride));
        }
        if (!site.chloride) {
            const ChlorideFromDistance::Inputs where{.distance = *site.distance, .shore = *site.shore};
            steps.heading(ChlorideFromDistance::formula.title, ChlorideFromDistance::source(*site.shore));
            const auto found = ChlorideFromDistance::compute(where, steps);
            out.chloride = found.design;
            out.chloride_median = found.median;
            out.outside_range = found.outside_range;
            chloride_scatter = found.scatter;
        }
        salty = saltiness(*out.chloride);
    }
    const double unwashed = site.rain == Rain::sheltered ? one_category : site.rain == Rain::hosed_down ? hosed_down : 1.0;
    out.unwashed = 1.0 + (unwashed - 1.0) * salty;
    if (site.launching == Launching::unrinsed) out.unrinsed = one_category;
    out.salted_road = site.road_salt != RoadSalt::none;
    out.muddy = site.deposits == Deposits::left;
    out.wetness_added = site.road_salt == RoadSalt::hygroscopic ? 0.2 : 0.0;
    out.wetness_least = site.deposits == Deposits::left ? 0.9 : 0.0;
    out.immersed = static_cast<double>(site.immersion.value_or(hours(0)) / years(1));
    const double worse = out.unwashed * out.unrinsed;
    for (const auto metal : metals) {
        auto& each = out.metals[static_cast<std::size_t>(metal)];
        each.scatter = first_year_scatter(metal);
        if (site.category) {
            each.open = *site.category;
            const auto band = detail::band_of(metal, *site.category);
            each.rate = {worse * band.low, worse * band.rate, worse * band.high};
            each.scatter = max(each.scatter, std::log(static_cast<double>(band.high / band.rate)));
        } else {
            const FirstYearLoss::Inputs in{.metal = metal,
                                           .temperature = *site.temperature,
                                           .humidity = *site.humidity,
                                           .sulfur_dioxide = *site.sulfur_dioxide,
                                           .chloride = *out.chloride};
            const bool told = metal != AtmosphereMetal::copper;
            if (told) steps.heading(FirstYearLoss::formula.title, FirstYearLoss::formula.source);
            const auto loss = told ? FirstYearLoss::compute(in, steps) : FirstYearLoss::compute(in);
            if (loss.outside_range != nullptr) out.outside_range = loss.outside_range;
            each.open = category_of(metal, loss.rate);
            auto salt_free = in;
            salt_free.chloride = mg_per_m2_d(0.4);
            // Chloride's own scatter counts as far as chloride is in the rate, which grows with about its 0.6th power.
            const double from_salt = 1.0 - static_cast<double>(FirstYearLoss::compute(salt_free).rate / loss.rate);
            each.scatter = std::hypot(each.scatter, 0.6 * chloride_scatter * from_salt);
            each.rate = spread_about(worse * loss.rate, each.scatter);
        }
        if (metal == AtmosphereMetal::copper) continue;
        const auto tell = [&steps](const char* symbol, const char* words, const auto& value) {
            static_cast<void>(steps.stated(symbol, words, value));
        };
        steps.heading(word_of(metal), at_joint);
        if (site.category)
            tell("r_c",
                 "middle of the category's band: geometric mean of its ends (C1: half its limit; aluminium ends C1 at 0.2 and CX at 30 "
                 "g/m2, ours)",
                 detail::band_of(metal, *site.category).rate);
        tell("a", "saltiness: ln(S/3)/ln 20 between 0 and 1; of a category 0 below C3, 0.5 in C3, 1 above", salty);
        tell("u", "factor where neither rain (1 + a) nor hose (1 + 0.4 a) washes salt off", out.unwashed);
        tell("l", "factor of weekly launching without rinsing", out.unrinsed);
        if (out.salted_road) {
            const auto road = detail::band_of(metal, Corrosivity::c4);
            const auto with = [](Speed a, Speed b) { return sqrt(squared(a) + squared(b)); };
            each.rate = {with(each.rate.low, road.low), with(each.rate.rate, road.rate), with(each.rate.high, road.high)};
            each.scatter = max(first_year_scatter(metal), std::log(static_cast<double>(each.rate.high / each.rate.rate)));
            tell("r_road", "the middle of C4, which salted roads add in quadrature", road.rate);
        }
        tell("s_0",
             "standard deviation of the rate's natural logarithm: the estimate's, or half the band's, with 0.6 of ln chloride's where "
             "distance gives it",
             each.scatter);
        tell("r_0", out.salted_road ? "first-year rate times both factors, and that of the road" : "first-year rate times both factors",
             each.rate.rate);
        out.open = std::max(out.open, each.open);
        out.joint = std::max(out.joint, category_of(metal, each.rate.rate));
    }
    // A category is what it is called, though the middle of its band may be of none for aluminium.
    if (site.category && worse == 1.0 && !out.salted_road) out.joint = *site.category;
    return out;
}

}  // namespace faywright
