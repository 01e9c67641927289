// SPDX-License-Identifier: MIT
#include "assess/substitution_review.hpp"

#include "quantity/text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace faywright {

namespace {

/// Lives closer to each other than this are told as equal.
constexpr double notably_sooner = 0.8;

std::string check_words(const Trial::Check& check) { return check.part.empty() ? check.id : fmt::format("{} ({})", check.id, check.part); }

std::string utilisation_text(double utilisation) { return utilisation > 999.0 ? "over 999" : print_number(utilisation, 3); }

const SubstitutionRule* rule_of(const Trial::Check& check, const Joint& offered, const Joint& specified) {
    if (check.id == "nut-match") return rules::find("nut-soft");
    if (check.id == "protrusion") return rules::find("too-short");
    if (check.id == "free-thread") return rules::find("too-long");
    if (check.id == "bolt-shear" && offered.bolt.thread_length > specified.bolt.thread_length) return rules::find("thread-in-plane");
    return rules::find("does-not-hold");
}

}  // namespace

std::string told(const Value& value) { return print(value, 3); }

std::string galling_words(bool dry) {
    return fmt::format("anti-seize free of copper and graphite on thread and under the turned face,{} tightened slowly by hand",
                       dry ? " clean threads," : "");
}

bool is_nut_class_of(const std::string& nut_class, const BoltClass& bolt) {
    return std::atoi(nut_class.c_str()) >= std::atoi(bolt.nut_class.c_str());
}

std::string in_years_text(Duration life) {
    return life > years(200) ? std::string("200 years or more") : fmt::format("{} years", print_number(in_years(life), 3));
}

void Review::say(const SubstitutionRule* rule, Weight weight, std::string words) {
    const auto same =
        std::find_if(out.reasons.begin(), out.reasons.end(), [&](const Reason& r) { return r.rule == rule && r.weight == weight; });
    if (same == out.reasons.end())
        out.reasons.push_back({rule, weight, std::move(words)});
    else
        same->words += "; " + words;
}

bool Review::has(Weight weight) const {
    return std::any_of(out.reasons.begin(), out.reasons.end(), [&](const Reason& r) { return r.weight == weight; });
}

JointFile Review::sheet() const {
    auto file = reviewer.written_.file;
    if (torque_counts()) file.tightening.torque = specified().torque;
    return file;
}

JointFile Review::sheet_without_torque() const {
    auto file = reviewer.written_.file;
    file.tightening.torque.reset();
    return file;
}

/// What fails with the part, built right, and does not fail as specified.
void Review::judge_checks() {
    const auto& right = *out.right;
    for (const auto& check : right.checks) {
        if (check.passes) continue;
        const auto* before = specified().find_same(check);
        if (before != nullptr && !before->passes) continue;
        const auto as_before = before == nullptr ? std::string() : fmt::format(", {} as specified", print_number(before->utilisation, 3));
        say(rule_of(check, *right.joint, base), Weight::refuse,
            fmt::format("{} at {}{}{}", check_words(check), utilisation_text(check.utilisation),
                        torque_counts() && offer().part == OfferedPart::bolt ? " with " + told(right.torque) : "", as_before));
    }
}

void Review::judge_life() {
    const auto& right = *out.right;
    if (right.exposures.empty()) judge_coat_without_exposure();
    for (std::size_t i = 0; i < right.exposures.size(); ++i) {
        const auto& now = right.exposures[i];
        const auto& before = specified().exposures[i];
        const auto& first = now.first_to_go();
        const auto* own_before = before.find(first.name);
        const auto words =
            fmt::format("{} of {} is used up after {} in \"{}\", {} as specified", first.stake, first.name, in_years_text(first.life),
                        shown(now.exposure->name), in_years_text(own_before != nullptr ? own_before->life : before.first_to_go().life));
        const bool sooner = first.life < notably_sooner * before.first_to_go().life;
        // What kept the promise as specified, and does not now, though something else goes sooner still.
        for (const auto& member : now.members) {
            const auto* same = before.find(member.name);
            if (!member.passes && &member != &first && same != nullptr && same->passes)
                say(rules::find("too-soon"), Weight::refuse,
                    fmt::format("{} of {} is used up after {} in \"{}\", {} as specified", member.stake, member.name,
                                in_years_text(member.life), shown(now.exposure->name), in_years_text(same->life)));
        }
        if (!now.passes && (before.passes || sooner))
            say(rules::find("too-soon"), Weight::refuse,
                words + (before.passes ? fmt::format("; promised are {}", print(Value(base.life))) : "; neither keeps the promise"));
        else if (sooner && first.life < years(200))
            say(rules::find("worse-life"), Weight::note, words + "; the promise is kept");
    }
    const bool new_stainless = !right.joint->bolt.property_class.is_carbon() && base.bolt.property_class.is_carbon();
    if (!new_stainless || right.exposures.empty()) return;
    // The wall round the bolts is what a stainless bolt drives; it cannot be renewed.
    const auto at_the_bolts = [](const ExposureOutlook& exposure) {
        const MemberOutlook* least = nullptr;
        for (const auto& m : exposure.members)
            if (m.is_wall && m.name.ends_with(" at bolts") && (least == nullptr || m.life < least->life)) least = &m;
        return least;
    };
    bool worse = false, too_soon = false, kept = true;
    std::string words;
    for (std::size_t i = 0; i < right.exposures.size(); ++i) {
        const auto *now = at_the_bolts(right.exposures[i]), *before = at_the_bolts(specified().exposures[i]);
        if (now == nullptr || before == nullptr) continue;
        too_soon = too_soon || !now->passes;
        kept = kept && before->passes;
        worse = worse || now->life < notably_sooner * before->life;
        words += fmt::format("{}in \"{}\" the {} lasts {}, {} as specified", words.empty() ? "" : "; ",
                             shown(right.exposures[i].exposure->name), now->name, in_years_text(now->life), in_years_text(before->life));
    }
    if (words.empty()) return;
    if (too_soon)
        say(rules::find("stainless-beside-aluminium"), Weight::refuse,
            words + fmt::format("; promised are {}{}: isolate it first, faywright isolate ranks the ways", told(base.life),
                                kept ? "" : ", which neither keeps"));
    else if (worse)
        say(rules::find("stainless-beside-aluminium"), Weight::change,
            words + ": seal or cap the heads and the edges so that no film joins steel and aluminium; faywright isolate ranks the ways");
    else
        say(rules::find("stainless-beside-aluminium"), Weight::note,
            words + ": reckoned with as much wetted stainless as aluminium, and heads and nuts are less");
}

/// Where the joint file names no exposure, a thinner coat is a question.
void Review::judge_coat_without_exposure() {
    const auto zinc = [](const Bolt& bolt) { return bolt.finish.kind == "stainless" ? mm(1) : bolt.zinc(); };
    const auto &now = out.right->joint->bolt, &before = base.bolt;
    if (now.finish.kind == "stainless" && before.finish.kind != "stainless")
        say(rules::find("stainless-beside-aluminium"), Weight::ask,
            "the joint file names no exposure: does it live away from salt? faywright isolate tells what stainless does elsewhere");
    else if (zinc(now) < zinc(before))
        say(rules::find("worse-life"), Weight::ask,
            fmt::format("zinc of {} in place of {}, and the joint file names no exposure: where does it live?", print(Value(zinc(now)), 3),
                        print(Value(zinc(before)), 3)));
}

/// A2 where A4 is wanted, or where salt lies.
void Review::judge_stainless_group(const std::string& now) {
    const auto& before = base.bolt.property_class.bolt_class;
    if (now != "A2" && now != "A1" && now != "A3") return;
    if (before.starts_with("A") && !before.starts_with("A4") && !before.starts_with("A5")) return;
    for (const auto& exposure : specified().exposures)
        if (exposure.atmosphere.joint >= Corrosivity::c4)
            return say(rules::find("lower-stainless-group"), Weight::refuse,
                       fmt::format("{} in \"{}\", where the joint is in {}: A4 is wanted", now, shown(exposure.exposure->name),
                                   word_of(exposure.atmosphere.joint)));
    if (before.starts_with("A4"))
        say(rules::find("lower-stainless-group"), specified().exposures.empty() ? Weight::ask : Weight::note,
            specified().exposures.empty()
                ? fmt::format("{} in place of A4, and the joint file names no exposure: is it away from salt?", now)
                : fmt::format("{} in place of A4: enough away from salt and salted roads", now));
}

void Review::judge_specified() {
    const auto& own = specified();
    if (!own.holds)
        say(rules::find("fails-already"), Weight::refuse,
            fmt::format("{} stands at {}: mend the joint first", own.governing, utilisation_text(own.utilisation)));
    for (const auto& exposure : own.exposures)
        if (!exposure.passes)
            say(rules::find("fails-already"), Weight::refuse,
                fmt::format("{} of {} lasts {} in \"{}\", promised are {}: isolate or coat it first", exposure.first_to_go().stake,
                            exposure.first_to_go().name, in_years_text(exposure.first_to_go().life), shown(exposure.exposure->name),
                            told(base.life)));
}

/// What becomes of it where nobody notices, besides stress and slip.
void Review::judge_unnoticed() {
    const auto& unnoticed = *out.unnoticed;
    std::string words;
    for (const auto& check : unnoticed.checks) {
        const auto* before = specified().find(check.id);
        const bool told_already = check.id == "slip" || check.id == "bolt-assembly-stress";
        if (check.passes || told_already || before == nullptr || !before->passes || words.find(check.id) != std::string::npos) continue;
        words += fmt::format("{}{} at {}", words.empty() ? "" : ", ", check.id, utilisation_text(check.utilisation));
    }
    if (!words.empty()) say(rules::find("unnoticed-fails"), Weight::change, words);
}

/// Checks that pass, but nearer to their limit.
void Review::judge_reserve() {
    constexpr double notably = 0.05, near = 0.8;
    std::string words;
    for (const auto& check : out.right->checks) {
        const auto* before = specified().find_same(check);
        if (!check.passes || before == nullptr || check.utilisation < near || check.utilisation < before->utilisation + notably) continue;
        words += fmt::format("{}{} at {}, {} as specified", words.empty() ? "" : "; ", check_words(check),
                             utilisation_text(check.utilisation), utilisation_text(before->utilisation));
    }
    if (!words.empty()) say(rules::find("less-reserve"), Weight::note, words);
}

void Review::judge_trials() {
    judge_specified();
    if (!out.right) return;
    const auto& right = *out.right;
    if (!right.is_built()) {
        const auto* rule = right.refused_code == "geometry.grip"     ? rules::find("too-short")
                           : right.refused_code == "geometry.thread" ? rules::find("too-long")
                                                                     : rules::find("cannot-be-built");
        say(rule, Weight::refuse, right.refused);
        return;
    }
    judge_checks();
    judge_reserve();
    judge_life();
    if (offer().part == OfferedPart::bolt) {
        const auto longer = right.joint->bolt.length - base.bolt.length;
        if (longer > 2.0 * base.bolt.thread.diameter)
            say(rules::find("sticks-out"), Weight::ask,
                fmt::format("by {} beyond the nut, where it snags and is struck: can {} be had?", told(longer), told(base.bolt.length)));
        else if (longer > mm(0))
            say(rules::find("sticks-out"), Weight::note, fmt::format("by {} beyond the nut: mind ground and hoses", told(longer)));
        const auto* shear = right.find("bolt-shear");
        const auto* before = specified().find("bolt-shear");
        if (right.joint->bolt.thread_length > base.bolt.thread_length && shear != nullptr && before != nullptr &&
            shear->utilisation > 1.01 * before->utilisation)
            say(rules::find("thread-in-plane"), Weight::note,
                fmt::format("bolt-shear at {}, {} as specified", print_number(shear->utilisation, 3),
                            print_number(before->utilisation, 3)));
    }
    if (!out.unnoticed || !out.unnoticed->is_built()) return;
    judge_unnoticed();
    const auto& unnoticed = *out.unnoticed;
    const auto how = torque_counts() ? told(unnoticed.torque) : std::string("the sheet's elongation or angle");
    if (!torque_counts() && abs(right.assembled_greatest - unnoticed.assembled_greatest) > 0.01 * unnoticed.assembled_greatest)
        say(rules::find("own-torque"), Weight::change,
            fmt::format("elongation or angle for {} to {}, not {} to {}", told(right.assembled_least), told(right.assembled_greatest),
                        told(specified().assembled_least), told(specified().assembled_greatest)));
    if (torque_counts() && abs(right.torque - specified().torque) > 0.005 * specified().torque)
        say(rules::find("own-torque"), Weight::change, fmt::format("{}, not {}", told(right.torque), told(specified().torque)));
    if (unnoticed.bolt_stress > 1.0 && specified().bolt_stress <= 1.0)
        say(rules::find("old-torque-yields"), Weight::change,
            fmt::format("{} takes it to {} of its 0.2 % limit, {} as specified", how, print_number(unnoticed.bolt_stress, 3),
                        print_number(specified().bolt_stress, 3)));
    if (specified().slip && unnoticed.slip && *specified().slip <= 1.0 && *unnoticed.slip > 1.0)
        say(rules::find("old-torque-loosens"), Weight::change,
            fmt::format("{} gives {} to {}, {} to {} as specified: slip at {}", how, told(unnoticed.assembled_least),
                        told(unnoticed.assembled_greatest), told(specified().assembled_least), told(specified().assembled_greatest),
                        utilisation_text(*unnoticed.slip)));
}

void Review::questions() {
    std::string not_said;
    const auto missing = [&](bool is, const std::string& words) {
        if (is) not_said += (not_said.empty() ? "" : ", ") + words;
    };
    const auto& s = said();
    if (offer().part == OfferedPart::bolt) {
        missing(!s.size && !offer().inch_diameter, "size " + base.bolt.thread.name);
        missing(!s.length, "length " + told(base.bolt.length));
        missing(!s.standard && !s.fully_threaded, "head and thread length of the standard");
        missing(!s.test_report, "certificate");
    } else if (offer().part == OfferedPart::nut || offer().part == OfferedPart::washer) {
        missing(!s.size && !offer().inch_diameter, "size " + base.bolt.thread.name);
        missing(offer().part == OfferedPart::nut && offer().coating.empty(), "finish");
        missing(offer().part == OfferedPart::washer && !s.series, "series");
    } else if (offer().part == OfferedPart::tube) {
        missing(!s.stock, "section");
        missing(!s.material, "material");
    }
    if (!not_said.empty()) say(rules::find("not-stated"), Weight::note, not_said);
    for (const auto& question : offer().asked)
        say(rules::find("unclear"), question.about == Topic::papers || question.about == Topic::lubricant ? Weight::note : Weight::ask,
            question.text);
}

void Review::settle() {
    std::string worse;
    for (const auto& property : out.properties)
        if (property.standing == Standing::worse) worse += (worse.empty() ? "" : ", ") + property.name;
    if (!worse.empty() && !has(Weight::refuse) && !has(Weight::ask)) say(rules::find("worse-property"), Weight::note, worse);
    const auto place = [](const Reason& r) { return std::make_pair(static_cast<int>(r.weight), r.rule - rules::all.data()); };
    std::stable_sort(out.reasons.begin(), out.reasons.end(), [&](const Reason& a, const Reason& b) { return place(a) < place(b); });
    out.verdict = has(Weight::refuse)    ? Verdict::refuse
                  : has(Weight::ask)     ? Verdict::ask
                  : !out.changes.empty() ? Verdict::accept_with_changes
                                         : Verdict::accept;
    // An acceptance is governed by what differs, not by what is left to be confirmed.
    if (out.reasons.empty() || (out.is_accepted() && !has(Weight::change) && out.reasons.front().rule >= rules::find("not-stated")))
        out.reasons.insert(out.reasons.begin(), Reason{rules::find("same"), Weight::note, ""});
    for (const auto& reason : out.reasons)
        if (reason.weight == Weight::ask) out.questions.push_back(reason.words);
}

void Review::run() {
    switch (offer().part) {
        case OfferedPart::bolt: bolt(); break;
        case OfferedPart::nut: nut(); break;
        case OfferedPart::washer: washer(); break;
        case OfferedPart::tube: tube(); break;
        case OfferedPart::layer: layer(); break;
    }
    judge_trials();
    questions();
    compare();
    list_changes();
    settle();
    list_markings();
    list_papers();
}

}  // namespace faywright
