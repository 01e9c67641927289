// SPDX-License-Identifier: MIT
#include "report/couples.hpp"

#include "assess/assessment.hpp"
#include "quantity/text.hpp"
#include "report/corrosion.hpp"
#include "report/layout.hpp"
#include "report/steps_text.hpp"

#include <fmt/format.h>

namespace faywright {

namespace {

constexpr const char* steps_legend =
    "Steps by what the couple adds to its anode: still up to 0.2 um/a, slow 1, marked 5, fast 20, ruinous above; or by what it eats in 20 "
    "years of "
    "85 um of zinc, or of aluminium whose pits may be 0.5 mm deep; one step worse where the cathode is more than twice as large as the "
    "anode. Judged, "
    "after one field ceiling: two in three lie within a factor of about 4 either way. Potentials give the direction only. Copper, and "
    "water that ran "
    "off it, pits aluminium far away too: no rate here says so.";

std::string cell_text(const CoupleCell& cell) {
    if (cell.attack.unplaced) return "no potential";
    if (cell.attack.anode == nullptr) return cell.first == cell.second ? "same metal" : "neutral";
    if (cell.attack.no_rate) return "rate unknown";
    return std::string(word_of(cell.severity));
}

std::string letters(const Compatibility& row) {
    std::string out;
    const auto part = [&out](const char* where, const std::optional<std::string>& rating) {
        if (rating) out += fmt::format("{}{} {}", out.empty() ? "" : ", ", where, *rating);
    };
    part("rural", row.rural);
    part("industrial", row.industrial);
    part("marine", row.marine);
    part("fresh water", row.fresh_water);
    part("sea water", row.sea_water);
    if (row.statement) out += fmt::format("{}{}", out.empty() ? "" : "; ", *row.statement);
    return out;
}

std::string conditions_text(const CouplesTask& task) {
    Place around(task.exposure, task.tables);
    auto out =
        fmt::format("in \"{}\": {} at the joint, wet {:.0f} % of the year; cathode and anode {} : 1 in area", shown(task.exposure.name),
                    word_of(around.atmosphere.joint), 100.0 * around.wet_share, print_number(task.area_ratio, 3));
    if (task.isolation != nullptr)
        out +=
            fmt::format("; with {}{}", task.isolation->name,
                        task.isolation->insulates ? ", nothing else joining the metals (bolt sleeved, lamps with their own return)" : "");
    return out;
}

std::string ending() {
    std::string out = '\n' + wrapped(steps_legend);
    return out + wrapped(cautions().front(), "caution: ", "  ");
}

/// What the row rates, where that is not told by its scheme.
std::string scheme_text(const Compatibility& row) {
    return std::string(word_of(row.scheme)) + (row.scheme == CompatibilityScheme::pd_6484 ? " on " + row.considered : "");
}

/// Whether a design rule asks to keep the two apart, whatever the rate.
std::string rule_text(const Tables& tables, const Row<Metal>& a, const Row<Metal>& b) {
    for (const auto* row : opinions(tables, a, b))
        if (row->scheme == CompatibilityScheme::adm && row->statement)
            return row->statement->starts_with("protection")             ? "protect"
                   : row->statement->find("except") != std::string::npos ? "not in salt"
                                                                         : "may touch";
    return "";
}

json::Json cell_json(const CouplesTask& task, const CoupleCell& cell) {
    json::Json out;
    out["metals"] = {cell.first->name, cell.second->name};
    out["couple"] = json::of(cell.attack);
    if (cell.attack.anode != nullptr && !cell.attack.no_rate) {
        out["added"] = json::of(cell.added);
        out["path"] = cell.path;
        out["electrolyte"] = cell.electrolyte;
        out["step"] = word_of(cell.severity);
        out["published_step"] = published_step(cell.added.rate);
    }
    out["opinions"] = json::Json::array();
    for (const auto* row : opinions(task.tables, *cell.first, *cell.second))
        out["opinions"].push_back({{"scheme", word_of(row->scheme)},
                                   {"considered", row->considered},
                                   {"contact", row->contact},
                                   {"says", letters(*row)},
                                   {"source", json::of(row->source.view())}});
    return out;
}

json::Json head_json(const CouplesTask& task) {
    json::Json out;
    out["program"] = "faywright";
    out["version"] = FAYWRIGHT_VERSION;
    out["exposure"] = task.exposure.name;
    out["joint_category"] = word_of(Place(task.exposure, task.tables).atmosphere.joint);
    out["area_ratio"] = task.area_ratio;
    if (task.isolation != nullptr) out["isolation"] = task.isolation->name;
    return out;
}

std::string series_text(const Tables& tables, const Row<Metal>& a, const Row<Metal>& b) {
    std::string out;
    for (const auto& [series, name] : Words<PotentialSeries>::all) {
        const SeriesPotential *first = nullptr, *second = nullptr;
        for (const auto& row : tables.of<SeriesPotential>().rows) {
            if (row.series != series) continue;
            if (first == nullptr && row.metal == a.name) first = &row;
            if (second == nullptr && row.metal == b.name) second = &row;
        }
        if (first == nullptr || second == nullptr) continue;
        const auto apart = difference(*first, *second);
        const bool index = series == PotentialSeries::anodic_index;
        const auto told = [index](const SeriesPotential& p) { return print(Value(index ? abs(p.potential) : p.potential), 3); };
        out += wrapped(fmt::format("{} {}, {} {}: {} apart{}", a.name, told(*first), b.name, told(*second), print(Value(abs(*apart)), 2),
                                   index ? " (below gold)" : ""),
                       "  " + fitted(name, 14), "                ");
    }
    return out;
}

}  // namespace

std::string couples_by_category_text(const Tables& tables, const Row<Metal>& metal, const Row<IsolationElement>* isolation,
                                     double area_ratio) {
    std::string out = wrapped(
        fmt::format("COUPLES with {}, by corrosivity at the joint{}", metal.name, isolation == nullptr ? "" : ", with " + isolation->name));
    out += "\n  " + fitted("metal", 21);
    std::vector<std::vector<CoupleCell>> columns;
    for (const char* category : {"C2", "C3", "C4", "C5", "CX"}) {
        const auto* exposure = tables.of<Exposure>().find(category);
        if (exposure == nullptr) continue;
        out += fitted_right(category, 8) + ' ';
        columns.push_back(couples_with({*exposure, tables, isolation, area_ratio}, metal));
    }
    out += '\n';
    for (std::size_t i = 0; i < tables.of<Metal>().rows.size(); ++i) {
        const auto& row = tables.of<Metal>().rows[i];
        if (&row == &metal) continue;
        out += "  " + fitted(row.name, 21);
        for (const auto& column : columns) {
            const auto& cell = column[i];
            const bool rated = cell.attack.anode != nullptr && !cell.attack.no_rate;
            // A star where it is the other metal that pays.
            out += fitted_right((rated ? rate_text(cell.added.rate) + ' ' + std::string(word_of(cell.severity)).substr(0, 1)
                                 : cell.attack.anode == nullptr && !cell.attack.unplaced ? "-"
                                                                                         : "?") +
                                    (rated && cell.attack.anode != &metal ? "*" : " "),
                                9);
        }
        out += fmt::format("  {}\n", rule_text(tables, metal, row));
    }
    out += wrapped(
        fmt::format("um/a added to {}, or with * to the other metal; s still or slow, m marked, f fast, r ruinous; - neutral; ? no rate "
                    "is known. protect, not in salt, may touch: what a design rule for aluminium (ADM M.7) asks, whatever the rate. "
                    "--exposure E tells one "
                    "place, --explain A B one pair.",
                    metal.name),
        "  ", "  ");
    return out + ending();
}

std::string couples_text(const CouplesTask& task, const Row<Metal>& metal) {
    std::string out = wrapped(fmt::format("COUPLES with {} {}", metal.name, conditions_text(task)));
    out += fmt::format("\n  {} {} {}{}\n", fitted("beside", 25), fitted("who pays", 25), fitted("step", 13), "um/a added");
    for (const auto& cell : couples_with(task, metal)) {
        if (cell.first == cell.second) continue;
        const bool rated = cell.attack.anode != nullptr && !cell.attack.no_rate;
        out += fmt::format("  {} {} {}{}\n", fitted(cell.second->name, 25),
                           fitted(cell.attack.anode == nullptr ? "neither" : cell.attack.anode->name, 25), fitted(cell_text(cell), 13),
                           rated ? band_text(cell.added) : "");
        for (const auto* row : opinions(task.tables, metal, *cell.second))
            out += wrapped(fmt::format("{}: {}", scheme_text(*row), letters(*row)), "      ", "        ");
        if (cell.by_design) out += wrapped("zinc that pays for its own steel is what galvanising is for", "      ", "        ");
    }
    return out + ending();
}

std::string couples_matrix_text(const CouplesTask& task) {
    const auto& metals = task.tables.of<Metal>().rows;
    Place around(task.exposure, task.tables);
    std::string out = wrapped(fmt::format("COUPLES {}", conditions_text(task))) + '\n';
    const std::size_t width = metals.size() > 24 ? 2 : 3;
    out += "  " + fitted("", 26);
    for (std::size_t i = 0; i < metals.size(); ++i)
        out += fitted_right(std::string(1, static_cast<char>('a' + static_cast<int>(i) % 26)), width);
    out += '\n';
    for (std::size_t i = 0; i < metals.size(); ++i) {
        out += "  " + fitted(fmt::format("{} {}", static_cast<char>('a' + static_cast<int>(i) % 26), metals[i].name), 26);
        for (const auto& other : metals) {
            const auto cell = couple_cell(task, around, metals[i], other);
            const auto sign = cell.first == cell.second         ? "."
                              : cell.attack.anode == nullptr    ? "-"
                              : cell.attack.anode != cell.first ? ""
                              : cell.attack.no_rate             ? "?"
                                                                : fmt::format("{}", static_cast<int>(cell.severity));
            out += fitted_right(sign, width);
        }
        out += '\n';
    }
    out += wrapped(
        "The step of the metal of the row as anode beside that of the column: 0 still, 1 slow, 2 marked, 3 fast, 4 ruinous; blank: the "
        "column's metal pays; - neutral; ? no rate is known.",
        "  ", "  ");
    return out + ending();
}

std::string couple_explanation_text(const CouplesTask& task, const Row<Metal>& a, const Row<Metal>& b) {
    Place around(task.exposure, task.tables);
    const auto cell = couple_cell(task, around, a, b);
    std::string out = wrapped(fmt::format("{} beside {} {}", a.name, b.name, conditions_text(task)));
    const auto& attack = cell.attack;
    if (attack.anode == nullptr)
        out += wrapped(&a == &b          ? "The same metal: no couple."
                       : attack.unplaced ? "No series at hand holds both metals: who pays is not known."
                                         : "Neutral: within 0.05 V of each other in flowing seawater.");
    else if (attack.no_rate)
        out += wrapped(fmt::format("{} is the anode; it has no rate of its own here, so that none is told.", attack.anode->name));
    else
        out += wrapped(fmt::format("{} pays: {} um/a, {}", attack.anode->name, band_text(cell.added), word_of(cell.severity)));
    out += "\nPOTENTIALS tabulated; each series has its own water and electrode\n";
    out += series_text(task.tables, a, b);
    out += wrapped(
        "ASTM G82: flowing seawater against SCE, which gives the direction; boat survey: quiet seawater against Ag/AgCl; galvanizers: "
        "electrode not named; the anodic index is no measure of attack. No number is taken from one of another series.",
        "  ", "  ");
    if (attack.anode != nullptr) {
        const auto& e = *around.electrolyte;
        out += fmt::format("\nELECTROLYTE judged, by category {}\n", e.name);
        out += labelled("conductivity; film", fmt::format("{}; {}", print(Value(e.conductivity), 3), print(Value(e.film), 3)));
        out += labelled("chloride; wet share of the year", fmt::format("{}; {:.2f}", print(Value(e.chloride), 2), around.wet_share));
        out += labelled("cathode over anode in area; reach",
                        fmt::format("{}; {}", print_number(attack.area_ratio, 3), print(Value(attack.reach), 3)));
        if (!attack.kinetics) out += wrapped("No curves are known for one of the two: no kinetic bound.", "  ", "  ");
        if (!attack.no_rate) out += "\nRATE: kinetics computed, multipliers judged\n" + steps_text(derive_couple(task, cell).steps());
        if (attack.immersed > um_per_a(0))
            out += wrapped(fmt::format("besides, from the hours under sea water: {} um/a", rate_text(attack.immersed)));
    }
    if (attack.anode != nullptr && !attack.no_rate)
        out += wrapped(fmt::format("{} um/a: {} by rate, {} by what 20 years eat{}; so {}", rate_text(cell.added.rate),
                                   word_of(severity_of_rate(cell.added.rate)),
                                   word_of(severity_of_share(static_cast<double>(
                                       cell.added.rate * task.span / stake_of_couple(attack.anode->atmosphere == AtmosphereMetal::zinc)))),
                                   attack.area_ratio > 2.0 ? ", one worse for a small anode" : "", word_of(cell.severity)),
                       "STEP  ", "  ");
    out += "\nPUBLISHED tables and rules, for comparison (C compatible, I not, untreated)\n";
    const auto said = opinions(task.tables, a, b);
    for (const auto* row : said)
        out += wrapped(fmt::format("{}: {} ({})", scheme_text(*row), letters(*row), source_text(row->source.view())), "  ", "    ");
    if (said.empty()) out += "  none at hand for this pair\n";
    if (attack.anode != nullptr && !attack.no_rate)
        out +=
            wrapped(fmt::format("On the published scale of 0 to 3 this rate would be a {}.", published_step(cell.added.rate)), "  ", "  ");
    return out + ending();
}

std::string couples_json(const CouplesTask& task, const Row<Metal>& metal) {
    auto out = head_json(task);
    out["with"] = metal.name;
    out["cells"] = json::Json::array();
    for (const auto& cell : couples_with(task, metal))
        if (cell.first != cell.second) out["cells"].push_back(cell_json(task, cell));
    out["cautions"] = cautions();
    return json::printed(out);
}

std::string couples_matrix_json(const CouplesTask& task) {
    auto out = head_json(task);
    Place around(task.exposure, task.tables);
    const auto& metals = task.tables.of<Metal>().rows;
    out["cells"] = json::Json::array();
    for (std::size_t i = 0; i < metals.size(); ++i)
        for (std::size_t j = i + 1; j < metals.size(); ++j)
            out["cells"].push_back(cell_json(task, couple_cell(task, around, metals[i], metals[j])));
    out["cautions"] = cautions();
    return json::printed(out);
}

std::string couple_explanation_json(const CouplesTask& task, const Row<Metal>& a, const Row<Metal>& b) {
    auto out = head_json(task);
    Place around(task.exposure, task.tables);
    const auto cell = couple_cell(task, around, a, b);
    out["cell"] = cell_json(task, cell);
    out["steps"] = json::of(derive_couple(task, cell).steps());
    out["cautions"] = cautions();
    return json::printed(out);
}

}  // namespace faywright
