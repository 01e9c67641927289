// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

namespace faywright {

/// How the torsion of the shank while tightening becomes a stress.
enum class TorsionModel {
    plastic,  ///< section yields fully in torsion: present-day preload tables
    elastic,  ///< stress at the surface of an elastic section: older tables, about 6 % lower preload
};

template <>
struct Words<TorsionModel> {
    static constexpr std::array<std::pair<TorsionModel, std::string_view>, 2> all{{
        {TorsionModel::plastic, "plastic"},
        {TorsionModel::elastic, "elastic"},
    }};
};

/// Assembly stress: tension and torsion together in the thread while the bolt is being tightened.
///
/// sigma = F_M/A_s; the torque in the thread twists the section of diameter d_s, giving tau = c (d_2/d_s) tan(phi + rho) sigma with
/// phi the lead angle, tan rho = mu_th/cos 30 degrees and c = 3/2 (plastic) or 2 (elastic); von Mises joins them. The permitted preload
/// is the one at which the joined stress is nu times the 0.2 % proof strength. With the unrounded stress area this gives every cell of
/// the preload table back; adding the tangents of phi and rho instead runs up to half a per cent high.
struct AssemblyStress {
    static constexpr Formula formula{.name = "assembly-stress",
                                     .title = "Stress in the bolt while tightening, and the permitted preload",
                                     .range = "tightening by torque; not for hydraulic tensioning, which has no torsion",
                                     .source = {"VDI 2230 Part 1", "2003", "5.5.1 and Table A1", Basis::memory}};

    /// In the order of TorsionModel.
    static constexpr std::array<Source, 2> sources{{formula.source, Source{"VDI 2230 Part 1", "1986", "assembly preload", Basis::memory}}};
    static constexpr const Source& source(TorsionModel model) { return sources[static_cast<std::size_t>(model)]; }

    struct Inputs {
        Force preload;
        Area stress_area;
        Length pitch_diameter, stress_diameter, pitch;
        double thread_friction;
        Stress proof_strength;
        double utilisation = 0.9;
        TorsionModel method = TorsionModel::plastic;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"preload", "F_M", "preload of the bolt"}, self.preload, Range{newton(1), kN(10000)});
            field(Name{"stress-area", "A_s", "stress area of the thread"}, self.stress_area, Range{mm2(0.1), mm2(40000)});
            field(Name{"pitch-diameter", "d_2", "pitch diameter of the thread"}, self.pitch_diameter, Range{mm(0.5), mm(200)});
            field(Name{"stress-diameter", "d_s", "diameter of the stress area"}, self.stress_diameter, Range{mm(0.4), mm(200)});
            field(Name{"pitch", "P", "pitch of the thread"}, self.pitch, Range{mm(0.1), mm(10)});
            field(Name{"thread-friction", "mu_th", "coefficient of friction in the thread"}, self.thread_friction, Range{0.01, 1.0});
            field(Name{"proof-strength", "R_p02", "0.2 % proof strength of the bolt"}, self.proof_strength, Range{MPa(10), MPa(3000)});
            field(Name{"utilisation", "nu", "share of the proof strength to be used"}, self.utilisation, Range{0.1, 1.0}, defaulted);
            field(Name{"method", "", "torsion model"}, self.method, defaulted);
        }
    };

    struct Answer {
        Stress tension, torsion, reduced;
        double utilisation;  ///< reduced stress over proof strength
        Force permitted;     ///< preload at the wanted utilisation
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"tension", "sigma", "tensile stress"}, self.tension);
            field(Name{"torsion", "tau", "torsional shear stress"}, self.torsion);
            field(Name{"reduced", "sigma_red", "reduced (von Mises) stress"}, self.reduced);
            field(Name{"utilisation", "eta", "reduced stress over proof strength"}, self.utilisation);
            field(Name{"permitted", "F_M_zul", "permitted preload"}, self.permitted);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (in.stress_diameter > in.pitch_diameter) return "the stress diameter is larger than the pitch diameter";
        if (in.pitch > in.pitch_diameter) return "the pitch is larger than the pitch diameter";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [F_M, A_s, d_2, d_s, P, mu_th, R_p02, nu, method] = in;
        FAYWRIGHT_STATED(c, "3/2 for plastic, 2 for elastic torsion", method == TorsionModel::plastic ? 1.5 : 2.0);
        FAYWRIGHT_STEP(t_phi, P / (pi * d_2));
        FAYWRIGHT_STEP(t_rho, mu_th / cos(pi / 6.0));
        FAYWRIGHT_STEP(k_tau, c * d_2 / d_s * (t_phi + t_rho) / (1.0 - t_phi * t_rho));
        FAYWRIGHT_STEP(sigma, F_M / A_s);
        FAYWRIGHT_STEP(tau, k_tau * sigma);
        FAYWRIGHT_STEP(sigma_red, sqrt(squared(sigma) + 3.0 * squared(tau)));
        FAYWRIGHT_STEP(eta, sigma_red / R_p02);
        FAYWRIGHT_STEP(F_M_zul, nu * R_p02 * A_s / sqrt(1.0 + 3.0 * squared(k_tau)));
        return {sigma, tau, sigma_red, eta, F_M_zul, eta > 1.0 ? "the bolt yields while being tightened" : nullptr};
    }
};

}  // namespace faywright
