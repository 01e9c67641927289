// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/field.hpp"
#include "quantity/source.hpp"
#include "quantity/value.hpp"

#include <concepts>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace faywright {

enum class StepKind {
    heading,  ///< a calculator begins: its title in `formula`, and its source
    input,    ///< a given value: its meaning in `formula`
    derived,  ///< a computed value
};

/// One line of a derivation, as a certifier reads it.
struct Step {
    StepKind kind = StepKind::derived;
    std::string symbol;       ///< as printed, e.g. "F_b,Rd"
    std::string formula;      ///< the expression with symbols
    std::string substituted;  ///< the expression with values; empty where words stand for the formula
    Value value;
    std::string words;  ///< of an input that is no number: the method's name, yes or no
    Source source{};
    std::string code;     ///< the expression as the code has it
    std::string evident;  ///< the same with every known symbol replaced by its SI magnitude; empty if words stand in it, or nobody asked
};

/// Keeps no steps: what the inner loops use, at no cost.
struct NoSteps {
    void heading(std::string_view, const Source&) const {}
    template <class Inputs>
    void given(const Inputs&) const {}
    template <class T>
    [[nodiscard]] auto record(const char*, const char*, const T& value) const {
        if constexpr (std::convertible_to<T, double>)
            return static_cast<double>(value);
        else
            return value;
    }
    template <class T>
    [[nodiscard]] auto stated(const char* symbol, const char* words, const T& value) const {
        return record(symbol, words, value);
    }
};

/// Whether steps are kept by a `steps` argument of this type.
template <class Steps>
inline constexpr bool keeps_steps = !std::same_as<std::remove_cvref_t<Steps>, NoSteps>;

/// Keeps every step with symbols and with values.
class Recorder {
public:
    /// `keeps_evident`: each step with the text that tests reckon again; a document of many steps is made sooner without.
    explicit Recorder(bool keeps_evident = true) : keeps_evident_(keeps_evident) { steps_.reserve(64); }

    /// A calculator begins.
    void heading(std::string_view title, const Source& source);

    /// Notes a calculator's inputs and makes their symbols known.
    template <class Inputs>
    void given(const Inputs& inputs);

    template <class T>
    [[nodiscard]] auto record(const char* symbol, const char* code, const T& value) {
        auto plain = NoSteps{}.record(symbol, code, value);
        add(symbol, code, plain, true);
        return plain;
    }

    /// A step whose formula is told in words or sums, because no single expression computes it.
    template <class T>
    [[nodiscard]] auto stated(const char* symbol, const char* words, const T& value) {
        auto plain = NoSteps{}.record(symbol, words, value);
        add(symbol, words, plain, false);
        return plain;
    }

    void input(const Name& name, Value value);
    void input(const Name& name, std::string_view words);
    [[nodiscard]] const std::vector<Step>& steps() const { return steps_; }

private:
    void add(const char* symbol, const char* code, Value value, bool is_expression);

    bool keeps_evident_;
    std::vector<std::pair<std::string, Value>> symbols_;
    std::vector<Step> steps_;
};

/// `F_b_Rd` -> "F_b,Rd"; `gamma_M2` -> "γ_M2".
[[nodiscard]] std::string display_symbol(std::string_view identifier);

namespace detail {
struct MakeKnown {
    Recorder& recorder;
    template <class T, class... Rest>
    void operator()(const Name& name, const T& member, const Rest&...) const {
        if constexpr (std::constructible_from<Value, T> && !std::same_as<T, bool> && !std::is_enum_v<T> && !std::integral<T>) {
            recorder.input(name, Value(member));
        } else if constexpr (std::integral<T> && !std::same_as<T, bool>) {
            recorder.input(name, Value(static_cast<double>(member)));
        } else if constexpr (std::same_as<T, bool>) {
            recorder.input(name, std::string_view(member ? "yes" : "no"));
        } else if constexpr (requires { Words<T>::all; }) {
            recorder.input(name, word_of(member));
        } else if constexpr (requires {
                                 member.has_value();
                                 *member;
                             }) {
            if (member.has_value()) (*this)(name, *member);
        }
    }
};
}  // namespace detail

template <class Inputs>
void Recorder::given(const Inputs& inputs) {
    Inputs::describe(detail::MakeKnown{*this}, inputs);
}

}  // namespace faywright

/// Defines `symbol` as the value of `expression` and hands the expression's own text to the recorder,
/// so that the printed formula is the code that computed it.
#define FAYWRIGHT_STEP(symbol, ...) const auto symbol = steps.record(#symbol, #__VA_ARGS__, (__VA_ARGS__))
/// The same where `words` must stand for the formula (sums over bolts or layers).
#define FAYWRIGHT_STATED(symbol, words, ...) const auto symbol = steps.stated(#symbol, words, (__VA_ARGS__))
