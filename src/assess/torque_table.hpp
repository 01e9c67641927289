// SPDX-License-Identifier: MIT
#pragma once

#include "assess/tightening_plan.hpp"
#include "tables/tables.hpp"

#include <string>
#include <vector>

namespace faywright {

/// What `torque` is asked.
struct TorqueQuestion {
    std::string size;  ///< empty: every size
    std::string bolt_class, finish, tightening;
    std::optional<Moment> torque;
    double proof_utilisation = 0.75;
};

struct TorqueLine {
    std::string size;
    TighteningPlan plan;
    double proof_share = 0;  ///< assembly stress over proof strength at the greatest preload
};

struct TorqueAnswer {
    std::string bolt_class;
    Row<Finish> finish;
    Row<TighteningMethod> method;
    std::vector<TorqueLine> lines;
};

/// Bare hexagon nut on a medium clearance hole, nut turned. Unknown names go to the diagnostics.
[[nodiscard]] std::optional<TorqueAnswer> torque_table(const TorqueQuestion& question, const Tables& tables, Diagnostics& diagnostics);

}  // namespace faywright
