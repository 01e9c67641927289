// SPDX-License-Identifier: MIT
#pragma once

#include "corrosion/electrode.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <boost/math/special_functions/bessel.hpp>
#include <boost/math/special_functions/lambert_w.hpp>

#include <cmath>
#include <optional>

/// How far a couple reaches along a film of water of conductivity k and thickness d on the metals: k d φ'' = i(φ), φ the shift of
/// potential through the film, uniform over its thickness. Theory after Wagner, Waber, McCafferty, Chen and Kelly: recalled.
namespace faywright {

/// Inverse of a resistance.
using Conductance = decltype(1.0 / Resistance{});

/// ℓ = √(k d R): the length over which a linear electrode's shift dies away.
[[nodiscard]] inline Length reach_length(Conductivity k, Length d, SurfaceResistance R) { return sqrt(k * d * R); }

/// x_c = √(2 k d dE/i_L): how far from the joint line a cathode at its limiting current is reached.
[[nodiscard]] inline Length catchment(Conductivity k, Length d, Potential dE, CurrentDensity i_L) { return sqrt(2.0 * k * d * dE / i_L); }

namespace detail {
/// K1(x)/K0(x) and I1(x)/I0(x), by their series far out, where the functions themselves leave the range of numbers.
[[nodiscard]] inline double k_ratio(double x) {
    if (x > 300.0) return 1.0 + 1.0 / (2.0 * x) - 1.0 / (8.0 * x * x) + 1.0 / (8.0 * x * x * x);
    const double y = std::max(x, 1e-12);
    return boost::math::cyl_bessel_k(1, y) / boost::math::cyl_bessel_k(0, y);
}
[[nodiscard]] inline double i_ratio(double x) {
    if (x > 300.0) return 1.0 - 1.0 / (2.0 * x) - 1.0 / (8.0 * x * x) - 1.0 / (8.0 * x * x * x);
    return boost::math::cyl_bessel_i(1, x) / boost::math::cyl_bessel_i(0, x);
}
}  // namespace detail

/// Conductance through the film of a wide linear face outside a round head of radius r_0: 2π r_0 (k d/ℓ) K1(r_0/ℓ)/K0(r_0/ℓ).
[[nodiscard]] inline Conductance face_conductance(Length r_0, Conductivity k, Length d, SurfaceResistance R) {
    const Length l = reach_length(k, d, R);
    return 2.0 * pi * (k * d) * (double(r_0 / l) * detail::k_ratio(double(r_0 / l)));
}

/// The same of the head's own disc: 2π r_0 (k d/ℓ) I1(r_0/ℓ)/I0(r_0/ℓ).
[[nodiscard]] inline Conductance disc_conductance(Length r_0, Conductivity k, Length d, SurfaceResistance R) {
    const Length l = reach_length(k, d, R);
    return 2.0 * pi * (k * d) * (double(r_0 / l) * detail::i_ratio(double(r_0 / l)));
}

/// A round washer or head as cathode in a wide anode face.
struct RoundHead {
    Current current;              ///< dE/(1/G_a + 1/G_c)
    CurrentDensity edge_density;  ///< on the face at the head's edge, I/(G_a R_a)
};
[[nodiscard]] inline RoundHead round_head(Length r_0, Conductivity k, Length d, SurfaceResistance R_a, SurfaceResistance R_c,
                                          Potential dE) {
    const Conductance G_a = face_conductance(r_0, k, d, R_a), G_c = disc_conductance(r_0, k, d, R_c);
    const Current I = dE / (1.0 / G_a + 1.0 / G_c);
    return {I, I / (G_a * R_a)};
}

/// The largest current round a small anode of radius r_a under a wide film: ln I = 4π k d dE/I + ln(π e r_a² i_eq), solved by Lambert's
/// function; i_eq is the mean cathodic density between the couple's and the cathode's free potential.
struct SmallAnode {
    Current current;
    Length cathode_radius;  ///< of the disc of cathode at i_eq, anode included, that this current needs
};
[[nodiscard]] inline SmallAnode small_anode(Length r_a, Conductivity k, Length d, Potential dE, CurrentDensity i_eq) {
    const Current drive = 4.0 * pi * k * d * dE, base = pi * std::numbers::e * squared(r_a) * i_eq;
    const Current I = drive / boost::math::lambert_w0(double(drive / base));
    return {I, sqrt(I / (pi * i_eq) + squared(r_a))};
}

/// Alternating strips, anode from 0 to a and cathode from a to c, repeated by reflection, of equal polarisation resistance R under water of
/// any depth b: current density at x, positive on the anode (Waber),
/// (2 k E/c) Σ sin(nπa/c) cos(nπx/c) T_n/(1 + n q T_n), q = π k R/c, T_n = tanh(nπb/c). The part Σ sin·cos/(n q), slow to converge, is
/// taken in closed form; the rest falls with the square of n.
[[nodiscard]] inline CurrentDensity strip_series(Length x, Length a, Length c, Length b, Conductivity k, SurfaceResistance R, Potential E,
                                                 int terms = 2000) {
    const double q = pi * double(k * R / c), at = pi * double(x / c), edge = pi * double(a / c), depth = pi * double(b / c);
    double sum = (x < a ? 0.5 * (pi - edge) : x > a ? -0.5 * edge : 0.25 * (pi - 2.0 * edge)) / q;
    for (int n = 1; n <= terms; ++n) sum -= std::sin(n * edge) * std::cos(n * at) / (n * q * (1.0 + n * q * std::tanh(n * depth)));
    return 2.0 * k * E / c * sum;
}

/// How the cathode answers.
enum class ThrowingMethod {
    linear,            ///< in proportion to the shift, both metals: small shifts
    limiting_current,  ///< the cathode at its oxygen limit wherever the drive reaches: the usual case in salt
};

template <>
struct Words<ThrowingMethod> {
    static constexpr std::array<std::pair<ThrowingMethod, std::string_view>, 2> all{
        {{ThrowingMethod::linear, "linear"}, {ThrowingMethod::limiting_current, "limiting current"}}};
};

/// Throwing length: how far from the line where two metals meet a film of water carries their current, and how much of it.
///
/// Linear: ℓ = √(k d R) on each side, I' = k d dE/(ℓ_a coth(w_a/ℓ_a) + s + ℓ_c coth(w_c/ℓ_c)), s a bare strip that isolates the metals and
/// that the film bridges. Limiting current: the drive is used up over the cathode's reach x_c, dE = i_L (s x_c/(k d) + x_c²/(2 k d)), so
/// x_c = √(s² + 2 k d dE/i_L) - s, and I' = i_L min(x_c, w_c). Both: i_a(0) = I'/(ℓ_a tanh(w_a/ℓ_a)) at the anode's edge.
/// With i_L = 4 F D C/d the film's thickness leaves I'.
struct ThrowingLength {
    static constexpr Formula formula{.name = "throwing-length",
                                     .title = "Reach of a couple along a film of water, and current per length of joint",
                                     .range = "film thin against the reach, of one thickness and conductivity, unbroken",
                                     .source = {"Wagner's polarisation length in a thin film, after Waber and McCafferty", "1952 to 1977",
                                                "linear electrodes", Basis::memory}};

    /// In the order of ThrowingMethod.
    static constexpr std::array<Source, 2> sources{
        {formula.source, Source{"film resistance against a constant cathode current", "", "own derivation", Basis::practice}}};
    static constexpr const Source& source(ThrowingMethod method) { return sources[static_cast<std::size_t>(method)]; }

    struct Inputs {
        Conductivity conductivity;
        Length film;
        Potential drive;
        SurfaceResistance anode_resistance;
        std::optional<SurfaceResistance> cathode_resistance;
        std::optional<CurrentDensity> cathode_limit;
        Length anode_width = metre(10), cathode_width = metre(10);
        Length spacer = mm(0);
        ThrowingMethod method = ThrowingMethod::limiting_current;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            const Range surface{ohm_cm2(1), ohm_cm2(1e8)};
            const Range width{um(1), metre(100)};
            field(Name{"conductivity", "k", "conductivity of the water"}, self.conductivity, Range{S_per_cm(1e-7), S_per_cm(1)});
            field(Name{"film", "d", "thickness of the film"}, self.film, Range{um(0.01), mm(50)});
            field(Name{"drive", "dE", "difference of the metals' potentials apart (for the limit: what the film may use up)"}, self.drive,
                  Range{volt(0), volt(3)});
            field(Name{"anode-resistance", "R_a", "polarisation resistance of the anode"}, self.anode_resistance, surface);
            field(Name{"cathode-resistance", "R_c", "polarisation resistance of the cathode (linear)"}, self.cathode_resistance, surface);
            field(Name{"cathode-limit", "i_L", "limiting current density of the cathode (limiting current)"}, self.cathode_limit,
                  Range{uA_per_cm2(1e-3), uA_per_cm2(1e4)});
            field(Name{"anode-width", "w_a", "width of the anode from the joint line"}, self.anode_width, width, defaulted);
            field(Name{"cathode-width", "w_c", "width of the cathode from the joint line"}, self.cathode_width, width, defaulted);
            field(Name{"spacer", "s", "bare isolating strip between the metals, bridged by the film"}, self.spacer, Range{mm(0), metre(10)},
                  defaulted);
            field(Name{"method", "", "how the cathode answers"}, self.method, defaulted);
        }
    };

    struct Answer {
        Length anode_reach, cathode_reach;
        LineCurrent line_current;
        CurrentDensity anode_edge, cathode_edge;
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"anode-reach", "l_a", "length over which the attack dies away from the edge"}, self.anode_reach);
            field(Name{"cathode-reach", "l_c", "the same of the cathode; at its limit the width that works"}, self.cathode_reach);
            field(Name{"line-current", "I_line", "current per length of joint line"}, self.line_current);
            field(Name{"anode-edge", "i_a0", "anodic current density at the anode's edge"}, self.anode_edge);
            field(Name{"cathode-edge", "i_c0", "cathodic current density at the cathode's edge"}, self.cathode_edge);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (in.method == ThrowingMethod::linear && !in.cathode_resistance) return "the linear method needs the cathode's resistance";
        if (in.method == ThrowingMethod::limiting_current && !in.cathode_limit)
            return "the limiting current method needs the cathode's limit";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [k, d, dE, R_a, R_c, i_L, w_a, w_c, s, method] = in;
        FAYWRIGHT_STEP(l_a, sqrt(k * d * R_a));
        FAYWRIGHT_STEP(t_a, l_a * std::tanh(w_a / l_a));
        switch (method) {
            case ThrowingMethod::linear: {
                FAYWRIGHT_STEP(l_c, sqrt(k * d * *R_c));
                FAYWRIGHT_STEP(t_c, l_c * std::tanh(w_c / l_c));
                FAYWRIGHT_STEP(I_line, k * d * dE / (squared(l_a) / t_a + s + squared(l_c) / t_c));
                FAYWRIGHT_STEP(i_a0, I_line / t_a);
                FAYWRIGHT_STEP(i_c0, I_line / t_c);
                return {l_a, l_c, I_line, i_a0, i_c0, min(l_a, l_c) < d ? deep : nullptr};
            }
            case ThrowingMethod::limiting_current: {
                FAYWRIGHT_STEP(q, 2.0 * k * d * dE / *i_L);
                FAYWRIGHT_STEP(x_c, q / max(s + sqrt(squared(s) + q), um(1e-6)));
                FAYWRIGHT_STEP(l_c, min(x_c, w_c));
                FAYWRIGHT_STEP(I_line, *i_L * l_c);
                FAYWRIGHT_STEP(i_a0, I_line / t_a);
                const char* outside = nullptr;
                if (min(l_a, x_c) < d) outside = deep;
                if (*i_L > oxygen_uptake_limit()) outside = "more oxygen than a film's surface takes up from the air";
                return {l_a, l_c, I_line, i_a0, *i_L, outside};
            }
        }
        return {};
    }

private:
    static constexpr const char* deep = "the film is deeper than the reach: the potential is not uniform over its thickness";
};

}  // namespace faywright
