// SPDX-License-Identifier: MIT
#include "assess/substitution_review.hpp"

#include "quantity/text.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace faywright {

/// What of the shop sheet is not as it was, part by part.
void Review::list_changes() {
    if (!out.right || !out.right->is_built()) return;
    const auto& right = *out.right;
    const auto& now = right.joint->bolt;
    const auto& was = base.bolt;
    const auto change = [&](const char* what, const std::string& from, const std::string& to) {
        if (from != to) out.changes.push_back(fmt::format("{}: {}, not {}", what, to, from));
    };
    change("bolts", bolt_words(was), bolt_words(now));
    const auto tapped_standard = offer().undersize_thread ? fmt::format("class {}, tapped to standard", now.nut.nut_class) : nut_words(now);
    const bool no_more_oversize = was.nut_oversize > mm(0) && now.nut_oversize == mm(0) && now.nut.nut_class == was.nut.nut_class;
    change("nuts", nut_words(was), no_more_oversize ? tapped_standard + ", tapped to standard" : tapped_standard);
    if (torque_counts()) {
        change("torque", told(specified().torque), told(right.torque));
    }
    const auto lubricant = [](const Finish& finish, const std::string& name) {
        const auto comma = name.rfind(", ");
        return !finish.lubricated ? std::string("none") : comma == std::string::npos ? name : name.substr(comma + 2);
    };
    change("lubricant", lubricant(was.finish, was.finish.name), lubricant(now.finish, now.finish.name));
    if (said().fully_threaded && now.thread_length != was.thread_length && now.length == was.length)
        change("thread length", told(was.thread_length), told(now.thread_length));
    const auto washer = [](const std::optional<Row<Washer>>& w) { return w ? w->series : std::string("none"); };
    const auto offered_series =
        offer().part == OfferedPart::washer ? said().series.value_or(washer(now.nut_washer)) : washer(now.nut_washer);
    change("washers", washer(was.nut_washer), offered_series);
    if (base.section && right.joint->section) {
        const auto tube = [](const Tube& t) {
            return fmt::format("{} in {}, {}{}", t.stock ? t.stock->name : "as chosen", t.material.name,
                               t.coating ? t.coating->name : "bare", t.length ? ", cut to " + print(Value(*t.length), 5) : "");
        };
        if (offer().part == OfferedPart::tube) {
            auto own = base.section->tube;
            own.stock = *tables.of<StockTube>().find(specified().tube);
            change("tubes", tube(own), tube(right.joint->section->tube));
        }
    }
    if (!base.layers.empty() && !right.joint->layers.empty())
        change("layer between the faces", base.layers.front().material.name, right.joint->layers.front().material.name);
    struct Place {
        std::string_view rule, line;
    };
    // What a reason asks of the workshop goes to the line of the sheet that it belongs to, unless that line says it already.
    static constexpr Place places[] = {{"lubricant-unknown", "lubricant"},
                                       {"galling", "assembly"},
                                       {"copper-paste", "assembly"},
                                       {"washer-soft", "washers"},
                                       {"undersize-thread", "nuts"},
                                       {"nut-tight", "nuts"},
                                       {"nut-thin", "nuts"},
                                       {"certificate-shows", "papers"},
                                       {"prevailing-torque", "torque"},
                                       {"stainless-beside-aluminium", "isolation"}};
    static constexpr Place only_if_missing[] = {
        {"nut-soft", "nuts"}, {"nut-loose", "nuts"}, {"mixed-finish", "nuts"}, {"own-torque", "tightening"}};
    const auto has_line = [&](std::string_view line) {
        return std::any_of(out.changes.begin(), out.changes.end(), [&](const auto& c) { return c.starts_with(line); });
    };
    for (const auto& reason : out.reasons) {
        if (reason.weight != Weight::change) continue;
        for (const auto& place : places)
            if (reason.rule->id == place.rule) out.changes.push_back(fmt::format("{}: {}", place.line, reason.words));
        for (const auto& place : only_if_missing)
            if (reason.rule->id == place.rule && !has_line(place.line) && !(place.line == "tightening" && torque_counts()))
                out.changes.push_back(fmt::format("{}: {}", place.line, reason.words));
    }
}

void Review::list_markings() {
    if (out.verdict == Verdict::refuse) return;
    const auto add = [&](std::string text) { out.markings.push_back(std::move(text)); };
    const bool bolt = offer().part == OfferedPart::bolt;
    const bool tried = out.right && out.right->is_built();
    if (bolt && said().bolt_class && offer().class_known) {
        if (offer().grade != nullptr) {
            if (offer().grade->marking)
                add(fmt::format("head: {} (grade {}), and the maker's mark", *offer().grade->marking, offer().grade->grade));
        } else {
            add(fmt::format("head: \"{}\" and the maker's mark{}", *said().bolt_class,
                            offer().undersize_thread ? ", and \"U\" for the thread cut undersize" : ""));
            if (offer().low_carbon_martensite) add("head: whether the class is underlined, and what steel that is by the certificate");
        }
    }
    if ((bolt || offer().part == OfferedPart::nut) && tried) {
        const auto& nut = out.right->joint->bolt;
        const bool oversize = nut.nut_oversize > mm(0) && !offer().undersize_thread;
        const auto group = offer().nut_group.value_or(nut.property_class.bolt_class.substr(0, 2));
        const auto marked = is_stainless_nut(nut.nut.nut_class) ? fmt::format("{}-{}", group, nut.nut.nut_class) : nut.nut.nut_class;
        add(fmt::format("nut: \"{}{}\"{} and the maker's mark", marked, oversize ? "Z" : "",
                        oversize                   ? " (or \"X\" in place of \"Z\"; of a sealed packet on its label)"
                        : nut.nut_oversize > mm(0) ? ", neither \"Z\" nor \"X\","
                                                   : ""));
    }
    if (offer().part == OfferedPart::washer) add("packet: standard and hardness, \"200 HV\" or \"300 HV\"; washers bear no mark of it");
    if (offer().part == OfferedPart::layer) add("packet: product, batch and date to be used by");
    if (offer().part == OfferedPart::tube) add("bar: grade and heat on the tag of the bundle");
}

void Review::list_papers() {
    const auto add = [&](std::string text) { out.papers.push_back(std::move(text)); };
    const auto part = offer().part;
    if (part == OfferedPart::bolt || part == OfferedPart::nut) {
        if (!said().test_report.value_or(false)) add("inspection certificate 3.1 to EN 10204 of the lot, with class and heat");
        const bool tried = out.right && out.right->is_built();
        if (offer().coating == "hot-dip galvanised") add("galvanising to ISO 10684: least local thickness and the nuts' tapping");
        if (offer().coating.ends_with("electroplate")) add("coating to ISO 4042: thickness, and from 360 HV on the verified process");
        if (offer().coating == "zinc flake") add("coating to ISO 10683: thickness, hours of salt spray, friction window");
        if (offer().is_stainless()) add("steel group and class to ISO 3506-1, and whether tests for controlled preload exist");
        if (tried && torque_counts() && out.right->joint->bolt.finish.name != base.bolt.finish.name)
            add("friction of bolt and nut of this lot with this lubricant, tested to ISO 16047");
    }
    if (part == OfferedPart::washer) add("hardness of the lot");
    if (part == OfferedPart::tube) add("inspection certificate 3.1 to EN 10204: grade, yield strength, tolerances");
    if (part == OfferedPart::layer)
        add("data sheet: pressure and temperatures it stands, creep under clamp, what it does to aluminium and zinc");
}

}  // namespace faywright
