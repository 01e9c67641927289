// SPDX-License-Identifier: MIT
#include "input/cells.hpp"

#include "quantity/characters.hpp"

#include <csv.h>

#include <algorithm>
#include <new>

namespace faywright {

namespace {

/// A row with line breaks in its cells goes no further: quotes that do not pair must not make every row read the rest of the file.
constexpr std::size_t longest_row = 1U << 14U;

/// Bytes of the first line, with its end.
std::size_t line_length(std::string_view text) {
    const auto end = text.find_first_of("\r\n");
    if (end == std::string_view::npos) return text.size();
    return text.substr(end, 2) == "\r\n" ? end + 2 : end + 1;
}

/// What the library makes of the row at the head of a text.
struct Split {
    std::vector<std::string> cells;
    std::size_t bytes = 0;
    int lines = 0;
    bool whole = false;  ///< it came to the row's end
};

class Parser {
public:
    Parser(char separator, bool strict) {
        if (csv_init(&parser_, strict ? CSV_STRICT : 0) != 0) throw std::bad_alloc();
        csv_set_delim(&parser_, static_cast<unsigned char>(separator));
    }
    ~Parser() { csv_free(&parser_); }
    Parser(const Parser&) = delete;
    Parser& operator=(const Parser&) = delete;

    /// Reads lines up to the row's end, but none that begins after `most` bytes.
    Split split(std::string_view text, std::size_t most) {
        Split out;
        while (!out.whole && out.bytes < text.size() && out.bytes <= most) {
            const auto line = text.substr(out.bytes, line_length(text.substr(out.bytes)));
            if (!feed(line, out)) return out;
            out.bytes += line.size();
            ++out.lines;
        }
        if (!out.whole && out.bytes == text.size()) feed("\n", out);  // the last line may lack its end
        if (!out.whole) csv_fini(&parser_, take_cell, take_row, &out);
        return out;
    }

private:
    bool feed(std::string_view bytes, Split& out) {
        return csv_parse(&parser_, bytes.data(), bytes.size(), take_cell, take_row, &out) == bytes.size();
    }
    static void take_cell(void* bytes, std::size_t count, void* split) {
        auto& cell = static_cast<Split*>(split)->cells.emplace_back();
        if (count > 0) cell.assign(static_cast<const char*>(bytes), count);
    }
    static void take_row(int end, void* split) { static_cast<Split*>(split)->whole = end != -1; }

    csv_parser parser_{};
};

bool holds_both(const std::string& cell) { return cell.find('"') != std::string::npos && cell.find_first_of("\r\n") != std::string::npos; }

}  // namespace

std::optional<CellRow> CellReader::next() {
    while (!text_.empty()) {
        const auto line = text_.substr(0, line_length(text_));
        if (line.find_first_not_of(" \t\r\n") == std::string_view::npos) {
            text_.remove_prefix(line.size());
            ++row_;
            ++line_;
            continue;
        }
        auto row = take();
        if (row.open_quote || !std::all_of(row.cells.begin(), row.cells.end(), is_blank)) return row;
    }
    return std::nullopt;
}

CellRow CellReader::take() {
    // By the rules; else with quotes inside cells, as in inches; else a quote that swallows lines is held to its own.
    auto split = Parser(separator_, true).split(text_, longest_row);
    if (!split.whole) {
        split = Parser(separator_, false).split(text_, longest_row);
        if (!split.whole || std::any_of(split.cells.begin(), split.cells.end(), holds_both))
            split = Parser(separator_, false).split(text_.substr(0, line_length(text_)), 0);
    }
    CellRow out{++row_, line_ + 1, std::move(split.cells), !split.whole};
    text_.remove_prefix(split.bytes);
    line_ += split.lines;
    return out;
}

}  // namespace faywright
