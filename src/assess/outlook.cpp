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
    double zinc_factor_high = 1;        ///< what the coat may outlast as thick a coat of zinc by
    Duration paint_low = years(0), paint_high = years(0);
    bool is_rail = false;

    [[nodiscard]] bool is_zinc() const { return zinc > mm(0); }
    [[nodiscard]] bool is_painted() const { return paint_high > years(0); }
    [[nodiscard]] Duration paint() const { return 0.5 * (paint_low + paint_high); }
};

const Source composed{"parts, contacts and lives of this joint", "",
                      "composed by this program; shares, ageing and pit factor are judgement", Basis::practice};

/// Zinc eaten while under sea water: 15 to 25 um a year of it.
Speed sea_zinc() { return um_per_a(20); }

/// What mud left on it does to a metal's own rate: nothing is published for wet dirt on aluminium but that it perforates; judged.
constexpr double mud_on_aluminium = 3.2, mud_on_zinc = 1.7;

/// Bare share of a painted cathode: scratches, threads, edges.
constexpr Ageing bare_share{0.03, 0.1, 0.2};

/// Paint and zinc together outlast their sum: half as much again is the least of what is told of it.
constexpr double paint_with_zinc = 1.5;

template <class Steps>
struct Composer {
    const Joint& joint;
    const Tables& tables;
    Place& place;
    ExposureOutlook& out;
    Steps& steps;
    std::string shares = {};  ///< in words, what the electrolyte's share of the contact at hand is made of

    void tell(const char* symbol, const char* words, const auto& value) const { static_cast<void>(steps.stated(symbol, words, value)); }
    void share_of(const std::initializer_list<const IsolationElement*> elements, const char* besides = "") {
        if constexpr (keeps_steps<Steps>) {
            shares = fmt::format("electrolyte at the contact, mean over {}", print(Value(joint.life)));
            for (const auto* e : elements)
                if (e != nullptr)
                    shares += fmt::format("{} {} to {} and {} over {}", e == *elements.begin() ? ":" : " times",
                                          print_number(e->electrolyte_new, 3), print_number(e->electrolyte_middle, 3),
                                          print_number(e->electrolyte_neglected, 3), print(Value(e->life())));
            shares += besides;
        }
    }
    void heading(const std::string& title) const {
        if constexpr (keeps_steps<Steps>) steps.heading(title, composed);
    }

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
        Body body{.name = ply.role == PlyRole::plate ? ply.name : joint.section->name, .metal = &metal_of(ply.material)};
        body.under = body.metal;
        body.is_rail = ply.side == Side::rail;
        if (ply.surface.coat == Coat::organic) {
            body.paint_low = years(5);
            body.paint_high = years(15);
            for (const auto& row : tables.of<IsolationElement>().rows)
                if (row.plate_surface == ply.surface.name) {
                    body.paint_low = row.life_low;
                    body.paint_high = row.life_high;
                }
        }
        if (ply.material.family != Family::steel) return body;
        if (ply.surface.coat == Coat::zinc) body.zinc = ply.surface.coating_thickness;
        // What the dipping standard promises for this thickness of steel, where the surface's own figure is for thicker steel.
        if (const auto local = galvanised_on(ply.thickness); ply.galvanised || (body.zinc > mm(0) && local && *local < body.zinc))
            body.zinc = local.value_or(body.zinc);
        // Zinc is swept before it is painted.
        if (ply.galvanised && body.zinc > um(20)) body.zinc -= um(10);
        if (body.is_zinc()) body.zinc = ply.zinc_thickness.value_or(body.zinc);
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
        Body body{.name = "bolts", .metal = &metal("carbon steel"), .zinc = bolt.zinc()};
        if (!bolt.property_class.is_carbon()) {
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
            body.zinc_factor_high = given.coating->life_factor_high;
            body.metal = &metal("zinc");
        }
        return body;
    }
    /// Of the tube given, or the thinnest that may be chosen.
    [[nodiscard]] Length tube_wall() const {
        const auto& given = joint.section->tube;
        if (given.stock) return given.stock->wall;
        auto least = mm(20);
        for (const auto& candidate : given.candidates) least = min(least, candidate.wall);
        return least;
    }

    /// Over which a share's mean is taken. A maintained seal is new again at the end of its life.
    [[nodiscard]] Duration span_of(Duration life) const { return joint.surroundings.maintained ? min(life, joint.life) : joint.life; }
    [[nodiscard]] double mean_of(const Ageing& share, Duration life) const { return mean_over(share, life, span_of(life)); }
    [[nodiscard]] const IsolationElement* edges_element() const { return joint.surroundings.edges ? &*joint.surroundings.edges : nullptr; }
    [[nodiscard]] double edges() const {
        const auto& element = joint.surroundings.edges;
        return element ? mean_of(element->electrolyte(), element->life()) : 1.0;
    }
    /// What faces and edges together let through: the mean of their product.
    [[nodiscard]] double faces_and_edges(const IsolationElement& faying) const {
        const auto& element = joint.surroundings.edges;
        if (!element) return mean_of(faying.electrolyte(), faying.life());
        const auto span = min(span_of(faying.life()), span_of(element->life()));
        return mean_of_product(faying.electrolyte(), faying.life(), element->electrolyte(), element->life(),
                               joint.surroundings.maintained ? span : joint.life);
    }
    /// Nothing but the sleeve joins bolt and rail.
    [[nodiscard]] bool is_sleeved() const {
        const auto& fixing = joint.surroundings.fixing;
        return !joint.surroundings.earth_bridges && fixing && fixing->insulates;
    }
    [[nodiscard]] double path_of(const IsolationElement& e) const {
        return mean_of({e.path_new, 0.5 * (e.path_new + e.path_aged), e.path_aged}, e.life());
    }
    [[nodiscard]] double fixing_path() const { return is_sleeved() ? path_of(*joint.surroundings.fixing) : 1.0; }
    [[nodiscard]] double faying_path(const IsolationElement& faying) const {
        return is_sleeved() ? min(path_of(faying) + fixing_path(), 1.0) : 1.0;
    }

    [[nodiscard]] RateBand own_rate(const Metal& m) const { return m.atmosphere ? out.atmosphere.of(*m.atmosphere).rate : RateBand{}; }

    /// A pair at wide faces that meet in a line, or where the second is a bolt's end in a wide face of the first. Where the end pays, the
    /// face within the film's reach draws on it; where the face pays, end and ring count as equal: sides and thread make up for the wider
    /// ring.
    [[nodiscard]] std::shared_ptr<const PairAttack> pair(const Row<Metal>& a, const Row<Metal>& b, std::optional<Length> end_radius) const {
        auto even = place.pair(a, b, 1.0);
        if (even->anode == nullptr || even->first_pays || !end_radius) return even;
        const auto r = *end_radius, x = even->reach;
        // The sides of head or nut make the end's rim half as large again as its plan.
        const double ring = (squared(r + x) - squared(r)) / (1.5 * (squared(r) - squared(max(r - x, mm(0)))));
        return place.pair(a, b, 1.0 / ring);
    }

    /// What isolation leaves of a couple.
    [[nodiscard]] RateBand isolated(const PairAttack& attack, const ContactOutlook& c, const Body& a, const Body& b) const {
        if (attack.anode == nullptr || attack.no_rate) return {};
        const auto& cathode = attack.first_pays ? b : a;
        // Paint between the faces is in the electrolyte's share already.
        const bool counted = c.painted_between;
        const double bare = cathode.is_painted() && !counted ? mean_of(bare_share, cathode.paint()) : 1.0;
        const double left = c.path * c.electrolyte * bare;
        // What isolation leaves is uncertain by a factor of about 2.7 either way.
        const double doubt = left == 1.0 ? 1.0 : std::exp(1.0);
        const auto sea = attack.immersed * c.path;
        if constexpr (keeps_steps<Steps>) {
            steps.heading(Couple::formula.title, Couple::formula.source);
            static_cast<void>(Couple::compute(attack.inputs, steps));
            heading(fmt::format("{} pays beside {}: {}", attack.anode->name, attack.cathode->name, c.place));
            tell("P", "metallic path, mean over the promised life (1: a bare bolt or the lamps' earth bridges)", c.path);
            tell("W", shares.c_str(), c.electrolyte);
            if (bare < 1.0) tell("b", "bare share of the painted cathode, mean over the promised life", bare);
            if (sea > um_per_a(0)) tell("G_sea", "the hours under sea water add this, times P", attack.immersed);
            tell("G_left", sea > um_per_a(0) ? "G P W (times b) + G_sea P" : "G P W (times b)", attack.added.rate * left + sea);
        }
        return {attack.added.low * (left / doubt) + sea, attack.added.rate * left + sea, attack.added.high * min(left * doubt, 1.0) + sea};
    }

    /// Adds a contact and what it does to both its parts.
    void contact(const Body& a, const Body& b, const char* where, bool hidden, double path, double electrolyte,
                 std::optional<Length> end_radius, Length wall_a, Length wall_b, bool painted_between = false) {
        ContactOutlook c;
        c.painted_between = painted_between;
        c.first = a.name;
        c.second = b.name;
        c.place = where;
        c.hidden = hidden;
        c.path = path;
        c.electrolyte = electrolyte;
        c.now = pair(*a.metal, *b.metal, end_radius);
        c.later = pair(*a.under, *b.under, end_radius);
        const auto now = isolated(*c.now, c, a, b);
        const auto later = a.is_zinc() || b.is_zinc() ? isolated(*c.later, c, a, b) : now;
        c.left = now;
        c.added = now.rate;
        c.added_later = later.rate;
        if (c.now->anode != nullptr && !c.now->no_rate)
            c.severity = severity_of(c.added, joint.life, stake_of_couple(c.now->anode->atmosphere == AtmosphereMetal::zinc),
                                     hidden || c.now->area_ratio > 2.0);
        const auto paid = [](const PairAttack& attack, bool first, const RateBand& rate) {
            return attack.anode != nullptr && attack.first_pays == first ? rate : RateBand{};
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
        if (body.is_zinc()) return zinc_used_up(body, c, now);
        if (body.metal->atmosphere == AtmosphereMetal::aluminium) return pitted(body, partner, c, now, later, wall);
        MemberOutlook m;
        m.name = body.name;
        m.own = own_rate(*body.metal);
        m.added = now;
        m.total = sum(m.own, m.added);
        if (body.metal->atmosphere == AtmosphereMetal::carbon_steel) {
            m.stake = body.is_painted() ? "paint on bare steel" : "bare steel, first rust";
            m.life_low = body.paint_low;
            m.life = body.paint();
            m.life_high = body.paint_high;
        } else {
            m.stake = "stains; pits in crevices";
            m.lasts = true;
            m.life_low = m.life = m.life_high = years(1000);
        }
        keep(std::move(m));
    }

    /// Zinc's own rate at a contact: crevice, mud and hours under sea water in it.
    [[nodiscard]] RateBand zinc_rate(const Body& body, const ContactOutlook& c) const {
        const double tight = c.hidden ? 1.0 + (out.electrolyte->zinc_crevice - 1.0) * c.electrolyte : 1.0;
        const double muddy = out.atmosphere.muddy ? mud_on_zinc : 1.0;
        const auto sea = sea_zinc() * out.atmosphere.immersed;
        return sum(own_rate(*body.metal), {sea, sea, sea}, max(tight, muddy));
    }

    /// Years until zinc, and paint over it, are used up at a rate: by the estimate, the low and the high ends.
    [[nodiscard]] static std::array<Duration, 3> zinc_lives(const Body& body, const RateBand& total) {
        const double together = body.is_painted() ? paint_with_zinc : 1.0;
        return {body.paint_low + body.zinc / total.high,
                together * (body.paint() + std::sqrt(body.zinc_factor_high) * body.zinc / total.rate),
                together * (body.paint_high + body.zinc_factor_high * body.zinc / max(total.low, um_per_a(1e-3)))};
    }

    void zinc_used_up(const Body& body, const ContactOutlook& c, const RateBand& now) {
        MemberOutlook m;
        m.name = body.name;
        m.stake = fmt::format("zinc of {}", print(Value(body.zinc)));
        if (body.is_painted()) m.stake += fmt::format(" under paint of {}", print(Value(body.paint()), 2));
        m.thickness = body.zinc;
        m.own = zinc_rate(body, c);
        m.added = now;
        m.total = sum(m.own, m.added);
        heading(fmt::format("{} ({}): {}", body.name, c.place, m.stake));
        const auto d = body.zinc;
        const auto r_0 = m.own.rate, G_left = m.added.rate;
        tell("d", "zinc at stake: least local thickness, or as given", d);
        if (c.hidden) {
            tell("W", shares.c_str(), c.electrolyte);
            tell("c_z", "zinc's crevice, unsealed; its own rate is multiplied by 1 + (c_z - 1) W", out.electrolyte->zinc_crevice);
        }
        if (out.atmosphere.muddy) tell("c_m", "mud multiplies it by this at least", mud_on_zinc);
        if (out.atmosphere.immersed > 0.0) tell("r_sea", "hours under sea water add 20 um/a of them", sea_zinc() * out.atmosphere.immersed);
        tell("r_0", "its own rate with all that", r_0);
        tell("G_left", "what the couple adds", G_left);
        FAYWRIGHT_STEP(r, r_0 + G_left);
        const auto lives = zinc_lives(body, m.total);
        FAYWRIGHT_STATED(t_p, "mean life of paint over it", body.paint());
        FAYWRIGHT_STATED(k_p, "paint and zinc together outlast their sum by this; 1 without paint",
                         body.is_painted() ? paint_with_zinc : 1.0);
        FAYWRIGHT_STATED(k_z, "life against that of as thick a coat of zinc: geometric mean of its band", std::sqrt(body.zinc_factor_high));
        FAYWRIGHT_STEP(t, k_p * (t_p + k_z * d / r));
        m.life_low = lives[0];
        m.life = t;
        m.life_high = lives[2];
        // Zinc waits until the paint over it is gone.
        m.fast = {body.paint_low, 0.0, m.life_low};
        m.central = {k_p * t_p, 0.0, m.life};
        m.slow = {k_p * body.paint_high, 0.0, m.life_high};
        tell("r_low", "low end: those of own rate and couple together, isolation's factor of 2.7 in it", m.total.low);
        tell("r_high", "high end", m.total.high);
        tell("t_low", "low end of the paint's life + d/r_high, nothing for their company", m.life_low);
        tell("t_high", "k_p (high end of the paint's life + k_z^2 d/r_low)", m.life_high);
        if (!body.is_painted()) {
            m.by_upper = time_to_lose(d, AtmosphereMetal::zinc, r, LossExponent::upper);
            m.by_mean = time_to_lose(d, AtmosphereMetal::zinc, r, LossExponent::mean);
            tell("t_B2", "by the power law of ISO 9224 for rain-washed zinc, upper exponent", *m.by_upper);
            tell("t_B1", "the same, mean exponent", *m.by_mean);
        }
        keep(std::move(m));
    }

    /// Pits in aluminium: first beside the partner's zinc, then beside what lies under it.
    void pitted(const Body& body, const Body& partner, const ContactOutlook& c, const RateBand& now, const RateBand& later, Length wall) {
        MemberOutlook m;
        m.name = fmt::format("{} at {}", body.name, partner.name);
        m.pits = true;
        m.is_wall = body.name != "tube";
        m.thickness = PitDepth::stood(wall);
        m.stake = fmt::format("pits of {}", print(Value(m.thickness), 3));
        // Every contact is a crevice; mud makes one of any face.
        const double c_0 = out.atmosphere.muddy ? max(out.electrolyte->crevice, mud_on_aluminium) : out.electrolyte->crevice;
        const double crevice = out.atmosphere.muddy ? c_0 : 1.0 + (c_0 - 1.0) * c.electrolyte;
        const auto alone = own_rate(*body.metal);
        // The crevice's own doubt counts as far as it is in the rate.
        const double doubt = std::exp(std::log(out.electrolyte->crevice_band) * (1.0 - 1.0 / crevice));
        m.own = {alone.low * (crevice / doubt), alone.rate * crevice, alone.high * (crevice * doubt)};
        m.added = now;
        m.total = sum(m.own, m.added);
        const auto after = sum(m.own, later);
        // The partner's zinc lasts as long as this contact lets it: low, estimate, high.
        std::array<Duration, 3> zinc_gone{years(1e6), years(1e6), years(1e6)};
        if (partner.is_zinc()) {
            const auto paid = c.now->anode == partner.metal ? c.left : RateBand{};
            zinc_gone = zinc_lives(partner, sum(zinc_rate(partner, c), paid));
        }
        const auto course = [&](Speed first, Speed then, Duration gone) -> Course {
            const auto mean = m.thickness / PitDepth::middle, by_then = first * gone;
            if (by_then >= mean) return {mean / first, 1.0, mean / first};
            return {gone, by_then / mean, gone + (mean - by_then) / max(then, um_per_a(1e-6))};
        };
        // Rate and pit factor vary apart from each other: their scatters add in quadrature.
        const double pits = std::log(PitDepth::high / PitDepth::middle);
        const auto far = [&](Speed end, Speed middle) {
            const double rates = middle > um_per_a(0) && end > um_per_a(0) ? std::abs(std::log(static_cast<double>(end / middle))) : 0.0;
            return std::exp(std::hypot(rates, pits));
        };
        m.central = course(m.total.rate, after.rate, zinc_gone[1]);
        m.fast = course(m.total.rate * far(m.total.high, m.total.rate), after.rate * far(after.high, after.rate), zinc_gone[0]);
        m.slow = course(m.total.rate / far(m.total.low, m.total.rate), after.rate / far(after.low, after.rate), zinc_gone[2]);
        m.life = m.central.end;
        m.life_low = m.fast.end;
        m.life_high = m.slow.end;
        heading(fmt::format("{}: {}", m.name, m.stake));
        tell("h", "depth of pits that is stood: a quarter of the wall, at most 0.5 mm", m.thickness);
        tell("k", "pits are this many times as deep as the mean loss: geometric mean of 3 and 10", PitDepth::middle);
        tell("c", "crevice: 1 + (c_0 - 1) W; under mud the whole c_0, at least 3.2", crevice);
        tell("r_1", "own rate times c, and what the couple adds while the partner's zinc lasts", m.total.rate);
        if (partner.is_zinc()) {
            tell("t_1", "the partner's zinc lasts at this contact", zinc_gone[1]);
            tell("r_2", "own rate times c, and what the couple adds beside what lies under the zinc", after.rate);
        }
        tell("t", "h/(k r_1), or where that is later than t_1: t_1 + (h/k - r_1 t_1)/r_2", m.life);
        tell("q", "rates at the bad end are this many times r_1: exp sqrt(ln^2(high/r_1) + ln^2(10/k)); r_2 likewise",
             far(m.total.high, m.total.rate));
        tell("t_low", "the same with those rates and the partner's zinc at its low end", m.life_low);
        tell("t_high", "and at the good end", m.life_high);
        keep(std::move(m));
    }

    /// Of a part that several contacts use up, the worst stays.
    void keep(MemberOutlook m) {
        m.passes = m.life >= joint.life;
        m.severity =
            std::max(severity_of_rate(m.added.rate),
                     m.lasts ? Severity::still : severity_of_share(m.life > years(0) ? static_cast<double>(joint.life / m.life) : 1e6));
        const auto same = std::find_if(out.members.begin(), out.members.end(),
                                       [&](const auto& each) { return each.name == m.name && each.pits == m.pits; });
        if (same == out.members.end())
            out.members.push_back(std::move(m));
        else {
            // The worse stays, and the worse of both ends.
            const auto fast = m.life_low < same->life_low ? m.fast : same->fast, slow = m.life_high < same->life_high ? m.slow : same->slow;
            const auto low = min(m.life_low, same->life_low), high = min(m.life_high, same->life_high);
            if (m.life < same->life) *same = std::move(m);
            same->life_low = low;
            same->life_high = high;
            same->fast = fast;
            same->slow = slow;
        }
    }

    [[nodiscard]] Length end_radius(bool at_head) const {
        const auto& washer = joint.bolt.washer(at_head);
        return (washer ? washer->outside_diameter : joint.bolt.bearing_diameter(at_head)) / 2.0;
    }

    void contacts() {
        const auto fasteners = bolts();
        const double sealed = edges();
        for (const auto& plane : joint.planes) {
            const auto& head = joint.plies[static_cast<std::size_t>(plane.head_ply)];
            const auto& nut = joint.plies[static_cast<std::size_t>(plane.nut_ply)];
            const auto& faying = faying_element_of(joint, plane, tables);
            share_of({&faying, edges_element()});
            contact(body_of(head), body_of(nut), "faying edge", true, faying_path(faying), faces_and_edges(faying), std::nullopt,
                    head.thickness, nut.thickness, faying.plate_surface && faying.electrolyte_new < 1.0);
        }
        share_of({edges_element()});
        for (const bool at_head : {true, false}) {
            const auto& ply = at_head ? joint.plies.front() : joint.plies.back();
            contact(body_of(ply), fasteners, at_head ? "bolt head" : "nut", false, ply.side == Side::rail ? fixing_path() : 1.0, sealed,
                    end_radius(at_head), ply.thickness, mm(0));
        }
        const auto inside = tube();
        if (!inside) return;
        const double cavity = joint.surroundings.cavity_waxed ? mean_of({0.1, 0.3, 0.6}, years(5)) : 1.0;
        const auto* wall = joint.near_wall();
        share_of({}, joint.surroundings.cavity_waxed ? ": wax 0.1 to 0.3 and 0.6 over 5 years" : ": the cavity is drained, not closed");
        contact(body_of(*wall), *inside, "inside the rail", true, 1.0, cavity, std::nullopt, wall->thickness, tube_wall());
        // The bore is closed by what is clamped on both its ends: some water stays.
        share_of({edges_element()}, ", times 0.3 in the bore");
        contact(*inside, fasteners, "bore of the tube", true, fixing_path(), 0.3 * sealed, std::nullopt, tube_wall(), mm(0));
    }

    void caution_lines() {
        auto& lines = out.cautions;
        const auto category = out.atmosphere.joint;
        if (out.atmosphere.outside_range != nullptr) lines.emplace_back(out.atmosphere.outside_range);
        std::string short_lived;
        for (const auto& m : out.members)
            if (m.passes && m.life_low < joint.life) short_lived += (short_lived.empty() ? "" : ", ") + m.name;
        if (!short_lived.empty())
            lines.push_back(fmt::format("the estimate outlives the promise, but the low end of its band does not: {}", short_lived));
        if (!joint.bolt.property_class.is_carbon() && category >= Corrosivity::c4)
            lines.emplace_back(joint.bolt.property_class.bolt_class.starts_with("A2")
                                   ? "A2 stains and pits in crevices near salt: A4 is the least there"
                                   : "A4 still stains by the surf and pits in crevices; rinse it");
        if (joint.section && joint.section->tube.arrangement != TubeArrangement::none &&
            joint.section->tube.material.family == Family::stainless)
            lines.emplace_back("a stainless tube is a large noble area in a wet cavity nobody sees: wax the cavity or isolate its ends");
        const bool insulates = std::any_of(joint.planes.begin(), joint.planes.end(),
                                           [&](const auto& plane) { return faying_element_of(joint, plane, tables).insulates; });
        if (insulates && joint.surroundings.earth_bridges)
            lines.emplace_back("the lamps' earth joins both sides: the layer keeps water out, it does not isolate");
        if (insulates && !joint.surroundings.earth_bridges && !is_sleeved())
            lines.emplace_back("the bolt bridges the layer: without sleeve and shoulder washer it does not isolate");
        if (category >= Corrosivity::c4) lines.emplace_back("crevices and mud on aluminium have no published rate: theirs is judged");
        if (out.atmosphere.immersed > 0.0) lines.emplace_back("what the sea leaves behind does more than the hours in it: rinse");
    }
};

template <class Steps>
void compose(const Joint& joint, Place& place, const Tables& tables, ExposureOutlook& out, Steps& steps) {
    out.exposure = place.exposure;
    out.atmosphere = place.atmosphere;
    out.electrolyte = place.electrolyte;
    out.wet_share = place.wet_share;
    Composer<Steps> composer{joint, tables, place, out, steps};
    composer.contacts();
    for (std::size_t i = 0; i < out.members.size(); ++i) {
        if (out.members[i].life < out.members[out.first].life) out.first = i;
        out.passes = out.passes && out.members[i].passes;
    }
    composer.caution_lines();
}

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
    out.limit = limit;
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
                  .multiplier = electrolyte->multiplier * longer,
                  .multiplier_band = electrolyte->multiplier_band,
                  .pair_fit = beside_aluminium ? zinc_beside_aluminium : 1.0,
                  .cathode_strength = out.cathode->cathode_strength,
                  .area_ratio = out.area_ratio,
                  .kinetic_bound = out.bound};
    out.added = Couple::compute(out.inputs);
    return out;
}

const Row<IsolationElement>& faying_element_of(const Joint& joint, const FayingPlane& plane, const Tables& tables) {
    const auto& rows = tables.of<IsolationElement>().rows;
    const auto named = [&](const auto& fits) -> const Row<IsolationElement>* {
        const auto found =
            std::find_if(rows.begin(), rows.end(), [&](const auto& row) { return row.place == IsolationPlace::faying && fits(row); });
        return found == rows.end() ? nullptr : &*found;
    };
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
    return *named([](const auto&) { return true; });
}

ExposureOutlook outlook_in(const Joint& joint, Place& place, const Tables& tables) {
    ExposureOutlook out;
    const NoSteps steps;
    compose(joint, place, tables, out, steps);
    return out;
}

Recorder derive_outlook(const Joint& joint, const Row<Exposure>& exposure, const Tables& tables) {
    Recorder steps;
    Place place(exposure, tables);
    static_cast<void>(atmosphere_at(exposure, steps));
    const auto& e = *place.electrolyte;
    steps.heading("Electrolyte of the joint's category", e.source.view());
    const auto tell = [&steps](const char* symbol, const char* words, const auto& value) {
        static_cast<void>(steps.stated(symbol, words, value));
    };
    tell("k", "conductivity", e.conductivity);
    tell("d", "film", e.film);
    tell("c_Cl", "chloride in it", e.chloride);
    tell("f_w", "share of the year that it is wet", place.wet_share);
    tell("m", "multiplier of a couple, as much larger as it is wetter than the category", e.multiplier * place.wet_share / e.wet_share);
    tell("c_0", "factor of an unsealed crevice in aluminium", e.crevice);
    ExposureOutlook out;
    compose(joint, place, tables, out, steps);
    return steps;
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
