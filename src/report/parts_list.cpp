// SPDX-License-Identifier: MIT
#include "report/parts_list.hpp"

#include "assess/bill.hpp"
#include "quantity/text.hpp"
#include "report/layout.hpp"

#include <fmt/format.h>

#include <cmath>

namespace faywright {

namespace {

/// What a part is called where it is ordered.
struct Ordered {
    std::string designation, material, finish, note;
};

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

}  // namespace

std::string parts_list_csv(const Assessment& a, const Tables& tables, int joints) {
    const auto& joint = *a.state.joint;
    const TubeCut tube{a.state.tube.present ? a.state.tube.stock : nullptr, a.state.tube.length};
    std::string out = "item,quantity,part,designation,material,finish,mass each (kg),mass of all (kg),price each,price of all,note\n";
    std::size_t plate = 0, layer = 0, washer = joint.bolt.head_washer ? 0 : 1;
    int item = 0;
    for (const auto& piece : pieces_of(joint, tube, tables)) {
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
            if (piece.each == kg(0)) ordered.note = "runs on beyond the joint: its mass is not reckoned here";
        }
        if (piece.what == "layer") {
            const auto& each = joint.layers[layer++];
            ordered = {fmt::format("{}, {} thick", each.material.name, print(Value(each.thickness))), each.material.name, "",
                       "covers the faying face"};
        }
        const int quantity = piece.count * joints;
        const bool weighed = piece.each > kg(0);
        // What is paid is a whole number of the least coin, and the sum can be followed.
        const auto price = piece.price ? std::optional(std::round(100.0 * *piece.price) / 100.0) : std::nullopt;
        if (!a.passes) ordered.note = "NOT TO BE BUILT: the joint fails" + (ordered.note.empty() ? "" : "; " + ordered.note);
        out += fmt::format("{},{},{},{},{},{},{},{},{},{},{}\n", ++item, quantity, csv_cell(piece.what), csv_cell(ordered.designation),
                           csv_cell(ordered.material), csv_cell(ordered.finish), weighed ? print_number(in_kg(piece.each), 3) : "",
                           weighed ? print_number(quantity * in_kg(piece.each), 3) : "", price ? fmt::format("{:.2f}", *price) : "",
                           price ? fmt::format("{:.2f}", quantity * *price) : "", csv_cell(ordered.note));
    }
    return out;
}

}  // namespace faywright
