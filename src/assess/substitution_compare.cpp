// SPDX-License-Identifier: MIT
#include "assess/substitution_review.hpp"

#include "quantity/text.hpp"

#include <fmt/format.h>

namespace faywright {

namespace {

enum class Wish { more, less, none };

/// Two values of one property; what nobody knows is unknown, whatever the other says.
struct Comparison {
    std::vector<Property>& out;

    void text(const std::string& name, const std::string& a, const std::string& b, Standing different = Standing::other) {
        const bool unknown = a.empty() || b.empty();
        out.push_back({name, a.empty() ? "not known" : a, b.empty() ? "not known" : b,
                       unknown  ? Standing::unknown
                       : a == b ? Standing::equal
                                : different});
    }

    template <class T>
    void value(const std::string& name, const std::optional<T>& a, const std::optional<T>& b, Wish wish,
               Standing different = Standing::other) {
        const auto words = [](const std::optional<T>& v) {
            if constexpr (std::same_as<T, double>)
                return v ? print_number(*v, 3) : std::string("not known");
            else
                return v ? print(Value(*v), 4) : std::string("not known");
        };
        Standing standing = Standing::unknown;
        if (a && b)
            standing = *a == *b                            ? Standing::equal
                       : wish == Wish::none                ? different
                       : (*b > *a) == (wish == Wish::more) ? Standing::better
                                                           : Standing::worse;
        out.push_back({name, words(a), words(b), standing});
    }
};

std::string band(const std::optional<double>& low, const std::optional<double>& high) {
    return low && high ? fmt::format("{} to {}", print_number(*low, 2), print_number(*high, 2)) : std::string();
}

template <class T>
std::optional<double> over(const std::optional<T>& a, const std::optional<T>& b) {
    if (!a || !b) return std::nullopt;
    return static_cast<double>(*a / *b);
}

}  // namespace

std::string bolt_words(const Bolt& bolt) {
    return fmt::format("{} x {} {}, {}", bolt.thread.name, print_number(in_mm(bolt.length), 4), bolt.property_class.bolt_class,
                       bolt.finish.name);
}

std::string nut_words(const Bolt& bolt) {
    return fmt::format("class {}{}", bolt.nut.nut_class, bolt.nut_oversize > mm(0) ? ", tapped oversize" : "");
}

BoltFacts facts_of(const Bolt& bolt) {
    BoltFacts out;
    const auto& c = bolt.property_class;
    out.thread = bolt.thread.name;
    out.standard_head = "hexagon";
    out.diameter = bolt.thread.diameter;
    out.pitch = bolt.thread.pitch;
    out.stress_area = ThreadGeometry::compute({bolt.thread.diameter, bolt.thread.pitch}).stress_area;
    out.length = bolt.length;
    out.thread_length = bolt.thread_length;
    out.bolt_class = c.bolt_class;
    out.steel = c.family;
    out.ultimate_strength = c.ultimate_strength;
    out.proof_strength = c.proof_strength;
    out.proof_stress = c.proof_stress;
    out.hardness_most = c.hardness_most_hv;
    out.finish = bolt.finish.name;
    out.coating = bolt.finish.kind;
    out.zinc = bolt.finish.kind == "stainless" ? std::nullopt : std::optional(bolt.zinc());
    out.friction_low = bolt.finish.thread_friction_low;
    out.friction_high = bolt.finish.thread_friction_high;
    out.fatigue_factor = bolt.finish.fatigue_factor;
    out.nut = nut_words(bolt);
    out.nut_proof_load = bolt.nut.proof_load;
    out.used = false;
    return out;
}

std::vector<Property> compared(const BoltFacts& a, const BoltFacts& b) {
    std::vector<Property> out;
    Comparison compare{out};
    compare.text("thread", a.thread, b.thread, Standing::incompatible);
    compare.value("diameter", a.diameter, b.diameter, Wish::none, Standing::incompatible);
    compare.value("pitch", a.pitch, b.pitch, Wish::none, Standing::incompatible);
    compare.text("head", a.standard_head, b.standard_head);
    compare.value("stress area", a.stress_area, b.stress_area, Wish::more);
    compare.value("length", a.length, b.length, Wish::none);
    compare.value("thread length", a.thread_length, b.thread_length, Wish::none);
    compare.text("class", a.bolt_class, b.bolt_class);
    compare.value("tensile strength", a.ultimate_strength, b.ultimate_strength, Wish::more);
    compare.value("yield, 0.2 % limit", a.proof_strength, b.proof_strength, Wish::more);
    const auto states_none = [](const BoltFacts& f) { return f.proof_strength && !f.proof_stress; };
    const auto load = [](const BoltFacts& f) -> std::optional<Force> {
        if (!f.proof_stress || !f.stress_area) return std::nullopt;
        return *f.proof_stress * *f.stress_area;
    };
    // Stainless classes state no proof stress, and a 0.2 % limit is not one.
    if (states_none(a) || states_none(b)) {
        const auto words = [&](const BoltFacts& f) {
            return states_none(f) ? std::string("none stated") : load(f) ? print(Value(*load(f)), 4) : std::string();
        };
        compare.text("proof load", words(a), words(b));
    } else {
        compare.value("proof load", load(a), load(b), Wish::more);
    }
    // A lower ratio yields sooner before it breaks, and clamps less: neither better nor worse.
    compare.value("yield ratio", over(a.proof_strength, a.ultimate_strength), over(b.proof_strength, b.ultimate_strength), Wish::none);
    // Hardness matters where hydrogen does.
    const bool both_soft = a.hardness_most.value_or(0.0) < 360.0 && b.hardness_most.value_or(0.0) < 360.0;
    const auto hardness = [](const BoltFacts& f) {
        return f.steel.starts_with("stainless") || f.steel.starts_with("austenitic") ? std::string("no limit: stainless")
               : f.hardness_most                                                     ? print_number(*f.hardness_most, 3)
                                                                                     : "";
    };
    if (a.hardness_most && b.hardness_most)
        compare.value("most hardness, HV", a.hardness_most, b.hardness_most, both_soft ? Wish::none : Wish::less);
    else
        compare.text("most hardness, HV", hardness(a), hardness(b));
    compare.text("steel", a.steel, b.steel);
    compare.text("finish", a.finish, b.finish);
    const bool one_stainless = (a.coating == "stainless") != (b.coating == "stainless");
    if (a.coating == "stainless" && b.coating == "stainless")
        compare.text("zinc, least", "none needed", "none needed");
    else if (one_stainless)
        compare.text("zinc, least", a.zinc ? print(Value(*a.zinc), 3) : "none needed", b.zinc ? print(Value(*b.zinc), 3) : "none needed");
    else
        compare.value("zinc, least", a.zinc, b.zinc, Wish::more);
    compare.text("thread friction", band(a.friction_low, a.friction_high), band(b.friction_low, b.friction_high));
    compare.value("friction scatter", over(a.friction_high, a.friction_low), over(b.friction_high, b.friction_low), Wish::none);
    // Of other steels the factor is on another strength.
    compare.value("fatigue factor", a.fatigue_factor, b.fatigue_factor, a.steel == b.steel ? Wish::more : Wish::none);
    const auto galls = [](const BoltFacts& f) {
        return f.steel.empty() ? std::optional<double>() : std::optional(f.steel == "carbon steel" ? 0.0 : 1.0);
    };
    compare.value("galls", galls(a), galls(b), Wish::less);
    auto& galling = out.back();
    for (auto* words : {&galling.specified, &galling.offered})
        if (*words != "not known") *words = *words == "0" ? "no" : "yes";
    const auto least = [](const BoltFacts& f) {
        return f.steel.empty() ? std::optional<double>() : std::optional(f.steel == "carbon steel" ? -50.0 : -20.0);
    };
    compare.value("serves from, degC", least(a), least(b), Wish::less);
    compare.text("nut to go with it", a.nut, b.nut);
    compare.value("its proof load", a.nut_proof_load, b.nut_proof_load, Wish::more);
    const auto yes_no = [](const std::optional<bool>& v) { return v ? std::optional(*v ? 1.0 : 0.0) : std::nullopt; };
    compare.value("used before", yes_no(a.used), yes_no(b.used), Wish::less);
    for (auto* words : {&out.back().specified, &out.back().offered})
        if (*words != "not known") *words = *words == "0" ? "no" : "yes";
    return out;
}

namespace {

/// Of an offer that cannot be tried: what it says, and what its class and thread promise.
BoltFacts facts_of_offer(const Offer& offer, const Bolt& base, const Tables& tables) {
    BoltFacts out;
    const auto& said = offer.said;
    const bool inch = offer.inch_diameter.has_value();
    const auto* thread = offer.thread != nullptr ? offer.thread : (said.size || inch ? nullptr : &base.thread);
    if (thread != nullptr) {
        out.thread = thread->name;
        out.diameter = thread->diameter;
        out.pitch = thread->pitch;
        out.stress_area = ThreadGeometry::compute({thread->diameter, thread->pitch}).stress_area;
    } else if (inch) {
        out.thread = offer.inch != nullptr ? offer.inch->name : "an inch thread";
        out.diameter = offer.inch_diameter;
        if (offer.inch != nullptr) {
            out.pitch = offer.inch->pitch;
            out.stress_area = offer.inch->stress_area;
        }
    } else {
        out.thread = *said.size;
    }
    out.length = said.length ? said.length : inch ? std::nullopt : std::optional(base.length);
    out.bolt_class = said.bolt_class.value_or("");
    if (const auto* row = class_row(tables, out.bolt_class, out.diameter.value_or(base.thread.diameter)); row != nullptr) {
        out.steel = row->family;
        out.ultimate_strength = row->ultimate_strength;
        out.proof_strength = row->proof_strength;
        out.proof_stress = row->proof_stress;
        out.hardness_most = row->hardness_most_hv;
    }
    if (offer.grade != nullptr) {
        out.steel = "carbon steel";
        out.ultimate_strength = offer.grade->ultimate_strength;
        out.proof_strength = offer.grade->yield_strength;
        out.proof_stress = offer.grade->proof_stress;
        out.hardness_most = offer.grade->hardness_most_hv;
    }
    out.finish = offer.finish != nullptr ? offer.finish->name : offer.coating;
    out.coating = offer.coating;
    if (offer.finish != nullptr) {
        if (offer.coating != "stainless") out.zinc = offer.finish->coating_thickness;
        out.friction_low = offer.finish->thread_friction_low;
        out.friction_high = offer.finish->thread_friction_high;
        out.fatigue_factor = offer.finish->fatigue_factor;
    }
    out.nut = said.nut_class ? "class " + *said.nut_class : "";
    return out;
}

std::string limits(const LayerMaterial& layer) {
    return fmt::format("{} to {}", print(Value(layer.temperature_least)), print(Value(layer.temperature_most)));
}

}  // namespace

void Review::compare() {
    Comparison compare{out.properties};
    const bool tried = out.right && out.right->is_built();
    switch (offer().part) {
        case OfferedPart::bolt: {
            auto offered = tried ? facts_of(out.right->joint->bolt) : facts_of_offer(offer(), base.bolt, tables);
            // As delivered, not as the shop makes it.
            if (tried && offer().finish != nullptr) {
                offered.finish = offer().finish->name;
                offered.friction_low = offer().finish->thread_friction_low;
                offered.friction_high = offer().finish->thread_friction_high;
            } else if (tried && !offer().coating.empty()) {
                offered.finish = offer().coating + ", " + offer().other_lubricant.value_or("lubricant not said");
                offered.friction_low = offered.friction_high = std::nullopt;
            }
            offered.used = said().used.value_or(false);
            const auto* standard = offer().standard;
            offered.standard_head = standard == nullptr || standard->name == "ISO 4014" || standard->name == "ISO 4017" ||
                                            standard->name.starts_with("AS 111") || standard->name == "ISO 4016" ||
                                            standard->name == "ISO 4018"
                                        ? "hexagon"
                                        : standard->title;
            out.properties = compared(facts_of(base.bolt), offered);
            break;
        }
        case OfferedPart::nut: {
            const auto& bolt = base.bolt;
            compare.text("thread", bolt.thread.name, offer().inch != nullptr ? offer().inch->name : said().size.value_or(bolt.thread.name),
                         Standing::incompatible);
            compare.text("class", bolt.nut.nut_class, said().nut_class.value_or(""));
            std::optional<Force> load;
            if (tried) load = out.right->joint->bolt.nut.proof_load;
            compare.value("proof load", std::optional(bolt.nut.proof_load), load, Wish::more);
            compare.text("tapped", bolt.nut_oversize > mm(0) ? "oversize" : "standard",
                         said().nut_thread ? std::string(word_of(*said().nut_thread)) : "", Standing::incompatible);
            compare.text("coating", bolt.finish.kind, offer().coating, Standing::incompatible);
            compare.text("locking", base.tightening.prevailing_torque > Nm(0) ? "yes" : "no",
                         said().prevailing_torque_nut.value_or(false) ? "yes" : "no");
            compare.text("used before", "no", said().used.value_or(false) ? "yes" : "no", Standing::worse);
            break;
        }
        case OfferedPart::washer: {
            const auto& washer = base.bolt.nut_washer ? base.bolt.nut_washer : base.bolt.head_washer;
            const Row<Washer>* offered = nullptr;
            if (tried) {
                const auto& other =
                    out.right->joint->bolt.nut_washer ? out.right->joint->bolt.nut_washer : out.right->joint->bolt.head_washer;
                offered = &*other;
            }
            if (!washer) break;
            const auto of = [&](auto member) { return offered != nullptr ? std::optional(offered->*member) : std::nullopt; };
            compare.text("size", washer->size, said().size.value_or(washer->size), Standing::incompatible);
            compare.text("series", washer->series, said().series.value_or(washer->series));
            compare.value("outside diameter", std::optional(washer->outside_diameter), of(&Washer::outside_diameter), Wish::none);
            compare.value("thickness", std::optional(washer->thickness), of(&Washer::thickness), Wish::none);
            auto hardness = offer().hardness_hv ? offer().hardness_hv : of(&Washer::hardness_hv);
            if (said().series == "ISO 7091") hardness = offer().hardness_hv.value_or(100.0);
            compare.value("hardness, HV", std::optional(washer->hardness_hv), hardness, Wish::more);
            break;
        }
        case OfferedPart::tube: {
            if (!base.section || !specified().is_built()) break;
            const auto& tube = base.section->tube;
            const Tube* offered = tried && out.right->joint->section ? &out.right->joint->section->tube : nullptr;
            const auto* stock = tables.of<StockTube>().find(specified().tube);
            const auto of = [](const auto* row, auto member) { return row != nullptr ? std::optional(row->*member) : std::nullopt; };
            const Row<StockTube>* other = offered != nullptr && offered->stock ? &*offered->stock : nullptr;
            compare.text("section", stock != nullptr ? stock->name : "", other != nullptr ? other->name : "");
            compare.value("outside diameter", of(stock, &StockTube::outside_diameter), of(other, &StockTube::outside_diameter), Wish::none);
            compare.value("wall", of(stock, &StockTube::wall), of(other, &StockTube::wall), Wish::more);
            const auto cut = [](const Tube& t) { return t.length ? print(Value(*t.length), 5) : std::string("to its cavity"); };
            compare.text("length", cut(tube), offered != nullptr ? cut(*offered) : "");
            compare.text("material", tube.material.name, offered != nullptr ? offered->material.name : said().material.value_or(""));
            compare.value("yield strength", std::optional(tube.material.proof_strength),
                          offered != nullptr ? std::optional(offered->material.proof_strength) : std::nullopt, Wish::more);
            const auto coating = [](const Tube& t) { return t.coating ? t.coating->name : std::string("bare"); };
            compare.text("coating", coating(tube), offered != nullptr ? coating(*offered) : "");
            break;
        }
        case OfferedPart::layer: {
            if (base.layers.empty()) break;
            const auto& own = base.layers.front().material;
            const auto* other = offer().layer;
            const auto of = [&](auto member) { return other != nullptr ? std::optional(other->*member) : std::nullopt; };
            compare.text("material", own.name, other != nullptr ? other->name : "");
            compare.value("thickness", std::optional(own.thickness), of(&LayerMaterial::thickness), Wish::less);
            compare.value("modulus", std::optional(own.elastic_modulus), of(&LayerMaterial::elastic_modulus), Wish::more);
            compare.value("clamp lost to creep", std::optional(own.creep_loss_fraction), of(&LayerMaterial::creep_loss_fraction),
                          Wish::less);
            compare.value("pressure it stands", std::optional(own.pressure_limit), of(&LayerMaterial::pressure_limit), Wish::more);
            compare.text("temperatures", limits(own), other != nullptr ? limits(*other) : "");
            compare.value("slip factor across it", std::optional(own.slip_factor), of(&LayerMaterial::slip_factor), Wish::more);
            compare.text("carries clamp for good", own.sustained_clamp ? "yes" : "no",
                         other != nullptr ? (other->sustained_clamp ? "yes" : "no") : "",
                         own.sustained_clamp ? Standing::worse : Standing::better);
            break;
        }
    }
}

}  // namespace faywright
