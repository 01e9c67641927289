// SPDX-License-Identifier: MIT
#pragma once

#include "input/nodes.hpp"
#include "input/toml_writer.hpp"
#include "joint/reading.hpp"

#include <functional>
#include <limits>
#include <set>

/// Wrong input made from the schema itself: every field that the descriptions of a file's record can reach from a demo file is
/// spoilt in every way a person or a script might spoil it. A new field is tested the day it is described.
namespace joint_tests {

/// What must come of it. `either`: the schema accepts the value; the joint may still be refused for what it means.
enum class Want { refused, either };

/// One step down the tree: a key, or an index where the key is empty.
struct Step {
    std::string key;
    std::size_t index = 0;
};
using Steps = std::vector<Step>;

inline Node* find(Node& root, const Steps& steps) {
    Node* here = &root;
    for (const auto& step : steps) {
        Node* next = nullptr;
        if (step.key.empty()) {
            if (step.index < here->items.size()) next = &here->items[step.index];
        } else {
            for (auto& entry : here->entries)
                if (entry.key == step.key) next = &entry.value;
        }
        if (next == nullptr) return nullptr;
        here = next;
    }
    return here;
}

using node_tests::flag;
using node_tests::number;
using node_tests::words;
inline Node list(std::vector<Node> items = {}) {
    Node node;
    node.kind = Node::Kind::array;
    node.items = std::move(items);
    return node;
}
inline Node table() { return Node{}; }
inline Node date() {
    Node node;
    node.kind = Node::Kind::other;
    return node;
}

/// The unit a dimension is written in here, and SI value of one of it.
struct Unit {
    const char* name;
    double size;
    double zero = 0.0;
};
inline Unit unit_of(const Dimension& dimension) {
    if (dimension == dimension_of<Length>) return {"mm", 1e-3};
    if (dimension == dimension_of<Force>) return {"N", 1.0};
    if (dimension == dimension_of<Moment>) return {"N*m", 1.0};
    if (dimension == dimension_of<Duration>) return {"years", 31557600.0};
    if (dimension == dimension_of<Temperature>) return {"degC", 1.0, 273.15};
    if (dimension == dimension_of<Stress>) return {"MPa", 1e6};
    if (dimension == dimension_of<Mass>) return {"kg", 1.0};
    return {"", 1.0};
}

/// Spoils a tree that `File` describes. `read` reads a text under a file's name: nothing where it refuses, else what is wrong with the
/// outcome, or an empty string.
template <class File>
class Spoiler {
public:
    using Read = std::function<std::optional<std::string>(const std::string& text, const std::string& file, Diagnostics& diagnostics)>;

    Spoiler(Node root, std::string file, Read read) : root_(std::move(root)), file_(std::move(file)), read_(std::move(read)) {
        Steps steps;
        File record;
        visit_record(steps, record);
    }

    int count = 0, refused = 0;
    std::vector<std::string> faults;
    std::map<std::string, int> codes;
    std::set<std::string> fields;

private:
    /// Reads the spoilt tree and holds the outcome against what must come. `watched` is found by `steps` in the copy.
    void judge(const std::string& what, Node& spoilt, const Steps& steps, Want want, bool at_its_line) {
        ++count;
        const Node* watched = at_its_line ? find(spoilt, steps) : nullptr;
        const TomlWriter writer(spoilt, watched);
        Diagnostics diagnostics;
        const auto outcome = read_(writer.text(), file_, diagnostics);
        const auto fault = [&](const std::string& why) {
            faults.push_back(fmt::format("{}: {}: {}\n{}", file_, what, why, diagnostics.any() ? diagnostics.text() : ""));
        };
        if (outcome) {
            if (diagnostics.any()) return fault("accepted with errors");
            if (want == Want::refused) return fault("accepted");
            if (!outcome->empty()) fault("assessed to what is no result: " + *outcome);
            return;
        }
        ++refused;
        if (!diagnostics.any()) return fault("refused without a word");
        bool at_line = false;
        for (const auto& d : diagnostics.sorted()) {
            ++codes[d.code];
            if (!d.at.file || *d.at.file != file_) return fault("another file is named");
            if (d.at.line < 1 || d.at.line > std::max(1, writer.lines()) || d.at.column < 1 || d.at.width < 1)
                return fault(fmt::format("place {}:{} is not in the file", d.at.line, d.at.column));
            if (d.code.empty() || d.message.empty() || d.message.find('\n') != std::string::npos)
                return fault("a message is empty or broken over lines");
            if (d.message.back() == '.' || (d.message.front() >= 'A' && d.message.front() <= 'Z'))
                return fault("a message is not in the house's form: " + d.message);
            // A table with a heading of its own has its keys on the lines below.
            const auto below = watched == nullptr ? 0 : static_cast<int>(watched->entries.size());
            at_line = at_line || (d.at.line >= writer.line() && d.at.line <= writer.line() + below);
        }
        if (want == Want::refused && at_its_line && !at_line) fault(fmt::format("no message points to its line {}", writer.line()));
    }

    /// Puts a value in a field and judges.
    void with(const Steps& record, const Name& name, std::size_t index, const std::string& what, const Node& value, Want want) {
        Node copy = root_;
        Node* here = find(copy, record);
        auto steps = record;
        if (here->kind == Node::Kind::array) {
            if (index >= here->items.size()) return;
            here->items[index] = value;
            steps.push_back({"", index});
        } else {
            bool there = false;
            for (auto& entry : here->entries)
                if (entry.key == name.key) {
                    entry.value = value;
                    there = true;
                }
            if (!there) here->entries.push_back({name.key, {}, value});
            steps.push_back({name.key});
        }
        judge(fmt::format("{}: {}", told(steps), what), copy, steps, want, true);
    }

    [[nodiscard]] static std::string told(const Steps& steps) {
        std::string out;
        for (const auto& step : steps) out += step.key.empty() ? fmt::format("[{}]", step.index) : (out.empty() ? "" : ".") + step.key;
        return out;
    }

    void missing_and_misspelt(const Steps& record, const Name& name, std::size_t index, bool required) {
        const Node* here = find(root_, record);
        auto steps = record;
        if (here->kind == Node::Kind::array) {
            steps.push_back({"", index});
            Node copy = root_;
            Node* list = find(copy, record);
            if (index < list->items.size()) {
                list->items.erase(list->items.begin() + static_cast<std::ptrdiff_t>(index));
                // Only records of which every field may be absent can be shorter.
                judge(told(steps) + ": left out of a list", copy, record, Want::refused, false);
            }
            return;
        }
        steps.push_back({name.key});
        if (here->find(name.key) == nullptr) return;
        Node copy = root_;
        auto& entries = find(copy, record)->entries;
        std::erase_if(entries, [&](const Entry& entry) { return entry.key == name.key; });
        judge(told(steps) + ": missing", copy, record, required ? Want::refused : Want::either, false);
        const std::string key = name.key;
        for (const auto& wrong : {key + "x", key.substr(1), std::string(1, key[0]) + key,
                                  key.size() > 2 ? key.substr(0, key.size() - 2) + key.back() + key[key.size() - 2] : key + "-"}) {
            if (wrong.empty() || wrong == key) continue;
            Node misspelt = root_;
            for (auto& entry : find(misspelt, record)->entries)
                if (entry.key == key) entry.key = wrong;
            // Where the misspelt word happens to be another field's, the schema may accept it.
            bool another = false;
            for (const auto& known : keys_) another = another || known == wrong;
            auto spelt = record;
            spelt.push_back({wrong});
            judge(fmt::format("{}: misspelt \"{}\"", told(steps), wrong), misspelt, spelt, another ? Want::either : Want::refused, true);
        }
    }

    template <class T>
    void spoil_number(const Steps& record, const Name& name, std::size_t index, const Range<T>* range) {
        constexpr auto dimension = dimension_of<T>;
        const auto unit = unit_of(dimension);
        const auto put = [&](const std::string& what, const Node& value, Want want) { with(record, name, index, what, value, want); };
        const auto in_unit = [&](double amount) {
            return dimension.is_ratio() ? number(amount) : words(fmt::format("{:.17g} {}", amount, unit.name));
        };
        const auto si_of = [](const T& q) {
            if constexpr (std::same_as<T, double>)
                return q;
            else
                return q.value();
        };
        const double infinite = std::numeric_limits<double>::infinity();
        const double least = range == nullptr ? -infinite : (si_of(range->least) - unit.zero) / unit.size;
        const double most = range == nullptr ? infinite : (si_of(range->most) - unit.zero) / unit.size;
        const auto by_range = [&](double amount) { return amount < least || amount > most ? Want::refused : Want::either; };
        put("a wrong unit", words(dimension == dimension_of<Mass> ? "5 mm" : "5 kg"), Want::refused);
        put("another wrong unit", words("5 mm*s"), Want::refused);
        put("an unknown unit", words("5 ells"), Want::refused);
        put("two numbers", words(fmt::format("5 {} 3 {}", unit.name, unit.name)), Want::refused);
        put("a comma for a point", words(fmt::format("1,5 {}", unit.name)), Want::refused);
        put("a unit without number", words(dimension.is_ratio() ? "%" : unit.name), Want::refused);
        if (!dimension.is_ratio()) {
            put("a number without unit", number(5), Want::refused);
            put("a number in quotes without unit", words("5"), Want::refused);
            put("zero without unit", number(0), Want::refused);
        } else {
            put("a ratio with a unit", words("0.5 mm"), Want::refused);
        }
        put("true", flag(true), Want::refused);
        put("a list", list({in_unit(5)}), Want::refused);
        put("an empty list", list(), Want::refused);
        put("a table", table(), Want::refused);
        put("a date", date(), Want::refused);
        put("an empty string", words(""), Want::refused);
        put("a space", words(" "), Want::refused);
        put("a word", words("many"), Want::refused);
        put("nan", number(std::nan("")), Want::refused);
        put("nan in quotes", words(fmt::format("nan {}", unit.name)), Want::refused);
        put("inf", number(infinite), Want::refused);
        put("-inf", number(-infinite), Want::refused);
        put("inf in quotes", words(fmt::format("inf {}", unit.name)), Want::refused);
        put("beyond a double", words(fmt::format("1e400 {}", unit.name)), Want::refused);
        put("below a double", words(fmt::format("1e-400 {}", unit.name)), by_range(0));
        put("a hexadecimal number", words(fmt::format("0x10 {}", unit.name)), Want::refused);
        put("absurdly large", in_unit(1e30), Want::refused);
        put("absurdly large below nothing", in_unit(-1e30), Want::refused);
        put("zero", in_unit(0), by_range(0));
        put("negative zero", in_unit(-0.0), by_range(0));
        put("negative", in_unit(-5), by_range(-5));
        put("tiny", in_unit(1e-12), by_range(1e-12));
        if (range != nullptr) {
            const double step = 1e-6 * std::max({1.0, std::abs(least), std::abs(most)});
            put("just below its range", in_unit(least - step), Want::refused);
            put("just above its range", in_unit(most + step), Want::refused);
            put("the least of its range", in_unit(least), Want::either);
            put("the most of its range", in_unit(most), Want::either);
            put("the middle of its range", in_unit(0.5 * (least + most)), Want::either);
        }
    }

    template <class T>
    void spoil_count(const Steps& record, const Name& name, std::size_t index, const Range<T>& range) {
        const auto put = [&](const std::string& what, const Node& value, Want want) { with(record, name, index, what, value, want); };
        const auto by_range = [&](double amount) {
            return amount < range.least || amount > range.most || amount != std::floor(amount) ? Want::refused : Want::either;
        };
        for (const double amount : {0.0, -1.0, 1.5, 1e-9, 1e9, 1e30, -1e30, static_cast<double>(range.least) - 1,
                                    static_cast<double>(range.most) + 1, static_cast<double>(range.least), static_cast<double>(range.most)})
            put(fmt::format("{}", amount), number(amount), by_range(amount));
        put("nan", number(std::nan("")), Want::refused);
        put("inf", number(std::numeric_limits<double>::infinity()), Want::refused);
        put("in quotes", words("3"), Want::refused);
        put("with a unit", words("3 mm"), Want::refused);
        put("an empty string", words(""), Want::refused);
        put("true", flag(true), Want::refused);
        put("a list", list({number(3)}), Want::refused);
        put("a table", table(), Want::refused);
        put("a date", date(), Want::refused);
    }

    void spoil_text(const Steps& record, const Name& name, std::size_t index) {
        const auto put = [&](const std::string& what, const Node& value, Want want) { with(record, name, index, what, value, want); };
        static const std::set<std::string> free{"title", "name", "reason", "state"};
        const auto unknown = free.contains(name.key) ? Want::either : Want::refused;
        put("a number", number(16), Want::refused);
        put("zero", number(0), Want::refused);
        put("negative", number(-5), Want::refused);
        put("nan", number(std::nan("")), Want::refused);
        put("true", flag(true), Want::refused);
        put("a list", list({words("M16")}), Want::refused);
        put("a table", table(), Want::refused);
        put("a date", date(), Want::refused);
        put("an empty string", words(""), Want::refused);
        put("a string of 401", words(std::string(401, 'a')), Want::refused);
        put("a string of 100000", words(std::string(100000, 'a')), Want::refused);
        put("a string of 400", words(std::string(400, 'a')), unknown);
        put("two lines", words("one\ntwo"), Want::refused);
        put("a tabulator", words("one\ttwo"), Want::refused);
        put("an unknown name", words("no such thing"), unknown);
        put("a space", words(" "), unknown);
        put("a number in quotes", words("-1"), unknown);
        put("letters of other alphabets", words("Bienenwagen Größe \xe8\x9c\x82"), unknown);
        put("what a format might take for its own", words("{} {0} %s %n"), unknown);
        const Node* here = find(root_, record);
        if (const Node* value = here->kind == Node::Kind::table ? here->find(name.key) : nullptr;
            value != nullptr && value->kind == Node::Kind::string) {
            put("its own name and a letter", words(value->text + "x"), unknown);
            put("its own name in small letters with a space", words(" " + value->text), unknown);
        }
    }

    template <class T>
    void spoil_word(const Steps& record, const Name& name, std::size_t index) {
        const auto put = [&](const std::string& what, const Node& value, Want want) { with(record, name, index, what, value, want); };
        for (const auto& [value, text] : Words<T>::all) {
            put(fmt::format("\"{}\"", text), words(std::string(text)), Want::either);
            put(fmt::format("\"{}\" and a letter", text), words(std::string(text) + "s"), Want::refused);
        }
        put("a number", number(1), Want::refused);
        put("zero", number(0), Want::refused);
        put("negative", number(-1), Want::refused);
        put("nan", number(std::nan("")), Want::refused);
        put("true", flag(true), Want::refused);
        put("a list", list(), Want::refused);
        put("a table", table(), Want::refused);
        put("an empty string", words(""), Want::refused);
        put("an unknown word", words("no such word"), Want::refused);
        put("a long word", words(std::string(100000, 'w')), Want::refused);
    }

    void spoil_flag(const Steps& record, const Name& name, std::size_t index) {
        const auto put = [&](const std::string& what, const Node& value, Want want) { with(record, name, index, what, value, want); };
        put("true", flag(true), Want::either);
        put("false", flag(false), Want::either);
        put("true in quotes", words("true"), Want::refused);
        put("yes", words("yes"), Want::refused);
        put("one", number(1), Want::refused);
        put("zero", number(0), Want::refused);
        put("nan", number(std::nan("")), Want::refused);
        put("a list", list({flag(true)}), Want::refused);
        put("a table", table(), Want::refused);
        put("an empty string", words(""), Want::refused);
    }

    /// What no table and no list can be.
    void spoil_compound(const Steps& record, const Name& name, std::size_t index, bool is_list) {
        const auto put = [&](const std::string& what, const Node& value, Want want) { with(record, name, index, what, value, want); };
        put("a number", number(5), Want::refused);
        put("nan", number(std::nan("")), Want::refused);
        put("a string", words("5 mm"), Want::refused);
        put("an empty string", words(""), Want::refused);
        put("true", flag(true), Want::refused);
        put("a date", date(), Want::refused);
        put("a list of numbers",
            list({number(1), number(2), number(3), number(4), number(5), number(6), number(7), number(8), number(9), number(10),
                  number(11)}),
            Want::refused);
        if (is_list) {
            put("an empty table", table(), Want::refused);
            put("an empty list", list(), Want::either);
            put("a list of one empty table", list({table()}), Want::refused);
            put("a list of lists", list({list(), list()}), Want::refused);
            put("a list of 1001", list(std::vector<Node>(1001, table())), Want::refused);
        } else {
            put("an empty table", table(), Want::either);
            put("an empty list", list(), Want::either);
            Node strange = table();
            strange.entries.push_back({"no-such-key", {}, number(1)});
            put("a table of strange keys", strange, Want::refused);
            Node nameless = table();
            nameless.entries.push_back({"", {}, number(1)});
            put("a table with an empty key", nameless, Want::refused);
        }
    }

    /// The visitor of one record's description.
    struct Fields {
        Spoiler& spoiler;
        const Steps& record;
        std::size_t index = 0;

        template <class T, class... Rest>
        void operator()(const Name& name, const T& member, const Rest&... rest) {
            constexpr bool defaults = (std::same_as<Rest, Defaulted> || ...);
            spoiler.spoil_field(record, name, index++, member, !defaults && !detail::IsOptional<T>::value, rest...);
        }
    };

    template <class T, class... Rest>
    void spoil_field(const Steps& record, const Name& name, std::size_t index, const T& member, bool required, const Rest&... rest) {
        if constexpr (detail::IsOptional<T>::value) {
            typename T::value_type value{};
            spoil_field(record, name, index, value, required, rest...);
        } else {
            std::string generic;
            for (const auto& step : record)
                if (!step.key.empty()) generic += step.key + ".";
            fields.insert(generic + name.key);
            missing_and_misspelt(record, name, index, required);
            if constexpr (detail::Number<T>) {
                const Range<T>* range = nullptr;
                (take(range, rest), ...);
                spoil_number<T>(record, name, index, range);
            } else if constexpr (std::same_as<T, bool>) {
                spoil_flag(record, name, index);
            } else if constexpr (std::integral<T>) {
                const Range<T>* range = nullptr;
                (take(range, rest), ...);
                spoil_count<T>(record, name, index, *range);
            } else if constexpr (detail::Word<T>) {
                spoil_word<T>(record, name, index);
            } else if constexpr (std::same_as<T, std::string>) {
                spoil_text(record, name, index);
            } else {
                spoil_compound(record, name, index, detail::IsVector<T>::value);
                auto below = record;
                const Node* here = find(root_, record);
                if (here->kind == Node::Kind::array)
                    below.push_back({"", index});
                else
                    below.push_back({name.key});
                if (find(root_, below) != nullptr) {
                    go_into(below, member);
                } else if constexpr (detail::Record<T>) {
                    // Not written in this file: an empty table of it, and what could be written there.
                    const Node as_given = root_;
                    find(root_, record)->entries.push_back({name.key, {}, table()});
                    go_into(below, member);
                    root_ = as_given;
                }
            }
        }
    }

    template <class R, class T>
    static void take(const Range<T>*& to, const R& rest) {
        if constexpr (std::same_as<R, Range<T>>) to = &rest;
    }

    template <class T>
    void go_into(const Steps& steps, const T& member) {
        if constexpr (detail::IsVector<T>::value) {
            const auto count_of_items = find(root_, steps)->items.size();
            for (std::size_t i = 0; i < count_of_items; ++i) {
                // Of a long list of like things the first and the last are enough.
                if (count_of_items > 6 && i > 1 && i + 1 < count_of_items) continue;
                auto below = steps;
                below.push_back({"", i});
                if constexpr (std::same_as<typename T::value_type, std::string>) {
                    for (const auto& wrong : {number(3), flag(true), words(""), words("no such thing"), table()}) {
                        Node copy = root_;
                        *find(copy, below) = wrong;
                        judge(told(below) + ": no name", copy, below, Want::refused, true);
                    }
                } else {
                    typename T::value_type item{};
                    go_into(below, item);
                }
            }
        } else if constexpr (detail::IsVariant<T>::value) {
            visit_variant(steps, member);
        } else {
            T record{};
            visit_record(steps, record);
        }
    }

    template <class T>
    void visit_record(const Steps& steps, T& record) {
        std::vector<std::string> keys;
        T::describe([&](const Name& name, auto&&...) { keys.emplace_back(name.key); }, record);
        const auto outer = std::exchange(keys_, keys);
        Fields visitor{*this, steps};
        T::describe(visitor, record);
        keys_ = outer;
        Node copy = root_;
        Node* here = find(copy, steps);
        if (here->kind == Node::Kind::table) {
            here->entries.push_back({"no-such-key", {}, words("5 mm")});
            auto strange = steps;
            strange.push_back({"no-such-key"});
            judge(told(steps) + ": a strange key", copy, strange, Want::refused, true);
        } else {
            here->items.push_back(words("5 mm"));
            judge(told(steps) + ": one value too many", copy, steps, Want::refused, true);
        }
    }

    template <class... T>
    void visit_variant(const Steps& steps, const std::variant<T...>&) {
        const Node* kind = find(root_, steps)->find("kind");
        if (kind == nullptr) return;
        const Name name{"kind", "", ""};
        const auto own = kind->text;
        const auto put = [&](const std::string& what, const Node& value, Want want) { with(steps, name, 0, what, value, want); };
        for (const std::string& other : {std::string(T::kind)...})
            if (other != own) put("another kind: " + other, words(other), Want::either);
        Node copy = root_;
        std::erase_if(find(copy, steps)->entries, [](const Entry& entry) { return entry.key == "kind"; });
        judge(told(steps) + ".kind: missing", copy, steps, Want::refused, true);
        put("unknown", words("rivet"), Want::refused);
        put("empty", words(""), Want::refused);
        Node wrong = root_;
        *find(wrong, steps) = words("plate");
        judge(told(steps) + ": a string for a part", wrong, steps, Want::refused, true);
        for (const auto& value : {number(1), flag(true), list(), table(), number(std::nan(""))}) {
            Node typed = root_;
            for (auto& entry : find(typed, steps)->entries)
                if (entry.key == "kind") entry.value = value;
            judge(told(steps) + ".kind: of a wrong type", typed, steps, Want::refused, false);
        }
        const auto attempt = [&]<class Alternative>(std::type_identity<Alternative>) {
            if (own != Alternative::kind) return;
            Alternative record{};
            visit_record(steps, record);
        };
        (attempt(std::type_identity<T>{}), ...);
    }

    Node root_;
    std::string file_;
    Read read_;
    std::vector<std::string> keys_;  ///< of the record in hand
};

}  // namespace joint_tests
