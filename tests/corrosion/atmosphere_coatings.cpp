// SPDX-License-Identifier: MIT
#include "corrosion/coating_life.hpp"
#include "joint/reading.hpp"

#include <string>

using namespace faywright;

namespace {

const std::vector<Row<Coating>>& rows() { return joint_tests::built_in().of<Coating>().rows; }

std::string loaded(const std::string& fields) {
    const std::string toml =
        "[[coating]]\nname = \"own\"\nkind = \"electroplate\"\narticle = \"bolt\"\nsource = {basis = \"practice\"}\n" + fields;
    Diagnostics diagnostics;
    const auto node = parse_toml(toml, "coatings.toml", diagnostics);
    REQUIRE_MESSAGE(node.has_value(), diagnostics.text());
    Table<Coating> table;
    load_rows(*node, table, diagnostics);
    return diagnostics.any() ? diagnostics.text() : "";
}

}  // namespace

TEST_SUITE("corrosion/atmosphere_coatings") {
    TEST_CASE("masses are of zinc: 7.0 to 7.25 g/cm3 of the thickness beside them") {
        int compared = 0;
        for (const auto& row : rows()) {
            CAPTURE(row.name);
            const auto density_of = [](ArealMass mass, Length thickness) { return (mass / thickness).value(); };
            if (row.local_mass) {
                CHECK(density_of(*row.local_mass, row.local_thickness) > 7000);
                CHECK(density_of(*row.local_mass, row.local_thickness) < 7250);
                ++compared;
            }
            if (row.mean_mass && row.mean_thickness) {
                CHECK(density_of(*row.mean_mass, *row.mean_thickness) > 7000);
                CHECK(density_of(*row.mean_mass, *row.mean_thickness) < 7250);
                ++compared;
            }
        }
        CHECK(compared >= 17);
    }

    TEST_CASE("only zinc flake is thought to outlast as thick a coat of zinc, and that is judgement") {
        for (const auto& row : rows()) {
            CAPTURE(row.name);
            const bool flake = row.kind == CoatingKind::zinc_flake;
            CHECK(row.life_factor_low == 1.0);
            CHECK(row.life_factor_high == (flake ? 2.0 : 1.0));
            if (flake) CHECK(row.source_for("life-factor-high").basis == Basis::practice);
        }
    }

    TEST_CASE("thicker steel has no thinner a coat, class by class of one standard") {
        for (const auto& a : rows())
            for (const auto& b : rows()) {
                const bool series = a.source.document == b.source.document && a.article == b.article && a.kind == b.kind;
                if (!series || !a.steel_thickness_up_to || !b.steel_thickness_above) continue;
                if (*a.steel_thickness_up_to > *b.steel_thickness_above) continue;
                CAPTURE(a.name);
                CAPTURE(b.name);
                CHECK(a.local_thickness < b.local_thickness);
            }
    }

    TEST_CASE("every row has a life in every category, longer the milder it is") {
        for (const auto& row : rows()) {
            CAPTURE(row.name);
            Duration before = years(0);
            for (const auto category : {Corrosivity::cx, Corrosivity::c5, Corrosivity::c4, Corrosivity::c3, Corrosivity::c2}) {
                const auto metal = AtmosphereMetal::zinc;
                const auto life =
                    CoatingLife::compute({row.local_thickness, lower_limit(metal, category), upper_limit(metal, category).value(), metal});
                CHECK(life.least > before);
                CHECK(life.most > life.least);
                CHECK(life.outside_range == nullptr);
                before = life.least;
            }
        }
    }

    TEST_CASE("a row that contradicts itself is refused") {
        CHECK(loaded("local-thickness = \"8 um\"").empty());
        CHECK(loaded("local-thickness = \"8 um\"\nmean-thickness = \"7 um\"").find("mean is below") != std::string::npos);
        CHECK(loaded("local-thickness = \"8 um\"\nlocal-mass = \"60 g/m2\"\nmean-mass = \"50 g/m2\"").find("mean is below") !=
              std::string::npos);
        CHECK(loaded("local-thickness = \"8 um\"\nlife-factor-low = 2").find("upside down") != std::string::npos);
        CHECK(loaded("local-thickness = \"8 um\"\nsteel-thickness-above = \"6 mm\"\nsteel-thickness-up-to = \"6 mm\"").find("empty") !=
              std::string::npos);
        CHECK(loaded("local-thickness = \"8 mm\"").find("local-thickness") != std::string::npos);
    }
}
