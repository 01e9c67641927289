// SPDX-License-Identifier: MIT
#include "report/calculation.hpp"

#include "report/json.hpp"
#include "report/layout.hpp"
#include "report/steps_text.hpp"

namespace faywright {

std::string calculation_text(const Calculator& calculator, const Calculation& calculation) {
    std::string out = wrapped(calculator.formula.title) + "\n";
    for (const auto& result : calculation.results) {
        const auto value = result.text.empty() ? print(result.value, 5) : result.text;
        out += wrapped(result.meaning, fmt::format("  {} = {}   ", result.symbol.empty() ? result.key : result.symbol, value), "      ");
    }
    out += "\ngiven\n";
    for (const auto& input : calculation.inputs) {
        const auto value = input.text.empty() ? print(input.value, 5) : input.text;
        out += wrapped(input.meaning, fmt::format("  {} = {}   ", input.symbol.empty() ? input.key : input.symbol, value), "      ");
    }
    if (!calculation.steps.empty()) out.append("\nsteps\n").append(steps_text(calculation.steps));
    out += '\n';
    out += wrapped(source_text(calculation.source), "source: ", "  ");
    out += wrapped(calculator.formula.range, "range: ", "  ");
    if (!calculation.outside_range.empty()) out += wrapped(calculation.outside_range, "OUTSIDE THE STATED RANGE: ", "  ");
    return out;
}

std::string calculation_json(const Calculator& calculator, const Calculation& calculation) {
    using json::Json;
    Json out;
    out["calculator"] = calculator.formula.name;
    const auto values = [](const std::vector<NamedValue>& list) {
        Json object = Json::object();
        for (const auto& named : list) {
            if (named.text.empty())
                object[named.key] = json::of(named.value);
            else
                object[named.key] = named.text;
        }
        return object;
    };
    out["inputs"] = values(calculation.inputs);
    out["results"] = values(calculation.results);
    out["steps"] = json::of(calculation.steps);
    out["source"] = json::of(calculation.source);
    out["range"] = calculator.formula.range;
    if (!calculation.outside_range.empty()) out["outside_range"] = calculation.outside_range;
    return json::printed(out);
}

std::string calculator_help(const Calculator& calculator) {
    std::string out = fmt::format("faywright calc {} key=value...\n\n", calculator.formula.name) + wrapped(calculator.formula.title) + "\n";
    for (const auto& field : calculator.fields()) {
        out += fmt::format("  {}{}\n", field.key, field.symbol.empty() ? "" : fmt::format("  ({})", field.symbol));
        out += wrapped(field.meaning, "      ", "      ");
        out += wrapped(fmt::format("{}{}{}", field.kind, field.accepted.empty() ? "" : "; " + field.accepted,
                                   field.fallback.empty()                ? ""
                                   : field.fallback == "may be left out" ? "; may be left out"
                                                                         : "; default " + field.fallback),
                       "      ", "      ");
    }
    out += '\n';
    out += wrapped(calculator.formula.range, "range: ", "  ");
    out += wrapped(source_text(calculator.formula.source), "source: ", "  ");
    return out;
}

std::string calculator_help_json(const Calculator& calculator) {
    json::Json out;
    out["calculator"] = calculator.formula.name;
    out["title"] = calculator.formula.title;
    out["range"] = calculator.formula.range;
    out["source"] = json::of(calculator.formula.source);
    out["inputs"] = json::Json::array();
    for (const auto& field : calculator.fields()) {
        json::Json line;
        line["key"] = field.key;
        if (!field.symbol.empty()) line["symbol"] = field.symbol;
        line["meaning"] = field.meaning;
        line["kind"] = field.kind;
        if (!field.accepted.empty()) line["accepted"] = field.accepted;
        if (!field.fallback.empty()) line["default"] = field.fallback;
        out["inputs"].push_back(std::move(line));
    }
    return json::printed(out);
}

std::string calculator_list() {
    std::string out = "calculators (faywright calc NAME --help lists the inputs)\n\n";
    for (const auto& calculator : calculators())
        out += wrapped(calculator.formula.title, "  " + fitted(calculator.formula.name, 25), std::string(27, ' '));
    return out;
}

std::string calculator_list_json() {
    json::Json out;
    out["calculators"] = json::Json::array();
    for (const auto& calculator : calculators()) {
        json::Json line;
        line["name"] = calculator.formula.name;
        line["title"] = calculator.formula.title;
        out["calculators"].push_back(std::move(line));
    }
    return json::printed(out);
}

}  // namespace faywright
