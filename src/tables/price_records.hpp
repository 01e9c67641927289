// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/field.hpp"
#include "quantity/quantity.hpp"

namespace faywright {

/// What a shop pays, in its own money. A row's name says what it is for, the more exact first: "bolt M16 8.8", "bolt M16", "bolt 8.8",
/// "bolt"; "nut M16", "nut"; "washer ISO 7089", "washer"; "tube steel 28 x 5", "tube steel", "tube"; "plate steel", "plate";
/// "layer jointing compound", "layer"; "bolting M16", "bolting" for the work of one bolt with its holes.
struct Price {
    static constexpr std::string_view table = "prices", row_key = "price";
    double each = 0, per_kilogram = 0;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        const Range money{0.0, 1e6};
        field(Name{"each", "", "for one piece"}, self.each, money, defaulted);
        field(Name{"per-kilogram", "", "for a kilogram of it, besides"}, self.per_kilogram, money, defaulted);
    }
    static const char* fault(const Price& p) { return p.each > 0.0 || p.per_kilogram > 0.0 ? nullptr : "no price is given"; }
};

}  // namespace faywright
