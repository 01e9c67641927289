// SPDX-License-Identifier: MIT
#pragma once

#include "tables/table.hpp"

namespace faywright {

/// What a rule's load is. Each row of its kind makes its own load cases.
enum class LoadKind { standing, along, sideways, vertical, braking, overrun_thrust, bump, cornering, kerb, heave, fatigue, accessory };
template <>
struct Words<LoadKind> {
    static constexpr std::array<std::pair<LoadKind, std::string_view>, 12> all{{{LoadKind::standing, "standing"},
                                                                                {LoadKind::along, "coupling along"},
                                                                                {LoadKind::sideways, "coupling sideways"},
                                                                                {LoadKind::vertical, "coupling vertical"},
                                                                                {LoadKind::braking, "braking"},
                                                                                {LoadKind::overrun_thrust, "overrun thrust"},
                                                                                {LoadKind::bump, "axle bump"},
                                                                                {LoadKind::cornering, "cornering"},
                                                                                {LoadKind::kerb, "kerb"},
                                                                                {LoadKind::heave, "coupling heave"},
                                                                                {LoadKind::fatigue, "coupling fatigue"},
                                                                                {LoadKind::accessory, "accessory"}}};
};

enum class Direction { forward, rearward, sideways, down, up };
template <>
struct Words<Direction> {
    static constexpr std::array<std::pair<Direction, std::string_view>, 5> all{{{Direction::forward, "forward"},
                                                                                {Direction::rearward, "rearward"},
                                                                                {Direction::sideways, "sideways"},
                                                                                {Direction::down, "down"},
                                                                                {Direction::up, "up"}}};
};

/// One rule that makes loads of a trailer's masses. A rule without a load factor is static: the joint's service class acts on it.
struct LoadRule {
    static constexpr std::string_view table = "load-rules", row_key = "load-rule";
    LoadKind kind = LoadKind::standing;
    std::optional<double> multiple;
    std::optional<Direction> direction;
    std::optional<Acceleration> acceleration;
    std::optional<bool> air_sprung;
    std::optional<AngularAcceleration> yaw;
    std::optional<Speed> speed;
    std::optional<Stiffness> stiffness;
    std::optional<Angle> angle;
    std::optional<double> cycles;
    std::optional<std::string> road;
    std::optional<double> load_factor;
    std::string description;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"kind", "", "what the load is"}, self.kind);
        field(Name{"multiple", "", "multiple of the weight (of the sprung weight for a bump, of D in fatigue)"}, self.multiple,
              Range{0.0, 20.0});
        field(Name{"direction", "", "of an accessory's acceleration"}, self.direction);
        field(Name{"acceleration", "", "of the coupling, upward and downward"}, self.acceleration, Range{m_per_s2(0), m_per_s2(100)});
        field(Name{"air-sprung", "", "whether it is for an air-sprung towing vehicle"}, self.air_sprung);
        field(Name{"yaw-acceleration", "", "of the trailer, besides steady cornering"}, self.yaw, Range{per_s2(0), per_s2(20)});
        field(Name{"speed", "", "of reversing"}, self.speed, Range{m_per_s(0), m_per_s(10)});
        field(Name{"stiffness", "", "of tyres and chassis together"}, self.stiffness, Range{N_per_mm(1), N_per_mm(1e5)});
        field(Name{"angle", "", "of the line of action to the horizontal"}, self.angle, Range{degrees(0), degrees(90)});
        field(Name{"cycles", "", "number of cycles"}, self.cycles, Range{1e4, 1e9});
        field(Name{"road", "", "only for this row of the service table; absent: for all"}, self.road);
        field(Name{"load-factor", "", "partial factor on a dynamic load; absent: the load is static"}, self.load_factor, Range{1.0, 3.0});
        field(Name{"description", "", "what it covers"}, self.description);
    }

    static const char* fault(const LoadRule& r) {
        const bool multiple = r.kind != LoadKind::heave && r.kind != LoadKind::kerb;
        if (multiple && !r.multiple) return "multiple is missing for this kind";
        if (multiple && r.multiple && *r.multiple == 0.0) return "a multiple of nothing is no load";
        if (r.kind == LoadKind::heave && (!r.acceleration || !r.air_sprung)) return "a coupling heave has acceleration and air-sprung";
        if (r.kind == LoadKind::kerb && (!r.speed || !r.stiffness)) return "a kerb has speed and stiffness";
        if (r.kind == LoadKind::fatigue && (!r.angle || !r.cycles)) return "fatigue has angle and cycles";
        if (r.kind == LoadKind::accessory && !r.direction) return "an accessory's load has a direction";
        const bool still = r.kind == LoadKind::standing || r.kind == LoadKind::overrun_thrust;
        if (still && r.load_factor) return "this kind has no load factor: a static load has the design factor of the service class";
        if (!still && !r.load_factor) return "load-factor is missing: every kind but standing is a peak load";
        return nullptr;
    }
};

}  // namespace faywright
