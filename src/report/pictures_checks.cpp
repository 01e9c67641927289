// SPDX-License-Identifier: MIT
#include "report/assessment_words.hpp"
#include "report/chart.hpp"
#include "report/pictures.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace faywright {

Drawing utilisation_picture(const Assessment& a) {
    const auto& joint = *a.state.joint;
    auto list = by_utilisation(a);
    std::erase_if(list, [](const CheckResult* r) { return !r->outcome.applicable; });
    const auto failing = std::count_if(list.begin(), list.end(), [](const CheckResult* r) { return r->status == Status::fail; });
    const auto& governing = a.results[a.governing];
    Drawing drawing("Utilisation of every check",
                    fmt::format("{} checks apply and {} fail; {} governs with a utilisation of {}.", list.size(),
                                failing == 0 ? std::string("none") : fmt::format("{}", failing), check_name(joint, governing),
                                ratio_text(governing.outcome.utilisation)),
                    1.0);
    // Many checks stand closer, to stay on one page.
    const auto row = std::clamp(mm(160) / static_cast<double>(std::max<std::size_t>(list.size(), 1)), mm(3.6), mm(5));
    const auto bottom = -row * static_cast<double>(list.size());
    const double greatest = list.empty() ? 1.0 : list.front()->outcome.utilisation;
    const auto axis = Axis<double>::even(0.0, std::clamp(greatest, 1.0, 1.5), 1.0, mm(72), mm(140), 5);
    draw_scale_below(drawing, axis.scale(), bottom, mm(0), "utilisation");
    for (std::size_t i = 0; i < list.size(); ++i) {
        const auto& result = *list[i];
        const double use = result.outcome.utilisation;
        const bool fails = result.status == Status::fail;
        const auto middle = -row * (static_cast<double>(i) + 0.5), base = middle - 0.35 * chart_text;
        const auto end = axis.at(use), half = 0.3 * row;
        drawing.text({mm(0), base}, cut(check_name(joint, result), 46), chart_text);
        if (axis.holds(use)) {
            drawing.rectangle({axis.at(0.0), middle - half}, {end, middle + half}, fails ? Fill::failing : Fill::pale);
        } else {
            // Broken off at a zigzag: it goes on.
            drawing.polygon({{axis.at(0.0), middle - half},
                             {end, middle - half},
                             {end - mm(1), middle - 0.3 * half},
                             {end + mm(1), middle + 0.3 * half},
                             {end, middle + half},
                             {axis.at(0.0), middle + half}},
                            fails ? Fill::failing : Fill::pale);
        }
        drawing.text({mm(152), base}, ratio_text(use), chart_text, Anchor::right);
        drawing.text({mm(153.5), base}, mark_of(result.status), chart_text);
    }
    drawing.line({axis.at(1.0), bottom}, {axis.at(1.0), mm(2)}, Pen::limit);
    drawing.text({axis.at(1.0), mm(2.8)}, "limit", chart_text, Anchor::middle);
    return drawing;
}

}  // namespace faywright
