// SPDX-License-Identifier: MIT
#pragma once

#include "input/node.hpp"
#include "quantity/characters.hpp"
#include "quantity/field.hpp"
#include "quantity/nearest.hpp"
#include "quantity/text.hpp"

#include <fmt/format.h>

#include <cmath>
#include <concepts>
#include <optional>
#include <span>
#include <string>
#include <type_traits>
#include <variant>
#include <vector>

/// Reads records from nodes by the records' own descriptions: one generic reader for joint files, tables,
/// and the command line's calculators.
namespace faywright {

/// A value the file did not give.
struct DefaultTaken {
    std::string path, meaning, value;
};

struct ReadContext {
    Diagnostics& diagnostics;
    std::vector<DefaultTaken>* defaults = nullptr;
};

/// Where a value stands in the input, from the root: told only when a message needs it.
struct Path {
    const Path* up = nullptr;
    std::string_view key;
    std::optional<std::size_t> index = {};

    [[nodiscard]] std::string text() const {
        auto out = up == nullptr ? std::string() : up->text();
        if (index) return fmt::format("{}[{}]", out, *index);
        if (!out.empty() && !key.empty()) out += '.';
        return out.append(key);
    }
};

namespace detail {

struct IgnoreFields {
    void operator()(const Name&, auto&&...) const {}
};

template <class T>
concept Record = requires(T& record) {
    T::describe(IgnoreFields{}, record);
};
template <class T>
concept Number = std::same_as<T, double> || requires {
    typename T::unit_type;
};
template <class T>
concept Word = requires {
    Words<T>::all;
};
template <class T>
struct IsVector : std::false_type {};
template <class T>
struct IsVector<std::vector<T>> : std::true_type {};
template <class T>
struct IsOptional : std::false_type {};
template <class T>
struct IsOptional<std::optional<T>> : std::true_type {};
template <class T>
struct IsVariant : std::false_type {};
template <class... T>
struct IsVariant<std::variant<T...>> : std::true_type {};

template <Number T>
std::string range_phrase(const Range<T>& range) {
    return fmt::format("at least {} and at most {}", print(Value(range.least)), print(Value(range.most)));
}

inline void wrong_kind(const Node& node, const Path& path, std::string_view wanted, const ReadContext& context) {
    context.diagnostics.error(
        {"type.wrong", fmt::format("{} is {}; {} is wanted", path.text(), kind_name(node.kind), wanted), node.at, "", {}, ""});
}

template <Number T>
void read_number(const Node& node, const Path& path, T& to, const Range<T>* range, const ReadContext& context) {
    T value = to;
    if (node.kind == Node::Kind::string) {
        const auto read = read_quantity<T>(node.text);
        if (!read) {
            const bool bare = dimension_of<T>.is_ratio() ? false : read_quantity<double>(node.text).has_value();
            context.diagnostics.error(
                {bare ? "unit.missing" : "unit.dimension", fmt::format("{} {}", path.text(), read.error()), node.at, "", {}, ""});
            return;
        }
        value = *read;
    } else if (node.kind == Node::Kind::number) {
        if constexpr (std::same_as<T, double>) {
            if (!std::isfinite(node.number)) {
                context.diagnostics.error({"number.finite", fmt::format("{} is not a finite number", path.text()), node.at, "", {}, ""});
                return;
            }
            value = node.number;
        } else {
            context.diagnostics.error(
                {"unit.missing",
                 fmt::format("{} is {}, which has no unit; {}", path.text(), print_number(node.number, 6), wanted_phrase(dimension_of<T>)),
                 node.at,
                 "write it in quotes, with its unit",
                 {},
                 ""});
            return;
        }
    } else {
        constexpr auto dimension = dimension_of<T>;
        const auto wanted =
            dimension.is_ratio() ? std::string("a plain number") : fmt::format("text such as \"{}\"", dimension_example(dimension));
        wrong_kind(node, path, wanted, context);
        return;
    }
    if (range != nullptr && (value < range->least || value > range->most)) {
        // Just outside, all its digits tell it from the bound.
        auto found = print(Value(value));
        const auto least = print(Value(range->least)), most = print(Value(range->most));
        if (found == least || found == most) found = print(Value(value), 12);
        context.diagnostics.error(
            {"number.range", fmt::format("{} is {}; {} is accepted", path.text(), found, range_phrase(*range)), node.at, "", {}, ""});
        return;
    }
    to = value;
}

template <Word T>
void read_word(const Node& node, const Path& path, T& to, const ReadContext& context) {
    std::vector<std::string> accepted;
    for (const auto& [value, text] : Words<T>::all) {
        if (node.kind == Node::Kind::string && node.text == text) {
            to = value;
            return;
        }
        accepted.emplace_back(text);
    }
    if (node.kind != Node::Kind::string) {
        wrong_kind(node, path, fmt::format("one of \"{}\"", fmt::join(accepted, "\", \"")), context);
        return;
    }
    context.diagnostics.error(
        {"name.unknown",
         fmt::format("{} is \"{}\"; accepted are \"{}\"", path.text(), shown(node.text), fmt::join(accepted, "\", \"")),
         node.at,
         nearest_label(node.text, accepted),
         {},
         ""});
}

}  // namespace detail

template <class T>
void read_node(const Node& node, const Path& path, T& to, const ReadContext& context);

/// Visits the fields of one record and reads each from the table (or, field by field in order, from a list).
class FieldReader {
public:
    FieldReader(const Node& node, const Path& path, ReadContext context) : node_(node), path_(path), context_(context) {}

    template <class T>
    void operator()(const Name& name, T& member) {
        read(name, member, detail::IsOptional<T>::value,
             [&](const Node& value, const Path& path) { read_node(value, path, member, context_); });
    }
    template <class T>
    void operator()(const Name& name, T& member, Defaulted) {
        read(name, member, true, [&](const Node& value, const Path& path) { read_node(value, path, member, context_); });
    }
    template <detail::Number T>
    void operator()(const Name& name, T& member, const Range<T>& range) {
        read(name, member, false, [&](const Node& value, const Path& path) { detail::read_number(value, path, member, &range, context_); });
    }
    template <detail::Number T>
    void operator()(const Name& name, T& member, const Range<T>& range, Defaulted) {
        read(name, member, true, [&](const Node& value, const Path& path) { detail::read_number(value, path, member, &range, context_); });
    }
    template <detail::Number T>
    void operator()(const Name& name, std::optional<T>& member, const Range<T>& range) {
        read(name, member, true, [&](const Node& value, const Path& path) {
            T number{};
            const auto before = context_.diagnostics.count();
            detail::read_number(value, path, number, &range, context_);
            if (context_.diagnostics.count() == before) member = number;
        });
    }
    template <detail::Number T>
    void operator()(const Name& name, std::optional<T>& member, const Range<T>& range, Defaulted) {
        (*this)(name, member, range);
    }
    template <std::integral T>
    requires(!std::same_as<T, bool>) void operator()(const Name& name, T& member, const Range<T>& range) {
        read(name, member, false, [&](const Node& value, const Path& path) { read_count(value, path, member, range); });
    }
    template <std::integral T>
    requires(!std::same_as<T, bool>) void operator()(const Name& name, T& member, const Range<T>& range, Defaulted) {
        read(name, member, true, [&](const Node& value, const Path& path) { read_count(value, path, member, range); });
    }
    template <std::integral T>
    requires(!std::same_as<T, bool>) void operator()(const Name& name, std::optional<T>& member, const Range<T>& range) {
        read(name, member, true, [&](const Node& value, const Path& path) {
            T number{};
            const auto before = context_.diagnostics.count();
            read_count(value, path, number, range);
            if (context_.diagnostics.count() == before) member = number;
        });
    }
    /// A list of quantities, each within the range.
    template <detail::Number T>
    void operator()(const Name& name, std::vector<T>& member, const Range<T>& range) {
        read(name, member, false, [&](const Node& value, const Path& path) { read_numbers(value, path, member, range); });
    }
    template <detail::Number T>
    void operator()(const Name& name, std::vector<T>& member, const Range<T>& range, Defaulted) {
        read(name, member, true, [&](const Node& value, const Path& path) { read_numbers(value, path, member, range); });
    }

    /// Reports keys that no field has. `also` lists keys that someone else reads.
    void finish(std::span<const std::string_view> also = {}) {
        if (node_.kind != Node::Kind::table) {
            if (node_.kind == Node::Kind::array && node_.items.size() > index_)
                context_.diagnostics.error({"list.length",
                                            fmt::format("{} has {} values; {} are wanted", path_.text(), node_.items.size(), index_),
                                            node_.at,
                                            "",
                                            {},
                                            ""});
            return;
        }
        for (const auto& entry : node_.entries) {
            if (std::find(keys_.begin(), keys_.end(), entry.key) != keys_.end()) continue;
            if (std::find(also.begin(), also.end(), entry.key) != also.end()) continue;
            const auto close = nearest(entry.key, std::vector<std::string>(keys_.begin(), keys_.end()));
            context_.diagnostics.error(
                {"key.unknown",
                 fmt::format("{} is not a known key", joined(is_blank(entry.key) ? fmt::format("\"{}\"", entry.key) : shown(entry.key))),
                 entry.at,
                 close.empty() ? fmt::format("known here: {}", fmt::join(keys_, ", "))
                               : fmt::format("the nearest known key is \"{}\"", close),
                 {},
                 ""});
        }
    }

private:
    template <class T, class Read>
    void read(const Name& name, const T& member, bool may_be_absent, const Read& how) {
        keys_.push_back(name.key);
        const auto index = index_++;
        const Node* value =
            node_.kind == Node::Kind::array ? (index < node_.items.size() ? &node_.items[index] : nullptr) : node_.find(name.key);
        if (value != nullptr) {
            how(*value, node_.kind == Node::Kind::array ? Path{&path_, {}, index} : Path{&path_, name.key});
            return;
        }
        if (!may_be_absent) {
            context_.diagnostics.error(
                {"key.missing", fmt::format("{} is missing: {}", joined(name.key), name.meaning), node_.at, "", {}, ""});
        } else if (context_.defaults != nullptr) {
            note_default(name, member);
        }
    }

    template <class T>
    void note_default(const Name& name, const T& member) {
        if constexpr (detail::Number<T>)
            context_.defaults->push_back({joined(name.key), name.meaning, print(Value(member))});
        else if constexpr (std::same_as<T, bool>)
            context_.defaults->push_back({joined(name.key), name.meaning, member ? "true" : "false"});
        else if constexpr (std::integral<T>)
            context_.defaults->push_back({joined(name.key), name.meaning, fmt::format("{}", member)});
        else if constexpr (detail::Word<T>)
            context_.defaults->push_back({joined(name.key), name.meaning, std::string(word_of(member))});
        else if constexpr (std::same_as<T, std::string>) {
            if (!member.empty()) context_.defaults->push_back({joined(name.key), name.meaning, member});
        }
    }

    template <class T>
    void read_count(const Node& value, const Path& path, T& member, const Range<T>& range) const {
        if (value.kind != Node::Kind::number || value.number != std::floor(value.number)) {
            detail::wrong_kind(value, path, "a whole number", context_);
            return;
        }
        if (!(value.number >= static_cast<double>(range.least) && value.number <= static_cast<double>(range.most))) {
            context_.diagnostics.error({"number.range",
                                        fmt::format("{} is {}; at least {} and at most {} is accepted", path.text(),
                                                    print_number(value.number, 6), range.least, range.most),
                                        value.at,
                                        "",
                                        {},
                                        ""});
            return;
        }
        member = static_cast<T>(value.number);
    }

    template <detail::Number T>
    void read_numbers(const Node& value, const Path& path, std::vector<T>& member, const Range<T>& range) const {
        if (value.kind != Node::Kind::array) {
            detail::wrong_kind(value, path, "a list", context_);
            return;
        }
        std::vector<T> numbers(value.items.size());
        for (std::size_t i = 0; i < value.items.size(); ++i)
            detail::read_number(value.items[i], Path{&path, {}, i}, numbers[i], &range, context_);
        member = std::move(numbers);
    }

    [[nodiscard]] std::string joined(std::string_view key) const { return Path{&path_, key}.text(); }

    const Node& node_;
    const Path& path_;
    ReadContext context_;
    std::vector<std::string_view> keys_;
    std::size_t index_ = 0;
};

namespace detail {

inline constexpr std::size_t longest_list = 1000;
inline constexpr std::array<std::string_view, 1> variant_keys{"kind"};
inline constexpr std::size_t longest_word = 400;

template <class... T>
void read_variant(const Node& node, const Path& path, std::variant<T...>& to, const ReadContext& context) {
    const Node* kind = node.kind == Node::Kind::table ? node.find("kind") : nullptr;
    const std::vector<std::string> accepted{std::string(T::kind)...};
    if (kind == nullptr || kind->kind != Node::Kind::string) {
        context.diagnostics.error({"key.missing",
                                   fmt::format("{}.kind is missing: one of \"{}\"", path.text(), fmt::join(accepted, "\", \"")),
                                   node.at,
                                   "",
                                   {},
                                   ""});
        return;
    }
    bool found = false;
    const auto attempt = [&]<class Alternative>(std::type_identity<Alternative>) {
        if (found || kind->text != Alternative::kind) return;
        found = true;
        Alternative record;
        FieldReader fields(node, path, context);
        Alternative::describe(fields, record);
        fields.finish(variant_keys);
        to = std::move(record);
    };
    (attempt(std::type_identity<T>{}), ...);
    if (!found) {
        context.diagnostics.error(
            {"name.unknown",
             fmt::format("{}.kind is \"{}\"; accepted are \"{}\"", path.text(), shown(kind->text), fmt::join(accepted, "\", \"")),
             kind->at,
             nearest_label(kind->text, accepted),
             {},
             ""});
    }
}

}  // namespace detail

template <class T>
void read_node(const Node& node, const Path& path, T& to, const ReadContext& context) {
    if constexpr (detail::IsOptional<T>::value) {
        typename T::value_type value{};
        const auto before = context.diagnostics.count();
        read_node(node, path, value, context);
        if (context.diagnostics.count() == before) to = std::move(value);
    } else if constexpr (detail::IsVector<T>::value) {
        if (node.kind != Node::Kind::array) {
            detail::wrong_kind(node, path, "a list", context);
            return;
        }
        if (node.items.size() > detail::longest_list) {
            context.diagnostics.error(
                {"list.length",
                 fmt::format("{} has {} items; at most {} are accepted", path.text(), node.items.size(), detail::longest_list),
                 node.at,
                 "",
                 {},
                 ""});
            return;
        }
        T list(node.items.size());
        for (std::size_t i = 0; i < node.items.size(); ++i) read_node(node.items[i], Path{&path, {}, i}, list[i], context);
        to = std::move(list);
    } else if constexpr (detail::IsVariant<T>::value) {
        detail::read_variant(node, path, to, context);
    } else if constexpr (detail::Word<T>) {
        detail::read_word(node, path, to, context);
    } else if constexpr (detail::Record<T>) {
        // A record of few like fields may be written as a list of them in order.
        constexpr bool positional = requires { T::positional; };
        if (node.kind != Node::Kind::table && !(positional && node.kind == Node::Kind::array)) {
            detail::wrong_kind(node, path, positional ? "a list" : "a table", context);
            return;
        }
        FieldReader fields(node, path, context);
        T::describe(fields, to);
        fields.finish();
    } else if constexpr (detail::Number<T>) {
        detail::read_number(node, path, to, static_cast<const Range<T>*>(nullptr), context);
    } else if constexpr (std::same_as<T, bool>) {
        if (node.kind != Node::Kind::boolean) return detail::wrong_kind(node, path, "true or false", context);
        to = node.boolean;
    } else {
        static_assert(std::same_as<T, std::string>, "a field type the reader does not know");
        if (node.kind != Node::Kind::string) return detail::wrong_kind(node, path, "text in quotes", context);
        const char* fault = is_blank(node.text)                       ? "empty"
                            : node.text.size() > detail::longest_word ? "too long"
                            : !is_fit(node.text)                      ? "broken by a control or invisible character"
                                                                      : nullptr;
        if (fault != nullptr) {
            context.diagnostics.error(
                {"text.length",
                 fmt::format("{} is {}; between 1 and {} characters on one line are accepted", path.text(), fault, detail::longest_word),
                 node.at,
                 "",
                 {},
                 ""});
            return;
        }
        to = node.text;
    }
}

}  // namespace faywright
