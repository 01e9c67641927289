// SPDX-License-Identifier: MIT
#include "progress.hpp"

#include "command.hpp"

#include <fmt/format.h>
#include <unistd.h>

#include <chrono>
#include <cmath>
#include <condition_variable>
#include <csignal>
#include <mutex>

namespace faywright::cli {

namespace {

/// A signal reaches no object: the one watched stands here while its watch lives.
std::atomic<Progress*> watched = nullptr;
static_assert(std::atomic<Progress*>::is_always_lock_free && std::atomic<bool>::is_always_lock_free);

void interrupted(int signal) {
    Progress* progress = watched;
    // Asked a second time, or with nothing to end, the program ends as it would without us.
    if (progress == nullptr || progress->stop.exchange(true)) {
        std::signal(signal, SIG_DFL);
        std::raise(signal);
    }
}

void draw(const std::stop_token& ended, const Progress& progress, const std::string& what) {
    using Clock = std::chrono::steady_clock;
    const auto begin = Clock::now();
    std::mutex guard;
    std::condition_variable_any wake;
    std::unique_lock lock(guard);
    bool drawn = false;
    for (auto pause = std::chrono::milliseconds(1000); !wake.wait_for(lock, ended, pause, [&] { return ended.stop_requested(); });
         pause = std::chrono::milliseconds(200)) {
        const auto seconds = std::chrono::duration<double>(Clock::now() - begin).count();
        static_cast<void>(print_all(stderr, fmt::format("\r{}", progress_line(what, progress.done, progress.total, seconds))));
        drawn = true;
    }
    if (drawn) static_cast<void>(print_all(stderr, fmt::format("\r{:79}\r", "")));
}

}  // namespace

std::string progress_line(const std::string& what, std::size_t done, std::size_t total, double seconds) {
    constexpr int width = 30;
    if (total == 0) return fmt::format("{:<16.16}  {} done{:40}", what, done, "");
    const double share = std::min(1.0, static_cast<double>(done) / static_cast<double>(total));
    const int filled = static_cast<int>(std::floor(share * width));
    const double left = share > 0.0 ? seconds * (1.0 - share) / share : 0.0;
    const auto whole = static_cast<long>(std::ceil(std::min(left, 359999.0)));
    const auto time = share == 0.0   ? std::string("estimating")
                      : whole < 3600 ? fmt::format("{}:{:02} left", whole / 60, whole % 60)
                                     : fmt::format("{} h {:02} min left", whole / 3600, whole / 60 % 60);
    return fmt::format("{:<16.16}  [{:#<{}}{:-<{}}]  {:3.0f} %, {:<16}", what, "", filled, "", width - filled, std::floor(100.0 * share),
                       time);
}

Watch::Watch(Progress& progress, std::string what) : progress_(progress), what_(std::move(what)) {
    watched = &progress_;
    std::signal(SIGINT, interrupted);
    if (isatty(STDERR_FILENO) == 1) drawing_ = std::jthread([this](const std::stop_token& ended) { draw(ended, progress_, what_); });
}

Watch::~Watch() {
    if (drawing_.joinable()) {
        drawing_.request_stop();
        drawing_.join();
    }
    watched = nullptr;
    std::signal(SIGINT, SIG_DFL);
}

}  // namespace faywright::cli
