// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <array>
#include <cmath>
#include <cstddef>

namespace faywright {

/// The water a distance is measured from.
enum class Shore {
    all_stations,     ///< nothing known of the coast
    sheltered_water,  ///< bay, gulf, harbour
    open_surf,        ///< beach under ocean swell
    surf_transect,    ///< the same, by one measured transect: falls off steeply to a background
};

template <>
struct Words<Shore> {
    static constexpr std::array<std::pair<Shore, std::string_view>, 4> all{{{Shore::all_stations, "all stations"},
                                                                            {Shore::sheltered_water, "sheltered water"},
                                                                            {Shore::open_surf, "open surf"},
                                                                            {Shore::surf_transect, "surf transect"}}};
};

/// Deposition on a dry plate as a wet candle beside it would have caught it (ISO 9223 and 9225, memory): times 2.4.
[[nodiscard]] inline Deposition as_wet_candle(Deposition dry_plate) { return 2.4 * dry_plate; }

/// Chloride from distance: what settles in a year's mean at a distance from the sea, with its scatter.
///
/// Fits of ours, in logarithms, to station means of open records (source below). All stations: S = 29.1 x^-0.351, x in km, S in mg/(m2 d),
/// 217 stations, scatter of ln S 0.86, a factor of 2.4 either way. The strength of the surf, not the distance, is the large
/// unknown: for design the median by sheltered water, and on an open coast what nine stations in ten stay below. One surf transect,
/// 7 stations from 0.15 to 20 km: S = 500 exp(-x/0.25) + 8.8, scatter 0.28; its own median serves, an adverse coast as it is.
struct ChlorideFromDistance {
    static constexpr Formula formula{
        .name = "chloride-from-distance",
        .title = "Chloride deposition at a distance from the sea",
        .range =
            "5 m to 100 km (surf transect: 0.15 to 20 km) from salt water, open ground, yearly mean; within 50 m the law falls short of "
            "its stations by a factor of two; wind, height, buildings and salted roads apart",
        .source = {"our fit to open chloride records of MICAT, ISO CORRAG, Canary Islands, Chile, CSIRO and Brazil", "217 station means",
                   "least squares in ln S against ln x", Basis::practice}};

    /// In the order of Shore.
    static constexpr std::array<Source, 4> sources{
        {formula.source, formula.source, formula.source,
         Source{"our fit to open chloride records of one transect in Brazil, Portella 2012", "7 stations",
                "least squares in ln S, exponential and background", Basis::practice}}};
    static constexpr const Source& source(Shore shore) { return sources[static_cast<std::size_t>(shore)]; }

    struct Inputs {
        Length distance;
        Shore shore = Shore::all_stations;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"distance", "L", "distance from the shore line"}, self.distance, Range{metre(1), metre(1e6)});
            field(Name{"shore", "", "what water it is"}, self.shore, defaulted);
        }
    };

    struct Answer {
        Deposition design;  ///< the value to go on with
        Deposition median;
        Deposition low, high;  ///< one standard deviation of ln S: about two stations in three
        Deposition p90;        ///< nine stations in ten stay below
        double scatter = 0;    ///< standard deviation of ln S
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"design", "S", "deposition of chloride for design: the median, on an open surf coast nine in ten"}, self.design);
            field(Name{"median", "S_50", "median station"}, self.median);
            field(Name{"low", "S_low", "one standard deviation below"}, self.low);
            field(Name{"high", "S_high", "one standard deviation above"}, self.high);
            field(Name{"p90", "S_90", "nine stations in ten stay below"}, self.p90);
            field(Name{"scatter", "s", "standard deviation of ln S"}, self.scatter);
        }
    };

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [L, shore] = in;
        FAYWRIGHT_STEP(x, L / metre(1000));
        if (shore == Shore::surf_transect) {
            FAYWRIGHT_STEP(S_50, mg_per_m2_d(500) * std::exp(-x / 0.25) + mg_per_m2_d(8.8));
            Answer answer = with_scatter(S_50, 0.28, shore, steps);
            if (x < 0.15 || x > 20.0) answer.outside_range = "the transect was measured from 0.15 to 20 km";
            return answer;
        }
        FAYWRIGHT_STEP(S_50, mg_per_m2_d(29.1) * std::pow(x, -0.351));
        Answer answer = with_scatter(S_50, 0.86, shore, steps);
        if (x < 0.005 || x > 100.0)
            answer.outside_range = "the law is for 5 m to 100 km";
        else if (x < 0.05)
            answer.outside_range = "within 50 m the law falls short of its own stations by a factor of two: half of them lie above its p90";
        return answer;
    }

private:
    template <class Steps>
    static Answer with_scatter(Deposition S_50, double scatter, Shore shore, Steps& steps) {
        FAYWRIGHT_STATED(s, "scatter of ln S about the fit", scatter);
        FAYWRIGHT_STEP(S_low, S_50 * std::exp(-s));
        FAYWRIGHT_STEP(S_high, S_50 * std::exp(s));
        FAYWRIGHT_STEP(S_90, S_50 * std::exp(1.2816 * s));
        return {shore == Shore::open_surf ? S_90 : S_50, S_50, S_low, S_high, S_90, s};
    }
};

}  // namespace faywright
