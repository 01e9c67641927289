// SPDX-License-Identifier: MIT
#include "report/layout.hpp"

namespace faywright {

std::string fitted(std::string_view text, std::size_t width) {
    const auto used = display_width(text);
    if (used > width) return std::string(text.substr(0, bytes_of(text, width - 2))) + "..";
    return std::string(text) + std::string(width - used, ' ');
}

std::string fitted_right(std::string_view text, std::size_t width) {
    const auto used = display_width(text);
    if (used > width) return fitted(text, width);
    return std::string(width - used, ' ') + std::string(text);
}

std::string wrapped(std::string_view text, std::string_view first, std::string_view rest, std::size_t width) {
    std::string out(first);
    std::size_t used = display_width(first);
    bool fresh = true;
    while (!text.empty()) {
        const auto space = text.find(' ');
        auto word = text.substr(0, space);
        text = space == std::string_view::npos ? std::string_view{} : text.substr(space + 1);
        if (word.empty()) continue;
        if (!fresh && used + 1 + display_width(word) > width) {
            out += '\n';
            out += rest;
            used = display_width(rest);
            fresh = true;
        }
        while (used + (fresh ? 0 : 1) + display_width(word) > width) {
            const auto room = width - used;
            auto cut = word.substr(0, bytes_of(word, room)).find_last_of("/,)+=");
            auto bytes = cut == std::string_view::npos || cut == 0 ? bytes_of(word, room) : cut + 1;
            out += word.substr(0, bytes);
            word = word.substr(bytes);
            out += '\n';
            out += rest;
            used = display_width(rest);
        }
        if (!fresh) {
            out += ' ';
            ++used;
        }
        out += word;
        used += display_width(word);
        fresh = false;
    }
    out += '\n';
    return out;
}

std::string labelled(std::string_view label, std::string_view value) {
    return wrapped(value, "  " + fitted(label, 42), std::string(44, ' '));
}

std::string csv_cell(std::string text) {
    if (!text.empty() && std::string_view("=+-@\t\r").find(text.front()) != std::string_view::npos) text.insert(text.begin(), '\'');
    std::string out = "\"";
    for (const char c : text) out += c == '"' ? std::string("\"\"") : std::string(1, c);
    return out + '"';
}

std::string markdown_text(std::string_view text) {
    std::string out;
    for (const char c : text) {
        if (std::string_view("\\`*_{}[]<>#|~&").find(c) != std::string_view::npos) out += '\\';
        out += c;
    }
    return out;
}

}  // namespace faywright
