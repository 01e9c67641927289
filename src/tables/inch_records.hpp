// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/field.hpp"
#include "quantity/quantity.hpp"

#include <cmath>
#include <optional>
#include <string>

namespace faywright {

/// A unified inch thread with the hexagon cap screw cut to it.
struct InchThread {
    static constexpr std::string_view table = "inch-threads", row_key = "inch-thread";
    std::string size, series;
    Length diameter, pitch, across_flats;
    double threads_per_inch = 0;
    Area stress_area;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"size", "", "nominal size in inches"}, self.size);
        field(Name{"series", "", "thread series"}, self.series);
        field(Name{"diameter", "d", "basic major diameter"}, self.diameter, Range{mm(3), mm(64)});
        field(Name{"threads-per-inch", "n", "an inch over the pitch"}, self.threads_per_inch, Range{4.0, 80.0});
        field(Name{"pitch", "P", "thread pitch"}, self.pitch, Range{mm(0.3), mm(6.5)});
        field(Name{"stress-area", "A_s", "tensile stress area"}, self.stress_area, Range{mm2(5), mm2(2500)});
        field(Name{"across-flats", "s", "greatest width across flats of the hexagon cap screw"}, self.across_flats, Range{mm(5), mm(100)});
    }
    static const char* fault(const InchThread& t) {
        const double off = static_cast<double>(t.pitch * t.threads_per_inch / mm(25.4)) - 1.0;
        if (std::abs(off) > 1e-5) return "the pitch is not an inch over the threads per inch";
        if (t.stress_area >= pi / 4.0 * squared(t.diameter) || t.stress_area <= pi / 4.0 * squared(t.diameter - 1.3 * t.pitch))
            return "the stress area is not between that of the root and that of the shank";
        return t.across_flats > t.diameter ? nullptr : "the head is not wider than the thread";
    }
};

/// A grade of inch bolts.
struct InchGrade {
    static constexpr std::string_view table = "sae-grades", row_key = "sae-grade";
    std::string grade, material, hardness_scale;
    Length from_diameter, up_to_diameter;
    bool above = false;
    Stress proof_stress, yield_strength, ultimate_strength;
    double hardness_least = 0, hardness_most = 0, hardness_most_hv = 0;
    bool low_carbon_martensite = false;
    std::optional<std::string> marking;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        const Range strength{MPa(100), MPa(2000)};
        const Range diameter{mm(3), mm(64)};
        field(Name{"grade", "", "grade"}, self.grade);
        field(Name{"from-diameter", "", "holds from this diameter"}, self.from_diameter, diameter);
        field(Name{"above", "", "holds above it only"}, self.above, defaulted);
        field(Name{"up-to-diameter", "", "holds up to this diameter"}, self.up_to_diameter, diameter);
        field(Name{"proof-stress", "S_p", "stress under proof load"}, self.proof_stress, strength);
        field(Name{"yield-strength", "R_p02", "least yield strength"}, self.yield_strength, strength);
        field(Name{"ultimate-strength", "R_m", "least tensile strength"}, self.ultimate_strength, strength);
        field(Name{"hardness-scale", "", "scale of the hardness limits"}, self.hardness_scale);
        field(Name{"hardness-least", "", "least core hardness"}, self.hardness_least, Range{10.0, 120.0});
        field(Name{"hardness-most", "", "greatest core hardness"}, self.hardness_most, Range{10.0, 120.0});
        field(Name{"hardness-most-hv", "", "greatest core hardness converted to Vickers"}, self.hardness_most_hv, Range{100.0, 700.0});
        field(Name{"material", "", "steel and its treatment"}, self.material);
        field(Name{"low-carbon-martensite", "", "of low-carbon martensite"}, self.low_carbon_martensite, defaulted);
        field(Name{"marking", "", "grade mark on the head"}, self.marking);
    }
    static const char* fault(const InchGrade& g) {
        if (g.from_diameter >= g.up_to_diameter) return "the diameter range is empty";
        if (g.proof_stress > g.yield_strength || g.yield_strength > g.ultimate_strength) return "the strengths are not in order";
        return g.hardness_least < g.hardness_most ? nullptr : "the hardness range is empty";
    }
    [[nodiscard]] bool holds_for(Length diameter) const {
        return (above ? diameter > from_diameter : diameter >= from_diameter) && diameter <= up_to_diameter;
    }
};

/// A product standard as the trade names it; an old one with its successor, where the old one itself leads to it.
struct ProductStandard {
    static constexpr std::string_view table = "designations", row_key = "designation";
    std::string title;
    std::optional<std::string> part;  ///< bolt, nut or washer; absent where the standard covers a set
    std::optional<std::string> successor;
    bool assembly = false;
    std::optional<bool> fully_threaded;
    bool fine = false, prevailing_torque = false, lower_nut = false;
    std::optional<double> softest_hv;
    std::optional<std::string> unfit;
    std::optional<Length> width_m10, width_m12, width_m14, width_m22;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        const Range width{mm(10), mm(60)};
        field(Name{"title", "", "what it standardises"}, self.title);
        field(Name{"part", "", "kind of part"}, self.part);
        field(Name{"successor", "", "standard that took its place"}, self.successor);
        field(Name{"assembly", "", "a standard of bolt, nut and washer as a set, beside which a product standard may stand"}, self.assembly,
              defaulted);
        field(Name{"fully-threaded", "", "thread runs to the head"}, self.fully_threaded);
        field(Name{"fine", "", "metric fine pitch thread"}, self.fine, defaulted);
        field(Name{"prevailing-torque", "", "a locking nut"}, self.prevailing_torque, defaulted);
        field(Name{"lower-nut", "", "a nut lower than its successor, with lower proof loads"}, self.lower_nut, defaulted);
        field(Name{"softest-hv", "", "Vickers hardness of washers sold by it, where its successor asks for more"}, self.softest_hv,
              Range{50.0, 500.0});
        field(Name{"unfit", "", "why it has no place in a preloaded joint"}, self.unfit);
        field(Name{"width-m10", "", "width across flats of M10 where the successor changed it"}, self.width_m10, width);
        field(Name{"width-m12", "", "width across flats of M12 where the successor changed it"}, self.width_m12, width);
        field(Name{"width-m14", "", "width across flats of M14 where the successor changed it"}, self.width_m14, width);
        field(Name{"width-m22", "", "width across flats of M22 where the successor changed it"}, self.width_m22, width);
    }
    static const char* fault(const ProductStandard& s) {
        if (s.part && *s.part != "bolt" && *s.part != "nut" && *s.part != "washer") return "the part is none of bolt, nut, washer";
        if (!s.part && !s.assembly) return "only the standard of a set may be without part";
        if (s.width_m10.has_value() && !s.successor) return "widths that changed without a successor";
        return nullptr;
    }
    /// Width across flats by the old standard, where the successor has another.
    [[nodiscard]] std::optional<Length> old_width(std::string_view size) const {
        return size == "M10" ? width_m10 : size == "M12" ? width_m12 : size == "M14" ? width_m14 : size == "M22" ? width_m22 : std::nullopt;
    }
};

}  // namespace faywright
