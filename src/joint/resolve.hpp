// SPDX-License-Identifier: MIT
#pragma once

#include "joint/joint.hpp"
#include "loads/lap.hpp"

namespace faywright {

/// Turns names into table rows and absent values into decided ones. `root` serves to place messages. The first `foreign_cases` load cases
/// come from another file.
[[nodiscard]] std::optional<Joint> resolve(const JointFile& file, const Node& root, const Tables& tables,
                                           std::vector<DefaultTaken> defaults, std::size_t foreign_cases, Diagnostics& diagnostics);

/// What a joint file takes from a trailer file besides load cases.
struct TakenLoads {
    std::size_t count = 0;  ///< of load cases, the first of the file
    std::vector<std::string> warnings, own_rules;
    std::optional<Lap> lap;  ///< where the joint is the lap of a leg
};

/// A joint file read, with the loads and the exposures it takes from other files: what may be changed before names are resolved.
struct WrittenJoint {
    JointFile file;
    std::vector<DefaultTaken> defaults;
    TakenLoads taken;
    std::vector<Row<Exposure>> exposures;
};

[[nodiscard]] std::optional<WrittenJoint> read_written(const Node& root, const Tables& tables, const FileReader& read_file,
                                                       std::vector<DefaultTaken> defaults, Diagnostics& diagnostics);

/// Its joint; whether that can be built is check_geometry's.
[[nodiscard]] std::optional<Joint> joint_of_written(const WrittenJoint& written, const Node& root, const Tables& tables,
                                                    Diagnostics& diagnostics);

/// Both in one.
[[nodiscard]] std::optional<Joint> joint_of_tree(const Node& root, const Tables& tables, const FileReader& read_file,
                                                 std::vector<DefaultTaken> defaults, Diagnostics& diagnostics);

/// Exposures by name: rows of the table, or site files whose names end in .toml. `place` tells where each name was written.
[[nodiscard]] std::vector<Row<Exposure>> take_exposures(const std::vector<std::string>& names, const Tables& tables,
                                                        const FileReader& read_file, const std::function<TextPosition(std::size_t)>& place,
                                                        Diagnostics& diagnostics);

/// The load cases of the trailer file that `file.loads` names, put before the file's own ones; their places are the key `loads`.
/// The trailer file's mistakes are told with its own places.
[[nodiscard]] std::optional<TakenLoads> take_loads(JointFile& file, const Node& root, const Tables& tables, const FileReader& read_file,
                                                   std::vector<DefaultTaken>& defaults, Diagnostics& diagnostics);

/// Reports names that no table has. For a file whose fields are wrong already, so that both kinds of mistake come in one run.
void report_names(const JointFile& file, const Node& root, const Tables& tables, Diagnostics& diagnostics);

/// Refuses what cannot be built: a bolt that does not pass its tube, a hole over an edge, a grip longer than the bolt.
void check_geometry(const Joint& joint, const Node& root, Diagnostics& diagnostics);

/// Place of a path of the joint file; of the nearest thing above it where the path itself was not written.
[[nodiscard]] TextPosition place_of(const Node& root, std::string path);

}  // namespace faywright
