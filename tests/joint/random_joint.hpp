// SPDX-License-Identifier: MIT
#pragma once

#include "joint/reading.hpp"

#include <rapidcheck.h>

#include <algorithm>
#include <cstdlib>
#include <ostream>
#include <string>
#include <vector>

/// Random joints, valid by construction but for what only the reader can know. A joint is kept as its values, so that
/// a property can change one of them, and written as the text a person would have typed.
namespace joint_tests {

struct RandomPlate {
    std::string name, material, surface;
    double thickness = 0;  // mm, as every length here
    std::optional<double> x_min, x_max, y_min, y_max, hole, lever;
    std::string method;
    bool weld_affected = false;
};

struct RandomLoad {
    bool is_static = true, reverses = true;
    double load_factor = 1;
    std::array<double, 3> at{}, force{}, moment{};  // mm, kN, kN m
    std::optional<double> cycles;
};

struct RandomJoint {
    std::string service, size, bolt_class, finish, holes, method;
    bool fully_threaded = false, rolled_after = false, retighten = true;
    std::optional<double> length, torque, prevailing;
    double proof_utilisation = 0.75;

    std::optional<std::array<double, 4>> grid;  // rows, columns, pitch x, pitch y
    std::vector<std::array<double, 2>> positions;

    std::string head_washer, nut_washer;               // series, or empty
    std::vector<RandomPlate> head_plates, nut_plates;  // before and after the section; without one all before
    std::string head_layer, nut_layer;                 // next to the section; between the plates where there is none
    std::optional<double> layer_thickness;

    bool has_section = false;
    std::string section_material, section_surface, section_method;
    double width = 0, height = 0, wall = 0, offset_y = 0;
    std::optional<double> web, height_tolerance, section_x_min, section_x_max;
    bool section_weld = false;
    std::string arrangement, tube_material, tube_stock;
    std::optional<double> tube_length, tube_tolerance, tube_squareness;

    double assembly = 20, coldest = -20, hottest = 60;
    std::vector<RandomLoad> loads;
    std::vector<std::pair<std::string, std::string>> overrides;

    [[nodiscard]] std::string text() const {
        std::string out = fmt::format("title = \"random joint\"\nservice-class = \"{}\"\n", service);
        const auto line = [&out](const char* key, const std::optional<double>& value, const char* unit) {
            if (value) out += fmt::format("{} = \"{:.9g} {}\"\n", key, *value, unit);
        };
        const auto inside = [](std::string& to, const char* key, const std::optional<double>& value) {
            if (value) to += fmt::format("{}{} = \"{:.9g} mm\"", to.empty() ? "" : ", ", key, *value);
        };
        out += fmt::format(
            "[bolt]\nsize = \"{}\"\nclass = \"{}\"\nfinish = \"{}\"\nholes = \"{}\"\nfully-threaded = {}\nrolled-after-heat-treatment = "
            "{}\n",
            size, bolt_class, finish, holes, fully_threaded, rolled_after);
        line("length", length, "mm");
        out += fmt::format("[tightening]\nmethod = \"{}\"\nproof-utilisation = {:.9g}\nretighten = {}\n", method, proof_utilisation,
                           retighten);
        line("torque", torque, "N*m");
        line("prevailing-torque", prevailing, "N*m");
        out += "[pattern]\n";
        if (grid) {
            out += fmt::format("rows = {}\ncolumns = {}\npitch-x = \"{:.9g} mm\"\npitch-y = \"{:.9g} mm\"\n", (*grid)[0], (*grid)[1],
                               (*grid)[2], (*grid)[3]);
        } else {
            out += "positions = [";
            for (const auto& p : positions) out += fmt::format("[\"{:.9g} mm\", \"{:.9g} mm\"], ", p[0], p[1]);
            out += "]\n";
        }
        const auto washer = [&out](const std::string& series) {
            if (!series.empty()) out += fmt::format("[[part]]\nkind = \"washer\"\nseries = \"{}\"\n", series);
        };
        const auto plate = [&](const RandomPlate& p) {
            out +=
                fmt::format("[[part]]\nkind = \"plate\"\nname = \"{}\"\nmaterial = \"{}\"\nthickness = \"{:.9g} mm\"\nsurface = \"{}\"\n",
                            p.name, p.material, p.thickness, p.surface);
            std::string outline;
            inside(outline, "x-min", p.x_min);
            inside(outline, "x-max", p.x_max);
            inside(outline, "y-min", p.y_min);
            inside(outline, "y-max", p.y_max);
            if (!outline.empty()) out += fmt::format("outline = {{{}}}\n", outline);
            line("hole-diameter", p.hole, "mm");
            line("lever-to-web", p.lever, "mm");
            if (!p.method.empty()) out += fmt::format("method = \"{}\"\n", p.method);
            if (p.weld_affected) out += "weld-affected = true\n";
        };
        const auto layer = [&](const std::string& material) {
            if (material.empty()) return;
            out += fmt::format("[[part]]\nkind = \"layer\"\nmaterial = \"{}\"\n", material);
            line("thickness", layer_thickness, "mm");
        };
        washer(head_washer);
        for (std::size_t i = 0; i < head_plates.size(); ++i) {
            plate(head_plates[i]);
            if (!has_section && i == 0) layer(head_layer);
        }
        if (has_section) {
            layer(head_layer);
            out += fmt::format(
                "[[part]]\nkind = \"section\"\nname = \"rail\"\nmaterial = \"{}\"\nsurface = \"{}\"\nwidth = \"{:.9g} mm\"\nheight = "
                "\"{:.9g} mm\"\nwall = \"{:.9g} mm\"\n",
                section_material, section_surface, width, height, wall);
            line("web", web, "mm");
            line("height-tolerance", height_tolerance, "mm");
            line("offset-y", offset_y, "mm");
            line("x-min", section_x_min, "mm");
            line("x-max", section_x_max, "mm");
            if (!section_method.empty()) out += fmt::format("method = \"{}\"\n", section_method);
            if (section_weld) out += "weld-affected = true\n";
            std::string tube = fmt::format("arrangement = \"{}\"", arrangement);
            if (!tube_material.empty()) tube += fmt::format(", material = \"{}\"", tube_material);
            if (!tube_stock.empty()) tube += fmt::format(", stock = \"{}\"", tube_stock);
            inside(tube, "length", tube_length);
            inside(tube, "length-tolerance", tube_tolerance);
            inside(tube, "squareness", tube_squareness);
            out += fmt::format("tube = {{{}}}\n", tube);
            layer(nut_layer);
            for (const auto& p : nut_plates) plate(p);
        }
        washer(nut_washer);
        out += fmt::format("[temperatures]\nassembly = \"{:.9g} degC\"\ncoldest = \"{:.9g} degC\"\nhottest = \"{:.9g} degC\"\n", assembly,
                           coldest, hottest);
        for (std::size_t i = 0; i < loads.size(); ++i) {
            const auto& l = loads[i];
            out += fmt::format("[[load-case]]\nname = \"case {}\"\nformat = \"{}\"\n", i + 1, l.is_static ? "static" : "dynamic");
            // A dynamic case wants its factor, a static one refuses it.
            if (!l.is_static) out += fmt::format("load-factor = {:.9g}\n", l.load_factor);
            const auto three = [&out](const char* key, const std::array<double, 3>& v, const char* unit) {
                out += fmt::format("{} = [\"{:.17g} {}\", \"{:.17g} {}\", \"{:.17g} {}\"]\n", key, v[0], unit, v[1], unit, v[2], unit);
            };
            three("at", l.at, "mm");
            three("force", l.force, "kN");
            three("moment", l.moment, "kN*m");
            if (l.cycles) out += fmt::format("cycles = {:.9g}\nreverses = {}\n", *l.cycles, l.reverses);
        }
        if (!overrides.empty()) out += "[overrides]\nreason = \"invented for a test\"\n";
        for (const auto& [key, value] : overrides) out += fmt::format("{} = {}\n", key, value);
        return out;
    }

    /// Sets or replaces one of the overrides.
    void put(const std::string& key, const std::string& value) {
        std::erase_if(overrides, [&](const auto& each) { return each.first == key; });
        overrides.emplace_back(key, value);
    }
};

inline std::ostream& operator<<(std::ostream& out, const RandomJoint& joint) { return out << '\n' << joint.text(); }

namespace draw {

/// These may be called only inside rc::gen::exec.
inline int whole(int least, int most) { return *rc::gen::inRange(least, most + 1); }
/// Shrinks to no.
inline bool chance(int percent) { return whole(0, 99) >= 100 - percent; }
/// Of either sign; shrinks to nothing.
inline int about_zero(int most) { return whole(0, most) * (chance(50) ? -1 : 1); }
/// In steps a person would write: tenths.
inline double tenths(double least, double most) {
    return whole(static_cast<int>(std::ceil(10.0 * least - 1e-9)),
                 std::max(static_cast<int>(std::floor(10.0 * most + 1e-9)), static_cast<int>(std::ceil(10.0 * least - 1e-9)))) /
           10.0;
}
template <class T>
const T& one_of(const std::vector<T>& list) {
    return list[static_cast<std::size_t>(whole(0, static_cast<int>(list.size()) - 1))];
}

/// A material with a thickness its row covers.
inline std::pair<std::string, double> metal(const std::vector<Row<Material>>& rows, double least, double most) {
    const auto& row = one_of(rows);
    const double above = row.thickness_above ? in_mm(*row.thickness_above) + 0.1 : 0.0;
    const double up_to = row.thickness_up_to ? in_mm(*row.thickness_up_to) : 1000.0;
    const double low = std::max(least, above), high = std::min(most, up_to);
    if (low > high) return {"S355, up to 16 mm", std::min(std::max(least, 5.0), 16.0)};
    return {row.name, tenths(low, high)};
}

inline std::string code() {
    static const std::vector<std::string> words = [] {
        std::vector<std::string> list;
        for (const auto& [value, word] : Words<DesignMethod>::all) list.emplace_back(word);
        return list;
    }();
    return chance(70) ? std::string() : one_of(words);
}

/// Surfaces that have a slip factor against this one with nothing between.
inline std::vector<std::string> partners(const std::string& surface) {
    std::vector<std::string> list;
    for (const auto& row : built_in().of<SlipFactor>().rows) {
        if (row.between) continue;
        if (row.a == surface)
            list.push_back(row.b);
        else if (row.b == surface)
            list.push_back(row.a);
    }
    return list;
}

/// `x`: of the first bolt.
inline RandomLoad load(double most_per_bolt, int bolts, double x) {
    RandomLoad l;
    l.is_static = chance(50);
    if (!l.is_static) l.load_factor = one_of(std::vector<double>{1.0, 1.0, 1.35, 1.5, 2.0});
    const double most = std::min(most_per_bolt * bolts, 1500.0);  // a third more is still within the reader's range
    for (auto& f : l.force) f = chance(60) ? most * about_zero(1000) / 1000.0 : 0.0;
    for (auto& x : l.at) x = chance(40) ? about_zero(300) : 0.0;
    for (auto& m : l.moment) m = chance(20) && bolts > 1 ? most * 0.05 * about_zero(1000) / 1000.0 : 0.0;
    // A single bolt holds no moment in its plane, which the reader refuses; now and then one is asked of it all the same.
    if (bolts == 1 && !chance(5)) l.at = {x, 0.0, l.at[2]};
    if (!l.is_static && chance(40)) {
        l.cycles = one_of(std::vector<double>{1e4, 2e5, 2e6, 1e7, 1e9});
        l.reverses = chance(70);
    }
    return l;
}

inline RandomJoint joint() {
    const auto& tables = built_in();
    RandomJoint j;
    // Half of the joints are built with care, so that many pass: room round the holes, washers, modest loads and preload.
    const bool careful = chance(50);
    j.service = one_of(tables.of<ServiceClass>().rows).name;

    const auto& thread = one_of(tables.of<Thread>().rows);
    const double d = in_mm(thread.diameter);
    j.size = thread.name;
    std::vector<Row<BoltClass>> classes;
    for (const auto& row : tables.of<BoltClass>().rows) {
        const bool covers = (!row.above_diameter || thread.diameter > *row.above_diameter) &&
                            (!row.up_to_diameter || thread.diameter <= *row.up_to_diameter);
        const bool has_nut = std::any_of(tables.of<Nut>().rows.begin(), tables.of<Nut>().rows.end(),
                                         [&](const auto& nut) { return nut.size == j.size && nut.nut_class == row.nut_class; });
        if (covers && has_nut) classes.push_back(row);
    }
    const auto property_class = one_of(classes);
    j.bolt_class = property_class.bolt_class;
    std::vector<std::string> finishes;
    for (const auto& row : tables.of<Finish>().rows)
        if ((row.kind == "stainless") == (property_class.family != "carbon steel")) finishes.push_back(row.name);
    j.finish = one_of(finishes);
    const int series = whole(0, 2);
    j.holes = series == 0 ? "fine" : series == 1 ? "medium" : "coarse";
    const double hole = in_mm(series == 0 ? thread.hole_fine : series == 1 ? thread.hole_medium : thread.hole_coarse);
    j.rolled_after = chance(20);

    j.method = one_of(tables.of<TighteningMethod>().rows).name;
    j.proof_utilisation = careful ? whole(25, 60) / 100.0 : whole(30, 95) / 100.0;
    j.retighten = chance(60);
    if (!careful && chance(30)) {
        // About what the bolt asks for, from far too loose to too tight.
        const double usual = 0.2 * 0.6 * in_MPa(property_class.proof_strength) * 0.7 * d * d * d * 1e-3;
        j.torque = std::max(0.5, std::min(4000.0, std::round(usual * whole(10, 150)) / 100.0));
        if (chance(20)) j.prevailing = std::min(190.0, *j.torque * whole(0, 45) / 100.0);
    }

    j.has_section = chance(70);
    std::string wall_surface;
    double widest = std::max(hole, in_mm(thread.across_corners));
    if (j.has_section) {
        const auto [name, thickness] = metal(tables.of<Material>().rows, careful ? 3.0 : 1.0, 12.0);
        j.section_material = name;
        j.wall = thickness;
        if (chance(50)) j.web = tenths(1.0, 10.0);
        j.section_method = code();
        const int which = whole(0, 99);
        j.arrangement = which < 50 ? "between the walls" : which < 80 ? "through the walls" : "none";
        if (which < 80) {
            std::vector<Row<Material>> metals;
            std::vector<Row<StockTube>> stock;
            const auto group = one_of(std::vector<std::string>{"steel", "steel", "stainless", "aluminium"});
            for (const auto& row : tables.of<Material>().rows)
                if (word_of(row.family) == group) metals.push_back(row);
            for (const auto& row : tables.of<StockTube>().rows)
                if (row.material_group == group && in_mm(row.outside_diameter - 2.0 * row.wall) >= d + 0.2 &&
                    in_mm(row.outside_diameter) > hole)
                    stock.push_back(row);
            if (stock.empty()) {
                j.arrangement = "none";
            } else {
                j.tube_material = one_of(metals).name;
                const auto& tube = one_of(stock);
                if (j.arrangement == "through the walls" || chance(50)) {
                    j.tube_stock = tube.name;
                    widest = std::max(widest, in_mm(tube.outside_diameter) + 0.5);
                } else {
                    double smallest = 1e9;
                    for (const auto& row : stock) smallest = std::min(smallest, in_mm(row.outside_diameter));
                    widest = std::max(widest, smallest + 1.5);
                }
                if (!careful && chance(30)) j.tube_tolerance = tenths(0.0, 0.5);
                if (chance(30)) j.tube_squareness = whole(0, careful ? 2 : 20) / 100.0;
            }
        }
    }

    // The pattern, and from it the least width of a section.
    int columns = whole(1, 4), rows = whole(1, j.has_section ? 2 : 3);
    while (rows * columns > 8) --columns;
    const double web = j.web.value_or(j.wall);
    const double pitch_x = std::ceil(widest * whole(careful ? 250 : 110, 500) / 100.0),
                 pitch_y = std::ceil(widest * whole(careful ? 250 : 110, 300) / 100.0);
    if (j.has_section && (rows - 1) * pitch_y + widest + 2.0 * web + 3.0 > 480.0) rows = 1;
    std::vector<std::array<double, 2>> bolts;
    for (int r = 0; r < rows; ++r)
        for (int c = 0; c < columns; ++c) bolts.push_back({pitch_x * (c - (columns - 1) / 2.0), pitch_y * (r - (rows - 1) / 2.0)});
    if (chance(50)) {
        j.grid = std::array<double, 4>{static_cast<double>(rows), static_cast<double>(columns), pitch_x, pitch_y};
    } else {
        // A person's pattern: the grid, shifted, and some of its bolts left out.
        const double x = about_zero(50);
        for (auto& b : bolts) b[0] += x;
        while (bolts.size() > 1 && chance(15)) bolts.erase(bolts.begin() + whole(0, static_cast<int>(bolts.size()) - 1));
        j.positions = bolts;
    }
    double x_low = 1e9, x_high = -1e9, y_low = 1e9, y_high = -1e9;
    for (const auto& b : bolts) {
        x_low = std::min(x_low, b[0]);
        x_high = std::max(x_high, b[0]);
        y_low = std::min(y_low, b[1]);
        y_high = std::max(y_high, b[1]);
    }

    if (j.has_section) {
        const double spare = whole(careful ? 40 : 0, 100);
        j.width = std::clamp(std::ceil(2.0 * web + 2.0 * std::max(-y_low, y_high) + widest + 2.0 + spare), 15.0, 500.0);
        j.height = std::max(15.0, std::ceil(2.0 * j.wall + whole(8, 130)));
        if (chance(20)) j.offset_y = std::floor(spare / 2.0) * about_zero(100) / 100.0;
        if (chance(30)) j.height_tolerance = tenths(0.0, 1.0);
        if (careful) j.height_tolerance = 0.1;
        if (chance(40)) j.section_x_max = x_high + std::ceil(widest * whole(careful ? 150 : 60, 400) / 100.0);
        if (chance(20)) j.section_x_min = x_low - std::ceil(widest * whole(careful ? 150 : 60, 400) / 100.0);
        if (j.arrangement == "through the walls") {
            j.height_tolerance = tenths(0.0, 0.4);
            if (chance(50)) j.tube_length = j.height + tenths(0.0, 0.6);
            if (j.tube_tolerance) j.tube_tolerance = tenths(0.0, 0.1);
        }
        if (j.arrangement == "between the walls" && chance(30))
            j.tube_length = std::max(3.0, j.height - 2.0 * j.wall + about_zero(20) / 100.0);
        const auto* row = tables.of<Material>().find(j.section_material);
        if (row->haz_proof_strength && row->haz_ultimate_strength) j.section_weld = chance(20);
    }

    // Surfaces in pairs that the table knows, or any where a layer lies between.
    const auto surfaces = tables.of<Surface>().names();
    wall_surface = one_of(surfaces);
    while (partners(wall_surface).empty()) wall_surface = one_of(surfaces);
    j.section_surface = wall_surface;
    const auto layers = tables.of<LayerMaterial>().names();
    if (chance(careful ? 10 : 30)) j.head_layer = one_of(layers);
    if (j.has_section && chance(careful ? 10 : 30)) j.nut_layer = one_of(layers);
    if (chance(30)) j.layer_thickness = tenths(0.1, 3.0);
    const auto plate = [&](const char* name, const std::string& surface) {
        RandomPlate p;
        p.name = name;
        std::tie(p.material, p.thickness) = metal(tables.of<Material>().rows, careful ? 4.0 : 1.0, 20.0);
        p.surface = surface;
        p.method = code();
        if (chance(15)) p.hole = hole + tenths(0.0, 2.0);
        const double around = std::max(hole, p.hole.value_or(hole));
        const auto beyond = [&] { return std::ceil(around * whole(careful ? 160 : 65, 500) / 100.0); };
        if (chance(70)) p.x_min = x_low - beyond();
        if (chance(70)) p.x_max = x_high + beyond();
        if (chance(70)) p.y_min = y_low - beyond();
        if (chance(70)) p.y_max = y_high + beyond();
        if (chance(15)) p.lever = whole(static_cast<int>(in_mm(thread.across_corners)) / 2 + 1, 80);
        const auto* row = tables.of<Material>().find(p.material);
        if (row->family == Family::aluminium && row->haz_proof_strength && row->haz_ultimate_strength) p.weld_affected = chance(15);
        return p;
    };
    if (j.has_section) {
        const int faces = whole(0, 2);  // head, nut, both
        if (faces != 1) {
            if (chance(10)) j.head_plates.push_back(plate("outer plate", one_of(surfaces)));
            j.head_plates.push_back(plate("plate at the head", j.head_layer.empty() ? one_of(partners(wall_surface)) : one_of(surfaces)));
        } else {
            j.head_layer.clear();
        }
        if (faces != 0)
            j.nut_plates.push_back(plate("plate at the nut", j.nut_layer.empty() ? one_of(partners(wall_surface)) : one_of(surfaces)));
        else
            j.nut_layer.clear();
    } else {
        j.head_plates.push_back(plate("first plate", wall_surface));
        j.head_plates.push_back(plate("second plate", j.head_layer.empty() ? one_of(partners(wall_surface)) : one_of(surfaces)));
        if (chance(20))
            j.head_plates.push_back(plate(
                "third plate", one_of(partners(j.head_plates.back().surface).empty() ? surfaces : partners(j.head_plates.back().surface))));
    }

    // Washers that exist in this size.
    std::vector<std::string> washers;
    double grip = 0;
    for (const auto& row : tables.of<Washer>().rows)
        if (row.size == j.size && (bolts.size() == 1 || in_mm(row.outside_diameter) <= std::min(pitch_x, pitch_y)))
            washers.push_back(row.series);
    const auto washer = [&] {
        if (washers.empty() || chance(careful ? 5 : 30)) return std::string();
        auto name = one_of(washers);
        grip += in_mm(tables.of<Washer>().find(name + " " + j.size)->thickness);
        return name;
    };
    j.head_washer = washer();
    j.nut_washer = washer();
    for (const auto* list : {&j.head_plates, &j.nut_plates})
        for (const auto& p : *list) grip += p.thickness;
    for (const auto& name : {j.head_layer, j.nut_layer})
        if (!name.empty()) grip += j.layer_thickness.value_or(in_mm(tables.of<LayerMaterial>().find(name)->thickness));
    if (j.has_section) grip += j.height;
    if (chance(25)) {
        const double least = grip + in_mm(thread.nut_height + 2.0 * thread.pitch);
        for (const auto& row : tables.of<StandardLength>().rows)
            for (const auto& each : row.lengths)
                if (!j.length && in_mm(each) >= least) j.length = in_mm(each);
        j.fully_threaded = chance(30);
    }

    if (chance(50)) {
        j.assembly = whole(0, 30);
        j.coldest = j.assembly - whole(0, 50);
        j.hottest = j.assembly + whole(0, 50);
    }
    // From idle to hopeless.
    const double most_per_bolt =
        d * d *
        (careful ? one_of(std::vector<double>{0.0002, 0.0005, 0.001, 0.003}) : one_of(std::vector<double>{0.001, 0.01, 0.03, 0.1, 0.3}));
    const int cases = whole(1, careful ? 3 : 5);
    for (int i = 0; i < cases; ++i) j.loads.push_back(load(most_per_bolt, static_cast<int>(bolts.size()), bolts.front()[0]));
    if (chance(20)) {
        const auto number = [](double value) { return fmt::format("{:.4g}", value); };
        if (chance(40)) j.put("slip-factor", number(whole(0, 60) / 100.0));
        if (chance(30)) {
            const double low = whole(5, 20) / 100.0;
            j.put("thread-friction-low", number(low));
            j.put("thread-friction-high", number(low + whole(0, 20) / 100.0));
        }
        if (chance(30)) {
            const double low = whole(5, 20) / 100.0;
            j.put("head-friction-low", number(low));
            j.put("head-friction-high", number(low + whole(0, 20) / 100.0));
        }
        if (chance(20)) j.put("tightening-factor", number(1.0 + whole(0, 30) / 10.0));
        if (chance(30)) j.put("introduction-factor", number(whole(0, 100) / 100.0));
        if (chance(20)) j.put("creep-loss-fraction", number(whole(0, 99) / 100.0));
        if (chance(20)) j.put("embedding", fmt::format("\"{} um\"", whole(0, 60)));
    }
    return j;
}

}  // namespace draw

/// A joint as a workshop might write it.
inline rc::Gen<RandomJoint> random_joint() {
    return rc::gen::resize(rc::kNominalSize, rc::gen::exec([] { return draw::joint(); }));
}

/// How many joints a property sees.
inline int random_joints() {
    const char* given = std::getenv("FAYWRIGHT_RANDOM_JOINTS");
    const int number = given == nullptr ? 0 : std::atoi(given);
    return number > 0 ? number : 2000;
}

inline std::optional<Joint> read(const RandomJoint& random) {
    Diagnostics diagnostics;
    return read_joint(random.text(), "random.toml", built_in(), diagnostics);
}

/// Runs a property over random joints, `share` of the usual number of them, and reports a counterexample made small. The
/// property is given the joint and returns what is wrong with it, or nothing. Refused joints do not count.
/// The seed is fixed so that a failure can be had again; FAYWRIGHT_RANDOM_SEED gives another.
template <class Property>
void on_random_joints(const char* name, Property&& property, double share = 1.0) {
    rc::detail::TestMetadata metadata;
    metadata.id = metadata.description = name;
    rc::detail::TestParams params;
    const char* seed = std::getenv("FAYWRIGHT_RANDOM_SEED");
    params.seed = seed == nullptr ? 20 : std::strtoull(seed, nullptr, 10);
    params.maxSuccess = std::max(1, static_cast<int>(random_joints() * share));
    params.maxDiscardRatio = 20;
    const auto generator = random_joint();
    const auto result = rc::detail::checkTestable(
        [&] {
            const auto random = *generator;
            const auto joint = read(random);
            if (!joint) RC_DISCARD("refused");
            const std::string fault = property(random, *joint);
            if (!fault.empty()) RC_FAIL(fault);
        },
        metadata, params);
    std::ostringstream message;
    rc::detail::printResultMessage(result, message);
    INFO(message.str());
    CHECK(result.template is<rc::detail::SuccessResult>());
}

}  // namespace joint_tests
