// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

namespace faywright {

/// Basic geometry of an ISO metric thread, from its nominal diameter and pitch.
///
/// H is the height of the sharp triangle of the 60 degree profile. The pitch, root and minor diameters lie 3/4, 17/12
/// and 5/4 H below the nominal one. The stress area A_s is that of a circle midway between pitch and root
/// diameter: a threaded bar breaks in tension as if it had this area. Root diameter d_3 (bolt, rounded root) and
/// minor diameter D_1 (nut) differ and are not to be exchanged. Printed stress areas are these rounded to three digits.
struct ThreadGeometry {
    static constexpr Formula formula{
        .name = "thread-geometry",
        .title = "Diameters, areas and lead angle of a metric thread",
        .range = "ISO metric profile, single start, no allowance for coating",
        .source = {"ISO 724; ISO 898-1", "1993; 2013", "basic dimensions; 9.1.6.1 stress area", Basis::memory}};

    struct Inputs {
        Length nominal_diameter, pitch;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"nominal-diameter", "d", "nominal diameter of the thread"}, self.nominal_diameter, Range{mm(1), mm(200)});
            field(Name{"pitch", "P", "pitch of the thread"}, self.pitch, Range{mm(0.1), mm(10)});
        }
    };

    struct Answer {
        Length triangle_height;  ///< height of the sharp profile triangle
        Length pitch_diameter;   ///< where thread and gap are equally wide
        Length root_diameter;    ///< of the bolt, at the rounded root
        Length minor_diameter;   ///< of the nut thread
        Length stress_diameter;  ///< mean of pitch and root diameter
        Area stress_area;        ///< of the thread in tension
        Area root_area;          ///< at the root diameter
        Area nominal_area;       ///< of the plain shank
        Angle lead_angle;        ///< of the helix at the pitch diameter
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"triangle-height", "H", "height of the profile triangle"}, self.triangle_height);
            field(Name{"pitch-diameter", "d_2", "pitch diameter"}, self.pitch_diameter);
            field(Name{"root-diameter", "d_3", "root diameter of the bolt"}, self.root_diameter);
            field(Name{"minor-diameter", "D_1", "minor diameter of the nut thread"}, self.minor_diameter);
            field(Name{"stress-diameter", "d_s", "diameter of the stress area"}, self.stress_diameter);
            field(Name{"stress-area", "A_s", "stress area of the thread"}, self.stress_area);
            field(Name{"root-area", "A_3", "area at the root diameter"}, self.root_area);
            field(Name{"nominal-area", "A_d", "area of the plain shank"}, self.nominal_area);
            field(Name{"lead-angle", "phi", "lead angle at the pitch diameter"}, self.lead_angle);
        }
    };

    static const char* refusal(const Inputs& in) {
        return in.nominal_diameter < 2.0 * in.pitch ? "a pitch more than half the diameter leaves no core" : nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [d, P] = in;
        FAYWRIGHT_STEP(H, sqrt(3.0) / 2.0 * P);
        FAYWRIGHT_STEP(d_2, d - 3.0 / 4.0 * H);
        FAYWRIGHT_STEP(d_3, d - 17.0 / 12.0 * H);
        FAYWRIGHT_STEP(D_1, d - 5.0 / 4.0 * H);
        FAYWRIGHT_STEP(d_s, (d_2 + d_3) / 2.0);
        FAYWRIGHT_STEP(A_s, pi / 4.0 * squared(d_s));
        FAYWRIGHT_STEP(A_3, pi / 4.0 * squared(d_3));
        FAYWRIGHT_STEP(A_d, pi / 4.0 * squared(d));
        FAYWRIGHT_STEP(phi, atan(P / (pi * d_2)));
        return {H, d_2, d_3, D_1, d_s, A_s, A_3, A_d, phi};
    }
};

}  // namespace faywright
