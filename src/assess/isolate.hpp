// SPDX-License-Identifier: MIT
#pragma once

#include "assess/assessment.hpp"
#include "assess/outlook.hpp"

#include <optional>
#include <string>
#include <vector>

/// Every isolation method for one joint, by both of its effects: on corrosion and on the clamp.
namespace faywright {

/// One element for each place; a joint without a crush tube has none for the tube.
struct IsolationMethod {
    const Row<IsolationElement>* faying = nullptr;
    const Row<IsolationElement>* fixing = nullptr;
    const Row<IsolationElement>* tube = nullptr;
    const Row<IsolationElement>* edges = nullptr;

    [[nodiscard]] std::vector<const Row<IsolationElement>*> elements() const;
    /// "EPDM gasket; bare bolt; galvanised steel tube; edges sealed".
    [[nodiscard]] std::string name() const;
};

/// A joint with the method in it, and what comes of it.
struct MethodResult {
    IsolationMethod method;
    std::string refused;         ///< why it cannot be built; the rest is idle then
    bool holds = false;          ///< every mechanical check passes
    Force assembled, clamp;      ///< least preload as assembled; least clamp of life, load apart
    std::optional<double> slip;  ///< utilisation; nothing where no friction is counted on
    double utilisation = 0.0;
    std::string trouble;                                ///< what no utilisation tells: that no tube carries the clamp
    std::string governing;                              ///< check of the greatest utilisation
    std::optional<bool> pressure_met, temperature_met;  ///< of the method's layers; nothing without a layer
    bool sustained = true;                              ///< no layer in the clamp path that cannot sustain it
    std::vector<ExposureOutlook> exposures;
    bool passes = false;      ///< holds, and every part outlives the promise in every exposure
    bool as_written = false;  ///< the joint is as its file has it

    /// "slip at 1.72", or the trouble.
    [[nodiscard]] std::string what_governs() const;
    /// Exposures in which a part does not outlive the promise.
    [[nodiscard]] std::size_t exposures_failed() const;
    /// The shortest life of any part in any exposure.
    [[nodiscard]] Duration shortest_life() const;
    /// The same of what cannot be renewed: the aluminium.
    [[nodiscard]] Duration shortest_wall_life() const;
    /// Sum of the logarithms of the lives of all that aluminium: where the shortest are equal, the others tell.
    [[nodiscard]] double wall_lives() const;
};

/// One thing changed besides, on the best method: what a designer could do when nothing passes.
struct Lever {
    std::string name;
    bool holds = false, passes = false;
    Duration first, wall;  ///< shortest life of any part, and of the aluminium
};

struct IsolationTask {
    const Node& root;
    const Tables& tables;
    std::vector<Row<Exposure>> exposures;  ///< in place of the joint file's, where not empty
    FileReader read_file = {};
    bool faying_only = false;  ///< only the element between the faces changes; bolt, tube and edges stay as the file has them
};

inline constexpr std::size_t most_compositions = 20000;

struct IsolationRanking {
    std::string title;
    Duration promised;
    std::vector<Row<Exposure>> exposures;
    std::vector<MethodResult> results;        ///< best first
    std::vector<std::size_t> of_each_faying;  ///< the best result of each element for the faying faces, best first
    std::optional<std::size_t> as_written;    ///< the result that the joint file describes, if a composition does
    bool earth_bridges = true;
    std::vector<Lever> levers;  ///< for the best method, where none passes; the last is all of them together
    std::vector<std::string> warnings;

    [[nodiscard]] const MethodResult& best() const { return results.front(); }
};

/// Ranks every composition: those that pass first, then those that hold and begin with a coat; then by exposures failed,
/// by the lives of the aluminium, which nobody renews, by the shortest life (lives within 1 % are equal), by whether they hold, by
/// utilisation, and by how few steps they ask for. Nothing after a mistake in the file. The task must outlive the ranking.
[[nodiscard]] std::optional<IsolationRanking> rank_isolation(const IsolationTask& task, Diagnostics& diagnostics);

/// A paragraph: which method to choose, and why.
[[nodiscard]] std::string advice(const IsolationRanking& ranking);

}  // namespace faywright
