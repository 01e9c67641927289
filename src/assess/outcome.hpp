// SPDX-License-Identifier: MIT
#pragma once

#include "joint/joint.hpp"
#include "quantity/source.hpp"
#include "quantity/value.hpp"

#include <optional>
#include <string_view>

namespace faywright {

enum class Status { pass, fail, not_applicable };
template <>
struct Words<Status> {
    static constexpr std::array<std::pair<Status, std::string_view>, 3> all{
        {{Status::pass, "pass"}, {Status::fail, "fail"}, {Status::not_applicable, "not-applicable"}}};
};

/// What a check runs over. Of everything it runs over, the worst is kept for each ply, plane, layer or end.
enum class Scope { joint, end, ply, plane, layer };

/// The bolt that governs a check within one load case: any of them, or the one with most of one part of the load, where the
/// check's utilisation grows with that part and depends on nothing else of the bolt.
enum class Leading { any, most_pulled, most_sheared };

/// A check as the program knows it: a stable word, a title for people, and what it is about.
struct CheckInfo {
    std::string_view id;
    std::string_view title;
    Scope scope = Scope::joint;
    bool per_case = false;  ///< depends on the load case
    bool per_bolt = false;  ///< depends on the bolt
    Leading leading = Leading::any;
};

/// One instance of a check. Indices not used by its scope stay -1. `part` is an end (0 head, 1 nut), a ply,
/// a faying plane or a layer.
struct Where {
    int part = -1, load_case = -1, bolt = -1;
};

/// Utilisation told where there is no resistance, or next to none.
inline constexpr double hopeless = 1e6;

/// What an instance of a check came to.
struct Outcome {
    bool applicable = true;
    double utilisation = 0.0;
    std::optional<double> design_factor;  ///< characteristic resistance over the static (unfactored) load effect
    const Source* source = &nowhere;      ///< outlives every outcome
    const char* note = nullptr;           ///< why it does not apply, or in what the result leaves its formula's range

    [[nodiscard]] Value demand() const { return Value::of(demand_si, *dimension); }
    [[nodiscard]] Value resistance() const { return Value::of(resistance_si, *dimension); }

    // Words of one size, and pointers: outcomes are copied by the million.
    double demand_si = 0.0, resistance_si = 0.0;
    const Dimension* dimension = &dimension_of<double>;
    static constexpr Source nowhere{};

    [[nodiscard]] static Outcome none(const char* why) {
        Outcome outcome;
        outcome.applicable = false;
        outcome.note = why;
        return outcome;
    }
};

/// A demand that does not grow with the load. A negative one comes of a state its formula does not know: hopeless.
template <class Q>
[[nodiscard]] Outcome limited(Q demand, Q resistance, const Source& source, const char* note = nullptr) {
    Outcome outcome;
    outcome.demand_si = Value(demand).si();
    outcome.resistance_si = Value(resistance).si();
    outcome.dimension = &dimension_of<Q>;
    const Q none{};
    const bool counts = demand >= none && (resistance > none || demand == none);
    outcome.utilisation = !counts ? hopeless : resistance > none ? min(static_cast<double>(demand / resistance), hopeless) : 0.0;
    outcome.source = &source;
    outcome.note = note;
    return outcome;
}

/// The source is pointed to.
template <class Q>
Outcome limited(Q demand, Q resistance, Source&& source, const char* note = nullptr) = delete;

/// Demand and resistance brought to one format: a static load carries the service class's design factor and meets
/// the characteristic resistance; a dynamic load carries its own factor and meets the design resistance.
/// Every resistance here falls in proportion to the load, so the achieved factor is resistance over static effect.
template <class Q>
[[nodiscard]] Outcome compared(const Joint& joint, const LoadCase& load_case, Q effect, Q characteristic, Q design, const Source& source,
                               const char* note = nullptr) {
    const bool is_static = load_case.is_static();
    const Q demand = (is_static ? joint.service.design_factor : load_case.load_factor) * effect;
    auto outcome = limited(demand, is_static ? characteristic : design, source, note);
    if (effect > Q{}) {
        const double factor = characteristic / effect;
        if (factor < hopeless) outcome.design_factor = factor;
    }
    return outcome;
}

}  // namespace faywright
