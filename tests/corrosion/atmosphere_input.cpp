// SPDX-License-Identifier: MIT
#include "assess/calculator.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <string_view>

// The atmosphere's calculators as `calc` runs them: what they read, and what they refuse.

using namespace faywright;

namespace {

struct Ran {
    std::optional<Calculation> calculation;
    std::string codes, text;

    [[nodiscard]] std::string result(std::string_view key) const {
        REQUIRE_MESSAGE(calculation.has_value(), text);
        for (const auto& each : calculation->results)
            if (each.key == key) return each.text.empty() ? print(each.value, 4) : each.text;
        return "";
    }
};

Ran run(std::string_view name, const std::string& toml) {
    const auto& all = calculators();
    const auto found = std::find_if(all.begin(), all.end(), [&](const Calculator& c) { return c.formula.name == name; });
    REQUIRE(found != all.end());
    Diagnostics diagnostics;
    const auto node = parse_toml(toml, "inputs", diagnostics);
    REQUIRE_MESSAGE(node.has_value(), diagnostics.text());
    Ran out{found->run(*node, diagnostics), "", diagnostics.text()};
    for (const auto& each : diagnostics.sorted()) out.codes += (out.codes.empty() ? "" : " ") + std::string(each.code);
    return out;
}

const std::string site = "metal = \"zinc\"\nsulfur-dioxide = \"4 mg/m2/d\"\nchloride = \"60 mg/m2/d\"\n";

}  // namespace

TEST_SUITE("corrosion/atmosphere_input") {
    TEST_CASE("humidity in per cent, temperature as a point") {
        const auto ran = run("first-year-loss", site + "temperature = \"18 degC\"\nhumidity = \"78 %\"");
        CHECK(ran.result("rate") == "2.043 um/a");
        CHECK(ran.calculation->outside_range.empty());
    }

    TEST_CASE("humidity of 78 is 7800 %; a difference is no temperature; a rate is no length; a deposition is no rate") {
        CHECK(run("first-year-loss", site + "temperature = \"18 degC\"\nhumidity = 78").codes == "number.range");
        CHECK(run("first-year-loss", site + "temperature = \"90 degC\"\nhumidity = \"78 %\"").codes == "number.range");
        CHECK_FALSE(run("first-year-loss", site + "temperature = 18\nhumidity = \"78 %\"").calculation.has_value());
        CHECK_FALSE(run("coating-life", "thickness = \"50 um\"\nrate-high = \"4.2 um\"").calculation.has_value());
        CHECK_FALSE(run("coating-life", "thickness = \"50 um/a\"\nrate-high = \"4.2 um/a\"").calculation.has_value());
        CHECK_FALSE(
            run("first-year-loss", "temperature = \"18 degC\"\nhumidity = 0.7\nsulfur-dioxide = \"4 ug/m3\"\nchloride = \"6 mg/m2\"")
                .calculation.has_value());
    }

    TEST_CASE("all mistakes in one run") {
        const auto ran =
            run("first-year-loss", "metal = \"tin\"\ntemperature = \"18 K/m\"\nhumidity = \"-5 %\"\nchloride = \"-1 mg/m2/d\"");
        CHECK_FALSE(ran.calculation.has_value());
        for (const char* key : {"metal", "temperature", "humidity", "chloride", "sulfur-dioxide"})
            CHECK_MESSAGE(ran.text.find(key) != std::string::npos, ran.text);
    }

    TEST_CASE("a loss is given once: as rate or as mass") {
        CHECK(run("atmosphere-category", "").codes == "calc.refused");
        CHECK(run("atmosphere-category", "first-year-rate = \"2 um/a\"\nfirst-year-mass = \"14 g/m2\"").codes == "calc.refused");
        CHECK(run("atmosphere-category", "first-year-rate = \"2.1 um/a\"").result("category") == "C3");
        CHECK(run("atmosphere-category", "first-year-mass = \"15 g/m2\"").result("category") == "C3");
        CHECK(run("atmosphere-category", "first-year-mass = \"15.01 g/m2\"").result("category") == "C4");
        CHECK(run("atmosphere-category", "first-year-mass = \"15 g/m2\"").result("upper-mass") == "15 g/m2");
        CHECK(run("atmosphere-category", "first-year-mass = \"15 g/m2\"").result("upper-rate").empty());
    }

    TEST_CASE("every printed limit, read from text, belongs to the category it ends") {
        for (const auto& [limit, category] :
             {std::pair{"0.1", "C1"}, {"0.7", "C2"}, {"2.1", "C3"}, {"4.2", "C4"}, {"8.4", "C5"}, {"25", "CX"}}) {
            const auto ran = run("atmosphere-category", std::string("first-year-rate = \"") + limit + " um/a\"");
            CHECK(ran.result("category") == category);
            CHECK(ran.calculation->outside_range.empty());
        }
        CHECK_FALSE(run("atmosphere-category", "first-year-rate = \"25.1 um/a\"").calculation->outside_range.empty());
    }

    TEST_CASE("a band upside down, a shore and an exponent nobody knows") {
        CHECK(run("coating-life", "thickness = \"50 um\"\nrate-low = \"9 um/a\"\nrate-high = \"4 um/a\"").codes == "calc.refused");
        CHECK(run("coating-life", "thickness = \"50 um\"\nrate-high = \"0 um/a\"").codes == "number.range");
        CHECK(run("coating-life", "thickness = \"0 um\"\nrate-high = \"4 um/a\"").codes == "number.range");
        CHECK(run("chloride-from-distance", "distance = \"1 km\"\nshore = \"open serf\"").codes == "name.unknown");
        CHECK(run("long-term-loss", "first-year-rate = \"2 um/a\"\ntime = \"10 years\"\nexponent = \"B1\"").codes == "name.unknown");
        CHECK(run("long-term-loss", "first-year-rate = \"2 um/a\"\ntime = \"-1 years\"").codes == "number.range");
    }

    TEST_CASE("the transect names its own stations as source") {
        const auto law = run("chloride-from-distance", "distance = \"1 km\"");
        const auto transect = run("chloride-from-distance", "distance = \"1 km\"\nshore = \"surf transect\"");
        CHECK(law.calculation->source.edition == "217 station means");
        CHECK(transect.calculation->source.edition == "7 stations");
        CHECK(law.calculation->source.basis == Basis::practice);
        CHECK(law.result("design") == "29.1 mg/m2/d");
    }
}
