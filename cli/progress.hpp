// SPDX-License-Identifier: MIT
#pragma once

#include "assess/parallel.hpp"

#include <string>
#include <thread>

namespace faywright::cli {

/// While it lives: Ctrl-C ends the work early, and on a terminal a bar with an estimate stands on standard error once a second has
/// passed. One at a time.
class Watch {
public:
    Watch(Progress& progress, std::string what);
    ~Watch();
    Watch(const Watch&) = delete;
    Watch& operator=(const Watch&) = delete;

private:
    Progress& progress_;
    std::string what_;
    std::jthread drawing_;
};

/// The line of the bar, 79 columns at most: "searching  [####------]  41 %, 0:07 left".
[[nodiscard]] std::string progress_line(const std::string& what, std::size_t done, std::size_t total, double seconds);

}  // namespace faywright::cli
