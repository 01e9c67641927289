// SPDX-License-Identifier: MIT
#include "input/node.hpp"

#include "quantity/characters.hpp"

#include <fmt/format.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <set>

namespace faywright {

namespace {

constexpr int deepest = 16;

using Json = nlohmann::ordered_json;

Node converted(const Json& from, const TextPosition& place) {
    Node to;
    to.at = place;
    if (from.is_object()) {
        to.kind = Node::Kind::table;
        for (const auto& [key, value] : from.items()) to.entries.push_back({key, place, converted(value, place)});
    } else if (from.is_array()) {
        to.kind = Node::Kind::array;
        for (const auto& item : from) to.items.push_back(converted(item, place));
    } else if (from.is_string()) {
        to.kind = Node::Kind::string;
        to.text = from.get<std::string>();
    } else if (from.is_number()) {
        to.kind = Node::Kind::number;
        to.number = from.get<double>();
    } else if (from.is_boolean()) {
        to.kind = Node::Kind::boolean;
        to.boolean = from.get<bool>();
    } else {
        to.kind = Node::Kind::other;
    }
    return to;
}

}  // namespace

std::optional<Node> parse_json(const std::string& text, const TextPosition& place, Diagnostics& diagnostics) {
    int deep = 0;
    std::optional<std::string> twice;
    std::vector<std::set<std::string>> keys;
    const Json::parser_callback_t watch = [&](int depth, Json::parse_event_t event, Json& parsed) {
        deep = std::max(deep, depth);
        if (depth > deepest) return false;
        if (event == Json::parse_event_t::object_start) keys.emplace_back();
        if (event == Json::parse_event_t::object_end && !keys.empty()) keys.pop_back();
        if (event == Json::parse_event_t::key && !keys.empty() && !keys.back().insert(parsed.get<std::string>()).second)
            twice = parsed.get<std::string>();
        return true;
    };
    const auto json = text.size() > largest_input ? Json(Json::value_t::discarded) : Json::parse(text, watch, false);
    if (json.is_discarded() || !json.is_object() || deep > deepest || twice) {
        diagnostics.error({"syntax.json",
                           text.size() > largest_input ? "the line is too long"
                           : deep > deepest            ? "values are nested too deeply"
                           : twice                     ? fmt::format("the key \"{}\" stands twice", shown(*twice))
                                                       : "the line is no JSON object, nor the path of a file",
                           place,
                           "",
                           {},
                           ""});
        return std::nullopt;
    }
    return converted(json, place);
}

}  // namespace faywright
