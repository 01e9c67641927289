// SPDX-License-Identifier: MIT
#pragma once

#include "mechanics/instantaneous_centre.hpp"
#include "mechanics/position.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <optional>
#include <vector>

namespace faywright {

/// Where the centre of rotation is looked for.
enum class CentreSearch {
    plane,  ///< anywhere in the plane: all three equations of equilibrium hold
    line,   ///< on the line through the centroid at right angles to the load, as older hand methods do
};

template <>
struct Words<CentreSearch> {
    static constexpr std::array<std::pair<CentreSearch, std::string_view>, 2> all{
        {{CentreSearch::plane, "plane"}, {CentreSearch::line, "line"}}};
};

/// In-plane load that a bolt pattern carries at the end, by the instantaneous centre of rotation.
///
/// The parts turn about a centre as rigid bodies; a bolt at distance r from it deforms by D = D_max r/r_max and
/// answers with R = R_ult (1 - e^(-D/D_0))^lambda at right angles to r (D_0 = 1/mu: 10 per inch is 2.54 mm).
/// The centre is where forces and moments balance the load; then P = C R_ult. The inputs' force and moment give
/// direction and line of action, and the answer says how many times that load is carried.
/// Measured on one steel bolt in steel plates: where bearing of aluminium governs, the bolts are not the ductile
/// link and this is an upper bound only. The search on a line leaves a force across the load unbalanced
/// unless the pattern is symmetrical about the load's direction (0.6 % on C in a known case).
struct BoltGroupUltimate {
    static constexpr Formula formula{
        .name = "bolt-group-ultimate",
        .title = "Ultimate in-plane load of a bolt pattern by the instantaneous centre",
        .range = "ductile steel bolts in steel plates; an upper bound where aluminium bears",
        .source = {"AISC Manual of Steel Construction", "13th edition", "Part 7, after Crawford and Kulak 1971", Basis::memory}};

    struct Inputs {
        std::vector<Position> positions;
        Force force_x, force_y;
        Moment moment;
        Length reference_x = mm(0), reference_y = mm(0);
        Force bolt_ultimate;
        Length greatest_deformation = mm(8.636), deformation_scale = mm(2.54);
        double exponent = 0.55;
        CentreSearch search = CentreSearch::plane;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"positions", "", "positions of the bolts, x along and y across the rail"}, self.positions);
            field(Name{"force-x", "F_x", "force along x"}, self.force_x, Range{kN(-100000), kN(100000)});
            field(Name{"force-y", "F_y", "force along y"}, self.force_y, Range{kN(-100000), kN(100000)});
            field(Name{"moment", "M_z", "moment about the reference point, anticlockwise (x to y) positive"}, self.moment,
                  Range{kNm(-100000), kNm(100000)});
            field(Name{"reference-x", "x_ref", "reference point of the load, along x"}, self.reference_x, Range{mm(-100000), mm(100000)},
                  defaulted);
            field(Name{"reference-y", "y_ref", "reference point of the load, along y"}, self.reference_y, Range{mm(-100000), mm(100000)},
                  defaulted);
            field(Name{"bolt-ultimate", "R_ult", "ultimate shear force of one bolt"}, self.bolt_ultimate, Range{newton(1), kN(100000)});
            field(Name{"greatest-deformation", "D_max", "deformation at which the farthest bolt fails"}, self.greatest_deformation,
                  Range{mm(0.1), mm(100)}, defaulted);
            field(Name{"deformation-scale", "D_0", "deformation scale of the bolt's law, 1/mu"}, self.deformation_scale,
                  Range{mm(0.1), mm(100)}, defaulted);
            field(Name{"exponent", "lambda", "exponent of the bolt's law"}, self.exponent, Range{0.1, 1.0}, defaulted);
            field(Name{"search", "", "where the centre is looked for"}, self.search, defaulted);
        }
    };

    struct Answer {
        double coefficient = 0.0;                  ///< C = P/R_ult; 0 for a pure moment
        Force ultimate;                            ///< P along the load
        Moment ultimate_moment;                    ///< the moment about the centroid that goes with it
        double load_factor = 0.0;                  ///< ultimate over the load given
        std::optional<Length> centre_x, centre_y;  ///< absent where the pattern does not turn
        double residual = 0.0;                     ///< unbalanced part of the bolts' resultant
        bool converged = false;
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"coefficient", "C", "ultimate load over the ultimate force of one bolt"}, self.coefficient);
            field(Name{"ultimate", "P", "ultimate force"}, self.ultimate);
            field(Name{"ultimate-moment", "M_u", "moment about the centroid at the ultimate force"}, self.ultimate_moment);
            field(Name{"load-factor", "eta", "ultimate load over the load given"}, self.load_factor);
            field(Name{"centre-x", "x_0", "instantaneous centre along x"}, self.centre_x);
            field(Name{"centre-y", "y_0", "instantaneous centre along y"}, self.centre_y);
            field(Name{"residual", "", "force and moment left unbalanced, as a share"}, self.residual);
            field(Name{"converged", "", "whether the search met its tolerance"}, self.converged);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (const char* why = pattern_refusal(in.positions)) return why;
        const auto pattern = inertia_of(in.positions);
        const Moment about =
            in.moment + (in.reference_x - pattern.centroid.x) * in.force_y - (in.reference_y - pattern.centroid.y) * in.force_x;
        if (pattern.is_point() && about != Nm(0)) return "a single bolt cannot take a moment";
        const Force size = magnitude({in.force_x, in.force_y});
        if (size == newton(0) && about == Nm(0)) return "a load without force or moment has no direction";
        if (in.search == CentreSearch::line && size == newton(0)) return "the search on a line needs a force";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [positions, F_x, F_y, M_z, x_ref, y_ref, R_ult, D_max, D_0, lambda, search] = in;
        const std::span<const Position> bolts = positions;
        const auto pattern = inertia_of(bolts);
        FAYWRIGHT_STATED(x_c, "Σx/n", pattern.centroid.x);
        FAYWRIGHT_STATED(y_c, "Σy/n", pattern.centroid.y);
        FAYWRIGHT_STEP(M_c, M_z + (x_ref - x_c) * F_y - (y_ref - y_c) * F_x);
        FAYWRIGHT_STEP(F, sqrt(squared(F_x) + squared(F_y)));
        const ShearLaw law{double(D_max / D_0), lambda};

        Answer answer;
        if (pattern.is_point()) {
            const auto n = static_cast<double>(bolts.size());
            if (bolts.empty() || F == newton(0)) return answer;
            FAYWRIGHT_STATED(C, "n (1 - e^(-D_max/D_0))^λ", n * law.at(1.0));
            answer.coefficient = C;
            answer.converged = true;
        } else {
            // Force and moment are made alike by the radius of gyration.
            const Length scale = sqrt(pattern.polar() / static_cast<double>(bolts.size()));
            const Force size = sqrt(squared(F) + squared(M_c / scale));
            if (size == newton(0)) return answer;
            // A load this close to the centroid moves the pattern without turning it, whichever the search.
            const bool by_line = search == CentreSearch::line && F > newton(0) && abs(M_c / scale) > 1e-9 * F;
            const std::array<double, 3> load{F_x / size, F_y / size, M_c / scale / size};
            const auto found = by_line ? find_centre_on_line(bolts, pattern.centroid, scale, law, F_x / F, F_y / F, M_c / scale / F)
                                       : find_centre(bolts, pattern.centroid, scale, law, load);
            answer.residual = found.residual;
            answer.converged = found.converged;
            if (std::abs(found.turn) > 1e-6 * std::hypot(found.u, found.v)) {
                FAYWRIGHT_STATED(x_0, "x where forces and moments of the bolts balance the load", x_c - scale * (found.v / found.turn));
                FAYWRIGHT_STATED(y_0, "y where forces and moments of the bolts balance the load", y_c + scale * (found.u / found.turn));
                answer.centre_x = x_0;
                answer.centre_y = y_0;
            }
            FAYWRIGHT_STATED(C, "resultant of (1 - e^(-D/D_0))^λ over the bolts, D = D_max r/r_max, along the load",
                             found.factor * double(F / size));
            answer.coefficient = C;
            if (F == newton(0)) {
                FAYWRIGHT_STATED(M_u, "R_ult Σ r (1 - e^(-D/D_0))^λ", R_ult * scale * (M_c < Nm(0) ? -found.factor : found.factor));
                FAYWRIGHT_STEP(eta, M_u / M_c);
                answer.ultimate = newton(0);
                answer.ultimate_moment = M_u;
                answer.load_factor = eta;
                if (!answer.converged) answer.outside_range = "the search for the centre did not settle";
                return answer;
            }
        }
        const double C = answer.coefficient;
        FAYWRIGHT_STEP(P, C * R_ult);
        FAYWRIGHT_STEP(eta, P / F);
        FAYWRIGHT_STEP(M_u, eta * M_c);
        answer.ultimate = P;
        answer.ultimate_moment = M_u;
        answer.load_factor = eta;
        if (!answer.converged) answer.outside_range = "the search for the centre did not settle";
        return answer;
    }
};

}  // namespace faywright
