// SPDX-License-Identifier: MIT
#pragma once

#include "mechanics/position.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstddef>
#include <span>

/// The search behind BoltGroupUltimate, in pure ratios: lengths by the pattern's radius of gyration, deformations
/// by the greatest allowed, forces by the ultimate force of a bolt.
namespace faywright {

/// R/R_ult = (1 - e^(-k δ))^λ, δ the deformation as a share of the greatest.
struct ShearLaw {
    double k;  ///< μ D_max
    double lambda;

    [[nodiscard]] double at(double share) const { return share > 0.0 ? std::pow(-std::expm1(-k * share), lambda) : 0.0; }
};

/// What the search found: a rigid motion (u, v, turn) at the centroid whose bolt forces balance `factor` times the load.
struct CentreFound {
    double u = 0.0, v = 0.0, turn = 0.0;
    double factor = 0.0;    ///< resultant of the bolts along the load, over R_ult
    double residual = 1.0;  ///< unbalanced part of the resultant, over its size
    bool converged = false;
};

namespace detail {

/// Deformations, forces and tangents of a whole pattern under a rigid motion q.
struct CentreSearchState {
    std::array<double, 3> resultant{};
    std::array<std::array<double, 3>, 3> tangent{};
    double greatest = 0.0;
};

inline CentreSearchState bolts_under(std::span<const Position> bolts, const Position& c, Length scale, const ShearLaw& law,
                                     const std::array<double, 3>& q) {
    CentreSearchState s;
    for (const auto& bolt : bolts) {
        const double x = (bolt.x - c.x) / scale, y = (bolt.y - c.y) / scale;
        const double du = q[0] - q[2] * y, dv = q[1] + q[2] * x;
        const double size = std::hypot(du, dv);
        s.greatest = std::max(s.greatest, size);
        // A bolt at the very centre has an endless tangent and no force; the floor keeps numbers finite.
        const double share = std::max(size, 1e-10);
        const double rise = -std::expm1(-law.k * share), force = std::pow(rise, law.lambda);
        const double secant = force / share;
        const double slope = law.lambda * force / rise * law.k * std::exp(-law.k * share);
        const double nu = du / share, nv = dv / share;
        const double fu = force * nu, fv = force * nv;
        s.resultant[0] += fu;
        s.resultant[1] += fv;
        s.resultant[2] += x * fv - y * fu;
        const double huu = secant + (slope - secant) * nu * nu, huv = (slope - secant) * nu * nv, hvv = secant + (slope - secant) * nv * nv;
        const double hur = -y * huu + x * huv, hvr = -y * huv + x * hvv;
        s.tangent[0][0] += huu;
        s.tangent[0][1] += huv;
        s.tangent[0][2] += hur;
        s.tangent[1][1] += hvv;
        s.tangent[1][2] += hvr;
        s.tangent[2][2] += -y * hur + x * hvr;
    }
    s.tangent[1][0] = s.tangent[0][1];
    s.tangent[2][0] = s.tangent[0][2];
    s.tangent[2][1] = s.tangent[1][2];
    return s;
}

inline double dot(const std::array<double, 3>& a, const std::array<double, 3>& b) { return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]; }

inline std::array<double, 3> cross(const std::array<double, 3>& a, const std::array<double, 3>& b) {
    return {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
}

inline std::array<double, 3> unit(const std::array<double, 3>& a) {
    const double size = std::sqrt(dot(a, a));
    return {a[0] / size, a[1] / size, a[2] / size};
}

}  // namespace detail

/// Finds the motion in which the bolts balance the load of unit direction `load` (force x, force y, moment over `scale`).
///
/// The force of a bolt grows with its deformation, so the bolts' strain energy is convex in the motion. For a
/// given work of the load the motion of least energy exists, is unique, and balances a multiple of the load:
/// a damped Newton search in two unknowns finds it from anywhere. Outside it one bracketed
/// search scales the work until the greatest deformation is the one allowed. Needs two bolts apart.
inline CentreFound find_centre(std::span<const Position> bolts, const Position& centroid, Length scale, const ShearLaw& law,
                               const std::array<double, 3>& load) {
    using detail::dot;
    // Two directions at right angles to the load.
    std::array<double, 3> away{};
    away[std::abs(load[0]) < 0.6 ? 0 : (std::abs(load[1]) < 0.6 ? 1 : 2)] = 1.0;
    const auto a = detail::unit(detail::cross(load, away));
    const auto b = detail::cross(load, a);

    double work = 1.0, least = 0.0, most = 0.0, ca = 0.0, cb = 0.0;
    CentreFound found;
    for (int outer = 0; outer < 100; ++outer) {
        const auto motion = [&](double p, double q) {
            return std::array<double, 3>{work * load[0] + p * a[0] + q * b[0], work * load[1] + p * a[1] + q * b[1],
                                         work * load[2] + p * a[2] + q * b[2]};
        };
        auto state = detail::bolts_under(bolts, centroid, scale, law, motion(ca, cb));
        for (int inner = 0; inner < 80; ++inner) {
            const double ga = dot(state.resultant, a), gb = dot(state.resultant, b);
            const double size = std::sqrt(dot(state.resultant, state.resultant));
            if (std::hypot(ga, gb) <= 1e-11 * size) break;
            const auto times = [&](const std::array<double, 3>& d) {
                return std::array<double, 3>{dot(state.tangent[0], d), dot(state.tangent[1], d), dot(state.tangent[2], d)};
            };
            const auto ta = times(a), tb = times(b);
            const double damp = 1e-12 * (dot(ta, a) + dot(tb, b)) + 1e-300;
            const double haa = dot(ta, a) + damp, hab = dot(ta, b), hbb = dot(tb, b) + damp;
            const double det = haa * hbb - hab * hab;
            if (!(det > 0.0)) break;
            const double pa = -(hbb * ga - hab * gb) / det, pb = -(haa * gb - hab * ga) / det;
            const double start = ga * pa + gb * pb;  // falls along the step: negative
            double step = 1.0;
            for (int halving = 0; halving < 50; ++halving, step *= 0.5) {
                state = detail::bolts_under(bolts, centroid, scale, law, motion(ca + step * pa, cb + step * pb));
                const double end = dot(state.resultant, a) * pa + dot(state.resultant, b) * pb;
                if (end <= -0.5 * start) break;  // not yet past the valley, or past it by less than half
            }
            ca += step * pa;
            cb += step * pb;
        }
        found.factor = dot(state.resultant, load);
        const double size = std::sqrt(dot(state.resultant, state.resultant));
        found.residual = size > 0.0 ? std::hypot(dot(state.resultant, a), dot(state.resultant, b)) / size : 1.0;
        const auto q = motion(ca, cb);
        found.u = q[0];
        found.v = q[1];
        found.turn = q[2];
        const double greatest = state.greatest;
        if (std::abs(greatest - 1.0) <= 1e-11) {
            found.converged = found.residual <= 1e-7;
            return found;
        }
        (greatest < 1.0 ? least : most) = work;
        double next = work / greatest;
        if (most > 0.0 && !(next > least && next < most)) next = 0.5 * (least + most);
        if (!(std::abs(next - work) > 1e-15 * work)) {
            found.converged = found.residual <= 1e-7 && std::abs(greatest - 1.0) <= 1e-7;
            return found;
        }
        ca *= next / work;
        cb *= next / work;
        work = next;
    }
    return found;
}

/// The older search: the centre on the line through the centroid at right angles to the load (unit `ux`, `uy`, passing at
/// `arm` from the centroid, all over `scale`), so that force along the load and moment agree; the force across it is left over.
inline CentreFound find_centre_on_line(std::span<const Position> bolts, const Position& centroid, Length scale, const ShearLaw& law,
                                       double ux, double uy, double arm) {
    // The motion about a centre at distance r0 on the far side of the load: u·r0 at the centroid, turning as the moment does.
    const double turn = arm < 0.0 ? -1.0 : 1.0;
    const auto at = [&](double r0) {
        std::array<double, 3> q{ux * r0, uy * r0, turn};
        const double greatest = detail::bolts_under(bolts, centroid, scale, law, q).greatest;
        for (double& part : q) part /= greatest;
        return q;
    };
    const auto excess = [&](double r0) {
        const auto state = detail::bolts_under(bolts, centroid, scale, law, at(r0));
        return state.resultant[0] * ux * arm + state.resultant[1] * uy * arm - state.resultant[2];
    };
    const double sign = turn;
    double low = 0.0, high = 1e-3;
    if (sign * excess(0.0) >= 0.0) {
        // Unsymmetrical patterns can turn about a point on the load's side of the centroid, but short of the load.
        low = -std::abs(arm);
        high = 0.0;
    }
    while (sign * excess(high) < 0.0 && high < 1e9) {
        low = high;
        high *= 2.0;
    }
    for (int i = 0; i < 200 && high - low > 1e-15 * max(std::abs(high), std::abs(low)); ++i) {
        const double middle = 0.5 * (low + high);
        (sign * excess(middle) < 0.0 ? low : high) = middle;
    }
    const auto q = at(0.5 * (low + high));
    const auto state = detail::bolts_under(bolts, centroid, scale, law, q);
    CentreFound found{q[0], q[1], q[2]};
    const double along = state.resultant[0] * ux + state.resultant[1] * uy;
    const double norm = std::sqrt(1.0 + arm * arm);
    found.factor = along * norm;
    found.residual =
        std::abs(state.resultant[0] * -uy + state.resultant[1] * ux) / std::sqrt(detail::dot(state.resultant, state.resultant));
    found.converged = high < 1e9 && std::abs(excess(0.5 * (low + high))) <= 1e-7 * norm;
    return found;
}

}  // namespace faywright
