// SPDX-License-Identifier: MIT
#include "input/packed.hpp"

#include <cassert>
#include <cstdint>
#include <cstring>

namespace faywright {

namespace {

template <class T>
void put(std::string& out, T value) {
    char bytes[sizeof value];
    std::memcpy(bytes, &value, sizeof value);
    out.append(bytes, sizeof value);
}

void put_text(std::string& out, const std::string& text) {
    put(out, static_cast<std::uint32_t>(text.size()));
    out += text;
}

void put_place(std::string& out, const TextPosition& at) {
    put(out, static_cast<std::uint32_t>(at.line));
    put(out, static_cast<std::uint16_t>(at.column));
    put(out, static_cast<std::uint16_t>(at.width));
}

void put_node(std::string& out, const Node& node) {
    put(out, static_cast<std::uint8_t>(node.kind));
    put_place(out, node.at);
    switch (node.kind) {
        case Node::Kind::string: put_text(out, node.text); break;
        case Node::Kind::number: put(out, node.number); break;
        case Node::Kind::boolean: put(out, static_cast<std::uint8_t>(node.boolean)); break;
        case Node::Kind::array:
            put(out, static_cast<std::uint32_t>(node.items.size()));
            for (const auto& item : node.items) put_node(out, item);
            break;
        case Node::Kind::table:
            put(out, static_cast<std::uint32_t>(node.entries.size()));
            for (const auto& entry : node.entries) {
                put_text(out, entry.key);
                put_place(out, entry.at);
                put_node(out, entry.value);
            }
            break;
        case Node::Kind::other: break;
    }
}

struct Reader {
    std::string_view bytes;
    std::shared_ptr<const std::string> file;

    template <class T>
    T take() {
        assert(bytes.size() >= sizeof(T));
        T value;
        std::memcpy(&value, bytes.data(), sizeof value);
        bytes.remove_prefix(sizeof value);
        return value;
    }
    std::string take_text() {
        const auto size = take<std::uint32_t>();
        assert(bytes.size() >= size);
        std::string text(bytes.substr(0, size));
        bytes.remove_prefix(size);
        return text;
    }
    TextPosition take_place() {
        TextPosition at{file};
        at.line = static_cast<int>(take<std::uint32_t>());
        at.column = take<std::uint16_t>();
        at.width = take<std::uint16_t>();
        return at;
    }
    void take_node(Node& node) {
        node.kind = static_cast<Node::Kind>(take<std::uint8_t>());
        node.at = take_place();
        switch (node.kind) {
            case Node::Kind::string: node.text = take_text(); break;
            case Node::Kind::number: node.number = take<double>(); break;
            case Node::Kind::boolean: node.boolean = take<std::uint8_t>() != 0; break;
            case Node::Kind::array:
                node.items.resize(take<std::uint32_t>());
                for (auto& item : node.items) take_node(item);
                break;
            case Node::Kind::table:
                node.entries.resize(take<std::uint32_t>());
                for (auto& entry : node.entries) {
                    entry.key = take_text();
                    entry.at = take_place();
                    take_node(entry.value);
                }
                break;
            case Node::Kind::other: break;
        }
    }
};

}  // namespace

std::string packed(const Node& node) {
    std::string out;
    put_node(out, node);
    return out;
}

Node unpacked(std::string_view bytes, const std::string& file) {
    Reader reader{bytes, std::make_shared<const std::string>(file)};
    Node node;
    reader.take_node(node);
    return node;
}

}  // namespace faywright
