// SPDX-License-Identifier: MIT
#include "published/published.hpp"

#include "mechanics/thread_geometry.hpp"

using namespace faywright;

namespace {
constexpr Source source{"ISO 898-1", "not stated in the reprint", "nominal stress areas (reprint)", Basis::published};

struct Row {
    const char* size;
    double diameter, pitch;
    const char* stress_area;
};
constexpr Row rows[] = {
    {"M5", 5, 0.8, "14.2"}, {"M6", 6, 1, "20.1"},  {"M8", 8, 1.25, "36.6"}, {"M10", 10, 1.5, "58.0"}, {"M12", 12, 1.75, "84.3"},
    {"M14", 14, 2, "115"},  {"M16", 16, 2, "157"}, {"M18", 18, 2.5, "192"}, {"M20", 20, 2.5, "245"},  {"M22", 22, 2.5, "303"},
    {"M24", 24, 3, "353"},  {"M27", 27, 3, "459"}, {"M30", 30, 3.5, "561"},
};
}  // namespace

TEST_SUITE("published/thread_geometry") {
    TEST_CASE("ISO 898-1, table of tensile loads: stress areas M5 to M30") {
        for (const auto& row : rows) {
            const auto answer = ThreadGeometry::compute({mm(row.diameter), mm(row.pitch)});
            published::check(source, std::string(row.size) + " A_s", in_mm2(answer.stress_area), {row.stress_area}, "mm^2");
        }
    }
}
