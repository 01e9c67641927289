// SPDX-License-Identifier: MIT
#include "joint/choices.hpp"

#include "quantity/characters.hpp"
#include "quantity/nearest.hpp"
#include "quantity/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <charconv>
#include <cmath>

namespace faywright {

namespace {

/// A number and what follows it: the unit as written, or nothing.
struct Written {
    double number = 0.0;
    std::string unit;
    bool is_text = false;
};

std::optional<Written> written(const Node& node) {
    if (node.kind == Node::Kind::number && std::isfinite(node.number)) return Written{node.number, "", false};
    if (node.kind != Node::Kind::string) return std::nullopt;
    Written result{0.0, "", true};
    const auto* end = node.text.data() + node.text.size();
    const auto [rest, failure] = std::from_chars(node.text.data(), end, result.number);
    if (failure != std::errc{} || !std::isfinite(result.number)) return std::nullopt;
    result.unit.assign(rest, end);
    return result;
}

/// The options of a range, its bounds among them where the step meets them.
std::vector<Node> options_of_range(const Node& range, const std::string& path, Diagnostics& diagnostics) {
    const auto fail = [&](const TextPosition& at, const std::string& what) {
        diagnostics.error({"choices.range", fmt::format("choices.\"{}\" {}", shown(path), what), at, "", {}, ""});
        return std::vector<Node>{};
    };
    std::array<Written, 3> numbers;
    constexpr std::array<const char*, 3> keys{"from", "to", "step"};
    for (const auto& entry : range.entries)
        if (std::find(keys.begin(), keys.end(), entry.key) == keys.end())
            return fail(entry.at, fmt::format("has a range with \"{}\"; from, to and step are wanted", shown(entry.key)));
    for (std::size_t i = 0; i < keys.size(); ++i) {
        const Node* node = range.find(keys[i]);
        if (node == nullptr) return fail(range.at, fmt::format("has a range without \"{}\"; from, to and step are wanted", keys[i]));
        const auto number = written(*node);
        if (!number) return fail(node->at, fmt::format("has a range whose {} is no number", keys[i]));
        numbers[i] = *number;
    }
    const auto& [from, to, step] = numbers;
    if (from.unit != to.unit || from.unit != step.unit || from.is_text != to.is_text || from.is_text != step.is_text)
        return fail(range.at, "has a range in mixed units; from, to and step of one unit are wanted");
    if (!(step.number > 0.0) || to.number < from.number) return fail(range.at, "has a range that does not rise");
    const double count = std::floor((to.number - from.number) / step.number * (1.0 + 1e-12) + 1e-9) + 1.0;
    if (count > static_cast<double>(most_options)) return fail(range.at, fmt::format("has a range of more than {} options", most_options));
    std::vector<Node> options;
    for (std::size_t i = 0; i < static_cast<std::size_t>(count); ++i) {
        Node option;
        option.at = range.at;
        option.kind = from.is_text ? Node::Kind::string : Node::Kind::number;
        option.number = from.number + static_cast<double>(i) * step.number;
        if (from.is_text) option.text = print_number(option.number, 12) + from.unit;
        options.push_back(std::move(option));
    }
    return options;
}

/// All that an option says.
std::string whole_text(const Node& option) {
    std::string out;
    switch (option.kind) {
        case Node::Kind::string: return option.text;
        case Node::Kind::number: return print_number(option.number, 12);
        case Node::Kind::boolean: return option.boolean ? "true" : "false";
        case Node::Kind::array:
            for (const auto& item : option.items) out += (out.empty() ? "" : ", ") + whole_text(item);
            return fmt::format("[{}]", out);
        case Node::Kind::table:
            for (const auto& entry : option.entries)
                out += fmt::format("{}{} = {}", out.empty() ? "" : ", ", entry.key, whole_text(entry.value));
            return fmt::format("{{{}}}", out);
        case Node::Kind::other: break;
    }
    return "a date or time";
}

/// What tells a part apart, where it has such a word; else all it says.
std::string short_text(const Node& option) {
    for (const char* key : {"material", "series", "name"})
        if (const Node* node = option.find(key); node != nullptr && node->kind == Node::Kind::string) return node->text;
    return whole_text(option);
}

std::vector<std::string> names_of(const std::vector<Node>& options) {
    std::vector<std::string> names;
    names.reserve(options.size());
    for (const auto& option : options) names.push_back(short_text(option));
    for (std::size_t i = 0; i < names.size(); ++i)
        if (std::count(names.begin(), names.end(), short_text(options[i])) > 1) names[i] = whole_text(options[i]);
    return names;
}

/// What is asked of the joint, not what it is made of: a search that could choose it would choose the least.
bool is_demand(const std::string& path) {
    const auto key = path.substr(0, path.find_first_of(".["));
    for (const char* demand : {"service-class", "life", "load-case", "loads", "loads-joint", "temperatures", "overrides", "title"})
        if (key == demand) return true;
    return false;
}

/// Whether one of two paths leads to the other's field or into it.
bool overlap(const std::string& a, const std::string& b) {
    const auto& shorter = a.size() < b.size() ? a : b;
    const auto& longer = a.size() < b.size() ? b : a;
    return longer.compare(0, shorter.size(), shorter) == 0 &&
           (longer.size() == shorter.size() || longer[shorter.size()] == '.' || longer[shorter.size()] == '[');
}

std::vector<std::string> split(const std::string& path) {
    std::vector<std::string> paths;
    for (std::size_t at = 0; at <= path.size();) {
        const auto comma = std::min(path.find(',', at), path.size());
        auto one = path.substr(at, comma - at);
        one.erase(0, std::min(one.find_first_not_of(' '), one.size()));
        while (!one.empty() && one.back() == ' ') one.pop_back();
        paths.push_back(std::move(one));
        at = comma + 1;
    }
    return paths;
}

/// "part.drawbar.thickness" as "part[1].thickness": parts go by the names the shop gives them as well as by number.
std::string by_number(const Node& root, const std::string& path) {
    constexpr std::string_view head = "part.";
    const Node* parts = root.find("part");
    if (path.compare(0, head.size(), head) != 0 || parts == nullptr) return path;
    const auto rest = std::string_view(path).substr(head.size());
    std::string found;
    for (std::size_t i = 0; i < parts->items.size(); ++i) {
        const Node* name = parts->items[i].find("name");
        if (name == nullptr || rest.substr(0, name->text.size()) != name->text) continue;
        const auto tail = rest.substr(name->text.size());
        if (!tail.empty() && tail.front() != '.') continue;
        if (!found.empty()) return path;  // two parts of one name: neither is meant
        found = fmt::format("part[{}]{}", i, tail);
    }
    return found.empty() ? path : found;
}

/// The place a path leads to; nullptr where it leads nowhere. Keys that are not there yet are made, as if written at `at`.
Node* place(Node& root, std::string_view path, const TextPosition& at) {
    Node* here = &root;
    while (!path.empty()) {
        if (path.front() == '[') {
            const auto close = path.find(']');
            std::size_t index = 0;
            const auto digits = path.substr(1, close == std::string_view::npos ? 0 : close - 1);
            const auto [end, failure] = std::from_chars(digits.data(), digits.data() + digits.size(), index);
            if (failure != std::errc{} || end != digits.data() + digits.size() || here->kind != Node::Kind::array ||
                index >= here->items.size())
                return nullptr;
            here = &here->items[index];
            path.remove_prefix(close + 1);
            if (!path.empty() && path.front() == '.') path.remove_prefix(1);
            continue;
        }
        const auto stop = path.find_first_of(".[");
        const auto key = path.substr(0, stop);
        if (key.empty() || here->kind != Node::Kind::table) return nullptr;
        auto found = std::find_if(here->entries.begin(), here->entries.end(), [&](const Entry& e) { return e.key == key; });
        if (found == here->entries.end()) {
            here->entries.push_back({std::string(key), at, Node{}});
            found = std::prev(here->entries.end());
        }
        here = &found->value;
        path = stop == std::string_view::npos ? std::string_view{} : path.substr(path[stop] == '.' ? stop + 1 : stop);
    }
    return here;
}

/// What stands where a part is left out, until all choices are in place.
constexpr const char* left_out = "left out";

void put(Node& root, const std::string& path, const Node& option) {
    Node* node = place(root, path, option.at);
    if (node == nullptr) return;
    *node = option;
    if (option.kind == Node::Kind::string && option.text == "none" && !path.empty() && path.back() == ']') {
        node->kind = Node::Kind::other;
        node->text = left_out;
    }
}

}  // namespace

std::vector<Choice> read_choices(const Node& root, Diagnostics& diagnostics) {
    std::vector<Choice> choices;
    const Node* table = root.find("choices");
    if (table == nullptr || table->kind != Node::Kind::table || table->entries.empty()) {
        diagnostics.error(
            {"choices.none",
             table != nullptr && table->kind != Node::Kind::table
                 ? fmt::format("choices is {}; a table of paths of fields and their options is wanted", kind_name(table->kind))
                 : "the joint file leaves nothing open: [choices] with paths of fields and their options is wanted",
             table == nullptr ? root.at : table->at,
             "",
             {},
             "for example \"bolt.size\" = [\"M12\", \"M16\"]"});
        return choices;
    }
    double variants = 1.0;
    for (const auto& entry : table->entries) {
        Choice choice{entry.key, entry.at, {}, {}, {}};
        for (const auto& path : split(entry.key)) choice.paths.push_back(by_number(root, path));
        for (const auto& path : choice.paths) {
            Node trial = root;
            if (path.empty() || path.compare(0, 7, "choices") == 0 || place(trial, path, entry.at) == nullptr)
                diagnostics.error({"choices.path",
                                   fmt::format("choices.\"{}\" leads to no field of this file", shown(entry.key)),
                                   entry.at,
                                   "",
                                   {},
                                   "paths are as in bolt.size, part[1].thickness or part.NAME.thickness"});
        }
        for (const auto& path : choice.paths) {
            if (is_demand(path))
                diagnostics.error(
                    {"choices.demand",
                     fmt::format("choices.\"{}\" is asked of the joint and is none of its parts: the search would choose the least",
                                 shown(entry.key)),
                     entry.at,
                     "",
                     {},
                     "search once for each"});
            for (const auto& other : choices)
                for (const auto& there : other.paths)
                    if (overlap(path, there))
                        diagnostics.error(
                            {"choices.overlap",
                             fmt::format("choices.\"{}\" and choices.\"{}\" are about the same field", shown(other.path), shown(entry.key)),
                             entry.at,
                             "",
                             {{other.at, "the other"}},
                             ""});
        }
        const Node& value = entry.value;
        if (value.kind == Node::Kind::table && value.find("from") == nullptr && value.find("to") == nullptr &&
            value.find("step") == nullptr) {
            diagnostics.error({"choices.options",
                               fmt::format("choices.\"{}\" is a table, and no range {{from, to, step}}", shown(entry.key)),
                               entry.at,
                               "",
                               {},
                               "a path of several keys stands in quotes: \"bolt.size\" = [...]"});
        } else if (value.kind == Node::Kind::table) {
            choice.options = options_of_range(value, entry.key, diagnostics);
        } else if (value.kind == Node::Kind::array && !value.items.empty() && value.items.size() <= most_options) {
            choice.options = value.items;
        } else {
            diagnostics.error({"choices.options",
                               fmt::format("choices.\"{}\" is {}; a list of 1 to {} options or a range {{from, to, step}} is wanted",
                                           shown(entry.key), kind_name(value.kind), most_options),
                               value.at,
                               "",
                               {},
                               ""});
        }
        choice.names = names_of(choice.options);
        for (std::size_t i = 0; i < choice.options.size(); ++i) {
            if (std::find(choice.names.begin(), choice.names.begin() + static_cast<std::ptrdiff_t>(i), choice.names[i]) !=
                choice.names.begin() + static_cast<std::ptrdiff_t>(i))
                diagnostics.error({"choices.options",
                                   fmt::format("choices.\"{}\" has {} twice", shown(entry.key), shown(choice.names[i])),
                                   choice.options[i].at,
                                   "",
                                   {},
                                   ""});
            if (choice.names[i] == "none" && (choice.paths.front().compare(0, 5, "part[") != 0 || choice.paths.front().back() != ']'))
                diagnostics.error({"choices.options",
                                   fmt::format("choices.\"{}\": only a whole part may be left out by \"none\"", shown(entry.key)),
                                   choice.options[i].at,
                                   "",
                                   {},
                                   ""});
        }
        variants *= static_cast<double>(std::max<std::size_t>(1, choice.options.size()));
        choices.push_back(std::move(choice));
    }
    if (variants > static_cast<double>(most_variants))
        diagnostics.error({"choices.variants",
                           fmt::format("the choices make {:.3g} variants; at most {} are searched", variants, most_variants),
                           table->at,
                           "",
                           {},
                           ""});
    return choices;
}

std::optional<Node> without_choices(const Node& root) {
    return root.find("choices") == nullptr ? std::nullopt : std::optional(variant_of(root, {}, {}));
}

Node variant_of(const Node& root, const std::vector<Choice>& choices, const std::vector<std::size_t>& options) {
    Node variant = root;
    std::erase_if(variant.entries, [](const Entry& entry) { return entry.key == "choices"; });
    for (std::size_t i = 0; i < choices.size(); ++i)
        for (const auto& path : choices[i].paths) put(variant, path, choices[i].options[options[i]]);
    for (auto& entry : variant.entries)
        if (entry.key == "part")
            std::erase_if(entry.value.items, [](const Node& part) { return part.kind == Node::Kind::other && part.text == left_out; });
    return variant;
}

}  // namespace faywright
