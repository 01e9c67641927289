// SPDX-License-Identifier: MIT
#include "assess/uncertainty.hpp"

#include "joint/joints.hpp"
#include "joint/random_joint.hpp"
#include "joint/reading.hpp"
#include "report/uncertainty.hpp"

#include <boost/math/distributions/normal.hpp>

#include <set>

using namespace joint_tests;

namespace {

using Widths = std::array<double, inputs::count>;

Widths all(double width) {
    Widths widths;
    widths.fill(width);
    return widths;
}

template <class Input, std::size_t I = 0>
constexpr std::size_t index_of() {
    if constexpr (std::same_as<std::tuple_element_t<I, inputs::All>, Input>)
        return I;
    else
        return index_of<Input, I + 1>();
}

std::vector<const InputInfo*> list_of_inputs() {
    std::vector<const InputInfo*> list;
    [&]<class... Input>(std::type_identity<std::tuple<Input...>>) {
        (list.push_back(&Input::info), ...);
    }(std::type_identity<inputs::All>{});
    return list;
}

Joint read(const std::string& text) {
    Diagnostics diagnostics;
    auto joint = read_joint(text, "joint.toml", built_in(), diagnostics);
    INFO(diagnostics.text());
    REQUIRE(joint);
    return *joint;
}

const std::string wrench = "method = \"torque wrench, friction class B\"";

/// One of each kind, that every input of the list has its place in some.
std::vector<std::pair<std::string, std::string>> kinds() {
    return {{"lapped rail", lapped_rail},
            {"two cheeks", two_cheeks},
            {"through tubes", through_tubes},
            {"plain plates", plain_plates},
            {"open box", open_box},
            {"locking nuts", edited(lapped_rail, wrench, wrench + "\nprevailing-torque = \"20 N*m\"")},
            {"by angle", edited(lapped_rail, wrench, "method = \"angle controlled\"")}};
}

Uncertainty drawn(const Joint& joint, std::size_t samples, std::uint64_t seed = 1, unsigned threads = 1, const Widths& widths = all(1.0)) {
    const auto assessment = assessed(joint);
    UncertaintySettings settings;
    settings.sampling = {samples, seed, threads};
    settings.width = widths;
    Progress progress;
    return uncertainty(*assessment, settings, progress);
}

std::string printed(const Joint& joint, std::size_t samples, std::uint64_t seed, unsigned threads) {
    const auto told = drawn(joint, samples, seed, threads);
    return assessment_json(*assessed(joint), told) + uncertainty_text(told);
}

/// Scores of a sample, from a rule: anything between -2.2 and 2.2.
std::vector<double> some_scores(std::size_t count, int draw) {
    std::vector<double> scores(count);
    for (std::size_t i = 0; i < count; ++i) scores[i] = 2.2 * std::sin(1.0 + 2.3 * static_cast<double>(i) + 1.7 * draw);
    return scores;
}

}  // namespace

TEST_SUITE_BEGIN("assess/uncertainty");

TEST_CASE("without scatter a joint is the one with every band at its middle") {
    for (const auto& kind : kinds()) {
        const auto& name = kind.first;
        const auto& text = kind.second;
        INFO(name);
        const auto joint = read(text);
        const auto assessment = assessed(joint);
        const UncertainJoint uncertain(*assessment, all(0.0));
        UncertainJoint::Maker maker(uncertain);
        maker.make(some_scores(uncertain.told().size(), 1));
        const auto& made = maker.state();
        const auto& nominal = assessment->state;
        CHECK(made.tube.length == nominal.tube.length);
        if (!uncertain.nominal().by_factor) {
            // The preload from the torque's own equation, backwards: friction at the middle of its band, half of a locking nut's torque.
            const double thread = std::sqrt(nominal.thread_friction_low * nominal.thread_friction_high);
            const double head = std::sqrt(nominal.head_friction_low * nominal.head_friction_high);
            const auto needed = TighteningTorque::compute({.preload = made.preload.mean,
                                                           .nominal_diameter = joint.bolt.thread.diameter,
                                                           .pitch = joint.bolt.thread.pitch,
                                                           .pitch_diameter = nominal.thread.pitch_diameter,
                                                           .thread_friction = thread,
                                                           .head_friction = head,
                                                           .bearing_diameter = nominal.bearing_diameter,
                                                           .bearing_hole = nominal.bearing_hole})
                                    .torque;
            CHECK(in_Nm(needed) == doctest::Approx(in_Nm(nominal.torque - 0.5 * joint.tightening.prevailing_torque)).epsilon(1e-12));
        } else {
            CHECK(in_N(made.preload.mean) ==
                  doctest::Approx(std::sqrt(in_N(nominal.preload.least) * in_N(nominal.preload.greatest))).epsilon(1e-12));
        }
        CHECK(made.preload.least == made.preload.greatest);
        // Strengths at the median above their 5 % fractile.
        CHECK(in_MPa(maker.joint().bolt.property_class.proof_strength) ==
              doctest::Approx(in_MPa(joint.bolt.property_class.proof_strength) * std::exp(1.644854 * 0.05)).epsilon(1e-9));
        if (joint.section) {
            CHECK(in_mm(maker.joint().section->wall) == doctest::Approx(in_mm(joint.section->wall)).epsilon(1e-12));
            CHECK(in_mm(maker.joint().section->height) == doctest::Approx(in_mm(joint.section->height)).epsilon(1e-12));
        }
    }
}

TEST_CASE("a joint drawn is the joint assessed whole") {
    // The same functions on the same numbers.
    for (const auto& kind : kinds()) {
        const auto& name = kind.first;
        const auto& text = kind.second;
        const auto joint = read(text);
        const auto assessment = assessed(joint);
        const UncertainJoint uncertain(*assessment, all(1.0));
        if (uncertain.nominal().by_factor) continue;  // its preload is not that of its torque
        UncertainJoint::Maker maker(uncertain);
        for (int draw = 0; draw < 5; ++draw) {
            INFO(name << ", draw " << draw);
            maker.make(some_scores(uncertain.told().size(), draw));
            const auto whole = assessed(maker.joint());
            const auto &a = maker.state(), &b = whole->state;
            CHECK(a.torque == b.torque);
            CHECK(a.preload.least == b.preload.least);
            CHECK(a.grip == b.grip);
            const auto same = [](double x, double y) { CHECK(x == y); };
            same(in_N(a.least_clamp()), in_N(b.least_clamp()));
            same(in_N(a.greatest), in_N(b.greatest));
            same(in_N(a.pressed), in_N(b.pressed));
            same(in_MPa(a.tube.wall.stress), in_MPa(b.tube.wall.stress));
            same(in_N(a.tube.length_check.closing_force_greatest), in_N(b.tube.length_check.closing_force_greatest));
            if (joint.section) same(in_N(a.walls_first_yield()), in_N(b.walls_first_yield()));
            if (joint.section) same(in_N(a.open_capacity), in_N(b.open_capacity));
            const auto judged = maker.utilisations();
            const auto check = [&](std::size_t event, const char* id) {
                const auto* result = find_check(*whole, id);
                if (uncertain.barred(event) == nullptr && result->outcome.applicable) same(judged[event], result->outcome.utilisation);
            };
            check(0, "slip");
            check(1, "separation");
            check(2, "tube-yield");
            check(3, uncertain.nominal().state.is_open_cavity() ? "section-crush" : "wall-closing");
            check(4, "bolt-assembly-stress");
        }
    }
}

TEST_CASE("any joint can be drawn, and is then the joint assessed whole") {
    on_random_joints("drawn", [](const RandomJoint&, const Joint& joint) -> std::string {
        const auto assessment = assessed(joint);
        const UncertainJoint uncertain(*assessment, all(1.0));
        UncertainJoint::Maker maker(uncertain);
        for (int draw = 0; draw < 3; ++draw) {
            maker.make(some_scores(uncertain.told().size(), draw));
            const auto& s = maker.state();
            for (const double utilisation : maker.utilisations())
                if (!std::isfinite(utilisation) || utilisation < 0.0) return fmt::format("utilisation {}", utilisation);
            if (!std::isfinite(in_N(s.least_clamp())) || s.least_clamp() < newton(0)) return "clamp";
            if (uncertain.nominal().by_factor) continue;
            const auto whole = assessed(maker.joint());
            if (s.preload.greatest != whole->state.preload.greatest) return "preload";
            if (s.least_clamp() != whole->state.least_clamp())
                return fmt::format("least clamp {} N and {} N", in_N(s.least_clamp()), in_N(whole->state.least_clamp()));
            if (joint.section && s.walls_first_yield() != whole->state.walls_first_yield())
                return fmt::format("first yield {} N and {} N", in_N(s.walls_first_yield()), in_N(whole->state.walls_first_yield()));
        }
        return {};
    });
}

TEST_CASE("every input of the list moves an outcome of some joint") {
    std::set<std::string_view> moving, listed;
    for (const auto* info : list_of_inputs()) CHECK(listed.insert(info->id).second);
    for (const auto& kind : kinds()) {
        const auto& text = kind.second;
        const auto joint = read(text);
        const auto assessment = assessed(joint);
        const UncertainJoint uncertain(*assessment, all(1.0));
        UncertainJoint::Maker maker(uncertain);
        for (std::size_t i = 0; i < uncertain.told().size(); ++i) {
            // About joints that are off the middle in all else: a perfect fit of the tube hides what strength the walls have.
            std::array<std::array<double, most_events + 1>, 2> judged{};
            for (const int side : {0, 1}) {
                auto scores = some_scores(uncertain.told().size(), 2);
                scores[i] = side == 0 ? 0.5 : 2.0;
                maker.make(scores);
                const auto utilisations = maker.utilisations();
                std::copy(utilisations.begin(), utilisations.end(), judged[static_cast<std::size_t>(side)].begin());
                judged[static_cast<std::size_t>(side)].back() = in_N(maker.state().least_clamp());
            }
            for (std::size_t k = 0; k < judged[0].size(); ++k)
                if (std::abs(judged[0][k] - judged[1][k]) > 1e-3 * std::abs(judged[0][k])) moving.insert(uncertain.told()[i].info->id);
        }
    }
    for (const auto id : listed) {
        INFO(id);
        CHECK(moving.count(id) == 1);
    }
}

TEST_CASE("an input without scatter has no share, one alone has all of it") {
    auto widths = all(0.0);
    widths[index_of<inputs::HeadFriction>()] = 1e-3;
    const auto told = drawn(read(lapped_rail), 2000, 1, 1, widths);
    for (std::size_t i = 0; i < told.inputs.size(); ++i) {
        INFO(told.inputs[i].info->id);
        const bool alone = told.inputs[i].info == &inputs::HeadFriction::info;
        for (const auto& response : told.responses)
            CHECK(response.ranking.shares.at(i) == doctest::Approx(alone ? 1.0 : 0.0).epsilon(1e-4).scale(1.0));
    }
}

TEST_CASE("slip of a joint without pull has a closed form") {
    // With nothing but loads and slip factor scattering, and no pull on the bolts, utilisation is log-normal about that of the middle.
    auto joint = read(lapped_rail);
    joint.load_cases.erase(joint.load_cases.begin() + 1, joint.load_cases.end());
    auto& load = joint.load_cases.front();
    load.force_z = newton(0);
    load.at_x = load.at_y = load.at_z = mm(0);
    load.force_x = kN(-10);
    auto widths = all(0.0);
    widths[index_of<inputs::Loads>()] = widths[index_of<inputs::SlipFactorOfFaces>()] = 1.0;
    double middle = 0.0;
    {
        const auto assessment = assessed(joint);
        const UncertainJoint uncertain(*assessment, all(0.0));
        UncertainJoint::Maker maker(uncertain);
        maker.make(std::vector<double>(uncertain.told().size(), 0.0));
        middle = maker.utilisations()[0];
        // By hand: six bolts share the load at one plane, against friction on the least clamp.
        CHECK(middle == doctest::Approx(in_N(kN(10)) / 6.0 / (maker.joint().planes[0].slip_factor * in_N(maker.state().least_clamp()))));
        CHECK(maker.state().load(0, 0).tension == newton(0));
    }
    const auto& plane = joint.planes[0];
    const double of_friction =
        plane.slip_factor_low < plane.slip_factor_high ? std::log(plane.slip_factor_high / plane.slip_factor_low) / (2.0 * 1.959964) : 0.15;
    const double deviation = std::hypot(0.10, of_friction);
    const boost::math::normal standard;
    for (const double wanted : {0.5, 0.1, 0.01}) {
        INFO("probability " << wanted);
        load.force_x = kN(-10) / middle * std::exp(boost::math::quantile(standard, wanted) * deviation);
        const auto told = drawn(joint, 40000, 20, 2, widths);
        // Each of these holds the truth with at least 95 %; a false alarm was as likely as 1 in 20 when the seed was chosen.
        const auto& slip = told.events[0].proportion;
        CHECK(slip.low() <= wanted);
        CHECK(slip.high() >= wanted);
        // The share of the true distribution below a drawn quantile is within 3.3 of its deviations (1 in 1000), and the bins' 0.2 %.
        const double log_middle = boost::math::quantile(standard, wanted) * deviation;
        const auto& response = told.responses[1];
        for (const auto& [value, share] : {std::pair{response.low, 0.05}, {response.median, 0.50}, {response.high, 0.95}}) {
            const double below = boost::math::cdf(standard, (std::log(value.si()) - log_middle) / deviation);
            CHECK(std::abs(below - share) < 3.3 * std::sqrt(share * (1.0 - share) / 40000.0) + 0.002 / deviation * 0.4);
        }
        // Shares of two inputs alone that multiply: in proportion to their variances, up to the curvature of the exponential.
        CHECK(response.ranking.explained > 1.0 - deviation * deviation);
    }
}

TEST_CASE("the same bytes on any number of threads, others with another seed") {
    const auto joint = read(lapped_rail);
    const auto one = printed(joint, 7300, 5, 1);
    for (const unsigned threads : {2U, 3U, 7U}) {
        INFO(threads << " threads");
        CHECK(printed(joint, 7300, 5, threads) == one);
    }
    CHECK(printed(joint, 7300, 5, 1) == one);
    const auto a = drawn(joint, 7300, 5), b = drawn(joint, 7300, 6);
    CHECK(a.responses[0].mean.si() != b.responses[0].mean.si());
    CHECK(a.responses[1].median.si() != b.responses[1].median.si());
}

TEST_CASE("what happens always, never, or cannot be counted is told as that") {
    SUBCASE("tightened far beyond proof") {
        const auto told = drawn(read(edited(lapped_rail, wrench, wrench + "\ntorque = \"400 N*m\"")), 1000);
        CHECK(told.events[4].proportion.happened == 1000);
        CHECK(told.events[4].proportion.high() == 1.0);
        CHECK(told.events[4].proportion.low() == doctest::Approx(std::pow(0.025, 1e-3)).epsilon(1e-9));
        CHECK(uncertainty_text(told).find("always seen: more than 99.63 %") != std::string::npos);
    }
    SUBCASE("the lapped rail never loses all clamp") {
        const auto told = drawn(read(lapped_rail), 1000);
        CHECK(told.events[5].proportion.happened == 0);
        CHECK(told.events[5].proportion.high() == doctest::Approx(1.0 - std::pow(0.025, 1e-3)).epsilon(1e-9));
        CHECK(uncertainty_text(told).find("none seen: fewer than 0.37 %") != std::string::npos);
    }
    SUBCASE("a tube through the walls") {
        const auto told = drawn(read(through_tubes), 1000);
        CHECK(told.events[0].barred != nullptr);
        CHECK(told.responses[1].barred != nullptr);
        CHECK(uncertainty_text(told).find("not counted: the tube passes the walls") != std::string::npos);
    }
    SUBCASE("an open box stands a few newton metres and is crushed by many") {
        const auto little = drawn(read(open_box), 1000), much = drawn(read(edited(open_box, "\"3 N*m\"", "\"60 N*m\"")), 1000);
        CHECK(little.events[2].barred != nullptr);
        REQUIRE(little.events[3].barred == nullptr);
        CHECK(little.events[3].proportion.happened == 0);
        CHECK(much.events[3].proportion.happened == 1000);
    }
}

TEST_CASE("stopped early, it gives what has been drawn and says so") {
    const auto joint = read(lapped_rail);
    const auto assessment = assessed(joint);
    UncertaintySettings settings;
    settings.sampling.samples = 5000;
    Progress progress;
    progress.stop = true;
    const auto told = uncertainty(*assessment, settings, progress);
    CHECK(told.done == 0);
    CHECK_FALSE(told.complete());
    CHECK(uncertainty_text(told).find("INCOMPLETE: stopped after 0 of 5000 joints") != std::string::npos);
    CHECK(assessment_json(*assessment, told).find("\"complete\": false") != std::string::npos);
}

TEST_SUITE_END();
