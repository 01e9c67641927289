// SPDX-License-Identifier: MIT
// What the types cost: bearing, torque and assembly stress with quantities, and the same arithmetic in bare doubles.
#include "mechanics/assembly_stress.hpp"
#include "mechanics/bearing.hpp"
#include "mechanics/tightening_torque.hpp"

#include <benchmark/benchmark.h>

#include <cmath>
#include <numbers>
#include <optional>
#include <vector>

namespace {

using namespace faywright;

/// Inputs that the compiler cannot know, the same numbers for both.
struct Sample {
    double d, d_0, t, f_u, e_1, e_2, p_1, p_2, F, mu;
};

std::vector<Sample> samples() {
    std::vector<Sample> list;
    for (int i = 0; i < 1024; ++i) {
        const double x = (i * 37 % 101) / 101.0;
        list.push_back({0.012, 0.0135, 0.003 + 0.002 * x, 260e6 + 50e6 * x, 0.020 + 0.02 * x, 0.018 + 0.01 * x, 0.04 + 0.02 * x,
                        0.04 + 0.03 * x, 30e3 + 20e3 * x, 0.08 + 0.1 * x});
    }
    return list;
}

const double pitch = 0.00175, pitch_diameter = 0.010863, stress_diameter = 0.010358, stress_area = 84.27e-6, face = 0.01663, proof = 640e6;

void with_units(benchmark::State& state) {
    const auto list = samples();
    for (auto _ : state) {
        double sum = 0;
        for (const auto& s : list) {
            const auto bearing = Bearing::compute({.bolt_diameter = metre(s.d),
                                                   .hole_diameter = metre(s.d_0),
                                                   .thickness = metre(s.t),
                                                   .ultimate_strength = Stress::from_value(s.f_u),
                                                   .bolt_ultimate_strength = MPa(800),
                                                   .end_distance = metre(s.e_1),
                                                   .edge_distance = metre(s.e_2),
                                                   .pitch = metre(s.p_1),
                                                   .gauge = metre(s.p_2)});
            const auto torque = TighteningTorque::compute({.preload = newton(s.F),
                                                           .nominal_diameter = metre(s.d),
                                                           .pitch = metre(pitch),
                                                           .pitch_diameter = metre(pitch_diameter),
                                                           .thread_friction = s.mu,
                                                           .head_friction = s.mu,
                                                           .bearing_diameter = metre(face),
                                                           .bearing_hole = metre(s.d_0)});
            const auto stress = AssemblyStress::compute({.preload = newton(s.F),
                                                         .stress_area = Area::from_value(stress_area),
                                                         .pitch_diameter = metre(pitch_diameter),
                                                         .stress_diameter = metre(stress_diameter),
                                                         .pitch = metre(pitch),
                                                         .thread_friction = s.mu,
                                                         .proof_strength = Stress::from_value(proof)});
            sum += bearing.resistance.value() + torque.torque.value() + stress.utilisation + stress.permitted.value();
        }
        benchmark::DoNotOptimize(sum);
    }
    state.SetItemsProcessed(static_cast<std::int64_t>(state.iterations()) * 1024);
}

/// The same calculators word for word, with double for every quantity.
namespace plain {

constexpr double pi = std::numbers::pi;

struct Bearing {
    double d, d_0, t, f_u, f_ub, e_1, e_2;
    std::optional<double> p_1, p_2;
    double gamma_M2 = 1.25;
};

double bearing(const Bearing& in) {
    const double alpha_e = in.e_1 / (3.0 * in.d_0);
    double alpha_least = alpha_e, k_least = 2.5;
    k_least = std::min(k_least, 2.8 * in.e_2 / in.d_0 - 1.7);
    if (in.p_1) alpha_least = std::min(alpha_least, *in.p_1 / (3.0 * in.d_0) - 0.25);
    if (in.p_2) k_least = std::min(k_least, 1.4 * *in.p_2 / in.d_0 - 1.7);
    const double alpha_b = std::max(std::min({alpha_least, in.f_ub / in.f_u, 1.0}), 0.0), k_1 = std::max(k_least, 0.0);
    return k_1 * alpha_b * in.f_u * in.d * in.t / in.gamma_M2;
}

double torque(double F_M, double P, double d_2, double mu_th, double mu_head, double d_W, double d_h) {
    const double D_Km = (d_W + d_h) / 2.0, t_phi = P / (pi * d_2), t_rho = mu_th / std::cos(pi / 6.0);
    const double M_G = F_M * d_2 / 2.0 * (t_phi + t_rho) / (1.0 - t_phi * t_rho), M_K = F_M * D_Km / 2.0 * mu_head;
    return M_G + M_K;
}

double stress(double F_M, double A_s, double d_2, double d_s, double P, double mu_th, double R_p02, double nu) {
    const double t_phi = P / (pi * d_2), t_rho = mu_th / std::cos(pi / 6.0);
    const double k_tau = 1.5 * d_2 / d_s * (t_phi + t_rho) / (1.0 - t_phi * t_rho);
    const double sigma = F_M / A_s, tau = k_tau * sigma;
    const double eta = std::sqrt(sigma * sigma + 3.0 * (tau * tau)) / R_p02;
    return eta + nu * R_p02 * A_s / std::sqrt(1.0 + 3.0 * (k_tau * k_tau));
}

}  // namespace plain

void bare(benchmark::State& state) {
    const auto list = samples();
    for (auto _ : state) {
        double sum = 0;
        for (const auto& s : list)
            sum += plain::bearing({s.d, s.d_0, s.t, s.f_u, 800e6, s.e_1, s.e_2, s.p_1, s.p_2}) +
                   plain::torque(s.F, pitch, pitch_diameter, s.mu, s.mu, face, s.d_0) +
                   plain::stress(s.F, stress_area, pitch_diameter, stress_diameter, pitch, s.mu, proof, 0.9);
        benchmark::DoNotOptimize(sum);
    }
    state.SetItemsProcessed(static_cast<std::int64_t>(state.iterations()) * 1024);
}

BENCHMARK(with_units);
BENCHMARK(bare);

}  // namespace

BENCHMARK_MAIN();
