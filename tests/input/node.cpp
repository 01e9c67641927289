// SPDX-License-Identifier: MIT
#include "input/node.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <rapidcheck.h>

#include <cmath>
#include <string>
#include <vector>

using namespace faywright;
using namespace std::string_literals;

namespace {

/// The one refusal of a text: code, place and message on a line.
std::string refusal(const std::string& text) {
    Diagnostics diagnostics;
    const auto node = parse_toml(text, "joint.toml", diagnostics);
    if (node) return diagnostics.any() ? "a node and an error" : "accepted";
    const auto all = diagnostics.sorted();
    if (all.empty()) return "nothing, and no error";
    return fmt::format("{} {}:{} {}", all.front().code, all.front().at.line, all.front().at.column, all.front().message);
}

std::string message(const std::string& text) {
    Diagnostics diagnostics;
    (void)parse_toml(text, "joint.toml", diagnostics);
    return diagnostics.text();
}

Node accepted(const std::string& text) {
    Diagnostics diagnostics;
    auto node = parse_toml(text, "joint.toml", diagnostics);
    REQUIRE_MESSAGE(node.has_value(), diagnostics.text());
    CHECK_FALSE(diagnostics.any());
    return *node;
}

std::string place(const TextPosition& at) { return fmt::format("{}:{}+{}", at.line, at.column, at.width); }

/// Where the value stands: line, column and width.
std::string place(const Node& root, std::string_view path) {
    const Node* node = root.locate(path);
    return node == nullptr ? "nowhere" : place(node->at);
}

std::string key_place(const Node& table, std::string_view key) {
    for (const auto& entry : table.entries)
        if (entry.key == key) return place(entry.at);
    return "nowhere";
}

bool is_printable(const std::string& text) {
    for (const char c : text)
        if ((static_cast<unsigned char>(c) < 0x20 && c != '\n') || c == 0x7f) return false;
    return true;
}

const std::string all_kinds = R"(title = "honey"
count = 4
big = 1_000
share = -0.5
on = true
day = 1979-05-27
list = [1, "two", [3]]
inline = {b = 1, a = "x"}
[bolt]
size = "M12"
[[part]]
kind = "plate"
[[part]]
kind = "washer"
[part.hole]
d = "13 mm"
)";

}  // namespace

TEST_SUITE("input/node: values and places") {
    TEST_CASE("every kind of value") {
        const auto root = accepted(all_kinds);
        CHECK(root.kind == Node::Kind::table);
        CHECK(root.find("title")->kind == Node::Kind::string);
        CHECK(root.find("title")->text == "honey");
        CHECK(root.find("count")->number == 4.0);
        CHECK(root.find("big")->number == 1000.0);
        CHECK(root.find("share")->number == -0.5);
        CHECK(root.find("on")->kind == Node::Kind::boolean);
        CHECK(root.find("on")->boolean);
        CHECK(root.find("day")->kind == Node::Kind::other);
        CHECK(root.locate("list[2][0]")->number == 3.0);
        CHECK(root.locate("inline.a")->text == "x");
        CHECK(root.locate("part[1].kind")->text == "washer");
        CHECK(root.locate("part[1].hole.d")->text == "13 mm");
        CHECK(root.locate("part[2]") == nullptr);
        CHECK(root.locate("part[0].hole") == nullptr);
        CHECK(root.find("nothing") == nullptr);
        CHECK(kind_name(root.find("day")->kind) == "a date or time");
        CHECK(std::isinf(accepted("a = -inf\n").find("a")->number));
        CHECK(std::isnan(accepted("a = nan\n").find("a")->number));
    }

    TEST_CASE("keys keep the order of the file") {
        std::string order;
        for (const auto& entry : accepted(all_kinds).entries) order += entry.key + ' ';
        CHECK(order == "title count big share on day list inline bolt part ");
        CHECK(accepted("a = {z = 1, y = 2, x = 3}\n").find("a")->entries.front().key == "z");
    }

    TEST_CASE("line, column and width of values and keys") {
        const auto root = accepted(all_kinds);
        CHECK(place(root.at) == "1:1+1");
        CHECK(place(root, "title") == "1:9+7");
        CHECK(key_place(root, "title").substr(0, 4) == "1:1+");
        CHECK(place(root, "share") == "4:9+4");
        CHECK(place(root, "list[1]") == "7:12+5");
        CHECK(place(root, "list[2][0]").substr(0, 5) == "7:20+");
        CHECK(place(root, "inline.a") == "8:22+3");
        CHECK(place(root, "bolt.size") == "10:8+5");
        CHECK(place(root, "part[0]").substr(0, 5) == "11:1+");
        CHECK(place(root, "part[1].kind") == "14:8+8");
        CHECK(place(root, "part[1].hole.d") == "16:5+7");
        CHECK(key_place(*root.locate("part[1].hole"), "d").substr(0, 5) == "16:1+");
    }

    TEST_CASE("columns count characters, also behind letters of several bytes") {
        // Two, two, three and four bytes.
        const auto root = accepted("x = {n = \"\u00e4\u00f6\u20ac\U0001f41d\", m = 5, k = \"q\"}\n");
        CHECK(root.locate("x.n")->text == "\u00e4\u00f6\u20ac\U0001f41d");
        CHECK(place(root, "x.n") == "1:10+6");
        CHECK(key_place(*root.find("x"), "m").substr(0, 5) == "1:18+");
        CHECK(place(root, "x.m").substr(0, 5) == "1:22+");
        CHECK(place(root, "x.k") == "1:29+3");
        CHECK(place(accepted("# h\u00f6ney\n\n  a = \"\u00b5m\" # \u00b5\nb = \"x\"\n"), "b") == "4:5+3");
    }

    TEST_CASE("a byte-order mark and line ends of either kind shift nothing") {
        CHECK(place(accepted("\xef\xbb\xbf"
                             "a = \"x\"\n"),
                    "a") == "1:5+3");
        const auto root = accepted("a = 1\r\nb = \"x\"\r\n\r\n[c]\r\nd = \"y\"\r\n");
        CHECK(place(root, "b") == "2:5+3");
        CHECK(place(root, "c.d") == "5:5+3");
        CHECK(root.locate("c.d")->text == "y");
    }

    TEST_CASE("an empty file is an empty table") {
        CHECK(accepted("").entries.empty());
        CHECK(accepted("\n# nothing\n").entries.empty());
        CHECK(accepted("\xef\xbb\xbf").entries.empty());
    }

    TEST_CASE("letters of any language stand in quotes and comments") {
        CHECK(accepted("a = 'h\u00f6ney'  # \u8702\n").find("a")->text == "h\u00f6ney");
        CHECK(accepted("a = \"\"\"\n\u00e4\n\u00f6\"\"\"\nb = '''\u00e4'''\n").find("b")->text == "\u00e4");
        CHECK(accepted("a = \"quote \\\" \u00e4\"\n").find("a")->text == "quote \" \u00e4");
        CHECK(accepted("\"\u00e4\" = 1\n").find("\u00e4")->number == 1.0);
    }

    TEST_CASE("one value of the command line") {
        Diagnostics diagnostics;
        const auto value = parse_toml_value("[[\"1 mm\", 2]]", "command line", diagnostics);
        REQUIRE(value.has_value());
        CHECK(value->items.front().items.front().text == "1 mm");
        CHECK_FALSE(parse_toml_value("1\nb = 2", "command line", diagnostics).has_value());
        CHECK_FALSE(parse_toml_value("", "command line", diagnostics).has_value());
        CHECK_FALSE(parse_toml_value("[", "command line", diagnostics).has_value());
        CHECK(diagnostics.count() == 3);
    }
}

TEST_SUITE("input/node: hostile text") {
    TEST_CASE("control characters, wherever they stand") {
        CHECK(refusal("a = 1\0b"s) == "syntax.character 1:6 a control character stands here");
        CHECK(refusal("a = \"x\0y\"\n"s) == "syntax.character 1:7 a control character stands here");
        CHECK(refusal("a = 1\nb = \"\x01\"\n") == "syntax.character 2:6 a control character stands here");
        CHECK(refusal("# \x1b[31m\n") == "syntax.character 1:3 a control character stands here");
        CHECK(refusal("a = \"\u00e4\x7f\"\n") == "syntax.character 1:7 a control character stands here");
        CHECK(refusal("[[\x01") == "syntax.character 1:3 a control character stands here");
        CHECK(refusal("\0"s) == "syntax.character 1:1 a control character stands here");
        CHECK(refusal("\ta = 1\n") == "accepted");
    }

    TEST_CASE("bytes that are no UTF-8") {
        for (const auto& bad :
             {"\xff"s, "\x80"s, "\xc3"s, "\xc0\xaf"s, "\xe0\x80\x80"s, "\xed\xa0\x80"s, "\xf4\x90\x80\x80"s, "\xf8\x88\x80\x80\x80"s}) {
            CHECK(refusal("a = \"" + bad + "\"\n") == "syntax.character 1:6 the file is not valid UTF-8 here");
            CHECK(refusal("a = 1 # " + bad) == "syntax.character 1:9 the file is not valid UTF-8 here");
        }
    }

    TEST_CASE("letters outside quotes that no key has") {
        const std::string phrase = "a character outside the English alphabet stands here outside quotes";
        CHECK(refusal("\xef\xbb\xbd = 1\n") == "syntax.character 1:1 " + phrase);  // U+FEFD
        CHECK(refusal("a = \xef\xbb\xbd\n") == "syntax.character 1:5 " + phrase);
        CHECK(refusal("a = 1\n\xef\xbb\xbf"
                      "b = 2\n") == "syntax.character 2:1 " + phrase);
        CHECK(refusal("\u00e4 = 1\n") == "syntax.character 1:1 " + phrase);
        CHECK(refusal("a = 1\u00a0\n") == "syntax.character 1:6 " + phrase);
        CHECK(refusal("a = \"\" \u00e4\n") == "syntax.character 1:8 " + phrase);
        CHECK(refusal("a = \"\u201d\n") != "accepted");
    }

    TEST_CASE("brackets") {
        CHECK(refusal("[[[a]]]\n") ==
              "syntax.toml 1:3 Error while parsing key: expected bare key starting character or string delimiter, saw '['");
        for (const char* text : {"[", "[[", "[a", "[[a", "[[a]", "[]\n", "[[]]\n", "a = [", "a = {", "a = [1,", "a = {b", "a = {b = 1", "]",
                                 "}", "a = ]", "[a]]\n"})
            CHECK_MESSAGE(refusal(text).starts_with("syntax.toml 1:"), text);
    }

    TEST_CASE("unfinished or broken lines") {
        CHECK(refusal("a =\n").starts_with("syntax.toml 1:4"));
        CHECK(refusal("a 1\n").starts_with("syntax.toml 1:3"));
        CHECK(refusal("a = \"abc\n").starts_with("syntax.toml 1:9"));
        CHECK(refusal("a = \"\\q\"\n").starts_with("syntax.toml 1:7"));
        CHECK(refusal("a = \"\\").starts_with("syntax.toml 1:"));
        CHECK(refusal("a = 99999999999999999999\n").starts_with("syntax.toml 1:"));
        CHECK(refusal("a = 1\rb = 2\n").starts_with("syntax.toml 1:"));
        CHECK(refusal("a = 1 b = 2\n").starts_with("syntax.toml 1:"));
        CHECK(refusal("a = \"\"\"abc\n\n").starts_with("syntax.toml "));
    }

    TEST_CASE("the same key twice") {
        CHECK(refusal("a = 1\nb = 2\na = 3\n") ==
              "syntax.toml 3:5 Error while parsing key-value pair: cannot redefine existing integer 'a'");
        CHECK(refusal("[a]\nb = 1\n[a]\nc = 1\n").starts_with("syntax.toml 3:1"));
        CHECK(refusal("a.b = 1\na.b = 2\n").starts_with("syntax.toml 2:7"));
        CHECK(refusal("a = {b = 1, b = 2}\n").starts_with("syntax.toml 1:"));
        CHECK(refusal("a = 1\n[a]\n").starts_with("syntax.toml 2:1"));
        CHECK(refusal("[[a]]\n[a]\n").starts_with("syntax.toml 2:1"));
    }

    TEST_CASE("sixteen levels and no more") {
        const auto lists = [](std::size_t n) { return "a = " + std::string(n, '[') + "1" + std::string(n, ']') + "\n"; };
        const auto keys = [](std::size_t n) {
            std::string text = "a";
            for (std::size_t i = 1; i < n; ++i) text += ".a";
            return text + " = 1\n";
        };
        CHECK(refusal(lists(15)) == "accepted");
        CHECK(refusal(lists(16)) == "syntax.depth 1:21 values are nested too deeply");
        CHECK(refusal(keys(16)) == "accepted");
        CHECK(refusal(keys(17)) == "syntax.depth 1:37 values are nested too deeply");
        // Deeper than the parser's own stack allows, and deeper than any stack.
        for (const std::size_t n : {200U, 300U, 100000U}) {
            CHECK(refusal(lists(n)).starts_with("syntax."));
            CHECK(refusal("a = " + std::string(n, '[')).starts_with("syntax."));
            CHECK(refusal(std::string(n, '[')).starts_with("syntax."));
        }
        CHECK(refusal(keys(20000)).starts_with("syntax."));
        std::string tables = "a = ";
        for (int i = 0; i < 5000; ++i) tables += "{a = ";
        CHECK(refusal(tables).starts_with("syntax."));
    }

    TEST_CASE("one mebibyte and no more") {
        CHECK(refusal("a = 1\n#" + std::string(largest_input - 7, 'x')) == "accepted");
        CHECK(refusal("a = 1\n#" + std::string(largest_input - 6, 'x')) ==
              "syntax.size 1:1 the file has 1048577 bytes; at most 1048576 are read");
        CHECK(message(std::string(2 * largest_input, ' ')) ==
              "joint.toml: error: the file has 2097152 bytes; at most 1048576 are read\n1 error; nothing was written\n");
    }

    TEST_CASE("the message shows the line, without what would disturb a terminal") {
        CHECK(message("a = 1\nb = \"\x1b[31m\"\tc\n") ==
              "joint.toml:2:6: error: a control character stands here\n"
              "    2 | b = \"?[31m\" c\n"
              "      |      ^\n"
              "1 error; nothing was written\n");
        CHECK(message("x = \"\u00e4\u00f6\", b = 1\n") ==
              "joint.toml:1:9: error: Error while parsing key-value pair: expected a comment or whitespace, saw ','\n"
              "    1 | x = \"\u00e4\u00f6\", b = 1\n"
              "      |         ^\n"
              "1 error; nothing was written\n");
    }

    TEST_CASE("an escaped control character in a key given twice stays out of the message") {
        CHECK(is_printable(message("\"\\u001b[2J\" = 1\n\"\\u001b[2J\" = 2\n")));
    }

    TEST_CASE("a quote before the closing three is no new string") { CHECK(refusal("a = '''x''''  # it's \u00e4\n") == "accepted"); }

    TEST_CASE("a message is valid UTF-8 whatever the file holds") {
        const auto text = message("a = \"\xff\"\n");
        CHECK(text.find('\xff') == std::string::npos);
    }

    TEST_CASE("any bytes give a tree or one located error") {
        CHECK(rc::check("hostile bytes", [] {
            std::string text;
            if (*rc::gen::arbitrary<bool>()) {
                text = *rc::gen::container<std::string>(rc::gen::arbitrary<char>());
            } else {
                const auto part = rc::gen::element<std::string>("a", "b", ".", " = ", "1", "\"", "'", "\"\"\"", "'''", "[", "]", "[[", "]]",
                                                                "{", "}", ",", "\n", "\r\n", "#", "\\", "\\u00e4", "\u00e4", "\xef\xbb\xbf",
                                                                "\xef\xbb\xbd", "1e5", "inf", "true", "1979-05-27", "\x01", "\xff", " ");
                for (const auto& each : *rc::gen::container<std::vector<std::string>>(part)) text += each;
            }
            Diagnostics diagnostics;
            const auto node = parse_toml(text, "joint.toml", diagnostics);
            RC_ASSERT(node.has_value() != diagnostics.any());
            if (diagnostics.any()) {
                const auto first = diagnostics.sorted().front();
                RC_ASSERT(first.at.line >= 1);
                RC_ASSERT(first.at.column >= 1);
                RC_ASSERT(!first.message.empty());
                RC_ASSERT(is_printable(diagnostics.text()));
            }
        }));
    }

    // Half a million levels of tables overran the stack on the way down.
    TEST_CASE("a key of too many parts is refused before the parser sees it") {
        std::string key = "a";
        for (int i = 0; i < 400000; ++i) key += ".a";
        for (const auto& text : {key + " = 1", "[" + key + "]", "x = {" + key + " = 1}"}) {
            Diagnostics diagnostics;
            CHECK_FALSE(parse_toml(text, "deep.toml", diagnostics));
            CHECK(diagnostics.count() == 1);
        }
        Diagnostics diagnostics;
        CHECK(parse_toml("a.b.c = 1.5\nd = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0, 1.1, 1.2, 1.3, 1.4, 1.5, 1.6, 1.7, 1.8]",
                         "flat.toml", diagnostics));
    }
}
