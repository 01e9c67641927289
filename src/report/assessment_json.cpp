// SPDX-License-Identifier: MIT
#include "quantity/text.hpp"
#include "report/assessment.hpp"
#include "report/assessment_document.hpp"
#include "report/corrosion.hpp"

#include <fmt/format.h>

namespace faywright {

namespace {

using json::Json;

Json check_json(const Assessment& a, const CheckResult& result) {
    const auto& joint = *a.state.joint;
    const auto& o = result.outcome;
    Json out;
    out["id"] = result.info->id;
    out["title"] = result.info->title;
    if (result.where.load_case >= 0 && o.applicable) out["case"] = joint.load_cases[static_cast<std::size_t>(result.where.load_case)].name;
    if (result.where.bolt >= 0 && o.applicable) out["bolt"] = result.where.bolt + 1;
    if (const auto part = part_name(joint, result); !part.empty()) out[result.info->scope == Scope::ply ? "ply" : "part"] = part;
    if (o.applicable) {
        out["demand"] = json::of(o.demand());
        out["resistance"] = json::of(o.resistance(), o.demand());
        out["utilisation"] = o.utilisation;
        if (result.static_factor) {
            out["design_factor"] = *result.static_factor;
            out["design_factor_case"] = joint.load_cases[static_cast<std::size_t>(result.static_where.load_case)].name;
        }
        if (o.design_factor) out["load_ratio"] = *o.design_factor;
    }
    out["status"] = word_of(result.status);
    if (o.applicable) out["source"] = json::of(*o.source);
    if (o.note != nullptr) out["note"] = o.note;
    return out;
}

/// The check that decides; corrosion where only that fails.
std::string_view governing_id(const Assessment& a) { return a.holds && !a.passes ? "corrosion-life" : a.results[a.governing].info->id; }

Json tube_json(const State& s) {
    Json out;
    out["arrangement"] = word_of(s.arrangement());
    if (s.tube.present) {
        out["stock"] = s.tube.stock->name;
        out["chosen"] = s.tube.chosen;
        out["fits"] = s.tube.fits;
        out["material"] = s.joint->section->tube.material.name;
        out["outside_diameter"] = json::of(s.tube.stock->outside_diameter);
        out["bore"] = json::of(s.tube.bore);
        out["length"] = json::of(s.tube.length);
        out["stress"] = json::of(s.tube.wall.stress);
        out["end_pressure"] = json::of(s.tube.wall.end_pressure);
        const auto& l = s.tube.length_check;
        out["length_tolerance"] = json::of(s.joint->section->tube.length_tolerance);
        out["gap"] = {{"min", json::of(l.gap_least)}, {"max", json::of(l.gap_greatest)}};
        if (!s.tube_passes_walls()) {
            out["closing_force"] = {{"min", json::of(l.closing_force_least)}, {"max", json::of(l.closing_force_greatest)}};
            out["wall_first_yield"] = json::of(s.walls_first_yield());
            out["share_left"] = l.share_left;
            out["allowed_length"] = {{"min", json::of(l.length_least)}, {"max", json::of(l.length_greatest)}};
            out["allowed_gap"] = json::of(l.allowed_gap);
            out["cut_length"] = json::of(l.cut_length);
        }
    }
    out["without_tube"] = json::of(s.open_capacity);
    return out;
}

}  // namespace

Json assessment_document(const Assessment& a) {
    const auto& s = a.state;
    const auto& joint = *s.joint;
    Json out;
    out["program"] = "faywright";
    out["version"] = FAYWRIGHT_VERSION;
    out["joint"] = joint.title;
    out["verdict"] = a.passes ? "pass" : "fail";
    out["governing"] = governing_id(a);
    out["service"] = {{"class", joint.service.name}, {"design_factor", joint.service.design_factor}};
    out["bolt"] = {
        {"size", joint.bolt.thread.name},   {"length", json::of(joint.bolt.length)}, {"class", joint.bolt.property_class.bolt_class},
        {"finish", joint.bolt.finish.name}, {"nut_class", joint.bolt.nut.nut_class}, {"count", joint.positions.size()}};
    out["torque"] = json::of(s.torque);
    out["load_factor"] = s.load_factor;
    out["grip"] = json::of(s.grip);
    out["checks"] = Json::array();
    for (const auto& result : a.checks()) out["checks"].push_back(check_json(a, result));
    out["clamp"] = Json::array();
    for (const auto& stage : a.clamp)
        out["clamp"].push_back(
            {{"stage", stage.id}, {"title", stage.title}, {"min", json::of(stage.least)}, {"max", json::of(stage.greatest)}});
    if (joint.section) out["tube"] = tube_json(s);
    out["corrosion"] = json::of(a.corrosion);
    out["assumptions"] = Json::array();
    for (const auto& taken : joint.defaults)
        out["assumptions"].push_back({{"field", taken.path}, {"meaning", taken.meaning}, {"value", taken.value}});
    out["overrides"] = Json::array();
    for (const auto& [field, value] : overrides_of(joint))
        out["overrides"].push_back({{"field", field}, {"value", value}, {"reason", joint.overrides.reason.value_or("")}});
    out["own_tables"] = own_tables_of(joint);
    out["warnings"] = warnings(a);
    out["cautions"] = cautions();
    return out;
}

std::string assessment_json(const Assessment& a) { return json::printed(assessment_document(a)); }

std::string assessment_line(const Assessment& a, const std::string& input) {
    const auto& joint = *a.state.joint;
    const auto& governing = a.results[a.governing];
    Json out;
    out["input"] = input;
    out["joint"] = joint.title;
    out["verdict"] = a.passes ? "pass" : "fail";
    out["governing"] = governing_id(a);
    out["utilisation"] = governing.outcome.utilisation;
    const auto part = part_name(joint, governing);
    if (!part.empty()) out["part"] = part;
    if (governing.where.load_case >= 0) out["case"] = joint.load_cases[static_cast<std::size_t>(governing.where.load_case)].name;
    if (governing.where.bolt >= 0) out["bolt"] = governing.where.bolt + 1;
    if (const auto* least = least_static_factor(a); least != nullptr) out["design_factor"] = *least->static_factor;
    out["torque"] = json::of(a.state.torque);
    out["clamp_min"] = json::of(a.state.settled_least);
    if (a.state.tube.present) out["tube"] = a.state.tube.stock->name;
    if (const auto own = own_tables_of(joint); !own.empty()) out["own_tables"] = own;
    if (std::any_of(joint.defaults.begin(), joint.defaults.end(), [](const DefaultTaken& taken) { return taken.path == "choices"; }))
        out["choices"] = "passed over";
    return json::line(out);
}

std::string errors_line(const Diagnostics& diagnostics, const std::string& input) {
    Json out;
    out["input"] = input;
    out["errors"] = Json::array();
    for (const auto& d : diagnostics.sorted())
        out["errors"].push_back({{"code", d.code},
                                 {"message", d.message},
                                 {"file", d.at.file ? *d.at.file : input},
                                 {"line", d.at.line},
                                 {"column", d.at.column}});
    return json::line(out);
}

std::optional<std::string> explanation_json(const Assessment& a, const std::string& word) {
    Json out;
    if (std::find(explained_topics.begin(), explained_topics.end(), word) != explained_topics.end()) {
        Recorder steps;
        derive(a.state, word, steps);
        out["topic"] = word;
        out["steps"] = json::of(steps.steps());
        return json::printed(out);
    }
    out["results"] = Json::array();
    for (const auto& result : a.checks()) {
        if (result.info->id != word) continue;
        Json one;
        one["check"] = check_json(a, result);
        if (result.outcome.applicable) one["steps"] = json::of(explain(a, result).steps());
        out["results"].push_back(std::move(one));
    }
    if (out["results"].empty()) return std::nullopt;
    return json::printed(out);
}

}  // namespace faywright
