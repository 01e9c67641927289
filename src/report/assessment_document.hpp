// SPDX-License-Identifier: MIT
#pragma once

#include "assess/assessment.hpp"
#include "report/json.hpp"

namespace faywright {

/// The assessment as a JSON document, to which others may add theirs.
[[nodiscard]] json::Json assessment_document(const Assessment& assessment);

}  // namespace faywright
