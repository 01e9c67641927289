// SPDX-License-Identifier: MIT
#pragma once

#include "assess/assessment.hpp"
#include "assess/bill.hpp"

#include <string>
#include <vector>

/// What the parts of a joint are called where they are ordered, stored and fitted: parts list and sheets say the same.
namespace faywright {

/// What a part is called.
struct Ordered {
    std::string designation, material, finish, note;
};

/// Equal pieces with their name.
struct OrderedPiece {
    Piece piece;
    Ordered ordered;
};

/// Every piece of an assessed joint, in the order of `pieces_of`.
[[nodiscard]] std::vector<OrderedPiece> ordered_pieces(const Assessment& assessment, const Tables& tables);

/// What stands on the head of a bolt besides the maker's mark: "8.8".
[[nodiscard]] std::string head_mark(const Bolt& bolt);

/// What stands on a nut besides the maker's mark: "8", "A4-80"; of one tapped oversize "8Z or 8X".
[[nodiscard]] std::string nut_mark(const Bolt& bolt);

}  // namespace faywright
