// SPDX-License-Identifier: MIT
#include "assess/torque_table.hpp"

namespace faywright {

namespace {

template <class Record>
const Row<Record>* look_up(const std::string& name, const std::string& option, const Tables& tables, Diagnostics& diagnostics) {
    const auto& table = tables.of<Record>();
    if (const auto* row = table.find(name); row != nullptr) return row;
    diagnostics.error({"name.unknown",
                       fmt::format("the table {} does not have the {} {}", Record::table, option, quoted_with_nearest(name, table.names())),
                       TextPosition{std::make_shared<const std::string>("command line")},
                       "",
                       {},
                       fmt::format("faywright table {}", Record::table)});
    return nullptr;
}

}  // namespace

std::optional<TorqueAnswer> torque_table(const TorqueQuestion& question, const Tables& tables, Diagnostics& diagnostics) {
    const auto* finish = look_up<Finish>(question.finish, "--finish", tables, diagnostics);
    const auto* method = look_up<TighteningMethod>(question.tightening, "--tightening", tables, diagnostics);
    std::vector<const Row<Thread>*> threads;
    if (question.size.empty()) {
        for (const auto& row : tables.of<Thread>().rows) threads.push_back(&row);
    } else if (const auto* thread = look_up<Thread>(question.size, "--size", tables, diagnostics); thread != nullptr) {
        threads.push_back(thread);
    }
    std::vector<std::string> classes;
    for (const auto& row : tables.of<BoltClass>().rows) classes.push_back(row.bolt_class);
    if (std::find(classes.begin(), classes.end(), question.bolt_class) == classes.end()) {
        diagnostics.error({"name.unknown",
                           "the table bolt-classes does not have the --class " + quoted_with_nearest(question.bolt_class, classes),
                           TextPosition{std::make_shared<const std::string>("command line")},
                           "",
                           {},
                           "faywright table bolt-classes"});
    }
    if (diagnostics.any() || finish == nullptr || method == nullptr) return std::nullopt;
    TorqueAnswer answer{question.bolt_class, *finish, *method, {}};
    for (const auto* thread : threads) {
        const Row<BoltClass>* property_class = nullptr;
        for (const auto& row : tables.of<BoltClass>().rows)
            if (row.bolt_class == question.bolt_class && row.holds_for(thread->diameter)) property_class = &row;
        if (property_class == nullptr) continue;
        TighteningTask task{.thread = ThreadGeometry::compute({thread->diameter, thread->pitch}),
                            .diameter = thread->diameter,
                            .pitch = thread->pitch,
                            .bearing_diameter = thread->nut_bearing_diameter,
                            .bearing_hole = thread->hole_medium,
                            .thread_friction_low = finish->thread_friction_low,
                            .thread_friction_high = finish->thread_friction_high,
                            .head_friction_low = finish->head_friction_low,
                            .head_friction_high = finish->head_friction_high,
                            .proof_strength = property_class->proof_strength,
                            .proof_utilisation = question.proof_utilisation,
                            .torque = question.torque,
                            .factor = {},
                            .tool_scatter = method->tool_scatter};
        if (!method->uses_torque) task.factor = method->factor_high;
        TorqueLine line{thread->name, tightening_plan(task), 0.0};
        line.proof_share = AssemblyStress::compute({.preload = line.plan.preload.greatest,
                                                    .stress_area = task.thread.stress_area,
                                                    .pitch_diameter = task.thread.pitch_diameter,
                                                    .stress_diameter = task.thread.stress_diameter,
                                                    .pitch = task.pitch,
                                                    .thread_friction = task.thread_friction_low,
                                                    .proof_strength = task.proof_strength})
                               .utilisation;
        answer.lines.push_back(std::move(line));
    }
    if (answer.lines.empty())
        diagnostics.error({"name.unknown",
                           fmt::format("class {} is not made in size {}", question.bolt_class, question.size),
                           TextPosition{std::make_shared<const std::string>("command line")},
                           "",
                           {},
                           ""});
    if (diagnostics.any()) return std::nullopt;
    return answer;
}

}  // namespace faywright
