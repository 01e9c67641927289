// SPDX-License-Identifier: MIT
#include "command.hpp"
#include "joint/resolve.hpp"
#include "report/substitution.hpp"

namespace faywright::cli {

namespace {

int review_list(const SubstituteOptions& options, std::optional<Reviewer>& reviewer, const Tables& tables, Diagnostics& diagnostics) {
    std::string name;
    const auto text = read_input(*options.offers, name, diagnostics);
    const auto list = text ? read_offers(*text, name, diagnostics) : OfferList{};
    if (!reviewer || diagnostics.any()) return refuse(diagnostics);
    const auto out = faywright::review_list(list, *reviewer, tables);
    const int status = out.has_usable() ? passed : failed;
    switch (options.format) {
        case Format::json: return deliver(offers_json(out), options, status);
        case Format::csv: return deliver(offers_csv(out), options, status);
        case Format::markdown: return deliver(offers_markdown(out), options, status);
        case Format::text: break;
    }
    return deliver(offers_text(out), options, status);
}

}  // namespace

int substitute(const SubstituteOptions& options) {
    Diagnostics diagnostics;
    if (options.offer.has_value() == options.offers.has_value())
        complain(diagnostics, "option.missing",
                 options.offer ? "substitute takes one offer file or a list by --offers, not both"
                               : "substitute wants an offer file, or a supplier's list by --offers",
                 "faywright substitute --help");
    const auto other = options.offer ? options.offer : options.offers;
    if (other && *other == "-" && options.input == "-")
        complain(diagnostics, "file.twice", "joint and offer cannot both come from standard input");
    if (options.offer && options.offer->ends_with(".csv"))
        complain(diagnostics, "option.value", fmt::format("\"{}\" is a list by its name, not one offer", shown(*options.offer)),
                 "--offers reads a supplier's list");
    if (options.offer && options.format == Format::csv)
        complain(diagnostics, "option.value", "--format csv is for a list of offers", "text, json or md");
    if (diagnostics.any()) return refuse(diagnostics);
    options.inputs->push_back(*other);
    const auto tables = load_tables(options.data, diagnostics);
    if (diagnostics.any()) return refuse(diagnostics);
    std::string name, offer_name;
    auto exposures = exposures_named(options.exposures, tables, options, diagnostics);
    const auto text = read_input(options.input, name, diagnostics);
    const auto root = text ? parse_toml(*text, name, diagnostics) : std::nullopt;
    auto reviewer =
        root ? Reviewer::make({*root, tables, std::move(exposures), files_beside(options.input, options)}, diagnostics) : std::nullopt;
    if (options.offers) return review_list(options, reviewer, tables, diagnostics);
    const auto offer_text = read_input(*options.offer, offer_name, diagnostics);
    const auto offer_root = offer_text ? parse_toml(*offer_text, offer_name, diagnostics) : std::nullopt;
    auto offer = offer_root ? read_offer(*offer_root, tables, diagnostics) : std::nullopt;
    if (!reviewer || !offer || diagnostics.any()) return refuse(diagnostics);
    const auto review = reviewer->review(std::move(*offer));
    const int status = review.is_accepted() ? passed : failed;
    switch (options.format) {
        case Format::json: return deliver(substitution_json(review, reviewer->joint(), reviewer->warnings()), options, status);
        case Format::markdown: return deliver(substitution_markdown(review, reviewer->joint(), reviewer->warnings()), options, status);
        default: return deliver(substitution_text(review, reviewer->joint(), reviewer->warnings()), options, status);
    }
}

}  // namespace faywright::cli
