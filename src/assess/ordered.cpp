// SPDX-License-Identifier: MIT
#include "assess/ordered.hpp"

#include "quantity/text.hpp"

#include <fmt/format.h>

namespace faywright {

namespace {

std::string bare_size(const std::string& thread) { return thread.substr(thread.find_first_of("0123456789")); }

Ordered ordered_bolt(const Bolt& bolt) {
    // Threaded to the head: nothing of the shank is left.
    const bool full = bolt.thread_length >= bolt.length;
    return {fmt::format("{} - {} x {} - {}", full ? "ISO 4017" : "ISO 4014", bolt.thread.name, print_number(in_mm(bolt.length), 4),
                        bolt.property_class.bolt_class),
            "class " + bolt.property_class.bolt_class, bolt.finish.name, "another only after faywright substitute"};
}

Ordered ordered_nut(const Bolt& bolt) {
    return {fmt::format("ISO 4032 - {} - {}", bolt.thread.name, bolt.nut.nut_class), "class " + bolt.nut.nut_class, bolt.finish.name,
            bolt.nut_oversize > mm(0) ? "tapped oversize, marked Z or X" : ""};
}

Ordered ordered_washer(const Washer& washer, const Bolt& bolt, const char* place) {
    return {fmt::format("{} - {} - {} HV", washer.series, bare_size(bolt.thread.name), print_number(washer.hardness_hv, 3)),
            fmt::format("{} HV at least", print_number(washer.hardness_hv, 3)), bolt.finish.kind, place};
}

Ordered ordered_tube(const Assessment& a) {
    const auto& s = a.state;
    const auto& tube = s.joint->section->tube;
    const auto length = print(Value(s.tube.length), 5);
    return {fmt::format("{}, length {}", s.tube.stock->name, length), tube.material.name, tube.coating ? tube.coating->name : "bare",
            s.tube_passes_walls()
                ? fmt::format("cut within {} mm", print_number(in_mm(tube.length_tolerance), 2))
                : fmt::format("cut to its measured cavity, within {} mm", print_number(in_mm(s.tube.length_check.allowed_gap), 2))};
}

Ordered ordered_plate(const Ply& ply) {
    return {fmt::format("{}, {} thick", ply.name, print(Value(ply.thickness))), ply.material.name, ply.surface.name, ""};
}

Ordered ordered_layer(const Layer& layer) {
    return {fmt::format("{}, {} thick", layer.material.name, print(Value(layer.thickness))), layer.material.name, "",
            "covers the faying face"};
}

}  // namespace

std::vector<OrderedPiece> ordered_pieces(const Assessment& a, const Tables& tables) {
    const auto& joint = *a.state.joint;
    const TubeCut tube{a.state.tube.present ? a.state.tube.stock : nullptr, a.state.tube.length};
    std::vector<OrderedPiece> out;
    std::size_t plate = 0, layer = 0, washer = joint.bolt.head_washer ? 0 : 1;
    for (auto& piece : pieces_of(joint, tube, tables)) {
        Ordered ordered;
        if (piece.what == "bolt") ordered = ordered_bolt(joint.bolt);
        if (piece.what == "nut") ordered = ordered_nut(joint.bolt);
        if (piece.what == "washer") {
            const bool at_head = washer++ == 0;
            ordered = ordered_washer(*joint.bolt.washer(at_head), joint.bolt, at_head ? "under the head" : "under the nut");
        }
        if (piece.what == "tube") ordered = ordered_tube(a);
        if (piece.what == "plate") {
            while (joint.plies[plate].role != PlyRole::plate) ++plate;
            ordered = ordered_plate(joint.plies[plate++]);
        }
        if (piece.what == "layer") ordered = ordered_layer(joint.layers[layer++]);
        out.push_back({std::move(piece), std::move(ordered)});
    }
    return out;
}

std::string head_mark(const Bolt& bolt) { return bolt.property_class.bolt_class; }

std::string nut_mark(const Bolt& bolt) {
    const auto& nut_class = bolt.nut.nut_class;
    // A stainless nut bears its group before its class.
    if (!bolt.property_class.is_carbon() && nut_class.find('-') == std::string::npos)
        return fmt::format("{}-{}", bolt.property_class.bolt_class.substr(0, 2), nut_class);
    return bolt.nut_oversize > mm(0) ? fmt::format("{}Z or {}X", nut_class, nut_class) : nut_class;
}

}  // namespace faywright
