// SPDX-License-Identifier: MIT
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

/// Forces on rings about a hole, and what they do to an unbounded plate: common ground of wall_strip.hpp and washer_contact.hpp.
/// Everything here is a ratio: lengths by the clear width b between the webs, moduli by that of the wall, so that a
/// compliance comes in 1/(E b) and a stress per force in 1/b².
namespace faywright::detail::strip {

template <std::size_t N>
using Vector = std::array<double, N>;
template <std::size_t R, std::size_t C>
using Matrix = std::array<std::array<double, C>, R>;

inline constexpr double pi = std::numbers::pi;

/// Solves A X = B in place, with pivoting; the answer stands in B.
template <std::size_t N, std::size_t M>
void solve(Matrix<N, N>& a, Matrix<N, M>& b) {
    for (std::size_t k = 0; k < N; ++k) {
        std::size_t best = k;
        for (std::size_t i = k + 1; i < N; ++i)
            if (std::abs(a[i][k]) > std::abs(a[best][k])) best = i;
        std::swap(a[k], a[best]);
        std::swap(b[k], b[best]);
        for (std::size_t i = k + 1; i < N; ++i) {
            const double f = a[i][k] / a[k][k];
            for (std::size_t j = k; j < N; ++j) a[i][j] -= f * a[k][j];
            for (std::size_t j = 0; j < M; ++j) b[i][j] -= f * b[k][j];
        }
    }
    for (std::size_t k = N; k-- > 0;) {
        for (std::size_t j = 0; j < M; ++j) {
            for (std::size_t i = k + 1; i < N; ++i) b[k][j] -= a[k][i] * b[i][j];
            b[k][j] /= a[k][k];
        }
    }
}

/// Stiffness of a plate of unit modulus: in bending, and in shear across it.
struct Plate {
    double bending, shear;
    static Plate of(double modulus, double thickness, double nu) {
        return {modulus * thickness * thickness * thickness / (12.0 * (1.0 - nu * nu)), 5.0 / 12.0 * modulus * thickness / (1.0 + nu)};
    }
};

/// A unit force spread over rings about the hole, or over one ring by cos 2θ (no net force).
struct Load {
    int rings = 0;
    Vector<6> radius{}, weight{};
    bool lobed = false;

    static Load ring(double r, bool lobed = false) {
        Load load;
        load.rings = 1;
        load.radius[0] = r;
        load.weight[0] = 1.0;
        load.lobed = lobed;
        return load;
    }
    /// Uniform pressure: Gauss points in the radius squared.
    static Load annulus(double inside, double outside) {
        constexpr Vector<3> at{0.238619186083196909, 0.661209386466264514, 0.932469514203152028};
        constexpr Vector<3> weight{0.467913934572691047, 0.360761573048138608, 0.171324492379170345};
        const double low = inside * inside / 4.0, half = (outside * outside - inside * inside) / 8.0;
        Load load;
        load.rings = 6;
        for (std::size_t i = 0; i < 3; ++i) {
            load.radius[2 * i] = std::sqrt(low + half * (1.0 - at[i]));
            load.radius[2 * i + 1] = std::sqrt(low + half * (1.0 + at[i]));
            load.weight[2 * i] = load.weight[2 * i + 1] = weight[i] / 2.0;
        }
        return load;
    }
    /// Sum over the rings of weight times f(radius).
    template <class F>
    double mean(F&& f) const {
        double sum = 0.0;
        for (std::size_t i = 0; i < static_cast<std::size_t>(rings); ++i) sum += weight[i] * f(radius[i]);
        return sum;
    }
};

/// Deflection of an unbounded plate under one axisymmetric load, averaged over another; `log_scale` is what lengths are
/// measured against inside the logarithm.
inline double open_plate(const Load& one, const Load& other, const Plate& plate, double log_scale) {
    Vector<6> log_one{}, log_other{};
    for (std::size_t i = 0; i < 6; ++i) {
        if (i < static_cast<std::size_t>(one.rings)) log_one[i] = std::log(one.radius[i] * log_scale);
        if (i < static_cast<std::size_t>(other.rings)) log_other[i] = std::log(other.radius[i] * log_scale);
    }
    double sum = 0.0;
    for (std::size_t i = 0; i < static_cast<std::size_t>(one.rings); ++i)
        for (std::size_t j = 0; j < static_cast<std::size_t>(other.rings); ++j) {
            const double r = one.radius[i], s = other.radius[j], m = std::max(r, s), log_m = std::max(log_one[i], log_other[j]);
            sum += one.weight[i] * other.weight[j] *
                   (((r * r + s * s) * log_m - m * m) / (8.0 * pi * plate.bending) - log_m / (2.0 * pi * plate.shear));
        }
    return sum;
}

}  // namespace faywright::detail::strip
