// SPDX-License-Identifier: MIT
#include "assess/bill.hpp"

#include <fmt/format.h>

#include <cmath>

namespace faywright {

namespace {

const Density steel_density = kg_per_m3(7850);

Area hexagon(Length across_flats) { return std::sqrt(3.0) / 2.0 * squared(across_flats); }
Area circle(Length diameter) { return pi / 4.0 * squared(diameter); }

/// Calls `visit(count, mass of one, what it is, what tells it apart, what tells it apart further)`.
template <class Visit>
void each_piece(const Joint& joint, const TubeCut& tube, Visit&& visit) {
    const auto& bolt = joint.bolt;
    const auto& t = bolt.thread;
    const auto bolts = static_cast<int>(joint.positions.size());
    const std::string_view none;
    visit(bolts, steel_density * (hexagon(t.across_flats) * t.head_height + circle(t.diameter) * bolt.length), "bolt", t.name,
          bolt.property_class.bolt_class);
    visit(bolts, steel_density * ((hexagon(t.across_flats) - circle(t.diameter)) * t.nut_height), "nut", t.name, none);
    for (const bool at_head : {true, false})
        if (const auto& w = bolt.washer(at_head); w)
            visit(bolts, steel_density * ((circle(w->outside_diameter) - circle(w->inside_diameter)) * w->thickness), "washer", w->series,
                  t.name);
    if (tube.stock != nullptr) {
        const auto wall = tube.stock->wall;
        const Area ring = pi * wall * (tube.stock->outside_diameter - wall);
        visit(bolts, joint.section->tube.material.density * (ring * tube.length), "tube", tube.stock->material_group, tube.stock->name);
    }
    for (const auto& ply : joint.plies) {
        if (ply.role != PlyRole::plate) continue;
        const auto x = ply.outline.x_max - ply.outline.x_min, y = ply.outline.y_max - ply.outline.y_min;
        const bool whole = x < far_away / 2.0 && y < far_away / 2.0;
        visit(1, whole ? ply.material.density * (x * y * ply.thickness) : kg(0), "plate", word_of(ply.material.family), none);
    }
    for (const auto& layer : joint.layers) visit(1, kg(0), "layer", layer.material.name, none);
}

}  // namespace

Bill bill_of(const Joint& joint, const TubeCut& tube) {
    Bill bill;
    each_piece(joint, tube, [&bill](int count, Mass each, std::string_view, std::string_view, std::string_view) {
        bill.mass += static_cast<double>(count) * each;
        bill.pieces += count;
    });
    return bill;
}

namespace {

/// Price of one piece, by the most exact name that the table has.
std::optional<double> price_of(const Tables& tables, Mass each, std::string_view what, std::string_view first, std::string_view further) {
    for (const auto& name : {fmt::format("{} {} {}", what, first, further), fmt::format("{} {}", what, further),
                             fmt::format("{} {}", what, first), std::string(what)})
        if (const auto* row = tables.of<Price>().find(name); row != nullptr) return row->each + row->per_kilogram * in_kg(each);
    return std::nullopt;
}

}  // namespace

std::vector<Piece> pieces_of(const Joint& joint, const TubeCut& tube, const Tables& tables) {
    std::vector<Piece> out;
    each_piece(joint, tube, [&](int count, Mass each, std::string_view what, std::string_view first, std::string_view further) {
        out.push_back({std::string(what), count, each, price_of(tables, each, what, first, further)});
    });
    return out;
}

Cost cost_of(const Joint& joint, const TubeCut& tube, const Tables& tables) {
    Cost cost;
    const auto pay = [&](int count, Mass each, std::string_view what, std::string_view first, std::string_view further) {
        if (const auto price = price_of(tables, each, what, first, further))
            cost.sum += count * *price;
        else if (cost.missing.empty())
            cost.missing = fmt::format("{} {}", what, first);
    };
    each_piece(joint, tube, pay);
    pay(static_cast<int>(joint.positions.size()), kg(0), "bolting", joint.bolt.thread.name, {});
    return cost;
}

}  // namespace faywright
