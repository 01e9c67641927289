// SPDX-License-Identifier: MIT
#pragma once

#include "corrosion/atmosphere_metal.hpp"
#include "corrosion/site.hpp"

#include <optional>
#include <string>

namespace faywright {

/// What a trailer is put to, besides the air it stands in, that asks for care of its own.
enum class HardUse { road_salt, launching, mud };
template <>
struct Words<HardUse> {
    static constexpr std::array<std::pair<HardUse, std::string_view>, 3> all{
        {{HardUse::road_salt, "salted roads"}, {HardUse::launching, "launching in the sea"}, {HardUse::mud, "mud left on"}}};
};

/// How often an owner washes, looks and checks: by the category at the joint, and besides by what the trailer is put to.
struct Care {
    static constexpr std::string_view table = "care", row_key = "care";
    std::optional<Corrosivity> category;
    std::optional<HardUse> use;
    Duration wash, inspection, torque_check;
    std::optional<std::string> wash_after;
    std::string how;
    std::optional<std::string> besides;

    /// Whether the row counts at this site, whose category at the joint is given.
    [[nodiscard]] bool counts_for(const Site& site, Corrosivity at_joint) const {
        if (category) return *category == at_joint;
        switch (*use) {
            case HardUse::road_salt: return site.road_salt != RoadSalt::none;
            case HardUse::launching: return site.launching != Launching::none;
            case HardUse::mud: return site.deposits == Deposits::left;
        }
        return false;
    }

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        const Range span{hours(24), years(10)};
        field(Name{"category", "", "category at the joint, in place of a use"}, self.category);
        field(Name{"use", "", "what the trailer is put to, in place of a category"}, self.use);
        field(Name{"wash", "", "between washes, at the longest"}, self.wash, span);
        field(Name{"inspection", "", "between inspections, at the longest"}, self.inspection, span);
        field(Name{"torque-check", "", "between checks of the torque, at the longest"}, self.torque_check, span);
        field(Name{"wash-after", "", "after what it is washed besides"}, self.wash_after);
        field(Name{"how", "", "how it is washed"}, self.how);
        field(Name{"besides", "", "what is asked for besides"}, self.besides);
    }
    static const char* fault(const Care& c) {
        return c.category.has_value() != c.use.has_value() ? nullptr : "either a category or a use is wanted";
    }
};

}  // namespace faywright
