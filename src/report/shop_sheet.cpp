// SPDX-License-Identifier: MIT
#include "assess/ordered.hpp"
#include "quantity/text.hpp"
#include "report/joint_pictures.hpp"
#include "report/sheet_words.hpp"
#include "report/sheets.hpp"
#include "report/typography.hpp"

#include <fmt/format.h>

namespace faywright {

namespace {

/// From the middle of the outermost bolts to the edge, the nearest of either side; nothing where the part runs on.
std::string edge_text(const Joint& joint, const Ply& ply) {
    std::string out;
    const auto add = [&](const char* side, Length distance) {
        if (distance < far_away / 2.0) out += fmt::format("{}{} {}", out.empty() ? "" : ", ", side, dimension_text(distance));
    };
    const auto xs = joint.places_along(&Position::x), ys = joint.places_along(&Position::y);
    add("left", xs.front() - ply.outline.x_min);
    add("right", ply.outline.x_max - xs.back());
    add("bottom", ys.front() - ply.outline.y_min);
    add("top", ply.outline.y_max - ys.back());
    return out.empty() ? "runs on" : out;
}

Grid holes_grid(const Joint& joint) {
    Grid grid{
        joint.positions.size() == 1 ? std::string("One hole in each, mm") : fmt::format("{} holes in each, mm", joint.positions.size()),
        {{"in"}, {"finished hole", Align::right}, {"outermost hole to the edge, as in the picture"}},
        {}};
    for (const auto& ply : joint.plies) grid.rows.push_back({ply.name, dimension_text(ply.hole_diameter), edge_text(joint, ply)});
    return grid;
}

Chapter picture_chapter(const Assessment& a) {
    return {"picture",
            "",
            {Picture{section_picture(a, SectionDetail::parts), "section"}, Picture{numbers_picture(*a.state.joint), "order"},
             holes_grid(*a.state.joint)}};
}

Chapter torque_chapter(const AssemblyPlan& plan) {
    const auto& t = plan.tightening;
    Chapter out{"torque", "Tightening", {}};
    if (!t.passes.empty()) {
        std::string before;
        for (const auto& pass : t.passes)
            if (!pass.last) before += fmt::format("{}{}", before.empty() ? "first " : ", then ", told(Value(pass.torque), 3));
        out.blocks.emplace_back(Banner{told(Value(t.passes.back().torque), 3), fmt::format("{}; turn the {}", before, t.turned)});
    } else {
        out.blocks.emplace_back(Banner{"NO SETTING YET",
                                       "it comes from a test on this joint; do not tighten before it is written here: ____ N·m + ____°",
                                       Tone::caution});
    }
    std::string order;
    for (const auto bolt : plan.tightening_order) order += fmt::format("{}{}", order.empty() ? "" : ", ", bolt + 1);
    Listing words;
    if (plan.tightening_order.size() > 1) words.items.push_back(fmt::format("Tighten in this order of bolts: {}.", order));
    for (const auto& each : t.words) words.items.push_back(sheet_text(each));
    out.blocks.emplace_back(std::move(words));
    return out;
}

Chapter parts_chapter(const Assessment& a, const Tables& tables) {
    Chapter out{"parts", "Parts, numbered as in the picture", {}};
    Grid grid{"", {{"no.", Align::right}, {"pieces", Align::right}, {"part"}}, {}};
    int item = 0;
    for (const auto& [piece, ordered] : ordered_pieces(a, tables)) {
        // Class and hardness stand in a designation already.
        const bool designated = piece.what == "bolt" || piece.what == "nut" || piece.what == "washer";
        auto words = fmt::format("{} {}{}", piece.what, typographic(ordered.designation),
                                 piece.what == "washer" ? ", " + ordered.note : std::string());
        for (const auto& more : {designated ? std::string() : ordered.material, ordered.finish})
            if (!more.empty()) words += "; " + more;
        grid.rows.push_back({fmt::format("{}", ++item), fmt::format("{}", piece.count), words});
    }
    out.blocks.emplace_back(std::move(grid));
    return out;
}

Chapter steps_chapter(const AssemblyPlan& plan) {
    Chapter out{"steps", "In this order", {}};
    Listing list{{}, true};
    for (const auto& step : plan.steps) list.items.push_back(sheet_text({step.words, step.source}));
    out.blocks.emplace_back(std::move(list));
    return out;
}

Chapter inspection_chapter(const AssemblyPlan& plan) {
    Chapter out{"inspection", "Inspection, before it is signed", {}};
    // What comes into the shop is looked at by whoever takes it in: here it is told what is right.
    Listing list;
    for (const auto& each : plan.inspection)
        list.items.push_back(
            sheet_text({each.time == InspectionTime::incoming ? fmt::format("{}: {}", each.what, each.accept)
                                                              : fmt::format("{}: {} Accept: {}", each.what, each.how, each.accept),
                        each.source}));
    out.blocks.emplace_back(std::move(list));
    if (!plan.no_resistance_test.empty()) out.blocks.emplace_back(Paragraph{plan.no_resistance_test});
    return out;
}

Chapter after_chapter(const AssemblyPlan& plan) {
    Chapter out{"after", "Tighten again", {}};
    Listing list;
    for (const auto& each : retightening_told(plan.retightening)) list.items.push_back(sheet_text(each));
    if (!plan.retightening_counted.words.empty()) list.items.push_back(sheet_text(plan.retightening_counted));
    out.blocks.emplace_back(std::move(list));
    return out;
}

/// What stands in the list of parts already is told by its name alone.
Chapter fixed_chapter(const AssemblyPlan& plan) {
    Chapter out{"fixed", "Not exchanged without a review", {}};
    std::string listed, further;
    for (const auto& each : plan.no_substitution) {
        const bool in_list = each.part == "bolt" || each.part == "nut" || each.part == "tube" || each.part.starts_with("washer");
        if (in_list)
            listed += fmt::format("{}{}", listed.empty() ? "" : ", ", each.part);
        else
            further += fmt::format("; {}: {}", each.part, typographic(each.designation));
    }
    out.blocks.emplace_back(Paragraph{fmt::format("{}{}. {}", listed, further, sheet_text(plan.substitution))});
    Listing rejects;
    for (const auto& each : plan.rejects) rejects.items.push_back(sheet_text(each));
    out.blocks.emplace_back(std::move(rejects));
    return out;
}

}  // namespace

Page shop_sheet(const Assessment& a, const Tables& tables, const Identification& identification) {
    const auto plan = assembly_plan(a, tables);
    Page page{PageKind::shop_sheet, "Shop sheet", a.state.joint->title, {}, identification};
    if (!plan.not_to_be_built.empty()) page.chapters.push_back(stop_chapter(plan.not_to_be_built));
    page.chapters.insert(page.chapters.end(), {torque_chapter(plan), picture_chapter(a), parts_chapter(a, tables), steps_chapter(plan),
                                               inspection_chapter(plan), after_chapter(plan), fixed_chapter(plan)});
    page.chapters.push_back({"caution", "", {Paragraph{sheet_caution, Tone::caution}}});
    page.chapters.push_back(
        {"sign",
         "",
         {Blanks{"", {"Serial number", "Wrench and its date", "First pass", "Last pass", "Tightened again", "Checked by", "Date"}}}});
    page.dense = characters_of(page) > 4100;
    return page;
}

}  // namespace faywright
