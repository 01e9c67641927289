// SPDX-License-Identifier: MIT
#include "published/published.hpp"

#include "mechanics/thread_geometry.hpp"

using namespace faywright;

namespace {
constexpr Source annex{"ISO 10684", "2004", "Annex A, nuts tapped oversize (reprint)", Basis::published};

struct Nut {
    const char* size;
    const char* mark;
    double stress_area, proof_stress;
    const char* proof_load;
};
constexpr Nut oversize[] = {
    {"M8", "5Z", 36.6, 473, "1.73e4"},  {"M8", "6Z", 36.6, 546, "2.00e4"},  {"M8", "8Z", 36.6, 698, "2.55e4"},
    {"M8", "9Z", 36.6, 754, "2.76e4"},  {"M8", "10Z", 36.6, 835, "3.06e4"}, {"M10", "6Z", 58.0, 569, "3.30e4"},
    {"M10", "8Z", 58.0, 728, "4.22e4"}, {"M10", "9Z", 58.0, 786, "4.56e4"},
};
constexpr Nut oversize_differing[] = {{"M10", "5Z", 58.0, 493, "2.80e4"}, {"M10", "10Z", 58.0, 870, "5.04e4"}};

/// Proof loads of style 1 nuts, class 8, and of the lower nuts of the older standard, against the 8.8 bolt's ultimate load, N.
struct Match {
    const char* size;
    double class_8, older, bolt_ultimate;
};
constexpr Match matches[] = {
    {"M5", 12140, 11400, 11350},     {"M6", 17200, 16000, 16100},     {"M8", 31800, 29000, 29200},     {"M10", 50500, 46000, 46400},
    {"M12", 74200, 67000, 67400},    {"M14", 101200, 92000, 92000},   {"M16", 138200, 126000, 125000}, {"M18", 176600, 154000, 159000},
    {"M20", 225400, 196000, 203000}, {"M22", 278800, 242000, 252000}, {"M24", 324800, 282000, 293000}, {"M30", 516100, 448000, 466000},
};
}  // namespace

TEST_SUITE("published/nut_loads") {
    TEST_CASE("ISO 10684, 2004, Annex A: proof loads of oversize nuts are stress area times proof stress") {
        for (const auto& nut : oversize)
            published::check(annex, std::string(nut.size) + " " + nut.mark, in_N(mm2(nut.stress_area) * MPa(nut.proof_stress)),
                             {nut.proof_load}, "N");
    }

    TEST_CASE("ISO 10684, 2004, Annex A: M10 5Z and 10Z do not follow from the stress printed beside them" * doctest::should_fail()) {
        for (const auto& nut : oversize_differing)
            published::check(annex, std::string(nut.size) + " " + nut.mark, in_N(mm2(nut.stress_area) * MPa(nut.proof_stress)),
                             {nut.proof_load}, "N");
    }

    TEST_CASE("ISO 898-2, class 10: proof load of M8 and M10 equals the ultimate load of the 10.9 bolt") {
        constexpr Source source{"ISO 898-2", "not stated in the reprint", "proof loads, style 1 coarse, class 10 (reprint)",
                                Basis::published};
        published::check(source, "M8", in_N(mm2(36.6) * MPa(1040)), {"3.81e4"}, "N");
        published::check(source, "M10", in_N(mm2(58.0) * MPa(1040)), {"6.03e4"}, "N");
    }

    TEST_CASE("ISO 898-2 and ISO 898-1: a class 8 nut outlasts the 8.8 bolt, the lower nut of the older standard only just meets it") {
        for (const auto& match : matches) {
            CAPTURE(match.size);
            CHECK(match.class_8 > 1.06 * match.bolt_ultimate);
            CHECK(match.older > 0.95 * match.bolt_ultimate);
            CHECK(match.older < 1.01 * match.bolt_ultimate);
        }
    }
}
