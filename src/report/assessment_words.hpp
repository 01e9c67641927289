// SPDX-License-Identifier: MIT
#pragma once

#include "assess/assessment.hpp"

#include <string>
#include <vector>

/// What texts, pages and pictures call the same things of an assessment.
namespace faywright {

/// "0.71"; beyond any sense ">999".
[[nodiscard]] std::string ratio_text(double value);

/// "bearing (drawbar)"; without a part the words alone.
[[nodiscard]] std::string with_part(std::string_view words, const std::string& part);
/// The check's id with the part it is about.
[[nodiscard]] std::string check_name(const Joint& joint, const CheckResult& result);

/// "push, 1.5 m g, bolt 8"; empty where a check depends on neither.
[[nodiscard]] std::string case_name(const Joint& joint, const CheckResult& result);

/// "pass", "FAIL" or "-".
[[nodiscard]] std::string mark_of(Status status);

/// Whether slip is barred at any plane, so that shear goes by bearing.
[[nodiscard]] bool goes_by_bearing(const Assessment& assessment);

inline constexpr std::string_view bearing_note =
    "as a bearing joint: friction is not counted on, and the bolts move in their holes when the load turns";

/// A label and what it stands for; without a label, a sentence.
struct Fact {
    std::string label, value;
};
/// Why a joint passes or fails, in few words.
[[nodiscard]] std::vector<Fact> verdict_facts(const Assessment& assessment);
/// "8 x M16 x 200 mm 8.8, hot-dip galvanised, waxed".
[[nodiscard]] std::string bolts_name(const Joint& joint);
[[nodiscard]] std::vector<Fact> bolt_facts(const Assessment& assessment);
/// Of the crush tube; nothing without a hollow section.
[[nodiscard]] std::vector<Fact> tube_facts(const Assessment& assessment);

/// The greatest utilisation first; what does not apply last.
[[nodiscard]] std::vector<const CheckResult*> by_utilisation(const Assessment& assessment);

/// The same default of several parts or load cases once: "load-case[0,1,2].reverses".
[[nodiscard]] std::vector<DefaultTaken> grouped(const std::vector<DefaultTaken>& defaults);

/// What was assumed besides defaults of the file: path and words.
[[nodiscard]] std::vector<std::pair<std::string, std::string>> standing_assumptions(const Assessment& assessment);

}  // namespace faywright
