// SPDX-License-Identifier: MIT
#include "report/substitution.hpp"

#include "quantity/text.hpp"
#include "report/corrosion.hpp"
#include "report/layout.hpp"
#include "report/steps_text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace faywright {

namespace {

std::string basis_text(const Source& source) { return fmt::format("{} [{}]", citation(source), word(source.basis)); }

std::vector<const Trial*> trials_of(const Substitution& review) {
    std::vector<const Trial*> out{review.specified.get()};
    if (review.unnoticed) out.push_back(&*review.unnoticed);
    if (review.right) out.push_back(&*review.right);
    return out;
}

std::string state_of(const Trial& t) {
    return !t.is_built() ? "cannot be built" : !t.holds ? "FAILS" : !t.lasts ? "corrodes early" : "passes";
}

/// What is told of each way, and how.
struct TrialLine {
    const char* name;
    std::string (*words)(const Trial&);
};
constexpr TrialLine trial_lines[] = {
    {"torque", [](const Trial& t) { return print(Value(t.torque), 3); }},
    {"preload, least", [](const Trial& t) { return print(Value(t.assembled_least), 3); }},
    {"preload, greatest", [](const Trial& t) { return print(Value(t.assembled_greatest), 3); }},
    {"least clamp, life", [](const Trial& t) { return print(Value(t.clamp), 3); }},
    {"bolt stress/limit", [](const Trial& t) { return print_number(t.bolt_stress, 3); }},
    {"slip", [](const Trial& t) { return t.slip ? print_number(*t.slip, 3) : std::string("no friction"); }},
    {"governing check", [](const Trial& t) { return t.governing; }},
    {"its utilisation", [](const Trial& t) { return print_number(t.utilisation, 3); }},
    {"first to go, years", [](const Trial& t) { return t.exposures.empty() ? std::string("no exposure") : life_text(t.shortest_life()); }},
    {"aluminium, years",
     [](const Trial& t) { return t.exposures.empty() ? std::string("no exposure") : life_text(t.shortest_wall_life()); }},
};

std::string heading(const Joint& joint, const Substitution& review) {
    return fmt::format(
        "{} in place of {} in \"{}\"", review.offer.title,
        review.offer.part == OfferedPart::bolt ? bolt_words(joint.bolt) : "the " + std::string(word_of(review.offer.part)) + " specified",
        joint.title);
}

std::string understood_text(const Offer& offer) {
    std::string out;
    for (const auto& each : offer.understood) out += fmt::format("{}\"{}\" {}", out.empty() ? "" : "; ", each.token, each.meaning);
    if (offer.written_standard != nullptr && offer.written_standard->successor)
        out += fmt::format("{}{} is read as its successor {}", out.empty() ? "" : "; ", offer.written_standard->name,
                           *offer.written_standard->successor);
    return out;
}

std::string verdict_line(const Substitution& review) {
    const auto& first = review.governing();
    return fmt::format("{} ({}){}{}", first.rule->title, first.rule->id, first.words.empty() ? "" : ": ", first.words);
}

/// Text broken between words into lines of a column.
std::vector<std::string> column_of(std::string_view text, std::size_t width) {
    std::vector<std::string> out{""};
    while (!text.empty()) {
        const auto end = std::min(text.find(' '), text.size());
        const auto word = text.substr(0, end);
        text.remove_prefix(std::min(end + 1, text.size()));
        if (!out.back().empty() && display_width(out.back()) + 1 + display_width(word) > width) out.emplace_back();
        if (!out.back().empty()) out.back() += ' ';
        out.back() += word;
    }
    return out;
}

std::string property_text(const Property& p) {
    const auto name = column_of(p.name, 19), specified = column_of(p.specified, 21), offered = column_of(p.offered, 21);
    std::string out;
    for (std::size_t i = 0; i < std::max({name.size(), specified.size(), offered.size()}); ++i) {
        const auto cell = [i](const std::vector<std::string>& lines, std::size_t width) {
            return fitted(i < lines.size() ? lines[i] : "", width) + ' ';
        };
        auto line = "  " + cell(name, 19) + cell(specified, 21) + cell(offered, 21) + (i == 0 ? std::string(word_of(p.standing)) : "");
        line.erase(line.find_last_not_of(' ') + 1);
        out += line + '\n';
    }
    return out;
}

std::string exposure_lines(const Substitution& review) {
    std::string out;
    for (std::size_t i = 0; i < review.specified->exposures.size(); ++i) {
        const auto& before = review.specified->exposures[i];
        out += fmt::format("  {}\n", shown(before.exposure->name, 70));
        for (const auto* trial : trials_of(review)) {
            if (!trial->is_built()) continue;
            const auto& e = trial->exposures[i];
            const auto& first = e.first_to_go();
            out += wrapped(fmt::format("{}: first {} of {}, {} years", trial->title, first.stake, first.name, life_band_text(first)),
                           "    ", "      ");
        }
    }
    return out;
}

std::string list_text(const char* heading, const std::vector<std::string>& list) {
    if (list.empty()) return "";
    std::string out = fmt::format("\n{}\n", heading);
    for (const auto& each : list) out += wrapped(each, "  * ", "    ");
    return out;
}

std::string name_of(const ReviewedRow& row) {
    std::string out = row.row->item ? *row.row->item : fmt::format("row {}", row.row->row);
    const auto& offer = row.row->offer;
    const auto title = row.review ? row.review->offer.title : offer.name ? *offer.name : offer.designation.value_or("");
    if (!title.empty()) out += ": " + title;
    return shown(out, 120);
}

std::string torque_of(const Substitution& review) {
    const bool useful = review.is_accepted() && review.right && review.right->is_built();
    return useful ? print(Value(review.right->torque), 3) : std::string();
}

std::string counts(const ReviewedList& list) {
    std::string out;
    for (const auto& [verdict, words] : Words<Verdict>::all) {
        const auto n =
            std::count_if(list.rows.begin(), list.rows.end(), [v = verdict](const auto& r) { return r.review && r.review->verdict == v; });
        out += fmt::format("{}{} {}", out.empty() ? "" : ", ", n, words);
    }
    const auto unread = std::count_if(list.rows.begin(), list.rows.end(), [](const auto& r) { return !r.review; });
    return out + (unread > 0 ? fmt::format(", {} not readable", unread) : "");
}

json::Json trial_json(const Trial& t) {
    json::Json out;
    out["title"] = t.title;
    if (!t.is_built()) {
        out["status"] = "cannot-be-built";
        out["why"] = t.refused;
        return out;
    }
    out["status"] = t.holds && t.lasts ? "pass" : "fail";
    out["holds"] = t.holds;
    out["lasts"] = t.lasts;
    out["torque"] = json::of(Value(t.torque));
    out["preload_least"] = json::of(Value(t.assembled_least));
    out["preload_greatest"] = json::of(Value(t.assembled_greatest), Value(t.assembled_least));
    out["clamp_end"] = json::of(Value(t.clamp), Value(t.assembled_least));
    out["bolt_stress"] = t.bolt_stress;
    if (t.slip) out["slip"] = *t.slip;
    out["governing"] = t.governing;
    out["utilisation"] = t.utilisation;
    out["checks"] = json::Json::array();
    for (const auto& c : t.checks) {
        json::Json check{{"id", c.id}, {"utilisation", c.utilisation}, {"status", c.passes ? "pass" : "fail"}};
        if (!c.part.empty()) check["part"] = c.part;
        out["checks"].push_back(std::move(check));
    }
    out["exposures"] = json::Json::array();
    for (const auto& e : t.exposures) out["exposures"].push_back(json::of(e));
    return out;
}

json::Json reasons_json(const Substitution& review) {
    auto out = json::Json::array();
    for (const auto& r : review.reasons)
        out.push_back({{"rule", r.rule->id},
                       {"title", r.rule->title},
                       {"weight", word_of(r.weight)},
                       {"words", r.words},
                       {"source", json::of(r.rule->source)}});
    return out;
}

json::Json problem_json(const OfferProblem& p) {
    json::Json out{{"code", p.code}, {"row", p.row}, {"line", p.line}};
    if (p.column > 0) {
        out["column"] = p.column;
        out["name"] = p.name;
    }
    out["message"] = p.text();
    return out;
}

}  // namespace

std::string reason_text(const Reason& r) {
    return r.words.empty() ? std::string(r.rule->title) : fmt::format("{}: {}", r.rule->title, r.words);
}

std::string substitution_text(const Substitution& review, const Joint& joint, const std::vector<std::string>& warnings) {
    std::string out = wrapped(heading(joint, review), raised(std::string(word_of(review.verdict))) + "  ", "      ");
    // What speaks for an acceptance is that nothing speaks against it.
    const bool noted = review.verdict == Verdict::accept;
    out += wrapped(verdict_line(review), noted ? "noted:   " : "because: ", "         ");
    if (!review.suggestion.empty()) out += wrapped(review.suggestion, "instead: ", "         ");
    if (const auto words = understood_text(review.offer); !words.empty()) out += wrapped(words, "understood: ", "            ");

    out += "\nREASONS, the weightiest first\n";
    for (const auto& r : review.reasons) {
        out += wrapped(reason_text(r), fmt::format("  {} ", fitted(word_of(r.weight), 7)), std::string(10, ' '));
        out += wrapped(fmt::format("{}; {}", r.rule->id, basis_text(r.rule->source)), std::string(10, ' '), std::string(12, ' '));
    }

    out += "\nPROPERTIES            specified             offered               offered is\n";
    for (const auto& p : review.properties) out += property_text(p);

    const auto trials = trials_of(review);
    if (trials.size() > 1) {
        constexpr std::size_t name_width = 18, trial_width = 19;
        out += "\nTHREE WAYS           as specified        offered, nobody     offered, built\n";
        out += "                                         notices             right\n";
        out += "  " + fitted("", name_width) + " ";
        for (const auto* t : trials) out += fitted(state_of(*t), trial_width) + ' ';
        out.erase(out.find_last_not_of(' ') + 1);
        out += '\n';
        for (const auto& line : trial_lines) {
            std::string row = "  " + fitted(line.name, name_width) + ' ';
            for (const auto* t : trials) row += fitted(t->is_built() ? line.words(*t) : "-", trial_width) + ' ';
            row.erase(row.find_last_not_of(' ') + 1);
            out += row + '\n';
        }
        for (const auto* t : trials)
            if (!t->is_built()) out += wrapped(t->refused, fmt::format("  {}: ", t->title), "    ");
        if (!review.specified->exposures.empty()) {
            out += "\nCORROSION: what is used up first; two in three within the brackets\n";
            out += exposure_lines(review);
        }
    }
    out +=
        list_text(review.verdict == Verdict::refuse ? "WOULD CHANGE ON THE SHOP SHEET, were it not refused" : "CHANGES TO THE SHOP SHEET",
                  review.changes);
    out += list_text("LOOK FOR", review.markings);
    out += list_text("ASK THE SUPPLIER FOR", review.papers);
    out += list_text("ASK THE SUPPLIER", review.questions);
    out += list_text("WARNINGS", warnings);
    return out + list_text("CAUTIONS", cautions());
}

std::string substitution_markdown(const Substitution& review, const Joint& joint, const std::vector<std::string>& warnings) {
    const auto m = [](std::string_view text) { return markdown_text(text); };
    std::string out =
        fmt::format("# Substitution: {}\n\n**{}**: {}\n\n", m(heading(joint, review)), word_of(review.verdict), m(verdict_line(review)));
    if (!review.suggestion.empty()) out += fmt::format("Instead: {}\n\n", m(review.suggestion));
    if (const auto words = understood_text(review.offer); !words.empty()) out += fmt::format("Understood: {}\n\n", m(words));
    out += "## Reasons\n\n| weight | reason | rule | source |\n| --- | --- | --- | --- |\n";
    for (const auto& r : review.reasons)
        out += fmt::format("| {} | {} | {} | {} |\n", word_of(r.weight), m(reason_text(r)), r.rule->id, m(basis_text(r.rule->source)));
    out += "\n## Properties\n\n| property | specified | offered | offered is |\n| --- | --- | --- | --- |\n";
    for (const auto& p : review.properties)
        out += fmt::format("| {} | {} | {} | {} |\n", m(p.name), m(p.specified), m(p.offered), word_of(p.standing));
    const auto trials = trials_of(review);
    if (trials.size() > 1) {
        out += "\n## Three ways\n\n| |";
        for (const auto* t : trials) out += fmt::format(" {} |", m(t->title));
        out += "\n| --- |";
        for (std::size_t i = 0; i < trials.size(); ++i) out += " --- |";
        out += "\n| |";
        for (const auto* t : trials) out += fmt::format(" {} |", state_of(*t));
        out += '\n';
        for (const auto& line : trial_lines) {
            out += fmt::format("| {} |", line.name);
            for (const auto* t : trials) out += fmt::format(" {} |", t->is_built() ? m(line.words(*t)) : "-");
            out += '\n';
        }
    }
    const auto list = [&](const char* title, const std::vector<std::string>& lines) {
        if (lines.empty()) return;
        out += fmt::format("\n## {}\n\n", title);
        for (const auto& line : lines) out += fmt::format("- {}\n", m(line));
    };
    list(review.verdict == Verdict::refuse ? "Would change on the shop sheet, were it not refused" : "Changes to the shop sheet",
         review.changes);
    list("Look for", review.markings);
    list("Ask the supplier for", review.papers);
    list("Ask the supplier", review.questions);
    list("Warnings", warnings);
    list("Cautions", cautions());
    return out;
}

std::string substitution_json(const Substitution& review, const Joint& joint, const std::vector<std::string>& warnings) {
    json::Json out;
    out["program"] = "faywright";
    out["version"] = FAYWRIGHT_VERSION;
    out["joint"] = joint.title;
    out["offer"] = review.offer.title;
    out["part"] = word_of(review.offer.part);
    out["verdict"] = word_of(review.verdict);
    out["governing"] = review.governing().rule->id;
    if (!review.suggestion.empty()) out["suggestion"] = review.suggestion;
    out["understood"] = json::Json::array();
    for (const auto& u : review.offer.understood) out["understood"].push_back({{"token", u.token}, {"meaning", u.meaning}});
    out["reasons"] = reasons_json(review);
    out["properties"] = json::Json::array();
    for (const auto& p : review.properties)
        out["properties"].push_back(
            {{"name", p.name}, {"specified", p.specified}, {"offered", p.offered}, {"standing", word_of(p.standing)}});
    out["specified"] = trial_json(*review.specified);
    if (review.unnoticed) out["unnoticed"] = trial_json(*review.unnoticed);
    if (review.right) out["right"] = trial_json(*review.right);
    out["changes"] = review.changes;
    out["markings"] = review.markings;
    out["papers"] = review.papers;
    out["questions"] = review.questions;
    out["warnings"] = warnings;
    out["cautions"] = cautions();
    return json::printed(out);
}

std::string offers_text(const ReviewedList& list) {
    std::string out = wrapped(fmt::format("{} offers for \"{}\": {}", list.rows.size(), list.title, counts(list)), "OFFERS  ", "        ");
    if (std::any_of(list.rows.begin(), list.rows.end(), [](const auto& r) { return r.review.has_value(); })) out += '\n';
    for (const auto& row : list.rows) {
        if (!row.review) continue;
        const auto torque = torque_of(*row.review);
        std::string asides;
        if (!torque.empty()) asides += "; " + torque;
        if (row.row->price) asides += "; price " + shown(*row.row->price, 20);
        out += wrapped(fmt::format("{}: {}{}", name_of(row), verdict_line(*row.review), asides),
                       fmt::format("  {} ", fitted(word_of(row.review->verdict), 19)), std::string(22, ' '));
        if (row.review->verdict == Verdict::accept_with_changes)
            for (const auto& change : row.review->changes) out += wrapped(change, std::string(22, ' ') + "* ", std::string(24, ' '));
        for (const auto& question : row.review->questions) out += wrapped(question, std::string(22, ' ') + "? ", std::string(24, ' '));
    }
    std::string unread;
    for (const auto& row : list.rows) {
        if (row.review) continue;
        unread += wrapped(name_of(row), "  ", "    ");
        for (const auto& problem : row.problems) unread += wrapped(problem.text(), "    ", "      ");
    }
    if (!unread.empty()) out += "\nNOT READABLE, not reviewed\n" + unread;
    std::vector<std::string> header;
    for (const auto& problem : list.header) header.push_back(problem.text());
    out += list_text("COLUMNS PASSED OVER", header);
    out += list_text("WARNINGS", list.warnings);
    return out + list_text("CAUTIONS", cautions());
}

std::string offers_markdown(const ReviewedList& list) {
    const auto m = [](std::string_view text) { return markdown_text(text); };
    std::string out = fmt::format(
        "# Offers for {}\n\n{} offers: {}\n\n| verdict | offer | reason | torque | changes and questions | price |\n"
        "| --- | --- | --- | --- | --- | --- |\n",
        m(list.title), list.rows.size(), counts(list));
    for (const auto& row : list.rows)
        if (row.review)
            out += fmt::format(
                "| {} | {} | {} | {} | {} | {} |\n", word_of(row.review->verdict), m(name_of(row)), m(verdict_line(*row.review)),
                m(torque_of(*row.review)),
                row.review->verdict == Verdict::refuse
                    ? ""
                    : m(fmt::format("{}",
                                    fmt::join(row.review->verdict == Verdict::ask ? row.review->questions : row.review->changes, "; "))),
                m(shown(row.row->price.value_or(""), 40)));
    bool first = true;
    for (const auto& row : list.rows) {
        if (row.review) continue;
        if (first) out += "\n## Not readable\n\n";
        first = false;
        for (const auto& problem : row.problems) out += fmt::format("- {}: {}\n", m(name_of(row)), m(problem.text()));
    }
    if (!list.header.empty()) out += "\n## Columns passed over\n\n";
    for (const auto& problem : list.header) out += fmt::format("- {}\n", m(problem.text()));
    out += "\n## Cautions\n\n";
    for (const auto& warning : list.warnings) out += fmt::format("- {}\n", m(warning));
    for (const auto& caution : cautions()) out += fmt::format("- {}\n", m(caution));
    return out;
}

std::string offers_csv(const ReviewedList& list) {
    std::string out = "row,item,offer,verdict,rule,reason,torque (N*m),utilisation,first to go (years),price,comment,changes,questions\n";
    for (const auto& row : list.rows) {
        const auto asides = fmt::format("{},{}", csv_cell(row.row->price.value_or("")), csv_cell(row.row->comment.value_or("")));
        const auto begin = fmt::format("{},{},", row.row->row, csv_cell(row.row->item.value_or("")));
        if (!row.review) {
            std::string words;
            for (const auto& problem : row.problems) words += (words.empty() ? "" : "; ") + problem.text();
            out += begin + fmt::format("{},\"not readable\",\"\",{},,,,{},\"\",\"\"\n", csv_cell(name_of(row)), csv_cell(words), asides);
            continue;
        }
        const auto& review = *row.review;
        const bool built = review.right && review.right->is_built();
        out += begin +
               fmt::format("{},{},{},{},{},{},{},{},{},{}\n", csv_cell(review.offer.title), csv_cell(std::string(word_of(review.verdict))),
                           csv_cell(std::string(review.governing().rule->id)), csv_cell(review.governing().words),
                           torque_of(review).empty() ? "" : print_number(in_Nm(review.right->torque), 4),
                           built ? print_number(review.right->utilisation, 4) : "",
                           built && !review.right->exposures.empty() ? print_number(in_years(review.right->shortest_life()), 4) : "",
                           asides, csv_cell(fmt::format("{}", fmt::join(review.changes, "; "))),
                           csv_cell(fmt::format("{}", fmt::join(review.questions, "; "))));
    }
    const auto aside = [&](const char* what, const std::string& words) {
        out += fmt::format(",\"\",\"\",\"{}\",\"\",{},,,,\"\",\"\",\"\",\"\"\n", what, csv_cell(words));
    };
    for (const auto& problem : list.header) aside("column passed over", problem.text());
    for (const auto& warning : list.warnings) aside("warning", warning);
    return out;
}

std::string offers_json(const ReviewedList& list) {
    json::Json out;
    out["program"] = "faywright";
    out["version"] = FAYWRIGHT_VERSION;
    out["joint"] = list.title;
    out["offers"] = json::Json::array();
    for (const auto& row : list.rows) {
        json::Json one;
        one["row"] = row.row->row;
        one["line"] = row.row->line;
        if (row.row->item) one["item"] = *row.row->item;
        if (row.row->price) one["price"] = *row.row->price;
        if (row.row->comment) one["comment"] = *row.row->comment;
        if (!row.review) {
            one["verdict"] = "not readable";
            one["problems"] = json::Json::array();
            for (const auto& problem : row.problems) one["problems"].push_back(problem_json(problem));
            out["offers"].push_back(std::move(one));
            continue;
        }
        const auto& review = *row.review;
        one["offer"] = review.offer.title;
        one["part"] = word_of(review.offer.part);
        one["verdict"] = word_of(review.verdict);
        one["governing"] = review.governing().rule->id;
        one["reasons"] = reasons_json(review);
        if (review.right && review.right->is_built()) {
            one["torque"] = json::of(Value(review.right->torque));
            one["utilisation"] = review.right->utilisation;
            if (!review.right->exposures.empty()) one["first_to_go"] = json::of(Value(review.right->shortest_life()), Value(years(1)));
        }
        one["changes"] = review.changes;
        one["questions"] = review.questions;
        out["offers"].push_back(std::move(one));
    }
    out["header"] = json::Json::array();
    for (const auto& problem : list.header) out["header"].push_back(problem_json(problem));
    out["warnings"] = list.warnings;
    out["cautions"] = cautions();
    return json::printed(out);
}

}  // namespace faywright
