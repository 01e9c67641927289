// SPDX-License-Identifier: MIT
#include "assess/substitution_review.hpp"

#include "quantity/text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace faywright {

namespace {

std::string_view series_of(const std::optional<Row<Washer>>& washer) { return washer ? std::string_view(washer->series) : "none"; }

/// Least hardness of a washer under a bolt of this strength: ISO 7089, memory.
double least_hardness(const BoltClass& bolt) { return bolt.ultimate_strength >= MPa(1000) ? 300.0 : 200.0; }

}  // namespace

void Review::nut() {
    common_identity();
    const auto& bolt = base.bolt;
    const bool dipped = bolt.finish.nut_oversize > mm(0);
    const auto mark = said().marking.value_or("");
    if (mark == "none" || mark == "unmarked")
        say(rules::find("no-mark"), Weight::refuse, "the nut bears no mark: what it stands is anybody's guess");
    const bool thin = said().nut_class == "04" || said().nut_class == "05" ||
                      (offer().standard != nullptr && (offer().standard->name == "ISO 4035" || offer().standard->name == "ISO 4036"));
    if (thin) say(rules::find("nut-thin"), Weight::refuse, "a thin nut strips long before the bolt is at its preload");
    if (!said().nut_class && !thin) say(rules::find("nut-unknown"), Weight::ask, "which class has the nut?");
    const auto thread = said().nut_thread;
    if (dipped && thread == NutThread::standard)
        say(rules::find("nut-tight"), Weight::refuse,
            "tapped to standard: it does not go on the galvanised bolt, and retapping takes the zinc off");
    if (dipped && !thread && said().nut_class && !thin)
        say(rules::find("nut-tight"), Weight::ask, "is the nut tapped oversize for galvanised bolts, marked Z or X?");
    if (!dipped && thread == NutThread::oversize)
        say(rules::find("nut-loose"), Weight::refuse,
            "tapped oversize for thick zinc, which the bolt does not have: the threads overlap too little");
    // The coat of the nut meets that of the bolt.
    const auto coat = offer().coating.empty() && said().nut_class && std::atoi(said().nut_class->c_str()) >= 50 ? std::string("stainless")
                                                                                                                : offer().coating;
    if (!coat.empty() && coat != bolt.finish.kind)
        say(rules::find("mixed-finish"), Weight::refuse,
            fmt::format("a {} nut on a {} bolt: the friction of the pair is not known, and with it the clamp", coat, bolt.finish.kind));
    locking();
    paste();
    if (thin || !said().nut_class || has(Weight::refuse)) return;
    auto file = sheet();
    file.bolt.nut_class = said().nut_class;
    if (thread) file.bolt.nut_thread = thread;
    const bool locks = said().prevailing_torque_nut.value_or(false);
    auto unnoticed = file;
    if (const auto* row = tables.of<LockingNut>().find(bolt.thread.name); locks && row != nullptr)
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
    const auto own = std::string(series_of(under_nut ? under_nut : head));
    const auto series = said().series.value_or(own);
    const auto& rows = tables.of<Washer>();
    // ISO 7090 is ISO 7089 with a chamfer.
    const auto dimensions = series == "ISO 7090" ? std::string("ISO 7089") : series;
    const auto* row = rows.find(dimensions + " " + base.bolt.thread.name);
    const auto promised = offer().hardness_hv    ? offer().hardness_hv
                          : series == "ISO 7091" ? std::optional(100.0)
                          : row != nullptr       ? std::optional(row->hardness_hv)
                                                 : std::nullopt;
    const double wanted = std::max(least_hardness(base.bolt.property_class), under_nut ? under_nut->hardness_hv : head->hardness_hv);
    if (promised && *promised < wanted)
        say(rules::find("washer-soft"), Weight::refuse,
            fmt::format("{} HV where {} HV are wanted under class {}: it sinks, and the clamp with it", *promised, wanted,
                        base.bolt.property_class.bolt_class));
    if (said().material) {
        const bool stainless = said().material->starts_with("A2") || said().material->starts_with("A4");
        if (stainless && base.bolt.property_class.family == "carbon steel")
            say(rules::find("stainless-beside-aluminium"), Weight::ask,
                "a stainless washer lies bare on the aluminium or the zinc: its couple is not reckoned here; can it be had galvanised?");
    }
    if (!offer().coating.empty() && offer().coating == "plain")
        say(rules::find("bare-outdoors"), Weight::refuse, "a plain washer rusts, and its rust takes the zinc of its neighbours");
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
        if (auto* section = std::get_if<SectionFile>(&part)) {
            auto& tube = section->tube;
            if (said().stock) tube.stock = said().stock;
            if (said().material) tube.material = said().material;
            if (said().length) tube.length = said().length;
            if (said().finish) {
                tube.coating = said().finish;
                if (*said().finish == "none" || *said().finish == "bare" || *said().finish == "plain") tube.coating.reset();
            }
            const auto* material = tube.material ? tables.of<Material>().find(*tube.material) : nullptr;
            if (material != nullptr && material->family != Family::steel && !said().finish) tube.coating.reset();
            const auto* stock = tube.stock ? tables.of<StockTube>().find(*tube.stock) : nullptr;
            if (stock != nullptr && material != nullptr && stock->material_group != word_of(material->family)) {
                // Only the size of the row named so far is of another metal: the same size where it is stocked.
                const auto size = tube.stock->substr(tube.stock->find(' '));
                const auto other = std::string(word_of(material->family)) + size;
                if (!said().stock && tables.of<StockTube>().find(other) != nullptr) tube.stock = other;
            }
        }
    if (said().finish && *said().finish != "none" && *said().finish != "bare" && *said().finish != "plain" &&
        tables.of<Coating>().find(*said().finish) == nullptr) {
        say(rules::find("finish-unknown"), Weight::ask,
            fmt::format("\"{}\": which row of the table coatings is it?", shown(*said().finish)));
        return;
    }
    out.unnoticed = reviewer.tried(file, "offered, nobody notices");
    out.right = reviewer.tried(file, "offered, built right");
}

void Review::layer() {
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
