// SPDX-License-Identifier: MIT
#include "mechanics/bearing.hpp"
#include "quantity/text.hpp"

#include <doctest/doctest.h>

#include <concepts>
#include <string>
#include <type_traits>

/// What the types do not let one write, told by concepts; the slips that stop the compiler instead of a concept are in cannot_compile/.
using namespace faywright;

namespace {

template <class A, class B>
concept Adds = requires(A a, B b) {
    a + b;
};
template <class A, class B>
concept Subtracts = requires(A a, B b) {
    a - b;
};
template <class A, class B>
concept Compares = requires(A a, B b) {
    a < b;
    a == b;
};
template <class A, class B>
concept Multiplies = requires(A a, B b) {
    a* b;
};
template <class A, class B, class Result>
concept MultipliesTo = requires(A a, B b) {
    { a* b } -> std::same_as<Result>;
};
template <class A, class B, class Result>
concept DividesTo = requires(A a, B b) {
    { a / b } -> std::same_as<Result>;
};
template <class Q>
concept HasMillimetres = requires(Q q) {
    in_mm(q);
};
template <class Q>
concept IsMadeFromText = requires {
    Q("16 mm");
};
template <class Q>
concept Printable = requires(Q q) {
    Value(q);
};

template <class Q>
constexpr bool is_closed_to_numbers =
    !std::convertible_to<double, Q> && !std::constructible_from<Q, double> && !std::convertible_to<Q, double> &&
    !std::is_assignable_v<Q&, double> && !Adds<Q, double> && !Adds<double, Q> && !Compares<Q, double>;

template <class Q>
constexpr bool is_a_bare_double_in_store =
    sizeof(Q) == sizeof(double) && alignof(Q) == alignof(double) &&
    std::is_standard_layout_v<Q>&& std::is_trivially_destructible_v<Q>&& std::is_nothrow_destructible_v<Q>&& std::default_initializable<Q>;

}  // namespace

/// Checked when the test is compiled, and counted when it runs.
#define FAYWRIGHT_HOLDS(...)        \
    do {                            \
        static_assert(__VA_ARGS__); \
        CHECK((__VA_ARGS__));       \
    } while (false)

TEST_SUITE("quantity/negative") {
    TEST_CASE("no quantity is made of a number, nor turns into one") {
        FAYWRIGHT_HOLDS(is_closed_to_numbers<Length>);
        FAYWRIGHT_HOLDS(is_closed_to_numbers<Area>);
        FAYWRIGHT_HOLDS(is_closed_to_numbers<Volume>);
        FAYWRIGHT_HOLDS(is_closed_to_numbers<SecondMoment>);
        FAYWRIGHT_HOLDS(is_closed_to_numbers<Force>);
        FAYWRIGHT_HOLDS(is_closed_to_numbers<Moment>);
        FAYWRIGHT_HOLDS(is_closed_to_numbers<Stress>);
        FAYWRIGHT_HOLDS(is_closed_to_numbers<Stiffness>);
        FAYWRIGHT_HOLDS(is_closed_to_numbers<Resilience>);
        FAYWRIGHT_HOLDS(is_closed_to_numbers<Mass>);
        FAYWRIGHT_HOLDS(is_closed_to_numbers<Density>);
        FAYWRIGHT_HOLDS(is_closed_to_numbers<Duration>);
        FAYWRIGHT_HOLDS(is_closed_to_numbers<Angle>);
        FAYWRIGHT_HOLDS(is_closed_to_numbers<TemperatureDifference>);
        FAYWRIGHT_HOLDS(is_closed_to_numbers<Expansion>);
        FAYWRIGHT_HOLDS(!std::convertible_to<double, Temperature>);
        FAYWRIGHT_HOLDS(!std::constructible_from<Temperature, double>);
        FAYWRIGHT_HOLDS(!std::convertible_to<Temperature, double>);
        FAYWRIGHT_HOLDS(!IsMadeFromText<Length>);
    }

    TEST_CASE("different dimensions neither add, subtract nor compare") {
        FAYWRIGHT_HOLDS(Adds<Length, Length> && Subtracts<Length, Length> && Compares<Length, Length>);
        FAYWRIGHT_HOLDS(!Adds<Stress, Length>);
        FAYWRIGHT_HOLDS(!Adds<Force, Moment>);
        FAYWRIGHT_HOLDS(!Adds<Mass, Force>);
        FAYWRIGHT_HOLDS(!Adds<Stiffness, Resilience>);
        FAYWRIGHT_HOLDS(!Subtracts<Length, Area>);
        FAYWRIGHT_HOLDS(!Subtracts<Stress, Force>);
        FAYWRIGHT_HOLDS(!Compares<Stress, Length>);
        FAYWRIGHT_HOLDS(!Compares<Force, Mass>);
        FAYWRIGHT_HOLDS(!Compares<Stiffness, Resilience>);
        FAYWRIGHT_HOLDS(!Compares<Area, Volume>);
    }

    TEST_CASE("no quantity passes for another") {
        FAYWRIGHT_HOLDS(!std::convertible_to<Force, Moment>);
        FAYWRIGHT_HOLDS(!std::convertible_to<Moment, Force>);
        FAYWRIGHT_HOLDS(!std::convertible_to<Stress, Force>);
        FAYWRIGHT_HOLDS(!std::convertible_to<Mass, Force>);
        FAYWRIGHT_HOLDS(!std::convertible_to<Stiffness, Resilience>);
        FAYWRIGHT_HOLDS(!std::convertible_to<Angle, double>);
        FAYWRIGHT_HOLDS(!HasMillimetres<Area> && !HasMillimetres<double> && HasMillimetres<Length>);
    }

    TEST_CASE("a point on the temperature scale is no difference") {
        FAYWRIGHT_HOLDS(!std::same_as<Temperature, TemperatureDifference>);
        FAYWRIGHT_HOLDS(!std::convertible_to<Temperature, TemperatureDifference>);
        FAYWRIGHT_HOLDS(!std::convertible_to<TemperatureDifference, Temperature>);
        FAYWRIGHT_HOLDS(!Compares<Temperature, TemperatureDifference>);
        FAYWRIGHT_HOLDS(std::same_as<decltype(degC(60) - degC(20)), TemperatureDifference>);
        FAYWRIGHT_HOLDS(std::same_as<decltype(degC(20) + kelvin(5)), Temperature>);
        FAYWRIGHT_HOLDS(!(dimension_of<Temperature> == dimension_of<TemperatureDifference>));
        CHECK(in_K(degC(60) - degC(20)) == doctest::Approx(40));
        CHECK(in_degC(degC(20) + kelvin(5)) == doctest::Approx(25));
    }

    TEST_CASE("products and quotients have the dimension of their name") {
        FAYWRIGHT_HOLDS(MultipliesTo<Force, Length, Moment>);
        FAYWRIGHT_HOLDS(MultipliesTo<Stress, Area, Force>);
        FAYWRIGHT_HOLDS(MultipliesTo<Stress, Volume, Moment>);
        FAYWRIGHT_HOLDS(DividesTo<Force, Area, Stress>);
        FAYWRIGHT_HOLDS(DividesTo<Force, Length, Stiffness>);
        FAYWRIGHT_HOLDS(DividesTo<Length, Force, Resilience>);
        FAYWRIGHT_HOLDS(DividesTo<Moment, Force, Length>);
        FAYWRIGHT_HOLDS(std::same_as<decltype(1.0 / Stiffness{}), Resilience>);
        FAYWRIGHT_HOLDS(!MultipliesTo<Force, Area, Moment>);
        FAYWRIGHT_HOLDS(!Multiplies<Force, std::string>);
    }

    TEST_CASE("a ratio becomes a number by itself, and only a ratio does") {
        FAYWRIGHT_HOLDS(std::convertible_to<decltype(mm(3) / mm(2)), double>);
        FAYWRIGHT_HOLDS(std::convertible_to<decltype(kN(3) * mm(1) / Nm(2)), double>);
        FAYWRIGHT_HOLDS(!std::convertible_to<decltype(mm(3) / kN(2)), double>);
        const double ratio = mm(3) / mm(2);
        CHECK(ratio == doctest::Approx(1.5));
        FAYWRIGHT_HOLDS(dimension_of<decltype(mm(3) / mm(2))>.is_ratio());
        FAYWRIGHT_HOLDS(std::same_as<decltype(NoSteps{}.record("", "", mm(3) / mm(2))), double>);
        FAYWRIGHT_HOLDS(std::same_as<decltype(NoSteps{}.record("", "", mm(3) * mm(2))), Area>);
    }

    TEST_CASE("a quantity costs no more than a double") {
        FAYWRIGHT_HOLDS(is_a_bare_double_in_store<Length>);
        FAYWRIGHT_HOLDS(is_a_bare_double_in_store<Force>);
        FAYWRIGHT_HOLDS(is_a_bare_double_in_store<Moment>);
        FAYWRIGHT_HOLDS(is_a_bare_double_in_store<Stress>);
        FAYWRIGHT_HOLDS(is_a_bare_double_in_store<Resilience>);
        FAYWRIGHT_HOLDS(is_a_bare_double_in_store<TemperatureDifference>);
        FAYWRIGHT_HOLDS(is_a_bare_double_in_store<Temperature>);
        FAYWRIGHT_HOLDS(is_a_bare_double_in_store<Expansion>);
        CHECK(Length{} == mm(0));
        CHECK(Force{} == newton(0));
    }

    TEST_CASE("a calculator's inputs take no bare number") {
        FAYWRIGHT_HOLDS(!std::is_assignable_v<decltype(Bearing::Inputs{}.thickness)&, double>);
        FAYWRIGHT_HOLDS(!std::is_assignable_v<decltype(Bearing::Inputs{}.pitch)&, double>);
        FAYWRIGHT_HOLDS(std::is_assignable_v<decltype(Bearing::Inputs{}.gamma_M2)&, double>);
        FAYWRIGHT_HOLDS(std::is_assignable_v<decltype(Bearing::Inputs{}.gamma_M2)&, decltype(mm(1) / mm(1))>);
    }

    TEST_CASE("what the recorder and the printer take") {
        FAYWRIGHT_HOLDS(Printable<double> && Printable<Length> && Printable<Temperature> && Printable<decltype(kN(1) * kN(1))>);
        FAYWRIGHT_HOLDS(!Printable<std::string>);
    }
}
