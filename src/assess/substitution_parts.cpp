// SPDX-License-Identifier: MIT
#include "assess/substitution_review.hpp"

#include "quantity/text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace faywright {

namespace {

std::string_view series_of(const std::optional<Row<Washer>>& washer) { return washer ? std::string_view(washer->series) : "none"; }

/// Least hardness of a washer under a bolt of this strength: ISO 7089 and ISO 7091, memory.
double least_hardness(const BoltClass& bolt) {
    return bolt.ultimate_strength >= MPa(1000) ? 300.0 : bolt.ultimate_strength > MPa(600) ? 200.0 : 100.0;
}

}  // namespace

void Review::coat_of(const char* parts) {
    if (!offer().coating.empty() && as_delivered() == nullptr)
        return say(rules::find("finish-unknown"), Weight::ask,
                   fmt::format("{}: how thick, and with what friction by test? The tables do not have it", offer().coating));
    if (offer().coating == "plain" && base.bolt.finish.kind != "plain")
        return say(rules::find("bare-outdoors"), Weight::refuse,
                   fmt::format("{} without a coat rust, and their rust takes the zinc of their neighbours", parts));
    const auto* row = as_delivered();
    if (row == nullptr || row->kind == base.bolt.finish.kind || row->kind == "stainless") return;
    // As thick as bolts of this finish: what they lose is what these lose.
    auto file = sheet();
    file.bolt.finish = row->name;
    file.bolt.zinc_thickness.reset();
    file.bolt.nut_thread.reset();
    const auto worn = reviewer.tried(file, "");
    const auto own = base.bolt.zinc();
    if (worn.exposures.empty() && row->coating_thickness < own)
        say(rules::find("worse-life"), Weight::ask,
            fmt::format("zinc of {} in place of {}, and the joint file names no exposure: where does it live?",
                        print(Value(row->coating_thickness), 3), print(Value(own), 3)));
    for (std::size_t i = 0; i < worn.exposures.size(); ++i) {
        const auto &now = worn.exposures[i], &before = specified().exposures[i];
        if (const auto* bolts = now.find("bolts");
            bolts != nullptr && !bolts->passes && (before.passes || bolts->life < before.first_to_go().life))
            say(rules::find("too-soon"), Weight::refuse,
                fmt::format("{} of {} is used up after {} in \"{}\"; promised are {}", bolts->stake, parts, in_years_text(bolts->life),
                            shown(now.exposure->name), told(base.life)));
    }
}

void Review::nut() {
    common_identity();
    const auto& bolt = base.bolt;
    const bool dipped = bolt.finish.nut_oversize > mm(0);
    mark(said().nut_class.value_or(""));
    const auto* standard = offer().standard;
    const auto* written = offer().written_standard;
    const std::string name = standard != nullptr ? standard->name : "";
    const bool thin =
        (said().nut_class && is_thin_nut(*said().nut_class)) || name == "ISO 4035" || name == "ISO 4036" || name == "ISO 10511";
    if (thin)
        say(rules::find("nut-thin"), Weight::refuse,
            "a thin nut strips before the bolt breaks: its proof load is too low for a preloaded joint");
    if (offer().lower_nut)
        say(rules::find("nut-soft"), Weight::refuse,
            fmt::format("{} is lower than ISO 4032 and bears less, its class stands between bars: nuts of ISO 4032 are wanted",
                        written != nullptr && written->lower_nut ? written->name : "a nut with its class between bars"));
    if (name == "ISO 4033")
        say(rules::find("other-head"), Weight::ask, "ISO 4033 is higher than ISO 4032: does a full pitch still stand out of it?");
    if (standard != nullptr && !thin && standard->part == "nut" && !offer().inch_diameter && name != "ISO 4032" && name != "ISO 4033" &&
        name != "ISO 7040" && name != "ISO 7042" && !name.starts_with("AS 1112"))
        say(rules::find("other-head"), Weight::refuse,
            fmt::format("{} ({}) bears on another face than the hexagon nut this joint is checked with", name, standard->title));
    if (!said().nut_class && !thin && !offer().inch_diameter) say(rules::find("nut-unknown"), Weight::ask, "which class has the nut?");
    // The coat of the nut meets that of the bolt.
    const bool stainless = said().nut_class && is_stainless_nut(*said().nut_class);
    const auto coat = offer().coating.empty() && stainless ? std::string("stainless") : offer().coating;
    if (said().nut_class && !offer().coating.empty() && stainless != (offer().coating == "stainless"))
        say(rules::find("mixed-finish"), Weight::refuse,
            fmt::format("class {} and the finish \"{}\" are of two metals", *said().nut_class, offer().coating));
    if (coat.empty() && said().nut_class && !offer().inch_diameter)
        say(rules::find("finish-unknown"), Weight::ask, "which finish has the nut?");
    if (offer().nut_group) judge_stainless_group(*offer().nut_group);
    const auto thread = said().nut_thread;
    if (dipped && thread == NutThread::standard)
        say(rules::find("nut-tight"), Weight::refuse,
            "tapped to standard: it does not go on the galvanised bolt, and retapping takes the zinc off");
    if (dipped && !thread && !thin && !offer().inch_diameter) {
        if (coat.empty())
            say(rules::find("nut-tight"), Weight::ask, "is the nut tapped oversize for galvanised bolts, marked Z or X?");
        else if (coat == bolt.finish.kind)
            say(rules::find("nut-tight"), Weight::note,
                "taken as tapped oversize, as galvanised nuts are: without the mark Z or X they go back");
        else
            say(rules::find("nut-tight"), Weight::refuse,
                fmt::format("{} nuts are tapped to standard where nothing else is said: they do not go on the galvanised bolt", coat));
    }
    if (!dipped && thread == NutThread::oversize)
        say(rules::find("nut-loose"), Weight::refuse,
            "tapped oversize for thick zinc, which the bolt does not have: the threads overlap too little");
    if (!coat.empty() && coat != bolt.finish.kind)
        say(rules::find("mixed-finish"), Weight::refuse,
            fmt::format("{} nuts on {} bolts: the friction of the pair is not known, and with it the clamp", coat, bolt.finish.kind));
    if (said().nut_class && !thin && !is_nut_class_of(*said().nut_class, bolt.property_class) &&
        stainless == is_stainless_nut(bolt.nut.nut_class))
        say(rules::find("nut-soft"), Weight::refuse,
            fmt::format("class {} is for weaker bolts than {}: class {} is wanted", *said().nut_class, bolt.property_class.bolt_class,
                        bolt.property_class.nut_class));
    // A plain "8" is no proof of the oversize, and "U" is a mark of bolts.
    if (const auto& marked = said().marking; marked && dipped && !has(Weight::refuse)) {
        if (marked->find_first_of("Uu") != std::string::npos)
            say(rules::find("wrong-mark"), Weight::refuse, fmt::format("\"{}\" on a nut: U marks bolts cut undersize", *marked));
        else if (marked->find_first_of("ZzXx") == std::string::npos)
            say(rules::find("nut-tight"), Weight::ask,
                fmt::format("the nut is marked \"{}\" without Z or X: is it tapped oversize, and does the label of a sealed packet say so?",
                            *marked));
    }
    if (stainless && bolt.finish.kind == "stainless" && (offer().finish == nullptr || !offer().finish->lubricated))
        say(rules::find("galling"), Weight::change, galling_words(true));
    coat_of("nuts");
    locking();
    if (base.tightening.prevailing_torque > Nm(0) && !said().prevailing_torque_nut.value_or(false))
        say(rules::find("prevailing-torque"), Weight::ask,
            fmt::format("the sheet counts on locking nuts that take {}: is this one? A plain nut at that torque clamps harder",
                        told(base.tightening.prevailing_torque)));
    paste();
    const bool unwaxed = coat == bolt.finish.kind && bolt.finish.lubricated && (offer().finish == nullptr || !offer().finish->lubricated);
    if (unwaxed)
        say(rules::find("lubricant-unknown"), Weight::change,
            fmt::format("half of the torque is spent under the nut, which comes dry: thread and face are lubricated in the shop as for "
                        "\"{}\"",
                        bolt.finish.name));
    if (thin || !said().nut_class || has(Weight::refuse)) return;
    auto file = sheet();
    file.bolt.nut_class = said().nut_class;
    if (thread) file.bolt.nut_thread = thread;
    auto unnoticed = file;
    if (const auto* row = as_delivered(); unwaxed && row != nullptr) unnoticed.bolt.finish = row->name;
    if (const auto* row = tables.of<LockingNut>().find(bolt.thread.name); said().prevailing_torque_nut.value_or(false) && row != nullptr)
        unnoticed.tightening.prevailing_torque = row->prevailing_torque;
    out.unnoticed = reviewer.tried(unnoticed, "offered, nobody notices");
    out.right = reviewer.tried(file, "offered, built right");
}

void Review::washer() {
    common_identity();
    const auto& head = base.bolt.head_washer;
    const auto& under_nut = base.bolt.nut_washer;
    if (!head && !under_nut) {
        say(rules::find("cannot-be-built"), Weight::refuse, "the joint file has no washer that it could stand for");
        return;
    }
    const auto* written = offer().written_standard;
    for (const auto* standard : {written, offer().standard})
        if (standard != nullptr && standard->unfit && !has(Weight::refuse))
            say(rules::find("other-head"), Weight::refuse, fmt::format("{} ({}): {}", standard->name, standard->title, *standard->unfit));
    const auto own = std::string(series_of(under_nut ? under_nut : head));
    const auto series = said().series.value_or(own);
    if (!said().series && !offer().hardness_hv && !has(Weight::refuse))
        say(rules::find("washer-soft"), Weight::ask, "to which standard are they, and how hard? Washers without one are often of 100 HV");
    const auto& rows = tables.of<Washer>();
    // ISO 7090 is ISO 7089 with a chamfer.
    const auto dimensions = series == "ISO 7090" ? std::string("ISO 7089") : series;
    const auto* row = rows.find(dimensions + " " + base.bolt.thread.name);
    const auto promised = offer().hardness_hv    ? offer().hardness_hv
                          : series == "ISO 7091" ? std::optional(100.0)
                          : row != nullptr       ? std::optional(row->hardness_hv)
                                                 : std::nullopt;
    const double wanted = least_hardness(base.bolt.property_class);
    const double own_hardness = under_nut ? under_nut->hardness_hv : head->hardness_hv;
    if (promised && *promised < wanted)
        say(rules::find("washer-soft"), Weight::refuse,
            fmt::format("{} HV where {} HV are wanted under class {}: it sinks, and the clamp with it", *promised, wanted,
                        base.bolt.property_class.bolt_class));
    else if (promised && *promised < own_hardness)
        say(rules::find("washer-soft"), Weight::note,
            fmt::format("{} HV in place of {} HV: enough for class {}", *promised, own_hardness, base.bolt.property_class.bolt_class));
    if (!offer().hardness_hv && written != nullptr && written->softest_hv && *written->softest_hv < wanted)
        say(rules::find("washer-soft"), Weight::ask,
            fmt::format("{} was sold with {} HV, {} HV are wanted: which hardness have they?", written->name, *written->softest_hv,
                        wanted));
    const bool stainless = offer().coating == "stainless" || (said().material && said().material->starts_with("A"));
    if (said().material && *said().material != "steel" && !stainless)
        say(rules::find("finish-unknown"), Weight::ask,
            fmt::format("a washer of {}: only steel washers are reckoned here; can they be had?", shown(*said().material)));
    if (stainless && base.bolt.property_class.is_carbon())
        say(rules::find("stainless-beside-aluminium"), Weight::ask,
            "a stainless washer lies bare on the aluminium or the zinc: its couple is not reckoned here; can it be had galvanised?");
    else if (offer().coating.empty())
        say(rules::find("finish-unknown"), Weight::ask, "which coat has the washer?");
    coat_of("washers");
    if (has(Weight::refuse)) return;
    if (row == nullptr) {
        say(rules::find("cannot-be-built"), Weight::ask,
            fmt::format("{}: which diameters, thickness and hardness has it? The table of washers does not have it", series));
        return;
    }
    auto file = sheet();
    for (auto& part : file.parts)
        if (auto* washer = std::get_if<WasherFile>(&part)) washer->series = dimensions;
    out.unnoticed = reviewer.tried(file, "offered, nobody notices");
    auto right = dimensions == own ? sheet() : sheet_without_torque();
    right.parts = file.parts;
    out.right = reviewer.tried(right, "offered, built right");
}

void Review::tube() {
    if (said().used.value_or(false)) say(rules::find("used-part"), Weight::refuse, "used tubes have marks of the walls in their ends");
    if (!base.section || base.section->tube.arrangement == TubeArrangement::none) {
        say(rules::find("cannot-be-built"), Weight::refuse, "the joint file has no crush tube that it could stand for");
        return;
    }
    auto file = sheet();
    for (auto& part : file.parts)
        if (auto* section = std::get_if<SectionFile>(&part)) tube_offered(section->tube);
    if (has(Weight::ask)) return;
    out.unnoticed = reviewer.tried(file, "offered, nobody notices");
    out.right = reviewer.tried(file, "offered, built right");
}

/// What the offer says of the tube; the rest stays as on the sheet.
void Review::tube_offered(TubeFile& tube) {
    if (said().stock) tube.stock = said().stock;
    if (said().material) tube.material = said().material;
    if (said().length) tube.length = said().length;
    const auto* material = tube.material ? tables.of<Material>().find(*tube.material) : nullptr;
    const bool carbon = material != nullptr && material->family == Family::steel;
    if (const auto* stock = tube.stock ? tables.of<StockTube>().find(*tube.stock) : nullptr;
        stock != nullptr && material != nullptr && stock->material_group != word_of(material->family) && !said().stock) {
        // The sheet's row is of another metal: the same size where it is stocked.
        const auto other = std::string(word_of(material->family)) + tube.stock->substr(tube.stock->find(' '));
        if (tables.of<StockTube>().find(other) != nullptr) tube.stock = other;
    }
    if (const auto* stock = said().stock ? tables.of<StockTube>().find(*said().stock) : nullptr;
        stock != nullptr && material != nullptr && !said().material && stock->material_group != word_of(material->family))
        say(rules::find("class-unknown"), Weight::ask, fmt::format("{}: of which alloy or steel is it?", stock->name));
    if (!carbon) tube.coating.reset();
    if (!said().finish || !carbon) return;
    if (tables.of<Coating>().find(*said().finish) != nullptr) {
        tube.coating = said().finish;
    } else if (offer().coating == "plain" || *said().finish == "none") {
        tube.coating.reset();
        say(rules::find("bare-outdoors"), Weight::refuse, "a bare steel tube rusts inside the rail, where nobody sees it");
    } else if (offer().coating == "hot-dip galvanised") {
        const auto* own = tube.coating ? tables.of<Coating>().find(*tube.coating) : nullptr;
        const auto* stock = tube.stock ? tables.of<StockTube>().find(*tube.stock) : nullptr;
        const auto holds = [&](const Row<Coating>& row) {
            return row.kind == CoatingKind::hot_dip && stock != nullptr &&
                   (!row.steel_thickness_above || stock->wall > *row.steel_thickness_above) &&
                   (!row.steel_thickness_up_to || stock->wall <= *row.steel_thickness_up_to);
        };
        if (own != nullptr && holds(*own)) return;
        for (const auto& row : tables.of<Coating>().rows)
            if (holds(row)) {
                tube.coating = row.name;
                return;
            }
    } else {
        say(rules::find("finish-unknown"), Weight::ask,
            fmt::format("\"{}\": which row of the table coatings is it?", shown(*said().finish)));
    }
}

void Review::layer() {
    if (said().used.value_or(false)) say(rules::find("used-part"), Weight::refuse, "what was pressed once has flowed once");
    if (base.layers.empty()) {
        say(rules::find("cannot-be-built"), Weight::refuse,
            "the joint file has no layer that it could stand for: a layer where none was is another joint");
        return;
    }
    if (offer().layer == nullptr) {
        say(rules::find("finish-unknown"), Weight::ask, "which row of the table layers is it? An offer of a layer names it as material");
        return;
    }
    auto file = sheet();
    bool changed = false;
    for (auto& part : file.parts)
        if (auto* layer = std::get_if<LayerFile>(&part)) {
            if (layer->material != offer().layer->name) {
                changed = true;
                layer->thickness.reset();
            }
            layer->material = offer().layer->name;
        }
    if (changed) {
        file.overrides.slip_factor.reset();
        file.overrides.creep_loss_fraction.reset();
    }
    paste();
    out.unnoticed = reviewer.tried(file, "offered, nobody notices");
    out.right = reviewer.tried(file, "offered, built right");
}

}  // namespace faywright
