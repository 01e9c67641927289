// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

namespace faywright {

/// Surface pressure under head, nut, washer or tube end: bolt force over the ring that carries it.
///
/// A washer of thickness h_S widens the ring to d_W + 1.6 h_S and no further than its own edge d_o. Above the permissible pressure p_G
/// the face goes on creeping and the preload with it. A bare 8.8 hexagon head exceeds what 6xxx aluminium stands.
struct SurfacePressure {
    static constexpr Formula formula{.name = "surface-pressure",
                                     .title = "Pressure under head, nut or washer",
                                     .range = "plane ring, evenly pressed; part at least as wide and as thick as the ring spreads",
                                     .source = {"VDI 2230 Part 1", "2003", "5.5.4", Basis::memory}};

    struct Inputs {
        Force force;
        Length bearing_diameter, bearing_hole;
        Stress permissible_pressure;
        Length washer_thickness = mm(0);
        std::optional<Length> washer_diameter;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"force", "F", "greatest force of the bolt"}, self.force, Range{newton(0), kN(10000)});
            field(Name{"bearing-diameter", "d_W", "outer diameter of the bearing face of head or nut"}, self.bearing_diameter,
                  Range{mm(1), mm(500)});
            field(Name{"bearing-hole", "d_h", "inner diameter of the ring: the larger of hole and washer hole"}, self.bearing_hole,
                  Range{mm(0.5), mm(500)});
            field(Name{"permissible-pressure", "p_G", "permissible surface pressure of the part"}, self.permissible_pressure,
                  Range{MPa(0.1), MPa(5000)});
            field(Name{"washer-thickness", "h_S", "thickness of the washer, zero for none"}, self.washer_thickness, Range{mm(0), mm(100)},
                  defaulted);
            field(Name{"washer-diameter", "d_o", "outside diameter of the washer"}, self.washer_diameter, Range{mm(1), mm(500)});
        }
    };

    struct Answer {
        Length effective_diameter;
        Area area;
        Stress pressure;
        double utilisation;
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"effective-diameter", "d_e", "outer diameter of the pressed ring"}, self.effective_diameter);
            field(Name{"area", "A_p", "area of the pressed ring"}, self.area);
            field(Name{"pressure", "p", "surface pressure"}, self.pressure);
            field(Name{"utilisation", "eta", "pressure over the permissible one"}, self.utilisation);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (in.bearing_hole >= 0.99 * in.bearing_diameter) return "the hole is as large as the bearing face";
        if (in.washer_diameter && in.bearing_hole >= 0.99 * *in.washer_diameter) return "the hole is as large as the washer";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [F, d_W, d_h, p_G, h_S, d_o] = in;
        FAYWRIGHT_STEP(d_c, d_W + 1.6 * h_S);
        FAYWRIGHT_STATED(d_e, "d_c, not beyond the edge of the washer d_o", d_o ? min(d_c, *d_o) : d_c);
        FAYWRIGHT_STEP(A_p, pi / 4.0 * (squared(d_e) - squared(d_h)));
        FAYWRIGHT_STEP(p, F / A_p);
        FAYWRIGHT_STEP(eta, p / p_G);
        return {d_e, A_p, p, eta};
    }
};

}  // namespace faywright
