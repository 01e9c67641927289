// SPDX-License-Identifier: MIT
#include "report/typography.hpp"

#include <array>
#include <utility>

namespace faywright {

namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool is_of_unit(char c) { return is_letter(c) || is_digit(c) || c == '*' || c == '/'; }

constexpr std::array<std::pair<std::string_view, std::string_view>, 7> words{
    {{"um", "µm"}, {"uA", "µA"}, {"degC", "°C"}, {"deg", "°"}, {"ohm", "Ω"}, {"kohm", "kΩ"}, {"Mohm", "MΩ"}}};

/// A unit made of words joined by "*" and "/", each with or without a power.
std::string unit_of(std::string_view unit) {
    std::string out;
    for (std::size_t at = 0; at < unit.size();) {
        auto end = at;
        while (end < unit.size() && is_letter(unit[end])) ++end;
        if (end == at) {
            const char c = unit[at++];
            const bool power = at >= 2 && is_letter(unit[at - 2]);
            if (c == '*')
                out += "·";
            else if (power && c == '2')
                out += "²";
            else if (power && c == '3')
                out += "³";
            else if (power && c == '4')
                out += "⁴";
            else
                out += c;
            continue;
        }
        const auto word = unit.substr(at, end - at);
        auto told = word;
        for (const auto& [plain, better] : words)
            if (plain == word) told = better;
        out += told;
        at = end;
    }
    return out;
}

}  // namespace

std::string typographic(std::string_view text) {
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        const bool begins = at >= 2 && text[at - 1] == ' ' && is_digit(text[at - 2]) && is_letter(text[at]);
        if (!begins) {
            out += text[at++];
            continue;
        }
        auto end = at;
        while (end < text.size() && is_of_unit(text[end])) ++end;
        out += unit_of(text.substr(at, end - at));
        at = end;
    }
    return out;
}

}  // namespace faywright
