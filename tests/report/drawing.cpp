// SPDX-License-Identifier: MIT
#include "report/drawing.hpp"

#include "report/escape.hpp"

#include "report/occurrences.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace faywright;

TEST_SUITE("report/drawing") {
    TEST_CASE("text is data in markup") {
        CHECK(markup_text("<script>&\"'</script>") == "&lt;script&gt;&amp;&quot;&#39;&lt;/script&gt;");
        CHECK(markup_text("a\x01\x1b[31m\xff") == "a??[31m?");
        CHECK(markup_text("\xe2\x80\xae") == "?");  // turns what follows
        CHECK(markup_text("Ø 17.5 mm × 2") == "Ø 17.5 mm × 2");
    }

    TEST_CASE("text is data in DXF: one line of ASCII without codes") {
        CHECK(dxf_text("Ø17.5") == "\\U+00D817.5");
        CHECK(dxf_text("%%u ^J \\U+0041") == "% %u ^ J \\ U+0041");
        CHECK(dxf_text("two\nlines") == "two?lines");
        CHECK(dxf_text("\xf0\x9f\x90\x9d") == "?");  // beyond four digits
    }

    TEST_CASE("a drawing is as wide as what is in it, in millimetres of paper") {
        Drawing drawing("a plate", "200 by 100 mm", 0.5);
        drawing.rectangle({mm(0), mm(0)}, {mm(200), mm(100)}, Fill::steel);
        const auto svg = svg_of(drawing, "x");
        CHECK(svg.find("width=\"104mm\" height=\"54mm\" viewBox=\"-2 -2 104 54\"") != std::string::npos);
        CHECK(svg.find("d=\"M0,50L100,50L100,0L0,0Z\"") != std::string::npos);
        CHECK(svg.find("fill=\"url(#x-steel)\"") != std::string::npos);
        CHECK(count(svg, "<pattern ") == 1);
        CHECK(svg.find("<title id=\"x-title\">a plate</title>") != std::string::npos);
        CHECK(svg.find("role=\"img\"") != std::string::npos);
    }

    TEST_CASE("text counts as drawn, left, right or about its place") {
        const auto width = [](Anchor anchor) {
            Drawing drawing("", "", 1.0);
            drawing.text({mm(0), mm(0)}, "0123456789", mm(10), anchor);
            return extent_of(drawing);
        };
        CHECK(in_mm(width(Anchor::left).least.x) == doctest::Approx(0));
        CHECK(in_mm(width(Anchor::right).greatest.x) == doctest::Approx(0));
        CHECK(in_mm(width(Anchor::middle).least.x) == doctest::Approx(-in_mm(width(Anchor::middle).greatest.x)));
        CHECK(width(Anchor::left).greatest.x > mm(50));
    }

    TEST_CASE("an arrow without length is a point, and no number is none") {
        Drawing drawing("", "", 1.0);
        drawing.arrow({mm(1), mm(1)}, {mm(1), mm(1)});
        drawing.dimension_x({mm(0), mm(0)}, {mm(30), mm(0)}, mm(-10), "30");
        drawing.dimension_y({mm(0), mm(0)}, {mm(0), mm(30)}, mm(-10), "30");
        for (const auto& text : {svg_of(drawing, "x"), dxf_of(drawing)}) {
            CHECK(text.find("nan") == std::string::npos);
            CHECK(text.find("inf") == std::string::npos);
            CHECK(text.find("-0\"") == std::string::npos);
        }
    }

    TEST_CASE("DXF is pairs of lines from the first to EOF") {
        Drawing drawing("a plate", "", 1.0);
        drawing.on(layers::cut_outside);
        drawing.rectangle({mm(0), mm(0)}, {mm(200), mm(100)}, Fill::none);
        drawing.on(layers::cut_inside);
        drawing.circle({mm(50), mm(40)}, mm(8.75));
        const auto dxf = dxf_of(drawing);
        CHECK(std::count(dxf.begin(), dxf.end(), '\n') % 2 == 0);
        CHECK(dxf.ends_with("  0\nEOF\n"));
        CHECK(dxf.find("  0\nCIRCLE\n  8\nCUT_IN\n 10\n50.0000\n 20\n40.0000\n 40\n8.7500\n") != std::string::npos);
        CHECK(dxf.find("  0\nPOLYLINE\n  8\nCUT_OUT\n 66\n1\n 10\n0.0000\n 20\n0.0000\n 70\n1\n") != std::string::npos);
        CHECK(count(dxf, "VERTEX\n") == 4);
    }
}
