// SPDX-License-Identifier: MIT
#include "assess/isolate.hpp"

#include "joint/choices.hpp"
#include "joint/resolve.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <memory>
#include <numeric>
#include <tuple>

namespace faywright {

namespace {

/// "part[3]" -> 3.
std::size_t part_index(const std::string& path) { return std::stoul(path.substr(5)); }

/// The file with a method in it. What the file says of layers, and of slip and creep by test, goes: it belongs to another method.
struct Composer {
    const WrittenJoint& written;
    const Joint& base;  ///< the joint as the file has it
    const Tables& tables;

    [[nodiscard]] Coat coat_of(const std::string& surface) const {
        const auto* row = tables.of<Surface>().find(surface);
        return row == nullptr ? Coat::none : row->coat;
    }

    /// The new surface, unless the old one has that kind of coat already.
    void resurface(std::string& surface, const std::string& wanted) const {
        if (coat_of(surface) != coat_of(wanted) || coat_of(wanted) == Coat::organic) surface = wanted;
    }

    void resurface_all(JointFile& file, const IsolationElement& faying) const {
        for (const auto& ply : base.plies) {
            auto& part = file.parts[part_index(ply.path)];
            const auto& wanted = ply.side == Side::attached ? faying.plate_surface : faying.rail_surface;
            const bool suits = ply.side == Side::attached ? ply.material.family == Family::steel : ply.is_aluminium();
            if (!wanted || !suits) continue;
            if (auto* section = std::get_if<SectionFile>(&part)) resurface(section->surface, *wanted);
            if (auto* plate = std::get_if<PlateFile>(&part)) {
                const bool was_zinc = ply.surface.coat == Coat::zinc || ply.galvanised;
                resurface(plate->surface, *wanted);
                plate->galvanised.reset();
                if (faying.keeps_zinc && was_zinc && coat_of(plate->surface) == Coat::organic) plate->galvanised = true;
            }
        }
    }

    /// Parts from head to nut without layers, then with the method's own.
    [[nodiscard]] std::vector<PartFile> with_layers(const JointFile& file, const IsolationMethod& method) const {
        std::vector<std::size_t> before;  // parts that a faying layer goes before
        if (method.faying->layer)
            for (const auto& plane : base.planes) before.push_back(part_index(base.plies[static_cast<std::size_t>(plane.nut_ply)].path));
        const auto& washer = method.fixing->washer_layer;
        const bool at_head = washer && base.plies.front().side == Side::rail, at_nut = washer && base.plies.back().side == Side::rail;
        const auto first = part_index(base.plies.front().path), last = part_index(base.plies.back().path);
        std::vector<PartFile> out;
        for (std::size_t i = 0; i < file.parts.size(); ++i) {
            if (std::holds_alternative<LayerFile>(file.parts[i])) continue;
            if (i == first && at_head) out.emplace_back(LayerFile{*washer, {}});
            if (std::find(before.begin(), before.end(), i) != before.end()) out.emplace_back(LayerFile{*method.faying->layer, {}});
            out.push_back(file.parts[i]);
            if (i == last && at_nut) out.emplace_back(LayerFile{*washer, {}});
        }
        return out;
    }

    void retube(JointFile& file, const IsolationElement& element) const {
        for (auto& part : file.parts)
            if (auto* section = std::get_if<SectionFile>(&part)) {
                auto& tube = section->tube;
                tube.material = element.tube_material;
                tube.coating = element.tube_coating;
                const auto* stock = tube.stock ? tables.of<StockTube>().find(*tube.stock) : nullptr;
                const auto* material = tables.of<Material>().find(*element.tube_material);
                if (stock != nullptr && material != nullptr && stock->material_group != word_of(material->family)) tube.stock.reset();
            }
    }

    [[nodiscard]] WrittenJoint with(const IsolationMethod& method, bool own_faying) const {
        auto out = written;
        auto& file = out.file;
        resurface_all(file, *method.faying);
        if (method.tube != nullptr) retube(file, *method.tube);
        file.parts = with_layers(file, method);
        file.corrosion.fixing = method.fixing->name;
        file.corrosion.edges = method.edges->name;
        if (!own_faying) {
            file.overrides.slip_factor.reset();
            file.overrides.creep_loss_fraction.reset();
        }
        return out;
    }
};

std::vector<const Row<IsolationElement>*> elements_at(const Tables& tables, IsolationPlace place) {
    std::vector<const Row<IsolationElement>*> out;
    for (const auto& row : tables.of<IsolationElement>().rows)
        if (row.place == place) out.push_back(&row);
    return out;
}

/// The element that a file names for a place, or the one that asks for nothing.
const Row<IsolationElement>* own_element(const Tables& tables, IsolationPlace place, const std::optional<Row<IsolationElement>>& named) {
    const auto all = elements_at(tables, place);
    for (const auto* row : all)
        if (named ? row->name == named->name : row->steps == "None.") return row;
    return all.empty() ? nullptr : all.front();
}

/// Whether a method leaves the joint as its file has it.
bool is_same(const Joint& a, const Joint& b) {
    const auto element = [](const std::optional<Row<IsolationElement>>& e) { return e && e->steps != "None." ? e->name : std::string(); };
    if (a.layers.size() != b.layers.size() || a.section.has_value() != b.section.has_value() ||
        element(a.surroundings.fixing) != element(b.surroundings.fixing))
        return false;
    for (std::size_t i = 0; i < a.layers.size(); ++i)
        if (a.layers[i].material.name != b.layers[i].material.name || a.layers[i].thickness != b.layers[i].thickness) return false;
    for (std::size_t i = 0; i < a.plies.size(); ++i)
        if (a.plies[i].surface.name != b.plies[i].surface.name || a.plies[i].galvanised != b.plies[i].galvanised) return false;
    if (!a.section) return true;
    const auto coating = [](const Tube& tube) { return tube.coating ? tube.coating->name : std::string(); };
    return a.section->tube.material.name == b.section->tube.material.name && coating(a.section->tube) == coating(b.section->tube);
}

void note_mechanics(const Assessment& a, MethodResult& out) {
    const auto& state = a.state;
    out.holds = a.passes;
    out.assembled = state.preload.least;
    out.clamp = state.least_clamp();
    out.utilisation = a.results[a.governing].outcome.utilisation;
    out.governing = a.results[a.governing].info->id;
    if (!state.tube.fits) out.trouble = "no stocked tube of this material carries the clamp";
    if (const auto* slip = find_check(a, "slip"); slip != nullptr && slip->outcome.applicable) out.slip = slip->outcome.utilisation;
    for (const auto& result : a.checks()) {
        const bool passed = result.status != Status::fail;
        const auto meet = [&](std::optional<bool>& met) { met = met.value_or(true) && passed; };
        if (result.info->id == "layer-pressure") meet(out.pressure_met);
        if (result.info->id == "layer-temperature") meet(out.temperature_met);
    }
    for (const auto& layer : state.joint->layers) out.sustained = out.sustained && layer.material.sustained_clamp;
}

/// Steps that a method asks for beyond bolting bare parts together.
std::size_t work_of(const IsolationMethod& method) {
    std::size_t count = 0;
    for (const auto* element : method.elements()) count += element->steps == "None." ? 0 : 1;
    return count;
}

bool better(const MethodResult& a, const MethodResult& b) {
    const auto key = [](const MethodResult& r) {
        const auto step = [](Duration life) { return -std::round(100.0 * std::log(max(in_years(life), 0.1))); };
        return std::make_tuple(!r.refused.empty(), !r.passes, !(r.holds && r.shortest_life() > years(0)), r.exposures_failed(),
                               step(r.shortest_wall_life()), -std::round(100.0 * r.wall_lives()), step(r.shortest_life()), !r.holds,
                               !r.trouble.empty(), std::round(100.0 * r.utilisation),
                               r.method.edges == nullptr ? 1.0 : r.method.edges->electrolyte_middle, work_of(r.method));
    };
    return key(a) < key(b);
}

/// Best first. Keys are many and results large: what is sorted are places.
void sort_results(std::vector<MethodResult>& results) {
    std::vector<std::size_t> order(results.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return better(results[a], results[b]); });
    std::vector<MethodResult> sorted;
    sorted.reserve(results.size());
    for (const auto index : order) sorted.push_back(std::move(results[index]));
    results = std::move(sorted);
}

/// What else could be done, each by itself and all together.
std::vector<std::pair<std::string, void (*)(JointFile&)>> changes_of(const Joint& joint) {
    std::vector<std::pair<std::string, void (*)(JointFile&)>> out;
    const auto& s = joint.surroundings;
    if (!s.maintained) out.emplace_back("seals renewed when their life is over", [](JointFile& f) { f.corrosion.maintained = true; });
    if (joint.section && !s.cavity_waxed) out.emplace_back("cavity waxed", [](JointFile& f) { f.corrosion.cavity = Cavity::waxed; });
    if (s.earth_bridges)
        out.emplace_back("lamps with a return wire of their own", [](JointFile& f) { f.corrosion.chassis_earth = Earth::one_side; });
    if (joint.bolt.property_class.is_carbon())
        out.emplace_back("bolts A4-80, anti-seize, at their own torque", [](JointFile& f) {
            f.bolt.bolt_class = "A4-80";
            f.bolt.finish = "stainless, anti-seize";
            f.bolt.nut_class.reset();
            f.bolt.zinc_thickness.reset();
            f.tightening.torque.reset();
        });
    for (const auto& ply : joint.plies)
        if (ply.surface.coat == Coat::zinc && ply.zinc_thickness.value_or(ply.surface.coating_thickness) < um(125)) {
            out.emplace_back("plates galvanised 125 um thick, by agreement", [](JointFile& f) {
                for (auto& part : f.parts)
                    if (auto* plate = std::get_if<PlateFile>(&part); plate != nullptr && plate->surface.starts_with("hot-dip galvanised"))
                        plate->zinc_thickness = um(125);
            });
            break;
        }
    return out;
}

}  // namespace

std::vector<const Row<IsolationElement>*> IsolationMethod::elements() const {
    std::vector<const Row<IsolationElement>*> out{faying, fixing};
    if (tube != nullptr) out.push_back(tube);
    out.push_back(edges);
    return out;
}

std::string IsolationMethod::name() const {
    std::string out;
    for (const auto* element : elements()) out += (out.empty() ? "" : "; ") + element->name;
    return out;
}

std::size_t MethodResult::exposures_failed() const {
    return static_cast<std::size_t>(std::count_if(exposures.begin(), exposures.end(), [](const auto& e) { return !e.passes; }));
}

Duration MethodResult::shortest_life() const {
    auto least = years(1000);
    for (const auto& exposure : exposures) least = min(least, exposure.first_to_go().life);
    return least;
}

Duration MethodResult::shortest_wall_life() const {
    auto least = years(1000);
    for (const auto& exposure : exposures)
        for (const auto& member : exposure.members)
            if (member.is_wall) least = min(least, member.life);
    return least;
}

std::optional<IsolationRanking> rank_isolation(const IsolationTask& task, Diagnostics& diagnostics) {
    const auto before = diagnostics.count();
    const auto without = without_choices(task.root);
    const Node& root = without ? *without : task.root;
    auto written = read_written(root, task.tables, task.read_file, {}, diagnostics);
    if (!written) return std::nullopt;
    if (!task.exposures.empty()) written->exposures = task.exposures;
    if (written->exposures.empty()) {
        diagnostics.error({"key.missing",
                           "no exposure is given: under [corrosion] of the joint file, or by --exposure",
                           root.at,
                           "",
                           {},
                           "faywright table exposures lists them; a site file ending in .toml is one of your own"});
        return std::nullopt;
    }
    const auto base = joint_of_written(*written, root, task.tables, diagnostics);
    if (base) check_geometry(*base, root, diagnostics);
    if (diagnostics.count() != before) return std::nullopt;

    IsolationRanking out;
    out.title = base->title;
    out.promised = base->life;
    out.exposures = written->exposures;
    out.earth_bridges = base->surroundings.earth_bridges;
    if (written->file.overrides.slip_factor || written->file.overrides.creep_loss_fraction)
        out.warnings.emplace_back(
            "the file's own slip factor and creep stand for its own faying faces only; other methods take the tables'");
    if (without) out.warnings.emplace_back("what the file leaves to size under [choices] is passed over");

    const auto& own_faying = faying_element_of(*base, base->planes.front(), task.tables);
    const bool has_tube = base->section && base->section->tube.arrangement != TubeArrangement::none;
    std::vector<const Row<IsolationElement>*> tubes{nullptr};
    if (has_tube && !task.faying_only) tubes = elements_at(task.tables, IsolationPlace::tube);
    const auto& surroundings = base->surroundings;
    const auto fixings = task.faying_only ? std::vector{own_element(task.tables, IsolationPlace::fixing, surroundings.fixing)}
                                          : elements_at(task.tables, IsolationPlace::fixing);
    const auto edge_elements = task.faying_only ? std::vector{own_element(task.tables, IsolationPlace::edge, surroundings.edges)}
                                                : elements_at(task.tables, IsolationPlace::edge);
    std::vector<Place> places;
    for (const auto& exposure : out.exposures) places.emplace_back(exposure, task.tables);
    const auto compositions =
        elements_at(task.tables, IsolationPlace::faying).size() * fixings.size() * tubes.size() * edge_elements.size();
    if (compositions > most_compositions) {
        diagnostics.error(
            {"list.length",
             fmt::format("the isolation table makes {} compositions; at most {} are accepted", compositions, most_compositions),
             root.at,
             "",
             {},
             ""});
        return std::nullopt;
    }
    out.results.reserve(compositions);
    const Composer composer{*written, *base, task.tables};
    const auto assessment = std::make_unique<Assessment>();
    for (const auto* faying : elements_at(task.tables, IsolationPlace::faying))
        for (const auto* fixing : fixings)
            for (const auto* tube : tubes) {
                std::optional<Joint> joint;
                MethodResult result;
                for (const auto* edges : edge_elements) {
                    result.method = {faying, fixing, tube, edges};
                    if (!joint) {
                        Diagnostics own;
                        joint = joint_of_written(composer.with(result.method, faying == &own_faying), root, task.tables, own);
                        if (joint) check_geometry(*joint, root, own);
                        if (own.any()) {
                            joint.reset();
                            result.refused = own.sorted().front().message;
                        } else {
                            assess(*joint, *assessment);
                            note_mechanics(*assessment, result);
                        }
                    }
                    // Edges change nothing of the mechanics.
                    result.exposures.clear();
                    result.passes = joint && result.holds;
                    if (joint) {
                        joint->surroundings.edges = *edges;
                        for (auto& place : places) {
                            result.exposures.push_back(outlook_in(*joint, place, task.tables));
                            result.passes = result.passes && result.exposures.back().passes;
                        }
                    }
                    const auto& own = base->surroundings.edges;
                    result.as_written =
                        joint && is_same(*joint, *base) && (own ? own->name : "") == (own || edges->steps != "None." ? edges->name : "");
                    out.results.push_back(result);
                }
            }
    sort_results(out.results);
    std::vector<const Row<IsolationElement>*> seen;
    for (std::size_t i = 0; i < out.results.size(); ++i) {
        const auto& method = out.results[i].method;
        if (std::find(seen.begin(), seen.end(), method.faying) == seen.end()) {
            seen.push_back(method.faying);
            out.of_each_faying.push_back(i);
        }
        if (out.results[i].as_written) out.as_written = i;
    }
    if (task.faying_only || out.best().passes || !out.best().refused.empty()) return out;
    const auto best = composer.with(out.best().method, out.best().method.faying == &own_faying);
    const auto changes = changes_of(*base);
    const auto try_out = [&](const std::string& name, const WrittenJoint& changed) {
        Diagnostics own;
        const auto joint = joint_of_written(changed, root, task.tables, own);
        if (joint) check_geometry(*joint, root, own);
        if (own.any()) return;
        MethodResult result;
        assess(*joint, *assessment);
        note_mechanics(*assessment, result);
        result.passes = result.holds;
        for (auto& place : places) {
            result.exposures.push_back(outlook_in(*joint, place, task.tables));
            result.passes = result.passes && result.exposures.back().passes;
        }
        // What changes nothing helps nothing.
        const auto& first = out.best();
        if (result.holds == first.holds && result.shortest_life() <= 1.01 * first.shortest_life() &&
            result.shortest_wall_life() <= 1.01 * first.shortest_wall_life())
            return;
        out.levers.push_back({name, result.holds, result.passes, result.shortest_life(), result.shortest_wall_life()});
    };
    auto together = best;
    for (const auto& [name, change] : changes) {
        auto changed = best;
        change(changed.file);
        change(together.file);
        try_out(name, changed);
    }
    if (changes.size() > 1) try_out("all of these together", together);
    return out;
}

double MethodResult::wall_lives() const {
    double sum = 0.0;
    for (const auto& exposure : exposures)
        for (const auto& member : exposure.members)
            if (member.is_wall) sum += std::log(max(in_years(member.life), 0.1));
    return sum;
}

std::string MethodResult::what_governs() const {
    return trouble.empty() ? fmt::format("{} at {}", governing, print_number(utilisation, 3)) : trouble;
}

std::string advice(const IsolationRanking& ranking) {
    const auto& best = ranking.best();
    if (!best.refused.empty()) return "No method can be built with this joint: " + best.refused + ".";
    const auto share = 100.0 * static_cast<double>(best.clamp / best.assembled);
    // The exposure that asks for most.
    const ExposureOutlook* worst = &best.exposures.front();
    for (const auto& each : best.exposures)
        if (each.first_to_go().life < worst->first_to_go().life) worst = &each;
    const auto& first = worst->first_to_go();
    const auto about = [](Duration life) {
        return life > years(200) ? std::string("200 years or more") : fmt::format("about {} years", print_number(in_years(life), 2));
    };
    std::string out;
    if (best.passes) {
        out = fmt::format(
            "Choose {}: the joint holds ({}) and keeps {} of clamp ({:.0f} % of the least preload). By the estimates nothing "
            "is used up within the promised {}; first to go is {} of {} after {} in \"{}\".",
            best.method.name(), best.what_governs(), print(Value(best.clamp), 3), share, print(Value(ranking.promised)), first.stake,
            first.name, about(first.life), worst->exposure->name);
        auto low = first.life_low;
        for (const auto& exposure : best.exposures)
            for (const auto& member : exposure.members) low = min(low, member.life_low);
        if (low < ranking.promised)
            out += fmt::format(" At the bad end of its band it is {}: inspect, and renew what is going.", about(low));
    } else if (best.holds) {
        out = fmt::format(
            "No method keeps the promise of {}. The best of them, {}, holds ({}), but {} of {} is used up after "
            "{} in \"{}\". Bolts and coats can be renewed; the aluminium, which cannot, lasts {} if its partners' zinc is not.",
            print(Value(ranking.promised)), best.method.name(), best.what_governs(), first.stake, first.name, about(first.life),
            worst->exposure->name, about(best.shortest_wall_life()));
    } else {
        out = fmt::format("No method makes this joint hold: the best of them, {}, fails: {}. Mend the joint first (faywright check).",
                          best.method.name(), best.what_governs());
    }
    // The longest-lived that fails on the clamp's side only, and by how little.
    const MethodResult* near = nullptr;
    for (const auto& each : ranking.results)
        if (each.refused.empty() && !each.holds && each.exposures_failed() == 0 &&
            (near == nullptr || each.utilisation < near->utilisation))
            near = &each;
    if (near != nullptr && !best.passes)
        out += fmt::format(" What would last is {}, but with it the joint does not hold: {}.", near->method.name(), near->what_governs());
    out +=
        ranking.earth_bridges
            ? " The lamps are taken as earthed through both sides, so that no layer isolates: metal stays in the load path, and what helps "
              "is to keep water out from outside."
            : " The lamps have their own return, so that layer, sleeve and shoulder washer together isolate; a bare bolt bridges "
              "every layer.";
    return out + " The order is meant, not the year: two rates in three lie within a factor of about 2 to 4 either way of what is told.";
}

}  // namespace faywright
