// SPDX-License-Identifier: MIT
#include "report/joint_pictures.hpp"

#include "quantity/text.hpp"
#include "report/chart.hpp"
#include "report/page.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace faywright {

namespace {

/// The largest usual scale at which what is drawn stays within the paper (ISO 5455, memory; 1 : 2.5 and 1 : 4 besides).
double scale_for(Length width, Length height, Length most_width, Length most_height) {
    for (const double scale : {2.0, 1.0, 0.5, 0.4, 0.25, 0.2, 0.1, 0.05, 0.02, 0.01})
        if (scale * width <= most_width && scale * height <= most_height) return scale;
    return 0.005;
}

std::string scale_text(double scale) {
    return scale >= 1.0 ? fmt::format("{} : 1", print_number(scale, 3)) : fmt::format("1 : {}", print_number(1.0 / scale, 3));
}

struct Span {
    Length from, to;

    [[nodiscard]] Length width() const { return to - from; }
    [[nodiscard]] Span common(Span other) const { return {max(from, other.from), min(to, other.to)}; }
};

/// Draws the section: across the paper runs y, from the head downwards the stack.
class SectionDrawer {
public:
    SectionDrawer(const Assessment& assessment, SectionDetail detail)
        : a_(assessment), joint_(*assessment.state.joint), detail_(detail), drawing_("", "", 1.0) {
        bolts_ = joint_.places_along(&Position::y);
        frame_ = frame();
        const auto& thread = joint_.bolt.thread;
        const Length height = joint_.grip() + thread.head_height + max(joint_.bolt.length - joint_.grip(), thread.nut_height);
        scale_ = parts_only() ? scale_for(frame_.width(), height, mm(50), mm(80)) : scale_for(frame_.width(), height, mm(75), mm(150));
        lay_out();
        drawing_ = Drawing(fmt::format("The joint across the rail, through the bolts, {}{}", scale_text(scale_),
                                       thickened_ ? "; layers are drawn thicker than they are, grip and bolt longer by as much" : ""),
                           described(), scale_);
    }

    Drawing drawn() {
        if (joint_.section) draw_section();
        for (std::size_t i = 0; i < joint_.stack.size(); ++i) draw_entry(i);
        for (const auto& y : bolts_) draw_holes(y);
        if (joint_.section && a_.state.tube.present)
            for (const auto& y : bolts_) draw_tube(y);
        for (const auto& y : bolts_) draw_bolt(y);
        label();
        if (!parts_only()) dimensions();
        return std::move(drawing_);
    }

private:
    struct Laid {
        Length top, bottom;  ///< below the head's seat
    };
    struct Label {
        PlanePoint to;
        std::string name, words;
        std::string item;  ///< its number in the parts list and what it is, in a word
    };

    [[nodiscard]] PlanePoint at(Length y, Length depth) const { return {y, -depth}; }
    [[nodiscard]] Length paper(Length length) const { return length / scale_; }
    [[nodiscard]] bool parts_only() const { return detail_ == SectionDetail::parts; }
    [[nodiscard]] Length bottom() const { return laid_.back().bottom; }

    /// All that has an end; what runs on is broken off a little beyond.
    [[nodiscard]] Span frame() const {
        const auto beyond = 2.0 * joint_.bolt.hole_diameter + joint_.bolt.thread.across_corners / 2.0;
        Span out{bolts_.front() - beyond, bolts_.back() + beyond};
        if (joint_.section) {
            const auto s = section();
            out = {min(out.from, s.from), max(out.to, s.to)};
        }
        for (const auto& ply : joint_.plies) {
            if (ply.role != PlyRole::plate) continue;
            if (ply.outline.y_min > -far_away / 2.0) out.from = min(out.from, ply.outline.y_min);
            if (ply.outline.y_max < far_away / 2.0) out.to = max(out.to, ply.outline.y_max);
        }
        return out;
    }

    [[nodiscard]] Span section() const {
        const auto& s = *joint_.section;
        return {s.offset_y - s.width / 2.0, s.offset_y + s.width / 2.0};
    }

    [[nodiscard]] Span span_of(const Ply& ply) const {
        if (ply.role != PlyRole::plate) return section();
        return Span{ply.outline.y_min, ply.outline.y_max}.common(frame_);
    }

    /// Where each entry of the stack lies; layers no thinner than can be seen.
    void lay_out() {
        Length depth = mm(0);
        for (const auto& entry : joint_.stack) {
            auto thickness = a_.state.thickness_of(entry);
            if (entry.kind == StackKind::layer && thickness < paper(mm(1))) {
                thickness = paper(mm(1));
                thickened_ = true;
            }
            laid_.push_back({depth, depth + thickness});
            depth += thickness;
        }
    }

    [[nodiscard]] std::string described() const {
        std::string parts;
        for (const auto& label : labels()) parts += fmt::format("{}{}, {}", parts.empty() ? "" : "; ", label.name, label.words);
        return fmt::format("From head to nut: {}.", parts);
    }

    void draw_section() {
        const auto s = section();
        const auto near = laid_of(PlyRole::near_wall), far = laid_of(PlyRole::far_wall);
        drawing_.rectangle(at(s.from, near.top), at(s.to, far.bottom), Fill::aluminium);
        const auto web = joint_.section->web;
        drawing_.rectangle(at(s.from + web, near.bottom), at(s.to - web, far.top), Fill::fastener);
    }

    [[nodiscard]] Laid laid_of(PlyRole role) const {
        for (std::size_t i = 0; i < joint_.stack.size(); ++i)
            if (const auto& e = joint_.stack[i]; e.kind == StackKind::ply && joint_.plies[static_cast<std::size_t>(e.index)].role == role)
                return laid_[i];
        return laid_.front();
    }

    void draw_entry(std::size_t i) {
        const auto& entry = joint_.stack[i];
        const auto [top, low] = laid_[i];
        if (entry.kind == StackKind::washer) {
            for (const auto& y : bolts_) {
                const auto half = joint_.bolt.washer(i == first_washer())->outside_diameter / 2.0;
                drawing_.rectangle(at(y - half, top), at(y + half, low), Fill::fastener);
            }
        } else if (entry.kind == StackKind::ply) {
            const auto& ply = joint_.plies[static_cast<std::size_t>(entry.index)];
            if (ply.role == PlyRole::plate) draw_plate(ply, top, low);
        } else if (entry.kind == StackKind::layer) {
            for (const auto& span : spans_of_layer(i)) drawing_.rectangle(at(span.from, top), at(span.to, low), Fill::layer, Pen::thin);
        }
    }

    /// The stack's first washer lies under the head if the bolt has one there.
    [[nodiscard]] std::size_t first_washer() const {
        if (!joint_.bolt.head_washer) return joint_.stack.size();
        for (std::size_t i = 0; i < joint_.stack.size(); ++i)
            if (joint_.stack[i].kind == StackKind::washer) return i;
        return joint_.stack.size();
    }

    void draw_plate(const Ply& ply, Length top, Length low) {
        const auto span = span_of(ply);
        const bool broken_left = ply.outline.y_min<span.from, broken_right = ply.outline.y_max> span.to;
        const auto tooth = paper(mm(1));
        const auto middle = 0.5 * (top + low);
        std::vector<PlanePoint> points{at(span.from, top), at(span.to, top)};
        if (broken_right) points.insert(points.end(), {at(span.to + tooth, top + 0.4 * (low - top)), at(span.to - tooth, middle)});
        points.push_back(at(span.to, low));
        points.push_back(at(span.from, low));
        if (broken_left) points.insert(points.end(), {at(span.from + tooth, middle), at(span.from - tooth, top + 0.4 * (low - top))});
        drawing_.polygon(points, ply.is_aluminium() ? Fill::aluminium : drawn_plates_++ % 2 == 0 ? Fill::steel : Fill::other_steel);
    }

    [[nodiscard]] std::vector<Span> spans_of_layer(std::size_t i) const {
        const auto neighbour = [&](std::size_t j) -> const Ply* {
            return j < joint_.stack.size() && joint_.stack[j].kind == StackKind::ply
                       ? &joint_.plies[static_cast<std::size_t>(joint_.stack[j].index)]
                       : nullptr;
        };
        const auto* above = i > 0 ? neighbour(i - 1) : nullptr;
        const auto* below = neighbour(i + 1);
        if (above != nullptr && below != nullptr) return {span_of(*above).common(span_of(*below))};
        // Beside a washer it is as wide as that.
        std::vector<Span> out;
        const auto& washer = joint_.bolt.washer(i < joint_.stack.size() / 2);
        const auto half = (washer ? washer->outside_diameter : joint_.bolt.bearing_diameter(i < joint_.stack.size() / 2)) / 2.0;
        for (const auto& y : bolts_) out.push_back({y - half, y + half});
        return out;
    }

    void draw_holes(Length y) {
        for (std::size_t i = 0; i < joint_.stack.size(); ++i) {
            const auto& entry = joint_.stack[i];
            const bool layer = entry.kind == StackKind::layer;
            if (!layer && entry.kind != StackKind::ply) continue;
            const auto hole = layer ? joint_.bolt.hole_diameter : joint_.plies[static_cast<std::size_t>(entry.index)].hole_diameter;
            drawing_.rectangle(at(y - hole / 2.0, laid_[i].top), at(y + hole / 2.0, laid_[i].bottom), Fill::fastener, Pen::thin);
        }
    }

    [[nodiscard]] Laid tube_laid() const {
        const auto near = laid_of(PlyRole::near_wall), far = laid_of(PlyRole::far_wall);
        return a_.state.tube_passes_walls() ? Laid{near.top, far.bottom} : Laid{near.bottom, far.top};
    }

    void draw_tube(Length y) {
        const auto outer = a_.state.tube.stock->outside_diameter / 2.0, inner = a_.state.tube.bore / 2.0;
        const auto [top, low] = tube_laid();
        drawing_.rectangle(at(y - outer, top), at(y - inner, low), Fill::tube);
        drawing_.rectangle(at(y + inner, top), at(y + outer, low), Fill::tube);
        drawing_.rectangle(at(y - inner, top), at(y + inner, low), Fill::fastener, Pen::thin);
    }

    void draw_bolt(Length y) {
        const auto& thread = joint_.bolt.thread;
        const auto radius = thread.diameter / 2.0, corner = thread.across_corners / 2.0;
        const auto end = max(bottom() + (joint_.bolt.length - joint_.grip()), bottom() + thread.nut_height);
        drawing_.rectangle(at(y - corner, -thread.head_height), at(y + corner, mm(0)), Fill::fastener);
        drawing_.rectangle(at(y - radius, mm(0)), at(y + radius, end), Fill::fastener);
        // The root of the thread is a thin line inside the crest.
        const auto root = thread.diameter / 2.0 - 0.61 * thread.pitch;
        const auto thread_top = end - min(joint_.bolt.thread_length, joint_.bolt.length);
        for (const double side : {-1.0, 1.0}) drawing_.line(at(y + side * root, thread_top), at(y + side * root, end));
        drawing_.line(at(y - radius, thread_top), at(y + radius, thread_top), Pen::outline);
        drawing_.rectangle(at(y - corner, bottom()), at(y + corner, bottom() + thread.nut_height), Fill::fastener);
        // Edges of the hexagon, seen across its corners.
        for (const auto& [from, to] : {std::pair{-thread.head_height, mm(0)}, std::pair{bottom(), bottom() + thread.nut_height}})
            for (const double side : {-0.5, 0.5}) drawing_.line(at(y + side * corner, from), at(y + side * corner, to));
        drawing_.line(at(y, -thread.head_height - paper(mm(3))), at(y, end + paper(mm(3))), Pen::centre);
    }

    /// Numbers as in the list of parts: bolt, nut, washers, tube, plates, layers.
    [[nodiscard]] std::vector<Label> labels() const {
        const auto& bolt = joint_.bolt;
        const auto right = bolts_.back();
        const int washers = (bolt.head_washer ? 1 : 0) + (bolt.nut_washer ? 1 : 0);
        const int tube_item = 3 + washers, first_plate = tube_item + (a_.state.tube.present ? 1 : 0);
        const auto plates = std::count_if(joint_.plies.begin(), joint_.plies.end(), [](const Ply& p) { return p.role == PlyRole::plate; });
        int washer_item = 3, plate_item = first_plate, layer_item = first_plate + static_cast<int>(plates);
        std::vector<Label> out;
        out.push_back({at(right + 0.7 * bolt.thread.across_corners / 2.0, -bolt.thread.head_height / 2.0),
                       fmt::format("bolt {} x {}", bolt.thread.name, dimension_text(bolt.length)),
                       fmt::format("{}, {}", bolt.property_class.bolt_class, bolt.finish.name), "1 bolt"});
        for (std::size_t i = 0; i < joint_.stack.size(); ++i) {
            const auto& entry = joint_.stack[i];
            const auto middle = 0.5 * (laid_[i].top + laid_[i].bottom);
            const auto index = static_cast<std::size_t>(entry.index);
            if (entry.kind == StackKind::washer) {
                const auto& washer = *bolt.washer(i == first_washer());
                out.push_back({at(right + 0.45 * washer.outside_diameter, middle), fmt::format("washer {}", washer.name),
                               fmt::format("{} x {}", dimension_text(washer.outside_diameter), dimension_text(washer.thickness)),
                               fmt::format("{} washer", washer_item++)});
            } else if (entry.kind == StackKind::ply) {
                const auto& ply = joint_.plies[index];
                const auto span = span_of(ply);
                const auto outermost = max(right + 0.6 * bolt.thread.across_corners, span.to - paper(mm(4)));
                out.push_back({at(min(outermost, span.to), middle), cut(ply.name, 40),
                               fmt::format("{} thick, hole {}; {}", dimension_text(ply.thickness), dimension_text(ply.hole_diameter),
                                           cut(ply.material.name, 18)),
                               ply.role == PlyRole::plate ? fmt::format("{} {}", plate_item++, cut(ply.name, 22)) : cut(ply.name, 24)});
            } else if (entry.kind == StackKind::layer) {
                const auto& layer = joint_.layers[index];
                out.push_back({at(spans_of_layer(i).back().to - paper(mm(2)), middle), layer.material.name,
                               fmt::format("{} thick", told(Value(layer.thickness))),
                               fmt::format("{} {}", layer_item++, cut(layer.material.name, 22))});
            } else if (entry.kind == StackKind::cavity && a_.state.tube.present) {
                const auto& tube = a_.state.tube;
                out.push_back({at(right + 0.5 * (tube.stock->outside_diameter / 2.0 + tube.bore / 2.0), middle),
                               fmt::format("crush tube {} x {}, {} long", dimension_text(tube.stock->outside_diameter),
                                           dimension_text(tube.stock->wall), dimension_text(tube.length)),
                               joint_.section->tube.material.name, fmt::format("{} tube", tube_item)});
            }
        }
        out.push_back(
            {at(right + 0.7 * bolt.thread.across_corners / 2.0, bottom() + bolt.thread.nut_height / 2.0), "nut", nut_text(), "2 nut"});
        return out;
    }

    [[nodiscard]] std::string nut_text() const {
        return fmt::format("class {}{}", joint_.bolt.nut.nut_class, joint_.bolt.nut_oversize > mm(0) ? ", tapped oversize" : "");
    }

    /// Labels stand in a column, none nearer to the next than two lines.
    void label() {
        auto list = labels();
        std::stable_sort(list.begin(), list.end(), [](const Label& x, const Label& y) { return x.to.y > y.to.y; });
        const auto column = frame_.to + paper(mm(9)), step = paper(parts_only() ? mm(6) : mm(10));
        std::vector<Length> places;
        places.reserve(list.size());
        for (const auto& each : list) places.push_back(places.empty() ? each.to.y : min(each.to.y, places.back() - step));
        // Pushed down too far, the column moves up as a whole.
        const auto lowest = at(mm(0), bottom() + joint_.bolt.thread.nut_height).y;
        const auto up = places.back() < lowest ? 0.5 * (lowest - places.back()) : mm(0);
        for (std::size_t i = 0; i < list.size(); ++i) {
            const PlanePoint from{column, places[i] + up};
            drawing_.leader(list[i].to, from, parts_only() ? list[i].item : cut(list[i].name, 40));
            if (!parts_only()) drawing_.text({column + paper(mm(1)), from.y - paper(mm(5.3))}, cut(list[i].words, 40));
        }
    }

    void dimensions() {
        const auto left = frame_.from - paper(mm(7));
        auto next = left;
        if (joint_.section) {
            const auto near = laid_of(PlyRole::near_wall), far = laid_of(PlyRole::far_wall);
            drawing_.dimension_y(at(section().from, far.bottom), at(section().from, near.top), next,
                                 dimension_text(joint_.section->height));
            next -= paper(mm(7));
            drawing_.dimension_x(at(section().from, far.bottom), at(section().to, far.bottom),
                                 -(bottom() + max(joint_.bolt.length - joint_.grip(), joint_.bolt.thread.nut_height) + paper(mm(9))),
                                 dimension_text(joint_.section->width));
        }
        drawing_.dimension_y(at(frame_.from, bottom()), at(frame_.from, mm(0)), next,
                             fmt::format("grip {}", dimension_text(joint_.grip())));
    }

    const Assessment& a_;
    const Joint& joint_;
    SectionDetail detail_;
    std::vector<Length> bolts_;
    Span frame_{};
    double scale_ = 1.0;
    std::vector<Laid> laid_;
    bool thickened_ = false;
    int drawn_plates_ = 0;
    Drawing drawing_;
};

/// The pattern's frame in plan, and what is common to its pictures.
struct Plan {
    const Joint& joint;
    Span x, y;
    double scale;

    explicit Plan(const Joint& j, Length most_width, Length most_height) : joint(j), x{}, y{}, scale(1.0) {
        const auto beyond = 4.0 * joint.bolt.hole_diameter;
        x = {far_away, -far_away};
        y = x;
        for (const auto& p : joint.positions) {
            x = {min(x.from, p.x - beyond), max(x.to, p.x + beyond)};
            y = {min(y.from, p.y - beyond), max(y.to, p.y + beyond)};
        }
        const auto reach = [](Length edge, Length& to, bool low) {
            if (abs(edge) < far_away / 2.0) to = low ? min(to, edge) : max(to, edge);
        };
        for (const auto& ply : joint.plies) {
            reach(ply.outline.x_min, x.from, true);
            reach(ply.outline.x_max, x.to, false);
            reach(ply.outline.y_min, y.from, true);
            reach(ply.outline.y_max, y.to, false);
        }
        scale = scale_for(x.width(), y.width(), most_width, most_height);
    }

    [[nodiscard]] Length paper(Length length) const { return length / scale; }

    /// Edges where there are any: of attached plates wide, of the rail's parts thin.
    void draw_edges(Drawing& drawing) const {
        for (const auto& ply : joint.plies) {
            if (ply.role == PlyRole::far_wall) continue;
            const auto pen = ply.role == PlyRole::plate ? Pen::outline : Pen::thin;
            const auto& o = ply.outline;
            const Span across{max(o.x_min, x.from), min(o.x_max, x.to)}, along{max(o.y_min, y.from), min(o.y_max, y.to)};
            if (o.x_min > -far_away / 2.0) drawing.line({o.x_min, along.from}, {o.x_min, along.to}, pen);
            if (o.x_max < far_away / 2.0) drawing.line({o.x_max, along.from}, {o.x_max, along.to}, pen);
            if (o.y_min > -far_away / 2.0) drawing.line({across.from, o.y_min}, {across.to, o.y_min}, pen);
            if (o.y_max < far_away / 2.0) drawing.line({across.from, o.y_max}, {across.to, o.y_max}, pen);
        }
    }

    void draw_bolt(const Position& p, Drawing& drawing) const {
        const auto hole = joint.plies.front().hole_diameter / 2.0;
        drawing.circle({p.x, p.y}, hole, Pen::thin);
        drawing.centre_mark({p.x, p.y}, hole + paper(mm(1.5)));
    }

    /// Between neighbours along an axis.
    [[nodiscard]] Length least_pitch(Length Position::*axis) const {
        const auto values = joint.places_along(axis);
        auto least = far_away;
        for (std::size_t i = 1; i < values.size(); ++i) least = min(least, values[i] - values[i - 1]);
        return least;
    }
};

}  // namespace

Drawing section_picture(const Assessment& assessment, SectionDetail detail) { return SectionDrawer(assessment, detail).drawn(); }

Drawing pattern_picture(const Assessment& assessment) {
    const auto& joint = *assessment.state.joint;
    const Plan plan(joint, mm(150), mm(110));
    const auto* result = governing_of_bolts(assessment);
    std::string title = fmt::format("The bolts in plan, seen from outside the attached part, {}", scale_text(plan.scale)),
                words = "No load case reaches a bolt.";
    std::vector<BoltUse> use;
    Force greatest = newton(0);
    if (result != nullptr) {
        use = use_of_bolts(assessment, *result);
        for (const auto& each : use) greatest = max(greatest, each.load.resultant);
        title += fmt::format("; {} in \"{}\"", result->info->id, joint.load_cases[static_cast<std::size_t>(result->where.load_case)].name);
        words = fmt::format("{} bolts; bolt {} governs {} with a utilisation of {}. The longest arrow is {} in the plane.",
                            joint.positions.size(), result->where.bolt + 1, result->info->title,
                            print_number(result->outcome.utilisation, 3), told(Value(greatest), 3));
    }
    Drawing drawing(title, words, plan.scale);
    plan.draw_edges(drawing);
    // The utilisation hangs below its bolt, the number stands above the next.
    const auto radius = joint.plies.front().hole_diameter / 2.0;
    const auto needed = mm(17.0) + 2.0 * plan.scale * radius;
    const bool room = plan.scale * plan.least_pitch(&Position::y) >= needed && plan.scale * plan.least_pitch(&Position::x) >= mm(4.5);
    for (std::size_t i = 0; i < joint.positions.size(); ++i) {
        const auto& p = joint.positions[i];
        plan.draw_bolt(p, drawing);
        drawing.text({p.x, p.y + radius + plan.paper(mm(2))}, fmt::format("{}", i + 1), Drawing::text_height, Anchor::middle);
        if (use.empty()) continue;
        const auto& load = use[i].load;
        if (load.resultant > 1e-6 * greatest) {
            const auto length = plan.paper(mm(14)) * static_cast<double>(load.resultant / greatest);
            drawing.arrow({p.x, p.y}, {p.x + length * load.along_x, p.y + length * load.along_y});
        }
        if (room)
            drawing.text({p.x + plan.paper(mm(1.2)), p.y - radius - plan.paper(mm(2.5))}, fmt::format("{:.2f}", use[i].utilisation),
                         mm(2.6), Anchor::right, true);
    }
    const auto below = plan.y.from - plan.paper(mm(6));
    if (greatest > newton(0)) {
        drawing.arrow({plan.x.from, below}, {plan.x.from + plan.paper(mm(14)), below});
        drawing.text({plan.x.from + plan.paper(mm(16)), below - plan.paper(mm(1.1))},
                     fmt::format("{} in the plane{}", told(Value(greatest), 3), room ? "; beside each bolt its utilisation" : ""));
    }
    const PlanePoint corner{plan.x.from, below - plan.paper(mm(14))};
    drawing.arrow(corner, {corner.x + plan.paper(mm(8)), corner.y}, Pen::thin);
    drawing.arrow(corner, {corner.x, corner.y + plan.paper(mm(8))}, Pen::thin);
    drawing.text({corner.x + plan.paper(mm(9)), corner.y - plan.paper(mm(1.1))}, "x, along the rail");
    drawing.text({corner.x + plan.paper(mm(2)), corner.y + plan.paper(mm(6))}, "y");
    return drawing;
}

Drawing numbers_picture(const Joint& joint) {
    const Plan plan(joint, mm(62), mm(45));
    Drawing drawing("Bolts and their numbers, seen from outside the attached part", "", plan.scale);
    plan.draw_edges(drawing);
    for (std::size_t i = 0; i < joint.positions.size(); ++i) {
        const auto& p = joint.positions[i];
        const auto radius = joint.plies.front().hole_diameter / 2.0;
        drawing.circle({p.x, p.y}, radius, Pen::thin);
        // Clear of the edges over a single row; else beside its hole or above it.
        const bool one_row = plan.least_pitch(&Position::y) > far_away / 2.0;
        const bool crowded = plan.scale * plan.least_pitch(&Position::y) < mm(7) + 2.0 * plan.scale * radius;
        const auto number = fmt::format("{}", i + 1);
        if (crowded)
            drawing.text({p.x + radius + plan.paper(mm(0.6)), p.y - plan.paper(mm(1.3))}, number, mm(3.4));
        else if (one_row)
            drawing.text({p.x, plan.y.to + plan.paper(mm(1))}, number, mm(3.8), Anchor::middle);
        else
            drawing.text({p.x, p.y + radius + plan.paper(mm(1))}, number, mm(3.8), Anchor::middle);
    }
    return drawing;
}

}  // namespace faywright
