// SPDX-License-Identifier: MIT
#pragma once

#include "joint/designation.hpp"
#include "joint/designation_scan.hpp"

/// What the words of a designation say, each by itself, before they are weighed against each other.
namespace faywright::designation {

/// A word of the text and what it stands for.
struct Said {
    std::string token, value;
};

/// Each value once.
[[nodiscard]] std::vector<Said> distinct(const std::vector<Said>& list);

[[nodiscard]] bool is_stainless(std::string_view bolt_class);
[[nodiscard]] OfferedPart part_of(std::string_view name);

struct Found {
    struct Number {
        std::string token;
        Measure measure;
        bool behind_nut = false;
    };
    struct InchSize {
        std::string token, size;
        Length diameter;
        std::optional<int> threads = {};
    };

    const Tables& tables;
    Designation out = {};
    Topic topic = Topic::part;  ///< what is being settled: questions are about it
    std::vector<Said> parts = {}, shapes = {}, metric = {}, series = {}, classes = {}, groups = {}, stainless = {}, grades = {},
                      nut_classes = {}, codes = {}, coatings = {}, uncertain = {}, lubricants = {}, lubricated = {}, threads = {},
                      usage = {}, structural = {};
    std::vector<InchSize> inch = {};
    std::vector<std::pair<std::string, const Row<ProductStandard>*>> standards = {};
    std::vector<std::pair<std::string, Measure>> lengths = {};
    std::vector<Number> numbers = {};  ///< numbers that need the rest of the text to mean anything

    void ask(std::string question, bool contradiction = false);
    void ask_which(std::string_view of_what, const std::vector<Said>& list);
    void unknown(std::string token, std::string nearest);
    void add_part(const std::string& token, OfferedPart part);
    [[nodiscard]] bool says_part(OfferedPart part) const;

    [[nodiscard]] const Row<BoltClass>* class_row(std::string_view name) const;
    [[nodiscard]] bool is_nut_class(std::string_view name) const;
    [[nodiscard]] std::vector<std::string> class_names() const;
    /// Classes of stainless steel with this beginning and end.
    [[nodiscard]] std::vector<std::string> stainless_classes(std::string_view begin, std::string_view end) const;
};

/// Reads every word of the text.
void read_words(std::string_view text, Found& found);

}  // namespace faywright::designation
