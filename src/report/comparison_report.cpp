// SPDX-License-Identifier: MIT
#include "report/comparison_report.hpp"

#include "quantity/characters.hpp"
#include "quantity/text.hpp"
#include "report/assessment_words.hpp"
#include "report/corrosion.hpp"
#include "report/steps_text.hpp"
#include "report/substitution.hpp"
#include "report/typography.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <tuple>

namespace faywright {

namespace {

constexpr const char* none = "-";

std::string passes_text(const Assessment& a) { return a.passes ? "passes" : "FAILS"; }

std::string use_text(const CheckResult* result) {
    return result == nullptr ? std::string(none) : fmt::format("{} {}", ratio_text(result->outcome.utilisation), mark_of(result->status));
}

Chapter verdict_chapter(const ComparisonMatter& m) {
    Chapter out{"verdict", "Verdict", {}};
    const auto& [before, after] = std::tie(m.before.assessment, m.after.assessment);
    out.blocks.emplace_back(Banner{passes_text(after), fmt::format("{}; {} {}", m.after.name, m.before.name, passes_text(before)),
                                   after.passes ? Tone::pass : Tone::fail});
    Listing told;
    const auto checks = compared_checks(before, after);
    const auto names = [&](const char* what, auto&& which) {
        std::string list;
        for (const auto& check : checks)
            if (which(check)) list += (list.empty() ? "" : ", ") + with_part(check.info->id, check.part);
        if (!list.empty()) told.items.push_back(fmt::format("{}: {}", what, list));
    };
    names("fails now and did not before", [](const ComparedCheck& c) { return c.is_new_failure(); });
    names("no longer fails", [](const ComparedCheck& c) { return c.is_mended(); });
    const auto governs = [](const ComparedSide& side) {
        const auto& result = side.assessment.results[side.assessment.governing];
        return fmt::format("{} governs at {} {}", check_name(*side.assessment.state.joint, result), ratio_text(result.outcome.utilisation),
                           side.name);
    };
    told.items.push_back(fmt::format("{}; {}", governs(m.before), governs(m.after)));
    out.blocks.emplace_back(std::move(told));
    return out;
}

Chapter review_chapter(const Substitution& review) {
    Chapter out{"review", "Review of the offer", {}};
    out.blocks.emplace_back(
        Banner{raised(std::string(word_of(review.verdict))), review.offer.title, review.is_accepted() ? Tone::pass : Tone::fail});
    Grid reasons{"Why, the weightiest first", {{"reason"}, {"weight"}, {"source"}}, {}};
    for (const auto& reason : review.reasons)
        reasons.rows.push_back({typographic(reason_text(reason)), std::string(word_of(reason.weight)), source_text(reason.rule->source)});
    out.blocks.emplace_back(std::move(reasons));
    Grid properties{"Property by property", {{"property"}, {"specified"}, {"offered"}, {"standing"}}, {}};
    for (const auto& p : review.properties)
        properties.rows.push_back({p.name, typographic(p.specified), typographic(p.offered), std::string(word_of(p.standing))});
    out.blocks.emplace_back(std::move(properties));
    for (const auto& [title, list] :
         {std::pair{review.is_accepted() ? "Changes to the shop sheet" : "What would have to change on the shop sheet", &review.changes},
          std::pair{"Marks to look for", &review.markings}, std::pair{"Papers to ask for", &review.papers},
          std::pair{"Questions to the supplier", &review.questions}}) {
        if (list->empty()) continue;
        out.blocks.emplace_back(Heading{title});
        Listing items;
        for (const auto& item : *list) items.items.push_back(typographic(item));
        out.blocks.emplace_back(std::move(items));
    }
    if (!review.suggestion.empty()) out.blocks.emplace_back(Paragraph{typographic(review.suggestion)});
    return out;
}

Chapter fields_chapter(const ComparisonMatter& m) {
    Chapter out{"changes", "What changed", {}};
    if (m.fields.empty()) {
        out.blocks.emplace_back(
            Paragraph{"The two files say the same. What differs comes from other files that they name, or from the tables."});
        return out;
    }
    Grid grid{"Fields of the joint files", {{"field"}, {"meaning"}, {m.before.name}, {m.after.name}}, {}};
    for (const auto& field : m.fields)
        grid.rows.push_back({field.field, field.meaning, field.before.value_or("not given"), field.after.value_or("not given")});
    out.blocks.emplace_back(std::move(grid));
    return out;
}

std::string change_text(double change) {
    if (std::abs(change) < 0.005) return "none";
    return std::abs(change) >= 1000 ? (change > 0 ? "> +999" : "< -999") : fmt::format("{:+.2f}", change);
}

Chapter checks_chapter(const ComparisonMatter& m) {
    Chapter out{"checks", "What it did to each check", {}};
    Grid grid{"Utilisations, the most used first",
              {{"check"}, {m.before.name, Align::right}, {m.after.name, Align::right}, {"change", Align::right}, {"what became of it"}},
              {}};
    for (const auto& check : compared_checks(m.before.assessment, m.after.assessment)) {
        std::string change = none;
        if (check.before != nullptr && check.after != nullptr)
            change = change_text(check.after->outcome.utilisation - check.before->outcome.utilisation);
        const Cell outcome = check.is_new_failure()                ? Cell("fails now", Tone::fail)
                             : check.is_mended()                   ? Cell("no longer fails")
                             : check.before == nullptr             ? Cell("applies now")
                             : check.after == nullptr              ? Cell("no longer applies")
                             : check.after->status == Status::fail ? Cell("fails still", Tone::fail)
                                                                   : Cell("passes still");
        grid.rows.push_back({with_part(check.info->title, check.part), use_text(check.before), use_text(check.after), change, outcome});
    }
    out.blocks.emplace_back(std::move(grid));
    return out;
}

/// Facts of either side by their labels; what is the same on both sides once.
Grid facts_grid(const char* caption, std::vector<Fact> before, std::vector<Fact> after, const ComparisonMatter& m) {
    Grid grid{caption, {{"what"}, {m.before.name}, {m.after.name}, {"changed"}}, {}};
    const auto value_of = [](const std::vector<Fact>& facts, const std::string& label) {
        const auto found = std::find_if(facts.begin(), facts.end(), [&](const Fact& f) { return f.label == label; });
        return found == facts.end() ? std::string(none) : typographic(found->value);
    };
    // Given by the file or chosen by the program, it is the same thing.
    const auto same_label = [](std::string label) {
        if (label == "given" || label == "chosen from stock") return std::string("stocked tube");
        return label.starts_with("torque (") ? std::string("torque") : label;
    };
    for (auto* list : {&before, &after})
        for (auto& fact : *list) fact.label = same_label(fact.label);
    auto all = before;
    for (const auto& fact : after)
        if (value_of(before, fact.label) == none) all.push_back(fact);
    for (const auto& [label, value] : all) {
        if (label.empty()) continue;
        const auto then = value_of(before, label), now = value_of(after, label);
        grid.rows.push_back({label, then, now, then == now ? "" : "changed"});
    }
    return grid;
}

Chapter clamp_chapter(const ComparisonMatter& m) {
    Chapter out{"clamp", "Bolts, clamp force and tube", {}};
    Grid grid{"Clamp force of one bolt, least to greatest", {{"stage"}, {m.before.name, Align::right}, {m.after.name, Align::right}}, {}};
    const auto band = [](const ClampStage& stage) {
        return fmt::format("{} to {}", told(Value(stage.least), 3), told(Value(stage.greatest), 3));
    };
    for (std::size_t i = 0; i < clamp_stages; ++i)
        grid.rows.push_back(
            {std::string(m.before.assessment.clamp[i].title), band(m.before.assessment.clamp[i]), band(m.after.assessment.clamp[i])});
    out.blocks.emplace_back(std::move(grid));
    out.blocks.emplace_back(facts_grid("Bolts", bolt_facts(m.before.assessment), bolt_facts(m.after.assessment), m));
    out.blocks.emplace_back(facts_grid("Tube", tube_facts(m.before.assessment), tube_facts(m.after.assessment), m));
    return out;
}

Chapter lives_chapter(const ComparisonMatter& m) {
    Chapter out{"lives", "What is used up", {}};
    const auto lives = compared_lives(m.before.assessment, m.after.assessment);
    if (lives.empty()) {
        out.blocks.emplace_back(Paragraph{"The two joints share no exposure: there is nothing to compare.", Tone::caution});
        return out;
    }
    Grid grid{"Lives in years, two in three within the brackets", {{"part"}, {"exposure"}, {m.before.name}, {m.after.name}}, {}};
    const auto life = [](const MemberOutlook* member) {
        if (member == nullptr) return std::string(none);
        return life_words(*member) + (member->lasts ? "" : member->passes ? " pass" : " FAIL");
    };
    for (const auto& each : lives) grid.rows.push_back({each.part, each.exposure, life(each.before), life(each.after)});
    out.blocks.emplace_back(std::move(grid));
    return out;
}

}  // namespace

Page comparison_report(const ComparisonMatter& m) {
    Page page{PageKind::report,
              fmt::format("Comparison of {} with {}", m.after.name, m.before.name),
              m.after.assessment.state.joint->title,
              {},
              m.identification};
    if (m.review != nullptr) page.chapters.push_back(review_chapter(*m.review));
    page.chapters.push_back(verdict_chapter(m));
    if (m.review == nullptr) page.chapters.push_back(fields_chapter(m));
    for (auto* chapter : {&checks_chapter, &clamp_chapter, &lives_chapter}) page.chapters.push_back((*chapter)(m));
    page.chapters.push_back({"cautions", "Cautions", {Listing{cautions(), false}}});
    return page;
}

Page refused_offer_report(const Substitution& review, const std::string& title, const Identification& identification) {
    return {PageKind::report,
            "Comparison",
            title,
            {review_chapter(review), {"cautions", "Cautions", {Listing{cautions(), false}}}},
            identification};
}

}  // namespace faywright
