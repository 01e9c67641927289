// SPDX-License-Identifier: MIT
#include "joint/resolve.hpp"

namespace faywright {

namespace {

struct Geometry {
    const Joint& joint;
    const Node& root;
    Diagnostics& diagnostics;

    void error(const std::string& code, const std::string& message, const std::string& path, const std::string& label = "",
               std::vector<std::pair<std::string, std::string>> others = {}, const std::string& help = "") {
        std::vector<std::pair<TextPosition, std::string>> places;
        places.reserve(others.size());
        for (const auto& [other, words] : others) places.emplace_back(place_of(root, other), words);
        diagnostics.error({code, message, place_of(root, path), label, std::move(places), help});
    }

    void holes() {
        const auto& bolt = joint.bolt;
        for (const auto& ply : joint.plies) {
            if (ply.outline.x_min >= ply.outline.x_max || ply.outline.y_min >= ply.outline.y_max) {
                error("geometry.outline", fmt::format("the outline of {} is empty", ply.name), ply.path + ".outline");
                continue;
            }
            if (ply.hole_diameter < ply.bearing_diameter)
                error("geometry.hole",
                      fmt::format("the hole of {} in {} does not pass {}", print(Value(ply.hole_diameter)), ply.name,
                                  print(Value(ply.bearing_diameter))),
                      ply.path + ".hole-diameter");
            if (ply.lever_to_web && *ply.lever_to_web < bolt.thread.across_corners / 2.0)
                error("geometry.lever",
                      fmt::format("a web {} from the bolt's axis leaves no room for a head of {} across corners",
                                  print(Value(*ply.lever_to_web)), print(Value(bolt.thread.across_corners))),
                      ply.path + ".lever-to-web");
            for (std::size_t i = 0; i < joint.positions.size(); ++i) {
                const auto& p = joint.positions[i];
                const auto r = ply.hole_diameter / 2.0;
                if (p.x - r <= ply.outline.x_min || p.x + r >= ply.outline.x_max || p.y - r <= ply.outline.y_min ||
                    p.y + r >= ply.outline.y_max) {
                    error("geometry.edge",
                          fmt::format("the hole of bolt {} at ({}, {}) runs over an edge of {}", i + 1, print(Value(p.x)),
                                      print(Value(p.y)), ply.name),
                          ply.path, "", {{"pattern", "the pattern is given here"}});
                    break;
                }
            }
        }
        for (std::size_t i = 0; i < joint.positions.size(); ++i)
            for (std::size_t j = i + 1; j < joint.positions.size(); ++j) {
                const auto apart =
                    sqrt(squared(joint.positions[i].x - joint.positions[j].x) + squared(joint.positions[i].y - joint.positions[j].y));
                auto largest = bolt.hole_diameter;
                for (const auto& ply : joint.plies) largest = max(largest, ply.hole_diameter);
                if (apart <= largest) {
                    error("geometry.overlap",
                          fmt::format("the holes of bolts {} and {} overlap: {} apart, holes of {}", i + 1, j + 1, print(Value(apart)),
                                      print(Value(largest))),
                          "pattern");
                    return;
                }
                const auto collide = [&](const char* what, Length across, const char* words) {
                    if (apart >= across) return false;
                    error("geometry.heads",
                          fmt::format("the {} of bolts {} and {} collide: {} apart, {} {}", what, i + 1, j + 1, print(Value(apart)),
                                      print(Value(across)), words),
                          "pattern");
                    return true;
                };
                if (collide("heads", bolt.thread.across_corners, "across corners")) return;
                for (const bool at_head : {true, false})
                    if (const auto& washer = bolt.washer(at_head);
                        washer && collide("washers", washer->outside_diameter, "outside diameter"))
                        return;
                if (joint.section && joint.section->tube.stock &&
                    collide("tubes", joint.section->tube.stock->outside_diameter, "outside diameter"))
                    return;
            }
    }

    void section() {
        if (!joint.section) return;
        const auto& s = *joint.section;
        const auto& tube = s.tube;
        const auto wall_hole = joint.near_wall()->hole_diameter;
        auto widest = wall_hole;
        const char* what = "hole";
        if (tube.stock) {
            const auto bore = tube.stock->outside_diameter - 2.0 * tube.stock->wall;
            // Its shank is as thick as its thread, and zinc comes on top.
            const auto zinc = 2.0 * joint.bolt.finish.coating_thickness;
            if (bore < joint.bolt.thread.diameter + zinc)
                error("geometry.tube",
                      fmt::format("the bolt of {}{} does not pass the tube's bore of {}", print(Value(joint.bolt.thread.diameter)),
                                  zinc > mm(0) ? " with its coat" : "", print(Value(bore))),
                      s.path + ".tube.stock", "", {{"bolt.size", "the bolt is given here"}});
            if (tube.stock->outside_diameter > widest) {
                widest = tube.stock->outside_diameter;
                what = "tube";
            }
            if (tube.arrangement == TubeArrangement::between_walls && tube.stock->outside_diameter - 2.0 * tube.chamfer <= wall_hole)
                error("geometry.tube",
                      fmt::format("the tube of {} falls through the wall's hole of {}", print(Value(tube.stock->outside_diameter)),
                                  print(Value(wall_hole))),
                      s.path + ".tube.stock");
        }
        for (std::size_t i = 0; i < joint.positions.size(); ++i) {
            const auto off = joint.positions[i].y - s.offset_y;
            if (abs(off) + widest / 2.0 > s.clear_width() / 2.0) {
                error("geometry.cavity",
                      fmt::format("the {} of {} at bolt {} lies outside the cavity of {} between the webs", what, print(Value(widest)),
                                  i + 1, print(Value(s.clear_width()))),
                      s.path, "", {{"pattern", "the pattern is given here"}});
                break;
            }
        }
        const auto apart = joint.least_spacing();
        if (tube.arrangement != TubeArrangement::none && !tube.stock && apart >= joint.bolt.thread.across_corners &&
            std::all_of(tube.candidates.begin(), tube.candidates.end(),
                        [&](const auto& t) { return t.outside_diameter + t.outside_tolerance >= apart; }))
            error("geometry.tube", fmt::format("no stocked tube fits between bolts {} apart", print(Value(apart))), s.path + ".tube", "",
                  {{"pattern", "the pattern is given here"}});
        if (tube.arrangement == TubeArrangement::between_walls && tube.length) {
            if (*tube.length >= s.height)
                error("geometry.tube",
                      fmt::format("a tube of {} does not go into a cavity of {} between the walls", print(Value(*tube.length)),
                                  print(Value(s.inside_height()))),
                      s.path + ".tube.length", "", {{s.path + ".height", "the section's height is given here"}});
        }
        if (tube.stock && tube.stock->wall <= 2.0 * tube.chamfer + mm(0.2))
            error("geometry.tube",
                  fmt::format("chamfers of {} leave no end of a wall of {}", print(Value(tube.chamfer)), print(Value(tube.stock->wall))),
                  s.path + ".tube.chamfer");
        if (tube.arrangement == TubeArrangement::through_walls && tube.length && *tube.length < s.height - mm(0.2) &&
            *tube.length >= s.inside_height() + s.wall)
            error("geometry.tube",
                  fmt::format("a tube of {} ends inside the walls of a section {} high: walls and tube would share the clamp in a way "
                              "nobody can tell",
                              print(Value(*tube.length)), print(Value(s.height))),
                  s.path + ".tube.length", "", {{s.path + ".height", "the section's height is given here"}}, "flush, or up to 1 mm proud");
        if (tube.arrangement == TubeArrangement::through_walls && s.height_tolerance + tube.length_tolerance > mm(0.5))
            error("geometry.tube",
                  fmt::format("the tolerances of the section, {}, and of its tube, {}, let plate and rail stand more than 1 mm apart",
                              print(Value(s.height_tolerance)), print(Value(tube.length_tolerance))),
                  s.path + ".tube.length-tolerance", "", {{s.path + ".height-tolerance", "the section's tolerance is given here"}},
                  "measure each section and cut its tube to it");
        auto layers = mm(0);
        for (const auto& layer : joint.layers) layers += layer.thickness;
        if (tube.arrangement == TubeArrangement::through_walls && tube.length && *tube.length > s.height + layers + mm(1))
            error("geometry.tube",
                  fmt::format("a tube of {} stands more than 1 mm out of a section {} high: the plates do not reach the rail",
                              print(Value(*tube.length)), print(Value(s.height))),
                  s.path + ".tube.length", "", {{s.path + ".height", "the section's height is given here"}});
        if (tube.arrangement == TubeArrangement::through_walls && tube.length && *tube.length < s.inside_height() + s.wall)
            error("geometry.tube",
                  fmt::format("a tube of {} does not reach through both walls of a section {} high", print(Value(*tube.length)),
                              print(Value(s.height))),
                  s.path + ".tube.length", "", {{s.path + ".height", "the section's height is given here"}});
    }

    void bolt() {
        const auto& b = joint.bolt;
        const auto grip = joint.grip();
        const auto does_not_fit = [&](const char* code, const std::string& message, const std::string& help) {
            error(code, message, "bolt.length", "", {{"part", "the grip follows from the parts"}}, help);
        };
        const auto longer = [&] {
            return fmt::format("at least {} is wanted: grip, nut and two pitches", print(Value(joint.least_bolt_length())));
        };
        if (b.length < grip)
            does_not_fit("geometry.grip",
                         fmt::format("the grip of {} is longer than the bolt of {}", print(Value(grip)), print(Value(b.length))), longer());
        else if (b.length < grip + b.thread.nut_height_least)
            does_not_fit("geometry.grip",
                         fmt::format("a bolt of {} ends inside its nut: the grip is {}", print(Value(b.length)), print(Value(grip))),
                         longer());
        else if (b.length - b.thread_length >= grip)
            does_not_fit(
                "geometry.thread",
                fmt::format("the thread of a {} bolt{} begins {} under the head, beyond the grip of {}: the nut runs out of thread",
                            print(Value(b.length)), b.length_chosen ? ", the shortest standard one that reaches," : "",
                            print(Value(b.length - b.thread_length)), print(Value(grip))),
                "give a bolt.length between the standard ones, fully-threaded = true, or another grip");
        for (const auto& washer : {b.head_washer, b.nut_washer})
            if (washer && washer->inside_diameter < b.thread.diameter) error("geometry.washer", "a washer does not pass the bolt", "part");
    }

    /// A single bolt turns about itself: nothing holds a moment in its plane.
    void moments() {
        if (joint.positions.size() != 1) return;
        const auto& bolt = joint.positions.front();
        for (std::size_t i = 0; i < joint.load_cases.size(); ++i) {
            const auto& l = joint.load_cases[i];
            const Moment turning = l.turning_about(bolt);
            if (abs(turning) > Nm(1e-6))
                error("geometry.moment",
                      fmt::format("load case \"{}\" turns a single bolt with {}, which it cannot take", l.name, print(Value(turning))),
                      fmt::format("load-case[{}]", i), "", {{"pattern", "the pattern is given here"}},
                      "let the force pass through the bolt, or add a bolt");
        }
    }
};

}  // namespace

void check_geometry(const Joint& joint, const Node& root, Diagnostics& diagnostics) {
    Geometry geometry{joint, root, diagnostics};
    geometry.holes();
    geometry.section();
    geometry.bolt();
    geometry.moments();
}

}  // namespace faywright
