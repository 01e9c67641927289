// SPDX-License-Identifier: MIT
#pragma once

#include "input/reader.hpp"
#include "quantity/steps.hpp"

#include <string>
#include <vector>

/// The other uses of a record's description: its fields for help, its values for printers.
namespace faywright {

/// An input as help shows it.
struct FieldHelp {
    std::string key, symbol, meaning, kind, accepted, fallback;  ///< fallback: the default, or "may be left out"
};

struct NamedValue {
    std::string key, symbol, meaning;
    Value value;
    std::string text;  ///< instead of a value, for words such as a method's name
};

namespace detail {

/// Collects the fields of a record as help shows them.
struct ListFields {
    std::vector<FieldHelp>& out;

    template <class T, class... Rest>
    void operator()(const Name& name, const T& member, const Rest&... rest) const {
        FieldHelp help{name.key, *name.symbol == '\0' ? "" : display_symbol(name.symbol), name.meaning, "", "", ""};
        (take_range(help, rest), ...);
        (take_default(help, member, rest), ...);
        if constexpr (IsOptional<T>::value) help.fallback = "may be left out";
        help.kind = kind_of<T>();
        take_words(help, member);
        out.push_back(std::move(help));
    }

private:
    template <class T>
    static std::string kind_of() {
        if constexpr (Number<T>)
            return fmt::format("{}, e.g. \"{}\"", dimension_name(dimension_of<T>), dimension_example(dimension_of<T>));
        else if constexpr (std::same_as<T, bool>)
            return "true or false";
        else if constexpr (std::integral<T>)
            return "whole number";
        else if constexpr (Word<T>)
            return "word";
        else if constexpr (IsOptional<T>::value)
            return kind_of<typename T::value_type>();
        else if constexpr (IsVector<T>::value)
            return fmt::format("list of ({})", kind_of<typename T::value_type>());
        else if constexpr (Record<T>) {
            std::string keys;
            T record{};
            T::describe([&](const Name& name, auto&&...) { keys += fmt::format("{}{}", keys.empty() ? "" : ", ", name.key); }, record);
            return keys;
        } else
            return "text";
    }
    template <class T>
    static void take_range(FieldHelp& help, const Range<T>& range) {
        if constexpr (Number<T>)
            help.accepted = fmt::format("{} to {}", print(Value(range.least)), print(Value(range.most)));
        else
            help.accepted = fmt::format("{} to {}", range.least, range.most);
    }
    static void take_range(FieldHelp&, Defaulted) {}
    template <Word T>
    static void take_words(FieldHelp& help, const T&) {
        for (const auto& [value, text] : Words<T>::all) help.accepted += fmt::format("{}\"{}\"", help.accepted.empty() ? "" : ", ", text);
    }
    template <Word T>
    static void take_words(FieldHelp& help, const std::optional<T>&) {
        take_words(help, T{});
    }
    static void take_words(FieldHelp&, const auto&) {}
    template <class M, class T>
    static void take_default(FieldHelp&, const M&, const Range<T>&) {}
    template <class M>
    static void take_default(FieldHelp& help, const M& member, Defaulted) {
        if constexpr (Number<M>)
            help.fallback = print(Value(member));
        else if constexpr (std::same_as<M, bool>)
            help.fallback = member ? "true" : "false";
        else if constexpr (Word<M>)
            help.fallback = word_of(member);
        else if constexpr (std::integral<M>)
            help.fallback = fmt::format("{}", member);
        else
            help.fallback = "may be left out";
    }
};

/// Collects the values of a record as printers show them.
struct ListValues {
    std::vector<NamedValue>& out;

    template <class T, class... Rest>
    void operator()(const Name& name, const T& member, const Rest&... rest) const {
        NamedValue named{name.key, *name.symbol == '\0' ? "" : display_symbol(name.symbol), name.meaning, {}, ""};
        if constexpr (IsOptional<T>::value) {
            if (member) (*this)(name, *member, rest...);
            return;
        } else if constexpr (std::same_as<T, bool>) {
            named.text = member ? "true" : "false";
        } else if constexpr (Word<T>) {
            named.text = word_of(member);
        } else if constexpr (std::integral<T>) {
            named.value = Value(static_cast<double>(member));
        } else if constexpr (Number<T>) {
            named.value = Value(member);
        } else if constexpr (IsVector<T>::value) {
            if constexpr (Number<typename T::value_type>)
                for (const auto& each : member) named.text += (named.text.empty() ? "" : ", ") + print(Value(each));
            if (named.text.empty()) named.text = fmt::format("{} items", member.size());
        } else if constexpr (Record<T>) {
            std::vector<NamedValue> parts;
            T::describe(ListValues{parts}, member);
            for (const auto& part : parts)
                named.text +=
                    fmt::format("{}{} {}", named.text.empty() ? "" : ", ", part.key, part.text.empty() ? print(part.value) : part.text);
        } else {
            return;
        }
        out.push_back(std::move(named));
    }
};

}  // namespace detail

}  // namespace faywright
