// SPDX-License-Identifier: MIT
#include "assess/comparison.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <variant>

namespace faywright {

namespace {

/// "drawbar", "rail", "washer ISO 7089", "layer jointing compound, wet"; of several so called, the second is told with its number.
std::vector<std::string> part_labels(const JointFile& file) {
    struct Named {
        std::string operator()(const WasherFile& washer) const { return "washer " + washer.series; }
        std::string operator()(const LayerFile& layer) const { return "layer " + layer.material; }
        std::string operator()(const PlateFile& plate) const { return plate.name; }
        std::string operator()(const SectionFile& section) const { return section.name; }
    };
    std::map<std::string, int> seen;
    std::vector<std::string> out;
    for (const auto& part : file.parts) {
        auto name = std::visit(Named{}, part);
        const int number = ++seen[name];
        out.push_back(number == 1 ? name : fmt::format("{} ({})", name, number));
    }
    return out;
}

/// "part[2].wall" as "rail: wall", "load-case[0].force" as "load case push: force".
struct Labels {
    explicit Labels(const FileSide& side) : parts(part_labels(side.file)) {
        for (const auto& field : side.fields)
            if (field.path.starts_with("load-case[") && field.path.ends_with(".name"))
                cases[field.path.substr(0, field.path.find(']'))] = field.value;
    }

    [[nodiscard]] std::string of(const std::string& path) const {
        const auto close = path.find(']');
        if (close == std::string::npos) return path;
        const auto rest = close + 2 < path.size() ? path.substr(close + 2) : std::string();
        if (path.starts_with("part[")) {
            const auto index = static_cast<std::size_t>(std::stoul(path.substr(5)));
            if (index < parts.size()) return fmt::format("{}: {}", parts[index], rest);
        }
        if (const auto found = cases.find(path.substr(0, close)); found != cases.end())
            return fmt::format("load case {}: {}", found->second, rest);
        return path;
    }

    std::vector<std::string> parts;
    std::map<std::string, std::string> cases;
};

const WrittenField* find_labelled(const std::vector<std::pair<std::string, const WrittenField*>>& fields, const std::string& label) {
    const auto found = std::find_if(fields.begin(), fields.end(), [&](const auto& each) { return each.first == label; });
    return found == fields.end() ? nullptr : found->second;
}

std::vector<std::pair<std::string, const WrittenField*>> labelled_fields(const FileSide& side) {
    const Labels labels(side);
    std::vector<std::pair<std::string, const WrittenField*>> out;
    for (const auto& field : side.fields) out.emplace_back(labels.of(field.path), &field);
    return out;
}

const CheckResult* find_same(const Assessment& among, const CheckInfo* info, const std::string& part) {
    for (const auto& result : among.checks())
        if (result.info == info && result.outcome.applicable && part_name(*among.state.joint, result) == part) return &result;
    return nullptr;
}

}  // namespace

std::vector<ChangedField> changed_fields(const FileSide& before, const FileSide& after) {
    const auto first = labelled_fields(before), second = labelled_fields(after);
    std::vector<ChangedField> out;
    for (const auto& [label, field] : first) {
        const auto* other = find_labelled(second, label);
        if (other == nullptr)
            out.push_back({label, field->meaning, field->value, {}});
        else if (other->value != field->value)
            out.push_back({label, field->meaning, field->value, other->value});
    }
    for (const auto& [label, field] : second)
        if (find_labelled(first, label) == nullptr) out.push_back({label, field->meaning, {}, field->value});
    return out;
}

std::vector<ComparedCheck> compared_checks(const Assessment& before, const Assessment& after) {
    std::vector<ComparedCheck> out;
    for (const auto& result : after.checks()) {
        if (!result.outcome.applicable) continue;
        const auto part = part_name(*after.state.joint, result);
        out.push_back({result.info, part, find_same(before, result.info, part), &result});
    }
    for (const auto& result : before.checks()) {
        const auto part = part_name(*before.state.joint, result);
        if (result.outcome.applicable && find_same(after, result.info, part) == nullptr)
            out.push_back({result.info, part, &result, nullptr});
    }
    const auto use = [](const ComparedCheck& check) { return check.after == nullptr ? -1.0 : check.after->outcome.utilisation; };
    std::stable_sort(out.begin(), out.end(), [&](const ComparedCheck& a, const ComparedCheck& b) { return use(a) > use(b); });
    return out;
}

std::vector<ComparedLife> compared_lives(const Assessment& before, const Assessment& after) {
    std::vector<ComparedLife> out;
    for (const auto& now : after.corrosion.exposures)
        for (const auto& then : before.corrosion.exposures) {
            if (now.exposure->name != then.exposure->name) continue;
            for (const auto& member : now.members) out.push_back({now.exposure->name, member.name, then.find(member.name), &member});
            for (const auto& member : then.members)
                if (now.find(member.name) == nullptr) out.push_back({then.exposure->name, member.name, &member, nullptr});
        }
    return out;
}

}  // namespace faywright
