// SPDX-License-Identifier: MIT
#pragma once

#include "input/node.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>

namespace faywright {

/// Writes a tree of nodes as TOML again, one field of a record a line, and tells on which line a node came to stand.
class TomlWriter {
public:
    /// `watched`: the node whose line is wanted, or nullptr.
    explicit TomlWriter(const Node& root, const Node* watched = nullptr) : watched_(watched) {
        for (const auto& entry : root.entries)
            if (!is_block(entry.value)) field(entry);
        for (const auto& entry : root.entries) {
            if (!is_block(entry.value)) continue;
            if (entry.value.kind == Node::Kind::table) {
                block(fmt::format("[{}]", key(entry.key)), entry.value);
            } else {
                if (&entry.value == watched_) line_ = lines_ + (lines_ > 0 ? 2 : 1);
                for (const auto& item : entry.value.items) block(fmt::format("[[{}]]", key(entry.key)), item);
            }
        }
    }

    [[nodiscard]] const std::string& text() const { return text_; }
    /// Of the watched node; 0 where it is not in the tree.
    [[nodiscard]] int line() const { return line_; }
    [[nodiscard]] int lines() const { return lines_; }

    /// A basic string of TOML.
    static std::string quoted(const std::string& words) {
        std::string out = "\"";
        for (const char c : words) {
            if (c == '"' || c == '\\') out += '\\';
            if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f)
                out += fmt::format("\\u{:04x}", static_cast<unsigned>(static_cast<unsigned char>(c)));
            else
                out += c;
        }
        return out + '"';
    }

private:
    static bool is_block(const Node& node) {
        if (node.kind == Node::Kind::table) return true;
        return node.kind == Node::Kind::array && !node.items.empty() &&
               std::all_of(node.items.begin(), node.items.end(), [](const Node& item) { return item.kind == Node::Kind::table; });
    }

    static std::string key(const std::string& name) {
        const bool bare = !name.empty() &&
                          name.find_first_not_of("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_") == std::string::npos;
        return bare ? name : quoted(name);
    }

    std::string value(const Node& node) {
        if (&node == watched_) line_ = lines_ + 1;
        switch (node.kind) {
            case Node::Kind::string: return quoted(node.text);
            case Node::Kind::boolean: return node.boolean ? "true" : "false";
            case Node::Kind::number: {
                if (std::isnan(node.number)) return "nan";
                if (std::isinf(node.number)) return node.number > 0 ? "inf" : "-inf";
                if (node.number == std::floor(node.number) && std::abs(node.number) < 1e15) return fmt::format("{:.0f}", node.number);
                auto out = fmt::format("{}", node.number);
                return out.find_first_of(".e") == std::string::npos ? out + ".0" : out;
            }
            case Node::Kind::array: {
                std::string out;
                for (const auto& item : node.items) out += (out.empty() ? "" : ", ") + value(item);
                return fmt::format("[{}]", out);
            }
            case Node::Kind::table: {
                std::string out;
                for (const auto& entry : node.entries) out += (out.empty() ? "" : ", ") + key(entry.key) + " = " + value(entry.value);
                return fmt::format("{{{}}}", out);
            }
            case Node::Kind::other: return "1970-01-01";
        }
        return "0";
    }

    void line(const std::string& words) {
        text_ += words + '\n';
        ++lines_;
    }

    void field(const Entry& entry) { line(key(entry.key) + " = " + value(entry.value)); }

    void block(const std::string& heading, const Node& table) {
        if (lines_ > 0) line("");
        if (&table == watched_) line_ = lines_ + 1;
        line(heading);
        for (const auto& entry : table.entries) field(entry);
    }

    const Node* watched_;
    std::string text_;
    int line_ = 0, lines_ = 0;
};

}  // namespace faywright
