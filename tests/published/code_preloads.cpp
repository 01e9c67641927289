// SPDX-License-Identifier: MIT
#include "published/published.hpp"

#include "mechanics/nut_factor_torque.hpp"

using namespace faywright;

namespace {
struct Row {
    double diameter, stress_area;  ///< printed stress area
    const char* preload_8_8;
    const char* preload_10_9;
    double maker_factor;       ///< k_m of the lubricated assembly
    const char* final_torque;  ///< in steps of 50 Nm: zeros behind are no figures
};
constexpr Row rows[] = {
    {12, 84.3, "47", "59", 0.129, "1.00e2"},  {16, 157, "88", "110", 0.129, "2.5e2"},  {20, 245, "137", "172", 0.119, "4.5e2"},
    {22, 303, "170", "212", 0.127, "6.5e2"},  {24, 353, "198", "247", 0.123, "8.0e2"}, {27, 459, "257", "321", 0.131, "1.25e3"},
    {30, 561, "314", "393", 0.127, "1.65e3"}, {36, 817, "458", "572", 0.124, "2.8e3"},
};
}  // namespace

TEST_SUITE("published/code_preloads") {
    TEST_CASE("EN 1090-2, table of preloads: 0.7 f_ub A_s, class 10.9") {
        constexpr Source source{"EN 1090-2", "not stated in the reprint", "nominal minimum preload, 10.9 (reprint)", Basis::published};
        for (const auto& row : rows)
            published::check(source, "F_p,C M" + std::to_string(int(row.diameter)), in_kN(0.7 * MPa(1000) * mm2(row.stress_area)),
                             {row.preload_10_9}, "kN");
    }

    TEST_CASE("EN 1090-2, table of preloads: 0.7 f_ub A_s, class 8.8") {
        constexpr Source source{"EN 1090-2", "2008", "nominal minimum preload, 8.8", Basis::memory};
        for (const auto& row : rows)
            published::check(source, "F_p,C M" + std::to_string(int(row.diameter)), in_kN(0.7 * MPa(800) * mm2(row.stress_area)),
                             {row.preload_8_8}, "kN");
    }

    TEST_CASE("EN 1090-2, torque method: second step of hot-dip galvanised, lubricated 10.9 assemblies") {
        constexpr Source source{"EN 1090-2", "not stated in the reprint", "torque method, 1.10 M_r, assembly data (reprint)",
                                Basis::published};
        for (const auto& row : rows) {
            const auto torque = NutFactorTorque::compute({kN(std::atof(row.preload_10_9)), mm(row.diameter), row.maker_factor}).torque;
            published::check(source, "1.1 M_r M" + std::to_string(int(row.diameter)), in_Nm(1.1 * torque), {row.final_torque}, "Nm");
        }
    }
}
