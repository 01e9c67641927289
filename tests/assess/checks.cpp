// SPDX-License-Identifier: MIT
#include "joint/joints.hpp"
#include "joint/reading.hpp"

#include <set>

using namespace joint_tests;

namespace {

using Edits = std::vector<std::pair<std::string, std::string>>;

/// One check: a joint in which it passes and the small change that makes it fail.
struct Case {
    const char* id;
    const char* base;  ///< text of the joint
    Edits edits;
};

const std::vector<Case>& cases() {
    static const std::string wrench = "method = \"torque wrench, friction class B\"";
    static const std::vector<Case> list{
        {"bolt-assembly-stress", lapped_rail, {{wrench, wrench + "\ntorque = \"180 N*m\""}}},
        {"bolt-working-stress", lapped_rail, {{wrench, wrench + "\ntorque = \"180 N*m\""}}},
        {"bolt-tension", lapped_rail, {{"\"7.65 kN\"]", "\"90 kN\"]"}}},
        {"bolt-shear", lapped_rail, {{"[\"-19.13 kN\", \"0 kN\"", "[\"-400 kN\", \"0 kN\""}}},
        {"bolt-interaction", lapped_rail, {{"\"7.65 kN\"]", "\"90 kN\"]"}}},
        {"bolt-fatigue", lapped_rail, {{"[\"3.96 kN\", \"0 kN\", \"1.27 kN\"]", "[\"3.96 kN\", \"0 kN\", \"60 kN\"]"}}},
        {"face-pressure", lapped_rail, {{"surface = \"blasted\"", "surface = \"blasted\"\nhole-diameter = \"20 mm\""}}},
        {"thread-stripping", lapped_rail, {{"\"8.8\"", "\"8.8\"\nnut-class = \"5\""}, {wrench, wrench + "\nproof-utilisation = 1.0"}}},
        {"nut-match", lapped_rail, {{"\"8.8\"", "\"8.8\"\nnut-class = \"6\""}}},
        {"slip", lapped_rail, {{"surface = \"blasted\"", "surface = \"mill finish\""}}},
        {"separation", lapped_rail, {{"\"7.65 kN\"]", "\"30 kN\"]"}}},
        {"bearing", two_cheeks, {{"[\"0 kN\", \"-15 kN\", \"0 kN\"]", "[\"0 kN\", \"-280 kN\", \"0 kN\"]"}}},
        {"tear-out", two_cheeks, {{"[\"0 kN\", \"-15 kN\", \"0 kN\"]", "[\"0 kN\", \"-380 kN\", \"0 kN\"]"}}},
        {"net-section", lapped_rail, {{"[\"-19.13 kN\", \"0 kN\"", "[\"-70 kN\", \"0 kN\""}}},
        {"block-tearing", two_cheeks, {{"[\"0 kN\", \"-15 kN\", \"0 kN\"]", "[\"0 kN\", \"-380 kN\", \"0 kN\"]"}}},
        {"edge-distance", two_cheeks, {{"y-min = \"-55 mm\"", "y-min = \"-40 mm\""}}},
        {"plate-prying",
         plain_plates,
         {{"thickness = \"8 mm\"", "thickness = \"2 mm\""}, {"[\"0 kN\", \"0.6 kN\", \"-2.4 kN\"]", "[\"0 kN\", \"0.6 kN\", \"24 kN\"]"}}},
        {"ply-fatigue", lapped_rail, {{"[\"3.96 kN\", \"0 kN\", \"1.27 kN\"]", "[\"70 kN\", \"0 kN\", \"1.27 kN\"]"}}},
        {"pull-through",
         plain_plates,
         {{"thickness = \"8 mm\"", "thickness = \"1.5 mm\""},
          {"[\"0 kN\", \"0.6 kN\", \"-2.4 kN\"]", "[\"0 kN\", \"0.6 kN\", \"80 kN\"]"}}},
        {"tube-yield", two_cheeks, {{"stock = \"steel 28 x 5\"", "stock = \"steel 22 x 2\""}}},
        // No tube of the stock is thin enough to buckle: the shop's own, laid over the table, is.
        {"tube-buckling",
         two_cheeks,
         {{"material = \"E355+N precision tube\", stock = \"steel 28 x 5\"",
           "material = \"EN AW-6060-T6 drawn tube, up to 20 mm\", stock = \"thin 60 x 0.5\", chamfer = \"0 mm\""},
          {"rows = 2\ncolumns = 2\npitch-x = \"160 mm\"\npitch-y = \"44 mm\"", "columns = 2\npitch-x = \"160 mm\""}}},
        {"tube-end-pressure", two_cheeks, {{"stock = \"steel 28 x 5\"", "stock = \"steel 28 x 3\""}}},
        {"tube-overlap",
         lapped_rail,
         {{"material = \"E355+N precision tube\"", "material = \"E355+N precision tube\", stock = \"steel 42 x 5\""}}},
        {"wall-closing", lapped_rail, {{"height-tolerance = \"0.2 mm\"", "height-tolerance = \"0.4 mm\""}}},
        {"tube-share", two_cheeks, {{"height-tolerance = \"0.1 mm\"", "height-tolerance = \"0.4 mm\""}}},
        {"tube-squareness", two_cheeks, {{"stock = \"steel 28 x 5\"", "stock = \"steel 28 x 5\", squareness = \"0.1 mm\""}}},
        {"section-crush", open_box, {{"\"3 N*m\"", "\"9 N*m\""}}},
        {"wall-fatigue", two_cheeks, {{"[\"0.5 kN\", \"-1.8 kN\", \"0.4 kN\"]", "[\"0.5 kN\", \"-1.8 kN\", \"10 kN\"]"}}},
        {"rail-section", two_cheeks, {{"[\"-3.6 kN\", \"-7.5 kN\", \"0 kN\"]", "[\"-120 kN\", \"-7.5 kN\", \"0 kN\"]"}}},
        {"rail-fatigue", two_cheeks, {{"[\"0.5 kN\", \"-1.8 kN\", \"0.4 kN\"]", "[\"30 kN\", \"-1.8 kN\", \"0.4 kN\"]"}}},
        {"wall-pull", lapped_rail, {{"\"7.65 kN\"]", "\"25 kN\"]"}}},
        {"layer-pressure", plain_plates, {{"material = \"jointing compound\"", "material = \"nylon gasket\""}}},
        {"layer-temperature", plain_plates, {{"coldest = \"-15 degC\"", "coldest = \"-35 degC\""}}},
        {"protrusion", lapped_rail, {{"size = \"M16\"", "size = \"M16\"\nlength = \"132 mm\""}}},
        {"free-thread", lapped_rail, {{"size = \"M16\"", "size = \"M16\"\nlength = \"155 mm\""}}},
    };
    return list;
}

/// The built-in tables with what a shop of our demo might lay over them.
const Tables& shop_tables() {
    static const Tables tables = [] {
        Tables own = built_in();
        auto thin = *own.of<StockTube>().find("aluminium 42 x 6");
        thin.name = "thin 60 x 0.5";
        thin.outside_diameter = mm(60);
        thin.wall = mm(0.5);
        std::get<Table<StockTube>>(own.all).rows.push_back(thin);
        return own;
    }();
    return tables;
}

std::unique_ptr<Assessment> assessment_of(const std::string& text, std::optional<Joint>& joint) {
    Diagnostics diagnostics;
    joint = read_joint(text, "case.toml", shop_tables(), diagnostics);
    if (!joint) throw std::runtime_error(diagnostics.text());
    return assessed(*joint);
}

}  // namespace

TEST_SUITE("assess/checks") {
    TEST_CASE("every check passes in one joint and fails in the same joint after a small change") {
        for (const auto& each : cases()) {
            INFO(std::string(each.id));
            const std::string text = each.base;
            std::optional<Joint> good, bad;
            const auto before = assessment_of(text, good);
            const auto* passes = find_check(*before, each.id);
            REQUIRE(passes != nullptr);
            CHECK(passes->status == Status::pass);
            CHECK(passes->outcome.utilisation > 0);
            auto changed = text;
            for (const auto& [what, with] : each.edits) changed = edited(changed, what, with);
            const auto after = assessment_of(changed, bad);
            const auto* fails = find_check(*after, each.id);
            REQUIRE(fails != nullptr);
            INFO("before ", passes->outcome.utilisation, ", after ", fails->outcome.utilisation);
            CHECK(fails->status == Status::fail);
            CHECK(fails->outcome.utilisation > passes->outcome.utilisation);
            CHECK_FALSE(after->passes);
            CHECK(unsound(*before) == "");
            CHECK(unsound(*after) == "");
        }
    }

    TEST_CASE("a tube through the walls that may be shorter than the section must bend them to carry") {
        std::optional<Joint> joint;
        const auto passes = assessment_of(through_tubes, joint);
        CHECK(find_check(*passes, "wall-closing")->outcome.utilisation == 0);
        CHECK(in_mm(passes->state.tube.length_check.gap_greatest) == doctest::Approx(-0.05));
        const auto flush = assessment_of(edited(through_tubes, "length = \"100.4 mm\"", "length = \"100 mm\""), joint);
        CHECK(in_mm(flush->state.tube.length_check.gap_greatest) == doctest::Approx(0.35));
        CHECK(find_check(*flush, "wall-closing")->status == Status::fail);
        CHECK_FALSE(flush->passes);
        // Left to the program, it stands out by both tolerances.
        const auto chosen = assessment_of(edited(through_tubes, ", length = \"100.4 mm\"", ""), joint);
        CHECK(in_mm(chosen->state.tube.length) == doctest::Approx(100.35));
        CHECK(chosen->passes);
    }

    TEST_CASE("a load that swings to its opposite is as bad written the other way round") {
        const auto text = demo("drawbar.toml");
        const auto turned = edited(edited(text, "[\"3.96 kN\", \"0 kN\", \"1.27 kN\"]", "[\"-3.96 kN\", \"0 kN\", \"-1.27 kN\"]"),
                                   "[\"3.96 kN\", \"0 kN\", \"-1.27 kN\"]", "[\"-3.96 kN\", \"0 kN\", \"1.27 kN\"]");
        std::optional<Joint> one, other;
        const auto a = assessment_of(text, one), b = assessment_of(turned, other);
        for (const auto& result : a->checks()) {
            const auto* same = find_check(*b, result.info->id);
            REQUIRE(same != nullptr);
            if (!result.outcome.applicable || result.where.part > 0) continue;
            CAPTURE(result.info->id);
            CHECK(same->outcome.utilisation == doctest::Approx(find_check(*a, result.info->id)->outcome.utilisation));
        }
        // The swing that presses one end pulls the other: bolt 8 by 1.36 kN, bolt 1 by 1.05 kN as written.
        CHECK(find_check(*a, "wall-fatigue")->where.bolt == 7);
    }

    TEST_CASE("plates on tubes through the walls turn about the tubes' rims, not about edges that touch nothing") {
        const auto wide =
            edited_everywhere(through_tubes, "y-min = \"-40 mm\", y-max = \"40 mm\"", "y-min = \"-60 mm\", y-max = \"60 mm\"");
        std::optional<Joint> one, other;
        const auto a = assessment_of(through_tubes, one), b = assessment_of(wide, other);
        REQUIRE(a->state.turning[2] == Turning::heel);
        for (int bolt = 0; bolt < 2; ++bolt)
            CHECK(in_kN(a->state.load(2, bolt).tension) == doctest::Approx(in_kN(b->state.load(2, bolt).tension)));
    }

    TEST_CASE("the rail's centre line lies half its height under the plate, or at z = 0 between two of them") {
        std::optional<Joint> one, both, under;
        (void)assessment_of(lapped_rail, one);
        CHECK(in_mm(one->rail_axis_z()) == doctest::Approx(-50));
        CHECK(assessment_of(two_cheeks, both)->passes);
        CHECK(in_mm(both->rail_axis_z()) == 0);
        // The attached plate lies at the nut; a plate of the rail's between counts with it.
        (void)assessment_of(through_tubes, under);
        CHECK(in_mm(under->rail_axis_z()) == doctest::Approx(-50));
        const auto packed =
            edited(through_tubes, "[[part]]\nkind = \"plate\"\nname = \"foot plate\"",
                   "[[part]]\nkind = \"plate\"\nname = \"packing\"\nmaterial = \"S355, up to 16 mm\"\nthickness = \"6 "
                   "mm\"\nsurface = \"hot-dip galvanised\"\nside = \"rail\"\n\n[[part]]\nkind = \"plate\"\nname = \"foot plate\"");
        (void)assessment_of(packed, under);
        CHECK(in_mm(under->rail_axis_z()) == doctest::Approx(-56));
    }

    TEST_CASE("a layer whose pressure cone falls through the largest hole fails") {
        std::optional<Joint> joint;
        const auto text = edited(plain_plates, "surface = \"mill finish\"", "surface = \"mill finish\"\nhole-diameter = \"40 mm\"");
        CHECK(find_check(*assessment_of(text, joint), "layer-pressure")->status == Status::fail);
    }

    TEST_CASE("block tearing takes a load with any lever as eccentric, and the same on either side") {
        const auto utilisation = [](const char* y) {
            std::optional<Joint> joint;
            auto text = edited(plain_plates, "at = [\"30 mm\", \"0 mm\", \"250 mm\"]\nforce = [\"0.84 kN\"",
                               fmt::format("at = [\"30 mm\", \"{} mm\", \"250 mm\"]\nforce = [\"0.84 kN\"", y));
            return find_check(*assessment_of(text, joint), "block-tearing")->outcome.utilisation;
        };
        CHECK(utilisation("0.5") > utilisation("0"));
        CHECK(utilisation("1") == doctest::Approx(utilisation("0.5")).epsilon(1e-9));
        CHECK(utilisation("-1") == doctest::Approx(utilisation("1")).epsilon(1e-9));
        CHECK(utilisation("1.1") == doctest::Approx(utilisation("1")).epsilon(1e-9));
    }

    TEST_CASE("a demand below nothing is no pass") {
        CHECK(limited(kN(-1), kN(2), Outcome::nowhere).utilisation == hopeless);
        CHECK(limited(kN(0), kN(0), Outcome::nowhere).utilisation == 0);
        CHECK(limited(kN(1), kN(0), Outcome::nowhere).utilisation == hopeless);
        CHECK(limited(kN(1), kN(-2), Outcome::nowhere).utilisation == hopeless);
        CHECK(limited(kN(1), kN(2), Outcome::nowhere).utilisation == doctest::Approx(0.5));
    }

    TEST_CASE("no check is without such a pair, and none is named that does not exist") {
        std::set<std::string> covered, known;
        for (const auto& each : cases()) CHECK_MESSAGE(covered.insert(each.id).second, each.id, " stands twice");
        for (const auto* info : all_checks()) {
            CHECK_MESSAGE(known.insert(std::string(info->id)).second, info->id, " is the id of two checks");
            CHECK_MESSAGE(covered.contains(std::string(info->id)), info->id, " has no joint that fails it");
        }
        for (const auto& id : covered) CHECK_MESSAGE(known.contains(id), id, " is no check");
    }

    TEST_CASE("every check has a kebab-case id and a title") {
        for (const auto* info : all_checks()) {
            INFO(std::string(info->id));
            CHECK(info->id.find_first_not_of("abcdefghijklmnopqrstuvwxyz-") == std::string_view::npos);
            CHECK_FALSE(info->title.empty());
        }
    }

    TEST_CASE("the demo joints pass") {
        for (const auto& name : demo_names()) {
            CAPTURE(name);
            std::optional<Joint> joint;
            const auto assessment = assessment_of(demo(name), joint);
            CHECK(assessment->passes);
            CHECK(unsound(*assessment) == "");
            bool is_static = false, is_dynamic = false, has_cycles = false;
            for (const auto& l : joint->load_cases) {
                is_static = is_static || l.format == LoadFormat::static_load;
                is_dynamic = is_dynamic || l.format == LoadFormat::dynamic_load;
                has_cycles = has_cycles || l.cycles;
            }
            CHECK(is_static);
            CHECK(is_dynamic);
            CHECK(has_cycles);
        }
    }
}
