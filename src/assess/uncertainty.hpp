// SPDX-License-Identifier: MIT
#pragma once

#include "assess/assessment.hpp"
#include "assess/parallel.hpp"
#include "assess/sampling.hpp"
#include "assess/uncertain_inputs.hpp"

#include <memory>

/// Monte Carlo over what scatters in a joint: how likely it is that it slips, opens, yields or loses its clamp in its life.
namespace faywright {

/// Something that may happen in a joint's life.
struct EventInfo {
    std::string_view id, title;
};
inline constexpr std::array<EventInfo, most_events> uncertain_events{{
    {"slip", "slip of the faying faces"},
    {"separation", "opening of the clamped faces"},
    {"tube-yield", "tube yields or buckles"},
    {"wall-crush", "walls yield, or section crushed"},
    {"bolt-yield", "bolt yields while tightened"},
    {"clamp-lost", "no clamp left, load apart"},
}};

/// A number of which mean, scatter and causes are told.
struct ResponseInfo {
    std::string_view id, title;
};
inline constexpr std::array<ResponseInfo, most_responses> uncertain_responses{{
    {"residual-clamp", "least clamp of life, load apart"},
    {"slip-utilisation", "slip utilisation, no load factors"},
}};

/// A utilisation in slip beyond this counts as this: with no clamp left there is none.
inline constexpr double most_utilisation_told = 10.0;

/// What the shares of a ranking are.
inline constexpr std::string_view ranking_method = "squared standardised regression coefficients on the inputs' standard scores";

struct UncertaintySettings {
    Sampling sampling;
    std::array<double, inputs::count> width = every_width(1.0);  ///< times the score of each input of the list: none holds it at its median

    static constexpr std::array<double, inputs::count> every_width(double value) {
        std::array<double, inputs::count> widths{};
        widths.fill(value);
        return widths;
    }
};

/// An input as it scatters in this joint.
struct InputTold {
    const InputInfo* info = nullptr;
    Shape shape = Shape::normal;
    Value first, second;
};

struct EventTold {
    const EventInfo* info = nullptr;
    const char* barred = nullptr;  ///< why it is not counted in this joint
    Proportion proportion;
};

/// How a response's samples lie: shares in equal bins from `least` to `greatest`, and of what lies beyond.
struct HistogramTold {
    Value least, greatest;
    std::vector<double> shares;
    double below = 0.0, above = 0.0;
};
inline constexpr std::size_t histogram_bins = 40;

struct ResponseTold {
    const ResponseInfo* info = nullptr;
    const char* barred = nullptr;
    Value mean, deviation, low, median, high;  ///< 5, 50 and 95 % quantiles
    Ranking ranking;                           ///< of the inputs told
    HistogramTold histogram;
};

struct Uncertainty {
    std::size_t wanted = 0, done = 0;
    std::uint64_t seed = 0;
    std::vector<InputTold> inputs;
    std::array<EventTold, most_events> events;
    std::array<ResponseTold, most_responses> responses;

    [[nodiscard]] bool complete() const { return done == wanted; }
};

/// How the sampling takes the joint, for the reader.
[[nodiscard]] const std::vector<std::string>& uncertainty_notes();

/// A joint made ready to be sampled: what is worked out once.
class UncertainJoint {
public:
    UncertainJoint(const Assessment& assessment, const std::array<double, inputs::count>& width);

    /// Inputs that scatter in this joint; so many scores make a sample.
    [[nodiscard]] const std::vector<InputTold>& told() const { return told_; }
    [[nodiscard]] const char* slip_barred() const { return slip_barred_; }
    [[nodiscard]] const char* barred(std::size_t event) const;
    [[nodiscard]] const Nominal& nominal() const { return nominal_; }

    /// Makes one joint after another; holds the memory for one.
    class Maker {
    public:
        explicit Maker(const UncertainJoint& joint);
        /// The joint of these scores, in the order of the inputs told, worked out as far as events and responses need it.
        void make(std::span<const double> scores);
        /// What each event is judged by, of the joint made last: it happens above one. For lost clamp there is no degree.
        [[nodiscard]] std::array<double, most_events> utilisations() const;
        void operator()(std::span<const double> scores, Sample& out);
        [[nodiscard]] const Joint& joint() const { return made_->joint; }
        [[nodiscard]] const State& state() const { return *state_; }

    private:
        const UncertainJoint* of_;
        std::unique_ptr<Made> made_;
        std::unique_ptr<State> state_;
    };

private:
    template <class>
    struct SpreadsOf;
    template <class... Input>
    struct SpreadsOf<std::tuple<Input...>> {
        using type = std::tuple<decltype(Input::spread(std::declval<const Nominal&>()))...>;
    };

    Nominal nominal_;
    typename SpreadsOf<inputs::All>::type spreads_;
    std::array<double, inputs::count> width_{};
    std::vector<InputTold> told_;
    const char* slip_barred_ = nullptr;
};

/// Samples the joint of the assessment, which must outlive the call. What is asked to stop gives what has been sampled so far.
[[nodiscard]] Uncertainty uncertainty(const Assessment& assessment, const UncertaintySettings& settings, Progress& progress);

}  // namespace faywright
