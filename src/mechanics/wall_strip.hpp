// SPDX-License-Identifier: MIT
#pragma once

#include "mechanics/ring_load.hpp"

/// The series behind WallBending: an infinite strip with a hole, held by two webs, loaded on rings about the hole.
/// All in the ratios of ring_load.hpp.
namespace faywright::detail::strip {

/// What holds the long edges of the strip.
struct Web {
    enum class Hold { hinge, clamp, web } hold = Hold::web;
    double height = 0.0, thickness = 0.0;
};

/// What the edges add to the simply supported strip, on four functionals at the hole's centre: w, w_xx + w_yy, w_xx - w_yy and
/// the Laplacian of the last; and the moment at the web's face that goes with each.
struct Edge {
    Matrix<4, 4> added{};
    Vector<4> root{};
};

/// Integral over the waves along the rail. For each wave number: the strip's edge turns (S) and, at a web, the corner block (rigid,
/// half a web beyond the face) turns and settles on the web, which bends and shortens.
inline Edge edge_of(const Web& web, double bending, double nu) {
    Edge edge;
    if (web.hold == Web::Hold::hinge) return edge;
    // Gauss-Laguerre: nodes, and weights times the exponential of the node.
    static constexpr Vector<16> node{0.08764941047892784, 0.4626963289150808, 1.141057774831227, 2.129283645098381,
                                     3.437086633893207,   5.078018614549768,  7.070338535048235, 9.438314336391938,
                                     12.21422336886616,   15.44152736878162,  19.18015685675314, 23.51590569399191,
                                     28.57872974288215,   34.58339870228663,  41.94045264768833, 51.70116033954332};
    static constexpr Vector<16> share{0.22503631486425152, 0.5258360527623329, 0.8319613916870876, 1.1460992409637616,
                                      1.4717513169668215,  1.813134687381371,  2.1755175196946257, 2.565762750165059,
                                      2.993215086371418,   3.471234483102158,  4.020044086444779,  4.672516607732875,
                                      5.487420657986193,   6.585361233289205,  8.276357984364385,  11.824277551658456};
    const double web_bending = Plate::of(1.0, web.thickness, nu).bending, lever = web.thickness / 2.0;
    for (std::size_t n = 0; n < 16; ++n) {
        const double k = node[n], c = k / 2.0, weight = share[n] / pi;
        const double grown = std::exp(c), s = (grown - 1.0 / grown) / 2.0, ch = (grown + 1.0 / grown) / 2.0;
        const double wall = 2.0 * bending * k * ch * ch / (s * ch + c);  // edge moment per edge rotation
        const double e0 = s / (4.0 * bending * k * ch * ch), curve = -1.0 / (bending * ch);
        const Vector<4> turn{e0 / 2.0, curve / 2.0, curve / 2.0 + k * k * e0, k * k * curve};
        Vector<4> moment{}, settled{}, reaction{};
        if (web.hold == Web::Hold::clamp) {
            for (std::size_t i = 0; i < 4; ++i) moment[i] = -wall * turn[i];
        } else {
            const double reach = std::exp(std::min(k * web.height, 600.0)), s2 = (reach - 1.0 / reach) / 2.0,
                         c2 = (reach + 1.0 / reach) / 2.0;
            const double ends = s2 + std::min(k * web.height, 600.0);
            const double web_turn = 2.0 * web_bending * k * (c2 + 1.0) / ends;          // end moment per rotation
            const double web_short = 2.0 / (web.thickness * k) * (c2 - 1.0) / ends;     // settlement per line load
            const double b = -(1.0 - nu) / (2.0 * ch), a = (1.0 - b * c * s) / ch;      // free of moment, unit displacement of the edge
            reaction = {a / 2.0, k * k * b, k * k * (a + b), 2.0 * k * k * k * k * b};  // by Betti's theorem
            const double slope = -k * ((a + b) * s + b * c * ch);
            const double shear = bending * k * k * k * ((1.0 - nu) * (a * s + b * c * ch) - (1.0 + nu) * b * s);
            const double m11 = web_turn / wall + 1.0 - lever * slope, m12 = web_turn * slope + lever * shear;
            const double m21 = -lever / wall - web_short * slope, m22 = 1.0 - lever * slope + web_short * shear;
            const double inverse = 1.0 / (m11 * m22 - m12 * m21);
            for (std::size_t i = 0; i < 4; ++i) {
                const double r1 = -web_turn * turn[i] + lever * reaction[i], r2 = lever * turn[i] + web_short * reaction[i];
                moment[i] = (r1 * m22 - m12 * r2) * inverse;
                settled[i] = (m11 * r2 - m21 * r1) * inverse;
            }
        }
        for (std::size_t i = 0; i < 4; ++i) {
            edge.root[i] += weight * moment[i];
            for (std::size_t j = 0; j < 4; ++j) edge.added[i][j] += 2.0 * weight * (moment[i] * turn[j] + settled[i] * reaction[j]);
        }
    }
    for (std::size_t i = 0; i < 4; ++i)
        for (std::size_t j = 0; j < i; ++j) edge.added[i][j] = edge.added[j][i] = (edge.added[i][j] + edge.added[j][i]) / 2.0;
    return edge;
}

/// What N loads do to each other's rings and to the two stressed places.
template <std::size_t N>
struct Response {
    Matrix<N, N> compliance{};
    Vector<N> hole_along{}, hole_across{};  ///< bending stress at the hole's edge
    Vector<N> root{};                       ///< bending stress at the face of the web
};

/// The strip with its hole. A hole in a bent plate answers like three sources at its centre, as strong as make its edge free of
/// moment and shear; they are found from the curvatures that loads, edges and the sources' own images bring there.
template <std::size_t N>
Response<N> wall_response(const std::array<Load, N>& loads, double thickness, double hole, double nu, const Web& web) {
    // 7ζ(3)/(16π³): a point force on the simply supported strip without hole deflects it by this over the plate stiffness.
    constexpr double point_strip = 0.0169610785762761;
    const Plate plate = Plate::of(1.0, thickness, nu);
    const double bending = plate.bending, r0 = hole / 2.0;
    const Edge edge = edge_of(web, bending, nu);
    const double q = pi / (6.0 * bending), q3 = 7.0 * pi * pi * pi / (30.0 * bending);
    const Matrix<3, 3> image{{{0.0, q, 0.0}, {q, -q, q3}, {0.0, q3, 0.0}}};  // of the simply supported edges
    Matrix<3, 3> back = image;
    for (std::size_t i = 0; i < 3; ++i)
        for (std::size_t j = 0; j < 3; ++j) back[i][j] += edge.added[i + 1][j + 1];

    Matrix<N, 4> sent{};         // strength of each load's functionals at the centre
    Matrix<N, 3> own{}, seen{};  // curvatures there without the added edges, and with them
    for (std::size_t n = 0; n < N; ++n) {
        const Load& load = loads[n];
        if (load.lobed) {
            const double x = load.radius[0];
            sent[n] = {0.0, 0.0, x * x / 8.0, x * x * x * x / 96.0};
            own[n] = {0.0, 1.0 / (8.0 * pi * bending), -1.0 / (2.0 * pi * bending * x * x)};
            for (std::size_t i = 0; i < 3; ++i)
                for (std::size_t j = 0; j < 3; ++j) own[n][i] += image[i][j] * sent[n][j + 1];
        } else {
            const double m2 = load.mean([](double r) { return r * r; });
            sent[n] = {1.0, m2 / 4.0, 0.0, 0.0};
            own[n] = {load.mean([](double r) { return std::log(pi * r / 2.0); }) / (2.0 * pi * bending),
                      -1.0 / (4.0 * pi * bending) + m2 / 4.0 * q, q};
        }
        seen[n] = own[n];
        for (std::size_t i = 0; i < 3; ++i)
            for (std::size_t j = 0; j < 4; ++j) seen[n][i] += edge.added[i + 1][j] * sent[n][j];
    }

    // Strength of the hole's three sources per curvature met there.
    const double shape = (1.0 - nu) / (3.0 + nu), r2 = r0 * r0, side = shape * r2 * r2 / 4.0, scale = pi * bending;
    const Matrix<3, 3> polar{{{scale * (1.0 + nu) / (1.0 - nu) * r2, 0.0, 0.0},
                              {0.0, scale * 2.0 * shape * r2, scale * side},
                              {0.0, scale * side, scale * r2 * r2 * r2 * (3.0 + nu * nu) / (24.0 * (1.0 - nu) * (3.0 + nu))}}};
    Matrix<3, 3> system{};
    Matrix<3, N> source{};
    for (std::size_t i = 0; i < 3; ++i) {
        for (std::size_t j = 0; j < 3; ++j) {
            system[i][j] = i == j ? 1.0 : 0.0;
            for (std::size_t l = 0; l < 3; ++l) system[i][j] -= polar[i][l] * back[l][j];
        }
        for (std::size_t n = 0; n < N; ++n)
            for (std::size_t l = 0; l < 3; ++l) source[i][n] += polar[i][l] * seen[n][l];
    }
    solve(system, source);

    Response<N> out;
    for (std::size_t i = 0; i < N; ++i) {
        for (std::size_t j = i; j < N; ++j) {
            const Load &a = loads[i], &b = loads[j];
            double g = 0.0;
            if (a.lobed && b.lobed) {
                const double x = a.radius[0];
                g = x * x / (96.0 * pi * bending) + 1.0 / (16.0 * pi * plate.shear);
                for (std::size_t l = 0; l < 3; ++l)
                    for (std::size_t m = 0; m < 3; ++m) g += sent[i][l + 1] * image[l][m] * sent[j][m + 1];
            } else if (a.lobed) {
                g = sent[i][2] * own[j][1] + sent[i][3] * own[j][2];
            } else if (b.lobed) {
                g = sent[j][2] * own[i][1] + sent[j][3] * own[i][2];
            } else {
                g = point_strip / bending + open_plate(a, b, plate, pi / 2.0);
            }
            for (std::size_t l = 0; l < 4; ++l)
                for (std::size_t m = 0; m < 4; ++m) g += sent[i][l] * edge.added[l][m] * sent[j][m];
            for (std::size_t l = 0; l < 3; ++l) g += seen[i][l] * source[l][j];
            out.compliance[i][j] = out.compliance[j][i] = g;
        }
        Vector<3> met = seen[i];
        double root = 0.0;
        for (std::size_t l = 0; l < 4; ++l) root += sent[i][l] * edge.root[l];
        for (std::size_t l = 0; l < 3; ++l) {
            root += edge.root[l + 1] * source[l][i];
            for (std::size_t m = 0; m < 3; ++m) met[l] += back[l][m] * source[m][i];
        }
        const double even = -(1.0 + nu) * bending * met[0];
        const double lobe = bending * (2.0 * (1.0 - nu * nu) * met[1] - (1.0 + nu) * (1.0 + nu) / 2.0 * r2 * met[2]) / (3.0 + nu);
        const double to_stress = 6.0 / (thickness * thickness);
        out.hole_along[i] = to_stress * (even + lobe);
        out.hole_across[i] = to_stress * (even - lobe);
        out.root[i] = to_stress * root;
    }
    return out;
}

}  // namespace faywright::detail::strip
