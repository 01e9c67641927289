// SPDX-License-Identifier: MIT
#pragma once

#include "input/node.hpp"

#include <string>
#include <utility>

/// Nodes as a person might have written them.
namespace node_tests {

using faywright::Node;

inline Node words(std::string text) {
    Node node;
    node.kind = Node::Kind::string;
    node.text = std::move(text);
    return node;
}
inline Node number(double value) {
    Node node;
    node.kind = Node::Kind::number;
    node.number = value;
    return node;
}
inline Node flag(bool value) {
    Node node;
    node.kind = Node::Kind::boolean;
    node.boolean = value;
    return node;
}

}  // namespace node_tests
