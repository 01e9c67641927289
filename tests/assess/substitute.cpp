// SPDX-License-Identifier: MIT
#include "assess/substitute.hpp"

#include "assess/offers_reviewed.hpp"
#include "assess/substitute_list.hpp"
#include "joint/joints.hpp"
#include "joint/reading.hpp"
#include "quantity/text.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <map>
#include <set>

using namespace joint_tests;

namespace {

Node tree_of(const std::string& text, const std::string& name) {
    Diagnostics diagnostics;
    auto root = parse_toml(text, name, diagnostics);
    if (!root) throw std::runtime_error(diagnostics.text());
    return *root;
}

Reviewer reviewer_of(const std::string& text) {
    Diagnostics diagnostics;
    auto out = Reviewer::make({tree_of(text, "joint.toml"), built_in()}, diagnostics);
    if (!out) throw std::runtime_error(diagnostics.text());
    return std::move(*out);
}

/// The joint of a variant: each is read and assessed once.
Reviewer& reviewer(const std::string& variant) {
    static std::map<std::string, Reviewer> made;
    const auto found = made.find(variant);
    if (found != made.end()) return found->second;
    std::string text = sound_lap;
    if (variant == "surf") text = edited(text, R"(exposures = ["inland farm", "inland town"])", R"(exposures = ["surf coast"])");
    if (variant == "compound")
        text = edited(text, "[[part]]\nkind = \"section\"",
                      "[[part]]\nkind = \"layer\"\nmaterial = \"jointing compound\"\n\n[[part]]\nkind = \"section\"");
    return made.emplace(variant, reviewer_of(text)).first->second;
}

Substitution reviewed(Reviewer& by, const std::string& text) {
    Diagnostics diagnostics;
    auto offer = read_offer(tree_of(text, "offer.toml"), built_in(), diagnostics);
    if (!offer) throw std::runtime_error(diagnostics.text());
    return by.review(std::move(*offer));
}

std::string told_reasons(const Substitution& review) {
    std::string out(word_of(review.verdict));
    for (const auto& reason : review.reasons) out += fmt::format("\n  {} {}: {}", word_of(reason.weight), reason.rule->id, reason.words);
    return out;
}

OfferList list_of(const std::string& text) {
    Diagnostics diagnostics;
    auto list = read_offers(text, "offers.csv", diagnostics);
    if (diagnostics.any()) throw std::runtime_error(diagnostics.text());
    return list;
}

/// Bolts of many kinds, all known in full.
std::vector<BoltFacts> facts_of_many() {
    std::vector<BoltFacts> out;
    for (const auto* offer :
         {"finish = \"hot-dip galvanised, waxed\"\nclass = \"8.8\"", "finish = \"hot-dip galvanised, dry\"\nclass = \"8.8\"",
          "finish = \"hot-dip galvanised, waxed\"\nclass = \"10.9\"", "finish = \"zinc flake, integral lubricant\"\nclass = \"10.9\"",
          "finish = \"zinc electroplate, dry\"\nclass = \"5.6\"", "finish = \"plain, oiled\"\nclass = \"12.9\"",
          "finish = \"stainless, anti-seize\"\nclass = \"A4-70\"", "finish = \"stainless, dry\"\nclass = \"A2-80\"",
          "finish = \"hot-dip galvanised, waxed\"\nclass = \"8.8\"\nfully-threaded = true",
          "finish = \"hot-dip galvanised, waxed\"\nclass = \"8.8\"\nlength = \"220 mm\""}) {
        const auto review = reviewed(reviewer(""), offer);
        if (!review.right || !review.right->is_built()) throw std::runtime_error(std::string("not built: ") + offer);
        out.push_back(facts_of(review.right->joint->bolt));
    }
    return out;
}

bool among(const Substitution& review, std::string_view id) {
    return std::any_of(review.reasons.begin(), review.reasons.end(), [&](const Reason& r) { return r.rule->id == id; });
}

}  // namespace

TEST_SUITE("assess/substitute") {
    TEST_CASE("offers are judged as a practitioner judges them") {
        for (const auto& offer : offers_reviewed::all) {
            CAPTURE(offer.name);
            CAPTURE(offer.why);
            std::optional<Substitution> out;
            CHECK_NOTHROW(out = reviewed(reviewer(std::string(offer.joint)), std::string(offer.offer)));
            if (!out) continue;
            const auto& review = *out;
            CAPTURE(told_reasons(review));
            CHECK(word_of(review.verdict) == offer.verdict);
            CHECK(review.governing().rule->id == offer.reason);
            if (!offer.also.empty()) CHECK(among(review, offer.also));
            // What is changed is told, and what is told to change is no plain yes.
            if (review.verdict == Verdict::accept) CHECK(review.changes.empty());
            if (review.verdict == Verdict::accept_with_changes) CHECK(!review.changes.empty());
            if (review.verdict == Verdict::ask) CHECK(!review.questions.empty());
        }
    }

    TEST_CASE("every rule is raised by an offer of the practitioner's table, or by a test here") {
        std::set<std::string_view> raised{"old-torque-yields", "temperature"};
        for (const auto& offer : offers_reviewed::all)
            for (const auto& reason : reviewed(reviewer(std::string(offer.joint)), std::string(offer.offer)).reasons)
                raised.insert(reason.rule->id);
        for (const auto& rule : rules::all) {
            CAPTURE(rule.id);
            CHECK(raised.contains(rule.id));
        }
    }

    TEST_CASE("a rule has an id of its own, a title, and a source that its basis asks for") {
        std::set<std::string_view> ids;
        for (const auto& rule : rules::all) {
            CAPTURE(rule.id);
            CHECK(ids.insert(rule.id).second);
            CHECK(!rule.title.empty());
            CHECK(!rule.source.place.empty());
            CHECK((rule.source.basis == Basis::practice) == rule.source.document.empty());
        }
    }

    TEST_CASE("a part held against itself is equal in every property") {
        for (const auto& a : facts_of_many())
            for (const auto& property : compared(a, a)) {
                CAPTURE(a.finish);
                CAPTURE(property.name);
                CHECK(property.standing == Standing::equal);
                CHECK(property.specified == property.offered);
            }
    }

    TEST_CASE("places changed, better is worse and worse is better") {
        const auto all = facts_of_many();
        std::size_t turned = 0;
        for (const auto& a : all)
            for (const auto& b : all) {
                const auto there = compared(a, b), back = compared(b, a);
                REQUIRE(there.size() == back.size());
                for (std::size_t i = 0; i < there.size(); ++i) {
                    CAPTURE(there[i].name);
                    const auto wanted = there[i].standing == Standing::better  ? Standing::worse
                                        : there[i].standing == Standing::worse ? Standing::better
                                                                               : there[i].standing;
                    CHECK(back[i].standing == wanted);
                    CHECK(back[i].specified == there[i].offered);
                    CHECK(back[i].offered == there[i].specified);
                    turned += wanted != there[i].standing ? 1 : 0;
                }
            }
        CHECK(turned > 200);
    }

    TEST_CASE("what nobody knows is unknown, and not equal") {
        const BoltFacts nothing;
        for (const auto& property : compared(facts_of(reviewer("").joint().bolt), nothing))
            CHECK_MESSAGE(property.standing == Standing::unknown, property.name);
    }

    TEST_CASE("the stainless story: 70 does not hold at its own torque, 80 does, and neither at the old one") {
        auto& by = reviewer("");
        const auto seventy = reviewed(by, R"(designation = "ISO 4014 - M16 x 200 - A4-70")");
        CHECK(seventy.verdict == Verdict::refuse);
        CHECK(seventy.governing().rule->id == "does-not-hold");
        CHECK(among(seventy, "galling"));
        CHECK(among(seventy, "old-torque-loosens"));
        CHECK(among(seventy, "nut-loose"));
        CHECK(*seventy.specified->slip < 1.0);
        CHECK(*seventy.unnoticed->slip > *seventy.right->slip);
        CHECK(*seventy.right->slip > 1.0);
        CHECK(seventy.right->torque < seventy.specified->torque);
        CHECK(seventy.suggestion.starts_with("A4-80"));

        const auto eighty = reviewed(by, R"(designation = "ISO 4014 - M16 x 200 - A4-80"
finish = "stainless, anti-seize"
nut-class = "80"
test-report = true)");
        CHECK(eighty.verdict == Verdict::accept_with_changes);
        CHECK(eighty.right->holds);
        CHECK(eighty.right->lasts);
        CHECK(*eighty.right->slip < 1.0);
        // Whatever is offered, the tube and the walls were checked for the clamp of the sheet.
        CHECK(eighty.right->assembled_greatest <= eighty.specified->assembled_greatest);
        const auto changed = [&](std::string_view what) {
            return std::any_of(eighty.changes.begin(), eighty.changes.end(), [&](const auto& c) { return c.starts_with(what); });
        };
        CHECK(changed("bolts: M16 x 200 A4-80"));
        CHECK(changed("nuts: class 80"));
        CHECK(changed("torque: " + print(Value(eighty.right->torque), 3)));
        CHECK(changed("lubricant: anti-seize, not waxed"));
        CHECK(eighty.questions.empty());
        // By hand, from the numbers told: least preload in proportion to the torque, the friction being the same.
        const auto per_torque = [](const Trial& t) { return in_N(t.assembled_least) / in_Nm(t.torque); };
        CHECK(per_torque(*eighty.right) == doctest::Approx(per_torque(*eighty.specified)).epsilon(0.005));
    }

    TEST_CASE("a trial is the joint file with the part written in") {
        const auto review = reviewed(reviewer(""), R"(designation = "ISO 4014 - M16 x 200 - A4-80"
finish = "stainless, anti-seize"
nut-class = "80")");
        auto text = edited(sound_lap, "class = \"8.8\"", "class = \"A4-80\"\nnut-class = \"80\"\nlength = \"200 mm\"");
        text = edited(text, "finish = \"hot-dip galvanised, waxed\"", "finish = \"stainless, anti-seize\"");
        const auto same = [&](const Trial& trial, const std::string& edit) {
            Diagnostics diagnostics;
            const auto joint = read_joint(edited(text, "[tightening]\n", edit), "joint.toml", built_in(), diagnostics);
            REQUIRE_MESSAGE(joint, diagnostics.text());
            const auto assessment = assessed(*joint);
            CHECK(trial.holds == assessment->passes);
            CHECK(trial.torque == assessment->state.torque);
            CHECK(trial.assembled_least == assessment->state.preload.least);
            std::size_t applicable = 0;
            for (const auto& result : assessment->checks()) {
                if (!result.outcome.applicable) continue;
                REQUIRE(applicable < trial.checks.size());
                CHECK(trial.checks[applicable].id == result.info->id);
                CHECK(trial.checks[applicable++].utilisation == result.outcome.utilisation);
            }
            CHECK(applicable == trial.checks.size());
        };
        same(*review.right, fmt::format("[tightening]\ntorque = \"{}\"\n", print(Value(review.right->torque), 3)));
        same(*review.unnoticed, "[tightening]\ntorque = \"120 N*m\"\n");
    }

    TEST_CASE("a smoother bolt at the torque of a rough one is overstressed") {
        auto dry = reviewer_of(edited(sound_lap, "hot-dip galvanised, waxed", "hot-dip galvanised, dry"));
        const auto review = reviewed(dry, R"(designation = "M16x200 8.8"
finish = "hot-dip galvanised, molybdenum disulfide paste")");
        CAPTURE(told_reasons(review));
        CHECK(among(review, "old-torque-yields"));
        CHECK(review.unnoticed->bolt_stress > 1.0);
        CHECK(review.right->torque < review.specified->torque);
        CHECK(review.right->bolt_stress <= 1.0);
    }

    TEST_CASE("an inch bolt is refused even where it passes the hole") {
        auto m12 = reviewer_of(edited(sound_lap, "size = \"M16\"", "size = \"M12\""));
        const auto review = reviewed(m12, R"(designation = "1/2-13 UNC x 8\" grade 5 zinc plated")");
        CHECK(review.verdict == Verdict::refuse);
        CHECK(review.governing().rule->id == "inch-thread");
        CHECK(*review.offer.inch_diameter < m12.joint().bolt.hole_diameter);
        CHECK(review.governing().words.find("13.5 mm") != std::string::npos);
        // Compared honestly all the same: class 8.8 and grade 5 are close in strength.
        const auto find = [&](std::string_view name) {
            return *std::find_if(review.properties.begin(), review.properties.end(), [&](const auto& p) { return p.name == name; });
        };
        CHECK(find("thread").standing == Standing::incompatible);
        CHECK(find("pitch").standing == Standing::incompatible);
        CHECK(find("stress area").standing == Standing::better);  // 91.5 mm2 against 84.3 mm2
        CHECK(find("most hardness, HV").standing != Standing::unknown);
    }

    TEST_CASE("a list: the best first, what cannot be read last, and the rest reviewed as if alone") {
        const auto list = list_of(
            "item;designation;finish;length (mm);price\n"
            "1;M16 x 200 8.8;zinc electroplate, waxed;200;3,10\n"
            "2;M16 x 200 8.8;hot-dip galvanised, waxed;2OO;1,00\n"
            "3;M16 x 200 A4-80;stainless, anti-seize;200;14,20\n"
            "4;M16 x 200 8.8;hot-dip galvanised, waxed;200;4,85\n"
            "5;M16 x 200;hot-dip galvanised, waxed;200;2,00\n"
            "6;M16 x 200 8.9;hot-dip galvanised, waxed;200;2,00\n");
        const auto out = review_list(list, reviewer(""), built_in());
        std::string order;
        for (const auto& row : out.rows)
            order += *row.row->item + (row.review ? fmt::format(" {}\n", word_of(row.review->verdict)) : " not readable\n");
        CHECK(order == "4 accept\n5 ask\n6 ask\n3 ask\n1 refuse\n2 not readable\n");
        CHECK(out.has_usable());
        const auto& unreadable = out.rows.back();
        REQUIRE(unreadable.problems.size() == 1);
        CHECK(unreadable.problems[0].row == 3);
        CHECK(unreadable.problems[0].column == 4);
        const auto alone =
            reviewed(reviewer(""), "designation = \"M16 x 200 A4-80\"\nfinish = \"stainless, anti-seize\"\nlength = \"200 mm\"");
        CHECK(told_reasons(*out.rows[3].review) == told_reasons(alone));
    }

    TEST_CASE("a column passed over that is like a known one is asked about in every row where it says something") {
        const auto list = list_of(
            "Size;Length mm;Class;Finish;Used?;Warehouse\n"
            "M16;180;8.8;hot-dip galvanised, waxed;;3\n"
            "M16;;8.8;hot-dip galvanised, waxed;yes;3\n"
            "M16;;8.8;hot-dip galvanised, waxed;no;3\n");
        const auto out = review_list(list, reviewer(""), built_in());
        std::string order;
        for (const auto& row : out.rows) order += fmt::format("{} {}\n", row.row->row, word_of(row.review->verdict));
        CHECK(order == "4 accept\n2 ask\n3 refuse\n");
        CHECK(out.rows[1].review->governing().words.find("\"Length mm\" says \"180\"") != std::string::npos);
    }

    TEST_CASE("stainless where it is colder than its standard begins") {
        auto cold = reviewer_of(edited(sound_lap, "coldest = \"-15 degC\"", "coldest = \"-30 degC\""));
        const auto* offer = "class = \"A4-80\"\nfinish = \"stainless, anti-seize\"\nnut-class = \"80\"\ntest-report = true";
        CHECK(among(reviewed(cold, offer), "temperature"));
        CHECK(!among(reviewed(reviewer(""), offer), "temperature"));
    }

    TEST_CASE("headings of the trade, and a class in a nut's row") {
        const auto list = list_of(
            "Pos;Bezeichnung;Länge (mm);Festigkeitsklasse;Oberfläche;Part;Nut thread;Preis\n"
            "1;M16 x 200 8.8;200;8.8;hot-dip galvanised, waxed;bolt;;4,85\n"
            "2;M16;;8;hot-dip galvanised, waxed;nut;oversize;0,95\n"
            "3;M16;;88;hot-dip galvanised, waxed;nut;oversize;0,95\n");
        CHECK(list.header.empty());
        const auto out = review_list(list, reviewer(""), built_in());
        CHECK(out.rows[0].review->verdict == Verdict::accept);
        CHECK(out.rows[1].review->verdict == Verdict::accept);
        REQUIRE(out.rows[2].problems.size() == 1);
        CHECK(out.rows[2].problems[0].column == 4);
    }

    TEST_CASE("a locking nut is higher, and must show two pitches") {
        auto by = reviewer_of(edited(sound_lap, "size = \"M16\"", "size = \"M16\"\nlength = \"195 mm\""));
        const auto* nut =
            "part = \"nut\"\nsize = \"M16\"\nnut-class = \"8\"\nnut-thread = \"oversize\"\nfinish = \"hot-dip galvanised, waxed\"\n";
        CHECK(reviewed(by, nut).verdict == Verdict::accept);
        const auto locking = reviewed(by, std::string(nut) + "standard = \"ISO 7040\"");
        CAPTURE(told_reasons(locking));
        CHECK(locking.verdict == Verdict::refuse);
        CHECK(among(locking, "too-short"));
    }

    TEST_CASE("a layer, a joint without one, and a joint without washers or tube") {
        auto bracket = reviewer_of(demo("bracket.toml"));
        CHECK(reviewed(bracket, "part = \"tube\"\nmaterial = \"E355+N precision tube\"").verdict == Verdict::refuse);
        const auto rubber = reviewed(bracket, "part = \"layer\"\nmaterial = \"EPDM gasket\"");
        CAPTURE(told_reasons(rubber));
        CHECK(rubber.verdict == Verdict::refuse);
        CHECK(rubber.right->is_built());
        CHECK(reviewed(reviewer(""), "part = \"layer\"\nmaterial = \"EPDM gasket\"").governing().rule->id == "cannot-be-built");
    }

    TEST_CASE("the torque does not count where preload is made another way") {
        auto turned = reviewer_of(edited(sound_lap, "torque wrench, friction class B", "angle controlled"));
        const auto review = reviewed(turned, R"(designation = "M16 x 200 8.8 HDG waxed")");
        CAPTURE(told_reasons(review));
        CHECK(!among(review, "own-torque"));
        CHECK(!among(review, "old-torque-loosens"));
        for (const auto& change : review.changes) CHECK(!change.starts_with("torque"));
    }

    TEST_CASE("no wording gets by that says more than it seems to") {
        // Each field in place of, or beside, those of the bolt specified in full.
        const std::vector<std::pair<std::string, std::string>> base{
            {"size", "M16"}, {"length", "200 mm"}, {"class", "8.8"}, {"finish", "hot-dip galvanised, waxed"}, {"standard", "ISO 4014"}};
        const std::vector<std::pair<std::string, std::vector<std::string>>> wordings{
            {"size",
             {"M16x180", "M16 fine", "M16 pitch 1.5", "M16 LH", "M16 used", "M16 or 5/8", "M16 (5/8)", "M16 UNF", "M16x200 12.9",
              "not M16"}},
            {"class",
             {"8.8 used", "8.8 black", "8.8 electroplated", "8.8/5", "8.8U", "8.8 M12x100", "8.8 socket head", "8.8 ISO 4762", "8.8?"}},
            {"finish",
             {"not HDG, waxed", "HDG not waxed", "HDG waxed used", "hot-dip galvanised, waxed, wax removed", "electroplated HDG waxed",
              "HDG waxed ISO 4042", "fake HDG waxed", "hot-dip galvanised, waxed 12.9"}},
            {"standard",
             {"not ISO 4014", "like ISO 4014", "ISO 4014 with fine thread", "ISO 4014 reduced shank", "ISO 4014 12.9", "ISO 4014, used",
              "ISO 4032", "ISO 7089"}},
            {"nut-class", {"|8|", "8 thin", "8 ISO 4035", "8 DIN 934", "8 half height", "8 used", "8 6H", "A2-80"}},
            {"marking",
             {"no 8.8 mark", "unmarked (8.8 by invoice)", "8.8 on the box only, head blank", "not 8.8", "8.8 ground off", "8.8 10.9",
              "12.9/8.8", "4.8.8", "_8.8_", "(8.8)", "8.8 low-carbon martensite", "8.8u", "8.8, no maker mark"}},
            {"lubricant",
             {"dry", "degreased", "none", "tap water", "graphite", "copper paste", "Cu grease", "Kupferpaste", "not copper-free"}},
            {"designation",
             {"M16x200 12.9 10.9 HDG waxed",
              "M16x200 8.8 12.9 HDG waxed",
              "M12 M16",
              "M12x200 M14x200 8.8",
              "M16x180x190 8.8",
              "M16x200 black ZP",
              "A2K A4 8.8",
              "grade 8 M16x200",
              "M16x200 used new",
              "countersunk M16x200",
              "socket head M16x200",
              "stud M16x200",
              "ISO 4762 ISO 4162 M16x200",
              "M16x200 8.8 HDG waxed UNC",
              "M16x200 8.8 HDG waxed BSW",
              "M16x200 8.8 HDG electroplated waxed",
              "M16x200 8.8 HDG waxed yellow passivated",
              "ISO 4014 M16x200 8.8 HDG waxed countersunk",
              "ISO 4014 M16x200 8.8 HDG waxed eye bolt",
              "M16x200 8.8 HDG waxed with nut ISO 4035",
              "M16x200 8.8 HDG waxed with nut DIN 934 8",
              "M16x200 8.8 HDG waxed with washer ISO 7091",
              "M16x200 8.8 HDG waxed nut DIN 439",
              "M16x200 8.8 HDG waxed HV",
              "M16x200 8.8 HDG waxed thread length 10 mm",
              "M16x200 8.8 HDG waxed grip 100",
              "M16x200 <8.8",
              "M16x200 8.8 HDG?",
              "M16x200 |8| HDG waxed"}},
        };
        for (const auto& [field, words] : wordings)
            for (const auto& word : words) {
                std::string text;
                for (const auto& [key, value] : base)
                    if (key != field) text += fmt::format("{} = \"{}\"\n", key, value);
                text += fmt::format("{} = \"{}\"\n", field, word);
                CAPTURE(text);
                Diagnostics diagnostics;
                auto offer = read_offer(tree_of(text, "offer.toml"), built_in(), diagnostics);
                if (!offer) continue;
                const auto review = reviewer("").review(std::move(*offer));
                CAPTURE(told_reasons(review));
                // A paste to be cleaned off, or a dry bolt to be waxed, may be mended on the sheet.
                const bool mended = review.verdict == Verdict::accept_with_changes && !review.changes.empty();
                CHECK((review.verdict == Verdict::refuse || review.verdict == Verdict::ask || mended));
            }
        for (const auto* text :
             {"part = \"nut\"\ndesignation = \"8 nuts M16 HDG waxed\"", "part = \"nut\"\ndesignation = \"12 nuts M16 HDG waxed\"",
              "part = \"washer\"\nstandard = \"ISO 7091\"\nsize = \"M16\"\nfinish = \"HDG\"",
              "part = \"washer\"\nstandard = \"ISO 4014\"\nsize = \"M16\"\nfinish = \"HDG\"",
              "part = \"washer\"\nseries = \"ISO 7089\"\nsize = \"M16\"\nfinish = \"HDG\"\nmaterial = \"brass\"",
              "part = \"washer\"\nseries = \"ISO 7089\"\nsize = \"M16\"\nfinish = \"HDG\"\nmaterial = \"A2\"",
              "part = \"washer\"\ndesignation = \"ISO 7089 16 A2\"", "part = \"washer\"\ndesignation = \"ISO 7089 16 cadmium\"",
              "part = \"washer\"\nseries = \"ISO 7089\"\nsize = \"M16\"\nfinish = \"HDG\"\nmarking = \"100 HV\"",
              "part = \"nut\"\nstandard = \"ISO 4032\"\ndesignation = \"nut DIN 934 M16 8 HDG waxed\"",
              "part = \"nut\"\nsize = \"M16\"\nnut-class = \"80\"\nfinish = \"hot-dip galvanised, waxed\"\nnut-thread = \"oversize\"",
              "part = \"nut\"\nsize = \"M16\"\nnut-class = \"8\"\nnut-thread = \"oversize\"",
              "part = \"nut\"\nsize = \"M16\"\nnut-class = \"8\"\nfinish = \"HDG\"\nlubricant = \"waxed\"\nmarking = \"8U\"",
              "part = \"nut\"\nstandard = \"EN 14399-4\"\nsize = \"M16\"\nnut-class = \"8\"\nfinish = \"HDG\"",
              "part = \"nut\"\ndesignation = \"ISO 4032 - M16 - 8 - tZn waxed 6H\"", "part = \"tube\"\ndesignation = \"tube plain\"",
              "part = \"tube\"\nsize = \"5/8\"", "part = \"tube\"\nfinish = \"not HDG\"", "part = \"tube\"\nfinish = \"HDG removed\""}) {
            CAPTURE(text);
            const auto review = reviewed(reviewer(""), text);
            CAPTURE(told_reasons(review));
            CHECK((review.verdict == Verdict::refuse || review.verdict == Verdict::ask));
        }
    }
}
