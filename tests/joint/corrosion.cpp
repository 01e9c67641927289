// SPDX-License-Identifier: MIT
#include "joint/joints.hpp"
#include "joint/reading.hpp"
#include "joint/resolve.hpp"

#include <doctest/doctest.h>

using namespace joint_tests;

namespace {

const std::string good_site = R"(name = "our bay"
description = "where the buyer lives"
temperature = "17 degC"
humidity = "74 %"
sulfur-dioxide = "2 mg/m2/d"
distance = "150 m"
shore = "sheltered water"
)";

/// The diagnostics of a site file; empty where it reads.
std::string said(const std::string& text) {
    Diagnostics diagnostics;
    const auto site = read_site(text, "site.toml", diagnostics);
    CHECK(site.has_value() != diagnostics.any());
    return diagnostics.any() ? diagnostics.text() : "";
}

/// The diagnostics of the lapped rail with a [corrosion] table; files beside it are the good site and a bad one.
std::string joint_said(const std::string& corrosion, const std::string& base = lapped_rail) {
    Diagnostics diagnostics;
    const FileReader files = [](const std::string& path) -> std::optional<NamedText> {
        if (path == "bay.toml") return NamedText{"bay.toml", good_site};
        if (path == "bad.toml") return NamedText{"bad.toml", "name = \"x\"\nhumidty = 0.7\n"};
        return std::nullopt;
    };
    const auto joint = read_joint(base + "\n[corrosion]\n" + corrosion, "joint.toml", built_in(), diagnostics, files);
    CHECK(joint.has_value() != diagnostics.any());
    return diagnostics.any() ? diagnostics.text() : "";
}

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

}  // namespace

TEST_SUITE("joint/corrosion") {
    TEST_CASE("a site file is an exposure of one's own") {
        Diagnostics diagnostics;
        const auto site = read_site(good_site, "site.toml", diagnostics);
        REQUIRE_MESSAGE(site, diagnostics.text());
        CHECK(site->name == "our bay");
        CHECK(in_degC(*site->temperature) == doctest::Approx(17));
        CHECK(*site->humidity == doctest::Approx(0.74));
        CHECK(site->rain == Rain::sheltered);
        CHECK(said(good_site) == "");
    }

    TEST_CASE("sites that cannot be") {
        const std::string base = good_site;
        CHECK(has(said(edited(base, "humidity", "humidty")), "the nearest known key is \"humidity\""));
        CHECK(has(said(edited(base, "17 degC", "17")), "site.toml:3:"));
        CHECK(has(said(edited(base, "17 degC", "17 K*m")), "temperature"));
        CHECK(has(said(edited(base, "74 %", "740 %")), "is accepted"));
        CHECK(has(said(edited(base, "2 mg/m2/d", "2 mg/m2")), "a deposition is wanted"));
        CHECK(has(said(edited(base, "sheltered water", "sheltered watr")), "the nearest is \"sheltered water\""));
        CHECK(has(said(base + "category = \"C3\"\n"), "one of the two is wanted"));
        CHECK(has(said(base + "chloride = \"20 mg/m2/d\"\n"), "given twice"));
        CHECK(has(said(edited(base, "distance = \"150 m\"\n", "")), "site.toml:6:9: error: shore is given without distance"));
        CHECK(has(said(edited(base, "temperature = \"17 degC\"\n", "")),
                  "temperature is missing: without a category the whole climate is wanted"));
        CHECK(has(said("name = \"x\"\ndescription = \"y\"\ndistance = \"1 km\"\n"), "4 errors"));
        CHECK(has(said(edited(base, "name = \"our bay\"\n", "")), "name is missing"));
        CHECK(has(said(edited(base, "150 m", "1 m")), "distance is 1000 mm"));
        CHECK(has(said(base + "road-salt = \"pepper\"\n"), "accepted are"));
        CHECK(has(said(base + "immersion = \"9000 h\"\n"), "is accepted"));
        CHECK(has(said(edited(base, "our bay", "a\\u001bb")), "control"));
        CHECK(has(said("name = [1]\nhumidity = true\n"), "2 errors") == false);  // and description besides
        CHECK(has(said("name = [1]\nhumidity = true\n"), "3 errors"));
        CHECK(has(said(""), "name is missing"));
        CHECK(has(said("name = \"x\"\ndescription = \"y\"\n"), "neither a category nor a climate"));
        CHECK(said("name = \"x\"\ndescription = \"y\"\ncategory = \"C4\"\n") == "");
    }

    TEST_CASE("exposures of a joint: rows of the table and site files, mistakes at their places") {
        CHECK(joint_said("exposures = [\"inland farm\", \"bay.toml\"]") == "");
        CHECK(joint_said("") == "");
        CHECK(has(joint_said("exposures = [\"surf cost\"]"), "the nearest is \"surf coast\""));
        CHECK(has(joint_said("exposures = [\"C3\", \"C3\"]"), "given twice"));
        CHECK(has(joint_said("exposures = [\"nowhere.toml\"]"), "cannot be read"));
        CHECK(has(joint_said("exposures = [\"bad.toml\"]"), "bad.toml:2:1: error: humidty is not a known key"));
        CHECK(has(joint_said("exposures = \"C3\""), "a list is wanted"));
        CHECK(has(joint_said("exposures = [3]"), "text in quotes"));
        CHECK(has(joint_said("exposures = [3]"), "1 error;"));
        CHECK(has(joint_said("exposures = [\"bay.toml\", \"./bay.toml\"]"), "cannot be read"));
        CHECK(
            has(joint_said("", edited(lapped_rail, "name = \"drawbar\"", "name = \"bolts\"")), "would be taken for the joint's own bolts"));
        CHECK(has(joint_said("exposures = [\"C3\"]\nedges = \"edges seeled\""), "the nearest is \"edges sealed\""));
        CHECK(
            has(joint_said("edges = \"bare bolt\""), "an element for the bolt; for the edges there are \"edges open\", \"edges sealed\""));
        CHECK(has(joint_said("fixing = \"EPDM gasket\""), "an element for the faying faces"));
        CHECK(has(joint_said("chassis-earth = \"left\""), "accepted are \"both sides\", \"one side\""));
        CHECK(has(joint_said("cavity = \"full\""), "accepted are"));
        CHECK(has(joint_said("maintained = 1"), "true or false"));
        CHECK(has(joint_said("exposure = [\"C3\"]"), "the nearest known key is \"exposures\""));
        CHECK(has(joint_said("exposures = [\"surf cost\"]\nedges = \"x\"\ncavity = 3"), "errors; nothing was written"));
    }

    TEST_CASE("without a reader of files a site file is refused, with the reason") {
        Diagnostics diagnostics;
        CHECK(!read_joint(std::string(lapped_rail) + "\n[corrosion]\nexposures = [\"bay.toml\"]\n", "joint.toml", built_in(), diagnostics));
        CHECK(has(diagnostics.text(), "not on standard input"));
    }

    TEST_CASE("zinc on what is no carbon steel, under what is no paint") {
        const std::string base = lapped_rail;
        CHECK(has(joint_said("", edited(base, "material = \"E355+N precision tube\"", "material = \"316 tube\", coating = \"ISO 10684\"")),
                  "tube.coating is zinc"));
        CHECK(has(joint_said("", edited(base, "material = \"E355+N precision tube\"",
                                        "material = \"E355+N precision tube\", coating = \"ISO 1641, over 6 mm\"")),
                  "the nearest is \"ISO 1461, over 6 mm\""));
        CHECK(has(joint_said("", edited(base, "thickness = \"10 mm\"", "thickness = \"10 mm\"\ngalvanised = true")),
                  "under paint or powder"));
        CHECK(joint_said("", edited(edited(base, "thickness = \"10 mm\"", "thickness = \"10 mm\"\ngalvanised = true"),
                                    "hot-dip galvanised, sweep blasted", "painted")) == "");
    }

    TEST_CASE("a sleeve widens the rail's holes and the tube's bore") {
        Diagnostics diagnostics;
        const auto bare = read_joint(lapped_rail, "joint.toml", built_in(), diagnostics);
        const auto washer = [](const std::string& text) {
            return text.substr(0, text.rfind("[[part]]")) + "[[part]]\nkind = \"layer\"\nmaterial = \"nylon gasket\"\n\n" +
                   text.substr(text.rfind("[[part]]"));
        };
        CHECK(has(joint_said("fixing = \"nylon sleeve and shoulder washer\""),
                  "isolates nothing: the nut rests on the rail without a layer"));
        const auto sleeved = read_joint(washer(lapped_rail) + "\n[corrosion]\nfixing = \"nylon sleeve and shoulder washer\"\n",
                                        "joint.toml", built_in(), diagnostics);
        REQUIRE_MESSAGE(sleeved, diagnostics.text());
        CHECK(in_mm(sleeved->near_wall()->hole_diameter - bare->near_wall()->hole_diameter) == doctest::Approx(2));
        CHECK(sleeved->plies.front().hole_diameter == bare->plies.front().hole_diameter);
        for (const auto& tube : sleeved->section->tube.candidates)
            CHECK(tube.outside_diameter - 2.0 * tube.wall >= sleeved->bolt.thread.diameter + mm(2.2) - um(1));
    }
}
