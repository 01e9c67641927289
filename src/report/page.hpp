// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"
#include "report/drawing.hpp"

#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

/// A document for people, made once and written as HTML or as Markdown: what stands in it, without how it looks.
/// Every text is data; the writers make it safe.
namespace faywright {

/// How a text is to be taken. The tone is told by its words or its mark too, never by its look alone.
enum class Tone { plain, pass, fail, caution };

struct Cell {
    std::string words;
    Tone tone = Tone::plain;

    Cell(std::string w, Tone t = Tone::plain) : words(std::move(w)), tone(t) {}
    Cell(std::string_view w) : words(w) {}
    Cell(const char* w) : words(w) {}
};

enum class Align { left, right };

struct Column {
    std::string heading;
    Align align = Align::left;

    Column(std::string words, Align a = Align::left) : heading(std::move(words)), align(a) {}
};

/// A heading within a chapter.
struct Heading {
    std::string words;
    int level = 3;  ///< 3 or 4: the document's title is 1, a chapter's 2
};

struct Paragraph {
    std::string words;
    Tone tone = Tone::plain;
};

/// One thing told large: a verdict, a torque.
struct Banner {
    std::string mark;  ///< "PASS", "120 N·m"
    std::string words;
    Tone tone = Tone::plain;
};

struct Listing {
    std::vector<std::string> items;
    bool numbered = false;
};

/// The first cell of a row is its heading.
struct Grid {
    std::string caption;  ///< empty where the heading above says it
    std::vector<Column> columns;
    std::vector<std::vector<Cell>> rows;
};

/// A calculator's lines of a derivation, as they are printed.
struct StepRow {
    std::string symbol, formula, with_values, result;
    bool in_words = false;  ///< the formula's place holds a meaning, or words for a sum
};
struct StepTable {
    std::string title, source;
    std::vector<StepRow> rows;
};
/// The steps of each calculator that a derivation passes; they point into it.
[[nodiscard]] std::vector<std::span<const Step>> calculators_of(const std::vector<Step>& steps);
/// One calculator's steps as a table.
[[nodiscard]] StepTable table_of(std::span<const Step> steps);

/// The drawing's title is the caption, its description the text in its place.
struct Picture {
    Drawing drawing;
    std::string id;  ///< letters, digits and hyphens; one of its own in each document
};

/// Places to be filled in by hand.
struct Blanks {
    std::string caption;
    std::vector<std::string> labels;
    int rows = 1;
};

using Block = std::variant<Heading, Paragraph, Banner, Listing, Grid, StepTable, Picture, Blanks>;

struct Chapter {
    std::string id;     ///< letters, digits and hyphens; also its place on a sheet
    std::string title;  ///< empty: none is printed
    std::vector<Block> blocks;
};

/// What tells two documents apart: the program's version, and each file that was read with its SHA-256.
struct Identification {
    std::string program;
    std::vector<std::pair<std::string, std::string>> files;

    /// The first twelve digits of the first file's.
    [[nodiscard]] std::string mark() const { return files.empty() ? "" : files.front().second.substr(0, 12); }
};

/// Of many pages with a list of chapters; or one A4 page with a place for each chapter.
enum class PageKind { report, shop_sheet, care_sheet };

struct Page {
    PageKind kind = PageKind::report;
    std::string type;   ///< "Calculation report"
    std::string title;  ///< of the joint
    std::vector<Chapter> chapters;
    Identification identification;
    bool dense = false;  ///< a sheet with much on it: set smaller
};

/// A whole file that needs nothing else: style and pictures within, no script.
[[nodiscard]] std::string page_html(const Page& page);

/// The same for plain readers; pictures stand there as their descriptions.
[[nodiscard]] std::string page_markdown(const Page& page);

/// A value as documents print it: "120 N·m", "0.41 µm/a".
[[nodiscard]] std::string told(const Value& value, int significant = 4);

}  // namespace faywright
