// SPDX-License-Identifier: MIT
#include "report/couples.hpp"
#include "command.hpp"
#include "quantity/characters.hpp"
#include "quantity/nearest.hpp"

#include <fmt/format.h>

namespace faywright::cli {

namespace {

template <class Record>
const Row<Record>* row_named(const Tables& tables, const std::string& name, const char* option, Diagnostics& diagnostics) {
    const auto& table = tables.of<Record>();
    if (const auto* row = table.find(name); row != nullptr) return row;
    complain(diagnostics, "name.unknown", fmt::format("{}: there is no {}", option, quoted_with_nearest(name, table.names())),
             fmt::format("faywright table {} lists them", Record::table));
    return nullptr;
}

}  // namespace

int couples(const CouplesOptions& options) {
    Diagnostics diagnostics;
    const auto tables = load_tables(options.data, diagnostics);
    if (diagnostics.any()) return refuse(diagnostics);
    if (options.all && (options.with || !options.explain.empty()))
        complain(diagnostics, "couples.options", "--all shows every metal: neither --with nor --explain goes with it");
    if (options.with && !options.explain.empty())
        complain(diagnostics, "couples.options", "--explain names both metals: --with does not go with it");
    const auto exposures =
        exposures_named(options.exposure ? std::vector{*options.exposure} : std::vector<std::string>{}, tables, options, diagnostics);
    const Row<IsolationElement>* isolation = nullptr;
    if (options.isolation) {
        isolation = row_named<IsolationElement>(tables, *options.isolation, "--isolation", diagnostics);
        if (isolation != nullptr && isolation->place != IsolationPlace::faying)
            complain(diagnostics, "isolation.place",
                     fmt::format("--isolation: \"{}\" is for the {}, one for the faying faces is wanted", isolation->name,
                                 word_of(isolation->place)));
    }
    std::vector<const Row<Metal>*> explained;
    for (const auto& name : options.explain) explained.push_back(row_named<Metal>(tables, name, "--explain", diagnostics));
    const auto* metal = row_named<Metal>(tables, options.with.value_or("aluminium 5xxx, 6xxx, 7xxx"), "--with", diagnostics);
    if (diagnostics.any()) return refuse(diagnostics);
    const bool json = options.format == Format::json;
    if (exposures.empty() && !options.all && explained.empty() && !json)
        return deliver(couples_by_category_text(tables, *metal, isolation, options.area_ratio), options, passed);
    // Where no place is named, the middle of the road for salt.
    const auto& exposure = exposures.empty() ? *tables.of<Exposure>().find("C4") : exposures.front();
    const CouplesTask task{exposure, tables, isolation, options.area_ratio};
    if (!explained.empty())
        return deliver(json ? couple_explanation_json(task, *explained[0], *explained[1])
                            : couple_explanation_text(task, *explained[0], *explained[1]),
                       options, passed);
    if (options.all) return deliver(json ? couples_matrix_json(task) : couples_matrix_text(task), options, passed);
    return deliver(json ? couples_json(task, *metal) : couples_text(task, *metal), options, passed);
}

}  // namespace faywright::cli
