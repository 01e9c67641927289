// SPDX-License-Identifier: MIT
#include "report/escape.hpp"

#include "quantity/characters.hpp"

#include <fmt/format.h>

namespace faywright {

std::string markup_text(std::string_view text) {
    std::string out;
    for (const char c : shown(text, text.size())) switch (c) {
            case '&': out += "&amp;"; break;
            case '<': out += "&lt;"; break;
            case '>': out += "&gt;"; break;
            case '"': out += "&quot;"; break;
            case '\'': out += "&#39;"; break;
            default: out += c;
        }
    return out;
}

std::string dxf_text(std::string_view text) {
    const auto fit = shown(text, text.size());
    std::string out;
    for (std::size_t at = 0; at < fit.size();) {
        const auto length = sequence_length(fit, at);
        if (length <= 1) {
            // "%%", "\\U+" and "^" begin codes there: a space parts what would be one.
            out += fit[at];
            const auto rest = std::string_view(fit).substr(at);
            if (rest.starts_with("%%") || rest.starts_with("\\U+") || rest.starts_with('^')) out += ' ';
            ++at;
            continue;
        }
        const auto code = static_cast<unsigned>(code_point(fit, at, length));
        out += code <= 0xffffU ? fmt::format("\\U+{:04X}", code) : std::string("?");
        at += length;
    }
    return out;
}

}  // namespace faywright
