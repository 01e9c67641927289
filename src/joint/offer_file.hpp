// SPDX-License-Identifier: MIT
#pragma once

#include "joint/joint_file.hpp"
#include "quantity/field.hpp"
#include "quantity/quantity.hpp"

#include <optional>
#include <string>

/// A part that a supplier offers in place of the one a joint file specifies: what the supplier said, names still unresolved.
namespace faywright {

enum class OfferedPart { bolt, nut, washer, tube, layer };
template <>
struct Words<OfferedPart> {
    static constexpr std::array<std::pair<OfferedPart, std::string_view>, 5> all{{{OfferedPart::bolt, "bolt"},
                                                                                  {OfferedPart::nut, "nut"},
                                                                                  {OfferedPart::washer, "washer"},
                                                                                  {OfferedPart::tube, "tube"},
                                                                                  {OfferedPart::layer, "layer"}}};
};

/// One offer. What it does not say stands as in the joint file, and is asked about where it matters.
struct OfferFile {
    std::optional<OfferedPart> part;         ///< a bolt, where neither this nor the designation says
    std::optional<std::string> name;         ///< what the supplier calls it
    std::optional<std::string> designation;  ///< as the trade writes it: "M12x140 8.8 HDG", "ISO 4014 - M12 x 140 - 10.9"
    std::optional<std::string> standard, size, bolt_class, finish;
    std::optional<Length> length;
    std::optional<std::string> nut_class, marking, lubricant, series, stock, material;
    std::optional<NutThread> nut_thread;
    std::optional<bool> fully_threaded, used, prevailing_torque_nut, test_report;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"part", "", "what is offered"}, self.part);
        field(Name{"name", "", "what the supplier calls it"}, self.name);
        field(Name{"designation", "", "as the trade writes it, for example \"ISO 4014 - M12 x 140 - 8.8\""}, self.designation);
        field(Name{"standard", "", "product standard"}, self.standard);
        field(Name{"size", "", "thread size, metric or inch"}, self.size);
        field(Name{"length", "", "length under the head"}, self.length, Range{mm(5), mm(1000)});
        field(Name{"class", "", "property class or grade of the bolt"}, self.bolt_class);
        field(Name{"finish", "", "coating and lubricant, a row of the finishes table"}, self.finish);
        field(Name{"nut-class", "", "class of the nut"}, self.nut_class);
        field(Name{"nut-thread", "", "how the nut is tapped"}, self.nut_thread);
        field(Name{"prevailing-torque-nut", "", "a locking nut"}, self.prevailing_torque_nut);
        field(Name{"fully-threaded", "", "thread runs to the head"}, self.fully_threaded);
        field(Name{"used", "", "has been tightened before"}, self.used);
        field(Name{"test-report", "", "an inspection certificate comes with it"}, self.test_report);
        field(Name{"marking", "", "what is stamped on head or nut"}, self.marking);
        field(Name{"lubricant", "", "what it is greased with"}, self.lubricant);
        field(Name{"series", "", "series of the washer"}, self.series);
        field(Name{"stock", "", "row of the tubes table"}, self.stock);
        field(Name{"material", "", "material of the tube, or row of the layers table"}, self.material);
    }
};

}  // namespace faywright
