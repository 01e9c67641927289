// SPDX-License-Identifier: MIT
#pragma once

#include <array>
#include <string_view>

namespace faywright {

/// What stands behind a value or a formula.
enum class Basis {
    published,  ///< looked up in the named document, edition and place (possibly a reprint)
    memory,     ///< recalled from the named document, not looked up
    practice,   ///< common practice of the trade, our derivation or judgement: no published source
};

[[nodiscard]] constexpr std::string_view word(Basis basis) {
    switch (basis) {
        case Basis::published: return "published";
        case Basis::memory: return "memory";
        case Basis::practice: return "practice";
    }
    return "practice";
}

/// Where a formula comes from: document, edition, clause or table.
struct Source {
    std::string_view document;
    std::string_view edition;
    std::string_view place;
    Basis basis = Basis::practice;
};

/// What a calculator is: its command-line name, one-line title, range of validity and source.
/// The equations themselves are the code of its `compute`, recorded step by step.
struct Formula {
    std::string_view name;
    std::string_view title;
    std::string_view range;
    Source source;
};

}  // namespace faywright
