// SPDX-License-Identifier: MIT
#include "report/parts_list.hpp"

#include "assess/bill.hpp"
#include "input/cells.hpp"
#include "joint/joints.hpp"
#include "joint/reading.hpp"

#include <doctest/doctest.h>

using namespace joint_tests;

namespace {

struct Listed {
    std::unique_ptr<Assessment> assessment;
    std::optional<Joint> joint;
    std::string csv;
    std::vector<std::vector<std::string>> rows;
};

Listed listed(const std::string& text, int joints = 1) {
    Listed out;
    Diagnostics diagnostics;
    out.joint = read_joint(text, "joint.toml", built_in(), diagnostics);
    REQUIRE_MESSAGE(out.joint, diagnostics.text());
    out.assessment = assessed(*out.joint);
    out.csv = parts_list_csv(*out.assessment, built_in(), joints);
    CellReader cells(out.csv, ',');
    while (const auto row = cells.next()) out.rows.push_back(row->cells);
    return out;
}

}  // namespace

TEST_SUITE("report/parts_list") {
    TEST_CASE("mass and pieces are those of the bill") {
        for (const auto* text : {sound_lap, two_cheeks, through_tubes, plain_plates}) {
            for (const int joints : {1, 2}) {
                const auto list = listed(text, joints);
                const auto& s = list.assessment->state;
                const auto bill = bill_of(*list.joint, {s.tube.present ? s.tube.stock : nullptr, s.tube.length});
                double mass = 0;
                int pieces = 0;
                for (std::size_t i = 1; i < list.rows.size(); ++i) {
                    const auto& row = list.rows[i];
                    REQUIRE(row.size() == 11);
                    CHECK(row[0] == std::to_string(i));
                    pieces += std::stoi(row[1]);
                    if (!row[7].empty()) mass += std::stod(row[7]);
                }
                CHECK(pieces == joints * bill.pieces);
                CHECK(mass == doctest::Approx(joints * in_kg(bill.mass)).epsilon(0.005));
            }
        }
    }

    TEST_CASE("designations are what is ordered") {
        const auto rows = listed(sound_lap).rows;
        CHECK(rows[1][3] == "ISO 4014 - M16 x 200 - 8.8");
        CHECK(rows[2][3] == "ISO 4032 - M16 - 8");
        CHECK(rows[2][10] == "tapped oversize, marked Z or X");
        CHECK(rows[3][3] == "ISO 7089 - 16 - 200 HV");
        CHECK(rows[5][3].starts_with("steel 28 x 5.5, length 144 mm"));
        const auto full = listed(edited(sound_lap, "size = \"M16\"", "size = \"M16\"\nfully-threaded = true")).rows;
        CHECK(full[1][3] == "ISO 4017 - M16 x 200 - 8.8");
    }

    TEST_CASE("a part's name is no formula, and a joint that fails is not to be built") {
        const auto list =
            listed(edited(edited(sound_lap, "name = \"drawbar\"", "name = '=cmd|\"/c calc\"!A0'"), "class = \"8.8\"", "class = \"4.6\""));
        CHECK(!list.assessment->passes);
        CHECK(list.csv.find(",=") == std::string::npos);
        CHECK(list.csv.find("\"=") == std::string::npos);
        for (std::size_t i = 1; i < list.rows.size(); ++i) CHECK(list.rows[i][10].starts_with("NOT TO BE BUILT"));
    }
}
