// SPDX-License-Identifier: MIT
#pragma once

#include "tables/table.hpp"

#include <cassert>
#include <cstdint>
#include <cstring>

/// Rows as bytes. The built-in tables are read and checked when the program is built; running, it only unpacks them.
/// Bytes and program are made by the same build, so there is no version to agree on.
namespace faywright {

namespace detail {

struct PackFields {
    std::string& out;

    void bytes(const void* data, std::size_t size) { out.append(static_cast<const char*>(data), size); }
    void value(double number) { bytes(&number, sizeof number); }
    void value(bool flag) { out += flag ? '\1' : '\0'; }
    void value(const std::string& text) {
        const auto size = static_cast<std::uint32_t>(text.size());
        bytes(&size, sizeof size);
        out += text;
    }
    template <Number T>
    requires(!std::same_as<T, double>) void value(const T& quantity) { value(static_cast<double>(quantity.value())); }
    template <Word T>
    void value(const T& word) {
        out += static_cast<char>(word);
    }
    template <Record T>
    void value(const T& record) {
        T::describe(*this, record);
    }
    template <class T>
    void value(const std::optional<T>& optional) {
        value(optional.has_value());
        if (optional) value(*optional);
    }
    template <class T>
    void value(const std::vector<T>& list) {
        const auto size = static_cast<std::uint32_t>(list.size());
        bytes(&size, sizeof size);
        for (const auto& item : list) value(item);
    }
    template <class T>
    void operator()(const Name&, const T& member, const auto&...) {
        value(member);
    }
};

struct UnpackFields {
    std::string_view in;

    void bytes(void* data, std::size_t size) {
        assert(in.size() >= size);
        std::memcpy(data, in.data(), size);
        in.remove_prefix(size);
    }
    void value(double& number) { bytes(&number, sizeof number); }
    void value(bool& flag) {
        char c = 0;
        bytes(&c, 1);
        flag = c != 0;
    }
    void value(std::string& text) {
        std::uint32_t size = 0;
        bytes(&size, sizeof size);
        assert(in.size() >= size);
        text.assign(in.substr(0, size));
        in.remove_prefix(size);
    }
    template <Number T>
    requires(!std::same_as<T, double>) void value(T& quantity) {
        double number = 0;
        value(number);
        quantity = T::from_value(number);
    }
    template <Word T>
    void value(T& word) {
        char c = 0;
        bytes(&c, 1);
        word = static_cast<T>(c);
    }
    template <Record T>
    void value(T& record) {
        T::describe(*this, record);
    }
    template <class T>
    void value(std::optional<T>& optional) {
        bool some = false;
        value(some);
        if (some) value(optional.emplace());
    }
    template <class T>
    void value(std::vector<T>& list) {
        std::uint32_t size = 0;
        bytes(&size, sizeof size);
        list.resize(size);
        for (auto& item : list) value(item);
    }
    template <class T>
    void operator()(const Name&, T& member, const auto&...) {
        value(member);
    }
};

inline void visit_source(auto& visitor, auto& source) {
    visitor.value(source.document);
    visitor.value(source.edition);
    visitor.value(source.place);
    auto basis = static_cast<double>(source.basis);
    visitor.value(basis);
    if constexpr (!std::is_const_v<std::remove_reference_t<decltype(source)>>) source.basis = static_cast<Basis>(static_cast<int>(basis));
}

}  // namespace detail

template <class Record>
[[nodiscard]] std::string packed(const Table<Record>& table) {
    std::string out;
    detail::PackFields pack{out};
    pack.value(static_cast<double>(table.rows.size()));
    for (const auto& row : table.rows) {
        pack.value(row.name);
        pack.value(row.note);
        detail::visit_source(pack, row.source);
        pack.value(static_cast<double>(row.source_of.size()));
        for (const auto& [key, source] : row.source_of) {
            pack.value(key);
            detail::visit_source(pack, source);
        }
        Record::describe(pack, static_cast<const Record&>(row));
    }
    return out;
}

template <class Record>
void unpack(std::string_view bytes, Table<Record>& table) {
    detail::UnpackFields take{bytes};
    double rows = 0;
    take.value(rows);
    table.rows.resize(static_cast<std::size_t>(rows));
    for (auto& row : table.rows) {
        take.value(row.name);
        take.value(row.note);
        detail::visit_source(take, row.source);
        double others = 0;
        take.value(others);
        for (; others > 0; --others) {
            std::string key;
            take.value(key);
            detail::visit_source(take, row.source_of[key]);
        }
        Record::describe(take, static_cast<Record&>(row));
    }
}

}  // namespace faywright
