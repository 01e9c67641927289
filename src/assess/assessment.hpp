// SPDX-License-Identifier: MIT
#pragma once

#include "assess/outcome.hpp"
#include "assess/outlook.hpp"
#include "assess/state.hpp"

#include <array>
#include <string>
#include <vector>

namespace faywright {

/// A check with the worst of what it ran over.
struct CheckResult {
    const CheckInfo* info = nullptr;
    Where where;
    Outcome outcome;
    Status status = Status::pass;
    std::optional<double> static_factor;  ///< least design factor over the static load cases, whichever case governs
    Where static_where;
};

struct ClampStage {
    std::string_view id, title;
    Force least, greatest;
};

inline constexpr std::size_t most_results = 256;
inline constexpr std::size_t clamp_stages = 9;

/// What a joint comes to. But for the outlook it holds no memory outside itself: a search fills it again and again.
struct Assessment {
    State state;
    std::array<CheckResult, most_results> results;
    std::size_t count = 0;
    std::size_t governing = 0;  ///< index of the result with the greatest utilisation
    bool holds = false;         ///< every check passes
    bool passes = false;        ///< it holds, and outlives the promise where it lives
    std::array<ClampStage, clamp_stages> clamp;
    CorrosionOutlook corrosion;  ///< empty until add_outlook()

    [[nodiscard]] std::span<const CheckResult> checks() const { return {results.data(), count}; }
};

/// Runs every check. The joint must outlive the assessment, which points into it.
void assess(const Joint& joint, Assessment& assessment);

/// Adds what becomes of an assessed joint in the exposures its file names. The tables must outlive the assessment.
void add_outlook(const Tables& tables, Assessment& assessment);

/// Whether an assessed joint passes with no check above `limit`.
[[nodiscard]] bool passes_within(const Assessment& assessment, double limit);

/// Whether a joint passes with no check above `limit`; only then is the assessment whole. Tells sooner what fails.
[[nodiscard]] bool assess_within(const Joint& joint, double limit, Assessment& assessment);

/// A utilisation that no other pattern of the same bolts and parts gets below, from the checks the pattern does not touch and the
/// pressure under head and nut of the preload alone.
[[nodiscard]] double least_of_any_pattern(const State& state);

/// The result of a check: the worst part of it. Nothing if there is no check of that name.
[[nodiscard]] const CheckResult* find_check(const Assessment& assessment, std::string_view id);

/// The result with the least design factor on a static load; nothing where no static load reaches any check.
[[nodiscard]] const CheckResult* least_static_factor(const Assessment& assessment);

/// Every check's id and title, in the order of the list.
[[nodiscard]] std::vector<const CheckInfo*> all_checks();

/// Derives a result again with its steps.
[[nodiscard]] Recorder explain(const Assessment& assessment, const CheckResult& result, bool keeps_evident = true);

/// The result whose case tells of the bolts: of the checks that look at one bolt in one load case, the one with the greatest
/// utilisation, and before others one whose load lies in the plane. Nothing where no check does.
[[nodiscard]] const CheckResult* governing_of_bolts(const Assessment& assessment);

/// What a bolt feels of a load case, and how far it is used.
struct BoltUse {
    BoltLoad load;
    double utilisation = 0.0;
};
/// Each bolt in the case of a result, by its check.
[[nodiscard]] std::vector<BoltUse> use_of_bolts(const Assessment& assessment, const CheckResult& result);

/// Index of the stage of the least clamp, load apart: with it slip and separation are checked.
[[nodiscard]] std::size_t checked_stage(const Assessment& assessment);

/// The name of what a result is about: a ply, a plane, a layer, an end; empty for the whole joint.
[[nodiscard]] std::string part_name(const Joint& joint, const CheckResult& result);

/// The overrides of the joint file: field and value.
[[nodiscard]] std::vector<std::pair<std::string, std::string>> overrides_of(const Joint& joint);

/// Rows of a shop's own tables that the joint uses: row, source, file.
[[nodiscard]] std::vector<std::string> own_tables_of(const Joint& joint);

/// What the reader must be told besides the checks.
[[nodiscard]] std::vector<std::string> warnings(const Assessment& assessment);

/// The cautions every document carries.
[[nodiscard]] const std::vector<std::string>& cautions();

}  // namespace faywright
