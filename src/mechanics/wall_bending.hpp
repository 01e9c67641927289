// SPDX-License-Identifier: MIT
#pragma once

#include "mechanics/wall_strip.hpp"
#include "mechanics/washer_contact.hpp"
#include "quantity/source.hpp"
#include "quantity/steps.hpp"

#include <optional>

namespace faywright {

/// What holds the wall along its long edges.
enum class WallSupport { closed, clamped, simply_supported };

template <>
struct Words<WallSupport> {
    static constexpr std::array<std::pair<WallSupport, std::string_view>, 3> all{{
        {WallSupport::closed, "closed section"},
        {WallSupport::clamped, "clamped"},
        {WallSupport::simply_supported, "simply supported"},
    }};
};

/// How head and washer press on the wall.
enum class WallLoading {
    uniform,         ///< evenly over the washer's face
    elastic_washer,  ///< a washer that bends, pressed evenly under the head
    rigid_washer,    ///< a washer that stays flat
};

template <>
struct Words<WallLoading> {
    static constexpr std::array<std::pair<WallLoading, std::string_view>, 3> all{{
        {WallLoading::uniform, "uniform"},
        {WallLoading::elastic_washer, "elastic washer"},
        {WallLoading::rigid_washer, "rigid washer"},
    }};
};

/// One wall of a hollow section, bent between its webs by the bolt: stiffness, stresses, first yield and collapse.
///
/// The wall is an endless strip whose span is the clear width b: the corner, as thick as the web, hardly bends, so the strip ends at
/// the web's face and sits there on a rigid block of half a web's thickness. Block and web answer each wave of the
/// strip's edge by turning and settling (both walls are loaded alike, so the web bends symmetrically and is squeezed). The
/// simply supported strip under a ring of force is known in closed form; what the webs add is one integral over the
/// wave number along the rail, done with sixteen Gauss-Laguerre points. The hole is released of the moments on its edge by three
/// sources at its centre; shear deflection is added. The washer touches where it presses: its force divides between the ring under the head
/// and its rim, with a lobed part (cos 2θ) round the rim as the wall dishes across but not along, by least complementary energy of wall and
/// washer, no part pulling. Nothing is fitted.
///
/// k is force over the mean deflection of the washer's face (for the rigid washer: of the washer). First yield is the hole's edge, in one
/// direction, or the wall at the web's face, where the strain along the rail is held. Collapse by yield lines: a circular fan of
/// radius b/2 about the hole, m_p = f_o t²/4, on hinges 2 π m_p (1 - d_h/b), clamped 2 π m_p (2 - d_h/b), over 1 - 2 r_q/b where r_q
/// is the mean radius of the washer's pressure.
///
/// Against finite elements, for b/d_w 1.4 to 3.07 and b/t 10.5 to 31: uniform pressure ±2.5 % on stiffness, ±3.2 % on stress at the
/// hole, ±4 % on first yield; elastic washer ±5 % and ±6 % (two cases only); rigid washer -16 to +1.2 % on stiffness and -13 to +7 %
/// on stress at the hole, first yield -6 to +15 %. The stress at the web of the closed section is told
/// 5 to 22 % too high, since the block there is not quite rigid; of the clamped strip -8 to +2 %. Deflections to half the thickness.
struct WallBending {
    static constexpr Formula formula{
        .name = "wall-bending",
        .title = "A wall of a hollow section bent by the bolt",
        .range = "b/d_w from 1.3, b/t from 8, d_h/b to 0.45; deflection to t/2; elastic; bolt midway and away from the section's end",
        .source = {"strip with hole between webs; yield lines as Save and Massonnet", "", "our derivation, held against finite elements",
                   Basis::practice}};

    struct Inputs {
        Length clear_width, wall_thickness;
        std::optional<Length> web_thickness;  ///< absent: as the wall
        Length inside_height;
        Length hole_diameter, washer_diameter;
        std::optional<Length> head_diameter;     ///< absent: as the washer
        std::optional<Length> washer_thickness;  ///< the elastic washer wants it
        Stress washer_modulus = GPa(210);
        Stress elastic_modulus;
        double poisson_ratio = 0.3;
        Stress proof_strength;
        Force force = newton(0);
        WallSupport support = WallSupport::closed;
        WallLoading loading = WallLoading::uniform;

        bool operator==(const Inputs&) const = default;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"clear-width", "b", "clear width of the wall between the webs"}, self.clear_width, Range{mm(5), mm(2000)});
            field(Name{"wall-thickness", "t", "thickness of the wall"}, self.wall_thickness, Range{mm(0.3), mm(100)});
            field(Name{"web-thickness", "t_w", "thickness of the webs, where it differs"}, self.web_thickness, Range{mm(0.3), mm(100)});
            field(Name{"inside-height", "h", "clear height of the webs"}, self.inside_height, Range{mm(5), mm(2000)});
            field(Name{"hole-diameter", "d_h", "hole in the wall"}, self.hole_diameter, Range{mm(1), mm(500)});
            field(Name{"washer-diameter", "d_w", "outside diameter of what bears on the wall"}, self.washer_diameter,
                  Range{mm(2), mm(1000)});
            field(Name{"head-diameter", "d_k", "outside diameter of what presses the washer"}, self.head_diameter, Range{mm(2), mm(1000)});
            field(Name{"washer-thickness", "t_s", "thickness of the washer"}, self.washer_thickness, Range{mm(0.1), mm(100)});
            field(Name{"washer-modulus", "E_s", "elastic modulus of the washer"}, self.washer_modulus, Range{GPa(1), GPa(1000)}, defaulted);
            field(Name{"elastic-modulus", "E", "elastic modulus of the wall"}, self.elastic_modulus, Range{GPa(1), GPa(1000)});
            field(Name{"poisson-ratio", "nu", "Poisson's ratio of the wall"}, self.poisson_ratio, Range{0.0, 0.45}, defaulted);
            field(Name{"proof-strength", "f_o", "proof strength of the wall"}, self.proof_strength, Range{MPa(10), MPa(2000)});
            field(Name{"force", "F", "force that bends the wall"}, self.force, Range{kN(0), kN(100000)}, defaulted);
            field(Name{"support", "", "what holds the wall along its edges"}, self.support, defaulted);
            field(Name{"loading", "", "how head and washer press"}, self.loading, defaulted);
        }
    };

    struct Answer {
        Stiffness stiffness;
        Length deflection;
        Stress hole_edge_stress;
        Stress web_root_stress;  ///< bending stress across the rail at the web's face
        Force first_yield_force;
        Length first_yield_deflection;
        Force collapse_least, collapse_most;
        double coefficient = 0.0;  ///< α in w = α F b²/D, as plate tables print it
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"stiffness", "k", "stiffness of one wall"}, self.stiffness);
            field(Name{"deflection", "w", "deflection under the force"}, self.deflection);
            field(Name{"hole-edge-stress", "sigma_h", "stress at the edge of the hole under the force"}, self.hole_edge_stress);
            field(Name{"web-root-stress", "sigma_r", "bending stress at the web's face under the force"}, self.web_root_stress);
            field(Name{"first-yield-force", "F_y", "force at which the wall first yields"}, self.first_yield_force);
            field(Name{"first-yield-deflection", "w_y", "deflection at first yield"}, self.first_yield_deflection);
            field(Name{"collapse-least", "F_c1", "force at which a wall on hinges collapses"}, self.collapse_least);
            field(Name{"collapse-most", "F_c2", "force at which a clamped wall collapses"}, self.collapse_most);
            field(Name{"coefficient", "alpha", "deflection times plate stiffness over force and squared width"}, self.coefficient);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (in.washer_diameter >= in.clear_width) return "the washer stands on the webs";
        if (in.hole_diameter > 0.98 * in.washer_diameter) return "the washer falls through the hole";
        if (in.wall_thickness > in.clear_width / 2.0) return "the wall is no plate: thicker than half its width";
        if (in.loading != WallLoading::elastic_washer) return nullptr;
        if (!in.washer_thickness) return "an elastic washer needs its thickness";
        if (in.head_diameter && *in.head_diameter <= 1.02 * in.hole_diameter) return "the head is no wider than the hole";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [b, t, t_w, h, d_h, d_w, d_k, t_s, E_s, E, nu, f_o, F, support, loading] = in;
        const auto per_unit = series(in);
        FAYWRIGHT_STEP(D, E * cubed(t) / (12.0 * (1.0 - squared(nu))));
        FAYWRIGHT_STATED(
            delta, "deflection per force of the strip with its hole under the load, webs restraining its edges (series in the description)",
            per_unit.compliance / (E * b));
        FAYWRIGHT_STEP(alpha, delta * D / squared(b));
        FAYWRIGHT_STEP(k, 1.0 / delta);
        FAYWRIGHT_STATED(s_h, "b²·stress at the hole's edge per force, the greater of along and across (same series)", per_unit.hole);
        FAYWRIGHT_STATED(s_r, "b²·bending stress at the web's face per force (same series)", per_unit.root);
        FAYWRIGHT_STEP(w, F / k);
        FAYWRIGHT_STEP(sigma_h, s_h * F / squared(b));
        FAYWRIGHT_STEP(sigma_r, s_r * F / squared(b));
        FAYWRIGHT_STEP(F_y, f_o * squared(b) / max(s_h, s_r * sqrt(1.0 - nu + squared(nu))));
        FAYWRIGHT_STEP(w_y, F_y / k);
        FAYWRIGHT_STEP(m_p, f_o * squared(t) / 4.0);
        FAYWRIGHT_STEP(r_q, (cubed(d_w) - cubed(d_h)) / (3.0 * (squared(d_w) - squared(d_h))));
        FAYWRIGHT_STEP(F_c1, 2.0 * pi * m_p * (1.0 - d_h / b) / (1.0 - 2.0 * r_q / b));
        FAYWRIGHT_STEP(F_c2, 2.0 * pi * m_p * (2.0 - d_h / b) / (1.0 - 2.0 * r_q / b));
        Answer answer{k, w, sigma_h, sigma_r, F_y, w_y, F_c1, F_c2, alpha};
        if (b < 1.3 * d_w)
            answer.outside_range = "the washer covers so much of the wall that shear decides (b/d_w below 1.3)";
        else if (b < 8.0 * t)
            answer.outside_range = "the wall is thick for its width (b/t below 8)";
        else if (d_h > 0.45 * b)
            answer.outside_range = "the hole is wide for the wall (d_h/b above 0.45)";
        else if (F > F_y)
            answer.outside_range = "the force is above first yield: deflection and stresses are elastic estimates";
        else if (w > t / 2.0)
            answer.outside_range = "the wall deflects by more than half its thickness, where it stiffens as a membrane";
        return answer;
    }

private:
    struct PerUnit {
        double compliance, hole, root;
    };

    /// The series in ratios: E and b are one.
    static PerUnit series(const Inputs& in) {
        using namespace detail::strip;
        const auto ratio = [&in](Length x) { return double(x / in.clear_width); };
        const double t = ratio(in.wall_thickness), hole = ratio(in.hole_diameter), washer = ratio(in.washer_diameter),
                     nu = in.poisson_ratio;
        const Web web{in.support == WallSupport::closed    ? Web::Hold::web
                      : in.support == WallSupport::clamped ? Web::Hold::clamp
                                                           : Web::Hold::hinge,
                      ratio(in.inside_height), ratio(in.web_thickness.value_or(in.wall_thickness))};
        const Load face = Load::annulus(hole, washer), rim = Load::ring(washer / 2.0), lobe = Load::ring(washer / 2.0, true);
        const auto summed = [](const auto& wall, const Vector<3>& q, double compliance) -> PerUnit {
            double along = 0.0, across = 0.0, root = 0.0;
            for (std::size_t i = 0; i < 3; ++i) {
                along += q[i] * wall.hole_along[i];
                across += q[i] * wall.hole_across[i];
                root += q[i] * wall.root[i];
            }
            return {compliance, std::max(std::abs(along), std::abs(across)), std::abs(root)};
        };
        const auto among = [](const auto& wall) {
            Compliance g{};
            for (std::size_t i = 0; i < 3; ++i)
                for (std::size_t j = 0; j < 3; ++j) g[i][j] = wall.compliance[i][j];
            return g;
        };
        if (in.loading == WallLoading::uniform) {
            const auto wall = wall_response<1>({face}, t, hole, nu, web);
            return {wall.compliance[0][0], std::max(std::abs(wall.hole_along[0]), std::abs(wall.hole_across[0])), std::abs(wall.root[0])};
        }
        if (in.loading == WallLoading::rigid_washer) {
            const auto wall = wall_response<3>({face, rim, lobe}, t, hole, nu, web);
            const auto q = shares(among(wall), {});
            double work = 0.0;
            for (std::size_t i = 0; i < 3; ++i)
                for (std::size_t j = 0; j < 3; ++j) work += q[i] * q[j] * wall.compliance[i][j];
            return summed(wall, q, work);
        }
        const Load pressed = Load::annulus(hole, std::min(washer, ratio(in.head_diameter.value_or(in.washer_diameter))));
        const auto wall = wall_response<4>({pressed, rim, lobe, face}, t, hole, nu, web);
        const double washer_thickness = ratio(in.washer_thickness.value_or(in.wall_thickness));
        const auto ring =
            washer_compliance(hole, washer, washer_thickness, double(in.washer_modulus / in.elastic_modulus), nu, {pressed, rim, lobe});
        const auto q = shares(among(wall), ring);
        double mean = 0.0;
        for (std::size_t i = 0; i < 3; ++i) mean += q[i] * wall.compliance[3][i];
        return summed(wall, q, mean);
    }
};

}  // namespace faywright
