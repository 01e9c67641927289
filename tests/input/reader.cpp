// SPDX-License-Identifier: MIT
#include "input/reader.hpp"

#include "input/listing.hpp"

#include <doctest/doctest.h>

#include <string>
#include <vector>

using namespace faywright;

namespace {

enum class Cut { sawn, sheared };

struct Position {
    static constexpr bool positional = true;
    Length x, y;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"x", "", "along"}, self.x, Range{mm(-1000), mm(1000)});
        field(Name{"y", "", "across"}, self.y, Range{mm(-1000), mm(1000)});
    }
};

struct Plate {
    static constexpr std::string_view kind = "plate";
    Length thickness;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"thickness", "t", "thickness"}, self.thickness, Range{mm(1), mm(50)});
    }
};

struct Washer {
    static constexpr std::string_view kind = "washer";
    std::string series;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"series", "", "standard"}, self.series);
    }
};

struct Ply {
    std::string name;
    Length thickness;
    double friction = 0.12;
    int planes = 2;
    bool exposed = true;
    Cut cut = Cut::sawn;
    std::vector<Position> positions;
    std::optional<Force> pull;
    std::vector<Length> gaps;
    std::vector<std::variant<Plate, Washer>> parts;
    std::optional<Position> origin;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"name", "", "what it is called"}, self.name);
        field(Name{"thickness", "t", "thickness of the ply"}, self.thickness, Range{mm(0.5), mm(200)});
        field(Name{"friction", "mu", "of its faces"}, self.friction, Range{0.0, 1.0}, defaulted);
        field(Name{"planes", "n", "of slip"}, self.planes, Range{1, 20}, defaulted);
        field(Name{"exposed", "", "to the weather"}, self.exposed, defaulted);
        field(Name{"cut", "", "how its edge is made"}, self.cut, defaulted);
        field(Name{"positions", "", "of the bolts"}, self.positions, defaulted);
        field(Name{"pull", "F", "force on it"}, self.pull, Range{kN(0), kN(100)});
        field(Name{"gaps", "", "below it"}, self.gaps, Range{mm(0), mm(9)}, defaulted);
        field(Name{"parts", "", "on it"}, self.parts, defaulted);
        field(Name{"origin", "", "of its axes"}, self.origin);
    }
};

struct Outcome {
    Ply ply;
    std::string text, codes;
    std::vector<DefaultTaken> defaults;
};

Outcome read(const std::string& toml) {
    Diagnostics diagnostics;
    Outcome outcome;
    const auto node = parse_toml(toml, "ply.toml", diagnostics);
    REQUIRE_MESSAGE(node.has_value(), diagnostics.text());
    read_node(*node, Path{}, outcome.ply, ReadContext{diagnostics, &outcome.defaults});
    outcome.text = diagnostics.text();
    for (const auto& each : diagnostics.sorted()) outcome.codes += (outcome.codes.empty() ? "" : " ") + each.code;
    return outcome;
}

/// A good ply with one more line, the third.
Outcome with(const std::string& line) { return read("name = \"rail\"\nthickness = \"3 mm\"\n" + line + "\n"); }

/// The whole text of one error in the third line.
std::string message(const std::string& line) { return with(line).text; }

bool is_printable(const std::string& text) {
    for (const char c : text)
        if ((static_cast<unsigned char>(c) < 0x20 && c != '\n') || c == 0x7f) return false;
    return true;
}

Diagnostic at(int line, int column, std::string message, std::string file = "a.toml") {
    return {"code", std::move(message), TextPosition{std::make_shared<const std::string>(std::move(file)), line, column, 1}, "", {}, ""};
}

}  // namespace

template <>
struct faywright::Words<Cut> {
    static constexpr std::array<std::pair<Cut, std::string_view>, 2> all{{{Cut::sawn, "sawn"}, {Cut::sheared, "sheared"}}};
};

TEST_SUITE("input/reader: reading") {
    TEST_CASE("a whole record") {
        const auto outcome = read(R"(name = "rail"
thickness = "0.25 in"
friction = "12 %"
planes = 3
exposed = false
cut = "sheared"
positions = [["1 mm", "2 mm"], {y = "4 mm", x = "3 mm"}]
pull = "2 kip"
gaps = ["0 mm", "9 mm"]
parts = [{kind = "plate", thickness = "5 mm"}, {kind = "washer", series = "ISO 7089"}]
origin = {x = "-1 m", y = "1 m"}
)");
        CHECK(outcome.codes == "");
        const auto& ply = outcome.ply;
        CHECK(ply.name == "rail");
        CHECK(in_mm(ply.thickness) == doctest::Approx(6.35));
        CHECK(ply.friction == doctest::Approx(0.12));
        CHECK(ply.planes == 3);
        CHECK_FALSE(ply.exposed);
        CHECK(ply.cut == Cut::sheared);
        REQUIRE(ply.positions.size() == 2);
        CHECK(in_mm(ply.positions[0].y) == doctest::Approx(2));
        CHECK(in_mm(ply.positions[1].x) == doctest::Approx(3));
        REQUIRE(ply.pull.has_value());
        CHECK(in_kN(*ply.pull) == doctest::Approx(8.896443));
        CHECK(in_mm(ply.gaps[1]) == doctest::Approx(9));
        REQUIRE(ply.parts.size() == 2);
        CHECK(std::get<Washer>(ply.parts[1]).series == "ISO 7089");
        CHECK(in_mm(ply.origin->x) == doctest::Approx(-1000));
        CHECK(outcome.defaults.empty());
    }

    TEST_CASE("what the file leaves out is taken from the record, and told") {
        const auto outcome = with("");
        CHECK(outcome.codes == "");
        CHECK(outcome.ply.planes == 2);
        CHECK_FALSE(outcome.ply.pull.has_value());
        CHECK_FALSE(outcome.ply.origin.has_value());
        std::string told;
        for (const auto& each : outcome.defaults) told += each.path + "=" + each.value + ' ';
        CHECK(told == "friction=0.12 planes=2 exposed=true cut=sawn ");
    }

    TEST_CASE("both ends of a range are accepted") {
        CHECK(read("name = \"a\"\nthickness = \"0.5 mm\"\nfriction = 0\nplanes = 20\n").codes == "");
        CHECK(read("name = \"a\"\nthickness = \"200 mm\"\nfriction = 1\nplanes = 1.0\n").codes == "");
    }

    TEST_CASE("after an error the member keeps what it had") {
        const auto outcome = with("planes = 99\nfriction = 7\npull = \"1 mm\"");
        CHECK(outcome.codes == "number.range number.range unit.dimension");
        CHECK(outcome.ply.planes == 2);
        CHECK(outcome.ply.friction == 0.12);
        CHECK_FALSE(outcome.ply.pull.has_value());
    }
}

TEST_SUITE("input/reader: one message of each kind") {
    TEST_CASE("key.missing") {
        CHECK(read("name = \"rail\"\n").text ==
              "ply.toml:1:1: error: thickness is missing: thickness of the ply\n"
              "    1 | name = \"rail\"\n"
              "      | ^\n"
              "1 error; nothing was written\n");
        CHECK(message("origin = {x = \"1 mm\"}") ==
              "ply.toml:3:10: error: origin.y is missing: across\n"
              "    3 | origin = {x = \"1 mm\"}\n"
              "      |          ^^^^^^^^^^^^\n"
              "1 error; nothing was written\n");
        CHECK(with("positions = [[\"1 mm\"]]").codes == "key.missing");
        CHECK(message("parts = [{thickness = \"5 mm\"}]") ==
              "ply.toml:3:10: error: parts[0].kind is missing: one of \"plate\", \"washer\"\n"
              "    3 | parts = [{thickness = \"5 mm\"}]\n"
              "      |          ^^^^^^^^^^^^^^^^^^^^\n"
              "1 error; nothing was written\n");
    }

    TEST_CASE("key.unknown, with the nearest") {
        CHECK(message("fricton = 0.1") ==
              "ply.toml:3:1: error: fricton is not a known key\n"
              "    3 | fricton = 0.1\n"
              "      | ^^^^^^^ the nearest known key is \"friction\"\n"
              "1 error; nothing was written\n");
        CHECK(message("colour = 1") ==
              "ply.toml:3:1: error: colour is not a known key\n"
              "    3 | colour = 1\n"
              "      | ^^^^^^ known here: name, thickness, friction, planes, exposed, cut, positions, pull, gaps, parts, origin\n"
              "1 error; nothing was written\n");
        CHECK(with("parts = [{kind = \"plate\", thickness = \"5 mm\", series = \"x\"}]").codes == "key.unknown");
    }

    TEST_CASE("unit.missing") {
        CHECK(read("name = \"rail\"\nthickness = 3\n").text ==
              "ply.toml:2:13: error: thickness is 3, which has no unit; a length is wanted, for example \"16 mm\"\n"
              "    2 | thickness = 3\n"
              "      |             ^ write it in quotes, with its unit\n"
              "1 error; nothing was written\n");
        CHECK(with("positions = [[5, \"1 mm\"]]").codes == "unit.missing");
    }

    TEST_CASE("unit.dimension") {
        CHECK(message("pull = \"3 mm\"") ==
              "ply.toml:3:8: error: pull is \"3 mm\", a length; a force is wanted, for example \"70 kN\"\n"
              "    3 | pull = \"3 mm\"\n"
              "      |        ^^^^^^\n"
              "1 error; nothing was written\n");
        CHECK(with("friction = \"often\"").codes == "unit.dimension");
    }

    TEST_CASE("number.range") {
        CHECK(message("pull = \"300 kN\"") ==
              "ply.toml:3:8: error: pull is 300 kN; at least 0 N and at most 100 kN is accepted\n"
              "    3 | pull = \"300 kN\"\n"
              "      |        ^^^^^^^^\n"
              "1 error; nothing was written\n");
        CHECK(message("planes = 0") ==
              "ply.toml:3:10: error: planes is 0; at least 1 and at most 20 is accepted\n"
              "    3 | planes = 0\n"
              "      |          ^\n"
              "1 error; nothing was written\n");
        CHECK(with("gaps = [\"1 mm\", \"10 mm\", \"-1 mm\"]").codes == "number.range number.range");
        CHECK(with("friction = -1e-9").codes == "number.range");
        CHECK(with("friction = nan").codes == "number.finite");
        CHECK(with("friction = inf").codes == "number.finite");
    }

    TEST_CASE("type.wrong") {
        CHECK(message("exposed = 1") ==
              "ply.toml:3:11: error: exposed is a number; true or false is wanted\n"
              "    3 | exposed = 1\n"
              "      |           ^\n"
              "1 error; nothing was written\n");
        CHECK(message("positions = 5") ==
              "ply.toml:3:13: error: positions is a number; a list is wanted\n"
              "    3 | positions = 5\n"
              "      |             ^\n"
              "1 error; nothing was written\n");
        CHECK(message("cut = 7").find("error: cut is a number; one of \"sawn\", \"sheared\" is wanted\n") != std::string::npos);
        CHECK(message("planes = 2.5").find("error: planes is a number; a whole number is wanted\n") != std::string::npos);
        CHECK(message("planes = \"3\"").find("error: planes is a string; a whole number is wanted\n") != std::string::npos);
        CHECK(message("pull = true").find("error: pull is true or false; text such as \"70 kN\" is wanted\n") != std::string::npos);
        CHECK(message("friction = 1979-05-27").find("error: friction is a date or time; a plain number is wanted\n") != std::string::npos);
        CHECK(message("origin = \"here\"").find("error: origin is a string; a list is wanted\n") != std::string::npos);
        CHECK(message("parts = [[\"plate\", \"5 mm\"]]").find("error: parts[0].kind is missing") != std::string::npos);
        CHECK(read("name = 5\nthickness = \"3 mm\"\n").text.find("error: name is a number; text in quotes is wanted\n") !=
              std::string::npos);
    }

    TEST_CASE("name.unknown") {
        CHECK(message("cut = \"sheard\"") ==
              "ply.toml:3:7: error: cut is \"sheard\"; accepted are \"sawn\", \"sheared\"\n"
              "    3 | cut = \"sheard\"\n"
              "      |       ^^^^^^^^ the nearest is \"sheared\"\n"
              "1 error; nothing was written\n");
        CHECK(message("cut = \"by laser, twice\"") ==
              "ply.toml:3:7: error: cut is \"by laser, twice\"; accepted are \"sawn\", \"sheared\"\n"
              "    3 | cut = \"by laser, twice\"\n"
              "      |       ^^^^^^^^^^^^^^^^^\n"
              "1 error; nothing was written\n");
        CHECK(message("parts = [{kind = \"Plate\"}]").find("the nearest is \"plate\"\n") != std::string::npos);
    }

    TEST_CASE("list.length") {
        CHECK(message("positions = [[\"1 mm\", \"2 mm\", \"3 mm\"]]") ==
              "ply.toml:3:14: error: positions[0] has 3 values; 2 are wanted\n"
              "    3 | positions = [[\"1 mm\", \"2 mm\", \"3 mm\"]]\n"
              "      |              ^^^^^^^^^^^^^^^^^^^^^^^^\n"
              "1 error; nothing was written\n");
        std::string many = "parts = [";
        for (int i = 0; i < 1001; ++i) many += "{},";
        const auto outcome = with(many + "]");
        CHECK(outcome.codes == "list.length");
        CHECK(outcome.text.starts_with("ply.toml:3:9: error: parts has 1001 items; at most 1000 are accepted\n"));
    }

    TEST_CASE("text.length") {
        CHECK(read("name = \"\"\nthickness = \"3 mm\"\n").text ==
              "ply.toml:1:8: error: name is empty; between 1 and 400 characters on one line are accepted\n"
              "    1 | name = \"\"\n"
              "      |        ^^\n"
              "1 error; nothing was written\n");
        CHECK(read("name = \"a\\nb\"\nthickness = \"3 mm\"\n").codes == "text.length");
        CHECK(read("name = \"" + std::string(401, 'x') + "\"\nthickness = \"3 mm\"\n").codes == "text.length");
        CHECK(read("name = \"" + std::string(400, 'x') + "\"\nthickness = \"3 mm\"\n").codes == "");
    }

    TEST_CASE("several in one pass, in the order of the file") {
        CHECK(read("planes = 99\nthickness = \"3 kN\"\ncut = \"x\"\nzzz = 1\n").codes ==
              "key.missing number.range unit.dimension name.unknown key.unknown");
    }

    TEST_CASE("a value in quotes without a unit has the code of a missing unit") { CHECK(with("pull = \"3\"").codes == "unit.missing"); }

    TEST_CASE("a count that is infinite is shown as a number people write") {
        CHECK(message("planes = inf").find("infe0") == std::string::npos);
    }

    TEST_CASE("a key with an escaped control character does not reach the terminal") { CHECK(is_printable(message("\"\\u001b[2J\" = 1"))); }

    TEST_CASE("a wrong word with a delete character does not reach the terminal") { CHECK(is_printable(message("cut = \"\\u007f\""))); }

    // Names are printed in every document.
    TEST_CASE("a name with an escaped control character is refused") {
        CHECK(read("name = \"\\u001b[2J\"\nthickness = \"3 mm\"\n").codes != "");
    }

    // "pull is 100 kN; at least 0 N and at most 100 kN is accepted".
    TEST_CASE("a value just outside its range is shown with the digits that tell it apart") {
        CHECK(message("pull = \"100.001 kN\"").find("pull is 100 kN;") == std::string::npos);
    }
}

TEST_SUITE("input/diagnostic") {
    TEST_CASE("sorted by file, line and column, equal places keep their order") {
        Diagnostics diagnostics;
        diagnostics.error(at(9, 1, "g"));
        diagnostics.error(at(2, 7, "e"));
        diagnostics.error(at(2, 7, "f"));
        diagnostics.error(at(2, 3, "d"));
        diagnostics.error(at(1, 1, "h", "b.toml"));
        diagnostics.error({"code", "a first", TextPosition{}, "", {}, ""});
        std::string order;
        for (const auto& each : diagnostics.sorted()) order += each.message + ' ';
        // A message without a file is about the "input".
        CHECK(order == "d e f g h a first ");
        CHECK(diagnostics.any());
        CHECK(diagnostics.count() == 6);
        CHECK_FALSE(Diagnostics{}.any());
    }

    TEST_CASE("without the text of the file there is no line to name, and the label stands alone") {
        Diagnostics diagnostics;
        auto one = at(3, 5, "the bolt is too long");
        one.label = "here";
        one.help = "shorten it";
        diagnostics.error(one);
        CHECK(diagnostics.text() ==
              "a.toml: error: the bolt is too long\n"
              "  = here\n"
              "      = help: shorten it\n"
              "1 error; nothing was written\n");
    }

    TEST_CASE("two places, in one file and in two") {
        Diagnostics diagnostics;
        diagnostics.keep_text("a.toml", "one\ntwo\nthree\n");
        diagnostics.keep_text("b.toml", "other\n");
        auto one = at(3, 1, "three stands twice");
        one.others = {{TextPosition{std::make_shared<const std::string>("a.toml"), 1, 1, 3}, "first given here"},
                      {TextPosition{std::make_shared<const std::string>("b.toml"), 1, 2, 2}, "and here"}};
        one.label = "again";
        diagnostics.error(one);
        CHECK(diagnostics.text() ==
              "a.toml:3:1: error: three stands twice\n"
              "    3 | three\n"
              "      | ^ again\n"
              "    1 | one\n"
              "      | --- first given here\n"
              "  in b.toml:1:2\n"
              "    1 | other\n"
              "      |  -- and here\n"
              "1 error; nothing was written\n");
    }

    TEST_CASE("twenty are shown, the rest is counted") {
        Diagnostics diagnostics;
        diagnostics.keep_text("a.toml", "");
        for (int i = 1; i <= 20; ++i) diagnostics.error(at(i, 1, "wrong"));
        CHECK(diagnostics.text().ends_with("a.toml:20:1: error: wrong\n   20 | \n      | ^\n20 errors; nothing was written\n"));
        for (int i = 21; i <= 1000; ++i) diagnostics.error(at(i, 1, "wrong"));
        CHECK(diagnostics.text().ends_with(
            "a.toml:20:1: error: wrong\n   20 | \n      | ^\nand 980 more\n1000 errors; nothing was written\n"));
    }

    TEST_CASE("of a very long line the part around the place is shown") {
        Diagnostics diagnostics;
        diagnostics.keep_text("a.toml", std::string(300, 'x') + "HERE" + std::string(5000, 'y') + "\n");
        auto one = at(1, 301, "wrong");
        one.at.width = 4;
        one.label = "this";
        diagnostics.error(one);
        CHECK(diagnostics.text() ==
              "a.toml:1:301: error: wrong\n"
              "    1 | " +
                  std::string(50, 'x') + "HERE" + std::string(46, 'y') +
                  "\n"
                  "      | " +
                  std::string(50, ' ') +
                  "^^^^ this\n"
                  "1 error; nothing was written\n");
    }

    TEST_CASE("a long line of letters of several bytes is cut between letters") {
        Diagnostics diagnostics;
        std::string line;
        for (int i = 0; i < 400; ++i) line += "\u8702";
        diagnostics.keep_text("a.toml", line);
        for (const int column : {1, 2, 57, 199, 400}) {
            auto one = at(1, column, "wrong");
            diagnostics.error(one);
        }
        const auto text = diagnostics.text();
        // Every excerpt is whole letters: each has three bytes, the first of which is 0xe8.
        std::size_t first = 0, following = 0;
        for (const char c : text) {
            first += c == '\xe8';
            following += (static_cast<unsigned char>(c) & 0xc0U) == 0x80U;
        }
        CHECK(first > 100);
        CHECK(following == 2 * first);
    }

    TEST_CASE("a place outside the text, and a width beyond its line, do no harm") {
        Diagnostics diagnostics;
        diagnostics.keep_text("a.toml", "abc\n");
        for (auto one : {at(1, 900, "a"), at(77, 1, "b"), at(0, 0, "c"), at(-5, -5, "d")}) {
            one.at.width = 4000;
            diagnostics.error(one);
        }
        CHECK(diagnostics.text().size() < 600);
    }

    TEST_CASE("tabs and returns take one column and print as blanks") {
        Diagnostics diagnostics;
        diagnostics.keep_text("a.toml", "\ta\t= 1\r\nb\n");
        diagnostics.error(at(1, 4, "wrong"));
        CHECK(diagnostics.text() ==
              "a.toml:1:4: error: wrong\n"
              "    1 |  a = 1\n"
              "      |    ^\n"
              "1 error; nothing was written\n");
    }
}

TEST_SUITE("input/listing") {
    TEST_CASE("fields as help shows them") {
        std::vector<FieldHelp> fields;
        Ply ply;
        Ply::describe(detail::ListFields{fields}, ply);
        REQUIRE(fields.size() == 11);
        CHECK(fields[0].kind == "text");
        CHECK(fields[1].symbol == "t");
        CHECK(fields[1].kind == "length, e.g. \"16 mm\"");
        CHECK(fields[1].accepted == "0.5 mm to 200 mm");
        CHECK(fields[1].fallback == "");
        CHECK(fields[2].symbol == "\u03bc");
        CHECK(fields[2].fallback == "0.12");
        CHECK(fields[3].kind == "whole number");
        CHECK(fields[3].accepted == "1 to 20");
        CHECK(fields[4].kind == "true or false");
        CHECK(fields[5].accepted == "\"sawn\", \"sheared\"");
        CHECK(fields[5].fallback == "sawn");
        CHECK(fields[6].kind == "list of (x, y)");
        CHECK(fields[7].kind == "force, e.g. \"70 kN\"");
        CHECK(fields[7].fallback == "may be left out");
    }

    TEST_CASE("values as printers show them, what is absent is not listed") {
        std::vector<NamedValue> values;
        Ply ply;
        ply.thickness = mm(3);
        ply.positions.resize(4);
        Ply::describe(detail::ListValues{values}, ply);
        std::string shown;
        for (const auto& each : values) shown += each.key + "=" + (each.text.empty() ? print(each.value) : each.text) + ' ';
        CHECK(shown == "thickness=3 mm friction=0.12 planes=2 exposed=true cut=sawn positions=4 items gaps=0 items parts=0 items ");
    }
}

TEST_SUITE("quantity/nearest") {
    TEST_CASE("a slip of the fingers, and no more") {
        const std::vector<std::string> names{"thickness", "friction", "tube-length", "mm"};
        CHECK(nearest("thicknes", names) == "thickness");
        CHECK(nearest("thcikness", names) == "thickness");
        CHECK(nearest("Tube Length", names) == "tube-length");
        CHECK(nearest("tube_length", names) == "tube-length");
        CHECK(nearest("colour", names) == "");
        CHECK(nearest("", names) == "");
        CHECK(nearest(std::string(101, 't'), names) == "");
        CHECK(nearest("thickness", {}) == "");
    }
}
