// SPDX-License-Identifier: MIT
#include "assess/care.hpp"

#include "quantity/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace faywright {

namespace {

void add_once(std::vector<Statement>& list, const std::string& words, const RowSource& source) {
    const bool there = std::any_of(list.begin(), list.end(), [&](const auto& s) { return s.words == words; });
    if (!words.empty() && !there) list.push_back({words, source});
}

/// Takes what another asks for on top: the shorter interval, and every word.
void tighten(CareIntervals& care, const Row<Care>& row) {
    care.wash = min(care.wash, row.wash);
    care.inspection = min(care.inspection, row.inspection);
    care.torque_check = min(care.torque_check, row.torque_check);
    add_once(care.wash_after, row.wash_after.value_or(""), row.source_for("wash-after"));
    add_once(care.how, row.how, row.source_for("how"));
    add_once(care.besides, row.besides.value_or(""), row.source_for("besides"));
}

CareIntervals from(const Row<Care>& row, std::string exposure, std::optional<Corrosivity> category) {
    CareIntervals out;
    out.exposure = std::move(exposure);
    out.category = category;
    out.wash = row.wash;
    out.inspection = row.inspection;
    out.torque_check = row.torque_check;
    out.source = row.source;
    tighten(out, row);
    return out;
}

const Row<Care>& row_of(const Tables& tables, Corrosivity category) {
    const auto& rows = tables.of<Care>().rows;
    return *std::find_if(rows.begin(), rows.end(), [&](const auto& row) { return row.category == category; });
}

CareIntervals care_in(const Row<Exposure>& exposure, const Tables& tables) {
    const auto category = atmosphere_at(exposure).joint;
    auto out = from(row_of(tables, category), exposure.name, category);
    for (const auto& row : tables.of<Care>().rows)
        if (row.use && row.counts_for(exposure, category)) tighten(out, row);
    return out;
}

/// The shortest of every interval, and every word.
CareIntervals strictest_of(const std::vector<CareIntervals>& all) {
    auto out = all.front();
    for (std::size_t i = 1; i < all.size(); ++i) {
        const auto& each = all[i];
        out.exposure += ", " + each.exposure;
        if (*each.category > *out.category) {
            out.category = each.category;
            out.source = each.source;
        }
        out.wash = min(out.wash, each.wash);
        out.inspection = min(out.inspection, each.inspection);
        out.torque_check = min(out.torque_check, each.torque_check);
        for (const auto& [words, source] : each.wash_after) add_once(out.wash_after, words, source);
        for (const auto& [words, source] : each.how) add_once(out.how, words, source);
        for (const auto& [words, source] : each.besides) add_once(out.besides, words, source);
    }
    return out;
}

const char* when_found(IsolationPlace place) {
    switch (place) {
        case IsolationPlace::faying: return "Wash, dry, seal the edge again. Where it comes again, the shop opens the joint.";
        case IsolationPlace::fixing: return "The shop fits new sleeves, washers and bolts, and measures.";
        case IsolationPlace::tube: return "Clear the drain, flush with fresh water, dry, wax. Where rust flakes off, to the shop.";
        case IsolationPlace::edge: return "Cut the bad piece out, clean, dry, seal again; leave the low point open.";
    }
    return "";
}

/// Rust as the owner meets it on these bolts.
void look_at_bolts(const Bolt& bolt, const std::string& place, Duration interval, std::vector<LookFor>& out) {
    if (!bolt.property_class.is_carbon())
        out.push_back({place,
                       "Brown stains on the bolts; white powder on the aluminium round them.",
                       interval,
                       "Stains: rinse. Powder: wash, dry, seal; where it comes again, to the shop.",
                       {}});
    else if (bolt.zinc() > mm(0))
        out.push_back({place,
                       "White rust, then red rust, on heads, nuts and threads.",
                       interval,
                       "White: wash and dry. A red spot: clean it, zinc-rich paint. Red all round or on threads: the shop fits new bolts.",
                       {}});
    else
        out.push_back({place,
                       "Red rust on heads, nuts and threads.",
                       interval,
                       "A spot: clean it, paint. Red all round or on threads: the shop fits new bolts.",
                       {}});
}

std::vector<LookFor> look_for(const Joint& joint, const Tables& tables, Duration interval, bool resistance) {
    std::vector<LookFor> out;
    const auto add = [&](std::string place, std::string what, std::string then) {
        out.push_back({std::move(place), std::move(what), interval, std::move(then), {}});
    };
    add("bolts", "A mark whose line is broken; a loose or missing nut.", "Off the road; carried to the shop.");
    look_at_bolts(joint.bolt, "bolts", interval, out);
    for (const auto* e : isolation_of(joint, tables)) {
        std::string then = when_found(e->place);
        if (e->insulates)
            then += resistance ? " Resistance is the shop's: 10 kohm at least in the damp, below 1 kohm it has failed."
                               : " Other metal bridges it: no resistance can be measured here.";
        out.push_back({place_and_name(*e), e->inspect, min(e->inspection, interval), std::move(then), e->source_for("inspect")});
    }
    add(joint.section ? joint.section->name : "plates",
        fmt::format("Cracks from holes and welds at the bolts{}.", joint.section ? "; walls dented or bulged" : ""),
        "Off the road; carried to the shop.");
    if (joint.section) add(joint.section->name, "Drain holes that are closed.", "Clear them; let water and mud out; rinse.");
    if (joint.section && joint.section->tube.arrangement != TubeArrangement::none)
        add(joint.section->name, "A tube that rattles when the rail is struck.", "Off the road; carried to the shop.");
    return out;
}

/// What wears out: seals, layers and wax, with their lives by the table.
std::vector<Statement> renewals(const Joint& joint, const Tables& tables) {
    const bool counted = joint.surroundings.maintained;
    const auto* upkeep = counted ? "the outlook counts on that" : "the outlook does not count on that";
    std::vector<Statement> out;
    for (const auto* e : isolation_of(joint, tables))
        if (e->electrolyte_new < 1.0 || e->insulates)
            out.push_back({fmt::format("{}: lives {} to {} years by the sea; the shop renews it after {} at the latest; {}.", e->name,
                                       print_number(in_years(e->life_low), 2), print_number(in_years(e->life_high), 2),
                                       print_number(in_years(e->life()), 2), upkeep),
                           e->source_for("life-low")});
    if (joint.surroundings.cavity_waxed)
        out.push_back({fmt::format("Wax in the hollow: renewed after 5 years at the latest; {}.", upkeep)});
    return out;
}

constexpr double longest_told = 100.0;  ///< years: beyond, a figure says nothing

std::string in_years_words(Duration life) {
    return in_years(life) > longest_told ? "more than 100" : in_years(life) < 0.1 ? "0" : print_number(in_years(life), 2);
}

/// "about 29 years (17 to 46)".
std::string band_words(const MemberOutlook& m) {
    auto middle = fmt::format("{}{} years", in_years(m.life) > longest_told ? "" : "about ", in_years_words(m.life));
    if (in_years(m.life_low) > longest_told) return middle;
    return fmt::format("{} ({} to {})", middle, in_years_words(m.life_low), in_years_words(m.life_high));
}

Statement words_of(const MemberOutlook& m, const std::string& exposure, Duration promise) {
    const RowSource source{"corrosion outlook of this joint", "", exposure, Basis::practice};
    if (m.lasts) return {fmt::format("{}: no end in sight; {}.", m.name, m.stake), source};
    if (m.life_high <= years(0)) return {fmt::format("{}: {}, from the beginning.", m.name, m.stake), source};
    return {fmt::format("{}: {}{} after {}{}.", m.name, m.stake, m.pits ? "" : ", used up", band_words(m),
                        m.passes ? "" : fmt::format(", less than the {} promised", print_number(in_years(promise), 3))),
            source};
}

std::vector<PartOutlook> parts_of(const Assessment& a) {
    std::vector<PartOutlook> out;
    for (const auto& exposure : a.corrosion.exposures) {
        std::vector<const MemberOutlook*> members;
        for (const auto& m : exposure.members) members.push_back(&m);
        std::stable_sort(members.begin(), members.end(), [](const auto* x, const auto* y) { return x->life < y->life; });
        for (const auto* m : members)
            out.push_back({exposure.exposure->name, m->name, m->stake, m->life_low, m->life, m->life_high, m->lasts,
                           m == &exposure.first_to_go(), m->passes, words_of(*m, exposure.exposure->name, a.state.joint->life)});
    }
    return out;
}

/// Whether an owner can check these bolts with a wrench: the torque says something, and turning them does no harm.
bool is_checked_by_torque(const Joint& joint) {
    return joint.tightening.method.uses_torque && std::none_of(joint.layers.begin(), joint.layers.end(),
                                                               [](const auto& layer) { return layer.material.form == LayerForm::setting; });
}

std::vector<Statement> may_words(const Joint& joint, const AssemblyPlan& shop) {
    std::vector<Statement> out;
    out.push_back({"Wash and rinse, at low pressure."});
    out.push_back({"Look for what is listed here, and write it down with the date."});
    if (is_checked_by_torque(joint))
        out.push_back({"Check the torque. " + shop.retightening.back().how});
    else
        out.push_back({"Look at the marks on the bolts; leave their tightness to the shop."});
    out.push_back({"Touch up zinc with zinc-rich paint, paint with paint, and a torn seal with the same sealant."});
    if (joint.section) out.push_back({"Clear drain holes."});
    return out;
}

std::vector<Statement> may_not_words(const Joint& joint) {
    std::vector<Statement> out;
    out.push_back({"Weld, cut or heat anything at this joint."});
    out.push_back({"Drill a hole at this joint, or widen one."});
    out.push_back({"Exchange a bolt, nut or washer for another, or put one back that has been out."});
    out.push_back({"Back a nut off to check it, oil a thread, use an impact wrench."});
    if (joint.section) out.push_back({"Close a drain hole."});
    out.push_back({"Point a high-pressure jet at seals and edges."});
    return out;
}

std::vector<Statement> off_the_road_words(const Assessment& a) {
    const auto& joint = *a.state.joint;
    std::vector<Statement> out;
    out.push_back({"A bolt or nut is missing, broken or loose."});
    if (is_checked_by_torque(joint)) out.push_back({"A nut turns by more than 30 deg at a check, or turns a second time."});
    out.push_back({fmt::format("A crack in {}, plate or weld at the joint.", joint.section ? joint.section->name : "a part")});
    out.push_back({"The parts have shifted on each other, gape, or a hole is drawn long."});
    if (joint.section) out.push_back({"A wall is dented or bulged at a bolt, or a tube rattles."});
    std::optional<Length> pits;
    for (const auto& exposure : a.corrosion.exposures)
        for (const auto& m : exposure.members)
            if (m.pits && m.is_wall) pits = pits ? min(*pits, m.thickness) : m.thickness;
    if (pits)
        out.push_back(
            {fmt::format("Pits in the aluminium at the joint are deeper than {}: the shop measures them.", print(Value(*pits), 2))});
    return out;
}

}  // namespace

std::string every(Duration interval) {
    const double days = static_cast<double>(interval / hours(24));
    const auto whole = [&](double unit) -> long {
        const double n = days / unit;
        const auto k = std::lround(n);
        return k >= 1 && std::abs(n - static_cast<double>(k)) <= 0.01 * n ? k : 0;
    };
    const auto in_words = [](long n, const char* unit) {
        return n == 1 ? fmt::format("every {}", unit) : fmt::format("every {} {}s", n, unit);
    };
    if (const auto n = whole(365.25); n >= 1) return in_words(n, "year");
    if (const auto n = whole(365.25 / 12.0); n >= 2) return in_words(n, "month");
    if (const auto n = whole(7.0); n >= 1) return in_words(n, "week");
    return in_words(std::max(1L, std::lround(days)), "day");
}

CarePlan care_plan(const Assessment& a, const Tables& tables) {
    const auto& joint = *a.state.joint;
    const auto shop = assembly_plan(a, tables);
    CarePlan plan;
    plan.not_to_be_built = shop.not_to_be_built;
    for (const auto& exposure : joint.surroundings.exposures) plan.exposures.push_back(care_in(exposure, tables));
    plan.exposure_known = !plan.exposures.empty();
    if (plan.exposure_known) {
        plan.strictest = strictest_of(plan.exposures);
        plan.note = {fmt::format("For: {}. Intervals are practice, no standard's.", plan.strictest.exposure)};
    } else {
        constexpr auto worst = Words<Corrosivity>::all.back().first;
        plan.strictest = from(row_of(tables, worst), "not known", worst);
        plan.note = {
            fmt::format("Where this trailer lives is not known: the intervals are those of the worst category, {}, and no life is "
                        "told. After salted roads, launching in the sea or mud rinse it besides.",
                        word_of(worst))};
    }
    std::copy_if(shop.retightening.begin(), shop.retightening.end(), std::back_inserter(plan.first_checks),
                 [](const auto& each) { return !each.in_assembly; });
    plan.wrench = is_checked_by_torque(joint);
    plan.look_for = look_for(joint, tables, plan.strictest.inspection, shop.resistance_test);
    plan.renew = renewals(joint, tables);
    plan.parts = parts_of(a);
    plan.may = may_words(joint, shop);
    plan.may_not = may_not_words(joint);
    plan.off_the_road = off_the_road_words(a);
    plan.after_shock = {
        {"After a kerb, an overload, a jack-knife or a crash: stop and look. With any sign listed here the trailer is carried, not drawn."},
        {"Without a sign: slowly, unladen, to the shop, before it is used again."},
        {"The shop checks marks, torque, tubes, holes and welds, and fits new bolts and nuts to the whole group."}};
    return plan;
}

}  // namespace faywright
