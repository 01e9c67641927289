// SPDX-License-Identifier: MIT
#include "assess/assessment.hpp"
#include "assess/checks_tube.hpp"
#include "joint/rows_of.hpp"
#include "quantity/text.hpp"

#include <fmt/format.h>

namespace faywright {

std::vector<std::pair<std::string, std::string>> overrides_of(const Joint& joint) {
    std::vector<std::pair<std::string, std::string>> list;
    OverridesFile::describe(
        [&](const Name& name, const auto& member, const auto&...) {
            using T = std::remove_cvref_t<decltype(member)>;
            if constexpr (!std::same_as<T, std::optional<std::string>>)
                if (member) list.emplace_back(name.key, fmt::format("{}: {}", print(Value(*member)), name.meaning));
        },
        joint.overrides);
    return list;
}

std::vector<std::string> own_tables_of(const Joint& joint) {
    std::vector<std::string> list;
    const auto note = [&list](const auto& row) {
        if (!row.at.file) return;
        auto text = row.as_own();
        if (std::find(list.begin(), list.end(), text) == list.end()) list.push_back(std::move(text));
    };
    each_row(joint, note);
    for (const auto& plane : joint.planes)
        if (!plane.own_table.empty())
            list.push_back(fmt::format("slip factor {} of {}: {} {} ({}), {}", print_number(plane.slip_factor, 3), plane.words,
                                       plane.source.document, plane.source.place, word(plane.source.basis), plane.own_table));
    list.insert(list.end(), joint.own_load_rules.begin(), joint.own_load_rules.end());
    return list;
}

std::vector<std::string> warnings(const Assessment& a) {
    std::vector<std::string> out;
    const auto& s = a.state;
    const auto& joint = *s.joint;
    const auto add_once = [&out](std::string text) {
        if (std::find(out.begin(), out.end(), text) == out.end()) out.push_back(std::move(text));
    };
    for (const auto& plane : joint.planes) {
        const char* why = checks::SlipCheck::barred(s, plane);
        if (why != nullptr) {
            Force most = newton(0);
            for (int i = 0; i < static_cast<int>(joint.load_cases.size()); ++i)
                for (int b = 0; b < static_cast<int>(joint.positions.size()); ++b)
                    most = max(most, s.factor_of(i) * s.load(i, b).resultant / static_cast<double>(joint.planes.size()));
            add_once(
                fmt::format("slip between {} and {} is not checked: {}. For information, friction would hold {} of the {} on the worst "
                            "bolt. Where the load turns, the joint moves to and fro in its holes and its clamp and fatigue figures are "
                            "void: use fitted bolts, or a rail above 200 MPa",
                            s.ply(plane.head_ply).name, s.ply(plane.nut_ply).name, why,
                            s.tube_passes_walls() ? std::string("nothing") : print(Value(plane.slip_factor * s.settled_least), 3),
                            print(Value(most), 3)));
        } else if (plane.source.basis != Basis::published && !joint.overrides.slip_factor) {
            add_once(fmt::format("the slip factor {} of \"{}\" stands on {}: confirm it by test before slip is relied upon",
                                 print_number(plane.slip_factor, 3), plane.words,
                                 plane.source.basis == Basis::memory ? "memory of a document" : "practice"));
        }
    }
    for (std::size_t i = 0; i < joint.load_cases.size(); ++i) {
        if (s.turning[i] == Turning::heel)
            add_once(fmt::format(
                "load case \"{}\": the bolts stand in one line and take its moment about the heel of the contact, not about their centroid",
                joint.load_cases[i].name));
        if (s.turning[i] == Turning::impossible)
            add_once(fmt::format("load case \"{}\": the pattern cannot take its moment; the joint fails", joint.load_cases[i].name));
    }
    const auto* separation = find_check(a, "separation");
    if (separation != nullptr && separation->status == Status::fail)
        add_once("the joint opens: bolt forces about the centroid and the fatigue check hold for a closed joint only");
    const auto* slip = find_check(a, "slip");
    if (slip != nullptr && slip->status == Status::fail)
        add_once("the joint slips: a joint that slips to and fro loosens, and its fatigue checks are void");
    if (!s.tube.fits) add_once("no stocked tube of the chosen material carries the clamp; the strongest that fits is shown");
    if (s.is_open_cavity()) add_once("the cavity is open: the walls cannot carry the preload; put a tube between them");
    if (s.tube.present && !s.tube_passes_walls()) {
        const auto& section = *joint.section;
        const auto& l = s.tube.length_check;
        if (section.height_tolerance > l.allowed_gap)
            add_once(
                fmt::format("the section's tolerance of +-{} alone exceeds the gap of {} that the walls allow: measure each cavity and cut "
                            "its tube to suit",
                            print(Value(section.height_tolerance)), print(Value(l.allowed_gap))));
        for (const auto& side : s.walls)
            if (side.wall.outside_range != nullptr) add_once(fmt::format("wall bending: {}", side.wall.outside_range));
        const double across = static_cast<double>(joint.bolt.thread.diameter / s.tube.bore);
        if (across < 0.8)
            add_once(fmt::format("the tube's bore of {} is loose on the bolt: centre it, for the load's line must stay in its wall",
                                 print(Value(s.tube.bore))));
    }
    // Unlike metals side by side grow apart along the lap; held, they load the end bolts.
    const auto [low, high] = joint.ends_along_x();
    for (const auto& plane : joint.planes) {
        const auto &one = s.ply(plane.head_ply), &two = s.ply(plane.nut_ply);
        const auto apart = one.material.expansion - two.material.expansion;
        const TemperatureDifference swing = max(joint.hottest - joint.assembly, joint.assembly - joint.coldest);
        const Length growth = abs(apart) * swing * (high - low);
        if (growth < mm(0.05)) continue;
        const auto stiffness_of = [&](const Ply& ply) {
            const auto& section = joint.section;
            const auto width = min(ply.outline.y_max - ply.outline.y_min, 12.0 * joint.bolt.thread.diameter);
            const Area area = ply.role == PlyRole::plate
                                  ? width * ply.thickness
                                  : 2.0 * section->width * section->wall + 2.0 * (section->height - 2.0 * section->wall) * section->web;
            return ply.material.elastic_modulus * area;
        };
        const Force held = abs(apart) * swing / (1.0 / stiffness_of(one) + 1.0 / stiffness_of(two));
        const Force friction = plane.slip_factor * s.settled_least * (static_cast<double>(joint.positions.size()) / 2.0);
        add_once(fmt::format(
            "{} and {} grow {} apart over the {} between the end bolts when {}. Held, that is up to {} at each end (plates free "
            "to bend); the friction of half the bolts is {}: {}. The slip check does not count it: keep the lap short, or "
            "let one end slide",
            one.name, two.name, print(Value(growth), 2), print(Value(high - low)),
            joint.hottest - joint.assembly >= joint.assembly - joint.coldest ? "hot" : "cold", print(Value(held), 2),
            print(Value(friction), 2),
            held > friction ? "the ends creep to and fro with the weather" : "it takes that share of the friction"));
    }
    if (joint.section) {
        const auto& rail = joint.near_wall()->outline;
        const auto end = min(rail.x_max - high, low - rail.x_min);
        if (end < joint.section->clear_width())
            add_once(fmt::format(
                "a bolt stands {} from the rail's end, less than the {} between its webs: the wall there is up to half as stiff as "
                "reckoned and yields sooner",
                print(Value(end)), print(Value(joint.section->clear_width()))));
        add_once(
            "the attached part's own section is not checked here, nor local buckling of the rail: only its bolts, holes and plies are");
    } else {
        add_once("the members beyond the bolts are not checked here: only the bolts, holes and plies are");
    }
    if (s.tube.present)
        if (const auto& metal = joint.section->material; metal.source_for("surface-pressure").basis != Basis::published)
            add_once(fmt::format("the permissible surface pressure of {} stands on {}", metal.name,
                                 word(metal.source_for("surface-pressure").basis)));
    for (const auto& plane : joint.planes)
        if (checks::SlipCheck::barred(s, plane) == nullptr && plane.slip_factor_low < plane.slip_factor) {
            const auto* slip_result = find_check(a, "slip");
            if (slip_result != nullptr && slip_result->outcome.applicable &&
                slip_result->outcome.utilisation * plane.slip_factor / max(plane.slip_factor_low, 0.01) > 1.0 &&
                slip_result->status == Status::pass)
                add_once(fmt::format("at the low end of the slip factor's band, {}, the joint would slip",
                                     print_number(plane.slip_factor_low, 3)));
        }
    if (s.preload.outside_range != nullptr) add_once(fmt::format("preload band: {}", s.preload.outside_range));
    for (const auto& layer : joint.layers)
        if (!layer.material.sustained_clamp)
            add_once(fmt::format("{} does not keep a clamp: this is no preloaded joint", layer.material.name));
    if (!joint.bolt.property_class.preloadable)
        add_once(fmt::format(
            "class {} is not among those the structural codes preload (8.8, 10.9): the clamp force here rests on the calculation alone",
            joint.bolt.property_class.bolt_class));
    std::string wide;
    for (const auto& ply : joint.plies)
        for (int bolt = 0; bolt < static_cast<int>(joint.positions.size()); ++bolt) {
            const auto e = edges_of(ply, joint.positions, bolt, 1, 0);
            const auto answer = EdgeDistance::compute({.bolt_diameter = ply.bearing_diameter,
                                                       .hole_diameter = ply.hole_diameter,
                                                       .thickness = ply.thickness,
                                                       .end_distance = mm(1),
                                                       .edge_distance = mm(1),
                                                       .pitch = e.pitch,
                                                       .gauge = e.gauge,
                                                       .method = ply.method});
            if (answer.openness > 1.0 && answer.most_pitch) {
                wide += fmt::format("{}{} {}", wide.empty() ? "" : ", ", ply.name, print(Value(*answer.most_pitch)));
                break;
            }
        }
    if (!wide.empty())
        add_once(
            fmt::format("the pitch is wider than an exposed ply should have ({}): seal the edges against water between the faces", wide));
    if (!joint.tightening.method.note.empty()) add_once(fmt::format("{}: {}", joint.tightening.method.name, joint.tightening.method.note));
    if (!joint.tightening.method.uses_torque)
        add_once(fmt::format("{} is not set by torque: the band follows from the tightening factor and the proof utilisation",
                             joint.tightening.method.name));
    for (const auto& layer : joint.layers)
        if (!layer.material.note.empty()) add_once(fmt::format("{}: {}", layer.material.name, layer.material.note));
    // A result beyond its formula's range is told once for each check.
    for (const auto& result : a.checks())
        if (result.outcome.applicable && result.outcome.note != nullptr) {
            const auto part = part_name(joint, result);
            add_once(fmt::format("{}{}: {}", result.info->id, part.empty() ? "" : " (" + part + ")", result.outcome.note));
        }
    for (const auto& warning : joint.load_warnings) add_once("trailer: " + warning);
    return out;
}

const std::vector<std::string>& cautions() {
    static const std::vector<std::string> all{
        "Design aid, not a certificate. A failed towing joint can kill: local vehicle rules and a licensed engineer decide.",
        "The torque holds for the lubrication named here. Test it on the actual batch of bolts, nuts and washers.",
        "Galvanised or plated bolts above class 10.9 are not for this use: embrittlement.",
        "Chromate compounds are poisonous; keep dust, solvents and hot work on zinc under control.",
        "Mark every bolt after tightening. Re-tighten and inspect after the first week or 100 km, then at every service.",
    };
    return all;
}

}  // namespace faywright
