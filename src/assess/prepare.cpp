// SPDX-License-Identifier: MIT
#include "assess/state.hpp"
#include "assess/tightening_plan.hpp"

#include <span>

namespace faywright {

namespace {

constexpr std::size_t most_layers = 24;

/// What lies on the outside of the section's wall on one side, from the bolt's bearing face inwards.
struct Outside {
    std::array<ClampedLayer, most_layers> layers;
    std::size_t count = 0;

    void add(const ClampedLayer& layer) {
        if (count < most_layers) layers[count++] = layer;
    }
    [[nodiscard]] std::span<const ClampedLayer> all() const { return {layers.data(), count}; }
};

const Stress steel_modulus = GPa(210);
const Expansion steel_expansion = per_K(12e-6);

/// Diameter of the ply's metal around the bolt that has least of it.
Length metal_around(const Ply& ply, std::span<const Position> positions) {
    Length least = 2.0 * far_away;
    for (const auto& p : positions) {
        least = min(
            least, 2.0 * min(min(p.x - ply.outline.x_min, ply.outline.x_max - p.x), min(p.y - ply.outline.y_min, ply.outline.y_max - p.y)));
        for (const auto& q : positions) {
            const auto apart = squared(p.x - q.x) + squared(p.y - q.y);
            if (apart > squared(um(1)) && apart < squared(least)) least = sqrt(apart);
        }
    }
    return least;
}

ClampedLayer clamped(const State& state, const StackEntry& entry) {
    const auto& joint = *state.joint;
    switch (entry.kind) {
        case StackKind::washer: {
            const auto& washer = *joint.bolt.washer(entry.index == 0);
            return {washer.thickness, steel_modulus, washer.outside_diameter};
        }
        case StackKind::ply: {
            const auto& ply = joint.plies[static_cast<std::size_t>(entry.index)];
            return {ply.thickness, ply.material.elastic_modulus, state.metal[static_cast<std::size_t>(entry.index)]};
        }
        case StackKind::layer: {
            const auto& layer = joint.layers[static_cast<std::size_t>(entry.index)];
            return {layer.thickness, layer.material.elastic_modulus, far_away};
        }
        case StackKind::cavity: break;
    }
    return {mm(0.01), steel_modulus, far_away};
}

/// The walls of a section whose tube passes through them are not clamped: the tube's ends carry the plates.
bool is_clamped(const State& state, const StackEntry& entry) {
    if (entry.kind != StackKind::ply) return entry.kind != StackKind::cavity;
    return !(state.tube_passes_walls() && state.ply(entry.index).role != PlyRole::plate);
}

/// Splits the stack at the cavity; without one everything is on the head side.
void split(const State& state, Outside& head, Outside& nut) {
    bool beyond = false;
    for (const auto& entry : state.joint->stack) {
        if (entry.kind == StackKind::cavity)
            beyond = true;
        else if (is_clamped(state, entry))
            (beyond ? nut : head).add(clamped(state, entry));
    }
}

Length end_hole(const Joint& joint, bool at_head) {
    const auto& washer = joint.bolt.washer(at_head);
    if (washer) return washer->inside_diameter;
    return at_head ? joint.plies.front().hole_diameter : joint.plies.back().hole_diameter;
}

/// Diameter over which a bolt's head or nut presses on the metal: the washer's, as far as its thickness spreads the load.
Length pressed_diameter(const Joint& joint, bool at_head) {
    const auto& washer = joint.bolt.washer(at_head);
    const auto face = joint.bolt.bearing_diameter(at_head);
    return washer ? min(washer->outside_diameter, face + 1.6 * washer->thickness) : face;
}

Length tube_length(const Section& section) { return section.tube.length.value_or(section.inside_height()); }

template <class Steps>
void preload(State& s, Steps&& steps) {
    const auto& joint = *s.joint;
    const auto& bolt = joint.bolt;
    const auto& overrides = joint.overrides;
    steps.heading(ThreadGeometry::formula.title, ThreadGeometry::formula.source);
    s.thread = ThreadGeometry::compute({bolt.thread.diameter, bolt.thread.pitch}, steps);
    s.bearing_diameter = bolt.bearing_diameter(false);
    s.bearing_hole = end_hole(joint, false);
    if (s.bearing_hole >= s.bearing_diameter) s.bearing_hole = bolt.thread.diameter;
    s.thread_friction_low = overrides.thread_friction_low.value_or(bolt.finish.thread_friction_low);
    s.thread_friction_high = overrides.thread_friction_high.value_or(bolt.finish.thread_friction_high);
    s.head_friction_low = overrides.head_friction_low.value_or(bolt.finish.head_friction_low);
    s.head_friction_high = overrides.head_friction_high.value_or(bolt.finish.head_friction_high);
    const auto& method = joint.tightening.method;
    s.torque_chosen = !joint.tightening.torque;
    TighteningTask task{.thread = s.thread,
                        .diameter = bolt.thread.diameter,
                        .pitch = bolt.thread.pitch,
                        .bearing_diameter = s.bearing_diameter,
                        .bearing_hole = s.bearing_hole,
                        .thread_friction_low = s.thread_friction_low,
                        .thread_friction_high = s.thread_friction_high,
                        .head_friction_low = s.head_friction_low,
                        .head_friction_high = s.head_friction_high,
                        .proof_strength = bolt.property_class.proof_strength,
                        .proof_utilisation = joint.tightening.proof_utilisation,
                        .torque = joint.tightening.torque,
                        .factor = overrides.tightening_factor,
                        .by_torque = method.uses_torque,
                        .tool_scatter = method.tool_scatter,
                        .prevailing_torque = joint.tightening.prevailing_torque};
    if (!task.factor && !method.uses_torque) task.factor = method.factor_high;
    const auto plan = tightening_plan(task, steps);
    s.torque = plan.torque;
    s.preload = plan.preload;
}

template <class Steps>
void stiffness(State& s, Steps&& steps) {
    const auto& joint = *s.joint;
    const auto& bolt = joint.bolt;
    s.grip = mm(0);
    for (const auto& entry : joint.stack) s.grip += s.thickness_of(entry);
    s.shank_in_grip = min(bolt.length - bolt.thread_length, s.grip);
    steps.heading(BoltStiffness::formula.title, BoltStiffness::formula.source);
    s.bolt_resilience = BoltStiffness::compute({.nominal_diameter = bolt.thread.diameter,
                                                .root_area = s.thread.root_area,
                                                .stress_area = s.thread.stress_area,
                                                .shank_length = s.shank_in_grip,
                                                .thread_length = s.grip - s.shank_in_grip,
                                                .elastic_modulus = bolt.property_class.elastic_modulus,
                                                .nut_modulus = {}},
                                               steps)
                            .resilience;
    Outside head, nut;
    split(s, head, nut);
    const auto hole = bolt.hole_diameter;
    const auto d_head = max(bolt.bearing_diameter(true), 1.05 * hole), d_nut = max(bolt.bearing_diameter(false), 1.05 * hole);
    steps.heading(MemberStiffness::formula.title, MemberStiffness::formula.source);
    s.stiffness_note = nullptr;
    if (s.tube.present) {
        const auto d_tube = max(s.tube.stock->outside_diameter, 1.05 * hole);
        FAYWRIGHT_STATED(delta_head,
                         "washer, plates and wall between head and tube: deformation body from the head's face to the tube's end",
                         body_resilience(head.all(), d_head, d_tube, hole));
        FAYWRIGHT_STATED(L_tube, "length of the tube", s.tube.length);
        FAYWRIGHT_STATED(E_tube, "modulus of the tube", joint.section->tube.material.elastic_modulus);
        FAYWRIGHT_STATED(D_o, "outside diameter of the tube", s.tube.stock->outside_diameter);
        FAYWRIGHT_STATED(D_i, "bore of the tube", s.tube.bore);
        FAYWRIGHT_STEP(delta_tube, 4.0 * L_tube / (pi * E_tube * (squared(D_o) - squared(D_i))));
        FAYWRIGHT_STATED(delta_nut, "the same between tube and nut", body_resilience(nut.all(), d_tube, d_nut, hole));
        FAYWRIGHT_STEP(delta_P, delta_head + delta_tube + delta_nut);
        s.part_resilience = delta_P;
    } else if (s.is_open_cavity()) {
        FAYWRIGHT_STATED(delta_plies, "washers, plates and walls",
                         body_resilience(head.all(), d_head, d_head, hole) + body_resilience(nut.all(), d_nut, d_nut, hole));
        FAYWRIGHT_STATED(k_head, "bending of the wall at the head", s.walls[0].stiffness);
        FAYWRIGHT_STATED(k_nut, "bending of the wall at the nut", s.walls[1].stiffness);
        FAYWRIGHT_STEP(delta_P, delta_plies + 1.0 / k_head + 1.0 / k_nut);
        s.part_resilience = delta_P;
        s.stiffness_note = "open cavity: the walls bend, the clamp is soft";
    } else {
        for (const auto& layer : nut.all()) head.add(layer);
        FAYWRIGHT_STATED(delta_P, "all layers as one deformation body between the bearing faces",
                         body_resilience(head.all(), d_head, d_nut, hole));
        s.part_resilience = delta_P;
    }
    steps.heading(LoadFactor::formula.title, LoadFactor::formula.source);
    s.load_factor = LoadFactor::compute({.bolt_resilience = s.bolt_resilience, .part_resilience = s.part_resilience}, steps).load_factor;
    s.bolt_share = s.load_factor * joint.overrides.introduction_factor.value_or(1.0);
    s.clamp_share = 1.0 - s.load_factor * joint.overrides.introduction_factor.value_or(0.0);
}

/// Share of a bolt's in-plane force that a ply takes: one for each faying plane it touches, of all planes. Between a tube through
/// the walls and plates on one face only, the couple of the offset adds to the near wall and loads the far one.
double share_of(const State& s, int ply) {
    int touching = 0;
    for (const auto& plane : s.joint->planes) touching += plane.head_ply == ply || plane.nut_ply == ply ? 1 : 0;
    const double share = touching / static_cast<double>(s.joint->planes.size());
    if (!s.tube_passes_walls() || s.joint->planes.size() != 1 || s.ply(ply).role == PlyRole::plate) return share;
    const auto& section = *s.joint->section;
    const double offset = 0.5 * section.wall / (section.height - section.wall);
    return touching > 0 ? 1.0 + offset : offset;
}

/// The way each bolt pushes on each ply: the rail is pushed along the load, the attached part against it.
void pushes(State& s) {
    const auto& joint = *s.joint;
    const auto bolts = joint.positions.size();
    s.edges.resize(joint.plies.size() * joint.load_cases.size() * bolts);
    auto edges = s.edges.begin();
    for (std::size_t p = 0; p < joint.plies.size(); ++p) {
        const auto& ply = joint.plies[p];
        s.share[p] = share_of(s, static_cast<int>(p));
        if (s.share[p] == 0.0) {
            edges += static_cast<std::ptrdiff_t>(joint.load_cases.size() * bolts);
            continue;
        }
        const double sign = ply.side == Side::rail ? 1.0 : -1.0;
        for (int i = 0; i < static_cast<int>(joint.load_cases.size()); ++i)
            for (int b = 0; b < static_cast<int>(joint.positions.size()); ++b) {
                const auto& load = s.load(i, b);
                // The load of the case before often points the same way.
                const auto* before = i > 0 ? &s.load(i - 1, b) : nullptr;
                *edges = before != nullptr && before->along_x == load.along_x && before->along_y == load.along_y
                             ? *(edges - static_cast<std::ptrdiff_t>(bolts))
                             : edges_of(ply, joint.positions, b, sign * load.along_x, sign * load.along_y);
                ++edges;
            }
    }
}

/// Half-widths of the contact that can serve as a heel, from the pattern's centroid.
Position heel_of(const Joint& joint, const PatternInertia& pattern) {
    auto x = far_away, y = far_away;
    for (const auto& plane : joint.planes)
        for (const int index : {plane.head_ply, plane.nut_ply}) {
            const auto& o = joint.plies[static_cast<std::size_t>(index)].outline;
            x = min(x, min(pattern.centroid.x - o.x_min, o.x_max - pattern.centroid.x));
            y = min(y, min(pattern.centroid.y - o.y_min, o.y_max - pattern.centroid.y));
        }
    // Along a hollow rail the wall is soft away from the bolts: the last row with its washer is the heel. Nor is metal counted on
    // that the file gives no edge for.
    const auto washer = pressed_diameter(joint, true) / 2.0;
    auto last_x = washer, last_y = washer;
    for (const auto& p : joint.positions) {
        last_x = max(last_x, abs(p.x - pattern.centroid.x) + washer);
        last_y = max(last_y, abs(p.y - pattern.centroid.y) + washer);
    }
    if (joint.section || x > far_away / 2.0) x = min(x, last_x);
    if (y > far_away / 2.0) y = last_y;
    // Plates that stand on tubes touch nothing beyond the tubes' rims.
    if (joint.section && joint.section->tube.arrangement == TubeArrangement::through_walls && joint.section->tube.stock) {
        const auto rim = joint.section->tube.stock->outside_diameter / 2.0;
        x = min(x, last_x - washer + rim);
        y = min(y, last_y - washer + rim);
    }
    return {x, y};
}

void loads(State& s) {
    const auto& joint = *s.joint;
    const std::span<const Position> bolts = joint.positions;
    s.pattern = inertia_of(bolts);
    const auto& c = s.pattern.centroid;
    const auto heel = heel_of(joint, s.pattern);
    for (std::size_t i = 0; i < joint.load_cases.size(); ++i) {
        const auto& l = joint.load_cases[i];
        const auto dx = l.at_x - c.x, dy = l.at_y - c.y;
        const Moment M_x = l.moment_x + dy * l.force_z - l.at_z * l.force_y;
        const Moment M_y = l.moment_y + l.at_z * l.force_x - dx * l.force_z;
        const Moment M_z = l.moment_z + dx * l.force_y - dy * l.force_x;
        // A rest of rounding is no moment.
        const Moment none = Nm(1e-6);
        const auto kept = [&](Moment m) { return s.pattern.is_point() && abs(m) < none ? Nm(0) : m; };
        std::array<PlaneForce, most_bolts> shear;
        std::array<Force, most_bolts> tension;
        const bool turns = in_plane_bolt_forces(bolts, s.pattern, {l.force_x, l.force_y}, kept(M_z), std::span(shear).first(bolts.size()));
        OutOfPlaneLoad out{l.force_z, kept(M_x), kept(M_y)};
        s.turning[i] = Turning::centroid;
        if (!out_of_plane_bolt_forces(bolts, s.pattern, out, std::span(tension).first(bolts.size()))) {
            out.pivot = Pivot::heel;
            out.heel_x = heel.x;
            out.heel_y = heel.y;
            s.turning[i] = out_of_plane_bolt_forces(bolts, s.pattern, out, std::span(tension).first(bolts.size())) ? Turning::heel
                                                                                                                   : Turning::impossible;
        }
        if (!turns) s.turning[i] = Turning::impossible;
        // What swings to its opposite pulls and presses the other way round as well.
        std::array<Force, most_bolts> turned;
        const bool swings = l.swings() && s.turning[i] != Turning::impossible;
        if (swings) {
            const OutOfPlaneLoad opposite{-out.force, -out.moment_x, -out.moment_y, out.pivot, out.heel_x, out.heel_y};
            static_cast<void>(out_of_plane_bolt_forces(bolts, s.pattern, opposite, std::span(turned).first(bolts.size())));
        }
        s.most_pulled[i] = s.most_sheared[i] = 0;
        for (std::size_t b = 0; b < bolts.size(); ++b) {
            auto& load = s.loads[i * bolts.size() + b];
            load.shear = shear[b];
            load.resultant = magnitude(shear[b]);
            const bool some = load.resultant > newton(1e-6);
            load.along_x = some ? static_cast<double>(shear[b].x / load.resultant) : 1.0;
            load.along_y = some ? static_cast<double>(shear[b].y / load.resultant) : 0.0;
            load.tension = max(tension[b], newton(0));
            load.press = max(-tension[b], newton(0));
            if (swings) {
                load.tension = max(load.tension, turned[b]);
                load.press = max(load.press, -turned[b]);
            }
            const auto leads = [&](Force here, Force there) { return here > there * rounding; };
            if (leads(load.tension, s.load(static_cast<int>(i), s.most_pulled[i]).tension)) s.most_pulled[i] = static_cast<int>(b);
            if (leads(load.resultant, s.load(static_cast<int>(i), s.most_sheared[i]).resultant)) s.most_sheared[i] = static_cast<int>(b);
        }
    }
}

template <class Steps>
void clamp(State& s, Steps&& steps) {
    const auto& joint = *s.joint;
    int interfaces = -1;
    auto expansion = mm(0) * per_K(0);
    for (const auto& entry : joint.stack) {
        const bool tube_entry = entry.kind == StackKind::cavity;
        if (tube_entry ? s.tube.present : is_clamped(s, entry)) ++interfaces;
        if (entry.kind == StackKind::washer) expansion += steel_expansion * entry.thickness;
        if (entry.kind == StackKind::ply) {
            const auto& ply = s.ply(entry.index);
            const bool tube_instead = s.tube_passes_walls() && ply.role != PlyRole::plate;
            expansion += (tube_instead ? joint.section->tube.material.expansion : ply.material.expansion) * entry.thickness;
        }
        if (tube_entry)
            expansion += (s.tube.present ? joint.section->tube.material.expansion : joint.section->material.expansion) * entry.thickness;
    }
    interfaces = max(interfaces, 1);
    steps.heading(EmbeddingLoss::formula.title, EmbeddingLoss::formula.source);
    const bool given = joint.overrides.embedding.has_value();
    s.embedding_loss = EmbeddingLoss::compute({.thread_amount = given ? *joint.overrides.embedding : joint.embedding.thread,
                                               .face_amount = given ? um(0) : joint.embedding.head,
                                               .interface_amount = given ? um(0) : joint.embedding.interface,
                                               .thread_count = 1,
                                               .face_count = 2,
                                               .interface_count = interfaces,
                                               .bolt_resilience = s.bolt_resilience,
                                               .part_resilience = s.part_resilience},
                                              steps)
                           .loss;
    s.coating_creep = joint.bolt.finish.embedding_loss_fraction;
    for (const auto& plane : joint.planes)
        s.coating_creep += max(s.ply(plane.head_ply).surface.creep_loss_fraction, s.ply(plane.nut_ply).surface.creep_loss_fraction);
    s.coating_creep = min(s.coating_creep, 0.99);
    double kept = 1.0;
    for (const auto& layer : joint.layers) kept *= 1.0 - layer.material.creep_loss_fraction;
    s.layer_creep = min(1.0 - kept, 0.99);
    if (joint.overrides.creep_loss_fraction) {
        s.coating_creep = *joint.overrides.creep_loss_fraction;
        s.layer_creep = 0.0;
    }
    const auto change = [&](Temperature t, const char* when) {
        steps.heading(when, ThermalChange::formula.source);
        return ThermalChange::compute({.grip = s.grip,
                                       .bolt_expansion = joint.bolt.property_class.expansion,
                                       .part_expansion = expansion / s.grip,
                                       .bolt_change = t - joint.assembly,
                                       .part_change = t - joint.assembly,
                                       .bolt_resilience = s.bolt_resilience,
                                       .part_resilience = s.part_resilience},
                                      steps)
            .change;
    };
    s.cold_change = change(joint.coldest, "Change of preload at the coldest");
    s.hot_change = change(joint.hottest, "Change of preload at the hottest");
    Force relief = newton(0);
    s.pressed = newton(0);
    for (int i = 0; i < static_cast<int>(joint.load_cases.size()); ++i)
        for (int b = 0; b < static_cast<int>(joint.positions.size()); ++b) {
            relief = max(relief, s.factor_of(i) * s.clamp_share * s.load(i, b).tension);
            s.pressed = max(s.pressed, s.factor_of(i) * s.load(i, b).press);
        }
    // What flows on under pressure is not brought back by the wrench.
    bool retightened = joint.tightening.retighten;
    for (const auto& layer : joint.layers) retightened = retightened && layer.material.sustained_clamp;
    steps.heading(ClampLife::formula.title, ClampLife::formula.source);
    s.clamp = ClampLife::compute({.assembled_least = s.preload.least,
                                  .assembled_greatest = s.preload.greatest,
                                  .embedding_loss = s.embedding_loss,
                                  .coating_creep = s.coating_creep,
                                  .layer_creep = s.layer_creep,
                                  .retightened = retightened,
                                  .cold_change = s.cold_change,
                                  .hot_change = s.hot_change,
                                  .load_relief = relief},
                                 steps);
    // Frost or heat may come before the first service as well as after it, and before anything has settled.
    const Force fall = min(min(s.cold_change, s.hot_change), newton(0)), rise = max(max(s.cold_change, s.hot_change), newton(0));
    steps.heading("Least and greatest of life, load apart: what slip, separation, tube and pressures are checked with",
                  Source{"", "", "", Basis::practice});
    FAYWRIGHT_STATED(F_crept, "least clamp after creep, before the first service", s.clamp.crept_least);
    FAYWRIGHT_STATED(F_settled, "least clamp after the later losses", s.clamp.settled_least);
    FAYWRIGHT_STATED(dF_fall, "worst fall by temperature", fall);
    FAYWRIGHT_STATED(dF_rise, "worst rise by temperature", rise);
    FAYWRIGHT_STATED(G_0, "greatest preload assembled", s.clamp.assembled_greatest);
    FAYWRIGHT_STEP(F_least, max(min(F_crept, F_settled) + dF_fall, newton(0)));
    FAYWRIGHT_STEP(F_most, G_0 + dF_rise);
    s.settled_least = F_least;
    s.greatest = F_most;
}

/// One wall with what presses it from outside: a washer, or a plate that spans the webs and bends with it.
template <class Steps>
void wall_side(State& s, bool at_head, Steps&& steps) {
    const auto& joint = *s.joint;
    const auto& section = *joint.section;
    auto& side = s.walls[at_head ? 0 : 1];
    const Ply* plate = nullptr;
    bool beyond = false;
    Length hole = section.wall;
    for (const auto& entry : joint.stack) {
        if (entry.kind == StackKind::cavity) beyond = true;
        if (entry.kind != StackKind::ply) continue;
        const auto& ply = s.ply(entry.index);
        if (ply.role == (at_head ? PlyRole::near_wall : PlyRole::far_wall)) hole = ply.hole_diameter;
        if (ply.role == PlyRole::plate && beyond != at_head) plate = &ply;
    }
    const auto& washer = joint.bolt.washer(at_head);
    const auto face = max(joint.bolt.bearing_diameter(at_head), 1.05 * hole);
    const auto pressed = max(washer ? washer->outside_diameter : face, 1.05 * hole);
    WallBending::Inputs in{};
    in.clear_width = section.clear_width();
    in.wall_thickness = section.wall;
    in.web_thickness = section.web;
    in.inside_height = section.inside_height();
    in.hole_diameter = hole;
    in.washer_diameter = min(pressed, 0.95 * section.clear_width());
    in.head_diameter = min(face, in.washer_diameter);
    if (washer) in.washer_thickness = washer->thickness;
    in.elastic_modulus = section.material.elastic_modulus;
    in.poisson_ratio = section.material.poisson_ratio;
    in.proof_strength = joint.near_wall()->proof_strength;
    in.loading = washer && !plate ? WallLoading::elastic_washer : WallLoading::uniform;
    in.support = WallSupport::closed;
    // A plate that reaches over both webs cannot follow the wall without bending across them.
    const bool bridged = plate != nullptr && plate->outline.y_min <= section.offset_y - section.clear_width() / 2.0 &&
                         plate->outline.y_max >= section.offset_y + section.clear_width() / 2.0;
    WallBending::Inputs plate_in = in;
    if (bridged) {
        plate_in.wall_thickness = plate->thickness;
        plate_in.hole_diameter = plate->hole_diameter;
        plate_in.washer_diameter = max(plate_in.washer_diameter, 1.05 * plate->hole_diameter);
        plate_in.head_diameter = plate_in.washer_diameter;
        plate_in.elastic_modulus = plate->material.elastic_modulus;
        plate_in.poisson_ratio = plate->material.poisson_ratio;
        plate_in.proof_strength = plate->proof_strength;
        plate_in.loading = WallLoading::uniform;
        plate_in.support = WallSupport::simply_supported;
    }
    const bool same = side.worked_out && side.inputs == in && side.bridged == bridged && (!bridged || side.plate_inputs == plate_in);
    if (!same || keeps_steps<Steps>) {
        steps.heading(at_head ? "Wall at the head pressed towards the tube" : "Wall at the nut pressed towards the tube",
                      WallBending::formula.source);
        side.inputs = in;
        side.wall = WallBending::compute(in, steps);
        side.bridged = bridged;
        if (bridged) {
            steps.heading("Plate over the webs, bending with the wall", WallBending::formula.source);
            side.plate_inputs = plate_in;
            side.plate = WallBending::compute(plate_in, steps);
        }
        side.worked_out = true;
    }
    side.stiffness = bridged ? side.wall.stiffness + side.plate.stiffness : side.wall.stiffness;
    // Wall and plate move as one; whichever yields first ends the elastic closing.
    side.first_yield = bridged ? min(side.wall.first_yield_force * static_cast<double>(side.stiffness / side.wall.stiffness),
                                     side.plate.first_yield_force * static_cast<double>(side.stiffness / side.plate.stiffness))
                               : side.wall.first_yield_force;
}

void walls(State& s) {
    if (!s.joint->section) return;
    wall_side(s, true, NoSteps{});
    wall_side(s, false, NoSteps{});
    s.open_capacity = min(s.walls[0].wall.collapse_least, s.walls[1].wall.collapse_least);
}

/// The tube under this force.
template <class Steps>
TubeWall::Answer tube_under(const State& s, Force force, Steps&& steps) {
    const auto& section = *s.joint->section;
    const auto& t = s.tube;
    const Length hole = s.tube_passes_walls() ? s.joint->bolt.hole_diameter : s.joint->near_wall()->hole_diameter;
    const auto edge = section.tube.chamfer;
    steps.heading(TubeWall::formula.title, TubeWall::formula.source);
    return TubeWall::compute({.force = force,
                              .outside_diameter = t.stock->outside_diameter,
                              .wall = t.stock->wall,
                              .wall_tolerance = t.stock->wall_tolerance,
                              .length = t.length,
                              .elastic_modulus = section.tube.material.elastic_modulus,
                              .proof_strength = section.tube.material.proof_strength,
                              .poisson_ratio = section.tube.material.poisson_ratio,
                              .squareness = section.tube.squareness,
                              .contact_outside = t.stock->outside_diameter - 2.0 * edge,
                              .contact_inside = max(hole, t.bore + 2.0 * edge),
                              .permissible_pressure = s.pressure_under_tube()},
                             steps);
}

template <class Steps>
void tube_checks(State& s, Steps&& steps) {
    const auto& section = *s.joint->section;
    auto& t = s.tube;
    // A load that presses the parts together adds to the tube; all of it, where it enters at the outer plates.
    steps.heading("Greatest force on the tube", Source{"", "", "", Basis::practice});
    FAYWRIGHT_STATED(F_V_max, "greatest preload of life", s.greatest);
    FAYWRIGHT_STATED(F_p, "greatest pressing load on one bolt, with its factor", s.pressed);
    FAYWRIGHT_STEP(F_tube, F_V_max + F_p);
    t.wall = tube_under(s, F_tube, steps);
    steps.heading(TubeLength::formula.title, TubeLength::formula.source);
    FAYWRIGHT_STATED(k_1, "closing stiffness at the head's wall", s.walls[0].stiffness);
    FAYWRIGHT_STATED(k_2, "closing stiffness at the nut's wall", s.walls[1].stiffness);
    FAYWRIGHT_STEP(k_both, 2.0 / (1.0 / k_1 + 1.0 / k_2));
    steps.heading("Length, with two equal walls of k_both that close together as these two do", TubeLength::formula.source);
    t.length_check = TubeLength::compute({.inside_height = s.tube_passes_walls() ? section.height : section.inside_height(),
                                          .height_tolerance = section.height_tolerance,
                                          .tube_length = t.length,
                                          .length_tolerance = section.tube.length_tolerance,
                                          .wall_stiffness = k_both,
                                          .first_yield_force = s.walls_first_yield(),
                                          .preload_least = s.preload.least},
                                         steps);
}

void fit_tube(State& s, const Row<StockTube>& stock) {
    s.tube.present = true;
    s.tube.stock = &stock;
    s.tube.bore = stock.outside_diameter - 2.0 * stock.wall;
    s.tube.length = tube_length(*s.joint->section);
}

/// Whether the load's circle meets the tube's annulus, and the bolt's wall hole lies inside it.
bool stands_well(const State& s) {
    const auto washer = min(pressed_diameter(*s.joint, true), pressed_diameter(*s.joint, false));
    return s.tube.bore < washer;
}

void with_tube(State& s) {
    stiffness(s, NoSteps{});
    clamp(s, NoSteps{});
    tube_checks(s, NoSteps{});
}

}  // namespace

void work_out(const Joint& joint, State& s) {
    s.joint = &joint;
    s.tube.present = false;
    s.tube.fits = true;
    s.tube.chosen = false;
    for (std::size_t i = 0; i < joint.plies.size(); ++i) {
        s.metal[i] = max(metal_around(joint.plies[i], joint.positions), 1.05 * joint.plies[i].hole_diameter);
        s.views[i] = {view_along(joint.plies[i], joint.positions, true), view_along(joint.plies[i], joint.positions, false)};
    }
    preload(s, NoSteps{});
    loads(s);
    pushes(s);
    walls(s);
    const bool tubed = joint.section && joint.section->tube.arrangement != TubeArrangement::none;
    if (!tubed) {
        stiffness(s, NoSteps{});
        clamp(s, NoSteps{});
        return;
    }
    // Relief and losses need the stiffness, which needs the tube: each candidate is worked out whole.
    const auto& tube = joint.section->tube;
    if (tube.stock) {
        fit_tube(s, *tube.stock);
        with_tube(s);
        return;
    }
    s.tube.chosen = true;
    constexpr double reserve = 0.9;  // a stocked size used up to the last percent leaves nothing for a poor cut
    const auto apart = joint.least_spacing();
    const auto finds_room = [&](const Row<StockTube>& t) { return t.outside_diameter + t.outside_tolerance < apart; };
    const auto strongest = std::find_if(tube.candidates.rbegin(), tube.candidates.rend(), finds_room);
    for (const auto& candidate : tube.candidates) {
        if (!finds_room(candidate)) continue;
        fit_tube(s, candidate);
        const auto serves = [&](const TubeWall::Answer& wall) {
            return wall.yield_utilisation <= reserve && wall.pressure_utilisation <= reserve && wall.buckling_utilisation <= 1.0;
        };
        // The greatest force of life is at least the greatest preload: what does not serve under that need not be worked out.
        if (&candidate != &*strongest && !(stands_well(s) && serves(tube_under(s, s.preload.greatest, NoSteps{})))) continue;
        with_tube(s);
        if (serves(s.tube.wall) && stands_well(s)) return;
    }
    s.tube.fits = false;
}

void work_out_again(const Joint& joint, const std::optional<Force>& assembled, State& s) {
    s.joint = &joint;
    walls(s);
    preload(s, NoSteps{});
    if (assembled) s.preload = {*assembled, *assembled, *assembled, 1.0};
    if (s.arrangement() != TubeArrangement::none) {
        fit_tube(s, *joint.section->tube.stock);
        with_tube(s);
    } else {
        stiffness(s, NoSteps{});
        clamp(s, NoSteps{});
    }
}

void derive(const State& state, std::string_view topic, Recorder& steps) {
    State s = state;
    if (topic == "loads")
        for (int i = 0; i < static_cast<int>(s.joint->load_cases.size()); ++i) derive_bolt(s, i, -1, steps);
    if (topic == "preload") preload(s, steps);
    if (topic == "stiffness") stiffness(s, steps);
    if (topic == "clamp") clamp(s, steps);
    if (topic == "tube" && s.joint->section) {
        wall_side(s, true, steps);
        wall_side(s, false, steps);
        if (s.tube.present) tube_checks(s, steps);
    }
}

}  // namespace faywright
