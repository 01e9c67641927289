// SPDX-License-Identifier: MIT
#pragma once

#include "assess/assessment.hpp"
#include "assess/bill.hpp"
#include "assess/parallel.hpp"
#include "joint/choices.hpp"

#include <array>
#include <map>
#include <optional>
#include <string>
#include <vector>

/// The best joint among all that a file's choices make.
namespace faywright {

enum class Objective { mass, cost, parts };
template <>
struct Words<Objective> {
    static constexpr std::array<std::pair<Objective, std::string_view>, 3> all{
        {{Objective::mass, "mass"}, {Objective::cost, "cost"}, {Objective::parts, "parts"}}};
};

/// What is searched, and for what. The referred must outlive the search.
struct SearchTask {
    const Node& root;
    const std::vector<Choice>& choices;
    const Tables& tables;
    Objective objective = Objective::mass;
    double target = 1.0;   ///< greatest utilisation any check may reach
    std::size_t best = 5;  ///< how many distinct joints are wanted
    bool quick = false;    ///< only the best: what cannot be among them is not assessed, nothing is told of the rest
    unsigned threads = 1;
    FileReader read_file = {};  ///< of the trailer file a joint file may name; called by all threads
};

/// One joint of the search that passes.
struct Candidate {
    std::size_t index = 0;  ///< of the variant; options_of() tells its options
    double objective = 0.0;
    Bill bill;
    double utilisation = 0.0;
    const CheckInfo* governing = nullptr;
};

inline constexpr std::size_t most_checks = 64;

/// What became of the variants that share something. Of those that fail, how many each check governs, in the order of all_checks().
struct Tally {
    std::size_t variants = 0, refused = 0, failed = 0, passed = 0;
    std::array<std::size_t, most_checks> failed_by{};

    void add(const Tally& other);
};

struct SearchAnswer {
    std::size_t variants = 0, seen = 0;  ///< all of them; those looked at, fewer only where the search was ended early
    /// Distinct in what they are made of, best first; of those made of the same parts the one with most reserve.
    std::vector<Candidate> best;
    std::vector<Candidate> front;             ///< none is both better and less used, best first; not in a quick search
    Tally total;                              ///< not in a quick search, nor the next three
    std::vector<std::vector<Tally>> options;  ///< of each choice and option
    std::map<std::string, std::size_t> refusals;
    std::string refusal_example;          ///< message of the first variant refused
    std::vector<std::string> own_tables;  ///< rows of a shop's own tables that the best joint uses
    bool complete = true;
};

/// Options of a variant, one of each choice.
[[nodiscard]] std::vector<std::size_t> options_of(const std::vector<Choice>& choices, std::size_t index);

/// The joint of a variant; nothing where it cannot be built, for the reasons in the diagnostics.
[[nodiscard]] std::optional<Joint> joint_of(const SearchTask& task, std::size_t index, Diagnostics& diagnostics);

/// What the reader must know of such a search: what the objective does not see, and loads that may belong to another pattern.
[[nodiscard]] std::vector<std::string> search_warnings(const SearchTask& task);

/// Checks every option by itself before the search: what is written wrong is a mistake, not a variant ruled out.
void check_options(const SearchTask& task, Diagnostics& diagnostics);

/// Looks at every variant. The answer is the same on any number of threads.
[[nodiscard]] SearchAnswer search(const SearchTask& task, Progress& progress);

}  // namespace faywright
