// SPDX-License-Identifier: MIT
#pragma once

#include "assess/calculator.hpp"

namespace faywright::detail {

/// The source of a formula that differs by the method chosen in its inputs.
template <class C>
Source source_of(const typename C::Inputs& in) {
    if constexpr (requires { C::source(in.method); })
        return C::source(in.method);
    else if constexpr (requires { C::source(in.pivot); })
        return C::source(in.pivot);
    else if constexpr (requires { C::source(in.edge); })
        return C::source(in.edge);
    else if constexpr (requires { C::source(in.shore); })
        return C::source(in.shore);
    else
        return C::formula.source;
}

template <class C>
std::vector<FieldHelp> fields_of() {
    std::vector<FieldHelp> out;
    typename C::Inputs in{};
    C::Inputs::describe(ListFields{out}, in);
    return out;
}

template <class C>
std::optional<Calculation> run(const Node& node, Diagnostics& diagnostics) {
    const auto before = diagnostics.count();
    typename C::Inputs in{};
    read_node(node, Path{}, in, ReadContext{diagnostics});
    if (diagnostics.count() != before) return std::nullopt;
    if constexpr (requires { C::refusal(in); })
        if (const char* why = C::refusal(in); why != nullptr) {
            diagnostics.error({"calc.refused", fmt::format("{}: {}", C::formula.name, why), node.at, "", {}, ""});
            return std::nullopt;
        }
    Recorder recorder;
    const auto answer = C::compute(in, recorder);
    Calculation out;
    C::Inputs::describe(ListValues{out.inputs}, in);
    C::Answer::describe(ListValues{out.results}, answer);
    for (const auto& step : recorder.steps())
        if (step.kind != StepKind::input) out.steps.push_back(step);
    out.source = source_of<C>(in);
    if constexpr (requires { answer.outside_range; })
        if (answer.outside_range != nullptr) out.outside_range = answer.outside_range;
    return out;
}

template <class C>
Calculator make_calculator() {
    return {C::formula, fields_of<C>, run<C>};
}

}  // namespace faywright::detail
