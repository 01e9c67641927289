// SPDX-License-Identifier: MIT
#include "report/joint_pictures.hpp"

#include "joint/joints.hpp"
#include "joint/reading.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace joint_tests;

namespace {

/// Width and height of the filled rectangles, in millimetres of the joint.
std::vector<std::pair<double, double>> rectangles(const Drawing& drawing, Fill fill) {
    std::vector<std::pair<double, double>> out;
    for (const auto& shape : drawing.shapes())
        if (const auto* path = std::get_if<DrawnPath>(&shape); path != nullptr && path->fill == fill && path->points.size() == 4)
            out.emplace_back(std::abs(in_mm(path->points[2].x - path->points[0].x)),
                             std::abs(in_mm(path->points[2].y - path->points[0].y)));
    return out;
}

bool has(const std::vector<std::pair<double, double>>& list, double width, double height) {
    return std::any_of(list.begin(), list.end(),
                       [&](const auto& r) { return std::abs(r.first - width) < 1e-6 && std::abs(r.second - height) < 1e-6; });
}

bool says(const Drawing& drawing, const std::string& words) {
    return std::any_of(drawing.shapes().begin(), drawing.shapes().end(), [&](const auto& shape) {
        const auto* text = std::get_if<DrawnText>(&shape);
        return text != nullptr && text->words == words;
    });
}

}  // namespace

TEST_SUITE("report/joint_pictures") {
    TEST_CASE("the section is to scale: rail, plate, tube, bolt, head, nut and washers have their sizes") {
        const auto a = whole_joint(demo("drawbar.toml"));
        const auto drawing = section_picture(*a.assessment, SectionDetail::dimensions);
        const auto& thread = a.joint->bolt.thread;
        CHECK(has(rectangles(drawing, Fill::aluminium), 100, 160));
        CHECK(has(rectangles(drawing, Fill::fastener), 84, 144));  // the cavity
        CHECK(has(rectangles(drawing, Fill::steel), 80, 10));
        CHECK(has(rectangles(drawing, Fill::tube), 5.5, 144));
        const auto white = rectangles(drawing, Fill::fastener);
        CHECK(has(white, in_mm(thread.across_corners), in_mm(thread.head_height)));
        CHECK(has(white, in_mm(thread.across_corners), in_mm(thread.nut_height)));
        CHECK(has(white, 16, 200));
        CHECK(has(white, 30, 3));
        CHECK(has(white, 17.5, 10));
        CHECK(drawing.title().find("1 : 2") != std::string::npos);
        CHECK(drawing.title().find("thicker") == std::string::npos);
        CHECK(says(drawing, "grip 176"));
    }

    TEST_CASE("a layer too thin to be seen is drawn thicker, and the picture says so") {
        const auto a = whole_joint(edited(demo("drawbar.toml"), "[[part]]\nkind = \"section\"",
                                          "[[part]]\nkind = \"layer\"\nmaterial = \"jointing compound\"\n\n[[part]]\nkind = \"section\""));
        const auto drawing = section_picture(*a.assessment, SectionDetail::dimensions);
        CHECK(drawing.title().find("thicker than they are") != std::string::npos);
        CHECK(rectangles(drawing, Fill::layer).size() == 1);
        CHECK(has(rectangles(drawing, Fill::layer), 80, 2));  // a millimetre of paper at 1 : 2, as wide as the faces meet
    }

    TEST_CASE("what is drawn of any demo joint stays on the paper") {
        for (const auto& name : demo_names()) {
            const auto a = whole_joint(demo(name));
            for (const auto& drawing : {section_picture(*a.assessment, SectionDetail::dimensions),
                                        section_picture(*a.assessment, SectionDetail::parts), pattern_picture(*a.assessment)}) {
                const auto extent = extent_of(drawing);
                CHECK_MESSAGE(drawing.scale() * in_mm(extent.greatest.x - extent.least.x) <= 178.0, name << ": " << drawing.title());
                CHECK(drawing.scale() * in_mm(extent.greatest.y - extent.least.y) <= 200.0);
            }
        }
    }

    TEST_CASE("arrows of the plan are the bolts' loads: direction and length") {
        const auto a = whole_joint(demo("drawbar.toml"));
        const auto* result = governing_of_bolts(*a.assessment);
        REQUIRE(result != nullptr);
        const auto use = use_of_bolts(*a.assessment, *result);
        REQUIRE(use.size() == a.joint->positions.size());
        const auto worst =
            std::max_element(use.begin(), use.end(), [](const BoltUse& x, const BoltUse& y) { return x.utilisation < y.utilisation; });
        CHECK(worst->utilisation == result->outcome.utilisation);
        CHECK(worst - use.begin() == result->where.bolt);
        const auto drawing = pattern_picture(*a.assessment);
        auto longest = newton(0);
        for (const auto& each : use) longest = max(longest, each.load.resultant);
        for (std::size_t i = 0; i < use.size(); ++i) {
            const auto& p = a.joint->positions[i];
            const auto& load = use[i].load;
            const bool drawn = std::any_of(drawing.shapes().begin(), drawing.shapes().end(), [&](const auto& shape) {
                const auto* path = std::get_if<DrawnPath>(&shape);
                if (path == nullptr || path->pen != Pen::load || path->points.size() != 2) return false;
                const auto dx = in_mm(path->points[1].x - p.x) * drawing.scale(), dy = in_mm(path->points[1].y - p.y) * drawing.scale();
                const auto wanted = 14.0 * static_cast<double>(load.resultant / longest);
                return std::abs(in_mm(path->points[0].x - p.x)) < 1e-6 && std::abs(in_mm(path->points[0].y - p.y)) < 1e-6 &&
                       std::abs(dx - wanted * load.along_x) < 1e-6 && std::abs(dy - wanted * load.along_y) < 1e-6;
            });
            CHECK_MESSAGE(drawn, "bolt " << i + 1);
        }
    }
}
