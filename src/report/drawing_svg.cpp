// SPDX-License-Identifier: MIT
#include "report/drawing.hpp"
#include "report/escape.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace faywright {

namespace {

struct Stroke {
    double width;  ///< mm
    const char* dashes;
    const char* color;
};

/// Line types after ISO 128, memory: wide for outlines, narrow for the rest, long-dash-dot for centres, dashed for what is hidden.
Stroke stroke_of(Pen pen) {
    switch (pen) {
        case Pen::outline: return {0.5, "", "#000"};
        case Pen::thin: return {0.25, "", "#000"};
        case Pen::hidden: return {0.25, "3 1", "#000"};
        case Pen::centre: return {0.25, "6 1 1 1", "#000"};
        case Pen::load: return {0.5, "", "#8a1c00"};
        case Pen::limit: return {0.35, "2 1", "#8a1c00"};
        case Pen::least: return {0.5, "", "#003f6b"};
        case Pen::greatest: return {0.35, "4 1.5", "#003f6b"};
        case Pen::grid: return {0.15, "", "#999"};
    }
    return {0.25, "", "#000"};
}

/// Hatches tell the material in grey print too: slope, spacing and tint.
struct Hatch {
    Fill fill;
    const char* name;
    const char* tint;
    const char* lines;  ///< path within a tile of 4 mm
};
constexpr Hatch hatches[] = {
    {Fill::steel, "steel", "#fff", "M0,4L4,0M-1,1L1,-1M3,5L5,3"},
    {Fill::other_steel, "other-steel", "#fff", "M0,0L4,4M-1,3L1,5M3,-1L5,1"},
    {Fill::aluminium, "aluminium", "#eef2f5", "M0,4L4,0M-1,1L1,-1M3,5L5,3M0,2L2,0M2,4L4,2"},
    {Fill::tube, "tube", "#fff", "M0,0L4,4M-1,3L1,5M3,-1L5,1M0,2L2,4M2,0L4,2"},
    {Fill::failing, "failing", "#f6ded8", "M0,0L4,4M-1,3L1,5M3,-1L5,1M0,4L4,0M-1,1L1,-1M3,5L5,3"},
};

std::string fill_of(Fill fill, std::string_view id) {
    for (const auto& hatch : hatches)
        if (hatch.fill == fill) return fmt::format("url(#{}-{})", id, hatch.name);
    switch (fill) {
        case Fill::layer: return "#333";
        case Fill::fastener: return "#fff";
        case Fill::pale: return "#dbe6ee";
        default: return "none";
    }
}

/// Millimetres of paper, a micrometre's place at most, and never "-0". Digits are set by hand: a page has thousands of them.
std::string number(double mm_of_paper) {
    const auto micrometres = std::llround(mm_of_paper * 1000.0);
    const auto size = std::abs(micrometres);
    std::string out = micrometres < 0 ? "-" : "";
    out += fmt::format_int(size / 1000).c_str();
    if (const auto rest = size % 1000; rest != 0) {
        out += '.';
        for (auto left = rest, place = 100LL; left != 0; left %= place, place /= 10) out += static_cast<char>('0' + left / place);
    }
    return out;
}

class SvgWriter {
public:
    SvgWriter(const Drawing& drawing, std::string_view id) : drawing_(drawing), id_(id), extent_(extent_of(drawing)) {}

    std::string written() {
        constexpr double border = 2.0;
        const double width = paper(extent_.greatest.x - extent_.least.x) + 2.0 * border;
        const double height = paper(extent_.greatest.y - extent_.least.y) + 2.0 * border;
        std::string out = fmt::format(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{0}mm\" height=\"{1}mm\" viewBox=\"{2} {2} {0} {1}\" role=\"img\" "
            "aria-labelledby=\"{3}-title {3}-desc\" font-family=\"sans-serif\" fill=\"none\" stroke-linejoin=\"round\">\n",
            number(width), number(height), number(-border), id_);
        out += fmt::format("<title id=\"{0}-title\">{1}</title>\n<desc id=\"{0}-desc\">{2}</desc>\n", id_, markup_text(drawing_.title()),
                           markup_text(drawing_.description()));
        out += patterns();
        for (const auto& shape : drawing_.shapes()) std::visit([&](const auto& each) { out += written(each); }, shape);
        out += "</svg>\n";
        return out;
    }

private:
    double paper(Length length) const { return in_mm(length) * drawing_.scale(); }
    std::string x(Length at) const { return number(paper(at - extent_.least.x)); }
    std::string y(Length at) const { return number(paper(extent_.greatest.y - at)); }

    bool uses(Fill fill) const {
        return std::any_of(drawing_.shapes().begin(), drawing_.shapes().end(), [&](const auto& shape) {
            const auto* path = std::get_if<DrawnPath>(&shape);
            const auto* circle = std::get_if<DrawnCircle>(&shape);
            return (path != nullptr && path->fill == fill) || (circle != nullptr && circle->fill == fill);
        });
    }

    std::string patterns() const {
        std::string out;
        for (const auto& hatch : hatches)
            if (uses(hatch.fill))
                out += fmt::format(
                    "<pattern id=\"{}-{}\" width=\"4\" height=\"4\" patternUnits=\"userSpaceOnUse\"><path fill=\"{}\" d=\"M0,0H4V4H0Z\"/>"
                    "<path stroke=\"#000\" stroke-width=\"0.2\" d=\"{}\"/></pattern>\n",
                    id_, hatch.name, hatch.tint, hatch.lines);
        return out.empty() ? out : "<defs>\n" + out + "</defs>\n";
    }

    static std::string stroke(Pen pen) {
        const auto s = stroke_of(pen);
        return fmt::format("stroke=\"{}\" stroke-width=\"{}\"{}", s.color, s.width,
                           *s.dashes != '\0' ? fmt::format(" stroke-dasharray=\"{}\"", s.dashes) : "");
    }
    std::string filled(Fill fill) const { return fill == Fill::none ? "" : fmt::format(" fill=\"{}\"", fill_of(fill, id_)); }

    std::string written(const DrawnPath& path) const {
        std::string d;
        for (const auto& p : path.points) d += fmt::format("{}{},{}", d.empty() ? "M" : "L", x(p.x), y(p.y));
        return fmt::format("<path d=\"{}{}\" {}{}/>\n", d, path.closed ? "Z" : "", stroke(path.pen), filled(path.fill));
    }
    std::string written(const DrawnCircle& circle) const {
        return fmt::format("<circle cx=\"{}\" cy=\"{}\" r=\"{}\" {}{}/>\n", x(circle.centre.x), y(circle.centre.y),
                           number(paper(circle.radius)), stroke(circle.pen), filled(circle.fill));
    }
    std::string written(const DrawnText& text) const {
        const char* anchor = text.anchor == Anchor::left ? "start" : text.anchor == Anchor::middle ? "middle" : "end";
        const auto turned = text.upwards ? fmt::format(" transform=\"rotate(-90 {} {})\"", x(text.at.x), y(text.at.y)) : std::string();
        return fmt::format("<text x=\"{}\" y=\"{}\" font-size=\"{}\" text-anchor=\"{}\" fill=\"#000\"{}>{}</text>\n", x(text.at.x),
                           y(text.at.y), number(in_mm(text.height)), anchor, turned, markup_text(text.words));
    }

    const Drawing& drawing_;
    std::string id_;
    Extent extent_;
};

}  // namespace

std::string svg_of(const Drawing& drawing, std::string_view id) { return SvgWriter(drawing, id).written(); }

}  // namespace faywright
