// SPDX-License-Identifier: MIT
#include "joint/written_fields.hpp"

#include "joint/joints.hpp"
#include "joint/reading.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace joint_tests;

namespace {

std::vector<WrittenField> fields(const std::string& text) {
    Diagnostics diagnostics;
    const auto root = parse_toml(text, "joint.toml", diagnostics);
    REQUIRE_MESSAGE(root, diagnostics.text());
    const auto written = read_written(
        *root, built_in(),
        [](const std::string& path) -> std::optional<NamedText> {
            return NamedText{path, demo(path)};
        },
        {}, diagnostics);
    REQUIRE_MESSAGE(written, diagnostics.text());
    return fields_of(*written, *root);
}

std::size_t leaves(const Node& node) {
    if (node.kind == Node::Kind::table) {
        std::size_t n = 0;
        for (const auto& entry : node.entries) n += leaves(entry.value);
        return n;
    }
    if (node.kind == Node::Kind::array &&
        std::any_of(node.items.begin(), node.items.end(), [](const Node& n) { return n.kind == Node::Kind::table; })) {
        std::size_t n = 0;
        for (const auto& item : node.items) n += leaves(item);
        return n;
    }
    return 1;
}

const WrittenField* find(const std::vector<WrittenField>& list, const std::string& path) {
    const auto found = std::find_if(list.begin(), list.end(), [&](const WrittenField& f) { return f.path == path; });
    return found == list.end() ? nullptr : &*found;
}

}  // namespace

TEST_SUITE("joint/written_fields") {
    TEST_CASE("every value of every demo file is told once, at its line") {
        for (const auto& name : demo_names()) {
            const auto text = demo(name);
            const auto list = fields(text);
            Diagnostics diagnostics;
            const auto root = parse_toml(text, name, diagnostics);
            std::size_t kinds = 0;
            for (const auto& part : root->find("part")->items) kinds += part.find("kind") != nullptr ? 1 : 0;
            CHECK(list.size() == leaves(*root) - kinds);  // the kind chooses the record and is no field of it
            std::vector<std::string> lines;
            std::stringstream stream(text);
            for (std::string line; std::getline(stream, line);) lines.push_back(line);
            for (const auto& field : list) {
                CHECK_FALSE(field.meaning.empty());
                const auto key = field.path.substr(field.path.find_last_of('.') + 1);
                CHECK_MESSAGE(lines[static_cast<std::size_t>(field.at.line) - 1].find(key) != std::string::npos, field.path);
            }
        }
    }

    TEST_CASE("values are told with their units, lists on one line") {
        const auto list = fields(demo("drawbar.toml"));
        REQUIRE(find(list, "part[2].wall") != nullptr);
        CHECK(find(list, "part[2].wall")->value == "8 mm");
        CHECK(find(list, "load-case[3].force")->value == "-19.13 kN, 0 N, 0 N");
        CHECK(find(list, "corrosion.exposures")->value == "inland farm; inland town");
        CHECK(find(list, "tightening.torque") == nullptr);  // left to the program
    }

    TEST_CASE("load cases of a trailer file are not told as the joint file's") {
        const auto list = fields(demo("drawbar-from-trailer.toml"));
        CHECK(find(list, "loads") != nullptr);
        CHECK(find(list, "load-case[0].name") == nullptr);
    }
}
