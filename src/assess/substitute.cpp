// SPDX-License-Identifier: MIT
#include "assess/substitute.hpp"

#include "assess/substitution_review.hpp"
#include "joint/choices.hpp"
#include "quantity/text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace faywright {

const Trial::Check* Trial::find(std::string_view id) const {
    const Check* worst = nullptr;
    for (const auto& check : checks)
        if (check.id == id && (worst == nullptr || check.utilisation > worst->utilisation)) worst = &check;
    return worst;
}

const Trial::Check* Trial::find_same(const Check& other) const {
    for (const auto& check : checks)
        if (check.id == other.id && check.part == other.part) return &check;
    return nullptr;
}

Duration Trial::shortest_life() const {
    auto least = years(1000);
    for (const auto& exposure : exposures) least = min(least, exposure.first_to_go().life);
    return least;
}

Duration Trial::shortest_wall_life() const {
    auto least = years(1000);
    for (const auto& exposure : exposures)
        for (const auto& member : exposure.members)
            if (member.is_wall) least = min(least, member.life);
    return least;
}

std::optional<Reviewer> Reviewer::make(const SubstitutionTask& task, Diagnostics& diagnostics) {
    const auto before = diagnostics.count();
    Reviewer out;
    const auto without = without_choices(task.root);
    if (without) out.warnings_.emplace_back("what the file leaves to size under [choices] is passed over");
    out.root_ = std::make_shared<const Node>(without ? *without : task.root);
    out.tables_ = &task.tables;
    auto written = read_written(*out.root_, task.tables, task.read_file, {}, diagnostics);
    if (!written) return std::nullopt;
    out.written_ = std::move(*written);
    if (!task.exposures.empty()) out.written_.exposures = task.exposures;
    const auto joint = joint_of_written(out.written_, *out.root_, task.tables, diagnostics);
    if (joint) check_geometry(*joint, *out.root_, diagnostics);
    if (diagnostics.count() != before) return std::nullopt;
    out.places_ = std::make_shared<std::vector<Place>>();
    for (const auto& exposure : out.written_.exposures) out.places_->emplace_back(exposure, task.tables);
    out.assessment_ = std::make_unique<Assessment>();
    out.specified_ = std::make_shared<const Trial>(out.tried(out.written_.file, "as specified"));

    // What the assessment chose stands on the shop sheet: it is given from now on.
    auto& file = out.written_.file;
    file.bolt.length = joint->bolt.length;
    file.bolt.nut_class = joint->bolt.nut.nut_class;
    for (auto& part : file.parts)
        if (auto* section = std::get_if<SectionFile>(&part); section != nullptr && !out.specified_->tube.empty())
            section->tube.stock = out.specified_->tube;
    if (out.written_.exposures.empty()) out.warnings_.emplace_back("the joint file names no exposure: corrosion is not compared");
    return out;
}

Trial Reviewer::tried(const JointFile& file, std::string title) {
    Trial out;
    out.title = std::move(title);
    Diagnostics own;
    auto variant = written_;
    variant.file = file;
    out.joint = joint_of_written(variant, *root_, *tables_, own);
    if (out.joint) check_geometry(*out.joint, *root_, own);
    if (own.any()) {
        out.joint.reset();
        const auto first = own.sorted().front();
        out.refused = first.message;
        out.refused_code = first.code;
        return out;
    }
    assess(*out.joint, *assessment_);
    const auto& a = *assessment_;
    const auto& state = a.state;
    out.holds = a.passes;
    out.torque = state.torque;
    if (state.tube.present) out.tube = state.tube.stock->name;
    const auto& governing = a.results[a.governing];
    out.utilisation = governing.outcome.utilisation;
    out.governing = governing.info->id;
    for (const auto& result : a.checks())
        if (result.outcome.applicable)
            out.checks.push_back(
                {std::string(result.info->id), part_name(*out.joint, result), result.outcome.utilisation, result.status != Status::fail});
    if (const auto* slip = find_check(a, "slip"); slip != nullptr && slip->outcome.applicable) out.slip = slip->outcome.utilisation;
    if (const auto* stress = find_check(a, "bolt-assembly-stress"); stress != nullptr) out.bolt_stress = stress->outcome.utilisation;
    out.assembled_least = state.preload.least;
    out.assembled_greatest = state.preload.greatest;
    out.clamp = state.least_clamp();
    for (auto& place : *places_) {
        out.exposures.push_back(outlook_in(*out.joint, place, *tables_));
        out.lasts = out.lasts && out.exposures.back().passes;
    }
    return out;
}

Substitution Reviewer::review(Offer offer) {
    Review review{*this, *tables_, *specified_->joint};
    review.out.offer = std::move(offer);
    review.out.specified = specified_;
    review.run();
    return std::move(review.out);
}

}  // namespace faywright
