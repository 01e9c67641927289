// SPDX-License-Identifier: MIT
#include "assess/search.hpp"
#include "joint/joints.hpp"
#include "joint/random_joint.hpp"
#include "report/search.hpp"

#include <doctest/doctest.h>

#include <random>
#include <set>

using namespace joint_tests;

namespace {

Node tree_of(const std::string& text) {
    Diagnostics diagnostics;
    auto root = parse_toml(text, "open.toml", diagnostics);
    if (!root) throw std::runtime_error(diagnostics.text());
    return *root;
}

/// A file that leaves open what `choices` names, and its search.
struct Open {
    Node root;
    std::vector<Choice> choices;
    SearchTask task;

    explicit Open(const std::string& text, Diagnostics& diagnostics)
        : root(tree_of(text)), choices(read_choices(root, diagnostics)), task{root, choices, built_in()} {}
    explicit Open(const std::string& text) : Open(text, scratch()) {}

    static Diagnostics& scratch() {
        static Diagnostics none;
        return none;
    }
};

SearchAnswer searched(SearchTask task, bool quick, unsigned threads) {
    task.quick = quick;
    task.threads = threads;
    Progress progress;
    return search(task, progress);
}

std::string list_of(const std::vector<Candidate>& list) {
    std::string out;
    for (const auto& c : list)
        out += fmt::format("{} {:.17g} {:.17g} {} {} {:.17g}\n", c.index, c.objective, c.utilisation, c.governing->id, c.bill.pieces,
                           in_kg(c.bill.mass));
    return out;
}

std::string told(const Tally& t) {
    std::string out = fmt::format("{} {} {} {}:", t.variants, t.refused, t.failed, t.passed);
    for (const auto n : t.failed_by) out += fmt::format(" {}", n);
    return out;
}

std::string all_of(const SearchAnswer& a) {
    auto out = list_of(a.best) + "front\n" + list_of(a.front) + told(a.total) + '\n';
    for (const auto& choice : a.options)
        for (const auto& option : choice) out += told(option) + '\n';
    for (const auto& [code, count] : a.refusals) out += fmt::format("{} {}\n", code, count);
    return out + a.refusal_example;
}

/// A few of many possible choices on one of the demo joints, the same for the same seed.
std::string random_space(unsigned seed) {
    std::mt19937 dice(seed);
    const auto one_of = [&dice](unsigned n) { return static_cast<unsigned>(dice() % n); };
    const std::vector<std::vector<std::string>> menu{
        {R"("bolt.size")", R"("M10")", R"("M12")", R"("M14")", R"("M16")", R"("M20")"},
        {R"("bolt.class")", R"("8.8")", R"("10.9")", R"("5.6")"},
        {R"("bolt.finish")", R"("hot-dip galvanised, waxed")", R"("hot-dip galvanised, dry")"},
        {R"("tightening.proof-utilisation")", "0.5", "0.6", "0.7", "0.75"},
        {R"("bolt.fully-threaded")", "true", "false"},
    };
    const unsigned which = one_of(3);
    std::string text = which == 0 ? lapped_rail : which == 1 ? two_cheeks : plain_plates;
    std::string choices = "\n[choices]\n";
    for (const auto& line : menu) {
        if (one_of(2) == 0) continue;
        std::set<std::string> options;
        for (unsigned i = 0; i < 1 + one_of(3); ++i) options.insert(line[1 + one_of(static_cast<unsigned>(line.size()) - 1)]);
        choices += fmt::format("{} = [{}]\n", line.front(), fmt::join(options, ", "));
    }
    if (which == 1) {
        choices += fmt::format("\"pattern.columns\" = {{from = 1, to = {}, step = 1}}\n", 2 + one_of(2));
        choices += fmt::format("\"pattern.pitch-x\" = {{from = \"{} mm\", to = \"180 mm\", step = \"{} mm\"}}\n", 60 + 10 * one_of(8),
                               20 + one_of(30));
        if (one_of(2) == 0) choices += "\"part.outer cheek.thickness, part.inner cheek.thickness\" = [\"6 mm\", \"8 mm\", \"10 mm\"]\n";
    } else {
        choices += which == 0
                       ? "\"part.drawbar.thickness\" = [\"8 mm\", \"10 mm\", \"12 mm\"]\n"
                       : "\"part[2]\" = [\"none\", {kind = \"layer\", material = \"jointing compound\"}, {kind = \"layer\", material = "
                         "\"nylon gasket\"}]\n";
    }
    return text + choices;
}

/// The ranked list by the plainest means: every variant read, assessed, and sorted.
std::vector<Candidate> by_hand(const Open& open) {
    std::map<std::pair<std::vector<std::size_t>, std::size_t>, Candidate> best;
    std::size_t variants = 1;
    for (const auto& choice : open.choices) variants *= choice.options.size();
    const auto assessment = std::make_unique<Assessment>();
    for (std::size_t index = 0; index < variants; ++index) {
        Diagnostics diagnostics;
        const auto joint = joint_of(open.task, index, diagnostics);
        if (!joint) continue;
        assess(*joint, *assessment);
        const auto& governing = assessment->results[assessment->governing];
        if (!assessment->passes || governing.outcome.utilisation > open.task.target * rounding) continue;
        const auto& tube = assessment->state.tube;
        const TubeCut cut{tube.present ? tube.stock : nullptr, tube.length};
        const auto bill = bill_of(*joint, cut);
        const double objective = open.task.objective == Objective::mass ? in_kg(bill.mass) : bill.pieces;
        const Candidate candidate{index, objective, bill, governing.outcome.utilisation, governing.info};
        auto options = options_of(open.choices, index);
        for (std::size_t i = 0; i < options.size(); ++i)
            if (open.choices[i].path.rfind("pattern.", 0) == 0) options[i] = 0;
        const auto [held, fresh] = best.try_emplace({options, joint->positions.size()}, candidate);
        const auto key = [](const Candidate& c) { return std::tuple(c.objective, c.utilisation, c.index); };
        if (!fresh && key(candidate) < key(held->second)) held->second = candidate;
    }
    std::vector<Candidate> list;
    for (const auto& [likeness, candidate] : best) list.push_back(candidate);
    std::sort(list.begin(), list.end(), [](const Candidate& a, const Candidate& b) {
        return std::tie(a.objective, a.utilisation, a.index) < std::tie(b.objective, b.utilisation, b.index);
    });
    if (list.size() > open.task.best) list.resize(open.task.best);
    return list;
}

int lines_of(const std::string& text) { return static_cast<int>(std::count(text.begin(), text.end(), '\n')); }

/// Codes of what is told, and the line of anything told elsewhere than under the choices.
std::string errors_of(const std::string& choices) {
    Diagnostics diagnostics;
    const Open open(std::string(two_cheeks) + "\n[choices]\n" + choices + '\n', diagnostics);
    if (!diagnostics.any()) check_options(open.task, diagnostics);
    std::string out;
    for (const auto& d : diagnostics.sorted()) out += fmt::format("{}{}", out.empty() ? "" : " ", d.code);
    for (const auto& d : diagnostics.sorted())
        if (d.at.line <= lines_of(two_cheeks)) out += fmt::format(" at line {}", d.at.line);
    return out;
}

}  // namespace

TEST_SUITE("assess/search") {
    TEST_CASE("the quick search, the exhaustive one and the plainest means agree on 200 random spaces") {
        std::size_t passing = 0, variants = 0;
        for (unsigned seed = 1; seed <= 200; ++seed) {
            CAPTURE(seed);
            Open open(random_space(seed));
            open.task.best = 1 + seed % 4;
            open.task.objective = seed % 3 == 0 ? Objective::parts : Objective::mass;
            open.task.target = seed % 5 == 0 ? 0.95 : 1.0;
            const auto whole = searched(open.task, false, 1);
            const auto quick = searched(open.task, true, 1);
            const auto hand = list_of(by_hand(open));
            CHECK(list_of(whole.best) == hand);
            CHECK(list_of(quick.best) == hand);
            CHECK(whole.complete);
            CHECK(whole.total.variants == whole.variants);
            CHECK(whole.total.passed + whole.total.failed + whole.total.refused == whole.variants);
            passing += whole.total.passed;
            variants += whole.variants;
        }
        MESSAGE(passing << " of " << variants << " variants pass");
        CHECK(passing > 100);
        CHECK(passing < variants);
    }

    TEST_CASE("the answer is the same on any number of threads") {
        const Open open(random_space(7) + "\"tightening.retighten\" = [true, false]\n");
        const auto one = all_of(searched(open.task, false, 1));
        for (const unsigned threads : {2U, 3U, 7U}) {
            CHECK(all_of(searched(open.task, false, threads)) == one);
            CHECK(list_of(searched(open.task, true, threads).best) == list_of(searched(open.task, false, 1).best));
        }
    }

    TEST_CASE("every option's tally sums to the total, and its failures to its failed") {
        const Open open(random_space(11));
        const auto answer = searched(open.task, false, 1);
        for (const auto& choice : answer.options) {
            Tally sum;
            for (const auto& option : choice) sum.add(option);
            CHECK(told(sum) == told(answer.total));
        }
        std::size_t failed = 0, refused = 0;
        for (const auto n : answer.total.failed_by) failed += n;
        for (const auto& [code, count] : answer.refusals) refused += count;
        CHECK(failed == answer.total.failed);
        CHECK(refused == answer.total.refused);
    }

    TEST_CASE("the front rises in the objective and falls in utilisation, and begins with the best") {
        const Open open(
            std::string(two_cheeks) +
            "\n[choices]\n\"bolt.size\" = [\"M12\", \"M14\", \"M16\"]\n\"tightening.proof-utilisation\" = {from = 0.4, to = 0.8, "
            "step = 0.05}\n\"pattern.columns\" = [2, 3]\n\"pattern.pitch-x\" = {from = \"60 mm\", to = \"160 mm\", step = \"10 mm\"}\n");
        const auto answer = searched(open.task, false, 1);
        REQUIRE(answer.front.size() > 1);
        CHECK(answer.front.front().objective == answer.best.front().objective);
        for (std::size_t i = 1; i < answer.front.size(); ++i) {
            CHECK(answer.front[i].objective > answer.front[i - 1].objective);
            CHECK(answer.front[i].utilisation < answer.front[i - 1].utilisation);
        }
    }

    TEST_CASE("the file written for the chosen joint is whole and passes") {
        for (const unsigned seed : {1U, 2U, 3U, 4U, 5U, 6U}) {
            const Open open(random_space(seed));
            const auto answer = searched(open.task, false, 1);
            for (const auto& candidate : answer.best) {
                Diagnostics diagnostics;
                const auto joint = read_joint(variant_file(open.task, candidate), "best.toml", built_in(), diagnostics);
                INFO(diagnostics.text());
                REQUIRE(joint);
                const auto assessment = assessed(*joint);
                CHECK(assessment->passes);
                CHECK(assessment->results[assessment->governing].outcome.utilisation == candidate.utilisation);
            }
        }
    }

    TEST_CASE("asked to stop, it tells what it has and that this is not all") {
        const Open open(random_space(3));
        Progress progress;
        progress.stop = true;
        const auto answer = search(open.task, progress);
        CHECK_FALSE(answer.complete);
        CHECK(answer.seen == 0);
        CHECK(search_text(open.task, answer, "title").find("INCOMPLETE") != std::string::npos);
    }

    TEST_CASE("a part may be left out, and two parts may take one option together") {
        const Open open(std::string(plain_plates) +
                        "\n[choices]\n\"part[2]\" = [\"none\"]\n\"part[0].series, part[4].series\" = [\"ISO 7093-1\"]\n");
        Diagnostics diagnostics;
        const auto joint = joint_of(open.task, 0, diagnostics);
        INFO(diagnostics.text());
        REQUIRE(joint);
        CHECK(joint->layers.empty());
        CHECK(joint->bolt.head_washer->series == "ISO 7093-1");
        CHECK(joint->bolt.nut_washer->series == "ISO 7093-1");
    }

    TEST_CASE("choices that are no choices are refused at their place") {
        CHECK(errors_of("\"bolt.size\" = [\"M12\", \"M16\"]") == "");
        const std::vector<std::pair<const char*, const char*>> bad{
            {"", "choices.none"},
            {"\"bolt.size\" = \"M12\"", "choices.options"},
            {"\"bolt.size\" = []", "choices.options"},
            {"\"bolt.size\" = [\"M13\"]", "name.unknown"},
            {"\"bolt.size\" = [\"M12\", \"M12\"]", "choices.options"},
            {"\"bolt.sise\" = [\"M12\"]", "key.unknown"},
            {"\"bolt.length\" = [\"M12\"]", "unit.dimension"},
            {"\"bolt.length\" = [100]", "unit.missing"},
            {"\"bolt.length\" = [\"100 kN\"]", "unit.dimension"},
            {"\"part[99].thickness\" = [\"8 mm\"]", "choices.path"},
            {"\"part[x].thickness\" = [\"8 mm\"]", "choices.path"},
            {"\"part[1.thickness\" = [\"8 mm\"]", "choices.path"},
            {"\"part.nobody.thickness\" = [\"8 mm\"]", "choices.path"},
            {"\"\" = [1]", "choices.path"},
            {"\"title.x\" = [1]", "choices.path choices.demand"},
            {"\"service-class\" = [\"off road\", \"as coded\"]", "choices.demand"},
            {"\"load-case[0].force\" = [[\"1 N\", \"0 N\", \"0 N\"]]", "choices.demand"},
            {"\"temperatures.hottest\" = [\"20 degC\"]", "choices.demand"},
            {"\"bolt.size\" = [\"M12\"]\n\"bolt.size, bolt.class\" = [\"M16\"]", "choices.overlap"},
            {"\"part[0]\" = [\"none\"]\n\"part[0].series\" = [\"ISO 7089\"]", "choices.overlap"},
            {"\"part[0].series\" = [\"none\"]", "choices.options"},
            {"bolt.size = [\"M14\", \"M16\"]", "choices.options"},
            {"\"choices.x\" = [1]", "choices.path"},
            {"\"pattern.rows\" = [\"two\"]", "type.wrong"},
            {"\"pattern.rows\" = [0]", "number.range"},
            {"\"pattern.rows\" = [1.5]", "type.wrong"},
            {"\"pattern.pitch-x\" = {from = \"60 mm\", to = \"80 mm\"}", "choices.range"},
            {"\"pattern.pitch-x\" = {from = \"60 mm\", to = \"80 cm\", step = \"1 mm\"}", "choices.range"},
            {"\"pattern.pitch-x\" = {from = \"60 mm\", to = \"50 mm\", step = \"1 mm\"}", "choices.range"},
            {"\"pattern.pitch-x\" = {from = \"60 mm\", to = \"80 mm\", step = \"0 mm\"}", "choices.range"},
            {"\"pattern.pitch-x\" = {from = \"60 mm\", to = \"80 mm\", step = \"-1 mm\"}", "choices.range"},
            {"\"pattern.pitch-x\" = {from = \"60 mm\", to = \"80 mm\", step = \"1 um\"}", "choices.range"},
            {"\"pattern.pitch-x\" = {from = \"60 mm\", to = \"80 mm\", step = \"0.001 mm\"}", "choices.range"},
            {"\"pattern.pitch-x\" = {from = \"60 mm\", to = \"80 mm\", stepp = \"1 mm\", step = \"1 mm\"}", "choices.range"},
            {"\"pattern.pitch-x\" = {from = \"x\", to = \"80 mm\", step = \"1 mm\"}", "choices.range"},
            {"\"pattern.pitch-x\" = {from = nan, to = 2, step = 1}", "choices.range"},
        };
        for (const auto& each : bad) {
            INFO(std::string(each.first));
            CHECK(errors_of(each.first) == std::string(each.second));
        }
    }

    TEST_CASE("a cost without its price is refused, with prices it is the sum of the pieces") {
        Tables priced = built_in();
        Open open(std::string(plain_plates) + "\n[choices]\n\"bolt.size\" = [\"M12\"]\n");
        open.task.objective = Objective::cost;
        Diagnostics missing;
        check_options(open.task, missing);
        CHECK(missing.any());
        auto& rows = std::get<Table<Price>>(priced.all).rows;
        const auto price = [&rows](const char* name, double each, double per_kilogram) {
            Row<Price> row;
            row.name = name;
            row.each = each;
            row.per_kilogram = per_kilogram;
            rows.push_back(row);
        };
        price("bolt", 9, 0);
        price("bolt M12 8.8", 2, 0);
        price("nut", 0.5, 0);
        price("washer", 0.25, 0);
        price("plate", 0, 3);
        price("plate aluminium", 0, 8);
        price("layer", 1, 0);
        price("bolting", 4, 0);
        const SearchTask task{open.root, open.choices, priced, Objective::cost};
        Diagnostics none;
        check_options(task, none);
        CHECK_FALSE(none.any());
        const auto answer = searched(task, false, 1);
        REQUIRE(answer.best.size() == 1);
        // Bracket 240 x 180 x 8 of steel, floor plate 280 x 220 x 10 of aluminium, four bolts, one layer.
        const double steel = 0.240 * 0.180 * 0.008 * 7850, aluminium = 0.280 * 0.220 * 0.010 * 2700;
        CHECK(answer.best.front().objective == doctest::Approx(4 * (2 + 0.5 + 2 * 0.25 + 4) + 3 * steel + 8 * aluminium + 1).epsilon(1e-3));
    }
}
