// SPDX-License-Identifier: MIT
// Full assessments of the demo joint for each second on one core: every load case, bolt and check.
#include "assess/uncertainty.hpp"

#include <benchmark/benchmark.h>

#include <cstdlib>
#include <fstream>
#include <iostream>
#include <iterator>
#include <memory>
#include <new>

namespace {

std::size_t allocations = 0;

}  // namespace

// Out of line: inlined halves of a pair look like a mismatch to the compiler.
[[gnu::noinline]] void* operator new(std::size_t size) {
    ++allocations;
    if (void* memory = std::malloc(size); memory != nullptr) return memory;
    throw std::bad_alloc();
}
[[gnu::noinline]] void operator delete(void* memory) noexcept { std::free(memory); }
[[gnu::noinline]] void operator delete(void* memory, std::size_t) noexcept { std::free(memory); }

namespace {

using namespace faywright;

Joint demo() {
    Diagnostics diagnostics;
    const auto tables = load_tables(std::nullopt, diagnostics);
    std::ifstream file(FAYWRIGHT_SOURCE_DIR "/cli/demo/drawbar.toml");
    auto joint = read_joint({std::istreambuf_iterator<char>(file), {}}, "drawbar.toml", tables, diagnostics);
    if (!joint) {
        std::cerr << diagnostics.text();
        std::exit(2);
    }
    return *joint;
}

/// The same joint again and again: bending of the walls is worked out once.
void same_section(benchmark::State& state) {
    const auto joint = demo();
    const auto assessment = std::make_unique<Assessment>();
    assess(joint, *assessment);
    const auto before = allocations;
    for (auto _ : state) {
        assess(joint, *assessment);
        benchmark::DoNotOptimize(assessment->passes);
    }
    state.counters["allocations"] = static_cast<double>(allocations - before) / static_cast<double>(state.iterations());
    state.SetItemsProcessed(static_cast<std::int64_t>(state.iterations()));
}

/// Two sections in turn: bending of the walls is worked out every time.
void new_section(benchmark::State& state) {
    auto first = demo(), second = demo();
    second.section->height += mm(10);
    const auto assessment = std::make_unique<Assessment>();
    bool turn = false;
    for (auto _ : state) {
        assess(turn ? first : second, *assessment);
        turn = !turn;
        benchmark::DoNotOptimize(assessment->passes);
    }
    state.SetItemsProcessed(static_cast<std::int64_t>(state.iterations()));
}

/// One joint drawn after another on one thread: what the outcomes of the uncertainty need of it.
void drawn(benchmark::State& state) {
    constexpr std::size_t samples = 20000;
    const auto joint = demo();
    const auto assessment = std::make_unique<Assessment>();
    assess(joint, *assessment);
    UncertaintySettings settings;
    settings.sampling.samples = samples;
    std::size_t least = 0, most = 0;
    for (auto _ : state) {
        Progress progress;
        const auto before = allocations;
        const auto told = uncertainty(*assessment, settings, progress);
        least = allocations - before;
        benchmark::DoNotOptimize(told.done);
    }
    // A draw of twice the joints has more blocks, each with a seed: that is all it may take besides.
    settings.sampling.samples = 2 * samples;
    Progress progress;
    const auto before = allocations;
    benchmark::DoNotOptimize(uncertainty(*assessment, settings, progress).done);
    most = allocations - before;
    state.counters["allocations"] = static_cast<double>(most - least) / static_cast<double>(samples);
    state.SetItemsProcessed(static_cast<std::int64_t>(state.iterations() * samples));
}

BENCHMARK(same_section);
BENCHMARK(new_section);
BENCHMARK(drawn);

}  // namespace

BENCHMARK_MAIN();
