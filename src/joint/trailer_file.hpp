// SPDX-License-Identifier: MIT
#pragma once

#include "joint/joint_file.hpp"
#include "loads/lap.hpp"

/// A trailer as a person writes it. Distances run rearwards from the coupling, heights upwards from the ground.
namespace faywright {

/// overrun: the brakes answer to the push at the coupling; electric: they answer to the towing vehicle's; none: it is all pushed.
enum class BrakeKind { overrun, none, electric };
template <>
struct Words<BrakeKind> {
    static constexpr std::array<std::pair<BrakeKind, std::string_view>, 3> all{
        {{BrakeKind::overrun, "overrun"}, {BrakeKind::none, "none"}, {BrakeKind::electric, "electric"}}};
};

template <>
struct Words<Placing> {
    static constexpr std::array<std::pair<Placing, std::string_view>, 3> all{
        {{Placing::under, "under the rail"}, {Placing::beside, "beside the rail"}, {Placing::on_top, "on the rail"}}};
};

namespace detail {
inline const Range trailer_length{mm(100), mm(20000)};
inline const Range trailer_height{mm(100), mm(4000)};
}  // namespace detail

struct BrakesFile {
    BrakeKind kind = BrakeKind::overrun;
    std::optional<double> thrust_share;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"kind", "", "overrun, none or electric"}, self.kind);
        field(Name{"thrust-share", "", "push at the coupling over the trailer's weight while it brakes; absent: by kind"},
              self.thrust_share, Range{0.0, 2.0});
    }
};

struct TowingVehicleFile {
    Mass mass;
    bool air_sprung = false;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"mass", "", "greatest mass of the towing vehicle, with the nose load"}, self.mass, Range{kg(200), kg(60000)});
        field(Name{"air-sprung", "", "it has air suspension or its equal"}, self.air_sprung, defaulted);
    }
};

/// Another state of the same trailer: only what differs is given.
struct VariantFile {
    std::string name;
    std::optional<Mass> mass, unsprung_mass;
    std::optional<Length> centre_of_gravity, centre_height, gyration_radius;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"name", "", "what the state is"}, self.name);
        field(Name{"mass", "", "mass of the trailer"}, self.mass, Range{kg(50), kg(20000)});
        field(Name{"unsprung-mass", "", "axles and wheels"}, self.unsprung_mass, Range{kg(1), kg(5000)});
        field(Name{"centre-of-gravity", "", "coupling to the centre of gravity"}, self.centre_of_gravity, detail::trailer_length);
        field(Name{"centre-height", "", "height of the centre of gravity"}, self.centre_height, detail::trailer_height);
        field(Name{"gyration-radius", "", "radius of gyration in pitch and yaw"}, self.gyration_radius, Range{mm(50), mm(10000)});
    }
};

/// What the three kinds of lap joint have in common.
struct LapFields {
    std::string name;
    Length middle, front, rear, length, height, legs_apart;
    Placing lies = Placing::under;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"name", "", "what the joint is called"}, self.name);
        field(Name{"lies", "", "the drawbar lies under or beside the rail"}, self.lies);
        field(Name{"middle", "", "coupling to the middle of the lap, the origin of the joint file"}, self.middle, detail::trailer_length);
        field(Name{"front", "", "middle of the lap to the front group, forwards; of several bolts the root mean square of their distances"},
              self.front, Range{mm(0), mm(5000)});
        field(Name{"rear", "", "the same rearwards, to the rear group"}, self.rear, Range{mm(0), mm(5000)});
        field(Name{"length", "", "length of the lap"}, self.length, Range{mm(20), mm(10000)});
        field(Name{"height", "", "height of the plane where drawbar and rail meet"}, self.height, detail::trailer_height);
        field(Name{"legs-apart", "", "between the two legs' bolt lines"}, self.legs_apart, Range{mm(50), mm(3000)});
    }
};

struct DrawbarLapFile : LapFields {
    static constexpr std::string_view kind = "drawbar lap";
};
struct FrontGroupFile : LapFields {
    static constexpr std::string_view kind = "lap front group";
};
struct RearGroupFile : LapFields {
    static constexpr std::string_view kind = "lap rear group";
};

struct SuspensionFile {
    static constexpr std::string_view kind = "suspension frame";
    std::string name;
    Placing lies = Placing::under;
    int hangers = 2;
    Length eye_offset, height;
    std::optional<Length> hanger_spacing;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"name", "", "what the joint is called"}, self.name);
        field(Name{"lies", "", "the frame lies under or beside the rail"}, self.lies, defaulted);
        field(Name{"hangers", "", "hangers that share, both sides together"}, self.hangers, Range{2, 24});
        field(Name{"eye-offset", "", "eye below the joint's origin"}, self.eye_offset, Range{mm(0), mm(1000)});
        field(Name{"height", "", "height of the joint's origin"}, self.height, detail::trailer_height);
        field(Name{"hanger-spacing", "", "front to rear hanger of a side; absent: the brakes' couple is not counted"}, self.hanger_spacing,
              Range{mm(100), mm(5000)});
    }
};

struct BracketFile {
    static constexpr std::string_view kind = "bracket";
    std::string name;
    Placing lies = Placing::beside;
    Mass mass;
    PointFile centre_of_gravity{mm(0), mm(0), mm(0)};

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"name", "", "what the joint is called"}, self.name);
        field(Name{"lies", "", "the bracket lies under, beside or on the rail"}, self.lies, defaulted);
        field(Name{"mass", "", "mass of what it carries"}, self.mass, Range{kg(0.1), kg(5000)});
        field(Name{"centre-of-gravity", "", "of what it carries, from the joint's origin in its axes: [x, y, z]"}, self.centre_of_gravity);
    }
};

using TrailerJointFile = std::variant<DrawbarLapFile, FrontGroupFile, RearGroupFile, SuspensionFile, BracketFile>;

/// The fields of a lap, or nullptr for a joint of another kind.
[[nodiscard]] inline const LapFields* lap_fields(const TrailerJointFile& joint) {
    return std::visit(
        [](const auto& one) -> const LapFields* {
            if constexpr (std::derived_from<std::remove_cvref_t<decltype(one)>, LapFields>)
                return &one;
            else
                return nullptr;
        },
        joint);
}

struct TrailerFile {
    std::string title, road;
    std::string state = "as described";
    Mass mass;
    std::optional<Mass> unsprung_mass;
    Length centre_of_gravity, centre_height, axle;
    std::optional<Length> gyration_radius;
    Length track, coupling_height = mm(430), body_length;
    double leg_share = 0.6;
    BrakesFile brakes;
    TowingVehicleFile towing_vehicle;
    std::vector<VariantFile> variants;
    std::vector<TrailerJointFile> joints;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"title", "", "what the trailer is"}, self.title);
        field(Name{"road", "", "where it runs, a row of the service table"}, self.road);
        field(Name{"state", "", "name of the state described here, where there are variants"}, self.state, defaulted);
        field(Name{"mass", "", "greatest mass of the trailer"}, self.mass, Range{kg(50), kg(20000)});
        field(Name{"unsprung-mass", "", "axles and wheels; absent: a tenth of the mass"}, self.unsprung_mass, Range{kg(1), kg(5000)});
        field(Name{"centre-of-gravity", "", "coupling to the centre of gravity"}, self.centre_of_gravity, detail::trailer_length);
        field(Name{"centre-height", "", "height of the centre of gravity"}, self.centre_height, detail::trailer_height);
        field(Name{"axle", "", "coupling to the middle of the axle group"}, self.axle, detail::trailer_length);
        field(Name{"gyration-radius", "", "radius of gyration in pitch and yaw; absent: 0.35 of the body's length"}, self.gyration_radius,
              Range{mm(50), mm(10000)});
        field(Name{"track", "", "between the wheels of an axle"}, self.track, Range{mm(300), mm(3000)});
        field(Name{"coupling-height", "", "height of the coupling"}, self.coupling_height, Range{mm(100), mm(1500)}, defaulted);
        field(Name{"body-length", "", "length of the load area"}, self.body_length, Range{mm(200), mm(20000)});
        field(Name{"leg-share", "", "share of the worse leg or side in what is vertical: the load is not quite in the middle"},
              self.leg_share, Range{0.5, 1.0}, defaulted);
        field(Name{"brakes", "", "the trailer's brakes"}, self.brakes);
        field(Name{"towing-vehicle", "", "what tows it"}, self.towing_vehicle);
        field(Name{"variant", "", "other states of the same trailer"}, self.variants, defaulted);
        field(Name{"joint", "", "the joints whose loads are wanted"}, self.joints);
    }
};

}  // namespace faywright
