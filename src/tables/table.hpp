// SPDX-License-Identifier: MIT
#pragma once

#include "input/reader.hpp"
#include "quantity/source.hpp"

#include <map>
#include <string>
#include <string_view>
#include <vector>

namespace faywright {

/// Where a row or one of its values comes from.
struct RowSource {
    std::string document, edition, place;
    Basis basis = Basis::practice;

    /// For printers; it points into this.
    [[nodiscard]] Source view() const { return {document, edition, place, basis}; }
};

/// A record of a table with its name and its provenance.
template <class Record>
struct Row : Record {
    std::string name;
    RowSource source;
    std::map<std::string, RowSource> source_of;  ///< by field key, where a value has another source than its row
    std::string note;
    TextPosition at;

    /// A shop's own row, for whoever must know that it was used; it has a file.
    [[nodiscard]] std::string as_own() const {
        return fmt::format("{}: {} {}({}), {}", name, source.document, source.place.empty() ? "" : source.place + " ", word(source.basis),
                           *at.file);
    }

    [[nodiscard]] const RowSource& source_for(const std::string& key) const {
        const auto found = source_of.find(key);
        return found == source_of.end() ? source : found->second;
    }
};

template <class Record>
class Table {
public:
    std::vector<Row<Record>> rows;

    [[nodiscard]] const Row<Record>* find(std::string_view name) const {
        for (const auto& row : rows)
            if (row.name == name) return &row;
        return nullptr;
    }
    [[nodiscard]] std::vector<std::string> names() const {
        std::vector<std::string> result;
        for (const auto& row : rows) result.push_back(row.name);
        return result;
    }
};

namespace detail {

struct SourceDocument {
    std::string title, edition;
    TextPosition at;
};

/// The documents a table file names, and the reader of `source` entries that point to them.
class SourceReader {
public:
    SourceReader(const Node& file, Diagnostics& diagnostics);
    /// Reports a missing or wrong source and gives what could be read.
    RowSource read(const Node& node, const Path& path);

private:
    std::map<std::string, SourceDocument> documents_;
    Diagnostics& diagnostics_;
};

/// Keys any row may have besides its fields.
inline constexpr std::array<std::string_view, 4> row_keys{"name", "source", "source-of", "note"};

std::string read_text(const Node& row, std::string_view key, const Path& path, bool required, Diagnostics& diagnostics);

}  // namespace detail

/// Adds the rows of one file to the table; a row whose name is known already takes its place (that is how a
/// shop's own table lies over the built-in one). Fails on unknown keys, missing sources, a name given twice in
/// the file, values outside their range, and what `Record::fault` finds, each with its place.
template <class Record>
void load_rows(const Node& file, Table<Record>& table, Diagnostics& diagnostics) {
    detail::SourceReader sources(file, diagnostics);
    const std::string row_key(Record::row_key);
    const Node* list = file.find(row_key);
    for (const auto& entry : file.entries)
        if (entry.key != row_key && entry.key != "sources")
            diagnostics.error({"key.unknown",
                               fmt::format("{} is not a known key of this table", entry.key),
                               entry.at,
                               fmt::format("known here: sources, {}", row_key),
                               {},
                               ""});
    if (list == nullptr) return;
    if (list->kind != Node::Kind::array)
        return detail::wrong_kind(*list, Path{nullptr, row_key}, "a list of tables ([[" + row_key + "]])", {diagnostics});
    constexpr std::size_t most_rows = 2000;
    if (list->items.size() > most_rows) {
        diagnostics.error({"list.length",
                           fmt::format("{} has {} rows; at most {} are accepted", row_key, list->items.size(), most_rows),
                           list->at,
                           "",
                           {},
                           ""});
        return;
    }
    std::map<std::string, TextPosition> seen;
    for (const auto& node : list->items) {
        if (node.kind != Node::Kind::table) {
            detail::wrong_kind(node, Path{nullptr, row_key}, "a table", {diagnostics});
            continue;
        }
        Row<Record> row;
        row.at = node.at;
        row.name = detail::read_text(node, "name", Path{nullptr, row_key}, true, diagnostics);
        const auto told = row_key + " \"" + row.name + '"';
        const Path path{nullptr, told};
        if (const auto [first, fresh] = seen.emplace(row.name, node.at); !fresh)
            diagnostics.error({"name.duplicate",
                               fmt::format("{} stands twice in this file", told),
                               node.at,
                               "",
                               {{first->second, "first given here"}},
                               ""});
        row.note = detail::read_text(node, "note", path, false, diagnostics);
        const auto before = diagnostics.count();
        FieldReader fields(node, path, {diagnostics});
        Record::describe(fields, static_cast<Record&>(row));
        fields.finish(detail::row_keys);
        if (const Node* source = node.find("source"); source != nullptr)
            row.source = sources.read(*source, Path{&path, "source"});
        else
            diagnostics.error({"source.missing", fmt::format("{} has no source: document, place and basis", told), node.at, "", {}, ""});
        if (const Node* overrides = node.find("source-of"); overrides != nullptr && overrides->kind != Node::Kind::table)
            detail::wrong_kind(*overrides, Path{&path, "source-of"}, "a table", {diagnostics});
        else if (const Node* overrides = node.find("source-of"); overrides != nullptr)
            for (const auto& entry : overrides->entries) {
                if (node.find(entry.key) == nullptr)
                    diagnostics.error({"source.unknown",
                                       fmt::format("{} gives a source of {}, which the row does not have", told, entry.key),
                                       entry.at,
                                       "",
                                       {},
                                       ""});
                const Path source_path{&path, "source-of"};
                row.source_of[entry.key] = sources.read(entry.value, Path{&source_path, entry.key});
            }
        if (diagnostics.count() == before)
            if constexpr (requires { Record::fault(row); })
                if (const char* fault = Record::fault(row); fault != nullptr)
                    diagnostics.error({"value.fault", fmt::format("{}: {}", told, fault), node.at, "", {}, ""});
        bool replaced = false;
        for (auto& old : table.rows)
            if (old.name == row.name) {
                old = row;
                replaced = true;
            }
        if (!replaced) table.rows.push_back(std::move(row));
    }
}

}  // namespace faywright
