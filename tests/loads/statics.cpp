// SPDX-License-Identifier: MIT
#include "joint/random_joint.hpp"
#include "loads/hanger.hpp"
#include "loads/kerb.hpp"
#include "loads/lap.hpp"
#include "loads/nose_load.hpp"

using namespace faywright;

namespace {

/// The 2.6 t trailer of the regression cases.
TrailerBody workshop_trailer() { return {kg(2600), kg(240), mm(3240), mm(1050), mm(3600), mm(1500), mm(1750), mm(430)}; }
Lap workshop_lap() { return {mm(1800), mm(400), mm(400), mm(550), mm(1100)}; }

double share(int thousandths) { return thousandths / 1000.0; }

/// Called only inside a property.
double between(double least, double most) { return least + (most - least) * share(*rc::gen::inRange(0, 1001)); }

TrailerBody any_trailer() {
    TrailerBody body{};
    body.mass = kg(between(100, 20000));
    body.unsprung = body.mass * between(0.02, 0.4);
    body.axle = mm(between(1000, 9000));
    body.centre = body.axle * between(0.7, 1.2);
    body.centre_height = mm(between(300, 2500));
    body.gyration = mm(between(200, 4000));
    body.track = mm(between(800, 2500));
    body.coupling_height = mm(between(200, 1200));
    return body;
}

TrailerMotion any_motion(const TrailerBody& body) {
    TrailerMotion motion{};
    motion.braking = gravity * between(0, 1.5);
    motion.thrust = body.mass * motion.braking * between(0, 1);
    motion.sideways = gravity * between(-1, 1);
    motion.yaw = per_s2(between(-5, 5));
    motion.bump = body.sprung_weight() * between(0, 4);
    motion.heave = m_per_s2(between(-10, 10));
    motion.kerb = body.weight() * between(0, 2);
    motion.kerb_right = *rc::gen::arbitrary<bool>();
    return motion;
}

Lap any_lap(const TrailerBody& body) {
    Lap lap{};
    lap.middle = body.axle * between(0.3, 0.8);
    lap.front = mm(between(20, 200));
    lap.rear = mm(between(20, 1500));
    lap.height = body.coupling_height + mm(between(-150, 600));
    lap.legs_apart = mm(between(100, 2200));
    return lap;
}

/// What is left over, as a share of the forces there are and of their moments.
double left_over(const std::vector<PlacedForce>& forces) {
    auto force = newton(0);
    auto moment = Nm(0);
    for (const auto& each : forces) {
        force += magnitude(each.force);
        moment += magnitude(each.moment) + magnitude(each.force) * magnitude(each.at);
    }
    const auto sum = resultant(forces);
    if (force == newton(0)) return 0.0;
    return std::max(double(magnitude(sum.force) / force), moment == Nm(0) ? 0.0 : double(magnitude(sum.moment) / moment));
}

constexpr int trailers = 10000;

template <class Property>
void for_trailers(Property&& property) {
    rc::detail::TestParams params;
    params.seed = 55;
    params.maxSuccess = trailers;
    const auto result = rc::detail::checkTestable(std::forward<Property>(property), rc::detail::TestMetadata{}, params);
    std::ostringstream message;
    rc::detail::printResultMessage(result, message);
    INFO(message.str());
    CHECK(result.template is<rc::detail::SuccessResult>());
}

}  // namespace

TEST_SUITE("loads/statics") {
    TEST_CASE("the trailer's free body balances, whatever the trailer and its motion") {
        for_trailers([] {
            const auto body = any_trailer();
            const auto motion = any_motion(body);
            RC_ASSERT(left_over(trailer_free_body(body, motion)) < 1e-9);
        });
    }

    TEST_CASE("the drawbar ahead of the lap balances, and its two legs together carry what the coupling brings") {
        for_trailers([] {
            const auto body = any_trailer();
            const auto lap = any_lap(body);
            const auto load = coupling_load(body, any_motion(body));
            const auto h_c = body.coupling_height;
            RC_ASSERT(left_over(drawbar_free_body(load, lap, h_c)) < 1e-9);

            // Both legs' loads about the middle of the lap, against the coupling's force at its place.
            const auto left = leg_load(load, lap, h_c, 0.5, true), right = leg_load(load, lap, h_c, 0.5, false);
            const std::vector<PlacedForce> whole{
                {"left", {-lap.middle, lap.legs_apart * -0.5, h_c - lap.height}, left.force, left.moment},
                {"right", {-lap.middle, lap.legs_apart * 0.5, h_c - lap.height}, right.force, right.moment},
                {"coupling, turned about", {}, -load.on_trailer()}};
            RC_ASSERT(left_over(whole) < 1e-9);
        });
    }

    TEST_CASE("a leg's load is that of its two groups") {
        for_trailers([] {
            const auto body = any_trailer();
            const auto lap = any_lap(body);
            const auto load = coupling_load(body, any_motion(body));
            const auto h_c = body.coupling_height;
            const bool left = *rc::gen::arbitrary<bool>();
            const auto leg = leg_load(load, lap, h_c, 0.5, left);
            const std::vector<PlacedForce> groups{{"front", {lap.front, mm(0), mm(0)}, group_load(load, lap, h_c, 0.5, left, true)},
                                                  {"rear", {-lap.rear, mm(0), mm(0)}, group_load(load, lap, h_c, 0.5, left, false)},
                                                  {"leg, turned about", {}, -leg.force, -leg.moment}};
            RC_ASSERT(left_over(groups) < 1e-9);
        });
    }

    TEST_CASE("the hangers of both sides carry what stands on the wheels") {
        for_trailers([] {
            const auto body = any_trailer();
            auto motion = any_motion(body);
            motion.kerb = newton(0);
            const auto wheels = wheel_loads(body, motion);
            const double side = *rc::gen::inRange(1, 6);
            const Hangers hangers{2.0 * side, mm(100), mm(400), side > 1 ? mm(700) : mm(0)};
            Force3 sum{};
            for (const bool left : {true, false})
                for (const bool rear : {true, false}) sum = sum + hanger_load(body, motion, hangers, 0.5, left, rear) * (side / 2.0);
            const auto up = wheels.left + wheels.right;
            RC_ASSERT(abs(sum.z + up) <= 1e-9 * body.weight() + 1e-9 * abs(up));
            RC_ASSERT(abs(sum.y - wheels.sideways) <= 1e-9 * body.weight());
            RC_ASSERT(abs(sum.x + wheels.brake) <= 1e-9 * body.weight());
        });
    }

    TEST_CASE("a bump under the axle leaves the coupling alone where that is the centre of percussion") {
        auto body = workshop_trailer();
        // x_G² + k² = L_a x_G.
        body.gyration = sqrt(body.centre * (body.axle - body.centre));
        CHECK(std::abs(body.percussion_factor()) < 1e-12);
        const auto still = coupling_load(body, {}), bumped = coupling_load(body, {.bump = kN(40)});
        CHECK(in_N(bumped.up) == doctest::Approx(in_N(still.up)));
        // A body more spread out is lifted off its coupling, a more compact one pressed on it.
        body.gyration = body.gyration * 1.2;
        CHECK(coupling_load(body, {.bump = kN(40)}).up < still.up);
        body.gyration = body.gyration / 1.2 / 1.2;
        CHECK(coupling_load(body, {.bump = kN(40)}).up > still.up);
    }

    TEST_CASE("left and right are mirror images") {
        const auto body = workshop_trailer();
        const auto lap = workshop_lap();
        const TrailerMotion right{.sideways = gravity * 0.4, .yaw = per_s2(1.5)}, left{.sideways = gravity * -0.4, .yaw = per_s2(-1.5)};
        const auto a = wheel_loads(body, right), b = wheel_loads(body, left);
        CHECK(in_N(a.left) == doctest::Approx(in_N(b.right)));
        CHECK(in_N(a.right) == doctest::Approx(in_N(b.left)));
        CHECK(a.left > a.right);  // the outer wheel
        for (const bool front : {true, false}) {
            const auto one = group_load(coupling_load(body, right), lap, mm(430), 0.5, true, front);
            const auto other = group_load(coupling_load(body, left), lap, mm(430), 0.5, false, front);
            CHECK(in_N(one.x) == doctest::Approx(in_N(other.x)));
            CHECK(in_N(one.y) == doctest::Approx(-in_N(other.y)));
            CHECK(in_N(one.z) == doctest::Approx(in_N(other.z)));
        }
        // Straight ahead both legs are alike.
        const auto braking = coupling_load(body, {.braking = gravity * 0.5, .thrust = kN(2.5)});
        CHECK(group_load(braking, lap, mm(430), 0.5, true, true) == group_load(braking, lap, mm(430), 0.5, false, true));
    }

    TEST_CASE("a lap twice as long halves the rear group's force") {
        const CouplingLoad load{.up = kN(10)};
        const auto one = LapForces::compute({load.up, newton(0), mm(1400), mm(1800)}),
                   two = LapForces::compute({load.up, newton(0), mm(1400), mm(2200)});
        CHECK(in_kN(one.rear) == doctest::Approx(35));
        CHECK(in_kN(two.rear) == doctest::Approx(17.5));
        CHECK(in_kN(two.front) == doctest::Approx(27.5));
    }

    TEST_CASE("a rear hanger is pressed up by the brakes, the front one pulled down by as much") {
        const auto body = workshop_trailer();
        const Hangers hangers{4, mm(90), mm(460), mm(700)};
        const TrailerMotion braking{.braking = gravity * 0.5, .thrust = kN(2.5506)};
        const auto front = hanger_load(body, braking, hangers, 0.5, true, false),
                   rear = hanger_load(body, braking, hangers, 0.5, true, true);
        const auto wheels = wheel_loads(body, braking);
        // The side's brake force at the ground, 460 mm below the eyes, over 700 mm.
        CHECK(in_N(front.z - rear.z) == doctest::Approx(2 * in_N(wheels.brake) / 2 * 460 / 700));
        CHECK(rear.z < front.z);
        CHECK(in_N(front.z + rear.z) == doctest::Approx(-in_N(wheels.left)));
    }

    TEST_CASE("a hanger stands under its own wheel, and only the wheel at the kerb passes the kerb's force on") {
        const auto body = workshop_trailer();
        const Hangers hangers{4, mm(90), mm(460), mm(0)};
        const TrailerMotion cornering{.sideways = gravity * 0.5}, kerb{.kerb = kN(10), .kerb_right = true};
        const auto wheels = wheel_loads(body, cornering);
        CHECK(in_N(hanger_load(body, cornering, hangers, 0.5, true, false).z) == doctest::Approx(-in_N(wheels.left) / 2));
        CHECK(in_N(hanger_load(body, cornering, hangers, 0.5, false, false).z) == doctest::Approx(-in_N(wheels.right) / 2));
        // The worse side's share counts of both wheels' mean, what cornering shifts comes besides.
        CHECK(in_N(hanger_load(body, cornering, hangers, 0.6, true, false).z) ==
              doctest::Approx(-(0.6 * in_N(wheels.left + wheels.right) + in_N(wheels.left - wheels.right) / 2) / 2));
        CHECK(in_kN(hanger_load(body, kerb, hangers, 0.5, false, false).x) == doctest::Approx(5));
        CHECK(in_kN(hanger_load(body, kerb, hangers, 0.5, true, false).x) == doctest::Approx(0));
        const auto forces = trailer_free_body(body, kerb);
        CHECK(forces.back().name == "kerb");
        CHECK(in_mm(forces.back().at.y) == doctest::Approx(875));
        CHECK(in_kN(forces.back().force.x) == doctest::Approx(10));
        // Pushed rearward about its right wheel the nose would swing left; the ball holds it to the right.
        CHECK(in_kN(coupling_load(body, kerb).right) == doctest::Approx(10 * 1750.0 / 7200));
    }

    TEST_CASE("joint axes stay right-handed, with z towards the attached part") {
        const Triple<Length> forward{mm(1), mm(0), mm(0)}, right{mm(0), mm(1), mm(0)}, down{mm(0), mm(0), mm(1)};
        for (const auto placing : {Placing::under, Placing::beside, Placing::on_top}) {
            const auto x = in_joint_axes(forward, placing), y = in_joint_axes(right, placing), z = in_joint_axes(down, placing);
            CHECK(x == forward);
            // x cross y is z.
            CHECK(in_mm(x.x) * in_mm(y.y) == doctest::Approx(in_mm(z.z)));
            CHECK(in_mm(x.x) * in_mm(y.z) == doctest::Approx(-in_mm(z.y)));
        }
        CHECK(in_joint_axes(down, Placing::under).z == mm(1));
        CHECK(in_joint_axes(right, Placing::beside).z == mm(1));
        CHECK(in_joint_axes(down, Placing::on_top).z == mm(-1));
    }

    // Own arithmetic, worked out apart from this program.
    TEST_CASE("regression: nose load, braking, bump, mass at the coupling, kerb") {
        const auto body = workshop_trailer();
        CHECK(in_kN(body.nose_load()) == doctest::Approx(2.5506));
        const auto braking = gravity * 0.5;
        CHECK(in_kN(coupling_load(body, {.braking = braking, .thrust = body.weight() * 0.1}).up) == doctest::Approx(5.9656).epsilon(1e-5));
        CHECK(in_kN(coupling_load(body, {.braking = braking, .thrust = body.mass * braking}).up) == doctest::Approx(4.7470).epsilon(1e-5));
        CHECK(body.percussion_factor() == doctest::Approx(-0.08500).epsilon(1e-4));
        const auto bump = body.sprung_weight() * 2.0;
        CHECK(in_kN(coupling_load(body, {.bump = bump}).up - body.nose_load()) == doctest::Approx(-3.9360).epsilon(1e-4));
        CHECK(in_kg(body.mass_at_coupling()) == doctest::Approx(477.39).epsilon(1e-5));
        CHECK(in_kN(kerb_push(kg(3000), kg(2600), m_per_s(0.8), N_per_mm(400))) == doctest::Approx(18.883).epsilon(1e-4));
        const auto answer = NoseLoad::compute({kg(2600), mm(3240), mm(3600), mm(1050), mm(430), braking, body.weight() * 0.1});
        CHECK(in_kN(answer.braked) == doctest::Approx(5.9656).epsilon(1e-5));
        CHECK(answer.share == doctest::Approx(0.1));
    }

    TEST_CASE("regression: lap under 0.5 m g up and down, under 1.5 m g, and sideways") {
        const auto body = workshop_trailer();
        const auto lap = workshop_lap();
        const auto h_c = body.coupling_height;
        const auto down = lap_couple({.up = body.weight() * -0.5}, lap, h_c);
        CHECK(in_kN(down.front) == doctest::Approx(-35.071).epsilon(1e-4));
        CHECK(in_kN(down.rear) == doctest::Approx(-22.318).epsilon(1e-4));
        const auto push = lap_couple({.rearward = body.weight() * 1.5}, lap, h_c);
        CHECK(in_kNm(push.at_front) == doctest::Approx(-4.59).epsilon(1e-3));
        CHECK(in_kN(push.rear) == doctest::Approx(-5.74).epsilon(1e-3));
        const CouplingLoad sideways{.right = body.weight() * 0.5};
        const auto group = group_load(sideways, lap, h_c, 0.6, true, true);
        CHECK(in_kN(group.x) == doctest::Approx(6.825).epsilon(1e-4));
        CHECK(in_kN(group.y) == doctest::Approx(3.188 + 4.963).epsilon(1e-4));
        CHECK(std::hypot(in_kN(group.x), in_kN(group.y)) == doctest::Approx(10.631).epsilon(1e-4));
    }
}
