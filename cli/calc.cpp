// SPDX-License-Identifier: MIT
#include "command.hpp"
#include "quantity/characters.hpp"
#include "report/calculation.hpp"

#include <fmt/format.h>

namespace faywright::cli {

namespace {

/// `key=value` arguments as one table: lists and tables in TOML syntax, true and false as such, anything else as text.
std::optional<Node> inputs_of(const std::vector<std::string>& arguments, Diagnostics& diagnostics) {
    Node table;
    table.at = TextPosition{std::make_shared<const std::string>("command line")};
    for (const auto& argument : arguments) {
        const auto equals = argument.find('=');
        if (equals == std::string::npos || equals == 0) {
            complain(diagnostics, "calc.argument", fmt::format("\"{}\" is no input; key=value is wanted", shown(argument)));
            continue;
        }
        const auto key = argument.substr(0, equals), value = argument.substr(equals + 1);
        const auto name = fmt::format("command line, {}", shown(key));
        if (table.find(key) != nullptr) complain(diagnostics, "calc.argument", fmt::format("{} is given twice", shown(key)));
        std::optional<Node> node;
        if (!value.empty() && (value.front() == '[' || value.front() == '{' || value.front() == '"' || value.front() == '\'')) {
            node = parse_toml_value(value, name, diagnostics);
            if (!node) continue;
        } else {
            node.emplace();
            node->kind = value == "true" || value == "false" ? Node::Kind::boolean : Node::Kind::string;
            node->boolean = value == "true";
            node->text = value;
            // Whole numbers are counts; the reader takes ratios from text as well.
            char* end = nullptr;
            const double number = std::strtod(value.c_str(), &end);
            if (!value.empty() && *end == '\0' && value.find_first_not_of("0123456789+-.eE") == std::string::npos) {
                node->kind = Node::Kind::number;
                node->number = number;
            }
        }
        node->at = TextPosition{std::make_shared<const std::string>(name)};
        table.entries.push_back({key, node->at, std::move(*node)});
    }
    if (diagnostics.any()) return std::nullopt;
    return table;
}

}  // namespace

int calc(const CalcOptions& options) {
    const bool json = options.format == Format::json;
    if (options.name.empty()) return deliver(json ? calculator_list_json() : calculator_list(), options, passed);
    const Calculator* calculator = nullptr;
    std::vector<std::string> names;
    for (const auto& each : calculators()) {
        names.emplace_back(each.formula.name);
        if (each.formula.name == options.name) calculator = &each;
    }
    Diagnostics diagnostics;
    if (calculator == nullptr) {
        complain(diagnostics, "name.unknown", "there is no calculator " + quoted_with_nearest(options.name, names),
                 "faywright calc lists them");
        return refuse(diagnostics);
    }
    if (options.help || options.inputs.empty())
        return deliver(json ? calculator_help_json(*calculator) : calculator_help(*calculator), options, passed);
    const auto inputs = inputs_of(options.inputs, diagnostics);
    if (!inputs) return refuse(diagnostics);
    const auto calculation = calculator->run(*inputs, diagnostics);
    if (!calculation) return refuse(diagnostics);
    return deliver(json ? calculation_json(*calculator, *calculation) : calculation_text(*calculator, *calculation), options, passed);
}

}  // namespace faywright::cli
