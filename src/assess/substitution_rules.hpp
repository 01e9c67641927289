// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/source.hpp"

#include <array>
#include <string_view>

/// Why an offered part may hurt: one rule a reason, each with what it stands on.
namespace faywright {

struct SubstitutionRule {
    std::string_view id, title;
    Source source;
};

namespace rules {

/// The worst first: the order in which reasons of equal weight are told.
inline constexpr std::array all{
    // What the part is.
    SubstitutionRule{"inch-thread",
                     "inch and metric threads do not interchange",
                     {"ISO 724 and ASME B1.1", "", "basic dimensions: no pair of threads has diameter and pitch in common", Basis::memory}},
    SubstitutionRule{"fine-thread",
                     "a fine thread is another thread",
                     {"ISO 261", "1998", "pitch series: nut, stress area and torque belong to the pitch", Basis::memory}},
    SubstitutionRule{
        "other-size", "another size is another joint", {"", "", "holes, tubes, washers, nut and torque are of one size", Basis::practice}},
    SubstitutionRule{"used-part",
                     "tightened parts are not used again",
                     {"EN 1090-2", "2008", "8.5.1, an assembly tightened to preload and loosened is scrapped", Basis::memory}},
    SubstitutionRule{
        "no-mark", "a part without mark has no class", {"ISO 898-1", "2013", "clause 10, marking is mandatory from M5", Basis::memory}},
    SubstitutionRule{"wrong-mark",
                     "the mark is not that of the class",
                     {"ISO 898-1", "2013", "clause 10, marks of classes; of inch grades SAE J429", Basis::memory}},
    SubstitutionRule{"class-unknown", "without a class no strength is promised", {"ISO 898-1", "2013", "Table 3", Basis::memory}},
    SubstitutionRule{"other-head",
                     "another head or a set of its own is not reckoned here",
                     {"", "", "bearing faces and threads of ISO 4014, 4017 and 4032 stand in the tables", Basis::practice}},
    SubstitutionRule{"coarse-grade",
                     "product grade C is coarser than the tables' grades A and B",
                     {"ISO 4016 and ISO 4018", "2011", "tolerances of shank and thread", Basis::memory}},
    // What the steel is.
    SubstitutionRule{
        "hydrogen-electroplate",
        "electroplated high-strength steel can break days after tightening",
        {"ISO 4042", "2018", "4.4: process verification from 360 to 390 HV, above 390 HV baking, where we refuse", Basis::published}},
    SubstitutionRule{"galvanised-high-strength",
                     "galvanising high-strength bolts takes a controlled bath, and none serves 12.9",
                     {"AS/NZS 1214", "2016", "5.2 and 5.5 (ISO 10684, modified): cleaning from 320 HV on, bath of 10.9", Basis::published}},
    SubstitutionRule{"hydrogen-service",
                     "steel above 390 HV takes up hydrogen from zinc and aluminium in the wet",
                     {"ISO/TR 20491", "2019", "environmental hydrogen embrittlement", Basis::memory}},
    SubstitutionRule{"low-carbon-martensite",
                     "low-carbon martensite may be tempered far below the heat of galvanising",
                     {"ISO 898-1", "1999", "Table 2: underlined 10.9 tempered from 340 degC, 8.8 from 425 degC", Basis::published}},
    SubstitutionRule{"no-preload-class",
                     "the codes preload no other classes than 8.8 and 10.9",
                     {"EN 1993-1-8", "2005", "3.4.1: only 8.8 and 10.9 in preloaded connections", Basis::memory}},
    SubstitutionRule{"lower-stainless-group",
                     "A2 stains and pits where salt lies",
                     {"EN 1993-1-4", "2006", "Annex A, molybdenum where chlorides are", Basis::memory}},
    SubstitutionRule{"certificate-shows",
                     "what the certificate must show",
                     {"", "", "an inspection certificate tells class and heat; process and friction are asked besides", Basis::practice}},
    // What turns on it.
    SubstitutionRule{
        "nut-tight",
        "a nut tapped to standard does not go on a galvanised thread",
        {"AS/NZS 1214", "2016", "5.7 and 6.2 (ISO 10684, modified): nuts tapped after galvanising, never again, marked", Basis::published}},
    SubstitutionRule{"undersize-thread",
                     "bolts cut undersize never go with nuts tapped oversize",
                     {"ISO 10684", "2004", "method (b): bolts marked U with nuts 6H", Basis::memory}},
    SubstitutionRule{"nut-loose",
                     "a nut tapped oversize holds less on a thread without thick zinc",
                     {"ISO 10684", "2004", "fits are for 50 um of zinc; overlap after FED-STD-H28/2B", Basis::memory}},
    SubstitutionRule{"nut-thin", "thin nuts strip before the bolt breaks", {"ISO 898-2", "2012", "classes 04 and 05", Basis::memory}},
    SubstitutionRule{"nut-soft", "a nut below the bolt's class strips", {"ISO 898-2", "2012", "Table 2 and proof loads", Basis::memory}},
    SubstitutionRule{"nut-unknown", "a nut without a class has no proof load", {"ISO 898-2", "2012", "marking", Basis::memory}},
    SubstitutionRule{
        "mixed-finish", "bolt and nut of different finish have no known friction", {"", "", "torque tests are of pairs", Basis::practice}},
    SubstitutionRule{"prevailing-torque",
                     "a locking nut takes torque before it clamps",
                     {"ISO 2320", "1997", "greatest prevailing torque of the first assembly", Basis::memory}},
    SubstitutionRule{"copper-paste",
                     "copper and graphite next to aluminium eat it",
                     {"MIL-STD-889C", "2016", "copper alloys and graphite against aluminium", Basis::memory}},
    SubstitutionRule{"galling",
                     "stainless threads seize when they are dry or driven fast",
                     {"", "", "articles tell the prone alloys and their oxide film; the remedy is usage", Basis::practice}},
    SubstitutionRule{"lubricant-unknown",
                     "torque without a stated lubricant gives no known clamp",
                     {"VDI 2230 Part 1", "2003", "Table A5, friction by lubricant", Basis::published}},
    SubstitutionRule{"finish-unknown",
                     "of a finish that is not known neither friction nor life is",
                     {"VDI 2230 Part 1", "2003", "Table A5", Basis::published}},
    // How it fits.
    SubstitutionRule{"too-short",
                     "the thread does not reach through the nut",
                     {"EN 1090-2", "2008", "8.2.2, one full pitch clear beyond the nut", Basis::memory}},
    SubstitutionRule{"too-long",
                     "the nut runs onto the shank before it clamps",
                     {"EN 1090-2", "2008", "8.2.2, four full threads clear under the nut", Basis::memory}},
    SubstitutionRule{"sticks-out", "a longer bolt sticks out further", {"", "", "ground clearance and snagging", Basis::practice}},
    SubstitutionRule{"thread-in-plane",
                     "thread in the shear plane carries less",
                     {"EN 1993-1-8", "2005", "Table 3.4, alpha_v on the stress area", Basis::memory}},
    SubstitutionRule{"temperature",
                     "it is colder or hotter there than the steel's standard covers",
                     {"ISO 3506-1 and ISO 898-1", "2020 and 2013", "scope: from -20 degC and -50 degC to 150 degC", Basis::memory}},
    SubstitutionRule{"cannot-be-built", "the joint cannot be built with it", {"", "", "geometry of the joint file", Basis::practice}},
    SubstitutionRule{"washer-soft",
                     "washers softer than the class asks for sink",
                     {"ISO 7089 and ISO 7091", "2000", "hardness classes: 200 HV to 8.8, 300 HV to 10.9, 100 HV to 6.8", Basis::memory}},
    // What comes of it.
    SubstitutionRule{"fails-already",
                     "the joint fails, or does not last, as it is specified",
                     {"", "", "an offer does not mend a joint", Basis::practice}},
    SubstitutionRule{"does-not-hold", "a check fails with it, at its own torque", {"", "", "source of the check", Basis::practice}},
    SubstitutionRule{
        "bare-outdoors", "plain steel and black oxide rust from the first rain", {"", "", "no zinc, nothing passive", Basis::practice}},
    SubstitutionRule{"too-soon",
                     "something is used up within the promised life",
                     {"", "", "corrosion outlook, estimates of this program", Basis::practice}},
    SubstitutionRule{"worse-life",
                     "something is used up sooner than with the part specified",
                     {"", "", "corrosion outlook, estimates of this program", Basis::practice}},
    SubstitutionRule{"stainless-beside-aluminium",
                     "stainless steel drives the aluminium, by the ratio of their wetted areas",
                     {"", "", "mixed potential of this program's curves; MIL-STD-889C beside it", Basis::practice}},
    SubstitutionRule{"old-torque-yields",
                     "at the old torque the part is overstressed",
                     {"VDI 2230 Part 1", "2003", "5.4.3, stress at the end of tightening", Basis::memory}},
    SubstitutionRule{"old-torque-loosens",
                     "at the old torque the joint is clamped too little",
                     {"VDI 2230 Part 1", "2003", "R13, preload from torque and friction", Basis::memory}},
    SubstitutionRule{"unnoticed-fails", "left as it comes, a check fails", {"", "", "source of the check", Basis::practice}},
    SubstitutionRule{"own-torque", "it has a torque of its own", {"VDI 2230 Part 1", "2003", "R13", Basis::memory}},
    SubstitutionRule{"flake-lubricant",
                     "zinc flake brings its own lubricant: nothing is added",
                     {"ISO 10683", "", "integral lubricant or top coat", Basis::memory}},
    SubstitutionRule{"less-reserve", "less reserve than specified", {"", "", "source of the check", Basis::practice}},
    SubstitutionRule{"worse-property", "less than specified, and enough by every check", {"", "", "comparison", Basis::practice}},
    SubstitutionRule{"not-stated", "the offer does not say: taken as specified", {"", "", "to be confirmed", Basis::practice}},
    SubstitutionRule{"unclear", "the designation can be read in more than one way", {"", "", "asked, never guessed", Basis::practice}},
    SubstitutionRule{"same", "nothing that is known speaks against it", {"", "", "comparison", Basis::practice}},
};

[[nodiscard]] consteval const SubstitutionRule* find(std::string_view id) {
    for (const auto& rule : all)
        if (rule.id == id) return &rule;
    throw "no such rule";
}

}  // namespace rules

}  // namespace faywright
