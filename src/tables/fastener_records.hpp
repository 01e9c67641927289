// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/field.hpp"
#include "quantity/quantity.hpp"

#include <optional>
#include <string>
#include <vector>

namespace faywright {

/// A metric coarse thread with the hexagon head, nut and holes that belong to it.
struct Thread {
    static constexpr std::string_view table = "threads", row_key = "thread";
    Length diameter, pitch, across_flats, across_corners, head_height, head_bearing_diameter, nut_bearing_diameter;
    Length nut_height, nut_height_least, thread_length_to_125, thread_length_to_200, thread_length_over_200;
    Length hole_fine, hole_medium, hole_coarse;
    Length major_diameter_least, pitch_diameter_least, nut_minor_diameter_most, nut_pitch_diameter_most;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        const Range size{mm(1), mm(200)};
        field(Name{"diameter", "d", "nominal diameter"}, self.diameter, Range{mm(3), mm(64)});
        field(Name{"pitch", "P", "thread pitch"}, self.pitch, Range{mm(0.35), mm(6)});
        field(Name{"across-flats", "s", "width across flats"}, self.across_flats, size);
        field(Name{"across-corners", "e", "width across corners"}, self.across_corners, size);
        field(Name{"head-height", "k", "height of the hexagon head"}, self.head_height, size);
        field(Name{"head-bearing-diameter", "d_W", "least outer diameter of the head's bearing face"}, self.head_bearing_diameter, size);
        field(Name{"nut-bearing-diameter", "d_Wn", "least outer diameter of the nut's bearing face"}, self.nut_bearing_diameter, size);
        field(Name{"nut-height", "m", "greatest nut height"}, self.nut_height, size);
        field(Name{"nut-height-least", "m_min", "least nut height"}, self.nut_height_least, size);
        field(Name{"thread-length-to-125", "b_1", "thread length of bolts up to 125 mm"}, self.thread_length_to_125, size);
        field(Name{"thread-length-to-200", "b_2", "thread length of bolts over 125 to 200 mm"}, self.thread_length_to_200, size);
        field(Name{"thread-length-over-200", "b_3", "thread length of bolts over 200 mm"}, self.thread_length_over_200, size);
        field(Name{"hole-fine", "", "clearance hole, fine series"}, self.hole_fine, size);
        field(Name{"hole-medium", "", "clearance hole, medium series"}, self.hole_medium, size);
        field(Name{"hole-coarse", "", "clearance hole, coarse series"}, self.hole_coarse, size);
        field(Name{"major-diameter-least", "d_min", "least major diameter of the bolt thread, 6g"}, self.major_diameter_least, size);
        field(Name{"pitch-diameter-least", "d_2min", "least pitch diameter of the bolt thread, 6g"}, self.pitch_diameter_least, size);
        field(Name{"nut-minor-diameter-most", "D_1max", "greatest minor diameter of the nut thread, 6H"}, self.nut_minor_diameter_most,
              size);
        field(Name{"nut-pitch-diameter-most", "D_2max", "greatest pitch diameter of the nut thread, 6H"}, self.nut_pitch_diameter_most,
              size);
    }
    static const char* fault(const Thread& t) {
        if (t.hole_fine > t.hole_medium || t.hole_medium > t.hole_coarse || t.hole_fine < t.diameter)
            return "clearance holes are not in order";
        if (t.pitch_diameter_least > t.diameter || t.across_flats > t.across_corners) return "diameters are not in order";
        if (4.0 * t.pitch > t.diameter) return "the pitch is more than a quarter of the diameter";
        if (t.major_diameter_least > t.diameter || t.pitch_diameter_least >= t.major_diameter_least ||
            t.nut_minor_diameter_most >= t.major_diameter_least || t.nut_pitch_diameter_most >= t.diameter ||
            t.nut_minor_diameter_most >= t.nut_pitch_diameter_most)
            return "the threads of bolt and nut do not meet";
        if (t.head_bearing_diameter <= t.hole_medium || t.nut_bearing_diameter <= t.hole_medium ||
            t.head_bearing_diameter > t.across_flats || t.nut_bearing_diameter > t.across_flats)
            return "a bearing face must be wider than the medium hole and no wider than across flats";
        if (t.nut_height_least > t.nut_height) return "the least nut height is above the greatest";
        return nullptr;
    }
};

/// Preferred lengths of bolts.
struct StandardLength {
    static constexpr std::string_view table = "lengths", row_key = "standard-length";
    std::vector<Length> lengths;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"lengths", "", "preferred lengths"}, self.lengths, Range{mm(5), mm(1000)});
    }
    static const char* fault(const StandardLength& row) {
        return std::is_sorted(row.lengths.begin(), row.lengths.end()) && !row.lengths.empty() ? nullptr : "lengths are not in rising order";
    }
};

struct Washer {
    static constexpr std::string_view table = "washers", row_key = "washer";
    std::string series, size;
    Length inside_diameter, outside_diameter, thickness;
    double hardness_hv = 200.0;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"series", "", "standard of the washer"}, self.series);
        field(Name{"size", "", "thread size it belongs to"}, self.size);
        field(Name{"inside-diameter", "d_1", "hole"}, self.inside_diameter, Range{mm(3), mm(100)});
        field(Name{"outside-diameter", "d_2", "outside diameter"}, self.outside_diameter, Range{mm(5), mm(200)});
        field(Name{"thickness", "h", "thickness"}, self.thickness, Range{mm(0.5), mm(30)});
        field(Name{"hardness-hv", "", "Vickers hardness"}, self.hardness_hv, Range{80.0, 500.0});
    }
    static const char* fault(const Washer& w) {
        return w.inside_diameter < w.outside_diameter ? nullptr : "the hole is not smaller than the washer";
    }
};

struct BoltClass {
    static constexpr std::string_view table = "bolt-classes", row_key = "bolt-class";
    std::string bolt_class;
    std::optional<Length> above_diameter, up_to_diameter;
    Stress ultimate_strength, proof_strength;
    std::optional<Stress> proof_stress;
    Stress nominal_ultimate_strength, nominal_yield_strength;
    double shear_factor_thread = 0.5, shear_strength_ratio = 0.6;
    std::optional<double> hardness_most_hv;
    std::string nut_class;
    bool preloadable = false;
    Stress elastic_modulus;
    Expansion expansion;
    std::string family;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        const Range strength{MPa(100), MPa(2000)};
        field(Name{"class", "", "property class"}, self.bolt_class);
        field(Name{"above-diameter", "", "holds above this diameter"}, self.above_diameter, Range{mm(1), mm(100)});
        field(Name{"up-to-diameter", "", "holds up to this diameter"}, self.up_to_diameter, Range{mm(1), mm(100)});
        field(Name{"ultimate-strength", "R_m", "least tensile strength"}, self.ultimate_strength, strength);
        field(Name{"proof-strength", "R_p02", "least yield or 0.2 % proof strength"}, self.proof_strength, strength);
        field(Name{"proof-stress", "S_p", "stress under proof load"}, self.proof_stress, strength);
        field(Name{"nominal-ultimate-strength", "f_ub", "nominal ultimate strength of the structural codes"},
              self.nominal_ultimate_strength, strength);
        field(Name{"nominal-yield-strength", "f_yb", "nominal yield strength of the structural codes"}, self.nominal_yield_strength,
              strength);
        field(Name{"shear-factor-thread", "alpha_v", "shear factor with the thread in the shear plane"}, self.shear_factor_thread,
              Range{0.3, 0.8});
        field(Name{"shear-strength-ratio", "", "shear strength over tensile strength of the thread"}, self.shear_strength_ratio,
              Range{0.4, 1.0});
        field(Name{"hardness-most-hv", "", "greatest Vickers hardness"}, self.hardness_most_hv, Range{100.0, 700.0});
        field(Name{"nut-class", "", "matching nut class"}, self.nut_class);
        field(Name{"preloadable", "", "structural codes allow design with controlled preload"}, self.preloadable);
        field(Name{"elastic-modulus", "E_S", "modulus of elasticity"}, self.elastic_modulus, Range{GPa(50), GPa(250)});
        field(Name{"expansion", "alpha_S", "thermal expansion"}, self.expansion, Range{per_K(5e-6), per_K(30e-6)});
        field(Name{"family", "", "family of steel"}, self.family);
    }
    static const char* fault(const BoltClass& c) {
        if (c.proof_strength > c.ultimate_strength || c.nominal_yield_strength > c.nominal_ultimate_strength) return "yield above ultimate";
        if (c.proof_stress && *c.proof_stress > c.proof_strength) return "proof stress above yield";
        if (c.above_diameter && c.up_to_diameter && *c.above_diameter >= *c.up_to_diameter) return "the diameter range is empty";
        return nullptr;
    }
    /// Whether the row is that of a bolt of this diameter.
    [[nodiscard]] bool holds_for(Length diameter) const {
        return (!above_diameter || diameter > *above_diameter) && (!up_to_diameter || diameter <= *up_to_diameter);
    }
    /// Carbon or alloy steel; else stainless.
    [[nodiscard]] bool is_carbon() const { return family == "carbon steel"; }
};

struct Nut {
    static constexpr std::string_view table = "nuts", row_key = "nut";
    std::string size, nut_class;
    Force proof_load;
    bool oversize = false;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"size", "", "thread size"}, self.size);
        field(Name{"class", "", "property class"}, self.nut_class);
        field(Name{"proof-load", "", "proof load"}, self.proof_load, Range{kN(1), kN(5000)});
        field(Name{"oversize", "", "tapped oversize for a galvanised bolt"}, self.oversize, defaulted);
    }
};

/// What a locking nut of a size may take before it clamps.
struct LockingNut {
    static constexpr std::string_view table = "locking-nuts", row_key = "locking-nut";
    Moment prevailing_torque;
    std::optional<Length> height;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"height", "h", "greatest height"}, self.height, Range{mm(1), mm(100)});
        field(Name{"prevailing-torque", "M_p", "greatest torque of the first run down"}, self.prevailing_torque, Range{Nm(0.1), Nm(500)});
    }
};

/// The surface of a bolt as it is tightened: coating and lubricant.
struct Finish {
    static constexpr std::string_view table = "finishes", row_key = "finish";
    std::string kind;
    bool lubricated = false;
    Length coating_thickness;
    double thread_friction_low = 0, thread_friction_high = 0, head_friction_low = 0, head_friction_high = 0;
    Length nut_oversize;
    double nut_oversize_per_pitch = 0, fatigue_factor = 1, embedding_loss_fraction = 0;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        const Range friction{0.03, 0.8};
        field(Name{"kind", "", "kind of coating"}, self.kind);
        field(Name{"lubricated", "", "a lubricant is part of the finish"}, self.lubricated);
        field(Name{"coating-thickness", "", "thickness of the coating"}, self.coating_thickness, Range{um(0), um(500)});
        field(Name{"thread-friction-low", "", "thread friction, low end"}, self.thread_friction_low, friction);
        field(Name{"thread-friction-high", "", "thread friction, high end"}, self.thread_friction_high, friction);
        field(Name{"head-friction-low", "", "friction under the turned part, low end"}, self.head_friction_low, friction);
        field(Name{"head-friction-high", "", "friction under the turned part, high end"}, self.head_friction_high, friction);
        field(Name{"nut-oversize", "", "oversize tapping of the nut, fixed part"}, self.nut_oversize, Range{um(0), um(1000)});
        field(Name{"nut-oversize-per-pitch", "", "oversize tapping of the nut, part in proportion to pitch"}, self.nut_oversize_per_pitch,
              Range{0.0, 0.5});
        field(Name{"fatigue-factor", "", "fatigue strength against the plain bolt"}, self.fatigue_factor, Range{0.1, 1.0});
        field(Name{"embedding-loss-fraction", "", "share of preload the coating loses in the first days"}, self.embedding_loss_fraction,
              Range{0.0, 0.5});
    }
    static const char* fault(const Finish& f) {
        return f.thread_friction_low <= f.thread_friction_high && f.head_friction_low <= f.head_friction_high
                   ? nullptr
                   : "a friction band is upside down";
    }
};

struct TighteningMethod {
    static constexpr std::string_view table = "tightening", row_key = "tightening-method";
    double factor_low = 1, factor_high = 1, tool_scatter = 0;
    bool uses_torque = true;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"factor-low", "", "tightening factor, good practice"}, self.factor_low, Range{1.0, 6.0});
        field(Name{"factor-high", "", "tightening factor, poor practice"}, self.factor_high, Range{1.0, 6.0});
        field(Name{"tool-scatter", "", "scatter of the tool alone, plus or minus"}, self.tool_scatter, Range{0.0, 0.9});
        field(Name{"uses-torque", "", "preload follows from torque and friction"}, self.uses_torque);
    }
    static const char* fault(const TighteningMethod& t) { return t.factor_low <= t.factor_high ? nullptr : "the factors are upside down"; }
};

}  // namespace faywright
