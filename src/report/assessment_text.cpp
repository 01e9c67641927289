// SPDX-License-Identifier: MIT
#include "quantity/text.hpp"
#include "report/assessment.hpp"
#include "report/corrosion.hpp"
#include "report/layout.hpp"
#include "report/steps_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace faywright {

namespace {

std::string mark_of(Status status) { return status == Status::pass ? "pass" : status == Status::fail ? "FAIL" : "-"; }

std::string colored(const std::string& text, Status status, bool color) {
    if (!color || status == Status::not_applicable) return text;
    return fmt::format("\x1b[{}m{}\x1b[0m", status == Status::pass ? "32" : "1;31", text);
}

std::string ratio(double value) { return value >= 1000 ? ">999" : fmt::format("{:.2f}", value); }

std::string name_of(const Joint& joint, const CheckResult& result) {
    const auto part = part_name(joint, result);
    return std::string(result.info->id) + (part.empty() ? "" : fmt::format(" ({})", part));
}

std::string place_of(const Joint& joint, const CheckResult& result) {
    std::string out;
    if (result.where.load_case >= 0) out = joint.load_cases[static_cast<std::size_t>(result.where.load_case)].name;
    if (result.where.bolt >= 0) out += fmt::format("{}bolt {}", out.empty() ? "" : ", ", result.where.bolt + 1);
    return out;
}

/// Whether slip is barred at any plane, so that shear goes by bearing.
bool bears(const Assessment& a) {
    return std::any_of(a.checks().begin(), a.checks().end(),
                       [](const CheckResult& r) { return r.info->id == "slip" && !r.outcome.applicable; });
}

std::vector<const CheckResult*> sorted(const Assessment& a) {
    std::vector<const CheckResult*> list;
    for (const auto& result : a.checks()) list.push_back(&result);
    std::stable_sort(list.begin(), list.end(), [](const CheckResult* x, const CheckResult* y) {
        if (x->outcome.applicable != y->outcome.applicable) return x->outcome.applicable;
        return x->outcome.utilisation > y->outcome.utilisation;
    });
    return list;
}

std::string tube_text(const Assessment& a) {
    const auto& s = a.state;
    const auto& joint = *s.joint;
    if (!joint.section) return "";
    const auto& section = *joint.section;
    std::string out = "\nTUBE\n";
    out += labelled("arrangement", std::string(word_of(section.tube.arrangement)));
    if (s.tube.present) {
        out +=
            labelled(s.tube.chosen ? "chosen from stock" : "given", fmt::format("{}, {}", s.tube.stock->name, section.tube.material.name));
        out += labelled("bore; bolt", fmt::format("{}; {}", print(Value(s.tube.bore)), print(Value(joint.bolt.thread.diameter))));
        out += labelled("stress at the greatest clamp",
                        fmt::format("{} of {}", print(Value(s.tube.wall.stress)), print(Value(section.tube.material.proof_strength))));
        out += labelled("pressure of its ends", print(Value(s.tube.wall.end_pressure)));
        if (s.tube_passes_walls()) {
            const auto& l = s.tube.length_check;
            out += labelled("CUT each tube to", fmt::format("{} +- {} mm, ends square within {} mm", print(Value(s.tube.length), 5),
                                                            print_number(in_mm(section.tube.length_tolerance), 2),
                                                            print_number(in_mm(section.tube.squareness), 2)));
            out += labelled("stands out of the section by",
                            fmt::format("{} to {}", print(Value(-l.gap_greatest), 3), print(Value(-l.gap_least), 3)));
            if (l.gap_greatest > mm(0))
                out += labelled("force that bends the walls to the plates",
                                fmt::format("{}; yield at {}", print(Value(l.closing_force), 3), print(Value(s.walls_first_yield()), 3)));
            out += wrapped("The plates stand on the tube's ends; the walls are not clamped and bear on the tube's outside.", "  ", "  ");
        } else {
            const auto& l = s.tube.length_check;
            out += labelled("cavity, with the section's tolerance",
                            fmt::format("{} +- {}", print(Value(section.inside_height()), 5), print(Value(section.height_tolerance))));
            out += labelled("tube, as assessed", fmt::format("{} +- {} mm", print(Value(s.tube.length), 5),
                                                             print_number(in_mm(section.tube.length_tolerance), 2)));
            out += labelled("gap at the extremes of tolerance",
                            fmt::format("{} to {}", print(Value(l.gap_least), 3), print(Value(l.gap_greatest), 3)));
            out += labelled("force to close it; share of clamp left",
                            fmt::format("{} to {}; {}", print(Value(l.closing_force_least), 3), print(Value(l.closing_force_greatest), 3),
                                        ratio(l.share_left)));
            out += labelled("wall or plate over it first yields at", print(Value(s.walls_first_yield()), 3));
            out += labelled("length the walls allow",
                            fmt::format("{} to {}", print(Value(l.length_least), 5), print(Value(l.length_greatest), 5)));
            out += labelled("CUT each tube to its measured cavity",
                            fmt::format("within {} mm, ends square within {} mm", print_number(in_mm(l.allowed_gap), 2),
                                        print_number(in_mm(section.tube.squareness), 2)));
        }
    }
    out += labelled("without any tube the walls stand",
                    fmt::format("{} of the {} clamp", print(Value(s.open_capacity), 3), print(Value(s.greatest), 3)));
    return out;
}

/// The same default of several parts or load cases is told once: "load-case[0..5].reverses".
std::string defaults_text(const std::vector<DefaultTaken>& defaults) {
    struct Told {
        std::string head, tail, text;
        std::vector<std::string> indices;
    };
    std::vector<Told> told;
    for (const auto& taken : defaults) {
        const auto open = taken.path.find('['), close = taken.path.find(']');
        Told entry{taken.path.substr(0, open),
                   open == std::string::npos ? "" : taken.path.substr(close + 1),
                   fmt::format("{}: {}", taken.meaning, taken.value),
                   {}};
        if (open != std::string::npos) entry.indices.push_back(taken.path.substr(open + 1, close - open - 1));
        const auto same = std::find_if(told.begin(), told.end(), [&](const Told& t) {
            return t.head == entry.head && t.tail == entry.tail && t.text == entry.text && !t.indices.empty();
        });
        if (same != told.end() && !entry.indices.empty())
            same->indices.push_back(entry.indices.front());
        else
            told.push_back(std::move(entry));
    }
    std::string out;
    for (const auto& entry : told)
        out += wrapped(entry.text,
                       fmt::format("  {}{}{}  ", entry.head,
                                   entry.indices.empty() ? "" : fmt::format("[{}]", fmt::join(entry.indices, ",")), entry.tail),
                       "      ");
    return out;
}

std::string head_text(const Assessment& a, bool color) {
    const auto& joint = *a.state.joint;
    const auto& governing = a.results[a.governing];
    std::string out =
        colored(a.passes ? "PASS" : "FAIL", a.passes ? Status::pass : Status::fail, color) + wrapped(joint.title, "  ", "      ");
    if (bears(a))
        out += wrapped("as a bearing joint: friction is not counted on, and the bolts move in their holes when the load turns", "      ",
                       "      ");
    const auto failed = std::count_if(a.checks().begin(), a.checks().end(), [](const CheckResult& r) { return r.status == Status::fail; });
    if (failed > 0) out += fmt::format("{} of the checks fail\n", failed);
    if (!a.state.tube.fits) out += "no stocked tube of the chosen material carries the clamp\n";
    for (const auto& e : a.corrosion.exposures)
        if (!e.passes)
            out += wrapped(fmt::format("{}: {} lasts {} of the promised {} in \"{}\"", e.first_to_go().name, e.first_to_go().stake,
                                       print(Value(e.first_to_go().life), 2), print(Value(joint.life)), shown(e.exposure->name)),
                           "corrosion: ", "           ");
    const auto where = place_of(joint, governing);
    out += wrapped(fmt::format("{}, utilisation {}{}", name_of(joint, governing), ratio(governing.outcome.utilisation),
                               where.empty() ? "" : ", " + where),
                   "governing: ", "           ");
    if (const auto* least = least_static_factor(a); least != nullptr)
        out += wrapped(fmt::format("{} ({}, {}); service class \"{}\" asks for at least {}", ratio(*least->static_factor),
                                   name_of(joint, *least), joint.load_cases[static_cast<std::size_t>(least->static_where.load_case)].name,
                                   joint.service.name, print_number(joint.service.design_factor, 3)),
                       "least design factor on static load: ", "           ");
    return out;
}

std::string bolts_text(const Assessment& a) {
    const auto& s = a.state;
    const auto& joint = *s.joint;
    const auto& bolt = joint.bolt;
    std::string out = fmt::format("\nBOLTS  {} x {} x {} {}, {}\n", joint.positions.size(), bolt.thread.name, print(Value(bolt.length)),
                                  bolt.property_class.bolt_class, bolt.finish.name);
    const char* torque = !joint.tightening.method.uses_torque ? "torque, for information only"
                         : s.torque_chosen                    ? "torque (chosen)"
                                                              : "torque (given)";
    out += labelled(torque, print(Value(s.torque), 3));
    out += labelled("nut", fmt::format("class {}{}", bolt.nut.nut_class,
                                       bolt.finish.nut_oversize > mm(0) ? ", tapped oversize for the galvanised bolt"
                                       : bolt.nut_oversize > mm(0)      ? ", tapped oversize"
                                                                        : ""));
    if (bolt.head_washer) out += labelled("washer under the head", bolt.head_washer->name);
    if (bolt.nut_washer) out += labelled("washer under the nut", bolt.nut_washer->name);
    for (const auto& ply : joint.plies) out += labelled("hole in " + ply.name, print(Value(ply.hole_diameter)));
    if (s.tube.present) out += labelled("tubes", fmt::format("{} of {}", joint.positions.size(), s.tube.stock->name));
    out += labelled("grip; load factor of a pull on the bolt", fmt::format("{}; {}", print(Value(s.grip)), ratio(s.load_factor)));
    return out;
}

std::string clamp_text(const Assessment& a) {
    std::string out = "\nCLAMP FORCE of one bolt" + fitted_right("least", 26) + fitted_right("greatest", 13) + '\n';
    const auto* lowest = &a.clamp[0];
    // The last stage has the load in it; the checks add the load themselves.
    for (std::size_t i = 1; i + 1 < a.clamp.size(); ++i)
        if (a.clamp[i].least < lowest->least) lowest = &a.clamp[i];
    for (const auto& stage : a.clamp)
        out += "  " + fitted(stage.title, 38) + fitted_right(print(Value(stage.least), 3), 9) +
               fitted_right(print(Value(stage.greatest), 3), 13) + (&stage == lowest ? " *" : "") + '\n';
    return out + "  * slip and separation are checked at this least\n";
}

std::string checks_text(const Assessment& a, bool color) {
    const auto& joint = *a.state.joint;
    const std::string indent(22, ' ');
    std::string out = "\nCHECKS by utilisation\n   use  static        check; demand of resistance; governing case and bolt\n";
    for (const auto* result : sorted(a)) {
        if (!result->outcome.applicable) continue;
        const auto& o = result->outcome;
        const auto mark = fitted(mark_of(result->status), 4);
        auto row = wrapped(
            name_of(joint, *result),
            fmt::format(" {:>5}  {:>6}  {}  ", ratio(o.utilisation), result->static_factor ? ratio(*result->static_factor) : "-", mark),
            indent);
        if (color) row.replace(row.find(mark), mark.size(), colored(mark, result->status, color));
        out += row;
        const auto where = place_of(joint, *result);
        out += wrapped(fmt::format("{} of {}{}", print(o.demand(), 3), print(o.resistance(), 3), where.empty() ? "" : "; " + where), indent,
                       indent);
    }
    return out + wrapped(
                     "static: achieved design factor, resistance over the worst static load without factor; - where no static case "
                     "loads the check",
                     "  ", "  ");
}

std::string assumptions_text(const Assessment& a) {
    const auto& joint = *a.state.joint;
    std::string out = "\nASSUMED because the joint file does not say\n" + defaults_text(joint.defaults);
    if (a.state.torque_chosen) out += wrapped("from the proof utilisation at the low end of friction", "  tightening.torque  ", "      ");
    if (!joint.overrides.introduction_factor)
        out += wrapped("1 for the bolt and 0 for the clamp: the unfavourable end for each", "  overrides.introduction-factor  ", "      ");
    out += wrapped("partial factor 1 on the ranges endured", "  fatigue  ", "      ");
    out += wrapped("recorded; losses are staged, not timed", fmt::format("  life {}  ", print(Value(joint.life))), "      ");
    std::string idle;
    for (const auto* result : sorted(a)) {
        if (result->outcome.applicable) continue;
        const auto entry = wrapped(fmt::format("{}: {}", name_of(joint, *result), result->outcome.note), "  ", "      ");
        if (idle.find(entry) == std::string::npos) idle += entry;
    }
    if (!idle.empty()) out.append("\nNOT APPLICABLE\n").append(idle);
    if (const auto list = overrides_of(joint); !list.empty()) {
        out += "\nOVERRIDES by the joint file\n";
        for (const auto& [field, value] : list) out += wrapped(value, fmt::format("  {}  ", field), "      ");
        out += wrapped(joint.overrides.reason.value_or(""), "  reason: ", "      ");
    }
    if (const auto list = own_tables_of(joint); !list.empty()) {
        out += "\nOWN TABLES laid over the built-in ones, used here\n";
        for (const auto& entry : list) out += wrapped(entry, "  ", "      ");
    }
    return out;
}

}  // namespace

std::string assessment_text(const Assessment& a, bool color) {
    const auto& joint = *a.state.joint;
    std::string out = head_text(a, color) + bolts_text(a) + clamp_text(a) + checks_text(a, color) + tube_text(a);
    if (const auto told = warnings(a); !told.empty()) {
        out += "\nWARNINGS\n";
        for (const auto& warning : told) out += wrapped(warning, "  * ", "    ");
    }
    out += assumptions_text(a);
    out += outlook_text(joint, a.corrosion) + "\nCAUTIONS\n";
    for (const auto& caution : cautions()) out += wrapped(caution, "  * ", "    ");
    return out;
}

std::optional<std::string> explanation_text(const Assessment& a, const std::string& word) {
    const auto& joint = *a.state.joint;
    if (std::find(explained_topics.begin(), explained_topics.end(), word) != explained_topics.end()) {
        Recorder steps;
        derive(a.state, word, steps);
        return steps_text(steps.steps());
    }
    std::string out;
    for (const auto* result : sorted(a)) {
        if (result->info->id != word) continue;
        if (!out.empty()) out += '\n';
        out += wrapped(fmt::format("{}: {}", name_of(joint, *result), result->info->title));
        if (!result->outcome.applicable) {
            out += wrapped(result->outcome.note, "not applicable: ", "  ");
            continue;
        }
        const auto where = place_of(joint, *result);
        out += wrapped(fmt::format("{}, utilisation {} = {} / {}{}", mark_of(result->status), print_number(result->outcome.utilisation, 4),
                                   print(result->outcome.demand(), 5), print(result->outcome.resistance(), 5),
                                   where.empty() ? "" : "; " + where));
        if (result->outcome.design_factor)
            out += fmt::format("resistance over the load without factor: {}\n", print_number(*result->outcome.design_factor, 4));
        out += '\n';
        out += steps_text(explain(a, *result).steps());
        if (result->outcome.note != nullptr) out += wrapped(result->outcome.note, "NOTE: ", "  ");
    }
    if (out.empty()) return std::nullopt;
    return out;
}

}  // namespace faywright
