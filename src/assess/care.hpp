// SPDX-License-Identifier: MIT
#pragma once

#include "assess/assembly.hpp"

#include <optional>
#include <string>
#include <vector>

/// What the owner of a trailer does for a joint: the words and numbers of the care sheet, for printing as they stand.
namespace faywright {

/// How often, and how, in one exposure, or in the strictest of all.
struct CareIntervals {
    std::string exposure;                 ///< name; of the strictest of several, all their names
    std::optional<Corrosivity> category;  ///< at the joint
    Duration wash, inspection, torque_check;
    std::vector<Statement> wash_after;  ///< occasions besides: "each launching, before the salt dries"
    std::vector<Statement> how;         ///< to wash
    std::vector<Statement> besides;
    RowSource source = {};  ///< of the intervals
};

/// One thing to look for, and what to do about it.
struct LookFor {
    std::string place;  ///< "edges sealed", "crush tube: plain steel tube", "bolts", "rail"
    std::string what;
    Duration every;
    std::string when_found;
    RowSource source = {};
};

/// What the outlook promises of a part in one exposure.
struct PartOutlook {
    std::string exposure, part, stake;
    Duration life_low, life, life_high;
    bool lasts = false;    ///< no end in sight
    bool first = false;    ///< used up before all others there
    bool outlives = true;  ///< the promise, by the estimate
    Statement words;       ///< "bolts: zinc of 40 um, used up after about 20 years (7 to 60)"
};

struct CarePlan {
    std::string not_to_be_built;  ///< why, in words; empty for a joint that passes
    bool exposure_known = true;
    Statement note;                          ///< what the plan was made for
    std::vector<CareIntervals> exposures;    ///< in the order of the joint file; none where the exposure is not known
    CareIntervals strictest;                 ///< the shortest of every interval, and all that is asked for anywhere
    std::vector<Retightening> first_checks;  ///< of the torque, from the shop sheet: the shop does them
    bool wrench = true;                      ///< bolts are checked by torque; otherwise by their marks alone, at the same intervals
    std::vector<LookFor> look_for;
    std::vector<Statement> renew;         ///< what wears out, and whether the outlook counts on its renewal
    std::vector<PartOutlook> parts;       ///< by exposure, the first to go first; empty where the outlook was not worked out
    std::vector<Statement> may, may_not;  ///< what the owner does, and leaves to the shop
    std::vector<Statement> off_the_road;  ///< when the trailer is not drawn any more
    std::vector<Statement> after_shock;   ///< after kerb, overload, jack-knife
};

/// What a care sheet says of an assessed joint. Lives are those of the outlook, which is added before.
[[nodiscard]] CarePlan care_plan(const Assessment& assessment, const Tables& tables);

/// "every week", "every 2 weeks", "every 6 months", "every year".
[[nodiscard]] std::string every(Duration interval);

}  // namespace faywright
