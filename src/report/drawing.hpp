// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/quantity.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

/// Drawings from a few primitives, in lengths of what is drawn, y upwards. SVG and DXF are made from the same drawing.
namespace faywright {

struct PlanePoint {
    Length x, y;
};
[[nodiscard]] inline PlanePoint operator+(PlanePoint a, PlanePoint b) { return {a.x + b.x, a.y + b.y}; }

/// A length in millimetres, without the unit: "17.5".
[[nodiscard]] std::string dimension_text(Length length, int significant = 5);

/// What a line means; how thick and how broken it is follows from that.
enum class Pen { outline, thin, hidden, centre, load, limit, least, greatest, grid };

/// What an area is made of, told by its hatching and not by its colour alone.
enum class Fill { none, steel, other_steel, aluminium, tube, layer, fastener, pale, failing };

enum class Anchor { left, middle, right };

struct DrawnPath {
    std::vector<PlanePoint> points;
    bool closed = false;
    Pen pen = Pen::outline;
    Fill fill = Fill::none;
    std::string layer;
};
struct DrawnCircle {
    PlanePoint centre;
    Length radius;
    Pen pen = Pen::outline;
    Fill fill = Fill::none;
    std::string layer;
};
struct DrawnText {
    PlanePoint at;
    std::string words;
    Length height;  ///< on the paper, whatever the scale
    Anchor anchor = Anchor::left;
    bool upwards = false;  ///< turned to read from below to above
    std::string layer;
};

/// Layers of hole drawings, as laser and plasma shops know them: what is cut and what is only told.
namespace layers {
inline constexpr std::string_view cut_outside = "CUT_OUT", cut_inside = "CUT_IN", mark = "MARK", note = "NOTE";
}

class Drawing {
public:
    using Shape = std::variant<DrawnPath, DrawnCircle, DrawnText>;

    /// `title` and `description` say in words what the picture shows. `scale`: length on paper for length drawn.
    Drawing(std::string title, std::string description, double scale);

    /// The layer of all that follows.
    void on(std::string_view layer) { layer_ = layer; }

    void path(std::vector<PlanePoint> points, Pen pen, Fill fill = Fill::none, bool closed = false);
    void line(PlanePoint a, PlanePoint b, Pen pen = Pen::thin) { path({a, b}, pen); }
    void polygon(std::vector<PlanePoint> points, Fill fill, Pen pen = Pen::outline) { path(std::move(points), pen, fill, true); }
    void rectangle(PlanePoint a, PlanePoint b, Fill fill, Pen pen = Pen::outline);
    void circle(PlanePoint centre, Length radius, Pen pen = Pen::outline, Fill fill = Fill::none);
    void text(PlanePoint at, std::string words, Length height = text_height, Anchor anchor = Anchor::left, bool upwards = false);

    /// A line with a head at its end.
    void arrow(PlanePoint from, PlanePoint to, Pen pen = Pen::load);
    /// Crossed centre lines that reach `reach` beyond the middle.
    void centre_mark(PlanePoint centre, Length reach);
    /// A dimension along x or y between two points, its line at the given y or x, the words beside it.
    void dimension_x(PlanePoint a, PlanePoint b, Length y, const std::string& words);
    void dimension_y(PlanePoint a, PlanePoint b, Length x, const std::string& words);
    /// Words at the end of a thin line that points to something.
    void leader(PlanePoint to, PlanePoint from, std::string words, Anchor anchor = Anchor::left);

    [[nodiscard]] const std::string& title() const { return title_; }
    [[nodiscard]] const std::string& description() const { return description_; }
    [[nodiscard]] double scale() const { return scale_; }
    [[nodiscard]] const std::vector<Shape>& shapes() const { return shapes_; }
    /// A length on paper as a length of what is drawn.
    [[nodiscard]] Length on_paper(Length paper) const { return paper / scale_; }

    static inline const Length text_height = mm(3.2);

private:
    std::string title_, description_, layer_;
    double scale_;
    std::vector<Shape> shapes_;
};

/// On paper; no text of this height is wider.
[[nodiscard]] Length width_of(std::string_view words, Length height);

/// The corners of all that is drawn, with room for the text.
struct Extent {
    PlanePoint least, greatest;
};
[[nodiscard]] Extent extent_of(const Drawing& drawing);

/// A whole SVG document in millimetres of paper. `id` begins every name within, so that several can stand in one page.
[[nodiscard]] std::string svg_of(const Drawing& drawing, std::string_view id);

/// DXF of release 12 in ASCII, millimetres, scale 1 : 1. Fills are left out.
[[nodiscard]] std::string dxf_of(const Drawing& drawing);

}  // namespace faywright
