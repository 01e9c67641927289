// SPDX-License-Identifier: MIT
#include "report/page.hpp"

#include "quantity/text.hpp"
#include "report/steps_text.hpp"
#include "report/typography.hpp"

namespace faywright {

std::string told(const Value& value, int significant) { return typographic(print(value, significant)); }

std::vector<StepTable> tables_of(const std::vector<Step>& steps) {
    std::vector<StepTable> out;
    for (const auto& step : steps) {
        if (step.kind == StepKind::heading) {
            out.push_back({step.formula, source_text(step.source), {}});
            continue;
        }
        if (out.empty()) out.push_back({"Given", "", {}});
        StepRow row{step.symbol, step.formula, "", step.words.empty() ? told(step.value, 5) : step.words,
                    step.kind == StepKind::input || step.substituted.empty()};
        // A formula without symbols has been shown already, and so has a single value.
        const auto with = typographic(step.substituted);
        if (!row.in_words && with != row.result && step.substituted != step.formula) row.with_values = with;
        out.back().rows.push_back(std::move(row));
    }
    return out;
}

}  // namespace faywright
