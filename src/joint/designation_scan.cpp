// SPDX-License-Identifier: MIT
#include "joint/designation_scan.hpp"

#include "quantity/characters.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <utility>

namespace faywright::designation {

namespace {

constexpr std::array<std::pair<std::string_view, std::string_view>, 42> alike{{
    {"\u00d7", "x"},     {"\u2715", "x"},     {"\u2716", "x"},     {"\u2a2f", "x"},     {"\u0445", "x"},     {"\u0425", "x"},
    {"\u2010", "-"},     {"\u2011", "-"},     {"\u2012", "-"},     {"\u2013", "-"},     {"\u2014", "-"},     {"\u2212", "-"},
    {"\u2033", "\""},    {"\u201d", "\""},    {"\u201c", "\""},    {"\u201e", "\""},    {"\u02ba", "\""},    {"\u2032", "'"},
    {"\u2019", "'"},     {"\u00bd", " 1/2 "}, {"\u00bc", " 1/4 "}, {"\u00be", " 3/4 "}, {"\u215b", " 1/8 "}, {"\u215c", " 3/8 "},
    {"\u215d", " 5/8 "}, {"\u215e", " 7/8 "}, {"\u00f8", " "},     {"\u00d8", " "},     {"\u2300", " "},     {"\u00e4", "ae"},
    {"\u00f6", "oe"},    {"\u00fc", "ue"},    {"\u00c4", "ae"},    {"\u00d6", "oe"},    {"\u00dc", "ue"},    {"\u00df", "ss"},
    {"\u0332", "_"},     {"\u041c", "m"},     {"\u043c", "m"},     {"\u2217", "*"},     {"\u00b7", " "},     {"\u2022", " "},
}};

bool is_gap(char c) { return c == ' ' || c == '-' || c == '.' || c == '_'; }

}  // namespace

EvenText::EvenText(std::string_view text) : text_(text) {
    for (std::size_t at = 0; at < text.size();) {
        const auto n = sequence_length(text, at);
        const auto sign = text.substr(at, std::max<std::size_t>(n, 1));
        const auto same = std::find_if(alike.begin(), alike.end(), [&](const auto& pair) { return pair.first == sign; });
        std::string_view out = sign;
        char small = ' ';
        if (n == 0)
            out = "\x80";  // no character: a word that nobody knows
        else if (unfit(text, at, n) != nullptr || is_blank(sign))
            out = std::string_view(&small, 1);
        else if (same != alike.end())
            out = same->second;
        else if (n == 1 && sign[0] >= 'A' && sign[0] <= 'Z') {
            small = static_cast<char>(sign[0] - 'A' + 'a');
            out = std::string_view(&small, 1);
        }
        even_ += out;
        from_.insert(from_.end(), out.size(), at);
        at += sign.size();
    }
    from_.push_back(text.size());
}

std::string EvenText::written(std::size_t from, std::size_t to) const {
    to = std::min(to, even_.size());
    while (from < to && even_[from] == ' ') ++from;
    while (to > from && even_[to - 1] == ' ') --to;
    // Part of a character that was spelled out: all of it.
    while (to < even_.size() && from_[to] == from_[from]) ++to;
    return shown(text_.substr(from_[from], from_[to] - from_[from]));
}

bool EvenText::goes_on(std::size_t at) const {
    const char c = (*this)[at];
    return digit(at) || (c >= 'a' && c <= 'z') || static_cast<unsigned char>(c) >= 0x80;
}

std::size_t EvenText::after_spaces(std::size_t at) const {
    while ((*this)[at] == ' ') ++at;
    return at;
}

std::size_t EvenText::words(std::size_t at, std::string_view words, bool open) const {
    for (const char c : words)
        if (c == ' ')
            while (is_gap((*this)[at])) ++at;
        else if ((*this)[at++] != c)
            return 0;
    return open || !goes_on(at) ? at : 0;
}

std::size_t EvenText::by(std::size_t at) const {
    const auto start = after_spaces(at);
    if ((*this)[start] == 'x' || (*this)[start] == '*') return after_spaces(start + 1);
    const auto end = words(start, "by");
    return end == 0 ? 0 : after_spaces(end);
}

std::optional<Measure> EvenText::decimal(std::size_t at) const {
    if (at >= even_.size()) return std::nullopt;
    Measure out;
    const auto digits = [&] {
        const auto start = at;
        while (digit(at)) ++at;
        out.digits.append(even_, start, at - start);
        return at > start;
    };
    const auto point = [&](std::size_t where) { return ((*this)[where] == '.' || (*this)[where] == ',') && digit(where + 1); };
    const bool led = digits();
    if (led ? point(at) : (*this)[at] == '.' && digit(at + 1)) {
        const auto behind = at;
        const auto whole = out.digits;
        out.digits += led ? "." : "0.";
        ++at;
        digits();
        if (point(at)) {
            // "140,8.8" is 140 and 8.8; "10.11.26" is no number.
            if ((*this)[behind] != ',' || (*this)[at] != '.') return std::nullopt;
            out.digits = whole;
            at = behind;
        }
    } else if (!led)
        return std::nullopt;
    if (out.digits.size() > 9) return std::nullopt;
    std::from_chars(out.digits.data(), out.digits.data() + out.digits.size(), out.value);
    out.end = at;
    return out;
}

std::optional<Measure> EvenText::whole(std::size_t at) const {
    auto out = decimal(at);
    if (out && !std::all_of(out->digits.begin(), out->digits.end(), [](char c) { return c >= '0' && c <= '9'; })) return std::nullopt;
    return out;
}

std::optional<Measure> EvenText::proper_fraction(std::size_t at) const {
    const auto top = whole(at);
    if (!top || (*this)[top->end] != '/') return std::nullopt;
    const auto bottom = whole(top->end + 1);
    constexpr std::array<double, 6> parts{2, 4, 8, 16, 32, 64};
    if (!bottom || std::find(parts.begin(), parts.end(), bottom->value) == parts.end() || top->value <= 0 || top->value >= bottom->value)
        return std::nullopt;
    return Measure{top->value / bottom->value, top->digits + "/" + bottom->digits, Measure::Unit::none, true, bottom->end};
}

void EvenText::read_unit(Measure& measure, bool inches) const {
    const auto at = after_spaces(measure.end);
    const auto unit = [&](std::size_t end, Measure::Unit what) {
        if (end == 0) return false;
        measure.end = end;
        measure.unit = what;
        return true;
    };
    if (unit(words(at, "mm"), Measure::Unit::millimetre) || unit(words(at, "cm"), Measure::Unit::centimetre) ||
        unit(words(at, "inches"), Measure::Unit::inch) || unit(words(at, "inch"), Measure::Unit::inch))
        return;
    if (at == measure.end || inches) unit(words(at, "in"), Measure::Unit::inch);
    if (measure.unit != Measure::Unit::none) return;
    if ((*this)[at] == '"')
        unit(at + 1, Measure::Unit::inch);
    else if ((*this)[at] == '\'' && (*this)[at + 1] == '\'')
        unit(at + 2, Measure::Unit::inch);
}

std::optional<Measure> EvenText::measure(std::size_t at, bool inches) const {
    auto out = proper_fraction(at);
    if (!out) {
        out = decimal(at);
        if (!out) return std::nullopt;
        if (whole(at) && out->value < 25 && ((*this)[out->end] == '-' || (*this)[out->end] == ' '))
            if (const auto rest = proper_fraction(after_spaces(out->end + 1)))
                out = Measure{out->value + rest->value, out->digits + "-" + rest->digits, Measure::Unit::none, true, rest->end};
    }
    read_unit(*out, inches);
    return out;
}

}  // namespace faywright::designation
