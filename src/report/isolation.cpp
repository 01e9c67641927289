// SPDX-License-Identifier: MIT
#include "report/isolation.hpp"

#include "quantity/text.hpp"
#include "report/corrosion.hpp"
#include "report/layout.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>

namespace faywright {

namespace {

std::vector<std::size_t> shown_results(const IsolationRanking& ranking, RankingExtent extent) {
    if (extent == RankingExtent::of_each_faying) return ranking.of_each_faying;
    std::vector<std::size_t> all(ranking.results.size());
    std::iota(all.begin(), all.end(), std::size_t{0});
    return all;
}

std::string verdict_of(const MethodResult& r) {
    return !r.refused.empty() ? "cannot be built" : r.passes ? "passes" : r.holds ? "corrodes too soon" : "does not hold";
}

std::string slip_text(const MethodResult& r) { return r.slip ? print_number(*r.slip, 3) : "no friction"; }

std::string met(const std::optional<bool>& limit) { return !limit ? "no layer" : *limit ? "met" : "NOT MET"; }

/// Of the parts at the faying faces the zinc, or the aluminium.
const MemberOutlook* worst_of(const ExposureOutlook& e, bool zinc) {
    const auto& faces = e.contacts.front();
    for (const auto& m : e.members) {
        const bool here = m.name == faces.first || m.name == faces.second || m.name.starts_with(faces.first + " at ") ||
                          m.name.starts_with(faces.second + " at ");
        if (here && (zinc ? m.by_upper.has_value() || m.stake.starts_with("zinc") : m.is_wall)) return &m;
    }
    return nullptr;
}

std::string clamp_line(const MethodResult& r) {
    std::string out = fmt::format("clamp {} of {} at the end of life", print(Value(r.clamp), 3), print(Value(r.assembled), 3));
    if (!r.sustained) out += ", which a layer here does not sustain";
    out += r.slip ? fmt::format("; slip at {}", print_number(*r.slip, 3)) : "; no friction counted on";
    out += "; governs: " + r.what_governs();
    if (r.pressure_met) out += fmt::format("; layer pressure {}", met(r.pressure_met));
    if (r.temperature_met) out += fmt::format("; layer temperature {}", met(r.temperature_met));
    return out;
}

/// What the faying faces' element changes, and what is used up first.
std::string exposure_line(const ExposureOutlook& e) {
    std::string out = fmt::format("{}: ", shown(e.exposure->name));
    const auto& first = e.first_to_go();
    out += fmt::format("{}; first to go: {}, {} y", e.passes ? "lasts" : "FAILS", first.name, life_band_text(first));
    for (const auto* m : {worst_of(e, true), worst_of(e, false)})
        if (m != nullptr) out += fmt::format("; {} {} um/a, {} y", m->name, band_text(m->total), life_band_text(*m));
    return out;
}

/// "Every year: ".
std::string every(Duration span) {
    return span == years(1) ? std::string("Every year: ") : fmt::format("Every {}: ", print(Value(span), 2));
}

std::string levers_text(const IsolationRanking& ranking) {
    std::string out = "\nWHAT ELSE COULD BE DONE with the first, each by itself\n";
    for (const auto& lever : ranking.levers)
        out += wrapped(
            fmt::format("{}: first to go after {} y, the aluminium {} y{}", lever.name, life_text(lever.first), life_text(lever.wall),
                        lever.passes  ? "; PASSES"
                        : lever.holds ? ""
                                      : "; the joint does not hold"),
            "  * ", "    ");
    return out;
}

std::string steps_line(const MethodResult& r) {
    std::string out;
    auto soonest = years(100);
    std::string inspect;
    for (const auto* element : r.method.elements()) {
        if (element->steps == "None.") continue;
        out += (out.empty() ? "" : " ") + element->steps;
        soonest = min(soonest, element->inspection);
        inspect += (inspect.empty() ? "" : " ") + element->inspect;
    }
    if (out.empty()) return "";
    return out + ' ' + every(soonest) + inspect;
}

std::string heading(const IsolationRanking& ranking) {
    std::string out =
        fmt::format("{} compositions of isolation for a promise of {}, in ", ranking.results.size(), print(Value(ranking.promised)));
    for (std::size_t i = 0; i < ranking.exposures.size(); ++i)
        out += fmt::format("{}\"{}\"", i == 0 ? "" : ", ", shown(ranking.exposures[i].name));
    return out;
}

std::string result_text(const IsolationRanking& ranking, std::size_t index) {
    const auto& r = ranking.results[index];
    const auto number = fmt::format("{:>4}  ", index + 1);
    const std::string indent(8, ' ');
    std::string out = wrapped(fmt::format("{}: {}{}", r.method.name(), r.passes ? "PASSES" : verdict_of(r),
                                          ranking.as_written == index ? " (as the joint file has it)" : ""),
                              number, "      ");
    if (!r.refused.empty()) return out + wrapped(r.refused, "      ", indent);
    out += wrapped(clamp_line(r), "      ", indent);
    for (const auto& exposure : r.exposures) out += wrapped(exposure_line(exposure), "      ", indent);
    return out;
}

std::string number(double value) { return print_number(value, 4); }

}  // namespace

std::string ranking_text(const IsolationRanking& ranking, RankingExtent extent) {
    const auto& best = ranking.best();
    std::string out = wrapped(ranking.title, best.passes ? "FOUND  " : "NONE PASSES  ", "      ");
    out += wrapped(heading(ranking));
    out += '\n' + wrapped(advice(ranking));
    out += extent == RankingExtent::all ? "\nRANKING, every composition\n"
                                        : "\nRANKING, the best with each element between the faces, its place among all\n";
    for (const auto index : shown_results(ranking, extent)) out += result_text(ranking, index);
    if (best.refused.empty()) {
        out += "\nPARTS with the first: um/a and years, two in three within the brackets\n";
        for (const auto& exposure : best.exposures) out += exposure_text(exposure, ranking.promised);
        if (!ranking.levers.empty()) out += levers_text(ranking);
        out += '\n' + wrapped(best.method.name(), "STEPS for the first: ", "  ");
        for (const auto* element : best.method.elements()) {
            if (element->steps != "None.") out += wrapped(fmt::format("{}: {}", element->name, element->steps), "  * ", "    ");
            if (element->steps != "None.") out += wrapped(every(element->inspection) + element->inspect, "    ", "    ");
            if (element->hazards) out += wrapped(*element->hazards, "    beware: ", "      ");
        }
    }
    if (!ranking.warnings.empty()) {
        out += "\nWARNINGS\n";
        for (const auto& warning : ranking.warnings) out += wrapped(warning, "  * ", "    ");
    }
    out += '\n' + wrapped(
                      "Two in three lie within the brackets. Shares, lives of seals, multipliers of couples and crevices are judged: they "
                      "rank, they do not promise. faywright check FILE --explain corrosion derives the joint as written line by line.");
    for (const auto& caution : cautions()) out += wrapped(caution, "caution: ", "  ");
    return out;
}

std::string ranking_markdown(const IsolationRanking& ranking, RankingExtent extent) {
    std::string out = fmt::format("# Isolation: {}\n\n{}.\n\n{}\n\n", markdown_text(ranking.title), markdown_text(heading(ranking)),
                                  markdown_text(advice(ranking)));
    out += "Lives in years, two in three within the brackets; rates, shares and lives of seals are judged and rank only.\n\n";
    out += "| rank | method | verdict | clamp at end | slip | governing |";
    std::string rule = "| ---: | --- | --- | ---: | ---: | --- |";
    for (const auto& exposure : ranking.exposures) {
        out += fmt::format(" {}: first to go; rail at the plate |", markdown_text(exposure.name));
        rule += " --- |";
    }
    out += '\n' + rule + '\n';
    for (const auto index : shown_results(ranking, extent)) {
        const auto& r = ranking.results[index];
        out += fmt::format("| {} | {} | {} |", index + 1, markdown_text(r.method.name()), verdict_of(r));
        if (!r.refused.empty()) {
            out += fmt::format(" | | {} |", markdown_text(r.refused));
            for (std::size_t i = 0; i < ranking.exposures.size(); ++i) out += " |";
        } else {
            out += fmt::format(" {} | {} | {} |", print(Value(r.clamp), 3), slip_text(r), r.what_governs());
            for (const auto& e : r.exposures) {
                const auto* rail = worst_of(e, false);
                out += fmt::format(" {} {}{}; {} |", markdown_text(e.first_to_go().name), life_band_text(e.first_to_go()),
                                   e.passes ? "" : ", fails", rail == nullptr ? "-" : life_band_text(*rail));
            }
        }
        out += '\n';
    }
    if (ranking.best().refused.empty()) {
        out += "\n## Steps for the first\n\n";
        for (const auto* element : ranking.best().method.elements())
            if (element->steps != "None.")
                out += fmt::format("- {}: {} {}{}\n", markdown_text(element->name), markdown_text(element->steps),
                                   every(element->inspection), markdown_text(element->inspect));
    }
    out += "\n## Cautions\n\n";
    for (const auto& warning : ranking.warnings) out += fmt::format("- {}\n", markdown_text(warning));
    for (const auto& caution : cautions()) out += fmt::format("- {}\n", markdown_text(caution));
    return out;
}

std::string ranking_csv(const IsolationRanking& ranking, RankingExtent extent) {
    std::string out =
        "rank,faying,fixing,tube,edges,exposure,verdict,passes_here,clamp_kN,assembled_kN,slip,utilisation,governing,pressure,temperature,"
        "first_to_go,stake,life_years,life_low_years,life_high_years,plate_zinc_um_a,plate_zinc_low_um_a,plate_zinc_high_um_a,plate_zinc_"
        "years,"
        "rail_um_a,rail_low_um_a,rail_high_um_a,rail_years,aluminium_years,steps\n";
    for (const auto index : shown_results(ranking, extent)) {
        const auto& r = ranking.results[index];
        const auto& m = r.method;
        const auto method = fmt::format("{},{},{},{},{}", index + 1, csv_cell(m.faying->name), csv_cell(m.fixing->name),
                                        csv_cell(m.tube == nullptr ? "" : m.tube->name), csv_cell(m.edges->name));
        if (!r.refused.empty()) {
            out += fmt::format("{},\"\",{},\"\",,,,,\"\",\"\",\"\",\"\",{},,,,,,,,,,,,,\"\"\n", method, csv_cell(verdict_of(r)),
                               csv_cell(r.refused));
            continue;
        }
        for (const auto& e : r.exposures) {
            const auto& first = e.first_to_go();
            const auto rate = [](const MemberOutlook* member) {
                return member == nullptr ? std::string(",,")
                                         : fmt::format("{},{},{}", number(in_um_per_a(member->total.rate)),
                                                       number(in_um_per_a(member->total.low)), number(in_um_per_a(member->total.high)));
            };
            const auto* zinc = worst_of(e, true);
            const auto* rail = worst_of(e, false);
            auto aluminium = years(1000);
            for (const auto& member : e.members)
                if (member.is_wall) aluminium = min(aluminium, member.life);
            out += fmt::format("{},{},{},{},{},{},{},{},{},{},{},{},{},{},{},{},{},{},{},{},{},{}\n", method, csv_cell(e.exposure->name),
                               csv_cell(verdict_of(r)), e.passes ? "yes" : "no", number(in_kN(r.clamp)), number(in_kN(r.assembled)),
                               r.slip ? number(*r.slip) : "", number(r.utilisation), csv_cell(r.trouble.empty() ? r.governing : r.trouble),
                               csv_cell(met(r.pressure_met)), csv_cell(met(r.temperature_met)), csv_cell(first.name), csv_cell(first.stake),
                               number(in_years(first.life)), number(in_years(first.life_low)), number(in_years(first.life_high)),
                               rate(zinc), zinc == nullptr ? "" : number(in_years(zinc->life)), rate(rail),
                               rail == nullptr ? "" : number(in_years(rail->life)), number(in_years(aluminium)), csv_cell(steps_line(r)));
        }
    }
    return out;
}

std::string ranking_json(const IsolationRanking& ranking, RankingExtent extent) {
    json::Json out;
    out["program"] = "faywright";
    out["version"] = FAYWRIGHT_VERSION;
    out["joint"] = ranking.title;
    out["promised"] = json::of(Value(ranking.promised));
    out["verdict"] = ranking.best().passes ? "pass" : "fail";
    out["advice"] = advice(ranking);
    out["compositions"] = ranking.results.size();
    out["results"] = json::Json::array();
    for (const auto index : shown_results(ranking, extent)) {
        const auto& r = ranking.results[index];
        json::Json one;
        one["rank"] = index + 1;
        one["faying"] = r.method.faying->name;
        one["fixing"] = r.method.fixing->name;
        if (r.method.tube != nullptr) one["tube"] = r.method.tube->name;
        one["edges"] = r.method.edges->name;
        one["as_written"] = ranking.as_written == index;
        if (!r.refused.empty()) {
            one["status"] = "cannot-be-built";
            one["why"] = r.refused;
            out["results"].push_back(std::move(one));
            continue;
        }
        one["status"] = r.passes ? "pass" : "fail";
        one["holds"] = r.holds;
        one["clamp_assembled"] = json::of(Value(r.assembled));
        one["clamp_end"] = json::of(Value(r.clamp), Value(r.assembled));
        if (r.slip) one["slip"] = *r.slip;
        one["utilisation"] = r.utilisation;
        one["governing"] = r.governing;
        if (!r.trouble.empty()) one["trouble"] = r.trouble;
        if (r.pressure_met) one["pressure_met"] = *r.pressure_met;
        if (r.temperature_met) one["temperature_met"] = *r.temperature_met;
        one["sustained_clamp"] = r.sustained;
        one["steps"] = json::Json::array();
        for (const auto* element : r.method.elements())
            if (element->steps != "None.")
                one["steps"].push_back({{"element", element->name},
                                        {"do", element->steps},
                                        {"inspect", element->inspect},
                                        {"every", json::of(Value(element->inspection))}});
        one["exposures"] = json::Json::array();
        for (const auto& e : r.exposures) one["exposures"].push_back(json::of(e));
        out["results"].push_back(std::move(one));
    }
    out["levers"] = json::Json::array();
    for (const auto& lever : ranking.levers)
        out["levers"].push_back({{"change", lever.name},
                                 {"holds", lever.holds},
                                 {"status", lever.passes ? "pass" : "fail"},
                                 {"first_to_go", json::of(Value(lever.first), Value(years(1)))},
                                 {"aluminium", json::of(Value(lever.wall), Value(years(1)))}});
    out["warnings"] = ranking.warnings;
    out["cautions"] = cautions();
    return json::printed(out);
}

}  // namespace faywright
