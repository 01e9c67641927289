// SPDX-License-Identifier: MIT
#include "joint/resolve.hpp"

#include <cmath>
#include <map>

namespace faywright {

namespace {

/// What every step of the resolution needs.
struct Resolver {
    const JointFile& file;
    const Node& root;
    const Tables& tables;
    Diagnostics& diagnostics;
    Joint joint;
    std::size_t foreign_cases = 0;  ///< load cases before the file's own ones

    void error(const std::string& code, const std::string& message, const std::string& path, const std::string& label = "",
               const std::string& help = "") {
        diagnostics.error({code, message, place_of(root, path), label, {}, help});
    }

    void note(const std::string& path, const std::string& meaning, const std::string& value) {
        joint.defaults.push_back({path, meaning, value});
    }

    template <class Record>
    const Row<Record>* look_up(const std::string& name, const std::string& path) {
        const auto& table = tables.of<Record>();
        if (const auto* row = table.find(name); row != nullptr) return row;
        const auto names = table.names();
        const auto label = nearest_label(name, names);
        const auto holding = containing(name, names);
        error("name.unknown", fmt::format("{} is \"{}\", which the table {} does not have", path, shown(name), Record::table), path,
              holding.size() > 1 || (label.empty() && !holding.empty())
                  ? fmt::format("rows with these words: \"{}\"", fmt::join(holding, "\", \""))
                  : label,
              fmt::format("faywright table {} lists them", Record::table));
        return nullptr;
    }

    /// A material by its full name. The alloy's or grade's name alone is not enough; the message lists the rows it could mean.
    const Row<Material>* material(const std::string& name, const std::optional<Length>& thickness, const std::string& path) {
        const auto& table = tables.of<Material>();
        const auto* row = table.find(name);
        if (row == nullptr) {
            // The alloy and temper named, in whatever form and thickness: never another alloy for a likeness of letters.
            auto candidates = containing(name, table.names());
            if (candidates.empty())
                for (const auto& each : table.rows)
                    if (each.alloy && each.temper && name.find(*each.alloy) != std::string::npos &&
                        name.find(*each.temper) != std::string::npos && candidates.size() < 8)
                        candidates.push_back(each.name);
            if (!candidates.empty()) {
                error("name.ambiguous",
                      fmt::format("{} is \"{}\", which is no row of the table materials: standard, form and thickness belong to the name",
                                  path, shown(name)),
                      path, "", fmt::format("\"{}\"", fmt::join(candidates, "\", \"")));
                return nullptr;
            }
            return look_up<Material>(name, path);
        }
        if (thickness && ((row->thickness_above && *thickness <= *row->thickness_above) ||
                          (row->thickness_up_to && *thickness > *row->thickness_up_to))) {
            std::vector<std::string> fitting;
            for (const auto& each : table.rows)
                if (each.alloy == row->alloy && each.temper == row->temper && each.family == row->family &&
                    each.standard == row->standard && (!each.thickness_above || *thickness > *each.thickness_above) &&
                    (!each.thickness_up_to || *thickness <= *each.thickness_up_to))
                    fitting.push_back(each.name);
            error("material.thickness",
                  fmt::format("{} is \"{}\", which does not cover a thickness of {}", path, name, print(Value(*thickness))), path, "",
                  fitting.empty() ? "" : fmt::format("\"{}\"", fmt::join(fitting, "\", \"")));
            return nullptr;
        }
        return row;
    }

    void surroundings();
    /// Wall of the sleeve round the bolt.
    [[nodiscard]] Length sleeve() const {
        const auto& fixing = joint.surroundings.fixing;
        return fixing ? fixing->sleeve.value_or(mm(0)) : mm(0);
    }
    void bolt();
    void tightening();
    void pattern();
    void parts();
    void plate(const PlateFile& part, const std::string& path);
    void layer(const LayerFile& part, const std::string& path);
    void section(const SectionFile& part, const std::string& path);
    void tube(const SectionFile& part, const std::string& path, Section& section);
    void sides();
    void check_fixing();
    void planes();
    void loads();
    void bolt_length();
    [[nodiscard]] DesignMethod method_of(const std::optional<DesignMethod>& given, const Material& material, const std::string& path);
    void strengths(Ply& ply, bool weld_affected, const std::string& path);
};

void Resolver::surroundings() {
    const auto& given = file.corrosion;
    auto& s = joint.surroundings;
    const auto element = [this](const std::optional<std::string>& name, IsolationPlace place, const std::string& path,
                                std::optional<Row<IsolationElement>>& to) {
        if (!name) return;
        const auto* row = look_up<IsolationElement>(*name, path);
        if (row == nullptr) return;
        if (row->place == place) {
            to = *row;
            return;
        }
        std::vector<std::string> fitting;
        for (const auto& each : tables.of<IsolationElement>().rows)
            if (each.place == place) fitting.push_back(each.name);
        error("isolation.place",
              fmt::format("{} is \"{}\", an element for the {}; for the {} there are \"{}\"", path, *name, word_of(row->place),
                          word_of(place), fmt::join(fitting, "\", \"")),
              path);
    };
    element(given.fixing, IsolationPlace::fixing, "corrosion.fixing", s.fixing);
    element(given.edges, IsolationPlace::edge, "corrosion.edges", s.edges);
    s.earth_bridges = given.chassis_earth == Earth::both_sides;
    s.cavity_waxed = given.cavity == Cavity::waxed;
    s.maintained = given.maintained;
}

void Resolver::bolt() {
    auto& bolt = joint.bolt;
    const auto* thread = look_up<Thread>(file.bolt.size, "bolt.size");
    if (thread != nullptr) bolt.thread = *thread;
    if (const auto* finish = look_up<Finish>(file.bolt.finish, "bolt.finish"); finish != nullptr) bolt.finish = *finish;
    const auto& classes = tables.of<BoltClass>();
    const Row<BoltClass>* property_class = nullptr;
    std::vector<std::string> names;
    for (const auto& row : classes.rows) {
        if (std::find(names.begin(), names.end(), row.bolt_class) == names.end()) names.push_back(row.bolt_class);
        if (row.bolt_class != file.bolt.bolt_class || thread == nullptr) continue;
        if (row.holds_for(thread->diameter)) property_class = &row;
    }
    if (property_class != nullptr) {
        bolt.property_class = *property_class;
    } else if (thread != nullptr || std::find(names.begin(), names.end(), file.bolt.bolt_class) == names.end()) {
        const bool known = std::find(names.begin(), names.end(), file.bolt.bolt_class) != names.end();
        const auto label = nearest_label(file.bolt.bolt_class, names);
        error("name.unknown",
              known ? fmt::format("bolt.class {} is not made in size {}", file.bolt.bolt_class, file.bolt.size)
                    : fmt::format("bolt.class is \"{}\", which the table bolt-classes does not have", shown(file.bolt.bolt_class)),
              "bolt.class", known || label.empty() ? fmt::format("known: {}", fmt::join(names, ", ")) : label);
        return;
    }
    if (thread == nullptr || property_class == nullptr) return;
    const bool stainless_bolt = !property_class->is_carbon();
    if (!bolt.finish.name.empty() && stainless_bolt != (bolt.finish.kind == "stainless"))
        error("bolt.finish", fmt::format("bolt.finish \"{}\" does not go with class {}", bolt.finish.name, property_class->bolt_class),
              "bolt.finish", stainless_bolt ? "a finish of kind stainless is wanted" : "a finish of carbon steel is wanted",
              "faywright table finishes");
    if (bolt.finish.kind == "hot-dip galvanised" && property_class->ultimate_strength > MPa(1100))
        error("bolt.finish", fmt::format("class {} must not be hot-dip galvanised: embrittlement", property_class->bolt_class),
              "bolt.finish");
    const auto nut_class = file.bolt.nut_class.value_or(property_class->nut_class);
    if (!file.bolt.nut_class) note("bolt.nut-class", "class of the nut", nut_class);
    const bool galvanised = bolt.finish.nut_oversize > mm(0);
    const bool oversize = file.bolt.nut_thread ? *file.bolt.nut_thread == NutThread::oversize : galvanised;
    if (galvanised && !oversize)
        error("bolt.nut", "bolt.nut-thread is standard, but the bolt is galvanised: such a nut does not go on", "bolt.nut-thread");
    if (oversize) {
        const auto& finishes = tables.of<Finish>().rows;
        const auto dipped = std::find_if(finishes.begin(), finishes.end(), [](const Finish& row) { return row.nut_oversize > mm(0); });
        const Finish& cut_for = galvanised || dipped == finishes.end() ? bolt.finish : *dipped;
        bolt.nut_oversize = cut_for.nut_oversize + cut_for.nut_oversize_per_pitch * thread->pitch;
    }
    const Row<Nut>* nut = nullptr;
    std::vector<std::string> nut_names;
    for (const auto& row : tables.of<Nut>().rows) {
        if (row.size != file.bolt.size) continue;
        nut_names.push_back(row.nut_class);
        // An oversize row holds only where the standard reduces the load; elsewhere the full load stands.
        if (row.nut_class == nut_class && (nut == nullptr || row.oversize == oversize)) nut = &row;
    }
    if (nut == nullptr)
        error("name.unknown", fmt::format("no nut of class \"{}\" in size {} is in the table nuts", shown(nut_class), file.bolt.size),
              file.bolt.nut_class ? "bolt.nut-class" : "bolt.class", fmt::format("known in this size: {}", fmt::join(nut_names, ", ")));
    else
        bolt.nut = *nut;
    bolt.hole_diameter = file.bolt.holes == HoleSeries::fine     ? thread->hole_fine
                         : file.bolt.holes == HoleSeries::medium ? thread->hole_medium
                                                                 : thread->hole_coarse;
    bolt.rolled_after_heat_treatment = file.bolt.rolled_after_heat_treatment;
    bolt.zinc_thickness = file.bolt.zinc_thickness;
    if (bolt.zinc_thickness && !bolt.finish.name.empty() && bolt.finish.coating_thickness == mm(0))
        error("bolt.zinc", fmt::format("bolt.zinc-thickness is given, but a bolt \"{}\" carries no zinc", bolt.finish.name),
              "bolt.zinc-thickness");
}

void Resolver::tightening() {
    if (const auto* method = look_up<TighteningMethod>(file.tightening.method, "tightening.method"); method != nullptr)
        joint.tightening.method = *method;
    joint.tightening.torque = file.tightening.torque;
    joint.tightening.proof_utilisation = file.tightening.proof_utilisation;
    joint.tightening.prevailing_torque = file.tightening.prevailing_torque;
    joint.tightening.retighten = file.tightening.retighten;
    if (file.tightening.torque && file.tightening.prevailing_torque > 0.5 * *file.tightening.torque)
        error("geometry.torque", "tightening.prevailing-torque takes more than half of the tightening torque",
              "tightening.prevailing-torque");
}

void Resolver::pattern() {
    const auto& p = file.pattern;
    const bool grid = p.rows || p.columns || p.pitch_x || p.pitch_y;
    if (p.positions && grid) {
        error("pattern.both", "pattern has positions and also rows, columns or pitches; one of the two is wanted", "pattern");
        return;
    }
    if (p.positions) {
        joint.positions = *p.positions;
        if (p.positions->empty()) error("pattern.empty", "pattern.positions is empty; at least one bolt is wanted", "pattern.positions");
    } else {
        const int rows = p.rows.value_or(1), columns = p.columns.value_or(1);
        if (!p.rows) note("pattern.rows", "number of rows", "1");
        if (!p.columns) note("pattern.columns", "number of columns", "1");
        if (columns > 1 && !p.pitch_x)
            error("key.missing", "pattern.pitch-x is missing: pitch along the rail, for more than one column", "pattern");
        if (rows > 1 && !p.pitch_y)
            error("key.missing", "pattern.pitch-y is missing: pitch across the rail, for more than one row", "pattern");
        const auto pitch_x = p.pitch_x.value_or(mm(0)), pitch_y = p.pitch_y.value_or(mm(0));
        joint.positions = grid_of(rows, columns, pitch_x, pitch_y);
    }
    if (joint.positions.size() > most_bolts)
        error("pattern.size", fmt::format("pattern has {} bolts; at most {} are accepted", joint.positions.size(), most_bolts), "pattern");
}

DesignMethod Resolver::method_of(const std::optional<DesignMethod>& given, const Material& material, const std::string& path) {
    if (given) return *given;
    const auto method = material.family == Family::aluminium ? DesignMethod::en_1999 : DesignMethod::en_1993;
    note(path + ".method", "code of practice", std::string(word_of(method)));
    return method;
}

void Resolver::strengths(Ply& ply, bool weld_affected, const std::string& path) {
    ply.proof_strength = ply.material.proof_strength;
    ply.ultimate_strength = ply.material.ultimate_strength;
    if (!weld_affected || ply.material.family != Family::aluminium) return;
    if (!ply.material.haz_proof_strength || !ply.material.haz_ultimate_strength) {
        error("material.haz", fmt::format("{}.weld-affected is true, but \"{}\" has no strengths beside a weld", path, ply.material.name),
              path + ".weld-affected");
        return;
    }
    ply.proof_strength = *ply.material.haz_proof_strength;
    ply.ultimate_strength = *ply.material.haz_ultimate_strength;
}

void Resolver::plate(const PlateFile& part, const std::string& path) {
    Ply ply;
    ply.name = part.name;
    ply.path = path;
    if (const auto* row = material(part.material, part.thickness, path + ".material"); row != nullptr) ply.material = *row;
    if (const auto* row = look_up<Surface>(part.surface, path + ".surface"); row != nullptr) ply.surface = *row;
    ply.thickness = part.thickness;
    ply.hole_diameter = part.hole_diameter.value_or(joint.bolt.hole_diameter);
    if (!part.hole_diameter) note(path + ".hole-diameter", "hole in " + part.name, print(Value(ply.hole_diameter)));
    ply.bearing_diameter = joint.bolt.thread.diameter;
    const auto& o = part.outline;
    ply.outline = {o.x_min.value_or(-far_away), o.x_max.value_or(far_away), o.y_min.value_or(-far_away), o.y_max.value_or(far_away)};
    if (!o.x_min || !o.x_max || !o.y_min || !o.y_max)
        note(path + ".outline", part.name + " runs on where no edge is given", "no edge there");
    ply.method = method_of(part.method, ply.material, path);
    ply.lever_to_web = part.lever_to_web;
    ply.galvanised = part.galvanised.value_or(false);
    if (ply.galvanised && (ply.material.family != Family::steel || ply.surface.coat != Coat::organic))
        error("plate.galvanised", fmt::format("{}.galvanised is for carbon steel under paint or powder", path), path + ".galvanised");
    ply.zinc_thickness = part.zinc_thickness;
    if (ply.zinc_thickness && ply.surface.coat != Coat::zinc && !ply.galvanised)
        error("plate.zinc", fmt::format("{}.zinc-thickness is given, but {} carries no zinc", path, part.name), path + ".zinc-thickness",
              "", "a galvanised surface, or galvanised = true under paint");
    strengths(ply, part.weld_affected, path);
    joint.stack.push_back({StackKind::ply, static_cast<int>(joint.plies.size()), ply.thickness});
    joint.plies.push_back(std::move(ply));
}

void Resolver::layer(const LayerFile& part, const std::string& path) {
    const auto* row = look_up<LayerMaterial>(part.material, path + ".material");
    if (row == nullptr) return;
    Layer layer{path, *row, part.thickness.value_or(row->thickness)};
    if (!part.thickness) note(path + ".thickness", "thickness of " + row->name, print(Value(layer.thickness)));
    joint.stack.push_back({StackKind::layer, static_cast<int>(joint.layers.size()), layer.thickness});
    joint.layers.push_back(std::move(layer));
}

void Resolver::tube(const SectionFile& part, const std::string& path, Section& section) {
    const auto& given = part.tube;
    auto& tube = section.tube;
    tube.arrangement = given.arrangement;
    tube.length = given.length;
    tube.length_tolerance = given.length_tolerance;
    tube.squareness = given.squareness;
    tube.hole_clearance = given.hole_clearance;
    tube.chamfer = given.chamfer;
    if (given.arrangement == TubeArrangement::none) {
        if (given.material || given.stock || given.length || given.coating)
            error("tube.none", fmt::format("{}.tube.arrangement is \"none\", but a tube is described", path), path + ".tube");
        return;
    }
    if (!given.material) {
        error("key.missing", fmt::format("{}.tube.material is missing: a row of the materials table", path), path + ".tube");
        return;
    }
    if (const auto* row = material(*given.material, std::nullopt, path + ".tube.material"); row != nullptr) tube.material = *row;
    if (given.coating)
        if (const auto* row = look_up<Coating>(*given.coating, path + ".tube.coating"); row != nullptr) tube.coating = *row;
    if (tube.coating && tube.material.family != Family::steel)
        error("tube.coating",
              fmt::format("{}.tube.coating is zinc, which is for carbon steel; the material is {}", path, tube.material.name),
              path + ".tube.coating");
    const auto group = std::string(word_of(tube.material.family));
    if (given.stock) {
        const auto* row = look_up<StockTube>(*given.stock, path + ".tube.stock");
        if (row == nullptr) return;
        if (row->material_group != group)
            error("tube.material",
                  fmt::format("{}.tube.stock \"{}\" is stocked in {}, but the material is {}", path, row->name, row->material_group, group),
                  path + ".tube.stock");
        tube.stock = *row;
        return;
    }
    const auto least_bore = joint.bolt.thread.diameter + 2.0 * sleeve() + mm(0.2);
    for (const auto& row : tables.of<StockTube>().rows) {
        const auto bore = row.outside_diameter - 2.0 * row.wall;
        if (row.wall <= 2.0 * tube.chamfer + mm(0.2)) continue;
        if (row.material_group == group && bore >= least_bore && row.outside_diameter <= section.clear_width() - mm(1))
            tube.candidates.push_back(row);
    }
    const auto area = [](const StockTube& t) { return t.wall * (t.outside_diameter - t.wall); };
    std::stable_sort(tube.candidates.begin(), tube.candidates.end(), [&](const auto& a, const auto& b) { return area(a) < area(b); });
    if (tube.candidates.empty())
        error("geometry.tube", fmt::format("no stocked {} tube passes the bolt and fits between the webs", group), path + ".tube");
}

void Resolver::section(const SectionFile& part, const std::string& path) {
    if (joint.section) {
        error("part.section", "only one hollow section is accepted in a joint", path);
        return;
    }
    Section section;
    section.name = part.name;
    section.path = path;
    if (const auto* row = material(part.material, part.wall, path + ".material"); row != nullptr) section.material = *row;
    section.width = part.width;
    section.height = part.height;
    section.wall = part.wall;
    section.web = part.web.value_or(part.wall);
    section.height_tolerance = part.height_tolerance;
    section.offset_y = part.offset_y;
    if (!part.web) note(path + ".web", "thickness of the webs", print(Value(section.web)));
    const bool room = section.clear_width() > mm(5) && section.inside_height() > mm(5);
    if (!room)
        error("geometry.section",
              fmt::format("{}: the walls leave no cavity of at least 5 mm inside {} by {}", path, print(Value(part.width)),
                          print(Value(part.height))),
              path + ".wall");
    const auto errors = diagnostics.count();
    tube(part, path, section);
    if (!room || diagnostics.count() != errors) return;

    Ply wall;
    wall.material = section.material;
    wall.path = path;
    wall.side = Side::rail;
    if (const auto* row = look_up<Surface>(part.surface, path + ".surface"); row != nullptr) wall.surface = *row;
    wall.thickness = part.wall;
    const bool through = section.tube.arrangement == TubeArrangement::through_walls;
    if (through && !section.tube.stock) {
        error("tube.stock",
              fmt::format("{}.tube.stock is missing: a tube through the walls sets the holes, so its size must be chosen", path),
              path + ".tube");
        return;
    }
    if (through && !section.tube.length) {
        // It must stand out of the highest section, or the walls would share the clamp.
        section.tube.length = section.height + section.height_tolerance + section.tube.length_tolerance;
        note(path + ".tube.length", "the section's height and both tolerances", print(Value(*section.tube.length)));
    }
    const auto cavity = through ? *section.tube.length - 2.0 * section.wall : section.inside_height();
    const auto shaft = through ? section.tube.stock->outside_diameter : joint.bolt.thread.diameter;
    wall.hole_diameter =
        part.hole_diameter.value_or(through ? shaft + section.tube.hole_clearance : joint.bolt.hole_diameter + 2.0 * sleeve());
    if (!part.hole_diameter) note(path + ".hole-diameter", "hole in " + part.name, print(Value(wall.hole_diameter)));
    if (!through) {
        auto& candidates = section.tube.candidates;
        std::erase_if(candidates, [&](const Row<StockTube>& t) {
            return t.outside_diameter - t.outside_tolerance - 2.0 * section.tube.chamfer <= wall.hole_diameter;
        });
        if (!section.tube.stock && section.tube.arrangement != TubeArrangement::none && candidates.empty()) {
            error("geometry.tube",
                  fmt::format("no stocked tube that fits between the webs stands on the wall around a hole of {}",
                              print(Value(wall.hole_diameter))),
                  path + ".tube");
            return;
        }
    }
    wall.bearing_diameter = shaft;
    wall.outline = {part.x_min.value_or(-far_away), part.x_max.value_or(far_away), part.offset_y - part.width / 2.0,
                    part.offset_y + part.width / 2.0};
    if (!part.x_min || !part.x_max) note(path + ".x-min", part.name + " runs on where no end is given", "no end there");
    wall.method = method_of(part.method, wall.material, path);
    strengths(wall, part.weld_affected, path);
    for (const auto role : {PlyRole::near_wall, PlyRole::far_wall}) {
        wall.role = role;
        wall.name = part.name + (role == PlyRole::near_wall ? ", wall at the head" : ", wall at the nut");
        joint.stack.push_back({StackKind::ply, static_cast<int>(joint.plies.size()), wall.thickness});
        joint.plies.push_back(wall);
        if (role == PlyRole::near_wall) joint.stack.push_back({StackKind::cavity, 0, cavity});
    }
    joint.section = std::move(section);
}

void Resolver::parts() {
    const auto last = file.parts.size();
    for (std::size_t i = 0; i < last; ++i) {
        const auto path = fmt::format("part[{}]", i);
        if (const auto* washer = std::get_if<WasherFile>(&file.parts[i])) {
            if (i != 0 && i + 1 != last) {
                error("part.washer",
                      fmt::format("{} is a washer inside the stack; washers stand first (under the head) or last (under the nut)", path),
                      path);
                continue;
            }
            const auto name = washer->series + " " + file.bolt.size;
            if (const auto* row = look_up<Washer>(name, path + ".series"); row != nullptr) {
                (i == 0 ? joint.bolt.head_washer : joint.bolt.nut_washer) = *row;
                joint.stack.push_back({StackKind::washer, i == 0 ? 0 : 1, row->thickness});
            }
        } else if (const auto* plate_file = std::get_if<PlateFile>(&file.parts[i])) {
            plate(*plate_file, path);
        } else if (const auto* layer_file = std::get_if<LayerFile>(&file.parts[i])) {
            layer(*layer_file, path);
        } else if (const auto* section_file = std::get_if<SectionFile>(&file.parts[i])) {
            section(*section_file, path);
        }
    }
    if (joint.plies.empty() && !diagnostics.any()) error("part.none", "no plate or section is among the parts", "part");
    if (last > most_parts) error("part.count", fmt::format("{} parts; at most {} are accepted", last, most_parts), "part");
    std::map<std::string, int> names;
    for (const auto& ply : joint.plies)
        if (ply.name == "bolts" || ply.name == "tube")
            error("name.reserved", fmt::format("a part named \"{}\" would be taken for the joint's own {}", ply.name, ply.name),
                  ply.path + ".name");
    for (const auto& ply : joint.plies)
        if (++names[ply.name] == 2) error("name.duplicate", fmt::format("two parts are named \"{}\"", ply.name), ply.path + ".name");
}

void Resolver::sides() {
    int plates = 0;
    for (auto& ply : joint.plies) {
        if (ply.role != PlyRole::plate) continue;
        const auto index = static_cast<std::size_t>(std::stoul(ply.path.substr(5)));
        const auto& given = std::get<PlateFile>(file.parts[index]).side;
        ply.side = given.value_or(joint.section || plates % 2 == 0 ? Side::attached : Side::rail);
        if (!given) note(ply.path + ".side", "side of " + ply.name, std::string(word_of(ply.side)));
        ++plates;
    }
}

/// A sleeve isolates only with an insulating washer between rail and bolt end, which is a layer of the stack.
void Resolver::check_fixing() {
    const auto& fixing = joint.surroundings.fixing;
    if (!fixing || !fixing->washer_layer) return;
    const auto bare = [this](const auto& from, const auto& to) {
        const auto ply = std::find_if(from, to, [](const StackEntry& e) { return e.kind == StackKind::ply; });
        return joint.plies[static_cast<std::size_t>(ply->index)].side == Side::rail &&
               std::none_of(from, ply, [](const StackEntry& e) { return e.kind == StackKind::layer; });
    };
    const bool at_head = bare(joint.stack.begin(), joint.stack.end()), at_nut = bare(joint.stack.rbegin(), joint.stack.rend());
    if (at_head || at_nut)
        error("isolation.bridged",
              fmt::format("corrosion.fixing \"{}\" isolates nothing: the {} rests on the rail without a layer between", fixing->name,
                          at_head ? "bolt head" : "nut"),
              "corrosion.fixing", "", fmt::format("add a part {{kind = \"layer\", material = \"{}\"}} there", *fixing->washer_layer));
}

void Resolver::planes() {
    const auto& overrides = file.overrides;
    std::optional<int> ply, layer;
    bool cavity = false;
    int layers_between = 0;
    for (const auto& entry : joint.stack) {
        if (entry.kind == StackKind::cavity) cavity = true;
        if (entry.kind == StackKind::layer) {
            layer = entry.index;
            ++layers_between;
        }
        if (entry.kind != StackKind::ply) continue;
        const auto& here = joint.plies[static_cast<std::size_t>(entry.index)];
        if (ply && !cavity) {
            const auto& there = joint.plies[static_cast<std::size_t>(*ply)];
            if (layers_between > 1)
                error("part.layer", fmt::format("more than one layer stands between {} and {}", there.name, here.name), here.path);
            if (there.side != here.side) {
                FayingPlane plane{*ply, entry.index, layer, 0.0, 0.0, 0.0, {}, {}, there.surface.name + " / " + here.surface.name};
                const auto* between = layer ? &joint.layers[static_cast<std::size_t>(*layer)].material : nullptr;
                if (between != nullptr) plane.words += ", " + between->name + " between";
                const Row<SlipFactor>* found = nullptr;
                for (const auto& row : tables.of<SlipFactor>().rows) {
                    const bool pair = (row.a == there.surface.name && row.b == here.surface.name) ||
                                      (row.b == there.surface.name && row.a == here.surface.name);
                    const bool same_layer = between == nullptr ? !row.between : row.between == between->name;
                    if (pair && same_layer) found = &row;
                }
                if (overrides.slip_factor) {
                    plane.slip_factor = plane.slip_factor_low = plane.slip_factor_high = *overrides.slip_factor;
                    plane.source = {"overrides of the joint file", "", overrides.reason.value_or("no reason given"), Basis::practice};
                } else if (found != nullptr) {
                    plane.slip_factor = found->design;
                    plane.slip_factor_low = found->low;
                    plane.slip_factor_high = found->high;
                    plane.source = found->source_for("slip-factor");
                    if (found->at.file) plane.own_table = *found->at.file;
                } else if (between != nullptr) {
                    plane.slip_factor = plane.slip_factor_low = plane.slip_factor_high = between->slip_factor;
                    plane.source = between->source_for("slip-factor");
                } else {
                    error("name.unknown",
                          fmt::format("the table slip-factors has no pair \"{}\" and \"{}\"", there.surface.name, here.surface.name),
                          here.path + ".surface", "",
                          "give overrides.slip-factor from a test, or lay a table of your own over it with --data");
                }
                joint.planes.push_back(std::move(plane));
            }
        }
        ply = entry.index;
        layer.reset();
        layers_between = 0;
        cavity = false;
    }
    if (joint.planes.empty() && !joint.plies.empty())
        error("part.planes", "no faying plane: at least one attached plate must lie on the rail's side", "part", "",
              "check the parts' order and their side");
}

void Resolver::loads() {
    if (file.load_cases.empty()) error("load.none", "at least one [[load-case]] is wanted", "load-case");
    if (file.load_cases.size() > most_cases)
        error("load.count", fmt::format("{} load cases; at most {} are accepted", file.load_cases.size(), most_cases), "load-case");
    std::map<std::string, std::string> names;
    for (std::size_t k = 0; k < file.load_cases.size(); ++k) {
        const auto& given = file.load_cases[k];
        const bool foreign = k < foreign_cases;
        const auto i = foreign ? k : k - foreign_cases;
        const auto name_path = foreign ? std::string("loads") : fmt::format("load-case[{}].name", i);
        if (const auto [first, fresh] = names.emplace(given.name, name_path); !fresh)
            diagnostics.error({"name.duplicate",
                               fmt::format("{} \"{}\" is given twice", name_path, given.name),
                               place_of(root, name_path),
                               "",
                               {{place_of(root, first->second), "first given here"}},
                               ""});
        if (given.format == LoadFormat::static_load && given.load_factor)
            error("load.format",
                  fmt::format("load-case[{}] is static: the service class's design factor acts, a load factor besides it counts the same "
                              "allowance twice",
                              i),
                  fmt::format("load-case[{}].load-factor", i));
        if (given.format == LoadFormat::dynamic_load && !given.load_factor)
            error("key.missing", fmt::format("load-case[{}].load-factor is missing: the partial factor of this dynamic load", i),
                  fmt::format("load-case[{}]", i), "",
                  "1.0 where the load is a design load already, as a regulation's multiples are; else the code's factor");
        if (given.force == ForceFile{} && given.moment == MomentFile{})
            error("load.none", fmt::format("load-case[{}] has neither force nor moment", i), fmt::format("load-case[{}]", i));
        joint.load_cases.push_back({given.name, given.format, given.load_factor.value_or(1.0), given.at.x, given.at.y, given.at.z,
                                    given.force.x, given.force.y, given.force.z, given.moment.x, given.moment.y, given.moment.z,
                                    given.cycles, given.reverses});
    }
}

void Resolver::bolt_length() {
    auto& bolt = joint.bolt;
    const auto& thread = bolt.thread;
    const auto least = joint.least_bolt_length();
    if (file.bolt.length) {
        bolt.length = *file.bolt.length;
    } else {
        const auto& rows = tables.of<StandardLength>().rows;
        bool found = false;
        for (const auto& row : rows)
            for (const auto& length : row.lengths)
                if (!found && length >= least) {
                    bolt.length = length;
                    found = true;
                }
        bolt.length_chosen = true;
        if (!found)
            error("geometry.grip",
                  fmt::format("a grip of {} needs a bolt of at least {}, longer than any standard length", print(Value(joint.grip())),
                              print(Value(least))),
                  "bolt");
        else
            note("bolt.length", "shortest standard length that fits the grip", print(Value(bolt.length)));
    }
    bolt.thread_length = file.bolt.fully_threaded ? bolt.length
                         : bolt.length <= mm(125) ? thread.thread_length_to_125
                         : bolt.length <= mm(200) ? thread.thread_length_to_200
                                                  : thread.thread_length_over_200;
    bolt.thread_length = min(bolt.thread_length, bolt.length);
}

}  // namespace

std::optional<Joint> resolve(const JointFile& file, const Node& root, const Tables& tables, std::vector<DefaultTaken> defaults,
                             std::size_t foreign_cases, Diagnostics& diagnostics) {
    const auto before = diagnostics.count();
    Resolver r{file, root, tables, diagnostics, {}, foreign_cases};
    r.joint.defaults = std::move(defaults);
    r.joint.title = file.title;
    r.joint.life = file.life;
    r.joint.overrides = file.overrides;
    if (const auto* service = r.look_up<ServiceClass>(file.service_class, "service-class"); service != nullptr) r.joint.service = *service;
    r.surroundings();
    r.bolt();
    r.tightening();
    r.pattern();
    r.loads();
    const auto& t = file.temperatures;
    r.joint.assembly = t.assembly;
    r.joint.coldest = t.coldest;
    r.joint.hottest = t.hottest;
    if (t.coldest > t.assembly || t.assembly > t.hottest)
        r.error("temperature.order", "temperatures: coldest, assembly and hottest must rise in this order", "temperatures");
    const auto band = [&r](std::string_view what, const std::optional<double>& low, const std::optional<double>& high, double finish_low,
                           double finish_high) {
        const auto least = low.value_or(finish_low), greatest = high.value_or(finish_high);
        if (least > greatest)
            r.error("overrides.band",
                    fmt::format("overrides: the band of {} friction is upside down: from {} ({}) to {} ({})", what, print_number(least, 3),
                                low ? "given here" : "the finish's", print_number(greatest, 3), high ? "given here" : "the finish's"),
                    "overrides", "", "give both ends, as the test found them");
    };
    if (const auto& o = file.overrides; !r.joint.bolt.finish.name.empty()) {
        const auto& finish = r.joint.bolt.finish;
        band("thread", o.thread_friction_low, o.thread_friction_high, finish.thread_friction_low, finish.thread_friction_high);
        band("head", o.head_friction_low, o.head_friction_high, finish.head_friction_low, finish.head_friction_high);
    }
    if (const auto& o = file.overrides;
        !o.reason && (o.slip_factor || o.thread_friction_low || o.thread_friction_high || o.head_friction_low || o.head_friction_high ||
                      o.tightening_factor || o.introduction_factor || o.creep_loss_fraction || o.embedding))
        r.error("key.missing", "overrides.reason is missing: why these values stand in place of the tables', and from what test",
                "overrides");
    if (diagnostics.count() != before) return std::nullopt;
    r.parts();
    if (diagnostics.count() != before) return std::nullopt;
    r.sides();
    r.check_fixing();
    r.planes();
    r.bolt_length();
    if (diagnostics.count() != before) return std::nullopt;

    // Embedding follows the roughest faying surface; a joint that carries shear takes the shear column.
    const Row<Embedding>* roughest = nullptr;
    for (const auto& ply : r.joint.plies)
        for (const auto& row : tables.of<Embedding>().rows)
            if (row.roughness == ply.surface.roughness && row.loading == "shear" && (roughest == nullptr || row.head > roughest->head))
                roughest = &row;
    if (roughest == nullptr)
        r.error("name.unknown", "the table embedding has no row for the roughness of these surfaces", "part");
    else
        r.joint.embedding = *roughest;
    if (diagnostics.count() != before) return std::nullopt;
    return std::move(r.joint);
}

void report_names(const JointFile& file, const Node& root, const Tables& tables, Diagnostics& diagnostics) {
    Resolver r{file, root, tables, diagnostics, {}, 0};
    const auto known = [&]<class Record>(std::type_identity<Record>, const std::string& name, const std::string& path) {
        if (!name.empty()) static_cast<void>(r.look_up<Record>(name, path));
    };
    known(std::type_identity<ServiceClass>{}, file.service_class, "service-class");
    known(std::type_identity<Thread>{}, file.bolt.size, "bolt.size");
    known(std::type_identity<Finish>{}, file.bolt.finish, "bolt.finish");
    known(std::type_identity<TighteningMethod>{}, file.tightening.method, "tightening.method");
    r.surroundings();
    for (std::size_t i = 0; i < file.parts.size(); ++i) {
        const auto path = fmt::format("part[{}]", i);
        const auto metal = [&](const std::string& name) {
            if (!name.empty()) static_cast<void>(r.material(name, std::nullopt, path + ".material"));
        };
        if (const auto* plate = std::get_if<PlateFile>(&file.parts[i])) {
            metal(plate->material);
            known(std::type_identity<Surface>{}, plate->surface, path + ".surface");
        } else if (const auto* layer = std::get_if<LayerFile>(&file.parts[i])) {
            known(std::type_identity<LayerMaterial>{}, layer->material, path + ".material");
        } else if (const auto* section = std::get_if<SectionFile>(&file.parts[i])) {
            metal(section->material);
            known(std::type_identity<Surface>{}, section->surface, path + ".surface");
            if (section->tube.coating) known(std::type_identity<Coating>{}, *section->tube.coating, path + ".tube.coating");
        }
    }
}

}  // namespace faywright
