// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <cmath>

namespace faywright {

/// Stress of a rectangular hollow section at a line of bolts: axial force and bending about both axes, on the section less its holes.
///
/// Two walls carry the holes (across the width), two webs do not. Elastic beam theory, extreme fibres, stresses added by
/// size whatever their sign: safe for loads that reverse. Corner radii are left out. Holes that do not lie alike about the
/// middle shift the centroid.
struct HollowSection {
    static constexpr Formula formula{.name = "hollow-section",
                                     .title = "Stress of a hollow section at a line of bolts",
                                     .range = "thin rectangular section, one line of bolts or more through both walls; no local buckling",
                                     .source = {"elastic beam theory on the net section", "", "", Basis::practice}};

    struct Inputs {
        Length width, height, wall, web;
        Length hole_diameter;
        double holes = 1.0;
        Length hole_offset = mm(0), hole_shift = mm(0);
        Force axial = newton(0);
        Moment bending_y = Nm(0), bending_z = Nm(0);

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            const Range moment{kNm(0), kNm(100000)};
            field(Name{"width", "b", "outside width, of the walls"}, self.width, Range{mm(5), mm(2000)});
            field(Name{"height", "h", "outside height, of the webs"}, self.height, Range{mm(5), mm(2000)});
            field(Name{"wall", "t", "thickness of the walls with the holes"}, self.wall, Range{mm(0.5), mm(100)});
            field(Name{"web", "t_w", "thickness of the webs"}, self.web, Range{mm(0.5), mm(100)});
            field(Name{"hole-diameter", "d_0", "hole"}, self.hole_diameter, Range{mm(1), mm(300)});
            field(Name{"holes", "n_h", "holes side by side in each wall"}, self.holes, Range{0.0, 20.0}, defaulted);
            field(Name{"hole-offset", "e", "root mean square of the holes' distances from the middle of the wall"}, self.hole_offset,
                  Range{mm(0), mm(1000)}, defaulted);
            field(Name{"hole-shift", "m", "mean of the same distances, each with its sign; by size"}, self.hole_shift,
                  Range{mm(0), mm(1000)}, defaulted);
            field(Name{"axial", "N", "axial force, by size"}, self.axial, Range{kN(0), kN(100000)}, defaulted);
            field(Name{"bending-y", "M_y", "moment that bends the walls apart (about the width), by size"}, self.bending_y, moment,
                  defaulted);
            field(Name{"bending-z", "M_z", "moment about the height, by size"}, self.bending_z, moment, defaulted);
        }
    };

    struct Answer {
        Area net_area;
        SecondMoment second_moment_y, second_moment_z;
        Stress stress;
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"net-area", "A_n", "net area"}, self.net_area);
            field(Name{"second-moment-y", "I_y", "net second moment about the width"}, self.second_moment_y);
            field(Name{"second-moment-z", "I_z", "net second moment about the height"}, self.second_moment_z);
            field(Name{"stress", "sigma", "greatest stress"}, self.stress);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (2.0 * in.web >= in.width || 2.0 * in.wall >= in.height) return "the walls leave no cavity";
        if (in.holes * in.hole_diameter >= in.width - 2.0 * in.web) return "the holes take up the whole wall";
        if (in.hole_offset + in.hole_diameter / 2.0 > in.width / 2.0 - in.web) return "the holes lie in the webs";
        if (in.hole_shift > in.hole_offset * (1.0 + 1e-9)) return "the mean of the distances is no more than their root mean square";
        if (in.hole_offset < least_offset(in.holes, in.hole_diameter) * (1.0 - 1e-9))
            return "holes side by side cannot lie nearer the middle than beside one another";
        return nullptr;
    }

    /// Of holes that touch one another.
    static Length least_offset(double holes, Length diameter) {
        return holes > 1.0 ? diameter * std::sqrt((holes * holes - 1.0) / 12.0) : mm(0);
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [b, h, t, t_w, d_0, n_h, e, m, N, M_y, M_z] = in;
        FAYWRIGHT_STEP(A_n, 2.0 * b * t + 2.0 * (h - 2.0 * t) * t_w - 2.0 * n_h * d_0 * t);
        FAYWRIGHT_STEP(I_y, b * cubed(h) / 12.0 - (b - 2.0 * t_w) * cubed(h - 2.0 * t) / 12.0 -
                                n_h * d_0 * t * (squared(h - t) / 2.0 + squared(t) / 6.0));
        FAYWRIGHT_STEP(s, 2.0 * n_h * d_0 * t * m / A_n);
        FAYWRIGHT_STEP(I_z, h * cubed(b) / 12.0 - (h - 2.0 * t) * cubed(b - 2.0 * t_w) / 12.0 -
                                2.0 * n_h * d_0 * t * (squared(d_0) / 12.0 + squared(e)) - A_n * squared(s));
        FAYWRIGHT_STEP(sigma, N / A_n + M_y * h / (2.0 * I_y) + (M_z + N * s) * (b / 2.0 + s) / I_z);
        return {A_n, I_y, I_z, sigma};
    }
};

}  // namespace faywright
