// SPDX-License-Identifier: MIT
// Parses one table and writes it packed: pack TABLE.toml OUTPUT. A table that is no TOML stops the build at its place.
#include "input/packed.hpp"

#include <cstdio>
#include <fstream>
#include <iostream>
#include <iterator>

int main(int argc, char** argv) {
    using namespace faywright;
    if (argc != 3) return 2;
    std::ifstream in(argv[1], std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(in), {}};
    Diagnostics diagnostics;
    const auto node = parse_toml(text, argv[1], diagnostics);
    if (!node) {
        std::cerr << diagnostics.text();
        return 2;
    }
    std::ofstream(argv[2], std::ios::binary) << packed(*node);
    return 0;
}
