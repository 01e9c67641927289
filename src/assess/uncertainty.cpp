// SPDX-License-Identifier: MIT
#include "assess/uncertainty.hpp"

#include "assess/checks_tube.hpp"

#include <fmt/format.h>

namespace faywright {

namespace {

enum Event : std::size_t { slip, separation, tube_yield, wall_crush, bolt_yield, clamp_lost };
enum Response : std::size_t { residual_clamp, slip_utilisation };

Nominal nominal_of(const Assessment& assessment) {
    const auto& s = assessment.state;
    Nominal n{*s.joint, s, {}, false};
    for (std::size_t i = 0; i < n.joint.planes.size(); ++i) n.slips[i] = checks::SlipCheck::barred(s, n.joint.planes[i]) == nullptr;
    n.by_factor = n.joint.overrides.tightening_factor || !n.joint.tightening.method.uses_torque;
    return n;
}

double utilisation_of(const Outcome& outcome) { return outcome.applicable ? outcome.utilisation : 0.0; }

double worst_slip(const Nominal& n, const State& s) {
    double worst = 0.0;
    for (int plane = 0; plane < static_cast<int>(n.joint.planes.size()); ++plane) {
        if (!n.slips[static_cast<std::size_t>(plane)]) continue;
        for (int load_case = 0; load_case < static_cast<int>(n.joint.load_cases.size()); ++load_case)
            for (int bolt = 0; bolt < static_cast<int>(n.joint.positions.size()); ++bolt)
                worst = max(worst, checks::SlipCheck::resisted(s, {plane, load_case, bolt}).utilisation);
    }
    return worst;
}

double worst_separation(const Nominal& n, const State& s) {
    double worst = 0.0;
    for (std::size_t i = 0; i < n.joint.load_cases.size(); ++i)
        worst = max(worst, checks::Separation::evaluate(s, {-1, static_cast<int>(i), s.most_pulled[i]}).utilisation);
    return worst;
}

/// Another thickness of walls and inside height, and the stack with it.
void set_section(Joint& joint, Length wall, Length inside_height) {
    auto& section = *joint.section;
    section.wall = wall;
    section.height = inside_height + 2.0 * wall;
    const bool through = section.tube.arrangement == TubeArrangement::through_walls;
    for (auto& entry : joint.stack) {
        if (entry.kind == StackKind::cavity) entry.thickness = through ? *section.tube.length - 2.0 * wall : inside_height;
        if (entry.kind != StackKind::ply) continue;
        auto& ply = joint.plies[static_cast<std::size_t>(entry.index)];
        if (ply.role != PlyRole::plate) ply.thickness = entry.thickness = wall;
    }
}

}  // namespace

Made made_of(const Nominal& n) {
    Made made;
    made.joint = n.joint;
    auto& joint = made.joint;
    joint.tightening.torque = n.state.torque;
    joint.tightening.prevailing_torque = Nm(0);
    joint.tightening.method.tool_scatter = 0.0;
    // Loads without factors: what may happen is not what must be proved.
    joint.service.design_factor = 1.0;
    for (auto& l : joint.load_cases) {
        l.format = LoadFormat::static_load;
        l.load_factor = 1.0;
    }
    if (!joint.section) return made;
    made.wall = joint.section->wall;
    joint.section->height_tolerance = mm(0);
    auto& tube = joint.section->tube;
    tube.length_tolerance = mm(0);
    if (n.state.tube.present) {
        tube.stock = *n.state.tube.stock;
        tube.stock->wall_tolerance = 0.0;
        tube.length = n.state.tube.length;
    }
    return made;
}

void finish(Made& made, const Nominal& n) {
    made.joint.tightening.torque = max(made.tool * n.state.torque - made.prevailing, Nm(0.01));
    if (!made.joint.section) return;
    // A tube through the walls is held against the outside height, which the walls' thickness is part of.
    const auto inside = n.joint.section->inside_height() + made.height_change +
                        (n.state.tube_passes_walls() ? 2.0 * (n.joint.section->wall - made.wall) : mm(0));
    set_section(made.joint, made.wall, inside);
    for (std::size_t i = 0; i < n.joint.plies.size(); ++i) {
        const double strength = n.joint.plies[i].role == PlyRole::plate ? made.plate_strength : made.wall_strength;
        made.joint.plies[i].proof_strength = strength * n.joint.plies[i].proof_strength;
    }
}

UncertainJoint::UncertainJoint(const Assessment& assessment, const std::array<double, inputs::count>& width)
    : nominal_(nominal_of(assessment)) {
    [&]<std::size_t... I>(std::index_sequence<I...>) {
        const auto prepare = [&]<std::size_t Index>(std::integral_constant<std::size_t, Index>) {
            using Input = std::tuple_element_t<Index, inputs::All>;
            auto& spread = std::get<Index>(spreads_);
            spread = Input::spread(nominal_);
            if (!spread) return;
            width_[Index] = width[Index];
            told_.push_back({&Input::info, spread->shape(), spread->first(), spread->second()});
        };
        (prepare(std::integral_constant<std::size_t, I>{}), ...);
    }
    (std::make_index_sequence<inputs::count>{});
    static_assert(inputs::count <= most_scores);
    bool any = false;
    for (std::size_t i = 0; i < nominal_.joint.planes.size(); ++i) any = any || nominal_.slips[i];
    if (!any) slip_barred_ = checks::SlipCheck::barred(nominal_.state, nominal_.joint.planes.front());
}

const char* UncertainJoint::barred(std::size_t event) const {
    const auto& s = nominal_.state;
    if (event == slip) return slip_barred_;
    if (event == tube_yield && !s.tube.present) return s.joint->section ? checks::no_tube : checks::no_section;
    if (event == wall_crush && !s.joint->section) return checks::no_section;
    return nullptr;
}

UncertainJoint::Maker::Maker(const UncertainJoint& joint)
    : of_(&joint), made_(std::make_unique<Made>(made_of(joint.nominal_))), state_(std::make_unique<State>(joint.nominal_.state)) {
    state_->joint = &made_->joint;
}

void UncertainJoint::Maker::make(std::span<const double> scores) {
    const auto& n = of_->nominal_;
    auto score = scores.begin();
    [&]<std::size_t... I>(std::index_sequence<I...>) {
        const auto put = [&]<std::size_t Index>(std::integral_constant<std::size_t, Index>) {
            using Input = std::tuple_element_t<Index, inputs::All>;
            const auto& spread = std::get<Index>(of_->spreads_);
            if (!spread) return;
            const double widened = of_->width_[Index] * *score++;
            Input::put(*made_, n, spread->at(widened), widened);
        };
        (put(std::integral_constant<std::size_t, I>{}), ...);
    }
    (std::make_index_sequence<inputs::count>{});
    finish(*made_, n);
    work_out_again(made_->joint, made_->preload, *state_);
}

std::array<double, most_events> UncertainJoint::Maker::utilisations() const {
    const auto& n = of_->nominal_;
    const auto& s = *state_;
    std::array<double, most_events> result{};
    result[slip] = worst_slip(n, s);
    result[separation] = worst_separation(n, s);
    result[tube_yield] = max(utilisation_of(checks::TubeYield::evaluate(s, {})), utilisation_of(checks::TubeBuckling::evaluate(s, {})));
    result[wall_crush] = max(utilisation_of(checks::WallClosing::evaluate(s, {})), utilisation_of(checks::SectionCrush::evaluate(s, {})));
    result[bolt_yield] = utilisation_of(checks::BoltAssemblyStress::evaluate(s, {}));
    result[clamp_lost] = s.least_clamp() > newton(0) ? 0.0 : hopeless;
    return result;
}

void UncertainJoint::Maker::operator()(std::span<const double> scores, Sample& out) {
    make(scores);
    const auto judged = utilisations();
    out.response[residual_clamp] = in_N(state_->least_clamp());
    out.response[slip_utilisation] = min(judged[slip], most_utilisation_told);
    for (std::size_t i = 0; i < most_events; ++i) out.event[i] = judged[i] > rounding;
}

Uncertainty uncertainty(const Assessment& assessment, const UncertaintySettings& settings, Progress& progress) {
    const UncertainJoint joint(assessment, settings.width);
    const auto scores = joint.told().size();
    const auto sampled = sample(settings.sampling, scores, most_responses, progress, [&joint] { return UncertainJoint::Maker(joint); });
    Uncertainty result;
    result.wanted = sampled.wanted;
    result.done = sampled.done;
    result.seed = settings.sampling.seed;
    result.inputs = joint.told();
    for (std::size_t i = 0; i < most_events; ++i)
        result.events[i] = {&uncertain_events[i], joint.barred(i), {sampled.happened[i], sampled.done}};
    for (std::size_t i = 0; i < most_responses; ++i) {
        const auto told = [&](double number) { return i == residual_clamp ? Value(newton(number)) : Value(number); };
        const auto& quantiles = sampled.quantiles[i];
        auto bins = histogram(quantiles, histogram_bins);
        result.responses[i] = {&uncertain_responses[i],
                               i == slip_utilisation ? joint.slip_barred() : nullptr,
                               told(sampled.done == 0 ? 0.0 : sampled.moments.mean(scores + i)),
                               told(std::sqrt(sampled.moments.variance(scores + i))),
                               told(quantiles.at(0.05)),
                               told(quantiles.at(0.50)),
                               told(quantiles.at(0.95)),
                               ranking(sampled.moments, scores, i),
                               {told(bins.least), told(bins.greatest), std::move(bins.shares), bins.below, bins.above}};
    }
    return result;
}

const std::vector<std::string>& uncertainty_notes() {
    static const std::vector<std::string> notes{
        "The inputs scatter independently of each other.",
        "Most distributions are assumed: the probabilities compare joints and find what matters, and are no better than that.",
        "All bolts of a joint drawn are alike: one lot, one wrench. A single worse bolt among good ones is not in it.",
        "Loads carry no design or load factor; a static case is the load at rest. Shocks that no load case holds are not in it.",
        "The torque is the one the assessment names, whatever friction the joint has.",
        "Losses are staged as in the check. Self-loosening, corrosion and mistakes in assembly are not in it.",
        fmt::format("A slip utilisation above {}, as where no clamp is left, counts as {} in mean, scatter and ranking.",
                    most_utilisation_told, most_utilisation_told)};
    return notes;
}

}  // namespace faywright
