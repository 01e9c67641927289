// SPDX-License-Identifier: MIT
#pragma once

#include "assess/spread.hpp"
#include "assess/state.hpp"

#include <tuple>

/// What scatters in a joint: one list, over which sampling and every report loop.
namespace faywright {

/// The joint as assessed, which the scatter surrounds.
struct Nominal {
    const Joint& joint;
    const State& state;
    std::array<bool, most_plies> slips{};  ///< planes where friction is counted on
    bool by_factor = false;                ///< preload from a tightening factor, in place of torque and friction
};

/// A joint as it was made: each band is one value.
struct Made {
    Joint joint;
    std::optional<Force> preload;  ///< where it does not come from the torque
    double tool = 1.0;             ///< torque applied over torque set
    Moment prevailing = Nm(0);
    Length wall, height_change;
    double wall_strength = 1.0, plate_strength = 1.0;  ///< over the nominal joint's
};

/// An input as the program knows it: a stable word, what it is, and where its distribution comes from.
struct InputInfo {
    std::string_view id, title, basis_words;
    Basis basis = Basis::practice;
};

namespace inputs {

struct ThreadFriction {
    static constexpr InputInfo info{"thread-friction", "friction in the thread",
                                    "band of the finish or of the overrides, taken for 95 % of the lots; all bolts of a joint alike"};
    static std::optional<Spread<double>> spread(const Nominal& n) {
        const auto& s = n.state;
        if (s.thread_friction_low >= s.thread_friction_high) return std::nullopt;
        return Spread<double>::band(s.thread_friction_low, s.thread_friction_high);
    }
    static void put(Made& m, const Nominal&, double friction, double) {
        m.joint.overrides.thread_friction_low = m.joint.overrides.thread_friction_high = friction;
    }
};

struct HeadFriction {
    static constexpr InputInfo info{"head-friction", "friction under the turned head or nut", ThreadFriction::info.basis_words};
    static std::optional<Spread<double>> spread(const Nominal& n) {
        const auto& s = n.state;
        if (n.by_factor || s.head_friction_low >= s.head_friction_high) return std::nullopt;
        return Spread<double>::band(s.head_friction_low, s.head_friction_high);
    }
    static void put(Made& m, const Nominal&, double friction, double) {
        m.joint.overrides.head_friction_low = m.joint.overrides.head_friction_high = friction;
    }
};

struct ToolScatter {
    static constexpr InputInfo info{"tool", "torque applied over torque set",
                                    "scatter of the tightening table's row, taken for 95 % of the joints; all bolts of a joint alike"};
    static std::optional<Spread<double>> spread(const Nominal& n) {
        if (n.by_factor || n.joint.tightening.method.tool_scatter <= 0.0) return std::nullopt;
        return Spread<double>::tolerance(1.0, n.joint.tightening.method.tool_scatter);
    }
    static void put(Made& m, const Nominal&, double tool, double) { m.tool = max(tool, 0.01); }
};

struct PrevailingTorque {
    static constexpr InputInfo info{"prevailing-torque", "torque the locking nut takes",
                                    "the joint file's is the most: anything from none to it, as likely as not"};
    static std::optional<Spread<Moment>> spread(const Nominal& n) {
        if (n.by_factor || n.joint.tightening.prevailing_torque <= Nm(0)) return std::nullopt;
        return Spread<Moment>::uniform(Nm(0), n.joint.tightening.prevailing_torque);
    }
    static void put(Made& m, const Nominal&, Moment torque, double) { m.prevailing = torque; }
};

struct FactorPreload {
    static constexpr InputInfo info{"preload", "preload of a tightening told by its factor",
                                    "band of the tightening factor, taken for 95 % of the joints"};
    static std::optional<Spread<Force>> spread(const Nominal& n) {
        if (!n.by_factor || n.state.preload.least >= n.state.preload.greatest) return std::nullopt;
        return Spread<Force>::band(n.state.preload.least, n.state.preload.greatest);
    }
    static void put(Made& m, const Nominal&, Force preload, double) { m.preload = preload; }
};

struct EmbeddingAmount {
    static constexpr InputInfo info{"embedding", "embedding over that of the table or of the overrides",
                                    "the table's amounts are guide values; their scatter is assumed"};
    static std::optional<Spread<double>> spread(const Nominal& n) {
        if (n.state.embedding_loss <= newton(0)) return std::nullopt;
        return Spread<double>::log_normal(1.0, 0.30);
    }
    static void put(Made& m, const Nominal& n, double ratio, double) {
        const auto& given = n.joint.embedding;
        m.joint.embedding.thread = ratio * given.thread;
        m.joint.embedding.head = ratio * given.head;
        m.joint.embedding.interface = ratio * given.interface;
        if (n.joint.overrides.embedding) m.joint.overrides.embedding = ratio * *n.joint.overrides.embedding;
    }
};

struct CoatingCreep {
    static constexpr double most = 0.99;
    static constexpr InputInfo info{"coating-creep", "creep of the coatings over that of their rows", "scatter assumed"};
    static std::optional<Spread<double>> spread(const Nominal& n) {
        if (n.state.coating_creep <= 0.0) return std::nullopt;
        return Spread<double>::log_normal(1.0, 0.30);
    }
    static void put(Made& m, const Nominal& n, double ratio, double) {
        const auto crept = [&](double share) { return min(ratio * share, most); };
        m.joint.bolt.finish.embedding_loss_fraction = crept(n.joint.bolt.finish.embedding_loss_fraction);
        for (std::size_t i = 0; i < n.joint.plies.size(); ++i)
            m.joint.plies[i].surface.creep_loss_fraction = crept(n.joint.plies[i].surface.creep_loss_fraction);
        if (const auto& given = n.joint.overrides.creep_loss_fraction) m.joint.overrides.creep_loss_fraction = crept(*given);
    }
};

struct LayerCreep {
    static constexpr InputInfo info{"layer-creep", "creep of the layers over that of their rows", "scatter assumed"};
    static std::optional<Spread<double>> spread(const Nominal& n) {
        if (n.state.layer_creep <= 0.0) return std::nullopt;
        return Spread<double>::log_normal(1.0, 0.30);
    }
    static void put(Made& m, const Nominal& n, double ratio, double) {
        for (std::size_t i = 0; i < n.joint.layers.size(); ++i)
            m.joint.layers[i].material.creep_loss_fraction =
                min(ratio * n.joint.layers[i].material.creep_loss_fraction, CoatingCreep::most);
    }
};

struct Coldest {
    static constexpr InputInfo info{"coldest", "the coldest the joint sees", "the joint file's, with an assumed deviation of 3 K"};
    static std::optional<Spread<Temperature>> spread(const Nominal& n) { return Spread<Temperature>::normal(n.joint.coldest, kelvin(3)); }
    static void put(Made& m, const Nominal&, Temperature t, double) { m.joint.coldest = t; }
};

struct Hottest {
    static constexpr InputInfo info{"hottest", "the hottest the joint sees", "the joint file's, with an assumed deviation of 3 K"};
    static std::optional<Spread<Temperature>> spread(const Nominal& n) { return Spread<Temperature>::normal(n.joint.hottest, kelvin(3)); }
    static void put(Made& m, const Nominal&, Temperature t, double) { m.joint.hottest = t; }
};

struct TubeCut {
    static constexpr InputInfo info{"tube-length", "length of the crush tube", "tolerance of the joint file, taken for 95 % of the tubes"};
    static std::optional<Spread<Length>> spread(const Nominal& n) {
        if (!n.state.tube.present || n.joint.section->tube.length_tolerance <= mm(0)) return std::nullopt;
        return Spread<Length>::tolerance(n.state.tube.length, n.joint.section->tube.length_tolerance);
    }
    static void put(Made& m, const Nominal&, Length length, double) { m.joint.section->tube.length = length; }
};

/// Inside height of the section; outside height where the tube passes the walls.
[[nodiscard]] inline Length tolerated_height(const Nominal& n) {
    return n.state.tube_passes_walls() ? n.joint.section->height : n.joint.section->inside_height();
}

struct CavityHeight {
    static constexpr InputInfo info{"cavity-height", "height of the cavity; of the section, where the tube passes its walls",
                                    "tolerance of the joint file, taken for 95 % of the sections"};
    static std::optional<Spread<Length>> spread(const Nominal& n) {
        if (!n.joint.section || n.joint.section->height_tolerance <= mm(0)) return std::nullopt;
        return Spread<Length>::tolerance(tolerated_height(n), n.joint.section->height_tolerance);
    }
    static void put(Made& m, const Nominal& n, Length height, double) { m.height_change = height - tolerated_height(n); }
};

struct RailWall {
    static constexpr InputInfo info{"rail-wall", "thickness of the rail's walls", "coefficient of variation of 3 % assumed; both alike"};
    static std::optional<Spread<Length>> spread(const Nominal& n) {
        if (!n.joint.section) return std::nullopt;
        return Spread<Length>::normal(n.joint.section->wall, 0.03 * n.joint.section->wall);
    }
    static void put(Made& m, const Nominal& n, Length wall, double) { m.wall = max(wall, 0.5 * n.joint.section->wall); }
};

struct TubeWallThickness {
    static constexpr InputInfo info{"tube-wall", "wall of the crush tube", "tolerance of the tube's row, taken for 95 % of the tubes"};
    static std::optional<Spread<Length>> spread(const Nominal& n) {
        if (!n.state.tube.present || n.state.tube.stock->wall_tolerance <= 0.0) return std::nullopt;
        return Spread<Length>::tolerance(n.state.tube.stock->wall, n.state.tube.stock->wall_tolerance * n.state.tube.stock->wall);
    }
    static void put(Made& m, const Nominal& n, Length wall, double) {
        m.joint.section->tube.stock->wall = max(wall, 0.5 * n.state.tube.stock->wall);
    }
};

struct BoltStrength {
    static constexpr InputInfo info{"bolt-strength", "proof strength of the bolt",
                                    "the class's value taken for the 5 % fractile, coefficient of variation 5 % assumed"};
    static std::optional<Spread<Stress>> spread(const Nominal& n) {
        return Spread<Stress>::above(n.joint.bolt.property_class.proof_strength, 0.05);
    }
    static void put(Made& m, const Nominal&, Stress strength, double) { m.joint.bolt.property_class.proof_strength = strength; }
};

struct RailStrength {
    static constexpr InputInfo info{"rail-strength", "proof strength of the rail's walls",
                                    "the material's value taken for the 5 % fractile, coefficient of variation 6 % assumed"};
    static std::optional<Spread<Stress>> spread(const Nominal& n) {
        if (!n.joint.section) return std::nullopt;
        return Spread<Stress>::above(n.joint.near_wall()->proof_strength, 0.06);
    }
    static void put(Made& m, const Nominal& n, Stress strength, double) {
        m.wall_strength = strength / n.joint.near_wall()->proof_strength;
    }
};

struct PlateStrength {
    static constexpr InputInfo info{"plate-strength", "proof strength of plates that bend with the walls, over the material's",
                                    "the material's value taken for the 5 % fractile, coefficient of variation 7 % assumed"};
    static std::optional<Spread<double>> spread(const Nominal& n) {
        if (!n.joint.section || !(n.state.walls[0].bridged || n.state.walls[1].bridged)) return std::nullopt;
        return Spread<double>::above(1.0, 0.07);
    }
    static void put(Made& m, const Nominal&, double ratio, double) { m.plate_strength = ratio; }
};

struct TubeStrength {
    static constexpr InputInfo info{"tube-strength", "yield strength of the crush tube",
                                    "the material's value taken for the 5 % fractile, coefficient of variation 7 % assumed"};
    static std::optional<Spread<Stress>> spread(const Nominal& n) {
        if (!n.state.tube.present) return std::nullopt;
        return Spread<Stress>::above(n.joint.section->tube.material.proof_strength, 0.07);
    }
    static void put(Made& m, const Nominal&, Stress strength, double) { m.joint.section->tube.material.proof_strength = strength; }
};

struct SlipFactorOfFaces {
    static constexpr InputInfo info{"slip-factor", "slip factor of the faying faces",
                                    "band of the slip-factor table, taken for 95 % of the joints; a value without a band: coefficient of "
                                    "variation 15 % about it assumed; all planes high or low together"};
    static Spread<double> of(const FayingPlane& plane) {
        if (plane.slip_factor_low >= plane.slip_factor_high) return Spread<double>::log_normal(plane.slip_factor, 0.15);
        if (plane.slip_factor_low <= 0.0) return Spread<double>::uniform(plane.slip_factor_low, plane.slip_factor_high);
        return Spread<double>::band(plane.slip_factor_low, plane.slip_factor_high);
    }
    /// That of the first plane where friction is counted on.
    static std::optional<Spread<double>> spread(const Nominal& n) {
        for (std::size_t i = 0; i < n.joint.planes.size(); ++i)
            if (n.slips[i] && n.joint.planes[i].slip_factor_high > 0.0) return of(n.joint.planes[i]);
        return std::nullopt;
    }
    static void put(Made& m, const Nominal& n, double, double score) {
        for (std::size_t i = 0; i < n.joint.planes.size(); ++i)
            if (n.slips[i]) m.joint.planes[i].slip_factor = of(n.joint.planes[i]).at(score);
    }
};

struct Loads {
    static constexpr InputInfo info{"loads", "worst load of life over that of the joint file, without factors",
                                    "coefficient of variation 10 % assumed; all load cases high or low together"};
    static std::optional<Spread<double>> spread(const Nominal&) { return Spread<double>::log_normal(1.0, 0.10); }
    static void put(Made& m, const Nominal&, double ratio, double) { m.joint.service.design_factor = ratio; }
};

/// The list of inputs. One is added by its struct here: what it is, its spread about a joint (none where the joint has no such thing),
/// and how a value is put into the joint as made.
using All = std::tuple<ThreadFriction, HeadFriction, ToolScatter, PrevailingTorque, FactorPreload, EmbeddingAmount, CoatingCreep,
                       LayerCreep, Coldest, Hottest, TubeCut, CavityHeight, RailWall, TubeWallThickness, BoltStrength, RailStrength,
                       PlateStrength, TubeStrength, SlipFactorOfFaces, Loads>;

inline constexpr std::size_t count = std::tuple_size_v<All>;

}  // namespace inputs

/// The nominal joint with every band closed: the torque the assessment chose, its tube, loads without factors.
[[nodiscard]] Made made_of(const Nominal& nominal);

/// What the values that were put in mean for the rest of the joint: torque, thicknesses, height, strengths of walls.
void finish(Made& made, const Nominal& nominal);

}  // namespace faywright
