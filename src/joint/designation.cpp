// SPDX-License-Identifier: MIT
#include "joint/designation.hpp"

#include "joint/designation_found.hpp"
#include "quantity/characters.hpp"

#include <algorithm>

namespace faywright {

namespace {

using namespace designation;

constexpr std::size_t most_bytes = 1000;

std::string any_of_these(const std::vector<std::string>& choices) {
    std::string out;
    for (std::size_t i = 0; i < choices.size(); ++i) out += (i == 0 ? "" : i + 1 == choices.size() ? " or " : ", ") + choices[i];
    return out;
}

/// Weighs what the words say against each other: what is certain goes into the offer, the rest is asked.
class Weighing {
public:
    explicit Weighing(Found& found) : found_(found) {}

    void settle() {
        settle_part();
        settle_standard();
        settle_size();
        settle_washer();
        settle_length();
        settle_nut_class();
        settle_bolt_class();
        settle_finish();
        settle_use();
        settle_series();
        for (const auto& number : found_.numbers) found_.unknown(number.token, {});
    }

private:
    using Part = OfferedPart;

    void settle_part() {
        found_.topic = Topic::part;
        for (const auto& [token, row] : found_.standards)
            if (row->part && (!row->assembly || found_.parts.empty())) found_.add_part(token, part_of(*row->part));
        const auto kinds = distinct(found_.parts);
        found_.out.part_known = true;
        if (kinds.size() == 1)
            found_.out.offer.part = part_of(kinds.front().value);
        else if (found_.says_part(Part::bolt))
            found_.out.offer.part = Part::bolt;  // nut and washer come with it
        else if (!kinds.empty()) {
            found_.out.part_known = false;
            found_.ask_which("part", kinds);
        } else if (!found_.lengths.empty() || !found_.grades.empty() ||
                   std::any_of(found_.classes.begin(), found_.classes.end(), [](const Said& said) { return !is_stainless(said.value); }))
            found_.out.offer.part = Part::bolt;
        else {
            found_.out.part_known = false;
            found_.ask("is it a bolt, a nut or a washer?");
        }
    }

    /// A standard of hexagon heads without flange.
    [[nodiscard]] bool is_plain_hexagon(const std::string& standard) const {
        const auto* row = found_.tables.of<ProductStandard>().find(standard);
        return row != nullptr && row->title.starts_with("hexagon") && row->title.find("flange") == std::string::npos;
    }

    /// Nuts and washers named with bolts, or bolts with nuts: they come along, and are not what is compared.
    void ask_about_companions() {
        for (const auto& [token, row] : found_.standards) {
            const auto name = row->successor.value_or(row->name);
            const bool usual = name == "ISO 4032" || name == "ISO 7089" || name == "ISO 7090";
            if (row->part && !row->assembly && part_of(*row->part) != found_.out.offer.part && (!usual || row->lower_nut))
                found_.ask(fmt::format("\"{}\" with a {}: is a {} of that standard to come along?", token, word_of(*found_.out.offer.part),
                                       *row->part),
                           true);
        }
    }

    bool is(Part part) const { return found_.out.offer.part == part; }

    void settle_standard() {
        found_.topic = Topic::standard;
        std::vector<Said> products;
        std::optional<bool> full;
        for (const auto& [token, row] : found_.standards) {
            const auto name = row->successor.value_or(row->name);
            if (row->assembly) found_.out.assembly = row->name;
            if (row->prevailing_torque) found_.out.offer.prevailing_torque_nut = true;
            const bool of_part = row->part && part_of(*row->part) == found_.out.offer.part;
            if (row->part == "washer") found_.out.offer.series = name;
            if (row->assembly || !of_part) continue;
            products.push_back({token, name});
            full = row->fully_threaded;
            found_.out.standard_as_written = row->name;
        }
        products = distinct(products);
        if (products.size() > 1) {
            found_.ask_which("standard", products);
            found_.out.standard_as_written.reset();
            full.reset();
        } else if (products.size() == 1)
            found_.out.offer.standard = products.front().value;
        else if (found_.out.assembly)
            found_.out.offer.standard = found_.out.standard_as_written = found_.out.assembly;
        if (found_.out.assembly == "EN 14399") found_.ask("EN 14399 without a part number: which part of it, and is it system HR or HV?");
        if (!found_.structural.empty() && !found_.out.assembly)
            found_.ask(fmt::format("\"{}\": is it of a set to EN 14399, with a torque of its own?", found_.structural.front().token), true);
        for (const auto& shape : found_.shapes)
            if (!products.empty() && is(Part::bolt) && is_plain_hexagon(products.front().value))
                found_.ask(fmt::format("\"{}\" beside {}: which head has it?", shape.token, products.front().token), true);
        ask_about_companions();
        if (products.empty() && !found_.out.assembly)
            for (const auto& shape : found_.shapes)
                found_.ask(fmt::format("\"{}\": to which standard, since its bearing face depends on it{}?", shape.token,
                                       shape.value == "bolt" ? " (EN 1665 and ISO 4162 differ)" : ""),
                           is(Part::bolt));
        const auto said = distinct(found_.threads);
        if (said.size() > 1) {
            found_.ask_which("thread length", said);
            full.reset();
        } else if (said.size() == 1 && full && *full != (said.front().value == "full")) {
            found_.ask(fmt::format("\"{}\" contradicts {}: is the bolt threaded to the head?", said.front().token, products.front().token),
                       true);
            full.reset();
        } else if (said.size() == 1)
            full = said.front().value == "full";
        if (is(Part::bolt)) found_.out.offer.fully_threaded = full;
    }

    void settle_size() {
        found_.topic = Topic::size;
        const auto metric = distinct(found_.metric);
        std::vector<Said> all = metric;
        for (const auto& inch : found_.inch)
            all.push_back({inch.token, inch.size + (inch.threads ? fmt::format("-{}", *inch.threads) : "")});
        all = distinct(all);
        if (all.size() > 1) return found_.ask_which("size", all);
        if (all.empty()) return;
        if (!found_.inch.empty()) return settle_inch_size(found_.inch.front());
        const auto& size = all.front();
        found_.out.offer.size = size.value;
        const auto* standard = standard_row();
        if (found_.tables.of<Thread>().find(size.value) == nullptr)
            found_.ask(size.value.find('x') == std::string::npos
                           ? fmt::format("\"{}\": {} is not in the table of threads; is it meant?", size.token, size.value)
                           : fmt::format("\"{}\": {} is a fine thread, which the table of threads does not have; is it meant?", size.token,
                                         size.value));
        else if (standard != nullptr && standard->fine) {
            found_.out.offer.size.reset();
            found_.ask(fmt::format("{} has fine threads only: which pitch of {}?", standard->name, size.value));
        } else if (standard != nullptr && standard->successor) {
            if (const auto width = standard->old_width(size.value))
                found_.ask(fmt::format("{} had {} across flats for {}, {} has {}: which is delivered?", standard->name, print(*width),
                                       size.value, *standard->successor, print(found_.tables.of<Thread>().find(size.value)->across_flats)));
        }
    }

    const Row<ProductStandard>* standard_row() const {
        return found_.out.standard_as_written ? found_.tables.of<ProductStandard>().find(*found_.out.standard_as_written) : nullptr;
    }

    void settle_inch_size(const Found::InchSize& inch) {
        found_.out.inch_diameter = inch.diameter;
        const auto series = distinct(found_.series);
        if (series.size() > 1) return found_.ask_which("thread series", series);
        std::vector<std::string> fitting, same;
        for (const auto& row : found_.tables.of<InchThread>().rows) {
            if (std::abs(in_um(row.diameter - inch.diameter)) > 1) continue;
            same.push_back(row.name);
            if ((!inch.threads || *inch.threads == static_cast<int>(row.threads_per_inch)) &&
                (series.empty() || series.front().value == row.series))
                fitting.push_back(row.name);
        }
        if (fitting.size() == 1)
            found_.out.offer.size = fitting.front();
        else if (fitting.size() > 1)
            found_.ask(fmt::format("\"{}\": {}?", inch.token, any_of_these(fitting)));
        else
            found_.ask(fmt::format("\"{}{}{}\" is not in the table of inch threads{}", inch.token, series.empty() ? "" : " ",
                                   series.empty() ? "" : series.front().value,
                                   same.empty() ? "; is it meant?" : ": is " + any_of_these(same) + " meant?"));
    }

    /// "ISO 7089-12-200 HV" has its size as a mere number; old standards name the hole.
    void settle_washer() {
        if (!is(Part::washer) || found_.out.offer.size || !found_.out.offer.series || found_.numbers.empty()) return;
        std::vector<Said> sizes;
        for (const auto& row : found_.tables.of<Washer>().rows) {
            const auto* thread = found_.tables.of<Thread>().find(row.size);
            const auto& series = *found_.out.offer.series;
            if (thread == nullptr || (row.series != series && !(series == "ISO 7090" && row.series == "ISO 7089"))) continue;
            const bool old = standard_row() != nullptr && standard_row()->successor.has_value();
            for (const auto& number : found_.numbers)
                if (std::abs(number.measure.value - in_mm(old ? row.inside_diameter : thread->diameter)) < 1e-6)
                    sizes.push_back({number.token, row.size});
        }
        if (sizes.size() != 1) {
            if (sizes.size() > 1) found_.ask_which("size", sizes);
            return;
        }
        found_.out.offer.size = sizes.front().value;
        found_.out.understood.push_back({sizes.front().token, "washer for " + sizes.front().value});
        std::erase_if(found_.numbers, [&](const Found::Number& number) { return number.token == sizes.front().token; });
    }

    void settle_length() {
        found_.topic = Topic::length;
        auto& lengths = found_.lengths;
        if (lengths.empty()) {
            if (!is(Part::bolt) || found_.metric.empty()) return;
            std::erase_if(found_.numbers, [&](const Found::Number& number) {
                const bool may_be = number.measure.unit == Measure::Unit::none && number.measure.value >= 5 && !number.behind_nut &&
                                    !is_steel_strength(number);
                if (may_be) found_.ask(fmt::format("is \"{}\" the length in mm?", number.token));
                return may_be;
            });
            return;
        }
        if (is(Part::nut) || is(Part::washer)) {
            for (const auto& [token, measure] : lengths)
                found_.ask(fmt::format("\"{}\": a {} has no length; what is {}?", token, word_of(*found_.out.offer.part), measure.digits));
            return;
        }
        for (const auto& [token, measure] : lengths) {
            const bool inch = !found_.inch.empty();
            if (measure.unit == Measure::Unit::none && (inch || measure.fraction))
                return found_.ask(fmt::format("\"{}\": is the length {} in inches?", token, measure.digits));
            if (measure.unit == Measure::Unit::none && std::abs(measure.value - std::round(measure.value)) > 1e-6)
                return found_.ask(fmt::format("\"{}\": is the length {} in mm?", token, measure.digits));
            if (std::abs(in_mm(measure.length() - lengths.front().second.length())) > 1e-6)
                return found_.ask(
                    fmt::format("two lengths are named, {} and {}: which is offered?", lengths.front().second.digits, measure.digits),
                    true);
        }
        const auto length = lengths.front().second.length();
        if (length < mm(5) || length > mm(1000))
            return found_.ask(fmt::format("\"{}\": a length of {} is not between 5 mm and 1000 mm; what is meant?", lengths.front().first,
                                          print(Value(length))));
        found_.out.offer.length = length;
    }

    bool is_steel_strength(const Found::Number& number) const { return !found_.stainless_classes("", "-" + number.measure.digits).empty(); }

    void settle_nut_class() {
        found_.topic = Topic::nut_class;
        auto list = found_.nut_classes;
        const bool nut = is(Part::nut) && found_.out.part_known;
        for (const auto& number : found_.numbers)
            if ((nut || number.behind_nut) && found_.is_nut_class(number.measure.digits) && !is_steel_strength(number) &&
                number.measure.unit == Measure::Unit::none)
                list.push_back({number.token, number.measure.digits});
        if (nut)
            for (const auto& said : found_.classes) {
                const auto* row = found_.class_row(said.value);
                if (is_stainless(said.value))
                    list.push_back({said.token, row->nut_class});
                else
                    found_.ask(fmt::format("\"{}\" is a class of bolts: is a nut of class {} meant?", said.token, row->nut_class));
            }
        if (nut)
            for (const auto& said : found_.grades)
                found_.ask(fmt::format("\"{}\" is a grade of bolts: which class has the nut?", said.token));
        const auto distinct_list = distinct(list);
        if (distinct_list.size() > 1) {
            found_.out.offer.marking.reset();
            return found_.ask_which("class of nut", distinct_list);
        }
        if (distinct_list.empty()) return;
        const auto& said = distinct_list.front();
        if (!nut && !found_.says_part(Part::nut) && std::any_of(found_.nut_classes.begin(), found_.nut_classes.end(), [](const Said& s) {
                return s.token.find_first_of("lLkKcC") != std::string::npos;
            }))
            return found_.ask(fmt::format("\"{}\" is a class of nuts: which class has the bolt?", said.token));
        found_.out.offer.nut_class = said.value;
        for (const auto& number : found_.numbers)
            if (number.token == said.token) found_.out.understood.push_back({said.token, "nut of class " + said.value});
        std::erase_if(found_.numbers, [&](const Found::Number& number) { return number.token == said.token; });
    }

    void settle_bolt_class() {
        found_.topic = Topic::bolt_class;
        const auto groups = distinct(found_.groups);
        auto all = distinct(found_.classes);
        std::string group = groups.empty() ? "" : groups.front().value;
        const bool steel_said = !groups.empty() || !found_.stainless.empty();
        if (groups.size() > 1) return found_.ask_which("steel", groups);
        for (const auto& said : all)
            if (steel_said && !(is_stainless(said.value) && said.value.starts_with(group))) {
                const auto& other = groups.empty() ? found_.stainless.front() : groups.front();
                return found_.ask(
                    fmt::format("\"{}\" and \"{}\" contradict each other: which material and class?", other.token, said.token), true);
            }
        if (is(Part::nut)) return ask_strength(group, steel_said && all.empty());
        if (is(Part::washer)) return;
        const auto grades = distinct(found_.grades);
        all.insert(all.end(), grades.begin(), grades.end());
        if (all.size() > 1) {
            found_.out.offer.marking.reset();
            return found_.ask_which("class", all);
        }
        if (all.empty()) return ask_strength(group, steel_said);
        const auto& said = all.front();
        const bool grade = !grades.empty();
        if (grade && !found_.metric.empty())
            return found_.ask(fmt::format("\"{}\" is a grade of inch bolts beside a metric thread: which class is meant?", said.token),
                              true);
        if (!grade && !is_stainless(said.value) && !found_.inch.empty())
            return found_.ask(fmt::format("\"{}\" is a class of metric bolts beside an inch thread: which grade is meant?", said.token),
                              true);
        found_.out.offer.bolt_class = said.value;
    }

    /// A stainless steel without its class, or a class without its steel.
    void ask_strength(const std::string& group, bool steel_said) {
        for (const auto& number : found_.numbers)
            if (is_steel_strength(number))
                found_.ask(
                    fmt::format("\"{}\": {}?", number.token, any_of_these(found_.stainless_classes(group, "-" + number.measure.digits))));
        std::erase_if(found_.numbers, [&](const Found::Number& number) { return is_steel_strength(number); });
        if (steel_said)
            found_.ask(fmt::format("\"{}\": {}?", found_.groups.empty() ? found_.stainless.front().token : found_.groups.front().token,
                                   any_of_these(found_.stainless_classes(group, ""))));
    }

    void settle_finish() {
        found_.topic = Topic::finish;
        const auto& finishes = found_.tables.of<Finish>().rows;
        const bool carbon =
            std::any_of(found_.classes.begin(), found_.classes.end(), [](const Said& said) { return !is_stainless(said.value); });
        const bool stainless =
            !found_.groups.empty() || !found_.stainless.empty() ||
            std::any_of(found_.classes.begin(), found_.classes.end(), [](const Said& said) { return is_stainless(said.value); });
        for (const auto& code : found_.codes)
            if (carbon && !stainless)
                found_.coatings.push_back({code.token, "zinc electroplate"});
            else
                found_.ask(fmt::format("\"{}\": the code of ISO 4042 for electroplated zinc, or stainless steel?", code.token));
        auto kinds = distinct(found_.coatings);
        const auto lubricants = distinct(found_.lubricants);
        found_.topic = Topic::lubricant;
        if (lubricants.size() > 1) found_.ask_which("lubricant", lubricants);
        found_.topic = Topic::finish;
        const auto lubricant = lubricants.size() == 1 ? std::optional(lubricants.front().value) : std::nullopt;
        if (stainless && std::any_of(kinds.begin(), kinds.end(), [](const Said& said) { return said.value != "stainless"; }))
            return found_.ask(fmt::format("\"{}\" on stainless steel: which material and finish?", kinds.front().token), true);
        if (kinds.size() > 1) return found_.ask_which("finish", kinds);
        for (const auto& said : distinct(found_.uncertain))
            if (kinds.size() == 1 && said.value.find(kinds.front().value) == std::string::npos)
                found_.ask(fmt::format("\"{}\" beside \"{}\": which finish is offered?", said.token, kinds.front().token), true);
        if (kinds.empty() && stainless && !carbon)
            kinds.push_back({(!found_.classes.empty()  ? found_.classes
                              : !found_.groups.empty() ? found_.groups
                                                       : found_.stainless)
                                 .front()
                                 .token,
                             "stainless"});
        if (kinds.empty()) {
            found_.out.offer.lubricant = lubricant;
            for (const auto& said : distinct(found_.uncertain))
                found_.ask(fmt::format("\"{}\": which finish, {}?", said.token, said.value));
            if (found_.uncertain.empty() && found_.codes.empty() && !stainless && !is(Part::washer) &&
                (!found_.classes.empty() || !found_.grades.empty() || lubricant)) {
                std::vector<std::string> all;
                for (const auto& row : finishes)
                    if (row.kind != "stainless" && std::find(all.begin(), all.end(), row.kind) == all.end()) all.push_back(row.kind);
                found_.topic = Topic::unsaid_finish;
                found_.ask(fmt::format("no finish is named: {}?", any_of_these(all)));
            }
            return;
        }
        const auto& kind = kinds.front().value;
        found_.out.coating = kind;
        found_.topic = Topic::lubricant;
        std::vector<std::string> choices;
        for (const auto& row : finishes)
            if (row.kind == kind) {
                choices.push_back(row.name.starts_with(kind + ", ") ? row.name.substr(kind.size() + 2) : row.name);
                if (lubricant && choices.back() == *lubricant) found_.out.offer.finish = row.name;
            }
        if (found_.out.offer.finish) return;
        found_.out.offer.lubricant = lubricant;
        if (is(Part::washer) && !lubricant) return;
        if (!found_.lubricated.empty()) std::erase(choices, "dry");
        if (choices.empty()) found_.topic = Topic::finish;
        if (choices.empty())
            found_.ask(fmt::format("\"{}\" is not in the finishes table: thickness and friction?", kinds.front().token));
        else if (choices.size() == 1)
            found_.ask(fmt::format("\"{}\" is {}: {}, or otherwise?", kinds.front().token, kind, choices.front()));
        else
            found_.ask(fmt::format("\"{}\" is {}: {}?", kinds.front().token, kind, any_of_these(choices)));
    }

    void settle_series() {
        found_.topic = Topic::size;
        if (found_.inch.empty())
            for (const auto& said : distinct(found_.series))
                found_.ask(fmt::format("\"{}\" is an inch thread: which size is offered?", said.token), true);
    }

    void settle_use() {
        found_.topic = Topic::use;
        const auto usage = distinct(found_.usage);
        if (usage.size() > 1)
            return found_.ask(fmt::format("\"{}\" and \"{}\": has it been tightened before?", usage[0].token, usage[1].token), true);
        if (!usage.empty()) found_.out.offer.used = usage.front().value == "used";
    }

    Found& found_;
};

}  // namespace

Designation read_designation(std::string_view text, const Tables& tables) {
    Found found{.tables = tables};
    found.out.offer.designation = shown(text, 200);
    if (text.size() > most_bytes) found.unknown(fmt::format("(what follows {} bytes)", most_bytes), {});
    read_words(text.substr(0, most_bytes), found);
    Weighing(found).settle();
    return std::move(found.out);
}

}  // namespace faywright
