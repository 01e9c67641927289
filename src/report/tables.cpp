// SPDX-License-Identifier: MIT
#include "report/tables.hpp"

#include "report/json.hpp"
#include "report/layout.hpp"
#include "report/row_values.hpp"
#include "report/steps_text.hpp"

namespace faywright {

namespace {

template <class Record>
std::string rows_text(const Table<Record>& table) {
    std::string out;
    for (const auto& row : table.rows) {
        out += row.name + '\n';
        out += wrapped(line_of(values_of(row), ";  "), "    ", "    ");
        out += wrapped(source_text(row.source.view()), "    source: ", "        ");
        for (const auto& [key, source] : row.source_of)
            out += wrapped(source_text(source.view()), fmt::format("    {}: ", key), "        ");
        if (!row.note.empty()) out += wrapped(row.note, "    note: ", "        ");
    }
    return out;
}

template <class Record>
json::Json rows_json(const Table<Record>& table) {
    auto rows = json::Json::array();
    for (const auto& row : table.rows) {
        json::Json line;
        line["name"] = row.name;
        for (const auto& value : values_of(row)) {
            if (value.text.empty())
                line[value.key] = json::of(value.value);
            else
                line[value.key] = value.text;
        }
        line["source"] = json::of(row.source.view());
        for (const auto& [key, source] : row.source_of) line["source-of"][key] = json::of(source.view());
        if (!row.note.empty()) line["note"] = row.note;
        rows.push_back(std::move(line));
    }
    return rows;
}

template <class Record>
std::array<int, 3> basis_counts(const Table<Record>& table) {
    std::array<int, 3> counts{};
    for (const auto& row : table.rows) ++counts.at(static_cast<std::size_t>(row.source.basis));
    return counts;
}

}  // namespace

std::string table_list_text(const Tables& tables) {
    std::string out = "tables (faywright table NAME shows the rows and their sources)\n\n";
    out += "  " + fitted("table", 16) + fitted_right("rows", 6) + fitted_right("published", 12) + fitted_right("memory", 9) +
           fitted_right("practice", 11) + '\n';
    tables.each([&](std::string_view name, const auto& table) {
        const auto counts = basis_counts(table);
        out += "  " + fitted(name, 16) + fitted_right(fmt::format("{}", table.rows.size()), 6) +
               fitted_right(fmt::format("{}", counts[0]), 12) + fitted_right(fmt::format("{}", counts[1]), 9) +
               fitted_right(fmt::format("{}", counts[2]), 11) + '\n';
    });
    return out + '\n' +
           wrapped(
               "published: looked up in the named document or a reprint of it; memory: recalled from it, not looked up; practice: common "
               "practice or judgement, no source.");
}

std::string table_list_json(const Tables& tables) {
    json::Json out;
    out["tables"] = json::Json::array();
    tables.each([&](std::string_view name, const auto& table) {
        const auto counts = basis_counts(table);
        json::Json line;
        line["name"] = name;
        line["rows"] = table.rows.size();
        line["published"] = counts[0];
        line["memory"] = counts[1];
        line["practice"] = counts[2];
        out["tables"].push_back(std::move(line));
    });
    return json::printed(out);
}

std::optional<std::string> table_text(const Tables& tables, const std::string& name) {
    std::optional<std::string> out;
    tables.each([&](std::string_view each, const auto& table) {
        if (each == name) out = rows_text(table);
    });
    return out;
}

std::optional<std::string> table_json(const Tables& tables, const std::string& name) {
    std::optional<std::string> out;
    tables.each([&](std::string_view each, const auto& table) {
        if (each != name) return;
        json::Json whole;
        whole["table"] = name;
        whole["rows"] = rows_json(table);
        out = json::printed(whole);
    });
    return out;
}

}  // namespace faywright
