// SPDX-License-Identifier: MIT
#include "assess/assessment.hpp"
#include "assess/checks_tube.hpp"

#include "quantity/text.hpp"

#include <fmt/format.h>

namespace faywright {

std::vector<std::string> warnings(const Assessment& a) {
    std::vector<std::string> out;
    const auto& s = a.state;
    const auto& joint = *s.joint;
    const auto add_once = [&out](std::string text) {
        if (std::find(out.begin(), out.end(), text) == out.end()) out.push_back(std::move(text));
    };
    for (const auto& plane : joint.planes)
        if (const char* why = checks::SlipCheck::barred(s, plane); why != nullptr)
            add_once(fmt::format("slip between {} and {} is not checked: {}; friction is a bonus that no check counts",
                                 s.ply(plane.head_ply).name, s.ply(plane.nut_ply).name, why));
    for (const auto& plane : joint.planes)
        if (plane.source.basis != Basis::published)
            add_once(fmt::format("the slip factor {} of \"{}\" stands on {}: confirm it by test before slip is relied upon",
                                 print_number(plane.slip_factor, 3), plane.words,
                                 plane.source.basis == Basis::memory ? "memory of a document" : "practice"));
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
    auto low = joint.positions.front().x, high = low;
    for (const auto& p : joint.positions) {
        low = min(low, p.x);
        high = max(high, p.x);
    }
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
        add_once(
            fmt::format("{} and {} grow {} apart over the {} between the end bolts when {}; held, that loads each end of the pattern with "
                        "up to {} (plates "
                        "free to bend), which the slip check does not count: keep the lap short, or let one end slide",
                        one.name, two.name, print(Value(growth), 2), print(Value(high - low)),
                        joint.hottest - joint.assembly >= joint.assembly - joint.coldest ? "hot" : "cold", print(Value(held), 2)));
    }
    if (joint.section) {
        for (const auto& ply : joint.plies)
            if (ply.role == PlyRole::near_wall) {
                const auto end = min(ply.outline.x_max - high, low - ply.outline.x_min);
                if (end < joint.section->clear_width())
                    add_once(fmt::format(
                        "a bolt stands {} from the rail's end, less than the {} between its webs: the wall there is up to half as stiff as "
                        "reckoned and yields sooner",
                        print(Value(end)), print(Value(joint.section->clear_width()))));
            }
        add_once(
            "the attached part's own section is not checked here, nor local buckling of the rail: only its bolts, holes and plies are");
    } else {
        add_once("the members beyond the bolts are not checked here: only the bolts, holes and plies are");
    }
    for (const auto& ply : joint.plies)
        if (const auto& source = ply.material.source_for("surface-pressure");
            source.basis != Basis::published && s.tube.present && ply.role == PlyRole::near_wall)
            add_once(fmt::format("the permissible surface pressure of {} stands on {}", ply.material.name, word(source.basis)));
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
    for (const auto& ply : joint.plies) {
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
            if (answer.openness > 1.0) {
                add_once(fmt::format(
                    "{}: the pitch is wider than the {} a thin exposed ply should have; seal the edges against water between the faces",
                    ply.name, answer.most_pitch ? print(Value(*answer.most_pitch)) : std::string("limit")));
                break;
            }
        }
    }
    // A result beyond its formula's range is told once for each check.
    for (const auto& result : a.checks())
        if (result.outcome.applicable && result.outcome.note != nullptr) {
            const auto part = part_name(joint, result);
            add_once(fmt::format("{}{}: {}", result.info->id, part.empty() ? "" : " (" + part + ")", result.outcome.note));
        }
    return out;
}

const std::vector<std::string>& cautions() {
    static const std::vector<std::string> all{
        "Design aid, not a certificate. A failed towing joint can kill: local vehicle rules and a licensed engineer decide.",
        "The torque holds for the lubrication named here. Test it on the actual batch of bolts, nuts and washers.",
        "Galvanised or plated bolts above class 10.9 are not for this use: embrittlement.",
        "Chromate compounds are poisonous; keep dust, solvents and hot work on zinc under control.",
        "Mark every bolt after tightening. Re-tighten and inspect after the first service, then as the care sheet says.",
    };
    return all;
}

}  // namespace faywright
