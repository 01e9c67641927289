// SPDX-License-Identifier: MIT
#include "assess/couples.hpp"
#include "published/published.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <stdexcept>
#include <string>

// Our couples beside the published tables, cell by cell. The tables rate; we compute a rate with judged multipliers and read the
// published step off it. Agreement is counted, not claimed: it says how far judgement follows experience.

using namespace faywright;

namespace {

const Tables& built_in() {
    static const Tables tables = [] {
        Diagnostics diagnostics;
        return load_tables({}, diagnostics);
    }();
    return tables;
}

CoupleCell cell(const char* category, const std::string& a, const std::string& b) {
    const auto& metals = built_in().of<Metal>();
    const CouplesTask task{*built_in().of<Exposure>().find(category), built_in()};
    Place place(task.exposure, built_in());
    return couple_cell(task, place, *metals.find(a), *metals.find(b));
}

/// "0-1", "(1)", "2": the ends of a rating.
std::pair<int, int> ends_of(std::string text) {
    std::erase_if(text, [](char c) { return c == '(' || c == ')'; });
    return {text.front() - '0', text.back() - '0'};
}

struct Count {
    int inside = 0, above = 0, below = 0;
};

/// Cells of the table for zinc that ours does not follow: too little is added to be told as the 1 that is printed.
bool told_milder(const std::string& contact, const std::string& where) {
    return (where == "urban" && (contact == "nickel" || contact == "titanium")) || (where == "marine" && contact == "tin");
}

/// Compares the cells of the table for zinc in air: those told milder, or the others.
Count compared(bool milder) {
    Count count;
    const auto& metals = built_in().of<Metal>();
    for (const auto& row : built_in().of<Compatibility>().rows) {
        if (row.scheme != CompatibilityScheme::pd_6484 || row.considered != "zinc" || metals.find(row.contact) == nullptr) continue;
        for (const auto& [rating, category, where] :
             {std::tuple{row.rural, "C2", "rural"}, std::tuple{row.industrial, "C3", "urban"}, std::tuple{row.marine, "C4", "marine"}}) {
            const auto c = cell(category, "zinc", row.contact);
            if (!rating || c.attack.unplaced || told_milder(row.contact, where) != milder) continue;
            const int step = c.attack.anode != nullptr && c.attack.anode->name == "zinc" ? published_step(c.added.rate) : 0;
            const auto [least, most] = ends_of(*rating);
            published::check(row.source.view(), fmt::format("{}, {}: step of {}", row.contact, where, *rating), step,
                             {std::array{"0", "1", "2", "3"}.at(static_cast<std::size_t>(std::clamp(step, least, most)))}, "");
            (step < least ? count.below : step > most ? count.above : count.inside) += 1;
        }
    }
    return count;
}

}  // namespace

TEST_SUITE("published/couples") {
    TEST_CASE("PD 6484, 1979, table for zinc, air: extra corrosion cell by cell (rural C2, urban C3, marine C4)") {
        const auto count = compared(false);
        CHECK(count.inside >= 50);
        CHECK(count.above + count.below == 0);
    }

    TEST_CASE(
        "PD 6484, 1979, table for zinc: nickel and titanium in towns and tin by the sea are printed 1, and too little is added by ours" *
        doctest::should_fail()) {
        CHECK(compared(true).inside == 3);
    }

    TEST_CASE("MIL-STD-889C, 2016, Table I, aluminium and zinc with our partners: compatible where ours adds 5 um/a or less") {
        int agree = 0, stricter = 0, milder = 0;
        std::string list;
        for (const auto* first : {"aluminium 5xxx, 6xxx, 7xxx", "zinc"})
            for (const auto& other : built_in().of<Metal>().rows) {
                const auto& metals = built_in().of<Metal>();
                const auto* printed = matrix_cell(built_in().of<Compatibility>(), metals, *metals.find(first), other);
                if (printed == nullptr || other.name == first) continue;
                for (const auto& [letter, category, where] :
                     {std::tuple{printed->marine, "C5", "marine"}, std::tuple{printed->industrial, "C4", "industrial"}}) {
                    const auto c = cell(category, first, other.name);
                    if (!letter || c.attack.unplaced || c.attack.no_rate) continue;
                    const bool compatible = c.attack.anode == nullptr || c.added.rate <= um_per_a(5);
                    if (compatible == (*letter == "C"))
                        ++agree;
                    else {
                        ++(compatible ? milder : stricter);
                        list += fmt::format("\n  {} with {}, {}: {} printed, {:.2g} um/a by ours in {}", first, other.name, where, *letter,
                                            in_um_per_a(c.added.rate), category);
                    }
                }
            }
        MESSAGE(fmt::format("{} cells agree, {} we rate worse, {} milder{}", agree, stricter, milder, list));
        CHECK(agree + stricter + milder >= 40);
        CHECK(2 * agree >= agree + stricter + milder);
        // Where ours is milder the matrix says no more than that treatment is asked for; the rule is shown beside the rate.
        CHECK(cell("C5", "zinc", "aluminium 5xxx, 6xxx, 7xxx").added.rate <= um_per_a(5));
        CHECK(cell("C5", "carbon steel", "aluminium 5xxx, 6xxx, 7xxx").added.rate > um_per_a(5));
        CHECK(cell("C5", "stainless A4", "aluminium 5xxx, 6xxx, 7xxx").added.rate > um_per_a(5));
    }

    TEST_CASE("Aluminum Design Manual, 2015, M.7: galvanised steel may touch aluminium from C2 to C5") {
        for (const auto* category : {"C2", "C3", "C4", "C5"}) {
            const auto c = cell(category, "zinc", "aluminium 5xxx, 6xxx, 7xxx");
            CHECK(published_step(c.added.rate) <= 1);
            CHECK(c.attack.anode->name == "zinc");
        }
    }

    TEST_CASE("the anodic index would call bare steel on aluminium harmless, 0.05 V apart; the rate does not") {
        const auto& rows = built_in().of<SeriesPotential>().rows;
        const SeriesPotential *steel = nullptr, *aluminium = nullptr;
        for (const auto& row : rows) {
            if (row.series != PotentialSeries::anodic_index) continue;
            if (row.metal == "carbon steel") steel = &row;
            if (row.metal == "aluminium 5xxx, 6xxx, 7xxx") aluminium = &row;
        }
        REQUIRE((steel != nullptr && aluminium != nullptr));
        CHECK(std::abs(in_V(*difference(*steel, *aluminium))) == doctest::Approx(0.05));
        CHECK(cell("C5", "carbon steel", "aluminium 5xxx, 6xxx, 7xxx").severity >= Severity::fast);
        CHECK(cell("C5", "carbon steel", "aluminium 5xxx, 6xxx, 7xxx").added.rate >
              cell("C5", "stainless A4", "aluminium 5xxx, 6xxx, 7xxx").added.rate);
    }

    TEST_CASE("field study of coupled 6061, abstract: up to about 20 times the rate alone, equal areas") {
        for (const auto* category : {"C2", "C3", "C4", "C5", "CX"}) {
            const auto c = cell(category, "carbon steel", "aluminium 5xxx, 6xxx, 7xxx");
            CHECK(c.attack.added.rate <= 20.0 * c.attack.own_rate);
        }
        const auto worst = cell("CX", "carbon steel", "aluminium 5xxx, 6xxx, 7xxx");
        // The study's most lies within one standard deviation of ours at the worst place.
        CHECK(worst.attack.added.rate < 20.0 * worst.attack.own_rate);
        CHECK(worst.attack.added.high > 20.0 * worst.attack.own_rate);
    }
}
