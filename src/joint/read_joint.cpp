// SPDX-License-Identifier: MIT
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

Length Joint::grip() const {
    Length total = mm(0);
    for (const auto& entry : stack) total += entry.thickness;
    return total;
}

TextPosition place_of(const Node& root, std::string path) {
    while (!path.empty()) {
        if (const Node* node = root.locate(path); node != nullptr) return node->at;
        const auto cut = path.find_last_of(".[");
        path = cut == std::string::npos ? std::string() : path.substr(0, cut);
    }
    return root.at;
}

std::optional<Joint> read_joint(const std::string& text, const std::string& file, const Tables& tables, Diagnostics& diagnostics) {
    const auto before = diagnostics.count();
    const auto root = parse_toml(text, file, diagnostics);
    if (!root) return std::nullopt;
    JointFile written;
    std::vector<DefaultTaken> defaults;
    read_node(*root, Path{}, written, ReadContext{diagnostics, &defaults});
    if (diagnostics.count() != before) {
        report_names(written, *root, tables, diagnostics);
        return std::nullopt;
    }
    auto joint = resolve(written, *root, tables, std::move(defaults), diagnostics);
    if (!joint) return std::nullopt;
    check_geometry(*joint, *root, diagnostics);
    if (diagnostics.count() != before) return std::nullopt;
    return joint;
}

}  // namespace faywright
