// SPDX-License-Identifier: MIT
#include "assess/comparison.hpp"

#include "joint/joints.hpp"
#include "joint/reading.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace joint_tests;

namespace {

struct Read {
    std::optional<Node> root;
    std::optional<WrittenJoint> written;
    std::optional<Joint> joint;
    std::unique_ptr<Assessment> assessment;

    explicit Read(const std::string& text) {
        Diagnostics diagnostics;
        root = parse_toml(text, "joint.toml", diagnostics);
        REQUIRE_MESSAGE(root, diagnostics.text());
        written = read_written(*root, built_in(), {}, {}, diagnostics);
        joint = read_joint(*root, built_in(), diagnostics);
        REQUIRE_MESSAGE(joint, diagnostics.text());
        assessment = std::make_unique<Assessment>();
        assess(*joint, *assessment);
        add_outlook(built_in(), *assessment);
    }
    [[nodiscard]] FileSide fields() const { return {fields_of(*written, *root), written->file}; }
};

}  // namespace

TEST_SUITE("assess/comparison") {
    TEST_CASE("a joint compared with itself: nothing changed") {
        const Read side(demo("drawbar.toml"));
        CHECK(changed_fields(side.fields(), side.fields()).empty());
        const auto checks = compared_checks(*side.assessment, *side.assessment);
        CHECK(checks.size() == static_cast<std::size_t>(std::count_if(side.assessment->checks().begin(), side.assessment->checks().end(),
                                                                      [](const CheckResult& r) { return r.outcome.applicable; })));
        for (const auto& check : checks) {
            REQUIRE(check.before != nullptr);
            CHECK(check.before->outcome.utilisation == check.after->outcome.utilisation);
            CHECK_FALSE(check.is_new_failure());
            CHECK_FALSE(check.is_mended());
        }
        for (const auto& life : compared_lives(*side.assessment, *side.assessment))
            CHECK(in_years(life.before->life) == in_years(life.after->life));
    }

    TEST_CASE("one value changed is one field; the checks it breaks are new failures, and mended the other way round") {
        const Read before(demo("drawbar.toml")), after(edited(demo("drawbar.toml"), "class = \"8.8\"", "class = \"4.6\""));
        const auto fields = changed_fields(before.fields(), after.fields());
        REQUIRE(fields.size() == 1);
        CHECK(fields[0].field == "bolt.class");
        CHECK(fields[0].before == "8.8");
        CHECK(fields[0].after == "4.6");
        std::size_t broken = 0, mended = 0;
        for (const auto& check : compared_checks(*before.assessment, *after.assessment)) broken += check.is_new_failure() ? 1 : 0;
        for (const auto& check : compared_checks(*after.assessment, *before.assessment)) mended += check.is_mended() ? 1 : 0;
        CHECK(broken > 0);
        CHECK(broken == mended);
    }

    TEST_CASE("a part put between moves the others' numbers, not their names") {
        const auto text = demo("drawbar.toml");
        const Read before(text),
            after(edited(text, "[[part]]\nkind = \"section\"",
                         "[[part]]\nkind = \"layer\"\nmaterial = \"jointing compound\"\n\n[[part]]\nkind = \"section\""));
        const auto fields = changed_fields(before.fields(), after.fields());
        REQUIRE(fields.size() == 1);
        CHECK(fields[0].field == "layer jointing compound: material");
        CHECK_FALSE(fields[0].before);
    }

    TEST_CASE("exposures that only one side has are not compared") {
        const Read before(demo("drawbar.toml")), after(edited(demo("drawbar.toml"), "\"inland farm\", \"inland town\"", "\"inland town\""));
        for (const auto& life : compared_lives(*before.assessment, *after.assessment)) CHECK(life.exposure == "inland town");
    }
}
