// SPDX-License-Identifier: MIT
#pragma once

#include "assess/assessment.hpp"
#include "joint/joint.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cmath>
#include <fstream>
#include <memory>
#include <sstream>
#include <stdexcept>
#include <string>

/// What every test of joints needs: the tables, the demo files, edits of a text, and whether an assessment is sound.
namespace joint_tests {

using namespace faywright;

inline const Tables& built_in() {
    static const Tables tables = [] {
        Diagnostics diagnostics;
        auto loaded = load_tables({}, diagnostics);
        if (diagnostics.any()) throw std::runtime_error(diagnostics.text());
        return loaded;
    }();
    return tables;
}

inline const std::array<std::string, 4>& demo_names() {
    static const std::array<std::string, 4> names{"drawbar.toml", "suspension.toml", "through-tube.toml", "bracket.toml"};
    return names;
}

inline std::string demo(const std::string& name) {
    std::ifstream file(std::string(FAYWRIGHT_SOURCE_DIR) + "/cli/demo/" + name);
    std::stringstream text;
    text << file.rdbuf();
    if (text.str().empty()) throw std::runtime_error("no demo file " + name);
    return text.str();
}

/// The text with the first place of `what` replaced; `what` must be there.
inline std::string edited(std::string text, const std::string& what, const std::string& with) {
    const auto at = text.find(what);
    if (at == std::string::npos) throw std::runtime_error("the text to be edited does not hold: " + what);
    return text.replace(at, what.size(), with);
}

/// The same with every place of `what`.
inline std::string edited_everywhere(std::string text, const std::string& what, const std::string& with) {
    auto at = text.find(what);
    if (at == std::string::npos) throw std::runtime_error("the text to be edited does not hold: " + what);
    for (; at != std::string::npos; at = text.find(what, at + with.size())) text.replace(at, what.size(), with);
    return text;
}

inline std::unique_ptr<Assessment> assessed(const Joint& joint) {
    auto assessment = std::make_unique<Assessment>();
    assess(joint, *assessment);
    return assessment;
}

/// A joint read, with its assessment and its outlook; the assessment points into the joint.
struct WholeJoint {
    std::unique_ptr<Joint> joint;
    std::unique_ptr<Assessment> assessment;
};
inline WholeJoint whole_joint(const std::string& text) {
    Diagnostics diagnostics;
    auto joint = read_joint(text, "joint.toml", built_in(), diagnostics);
    REQUIRE_MESSAGE(joint, diagnostics.text());
    WholeJoint out{std::make_unique<Joint>(std::move(*joint)), nullptr};
    out.assessment = assessed(*out.joint);
    add_outlook(built_in(), *out.assessment);
    return out;
}

/// What is wrong with an assessment whatever the joint: the first of it, or nothing.
inline std::string unsound(const Assessment& a) {
    if (a.count == 0 || a.count > a.results.size()) return fmt::format("{} results", a.count);
    bool all_pass = true;
    for (const auto& r : a.checks()) {
        const auto where = fmt::format("{} (part {}, case {}, bolt {})", r.info->id, r.where.part, r.where.load_case, r.where.bolt);
        if (r.outcome.applicable != (r.status != Status::not_applicable)) return where + ": status and applicability differ";
        if (!r.outcome.applicable) {
            if (r.outcome.note == nullptr || *r.outcome.note == '\0') return where + ": does not apply, but no reason is given";
            continue;
        }
        if (!std::isfinite(r.outcome.utilisation)) return where + ": utilisation is not finite";
        if (r.outcome.utilisation < 0) return fmt::format("{}: utilisation {} is negative", where, r.outcome.utilisation);
        if (!std::isfinite(r.outcome.demand().si())) return where + ": demand is not finite";
        if (!std::isfinite(r.outcome.resistance().si())) return where + ": resistance is not finite";
        if (r.outcome.design_factor && !(std::isfinite(*r.outcome.design_factor) && *r.outcome.design_factor >= 0))
            return where + ": design factor is not a number";
        if (r.static_factor && !(std::isfinite(*r.static_factor) && *r.static_factor >= 0))
            return where + ": static design factor is not a number";
        if ((r.status == Status::pass) != (r.outcome.utilisation <= 1.0 + 1e-9)) return where + ": status and utilisation differ";
        all_pass = all_pass && r.status == Status::pass;
    }
    for (const auto& stage : a.clamp) {
        if (!std::isfinite(in_N(stage.least)) || !std::isfinite(in_N(stage.greatest)))
            return fmt::format("clamp {} is not finite", stage.id);
        if (stage.least < newton(0) || stage.least > stage.greatest)
            return fmt::format("clamp {}: least {} N, greatest {} N", stage.id, in_N(stage.least), in_N(stage.greatest));
    }
    const auto& s = a.state;
    for (const double number : {in_Nm(s.torque), s.load_factor, s.bolt_share, s.clamp_share, in_N(s.greatest), in_N(s.settled_least),
                                in_N(s.preload.least), in_N(s.preload.greatest)})
        if (!std::isfinite(number) || number < 0) return "a value of the state is negative or not finite";
    if (s.preload.least > s.preload.greatest) return "the preload band is upside down";
    if (s.bolt_share > 1 || s.clamp_share > 1) return "a share of the load is above one";
    // Besides the checks, two things fail a joint: no stocked tube, and a moment the pattern cannot take.
    bool others = s.tube.fits;
    for (std::size_t i = 0; i < s.joint->load_cases.size(); ++i) others = others && s.turning[i] != Turning::impossible;
    if (a.passes != (all_pass && others))
        return fmt::format("verdict is {}, but all checks pass is {}, and the rest {}", a.passes, all_pass, others);
    return {};
}

/// The first difference between two assessments of the same joint, or nothing.
inline std::string difference(const Assessment& a, const Assessment& b) {
    if (a.count != b.count) return "number of results";
    if (a.passes != b.passes || a.governing != b.governing) return "verdict";
    for (std::size_t i = 0; i < a.count; ++i) {
        const auto &r = a.results[i], &q = b.results[i];
        const auto id = std::string(r.info->id);
        if (r.info != q.info || r.status != q.status || r.outcome.applicable != q.outcome.applicable) return id + ": status";
        if (r.where.part != q.where.part || r.where.load_case != q.where.load_case || r.where.bolt != q.where.bolt) return id + ": place";
        if (r.outcome.utilisation != q.outcome.utilisation || r.outcome.demand().si() != q.outcome.demand().si() ||
            r.outcome.resistance().si() != q.outcome.resistance().si())
            return fmt::format("{}: utilisation {} and {}", id, r.outcome.utilisation, q.outcome.utilisation);
        if (r.outcome.design_factor != q.outcome.design_factor || r.static_factor != q.static_factor) return id + ": design factor";
        if (r.outcome.note != q.outcome.note) return id + ": note";
    }
    for (std::size_t i = 0; i < a.clamp.size(); ++i)
        if (a.clamp[i].least != b.clamp[i].least || a.clamp[i].greatest != b.clamp[i].greatest)
            return "clamp " + std::string(a.clamp[i].id);
    if (a.state.torque != b.state.torque) return "torque";
    const auto &t = a.state.tube, &u = b.state.tube;
    if (t.present != u.present || t.fits != u.fits ||
        (t.present && (t.stock->name != u.stock->name || t.chosen != u.chosen || t.length != u.length)))
        return "tube";
    return {};
}

}  // namespace joint_tests
