// SPDX-License-Identifier: MIT
// Any bytes as a table of materials laid over the built-in one.
#include "tables/tables.hpp"

#include <cstdlib>

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
    using namespace faywright;
    Diagnostics diagnostics;
    const auto node = parse_toml({reinterpret_cast<const char*>(data), size}, "fuzz.toml", diagnostics);
    if (!node) {
        if (!diagnostics.any()) std::abort();
        return 0;
    }
    Table<Material> table;
    load_rows(*node, table, diagnostics);
    return 0;
}
