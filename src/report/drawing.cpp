// SPDX-License-Identifier: MIT
#include "report/drawing.hpp"

#include "quantity/characters.hpp"
#include "quantity/text.hpp"

#include <algorithm>

namespace faywright {

namespace {

const Length arrow_length = mm(3), arrow_width = mm(1.1), gap = mm(1);
/// Width of a character of a plain sans serif, over its height: no text is wider than this says.
constexpr double character_width = 0.62;

Length square_root(Area area) { return boost::units::sqrt(area); }

}  // namespace

std::string dimension_text(Length length, int significant) { return print_number(in_mm(length), significant); }

Drawing::Drawing(std::string title, std::string description, double scale)
    : title_(std::move(title)), description_(std::move(description)), scale_(scale) {}

void Drawing::path(std::vector<PlanePoint> points, Pen pen, Fill fill, bool closed) {
    shapes_.emplace_back(DrawnPath{std::move(points), closed, pen, fill, layer_});
}

void Drawing::rectangle(PlanePoint a, PlanePoint b, Fill fill, Pen pen) { polygon({a, {b.x, a.y}, b, {a.x, b.y}}, fill, pen); }

void Drawing::circle(PlanePoint centre, Length radius, Pen pen, Fill fill) {
    shapes_.emplace_back(DrawnCircle{centre, radius, pen, fill, layer_});
}

void Drawing::text(PlanePoint at, std::string words, Length height, Anchor anchor, bool upwards) {
    shapes_.emplace_back(DrawnText{at, std::move(words), height, anchor, upwards, layer_});
}

void Drawing::arrow(PlanePoint from, PlanePoint to, Pen pen) {
    line(from, to, pen);
    const Length dx = to.x - from.x, dy = to.y - from.y;
    const Length length = square_root(dx * dx + dy * dy);
    if (length <= um(1)) return;
    const double ux = dx / length, uy = dy / length;
    const auto head = min(on_paper(arrow_length), length), half = 0.5 * on_paper(arrow_width);
    const PlanePoint foot{to.x - head * ux, to.y - head * uy};
    path({{foot.x - half * uy, foot.y + half * ux}, to, {foot.x + half * uy, foot.y - half * ux}}, pen);
}

void Drawing::centre_mark(PlanePoint centre, Length reach) {
    line({centre.x - reach, centre.y}, {centre.x + reach, centre.y}, Pen::centre);
    line({centre.x, centre.y - reach}, {centre.x, centre.y + reach}, Pen::centre);
}

void Drawing::dimension_x(PlanePoint a, PlanePoint b, Length y, const std::string& words) {
    const auto over = on_paper(gap);
    for (const auto& p : {a, b}) line({p.x, p.y}, {p.x, y > p.y ? y + over : y - over}, Pen::thin);
    const PlanePoint middle{0.5 * (a.x + b.x), y};
    arrow(middle, {a.x, y}, Pen::thin);
    arrow(middle, {b.x, y}, Pen::thin);
    text({middle.x, y + over}, words, text_height, Anchor::middle);
}

void Drawing::dimension_y(PlanePoint a, PlanePoint b, Length x, const std::string& words) {
    const auto over = on_paper(gap);
    for (const auto& p : {a, b}) line({p.x, p.y}, {x > p.x ? x + over : x - over, p.y}, Pen::thin);
    const PlanePoint middle{x, 0.5 * (a.y + b.y)};
    arrow(middle, {x, a.y}, Pen::thin);
    arrow(middle, {x, b.y}, Pen::thin);
    text({x - over, middle.y}, words, text_height, Anchor::middle, true);
}

void Drawing::leader(PlanePoint to, PlanePoint from, std::string words, Anchor anchor) {
    line(from, to, Pen::thin);
    circle(to, on_paper(mm(0.5)), Pen::thin);
    const Length aside = (anchor == Anchor::right ? -1.0 : 1.0) * on_paper(gap);
    text({from.x + aside, from.y - on_paper(0.35 * text_height)}, std::move(words), text_height, anchor);
}

Length width_of(std::string_view words, Length height) { return height * (character_width * static_cast<double>(display_width(words))); }

Extent extent_of(const Drawing& drawing) {
    bool first = true;
    Extent out{{mm(0), mm(0)}, {mm(0), mm(0)}};
    const auto reach = [&](PlanePoint p) {
        out.least = first ? p : PlanePoint{min(out.least.x, p.x), min(out.least.y, p.y)};
        out.greatest = first ? p : PlanePoint{max(out.greatest.x, p.x), max(out.greatest.y, p.y)};
        first = false;
    };
    for (const auto& shape : drawing.shapes()) {
        if (const auto* path = std::get_if<DrawnPath>(&shape)) {
            for (const auto& p : path->points) reach(p);
        } else if (const auto* circle = std::get_if<DrawnCircle>(&shape)) {
            reach({circle->centre.x - circle->radius, circle->centre.y - circle->radius});
            reach({circle->centre.x + circle->radius, circle->centre.y + circle->radius});
        } else {
            const auto& text = std::get<DrawnText>(shape);
            const Length height = drawing.on_paper(text.height);
            const Length width = width_of(text.words, height);
            const double before = text.anchor == Anchor::left ? 0.0 : text.anchor == Anchor::middle ? 0.5 : 1.0;
            const Length from = -before * width, to = (1.0 - before) * width;
            if (text.upwards) {
                reach({text.at.x - height, text.at.y + from});
                reach({text.at.x + 0.3 * height, text.at.y + to});
            } else {
                reach({text.at.x + from, text.at.y - 0.3 * height});
                reach({text.at.x + to, text.at.y + height});
            }
        }
    }
    return out;
}

}  // namespace faywright
