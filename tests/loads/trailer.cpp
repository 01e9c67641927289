// SPDX-License-Identifier: MIT
#include "joint/trailer.hpp"
#include "joint/spoiler.hpp"
#include "report/loads.hpp"

using namespace joint_tests;

namespace {

std::string trailer_demo() { return demo("trailer.toml"); }

std::optional<TrailerLoads> read(const std::string& text, Diagnostics& diagnostics, const Tables& tables = built_in()) {
    return read_trailer(text, "trailer.toml", tables, diagnostics);
}

TrailerLoads loads_of(const std::string& text, const Tables& tables = built_in()) {
    Diagnostics diagnostics;
    auto loads = read(text, diagnostics, tables);
    REQUIRE_MESSAGE(loads.has_value(), diagnostics.text());
    return *loads;
}

/// What is wrong with a trailer's loads whatever the trailer: the first of it, or nothing.
std::string unsound_loads(const TrailerLoads& loads) {
    if (loads.joints.empty() || loads.coupling.empty()) return "nothing was worked out";
    const auto finite = [](const auto& t) {
        return std::isfinite(t.x.value()) && std::isfinite(t.y.value()) && std::isfinite(t.z.value());
    };
    const auto balanced = [](const std::vector<PlacedForce>& forces) {
        auto moment = Nm(1e-6);
        auto force = newton(1e-6);
        for (const auto& each : forces) {
            force += magnitude(each.force);
            moment += magnitude(each.force) * magnitude(each.at) + magnitude(each.moment);
        }
        const auto left = resultant(forces);
        return magnitude(left.force) <= 1e-9 * force && magnitude(left.moment) <= 1e-9 * moment;
    };
    for (const auto& each : loads.coupling)
        if (!balanced(each.free_body)) return each.name + ": the trailer does not balance";
    for (const auto& joint : loads.joints) {
        if (joint.cases.empty()) return joint.name + " has no load case";
        for (const auto& body : joint.drawbar)
            if (!balanced(body.forces)) return body.name + ": the drawbar does not balance";
        std::set<std::string> names;
        for (const auto& each : joint.cases) {
            const auto& c = each.load_case;
            if (!names.insert(c.name).second) return c.name + " stands twice";
            if (!finite(c.force) || !finite(c.moment) || !finite(c.at)) return c.name + " is not finite";
            if ((c.format == LoadFormat::static_load) == c.load_factor.has_value())
                return c.name + ": format and load factor do not go together";
        }
    }
    return {};
}

std::optional<std::string> read_and_judge(const std::string& text, const std::string& file, Diagnostics& diagnostics) {
    const auto loads = read_trailer(text, file, built_in(), diagnostics);
    if (!loads) return std::nullopt;
    if (loads_text(*loads).empty() || loads_json(*loads).empty()) return "nothing is printed";
    return unsound_loads(*loads);
}

const LoadCaseFile& case_of(const JointLoads& joint, std::string_view name) {
    const LoadCaseFile* found = nullptr;
    for (const auto& each : joint.cases)
        if (each.load_case.name == name) found = &each.load_case;
    REQUIRE_MESSAGE(found != nullptr, name);
    return *found;
}

/// One state and one joint.
std::string plain(const std::string& joint) {
    auto text = trailer_demo();
    return text.substr(0, text.find("# Half the supers")) + joint;
}

const std::string lap = R"([[joint]]
kind = "drawbar lap"
name = "leg"
lies = "under the rail"
middle = "1800 mm"
front = "400 mm"
rear = "400 mm"
length = "1000 mm"
height = "550 mm"
legs-apart = "1100 mm"
)";

/// The joint of the demo, its trailer read from memory.
std::optional<Joint> joint_with(const std::string& joint, const std::string& trailer, Diagnostics& diagnostics) {
    return read_joint(joint, "leg.toml", built_in(), diagnostics, [&](const std::string& path) -> std::optional<NamedText> {
        if (path != "trailer.toml") return std::nullopt;
        return NamedText{"folder/trailer.toml", trailer};
    });
}

}  // namespace

TEST_SUITE("loads/trailer") {
    TEST_CASE("one leg's share: 0.6 of what is vertical, half of the push, at the coupling's place in the joint's axes") {
        const auto loads = loads_of(plain(lap));
        REQUIRE(loads.joints.size() == 1);
        const auto& joint = loads.joints.front();
        const auto& standing = case_of(joint, "standing");
        CHECK(standing.format == LoadFormat::static_load);
        CHECK_FALSE(standing.load_factor);
        CHECK(in_mm(standing.at.x) == doctest::Approx(1800));
        CHECK(in_mm(standing.at.z) == doctest::Approx(120));
        CHECK(in_kN(standing.force.z) == doctest::Approx(-0.6 * 2.5506));
        const auto& down = case_of(joint, "coupling vertical: down 0.5 m g");
        CHECK(down.format == LoadFormat::dynamic_load);
        CHECK(down.load_factor == 1.0);
        CHECK(in_kN(down.force.z) == doctest::Approx(0.6 * 12.753));
        CHECK(in_kN(case_of(joint, "coupling along: push 1.5 m g").force.x) == doctest::Approx(-19.1295));
        const auto& sideways = case_of(joint, "coupling sideways: to the right 0.5 m g");
        CHECK(in_kN(sideways.force.x) == doctest::Approx(2 * 6.825).epsilon(1e-3));
        CHECK(in_kN(sideways.force.y) == doctest::Approx(6.3765));
        CHECK(in_kN(sideways.force.z) == doctest::Approx(12.753 * 0.12 / 1.1));
        CHECK(in_kNm(sideways.moment.z) == doctest::Approx(4.963 * 0.8).epsilon(1e-3));
        const auto& driving = case_of(joint, "driving: +-0.6 D, 2000000 cycles, forward and down");
        CHECK(in_kN(driving.force.x) == doctest::Approx(7.919 / 2).epsilon(1e-3));
        CHECK(in_kN(driving.force.z) == doctest::Approx(0.6 * 2.122).epsilon(1e-3));
        CHECK(driving.cycles == 2e6);
    }

    TEST_CASE("legs pinned in plan would take the side load as a couple over their distance") {
        const auto joint = loads_of(plain(lap)).joints.front();
        REQUIRE(joint.pinned_leg);
        CHECK(in_kN(*joint.pinned_leg) == doctest::Approx(12.753 * 1.8 / 1.1).epsilon(1e-4));
        CHECK_FALSE(loads_of(trailer_demo()).find("spring hanger")->pinned_leg);
    }

    TEST_CASE("beside the rail the vertical lies across the bolts, and the joint's y points up") {
        const auto under = loads_of(plain(lap)), beside = loads_of(plain(edited(lap, "under the rail", "beside the rail")));
        for (const char* name : {"standing", "coupling sideways: to the left 0.5 m g"}) {
            const auto &a = case_of(under.joints.front(), name), &b = case_of(beside.joints.front(), name);
            CHECK(b.force.x == a.force.x);
            CHECK(b.force.y == -a.force.z);
            CHECK(b.force.z == a.force.y);
            CHECK(b.at.y == -a.at.z);
            CHECK(b.moment.y == -a.moment.z);
        }
    }

    TEST_CASE("front and rear group together are the whole lap") {
        const auto whole = loads_of(plain(lap)), front = loads_of(plain(edited(lap, "drawbar lap", "lap front group"))),
                   rear = loads_of(plain(edited(lap, "drawbar lap", "lap rear group")));
        for (const auto& each : front.joints.front().cases) {
            const auto& w = case_of(whole.joints.front(), each.load_case.name);
            const auto& r = case_of(rear.joints.front(), each.load_case.name);
            const auto& f = each.load_case;
            CHECK(in_N(f.force.x + r.force.x) == doctest::Approx(in_N(w.force.x)).epsilon(1e-9));
            CHECK(in_N(f.force.y + r.force.y) == doctest::Approx(in_N(w.force.y)).epsilon(1e-9));
            CHECK(in_N(f.force.z + r.force.z) == doctest::Approx(in_N(w.force.z)).epsilon(1e-9));
        }
        // 0.6 of the lap's couple.
        CHECK(in_kN(case_of(rear.joints.front(), "coupling vertical: down 0.5 m g").force.z) ==
              doctest::Approx(-0.6 * 22.318).epsilon(1e-4));
        CHECK(in_kN(case_of(front.joints.front(), "coupling vertical: down 0.5 m g").force.z) ==
              doctest::Approx(0.6 * 35.071).epsilon(1e-4));
    }

    TEST_CASE("the vertical load is the larger of k S g and 0.5 m g") {
        // A nose of 15 %: five times that is more than half the weight.
        const auto heavy = loads_of(plain(lap));
        CHECK(case_of(heavy.joints.front(), "coupling vertical: up 0.5 m g").force.z < kN(0));
        const auto nose = loads_of(edited(plain(lap), "3240 mm", "3060 mm"));
        CHECK(in_kN(case_of(nose.joints.front(), "coupling vertical: up 5 x nose load").force.z) ==
              doctest::Approx(-0.6 * 5 * 0.15 * 25.506));
        CHECK_FALSE(nose.warnings.empty());
        const auto sealed = loads_of(edited(edited(plain(lap), "3240 mm", "3060 mm"), "off road", "sealed road"));
        CHECK(in_kN(case_of(sealed.joints.front(), "coupling vertical: down 0.5 m g").force.z) == doctest::Approx(0.6 * 12.753));
    }

    TEST_CASE("brakes: overrun pushes a tenth of the weight, electric ones nothing, none everything") {
        const auto thrust = [](const TrailerLoads& loads) {
            for (const auto& each : loads.coupling)
                if (each.rule.kind == LoadKind::braking) return in_kN(each.load.rearward);
            return -1.0;
        };
        CHECK(thrust(loads_of(plain(lap))) == doctest::Approx(2.5506));
        CHECK(thrust(loads_of(edited(plain(lap), "\"overrun\"", "\"electric\""))) == doctest::Approx(0));
        CHECK(thrust(loads_of(edited(plain(lap), "\"overrun\"", "\"none\""))) == doctest::Approx(12.753));
        CHECK(thrust(loads_of(edited(plain(lap), "kind = \"overrun\"", "kind = \"overrun\"\nthrust-share = 0.05"))) ==
              doctest::Approx(1.2753));
    }

    TEST_CASE("of every case the states stay that no other covers, and they are named") {
        const auto loads = loads_of(trailer_demo());
        const auto* leg = loads.find("drawbar leg");
        REQUIRE(leg != nullptr);
        const auto has = [&](const std::string& name) {
            return std::any_of(leg->cases.begin(), leg->cases.end(), [&](const auto& c) { return c.load_case.name == name; });
        };
        CHECK(has("standing; tanks full"));
        CHECK_FALSE(has("standing; on the way out, tanks empty"));
        // The empty trailer lifts its coupling more.
        CHECK(has("axle bump: 2 x sprung weight; on the way out, tanks empty"));
        CHECK_FALSE(has("axle bump: 2 x sprung weight; tanks full"));
        // Whatever was left out is no more than what stayed, in the same direction.
        const auto empty = loads_of(edited(edited(edited(plain(lap), "2600 kg", "1650 kg"), "3240 mm", "3400 mm"), "1050 mm", "900 mm"));
        CHECK(abs(case_of(empty.joints.front(), "coupling along: push 1.5 m g").force.x) <
              abs(case_of(*leg, "coupling along: push 1.5 m g; tanks full").force.x));
    }

    TEST_CASE("a bracket gets its weight and the accelerations; down and up include the weight") {
        const auto loads = loads_of(trailer_demo());
        const auto* shelf = loads.find("generator shelf");
        REQUIRE(shelf != nullptr);
        const double weight = 60 * 9.81;
        // Beside the rail: y points up.
        CHECK(in_N(case_of(*shelf, "standing: its weight").force.y) == doctest::Approx(-weight));
        const auto& forward = case_of(*shelf, "accessory forward: 0.8 g");
        CHECK(in_N(forward.force.x) == doctest::Approx(0.8 * weight));
        CHECK(in_N(forward.force.y) == doctest::Approx(-weight));
        CHECK(in_mm(forward.at.z) == doctest::Approx(220));
        CHECK(in_N(case_of(*shelf, "accessory up: 0.2 g").force.y) == doctest::Approx(0.2 * weight));
        CHECK(in_N(case_of(*shelf, "accessory down, off road: 4 g").force.y) == doctest::Approx(-4 * weight));
        for (const auto& each : shelf->cases) CHECK(each.load_case.name.find("sealed road") == std::string::npos);
    }

    TEST_CASE("a shop's own rule takes the place of the built-in one, and a new name adds cases") {
        Diagnostics diagnostics;
        auto tables = load_tables({}, diagnostics);
        const auto overlay = parse_toml(R"([[load-rule]]
name = "coupling along"
kind = "coupling along"
multiple = 2.0
load-factor = 1.0
description = "our own"
source = {basis = "practice"}
[[load-rule]]
name = "shunt"
kind = "coupling along"
multiple = 3.0
load-factor = 1.0
description = "our own"
source = {basis = "practice"}
)",
                                        "load-rules.toml", diagnostics);
        REQUIRE(overlay);
        tables.each([&](std::string_view name, auto& table) {
            if (name == "load-rules") load_rows(*overlay, table, diagnostics);
        });
        REQUIRE_MESSAGE(!diagnostics.any(), diagnostics.text());
        const auto loads = loads_of(plain(lap), tables);
        CHECK(in_kN(case_of(loads.joints.front(), "coupling along: push 2 m g").force.x) == doctest::Approx(-25.506));
        CHECK(in_kN(case_of(loads.joints.front(), "shunt: pull 3 m g").force.x) == doctest::Approx(1.5 * 25.506));
    }

    TEST_CASE("a rule that is static has no load factor, a peak has one: the two are never multiplied") {
        const auto refused = [](const std::string& row) {
            Diagnostics diagnostics;
            Table<LoadRule> table;
            const auto node =
                parse_toml("[[load-rule]]\nname = \"x\"\ndescription = \"x\"\nsource = {basis = \"practice\"}\n" + row, "t", diagnostics);
            load_rows(*node, table, diagnostics);
            return diagnostics.any() ? diagnostics.sorted().front().message : std::string("accepted");
        };
        CHECK(refused("kind = \"standing\"\nmultiple = 1.0\n") == "accepted");
        CHECK(refused("kind = \"standing\"\nmultiple = 1.0\nload-factor = 1.5\n").find("no load factor") != std::string::npos);
        CHECK(refused("kind = \"braking\"\nmultiple = 0.5\n").find("load-factor is missing") != std::string::npos);
        CHECK(refused("kind = \"braking\"\nload-factor = 1.5\n").find("multiple is missing") != std::string::npos);
        CHECK(refused("kind = \"kerb\"\nload-factor = 1.5\n").find("speed and stiffness") != std::string::npos);
        CHECK(refused("kind = \"coupling fatigue\"\nmultiple = 0.6\nload-factor = 1.0\n").find("angle and cycles") != std::string::npos);
        CHECK(refused("kind = \"coupling heave\"\nload-factor = 1.0\n").find("acceleration") != std::string::npos);
        CHECK(refused("kind = \"accessory\"\nmultiple = 1.0\nload-factor = 1.0\n").find("direction") != std::string::npos);
    }

    TEST_CASE("every field of the trailer file spoilt in every way is refused with its place, or read to loads that balance") {
        Diagnostics diagnostics;
        const auto root = parse_toml(trailer_demo(), "trailer.toml", diagnostics);
        REQUIRE(root);
        const Spoiler<TrailerFile> spoiler(*root, "trailer.toml", read_and_judge);
        std::string first;
        for (std::size_t i = 0; i < std::min<std::size_t>(spoiler.faults.size(), 12); ++i) first += spoiler.faults[i] + '\n';
        CHECK_MESSAGE(spoiler.faults.empty(), spoiler.faults.size(), " faults, the first:\n", first);
        MESSAGE(spoiler.count, " spoilt trailer files, ", spoiler.refused, " refused, ", spoiler.fields.size(), " fields");
        CHECK(spoiler.count > 1000);
    }

    TEST_CASE("a trailer file cut off anywhere is refused with a place, or read") {
        const auto text = trailer_demo();
        for (std::size_t end = 0; end < text.size(); end += 7) {
            Diagnostics diagnostics;
            const auto loads = read(text.substr(0, end), diagnostics);
            if (loads) {
                CHECK_MESSAGE(unsound_loads(*loads).empty(), end, ": ", unsound_loads(*loads));
                continue;
            }
            REQUIRE_MESSAGE(diagnostics.any(), end);
            for (const auto& d : diagnostics.sorted()) CHECK_MESSAGE(d.at.line >= 1, end, ": ", d.message);
        }
    }

    TEST_CASE("what a trailer cannot be is refused at its line") {
        struct Wrong {
            const char *what, *with, *code, *line;
        };
        const auto text = trailer_demo();
        for (const auto& wrong : {Wrong{"unsprung-mass = \"240 kg\"", "unsprung-mass = \"2600 kg\"", "trailer.mass", "unsprung-mass"},
                                  Wrong{"mass = \"1650 kg\"", "mass = \"2700 kg\"", "trailer.mass", "mass = \"2700 kg\""},
                                  Wrong{"\"3240 mm\"", "\"1200 mm\"", "trailer.centre", "centre-of-gravity"},
                                  Wrong{"\"3400 mm\"", "\"5200 mm\"", "trailer.centre", "\"5200 mm\""},
                                  Wrong{"road = \"off road\"", "road = \"of road\"", "name.unknown", "road ="},
                                  Wrong{"on the way out, tanks empty", "tanks full", "name.duplicate", "name = \"tanks full\""},
                                  Wrong{"\"spring hanger\"", "\"drawbar leg\"", "name.duplicate", "name = \"drawbar leg\""},
                                  Wrong{"hangers = 4", "hangers = 5", "trailer.hangers", "hangers = 5"},
                                  Wrong{"hangers = 4", "hangers = 2", "trailer.hangers", "hanger-spacing"},
                                  Wrong{"eye-offset = \"90 mm\"", "eye-offset = \"700 mm\"", "trailer.hangers", "eye-offset"},
                                  Wrong{"length = \"1060 mm\"", "length = \"600 mm\"", "trailer.lap", "length = \"600 mm\""},
                                  Wrong{"front = \"371 mm\"", "front = \"0 mm\"\nrear = \"10 mm\"", "", ""},
                                  Wrong{"middle = \"1800 mm\"", "middle = \"380 mm\"", "trailer.lap", "front"},
                                  Wrong{"middle = \"1800 mm\"", "middle = \"9 m\"", "trailer.lap", "middle"},
                                  Wrong{"lies = \"under the rail\"", "lies = \"on the rail\"", "trailer.lap", "lies"}}) {
            INFO(wrong.with);
            Diagnostics diagnostics;
            CHECK_FALSE(read(edited(text, wrong.what, wrong.with), diagnostics));
            REQUIRE(diagnostics.any());
            if (*wrong.code == '\0') continue;  // a key given twice: the parser's own message
            CHECK(diagnostics.sorted().front().code == wrong.code);
            CHECK(diagnostics.text().find(wrong.line) != std::string::npos);
        }
    }

    TEST_CASE("a joint takes its trailer's load cases before its own ones") {
        const auto text = demo("drawbar-from-trailer.toml");
        Diagnostics diagnostics;
        const auto joint = joint_with(text, trailer_demo(), diagnostics);
        REQUIRE_MESSAGE(joint, diagnostics.text());
        const auto loads = loads_of(trailer_demo());
        const auto& cases = loads.find("drawbar leg")->cases;
        REQUIRE(joint->load_cases.size() == cases.size());
        for (std::size_t i = 0; i < cases.size(); ++i) {
            CHECK(joint->load_cases[i].name == cases[i].load_case.name);
            CHECK(joint->load_cases[i].force_z == cases[i].load_case.force.z);
        }
        CHECK(unsound(*assessed(*joint)) == "");

        const std::string own = "\n[[load-case]]\nname = \"own\"\nformat = \"static\"\nforce = [\"1 kN\", \"0 kN\", \"0 kN\"]\n";
        const auto both = joint_with(text + own, trailer_demo(), diagnostics);
        REQUIRE_MESSAGE(both, diagnostics.text());
        CHECK(both->load_cases.size() == cases.size() + 1);
        CHECK(both->load_cases.back().name == "own");

        // A trailer with one joint needs no name.
        const auto only = joint_with(edited(text, "loads-joint = \"drawbar leg\"\n", ""), plain(lap), diagnostics);
        REQUIRE_MESSAGE(only, diagnostics.text());
        CHECK(only->load_cases.size() == loads_of(plain(lap)).joints.front().cases.size());
    }

    TEST_CASE("what is unusual in the trailer file is told with the joint, and groups that are not where the bolts are") {
        Diagnostics diagnostics;
        const auto text = demo("drawbar-from-trailer.toml");
        const auto told = [&](const std::string& trailer, const std::string& words) {
            const auto joint = joint_with(text, trailer, diagnostics);
            REQUIRE_MESSAGE(joint, diagnostics.text());
            const auto list = warnings(*assessed(*joint));
            return std::any_of(list.begin(), list.end(), [&](const auto& w) { return w.find(words) != std::string::npos; });
        };
        CHECK(told(edited(trailer_demo(), "3400 mm", "3490 mm"), "on the way out, tanks empty: the nose load is 3.1 % of the weight"));
        CHECK_FALSE(told(trailer_demo(), "the nose load is"));
        CHECK_FALSE(told(trailer_demo(), "puts the lap's groups"));
        CHECK_FALSE(told(trailer_demo(), "tips over before"));
        CHECK(told(edited(trailer_demo(), "centre-height = \"1050 mm\"", "centre-height = \"2400 mm\""), "tips over before"));
        CHECK(told(edited(trailer_demo(), "front = \"371 mm\"", "front = \"450 mm\""), "puts the lap's groups 450 mm before"));
    }

    TEST_CASE("a state that presses the parts together more does not cover one that presses less") {
        // Braking, the full trailer presses its leg up more and pushes more: both stay. Pure pushes are multiples: one stays.
        const auto loads = loads_of(trailer_demo());
        const auto* leg = loads.find("drawbar leg");
        const auto count = [&](const std::string& begin) {
            return std::count_if(leg->cases.begin(), leg->cases.end(), [&](const auto& c) { return c.load_case.name.starts_with(begin); });
        };
        CHECK(count("braking: 0.5 g") == 2);
        CHECK(count("coupling along: push") == 1);
        CHECK(count("coupling vertical: up") == 1);
        CHECK(count("driving: +-0.6 D, 2000000 cycles, forward and up") == 1);
    }

    TEST_CASE("the blocks printed for a joint file come to the same joint") {
        const auto loads = loads_of(trailer_demo());
        const auto printed = loads_text(loads);
        const auto from = printed.find("[[load-case]]"), to = printed.find("\nJOINT", from);
        auto text = demo("drawbar-from-trailer.toml");
        Diagnostics diagnostics;
        const auto named = joint_with(text, trailer_demo(), diagnostics);
        text = edited(edited(text, "loads = \"trailer.toml\"\n", ""), "loads-joint = \"drawbar leg\"\n", "");
        const auto copied = read_joint(text + "\n" + printed.substr(from, to - from), "copied.toml", built_in(), diagnostics);
        REQUIRE_MESSAGE(copied, diagnostics.text());
        REQUIRE(copied->load_cases.size() == named->load_cases.size());
        for (std::size_t i = 0; i < copied->load_cases.size(); ++i) {
            const auto &a = copied->load_cases[i], &b = named->load_cases[i];
            CHECK(a.name == b.name);
            CHECK(a.format == b.format);
            CHECK(a.load_factor == b.load_factor);
            CHECK(a.cycles == b.cycles);
            CHECK(in_N(a.force_x) == doctest::Approx(in_N(b.force_x)).epsilon(1e-5));
            CHECK(in_N(a.force_z) == doctest::Approx(in_N(b.force_z)).epsilon(1e-5));
            CHECK(in_Nm(a.moment_z) == doctest::Approx(in_Nm(b.moment_z)).epsilon(1e-5));
        }
    }

    TEST_CASE("a trailer that cannot be taken is refused at the joint's line, its own mistakes at its own") {
        const auto text = demo("drawbar-from-trailer.toml");
        const auto front = [&](const std::string& joint, const std::string& trailer) {
            Diagnostics diagnostics;
            CHECK_FALSE(joint_with(joint, trailer, diagnostics));
            REQUIRE(diagnostics.any());
            return diagnostics.sorted().front();
        };
        CHECK(front(edited(text, "\"trailer.toml\"", "\"trayler.toml\""), trailer_demo()).code == "loads.unreadable");
        CHECK(front(edited(text, "\"drawbar leg\"", "\"drawbar log\""), trailer_demo()).label == "the nearest is \"drawbar leg\"");
        CHECK(front(edited(text, "loads-joint = \"drawbar leg\"\n", ""), trailer_demo()).code == "key.missing");
        CHECK(front(edited(text, "loads = \"trailer.toml\"\n", ""), trailer_demo()).code == "loads.none");
        CHECK(front(edited(text, "\"off road\"", "\"sealed road\""), trailer_demo()).code == "loads.road");
        const auto twice =
            text + "\n[[load-case]]\nname = \"standing; tanks full\"\nformat = \"static\"\nforce = [\"1 kN\", \"0 kN\", \"0 kN\"]\n";
        CHECK(front(twice, trailer_demo()).code == "name.duplicate");
        const auto inside = front(text, edited(trailer_demo(), "\"1750 mm\"", "\"1750\""));
        CHECK(inside.code == "unit.missing");
        CHECK(*inside.at.file == "folder/trailer.toml");
        CHECK(inside.at.line == 14);
        // Nobody to read files: the library's callers and standard input.
        Diagnostics diagnostics;
        CHECK_FALSE(read_joint(text, "leg.toml", built_in(), diagnostics));
        CHECK(diagnostics.sorted().front().code == "loads.unreadable");
        CHECK(diagnostics.sorted().front().at.line == 11);
        // No load at all.
        Diagnostics none;
        CHECK_FALSE(read_joint(edited(edited(text, "loads = \"trailer.toml\"\n", ""), "loads-joint = \"drawbar leg\"\n", ""), "leg.toml",
                               built_in(), none));
        CHECK(none.sorted().front().code == "load.none");
    }
}
