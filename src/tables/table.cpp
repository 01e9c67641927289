// SPDX-License-Identifier: MIT
#include "tables/table.hpp"

namespace faywright::detail {

std::string read_text(const Node& row, std::string_view key, const Path& path, bool required, Diagnostics& diagnostics) {
    std::string text;
    const Node* node = row.find(key);
    if (node != nullptr)
        read_node(*node, Path{&path, key}, text, {diagnostics});
    else if (required)
        diagnostics.error({"key.missing", fmt::format("{}.{} is missing", path.text(), key), row.at, "", {}, ""});
    return text;
}

SourceReader::SourceReader(const Node& file, Diagnostics& diagnostics) : diagnostics_(diagnostics) {
    const Node* sources = file.find("sources");
    if (sources == nullptr) return;
    if (sources->kind != Node::Kind::table) {
        wrong_kind(*sources, Path{nullptr, "sources"}, "a table", {diagnostics});
        return;
    }
    for (const auto& entry : sources->entries) {
        const Path sources_path{nullptr, "sources"};
        const Path path{&sources_path, entry.key};
        if (entry.value.kind != Node::Kind::table) {
            wrong_kind(entry.value, path, "a table", {diagnostics});
            continue;
        }
        documents_[entry.key] = {read_text(entry.value, "title", path, true, diagnostics),
                                 read_text(entry.value, "edition", path, true, diagnostics), entry.at};
        for (const auto& key : entry.value.entries)
            if (key.key != "title" && key.key != "edition")
                diagnostics.error({"key.unknown",
                                   fmt::format("{}.{} is not a known key", path.text(), key.key),
                                   key.at,
                                   "known here: title, edition",
                                   {},
                                   ""});
    }
}

RowSource SourceReader::read(const Node& node, const Path& path) {
    RowSource source;
    if (node.kind != Node::Kind::table) {
        wrong_kind(node, path, "a table {document, place, basis}", {diagnostics_});
        return source;
    }
    for (const auto& entry : node.entries)
        if (entry.key != "document" && entry.key != "place" && entry.key != "basis")
            diagnostics_.error({"key.unknown",
                                fmt::format("{}.{} is not a known key", path.text(), entry.key),
                                entry.at,
                                "known here: document, place, basis",
                                {},
                                ""});
    const auto basis = read_text(node, "basis", path, true, diagnostics_);
    const bool known = basis == "published" || basis == "memory" || basis == "practice";
    if (!known && !basis.empty()) {
        const Node* at = node.find("basis");
        diagnostics_.error({"source.basis",
                            fmt::format("{}.basis is \"{}\"; accepted are \"published\", \"memory\", \"practice\"", path.text(), basis),
                            at->at,
                            "",
                            {},
                            ""});
    }
    source.basis = basis == "published" ? Basis::published : basis == "memory" ? Basis::memory : Basis::practice;
    const bool must_cite = source.basis != Basis::practice;
    const auto key = read_text(node, "document", path, must_cite, diagnostics_);
    source.place = read_text(node, "place", path, must_cite, diagnostics_);
    if (!key.empty()) {
        const auto found = documents_.find(key);
        if (found == documents_.end()) {
            std::vector<std::string> names;
            for (const auto& [name, document] : documents_) names.push_back(name);
            diagnostics_.error({"source.unknown",
                                fmt::format("{}.document is \"{}\", which [sources] does not have", path.text(), key),
                                node.find("document")->at,
                                nearest_label(key, names),
                                {},
                                ""});
        } else {
            source.document = found->second.title;
            source.edition = found->second.edition;
        }
    }
    return source;
}

}  // namespace faywright::detail
