// SPDX-License-Identifier: MIT
#pragma once

#include <algorithm>
#include <cmath>
#include <cstdlib>
#include <map>
#include <numbers>
#include <optional>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace faywright {

/// A calculator of expressions that shares nothing with the program: what a certifier does by hand. Takes the code's own
/// spelling (`squared(x)`, `*`, `log`, `mm(40)`) and the printed one (`x²`, `·`, `ln`, `40 mm`). Everything is in SI base units.
class FormulaEvaluator {
public:
    explicit FormulaEvaluator(std::map<std::string, double> symbols = {}) : symbols_(std::move(symbols)) {}

    [[nodiscard]] double operator()(std::string_view text) {
        text_ = text;
        const double value = sum();
        if (!skip_blanks().empty()) fail("something is left over");
        return value;
    }

private:
    [[noreturn]] void fail(const std::string& why) const { throw std::runtime_error(why + " at \"" + std::string(text_) + '"'); }

    std::string_view skip_blanks() {
        while (!text_.empty() && text_.front() == ' ') text_.remove_prefix(1);
        return text_;
    }
    bool take(std::string_view word) {
        if (!skip_blanks().starts_with(word)) return false;
        text_.remove_prefix(word.size());
        return true;
    }
    void want(std::string_view word) {
        if (!take(word)) fail("\"" + std::string(word) + "\" is wanted");
    }

    double sum() {
        double value = product();
        for (;;) {
            if (take("+"))
                value += product();
            else if (take("-"))
                value -= product();
            else
                return value;
        }
    }
    double product() {
        double value = signed_power();
        for (;;) {
            if (take("*") || take("\u00b7"))
                value *= signed_power();
            else if (take("/"))
                value /= signed_power();
            else
                return value;
        }
    }
    double signed_power() {
        if (take("-")) return -signed_power();
        if (take("+")) return signed_power();
        double value = primary();
        for (;;) {
            if (take("\u00b2"))
                value = value * value;
            else if (take("\u00b3"))
                value = value * value * value;
            else
                return value;
        }
    }

    static bool is_digit(char c) { return c >= '0' && c <= '9'; }

    double primary() {
        skip_blanks();
        if (text_.empty()) fail("the expression ends early");
        if (take("(")) {
            const double value = sum();
            want(")");
            return value;
        }
        if (is_digit(text_.front()) || text_.front() == '.') return number();
        const auto name = identifier();
        if (name.empty()) fail("a value is wanted");
        if (take("(")) return call(name);
        if (const auto found = symbols_.find(name); found != symbols_.end()) return found->second;
        if (name == "pi" || name == "\u03c0") return std::numbers::pi;
        fail("unknown symbol " + name);
    }

    double number() {
        const std::string rest(text_);
        char* end = nullptr;
        const double value = std::strtod(rest.c_str(), &end);
        text_.remove_prefix(static_cast<std::size_t>(end - rest.c_str()));
        // A printed constant has its unit behind it.
        if (text_.starts_with(' ')) {
            if (const auto factor = unit_with_stroke()) return value * *factor;
            const auto before = text_;
            const auto unit = identifier();
            if (unit == "degC") return value + 273.15;
            if (const auto factor = unit_factor(unit)) return value * *factor;
            text_ = before;
        }
        return value;
    }

    /// Letters, digits, underscores, Greek; a comma belongs to a symbol when no blank follows it.
    std::string identifier() {
        skip_blanks();
        std::string name;
        while (!text_.empty()) {
            const char c = text_.front();
            const bool high = (static_cast<unsigned char>(c) & 0x80U) != 0;
            if (high && (text_.starts_with("\u00b7") || text_.starts_with("\u00b2") || text_.starts_with("\u00b3"))) break;
            const bool inner_comma = c == ',' && !name.empty() && text_.size() > 1 && text_[1] != ' ';
            if (!high && !inner_comma && c != '_' && std::isalnum(static_cast<unsigned char>(c)) == 0) break;
            name += c;
            text_.remove_prefix(1);
        }
        return name;
    }

    /// A unit such as um/a, taken whole: its stroke is no division.
    std::optional<double> unit_with_stroke() {
        for (const char* unit : {"um/a", "mg/m2/d", "uA/cm2", "C/mol"}) {
            const auto rest = skip_blanks();
            const std::string_view name(unit);
            if (!rest.starts_with(name)) continue;
            if (rest.size() > name.size() && (rest[name.size()] == '_' || std::isalnum(static_cast<unsigned char>(rest[name.size()])) != 0))
                continue;
            text_.remove_prefix(name.size());
            return unit_factor(unit);
        }
        return std::nullopt;
    }

    static std::optional<double> unit_factor(const std::string& unit) {
        static const std::map<std::string, double> factors{{"m", 1},
                                                           {"metre", 1},
                                                           {"mm", 1e-3},
                                                           {"um", 1e-6},
                                                           {"mm2", 1e-6},
                                                           {"mm3", 1e-9},
                                                           {"N", 1},
                                                           {"newton", 1},
                                                           {"kN", 1e3},
                                                           {"MPa", 1e6},
                                                           {"GPa", 1e9},
                                                           {"Nm", 1},
                                                           {"K", 1},
                                                           {"kelvin", 1},
                                                           {"years", 31557600},
                                                           {"um_per_a", 1e-6 / 31557600},
                                                           {"um/a", 1e-6 / 31557600},
                                                           {"mg_per_m2_d", 1e-6 / 86400},
                                                           {"mg/m2/d", 1e-6 / 86400},
                                                           {"volt", 1},
                                                           {"V", 1},
                                                           {"uA_per_cm2", 1e-2},
                                                           {"uA/cm2", 1e-2},
                                                           {"C_per_mol", 1},
                                                           {"C/mol", 1}};
        const auto found = factors.find(unit);
        return found == factors.end() ? std::nullopt : std::optional(found->second);
    }

    double call(const std::string& name) {
        std::vector<double> given;
        const bool list = take("{");
        do given.push_back(sum());
        while (take(","));
        if (list) want("}");
        want(")");
        const auto one = [&] {
            if (given.size() != 1) fail(name + " takes one value");
            return given.front();
        };
        if (name == "min") return *std::min_element(given.begin(), given.end());
        if (name == "max") return *std::max_element(given.begin(), given.end());
        if (name == "pow") {
            if (given.size() != 2) fail("pow takes two values");
            return std::pow(given[0], given[1]);
        }
        if (name == "squared") return one() * one();
        if (name == "cubed") return one() * one() * one();
        if (name == "sqrt") return std::sqrt(one());
        if (name == "abs") return std::abs(one());
        if (name == "exp") return std::exp(one());
        if (name == "log" || name == "ln") return std::log(one());
        if (name == "sin") return std::sin(one());
        if (name == "cos") return std::cos(one());
        if (name == "tan") return std::tan(one());
        if (name == "tanh") return std::tanh(one());
        if (name == "atan") return std::atan(one());
        if (name == "floor") return std::floor(one());
        if (name == "double") return one();
        if (name == "degC") return one() + 273.15;
        if (const auto factor = unit_factor(name)) return one() * *factor;
        fail("unknown function " + name);
    }

    std::string_view text_;
    std::map<std::string, double> symbols_;
};

}  // namespace faywright
