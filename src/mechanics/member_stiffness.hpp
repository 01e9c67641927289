// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <array>
#include <optional>
#include <span>
#include <vector>

namespace faywright {

/// How wide the clamped body carries between the two bearing faces.
enum class MemberModel {
    cone,     ///< deformation cone, its angle growing with the room around the bolt
    frustum,  ///< half angle of 30 degrees, as in textbooks
};

template <>
struct Words<MemberModel> {
    static constexpr std::array<std::pair<MemberModel, std::string_view>, 2> all{{
        {MemberModel::cone, "deformation cone"},
        {MemberModel::frustum, "30 degree frusta"},
    }};
};

/// A washer, plate, wall or sheet between head and nut.
struct ClampedLayer {
    static constexpr bool positional = true;  ///< may be written [thickness, modulus, diameter]
    Length thickness;
    Stress elastic_modulus;
    Length outside_diameter;  ///< of the largest circle about the bolt that lies in the layer

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"thickness", "", "thickness"}, self.thickness, Range{mm(0.001), mm(5000)});
        field(Name{"elastic-modulus", "", "elastic modulus"}, self.elastic_modulus, Range{MPa(0.1), GPa(1000)});
        field(Name{"outside-diameter", "", "largest circle about the bolt within the layer"}, self.outside_diameter,
              Range{mm(1), mm(10000)});
    }
};

inline Length thickness_of(std::span<const ClampedLayer> layers) {
    Length sum{};
    for (const auto& layer : layers) sum += layer.thickness;
    return sum;
}

/// tan φ of the deformation cone of a through bolt. Material outside the 45 degree envelope cannot matter, hence the limit on y.
inline double cone_tangent(Length grip, Length bearing, Length outside) {
    const double y = max(1.0, double(min(outside, bearing + grip) / bearing));
    // The logarithm runs to minus infinity for a foil; the floor lies far below any cone that has been tried.
    return max(0.05, 0.362 + 0.032 * std::log(double(grip / bearing) / 2.0) + 0.153 * std::log(y));
}

inline double cone_tangent(std::span<const ClampedLayer> layers, Length top, Length bottom) {
    Length outside{};
    for (const auto& layer : layers) outside = max(outside, layer.outside_diameter);
    return cone_tangent(thickness_of(layers), min(top, bottom), outside);
}

/// Resilience of layers that carry a body of revolution with a hole, growing from both bearing faces by `tangent` a side
/// and nowhere wider than the layer: ∫dz/(E A). Exact for each stretch of cone or sleeve; no allocation.
inline Resilience body_resilience(std::span<const ClampedLayer> layers, Length top, Length bottom, Length hole, double tangent) {
    const Length grip = thickness_of(layers);
    Resilience sum{};
    Length z{};
    for (const auto& layer : layers) {
        const Length end = z + layer.thickness;
        const auto width = [&](Length at) {
            return min(min(top + 2.0 * tangent * at, bottom + 2.0 * tangent * (grip - at)), layer.outside_diameter);
        };
        // Where one limit gives way to another: the cones meet, or a cone reaches the layer's edge.
        std::array<Length, 5> cuts{z, grip / 2.0 + (bottom - top) / (4.0 * tangent), (layer.outside_diameter - top) / (2.0 * tangent),
                                   grip - (layer.outside_diameter - bottom) / (2.0 * tangent), end};
        for (auto& cut : cuts) cut = max(z, min(end, cut));
        std::sort(cuts.begin(), cuts.end());
        for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
            const Length length = cuts[i + 1] - cuts[i];
            if (length <= Length{}) continue;
            const Length a = width(cuts[i]), b = width(cuts[i + 1]);
            // Nearly a sleeve: the logarithm would lose its digits, and the mean is as good as exact.
            if (abs(b - a) < 1e-6 * a) {
                sum += 4.0 * length / (pi * layer.elastic_modulus * (a * b - squared(hole)));
            } else {
                const double ratio = (b - hole) * (a + hole) / ((b + hole) * (a - hole));
                sum += 2.0 * length / (pi * layer.elastic_modulus * hole * (b - a)) * std::log(ratio);
            }
        }
        z = end;
    }
    return sum;
}

/// The same by the deformation cone of VDI 2230 for a through bolt.
inline Resilience body_resilience(std::span<const ClampedLayer> layers, Length top, Length bottom, Length hole) {
    if (layers.empty()) return {};
    return body_resilience(layers, top, bottom, hole, cone_tangent(layers, top, bottom));
}

/// Radius at which the resultant of a uniform pressure on an annulus stands.
inline Length mean_radius(Length inside, Length outside) {
    return (cubed(outside) - cubed(inside)) / (3.0 * (squared(outside) - squared(inside)));
}

/// ε: by how much the circle on which head or washer presses misses that of the tube, as a share of the thickness between them.
inline double circle_offset(Length load_outside, Length tube_outside, Length tube_inside, Length hole, Length thickness) {
    return abs(mean_radius(hole, load_outside) - mean_radius(max(tube_inside, hole), tube_outside)) / thickness;
}

/// Resilience of the clamped parts between head and nut, with or without a tube in the stack.
///
/// Plates carry a body of revolution that widens from both bearing faces by tan φ = 0.362 + 0.032 ln(l/(2 d_W)) + 0.153 ln y,
/// y = D_A/d_W, D_A the largest circle in the parts but no more than d_W + l. A tube is a sleeve, l/(E A); it cuts
/// the stack in two bodies, each between head (or nut) and tube end. Walls bending beside the tube are left out (below 1 %).
/// The textbook frusta have φ = 30° whatever the joint, and are here cut off at a layer's edge likewise.
///
/// What is computed is the approach of nearly rigid bearing faces. Against finite elements: plain plates -8 to +6.4 %
/// of stiffness about the mean of the rigid and the uniform definition, 0 to +13 % against uniform pressure; stacks with
/// a tube -0.6 to +2.3 % against a rigid annulus and 0 to +7.4 % against uniform pressure while ε ≤ 0.25. Beyond, load and
/// tube miss each other, the layers between bend and the stack is softer than told here (25 % seen at ε = 0.39).
struct MemberStiffness {
    static constexpr Formula formula{
        .name = "member-stiffness",
        .title = "Resilience of the clamped parts, with or without a tube",
        .range = "through bolt, centred; load circle within 0.25 of the layers' thickness of the tube's circle",
        .source = {"VDI 2230 Part 1", "2003", "5.1.2", Basis::memory}};

    /// In the order of MemberModel.
    static constexpr std::array<Source, 2> sources{{formula.source, Source{"Shigley's Mechanical Engineering Design, solutions", "8th",
                                                                           "8-23 to 8-25, p. 213-215", Basis::published}}};
    static constexpr const Source& source(MemberModel model) { return sources[static_cast<std::size_t>(model)]; }

    struct Inputs {
        std::vector<ClampedLayer> layers;  ///< head to nut
        Length head_bearing_diameter, nut_bearing_diameter, hole_diameter;
        std::optional<Length> tube_outside_diameter, tube_inside_diameter, tube_length;
        std::optional<Stress> tube_modulus;
        int layers_above_tube = 0;
        MemberModel method = MemberModel::cone;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"layers", "", "layers from head to nut, without the tube"}, self.layers);
            field(Name{"head-bearing-diameter", "d_W1", "outside diameter of the bearing face at the head"}, self.head_bearing_diameter,
                  Range{mm(1), mm(1000)});
            field(Name{"nut-bearing-diameter", "d_W2", "outside diameter of the bearing face at the nut"}, self.nut_bearing_diameter,
                  Range{mm(1), mm(1000)});
            field(Name{"hole-diameter", "d_h", "hole through the layers"}, self.hole_diameter, Range{mm(0.5), mm(500)});
            field(Name{"tube-outside-diameter", "D_T", "outside diameter of the tube"}, self.tube_outside_diameter, Range{mm(1), mm(1000)});
            field(Name{"tube-inside-diameter", "d_T", "bore of the tube"}, self.tube_inside_diameter, Range{mm(0.5), mm(1000)});
            field(Name{"tube-length", "l_T", "length of the tube"}, self.tube_length, Range{mm(0.1), mm(5000)});
            field(Name{"tube-modulus", "E_T", "elastic modulus of the tube"}, self.tube_modulus, Range{MPa(0.1), GPa(1000)});
            field(Name{"layers-above-tube", "n_1", "number of layers on the head's side of the tube"}, self.layers_above_tube,
                  Range{0, 1000}, defaulted);
            field(Name{"method", "", "how the body widens"}, self.method, defaulted);
        }
    };

    struct Answer {
        Resilience resilience;
        Stiffness stiffness;
        Resilience head_side;  ///< all layers where there is no tube
        Resilience tube, nut_side;
        double circle_offset = 0.0;  ///< ε, the worse side
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"resilience", "delta_P", "resilience of the clamped parts"}, self.resilience);
            field(Name{"stiffness", "k_P", "stiffness of the clamped parts"}, self.stiffness);
            field(Name{"head-side", "delta_1", "part of the layers between head and tube (all layers, without a tube)"}, self.head_side);
            field(Name{"tube", "delta_T", "part of the tube"}, self.tube);
            field(Name{"nut-side", "delta_2", "part of the layers between tube and nut"}, self.nut_side);
            field(Name{"circle-offset", "epsilon", "miss of load circle and tube circle over the thickness between"}, self.circle_offset);
        }
    };

    static const char* refusal(const Inputs& in) {
        const int given = int(in.tube_outside_diameter.has_value()) + int(in.tube_inside_diameter.has_value()) +
                          int(in.tube_length.has_value()) + int(in.tube_modulus.has_value());
        if (given != 0 && given != 4) return "a tube needs its outside diameter, bore, length and modulus";
        if (given == 0 && in.layers.empty()) return "nothing is clamped";
        if (in.hole_diameter >= min(in.head_bearing_diameter, in.nut_bearing_diameter)) return "the hole is as wide as a bearing face";
        for (const auto& layer : in.layers)
            if (layer.outside_diameter <= in.hole_diameter) return "a layer is no wider than the hole";
        if (in.layers_above_tube < 0 || static_cast<std::size_t>(in.layers_above_tube) > in.layers.size())
            return "more layers are said to lie above the tube than there are";
        if (given == 0) return nullptr;
        if (*in.tube_inside_diameter >= *in.tube_outside_diameter) return "the tube's bore is as wide as the tube";
        if (!in.layers.empty() && in.hole_diameter >= *in.tube_outside_diameter) return "the tube fits through the hole";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [layers, d_W1, d_W2, d_h, D_T, d_T, l_T, E_T, n_1, method] = in;
        const std::span<const ClampedLayer> all = layers;
        if (!l_T) {
            FAYWRIGHT_STATED(tan_1, tangent_words(method), tangent(all, d_W1, d_W2, method));
            FAYWRIGHT_STATED(delta_P, body_words, body(all, d_W1, d_W2, d_h, tan_1, method));
            FAYWRIGHT_STEP(k_P, 1.0 / delta_P);
            return {delta_P, k_P, delta_P, {}, {}};
        }
        const auto head = all.first(static_cast<std::size_t>(n_1)), nut = all.subspan(static_cast<std::size_t>(n_1));
        FAYWRIGHT_STATED(tan_1, tangent_words(method), tangent(head, d_W1, *D_T, method));
        FAYWRIGHT_STATED(delta_1, body_words, body(head, d_W1, *D_T, d_h, tan_1, method));
        FAYWRIGHT_STEP(delta_T, 4.0 * *l_T / (pi * *E_T * (squared(*D_T) - squared(*d_T))));
        FAYWRIGHT_STATED(tan_2, tangent_words(method), tangent(nut, *D_T, d_W2, method));
        FAYWRIGHT_STATED(delta_2, body_words, body(nut, *D_T, d_W2, d_h, tan_2, method));
        FAYWRIGHT_STEP(delta_P, delta_1 + delta_T + delta_2);
        FAYWRIGHT_STEP(k_P, 1.0 / delta_P);
        FAYWRIGHT_STATED(epsilon,
                         "|mean radius of the load - mean radius of the tube's ring| / thickness between, the greater of both sides",
                         max(miss(head, d_W1, in), miss(nut, d_W2, in)));
        Answer answer{delta_P, k_P, delta_1, delta_T, delta_2, epsilon};
        if (epsilon > 0.25)
            answer.outside_range = "the load circle misses the tube's circle: the layers between bend and the stack is softer than this";
        return answer;
    }

private:
    // The textbook rounds 2 tan 30° to 1.155 and tan 30° to 0.5774 in one formula; so do we, that its digits come out.
    static constexpr double frustum_spread = 1.155 / 2.0, frustum_factor = 0.5774;

    static Resilience body(std::span<const ClampedLayer> layers, Length top, Length bottom, Length hole, double tangent,
                           MemberModel method) {
        const Resilience exact = body_resilience(layers, top, bottom, hole, tangent);
        return method == MemberModel::frustum ? exact * (frustum_spread / frustum_factor) : exact;
    }

    static double tangent(std::span<const ClampedLayer> layers, Length top, Length bottom, MemberModel method) {
        // Without layers there is nothing to widen, and no cone to speak of.
        return method == MemberModel::frustum || layers.empty() ? frustum_spread : cone_tangent(layers, top, bottom);
    }

    static double miss(std::span<const ClampedLayer> layers, Length load, const Inputs& in) {
        if (layers.empty()) return 0.0;
        return faywright::circle_offset(load, *in.tube_outside_diameter, *in.tube_inside_diameter, in.hole_diameter, thickness_of(layers));
    }

    static constexpr const char* body_words =
        "Σ over the layers of ∫dz/(E·π/4·(D² - d_h²)); D grows from both faces by 2·tan φ·z, no wider than the layer";
    static constexpr const char* tangent_words(MemberModel method) {
        return method == MemberModel::frustum ? "1.155/2, for tan 30°"
                                              : "0.362 + 0.032·ln(l/(2·d_W)) + 0.153·ln(min(D_A, d_W + l)/d_W), d_W the smaller face";
    }
};

}  // namespace faywright
