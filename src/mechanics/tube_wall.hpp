// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <optional>

namespace faywright {

/// Whether a crush tube carries what the bolt puts on it: yield, local buckling, pressure of its end on the wall.
///
/// Area with the least wall, A = π t_min (D - t_min). Yield at A f_y/γ_M0. Local buckling of the shell at
/// γ E t/(r sqrt(3 (1 - ν²))), 0.605 E t/r for ν = 0.3, with the knock-down γ = 1 - 0.901 (1 - exp(-sqrt(r/t)/16)) for imperfect
/// shells; it never governs a practical tube. The end presses on the ring that tube and wall have in common: outside the hole
/// and the bore, inside the tube and what it presses on. A cut out of square by Δz closes, if the faces cannot tilt,
/// at E A Δz/(2 L) with the full wall; the peak stress is then twice the mean. A tube is too short to buckle as a column
/// below a slenderness of 0.2. Wrinkling in the plastic range is excluded by the ratio D/t ≤ 90·(235 MPa/f_y)·(E/210 GPa).
struct TubeWall {
    static constexpr Formula formula{.name = "tube-wall",
                                     .title = "Yield, buckling and end pressure of a crush tube",
                                     .range = "relative slenderness to 0.2; wall of class 3 or better; axial load, faces square",
                                     .source = {"EN 1993-1-1 6.2.4; NASA SP-8007", "2005; 1968",
                                                "shell knock-down, with the pressure on the common ring", Basis::memory}};

    struct Inputs {
        Force force;
        Length outside_diameter, wall;
        double wall_tolerance = 0.1;
        Length length;
        Stress elastic_modulus, proof_strength;
        double poisson_ratio = 0.3;
        Length squareness = mm(0);
        std::optional<Length> contact_outside;  ///< absent: the whole tube end is covered
        std::optional<Length> contact_inside;   ///< absent: the hole is no wider than the bore
        Stress permissible_pressure;
        double gamma_M0 = 1.0;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"force", "F", "greatest force on the tube"}, self.force, Range{kN(0), kN(100000)});
            field(Name{"outside-diameter", "D", "outside diameter of the tube"}, self.outside_diameter, Range{mm(2), mm(1000)});
            field(Name{"wall", "t", "nominal wall of the tube"}, self.wall, Range{mm(0.1), mm(300)});
            field(Name{"wall-tolerance", "Delta_t", "share by which the wall may be thinner"}, self.wall_tolerance, Range{0.0, 0.5},
                  defaulted);
            field(Name{"length", "L", "length of the tube"}, self.length, Range{mm(1), mm(5000)});
            field(Name{"elastic-modulus", "E", "elastic modulus of the tube"}, self.elastic_modulus, Range{GPa(1), GPa(1000)});
            field(Name{"proof-strength", "f_y", "yield or proof strength of the tube"}, self.proof_strength, Range{MPa(10), MPa(2000)});
            field(Name{"poisson-ratio", "nu", "Poisson's ratio"}, self.poisson_ratio, Range{0.0, 0.49}, defaulted);
            field(Name{"squareness", "Delta_z", "height by which one side of the end stands proud"}, self.squareness, Range{mm(0), mm(10)},
                  defaulted);
            field(Name{"contact-outside", "d_a", "outside diameter of what the end presses on, where smaller"}, self.contact_outside,
                  Range{mm(2), mm(1000)});
            field(Name{"contact-inside", "d_i", "hole in the wall under the end"}, self.contact_inside, Range{mm(0.5), mm(1000)});
            field(Name{"permissible-pressure", "p_G", "permissible surface pressure of the wall"}, self.permissible_pressure,
                  Range{MPa(1), MPa(5000)});
            field(Name{"gamma-M0", "gamma_M0", "partial factor"}, self.gamma_M0, Range{1.0, 3.0}, defaulted);
        }
    };

    struct Answer {
        Area area_least;
        Stress stress;
        Force yield_force;
        double yield_utilisation = 0.0;
        Stress buckling_stress;
        double buckling_utilisation = 0.0;
        Area contact_area;
        Stress end_pressure;
        double pressure_utilisation = 0.0;
        Force squareness_force;  ///< that the tube takes before its whole end bears
        double slenderness = 0.0;
        double knock_down = 0.0;  ///< γ, in the buckling stress
        Stress column_strength;   ///< proof strength less what its length takes (EN 1993-1-1 6.3.1.2, curve c)
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"area-least", "A", "section of the tube with the least wall"}, self.area_least);
            field(Name{"stress", "sigma", "stress in the tube"}, self.stress);
            field(Name{"yield-force", "N_c_Rd", "force at which the tube yields, with the partial factor"}, self.yield_force);
            field(Name{"yield-utilisation", "eta_y", "force over yield force"}, self.yield_utilisation);
            field(Name{"buckling-stress", "sigma_cr", "stress at which the wall of the tube buckles"}, self.buckling_stress);
            field(Name{"buckling-utilisation", "eta_cr", "stress over buckling stress"}, self.buckling_utilisation);
            field(Name{"contact-area", "A_c", "ring on which the end bears"}, self.contact_area);
            field(Name{"end-pressure", "p", "pressure of the end on the wall"}, self.end_pressure);
            field(Name{"pressure-utilisation", "eta_p", "pressure over permissible pressure"}, self.pressure_utilisation);
            field(Name{"squareness-force", "F_sq", "force that closes an end out of square"}, self.squareness_force);
            field(Name{"slenderness", "lambda", "relative slenderness as a column"}, self.slenderness);
            field(Name{"column-strength", "f_b", "proof strength, less what buckling as a column takes"}, self.column_strength);
            field(Name{"knock-down", "gamma", "reduction of the buckling stress for an imperfect shell"}, self.knock_down);
        }
    };

    static const char* refusal(const Inputs& in) {
        const Length bore = in.outside_diameter - 2.0 * in.wall;
        if (bore <= Length{}) return "the tube has no bore";
        // By a hair's margin, that a ring without width is not taken for one.
        const Length bore_most = bore + 2.0 * in.wall * in.wall_tolerance;
        const Length outer = min(in.outside_diameter, in.contact_outside.value_or(in.outside_diameter));
        if (outer <= max(bore_most, in.contact_inside.value_or(bore_most)) + mm(1e-6)) return "tube end and wall have no ring in common";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [F, D, t, Delta_t, L, E, f_y, nu, Delta_z, d_a, d_i, p_G, gamma_M0] = in;
        FAYWRIGHT_STEP(t_min, t * (1.0 - Delta_t));
        FAYWRIGHT_STEP(A, pi * t_min * (D - t_min));
        FAYWRIGHT_STEP(sigma, F / A);
        FAYWRIGHT_STEP(N_c_Rd, A * f_y / gamma_M0);
        FAYWRIGHT_STEP(eta_y, F / N_c_Rd);

        FAYWRIGHT_STEP(r, (D - t_min) / 2.0);
        FAYWRIGHT_STEP(gamma, 1.0 - 0.901 * (1.0 - exp(-sqrt(double(r / t_min)) / 16.0)));
        FAYWRIGHT_STEP(sigma_cr, gamma * E * t_min / (r * sqrt(3.0 * (1.0 - squared(nu)))));
        FAYWRIGHT_STEP(eta_cr, sigma / sigma_cr);

        FAYWRIGHT_STEP(d, D - 2.0 * t_min);
        FAYWRIGHT_STATED(d_2, "the smaller of tube and what its end presses on", d_a ? min(D, *d_a) : D);
        FAYWRIGHT_STATED(d_1, "the greater of bore and hole in the wall", d_i ? max(d, *d_i) : d);
        // Never nothing: a tube with no end left to stand on fails by pressure, and must not pass by a negative one.
        FAYWRIGHT_STEP(A_c, max(pi / 4.0 * (squared(d_2) - squared(d_1)), 0.001 * A));
        FAYWRIGHT_STEP(p, F / A_c);
        FAYWRIGHT_STEP(eta_p, p / p_G);

        // The full wall is the stiffer one.
        FAYWRIGHT_STEP(F_sq, E * pi * t * (D - t) * Delta_z / (2.0 * L));
        FAYWRIGHT_STEP(i, sqrt(squared(D) + squared(d)) / 4.0);
        FAYWRIGHT_STEP(lambda, L / i / (pi * sqrt(double(E / f_y))));
        // Curve c; below 0.2 a column does not feel its length.
        FAYWRIGHT_STEP(phi, 0.5 * (1.0 + 0.49 * (lambda - 0.2) + squared(lambda)));
        FAYWRIGHT_STEP(chi, min(1.0 / (phi + sqrt(max(squared(phi) - squared(lambda), 0.0))), 1.0));
        FAYWRIGHT_STEP(f_b, chi * f_y / gamma_M0);

        Answer answer{A, sigma, N_c_Rd, eta_y, sigma_cr, eta_cr, A_c, p, eta_p, F_sq, lambda, gamma, f_b};
        if (double(D / t_min) > 90.0 * double(MPa(235) / f_y) * double(E / GPa(210)))
            answer.outside_range = "the wall is so thin for its diameter that it may wrinkle before it yields";
        return answer;
    }
};

}  // namespace faywright
