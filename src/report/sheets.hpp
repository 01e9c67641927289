// SPDX-License-Identifier: MIT
#pragma once

#include "assess/assembly.hpp"
#include "assess/care.hpp"
#include "report/page.hpp"

/// Sheets of one page: what the fitter builds by, and what the owner keeps.
namespace faywright {

/// A4: the parts in section, torque and order of tightening, parts, holes, steps, inspection, what is not exchanged.
[[nodiscard]] Page shop_sheet(const Assessment& assessment, const Tables& tables, const Identification& identification);

/// A4: washing, looking and checking in the exposure, what may be done and what not, and a record to fill in.
[[nodiscard]] Page care_sheet(const Assessment& assessment, const Tables& tables, const Identification& identification);

}  // namespace faywright
