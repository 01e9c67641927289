// SPDX-License-Identifier: MIT
#pragma once

#include "input/listing.hpp"
#include "tables/table.hpp"

#include <vector>

namespace faywright {

/// The values of a table's row, as printers show them.
template <class Record>
std::vector<NamedValue> values_of(const Row<Record>& row) {
    std::vector<NamedValue> values;
    Record::describe(detail::ListValues{values}, static_cast<const Record&>(row));
    // Words without a type of their own are no numbers; the listing leaves them to us.
    Record::describe(
        [&](const Name& name, const auto& member, const auto&...) {
            using T = std::remove_cvref_t<decltype(member)>;
            if constexpr (std::same_as<T, std::string>)
                values.push_back({name.key, "", name.meaning, {}, member});
            else if constexpr (std::same_as<T, std::optional<std::string>>) {
                if (member) values.push_back({name.key, "", name.meaning, {}, *member});
            }
        },
        static_cast<const Record&>(row));
    return values;
}

/// "d 16 mm; P 2 mm": on one line.
[[nodiscard]] inline std::string line_of(const std::vector<NamedValue>& values, std::string_view between) {
    std::string out;
    for (const auto& value : values)
        out += fmt::format("{}{} {}", out.empty() ? "" : between, value.key, value.text.empty() ? print(value.value, 5) : value.text);
    return out;
}

}  // namespace faywright
