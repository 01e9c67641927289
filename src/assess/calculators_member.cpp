// SPDX-License-Identifier: MIT
#include "assess/make_calculator.hpp"
#include "mechanics/bearing.hpp"
#include "mechanics/block_tearing.hpp"
#include "mechanics/bolt_group_in_plane.hpp"
#include "mechanics/bolt_group_out_of_plane.hpp"
#include "mechanics/bolt_group_ultimate.hpp"
#include "mechanics/bolt_interaction.hpp"
#include "mechanics/bolt_shear.hpp"
#include "mechanics/bolt_tension.hpp"
#include "mechanics/edge_distance.hpp"
#include "mechanics/member_fatigue.hpp"
#include "mechanics/net_section.hpp"
#include "mechanics/prying.hpp"
#include "mechanics/pull_through.hpp"
#include "mechanics/slip.hpp"
#include "mechanics/tear_out.hpp"

namespace faywright {

std::vector<Calculator> member_calculators() {
    using detail::make_calculator;
    return {
        make_calculator<BoltGroupInPlane>(),
        make_calculator<BoltGroupOutOfPlane>(),
        make_calculator<BoltGroupUltimate>(),
        make_calculator<BoltShear>(),
        make_calculator<BoltTension>(),
        make_calculator<BoltInteraction>(),
        make_calculator<Bearing>(),
        make_calculator<TearOut>(),
        make_calculator<EdgeDistance>(),
        make_calculator<NetSection>(),
        make_calculator<BlockTearing>(),
        make_calculator<PullThrough>(),
        make_calculator<Slip>(),
        make_calculator<Prying>(),
        make_calculator<MemberFatigue>(),
    };
}

}  // namespace faywright
