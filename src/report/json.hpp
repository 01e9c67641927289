// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"
#include "quantity/steps.hpp"
#include "quantity/value.hpp"

#include <nlohmann/json.hpp>

#include <vector>

namespace faywright::json {

using Json = nlohmann::ordered_json;

/// {"value": 13.4, "unit": "kN"}. The value must be finite; that is the assessment's promise.
[[nodiscard]] Json of(const Value& value);
/// The same in the unit that `like` prints in, so that the two can be compared.
[[nodiscard]] Json of(const Value& value, const Value& like);
[[nodiscard]] Json of(const Source& source);
[[nodiscard]] Json of(const std::vector<Step>& steps);

/// Without any line break within, and one at the end.
[[nodiscard]] std::string line(const Json& json);
/// Two-space indent and a final newline; bytes that are no UTF-8 are replaced.
[[nodiscard]] std::string printed(const Json& json);

}  // namespace faywright::json
