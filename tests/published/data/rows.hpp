// SPDX-License-Identifier: MIT
#pragma once

#include <doctest/doctest.h>

#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace faywright::published {

using DataRow = std::vector<std::string>;

/// The rows of a file of tests/published/data: cells between commas; without its comments, which say where the values are from, and
/// without the line of headings.
inline std::vector<DataRow> data_rows(const std::string& name) {
    std::ifstream file(std::string(FAYWRIGHT_SOURCE_DIR) + "/tests/published/data/" + name);
    REQUIRE_MESSAGE(file.is_open(), name);
    std::vector<DataRow> rows;
    for (std::string line; std::getline(file, line);) {
        if (line.empty() || line.front() == '#') continue;
        std::istringstream cells(line);
        DataRow row;
        for (std::string cell; std::getline(cells, cell, ',');) row.push_back(cell);
        rows.push_back(row);
    }
    REQUIRE(rows.size() > 1);
    rows.erase(rows.begin());
    return rows;
}

}  // namespace faywright::published
