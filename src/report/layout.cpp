// SPDX-License-Identifier: MIT
#include "report/layout.hpp"

namespace faywright {

namespace {

bool continues_character(char c) { return (static_cast<unsigned char>(c) & 0xc0U) == 0x80U; }

/// Bytes of the first `width` characters.
std::size_t bytes_of(std::string_view text, std::size_t width) {
    std::size_t at = 0;
    while (at < text.size() && width > 0) {
        ++at;
        while (at < text.size() && continues_character(text[at])) ++at;
        --width;
    }
    return at;
}

}  // namespace

std::size_t display_width(std::string_view text) {
    std::size_t width = 0;
    for (const char c : text)
        if (!continues_character(c)) ++width;
    return width;
}

std::string fitted(std::string_view text, std::size_t width) {
    const auto shown = display_width(text);
    if (shown > width) return std::string(text.substr(0, bytes_of(text, width - 2))) + "..";
    return std::string(text) + std::string(width - shown, ' ');
}

std::string fitted_right(std::string_view text, std::size_t width) {
    const auto shown = display_width(text);
    if (shown > width) return fitted(text, width);
    return std::string(width - shown, ' ') + std::string(text);
}

std::string wrapped(std::string_view text, std::string_view first, std::string_view rest) {
    std::string out(first);
    std::size_t used = display_width(first);
    bool fresh = true;
    while (!text.empty()) {
        const auto space = text.find(' ');
        auto word = text.substr(0, space);
        text = space == std::string_view::npos ? std::string_view{} : text.substr(space + 1);
        if (word.empty()) continue;
        if (!fresh && used + 1 + display_width(word) > page_width) {
            out += '\n';
            out += rest;
            used = display_width(rest);
            fresh = true;
        }
        while (used + (fresh ? 0 : 1) + display_width(word) > page_width) {
            const auto room = page_width - used;
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

}  // namespace faywright
