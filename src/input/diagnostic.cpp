// SPDX-License-Identifier: MIT
#include "input/diagnostic.hpp"

#include "quantity/characters.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

namespace faywright {

namespace {

constexpr std::size_t most_shown = 20;
constexpr std::size_t widest_line = 100;

std::string file_of(const TextPosition& at) { return at.file ? *at.file : std::string("input"); }

/// All of it, less what a terminal would obey.
std::string fit(const std::string& text) { return shown(text, text.size()); }

std::string line_of(const std::string& text, int number) {
    std::size_t from = 0;
    for (int line = 1; line < number; ++line) {
        from = text.find('\n', from);
        if (from == std::string::npos) return {};
        ++from;
    }
    auto line = text.substr(from, text.find('\n', from) - from);
    if (!line.empty() && line.back() == '\r') line.pop_back();
    std::replace(line.begin(), line.end(), '\t', ' ');
    return fit(line);
}

}  // namespace

std::vector<Diagnostic> Diagnostics::sorted() const {
    auto result = errors_;
    std::stable_sort(result.begin(), result.end(), [](const Diagnostic& a, const Diagnostic& b) {
        return std::tuple(file_of(a.at), a.at.line, a.at.column) < std::tuple(file_of(b.at), b.at.line, b.at.column);
    });
    return result;
}

std::string Diagnostics::text() const {
    std::string out;
    const auto excerpt = [&](const TextPosition& at, const std::string& label, char mark) {
        const auto found = texts_.find(file_of(at));
        if (found == texts_.end()) {
            if (!label.empty()) out += fmt::format("  = {}\n", fit(label));
            return;
        }
        auto line = line_of(found->second, at.line);
        const auto before = bytes_of(line, static_cast<std::size_t>(std::max(0, at.column - 1)));
        std::size_t shift = 0;
        if (line.size() > widest_line) {
            shift = before > widest_line / 2 ? before - widest_line / 2 : 0;
            while (shift > 0 && shift < line.size() && continues_character(line[shift])) --shift;
            auto end = std::min(line.size(), shift + widest_line);
            while (end < line.size() && continues_character(line[end])) ++end;
            line = line.substr(shift, end - shift);
        }
        std::size_t column = 0;
        for (std::size_t i = 0; i < std::min(before - std::min(before, shift), line.size()); ++i)
            if (!continues_character(line[i])) ++column;
        const auto room = line.size() > column ? line.size() - column : 1;
        const auto width = std::clamp<std::size_t>(static_cast<std::size_t>(std::max(1, at.width)), 1, std::max<std::size_t>(1, room));
        out += fmt::format("{:5} | {}\n      | {}{} {}", at.line, line, std::string(column, ' '), std::string(width, mark), fit(label));
        while (out.back() == ' ') out.pop_back();
        out += '\n';
    };
    const auto all = sorted();
    for (std::size_t i = 0; i < std::min(all.size(), most_shown); ++i) {
        const auto& d = all[i];
        // What has no text to point into, as the command line, is told without line and column.
        out += texts_.contains(file_of(d.at))
                   ? fmt::format("{}:{}:{}: error: {}\n", fit(file_of(d.at)), d.at.line, d.at.column, fit(d.message))
                   : fmt::format("{}: error: {}\n", fit(file_of(d.at)), fit(d.message));
        excerpt(d.at, d.label, '^');
        for (const auto& [place, label] : d.others) {
            if (file_of(place) != file_of(d.at)) out += fmt::format("  in {}:{}:{}\n", fit(file_of(place)), place.line, place.column);
            excerpt(place, label, '-');
        }
        if (!d.help.empty()) out += fmt::format("      = help: {}\n", fit(d.help));
    }
    if (all.size() > most_shown) out += fmt::format("and {} more\n", all.size() - most_shown);
    out += fmt::format("{} error{}; nothing was written\n", all.size(), all.size() == 1 ? "" : "s");
    return out;
}

}  // namespace faywright
