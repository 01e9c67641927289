// SPDX-License-Identifier: MIT
#include "joint/random_joint.hpp"
#include "report/assessment.hpp"

#include <map>

using namespace joint_tests;

namespace {

Assessment& scratch(int which) {
    static const std::array<std::unique_ptr<Assessment>, 3> places{std::make_unique<Assessment>(), std::make_unique<Assessment>(),
                                                                   std::make_unique<Assessment>()};
    return *places[static_cast<std::size_t>(which)];
}

/// Where in the file an instance of a check stands, for messages.
std::string told(const Joint& joint, const CheckResult& r) { return fmt::format("{} {}", r.info->id, part_name(joint, r)); }

}  // namespace

TEST_SUITE("assess/properties") {
    TEST_CASE("most random joints are accepted, and the rest refused with a place") {
        const int wanted = random_joints();
        int accepted = 0, passing = 0;
        std::map<std::string, int> refusals, seen;
        const auto generator = random_joint();
        rc::Random random(20);
        for (int i = 0; i < wanted; ++i) {
            const auto joint = generator(random.split(), rc::kNominalSize).value();
            Diagnostics diagnostics;
            const auto read = read_joint(joint.text(), "random.toml", built_in(), diagnostics);
            if (!read) {
                REQUIRE(diagnostics.any());
                ++refusals[diagnostics.sorted().front().code + ": " + diagnostics.sorted().front().message.substr(0, 40)];
                continue;
            }
            ++accepted;
            ++seen[joint.has_section ? joint.arrangement : "no section"];
            ++seen[fmt::format("{} planes", read->planes.size())];
            ++seen[joint.size];
            ++seen[joint.bolt_class];
            assess(*read, scratch(0));
            passing += scratch(0).passes ? 1 : 0;
        }
        std::string list;
        for (const auto& [code, count] : refusals) list += fmt::format("{:6} {}\n", count, code);
        for (const auto& [what, count] : seen) list += fmt::format("{:6} {}\n", count, what);
        MESSAGE("accepted ", accepted, " of ", wanted, ", passing ", passing, "\n", list);
        CHECK(accepted >= 0.6 * wanted);
        // The properties below mean something only where the joints are of all kinds.
        if (wanted >= 1000) {
            for (const char* kind : {"between the walls", "through the walls", "none", "no section", "1 planes", "2 planes", "M6", "M30",
                                     "8.8", "10.9", "A2-70"})
                CHECK_MESSAGE(seen[kind] > 0, kind);
            CHECK(passing > wanted / 50);
        }
    }

    TEST_CASE("no check reports what is not a number, and the verdict is that of the checks") {
        on_random_joints("sound", [](const RandomJoint&, const Joint& joint) {
            assess(joint, scratch(0));
            return unsound(scratch(0));
        });
    }

    TEST_CASE("a joint assessed again gives exactly the same, whatever stood in the place before") {
        std::optional<Joint> before;
        on_random_joints("same again", [&](const RandomJoint&, const Joint& joint) -> std::string {
            assess(joint, scratch(0));
            assess(joint, scratch(1));
            if (const auto what = difference(scratch(0), scratch(1)); !what.empty()) return "assessed twice: " + what;
            if (before) {
                assess(*before, scratch(1));
                assess(joint, scratch(1));
                if (const auto what = difference(scratch(0), scratch(1)); !what.empty()) return "another joint in between: " + what;
            }
            const auto fresh = std::make_unique<Assessment>();
            assess(joint, *fresh);
            if (const auto what = difference(scratch(0), *fresh); !what.empty()) return "in a new place: " + what;
            before = joint;
            scratch(1).state.joint = nullptr;
            return {};
        });
    }

    // Loads times 1.3: bolt forces are in proportion to the load, about the centroid as about the heel (an arm of the heel does
    // not depend on the load's size), resistances stay or fall. One exception: where the program chooses the tube, a greater
    // pressing load may make it choose a stronger one, and everything that stands on tube and stiffness is another joint's.
    TEST_CASE("greater loads never lower a utilisation") {
        on_random_joints("loads", [](const RandomJoint& random, const Joint& joint) -> std::string {
            auto more = random;
            for (auto& l : more.loads) {
                for (auto& f : l.force) f *= 1.3;
                for (auto& m : l.moment) m *= 1.3;
            }
            const auto heavier = read(more);
            if (!heavier) return "refused under greater loads";
            assess(joint, scratch(0));
            assess(*heavier, scratch(1));
            if (scratch(0).count != scratch(1).count) return "number of results";
            const auto &one = scratch(0).state.tube, &two = scratch(1).state.tube;
            if (one.present && one.chosen && one.stock->name != two.stock->name) return {};
            for (std::size_t i = 0; i < scratch(0).count; ++i) {
                const auto &a = scratch(0).results[i], &b = scratch(1).results[i];
                if (a.outcome.applicable != b.outcome.applicable)
                    return told(joint, a) + ": applies under one load and not under the other";
                if (b.outcome.utilisation < a.outcome.utilisation - 1e-9 * std::abs(a.outcome.utilisation) - 1e-12)
                    return fmt::format("{}: {} falls to {}", told(joint, a), a.outcome.utilisation, b.outcome.utilisation);
                if (a.static_factor && b.static_factor && *b.static_factor > *a.static_factor * (1.0 + 1e-9))
                    return fmt::format("{}: design factor {} rises to {}", told(joint, a), *a.static_factor, *b.static_factor);
            }
            if (!scratch(0).passes && scratch(1).passes) return "passes under greater loads only";
            return {};
        });
    }

    // One exception: tubes through the walls and plates on one face only. The couple of the offset is wall/2 over the distance
    // of the walls' middles, (height - wall); in a height that stays, a thicker wall brings the walls nearer to each other, so
    // the far wall's force rises as t/(height - t) and its utilisation as 1/(height - t). The near wall's still falls.
    TEST_CASE("a thicker wall never raises the bearing utilisation of the wall") {
        on_random_joints(
            "wall",
            [](const RandomJoint& random, const Joint& joint) -> std::string {
                if (!joint.section) return {};
                auto thick = random;
                thick.web = random.web.value_or(random.wall);
                thick.wall = random.wall * 1.2;
                const auto thicker = read(thick);
                if (!thicker) return {};  // beyond the material's row, or no cavity left
                assess(joint, scratch(0));
                assess(*thicker, scratch(1));
                const bool couple = joint.section->tube.arrangement == TubeArrangement::through_walls && joint.planes.size() == 1;
                for (std::size_t i = 0; i < scratch(0).count; ++i) {
                    const auto &a = scratch(0).results[i], &b = scratch(1).results[i];
                    if (a.info->id != "bearing" || joint.plies[static_cast<std::size_t>(a.where.part)].role == PlyRole::plate) continue;
                    if (!a.outcome.applicable) continue;
                    const bool touches = joint.planes.front().head_ply == a.where.part || joint.planes.front().nut_ply == a.where.part;
                    if (couple && !touches) continue;
                    if (b.outcome.utilisation > a.outcome.utilisation * (1.0 + 1e-9))
                        return fmt::format("{}: {} rises to {}", told(joint, a), a.outcome.utilisation, b.outcome.utilisation);
                }
                return {};
            },
            0.5);
    }

    TEST_CASE("a narrower friction band never widens the preload band, and lower friction raises the greatest preload") {
        on_random_joints(
            "friction",
            [](const RandomJoint& random, const Joint& joint) -> std::string {
                auto base = random;
                assess(joint, scratch(0));
                base.torque = std::clamp(in_Nm(scratch(0).state.torque), 0.5, 5000.0);
                base.method = "torque wrench, friction class B";
                std::erase_if(base.overrides, [](const auto& each) { return each.first == "tightening-factor"; });
                if (base.prevailing && *base.prevailing > 0.4 * *base.torque) base.prevailing.reset();
                const auto with = [&](double low, double high) -> std::optional<Joint> {
                    auto each = base;
                    for (const char* end : {"thread", "head"}) {
                        each.put(fmt::format("{}-friction-low", end), fmt::format("{:.6g}", low));
                        each.put(fmt::format("{}-friction-high", end), fmt::format("{:.6g}", high));
                    }
                    return read(each);
                };
                const auto& s = scratch(0).state;
                const double low = std::clamp(s.thread_friction_low, 0.05, 0.6), high = std::clamp(s.thread_friction_high, low, 0.75);
                const auto wide = with(low, high), narrow = with(low + 0.25 * (high - low), high - 0.25 * (high - low)),
                           slippery = with(0.8 * low, high), sticky = with(low, high * 1.05);
                if (!wide || !narrow || !slippery || !sticky) return "a friction band is refused";
                const auto band = [](const std::optional<Joint>& each) {
                    assess(*each, scratch(1));
                    return scratch(1).state.preload;
                };
                const auto w = band(wide), n = band(narrow), p = band(slippery), q = band(sticky);
                if (n.greatest > w.greatest * (1.0 + 1e-12) || n.least < w.least * (1.0 - 1e-12))
                    return fmt::format("narrower friction: {} to {} N becomes {} to {} N", in_N(w.least), in_N(w.greatest), in_N(n.least),
                                       in_N(n.greatest));
                if (p.greatest <= w.greatest)
                    return fmt::format("lower friction: the greatest preload {} N becomes {} N", in_N(w.greatest), in_N(p.greatest));
                if (q.least > w.least)
                    return fmt::format("higher friction: the least preload {} N becomes {} N", in_N(w.least), in_N(q.least));
                return {};
            },
            0.5);
    }

    TEST_CASE("the stages of a bolt's life are in order") {
        on_random_joints(
            "stages",
            [](const RandomJoint&, const Joint& joint) -> std::string {
                assess(joint, scratch(0));
                const auto& c = scratch(0).clamp;
                for (const auto& stage : c)
                    if (stage.least > stage.greatest)
                        return fmt::format("{}: least {} N above greatest {} N", stage.id, in_N(stage.least), in_N(stage.greatest));
                const auto& l = scratch(0).state.clamp;
                if (l.embedded_least > l.assembled_least || l.crept_least > l.embedded_least) return "a loss adds to the clamp";
                if (l.embedded_greatest > l.assembled_greatest || l.crept_greatest > l.embedded_greatest)
                    return "a loss adds to the greatest clamp";
                if (l.retightened_least < l.crept_least || l.settled_least > l.retightened_least)
                    return "re-tightening loses clamp, or settling wins some";
                if (l.end_least > l.settled_least || l.end_least > l.cold_least || l.end_least > l.hot_least)
                    return "the end of life holds more than the stages before";
                if (scratch(0).state.settled_least > l.assembled_least) return "the least clamp of life is above the assembled one";
                if (scratch(0).state.greatest < l.assembled_greatest || scratch(0).state.greatest < l.hot_greatest)
                    return "the greatest force of life is below one of its stages";
                return {};
            },
            0.5);
    }

    TEST_CASE("a joint seen in a mirror comes to the same") {
        on_random_joints(
            "mirror",
            [](const RandomJoint& random, const Joint& joint) -> std::string {
                assess(joint, scratch(0));
                for (const bool x : {true, false}) {
                    auto other = random;
                    const std::size_t axis = x ? 0 : 1;
                    for (auto& p : other.positions) p[axis] = -p[axis];
                    const auto swapped = [](std::optional<double>& low, std::optional<double>& high) {
                        std::swap(low, high);
                        if (low) *low = -*low;
                        if (high) *high = -*high;
                    };
                    for (auto* plates : {&other.head_plates, &other.nut_plates})
                        for (auto& p : *plates) x ? swapped(p.x_min, p.x_max) : swapped(p.y_min, p.y_max);
                    if (x)
                        swapped(other.section_x_min, other.section_x_max);
                    else
                        other.offset_y = -other.offset_y;
                    for (auto& l : other.loads) {
                        l.at[axis] = -l.at[axis];
                        l.force[axis] = -l.force[axis];
                        l.moment[1 - axis] = -l.moment[1 - axis];  // a turning vector keeps its part along the mirrored axis
                        l.moment[2] = -l.moment[2];
                    }
                    const auto mirrored = read(other);
                    if (!mirrored) return x ? "refused in the mirror of x" : "refused in the mirror of y";
                    assess(*mirrored, scratch(1));
                    for (std::size_t i = 0; i < scratch(0).count; ++i) {
                        const auto &a = scratch(0).results[i], &b = scratch(1).results[i];
                        const auto apart = std::abs(a.outcome.utilisation - b.outcome.utilisation);
                        if (a.outcome.applicable != b.outcome.applicable || apart > 1e-7 * std::abs(a.outcome.utilisation) + 1e-9)
                            return fmt::format("{}: {} and {} in the mirror of {}", told(joint, a), a.outcome.utilisation,
                                               b.outcome.utilisation, x ? "x" : "y");
                    }
                }
                return {};
            },
            0.5);
    }

    TEST_CASE("a joint measured from another origin comes to the same") {
        on_random_joints(
            "origin",
            [](const RandomJoint& random, const Joint&) -> std::string {
                // A grid's origin is its middle; an edge that is not given stands 5 m from the origin: both are left out here.
                if (random.grid) return {};
                auto near = random;
                const auto edge = [](std::optional<double>& x, double otherwise) { x = x.value_or(otherwise); };
                for (auto* plates : {&near.head_plates, &near.nut_plates})
                    for (auto& p : *plates) {
                        edge(p.x_min, -1500.0);
                        edge(p.x_max, 1500.0);
                        edge(p.y_min, -700.0);
                        edge(p.y_max, 700.0);
                    }
                edge(near.section_x_min, -1500.0);
                edge(near.section_x_max, 1500.0);
                const auto here = read(near);
                if (!here) return "refused with its edges given";
                assess(*here, scratch(0));
                for (const double shift : {730.0, -730.0}) {
                    auto other = near;
                    for (auto& p : other.positions) p[0] += shift;
                    for (auto* plates : {&other.head_plates, &other.nut_plates})
                        for (auto& p : *plates) {
                            *p.x_min += shift;
                            *p.x_max += shift;
                        }
                    *other.section_x_min += shift;
                    *other.section_x_max += shift;
                    for (auto& l : other.loads) l.at[0] += shift;
                    const auto there = read(other);
                    if (!there) return fmt::format("refused when measured from {} mm away", shift);
                    assess(*there, scratch(1));
                    for (std::size_t i = 0; i < scratch(0).count; ++i) {
                        const auto &a = scratch(0).results[i], &b = scratch(1).results[i];
                        const auto apart = std::abs(a.outcome.utilisation - b.outcome.utilisation);
                        if (a.outcome.applicable != b.outcome.applicable || apart > 1e-6 * std::abs(a.outcome.utilisation) + 1e-8)
                            return fmt::format("{}: {} becomes {} when measured from {} mm away", told(*here, a), a.outcome.utilisation,
                                               b.outcome.utilisation, shift);
                    }
                }
                return {};
            },
            0.5);
    }

    TEST_CASE("every assessment can be told in text and JSON, and every result explained") {
        on_random_joints(
            "report",
            [](const RandomJoint&, const Joint& joint) -> std::string {
                assess(joint, scratch(0));
                const auto text = assessment_text(scratch(0), false), json = assessment_json(scratch(0));
                for (const char* bad : {" nan ", " inf ", "-nan", "-inf"})
                    if (text.find(bad) != std::string::npos) return fmt::format("the text says \"{}\"", bad);
                for (const char* bad : {"null", ": nan", ": inf", ": -inf"})
                    if (json.find(bad) != std::string::npos) return fmt::format("the JSON says \"{}\"", bad);
                for (const auto& r : scratch(0).checks()) {
                    if (!r.outcome.applicable) continue;
                    const auto steps = explain(scratch(0), r);
                    if (steps.steps().empty()) return told(joint, r) + " has no steps";
                }
                return {};
            },
            0.05);
    }
}
