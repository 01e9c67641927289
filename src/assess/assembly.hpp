// SPDX-License-Identifier: MIT
#pragma once

#include "assess/assessment.hpp"
#include "assess/statement.hpp"

#include <optional>
#include <string>
#include <vector>

/// How a joint is put together and checked in the shop: the words and numbers of the shop sheet, for printing as they stand.
namespace faywright {

/// What a step of the assembly is about. The steps of a plan come in this order.
enum class AssemblyStage {
    drill,
    isolate_bolts,  ///< sleeves: the bores are made to them
    deburr,
    cut_tubes,  ///< to the cavity, measured at the hole
    treat_tubes,
    clean_faces,
    coat_faces,  ///< a coat that hardens before the parts meet: zinc, paint, powder, oxide
    place_tubes,
    isolate_faces,  ///< what lies between the faces: compound, sealant, tape, gasket
    place_bolts,
    snug,
    tighten,
    retighten_wet,  ///< what was spread wet has been pressed out
    mark,
    seal_edges,
    sign,
};

struct AssemblyStep {
    AssemblyStage stage;
    std::string words;  ///< one or two short sentences
    std::string place;  ///< "tubes", "faying faces"; empty where it is the whole joint
    RowSource source = {};
};

/// One round over all bolts in the order of tightening.
struct TighteningPass {
    Moment torque;
    bool last = false;
};

/// How the bolts are tightened.
struct TighteningInstruction {
    std::string method;                          ///< row of the table tightening
    bool by_torque = false;                      ///< the torque decides; otherwise it is for information
    std::vector<TighteningPass> passes;          ///< none where the method does not use torque
    std::optional<Moment> for_information;       ///< torque that lies about the preload, where the method does not use it
    Force preload_least, preload_greatest;       ///< of one bolt as assembled
    std::optional<Moment> prevailing;            ///< of a locking nut; in the torque already
    std::string turned;                          ///< "nut"; the other part is held
    std::string finish;                          ///< row of the table finishes that the friction is of
    double friction_low = 0, friction_high = 0;  ///< of the thread, for which torque and preload are valid
    std::vector<Statement> words;                ///< lubrication, turned part, tool, what governs: a line each
};

/// A check of the torque after the assembly.
struct Retightening {
    std::string when;
    std::string how;
    bool in_assembly = false;  ///< a step of the assembly itself: what was spread wet has been pressed out
    RowSource source = {};
};

/// When an inspection has its place.
enum class InspectionTime { incoming, before_closing, at_tightening, after };
template <>
struct Words<InspectionTime> {
    static constexpr std::array<std::pair<InspectionTime, std::string_view>, 4> all{{{InspectionTime::incoming, "incoming"},
                                                                                     {InspectionTime::before_closing, "before closing"},
                                                                                     {InspectionTime::at_tightening, "at tightening"},
                                                                                     {InspectionTime::after, "after assembly"}}};
};

struct Inspection {
    InspectionTime time;
    std::string what, how, accept;
    RowSource source = {};
};

/// A part that is not exchanged without a review, by what it is ordered as.
struct FixedPart {
    std::string part;  ///< "bolt", "nut", "washer under the head", "tube", "layer", "finish and lubricant", "seal of the edges", ...
    std::string designation;
};

struct AssemblyPlan {
    std::string not_to_be_built;  ///< why, in words; empty for a joint that passes
    std::vector<AssemblyStep> steps;
    std::vector<std::size_t> tightening_order;  ///< bolts by their index in `Joint::positions`, in their turn
    TighteningInstruction tightening;
    std::vector<Retightening> retightening;
    bool retightening_counts = false;  ///< the assessment's clamp of later life rests on that of the first service
    Statement retightening_counted;    ///< that it does, or does not, and the clamp it comes to
    std::vector<Inspection> inspection;
    bool resistance_test = false;    ///< one of the inspections is that of the resistance between the metals
    std::string no_resistance_test;  ///< why none is asked for; empty where one is
    std::vector<FixedPart> no_substitution;
    Statement substitution;          ///< what is done before one of these parts is exchanged
    std::vector<Statement> rejects;  ///< what the fitter does not accept

    /// Turn of a bolt in the order of tightening, from 1.
    [[nodiscard]] int turn_of(std::size_t bolt) const;
};

/// Bolts of a pattern in the order of tightening: from its middle outwards, each as far from the one before as its distance from the middle
/// allows, so that sides alternate.
[[nodiscard]] std::vector<std::size_t> tightening_order(const std::vector<Position>& positions);

/// Why a joint that does not pass is not built: what fails, the worst first. Empty for one that passes.
[[nodiscard]] std::string why_not_built(const Assessment& assessment);

/// What isolates a joint, by the rows of the table isolation: an element for each kind of faying face, then those for tube, bolt and edges
/// where the joint has one.
[[nodiscard]] std::vector<const Row<IsolationElement>*> isolation_of(const Joint& joint, const Tables& tables);

/// "faying faces: jointing compound", "edges sealed".
[[nodiscard]] std::string place_and_name(const Row<IsolationElement>& element);

/// What a shop sheet says of an assessed joint. Give it the outlook first, or it does not know what that fails.
[[nodiscard]] AssemblyPlan assembly_plan(const Assessment& assessment, const Tables& tables);

}  // namespace faywright
