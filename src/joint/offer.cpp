// SPDX-License-Identifier: MIT
#include "joint/offer.hpp"

#include "input/reader.hpp"
#include "joint/designation_found.hpp"
#include "joint/resolve.hpp"

#include <algorithm>

namespace faywright {

namespace {

/// Names of rows, each once.
template <class Rows, class Project>
std::vector<std::string> names_of(const Rows& rows, Project project) {
    std::vector<std::string> out;
    for (const auto& row : rows)
        if (auto name = project(row); std::find(out.begin(), out.end(), name) == out.end()) out.push_back(std::move(name));
    return out;
}

struct Understanding {
    const OfferFile& file;
    const Tables& tables;
    std::vector<OfferFault>& faults;
    Designation read = {};
    Offer out = {};

    void fault(const std::string& field, const std::string& given, std::string_view what, const std::vector<std::string>& known) {
        auto wanted = nearest_label(given, known);
        constexpr std::size_t most_listed = 20;
        if (wanted.empty() && known.size() <= most_listed) wanted = fmt::format("known are \"{}\"", fmt::join(known, "\", \""));
        if (wanted.empty())
            wanted = fmt::format("known are \"{}\" and {} others: faywright table lists them",
                                 fmt::join(known.begin(), known.begin() + 5, "\", \""), known.size() - 5);
        faults.push_back({field, fmt::format("is \"{}\", which is no {}", shown(given), what), std::move(wanted)});
    }
    void ask(Topic about, std::string question) { out.asked.push_back({about, std::move(question)}); }

    /// A field beside the designation: what it says stands, and a contradiction is asked.
    template <class T>
    void settle(Topic about, std::optional<T> OfferFile::*field, const char* key) {
        const auto& given = file.*field;
        const auto& from_designation = read.offer.*field;
        auto& to = out.said.*field;
        to = given ? given : from_designation;
        if (!given || !from_designation) return;
        const auto word_of_it = [](const T& value) {
            if constexpr (std::same_as<T, std::string>)
                return shown(value);
            else if constexpr (std::same_as<T, bool>)
                return std::string(value ? "yes" : "no");
            else if constexpr (std::same_as<T, NutThread>)
                return std::string(faywright::word_of(value));
            else
                return print(Value(value));
        };
        if (word_of_it(*given) != word_of_it(*from_designation))
            ask(about, fmt::format("the designation says {}, the {} says {}: which is offered?", word_of_it(*from_designation), key,
                                   word_of_it(*given)));
    }

    void designation() {
        if (!file.designation) return;
        read = read_designation(*file.designation, tables);
        out.understood = read.understood;
        out.low_carbon_martensite = read.low_carbon_martensite;
        out.undersize_thread = read.undersize_thread;
        out.hardness_hv = read.hardness_hv;
        out.assembly = read.assembly;
        for (const auto& word : read.unknown)
            ask(Topic::part, fmt::format("\"{}\" is not understood{}: what does it say?", word.token,
                                         word.nearest.empty() ? "" : fmt::format(", the nearest known is \"{}\"", word.nearest)));
        if (file.designation->find_first_of("<>~?!") != std::string::npos)
            ask(Topic::part, fmt::format("\"{}\" has signs of doubt: what is offered for certain?", shown(*file.designation)));
    }

    /// What a field answers is not asked.
    void keep_questions() {
        for (auto& question : read.asked) {
            const auto& f = file;
            const bool answered = question.about == Topic::standard     ? f.standard.has_value()
                                  : question.about == Topic::size       ? out.said.size.has_value() && f.size.has_value()
                                  : question.about == Topic::length     ? f.length.has_value()
                                  : question.about == Topic::nut_class  ? f.nut_class.has_value()
                                  : question.about == Topic::bolt_class ? f.bolt_class.has_value()
                                  : question.about == Topic::finish     ? f.finish.has_value()
                                  : question.about == Topic::use        ? f.used.has_value()
                                  : question.about == Topic::part       ? f.part || f.size || f.bolt_class
                                                                        : true;  // what is not said has rules of its own
            if (!answered || question.contradiction) out.asked.push_back(std::move(question));
        }
    }

    /// What reads a word of a field as the trade writes it.
    [[nodiscard]] Designation trade_words(const std::string& text) const { return read_designation(text, tables); }

    /// A field that says more than its own matter is asked about: the rest may be what matters.
    void ask_about_the_rest(const char* key, const std::string& text, Designation words, Topic own) {
        auto& o = words.offer;
        if (own == Topic::size) o.size.reset();
        if (own == Topic::bolt_class) o.bolt_class.reset();
        if (own == Topic::nut_class) {
            o.nut_class.reset();
            o.nut_thread.reset();
            o.bolt_class.reset();
        }
        if (own == Topic::finish) {
            o.finish.reset();
            o.lubricant.reset();
        }
        if (own == Topic::standard) {
            o.standard.reset();
            o.series.reset();
            o.fully_threaded.reset();
            o.prevailing_torque_nut.reset();
            words.assembly.reset();
        }
        // A length in a field of its own matter is a length understood; one that nobody understood was another thing.
        const bool odd_length = own == Topic::size && std::any_of(words.understood.begin(), words.understood.end(), [&](const auto& each) {
                                    return each.meaning.starts_with("length ") && each.token.find('/') != std::string::npos;
                                });
        const bool coat_aside = own == Topic::finish || !words.coating || *words.coating == "stainless";
        const bool contradicts = std::any_of(words.asked.begin(), words.asked.end(), [&](const auto& question) {
            const auto& about = question.about;
            return question.contradiction ||
                   (about != own && about != Topic::part && about != Topic::unsaid_finish && about != Topic::lubricant);
        });
        const bool more = !words.unknown.empty() || contradicts || o.standard || (o.size && own != Topic::standard) || o.bolt_class ||
                          o.finish || o.length || o.nut_class || o.nut_thread || o.series || o.fully_threaded || o.used ||
                          o.prevailing_torque_nut || o.marking || words.hardness_hv || words.assembly || words.undersize_thread ||
                          words.low_carbon_martensite || odd_length || !coat_aside || (words.inch_diameter && own != Topic::size) ||
                          text.find_first_of("<>~?!") != std::string::npos;
        if (more) ask(own, fmt::format("the {} says \"{}\": what does all of it mean?", key, shown(text)));
    }

    void part() {
        const auto from_designation = file.designation && read.part_known ? read.offer.part : std::nullopt;
        out.part = file.part ? *file.part : from_designation.value_or(OfferedPart::bolt);
        if (from_designation && *from_designation != out.part)
            ask(Topic::part,
                fmt::format("the designation says {}, the part says {}: which is offered?", word_of(*from_designation), word_of(out.part)));
    }

    void size() {
        settle(Topic::size, &OfferFile::size, "size");
        out.inch_diameter = read.inch_diameter;
        auto& said = out.said.size;
        if (!said) return;
        out.thread = tables.of<Thread>().find(*said);
        out.inch = tables.of<InchThread>().find(*said);
        if (out.inch != nullptr) out.inch_diameter = out.inch->diameter;
        if (out.thread != nullptr || out.inch != nullptr) return;
        auto words = trade_words(*said);
        if (words.inch_diameter) out.inch_diameter = words.inch_diameter;
        // "M16x180": the length stands there too.
        if (words.offer.length && !read.offer.length) read.offer.length = words.offer.length;
        if (words.offer.length && read.offer.length == words.offer.length) words.offer.length.reset();
        ask_about_the_rest("size", *said, words, Topic::size);
        if (words.offer.size) {
            // The same said twice is no contradiction.
            if (read.offer.size && *read.offer.size == *words.offer.size)
                std::erase_if(out.asked, [](const auto& q) { return q.about == Topic::size; });
            said = words.offer.size;
            out.thread = tables.of<Thread>().find(*said);
            out.inch = tables.of<InchThread>().find(*said);
        } else if (words.inch_diameter) {
            // Which series it has changes nothing: no inch thread fits.
            std::erase_if(out.asked, [](const auto& q) { return q.about == Topic::size; });
        } else {
            fault("size", *said, "size of the tables threads or inch-threads", tables.of<Thread>().names());
        }
    }

    void bolt_class() {
        settle(Topic::bolt_class, &OfferFile::bolt_class, "class");
        auto& said = out.said.bolt_class;
        // A nut's class is read with the nuts.
        if (!said || out.part == OfferedPart::nut) return;
        const auto& rows = tables.of<BoltClass>().rows;
        const auto known = [&](const std::string& name) {
            return std::any_of(rows.begin(), rows.end(), [&](const auto& row) { return row.bolt_class == name; });
        };
        if (!known(*said)) {
            auto words = trade_words(*said);
            out.low_carbon_martensite = out.low_carbon_martensite || words.low_carbon_martensite;
            if (words.offer.bolt_class) {
                words.low_carbon_martensite = false;
                ask_about_the_rest("class", *said, words, Topic::bolt_class);
                said = words.offer.bolt_class;
            }
        }
        out.class_known = known(*said);
        for (const auto& row : tables.of<InchGrade>().rows)
            if (row.grade == *said) {
                out.class_known = true;
                if (!out.inch_diameter || row.holds_for(*out.inch_diameter)) out.grade = &row;
                out.low_carbon_martensite = out.low_carbon_martensite || row.low_carbon_martensite;
            }
        if (!out.class_known) {
            auto names = names_of(rows, [](const auto& row) { return row.bolt_class; });
            for (auto& grade : names_of(tables.of<InchGrade>().rows, [](const auto& row) { return row.grade; }))
                names.push_back(std::move(grade));
            fault("class", *said, "class of bolts or grade", names);
        }
    }

    void finish() {
        out.said.finish = file.finish ? file.finish : read.offer.finish;
        out.said.lubricant = file.lubricant ? file.lubricant : read.offer.lubricant;
        const auto& table = tables.of<Finish>();
        const auto kinds = names_of(table.rows, [](const auto& row) { return row.kind; });
        if (out.part == OfferedPart::layer) return;
        if (out.part == OfferedPart::tube) return coat_of_tube();
        if (file.finish) {
            out.finish = table.find(*file.finish);
            if (out.finish != nullptr)
                out.coating = out.finish->kind;
            else if (std::find(kinds.begin(), kinds.end(), *file.finish) != kinds.end())
                out.coating = *file.finish;
            else {
                const auto words = trade_words(*file.finish);
                out.coating = words.coating.value_or("");
                if (words.offer.finish) out.finish = table.find(*words.offer.finish);
                for (const auto& question : words.asked)
                    if (question.about == Topic::finish) out.asked.push_back(question);
                const bool uncertain =
                    std::any_of(words.asked.begin(), words.asked.end(), [](const auto& q) { return q.about == Topic::finish; });
                if (!words.unknown.empty() || (out.coating.empty() && !uncertain)) {
                    auto known = table.names();
                    known.insert(known.end(), kinds.begin(), kinds.end());
                    // A slip of the pen is corrected; a coat that no table has is one to ask about.
                    if (!nearest_label(*file.finish, known).empty())
                        fault("finish", *file.finish, "row or kind of the table finishes", known);
                    else if (out.coating.empty())
                        out.coating = shown(*file.finish);
                }
                if (words.coating) ask_about_the_rest("finish", *file.finish, words, Topic::finish);
            }
            if (read.coating && !out.coating.empty() && *read.coating != out.coating)
                ask(Topic::finish,
                    fmt::format("the designation says {}, the finish says {}: which is offered?", *read.coating, out.coating));
        } else {
            if (read.offer.finish) out.finish = table.find(*read.offer.finish);
            out.coating = read.coating.value_or("");
        }
        if (out.coating.empty() && out.is_stainless()) out.coating = "stainless";
        lubricant();
    }

    /// A lubricant that stands by itself completes the coating; beside a whole finish it must be that one's.
    void lubricant() {
        if (!out.said.lubricant || out.coating.empty()) return;
        const auto& table = tables.of<Finish>();
        if (*out.said.lubricant == "none") out.said.lubricant = "dry";
        const auto* with_it = table.find(out.coating + ", " + *out.said.lubricant);
        if (with_it == nullptr) {
            const auto words = trade_words(out.coating + " " + *out.said.lubricant);
            // What is not understood of it may be copper, or graphite.
            if (words.offer.finish && words.coating == out.coating && words.unknown.empty()) with_it = table.find(*words.offer.finish);
        }
        if (with_it != nullptr && out.finish != nullptr && with_it != out.finish)
            ask(Topic::finish,
                fmt::format("the finish says {}, the lubricant says {}: which is offered?", out.finish->name, shown(*out.said.lubricant)));
        if (with_it == nullptr)
            out.other_lubricant = shown(*out.said.lubricant);
        else if (out.finish == nullptr)
            out.finish = with_it;
    }

    void coat_of_tube() {
        const auto& coatings = tables.of<Coating>();
        if (!file.finish || coatings.find(*file.finish) != nullptr) return;
        const auto* row = tables.of<Finish>().find(*file.finish);
        const auto words = row == nullptr ? trade_words(*file.finish) : Designation{};
        out.coating = row != nullptr ? row->kind : words.coating.value_or("");
        if (row == nullptr && !out.coating.empty()) ask_about_the_rest("finish", *file.finish, words, Topic::finish);
        if (out.coating.empty() && *file.finish != "none" && !nearest_label(*file.finish, coatings.names()).empty())
            fault("finish", *file.finish, "row of the table coatings", coatings.names());
    }

    void standard() {
        settle(Topic::standard, &OfferFile::standard, "standard");
        auto& said = out.said.standard;
        const auto as_written = file.standard ? file.standard : read.standard_as_written;
        if (as_written) out.written_standard = tables.of<ProductStandard>().find(*as_written);
        if (!said) return;
        const auto* row = tables.of<ProductStandard>().find(*said);
        if (row == nullptr) {
            const auto words = trade_words(*said);
            if (words.offer.standard) row = tables.of<ProductStandard>().find(*words.offer.standard);
            if (row == nullptr && words.offer.series) row = tables.of<ProductStandard>().find(*words.offer.series);
            if (row != nullptr) ask_about_the_rest("standard", *said, words, Topic::standard);
        }
        if (row == nullptr) return fault("standard", *said, "row of the table designations", tables.of<ProductStandard>().names());
        if (out.written_standard == nullptr) out.written_standard = row;
        if (row->assembly) out.assembly = row->name;
        if (row->part && *row->part != word_of(out.part))
            ask(Topic::standard,
                fmt::format("{} is a standard of a {}, offered is a {}: which is it?", row->name, *row->part, word_of(out.part)));
        if (row->part == "washer" && out.part == OfferedPart::washer && !file.series && !read.offer.series)
            out.said.series = row->successor.value_or(row->name);
        if (const auto width = out.said.size ? row->old_width(*out.said.size) : std::nullopt; file.standard && row->successor && width)
            ask(Topic::standard, fmt::format("{} had {} across flats for {}, {} has another: which is delivered?", row->name,
                                             print(Value(*width)), *out.said.size, *row->successor));
        if (row->successor) row = tables.of<ProductStandard>().find(*row->successor);
        said = row->name;
        out.standard = row;
        if (!file.fully_threaded && row->fully_threaded && out.part == OfferedPart::bolt) out.said.fully_threaded = row->fully_threaded;
    }

    void nut() {
        settle(Topic::nut_class, &OfferFile::nut_class, "nut-class");
        settle(Topic::nut_class, &OfferFile::nut_thread, "nut-thread");
        settle(Topic::nut_class, &OfferFile::prevailing_torque_nut, "prevailing-torque-nut");
        if (!file.prevailing_torque_nut && out.part == OfferedPart::nut && out.written_standard != nullptr &&
            out.written_standard->prevailing_torque)
            out.said.prevailing_torque_nut = true;
        auto& said = out.said.nut_class;
        out.lower_nut = (said && said->find('|') != std::string::npos) ||
                        (out.part == OfferedPart::nut && file.marking && file.marking->find('|') != std::string::npos) ||
                        (out.written_standard != nullptr && out.written_standard->lower_nut);
        for (const auto& each : read.understood)
            if (const auto* row = tables.of<ProductStandard>().find(each.token);
                (row != nullptr && row->lower_nut) || each.token.find('|') != std::string::npos)
                out.lower_nut = true;
        if (out.part == OfferedPart::nut && file.bolt_class && said && *said != *file.bolt_class)
            ask(Topic::nut_class,
                fmt::format("class {} and nut class {} are both said: which has the nut?", shown(*file.bolt_class), shown(*said)));
        if (out.part == OfferedPart::nut && !said && file.bolt_class) said = file.bolt_class;
        if (!said || *said == "04" || *said == "05" || out.inch_diameter) return;
        const auto known = names_of(tables.of<Nut>().rows, [](const auto& row) { return row.nut_class; });
        if (const bool stainless = designation::is_stainless(*said); stainless) {
            out.nut_group = said->substr(0, said->find('-'));
            said = said->substr(said->find('-') + 1);
        }
        if (std::find(known.begin(), known.end(), *said) != known.end()) return;
        auto words = trade_words("nut " + *said);
        if (words.offer.nut_class) {
            if (words.offer.nut_thread && !out.said.nut_thread) out.said.nut_thread = words.offer.nut_thread;
            if (out.lower_nut) words.offer.marking.reset();
            ask_about_the_rest("nut-class", *said, words, Topic::nut_class);
            said = words.offer.nut_class;
        } else {
            fault(file.nut_class ? "nut-class" : "class", *said, "class of the table nuts", known);
        }
    }

    void others() {
        if (out.said.series && !file.series && !read.offer.series) {
            // Its standard said it.
        } else {
            settle(Topic::size, &OfferFile::series, "series");
        }
        settle(Topic::use, &OfferFile::used, "used");
        settle(Topic::length, &OfferFile::length, "length");
        settle(Topic::standard, &OfferFile::fully_threaded, "fully-threaded");
        out.said.designation = file.designation;
        out.said.marking = file.marking ? file.marking : read.offer.marking;
        out.said.test_report = file.test_report ? file.test_report : read.offer.test_report;
        // "inspection certificate 2.2" is no certificate of the lot.
        const auto& d = file.designation.value_or("");
        if (!file.test_report && (d.find("2.1") != std::string::npos || d.find("2.2") != std::string::npos)) out.said.test_report.reset();
        if (out.part == OfferedPart::washer && file.marking && !out.hardness_hv) out.hardness_hv = trade_words(*file.marking).hardness_hv;
        out.said.stock = file.stock;
        out.said.material = file.material;
        out.said.name = file.name;
        const auto row_named = [&](const auto& table, const std::optional<std::string>& name, const char* field, const char* what) {
            const auto* row = name ? table.find(*name) : nullptr;
            if (name && row == nullptr) fault(field, *name, what, table.names());
            return row;
        };
        if ((out.part == OfferedPart::tube || out.part == OfferedPart::layer) && (file.designation || file.size))
            ask(Topic::part, fmt::format("a {} is told by its stock and material: which are they?", word_of(out.part)));
        if (out.part == OfferedPart::tube) {
            row_named(tables.of<StockTube>(), out.said.stock, "stock", "row of the table tubes");
            row_named(tables.of<Material>(), out.said.material, "material", "row of the table materials");
        }
        if (out.part == OfferedPart::layer)
            out.layer = row_named(tables.of<LayerMaterial>(), out.said.material, "material", "row of the table layers");
        if (out.part == OfferedPart::washer && out.said.series) {
            const auto series = names_of(tables.of<Washer>().rows, [](const auto& row) { return row.series; });
            if (std::find(series.begin(), series.end(), *out.said.series) == series.end()) {
                const auto* row = tables.of<ProductStandard>().find(*out.said.series);
                if (row != nullptr && out.written_standard == nullptr) out.written_standard = row;
                if (row != nullptr && row->successor) out.said.series = row->successor;
                if (row == nullptr) fault("series", *out.said.series, "series of the table washers", series);
            }
        }
    }

    /// What a mark tells beside class and maker: ISO 898-1, clause 10; ISO 10684, marking.
    void marking() {
        if (!out.said.marking || out.part != OfferedPart::bolt) return;
        const auto& mark = *out.said.marking;
        const auto digit = mark.find_last_of("0123456789");
        const auto rest = digit == std::string::npos ? std::string_view(mark) : std::string_view(mark).substr(digit + 1);
        const auto letter = rest.find_first_not_of(' ');
        out.undersize_thread =
            out.undersize_thread || (letter != std::string_view::npos && (rest.substr(letter) == "U" || rest.substr(letter) == "u"));
        for (const auto* sign : {"underlin", "_", "(", "\xcc\xb2", "martensit"})
            out.low_carbon_martensite = out.low_carbon_martensite || mark.find(sign) != std::string::npos;
    }

    void title() {
        const auto& s = out.said;
        if (s.name) out.title = *s.name;
        if (s.designation) out.title += (out.title.empty() ? "" : ": ") + *s.designation;
        if (!out.title.empty()) return;
        out.title = std::string(word_of(out.part));
        for (const auto* each : {&s.size, &s.bolt_class, &s.nut_class, &s.series, &s.stock, &s.material, &s.finish})
            if (*each) out.title += " " + **each;
        if (s.length) out.title += " " + print(Value(*s.length), 4);
    }

    Offer run() {
        designation();
        part();
        size();
        bolt_class();
        standard();
        nut();
        others();
        finish();
        keep_questions();
        marking();
        title();
        out.title = shown(out.title, 120);
        return std::move(out);
    }
};

}  // namespace

Offer understand(const OfferFile& file, const Tables& tables, std::vector<OfferFault>& faults) {
    return Understanding{file, tables, faults}.run();
}

std::optional<Offer> read_offer(const Node& root, const Tables& tables, Diagnostics& diagnostics) {
    const auto before = diagnostics.count();
    OfferFile file;
    read_node(root, Path{}, file, ReadContext{diagnostics});
    std::vector<OfferFault> faults;
    auto offer = understand(file, tables, faults);
    for (const auto& each : faults)
        diagnostics.error({"name.unknown", fmt::format("{} {}", each.field, each.found), place_of(root, each.field), each.wanted, {}, ""});
    if (diagnostics.count() != before) return std::nullopt;
    return offer;
}

}  // namespace faywright
