// SPDX-License-Identifier: MIT
#include "input/node.hpp"

#include "quantity/characters.hpp"

// The library's assertions can be reached by hostile text; without them it reports a clean error instead.
#define TOML_ASSERT(condition) static_cast<void>(0)
#define TOML_EXCEPTIONS 0
#include <toml++/toml.h>

#include <fmt/format.h>

#include <algorithm>

namespace faywright {

namespace {

constexpr int deepest = 16;

/// Where the text first breaks our rules, if anywhere: what the parser must not be shown.
struct Fault {
    std::size_t byte;
    std::string message;
};

/// Bytes of the quotes that end a long string: three, after up to two of its own.
std::size_t end_of_long(const std::string& text, std::size_t at) {
    std::size_t count = 3;
    while (count < 5 && at + count < text.size() && text[at + count] == text[at]) ++count;
    return count;
}

std::optional<Fault> first_fault(const std::string& text) {
    // Each dot of a key is a level of tables; the parser and whoever walks its tree go down them one by one.
    int dots = 0;
    enum class In { code, comment, basic, literal, long_basic, long_literal } in = In::code;
    for (std::size_t at = 0; at < text.size();) {
        const char c = text[at];
        const auto n = sequence_length(text, at);
        if (n == 0) return Fault{at, "the file is not valid UTF-8 here"};
        if (n > 1 && in == In::code) return Fault{at, "a character outside the English alphabet stands here outside quotes"};
        const char* why = c == '\t' || c == '\n' || c == '\r' ? nullptr : unfit(text, at, n);
        if (why != nullptr && (n == 1 || in != In::comment)) return Fault{at, fmt::format("{} stands here", why)};
        const bool triple = text.compare(at, 3, "\"\"\"") == 0 || text.compare(at, 3, "'''") == 0;
        std::size_t step = n;
        switch (in) {
            case In::code:
                if (c == '.') ++dots;
                if (c == '\n' || c == '=' || c == ',' || c == '{' || c == '[') dots = 0;
                if (dots > deepest) return Fault{at, "a key has too many parts"};
                if (c == '#')
                    in = In::comment;
                else if (triple) {
                    in = c == '"' ? In::long_basic : In::long_literal;
                    step = 3;
                } else if (c == '"')
                    in = In::basic;
                else if (c == '\'')
                    in = In::literal;
                break;
            case In::comment:
                if (c == '\n') in = In::code;
                break;
            case In::basic:
                if (c == '\\')
                    step = std::min<std::size_t>(2, text.size() - at);
                else if (c == '"' || c == '\n')
                    in = In::code;
                break;
            case In::literal:
                if (c == '\'' || c == '\n') in = In::code;
                break;
            case In::long_basic:
                if (c == '\\')
                    step = std::min<std::size_t>(2, text.size() - at);
                else if (triple && c == '"') {
                    in = In::code;
                    step = end_of_long(text, at);
                }
                break;
            case In::long_literal:
                if (triple && c == '\'') {
                    in = In::code;
                    step = end_of_long(text, at);
                }
                break;
        }
        if (step == 2 && n == 1 && at + 1 < text.size() && sequence_length(text, at + 1) != 1) step = 1;
        at += step;
    }
    return std::nullopt;
}

TextPosition position_of_byte(const std::string& text, std::size_t byte, const std::shared_ptr<const std::string>& file) {
    TextPosition at{file, 1, 1, 1};
    for (std::size_t i = 0; i < byte && i < text.size(); ++i) {
        if (text[i] == '\n') {
            ++at.line;
            at.column = 1;
        } else if (!continues_character(text[i])) {
            ++at.column;
        }
    }
    return at;
}

TextPosition position_of(const toml::source_region& region, const std::shared_ptr<const std::string>& file) {
    TextPosition at{file, std::max(1, static_cast<int>(region.begin.line)), std::max(1, static_cast<int>(region.begin.column)), 1};
    if (region.end.line == region.begin.line && region.end.column > region.begin.column)
        at.width = static_cast<int>(region.end.column - region.begin.column);
    return at;
}

Node converted(const toml::node& from, const std::shared_ptr<const std::string>& file, int depth, Diagnostics& diagnostics) {
    Node to;
    to.at = position_of(from.source(), file);
    if (depth > deepest) {
        diagnostics.error({"syntax.depth", "values are nested too deeply", to.at, fmt::format("at most {} levels", deepest), {}, ""});
        to.kind = Node::Kind::other;
        return to;
    }
    if (const auto* table = from.as_table()) {
        to.kind = Node::Kind::table;
        for (auto&& [key, value] : *table)
            to.entries.push_back({std::string(key.str()), position_of(key.source(), file), converted(value, file, depth + 1, diagnostics)});
        std::stable_sort(to.entries.begin(), to.entries.end(), [](const Entry& a, const Entry& b) {
            return std::pair(a.at.line, a.at.column) < std::pair(b.at.line, b.at.column);
        });
    } else if (const auto* array = from.as_array()) {
        to.kind = Node::Kind::array;
        for (auto&& item : *array) to.items.push_back(converted(item, file, depth + 1, diagnostics));
    } else if (const auto* string = from.as_string()) {
        to.kind = Node::Kind::string;
        to.text = string->get();
    } else if (const auto* integer = from.as_integer()) {
        to.kind = Node::Kind::number;
        to.number = static_cast<double>(integer->get());
    } else if (const auto* floating = from.as_floating_point()) {
        to.kind = Node::Kind::number;
        to.number = floating->get();
    } else if (const auto* boolean = from.as_boolean()) {
        to.kind = Node::Kind::boolean;
        to.boolean = boolean->get();
    } else {
        to.kind = Node::Kind::other;
    }
    return to;
}

}  // namespace

const Node* Node::find(std::string_view key) const {
    for (const auto& entry : entries)
        if (entry.key == key) return &entry.value;
    return nullptr;
}

const Node* Node::locate(std::string_view path) const {
    const Node* here = this;
    while (here != nullptr && !path.empty()) {
        const auto stop = path.find_first_of(".[");
        if (stop == 0 && path.front() == '[') {
            const auto close = path.find(']');
            std::size_t index = 0;
            for (const char c : path.substr(1, close - 1)) index = 10 * index + static_cast<std::size_t>(c - '0');
            here = index < here->items.size() ? &here->items[index] : nullptr;
            path.remove_prefix(close + 1);
        } else if (stop == 0) {
            path.remove_prefix(1);
        } else {
            here = here->find(path.substr(0, stop));
            path = stop == std::string_view::npos ? std::string_view{} : path.substr(stop);
        }
    }
    return here;
}

std::string_view kind_name(Node::Kind kind) {
    switch (kind) {
        case Node::Kind::string: return "a string";
        case Node::Kind::number: return "a number";
        case Node::Kind::boolean: return "true or false";
        case Node::Kind::array: return "a list";
        case Node::Kind::table: return "a table";
        case Node::Kind::other: return "a date or time";
    }
    return "a value";
}

std::optional<Node> parse_toml(const std::string& given, const std::string& file, Diagnostics& diagnostics) {
    const auto name = std::make_shared<const std::string>(file);
    const bool marked = given.compare(0, 3, "\xef\xbb\xbf") == 0;
    const std::string text = marked ? given.substr(3) : given;
    if (text.size() > largest_input) {
        diagnostics.error({"syntax.size",
                           fmt::format("the file has {} bytes; at most {} are read", text.size(), largest_input),
                           TextPosition{name},
                           "",
                           {},
                           ""});
        return std::nullopt;
    }
    diagnostics.keep_text(file, text);
    if (const auto fault = first_fault(text)) {
        diagnostics.error({"syntax.character", fault->message, position_of_byte(text, fault->byte, name), "", {}, ""});
        return std::nullopt;
    }
    const auto result = toml::parse(text, file);
    if (!result) {
        const auto& error = result.error();
        std::string message(error.description());
        for (char& c : message)
            if (c == '\n' || c == '\r') c = ' ';
        diagnostics.error({"syntax.toml", message, position_of(error.source(), name), "", {}, ""});
        return std::nullopt;
    }
    const auto before = diagnostics.count();
    auto root = converted(result.table(), name, 0, diagnostics);
    root.at = TextPosition{name};
    if (diagnostics.count() != before) return std::nullopt;
    return root;
}

std::optional<Node> parse_toml_value(const std::string& text, const std::string& name, Diagnostics& diagnostics) {
    auto root = parse_toml("value = " + text, name, diagnostics);
    if (!root || root->entries.size() != 1) {
        if (root) diagnostics.error({"syntax.toml", "one value is wanted here", root->at, "", {}, ""});
        return std::nullopt;
    }
    return std::move(root->entries.front().value);
}

}  // namespace faywright
