// SPDX-License-Identifier: MIT
#include "joint/designation_found.hpp"
#include "joint/designation_scan.hpp"
#include "joint/designation_words.hpp"
#include "quantity/characters.hpp"

#include <algorithm>
#include <cctype>

namespace faywright::designation {

namespace {

using Part = OfferedPart;

/// Goes through a text, piece by piece, and keeps what each says.
class Reader {
public:
    Reader(std::string_view text, Found& found) : text_(text), found_(found) {}

    void read() {
        for (std::size_t at = 0; at < text_.size();) at = piece(at);
    }

private:
    std::size_t understood(std::size_t from, std::size_t to, std::string meaning) {
        found_.out.understood.push_back({text_.written(from, to), std::move(meaning)});
        return to;
    }

    std::size_t piece(std::size_t at) {
        if (!starts(at)) return at + 1;
        for (const auto reader :
             {&Reader::marked_class, &Reader::hardness, &Reader::quantity, &Reader::product_standard, &Reader::grade, &Reader::metric_size,
              &Reader::certificate_or_steel, &Reader::stainless_class, &Reader::coating_code, &Reader::dotted_class, &Reader::inch_size,
              &Reader::tolerance, &Reader::nut_mark, &Reader::other_measure, &Reader::phrase, &Reader::length, &Reader::number})
            if (const auto end = (this->*reader)(at); end != 0) return end;
        return unknown_word(at);
    }

    bool starts(std::size_t at) const {
        const char c = text_[at];
        return text_.goes_on(at) || c == '(' || c == '|' || (c == '#' && text_.digit(at + 1)) ||
               (c == '*' && starts_number(text_.by(at))) || (c == '.' && text_.digit(at + 1));
    }

    /// "(8.8)" and "|8|".
    std::size_t marked_class(std::size_t at) {
        const char c = text_[at];
        if (c != '(' && c != '|') return 0;
        const auto inside = text_.measure(at + 1);
        if (!inside || text_[inside->end] != (c == '(' ? ')' : '|')) return at + 1;
        const auto end = inside->end + 1;
        if (c == '(' && found_.class_row(inside->digits) != nullptr) {
            const auto token = text_.written(at, end);
            found_.classes.push_back({token, inside->digits});
            found_.topic = Topic::bolt_class;
            found_.ask(fmt::format("\"{}\": is the class in brackets the underlined mark of low-carbon martensite steel?", token));
            return underlined(at, end, inside->digits);
        }
        if (c == '|' && found_.is_nut_class(inside->digits)) {
            found_.nut_classes.push_back({text_.written(at, end), inside->digits});
            found_.out.offer.marking = fmt::format("|{}|", inside->digits);
            return understood(at, end, fmt::format("nut of class {} with reduced height, as of DIN 934", inside->digits));
        }
        return at + 1;
    }

    std::size_t underlined(std::size_t from, std::size_t to, const std::string& bolt_class) {
        found_.out.offer.marking = bolt_class + ", underlined";
        if (bolt_class == "12.9") return understood(from, to, "class 12.9, underlined: carbon steel with boron, manganese or chromium");
        found_.out.low_carbon_martensite = true;
        return understood(from, to, fmt::format("class {}, underlined: low-carbon martensite steel", bolt_class));
    }

    std::size_t hardness(std::size_t at) {
        if (const auto value = text_.whole(at); value && value->value >= 80 && value->value <= 500) {
            const auto end = text_.words(text_.after_spaces(value->end), "hv");
            if (end != 0) return take_hardness(at, end, value->value);
        }
        const auto behind = text_.words(at, "hv", true);
        if (behind == 0) return 0;
        const auto value = text_.whole(text_.after_spaces(behind));
        return value && value->value >= 80 && value->value <= 500 && !text_.goes_on(value->end)
                   ? take_hardness(at, value->end, value->value)
                   : 0;
    }
    std::size_t take_hardness(std::size_t from, std::size_t to, double value) {
        found_.out.hardness_hv = value;
        return understood(from, to, fmt::format("hardness {} HV", print_number(value)));
    }

    std::size_t quantity(std::size_t at) {
        if (const auto end = text_.words(at, "qty", true); end != 0) {
            auto next = end;
            while (text_[next] == ' ' || text_[next] == '.' || text_[next] == ':') ++next;
            const auto value = text_.whole(next);
            return value ? understood(at, value->end, "how many") : 0;
        }
        const auto value = text_.whole(at);
        if (!value) return 0;
        const auto behind = text_.after_spaces(value->end);
        for (const auto& word : counts)
            if (const auto end = text_.words(behind, word); end != 0) return understood(at, end, "how many");
        // "8 nuts M16": eight of them, or of class 8; it is no class.
        for (const auto& word : counted)
            if (text_.words(behind, word) != 0) return understood(at, value->end, "how many");
        const auto by = text_.by(value->end);
        const char next = text_[by];
        return by != 0 && next >= 'a' && next <= 'z' && next != 'x' ? understood(at, by, "how many") : 0;
    }

    /// End of a standard's own name at `at`, whatever stands before it.
    std::size_t prefixed(std::size_t at, std::string_view name) const {
        if (const auto end = text_.words(at, name); end != 0) return end;
        for (const auto& prefix : prefixes)
            if (const auto behind = text_.words(at, prefix, true); behind != 0)
                if (const auto end = text_.words(behind, name); end != 0) return end;
        if (name.starts_with("as "))
            if (const auto behind = text_.words(at, "as/nzs", true); behind != 0) return text_.words(behind, name.substr(2));
        if (name.starts_with("asme "))
            if (const auto behind = text_.words(at, "ansi", true); behind != 0)
                return text_.words(text_[behind] == '/' ? behind + 1 : behind, text_[behind] == '/' ? name : name.substr(4));
        return 0;
    }

    std::size_t product_standard(std::size_t at) {
        const Row<ProductStandard>* found = nullptr;
        std::size_t end = 0;
        for (const auto& row : found_.tables.of<ProductStandard>().rows)
            if (const auto here = prefixed(at, lowered(row.name)); here > end) {
                found = &row;
                end = here;
            }
        if (found == nullptr) return foreign_standard(at);
        // Part, year of the edition, form.
        if (((text_[end] == '-' && text_[end + 1] == '1') || (text_[end] == '.' && text_.digit(end + 1))) && !text_.goes_on(end + 2))
            end += 2;
        if (const auto year = text_.whole(end + 1); year && (text_[end] == ':' || text_[end] == '-') && !text_.goes_on(year->end) &&
                                                    year->digits.size() == 4 && year->value > 1900 && year->value < 2100)
            end = year->end;
        for (const std::string_view form : {" a", " b"})
            if (const auto here = text_.words(end, form); here != 0)
                if (const auto* row = found_.tables.of<ProductStandard>().find(found->name + (form == " a" ? " A" : " B"));
                    row != nullptr) {
                    found = row;
                    end = here;
                    break;
                }
        const auto token = text_.written(at, end);
        found_.standards.push_back({token, found});
        return understood(at, end, found->successor ? fmt::format("{}; succeeded by {}", found->title, *found->successor) : found->title);
    }

    /// A standard that no table has.
    std::size_t foreign_standard(std::size_t at) {
        for (const auto& entry : phrases)
            if (entry.words.find_first_of("0123456789") != std::string_view::npos && prefixed(at, entry.words) != 0) return 0;
        for (const auto& body : bodies) {
            const auto behind = text_.words(at, std::string(body) + " ", true);
            if (behind == 0) continue;
            for (const auto next : {behind, text_.words(behind, "iso ", true), text_.words(behind, "en iso ", true)}) {
                if (next == 0) continue;
                const auto value = text_.whole(next);
                if (!value || value->digits.size() < 3 || text_.goes_on(value->end)) continue;
                const auto token = text_.written(at, value->end);
                const auto names = found_.tables.of<ProductStandard>().names();
                const auto part = std::find_if(names.begin(), names.end(), [&](const auto& name) { return name.starts_with(token + "-"); });
                found_.unknown(token, part != names.end() ? *part : nearest(token, names));
                return value->end;
            }
        }
        return 0;
    }

    std::size_t grade(std::size_t at) {
        for (const auto& row : found_.tables.of<InchGrade>().rows) {
            if (row.grade.starts_with("grade")) continue;
            const auto behind = text_.words(at, "astm ", true);
            if (const auto end = text_.words(behind == 0 ? at : behind, lowered(row.grade)); end != 0) {
                found_.grades.push_back({text_.written(at, end), row.grade});
                return understood(at, end, fmt::format("structural bolt of grade {}", row.grade));
            }
        }
        std::size_t best = 0;
        bool is_class = false;
        const auto consider = [&](std::string_view word, bool names_class) {
            if (const auto end = text_.words(at, word, true); end > best) {
                best = end;
                is_class = names_class;
            }
        };
        for (const auto& word : class_words) consider(word, true);
        for (const auto& word : grade_words) consider(word, false);
        if (text_[at] == 'g' && text_.digit(at + 1)) consider("g", false);
        if (best == 0) return 0;
        auto next = best;
        while (text_[next] == ' ' || text_[next] == '.' || text_[next] == ':' || text_[next] == '=') ++next;
        for (const auto reader : {&Reader::marked_class, &Reader::stainless_class, &Reader::dotted_class, &Reader::nut_mark})
            if (const auto end = (this->*reader)(next); end > next + 1) return end;
        const auto value = text_.decimal(next);
        if (!value || text_.goes_on(value->end)) return 0;
        const auto token = text_.written(at, value->end);
        if (is_class) {
            if (!found_.is_nut_class(value->digits)) return 0;
            found_.nut_classes.push_back({token, value->digits});
            return understood(at, value->end, fmt::format("class {}", value->digits));
        }
        const auto name = "grade " + value->digits;
        for (const auto& row : found_.tables.of<InchGrade>().rows)
            if (row.grade == name) {
                found_.grades.push_back({token, name});
                return understood(at, value->end, fmt::format("{} of SAE J429", name));
            }
        found_.unknown(token, "");
        return value->end;
    }

    std::size_t metric_size(std::size_t at) {
        if (text_[at] != 'm') return 0;
        const auto size = text_.decimal(text_.after_spaces(at + 1));
        if (!size || size->digits.front() == '0' || size->value > 160) return 0;
        auto end = size->end;
        if (text_.goes_on(end) && (text_[end] != 'x' || !starts_number(text_.by(end)))) return 0;
        const auto name = "M" + size->digits;
        const auto* thread = found_.tables.of<Thread>().find(name);
        std::optional<Measure> pitch;
        std::vector<Measure> lengths;
        for (auto next = text_.by(end); next != 0; next = text_.by(end)) {
            const auto value = text_.measure(next);
            if (!value || (text_.goes_on(value->end) && text_[value->end] != 'x')) break;
            if (value->unit == Measure::Unit::none && !value->fraction && !pitch && lengths.empty() &&
                (thread == nullptr ? value->value < 5 : mm(value->value) < thread->pitch + um(1)))
                pitch = value;
            else
                lengths.push_back(*value);
            end = value->end;
        }
        const auto token = text_.written(at, end);
        const bool coarse = thread != nullptr && (!pitch || std::abs(in_mm(thread->pitch) - pitch->value) < 1e-6);
        found_.metric.push_back({token, coarse || !pitch ? name : name + "x" + pitch->digits});
        std::string meaning = "thread " + found_.metric.back().value;
        if (coarse && pitch) meaning += ", coarse";
        for (const auto& value : lengths) {
            found_.lengths.push_back({token, value});
            meaning += fmt::format(", length {}{}", value.digits,
                                   value.unit == Measure::Unit::none && !value.fraction ? " mm" : unit_words(value.unit));
        }
        return understood(at, end, meaning);
    }

    bool starts_number(std::size_t at) const { return text_.digit(at) || (text_[at] == '.' && text_.digit(at + 1)); }

    /// Certificates and steel numbers look like classes.
    std::size_t certificate_or_steel(std::size_t at) {
        if (!text_.digit(at)) return 0;
        const auto value = text_.measure(at);
        return value && value->unit == Measure::Unit::none ? phrase(at) : 0;
    }

    std::size_t stainless_class(std::size_t at) {
        if (text_[at] != 'a' || !text_.digit(at + 1) || text_.digit(at + 2)) return 0;
        const auto group = std::string("A") + text_[at + 1];
        std::size_t next = at + 2;
        if (next < text_.size() && text_.goes_on(next)) return 0;
        while (text_[next] == ' ' || text_[next] == '-' || text_[next] == '/') ++next;
        const auto strength = text_.measure(next);
        const bool named = strength && strength->unit == Measure::Unit::none && !strength->fraction && !text_.goes_on(strength->end);
        if (named && found_.class_row(group + "-" + strength->digits) != nullptr) {
            found_.classes.push_back({text_.written(at, strength->end), group + "-" + strength->digits});
            return understood(at, strength->end, fmt::format("stainless steel of class {}", found_.classes.back().value));
        }
        if (named && next == at + 3 && text_[at + 2] == '-') {
            const auto token = text_.written(at, strength->end);
            found_.unknown(token, nearest(token, found_.class_names()));
            found_.groups.push_back({token, group});
            return strength->end;
        }
        found_.groups.push_back({text_.written(at, at + 2), group});
        return understood(at, at + 2, fmt::format("stainless steel of group {}", group));
    }

    /// "A2L": metal, thickness and passivation by the code of ISO 4042.
    std::size_t coating_code(std::size_t at) {
        if (text_[at] != 'a' || !text_.digit(at + 1) || text_[at + 2] < 'a' || text_[at + 2] > 't' || text_.goes_on(at + 3)) return 0;
        found_.codes.push_back({text_.written(at, at + 3), ""});
        return understood(at, at + 3, "a code as of ISO 4042 for electroplated coatings");
    }

    std::size_t dotted_class(std::size_t at) {
        if (!text_.digit(at)) return 0;
        // An underlined class may carry the line under every character.
        std::string digits;
        bool line = false;
        auto end = at;
        for (; text_.digit(end) || text_[end] == '.' || text_[end] == ',' || text_[end] == '_'; ++end)
            if (text_[end] == '_')
                line = true;
            else if (text_[end] == ',' && (digits.find('.') != std::string::npos || !text_.digit(end + 1)))
                break;
            else
                digits += text_[end] == ',' ? '.' : text_[end];
        while (!digits.empty() && digits.back() == '.') {
            digits.pop_back();
            --end;
        }
        if (digits.find('.') == std::string::npos || found_.class_row(digits) == nullptr) return 0;
        const bool undersize = text_[end] == 'u' && !text_.goes_on(end + 1);
        const auto measure = text_.measure(at);
        if (!undersize && (text_.goes_on(end) || (measure && measure->unit != Measure::Unit::none))) return 0;
        const auto token = text_.written(at, end);
        found_.classes.push_back({token, digits});
        if (line) return underlined(at, end, digits);
        if (undersize) {
            found_.out.undersize_thread = true;
            found_.out.offer.marking = digits + "U";
            return understood(at, end + 1, fmt::format("property class {}, thread cut undersize before galvanising", digits));
        }
        if (text_[end] == '/') {
            const auto nut = text_.whole(end + 1);
            if (nut && found_.is_nut_class(nut->digits) && !text_.goes_on(nut->end)) {
                found_.nut_classes.push_back({text_.written(end + 1, nut->end), nut->digits});
                return understood(at, nut->end, fmt::format("property class {} with a nut of class {}", digits, nut->digits));
            }
            for (const std::string_view category : {"s", "tb", "tf"})
                if (const auto behind = text_.words(end + 1, category); behind != 0)
                    return understood(at, behind,
                                      fmt::format("property class {}, tightening category {}", digits, text_.written(end + 1, behind)));
        }
        return understood(at, end, fmt::format("property class {}", digits));
    }

    std::size_t inch_size(std::size_t at) {
        if (text_[at] == '#') return numbered_size(at);
        const auto size = text_.measure(at);
        if (!size || size->unit == Measure::Unit::millimetre || size->value <= 0) return 0;
        auto end = text_.after_spaces(size->end);
        std::optional<int> threads;
        if (text_[end] == '-')
            if (const auto count = text_.whole(text_.after_spaces(end + 1));
                count && count->value >= 4 && count->value <= 80 &&
                (text_[count->end] == 'x' || text_[count->end] == 'u' || !text_.goes_on(count->end))) {
                threads = static_cast<int>(count->value);
                end = count->end;
            }
        const auto* series = series_at(text_.after_spaces(end));
        const bool marked = size->unit == Measure::Unit::inch;
        if (series == nullptr) {
            // Without series, beside another size, or without mark and threads, it is a length or a mere number.
            if (!found_.metric.empty() || (!found_.inch.empty() && !threads) || (!marked && !size->fraction)) return 0;
            if (!threads && !size->fraction && size->value > 1.5) return 0;
        }
        if (!threads) end = size->end;
        found_.inch.push_back({text_.written(at, end), size->digits, size->inches(), threads});
        auto meaning = "inch thread " + size->digits + (threads ? fmt::format(" with {} threads to the inch", *threads) : "");
        if (series != nullptr) {
            const auto from = text_.after_spaces(end);
            end = text_.words(from, series->words);
            found_.series.push_back({text_.written(from, end), std::string(series->value)});
            meaning += fmt::format(", series {}", series->value);
        }
        if (const auto by = text_.by(end); by != 0)
            if (const auto length = text_.measure(by, true); length && !text_.goes_on(length->end)) {
                found_.lengths.push_back({text_.written(by, length->end), *length});
                end = length->end;
                meaning += fmt::format("; length {}{}", length->digits, unit_words(length->unit));
            }
        return understood(at, end, meaning);
    }

    /// "#10-24": a size by number, which no table has.
    std::size_t numbered_size(std::size_t at) {
        auto end = at + 1;
        while (text_.digit(end) || (text_[end] == '-' && text_.digit(end + 1))) ++end;
        const auto token = text_.written(at, end);
        found_.inch.push_back({token, token, Length{}, {}});
        return understood(at, end, "numbered inch thread");
    }

    const Phrase* series_at(std::size_t at) const {
        for (const auto& entry : phrases)
            if (entry.says == Says::series && text_.words(at, entry.words) != 0) return &entry;
        return nullptr;
    }

    static std::string_view unit_words(Measure::Unit unit) {
        return unit == Measure::Unit::inch ? " in" : unit == Measure::Unit::millimetre ? " mm" : "";
    }

    /// "6AZ": a nut tapped oversize, or a bolt cut undersize where the letters are small.
    std::size_t tolerance(std::size_t at) {
        for (const std::string_view word : {"6az", "6ax"})
            if (const auto end = text_.words(at, word); end != 0) {
                if (text_.written(at, end).find('A') != std::string::npos) {
                    found_.out.offer.nut_thread = NutThread::oversize;
                    return understood(at, end, "nut tapped oversize for a galvanised bolt");
                }
                found_.out.undersize_thread = true;
                return understood(at, end, "bolt thread cut undersize before galvanising");
            }
        return 0;
    }

    /// "8Z", "10X".
    std::size_t nut_mark(std::size_t at) {
        const auto value = text_.whole(at);
        if (!value || !found_.is_nut_class(value->digits) || !text_.goes_on(value->end) || text_.goes_on(value->end + 1)) return 0;
        const auto token = text_.written(at, value->end + 1);
        if (!token.ends_with('Z') && !token.ends_with('X')) return 0;
        if (text_[value->end] == 'x' && starts_number(text_.after_spaces(value->end + 1))) return 0;  // "8X 50": a size of something
        found_.nut_classes.push_back({token, value->digits});
        found_.add_part(token, Part::nut);
        found_.out.offer.nut_thread = NutThread::oversize;
        found_.out.offer.marking = token;
        return understood(at, value->end + 1, fmt::format("nut of class {}, tapped oversize for a galvanised bolt", value->digits));
    }

    std::size_t phrase(std::size_t at) {
        const Phrase* found = nullptr;
        std::size_t end = 0;
        for (const auto& entry : phrases) {
            const bool numbered = entry.words.find_first_of("0123456789") != std::string_view::npos;
            if (const auto here = numbered ? prefixed(at, entry.words) : text_.words(at, entry.words); here > end) {
                found = &entry;
                end = here;
            }
        }
        for (const auto& row : found_.tables.of<Finish>().rows)
            if (const auto here = text_.words(at, lowered(row.kind)); here > end) {
                found_.coatings.push_back({text_.written(at, here), row.kind});
                return understood(at, here, row.kind);
            }
        // "flZnL": the letter says the lubricant.
        if (const auto here = text_.words(at, "flznl"); here > end) {
            found_.coatings.push_back({text_.written(at, here), "zinc flake"});
            found_.lubricants.push_back({text_.written(at, here), "integral lubricant"});
            return understood(at, here, "zinc flake, integral lubricant");
        }
        if (found == nullptr) return 0;
        if (found->says != Says::filler) understood(at, end, take(*found, text_.written(at, end)));
        return end;
    }

    /// Keeps what a phrase says and gives its meaning in words.
    std::string take(const Phrase& phrase, const std::string& token) {
        const std::string value(phrase.value);
        switch (phrase.says) {
            case Says::part: found_.add_part(token, part_of(value)); return value;
            case Says::flange:
                found_.add_part(token, part_of(value));
                found_.shapes.push_back({token, value});
                return value + " with a flange";
            case Says::shape:
                found_.add_part(token, Part::bolt);
                found_.shapes.push_back({token, ""});
                return "bolt of another shape than the hexagon bolt";
            case Says::washer_kind:
                found_.add_part(token, Part::washer);
                found_.shapes.push_back({token, ""});
                return "washer";
            case Says::coating: found_.coatings.push_back({token, value}); return value;
            case Says::uncertain_coating: found_.uncertain.push_back({token, value}); return "a coating: " + value;
            case Says::lubricant: found_.lubricants.push_back({token, value}); return value;
            case Says::uncertain_lubricant: found_.lubricated.push_back({token, value}); return "lubricated";
            case Says::steel_group: found_.groups.push_back({token, value}); return "stainless steel of group " + value;
            case Says::stainless: found_.stainless.push_back({token, value}); return "stainless steel";
            case Says::full_thread: found_.threads.push_back({token, "full"}); return "threaded to the head";
            case Says::part_thread: found_.threads.push_back({token, "part"}); return "with an unthreaded shank";
            case Says::used: found_.usage.push_back({token, "used"}); return "has been tightened before";
            case Says::unused: found_.usage.push_back({token, "new"}); return "not tightened before";
            case Says::certificate: found_.out.offer.test_report = true; return "an inspection certificate comes with it";
            case Says::lesser_report:
                found_.topic = Topic::papers;
                found_.ask(fmt::format("\"{}\" is {}: does an inspection certificate 3.1 come with it?", token, value));
                return value;
            case Says::locking:
                found_.add_part(token, Part::nut);
                found_.out.offer.prevailing_torque_nut = true;
                return "locking nut";
            case Says::martensite: found_.out.low_carbon_martensite = true; return "low-carbon martensite steel";
            case Says::series: found_.series.push_back({token, value}); return "thread series " + value;
            case Says::oversize: found_.out.offer.nut_thread = NutThread::oversize; return "nut tapped oversize";
            case Says::standard_nut:
                if (!found_.out.offer.nut_thread) found_.out.offer.nut_thread = NutThread::standard;
                return value;
            case Says::structural: found_.structural.push_back({token, value}); return value;
            case Says::note: return value;
            case Says::filler: break;
        }
        return value;
    }

    /// Thread length, grip, spanner: understood, of no effect.
    std::size_t other_measure(std::size_t at) {
        for (const auto& word : other_measures) {
            auto end = text_.words(at, word, true);
            if (end == 0) continue;
            while (text_[end] == ' ' || text_[end] == '=' || text_[end] == ':') ++end;
            if (const auto value = text_.measure(end)) {
                if (word == "thread length" || word == "grip") {
                    found_.topic = Topic::length;
                    found_.ask(fmt::format("\"{}\": is it other than by the standard?", text_.written(at, value->end)), true);
                }
                return understood(at, value->end, "a measure of no use here");
            }
        }
        return 0;
    }

    /// "140 mm", "x 140", "L=140", "length 140".
    std::size_t length(std::size_t at) {
        std::size_t from = at;
        bool named = false;
        if (const auto by = text_.by(at); by != 0 && !text_.words(at, "by") && (!found_.metric.empty() || !found_.inch.empty())) {
            from = by;
            named = true;
        } else
            for (const std::string_view word : {"length", "l"})
                if (const auto end = text_.words(at, word, true); end != 0 && !named) {
                    auto next = end;
                    while (text_[next] == ' ' || text_[next] == '=' || text_[next] == ':') ++next;
                    named = next > end && starts_number(next);
                    if (named) from = next;
                }
        const auto value = text_.measure(from, !found_.inch.empty());
        if (!value || text_.goes_on(value->end)) return 0;
        if (!named && value->unit == Measure::Unit::none && !(value->fraction && (!found_.inch.empty() || !found_.metric.empty())))
            return 0;
        found_.lengths.push_back({text_.written(at, value->end), *value});
        return understood(at, value->end, fmt::format("length {}{}", value->digits, unit_words(value->unit)));
    }

    std::size_t number(std::size_t at) {
        const auto value = text_.measure(at);
        if (!value || text_.goes_on(value->end)) return 0;
        found_.numbers.push_back(
            {text_.written(at, value->end), *value, !found_.parts.empty() && found_.parts.back().value == word_of(Part::nut)});
        return value->end;
    }

    std::size_t unknown_word(std::size_t at) {
        auto end = at;
        while (end < text_.size() && text_[end] != ' ' && text_[end] != ',' && text_[end] != ';') ++end;
        while (end > at + 1 && !text_.goes_on(end - 1)) --end;
        if (end == at) ++end;
        const auto token = text_.written(at, end);
        if (lowered(token) == "x") return end;
        found_.unknown(token, token.size() < 4 || token.size() > 40 ? std::string() : nearest(token, spellings()));
        return end;
    }

    const std::vector<std::string>& spellings() {
        if (!spellings_.empty()) return spellings_;
        for (const auto& entry : phrases) spellings_.emplace_back(entry.words);
        for (const auto& name : found_.tables.of<ProductStandard>().names()) spellings_.push_back(name);
        for (const auto& name : found_.tables.of<InchThread>().names()) spellings_.push_back(name);
        for (const auto& name : found_.class_names()) spellings_.push_back(name);
        return spellings_;
    }

    EvenText text_;
    Found& found_;
    std::vector<std::string> spellings_;
};

}  // namespace

void read_words(std::string_view text, Found& found) { Reader(text, found).read(); }

}  // namespace faywright::designation
