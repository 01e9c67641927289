// SPDX-License-Identifier: MIT
#include "assess/care.hpp"

#include "assess/sentences.hpp"

#include "joint/joints.hpp"
#include "joint/reading.hpp"
#include "quantity/text.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace joint_tests;

namespace {

struct Cared : WholeJoint {
    CarePlan plan;
};

Cared cared(const std::string& text) {
    Cared out{whole_joint(text), {}};
    out.plan = care_plan(*out.assessment, built_in());
    return out;
}

std::string living_in(const std::string& exposures) { return edited(sound_lap, "\"inland farm\", \"inland town\"", exposures); }

bool any_says(const std::vector<Statement>& list, const std::string& words) {
    return std::any_of(list.begin(), list.end(), [&](const auto& s) { return says(s.words, words); });
}

using joint_tests::untidy;

std::string untidy(const std::vector<Statement>& list) {
    std::string out;
    for (const auto& each : list) out += untidy(each.words);
    return out;
}

const Row<Care>& row(const std::string& name) { return *built_in().of<Care>().find(name); }

}  // namespace

TEST_SUITE("assess/care") {
    TEST_CASE("the worse the category, the shorter every interval") {
        const Row<Care>* before = nullptr;
        for (const auto& [category, name] : Words<Corrosivity>::all) {
            const auto& rows = built_in().of<Care>().rows;
            CHECK(std::count_if(rows.begin(), rows.end(), [wanted = category](const auto& r) { return r.category == wanted; }) == 1);
            const auto& now = row(std::string(name));
            CHECK(now.category == category);
            if (before != nullptr) {
                CHECK(now.wash <= before->wash);
                CHECK(now.inspection <= before->inspection);
                CHECK(now.torque_check <= before->torque_check);
            }
            before = &now;
        }
        CHECK(row("CX").wash < row("C1").wash);
    }

    TEST_CASE("each hard use has a row; nothing in the table is dressed as a standard's") {
        for (const auto& [use, name] : Words<HardUse>::all) {
            const auto& rows = built_in().of<Care>().rows;
            const bool there = std::any_of(rows.begin(), rows.end(), [wanted = use](const auto& r) { return r.use == wanted; });
            const std::string told(name);
            CHECK_MESSAGE(there, told);
        }
        for (const auto& r : built_in().of<Care>().rows) CHECK(r.source.basis == Basis::practice);
        Row<Care> both = row("C1");
        both.use = HardUse::mud;
        CHECK(Care::fault(both) != nullptr);
        both.use.reset();
        both.category.reset();
        CHECK(Care::fault(both) != nullptr);
    }

    TEST_CASE("intervals follow the category at the joint, and what the trailer is put to") {
        for (const auto& exposure : built_in().of<Exposure>().rows) {
            const auto c = cared(living_in('"' + exposure.name + '"'));
            REQUIRE(c.plan.exposures.size() == 1);
            const auto& here = c.plan.exposures.front();
            CAPTURE(exposure.name);
            REQUIRE(here.category.has_value());
            CHECK(*here.category == c.assessment->corrosion.exposures.front().atmosphere.joint);
            const auto& category = row(std::string(word_of(*here.category)));
            CHECK(here.wash <= category.wash);
            const bool put_to =
                exposure.road_salt != RoadSalt::none || exposure.launching != Launching::none || exposure.deposits == Deposits::left;
            CHECK(here.wash_after.empty() == !put_to);
            if (!put_to) {
                CHECK(here.wash == category.wash);
                CHECK(here.inspection == category.inspection);
                CHECK(here.torque_check == category.torque_check);
            }
        }
        const auto salted = cared(living_in("\"salted winter roads\"")).plan.strictest;
        CHECK(salted.wash <= row("salted roads").wash);
        CHECK(any_says(salted.wash_after, "salted roads, within days"));
        const auto launched = cared(living_in("\"launched, rinsed\"")).plan.strictest;
        CHECK(any_says(launched.wash_after, "each launching"));
        CHECK(any_says(launched.besides, "opens one joint"));
    }

    TEST_CASE("of several exposures the strictest wins, whatever their order") {
        const auto one = cared(living_in("\"C1\", \"CX\", \"salted winter roads\"")).plan;
        const auto other = cared(living_in("\"salted winter roads\", \"CX\", \"C1\"")).plan;
        REQUIRE(one.exposures.size() == 3);
        for (const auto* plan : {&one, &other}) {
            for (const auto& each : plan->exposures) {
                CHECK(plan->strictest.wash <= each.wash);
                CHECK(plan->strictest.inspection <= each.inspection);
                CHECK(plan->strictest.torque_check <= each.torque_check);
            }
            CHECK(plan->strictest.wash == row("CX").wash);
            CHECK(plan->strictest.category == Corrosivity::cx);
            CHECK(any_says(plan->strictest.wash_after, "salted roads"));
        }
        CHECK(one.exposures.front().wash == row("C1").wash);
    }

    TEST_CASE("where no exposure is given it is said, the worst category holds, and no life is told") {
        const auto plan = cared(lapped_rail).plan;
        CHECK(!plan.exposure_known);
        CHECK(plan.exposures.empty());
        CHECK(plan.parts.empty());
        CHECK(plan.strictest.wash == row("CX").wash);
        CHECK(plan.strictest.inspection == row("CX").inspection);
        CHECK(says(plan.note.words, "is not known"));
        CHECK(cared(sound_lap).plan.exposure_known);
    }

    TEST_CASE("lives are the outlook's, with their bands, the first to go first") {
        const auto c = cared(living_in("\"inland town\", \"salted winter roads\""));
        std::size_t at = 0;
        for (const auto& exposure : c.assessment->corrosion.exposures) {
            std::size_t firsts = 0;
            const PartOutlook* before = nullptr;
            for (std::size_t i = 0; i < exposure.members.size(); ++i, ++at) {
                const auto& part = c.plan.parts.at(at);
                CHECK(part.exposure == exposure.exposure->name);
                const auto same = std::find_if(exposure.members.begin(), exposure.members.end(), [&](const auto& m) {
                    return m.name == part.part && m.stake == part.stake && m.life == part.life;
                });
                REQUIRE(same != exposure.members.end());
                CHECK(part.life_low == same->life_low);
                CHECK(part.life_high == same->life_high);
                CHECK(part.outlives == same->passes);
                CHECK(says(part.words.words, part.part));
                CHECK(says(part.words.words, "promised") == !part.outlives);
                CHECK(part.words.source.basis == Basis::practice);
                if (before != nullptr) CHECK(before->life <= part.life);
                if (part.first) ++firsts;
                before = &part;
            }
            CHECK(firsts == 1);
            CHECK(c.plan.parts.at(at - exposure.members.size()).first);
        }
        CHECK(at == c.plan.parts.size());
    }

    TEST_CASE("what isolates is looked at as its row says, at its interval or sooner, and renewed") {
        const auto plan = cared(living_in("\"CX\"")).plan;
        const auto& seal = *built_in().of<IsolationElement>().find("edges sealed");
        const auto found = std::find_if(plan.look_for.begin(), plan.look_for.end(), [&](const auto& l) { return l.what == seal.inspect; });
        REQUIRE(found != plan.look_for.end());
        CHECK(found->every == min(seal.inspection, row("CX").inspection));
        CHECK(found->source.basis == Basis::practice);
        CHECK(any_says(plan.renew, "5 to 15 years"));
        CHECK(any_says(plan.renew, "does not count"));
        const auto kept =
            cared(edited(sound_lap, "edges = \"edges sealed\"", "edges = \"edges sealed\"\nmaintained = true\ncavity = \"waxed\"")).plan;
        CHECK(any_says(kept.renew, "the outlook counts on that"));
        CHECK(any_says(kept.renew, "Wax in the hollow"));
    }

    TEST_CASE("the owner turns no bolt where the sealant has set or torque says nothing") {
        const auto plain = cared(sound_lap).plan;
        CHECK(plain.wrench);
        CHECK(any_says(plain.may, "Set 120 N*m, turn the nut in the tightening direction"));
        for (const auto& text : {edited(plain_plates, "material = \"jointing compound\"", "material = \"polysulfide sealant\""),
                                 edited(plain_plates, "torque wrench, friction class B", "angle controlled")}) {
            const auto plan = cared(text).plan;
            CHECK(!plan.wrench);
            CHECK(!any_says(plan.may, "N*m"));
            CHECK(!any_says(plan.off_the_road, "30 deg"));
        }
    }

    TEST_CASE("every text is tidy; whatever the joint, welding and other bolts are not the owner's, and a crack ends the drive") {
        std::vector<std::string> texts{lapped_rail, two_cheeks, through_tubes, plain_plates, open_box, sound_lap};
        for (const auto& name : demo_names()) texts.push_back(demo(name));
        texts.push_back(living_in("\"launched, not rinsed\", \"surf beach\", \"brined winter roads\""));
        texts.push_back(edited(edited(living_in("\"C5\""), "class = \"8.8\"", "class = \"A4-80\""), "hot-dip galvanised, waxed",
                               "stainless, anti-seize"));
        texts.push_back(edited(living_in("\"C5\""), "hot-dip galvanised, waxed", "plain, oiled"));
        for (const auto& text : texts) {
            const auto c = cared(text);
            const auto& plan = c.plan;
            CAPTURE(c.joint->title);
            CHECK(untidy(plan.note.words) == "");
            CHECK(untidy(plan.may) + untidy(plan.may_not) + untidy(plan.off_the_road) + untidy(plan.after_shock) + untidy(plan.renew) ==
                  "");
            CHECK(untidy(plan.strictest.how) + untidy(plan.strictest.besides) == "");
            CHECK(!plan.strictest.how.empty());
            CHECK(plan.look_for.size() >= 4);
            for (const auto& each : plan.look_for) CHECK(untidy(each.what) + untidy(each.when_found) == "");
            for (const auto& each : plan.parts) CHECK(untidy(each.words.words) == "");
            CHECK(plan.first_checks.size() == 3);
            CHECK(any_says(plan.may_not, "Weld"));
            CHECK(any_says(plan.may_not, "Exchange a bolt"));
            CHECK(any_says(plan.off_the_road, "crack"));
            CHECK(any_says(plan.after_shock, "jack-knife"));
            CHECK(plan.not_to_be_built.empty() == c.assessment->passes);
        }
    }

    TEST_CASE("rust is told as the bolts show it") {
        const auto stainless =
            cared(edited(edited(sound_lap, "class = \"8.8\"", "class = \"A4-80\""), "hot-dip galvanised, waxed", "stainless, anti-seize"));
        const auto shows = [](const CarePlan& plan, const char* words) {
            return std::any_of(plan.look_for.begin(), plan.look_for.end(),
                               [&](const auto& l) { return l.place == "bolts" && says(l.what, words); });
        };
        CHECK(shows(cared(sound_lap).plan, "White rust"));
        CHECK(shows(stainless.plan, "Brown stains"));
        CHECK(!shows(stainless.plan, "White rust"));
    }

    TEST_CASE("intervals in words") {
        CHECK(every(hours(24)) == "every day");
        CHECK(every(hours(72)) == "every 3 days");
        CHECK(every(hours(168)) == "every week");
        CHECK(every(hours(4 * 168)) == "every 4 weeks");
        CHECK(every(hours(13 * 168)) == "every 3 months");
        CHECK(every(hours(26 * 168)) == "every 6 months");
        CHECK(every(years(0.5)) == "every 6 months");
        CHECK(every(years(1)) == "every year");
        CHECK(every(years(2)) == "every 2 years");
    }
}
