// SPDX-License-Identifier: MIT
#include "report/steps_text.hpp"

#include "quantity/text.hpp"
#include "report/layout.hpp"

#include <fmt/format.h>

namespace faywright {

std::string citation(const Source& source) {
    std::string out(source.document);
    for (const auto part : {source.edition, source.place})
        if (!part.empty()) out += (out.empty() ? "" : ", ") + std::string(part);
    return out;
}

std::string source_text(const Source& source) {
    const auto out = citation(source);
    return fmt::format("{}{}({})", out, out.empty() ? "" : " ", word(source.basis));
}

std::string steps_text(const std::vector<Step>& steps) {
    std::string out;
    for (const auto& step : steps) {
        if (step.kind == StepKind::heading) {
            out += fmt::format("{}{}", out.empty() ? "" : "\n", wrapped(step.formula));
            out += wrapped(source_text(step.source), "  source: ", "    ");
        } else if (step.kind == StepKind::input || step.substituted.empty()) {
            out += wrapped(step.formula, fmt::format("  {} = {}   ", step.symbol, step.words.empty() ? print(step.value, 5) : step.words),
                           "      ");
        } else {
            const auto indent = std::string(display_width(step.symbol) + 3, ' ');
            out += wrapped(step.formula, fmt::format("  {} = ", step.symbol), indent + "    ");
            if (step.substituted != print(step.value, 5) && step.substituted != step.formula)
                out += wrapped(step.substituted, indent + "= ", indent + "    ");
            out += fmt::format("{}= {}\n", indent, print(step.value, 5));
        }
    }
    return out;
}

}  // namespace faywright
