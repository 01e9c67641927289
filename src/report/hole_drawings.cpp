// SPDX-License-Identifier: MIT
#include "report/hole_drawings.hpp"

#include "quantity/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <set>

namespace faywright {

namespace {

/// To the micrometre of a plate of a metre.
std::string length_text(Length length) { return dimension_text(length, 6); }

/// Letters, digits and single hyphens: safe as a file name everywhere.
std::string stem_of(std::size_t number, const std::string& name) {
    std::string out = fmt::format("{}", number);
    for (const char c : name.substr(0, 60)) {
        const bool plain = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9');
        if (plain)
            out += out.ends_with('-') || out.size() > 1 ? std::string(1, c) : "-" + std::string(1, c);
        else if (!out.ends_with('-'))
            out += '-';
    }
    while (out.ends_with('-')) out.pop_back();
    return out;
}

/// Where the joint file says nothing, the drawing ends a little beyond the holes.
struct Edges {
    Length least, greatest;
    bool open_at_least = false, open_at_greatest = false;
};
Edges edges_of(Length outline_least, Length outline_greatest, Length holes_least, Length holes_greatest, Length beyond) {
    Edges out{outline_least, outline_greatest, outline_least<-far_away / 2.0, outline_greatest> far_away / 2.0};
    if (out.open_at_least) out.least = holes_least - beyond;
    if (out.open_at_greatest) out.greatest = holes_greatest + beyond;
    return out;
}

struct Pattern {
    const Joint& joint;
    const Ply& ply;
    bool passes;
    Edges x, y;

    [[nodiscard]] PlanePoint at(Length px, Length py) const { return {px - x.least, py - y.least}; }
    [[nodiscard]] bool is_closed() const { return !x.open_at_least && !x.open_at_greatest && !y.open_at_least && !y.open_at_greatest; }
};

void draw_outline(const Pattern& p, Drawing& drawing) {
    const auto corner = p.at(p.x.least, p.y.least), other = p.at(p.x.greatest, p.y.greatest);
    // A rail is sawn, and a part that runs on is cut by another drawing: its outline is told, not cut.
    const bool cut = p.is_closed() && p.ply.role == PlyRole::plate;
    drawing.on(cut ? layers::cut_outside : layers::note);
    drawing.rectangle(corner, other, Fill::none, cut ? Pen::outline : Pen::hidden);
}

void draw_holes(const Pattern& p, Drawing& drawing) {
    for (const auto& position : p.joint.positions) {
        const auto centre = p.at(position.x, position.y);
        drawing.on(layers::cut_inside);
        drawing.circle(centre, p.ply.hole_diameter / 2.0);
        drawing.on(layers::mark);
        drawing.centre_mark(centre, p.ply.hole_diameter / 2.0 + mm(3));
    }
}

/// From the corner to the first hole, from hole to hole, and to the far edge; then the whole.
void draw_dimensions(const Pattern& p, Drawing& drawing) {
    drawing.on(layers::note);
    const auto xs = p.joint.places_along(&Position::x), ys = p.joint.places_along(&Position::y);
    const auto step = drawing.on_paper(mm(8));
    const Length below = -step, left = -step;
    std::vector<Length> chain{p.x.least};
    chain.insert(chain.end(), xs.begin(), xs.end());
    chain.push_back(p.x.greatest);
    for (std::size_t i = 0; i + 1 < chain.size(); ++i) {
        const bool open = (i == 0 && p.x.open_at_least) || (i + 2 == chain.size() && p.x.open_at_greatest);
        if (!open && chain[i + 1] - chain[i] > um(1))
            drawing.dimension_x(p.at(chain[i], p.y.least), p.at(chain[i + 1], p.y.least), below, length_text(chain[i + 1] - chain[i]));
    }
    chain = {p.y.least};
    chain.insert(chain.end(), ys.begin(), ys.end());
    chain.push_back(p.y.greatest);
    for (std::size_t i = 0; i + 1 < chain.size(); ++i) {
        const bool open = (i == 0 && p.y.open_at_least) || (i + 2 == chain.size() && p.y.open_at_greatest);
        if (!open && chain[i + 1] - chain[i] > um(1))
            drawing.dimension_y(p.at(p.x.least, chain[i]), p.at(p.x.least, chain[i + 1]), left, length_text(chain[i + 1] - chain[i]));
    }
    if (!p.x.open_at_least && !p.x.open_at_greatest)
        drawing.dimension_x(p.at(p.x.least, p.y.least), p.at(p.x.greatest, p.y.least), below - step, length_text(p.x.greatest - p.x.least));
    if (!p.y.open_at_least && !p.y.open_at_greatest)
        drawing.dimension_y(p.at(p.x.least, p.y.least), p.at(p.x.least, p.y.greatest), left - step, length_text(p.y.greatest - p.y.least));
}

std::vector<std::string> notes_of(const Pattern& p) {
    const auto& ply = p.ply;
    std::vector<std::string> out;
    if (!p.passes) out.emplace_back("NOT TO BE BUILT: the joint fails its assessment, see faywright check");
    out.push_back(fmt::format("{} in \"{}\"", ply.name, p.joint.title));
    out.push_back(fmt::format("{}, {} thick; {} holes of diameter {} mm for {}", ply.material.name, print(Value(ply.thickness)),
                              p.joint.positions.size(), length_text(ply.hole_diameter),
                              ply.bearing_diameter > p.joint.bolt.thread.diameter + mm(1) ? "the tubes" : p.joint.bolt.thread.name));
    out.push_back("millimetres; origin in the lower left corner of the outline; x along the rail; seen from outside the attached part");
    std::string open;
    for (const auto& [is_open, where] : {std::pair{p.x.open_at_least, "left"}, std::pair{p.x.open_at_greatest, "right"},
                                         std::pair{p.y.open_at_least, "bottom"}, std::pair{p.y.open_at_greatest, "top"}})
        if (is_open) open += (open.empty() ? "" : ", ") + std::string(where);
    if (!open.empty()) out.push_back(fmt::format("runs on at: {}; the dashed line there is no edge", open));
    const bool fatigue =
        std::any_of(p.joint.load_cases.begin(), p.joint.load_cases.end(), [](const LoadCase& l) { return l.cycles.has_value(); });
    if (ply.role != PlyRole::plate)
        out.push_back("drill both walls in line, and ream; deburr inside as well; no swarf left in the section");
    else if (ply.is_aluminium() || fatigue)
        out.push_back("drill, or cut 3 mm under and ream to size: a pierced or punched edge is no edge for fatigue; deburr 0.2 to 0.5 mm");
    if (ply.surface.name.find("galvanised") != std::string::npos || ply.galvanised)
        out.push_back("diameters are of the finished hole, after galvanising");
    return out;
}

void draw_notes(const Pattern& p, Drawing& drawing) {
    drawing.on(layers::note);
    const auto top = p.y.greatest - p.y.least;
    const auto line = drawing.on_paper(1.6 * Drawing::text_height);
    const auto notes = notes_of(p);
    for (std::size_t i = 0; i < notes.size(); ++i) drawing.text({mm(0), top + static_cast<double>(notes.size() - i) * line}, notes[i]);
}

}  // namespace

std::vector<HoleDrawing> hole_drawings(const Assessment& assessment) {
    const auto& joint = *assessment.state.joint;
    std::vector<HoleDrawing> out;
    const auto xs = joint.places_along(&Position::x), ys = joint.places_along(&Position::y);
    for (const auto& ply : joint.plies) {
        const auto beyond = 4.0 * ply.hole_diameter;
        const auto& outline = ply.outline;
        const Pattern pattern{joint, ply, assessment.passes, edges_of(outline.x_min, outline.x_max, xs.front(), xs.back(), beyond),
                              edges_of(outline.y_min, outline.y_max, ys.front(), ys.back(), beyond)};
        Drawing drawing(fmt::format("Holes of {}", ply.name),
                        fmt::format("{} holes of diameter {} mm in {}, with their distances", joint.positions.size(),
                                    length_text(ply.hole_diameter), ply.name),
                        1.0);
        draw_outline(pattern, drawing);
        draw_holes(pattern, drawing);
        draw_dimensions(pattern, drawing);
        draw_notes(pattern, drawing);
        out.push_back({stem_of(out.size() + 1, ply.name), std::move(drawing)});
    }
    return out;
}

}  // namespace faywright
