// SPDX-License-Identifier: MIT
#pragma once

#include "assess/assembly.hpp"
#include "report/page.hpp"
#include "report/steps_text.hpp"
#include "report/typography.hpp"

#include <fmt/format.h>

#include <string>
#include <vector>

namespace faywright {

/// A sentence of a sheet with where it comes from, a document by its number alone; practice of the trade is said once for the whole sheet.
[[nodiscard]] inline std::string sheet_text(const Statement& statement) {
    auto words = typographic(statement.words);
    if (statement.source.document.empty()) return words;
    auto source = statement.source;
    source.document = source.document.substr(0, source.document.find(','));
    return fmt::format("{} [{}]", words, source_text(source.view()));
}

/// Occasions that are dealt with alike in one sentence.
[[nodiscard]] inline std::vector<Statement> retightening_told(const std::vector<Retightening>& list) {
    std::vector<Statement> out;
    std::string occasions;
    for (std::size_t i = 0; i < list.size(); ++i) {
        occasions += (occasions.empty() ? "" : "; ") + list[i].when;
        const bool goes_on =
            i + 1 < list.size() && list[i + 1].how == list[i].how && list[i + 1].source.document == list[i].source.document;
        if (goes_on) continue;
        out.push_back({fmt::format("{}: {}", occasions, list[i].how), list[i].source});
        occasions.clear();
    }
    return out;
}

/// Characters of a page, to judge whether it has room for them.
[[nodiscard]] inline std::size_t characters_of(const Page& page) {
    struct Count {
        std::size_t operator()(const Heading& h) const { return h.words.size(); }
        std::size_t operator()(const Paragraph& p) const { return p.words.size(); }
        std::size_t operator()(const Banner& b) const { return 2 * b.words.size(); }
        std::size_t operator()(const Listing& l) const {
            std::size_t n = 0;
            for (const auto& item : l.items) n += item.size();
            return n;
        }
        std::size_t operator()(const Grid& g) const {
            std::size_t n = 0;
            for (const auto& row : g.rows)
                for (const auto& cell : row) n += cell.words.size();
            return n;
        }
        std::size_t operator()(const StepTable&) const { return 0; }
        std::size_t operator()(const Picture&) const { return 0; }
        std::size_t operator()(const Blanks&) const { return 0; }
    };
    std::size_t sum = 0;
    for (const auto& chapter : page.chapters)
        for (const auto& block : chapter.blocks) sum += std::visit(Count{}, block);
    return sum;
}

/// Across the top of a sheet whose joint does not pass.
[[nodiscard]] inline Chapter stop_chapter(const std::string& why) { return {"stop", "", {Banner{"NOT TO BE BUILT", why, Tone::fail}}}; }

inline constexpr const char* sheet_caution =
    "A failed towing joint can kill. Local rules and a licensed engineer decide. What names no source in brackets is practice of the "
    "trade.";

}  // namespace faywright
