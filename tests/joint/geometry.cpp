// SPDX-License-Identifier: MIT
#include "joint/joints.hpp"
#include "joint/reading.hpp"

#include <algorithm>

using namespace joint_tests;

namespace {

using Edits = std::vector<std::pair<std::string, std::string>>;

/// A joint that cannot be built: the text it is made from, the edits, and the message that must come.
struct Impossible {
    const char* what;
    const char* base;
    Edits edits;
    const char* code;
    const char* message;  ///< part of it
    const char* line;     ///< what stands in the line it points to
};

const std::string positions = R"(positions = [
    ["-480 mm", "0 mm"], ["-400 mm", "0 mm"], ["-320 mm", "0 mm"],
    ["320 mm", "0 mm"], ["400 mm", "0 mm"], ["480 mm", "0 mm"],
])";
const std::string four_bolts = R"(positions = [["-90 mm", "-60 mm"], ["90 mm", "-60 mm"], ["-90 mm", "60 mm"], ["90 mm", "60 mm"]])";
const std::string steel_tube = R"(material = "E355+N precision tube")";
const std::string rail = R"(material = "EN AW-6082-T6 extruded, up to 5 mm")";
const std::string washer = "[[part]]\nkind = \"washer\"\nseries = \"ISO 7089\"\n";
const std::string compound = "[[part]]\nkind = \"layer\"\nmaterial = \"jointing compound\"\n";
const std::string second_rail =
    "[[part]]\nkind = \"section\"\nname = \"second rail\"\nmaterial = \"EN AW-6082-T6 extruded, up to 5 mm\"\nwidth = \"80 mm\"\nheight = "
    "\"100 mm\"\n"
    "wall = \"5 mm\"\nsurface = \"blasted\"\ntube = {arrangement = \"none\"}\n\n[temperatures]";

std::string many(const std::string& text, int times) {
    std::string out;
    for (int i = 0; i < times; ++i) out += text;
    return out;
}

std::string bolts_in_a_row(int count) {
    std::string out = "positions = [";
    for (int i = 0; i < count; ++i) out += fmt::format("[\"{} mm\", \"0 mm\"], ", 50 * i);
    return out + "]";
}

std::string cases_like(int count) {
    std::string out = "[[load-case]]\nname = \"extra 0\"\nformat = \"dynamic\"\nload-factor = 1.0\n";
    for (int i = 1; i < count; ++i) out += fmt::format("[[load-case]]\nname = \"extra {}\"\nformat = \"dynamic\"\nload-factor = 1.0\n", i);
    return out;
}

const std::vector<Impossible>& impossible() {
    static const std::vector<Impossible> list{
        {"a bolt that does not pass its tube",
         lapped_rail,
         {{steel_tube, steel_tube + ", stock = \"steel 22 x 4\""}},
         "geometry.tube",
         "with its coat does not pass the tube's bore of 14 mm",
         "tube = "},
        {"a tube outside the cavity",
         lapped_rail,
         {{steel_tube, steel_tube + ", stock = \"steel 42 x 5\""}, {"[\"480 mm\", \"0 mm\"]", "[\"480 mm\", \"18 mm\"]"}},
         "geometry.cavity",
         "bolt 6 lies outside the cavity of 70 mm",
         "[[part]]"},
        {"a hole in the web",
         lapped_rail,
         {{"[\"480 mm\", \"0 mm\"]", "[\"480 mm\", \"29 mm\"]"}, {steel_tube, steel_tube + ", stock = \"steel 25 x 3.5\""}},
         "geometry.cavity",
         "lies outside the cavity",
         "[[part]]"},
        {"a hole over an edge",
         lapped_rail,
         {{"x-min = \"-530 mm\"", "x-min = \"-487 mm\""}},
         "geometry.edge",
         "the hole of bolt 1 at (-480 mm, 0 mm) runs over an edge of drawbar",
         "[[part]]"},
        {"a hole over the rail's end",
         lapped_rail,
         {{"x-max = \"540 mm\"", "x-max = \"485 mm\""}},
         "geometry.edge",
         "the hole of bolt 6",
         "[[part]]"},
        {"a grip longer than the bolt",
         lapped_rail,
         {{"size = \"M16\"", "size = \"M16\"\nlength = \"100 mm\""}},
         "geometry.grip",
         "the grip of 116 mm is longer than the bolt of 100 mm",
         "length = \"100 mm\""},
        {"a bolt that ends inside its nut",
         lapped_rail,
         {{"size = \"M16\"", "size = \"M16\"\nlength = \"130 mm\""}},
         "geometry.grip",
         "ends inside its nut",
         "length = \"130 mm\""},
        {"a nut beyond the thread",
         lapped_rail,
         {{"size = \"M16\"", "size = \"M16\"\nlength = \"165 mm\""}},
         "geometry.thread",
         "the nut runs out of thread",
         "length = \"165 mm\""},
        {"a grip beyond any standard length",
         lapped_rail,
         {{"height = \"100 mm\"", "height = \"290 mm\""}},
         "geometry.grip",
         "longer than any standard length",
         "[bolt]"},
        {"holes that overlap",
         lapped_rail,
         {{positions, "positions = [[\"0 mm\", \"0 mm\"], [\"15 mm\", \"0 mm\"]]"}},
         "geometry.overlap",
         "the holes of bolts 1 and 2 overlap",
         "[pattern]"},
        {"two bolts in one place",
         lapped_rail,
         {{positions, "positions = [[\"0 mm\", \"0 mm\"], [\"0 mm\", \"0 mm\"]]"}},
         "geometry.overlap",
         "overlap",
         "[pattern]"},
        {"heads that collide",
         lapped_rail,
         {{positions, "positions = [[\"0 mm\", \"0 mm\"], [\"20 mm\", \"0 mm\"]]"},
          {steel_tube, steel_tube + ", stock = \"steel 20 x 2\""}},
         "geometry.heads",
         "the heads of bolts 1 and 2 collide",
         "[pattern]"},
        {"washers that lie on one another",
         two_cheeks,
         {{"\"ISO 7089\"", "\"ISO 7094\""}},
         "geometry.heads",
         "the washers of bolts 1 and 3 collide: 44 mm apart, 56 mm outside diameter",
         "[pattern]"},
        {"tubes that collide",
         two_cheeks,
         {{"stock = \"steel 28 x 5\"", "stock = \"steel 42 x 5\""}, {"pitch-y = \"44 mm\"", "pitch-y = \"41 mm\""}},
         "geometry.heads",
         "the tubes of bolts 1 and 3 collide",
         "[pattern]"},
        {"a web where the head is",
         plain_plates,
         {{"lever-to-web = \"35 mm\"", "lever-to-web = \"9.9 mm\""}},
         "geometry.lever",
         "leaves no room for a head of 20.03 mm across corners",
         "lever-to-web"},
        {"a tube through the walls looser than the plates bear",
         through_tubes,
         {{"length = \"100.4 mm\"", "length-tolerance = \"0.3 mm\""}},
         "geometry.tube",
         "let plate and rail stand more than 1 mm apart",
         "tube = "},
        {"a load case without a load",
         plain_plates,
         {{"force = [\"0 kN\", \"0 kN\", \"-1.2 kN\"]", "force = [\"0 kN\", \"0 kN\", \"0 kN\"]"}},
         "load.none",
         "has neither force nor moment",
         "[[load-case]]"},
        {"a tube that falls through the hole",
         lapped_rail,
         {{steel_tube, steel_tube + ", stock = \"steel 25 x 4\""},
          {"surface = \"blasted\"", "surface = \"blasted\"\nhole-diameter = \"26 mm\""}},
         "geometry.tube",
         "falls through the wall's hole of 26 mm",
         "tube = "},
        {"a hole that does not pass the bolt",
         lapped_rail,
         {{"surface = \"hot-dip galvanised, sweep blasted\"",
           "surface = \"hot-dip galvanised, sweep blasted\"\nhole-diameter = \"15 mm\""}},
         "geometry.hole",
         "does not pass 16 mm",
         "hole-diameter"},
        {"a hole that does not pass the tube",
         through_tubes,
         {{"surface = \"mill finish\"", "surface = \"mill finish\"\nhole-diameter = \"24 mm\""}},
         "geometry.hole",
         "does not pass 25 mm",
         "hole-diameter"},
        {"a section without cavity",
         lapped_rail,
         {{"height = \"100 mm\"", "height = \"15 mm\""}},
         "geometry.section",
         "leave no cavity",
         "wall = "},
        {"a tube as long as the section is high, between its walls",
         lapped_rail,
         {{steel_tube, steel_tube + ", length = \"100 mm\""}},
         "geometry.tube",
         "does not go into a cavity of 90 mm",
         "tube = "},
        {"a tube that ends inside the far wall",
         through_tubes,
         {{"length = \"100.4 mm\"", "length = \"94 mm\""}},
         "geometry.tube",
         "does not reach through both walls",
         "tube = "},
        {"no stocked tube between the webs",
         lapped_rail,
         {{"width = \"80 mm\"", "width = \"29 mm\""}, {"y-min = \"-40 mm\", y-max = \"40 mm\"", "y-min = \"-40 mm\""}},
         "geometry.tube",
         "no stocked steel tube passes the bolt and fits between the webs",
         "tube = "},
        {"a washer inside the stack",
         lapped_rail,
         {{"[[part]]\nkind = \"section\"", washer + "[[part]]\nkind = \"section\""}},
         "part.washer",
         "washer inside the stack",
         "[[part]]"},
        {"two sections", lapped_rail, {{"[temperatures]", second_rail}}, "part.section", "only one hollow section", "[[part]]"},
        {"an empty outline",
         lapped_rail,
         {{"x-min = \"-530 mm\"", "x-min = \"-530 mm\", x-max = \"-540 mm\""}},
         "geometry.outline",
         "the outline of drawbar is empty",
         "outline = "},
        {"a rail without length",
         through_tubes,
         {{"x-max = \"600 mm\"", "x-max = \"600 mm\"\nx-min = \"600 mm\""}},
         "geometry.outline",
         "the outline of rail",
         "[[part]]"},
        {"an ambiguous alloy",
         lapped_rail,
         {{rail, "material = \"EN AW-6082-T6\""}},
         "name.ambiguous",
         "is no row of the table materials",
         "material = \"EN AW-6082-T6\""},
        {"an ambiguous grade",
         lapped_rail,
         {{"\"S355, up to 16 mm\"", "\"S355\""}},
         "name.ambiguous",
         "is no row of the table materials",
         "material = \"S355\""},
        {"a wall thicker than the material's row",
         lapped_rail,
         {{"wall = \"5 mm\"", "wall = \"5.1 mm\""}},
         "material.thickness",
         "does not cover a thickness of 5.1 mm",
         "EN AW-6082-T6 extruded, up to 5 mm"},
        {"a plate thinner than the material's row",
         lapped_rail,
         {{"\"S355, up to 16 mm\"", "\"S355, 16 to 40 mm\""}},
         "material.thickness",
         "does not cover a thickness of 10 mm",
         "S355, 16 to 40 mm"},
        {"no strengths beside a weld",
         lapped_rail,
         {{rail, "material = \"ASTM B221 6061-T6 extruded\"\nweld-affected = true"}},
         "material.haz",
         "has no strengths beside a weld",
         "weld-affected"},
        {"a tube described where there is none",
         lapped_rail,
         {{"arrangement = \"between the walls\"", "arrangement = \"none\""}},
         "tube.none",
         "but a tube is described",
         "tube = "},
        {"a tube through the walls without a size",
         through_tubes,
         {{", stock = \"steel 25 x 5\"", ""}},
         "tube.stock",
         "its size must be chosen",
         "tube = "},
        {"a tube without material", lapped_rail, {{", " + steel_tube, ""}}, "key.missing", "tube.material is missing", "tube = "},
        {"a tube stocked in another metal",
         lapped_rail,
         {{steel_tube, steel_tube + ", stock = \"aluminium 28 x 4\""}},
         "tube.material",
         "is stocked in aluminium, but the material is steel",
         "tube = "},
        {"two layers between two parts", plain_plates, {{compound, compound + compound}}, "part.layer", "more than one layer", "[[part]]"},
        {"no faying plane", plain_plates, {{"side = \"rail\"", "side = \"attached\""}}, "part.planes", "no faying plane", "[[part]]"},
        {"two parts of one name",
         two_cheeks,
         {{"\"inner cheek\"", "\"outer cheek\""}},
         "name.duplicate",
         "two parts are named",
         "name = \"outer cheek\""},
        {"two load cases of one name",
         lapped_rail,
         {{"\"push, 1.5 m g\"", "\"sideways, 0.5 m g\""}},
         "name.duplicate",
         "is given twice",
         "name = \"sideways, 0.5 m g\""},
        {"too many parts",
         plain_plates,
         {{"[[part]]\nkind = \"layer\"", many(compound, 20) + "[[part]]\nkind = \"layer\""}},
         "part.count",
         "at most 12",
         "[[part]]"},
        {"too many bolts",
         lapped_rail,
         {{positions, bolts_in_a_row(41)}, {"x-max = \"540 mm\"\n", ""}},
         "pattern.size",
         "41 bolts; at most 40",
         "[pattern]"},
        {"too many load cases",
         lapped_rail,
         {{"[[load-case]]", cases_like(60) + "[[load-case]]"}},
         "load.count",
         "at most 60",
         "[[load-case]]"},
        {"a pattern given twice",
         plain_plates,
         {{"[pattern]", "[pattern]\nrows = 2"}},
         "pattern.both",
         "one of the two is wanted",
         "[pattern]"},
        {"a pattern without bolts", lapped_rail, {{positions, "positions = []"}}, "pattern.empty", "at least one bolt", "positions = []"},
        {"rows without a pitch", two_cheeks, {{"pitch-y = \"44 mm\"\n", ""}}, "key.missing", "pitch-y is missing", "[pattern]"},
        {"a static load with a load factor",
         plain_plates,
         {{"format = \"static\"", "format = \"static\"\nload-factor = 1.0"}},
         "load.format",
         "counts the same allowance twice",
         "load-factor = 1.0"},
        {"a dynamic load without a load factor",
         two_cheeks,
         {{"load-factor = 1.35\n", ""}},
         "key.missing",
         "load-factor is missing",
         "[[load-case]]"},
        {"a moment that a single bolt cannot take",
         plain_plates,
         {{four_bolts, "positions = [[\"0 mm\", \"0 mm\"]]"},
          {"load-factor = 1.35\n", "load-factor = 1.35\nmoment = [\"0 N*m\", \"0 N*m\", \"3 N*m\"]\n"}},
         "geometry.moment",
         "which it cannot take",
         "[[load-case]]"},
        {"a force past a single bolt",
         plain_plates,
         {{four_bolts, "positions = [[\"0 mm\", \"1 mm\"]]"}},
         "geometry.moment",
         "which it cannot take",
         "[[load-case]]"},
        {"frost warmer than the workshop",
         lapped_rail,
         {{"coldest = \"-15 degC\"", "coldest = \"30 degC\""}},
         "temperature.order",
         "must rise in this order",
         "[temperatures]"},
        {"a friction band upside down",
         lapped_rail,
         {{"[temperatures]", "[overrides]\nthread-friction-low = 0.2\nthread-friction-high = 0.1\n[temperatures]"}},
         "overrides.band",
         "upside down",
         "[overrides]"},
        {"a high end of friction below the finish's low one",
         lapped_rail,
         {{"[temperatures]", "[overrides]\nreason = \"invented\"\nthread-friction-high = 0.03\n[temperatures]"}},
         "overrides.band",
         "the band of thread friction is upside down: from 0.08 (the finish's) to 0.03 (given here)",
         "[overrides]"},
        {"a locking nut that takes the torque",
         lapped_rail,
         {{"friction class B\"", "friction class B\"\ntorque = \"100 N*m\"\nprevailing-torque = \"60 N*m\""}},
         "geometry.torque",
         "more than half",
         "prevailing-torque"},
        {"a class not made in this size",
         lapped_rail,
         {{"class = \"8.8\"", "class = \"9.8\""}, {"\"M16\"", "\"M20\""}},
         "name.unknown",
         "9.8 is not made in size M20",
         "class = \"9.8\""},
        {"a nut that is not in the table",
         lapped_rail,
         {{"class = \"8.8\"", "class = \"8.8\"\nnut-class = \"7\""}},
         "name.unknown",
         "no nut of class \"7\"",
         "nut-class"},
        {"a washer not made in this size",
         lapped_rail,
         {{"\"ISO 7089\"", "\"DIN 6340\""}, {"\"M16\"", "\"M18\""}},
         "name.unknown",
         "DIN 6340 M18",
         "series = \"DIN 6340\""},
    };
    return list;
}

std::string line_of(const std::string& text, int number) {
    std::istringstream lines(text);
    std::string line;
    for (int i = 0; i < number; ++i)
        if (!std::getline(lines, line)) return "(no such line)";
    return line;
}

/// Whether the diagnostics hold the one that is wanted, at its place; else what they hold.
std::string missing(const Diagnostics& diagnostics, const std::string& text, const char* code, const char* message, const char* line) {
    std::string found;
    for (const auto& d : diagnostics.sorted()) {
        const auto there = line_of(text, d.at.line);
        if (d.code == code && d.message.find(message) != std::string::npos && d.at.file && *d.at.file == "shop.toml" && d.at.line >= 1 &&
            d.at.column >= 1 && there.find(line) != std::string::npos)
            return {};
        found += fmt::format("{} at {}:{} ({}): {}\n", d.code, d.at.line, d.at.column, there, d.message);
    }
    return found.empty() ? "no error at all" : found;
}

std::optional<Joint> read_text(const std::string& text) {
    Diagnostics diagnostics;
    auto joint = read_joint(text, "shop.toml", built_in(), diagnostics);
    INFO(diagnostics.text());
    CHECK(joint);
    return joint;
}

std::string changed(const char* base, const Edits& edits) {
    std::string text = base;
    for (const auto& [what, with] : edits) text = edited(text, what, with);
    return text;
}

}  // namespace

TEST_SUITE("joint/geometry") {
    TEST_CASE("what cannot be built is refused, each with its code and its line") {
        for (const auto& each : impossible()) {
            INFO(std::string(each.what));
            const auto text = changed(each.base, each.edits);
            Diagnostics diagnostics;
            const auto joint = read_joint(text, "shop.toml", built_in(), diagnostics);
            CHECK_FALSE(joint);
            CHECK(missing(diagnostics, text, each.code, each.message, each.line) == "");
        }
    }

    TEST_CASE("a slip factor that the table does not have is refused, unless the file gives one") {
        Tables poor = built_in();
        auto& rows = std::get<Table<SlipFactor>>(poor.all).rows;
        std::erase_if(rows, [](const auto& row) { return row.name == "blasted / hot-dip galvanised, sweep blasted"; });
        const auto text = std::string(lapped_rail);
        Diagnostics diagnostics;
        CHECK_FALSE(read_joint(text, "shop.toml", poor, diagnostics));
        CHECK(missing(diagnostics, text, "name.unknown", "has no pair \"hot-dip galvanised, sweep blasted\" and \"blasted\"",
                      "surface = \"blasted\"") == "");
        Diagnostics none;
        CHECK(read_joint(text + "\n[overrides]\nslip-factor = 0.2\nreason = \"invented test\"\n", "shop.toml", poor, none));
    }

    TEST_CASE("what just fits is accepted") {
        read_text(changed(lapped_rail, {{"x-min = \"-530 mm\"", "x-min = \"-488.8 mm\""}}));  // hole of 17.5 mm, 0.05 mm of metal
        read_text(changed(lapped_rail,
                          {{"size = \"M16\"", "size = \"M16\"\nlength = \"130.2 mm\""}}));  // nut of at least 14.1 mm on a grip of 116 mm
        read_text(
            changed(lapped_rail, {{"size = \"M16\"", "size = \"M16\"\nlength = \"159.9 mm\""}}));  // thread begins 0.1 mm before the nut
        read_text(changed(lapped_rail, {{"size = \"M16\"", "size = \"M16\"\nlength = \"200 mm\"\nfully-threaded = true"}}));
        read_text(changed(lapped_rail, {{steel_tube, steel_tube + ", stock = \"steel 42 x 5\""},
                                        {"[\"480 mm\", \"0 mm\"]", "[\"480 mm\", \"14 mm\"]"}}));  // 35 mm from the middle: at the web
        read_text(changed(lapped_rail, {{positions, "positions = [[\"0 mm\", \"0 mm\"], [\"30 mm\", \"0 mm\"]]"},
                                        {steel_tube, steel_tube + ", stock = \"steel 22 x 2\""}}));
    }

    TEST_CASE("a single bolt loaded through its own axis takes no moment, however the numbers are rounded") {
        const auto text = changed(plain_plates, {{four_bolts, R"(positions = [["0.7 mm", "0.1 mm"]])"}});
        // The line of the force passes through the bolt: (3 mm, 9 mm) from it, force in the same direction.
        const auto joint = read_text(text.substr(0, text.find("[[load-case]]")) +
                                     "[[load-case]]\nname = \"through the bolt\"\nformat = \"dynamic\"\nload-factor = 1.0\nat = [\"3.7 "
                                     "mm\", \"9.1 mm\", \"0 mm\"]\nforce = [\"10 N\", \"30 N\", \"0 N\"]\n");
        REQUIRE(joint);
        const auto assessment = assessed(*joint);
        CHECK(assessment->state.turning[0] == Turning::centroid);
        CHECK(assessment->passes);
    }

    TEST_CASE("a tube chosen by the program does not fall through the hole of the wall") {
        for (int hole = 18; hole <= 36; ++hole) {
            CAPTURE(hole);
            const auto joint = read_text(
                changed(lapped_rail, {{"surface = \"blasted\"", fmt::format("surface = \"blasted\"\nhole-diameter = \"{} mm\"", hole)},
                                      {"friction class B\"", "friction class B\"\nproof-utilisation = 0.3"}}));
            REQUIRE(joint);
            const auto assessment = assessed(*joint);
            REQUIRE(assessment->state.tube.present);
            REQUIRE(in_mm(assessment->state.tube.stock->outside_diameter) > hole);
            CHECK(find_check(*assessment, "tube-end-pressure")->outcome.utilisation >= 0);
        }
    }

    TEST_CASE("a tube through the walls that stands far out of them is refused or fails") {
        const auto text = changed(through_tubes, {{"length = \"100.4 mm\"", "length = \"300 mm\""}});
        Diagnostics diagnostics;
        const auto joint = read_joint(text, "shop.toml", built_in(), diagnostics);
        if (joint) CHECK_FALSE(assessed(*joint)->passes);
    }

    TEST_CASE("an edge that is not given is no edge, wherever the joint's origin lies") {
        // Measured from the coupling, the hanger's bolts stand six metres off.
        auto text = edited(std::string(two_cheeks), "rows = 2\ncolumns = 2\npitch-x = \"160 mm\"\npitch-y = \"44 mm\"",
                           R"(positions = [["6000 mm", "-22 mm"], ["6160 mm", "-22 mm"], ["6000 mm", "22 mm"], ["6160 mm", "22 mm"]])");
        text = edited_everywhere(edited_everywhere(text, "x-min = \"-120 mm\", x-max = \"120 mm\", ", ""), "at = [\"0 mm\"",
                                 "at = [\"6080 mm\"");
        read_text(text);
    }

    TEST_CASE("a joint without any plate or section is refused for that") {
        const auto text = std::string(plain_plates);
        const auto bare = text.substr(0, text.find("[[part]]")) + washer + washer + text.substr(text.find("[temperatures]"));
        Diagnostics diagnostics;
        CHECK_FALSE(read_joint(bare, "shop.toml", built_in(), diagnostics));
        REQUIRE(diagnostics.any());
        CHECK(diagnostics.sorted().front().code.substr(0, 5) == "part.");
    }

    TEST_CASE("the heel of bolts in one line lies no further off than the metal is known to reach") {
        // Plates that run on without a stated edge must not make the lever of the bolts longer, and so their force smaller.
        const auto text = std::string(plain_plates);
        const auto row =
            edited(text.substr(0, text.find("[[load-case]]")), four_bolts, R"(positions = [["-90 mm", "0 mm"], ["90 mm", "0 mm"]])") +
            "[[load-case]]\nname = \"turned over\"\nformat = \"dynamic\"\nload-factor = 1.0\nmoment = [\"2000 N*m\", \"0 N*m\", \"0 "
            "N*m\"]\n";
        const auto with_edges = read_text(row);
        const auto without =
            read_text(edited(edited(row, ", y-min = \"-90 mm\", y-max = \"90 mm\"", ""), ", y-min = \"-110 mm\", y-max = \"110 mm\"", ""));
        REQUIRE(with_edges);
        REQUIRE(without);
        const auto a = assessed(*with_edges), b = assessed(*without);
        CHECK(in_kN(a->state.load(0, 0).tension) == doctest::Approx(2.0 / (2 * 0.09)).epsilon(1e-6));
        CHECK(b->state.load(0, 0).tension >= a->state.load(0, 0).tension);
    }
}
