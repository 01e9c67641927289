// SPDX-License-Identifier: MIT
// Own arithmetic to six figures, worked independently; no published numbers.
#include "corrosion/mixed_potential.hpp"
#include "corrosion/throwing_length.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <vector>

using namespace faywright;

namespace {

/// Within half a unit of the sixth figure.
doctest::Approx six(double value) { return doctest::Approx(value).epsilon(6e-6).scale(0.0); }

constexpr auto Zn = WorkingMetal::zinc, Al = WorkingMetal::aluminium, Fe = WorkingMetal::carbon_steel, SS = WorkingMetal::stainless;

struct Part {
    WorkingMetal metal;
    double cm2;
};

std::vector<ElectrodeMember> couple(const std::vector<Part>& parts) {
    std::vector<ElectrodeMember> out;
    for (const auto& part : parts) out.push_back({mm2(100 * part.cm2), working_polarisation(part.metal), working_dissolution(part.metal)});
    return out;
}

MixedState solved(const std::vector<Part>& parts, double limit = 30) {
    const auto state = mixed_potential(couple(parts), uA_per_cm2(limit));
    REQUIRE(state.has_value());
    return *state;
}

const Conductivity brine = S_per_cm(0.05), rain = S_per_cm(5e-5);
const Length film = um(100);
const Potential drive = volt(0.4);

ThrowingLength::Inputs linear(Conductivity k, double R_a, double R_c) {
    return {.conductivity = k,
            .film = film,
            .drive = drive,
            .anode_resistance = ohm_cm2(R_a),
            .cathode_resistance = ohm_cm2(R_c),
            .cathode_limit = {},
            .method = ThrowingMethod::linear};
}

}  // namespace

TEST_SUITE("corrosion/galvanic: Faraday's law") {
    TEST_CASE("rates, masses and charges of six metals") {
        struct Row {
            DissolvingMetal metal;
            double um_per_a, mg_per_m2_d, coulomb;
        };
        for (const Row& row :
             {Row{DissolvingMetal::zinc, 14.9747, 292.73, 2.10741}, Row{DissolvingMetal::aluminium, 10.8951, 80.5394, 2.89649},
              Row{DissolvingMetal::iron, 11.6192, 250.037, 2.71598}, Row{DissolvingMetal::cadmium, 21.2519, 503.299, 1.48493},
              Row{DissolvingMetal::magnesium, 22.8700, 108.823, 1.37988}, Row{DissolvingMetal::copper, 11.5982, 284.518, 2.72089}}) {
            CAPTURE(word_of(row.metal));
            const auto answer = FaradayRate::compute(
                {.current_density = uA_per_cm2(1), .metal = row.metal, .molar_mass = {}, .valence = {}, .density = {}});
            CHECK(in_um_per_a(answer.penetration_rate) == doctest::Approx(row.um_per_a).epsilon(1e-4));
            CHECK(in_mg_per_m2_d(answer.mass_loss) == doctest::Approx(row.mg_per_m2_d).epsilon(1e-4));
            CHECK(answer.charge.value() == doctest::Approx(row.coulomb).epsilon(1e-3));
        }
    }

    TEST_CASE("what is given goes before what the metal's name brings") {
        FaradayRate::Inputs in{
            .current_density = uA_per_cm2(1), .metal = DissolvingMetal::copper, .molar_mass = {}, .valence = 1.0, .density = {}};
        CHECK(in_um_per_a(FaradayRate::compute(in).penetration_rate) == doctest::Approx(23.197).epsilon(1e-4));
        in.metal = {};
        CHECK(FaradayRate::refusal(in) != nullptr);
        in.molar_mass = g_per_mol(63.546);
        in.density = kg_per_m3(8960);
        CHECK(FaradayRate::refusal(in) == nullptr);
        CHECK(in_um_per_a(FaradayRate::compute(in).penetration_rate) == doctest::Approx(23.197).epsilon(1e-4));
    }

    TEST_CASE("a current that accounts for 60 to 90 % of the loss: 1.1 to 1.7 times the attack") {
        FaradayRate::Inputs in{
            .current_density = uA_per_cm2(1), .metal = DissolvingMetal::aluminium, .molar_mass = {}, .valence = {}, .density = {}};
        const Speed whole = FaradayRate::compute(in).penetration_rate;
        in.current_share = 0.8;
        CHECK(double(FaradayRate::compute(in).penetration_rate / whole) == doctest::Approx(1.25));
    }

    TEST_CASE("there and back, and mass for a current: what 1000 ohm lets pass at 0.3 V eats 0.88 g of aluminium a year") {
        const auto metal = dissolution_of(DissolvingMetal::aluminium);
        CHECK(in_uA_per_cm2(dissolution_current(penetration_rate(uA_per_cm2(7), metal), metal)) == doctest::Approx(7));
        const Mass eaten = mass_rate(volt(0.3) / ohm(1000), metal) * years(1);
        CHECK(in_kg(eaten) * 1e3 == doctest::Approx(0.883).epsilon(1e-3));
        const Mass zinc = mass_rate(ampere(0.3e-3), dissolution_of(DissolvingMetal::zinc)) * years(1);
        CHECK(in_kg(zinc) * 1e3 == doctest::Approx(3.2).epsilon(5e-3));
    }
}

TEST_SUITE("corrosion/galvanic: electrodes") {
    TEST_CASE("curves of the four behaviours' definitions") {
        const auto zinc = working_polarisation(Zn), aluminium = working_polarisation(Al), stainless = working_polarisation(SS);
        CHECK(in_uA_per_cm2(zinc.anodic_current(volt(-0.99))) == doctest::Approx(50));
        CHECK(in_uA_per_cm2(aluminium.anodic_current(volt(-0.76))) == doctest::Approx(1.0));
        CHECK(in_uA_per_cm2(aluminium.anodic_current(volt(-0.70))) == doctest::Approx(500.5));
        CHECK(in_uA_per_cm2(aluminium.anodic_current(volt(-1.2))) == doctest::Approx(0.5));
        CHECK(in_uA_per_cm2(stainless.anodic_current(volt(-1.2))) == doctest::Approx(0.1));
        CHECK(in_uA_per_cm2(stainless.anodic_current(volt(0.3))) == doctest::Approx(0.1));
        CHECK(in_uA_per_cm2(zinc.cathodic_current(volt(-0.92), uA_per_cm2(30))) == doctest::Approx(6.0));
        CHECK(in_uA_per_cm2(zinc.cathodic_current(volt(-2.5), uA_per_cm2(30))) == doctest::Approx(15.0));
    }

    TEST_CASE("each alone: potential and rate") {
        struct Row {
            WorkingMetal metal;
            double volts, um_per_a;
        };
        for (const Row& row :
             {Row{Zn, -1.014704, 180.604}, Row{Al, -0.760524, 10.5763}, Row{Fe, -0.641884, 317.300}, Row{SS, -0.050189, 1.04515}}) {
            const auto state = solved({{row.metal, 1}});
            CHECK(in_V(state.potential) == doctest::Approx(row.volts).epsilon(1e-6));
            CHECK(in_um_per_a(state.members[0].rate) == six(row.um_per_a));
            CHECK(std::abs(in_uA(state.members[0].current)) < 1e-9);
            REQUIRE(state.members[0].own_potential.has_value());
            CHECK(in_V(*state.members[0].own_potential) == doctest::Approx(row.volts).epsilon(1e-6));
        }
    }

    TEST_CASE("the pitting potential rises a tenth of a volt with each decade less chloride") {
        const auto at = [](double chloride) { return in_V(pitting_potential(volt(-0.76), mol_per_L(chloride))); };
        CHECK(at(0.6) == doctest::Approx(-0.76));
        CHECK(at(0.1) == doctest::Approx(-0.68).epsilon(5e-3));
        CHECK(at(0.01) == doctest::Approx(-0.58).epsilon(5e-3));
        CHECK(at(0.001) == doctest::Approx(-0.48).epsilon(5e-3));
        CHECK(std::isfinite(at(0.0)));
    }

    TEST_CASE("in clean rain aluminium beside steel stays passive") {
        auto members = couple({{Al, 1}, {Fe, 1}});
        members[0].polarisation.anodic_potential = pitting_potential(volt(-0.76), mol_per_L(0.001));
        const auto state = mixed_potential(members, uA_per_cm2(30));
        REQUIRE(state.has_value());
        CHECK(in_uA_per_cm2(state->members[0].anodic) < 0.51);
        CHECK(in_um_per_a(state->members[0].rate) < 6.0);
    }

    TEST_CASE("limiting currents of films and of the still layer, and their bounds") {
        const auto at = [](double thickness) { return in_uA_per_cm2(limiting_current(um(thickness), oxygen_in_seawater())); };
        CHECK(at(500) == six(32.4191));
        CHECK(at(200) == six(81.0477));
        CHECK(at(100) == six(162.095));
        CHECK(at(50) == six(324.191));
        CHECK(at(20) == six(810.477));
        CHECK(at(5) == doctest::Approx(1000));
        CHECK(at(0) == doctest::Approx(1000));
        CHECK(at(5000) == six(32.4191));
        CHECK(in_uA_per_cm2(limiting_current(mm(0.5), oxygen_in_fresh_water())) == doctest::Approx(42).epsilon(5e-3));
    }
}

TEST_SUITE("corrosion/galvanic: mixed potential") {
    TEST_CASE("the working set at 30 uA/cm2") {
        struct Row {
            std::vector<Part> parts;
            double volts, net, um_per_a;  ///< of the first, the anode
        };
        const std::vector<Row> rows{
            {{{Al, 1}, {SS, 1}}, -0.724479, 29.8418, 330.727},           {{{Al, 10}, {SS, 1}}, -0.743843, 2.98587, 40.4446},
            {{{Al, 1}, {SS, 10}}, -0.704494, 298.171, 3252.49},          {{{Al, 1}, {Fe, 1}}, -0.724943, 28.2839, 313.801},
            {{{Al, 10}, {Fe, 1}}, -0.744058, 2.90482, 39.5915},          {{{Zn, 1}, {Al, 1}}, -1.006320, 7.87984, 292.630},
            {{{Zn, 1}, {Al, 10}}, -0.980680, 75.2824, 1280.33},          {{{Zn, 1}, {Fe, 1}}, -0.993458, 29.9965, 613.580},
            {{{Zn, 1}, {Al, 10}, {Fe, 1}}, -0.975637, 104.406, 1711.65}, {{{Al, 10}, {Fe, 1}, {SS, 1}}, -0.738371, 5.87240, 71.1626}};
        for (const auto& row : rows) {
            const auto state = solved(row.parts);
            CAPTURE(row.volts);
            CHECK(in_V(state.potential) == doctest::Approx(row.volts).epsilon(1e-6));
            CHECK(in_uA_per_cm2(state.members[0].net) == six(row.net));
            CHECK(in_um_per_a(state.members[0].rate) == six(row.um_per_a));
        }
        CHECK(in_um_per_a(solved({{Zn, 1}, {Al, 1}}).members[1].rate) == six(5.44756));
        CHECK(in_um_per_a(solved({{Zn, 1}, {Al, 10}, {Fe, 1}}).members[1].rate) == six(5.44756));
    }

    TEST_CASE("activation alone, and with a limit of 10 uA/cm2: slopes of 0.1 V, exchange currents 1e-8 and 1e-6 A/cm2") {
        Polarisation metal{AnodicBehaviour::active, uA_per_cm2(1e-2), volt(-0.7), volt(0.1), uA_per_cm2(1), volt(0.1), volt(0.1)};
        const auto free = open_circuit_potential(metal, uA_per_cm2(1e15));
        REQUIRE(free.has_value());
        CHECK(in_V(*free) == doctest::Approx(-0.2).epsilon(1e-9));
        CHECK(in_uA_per_cm2(metal.anodic_current(*free)) == doctest::Approx(1000).epsilon(1e-9));
        const auto limited = open_circuit_potential(metal, uA_per_cm2(10));
        REQUIRE(limited.has_value());
        CHECK(in_V(*limited) == doctest::Approx(-0.4).epsilon(2e-3));
        CHECK(in_uA_per_cm2(metal.anodic_current(*limited)) == doctest::Approx(10).epsilon(0.011));
    }

    TEST_CASE("catchment: the cathode's limit times the ratio of areas is the couple current, whatever the anode's area") {
        CHECK(in_uA_per_cm2(solved({{Al, 1}, {SS, 1}}).members[0].net) == doctest::Approx(30).epsilon(6e-3));
        const auto current = [](double anode, double cathode) { return in_uA(solved({{Al, anode}, {SS, cathode}}).members[0].current); };
        CHECK(current(1, 1) == doctest::Approx(current(10, 1)).epsilon(2e-3));
        CHECK(current(1, 10) == doctest::Approx(10 * current(1, 1)).epsilon(2e-3));
        CHECK(in_um_per_a(catchment_rate(um_per_a(2), 3)) == doctest::Approx(8));
    }

    TEST_CASE("none, too many, and metals that nothing balances") {
        CHECK_FALSE(mixed_potential({}, uA_per_cm2(30)).has_value());
        const std::vector<ElectrodeMember> nine(9, couple({{Al, 1}}).front());
        CHECK_FALSE(mixed_potential(nine, uA_per_cm2(30)).has_value());
        // Its passive current is more than the oxygen that comes: alone it has no potential, beside one that takes more oxygen it has.
        auto members = couple({{SS, 1}, {SS, 1}});
        members[0].polarisation.limit_share = 1e-3;
        CHECK_FALSE(open_circuit_potential(members[0].polarisation, uA_per_cm2(30)).has_value());
        CHECK_FALSE(mixed_potential(std::span(members).first(1), uA_per_cm2(30)).has_value());
        const auto state = mixed_potential(members, uA_per_cm2(30));
        REQUIRE(state.has_value());
        CHECK_FALSE(state->members[0].own_potential.has_value());
        CHECK(in_uA(state->members[0].current + state->members[1].current) == doctest::Approx(0).scale(1e-6));
    }
}

TEST_SUITE("corrosion/galvanic: throwing length") {
    TEST_CASE("butt joint of wide faces and of strips") {
        auto in = linear(brine, 500, 10000);
        auto answer = ThrowingLength::compute(in);
        CHECK(in_mm(answer.anode_reach) == six(5.0));
        CHECK(in_mm(answer.cathode_reach) == six(22.3607));
        CHECK(in_uA_per_cm(answer.line_current) == six(73.0976));
        CHECK(in_uA_per_cm2(answer.anode_edge) == six(146.195));
        CHECK(in_uA_per_cm2(answer.cathode_edge) == six(32.6902));
        CHECK(answer.outside_range == nullptr);
        in.anode_width = in.cathode_width = mm(10);
        answer = ThrowingLength::compute(in);
        CHECK(in_uA_per_cm(answer.line_current) == six(34.2019));
        CHECK(in_uA_per_cm2(answer.anode_edge) == six(70.9563));
        in.spacer = mm(5);
        answer = ThrowingLength::compute(in);
        CHECK(in_uA_per_cm(answer.line_current) == six(31.5078));
        CHECK(in_uA_per_cm2(answer.anode_edge) == six(65.3671));
        answer = ThrowingLength::compute(linear(rain, 5000, 50000));
        CHECK(in_mm(answer.anode_reach) == six(0.5));
        CHECK(in_mm(answer.cathode_reach) == six(1.58114));
        CHECK(in_uA_per_cm(answer.line_current) == six(0.961012));
        CHECK(in_uA_per_cm2(answer.anode_edge) == six(19.2202));
    }

    TEST_CASE("cathode at its limit: reach and current of seven films") {
        struct Row {
            double k, d_um, i_L, reach_mm, uA_per_cm;
        };
        for (const Row& row :
             {Row{0.05, 200, 81, 31.4270, 254.558}, Row{0.05, 100, 162, 15.7135, 254.558}, Row{0.07, 100, 140, 20.0, 280.0},
              Row{5e-4, 200, 81, 3.14270, 25.4558}, Row{5e-5, 100, 162, 0.496904, 8.04984}, Row{5e-5, 20, 300, 0.163299, 4.89898},
              Row{0.05, 5000, 30, 258.199, 774.597}}) {
            ThrowingLength::Inputs in{.conductivity = S_per_cm(row.k),
                                      .film = um(row.d_um),
                                      .drive = drive,
                                      .anode_resistance = ohm_cm2(500),
                                      .cathode_resistance = {},
                                      .cathode_limit = uA_per_cm2(row.i_L)};
            auto answer = ThrowingLength::compute(in);
            CHECK(in_mm(answer.cathode_reach) == six(row.reach_mm));
            CHECK(in_uA_per_cm(answer.line_current) == six(row.uA_per_cm));
            in.cathode_width = mm(0.5 * row.reach_mm);
            answer = ThrowingLength::compute(in);
            CHECK(in_uA_per_cm(answer.line_current) == six(0.5 * row.uA_per_cm));
            // A spacer as long as the reach leaves √2 - 1 of it.
            in.cathode_width = metre(10);
            in.spacer = mm(row.reach_mm);
            CHECK(in_uA_per_cm(ThrowingLength::compute(in).line_current) == six(row.uA_per_cm * (std::sqrt(2.0) - 1.0)));
        }
    }

    TEST_CASE("with the limit that the film itself sets, its thickness leaves the current") {
        const auto current = [](double thickness) {
            const ThrowingLength::Inputs in{.conductivity = brine,
                                            .film = um(thickness),
                                            .drive = drive,
                                            .anode_resistance = ohm_cm2(500),
                                            .cathode_resistance = {},
                                            .cathode_limit = limiting_current(um(thickness), oxygen_in_seawater())};
            return in_uA_per_cm(ThrowingLength::compute(in).line_current);
        };
        CHECK(current(200) == six(current(50)));
        CHECK(current(200) == doctest::Approx(255).epsilon(2e-3));
    }

    TEST_CASE("a film deeper than the reach is marked, a method without its input refused") {
        auto in = linear(S_per_cm(1e-6), 100, 100);
        CHECK(ThrowingLength::compute(in).outside_range != nullptr);
        CHECK(ThrowingLength::refusal(in) == nullptr);
        in.method = ThrowingMethod::limiting_current;
        CHECK(ThrowingLength::refusal(in) != nullptr);
        in.cathode_limit = uA_per_cm2(2000);
        CHECK(ThrowingLength::compute(in).outside_range != nullptr);
        in.method = ThrowingMethod::linear;
        in.cathode_resistance = {};
        CHECK(ThrowingLength::refusal(in) != nullptr);
    }

    TEST_CASE("round head of 12 mm radius in a wide face") {
        const Length r_0 = mm(12);
        CHECK(face_conductance(r_0, brine, film, ohm_cm2(500)).value() == six(8.99024e-3));
        CHECK(disc_conductance(r_0, brine, film, ohm_cm2(10000)).value() == six(4.36848e-4));
        auto head = round_head(r_0, brine, film, ohm_cm2(500), ohm_cm2(10000), drive);
        CHECK(in_uA(head.current) == six(166.642));
        CHECK(in_uA_per_cm2(head.edge_density) == six(37.0718));
        head = round_head(r_0, rain, film, ohm_cm2(5000), ohm_cm2(50000), drive);
        CHECK(in_uA(head.current) == six(6.89461));
        CHECK(in_uA_per_cm2(head.edge_density) == six(17.9189));
    }

    TEST_CASE("the series far out join the functions, and a large head is a straight edge") {
        for (const double x : {299.9, 300.1}) {
            CHECK(detail::k_ratio(x) == doctest::Approx(1.0 + 1.0 / (2.0 * x) - 1.0 / (8.0 * x * x)).epsilon(1e-8));
            CHECK(detail::i_ratio(x) == doctest::Approx(1.0 - 1.0 / (2.0 * x) - 1.0 / (8.0 * x * x)).epsilon(1e-8));
        }
        CHECK(detail::k_ratio(300.0) == doctest::Approx(detail::k_ratio(300.0000001)).epsilon(1e-9));
        CHECK(detail::i_ratio(300.0) == doctest::Approx(detail::i_ratio(300.0000001)).epsilon(1e-9));
        CHECK(std::isfinite(detail::k_ratio(1e9)));
        const auto wide = round_head(metre(500), brine, film, ohm_cm2(500), ohm_cm2(10000), drive);
        const LineCurrent line = wide.current / (2.0 * pi * metre(500));
        CHECK(in_uA_per_cm(line) == doctest::Approx(73.0976).epsilon(1e-4));
    }

    TEST_CASE("small anode under a wide film") {
        auto anode = small_anode(mm(1), brine, film, drive, uA_per_cm2(50));
        CHECK(in_uA(anode.current) == six(522.775));
        CHECK(in_mm(anode.cathode_radius) == six(18.2704));
        anode = small_anode(mm(1), rain, film, drive, uA_per_cm2(50));
        CHECK(in_uA(anode.current) == six(6.34508));
        CHECK(in_mm(anode.cathode_radius) == six(2.24486));
    }

    TEST_CASE("series of alternating strips: six figures, and the film formula it falls to") {
        const auto at = [](double x_cm, double depth_cm, double R) {
            return in_uA_per_cm2(strip_series(mm(10 * x_cm), mm(10), mm(30), mm(10 * depth_cm), brine, ohm_cm2(R), drive));
        };
        CHECK(at(0, 0.01, 2000) == six(72.4065));
        CHECK(at(0.5, 0.01, 2000) == six(81.6471));
        CHECK(at(0.9, 0.01, 2000) == six(103.764));
        CHECK(at(0.99, 0.01, 2000) == six(110.882));
        CHECK(at(0.5, 100, 2000) == six(132.260));
        CHECK(at(0.5, 100, 20) == six(7476.21));
        auto in = linear(brine, 2000, 2000);
        in.anode_width = mm(10);
        in.cathode_width = mm(20);
        const auto film_answer = ThrowingLength::compute(in);
        const double l = in_mm(film_answer.anode_reach) / 10, edge = in_uA_per_cm2(film_answer.anode_edge);
        for (const double x : {0.0, 0.5, 0.9, 0.99})
            CHECK(at(x, 0.01, 2000) == doctest::Approx(edge * std::cosh(x / l) / std::cosh(1 / l)).epsilon(1e-4));
        // Beyond the edge the current turns; the strips' currents balance.
        double sum = 0;
        for (int j = 0; j < 3000; ++j) sum += at((j + 0.5) / 1000, 0.01, 2000);
        CHECK(std::abs(sum) < 1e-3 * 80 * 1000);
        CHECK(at(1.01, 0.01, 2000) < 0);
    }
}
