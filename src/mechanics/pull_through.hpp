// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <optional>

namespace faywright {

/// What presses on the ply while the bolt pulls.
enum class PullThroughEdge { head, washer };

template <>
struct Words<PullThroughEdge> {
    static constexpr std::array<std::pair<PullThroughEdge, std::string_view>, 2> all{
        {{PullThroughEdge::head, "head"}, {PullThroughEdge::washer, "washer"}}};
};

/// Pull-through (punching): head, nut or washer is pulled through the ply.
///
/// EN 1993-1-8, with the same form in EN 1999-1-1: B_p,Rd = 0.6 π d_m t f_u/γ_M2, d_m the mean of width across flats and
/// across corners of head or nut, whichever is smaller. With a stiff washer on the wall its outside diameter takes
/// the place of d_m: our extension, for washers that do not dish. A tube under the head rules it out inwards.
struct PullThrough {
    static constexpr Formula formula{.name = "pull-through",
                                     .title = "Pull-through resistance of a ply under head, nut or washer",
                                     .range = "far side of the ply not supported by tube or plate; washer stiff",
                                     .source = {"EN 1993-1-8", "2005", "Table 3.4", Basis::published}};

    /// In the order of PullThroughEdge.
    static constexpr std::array<Source, 2> sources{
        {formula.source, Source{"washer in place of the head in EN 1993-1-8 Table 3.4", "", "our extension", Basis::practice}}};
    static constexpr const Source& source(PullThroughEdge edge) { return sources[static_cast<std::size_t>(edge)]; }

    struct Inputs {
        Length across_flats, across_corners;
        std::optional<Length> washer_diameter;
        Length thickness;
        Stress ultimate_strength;
        double gamma_M2 = 1.25;
        PullThroughEdge edge = PullThroughEdge::head;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"across-flats", "s", "width across flats of head or nut"}, self.across_flats, Range{mm(1), mm(300)});
            field(Name{"across-corners", "e", "width across corners of head or nut"}, self.across_corners, Range{mm(1), mm(350)});
            field(Name{"washer-diameter", "d_w", "outside diameter of the washer"}, self.washer_diameter, Range{mm(1), mm(500)});
            field(Name{"thickness", "t", "thickness of the ply"}, self.thickness, Range{mm(0.5), mm(200)});
            field(Name{"ultimate-strength", "f_u", "ultimate strength of the ply"}, self.ultimate_strength, Range{MPa(10), MPa(2000)});
            field(Name{"gamma-M2", "gamma_M2", "partial factor"}, self.gamma_M2, Range{1.0, 3.0}, defaulted);
            field(Name{"edge", "", "what presses on the ply"}, self.edge, defaulted);
        }
    };

    struct Answer {
        Force resistance;
        Force characteristic;
        Length mean_diameter;
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"resistance", "B_p_Rd", "design pull-through resistance"}, self.resistance);
            field(Name{"characteristic", "B_p_Rk", "characteristic pull-through resistance"}, self.characteristic);
            field(Name{"mean-diameter", "d_m", "diameter of the punched edge"}, self.mean_diameter);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (in.across_corners < in.across_flats) return "the width across corners is less than across flats";
        if (in.edge == PullThroughEdge::washer && !in.washer_diameter) return "pull-through under a washer needs the washer's diameter";
        if (in.edge == PullThroughEdge::washer && *in.washer_diameter < in.across_flats) return "the washer is smaller than the head";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [s, e, d_w, t, f_u, gamma_M2, edge] = in;
        if (edge == PullThroughEdge::washer && d_w) {
            FAYWRIGHT_STEP(B_p_Rk, 0.6 * pi * *d_w * t * f_u);
            FAYWRIGHT_STEP(B_p_Rd, B_p_Rk / gamma_M2);
            return {B_p_Rd, B_p_Rk, *d_w};
        }
        FAYWRIGHT_STEP(d_m, (s + e) / 2.0);
        FAYWRIGHT_STEP(B_p_Rk, 0.6 * pi * d_m * t * f_u);
        FAYWRIGHT_STEP(B_p_Rd, B_p_Rk / gamma_M2);
        return {B_p_Rd, B_p_Rk, d_m};
    }
};

}  // namespace faywright
