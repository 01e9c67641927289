// SPDX-License-Identifier: MIT
#include "assess/clamp_needed.hpp"

#include "assess/checks_joint.hpp"

namespace faywright {

ClampLimits clamp_limits(const State& s) {
    const auto& joint = *s.joint;
    const auto cases = static_cast<int>(joint.load_cases.size()), bolts = static_cast<int>(joint.positions.size());
    ClampLimits out;
    for (int plane = 0; plane < static_cast<int>(joint.planes.size()); ++plane) {
        if (const char* why = checks::SlipCheck::barred(s, joint.planes[static_cast<std::size_t>(plane)]); why != nullptr) {
            if (out.slip_barred == nullptr) out.slip_barred = why;
            continue;
        }
        for (int load_case = 0; load_case < cases; ++load_case)
            for (int bolt = 0; bolt < bolts; ++bolt) {
                const Where where{plane, load_case, bolt};
                const auto needed = checks::SlipCheck::needed(s, where);
                // Rounding chooses no place among equals.
                if (!out.slip || (out.slip->clamp && (!needed || *needed > *out.slip->clamp * rounding))) out.slip = {where, needed};
            }
    }
    out.tightening = checks::BoltAssemblyStress::allowed(s);
    for (int load_case = 0; load_case < cases; ++load_case) {
        const Where where{-1, load_case, s.most_pulled[static_cast<std::size_t>(load_case)]};
        const auto needed = checks::Separation::needed(s, where), allowed = checks::BoltWorkingStress::allowed(s, where);
        if (!out.separation.clamp || needed > *out.separation.clamp * rounding) out.separation = {where, needed};
        if (!out.working.clamp || allowed * rounding < *out.working.clamp) out.working = {where, allowed};
    }
    return out;
}

WorstPull worst_pull(const State& s) {
    WorstPull out{};
    for (int load_case = 0; load_case < static_cast<int>(s.joint->load_cases.size()); ++load_case) {
        const int bolt = s.most_pulled[static_cast<std::size_t>(load_case)];
        const Force pull = s.factor_of(load_case) * s.load(load_case, bolt).tension;
        if (pull <= out.pull * rounding) continue;
        out.where = {-1, load_case, bolt};
        out.pull = pull;
    }
    out.to_bolt = s.bolt_share * out.pull;
    out.off_clamp = s.clamp_share * out.pull;
    out.clamp_left = max(s.least_clamp() - out.off_clamp, newton(0));
    out.bolt_most = s.greatest + out.to_bolt;
    return out;
}

}  // namespace faywright
