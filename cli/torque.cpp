// SPDX-License-Identifier: MIT
#include "report/torque.hpp"
#include "command.hpp"

#include <fmt/format.h>

namespace faywright::cli {

int torque(const TorqueOptions& options) {
    Diagnostics diagnostics;
    const auto tables = load_tables(options.data, diagnostics);
    if (diagnostics.any()) return refuse(diagnostics);
    TorqueQuestion question{options.size, options.bolt_class, options.finish, options.tightening, {}, 0.75};
    const auto within = [&](const char* option, auto value, auto least, auto most) {
        if (value < least || value > most)
            complain(diagnostics, "number.range",
                     fmt::format("{} is {}; at least {} and at most {} is accepted", option, print(Value(value)), print(Value(least)),
                                 print(Value(most))));
        return value;
    };
    if (options.torque) {
        if (const auto value = read_quantity<Moment>(*options.torque); value)
            question.torque = within("--torque", *value, Nm(0.5), Nm(5000));
        else
            complain(diagnostics, "unit.dimension", "--torque " + value.error());
    }
    if (options.utilisation) {
        if (const auto value = read_quantity<double>(*options.utilisation); value)
            question.proof_utilisation = within("--utilisation", *value, 0.2, 1.0);
        else
            complain(diagnostics, "unit.dimension", "--utilisation " + value.error());
    }
    const auto answer = torque_table(question, tables, diagnostics);
    if (!answer || diagnostics.any()) return refuse(diagnostics);
    return deliver(options.format == Format::json ? torque_json(*answer) : torque_text(*answer), options, passed);
}

}  // namespace faywright::cli
