// SPDX-License-Identifier: MIT
#pragma once

#include "mechanics/design_method.hpp"
#include "mechanics/position.hpp"
#include "quantity/field.hpp"
#include "quantity/quantity.hpp"

#include <optional>
#include <string>
#include <variant>
#include <vector>

/// A joint as a person writes it: names of table rows still unresolved, absent values still absent.
/// The descriptions here are the file format; `fields` of the documentation and the bad-input tests are loops over them.
namespace faywright {

enum class HoleSeries { fine, medium, coarse };
template <>
struct Words<HoleSeries> {
    static constexpr std::array<std::pair<HoleSeries, std::string_view>, 3> all{
        {{HoleSeries::fine, "fine"}, {HoleSeries::medium, "medium"}, {HoleSeries::coarse, "coarse"}}};
};

/// Which body a plate moves with: the rail, or the part attached to it.
enum class Side { attached, rail };
template <>
struct Words<Side> {
    static constexpr std::array<std::pair<Side, std::string_view>, 2> all{{{Side::attached, "attached"}, {Side::rail, "rail"}}};
};

enum class TubeArrangement { between_walls, through_walls, none };
template <>
struct Words<TubeArrangement> {
    static constexpr std::array<std::pair<TubeArrangement, std::string_view>, 3> all{{{TubeArrangement::between_walls, "between the walls"},
                                                                                      {TubeArrangement::through_walls, "through the walls"},
                                                                                      {TubeArrangement::none, "none"}}};
};

/// Static loads take the service class's design factor against characteristic resistance; dynamic (peak) loads
/// take their own load factor against design resistance. The two are never mixed.
enum class LoadFormat { static_load, dynamic_load };
template <>
struct Words<LoadFormat> {
    static constexpr std::array<std::pair<LoadFormat, std::string_view>, 2> all{
        {{LoadFormat::static_load, "static"}, {LoadFormat::dynamic_load, "dynamic"}}};
};

/// How the thread of a nut is tapped.
enum class NutThread { standard, oversize };
template <>
struct Words<NutThread> {
    static constexpr std::array<std::pair<NutThread, std::string_view>, 2> all{
        {{NutThread::standard, "standard"}, {NutThread::oversize, "oversize"}}};
};

struct BoltFile {
    std::string size;
    std::optional<Length> length;
    std::string bolt_class, finish;
    std::optional<std::string> nut_class;
    std::optional<NutThread> nut_thread;
    std::optional<Length> zinc_thickness;
    HoleSeries holes = HoleSeries::medium;
    bool fully_threaded = false;
    bool rolled_after_heat_treatment = false;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"size", "", "thread size, a row of the threads table"}, self.size);
        field(Name{"length", "", "length under the head; absent: the shortest standard length that fits"}, self.length,
              Range{mm(10), mm(500)});
        field(Name{"class", "", "property class"}, self.bolt_class);
        field(Name{"finish", "", "coating and lubricant, a row of the finishes table"}, self.finish);
        field(Name{"nut-class", "", "class of the nut; absent: the one that matches the bolt"}, self.nut_class);
        field(Name{"nut-thread", "", "how the nut is tapped: standard or oversize; absent: oversize for a galvanised bolt"},
              self.nut_thread);
        field(Name{"zinc-thickness", "", "zinc ordered or measured; absent: the finish's"}, self.zinc_thickness, Range{um(1), um(200)});
        field(Name{"holes", "", "series of clearance holes"}, self.holes, defaulted);
        field(Name{"fully-threaded", "", "thread runs to the head"}, self.fully_threaded, defaulted);
        field(Name{"rolled-after-heat-treatment", "", "thread rolled after heat treatment"}, self.rolled_after_heat_treatment, defaulted);
    }
};

struct TighteningFile {
    std::string method;
    std::optional<Moment> torque;
    double proof_utilisation = 0.75;
    Moment prevailing_torque = Nm(0);
    bool retighten = true;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"method", "", "a row of the tightening table"}, self.method);
        field(Name{"torque", "", "tightening torque; absent: from the proof utilisation at the low end of friction"}, self.torque,
              Range{Nm(0.5), Nm(5000)});
        field(Name{"proof-utilisation", "", "share of the proof strength the assembly stress may reach when the torque is chosen"},
              self.proof_utilisation, Range{0.2, 1.0}, defaulted);
        field(Name{"prevailing-torque", "", "torque a locking nut takes before it clamps"}, self.prevailing_torque, Range{Nm(0), Nm(200)},
              defaulted);
        field(Name{"retighten", "", "re-tightened after the first service"}, self.retighten, defaulted);
    }
};

struct PatternFile {
    std::optional<std::vector<Position>> positions;
    std::optional<int> rows, columns;
    std::optional<Length> pitch_x, pitch_y;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"positions", "", "bolt positions as a list of [x, y]"}, self.positions);
        field(Name{"rows", "", "number of rows, counted across the rail"}, self.rows, Range{1, 20});
        field(Name{"columns", "", "number of columns, counted along the rail"}, self.columns, Range{1, 20});
        field(Name{"pitch-x", "", "pitch along the rail"}, self.pitch_x, Range{mm(1), mm(5000)});
        field(Name{"pitch-y", "", "pitch across the rail"}, self.pitch_y, Range{mm(1), mm(5000)});
    }
};

/// Edges of a ply in the joint's axes. A side left out runs on beyond the joint.
struct OutlineFile {
    std::optional<Length> x_min, x_max, y_min, y_max;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        const Range coordinate{mm(-20000), mm(20000)};
        field(Name{"x-min", "", "edge towards negative x"}, self.x_min, coordinate);
        field(Name{"x-max", "", "edge towards positive x"}, self.x_max, coordinate);
        field(Name{"y-min", "", "edge towards negative y"}, self.y_min, coordinate);
        field(Name{"y-max", "", "edge towards positive y"}, self.y_max, coordinate);
    }
};

struct WasherFile {
    static constexpr std::string_view kind = "washer";
    std::string series;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"series", "", "standard of the washer, of the bolt's size"}, self.series);
    }
};

struct PlateFile {
    static constexpr std::string_view kind = "plate";
    std::string name, material;
    Length thickness;
    std::string surface;
    OutlineFile outline;
    std::optional<Side> side;
    std::optional<Length> hole_diameter;
    std::optional<DesignMethod> method;
    bool weld_affected = false;
    std::optional<bool> galvanised;
    std::optional<Length> zinc_thickness;
    std::optional<Length> lever_to_web;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"name", "", "what the shop calls it"}, self.name);
        field(Name{"material", "", "a row of the materials table"}, self.material);
        field(Name{"thickness", "", "thickness"}, self.thickness, Range{mm(0.6), mm(60)});
        field(Name{"surface", "", "condition of its faces, a row of the surfaces table"}, self.surface);
        field(Name{"galvanised", "", "hot-dip galvanised under its paint or powder"}, self.galvanised);
        field(Name{"zinc-thickness", "", "zinc ordered or measured; absent: what surface and dipping standard give"}, self.zinc_thickness,
              Range{um(1), um(500)});
        field(Name{"outline", "", "edges"}, self.outline, defaulted);
        field(Name{"side", "", "attached or rail; absent: the plates alternate, beginning with attached"}, self.side);
        field(Name{"hole-diameter", "", "hole; absent: the bolt's clearance hole"}, self.hole_diameter, Range{mm(3), mm(100)});
        field(Name{"method", "", "code of practice for its resistances; absent: by material"}, self.method);
        field(Name{"weld-affected", "", "the holes lie in the heat-affected zone of a weld"}, self.weld_affected, defaulted);
        field(Name{"lever-to-web", "",
                   "bolt axis to the face of the web or weld that holds the plate against tension; absent: no prying check"},
              self.lever_to_web, Range{mm(1), mm(500)});
    }
};

struct LayerFile {
    static constexpr std::string_view kind = "layer";
    std::string material;
    std::optional<Length> thickness;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"material", "", "a row of the layers table"}, self.material);
        field(Name{"thickness", "", "thickness; absent: the usual one"}, self.thickness, Range{um(1), mm(20)});
    }
};

struct TubeFile {
    TubeArrangement arrangement = TubeArrangement::between_walls;
    std::optional<std::string> material, stock, coating;
    std::optional<Length> length;
    Length length_tolerance = mm(0.05), squareness = mm(0.03), hole_clearance = mm(0.3), chamfer = mm(0.2);

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"arrangement", "", "between the walls, through the walls, or none"}, self.arrangement);
        field(Name{"material", "", "a row of the materials table"}, self.material);
        field(Name{"stock", "", "a row of the tubes table; absent: the lightest that serves"}, self.stock);
        field(Name{"coating", "", "a row of the coatings table; absent: bare"}, self.coating);
        field(Name{"length", "",
                   "cut length; absent: that of the cavity, or out of both faces by the tolerances for a tube through the walls"},
              self.length, Range{mm(3), mm(500)});
        field(Name{"length-tolerance", "", "tolerance of the cut length, plus or minus"}, self.length_tolerance, Range{mm(0), mm(2)},
              defaulted);
        field(Name{"squareness", "", "out of square of a cut end, high side to low side"}, self.squareness, Range{mm(0), mm(1)}, defaulted);
        field(Name{"hole-clearance", "", "hole in the wall over the tube's outside diameter, for a tube through the walls"},
              self.hole_clearance, Range{mm(0), mm(3)}, defaulted);
        field(Name{"chamfer", "", "edge broken off at each rim of the tube's ends, lost to the contact"}, self.chamfer, Range{mm(0), mm(2)},
              defaulted);
    }
};

struct SectionFile {
    static constexpr std::string_view kind = "section";
    std::string name, material;
    Length width, height, wall;
    std::optional<Length> web;
    Length height_tolerance = mm(0.3), offset_y = mm(0);
    std::string surface;
    std::optional<Length> x_min, x_max;
    std::optional<Length> hole_diameter;
    std::optional<DesignMethod> method;
    bool weld_affected = false;
    TubeFile tube;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"name", "", "what the shop calls it"}, self.name);
        field(Name{"material", "", "a row of the materials table"}, self.material);
        field(Name{"width", "", "outside width across the rail"}, self.width, Range{mm(15), mm(500)});
        field(Name{"height", "", "outside height along the bolt"}, self.height, Range{mm(15), mm(500)});
        field(Name{"wall", "", "thickness of the walls the bolt passes"}, self.wall, Range{mm(1), mm(25)});
        field(Name{"web", "", "thickness of the webs; absent: as the walls"}, self.web, Range{mm(1), mm(25)});
        field(Name{"height-tolerance", "", "tolerance of the inside height, plus or minus"}, self.height_tolerance, Range{mm(0), mm(3)},
              defaulted);
        field(Name{"offset-y", "", "centre line of the section from the joint's x axis"}, self.offset_y, Range{mm(-500), mm(500)},
              defaulted);
        field(Name{"surface", "", "condition of its faces, a row of the surfaces table"}, self.surface);
        field(Name{"x-min", "", "end of the rail towards negative x; absent: it runs on"}, self.x_min, Range{mm(-20000), mm(20000)});
        field(Name{"x-max", "", "end of the rail towards positive x; absent: it runs on"}, self.x_max, Range{mm(-20000), mm(20000)});
        field(Name{"hole-diameter", "", "hole in the walls; absent: the bolt's clearance hole, or the tube's"}, self.hole_diameter,
              Range{mm(3), mm(150)});
        field(Name{"method", "", "code of practice for its resistances; absent: by material"}, self.method);
        field(Name{"weld-affected", "", "the holes lie in the heat-affected zone of a weld"}, self.weld_affected, defaulted);
        field(Name{"tube", "", "the crush tube"}, self.tube);
    }
};

using PartFile = std::variant<WasherFile, PlateFile, LayerFile, SectionFile>;

/// Above 80 degC aluminium loses the strengths its standards promise (EN 1999-1-1, 3.2.2); below -50 degC the bolts' are not
/// promised (ISO 898-1, scope): both from memory.
struct TemperaturesFile {
    Temperature assembly = degC(20), coldest = degC(-20), hottest = degC(60);

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        const Range weather{degC(-50), degC(80)};
        field(Name{"assembly", "", "when the joint is tightened"}, self.assembly, Range{degC(-30), degC(60)}, defaulted);
        field(Name{"coldest", "", "coldest in service"}, self.coldest, weather, defaulted);
        field(Name{"hottest", "", "hottest in service"}, self.hottest, weather, defaulted);
    }
};

struct PointFile {
    static constexpr bool positional = true;
    Length x, y, z;
    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        const Range coordinate{mm(-20000), mm(20000)};
        field(Name{"x", "", "along the rail"}, self.x, coordinate);
        field(Name{"y", "", "across the rail"}, self.y, coordinate);
        field(Name{"z", "", "out of the rail towards the attached part"}, self.z, coordinate);
    }
};

struct ForceFile {
    static constexpr bool positional = true;
    Force x = newton(0), y = newton(0), z = newton(0);
    friend bool operator==(const ForceFile&, const ForceFile&) = default;
    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        const Range force{kN(-2000), kN(2000)};
        field(Name{"x", "", "along the rail"}, self.x, force);
        field(Name{"y", "", "across the rail"}, self.y, force);
        field(Name{"z", "", "out of the rail: positive pulls the parts apart"}, self.z, force);
    }
};

struct MomentFile {
    static constexpr bool positional = true;
    Moment x = Nm(0), y = Nm(0), z = Nm(0);
    friend bool operator==(const MomentFile&, const MomentFile&) = default;
    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        const Range moment{kNm(-2000), kNm(2000)};
        field(Name{"x", "", "about the x axis"}, self.x, moment);
        field(Name{"y", "", "about the y axis"}, self.y, moment);
        field(Name{"z", "", "about the z axis"}, self.z, moment);
    }
};

/// Load on the attached part, in the joint's axes, at a stated point.
struct LoadCaseFile {
    std::string name;
    LoadFormat format = LoadFormat::static_load;
    std::optional<double> load_factor;
    PointFile at{mm(0), mm(0), mm(0)};
    ForceFile force;
    MomentFile moment;
    std::optional<double> cycles;
    bool reverses = true;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"name", "", "what the case is"}, self.name);
        field(Name{"format", "", "static (design factor) or dynamic (partial factors)"}, self.format);
        field(Name{"load-factor", "", "partial factor on a dynamic load; wanted there, refused on a static one"}, self.load_factor,
              Range{1.0, 3.0});
        field(Name{"at", "", "point where the load acts: [x, y, z]"}, self.at, defaulted);
        field(Name{"force", "", "force: [x, y, z]"}, self.force, defaulted);
        field(Name{"moment", "", "moment: [x, y, z]"}, self.moment, defaulted);
        field(Name{"cycles", "", "number of cycles; absent: no fatigue check for this case"}, self.cycles, Range{1e4, 1e9});
        field(Name{"reverses", "", "in a fatigue case the load swings to its opposite; otherwise it returns to zero"}, self.reverses,
              defaulted);
    }
};

/// Values the designer puts in place of the tables', with the reason printed beside them.
struct OverridesFile {
    std::optional<std::string> reason;
    std::optional<double> slip_factor, thread_friction_low, thread_friction_high, head_friction_low, head_friction_high;
    std::optional<double> tightening_factor, introduction_factor, creep_loss_fraction;
    std::optional<Length> embedding;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        const Range friction{0.03, 0.8};
        field(Name{"reason", "", "why, and from what test"}, self.reason);
        field(Name{"slip-factor", "", "slip factor of the faying surfaces"}, self.slip_factor, Range{0.0, 1.0});
        field(Name{"thread-friction-low", "", "thread friction, low end"}, self.thread_friction_low, friction);
        field(Name{"thread-friction-high", "", "thread friction, high end"}, self.thread_friction_high, friction);
        field(Name{"head-friction-low", "", "friction under the turned part, low end"}, self.head_friction_low, friction);
        field(Name{"head-friction-high", "", "friction under the turned part, high end"}, self.head_friction_high, friction);
        field(Name{"tightening-factor", "", "greatest preload over least, in place of the friction's band"}, self.tightening_factor,
              Range{1.0, 6.0});
        field(Name{"introduction-factor", "", "load introduction factor n"}, self.introduction_factor, Range{0.0, 1.0});
        field(Name{"creep-loss-fraction", "", "share of preload lost to creep of coatings and layers"}, self.creep_loss_fraction,
              Range{0.0, 0.99});
        field(Name{"embedding", "", "total embedding"}, self.embedding, Range{um(0), um(500)});
    }
};

enum class Earth { both_sides, one_side };
template <>
struct Words<Earth> {
    static constexpr std::array<std::pair<Earth, std::string_view>, 2> all{
        {{Earth::both_sides, "both sides"}, {Earth::one_side, "one side"}}};
};

enum class Cavity { drained, waxed };
template <>
struct Words<Cavity> {
    static constexpr std::array<std::pair<Cavity, std::string_view>, 2> all{{{Cavity::drained, "drained"}, {Cavity::waxed, "waxed"}}};
};

/// Where the joint lives and how it is kept from corroding, besides what its parts say.
struct CorrosionFile {
    std::vector<std::string> exposures;
    std::optional<std::string> fixing, edges;
    Earth chassis_earth = Earth::both_sides;
    Cavity cavity = Cavity::drained;
    bool maintained = false;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"exposures", "", "rows of the exposures table, or site files ending in .toml"}, self.exposures, defaulted);
        field(Name{"fixing", "", "what is round the bolt, a row of the isolation table"}, self.fixing);
        field(Name{"edges", "", "how the joint's edges are closed, a row of the isolation table"}, self.edges);
        field(Name{"chassis-earth", "", "lamps are earthed through the metal on both sides of the joint, or on one only"},
              self.chassis_earth, defaulted);
        field(Name{"cavity", "", "inside of the hollow section: drained, or waxed as well"}, self.cavity, defaulted);
        field(Name{"maintained", "", "seals are renewed when their life is over"}, self.maintained, defaulted);
    }
};

struct JointFile {
    std::string title;
    std::string service_class;
    Duration life = years(20);
    BoltFile bolt;
    TighteningFile tightening;
    PatternFile pattern;
    std::vector<PartFile> parts;
    TemperaturesFile temperatures;
    std::optional<std::string> loads, loads_joint;
    std::vector<LoadCaseFile> load_cases;
    CorrosionFile corrosion;
    OverridesFile overrides;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"title", "", "what the joint is"}, self.title);
        field(Name{"service-class", "", "a row of the service table"}, self.service_class);
        field(Name{"life", "", "promised life"}, self.life, Range{years(1), years(100)}, defaulted);
        field(Name{"bolt", "", "the bolt and its nut"}, self.bolt);
        field(Name{"tightening", "", "how the bolts are tightened"}, self.tightening);
        field(Name{"pattern", "", "where the bolts are"}, self.pattern);
        field(Name{"part", "", "the parts from head to nut"}, self.parts);
        field(Name{"temperatures", "", "temperatures"}, self.temperatures, defaulted);
        field(Name{"loads", "", "a trailer file whose load cases come before those given here; its path starts from this file's folder"},
              self.loads);
        field(Name{"loads-joint", "", "which joint of the trailer file; absent: its only one"}, self.loads_joint);
        field(Name{"load-case", "", "the loads; may be absent where a trailer file gives them"}, self.load_cases, defaulted);
        field(Name{"corrosion", "", "where the joint lives"}, self.corrosion, defaulted);
        field(Name{"overrides", "", "values in place of the tables'"}, self.overrides, defaulted);
    }
};

}  // namespace faywright
