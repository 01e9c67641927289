// SPDX-License-Identifier: MIT
#pragma once

#include "input/diagnostic.hpp"
#include "joint/offer_file.hpp"

#include <string>
#include <vector>

/// A supplier's list: separated text as spreadsheets write it, one offer a row under a header of column names.
namespace faywright {

/// What cannot be read of a list, and where.
struct OfferProblem {
    std::string code;    ///< stable short word, e.g. "unit.missing"
    int row = 1;         ///< counted as a spreadsheet does: blank rows too, one with line breaks in its cells once
    int line = 1;        ///< of the text, where the row begins
    int column = 0;      ///< from 1; 0 where the row as a whole is meant
    std::string name;    ///< of the column, as its header has it
    std::string found;   ///< a phrase: `is "200", which has no unit`
    std::string wanted;  ///< a phrase: `a length is wanted, for example "16 mm"`

    /// "row 5, column 3 (length): is ...; ... is wanted".
    [[nodiscard]] std::string text() const;
};

/// One row: the offer as far as it could be read, and what could not.
struct OfferRow {
    int row = 1, line = 1;
    std::optional<std::string> item, price, comment;
    OfferFile offer;
    /// A column that is passed over, and is like a known one, with what stands there: it may say what matters.
    struct PassedOver {
        std::string column, says;
    };
    std::vector<PassedOver> passed_over;
    std::vector<OfferProblem> problems;  ///< from left to right; the fields they name are left out of the offer

    /// The columns of a list. `id` is another name of `item`.
    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"item", "", "number or name of the row"}, self.item);
        OfferFile::describe(field, self.offer);
        field(Name{"price", "", "kept as written"}, self.price);
        field(Name{"comment", "", "kept as written"}, self.comment);
    }
};

struct OfferList {
    /// Where a field's values stand.
    struct Column {
        std::string key, name;
        int number = 0;  ///< from 1
    };
    std::vector<Column> columns;
    std::vector<OfferProblem> header;  ///< columns passed over: unknown, named twice, without a name
    std::vector<OfferRow> rows;        ///< in file order; rows with nothing in them are left out
};

inline constexpr std::size_t most_offers = 5000;
inline constexpr std::size_t most_columns = 200;

/// Reads a list separated by semicolons, tabs or commas, as a line "sep=;" or else the header tells. Names of columns are the keys of
/// `OfferRow`, or some words of the trade for them ("description", "Bezeichnung"), whatever their case, with spaces or underscores for
/// hyphens, and with a unit for bare numbers: "length (mm)". Yes or no is yes, true, 1, x or no, false, 0; an empty cell or a dash says
/// nothing; a decimal comma is read where commas do not separate. Only what is no list at all is an error: then the list is empty.
[[nodiscard]] OfferList read_offers(const std::string& text, const std::string& file, Diagnostics& diagnostics);

}  // namespace faywright
