// SPDX-License-Identifier: MIT
#pragma once

#include <memory>
#include <string>

namespace faywright {

/// A stretch of one line of a file a person wrote. Lines and columns count from 1, columns in characters.
struct TextPosition {
    std::shared_ptr<const std::string> file;
    int line = 1;
    int column = 1;
    int width = 1;  ///< characters underlined
};

}  // namespace faywright
