// SPDX-License-Identifier: MIT
#include "assess/couples.hpp"

#include "corrosion/isolation_effect.hpp"

namespace faywright {

namespace {

IsolationEffect::Inputs effect_inputs(const CouplesTask& task, const PairAttack& attack) {
    IsolationEffect::Inputs in{.own_rate = attack.own_rate, .couple_rate = attack.added.rate, .promised = task.span};
    if (const auto* element = task.isolation; element != nullptr) {
        in.bridged = !element->insulates;
        in.path_new = element->path_new;
        in.path_aged = element->path_aged;
        in.electrolyte_new = element->electrolyte_new;
        in.electrolyte_middle = element->electrolyte_middle;
        in.electrolyte_neglected = element->electrolyte_neglected;
        in.seal_life = element->life();
    }
    return in;
}

}  // namespace

CoupleCell couple_cell(const CouplesTask& task, Place& place, const Row<Metal>& first, const Row<Metal>& second) {
    CoupleCell out;
    out.first = &first;
    out.second = &second;
    out.attack = *place.pair(first, second, task.area_ratio);
    // The ratio is told of cathode over anode, whoever comes first.
    if (out.attack.anode == &second) out.attack = *place.pair(first, second, 1.0 / task.area_ratio);
    if (out.attack.anode == nullptr || out.attack.no_rate) return out;
    out.by_design =
        out.attack.anode->atmosphere == AtmosphereMetal::zinc && out.attack.cathode->atmosphere == AtmosphereMetal::carbon_steel;
    const auto effect = IsolationEffect::compute(effect_inputs(task, out.attack));
    out.path = effect.path;
    out.electrolyte = effect.electrolyte;
    const double left = out.path * out.electrolyte;
    const auto& added = out.attack.added;
    const auto immersed = out.attack.immersed * out.path;
    out.added = {added.low * left + immersed, added.rate * left + immersed, added.high * left + immersed};
    out.severity = severity_of(out.added.rate, task.span, stake_of_couple(out.attack.anode->atmosphere == AtmosphereMetal::zinc),
                               out.attack.area_ratio > 2.0);
    return out;
}

std::vector<CoupleCell> couples_with(const CouplesTask& task, const Row<Metal>& metal) {
    std::vector<CoupleCell> out;
    Place place(task.exposure, task.tables);
    for (const auto& other : task.tables.of<Metal>().rows) out.push_back(couple_cell(task, place, metal, other));
    return out;
}

std::vector<const Row<Compatibility>*> opinions(const Tables& tables, const Row<Metal>& a, const Row<Metal>& b) {
    std::vector<const Row<Compatibility>*> out;
    if (const auto* cell = matrix_cell(tables.of<Compatibility>(), tables.of<Metal>(), a, b); cell != nullptr) out.push_back(cell);
    for (const auto& row : tables.of<Compatibility>().rows)
        if (row.scheme != CompatibilityScheme::mil_std_889c &&
            ((row.considered == a.name && row.contact == b.name) || (row.considered == b.name && row.contact == a.name)))
            out.push_back(&row);
    return out;
}

Recorder derive_couple(const CouplesTask& task, const CoupleCell& cell) {
    Recorder steps;
    const auto& attack = cell.attack;
    if (attack.anode == nullptr || attack.no_rate) return steps;
    if (attack.kinetics) {
        steps.heading("Electrode kinetics under the film", MixedPotential::formula.source);
        const auto tell = [&steps](const char* symbol, const char* words, const auto& value) {
            static_cast<void>(steps.stated(symbol, words, value));
        };
        const auto& members = attack.kinetics->members;
        tell("i_L", "limiting current of oxygen through the film: 4 F D C/d", attack.limit);
        tell("x_c", "reach along the film of a cathode at that limit: sqrt(2 k d 0.4 V/i_L)", attack.reach);
        if (members[0].own_potential) tell("E_a", "the anode's potential alone under this film (V against SCE)", *members[0].own_potential);
        if (members[1].own_potential) tell("E_c", "the cathode's", *members[1].own_potential);
        tell("E", "common potential: dissolution equals oxygen reduced, by the curves of the table of metals", attack.kinetics->potential);
        tell("i_a", "dissolution of the anode at that potential", members[0].anodic);
        tell("i_n", "of it, what the cathode draws", members[0].net);
        FAYWRIGHT_STATED(r_n, "the same as a rate while wet, by Faraday's law",
                         penetration_rate(members[0].net, *attack.anode->dissolution()));
        FAYWRIGHT_STATED(f_w, "share of the year that is wet", Place(task.exposure, task.tables).wet_share);
        FAYWRIGHT_STEP(r_b, r_n * f_w);
        static_cast<void>(r_b);
    }
    steps.heading(Couple::formula.title, Couple::formula.source);
    static_cast<void>(Couple::compute(attack.inputs, steps));
    if (task.isolation != nullptr) {
        steps.heading(IsolationEffect::formula.title, IsolationEffect::formula.source);
        static_cast<void>(IsolationEffect::compute(effect_inputs(task, attack), steps));
    }
    return steps;
}

}  // namespace faywright
