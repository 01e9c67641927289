// SPDX-License-Identifier: MIT
#include "assess/substitution_review.hpp"
#include "assess/tightening_plan.hpp"

#include "quantity/characters.hpp"
#include "quantity/text.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace faywright {

namespace {

/// Whether a paste is told to hold what is noble beside aluminium, and not told to be free of it.
bool holds_copper_or_graphite(const std::string& text) {
    const auto words = lowered(text);
    for (const auto* noble : {"copper", "kupfer", "bronze", "brass", "graphite", "graphit"})
        if (const auto at = words.find(noble); at != std::string::npos) {
            const auto after = words.substr(at + std::string_view(noble).size(), 5);
            const auto before = words.substr(at < 12 ? 0 : at - 12, std::min<std::size_t>(at, 12));
            const bool denied = after == "-free" || after == " free" || after.starts_with("frei") || before.ends_with("no ") ||
                                before.ends_with("non-") || before.ends_with("free of ") || before.ends_with("without ") ||
                                before.ends_with("ohne ");
            const bool denied_again = before.ends_with("not ") && (after == "-free" || after == " free");
            if (!denied || denied_again) return true;
        }
    return (" " + words + " ").find(" cu ") != std::string::npos || words.starts_with("cu-");
}

bool is_digit(char c) { return c >= '0' && c <= '9'; }

}  // namespace

const Row<BoltClass>* class_row(const Tables& tables, const std::string& name, Length diameter) {
    for (const auto& row : tables.of<BoltClass>().rows)
        if (row.bolt_class == name && row.holds_for(diameter)) return &row;
    return nullptr;
}

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
    const auto& written = *said().marking;
    const auto words = lowered(written);
    const auto has_word = [&](std::string_view word) {
        for (auto at = words.find(word); at != std::string::npos; at = words.find(word, at + 1)) {
            const auto end = at + word.size();
            const auto letter = [](char c) { return c >= 'a' && c <= 'z'; };
            if ((at == 0 || !letter(words[at - 1])) && (end == words.size() || !letter(words[end]))) return true;
        }
        return false;
    };
    for (const auto* word : {"none", "no", "not", "unmarked", "blank", "without", "off", "invoice", "box", "unreadable", "-"})
        if (has_word(word) && (std::string_view(word) != "-" || words == "-"))
            return say(
                rules::find("no-mark"), Weight::refuse,
                fmt::format("marked \"{}\": without class and maker's mark what it stands is anybody's guess, whatever the invoice says",
                            shown(written)));
    if (part_class.empty()) return;
    // Numbers of the mark: one only, and it is the class, with its full stop or without; letters are the maker's and of the thread.
    std::vector<std::string> numbers;
    for (std::size_t at = 0; at < words.size();) {
        if (!is_digit(words[at])) {
            ++at;
            continue;
        }
        const auto end = std::min(words.find_first_not_of("0123456789.", at), words.size());
        numbers.push_back(words.substr(at, end - at));
        while (!numbers.back().empty() && numbers.back().back() == '.') numbers.back().pop_back();
        at = end;
    }
    auto wanted = lowered(part_class);
    if (const auto group = wanted.find('-'); group != std::string::npos && wanted.front() == 'a') {
        // "A4-80" holds the numbers 4 and 80.
        const bool whole = words.find(wanted) != std::string::npos && numbers.size() == 2;
        if (!whole)
            say(rules::find("wrong-mark"), Weight::refuse,
                fmt::format("it is marked \"{}\", the offer says {}: a mark that contradicts the papers is not believed", shown(written),
                            part_class));
        return;
    }
    auto without_stop = wanted;
    std::erase(without_stop, '.');
    const auto is_class = [&](const std::string& number) { return number == wanted || number == without_stop; };
    // A stainless nut: "A4-80" for class 80.
    const bool stainless_nut = is_stainless_nut(wanted) && words.front() == 'a' && numbers.size() == 2 && numbers.back() == wanted;
    if (numbers.empty())
        say(rules::find("wrong-mark"), Weight::refuse,
            fmt::format("it is marked \"{}\", which does not name class {}", shown(written), part_class));
    else if (!stainless_nut && std::none_of(numbers.begin(), numbers.end(), is_class))
        say(rules::find("wrong-mark"), Weight::refuse,
            fmt::format("it is marked \"{}\", the offer says class {}: a mark that contradicts the papers is not believed", shown(written),
                        part_class));
    else if (!stainless_nut && numbers.size() > 1)
        say(rules::find("wrong-mark"), Weight::ask, fmt::format("it is marked \"{}\": which of the numbers is the class?", shown(written)));
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
        if ((name == "AS 1110" || name == "AS 1111") && !said().fully_threaded)
            say(rules::find("unclear"), Weight::ask, fmt::format("{}: part 1, with a shank, or part 2, threaded to the head?", name));
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
    const bool as_specified = base.bolt.property_class.bolt_class == name;
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
    else if (dipped && hardness && *hardness >= 360.0)
        say(proven ? rules::find("certificate-shows") : rules::find("galvanised-high-strength"), proven ? Weight::change : Weight::ask,
            proven ? fmt::format("class {} galvanised: use it only if the certificate shows galvanising to ISO 10684", name)
                   : fmt::format("class {} galvanised: was it done to ISO 10684, pickling and bath controlled, and is there a certificate?",
                                 name));
    else if (dipped && hardness && *hardness >= 320.0 && !as_specified)
        say(rules::find("galvanised-high-strength"), Weight::note,
            fmt::format("class {} may have {} HV: cleaned with inhibited acid, or mechanically", name, *hardness));
    if (dipped && row != nullptr && row->ultimate_strength >= MPa(1000) && base.bolt.thread.diameter >= mm(27))
        say(rules::find("galvanised-high-strength"), Weight::ask,
            "10.9 from M27 on must not be galvanised at 530 degC and more: which bath was it?");
    if (hardness && *hardness > 390.0)
        say(rules::find("hydrogen-service"), Weight::refuse,
            fmt::format("class {} may have {} HV: wet, and beside zinc and aluminium, it breaks by hydrogen; {}", name, *hardness,
                        as_specified ? "the specification itself is to be changed" : "it is no upgrade here"));
    if (offer().low_carbon_martensite)
        say(rules::find("low-carbon-martensite"), dipped && name == "10.9" ? Weight::refuse : Weight::ask,
            dipped && name == "10.9"
                ? "the class underlined: tempered from 340 degC by the older edition, it loses its strength in a bath of 455 degC"
                : "the class underlined: which steel is it, and how was it tempered?");
    if (row != nullptr && row->is_carbon() && !row->preloadable && base.bolt.property_class.preloadable && *hardness <= 390.0)
        say(rules::find("no-preload-class"),
            row->ultimate_strength < base.bolt.property_class.ultimate_strength ? Weight::refuse : Weight::ask,
            row->ultimate_strength < base.bolt.property_class.ultimate_strength
                ? fmt::format("class {} is weaker than {} and not made for controlled preload, which is what holds this joint", name,
                              base.bolt.property_class.bolt_class)
                : fmt::format("class {} is outside the codes' preloaded bolts (8.8 and 10.9): will the certifying engineer take it?",
                              name));
    const bool stainless_not_preloaded = row != nullptr && !row->is_carbon() && base.bolt.property_class.is_carbon();
    if (stainless_not_preloaded)
        say(proven ? rules::find("certificate-shows") : rules::find("no-preload-class"), proven ? Weight::change : Weight::ask,
            proven ? fmt::format("{} preloaded: use it only if a tightening test of these bolts, nuts and paste (ISO 16047) shows the "
                                 "preload told here",
                                 name)
                   : fmt::format("{}: is there a tightening test of bolt, nut and paste (ISO 16047), and will the "
                                 "certifying engineer take it?",
                                 name));
    if (offer().undersize_thread && base.bolt.thread.diameter < mm(12))
        say(rules::find("undersize-thread"), Weight::refuse,
            fmt::format("{} cut undersize bears less than its class (ISO 10684, Annex A), which is not reckoned here",
                        base.bolt.thread.name));
    else if (offer().undersize_thread && said().nut_thread == NutThread::oversize)
        say(rules::find("undersize-thread"), Weight::refuse, "bolts marked U with nuts tapped oversize: both allowances together strip");
    else if (offer().undersize_thread)
        say(rules::find("undersize-thread"), Weight::change,
            "the thread is cut undersize (mark U): nuts tapped to standard go with it, and every nut marked Z or X leaves the bench");
}

void Review::bolt_finish() {
    if (said().bolt_class && offer().class_known && offer().is_stainless()) {
        const bool dry = offer().finish == nullptr || !offer().finish->lubricated;
        if (!base.bolt.finish.name.starts_with("stainless") || (dry && base.bolt.finish.lubricated))
            say(rules::find("galling"), Weight::change, galling_words(dry));
    } else if (offer().coating.empty() && !offer().inch_diameter) {
        const bool asked = std::any_of(offer().asked.begin(), offer().asked.end(), [](const auto& q) { return q.about == Topic::finish; });
        if (!asked && said().bolt_class) say(rules::find("finish-unknown"), Weight::ask, "which coating has it, and which lubricant?");
    } else if (as_delivered() == nullptr && !offer().inch_diameter) {
        say(rules::find("finish-unknown"), Weight::ask,
            fmt::format("{}: which friction, by test, and how thick a coat? The tables do not have it", offer().coating));
    }
    if (offer().coating == "plain")
        say(rules::find("bare-outdoors"), base.bolt.finish.kind == "plain" ? Weight::note : Weight::refuse,
            base.bolt.finish.kind == "plain" ? "as the specification itself"
                                             : "plain or blackened steel has nothing that keeps it from rusting on a trailer");
    const auto& foreign = offer().other_lubricant;
    if (foreign && !holds_copper_or_graphite(*foreign))
        say(rules::find("lubricant-unknown"), Weight::ask,
            fmt::format("{} with {}: which friction, tested to ISO 16047? More slip than reckoned overstresses the bolt at the same torque",
                        offer().coating, *foreign));
    else if (!foreign && !offer().is_stainless() && as_delivered() != nullptr && lubricated() != nullptr && needs_lubricant())
        say(rules::find("lubricant-unknown"), Weight::change,
            fmt::format("{}: the shop lubricates as for \"{}\"",
                        offer().finish == nullptr ? "the offer names no lubricant, taken as dry when delivered"
                                                  : "dry, its friction scatters widely and the threads may seize",
                        lubricated()->name));
    if (offer().coating == "zinc flake" && base.bolt.finish.kind != "zinc flake" && !foreign)
        say(rules::find("flake-lubricant"), Weight::note, "zinc flake brings its lubricant in the coat: add none");
    paste();
}

void Review::paste() {
    const auto words = said().lubricant.value_or("") + " " + said().finish.value_or("") + " " + said().designation.value_or("");
    const bool aluminium = std::any_of(base.plies.begin(), base.plies.end(), [](const Ply& p) { return p.is_aluminium(); });
    if (aluminium && holds_copper_or_graphite(words))
        say(rules::find("copper-paste"), Weight::change,
            "copper and graphite in the paste pit the aluminium: clean it off, and use a paste free of both");
}

/// Dry galvanised and dry stainless threads scatter and seize: built right they are lubricated, unless the sheet has them dry.
bool Review::needs_lubricant() const {
    const auto* greased = lubricated();
    const auto* delivered = as_delivered();
    return greased != nullptr && delivered != nullptr && greased != delivered && !delivered->lubricated &&
           delivered->name != base.bolt.finish.name;
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
    if (offer().is_stainless()) judge_stainless_group(said().bolt_class->substr(0, 2));
    if (offer().is_stainless() && base.coldest < degC(-20) && base.bolt.property_class.is_carbon())
        say(rules::find("temperature"), Weight::ask,
            fmt::format("stainless at {}, where its standard begins at -20 degC: will the certifying engineer take it?",
                        told(base.coldest)));
    if (!bolt_can_be_tried()) return;
    const auto& row = *class_row(tables, *said().bolt_class, base.bolt.thread.diameter);
    const auto& delivered = *as_delivered();
    const bool dipped = delivered.nut_oversize > mm(0);
    const bool family_differs = row.is_carbon() != base.bolt.property_class.is_carbon();

    // Nobody notices: nuts of the sheet, unless others come with the bolts, and the torque of the sheet.
    const bool thin = said().nut_class && is_thin_nut(*said().nut_class);
    if (thin)
        say(rules::find("nut-thin"), Weight::change,
            fmt::format("nuts of class {} are thin and strip: {}, as on the sheet", *said().nut_class, nut_words(base.bolt)));
    if (offer().lower_nut)
        say(rules::find("nut-soft"), Weight::change,
            fmt::format("nuts lower than ISO 4032 bear less, their class stands between bars: {}, as on the sheet", nut_words(base.bolt)));
    const auto nuts_with_them = thin || offer().lower_nut ? std::nullopt : said().nut_class;
    const bool nut_of_other_metal = nuts_with_them && is_stainless_nut(*nuts_with_them) == row.is_carbon();
    if (nut_of_other_metal)
        say(rules::find("mixed-finish"), Weight::change,
            fmt::format("nuts of class {} on {} are another metal: nuts of class {} of the same kind of steel", *nuts_with_them,
                        row.bolt_class, row.nut_class));
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
    keep_elongation(unnoticed);
    out.unnoticed = reviewer.tried(unnoticed, "offered, nobody notices");
    const auto cannot = [&](const std::string& why) {
        Trial trial;
        trial.title = out.unnoticed->title;
        trial.refused = why;
        out.unnoticed = std::move(trial);
    };
    const bool offered_too_tight = dipped && said().nut_thread == NutThread::standard && !offer().undersize_thread;
    if (offer().other_lubricant) cannot(fmt::format("what {} does to the friction is not known", *offer().other_lubricant));
    if (offered_too_tight) cannot("nuts tapped to standard do not go on a galvanised thread");
    if (dipped && base.bolt.nut_oversize == mm(0) && !offer().undersize_thread) {
        cannot("the sheet's nuts, tapped to standard, do not go on a galvanised thread");
        say(rules::find("nut-tight"), Weight::change,
            "the sheet's nuts are tapped to standard: nuts tapped oversize (mark Z or X) go with galvanised bolts");
    }
    if (offered_too_tight)
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
    const bool suits =
        !(family_differs && !nuts_with_them) && !nut_of_other_metal && is_nut_class_of(with_bolts, row) && nut_holds(with_bolts);
    const auto right_nut = suits ? with_bolts : row.nut_class;
    const bool loose = !dipped && unnoticed.bolt.nut_thread == NutThread::oversize;
    if (!suits) {
        if (family_differs && !nuts_with_them)
            say(rules::find("mixed-finish"), Weight::change,
                fmt::format("nuts of class {} of the same kind of steel go with them, not the sheet's {}", row.nut_class,
                            nut_words(base.bolt)));
        else if (!nut_of_other_metal && with_bolts != row.nut_class)
            say(rules::find("nut-soft"), Weight::change,
                fmt::format("a nut of class {} strips before a bolt of class {} breaks: nuts of class {}", with_bolts, row.bolt_class,
                            row.nut_class));
    }
    if (loose)
        say(rules::find("nut-loose"), Weight::change,
            fmt::format("the sheet's nuts are tapped oversize for thick zinc, which {} bolts do not have: nuts tapped to standard",
                        delivered.kind));
    const auto right_with = [&](const Row<Finish>& finish) {
        const bool same_strength_and_friction = finish.name == base.bolt.finish.name && row.name == base.bolt.property_class.name;
        auto file = with_bolt(same_strength_and_friction ? sheet() : sheet_without_torque(), finish);
        file.bolt.nut_class = right_nut;
        file.bolt.nut_thread.reset();
        return tried_right(file);
    };
    const auto* greased = lubricated();
    const bool needs_grease = needs_lubricant() || (offer().other_lubricant && greased != nullptr);
    out.right = right_with(needs_grease ? *greased : delivered);
    suggest(row, needs_grease ? *greased : delivered);
    if (row.ultimate_strength >= MPa(1000) && base.bolt.nut_washer && base.bolt.nut_washer->hardness_hv < 300.0 &&
        base.bolt.property_class.ultimate_strength < MPa(1000))
        say(rules::find("washer-soft"), Weight::change,
            fmt::format("washers of {} HV sink under class {}: washers of 300 HV", base.bolt.nut_washer->hardness_hv, row.bolt_class));
    locking();
}

/// Tightened as suits it, and never harder than the other parts were checked for.
Trial Review::tried_right(JointFile file) const {
    auto out = reviewer.tried(file, "offered, built right");
    if (file.tightening.torque || !out.is_built() || out.assembled_greatest <= specified().assembled_greatest) return out;
    const auto share = static_cast<double>(specified().assembled_greatest / out.assembled_greatest);
    if (torque_counts()) {
        file.tightening.torque = on_the_wrench(out.torque * share * rounding);
    } else {
        file.tightening.proof_utilisation = std::floor(100.0 * file.tightening.proof_utilisation * share) / 100.0;
    }
    auto less = reviewer.tried(file, out.title);
    return less.is_built() ? less : out;
}

/// Elongation and angle stay as on the sheet, and with them the preload, where nobody notices.
void Review::keep_elongation(JointFile& file) const {
    if (torque_counts()) return;
    const auto own = reviewer.tried(file, "");
    if (!own.is_built()) return;
    file.tightening.proof_utilisation *= static_cast<double>(specified().assembled_greatest / own.assembled_greatest);
}

/// Where it is too weak: what of the same kind would do.
void Review::suggest(const BoltClass& offered, const Row<Finish>& finish) {
    if (!specified().holds || !out.right || !out.right->is_built() || out.right->holds) return;
    const Row<BoltClass>* weakest = nullptr;
    for (const auto& row : tables.of<BoltClass>().rows) {
        const bool carbon = offered.is_carbon();
        const bool same_steel = row.family == offered.family && (carbon || row.bolt_class.substr(0, 2) == offered.bolt_class.substr(0, 2));
        if (!row.holds_for(base.bolt.thread.diameter) || !same_steel || row.proof_strength <= offered.proof_strength) continue;
        if (row.is_carbon() && !row.preloadable) continue;
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
    if (base.hottest > degC(120))
        say(rules::find("prevailing-torque"), Weight::ask, "a ring of plastic serves to 120 degC: are they all of metal?");
    const auto length = out.right && out.right->is_built() ? out.right->joint->bolt.length : base.bolt.length;
    const auto beyond = length - base.grip();
    if (row != nullptr && !row->height)
        say(rules::find("too-short"), Weight::ask,
            fmt::format("how high are the locking nuts? {} reach beyond the grip, two pitches must show", told(beyond)));
    else if (row != nullptr && beyond < *row->height + 2.0 * base.bolt.thread.pitch)
        say(rules::find("too-short"), Weight::refuse,
            fmt::format("a locking nut of {} and two pitches need {}, and {} reach beyond the grip", told(*row->height),
                        told(*row->height + 2.0 * base.bolt.thread.pitch), told(beyond)));
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
