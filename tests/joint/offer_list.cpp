// SPDX-License-Identifier: MIT
#include "joint/offer_list.hpp"

#include "input/reader.hpp"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <fstream>
#include <iterator>
#include <numeric>

using namespace faywright;

namespace {

/// Every field a row gives, as "key=value" words: what two readings are compared by.
std::string written(const OfferRow& row) {
    std::string out;
    const auto put = [&]<class T>(const Name& name, const T& member, const auto&...) {
        const auto say = [&]<class V>(const V& value) {
            out += fmt::format("{}{}=", out.empty() ? "" : " | ", name.key);
            if constexpr (detail::Number<V>)
                out += print(Value(value), 12);
            else if constexpr (detail::Word<V>)
                out += word_of(value);
            else if constexpr (std::same_as<V, bool>)
                out += value ? "yes" : "no";
            else
                out += value;
        };
        if constexpr (detail::IsOptional<T>::value) {
            if (member) say(*member);
        } else {
            say(member);
        }
    };
    OfferRow::describe(put, row);
    return out;
}

std::string written(const OfferList& list) {
    std::string out;
    for (const auto& row : list.rows) out += written(row) + '\n';
    return out;
}

/// "code 4:3 length": row and column of each problem, the header's first, a line each.
std::string places(const OfferList& list) {
    std::string out;
    const auto add = [&](const OfferProblem& p) { out += fmt::format("{} {}:{} {}\n", p.code, p.row, p.column, p.name); };
    for (const auto& p : list.header) add(p);
    for (const auto& row : list.rows)
        for (const auto& p : row.problems) add(p);
    return out;
}

/// The item of every row without a problem.
std::string good_items(const OfferList& list) {
    std::string out;
    for (const auto& row : list.rows)
        if (row.problems.empty()) out += (out.empty() ? "" : " ") + row.item.value_or("?");
    return out;
}

OfferList read_well(const std::string& text) {
    Diagnostics diagnostics;
    auto list = read_offers(text, "offers.csv", diagnostics);
    REQUIRE_MESSAGE(!diagnostics.any(), diagnostics.text());
    return list;
}

/// What must come of any text at all: the first fault, or nothing.
std::string judged(const std::string& text) {
    Diagnostics diagnostics;
    const auto list = read_offers(text, "offers.csv", diagnostics);
    if (diagnostics.any() != list.rows.empty()) return "neither refused nor read, or both";
    if (diagnostics.any()) return diagnostics.count() == 1 && is_fit(diagnostics.sorted()[0].message) ? "" : "not one clean error";
    int last = 0;
    const auto fault = [](const OfferProblem& p) {
        return p.row < 1 || p.line < p.row || p.column < 0 || p.found.empty() || p.wanted.empty() || !is_fit(p.text());
    };
    if (std::any_of(list.header.begin(), list.header.end(), fault)) return "a problem of the header is not told well";
    for (const auto& row : list.rows) {
        if (row.row <= last || row.line < row.row) return "rows out of order";
        last = row.row;
        if (!is_fit(written(row))) return "an unfit value was read: " + written(row);
        for (const auto& p : row.problems)
            if (fault(p) || p.row != row.row) return "not told well: " + p.text();
    }
    return "";
}

constexpr const char* head = "item;designation;length;class;used;part;comment\n";
constexpr const char* first = "a;M16 x 200;200 mm;8.8;no;bolt;fine\n";
constexpr const char* last = "z;M16 x 220;220 mm;10.9;yes;bolt;fine too\n";

struct BadList {
    std::string name;
    std::string text;
    std::string told, good;
};

/// A bad row between two good ones, on line and row 3.
BadList between(const std::string& name, const std::string& row, const std::string& told, const std::string& good = "a z") {
    return {name, std::string(head) + first + row + "\n" + last, told, good};
}

const std::vector<BadList>& bad_lists() {
    using namespace std::string_literals;
    static const std::vector<BadList> all{
        between("a length without unit", "b;x;200;8.8;no;bolt;", "unit.missing 3:3 length\n"),
        between("a length with a letter for a digit", "b;x;2OO mm;8.8;no;bolt;", "unit.dimension 3:3 length\n"),
        between("a length that is a force", "b;x;200 kN;8.8;no;bolt;", "unit.dimension 3:3 length\n"),
        between("a length in an unknown unit", "b;x;200 mn;8.8;no;bolt;", "unit.dimension 3:3 length\n"),
        between("a length too short", "b;x;2 mm;8.8;no;bolt;", "number.range 3:3 length\n"),
        between("a length too long", "b;x;2 m;8.8;no;bolt;", "number.range 3:3 length\n"),
        between("a negative length", "b;x;-200 mm;8.8;no;bolt;", "number.range 3:3 length\n"),
        between("a length that is no number", "b;x;nan mm;8.8;no;bolt;", "unit.dimension 3:3 length\n"),
        between("a length beyond all numbers", "b;x;1e999 mm;8.8;no;bolt;", "unit.dimension 3:3 length\n"),
        between("thousands with a point", "b;x;1.200,5 mm;8.8;no;bolt;", "number.signs 3:3 length\n"),
        between("two decimal commas", "b;x;1,200,5 mm;8.8;no;bolt;", "unit.dimension 3:3 length\n"),
        between("a word for a length", "b;x;as drawn;8.8;no;bolt;", "unit.dimension 3:3 length\n"),
        between("an unknown yes or no", "b;x;200 mm;8.8;perhaps;bolt;", "word.yes-or-no 3:5 used\n"),
        between("a number for yes or no", "b;x;200 mm;8.8;2;bolt;", "word.yes-or-no 3:5 used\n"),
        between("an unknown part", "b;x;200 mm;8.8;no;blot;", "name.unknown 3:6 part\n"),
        between("three mistakes in a row", "b;x;200;8.8;maybe;rivet;",
                "unit.missing 3:3 length\nword.yes-or-no 3:5 used\nname.unknown 3:6 part\n"),
        between("a cell too many", "b;x;200 mm;8.8;no;bolt;fine;more", "row.cells 3:8 \n"),
        between("a separator not quoted", "b;x; y;200 mm;8.8;no;bolt;fine",
                "unit.dimension 3:3 length\nword.yes-or-no 3:5 used\nname.unknown 3:6 part\nrow.cells 3:8 \n"),
        between("a row that says nothing", "b;;;;;;call us", "row.says-nothing 3:0 \n"),
        between("a row of dashes", "b;-;-;-;\xe2\x80\x93;-;-", "row.says-nothing 3:0 \n"),
        between("a quote never closed", "b;\"x;200 mm;8.8;no;bolt;", "text.quote 3:2 designation\n"),
        between("a quote never closed in the comment", "b;x;200 mm;8.8;no;bolt;\"fine", "text.quote 3:7 comment\n"),
        {"a quote never closed in the last row", std::string(head) + first + "b;x;200 mm;8.8;no;bolt;\"fine", "text.quote 3:7 comment\n",
         "a"},
        {"a quote never closed before a quoted row",
         std::string(head) + first + "b;\"x;200 mm;8.8;no;bolt;\n\"c\";\"y\";\"200 mm\"\n" + last, "text.quote 3:2 designation\n", "a c z"},
        {"two rows with a quote never closed", std::string(head) + "a;\"x;;;;;\n" + first + "b;y;;;;;\"fine\n" + last,
         "text.quote 2:2 designation\ntext.quote 4:7 comment\n", "a z"},
        between("a lone quote as a row", "\"", "text.quote 3:1 item\n"),
        between("a NUL", "b;x\0y;200 mm;8.8;no;bolt;"s, "text.control 3:2 designation\n"),
        between("a bell", "b;x;200 mm;8.8;no;bolt;\a", "text.control 3:7 comment\n"),
        between("an escape sequence", "b;\x1b[31mx;200 mm;8.8;no;bolt;", "text.control 3:2 designation\n"),
        between("text turned about", "b;x\xe2\x80\xaey;200 mm;8.8;no;bolt;", "text.control 3:2 designation\n"),
        between("a byte order mark inside", "b;\xef\xbb\xbfx;200 mm;8.8;no;bolt;", "text.control 3:2 designation\n"),
        between("Latin-1 in a designation",
                "b;gr\xf6\xdf"
                "er;200 mm;8.8;no;bolt;",
                "text.encoding 3:2 designation\n"),
        between("Latin-1 in a length", "b;x;200 \xb5m;8.8;no;bolt;", "text.encoding 3:3 length\n"),
        between("UTF-8 cut off", "b;x;200 mm;8.8;no;bolt;gr\xc3", "text.encoding 3:7 comment\n"),
        between("a surrogate", "b;\xed\xa0\x80;200 mm;8.8;no;bolt;", "text.encoding 3:2 designation\n"),
        between("a cell too long", "b;" + std::string(401, 'x') + ";200 mm;8.8;no;bolt;", "text.length 3:2 designation\n"),
        between("a comment too long", "b;x;200 mm;8.8;no;bolt;" + std::string(100'000, 'x'), "text.length 3:7 comment\n"),
        between("the end mark of an old system", "\x1a", "text.control 3:1 item\n"),
        {"rows after blank ones", "\n" + std::string(head) + "\n" + first + ";;;;;;\n  \nb;x;200;;;;\n", "unit.missing 7:3 length\n", "a"},
        {"rows after a cell of three lines", std::string(head) + "a;\"M16\nx\n200\";200 mm;;;;\nb;x;200;;;;\n" + last,
         "unit.missing 3:3 length\n", "a z"},
        {"a decimal comma between commas", "item,designation,length\na,x,\"12,5 mm\"\nb,x,12,5 mm\nc,x,12.5 mm\n",
         "unit.dimension 2:3 length\nunit.missing 3:3 length\nrow.cells 3:4 \n", "c"},
        {"an unknown column", "item;lenght;class\na;200 mm;8.8\n", "column.unknown 1:2 lenght\n", "a"},
        {"a column twice", "item;class;Class;ID\na;8.8;10.9;b\n", "column.twice 1:3 Class\ncolumn.twice 1:4 ID\n", "a"},
        {"a column without a name", "item;;class\na;x;8.8\n", "column.unnamed 1:2 \n", "a"},
        {"a heading with a unit of another kind", "item;length (kN)\na;200\nb;200 mm\n",
         "column.unit 1:2 length (kN)\nunit.missing 2:2 length (kN)\n", "b"},
        {"a heading in Latin-1",
         "item;class;gr\xf6\xdf"
         "e\na;8.8;M16\n",
         "column.unknown 1:3 gr??e\n", "a"},
        {"a heading with text turned about", "item;class;\xe2\x80\xaesize\na;8.8;M16\n", "column.unknown 1:3 ?size\n", "a"},
        {"a row after the separator's line", "sep=;\nitem;class;used\na;8.8;no\nb;8.8;never\n", "word.yes-or-no 4:3 used\n", "a"},
        {"bad and good ends of lines mixed", "item;class;used\r\na;8.8;no\rb;8.8;never\nc;8.8;no", "word.yes-or-no 3:3 used\n", "a c"},
    };
    return all;
}

struct Refused {
    std::string name;
    std::string text;
    std::string code;
};

const std::vector<Refused>& refused_lists() {
    using namespace std::string_literals;
    static const std::vector<Refused> all = [] {
        std::string many = head, wide = "class";
        for (std::size_t i = 0; i <= most_offers; ++i) many += first;
        for (std::size_t i = 0; i < most_columns; ++i) wide += ";x";
        return std::vector<Refused>{
            {"nothing", "", "list.empty"},
            {"blanks", " \n\t\r\n\r", "list.empty"},
            {"a byte order mark alone", "\xef\xbb\xbf", "list.empty"},
            {"a header alone", head, "list.empty"},
            {"a header and empty rows", std::string(head) + ";;;;;;\n\n;;;\n", "list.empty"},
            {"separators alone", ";;;\n;;;\n", "list.header"},
            {"no header", first, "list.header"},
            {"columns beside an offer alone", "item;price;comment\na;1;fine\n", "list.header"},
            {"prose", "Dear Sirs,\nwe offer as follows.\n", "list.header"},
            {"a page of the web", "<!DOCTYPE html>\n<html></html>\n", "list.header"},
            {"a printed document", "%PDF-1.4\n%\xe2\xe3\xcf\xd3\n", "list.header"},
            {"UTF-16, low byte first", "\xff\xfei\0t\0e\0m\0"s, "text.encoding"},
            {"UTF-16, high byte first", "\xfe\xff\0i\0t\0e\0m"s, "text.encoding"},
            {"UTF-16 without a mark", "c\0l\0a\0s\0s\0\n\0"s, "text.binary"},
            {"a spreadsheet's own file", "PK\x03\x04\x14\0\x06\0"s, "text.binary"},
            {"an older spreadsheet's file", "\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1\0\0"s, "text.binary"},
            {"an unknown separator", "sep=x\nclassxused\n8.8xno\n", "list.separator"},
            {"a separator of two", "sep=;;\nclass;used\n8.8;no\n", "list.separator"},
            {"a separator's line alone", "sep=;", "list.empty"},
            {"a header with a quote never closed", "item;\"class;used\na;8.8;no\n", "text.quote"},
            {"too many rows", many, "list.length"},
            {"too many columns", wide + "\n8.8\n", "list.columns"},
            {"too large", head + std::string(largest_input, 'x'), "list.size"},
        };
    }();
    return all;
}

const std::string same_offers =
    "item=1 | part=bolt | designation=M16; 8.8 | size=M16 | length=12.5 mm | fully-threaded=yes | used=no | comment=say \"when\", please\n"
    "item=2 | part=nut | designation=ISO 4032 | size=M16 | nut-thread=oversize | used=no\n"
    "item=3 | part=bolt | designation=gr\u00f6\u00dfer | length=200 mm | fully-threaded=no | used=yes | price=4,85\n";

struct Dialect {
    std::string name;
    std::string text;
};

std::string replaced(std::string text, const std::string& what, const std::string& with) {
    for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + with.size())) text.replace(at, what.size(), with);
    return text;
}

const std::vector<Dialect>& dialects() {
    static const std::string plain =
        "item;part;designation;size;length;fully-threaded;used;nut-thread;price;comment\n"
        "1;bolt;\"M16; 8.8\";M16;12.5 mm;yes;no;;;\"say \"\"when\"\", please\"\n"
        "2;nut;ISO 4032;M16;;;no;oversize;;\n"
        "3;bolt;gr\u00f6\u00dfer;;200 mm;no;yes;;4,85;\n";
    static const std::string commas =
        "item,part,designation,size,length,fully-threaded,used,nut-thread,price,comment\n"
        "1,bolt,M16; 8.8,M16,12.5 mm,yes,no,,,\"say \"\"when\"\", please\"\n"
        "2,nut,ISO 4032,M16,,,no,oversize,,\n"
        "3,bolt,gr\u00f6\u00dfer,,200 mm,no,yes,,\"4,85\",\n";
    static const std::vector<Dialect> all{
        {"semicolons", plain},
        {"commas", commas},
        {"tabs", replaced(replaced(replaced(replaced(plain, "M16; 8.8", "@"), ";", "\t"), "\"@\"", "@"), "@", "M16; 8.8")},
        {"CRLF", replaced(plain, "\n", "\r\n")},
        {"CR", replaced(plain, "\n", "\r")},
        {"a byte order mark", "\xef\xbb\xbf" + plain},
        {"a separator's line", "sep=;\n" + plain},
        {"a byte order mark, a separator's line, CRLF", "\xef\xbb\xbfSEP=,\r\n" + replaced(commas, "\n", "\r\n")},
        {"bars", "sep=|\n" + replaced(replaced(replaced(plain, "M16; 8.8", "@"), ";", "|"), "@", "M16; 8.8")},
        {"no end of the last line", plain.substr(0, plain.size() - 1)},
        {"empty columns behind", replaced(plain, "\n", ";;;\n")},
        {"empty rows", "\n\n" + replaced(plain, "\n", "\n;;;;;;;;;\n \t \n") + ";;;;;;;;;;;;;;;;;;;;\n\n"},
        {"cells left out behind", replaced(replaced(plain, "oversize;;", "oversize"), "4,85;", "4,85")},
        {"decimal commas", replaced(plain, "12.5 mm", "12,5 mm")},
        {"a unit in the header", replaced(replaced(replaced(plain, ";length;", ";Length (mm);"), "12.5 mm", "12,5"), "200 mm", "200")},
        {"another unit in the header",
         replaced(replaced(replaced(plain, ";length;", ";LENGTH [ cm ];"), "12.5 mm", "1.25"), "200 mm", "20.0")},
        {"a unit in the header and in a cell", replaced(replaced(plain, ";length;", ";length(cm);"), "200 mm", "20")},
        {"names in capitals", replaced(replaced(plain, "item;part;designation", "ID;PART;Designation"), "fully-threaded;used;nut-thread",
                                       "Fully Threaded;USED;nut_thread")},
        {"blanks about cells", replaced(replaced(plain, ";M16;", " ; M16  ;\t"), "item;part", " item ;  part ")},
        {"no-break spaces", replaced(plain, "12.5 mm", "\u00a012.5\u00a0mm\u202f")},
        {"quoted throughout",
         "\"item\",\"part\",\"designation\",\"size\",\"length\",\"fully-threaded\",\"used\",\"nut-thread\",\"price\",\"comment\"\n"
         "\"1\",\"bolt\",\"M16; 8.8\",\"M16\",\"12.5 mm\",\"yes\",\"no\",\"\",\"\",\"say \"\"when\"\", please\"\n"
         "\"2\",\"nut\",\"ISO 4032\",\"M16\",\"\",\"\",\"no\",\"oversize\",\"\",\"\"\n"
         "\"3\",\"bolt\",\"gr\u00f6\u00dfer\",\"\",\"200 mm\",\"no\",\"yes\",\"\",\"4,85\",\"\"\n"},
        {"line breaks in cells", replaced(replaced(plain, "M16; 8.8", "M16;\n8.8"), "\"when\"\", please", "\"when\"\",\r\nplease")},
        {"a quote inside an unquoted cell", replaced(plain, "\"say \"\"when\"\", please\"", "say \"when\", please")},
        {"other words for yes and no", replaced(replaced(plain, ";yes;no;", ";X;0;"), ";no;yes;", ";False;TRUE;")},
        {"words in capitals", replaced(replaced(plain, ";nut;", ";Nut;"), ";oversize;", ";OVERSIZE;")},
        {"dashes for what is not said", replaced(plain, ";M16;;;no", ";M16;-;\u2013;no")},
    };
    return all;
}

}  // namespace

TEST_SUITE("joint/offer_list") {
    TEST_CASE("every kind of bad list is told at its row and column, and the good rows are read") {
        for (const auto& bad : bad_lists()) {
            INFO(bad.name);
            const auto list = read_well(bad.text);
            CHECK(places(list) == bad.told);
            CHECK(good_items(list) == bad.good);
            CHECK(judged(bad.text) == "");
        }
        CHECK(bad_lists().size() >= 30);
    }

    TEST_CASE("what is no list is refused with its reason") {
        for (const auto& refused : refused_lists()) {
            INFO(refused.name);
            Diagnostics diagnostics;
            CHECK(read_offers(refused.text, "offers.csv", diagnostics).rows.empty());
            REQUIRE(diagnostics.count() == 1);
            CHECK(diagnostics.sorted()[0].code == refused.code);
            CHECK(diagnostics.text().starts_with("offers.csv:"));
        }
    }

    TEST_CASE("the same offers in every dialect") {
        for (const auto& dialect : dialects()) {
            INFO(dialect.name, ":\n", dialect.text);
            const auto list = read_well(dialect.text);
            CHECK(places(list) == "");
            CHECK(written(list) == same_offers);
        }
        CHECK(dialects().size() >= 12);
    }

    TEST_CASE("what a problem says") {
        const auto said = [](const std::string& text) {
            const auto list = read_well(text);
            return list.header.empty() ? list.rows.at(0).problems.at(0).text() : list.header[0].text();
        };
        CHECK(said("name;Length\nx;200\n") ==
              "row 2, column 2 (Length): is \"200\", which has no unit; a length is wanted, for example \"16 mm\"");
        CHECK(said("name;length (mm)\nx;2000\n") ==
              "row 2, column 2 (length (mm)): is 2000 mm; at least 5 mm and at most 1000 mm is accepted");
        CHECK(said("name;part\nx;blot\n") ==
              "row 2, column 2 (part): is \"blot\"; accepted are \"bolt\", \"nut\", \"washer\", \"tube\", \"layer\" (the nearest is "
              "\"bolt\")");
        CHECK(said("name;used\nx;maybe\n") == "row 2, column 2 (used): is \"maybe\"; yes, true, 1 or x, or no, false or 0 is wanted");
        CHECK(said("name;lenght\nx;1\n") == "row 1, column 2 (lenght): is no known column and is passed over; the nearest is \"length\"");
        CHECK(said("name;comment\nx;f\xfcr\n") ==
              "row 2, column 2 (comment): is \"f?r\", which holds a byte that is not UTF-8; the list saved as UTF-8 is wanted");
        CHECK(said("name;item\n;7\n") == "row 2: says nothing of the part; at least its name or designation is wanted");
        CHECK(said("name;class\nx;8.8;y\n") ==
              "row 2, column 3: is \"y\", which stands under no heading; a cell that holds the separator is accepted in quotes");
    }

    TEST_CASE("a field that cannot be read is left out, the others of its row are there") {
        const auto list = read_well("item;name;length;part;used\n7;x;200;rivet;yes\n");
        CHECK(written(list) == "item=7 | name=x | used=yes\n");
        CHECK(list.rows[0].problems.size() == 2);
    }

    TEST_CASE("a currency in the header goes with the price, row and line part ways after a cell of two lines") {
        const auto list = read_well("name;price (EUR)\n\"x\ny\";4,85\nz;5 USD\n");
        CHECK(written(list) == "name=x y | price=4,85 EUR\nname=z | price=5 USD\n");
        CHECK(list.rows[1].row == 3);
        CHECK(list.rows[1].line == 4);
    }

    TEST_CASE("every column of the description is a column of the list") {
        std::vector<std::string> keys;
        OfferRow row;
        OfferRow::describe([&](const Name& name, const auto&...) { keys.emplace_back(name.key); }, row);
        CHECK(keys.size() == 22);
        const auto list = read_well(fmt::format("{}\nbolt\n", fmt::join(keys, ";")));
        CHECK(list.header.empty());
    }

    TEST_CASE("the demo list: one row of sixteen cannot be read") {
        std::ifstream file(std::string(FAYWRIGHT_SOURCE_DIR) + "/cli/demo/offers.csv", std::ios::binary);
        const auto list = read_well({std::istreambuf_iterator<char>(file), {}});
        CHECK(list.rows.size() == 16);
        CHECK(places(list) == "unit.dimension 17:6 Length (mm)\nword.yes-or-no 17:10 Used\n");
        CHECK(
            written(list.rows[0]) ==
            "item=1 | part=bolt | name=as on the drawing | designation=ISO 4014 - M16 x 200 - 8.8 | size=M16 | length=200 mm | class=8.8 | "
            "finish=hot-dip galvanised, waxed | fully-threaded=no | used=no | test-report=yes | price=4,85 EUR | comment=from stock");
        CHECK(list.rows[10].offer.designation == "5/8\"-11 x 8\" grade 5");
    }

    TEST_CASE("quotes that never pair cost no more than their lines") {
        std::string text = "item;class;comment\n";
        for (int i = 0; i < 4000; ++i) text += "a;8.8;\"" + std::string(200, 'x') + "\n";
        const auto list = read_well(text);
        CHECK(list.rows.size() == 4000);
        CHECK(std::all_of(list.rows.begin(), list.rows.end(), [](const OfferRow& row) { return row.problems.size() == 1; }));
    }
}

namespace {

template <class T>
T drawn(const std::vector<T>& from) {
    return from[*rc::gen::inRange<std::size_t>(0, from.size())];
}

bool coin() { return *rc::gen::arbitrary<bool>(); }

/// Text a person could have typed: separators, quotes and letters beyond English among it.
std::string random_text() {
    const auto word = rc::gen::element<std::string>("M16", "x", "8.8", "ISO 4014", ";", ",", "\"", "\"\"", "|", "gr\u00f6\u00dfer", "1/2\"",
                                                    "=1+1", "'", "12,5", "sep=;", "a,b", "\"q\"", "yes", "\u4e2d", "(mm)");
    auto words = *rc::gen::container<std::vector<std::string>>(word);
    words.resize(std::min<std::size_t>(words.size(), 5));
    words.insert(words.begin(), coin() ? "a" : "\"b");
    return fmt::format("{}", fmt::join(words, " "));
}

OfferRow random_offer() {
    OfferRow row;
    const auto draw = []<class T>(const Name&, T& member, const auto&...) {
        const auto value = []<class V>(V) -> V {
            if constexpr (std::same_as<V, Length>)
                return mm(*rc::gen::inRange(10, 2001) * 0.5);
            else if constexpr (detail::Word<V>)
                return (*rc::gen::elementOf(Words<V>::all)).first;
            else if constexpr (std::same_as<V, bool>)
                return coin();
            else
                return random_text();
        };
        if constexpr (detail::IsOptional<T>::value) {
            if (coin()) member = value(typename T::value_type{});
        } else {
            member = value(T{});
        }
    };
    OfferRow::describe(draw, row);
    return row;
}

/// How one spreadsheet writes a list.
struct RandomDialect {
    char separator = *rc::gen::element(';', ',', '\t', '|');
    bool mark = coin(), separator_line = separator == '|' || coin(), quoted = coin(), breaks = coin(), unit_in_header = coin(),
         decimal_comma = separator != ',' && coin(), blank_rows = coin(), note_column = coin();
    std::string end = *rc::gen::element<std::string>("\n", "\r\n", "\r");
    std::string behind = std::string(*rc::gen::inRange<std::size_t>(0, 4), separator);

    [[nodiscard]] std::string cell(std::string text) const {
        if (text.find_first_of("\"\r\n") == std::string::npos && text.find(separator) == std::string::npos && !quoted) return text;
        text = replaced(std::move(text), "\"", "\"\"");
        if (breaks) text = replaced(std::move(text), " ", "\n");
        return '"' + text + '"';
    }
    [[nodiscard]] std::string heading(std::string key) const {
        if (key == "length" && unit_in_header) key += coin() ? " (mm)" : " [mm]";
        if (key == "item" && coin()) key = "id";
        for (auto& c : key) {
            if (c == '-') c = drawn<char>({'-', ' ', '_'});
            if (c >= 'a' && c <= 'z' && key.find('(') == std::string::npos && key.find('[') == std::string::npos && coin())
                c = static_cast<char>(c - 32);
        }
        return cell(key);
    }
    [[nodiscard]] std::string number(Length value) const {
        auto text = fmt::format("{}", std::round(in_mm(value) * 2) / 2);
        if (decimal_comma) text = replaced(text, ".", ",");
        return unit_in_header && coin() ? text : text + drawn<std::string>({" mm", "mm", "\u00a0mm"});
    }

    [[nodiscard]] std::string list(const std::vector<OfferRow>& rows) const {
        std::vector<std::vector<std::string>> table(rows.size() + 1);
        OfferRow none;
        OfferRow::describe([&](const Name& name, const auto&...) { table[0].push_back(heading(name.key)); }, none);
        for (std::size_t i = 0; i < rows.size(); ++i) {
            const auto put = [&]<class T>(const Name&, const T& member, const auto&...) {
                const auto say = [&]<class V>(const V& value) -> std::string {
                    if constexpr (detail::Number<V>)
                        return number(value);
                    else if constexpr (detail::Word<V>)
                        return std::string(word_of(value));
                    else if constexpr (std::same_as<V, bool>)
                        return value ? drawn<std::string>({"yes", "TRUE", "1", "x"}) : drawn<std::string>({"no", "False", "0"});
                    else
                        return value;
                };
                if constexpr (detail::IsOptional<T>::value)
                    table[i + 1].push_back(member ? cell(say(*member)) : drawn<std::string>({"", "", "\"\"", "-"}));
                else
                    table[i + 1].push_back(cell(say(member)));
            };
            OfferRow::describe(put, rows[i]);
        }
        if (note_column)
            for (std::size_t i = 0; i < table.size(); ++i) table[i].push_back(cell(i == 0 ? "weather" : random_text()));
        std::vector<std::size_t> order(table[0].size());
        std::iota(order.begin(), order.end(), 0U);
        for (std::size_t i = order.size(); i > 1; --i) std::swap(order[i - 1], order[*rc::gen::inRange<std::size_t>(0, i)]);
        std::string out = mark ? "\xef\xbb\xbf" : "";
        if (separator_line) out += std::string("sep=") + separator + end;
        for (const auto& row : table) {
            for (std::size_t i = 0; i < order.size(); ++i) {
                if (i > 0) out += separator;
                out += row[order[i]];
            }
            out += behind + end;
            if (blank_rows) out += behind + end;
        }
        return out;
    }
};

}  // namespace

TEST_SUITE("joint/offer_list") {
    TEST_CASE("any offers written in any dialect read back the same") {
        CHECK(rc::check("round trip", [] {
            OfferList given;
            const auto count = *rc::gen::inRange(1, 6);
            for (int i = 0; i < count; ++i) given.rows.push_back(random_offer());
            const RandomDialect dialect;
            const auto text = dialect.list(given.rows);
            RC_LOG(text);
            Diagnostics diagnostics;
            const auto list = read_offers(text, "offers.csv", diagnostics);
            RC_ASSERT(!diagnostics.any());
            RC_ASSERT(list.header.size() == (dialect.note_column ? 1U : 0U));
            RC_ASSERT(std::all_of(list.rows.begin(), list.rows.end(), [](const OfferRow& row) { return row.problems.empty(); }));
            RC_ASSERT(written(list) == written(given));
        }));
    }

    TEST_CASE("any bytes are refused or read") {
        CHECK(rc::check("hostile bytes", [] {
            auto text = coin() ? std::string(head) : "";
            if (coin()) {
                text += *rc::gen::container<std::string>(rc::gen::arbitrary<char>());
            } else {
                const auto part = rc::gen::element<std::string>(";", ",", "\t", "\n", "\r", "\r\n", "\"", "\"\"", "length", "class", "(mm)",
                                                                "200 mm", "8.8", "yes", " ", "sep=", "\xef\xbb\xbf", "\xf6", "\x1b",
                                                                "\xe2\x80\xae", "1e999", "-", ".", "nan", "bolt");
                for (const auto& each : *rc::gen::container<std::vector<std::string>>(part)) text += each;
            }
            RC_ASSERT(judged(text) == "");
        }));
    }

    TEST_CASE("a list with some bytes spoilt is refused or read") {
        CHECK(rc::check("spoilt bytes", [] {
            auto text = drawn(dialects()).text;
            const auto times = *rc::gen::inRange(1, 6);
            for (int i = 0; i < times; ++i) {
                const auto at = *rc::gen::inRange<std::size_t>(0, text.size());
                if (coin())
                    text[at] = *rc::gen::arbitrary<char>();
                else
                    text.erase(at, 1);
            }
            RC_ASSERT(judged(text) == "");
        }));
    }
}
