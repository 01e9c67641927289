// SPDX-License-Identifier: MIT
#include "assess/search.hpp"

#include "assess/checks_joint.hpp"
#include "joint/resolve.hpp"
#include "quantity/text.hpp"

#include <algorithm>
#include <limits>
#include <memory>
#include <set>
#include <tuple>

namespace faywright {

namespace {

/// The choices in two parts: those a joint must be resolved anew for, and those of the pattern alone, which only move the bolts.
/// A variant's index counts the patterns fastest.
struct Split {
    std::vector<std::size_t> outer, inner;
    std::size_t outers = 1, inners = 1;

    explicit Split(const std::vector<Choice>& choices) {
        for (std::size_t i = 0; i < choices.size(); ++i) {
            const bool pattern = choices[i].paths.size() == 1 && is_pattern(choices[i].paths.front());
            (pattern ? inner : outer).push_back(i);
            (pattern ? inners : outers) *= choices[i].options.size();
        }
    }

    static bool is_pattern(const std::string& path) {
        return path == "pattern.rows" || path == "pattern.columns" || path == "pattern.pitch-x" || path == "pattern.pitch-y";
    }
};

void digits(const std::vector<Choice>& choices, const std::vector<std::size_t>& which, std::size_t index,
            std::vector<std::size_t>& options) {
    for (auto i = which.rbegin(); i != which.rend(); ++i) {
        options[*i] = index % choices[*i].options.size();
        index /= choices[*i].options.size();
    }
}

std::vector<std::size_t> options_at(const Split& split, const std::vector<Choice>& choices, std::size_t outer, std::size_t inner) {
    std::vector<std::size_t> options(choices.size(), 0);
    digits(choices, split.outer, outer, options);
    digits(choices, split.inner, inner, options);
    return options;
}

/// The pattern as the tree of a variant gives it.
PatternFile pattern_of(const Node& variant) {
    PatternFile pattern;
    Diagnostics ignored;
    if (const Node* node = variant.find("pattern"); node != nullptr) read_node(*node, Path{}, pattern, ReadContext{ignored});
    return pattern;
}

/// The options of the inner choices as numbers, read once.
struct Patterns {
    struct Inner {
        std::size_t choice;
        std::string path;
        std::vector<PatternFile> options;
    };
    std::vector<Inner> inner;

    Patterns(const SearchTask& task, const Split& split) {
        for (const auto i : split.inner) {
            const auto& choice = task.choices[i];
            Inner one{i, choice.paths.front(), {}};
            std::vector<std::size_t> options(task.choices.size(), 0);
            for (options[i] = 0; options[i] < choice.options.size(); ++options[i])
                one.options.push_back(pattern_of(variant_of(task.root, task.choices, options)));
            inner.push_back(std::move(one));
        }
    }

    /// The grid of these options, where `base` stands for what no choice is about.
    [[nodiscard]] std::vector<Position> grid(PatternFile base, const std::vector<std::size_t>& options) const {
        for (const auto& one : inner) {
            const auto& from = one.options[options[one.choice]];
            if (one.path == "pattern.rows") base.rows = from.rows;
            if (one.path == "pattern.columns") base.columns = from.columns;
            if (one.path == "pattern.pitch-x") base.pitch_x = from.pitch_x;
            if (one.path == "pattern.pitch-y") base.pitch_y = from.pitch_y;
        }
        return grid_of(base.rows.value_or(1), base.columns.value_or(1), base.pitch_x.value_or(mm(0)), base.pitch_y.value_or(mm(0)));
    }
};

std::size_t number_of(const CheckInfo* info) {
    static const auto list = all_checks();
    return static_cast<std::size_t>(std::find(list.begin(), list.end(), info) - list.begin());
}

/// What is left out without a look must fail by a little more than rounding may make of it.
constexpr double spared = 1.000001;

bool better(const Candidate& a, const Candidate& b) {
    return std::tie(a.objective, a.utilisation, a.index) < std::tie(b.objective, b.utilisation, b.index);
}

/// Joints are alike where all their outer options and the number of bolts are.
using Likeness = std::pair<std::size_t, std::size_t>;

/// The best of each likeness, and of these no more than are wanted. Whatever comes in, in any order, the same remains.
class Ranking {
public:
    explicit Ranking(std::size_t wanted) : wanted_(wanted) {}

    void add(const Likeness& likeness, const Candidate& candidate) {
        for (auto& [like, held] : list_)
            if (like == likeness) {
                if (better(candidate, held)) held = candidate;
                return;
            }
        list_.emplace_back(likeness, candidate);
        if (list_.size() <= wanted_) return;
        list_.erase(std::max_element(list_.begin(), list_.end(), [](const auto& a, const auto& b) { return better(a.second, b.second); }));
    }
    void add(const Ranking& other) {
        for (const auto& [likeness, candidate] : other.list_) add(likeness, candidate);
    }
    /// What must be reached to come in at all.
    [[nodiscard]] double threshold() const {
        if (list_.size() < wanted_) return std::numeric_limits<double>::infinity();
        double worst = 0.0;
        for (const auto& [likeness, candidate] : list_) worst = std::max(worst, candidate.objective);
        return worst;
    }
    [[nodiscard]] std::vector<Candidate> sorted() const {
        std::vector<Candidate> out;
        for (const auto& [likeness, candidate] : list_) out.push_back(candidate);
        std::sort(out.begin(), out.end(), better);
        return out;
    }

private:
    std::size_t wanted_;
    std::vector<std::pair<Likeness, Candidate>> list_;
};

/// The best candidate for each thousandth of utilisation: memory that does not grow with the search.
class Front {
public:
    void add(const Candidate& candidate) {
        auto& held = best_[static_cast<std::size_t>(std::clamp(candidate.utilisation, 0.0, 1.0) * 1000.0)];
        if (!held || better(candidate, *held)) held = candidate;
    }
    void add(const Front& other) {
        for (const auto& held : other.best_)
            if (held) add(*held);
    }
    [[nodiscard]] std::vector<Candidate> sorted() const {
        std::vector<Candidate> all, out;
        for (const auto& held : best_)
            if (held) all.push_back(*held);
        std::sort(all.begin(), all.end(), better);
        for (const auto& candidate : all)
            if (out.empty() || candidate.utilisation < out.back().utilisation) out.push_back(candidate);
        return out;
    }

private:
    std::array<std::optional<Candidate>, 1001> best_;
};

/// What one thread has found.
struct Found {
    Ranking ranking;
    Front front;
    Tally total;
    std::vector<std::vector<Tally>> options;
    std::map<std::string, std::size_t> refusals;
    std::optional<std::pair<std::size_t, std::string>> example;  ///< of the least index refused
    std::size_t seen = 0;
    std::unique_ptr<Assessment> assessment = std::make_unique<Assessment>();

    Found(const SearchTask& task) : ranking(task.best) {
        for (const auto& choice : task.choices) options.emplace_back(choice.options.size());
    }
};

/// The search of one variant after another within a block: one outer variant, some of its patterns.
struct Block {
    const SearchTask& task;
    const Split& split;
    const Patterns& patterns;
    std::atomic<double>& threshold;
    Found& found;

    void count(const std::vector<std::size_t>& options, const Tally& one) const {
        found.total.add(one);
        for (std::size_t i = 0; i < options.size(); ++i) found.options[i][options[i]].add(one);
    }

    void refuse(std::size_t index, const std::vector<std::size_t>& options, const Diagnostics& why) const {
        const auto first = why.sorted().front();
        ++found.refusals[first.code];
        if (!found.example || index < found.example->first) found.example.emplace(index, first.message);
        Tally one;
        one.variants = one.refused = 1;
        count(options, one);
    }

    [[nodiscard]] double objective_of(const Joint& joint, const TubeCut& tube, const Bill& bill) const {
        switch (task.objective) {
            case Objective::mass: return in_kg(bill.mass);
            case Objective::parts: return bill.pieces;
            case Objective::cost: return cost_of(joint, tube, task.tables).sum;
        }
        return 0.0;
    }

    /// No tube the assessment may choose makes the joint better than this.
    [[nodiscard]] double at_best(const Joint& joint) const {
        if (!joint.section || joint.section->tube.arrangement == TubeArrangement::none) return objective_of(joint, {}, bill_of(joint, {}));
        const auto& tube = joint.section->tube;
        const auto length = tube.length.value_or(joint.section->inside_height());
        double least = std::numeric_limits<double>::infinity();
        const auto with = [&](const Row<StockTube>& stock) {
            const TubeCut cut{&stock, length};
            least = std::min(least, objective_of(joint, cut, bill_of(joint, cut)));
        };
        if (tube.stock) with(*tube.stock);
        for (const auto& stock : tube.candidates) with(stock);
        return least;
    }

    void come_in(const Joint& joint, std::size_t outer, std::size_t index) const {
        const auto& assessment = *found.assessment;
        const auto& governing = assessment.results[assessment.governing];
        const auto& tube = assessment.state.tube;
        const TubeCut cut{tube.present ? tube.stock : nullptr, tube.length};
        const auto bill = bill_of(joint, cut);
        const Candidate candidate{index, objective_of(joint, cut, bill), bill, governing.outcome.utilisation, governing.info};
        found.ranking.add({outer, joint.positions.size()}, candidate);
        if (!task.quick) found.front.add(candidate);
    }

    void look_at(const Joint& joint, std::size_t outer, std::size_t index, const std::vector<std::size_t>& options) const {
        auto& assessment = *found.assessment;
        assess(joint, assessment);
        const auto& governing = assessment.results[assessment.governing];
        Tally one;
        one.variants = 1;
        if (passes_within(assessment, task.target)) {
            one.passed = 1;
            come_in(joint, outer, index);
        } else {
            one.failed = 1;
            one.failed_by[number_of(governing.info)] = 1;
        }
        count(options, one);
    }

    /// The same where only the best are wanted.
    void look_at_quickly(const Joint& joint, std::size_t outer, std::size_t index) const {
        if (!assess_within(joint, task.target, *found.assessment)) return;
        come_in(joint, outer, index);
        const double own = found.ranking.threshold();
        for (double held = threshold; own < held && !threshold.compare_exchange_weak(held, own);) {
        }
    }

    /// Whether the joint must slip whatever else it does: the shear of a bolt against the friction of the least preload less its creep, of
    /// which life only takes away. `state` is that of another pattern of the same bolts and parts.
    [[nodiscard]] bool must_slip(const Joint& joint, const State& state) const {
        double least_friction = std::numeric_limits<double>::infinity();
        for (const auto& plane : joint.planes)
            if (checks::SlipCheck::barred(state, plane) == nullptr) least_friction = std::min(least_friction, plane.slip_factor);
        if (least_friction == std::numeric_limits<double>::infinity()) return false;
        const Force held = task.target * least_friction * state.preload.least * ((1.0 - state.coating_creep) * (1.0 - state.layer_creep));
        const auto pattern = inertia_of(joint.positions);
        std::array<PlaneForce, most_bolts> shear;
        const auto forces = std::span(shear).first(joint.positions.size());
        for (std::size_t i = 0; i < joint.load_cases.size(); ++i) {
            const auto& l = joint.load_cases[i];
            const auto turning = pattern.is_point() ? Nm(0) : l.turning_about(pattern.centroid);
            static_cast<void>(in_plane_bolt_forces(joint.positions, pattern, {l.force_x, l.force_y}, turning, forces));
            const double share = state.factor_of(static_cast<int>(i)) / static_cast<double>(joint.planes.size());
            for (const auto& force : forces)
                if (share * magnitude(force) > held * spared) return true;
        }
        return false;
    }

    void run(std::size_t outer, std::size_t first, std::size_t last) const {
        auto options = options_at(split, task.choices, outer, first);
        const auto variant = variant_of(task.root, task.choices, options);
        Diagnostics diagnostics;
        auto joint = joint_of_tree(variant, task.tables, task.read_file, {}, diagnostics);
        // No pattern changes what corrodes.
        if (joint)
            for (const auto& exposure : corrosion_outlook(*joint, task.tables).exposures)
                if (!exposure.passes) {
                    const auto& first = exposure.first_to_go();
                    diagnostics.error({"corrosion.life",
                                       fmt::format("{}: {} lasts {} of the promised {} in \"{}\"", first.name, first.stake,
                                                   print(Value(first.life), 2), print(Value(joint->life)), exposure.exposure->name),
                                       variant.at,
                                       "",
                                       {},
                                       ""});
                }
        if (diagnostics.any()) joint.reset();
        const auto base = pattern_of(variant);
        std::array<std::optional<double>, most_bolts + 1> bounds;
        bool has_state = false;
        for (std::size_t inner = first; inner < last; ++inner) {
            const auto index = outer * split.inners + inner;
            ++found.seen;
            if (!split.inner.empty()) digits(task.choices, split.inner, inner, options);
            if (!joint) {
                if (!task.quick) refuse(index, options, diagnostics);
                continue;
            }
            if (!split.inner.empty()) joint->positions = patterns.grid(base, options);
            const auto bolts = joint->positions.size();
            if (task.quick && bolts <= most_bolts) {
                // What cannot come in need not be assessed; what equals the last may still come in by its reserve.
                if (!bounds[bolts]) bounds[bolts] = at_best(*joint);
                if (*bounds[bolts] > threshold || (has_state && must_slip(*joint, found.assessment->state))) continue;
            }
            Diagnostics fault;
            if (bolts > most_bolts)
                fault.error({"pattern.size", "too many bolts", variant.at, "", {}, ""});
            else
                check_geometry(*joint, variant, fault);
            if (fault.any()) {
                if (!task.quick) refuse(index, options, fault);
            } else if (task.quick) {
                look_at_quickly(*joint, outer, index);
                if (!has_state && least_of_any_pattern(found.assessment->state) > task.target * spared) {
                    found.seen += last - inner - 1;
                    return;
                }
                has_state = true;
            } else {
                look_at(*joint, outer, index, options);
            }
        }
    }
};

}  // namespace

void Tally::add(const Tally& other) {
    variants += other.variants;
    refused += other.refused;
    failed += other.failed;
    passed += other.passed;
    if (other.failed > 0)
        for (std::size_t i = 0; i < failed_by.size(); ++i) failed_by[i] += other.failed_by[i];
}

std::vector<std::size_t> options_of(const std::vector<Choice>& choices, std::size_t index) {
    const Split split(choices);
    return options_at(split, choices, index / split.inners, index % split.inners);
}

std::optional<Joint> joint_of(const SearchTask& task, std::size_t index, Diagnostics& diagnostics) {
    return read_joint(variant_of(task.root, task.choices, options_of(task.choices, index)), task.tables, diagnostics, task.read_file);
}

std::vector<std::string> search_warnings(const SearchTask& task) {
    std::vector<std::string> out;
    std::string unseen;
    bool pattern = false;
    for (const auto& choice : task.choices)
        for (const auto& path : choice.paths) {
            pattern = pattern || path.compare(0, 7, "pattern") == 0;
            if (task.objective == Objective::parts || path.compare(0, 5, "part[") != 0) continue;
            const Node* part = task.root.locate(path.substr(0, path.find(']') + 1));
            const Node* kind = part == nullptr ? nullptr : part->find("kind");
            const auto rest = path.substr(path.find(']') + 1);
            const bool rail = kind != nullptr && kind->text == "section" && rest.compare(0, 5, ".tube") != 0;
            const Node* outline = part == nullptr ? nullptr : part->find("outline");
            const bool runs_on = kind != nullptr && kind->text == "plate" && (outline == nullptr || outline->entries.size() < 4);
            if (rail || runs_on) unseen += fmt::format("{}{}", unseen.empty() ? "" : ", ", choice.path);
        }
    if (!unseen.empty())
        out.push_back(fmt::format("{} does not see what is chosen for {}: the rail, and a plate that runs on, are not counted in it",
                                  word_of(task.objective), unseen));
    if (pattern)
        out.emplace_back(
            "the loads stand as the file gives them for every pattern: a share that was reckoned for one pattern, as that of a side load, "
            "must be reckoned anew for the chosen one");
    return out;
}

void check_options(const SearchTask& task, Diagnostics& diagnostics) {
    // One choice at a time leaves its first option: a mistake in what all variants share is told once.
    const auto each_option = [&task](const auto& visit) {
        for (const auto& choice : task.choices) {
            std::vector<std::size_t> options(task.choices.size(), 0);
            auto& option = options[static_cast<std::size_t>(&choice - task.choices.data())];
            for (; option < choice.options.size(); ++option) visit(choice, variant_of(task.root, task.choices, options));
        }
    };
    std::set<std::tuple<int, int, std::string>> told;
    each_option([&](const Choice&, const Node& variant) {
        Diagnostics found;
        JointFile file;
        read_node(variant, Path{}, file, ReadContext{found});
        report_names(file, variant, task.tables, found);
        for (const auto& d : found.sorted())
            if (told.emplace(d.at.line, d.at.column, d.message).second) diagnostics.error(d);
    });
    if (diagnostics.any() || task.objective != Objective::cost) return;
    each_option([&](const Choice& choice, const Node& variant) {
        Diagnostics ignored;
        const auto joint = read_joint(variant, task.tables, ignored, task.read_file);
        if (!joint) return;
        const auto& section = joint->section;
        const Row<StockTube>* stock = !section || section->tube.arrangement == TubeArrangement::none ? nullptr
                                      : section->tube.stock                                          ? &*section->tube.stock
                                                                                                     : &section->tube.candidates.front();
        const auto cost = cost_of(*joint, {stock, mm(1)}, task.tables);
        if (!cost.missing.empty() && told.emplace(0, 0, cost.missing).second)
            diagnostics.error({"price.missing",
                               fmt::format("the table prices has no price for \"{}\"", cost.missing),
                               choice.at,
                               "",
                               {},
                               "lay a prices.toml of the shop's over the built-in tables with --data"});
    });
}

SearchAnswer search(const SearchTask& task, Progress& progress) {
    const Split split(task.choices);
    const Patterns patterns(task, split);
    constexpr std::size_t chunk = 256;
    const auto chunks = (split.inners + chunk - 1) / chunk;
    const auto blocks = split.outers * chunks;
    progress.total = split.outers * split.inners;
    const auto threads = std::max(1U, task.threads);
    std::vector<std::unique_ptr<Found>> found;
    for (unsigned i = 0; i < threads; ++i) found.push_back(std::make_unique<Found>(task));
    std::atomic<double> threshold = std::numeric_limits<double>::infinity();
    in_blocks(blocks, threads, progress, [&](unsigned thread, std::size_t block) {
        const auto outer = block / chunks, first = block % chunks * chunk, last = std::min(split.inners, first + chunk);
        Block{task, split, patterns, threshold, *found[thread]}.run(outer, first, last);
        progress.done += last - first;
    });

    SearchAnswer answer;
    answer.variants = progress.total;
    Found all(task);
    for (const auto& one : found) {
        all.ranking.add(one->ranking);
        all.front.add(one->front);
        all.total.add(one->total);
        for (std::size_t i = 0; i < all.options.size(); ++i)
            for (std::size_t o = 0; o < all.options[i].size(); ++o) all.options[i][o].add(one->options[i][o]);
        for (const auto& [code, count] : one->refusals) all.refusals[code] += count;
        if (one->example && (!all.example || one->example->first < all.example->first)) all.example = one->example;
        answer.seen += one->seen;
    }
    answer.best = all.ranking.sorted();
    answer.front = all.front.sorted();
    answer.total = all.total;
    answer.options = std::move(all.options);
    answer.refusals = std::move(all.refusals);
    if (all.example) answer.refusal_example = all.example->second;
    answer.complete = answer.seen == answer.variants;
    Diagnostics ignored;
    if (!answer.best.empty())
        if (const auto joint = joint_of(task, answer.best.front().index, ignored); joint) answer.own_tables = own_tables_of(*joint);
    return answer;
}

}  // namespace faywright
