// SPDX-License-Identifier: MIT
#pragma once

#include "assess/substitute.hpp"

/// One review at work: its parts are in substitution_*.cpp.
namespace faywright {

struct Review {
    Reviewer& reviewer;
    const Tables& tables;
    const Joint& base;
    Substitution out = {};

    void run();

private:
    [[nodiscard]] const Offer& offer() const { return out.offer; }
    [[nodiscard]] const OfferFile& said() const { return out.offer.said; }
    [[nodiscard]] const Trial& specified() const { return *out.specified; }
    /// The file as the shop sheet has it, at the torque of the sheet.
    [[nodiscard]] JointFile sheet() const;
    /// The same with the torque left to the offered part.
    [[nodiscard]] JointFile sheet_without_torque() const;
    [[nodiscard]] bool torque_counts() const { return base.tightening.method.uses_torque; }

    void say(const SubstitutionRule* rule, Weight weight, std::string words);
    [[nodiscard]] bool has(Weight weight) const;

    // substitution_bolt.cpp
    void bolt();
    void bolt_identity();
    void bolt_steel();
    void bolt_finish();
    void bolt_trials();
    [[nodiscard]] bool bolt_can_be_tried() const;
    [[nodiscard]] const Row<Finish>* as_delivered() const;
    [[nodiscard]] const Row<Finish>* lubricated() const;
    [[nodiscard]] bool needs_lubricant() const;
    [[nodiscard]] Trial tried_right(JointFile file) const;
    void keep_elongation(JointFile& file) const;
    void suggest(const BoltClass& offered, const Row<Finish>& finish);
    [[nodiscard]] JointFile with_bolt(JointFile file, const Row<Finish>& finish) const;

    // substitution_parts.cpp
    void nut();
    void washer();
    void tube();
    void tube_offered(TubeFile& tube);
    void layer();
    void common_identity();
    void locking();
    void paste();
    /// The mark of a nut, and of a bolt, says the class that the offer says.
    void mark(const std::string& part_class);
    /// Of nuts and washers: a thin coat, or none, is used up before the bolts' own.
    void coat_of(const char* parts);

    // substitution_outcome.cpp
    void judge_trials();
    void judge_specified();
    void judge_unnoticed();
    void judge_life();
    void judge_reserve();
    void judge_coat_without_exposure();
    void judge_stainless_group(const std::string& now);
    void judge_checks();
    void questions();
    void settle();

    // substitution_compare.cpp
    void compare();

    // substitution_sheet.cpp
    void list_changes();
    void list_markings();
    void list_papers();
};

/// The row of a class for a diameter, or nullptr.
[[nodiscard]] const Row<BoltClass>* class_row(const Tables& tables, const std::string& name, Length diameter);

/// Nuts too low to bear a bolt's full load: ISO 898-2, memory.
[[nodiscard]] inline bool is_thin_nut(std::string_view nut_class) { return nut_class == "04" || nut_class == "05"; }

/// Stainless classes of nuts are those of two digits that end in 0: 50, 70, 80.
[[nodiscard]] inline bool is_stainless_nut(std::string_view nut_class) {
    return nut_class.size() == 2 && nut_class.ends_with('0') && nut_class >= "50";
}

/// Whether a nut's class is at least that which ISO 898-2, Table 2, gives a bolt; memory.
[[nodiscard]] bool is_nut_class_of(const std::string& nut_class, const BoltClass& bolt);

/// How stainless threads are kept from seizing.
[[nodiscard]] std::string galling_words(bool dry);

/// "29.3 years".
[[nodiscard]] std::string in_years_text(Duration life);

/// "120 N*m".
[[nodiscard]] std::string told(const Value& value);

}  // namespace faywright
