// SPDX-License-Identifier: MIT
#include "published/published.hpp"

#include "tables/tables.hpp"

using namespace faywright;

namespace {
constexpr Source source{"Budynas and Nisbett, Shigley's Mechanical Engineering Design", "9th", "Table 8-2, after ANSI B1.1-1974",
                        Basis::published};
constexpr Source heads{"ASME B18.2.1", "not stated in the reprint", "hex cap screws, F max (reprint)", Basis::published};

struct Printed {
    const char *coarse, *coarse_area, *fine, *fine_area, *across_flats;
    double width;
};
constexpr Printed rows[] = {
    {"1/4-20 UNC", "0.0318", "1/4-28 UNF", "0.0364", "0.438", 7.0 / 16},
    {"5/16-18 UNC", "0.0524", "5/16-24 UNF", "0.0580", "0.500", 0.5},
    {"3/8-16 UNC", "0.0775", "3/8-24 UNF", "0.0878", "0.562", 9.0 / 16},
    {"7/16-14 UNC", "0.1063", "7/16-20 UNF", "0.1187", "0.625", 0.625},
    {"1/2-13 UNC", "0.1419", "1/2-20 UNF", "0.1599", "0.750", 0.75},
    {"9/16-12 UNC", "0.182", "9/16-18 UNF", "0.203", "0.812", 13.0 / 16},
    {"5/8-11 UNC", "0.226", "5/8-18 UNF", "0.256", "0.938", 15.0 / 16},
    {"3/4-10 UNC", "0.334", "3/4-16 UNF", "0.373", "1.125", 1.125},
    {"7/8-9 UNC", "0.462", "7/8-14 UNF", "0.509", "1.312", 21.0 / 16},
    {"1-8 UNC", "0.606", "1-12 UNF", "0.663", "1.500", 1.5},
};

const Table<InchThread>& threads() {
    static const Tables tables = [] {
        Diagnostics none;
        return load_tables(std::nullopt, none);
    }();
    return tables.of<InchThread>();
}

double in_inches(Length length) { return in_mm(length) / 25.4; }

/// The unified formula, from diameter and threads to the inch.
double stress_area(const InchThread& thread) { return pi / 4.0 * squared(in_inches(thread.diameter) - 0.9743 / thread.threads_per_inch); }

bool is_cut_off(std::string_view name) { return name == "5/16-24 UNF" || name == "1/2-20 UNF"; }
}  // namespace

TEST_SUITE("published/inch_threads") {
    TEST_CASE("Shigley, Table 8-2: stress areas of UNC and UNF, 1/4 to 1 in") {
        for (const auto& row : rows)
            for (const auto& [name, area] : {std::pair{row.coarse, row.coarse_area}, std::pair{row.fine, row.fine_area}}) {
                const auto* thread = threads().find(name);
                REQUIRE(thread != nullptr);
                published::check(source, std::string(name) + " A_t of the table", in_mm2(thread->stress_area) / squared(25.4), {area},
                                 "in^2");
                if (!is_cut_off(name)) published::check(source, std::string(name) + " A_t", stress_area(*thread), {area}, "in^2");
            }
        CHECK(threads().rows.size() == 2 * std::size(rows));
    }

    TEST_CASE("Shigley, Table 8-2: 5/16-24 and 1/2-20 UNF, whose last digit is cut off where the others are rounded" *
              doctest::should_fail()) {
        for (const auto& row : rows)
            if (is_cut_off(row.fine))
                published::check(source, std::string(row.fine) + " A_t", stress_area(*threads().find(row.fine)), {row.fine_area}, "in^2");
    }

    TEST_CASE("ASME B18.2.1: greatest width across flats of hex cap screws is a fraction of an inch, rounded") {
        for (const auto& row : rows)
            for (const char* name : {row.coarse, row.fine}) {
                const auto* thread = threads().find(name);
                REQUIRE(thread != nullptr);
                CHECK(std::abs(in_inches(thread->across_flats) - row.width) < 0.00051);
                published::check(heads, std::string(name) + " F", in_inches(thread->across_flats), {row.across_flats}, "in");
            }
    }

    TEST_CASE("every row is named after its size, threads and series") {
        for (const auto& row : threads().rows) {
            CHECK(row.name == fmt::format("{}-{} {}", row.size, static_cast<int>(row.threads_per_inch), row.series));
            CHECK(InchThread::fault(row) == nullptr);
        }
    }
}
