// SPDX-License-Identifier: MIT
#include "report/typography.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <utility>

namespace faywright {

namespace {

bool is_digit(char c) { return c >= '0' && c <= '9'; }
bool is_letter(char c) { return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z'); }
bool is_of_unit(char c) { return is_letter(c) || is_digit(c) || c == '*' || c == '/'; }

/// What is written otherwise, and what is as it is. Only lengths and times have powers.
constexpr std::array<std::pair<std::string_view, std::string_view>, 7> words{
    {{"um", "µm"}, {"uA", "µA"}, {"degC", "°C"}, {"deg", "°"}, {"ohm", "Ω"}, {"kohm", "kΩ"}, {"Mohm", "MΩ"}}};
constexpr std::array<std::string_view, 5> with_powers{"mm", "m", "cm", "s", "um"};
constexpr std::array<std::string_view, 14> others{"N", "kN", "kg", "g", "mg", "MPa", "GPa", "K", "a", "d", "L", "mol", "S", "C"};

template <class List>
bool has(const List& list, std::string_view word) {
    return std::find(list.begin(), list.end(), word) != list.end();
}

/// A unit made of words joined by "*" and "/", each with or without a power; nothing where it is none.
std::optional<std::string> unit_of(std::string_view unit) {
    std::string out;
    while (true) {
        std::size_t end = 0;
        while (end < unit.size() && is_letter(unit[end])) ++end;
        const auto word = unit.substr(0, end);
        auto told = word;
        for (const auto& [plain, better] : words)
            if (plain == word) told = better;
        if (told == word && !has(with_powers, word) && !has(others, word)) return std::nullopt;
        out += told;
        unit.remove_prefix(end);
        if (!unit.empty() && is_digit(unit.front())) {
            if (!has(with_powers, word)) return std::nullopt;
            constexpr std::array<std::string_view, 3> powers{"²", "³", "⁴"};
            if (unit.front() < '2' || unit.front() > '4') return std::nullopt;
            out += powers.at(static_cast<std::size_t>(unit.front() - '2'));
            unit.remove_prefix(1);
        }
        if (unit.empty()) return out;
        if (unit.front() != '*' && unit.front() != '/') return std::nullopt;
        out += unit.front() == '*' ? "·" : "/";
        unit.remove_prefix(1);
    }
}

}  // namespace

std::string typographic(std::string_view text) {
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        if (text.substr(at).starts_with("+- ")) {
            out += "±";
            at += 2;
            continue;
        }
        const bool begins = at >= 2 && text[at - 1] == ' ' && is_digit(text[at - 2]) && is_letter(text[at]);
        if (!begins) {
            out += text[at++];
            continue;
        }
        auto end = at;
        while (end < text.size() && is_of_unit(text[end])) ++end;
        const auto found = text.substr(at, end - at);
        // The sign of a degree stands at its number.
        if (found == "deg") out.pop_back();
        out += unit_of(found).value_or(std::string(found));
        at = end;
    }
    return out;
}

}  // namespace faywright
