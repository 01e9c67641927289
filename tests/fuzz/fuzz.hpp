// SPDX-License-Identifier: MIT
#pragma once

#include "tables/tables.hpp"

#include <cstdlib>
#include <string>

/// What the fuzzers of whole files share.
namespace fuzz {

inline const faywright::Tables& built_in() {
    static const faywright::Tables tables = [] {
        faywright::Diagnostics none;
        return faywright::load_tables(std::nullopt, none);
    }();
    return tables;
}

inline std::string text_of(const unsigned char* data, std::size_t size) { return {reinterpret_cast<const char*>(data), size}; }

/// What is refused is told.
inline void must_be_told(const faywright::Diagnostics& diagnostics) {
    if (!diagnostics.any() || diagnostics.text().empty()) std::abort();
}

}  // namespace fuzz
