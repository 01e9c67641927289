// SPDX-License-Identifier: MIT
#pragma once

#include "assess/outcome.hpp"
#include "report/drawing.hpp"

#include <string>
#include <string_view>
#include <vector>

/// What charts share: typed values along lines on paper, their ticks, marks and words.
namespace faywright {

/// A place on an axis and its number.
struct Tick {
    double value;
    std::string label;
};

/// Numbers along a length of paper.
struct Scale {
    double least = 0.0, greatest = 1.0;
    Length from, to;
    bool decades = false;  ///< each ten times as much takes as much room
    std::vector<Tick> ticks;

    /// Where a number stands; beyond the ends it stands at the end.
    [[nodiscard]] Length at(double value) const;
};

/// From at most `least` to at least `greatest`, both on ticks; about so many steps of 1, 2 or 5.
[[nodiscard]] Scale even_scale(double least, double greatest, Length from, Length to, int steps);
/// The same by decades; `least` is above nothing.
[[nodiscard]] Scale decade_scale(double least, double greatest, Length from, Length to);

/// An axis of typed values, its numbers counted in `unit`.
template <class Q>
class Axis {
public:
    Axis(Scale scale, Q unit) : scale_(std::move(scale)), unit_(unit) {}
    static Axis even(Q least, Q greatest, Q unit, Length from, Length to, int steps = 6) {
        return {even_scale(static_cast<double>(least / unit), static_cast<double>(greatest / unit), from, to, steps), unit};
    }
    static Axis decades(Q least, Q greatest, Q unit, Length from, Length to) {
        return {decade_scale(static_cast<double>(least / unit), static_cast<double>(greatest / unit), from, to), unit};
    }

    [[nodiscard]] Length at(Q value) const { return scale_.at(static_cast<double>(value / unit_)); }
    [[nodiscard]] bool holds(Q value) const { return value >= least() && value <= greatest(); }
    [[nodiscard]] Q least() const { return scale_.least * unit_; }
    [[nodiscard]] Q greatest() const { return scale_.greatest * unit_; }
    [[nodiscard]] const Scale& scale() const { return scale_; }

private:
    Scale scale_;
    Q unit_;
};

/// Heights of words on a chart.
inline const Length chart_text = mm(2.7), tick_text = mm(2.4);

/// Ticks, numbers and words under a scale that runs to the right, at the height y; grid lines up to `top`.
void draw_scale_below(Drawing& drawing, const Scale& scale, Length y, Length top, const std::string& words);
/// The same at the left of a scale that runs upwards, at x; grid lines to `right`.
void draw_scale_left(Drawing& drawing, const Scale& scale, Length x, Length right, const std::string& words);

enum class Mark { disc, ring, square, triangle, cross };
void draw_mark(Drawing& drawing, PlanePoint at, Mark mark);

/// Text from a file, cut with ".." to so many characters.
[[nodiscard]] std::string cut(std::string_view text, std::size_t most);

/// "\"push, 1.5 m g\", bolt 8".
[[nodiscard]] std::string bolt_case(const Joint& joint, const Where& where);

/// How wide a picture may be.
inline const Length chart_width = mm(161);

/// Lines of words from `top` downwards, to the chart's width; gives the height below them.
Length draw_paragraph(Drawing& drawing, PlanePoint top, std::string_view words, Length height = chart_text);

}  // namespace faywright
