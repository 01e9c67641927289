// SPDX-License-Identifier: MIT
#include "assess/make_calculator.hpp"
#include "mechanics/hollow_section.hpp"
#include "mechanics/member_stiffness.hpp"
#include "mechanics/tube_length.hpp"
#include "mechanics/tube_wall.hpp"
#include "mechanics/wall_bending.hpp"

#include <string_view>

namespace faywright {

std::vector<Calculator> tube_calculators() {
    using detail::make_calculator;
    return {make_calculator<MemberStiffness>(), make_calculator<TubeWall>(), make_calculator<TubeLength>(), make_calculator<WallBending>(),
            make_calculator<HollowSection>()};
}

const std::vector<Calculator>& calculators() {
    static const std::vector<Calculator> all = [] {
        auto list = bolt_calculators();
        // Stiffness of the clamped parts stands beside that of the bolt.
        auto tube = tube_calculators();
        const auto after = std::find_if(list.begin(), list.end(), [](const Calculator& c) { return c.formula.name == "bolt-stiffness"; });
        list.insert(after == list.end() ? after : after + 1, tube.front());
        for (auto& each : member_calculators()) list.push_back(each);
        list.insert(list.end(), tube.begin() + 1, tube.end());
        const auto loads = load_calculators();
        list.insert(list.begin(), loads.begin(), loads.end());
        for (const auto& corrosion : {atmosphere_calculators(), galvanic_calculators(), isolation_calculators()})
            list.insert(list.end(), corrosion.begin(), corrosion.end());
        return list;
    }();
    return all;
}

}  // namespace faywright
