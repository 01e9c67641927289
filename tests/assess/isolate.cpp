// SPDX-License-Identifier: MIT
#include "assess/isolate.hpp"
#include "joint/joints.hpp"
#include "joint/reading.hpp"
#include "report/isolation.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <set>

using namespace joint_tests;

namespace {

Node tree_of(const std::string& text) {
    Diagnostics diagnostics;
    auto root = parse_toml(text, "joint.toml", diagnostics);
    if (!root) throw std::runtime_error(diagnostics.text());
    return *root;
}

std::vector<Row<Exposure>> places(const std::vector<std::string>& names) {
    std::vector<Row<Exposure>> out;
    for (const auto& name : names) out.push_back(*built_in().of<Exposure>().find(name));
    return out;
}

IsolationRanking ranked(const std::string& text, const std::vector<std::string>& exposures) {
    const auto root = tree_of(text);
    Diagnostics diagnostics;
    auto ranking = rank_isolation({root, built_in(), places(exposures)}, diagnostics);
    if (!ranking) throw std::runtime_error(diagnostics.text());
    return std::move(*ranking);
}

const MethodResult& method(const IsolationRanking& ranking, const std::string& name) {
    const auto found = std::find_if(ranking.results.begin(), ranking.results.end(), [&](const auto& r) { return r.method.name() == name; });
    REQUIRE_MESSAGE(found != ranking.results.end(), name);
    return *found;
}

const MemberOutlook& member(const MethodResult& result, const std::string& name) {
    const auto& members = result.exposures.front().members;
    const auto found = std::find_if(members.begin(), members.end(), [&](const auto& m) { return m.name == name; });
    REQUIRE_MESSAGE(found != members.end(), name);
    return *found;
}

std::size_t lines_of(const std::string& text) { return static_cast<std::size_t>(std::count(text.begin(), text.end(), '\n')); }

}  // namespace

TEST_SUITE("assess/isolate") {
    TEST_CASE("a soft gasket corrodes less and clamps less than compound assembled wet, on the demo joint") {
        const auto ranking = ranked(demo("drawbar.toml"), {"surf coast"});
        for (const auto* rest : {"bare bolt; galvanised steel tube; edges open", "bare bolt; galvanised steel tube; edges sealed",
                                 "bare bolt; aluminium tube; edges sealed"}) {
            const auto& gasket = method(ranking, std::string("EPDM gasket; ") + rest);
            const auto& compound = method(ranking, std::string("jointing compound; ") + rest);
            CHECK(gasket.clamp < 0.5 * compound.clamp);
            CHECK(member(gasket, "rail at drawbar").total.rate < member(compound, "rail at drawbar").total.rate);
            CHECK(member(gasket, "rail at drawbar").life > member(compound, "rail at drawbar").life);
            CHECK(member(gasket, "drawbar").life > member(compound, "drawbar").life);
            CHECK(!gasket.sustained);
            CHECK(compound.sustained);
        }
    }

    TEST_CASE("every composition is there once, those that pass first, then those that hold") {
        const auto ranking = ranked(demo("drawbar.toml"), {"inland farm"});
        std::set<std::string> names;
        for (const auto& r : ranking.results) names.insert(r.method.name());
        CHECK(names.size() == ranking.results.size());
        CHECK(ranking.results.size() == 16 * 3 * 4 * 2);
        CHECK(ranking.of_each_faying.size() == 16);
        bool passing = true, serving = true;
        for (const auto& r : ranking.results) {
            CHECK((passing || !r.passes));
            const bool serves = r.holds && r.shortest_life() > years(0);
            if (!r.passes) CHECK((serving || !serves));
            passing = passing && r.passes;
            if (!passing) serving = serving && serves;
        }
        CHECK(ranking.best().passes);
        CHECK(advice(ranking).find("Choose " + ranking.best().method.name()) == 0);
        REQUIRE(ranking.as_written);
        CHECK(ranking.results[*ranking.as_written].method.name() == "galvanised only; bare bolt; galvanised steel tube; edges sealed");
    }

    TEST_CASE("the method as written comes to what check says of the file") {
        for (const auto& name : demo_names()) {
            CAPTURE(name);
            const auto ranking = ranked(demo(name), {"C3"});
            if (!ranking.as_written) continue;
            Diagnostics diagnostics;
            const auto joint = read_joint(demo(name), name, built_in(), diagnostics);
            REQUIRE(joint);
            const auto a = assessed(*joint);
            const auto& own = ranking.results[*ranking.as_written];
            CHECK(own.holds == a->passes);
            CHECK(own.utilisation == doctest::Approx(a->results[a->governing].outcome.utilisation).epsilon(1e-12));
        }
    }

    TEST_CASE("a stainless tube never ranks before an aluminium one of the same method, nor open edges before sealed ones, by the sea") {
        const auto ranking = ranked(demo("drawbar.toml"), {"surf coast"});
        const auto place_of = [&](const std::string& name) {
            return std::find_if(ranking.results.begin(), ranking.results.end(), [&](const auto& r) { return r.method.name() == name; }) -
                   ranking.results.begin();
        };
        for (const auto& r : ranking.results) {
            if (!r.refused.empty()) continue;
            const auto name = r.method.name();
            if (name.find("stainless tube") != std::string::npos)
                CHECK(place_of(edited(name, "stainless tube", "aluminium tube")) < place_of(name));
            if (name.find("edges open") != std::string::npos) CHECK(place_of(edited(name, "edges open", "edges sealed")) < place_of(name));
        }
    }

    TEST_CASE("each element does to the joint what its row says: friction, layers, pressure") {
        const auto ranking = ranked(demo("drawbar.toml"), {"C3"});
        const std::string rest = "; bare bolt; galvanised steel tube; edges open";
        CHECK(*method(ranking, "jointing compound" + rest).slip > 3.0 * *method(ranking, "galvanised only" + rest).slip);
        CHECK(!method(ranking, "galvanised only" + rest).pressure_met);
        CHECK(*method(ranking, "nylon gasket" + rest).pressure_met == false);
        CHECK(*method(ranking, "jointing compound" + rest).pressure_met == true);
        CHECK(*method(ranking, "polyethylene tape" + rest).temperature_met == false);
        // The shoulder washer is a layer too.
        CHECK(*method(ranking, "galvanised only; nylon sleeve and shoulder washer; galvanised steel tube; edges open").pressure_met ==
              false);
        CHECK(method(ranking, "bare contact" + rest).exposures.front().first_to_go().name == "drawbar");
        CHECK(member(method(ranking, "painted, both faces" + rest), "drawbar").stake.find("under paint") != std::string::npos);
    }

    TEST_CASE("with a return wire of their own for the lamps a full set isolates, and only a full set") {
        const auto text =
            edited(demo("drawbar.toml"), "edges = \"edges sealed\"", "edges = \"edges sealed\"\nchassis-earth = \"one side\"");
        const auto ranking = ranked(text, {"surf coast"});
        const auto path = [&](const std::string& name) { return method(ranking, name).exposures.front().contacts.front().path; };
        const std::string tail = "; aluminium tube; edges open";
        CHECK(path("EPDM gasket; glass-epoxy sleeve and shoulder washer" + tail) < 0.05);
        CHECK(path("EPDM gasket; bare bolt" + tail) == 1.0);
        CHECK(path("jointing compound; glass-epoxy sleeve and shoulder washer" + tail) == 1.0);
        CHECK(path("EPDM gasket; nylon sleeve and shoulder washer" + tail) >
              path("EPDM gasket; glass-epoxy sleeve and shoulder washer" + tail));
    }

    TEST_CASE("a joint without a hollow section has no tube to choose") {
        const auto ranking = ranked(plain_plates, {"C3", "C5"});
        CHECK(ranking.results.size() == 16 * 3 * 2);
        for (const auto& r : ranking.results) CHECK(r.method.tube == nullptr);
    }

    TEST_CASE("plates on both faces: a layer goes into each faying plane") {
        const auto ranking = ranked(two_cheeks, {"C4"});
        const auto found = std::find_if(ranking.results.begin(), ranking.results.end(), [](const auto& r) {
            return r.method.faying->name == "EPDM gasket" && r.refused.empty() && r.method.fixing->name == "bare bolt";
        });
        REQUIRE(found != ranking.results.end());
        CHECK(found->exposures.front().contacts.front().electrolyte < 1.0);
        CHECK(found->exposures.front().contacts[1].electrolyte < 1.0);
    }

    TEST_CASE("without an exposure anywhere, or with a mistake in the file, nothing is ranked") {
        const auto root = tree_of(lapped_rail);
        Diagnostics none;
        CHECK(!rank_isolation({root, built_in(), {}}, none));
        CHECK(none.text().find("--exposure") != std::string::npos);
        const auto wrong = tree_of(edited(lapped_rail, "M16", "MM16"));
        Diagnostics said;
        CHECK(!rank_isolation({wrong, built_in(), places({"C3"})}, said));
        CHECK(said.text().find("the nearest is \"M16\"") != std::string::npos);
    }

    TEST_CASE("text, Markdown, lines of a spreadsheet and JSON tell of the same methods") {
        const auto ranking = ranked(demo("drawbar.toml"), {"inland farm", "surf coast"});
        const auto csv = ranking_csv(ranking, RankingExtent::all);
        std::size_t refused = 0;
        for (const auto& r : ranking.results) refused += r.refused.empty() ? 0 : 1;
        CHECK(lines_of(csv) == 1 + 2 * (ranking.results.size() - refused) + refused);
        const auto head = csv.substr(0, csv.find('\n'));
        const auto columns = std::count(head.begin(), head.end(), ',');
        // No cell of ours holds a comma outside quotes.
        for (std::size_t at = 0, line = 0; at < csv.size() && line < 50; ++line) {
            const auto end = csv.find('\n', at);
            long commas = 0;
            bool quoted = false;
            for (auto i = at; i < end; ++i) {
                if (csv[i] == '"') quoted = !quoted;
                if (csv[i] == ',' && !quoted) ++commas;
            }
            CHECK(commas == columns);
            at = end + 1;
        }
        for (const auto& text :
             {ranking_text(ranking, RankingExtent::of_each_faying), ranking_markdown(ranking, RankingExtent::of_each_faying)})
            for (const auto index : ranking.of_each_faying)
                CHECK(text.find(ranking.results[index].method.faying->name) != std::string::npos);
        const auto text = ranking_text(ranking, RankingExtent::of_each_faying);
        std::size_t longest = 0;
        for (std::size_t at = 0; at < text.size();) {
            const auto end = text.find('\n', at);
            longest = std::max(longest, display_width(text.substr(at, end - at)));
            at = end + 1;
        }
        CHECK(longest <= 80);
    }

    TEST_CASE("a title stays text: no formula in a spreadsheet, no markup in Markdown") {
        auto exposure = places({"C3"});
        exposure.front().name = "=cmd()|x";
        const auto root = tree_of(edited(lapped_rail, "Honey trailer 2.6 t", "<script>*a*|b"));
        Diagnostics diagnostics;
        const auto ranking = rank_isolation({root, built_in(), exposure}, diagnostics);
        REQUIRE(ranking);
        CHECK(ranking_csv(*ranking, RankingExtent::of_each_faying).find("\"'=cmd()|x\"") != std::string::npos);
        const auto markdown = ranking_markdown(*ranking, RankingExtent::of_each_faying);
        CHECK(markdown.find("<script>") == std::string::npos);
        CHECK(markdown.find("\\<script\\>\\*a\\*\\|b") != std::string::npos);
    }

    TEST_CASE("what the isolation table names is in the other tables") {
        const auto& tables = built_in();
        for (const auto& e : tables.of<IsolationElement>().rows) {
            CAPTURE(e.name);
            if (e.layer) CHECK(tables.of<LayerMaterial>().find(*e.layer) != nullptr);
            if (e.washer_layer) CHECK(tables.of<LayerMaterial>().find(*e.washer_layer) != nullptr);
            if (e.plate_surface) CHECK(tables.of<Surface>().find(*e.plate_surface) != nullptr);
            if (e.rail_surface) CHECK(tables.of<Surface>().find(*e.rail_surface) != nullptr);
            if (e.tube_material) CHECK(tables.of<Material>().find(*e.tube_material) != nullptr);
            if (e.tube_coating) CHECK(tables.of<Coating>().find(*e.tube_coating) != nullptr);
        }
        std::set<Corrosivity> categories;
        for (const auto& e : tables.of<Electrolyte>().rows) categories.insert(e.category);
        CHECK(categories.size() == 6);
    }
}
