// SPDX-License-Identifier: MIT
#pragma once

#include "joint/offer_file.hpp"
#include "tables/tables.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// What suppliers write, "M12x140 8.8 HDG" or "ISO 4014 - M12 x 140 - 10.9", read without guessing.
namespace faywright {

/// What of an offer a question is about. Of a finish that nothing is said of, the question is another than of one that is unclear.
enum class Topic { part, standard, size, length, nut_class, bolt_class, finish, unsaid_finish, lubricant, use, papers };

struct Designation {
    /// What must be asked: it ends with a question mark.
    struct Question {
        Topic about = Topic::part;
        std::string text;
        bool contradiction = false;  ///< the text says two things: no field beside it settles which
    };
    /// Words of the text and what they were taken for.
    struct Understood {
        std::string token, meaning;
    };
    /// Words nobody could place, with the nearest known spelling or "".
    struct Unknown {
        std::string token, nearest;
    };

    OfferFile offer;  ///< filled as far as understood; what is asked stays empty
    bool part_known = false;
    std::vector<Understood> understood;
    std::vector<Question> asked;
    std::vector<Unknown> unknown;
    std::optional<std::string> coating;              ///< kind of coating; said even where the finish stays open
    std::optional<std::string> standard_as_written;  ///< row of the designations table; the offer has its successor
    std::optional<Length> inch_diameter;             ///< of an inch size; said even where its thread series stays open
    std::optional<std::string> assembly;             ///< standard of bolt, nut and washer as a set
    std::optional<double> hardness_hv;               ///< of a washer
    bool low_carbon_martensite = false;              ///< underlined class mark, or said in words
    bool undersize_thread = false;                   ///< bolt thread cut below size before galvanising, mark U
};

/// Reads one designation. Any bytes are accepted; a size or length is never anything the text does not say.
[[nodiscard]] Designation read_designation(std::string_view text, const Tables& tables);

}  // namespace faywright
