// SPDX-License-Identifier: MIT
#include "assess/assembly.hpp"

#include "assess/ordered.hpp"
#include "assess/tightening_plan.hpp"
#include "quantity/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <numeric>

namespace faywright {

namespace {

std::string counted(std::size_t count, std::string_view what) { return fmt::format("{} {}{}", count, what, count == 1 ? "" : "s"); }

std::string told(const Value& value) { return print(value); }

/// Forces of a sheet are read, not reckoned with.
std::string told(Force force) { return print(Value(force), 3); }

/// Of the order of tolerances, in the unit of the workshop.
std::string finely(Length length) { return fmt::format("{} mm", print_number(in_mm(length), 2)); }

/// "a, b and c".
std::string listed(const std::vector<std::string>& items) {
    std::string out;
    for (std::size_t i = 0; i < items.size(); ++i) out += (i == 0 ? "" : i + 1 == items.size() ? " and " : ", ") + items[i];
    return out;
}

/// What the shop calls the part a ply belongs to: the section has two plies and one name.
const std::string& part_of(const Joint& joint, const Ply& ply) { return ply.role == PlyRole::plate ? ply.name : joint.section->name; }

/// Calls `visit(name, ply)` once for each part, from head to nut.
template <class Visit>
void each_part(const Joint& joint, Visit&& visit) {
    for (const auto& ply : joint.plies)
        if (ply.role != PlyRole::far_wall) visit(part_of(joint, ply), ply);
}

bool has_zinc(const Ply& ply) { return ply.material.family == Family::steel && (ply.surface.coat == Coat::zinc || ply.galvanised); }

/// The layer between faying faces that is spread wet, or nullptr; one that sets before one that does not.
const Layer* wet_layer(const Joint& joint) {
    const Layer* found = nullptr;
    for (const auto& layer : joint.layers)
        if (layer.material.form != LayerForm::dry && (found == nullptr || layer.material.form == LayerForm::setting)) found = &layer;
    return found;
}

bool sets(const Layer* layer) { return layer != nullptr && layer->material.form == LayerForm::setting; }

/// When what was spread wet has been pressed out far enough to go round once more.
std::string pressed_out(const Layer& layer) {
    return sets(&layer) ? "30 min to 60 min or as its maker says, but before it sets" : "24 h to 72 h";
}

bool is_done(const IsolationElement& element) { return element.steps != "None."; }

AssemblyStage stage_of(const IsolationElement& e) {
    switch (e.place) {
        case IsolationPlace::faying: return e.layer ? AssemblyStage::isolate_faces : AssemblyStage::coat_faces;
        case IsolationPlace::tube: return AssemblyStage::treat_tubes;
        case IsolationPlace::fixing: return AssemblyStage::isolate_bolts;
        case IsolationPlace::edge: return AssemblyStage::seal_edges;
    }
    return AssemblyStage::seal_edges;
}

std::string washers_of(const Bolt& bolt) {
    const auto at = [&](bool head) { return bolt.washer(head) ? bolt.washer(head)->series : std::string(); };
    if (at(true).empty() && at(false).empty()) return "no washers";
    if (at(true) == at(false)) return fmt::format("{} under head and nut", at(true));
    std::vector<std::string> out;
    for (const bool head : {true, false})
        if (!at(head).empty()) out.push_back(fmt::format("{} under the {}", at(head), head ? "head" : "nut"));
    return listed(out);
}

/// Parts by what they have in common: "drawbar and rail 17.5 mm", "cheek galvanised; rail blasted".
template <class What>
std::string by_part(const Joint& joint, const char* between, What&& what) {
    std::vector<std::pair<std::string, std::vector<std::string>>> groups;
    each_part(joint, [&](const std::string& name, const Ply& ply) {
        const auto shared = what(ply);
        const auto same = std::find_if(groups.begin(), groups.end(), [&](const auto& group) { return group.first == shared; });
        if (same == groups.end())
            groups.push_back({shared, {name}});
        else
            same->second.push_back(name);
    });
    std::string out;
    for (const auto& [shared, names] : groups) out += fmt::format("{}{} {}", out.empty() ? "" : between, listed(names), shared);
    return out;
}

std::string holes_of(const Joint& joint) {
    return by_part(joint, ", ", [](const Ply& ply) { return told(ply.hole_diameter); });
}

std::string faces_of(const Joint& joint) {
    return by_part(joint, "; ", [](const Ply& ply) { return ply.surface.name; });
}

/// How near its length a tube is cut, and to what.
std::string tube_length_words(const State& s) {
    if (s.tube_passes_walls())
        return fmt::format("to {} within {}", print(Value(s.tube.length), 5), finely(s.joint->section->tube.length_tolerance));
    return fmt::format("to its measured cavity within {}", finely(s.tube.length_check.allowed_gap));
}

std::string squareness_words(const Tube& tube) {
    return tube.squareness > mm(0) ? fmt::format("square within {}", finely(tube.squareness)) : "square";
}

struct Steps {
    const State& s;
    const Joint& joint;
    std::vector<const Row<IsolationElement>*> isolation;
    std::vector<AssemblyStep> out = {};

    void add(AssemblyStage stage, std::string place, std::string words, RowSource source = {}) {
        out.push_back({stage, std::move(words), std::move(place), std::move(source)});
    }
    /// What the elements of a stage ask for, in the table's own words.
    void add_isolation(AssemblyStage stage) {
        for (const auto* e : isolation)
            if (stage_of(*e) == stage && is_done(*e)) add(stage, place_and_name(*e), without_tightening(e->steps), e->source_for("steps"));
    }
    /// The bolts come later, as steps of their own.
    static std::string without_tightening(const std::string& words) {
        std::string out;
        for (std::size_t from = 0; from < words.size();) {
            const auto to = std::min(words.find(", ", from), words.size());
            const auto part = words.substr(from, to - from);
            if (!part.starts_with("tighten") && !part.starts_with("re-tighten")) out += (out.empty() ? "" : ", ") + part;
            from = to + 2;
        }
        if (!out.ends_with('.')) out += '.';
        return out;
    }

    void tubes() {
        if (!s.tube.present) return;
        const auto& tube = joint.section->tube;
        add(AssemblyStage::cut_tubes, "tubes",
            fmt::format("Cut {} {} {}, {}; deburr in and out{}.", counted(joint.positions.size(), "tube"), s.tube.stock->name,
                        s.tube_passes_walls() ? tube_length_words(s) : "each " + tube_length_words(s), squareness_words(tube),
                        tube.chamfer > mm(0) ? fmt::format(", edges broken by {} at most", finely(tube.chamfer)) : ", no chamfer"));
        add_isolation(AssemblyStage::treat_tubes);
    }
    void holes() {
        bool steel = false, aluminium = false;
        for (const auto& ply : joint.plies) (ply.is_aluminium() ? aluminium : steel) = true;
        add(AssemblyStage::drill, "holes",
            fmt::format("Drill and ream: {}.{}{}", holes_of(joint), joint.section ? " Jig-drill both walls in line." : "",
                        steel && aluminium ? " Drill steel and aluminium apart." : ""));
        add_isolation(AssemblyStage::isolate_bolts);
        add(AssemblyStage::deburr, "holes",
            fmt::format("Break all edges 0.2 mm to 0.5 mm{}, no countersink. Clear all swarf; no steel brush on aluminium.",
                        joint.section ? ", inside the hollow too" : ""));
    }
    void faces() {
        const bool zinc = std::any_of(joint.plies.begin(), joint.plies.end(), has_zinc);
        const auto is_zinc_only = [](const auto* e) {
            return stage_of(*e) == AssemblyStage::coat_faces && e->plate_surface && !e->keeps_zinc;
        };
        if (zinc)
            add(AssemblyStage::clean_faces, "galvanised parts",
                "Dress runs and drips of zinc flat on the faces, in holes and under washers; zinc-rich paint, thin, on bare spots.");
        add(AssemblyStage::clean_faces, "faying faces",
            fmt::format("Make the faces as specified: {}. Degrease and dry them.", faces_of(joint)));
        // Of zinc that is there already all has been said.
        if (!zinc || std::none_of(isolation.begin(), isolation.end(), is_zinc_only)) add_isolation(AssemblyStage::coat_faces);
    }
    void tubes_in() {
        if (!s.tube.present) return;
        if (s.tube_passes_walls()) {
            const auto proud = (s.tube.length - joint.section->height) / 2.0;
            add(AssemblyStage::place_tubes, "tubes",
                fmt::format("Put the tubes through both walls; by a straight edge each stands {} both faces alike.",
                            proud > mm(0) ? fmt::format("{} out of", finely(proud)) : "flush with"));
        } else {
            add(AssemblyStage::place_tubes, "tubes",
                "Bring each tube between the walls at its own hole and line it up with a drift. Force none, shim none.");
        }
    }
    void between_faces() {
        add_isolation(AssemblyStage::isolate_faces);
        for (const auto& layer : joint.layers) {
            const bool told_of = std::any_of(isolation.begin(), isolation.end(), [&](const auto* e) {
                return e->layer == layer.material.name || e->washer_layer == layer.material.name;
            });
            if (!told_of)
                add(AssemblyStage::isolate_faces, "faying faces",
                    fmt::format("Put the {} in place, {} thick.", layer.material.name, told(layer.thickness)));
        }
    }
    void bolts() {
        const auto& bolt = joint.bolt;
        const bool wet = wet_layer(joint) != nullptr || sealed_nuts();
        add(AssemblyStage::place_bolts, "bolts",
            fmt::format("Put in {} {} x {}, heads at the {}, {}{}. {}", counted(joint.positions.size(), "bolt"), bolt.thread.name,
                        print_number(in_mm(bolt.length), 4), part_of(joint, joint.plies.front()), washers_of(bolt),
                        joint.surroundings.fixing && joint.surroundings.fixing->sleeve ? ", sleeves" : "",
                        wet                            ? "No sealant or compound on threads or under nuts."
                        : joint.bolt.finish.lubricated ? "Nothing on threads but their lubricant."
                                                       : "Threads clean and dry."));
    }
    /// What makes the friction that the torque is for.
    void lubricate() {
        const auto has = [&](const char* word) { return joint.bolt.finish.name.find(word) != std::string::npos; };
        const auto say = [&](const char* words) { add(AssemblyStage::place_bolts, "bolts", words); };
        if (has("waxed"))
            say("Bolts and nuts come waxed: neither wash nor oil them.");
        else if (has("anti-seize"))
            say("Anti-seize, free of copper and graphite, on the thread and under the nut, nowhere else; turn slowly, by hand.");
        else if (has("paste"))
            say("The paste on the thread and under the nut, nowhere else.");
    }
    void tighten() {
        const auto n = joint.positions.size();
        const auto& method = joint.tightening.method;
        const bool one = n == 1;
        add(AssemblyStage::snug, "bolts",
            fmt::format("Snug the {}, until {}.", one ? "nut" : "nuts from the middle outwards, sides in turn",
                        s.tube_passes_walls() ? "the plates lie on the tubes" : "the faces lie together"));
        const auto torque = told(s.torque);
        add(AssemblyStage::tighten, "bolts",
            !method.uses_torque
                ? fmt::format("Tighten {}by the method \"{}\" to a preload of {} to {} in each bolt.", one ? "" : "in the same order ",
                              method.name, told(s.preload.least), told(s.preload.greatest))
                : fmt::format("Turn the {} to {}, then {}to {}. Hold the head, pull evenly.", one ? "nut" : "nuts in the same order",
                              told(first_pass()), one ? "" : "round again ", torque));
        if (const auto* layer = wet_layer(joint); layer != nullptr)
            add(AssemblyStage::retighten_wet, "bolts",
                method.uses_torque
                    ? fmt::format("Wait {}, then go round once more to {}, never backwards.", pressed_out(*layer), torque)
                    : fmt::format("Wait {}, then bring each bolt back to its preload; no second angle on top.", pressed_out(*layer)),
                layer->material.source);
        add(AssemblyStage::mark, "bolts",
            sealed_nuts() ? "Paint a line across thread, nut, washer and part at each bolt; after sealing, over the sealant too."
                          : "Paint a line across thread, nut, washer and part at each bolt.");
    }
    void finish() {
        add_isolation(AssemblyStage::seal_edges);
        if (joint.surroundings.cavity_waxed)
            add(AssemblyStage::seal_edges, joint.section ? joint.section->name : "cavity",
                "Spray wax into the hollow until it shows at the drain holes; then probe them.");
        add(AssemblyStage::sign, "",
            fmt::format("{}Write wrench, lots and torques on the sheet; sign it.",
                        joint.section ? "Probe the drain holes, leave them open. " : ""));
    }
    [[nodiscard]] bool sealed_nuts() const { return joint.surroundings.edges && is_done(*joint.surroundings.edges); }
    [[nodiscard]] Moment first_pass() const { return on_the_wrench(0.5 * (s.torque + joint.tightening.prevailing_torque)); }
};

/// Where the friction comes from: the finish's row, or what the joint file puts in its place.
RowSource friction_source(const Joint& joint) {
    const auto& o = joint.overrides;
    if (!o.thread_friction_low && !o.thread_friction_high) return joint.bolt.finish.source_for("thread-friction-low");
    return {"joint file", "", o.reason.value_or("an override"), Basis::practice};
}

TighteningInstruction instruction_of(const Steps& steps) {
    const auto& s = steps.s;
    const auto& joint = steps.joint;
    const auto& method = joint.tightening.method;
    TighteningInstruction out;
    out.method = method.name;
    out.by_torque = method.uses_torque;
    if (out.by_torque)
        out.passes = {{steps.first_pass(), false}, {s.torque, true}};
    else
        out.for_information = s.torque;
    out.preload_least = s.preload.least;
    out.preload_greatest = s.preload.greatest;
    if (joint.tightening.prevailing_torque > Nm(0)) out.prevailing = joint.tightening.prevailing_torque;
    out.turned = "nut";
    out.finish = joint.bolt.finish.name;
    out.friction_low = s.thread_friction_low;
    out.friction_high = s.thread_friction_high;
    const auto say = [&](std::string words, RowSource source = {}) { out.words.push_back({std::move(words), std::move(source)}); };
    say(fmt::format("{} valid for bolts and nuts {}, thread friction {} to {}: {}.", out.by_torque ? "Torque" : "Preload", out.finish,
                    print_number(out.friction_low, 3), print_number(out.friction_high, 3),
                    joint.bolt.finish.lubricated ? "no other lubricant, none besides" : "no oil, no paste"),
        friction_source(joint));
    say(fmt::format("Turn the nut, hold the head{}.", joint.bolt.nut_washer ? "; the washer stays still" : ""));
    if (out.by_torque) {
        say(fmt::format("Method: {}; scatter of the tool {} % at most. Test the torque on this batch of bolts, nuts and washers.",
                        method.name, print_number(100.0 * method.tool_scatter, 3)),
            method.source_for("tool-scatter"));
        if (out.prevailing)
            say(fmt::format("The torque holds {} that the locking nut takes before it clamps; use such a nut once only.",
                            told(*out.prevailing)));
    } else {
        say(fmt::format("Torque does not decide here: \"{}\" does, at {} to {} of preload in each bolt, set by tests on this joint.",
                        method.name, told(out.preload_least), told(out.preload_greatest)),
            method.source);
        say(fmt::format("{} is for information: it is no setting and no check.", told(s.torque)));
    }
    return out;
}

std::vector<Retightening> retightening_of(const Steps& steps) {
    const auto& joint = steps.joint;
    const auto torque = told(steps.s.torque);
    const bool by_torque = joint.tightening.method.uses_torque;
    const auto* layer = wet_layer(joint);
    std::vector<Retightening> out;
    if (layer != nullptr)
        out.push_back({"once, after the last pass: " + pressed_out(*layer),
                       by_torque ? fmt::format("All bolts in the same order to {}, in the tightening direction only.", torque)
                                 : "All bolts in the same order back to their preload; no second angle on top.",
                       true, layer->material.source});
    std::string how;
    if (sets(layer))
        how = "Do not turn: the sealant has set. Look at the marks; where one has moved, slacken, take apart, clean, and do it anew.";
    else if (by_torque)
        how = fmt::format("Set {}, turn the nut in the tightening direction until it clicks; never back off. New mark.{}", torque,
                          steps.sealed_nuts() ? " First cut the sealant off the nut; seal it again afterwards." : "");
    else
        how = "Look at the marks; where one has moved, slacken, fit a new bolt and nut and tighten by the same method.";
    for (const auto* when : {"after 50 km to 100 km, or the first laden trip", "after 500 km to 1000 km, or a month", "at every service"})
        out.push_back({when, how, false, {}});
    return out;
}

/// What of the clamp rests on the re-tightening of the first service.
Statement counted_on(const State& s, bool counts) {
    const auto& joint = *s.joint;
    const auto left = told(s.clamp.crept_least);
    if (counts)
        return {fmt::format("The assessment counts on it: each bolt clamps at least {} again then, and {} without it.{}",
                            told(s.clamp.retightened_least), left,
                            sets(wet_layer(joint)) ? " The sealant sets before: go round as late before that as it allows." : "")};
    const auto soft = std::find_if(joint.layers.begin(), joint.layers.end(), [](const auto& l) { return !l.material.sustained_clamp; });
    if (joint.tightening.retighten && soft != joint.layers.end())
        return {fmt::format("The assessment does not count on it: {} keeps no clamp; {} at least is left without it.", soft->material.name,
                            left)};
    return {fmt::format("The assessment does not count on it: each bolt keeps at least {} without it. Do it all the same.", left)};
}

/// Whether nothing but isolation joins the two metals, so that its resistance can be measured; otherwise why not.
std::string what_bridges(const Joint& joint, const std::vector<const Row<IsolationElement>*>& isolation) {
    const bool sleeved = joint.surroundings.fixing && joint.surroundings.fixing->insulates;
    bool some = sleeved, every_face = true;
    for (const auto* e : isolation)
        if (e->place == IsolationPlace::faying) {
            some = some || e->insulates;
            every_face = every_face && e->insulates;
        }
    const auto& edges = joint.surroundings.edges;
    if (!some)
        return edges && edges->steps != "None."
                   ? "Nothing here isolates: metal touches metal, and the seal keeps the water out. Look at the seal."
                   : "Nothing here isolates: metal touches metal, and the edges are not sealed.";
    if (joint.surroundings.earth_bridges) return "The earth of the lamps joins both metals: there is nothing to measure.";
    if (!sleeved) return "The bolts join both metals: there is nothing to measure.";
    if (!every_face) return "The faces touch, metal on metal: there is nothing to measure.";
    return {};
}

struct Inspections {
    const Assessment& a;
    const Joint& joint;
    std::vector<Inspection> out = {};

    void add(InspectionTime time, std::string what, std::string how, std::string accept, RowSource source = {}) {
        out.push_back({time, std::move(what), std::move(how), std::move(accept), std::move(source)});
    }
    void incoming() {
        const auto& bolt = joint.bolt;
        add(InspectionTime::incoming, "bolts", "Read the heads and the certificate of the lot; measure three.",
            fmt::format("{} and the maker's mark; {} x {}.", head_mark(bolt), bolt.thread.name, print_number(in_mm(bolt.length), 4)));
        add(InspectionTime::incoming, "nuts", "Read the nuts, or the label of a sealed packet; try three on their bolts.",
            fmt::format("{} and the maker's mark{}; {}.", nut_mark(bolt),
                        bolt.nut_oversize > mm(0)                  ? ", tapped oversize for galvanised bolts"
                        : bolt.finish.kind == "hot-dip galvanised" ? ", neither Z nor X"
                                                                   : "",
                        joint.tightening.prevailing_torque > Nm(0) ? "never used before" : "each runs on by hand"));
        if (bolt.head_washer || bolt.nut_washer) {
            const auto& washer = bolt.head_washer ? *bolt.head_washer : *bolt.nut_washer;
            double least = washer.hardness_hv;
            if (bolt.nut_washer) least = min(least, bolt.nut_washer->hardness_hv);
            add(InspectionTime::incoming, "washers", "Read the packet: washers bear no mark of their hardness.",
                fmt::format("{} HV at least.", print_number(least, 3)));
        }
        if (bolt.zinc() > mm(0))
            add(InspectionTime::incoming, "coat of bolts", "Gauge on three heads of the lot.",
                fmt::format("{} at least.", told(bolt.zinc())),
                bolt.zinc_thickness ? RowSource{"joint file", "", "zinc-thickness", Basis::practice}
                                    : bolt.finish.source_for("coating-thickness"));
        if (a.corrosion.exposures.empty()) return;
        for (const auto& ply : joint.plies)
            if (ply.role == PlyRole::plate && ply.surface.coat == Coat::zinc)
                if (const auto* zinc = a.corrosion.exposures.front().find(ply.name); zinc != nullptr && zinc->thickness > mm(0))
                    add(InspectionTime::incoming, "coat of " + ply.name, "Gauge on the faces; look at edges and holes.",
                        fmt::format("{} at least, no bare spot.", told(zinc->thickness)),
                        {"corrosion outlook of this joint", "", "zinc at stake", Basis::practice});
    }
    void before_closing() {
        const auto& s = a.state;
        add(InspectionTime::before_closing, "holes", "Measure; put a bolt through every hole by hand; feel the edges.",
            fmt::format("{}; places as drawn; no burr.", holes_of(joint)));
        if (s.tube.present)
            add(InspectionTime::before_closing, "tubes",
                s.tube_passes_walls() ? "Measure each tube; straight edge over both faces."
                                      : "Measure each tube, and the cavity at its hole.",
                fmt::format("{} {}; {}.", s.tube_passes_walls() ? "Cut" : "Each", tube_length_words(s),
                            squareness_words(joint.section->tube)));
        add(InspectionTime::before_closing, "faces", "Look.", fmt::format("{}; clean and dry.", faces_of(joint)));
    }
    void at_tightening() {
        if (joint.tightening.method.uses_torque) {
            add(InspectionTime::at_tightening, "wrench", "Read its number and the date of its calibration.",
                "Calibrated within a year; written down.");
            const auto n = joint.positions.size(), tried = std::min(n, std::max<std::size_t>(2, (n + 9) / 10));
            add(InspectionTime::at_tightening, "torque",
                fmt::format("A second person sets {} on {}.", told(a.state.torque),
                            tried == n ? "each bolt" : fmt::format("{} of the {} bolts", tried, n)),
                "The wrench clicks before the nut has turned by 15 deg.");
        } else {
            add(InspectionTime::at_tightening, "preload",
                fmt::format("Record of the method \"{}\" for each bolt.", joint.tightening.method.name),
                fmt::format("{} to {}.", told(a.state.preload.least), told(a.state.preload.greatest)));
        }
    }
    void after(bool resistance) {
        add(InspectionTime::after, "marks", "Look at each bolt.", "A whole line across thread, nut, washer and part.");
        if (joint.surroundings.edges && is_done(*joint.surroundings.edges))
            add(InspectionTime::after, "edges", "Look all round.", joint.surroundings.edges->inspect,
                joint.surroundings.edges->source_for("inspect"));
        if (resistance)
            add(InspectionTime::after, "resistance between the metals",
                "Dry, before wiring and coupling: 50 V to 500 V, on bright spots, each bolt to each part and part to part.",
                "1 Mohm at least; below 100 kohm look for the fault.");
    }
};

std::vector<FixedPart> fixed_parts(const Assessment& a, const std::vector<const Row<IsolationElement>*>& isolation, const Tables& tables) {
    std::vector<FixedPart> out;
    const auto& finish = a.state.joint->bolt.finish;
    for (const auto& [piece, ordered] : ordered_pieces(a, tables)) {
        if (piece.what == "plate") continue;
        const bool washer = piece.what == "washer";
        FixedPart part{washer ? "washer " + ordered.note : piece.what, ordered.designation};
        if (piece.what == "tube") part.designation += fmt::format(", {}, {}", ordered.material, ordered.finish);
        if (piece.what == "nut" && !ordered.note.empty()) part.designation += ", " + ordered.note;
        if (!washer && std::any_of(out.begin(), out.end(), [&](const auto& p) { return p.designation == part.designation; })) continue;
        out.push_back(std::move(part));
    }
    out.push_back({"finish and lubricant", finish.name});
    for (const auto* e : isolation)
        if ((e->place == IsolationPlace::fixing || e->place == IsolationPlace::edge) && is_done(*e))
            out.push_back({e->place == IsolationPlace::edge ? "seal of the edges" : "isolation of the bolts", e->name});
    return out;
}

std::vector<Statement> rejects_of(const State& s) {
    std::vector<Statement> out;
    const auto say = [&](std::string words) { out.push_back({std::move(words)}); };
    say("A bolt or nut without its marks, used before, or re-tapped: not fitted.");
    if (s.tube.present) say("A tube out of its length or out of square: cut anew, never shimmed.");
    if (s.joint->section) say("A wall that dents or bulges while the bolt is tightened: stop, take the tube out, measure.");
    say("Compound on a thread or under a nut: new bolt, nut and washer.");
    if (s.joint->tightening.method.uses_torque)
        say("A nut that turns by more than 30 deg at a re-check, or still turns after two checks at which it stood: open the bolt and find "
            "out why.");
    return out;
}

}  // namespace

int AssemblyPlan::turn_of(std::size_t bolt) const {
    const auto found = std::find(tightening_order.begin(), tightening_order.end(), bolt);
    return found == tightening_order.end() ? 0 : static_cast<int>(found - tightening_order.begin()) + 1;
}

std::vector<std::size_t> tightening_order(const std::vector<Position>& positions) {
    std::vector<std::size_t> left(positions.size()), order;
    std::iota(left.begin(), left.end(), std::size_t{0});
    if (left.empty()) return order;
    Position middle{mm(0), mm(0)};
    for (const auto& p : positions) {
        middle.x += p.x / static_cast<double>(positions.size());
        middle.y += p.y / static_cast<double>(positions.size());
    }
    const auto apart = [](const Position& a, const Position& b) { return sqrt(squared(a.x - b.x) + squared(a.y - b.y)); };
    auto pitch = far_away;
    for (std::size_t i = 0; i < positions.size(); ++i)
        for (std::size_t j = 0; j < i; ++j) pitch = min(pitch, apart(positions[i], positions[j]));
    const auto none = um(0.1);  // digits of a printed file make no difference
    while (!left.empty()) {
        auto nearest = far_away;
        for (const auto i : left) nearest = min(nearest, apart(positions[i], middle));
        // Bolts within half a pitch are equally far out; of them comes the one farthest from the last.
        const auto reach = nearest + (order.empty() ? none : max(none, 0.5 * pitch));
        auto next = left.end();
        auto farthest = mm(-1);
        for (auto i = left.begin(); i != left.end(); ++i) {
            if (apart(positions[*i], middle) > reach) continue;
            const auto away = order.empty() ? mm(0) : apart(positions[*i], positions[order.back()]);
            if (next == left.end() || away > farthest + none) {
                next = i;
                farthest = away;
            }
        }
        order.push_back(*next);
        left.erase(next);
    }
    return order;
}

std::vector<const Row<IsolationElement>*> isolation_of(const Joint& joint, const Tables& tables) {
    std::vector<const Row<IsolationElement>*> out;
    for (const auto& plane : joint.planes) {
        const auto* element = &faying_element_of(joint, plane, tables);
        if (std::find(out.begin(), out.end(), element) == out.end()) out.push_back(element);
    }
    if (joint.section && joint.section->tube.arrangement != TubeArrangement::none) {
        const auto& tube = joint.section->tube;
        const auto coating = tube.coating ? std::optional(tube.coating->name) : std::nullopt;
        for (const auto& row : tables.of<IsolationElement>().rows)
            if (row.place == IsolationPlace::tube && row.tube_material == tube.material.name && row.tube_coating == coating) {
                out.push_back(&row);
                break;
            }
    }
    if (joint.surroundings.fixing) out.push_back(&*joint.surroundings.fixing);
    if (joint.surroundings.edges) out.push_back(&*joint.surroundings.edges);
    return out;
}

std::string place_and_name(const Row<IsolationElement>& element) {
    const auto place = word_of(element.place);
    return element.name.starts_with(place) ? element.name : fmt::format("{}: {}", place, element.name);
}

std::string why_not_built(const Assessment& a) {
    if (a.passes) return {};
    const auto& s = a.state;
    std::vector<const CheckResult*> failed;
    for (const auto& result : a.checks())
        if (result.status == Status::fail) failed.push_back(&result);
    std::stable_sort(failed.begin(), failed.end(),
                     [](const auto* x, const auto* y) { return x->outcome.utilisation > y->outcome.utilisation; });
    std::vector<std::string> reasons;
    if (!s.tube.fits) reasons.emplace_back("no stocked tube carries the clamp");
    for (std::size_t i = 0; i < s.joint->load_cases.size(); ++i)
        if (s.turning[i] == Turning::impossible) {
            reasons.push_back(fmt::format("the pattern cannot take the moment of \"{}\"", s.joint->load_cases[i].name));
            break;
        }
    constexpr std::size_t most_told = 3;
    for (std::size_t i = 0; i < failed.size() && i < most_told; ++i) {
        const auto part = part_name(*s.joint, *failed[i]);
        reasons.push_back(fmt::format("{}{} at {:.2f} times what is allowed", failed[i]->info->id, part.empty() ? "" : " (" + part + ")",
                                      failed[i]->outcome.utilisation));
    }
    if (failed.size() > most_told) reasons.push_back(fmt::format("{} more checks", failed.size() - most_told));
    for (const auto& exposure : a.corrosion.exposures)
        if (!exposure.passes) {
            const auto& m = exposure.first_to_go();
            reasons.push_back(fmt::format("in \"{}\" {} ({}) goes after {} years of {} promised", exposure.exposure->name, m.name, m.stake,
                                          print_number(in_years(m.life), 2), print_number(in_years(s.joint->life), 3)));
        }
    return fmt::format("The joint fails: {}.", fmt::join(reasons, "; "));
}

AssemblyPlan assembly_plan(const Assessment& a, const Tables& tables) {
    const auto& s = a.state;
    const auto& joint = *s.joint;
    AssemblyPlan plan;
    plan.not_to_be_built = why_not_built(a);
    Steps steps{s, joint, isolation_of(joint, tables)};
    steps.holes();
    steps.tubes();
    steps.faces();
    steps.tubes_in();
    steps.between_faces();
    steps.bolts();
    steps.lubricate();
    steps.tighten();
    steps.finish();
    plan.tightening_order = tightening_order(joint.positions);
    plan.tightening = instruction_of(steps);
    plan.retightening = retightening_of(steps);
    plan.retightening_counts = joint.tightening.retighten && std::all_of(joint.layers.begin(), joint.layers.end(),
                                                                         [](const auto& l) { return l.material.sustained_clamp; });
    plan.retightening_counted = counted_on(s, plan.retightening_counts);
    plan.no_resistance_test = what_bridges(joint, steps.isolation);
    plan.resistance_test = plan.no_resistance_test.empty();
    Inspections inspections{a, joint};
    inspections.incoming();
    inspections.before_closing();
    inspections.at_tightening();
    inspections.after(plan.resistance_test);
    plan.inspection = std::move(inspections.out);
    plan.no_substitution = fixed_parts(a, steps.isolation, tables);
    plan.substitution = {"Ask the designer before any other part goes in: it wants a review."};
    plan.rejects = rejects_of(s);
    plan.steps = std::move(steps.out);
    return plan;
}

}  // namespace faywright
