// SPDX-License-Identifier: MIT
#include "report/sheet_words.hpp"
#include "report/sheets.hpp"

#include <fmt/format.h>

namespace faywright {

namespace {

void add_list(std::string title, const std::vector<Statement>& list, Chapter& out) {
    if (list.empty()) return;
    out.blocks.emplace_back(Heading{std::move(title)});
    Listing items;
    for (const auto& each : list) items.items.push_back(sheet_text(each));
    out.blocks.emplace_back(std::move(items));
}

Chapter when_chapter(const CarePlan& plan) {
    Chapter out{"when", "How often", {}};
    if (!plan.exposure_known) out.blocks.emplace_back(Paragraph{"No exposure is known: this is the plan of the strictest.", Tone::caution});
    if (!plan.note.words.empty()) out.blocks.emplace_back(Paragraph{sheet_text(plan.note)});
    Grid grid{"Where the trailer lives", {{"exposure"}, {"class"}, {"wash"}, {"look"}, {"check the torque"}}, {}};
    const auto add = [&](const CareIntervals& c, const std::string& name) {
        grid.rows.push_back(
            {name, c.category ? std::string(word_of(*c.category)) : "-", every(c.wash), every(c.inspection), every(c.torque_check)});
    };
    for (const auto& each : plan.exposures) add(each, each.exposure);
    if (plan.exposures.size() != 1) add(plan.strictest, plan.exposures.empty() ? "not known" : "all of them: the strictest");
    out.blocks.emplace_back(std::move(grid));
    Listing more;
    for (const auto* list : {&plan.strictest.wash_after, &plan.strictest.how, &plan.strictest.besides})
        for (const auto& each : *list) more.items.push_back(sheet_text(each));
    out.blocks.emplace_back(std::move(more));
    Listing first;
    for (const auto& each : retightening_told(plan.first_checks)) first.items.push_back(sheet_text(each));
    if (!first.items.empty()) {
        out.blocks.emplace_back(Heading{"First checks of the torque, by the shop"});
        out.blocks.emplace_back(std::move(first));
    }
    return out;
}

Chapter look_chapter(const CarePlan& plan) {
    Chapter out{"look", "What to look for", {}};
    Grid grid{"And what to do about it", {{"where"}, {"what"}, {"how often"}, {"when found"}}, {}};
    for (const auto& each : plan.look_for)
        grid.rows.push_back({each.place, typographic(each.what), every(each.every), sheet_text({each.when_found, each.source})});
    out.blocks.emplace_back(std::move(grid));
    return out;
}

Chapter lives_chapter(const CarePlan& plan) {
    Chapter out{"lives", "What is used up first", {}};
    Listing list;
    for (const auto& part : plan.parts)
        if (part.first || !part.outlives)
            list.items.push_back(sheet_text({fmt::format("{}: {}", part.exposure, part.words.words), part.words.source}));
    if (list.items.empty()) list.items.emplace_back("Not worked out: the exposure is not known.");
    out.blocks.emplace_back(std::move(list));
    return out;
}

Chapter rules_chapter(const CarePlan& plan) {
    Chapter out{"rules", "What you may do, and what not", {}};
    add_list("You may", plan.may, out);
    add_list("Leave to the shop", plan.may_not, out);
    add_list("Do not tow", plan.off_the_road, out);
    add_list("After a kerb, an overload or a jack-knife", plan.after_shock, out);
    return out;
}

}  // namespace

Page care_sheet(const Assessment& a, const Tables& tables, const Identification& identification) {
    const auto plan = care_plan(a, tables);
    Page page{PageKind::care_sheet, "Care sheet for the owner", a.state.joint->title, {}, identification};
    if (!plan.not_to_be_built.empty()) {
        // A trailer with such a joint is not cared for: it is not drawn.
        page.chapters = {
            stop_chapter(plan.not_to_be_built),
            {"caution",
             "",
             {Paragraph{"Do not tow. Have it brought back to the workshop.", Tone::caution}, Paragraph{sheet_caution, Tone::caution}}}};
        return page;
    }
    page.chapters.insert(page.chapters.end(), {when_chapter(plan), look_chapter(plan), lives_chapter(plan), rules_chapter(plan)});
    page.chapters.push_back({"caution", "", {Paragraph{sheet_caution, Tone::caution}}});
    page.chapters.push_back({"sign", "", {Blanks{"Done", {"Date", "Distance", "Washed", "Found", "Done about it", "By"}, 4}}});
    page.dense = characters_of(page) > 4500;
    return page;
}

}  // namespace faywright
