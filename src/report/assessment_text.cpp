// SPDX-License-Identifier: MIT
#include "quantity/text.hpp"
#include "report/assessment.hpp"
#include "report/assessment_words.hpp"
#include "report/corrosion.hpp"
#include "report/layout.hpp"
#include "report/steps_text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace faywright {

namespace {

std::string colored(const std::string& text, Status status, bool color) {
    if (!color || status == Status::not_applicable) return text;
    return fmt::format("\x1b[{}m{}\x1b[0m", status == Status::pass ? "32" : "1;31", text);
}

std::string facts_text(const std::vector<Fact>& facts) {
    std::string out;
    for (const auto& [label, value] : facts) out += label.empty() ? wrapped(value, "  ", "  ") : labelled(label, value);
    return out;
}

std::string head_text(const Assessment& a, bool color) {
    const auto& joint = *a.state.joint;
    std::string out =
        colored(a.passes ? "PASS" : "FAIL", a.passes ? Status::pass : Status::fail, color) + wrapped(joint.title, "  ", "      ");
    if (goes_by_bearing(a)) out += wrapped(bearing_note, "      ", "      ");
    for (const auto& [label, words] : verdict_facts(a)) {
        const auto first = label.empty() ? "" : label + ": ";
        out += wrapped(words, first, std::string(std::min<std::size_t>(first.size(), 11), ' '));
    }
    return out;
}

std::string bolts_text(const Assessment& a) { return fmt::format("\nBOLTS  {}\n", bolts_name(*a.state.joint)) + facts_text(bolt_facts(a)); }

std::string clamp_text(const Assessment& a) {
    std::string out = "\nCLAMP FORCE of one bolt" + fitted_right("least", 26) + fitted_right("greatest", 13) + '\n';
    const auto* lowest = &a.clamp[checked_stage(a)];
    for (const auto& stage : a.clamp)
        out += "  " + fitted(stage.title, 38) + fitted_right(print(Value(stage.least), 3), 9) +
               fitted_right(print(Value(stage.greatest), 3), 13) + (&stage == lowest ? " *" : "") + '\n';
    return out + "  * slip and separation are checked at this least\n";
}

std::string checks_text(const Assessment& a, bool color) {
    const auto& joint = *a.state.joint;
    const std::string indent(22, ' ');
    std::string out = "\nCHECKS by utilisation\n   use  static        check; demand of resistance; governing case and bolt\n";
    for (const auto* result : by_utilisation(a)) {
        if (!result->outcome.applicable) continue;
        const auto& o = result->outcome;
        const auto mark = fitted(mark_of(result->status), 4);
        auto row = wrapped(check_name(joint, *result),
                           fmt::format(" {:>5}  {:>6}  {}  ", ratio_text(o.utilisation),
                                       result->static_factor ? ratio_text(*result->static_factor) : "-", mark),
                           indent);
        if (color) row.replace(row.find(mark), mark.size(), colored(mark, result->status, color));
        out += row;
        const auto where = case_name(joint, *result);
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
    std::string out = "\nASSUMED because the joint file does not say\n";
    for (const auto& taken : grouped(joint.defaults))
        out += wrapped(fmt::format("{}: {}", taken.meaning, taken.value), fmt::format("  {}  ", taken.path), "      ");
    for (const auto& [path, words] : standing_assumptions(a)) out += wrapped(words, fmt::format("  {}  ", path), "      ");
    std::string idle;
    for (const auto* result : by_utilisation(a)) {
        if (result->outcome.applicable) continue;
        const auto entry = wrapped(fmt::format("{}: {}", check_name(joint, *result), result->outcome.note), "  ", "      ");
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
    std::string out = head_text(a, color) + bolts_text(a) + clamp_text(a) + checks_text(a, color) +
                      (a.state.joint->section ? "\nTUBE\n" + facts_text(tube_facts(a)) : "");
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
    for (const auto* result : by_utilisation(a)) {
        if (result->info->id != word) continue;
        if (!out.empty()) out += '\n';
        out += wrapped(fmt::format("{}: {}", check_name(joint, *result), result->info->title));
        if (!result->outcome.applicable) {
            out += wrapped(result->outcome.note, "not applicable: ", "  ");
            continue;
        }
        const auto where = case_name(joint, *result);
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
