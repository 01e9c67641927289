// SPDX-License-Identifier: MIT
#include "command.hpp"
#include "joint/resolve.hpp"

#include "quantity/characters.hpp"

#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
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
        good = take(std::cin) && std::ferror(stdin) == 0;
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
        complain(diagnostics, "file.unreadable",
                 path == "-" ? std::string("standard input cannot be read") : fmt::format("the file \"{}\" cannot be read", path),
                 "give the path of a file, or - for standard input");
        return std::nullopt;
    }
    return text;
}

FileReader files_beside(const std::string& path, const Common& common) {
    if (path == "-") return {};
    return
        [folder = std::filesystem::path(path).parent_path(), inputs = common.inputs](const std::string& named) -> std::optional<NamedText> {
            NamedText file;
            Diagnostics unreadable;
            // A file that is none may never end.
            std::error_code failure;
            if (!std::filesystem::is_regular_file(folder / named, failure)) return std::nullopt;
            auto text = read_input((folder / named).string(), file.name, unreadable);
            inputs->push_back((folder / named).string());
            if (!text) return std::nullopt;
            file.text = std::move(*text);
            return file;
        };
}

std::optional<Joint> joint_named(const Common& common, const Tables& tables, Diagnostics& diagnostics) {
    std::string name;
    const auto text = read_input(common.input, name, diagnostics);
    return text ? read_joint(*text, name, tables, diagnostics, files_beside(common.input, common)) : std::nullopt;
}

std::vector<Row<Exposure>> exposures_named(const std::vector<std::string>& names, const Tables& tables, const Common& common,
                                           Diagnostics& diagnostics) {
    TextPosition here{std::make_shared<const std::string>("command line")};
    return take_exposures(
        names, tables, files_beside("./command-line", common), [&](std::size_t) { return here; }, diagnostics);
}

bool print_all(std::FILE* stream, std::string_view text) {
    return std::fwrite(text.data(), 1, text.size(), stream) == text.size() && std::fflush(stream) == 0;
}

void tell(std::string_view message) { static_cast<void>(print_all(stderr, fmt::format("faywright: {}\n", shown(message, 400)))); }

namespace {

/// What a link points to, so that the file is written and the link stays.
std::filesystem::path behind_links(std::filesystem::path path) {
    std::error_code failure;
    for (int links = 0; links < 16 && std::filesystem::is_symlink(path, failure); ++links)
        path = path.parent_path() / std::filesystem::read_symlink(path, failure);
    return path;
}

/// A file written beside its place, to be moved there.
struct Staged {
    std::string beside;
    std::filesystem::path target;
};

/// Writes beside the place: a reader never sees half of it. Nothing where that failed.
std::optional<Staged> stage(const std::filesystem::path& target, const std::string& text) {
    struct stat before {};
    const bool exists = stat(target.c_str(), &before) == 0;
    if (exists && access(target.c_str(), W_OK) != 0) return std::nullopt;
    auto beside = (target.parent_path() / ".faywright-XXXXXX").string();
    const int handle = mkstemp(beside.data());
    if (handle < 0) return std::nullopt;
    const mode_t mask = umask(0);
    umask(mask);
    std::FILE* stream = fdopen(handle, "w");
    bool good = stream != nullptr && print_all(stream, text) && fchmod(handle, exists ? before.st_mode & 07777U : 0666U & ~mask) == 0;
    if (stream != nullptr) good = std::fclose(stream) == 0 && good;
    if (!good) {
        std::remove(beside.c_str());
        return std::nullopt;
    }
    return Staged{std::move(beside), target};
}

bool put_in_place(const Staged& staged) {
    const bool good = std::rename(staged.beside.c_str(), staged.target.c_str()) == 0;
    if (!good) std::remove(staged.beside.c_str());
    return good;
}

bool replace_file(const std::filesystem::path& target, const std::string& text) {
    const auto staged = stage(target, text);
    return staged && put_in_place(*staged);
}

/// A pipe or a device is written to, not replaced.
bool write_through(const std::filesystem::path& target, const std::string& text) {
    std::FILE* stream = std::fopen(target.c_str(), "w");
    if (stream == nullptr) return false;
    const bool good = print_all(stream, text);
    return std::fclose(stream) == 0 && good;
}

}  // namespace

namespace {

/// Whether a place is that of a file read for the answer; then nothing is written.
bool is_input(const std::filesystem::path& target, const Common& common) {
    std::error_code failure;
    auto inputs = *common.inputs;
    inputs.push_back(common.input);
    if (common.data)
        for (std::filesystem::directory_iterator entry(*common.data, failure), end; !failure && entry != end; entry.increment(failure))
            inputs.push_back(entry->path().string());
    return std::any_of(inputs.begin(), inputs.end(),
                       [&](const std::string& input) { return std::filesystem::equivalent(target, input, failure); });
}

}  // namespace

int deliver_all(const std::vector<NamedDocument>& documents, const Common& common, int wanted) {
    const std::filesystem::path folder(*common.output);
    std::error_code failure;
    std::filesystem::create_directories(folder, failure);
    if (!std::filesystem::is_directory(folder, failure)) {
        tell(fmt::format("\"{}\" is no folder and cannot be made one", *common.output));
        return trouble;
    }
    for (const auto& document : documents) {
        const auto target = folder / document.file;
        if (is_input(target, common)) {
            tell(fmt::format("\"{}\" is an input itself; nothing was written", target.string()));
            return unusable;
        }
        if (std::filesystem::exists(target, failure) && !std::filesystem::is_regular_file(target, failure)) {
            tell(fmt::format("\"{}\" is there and no file; nothing was written", target.string()));
            return trouble;
        }
    }
    // All are written before the first is put in place: sheets of two joints are never mixed.
    std::vector<Staged> all;
    for (const auto& document : documents) {
        auto staged = stage(behind_links(folder / document.file), document.text);
        if (!staged) {
            for (const auto& each : all) std::remove(each.beside.c_str());
            tell(fmt::format("\"{}\" cannot be written; nothing was", (folder / document.file).string()));
            return trouble;
        }
        all.push_back(std::move(*staged));
    }
    std::string written;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (!put_in_place(all[i])) {
            tell(fmt::format("\"{}\" cannot be written; those before it were", all[i].target.string()));
            return trouble;
        }
        written += (folder / documents[i].file).string() + '\n';
    }
    return print_all(stdout, written) || errno == EPIPE ? wanted : trouble;
}

int deliver(const std::string& text, const Common& common, int wanted) {
    if (!common.output || *common.output == "-") {
        if (print_all(stdout, text)) return wanted;
        if (errno != EPIPE) tell("standard output cannot be written");
        return trouble;
    }
    std::error_code failure;
    const std::filesystem::path target(*common.output);
    if (is_input(target, common)) {
        tell(fmt::format("\"{}\" is an input itself; nothing was written", *common.output));
        return unusable;
    }
    const auto status = std::filesystem::status(target, failure);
    const bool plain = !std::filesystem::exists(status) || std::filesystem::is_regular_file(status);
    if (!std::filesystem::is_directory(status) && (plain ? replace_file(behind_links(target), text) : write_through(target, text)))
        return wanted;
    tell(fmt::format("\"{}\" cannot be written", *common.output));
    return trouble;
}

int refuse(const Diagnostics& diagnostics) {
    static_cast<void>(print_all(stderr, diagnostics.text()));
    return unusable;
}

bool may_color(const Common& common) {
    const char* no_color = std::getenv("NO_COLOR");
    const char* terminal = std::getenv("TERM");
    const bool plain =
        (no_color != nullptr && *no_color != '\0') || terminal == nullptr || *terminal == '\0' || std::string_view(terminal) == "dumb";
    return !common.no_color && !common.output && !plain && isatty(STDOUT_FILENO) == 1;
}

}  // namespace faywright::cli
