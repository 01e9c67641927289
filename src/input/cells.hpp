// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace faywright {

/// A row of separated text as its cells.
struct CellRow {
    int row = 1;   ///< as a spreadsheet counts: blank rows too, one with line breaks in its cells once
    int line = 1;  ///< of the text, where the row begins
    std::vector<std::string> cells;
    bool open_quote = false;  ///< the last cell's quote is never closed: the row was ended with its line
};

/// Splits separated text into rows of cells, quoted or not: the only door to libcsv. Line ends are LF, CRLF or CR; doubled quotes stand
/// for one, and a quote inside an unquoted cell for itself. Quotes that do not pair cost their own line, not those after it.
class CellReader {
public:
    /// `before`: lines of the file before the text.
    CellReader(std::string_view text, char separator, int before = 0) : text_(text), separator_(separator), row_(before), line_(before) {}

    /// The next row that holds anything but blanks.
    [[nodiscard]] std::optional<CellRow> next();

private:
    [[nodiscard]] CellRow take();

    std::string_view text_;  ///< what is left
    char separator_;
    int row_, line_;
};

}  // namespace faywright
