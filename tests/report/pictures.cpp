// SPDX-License-Identifier: MIT
#include "report/pictures.hpp"

#include "assess/clamp_needed.hpp"
#include "joint/joints.hpp"
#include "joint/reading.hpp"
#include "report/assessment_words.hpp"

#include <doctest/doctest.h>

#include <algorithm>

using namespace joint_tests;

namespace {

const std::string long_name = "drawbar leg of the left hand side, second revision, galvanised";

/// Sound joints, failing ones, with and without tube, pull and friction.
std::vector<std::string> kinds() {
    std::vector<std::string> out{lapped_rail, two_cheeks, through_tubes, plain_plates, open_box, sound_lap};
    out.push_back(edited(sound_lap, "class = \"8.8\"", "class = \"4.6\""));
    out.push_back(edited(sound_lap, "name = \"drawbar\"", "name = \"" + long_name + "\""));
    for (const auto& name : demo_names()) out.push_back(demo(name));
    return out;
}

std::vector<Drawing> pictures_of(const Assessment& a) {
    std::vector<Drawing> out{clamp_picture(a), joint_diagram(a), utilisation_picture(a)};
    if (auto fit = tube_fit_picture(a)) out.push_back(std::move(*fit));
    for (const auto& exposure : a.corrosion.exposures) out.push_back(life_picture(exposure, a.state.joint->life));
    UncertaintySettings settings;
    settings.sampling = {1000, 1, 1};
    Progress progress;
    for (const auto& response : uncertainty(a, settings, progress).responses) out.push_back(histogram_picture(response));
    return out;
}

template <class Shape>
std::vector<Shape> all(const Drawing& drawing) {
    std::vector<Shape> out;
    for (const auto& shape : drawing.shapes())
        if (const auto* each = std::get_if<Shape>(&shape)) out.push_back(*each);
    return out;
}

std::vector<DrawnPath> filled(const Drawing& drawing, std::initializer_list<Fill> fills) {
    auto out = all<DrawnPath>(drawing);
    std::erase_if(out, [&](const DrawnPath& p) { return !p.closed || std::find(fills.begin(), fills.end(), p.fill) == fills.end(); });
    return out;
}

bool says(const Drawing& drawing, std::string_view words) {
    for (const auto& text : all<DrawnText>(drawing))
        if (text.words.find(words) != std::string::npos) return true;
    return false;
}

/// Two texts that lie over each other, in letters as wide as a plain sans serif has them on the average.
std::string overlapping(const Drawing& drawing) {
    struct Box {
        double left, right, low, high;
    };
    const auto box = [](const DrawnText& t) {
        const double height = in_mm(t.height), width = 0.5 / 0.62 * in_mm(width_of(t.words, t.height));
        const double before = t.anchor == Anchor::left ? 0.0 : t.anchor == Anchor::middle ? 0.5 * width : width;
        const double x = in_mm(t.at.x), y = in_mm(t.at.y);
        return t.upwards ? Box{x - 0.75 * height, x, y - before, y - before + width}
                         : Box{x - before, x - before + width, y, y + 0.75 * height};
    };
    const auto texts = all<DrawnText>(drawing);
    for (std::size_t i = 0; i < texts.size(); ++i)
        for (std::size_t j = 0; j < i; ++j) {
            const auto a = box(texts[i]), b = box(texts[j]);
            if (a.left < b.right && b.left < a.right && a.low < b.high && b.low < a.high) return texts[i].words + " | " + texts[j].words;
        }
    return {};
}

/// The number that stands at a place on paper, from two places whose numbers are known.
struct Measure {
    double at, other_at, number, other_number;

    [[nodiscard]] double operator()(Length place) const { return number + (in_mm(place) - at) * (other_number - number) / (other_at - at); }
};

}  // namespace

TEST_SUITE("report/pictures") {
    TEST_CASE("every picture is whole, fits the paper, and no words lie over others") {
        for (const auto& text : kinds()) {
            const auto p = whole_joint(text);
            for (const auto& drawing : pictures_of(*p.assessment)) {
                INFO(p.joint->title << ": " << drawing.title());
                const auto extent = extent_of(drawing);
                CHECK(in_mm(extent.greatest.x - extent.least.x) <= 165.0);
                CHECK(in_mm(extent.greatest.y - extent.least.y) <= 245.0);
                CHECK(overlapping(drawing) == "");
                CHECK(!drawing.title().empty());
                CHECK(!drawing.description().empty());
                const auto svg = svg_of(drawing, "x");
                for (const auto* wrong : {"nan", "inf\"", "-0\"", "beyond all numbers", "no number"})
                    CHECK_MESSAGE(svg.find(wrong) == std::string::npos, wrong);
            }
        }
    }

    TEST_CASE("the same joint draws the same bytes") {
        const auto one = whole_joint(demo("drawbar.toml")), other = whole_joint(demo("drawbar.toml"));
        const auto first = pictures_of(*one.assessment), second = pictures_of(*other.assessment);
        REQUIRE(first.size() == second.size());
        for (std::size_t i = 0; i < first.size(); ++i) CHECK(svg_of(first[i], "x") == svg_of(second[i], "x"));
    }

    TEST_CASE("names of a file are data") {
        const std::string evil = "<script>alert(1)</script>&\\\"'";
        auto text = edited(demo("drawbar.toml"), "name = \"drawbar\"", "name = \"" + evil + "\"");
        text = edited_everywhere(text, "name = \"ball pulled down, 0.5 m g\"", "name = \"" + evil + "\"");
        const auto p = whole_joint(text);
        bool named = false;
        for (const auto& drawing : pictures_of(*p.assessment)) {
            const auto svg = svg_of(drawing, "x");
            CHECK(svg.find("<script") == std::string::npos);
            named = named || svg.find("&lt;script&gt;") != std::string::npos;
        }
        CHECK(named);
    }

    TEST_CASE("a bar for each check that applies, hatched where it fails, as long as its utilisation") {
        for (const auto& text : kinds()) {
            const auto p = whole_joint(text);
            const auto& a = *p.assessment;
            const auto drawing = utilisation_picture(a);
            auto list = by_utilisation(a);
            std::erase_if(list, [](const CheckResult* r) { return !r->outcome.applicable; });
            const auto bars = filled(drawing, {Fill::pale, Fill::failing});
            REQUIRE(bars.size() == list.size());
            const auto limit = std::find_if(bars.begin(), bars.end(), [](const DrawnPath& bar) { return bar.fill == Fill::pale; });
            const auto lines = all<DrawnPath>(drawing);
            const auto line = std::find_if(lines.begin(), lines.end(), [](const DrawnPath& l) { return l.pen == Pen::limit; });
            REQUIRE(limit != bars.end());
            REQUIRE(line != lines.end());
            const Measure measure{in_mm(bars[0].points[0].x), in_mm(line->points[0].x), 0.0, 1.0};
            for (std::size_t i = 0; i < bars.size(); ++i) {
                CHECK((bars[i].fill == Fill::failing) == (list[i]->status == Status::fail));
                const double use = list[i]->outcome.utilisation;
                CHECK(measure(bars[i].points[1].x) == doctest::Approx(std::min(use, 1.5)).epsilon(1e-6));
                CHECK(says(drawing, ratio_text(use)));
            }
        }
    }

    TEST_CASE("bars of the clamp end at its stages, and the line of slip stands where the check turns") {
        const auto p = whole_joint(sound_lap);
        const auto& a = *p.assessment;
        const auto drawing = clamp_picture(a);
        const auto bars = filled(drawing, {Fill::pale, Fill::steel, Fill::none});
        REQUIRE(bars.size() == a.clamp.size());
        const Measure measure{in_mm(bars[0].points[0].x), in_mm(bars[0].points[1].x), in_kN(a.clamp[0].least), in_kN(a.clamp[0].greatest)};
        for (std::size_t i = 0; i < bars.size(); ++i) {
            CHECK(measure(bars[i].points[0].x) == doctest::Approx(in_kN(a.clamp[i].least)));
            CHECK(measure(bars[i].points[1].x) == doctest::Approx(in_kN(a.clamp[i].greatest)));
        }
        // One stage is marked: the one the checks use.
        const auto marked = std::find_if(bars.begin(), bars.end(), [](const DrawnPath& bar) { return bar.fill == Fill::steel; });
        REQUIRE(marked != bars.end());
        CHECK(measure(marked->points[0].x) == doctest::Approx(in_kN(a.state.least_clamp())));
        const auto limits = clamp_limits(a.state);
        for (const auto& line : all<DrawnPath>(drawing))
            if (line.pen == Pen::limit) CHECK(measure(line.points[0].x) == doctest::Approx(in_kN(*limits.slip->clamp)));
        CHECK(says(drawing, "slip asks for"));
    }

    TEST_CASE("where friction is not counted on the picture says so and has no line") {
        const auto p = whole_joint(through_tubes);
        const auto drawing = clamp_picture(*p.assessment);
        CHECK(!says(drawing, "slip asks for"));
        CHECK(says(drawing, "No line for slip: the tube passes the walls"));
    }

    TEST_CASE("the joint diagram shows what the pull leaves, or says that nothing pulls") {
        const auto p = whole_joint(sound_lap);
        const auto worst = worst_pull(p.assessment->state);
        REQUIRE(worst.pull > newton(0));
        const auto& separation = *find_check(*p.assessment, "separation");
        CHECK(worst.off_clamp.value() == doctest::Approx(separation.outcome.demand().si()));
        CHECK(in_N(worst.clamp_left) == doctest::Approx(separation.outcome.resistance().si() - separation.outcome.demand().si()));
        CHECK(says(joint_diagram(*p.assessment), "clamp left of the least"));
        auto still = *p.joint;
        for (auto& l : still.load_cases) {
            l.force_x = l.force_y = l.force_z = newton(0);
            l.moment_x = l.moment_y = l.moment_z = Nm(0);
        }
        const auto drawing = joint_diagram(*assessed(still));
        CHECK(says(drawing, "No load pulls on a bolt"));
        CHECK(!says(drawing, "clamp left of the least"));
    }

    TEST_CASE("the tube's picture is there where a tube is, and exaggerates openly") {
        CHECK(!tube_fit_picture(*whole_joint(plain_plates).assessment));
        CHECK(!tube_fit_picture(*whole_joint(open_box).assessment));
        const auto between = tube_fit_picture(*whole_joint(sound_lap).assessment),
                   through = tube_fit_picture(*whole_joint(through_tubes).assessment);
        REQUIRE(between);
        REQUIRE(through);
        CHECK(says(*between, "Exaggerated"));
        CHECK(says(*between, "too short by"));
        CHECK(says(*through, "stands out by"));
    }

    TEST_CASE("each part's line of life reaches 100 % at the life that is told") {
        const auto p = whole_joint(demo("drawbar.toml"));
        REQUIRE(!p.assessment->corrosion.exposures.empty());
        std::size_t reached = 0;
        for (const auto& exposure : p.assessment->corrosion.exposures) {
            const auto drawing = life_picture(exposure, p.joint->life);
            auto centrals = all<DrawnPath>(drawing);
            std::erase_if(centrals, [](const DrawnPath& l) { return l.pen != Pen::outline || l.closed; });
            auto promises = all<DrawnPath>(drawing);
            std::erase_if(promises, [](const DrawnPath& l) { return l.pen != Pen::limit; });
            auto members = exposure.members;
            std::erase_if(members, [](const MemberOutlook& m) { return m.lasts || m.thickness <= mm(0); });
            REQUIRE(promises.size() == members.size());
            for (std::size_t i = 0; i < members.size(); ++i) {
                INFO(members[i].name);
                const auto origin = centrals[i].points.front().x;
                const Measure time{in_mm(origin), in_mm(promises[i].points[0].x), 0.0, in_years(p.joint->life)};
                const auto& end = centrals[i].points.back();
                const auto full = promises[i].points[0].y + mm(26);
                if (abs(end.y - full) > um(1)) continue;
                ++reached;
                CHECK(time(end.x) == doctest::Approx(in_years(members[i].life)));
            }
        }
        CHECK(reached > 0);
    }

    TEST_CASE("bars of the samples are as high as their shares") {
        const auto p = whole_joint(sound_lap);
        UncertaintySettings settings;
        settings.sampling = {2000, 1, 1};
        Progress progress;
        const auto told = uncertainty(*p.assessment, settings, progress);
        for (const auto& response : told.responses) {
            const auto& h = response.histogram;
            double sum = h.below + h.above;
            for (const double share : h.shares) sum += share;
            CHECK(sum == doctest::Approx(1.0).epsilon(1e-12));
            const auto bars = filled(histogram_picture(response), {Fill::pale});
            REQUIRE(bars.size() == h.shares.size());
            const auto top = static_cast<std::size_t>(std::max_element(h.shares.begin(), h.shares.end()) - h.shares.begin());
            const double highest = in_mm(bars[top].points[2].y);
            for (std::size_t i = 0; i < bars.size(); ++i)
                CHECK(in_mm(bars[i].points[2].y) / highest == doctest::Approx(h.shares[i] / h.shares[top]));
        }
    }

    TEST_CASE("a response that is barred, or does not scatter, has words in place of bars") {
        ResponseTold response;
        response.info = &uncertain_responses[1];
        response.barred = "no friction";
        CHECK(says(histogram_picture(response), "no friction"));
        response.barred = nullptr;
        response.histogram.shares = {1.0};
        CHECK(says(histogram_picture(response), "do not differ"));
    }

    TEST_CASE("every method of isolation has its point, and the joint as written is told") {
        Diagnostics diagnostics;
        const auto root = parse_toml(demo("drawbar.toml"), "joint.toml", diagnostics);
        REQUIRE(root);
        auto ranking = rank_isolation({*root, built_in(), {*built_in().of<Exposure>().find("surf coast")}}, diagnostics);
        REQUIRE_MESSAGE(ranking, diagnostics.text());
        REQUIRE(ranking->as_written);
        const auto drawing = isolation_picture(*ranking);
        CHECK(overlapping(drawing) == "");
        for (const auto index : ranking->of_each_faying) CHECK(says(drawing, ranking->results[index].method.name().substr(0, 60)));
        CHECK(says(drawing, fmt::format("{} W", *ranking->as_written + 1)));
        // What cannot be built has no point.
        for (auto& result : ranking->results) result.refused = "no such tube";
        CHECK(says(isolation_picture(*ranking), "cannot be built"));
    }
}
