// SPDX-License-Identifier: MIT
#include "joint/choices.hpp"
#include "joint/resolve.hpp"
#include "joint/trailer.hpp"

#include <algorithm>

namespace faywright {

const Ply* Joint::near_wall() const {
    for (const auto& ply : plies)
        if (ply.role == PlyRole::near_wall) return &ply;
    return nullptr;
}

std::vector<Length> Joint::places_along(Length Position::*axis) const {
    std::vector<Length> out;
    out.reserve(positions.size());
    for (const auto& p : positions) out.push_back(p.*axis);
    std::sort(out.begin(), out.end());
    out.erase(std::unique(out.begin(), out.end(), [](Length a, Length b) { return abs(a - b) < um(1); }), out.end());
    return out;
}

std::pair<Length, Length> Joint::ends_along_x() const {
    auto low = positions.front().x, high = low;
    for (const auto& p : positions) {
        low = min(low, p.x);
        high = max(high, p.x);
    }
    return {low, high};
}

Length Joint::rail_axis_z() const {
    // What lies between an attached plate and the section, on either side of the cavity.
    std::optional<Length> at_head, at_nut;
    bool beyond = false;
    auto between = mm(0);
    for (const auto& entry : stack) {
        const auto* ply = entry.kind == StackKind::ply ? &plies[static_cast<std::size_t>(entry.index)] : nullptr;
        if (entry.kind == StackKind::cavity) {
            beyond = true;
            between = mm(0);
        } else if (ply != nullptr && ply->role == PlyRole::near_wall) {
            if (at_head) at_head = between;
        } else if (ply != nullptr && ply->role == PlyRole::far_wall) {
            between = mm(0);
        } else if (ply != nullptr && ply->side == Side::attached) {
            if (beyond && !at_nut) at_nut = between;
            if (!beyond) at_head = between = mm(0);
        } else {
            between += entry.thickness;
        }
    }
    if (at_head.has_value() == at_nut.has_value()) return mm(0);
    return -(section->height / 2.0 + at_head.value_or(mm(0)) + at_nut.value_or(mm(0)));
}

std::vector<Position> grid_of(int rows, int columns, Length pitch_x, Length pitch_y) {
    std::vector<Position> positions;
    positions.reserve(static_cast<std::size_t>(rows) * static_cast<std::size_t>(columns));
    for (int row = 0; row < rows; ++row)
        for (int column = 0; column < columns; ++column)
            positions.push_back({pitch_x * (column - (columns - 1) / 2.0), pitch_y * (row - (rows - 1) / 2.0)});
    return positions;
}

Length Joint::least_spacing() const {
    auto least = far_away;
    for (std::size_t i = 0; i < positions.size(); ++i)
        for (std::size_t j = i + 1; j < positions.size(); ++j)
            least = min(least, sqrt(squared(positions[i].x - positions[j].x) + squared(positions[i].y - positions[j].y)));
    return least;
}

Length Joint::grip() const {
    Length total = mm(0);
    for (const auto& entry : stack) total += entry.thickness;
    return total;
}

Length Joint::least_bolt_length() const { return grip() + bolt.thread.nut_height + 2.0 * bolt.thread.pitch; }

TextPosition place_of(const Node& root, std::string path) {
    while (!path.empty()) {
        if (const Node* node = root.locate(path); node != nullptr) return node->at;
        const auto cut = path.find_last_of(".[");
        path = cut == std::string::npos ? std::string() : path.substr(0, cut);
    }
    return root.at;
}

std::optional<TakenLoads> take_loads(JointFile& file, const Node& root, const Tables& tables, const FileReader& read_file,
                                     std::vector<DefaultTaken>& defaults, Diagnostics& diagnostics) {
    const auto error = [&](const std::string& code, const std::string& message, const std::string& path, const std::string& label = "",
                           const std::string& help = "") {
        diagnostics.error({code, message, place_of(root, path), label, {}, help});
        return std::nullopt;
    };
    if (!file.loads) {
        if (!file.loads_joint) return TakenLoads{};
        return error("loads.none", "loads-joint names a joint, but loads names no trailer file", "loads-joint");
    }
    if (!read_file)
        return error("loads.unreadable", fmt::format("loads is \"{}\", but here no other file can be read", shown(*file.loads)), "loads",
                     "", "give the joint as a file, not on standard input, or copy what faywright loads prints");
    const auto text = read_file(*file.loads);
    if (!text)
        return error("loads.unreadable", fmt::format("loads is \"{}\", which cannot be read", shown(*file.loads)), "loads", "",
                     "the path starts from this file's folder");
    const auto trailer = read_trailer(text->text, text->name, tables, diagnostics);
    if (!trailer) return std::nullopt;
    std::vector<std::string> names;
    for (const auto& joint : trailer->joints) names.push_back(joint.name);
    const JointLoads* joint = nullptr;
    if (file.loads_joint) {
        joint = trailer->find(*file.loads_joint);
        if (joint == nullptr) {
            const auto label = nearest_label(*file.loads_joint, names);
            return error("name.unknown",
                         fmt::format("loads-joint is \"{}\", which \"{}\" does not have", shown(*file.loads_joint), shown(*file.loads)),
                         "loads-joint", label.empty() ? fmt::format("it has \"{}\"", fmt::join(names, "\", \"")) : label);
        }
    } else {
        if (names.size() > 1)
            return error("key.missing", fmt::format("loads-joint is missing: \"{}\" has several joints", shown(*file.loads)), "loads",
                         fmt::format("one of \"{}\"", fmt::join(names, "\", \"")));
        joint = &trailer->joints.front();
    }
    if (file.service_class != trailer->road.name) {
        diagnostics.error(
            {"loads.road",
             fmt::format("service-class is \"{}\", but the trailer runs on \"{}\"", shown(file.service_class), trailer->road.name),
             place_of(root, "service-class"),
             "",
             {{trailer->road_at, "its road"}},
             "one design factor acts on the static loads: make the two the same"});
        return std::nullopt;
    }
    std::vector<LoadCaseFile> cases;
    for (const auto& each : joint->cases) cases.push_back(each.load_case);
    const auto count = cases.size();
    cases.insert(cases.end(), std::make_move_iterator(file.load_cases.begin()), std::make_move_iterator(file.load_cases.end()));
    file.load_cases = std::move(cases);
    defaults.push_back({"loads", fmt::format("load cases from joint \"{}\" of {}", joint->name, trailer->title), fmt::format("{}", count)});
    for (const auto& taken : trailer->defaults)
        defaults.push_back({fmt::format("{}: {}", *file.loads, taken.path), taken.meaning, taken.value});
    return TakenLoads{count, trailer->warnings, trailer->own_rules, joint->lap};
}

namespace {

/// The trailer file shares a side load by where it puts the groups. A group of several bolts turns as one bolt at the root mean square
/// of their distances.
void compare_groups(const Lap& lap, Joint& joint) {
    auto ahead = squared(mm(0)), behind = squared(mm(0));
    int bolts_ahead = 0, bolts_behind = 0;
    for (const auto& p : joint.positions) {
        (p.x > mm(0) ? ahead : behind) += squared(p.x);
        ++(p.x > mm(0) ? bolts_ahead : bolts_behind);
    }
    const auto distance = [](Area squares, int bolts) { return bolts > 0 ? sqrt(squares / static_cast<double>(bolts)) : mm(0); };
    const Length before = distance(ahead, bolts_ahead), after = distance(behind, bolts_behind);
    if (abs(before - lap.front) <= mm(10) && abs(after - lap.rear) <= mm(10)) return;
    joint.load_warnings.push_back(
        fmt::format("the trailer file puts the lap's groups {} before and {} behind the joint's origin; the bolts' root mean squares are "
                    "{} and {}: a side "
                    "load is not shared as it falls on them",
                    print(Value(lap.front)), print(Value(lap.rear)), print(Value(before)), print(Value(after))));
}

}  // namespace

std::optional<Joint> read_joint(const std::string& text, const std::string& file, const Tables& tables, Diagnostics& diagnostics,
                                const FileReader& read_file) {
    const auto root = parse_toml(text, file, diagnostics);
    return root ? read_joint(*root, tables, diagnostics, read_file) : std::nullopt;
}

std::optional<WrittenJoint> read_written(const Node& root, const Tables& tables, const FileReader& read_file,
                                         std::vector<DefaultTaken> defaults, Diagnostics& diagnostics) {
    const auto before = diagnostics.count();
    WrittenJoint written;
    written.defaults = std::move(defaults);
    read_node(root, Path{}, written.file, ReadContext{diagnostics, &written.defaults});
    std::optional<TakenLoads> taken;
    if (diagnostics.count() == before) taken = take_loads(written.file, root, tables, read_file, written.defaults, diagnostics);
    written.exposures = take_exposures(
        written.file.corrosion.exposures, tables, read_file,
        [&](std::size_t i) { return place_of(root, fmt::format("corrosion.exposures[{}]", i)); }, diagnostics);
    if (!taken || diagnostics.count() != before) {
        report_names(written.file, root, tables, diagnostics);
        return std::nullopt;
    }
    written.taken = std::move(*taken);
    return written;
}

std::optional<Joint> joint_of_written(const WrittenJoint& written, const Node& root, const Tables& tables, Diagnostics& diagnostics) {
    auto joint = resolve(written.file, root, tables, written.defaults, written.taken.count, diagnostics);
    if (!joint) return std::nullopt;
    joint->load_warnings = written.taken.warnings;
    joint->own_load_rules = written.taken.own_rules;
    joint->surroundings.exposures = written.exposures;
    if (written.taken.lap) compare_groups(*written.taken.lap, *joint);
    return joint;
}

std::optional<Joint> joint_of_tree(const Node& root, const Tables& tables, const FileReader& read_file, std::vector<DefaultTaken> defaults,
                                   Diagnostics& diagnostics) {
    const auto written = read_written(root, tables, read_file, std::move(defaults), diagnostics);
    return written ? joint_of_written(*written, root, tables, diagnostics) : std::nullopt;
}

std::optional<Joint> read_joint(const Node& given, const Tables& tables, Diagnostics& diagnostics, const FileReader& read_file) {
    const auto before = diagnostics.count();
    const auto without = without_choices(given);
    std::vector<DefaultTaken> defaults;
    if (without) defaults.push_back({"choices", "left to faywright size", "passed over here"});
    const Node& root = without ? *without : given;
    auto joint = joint_of_tree(root, tables, read_file, std::move(defaults), diagnostics);
    if (!joint) return std::nullopt;
    check_geometry(*joint, root, diagnostics);
    if (diagnostics.count() != before) return std::nullopt;
    return joint;
}

}  // namespace faywright
