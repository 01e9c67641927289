// SPDX-License-Identifier: MIT
#pragma once

#include "joint/resolve.hpp"

#include <optional>
#include <string>
#include <vector>

namespace faywright {

/// A value of a joint file, and where it was written.
struct WrittenField {
    std::string path;     ///< "part[2].tube.material"
    std::string meaning;  ///< in the words of the file's description
    std::string value;
    TextPosition at;
};

/// Every value that the file itself gives, in the order of its description: neither defaults nor what other files give.
[[nodiscard]] std::vector<WrittenField> fields_of(const WrittenJoint& written, const Node& root);

}  // namespace faywright
