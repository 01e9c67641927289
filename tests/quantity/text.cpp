// SPDX-License-Identifier: MIT
#include "quantity/text.hpp"

#include <doctest/doctest.h>
#include <rapidcheck.h>

#include <cmath>
#include <limits>
#include <string>
#include <vector>

using namespace faywright;
using namespace std::string_literals;

namespace {

/// What was read, in SI base units; a refusal fails the test and shows its phrase.
template <class Q>
double read(const std::string& text) {
    const auto value = read_value(text, dimension_of<Q>);
    INFO(text << ": " << (value ? "" : value.error()));
    REQUIRE(value.has_value());
    CHECK(value->dimension() == dimension_of<Q>);
    return value->si();
}

/// The phrase of the refusal; "accepted" when there was none.
template <class Q>
std::string refused(const std::string& text) {
    const auto value = read_value(text, dimension_of<Q>);
    return value ? "accepted" : value.error();
}

template <class Q>
std::string printed(const Q& q, int significant = 4) {
    return print(Value(q), significant);
}

doctest::Approx near(double value) { return doctest::Approx(value).epsilon(1e-14).scale(0.0); }

bool is_plain_text(const std::string& text) {
    for (const char c : text)
        if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) return false;
    return true;
}

/// Every dimension that has a name, as messages know it.
const std::vector<Dimension>& named_dimensions() {
    static const std::vector<Dimension> all{dimension_of<double>,
                                            dimension_of<Length>,
                                            dimension_of<Area>,
                                            dimension_of<Volume>,
                                            dimension_of<SecondMoment>,
                                            dimension_of<Mass>,
                                            dimension_of<Duration>,
                                            dimension_of<Force>,
                                            dimension_of<Moment>,
                                            dimension_of<Stress>,
                                            dimension_of<Stiffness>,
                                            dimension_of<Resilience>,
                                            dimension_of<Density>,
                                            dimension_of<Expansion>,
                                            dimension_of<Angle>,
                                            dimension_of<Temperature>,
                                            dimension_of<TemperatureDifference>,
                                            dimension_of<Current>,
                                            dimension_of<Potential>,
                                            dimension_of<Resistance>,
                                            dimension_of<Charge>,
                                            dimension_of<Amount>,
                                            dimension_of<CurrentDensity>,
                                            dimension_of<LineCurrent>,
                                            dimension_of<Conductivity>,
                                            dimension_of<SurfaceResistance>,
                                            dimension_of<MolarMass>,
                                            dimension_of<MolarCharge>,
                                            dimension_of<Concentration>,
                                            dimension_of<Diffusivity>,
                                            dimension_of<ArealMass>,
                                            dimension_of<Deposition>};
    return all;
}

}  // namespace

TEST_SUITE("quantity/text: reading") {
    TEST_CASE("beside the bounds of the plain form the rounded number counts") {
        CHECK(print_number(9999999.9, 4) == "1e7");
        CHECK(print_number(-9999999.9, 6) == "-1e7");
        CHECK(print_number(9999999.4, 4) == "9999999");
        CHECK(print_number(0.000099999, 3) == "0.0001");
        CHECK(print_number(0.00009994, 4) == "9.994e-5");
    }

    TEST_CASE("the units of corrosion") {
        CHECK(read<Speed>("1 um/a") == near(1e-6 / 31557600.0));
        CHECK(read<Speed>("8.4 um/year") == near(8.4e-6 / 31557600.0));
        CHECK(read<Deposition>("86.4 mg/m2/d") == near(1e-9));
        CHECK(read<CurrentDensity>("30 uA/cm2") == near(0.3));
        CHECK(read<Potential>("-760 mV") == near(-0.76));
        CHECK(read<Conductivity>("0.05 S/cm") == near(5.0));
        CHECK(read<SurfaceResistance>("500 ohm*cm2") == near(0.05));
        CHECK(read<Concentration>("0.5 mol/L") == near(500.0));
        CHECK(read<MolarMass>("65.38 g/mol") == near(0.06538));
        CHECK(read<ArealMass>("610 g/m2") == near(0.61));
        CHECK(read<Diffusivity>("2e-5 cm2/s") == near(2e-9));
        CHECK(read<LineCurrent>("255 uA/cm") == near(0.0255));
        CHECK(read<MolarCharge>("96485 C/mol") == near(96485.0));
        CHECK(printed(um_per_a(8.4)) == "8.4 um/a");
        CHECK(printed(m_per_s(0.8)) == "0.8 m/s");
        CHECK(printed(mg_per_m2_d(60)) == "60 mg/m2/d");
        CHECK(printed(volt(-0.76)) == "-0.76 V");
        CHECK(printed(uA_per_cm2(30)) == "30 uA/cm2");
        CHECK(refused<Potential>("0.3 A").find("a current") != std::string::npos);
    }

    TEST_CASE("the forms people write") {
        CHECK(read<Length>("16 mm") == near(0.016));
        CHECK(read<Length>("0.5 in") == near(0.0127));
        CHECK(read<Length>("3 um") == near(3e-6));
        CHECK(read<Force>("70 kN") == near(70e3));
        CHECK(read<Force>("15.7 kip") == near(15.7e3 * 4.4482216152605));
        CHECK(read<Moment>("85 N*m") == near(85));
        CHECK(read<Moment>("85 N.m") == near(85));
        CHECK(read<Moment>("85 Nm") == near(85));
        CHECK(read<Moment>("85 N\u00b7m") == near(85));
        CHECK(read<Moment>("63 lbf*ft") == near(63 * 4.4482216152605 * 0.3048));
        CHECK(read<Stress>("240 MPa") == near(240e6));
        CHECK(read<Stress>("240 N/mm2") == near(240e6));
        CHECK(read<Stress>("35 ksi") == near(35e3 * 4.4482216152605 / (0.0254 * 0.0254)));
        CHECK(read<Temperature>("20 degC") == near(293.15));
        CHECK(read<Temperature>("68 degF") == near(293.15));
        CHECK(read<Temperature>("293 K") == near(293));
        CHECK(read<TemperatureDifference>("-15 K") == near(-15));
        CHECK(read<Duration>("20 years") == near(20 * 365.25 * 86400));
        CHECK(read<Mass>("2600 kg") == near(2600));
        CHECK(read<Mass>("2.6 t") == near(2600));
        CHECK(read<Angle>("9 deg") == near(9 * std::numbers::pi / 180));
        CHECK(read<Resilience>("3.2 um/kN") == near(3.2e-9));
        CHECK(read<Expansion>("23e-6 1/K") == near(23e-6));
        CHECK(read<Density>("7850 kg/m3") == near(7850));
        CHECK(read<Stiffness>("450 kN/mm") == near(450e6));
        CHECK(read<Area>("84.3 mm2") == near(84.3e-6));
        CHECK(read<Volume>("1200 mm3") == near(1200e-9));
        CHECK(read<SecondMoment>("8.26e6 mm4") == near(8.26e-6));
        CHECK(read<double>("12 %") == near(0.12));
        CHECK(read<double>("0.12") == near(0.12));
    }

    TEST_CASE("one value, many spellings") {
        for (const char* text : {"16 mm", "16mm", " 16  mm ", "\t16 mm", "16. mm", "1.6e1 mm", "1.6 cm", "16000 um", "16000 \u00b5m",
                                 "16000 \u03bcm", "0.016 m", "16e-6 km", "16 mm^1", "16 mm2/mm", "16 N*mm/N"})
            CHECK_MESSAGE(read<Length>(text) == near(0.016), text);
        for (const char* text : {"1 mm2", "1 mm^2", "1 mm*mm", "0.01 cm2", "1e-6 m^2", "1 mm3/mm"})
            CHECK_MESSAGE(read<Area>(text) == near(1e-6), text);
        for (const char* text : {"23e-6 1/K", "23e-6 /K", "23e-6 K^-1", "23 um/m/K"})
            CHECK_MESSAGE(read<Expansion>(text) == near(23e-6), text);
        for (const char* text : {"63 lbf*ft", "63 ft*lbf", "63 lbf.ft"}) CHECK_MESSAGE(read<Moment>(text) == near(85.4165307448782), text);
        for (const char* text : {"20 \u00b0C", "68 \u00b0F", "293.15 K"}) CHECK_MESSAGE(read<Temperature>(text) == near(293.15), text);
        for (const char* text : {"1 year", "365.25 days", "8766 h", "8766 hours", "525960 min", "31557600 s"})
            CHECK_MESSAGE(read<Duration>(text) == near(31557600), text);
    }

    TEST_CASE("a stroke turns the next factor only") {
        CHECK(read<double>("1 N/N") == 1.0);
        CHECK(read<Length>("1 N/N*mm") == near(1e-3));
        CHECK(read<double>("1 N/mm/N*mm") == near(1));
    }

    TEST_CASE("signs and zero") {
        CHECK(read<Length>("-3 mm") == near(-0.003));
        CHECK(read<Length>("0 mm") == 0.0);
        CHECK(read<Length>("-0 mm") == 0.0);
        CHECK(read<Temperature>("-40 degC") == near(read<Temperature>("-40 degF")));
        CHECK(read<Temperature>("0 K") == 0.0);
    }

    TEST_CASE("a typed quantity comes out by its own name") {
        CHECK(in_mm(*read_quantity<Length>("16 mm")) == near(16));
        CHECK(in_degC(*read_quantity<Temperature>("20 degC")) == near(20));
        CHECK(*read_quantity<double>("12 %") == near(0.12));
        CHECK_FALSE(read_quantity<Force>("16 mm").has_value());
    }
}

TEST_SUITE("quantity/text: refusals") {
    TEST_CASE("no unit") {
        CHECK(refused<Length>("16") == "is \"16\", which has no unit; a length is wanted, for example \"16 mm\"");
        CHECK(refused<Moment>("85") == "is \"85\", which has no unit; a moment is wanted, for example \"85 N*m\"");
        CHECK(refused<Temperature>("20") == "is \"20\", which has no unit; a temperature is wanted, for example \"20 degC\"");
    }

    TEST_CASE("every dimension is asked for by its name and an example that it accepts itself") {
        for (const auto& dimension : named_dimensions()) {
            const auto value = read_value("nothing", dimension);
            REQUIRE_FALSE(value.has_value());
            CHECK(value.error().find(std::string(dimension_name(dimension)) + " is wanted, for example \"" +
                                     std::string(dimension_example(dimension))) != std::string::npos);
            CHECK(read_value(dimension_example(dimension), dimension).has_value());
        }
        CHECK(refused<Area>("x") == "is \"x\", which does not begin with a number; an area is wanted, for example \"84.3 mm2\"");
        CHECK(refused<Angle>("x") == "is \"x\", which does not begin with a number; an angle is wanted, for example \"9 deg\"");
    }

    TEST_CASE("an unknown unit, with the nearest known one") {
        CHECK(refused<Length>("16 mmm") ==
              "is \"16 mmm\", which has the unknown unit \"mmm\" (the nearest known unit is \"mm\"); a length is wanted, for example \"16 "
              "mm\"");
        CHECK(refused<Stress>("240 Mpa") ==
              "is \"240 Mpa\", which has the unknown unit \"Mpa\" (the nearest known unit is \"MPa\"); a stress is wanted, for example "
              "\"240 MPa\"");
        CHECK(
            refused<Force>("70 kn") ==
            "is \"70 kn\", which has the unknown unit \"kn\" (the nearest known unit is \"kN\"); a force is wanted, for example \"70 kN\"");
        CHECK(refused<Force>("70 furlongs") ==
              "is \"70 furlongs\", which has the unknown unit \"furlongs\"; a force is wanted, for example \"70 kN\"");
        for (const char* text :
             {"16 mm mm", "16 m^0", "16 m^7", "16 m^1.5", "16 mm^^2", "16 mm2-", "16 mm^2^2", "0x10 mm", "1_000 mm", "16 mm;", "16 (mm)"})
            CHECK_MESSAGE(refused<Length>(text).find("unknown unit") != std::string::npos, text);
    }

    TEST_CASE("a quantity of another dimension") {
        CHECK(refused<Length>("16 kN") == "is \"16 kN\", a force; a length is wanted, for example \"16 mm\"");
        CHECK(refused<Length>("16 m2") == "is \"16 m2\", an area; a length is wanted, for example \"16 mm\"");
        CHECK(refused<Force>("2600 kg") == "is \"2600 kg\", a mass; a force is wanted, for example \"70 kN\"");
        CHECK(refused<Moment>("63 lb*ft") == "is \"63 lb*ft\", a quantity of another kind; a moment is wanted, for example \"85 N*m\"");
        CHECK(refused<double>("12 mm") == "is \"12 mm\", a length; a plain number is wanted, for example \"0.12\"");
        CHECK(refused<double>("1 rad") == "is \"1 rad\", an angle; a plain number is wanted, for example \"0.12\"");
        CHECK(refused<Length>("12 %") == "is \"12 %\", a plain number; a length is wanted, for example \"16 mm\"");
    }

    TEST_CASE("a point on the temperature scale is no difference") {
        CHECK(refused<TemperatureDifference>("-15 degC") ==
              "is \"-15 degC\", a point on the temperature scale; a temperature difference is wanted, for example \"40 K\"");
        CHECK(refused<TemperatureDifference>("5 degF") ==
              "is \"5 degF\", a point on the temperature scale; a temperature difference is wanted, for example \"40 K\"");
        CHECK(refused<Expansion>("23e-6 1/degC") ==
              "is \"23e-6 1/degC\", which uses degC inside a product; a difference is counted in K; a coefficient of expansion is wanted, "
              "for example "
              "\"23e-6 1/K\"");
        CHECK(refused<Temperature>("20 degC*m") != "accepted");
        CHECK(refused<Temperature>("20 degC^2") != "accepted");
        CHECK(refused<Temperature>("20 degC/1") != "accepted");
    }

    TEST_CASE("numbers that are none") {
        CHECK(refused<Length>("nan mm") == "is \"nan mm\", which is not a finite number; a length is wanted, for example \"16 mm\"");
        CHECK(refused<Length>("inf mm") == "is \"inf mm\", which is not a finite number; a length is wanted, for example \"16 mm\"");
        CHECK(refused<Length>("-infinity mm") ==
              "is \"-infinity mm\", which is not a finite number; a length is wanted, for example \"16 mm\"");
        CHECK(refused<double>("nan") == "is \"nan\", which is not a finite number; a plain number is wanted, for example \"0.12\"");
        CHECK(refused<Length>("1e400 mm") ==
              "is \"1e400 mm\", a number too large or too small to use; a length is wanted, for example \"16 mm\"");
        CHECK(refused<Length>("1e-400 mm") ==
              "is \"1e-400 mm\", a number too large or too small to use; a length is wanted, for example \"16 mm\"");
        CHECK(refused<Length>("1e308 km") == "is \"1e308 km\", a number too large to use; a length is wanted, for example \"16 mm\"");
        CHECK(refused<Length>("mm") == "is \"mm\", which does not begin with a number; a length is wanted, for example \"16 mm\"");
        CHECK(refused<Length>("") == "is \"\", which does not begin with a number; a length is wanted, for example \"16 mm\"");
        CHECK(refused<Length>("   ") == "is \"\", which does not begin with a number; a length is wanted, for example \"16 mm\"");
    }

    TEST_CASE("the decimal sign is a point") {
        CHECK(refused<Length>("1,5 mm") == "is \"1,5 mm\"; the decimal sign is a point; a length is wanted, for example \"16 mm\"");
        CHECK(refused<double>("0,12") == "is \"0,12\"; the decimal sign is a point; a plain number is wanted, for example \"0.12\"");
    }

    TEST_CASE("a unit that ends in mid-word") {
        CHECK(refused<Moment>("85 N*") ==
              "is \"85 N*\", which has a unit that ends in mid-word; a moment is wanted, for example \"85 N*m\"");
        for (const char* text : {"85 N*", "85 N/", "85 N.", "85 *N", "85 N**m", "85 N*/m", "85 /", "85 N\u00b7", "85 N* "})
            CHECK_MESSAGE(refused<Moment>(text).find("ends in mid-word") != std::string::npos, text);
    }

    TEST_CASE("control bytes in the value are shown as question marks") {
        CHECK(refused<Length>("a\0b\x01\x7f"s) ==
              "is \"a?b??\", which does not begin with a number; a length is wanted, for example \"16 mm\"");
    }

    TEST_CASE("much junk gives a short message") {
        const std::string junk(5000, 'x');
        CHECK(refused<Length>(junk) ==
              "is \"" + std::string(40, 'x') + "...\", which does not begin with a number; a length is wanted, for example \"16 mm\"");
        CHECK(refused<Length>(std::string(5000, '9') + " mm").find("too large") != std::string::npos);
        CHECK(refused<Length>("0." + std::string(5000, '0') + "1 mm").find("too small") != std::string::npos);
        CHECK(read<Length>("16" + std::string(5000, ' ') + "mm") == near(0.016));
    }

    // Junk behind the number is quoted whole and raw in "unknown unit".
    TEST_CASE("junk in the place of the unit gives a short message") {
        CHECK(refused<Length>("16 " + std::string(5000, 'x')).size() < 300);
    }

    TEST_CASE("control bytes in the unit are kept out of the message") {
        CHECK(is_plain_text(refused<Length>("16 \x1b[31m")));
        CHECK(is_plain_text(refused<Length>("16\0mm"s)));
    }

    // Exponents are added up in signed char: 257 metres wrap round to 1.
    TEST_CASE("a product of 257 metres is no length") {
        std::string unit = "1 ";
        for (int i = 0; i < 42; ++i) unit += "m6*";
        CHECK(refused<Length>(unit + "m5") != "accepted");
    }

    // A blank between N and m is read as one name, whose nearest neighbour is the nanometre.
    TEST_CASE("no nanometre is offered where a moment is wanted") { CHECK(refused<Moment>("85 N m").find("\"nm\"") == std::string::npos); }

    TEST_CASE("nothing is colder than absolute zero") { CHECK(refused<Temperature>("-300 degC") != "accepted"); }

    TEST_CASE("junk of any bytes is refused in a short phrase or read as a finite value") {
        CHECK(rc::check("hostile bytes", [] {
            auto text = *rc::gen::container<std::string>(rc::gen::arbitrary<char>());
            if (*rc::gen::arbitrary<bool>()) {
                const auto part = rc::gen::element<std::string>("m", "mm", "kN", "K", "degC", "%", "1", "1e300", "*", "/", ".", "^", "-",
                                                                "2", " ", "\u00b7", "\xc2");
                text = "16 ";
                for (const auto& each : *rc::gen::container<std::vector<std::string>>(part)) text += each;
            }
            for (const auto& dimension : named_dimensions()) {
                const auto value = read_value(text, dimension);
                if (value)
                    RC_ASSERT(std::isfinite(value->si()));
                else
                    RC_ASSERT(!value.error().empty());
            }
        }));
    }
}

TEST_SUITE("quantity/text: printing") {
    TEST_CASE("digits") {
        CHECK(print_number(0.0) == "0");
        CHECK(print_number(-0.0) == "0");
        CHECK(print_number(1.0) == "1");
        CHECK(print_number(1234.5678) == "1235");
        CHECK(print_number(1234.5678, 6) == "1234.57");
        CHECK(print_number(1234.5678, 1) == "1235");
        CHECK(print_number(0.1, 12) == "0.1");
        CHECK(print_number(1.0 / 3.0) == "0.3333");
        CHECK(print_number(0.99999) == "1");
        CHECK(print_number(9.99951) == "10");
        CHECK(print_number(-2.5) == "-2.5");
        CHECK(print_number(1e-4) == "0.0001");
        CHECK(print_number(0.9999e-4) == "9.999e-5");
        CHECK(print_number(9999999.0) == "9999999");
        CHECK(print_number(1e7) == "1e7");
        CHECK(print_number(-12345678.0) == "-1.235e7");
        CHECK(print_number(1e100) == "1e100");
        CHECK(print_number(1.5e-300) == "1.5e-300");
        CHECK(print_number(std::numeric_limits<double>::max(), 17) == "1.7976931348623157e308");
        CHECK(print_number(std::numeric_limits<double>::denorm_min(), 3) == "4.94e-324");
    }

    TEST_CASE("the customary unit of each dimension") {
        CHECK(printed(0.12) == "0.12");
        CHECK(printed(mm(16)) == "16 mm");
        CHECK(printed(mm2(84.267)) == "84.27 mm2");
        CHECK(printed(mm3(1200)) == "1200 mm3");
        CHECK(printed(mm4(8.26e6)) == "8260000 mm4");
        CHECK(printed(kg(2600)) == "2600 kg");
        CHECK(printed(kN(70)) == "70 kN");
        CHECK(printed(Nm(85)) == "85 N*m");
        CHECK(printed(MPa(240)) == "240 MPa");
        CHECK(printed(N_per_mm(450e3)) == "450 kN/mm");
        CHECK(printed(mm_per_N(3.2e-6)) == "3.2 um/kN");
        CHECK(printed(kg_per_m3(7850)) == "7850 kg/m3");
        CHECK(printed(kelvin(-15)) == "-15 K");
        CHECK(printed(degC(20)) == "20 degC");
        CHECK(printed(degC(-40)) == "-40 degC");
        CHECK(printed(per_K(23e-6)) == "2.3e-5 1/K");
        CHECK(printed(degrees(9)) == "9 deg");
        CHECK(printed(years(20)) == "20 years");
    }

    TEST_CASE("the unit changes with the size, and not with the sign") {
        CHECK(printed(um(99)) == "99 um");
        CHECK(printed(um(100)) == "0.1 mm");
        CHECK(printed(um(-99)) == "-99 um");
        CHECK(printed(newton(999.9)) == "999.9 N");
        CHECK(printed(newton(1000)) == "1 kN");
        CHECK(printed(newton(-999)) == "-999 N");
        CHECK(printed(kN(-70.123)) == "-70.12 kN");
        CHECK(printed(Nm(9999)) == "9999 N*m");
        CHECK(printed(kNm(10)) == "10 kN*m");
        CHECK(printed(GPa(9.99)) == "9990 MPa");
        CHECK(printed(GPa(210)) == "210 GPa");
        CHECK(printed(N_per_mm(999.9)) == "999.9 N/mm");
        CHECK(printed(N_per_mm(1000)) == "1 kN/mm");
        CHECK(printed(seconds(30)) == "30 s");
        CHECK(printed(hours(3)) == "3 h");
        CHECK(printed(hours(24)) == "1 days");
        CHECK(printed(years(0.5)) == "0.5 years");
    }

    TEST_CASE("nothing, tiny and huge") {
        CHECK(printed(mm(0)) == "0 mm");
        CHECK(printed(mm(-0.0)) == "0 mm");
        CHECK(printed(newton(0)) == "0 N");
        CHECK(printed(degC(0)) == "0 degC");
        CHECK(printed(um(1e-9)) == "1e-9 um");
        CHECK(printed(MPa(-0.00001)) == "-1e-5 MPa");
        CHECK(printed(metre(1e9)) == "1e12 mm");
    }

    TEST_CASE("what a formula passes through prints in powers of N and mm") {
        CHECK(printed(squared(kN(2))) == "4000000 N^2");
        CHECK(printed(mm(2) * mm(3) * kN(2)) == "12000 N*mm^2");
        CHECK(printed(squared(kN(1)) / mm(1)) == "1000000 N^2*mm^-1");
        CHECK(printed(kelvin(2) * mm(1)) == "2 mm*K");
        CHECK(printed(1.0 / seconds(2)) == "0.5 s^-1");
    }

    // The largest length the reader accepts overflows on its way to millimetres: "infe0 mm".
    TEST_CASE("an accepted value never prints as infinity") {
        CHECK(print(*read_value("1e303 km", dimension_of<Length>)).find("inf") == std::string::npos);
    }

    TEST_CASE("printed and read again, a value is the same within its digits") {
        CHECK(rc::check("round trip", [] {
            const auto dimension = *rc::gen::elementOf(named_dimensions());
            const int digits = *rc::gen::inRange(1, 16);
            const double exponent = *rc::gen::inRange(-12000, 12001) / 1000.0;
            const double si = (*rc::gen::arbitrary<bool>() ? -1.0 : 1.0) * std::pow(10.0, exponent);
            const auto value = Value::of(dimension.point ? std::abs(si) : si, dimension);
            const auto text = print(value, digits);
            if (dimension.point && value.si() < 0.001) return;  // rounds to below absolute zero, which is refused
            const auto again = read_value(text, dimension);
            if (!again) RC_FAIL(text + ": " + again.error());
            const auto shown = in_customary_unit(value).number, back = in_customary_unit(*again).number;
            const double place = shown == 0.0 ? 0.0 : std::pow(10.0, std::floor(std::log10(std::abs(shown))) + 1 - digits);
            // A temperature point loses the last bits of its distance from absolute zero.
            const double bits = 1e-15 * (std::abs(shown) + (dimension.point ? 273.15 : 0.0));
            RC_ASSERT(std::abs(back - shown) <= 0.5 * place * (1.0 + 1e-9) + 4.0 * bits);
        }));
    }

    TEST_CASE("printing a value read from its own print changes nothing") {
        CHECK(rc::check("second print", [] {
            const auto dimension = *rc::gen::elementOf(named_dimensions());
            const double si = *rc::gen::inRange(-1000000, 1000001) / 1000.0;
            if (dimension.point && si < 1.0) return;  // colder than absolute zero, or rounds to it
            const auto text = print(Value::of(si, dimension), 6);
            const auto again = read_value(text, dimension);
            if (!again) RC_FAIL(text + ": " + again.error());
            RC_ASSERT(print(*again, 6) == text);
        }));
    }
}
