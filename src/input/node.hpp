// SPDX-License-Identifier: MIT
#pragma once

#include "input/diagnostic.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace faywright {

struct Entry;

/// A value as a person wrote it, with its place. Tables keep their keys in file order.
struct Node {
    enum class Kind { string, number, boolean, array, table, other };
    Kind kind = Kind::table;
    TextPosition at;
    std::string text;  ///< of a string; of anything else, the word for its type in messages
    double number = 0.0;
    bool boolean = false;
    std::vector<Node> items;
    std::vector<Entry> entries;

    /// The value of a key of this table, or nullptr.
    [[nodiscard]] const Node* find(std::string_view key) const;
    /// The value at "part[2].thickness", or nullptr.
    [[nodiscard]] const Node* locate(std::string_view path) const;
};

struct Entry {
    std::string key;
    TextPosition at;
    Node value;
};

/// Largest input accepted, in bytes.
inline constexpr std::size_t largest_input = 1U << 20U;

/// Parses TOML. Hostile text gives a located diagnostic: too large, not UTF-8, control characters, or
/// letters outside strings and comments that no key has. Returns nothing after an error.
[[nodiscard]] std::optional<Node> parse_toml(const std::string& text, const std::string& file, Diagnostics& diagnostics);

/// Reads one value in TOML syntax, as `calc` takes it on the command line.
[[nodiscard]] std::optional<Node> parse_toml_value(const std::string& text, const std::string& name, Diagnostics& diagnostics);

/// Reads a JSON object on one line into the same tree; every node of it has the place of the line.
[[nodiscard]] std::optional<Node> parse_json(const std::string& text, const TextPosition& place, Diagnostics& diagnostics);

/// The word for a kind of value in messages: "a string", "a number", ...
[[nodiscard]] std::string_view kind_name(Node::Kind kind);

}  // namespace faywright
