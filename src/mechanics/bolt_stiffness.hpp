// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"

namespace faywright {

/// Which lengths of the bolt count as springs.
enum class BoltModel {
    vdi,      ///< grip and also head, engaged thread and nut; free thread at the root area
    shigley,  ///< the grip alone; free thread at the stress area
};

template <>
struct Words<BoltModel> {
    static constexpr std::array<std::pair<BoltModel, std::string_view>, 2> all{{
        {BoltModel::vdi, "VDI 2230"},
        {BoltModel::shigley, "grip only"},
    }};
};

/// Resilience of a bolt: how far it stretches under a unit force; its inverse is the stiffness.
///
/// Springs in series, each length/(E area). VDI 2230 adds 0.5 d for a hexagon head, 0.5 d of engaged thread at the root area and
/// 0.4 d for the shift of the nut. The textbook model counts shank and thread in the grip only and is stiffer:
/// 28 % less resilience for an M12 with 50 mm grip. A load factor belongs to one of the models; name it.
struct BoltStiffness {
    static constexpr Formula formula{.name = "bolt-stiffness",
                                     .title = "Axial resilience of a bolt with nut",
                                     .range = "hexagon bolt with nut, full shank; bending of the head neglected",
                                     .source = {"VDI 2230 Part 1", "2003", "5.1.1", Basis::memory}};

    /// In the order of BoltModel.
    static constexpr std::array<Source, 2> sources{
        {formula.source, Source{"Shigley's Mechanical Engineering Design", "9th", "eq. 8-17", Basis::memory}}};
    static constexpr const Source& source(BoltModel model) { return sources[static_cast<std::size_t>(model)]; }

    struct Inputs {
        Length nominal_diameter;
        Area root_area, stress_area;
        Length shank_length, thread_length;
        Stress elastic_modulus;
        std::optional<Stress> nut_modulus;  ///< absent: as the bolt
        BoltModel method = BoltModel::vdi;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"nominal-diameter", "d", "nominal diameter, also of the shank"}, self.nominal_diameter, Range{mm(1), mm(200)});
            field(Name{"root-area", "A_3", "area at the root diameter"}, self.root_area, Range{mm2(0.1), mm2(40000)});
            field(Name{"stress-area", "A_s", "stress area of the thread"}, self.stress_area, Range{mm2(0.1), mm2(40000)});
            field(Name{"shank-length", "l_1", "length of plain shank in the grip"}, self.shank_length, Range{mm(0), mm(5000)});
            field(Name{"thread-length", "l_Gew", "length of free thread in the grip"}, self.thread_length, Range{mm(0), mm(5000)});
            field(Name{"elastic-modulus", "E", "elastic modulus of the bolt"}, self.elastic_modulus, Range{GPa(1), GPa(1000)});
            field(Name{"nut-modulus", "E_M", "elastic modulus of the nut, where it differs"}, self.nut_modulus, Range{GPa(1), GPa(1000)});
            field(Name{"method", "", "which lengths count"}, self.method, defaulted);
        }
    };

    struct Answer {
        Resilience resilience;
        Stiffness stiffness;
        Resilience head, shank, thread, engaged_thread, nut;  ///< parts of the resilience
        const char* outside_range = nullptr;

        template <class Visit, class Self>
        static void describe(Visit&& field, Self& self) {
            field(Name{"resilience", "delta_S", "resilience of the bolt"}, self.resilience);
            field(Name{"stiffness", "k_S", "stiffness of the bolt"}, self.stiffness);
            field(Name{"head", "delta_K", "part of the head"}, self.head);
            field(Name{"shank", "delta_1", "part of the plain shank"}, self.shank);
            field(Name{"thread", "delta_Gew", "part of the free thread"}, self.thread);
            field(Name{"engaged-thread", "delta_G", "part of the engaged thread"}, self.engaged_thread);
            field(Name{"nut", "delta_M", "part of the nut"}, self.nut);
        }
    };

    static const char* refusal(const Inputs& in) {
        if (in.shank_length + in.thread_length < mm(0.1)) return "the bolt has no length in the grip";
        if (in.root_area > in.stress_area) return "the root area is larger than the stress area";
        if (in.stress_area > pi / 4.0 * squared(in.nominal_diameter)) return "the stress area is larger than the shank";
        return nullptr;
    }

    template <class Steps = NoSteps>
    static Answer compute(const Inputs& in, Steps&& steps = Steps{}) {
        steps.given(in);
        const auto& [d, A_3, A_s, l_1, l_Gew, E, E_M, method] = in;
        FAYWRIGHT_STEP(A_d, pi / 4.0 * squared(d));
        FAYWRIGHT_STEP(delta_1, l_1 / (E * A_d));
        if (method == BoltModel::shigley) {
            FAYWRIGHT_STEP(delta_Gew, l_Gew / (E * A_s));
            FAYWRIGHT_STEP(delta_S, delta_1 + delta_Gew);
            FAYWRIGHT_STEP(k_S, 1.0 / delta_S);
            const Resilience none{};
            return {delta_S, k_S, none, delta_1, delta_Gew, none, none};
        }
        FAYWRIGHT_STATED(E_N, "modulus of the nut: E_M where given, else E", E_M ? *E_M : E);
        FAYWRIGHT_STEP(delta_K, 0.5 * d / (E * A_d));
        FAYWRIGHT_STEP(delta_Gew, l_Gew / (E * A_3));
        FAYWRIGHT_STEP(delta_G, 0.5 * d / (E * A_3));
        FAYWRIGHT_STEP(delta_M, 0.4 * d / (E_N * A_d));
        FAYWRIGHT_STEP(delta_S, delta_K + delta_1 + delta_Gew + delta_G + delta_M);
        FAYWRIGHT_STEP(k_S, 1.0 / delta_S);
        return {delta_S, k_S, delta_K, delta_1, delta_Gew, delta_G, delta_M};
    }
};

}  // namespace faywright
