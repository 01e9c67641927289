// SPDX-License-Identifier: MIT
// Mixed potentials a second: two and four metals in contact, areas and oxygen as the compiler cannot know them.
#include "corrosion/mixed_potential.hpp"

#include <benchmark/benchmark.h>

#include <array>
#include <vector>

namespace {

using namespace faywright;

struct Water {
    std::array<double, 4> areas;
    double limit;
};

std::vector<Water> waters() {
    std::vector<Water> list;
    for (int i = 0; i < 256; ++i) {
        const auto share = [i](int k) { return 1.0 + (i * k % 97); };
        list.push_back({{share(37), share(41), share(53), share(61)}, 10.0 + share(29)});
    }
    return list;
}

void couple(benchmark::State& state) {
    const auto list = waters();
    const auto count = static_cast<std::size_t>(state.range(0));
    std::array<ElectrodeMember, 4> members{};
    const std::array metals{WorkingMetal::aluminium, WorkingMetal::stainless, WorkingMetal::zinc, WorkingMetal::carbon_steel};
    for (std::size_t k = 0; k < metals.size(); ++k)
        members[k] = {mm2(100), working_polarisation(metals[k]), working_dissolution(metals[k])};
    for (auto _ : state) {
        double sum = 0;
        for (const auto& water : list) {
            for (std::size_t k = 0; k < count; ++k) members[k].area = mm2(water.areas[k]);
            const auto found = mixed_potential(std::span<const ElectrodeMember>(members).first(count), uA_per_cm2(water.limit));
            sum += found ? found->potential.value() : 0.0;
        }
        benchmark::DoNotOptimize(sum);
    }
    state.SetItemsProcessed(static_cast<std::int64_t>(state.iterations()) * static_cast<std::int64_t>(list.size()));
}

BENCHMARK(couple)->Arg(2)->Arg(4);

}  // namespace

BENCHMARK_MAIN();
