// SPDX-License-Identifier: MIT
#include "report/drawing.hpp"
#include "report/escape.hpp"

#include <fmt/format.h>

#include <cmath>

namespace faywright {

namespace {

/// DXF, release 12: pairs of a group code and a value, a line each. Codes from memory of the format's reference.
class DxfWriter {
public:
    explicit DxfWriter(const Drawing& drawing) : drawing_(drawing) {}

    std::string written() {
        const auto extent = extent_of(drawing_);
        pair(999, dxf_text(drawing_.title() + "; lengths in mm, scale 1 : 1"));
        pair(0, "SECTION");
        pair(2, "HEADER");
        pair(9, "$ACADVER");
        pair(1, "AC1009");
        pair(9, "$EXTMIN");
        point(10, extent.least);
        pair(9, "$EXTMAX");
        point(10, extent.greatest);
        pair(0, "ENDSEC");
        tables();
        pair(0, "SECTION");
        pair(2, "ENTITIES");
        for (const auto& shape : drawing_.shapes()) std::visit([&](const auto& each) { entity(each); }, shape);
        pair(0, "ENDSEC");
        pair(0, "EOF");
        return std::move(out_);
    }

private:
    void pair(int code, std::string_view value) { out_ += fmt::format("{:>3}\n{}\n", code, value); }
    void number(int code, Length length) {
        const double rounded = std::round(in_mm(length) * 1e4) / 1e4;
        pair(code, fmt::format("{:.4f}", rounded == 0.0 ? 0.0 : rounded));
    }
    void point(int code, PlanePoint p) {
        number(code, p.x);
        number(code + 10, p.y);
    }
    void begin(const char* what, const std::string& layer) {
        pair(0, what);
        pair(8, layer.empty() ? std::string(layers::note) : layer);
    }

    void tables() {
        pair(0, "SECTION");
        pair(2, "TABLES");
        pair(0, "TABLE");
        pair(2, "LTYPE");
        pair(70, "1");
        pair(0, "LTYPE");
        pair(2, "CONTINUOUS");
        pair(70, "0");
        pair(3, "Solid line");
        pair(72, "65");
        pair(73, "0");
        pair(40, "0.0");
        pair(0, "ENDTAB");
        pair(0, "TABLE");
        pair(2, "LAYER");
        struct Layer {
            std::string_view name;
            const char* color;
        };
        static constexpr Layer known[] = {{layers::cut_outside, "1"}, {layers::cut_inside, "5"}, {layers::mark, "3"}, {layers::note, "7"}};
        pair(70, "4");
        for (const auto& layer : known) {
            pair(0, "LAYER");
            pair(2, layer.name);
            pair(70, "0");
            pair(62, layer.color);
            pair(6, "CONTINUOUS");
        }
        pair(0, "ENDTAB");
        pair(0, "ENDSEC");
    }

    void entity(const DrawnPath& path) {
        if (path.points.size() == 2 && !path.closed) {
            begin("LINE", path.layer);
            point(10, path.points[0]);
            point(11, path.points[1]);
            return;
        }
        begin("POLYLINE", path.layer);
        pair(66, "1");
        point(10, {mm(0), mm(0)});
        pair(70, path.closed ? "1" : "0");
        for (const auto& p : path.points) {
            begin("VERTEX", path.layer);
            point(10, p);
        }
        begin("SEQEND", path.layer);
    }
    void entity(const DrawnCircle& circle) {
        begin("CIRCLE", circle.layer);
        point(10, circle.centre);
        number(40, circle.radius);
    }
    void entity(const DrawnText& text) {
        const auto height = drawing_.on_paper(text.height);
        begin("TEXT", text.layer);
        point(10, text.at);
        number(40, height);
        pair(1, dxf_text(text.words));
        if (text.upwards) pair(50, "90.0");
        if (text.anchor == Anchor::left) return;
        pair(72, text.anchor == Anchor::middle ? "1" : "2");
        point(11, text.at);
    }

    const Drawing& drawing_;
    std::string out_;
};

}  // namespace

std::string dxf_of(const Drawing& drawing) { return DxfWriter(drawing).written(); }

}  // namespace faywright
