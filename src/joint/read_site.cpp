// SPDX-License-Identifier: MIT
#include "joint/resolve.hpp"

#include <algorithm>

namespace faywright {

namespace {

/// A site file: an exposure with its name.
struct SiteFile : Exposure {
    std::string name;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"name", "", "what the place is called"}, self.name);
        Exposure::describe(field, self);
    }
};

}  // namespace

std::optional<Row<Exposure>> read_site(const std::string& text, const std::string& file, Diagnostics& diagnostics) {
    const auto root = parse_toml(text, file, diagnostics);
    if (!root) return std::nullopt;
    const auto before = diagnostics.count();
    SiteFile site;
    read_node(*root, Path{}, site, ReadContext{diagnostics});
    // What a wrong field leaves out is no contradiction.
    if (diagnostics.count() == before)
        Site::each_fault(site, [&](const char* field, const char* words) {
            diagnostics.error({"value.fault", words, place_of(*root, field), "", {}, ""});
        });
    if (diagnostics.count() != before) return std::nullopt;
    Row<Exposure> row;
    static_cast<Exposure&>(row) = site;
    row.name = site.name;
    row.source = {"site file", "", file, Basis::practice};
    row.at = root->at;
    return row;
}

std::vector<Row<Exposure>> take_exposures(const std::vector<std::string>& names, const Tables& tables, const FileReader& read_file,
                                          const std::function<TextPosition(std::size_t)>& place, Diagnostics& diagnostics) {
    std::vector<Row<Exposure>> out;
    const auto& table = tables.of<Exposure>();
    for (std::size_t i = 0; i < names.size(); ++i) {
        const auto& name = names[i];
        if (name.empty()) continue;  // told already
        const auto error = [&](const char* code, const std::string& message, const std::string& label = "", const std::string& help = "") {
            diagnostics.error({code, message, place(i), label, {}, help});
        };
        if (std::find(names.begin(), names.begin() + static_cast<std::ptrdiff_t>(i), name) !=
            names.begin() + static_cast<std::ptrdiff_t>(i)) {
            error("name.duplicate", fmt::format("exposure \"{}\" is given twice", shown(name)));
        } else if (const auto* row = table.find(name); row != nullptr) {
            out.push_back(*row);
        } else if (name.ends_with(".toml")) {
            const auto text = read_file ? read_file(name) : std::nullopt;
            if (!text)
                error("site.unreadable", fmt::format("exposure \"{}\" is a site file, which cannot be read", shown(name)), "",
                      read_file ? "a path of the command line starts here, one of a joint file from its folder"
                                : "give the joint as a file, not on standard input");
            else if (auto site = read_site(text->text, text->name, diagnostics))
                out.push_back(std::move(*site));
        } else {
            const auto known = table.names();
            error("name.unknown",
                  fmt::format("exposure {}: no row of the table exposures, nor the name of a site file ending in .toml",
                              quoted_with_nearest(name, known)),
                  "", "faywright table exposures lists them");
        }
    }
    for (std::size_t i = 0; i < out.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            if (out[i].name == out[j].name)
                diagnostics.error(
                    {"name.duplicate", fmt::format("two exposures are called \"{}\"", shown(out[i].name)), place(0), "", {}, ""});
    if (names.size() > most_exposures)
        diagnostics.error(
            {"list.length", fmt::format("{} exposures; at most {} are accepted", names.size(), most_exposures), place(0), "", {}, ""});
    return out;
}

}  // namespace faywright
