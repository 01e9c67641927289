// SPDX-License-Identifier: MIT
// Variants of the demo's choices searched in a second: every one assessed, or quick; on one thread and on two.
#include "assess/search.hpp"

#include <benchmark/benchmark.h>

#include <cstdlib>
#include <fstream>
#include <iostream>
#include <iterator>

namespace {

using namespace faywright;

/// The demo's choices with a pattern to the millimetre: some ninety thousand variants.
struct Space {
    Diagnostics diagnostics;
    Tables tables = load_tables(std::nullopt, diagnostics);
    Node root;
    std::vector<Choice> choices;

    Space() {
        std::ifstream file(FAYWRIGHT_SOURCE_DIR "/cli/demo/drawbar-choices.toml");
        std::string text{std::istreambuf_iterator<char>(file), {}};
        const auto change = [&text](const std::string& what, const std::string& with) { text.replace(text.find(what), what.size(), with); };
        change("step = \"20 mm\"", "step = \"1 mm\"");
        change("[4, 6, 8, 10]", "{from = 4, to = 12, step = 1}");
        if (auto tree = parse_toml(text, "choices.toml", diagnostics)) root = std::move(*tree);
        choices = read_choices(root, diagnostics);
        if (diagnostics.any()) {
            std::cerr << diagnostics.text();
            std::exit(2);
        }
    }
};

void searched(benchmark::State& state, bool quick, unsigned threads) {
    static const Space space;
    SearchTask task{space.root, space.choices, space.tables};
    task.quick = quick;
    task.threads = threads;
    std::size_t variants = 0;
    for (auto _ : state) {
        Progress progress;
        const auto answer = search(task, progress);
        variants += answer.variants;
        benchmark::DoNotOptimize(answer.best.front().index);
    }
    state.SetItemsProcessed(static_cast<std::int64_t>(variants));
}

void every_one(benchmark::State& state) { searched(state, false, 1); }
void every_one_on_two(benchmark::State& state) { searched(state, false, 2); }
void quick(benchmark::State& state) { searched(state, true, 1); }

BENCHMARK(every_one)->UseRealTime()->Unit(benchmark::kMillisecond);
BENCHMARK(every_one_on_two)->UseRealTime()->Unit(benchmark::kMillisecond);
BENCHMARK(quick)->UseRealTime()->Unit(benchmark::kMillisecond);

}  // namespace

BENCHMARK_MAIN();
