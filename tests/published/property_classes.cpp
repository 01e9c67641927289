// SPDX-License-Identifier: MIT
#include "published/published.hpp"

#include "tables/tables.hpp"

using namespace faywright;

namespace {
constexpr Source source{"ISO 898-1", "1999", "Table 3, mechanical properties (reprint)", Basis::published};

struct Printed {
    const char* name;
    const char *tensile, *yield, *proof, *hardness_most;
};
// In MPa, and HV with F >= 98 N.
constexpr Printed rows[] = {
    {"4.6", "400", "240", "225", "220"},          {"4.8", "420", "340", "310", "220"}, {"5.6", "500", "300", "280", "220"},
    {"5.8", "520", "420", "380", "220"},          {"6.8", "600", "480", "440", "250"}, {"8.8 to M16", "800", "640", "580", "320"},
    {"8.8 over M16", "830", "660", "600", "335"}, {"9.8", "900", "720", "650", "360"}, {"10.9", "1040", "940", "830", "380"},
    {"12.9", "1220", "1100", "970", "435"},
};
}  // namespace

TEST_SUITE("published/property_classes") {
    TEST_CASE("ISO 898-1, 1999, Table 3: tensile strength, yield, proof stress and hardness limits of the classes") {
        Diagnostics none;
        const auto tables = load_tables(std::nullopt, none);
        std::size_t carbon = 0;
        for (const auto& row : tables.of<BoltClass>().rows) carbon += row.family == "carbon steel" ? 1 : 0;
        CHECK(carbon == std::size(rows));
        for (const auto& row : rows) {
            const auto* known = tables.of<BoltClass>().find(row.name);
            REQUIRE(known != nullptr);
            const std::string name = row.name;
            published::check(source, name + " R_m", in_MPa(known->ultimate_strength), {row.tensile}, "MPa");
            published::check(source, name + " R_eL", in_MPa(known->proof_strength), {row.yield}, "MPa");
            published::check(source, name + " S_p", in_MPa(known->proof_stress.value()), {row.proof}, "MPa");
            published::check(source, name + " greatest hardness", known->hardness_most_hv.value(), {row.hardness_most}, "HV");
        }
    }
}
