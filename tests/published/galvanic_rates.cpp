// SPDX-License-Identifier: MIT
#include "corrosion/mixed_potential.hpp"
#include "published/published.hpp"

using namespace faywright;

namespace {

constexpr Source conversions{"Conversion of corrosion current to rates: a reference web page", "undated", "table of conversions",
                             Basis::published};

/// Iron as that page takes it.
FaradayRate::Inputs iron(CurrentDensity i) {
    return {.current_density = i, .metal = {}, .molar_mass = g_per_mol(55.85), .valence = 2, .density = kg_per_m3(7880)};
}

/// So much oxygen, or acid, that diffusion does not matter.
CurrentDensity unlimited() { return uA_per_cm2(1e15); }

}  // namespace

TEST_SUITE("published/galvanic_rates") {
    TEST_CASE("conversion page: iron at 1 mA/cm2") {
        const auto rate = FaradayRate::compute(iron(uA_per_cm2(1000)));
        published::check(conversions, "r", in_um_per_a(rate.penetration_rate) * 1e-3, {"11.6"}, "mm/a");
    }

    TEST_CASE("conversion page: iron at 1 mA/cm2, mass (printed cut short: its own factor 8.95 M/n gives 249.9)" * doctest::should_fail()) {
        const auto rate = FaradayRate::compute(iron(uA_per_cm2(1000)));
        published::check(conversions, "m", in_mg_per_m2_d(rate.mass_loss) * 1e-3, {"249"}, "g/(m2 d)");
    }

    TEST_CASE("conversion page: factor of mass, g/(m2 d) = 8.95 M/n for 1 mA/cm2") {
        auto in = iron(uA_per_cm2(1000));
        in.molar_mass = g_per_mol(1);
        in.valence = 1;
        published::check(conversions, "factor of M/n", in_mg_per_m2_d(FaradayRate::compute(in).mass_loss) * 1e-3, {"8.95"}, "g/(m2 d)");
    }

    TEST_CASE("conversion page: factor of depth, mm/a = 3.28 M/(n d) for 1 mA/cm2 (rounded up from 3.271)" * doctest::should_fail()) {
        const Dissolution unit{g_per_mol(1), 1, kg_per_m3(1000)};
        published::check(conversions, "factor of M/(n d)", in_um_per_a(penetration_rate(uA_per_cm2(1000), unit)) * 1e-3, {"3.28"}, "mm/a");
    }

    TEST_CASE("ASTM G102: factor of depth, 3.27e-3 mm g/(uA cm a)") {
        constexpr Source source{"ASTM G102", "edition not recalled", "constant of the rate equation", Basis::memory};
        const Dissolution unit{g_per_mol(1), 1, kg_per_m3(1000)};
        published::check(source, "K", in_um_per_a(penetration_rate(uA_per_cm2(1), unit)) * 1e-3, {"3.27e-3"}, "mm g/(uA cm a)");
    }

    TEST_CASE("handbook values: um/a for 1 uA/cm2 of zinc, aluminium, iron") {
        constexpr Source source{"Handbook values of attack for 1 uA/cm2", "not stated", "zinc, aluminium, iron", Basis::memory};
        const auto one = [&](DissolvingMetal metal) { return in_um_per_a(penetration_rate(uA_per_cm2(1), dissolution_of(metal))); };
        published::check(source, "zinc", one(DissolvingMetal::zinc), {"15.0"}, "um/a");
        published::check(source, "aluminium", one(DissolvingMetal::aluminium), {"10.9"}, "um/a");
        published::check(source, "iron", one(DissolvingMetal::iron), {"11.6"}, "um/a");
    }

    TEST_CASE("conversion page: mass loss of a coupon, mm/a = 87.6 W/(D A T), mg, g/cm3, cm2, h, the year of 8760 hours") {
        constexpr Source source{"Corrosion rate conversion: a web page", "undated", "formula of mass loss", Basis::published};
        const Length depth = g_per_m2(10) / kg_per_m3(1000) / hours(1) * hours(8760);
        published::check(source, "factor", in_mm(depth), {"87.6"}, "mm/a");
    }

    TEST_CASE("Callister, Example 17.2 as a course retells it: zinc in acid, exchange currents and slopes of both reactions") {
        constexpr Source source{"Corrosion lecture after Callister's Example 17.2", "2012", "mixed potential of zinc in acid",
                                Basis::published};
        const Polarisation zinc{AnodicBehaviour::active, uA_per_cm2(0.1), volt(-0.763), volt(0.09), uA_per_cm2(1e-4), volt(0), volt(0.08)};
        const auto E = open_circuit_potential(zinc, unlimited());
        REQUIRE(E.has_value());
        published::check(source, "V_C", in_V(*E), {"-0.486"}, "V");
        published::check(source, "i_C", in_uA_per_cm2(zinc.anodic_current(*E)) * 1e-6, {"1.19e-4"}, "A/cm2");
    }

    TEST_CASE("Uhlig, chapter 5: limiting current 0.02 n c A/cm2 for D 1e-5 cm2/s and a layer of 0.05 cm") {
        constexpr Source source{"Corrosion and Corrosion Control (Uhlig, Revie)", "edition not recalled", "chapter 5", Basis::memory};
        const auto i_L = limiting_current(mm(0.5), {cm2_per_s(1e-5), mol_per_L(0.001)});
        published::check(source, "i_L/(n c)", in_uA_per_cm2(i_L) * 1e-6 / (4 * 0.001), {"0.02"}, "A/cm2 per mol/L");
    }

    TEST_CASE("solved exercise on Stern and Geary: slopes of 120 mV, 625 ohm cm2") {
        constexpr Source source{"Exercise on polarisation resistance: a web page", "undated", "slopes 120 mV, 625 ohm cm2",
                                Basis::published};
        published::check(source, "B", in_V(stern_geary(volt(0.12), volt(0.12))) * 1e3, {"26.1"}, "mV");
    }

    TEST_CASE("solved exercise on Stern and Geary: current (printed from the rounded B; the exact one gives 4.169e-5)" *
              doctest::should_fail()) {
        constexpr Source source{"Exercise on polarisation resistance: a web page", "undated", "slopes 120 mV, 625 ohm cm2",
                                Basis::published};
        const CurrentDensity i = stern_geary(volt(0.12), volt(0.12)) / ohm_cm2(625);
        published::check(source, "i_corr", in_uA_per_cm2(i) * 1e-6, {"4.176e-5"}, "A/cm2");
    }

    TEST_CASE("aluminium in 3.5 % NaCl, 1976: rate over area ratio from 0.1 to 10 by r = k (1 + A_c/A_a)") {
        constexpr Source source{"Abstract on couples of aluminium in 3.5 % NaCl and their areas", "1976", "law of the abstract",
                                Basis::published};
        published::check(source, "r(10)/r(0.1)", catchment_rate(um_per_a(1), 10) / catchment_rate(um_per_a(1), 0.1), {"10"}, "");
    }

    TEST_CASE("conductivity page: seawater of 50 mS/cm is 20 ohm cm") {
        constexpr Source source{"Conductivity (electrolytic): an encyclopedia's page", "2025", "seawater", Basis::published};
        published::check(source, "1/k", double(1.0 / S_per_cm(0.05) / (ohm(1) * mm(10))), {"20"}, "ohm cm");
    }
}
