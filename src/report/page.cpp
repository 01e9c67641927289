// SPDX-License-Identifier: MIT
#include "report/page.hpp"

#include "quantity/text.hpp"
#include "report/steps_text.hpp"
#include "report/typography.hpp"

namespace faywright {

std::string told(const Value& value, int significant) { return typographic(print(value, significant)); }

std::vector<std::span<const Step>> calculators_of(const std::vector<Step>& steps) {
    std::vector<std::span<const Step>> out;
    for (std::size_t from = 0; from < steps.size();) {
        auto to = from + 1;
        while (to < steps.size() && steps[to].kind != StepKind::heading) ++to;
        out.emplace_back(&steps[from], to - from);
        from = to;
    }
    return out;
}

StepTable table_of(std::span<const Step> steps) {
    StepTable out{"Given", "", {}};
    for (const auto& step : steps) {
        if (step.kind == StepKind::heading) {
            out.title = step.formula;
            out.source = source_text(step.source);
            continue;
        }
        StepRow row{step.symbol, step.formula, "", step.words.empty() ? told(step.value, 5) : step.words,
                    step.kind == StepKind::input || step.substituted.empty()};
        // A formula without symbols has been shown already, and so has a single value.
        const auto with = typographic(step.substituted);
        if (!row.in_words && with != row.result && step.substituted != step.formula) row.with_values = with;
        out.rows.push_back(std::move(row));
    }
    return out;
}

}  // namespace faywright
