// SPDX-License-Identifier: MIT
#include "assess/outlook.hpp"

#include "corrosion/coating_life.hpp"
#include "corrosion/throwing_length.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace faywright {

namespace {

/// Water deep enough to count as sea: its still layer sets the oxygen limit.
constexpr double sea_chloride = 0.55;

/// Drive of a couple for its reach along the film.
Potential drive() { return volt(0.4); }

/// Metals of one series closer than this are neutral to each other.
Potential neutral() { return volt(0.05); }

const SeriesPotential* in_flowing_seawater(const Tables& tables, const std::string& metal) {
    for (const auto& row : tables.of<SeriesPotential>().rows)
        if (row.series == PotentialSeries::astm_g82 && row.metal == metal) return &row;
    return nullptr;
}

/// A metal's curves in water of this chloride: aluminium pits later where there is less.
std::optional<ElectrodeMember> electrode(const Metal& metal, double area, Concentration chloride) {
    const auto dissolves = metal.dissolution();
    if (!metal.polarisation || !dissolves) return std::nullopt;
    ElectrodeMember out{mm2(area), *metal.polarisation, *dissolves};
    if (out.polarisation.behaviour == AnodicBehaviour::pitting)
        out.polarisation.anodic_potential = pitting_potential(*out.polarisation.anodic_potential, chloride);
    return out;
}

/// A part as water sees it.
struct Body {
    std::string name;
    const Row<Metal>* metal = nullptr;  ///< of its surface: zinc while the coat lasts
    const Row<Metal>* under = nullptr;  ///< beneath zinc; the same metal where there is none
    Length zinc = mm(0);                ///< thickness of the coat
    double zinc_factor_low = 1, zinc_factor_high = 1;
    bool painted = false;

    [[nodiscard]] bool is_zinc() const { return zinc > mm(0); }
};

/// Life of paint on the road by the sea: practice.
Duration paint_life() { return years(10); }

struct Composer {
    const Joint& joint;
    const Tables& tables;
    const Row<IsolationElement>& faying;
    Place& place;
    ExposureOutlook& out;

    [[nodiscard]] const Row<Metal>& metal(std::string_view name) const {
        const auto* row = tables.of<Metal>().find(name);
        return row != nullptr ? *row : tables.of<Metal>().rows.front();
    }
    [[nodiscard]] const Row<Metal>& metal_of(const Material& material) const {
        if (material.family == Family::aluminium)
            return metal(material.alloy && material.alloy->front() == '2' ? "aluminium 2xxx" : "aluminium 5xxx, 6xxx, 7xxx");
        if (material.family == Family::steel) return metal("carbon steel");
        return metal("stainless A4");
    }

    [[nodiscard]] Body body_of(const Ply& ply) const {
        Body body{ply.role == PlyRole::plate ? ply.name : joint.section->name,
                  &metal_of(ply.material),
                  nullptr,
                  mm(0),
                  1,
                  1,
                  ply.surface.coat == Coat::organic};
        body.under = body.metal;
        if (ply.material.family != Family::steel) return body;
        if (ply.surface.coat == Coat::zinc) body.zinc = ply.surface.coating_thickness;
        // What the dipping standard promises for this thickness of steel, where the surface's own figure is for thicker steel.
        if (const auto local = galvanised_on(ply.thickness); ply.galvanised || (body.zinc > mm(0) && local && *local < body.zinc))
            body.zinc = local.value_or(body.zinc);
        if (body.is_zinc()) body.metal = &metal("zinc");
        return body;
    }
    [[nodiscard]] std::optional<Length> galvanised_on(Length steel) const {
        for (const auto& row : tables.of<Coating>().rows)
            if (row.kind == CoatingKind::hot_dip && (!row.steel_thickness_above || steel > *row.steel_thickness_above) &&
                (!row.steel_thickness_up_to || steel <= *row.steel_thickness_up_to))
                return row.local_thickness;
        return std::nullopt;
    }
    [[nodiscard]] Body bolts() const {
        const auto& bolt = joint.bolt;
        Body body{.name = "bolts", .metal = &metal("carbon steel"), .zinc = bolt.finish.coating_thickness};
        if (bolt.property_class.family != "carbon steel") {
            body.metal = &metal(bolt.property_class.bolt_class.starts_with("A2") ? "stainless A2" : "stainless A4");
            body.zinc = mm(0);
        }
        body.under = body.metal;
        if (bolt.finish.kind == "zinc flake") body.zinc_factor_high = 2.0;
        if (body.is_zinc()) body.metal = &metal("zinc");
        return body;
    }
    [[nodiscard]] std::optional<Body> tube() const {
        if (!joint.section || joint.section->tube.arrangement == TubeArrangement::none) return std::nullopt;
        const auto& given = joint.section->tube;
        Body body{.name = "tube", .metal = &metal_of(given.material)};
        body.under = body.metal;
        if (given.coating) {
            body.zinc = given.coating->local_thickness;
            body.metal = &metal("zinc");
        }
        return body;
    }

    /// Mean over the promised life of what an element lets through. A maintained seal is new again at the end of its life.
    [[nodiscard]] double mean_of(const Ageing& share, Duration life) const {
        return mean_over(share, life, joint.surroundings.maintained ? min(life, joint.life) : joint.life);
    }
    [[nodiscard]] double edges() const {
        const auto& element = joint.surroundings.edges;
        return element ? mean_of(element->electrolyte(), element->life()) : 1.0;
    }
    /// Path through the bolt's sleeve and through the faces; bridged by the earth of the lamps.
    [[nodiscard]] double fixing_path() const {
        const auto& fixing = joint.surroundings.fixing;
        if (joint.surroundings.earth_bridges || !fixing || !fixing->insulates) return 1.0;
        return mean_of({fixing->path_new, 0.5 * (fixing->path_new + fixing->path_aged), fixing->path_aged}, fixing->life());
    }
    [[nodiscard]] double faying_path() const {
        const double fixing = fixing_path();
        if (fixing == 1.0 && (joint.surroundings.earth_bridges || !joint.surroundings.fixing || !joint.surroundings.fixing->insulates))
            return 1.0;
        const double faces = mean_of({faying.path_new, 0.5 * (faying.path_new + faying.path_aged), faying.path_aged}, faying.life());
        return max(fixing, faces);
    }

    [[nodiscard]] RateBand own_rate(const Metal& m) const { return m.atmosphere ? out.atmosphere.of(*m.atmosphere).rate : RateBand{}; }

    /// What isolation leaves of a couple.
    [[nodiscard]] static RateBand isolated(const PairAttack& pair, double path, double electrolyte) {
        const double left = path * electrolyte;
        // Isolation itself is uncertain by a factor of 1.6 when new, 2.7 when aged: the worse is taken where there is any.
        const double doubt = left < 1.0 ? std::exp(0.5) : 1.0;
        return {pair.added.low * (left / doubt) + pair.immersed * path, pair.added.rate * left + pair.immersed * path,
                pair.added.high * min(left * doubt, 1.0) + pair.immersed * path};
    }

    /// Adds a contact and what it does to both its parts.
    void contact(const Body& a, const Body& b, const std::string& where, bool hidden, double path, double electrolyte, double ratio,
                 Length wall_a, Length wall_b) {
        ContactOutlook c;
        c.first = a.name;
        c.second = b.name;
        c.place = where;
        c.hidden = hidden;
        c.path = path;
        c.electrolyte = electrolyte;
        c.now = place.pair(*a.metal, *b.metal, ratio);
        c.later = place.pair(*a.under, *b.under, ratio);
        const auto now = isolated(*c.now, path, electrolyte), later = isolated(*c.later, path, electrolyte);
        c.added = now.rate;
        c.added_later = later.rate;
        c.severity = severity_of_rate(c.added);
        if (c.added > um_per_a(0.2) && (hidden || c.now->area_ratio > 2.0)) c.severity = worsened(c.severity);
        const auto paid = [](const PairAttack& pair, bool first, const RateBand& rate) {
            return pair.anode != nullptr && pair.first_pays == first ? rate : RateBand{};
        };
        used_up(a, b, c, paid(*c.now, true, now), paid(*c.later, true, later), wall_a);
        used_up(b, a, c, paid(*c.now, false, now), paid(*c.later, false, later), wall_b);
        out.contacts.push_back(std::move(c));
    }

    [[nodiscard]] static RateBand sum(const RateBand& a, const RateBand& b, double factor = 1.0) {
        return {factor * a.low + b.low, factor * a.rate + b.rate, factor * a.high + b.high};
    }

    /// What a contact uses up of one of its parts: its zinc, or its wall by pits.
    void used_up(const Body& body, const Body& partner, const ContactOutlook& c, const RateBand& now, const RateBand& later, Length wall) {
        if (body.is_zinc()) {
            MemberOutlook m;
            m.name = body.name;
            m.stake = fmt::format("zinc of {}{}", print(Value(body.zinc)), body.painted ? " under paint" : "");
            m.thickness = body.zinc;
            m.own = own_rate(*body.metal);
            m.own.low += sea_rate();
            m.own.rate += sea_rate();
            m.own.high += sea_rate();
            m.added = now;
            m.total = sum(m.own, m.added);
            const auto paint = body.painted ? paint_life() : years(0);
            // Paint and zinc together outlast their sum: half as much again is the least of what is told of it.
            const double together = body.painted ? 1.5 : 1.0;
            m.life_low = together * (paint + body.zinc * body.zinc_factor_low / m.total.high);
            m.life = together * (paint + body.zinc * std::sqrt(body.zinc_factor_low * body.zinc_factor_high) / m.total.rate);
            m.life_high = together * (paint + body.zinc * body.zinc_factor_high / max(m.total.low, um_per_a(1e-3)));
            m.by_upper = time_to_lose(body.zinc, AtmosphereMetal::zinc, m.total.rate, LossExponent::upper);
            m.by_mean = time_to_lose(body.zinc, AtmosphereMetal::zinc, m.total.rate, LossExponent::mean);
            keep(std::move(m));
            return;
        }
        if (body.metal->atmosphere == AtmosphereMetal::aluminium) {
            pitted(body, partner, c, now, later, wall);
            return;
        }
        MemberOutlook m;
        m.name = body.name;
        m.own = own_rate(*body.metal);
        m.added = now;
        m.total = sum(m.own, m.added);
        if (body.metal->atmosphere == AtmosphereMetal::carbon_steel) {
            m.stake = body.painted ? "paint on bare steel" : "bare steel, first rust";
            m.life_low = body.painted ? years(5) : years(0);
            m.life = body.painted ? paint_life() : years(0);
            m.life_high = body.painted ? years(15) : years(0);
        } else {
            m.stake = "stainless, stains at most";
            m.lasts = true;
            m.life_low = m.life = m.life_high = years(1000);
        }
        keep(std::move(m));
    }

    /// Pits in aluminium: first beside the partner's zinc, then beside what lies under it.
    void pitted(const Body& body, const Body& partner, const ContactOutlook& c, const RateBand& now, const RateBand& later, Length wall) {
        MemberOutlook m;
        m.name = fmt::format("{} at {}", body.name, partner.name);
        m.is_wall = true;
        m.thickness = PitDepth::stood(wall);
        m.stake = fmt::format("pits to {}", print(Value(m.thickness), 3));
        const auto alone = own_rate(*body.metal);
        const double crevice = c.hidden ? 1.0 + (out.electrolyte->crevice - 1.0) * c.electrolyte : 1.0;
        m.own = sum(alone, {}, crevice);
        m.added = now;
        m.total = sum(m.own, m.added);
        auto after = sum(m.own, later);
        // The partner's zinc lasts as long as this contact lets it.
        auto zinc_gone = years(1e6);
        if (partner.is_zinc()) {
            const auto paid = c.now->anode == nullptr || c.now->anode == partner.metal ? c.added : um_per_a(0);
            zinc_gone = partner.zinc / (own_rate(*partner.metal).rate + sea_rate() + paid);
        }
        const auto life = [&](Speed first, Speed then, double depth) {
            const auto mean = m.thickness / depth;
            const auto by_then = first * zinc_gone;
            return by_then >= mean ? mean / first : zinc_gone + (mean - by_then) / max(then, um_per_a(1e-6));
        };
        // Rate and pit factor vary apart from each other: their scatters add in quadrature.
        const double pits = std::log(PitDepth::high / PitDepth::middle);
        const auto factor = [&](Speed far, Speed middle) {
            const double rates = middle > um_per_a(0) && far > um_per_a(0) ? std::log(static_cast<double>(far / middle)) : 0.0;
            return std::exp(std::hypot(rates, pits));
        };
        const double worse = factor(m.total.high, m.total.rate), better = factor(m.total.rate, max(m.total.low, um_per_a(1e-6)));
        m.life = life(m.total.rate, after.rate, PitDepth::middle);
        m.life_low = life(m.total.rate * worse, after.rate * worse, PitDepth::middle);
        m.life_high = life(m.total.rate / better, after.rate / better, PitDepth::middle);
        keep(std::move(m));
    }

    /// Zinc eaten by the hours under sea water, as a year's mean: 15 to 25 um/a of them (published).
    [[nodiscard]] Speed sea_rate() const { return um_per_a(20) * out.atmosphere.immersed; }

    /// Of a part that several contacts use up, the worst stays.
    void keep(MemberOutlook m) {
        m.passes = m.life >= joint.life;
        m.severity = max(severity_of_rate(m.added.rate),
                         m.lasts ? Severity::still : severity_of_share(m.life > years(0) ? static_cast<double>(joint.life / m.life) : 1e6));
        const auto same = std::find_if(out.members.begin(), out.members.end(), [&](const auto& each) { return each.name == m.name; });
        if (same == out.members.end())
            out.members.push_back(std::move(m));
        else if (m.life < same->life)
            *same = std::move(m);
    }

    /// Wetted area of what surrounds a bolt's end within the film's reach, over that of the end itself.
    [[nodiscard]] double ring_over_end(bool at_head, Length reach) const {
        const auto& washer = joint.bolt.washer(at_head);
        const auto r = (washer ? washer->outside_diameter : joint.bolt.bearing_diameter(at_head)) / 2.0;
        // The sides of head or nut make the end half as large again as its plan.
        const auto end = 1.5 * (squared(r) - squared(max(r - reach, mm(0))));
        return (squared(r + reach) - squared(r)) / end;
    }

    void contacts() {
        const auto fasteners = bolts();
        const double sealed = edges();
        const double faces = mean_of(faying.electrolyte(), faying.life()) * sealed;
        const auto reach = catchment(out.electrolyte->conductivity, out.electrolyte->film, drive(),
                                     limiting_current(out.electrolyte->film, oxygen_in_seawater()));
        for (const auto& plane : joint.planes) {
            const auto& head = joint.plies[static_cast<std::size_t>(plane.head_ply)];
            const auto& nut = joint.plies[static_cast<std::size_t>(plane.nut_ply)];
            contact(body_of(head), body_of(nut), "faying edge", true, faying_path(), faces, 1.0, head.thickness, nut.thickness);
        }
        for (const bool at_head : {true, false}) {
            const auto& ply = at_head ? joint.plies.front() : joint.plies.back();
            contact(body_of(ply), fasteners, at_head ? "bolt head" : "nut", false, ply.side == Side::rail ? fixing_path() : 1.0, sealed,
                    1.0 / ring_over_end(at_head, reach), ply.thickness, mm(0));
        }
        const auto inside = tube();
        if (!inside) return;
        const double cavity = joint.surroundings.cavity_waxed ? mean_of({0.1, 0.3, 0.6}, years(5)) : 1.0;
        const auto* wall = joint.near_wall();
        contact(body_of(*wall), *inside, "inside the rail", true, 1.0, cavity, 1.0, wall->thickness,
                joint.section->tube.stock ? joint.section->tube.stock->wall : mm(2));
        // The bore is closed by what is clamped on both its ends: some water stays.
        contact(*inside, fasteners, "bore of the tube", true, fixing_path(), 0.3 * sealed, 1.0,
                joint.section->tube.stock ? joint.section->tube.stock->wall : mm(2), mm(0));
    }

    void caution_lines() {
        auto& lines = out.cautions;
        const auto category = out.atmosphere.joint;
        if (out.atmosphere.outside_range != nullptr) lines.emplace_back(out.atmosphere.outside_range);
        for (const auto& m : out.members)
            if (m.passes && m.life_low < joint.life)
                lines.push_back(fmt::format("{}: the low end of its life, {}, is short of the promised {}", m.name,
                                            print(Value(m.life_low), 2), print(Value(joint.life))));
        const auto& family = joint.bolt.property_class.bolt_class;
        if (joint.bolt.property_class.family != "carbon steel" && category >= Corrosivity::c4)
            lines.push_back(family.starts_with("A2") ? "A2 stains and pits in crevices near salt: A4 is the least there"
                                                     : "A4 still stains by the surf and in crevices; rinse it");
        if (joint.section && joint.section->tube.arrangement != TubeArrangement::none &&
            joint.section->tube.material.family == Family::stainless)
            lines.emplace_back("a stainless tube is a large noble area in a wet cavity nobody sees: wax the cavity or isolate its ends");
        if (faying.insulates && joint.surroundings.earth_bridges)
            lines.emplace_back("the lamps' earth joins both sides: the layer keeps water out, it does not isolate");
        if (faying.insulates && !joint.surroundings.earth_bridges && fixing_path() == 1.0)
            lines.emplace_back("the bolt bridges the layer: without sleeve and shoulder washer it does not isolate");
        if (category >= Corrosivity::c4) lines.emplace_back("crevices and mud on aluminium have no published rate: theirs is judged");
        if (out.atmosphere.immersed > 0.0) lines.emplace_back("what the sea leaves behind does more than the hours in it: rinse");
    }
};

}  // namespace

Place::Place(const Row<Exposure>& given, const Tables& tables) : exposure(&given), atmosphere(atmosphere_at(given)), tables_(&tables) {
    const auto& rows = tables.of<Electrolyte>().rows;
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const auto& row) { return row.category == atmosphere.joint; });
    electrolyte = found != rows.end() ? &*found : &rows.back();
    wet_share = min(max(electrolyte->wet_share + atmosphere.wetness_added, atmosphere.wetness_least), 1.0);
}

std::shared_ptr<const PairAttack> Place::pair(const Row<Metal>& first, const Row<Metal>& second, double ratio) {
    auto& held = pairs_[{&first, &second, ratio}];
    if (!held) held = std::make_shared<const PairAttack>(worked_out(first, second, ratio));
    return held;
}

PairAttack Place::worked_out(const Row<Metal>& first, const Row<Metal>& second, double ratio) const {
    PairAttack out;
    const auto* a = in_flowing_seawater(*tables_, first.name);
    const auto* b = in_flowing_seawater(*tables_, second.name);
    if (&first == &second) return out;
    out.unplaced = a == nullptr || b == nullptr;
    if (out.unplaced) return out;
    const auto nobler = difference(*a, *b);
    if (!nobler || abs(*nobler) < neutral()) return out;
    out.first_pays = *nobler > volt(0);
    out.anode = out.first_pays ? &first : &second;
    out.cathode = out.first_pays ? &second : &first;
    out.area_ratio = out.first_pays ? ratio : 1.0 / ratio;
    const auto& anode = *out.anode;
    const auto limit = limiting_current(electrolyte->film, oxygen_in_seawater());
    out.reach = catchment(electrolyte->conductivity, electrolyte->film, drive(), limit);
    const auto kinetics = [&](CurrentDensity i_L, Concentration chloride) -> std::optional<MixedState> {
        const auto pays = electrode(anode, 100.0, chloride), takes = electrode(*out.cathode, 100.0 * min(out.area_ratio, 10.0), chloride);
        if (!pays || !takes) return std::nullopt;
        const std::array members{*pays, *takes};
        return mixed_potential(members, i_L);
    };
    const auto added = [&](const MixedState& state) {
        return max(penetration_rate(state.members[0].net, *anode.dissolution()), um_per_a(0));
    };
    out.kinetics = kinetics(limit, electrolyte->chloride);
    if (out.kinetics) out.bound = added(*out.kinetics) * wet_share;
    if (atmosphere.immersed > 0.0)
        if (const auto sea = kinetics(limiting_current(still_layer(), oxygen_in_seawater()), mol_per_L(sea_chloride)))
            out.immersed = added(*sea) * atmosphere.immersed;
    if (!anode.atmosphere) {
        out.no_rate = true;
        return out;
    }
    const auto& own = atmosphere.of(*anode.atmosphere);
    out.own_rate = own.rate.rate;
    const bool beside_aluminium = anode.atmosphere == AtmosphereMetal::zinc && out.cathode->atmosphere == AtmosphereMetal::aluminium;
    // Wetter for longer than the category's share, the couple runs longer.
    const double longer = electrolyte->wet_share > 0.0 ? wet_share / electrolyte->wet_share : 1.0;
    out.inputs = {.own_rate = out.own_rate,
                  .own_scatter = own.scatter,
                  .multiplier = electrolyte->multiplier * longer * (beside_aluminium ? zinc_beside_aluminium : 1.0),
                  .multiplier_band = electrolyte->multiplier_band,
                  .cathode_strength = out.cathode->cathode_strength,
                  .area_ratio = out.area_ratio,
                  .kinetic_bound = out.bound};
    out.added = Couple::compute(out.inputs);
    return out;
}

const Row<IsolationElement>& faying_element_of(const Joint& joint, const Tables& tables) {
    const auto& rows = tables.of<IsolationElement>().rows;
    const auto named = [&](const auto& fits) -> const Row<IsolationElement>* {
        const auto found =
            std::find_if(rows.begin(), rows.end(), [&](const auto& row) { return row.place == IsolationPlace::faying && fits(row); });
        return found == rows.end() ? nullptr : &*found;
    };
    const auto& plane = joint.planes.front();
    if (plane.layer) {
        const auto& layer = joint.layers[static_cast<std::size_t>(*plane.layer)].material.name;
        if (const auto* row = named([&](const auto& e) { return e.layer == layer; }); row != nullptr) return *row;
    }
    auto attached = joint.plies[static_cast<std::size_t>(plane.head_ply)].surface;
    auto rail = joint.plies[static_cast<std::size_t>(plane.nut_ply)].surface;
    if (joint.plies[static_cast<std::size_t>(plane.head_ply)].side == Side::rail) std::swap(attached, rail);
    // Both coats, then the plate's alone, then the rail's; a layer no element has counts as none.
    if (const auto* row = named([&](const auto& e) { return e.plate_surface == attached.name && e.rail_surface == rail.name; });
        row != nullptr)
        return *row;
    const auto coat = [&](const std::optional<std::string>& name) {
        const auto* surface = name ? tables.of<Surface>().find(*name) : nullptr;
        return surface == nullptr ? Coat::none : surface->coat;
    };
    if (rail.coat == Coat::oxide)
        if (const auto* row = named([&](const auto& e) { return !e.plate_surface && coat(e.rail_surface) == rail.coat; }); row != nullptr)
            return *row;
    for (const auto& wanted : {attached.coat, Coat::none})
        if (const auto* row = named([&](const auto& e) { return !e.layer && !e.rail_surface && coat(e.plate_surface) == wanted; });
            row != nullptr)
            return *row;
    return rows.front();
}

ExposureOutlook outlook_in(const Joint& joint, Place& place, const Tables& tables) {
    ExposureOutlook out;
    out.exposure = place.exposure;
    out.atmosphere = place.atmosphere;
    out.electrolyte = place.electrolyte;
    out.wet_share = place.wet_share;
    Composer composer{joint, tables, faying_element_of(joint, tables), place, out};
    composer.contacts();
    for (std::size_t i = 0; i < out.members.size(); ++i) {
        if (out.members[i].life < out.members[out.first].life) out.first = i;
        out.passes = out.passes && out.members[i].passes;
    }
    composer.caution_lines();
    return out;
}

CorrosionOutlook corrosion_outlook(const Joint& joint, const Tables& tables) {
    CorrosionOutlook out;
    for (const auto& exposure : joint.surroundings.exposures) {
        Place place(exposure, tables);
        out.exposures.push_back(outlook_in(joint, place, tables));
        out.passes = out.passes && out.exposures.back().passes;
    }
    return out;
}

}  // namespace faywright
