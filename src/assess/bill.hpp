// SPDX-License-Identifier: MIT
#pragma once

#include "assess/state.hpp"

#include <optional>
#include <string>
#include <vector>

/// What a joint is made of, for choosing among joints: mass, pieces and cost.
namespace faywright {

/// The tube round each bolt; none where `stock` is nullptr.
struct TubeCut {
    const Row<StockTube>* stock = nullptr;
    Length length;
};

/// Bolts, nuts, washers, tubes, plates and layers. Plates that run on beyond the joint count as pieces, in mass as nothing; so do
/// layers. The rail itself is not counted. Head and nut are taken as their hexagon prisms.
struct Bill {
    Mass mass = kg(0);
    int pieces = 0;
};
[[nodiscard]] Bill bill_of(const Joint& joint, const TubeCut& tube);

/// Equal pieces of a joint, in the order bolt, nut, washers, tube, plates, layers.
struct Piece {
    std::string what;  ///< "bolt", "nut", "washer", "tube", "plate", "layer"
    int count = 0;
    Mass each = kg(0);            ///< nothing for what runs on, and for layers
    std::optional<double> price;  ///< of one, by the table `prices`
};
[[nodiscard]] std::vector<Piece> pieces_of(const Joint& joint, const TubeCut& tube, const Tables& tables);

/// Cost in the shop's money, by the table `prices`; the work of a bolt with its holes is the row "bolting".
struct Cost {
    double sum = 0.0;
    std::string missing;  ///< the first thing without a price; the sum is none then
};
[[nodiscard]] Cost cost_of(const Joint& joint, const TubeCut& tube, const Tables& tables);

}  // namespace faywright
