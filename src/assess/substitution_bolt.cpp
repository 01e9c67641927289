// SPDX-License-Identifier: MIT
#include "assess/substitution_review.hpp"

#include "quantity/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace faywright {

namespace {

/// The row of a class for a diameter.
const Row<BoltClass>* class_row(const Tables& tables, const std::string& name, Length diameter) {
    for (const auto& row : tables.of<BoltClass>().rows)
        if (row.bolt_class == name && (!row.above_diameter || diameter > *row.above_diameter) &&
            (!row.up_to_diameter || diameter <= *row.up_to_diameter))
            return &row;
    return nullptr;
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

std::string lower(std::string text) {
    std::transform(text.begin(), text.end(), text.begin(), [](char c) { return c >= 'A' && c <= 'Z' ? static_cast<char>(c + 32) : c; });
    return text;
}

}  // namespace

void Review::common_identity() {
    const auto& size = base.bolt.thread.name;
    if (offer().inch_diameter)
        say(rules::find("inch-thread"), Weight::refuse,
            fmt::format(
                "{} offered for {}: no nut, tap or die of the one serves the other, and a nut forced on strips, even where the bolt "
                "of {} passes a hole of {}",
                offer().inch != nullptr ? offer().inch->name : said().size.value_or("an inch size"), size, told(*offer().inch_diameter),
                told(base.bolt.hole_diameter)));
    else if (offer().is_fine_thread() || (offer().standard != nullptr && offer().standard->fine))
        say(rules::find("fine-thread"), Weight::refuse,
            fmt::format("{} has a fine thread, {} here is coarse: nuts do not go on, stress area and torque differ",
                        said().size.value_or(offer().standard != nullptr ? offer().standard->name : ""), size));
    else if (said().size && *said().size != size)
        say(rules::find("other-size"), Weight::refuse,
            fmt::format("{} offered for {}: holes of {}, tubes, washers, nuts and torque are made for {}; it is another joint, to be put "
                        "into the joint file and checked",
                        *said().size, size, told(base.bolt.hole_diameter), size));
    if (said().used.value_or(false))
        say(rules::find("used-part"), Weight::refuse,
            "tightened before: its preload, its thread and its zinc are spent, and nobody sees how far");
}

void Review::mark(const std::string& part_class) {
    if (!said().marking) return;
    const auto words = lower(*said().marking);
    if (words == "none" || words == "no" || words == "unmarked" || words == "no mark" || words == "not marked" || words == "blank")
        return say(rules::find("no-mark"), Weight::refuse,
                   "it bears no mark: what it stands is anybody's guess, whatever the invoice says");
    if (part_class.empty()) return;
    // The mark holds the class; what follows it ("U", "Z", "underlined") has rules of its own.
    const auto first = words.find_first_of("0123456789");
    const auto wanted = lower(part_class);
    const auto at = words.find(wanted);
    const bool whole = at != std::string::npos && (at == 0 || !is_digit(words[at - 1])) &&
                       (at + wanted.size() == words.size() || !is_digit(words[at + wanted.size()]));
    if (first == std::string::npos)
        say(rules::find("wrong-mark"), Weight::refuse,
            fmt::format("it is marked \"{}\", which does not name class {}", *said().marking, part_class));
    else if (!whole)
        say(rules::find("wrong-mark"), Weight::refuse,
            fmt::format("it is marked \"{}\", the offer says class {}: a mark that contradicts the papers is not believed", *said().marking,
                        part_class));
}

void Review::bolt_identity() {
    common_identity();
    if (offer().grade == nullptr) mark(offer().class_known ? said().bolt_class.value_or("") : "");
    if (!said().bolt_class)
        say(rules::find("class-unknown"), Weight::ask, "which property class has it, and is it marked on the head?");
    else if (offer().inch_diameter == std::nullopt && offer().class_known &&
             class_row(tables, *said().bolt_class, base.bolt.thread.diameter) == nullptr && !has(Weight::refuse))
        say(rules::find("inch-thread"), Weight::refuse,
            fmt::format("\"{}\" is a grade of inch bolts, or not made in {}", *said().bolt_class, base.bolt.thread.name));
    if (offer().assembly && *offer().assembly != "EN 15048")
        say(rules::find("other-head"), Weight::refuse,
            fmt::format("{} is a set of bolt, nut and washers of one maker, with a torque of its own: it is put into a joint file of its "
                        "own, with its certificate",
                        *offer().assembly));
    else if (const auto* standard = offer().standard; standard != nullptr && standard->part == "bolt") {
        const auto& name = standard->name;
        if (name == "ISO 4016" || name == "ISO 4018" || name.starts_with("AS 1111"))
            say(rules::find("coarse-grade"), Weight::refuse,
                fmt::format("{} is of product grade C: its shank and thread are outside what is reckoned here; ask for {}", name,
                            name == "ISO 4018" || name == "AS 1111.2" ? "ISO 4017" : "ISO 4014"));
        else if (name != "ISO 4014" && name != "ISO 4017" && !name.starts_with("AS 1110") && !standard->fine && !offer().inch_diameter)
            say(rules::find("other-head"), Weight::refuse,
                fmt::format("{} ({}) has another head than the hexagon this joint is checked with", name, standard->title));
    }
}

void Review::bolt_steel() {
    if (!said().bolt_class || !offer().class_known) return;
    const auto* row = class_row(tables, *said().bolt_class, base.bolt.thread.diameter);
    const auto hardness = offer().grade != nullptr ? std::optional(offer().grade->hardness_most_hv)
                          : row != nullptr         ? row->hardness_most_hv
                                                   : std::nullopt;
    const bool proven = said().test_report.value_or(false);
    const bool electroplated = offer().coating.ends_with("electroplate"), dipped = offer().coating == "hot-dip galvanised";
    const auto& name = *said().bolt_class;
    if (electroplated && hardness && *hardness > 390.0)
        say(rules::find("hydrogen-electroplate"), Weight::refuse,
            fmt::format("class {} may have {} HV: electroplated it takes up hydrogen and can break without warning", name, *hardness));
    else if (electroplated && hardness && *hardness >= 360.0)
        say(proven ? rules::find("certificate-shows") : rules::find("hydrogen-electroplate"), proven ? Weight::change : Weight::ask,
            proven
                ? fmt::format("class {} may have {} HV: use it only if the certificate shows the verified process, or a test for delayed "
                              "fracture of the lot",
                              name, *hardness)
                : fmt::format("class {} may have {} HV, from 360 HV on the process must be verified: is there a certificate of it, or a "
                              "test for delayed fracture of the lot?",
                              name, *hardness));
    if (dipped && hardness && *hardness > 390.0)
        say(rules::find("galvanised-high-strength"), Weight::refuse,
            fmt::format("class {} is never hot-dip galvanised: pickling and bath embrittle it", name));
    else if (dipped && hardness && *hardness > 360.0)
        say(proven ? rules::find("certificate-shows") : rules::find("galvanised-high-strength"), proven ? Weight::change : Weight::ask,
            proven ? fmt::format("class {} galvanised: use it only if the certificate shows galvanising to ISO 10684", name)
                   : fmt::format("class {} galvanised: was it done to ISO 10684, pickling and bath controlled, and is there a certificate?",
                                 name));
    if (hardness && *hardness > 390.0)
        say(rules::find("hydrogen-service"), Weight::refuse,
            fmt::format("class {} may have {} HV: wet, and beside zinc and aluminium, it breaks by hydrogen; it is no upgrade here", name,
                        *hardness));
    if (offer().low_carbon_martensite)
        say(rules::find("low-carbon-martensite"), dipped ? Weight::refuse : Weight::ask,
            dipped
                ? "low-carbon martensite, tempered from 340 degC, loses its strength in a bath of 450 degC"
                : "low-carbon martensite relaxes and tempers sooner than alloy steel: can it be had in the steel of the specified class?");
    if (row != nullptr && row->family == "carbon steel" && !row->preloadable && base.bolt.property_class.preloadable && *hardness <= 390.0)
        say(rules::find("no-preload-class"),
            row->ultimate_strength < base.bolt.property_class.ultimate_strength ? Weight::refuse : Weight::ask,
            row->ultimate_strength < base.bolt.property_class.ultimate_strength
                ? fmt::format("class {} is weaker than {} and not made for controlled preload, which is what holds this joint", name,
                              base.bolt.property_class.bolt_class)
                : fmt::format("class {} is outside the codes' preloaded bolts (8.8 and 10.9): will the certifying engineer take it?",
                              name));
    if (offer().undersize_thread)
        say(rules::find("undersize-thread"), Weight::change,
            "the thread is cut undersize (mark U): nuts tapped to standard go with it, and every nut marked Z or X leaves the bench");
}

void Review::bolt_finish() {
    if (said().bolt_class && offer().class_known && offer().is_stainless()) {
        const bool dry = offer().finish == nullptr || !offer().finish->lubricated;
        if (!base.bolt.finish.name.starts_with("stainless") || dry)
            say(rules::find("galling"), Weight::change,
                dry ? "anti-seize free of copper on thread and under the turned face, clean threads, "
                      "tightened slowly by hand"
                    : "anti-seize free of copper on thread and under the turned face, tightened slowly by "
                      "hand");
    } else if (offer().coating.empty() && !offer().inch_diameter) {
        const bool asked = std::any_of(offer().asked.begin(), offer().asked.end(), [](const auto& q) { return q.about == Topic::finish; });
        if (!asked && said().bolt_class) say(rules::find("finish-unknown"), Weight::ask, "which coating has it, and which lubricant?");
    } else if (as_delivered() == nullptr && !offer().inch_diameter) {
        say(rules::find("finish-unknown"), Weight::ask,
            fmt::format("{}: which friction, by test, and how thick a coat? The tables do not have it", offer().coating));
    }
    if (offer().coating == "plain")
        say(rules::find("bare-outdoors"), Weight::refuse, "plain or blackened steel has nothing that keeps it from rusting on a trailer");
    if (offer().finish == nullptr && !offer().is_stainless() && as_delivered() != nullptr && lubricated() != nullptr &&
        as_delivered() != lubricated() && !said().lubricant)
        say(rules::find("lubricant-unknown"), Weight::change,
            fmt::format("the offer names no lubricant: taken as dry when delivered; the shop lubricates as for \"{}\"",
                        lubricated()->name));
    if (offer().coating == "zinc flake" && base.bolt.finish.kind != "zinc flake")
        say(rules::find("flake-lubricant"), Weight::note, "zinc flake brings its lubricant in the coat: add none");
    paste();
}

void Review::paste() {
    const auto words = lower(said().lubricant.value_or("") + " " + said().name.value_or("") + " " + said().finish.value_or("") + " " +
                             said().designation.value_or(""));
    const bool aluminium = std::any_of(base.plies.begin(), base.plies.end(), [](const Ply& p) { return p.is_aluminium(); });
    if (aluminium && words.find("copper") != std::string::npos && words.find("copper-free") == std::string::npos &&
        words.find("copper free") == std::string::npos && words.find("free of copper") == std::string::npos &&
        words.find("without copper") == std::string::npos)
        say(rules::find("copper-paste"), Weight::change,
            "copper in the paste plates out on the aluminium and pits it: a paste free of copper");
}

const Row<Finish>* Review::as_delivered() const {
    if (offer().finish != nullptr) return offer().finish;
    const Row<Finish>* first = nullptr;
    for (const auto& row : tables.of<Finish>().rows) {
        if (row.kind != offer().coating) continue;
        if (!row.lubricated) return &row;
        if (first == nullptr) first = &row;
    }
    return first;
}

const Row<Finish>* Review::lubricated() const {
    if (offer().finish != nullptr && offer().finish->lubricated) return offer().finish;
    const auto& own = base.bolt.finish;
    const auto comma = own.name.rfind(", ");
    const Row<Finish>* first = nullptr;
    for (const auto& row : tables.of<Finish>().rows) {
        if (row.kind != offer().coating || !row.lubricated) continue;
        if (comma != std::string::npos && row.name == row.kind + own.name.substr(comma)) return &row;
        if (first == nullptr) first = &row;
    }
    return first;
}

bool Review::bolt_can_be_tried() const {
    return as_delivered() != nullptr && said().bolt_class && offer().class_known && offer().grade == nullptr && !offer().inch_diameter &&
           (!said().size || *said().size == base.bolt.thread.name) &&
           class_row(tables, *said().bolt_class, base.bolt.thread.diameter) != nullptr;
}

JointFile Review::with_bolt(JointFile file, const Row<Finish>& finish) const {
    auto& bolt = file.bolt;
    const bool same_class = *said().bolt_class == bolt.bolt_class;
    bolt.bolt_class = *said().bolt_class;
    if (said().length) bolt.length = said().length;
    if (said().fully_threaded) bolt.fully_threaded = *said().fully_threaded;
    // A test or a coat ordered for the specified bolt says nothing of another.
    if (finish.name != bolt.finish) {
        auto& o = file.overrides;
        o.thread_friction_low = o.thread_friction_high = o.head_friction_low = o.head_friction_high = o.tightening_factor = std::nullopt;
        if (finish.kind != base.bolt.finish.kind) bolt.zinc_thickness.reset();
    }
    if (!same_class || finish.name != bolt.finish) bolt.rolled_after_heat_treatment = false;
    bolt.finish = finish.name;
    return file;
}

void Review::bolt_trials() {
    if (!bolt_can_be_tried()) return;
    const auto& row = *class_row(tables, *said().bolt_class, base.bolt.thread.diameter);
    const auto& delivered = *as_delivered();
    const bool dipped = delivered.nut_oversize > mm(0);
    const bool family_differs = (row.family == "carbon steel") != (base.bolt.property_class.family == "carbon steel");

    // Nobody notices: nuts of the sheet, unless others come with the bolts, and the torque of the sheet.
    const bool thin = said().nut_class && is_thin_nut(*said().nut_class);
    if (thin)
        say(rules::find("nut-thin"), Weight::change,
            fmt::format("nuts of class {} are thin and strip: {}, as on the sheet", *said().nut_class, nut_words(base.bolt)));
    const auto nuts_with_them = thin ? std::nullopt : said().nut_class;
    auto unnoticed = with_bolt(sheet(), delivered);
    if (nuts_with_them) unnoticed.bolt.nut_class = nuts_with_them;
    if (dipped)
        unnoticed.bolt.nut_thread.reset();
    else
        unnoticed.bolt.nut_thread =
            said().nut_thread.value_or(base.bolt.nut_oversize > mm(0) && !nuts_with_them ? NutThread::oversize : NutThread::standard);
    if (said().prevailing_torque_nut.value_or(false))
        if (const auto* locking_nut = tables.of<LockingNut>().find(base.bolt.thread.name))
            unnoticed.tightening.prevailing_torque = locking_nut->prevailing_torque;
    out.unnoticed = reviewer.tried(unnoticed, "offered, nobody notices");
    if (dipped && base.bolt.nut_oversize == mm(0) && !offer().undersize_thread) {
        Trial stuck;
        stuck.title = out.unnoticed->title;
        stuck.refused = "the sheet's nuts, tapped to standard, do not go on a galvanised thread";
        out.unnoticed = std::move(stuck);
        say(rules::find("nut-tight"), Weight::change,
            "the sheet's nuts are tapped to standard: nuts tapped oversize (mark Z or X) go with galvanised bolts");
    }
    if (dipped && said().nut_thread == NutThread::standard && !offer().undersize_thread)
        say(rules::find("nut-tight"), Weight::change,
            "the nuts offered with them are tapped to standard: order nuts tapped oversize (mark Z or X)");

    // Built right: a nut that suits, and a lubricant where it takes one.
    const auto nut_holds = [&](const std::string& nut_class) {
        auto trial = with_bolt(sheet_without_torque(), delivered);
        trial.bolt.nut_class = nut_class;
        trial.bolt.nut_thread.reset();
        const auto tried = reviewer.tried(trial, "");
        const auto* match = tried.find("nut-match");
        return !tried.is_built() || (match != nullptr && match->passes);
    };
    const auto with_bolts = nuts_with_them.value_or(base.bolt.nut.nut_class);
    const bool suits = !(family_differs && !nuts_with_them) && nut_holds(with_bolts);
    const auto right_nut = suits ? with_bolts : row.nut_class;
    const bool loose = !dipped && unnoticed.bolt.nut_thread == NutThread::oversize;
    if (!suits) {
        if (family_differs && !nuts_with_them)
            say(rules::find("mixed-finish"), Weight::change,
                fmt::format("nuts of class {} of the same kind of steel go with them, not the sheet's {}", row.nut_class,
                            nut_words(base.bolt)));
        else
            say(rules::find("nut-soft"), Weight::change,
                fmt::format("a nut of class {} strips before a bolt of class {} breaks: nuts of class {}", with_bolts, row.bolt_class,
                            row.nut_class));
    }
    if (loose)
        say(rules::find("nut-loose"), Weight::change,
            fmt::format("the sheet's nuts are tapped oversize for thick zinc, which {} does not have: nuts tapped to standard",
                        delivered.name));
    const auto right_with = [&](const Row<Finish>& finish) {
        const bool same_strength_and_friction = finish.name == base.bolt.finish.name && row.name == base.bolt.property_class.name;
        auto file = with_bolt(same_strength_and_friction ? sheet() : sheet_without_torque(), finish);
        file.bolt.nut_class = right_nut;
        file.bolt.nut_thread.reset();
        return tried_right(file);
    };
    const auto* greased = lubricated();
    const bool needs_grease = greased != nullptr && greased != &delivered && (offer().finish == nullptr || delivered.kind == "stainless");
    out.right = right_with(needs_grease ? *greased : delivered);
    if (!needs_grease && greased != nullptr && greased != &delivered && out.right->is_built() && !out.right->holds) {
        auto with_grease = right_with(*greased);
        if (with_grease.holds) {
            say(rules::find("lubricant-unknown"), Weight::change,
                fmt::format("dry, its friction scatters too much for this joint: lubricated as for \"{}\" it holds", greased->name));
            out.right = std::move(with_grease);
        }
    }
    suggest(row, needs_grease ? *greased : delivered);
    if (row.ultimate_strength >= MPa(1000) && base.bolt.nut_washer && base.bolt.nut_washer->hardness_hv < 300.0 &&
        base.bolt.property_class.ultimate_strength < MPa(1000))
        say(rules::find("washer-soft"), Weight::change,
            fmt::format("washers of {} HV sink under class {}: washers of 300 HV", base.bolt.nut_washer->hardness_hv, row.bolt_class));
    locking();
}

/// At a torque of its own, which never clamps the other parts harder than they were checked for.
Trial Review::tried_right(JointFile file) const {
    auto out = reviewer.tried(file, "offered, built right");
    if (!torque_counts() || file.tightening.torque || !out.is_built() || out.assembled_greatest <= specified().assembled_greatest)
        return out;
    const auto torque = out.torque * static_cast<double>(specified().assembled_greatest / out.assembled_greatest);
    const Moment mark = torque < Nm(10) ? Nm(0.1) : torque < Nm(100) ? Nm(1) : Nm(5);
    file.tightening.torque = std::floor(torque / mark * rounding) * mark;
    return reviewer.tried(file, out.title);
}

/// Where it is too weak: what of the same kind would do.
void Review::suggest(const BoltClass& offered, const Row<Finish>& finish) {
    if (!specified().holds || !out.right || !out.right->is_built() || out.right->holds) return;
    const Row<BoltClass>* weakest = nullptr;
    for (const auto& row : tables.of<BoltClass>().rows) {
        const bool fits = (!row.above_diameter || base.bolt.thread.diameter > *row.above_diameter) &&
                          (!row.up_to_diameter || base.bolt.thread.diameter <= *row.up_to_diameter);
        const bool carbon = offered.family == "carbon steel";
        const bool same_steel = row.family == offered.family && (carbon || row.bolt_class.substr(0, 2) == offered.bolt_class.substr(0, 2));
        if (!fits || !same_steel || row.proof_strength <= offered.proof_strength) continue;
        if (row.family == "carbon steel" && !row.preloadable) continue;
        if (weakest != nullptr && row.proof_strength >= weakest->proof_strength) continue;
        auto file = with_bolt(sheet_without_torque(), finish);
        file.bolt.bolt_class = row.bolt_class;
        file.bolt.nut_class = row.nut_class;
        file.bolt.nut_thread.reset();
        const auto trial = tried_right(file);
        if (!trial.holds) continue;
        weakest = &row;
        out.suggestion = fmt::format("{} of the same size and finish holds, at {}: can it be had?", row.bolt_class, told(trial.torque));
    }
}

void Review::locking() {
    if (!said().prevailing_torque_nut.value_or(false)) return;
    const auto* row = tables.of<LockingNut>().find(base.bolt.thread.name);
    say(rules::find("prevailing-torque"), Weight::change,
        fmt::format(
            "locking nuts take torque before they clamp{}: measure it on this lot as the nut runs down, and add it to the torque of the "
            "sheet; they are used once",
            row == nullptr ? "" : fmt::format(", up to {} in {}", told(row->prevailing_torque), row->name)));
}

void Review::bolt() {
    bolt_identity();
    bolt_steel();
    bolt_finish();
    bolt_trials();
}

}  // namespace faywright
