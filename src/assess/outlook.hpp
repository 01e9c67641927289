// SPDX-License-Identifier: MIT
#pragma once

#include "corrosion/couple.hpp"
#include "corrosion/mixed_potential.hpp"
#include "corrosion/rating.hpp"
#include "joint/joint.hpp"

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <tuple>
#include <vector>

/// What becomes of a joint where it lives: the couples that are there, and how long zinc and walls last.
namespace faywright {

/// Two metals under one film: who pays, and how much.
struct PairAttack {
    const Row<Metal>* anode = nullptr;  ///< nullptr where the two stand so close that neither pays, or no series places both
    bool unplaced = false;              ///< no series of potentials holds both
    const Row<Metal>* cathode = nullptr;
    bool first_pays = false;
    double area_ratio = 1.0;             ///< cathode over anode, within the film's reach
    CurrentDensity limit;                ///< of oxygen through the film
    Length reach;                        ///< of the couple along the film
    std::optional<MixedState> kinetics;  ///< anode first, cathode second; nothing where no curves are known
    std::optional<Speed> bound;          ///< mean rate of a year that the curves allow
    Speed own_rate;                      ///< of the anode
    bool no_rate = false;                ///< the anode has no rate of its own to start from
    Couple::Inputs inputs;
    Couple::Answer added;
    Speed immersed;  ///< besides, from the hours under water
};

/// An exposure as the joint meets it. Pairs are worked out once.
class Place {
public:
    Place(const Row<Exposure>& exposure, const Tables& tables);

    const Row<Exposure>* exposure;
    SiteAtmosphere atmosphere;
    const Row<Electrolyte>* electrolyte;
    double wet_share = 0;  ///< of the year

    /// Two metals in contact; `ratio` is the second's wetted area over the first's, 1 for wide faces at a joint line.
    [[nodiscard]] std::shared_ptr<const PairAttack> pair(const Row<Metal>& first, const Row<Metal>& second, double ratio);

private:
    [[nodiscard]] PairAttack worked_out(const Row<Metal>& first, const Row<Metal>& second, double ratio) const;

    const Tables* tables_;
    std::map<std::tuple<const Metal*, const Metal*, double>, std::shared_ptr<const PairAttack>> pairs_;
};

/// One contact of the joint.
struct ContactOutlook {
    std::string first, second;  ///< the parts in contact
    std::string place;          ///< "faying edge", "head and nut", "inside the rail", "bore of the tube"
    bool hidden = false;
    bool painted_between = false;                  ///< the paint is in the electrolyte's share
    double path = 1, electrolyte = 1;              ///< means over the promised life
    std::shared_ptr<const PairAttack> now, later;  ///< while zinc lasts on both, and when it is gone
    RateBand left;                                 ///< what isolation leaves of the couple while zinc lasts
    Speed added, added_later;                      ///< to the anode, isolation in it
    Severity severity = Severity::still;
};

/// How something is used up: in proportion to time up to a bend, and from there to the end.
struct Course {
    Duration bend;
    double used_at_bend = 0.0;
    Duration end;

    /// The share used up after some time; 1 from the end on.
    [[nodiscard]] double used(Duration after) const {
        if (after >= end) return 1.0;
        if (after < bend) return used_at_bend * static_cast<double>(after / bend);
        return used_at_bend + (1.0 - used_at_bend) * static_cast<double>((after - bend) / (end - bend));
    }
};

/// One thing that is used up.
struct MemberOutlook {
    std::string name;   ///< "drawbar", "rail at drawbar", "bolts"
    std::string stake;  ///< "zinc, 60 um", "pits to a quarter of the wall"
    Length thickness;   ///< what may be lost
    RateBand own, added, total;
    Duration life_low, life, life_high;
    Course fast, central, slow;                 ///< they end with these lives; of zinc and pits, which have a thickness
    std::optional<Duration> by_upper, by_mean;  ///< of zinc at the central rate, by the power law of ISO 9224
    bool pits = false;                          ///< aluminium by its pits, in distinction from zinc or steel of a part so named
    bool is_wall = false;                       ///< aluminium, which nobody renews
    bool lasts = false;                         ///< no end in sight: told for stainless
    Severity severity = Severity::still;
    bool passes = true;
};

/// The joint in one exposure.
struct ExposureOutlook {
    const Row<Exposure>* exposure = nullptr;
    SiteAtmosphere atmosphere;
    const Row<Electrolyte>* electrolyte = nullptr;
    double wet_share = 0;
    std::vector<ContactOutlook> contacts;
    std::vector<MemberOutlook> members;
    std::size_t first = 0;  ///< member that is used up first
    bool passes = true;
    std::vector<std::string> cautions;

    [[nodiscard]] const MemberOutlook& first_to_go() const { return members[first]; }
    /// The member of this name, or nullptr.
    [[nodiscard]] const MemberOutlook* find(std::string_view name) const {
        for (const auto& member : members)
            if (member.name == name) return &member;
        return nullptr;
    }
};

struct CorrosionOutlook {
    std::vector<ExposureOutlook> exposures;
    bool passes = true;  ///< every member outlives the promise in every exposure, by its central rate
};

/// The element of the isolation table that stands in a faying plane: by its layer, else by its surfaces.
[[nodiscard]] const Row<IsolationElement>& faying_element_of(const Joint& joint, const FayingPlane& plane, const Tables& tables);

/// The outlook of a joint in one exposure.
[[nodiscard]] ExposureOutlook outlook_in(const Joint& joint, Place& place, const Tables& tables);

/// The same line by line: site, electrolyte, every contact, every part.
[[nodiscard]] Recorder derive_outlook(const Joint& joint, const Row<Exposure>& exposure, const Tables& tables);

/// The outlook in every exposure that the joint names. Joint and tables must outlive it.
[[nodiscard]] CorrosionOutlook corrosion_outlook(const Joint& joint, const Tables& tables);

}  // namespace faywright
