// SPDX-License-Identifier: MIT
#pragma once

#include "input/text_position.hpp"

#include <map>
#include <string>
#include <vector>

namespace faywright {

/// One mistake of the person who wrote the input: found, wanted, and where.
struct Diagnostic {
    std::string code;     ///< stable short word, e.g. "unit.dimension"
    std::string message;  ///< lower case, no full stop; names field, found and wanted
    TextPosition at;
    std::string label;                                         ///< under the caret
    std::vector<std::pair<TextPosition, std::string>> others;  ///< other places that matter, with their labels
    std::string help;
};

/// Collects every mistake of one run, and the texts of the files for the excerpts.
class Diagnostics {
public:
    void keep_text(const std::string& file, std::string text) { texts_[file] = std::move(text); }
    void error(Diagnostic diagnostic) { errors_.push_back(std::move(diagnostic)); }
    [[nodiscard]] bool any() const { return !errors_.empty(); }
    [[nodiscard]] std::size_t count() const { return errors_.size(); }

    /// Sorted by place.
    [[nodiscard]] std::vector<Diagnostic> sorted() const;

    /// `file:line:column: error: message`, the line, a caret; at most twenty, then the count of the rest.
    [[nodiscard]] std::string text() const;

private:
    std::map<std::string, std::string> texts_;
    std::vector<Diagnostic> errors_;
};

}  // namespace faywright
