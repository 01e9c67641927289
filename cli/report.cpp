// SPDX-License-Identifier: MIT
#include "command.hpp"
#include "input/digest.hpp"
#include "joint/choices.hpp"
#include "joint/offer.hpp"
#include "quantity/nearest.hpp"
#include "report/calculation_report.hpp"
#include "report/comparison_report.hpp"
#include "report/hole_drawings.hpp"
#include "report/parts_list.hpp"
#include "report/sheets.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <future>
#include <memory>

namespace faywright::cli {

namespace {

const std::vector<std::string> document_names{"calculation", "sheet", "care", "parts", "holes", "comparison"};

/// A joint file with all that was read for it.
struct JointRead {
    std::optional<Node> root;
    std::optional<WrittenJoint> written;
    std::optional<Joint> joint;
    std::unique_ptr<Assessment> assessment;
    FileReader read_file;
    std::vector<std::pair<std::string, std::string>> files;  ///< name and SHA-256 of each
};

std::string name_of(const std::string& path) { return path == "-" ? "standard input" : std::filesystem::path(path).filename().string(); }

void note(std::vector<std::pair<std::string, std::string>>& files, std::pair<std::string, std::string> file) {
    if (std::find(files.begin(), files.end(), file) == files.end()) files.push_back(std::move(file));
}

/// Reads and assesses; mistakes go to the diagnostics.
JointRead joint_read(const std::string& path, const Common& common, const Tables& tables, Diagnostics& diagnostics) {
    JointRead out;
    const auto files = std::make_shared<std::vector<std::pair<std::string, std::string>>>();
    std::string shown_name;
    const auto text = read_input(path, shown_name, diagnostics);
    if (!text) return out;
    note(*files, {name_of(path), sha256_of(*text)});
    // Of standard input there is nothing beside.
    if (auto inner = files_beside(path, common))
        out.read_file = [inner, files](const std::string& named) {
            auto file = inner(named);
            if (file) note(*files, {name_of(named), sha256_of(file->text)});
            return file;
        };
    out.root = parse_toml(*text, shown_name, diagnostics);
    if (!out.root) return out;
    out.joint = read_joint(*out.root, tables, diagnostics, out.read_file);
    if (!out.joint) return out;
    if (auto without = without_choices(*out.root)) out.root = std::move(without);
    out.written = read_written(*out.root, tables, out.read_file, {}, diagnostics);
    out.assessment = std::make_unique<Assessment>();
    assess(*out.joint, *out.assessment);
    add_outlook(tables, *out.assessment);
    out.files = *files;
    return out;
}

/// The shop's own tables, in the order of their names.
void note_own_tables(const Common& common, std::vector<std::pair<std::string, std::string>>& files) {
    if (!common.data) return;
    std::vector<std::filesystem::path> paths;
    for (const auto& entry : std::filesystem::directory_iterator(*common.data))
        if (entry.path().extension() == ".toml") paths.push_back(entry.path());
    std::sort(paths.begin(), paths.end());
    for (const auto& path : paths) {
        Diagnostics unreadable;
        std::string shown_name;
        if (const auto text = read_input(path.string(), shown_name, unreadable)) note(files, {name_of(path.string()), sha256_of(*text)});
    }
}

/// What is to be written. Beside an offer nothing is made unasked: sheets are those of the specified part, and would be taken for the
/// other's.
struct Wanted {
    const ReportOptions& options;
    [[nodiscard]] bool operator()(std::string_view name) const {
        if (options.only.empty()) return !options.offer || name == "comparison";
        return std::find(options.only.begin(), options.only.end(), name) != options.only.end();
    }
};

void add_page(const Page& page, const std::string& stem, std::vector<NamedDocument>& documents) {
    // Each is made from the same page and neither waits for the other.
    auto markdown = std::async(std::launch::async, page_markdown, std::cref(page));
    documents.push_back({stem + ".html", page_html(page)});
    documents.push_back({stem + ".md", markdown.get()});
}

void add_calculation(const JointRead& read, const Identification& identification, const std::optional<Uncertainty>& drawn,
                     const Tables& tables, std::vector<NamedDocument>& documents) {
    Diagnostics none;
    std::optional<IsolationRanking> ranking;
    if (!read.joint->surroundings.exposures.empty()) ranking = rank_isolation({*read.root, tables, {}, read.read_file, true}, none);
    add_page(calculation_report({*read.assessment, tables, fields_of(*read.written, *read.root), ranking ? &*ranking : nullptr,
                                 drawn ? &*drawn : nullptr, identification}),
             "calculation", documents);
}

void add_against(const JointRead& read, const JointRead& other, Identification identification, std::vector<NamedDocument>& documents) {
    const auto name = [](const JointRead& side) { return side.files.front().first; };
    // Two files of one name are told apart by their place.
    const bool alike = name(read) == name(other);
    for (const auto& file : other.files) note(identification.files, file);
    add_page(comparison_report({{alike ? "the other " + name(other) : name(other), *other.assessment},
                                {name(read), *read.assessment},
                                changed_fields({fields_of(*other.written, *other.root), other.written->file},
                                               {fields_of(*read.written, *read.root), read.written->file}),
                                nullptr,
                                std::move(identification)}),
             "comparison", documents);
}

/// The review of an offer; false after a mistake in its file.
bool add_offer(const JointRead& read, const std::string& path, Identification identification, const Tables& tables,
               std::vector<NamedDocument>& documents, Diagnostics& diagnostics) {
    std::string shown_name;
    const auto text = read_input(path, shown_name, diagnostics);
    const auto root = text ? parse_toml(*text, shown_name, diagnostics) : std::nullopt;
    auto offer = root ? read_offer(*root, tables, diagnostics) : std::nullopt;
    auto reviewer = Reviewer::make({*read.root, tables, {}, read.read_file}, diagnostics);
    if (!offer || !reviewer || diagnostics.any()) return false;
    note(identification.files, {name_of(path), sha256_of(*text)});
    const auto review = reviewer->review(std::move(*offer));
    const auto& trial = review.right ? review.right : review.unnoticed;
    if (!trial || !trial->is_built()) {
        add_page(refused_offer_report(review, read.joint->title, identification), "comparison", documents);
        return true;
    }
    const auto offered = std::make_unique<Assessment>();
    assess(*trial->joint, *offered);
    add_outlook(tables, *offered);
    add_page(comparison_report({{"as specified", *read.assessment}, {trial->title, *offered}, {}, &review, std::move(identification)}),
             "comparison", documents);
    return true;
}

}  // namespace

int report(const ReportOptions& options) {
    Diagnostics diagnostics;
    if (!options.output || *options.output == "-")
        complain(diagnostics, "option.missing", "report writes a set of documents and wants a folder for them", "--output DIR");
    for (const auto& name : options.only)
        if (std::find(document_names.begin(), document_names.end(), name) == document_names.end())
            complain(diagnostics, "name.unknown", "there is no document " + quoted_with_nearest(name, document_names),
                     fmt::format("known: {}", fmt::join(document_names, ", ")));
    const Wanted wanted{options};
    if (!options.only.empty() && wanted("comparison") && !options.against && !options.offer)
        complain(diagnostics, "option.missing", "a comparison wants something to compare with",
                 "--against JOINT.toml or --offer OFFER.toml");
    if ((options.against || options.offer) && !wanted("comparison"))
        complain(diagnostics, "option.value", "--against and --offer are for the comparison, which --only leaves out", "--only comparison");
    for (const auto& other : {options.against, options.offer}) {
        if (!other) continue;
        options.inputs->push_back(*other);
        if (*other == "-" && options.input == "-") complain(diagnostics, "file.twice", "only one file can come from standard input");
    }
    const auto sampling = sampling_of(options.sampling, diagnostics);
    if (diagnostics.any()) return refuse(diagnostics);
    const auto tables = load_tables(options.data, diagnostics);
    if (diagnostics.any()) return refuse(diagnostics);
    const auto read = joint_read(options.input, options, tables, diagnostics);
    const auto other = options.against ? joint_read(*options.against, options, tables, diagnostics) : JointRead{};
    if (diagnostics.any()) return refuse(diagnostics);
    const auto& assessment = *read.assessment;
    Identification identification{std::string("faywright ") + FAYWRIGHT_CLI_VERSION, read.files};
    note_own_tables(options, identification.files);
    std::vector<NamedDocument> documents;
    if (wanted("calculation")) {
        std::optional<Uncertainty> drawn;
        if (options.sampling.uncertainty) drawn = sampled(assessment, sampling);
        add_calculation(read, identification, drawn, tables, documents);
    }
    if (wanted("sheet")) documents.push_back({"shop-sheet.html", page_html(shop_sheet(assessment, tables, identification))});
    if (wanted("care")) documents.push_back({"care-sheet.html", page_html(care_sheet(assessment, tables, identification))});
    if (wanted("parts")) documents.push_back({"parts.csv", parts_list_csv(assessment, tables, options.joints)});
    if (wanted("holes"))
        for (const auto& [stem, drawing] : hole_drawings(assessment)) {
            documents.push_back({fmt::format("holes-{}-mm.dxf", stem), dxf_of(drawing)});
            documents.push_back({fmt::format("holes-{}.svg", stem), svg_of(drawing, "holes-" + stem)});
        }
    if (wanted("comparison") && options.against) add_against(read, other, identification, documents);
    if (wanted("comparison") && options.offer && !add_offer(read, *options.offer, identification, tables, documents, diagnostics))
        return refuse(diagnostics);
    return deliver_all(documents, options, assessment.passes ? passed : failed);
}

}  // namespace faywright::cli
