// SPDX-License-Identifier: MIT
#include "input/toml_writer.hpp"
#include "joint/joint_file.hpp"
#include "joint/spoiler.hpp"

using namespace joint_tests;

namespace {

/// The joint is read and assessed.
std::optional<std::string> read_and_assess(const std::string& text, const std::string& file, Diagnostics& diagnostics) {
    const auto joint = read_joint(text, file, built_in(), diagnostics);
    if (!joint) return std::nullopt;
    return unsound(*assessed(*joint));
}

Node parsed(const std::string& name) {
    Diagnostics diagnostics;
    const auto root = parse_toml(demo(name), name, diagnostics);
    if (!root) throw std::runtime_error(diagnostics.text());
    return *root;
}

/// What must come of any text at all.
std::string judged(const std::string& text) {
    Diagnostics diagnostics;
    const auto joint = read_joint(text, "spoilt.toml", built_in(), diagnostics);
    if (joint) return unsound(*assessed(*joint));
    if (!diagnostics.any()) return "refused without a word";
    const auto lines = static_cast<int>(std::count(text.begin(), text.end(), '\n')) + 2;
    for (const auto& d : diagnostics.sorted())
        if (!d.at.file || *d.at.file != "spoilt.toml" || d.at.line < 1 || d.at.line > lines || d.at.column < 1)
            return "no place: " + d.message;
    return diagnostics.text().empty() ? "no text" : "";
}

}  // namespace

TEST_SUITE("joint/bad_input") {
    TEST_CASE("written again and unspoilt, every demo reads and comes to the same") {
        for (const auto& name : demo_names()) {
            INFO(name);
            Diagnostics diagnostics;
            const auto as_given = read_joint(demo(name), name, built_in(), diagnostics),
                       again = read_joint(TomlWriter(parsed(name), nullptr).text(), name, built_in(), diagnostics);
            REQUIRE_MESSAGE(as_given, diagnostics.text());
            REQUIRE_MESSAGE(again, diagnostics.text());
            CHECK(difference(*assessed(*as_given), *assessed(*again)) == "");
        }
    }

    TEST_CASE("every field spoilt in every way is refused with its place, or read and assessed to numbers") {
        int count = 0, refused = 0;
        std::set<std::string> fields;
        std::map<std::string, int> codes;
        for (const auto& name : demo_names()) {
            INFO(name);
            const Spoiler<JointFile> spoiler(parsed(name), name, read_and_assess);
            count += spoiler.count;
            refused += spoiler.refused;
            fields.insert(spoiler.fields.begin(), spoiler.fields.end());
            for (const auto& [code, times] : spoiler.codes) codes[code] += times;
            std::string first;
            for (std::size_t i = 0; i < std::min<std::size_t>(spoiler.faults.size(), 12); ++i) first += spoiler.faults[i] + '\n';
            CHECK_MESSAGE(spoiler.faults.empty(), spoiler.faults.size(), " faults, the first:\n", first);
        }
        std::string list;
        for (const auto& [code, times] : codes) list += fmt::format("{:7} {}\n", times, code);
        MESSAGE(count, " spoilt files, ", refused, " refused, ", fields.size(), " fields; codes:\n", list);
        CHECK(count > 1500);
    }

    TEST_CASE("a file cut off anywhere is refused with a place, or read") {
        for (const auto& name : demo_names()) {
            const auto text = demo(name);
            for (std::size_t end = 0; end < text.size(); end += 5) {
                const auto fault = judged(text.substr(0, end));
                CHECK_MESSAGE(fault.empty(), name, " cut after ", end, " bytes: ", fault);
            }
        }
    }

    TEST_CASE("a line lost, doubled or swapped with the next is refused with a place, or read") {
        for (const auto& name : demo_names()) {
            std::vector<std::string> lines;
            std::istringstream stream(demo(name));
            for (std::string line; std::getline(stream, line);) lines.push_back(line);
            const auto joined = [](const std::vector<std::string>& all) {
                std::string out;
                for (const auto& line : all) out += line + '\n';
                return out;
            };
            for (std::size_t i = 0; i + 1 < lines.size(); ++i) {
                auto lost = lines, doubled = lines, swapped = lines;
                lost.erase(lost.begin() + static_cast<std::ptrdiff_t>(i));
                doubled.insert(doubled.begin() + static_cast<std::ptrdiff_t>(i), lines[i]);
                std::swap(swapped[i], swapped[i + 1]);
                for (const auto* each : {&lost, &doubled, &swapped}) {
                    const auto fault = judged(joined(*each));
                    CHECK_MESSAGE(fault.empty(), name, ", line ", i + 1, ": ", fault);
                }
            }
        }
    }
}
