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

}  // namespace

Tables load_tables(const std::optional<std::filesystem::path>& overlay, Diagnostics& diagnostics) {
    Tables tables;
    tables.each([&](std::string_view name, auto& table) { unpack(embedded_table(name), table); });
    if (overlay) lay_over(tables, *overlay, diagnostics);
    return tables;
}

}  // namespace faywright
