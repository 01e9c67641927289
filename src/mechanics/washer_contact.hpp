// SPDX-License-Identifier: MIT
#pragma once

#include "mechanics/ring_load.hpp"

/// How a washer shares its force between what lies under the head and its own rim. All in the ratios of ring_load.hpp.
namespace faywright::detail::strip {

/// Loads a washer can pass on: under the head (or evenly), round its rim, and round its rim by cos 2θ.
using WasherLoads = std::array<Load, 3>;
using Compliance = Matrix<3, 3>;

/// A ring with free edges bent by its rim's cos 2θ load: the open plate's answer and four terms r², r⁴, r⁻² and 1
/// (times cos 2θ) that free both edges of moment and shear. Lengths by the rim's radius; `u` is the bore.
inline double lobed_ring(double u, double nu, const Plate& plate, double rim) {
    const auto moment = [nu](double p, double power) { return -(p * (p - 1.0) + nu * (p - 4.0)) * power; };
    const auto shear = [nu](double p, double power) { return (-(p * p - 4.0) * (p - 2.0) + 4.0 * (1.0 - nu) * (p - 1.0)) * power; };
    constexpr Vector<4> exponent{2.0, 4.0, -2.0, 0.0};
    const double u2 = u * u;
    const Vector<4> power{1.0, u2, 1.0 / (u2 * u2), 1.0 / u2};  // u^(p-2)
    Matrix<4, 4> free{};
    for (std::size_t i = 0; i < 4; ++i) {
        free[0][i] = moment(exponent[i], power[i]);
        free[1][i] = shear(exponent[i], power[i] / u);
        free[2][i] = moment(exponent[i], 1.0);
        free[3][i] = shear(exponent[i], 1.0);
    }
    const double k = 1.0 / (16.0 * pi * plate.bending);
    Matrix<4, 1> right{};
    right[0][0] = -k * (moment(2.0, 0.5) + moment(4.0, -u2 / 6.0));
    right[1][0] = -k * (shear(2.0, 0.5 / u) + shear(4.0, -u / 6.0));
    right[2][0] = -k * (moment(0.0, 0.5) + moment(-2.0, -1.0 / 6.0));
    right[3][0] = -k * (shear(0.0, 0.5) + shear(-2.0, -1.0 / 6.0));
    solve(free, right);
    return rim * rim * (k / 3.0 + right[0][0] + right[1][0] + right[2][0] + right[3][0]) / 2.0 + 1.0 / (16.0 * pi * plate.shear);
}

/// Compliance of the free washer; good for differences of loads that hold each other in balance.
inline Compliance washer_compliance(double bore, double outside, double thickness, double modulus, double nu, const WasherLoads& loads) {
    const Plate plate = Plate::of(modulus, thickness, nu);
    const double inner = bore / 2.0, outer = outside / 2.0;
    Compliance g{};
    // What r² and ln r must add so that the moment at bore and rim vanishes.
    const double at_bore = plate.bending * (1.0 - nu) / (inner * inner), at_rim = plate.bending * (1.0 - nu) / (outer * outer);
    Vector<2> square{}, log{}, of_square{}, of_log{};
    for (std::size_t n = 0; n < 2; ++n) {
        const Load& load = loads[n];
        square[n] = load.mean([](double r) { return r * r; });
        log[n] = load.mean([](double r) { return std::log(r); });
        const double bore_moment = -(1.0 + nu) * log[n] / (4.0 * pi);
        const double rim_moment = -(2.0 * (1.0 + nu) * std::log(outer) + (1.0 - nu) * (1.0 - square[n] / (outer * outer))) / (8.0 * pi);
        of_log[n] = (rim_moment - bore_moment) / (at_bore - at_rim);
        of_square[n] = (bore_moment + at_bore * of_log[n]) / (2.0 * plate.bending * (1.0 + nu));
    }
    for (std::size_t i = 0; i < 2; ++i)
        for (std::size_t j = i; j < 2; ++j) {
            const double one = square[i] * of_square[j] + log[i] * of_log[j], other = square[j] * of_square[i] + log[j] * of_log[i];
            g[i][j] = g[j][i] = open_plate(loads[i], loads[j], plate, 1.0) + (one + other) / 2.0;
        }
    g[2][2] = lobed_ring(inner / outer, nu, plate, outer);
    return g;
}

/// Shares of the three loads, the first two adding up to the whole force: the least complementary energy of wall and washer, where the
/// rim takes between nothing and all and nowhere pulls. The energy is convex, so the best of the candidates that are allowed is the
/// answer: the free minimum, and the minima on the borders.
inline Vector<3> shares(const Compliance& wall, const Compliance& washer) {
    // x = (rim, lobe); the part under the head is 1 - rim.
    Compliance both = wall;
    for (std::size_t i = 0; i < 3; ++i)
        for (std::size_t j = 0; j < 3; ++j) both[i][j] += washer[i][j];
    const double a11 = both[1][1] - 2.0 * both[0][1] + both[0][0], a12 = both[1][2] - both[0][2], a22 = both[2][2];
    const double g1 = wall[1][0] - wall[0][0], g2 = wall[2][0];
    const auto energy = [&](double x, double y) { return (a11 * x * x + 2.0 * a12 * x * y + a22 * y * y) / 2.0 + g1 * x + g2 * y; };
    double rim = 0.0, lobe = 0.0, least = 0.0;
    const auto consider = [&](double x, double y) {
        constexpr double hair = 1e-12;
        if (!(x >= -hair && x <= 1.0 + hair && std::abs(y) <= x + hair)) return;
        if (const double e = energy(x, y); e < least) rim = x, lobe = y, least = e;
    };
    const auto unit = [](double x) { return std::clamp(x, 0.0, 1.0); };
    const double determinant = a11 * a22 - a12 * a12;
    consider((-g1 * a22 + g2 * a12) / determinant, (-g2 * a11 + g1 * a12) / determinant);
    const double up = unit(-(g1 + g2) / (a11 + 2.0 * a12 + a22)), down = unit(-(g1 - g2) / (a11 - 2.0 * a12 + a22));
    consider(up, up);
    consider(down, -down);
    consider(1.0, std::clamp(-(g2 + a12) / a22, -1.0, 1.0));
    return {1.0 - rim, rim, lobe};
}

}  // namespace faywright::detail::strip
