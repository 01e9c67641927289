// SPDX-License-Identifier: MIT
#include "tables/tables.hpp"

#include "tables/embedded.hpp"
#include "tables/packed.hpp"

#include <fstream>
#include <iterator>

namespace faywright {

namespace {

void lay_over(Tables& tables, const std::filesystem::path& folder, Diagnostics& diagnostics) {
    std::error_code failure;
    std::vector<std::filesystem::path> files;
    for (const auto& entry : std::filesystem::directory_iterator(folder, failure))
        if (entry.path().extension() == ".toml") files.push_back(entry.path());
    const auto place = [](const std::filesystem::path& path) { return TextPosition{std::make_shared<const std::string>(path.string())}; };
    if (failure) {
        diagnostics.error(
            {"file.unreadable", fmt::format("the data folder cannot be read: {}", failure.message()), place(folder), "", {}, ""});
        return;
    }
    std::sort(files.begin(), files.end());
    std::vector<std::string> known;
    tables.each([&](std::string_view name, const auto&) { known.emplace_back(name); });
    for (const auto& file : files) {
        const auto stem = file.stem().string();
        if (!std::filesystem::is_regular_file(file, failure)) {
            diagnostics.error({"file.unreadable", "this is no file", place(file), "", {}, ""});
            continue;
        }
        std::ifstream stream(file, std::ios::binary);
        const std::string text{std::istreambuf_iterator<char>(stream), {}};
        if (!stream) {
            diagnostics.error({"file.unreadable", "the file cannot be read", place(file), "", {}, ""});
            continue;
        }
        if (std::find(known.begin(), known.end(), stem) == known.end()) {
            const auto close = nearest(stem, known);
            diagnostics.error(
                {"name.unknown",
                 fmt::format("there is no table \"{}\"{}", stem, close.empty() ? "" : fmt::format("; the nearest is \"{}\"", close)),
                 place(file),
                 "",
                 {},
                 fmt::format("tables: {}", fmt::join(known, ", "))});
            continue;
        }
        const auto node = parse_toml(text, file.string(), diagnostics);
        if (!node) continue;
        tables.each([&](std::string_view name, auto& table) {
            if (name == stem) load_rows(*node, table, diagnostics);
        });
    }
}

/// What rows of several tables must make together, after a shop's own rows are laid over: outlook and care rely on it.
void check_whole(const Tables& tables, const std::filesystem::path& folder, Diagnostics& diagnostics) {
    const auto error = [&](std::string_view table, const std::string& message) {
        const auto file = folder / (std::string(table) + ".toml");
        diagnostics.error({"table.incomplete", message, TextPosition{std::make_shared<const std::string>(file.string())}, "", {}, ""});
    };
    const auto none = [](const auto& rows, const auto& fits) { return std::none_of(rows.begin(), rows.end(), fits); };
    for (const auto& known : Words<Corrosivity>::all)
        if (none(tables.of<Electrolyte>().rows, [&known](const auto& row) { return row.category == known.first; }))
            error(Electrolyte::table, fmt::format("no electrolyte is left for category {}", known.second));
    for (const auto& known : Words<Corrosivity>::all)
        if (none(tables.of<Care>().rows, [&known](const auto& row) { return row.category == known.first; }))
            error(Care::table, fmt::format("no care is left for category {}", known.second));
    for (const auto& known : Words<IsolationPlace>::all)
        if (none(tables.of<IsolationElement>().rows, [&known](const auto& row) { return row.place == known.first; }))
            error(IsolationElement::table, fmt::format("no element is left for the {}", known.second));
    for (const auto& [name, metal] :
         {std::pair{"zinc", AtmosphereMetal::zinc}, std::pair{"carbon steel", AtmosphereMetal::carbon_steel},
          std::pair{"aluminium 5xxx, 6xxx, 7xxx", AtmosphereMetal::aluminium}, std::pair{"aluminium 2xxx", AtmosphereMetal::aluminium}}) {
        const auto* row = tables.of<Metal>().find(name);
        if (row == nullptr || row->atmosphere != metal || !row->dissolution())
            error(Metal::table, fmt::format("\"{}\" must have the rate in air of {}, and what Faraday's law needs", name, word_of(metal)));
    }
    const auto named = [&]<class Record>(const Table<Record>& table, const IsolationElement& e, const std::string& of,
                                         const std::optional<std::string>& name) {
        if (name && table.find(*name) == nullptr)
            error(e.table, fmt::format("\"{}\" names \"{}\", which the table {} does not have", of, *name, Record::table));
    };
    for (const auto& row : tables.of<IsolationElement>().rows) {
        named(tables.of<LayerMaterial>(), row, row.name, row.layer);
        named(tables.of<LayerMaterial>(), row, row.name, row.washer_layer);
        named(tables.of<Surface>(), row, row.name, row.plate_surface);
        named(tables.of<Surface>(), row, row.name, row.rail_surface);
        named(tables.of<Material>(), row, row.name, row.tube_material);
        named(tables.of<Coating>(), row, row.name, row.tube_coating);
    }
}

}  // namespace

Tables load_tables(const std::optional<std::filesystem::path>& overlay, Diagnostics& diagnostics) {
    Tables tables;
    tables.each([&](std::string_view name, auto& table) { unpack(embedded_table(name), table); });
    if (!overlay) return tables;
    lay_over(tables, *overlay, diagnostics);
    if (!diagnostics.any()) check_whole(tables, *overlay, diagnostics);
    return tables;
}

}  // namespace faywright
