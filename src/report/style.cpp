// SPDX-License-Identifier: MIT
#include "report/style.hpp"

#include <cstddef>

extern "C" {
extern const char faywright_style;
extern const char faywright_style_end;
}

namespace faywright {

std::string_view style_sheet() { return {&faywright_style, static_cast<std::size_t>(&faywright_style_end - &faywright_style)}; }

}  // namespace faywright
