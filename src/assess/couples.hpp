// SPDX-License-Identifier: MIT
#pragma once

#include "assess/outlook.hpp"

#include <vector>

/// The galvanic-couple table: any two metals in an exposure, with an element of isolation between them or none.
namespace faywright {

struct CouplesTask {
    const Row<Exposure>& exposure;
    const Tables& tables;
    const Row<IsolationElement>* isolation = nullptr;  ///< for the faying faces; its path counts as if nothing else joined the metals
    double area_ratio = 1.0;                           ///< cathode over anode, whoever that is
    Duration span = years(20);
};

struct CoupleCell {
    const Row<Metal>*first = nullptr, *second = nullptr;
    PairAttack attack;
    double path = 1, electrolyte = 1;
    RateBand added;  ///< to the anode, isolation in it
    Severity severity = Severity::still;
    bool by_design = false;  ///< zinc that pays for steel: what galvanising is for
};

/// One pair. Severity is the worse of the rate's and of what it eats in the span: of 85 um of zinc, of 0.5 mm of pits in aluminium.
[[nodiscard]] CoupleCell couple_cell(const CouplesTask& task, Place& place, const Row<Metal>& first, const Row<Metal>& second);

/// One metal against every other of the table of metals.
[[nodiscard]] std::vector<CoupleCell> couples_with(const CouplesTask& task, const Row<Metal>& metal);

/// Everything published about a pair, in either order.
[[nodiscard]] std::vector<const Row<Compatibility>*> opinions(const Tables& tables, const Row<Metal>& a, const Row<Metal>& b);

/// Derives one cell line by line.
[[nodiscard]] Recorder derive_couple(const CouplesTask& task, const CoupleCell& cell);

}  // namespace faywright
