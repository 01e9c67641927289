// SPDX-License-Identifier: MIT
// Physics that every couple obeys, over random metals within their described ranges.
#include "corrosion/mixed_potential.hpp"
#include "corrosion/throwing_length.hpp"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <vector>

using namespace faywright;

namespace {

double share() { return *rc::gen::inRange(0, 1000001) / 1e6; }
double between(double least, double most) { return least + (most - least) * share(); }
double decades_between(double least, double most) { return std::pow(10.0, between(std::log10(least), std::log10(most))); }

Polarisation any_polarisation() {
    return {*rc::gen::element(AnodicBehaviour::active, AnodicBehaviour::pitting, AnodicBehaviour::passive),
            uA_per_cm2(decades_between(1e-8, 1e5)),
            volt(between(-2.5, 1.5)),
            volt(decades_between(0.01, 0.5)),
            uA_per_cm2(decades_between(1e-8, 1e5)),
            volt(between(-2.5, 1.5)),
            volt(decades_between(0.01, 0.5)),
            decades_between(1e-4, 1.0)};
}

ElectrodeMember any_member() {
    const auto metal = *rc::gen::inRange<std::size_t>(0, Words<DissolvingMetal>::all.size());
    return {mm2(decades_between(1e-3, 1e9)), any_polarisation(), dissolution_of(Words<DissolvingMetal>::all[metal].first)};
}

std::vector<ElectrodeMember> any_couple(std::size_t least = 1) {
    std::vector<ElectrodeMember> members;
    for (auto n = *rc::gen::inRange(least, most_members + 1); n > 0; --n) members.push_back(any_member());
    return members;
}

CurrentDensity any_limit() { return uA_per_cm2(decades_between(0.01, 10000)); }

/// All that dissolves.
Current turnover(const std::vector<ElectrodeMember>& members, const MixedState& state) {
    Current sum{};
    for (std::size_t k = 0; k < members.size(); ++k) sum += members[k].area * state.members[k].anodic;
    return sum;
}

bool at_most(CurrentDensity a, CurrentDensity b) { return a <= b * (1.0 + 1e-9); }

ThrowingLength::Inputs any_joint() {
    ThrowingLength::Inputs in{.conductivity = S_per_cm(decades_between(1e-7, 1)),
                              .film = um(decades_between(0.01, 50000)),
                              .drive = volt(between(0, 3)),
                              .anode_resistance = ohm_cm2(decades_between(1, 1e8)),
                              .cathode_resistance = ohm_cm2(decades_between(1, 1e8)),
                              .cathode_limit = uA_per_cm2(decades_between(1e-3, 1e4)),
                              .anode_width = um(decades_between(1, 1e8)),
                              .cathode_width = um(decades_between(1, 1e8)),
                              .spacer = mm(*rc::gen::arbitrary<bool>() ? 0.0 : decades_between(1e-3, 1e4))};
    in.method = *rc::gen::element(ThrowingMethod::linear, ThrowingMethod::limiting_current);
    return in;
}

}  // namespace

TEST_SUITE("corrosion/galvanic: physics") {
    TEST_CASE("most random couples find their potential; all is finite, it lies between their own, and the currents sum to nought") {
        int solved = 0, tried = 0;
        CHECK(rc::check("balance", [&] {
            const auto members = any_couple();
            const auto state = mixed_potential(members, any_limit());
            ++tried;
            if (!state) return;
            ++solved;
            Current sum{};
            Potential low = volt(3), high = volt(-3);
            bool own = true;
            for (std::size_t k = 0; k < members.size(); ++k) {
                const auto& member = state->members[k];
                RC_ASSERT(std::isfinite(member.anodic.value()));
                RC_ASSERT(std::isfinite(member.net.value()));
                RC_ASSERT(std::isfinite(member.current.value()));
                RC_ASSERT(std::isfinite(member.rate.value()));
                RC_ASSERT(std::isfinite(member.own_rate.value()));
                sum += member.current;
                own = own && member.own_potential.has_value();
                low = min(low, member.own_potential.value_or(low));
                high = max(high, member.own_potential.value_or(high));
            }
            RC_ASSERT(abs(sum) <= 1e-9 * turnover(members, *state));
            if (own) RC_ASSERT(state->potential >= low - volt(1e-12));
            if (own) RC_ASSERT(state->potential <= high + volt(1e-12));
        }));
        CHECK(solved > tried / 2);
    }

    TEST_CASE("coupling never adds to the attack on the nobler metal, nor spares the more active one") {
        CHECK(rc::check("nobler", [] {
            const auto members = any_couple(2);
            const auto state = mixed_potential(members, any_limit());
            if (!state) return;
            for (std::size_t k = 0; k < members.size(); ++k) {
                const auto& member = state->members[k];
                if (!member.own_potential) continue;
                if (*member.own_potential >= state->potential) RC_ASSERT(at_most(member.anodic, member.own_anodic));
                if (*member.own_potential <= state->potential) RC_ASSERT(at_most(member.own_anodic, member.anodic));
            }
        }));
    }

    TEST_CASE("a larger cathode never lowers the rate of any other metal, a larger anode never raises it") {
        CHECK(rc::check("area", [] {
            auto members = any_couple(2);
            const auto i_L = any_limit();
            const auto before = mixed_potential(members, i_L);
            if (!before) return;
            const auto grown = *rc::gen::inRange<std::size_t>(0, members.size());
            const bool cathode = before->members[grown].net <= CurrentDensity{};
            members[grown].area *= decades_between(1, 1000);
            const auto after = mixed_potential(members, i_L);
            if (!after) return;
            for (std::size_t k = 0; k < members.size(); ++k) {
                const auto was = before->members[k].anodic, is = after->members[k].anodic;
                const bool ordered = cathode ? at_most(was, is) : at_most(is, was);
                RC_ASSERT(ordered);
            }
        }));
    }

    TEST_CASE("a metal against itself carries no current, however the areas are shared") {
        CHECK(rc::check("itself", [] {
            const auto metal = any_member();
            const auto i_L = any_limit();
            if (!open_circuit_potential(metal.polarisation, i_L)) return;
            std::vector<ElectrodeMember> members(*rc::gen::inRange<std::size_t>(2, most_members + 1), metal);
            for (auto& member : members) member.area = mm2(decades_between(1e-3, 1e9));
            const auto state = mixed_potential(members, i_L);
            RC_ASSERT(state.has_value());
            for (std::size_t k = 0; k < members.size(); ++k) RC_ASSERT(abs(state->members[k].net) <= 1e-9 * state->members[k].anodic);
        }));
    }

    TEST_CASE("with the metallic path broken each stands alone and no couple current flows") {
        CHECK(rc::check("apart", [] {
            const auto i_L = any_limit();
            for (const auto& member : any_couple(2)) {
                const auto alone = mixed_potential(std::span(&member, 1), i_L);
                RC_ASSERT(alone.has_value() == open_circuit_potential(member.polarisation, i_L).has_value());
                if (!alone) continue;
                RC_ASSERT(abs(alone->members[0].net) <= 1e-9 * alone->members[0].anodic);
                RC_ASSERT(alone->members[0].anodic == alone->members[0].own_anodic);
            }
        }));
    }

    TEST_CASE("cut in two pieces, or told in another order, a couple is the same") {
        CHECK(rc::check("pieces", [] {
            auto members = any_couple(2);
            if (members.size() == most_members) members.pop_back();
            const auto i_L = any_limit();
            const auto whole = mixed_potential(members, i_L);
            auto cut = members;
            const double part = between(0.05, 0.95);
            cut.push_back(cut.front());
            cut.front().area *= part;
            cut.back().area *= 1.0 - part;
            std::reverse(cut.begin(), cut.end());
            const auto again = mixed_potential(cut, i_L);
            RC_ASSERT(whole.has_value() == again.has_value());
            if (!whole) return;
            for (std::size_t k = 0; k < members.size(); ++k) {
                const auto one = whole->members[k].anodic, other = again->members[cut.size() - 1 - k].anodic;
                RC_ASSERT(at_most(one, other));
                RC_ASSERT(at_most(other, one));
            }
        }));
    }

    TEST_CASE("a wider spacer never raises the current, nor does worse conducting water, and all is finite") {
        CHECK(rc::check("spacer", [] {
            auto in = any_joint();
            const auto before = ThrowingLength::compute(in);
            for (const double number : {before.anode_reach.value(), before.cathode_reach.value(), before.line_current.value(),
                                        before.anode_edge.value(), before.cathode_edge.value()}) {
                RC_ASSERT(std::isfinite(number));
                RC_ASSERT(number >= 0.0);
            }
            auto spaced = in;
            spaced.spacer += mm(decades_between(1e-3, 1e3));
            RC_ASSERT(ThrowingLength::compute(spaced).line_current <= before.line_current * (1.0 + 1e-12));
            RC_ASSERT(ThrowingLength::compute(spaced).anode_edge <= before.anode_edge * (1.0 + 1e-12));
            auto poorer = in;
            poorer.conductivity *= between(0.01, 1.0);
            RC_ASSERT(ThrowingLength::compute(poorer).line_current <= before.line_current * (1.0 + 1e-12));
        }));
    }

    TEST_CASE("round heads and small anodes: finite, and never more current from worse conducting water") {
        CHECK(rc::check("heads", [] {
            const auto in = any_joint();
            const Length r_0 = um(decades_between(10, 1e8));
            const Conductivity poorer = in.conductivity * between(0.01, 1.0);
            const auto head = [&](Conductivity k) {
                return round_head(r_0, k, in.film, in.anode_resistance, *in.cathode_resistance, in.drive).current;
            };
            const auto anode = [&](Conductivity k) {
                return small_anode(r_0, k, in.film, in.drive + volt(1e-3), *in.cathode_limit).current;
            };
            RC_ASSERT(std::isfinite(head(in.conductivity).value()));
            RC_ASSERT(head(poorer) <= head(in.conductivity) * (1.0 + 1e-9));
            RC_ASSERT(std::isfinite(anode(in.conductivity).value()));
            RC_ASSERT(anode(poorer) <= anode(in.conductivity) * (1.0 + 1e-9));
        }));
    }
}
