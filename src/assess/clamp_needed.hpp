// SPDX-License-Identifier: MIT
#pragma once

#include "assess/outcome.hpp"
#include "assess/state.hpp"

#include <optional>

/// Between which clamps of one bolt a joint is sound: where the checks of slip, separation and bolt stress turn.
namespace faywright {

/// A clamp at which a check's utilisation is one, at the place of all that asks most.
struct ClampLimit {
    Where where;
    std::optional<Force> clamp;  ///< nothing: no clamp is enough
};

struct ClampLimits {
    std::optional<ClampLimit> slip;     ///< the least that no plane slips with; nothing where friction is counted on at none
    const char* slip_barred = nullptr;  ///< why it is not counted on, at the first plane where it is not
    ClampLimit separation;              ///< the least that keeps the faces closed
    Force tightening;                   ///< the greatest the bolt stands while it is tightened
    ClampLimit working;                 ///< the greatest of life, load apart, that it stands with the load
};

/// Of a state whose constants are worked out.
[[nodiscard]] ClampLimits clamp_limits(const State& state);

/// The pull that opens the faces first, with its factor, and what it makes of the least and the greatest clamp of life.
struct WorstPull {
    Where where;
    Force pull;                ///< nothing where no load pulls on a bolt
    Force to_bolt, off_clamp;  ///< its shares
    Force clamp_left;          ///< of the least
    Force bolt_most;           ///< with the greatest
};
[[nodiscard]] WorstPull worst_pull(const State& state);

}  // namespace faywright
