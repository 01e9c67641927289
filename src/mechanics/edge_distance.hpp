// SPDX-License-Identifier: MIT
#pragma once

#include "mechanics/design_method.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <optional>

namespace faywright {

/// How the edge of a ply was made.
enum class EdgeCut { sheared, sawn, rolled };

template <>
struct Words<EdgeCut> {
    static constexpr std::array<std::pair<EdgeCut, std::string_view>, 3> all{
        {{EdgeCut::sheared, "sheared"}, {EdgeCut::sawn, "sawn"}, {EdgeCut::rolled, "rolled"}}};
};

/// Least and most distances of holes from ends, edges and one another.
///
/// Too little: the ply tears, no tool fits. Too much: the ply lifts between bolts and water gets in, or it buckles.
/// Eurocodes count in hole diameters (e 1.2, p_1 2.2, p_2 2.4) and limit edges to 4 t + 40 mm where exposed, pitches to the
/// smaller of 14 t and 200 mm; the Aluminum Design Manual counts in bolt diameters (e 1.5, p 2.5) and sets no upper limit here;
/// AS 4100 by cut of the edge (1.75, 1.5, 1.25), p 2.5, edges to min(12 t, 150 mm), pitches to min(15 t, 200 mm).
struct EdgeDistance {
    static constexpr Formula formula{.name = "edge-distance",
                                     .title = "Least and most end, edge and pitch distances of holes",
                                     .range = "normal round holes",
                                     .source = {"EN 1993-1-8", "2005", "Table 3.3", Basis::published}};

    /// In the order of DesignMethod.
    static constexpr std::array<Source, 4> sources{{formula.source, Source{"EN 1999-1-1", "2007", "Table 8.2", Basis::memory},
                                                    Source{"Aluminum Design Manual", "2015", "J.3", Basis::memory},
                                                    Source{"AS 4100", "1998", "Table 9.5.2", Basis::memory}}};
    static constexpr const Source& source(DesignMethod method) { return sources[static_cast<std::size_t>(method)]; }

    struct Inputs {
        Length bolt_diameter, hole_diameter, thickness;
        Length end_distance, edge_distance;
        std::optional<Length> pitch, gauge;
        bool exposed = true;
        EdgeCut cut = EdgeCut::sawn;
        DesignMethod method = DesignMethod::en_1999;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"bolt-diameter", "d", "nominal diameter of the bolt"}, self.bolt_diameter, Range{mm(1), mm(200)});
            field(Name{"hole-diameter", "d_0", "diameter of the hole"}, self.hole_diameter, Range{mm(1), mm(220)});
            field(Name{"thickness", "t", "thickness of the thinner outer ply"}, self.thickness, Range{mm(0.5), mm(200)});
            field(Name{"end-distance", "e_1", "centre of hole to the end, along the force"}, self.end_distance, Range{mm(1), mm(10000)});
            field(Name{"edge-distance", "e_2", "centre of hole to the edge, across the force"}, self.edge_distance,
                  Range{mm(1), mm(10000)});
            field(Name{"pitch", "p_1", "distance to the next bolt along the force"}, self.pitch, Range{mm(1), mm(10000)});
            field(Name{"gauge", "p_2", "distance to the next bolt across the force"}, self.gauge, Range{mm(1), mm(10000)});
            field(Name{"exposed", "", "whether weather reaches the joint"}, self.exposed, defaulted);
            field(Name{"cut", "", "how the edge was made (AS 4100)"}, self.cut, defaulted);
            field(Name{"method", "", "code of practice"}, self.method, defaulted);
        }
    };

    struct Answer {
        double utilisation = 0.0;  ///< worst of least over actual: above 1 the hole is too close
        double openness = 0.0;     ///< worst of actual over most: above 1 the ply is held too seldom
        Length least_edge, least_pitch, least_gauge;
        std::optional<Length> most_edge, most_pitch;  ///< absent: no limit
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"utilisation", "U_least", "worst of least over actual distance"}, self.utilisation);
            field(Name{"openness", "U_most", "worst of actual over most distance"}, self.openness);
            field(Name{"least-edge", "e_least", "least end and edge distance"}, self.least_edge);
            field(Name{"least-pitch", "p_least", "least pitch along the force"}, self.least_pitch);
            field(Name{"least-gauge", "g_least", "least pitch across the force"}, self.least_gauge);
            field(Name{"most-edge", "e_most", "greatest end and edge distance"}, self.most_edge);
            field(Name{"most-pitch", "p_most", "greatest pitch either way"}, self.most_pitch);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (in.hole_diameter < in.bolt_diameter) return "the hole is smaller than the bolt";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [d, d_0, t, e_1, e_2, p_1, p_2, exposed, cut, method] = in;
        Answer answer;
        switch (method) {
            case DesignMethod::en_1993:
            case DesignMethod::en_1999: {
                FAYWRIGHT_STEP(e_least, 1.2 * d_0);
                FAYWRIGHT_STEP(p_least, 2.2 * d_0);
                FAYWRIGHT_STEP(g_least, 2.4 * d_0);
                FAYWRIGHT_STEP(p_most, min(14.0 * t, mm(200)));
                answer.least_edge = e_least;
                answer.least_pitch = p_least;
                answer.least_gauge = g_least;
                answer.most_pitch = p_most;
                if (exposed) {
                    FAYWRIGHT_STEP(e_most, 4.0 * t + mm(40));
                    answer.most_edge = e_most;
                } else if (method == DesignMethod::en_1999) {
                    FAYWRIGHT_STEP(e_most, max(12.0 * t, mm(150)));
                    answer.most_edge = e_most;
                }
                break;
            }
            case DesignMethod::adm: {
                FAYWRIGHT_STEP(e_least, 1.5 * d);
                FAYWRIGHT_STEP(p_least, 2.5 * d);
                answer.least_edge = e_least;
                answer.least_pitch = answer.least_gauge = p_least;
                break;
            }
            case DesignMethod::as_4100: {
                FAYWRIGHT_STATED(k_e, "1.75 sheared, 1.5 sawn, 1.25 rolled",
                                 cut == EdgeCut::sheared ? 1.75
                                 : cut == EdgeCut::sawn  ? 1.5
                                                         : 1.25);
                FAYWRIGHT_STEP(e_least, k_e * d);
                FAYWRIGHT_STEP(p_least, 2.5 * d);
                FAYWRIGHT_STEP(e_most, min(12.0 * t, mm(150)));
                FAYWRIGHT_STEP(p_most, min(15.0 * t, mm(200)));
                answer.least_edge = e_least;
                answer.least_pitch = answer.least_gauge = p_least;
                answer.most_edge = e_most;
                answer.most_pitch = p_most;
                break;
            }
        }
        auto close = double(answer.least_edge / min(e_1, e_2));
        if (p_1) close = max(close, double(answer.least_pitch / *p_1));
        if (p_2) close = max(close, double(answer.least_gauge / *p_2));
        auto wide = 0.0;
        if (answer.most_edge) wide = double(max(e_1, e_2) / *answer.most_edge);
        if (answer.most_pitch && p_1) wide = max(wide, double(*p_1 / *answer.most_pitch));
        if (answer.most_pitch && p_2) wide = max(wide, double(*p_2 / *answer.most_pitch));
        FAYWRIGHT_STATED(U_least, "greatest of least over actual: e_least/e, p_least/p_1, g_least/p_2", close);
        FAYWRIGHT_STATED(U_most, "greatest of actual over most: e/e_most, p/p_most", wide);
        answer.utilisation = U_least;
        answer.openness = U_most;
        return answer;
    }
};

}  // namespace faywright
