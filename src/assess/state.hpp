// SPDX-License-Identifier: MIT
#pragma once

#include "assess/edges.hpp"
#include "joint/joint.hpp"
#include "mechanics/assembly_stress.hpp"
#include "mechanics/bolt_group_in_plane.hpp"
#include "mechanics/bolt_group_out_of_plane.hpp"
#include "mechanics/bolt_shear.hpp"
#include "mechanics/bolt_stiffness.hpp"
#include "mechanics/bolt_tension.hpp"
#include "mechanics/clamp_life.hpp"
#include "mechanics/embedding_loss.hpp"
#include "mechanics/load_factor.hpp"
#include "mechanics/member_stiffness.hpp"
#include "mechanics/preload_from_torque.hpp"
#include "mechanics/thermal_change.hpp"
#include "mechanics/thread_geometry.hpp"
#include "mechanics/thread_stripping.hpp"
#include "mechanics/tightening_torque.hpp"
#include "mechanics/tube_length.hpp"
#include "mechanics/tube_wall.hpp"
#include "mechanics/wall_bending.hpp"

#include <array>
#include <vector>

namespace faywright {

/// Rounding in the last digit makes no difference.
inline constexpr double rounding = 1.0 + 1e-9;

inline constexpr std::size_t most_plies = most_parts + 1;  ///< the section is one part and two walls

/// What one bolt feels of one load case, without any factor.
struct BoltLoad {
    PlaneForce shear;
    Force resultant;          ///< of the shear
    double along_x, along_y;  ///< its direction; (1, 0) where there is none
    Force tension, press;     ///< along the bolt: what pulls the parts apart, or presses them together; of a load that swings to its
                              ///< opposite, the most of either
};

/// How a load case's moment is taken.
enum class Turning { centroid, heel, impossible };

/// The crush tube as assessed.
struct TubeState {
    bool present = false;
    const Row<StockTube>* stock = nullptr;
    bool chosen = false;  ///< by the assessment, not by the file
    bool fits = true;     ///< false: no stocked size serves, the strongest stands here
    Length bore, length;
    TubeWall::Answer wall{};
    TubeLength::Answer length_check{};
};

/// One wall of the section with what presses on it from outside.
struct WallSide {
    WallBending::Inputs inputs{};
    WallBending::Answer wall{};
    WallBending::Inputs plate_inputs{};
    WallBending::Answer plate{};
    bool bridged = false;  ///< a plate spans the webs and bends with the wall
    Stiffness stiffness;   ///< against being pressed towards the tube
    Force first_yield;     ///< closing force at which the wall first yields
    bool worked_out = false;
};

struct StrippingState {
    ThreadStripping::Answer answer{};
    const char* refused = nullptr;  ///< why these threads cannot be reckoned
};

/// Resistances that no load case changes.
struct BoltConstants {
    BoltShear::Answer shear{};
    BoltTension::Answer tension{};
    StrippingState stripping{};
    AssemblyStress::Answer assembly{};
};

/// Everything the checks share, worked out once for a joint.
struct State {
    const Joint* joint = nullptr;
    ThreadGeometry::Answer thread{};
    Length grip, shank_in_grip;
    Resilience bolt_resilience, part_resilience;
    double load_factor = 0, bolt_share = 0, clamp_share = 0;  ///< Φ; share of a load that reaches the bolt, that leaves the clamp
    const char* stiffness_note = nullptr;
    Length bearing_diameter, bearing_hole;  ///< under the turned nut
    double thread_friction_low = 0, thread_friction_high = 0, head_friction_low = 0, head_friction_high = 0;
    Moment torque;
    bool torque_chosen = false;
    PreloadFromTorque::Answer preload{};
    Force embedding_loss;
    double coating_creep = 0, layer_creep = 0;
    Force cold_change, hot_change;
    ClampLife::Answer clamp{};
    Force settled_least;              ///< least clamp of the rest of life, load apart
    Force greatest;                   ///< greatest bolt force of life, load apart
    Force pressed;                    ///< greatest load on one bolt that presses the parts together, with its factor
    std::array<WallSide, 2> walls{};  ///< head side and nut side of a hollow section
    Force open_capacity;              ///< what the walls stand with nothing between them
    TubeState tube;
    BoltConstants constants;
    PatternInertia pattern{};
    std::array<Length, most_plies> metal{};                   ///< diameter of each ply's metal around the bolt that has least of it
    std::array<double, most_plies> share{};                   ///< of a bolt's in-plane force that the ply takes
    std::array<std::array<AxisView, 2>, most_plies> views{};  ///< of each ply along x and y
    std::array<BoltLoad, most_bolts * most_cases> loads{};
    std::array<Turning, most_cases> turning{};
    std::array<int, most_cases> most_pulled{}, most_sheared{};  ///< bolt of each load case; the first of equals
    std::vector<Edges> edges;                                   ///< of each ply, load case and bolt, the way the bolt pushes the ply

    [[nodiscard]] const BoltLoad& load(int load_case, int bolt) const {
        return loads[static_cast<std::size_t>(load_case) * joint->positions.size() + static_cast<std::size_t>(bolt)];
    }
    [[nodiscard]] const Edges& pushed_edges(int ply, int load_case, int bolt) const {
        const auto row = static_cast<std::size_t>(ply) * joint->load_cases.size() + static_cast<std::size_t>(load_case);
        return edges[row * joint->positions.size() + static_cast<std::size_t>(bolt)];
    }
    [[nodiscard]] const AxisView& seen_along(int ply, bool x_axis) const { return views[static_cast<std::size_t>(ply)][x_axis ? 0 : 1]; }
    [[nodiscard]] const LoadCase& load_case(int index) const { return joint->load_cases[static_cast<std::size_t>(index)]; }
    [[nodiscard]] const Ply& ply(int index) const { return joint->plies[static_cast<std::size_t>(index)]; }
    /// The factor a load case carries: design factor on a static load, load factor on a dynamic one.
    [[nodiscard]] double factor_of(int index) const {
        const auto& l = load_case(index);
        return l.is_static() ? joint->service.design_factor : l.load_factor;
    }
    [[nodiscard]] TubeArrangement arrangement() const { return joint->section ? joint->section->tube.arrangement : TubeArrangement::none; }
    /// A hollow section with nothing inside it to carry the clamp.
    [[nodiscard]] bool is_open_cavity() const { return joint->section && arrangement() == TubeArrangement::none; }
    [[nodiscard]] bool tube_passes_walls() const { return joint->section && arrangement() == TubeArrangement::through_walls; }
    /// Of an entry of the stack as it is clamped: a tube between the walls has its own length.
    [[nodiscard]] Length thickness_of(const StackEntry& entry) const {
        return entry.kind == StackKind::cavity && tube.present && !tube_passes_walls() ? tube.length : entry.thickness;
    }
    /// Least clamp of life, load apart, and no more than open walls stand.
    [[nodiscard]] Force least_clamp() const { return is_open_cavity() ? min(settled_least, open_capacity) : settled_least; }
    /// Closing force at which the weaker of the two walls first yields.
    [[nodiscard]] Force walls_first_yield() const { return min(walls[0].first_yield, walls[1].first_yield); }
    /// Permissible pressure of what the tube stands on: the plates where it passes the walls, else the walls.
    [[nodiscard]] Stress pressure_under_tube() const {
        if (!tube_passes_walls()) return joint->near_wall()->material.surface_pressure;
        auto least = MPa(1e9);
        for (const auto& each : joint->plies)
            if (each.role == PlyRole::plate) least = min(least, each.material.surface_pressure);
        return least;
    }
};

/// Fills the state; no allocation, so that a search can do it millions of times into the same place. Bending of
/// the walls is worked out anew only where its inputs differ from those of the call before.
void work_out(const Joint& joint, State& state);

/// Bending of the walls, preload, stiffness, clamp through life and tube anew, where pattern and loads stand in the state already. A
/// tube is the joint's own. A preload given here stands in place of that from the torque.
void work_out_again(const Joint& joint, const std::optional<Force>& assembled, State& state);

/// How one load case reaches one bolt; every bolt where `bolt` is negative.
void derive_bolt(const State& state, int load_case, int bolt, Recorder& steps);

/// The same steps again with their derivation kept, for people. `topic` is "preload", "stiffness", "clamp", "tube" or "loads".
void derive(const State& state, std::string_view topic, Recorder& steps);

}  // namespace faywright
