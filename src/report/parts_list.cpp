// SPDX-License-Identifier: MIT
#include "report/parts_list.hpp"

#include "assess/ordered.hpp"
#include "quantity/text.hpp"
#include "report/layout.hpp"

#include <fmt/format.h>

#include <cmath>

namespace faywright {

std::string parts_list_csv(const Assessment& a, const Tables& tables, int joints) {
    std::string out = "item,quantity,part,designation,material,finish,mass each (kg),mass of all (kg),price each,price of all,note\n";
    int item = 0;
    for (auto& [piece, ordered] : ordered_pieces(a, tables)) {
        if (piece.what == "plate" && piece.each == kg(0)) ordered.note = "runs on beyond the joint: its mass is not reckoned here";
        const int quantity = piece.count * joints;
        const bool weighed = piece.each > kg(0);
        // What is paid is a whole number of the least coin, and the sum can be followed.
        const auto price = piece.price ? std::optional(std::round(100.0 * *piece.price) / 100.0) : std::nullopt;
        if (!a.passes) ordered.note = "NOT TO BE BUILT: the joint fails" + (ordered.note.empty() ? "" : "; " + ordered.note);
        out += fmt::format("{},{},{},{},{},{},{},{},{},{},{}\n", ++item, quantity, csv_cell(piece.what), csv_cell(ordered.designation),
                           csv_cell(ordered.material), csv_cell(ordered.finish), weighed ? print_number(in_kg(piece.each), 3) : "",
                           weighed ? print_number(quantity * in_kg(piece.each), 3) : "", price ? fmt::format("{:.2f}", *price) : "",
                           price ? fmt::format("{:.2f}", quantity * *price) : "", csv_cell(ordered.note));
    }
    return out;
}

}  // namespace faywright
