// SPDX-License-Identifier: MIT
#include "quantity/characters.hpp"

#include <algorithm>
#include <array>

namespace faywright {

namespace {

unsigned byte_at(std::string_view text, std::size_t at) { return static_cast<unsigned char>(text[at]); }

struct CodeRange {
    char32_t first, last;
};

template <std::size_t count>
bool lies_in(const std::array<CodeRange, count>& ranges, char32_t code) {
    return std::any_of(ranges.begin(), ranges.end(), [code](const CodeRange& r) { return r.first <= code && code <= r.last; });
}

constexpr std::array controls{CodeRange{0, 0x1f}, CodeRange{0x7f, 0x9f}};
constexpr std::array unseen{CodeRange{0xad, 0xad},     CodeRange{0x61c, 0x61c},   CodeRange{0x180e, 0x180e},
                            CodeRange{0x200b, 0x200f}, CodeRange{0x2028, 0x202e}, CodeRange{0x2060, 0x206f},
                            CodeRange{0xfeff, 0xfeff}, CodeRange{0xfff9, 0xfffb}, CodeRange{0xe0000, 0xe0fff}};
constexpr std::array spaces{CodeRange{0x20, 0x20},     CodeRange{0xa0, 0xa0},     CodeRange{0x115f, 0x1160}, CodeRange{0x1680, 0x1680},
                            CodeRange{0x2000, 0x200a}, CodeRange{0x202f, 0x202f}, CodeRange{0x205f, 0x205f}, CodeRange{0x2800, 0x2800},
                            CodeRange{0x3000, 0x3000}, CodeRange{0x3164, 0x3164}, CodeRange{0xffa0, 0xffa0}};

}  // namespace

char32_t code_point(std::string_view text, std::size_t at, std::size_t length) {
    if (length == 1) return byte_at(text, at);
    char32_t code = byte_at(text, at) & (0x7fU >> length);
    for (std::size_t i = 1; i < length; ++i) code = (code << 6U) | (byte_at(text, at + i) & 0x3fU);
    return code;
}

std::string lowered(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(), [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
    return text;
}

std::string raised(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(), [](char c) { return c >= 'a' && c <= 'z' ? static_cast<char>(c - 32) : c; });
    return text;
}

std::size_t sequence_length(std::string_view text, std::size_t at) {
    const unsigned first = byte_at(text, at);
    const std::size_t n = first < 0x80                    ? 1
                          : first >= 0xc2 && first < 0xe0 ? 2
                          : first >= 0xe0 && first < 0xf0 ? 3
                          : first >= 0xf0 && first < 0xf5 ? 4
                                                          : 0;
    if (n == 0 || at + n > text.size()) return 0;
    for (std::size_t i = 1; i < n; ++i)
        if (!continues_character(text[at + i])) return 0;
    if (n == 3 && ((first == 0xe0 && byte_at(text, at + 1) < 0xa0) || (first == 0xed && byte_at(text, at + 1) >= 0xa0))) return 0;
    if (n == 4 && ((first == 0xf0 && byte_at(text, at + 1) < 0x90) || (first == 0xf4 && byte_at(text, at + 1) >= 0x90))) return 0;
    return n;
}

std::size_t bytes_of(std::string_view text, std::size_t characters) {
    std::size_t at = 0;
    while (at < text.size() && characters > 0) {
        ++at;
        while (at < text.size() && continues_character(text[at])) ++at;
        --characters;
    }
    return at;
}

std::size_t display_width(std::string_view text) {
    return static_cast<std::size_t>(std::count_if(text.begin(), text.end(), [](char c) { return !continues_character(c); }));
}

const char* unfit(std::string_view text, std::size_t at, std::size_t length) {
    const auto code = code_point(text, at, length);
    if (lies_in(controls, code)) return "a control character";
    if (lies_in(unseen, code)) return "an invisible character";
    // The last two of every plane, and a block of the first, are for programs' own use; XML takes none of them.
    if ((code & 0xfffeU) == 0xfffeU || (code >= 0xfdd0U && code <= 0xfdefU)) return "no character";
    return nullptr;
}

bool is_fit(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const auto n = sequence_length(text, at);
        if (n == 0 || unfit(text, at, n) != nullptr) return false;
        at += n;
    }
    return true;
}

bool is_blank(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const auto n = sequence_length(text, at);
        if (n == 0 || !lies_in(spaces, code_point(text, at, n))) return false;
        at += n;
    }
    return true;
}

std::string shown(std::string_view text, std::size_t most) {
    const auto is_plain = [](char c) { return c >= ' ' && c <= '~'; };
    // Most text is short and plain.
    if (text.size() <= most && std::all_of(text.begin(), text.end(), is_plain)) return std::string(text);
    std::string out;
    std::size_t count = 0;
    for (std::size_t at = 0; at < text.size(); ++count) {
        if (count == most) return out + "...";
        if (is_plain(text[at])) {
            out += text[at++];
            continue;
        }
        const auto n = sequence_length(text, at);
        if (n == 0 || unfit(text, at, n) != nullptr)
            out += '?';
        else
            out += text.substr(at, n);
        at += std::max<std::size_t>(n, 1);
    }
    return out;
}

}  // namespace faywright
