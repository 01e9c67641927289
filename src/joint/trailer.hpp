// SPDX-License-Identifier: MIT
#pragma once

#include "joint/trailer_file.hpp"
#include "loads/coupling_values.hpp"
#include "tables/tables.hpp"

#include <functional>

/// A trailer with its names resolved, its free bodies, and the load cases of its joints.
namespace faywright {

inline constexpr std::size_t most_states = 6;

/// One loading state of the trailer.
struct TrailerState {
    std::string name;
    TrailerBody body;
    CouplingValues::Answer values;
};

/// What one rule makes of one state at the coupling. A rule of a regulation is a force at the coupling alone; what happens on the road has
/// a motion, and the trailer's free body with it.
struct CouplingCase {
    std::string name;   ///< without the state's
    std::string state;  ///< of which variant
    Row<LoadRule> rule;
    CouplingLoad load;
    std::optional<TrailerMotion> motion;
    std::vector<PlacedForce> free_body;  ///< of the trailer; empty without a motion
    std::optional<double> cycles;
};

/// A drawbar's free body under one case.
struct DrawbarBody {
    std::string name;
    std::vector<PlacedForce> forces;
    LapForces::Answer couple;
};

/// A load case of a joint, and what it stands on.
struct JointCase {
    LoadCaseFile load_case;
    Row<LoadRule> rule;
    std::string state;
};

/// The loads of one joint, in the axes of its joint file.
struct JointLoads {
    std::string name, kind;
    std::optional<Lap> lap;  ///< of a joint that is the whole lap of a leg
    Placing lies = Placing::under;
    std::string share;                ///< how the joint gets its share, in words
    std::optional<Force> pinned_leg;  ///< of a lap: greatest force along a leg by a side load, were the legs pinned in plan
    std::vector<JointCase> cases;
    std::vector<DrawbarBody> drawbar;  ///< of a lap: the drawbar ahead of it, case by case
};

struct TrailerLoads {
    std::string title;
    Row<ServiceClass> road;
    Mass towing_vehicle, greatest_mass;
    BrakeKind brakes = BrakeKind::overrun;
    double leg_share = 0.6;
    std::vector<TrailerState> states;
    std::vector<CouplingCase> coupling;
    std::vector<JointLoads> joints;
    std::vector<DefaultTaken> defaults;
    std::vector<std::string> warnings;
    std::vector<std::string> own_rules;  ///< rows of a shop's own table that were used

    /// The state a case is of.
    [[nodiscard]] const TrailerState& state_of(const CouplingCase& each) const {
        return *std::find_if(states.begin(), states.end(), [&each](const TrailerState& s) { return s.name == each.state; });
    }
    /// With the state's name where there are several.
    [[nodiscard]] std::string name_of(const CouplingCase& each) const {
        return states.size() > 1 ? each.name + "; " + each.state : each.name;
    }
    TextPosition road_at;  ///< where the trailer file names its road

    [[nodiscard]] const JointLoads* find(std::string_view name) const {
        for (const auto& joint : joints)
            if (joint.name == name) return &joint;
        return nullptr;
    }
};

/// Reads a trailer from TOML text and works out its loads. Every mistake goes to the diagnostics; nothing is given if one came.
[[nodiscard]] std::optional<TrailerLoads> read_trailer(const std::string& text, const std::string& file, const Tables& tables,
                                                       Diagnostics& diagnostics);

}  // namespace faywright
