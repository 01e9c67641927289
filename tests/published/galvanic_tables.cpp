// SPDX-License-Identifier: MIT
#include "published/published.hpp"
#include "tables/tables.hpp"

#include <string>

using namespace faywright;

namespace {

const Tables& tables() {
    static const Tables all = [] {
        Diagnostics diagnostics;
        return load_tables(std::nullopt, diagnostics);
    }();
    return all;
}

const Metal& metal(const std::string& name) {
    const auto* row = tables().of<Metal>().find(name);
    REQUIRE_MESSAGE(row != nullptr, name);
    return *row;
}

const SeriesPotential& entry(const std::string& name) {
    const auto* row = tables().of<SeriesPotential>().find(name);
    REQUIRE_MESSAGE(row != nullptr, name);
    return *row;
}

const Row<Compatibility>& said(const std::string& name) {
    const auto* row = tables().of<Compatibility>().find(name);
    REQUIRE_MESSAGE(row != nullptr, name);
    return *row;
}

/// Marine air, sea water, industrial air, as the matrix prints its cells.
std::string cell(const std::string& a, const std::string& b) {
    const auto* row = matrix_cell(tables().of<Compatibility>(), tables().of<Metal>(), metal(a), metal(b));
    return row == nullptr ? "" : *row->marine + *row->sea_water + *row->industrial;
}

const std::string aluminium = "aluminium 5xxx, 6xxx, 7xxx";

}  // namespace

TEST_SUITE("published/galvanic_tables") {
    TEST_CASE("MIL-STD-889C, Table I: the pairs of a trailer's joint, in either order") {
        CHECK(cell("zinc", aluminium) == "CIC");
        CHECK(cell(aluminium, "zinc") == "CIC");
        CHECK(cell(aluminium, "carbon steel") == "III");
        CHECK(cell("stainless A2", aluminium) == "III");
        CHECK(cell("stainless A4", "zinc") == "III");
        CHECK(cell("zinc", "carbon steel") == "III");
        CHECK(cell("cadmium", aluminium) == "CIC");
        CHECK(cell("zinc", "aluminium 2xxx") == "III");
        CHECK(cell("stainless A4", "stainless A2") == "CCC");
        CHECK(cell("stainless A2", "graphite") == "CIC");
        CHECK(cell("carbon steel", "nickel") == "");
        CHECK(cell("lead", "zinc") == "");
    }

    TEST_CASE("PD 6484, 1979, table for zinc: with aluminium in marine air, with copper in sea water") {
        CHECK(*said("PD 6484: zinc / " + aluminium).marine == "0-1");
        CHECK(*said("PD 6484: zinc / copper").sea_water == "2-3");
        CHECK(*said("PD 6484: zinc / titanium").marine == "(1-2)");
    }

    TEST_CASE("Aluminum Design Manual, 2015, M.7: bare steel is to be protected, galvanised steel and stainless are not") {
        CHECK(said("ADM M.7: " + aluminium + " / carbon steel").statement->starts_with("protection needed"));
        CHECK(said("ADM M.7: " + aluminium + " / zinc").statement->starts_with("no protection needed"));
        CHECK(*said("ADM M.7: " + aluminium + " / stainless A4").statement == "no protection needed except in high chloride");
        CHECK(said("ADM M.7: " + aluminium + " / zinc").source.basis == Basis::published);
    }

    TEST_CASE("handbooks contradict one another on stainless beside aluminium, and both are shown") {
        CHECK(said("handbooks on aluminium: " + aluminium + " / stainless A2, finishing guide").statement->find("marine") !=
              std::string::npos);
        CHECK(*said("handbooks on aluminium: " + aluminium + " / stainless A2, design book").statement ==
              "generally safe without precautions");
    }

    TEST_CASE("anodic index, reprinted table: silver on gold") {
        constexpr Source source{"Anodic index, reprinted table", "undated", "gold and silver", Basis::published};
        const auto apart = difference(entry("anodic index: silver"), entry("anodic index: gold"));
        REQUIRE(apart.has_value());
        published::check(source, "difference", in_V(*apart), {"0.15"}, "V");
    }
}
