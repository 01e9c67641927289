// SPDX-License-Identifier: MIT
#include "joint/offer.hpp"

#include "joint/reading.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace joint_tests;

namespace {

struct Read {
    std::optional<Offer> offer;
    std::string errors;
};

Read read(const std::string& text) {
    Diagnostics diagnostics;
    Read out;
    if (const auto root = parse_toml(text, "offer.toml", diagnostics)) out.offer = read_offer(*root, built_in(), diagnostics);
    out.errors = diagnostics.any() ? diagnostics.text() : "";
    return out;
}

Offer understood(const std::string& text) {
    auto out = read(text);
    REQUIRE_MESSAGE(out.offer, out.errors);
    return std::move(*out.offer);
}

bool asks(const Offer& offer, std::string_view words) {
    return std::any_of(offer.asked.begin(), offer.asked.end(), [&](const auto& q) { return q.text.find(words) != std::string::npos; });
}

}  // namespace

TEST_SUITE("joint/offer") {
    TEST_CASE("every mistake of an offer is told in one pass, at its line and column") {
        const auto out = read("part = \"bolts\"\nlenght = \"200 mm\"\nlength = 200\nclass = \"8.9\"\nused = \"no\"\nsize = \"M161\"\n");
        CHECK(!out.offer);
        for (const auto* place :
             {"offer.toml:1:8", "offer.toml:2:1", "offer.toml:3:10", "offer.toml:4:9", "offer.toml:5:8", "offer.toml:6:8"})
            CHECK_MESSAGE(out.errors.find(place) != std::string::npos, place);
        for (const auto* nearest : {"\"bolt\"", "\"length\"", "\"8.8\"", "\"M16\""})
            CHECK_MESSAGE(out.errors.find(nearest) != std::string::npos, nearest);
    }

    TEST_CASE("names that no table has, with the nearest") {
        struct Wrong {
            const char *text, *message, *hint;
        };
        for (const auto& wrong : {
                 Wrong{"finish = \"hot-dip galvanised, waxd\"", "finish is", "hot-dip galvanised, waxed"},
                 Wrong{"standard = \"ISO 4041\"", "standard is", "ISO 4014"},
                 Wrong{"part = \"nut\"\nnut-class = \"88\"", "nut-class is", "8"},
                 Wrong{"part = \"washer\"\nseries = \"ISO 7098\"", "series is", "ISO 7089"},
                 Wrong{"part = \"tube\"\nstock = \"steel 28 x 5.4\"", "stock is", "steel 28 x 5"},
                 Wrong{"part = \"tube\"\nmaterial = \"E355+N precision tub\"", "material is", "E355+N precision tube"},
                 Wrong{"part = \"tube\"\nfinish = \"ISO 1461, over 3 to 6\"", "finish is", "ISO 1461, over 3 to 6 mm"},
                 Wrong{"part = \"layer\"\nmaterial = \"jointing compond\"", "material is", "jointing compound"},
                 Wrong{"length = \"4 mm\"", "length", "5 mm"},
                 Wrong{"length = \"2 kN\"", "length", "16 mm"},
                 Wrong{"nut-thread = \"over size\"", "nut-thread", "oversize"},
             }) {
            CAPTURE(wrong.text);
            const auto out = read(wrong.text);
            CAPTURE(out.errors);
            CHECK(!out.offer);
            CHECK(out.errors.find(wrong.message) != std::string::npos);
            CHECK(out.errors.find(wrong.hint) != std::string::npos);
        }
    }

    TEST_CASE("designation and field that contradict each other are asked, never settled") {
        struct Both {
            const char *text, *question;
        };
        for (const auto& both : {
                 Both{"designation = \"M16 x 200 8.8\"\nlength = \"180 mm\"", "says 200 mm, the length says 180 mm"},
                 Both{"designation = \"M16 x 200 8.8\"\nclass = \"10.9\"", "says 8.8, the class says 10.9"},
                 Both{"designation = \"M16 x 200 8.8\"\nsize = \"M14\"", "says M16, the size says M14"},
                 Both{"designation = \"M16 x 200 8.8 HDG\"\nfinish = \"zinc flake, integral lubricant\"",
                      "says hot-dip galvanised, the finish says zinc flake"},
                 Both{"designation = \"ISO 4032 - M16 - 8\"\npart = \"bolt\"", "says nut, the part says bolt"},
                 Both{"designation = \"ISO 4017 - M16 x 200 - 8.8\"\nfully-threaded = false", "says yes, the fully-threaded says no"},
                 Both{"part = \"nut\"\ndesignation = \"ISO 4032 - M16 - 8\"\nnut-class = \"10\"", "says 8, the nut-class says 10"},
                 Both{"designation = \"M16 x 200 8.8 used\"\nused = false", "says yes, the used says no"},
             }) {
            CAPTURE(both.text);
            const auto offer = understood(both.text);
            std::string all;
            for (const auto& q : offer.asked) all += q.text + '\n';
            CAPTURE(all);
            CHECK(asks(offer, both.question));
        }
    }

    TEST_CASE("the same said twice is no contradiction, and what a field answers is not asked") {
        for (const auto* text : {"designation = \"M16 x 200 8.8 HDG\"\nsize = \"M16\"\nlength = \"20 cm\"\nclass = \"8.8\"\nfinish = "
                                 "\"hot-dip galvanised, waxed\"",
                                 "designation = \"M16x2 x 200 8.8 galvanised\"\nfinish = \"HDG\"\nlubricant = \"wax\"",
                                 "designation = \"M16 x 200\"\nclass = \"8.8\"\nfinish = \"hot-dip galvanised, dry\"",
                                 "designation = \"A4-80\"\npart = \"bolt\"\nsize = \"M16\""}) {
            CAPTURE(text);
            const auto offer = understood(text);
            std::string all;
            for (const auto& q : offer.asked) all += q.text + '\n';
            CAPTURE(all);
            CHECK(all.empty());
        }
    }

    TEST_CASE("trade words of a field are understood as in a designation") {
        const auto finish = [](const char* words) {
            const auto offer = understood(std::string("size = \"M16\"\nclass = \"8.8\"\n") + words);
            return std::pair(offer.coating, offer.finish != nullptr ? offer.finish->name : std::string());
        };
        CHECK(finish("finish = \"HDG\"") == std::pair<std::string, std::string>("hot-dip galvanised", ""));
        CHECK(finish("finish = \"HDG\"\nlubricant = \"wax\"") ==
              std::pair<std::string, std::string>("hot-dip galvanised", "hot-dip galvanised, waxed"));
        CHECK(finish("finish = \"feuerverzinkt\"\nlubricant = \"dry\"") ==
              std::pair<std::string, std::string>("hot-dip galvanised", "hot-dip galvanised, dry"));
        CHECK(finish("finish = \"black oxide\"").first == "plain");
        CHECK(finish("finish = \"zinc plated\"\nlubricant = \"waxed\"").second == "zinc electroplate, waxed");
        // A coat that no table has is kept as it is said.
        CHECK(finish("finish = \"nickel\"").first == "nickel");
        CHECK(understood("class = \"class 8.8\"\nsize = \"M16 x 2\"").said.size == "M16");
        CHECK(understood("class = \"class 8.8\"").class_known);
        CHECK(understood("part = \"nut\"\nnut-class = \"A4-80\"").said.nut_class == "80");
    }

    TEST_CASE("an old standard is read as its successor, and what it was is kept") {
        const auto bolt = understood("standard = \"DIN 931\"\nsize = \"M16\"");
        CHECK(bolt.standard->name == "ISO 4014");
        CHECK(bolt.written_standard->name == "DIN 931");
        const auto screw = understood("designation = \"DIN 933 M16x60 8.8\"");
        CHECK(screw.standard->name == "ISO 4017");
        CHECK(screw.said.fully_threaded == true);
        const auto lock = understood("standard = \"DIN 982\"\npart = \"nut\"\nsize = \"M16\"");
        CHECK(lock.standard->name == "ISO 7040");
        CHECK(lock.said.prevailing_torque_nut == true);
        const auto washer = understood("part = \"washer\"\nseries = \"DIN 125 A\"");
        CHECK(washer.said.series == "ISO 7089");
        CHECK(*washer.written_standard->softest_hv == 140.0);
    }

    TEST_CASE("marks tell of an undersize thread and of the steel") {
        CHECK(understood("class = \"8.8\"\nmarking = \"8.8U\"").undersize_thread);
        CHECK(understood("class = \"8.8\"\nmarking = \"8.8 U\"").undersize_thread);
        CHECK(!understood("class = \"8.8\"\nmarking = \"8.8\"").undersize_thread);
        CHECK(!understood("class = \"8.8\"\nmarking = \"MU 8.8\"").undersize_thread);
        CHECK(understood("class = \"10.9\"\nmarking = \"10.9 underlined\"").low_carbon_martensite);
    }

    TEST_CASE("inch sizes, whatever their series") {
        for (const auto* size : {"1/2-13", "1/2 in", "1/2-20 UNF", "5/8\\\"-11"}) {
            CAPTURE(size);
            const auto offer = understood(fmt::format("size = \"{}\"\nclass = \"grade 5\"", size));
            CHECK(offer.inch_diameter);
            CHECK(offer.thread == nullptr);
            CHECK(offer.class_known);
            CHECK(offer.grade != nullptr);
        }
        CHECK(understood("size = \"M16x1.5\"\nclass = \"8.8\"").is_fine_thread());
    }

    TEST_CASE("a hostile designation is refused, a long one is cut where it is told") {
        CHECK(read("designation = \"\\u001b[31mM16 x 200 8.8\\u0007\"").errors.find("control") != std::string::npos);
        CHECK(read("designation = \"" + std::string(401, 'x') + "\"").errors.find("too long") != std::string::npos);
        const auto offer = understood("designation = \"M16 x 200 8.8 " + std::string(380, 'x') + "\"");
        CHECK(offer.title.size() < 130);
        CHECK(!offer.asked.empty());
        for (const auto& question : offer.asked) CHECK(question.text.size() < 300);
    }
}
