// SPDX-License-Identifier: MIT
#pragma once

#include <algorithm>
#include <atomic>
#include <cstddef>
#include <exception>
#include <mutex>
#include <thread>
#include <vector>

/// Long work in blocks on several threads.
namespace faywright {

/// What long work tells while it runs, and the way to end it early. Shared by all its threads.
struct Progress {
    std::atomic<std::size_t> done = 0, total = 0;  ///< in the work's own units
    std::atomic<bool> stop = false;                ///< asks for what has been found so far
};

/// Threads that are worth starting; at least one.
[[nodiscard]] inline unsigned usable_threads() { return std::max(1U, std::thread::hardware_concurrency()); }

/// Calls `work(thread, block)` for every block, in no order, on so many threads. A block that was begun is finished: what is asked to
/// stop begins no other. A result that is kept by block, or joined in the order of blocks, is the same on any number of threads.
/// The first exception of any block is thrown again here.
template <class Work>
void in_blocks(std::size_t blocks, unsigned threads, const Progress& progress, Work&& work) {
    std::atomic<std::size_t> next = 0;
    std::mutex guard;
    std::exception_ptr failure;
    const auto run = [&](unsigned thread) {
        try {
            for (auto block = next++; block < blocks && !progress.stop.load(std::memory_order_relaxed); block = next++) work(thread, block);
        } catch (...) {
            const std::lock_guard lock(guard);
            if (!failure) failure = std::current_exception();
            next = blocks;
        }
    };
    {
        std::vector<std::jthread> others;
        for (unsigned thread = 1; thread < threads && thread < blocks; ++thread) others.emplace_back(run, thread);
        run(0);
    }
    if (failure) std::rethrow_exception(failure);
}

}  // namespace faywright
