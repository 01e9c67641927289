// SPDX-License-Identifier: MIT
#include "assess/isolate.hpp"

#include "joint/choices.hpp"
#include "joint/resolve.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <memory>
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
        if (coat_of(surface) != coat_of(wanted)) surface = wanted;
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

/// The tube element that has the tube's family and coat.
const Row<IsolationElement>* tube_element_of(const Joint& joint, const Tables& tables) {
    if (!joint.section || joint.section->tube.arrangement == TubeArrangement::none) return nullptr;
    const auto& tube = joint.section->tube;
    for (const auto* element : elements_at(tables, IsolationPlace::tube)) {
        const auto* material = tables.of<Material>().find(*element->tube_material);
        if (material != nullptr && material->family == tube.material.family &&
            element->tube_coating.has_value() == tube.coating.has_value())
            return element;
    }
    return nullptr;
}

void note_mechanics(const Assessment& a, MethodResult& out) {
    const auto& state = a.state;
    out.holds = a.passes;
    out.assembled = state.preload.least;
    out.clamp = state.least_clamp();
    out.utilisation = a.results[a.governing].outcome.utilisation;
    out.governing = a.results[a.governing].info->id;
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
        const auto step = [](Duration life) { return -std::round(20.0 * std::log(max(in_years(life), 0.1))); };
        return std::make_tuple(!r.refused.empty(), !r.passes, !r.holds, r.exposures_failed(), step(r.shortest_life()),
                               step(r.shortest_wall_life()), std::round(100.0 * r.utilisation), work_of(r.method));
    };
    return key(a) < key(b);
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
    std::optional<Node> without;
    if (task.root.find("choices") != nullptr) without.emplace(variant_of(task.root, {}, {}));
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

    const auto& own_faying = faying_element_of(*base, task.tables);
    const auto* own_tube = tube_element_of(*base, task.tables);
    const bool has_tube = base->section && base->section->tube.arrangement != TubeArrangement::none;
    std::vector<const Row<IsolationElement>*> tubes{nullptr};
    if (has_tube) tubes = elements_at(task.tables, IsolationPlace::tube);
    std::vector<Place> places;
    for (const auto& exposure : out.exposures) places.emplace_back(exposure, task.tables);
    const Composer composer{*written, *base, task.tables};
    const auto assessment = std::make_unique<Assessment>();
    for (const auto* faying : elements_at(task.tables, IsolationPlace::faying))
        for (const auto* fixing : elements_at(task.tables, IsolationPlace::fixing))
            for (const auto* tube : tubes) {
                std::optional<Joint> joint;
                MethodResult result;
                for (const auto* edges : elements_at(task.tables, IsolationPlace::edge)) {
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
                    out.results.push_back(result);
                }
            }
    std::stable_sort(out.results.begin(), out.results.end(), better);
    std::vector<const Row<IsolationElement>*> seen;
    for (std::size_t i = 0; i < out.results.size(); ++i) {
        const auto& method = out.results[i].method;
        if (std::find(seen.begin(), seen.end(), method.faying) == seen.end()) {
            seen.push_back(method.faying);
            out.of_each_faying.push_back(i);
        }
        const auto& s = base->surroundings;
        const auto is = [](const std::optional<Row<IsolationElement>>& own, const Row<IsolationElement>& element) {
            return own ? own->name == element.name : element.steps == "None.";
        };
        if (method.faying == &own_faying && method.tube == own_tube && is(s.fixing, *method.fixing) && is(s.edges, *method.edges))
            out.as_written = i;
    }
    return out;
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
    std::string out;
    if (best.passes)
        out = fmt::format(
            "Choose {}: the joint holds ({} at {:.2f}), keeps {} of clamp ({:.0f} % of the least preload), and nothing is "
            "used up within the promised {}; first to go is {} of {} after about {} in \"{}\".",
            best.method.name(), best.governing, best.utilisation, print(Value(best.clamp), 3), share, print(Value(ranking.promised)),
            first.stake, first.name, print(Value(first.life), 2), worst->exposure->name);
    else if (best.holds)
        out = fmt::format(
            "No method keeps the promise of {}. The best of them, {}, holds ({} at {:.2f}), but {} of {} is used up after "
            "about {} in \"{}\": promise less, renew it then, thicken the zinc, or keep the trailer out of there.",
            print(Value(ranking.promised)), best.method.name(), best.governing, best.utilisation, first.stake, first.name,
            print(Value(first.life), 2), worst->exposure->name);
    else
        out = fmt::format(
            "No method makes this joint hold: the best of them, {}, fails {} at {:.2f}. Mend the joint first (faywright check).",
            best.method.name(), best.governing, best.utilisation);
    if (!best.passes)
        out += fmt::format(" Bolts and coats can be renewed; the aluminium, which cannot, lasts about {} years.",
                           best.shortest_wall_life() > years(200) ? "200 or more" : print_number(in_years(best.shortest_wall_life()), 2));
    // The one that would stop the couple best, and what it costs.
    const MethodResult* driest = nullptr;
    for (const auto& each : ranking.results)
        if (each.refused.empty() && (driest == nullptr || each.shortest_life() > driest->shortest_life())) driest = &each;
    if (driest != nullptr && driest != &best && driest->shortest_life() > 1.05 * best.shortest_life() && !driest->holds)
        out += fmt::format(" {} would last longer ({}), but the joint fails {} with it at {:.2f}.", driest->method.name(),
                           print(Value(driest->shortest_life()), 2), driest->governing, driest->utilisation);
    out += ranking.earth_bridges
               ? " The lamps are taken as earthed through both sides, so that no layer isolates: metal stays in the load path and the "
                 "outside is sealed."
               : " The lamps have their own return, so that layer, sleeve and shoulder washer together isolate; a bare bolt bridges "
                 "every layer.";
    return out + " The order is meant, not the year: each rate lies within a factor of about 4 either way.";
}

}  // namespace faywright
