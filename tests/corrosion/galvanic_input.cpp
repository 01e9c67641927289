// SPDX-License-Identifier: MIT
// What calc says to wrong input.
#include "assess/calculator.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <string>

using namespace faywright;

namespace {

/// The messages; what was computed is thrown away.
std::string said(std::string_view name, const std::string& toml) {
    Diagnostics diagnostics;
    const auto node = parse_toml(toml, "calc", diagnostics);
    REQUIRE_MESSAGE(node.has_value(), diagnostics.text());
    const auto& all = calculators();
    const auto found = std::find_if(all.begin(), all.end(), [&](const auto& each) { return each.formula.name == name; });
    REQUIRE(found != all.end());
    const auto calculation = found->run(*node, diagnostics);
    CHECK(calculation.has_value() != diagnostics.any());
    return diagnostics.any() ? diagnostics.text() : "";
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

const std::string zinc = R"({metal = "zinc", area = "10 cm2"})";

}  // namespace

TEST_SUITE("corrosion/galvanic: wrong input") {
    TEST_CASE("a couple as it should be") { CHECK(said("mixed-potential", "members = [" + zinc + "]") == ""); }

    TEST_CASE("a wrong unit and an unknown metal, both in one run, each with its place and the nearest name") {
        const auto text = said("mixed-potential", "members = [{metal = \"zinck\", area = \"10 V\"}]\noxygen-limit = \"30 uA\"\n");
        CHECK(
            has(text,
                "calc:1:21: error: members[0].metal is \"zinck\"; accepted are \"zinc\", \"aluminium\", \"carbon steel\", \"stainless\""));
        CHECK(has(text, "the nearest is \"zinc\""));
        CHECK(has(text, "members[0].area is \"10 V\", a potential"));
        CHECK(has(text, "oxygen-limit is \"30 uA\", a current; a current density is wanted"));
        CHECK(has(text, "3 errors"));
    }

    TEST_CASE("no metal, nine metals, an area of nothing") {
        CHECK(has(said("mixed-potential", "members = []"), "no metal is given"));
        std::string nine = zinc;
        for (int i = 1; i < 9; ++i) nine += ", " + zinc;
        CHECK(has(said("mixed-potential", "members = [" + nine + "]"), "at most eight metals are accepted"));
        CHECK(has(said("mixed-potential", R"(members = [{metal = "zinc", area = "0 cm2"}])"),
                  "members[0].area is 0 mm2; at least 0.001 mm2"));
        CHECK(has(said("mixed-potential", ""), "members is missing"));
    }

    TEST_CASE("a member without its metal or its curves, curves without a slope, and a couple without oxygen") {
        CHECK(has(said("mixed-potential", R"(members = [{area = "10 cm2"}])"), "a member needs its metal's name or its polarisation"));
        const std::string passive =
            R"(polarisation = {behaviour = "passive", anodic-reference = "5 uA/cm2", cathodic-reference = "1 uA/cm2", cathodic-potential = "0 V")";
        CHECK(has(said("mixed-potential", "members = [{area = \"10 cm2\", " + passive + "}}]"), "needs what it dissolves as"));
        const auto member = "members = [{area = \"10 cm2\", dissolves-as = \"iron\", " + passive;
        CHECK(said("mixed-potential", member + "}}]") == "");
        CHECK(has(said("mixed-potential", member + ", limit-share = 0.001}}]"), "no potential between -3 and 3 V balances the metals"));
        auto active = member;
        active.replace(active.find("passive"), 7, "active");
        CHECK(has(said("mixed-potential", active + "}}]"), "needs its anodic potential and slope"));
    }

    TEST_CASE("Faraday's law without a metal, and a throw without its method's input") {
        CHECK(has(said("faraday-rate", R"(current-density = "1 uA/cm2")"), "name a metal, or give molar mass, valence and density"));
        CHECK(has(said("faraday-rate", "current-density = \"1 uA/cm2\"\nmetal = \"aluminum\""), "the nearest is \"aluminium\""));
        const std::string film = "conductivity = \"0.05 S/cm\"\nfilm = \"100 um\"\ndrive = \"0.4 V\"\nanode-resistance = \"500 ohm*cm2\"\n";
        CHECK(has(said("throwing-length", film), "needs the cathode's limit"));
        CHECK(has(said("throwing-length", film + "method = \"linear\""), "needs the cathode's resistance"));
        CHECK(said("throwing-length", film + "cathode-limit = \"162 uA/cm2\"") == "");
        CHECK(has(said("throwing-length", film + "cathode-limit = \"162 uA\""), "a current density is wanted"));
    }
}
