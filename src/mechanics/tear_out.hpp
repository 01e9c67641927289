// SPDX-License-Identifier: MIT
#pragma once

#include "mechanics/design_method.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

namespace faywright {

/// Tear-out: the bolt shears a plug out of the ply, towards the end it is pulled at.
///
/// The classical form shears two straight planes from hole edge to end: 2 t (e_1 - d_0/2) f_u/√3. The Eurocodes have no such
/// check (their bearing rule falls with e_1 instead), so with them it stands beside as practice, over γ_M2. The Aluminum Design Manual
/// takes e_1 t f_u, at most 2 d t f_u, times 0.75; AS 4100 takes a_e t f_u with a_e from hole edge to end plus d/2, times 0.9.
struct TearOut {
    static constexpr Formula formula{
        .name = "tear-out",
        .title = "Tear-out resistance of a ply at one bolt",
        .range = "normal round holes; e_1 beyond the hole's edge",
        .source = {"Shigley's Mechanical Engineering Design", "9th edition", "Example 8-6, shear-out, with f_u/sqrt(3)", Basis::practice}};

    /// In the order of DesignMethod.
    static constexpr std::array<Source, 4> sources{{formula.source, formula.source,
                                                    Source{"Aluminum Design Manual", "2015", "J.3.6", Basis::memory},
                                                    Source{"AS 4100", "1998", "9.3.2.4", Basis::memory}}};
    static constexpr const Source& source(DesignMethod method) { return sources[static_cast<std::size_t>(method)]; }

    struct Inputs {
        Length bolt_diameter, hole_diameter, thickness;
        Stress ultimate_strength;
        Length end_distance;
        double gamma_M2 = 1.25;
        DesignMethod method = DesignMethod::en_1999;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"bolt-diameter", "d", "nominal diameter of the bolt"}, self.bolt_diameter, Range{mm(1), mm(200)});
            field(Name{"hole-diameter", "d_0", "diameter of the hole"}, self.hole_diameter, Range{mm(1), mm(220)});
            field(Name{"thickness", "t", "thickness of the ply"}, self.thickness, Range{mm(0.5), mm(200)});
            field(Name{"ultimate-strength", "f_u", "ultimate strength of the ply"}, self.ultimate_strength, Range{MPa(10), MPa(2000)});
            field(Name{"end-distance", "e_1", "centre of hole to the end, or to the edge of the next hole, along the force"},
                  self.end_distance, Range{mm(1), mm(10000)});
            field(Name{"gamma-M2", "gamma_M2", "partial factor"}, self.gamma_M2, Range{1.0, 3.0}, defaulted);
            field(Name{"method", "", "code of practice"}, self.method, defaulted);
        }
    };

    struct Answer {
        Force resistance;
        Force characteristic;
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"resistance", "F_to_Rd", "design tear-out resistance"}, self.resistance);
            field(Name{"characteristic", "F_to_Rk", "characteristic tear-out resistance"}, self.characteristic);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (in.hole_diameter < in.bolt_diameter) return "the hole is smaller than the bolt";
        if (in.end_distance <= 0.5 * in.hole_diameter) return "the hole breaks through the end";
        return nullptr;
    }

    /// A hole through the end gives 0, so that a search may pass over it.
    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [d, d_0, t, f_u, e_1, gamma_M2, method] = in;
        FAYWRIGHT_STEP(l_v, max(e_1 - d_0 / 2.0, mm(0)));
        switch (method) {
            case DesignMethod::en_1993:
            case DesignMethod::en_1999: {
                FAYWRIGHT_STEP(F_to_Rk, 2.0 * t * l_v * f_u / sqrt(3.0));
                FAYWRIGHT_STEP(F_to_Rd, F_to_Rk / gamma_M2);
                return {F_to_Rd, F_to_Rk, e_1 < 1.2 * d_0 ? "end distance below 1.2 hole diameters" : nullptr};
            }
            case DesignMethod::adm: {
                if (l_v == mm(0)) return {newton(0), newton(0), "the hole breaks through the end"};
                FAYWRIGHT_STEP(F_to_Rk, min(e_1 * t * f_u, 2.0 * d * t * f_u));
                FAYWRIGHT_STEP(F_to_Rd, 0.75 * F_to_Rk);
                return {F_to_Rd, F_to_Rk, e_1 < 1.5 * d ? "end distance below 1.5 bolt diameters" : nullptr};
            }
            case DesignMethod::as_4100: {
                if (l_v == mm(0)) return {newton(0), newton(0), "the hole breaks through the end"};
                FAYWRIGHT_STEP(a_e, l_v + d / 2.0);
                FAYWRIGHT_STEP(F_to_Rk, a_e * t * f_u);
                FAYWRIGHT_STEP(F_to_Rd, 0.9 * F_to_Rk);
                return {F_to_Rd, F_to_Rk, e_1 < 1.25 * d ? "end distance below 1.25 bolt diameters" : nullptr};
            }
        }
        return {};
    }
};

}  // namespace faywright
