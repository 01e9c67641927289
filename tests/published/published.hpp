// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"

#include <doctest/doctest.h>

#include <cmath>
#include <cstdlib>
#include <fstream>
#include <string>
#include <string_view>

/// Checks against the outside world. A case is named after its document and page, holds inputs and answers
/// as printed, and takes its tolerance from the digits printed: nobody types one.
namespace faywright::published {

/// An answer as printed. The tolerance is half a unit of the last printed place.
struct Printed {
    std::string_view digits;

    [[nodiscard]] double value() const { return std::strtod(std::string(digits).c_str(), nullptr); }

    [[nodiscard]] double tolerance() const {
        const auto exponent_at = digits.find_first_of("eE");
        const auto mantissa = digits.substr(0, exponent_at);
        const auto point = mantissa.find('.');
        const auto decimals = point == std::string_view::npos ? 0 : static_cast<int>(mantissa.size() - point - 1);
        const auto exponent = exponent_at == std::string_view::npos ? 0 : std::atoi(std::string(digits.substr(exponent_at + 1)).c_str());
        return 0.5 * std::pow(10.0, exponent - decimals) * (1.0 + 1e-9);
    }
};

/// Compares one printed answer with ours. With FAYWRIGHT_PUBLISHED_LOG set, also appends the comparison to
/// that file: the verification dossier is made from it.
inline void check(const Source& source, std::string_view what, double ours, Printed theirs, std::string_view unit) {
    CAPTURE(source.document);
    CAPTURE(source.place);
    CAPTURE(what);
    CAPTURE(theirs.digits);
    CAPTURE(ours);
    const bool agrees = std::abs(ours - theirs.value()) <= theirs.tolerance();
    if (const char* path = std::getenv("FAYWRIGHT_PUBLISHED_LOG"); path != nullptr) {
        std::ofstream log(path, std::ios::app);
        log.precision(6);
        log << source.document << '\t' << source.edition << '\t' << source.place << '\t' << word(source.basis) << '\t' << what << '\t'
            << theirs.digits << '\t' << ours << '\t' << unit << '\t' << (agrees ? "agrees" : "differs") << '\n';
    }
    CHECK(agrees);
}

}  // namespace faywright::published
