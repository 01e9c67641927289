// SPDX-License-Identifier: MIT
#include "corrosion/mixed_potential.hpp"
#include "tables/tables.hpp"

#include <doctest/doctest.h>

#include <array>
#include <optional>
#include <set>
#include <string>
#include <utility>

using namespace faywright;

namespace {

const Tables& tables() {
    static const Tables all = [] {
        Diagnostics diagnostics;
        return load_tables(std::nullopt, diagnostics);
    }();
    return all;
}

const Row<Metal>& metal(std::string_view name) {
    const auto* row = tables().of<Metal>().find(name);
    REQUIRE_MESSAGE(row != nullptr, name);
    return *row;
}

const SeriesPotential& entry(const std::string& name) {
    const auto* row = tables().of<SeriesPotential>().find(name);
    REQUIRE_MESSAGE(row != nullptr, name);
    return *row;
}

double apart(const std::string& a, const std::string& b) {
    const auto volts = difference(entry(a), entry(b));
    REQUIRE(volts.has_value());
    return in_V(*volts);
}

bool same(const Polarisation& a, const Polarisation& b) {
    return a.behaviour == b.behaviour && a.anodic_reference == b.anodic_reference && a.anodic_potential == b.anodic_potential &&
           a.anodic_slope == b.anodic_slope && a.cathodic_reference == b.cathodic_reference &&
           a.cathodic_potential == b.cathodic_potential && a.cathodic_slope == b.cathodic_slope && a.limit_share == b.limit_share;
}

}  // namespace

TEST_SUITE("corrosion/galvanic: tables") {
    TEST_CASE("every metal that a potential or a pair names is in the table of metals, and every metal is named") {
        for (const auto& row : tables().of<SeriesPotential>().rows)
            CHECK_MESSAGE(tables().of<Metal>().find(row.metal) != nullptr, row.name);
        for (const auto& row : tables().of<Compatibility>().rows) {
            CHECK_MESSAGE(tables().of<Metal>().find(row.considered) != nullptr, row.name);
            CHECK_MESSAGE(tables().of<Metal>().find(row.contact) != nullptr, row.name);
        }
        for (const auto& row : tables().of<Metal>().rows) {
            bool named = false;
            for (const auto& potential : tables().of<SeriesPotential>().rows) named = named || potential.metal == row.name;
            CHECK_MESSAGE(named, row.name);
        }
    }

    TEST_CASE("cells of the matrix name groups that differ from row to row, and letters only") {
        std::set<std::pair<std::string, std::string>> pairs;
        for (const auto& row : tables().of<Compatibility>().rows) {
            if (row.scheme != CompatibilityScheme::mil_std_889c) continue;
            CAPTURE(row.name);
            auto a = *metal(row.considered).compatibility_group, b = *metal(row.contact).compatibility_group;
            if (b < a) std::swap(a, b);
            CHECK(pairs.emplace(a, b).second);
            for (const auto* letter : {&row.marine, &row.sea_water, &row.industrial}) CHECK((*letter == "C" || *letter == "I"));
            // Seawater is the worst of the three.
            if (row.sea_water == "C") CHECK((row.marine == "C" && row.industrial == "C"));
        }
        CHECK(pairs.size() == 53);
    }

    TEST_CASE("ratings grow from rural air to sea water") {
        const auto worst = [](std::string text) {
            std::erase_if(text, [](char c) { return c == '(' || c == ')'; });
            return text.back() - '0';
        };
        for (const auto& row : tables().of<Compatibility>().rows) {
            if (row.scheme != CompatibilityScheme::pd_6484) continue;
            CAPTURE(row.name);
            CHECK(worst(*row.rural) <= worst(*row.marine));
            CHECK(worst(*row.marine) <= worst(*row.sea_water));
            CHECK(worst(*row.sea_water) <= 3);
        }
    }

    TEST_CASE("the working set of the calculator is that of the table") {
        const std::pair<WorkingMetal, const char*> pairs[]{{WorkingMetal::zinc, "zinc"},
                                                           {WorkingMetal::aluminium, "aluminium 5xxx, 6xxx, 7xxx"},
                                                           {WorkingMetal::carbon_steel, "carbon steel"},
                                                           {WorkingMetal::stainless, "stainless A4"}};
        for (const auto& pair : pairs) {
            const auto& [word, name] = pair;
            CAPTURE(pair.second);
            const auto& row = metal(name);
            REQUIRE(row.polarisation.has_value());
            CHECK(same(*row.polarisation, working_polarisation(word)));
            const auto mine = row.dissolution();
            REQUIRE(mine.has_value());
            const double ratio = penetration_rate(uA_per_cm2(1), *mine) / penetration_rate(uA_per_cm2(1), working_dissolution(word));
            CHECK(ratio == doctest::Approx(1.0).epsilon(1e-12));
        }
    }

    TEST_CASE("what the calculator knows of metals is what the table has") {
        const std::pair<DissolvingMetal, const char*> pairs[]{
            {DissolvingMetal::zinc, "zinc"},           {DissolvingMetal::aluminium, "aluminium 1xxx, 3xxx"},
            {DissolvingMetal::iron, "carbon steel"},   {DissolvingMetal::cadmium, "cadmium"},
            {DissolvingMetal::magnesium, "magnesium"}, {DissolvingMetal::copper, "copper"},
            {DissolvingMetal::nickel, "nickel"}};
        for (const auto& pair : pairs) {
            const auto& [word, name] = pair;
            CAPTURE(pair.second);
            const auto row = metal(name).dissolution(), known = std::optional(dissolution_of(word));
            CHECK(row->molar_mass.value() == doctest::Approx(known->molar_mass.value()).epsilon(1e-12));
            CHECK(row->valence == known->valence);
            CHECK(row->density.value() == doctest::Approx(known->density.value()).epsilon(1e-12));
        }
    }

    TEST_CASE("strength as a cathode follows the published order") {
        const std::array order{"silver", "copper", "low-alloy steel", "stainless A2", "nickel", "titanium", "tin", "cadmium"};
        for (std::size_t i = 0; i + 1 < order.size(); ++i) CHECK(metal(order[i]).cathode_strength >= metal(order[i + 1]).cathode_strength);
        CHECK(metal("low-alloy steel").cathode_strength > metal("stainless A2").cathode_strength);
        CHECK(metal("nickel").cathode_strength > metal("titanium").cathode_strength);
    }

    TEST_CASE("numbers of different series do not meet") {
        CHECK_FALSE(difference(entry("ASTM G82: zinc"), entry("galvanizers: zinc")).has_value());
        CHECK_FALSE(difference(entry("boat survey: zinc"), entry("anodic index: zinc, hot-dip")).has_value());
        CHECK(apart("ASTM G82: zinc", "ASTM G82: aluminium 5xxx, 6xxx, 7xxx, 6061-T") == doctest::Approx(0.27));
        CHECK(apart("ASTM G82: aluminium 5xxx, 6xxx, 7xxx, 6061-T", "ASTM G82: zinc") == doctest::Approx(-0.27));
    }

    TEST_CASE("the galvanizers' series stands off the flowing-water one by the shift of another electrode") {
        const std::pair<const char*, const char*> pairs[]{{"zinc", "zinc"},
                                                          {"cadmium", "cadmium"},
                                                          {"carbon steel", "carbon steel"},
                                                          {"copper", "copper"},
                                                          {"stainless A2, 304, active", "stainless A2, 304, active"}};
        for (const auto& [galvanizers, flowing] : pairs) {
            const double shift = in_V(entry(std::string("galvanizers: ") + galvanizers).potential) -
                                 in_V(entry(std::string("ASTM G82: ") + flowing).potential);
            CHECK(shift == doctest::Approx(-0.075).epsilon(0.08));
        }
    }

    TEST_CASE("anodic index: differences of our pairs, and its trap") {
        const std::string al = "anodic index: aluminium 5xxx, 6xxx, 7xxx", steel = "anodic index: carbon steel";
        CHECK(apart("anodic index: zinc, hot-dip", al) == doctest::Approx(0.30));
        CHECK(apart("anodic index: zinc, wrought, die-cast, plated", al) == doctest::Approx(0.35));
        CHECK(apart(al, "anodic index: stainless A2, 18 % Cr") == doctest::Approx(0.40));
        CHECK(apart("anodic index: zinc, hot-dip", steel) == doctest::Approx(0.35));
        CHECK(apart("anodic index: zinc, hot-dip", "anodic index: stainless A2, 18 % Cr") == doctest::Approx(0.70));
        CHECK(apart(al, "anodic index: nickel") == doctest::Approx(0.60));
        CHECK(apart(al, "anodic index: copper") == doctest::Approx(0.55));
        CHECK(apart("anodic index: stainless A2, 18 % Cr", "anodic index: copper") == doctest::Approx(0.15));
        // It calls bare steel on aluminium harmless in the harshest air (0.15 V allowed), where the matrix asks for protection everywhere
        // and the current is within a few parts in a hundred of that beside stainless.
        CHECK(apart(al, steel) == doctest::Approx(0.05));
        const auto* cell =
            matrix_cell(tables().of<Compatibility>(), tables().of<Metal>(), metal("aluminium 5xxx, 6xxx, 7xxx"), metal("carbon steel"));
        REQUIRE(cell != nullptr);
        CHECK((cell->marine == "I" && cell->sea_water == "I" && cell->industrial == "I"));
        const auto beside = [](WorkingMetal partner) {
            const std::array pair{
                ElectrodeMember{mm2(100), working_polarisation(WorkingMetal::aluminium), working_dissolution(WorkingMetal::aluminium)},
                ElectrodeMember{mm2(100), working_polarisation(partner), working_dissolution(partner)}};
            return in_uA(mixed_potential(pair, uA_per_cm2(30))->members[0].current);
        };
        CHECK(beside(WorkingMetal::carbon_steel) > 0.9 * beside(WorkingMetal::stainless));
    }
}
