// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <string_view>

/// Text from a joint file is data: here it is made safe for the language it is written into.
namespace faywright {

/// For HTML, SVG and XML, between tags and within quoted attributes. What may not be shown becomes a question mark.
[[nodiscard]] std::string markup_text(std::string_view text);

/// For a string of a DXF of release 12: one line of ASCII; what is beyond it as \U+XXXX, and a space where the text holds a code of its
/// own.
[[nodiscard]] std::string dxf_text(std::string_view text);

}  // namespace faywright
