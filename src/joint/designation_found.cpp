// SPDX-License-Identifier: MIT
#include "joint/designation_found.hpp"

#include <algorithm>

namespace faywright::designation {

namespace {
constexpr std::size_t most_questions = 30;
}

std::vector<Said> distinct(const std::vector<Said>& list) {
    std::vector<Said> out;
    for (const auto& said : list)
        if (std::none_of(out.begin(), out.end(), [&](const Said& other) { return other.value == said.value; })) out.push_back(said);
    return out;
}

bool is_stainless(std::string_view bolt_class) { return bolt_class.starts_with('A') && bolt_class.find('-') != std::string_view::npos; }

OfferedPart part_of(std::string_view name) {
    for (const auto& [part, text] : Words<OfferedPart>::all)
        if (text == name) return part;
    return OfferedPart::bolt;
}

void Found::ask(std::string question, bool contradiction) {
    if (out.asked.size() < most_questions &&
        std::none_of(out.asked.begin(), out.asked.end(), [&](const auto& each) { return each.text == question; }))
        out.asked.push_back({topic, std::move(question), contradiction});
}

void Found::ask_which(std::string_view of_what, const std::vector<Said>& list) {
    std::vector<std::string> tokens;
    for (const auto& said : list) tokens.push_back(fmt::format("\"{}\"", said.token));
    ask(fmt::format("several are named, {}: which {} is offered?", fmt::join(tokens, " and "), of_what), true);
}

void Found::unknown(std::string token, std::string nearest) {
    if (out.unknown.size() < most_questions) out.unknown.push_back({std::move(token), std::move(nearest)});
}

void Found::add_part(const std::string& token, OfferedPart part) { parts.push_back({token, std::string(word_of(part))}); }

bool Found::says_part(OfferedPart part) const {
    return std::any_of(parts.begin(), parts.end(), [&](const Said& said) { return said.value == word_of(part); });
}

const Row<BoltClass>* Found::class_row(std::string_view name) const {
    for (const auto& row : tables.of<BoltClass>().rows)
        if (row.bolt_class == name) return &row;
    return nullptr;
}

bool Found::is_nut_class(std::string_view name) const {
    const auto& rows = tables.of<Nut>().rows;
    return std::any_of(rows.begin(), rows.end(), [&](const auto& row) { return row.nut_class == name; });
}

std::vector<std::string> Found::class_names() const {
    std::vector<std::string> names;
    for (const auto& row : tables.of<BoltClass>().rows)
        if (names.empty() || names.back() != row.bolt_class) names.push_back(row.bolt_class);
    return names;
}

std::vector<std::string> Found::stainless_classes(std::string_view begin, std::string_view end) const {
    auto names = class_names();
    std::erase_if(names, [&](const std::string& name) { return !is_stainless(name) || !name.starts_with(begin) || !name.ends_with(end); });
    return names;
}

}  // namespace faywright::designation
