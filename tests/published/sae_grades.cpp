// SPDX-License-Identifier: MIT
#include "published/published.hpp"

#include "tables/tables.hpp"

using namespace faywright;

namespace {
constexpr Source grades{"SAE J429", "not stated in the reprint", "table of mechanical properties (reprint)", Basis::published};
constexpr Source structural{"ASTM F3125", "2015", "table of mechanical properties (reprint)", Basis::published};
constexpr Source shigley{"Shigley and Mischke, Mechanical Engineering Design", "5th", "specifications for steel bolts (reprint)",
                         Basis::published};
constexpr Source solutions{"Budynas and Nisbett, Shigley's Mechanical Engineering Design, solutions", "8th", "Problem 8-26, page 216",
                           Basis::published};
constexpr Source example{"Budynas and Nisbett, Shigley's Mechanical Engineering Design", "9th", "Example 8-4", Basis::memory};

struct Printed {
    const char* name;
    const Source& source;
    const char *proof, *yield, *tensile;
};
constexpr Printed rows[] = {
    {"grade 2 to 3/4", grades, "55", "57", "74"}, {"grade 2 over 3/4", grades, "33", "36", "60"},
    {"grade 5 to 1", grades, "85", "92", "120"},  {"grade 5 over 1", grades, "74", "81", "105"},
    {"grade 8", grades, "120", "130", "150"},     {"grade 5.2", shigley, "85", "92", "120"},
    {"grade 8.2", shigley, "120", "130", "150"},  {"A325", shigley, "85", "92", "120"},
    {"A490", shigley, "120", "130", "150"},
};

const Tables& built_in() {
    static const Tables tables = [] {
        Diagnostics none;
        return load_tables(std::nullopt, none);
    }();
    return tables;
}
const Table<InchGrade>& table() { return built_in().of<InchGrade>(); }

constexpr double psi = 6894.757293168;
double in_ksi(Stress stress) { return in_MPa(stress) * 1e3 / psi; }
double in_kip(Force force) { return in_N(force) / 4448.2216152605; }
Area area_of(const char* thread) { return built_in().of<InchThread>().find(thread)->stress_area; }
}  // namespace

TEST_SUITE("published/sae_grades") {
    TEST_CASE("SAE J429 and ASTM A325, A490: proof stress, yield and tensile strength") {
        for (const auto& row : rows) {
            const auto* grade = table().find(row.name);
            REQUIRE(grade != nullptr);
            published::check(row.source, std::string(row.name) + " S_p", in_ksi(grade->proof_stress), {row.proof}, "ksi");
            published::check(row.source, std::string(row.name) + " S_y", in_ksi(grade->yield_strength), {row.yield}, "ksi");
            published::check(row.source, std::string(row.name) + " S_ut", in_ksi(grade->ultimate_strength), {row.tensile}, "ksi");
        }
        CHECK(table().rows.size() == std::size(rows));
    }

    TEST_CASE("ASTM F3125: yield and tensile strength of A325 and A490") {
        published::check(structural, "A325 tensile", in_ksi(table().find("A325")->ultimate_strength), {"120"}, "ksi");
        published::check(structural, "A325 yield", in_ksi(table().find("A325")->yield_strength), {"92"}, "ksi");
        published::check(structural, "A490 tensile", in_ksi(table().find("A490")->ultimate_strength), {"150"}, "ksi");
        published::check(structural, "A490 yield", in_ksi(table().find("A490")->yield_strength), {"130"}, "ksi");
    }

    TEST_CASE("SAE J429: core hardness") {
        const auto check = [](const char* name, const char* least, const char* most) {
            published::check(grades, std::string(name) + " least hardness", table().find(name)->hardness_least, {least}, "HR");
            published::check(grades, std::string(name) + " greatest hardness", table().find(name)->hardness_most, {most}, "HR");
        };
        check("grade 2 to 3/4", "80", "100");
        check("grade 2 over 3/4", "70", "100");
        check("grade 5 to 1", "25", "34");
        check("grade 5 over 1", "19", "30");
        check("grade 8", "33", "39");
    }

    TEST_CASE("Shigley: preload of three quarters of the proof load, from both tables") {
        const auto proof = table().find("grade 5 to 1")->proof_stress;
        published::check(solutions, "F_i of 1/2-13 grade 5", in_kip(0.75 * proof * area_of("1/2-13 UNC")), {"9.046"}, "kip");
        published::check(example, "F_i of 5/8-11 grade 5", in_kip(0.75 * proof * area_of("5/8-11 UNC")), {"14.4"}, "kip");
    }

    TEST_CASE("every diameter has one row of its grade, and every row is whole") {
        for (const auto& row : table().rows) {
            CHECK(InchGrade::fault(row) == nullptr);
            CHECK((row.hardness_scale == "HRC" || row.hardness_scale == "HRB"));
        }
        for (const auto& thread : built_in().of<InchThread>().rows)
            for (const std::string grade : {"grade 2", "grade 5", "grade 8"})
                CHECK(std::count_if(table().rows.begin(), table().rows.end(),
                                    [&](const auto& row) { return row.grade == grade && row.holds_for(thread.diameter); }) == 1);
        CHECK_FALSE(table().find("grade 5 over 1")->holds_for(mm(25.4)));
        CHECK(table().find("grade 5 over 1")->holds_for(mm(25.5)));
    }
}

TEST_SUITE("tables: product standards") {
    TEST_CASE("successors resolve, are of the same part and have no successor themselves") {
        const auto& standards = built_in().of<ProductStandard>();
        std::size_t old = 0;
        for (const auto& row : standards.rows) {
            CHECK(ProductStandard::fault(row) == nullptr);
            if (!row.successor) continue;
            ++old;
            const auto* successor = standards.find(*row.successor);
            REQUIRE_MESSAGE(successor != nullptr, row.name);
            CHECK(successor->part == row.part);
            CHECK_FALSE(successor->successor.has_value());
            CHECK(successor->fine == row.fine);
            CHECK(successor->prevailing_torque == row.prevailing_torque);
            if (row.fully_threaded) CHECK(successor->fully_threaded == row.fully_threaded);
        }
        CHECK(old > 15);
    }

    TEST_CASE("widths across flats by the old standards differ from those of the threads table") {
        for (const auto& row : built_in().of<ProductStandard>().rows)
            for (const auto& thread : built_in().of<Thread>().rows)
                if (const auto width = row.old_width(thread.name)) CHECK(std::abs(in_mm(*width - thread.across_flats)) > 0.5);
        CHECK(in_mm(*built_in().of<ProductStandard>().find("DIN 934")->old_width("M12")) == doctest::Approx(19));
        CHECK_FALSE(built_in().of<ProductStandard>().find("DIN 934")->old_width("M16").has_value());
    }
}
