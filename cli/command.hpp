// SPDX-License-Identifier: MIT
#pragma once

#include "assess/search.hpp"
#include "assess/uncertainty.hpp"
#include "joint/joint.hpp"
#include "tables/tables.hpp"

#include <cstdio>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>
#include <vector>

/// What every command shares: its options, its way to read and to write, its exit statuses.
namespace faywright::cli {

/// Exit statuses, the same for every command.
enum Exit { passed = 0, failed = 1, unusable = 2, trouble = 3 };

enum class Format { text, json, csv, markdown };

struct Common {
    Format format = Format::text;
    std::optional<std::string> output;
    std::optional<std::filesystem::path> data;
    bool no_color = false;
    std::string input;  ///< the file read
    /// Every file read for the answer: the output must not replace one. Shared, so that readers may add to it.
    std::shared_ptr<std::vector<std::string>> inputs = std::make_shared<std::vector<std::string>>();
};

/// Whether joints are to be drawn at random, and how many.
struct SamplingOptions {
    bool uncertainty = false;
    std::optional<std::string> samples, seed, threads;
};

struct CheckOptions : Common {
    std::optional<std::string> explain;
    bool batch = false;
    SamplingOptions sampling;
};

struct SizeOptions : Common {
    Objective objective = Objective::mass;
    double target = 1.0;
    std::size_t best = 5;
    bool quick = false;
    unsigned threads = 0;  ///< none: as many as are worth starting
};

struct LoadsOptions : Common {};

struct CalcOptions : Common {
    std::string name;
    std::vector<std::string> inputs;
    bool help = false;
};

struct TableOptions : Common {
    std::string name;
};

struct IsolateOptions : Common {
    std::vector<std::string> exposures;
    bool all = false;
};

struct SubstituteOptions : Common {
    std::optional<std::string> offer, offers;  ///< one offer, or a supplier's list
    std::vector<std::string> exposures;
};

struct ReportOptions : Common {
    int joints = 1;                             ///< of a trailer, for the parts list
    std::vector<std::string> only;              ///< documents; none: all that can be made
    std::optional<std::string> against, offer;  ///< what the joint is compared with: another joint file, or an offered part
    SamplingOptions sampling;
};

struct CouplesOptions : Common {
    std::optional<std::string> exposure, isolation, with;
    std::vector<std::string> explain;
    double area_ratio = 1.0;
    bool all = false;
};

struct TorqueOptions : Common {
    std::string size, bolt_class = "8.8", finish = "hot-dip galvanised, waxed", tightening = "torque wrench, friction class B";
    std::optional<std::string> torque, utilisation;
};

int check(const CheckOptions& options);
int check_batch(const CheckOptions& options);
int size(const SizeOptions& options);
int loads(const LoadsOptions& options);
int calc(const CalcOptions& options);
int table(const TableOptions& options);
int torque(const TorqueOptions& options);
int isolate(const IsolateOptions& options);
int substitute(const SubstituteOptions& options);
int report(const ReportOptions& options);
int couples(const CouplesOptions& options);

/// The text of a file, or of standard input for "-"; a diagnostic where it cannot be read.
[[nodiscard]] std::optional<std::string> read_input(const std::string& path, std::string& shown_name, Diagnostics& diagnostics);

/// Reads the files a joint file names: paths start from its folder. Standard input has none, and reads none.
/// What they read is remembered in `common.inputs`.
[[nodiscard]] FileReader files_beside(const std::string& path, const Common& common);

/// The joint of the file that the options name, with the files it names in turn. Mistakes go to the diagnostics; nothing after one.
[[nodiscard]] std::optional<Joint> joint_named(const Common& common, const Tables& tables, Diagnostics& diagnostics);

/// Exposures that the command line names: rows of the table, or site files by their paths. Mistakes go to the diagnostics.
[[nodiscard]] std::vector<Row<Exposure>> exposures_named(const std::vector<std::string>& names, const Tables& tables, const Common& common,
                                                         Diagnostics& diagnostics);

/// The sampling asked for.
[[nodiscard]] Sampling sampling_of(const SamplingOptions& options, Diagnostics& diagnostics);

/// Draws joints, and tells on a terminal how far it is.
[[nodiscard]] Uncertainty sampled(const Assessment& assessment, const Sampling& sampling);

/// Writes all of it at once; false where that failed.
[[nodiscard]] bool print_all(std::FILE* stream, std::string_view text);

/// One line of trouble on standard error.
void tell(std::string_view message);

/// Prints to standard output, or writes the whole file or none of it. Gives the status `wanted` unless writing failed.
[[nodiscard]] int deliver(const std::string& text, const Common& common, int wanted);

/// A document of a set: its file's name, and all of it.
struct NamedDocument {
    std::string file, text;
};

/// Writes a set of documents into the folder named by `common.output`, which is made where it is not there; each file whole, and what is
/// written told on standard output. Gives the status `wanted` unless writing failed.
[[nodiscard]] int deliver_all(const std::vector<NamedDocument>& documents, const Common& common, int wanted);

/// Prints the diagnostics on standard error; status 2.
[[nodiscard]] int refuse(const Diagnostics& diagnostics);

/// Whether standard output may carry colour: a terminal, NO_COLOR unset, and not asked otherwise.
[[nodiscard]] bool may_color(const Common& common);

/// A diagnostic about the command line itself.
void complain(Diagnostics& diagnostics, const std::string& code, const std::string& message, const std::string& help = "");

}  // namespace faywright::cli
