// SPDX-License-Identifier: MIT
#pragma once

#include "input/node.hpp"

#include <string>
#include <vector>

/// What a joint file leaves open for a search: under `[choices]`, fields of the file by their paths, each with its options.
namespace faywright {

/// One thing to choose.
struct Choice {
    std::string path;  ///< as written: "bolt.size", "part.drawbar.thickness", "part[0].series, part[4].series"
    TextPosition at;
    std::vector<std::string> paths;  ///< fields that take the same option
    std::vector<Node> options;       ///< what may stand there; the word "none" at the place of a whole part leaves it out
    std::vector<std::string> names;  ///< of the options, each its own: "M12", "60 mm", "none", "jointing compound"
};

inline constexpr std::size_t most_options = 1000;
inline constexpr std::size_t most_variants = 1'000'000'000;

/// The choices of a joint file's tree: lists, or ranges `{from, to, step}` of one unit. Every mistake goes to the diagnostics.
[[nodiscard]] std::vector<Choice> read_choices(const Node& root, Diagnostics& diagnostics);

/// The tree without what it leaves to a search; nothing where it leaves nothing.
[[nodiscard]] std::optional<Node> without_choices(const Node& root);

/// The tree of one variant: the joint file less its choices, with option `options[i]` of each choice in its place.
[[nodiscard]] Node variant_of(const Node& root, const std::vector<Choice>& choices, const std::vector<std::size_t>& options);

}  // namespace faywright
