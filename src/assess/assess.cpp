// SPDX-License-Identifier: MIT
#include "assess/assessment.hpp"
#include "assess/checks_tube.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cassert>
#include <cmath>
#include <tuple>

namespace faywright {

namespace {

/// The list of checks. A check is added by its struct in a header and its name here.
using Checks = std::tuple<checks::BoltAssemblyStress, checks::BoltWorkingStress, checks::BoltTensionCheck, checks::BoltShearCheck,
                          checks::BoltInteractionCheck, checks::BoltFatigueCheck, checks::BearingFacePressure, checks::ThreadStrippingCheck,
                          checks::NutMatch, checks::SlipCheck, checks::Separation, checks::BearingCheck, checks::TearOutCheck,
                          checks::NetSectionCheck, checks::BlockTearingCheck, checks::EdgeDistanceCheck, checks::PlatePrying,
                          checks::PlyFatigue, checks::PullThroughCheck, checks::TubeYield, checks::TubeBuckling, checks::TubeEndPressure,
                          checks::TubeOverlap, checks::WallClosing, checks::TubeShare, checks::TubeSquareness, checks::SectionCrush,
                          checks::WallFatigue, checks::RailBending, checks::RailFatigue, checks::WallPull, checks::LayerPressure,
                          checks::LayerTemperature, checks::Protrusion, checks::FreeThread>;

/// Those that a search's joints fail most often: looked at first where one failure is enough.
using Telling = std::tuple<checks::SlipCheck, checks::BearingFacePressure, checks::FreeThread, checks::Separation,
                           checks::BoltAssemblyStress, checks::WallFatigue, checks::TubeEndPressure, checks::ThreadStrippingCheck>;

template <class List = Checks, class Visit>
void each_check(Visit&& visit) {
    [&]<class... Check>(std::type_identity<std::tuple<Check...>>) {
        (visit(std::type_identity<Check>{}), ...);
    }(std::type_identity<List>{});
}

int parts_of(const Joint& joint, Scope scope) {
    switch (scope) {
        case Scope::joint: return 1;
        case Scope::end: return 2;
        case Scope::ply: return static_cast<int>(joint.plies.size());
        case Scope::plane: return static_cast<int>(joint.planes.size());
        case Scope::layer: return static_cast<int>(joint.layers.size());
    }
    return 0;
}

/// An outcome is large: the loop looks at its numbers only, and the worst is worked out once more, whole.
template <class Check>
CheckResult worst_of(const State& state, int part) {
    const auto& joint = *state.joint;
    const auto& info = Check::info;
    const int cases = info.per_case ? static_cast<int>(joint.load_cases.size()) : 1;
    const int bolts = info.per_bolt ? static_cast<int>(joint.positions.size()) : 1;
    const auto where_of = [&](int load_case, int bolt) {
        return Where{info.scope == Scope::joint ? -1 : part, info.per_case ? load_case : -1, info.per_bolt ? bolt : -1};
    };
    std::optional<Where> worst, told;
    double utilisation = 0.0;
    std::optional<double> static_factor;
    Where static_where;
    for (int load_case = 0; load_case < cases; ++load_case) {
        // Where one part of the load leads, its bolt stands for all.
        const auto& leader = info.leading == Leading::most_pulled ? state.most_pulled : state.most_sheared;
        const int first = info.leading == Leading::any ? 0 : leader[static_cast<std::size_t>(load_case)];
        const int last = info.leading == Leading::any ? bolts : first + 1;
        for (int bolt = first; bolt < last; ++bolt) {
            const auto where = where_of(load_case, bolt);
            const auto outcome = Check::evaluate(state, where);
            assert(!outcome.applicable || std::isfinite(outcome.utilisation));
            if (!outcome.applicable) {
                if (!told) told = where;
                continue;
            }
            if (info.per_case && outcome.design_factor && state.load_case(load_case).is_static() &&
                (!static_factor || *outcome.design_factor * rounding < *static_factor)) {
                static_factor = outcome.design_factor;
                static_where = where;
            }
            // The first of equals stays, whatever rounding makes of symmetry.
            if (!worst || outcome.utilisation > utilisation * rounding) {
                worst = where;
                utilisation = outcome.utilisation;
            }
        }
    }
    const auto where = worst ? *worst : told.value_or(where_of(0, 0));
    const auto status = !worst ? Status::not_applicable : utilisation <= rounding ? Status::pass : Status::fail;
    return {&info, where, Check::evaluate(state, where), status, static_factor, static_where};
}

/// Every check of a joint that is worked out.
void judge(Assessment& a) {
    const auto& joint = *a.state.joint;
    a.corrosion.exposures.clear();
    a.corrosion.passes = true;
    a.count = 0;
    a.passes = a.state.tube.fits;
    each_check([&]<class Check>(std::type_identity<Check>) {
        for (int part = 0; part < parts_of(joint, Check::info.scope); ++part) {
            assert(a.count < most_results);
            a.results[a.count] = worst_of<Check>(a.state, part);
            a.passes = a.passes && a.results[a.count].status != Status::fail;
            ++a.count;
        }
    });
    for (std::size_t i = 0; i < joint.load_cases.size(); ++i) a.passes = a.passes && a.state.turning[i] != Turning::impossible;
    a.holds = a.passes;
    a.governing = 0;
    for (std::size_t i = 1; i < a.count; ++i)
        if (a.results[i].outcome.applicable &&
            (!a.results[a.governing].outcome.applicable || a.results[i].outcome.utilisation > a.results[a.governing].outcome.utilisation))
            a.governing = i;
    const auto& c = a.state.clamp;
    a.clamp = {ClampStage{"assembled", "assembled", c.assembled_least, c.assembled_greatest},
               ClampStage{"embedded", "after embedding", c.embedded_least, c.embedded_greatest},
               ClampStage{"crept", "after creep of coatings and layers", c.crept_least, c.crept_greatest},
               ClampStage{"first-season", "first season, worst temperature",
                          max(c.crept_least + min(min(a.state.cold_change, a.state.hot_change), newton(0)), newton(0)),
                          c.assembled_greatest + max(max(a.state.cold_change, a.state.hot_change), newton(0))},
               ClampStage{"retightened", joint.tightening.retighten ? "re-tightened at first service" : "not re-tightened",
                          c.retightened_least, c.retightened_greatest},
               ClampStage{"settled", "after the later losses", c.settled_least, c.settled_greatest},
               ClampStage{"cold", "at the coldest", c.cold_least, c.cold_greatest},
               ClampStage{"hot", "at the hottest", c.hot_least, c.hot_greatest},
               ClampStage{"end", "end of life, under the worst load", c.end_least, c.end_greatest}};
}

}  // namespace

void assess(const Joint& joint, Assessment& a) {
    work_out(joint, a.state);
    checks::work_out_constants(a.state);
    judge(a);
}

void add_outlook(const Tables& tables, Assessment& a) {
    a.corrosion = corrosion_outlook(*a.state.joint, tables);
    a.passes = a.holds && a.corrosion.passes;
}

bool passes_within(const Assessment& a, double limit) { return a.passes && a.results[a.governing].outcome.utilisation <= limit * rounding; }

bool assess_within(const Joint& joint, double limit, Assessment& a) {
    work_out(joint, a.state);
    checks::work_out_constants(a.state);
    bool within = a.state.tube.fits;
    each_check<Telling>([&]<class Check>(std::type_identity<Check>) {
        for (int part = 0; within && part < parts_of(joint, Check::info.scope); ++part) {
            const auto result = worst_of<Check>(a.state, part);
            within = result.status == Status::not_applicable || result.outcome.utilisation <= limit * rounding;
        }
    });
    if (!within) return false;
    judge(a);
    return passes_within(a, limit);
}

double least_of_any_pattern(const State& state) {
    using Untouched = std::tuple<checks::BoltAssemblyStress, checks::NutMatch, checks::Protrusion, checks::FreeThread>;
    double least = 0.0;
    each_check<Untouched>([&]<class Check>(std::type_identity<Check>) { least = max(least, Check::evaluate(state, Where{}).utilisation); });
    for (int end = 0; end < 2; ++end) {
        // Pressure is in proportion to the force, and the preload is part of it in any pattern.
        const Where where{end, 0, 0};
        const auto outcome = checks::BearingFacePressure::evaluate(state, where);
        if (outcome.applicable)
            least = max(least, outcome.utilisation * static_cast<double>(state.preload.greatest / checks::greatest_in(state, where)));
    }
    return least;
}

const CheckResult* find_check(const Assessment& assessment, std::string_view id) {
    const CheckResult* worst = nullptr;
    for (const auto& result : assessment.checks()) {
        if (result.info->id != id) continue;
        if (worst == nullptr ||
            (result.outcome.applicable && (!worst->outcome.applicable || result.outcome.utilisation > worst->outcome.utilisation)))
            worst = &result;
    }
    return worst;
}

const CheckResult* least_static_factor(const Assessment& assessment) {
    const CheckResult* least = nullptr;
    for (const auto& result : assessment.checks())
        if (result.static_factor && (least == nullptr || *result.static_factor < *least->static_factor)) least = &result;
    return least;
}

std::vector<const CheckInfo*> all_checks() {
    std::vector<const CheckInfo*> list;
    each_check([&]<class Check>(std::type_identity<Check>) { list.push_back(&Check::info); });
    return list;
}

Recorder explain(const Assessment& assessment, const CheckResult& result, bool keeps_evident) {
    Recorder recorder(keeps_evident);
    if (result.where.load_case >= 0 && result.where.bolt >= 0)
        derive_bolt(assessment.state, result.where.load_case, result.where.bolt, recorder);
    each_check([&]<class Check>(std::type_identity<Check>) {
        if (&Check::info == result.info) static_cast<void>(Check::evaluate(assessment.state, result.where, recorder));
    });
    return recorder;
}

const CheckResult* governing_of_bolts(const Assessment& assessment) {
    const CheckResult *worst = nullptr, *worst_in_plane = nullptr;
    const auto worse = [](const CheckResult*& than, const CheckResult& result) {
        if (than == nullptr || result.outcome.utilisation > than->outcome.utilisation) than = &result;
    };
    for (const auto& result : assessment.checks()) {
        if (!result.outcome.applicable || result.where.bolt < 0 || result.where.load_case < 0) continue;
        worse(worst, result);
        if (assessment.state.load(result.where.load_case, result.where.bolt).resultant > newton(1)) worse(worst_in_plane, result);
    }
    return worst_in_plane != nullptr ? worst_in_plane : worst;
}

std::vector<BoltUse> use_of_bolts(const Assessment& assessment, const CheckResult& result) {
    std::vector<BoltUse> out;
    for (int bolt = 0; bolt < static_cast<int>(assessment.state.joint->positions.size()); ++bolt) {
        const Where where{result.where.part, result.where.load_case, bolt};
        each_check([&]<class Check>(std::type_identity<Check>) {
            if (&Check::info == result.info)
                out.push_back({assessment.state.load(where.load_case, bolt), Check::evaluate(assessment.state, where).utilisation});
        });
    }
    return out;
}

std::size_t checked_stage(const Assessment& a) {
    // The last stage has the load in it; the checks add the load themselves.
    const auto least =
        std::min_element(a.clamp.begin(), a.clamp.end() - 1, [](const ClampStage& x, const ClampStage& y) { return x.least < y.least; });
    return static_cast<std::size_t>(least - a.clamp.begin());
}

std::string part_name(const Joint& joint, const CheckResult& result) {
    const auto index = static_cast<std::size_t>(std::max(result.where.part, 0));
    switch (result.info->scope) {
        case Scope::joint: return "";
        case Scope::end: return index == 0 ? "head" : "nut";
        case Scope::ply: return joint.plies[index].name;
        case Scope::plane:
            return fmt::format("{} / {}", joint.plies[static_cast<std::size_t>(joint.planes[index].head_ply)].name,
                               joint.plies[static_cast<std::size_t>(joint.planes[index].nut_ply)].name);
        case Scope::layer: return joint.layers[index].material.name;
    }
    return "";
}

}  // namespace faywright
