// SPDX-License-Identifier: MIT
#include "quantity/text.hpp"

#include <doctest/doctest.h>

#include <sys/wait.h>
#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iterator>
#include <regex>
#include <sstream>
#include <string>
#include <vector>

/// Conversions held against GNU units (Debian package `units`), which carries its own definitions.
using namespace faywright;

namespace {

constexpr const char* program = "/usr/bin/units";

struct Answer {
    std::vector<std::string> lines;
    int status = -1;
};

/// One process, fed pairs of lines: what one has, what one wants.
Answer ask(const std::vector<std::pair<std::string, std::string>>& conversions) {
    std::string command = "printf '%s\\n'";
    for (const auto& [have, want] : conversions) command += " '" + have + "' '" + want + "'";
    command += std::string(" | LC_ALL=C ") + program + " -t --quiet -o '%.15g' 2>&1";
    Answer answer;
    FILE* pipe = popen(command.c_str(), "r");
    if (pipe == nullptr) return answer;
    std::string text;
    std::array<char, 4096> piece{};
    while (const auto n = std::fread(piece.data(), 1, piece.size(), pipe)) text.append(piece.data(), n);
    answer.status = WEXITSTATUS(pclose(pipe));
    std::istringstream in(text);
    for (std::string line; std::getline(in, line);) answer.lines.push_back(line);
    return answer;
}

struct Symbol {
    std::string ours, theirs;
};

struct Family {
    Dimension dimension;
    std::string base;  ///< the SI base unit in their spelling
    std::vector<Symbol> symbols;
};

/// Every symbol of our reader, and how GNU units spells it.
const std::vector<Family>& families() {
    static const std::vector<Family> all{
        {dimension_of<Length>,
         "m",
         {{"m", "m"},
          {"mm", "mm"},
          {"cm", "cm"},
          {"um", "um"},
          {"\u00b5m", "micrometer"},
          {"\u03bcm", "micrometer"},
          {"nm", "nm"},
          {"km", "km"},
          {"in", "in"},
          {"inch", "in"},
          {"ft", "ft"}}},
        {dimension_of<Force>, "N", {{"N", "N"}, {"kN", "kN"}, {"MN", "MN"}, {"lbf", "lbf"}, {"kip", "1000 lbf"}, {"kgf", "kgf"}}},
        {dimension_of<Moment>, "N m", {{"Nm", "N m"}, {"kNm", "kN m"}, {"Nmm", "N mm"}}},
        {dimension_of<Stress>,
         "Pa",
         {{"Pa", "Pa"}, {"kPa", "kPa"}, {"MPa", "MPa"}, {"GPa", "GPa"}, {"bar", "bar"}, {"psi", "psi"}, {"ksi", "1000 psi"}}},
        {dimension_of<Mass>, "kg", {{"kg", "kg"}, {"g", "g"}, {"mg", "mg"}, {"t", "tonne"}, {"lb", "lb"}}},
        {dimension_of<Duration>,
         "s",
         {{"s", "s"},
          {"min", "minute"},
          {"h", "hour"},
          {"hours", "hour"},
          {"day", "day"},
          {"days", "day"},
          {"week", "week"},
          {"weeks", "week"},
          {"year", "julianyear"},
          {"years", "julianyear"},
          {"d", "day"},
          {"a", "julianyear"}}},
        {dimension_of<Volume>, "m^3", {{"L", "liter"}}},
        {dimension_of<Current>, "A", {{"A", "A"}, {"mA", "mA"}, {"uA", "uA"}}},
        {dimension_of<Potential>, "V", {{"V", "V"}, {"mV", "mV"}}},
        {dimension_of<Resistance>, "ohm", {{"ohm", "ohm"}, {"kohm", "kiloohm"}, {"Mohm", "megaohm"}}},
        {dimension_of<decltype(1.0 / Resistance{})>, "S", {{"S", "S"}, {"mS", "mS"}}},
        {dimension_of<Charge>, "C", {{"C", "C"}}},
        {dimension_of<Amount>, "mol", {{"mol", "mol"}}},
        {dimension_of<TemperatureDifference>, "K", {{"K", "K"}}},
        {dimension_of<Angle>, "radian", {{"rad", "radian"}, {"mrad", "milliradian"}, {"deg", "degree"}, {"\u00b0", "degree"}}},
        {dimension_of<double>, "1", {{"%", "percent"}, {"1", "1"}}},
    };
    return all;
}

/// Scales with a zero of their own, by the functions that convert them.
const std::vector<Symbol>& scales() {
    static const std::vector<Symbol> all{{"degC", "tempC"}, {"\u00b0C", "tempC"}, {"degF", "tempF"}, {"\u00b0F", "tempF"}};
    return all;
}

/// Products as people write them.
const std::vector<Family>& products() {
    static const std::vector<Family> all{
        {dimension_of<Moment>,
         "N m",
         {{"N*m", "N m"},
          {"N.m", "N m"},
          {"lbf*ft", "lbf ft"},
          {"lbf*in", "lbf in"},
          {"kip*ft", "1000 lbf ft"},
          {"kN*mm", "kN mm"},
          {"kgf*m", "kgf m"}}},
        {dimension_of<Stress>,
         "Pa",
         {{"N/mm2", "N/mm^2"}, {"N/mm^2", "N/mm^2"}, {"kN/cm2", "kN/cm^2"}, {"kgf/cm2", "kgf/cm^2"}, {"lbf/in2", "lbf/in^2"}}},
        {dimension_of<Speed>, "m/s", {{"um/a", "um/julianyear"}, {"mm/year", "mm/julianyear"}}},
        {dimension_of<Deposition>, "kg/m^2/s", {{"mg/m2/d", "mg/m^2/day"}}},
        {dimension_of<CurrentDensity>, "A/m^2", {{"uA/cm2", "uA/cm^2"}}},
        {dimension_of<Conductivity>, "S/m", {{"S/cm", "S/cm"}, {"mS/cm", "mS/cm"}}},
        {dimension_of<SurfaceResistance>, "ohm m^2", {{"ohm*cm2", "ohm cm^2"}}},
        {dimension_of<Concentration>, "mol/m^3", {{"mol/L", "mol/liter"}}},
        {dimension_of<Stiffness>, "N/m", {{"kN/mm", "kN/mm"}, {"N/mm", "N/mm"}, {"lbf/in", "lbf/in"}, {"kip/in", "1000 lbf/in"}}},
        {dimension_of<Resilience>, "m/N", {{"um/kN", "um/kN"}, {"mm/N", "mm/N"}, {"in/lbf", "in/lbf"}}},
        {dimension_of<Density>, "kg/m^3", {{"kg/m3", "kg/m^3"}, {"g/cm3", "g/cm^3"}, {"t/m3", "tonne/m^3"}, {"lb/ft3", "lb/ft^3"}}},
        {dimension_of<Expansion>, "1/K", {{"1/K", "1/K"}, {"um/m/K", "(um/m)/K"}}},
        {dimension_of<Speed>, "m/s", {{"m/s", "m/s"}, {"km/h", "km/hour"}, {"ft/s", "ft/s"}}},
        {dimension_of<Acceleration>, "m/s^2", {{"m/s2", "m/s^2"}, {"ft/s2", "ft/s^2"}}},
        {dimension_of<AngularAcceleration>, "1/s^2", {{"1/s2", "1/s^2"}}},
        {dimension_of<Area>, "m^2", {{"mm2", "mm^2"}, {"cm^2", "cm^2"}, {"in2", "in^2"}, {"ft^2", "ft^2"}}},
        {dimension_of<Volume>, "m^3", {{"mm3", "mm^3"}, {"in3", "in^3"}}},
        {dimension_of<SecondMoment>, "m^4", {{"mm4", "mm^4"}, {"cm4", "cm^4"}, {"in4", "in^4"}}},
    };
    return all;
}

void compare(const std::vector<Family>& list) {
    std::vector<std::pair<std::string, std::string>> conversions;
    for (const auto& family : list)
        for (const auto& symbol : family.symbols) conversions.emplace_back(symbol.theirs, family.base);
    const auto answer = ask(conversions);
    REQUIRE_MESSAGE(answer.status == 0, std::string(program) << " could not be run: install the package units");
    REQUIRE(answer.lines.size() == conversions.size());
    auto line = answer.lines.begin();
    for (const auto& family : list)
        for (const auto& symbol : family.symbols) {
            CAPTURE(symbol.ours);
            CAPTURE(*line);
            const auto ours = read_value("1 " + symbol.ours, family.dimension);
            REQUIRE(ours.has_value());
            const double theirs = std::strtod(line->c_str(), nullptr);
            CHECK(theirs != 0.0);
            CHECK(std::abs(ours->si() - theirs) <= 1e-12 * std::abs(theirs));
            ++line;
        }
}

}  // namespace

TEST_SUITE("quantity/gnu_units") {
    TEST_CASE("every symbol has the factor that GNU units gives it") { compare(families()); }

    TEST_CASE("products and powers of symbols") { compare(products()); }

    TEST_CASE("temperature scales, at several points") {
        std::vector<std::pair<std::string, std::string>> conversions;
        const std::vector<std::string> readings{"-40", "0", "20", "68", "451.5"};
        for (const auto& scale : scales())
            for (const auto& reading : readings) conversions.emplace_back(scale.theirs + "(" + reading + ")", "K");
        const auto answer = ask(conversions);
        REQUIRE_MESSAGE(answer.status == 0, std::string(program) << " could not be run: install the package units");
        REQUIRE(answer.lines.size() == conversions.size());
        auto line = answer.lines.begin();
        for (const auto& scale : scales())
            for (const auto& reading : readings) {
                CAPTURE(scale.ours);
                CAPTURE(reading);
                const auto ours = read_value(reading + " " + scale.ours, dimension_of<Temperature>);
                REQUIRE(ours.has_value());
                CHECK(ours->si() == doctest::Approx(std::strtod(line->c_str(), nullptr)).epsilon(1e-12).scale(0.0));
                ++line;
            }
    }

    TEST_CASE("no symbol of the reader goes unchecked") {
        std::ifstream file(FAYWRIGHT_SOURCE_DIR "/src/quantity/text.cpp");
        const std::string source{std::istreambuf_iterator<char>(file), {}};
        REQUIRE_FALSE(source.empty());
        std::vector<std::string> checked;
        for (const auto& family : families())
            for (const auto& symbol : family.symbols) checked.push_back(symbol.ours);
        for (const auto& scale : scales()) checked.push_back(scale.ours);
        // The source writes the three letters outside ASCII as escapes.
        const auto plain = [](std::string text) {
            for (const auto& [escape, letter] :
                 {std::pair<std::string, std::string>{"\\u00b5", "\u00b5"}, {"\\u03bc", "\u03bc"}, {"\\u00b0", "\u00b0"}})
                if (const auto at = text.find(escape); at != std::string::npos) text.replace(at, escape.size(), letter);
            return text;
        };
        const std::regex entry(R"re(Unit\{"([^"]+)")re");
        std::size_t found = 0;
        for (auto it = std::sregex_iterator(source.begin(), source.end(), entry); it != std::sregex_iterator(); ++it, ++found) {
            const auto symbol = plain((*it)[1].str());
            CHECK_MESSAGE(std::find(checked.begin(), checked.end(), symbol) != checked.end(), symbol << " has no counterpart here");
        }
        CHECK(found == checked.size());
    }
}
