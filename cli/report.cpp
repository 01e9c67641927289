// SPDX-License-Identifier: MIT
#include "command.hpp"
#include "report/hole_drawings.hpp"
#include "report/parts_list.hpp"

#include <fmt/format.h>

#include <memory>

namespace faywright::cli {

int report(const ReportOptions& options) {
    Diagnostics diagnostics;
    if (!options.output || *options.output == "-")
        complain(diagnostics, "option.missing", "report writes a set of documents and wants a folder for them", "--output DIR");
    if (diagnostics.any()) return refuse(diagnostics);
    const auto tables = load_tables(options.data, diagnostics);
    if (diagnostics.any()) return refuse(diagnostics);
    const auto joint = joint_named(options, tables, diagnostics);
    if (!joint) return refuse(diagnostics);
    const auto assessment = std::make_unique<Assessment>();
    assess(*joint, *assessment);
    add_outlook(tables, *assessment);
    std::vector<NamedDocument> documents;
    for (const auto& [stem, drawing] : hole_drawings(*assessment)) {
        documents.push_back({fmt::format("holes-{}-mm.dxf", stem), dxf_of(drawing)});
        documents.push_back({fmt::format("holes-{}.svg", stem), svg_of(drawing, "holes-" + stem)});
    }
    documents.push_back({"parts.csv", parts_list_csv(*assessment, tables, options.joints)});
    return deliver_all(documents, options, assessment->passes ? passed : failed);
}

}  // namespace faywright::cli
