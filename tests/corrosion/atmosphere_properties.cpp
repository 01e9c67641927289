// SPDX-License-Identifier: MIT
#include "corrosion/atmosphere_category.hpp"
#include "corrosion/chloride_from_distance.hpp"
#include "corrosion/coating_life.hpp"
#include "corrosion/first_year_loss.hpp"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>

using namespace faywright;

namespace {

/// Between the two, evenly in the logarithm where both are above zero.
double between(double least, double most) {
    const double share = *rc::gen::inRange(0, 1000001) / 1e6;
    return least > 0.0 ? least * std::pow(most / least, share) : least + share * (most - least);
}
template <class Word>
Word word() {
    return (*rc::gen::elementOf(Words<Word>::all)).first;
}
FirstYearLoss::Inputs somewhere() {
    return {word<AtmosphereMetal>(), degC(between(-17, 28)), between(0.34, 0.93), mg_per_m2_d(between(0, 200)),
            mg_per_m2_d(between(0, 900))};
}
constexpr double hair = 1e-9;

}  // namespace

TEST_SUITE("corrosion/atmosphere_properties") {
    TEST_CASE("more sulfur dioxide, chloride or humidity never eats less") {
        CHECK(rc::check("first-year loss", [] {
            const auto here = somewhere();
            auto dirtier = here, saltier = here, damper = here;
            const double more = between(1.01, 3);
            dirtier.sulfur_dioxide = more * here.sulfur_dioxide;
            saltier.chloride = more * here.chloride;
            damper.humidity = here.humidity + 0.02;
            const auto rate = FirstYearLoss::compute(here).rate;
            RC_ASSERT(FirstYearLoss::compute(dirtier).rate >= rate);
            RC_ASSERT(FirstYearLoss::compute(saltier).rate >= rate);
            RC_ASSERT(FirstYearLoss::compute(damper).rate > rate);
            if (here.sulfur_dioxide > mg_per_m2_d(0.7)) RC_ASSERT(FirstYearLoss::compute(dirtier).rate > rate);
            if (here.chloride > mg_per_m2_d(0.4)) RC_ASSERT(FirstYearLoss::compute(saltier).rate > rate);
        }));
    }

    TEST_CASE("an estimate lies within its band, and its band within its bound; a degree moves it by little") {
        CHECK(rc::check("band", [] {
            const auto here = somewhere();
            const auto answer = FirstYearLoss::compute(here);
            RC_ASSERT(um_per_a(0) < answer.low);
            RC_ASSERT(answer.low < answer.rate);
            RC_ASSERT(answer.rate < answer.high);
            RC_ASSERT(answer.high < answer.bound);
            auto warmer = here;
            warmer.temperature = here.temperature + kelvin(0.01);
            RC_ASSERT(std::abs(double(FirstYearLoss::compute(warmer).rate / answer.rate) - 1.0) < 0.01 * 0.16);
        }));
    }

    TEST_CASE("a greater loss is never of a lesser category, and lies within the limits told") {
        CHECK(rc::check("category", [] {
            const auto metal = word<AtmosphereMetal>();
            const Speed rate = um_per_a(between(0.01, 2000)), more = rate * between(1.0, 4.0);
            RC_ASSERT(category_of(metal, rate) <= category_of(metal, more));
            const auto answer = AtmosphereCategory::compute({metal, rate, {}});
            RC_ASSERT(answer.category == category_of(metal, rate));
            const auto lower = lower_limit(metal, answer.category), upper = upper_limit(metal, answer.category);
            RC_ASSERT(*lower <= rate * (1.0 + hair));
            if (upper && answer.category != Corrosivity::cx) RC_ASSERT(rate <= *upper * (1.0 + hair));
            const ArealMass mass = g_per_m2(between(0.01, 9000)), heavier = mass * between(1.0, 4.0);
            RC_ASSERT(category_of(metal, mass) <= category_of(metal, heavier));
            const auto weighed = AtmosphereCategory::compute({metal, {}, mass});
            if (weighed.lower_mass) RC_ASSERT(*weighed.lower_mass <= mass * (1.0 + hair));
            if (weighed.upper_mass && weighed.outside_range == nullptr) RC_ASSERT(mass <= *weighed.upper_mass * (1.0 + hair));
        }));
    }

    TEST_CASE("loss grows with time, its rate never does after the first year") {
        CHECK(rc::check("long term", [] {
            LongTermLoss::Inputs in{word<AtmosphereMetal>(), um_per_a(between(0.01, 1000)), years(between(0.01, 90)), word<LossExponent>()};
            auto later = in;
            later.time = in.time * between(1.0001, 2.0);
            const auto now = LongTermLoss::compute(in), then = LongTermLoss::compute(later);
            RC_ASSERT(now.loss < then.loss);
            RC_ASSERT(then.rate <= now.rate * (1.0 + hair));
            RC_ASSERT(then.loss <= now.loss + now.rate * (later.time - in.time) * (1.0 + hair));
            in.exponent = LossExponent::mean;
            later = in;
            later.exponent = LossExponent::upper;
            RC_ASSERT(LongTermLoss::compute(in).loss <= LongTermLoss::compute(later).loss);
        }));
    }

    TEST_CASE("loss runs through one and twenty years without a step, through twenty without a bend") {
        for (const auto& [metal, text] : Words<AtmosphereMetal>::all)
            for (const auto& [exponent, name] : Words<LossExponent>::all)
                for (const double at : {1.0, 20.0}) {
                    const auto of = [&, m = metal, e = exponent](double t) {
                        return LongTermLoss::compute({m, um_per_a(10), years(t), e});
                    };
                    CHECK(in_um(of(at * (1.0 + 1e-12)).loss) == doctest::Approx(in_um(of(at * (1.0 - 1e-12)).loss)).epsilon(1e-10));
                    if (at == 20.0)
                        CHECK(in_um_per_a(of(at * (1.0 + 1e-12)).rate) ==
                              doctest::Approx(in_um_per_a(of(at * (1.0 - 1e-12)).rate)).epsilon(1e-10));
                }
    }

    TEST_CASE("the time to lose a depth is that after which it is lost") {
        CHECK(rc::check("inverse", [] {
            const LongTermLoss::Inputs in{word<AtmosphereMetal>(), um_per_a(between(0.01, 1000)), years(between(0.001, 190)),
                                          word<LossExponent>()};
            const auto loss = LongTermLoss::compute(in).loss;
            const auto back = time_to_lose(loss, in.metal, in.first_year_rate, in.exponent);
            RC_ASSERT(std::abs(double(back / in.time) - 1.0) < hair);
        }));
    }

    TEST_CASE("thicker zinc never shortens a life, a faster rate never lengthens it; the three estimates keep their order") {
        CHECK(rc::check("coating life", [] {
            const CoatingLife::Inputs in{um(between(1, 300)), um_per_a(between(0.05, 1)), um_per_a(between(1, 30)), AtmosphereMetal::zinc};
            auto thicker = in, faster = in;
            thicker.thickness = in.thickness * between(1.0, 3.0);
            faster.rate_high = in.rate_high * between(1.0, 3.0);
            const auto a = CoatingLife::compute(in), b = CoatingLife::compute(thicker), c = CoatingLife::compute(faster);
            RC_ASSERT(a.least <= b.least);
            RC_ASSERT(a.most <= b.most);
            RC_ASSERT(a.by_mean <= b.by_mean);
            RC_ASSERT(a.by_upper <= b.by_upper);
            RC_ASSERT(c.least <= a.least);
            RC_ASSERT(c.by_mean <= a.by_mean);
            RC_ASSERT(c.by_upper <= a.by_upper);
            RC_ASSERT(a.least <= a.most);
            RC_ASSERT(a.least <= a.by_upper * (1.0 + hair));
            RC_ASSERT(a.by_upper <= a.by_mean * (1.0 + hair));
        }));
    }

    TEST_CASE("farther from the sea there is less of it") {
        CHECK(rc::check("chloride", [] {
            const auto shore = word<Shore>();
            const Length near = metre(between(1, 5e5)), far = near * between(1.001, 2.0);
            const auto a = ChlorideFromDistance::compute({near, shore}), b = ChlorideFromDistance::compute({far, shore});
            RC_ASSERT(b.design <= a.design);
            RC_ASSERT(a.low < a.median);
            RC_ASSERT(a.median < a.high);
            RC_ASSERT(a.high < a.p90);
        }));
    }
}
