// SPDX-License-Identifier: MIT
#include "report/assessment_words.hpp"

#include "quantity/text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace faywright {

std::string mark_of(Status status) { return status == Status::pass ? "pass" : status == Status::fail ? "FAIL" : "-"; }

std::string ratio_text(double value) { return value >= 1000 ? ">999" : fmt::format("{:.2f}", value); }

std::string with_part(std::string_view words, const std::string& part) {
    return part.empty() ? std::string(words) : fmt::format("{} ({})", words, part);
}

std::string check_name(const Joint& joint, const CheckResult& result) { return with_part(result.info->id, part_name(joint, result)); }

std::string case_name(const Joint& joint, const CheckResult& result) {
    std::string out;
    if (result.where.load_case >= 0) out = joint.load_cases[static_cast<std::size_t>(result.where.load_case)].name;
    if (result.where.bolt >= 0) out += fmt::format("{}bolt {}", out.empty() ? "" : ", ", result.where.bolt + 1);
    return out;
}

bool goes_by_bearing(const Assessment& a) {
    return std::any_of(a.checks().begin(), a.checks().end(),
                       [](const CheckResult& r) { return r.info->id == "slip" && !r.outcome.applicable; });
}

std::vector<const CheckResult*> by_utilisation(const Assessment& a) {
    std::vector<const CheckResult*> list;
    for (const auto& result : a.checks()) list.push_back(&result);
    std::stable_sort(list.begin(), list.end(), [](const CheckResult* x, const CheckResult* y) {
        if (x->outcome.applicable != y->outcome.applicable) return x->outcome.applicable;
        return x->outcome.utilisation > y->outcome.utilisation;
    });
    return list;
}

std::vector<DefaultTaken> grouped(const std::vector<DefaultTaken>& defaults) {
    struct Told {
        std::string head, tail;
        std::vector<std::string> indices;
        DefaultTaken first;
    };
    std::vector<Told> told;
    for (const auto& taken : defaults) {
        const auto open = taken.path.find('['), close = taken.path.find(']');
        Told entry{taken.path.substr(0, open), open == std::string::npos ? "" : taken.path.substr(close + 1), {}, taken};
        if (open != std::string::npos) entry.indices.push_back(taken.path.substr(open + 1, close - open - 1));
        const auto same = std::find_if(told.begin(), told.end(), [&](const Told& t) {
            return t.head == entry.head && t.tail == entry.tail && t.first.meaning == taken.meaning && t.first.value == taken.value &&
                   !t.indices.empty();
        });
        if (same != told.end() && !entry.indices.empty())
            same->indices.push_back(entry.indices.front());
        else
            told.push_back(std::move(entry));
    }
    std::vector<DefaultTaken> out;
    out.reserve(told.size());
    for (auto& entry : told)
        out.push_back({entry.head + (entry.indices.empty() ? "" : fmt::format("[{}]", fmt::join(entry.indices, ","))) + entry.tail,
                       entry.first.meaning, entry.first.value});
    return out;
}

std::vector<std::pair<std::string, std::string>> standing_assumptions(const Assessment& a) {
    std::vector<std::pair<std::string, std::string>> out;
    const auto& joint = *a.state.joint;
    if (a.state.torque_chosen) out.emplace_back("tightening.torque", "from the proof utilisation at the low end of friction");
    if (!joint.overrides.introduction_factor)
        out.emplace_back("overrides.introduction-factor", "1 for the bolt and 0 for the clamp: the unfavourable end for each");
    out.emplace_back("fatigue", "partial factor 1 on the ranges endured");
    out.emplace_back(fmt::format("life {}", print(Value(joint.life))), "recorded; losses are staged, not timed");
    return out;
}

std::vector<Fact> verdict_facts(const Assessment& a) {
    const auto& joint = *a.state.joint;
    const auto& governing = a.results[a.governing];
    std::vector<Fact> out;
    const auto failed = std::count_if(a.checks().begin(), a.checks().end(), [](const CheckResult& r) { return r.status == Status::fail; });
    if (failed > 0) out.push_back({"", fmt::format("{} of the checks fail", failed)});
    if (!a.state.tube.fits) out.push_back({"", "no stocked tube of the chosen material carries the clamp"});
    for (const auto& e : a.corrosion.exposures)
        if (!e.passes)
            out.push_back(
                {"corrosion", fmt::format("{}: {} lasts {} of the promised {} in \"{}\"", e.first_to_go().name, e.first_to_go().stake,
                                          print(Value(e.first_to_go().life), 2), print(Value(joint.life)), shown(e.exposure->name))});
    const auto where = case_name(joint, governing);
    out.push_back({"governing", fmt::format("{}, utilisation {}{}", check_name(joint, governing), ratio_text(governing.outcome.utilisation),
                                            where.empty() ? "" : ", " + where)});
    if (const auto* least = least_static_factor(a); least != nullptr)
        out.push_back(
            {"least design factor on static load",
             fmt::format("{} ({}, {}); service class \"{}\" asks for at least {}", ratio_text(*least->static_factor),
                         check_name(joint, *least), joint.load_cases[static_cast<std::size_t>(least->static_where.load_case)].name,
                         joint.service.name, print_number(joint.service.design_factor, 3))});
    return out;
}

std::string bolts_name(const Joint& joint) {
    const auto& bolt = joint.bolt;
    return fmt::format("{} x {} x {} {}, {}", joint.positions.size(), bolt.thread.name, print(Value(bolt.length)),
                       bolt.property_class.bolt_class, bolt.finish.name);
}

std::vector<Fact> bolt_facts(const Assessment& a) {
    const auto& s = a.state;
    const auto& joint = *s.joint;
    const auto& bolt = joint.bolt;
    std::vector<Fact> out;
    const char* torque = !joint.tightening.method.uses_torque ? "torque, for information only"
                         : s.torque_chosen                    ? "torque (chosen)"
                                                              : "torque (given)";
    out.push_back({torque, print(Value(s.torque), 3)});
    out.push_back({"nut", fmt::format("class {}{}", bolt.nut.nut_class,
                                      bolt.finish.nut_oversize > mm(0) ? ", tapped oversize for the galvanised bolt"
                                      : bolt.nut_oversize > mm(0)      ? ", tapped oversize"
                                                                       : "")});
    if (bolt.head_washer) out.push_back({"washer under the head", bolt.head_washer->name});
    if (bolt.nut_washer) out.push_back({"washer under the nut", bolt.nut_washer->name});
    for (const auto& ply : joint.plies) out.push_back({"hole in " + ply.name, print(Value(ply.hole_diameter))});
    if (s.tube.present) out.push_back({"tubes", fmt::format("{} of {}", joint.positions.size(), s.tube.stock->name)});
    out.push_back({"grip; load factor of a pull on the bolt", fmt::format("{}; {}", print(Value(s.grip)), ratio_text(s.load_factor))});
    return out;
}

std::vector<Fact> tube_facts(const Assessment& a) {
    const auto& s = a.state;
    const auto& joint = *s.joint;
    if (!joint.section) return {};
    const auto& section = *joint.section;
    std::vector<Fact> out;
    out.push_back({"arrangement", std::string(word_of(section.tube.arrangement))});
    if (s.tube.present) {
        out.push_back(
            {s.tube.chosen ? "chosen from stock" : "given", fmt::format("{}, {}", s.tube.stock->name, section.tube.material.name)});
        out.push_back({"bore; bolt", fmt::format("{}; {}", print(Value(s.tube.bore)), print(Value(joint.bolt.thread.diameter)))});
        out.push_back({"stress at the greatest clamp",
                       fmt::format("{} of {}", print(Value(s.tube.wall.stress)), print(Value(section.tube.material.proof_strength)))});
        out.push_back({"pressure of its ends", print(Value(s.tube.wall.end_pressure))});
        if (s.tube_passes_walls()) {
            const auto& l = s.tube.length_check;
            out.push_back({"CUT each tube to", fmt::format("{} +- {} mm, ends square within {} mm", print(Value(s.tube.length), 5),
                                                           print_number(in_mm(section.tube.length_tolerance), 2),
                                                           print_number(in_mm(section.tube.squareness), 2))});
            out.push_back(
                {"stands out of the section by", fmt::format("{} to {}", print(Value(-l.gap_greatest), 3), print(Value(-l.gap_least), 3))});
            if (l.gap_greatest > mm(0))
                out.push_back({"force that bends the walls to the plates",
                               fmt::format("{}; yield at {}", print(Value(l.closing_force), 3), print(Value(s.walls_first_yield()), 3))});
            out.push_back({"", "The plates stand on the tube's ends; the walls are not clamped and bear on the tube's outside."});
        } else {
            const auto& l = s.tube.length_check;
            out.push_back({"cavity, with the section's tolerance",
                           fmt::format("{} +- {}", print(Value(section.inside_height()), 5), print(Value(section.height_tolerance)))});
            out.push_back({"tube, as assessed", fmt::format("{} +- {} mm", print(Value(s.tube.length), 5),
                                                            print_number(in_mm(section.tube.length_tolerance), 2))});
            out.push_back({"gap at the extremes of tolerance",
                           fmt::format("{} to {}", print(Value(l.gap_least), 3), print(Value(l.gap_greatest), 3))});
            out.push_back({"force to close it; share of clamp left",
                           fmt::format("{} to {}; {}", print(Value(l.closing_force_least), 3), print(Value(l.closing_force_greatest), 3),
                                       ratio_text(l.share_left))});
            out.push_back({"wall or plate over it first yields at", print(Value(s.walls_first_yield()), 3)});
            out.push_back(
                {"length the walls allow", fmt::format("{} to {}", print(Value(l.length_least), 5), print(Value(l.length_greatest), 5))});
            out.push_back({"CUT each tube to its measured cavity",
                           fmt::format("within {} mm, ends square within {} mm", print_number(in_mm(l.allowed_gap), 2),
                                       print_number(in_mm(section.tube.squareness), 2))});
        }
    }
    out.push_back({"without any tube the walls stand",
                   fmt::format("{} of the {} clamp", print(Value(s.open_capacity), 3), print(Value(s.greatest), 3))});
    return out;
}

}  // namespace faywright
