// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/field.hpp"
#include "quantity/quantity.hpp"

namespace faywright {

/// How bad an attack is, in five steps.
enum class Severity { still, slow, marked, fast, ruinous };

template <>
struct Words<Severity> {
    static constexpr std::array<std::pair<Severity, std::string_view>, 5> all{{{Severity::still, "still"},
                                                                               {Severity::slow, "slow"},
                                                                               {Severity::marked, "marked"},
                                                                               {Severity::fast, "fast"},
                                                                               {Severity::ruinous, "ruinous"}}};
};

/// By what a couple adds, in micrometres a year: up to 0.2, 1, 5, 20, above. 5 is about the rate of zinc between C4 and C5, 20 about a
/// tenth of a wall of 4 mm in 20 years. Boundaries are judgement.
[[nodiscard]] inline Severity severity_of_rate(Speed added) {
    const double rate = in_um_per_a(added);
    return rate <= 0.2    ? Severity::still
           : rate <= 1.0  ? Severity::slow
           : rate <= 5.0  ? Severity::marked
           : rate <= 20.0 ? Severity::fast
                          : Severity::ruinous;
}

/// By consequence: the promised life over the life that the thickness at stake gives; up to a quarter, a half, one, two, above.
[[nodiscard]] inline Severity severity_of_share(double promised_over_life) {
    return promised_over_life <= 0.25  ? Severity::still
           : promised_over_life <= 0.5 ? Severity::slow
           : promised_over_life <= 1.0 ? Severity::marked
           : promised_over_life <= 2.0 ? Severity::fast
                                       : Severity::ruinous;
}

/// One step worse, as where nobody can see the attack, or the anode is the smaller part.
[[nodiscard]] inline Severity worsened(Severity severity, int steps = 1) {
    return static_cast<Severity>(min(static_cast<int>(severity) + steps, static_cast<int>(Severity::ruinous)));
}

/// The worse of the rate's step and of what the span eats of the stake; one step worse where nobody can see it or the anode is the smaller
/// part, unless nothing is to be seen at all.
[[nodiscard]] inline Severity severity_of(Speed added, Duration span, Length stake, bool hidden_or_small) {
    const auto plain = std::max(severity_of_rate(added), severity_of_share(static_cast<double>(added * span / stake)));
    return plain > Severity::still && hidden_or_small ? worsened(plain) : plain;
}

/// The step of 0 to 3 that the published tables of extra corrosion would call such a rate: for comparison only.
[[nodiscard]] inline int published_step(Speed added) {
    const double rate = in_um_per_a(added);
    return rate <= 1.0 ? 0 : rate <= 5.0 ? 1 : rate <= 20.0 ? 2 : 3;
}

/// How deep the pits of aluminium are as against its mean loss, and what depth the joint stands.
///
/// Pits are 3 to 10 times as deep as the mean loss; the middle is their geometric mean (recalled, no test of these alloys at hand). Stood
/// is a quarter of the wall, and half a millimetre where a washer or a plate presses on it, whichever is less.
struct PitDepth {
    static constexpr double low = 3.0, middle = 5.48, high = 10.0;
    [[nodiscard]] static Length stood(Length wall) { return min(0.25 * wall, mm(0.5)); }
};

/// What a couple may eat of its anode before it counts: the zinc of a thick article, or the mean loss whose pits are half a millimetre.
[[nodiscard]] inline Length stake_of_couple(bool zinc) { return zinc ? um(85) : mm(0.5) / PitDepth::middle; }

}  // namespace faywright
