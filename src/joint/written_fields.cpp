// SPDX-License-Identifier: MIT
#include "joint/written_fields.hpp"

#include "input/reader.hpp"

namespace faywright {

namespace {

/// A value on one line.
template <class T>
std::string words_of(const T& value) {
    using namespace detail;
    if constexpr (std::same_as<T, bool>)
        return value ? "true" : "false";
    else if constexpr (std::same_as<T, std::string>)
        return value;
    else if constexpr (Word<T>)
        return std::string(word_of(value));
    else if constexpr (std::integral<T>)
        return fmt::format("{}", value);
    else if constexpr (Number<T>)
        return print(Value(value), 6);
    else if constexpr (IsOptional<T>::value)
        return value ? words_of(*value) : std::string();
    else if constexpr (IsVariant<T>::value)
        return std::visit([](const auto& each) { return words_of(each); }, value);
    else if constexpr (IsVector<T>::value) {
        std::string out;
        for (const auto& each : value) out += (out.empty() ? "" : "; ") + words_of(each);
        return out;
    } else {
        std::string out;
        T::describe([&](const Name&, const auto& member, const auto&...) { out += (out.empty() ? "" : ", ") + words_of(member); }, value);
        return out;
    }
}

/// A record that stands on one line: a list of its values.
template <class T>
concept Positional = requires {
    T::positional;
};

struct Walker {
    const Node& root;
    std::size_t foreign_cases;
    std::vector<WrittenField> out;

    template <class T>
    void record(const T& value, const std::string& path) {
        T::describe(
            [&](const Name& name, const auto& member, const auto&...) {
                field(name, member, path.empty() ? std::string(name.key) : fmt::format("{}.{}", path, name.key));
            },
            value);
    }

    template <class T>
    void field(const Name& name, const T& member, const std::string& path) {
        using namespace detail;
        if constexpr (IsOptional<T>::value) {
            if (member) field(name, *member, path);
        } else if constexpr (IsVariant<T>::value) {
            std::visit([&](const auto& each) { field(name, each, path); }, member);
        } else if constexpr (Record<T> && !Positional<T>) {
            record(member, path);
        } else {
            if constexpr (IsVector<T>::value) {
                using Item = typename T::value_type;
                if constexpr ((Record<Item> && !Positional<Item>) || IsVariant<Item>::value) {
                    const auto first = std::same_as<Item, LoadCaseFile> ? foreign_cases : 0;
                    for (auto i = first; i < member.size(); ++i) field(name, member[i], fmt::format("{}[{}]", path, i - first));
                    return;
                }
            }
            if (const auto* node = root.locate(path); node != nullptr) out.push_back({path, name.meaning, words_of(member), node->at});
        }
    }
};

}  // namespace

std::vector<WrittenField> fields_of(const WrittenJoint& written, const Node& root) {
    Walker walker{root, written.taken.count, {}};
    walker.record(written.file, "");
    return std::move(walker.out);
}

}  // namespace faywright
