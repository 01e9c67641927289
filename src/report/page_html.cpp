// SPDX-License-Identifier: MIT
#include "quantity/characters.hpp"
#include "report/escape.hpp"
#include "report/page.hpp"
#include "report/style.hpp"

#include <fmt/format.h>

namespace faywright {

namespace {

bool is_plain(char c) { return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool is_greek(char c) { return c == '\xce' || c == '\xcf'; }

/// A formula with its indices set low: what follows an underscore, as far as letters, digits and inner commas go.
std::string formula_markup(std::string_view text) {
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        const bool named = at > 0 && (is_plain(text[at - 1]) || (static_cast<unsigned char>(text[at - 1]) & 0x80U) != 0);
        if (text[at] != '_' || !named) {
            auto end = at + 1;
            while (end < text.size() && text[end] != '_') ++end;
            out += markup_text(text.substr(at, end - at));
            at = end;
            continue;
        }
        auto end = at + 1;
        while (end < text.size()) {
            const bool inner_comma = text[end] == ',' && end + 1 < text.size() && (is_plain(text[end + 1]) || is_greek(text[end + 1]));
            if (is_plain(text[end]) || inner_comma)
                ++end;
            else if (is_greek(text[end]) && end + 1 < text.size())
                end += 2;
            else
                break;
        }
        out += fmt::format("<sub>{}</sub>", markup_text(text.substr(at + 1, end - at - 1)));
        at = end;
    }
    return out;
}

/// Text of a table's cell: a long word may be broken, so that the table stays within the page.
std::string cell_markup(std::string_view text) {
    constexpr std::size_t most = 22;
    std::string out, run;
    std::size_t width = 0;
    for (const char c : text) {
        if (width == most && !continues_character(c)) {
            out += markup_text(run) + "<wbr>";
            run.clear();
            width = 0;
        }
        run += c;
        if (c == ' ' || c == '-')
            width = 0;
        else if (!continues_character(c))
            ++width;
    }
    return out + markup_text(run);
}

const char* word_of_tone(Tone tone) {
    switch (tone) {
        case Tone::pass: return "pass";
        case Tone::fail: return "fail";
        case Tone::caution: return "caution";
        case Tone::plain: break;
    }
    return "";
}

std::string class_of(Tone tone) { return tone == Tone::plain ? "" : fmt::format(" class=\"{}\"", word_of_tone(tone)); }

std::string body_class(const Page& page) {
    if (page.kind == PageKind::report) return "report";
    return fmt::format("sheet {}{}", page.kind == PageKind::shop_sheet ? "shop" : "care", page.dense ? " dense" : "");
}

class HtmlWriter {
public:
    explicit HtmlWriter(const Page& page) : page_(page) {}

    std::string written() {
        const auto title = markup_text(fmt::format("{}: {}", page_.type, page_.title));
        out_.reserve(page_.kind == PageKind::report ? 1U << 20U : 1U << 16U);
        out_ += fmt::format(
            "<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n<meta name=\"viewport\" content=\"width=device-width, "
            "initial-scale=1\">\n<title>{}</title>\n<style>\n{}@page {{ @bottom-left {{ content: \"{} {}\" }} }}\n</style>\n</head>\n"
            "<body class=\"{}\">\n",
            title, style_sheet(), page_.identification.program, page_.identification.mark(), body_class(page_));
        const bool sheet = page_.kind != PageKind::report;
        out_ += fmt::format("<header>\n<p class=\"type\">{}</p>\n<h1>{}</h1>\n</header>\n",
                            markup_text(sheet ? fmt::format("{}; {}", page_.type, made_from()) : page_.type), markup_text(page_.title));
        if (!sheet) contents();
        out_ += "<main>\n";
        for (const auto& each : page_.chapters) chapter(each);
        out_ += "</main>\n";
        if (!sheet) footer();
        out_ += "</body>\n</html>\n";
        return std::move(out_);
    }

private:
    /// On one line, for sheets: the version, and the first file with the beginning of its SHA-256.
    [[nodiscard]] std::string made_from() const {
        const auto& from = page_.identification;
        return from.files.empty() ? from.program : fmt::format("{}; {} {}", from.program, from.files.front().first, from.mark());
    }

    void contents() {
        out_ += "<nav aria-label=\"Contents\">\n<ol>\n";
        for (const auto& each : page_.chapters)
            if (!each.title.empty()) out_ += fmt::format("<li><a href=\"#{}\">{}</a></li>\n", each.id, markup_text(each.title));
        out_ += "</ol>\n</nav>\n";
    }

    void chapter(const Chapter& chapter) {
        out_ += fmt::format("<section id=\"{0}\"{1}>\n", chapter.id,
                            chapter.title.empty() ? std::string() : fmt::format(" aria-labelledby=\"{}-title\"", chapter.id));
        if (!chapter.title.empty()) out_ += fmt::format("<h2 id=\"{}-title\">{}</h2>\n", chapter.id, markup_text(chapter.title));
        for (const auto& block : chapter.blocks) std::visit([&](const auto& each) { write(each); }, block);
        out_ += "</section>\n";
    }

    void write(const Heading& heading) { out_ += fmt::format("<h{0}>{1}</h{0}>\n", heading.level, markup_text(heading.words)); }

    void write(const Paragraph& paragraph) { out_ += fmt::format("<p{}>{}</p>\n", class_of(paragraph.tone), markup_text(paragraph.words)); }

    void write(const Banner& banner) {
        out_ += fmt::format("<p class=\"banner{}{}\"><strong>{}</strong> <span>{}</span></p>\n", banner.tone == Tone::plain ? "" : " ",
                            word_of_tone(banner.tone), markup_text(banner.mark), markup_text(banner.words));
    }

    void write(const Listing& listing) {
        const char* tag = listing.numbered ? "ol" : "ul";
        out_ += fmt::format("<{}>\n", tag);
        for (const auto& item : listing.items) out_ += fmt::format("<li>{}</li>\n", markup_text(item));
        out_ += fmt::format("</{}>\n", tag);
    }

    void write(const Grid& grid) {
        if (grid.rows.empty()) return;
        begin_table("", markup_text(grid.caption), grid.columns);
        for (const auto& row : grid.rows) {
            out_ += "<tr>";
            for (std::size_t i = 0; i < row.size(); ++i) {
                const auto words = cell_markup(row[i].words);
                if (i == 0)
                    out_ += fmt::format("<th scope=\"row\"{}>{}</th>", side_of(grid.columns[i]), words);
                else if (row[i].tone == Tone::plain)
                    out_ += fmt::format("<td{}>{}</td>", side_of(grid.columns[i]), words);
                else
                    out_ += fmt::format("<td{}><span{}>{}</span></td>", side_of(grid.columns[i]), class_of(row[i].tone), words);
            }
            out_ += "</tr>\n";
        }
        out_ += "</tbody>\n</table>\n";
    }
    /// Caption and head of a table, up to its first row.
    void begin_table(std::string_view kind, const std::string& caption, const std::vector<Column>& columns) {
        out_ += fmt::format("<table{}>\n", kind);
        if (!caption.empty()) out_ += fmt::format("<caption>{}</caption>\n", caption);
        out_ += "<thead><tr>";
        for (const auto& column : columns) out_ += fmt::format("<th scope=\"col\"{}>{}</th>", side_of(column), markup_text(column.heading));
        out_ += "</tr></thead>\n<tbody>\n";
    }
    static const char* side_of(const Column& column) { return column.align == Align::right ? " class=\"number\"" : ""; }

    void write(const StepTable& table) {
        auto caption = markup_text(table.title);
        if (!table.source.empty()) caption += fmt::format(" <span class=\"source\">source: {}</span>", markup_text(table.source));
        begin_table(" class=\"steps\"", caption, {{"symbol"}, {"meaning or formula"}, {"with values"}, {"result", Align::right}});
        for (const auto& row : table.rows) {
            out_.append("<tr><th scope=\"row\">").append(formula_markup(row.symbol)).append("</th><td>");
            out_.append(row.in_words ? markup_text(row.formula) : formula_markup(row.formula)).append("</td><td>");
            out_.append(formula_markup(row.with_values)).append("</td><td class=\"number\">");
            out_.append(markup_text(row.result)).append("</td></tr>\n");
        }
        out_ += "</tbody>\n</table>\n";
    }

    void write(const Picture& picture) {
        out_ += fmt::format("<figure>\n{}<figcaption>{}</figcaption>\n</figure>\n", svg_of(picture.drawing, picture.id),
                            markup_text(picture.drawing.title()));
    }

    void write(const Blanks& blanks) {
        begin_table(" class=\"blanks\"", markup_text(blanks.caption), {blanks.labels.begin(), blanks.labels.end()});
        for (int row = 0; row < blanks.rows; ++row) {
            out_ += "<tr>";
            for (std::size_t i = 0; i < blanks.labels.size(); ++i) out_ += "<td>&nbsp;</td>";
            out_ += "</tr>\n";
        }
        out_ += "</tbody>\n</table>\n";
    }

    void footer() {
        out_ += fmt::format("<footer>\n<p>{}.", markup_text(page_.identification.program));
        for (const auto& [file, digest] : page_.identification.files)
            out_ += fmt::format(" {}: SHA-256 <code>{}</code>.", markup_text(file), markup_text(digest));
        out_ += "</p>\n</footer>\n";
    }

    const Page& page_;
    std::string out_;
};

}  // namespace

std::string page_html(const Page& page) { return HtmlWriter(page).written(); }

}  // namespace faywright
