// SPDX-License-Identifier: MIT
#pragma once

#include "joint/joint.hpp"

namespace faywright {

/// Turns names into table rows and absent values into decided ones. `root` serves to place messages.
[[nodiscard]] std::optional<Joint> resolve(const JointFile& file, const Node& root, const Tables& tables,
                                           std::vector<DefaultTaken> defaults, Diagnostics& diagnostics);

/// Reports names that no table has. For a file whose fields are wrong already, so that both kinds of mistake come in one run.
void report_names(const JointFile& file, const Node& root, const Tables& tables, Diagnostics& diagnostics);

/// Refuses what cannot be built: a bolt that does not pass its tube, a hole over an edge, a grip longer than the bolt.
void check_geometry(const Joint& joint, const Node& root, Diagnostics& diagnostics);

/// Place of a path of the joint file; of the nearest thing above it where the path itself was not written.
[[nodiscard]] TextPosition place_of(const Node& root, std::string path);

}  // namespace faywright
