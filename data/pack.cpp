// SPDX-License-Identifier: MIT
// Reads and checks one table and writes it packed: pack NAME TABLE.toml OUTPUT.
#include "tables/packed.hpp"
#include "tables/tables.hpp"

#include <fstream>
#include <iostream>
#include <iterator>

int main(int argc, char** argv) {
    using namespace faywright;
    if (argc != 4) return 2;
    std::ifstream in(argv[2], std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(in), {}};
    Diagnostics diagnostics;
    std::string bytes;
    if (const auto node = parse_toml(text, argv[2], diagnostics)) {
        Tables tables;
        tables.each([&](std::string_view name, auto& table) {
            if (name != argv[1]) return;
            load_rows(*node, table, diagnostics);
            bytes = packed(table);
        });
    }
    if (diagnostics.any() || bytes.empty()) {
        std::cerr << diagnostics.text();
        return 2;
    }
    std::ofstream(argv[3], std::ios::binary) << bytes;
    return 0;
}
