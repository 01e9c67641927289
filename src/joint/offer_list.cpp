// SPDX-License-Identifier: MIT
#include "joint/offer_list.hpp"

#include "input/cells.hpp"
#include "input/reader.hpp"

#include <algorithm>

namespace faywright {

namespace {

/// What a cell of a column holds, from the type of its field.
struct Column {
    enum class Kind { text, number, word, yes_or_no };
    std::string key;
    Kind kind = Kind::text;
    Dimension dimension;
};

template <class T>
Column column_of(const char* key) {
    if constexpr (detail::IsOptional<T>::value)
        return column_of<typename T::value_type>(key);
    else if constexpr (detail::Number<T>)
        return {key, Column::Kind::number, dimension_of<T>};
    else if constexpr (detail::Word<T>)
        return {key, Column::Kind::word, {}};
    else if constexpr (std::same_as<T, bool>)
        return {key, Column::Kind::yes_or_no, {}};
    else
        return {key, Column::Kind::text, {}};
}

std::vector<Column> known_columns() {
    std::vector<Column> out;
    OfferRow row;
    OfferRow::describe([&]<class T>(const Name& name, const T&, const auto&...) { out.push_back(column_of<T>(name.key)); }, row);
    return out;
}

/// Kept beside the offer, saying nothing of the part.
bool is_aside(std::string_view key) { return key == "item" || key == "price" || key == "comment"; }

std::string kebab(std::string text) {
    std::replace_if(
        text.begin(), text.end(), [](char c) { return c == ' ' || c == '_'; }, '-');
    return lowered(std::move(text));
}

/// Without outer blanks; blanks and line breaks inside are one space each.
std::string tidied(std::string_view cell) {
    std::string out;
    bool gap = false;
    for (std::size_t at = 0; at < cell.size();) {
        const auto n = std::max<std::size_t>(sequence_length(cell, at), 1);
        const auto character = cell.substr(at, n);
        at += n;
        if (character == "\n" || character == "\r" || character == "\t" || is_blank(character)) {
            gap = !out.empty();
            continue;
        }
        if (gap) out += ' ';
        gap = false;
        out += character;
    }
    return out;
}

bool says_nothing(const std::string& text) { return text.empty() || text == "-" || text == "\u2013" || text == "\u2014"; }

bool is_bare_number(const std::string& text) { return text.find_first_not_of("0123456789.,+-") == std::string::npos; }

/// A column of the list: its name as written, the field it fills, the unit of its bare numbers.
struct Heading {
    std::string name;
    const Column* column = nullptr;
    std::string unit;
    bool may_matter = false;  ///< passed over, and like a known column
};

/// Headings of the trade for the same columns.
struct OtherHeading {
    std::string_view heading, meant;
};
constexpr OtherHeading other_headings[] = {
    {"id", "item"},
    {"no", "item"},
    {"part-no", "item"},
    {"pos", "item"},
    {"description", "designation"},
    {"bezeichnung", "designation"},
    {"laenge", "length"},
    {"länge", "length"},
    {"grade", "class"},
    {"property-class", "class"},
    {"festigkeitsklasse", "class"},
    {"coating", "finish"},
    {"oberflaeche", "finish"},
    {"oberfläche", "finish"},
    {"thread", "size"},
    {"gewinde", "size"},
    {"mark", "marking"},
    {"certificate", "test-report"},
    {"unit-price", "price"},
    {"preis", "price"},
    {"remarks", "comment"},
    {"bemerkung", "comment"},
};

/// "Length (mm)" or "length [mm]": the key and the unit.
std::pair<std::string, std::string> key_and_unit(const std::string& name) {
    std::string words = name, unit;
    const auto open = name.find_last_of("([");
    if (open != std::string::npos && open > 0 && (name.back() == ')' || name.back() == ']')) {
        words = tidied(name.substr(0, open));
        unit = tidied(name.substr(open + 1, name.size() - open - 2));
    }
    while (!words.empty() && (words.back() == '?' || words.back() == ':' || words.back() == ' ')) words.pop_back();
    auto key = kebab(words);
    for (const auto& [heading, meant] : other_headings)
        if (key == heading) key = meant;
    return {key, unit};
}

const Column* find(const std::vector<Column>& known, const std::string& key) {
    const auto found = std::find_if(known.begin(), known.end(), [&](const Column& column) { return column.key == key; });
    return found == known.end() ? nullptr : &*found;
}

class ListReader {
public:
    ListReader(const std::string& text, const std::string& file, Diagnostics& diagnostics)
        : whole_(text), text_(text), file_(std::make_shared<const std::string>(file)), diagnostics_(diagnostics) {}

    OfferList read() {
        if (!begins_as_text() || !takes_separator_line()) return {};
        if (separator_ == '\0') separator_ = separator_of_header();
        CellReader cells(text_, separator_, before_);
        const auto header = cells.next();
        if (!header) return refused("list.empty", "the list is empty");
        if (!takes_header(*header)) return {};
        while (const auto row = cells.next()) {
            if (list_.rows.size() == most_offers)
                return refused("list.length", fmt::format("the list has more than {} rows", most_offers), row->line);
            list_.rows.push_back(offer_of(*row));
        }
        if (list_.rows.empty()) return refused("list.empty", "the list has a header, but no row under it", header->line);
        return std::move(list_);
    }

private:
    OfferList refused(const char* code, std::string message, int line = 0, std::string help = "") {
        if (line > 0) diagnostics_.keep_text(*file_, whole_);
        diagnostics_.error({code, std::move(message), {file_, std::max(1, line), 1, 1}, "", {}, std::move(help)});
        return {};
    }
    bool refuses(const char* code, std::string message, int line = 0, std::string help = "") {
        refused(code, std::move(message), line, std::move(help));
        return false;
    }

    bool begins_as_text() {
        const std::string help = "save the table as text, \"CSV UTF-8\"";
        if (whole_.size() > largest_input) return refuses("list.size", fmt::format("the list is larger than {} bytes", largest_input));
        if (text_.starts_with("\xff\xfe") || text_.starts_with("\xfe\xff"))
            return refuses("text.encoding", "the list is UTF-16; UTF-8 is wanted", 0, help);
        if (text_.starts_with("\xef\xbb\xbf")) text_.remove_prefix(3);
        if (text_.starts_with("PK\x03\x04")) return refuses("text.binary", "the list is a packed file, as spreadsheets are", 0, help);
        const auto begin = text_.substr(0, text_.find_first_of("\r\n", std::min(text_.find_first_not_of(" \t\r\n"), text_.size())));
        const auto is_control = [](char c) { return (c >= 0 && c < 0x20 && c != '\t' && c != '\r' && c != '\n') || c == 0x7f; };
        if (std::any_of(begin.begin(), begin.end(), is_control))
            return refuses("text.binary", "the list is no text: control characters stand in its first line", 0, help);
        return true;
    }

    /// "sep=;", as some spreadsheets write before the header.
    bool takes_separator_line() {
        const auto end = std::min(text_.find_first_of("\r\n"), text_.size());
        const auto line = text_.substr(0, end);
        if (line.size() < 5 || lowered(std::string(line.substr(0, 4))) != "sep=") return true;
        separator_ = line[4];
        if (std::string_view(";,\t|").find(separator_) == std::string_view::npos || !is_blank(line.substr(5)))
            return refuses("list.separator",
                           "the first line names a separator that is none; a semicolon, a comma, a tab or a bar is accepted", 1);
        text_.remove_prefix(std::min(end + (text_.substr(end, 2) == "\r\n" ? 2U : 1U), text_.size()));
        before_ = 1;
        return true;
    }

    /// The one that makes most known columns of the header, or else most columns.
    char separator_of_header() const {
        char best = ';';
        std::pair<std::size_t, std::size_t> most{0, 0};
        for (const char candidate : {';', '\t', ','}) {
            const auto header = CellReader(text_, candidate).next();
            if (!header) continue;
            const auto known = std::count_if(header->cells.begin(), header->cells.end(), [&](const std::string& cell) {
                return find(known_, key_and_unit(tidied(cell)).first) != nullptr;
            });
            const std::pair score{static_cast<std::size_t>(known), header->cells.size()};
            if (score <= most) continue;
            most = score;
            best = candidate;
        }
        return best;
    }

    bool takes_header(const CellRow& row) {
        auto cells = row.cells;
        while (!cells.empty() && tidied(cells.back()).empty()) cells.pop_back();
        if (cells.size() > most_columns)
            return refuses("list.columns", fmt::format("the list has {} columns; at most {} are accepted", cells.size(), most_columns),
                           row.line);
        if (row.open_quote) return refuses("text.quote", "a quote of the header is never closed", row.line);
        std::vector<std::string> keys;
        for (const auto& column : known_) keys.push_back(column.key);
        for (const auto& cell : cells) take_heading(row, tidied(cell), keys);
        const bool any = std::any_of(headings_.begin(), headings_.end(),
                                     [](const Heading& h) { return h.column != nullptr && !is_aside(h.column->key); });
        if (!any)
            return refuses("list.header", "the first row, which is the header, names no known column of an offer", row.line,
                           fmt::format("known are: {}", fmt::join(keys, ", ")));
        return true;
    }

    void take_heading(const CellRow& row, const std::string& name, const std::vector<std::string>& keys) {
        Heading heading{name, nullptr, ""};
        const int at = static_cast<int>(headings_.size()) + 1;
        const auto tell = [&](const char* code, std::string found, std::string wanted) {
            list_.header.push_back({code, row.row, row.line, at, shown(name), std::move(found), std::move(wanted)});
        };
        const auto [key, unit] = key_and_unit(name);
        const auto* column = find(known_, key);
        const auto same =
            std::find_if(headings_.begin(), headings_.end(), [&](const Heading& h) { return column != nullptr && h.column == column; });
        if (name.empty()) {
            tell("column.unnamed", "has no name and is passed over", "a name of a column is wanted");
        } else if (column == nullptr) {
            const auto close = nearest_label(key, keys);
            tell("column.unknown", "is no known column and is passed over",
                 close.empty() ? fmt::format("known are {}", fmt::join(keys, ", ")) : close);
            heading.may_matter = !close.empty();
        } else if (same != headings_.end()) {
            tell("column.twice", fmt::format("says the same as column {} and is passed over", same - headings_.begin() + 1),
                 "one column of each name is accepted");
            heading.may_matter = true;
        } else {
            heading.column = column;
            list_.columns.push_back({column->key, shown(name), at});
            if (column->key == "price" || (column->kind == Column::Kind::number && read_value("1 " + unit, column->dimension)))
                heading.unit = unit;
            else if (column->kind == Column::Kind::number && !unit.empty())
                tell("column.unit", fmt::format("names \"{}\", which is passed over", shown(unit)),
                     fmt::format("a unit of {} is wanted", dimension_name(column->dimension)));
        }
        headings_.push_back(std::move(heading));
    }

    OfferRow offer_of(const CellRow& row) const {
        OfferRow out;
        out.row = row.row;
        out.line = row.line;
        Node fields;
        bool says = false;
        for (std::size_t i = 0; i < row.cells.size(); ++i) {
            const int column = static_cast<int>(i) + 1;
            const auto text = tidied(row.cells[i]);
            const bool open = row.open_quote && i + 1 == row.cells.size(), beyond = i >= headings_.size();
            if (!open && says_nothing(text)) continue;
            const auto tell = [&](Fault fault) {
                out.problems.push_back({fault.code, row.row, row.line, column, beyond ? "" : shown(headings_[i].name),
                                        fmt::format("is \"{}\"{}", shown(text, 40), fault.found), std::move(fault.wanted)});
            };
            if (open) {
                tell({"text.quote", ", a quote that is never closed", "quotes are accepted in pairs, doubled inside a quoted cell"});
                break;
            }
            if (beyond) {
                tell({"row.cells", ", which stands under no heading", "a cell that holds the separator is accepted in quotes"});
                break;
            }
            const auto* field = headings_[i].column;
            if (field == nullptr) {
                if (headings_[i].may_matter) out.passed_over.push_back({shown(headings_[i].name), shown(text, 40)});
                continue;
            }
            says = says || !is_aside(field->key);
            Node value;
            value.at = {nullptr, row.row, column, 1};
            if (auto fault = take(text, headings_[i], value))
                tell(std::move(*fault));
            else
                fields.entries.push_back({field->key, value.at, value});
        }
        read_fields(fields, out);
        if (!says && out.problems.empty())
            out.problems.push_back(
                {"row.says-nothing", row.row, row.line, 0, "", "says nothing of the part", "at least its name or designation is wanted"});
        std::stable_sort(out.problems.begin(), out.problems.end(),
                         [](const OfferProblem& a, const OfferProblem& b) { return a.column < b.column; });
        return out;
    }

    /// What is wrong with a cell, after what it is.
    struct Fault {
        const char* code;
        std::string found, wanted;
    };

    /// The cell as the reader of records takes it.
    [[nodiscard]] std::optional<Fault> take(std::string text, const Heading& heading, Node& value) const {
        for (std::size_t at = 0; at < text.size();) {
            const auto n = sequence_length(text, at);
            if (n == 0) return Fault{"text.encoding", ", which holds a byte that is not UTF-8", "the list saved as UTF-8 is wanted"};
            if (const auto* why = unfit(text, at, n); why != nullptr)
                return Fault{"text.control", fmt::format(", which holds {}", why), "text that can be seen is wanted"};
            at += n;
        }
        value.kind = Node::Kind::string;
        switch (heading.column->kind) {
            case Column::Kind::text: value.text = with_unit(std::move(text), heading); break;
            case Column::Kind::word: value.text = kebab(std::move(text)); break;
            case Column::Kind::number:
                if (text.find('.') != std::string::npos && text.find(',') != std::string::npos)
                    return Fault{"number.signs", ", with both a point and a comma", "a decimal sign is accepted, none between thousands"};
                if (separator_ != ',' && std::count(text.begin(), text.end(), ',') == 1) std::replace(text.begin(), text.end(), ',', '.');
                value.text = with_unit(std::move(text), heading);
                break;
            case Column::Kind::yes_or_no: {
                const auto answer = yes_or_no(text);
                if (!answer) return Fault{"word.yes-or-no", "", "yes, true, 1 or x, or no, false or 0 is wanted"};
                value.kind = Node::Kind::boolean;
                value.boolean = *answer;
                break;
            }
        }
        return std::nullopt;
    }

    /// By the record's description; its mistakes become the row's problems.
    void read_fields(const Node& fields, OfferRow& row) const {
        Diagnostics mistakes;
        const Path root;
        FieldReader reader(fields, root, ReadContext{mistakes});
        OfferRow::describe(reader, row);
        for (const auto& mistake : mistakes.sorted()) {
            // "length is ...; a length is wanted": the column is told beside it.
            const auto& heading = headings_[static_cast<std::size_t>(mistake.at.column) - 1];
            const auto phrase = mistake.message.substr(heading.column->key.size() + 1);
            const auto middle = phrase.rfind("; ");
            auto wanted = middle == std::string::npos ? std::string() : phrase.substr(middle + 2);
            if (!mistake.label.empty()) wanted += fmt::format(" ({})", mistake.label);
            row.problems.push_back(
                {mistake.code, row.row, row.line, mistake.at.column, shown(heading.name), phrase.substr(0, middle), std::move(wanted)});
        }
    }

    static std::string with_unit(std::string text, const Heading& heading) {
        return heading.unit.empty() || !is_bare_number(text) ? text : text + " " + heading.unit;
    }

    static std::optional<bool> yes_or_no(const std::string& text) {
        const auto word = lowered(text);
        for (const auto* yes : {"yes", "true", "1", "x"})
            if (word == yes) return true;
        for (const auto* no : {"no", "false", "0"})
            if (word == no) return false;
        return std::nullopt;
    }

    const std::string& whole_;
    std::string_view text_;  ///< without what comes before the header
    std::shared_ptr<const std::string> file_;
    Diagnostics& diagnostics_;
    std::vector<Column> known_ = known_columns();
    char separator_ = '\0';
    int before_ = 0;  ///< lines before the text
    std::vector<Heading> headings_;
    OfferList list_;
};

}  // namespace

std::string OfferProblem::text() const {
    const auto place = column == 0 ? std::string() : fmt::format(", column {}{}", column, name.empty() ? "" : fmt::format(" ({})", name));
    return fmt::format("row {}{}: {}{}", row, place, found, wanted.empty() ? "" : "; " + wanted);
}

OfferList read_offers(const std::string& text, const std::string& file, Diagnostics& diagnostics) {
    return ListReader(text, file, diagnostics).read();
}

}  // namespace faywright
