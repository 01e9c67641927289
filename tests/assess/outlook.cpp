// SPDX-License-Identifier: MIT
#include "assess/outlook.hpp"
#include "joint/joints.hpp"
#include "joint/reading.hpp"
#include "joint/resolve.hpp"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <algorithm>

using namespace joint_tests;

namespace {

const std::string coated = edited(lapped_rail, "material = \"E355+N precision tube\"",
                                  "material = \"E355+N precision tube\", coating = \"ISO 1461, over 3 to 6 mm\"");

Joint joint_with(const std::string& corrosion, const std::string& base = coated) {
    Diagnostics diagnostics;
    auto joint = read_joint(base + "\n[corrosion]\n" + corrosion, "joint.toml", built_in(), diagnostics);
    if (!joint) throw std::runtime_error(diagnostics.text());
    return *joint;
}

ExposureOutlook seen(const Joint& joint, const Row<Exposure>& exposure) {
    Place place(exposure, built_in());
    return outlook_in(joint, place, built_in());
}

ExposureOutlook seen(const Joint& joint, const std::string& exposure) {
    const auto* row = built_in().of<Exposure>().find(exposure);
    REQUIRE(row != nullptr);
    return seen(joint, *row);
}

const MemberOutlook& member(const ExposureOutlook& e, const std::string& name) {
    const auto found = std::find_if(e.members.begin(), e.members.end(), [&](const auto& m) { return m.name == name; });
    REQUIRE_MESSAGE(found != e.members.end(), name);
    return *found;
}

const ContactOutlook& contact(const ExposureOutlook& e, const std::string& place) {
    const auto found = std::find_if(e.contacts.begin(), e.contacts.end(), [&](const auto& c) { return c.place == place; });
    REQUIRE_MESSAGE(found != e.contacts.end(), place);
    return *found;
}

Row<Exposure> site_of(double temperature, double humidity, double sulfur, double chloride, Rain rain = Rain::sheltered) {
    Row<Exposure> out;
    out.name = "random";
    out.temperature = degC(temperature);
    out.humidity = humidity;
    out.sulfur_dioxide = mg_per_m2_d(sulfur);
    out.chloride = mg_per_m2_d(chloride);
    out.rain = rain;
    return out;
}

const Row<Metal>& metal(const char* name) { return *built_in().of<Metal>().find(name); }

double tenth(int least, int most) { return *rc::gen::inRange(10 * least, 10 * most + 1) / 10.0; }

}  // namespace

TEST_SUITE("assess/outlook") {
    TEST_CASE("couples that are there: faces, bolt ends, tube and bore, each with who pays") {
        const auto e = seen(joint_with(""), "surf coast");
        REQUIRE(e.contacts.size() == 5);
        const auto& faces = contact(e, "faying edge");
        CHECK(faces.hidden);
        CHECK(faces.now->anode->name == "zinc");
        CHECK(faces.later->anode->name == "aluminium 5xxx, 6xxx, 7xxx");
        CHECK(faces.later->cathode->name == "carbon steel");
        CHECK(contact(e, "bolt head").now->anode == nullptr);  // zinc on zinc
        CHECK(contact(e, "nut").now->anode->name == "zinc");
        CHECK(contact(e, "nut").now->area_ratio > 1.0);     // a small end in a wide face
        CHECK(contact(e, "nut").later->area_ratio == 1.0);  // its sides and thread make up for the wider ring
        CHECK(contact(e, "inside the rail").now->anode->name == "zinc");
        CHECK(member(e, "drawbar").by_upper.has_value());
        CHECK(member(e, "rail at drawbar").is_wall);
    }

    TEST_CASE("zinc on the steel spares the aluminium as long as it lasts; bare steel eats it from the first day") {
        const auto zinc = seen(joint_with(""), "surf coast");
        const auto bare = seen(joint_with("", edited(coated, "hot-dip galvanised, sweep blasted", "blasted steel")), "surf coast");
        CHECK(member(zinc, "rail at drawbar").added.rate == um_per_a(0));
        CHECK(member(bare, "rail at drawbar").added.rate > um_per_a(5));
        CHECK(member(bare, "rail at drawbar").life < member(zinc, "rail at drawbar").life);
        CHECK(in_years(member(bare, "drawbar").life) == 0.0);
        CHECK(!bare.passes);
    }

    TEST_CASE("what a part loses by hand: zinc of the bolts at the nut") {
        const auto joint = joint_with("");
        const auto e = seen(joint, "C4");
        const auto& nut = contact(e, "nut");
        const auto& bolts = member(e, "bolts");
        // C4 of zinc: 2.1 to 4.2 um/a, geometric mean 2.97; multiplier 4 by a third beside aluminium, strength 0.3.
        const double own = std::sqrt(2.1 * 4.2);
        const double ratio = std::min(nut.now->area_ratio, 10.0);
        const double added = own * 4.0 / 3.0 * 0.3 * ratio;
        CHECK(in_um_per_a(bolts.own.rate) == doctest::Approx(own));
        CHECK(in_um_per_a(bolts.added.rate) == doctest::Approx(added));
        CHECK(in_years(bolts.life) == doctest::Approx(40.0 / (own + added)));
        // The wetted ring round a washer of 30 mm within the film's reach, over half as much again as the washer's own rim of that width.
        const double x = in_mm(nut.now->reach), r = 15.0;
        const double end = 1.5 * (r * r - std::max(r - x, 0.0) * std::max(r - x, 0.0));
        CHECK(nut.now->area_ratio == doctest::Approx(((r + x) * (r + x) - r * r) / end));
    }

    TEST_CASE("stainless bolts in a wide rail: aluminium pays, little inland and more by the surf; nothing of theirs is used up") {
        const auto text =
            edited(edited(coated, "class = \"8.8\"", "class = \"A4-70\""), "hot-dip galvanised, waxed", "stainless, anti-seize");
        const auto joint = joint_with("", text);
        const auto inland = seen(joint, "inland farm"), surf = seen(joint, "surf coast");
        CHECK(member(inland, "bolts").lasts);
        CHECK(contact(surf, "nut").now->anode->name == "aluminium 5xxx, 6xxx, 7xxx");
        CHECK(contact(inland, "nut").added < um_per_a(0.1));
        CHECK(contact(surf, "nut").added > 10.0 * contact(inland, "nut").added);
        CHECK(contact(surf, "bolt head").now->anode->name == "zinc");  // the drawbar's
    }

    TEST_CASE("an aluminium tube has no couple with the rail, a stainless one the worst") {
        const auto tube = [&](const char* material) {
            return seen(joint_with("", edited(lapped_rail, "E355+N precision tube", material)), "surf coast");
        };
        const auto aluminium = tube("EN AW-6082-T6 extruded, up to 5 mm"), stainless = tube("316 tube");
        CHECK(contact(aluminium, "inside the rail").now->anode == nullptr);
        CHECK(contact(stainless, "inside the rail").now->anode->name == "aluminium 5xxx, 6xxx, 7xxx");
        CHECK(member(stainless, "rail at tube").life < member(aluminium, "rail at tube").life);
    }

    TEST_CASE("the bolt bridges every layer unless sleeved, and the lamps' earth bridges the sleeve") {
        const auto with_gasket = edited(coated, "[[part]]\nkind = \"section\"",
                                        "[[part]]\nkind = \"layer\"\nmaterial = \"EPDM gasket\"\n\n[[part]]\nkind = \"section\"");
        const auto at = with_gasket.rfind("[[part]]");
        const auto insulated =
            with_gasket.substr(0, at) + "[[part]]\nkind = \"layer\"\nmaterial = \"glass-epoxy laminate\"\n\n" + with_gasket.substr(at);
        const std::string sleeve = "fixing = \"glass-epoxy sleeve and shoulder washer\"\n";
        const auto path = [&](const std::string& corrosion) {
            return contact(seen(joint_with(corrosion, insulated), "surf coast"), "faying edge").path;
        };
        CHECK(path("") == 1.0);
        CHECK(path("chassis-earth = \"one side\"\n") == 1.0);
        CHECK(path(sleeve) == 1.0);
        CHECK(path(sleeve + "chassis-earth = \"one side\"\n") < 0.05);
    }

    TEST_CASE("edges sealed, seals maintained, a cavity waxed never raise a rate") {
        for (const auto* exposure : {"inland farm", "C3", "C4", "surf coast", "surf beach"}) {
            const auto rates = [&](const std::string& corrosion) {
                std::vector<double> out;
                for (const auto& m : seen(joint_with(corrosion), exposure).members) out.push_back(in_um_per_a(m.total.rate));
                return out;
            };
            const auto open = rates("");
            for (const auto& better :
                 {rates("edges = \"edges sealed\""), rates("edges = \"edges sealed\"\nmaintained = true"), rates("cavity = \"waxed\"")}) {
                REQUIRE(better.size() == open.size());
                for (std::size_t i = 0; i < open.size(); ++i) CHECK(better[i] <= open[i] * (1 + 1e-12));
            }
        }
    }

    TEST_CASE("lives fall from category to category, and by distance to the surf") {
        const auto joint = joint_with("");
        const auto falls = [](const ExposureOutlook& mild, const ExposureOutlook& hard) {
            REQUIRE(mild.members.size() == hard.members.size());
            for (std::size_t i = 0; i < mild.members.size(); ++i) {
                CAPTURE(mild.members[i].name);
                CHECK(hard.members[i].life <= mild.members[i].life);
            }
        };
        const std::array categories{"C1", "C2", "C3", "C4", "C5", "CX"};
        for (std::size_t i = 0; i + 1 < categories.size(); ++i) falls(seen(joint, categories[i]), seen(joint, categories[i + 1]));
        falls(seen(joint, "coast road"), seen(joint, "surf coast"));
        falls(seen(joint, "surf coast"), seen(joint, "surf beach"));
        falls(seen(joint, "launched, rinsed"), seen(joint, "launched, not rinsed"));
        falls(seen(joint, "salted winter roads"), seen(joint, "brined winter roads"));
    }

    TEST_CASE("random climates: more salt or sulfur dioxide, or shelter on a salty site, never lengthens a life; all is finite") {
        const auto joint = joint_with("edges = \"edges sealed\"");
        CHECK(rc::check("a worse climate", [&] {
            const double t = tenth(-15, 28), h = tenth(4, 9) / 10.0 + 0.05, s = tenth(1, 90), c = tenth(1, 500);
            const auto mild = seen(joint, site_of(t, h, s, c, Rain::washed));
            const auto more = *rc::gen::inRange(0, 3);
            const auto hard =
                seen(joint, site_of(t, h, more == 0 ? s * 1.5 : s, more == 1 ? c * 1.5 : c, more == 2 ? Rain::sheltered : Rain::washed));
            RC_ASSERT(mild.members.size() == hard.members.size());
            for (std::size_t i = 0; i < mild.members.size(); ++i) {
                const auto &a = mild.members[i], &b = hard.members[i];
                RC_ASSERT(std::isfinite(in_years(a.life)) && std::isfinite(in_years(a.life_low)) && std::isfinite(in_years(a.life_high)));
                RC_ASSERT(a.life_low <= a.life && a.life <= a.life_high);
                RC_ASSERT(a.total.low <= a.total.rate && a.total.rate <= a.total.high);
                RC_ASSERT(b.life <= a.life * (1 + 1e-9));
            }
        }));
    }

    TEST_CASE(
        "random pairs: a metal beside itself has no couple; a larger cathode never lowers the anode's rate, the pair's order is nothing") {
        const auto& metals = built_in().of<Metal>().rows;
        CHECK(rc::check("pairs", [&] {
            const auto& a = metals[*rc::gen::inRange<std::size_t>(0, metals.size())];
            const auto& b = metals[*rc::gen::inRange<std::size_t>(0, metals.size())];
            const auto exposure = site_of(tenth(-10, 28), 0.75, tenth(1, 60), tenth(1, 600));
            Place place(exposure, built_in());
            const double ratio = tenth(0, 5) + 0.1;
            const auto one = place.pair(a, b, ratio), other = place.pair(b, a, 1.0 / ratio);
            RC_ASSERT(one->anode == other->anode && one->cathode == other->cathode);
            RC_ASSERT(std::abs(in_um_per_a(one->added.rate - other->added.rate)) <= 1e-9 * in_um_per_a(one->added.rate) + 1e-12);
            if (&a == &b) RC_ASSERT(one->anode == nullptr && one->added.rate == um_per_a(0));
            if (one->anode != nullptr) {
                const auto larger = place.pair(a, b, one->first_pays ? 2.0 * ratio : 0.5 * ratio);
                RC_ASSERT(larger->added.rate >= one->added.rate * (1 - 1e-9));
                RC_ASSERT(one->added.low <= one->added.rate && one->added.rate <= one->added.high);
            }
        }));
    }

    TEST_CASE("thicker zinc never shortens a life") {
        for (const auto* exposure : {"C3", "surf coast"}) {
            auto joint = joint_with("");
            double drawbar = 0, rail = 0;
            for (const double zinc : {5.0, 20.0, 45.0, 60.0}) {
                joint.plies.front().surface.coating_thickness = um(zinc);
                const auto e = seen(joint, exposure);
                CHECK(in_years(member(e, "drawbar").life) >= drawbar);
                CHECK(in_years(member(e, "rail at drawbar").life) >= rail);
                drawbar = in_years(member(e, "drawbar").life);
                rail = in_years(member(e, "rail at drawbar").life);
            }
        }
    }

    TEST_CASE("the verdict can fail on life alone") {
        const auto joint = joint_with("exposures = [\"inland farm\", \"surf beach\"]");
        const auto a = assessed(joint);
        add_outlook(built_in(), *a);
        CHECK(a->corrosion.exposures.size() == 2);
        CHECK(a->corrosion.exposures[0].passes);
        CHECK(!a->corrosion.exposures[1].passes);
        CHECK(!a->corrosion.passes);
        CHECK(!a->passes);
        CHECK(a->holds == assessed(joint)->passes);
        assess(joint, *a);
        CHECK(a->corrosion.exposures.empty());  // an assessment is filled anew
    }

    TEST_CASE("a site by its category is that category; shelter, salt and launching raise it, never beyond CX") {
        const auto joint_category = [](const char* name) { return atmosphere_at(*built_in().of<Exposure>().find(name)).joint; };
        CHECK(joint_category("C3") == Corrosivity::c3);
        CHECK(joint_category("salted winter roads") == Corrosivity::c4);
        CHECK(joint_category("inland town") == Corrosivity::c3);
        CHECK(joint_category("launched, not rinsed") == Corrosivity::cx);
        Site site;
        site.category = Corrosivity::cx;
        site.launching = Launching::unrinsed;
        CHECK(atmosphere_at(site).joint == Corrosivity::cx);
        site.category = Corrosivity::c2;
        site.launching = Launching::none;
        CHECK(atmosphere_at(site).joint == Corrosivity::c2);  // no salt that rain could wash off
        site.category = Corrosivity::c4;
        CHECK(atmosphere_at(site).joint == Corrosivity::c5);
        site.category = Corrosivity::c3;
        const auto zinc = atmosphere_at(site).of(AtmosphereMetal::zinc).rate;
        CHECK(in_um_per_a(zinc.low) == doctest::Approx(1.5 * 0.7));
        CHECK(in_um_per_a(zinc.high) == doctest::Approx(1.5 * 2.1));
        site.road_salt = RoadSalt::sodium_chloride;
        CHECK(in_um_per_a(atmosphere_at(site).of(AtmosphereMetal::zinc).rate.low) == doctest::Approx(std::hypot(1.5 * 0.7, 2.1)));
    }

    TEST_CASE("no step in a life as chloride rises: one milligram more is no other joint") {
        const auto joint = joint_with("edges = \"edges sealed\"");
        for (const auto rain : {Rain::sheltered, Rain::hosed_down}) {
            for (double chloride = 1.0; chloride < 700.0; chloride *= 1.02) {
                const auto a = atmosphere_at(site_of(18, 0.75, 2, chloride, rain)),
                           b = atmosphere_at(site_of(18, 0.75, 2, 1.02 * chloride, rain));
                for (const auto m : {AtmosphereMetal::zinc, AtmosphereMetal::carbon_steel, AtmosphereMetal::aluminium}) {
                    CHECK(b.of(m).rate.rate >= a.of(m).rate.rate);
                    CHECK(b.of(m).rate.rate <= 1.05 * a.of(m).rate.rate);
                }
            }
        }
    }

    TEST_CASE("mud is worse than a clean face, in any category; paint on the cathode spares the anode") {
        for (const auto* category : {"C2", "C4"}) {
            auto site = *built_in().of<Exposure>().find(category);
            const auto clean = seen(joint_with(""), site);
            site.deposits = Deposits::left;
            const auto muddy = seen(joint_with(""), site);
            for (std::size_t i = 0; i < clean.members.size(); ++i) CHECK(muddy.members[i].total.rate >= clean.members[i].total.rate);
            CHECK(member(muddy, "bolts").total.rate > member(clean, "bolts").total.rate);
        }
        const auto bare = seen(joint_with("", edited(coated, "hot-dip galvanised, sweep blasted", "blasted steel")), "C5");
        const auto painted = seen(joint_with("", edited(coated, "hot-dip galvanised, sweep blasted", "painted")), "C5");
        CHECK(member(painted, "bolts").added.rate < 0.3 * member(bare, "bolts").added.rate);
        CHECK(member(painted, "rail at drawbar").added.rate < 0.3 * member(bare, "rail at drawbar").added.rate);
    }

    TEST_CASE("each faying plane has its own layer") {
        const std::string text = std::string(two_cheeks);
        const auto first = text.find("[[part]]\nkind = \"section\"");
        REQUIRE(first != std::string::npos);
        auto one_side = text;
        one_side.insert(first, "[[part]]\nkind = \"layer\"\nmaterial = \"EPDM gasket\"\n\n");
        const auto e = seen(joint_with("", one_side), "C4");
        std::vector<double> shares;
        for (const auto& c : e.contacts)
            if (c.place == "faying edge") shares.push_back(c.electrolyte);
        REQUIRE(shares.size() == 2);
        CHECK(shares[0] < 1.0);
        CHECK(shares[1] == 1.0);
    }

    TEST_CASE("what is used up begins at the told rate, never comes back, and ends with the told lives") {
        const auto duplex = edited(coated, "surface = \"hot-dip galvanised, sweep blasted\"", "surface = \"painted\"\ngalvanised = true");
        int bends = 0;
        for (const auto& each : {std::pair{"surf coast", &coated}, std::pair{"inland farm", &coated}, std::pair{"C5", &duplex}}) {
            const auto* place = each.first;
            const auto* text = each.second;
            for (const auto& m : seen(joint_with("", *text), place).members) {
                if (m.lasts || m.thickness <= mm(0)) continue;
                INFO(place << ": " << m.name);
                CHECK(m.fast.end == m.life_low);
                CHECK(m.central.end == m.life);
                CHECK(m.slow.end == m.life_high);
                for (const auto& course : {m.fast, m.central, m.slow}) {
                    double before = 0.0;
                    for (int i = 0; i <= 50; ++i) {
                        const double used = course.used(0.02 * i * course.end);
                        CHECK(used >= before);
                        before = used;
                    }
                    CHECK(course.used(course.end) == 1.0);
                }
                // Zinc waits for the paint.
                if (place == std::string("C5") && m.name == "drawbar") CHECK(m.central.used(0.99 * m.central.bend) == 0.0);
                if (!m.pits) continue;
                const auto early = 0.5 * m.central.bend;
                CHECK(m.central.used(early) == doctest::Approx(PitDepth::middle * static_cast<double>(m.total.rate * early / m.thickness)));
                bends += m.central.bend < m.central.end ? 1 : 0;
            }
        }
        CHECK(bends > 0);
    }

    TEST_CASE("what is derived line by line is what is told") {
        const auto joint = joint_with("edges = \"edges sealed\"");
        const auto& exposure = *built_in().of<Exposure>().find("surf coast");
        const auto e = seen(joint, exposure);
        const auto steps = derive_outlook(joint, exposure, built_in()).steps();
        for (const auto& m : e.members) {
            CAPTURE(m.name);
            CHECK(std::any_of(steps.begin(), steps.end(),
                              [&](const Step& step) { return step.symbol == "t" && step.value.si() == m.life.value(); }));
        }
    }

    TEST_CASE("dry plate records are brought to wet candle") {
        auto site = site_of(15, 0.75, 2, 50);
        const auto candle = atmosphere_at(site);
        site.chloride_method = ChlorideMethod::dry_plate;
        const auto plate = atmosphere_at(site);
        CHECK(in_mg_per_m2_d(*plate.chloride) == doctest::Approx(2.4 * in_mg_per_m2_d(*candle.chloride)));
        CHECK(plate.of(AtmosphereMetal::zinc).rate.rate > candle.of(AtmosphereMetal::zinc).rate.rate);
    }

    TEST_CASE("zinc with steel and with aluminium: polarity") {
        Place place(*built_in().of<Exposure>().find("C4"), built_in());
        CHECK(place.pair(metal("zinc"), metal("carbon steel"), 1)->anode->name == "zinc");
        CHECK(place.pair(metal("carbon steel"), metal("aluminium 5xxx, 6xxx, 7xxx"), 1)->anode->name == "aluminium 5xxx, 6xxx, 7xxx");
        CHECK(place.pair(metal("stainless A4"), metal("zinc"), 1)->anode->name == "zinc");
        CHECK(place.pair(metal("aluminium 2xxx"), metal("zinc"), 1)->unplaced);
    }
}
