// SPDX-License-Identifier: MIT
#include "report/calculation_report.hpp"

#include "joint/rows_of.hpp"
#include "quantity/text.hpp"
#include "report/assessment_words.hpp"
#include "report/corrosion.hpp"
#include "report/joint_pictures.hpp"
#include "report/pictures.hpp"
#include "report/row_values.hpp"
#include "report/steps_text.hpp"
#include "report/typography.hpp"
#include "report/uncertainty.hpp"

#include <fmt/format.h>

#include <array>
#include <bit>
#include <set>
#include <unordered_map>

namespace faywright {

namespace {

Cell verdict_cell(bool passes) { return passes ? Cell("pass", Tone::pass) : Cell("FAIL", Tone::fail); }

Grid facts_grid(std::string caption, const std::vector<Fact>& facts) {
    Grid grid{std::move(caption), {{"what"}, {"value"}}, {}};
    for (const auto& [label, value] : facts)
        if (!label.empty()) grid.rows.push_back({label, typographic(value)});
    return grid;
}

Chapter verdict_chapter(const ReportMatter& m) {
    const auto& a = m.assessment;
    Chapter out{"verdict", "Verdict", {}};
    std::string words = goes_by_bearing(a) ? std::string(bearing_note) + ". " : "";
    words += a.passes ? "Every check passes, and by the estimates no part is used up within the promise." : "Not to be built as it is.";
    if (a.passes && a.corrosion.exposures.empty()) words = "Every check passes. Corrosion was not assessed: no exposure is given.";
    out.blocks.emplace_back(Banner{a.passes ? "PASS" : "FAIL", words, a.passes ? Tone::pass : Tone::fail});
    Listing reasons;
    for (const auto& [label, value] : verdict_facts(a))
        reasons.items.push_back(typographic(label.empty() ? value : fmt::format("{}: {}", label, value)));
    for (const auto& e : a.corrosion.exposures)
        for (const auto& caution : e.cautions) reasons.items.push_back(typographic(fmt::format("{}: {}", e.exposure->name, caution)));
    out.blocks.emplace_back(std::move(reasons));
    if (const auto list = warnings(a); !list.empty()) {
        out.blocks.emplace_back(Heading{"Warnings"});
        Listing told;
        for (const auto& warning : list) told.items.push_back(typographic(warning));
        out.blocks.emplace_back(std::move(told));
    }
    out.blocks.emplace_back(Heading{"Cautions"});
    out.blocks.emplace_back(Listing{cautions(), false});
    return out;
}

Chapter joint_chapter(const ReportMatter& m) {
    const auto& a = m.assessment;
    Chapter out{"joint", "The joint", {}};
    out.blocks.emplace_back(Picture{section_picture(a, SectionDetail::dimensions), "section"});
    out.blocks.emplace_back(facts_grid(fmt::format("Bolts: {}", bolts_name(*a.state.joint)), bolt_facts(a)));
    return out;
}

std::string components(Value x, Value y, Value z) { return fmt::format("{}; {}; {}", told(x), told(y), told(z)); }

Chapter loads_chapter(const ReportMatter& m) {
    const auto& a = m.assessment;
    const auto& joint = *a.state.joint;
    Chapter out{"loads", "Loads and bolts", {}};
    out.blocks.emplace_back(Picture{pattern_picture(a), "pattern"});
    if (const auto* result = governing_of_bolts(a); result != nullptr) {
        Grid grid{fmt::format("What each bolt feels in \"{}\", without any factor, and its utilisation in {}",
                              joint.load_cases[static_cast<std::size_t>(result->where.load_case)].name, check_name(joint, *result)),
                  {{"bolt", Align::right},
                   {"x", Align::right},
                   {"y", Align::right},
                   {"shear along x", Align::right},
                   {"shear along y", Align::right},
                   {"shear", Align::right},
                   {"pull", Align::right},
                   {"utilisation", Align::right}},
                  {}};
        const auto use = use_of_bolts(a, *result);
        for (std::size_t i = 0; i < use.size(); ++i) {
            const auto& load = use[i].load;
            const auto& p = joint.positions[i];
            grid.rows.push_back({fmt::format("{}", i + 1), told(Value(p.x)), told(Value(p.y)), told(Value(load.shear.x), 3),
                                 told(Value(load.shear.y), 3), told(Value(load.resultant), 3), told(Value(load.tension), 3),
                                 ratio_text(use[i].utilisation)});
        }
        out.blocks.emplace_back(std::move(grid));
    }
    Grid cases{"Load cases on the attached part; forces, moments and places as x; y; z",
               {{"case"}, {"kind"}, {"factor", Align::right}, {"at"}, {"force"}, {"moment"}, {"cycles", Align::right}},
               {}};
    for (std::size_t i = 0; i < joint.load_cases.size(); ++i) {
        const auto& l = joint.load_cases[i];
        cases.rows.push_back(
            {l.name, std::string(word_of(l.format)), print_number(a.state.factor_of(static_cast<int>(i)), 3),
             components(Value(l.at_x), Value(l.at_y), Value(l.at_z)), components(Value(l.force_x), Value(l.force_y), Value(l.force_z)),
             components(Value(l.moment_x), Value(l.moment_y), Value(l.moment_z)),
             l.cycles ? fmt::format("{}{}", print_number(*l.cycles, 3), l.swings() ? ", reversing" : "") : std::string("-")});
    }
    out.blocks.emplace_back(std::move(cases));
    return out;
}

Chapter clamp_chapter(const ReportMatter& m) {
    const auto& a = m.assessment;
    Chapter out{"clamp", "Clamp force through life", {}};
    out.blocks.emplace_back(Picture{clamp_picture(a), "clamp-picture"});
    out.blocks.emplace_back(Picture{joint_diagram(a), "joint-diagram"});
    Grid grid{"Clamp force of one bolt", {{"stage"}, {"least", Align::right}, {"greatest", Align::right}}, {}};
    for (const auto& stage : a.clamp)
        grid.rows.push_back({std::string(stage.title), told(Value(stage.least), 3), told(Value(stage.greatest), 3)});
    out.blocks.emplace_back(std::move(grid));
    return out;
}

Chapter checks_chapter(const ReportMatter& m) {
    const auto& a = m.assessment;
    const auto& joint = *a.state.joint;
    Chapter out{"checks", "Checks", {}};
    out.blocks.emplace_back(Picture{utilisation_picture(a), "utilisation"});
    Grid grid{
        "Every check that applies, the most used first; static: characteristic resistance over the worst static load, without any factor",
        {{"check"},
         {"demand", Align::right},
         {"resistance", Align::right},
         {"use", Align::right},
         {"static", Align::right},
         {"status"},
         {"case and bolt"},
         {"source"}},
        {}};
    Grid idle{"Not applicable", {{"check"}, {"why"}}, {}};
    for (const auto* result : by_utilisation(a)) {
        const auto& o = result->outcome;
        if (!o.applicable) {
            idle.rows.push_back({check_name(joint, *result), o.note});
            continue;
        }
        grid.rows.push_back({with_part(result->info->title, part_name(joint, *result)), told(o.demand(), 3), told(o.resistance(), 3),
                             ratio_text(o.utilisation), result->static_factor ? ratio_text(*result->static_factor) : std::string("-"),
                             verdict_cell(result->status == Status::pass), case_name(joint, *result), source_text(*o.source)});
    }
    out.blocks.emplace_back(std::move(grid));
    out.blocks.emplace_back(std::move(idle));
    return out;
}

Chapter tube_chapter(const ReportMatter& m) {
    const auto& a = m.assessment;
    Chapter out{"tube", "Crush tube and section", {}};
    if (auto picture = tube_fit_picture(a)) out.blocks.emplace_back(Picture{std::move(*picture), "tube-fit"});
    const auto facts = tube_facts(a);
    out.blocks.emplace_back(facts_grid("The tube and what it carries", facts));
    for (const auto& [label, value] : facts)
        if (label.empty()) out.blocks.emplace_back(Paragraph{value});
    return out;
}

void add_exposure(const ExposureOutlook& e, Duration promised, std::size_t number, Chapter& out) {
    out.blocks.emplace_back(Heading{fmt::format("{}: {}", e.exposure->name, e.passes ? "pass" : "FAIL")});
    out.blocks.emplace_back(Paragraph{typographic(climate_text(e)) + "."});
    out.blocks.emplace_back(Picture{life_picture(e, promised), fmt::format("life-{}", number)});
    Grid grid{
        fmt::format("Lives in \"{}\", against the promised {}; two in three within the brackets", e.exposure->name, told(Value(promised))),
        {{"part"}, {"what is used up"}, {"µm a year"}, {"years"}, {"status"}},
        {}};
    for (const auto& part : e.members)
        grid.rows.push_back({part.name, typographic(part.stake), part.lasts ? std::string("-") : band_text(part.total), life_words(part),
                             verdict_cell(part.passes)});
    out.blocks.emplace_back(std::move(grid));
    Listing contacts;
    for (const auto& contact : e.contacts) contacts.items.push_back(typographic(contact_text(contact)));
    out.blocks.emplace_back(std::move(contacts));
    for (const auto& caution : e.cautions) out.blocks.emplace_back(Paragraph{typographic(caution), Tone::caution});
}

Chapter corrosion_chapter(const ReportMatter& m) {
    const auto& a = m.assessment;
    Chapter out{"corrosion", "Corrosion", {}};
    if (a.corrosion.exposures.empty()) {
        out.blocks.emplace_back(Paragraph{"Not assessed: the joint file names no exposure under [corrosion].", Tone::caution});
        return out;
    }
    for (std::size_t i = 0; i < a.corrosion.exposures.size(); ++i) add_exposure(a.corrosion.exposures[i], a.state.joint->life, i + 1, out);
    out.blocks.emplace_back(Paragraph{typographic(outlook_note)});
    return out;
}

Chapter isolation_chapter(const IsolationRanking& ranking) {
    Chapter out{"isolation", "Other elements between the faces", {}};
    out.blocks.emplace_back(Paragraph{
        "The joint with each element of the isolation table between its faces and all else as it is. faywright isolate ranks every method: "
        "element, bolt, tube and edges together."});
    out.blocks.emplace_back(Picture{isolation_picture(ranking), "isolation-picture"});
    Grid grid{"Best first",
              {{"rank", Align::right},
               {"element"},
               {"least clamp", Align::right},
               {"clamp left", Align::right},
               {"shortest life", Align::right},
               {"what governs"},
               {"status"}},
              {}};
    for (std::size_t i = 0; i < ranking.of_each_faying.size(); ++i) {
        const auto& each = ranking.results[ranking.of_each_faying[i]];
        const auto name = each.method.faying->name + (each.as_written ? " (as in the file)" : "");
        if (!each.refused.empty()) {
            grid.rows.push_back({fmt::format("{}", i + 1), name, "-", "-", "-", each.refused, Cell("cannot be built", Tone::fail)});
            continue;
        }
        grid.rows.push_back({fmt::format("{}", i + 1), name, told(Value(each.clamp), 3),
                             fmt::format("{:.0f} %", 100.0 * static_cast<double>(each.clamp / each.assembled)),
                             life_text(each.shortest_life()) + " years", each.what_governs(), verdict_cell(each.passes)});
    }
    out.blocks.emplace_back(std::move(grid));
    return out;
}

Chapter uncertainty_chapter(const Uncertainty& u) {
    Chapter out{"uncertainty", "Uncertainty", {}};
    out.blocks.emplace_back(Paragraph{fmt::format("{} joints drawn, seed {}.{}", u.done, u.seed,
                                                  u.complete() ? "" : fmt::format(" INCOMPLETE: {} were wanted.", u.wanted))});
    Grid events{"How likely in the joint's life, each bound with 95 % confidence", {{"event"}, {"likelihood"}}, {}};
    for (const auto& event : u.events) events.rows.push_back({std::string(event.info->title), likelihood_text(event)});
    out.blocks.emplace_back(std::move(events));
    std::size_t number = 0;
    for (const auto& response : u.responses) {
        ++number;
        if (response.barred != nullptr)
            out.blocks.emplace_back(Paragraph{fmt::format("{}: not counted: {}.", response.info->title, response.barred)});
        else
            out.blocks.emplace_back(Picture{histogram_picture(response), fmt::format("histogram-{}", number)});
    }
    Grid inputs{"What scatters, and the share of the scatter that it stands for",
                {{"input"}, {"distribution"}, {"stands on"}, {"of the clamp's", Align::right}, {"of the slip's", Align::right}},
                {}};
    const auto share = [](const ResponseTold& r, std::size_t i) {
        return i < r.ranking.shares.size() ? fmt::format("{:.0f} %", 100.0 * r.ranking.shares[i]) : std::string("-");
    };
    for (std::size_t i = 0; i < u.inputs.size(); ++i)
        inputs.rows.push_back({std::string(u.inputs[i].info->title), typographic(distribution_text(u.inputs[i])),
                               fmt::format("{}: {}", word(u.inputs[i].info->basis), u.inputs[i].info->basis_words),
                               share(u.responses[0], i), share(u.responses[1], i)});
    out.blocks.emplace_back(std::move(inputs));
    out.blocks.emplace_back(Listing{uncertainty_notes(), false});
    return out;
}

/// Numbers the tables of all derivations, and prints each once: where the same lines come again, their number stands.
class DerivationWriter {
public:
    explicit DerivationWriter(Chapter& chapter) : chapter_(chapter) {}

    void add(std::string title, const std::vector<Step>& steps) {
        chapter_.blocks.emplace_back(Heading{std::move(title)});
        for (const auto& calculator : calculators_of(steps)) add_table(calculator);
        refer();
    }

private:
    void add_table(std::span<const Step> steps) {
        // Many come again: they are told apart before they are set in words.
        std::string lines;
        for (const auto& step : steps) {
            for (const auto* text : {&step.symbol, &step.formula, &step.substituted, &step.words}) lines.append(*text).append("|");
            // Rounding of the last digits makes no other table.
            const auto value = std::bit_cast<std::array<char, sizeof(float)>>(static_cast<float>(step.value.si()));
            lines.append(value.data(), value.size());
        }
        const auto [place, fresh] = numbers_.emplace(std::move(lines), numbers_.size() + 1);
        if (!fresh) {
            again_.push_back(fmt::format("T{} ({})", place->second, steps.front().formula));
            return;
        }
        refer();
        auto table = table_of(steps);
        table.title = fmt::format("T{}  {}", place->second, table.title);
        chapter_.blocks.emplace_back(std::move(table));
    }

    /// What was left out since the last table.
    void refer() {
        if (again_.empty()) return;
        chapter_.blocks.emplace_back(Paragraph{fmt::format("As above: {}.", fmt::join(again_, ", "))});
        again_.clear();
    }

    Chapter& chapter_;
    std::unordered_map<std::string, std::size_t> numbers_;
    std::vector<std::string> again_;
};

Chapter derivations_chapter(const ReportMatter& m) {
    const auto& a = m.assessment;
    const auto& joint = *a.state.joint;
    Chapter out{"derivations", "Every line of the calculation", {}};
    out.blocks.emplace_back(
        Paragraph{"Each table is one calculator: symbol, meaning or formula, the same with its values, result. A table that comes again is "
                  "told by its "
                  "number. Values are printed with five digits and reckoned with all."});
    DerivationWriter writer(out);
    for (const auto& [topic, title] : {std::pair{"preload", "Torque and preload"}, std::pair{"stiffness", "Stiffness of bolt and parts"},
                                       std::pair{"clamp", "Clamp force through life"}, std::pair{"tube", "Crush tube and walls"}}) {
        Recorder steps(false);
        derive(a.state, topic, steps);
        if (!steps.steps().empty()) writer.add(title, steps.steps());
    }
    for (const auto* result : by_utilisation(a)) {
        const auto& o = result->outcome;
        if (!o.applicable) continue;
        writer.add(fmt::format("{}: {}", check_name(joint, *result), result->info->title), explain(a, *result, false).steps());
        const auto where = case_name(joint, *result);
        out.blocks.emplace_back(Paragraph{fmt::format("Utilisation {} / {} = {}{}: {}{}", told(o.demand(), 5), told(o.resistance(), 5),
                                                      print_number(o.utilisation, 4), where.empty() ? "" : ", " + where,
                                                      mark_of(result->status), o.note == nullptr ? "" : fmt::format(". Note: {}", o.note)),
                                          result->status == Status::pass ? Tone::plain : Tone::fail});
    }
    for (const auto& exposure : joint.surroundings.exposures)
        writer.add(fmt::format("Corrosion in \"{}\"", exposure.name), derive_outlook(joint, exposure, m.tables).steps());
    return out;
}

template <class Record>
std::vector<Cell> row_told(const Row<Record>& row) {
    std::string sources = source_text(row.source.view());
    for (const auto& [key, source] : row.source_of) sources += fmt::format("; {}: {}", key, source_text(source.view()));
    if (row.at.file) sources += fmt::format("; own table {}", *row.at.file);
    auto values = typographic(line_of(values_of(row), "; "));
    if (!row.note.empty()) values += ". Note: " + row.note;
    return {row.name, std::string(Record::table), values, sources};
}

Chapter inputs_chapter(const ReportMatter& m) {
    const auto& a = m.assessment;
    const auto& joint = *a.state.joint;
    Chapter out{"inputs", "Inputs, and where each came from", {}};
    Grid given{"Given by the joint file", {{"field"}, {"meaning"}, {"value"}, {"line", Align::right}}, {}};
    for (const auto& field : m.fields)
        given.rows.push_back({field.path, field.meaning, field.value, fmt::format("{}:{}", field.at.line, field.at.column)});
    out.blocks.emplace_back(std::move(given));
    Grid assumed{"Assumed because the joint file does not say", {{"field"}, {"meaning"}, {"value"}}, {}};
    for (const auto& taken : grouped(joint.defaults)) assumed.rows.push_back({taken.path, taken.meaning, typographic(taken.value)});
    for (const auto& [path, words] : standing_assumptions(a)) assumed.rows.push_back({path, words, ""});
    out.blocks.emplace_back(std::move(assumed));
    if (const auto list = overrides_of(joint); !list.empty()) {
        Grid overrides{fmt::format("Put in place of the tables' values by the joint file, because: {}",
                                   joint.overrides.reason.value_or("no reason given")),
                       {{"field"}, {"value"}},
                       {}};
        for (const auto& [field, value] : list) overrides.rows.push_back({field, typographic(value)});
        out.blocks.emplace_back(std::move(overrides));
    }
    Grid rows{"Taken from the tables", {{"row"}, {"table"}, {"values"}, {"source"}}, {}};
    std::set<std::pair<std::string_view, std::string>> seen;
    each_row(joint, [&]<class Record>(const Row<Record>& row) {
        if (seen.emplace(Record::table, row.name).second) rows.rows.push_back(row_told(row));
    });
    if (a.state.tube.present && seen.emplace(StockTube::table, a.state.tube.stock->name).second)
        rows.rows.push_back(row_told(*a.state.tube.stock));
    for (const auto& plane : joint.planes)
        rows.rows.push_back({plane.words, "slip-factors",
                             fmt::format("slip factor {}, {} to {}", print_number(plane.slip_factor, 3),
                                         print_number(plane.slip_factor_low, 3), print_number(plane.slip_factor_high, 3)),
                             source_text(plane.source.view()) + (plane.own_table.empty() ? "" : "; own table " + plane.own_table)});
    out.blocks.emplace_back(std::move(rows));
    return out;
}

Chapter identity_chapter(const ReportMatter& m) {
    Chapter out{"identity", "Which report this is", {}};
    Grid files{"Read for it; sha256sum prints the same digits for the same file", {{"file"}, {"SHA-256"}}, {}};
    for (const auto& [file, digest] : m.identification.files) files.rows.push_back({file, digest});
    out.blocks.emplace_back(
        Paragraph{fmt::format("Made by {}. Another joint, another table or another version is another report.", m.identification.program)});
    out.blocks.emplace_back(std::move(files));
    out.blocks.emplace_back(
        Blanks{"To be filled in by hand", {"Owner", "Document number", "Revision", "Created by", "Approved by", "Date of issue"}});
    return out;
}

}  // namespace

Page calculation_report(const ReportMatter& m) {
    Page page{PageKind::report, "Calculation report", m.assessment.state.joint->title, {}, m.identification};
    for (auto* chapter : {&verdict_chapter, &joint_chapter, &loads_chapter, &clamp_chapter, &checks_chapter})
        page.chapters.push_back((*chapter)(m));
    if (m.assessment.state.joint->section) page.chapters.push_back(tube_chapter(m));
    page.chapters.push_back(corrosion_chapter(m));
    if (m.isolation != nullptr) page.chapters.push_back(isolation_chapter(*m.isolation));
    if (m.uncertainty != nullptr) page.chapters.push_back(uncertainty_chapter(*m.uncertainty));
    page.chapters.push_back(derivations_chapter(m));
    page.chapters.push_back(inputs_chapter(m));
    page.chapters.push_back(identity_chapter(m));
    return page;
}

}  // namespace faywright
