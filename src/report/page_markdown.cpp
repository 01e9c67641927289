// SPDX-License-Identifier: MIT
#include "quantity/characters.hpp"
#include "report/layout.hpp"
#include "report/page.hpp"

#include <fmt/format.h>

namespace faywright {

namespace {

/// One line that Markdown shows as it is: neither line ends nor marks at its beginning mean anything.
std::string line_text(std::string_view text) {
    auto out = markdown_text(shown(text, text.size()));
    const auto ends_mark = [&](std::size_t at) { return at >= out.size() || out[at] == ' '; };
    const auto digits = out.find_first_not_of("0123456789");
    if (digits != std::string::npos && digits > 0 && (out[digits] == '.' || out[digits] == ')') && ends_mark(digits + 1))
        out = out.substr(0, digits) + '\\' + out.substr(digits);
    else if (!out.empty() && (out.front() == '-' || out.front() == '+' || out.front() == '=') && (ends_mark(1) || out[1] == out[0]))
        out = '\\' + out;
    return out;
}

class MarkdownWriter {
public:
    explicit MarkdownWriter(const Page& page) : page_(page) {}

    std::string written() {
        out_.reserve(page_.kind == PageKind::report ? 1U << 19U : 1U << 15U);
        out_ += fmt::format("# {}: {}\n", line_text(page_.type), line_text(page_.title));
        for (const auto& chapter : page_.chapters) {
            if (!chapter.title.empty()) out_ += fmt::format("\n## {}\n", line_text(chapter.title));
            for (const auto& block : chapter.blocks) std::visit([&](const auto& each) { write(each); }, block);
        }
        out_ += fmt::format("\n---\n\n{}.", line_text(page_.identification.program));
        for (const auto& [file, digest] : page_.identification.files) out_ += fmt::format(" {}: SHA-256 `{}`.", line_text(file), digest);
        out_ += '\n';
        return std::move(out_);
    }

private:
    void write(const Heading& heading) {
        out_ +=
            fmt::format("\n{} {}\n", std::string_view("####").substr(0, static_cast<std::size_t>(heading.level)), line_text(heading.words));
    }
    void write(const Paragraph& paragraph) { out_ += fmt::format("\n{}\n", line_text(paragraph.words)); }
    void write(const Banner& banner) { out_ += fmt::format("\n**{}** {}\n", line_text(banner.mark), line_text(banner.words)); }
    void write(const Listing& listing) {
        out_ += '\n';
        for (std::size_t i = 0; i < listing.items.size(); ++i)
            out_ += fmt::format("{} {}\n", listing.numbered ? fmt::format("{}.", i + 1) : "-", line_text(listing.items[i]));
    }
    void write(const Grid& grid) {
        if (grid.rows.empty()) return;
        out_ += grid.caption.empty() ? "\n|" : fmt::format("\n*{}*\n\n|", line_text(grid.caption));
        for (const auto& column : grid.columns) out_ += fmt::format(" {} |", line_text(column.heading));
        out_ += "\n|";
        for (const auto& column : grid.columns) out_ += column.align == Align::right ? "---:|" : "---|";
        for (const auto& row : grid.rows) {
            out_ += "\n|";
            for (const auto& cell : row) out_ += fmt::format(" {} |", cell.words.empty() ? "" : line_text(cell.words));
        }
        out_ += '\n';
    }
    void write(const StepTable& table) {
        out_ += fmt::format("\n*{}*", line_text(table.title));
        if (!table.source.empty()) out_ += fmt::format("; source: {}", line_text(table.source));
        out_ += "\n\n| symbol | meaning or formula | with values | result |\n|---|---|---|---:|\n";
        for (const auto& row : table.rows) {
            for (const auto* cell : {&row.symbol, &row.formula, &row.with_values, &row.result})
                out_.append("| ").append(line_text(*cell)).append(" ");
            out_ += "|\n";
        }
    }
    void write(const Picture& picture) {
        out_ += fmt::format("\n*{}*: {}\n", line_text(picture.drawing.title()), line_text(picture.drawing.description()));
    }
    void write(const Blanks& blanks) {
        out_ += blanks.caption.empty() ? "\n" : fmt::format("\n*{}*\n\n", line_text(blanks.caption));
        for (const auto& label : blanks.labels) out_ += fmt::format("- {}: ______\n", line_text(label));
    }

    const Page& page_;
    std::string out_;
};

}  // namespace

std::string page_markdown(const Page& page) { return MarkdownWriter(page).written(); }

}  // namespace faywright
