// SPDX-License-Identifier: MIT
#include "quantity/nearest.hpp"

#include "quantity/characters.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <numeric>
#include <string>
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
    if (word.empty() || word.size() > 100 || candidates.size() > 1000) return {};
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

std::string nearest_label(std::string_view word, std::span<const std::string> candidates) {
    const auto close = nearest(word, candidates);
    return close.empty() ? std::string() : fmt::format("the nearest is \"{}\"", close);
}

std::string quoted_with_nearest(std::string_view word, std::span<const std::string> candidates) {
    const auto label = nearest_label(word, candidates);
    return fmt::format("\"{}\"{}{}", shown(word), label.empty() ? "" : "; ", label);
}

std::vector<std::string> containing(std::string_view text, std::span<const std::string> candidates) {
    if (text.size() > 100 || candidates.size() > 1000) return {};
    const auto squeezed = [](std::string_view word) {
        std::string out;
        for (const char c : word)
            if (std::isalnum(static_cast<unsigned char>(c)) != 0) out += folded(c);
        return out;
    };
    std::vector<std::string> words;
    for (std::size_t at = 0; at < text.size();) {
        const auto end = std::min(text.find_first_of(" ,/-", at), text.size());
        if (auto word = squeezed(text.substr(at, end - at)); word.size() > 1) words.push_back(std::move(word));
        at = end + 1;
    }
    std::vector<std::string> found;
    for (const auto& candidate : candidates) {
        const auto whole = squeezed(candidate);
        const bool all =
            std::all_of(words.begin(), words.end(), [&](const std::string& word) { return whole.find(word) != std::string::npos; });
        if (all && !words.empty() && found.size() < 8) found.push_back(candidate);
    }
    return found;
}

}  // namespace faywright
