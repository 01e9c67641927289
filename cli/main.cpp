// SPDX-License-Identifier: MIT
#include "command.hpp"
#include "quantity/nearest.hpp"

#include <fmt/format.h>
#include <CLI/CLI.hpp>

#include <fcntl.h>
#include <unistd.h>

#include <csignal>
#include <exception>
#include <sstream>

namespace {

using namespace faywright;

const std::vector<std::string> command_names{"check", "size",    "isolate", "substitute", "report",
                                             "loads", "couples", "calc",    "table",      "torque"};

constexpr const char* examples =
    "Design aid for bolted joints of steel to hollow aluminium. Not a certificate.\n"
    "\n"
    "  faywright check drawbar.toml                    assess a joint file\n"
    "  faywright check drawbar.toml --explain slip     one check line by line\n"
    "  faywright size choices.toml -o best.toml        the best of a file's choices\n"
    "  faywright isolate drawbar.toml --exposure \"surf coast\"\n"
    "                                                  isolation methods, ranked\n"
    "  faywright substitute drawbar.toml offer.toml    a supplier's other part: yes or no\n"
    "  faywright report drawbar.toml -o papers         calculation, shop sheet, drawings\n"
    "  faywright couples --exposure \"surf coast\"       which metals eat which\n"
    "  faywright loads trailer.toml                    a trailer's masses to load cases\n"
    "  faywright torque --size M12 --class 8.8         torque and clamp band\n"
    "  faywright calc bearing --help                   one calculator's inputs\n"
    "  faywright table materials                       rows and their sources\n"
    "\n"
    "Exit status: 0 passes, 1 a check fails or no offer is accepted, 2 the input cannot be used, 3 other trouble.\n";

const std::vector<std::pair<std::string, cli::Format>> format_names{
    {"text", cli::Format::text}, {"json", cli::Format::json}, {"csv", cli::Format::csv}, {"md", cli::Format::markdown}};

/// `formats`: how many of the names above the command writes.
void add_common(CLI::App& app, cli::Common& common, std::size_t formats = 2) {
    std::vector<std::string> words;
    for (std::size_t i = 0; i < formats; ++i) words.push_back(format_names[i].first);
    app.add_option_function<std::string>(
           "--format",
           [&common](const std::string& word) {
               for (const auto& [name, format] : format_names)
                   if (name == word) common.format = format;
           },
           formats == 2 ? "text or json" : "text, json, csv or md")
        ->check(CLI::IsMember(words));
    app.add_option_function<std::string>(
        "-o,--output", [&common](const std::string& path) { common.output = path; }, "write to this file, whole or not at all");
    app.add_option_function<std::string>(
        "--data", [&common](const std::string& path) { common.data = path; }, "folder of your own tables, laid over the built-in ones");
    app.add_flag("--no-color", common.no_color, "no colour, whatever the terminal");
}

/// What CLI11 cannot say: a misspelt command or option, with the nearest right one.
std::string better_message(const CLI::App& app, const CLI::ParseError& error, int argc, char** argv) {
    if (argc > 1 && argv[1][0] == '-' && argv[1][1] != '\0')
        return fmt::format("{} stands before any command; the command comes first: faywright COMMAND {}", argv[1], argv[1]);
    for (int i = 1; i < argc; ++i) {
        const std::string word(argv[i]);
        if (word.empty() || word.front() == '-') continue;
        if (std::find(command_names.begin(), command_names.end(), word) != command_names.end()) break;
        return "there is no command " + quoted_with_nearest(word, command_names);
    }
    for (const auto* command : app.get_subcommands()) {
        std::vector<std::string> options;
        for (const auto* option : command->get_options()) {
            for (const auto& name : option->get_lnames()) options.push_back("--" + name);
            for (const auto& name : option->get_snames()) options.push_back("-" + name);
        }
        for (int i = 1; i < argc; ++i) {
            const auto word = std::string(argv[i]).substr(0, std::string(argv[i]).find('='));
            if (word.size() < 2 || word.front() != '-' || std::find(options.begin(), options.end(), word) != options.end()) continue;
            return fmt::format("{} has no option {}", command->get_name(), quoted_with_nearest(word, options));
        }
    }
    return error.what();
}

int run(int argc, char** argv) {
    CLI::App app{"faywright: bolted joints of galvanised steel to hollow aluminium rails", "faywright"};
    app.footer(examples);
    app.require_subcommand(0, 1);
    app.set_version_flag("--version", std::string("faywright ") + FAYWRIGHT_CLI_VERSION + "\nMIT licence");

    cli::CheckOptions check;
    auto* check_command = app.add_subcommand("check", "assess a joint: every check, clamp force over life, verdict");
    check_command->add_option("joint", check.input, "joint file, or - for standard input");
    check_command->add_flag("--batch", check.batch,
                            "each line of standard input is a joint file's path or a joint as JSON; a JSON line each");
    check_command->add_option_function<std::string>(
        "--explain", [&check](const std::string& id) { check.explain = id; },
        "derive one check, or preload, stiffness, clamp, tube or corrosion, line by line");
    const auto samples = [](CLI::App& command, cli::SamplingOptions& into) {
        auto* flag = command.add_flag("--uncertainty", into.uncertainty,
                                      "how likely slip, opening, yield and lost clamp are, and what matters most");
        const auto number = [&](const char* name, std::optional<std::string>& to, const char* meaning) {
            command
                .add_option_function<std::string>(
                    name, [&to](const std::string& word) { to = word; }, meaning)
                ->needs(flag);
        };
        number("--samples", into.samples, "joints drawn (100000)");
        number("--seed", into.seed, "another number, another draw (1)");
        number("--threads", into.threads, "threads that share the work (all); the answer is the same on any number");
        return flag;
    };
    samples(*check_command, check.sampling)->excludes("--explain");
    add_common(*check_command, check);

    cli::SizeOptions size;
    auto* size_command = app.add_subcommand("size", "search a joint file's choices for the best joint that passes");
    size_command->add_option("joint", size.input, "joint file with [choices], or - for standard input")->required();
    size_command
        ->add_option_function<std::string>(
            "--objective",
            [&size](const std::string& word) {
                for (const auto& [objective, text] : Words<Objective>::all)
                    if (text == word) size.objective = objective;
            },
            "mass, cost or parts: the least is the best (mass)")
        ->check(CLI::IsMember({"mass", "cost", "parts"}));
    // The ranges are told where they are broken; in the help they would stand in the program's own types.
    const auto within = [](auto least, auto most) { return CLI::Range(least, most).description(""); };
    // A range lets through what compares with nothing.
    const CLI::Validator no_nan(
        [](const std::string& word) { return word.find_first_not_of("0123456789.eE+-") == std::string::npos ? "" : "a number is wanted"; },
        "");
    size_command->add_option("--target", size.target, "greatest utilisation a check may reach (1)")
        ->check(within(0.05, 1.0))
        ->check(no_nan);
    size_command->add_option("--best", size.best, "how many distinct joints are listed (5)")->check(within(1, 100));
    size_command->add_flag("--quick", size.quick, "only the best: leave out what cannot be among them, and the reasons for the rest");
    size_command->add_option("--threads", size.threads, "threads; absent: one a processor")->check(within(1, 256));
    add_common(*size_command, size);
    size_command->get_option("--output")->description("write the chosen joint file here; the report stays on standard output");

    cli::IsolateOptions isolate;
    auto* isolate_command = app.add_subcommand("isolate", "rank isolation methods for the joint, over one or several exposures");
    isolate_command->add_option("joint", isolate.input, "joint file, or - for standard input")->required();
    const auto exposures = [](CLI::App& command, std::vector<std::string>& into) {
        command
            .add_option("--exposure", into,
                        "row of the exposures table, or a site file ending in .toml; one each time the option is given (the joint "
                        "file's own)")
            ->allow_extra_args(false);
    };
    exposures(*isolate_command, isolate.exposures);
    isolate_command->add_flag("--all", isolate.all, "every composition, not only the best with each element between the faces");
    add_common(*isolate_command, isolate, 4);

    cli::SubstituteOptions substitute;
    auto* substitute_command = app.add_subcommand("substitute", "review a part that a supplier offers in place of the specified one");
    substitute_command->add_option("joint", substitute.input, "joint file, or - for standard input")->required();
    substitute_command->add_option_function<std::string>(
        "offer", [&substitute](const std::string& path) { substitute.offer = path; }, "offer file: what the supplier offers");
    substitute_command->add_option_function<std::string>(
        "--offers", [&substitute](const std::string& path) { substitute.offers = path; },
        "a supplier's list instead, as comma or semicolon separated text: one line an offer, the best first");
    exposures(*substitute_command, substitute.exposures);
    add_common(*substitute_command, substitute, 4);

    cli::ReportOptions report;
    auto* report_command =
        app.add_subcommand("report", "the documents of a joint: calculation report, shop sheet, care sheet, parts list, hole drawings");
    report_command->add_option("joint", report.input, "joint file, or - for standard input")->required();
    report_command->add_option_function<std::string>(
        "-o,--output", [&report](const std::string& path) { report.output = path; },
        "folder for the documents, made where it is not there");
    report_command
        ->add_option("--only", report.only,
                     "one document, each time the option is given: calculation, sheet, care, parts, holes, comparison")
        ->allow_extra_args(false);
    report_command->add_option_function<std::string>(
        "--against", [&report](const std::string& path) { report.against = path; },
        "another joint file: what changed from it, and what that did to each check");
    report_command
        ->add_option_function<std::string>(
            "--offer", [&report](const std::string& path) { report.offer = path; },
            "a supplier's offer file: what the part changes, and what that does to each check")
        ->excludes("--against");
    report_command->add_option("--joints", report.joints, "equal joints that the parts list is for (1)")->check(within(1, 1000));
    samples(*report_command, report.sampling);
    report_command->add_option_function<std::string>(
        "--data", [&report](const std::string& path) { report.data = path; }, "folder of your own tables, laid over the built-in ones");

    cli::CouplesOptions couples;
    auto* couples_command = app.add_subcommand("couples", "the galvanic-couple table by exposure and isolation");
    const auto word = [&](const char* name, std::optional<std::string>& into, const char* meaning) {
        couples_command->add_option_function<std::string>(
            name, [&into](const std::string& given) { into = given; }, meaning);
    };
    word("--exposure", couples.exposure, "row of the exposures table, or a site file; absent: each category");
    word("--isolation", couples.isolation, "row of the isolation table for the faying faces");
    word("--with", couples.with, "metal that the others are held against (the rail's aluminium)");
    couples_command->add_option("--area-ratio", couples.area_ratio, "wetted cathode over anode (1)")
        ->check(within(0.001, 1000.0))
        ->check(no_nan);
    couples_command->add_flag("--all", couples.all, "every metal against every other");
    couples_command->add_option("--explain", couples.explain, "two metals: how their cell came about")->expected(2);
    add_common(*couples_command, couples);

    cli::LoadsOptions loads;
    auto* loads_command = app.add_subcommand("loads", "a trailer's masses and dimensions to load cases of its joints");
    loads_command->add_option("trailer", loads.input, "trailer file, or - for standard input")->required();
    add_common(*loads_command, loads);

    cli::CalcOptions calc;
    auto* calc_command = app.add_subcommand("calc", "any one calculator: inputs with units in, answer with steps and source out");
    calc_command->set_help_flag();
    calc_command->add_flag("-h,--help", calc.help, "the inputs of a calculator, or all calculators");
    calc_command->add_option("name", calc.name, "calculator; absent: list them");
    calc_command->add_option("inputs", calc.inputs, "key=value, values as in a joint file");
    add_common(*calc_command, calc);

    cli::TableOptions table;
    auto* table_command = app.add_subcommand("table", "the data tables, each row with its source");
    table_command->add_option("name", table.name, "table; absent: list them");
    add_common(*table_command, table);

    cli::TorqueOptions torque;
    auto* torque_command = app.add_subcommand("torque", "tightening torque and clamp-force band");
    torque_command->add_option("--size", torque.size, "thread size; absent: all sizes");
    torque_command->add_option("--class", torque.bolt_class, "property class")->capture_default_str();
    torque_command->add_option("--finish", torque.finish, "row of the finishes table")->capture_default_str();
    torque_command->add_option("--tightening", torque.tightening, "row of the tightening table")->capture_default_str();
    torque_command->add_option_function<std::string>(
        "--torque", [&torque](const std::string& value) { torque.torque = value; }, "torque; absent: from the utilisation");
    torque_command->add_option_function<std::string>(
        "--utilisation", [&torque](const std::string& value) { torque.utilisation = value; },
        "share of proof strength reached at the low end of friction (0.75)");
    add_common(*torque_command, torque);

    try {
        app.parse(argc, argv);
    } catch (const CLI::Success& wish) {
        std::ostringstream text;
        const int status = app.exit(wish, text, text);
        return cli::deliver(text.str(), {}, status);
    } catch (const CLI::ParseError& error) {
        cli::tell(better_message(app, error, argc, argv));
        static_cast<void>(cli::print_all(stderr, "faywright --help shows the commands\n"));
        return cli::unusable;
    }
    if (check_command->parsed()) return check.batch ? cli::check_batch(check) : cli::check(check);
    if (size_command->parsed()) return cli::size(size);
    if (isolate_command->parsed()) return cli::isolate(isolate);
    if (substitute_command->parsed()) return cli::substitute(substitute);
    if (report_command->parsed()) return cli::report(report);
    if (loads_command->parsed()) return cli::loads(loads);
    if (couples_command->parsed()) return cli::couples(couples);
    if (calc_command->parsed()) return cli::calc(calc);
    if (table_command->parsed()) return cli::table(table);
    if (torque_command->parsed()) return cli::torque(torque);
    return cli::deliver(examples, {}, cli::passed);
}

/// A file opened later must not take the place of a closed stream: that place is filled with what can be neither read nor written.
void fill_closed_streams() {
    for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO})
        if (fcntl(stream, F_GETFD) == -1) static_cast<void>(open("/dev/null", stream == STDIN_FILENO ? O_WRONLY : O_RDONLY));
}

}  // namespace

int main(int argc, char** argv) {
    // A reader that goes away is no crash of ours, nor is a file grown to its limit.
    std::signal(SIGPIPE, SIG_IGN);
    std::signal(SIGXFSZ, SIG_IGN);
    fill_closed_streams();
    try {
        return run(argc, argv);
    } catch (const std::exception& error) {
        cli::tell(error.what());
        return cli::trouble;
    }
}
