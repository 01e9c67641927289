// SPDX-License-Identifier: MIT
#include "quantity/steps.hpp"

#include "quantity/text.hpp"

#include <fmt/format.h>

#include <array>
#include <cctype>
#include <optional>

namespace faywright {

namespace {

constexpr std::array<std::pair<std::string_view, std::string_view>, 20> greek{{
    {"alpha", "\u03b1"}, {"beta", "\u03b2"},  {"gamma", "\u03b3"},  {"delta", "\u03b4"}, {"epsilon", "\u03b5"},
    {"eta", "\u03b7"},   {"kappa", "\u03ba"}, {"lambda", "\u03bb"}, {"mu", "\u03bc"},    {"nu", "\u03bd"},
    {"pi", "\u03c0"},    {"rho", "\u03c1"},   {"sigma", "\u03c3"},  {"tau", "\u03c4"},   {"Phi", "\u03a6"},
    {"psi", "\u03c8"},   {"phi", "\u03c6"},   {"theta", "\u03b8"},  {"omega", "\u03c9"}, {"Delta", "\u0394"},
}};

std::string_view greek_letter(std::string_view word) {
    for (const auto& [name, letter] : greek)
        if (name == word) return letter;
    return word;
}

bool is_word(char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '_'; }

enum class Kind { identifier, number, symbol };

struct Token {
    Kind kind;
    std::string text;
};

/// The tokens of a C++ arithmetic expression; `std::` and the star that opens an optional are dropped.
std::vector<Token> tokens_of(std::string_view code) {
    std::vector<Token> result;
    for (std::size_t at = 0; at < code.size();) {
        const char c = code[at];
        if (std::isspace(static_cast<unsigned char>(c)) != 0) {
            ++at;
        } else if (std::isdigit(static_cast<unsigned char>(c)) != 0 ||
                   (c == '.' && at + 1 < code.size() && std::isdigit(static_cast<unsigned char>(code[at + 1])) != 0)) {
            auto end = at + 1;
            while (end < code.size() &&
                   (is_word(code[end]) || code[end] == '.' || ((code[end] == '-' || code[end] == '+') && code[end - 1] == 'e')))
                ++end;
            result.push_back({Kind::number, std::string(code.substr(at, end - at))});
            at = end;
        } else if (is_word(c)) {
            auto end = at;
            while (end < code.size() && is_word(code[end])) ++end;
            const auto word = code.substr(at, end - at);
            at = end;
            if (word == "std" && code.substr(at, 2) == "::") {
                at += 2;
                continue;
            }
            result.push_back({Kind::identifier, std::string(word)});
        } else {
            const bool operand_before = !result.empty() && (result.back().kind != Kind::symbol || result.back().text == ")");
            if (!(c == '*' && !operand_before)) result.push_back({Kind::symbol, std::string(1, c)});
            ++at;
        }
    }
    return result;
}

/// Index of the parenthesis that closes the one at `open`.
std::size_t closing(const std::vector<Token>& tokens, std::size_t open) {
    int depth = 0;
    for (auto i = open; i < tokens.size(); ++i) {
        if (tokens[i].text == "(") ++depth;
        if (tokens[i].text == ")" && --depth == 0) return i;
    }
    return tokens.size() - 1;
}

std::string plain_number(const std::string& literal) {
    const double number = std::strtod(literal.c_str(), nullptr);
    return print_number(number, 6);
}

/// The makers of quantities that formulas use, and the unit as printed.
constexpr std::array<std::pair<std::string_view, std::string_view>, 18> unit_words{{{"mm", "mm"},
                                                                                    {"um", "um"},
                                                                                    {"mm2", "mm2"},
                                                                                    {"mm3", "mm3"},
                                                                                    {"kN", "kN"},
                                                                                    {"newton", "N"},
                                                                                    {"MPa", "MPa"},
                                                                                    {"GPa", "GPa"},
                                                                                    {"Nm", "Nm"},
                                                                                    {"kelvin", "K"},
                                                                                    {"degC", "degC"},
                                                                                    {"metre", "m"},
                                                                                    {"um_per_a", "um/a"},
                                                                                    {"mg_per_m2_d", "mg/m2/d"},
                                                                                    {"years", "years"},
                                                                                    {"volt", "V"},
                                                                                    {"uA_per_cm2", "uA/cm2"},
                                                                                    {"C_per_mol", "C/mol"}}};

/// The unit of a maker of quantities; empty for any other word.
std::string_view unit_of(std::string_view word) {
    for (const auto& [maker, unit] : unit_words)
        if (maker == word) return unit;
    return {};
}

using Substitute = std::string (*)(const std::string& identifier, const std::vector<std::pair<std::string, Value>>& known);

/// Lays the tokens out as a person writes mathematics: squared(x) as x², log as ln, * as ·.
std::string laid_out(const std::vector<Token>& tokens, std::size_t from, std::size_t to,
                     const std::vector<std::pair<std::string, Value>>& known, Substitute substitute) {
    std::string out;
    for (auto i = from; i < to; ++i) {
        const auto& token = tokens[i];
        const bool call = token.kind == Kind::identifier && i + 1 < to && tokens[i + 1].text == "(";
        if (call) {
            const auto close = closing(tokens, i + 1);
            const auto inside = laid_out(tokens, i + 2, close, known, substitute);
            const bool simple = close == i + 3;
            if (token.text == "squared" || token.text == "cubed") {
                const auto* power = token.text == "squared" ? "\u00b2" : "\u00b3";
                const bool bare = simple && inside.find(' ') == std::string::npos;
                out += bare ? inside + power : fmt::format("({}){}", inside, power);
            } else if (const auto unit = unit_of(token.text); !unit.empty()) {
                // A stroke within the unit would read as one more division.
                const bool apart = i > from && tokens[i - 1].text == "/" && unit.find('/') != std::string_view::npos;
                const auto text = fmt::format("{} {}", inside, unit);
                out += apart ? '(' + text + ')' : text;
            } else if (token.text == "double") {
                out += simple ? inside : fmt::format("({})", inside);
            } else {
                out += fmt::format("{}({})", token.text == "log" ? "ln" : token.text, inside);
            }
            i = close;
        } else if (token.kind == Kind::identifier) {
            const auto text = substitute(token.text, known);
            // A stroke within a value's unit would read as one more division.
            const bool apart = i > from && tokens[i - 1].text == "/" && text.front() != '(' && text.find('/') != std::string::npos;
            out += apart ? fmt::format("({})", text) : text;
        } else if (token.kind == Kind::number) {
            out += plain_number(token.text);
        } else if (token.text == "*") {
            out += "\u00b7";
        } else if (token.text == "{" || token.text == "}") {
            continue;
        } else if (token.text == "+" || token.text == "-") {
            const bool binary = i > from && (tokens[i - 1].kind != Kind::symbol || tokens[i - 1].text == ")");
            out += binary ? fmt::format(" {} ", token.text) : token.text;
        } else if (token.text == ",") {
            out += ", ";
        } else {
            out += token.text;
        }
    }
    return out;
}

std::string as_symbol(const std::string& identifier, const std::vector<std::pair<std::string, Value>>&) {
    return display_symbol(identifier);
}

std::optional<Value> find(const std::string& identifier, const std::vector<std::pair<std::string, Value>>& known) {
    for (auto it = known.rbegin(); it != known.rend(); ++it)
        if (it->first == identifier) return it->second;
    return std::nullopt;
}

std::string as_value(const std::string& identifier, const std::vector<std::pair<std::string, Value>>& known) {
    const auto value = find(identifier, known);
    if (!value) return display_symbol(identifier);
    const auto text = print(*value, 5);
    return text.front() == '-' ? '(' + text + ')' : text;
}

/// The expression with SI magnitudes in place of symbols, for an independent evaluation; empty if a symbol is unknown.
std::string evident_of(const std::vector<Token>& tokens, const std::vector<std::pair<std::string, Value>>& known) {
    std::string out;
    for (std::size_t i = 0; i < tokens.size(); ++i) {
        const auto& token = tokens[i];
        const bool call = token.kind == Kind::identifier && i + 1 < tokens.size() && tokens[i + 1].text == "(";
        if (token.kind == Kind::identifier && !call && token.text != "pi") {
            const auto value = find(token.text, known);
            if (!value) return {};
            out += fmt::format("({:.17g})", value->si());
        } else {
            out += token.text;
        }
    }
    return out;
}

}  // namespace

std::string display_symbol(std::string_view identifier) {
    const auto cut = identifier.find('_');
    std::string out(greek_letter(identifier.substr(0, cut)));
    if (cut == std::string_view::npos) return out;
    out += '_';
    auto rest = identifier.substr(cut + 1);
    for (bool first = true; !rest.empty(); first = false) {
        const auto next = rest.find('_');
        if (!first) out += ',';
        out += greek_letter(rest.substr(0, next));
        rest = next == std::string_view::npos ? std::string_view{} : rest.substr(next + 1);
    }
    return out;
}

void Recorder::heading(std::string_view title, const Source& source) {
    Step step;
    step.kind = StepKind::heading;
    step.formula = title;
    step.source = source;
    steps_.push_back(std::move(step));
}

void Recorder::input(const Name& name, Value value) {
    Step step;
    step.kind = StepKind::input;
    step.symbol = *name.symbol != '\0' ? display_symbol(name.symbol) : std::string(name.key);
    step.formula = name.meaning;
    step.value = value;
    steps_.push_back(std::move(step));
    if (*name.symbol != '\0') symbols_.emplace_back(name.symbol, value);
}

void Recorder::input(const Name& name, std::string_view words) {
    Step step;
    step.kind = StepKind::input;
    step.symbol = name.key;
    step.formula = name.meaning;
    step.words = words;
    steps_.push_back(std::move(step));
}

void Recorder::add(const char* symbol, const char* code, Value value, bool is_expression) {
    Step step;
    step.symbol = display_symbol(symbol);
    step.formula = code;
    step.value = value;
    step.code = code;
    if (is_expression) {
        const auto tokens = tokens_of(code);
        step.formula = laid_out(tokens, 0, tokens.size(), symbols_, as_symbol);
        step.substituted = laid_out(tokens, 0, tokens.size(), symbols_, as_value);
        if (keeps_evident_) step.evident = evident_of(tokens, symbols_);
    }
    steps_.push_back(std::move(step));
    symbols_.emplace_back(symbol, value);
}

}  // namespace faywright
