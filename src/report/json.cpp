// SPDX-License-Identifier: MIT
#include "report/json.hpp"

#include "quantity/text.hpp"

#include <cassert>
#include <cmath>

namespace faywright::json {

Json of(const Value& value) {
    const auto printed = in_customary_unit(value);
    assert(std::isfinite(printed.number));
    Json out;
    out["value"] = printed.number;
    out["unit"] = printed.unit.empty() ? "1" : printed.unit;
    return out;
}

Json of(const Value& value, const Value& like) {
    const auto printed = in_unit_of(value, like);
    assert(std::isfinite(printed.number));
    Json out;
    out["value"] = printed.number;
    out["unit"] = printed.unit.empty() ? "1" : printed.unit;
    return out;
}

Json of(const Source& source) {
    Json out;
    out["document"] = source.document;
    out["locator"] = source.edition.empty() ? std::string(source.place) : std::string(source.edition) + ", " + std::string(source.place);
    out["basis"] = word(source.basis);
    return out;
}

Json of(const std::vector<Step>& steps) {
    auto out = Json::array();
    for (const auto& step : steps) {
        Json line;
        if (step.kind == StepKind::heading) {
            line["calculator"] = step.formula;
            line["source"] = of(step.source);
        } else {
            line["symbol"] = step.symbol;
            line[step.kind == StepKind::input ? "meaning" : "formula"] = step.formula;
            if (step.kind == StepKind::derived) line["substituted"] = step.substituted;
            if (step.words.empty()) {
                const auto printed = in_customary_unit(step.value);
                line["value"] = printed.number;
                line["unit"] = printed.unit.empty() ? "1" : printed.unit;
            } else {
                line["value"] = step.words;
            }
        }
        out.push_back(std::move(line));
    }
    return out;
}

std::string line(const Json& json) { return json.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace) + '\n'; }

std::string printed(const Json& json) { return json.dump(2, ' ', false, nlohmann::json::error_handler_t::replace) + '\n'; }

}  // namespace faywright::json
