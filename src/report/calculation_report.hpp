// SPDX-License-Identifier: MIT
#pragma once

#include "assess/isolate.hpp"
#include "assess/uncertainty.hpp"
#include "joint/written_fields.hpp"
#include "report/page.hpp"

namespace faywright {

/// All that a calculation report is made from.
struct ReportMatter {
    const Assessment& assessment;
    const Tables& tables;
    std::vector<WrittenField> fields;             ///< what the joint file gives
    const IsolationRanking* isolation = nullptr;  ///< other elements between the faces; nullptr without an exposure
    const Uncertainty* uncertainty = nullptr;     ///< where it was asked for
    Identification identification;
};

/// The report that a certifying engineer follows line by line: verdict, pictures, every check derived, every input with where it came from.
[[nodiscard]] Page calculation_report(const ReportMatter& matter);

}  // namespace faywright
