// SPDX-License-Identifier: MIT
#include "published/published.hpp"

#include "mechanics/thread_geometry.hpp"

/// Loads of ISO 898-1: the printed stress area (three figures) times the printed stress, rounded to three figures; the zeros
/// behind these are no figures. First link (area from size and pitch) in thread_geometry.cpp. Four figures where four are printed.
using namespace faywright;

namespace {
constexpr Source ultimate_source{"ISO 898-1", "not stated in the reprint", "minimum ultimate tensile loads (reprint)", Basis::published};
constexpr Source proof_source{"ISO 898-1", "not stated in the reprint", "proof loads (reprint)", Basis::published};
constexpr Source recalled_proof_source{"ISO 898-1", "2013", "proof loads", Basis::memory};

struct Row {
    const char* size;
    const char* property_class;
    double stress_area, stress;
    const char* load;
};

constexpr Row ultimate_loads[] = {
    {"M5", "4.6", 14.2, 400, "5.68e3"},
    {"M5", "5.6", 14.2, 500, "7.10e3"},
    {"M5", "10.9", 14.2, 1040, "1.48e4"},
    {"M5", "12.9", 14.2, 1220, "1.73e4"},
    {"M6", "4.6", 20.1, 400, "8.04e3"},
    {"M6", "5.6", 20.1, 500, "1.00e4"},
    {"M6", "8.8", 20.1, 800, "1.61e4"},
    {"M6", "10.9", 20.1, 1040, "2.09e4"},
    {"M6", "12.9", 20.1, 1220, "2.45e4"},
    {"M8", "4.6", 36.6, 400, "1.46e4"},
    {"M8", "5.6", 36.6, 500, "1.83e4"},
    {"M8", "10.9", 36.6, 1040, "3.81e4"},
    {"M10", "4.6", 58.0, 400, "2.32e4"},
    {"M10", "5.6", 58.0, 500, "2.90e4"},
    {"M10", "8.8", 58.0, 800, "4.64e4"},
    {"M10", "10.9", 58.0, 1040, "6.03e4"},
    {"M10", "12.9", 58.0, 1220, "7.08e4"},
    {"M12", "4.6", 84.3, 400, "3.37e4"},
    {"M12", "5.6", 84.3, 500, "4.22e4"},
    {"M12", "8.8", 84.3, 800, "6.74e4"},
    {"M12", "10.9", 84.3, 1040, "8.77e4"},
    {"M12", "12.9", 84.3, 1220, "1.03e5"},
    {"M14", "4.6", 115, 400, "4.60e4"},
    {"M14", "5.6", 115, 500, "5.75e4"},
    {"M14", "8.8", 115, 800, "9.20e4"},
    {"M14", "10.9", 115, 1040, "1.20e5"},
    {"M14", "12.9", 115, 1220, "1.40e5"},
    {"M16", "4.6", 157, 400, "6.28e4"},
    {"M16", "5.6", 157, 500, "7.85e4"},
    {"M16", "10.9", 157, 1040, "1.63e5"},
    {"M16", "12.9", 157, 1220, "1.92e5"},
    {"M18", "4.6", 192, 400, "7.68e4"},
    {"M18", "5.6", 192, 500, "9.60e4"},
    {"M18", "8.8", 192, 830, "1.59e5"},
    {"M18", "10.9", 192, 1040, "2.00e5"},
    {"M18", "12.9", 192, 1220, "2.34e5"},
    {"M20", "4.6", 245, 400, "9.80e4"},
    {"M20", "5.6", 245, 500, "1.22e5"},
    {"M20", "8.8", 245, 830, "2.03e5"},
    {"M20", "10.9", 245, 1040, "2.55e5"},
    {"M20", "12.9", 245, 1220, "2.99e5"},
    {"M22", "4.6", 303, 400, "1.21e5"},
    {"M22", "5.6", 303, 500, "1.52e5"},
    {"M22", "10.9", 303, 1040, "3.15e5"},
    {"M22", "12.9", 303, 1220, "3.70e5"},
    {"M24", "4.6", 353, 400, "1.41e5"},
    {"M24", "5.6", 353, 500, "1.76e5"},
    {"M24", "8.8", 353, 830, "2.93e5"},
    {"M24", "10.9", 353, 1040, "3.67e5"},
    {"M24", "12.9", 353, 1220, "4.31e5"},
    {"M27", "4.6", 459, 400, "1.84e5"},
    {"M27", "5.6", 459, 500, "2.30e5"},
    {"M27", "8.8", 459, 830, "3.81e5"},
    {"M27", "10.9", 459, 1040, "4.77e5"},
    {"M27", "12.9", 459, 1220, "5.60e5"},
    {"M30", "4.6", 561, 400, "2.24e5"},
    {"M30", "5.6", 561, 500, "2.80e5"},
    {"M30", "8.8", 561, 830, "4.66e5"},
    {"M30", "10.9", 561, 1040, "5.83e5"},
    {"M30", "12.9", 561, 1220, "6.84e5"},
    {"M12", "8.8 structural", 84.3, 830, "7.00e4"},
    {"M14", "8.8 structural", 115, 830, "9.55e4"},
    {"M16", "8.8 structural", 157, 830, "1.30e5"},
};

constexpr Row ultimate_loads_otherwise_rounded[] = {
    {"M5", "8.8", 14.2, 800, "1.135e4"}, {"M8", "8.8", 36.6, 800, "2.92e4"}, {"M8", "12.9", 36.6, 1220, "4.46e4"},
    {"M16", "8.8", 157, 800, "1.25e5"},  {"M22", "8.8", 303, 830, "2.52e5"},
};

constexpr Row proof_loads[] = {
    {"M5", "10.9", 14.2, 830, "1.18e4"}, {"M5", "12.9", 14.2, 970, "1.38e4"},  {"M6", "10.9", 20.1, 830, "1.67e4"},
    {"M6", "12.9", 20.1, 970, "1.95e4"}, {"M8", "8.8", 36.6, 580, "2.12e4"},   {"M8", "10.9", 36.6, 830, "3.04e4"},
    {"M8", "12.9", 36.6, 970, "3.55e4"}, {"M10", "10.9", 58.0, 830, "4.81e4"}, {"M10", "12.9", 58.0, 970, "5.63e4"},
    {"M12", "8.8", 84.3, 580, "4.89e4"}, {"M12", "10.9", 84.3, 830, "7.00e4"}, {"M12", "12.9", 84.3, 970, "8.18e4"},
    {"M14", "8.8", 115, 580, "6.67e4"},  {"M14", "10.9", 115, 830, "9.55e4"},  {"M14", "12.9", 115, 970, "1.12e5"},
};

constexpr Row recalled_proof_loads[] = {
    {"M5", "4.6", 14.2, 225, "3.20e3"},  {"M5", "5.6", 14.2, 280, "3.98e3"},  {"M6", "4.6", 20.1, 225, "4.52e3"},
    {"M6", "5.6", 20.1, 280, "5.63e3"},  {"M8", "4.6", 36.6, 225, "8.24e3"},  {"M8", "5.6", 36.6, 280, "1.02e4"},
    {"M10", "4.6", 58.0, 225, "1.30e4"}, {"M10", "5.6", 58.0, 280, "1.62e4"}, {"M12", "4.6", 84.3, 225, "1.90e4"},
    {"M12", "5.6", 84.3, 280, "2.36e4"}, {"M14", "4.6", 115, 225, "2.59e4"},  {"M14", "5.6", 115, 280, "3.22e4"},
    {"M16", "4.6", 157, 225, "3.53e4"},  {"M16", "5.6", 157, 280, "4.40e4"},  {"M16", "10.9", 157, 830, "1.30e5"},
    {"M16", "12.9", 157, 970, "1.52e5"}, {"M18", "4.6", 192, 225, "4.32e4"},  {"M18", "5.6", 192, 280, "5.38e4"},
    {"M18", "8.8", 192, 600, "1.15e5"},  {"M18", "10.9", 192, 830, "1.59e5"}, {"M18", "12.9", 192, 970, "1.86e5"},
    {"M20", "4.6", 245, 225, "5.51e4"},  {"M20", "5.6", 245, 280, "6.86e4"},  {"M20", "8.8", 245, 600, "1.47e5"},
    {"M20", "10.9", 245, 830, "2.03e5"}, {"M20", "12.9", 245, 970, "2.38e5"}, {"M22", "4.6", 303, 225, "6.82e4"},
    {"M22", "5.6", 303, 280, "8.48e4"},  {"M22", "8.8", 303, 600, "1.82e5"},  {"M22", "12.9", 303, 970, "2.94e5"},
    {"M24", "4.6", 353, 225, "7.94e4"},  {"M24", "5.6", 353, 280, "9.88e4"},  {"M24", "8.8", 353, 600, "2.12e5"},
    {"M24", "10.9", 353, 830, "2.93e5"}, {"M24", "12.9", 353, 970, "3.42e5"}, {"M27", "4.6", 459, 225, "1.03e5"},
    {"M27", "8.8", 459, 600, "2.75e5"},  {"M27", "10.9", 459, 830, "3.81e5"}, {"M27", "12.9", 459, 970, "4.45e5"},
    {"M30", "4.6", 561, 225, "1.26e5"},  {"M30", "5.6", 561, 280, "1.57e5"},  {"M30", "8.8", 561, 600, "3.37e5"},
    {"M30", "10.9", 561, 830, "4.66e5"}, {"M30", "12.9", 561, 970, "5.44e5"},
};

constexpr Row proof_loads_otherwise_rounded[] = {
    {"M5", "8.8", 14.2, 580, "8.23e3"},
    {"M6", "8.8", 20.1, 580, "1.16e4"},
    {"M10", "8.8", 58.0, 580, "3.37e4"},
    {"M16", "8.8", 157, 580, "9.10e4"},
    {"M12", "8.8 structural", 84.3, 600, "5.07e4"},
    {"M14", "8.8 structural", 115, 600, "6.88e4"},
    {"M16", "8.8 structural", 157, 600, "9.45e4"},
};

constexpr Row recalled_proof_loads_otherwise_rounded[] = {
    {"M22", "10.9", 303, 830, "2.52e5"},
    {"M27", "5.6", 459, 280, "1.28e5"},
};

void check_all(const Source& source, const auto& rows) {
    for (const auto& row : rows)
        published::check(source, std::string(row.size) + " " + row.property_class, in_N(mm2(row.stress_area) * MPa(row.stress)), {row.load},
                         "N");
}
}  // namespace

TEST_SUITE("published/proof_loads") {
    TEST_CASE("ISO 898-1, tensile loads: minimum ultimate tensile loads") { check_all(ultimate_source, ultimate_loads); }

    TEST_CASE("ISO 898-1, tensile loads: ultimate loads printed from an area or rounding other than the printed one" *
              doctest::should_fail()) {
        check_all(ultimate_source, ultimate_loads_otherwise_rounded);
    }

    TEST_CASE("ISO 898-1, proof loads: 8.8 to 12.9, M5 to M16") { check_all(proof_source, proof_loads); }

    TEST_CASE("ISO 898-1, proof loads, recalled: classes 4.6 and 5.6, larger sizes") {
        check_all(recalled_proof_source, recalled_proof_loads);
    }

    TEST_CASE("ISO 898-1, proof loads: values rounded down or up beyond the printed area times the stress" * doctest::should_fail()) {
        check_all(proof_source, proof_loads_otherwise_rounded);
    }

    TEST_CASE("ISO 898-1, proof loads, recalled: M22 10.9 and M27 5.6 rounded otherwise" * doctest::should_fail()) {
        check_all(recalled_proof_source, recalled_proof_loads_otherwise_rounded);
    }
}
