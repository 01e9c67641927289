// SPDX-License-Identifier: MIT
#include "joint/choices.hpp"
#include "joint/resolve.hpp"

namespace faywright {

const Ply* Joint::near_wall() const {
    for (const auto& ply : plies)
        if (ply.role == PlyRole::near_wall) return &ply;
    return nullptr;
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

std::optional<Joint> read_joint(const std::string& text, const std::string& file, const Tables& tables, Diagnostics& diagnostics) {
    const auto root = parse_toml(text, file, diagnostics);
    return root ? read_joint(*root, tables, diagnostics) : std::nullopt;
}

std::optional<Joint> read_joint(const Node& given, const Tables& tables, Diagnostics& diagnostics) {
    const auto before = diagnostics.count();
    std::optional<Node> without;
    if (given.find("choices") != nullptr) without.emplace(variant_of(given, {}, {}));
    const Node& root = without ? *without : given;
    JointFile written;
    std::vector<DefaultTaken> defaults;
    if (without) defaults.push_back({"choices", "left to faywright size", "passed over here"});
    read_node(root, Path{}, written, ReadContext{diagnostics, &defaults});
    if (diagnostics.count() != before) {
        report_names(written, root, tables, diagnostics);
        return std::nullopt;
    }
    auto joint = resolve(written, root, tables, std::move(defaults), diagnostics);
    if (!joint) return std::nullopt;
    check_geometry(*joint, root, diagnostics);
    if (diagnostics.count() != before) return std::nullopt;
    return joint;
}

}  // namespace faywright
