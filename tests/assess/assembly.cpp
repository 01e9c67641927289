// SPDX-License-Identifier: MIT
#include "assess/assembly.hpp"

#include "assess/ordered.hpp"
#include "assess/sentences.hpp"
#include "joint/joints.hpp"
#include "joint/reading.hpp"
#include "quantity/text.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cctype>
#include <cmath>

using namespace joint_tests;

namespace {

struct Planned : WholeJoint {
    AssemblyPlan plan;
};

Planned planned(const std::string& text) {
    Planned out{whole_joint(text), {}};
    out.plan = assembly_plan(*out.assessment, built_in());
    return out;
}

std::size_t count_of(const AssemblyPlan& plan, AssemblyStage stage) {
    return static_cast<std::size_t>(
        std::count_if(plan.steps.begin(), plan.steps.end(), [&](const auto& step) { return step.stage == stage; }));
}

const AssemblyStep& step_of(const AssemblyPlan& plan, AssemblyStage stage) {
    const auto found = std::find_if(plan.steps.begin(), plan.steps.end(), [&](const auto& step) { return step.stage == stage; });
    REQUIRE(found != plan.steps.end());
    return *found;
}

std::string untidy(const RowSource& source) {
    // Only what was read or recalled has a place in a document.
    return source.basis != Basis::practice && (source.document.empty() || source.place.empty()) ? "no document" : "";
}

/// Every joint of the tests with what a plan may meet: sealants that set, methods without torque, sleeves, wax, stainless bolts.
std::vector<std::string> many_joints() {
    std::vector<std::string> out{lapped_rail, two_cheeks, through_tubes, plain_plates, open_box, sound_lap};
    for (const auto& name : demo_names()) out.push_back(demo(name));
    for (const auto& method : built_in().of<TighteningMethod>().rows) {
        out.push_back(edited(sound_lap, "torque wrench, friction class B", method.name));
        out.push_back(edited(plain_plates, "torque wrench, friction class B", method.name));
    }
    for (const auto& layer : built_in().of<LayerMaterial>().rows)
        out.push_back(edited(plain_plates, "material = \"jointing compound\"", "material = \"" + layer.name + "\""));
    out.push_back(edited(sound_lap, "edges = \"edges sealed\"", "edges = \"edges open\"\ncavity = \"waxed\"\nmaintained = true"));
    out.push_back(edited(edited(sound_lap, "class = \"8.8\"", "class = \"A4-80\""), "hot-dip galvanised, waxed", "stainless, anti-seize"));
    out.push_back(edited(sound_lap, "friction class B\"", "friction class B\"\nprevailing-torque = \"20 N*m\"\nretighten = false"));
    return out;
}

std::string isolated_lap(const std::string& earth) {
    auto text = edited(sound_lap, "edges = \"edges sealed\"",
                       "edges = \"edges sealed\"\nfixing = \"glass-epoxy sleeve and shoulder washer\"\nchassis-earth = \"" + earth + "\"");
    const std::string laminate = "[[part]]\nkind = \"layer\"\nmaterial = \"glass-epoxy laminate\"\n\n";
    text = edited(text, "[[part]]\nkind = \"section\"", laminate + "[[part]]\nkind = \"section\"");
    const auto last = text.rfind("[[part]]\nkind = \"washer\"");
    return text.insert(last, laminate);
}

std::vector<Position> row_of(const std::vector<double>& xs) {
    std::vector<Position> out;
    for (const double x : xs) out.push_back({mm(x), mm(0)});
    return out;
}

using Order = std::vector<std::size_t>;

}  // namespace

TEST_SUITE("assess/assembly") {
    TEST_CASE("the order of tightening runs from the middle outwards, sides in turn") {
        CHECK(tightening_order({}) == Order{});
        CHECK(tightening_order(row_of({7})) == Order{0});
        CHECK(tightening_order(row_of({-80, 0, 80})) == Order{1, 0, 2});
        CHECK(tightening_order(row_of({-160, -80, 0, 80, 160})) == Order{2, 1, 3, 0, 4});
        CHECK(tightening_order(row_of({0, 80, 160, 260})) == Order{2, 1, 3, 0});  // uneven: still one side, then the other
        // A grid: the four about the middle crosswise, then the outer four.
        CHECK(tightening_order(grid_of(2, 2, mm(160), mm(44))) == Order{0, 3, 2, 1});
        const auto grid = grid_of(2, 4, mm(80), mm(60));
        const auto order = tightening_order(grid);
        for (std::size_t i = 0; i < 4; ++i) CHECK(std::abs(in_mm(grid[order[i]].x)) == doctest::Approx(40));
        for (std::size_t i = 4; i < 8; ++i) CHECK(std::abs(in_mm(grid[order[i]].x)) == doctest::Approx(120));
        // Two groups far apart, as at the ends of a lap: their inner ends first, a group in turn with the other.
        const auto lap = tightening_order(row_of({-480, -400, -320, -240, 240, 320, 400, 480}));
        CHECK(lap == Order{3, 4, 2, 5, 1, 6, 0, 7});
    }

    TEST_CASE("the order is a permutation, begins nearest to the middle, and each bolt knows its turn") {
        for (const auto& text : many_joints()) {
            const auto p = planned(text);
            const auto& positions = p.joint->positions;
            auto sorted = p.plan.tightening_order;
            std::sort(sorted.begin(), sorted.end());
            REQUIRE(sorted.size() == positions.size());
            for (std::size_t i = 0; i < sorted.size(); ++i) CHECK(sorted[i] == i);
            Length x = mm(0), y = mm(0);
            for (const auto& each : positions) {
                x += each.x / static_cast<double>(positions.size());
                y += each.y / static_cast<double>(positions.size());
            }
            const auto out = [&](std::size_t i) { return std::hypot(in_mm(positions[i].x - x), in_mm(positions[i].y - y)); };
            for (std::size_t i = 0; i < positions.size(); ++i) CHECK(out(p.plan.tightening_order.front()) <= out(i) + 1e-3);
            CHECK(p.plan.turn_of(p.plan.tightening_order.front()) == 1);
            CHECK(p.plan.turn_of(p.plan.tightening_order.back()) == static_cast<int>(positions.size()));
            CHECK(p.plan.turn_of(positions.size()) == 0);
        }
    }

    TEST_CASE("every text is tidy and tells what it stands on; steps are few, short and in order") {
        for (const auto& text : many_joints()) {
            const auto p = planned(text);
            const auto& plan = p.plan;
            CAPTURE(p.joint->title);
            CHECK(plan.steps.size() >= 8);
            CHECK(plan.steps.size() <= 16);
            for (std::size_t i = 0; i < plan.steps.size(); ++i) {
                const auto& step = plan.steps[i];
                CHECK(untidy(step.words) == "");
                CHECK(untidy(step.source) == "");
                CHECK_MESSAGE(step.words.size() <= 160, step.words);
                CHECK(std::isupper(static_cast<unsigned char>(step.words.front())) != 0);
                if (i > 0) CHECK(plan.steps[i - 1].stage <= step.stage);
            }
            CHECK(plan.steps.back().stage == AssemblyStage::sign);
            for (const auto& line : plan.tightening.words) CHECK(untidy(line.words) + untidy(line.source) == "");
            CHECK(plan.retightening.size() >= 3);
            for (const auto& each : plan.retightening) CHECK(untidy(each.how) + untidy(each.when + ".") + untidy(each.source) == "");
            CHECK(untidy(plan.retightening_counted.words) == "");
            CHECK(plan.inspection.size() >= 7);
            for (const auto& each : plan.inspection)
                CHECK(untidy(each.how) + untidy(each.accept) + untidy(each.what + ".") + untidy(each.source) == "");
            for (std::size_t i = 1; i < plan.inspection.size(); ++i) CHECK(plan.inspection[i - 1].time <= plan.inspection[i].time);
            for (const auto& each : plan.rejects) CHECK(untidy(each.words) == "");
            CHECK(untidy(plan.substitution.words) == "");
            CHECK(plan.not_to_be_built.empty() == p.assessment->passes);
            if (!plan.not_to_be_built.empty()) CHECK(untidy(plan.not_to_be_built) == "");
            CHECK(plan.resistance_test == plan.no_resistance_test.empty());
        }
    }

    TEST_CASE("the lubricant that the torque is for is a step of its own, once") {
        const auto waxed = planned(sound_lap);
        CHECK(std::count_if(waxed.plan.steps.begin(), waxed.plan.steps.end(), [](const auto& step) { return says(step.words, "waxed"); }) ==
              1);
        const auto paste = planned(edited(sound_lap, "hot-dip galvanised, waxed", "hot-dip galvanised, molybdenum disulfide paste"));
        CHECK(std::count_if(paste.plan.steps.begin(), paste.plan.steps.end(),
                            [](const auto& step) { return says(step.words, "under the nut, nowhere else"); }) == 1);
    }

    TEST_CASE("what is spread wet is a step exactly where the joint has it, and waited for") {
        for (const auto& text : many_joints()) {
            const auto p = planned(text);
            const auto& layers = p.joint->layers;
            const bool wet = std::any_of(layers.begin(), layers.end(), [](const auto& l) { return l.material.form != LayerForm::dry; });
            CAPTURE(p.joint->title);
            CHECK(count_of(p.plan, AssemblyStage::isolate_faces) == (layers.empty() ? 0 : 1));
            CHECK(count_of(p.plan, AssemblyStage::retighten_wet) == (wet ? 1 : 0));
            CHECK(std::any_of(p.plan.retightening.begin(), p.plan.retightening.end(), [](const auto& r) { return r.in_assembly; }) == wet);
        }
        const auto compound = planned(plain_plates), none = planned(sound_lap);
        // Bolts and what is done to them have steps of their own.
        CHECK(step_of(compound.plan, AssemblyStage::isolate_faces).words ==
              "Wipe both faces and the holes with non-setting, chromate-free compound, assemble wet, leave a bead all round.");
        CHECK(step_of(compound.plan, AssemblyStage::isolate_faces).source.basis == Basis::practice);
        CHECK(says(step_of(compound.plan, AssemblyStage::place_bolts).words, "No sealant or compound on threads or under nuts."));
        CHECK(step_of(none.plan, AssemblyStage::seal_edges).words == built_in().of<IsolationElement>().find("edges sealed")->steps);
    }

    TEST_CASE("what has set is never turned: its bolts are looked at") {
        const auto setting = planned(edited(plain_plates, "material = \"jointing compound\"", "material = \"polysulfide sealant\""));
        CHECK(says(step_of(setting.plan, AssemblyStage::retighten_wet).words, "before it sets"));
        for (const auto& each : setting.plan.retightening)
            if (!each.in_assembly) CHECK(each.how.starts_with("Do not turn"));
        for (const auto& each : planned(plain_plates).plan.retightening) CHECK(!says(each.how, "Do not turn"));
    }

    TEST_CASE("torque: about half, then all of it, on the wrench's marks") {
        const auto p = planned(sound_lap);
        const auto& t = p.plan.tightening;
        REQUIRE(t.passes.size() == 2);
        CHECK(t.passes.front().torque == Nm(60));
        CHECK(t.passes.back().torque == p.assessment->state.torque);
        CHECK(t.passes.back().last);
        CHECK(!t.for_information);
        CHECK(says(step_of(p.plan, AssemblyStage::tighten).words, "60 N*m"));
        CHECK(says(step_of(p.plan, AssemblyStage::tighten).words, "120 N*m"));
        CHECK(says(t.words.front().words, "hot-dip galvanised, waxed"));
        CHECK(t.words.front().source.basis == Basis::published);
        // What a locking nut takes is on top of half of what clamps.
        const auto locking =
            planned(edited(sound_lap, "friction class B\"", "friction class B\"\ntorque = \"120 N*m\"\nprevailing-torque = \"20 N*m\""));
        CHECK(locking.plan.tightening.passes.front().torque == Nm(70));
        // Friction from a test is told as such.
        const auto tested =
            planned(std::string(sound_lap) +
                    "\n[overrides]\nreason = \"test of the batch\"\nthread-friction-low = 0.1\nthread-friction-high = 0.13\n");
        CHECK(tested.plan.tightening.words.front().source.place == "test of the batch");
        CHECK(tested.plan.tightening.words.front().source.basis == Basis::practice);
        CHECK(says(tested.plan.tightening.words.front().words, "0.1 to 0.13"));
    }

    TEST_CASE("where the method does not use torque, no step and no check asks for one") {
        for (const auto& method : built_in().of<TighteningMethod>().rows) {
            const auto p = planned(edited(plain_plates, "torque wrench, friction class B", method.name));
            CAPTURE(method.name);
            bool asked = false;
            for (const auto& step : p.plan.steps) asked = asked || says(step.words, "N*m");
            for (const auto& each : p.plan.inspection) asked = asked || says(each.how + each.accept, "N*m");
            for (const auto& each : p.plan.retightening) asked = asked || says(each.how, "N*m");
            CHECK(asked == method.uses_torque);
            CHECK(p.plan.tightening.passes.empty() == !method.uses_torque);
            CHECK(p.plan.tightening.for_information.has_value() == !method.uses_torque);
            const bool governs = std::any_of(p.plan.tightening.words.begin(), p.plan.tightening.words.end(),
                                             [](const auto& line) { return says(line.words, "Torque does not decide here"); });
            CHECK(governs == !method.uses_torque);
        }
    }

    TEST_CASE("tubes are cut to their cavity, or to a length where they pass the walls; none where there are none") {
        CHECK(says(step_of(planned(sound_lap).plan, AssemblyStage::cut_tubes).words, "to its measured cavity within"));
        const auto through = planned(through_tubes);
        CHECK(says(step_of(through.plan, AssemblyStage::cut_tubes).words, "to 100.4 mm within 0.05 mm"));
        CHECK(says(step_of(through.plan, AssemblyStage::place_tubes).words, "0.2 mm out of both faces"));
        CHECK(count_of(planned(plain_plates).plan, AssemblyStage::cut_tubes) == 0);
        CHECK(count_of(planned(open_box).plan, AssemblyStage::place_tubes) == 0);
        // The same gap as the parts list tells.
        const auto p = planned(sound_lap);
        for (const auto& [piece, ordered] : ordered_pieces(*p.assessment, built_in()))
            if (piece.what == "tube") {
                const auto within = ordered.note.substr(ordered.note.find("within"));
                CHECK(says(step_of(p.plan, AssemblyStage::cut_tubes).words, within));
            }
    }

    TEST_CASE("whether the assessment counts on the re-tightening, and what the clamp comes to") {
        const auto counted = planned(sound_lap);
        CHECK(counted.plan.retightening_counts);
        CHECK(says(counted.plan.retightening_counted.words, print(Value(counted.assessment->state.clamp.retightened_least), 3)));
        CHECK(says(counted.plan.retightening_counted.words, print(Value(counted.assessment->state.clamp.crept_least), 3)));
        const auto left = planned(edited(sound_lap, "friction class B\"", "friction class B\"\nretighten = false"));
        CHECK(!left.plan.retightening_counts);
        CHECK(says(left.plan.retightening_counted.words, "does not count"));
        const auto soft = planned(edited(plain_plates, "material = \"jointing compound\"", "material = \"EPDM gasket\""));
        CHECK(!soft.plan.retightening_counts);
        CHECK(says(soft.plan.retightening_counted.words, "EPDM gasket keeps no clamp"));
    }

    TEST_CASE("resistance is measured where nothing but isolation joins the metals, and else it is told why not") {
        const auto one_side = planned(isolated_lap("one side"));
        CHECK(one_side.plan.resistance_test);
        CHECK(std::any_of(one_side.plan.inspection.begin(), one_side.plan.inspection.end(),
                          [](const auto& i) { return says(i.accept, "1 Mohm at least") && i.source.basis == Basis::practice; }));
        CHECK(count_of(one_side.plan, AssemblyStage::isolate_bolts) == 1);
        CHECK(says(planned(isolated_lap("both sides")).plan.no_resistance_test, "earth of the lamps"));
        const auto gasket = edited(plain_plates, "material = \"jointing compound\"", "material = \"EPDM gasket\"");
        CHECK(says(planned(gasket + "\n[corrosion]\nchassis-earth = \"one side\"\n").plan.no_resistance_test, "bolts join"));
        CHECK(says(planned(sound_lap).plan.no_resistance_test, "Nothing here isolates"));
    }

    TEST_CASE("a joint that fails is not to be built, and is told why") {
        CHECK(planned(sound_lap).plan.not_to_be_built.empty());
        const auto weak = planned(edited(sound_lap, "class = \"8.8\"", "class = \"4.6\""));
        CHECK(weak.plan.not_to_be_built.starts_with("The joint fails: "));
        CHECK(says(weak.plan.not_to_be_built, "times what is allowed"));
        const auto short_lived = planned(edited(sound_lap, "\"inland farm\", \"inland town\"", "\"launched, not rinsed\""));
        CHECK(says(short_lived.plan.not_to_be_built, "in \"launched, not rinsed\" bolts"));
        CHECK(short_lived.assessment->holds);
    }

    TEST_CASE("what is not exchanged without a review has the name it is ordered by") {
        const auto plan = planned(sound_lap).plan;
        const auto has = [&](const std::string& part, const std::string& designation) {
            return std::any_of(plan.no_substitution.begin(), plan.no_substitution.end(),
                               [&](const auto& p) { return p.part == part && p.designation.starts_with(designation); });
        };
        CHECK(has("bolt", "ISO 4014 - M16 x 200 - 8.8"));
        CHECK(has("nut", "ISO 4032 - M16 - 8"));
        CHECK(has("washer under the nut", "ISO 7089 - 16 - 200 HV"));
        CHECK(has("tube", "steel 28 x 5.5"));
        CHECK(has("finish and lubricant", "hot-dip galvanised, waxed"));
        CHECK(has("seal of the edges", "edges sealed"));
        const auto compound = planned(plain_plates).plan;
        CHECK(std::any_of(compound.no_substitution.begin(), compound.no_substitution.end(),
                          [](const auto& p) { return p.designation.starts_with("jointing compound"); }));
    }

    TEST_CASE("marks to be read on bolts and nuts") {
        CHECK(head_mark(planned(sound_lap).joint->bolt) == "8.8");
        CHECK(nut_mark(planned(sound_lap).joint->bolt) == "8Z or 8X");
        CHECK(nut_mark(planned(open_box).joint->bolt) == "8");
        const auto stainless = planned(
            edited(edited(sound_lap, "class = \"8.8\"", "class = \"A4-80\""), "hot-dip galvanised, waxed", "stainless, anti-seize"));
        CHECK(head_mark(stainless.joint->bolt) == "A4-80");
        CHECK(nut_mark(stainless.joint->bolt) == "A4-80");
    }
}
