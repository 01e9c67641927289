// SPDX-License-Identifier: MIT
#pragma once

#include "input/diagnostic.hpp"
#include "input/node.hpp"
#include "joint/designation.hpp"
#include "joint/offer_file.hpp"
#include "tables/tables.hpp"

#include <optional>
#include <string>
#include <vector>

/// An offered part with its designation read and its names turned into rows of the tables.
namespace faywright {

struct Offer {
    OfferedPart part = OfferedPart::bolt;
    OfferFile said;                         ///< what designation and fields say together
    std::string title;                      ///< what to call it
    const Row<Thread>* thread = nullptr;    ///< of a metric coarse size that is said
    std::optional<Length> inch_diameter;    ///< of an inch size that is said
    const Row<InchThread>* inch = nullptr;  ///< where its thread series is known too
    const Row<InchGrade>* grade = nullptr;  ///< of an inch bolt
    bool class_known = false;               ///< a class of metric bolts, or a grade
    const Row<Finish>* finish = nullptr;    ///< coating and lubricant
    std::string coating;                    ///< kind of coating; said even where the lubricant stays open
    const Row<ProductStandard>* standard = nullptr;
    const Row<ProductStandard>* written_standard = nullptr;  ///< as the offer names it; `standard` is its successor where it has one
    std::optional<std::string> assembly;                     ///< standard of bolt, nut and washer as a set
    bool low_carbon_martensite = false, undersize_thread = false;
    bool lower_nut = false;                      ///< of a height and proof load below ISO 4032, class between bars
    std::optional<std::string> other_lubricant;  ///< said, and in no row with this coating
    std::optional<std::string> nut_group;        ///< steel of a stainless nut: "A2"
    std::optional<double> hardness_hv;           ///< of a washer
    const Row<LayerMaterial>* layer = nullptr;
    std::vector<Designation::Understood> understood;
    std::vector<Designation::Question> asked;  ///< what can be read in more than one way, and what nobody understands

    [[nodiscard]] bool is_stainless() const { return said.bolt_class && said.bolt_class->starts_with('A') && grade == nullptr; }
    [[nodiscard]] bool is_fine_thread() const { return said.size && said.size->find('x') != std::string::npos; }
};

/// A name of an offer that no table has.
struct OfferFault {
    std::string field;   ///< key of the offer
    std::string found;   ///< a phrase: `is "8.9", which is no class of bolts`
    std::string wanted;  ///< a phrase: `known are 4.6, 4.8, ...`
};

/// Reads an offer's designation and looks its names up. Where designation and fields contradict each other it is asked. Tables must
/// outlive the offer.
[[nodiscard]] Offer understand(const OfferFile& file, const Tables& tables, std::vector<OfferFault>& faults);

/// Reads an offer file. Every mistake goes to the diagnostics; nothing after one.
[[nodiscard]] std::optional<Offer> read_offer(const Node& root, const Tables& tables, Diagnostics& diagnostics);

}  // namespace faywright
