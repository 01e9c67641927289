// SPDX-License-Identifier: MIT
#include "command.hpp"

#include <fmt/format.h>
#include <unistd.h>

#include <array>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <iostream>

namespace faywright::cli {

void complain(Diagnostics& diagnostics, const std::string& code, const std::string& message, const std::string& help) {
    diagnostics.error({code, message, TextPosition{std::make_shared<const std::string>("command line")}, "", {}, help});
}

std::optional<std::string> read_input(const std::string& path, std::string& shown_name, Diagnostics& diagnostics) {
    shown_name = path == "-" ? "standard input" : path;
    std::string text;
    bool good = false;
    // No more than the reader accepts, and one byte to tell that there is more.
    const auto take = [&text](std::istream& stream) {
        std::array<char, 16384> chunk{};
        while (text.size() <= largest_input && stream) {
            stream.read(chunk.data(), chunk.size());
            text.append(chunk.data(), static_cast<std::size_t>(stream.gcount()));
        }
        return !stream.bad();
    };
    if (path == "-") {
        good = take(std::cin);
    } else {
        std::error_code failure;
        if (std::filesystem::is_directory(path, failure)) {
            complain(diagnostics, "file.unreadable", fmt::format("\"{}\" is a folder; a file is wanted", path));
            return std::nullopt;
        }
        std::ifstream stream(path, std::ios::binary);
        good = stream.is_open() && take(stream);
    }
    if (!good) {
        complain(diagnostics, "file.unreadable", fmt::format("the file \"{}\" cannot be read", path),
                 "give the path of a file, or - for standard input");
        return std::nullopt;
    }
    return text;
}

int deliver(const std::string& text, const Common& common, int wanted) {
    if (!common.output || *common.output == "-") {
        std::fwrite(text.data(), 1, text.size(), stdout);
        if (std::fflush(stdout) != 0) return trouble;
        return wanted;
    }
    // Written beside its place and moved there: a reader never sees half of it.
    const std::filesystem::path target(*common.output);
    auto beside = target;
    beside += fmt::format(".{}.part", getpid());
    {
        std::ofstream stream(beside, std::ios::binary);
        stream << text;
        stream.close();
        if (!stream) {
            std::error_code ignored;
            std::filesystem::remove(beside, ignored);
            fmt::print(stderr, "faywright: \"{}\" cannot be written\n", target.string());
            return trouble;
        }
    }
    std::error_code failure;
    std::filesystem::rename(beside, target, failure);
    if (failure) {
        std::filesystem::remove(beside, failure);
        fmt::print(stderr, "faywright: \"{}\" cannot be written\n", target.string());
        return trouble;
    }
    return wanted;
}

int refuse(const Diagnostics& diagnostics) {
    const auto text = diagnostics.text();
    std::fwrite(text.data(), 1, text.size(), stderr);
    return unusable;
}

bool may_color(const Common& common) {
    const char* no_color = std::getenv("NO_COLOR");
    const char* terminal = std::getenv("TERM");
    const bool plain = (no_color != nullptr && *no_color != '\0') || terminal == nullptr || std::string_view(terminal) == "dumb";
    return !common.no_color && !common.output && !plain && isatty(STDOUT_FILENO) == 1;
}

}  // namespace faywright::cli
