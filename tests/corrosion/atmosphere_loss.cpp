// SPDX-License-Identifier: MIT
#include "corrosion/atmosphere_category.hpp"
#include "corrosion/chloride_from_distance.hpp"
#include "corrosion/coating_life.hpp"
#include "corrosion/first_year_loss.hpp"
#include "published/published.hpp"

#include <array>
#include <cmath>
#include <string_view>

// Own arithmetic, made apart from the program by other means: to the digits written.

using namespace faywright;

namespace {

using enum AtmosphereMetal;
using enum Corrosivity;
using published::Printed;

bool comes_out(double ours, Printed written) { return std::abs(ours - written.value()) <= written.tolerance(); }

FirstYearLoss::Answer first_year(AtmosphereMetal metal, double T, double RH, double P, double S) {
    return FirstYearLoss::compute({metal, degC(T), RH / 100.0, mg_per_m2_d(P), mg_per_m2_d(S)});
}

struct Vector {
    double T, RH, P, S;
    std::string_view steel, zinc, copper, aluminium;
};
constexpr Vector vectors[] = {
    {10, 75, 10, 10, "33.80", "1.396", "1.269", "0.2293"}, {10, 80, 1, 300, "81.99", "2.516", "1.985", "0.7303"},
    {20, 75, 2, 100, "53.50", "2.680", "1.647", "0.8674"}, {5, 80, 20, 1, "21.41", "1.631", "0.9232", "0.2785"},
    {18, 78, 4, 60, "46.05", "2.043", "1.639", "0.6002"},  {-10, 70, 20, 0.5, "2.145", "0.573", "0.1225", "0.1817"},
};

struct History {
    AtmosphereMetal metal;
    double rate;
    std::string_view mean[7];   ///< after 2, 5, 10, 15, 20, 30, 50 years
    std::string_view upper[3];  ///< after 10, 20, 50 years
};
constexpr History histories[] = {
    {carbon_steel, 25, {"35.9", "58.0", "83.4", "103", "120", "151", "214"}, {"94", "140", "261"}},
    {carbon_steel, 50, {"71.8", "116", "167", "206", "240", "302", "427"}, {"188", "280", "521"}},
    {carbon_steel, 80, {"115", "186", "267", "330", "383", "484", "684"}, {"301", "448", "834"}},
    {carbon_steel, 200, {"287", "464", "667", "824", "958", "1209", "1710"}, {"752", "1120", "2.09e3"}},
    {carbon_steel, 700, {"1006", "1624", "2334", "2885", "3354", "4231", "5985"}, {"2.63e3", "3.92e3", "7.30e3"}},
    {zinc, 0.7, {"1.23", "2.59", "4.55", "6.33", "8.00", "11.2", "17.7"}, {"5.23", "9.57", "22.1"}},
    {zinc, 2.1, {"3.69", "7.77", "13.7", "19.0", "24.0", "33.7", "53.2"}, {"15.7", "28.7", "66.3"}},
    {zinc, 4.2, {"7.38", "15.5", "27.3", "38.0", "48.0", "67.5", "106"}, {"31.4", "57.4", "133"}},
    {zinc, 8.4, {"14.8", "31.1", "54.6", "75.9", "95.9", "135", "213"}, {"62.7", "115", "265"}},
    {zinc, 25, {"43.9", "92.5", "163", "226", "286", "402", "634"}, {"187", "342", "789"}},
    {aluminium, 5, {"8.28", "16.1", "26.7", "35.9", "44.3", "60.4", "92.6"}, {"32.1", "56.1", "124"}},
    {aluminium, 10, {"16.6", "32.3", "53.5", "71.8", "88.5", "121", "185"}, {"64.1", "112", "248"}},
};

Length lost(AtmosphereMetal metal, double rate, double after, LossExponent exponent) {
    return LongTermLoss::compute({metal, um_per_a(rate), years(after), exponent}).loss;
}

struct Life {
    double thickness, rate;
    std::string_view linear, mean, upper;
};
constexpr Life lives[] = {
    {5, 0.7, "7.1", "11.2", "9.5"},    {5, 2.1, "2.4", "2.9", "2.7"},     {5, 4.2, "1.2", "1.2", "1.2"},
    {8, 0.7, "11.4", "20.0", "16.3"},  {8, 2.1, "3.8", "5.2", "4.6"},     {8, 4.2, "1.9", "2.2", "2.1"},
    {12, 0.7, "17.1", "32.3", "25.8"}, {12, 2.1, "5.7", "8.5", "7.4"},    {12, 4.2, "2.9", "3.6", "3.3"},
    {12, 8.4, "1.4", "1.6", "1.5"},    {45, 0.7, "64", "134", "105"},     {45, 2.1, "21.4", "41.6", "33.0"},
    {45, 4.2, "10.7", "18.5", "15.1"}, {45, 8.4, "5.4", "7.9", "6.8"},    {45, 25, "1.8", "2.1", "2.0"},
    {50, 0.7, "71", "149", "117"},     {50, 2.1, "23.8", "46.7", "37.0"}, {50, 4.2, "11.9", "21.0", "17.1"},
    {50, 8.4, "6.0", "9.0", "7.7"},    {50, 25, "2.0", "2.3", "2.2"},     {55, 0.7, "79", "165", "129"},
    {55, 2.1, "26.2", "51.8", "41.0"}, {55, 4.2, "13.1", "23.6", "19.0"}, {55, 8.4, "6.5", "10.1", "8.6"},
    {55, 25, "2.2", "2.6", "2.5"},     {70, 0.7, "100", "211", "165"},    {70, 2.1, "33.3", "67.2", "52.9"},
    {70, 4.2, "16.7", "31.3", "25.0"}, {70, 8.4, "8.3", "13.6", "11.3"},  {70, 25, "2.8", "3.5", "3.3"},
    {85, 0.7, "121", "257", "201"},    {85, 2.1, "40.5", "82.6", "64.9"}, {85, 4.2, "20.2", "39.0", "31.0"},
    {85, 8.4, "10.1", "17.2", "14.2"}, {85, 25, "3.4", "4.5", "4.1"},
};

CoatingLife::Answer life(double thickness, double rate) { return CoatingLife::compute({um(thickness), {}, um_per_a(rate), zinc}); }

}  // namespace

TEST_SUITE("corrosion/atmosphere_loss") {
    TEST_CASE("dose-response vectors") {
        for (const auto& v : vectors) {
            CAPTURE(v.T);
            CAPTURE(v.S);
            const auto rate = [&](AtmosphereMetal metal) { return in_um_per_a(first_year(metal, v.T, v.RH, v.P, v.S).rate); };
            CHECK(comes_out(rate(carbon_steel), {v.steel}));
            CHECK(comes_out(rate(zinc), {v.zinc}));
            CHECK(comes_out(rate(copper), {v.copper}));
            CHECK(comes_out(rate(aluminium), {v.aluminium}));
        }
    }

    TEST_CASE("the estimate stands in its interval: half as much again, of aluminium twice; the bound is the interval twice over") {
        const auto steel = first_year(carbon_steel, 18, 78, 4, 60), soft = first_year(aluminium, 18, 78, 4, 60);
        CHECK(double(steel.high / steel.rate) == doctest::Approx(1.5));
        CHECK(double(steel.rate / steel.low) == doctest::Approx(1.5));
        CHECK(double(steel.bound / steel.rate) == doctest::Approx(2.25));
        CHECK(double(soft.high / soft.rate) == doctest::Approx(2.0));
        CHECK(double(soft.bound / soft.rate) == doctest::Approx(4.0));
    }

    TEST_CASE("no deposition is taken as the least of the fit, 0.7 and 0.4") {
        for (const auto& [metal, text] : Words<AtmosphereMetal>::all) {
            CHECK(first_year(metal, 12, 70, 0, 0).rate == first_year(metal, 12, 70, 0.7, 0.4).rate);
            CHECK(first_year(metal, 12, 70, 0, 0).outside_range == nullptr);
        }
    }

    TEST_CASE("what lies outside the fit is named, all of it") {
        const auto told = [](double T, double RH, double P, double S) {
            const char* outside = first_year(zinc, T, RH, P, S).outside_range;
            return std::string_view(outside == nullptr ? "" : outside);
        };
        CHECK(told(12, 70, 10, 10).empty());
        CHECK(told(28.7, 93, 150.4, 760.5).empty());
        CHECK(told(-17.1, 34, 1, 1).empty());
        CHECK(told(30, 70, 10, 10).find(" T ") != std::string_view::npos);
        CHECK(told(-18, 70, 10, 10).find(" T ") != std::string_view::npos);
        CHECK(told(12, 95, 10, 10).find(" RH ") != std::string_view::npos);
        CHECK(told(12, 30, 10, 10).find(" RH ") != std::string_view::npos);
        CHECK(told(12, 70, 160, 10).find(" SO2 ") != std::string_view::npos);
        CHECK(told(12, 70, 10, 800).find(" chloride ") != std::string_view::npos);
        CHECK(told(12, 70, 10, 800).find(" RH ") == std::string_view::npos);
        CHECK(told(30, 95, 160, 800) ==
              "fitted only within T -17.1 to 28.7 degC; RH 34 to 93 %; SO2 up to 150.4 mg/m2/d; chloride up to 760.5 mg/m2/d; the standard "
              "warns against going beyond, by the sea above all");
    }

    TEST_CASE("loss after years at the upper limits of the categories") {
        constexpr double mean_after[] = {2, 5, 10, 15, 20, 30, 50}, upper_after[] = {10, 20, 50};
        for (const auto& h : histories) {
            CAPTURE(h.rate);
            for (std::size_t i = 0; i < std::size(mean_after); ++i) {
                CAPTURE(mean_after[i]);
                CHECK(comes_out(in_um(lost(h.metal, h.rate, mean_after[i], LossExponent::mean)), {h.mean[i]}));
            }
            for (std::size_t i = 0; i < std::size(upper_after); ++i) {
                CAPTURE(upper_after[i]);
                CHECK(comes_out(in_um(lost(h.metal, h.rate, upper_after[i], LossExponent::upper)), {h.upper[i]}));
            }
        }
    }

    TEST_CASE("twenty years' factor and the slope beyond") {
        struct Row {
            AtmosphereMetal metal;
            LossExponent exponent;
            std::string_view factor, slope;
        };
        constexpr Row rows[] = {
            {carbon_steel, LossExponent::mean, "4.791", "0.1253"}, {carbon_steel, LossExponent::upper, "5.599", "0.1610"},
            {zinc, LossExponent::mean, "11.422", "0.4643"},        {zinc, LossExponent::upper, "13.671", "0.5967"},
            {copper, LossExponent::mean, "7.375", "0.2460"},       {copper, LossExponent::upper, "8.801", "0.3195"},
            {aluminium, LossExponent::mean, "8.854", "0.3223"},    {aluminium, LossExponent::upper, "11.218", "0.4527"}};
        for (const auto& row : rows) {
            CHECK(comes_out(in_um(lost(row.metal, 1, 20, row.exponent)), {row.factor}));
            CHECK(comes_out(in_um_per_a(LongTermLoss::compute({row.metal, um_per_a(1), years(35), row.exponent}).rate), {row.slope}));
        }
    }

    TEST_CASE("years to use up a coating: constant rate, B1, B2") {
        for (const auto& l : lives) {
            CAPTURE(l.thickness);
            CAPTURE(l.rate);
            const auto answer = life(l.thickness, l.rate);
            CHECK(comes_out(in_years(answer.least), {l.linear}));
            CHECK(comes_out(in_years(answer.by_mean), {l.mean}));
            CHECK(comes_out(in_years(answer.by_upper), {l.upper}));
            CHECK(answer.most == answer.least);
        }
    }

    TEST_CASE("in the first year the three are one") {
        const auto answer = life(5, 25);
        CHECK(comes_out(in_years(answer.least), {"0.2"}));
        CHECK(in_years(answer.by_mean) == doctest::Approx(in_years(answer.least)));
        CHECK(in_years(answer.by_upper) == doctest::Approx(in_years(answer.least)));
    }

    TEST_CASE("chained: a galvanised bolt of 50 um and a frame of 85 um") {
        const auto bolt = life(50, 8.4), frame = life(85, 4.2);
        CHECK(comes_out(in_years(bolt.least), {"5.95"}));
        CHECK(comes_out(in_years(bolt.by_upper), {"7.72"}));
        CHECK(comes_out(in_years(bolt.by_mean), {"8.97"}));
        CHECK(comes_out(in_years(frame.by_mean), {"39.0"}));
        CHECK(in_um(LongTermLoss::compute({zinc, um_per_a(4.2), frame.by_mean, LossExponent::mean}).loss) == doctest::Approx(85));
        CHECK(comes_out(in_um(lost(zinc, 2.1, 30, LossExponent::mean)), {"33.7"}));
        CHECK(comes_out(in_um(lost(zinc, 2.1, 30, LossExponent::upper)), {"41.2"}));
    }

    TEST_CASE("chained: from chloride to category at a surf coast and at the median station") {
        const auto surf_steel = first_year(carbon_steel, 18, 75, 2, 216).rate, surf_zinc = first_year(zinc, 18, 75, 2, 216).rate;
        CHECK(comes_out(in_um_per_a(surf_steel), {"77.1"}));
        CHECK(comes_out(in_um_per_a(surf_zinc), {"3.47"}));
        CHECK(category_of(carbon_steel, surf_steel) == c4);
        CHECK(category_of(zinc, surf_zinc) == c4);
        const auto station = ChlorideFromDistance::compute({metre(100), Shore::sheltered_water});
        CHECK(comes_out(in_mg_per_m2_d(station.design), {"65"}));
        const double S = in_mg_per_m2_d(station.design);
        CHECK(comes_out(in_um_per_a(first_year(carbon_steel, 18, 75, 2, S).rate), {"40.6"}));
        CHECK(comes_out(in_um_per_a(first_year(zinc, 18, 75, 2, S).rate), {"1.91"}));
        CHECK(category_of(zinc, first_year(zinc, 18, 75, 2, S).rate) == c3);
    }

    TEST_CASE("by distance at 18 degC, 75 %, 2 mg/m2/d of SO2: rates of the median law") {
        struct Row {
            double metres;
            std::string_view steel, zinc;
        };
        constexpr Row rows[] = {
            {20, "54.5", "2.51"}, {100, "40.6", "1.91"}, {500, "30.8", "1.47"}, {1000, "27.5", "1.32"}, {5000, "21.6", "1.04"}};
        for (const auto& row : rows) {
            const double S = in_mg_per_m2_d(ChlorideFromDistance::compute({metre(row.metres), Shore::all_stations}).median);
            CHECK(comes_out(in_um_per_a(first_year(carbon_steel, 18, 75, 2, S).rate), {row.steel}));
            CHECK(comes_out(in_um_per_a(first_year(zinc, 18, 75, 2, S).rate), {row.zinc}));
        }
    }

    TEST_CASE("for design: the median by sheltered water, nine in ten by surf, the transect's own middle") {
        const auto of = [](Shore shore) { return ChlorideFromDistance::compute({metre(300), shore}); };
        CHECK(of(Shore::all_stations).design == of(Shore::all_stations).median);
        CHECK(of(Shore::sheltered_water).design == of(Shore::all_stations).median);
        CHECK(of(Shore::open_surf).design == of(Shore::open_surf).p90);
        CHECK(double(of(Shore::open_surf).p90 / of(Shore::open_surf).median) == doctest::Approx(3.01).epsilon(1e-3));
        CHECK(of(Shore::surf_transect).design == of(Shore::surf_transect).median);
        CHECK(of(Shore::surf_transect).outside_range == nullptr);
        CHECK(ChlorideFromDistance::compute({metre(100), Shore::surf_transect}).outside_range != nullptr);
        CHECK(ChlorideFromDistance::compute({metre(30), Shore::open_surf}).outside_range != nullptr);
        CHECK(ChlorideFromDistance::compute({metre(2e5), Shore::all_stations}).outside_range != nullptr);
    }

    TEST_CASE("a dry plate catches less than a wet candle") {
        CHECK(in_mg_per_m2_d(as_wet_candle(mg_per_m2_d(10))) == doctest::Approx(24));
    }

    TEST_CASE("what the calculators say of themselves outside their range") {
        CHECK(LongTermLoss::compute({zinc, um_per_a(20), years(5), LossExponent::mean}).outside_range != nullptr);
        CHECK(LongTermLoss::compute({zinc, um_per_a(20), years(5), LossExponent::upper}).outside_range == nullptr);
        CHECK(LongTermLoss::compute({zinc, um_per_a(8.4), years(5), LossExponent::mean}).outside_range == nullptr);
        CHECK(life(50, 25).outside_range == nullptr);
        CHECK(life(50, 26).outside_range != nullptr);
        CHECK(CoatingLife::compute({um(50), {}, um_per_a(5), copper}).outside_range != nullptr);
    }

    TEST_CASE("limits: one category ends where the next begins; a limit belongs to the category it ends") {
        for (const auto& metals : Words<AtmosphereMetal>::all)
            for (const auto& categories : Words<Corrosivity>::all) {
                CAPTURE(std::string(metals.second));
                CAPTURE(std::string(categories.second));
                const auto metal = metals.first;
                const auto category = categories.first;
                const auto lower = lower_limit(metal, category), upper = upper_limit(metal, category);
                REQUIRE(lower.has_value());
                if (!upper) {
                    CHECK((metal == aluminium && (category == c1 || category == cx)));
                    continue;
                }
                CHECK(*lower < *upper);
                CHECK(category_of(metal, *upper) == category);
                CHECK(category_of(metal, *upper * 0.5 + *lower * 0.5) == category);
                if (category != cx) {
                    CHECK(lower_limit(metal, static_cast<Corrosivity>(static_cast<int>(category) + 1)) == upper);
                    CHECK(category_of(metal, *upper * 1.001) != category);
                }
                CHECK(category_of(metal, *upper_mass_limit(metal, category)) == category);
            }
        CHECK(in_um_per_a(*upper_limit(aluminium, c4)) == doctest::Approx(1.85).epsilon(2e-3));
    }
}
