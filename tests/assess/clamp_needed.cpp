// SPDX-License-Identifier: MIT
#include "assess/clamp_needed.hpp"

#include "assess/checks_joint.hpp"
#include "joint/joints.hpp"
#include "joint/reading.hpp"

#include <doctest/doctest.h>

using namespace joint_tests;

namespace {

Joint read(const std::string& text) {
    Diagnostics diagnostics;
    auto joint = read_joint(text, "joint.toml", built_in(), diagnostics);
    REQUIRE_MESSAGE(joint, diagnostics.text());
    return *joint;
}

/// The greatest utilisation of a check wherever it applies, in a joint with this least and greatest clamp of life.
template <class Check>
double worst(const State& state, Force least, Force greatest) {
    const auto s = std::make_unique<State>(state);
    s->settled_least = s->open_capacity = least;
    s->greatest = greatest;
    double out = 0.0;
    for (int plane = 0; plane < static_cast<int>(s->joint->planes.size()); ++plane)
        for (int load_case = 0; load_case < static_cast<int>(s->joint->load_cases.size()); ++load_case)
            for (int bolt = 0; bolt < static_cast<int>(s->joint->positions.size()); ++bolt) {
                const auto outcome = Check::evaluate(*s, {plane, load_case, bolt});
                if (outcome.applicable) out = max(out, outcome.utilisation);
            }
    return out;
}

}  // namespace

TEST_SUITE("assess/clamp_needed") {
    TEST_CASE("at the clamp that is told, the checks stand at one") {
        int slips = 0, pulls = 0;
        for (const auto* text : {lapped_rail, two_cheeks, through_tubes, plain_plates, open_box, sound_lap}) {
            const auto joint = read(text);
            INFO(joint.title);
            const auto a = assessed(joint);
            const auto limits = clamp_limits(a->state);
            if (limits.slip && *limits.slip->clamp > newton(0)) {
                ++slips;
                CHECK(worst<checks::SlipCheck>(a->state, *limits.slip->clamp, kN(1)) == doctest::Approx(1.0).epsilon(1e-9));
            }
            CHECK((limits.slip_barred != nullptr) == (text == through_tubes));
            if (*limits.separation.clamp > newton(0)) {
                ++pulls;
                CHECK(worst<checks::Separation>(a->state, *limits.separation.clamp, kN(1)) == doctest::Approx(1.0).epsilon(1e-9));
            }
            REQUIRE(*limits.working.clamp > newton(0));
            CHECK(worst<checks::BoltWorkingStress>(a->state, kN(1), *limits.working.clamp) == doctest::Approx(1.0).epsilon(1e-9));
            // Torque and preload grow together.
            const auto s = std::make_unique<State>(a->state);
            s->preload.greatest = limits.tightening;
            CHECK(checks::BoltAssemblyStress::evaluate(*s, {}).utilisation == doctest::Approx(1.0).epsilon(1e-9));
        }
        CHECK(slips >= 3);
        CHECK(pulls >= 3);
    }

    TEST_CASE("faces without friction have no clamp that is enough") {
        auto joint = read(sound_lap);
        for (auto& plane : joint.planes) plane.slip_factor = 0.0;
        const auto limits = clamp_limits(assessed(joint)->state);
        REQUIRE(limits.slip);
        CHECK(!limits.slip->clamp);
    }

    TEST_CASE("the worst pull is that of the separation check") {
        for (const auto* text : {lapped_rail, two_cheeks, through_tubes, sound_lap}) {
            const auto joint = read(text);
            const auto a = assessed(joint);
            const auto pull = worst_pull(a->state);
            CHECK(in_N(pull.off_clamp) == doctest::Approx(in_N(*clamp_limits(a->state).separation.clamp)));
            CHECK(in_N(pull.bolt_most - a->state.greatest) == doctest::Approx(in_N(pull.to_bolt)));
        }
    }
}
