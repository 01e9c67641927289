// SPDX-License-Identifier: MIT
#include "tables/tables.hpp"

#include "tables/embedded.hpp"
#include "tables/packed.hpp"

#include <doctest/doctest.h>

#include <unistd.h>
#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <set>
#include <string>
#include <tuple>
#include <vector>

using namespace faywright;

namespace {

/// A folder that is gone with the test.
class Folder {
public:
    Folder() : path_(std::filesystem::temp_directory_path() / fmt::format("faywright-tables-{}-{}", getpid(), next_++)) {
        std::filesystem::create_directory(path_);
    }
    ~Folder() {
        std::error_code ignored;
        std::filesystem::remove_all(path_, ignored);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;

    void write(const std::string& name, const std::string& text) const { std::ofstream(path_ / name, std::ios::binary) << text; }
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }

private:
    static inline int next_ = 0;
    std::filesystem::path path_;
};

template <class Record>
struct Loaded {
    Table<Record> table;
    std::string text, codes;
};

template <class Record>
Loaded<Record> load(const std::string& toml, Table<Record> table = {}) {
    Diagnostics diagnostics;
    const auto node = parse_toml(toml, "table.toml", diagnostics);
    REQUIRE_MESSAGE(node.has_value(), diagnostics.text());
    load_rows(*node, table, diagnostics);
    Loaded<Record> out{std::move(table), diagnostics.any() ? diagnostics.text() : "", ""};
    for (const auto& each : diagnostics.sorted()) out.codes += (out.codes.empty() ? "" : " ") + each.code;
    return out;
}

const std::string documents = R"([sources.iso-7089]
title = "ISO 7089, Plain washers"
edition = "2000"

)";

std::string washer(const std::string& name, const std::string& more = "",
                   const std::string& source = R"({document = "iso-7089", place = "Table 1", basis = "published"})") {
    return "[[washer]]\nname = \"" + name + R"("
series = "ISO 7089"
size = "M8"
inside-diameter = "8.4 mm"
outside-diameter = "16 mm"
thickness = "1.6 mm"
hardness-hv = 200
)" + (source.empty() ? "" : "source = " + source + "\n") +
           more + "\n";
}

std::string replaced(std::string text, const std::string& from, const std::string& to) {
    const auto at = text.find(from);
    REQUIRE(at != std::string::npos);
    return text.replace(at, from.size(), to);
}

Loaded<Washer> washers(const std::string& rows) { return load<Washer>(documents + rows); }

/// What an overlay folder brings: the tables, and the refusals.
struct Overlaid {
    Tables tables;
    std::string text, codes;
};

Overlaid overlaid(const std::filesystem::path& folder) {
    Diagnostics diagnostics;
    Overlaid out{load_tables(folder, diagnostics), "", ""};
    if (diagnostics.any()) out.text = diagnostics.text();
    for (const auto& each : diagnostics.sorted()) out.codes += (out.codes.empty() ? "" : " ") + each.code;
    return out;
}

const Tables& built_in() {
    static const Tables tables = [] {
        Diagnostics diagnostics;
        auto all = load_tables(std::nullopt, diagnostics);
        CHECK_MESSAGE(!diagnostics.any(), diagnostics.text());
        return all;
    }();
    return tables;
}

template <class Record>
bool has(const std::string& name) {
    return built_in().of<Record>().find(name) != nullptr;
}

}  // namespace

TEST_SUITE("tables: reading a table") {
    TEST_CASE("rows with their sources") {
        const auto loaded =
            washers(washer("ISO 7089 M8", R"(source-of.hardness-hv = {document = "iso-7089", place = "hardness class", basis = "memory"}
note = "100 HV also exists.")"));
        CHECK(loaded.text == "");
        REQUIRE(loaded.table.rows.size() == 1);
        const auto& row = loaded.table.rows.front();
        CHECK(row.name == "ISO 7089 M8");
        CHECK(in_mm(row.thickness) == doctest::Approx(1.6));
        CHECK(row.note == "100 HV also exists.");
        CHECK(row.source.document == "ISO 7089, Plain washers");
        CHECK(row.source.edition == "2000");
        CHECK(row.source.place == "Table 1");
        CHECK(row.source.basis == Basis::published);
        CHECK(row.source_for("hardness-hv").basis == Basis::memory);
        CHECK(row.source_for("thickness").basis == Basis::published);
        CHECK(row.at.line == 5);
        CHECK(loaded.table.find("ISO 7089 M8") == &row);
        CHECK(loaded.table.find("ISO 7089 M9") == nullptr);
        CHECK(loaded.table.names() == std::vector<std::string>{"ISO 7089 M8"});
    }

    TEST_CASE("practice needs no document") { CHECK(washers(washer("shop", "", R"({basis = "practice"})")).text == ""); }

    TEST_CASE("a file without rows brings none") {
        CHECK(washers("").table.rows.empty());
        CHECK(washers("").text == "");
    }

    TEST_CASE("an unknown key of a row, with the nearest") {
        CHECK(washers(washer("a", "thicknes = \"2 mm\"")).text ==
              "table.toml:14:1: error: washer \"a\".thicknes is not a known key\n"
              "   14 | thicknes = \"2 mm\"\n"
              "      | ^^^^^^^^ the nearest known key is \"thickness\"\n"
              "1 error; nothing was written\n");
    }

    TEST_CASE("an unknown key of the file") {
        CHECK(washers("[[washers]]\nname = \"a\"\n").text ==
              "table.toml:5:3: error: washers is not a known key of this table\n"
              "    5 | [[washers]]\n"
              "      |   ^^^^^^^ known here: sources, washer\n"
              "1 error; nothing was written\n");
        CHECK(washers("[sources.x]\ntitle = \"t\"\nedition = \"e\"\nyear = 2000\n").codes == "key.unknown");
        CHECK(washers("[sources.x]\ntitle = \"t\"\n").codes == "key.missing");
    }

    TEST_CASE("no source") {
        const auto text = washers(washer("a", "", "")).text;
        CHECK(text.starts_with("table.toml:5:1: error: washer \"a\" has no source: document, place and basis\n"));
        CHECK(washers(washer("a", "", "")).codes == "source.missing");
        CHECK(washers(washer("a", "", "\"Table 1\"")).codes == "type.wrong");
        CHECK(washers(washer("a", "", R"({document = "iso-7089", place = "Table 1"})")).codes == "key.missing");
    }

    TEST_CASE("published or recalled without a document or a place") {
        CHECK(washers(washer("a", "", R"({basis = "published"})")).codes == "key.missing key.missing");
        CHECK(washers(washer("a", "", R"({basis = "memory", document = "iso-7089"})")).codes == "key.missing");
    }

    TEST_CASE("a document that the file does not name, with the nearest") {
        CHECK(washers(washer("a", "", R"({document = "iso-7098", place = "Table 1", basis = "published"})")).text ==
              "table.toml:13:22: error: washer \"a\".source.document is \"iso-7098\", which [sources] does not have\n"
              "   13 | source = {document = \"iso-7098\", place = \"Table 1\", basis = \"published\"}\n"
              "      |                      ^^^^^^^^^^ the nearest is \"iso-7089\"\n"
              "1 error; nothing was written\n");
        CHECK(washers(washer("a", "", R"({document = "iso-7098", basis = "practice"})")).codes == "source.unknown");
    }

    TEST_CASE("a basis that is none") {
        CHECK(washers(washer("a", "", R"({document = "iso-7089", place = "Table 1", basis = "hearsay"})")).text ==
              "table.toml:13:61: error: washer \"a\".source.basis is \"hearsay\"; accepted are \"published\", \"memory\", \"practice\"\n"
              "   13 | source = {document = \"iso-7089\", place = \"Table 1\", basis = \"hearsay\"}\n"
              "      |                                                             ^^^^^^^^^\n"
              "1 error; nothing was written\n");
    }

    TEST_CASE("a source of a value that the row does not have") {
        CHECK(washers(washer("a", R"(source-of.colour = {basis = "practice"})")).codes == "source.unknown");
        CHECK(washers(washer("a", R"(source-of.thickness = "seen")")).codes == "type.wrong");
        CHECK(washers(washer("a", R"(source-of.thickness = {basis = "hearsay"})")).codes == "source.basis");
    }

    TEST_CASE("a name twice, told with both places") {
        const auto loaded = washers(washer("a") + washer("b") + washer("a"));
        CHECK(loaded.text ==
              "table.toml:25:1: error: washer \"a\" stands twice in this file\n"
              "   25 | [[washer]]\n"
              "      | ^^^^^^^^^^\n"
              "    5 | [[washer]]\n"
              "      | ---------- first given here\n"
              "1 error; nothing was written\n");
        CHECK(loaded.codes == "name.duplicate");
    }

    TEST_CASE("a row without a name, or one that is no table") {
        CHECK(washers(replaced(washer("a"), "name = \"a\"\n", "")).codes == "key.missing");
        CHECK(washers(replaced(washer("a"), "name = \"a\"\n", "name = \"\"\n")).codes == "text.length");
        CHECK(load<Washer>("washer = 5\n").codes == "type.wrong");
        CHECK(load<Washer>("washer = [5]\n").codes == "type.wrong");
        CHECK(load<Washer>("[washer]\nname = \"a\"\n").codes == "type.wrong");
    }

    TEST_CASE("a value out of its range") {
        CHECK(washers(replaced(washer("a"), "\"1.6 mm\"", "\"1.6 m\"")).text ==
              "table.toml:11:13: error: washer \"a\".thickness is 1600 mm; at least 0.5 mm and at most 30 mm is accepted\n"
              "   11 | thickness = \"1.6 m\"\n"
              "      |             ^^^^^^^\n"
              "1 error; nothing was written\n");
        CHECK(washers(replaced(washer("a"), "\"1.6 mm\"", "1.6")).codes == "unit.missing");
        CHECK(washers(replaced(washer("a"), "\"1.6 mm\"", "\"1.6 kN\"")).codes == "unit.dimension");
        CHECK(washers(replaced(washer("a"), "thickness = \"1.6 mm\"\n", "")).codes == "key.missing");
    }

    TEST_CASE("several rows are read in one pass in spite of errors") {
        CHECK(washers(washer("a", "x = 1") + washer("b", "y = 1") + washer("c", "", "")).codes == "key.unknown key.unknown source.missing");
    }

    TEST_CASE("sources that are no table are refused") {
        CHECK(load<Washer>("sources = 5\n" + washer("a", "", R"({basis = "practice"})")).codes == "type.wrong");
    }

    TEST_CASE("a source-of that is no table is refused") { CHECK(washers(washer("a", "source-of = \"hearsay\"")).codes == "type.wrong"); }
}

TEST_SUITE("tables: rows that cannot be") {
    const std::string source = "source = {basis = \"practice\"}\n";

    TEST_CASE("a washer") {
        const auto loaded = washers(replaced(washer("a"), "\"8.4 mm\"", "\"16 mm\""));
        CHECK(loaded.codes == "value.fault");
        CHECK(loaded.text.starts_with("table.toml:5:1: error: washer \"a\": the hole is not smaller than the washer\n"));
    }

    TEST_CASE("a tube") {
        const std::string row =
            "[[tube]]\nname = \"a\"\noutside-diameter = \"16 mm\"\nwall = \"8 mm\"\nmaterial-group = \"steel\"\n"
            "outside-tolerance = \"0.1 mm\"\nwall-tolerance = 0.1\n" +
            source;
        CHECK(load<StockTube>(row).text.starts_with("table.toml:1:1: error: tube \"a\": the wall fills the tube\n"));
        CHECK(load<StockTube>(replaced(row, "\"8 mm\"", "\"7.9 mm\"")).codes == "");
    }

    TEST_CASE("lengths") {
        const auto row = [&](const std::string& lengths) {
            return "[[standard-length]]\nname = \"a\"\nlengths = " + lengths + "\n" + source;
        };
        CHECK(load<StandardLength>(row("[\"20 mm\", \"30 mm\", \"25 mm\"]")).text.find("lengths are not in rising order") !=
              std::string::npos);
        CHECK(load<StandardLength>(row("[]")).codes == "value.fault");
        CHECK(load<StandardLength>(row("[\"20 mm\", \"2 m\"]")).codes == "number.range");
        CHECK(load<StandardLength>(row("\"20 mm\"")).codes == "type.wrong");
        CHECK(load<StandardLength>(row("[\"20 mm\", \"25 mm\"]")).codes == "");
    }

    TEST_CASE("a slip factor, a tightening method, a finish") {
        CHECK(load<SlipFactor>("[[slip-factor]]\nname = \"a / b\"\na = \"a\"\nb = \"b\"\nslip-factor-low = 0.2\nslip-factor = "
                               "0.1\nslip-factor-high = 0.3\n" +
                               source)
                  .text.find("the band is not in order") != std::string::npos);
        CHECK(
            load<TighteningMethod>(
                "[[tightening-method]]\nname = \"a\"\nfactor-low = 2\nfactor-high = 1.5\ntool-scatter = 0.1\nuses-torque = true\n" + source)
                .text.find("the factors are upside down") != std::string::npos);
        CHECK(load<Finish>(
                  "[[finish]]\nname = \"a\"\nkind = \"plain\"\nlubricated = true\ncoating-thickness = \"0 um\"\nthread-friction-low = 0.2\n"
                  "thread-friction-high = 0.1\nhead-friction-low = 0.1\nhead-friction-high = 0.2\nnut-oversize = \"0 "
                  "um\"\nnut-oversize-per-pitch = 0\n"
                  "fatigue-factor = 1\nembedding-loss-fraction = 0\n" +
                  source)
                  .text.find("a friction band is upside down") != std::string::npos);
    }

    TEST_CASE("faults of materials, bolt classes and threads") {
        Row<Material> m = built_in().of<Material>().rows.front();
        CHECK(Material::fault(m) == nullptr);
        m.proof_strength = m.ultimate_strength + MPa(1);
        CHECK(std::string(Material::fault(m)) == "proof strength above ultimate strength");
        m.proof_strength = m.ultimate_strength;
        m.haz_proof_strength = m.proof_strength + MPa(1);
        CHECK(std::string(Material::fault(m)) == "stronger beside a weld than away from it");
        m.haz_proof_strength.reset();
        m.thickness_above = mm(5);
        m.thickness_up_to = mm(5);
        CHECK(std::string(Material::fault(m)) == "the thickness range is empty");

        Row<BoltClass> c = built_in().of<BoltClass>().rows.front();
        CHECK(BoltClass::fault(c) == nullptr);
        c.proof_stress = c.proof_strength + MPa(1);
        CHECK(std::string(BoltClass::fault(c)) == "proof stress above yield");
        c.proof_strength = c.ultimate_strength + MPa(1);
        CHECK(std::string(BoltClass::fault(c)) == "yield above ultimate");

        Row<Thread> t = built_in().of<Thread>().rows.front();
        CHECK(Thread::fault(t) == nullptr);
        t.across_corners = t.across_flats * 0.9;
        CHECK(std::string(Thread::fault(t)) == "diameters are not in order");
        t.hole_fine = t.hole_medium + mm(1);
        CHECK(std::string(Thread::fault(t)) == "clearance holes are not in order");
    }

    TEST_CASE("a layer whose greatest temperature is below its least is refused") {
        CHECK(load<LayerMaterial>(
                  "[[layer]]\nname = \"a\"\nthickness = \"0.1 mm\"\nelastic-modulus = \"500 MPa\"\ncreep-loss-fraction = 0.6\n"
                  "pressure-limit = \"5 MPa\"\ntemperature-least = \"45 degC\"\ntemperature-most = \"20 degC\"\nslip-factor = 0.05\n"
                  "sustained-clamp = false\n" +
                  source)
                  .codes == "value.fault");
    }

    TEST_CASE("a bolt class that holds for no diameter is refused") {
        Row<BoltClass> c = built_in().of<BoltClass>().rows.front();
        c.above_diameter = mm(20);
        c.up_to_diameter = mm(10);
        CHECK(BoltClass::fault(c) != nullptr);
    }
}

TEST_SUITE("tables: a shop's own tables over the built-in ones") {
    TEST_CASE("a known name takes the place of its row, a new one is added behind") {
        const Folder folder;
        folder.write("washers.toml", documents + replaced(washer("ISO 7089 M8"), "\"1.6 mm\"", "\"1.7 mm\"") + washer("shop M8"));
        folder.write("notes.txt", "not a table");
        const auto shop = overlaid(folder.path());
        CHECK(shop.text == "");
        const auto& before = built_in().of<Washer>();
        const auto& after = shop.tables.of<Washer>();
        CHECK(after.rows.size() == before.rows.size() + 1);
        CHECK(after.rows.back().name == "shop M8");
        CHECK(in_mm(after.find("ISO 7089 M8")->thickness) == doctest::Approx(1.7));
        CHECK(after.find("ISO 7089 M8") - after.rows.data() == before.find("ISO 7089 M8") - before.rows.data());
        CHECK(after.find("ISO 7089 M8")->source.document == "ISO 7089, Plain washers");
        CHECK(shop.tables.of<Thread>().names() == built_in().of<Thread>().names());
    }

    TEST_CASE("an empty folder changes nothing") {
        const Folder folder;
        const auto shop = overlaid(folder.path());
        CHECK(shop.text == "");
        CHECK(shop.tables.of<Nut>().names() == built_in().of<Nut>().names());
    }

    TEST_CASE("a file that is named after no table, with the nearest") {
        const Folder folder;
        folder.write("washer.toml", documents);
        const auto name = (folder.path() / "washer.toml").string();
        CHECK(overlaid(folder.path()).text ==
              name +
                  ": error: there is no table \"washer\"; the nearest is \"washers\"\n"
                  "      = help: tables: threads, lengths, washers, bolt-classes, nuts, finishes, "
                  "materials, surfaces, slip-factors, embedding, "
                  "tightening, tubes, service, layers, load-rules, prices, metals, potentials, compatibility, "
                  "coatings, exposures, electrolytes, isolation, inch-threads, sae-grades, designations, locking-nuts, care\n"
                  "1 error; nothing was written\n");
        const Folder other;
        other.write("prices of steel.toml", "");
        CHECK(overlaid(other.path()).text.find("there is no table \"prices of steel\"\n") != std::string::npos);
    }

    TEST_CASE("own rows that leave outlook and care nothing to stand on are refused: a category, a place, a rate, a name") {
        const auto told = [](const std::string& file, const std::string& what, const std::string& with) {
            std::ifstream stream(std::string(FAYWRIGHT_SOURCE_DIR) + "/data/" + file);
            std::string text{std::istreambuf_iterator<char>(stream), {}};
            std::size_t count = 0;
            for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + with.size()), ++count)
                text.replace(at, what.size(), with);
            REQUIRE(count > 0);
            const Folder folder;
            folder.write(file, text);
            return overlaid(folder.path()).text;
        };
        CHECK(told("electrolytes.toml", "category = \"C3\"", "category = \"C4\"").find("no electrolyte is left for category C3") !=
              std::string::npos);
        CHECK(told("care.toml", "category = \"C3\"", "category = \"C4\"").find("no care is left for category C3") != std::string::npos);
        CHECK(told("care.toml", "category = \"C3\"", "").find("either a category or a use is wanted") != std::string::npos);
        CHECK(told("isolation.toml", "place = \"edges\"", "place = \"bolt\"").find("no element is left for the edges") !=
              std::string::npos);
        CHECK(told("metals.toml", "atmosphere = \"zinc\"\n", "").find("\"zinc\" must have the rate in air of zinc") != std::string::npos);
        CHECK(told("isolation.toml", "layer = \"butyl tape\"", "layer = \"buttyl tape\"")
                  .find("names \"buttyl tape\", which the table layers") != std::string::npos);
    }

    TEST_CASE("a folder that cannot be read") {
        const Folder folder;
        const auto missing = folder.path() / "none";
        CHECK(overlaid(missing).text ==
              missing.string() + ": error: the data folder cannot be read: No such file or directory\n1 error; nothing was written\n");
        folder.write("file", "");
        CHECK(overlaid(folder.path() / "file").codes == "file.unreadable");
    }

    TEST_CASE("errors of several files in one pass, each with its file") {
        const Folder folder;
        folder.write("nuts.toml", "[[nut]]\nname = \"a\"\n");
        folder.write("tubes.toml", "[[tube");
        folder.write("washers.toml", washer("a", "x = 1", R"({basis = "practice"})"));
        const auto shop = overlaid(folder.path());
        CHECK(shop.codes == "key.missing key.missing key.missing source.missing syntax.toml key.unknown");
        for (const char* file : {"nuts.toml:1:1: error: ", "tubes.toml:1:", "washers.toml:10:1: error: "})
            CHECK(shop.text.find(file) != std::string::npos);
    }

    TEST_CASE("a link that leads nowhere cannot be read") {
        const Folder folder;
        std::filesystem::create_symlink(folder.path() / "none", folder.path() / "nuts.toml");
        CHECK(overlaid(folder.path()).codes == "file.unreadable");
    }

    // The library's stream throws; the program ends with status 3 in place of a located message.
    TEST_CASE("a folder named like a table file is told as a mistake of the input") {
        const Folder folder;
        std::filesystem::create_directory(folder.path() / "nuts.toml");
        CHECK(overlaid(folder.path()).codes == "file.unreadable");
    }
}

TEST_SUITE("tables: the built-in ones") {
    TEST_CASE("they load without a word, and none is empty but the shop's own prices") {
        Diagnostics diagnostics;
        const auto tables = load_tables(std::nullopt, diagnostics);
        CHECK_MESSAGE(!diagnostics.any(), diagnostics.text());
        tables.each([](std::string_view name, const auto& table) { CHECK_MESSAGE(table.rows.empty() == (name == Price::table), name); });
    }

    TEST_CASE("they are the files of data, and every file is a table") {
        Tables tables;
        Diagnostics diagnostics;
        std::set<std::string> names;
        tables.each([&](std::string_view name, auto& table) {
            names.emplace(name);
            const auto path = fmt::format("{}/data/{}.toml", FAYWRIGHT_SOURCE_DIR, name);
            std::ifstream file(path, std::ios::binary);
            const std::string text{std::istreambuf_iterator<char>(file), {}};
            const auto node = parse_toml(text, path, diagnostics);
            REQUIRE_MESSAGE(node.has_value(), diagnostics.text());
            load_rows(*node, table, diagnostics);
            CHECK_MESSAGE(packed(table) == embedded_table(name), name << ": the program was built from another file");
        });
        CHECK_MESSAGE(!diagnostics.any(), diagnostics.text());
        for (const auto& entry : std::filesystem::directory_iterator(FAYWRIGHT_SOURCE_DIR "/data"))
            if (entry.path().extension() == ".toml") CHECK_MESSAGE(names.contains(entry.path().stem().string()), entry.path().string());
        CHECK(embedded_table("no such table").empty());
    }

    TEST_CASE("every row and every value with a source of its own says where it is from") {
        built_in().each([](std::string_view table, const auto& rows) {
            for (const auto& row : rows.rows) {
                const auto check = [&](const RowSource& source, const std::string& what) {
                    CAPTURE(table);
                    CAPTURE(row.name);
                    CAPTURE(what);
                    const bool cites = source.basis == Basis::published || source.basis == Basis::memory;
                    CHECK((cites || source.basis == Basis::practice));
                    if (!cites) return;
                    CHECK_FALSE(source.document.empty());
                    CHECK_FALSE(source.edition.empty());
                    CHECK_FALSE(source.place.empty());
                };
                CHECK_FALSE(row.name.empty());
                check(row.source, "row");
                for (const auto& [key, source] : row.source_of) check(source, key);
            }
        });
    }

    TEST_CASE("no name stands twice in a table") {
        built_in().each([](std::string_view table, const auto& rows) {
            std::set<std::string> names;
            for (const auto& row : rows.rows) CHECK_MESSAGE(names.insert(row.name).second, table << ": " << row.name);
        });
    }

    TEST_CASE("slip factors name surfaces and layers that exist, each pair once") {
        std::set<std::tuple<std::string, std::string, std::string>> pairs;
        for (const auto& row : built_in().of<SlipFactor>().rows) {
            CAPTURE(row.name);
            CHECK(has<Surface>(row.a));
            CHECK(has<Surface>(row.b));
            if (row.between) CHECK(has<LayerMaterial>(*row.between));
            const auto [first, second] = std::minmax(row.a, row.b);
            CHECK(pairs.emplace(first, second, row.between.value_or("")).second);
        }
    }

    TEST_CASE("surfaces name a roughness that the embedding table has, for both kinds of loading") {
        for (const auto& surface : built_in().of<Surface>().rows)
            for (const char* loading : {"axial", "shear"}) {
                const auto& rows = built_in().of<Embedding>().rows;
                const auto found = std::count_if(rows.begin(), rows.end(), [&](const auto& row) {
                    return row.roughness == surface.roughness && row.loading == loading;
                });
                CHECK_MESSAGE(found == 1, surface.name << ", " << loading);
            }
    }

    TEST_CASE("washers and nuts belong to threads that exist") {
        for (const auto& row : built_in().of<Washer>().rows) CHECK_MESSAGE(has<Thread>(row.size), row.name);
        for (const auto& row : built_in().of<Nut>().rows) CHECK_MESSAGE(has<Thread>(row.size), row.name);
        for (const auto& thread : built_in().of<Thread>().rows) {
            const auto& washers = built_in().of<Washer>().rows;
            CHECK_MESSAGE(std::any_of(washers.begin(), washers.end(), [&](const auto& w) { return w.size == thread.name; }),
                          thread.name << " has no washer");
        }
    }

    TEST_CASE("a washer's hole lets its bolt through, and the washer is wider than the head's bearing face") {
        for (const auto& row : built_in().of<Washer>().rows) {
            const auto* thread = built_in().of<Thread>().find(row.size);
            REQUIRE(thread != nullptr);
            CAPTURE(row.name);
            CHECK(row.inside_diameter > thread->diameter);
            CHECK(row.outside_diameter >= thread->head_bearing_diameter);
            CHECK(row.inside_diameter < thread->head_bearing_diameter);
        }
    }

    TEST_CASE("every bolt class has its nut in every thread size it covers, and one row for each size") {
        // None: the tables of ISO 898-2 and ISO 3506-2 have a proof load for every pair.
        const std::set<std::string> gaps{};
        for (const auto& thread : built_in().of<Thread>().rows) {
            std::map<std::string, int> rows_of_class;
            for (const auto& row : built_in().of<BoltClass>().rows) {
                if ((row.above_diameter && thread.diameter <= *row.above_diameter) ||
                    (row.up_to_diameter && thread.diameter > *row.up_to_diameter))
                    continue;
                ++rows_of_class[row.bolt_class];
                const auto& nuts = built_in().of<Nut>().rows;
                const bool found = std::any_of(nuts.begin(), nuts.end(), [&](const auto& n) {
                    return n.size == thread.name && n.nut_class == row.nut_class && !n.oversize;
                });
                const auto pair = thread.name + " " + row.nut_class;
                CHECK_MESSAGE(found != gaps.contains(pair), "bolt class " << row.name << " wants a nut " << pair);
            }
            for (const auto& each : rows_of_class)
                CHECK_MESSAGE(each.second == 1, thread.name << ", class " << each.first << ": " << each.second << " rows");
        }
    }

    TEST_CASE("nuts: one row for each size, class and tapping, stronger with class") {
        std::set<std::tuple<std::string, std::string, bool>> seen;
        for (const auto& row : built_in().of<Nut>().rows) {
            CHECK_MESSAGE(seen.emplace(row.size, row.nut_class, row.oversize).second, row.name);
            for (const auto& other : built_in().of<Nut>().rows)
                if (row.size == other.size && row.oversize == other.oversize && row.nut_class.size() <= other.nut_class.size() &&
                    std::stoi(row.nut_class) < std::stoi(other.nut_class) &&
                    (std::stoi(row.nut_class) < 50) == (std::stoi(other.nut_class) < 50))
                    CHECK_MESSAGE(row.proof_load < other.proof_load, row.name << " against " << other.name);
            if (row.oversize)
                for (const auto& other : built_in().of<Nut>().rows)
                    if (!other.oversize && other.size == row.size && other.nut_class == row.nut_class)
                        CHECK_MESSAGE(row.proof_load <= other.proof_load, row.name);
        }
    }

    TEST_CASE("stocked tubes are of a family of metals that a material has") {
        for (const auto& tube : built_in().of<StockTube>().rows) {
            const auto& materials = built_in().of<Material>().rows;
            CHECK_MESSAGE(
                std::any_of(materials.begin(), materials.end(), [&](const auto& m) { return word_of(m.family) == tube.material_group; }),
                tube.name);
        }
    }

    TEST_CASE("threads grow with size in every dimension") {
        const auto& rows = built_in().of<Thread>().rows;
        for (std::size_t i = 1; i < rows.size(); ++i) {
            const auto &a = rows[i - 1], &b = rows[i];
            CAPTURE(b.name);
            CHECK(a.diameter < b.diameter);
            CHECK(a.pitch <= b.pitch);
            CHECK(a.across_flats < b.across_flats);
            CHECK(a.head_bearing_diameter < b.head_bearing_diameter);
            CHECK(a.nut_height < b.nut_height);
            CHECK(a.hole_medium < b.hole_medium);
            CHECK(b.nut_height_least < b.nut_height);
            CHECK(b.pitch_diameter_least < b.major_diameter_least);
            CHECK(b.nut_minor_diameter_most < b.nut_pitch_diameter_most);
            CHECK(b.name == fmt::format("M{}", print_number(in_mm(b.diameter))));
        }
    }
}
