// SPDX-License-Identifier: MIT
#include "report/corrosion.hpp"

#include "quantity/text.hpp"
#include "report/layout.hpp"
#include "report/steps_text.hpp"

#include <fmt/format.h>

namespace faywright {

namespace {

const char* mark(bool passes) { return passes ? "pass" : "FAIL"; }

}  // namespace

std::string climate_text(const ExposureOutlook& e) {
    std::string out = fmt::format("{} in the open, {} at the joint", word_of(e.atmosphere.open), word_of(e.atmosphere.joint));
    if (e.atmosphere.chloride) out += fmt::format(", chloride {}", print(Value(*e.atmosphere.chloride), 2));
    if (const auto& median = e.atmosphere.chloride_median; median && *median != *e.atmosphere.chloride)
        out += fmt::format(" (nine stations in ten have less; the median {})", print(Value(*median), 2));
    if (e.atmosphere.unwashed > 1.0) out += fmt::format(", x {} for no rain", print_number(e.atmosphere.unwashed, 2));
    if (e.atmosphere.unrinsed > 1.0) out += fmt::format(", x {} unrinsed", print_number(e.atmosphere.unrinsed, 2));
    if (e.atmosphere.salted_road) out += ", with the middle of C4 from the road";
    if (e.atmosphere.muddy) out += ", muddy";
    return out + fmt::format(", wet {:.0f} % of the year", 100.0 * e.wet_share);
}

std::string contact_text(const ContactOutlook& c) {
    auto heading = fmt::format("{} / {}, {}", c.first, c.second, c.place);
    if (c.now->anode != nullptr) {
        heading += fmt::format(" (electrolyte {}", print_number(c.electrolyte, 2));
        if (c.path < 1.0) heading += fmt::format(", path {}", print_number(c.path, 2));
        if (c.now->area_ratio != 1.0) heading += fmt::format(", cathode {} : 1", print_number(c.now->area_ratio, 2));
        heading += ')';
    }
    heading += ": ";
    std::string out;
    if (c.now->anode == nullptr)
        out = c.now->unplaced ? "who pays is not known" : "no couple";
    else if (c.now->no_rate)
        out = fmt::format("{} pays; no rate is known", c.now->anode->name);
    else
        out = fmt::format("{} pays {} um/a: {}", c.now->anode->name, rate_text(c.added), word_of(c.severity));
    if (c.later->anode != nullptr && c.later->anode != c.now->anode)
        out += fmt::format("; when zinc is gone {} pays {} um/a", c.later->anode->name, rate_text(c.added_later));
    return heading + out;
}

std::string exposure_text(const ExposureOutlook& e, Duration promised) {
    std::string out = fmt::format("  {}{}\n", fitted(shown(e.exposure->name), 70), mark(e.passes));
    out += wrapped(climate_text(e), "    ", "    ");
    const auto& first = e.first_to_go();
    out += wrapped(
        fmt::format("first to go: {}: {}, {} years; promised {}", first.name, first.stake, life_band_text(first), print(Value(promised))),
        "    ", "      ");
    out += "       " + fitted("part", 18) + fitted("what is used up", 18) + fitted("um/a", 20) + "years\n";
    for (const auto& m : e.members) {
        out += m.passes ? "       " : "  FAIL ";
        if (display_width(m.stake) < 18 && display_width(m.name) < 18)
            out += fitted(m.name, 18) + fitted(m.stake, 18);
        else
            out += m.name + ", " + m.stake + '\n' + std::string(43, ' ');
        out += m.lasts ? "no end seen\n" : fitted(band_text(m.total), 20) + life_band_text(m) + '\n';
        if (m.by_upper && *m.by_upper <= years(200))
            out += fmt::format("         by the power law of ISO 9224, rain-washed: {} to {} years\n", life_text(*m.by_upper),
                               life_text(*m.by_mean));
    }
    for (const auto& c : e.contacts) out += wrapped(contact_text(c), "      ", "        ");
    for (const auto& line : e.cautions) out += wrapped(line, "    * ", "      ");
    return out;
}

std::string rate_text(Speed rate) { return print_number(in_um_per_a(rate), in_um_per_a(rate) < 0.095 ? 1 : 2); }

std::string band_text(const RateBand& band) {
    return fmt::format("{} ({} to {})", rate_text(band.rate), rate_text(band.low), rate_text(band.high));
}

std::string life_text(Duration life) { return life > years(200) ? "200+" : print_number(in_years(life), 2); }

std::string life_band_text(const MemberOutlook& m) {
    if (m.life_low > years(200)) return life_text(m.life);
    return fmt::format("{} ({} to {})", life_text(m.life), life_text(m.life_low), life_text(m.life_high));
}

std::string life_words(const MemberOutlook& m) { return m.lasts ? "no end seen" : life_band_text(m); }

std::string outlook_text(const Joint& joint, const CorrosionOutlook& outlook) {
    if (outlook.exposures.empty())
        return "\nCORROSION  not assessed\n" +
               wrapped("give exposures under [corrosion] of the joint file; faywright table exposures lists them", "  ", "  ");
    std::string out = "\nCORROSION  rates in um/a and lives in years, two in three within the brackets\n";
    for (const auto& exposure : outlook.exposures) out += exposure_text(exposure, joint.life);
    return out + wrapped(outlook_note, "  ", "  ");
}

std::string corrosion_explanation_text(const Joint& joint, const Tables& tables) {
    std::string out;
    for (const auto& exposure : joint.surroundings.exposures)
        out += wrapped(exposure.name, out.empty() ? "EXPOSURE  " : "\nEXPOSURE  ", "  ") +
               steps_text(derive_outlook(joint, exposure, tables).steps());
    return out;
}

std::string corrosion_explanation_json(const Joint& joint, const Tables& tables) {
    json::Json out;
    out["topic"] = "corrosion";
    out["exposures"] = json::Json::array();
    for (const auto& exposure : joint.surroundings.exposures)
        out["exposures"].push_back({{"exposure", exposure.name}, {"steps", json::of(derive_outlook(joint, exposure, tables).steps())}});
    return json::printed(out);
}

namespace json {

Json of(const RateBand& band) {
    const Value like(um_per_a(1));
    return {{"low", of(Value(band.low), like)}, {"estimate", of(Value(band.rate), like)}, {"high", of(Value(band.high), like)}};
}

Json of(const PairAttack& pair) {
    const Value like(um_per_a(1));
    Json out;
    if (pair.anode == nullptr) {
        out["anode"] = nullptr;
        out["placed"] = !pair.unplaced;
        return out;
    }
    out["anode"] = pair.anode->name;
    out["cathode"] = pair.cathode->name;
    out["area_ratio"] = pair.area_ratio;
    out["reach"] = of(Value(pair.reach));
    if (pair.no_rate) return out;
    out["own_rate"] = of(Value(pair.own_rate), like);
    out["added"] = of(pair.added.band());
    out["governed_by"] = pair.added.bounded ? "kinetics" : "field estimate";
    if (pair.bound) out["kinetic_bound"] = of(Value(*pair.bound), like);
    if (pair.kinetics) out["potential"] = of(Value(pair.kinetics->potential));
    if (pair.immersed > um_per_a(0)) out["immersed"] = of(Value(pair.immersed), like);
    return out;
}

Json of(const ExposureOutlook& e) {
    const Value like(um_per_a(1));
    Json out;
    out["exposure"] = e.exposure->name;
    out["open_category"] = word_of(e.atmosphere.open);
    out["joint_category"] = word_of(e.atmosphere.joint);
    if (e.atmosphere.chloride) out["chloride"] = of(Value(*e.atmosphere.chloride));
    out["wet_share"] = e.wet_share;
    out["status"] = e.passes ? "pass" : "fail";
    out["first_to_go"] = e.first_to_go().name;
    out["members"] = Json::array();
    for (const auto& m : e.members) {
        Json one;
        one["part"] = m.name;
        one["stake"] = m.stake;
        one["rate"] = of(m.total);
        one["own_rate"] = of(m.own);
        one["couple_rate"] = of(m.added);
        if (!m.lasts) {
            const Value year(years(1));
            one["life"] = {
                {"low", of(Value(m.life_low), year)}, {"estimate", of(Value(m.life), year)}, {"high", of(Value(m.life_high), year)}};
            if (m.by_upper) one["life_by_power_law"] = {{"upper", of(Value(*m.by_upper), year)}, {"mean", of(Value(*m.by_mean), year)}};
        }
        one["severity"] = word_of(m.severity);
        one["status"] = m.passes ? "pass" : "fail";
        out["members"].push_back(std::move(one));
    }
    out["contacts"] = Json::array();
    for (const auto& c : e.contacts) {
        Json one;
        one["parts"] = {c.first, c.second};
        one["place"] = c.place;
        one["hidden"] = c.hidden;
        one["path"] = c.path;
        one["electrolyte"] = c.electrolyte;
        one["couple"] = of(*c.now);
        one["added"] = of(Value(c.added), like);
        if (c.later->anode != c.now->anode) {
            one["couple_without_zinc"] = of(*c.later);
            one["added_without_zinc"] = of(Value(c.added_later), like);
        }
        one["severity"] = word_of(c.severity);
        out["contacts"].push_back(std::move(one));
    }
    out["cautions"] = e.cautions;
    return out;
}

Json of(const CorrosionOutlook& outlook) {
    Json out;
    out["status"] = outlook.exposures.empty() ? "not-assessed" : outlook.passes ? "pass" : "fail";
    if (outlook.exposures.empty()) return out;
    out["exposures"] = Json::array();
    for (const auto& exposure : outlook.exposures) out["exposures"].push_back(of(exposure));
    return out;
}

}  // namespace json

}  // namespace faywright
