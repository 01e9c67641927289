// SPDX-License-Identifier: MIT
#include "joint/designation.hpp"

#include "joint/designation_scan.hpp"
#include "joint/designation_words.hpp"
#include "quantity/characters.hpp"

#include <algorithm>
#include <cctype>

namespace faywright {

namespace {

using namespace designation;

constexpr std::size_t most_bytes = 1000, most_questions = 30;

std::string lower(std::string_view text) {
    std::string out(text);
    std::transform(out.begin(), out.end(), out.begin(), [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    return out;
}

std::string any_of_these(const std::vector<std::string>& choices) {
    std::string out;
    for (std::size_t i = 0; i < choices.size(); ++i) out += (i == 0 ? "" : i + 1 == choices.size() ? " or " : ", ") + choices[i];
    return out;
}

/// A word of the text and what it stands for.
struct Said {
    std::string token, value;
};

std::vector<Said> distinct(std::vector<Said> list) {
    std::vector<Said> out;
    for (auto& said : list)
        if (std::none_of(out.begin(), out.end(), [&](const Said& other) { return other.value == said.value; }))
            out.push_back(std::move(said));
    return out;
}

bool is_stainless(std::string_view bolt_class) { return bolt_class.starts_with('A') && bolt_class.find('-') != std::string_view::npos; }

class Reader {
public:
    Reader(std::string_view text, const Tables& tables) : text_(text.substr(0, most_bytes)), tables_(tables) {
        out_.offer.designation = shown(text, 200);
        if (text.size() > most_bytes) unknown(fmt::format("(what follows {} bytes)", most_bytes), {});
    }

    Designation read() {
        for (std::size_t at = 0; at < text_.size();) at = piece(at);
        settle_part();
        settle_standard();
        settle_size();
        settle_washer();
        settle_length();
        settle_nut_class();
        settle_bolt_class();
        settle_finish();
        for (const auto& number : numbers_) unknown(number.token, {});
        return std::move(out_);
    }

private:
    using Part = OfferedPart;
    struct Number {
        std::string token;
        Measure measure;
        bool behind_nut = false;
    };
    struct InchSize {
        std::string token, size;
        std::optional<int> threads;
    };

    // ---- what is told

    std::size_t understood(std::size_t from, std::size_t to, std::string meaning) {
        out_.understood.push_back({text_.written(from, to), std::move(meaning)});
        return to;
    }
    void ask(std::string question) {
        if (out_.asked.size() < most_questions && std::find(out_.asked.begin(), out_.asked.end(), question) == out_.asked.end())
            out_.asked.push_back(std::move(question));
    }
    void unknown(std::string token, std::string nearest) {
        if (out_.unknown.size() < most_questions) out_.unknown.push_back({std::move(token), std::move(nearest)});
    }
    void ask_which(std::string_view of_what, const std::vector<Said>& list) {
        std::vector<std::string> tokens;
        for (const auto& said : list) tokens.push_back(fmt::format("\"{}\"", said.token));
        ask(fmt::format("several are named, {}: which {} is offered?", fmt::join(tokens, " and "), of_what));
    }

    // ---- one piece of the text

    std::size_t piece(std::size_t at) {
        if (!starts(at)) return at + 1;
        for (const auto reader :
             {&Reader::marked_class, &Reader::hardness, &Reader::quantity, &Reader::product_standard, &Reader::grade, &Reader::metric_size,
              &Reader::certificate_or_steel, &Reader::stainless_class, &Reader::coating_code, &Reader::dotted_class, &Reader::inch_size,
              &Reader::tolerance, &Reader::nut_mark, &Reader::phrase, &Reader::other_measure, &Reader::length, &Reader::number})
            if (const auto end = (this->*reader)(at); end != 0) return end;
        return unknown_word(at);
    }

    bool starts(std::size_t at) const {
        const char c = text_[at];
        return text_.goes_on(at) || c == '(' || c == '|' || (c == '*' && !metric_.empty()) || (c == '.' && text_.digit(at + 1));
    }

    /// "(8.8)" and "|8|".
    std::size_t marked_class(std::size_t at) {
        const char c = text_[at];
        if (c != '(' && c != '|') return 0;
        const auto inside = text_.measure(at + 1);
        if (!inside || text_[inside->end] != (c == '(' ? ')' : '|')) return at + 1;
        const auto end = inside->end + 1;
        if (c == '(' && class_row(inside->digits) != nullptr) {
            const auto token = text_.written(at, end);
            classes_.push_back({token, inside->digits});
            ask(fmt::format("\"{}\": is the class in brackets the underlined mark of low-carbon martensite steel?", token));
            return underlined(at, end, inside->digits);
        }
        if (c == '|' && is_nut_class(inside->digits)) {
            nut_classes_.push_back({text_.written(at, end), inside->digits});
            out_.offer.marking = fmt::format("|{}|", inside->digits);
            return understood(at, end, fmt::format("nut of class {} with reduced height, as of DIN 934", inside->digits));
        }
        return at + 1;
    }

    std::size_t underlined(std::size_t from, std::size_t to, const std::string& bolt_class) {
        out_.offer.marking = bolt_class + ", underlined";
        if (bolt_class == "12.9") return understood(from, to, "class 12.9, underlined: carbon steel with boron, manganese or chromium");
        out_.low_carbon_martensite = true;
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
        out_.hardness_hv = value;
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
        for (const auto& row : tables_.of<ProductStandard>().rows)
            if (const auto here = prefixed(at, lower(row.name)); here > end) {
                found = &row;
                end = here;
            }
        if (found == nullptr) return foreign_standard(at);
        // Part 1, and the year of the edition.
        if (text_[end] == '-' && text_[end + 1] == '1' && !text_.goes_on(end + 2)) end += 2;
        for (const auto year = text_.whole(end + 1); year && (text_[end] == ':' || text_[end] == '-') && !text_.goes_on(year->end) &&
                                                     year->digits.size() == 4 && year->value > 1900 && year->value < 2100;) {
            end = year->end;
            break;
        }
        const auto token = text_.written(at, end);
        standards_.push_back({token, found});
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
                unknown(token, nearest(token, tables_.of<ProductStandard>().names()));
                return value->end;
            }
        }
        return 0;
    }

    std::size_t grade(std::size_t at) {
        for (const auto& row : tables_.of<InchGrade>().rows) {
            if (row.grade.starts_with("grade")) continue;
            const auto behind = text_.words(at, "astm ", true);
            if (const auto end = text_.words(behind == 0 ? at : behind, lower(row.grade)); end != 0) {
                grades_.push_back({text_.written(at, end), row.grade});
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
        const auto value = text_.measure(next);
        if (!value || value->fraction || value->unit != Measure::Unit::none || text_.goes_on(value->end)) return 0;
        const auto token = text_.written(at, value->end);
        if (is_class) {
            if (!is_nut_class(value->digits)) return 0;
            nut_classes_.push_back({token, value->digits});
            return understood(at, value->end, fmt::format("class {}", value->digits));
        }
        const auto name = "grade " + value->digits;
        for (const auto& row : tables_.of<InchGrade>().rows)
            if (row.grade == name) {
                grades_.push_back({token, name});
                return understood(at, value->end, fmt::format("{} of SAE J429", name));
            }
        unknown(token, "");
        return value->end;
    }

    std::size_t metric_size(std::size_t at) {
        if (text_[at] != 'm') return 0;
        const auto size = text_.decimal(at + 1);
        if (!size || size->digits.front() == '0' || size->value > 160) return 0;
        auto end = size->end;
        if (text_.goes_on(end) && (text_[end] != 'x' || !starts_number(text_.by(end)))) return 0;
        const Said said{text_.written(at, end), "M" + size->digits};
        std::optional<Measure> pitch;
        std::vector<Measure> lengths;
        for (auto next = text_.by(end); next != 0; next = text_.by(end)) {
            const auto value = text_.measure(next);
            if (!value || (text_.goes_on(value->end) && text_[value->end] != 'x')) break;
            if (value->unit == Measure::Unit::none && !value->fraction && value->value < 5 && !pitch && lengths.empty())
                pitch = value;
            else
                lengths.push_back(*value);
            end = value->end;
        }
        const auto token = text_.written(at, end);
        const auto* thread = tables_.of<Thread>().find(said.value);
        const bool coarse = thread != nullptr && (!pitch || std::abs(in_mm(thread->pitch) - pitch->value) < 1e-6);
        metric_.push_back({token, coarse || !pitch ? said.value : said.value + "x" + pitch->digits});
        std::string meaning = "thread " + metric_.back().value;
        if (coarse) meaning += ", coarse";
        for (const auto& value : lengths) {
            lengths_.push_back({token, value});
            meaning += fmt::format(", length {}{}", value.digits, value.unit == Measure::Unit::inch ? " in" : " mm");
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
        if (named && class_row(group + "-" + strength->digits) != nullptr) {
            classes_.push_back({text_.written(at, strength->end), group + "-" + strength->digits});
            return understood(at, strength->end, fmt::format("stainless steel of class {}", classes_.back().value));
        }
        if (named && next == at + 3 && text_[at + 2] == '-') {
            const auto token = text_.written(at, strength->end);
            unknown(token, nearest(token, class_names()));
            groups_.push_back({token, group});
            return strength->end;
        }
        groups_.push_back({text_.written(at, at + 2), group});
        return understood(at, at + 2, fmt::format("stainless steel of group {}", group));
    }

    /// "A2L": metal, thickness and passivation by the code of ISO 4042.
    std::size_t coating_code(std::size_t at) {
        if (text_[at] != 'a' || !text_.digit(at + 1) || text_[at + 2] < 'a' || text_[at + 2] > 't' || text_.goes_on(at + 3)) return 0;
        codes_.push_back({text_.written(at, at + 3), ""});
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
        if (digits.find('.') == std::string::npos || class_row(digits) == nullptr) return 0;
        const bool undersize = text_[end] == 'u' && !text_.goes_on(end + 1);
        const auto measure = text_.measure(at);
        if (!undersize && (text_.goes_on(end) || (measure && measure->unit != Measure::Unit::none))) return 0;
        const auto token = text_.written(at, end);
        classes_.push_back({token, digits});
        if (line) return underlined(at, end, digits);
        if (undersize) {
            out_.undersize_thread = true;
            out_.offer.marking = digits + "U";
            return understood(at, end + 1, fmt::format("property class {}, thread cut undersize before galvanising", digits));
        }
        if (text_[end] == '/') {
            const auto nut = text_.whole(end + 1);
            if (nut && is_nut_class(nut->digits) && !text_.goes_on(nut->end)) {
                nut_classes_.push_back({text_.written(end + 1, nut->end), nut->digits});
                return understood(at, nut->end, fmt::format("property class {} with a nut of class {}", digits, nut->digits));
            }
            for (const std::string_view category : {"s", "tb", "tf"})
                if (const auto behind = text_.words(end + 1, category); behind != 0)
                    return understood(at, behind, fmt::format("property class {}, tightening category {}", digits, category));
        }
        return understood(at, end, fmt::format("property class {}", digits));
    }

    std::size_t inch_size(std::size_t at) {
        const auto size = text_.measure(at);
        if (!size || size->unit == Measure::Unit::millimetre || size->digits.front() == '0') return 0;
        auto end = size->end;
        std::optional<int> threads;
        auto next = text_.after_spaces(end);
        if (text_[next] == '-')
            if (const auto count = text_.whole(text_.after_spaces(next + 1));
                count && count->value >= 4 && count->value <= 80 &&
                (text_[count->end] == 'x' || text_[count->end] == 'u' || !text_.goes_on(count->end))) {
                threads = static_cast<int>(count->value);
                next = count->end;
            }
        bool named = false;
        auto behind = text_.after_spaces(next);
        for (const std::string_view series : {"unc", "unf", "unef", "uns", "bsw", "bsf"}) named = named || text_.words(behind, series) != 0;
        const bool mark = size->unit == Measure::Unit::inch;
        if (!metric_.empty() && !named) return 0;
        // With a size already there, or neither threads nor mark, it is a length or a mere number.
        if (!inch_.empty() && !named && !threads) return 0;
        if (!named && !mark && !size->fraction) return 0;
        if (!named && !threads && mark && !size->fraction && size->value > 1.5) return 0;
        if (threads && !named && !size->fraction && !mark) threads.reset();
        if (threads) end = next;
        const auto token = text_.written(at, end);
        inch_.push_back({token, size->digits, threads});
        std::string meaning = "inch thread " + size->digits + (threads ? fmt::format(" with {} threads to the inch", *threads) : "");
        // The series may stand between size and length.
        auto by_from = end;
        for (const auto& entry : phrases)
            if (entry.says == Says::series)
                if (const auto here = text_.words(text_.after_spaces(end), entry.words); here != 0) {
                    series_.push_back({text_.written(text_.after_spaces(end), here), std::string(entry.value)});
                    meaning += ", series " + std::string(entry.value);
                    by_from = here;
                }
        end = by_from;
        if (const auto by = text_.by(end); by != 0)
            if (const auto length = text_.measure(by, true); length && !text_.goes_on(length->end)) {
                lengths_.push_back({text_.written(by, length->end), *length});
                end = length->end;
                meaning += fmt::format("; length {}{}", length->digits, unit_words(length->unit));
            }
        return understood(at, end, meaning);
    }

    static std::string_view unit_words(Measure::Unit unit) {
        return unit == Measure::Unit::inch ? " in" : unit == Measure::Unit::millimetre ? " mm" : "";
    }

    /// "6AZ": a nut tapped oversize, or a bolt cut undersize where the letters are small.
    std::size_t tolerance(std::size_t at) {
        for (const std::string_view word : {"6az", "6ax"})
            if (const auto end = text_.words(at, word); end != 0) {
                if (text_.written(at, end).find('A') != std::string::npos) {
                    out_.offer.nut_thread = NutThread::oversize;
                    return understood(at, end, "nut tapped oversize for a galvanised bolt");
                }
                out_.undersize_thread = true;
                return understood(at, end, "bolt thread cut undersize before galvanising");
            }
        return 0;
    }

    /// "8Z", "10X".
    std::size_t nut_mark(std::size_t at) {
        const auto value = text_.whole(at);
        if (!value || !is_nut_class(value->digits) || !text_.goes_on(value->end) || text_.goes_on(value->end + 1)) return 0;
        const auto token = text_.written(at, value->end + 1);
        if (!token.ends_with('Z') && !token.ends_with('X')) return 0;
        if (starts_number(text_.after_spaces(value->end + 1))) return 0;
        nut_classes_.push_back({token, value->digits});
        add_part(token, Part::nut);
        out_.offer.nut_thread = NutThread::oversize;
        out_.offer.marking = token;
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
        for (const auto& row : tables_.of<Finish>().rows)
            if (const auto here = text_.words(at, lower(row.kind)); here > end) {
                coatings_.push_back({text_.written(at, here), row.kind});
                return understood(at, here, row.kind);
            }
        // "flZnL": the letter says the lubricant.
        if (const auto here = text_.words(at, "flznl"); here > end) {
            coatings_.push_back({text_.written(at, here), "zinc flake"});
            lubricants_.push_back({text_.written(at, here), "integral lubricant"});
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
            case Says::part: add_part(token, part_of(value)); return value;
            case Says::flange:
                add_part(token, part_of(value));
                shapes_.push_back({token, value});
                return value + " with a flange";
            case Says::shape:
                add_part(token, Part::bolt);
                shapes_.push_back({token, ""});
                return "bolt of another shape than the hexagon bolt";
            case Says::washer_kind:
                add_part(token, Part::washer);
                shapes_.push_back({token, ""});
                return "washer";
            case Says::coating: coatings_.push_back({token, value}); return value;
            case Says::uncertain_coating: uncertain_.push_back({token, value}); return "a coating: " + value;
            case Says::lubricant: lubricants_.push_back({token, value}); return value;
            case Says::uncertain_lubricant: lubricated_.push_back({token, value}); return "lubricated";
            case Says::steel_group: groups_.push_back({token, value}); return "stainless steel of group " + value;
            case Says::stainless: stainless_.push_back({token, value}); return "stainless steel";
            case Says::full_thread: threads_.push_back({token, "full"}); return "threaded to the head";
            case Says::part_thread: threads_.push_back({token, "part"}); return "with an unthreaded shank";
            case Says::used: out_.offer.used = true; return "has been tightened before";
            case Says::unused:
                if (!out_.offer.used) out_.offer.used = false;
                return "not tightened before";
            case Says::certificate: out_.offer.test_report = true; return "an inspection certificate comes with it";
            case Says::lesser_report:
                ask(fmt::format("\"{}\" is {}: does an inspection certificate 3.1 come with it?", token, value));
                return value;
            case Says::locking:
                add_part(token, Part::nut);
                out_.offer.prevailing_torque_nut = true;
                return "locking nut";
            case Says::martensite: out_.low_carbon_martensite = true; return "low-carbon martensite steel";
            case Says::series: series_.push_back({token, value}); return "thread series " + value;
            case Says::oversize: out_.offer.nut_thread = NutThread::oversize; return "nut tapped oversize";
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
            if (const auto value = text_.measure(end)) return understood(at, value->end, fmt::format("{}; not used", word));
        }
        return 0;
    }

    /// "140 mm", "x 140", "L=140", "length 140".
    std::size_t length(std::size_t at) {
        std::size_t from = at;
        bool named = false;
        if (const auto by = text_.by(at); by != 0 && !text_.words(at, "by") && (!metric_.empty() || !inch_.empty())) {
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
        const auto value = text_.measure(from, !inch_.empty());
        if (!value || text_.goes_on(value->end)) return 0;
        if (!named && value->unit == Measure::Unit::none && !(value->fraction && (!inch_.empty() || !metric_.empty()))) return 0;
        lengths_.push_back({text_.written(at, value->end), *value});
        return understood(at, value->end, fmt::format("length {}{}", value->digits, unit_words(value->unit)));
    }

    std::size_t number(std::size_t at) {
        const auto value = text_.measure(at);
        if (!value || text_.goes_on(value->end)) return 0;
        numbers_.push_back({text_.written(at, value->end), *value, !parts_.empty() && parts_.back().value == word_of(Part::nut)});
        return value->end;
    }

    std::size_t unknown_word(std::size_t at) {
        auto end = at;
        while (end < text_.size() && text_[end] != ' ' && text_[end] != ',' && text_[end] != ';') ++end;
        while (end > at + 1 && !text_.goes_on(end - 1)) --end;
        if (end == at) ++end;
        const auto token = text_.written(at, end);
        unknown(token, token.size() < 4 || token.size() > 40 ? std::string() : nearest(token, spellings()));
        return end;
    }

    // ---- what the tables know

    const Row<BoltClass>* class_row(std::string_view name) const {
        for (const auto& row : tables_.of<BoltClass>().rows)
            if (row.bolt_class == name) return &row;
        return nullptr;
    }
    bool is_nut_class(std::string_view name) const {
        const auto& rows = tables_.of<Nut>().rows;
        return std::any_of(rows.begin(), rows.end(), [&](const auto& row) { return row.nut_class == name; });
    }
    std::vector<std::string> class_names() const {
        std::vector<std::string> out;
        for (const auto& row : tables_.of<BoltClass>().rows)
            if (out.empty() || out.back() != row.bolt_class) out.push_back(row.bolt_class);
        return out;
    }
    /// Classes of stainless steel with this beginning and end.
    std::vector<std::string> stainless_classes(std::string_view begin, std::string_view end) const {
        auto names = class_names();
        std::erase_if(names,
                      [&](const std::string& name) { return !is_stainless(name) || !name.starts_with(begin) || !name.ends_with(end); });
        return names;
    }
    const std::vector<std::string>& spellings() {
        if (!spellings_.empty()) return spellings_;
        for (const auto& entry : phrases) spellings_.emplace_back(entry.words);
        for (const auto& name : tables_.of<ProductStandard>().names()) spellings_.push_back(name);
        for (const auto& name : tables_.of<InchThread>().names()) spellings_.push_back(name);
        for (const auto& name : class_names()) spellings_.push_back(name);
        return spellings_;
    }

    static Part part_of(std::string_view name) {
        for (const auto& [part, text] : Words<Part>::all)
            if (text == name) return part;
        return Part::bolt;
    }
    void add_part(const std::string& token, Part part) { parts_.push_back({token, std::string(word_of(part))}); }
    bool says_part(Part part) const {
        return std::any_of(parts_.begin(), parts_.end(), [&](const Said& said) { return said.value == word_of(part); });
    }

    // ---- what all of it comes to

    void settle_part() {
        for (const auto& [token, row] : standards_)
            if (row->part && (!row->assembly || parts_.empty())) add_part(token, part_of(*row->part));
        const auto kinds = distinct(parts_);
        out_.part_known = true;
        if (kinds.size() == 1)
            out_.offer.part = part_of(kinds.front().value);
        else if (says_part(Part::bolt))
            out_.offer.part = Part::bolt;  // nut and washer come with it
        else if (!kinds.empty()) {
            out_.part_known = false;
            ask_which("part", kinds);
        } else if (!lengths_.empty() || !grades_.empty() ||
                   std::any_of(classes_.begin(), classes_.end(), [](const Said& said) { return !is_stainless(said.value); }))
            out_.offer.part = Part::bolt;
        else {
            out_.part_known = false;
            ask("is it a bolt, a nut or a washer?");
        }
    }

    bool is(Part part) const { return out_.offer.part == part; }

    void settle_standard() {
        std::vector<Said> products;
        std::optional<bool> full;
        for (const auto& [token, row] : standards_) {
            const auto name = row->successor.value_or(row->name);
            if (row->assembly) out_.assembly = row->name;
            if (row->prevailing_torque) out_.offer.prevailing_torque_nut = true;
            const bool of_part = row->part && part_of(*row->part) == out_.offer.part;
            if (row->part == "washer") out_.offer.series = name;
            if (row->assembly || !of_part) continue;
            products.push_back({token, name});
            full = row->fully_threaded;
            out_.standard_as_written = row->name;
        }
        products = distinct(products);
        if (products.size() > 1) {
            ask_which("standard", products);
            out_.standard_as_written.reset();
            full.reset();
        } else if (products.size() == 1)
            out_.offer.standard = products.front().value;
        else if (out_.assembly)
            out_.offer.standard = out_.standard_as_written = out_.assembly;
        if (out_.assembly == "EN 14399") ask("EN 14399 without a part number: which part of it, and is it system HR or HV?");
        if (products.empty() && !out_.assembly)
            for (const auto& shape : shapes_)
                ask(fmt::format("\"{}\": to which standard, since its bearing face depends on it{}?", shape.token,
                                shape.value == "bolt" ? " (EN 1665 and ISO 4162 differ)" : ""));
        for (const auto& said : threads_) {
            if (full && *full != (said.value == "full")) {
                ask(fmt::format("\"{}\" contradicts {}: is the bolt threaded to the head?", said.token, products.front().token));
                full.reset();
                break;
            }
            full = said.value == "full";
        }
        if (distinct(threads_).size() > 1) {
            ask_which("thread length", threads_);
            full.reset();
        }
        if (is(Part::bolt)) out_.offer.fully_threaded = full;
    }

    void settle_size() {
        const auto metric = distinct(metric_);
        std::vector<Said> all = metric;
        for (const auto& inch : inch_) all.push_back({inch.token, inch.size + (inch.threads ? fmt::format("-{}", *inch.threads) : "")});
        all = distinct(all);
        if (all.size() > 1) return ask_which("size", all);
        if (all.empty()) return;
        if (!inch_.empty()) return settle_inch_size(inch_.front());
        const auto& size = all.front();
        out_.offer.size = size.value;
        const auto* standard = standard_row();
        if (tables_.of<Thread>().find(size.value) == nullptr)
            ask(size.value.find('x') == std::string::npos
                    ? fmt::format("\"{}\": {} is not in the table of threads; is it meant?", size.token, size.value)
                    : fmt::format("\"{}\": {} is a fine thread, which the table of threads does not have; is it meant?", size.token,
                                  size.value));
        else if (standard != nullptr && standard->fine) {
            out_.offer.size.reset();
            ask(fmt::format("{} has fine threads only: which pitch of {}?", standard->name, size.value));
        } else if (standard != nullptr && standard->successor) {
            if (const auto width = standard->old_width(size.value))
                ask(fmt::format("{} had {} across flats for {}, {} has {}: which is delivered?", standard->name, print(*width), size.value,
                                *standard->successor, print(tables_.of<Thread>().find(size.value)->across_flats)));
        }
    }

    const Row<ProductStandard>* standard_row() const {
        return out_.standard_as_written ? tables_.of<ProductStandard>().find(*out_.standard_as_written) : nullptr;
    }

    void settle_inch_size(const InchSize& inch) {
        const auto series = distinct(series_);
        if (series.size() > 1) return ask_which("thread series", series);
        std::vector<std::string> fitting, same;
        for (const auto& row : tables_.of<InchThread>().rows) {
            if (row.size != inch.size && row.size + ".0" != inch.size) continue;
            same.push_back(row.name);
            if ((!inch.threads || *inch.threads == static_cast<int>(row.threads_per_inch)) &&
                (series.empty() || series.front().value == row.series))
                fitting.push_back(row.name);
        }
        if (fitting.size() == 1)
            out_.offer.size = fitting.front();
        else if (fitting.size() > 1)
            ask(fmt::format("\"{}\": {}?", inch.token, any_of_these(fitting)));
        else
            ask(fmt::format("\"{}{}{}\" is not in the table of inch threads{}", inch.token, series.empty() ? "" : " ",
                            series.empty() ? "" : series.front().value,
                            same.empty() ? "; is it meant?" : ": is " + any_of_these(same) + " meant?"));
    }

    /// "ISO 7089-12-200 HV" has its size as a mere number; old standards name the hole.
    void settle_washer() {
        if (!is(Part::washer) || out_.offer.size || !out_.offer.series || numbers_.empty()) return;
        std::vector<Said> sizes;
        for (const auto& row : tables_.of<Washer>().rows) {
            const auto* thread = tables_.of<Thread>().find(row.size);
            const auto& series = *out_.offer.series;
            if (thread == nullptr || (row.series != series && !(series == "ISO 7090" && row.series == "ISO 7089"))) continue;
            const bool old = standard_row() != nullptr && standard_row()->successor.has_value();
            for (const auto& number : numbers_)
                if (std::abs(number.measure.value - in_mm(old ? row.inside_diameter : thread->diameter)) < 1e-6)
                    sizes.push_back({number.token, row.size});
        }
        if (sizes.size() != 1) {
            if (sizes.size() > 1) ask_which("size", sizes);
            return;
        }
        out_.offer.size = sizes.front().value;
        out_.understood.push_back({sizes.front().token, "washer for " + sizes.front().value});
        std::erase_if(numbers_, [&](const Number& number) { return number.token == sizes.front().token; });
    }

    void settle_length() {
        auto& lengths = lengths_;
        if (lengths.empty()) {
            if (!is(Part::bolt) || metric_.empty()) return;
            for (const auto& number : numbers_)
                if (number.measure.unit == Measure::Unit::none && number.measure.value >= 5 && !number.behind_nut &&
                    !is_steel_strength(number))
                    ask(fmt::format("is \"{}\" the length in mm?", number.token));
            return;
        }
        if (is(Part::nut) || is(Part::washer)) {
            for (const auto& [token, measure] : lengths)
                ask(fmt::format("\"{}\": a {} has no length; what is {}?", token, word_of(out_.offer.part), measure.digits));
            return;
        }
        for (const auto& [token, measure] : lengths) {
            const bool inch = !inch_.empty();
            if (measure.unit == Measure::Unit::none && (inch || measure.fraction))
                return ask(fmt::format("\"{}\": is the length {} in inches?", token, measure.digits));
            if (std::abs(in_mm(measure.length() - lengths.front().second.length())) > 1e-6)
                return ask(
                    fmt::format("two lengths are named, {} and {}: which is offered?", lengths.front().second.digits, measure.digits));
        }
        const auto length = lengths.front().second.length();
        if (length < mm(5) || length > mm(1000))
            return ask(fmt::format("\"{}\": a length of {} is not between 5 mm and 1000 mm; what is meant?", lengths.front().first,
                                   print(Value(length))));
        out_.offer.length = length;
    }

    bool is_steel_strength(const Number& number) const { return !stainless_classes("", "-" + number.measure.digits).empty(); }

    void settle_nut_class() {
        auto list = nut_classes_;
        const bool nut = is(Part::nut) && out_.part_known;
        for (const auto& number : numbers_)
            if ((nut || number.behind_nut) && is_nut_class(number.measure.digits) && !is_steel_strength(number) &&
                number.measure.unit == Measure::Unit::none)
                list.push_back({number.token, number.measure.digits});
        if (nut)
            for (const auto& said : classes_) {
                const auto* row = class_row(said.value);
                if (is_stainless(said.value))
                    list.push_back({said.token, row->nut_class});
                else
                    ask(fmt::format("\"{}\" is a class of bolts: is a nut of class {} meant?", said.token, row->nut_class));
            }
        if (nut)
            for (const auto& said : grades_) ask(fmt::format("\"{}\" is a grade of bolts: which class has the nut?", said.token));
        const auto distinct_list = distinct(list);
        if (distinct_list.size() > 1) return ask_which("class of nut", distinct_list);
        if (distinct_list.empty()) return;
        const auto& said = distinct_list.front();
        if (!nut && !says_part(Part::nut) && std::any_of(nut_classes_.begin(), nut_classes_.end(), [](const Said& s) {
                return s.token.find_first_of("lLkKcC") != std::string::npos;
            }))
            return ask(fmt::format("\"{}\" is a class of nuts: which class has the bolt?", said.token));
        out_.offer.nut_class = said.value;
        for (const auto& number : numbers_)
            if (number.token == said.token) out_.understood.push_back({said.token, "nut of class " + said.value});
        std::erase_if(numbers_, [&](const Number& number) { return number.token == said.token; });
    }

    void settle_bolt_class() {
        const auto groups = distinct(groups_);
        auto all = distinct(classes_);
        std::string group = groups.empty() ? "" : groups.front().value;
        const bool steel_said = !groups.empty() || !stainless_.empty();
        if (groups.size() > 1) return ask_which("steel", groups);
        for (const auto& said : all)
            if (steel_said && !(is_stainless(said.value) && said.value.starts_with(group))) {
                const auto& other = groups.empty() ? stainless_.front() : groups.front();
                return ask(fmt::format("\"{}\" and \"{}\" contradict each other: which material and class?", other.token, said.token));
            }
        if (is(Part::nut)) return ask_strength(group, steel_said && all.empty());
        if (is(Part::washer)) return;
        const auto grades = distinct(grades_);
        all.insert(all.end(), grades.begin(), grades.end());
        if (all.size() > 1) return ask_which("class", all);
        if (all.empty()) return ask_strength(group, steel_said);
        const auto& said = all.front();
        const bool grade = !grades.empty();
        if (grade && !metric_.empty())
            return ask(fmt::format("\"{}\" is a grade of inch bolts beside a metric thread: which class is meant?", said.token));
        if (!grade && !is_stainless(said.value) && !inch_.empty())
            return ask(fmt::format("\"{}\" is a class of metric bolts beside an inch thread: which grade is meant?", said.token));
        out_.offer.bolt_class = said.value;
    }

    /// A stainless steel without its class, or a class without its steel.
    void ask_strength(const std::string& group, bool steel_said) {
        for (const auto& number : numbers_)
            if (is_steel_strength(number))
                ask(fmt::format("\"{}\": {}?", number.token, any_of_these(stainless_classes(group, "-" + number.measure.digits))));
        std::erase_if(numbers_, [&](const Number& number) { return is_steel_strength(number); });
        if (steel_said)
            ask(fmt::format("\"{}\": {}?", groups_.empty() ? stainless_.front().token : groups_.front().token,
                            any_of_these(stainless_classes(group, ""))));
    }

    void settle_finish() {
        const auto& finishes = tables_.of<Finish>().rows;
        const bool carbon = std::any_of(classes_.begin(), classes_.end(), [](const Said& said) { return !is_stainless(said.value); });
        const bool stainless = !groups_.empty() || !stainless_.empty() ||
                               std::any_of(classes_.begin(), classes_.end(), [](const Said& said) { return is_stainless(said.value); });
        for (const auto& code : codes_)
            if (carbon && !stainless)
                coatings_.push_back({code.token, "zinc electroplate"});
            else
                ask(fmt::format("\"{}\": the code of ISO 4042 for electroplated zinc, or stainless steel?", code.token));
        auto kinds = distinct(coatings_);
        const auto lubricants = distinct(lubricants_);
        if (lubricants.size() > 1) ask_which("lubricant", lubricants);
        const auto lubricant = lubricants.size() == 1 ? std::optional(lubricants.front().value) : std::nullopt;
        if (stainless && std::any_of(kinds.begin(), kinds.end(), [](const Said& said) { return said.value != "stainless"; }))
            return ask(fmt::format("\"{}\" on stainless steel: which material and finish?", kinds.front().token));
        if (kinds.size() > 1) return ask_which("finish", kinds);
        if (kinds.empty() && stainless && !carbon)
            kinds.push_back({(!classes_.empty() ? classes_ : !groups_.empty() ? groups_ : stainless_).front().token, "stainless"});
        if (kinds.empty()) {
            out_.offer.lubricant = lubricant;
            for (const auto& said : distinct(uncertain_)) ask(fmt::format("\"{}\": which finish, {}?", said.token, said.value));
            if (uncertain_.empty() && codes_.empty() && !is(Part::washer) && (!classes_.empty() || !grades_.empty() || lubricant)) {
                std::vector<std::string> all;
                for (const auto& row : finishes)
                    if (row.kind != "stainless" && std::find(all.begin(), all.end(), row.kind) == all.end()) all.push_back(row.kind);
                ask(fmt::format("no finish is named: {}?", any_of_these(all)));
            }
            return;
        }
        const auto& kind = kinds.front().value;
        out_.coating = kind;
        std::vector<std::string> choices;
        for (const auto& row : finishes)
            if (row.kind == kind) {
                choices.push_back(row.name.starts_with(kind + ", ") ? row.name.substr(kind.size() + 2) : row.name);
                if (lubricant && choices.back() == *lubricant) out_.offer.finish = row.name;
            }
        if (out_.offer.finish) return;
        out_.offer.lubricant = lubricant;
        if (is(Part::washer) && !lubricant) return;
        if (choices.empty())
            ask(fmt::format("\"{}\" is not in the finishes table: thickness and friction?", kinds.front().token));
        else if (choices.size() == 1)
            ask(fmt::format("\"{}\": with {}?", kinds.front().token, choices.front()));
        else
            ask(fmt::format("\"{}\" is {}: {}?", kinds.front().token, kind, any_of_these(choices)));
    }

    EvenText text_;
    const Tables& tables_;
    Designation out_;
    std::vector<Said> parts_, shapes_, metric_, series_, classes_, groups_, stainless_, grades_, nut_classes_, codes_, coatings_,
        uncertain_, lubricants_, lubricated_, threads_;
    std::vector<InchSize> inch_;
    std::vector<std::pair<std::string, const Row<ProductStandard>*>> standards_;
    std::vector<std::pair<std::string, Measure>> lengths_;
    std::vector<Number> numbers_;
    std::vector<std::string> spellings_;
};

}  // namespace

Designation read_designation(std::string_view text, const Tables& tables) { return Reader(text, tables).read(); }

}  // namespace faywright
