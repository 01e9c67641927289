// SPDX-License-Identifier: MIT
#include "quantity/nearest.hpp"

#include <algorithm>
#include <cctype>
#include <numeric>
#include <vector>

namespace faywright {

namespace {

char folded(char c) { return c == '_' || c == ' ' ? '-' : static_cast<char>(std::tolower(static_cast<unsigned char>(c))); }

/// Edits (insert, delete, replace, swap of neighbours) that turn one word into the other; case, space, dash
/// and underscore count as equal.
std::size_t edits(std::string_view a, std::string_view b) {
    std::vector<std::size_t> before(b.size() + 1), last(b.size() + 1), row(b.size() + 1);
    std::iota(last.begin(), last.end(), std::size_t{0});
    for (std::size_t i = 1; i <= a.size(); ++i) {
        row[0] = i;
        for (std::size_t j = 1; j <= b.size(); ++j) {
            const bool same = folded(a[i - 1]) == folded(b[j - 1]);
            row[j] = std::min({last[j] + 1, row[j - 1] + 1, last[j - 1] + (same ? 0U : 1U)});
            if (i > 1 && j > 1 && folded(a[i - 1]) == folded(b[j - 2]) && folded(a[i - 2]) == folded(b[j - 1]))
                row[j] = std::min(row[j], before[j - 2] + 1);
        }
        before = last;
        last = row;
    }
    return last[b.size()];
}

}  // namespace

std::string nearest(std::string_view word, std::span<const std::string> candidates) {
    // A very long word is no slip of the fingers, and comparing it would only cost time.
    if (word.empty() || word.size() > 100) return {};
    std::string best;
    std::size_t least = std::max<std::size_t>(2, word.size() / 3) + 1;
    for (const auto& candidate : candidates) {
        const auto distance = edits(word, candidate);
        if (distance < least) {
            least = distance;
            best = candidate;
        }
    }
    return best;
}

}  // namespace faywright
