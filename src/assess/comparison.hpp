// SPDX-License-Identifier: MIT
#pragma once

#include "assess/assessment.hpp"
#include "joint/written_fields.hpp"

#include <optional>
#include <string>
#include <vector>

/// Two joints side by side: what of their files differs, and what came of it.
namespace faywright {

/// A value that only one file gives, or both give differently. Parts and load cases are told by name, not by number.
struct ChangedField {
    std::string field, meaning;
    std::optional<std::string> before, after;
};

/// The same check of the same part. Nothing where it does not apply.
struct ComparedCheck {
    const CheckInfo* info = nullptr;
    std::string part;
    const CheckResult *before = nullptr, *after = nullptr;  ///< of results that apply; point into the assessments

    [[nodiscard]] bool is_new_failure() const {
        return after != nullptr && after->status == Status::fail && (before == nullptr || before->status != Status::fail);
    }
    [[nodiscard]] bool is_mended() const {
        return before != nullptr && before->status == Status::fail && (after == nullptr || after->status != Status::fail);
    }
};

/// What is used up of the same part in the same exposure.
struct ComparedLife {
    std::string exposure, part;
    const MemberOutlook *before = nullptr, *after = nullptr;
};

/// The fields of one file with the names of its parts and cases.
struct FileSide {
    std::vector<WrittenField> fields;
    const JointFile& file;
};

[[nodiscard]] std::vector<ChangedField> changed_fields(const FileSide& before, const FileSide& after);

/// Every check that applies in either, the greatest utilisation of the second first. Both must outlive the answer.
[[nodiscard]] std::vector<ComparedCheck> compared_checks(const Assessment& before, const Assessment& after);

/// Exposures of the same name only.
[[nodiscard]] std::vector<ComparedLife> compared_lives(const Assessment& before, const Assessment& after);

}  // namespace faywright
