// SPDX-License-Identifier: MIT
#pragma once

#include "assess/assessment.hpp"
#include "assess/substitution_rules.hpp"
#include "joint/offer.hpp"
#include "joint/resolve.hpp"

#include <memory>
#include <optional>
#include <string>
#include <vector>

/// A part that a supplier offers, held against the one that a joint file specifies.
namespace faywright {

enum class Verdict { accept, accept_with_changes, ask, refuse };
template <>
struct Words<Verdict> {
    static constexpr std::array<std::pair<Verdict, std::string_view>, 4> all{{{Verdict::accept, "accept"},
                                                                              {Verdict::accept_with_changes, "accept with changes"},
                                                                              {Verdict::ask, "ask"},
                                                                              {Verdict::refuse, "refuse"}}};
};

/// How the offered part stands in one property against the specified one. Of `other` nothing is better or worse.
enum class Standing { better, equal, worse, other, incompatible, unknown };
template <>
struct Words<Standing> {
    static constexpr std::array<std::pair<Standing, std::string_view>, 6> all{{{Standing::better, "better"},
                                                                               {Standing::equal, "equal"},
                                                                               {Standing::worse, "worse"},
                                                                               {Standing::other, "other"},
                                                                               {Standing::incompatible, "incompatible"},
                                                                               {Standing::unknown, "unknown"}}};
};

struct Property {
    std::string name, specified, offered;
    Standing standing = Standing::equal;
};

/// What a reason does to the verdict.
enum class Weight { refuse, ask, change, note };
template <>
struct Words<Weight> {
    static constexpr std::array<std::pair<Weight, std::string_view>, 4> all{
        {{Weight::refuse, "refuse"}, {Weight::ask, "ask"}, {Weight::change, "change"}, {Weight::note, "note"}}};
};

struct Reason {
    const SubstitutionRule* rule = nullptr;
    Weight weight = Weight::note;
    std::string words;
};

/// The joint assessed with one part and one torque.
struct Trial {
    std::string title;
    std::string refused, refused_code;  ///< why it cannot be built; the rest is idle then
    std::optional<Joint> joint;
    bool holds = false, lasts = true;  ///< every check passes; no part is used up within the promise
    Moment torque = Nm(0);
    double utilisation = 0.0;
    std::string governing;  ///< the check of the greatest utilisation
    struct Check {
        std::string id, part;
        double utilisation = 0.0;
        bool passes = true;
    };
    std::vector<Check> checks;  ///< that apply
    Force assembled_least = newton(0), assembled_greatest = newton(0), clamp = newton(0);
    std::optional<double> slip;
    std::string tube;          ///< stocked size of the crush tube; empty without one
    double bolt_stress = 0.0;  ///< share of the proof strength at the end of tightening
    std::vector<ExposureOutlook> exposures;

    [[nodiscard]] bool is_built() const { return joint.has_value(); }
    /// The worst of a check's results; nullptr where it does not apply.
    [[nodiscard]] const Check* find(std::string_view id) const;
    /// The result of the same check about the same part.
    [[nodiscard]] const Check* find_same(const Check& other) const;
    [[nodiscard]] Duration shortest_life() const;
    /// The least life of what is aluminium, and cannot be renewed.
    [[nodiscard]] Duration shortest_wall_life() const;
};

struct Substitution {
    Offer offer;
    Verdict verdict = Verdict::accept;
    std::vector<Reason> reasons;  ///< the weightiest first; never empty
    std::vector<Property> properties;
    std::shared_ptr<const Trial> specified;
    std::optional<Trial> unnoticed;      ///< the offered part with the sheet as it is
    std::optional<Trial> right;          ///< the offered part with the changes it needs
    std::vector<std::string> changes;    ///< to the shop sheet
    std::vector<std::string> markings;   ///< to look for
    std::vector<std::string> papers;     ///< to ask for
    std::vector<std::string> questions;  ///< to the supplier
    std::string suggestion;              ///< what would do in its place; empty where nothing is known

    [[nodiscard]] const Reason& governing() const { return reasons.front(); }
    [[nodiscard]] bool is_accepted() const { return verdict == Verdict::accept || verdict == Verdict::accept_with_changes; }
};

struct SubstitutionTask {
    const Node& root;
    const Tables& tables;
    std::vector<Row<Exposure>> exposures = {};  ///< in place of the joint file's, where not empty
    FileReader read_file = {};
};

/// Reviews offers for one joint. The joint is read and assessed once. What the task points to must outlive reviewer and substitutions.
class Reviewer {
public:
    /// Nothing after a mistake in the joint file.
    [[nodiscard]] static std::optional<Reviewer> make(const SubstitutionTask& task, Diagnostics& diagnostics);

    [[nodiscard]] Substitution review(Offer offer);
    [[nodiscard]] const Joint& joint() const { return *specified_->joint; }
    /// What of the joint file does not enter the review.
    [[nodiscard]] const std::vector<std::string>& warnings() const { return warnings_; }

private:
    Reviewer() = default;
    friend struct Review;
    [[nodiscard]] Trial tried(const JointFile& file, std::string title);

    std::shared_ptr<const Node> root_;
    const Tables* tables_ = nullptr;
    WrittenJoint written_;
    std::shared_ptr<const Trial> specified_;
    std::shared_ptr<std::vector<Place>> places_;
    std::unique_ptr<Assessment> assessment_;
    std::vector<std::string> warnings_;
};

/// "M16 x 200 8.8, hot-dip galvanised, waxed".
[[nodiscard]] std::string bolt_words(const Bolt& bolt);
/// "class 8, tapped oversize".
[[nodiscard]] std::string nut_words(const Bolt& bolt);

/// What is known of a bolt and its nut, to be held against another.
struct BoltFacts {
    std::string thread, standard_head, bolt_class, steel, finish, coating, nut;
    std::optional<Length> diameter, pitch, length, thread_length, zinc;
    std::optional<Area> stress_area;
    std::optional<Stress> ultimate_strength, proof_strength, proof_stress;
    std::optional<double> hardness_most, friction_low, friction_high, fatigue_factor;
    std::optional<Force> nut_proof_load;
    std::optional<bool> used;
};

[[nodiscard]] BoltFacts facts_of(const Bolt& bolt);

/// The properties of two bolts side by side. Change their places, and better and worse change theirs.
[[nodiscard]] std::vector<Property> compared(const BoltFacts& specified, const BoltFacts& offered);

}  // namespace faywright
