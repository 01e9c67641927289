// SPDX-License-Identifier: MIT
#pragma once

#include "joint/joint_file.hpp"
#include "tables/tables.hpp"

#include <functional>
#include <string>
#include <vector>

/// A joint with every name resolved and every default decided: what the assessment reads.
/// z is the bolt axis, x runs along the rail, y across it; parts are listed from head to nut.
namespace faywright {

inline constexpr std::size_t most_bolts = 40;
inline constexpr std::size_t most_cases = 60;
inline constexpr std::size_t most_parts = 12;
inline constexpr std::size_t most_exposures = 12;

/// Edges of a ply. A side that runs on beyond the joint stands `far_away`.
struct Outline {
    Length x_min, x_max, y_min, y_max;
};
inline const Length far_away = mm(50000);

enum class PlyRole { plate, near_wall, far_wall };

/// One thickness of metal the bolts pass.
struct Ply {
    std::string name;
    std::string path;  ///< where the joint file describes it, for messages
    PlyRole role = PlyRole::plate;
    Side side = Side::attached;
    Row<Material> material;
    Length thickness, hole_diameter;
    Length bearing_diameter;  ///< what presses on the wall of the hole: the bolt, or a tube through the walls
    Outline outline;
    DesignMethod method = DesignMethod::en_1999;
    Stress proof_strength, ultimate_strength;  ///< beside a weld where the holes are weld-affected
    Row<Surface> surface;
    std::optional<Length> lever_to_web;
    bool galvanised = false;  ///< under its paint or powder
    std::optional<Length> zinc_thickness;

    [[nodiscard]] bool is_aluminium() const { return material.family == Family::aluminium; }
};

/// A layer between plies, with what the joint file or the table says of it.
struct Layer {
    std::string path;
    Row<LayerMaterial> material;
    Length thickness;
};

/// A pair of faces that slips when the joint slips.
struct FayingPlane {
    int head_ply = 0, nut_ply = 0;  ///< plies on either side
    std::optional<int> layer;       ///< index of the layer between them
    double slip_factor = 0, slip_factor_low = 0, slip_factor_high = 0;
    RowSource source;
    std::string own_table;  ///< the shop's file the slip factor comes from, if it does
    std::string words;      ///< "mill finish / hot-dip galvanised, jointing compound between"
};

struct Tube {
    TubeArrangement arrangement = TubeArrangement::none;
    Row<Material> material;
    std::optional<Row<StockTube>> stock;  ///< chosen by the file, or by the assessment
    std::optional<Row<Coating>> coating;
    std::vector<Row<StockTube>> candidates;  ///< stocked sizes the assessment may choose from, lightest first
    std::optional<Length> length;            ///< cut length the file gives; always there for a tube through the walls
    Length length_tolerance, squareness, hole_clearance, chamfer;
};

/// The hollow section, where the joint has one.
struct Section {
    std::string name, path;
    Row<Material> material;
    Length width, height, wall, web, height_tolerance, offset_y;
    Tube tube;

    [[nodiscard]] Length clear_width() const { return width - 2.0 * web; }
    [[nodiscard]] Length inside_height() const { return height - 2.0 * wall; }
};

enum class StackKind { washer, ply, layer, cavity };

/// One entry of the clamped stack, head to nut. `index` points into plies or layers.
struct StackEntry {
    StackKind kind = StackKind::ply;
    int index = 0;
    Length thickness;
};

struct Bolt {
    Row<Thread> thread;
    Row<BoltClass> property_class;
    Row<Finish> finish;
    Row<Nut> nut;
    Length nut_oversize = mm(0);  ///< of the nut's thread over the standard one
    std::optional<Row<Washer>> head_washer, nut_washer;
    std::optional<Length> zinc_thickness;
    Length length, thread_length;
    Length hole_diameter;
    bool length_chosen = false, rolled_after_heat_treatment = false;

    /// Least thickness of its coat: as ordered, or of its finish.
    [[nodiscard]] Length zinc() const { return zinc_thickness.value_or(finish.coating_thickness); }
    [[nodiscard]] const std::optional<Row<Washer>>& washer(bool at_head) const { return at_head ? head_washer : nut_washer; }
    /// Of head or nut.
    [[nodiscard]] Length bearing_diameter(bool at_head) const {
        return at_head ? thread.head_bearing_diameter : thread.nut_bearing_diameter;
    }
};

struct Tightening {
    Row<TighteningMethod> method;
    std::optional<Moment> torque;
    double proof_utilisation = 0.75;
    Moment prevailing_torque;
    bool retighten = true;
};

struct LoadCase {
    std::string name;
    LoadFormat format = LoadFormat::static_load;
    double load_factor = 1.0;
    Length at_x, at_y, at_z;
    Force force_x, force_y, force_z;
    Moment moment_x, moment_y, moment_z;
    std::optional<double> cycles;
    bool reverses = true;

    [[nodiscard]] bool is_static() const { return format == LoadFormat::static_load; }
    /// A case of fatigue whose load goes to its opposite and back.
    [[nodiscard]] bool swings() const { return cycles && reverses; }
    /// Moment of the whole load in the plane of the joint.
    [[nodiscard]] Moment turning_about(const Position& p) const { return moment_z + (at_x - p.x) * force_y - (at_y - p.y) * force_x; }
};

/// Where the joint lives, and what of its isolation is no part of the stack.
struct Surroundings {
    std::vector<Row<Exposure>> exposures;  ///< none: corrosion is not assessed
    std::optional<Row<IsolationElement>> fixing, edges;
    bool earth_bridges = true, cavity_waxed = false, maintained = false;
};

struct Joint {
    std::string title;
    Row<ServiceClass> service;
    Duration life;
    Bolt bolt;
    Tightening tightening;
    std::vector<Position> positions;
    std::vector<Ply> plies;
    std::vector<Layer> layers;
    std::vector<FayingPlane> planes;
    std::vector<StackEntry> stack;
    std::optional<Section> section;
    Temperature assembly = degC(20), coldest = degC(-20), hottest = degC(60);
    std::vector<LoadCase> load_cases;
    Surroundings surroundings;
    OverridesFile overrides;
    Row<Embedding> embedding;

    /// What was assumed because the file did not say, for the output.
    std::vector<DefaultTaken> defaults;
    /// Of the trailer file, where one gives the loads: what is unusual there, and the shop's own rules it used.
    std::vector<std::string> load_warnings, own_load_rules;

    /// Washer face to washer face, tube at its nominal length.
    [[nodiscard]] Length grip() const;
    /// Grip, nut and two pitches.
    [[nodiscard]] Length least_bolt_length() const;
    /// The section's wall at the head; nullptr without a section.
    [[nodiscard]] const Ply* near_wall() const;
    /// Where the rail's centre line lies: z = 0 is where an attached plate meets the rail's side, or the middle of the section where
    /// attached plates lie on both its faces. Only with a section.
    [[nodiscard]] Length rail_axis_z() const;
    /// Between the two bolts nearest each other; `far_away` for a single bolt.
    [[nodiscard]] Length least_spacing() const;
    /// Where bolts stand along an axis, each place once, in order.
    [[nodiscard]] std::vector<Length> places_along(Length Position::*axis) const;
    /// The outermost bolts along the rail: least and greatest x.
    [[nodiscard]] std::pair<Length, Length> ends_along_x() const;
};

/// Another file that a joint file names: how messages call it, and its text.
struct NamedText {
    std::string name, text;
};
/// Reads the file at a path written in the joint file; nothing where it cannot be read. The caller knows from where paths start.
using FileReader = std::function<std::optional<NamedText>(const std::string& path)>;

/// Reads a joint from TOML text. Every mistake goes to the diagnostics; the joint is whole only if none came. Without `read_file` a joint
/// that names a trailer file is refused.
[[nodiscard]] std::optional<Joint> read_joint(const std::string& text, const std::string& file, const Tables& tables,
                                              Diagnostics& diagnostics, const FileReader& read_file = {});

/// The same from a tree already read. What the file leaves to a search under `choices` is passed over.
[[nodiscard]] std::optional<Joint> read_joint(const Node& root, const Tables& tables, Diagnostics& diagnostics,
                                              const FileReader& read_file = {});

/// Reads a site file: an exposure of one's own.
[[nodiscard]] std::optional<Row<Exposure>> read_site(const std::string& text, const std::string& file, Diagnostics& diagnostics);

/// Positions of a grid about the origin, columns along x.
[[nodiscard]] std::vector<Position> grid_of(int rows, int columns, Length pitch_x, Length pitch_y);

}  // namespace faywright
