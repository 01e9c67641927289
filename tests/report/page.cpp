// SPDX-License-Identifier: MIT
#include "report/page.hpp"

#include "quantity/text.hpp"
#include "report/typography.hpp"

#include "report/occurrences.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace faywright;

namespace {

constexpr const char* hostile = "<script>alert(1)</script> \"&]]> | `x` *y* [z](javascript:alert(1)) </style>";

/// A page with the text in every place that takes one.
Page page_of(const std::string& text) {
    Step heading{.kind = StepKind::heading,
                 .symbol = "",
                 .formula = text,
                 .substituted = "",
                 .value = {},
                 .words = "",
                 .source = {},
                 .code = "",
                 .evident = ""};
    Step input = heading;
    input.kind = StepKind::input;
    input.symbol = "F_b,Rd";
    input.words = text;
    Drawing drawing(text, text, 1.0);
    drawing.text({mm(0), mm(0)}, text);
    Page page{PageKind::report, "Calculation report", text, {}, {"faywright 0", {{text, "0123456789abcdef"}}}};
    page.chapters.push_back({"one",
                             text,
                             {Heading{text}, Paragraph{text, Tone::caution}, Banner{text, text, Tone::fail}, Listing{{text, text}, true},
                              Grid{text, {{text}, {text, Align::right}}, {{text, Cell(text, Tone::fail)}, {text, text}}},
                              table_of(std::vector{heading, input}), Picture{drawing, "picture"}, Blanks{text, {text, "date"}}}});
    return page;
}

}  // namespace

TEST_SUITE("report/page") {
    TEST_CASE("text is data everywhere in HTML") {
        const auto plain = page_html(page_of("plain")), odd = page_html(page_of(hostile));
        for (const char* tag : {"<script", "<style", "<svg", "<b>", "<td", "<th", "<p", "</style>", "<a "})
            CHECK(count(odd, tag) == count(plain, tag));
        CHECK(odd.find("alert(1)</script>") == std::string::npos);
        CHECK(count(odd, "&lt;script&gt;alert(1)&lt;/script&gt;") >= 15);
    }

    TEST_CASE("text is data everywhere in Markdown") {
        const auto out = page_markdown(page_of(hostile));
        CHECK(out.find("<script>") == std::string::npos);
        CHECK(count(out, "\\<script\\>") >= 15);
        // A row has the cells of its heading: no bar of the text parts it.
        CHECK(out.find("\\| \\`x\\`") != std::string::npos);
        CHECK(out.find(" | `") == std::string::npos);
        CHECK(out.find("[z]") == std::string::npos);
    }

    TEST_CASE("what begins a line of Markdown begins no list, no rule and no heading") {
        for (const auto& [text, shown] :
             {std::pair{"1. first", "1\\. first"}, std::pair{"12) then", "12\\) then"}, std::pair{"- dash", "\\- dash"},
              std::pair{"+ plus", "\\+ plus"}, std::pair{"---", "\\---"}, std::pair{"===", "\\==="},
              std::pair{"# no heading", "\\# no heading"}, std::pair{"12.5 mm", "12.5 mm"}, std::pair{"-15 K", "-15 K"}}) {
            Page page{PageKind::report, "t", "t", {{"c", "", {Paragraph{text}}}}, {}};
            CHECK(page_markdown(page).find(std::string("\n") + shown + "\n") != std::string::npos);
        }
    }

    TEST_CASE("tables have headings with a scope, captions, and as many cells in each row") {
        const auto out = page_html(page_of("plain"));
        CHECK(count(out, "<table") == count(out, "<caption>"));
        CHECK(count(out, "<th>") == 0);
        CHECK(count(out, "<th scope=") == count(out, "<th "));
        CHECK(count(out, "<tbody>") == count(out, "</tbody>"));
    }

    TEST_CASE("indices stand low, and only indices") {
        Step step{.kind = StepKind::derived,
                  .symbol = "F_b,Rd",
                  .formula = "max(k_1·α_b, 0 N)",
                  .substituted = "max(2.5·1, 0 N)",
                  .value = 2.5,
                  .words = "",
                  .source = {},
                  .code = "",
                  .evident = ""};
        Page page{PageKind::report, "t", "t", {{"c", "", {table_of(std::vector{step})}}}, {}};
        const auto out = page_html(page);
        CHECK(out.find("F<sub>b,Rd</sub>") != std::string::npos);
        CHECK(out.find("max(k<sub>1</sub>·α<sub>b</sub>, 0 N)") != std::string::npos);
    }

    TEST_CASE("a formula without symbols is not told twice") {
        Step step{.kind = StepKind::derived,
                  .symbol = "n",
                  .formula = "2 + 2",
                  .substituted = "2 + 2",
                  .value = 4.0,
                  .words = "",
                  .source = {},
                  .code = "",
                  .evident = ""};
        CHECK(table_of(std::vector{step}).rows.front().with_values.empty());
        step.formula = "a + b";
        CHECK(table_of(std::vector{step}).rows.front().with_values == "2 + 2");
    }

    TEST_CASE("long words of a cell may be broken, and read the same") {
        const std::string word(64, 'a');
        const Page page{PageKind::report, "t", "t", {{"c", "", {Grid{"g", {{"a"}, {"b"}}, {{"x", word}}}}}}, {}};
        auto out = page_html(page);
        CHECK(out.find("<wbr>") != std::string::npos);
        for (auto at = out.find("<wbr>"); at != std::string::npos; at = out.find("<wbr>")) out.erase(at, 5);
        CHECK(out.find(word) != std::string::npos);
    }

    TEST_CASE("units are written as books do, and only units") {
        for (const auto& [plain, better] :
             {std::pair{"120 N*m", "120 N·m"}, std::pair{"3 kN*m of 4 kN*m", "3 kN·m of 4 kN·m"}, std::pair{"40 um", "40 µm"},
              std::pair{"0.4 um/a, slow", "0.4 µm/a, slow"}, std::pair{"1100800 mm2", "1100800 mm²"}, std::pair{"7 mm4", "7 mm⁴"},
              std::pair{"65 degC", "65 °C"}, std::pair{"30 deg, no more", "30°, no more"}, std::pair{"2 mg/m2/d", "2 mg/m²/d"},
              std::pair{"2 ohm*cm2", "2 Ω·cm²"}, std::pair{"144 mm +- 0.2 mm", "144 mm ± 0.2 mm"},
              std::pair{"M16 x 200 A4-80", "M16 x 200 A4-80"}, std::pair{"ISO 7089 M16", "ISO 7089 M16"}, std::pair{"2 um2x", "2 um2x"},
              std::pair{"8 bolts", "8 bolts"}, std::pair{"um and degC", "um and degC"}, std::pair{"N*m", "N*m"}, std::pair{"", ""}})
            CHECK(typographic(plain) == better);
        CHECK(told(Value(Nm(120))) == "120 N·m");
    }

    TEST_CASE("a page tells what it was made from") {
        const auto out = page_html(page_of("plain"));
        CHECK(out.find("content: \"faywright 0 0123456789ab\"") != std::string::npos);
        CHECK(out.find("<code>0123456789abcdef</code>") != std::string::npos);
    }
}
