// SPDX-License-Identifier: MIT
#include "joint/designation.hpp"

#include "quantity/characters.hpp"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <array>
#include <cctype>
#include <string>
#include <vector>

using namespace faywright;

namespace {

const Tables& built_in() {
    static const Tables tables = [] {
        Diagnostics none;
        return load_tables(std::nullopt, none);
    }();
    return tables;
}

Designation read(std::string_view text) { return read_designation(text, built_in()); }

/// What was understood, in one line.
std::string summary(const Designation& read) {
    const auto& o = read.offer;
    std::string out(read.part_known ? word_of(*o.part) : std::string_view("?"));
    const auto put = [&](std::string_view key, const std::optional<std::string>& value) {
        if (value) out += fmt::format("; {}{}", key, *value);
    };
    const auto flag = [&](std::string_view yes, std::string_view no, const std::optional<bool>& value) {
        if (value) out += fmt::format("; {}", *value ? yes : no);
    };
    put("", o.standard);
    put("", o.size);
    if (o.length) out += "; " + print(Value(*o.length), 6);
    put("", o.bolt_class);
    put("", o.finish);
    if (!o.finish) put("coating ", read.coating);
    put("nut ", o.nut_class);
    if (o.nut_thread) out += fmt::format("; {}", word_of(*o.nut_thread));
    put("mark ", o.marking);
    put("lubricant ", o.lubricant);
    if (o.part != OfferedPart::washer) put("washer ", o.series);
    flag("full thread", "shank", o.fully_threaded);
    flag("used", "new", o.used);
    flag("locking", "", o.prevailing_torque_nut);
    flag("certificate", "", o.test_report);
    if (read.standard_as_written != o.standard) put("was ", read.standard_as_written);
    if (read.assembly != o.standard) put("set ", read.assembly);
    if (read.hardness_hv) out += fmt::format("; {} HV", print_number(*read.hardness_hv));
    if (read.low_carbon_martensite) out += "; low-carbon";
    if (read.undersize_thread) out += "; undersize";
    return out;
}

struct Case {
    const char *text, *understood;
    std::vector<std::string> asked;    ///< how each question begins
    std::vector<std::string> unknown;  ///< with the nearest spelling
};

const std::vector<Case>& cases() {
    static const std::vector<Case> list{
        {"M12x140 8.8 HDG", "bolt; M12; 140 mm; 8.8; coating hot-dip galvanised", {"\"HDG\""}, {}},
        {"M12 × 140", "bolt; M12; 140 mm", {}, {}},
        {"ISO 4014 - M12 × 140 - 10.9", "bolt; ISO 4014; M12; 140 mm; 10.9; shank", {"no finish is named"}, {}},
        {"ISO4017-M12x40-8.8-A2L", "bolt; ISO 4017; M12; 40 mm; 8.8; coating zinc electroplate; full thread", {"\"A2L\""}, {}},
        {"DIN 931 M12x140 8.8 verz.",
         "bolt; ISO 4014; M12; 140 mm; 8.8; shank; was DIN 931",
         {"DIN 931 had 19 mm across flats for M12", "\"verz\""},
         {}},
        {"A4-80 M12x140", "bolt; M12; 140 mm; A4-80; coating stainless", {"\"A4-80\""}, {}},
        {"M12*140 A2-70", "bolt; M12; 140 mm; A2-70; coating stainless", {"\"A2-70\""}, {}},
        {"1/2-13 UNC grade 5", "bolt; 1/2-13 UNC; grade 5", {"no finish is named"}, {}},
        {"1/2\"-13 x 5-1/2\" UNC Gr.5 zinc plated",
         "bolt; 1/2-13 UNC; 139.7 mm; grade 5; coating zinc electroplate",
         {"\"zinc plated\""},
         {}},
        {"3/8-16x2 gr 8", "bolt; 3/8-16 UNC; grade 8", {"\"2\"", "no finish is named"}, {}},
        {"nut ISO 4032 M12 8 HDG", "nut; ISO 4032; M12; coating hot-dip galvanised; nut 8", {"\"HDG\""}, {}},
        {"ISO 7089 12 200HV", "washer; ISO 7089; M12; 200 HV", {}, {}},
        {"flange bolt", "bolt", {"\"flange bolt\""}, {}},
        {"bolt M12 x 140 class 8.8 zinc flake", "bolt; M12; 140 mm; 8.8; coating zinc flake", {"\"zinc flake\""}, {}},
        {"M12x140 8.8 hot-dip galvanised, waxed", "bolt; M12; 140 mm; 8.8; hot-dip galvanised, waxed", {}, {}},
        {"M12 x 140,0 8,8 HDG dry", "bolt; M12; 140 mm; 8.8; hot-dip galvanised, dry", {}, {}},
        {"m12x140-8.8-hdg", "bolt; M12; 140 mm; 8.8; coating hot-dip galvanised", {"\"hdg\""}, {}},
        {"*** M12x140 8.8 HDG ***", "bolt; M12; 140 mm; 8.8; coating hot-dip galvanised", {"\"HDG\""}, {}},
        {"BLT-M12X140-88 8.8", "bolt; 8.8", {"no finish is named"}, {"BLT-M12X140-88"}},
        {"91257A123 M12x140 8.8", "bolt; M12; 140 mm; 8.8", {"no finish is named"}, {"91257A123"}},
        {"M12x140 10.9 A4", "bolt; M12; 140 mm", {"\"A4\""}, {}},
        {"M12x140 A2 8.8", "bolt; M12; 140 mm", {"\"A2\""}, {}},
        {"M12x140 70", "bolt; M12; 140 mm", {"\"70\""}, {}},
        {"M12x140x120 8.8", "bolt; M12; 8.8", {"two lengths are named", "no finish is named"}, {}},
        {"M12x1.25 8.8", "bolt; M12x1.25; 8.8", {"\"M12x1.25\"", "no finish is named"}, {}},
        {"M12x1.25x60 8.8", "bolt; M12x1.25; 60 mm; 8.8", {"\"M12x1.25x60\"", "no finish is named"}, {}},
        {"M12x1,75x60 8.8", "bolt; M12; 60 mm; 8.8", {"no finish is named"}, {}},
        {"M12x140 A4 HDG", "bolt; M12; 140 mm", {"\"A4\"", "\"HDG\""}, {}},
        {"M12x140 8.8_ HDG", "bolt; M12; 140 mm; 8.8; coating hot-dip galvanised; mark 8.8, underlined; low-carbon", {"\"HDG\""}, {}},
        {"M12x140 (8.8) HDG",
         "bolt; M12; 140 mm; 8.8; coating hot-dip galvanised; mark 8.8, underlined; low-carbon",
         {"\"(8.8)\"", "\"HDG\""},
         {}},
        {"M12x140 8̲.̲8̲", "bolt; M12; 140 mm; 8.8; mark 8.8, underlined; low-carbon", {"no finish is named"}, {}},
        {"low-carbon martensite M12x140 10.9", "bolt; M12; 140 mm; 10.9; low-carbon", {"no finish is named"}, {}},
        {"used M12x140 8.8 HDG waxed", "bolt; M12; 140 mm; 8.8; hot-dip galvanised, waxed; used", {}, {}},
        {"second-hand bolt M16 x 60", "bolt; M16; 60 mm; used", {}, {}},
        {"M12x140 8.8 zinc", "bolt; M12; 140 mm; 8.8", {"\"zinc\""}, {}},
        {"DIN 933 M16x50 8.8 zinc plated waxed",
         "bolt; ISO 4017; M16; 50 mm; 8.8; zinc electroplate, waxed; full thread; was DIN 933",
         {},
         {}},
        {"DIN 125 A 13 140HV", "washer; ISO 7089; M12; was DIN 125 A; 140 HV", {}, {}},
        {"DIN 125-1 B 13", "washer; ISO 7090; M12; was DIN 125 B", {}, {}},
        {"ISO 7089-12-200 HV", "washer; ISO 7089; M12; 200 HV", {}, {}},
        {"ISO 7090 - 8 - 300 HV", "washer; ISO 7090; M8; 300 HV", {}, {}},
        {"washer M12 HDG", "washer; M12; coating hot-dip galvanised", {}, {}},
        {"DIN 934 M12 |8| tZn",
         "nut; ISO 4032; M12; coating hot-dip galvanised; nut 8; mark |8|; was DIN 934",
         {"DIN 934 had 19 mm across flats for M12", "\"tZn\""},
         {}},
        {"DIN 985 M10 8 zp", "nut; ISO 10511; M10; coating zinc electroplate; nut 8; locking; was DIN 985", {"\"zp\""}, {}},
        {"EN 14399-4 M12x40 10.9 HV tZn", "bolt; EN 14399-4; M12; 40 mm; 10.9; coating hot-dip galvanised", {"\"tZn\""}, {}},
        {"EN 15048 ISO 4014 M16x80 8.8 tZn SB",
         "bolt; ISO 4014; M16; 80 mm; 8.8; coating hot-dip galvanised; shank; set EN 15048",
         {"\"tZn\""},
         {}},
        {"AS 1110 M20x100 8.8 galv", "bolt; AS 1110; M20; 100 mm; 8.8", {"\"galv\""}, {}},
        {"AS/NZS 1252.1 M20x60 8.8/TF HDG", "bolt; AS 1252; M20; 60 mm; 8.8; coating hot-dip galvanised", {"\"HDG\""}, {}},
        {"M12x140 8.8/8 HDG waxed", "bolt; M12; 140 mm; 8.8; hot-dip galvanised, waxed; nut 8", {}, {}},
        {"M12 nut 8Z HDG", "nut; M12; coating hot-dip galvanised; nut 8; oversize; mark 8Z", {"\"HDG\""}, {}},
        {"M8U", "?", {"is it a bolt"}, {"M8U"}},
        {"M12x140 8.8U tZn", "bolt; M12; 140 mm; 8.8; coating hot-dip galvanised; mark 8.8U; undersize", {"\"tZn\""}, {}},
        {"BOLT, HEX, M12 X 140, GRADE 8.8, HDG", "bolt; M12; 140 mm; 8.8; coating hot-dip galvanised", {"\"HDG\""}, {}},
        {"M12 x 140 grade 8", "bolt; M12; 140 mm", {"\"grade 8\"", "no finish is named"}, {}},
        {"1/2 x 2 grade 5", "bolt; grade 5", {"\"1/2\"", "\"2\"", "no finish is named"}, {}},
        {"½ UNC x 2in gr 5 plain oiled", "bolt; 1/2-13 UNC; 50.8 mm; grade 5; plain, oiled", {}, {}},
        {"1/2-13x2\" A325 HDG", "bolt; 1/2-13 UNC; 50.8 mm; A325; coating hot-dip galvanised", {"\"HDG\""}, {}},
        {"1/2-13 UNC x 5 8.8", "bolt; 1/2-13 UNC", {"\"5\"", "\"8.8\"", "no finish is named"}, {}},
        {"5/8-11 UNF x 2\"", "bolt; 50.8 mm", {"\"5/8-11 UNF\""}, {}},
        {"1-8 UNC x 3\" grade 8", "bolt; 1-8 UNC; 76.2 mm; grade 8", {"no finish is named"}, {}},
        {"1-14 UNS x 3\" grade 8", "bolt; 76.2 mm; grade 8", {"\"1-14 UNS\"", "no finish is named"}, {}},
        {"1 1/8-7 UNC grade 5", "bolt; grade 5", {"\"1 1/8-7 UNC\"", "no finish is named"}, {}},
        {"ISO 4041 M12x40", "bolt; M12; 40 mm", {}, {"ISO 4041 ~ ISO 4014"}},
        {"ISO 4014:2011 M12x140 10.9", "bolt; ISO 4014; M12; 140 mm; 10.9; shank", {"no finish is named"}, {}},
        {"DIN EN ISO 4014-M12x140-10.9-flZnL", "bolt; ISO 4014; M12; 140 mm; 10.9; zinc flake, integral lubricant; shank", {}, {}},
        {"M12x20 in A4-70", "bolt; M12; 20 mm; A4-70; coating stainless", {"\"A4-70\""}, {}},
        {"M12x140 galvinised", "bolt; M12; 140 mm", {}, {"galvinised ~ galvanised"}},
        {"316 stainless bolt M12x140", "bolt; M12; 140 mm; coating stainless", {"\"316\"", "\"316\""}, {}},
        {"10 pcs M12x140 8.8 HDG", "bolt; M12; 140 mm; 8.8; coating hot-dip galvanised", {"\"HDG\""}, {}},
        {"10 x M12x140 8.8 HDG", "bolt; M12; 140 mm; 8.8; coating hot-dip galvanised", {"\"HDG\""}, {}},
        {"M12 140 8.8", "bolt; M12; 8.8", {"is \"140\" the length in mm", "no finish is named"}, {}},
        {"M12 bolt 140mm long 8.8", "bolt; M12; 140 mm; 8.8", {"no finish is named"}, {}},
        {"M12 bolt 5 1/2\" long 8.8", "bolt; M12; 139.7 mm; 8.8", {"no finish is named"}, {}},
        {"M10x50 M12x50", "bolt; 50 mm", {"several are named"}, {}},
        {"M12x140 8.8 10.9", "bolt; M12; 140 mm", {"several are named", "no finish is named"}, {}},
        {"ISO 4014 ISO 4032 ISO 7089 M12x140 8.8", "bolt; ISO 4014; M12; 140 mm; 8.8; washer ISO 7089; shank", {"no finish is named"}, {}},
        {"M12x140 8.8 3.1 certificate", "bolt; M12; 140 mm; 8.8; certificate", {"no finish is named"}, {}},
        {"M12x140 8.8 EN 10204 2.2", "bolt; M12; 140 mm; 8.8", {"\"EN 10204 2.2\"", "no finish is named"}, {}},
        {"nylon insert lock nut M12 class 8 ZP", "nut; M12; coating zinc electroplate; nut 8; locking", {"\"ZP\""}, {}},
        {"M12x140,8.8,HDG", "bolt; M12; 140 mm; 8.8; coating hot-dip galvanised", {"\"HDG\""}, {}},
        {"M12x1400000 8.8", "bolt; M12; 8.8", {"\"M12x1400000\"", "no finish is named"}, {}},
        {"SAE J429 grade 5.2 1/2-20 UNF x 2\"", "bolt; 1/2-20 UNF; 50.8 mm; grade 5.2", {"no finish is named"}, {}},
        {"M12x140 8.8 zinc flake integral lubricant", "bolt; M12; 140 mm; 8.8; zinc flake, integral lubricant", {}, {}},
        {"socket head cap screw M12x40 12.9", "bolt; M12; 40 mm; 12.9", {"\"socket head cap screw\"", "no finish is named"}, {}},
        {"12.9_ ISO 4762 M12x40", "bolt; ISO 4762; M12; 40 mm; 12.9; mark 12.9, underlined", {"no finish is named"}, {}},
        {"M36x100 8.8", "bolt; M36; 100 mm; 8.8", {"\"M36x100\"", "no finish is named"}, {}},
        {"Qty: 50 M12x140", "bolt; M12; 140 mm", {}, {}},
        {"nut A4-80 M12", "nut; M12; coating stainless; nut 80", {"\"A4-80\""}, {}},
        {"nut M12 8.8", "nut; M12", {"\"8.8\"", "no finish is named"}, {}},
        {"ISO 8765 M12x100 8.8", "bolt; ISO 8765; 100 mm; 8.8; shank", {"ISO 8765 has fine threads only", "no finish is named"}, {}},
        {"setscrew DIN 931 M12x140",
         "bolt; ISO 4014; M12; 140 mm; was DIN 931",
         {"\"setscrew\"", "DIN 931 had 19 mm across flats for M12"},
         {}},
        {"ISO 4762 - M10 x 35 - A2-70", "bolt; ISO 4762; M10; 35 mm; A2-70; coating stainless", {"\"A2-70\""}, {}},
        {"M12x140 8.8 HDG lubricated", "bolt; M12; 140 mm; 8.8; coating hot-dip galvanised", {"\"HDG\""}, {}},
        {"M12x140 8.8 zinc plated greased", "bolt; M12; 140 mm; 8.8; coating zinc electroplate", {"\"zinc plated\""}, {}},
        {"M12x140 8.8 HDG anti-seize", "bolt; M12; 140 mm; 8.8; coating hot-dip galvanised; lubricant anti-seize", {"\"HDG\""}, {}},
        {"M12x140 class 8.8 tZn, MoS2", "bolt; M12; 140 mm; 8.8; hot-dip galvanised, molybdenum disulfide paste", {}, {}},
        {"M12x140 mechanically galvanised 8.8", "bolt; M12; 140 mm; 8.8; coating mechanical zinc", {"\"mechanically galvanised\""}, {}},
        {"DIN 912 M10x40 12.9 black", "bolt; ISO 4762; M10; 40 mm; 12.9; coating plain; was DIN 912", {"\"black\""}, {}},
        {"DIN 6921 M12x40 8.8", "bolt; DIN 6921; M12; 40 mm; 8.8", {"no finish is named"}, {}},
        {"hex flange bolt EN 1665 M12x40 8.8 zp", "bolt; EN 1665; M12; 40 mm; 8.8; coating zinc electroplate", {"\"zp\""}, {}},
        {"M12x140 8.8 A2L A2", "bolt; M12; 140 mm", {"\"A2\"", "\"A2L\""}, {}},
        {"M12x140 A2L", "bolt; M12; 140 mm", {"\"A2L\""}, {}},
        {"nut M12 8Z 10Z", "nut; M12; oversize", {"several are named"}, {}},
        {"nut M12 class 8 class 10", "nut; M12", {"several are named"}, {}},
        {"M12 washer ISO 7093-1 HDG", "washer; ISO 7093-1; M12; coating hot-dip galvanised", {}, {}},
        {"ISO 7093 M12", "?; M12", {"is it a bolt"}, {"ISO 7093 ~ ISO 7093-1"}},
        {"bolt M12x140 8.8 with nut 8 and washer HDG waxed", "bolt; M12; 140 mm; 8.8; hot-dip galvanised, waxed; nut 8", {}, {}},
        {"nut washer M12", "?; M12", {"several are named"}, {}},
        {"full thread part thread M12x140", "bolt; M12; 140 mm", {"several are named"}, {}},
        {"AS 1110.2 M12x50 8.8", "bolt; AS 1110.2; M12; 50 mm; 8.8; full thread", {"no finish is named"}, {}},
        {"Sechskantschraube DIN 933 M12x50 8.8 feuerverzinkt",
         "bolt; ISO 4017; M12; 50 mm; 8.8; coating hot-dip galvanised; full thread; was DIN 933",
         {"DIN 933 had 19 mm across flats for M12", "\"feuerverzinkt\""},
         {}},
        {"Schraube M12x140 8.8 galv. verzinkt", "bolt; M12; 140 mm; 8.8; coating zinc electroplate", {"\"galv. verzinkt\""}, {}},
        {"rostfrei M12x140", "bolt; M12; 140 mm; coating stainless", {"\"rostfrei\"", "\"rostfrei\""}, {}},
        {"M12x140 stainless 8.8", "bolt; M12; 140 mm", {"\"stainless\""}, {}},
        {"A2-75 M12x140", "bolt; M12; 140 mm; coating stainless", {"\"A2-75\"", "\"A2-75\""}, {"A2-75 ~ A2-70"}},
        {"A4-70 A2-70 M12x140", "bolt; M12; 140 mm; coating stainless", {"several are named", "\"A4-70\""}, {}},
        {"new M12x140 8.8", "bolt; M12; 140 mm; 8.8; new", {"no finish is named"}, {}},
        {"M12x140 unused", "bolt; M12; 140 mm; new", {}, {}},
        {"used, never used M12", "?; M12", {"is it a bolt", "\"used\" and \"never used\""}, {}},
        {"M12x140 2.2", "bolt; M12; 140 mm", {"\"2.2\""}, {}},
        {"M12x140 test report", "bolt; M12; 140 mm", {"\"test report\""}, {}},
        {"M12x140 certs", "bolt; M12; 140 mm", {"\"certs\""}, {}},
        {"M12 x 140 mm 8.8 (thread length 36 mm)", "bolt; M12; 140 mm; 8.8", {"\"thread length 36 mm\"", "no finish is named"}, {}},
        {"M12 L=140 8.8", "bolt; M12; 140 mm; 8.8", {"no finish is named"}, {}},
        {"M12 length 140 mm 8.8", "bolt; M12; 140 mm; 8.8", {"no finish is named"}, {}},
        {"M12 8.8 x 140", "bolt; M12; 140 mm; 8.8", {"no finish is named"}, {}},
        {"M12 by 140 8.8", "bolt; M12; 140 mm; 8.8", {"no finish is named"}, {}},
        {"12mm x 140mm 8.8", "bolt; 8.8", {"two lengths are named", "no finish is named"}, {}},
        {"12x140 8.8", "bolt; 8.8", {"no finish is named"}, {"12x140"}},
        {"HDG M12*140 8.8", "bolt; M12; 140 mm; 8.8; coating hot-dip galvanised", {"\"HDG\""}, {}},
        {"M1 2x140", "?; M1", {"is it a bolt", "\"M1\""}, {"2x140"}},
        {"M 12 x 140 8.8", "bolt; M12; 140 mm; 8.8", {"no finish is named"}, {}},
        {"M12x140 6AZ", "bolt; M12; 140 mm; oversize", {}, {}},
        {"nut M12 6AZ class 8", "nut; M12; nut 8; oversize", {}, {}},
        {"bolt M12x140 6az 8.8", "bolt; M12; 140 mm; 8.8; undersize", {"no finish is named"}, {}},
        {"M12x140 8.8 SW19", "bolt; M12; 140 mm; 8.8", {"no finish is named"}, {}},
        {"5.5in x 1/2-13 UNC", "bolt; 1/2-13 UNC; 139.7 mm", {}, {}},
        {"1/4\"-20 UNC x 1\" grade 2", "bolt; 1/4-20 UNC; 25.4 mm; grade 2", {"no finish is named"}, {}},
        {"1/4-20 x 1 in grade 2", "bolt; 1/4-20 UNC; 25.4 mm; grade 2", {"no finish is named"}, {}},
        {"3/4 UNF x 3\" A490", "bolt; 3/4-16 UNF; 76.2 mm; A490", {"no finish is named"}, {}},
        {"3/4-10 UNC UNF", "?", {"is it a bolt", "several are named"}, {}},
        {"1/2 in bolt 2 in long grade 8", "bolt; 50.8 mm; grade 8", {"\"1/2\"", "no finish is named"}, {}},
        {"0.5\"-13 UNC x 2\"", "bolt; 1/2-13 UNC; 50.8 mm", {}, {}},
        {"1/2-13 UNC-2A x 2-1/4\" SAE grade 5", "bolt; 1/2-13 UNC; 57.15 mm; grade 5", {"no finish is named"}, {}},
        {"#10-24 x 1\" gr 2", "bolt; 25.4 mm; grade 2", {"\"#10-24\"", "no finish is named"}, {}},
        {"1/2 BSW x 2\"", "bolt; 50.8 mm", {"\"1/2 BSW\""}, {}},
        {"1/2-13 M12", "?", {"is it a bolt", "several are named"}, {}},
        {"class 8 M12x140", "bolt; M12; 140 mm", {"\"class 8\""}, {}},
        {"M12x140 8.8 coated", "bolt; M12; 140 mm; 8.8", {"\"coated\""}, {}},
        {"M12x140 8.8 zinc-nickel", "bolt; M12; 140 mm; 8.8; coating zinc-nickel electroplate", {"\"zinc-nickel\""}, {}},
        {"M12x140 cl. 10.9 phosphated", "bolt; M12; 140 mm; 10.9; coating phosphate", {"\"phosphated\""}, {}},
        {"M12x140 grade A2-70", "bolt; M12; 140 mm; A2-70; coating stainless", {"\"A2-70\""}, {}},
        {"gr 7 1/2-13 UNC", "?; 1/2-13 UNC", {"is it a bolt"}, {"gr 7"}},
        {"EN 14399 M16x60 10.9", "bolt; EN 14399; M16; 60 mm; 10.9", {"EN 14399 without a part number", "no finish is named"}, {}},
        {"ISO 10684 M12x140 8.8", "bolt; M12; 140 mm; 8.8; coating hot-dip galvanised", {"\"ISO 10684\""}, {}},
        {"EN ISO 4014 EN ISO 10684 M12x140", "bolt; ISO 4014; M12; 140 mm; coating hot-dip galvanised; shank", {"\"EN ISO 10684\""}, {}},
        {"M12x140 8.8 ISO 4042", "bolt; M12; 140 mm; 8.8", {"\"ISO 4042\""}, {}},
        {"DIN 7991 M12x40", "bolt; M12; 40 mm", {}, {"DIN 7991 ~ DIN 931"}},
        {"100 off M12 x 40 A4-80", "bolt; M12; 40 mm; A4-80; coating stainless", {"\"A4-80\""}, {}},
        {"M12x40 70 mm", "bolt; M12", {"two lengths are named"}, {}},
        {"M0x40", "?", {"is it a bolt"}, {"M0x40"}},
        {"M999x40", "?", {"is it a bolt"}, {"M999x40"}},
        {"M12x", "?", {"is it a bolt"}, {"M12x"}},
        {"Mx12", "?", {"is it a bolt"}, {"Mx12 ~ mos2"}},
        {"M12xA", "?", {"is it a bolt"}, {"M12xA"}},
        {"8.8", "bolt; 8.8", {"no finish is named"}, {}},
        {"HDG", "?; coating hot-dip galvanised", {"is it a bolt", "\"HDG\""}, {}},
        {"dry", "?; lubricant dry", {"is it a bolt", "no finish is named"}, {}},
        {"140", "?", {"is it a bolt"}, {"140"}},
        {"140 mm", "bolt; 140 mm", {}, {}},
        {"M12x140 14.9", "bolt; M12; 140 mm", {}, {"14.9"}},
        {"M12x140 8.8, art. no. 4711-0815", "bolt; M12; 140 mm; 8.8", {"no finish is named"}, {"art", "no", "4711", "0815"}},
        {"zinc flake waxed M12x140", "bolt; M12; 140 mm; coating zinc flake; lubricant waxed", {"\"zinc flake\""}, {}},
        {"M12x140 8.8 HDG zinc plated", "bolt; M12; 140 mm; 8.8", {"several are named"}, {}},
        {"M12x140 8.8 HDG dry waxed", "bolt; M12; 140 mm; 8.8; coating hot-dip galvanised", {"several are named", "\"HDG\""}, {}},
        {"nylon insert nut DIN 985 M12 8", "nut; ISO 10511; M12; nut 8; locking; was DIN 985", {}, {}},
        {"M12x140 low carbon martensitic steel (10.9)",
         "bolt; M12; 140 mm; 10.9; mark 10.9, underlined; low-carbon",
         {"\"(10.9)\"", "no finish is named"},
         {}},
        {"M12-140 8.8", "bolt; M12; 8.8", {"is \"140\" the length in mm", "no finish is named"}, {}},
        {"M12/140 8.8", "bolt; M12; 8.8", {"is \"140\" the length in mm", "no finish is named"}, {}},
        {"M6x1x20 8.8", "bolt; M6; 20 mm; 8.8", {"no finish is named"}, {}},
        {"M6x1,0 x 20 4.8", "bolt; M6; 20 mm; 4.8", {"no finish is named"}, {}},
        {"M8 x 4", "bolt; M8", {"\"M8 x 4\""}, {}},
        {"Ｍ12x140", "?", {"is it a bolt"}, {"Ｍ12x140"}},
        {"M12х140 8.8 hdg", "bolt; M12; 140 mm; 8.8; coating hot-dip galvanised", {"\"hdg\""}, {}},
        {"nut grade 8 M12", "nut; M12", {"\"grade 8\"", "no finish is named"}, {}},
        {"nut 1/2-13 UNC grade 5", "nut; 1/2-13 UNC", {"\"grade 5\"", "no finish is named"}, {}},
        {"washer 1/2\"", "washer", {"\"1/2\"\""}, {}},
        {"ISO 4014 ISO 4017 M12x140", "bolt; M12; 140 mm", {"several are named"}, {}},
        {"DIN 931 / ISO 4014 M12x140 10.9", "bolt; ISO 4014; M12; 140 mm; 10.9; shank", {"no finish is named"}, {}},
        {"tube 16x2", "tube", {}, {"16x2"}},
    };
    return list;
}

/// Every length a text can be said to name: its numbers and fractions, alone and together, as millimetres and as inches.
std::vector<double> lengths_in(const std::string& text) {
    std::vector<double> numbers, fractions{0.0}, out;
    const std::array<std::pair<const char*, double>, 7> signs{
        {{"\u00bd", 0.5}, {"\u00bc", 0.25}, {"\u00be", 0.75}, {"\u215b", 0.125}, {"\u215c", 0.375}, {"\u215d", 0.625}, {"\u215e", 0.875}}};
    for (const auto& [sign, value] : signs)
        if (text.find(sign) != std::string::npos) fractions.push_back(value);
    for (std::size_t at = 0; at < text.size(); ++at)
        for (std::size_t length = 1; length < 10 && at + length <= text.size(); ++length) {
            auto part = text.substr(at, length);
            std::replace(part.begin(), part.end(), ',', '.');
            if (part.find_first_not_of("0123456789.") == std::string::npos) numbers.push_back(std::strtod(part.c_str(), nullptr));
            const auto slash = part.find('/');
            if (slash != std::string::npos && slash > 0 && slash + 1 < part.size() &&
                part.find_first_not_of("0123456789/") == std::string::npos)
                fractions.push_back(std::strtod(part.c_str(), nullptr) / std::strtod(part.c_str() + slash + 1, nullptr));
        }
    numbers.push_back(0.0);
    for (const double number : numbers)
        for (const double fraction : fractions) {
            out.push_back(number + fraction);
            out.push_back(25.4 * (number + fraction));
        }
    return out;
}

bool names(const std::string& text, double value) {
    const auto all = lengths_in(text);
    return std::any_of(all.begin(), all.end(), [&](double each) { return std::abs(each - value) < 1e-6; });
}

/// Nothing of size and length comes from anywhere but the text.
bool is_from(const Designation& read, const std::string& text) {
    const auto& offer = read.offer;
    if (offer.length && !names(text, in_mm(*offer.length))) return false;
    if (!offer.size) return true;
    if (const auto* inch = built_in().of<InchThread>().find(*offer.size)) return names(text, in_mm(inch->diameter));
    const auto digits = offer.size->substr(1, offer.size->find('x') == std::string::npos ? std::string::npos : offer.size->find('x') - 1);
    if (names(text, std::strtod(digits.c_str(), nullptr))) return true;
    // Old washers are named by the hole.
    const auto& washers = built_in().of<Washer>().rows;
    return std::any_of(washers.begin(), washers.end(),
                       [&](const auto& row) { return row.size == *offer.size && names(text, in_mm(row.inside_diameter)); });
}

bool is_sound(const Designation& read) {
    for (const auto& each : read.understood)
        if (!is_fit(each.token) || each.token.empty() || each.meaning.empty()) return false;
    for (const auto& each : read.unknown)
        if (!is_fit(each.token) || each.token.empty()) return false;
    for (const auto& each : read.asked)
        if (!is_fit(each.text) || !each.text.ends_with('?')) return false;
    const auto& offer = read.offer;
    return (!offer.finish || built_in().of<Finish>().find(*offer.finish) != nullptr) &&
           (!offer.standard || built_in().of<ProductStandard>().find(*offer.standard) != nullptr) &&
           (!offer.length || (*offer.length >= mm(5) && *offer.length <= mm(1000)));
}

}  // namespace

TEST_SUITE("joint/designation") {
    TEST_CASE("what is understood, asked and unknown") {
        for (const auto& expected : cases()) {
            CAPTURE(expected.text);
            const auto found = read(expected.text);
            CHECK(summary(found) == expected.understood);
            std::string questions, words;
            for (const auto& each : found.asked) questions += each.text + '\n';
            for (const auto& each : found.unknown) words += each.token + '\n';
            CAPTURE(questions);
            CAPTURE(words);
            CHECK(found.asked.size() == expected.asked.size());
            for (std::size_t i = 0; i < std::min(found.asked.size(), expected.asked.size()); ++i)
                CHECK(found.asked[i].text.starts_with(expected.asked[i]));
            CHECK(found.unknown.size() == expected.unknown.size());
            for (std::size_t i = 0; i < std::min(found.unknown.size(), expected.unknown.size()); ++i) {
                const auto& unknown = found.unknown[i];
                CHECK(unknown.token + (unknown.nearest.empty() ? "" : " ~ " + unknown.nearest) == expected.unknown[i]);
            }
            CHECK(is_sound(found));
            CHECK(is_from(found, expected.text));
        }
        CHECK(cases().size() >= 80);
    }

    TEST_CASE("what is ambiguous is asked in words that name the choices") {
        const auto asks = [](const char* text, const char* question) {
            CAPTURE(text);
            const auto asked = read(text).asked;
            CHECK(std::any_of(asked.begin(), asked.end(), [&](const auto& each) { return each.text == question; }));
        };
        asks("M12x140 8.8 HDG", "\"HDG\" is hot-dip galvanised: dry, waxed or molybdenum disulfide paste?");
        asks("M12x140 70", "\"70\": A2-70 or A4-70?");
        asks("M12x140 8.8", "no finish is named: plain, zinc electroplate, zinc flake or hot-dip galvanised?");
        asks("M12x140 8.8 zinc", "\"zinc\": which finish, zinc electroplate, zinc flake, or hot-dip galvanised?");
        asks("M12x1.25 8.8", "\"M12x1.25\": M12x1.25 is a fine thread, which the table of threads does not have; is it meant?");
        asks("M12x140 10.9 A4", "\"A4\" and \"10.9\" contradict each other: which material and class?");
        asks("M12x140x120", "two lengths are named, 140 and 120: which is offered?");
        asks("3/8-16x2 gr 8", "\"2\": is the length 2 in inches?");
        asks("M12x140 grade 8", "\"grade 8\" is a grade of inch bolts beside a metric thread: which class is meant?");
        asks("5/8-11 UNF x 2 in", "\"5/8-11 UNF\" is not in the table of inch threads: is 5/8-11 UNC or 5/8-18 UNF meant?");
        asks("M12 140 8.8", "is \"140\" the length in mm?");
        asks("DIN 931 M12x140", "DIN 931 had 19 mm across flats for M12, ISO 4014 has 18 mm: which is delivered?");
        asks("", "is it a bolt, a nut or a washer?");
    }

    TEST_CASE("every understood word is told as it was written, with its meaning") {
        const auto found = read("Bolt M12\u00a0\u00d7\u00a0140 8.8 tZn waxed");
        REQUIRE(found.understood.size() == 5);
        CHECK(found.understood[1].token == "M12\u00a0\u00d7\u00a0140");
        CHECK(found.understood[1].meaning == "thread M12, length 140 mm");
        CHECK(found.understood[3].token == "tZn");
        CHECK(found.understood[3].meaning == "hot-dip galvanised");
        CHECK(found.offer.designation == "Bolt M12\u00a0\u00d7\u00a0140 8.8 tZn waxed");
    }

    TEST_CASE("the same offer in other signs") {
        const auto wanted = summary(read("ISO 4014 M12x140 8.8 HDG waxed"));
        for (const char* text :
             {"iso 4014 m12x140 8.8 hdg waxed", "ISO4014-M12X140-8.8-HDG-WAXED",
              "EN ISO 4014 \u2013 M12 \u00d7 140 \u2013 8.8 \u2013 HDG, waxed", "  ISO\u00a04014   M12*140 ; 8,8 ; HDG / waxed  ",
              "DIN EN ISO 4014:2022 M12 x 140 mm, class 8.8, hot-dip galvanised, waxed", "waxed HDG 8.8 M12 by 140 ISO 4014",
              "\tISO 4014\nM12x140,0\r\n8.8 (HDG) waxed.", "ISO 4014, M12, L = 140, 8.8, HDG waxed", "ISO 4014 M12x1.75x140 8.8 tZn, waxed",
              "ISO 4014 - M\u200b12x140 8.8 HDG waxed"}) {
            CAPTURE(text);
            CHECK(summary(read(text)) == wanted);
        }
    }

    TEST_CASE("no bytes are too wild, and no size comes out of the air") {
        CHECK(rc::check("any bytes", [] {
            const auto text = *rc::gen::container<std::string>(rc::gen::arbitrary<char>());
            const auto found = read(text);
            RC_ASSERT(is_sound(found));
            RC_ASSERT(is_from(found, text));
        }));
        CHECK(rc::check("pieces of designations", [] {
            const auto piece = rc::gen::element<std::string>(
                "M12", "m", "8.8", "8,8", "10.9", "A4", "A2", "-", "70", "80", "x", "\u00d7", "140", "1.25", "1/2", "13", "UNC", "unf",
                "\"", "in", "mm", " ", " ", " ", ",", ";", "(", ")", "|", "_", "\u0332", "HDG", "zinc", "waxed", "dry", "nut", "bolt",
                "washer", "ISO 4014", "DIN 125", "ISO 7089", "ISO", "4032", "grade", "gr", "class", "5", "8", "Z", "X", "HV", "200",
                "L=", "qty", "pcs", "#", ".", "/", "\u00bd", "\xff", "by", "EN 14399-4", "used", "12", "13", "A2L", "U", "6AZ", "\n",
                "1000000", "0");
            std::string text;
            for (const auto& each : *rc::gen::container<std::vector<std::string>>(piece)) text += each;
            const auto found = read(text);
            RC_ASSERT(is_sound(found));
            RC_ASSERT(is_from(found, text));
            RC_ASSERT(summary(found) == summary(read(text)));
        }));
    }

    TEST_CASE("long texts and control characters") {
        for (const std::string& unit :
             {std::string("M12x140 8.8 "), std::string("\x01\x02\x7f\0", 4), std::string("1/2-"), std::string("8."), std::string("("),
              std::string("x"), std::string("\u0332"), std::string("zinc "), std::string("\xc3")}) {
            std::string text;
            while (text.size() < 10000) text += unit;
            const auto found = read(text);
            CHECK(is_sound(found));
            CHECK(is_from(found, text));
            CHECK(found.unknown.size() <= 30);
            CHECK(found.asked.size() <= 30);
            CHECK(found.unknown.front().token == "(what follows 1000 bytes)");
        }
    }

    TEST_CASE("every standard of the table is known by its name, with and without space") {
        for (const auto& row : built_in().of<ProductStandard>().rows) {
            CAPTURE(row.name);
            auto close = row.name;
            std::erase(close, ' ');
            for (const auto& text : {row.name, close}) {
                const auto found = read(text + " M16");
                CHECK(found.unknown.empty());
                if (!row.part) continue;
                CHECK(found.offer.standard == row.successor.value_or(row.name));
                CHECK(word_of(*found.offer.part) == *row.part);
            }
        }
    }

    TEST_CASE("every finish, class and inch thread is known by its name") {
        for (const auto& row : built_in().of<Finish>().rows)
            if (row.kind != "stainless") CHECK(read("M12x140 8.8 " + row.name).offer.finish == row.name);
        for (const auto& row : built_in().of<BoltClass>().rows) CHECK(read("M12x140 " + row.bolt_class).offer.bolt_class == row.bolt_class);
        CHECK(read("M12x140 A4-80 stainless, anti-seize").offer.finish == "stainless, anti-seize");
        for (const auto& row : built_in().of<InchThread>().rows) CHECK(read(row.name).offer.size == row.name);
        for (const auto& row : built_in().of<InchGrade>().rows) CHECK(read("1/2-13 UNC " + row.grade).offer.bolt_class == row.grade);
        for (const auto& row : built_in().of<Thread>().rows) CHECK(read(row.name + "x100").offer.size == row.name);
    }
}
