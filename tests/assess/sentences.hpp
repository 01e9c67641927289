// SPDX-License-Identifier: MIT
#pragma once

#include <string>

/// What the tests of sheets ask of a sentence.
namespace joint_tests {

inline bool says(const std::string& text, const std::string& words) { return text.find(words) != std::string::npos; }

/// What is wrong with a sentence of a sheet, or nothing.
inline std::string untidy(const std::string& text) {
    if (text.empty()) return "nothing said";
    if (says(text, "  ") || says(text, " .") || says(text, "..") || says(text, " ,") || text.front() == ' ') return "spaces: " + text;
    return text.back() == '.' ? "" : "does not end: " + text;
}

}  // namespace joint_tests
