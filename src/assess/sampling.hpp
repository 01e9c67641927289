// SPDX-License-Identifier: MIT
#pragma once

#include "assess/parallel.hpp"
#include "assess/statistics.hpp"

#include <boost/random/mersenne_twister.hpp>
#include <boost/random/normal_distribution.hpp>

#include <cstdint>
#include <random>
#include <span>

namespace faywright {

/// How a model is sampled.
struct Sampling {
    std::size_t samples = 100000;
    std::uint64_t seed = 1;
    unsigned threads = 1;
};

/// What one sample came to: responses are numbers of a limited range, events did or did not happen.
struct Sample {
    std::array<double, most_responses> response{};
    std::array<bool, most_events> event{};
};

/// What all samples came to.
struct Sampled {
    std::size_t wanted = 0, done = 0;
    Moments moments;  ///< of the scores, then of the responses
    std::array<Quantiles, most_responses> quantiles;
    std::array<std::size_t, most_events> happened{};
};

/// Blocks are of a size that depends on the number of samples alone, and never more than this: memory does not grow with the samples.
inline constexpr std::size_t most_blocks = 1000, least_block = 1000;

/// Monte Carlo. `make_model()` gives a function of its own to each thread: from standard normal scores, `(std::span<const double>,
/// Sample&)`. Each block has a generator of its own, seeded by seed and block, and the blocks' moments are joined in the blocks' order: the
/// same seed and number of samples give the same answer, to the last bit, on any number of threads. Asked to stop, it gives what has been
/// sampled.
template <class MakeModel>
[[nodiscard]] Sampled sample(const Sampling& sampling, std::size_t scores, std::size_t responses, Progress& progress,
                             MakeModel&& make_model) {
    const auto block_size = std::max(least_block, (sampling.samples + most_blocks - 1) / most_blocks);
    const auto blocks = (sampling.samples + block_size - 1) / block_size;
    const auto threads = static_cast<unsigned>(std::min<std::size_t>(std::max(1U, sampling.threads), blocks));
    using Model = decltype(make_model());
    struct Worker {
        Model model;
        std::array<Quantiles, most_responses> quantiles{};
        std::array<std::size_t, most_events> happened{};
    };
    std::vector<Worker> workers;
    workers.reserve(threads);
    for (unsigned i = 0; i < threads; ++i) workers.push_back({make_model()});
    std::vector<Moments> moments(blocks);
    progress.total = sampling.samples;
    in_blocks(blocks, threads, progress, [&](unsigned thread, std::size_t block) {
        auto& worker = workers[thread];
        const auto low_half = [](std::uint64_t word) { return static_cast<std::uint32_t>(word & 0xffffffffU); };
        std::seed_seq key{low_half(sampling.seed), low_half(sampling.seed >> 32U), low_half(block), low_half(block >> 32U)};
        boost::random::mt19937_64 generator(key);
        boost::random::normal_distribution<double> standard;
        Moments sums(scores + responses);
        std::array<double, most_scores + most_responses> row{};
        Sample outcome;
        const auto end = std::min(sampling.samples, (block + 1) * block_size);
        for (auto i = block * block_size; i < end; ++i) {
            for (std::size_t k = 0; k < scores; ++k) row[k] = standard(generator);
            worker.model(std::span<const double>(row.data(), scores), outcome);
            for (std::size_t k = 0; k < responses; ++k) {
                row[scores + k] = outcome.response[k];
                worker.quantiles[k].add(outcome.response[k]);
            }
            for (std::size_t k = 0; k < most_events; ++k) worker.happened[k] += outcome.event[k] ? 1U : 0U;
            sums.add(std::span<const double>(row.data(), scores + responses));
        }
        moments[block] = sums;
        progress.done += end - block * block_size;
    });
    Sampled all;
    all.wanted = sampling.samples;
    all.moments = Moments(scores + responses);
    for (const auto& block : moments) all.moments.join(block);
    all.done = all.moments.count();
    // Whole numbers: joined in any order they are the same.
    for (const auto& worker : workers) {
        for (std::size_t k = 0; k < most_responses; ++k) all.quantiles[k].join(worker.quantiles[k]);
        for (std::size_t k = 0; k < most_events; ++k) all.happened[k] += worker.happened[k];
    }
    return all;
}

}  // namespace faywright
