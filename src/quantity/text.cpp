// SPDX-License-Identifier: MIT
#include "quantity/text.hpp"

#include "quantity/characters.hpp"
#include "quantity/nearest.hpp"

#include <fmt/format.h>

#include <array>
#include <charconv>
#include <cmath>
#include <vector>

namespace faywright {

namespace {

struct Unit {
    std::string_view name;
    double factor;  ///< SI base units in one of these
    Dimension dimension;
    double zero = 0.0;  ///< for a temperature scale: its zero in kelvin
};

constexpr Dimension length{.length = 1};
constexpr Dimension area{.length = 2};
constexpr Dimension volume{.length = 3};
constexpr Dimension second_moment{.length = 4};
constexpr Dimension mass{.mass = 1};
constexpr Dimension duration{.time = 1};
constexpr Dimension force{.length = 1, .mass = 1, .time = -2};
constexpr Dimension moment{.length = 2, .mass = 1, .time = -2};
constexpr Dimension stress{.length = -1, .mass = 1, .time = -2};
constexpr Dimension stiffness{.mass = 1, .time = -2};
constexpr Dimension resilience{.mass = -1, .time = 2};
constexpr Dimension density{.length = -3, .mass = 1};
constexpr Dimension difference{.temperature = 1};
constexpr Dimension point{.temperature = 1, .point = true};
constexpr Dimension expansion{.temperature = -1};
constexpr Dimension angle{.angle = 1};
constexpr Dimension speed{.length = 1, .time = -1};
constexpr Dimension acceleration{.length = 1, .time = -2};
constexpr Dimension angular_acceleration{.time = -2};
constexpr Dimension current{.current = 1};
constexpr Dimension potential{.length = 2, .mass = 1, .time = -3, .current = -1};
constexpr Dimension resistance{.length = 2, .mass = 1, .time = -3, .current = -2};
constexpr Dimension conductance{.length = -2, .mass = -1, .time = 3, .current = 2};
constexpr Dimension charge{.time = 1, .current = 1};
constexpr Dimension amount{.amount = 1};
constexpr Dimension current_density{.length = -2, .current = 1};
constexpr Dimension line_current{.length = -1, .current = 1};
constexpr Dimension conductivity{.length = -3, .mass = -1, .time = 3, .current = 2};
constexpr Dimension surface_resistance{.length = 4, .mass = 1, .time = -3, .current = -2};
constexpr Dimension molar_mass{.mass = 1, .amount = -1};
constexpr Dimension molar_charge{.time = 1, .current = 1, .amount = -1};
constexpr Dimension concentration{.length = -3, .amount = 1};
constexpr Dimension diffusivity{.length = 2, .time = -1};
constexpr Dimension areal_mass{.length = -2, .mass = 1};
constexpr Dimension deposition{.length = -2, .mass = 1, .time = -1};

constexpr double inch = 0.0254;
constexpr double pound = 0.45359237;
constexpr double pound_force = 4.4482216152605;

constexpr std::array units{
    Unit{"m", 1.0, length},
    Unit{"mm", 1e-3, length},
    Unit{"cm", 1e-2, length},
    Unit{"um", 1e-6, length},
    Unit{"\u00b5m", 1e-6, length},
    Unit{"\u03bcm", 1e-6, length},
    Unit{"nm", 1e-9, length},
    Unit{"km", 1e3, length},
    Unit{"in", inch, length},
    Unit{"inch", inch, length},
    Unit{"ft", 12.0 * inch, length},
    Unit{"N", 1.0, force},
    Unit{"kN", 1e3, force},
    Unit{"MN", 1e6, force},
    Unit{"lbf", pound_force, force},
    Unit{"kip", 1e3 * pound_force, force},
    Unit{"kgf", 9.80665, force},
    Unit{"Nm", 1.0, moment},
    Unit{"kNm", 1e3, moment},
    Unit{"Nmm", 1e-3, moment},
    Unit{"Pa", 1.0, stress},
    Unit{"kPa", 1e3, stress},
    Unit{"MPa", 1e6, stress},
    Unit{"GPa", 1e9, stress},
    Unit{"bar", 1e5, stress},
    Unit{"psi", pound_force / (inch * inch), stress},
    Unit{"ksi", 1e3 * pound_force / (inch * inch), stress},
    Unit{"kg", 1.0, mass},
    Unit{"g", 1e-3, mass},
    Unit{"t", 1e3, mass},
    Unit{"lb", pound, mass},
    Unit{"s", 1.0, duration},
    Unit{"min", 60.0, duration},
    Unit{"h", 3600.0, duration},
    Unit{"hours", 3600.0, duration},
    Unit{"day", 86400.0, duration},
    Unit{"days", 86400.0, duration},
    Unit{"week", 604800.0, duration},
    Unit{"weeks", 604800.0, duration},
    Unit{"year", 31557600.0, duration},
    Unit{"years", 31557600.0, duration},
    Unit{"K", 1.0, difference},
    Unit{"degC", 1.0, point, 273.15},
    Unit{"\u00b0C", 1.0, point, 273.15},
    Unit{"degF", 5.0 / 9.0, point, 459.67 * 5.0 / 9.0},
    Unit{"\u00b0F", 5.0 / 9.0, point, 459.67 * 5.0 / 9.0},
    Unit{"rad", 1.0, angle},
    Unit{"mrad", 1e-3, angle},
    Unit{"deg", std::numbers::pi / 180.0, angle},
    Unit{"\u00b0", std::numbers::pi / 180.0, angle},
    Unit{"mg", 1e-6, mass},
    Unit{"L", 1e-3, volume},
    Unit{"d", 86400.0, duration},
    Unit{"a", 31557600.0, duration},
    Unit{"A", 1.0, current},
    Unit{"mA", 1e-3, current},
    Unit{"uA", 1e-6, current},
    Unit{"V", 1.0, potential},
    Unit{"mV", 1e-3, potential},
    Unit{"ohm", 1.0, resistance},
    Unit{"kohm", 1e3, resistance},
    Unit{"Mohm", 1e6, resistance},
    Unit{"S", 1.0, conductance},
    Unit{"mS", 1e-3, conductance},
    Unit{"C", 1.0, charge},
    Unit{"mol", 1.0, amount},
    Unit{"%", 0.01, Dimension{}},
    Unit{"1", 1.0, Dimension{}},
};

struct Known {
    Dimension dimension;
    std::string_view name, example;
};

constexpr std::array known_dimensions{
    Known{Dimension{}, "plain number", "0.12"},
    Known{length, "length", "16 mm"},
    Known{area, "area", "84.3 mm2"},
    Known{volume, "volume or section modulus", "1200 mm3"},
    Known{second_moment, "second moment of area", "8.26e6 mm4"},
    Known{mass, "mass", "2600 kg"},
    Known{duration, "time", "20 years"},
    Known{force, "force", "70 kN"},
    Known{moment, "moment", "85 N*m"},
    Known{stress, "stress", "240 MPa"},
    Known{stiffness, "stiffness", "450 kN/mm"},
    Known{resilience, "resilience", "3.2 um/kN"},
    Known{density, "density", "2700 kg/m3"},
    Known{difference, "temperature difference", "40 K"},
    Known{point, "temperature", "20 degC"},
    Known{expansion, "coefficient of expansion", "23e-6 1/K"},
    Known{angle, "angle", "9 deg"},
    Known{speed, "speed", "0.8 m/s"},
    Known{acceleration, "acceleration", "2.4 m/s2"},
    Known{angular_acceleration, "angular acceleration", "2 1/s2"},
    Known{current, "current", "30 uA"},
    Known{potential, "potential", "-0.76 V"},
    Known{resistance, "resistance", "10 kohm"},
    Known{charge, "charge", "96485 C"},
    Known{amount, "amount of substance", "0.6 mol"},
    Known{current_density, "current density", "30 uA/cm2"},
    Known{line_current, "current per length", "255 uA/cm"},
    Known{conductivity, "conductivity", "0.05 S/cm"},
    Known{surface_resistance, "polarisation resistance", "500 ohm*cm2"},
    Known{molar_mass, "molar mass", "65.38 g/mol"},
    Known{molar_charge, "charge per amount of substance", "96485 C/mol"},
    Known{concentration, "concentration", "0.5 mol/L"},
    Known{diffusivity, "diffusion coefficient", "2e-5 cm2/s"},
    Known{areal_mass, "mass per area", "610 g/m2"},
    Known{deposition, "deposition", "60 mg/m2/d"},
};

std::string_view trimmed(std::string_view text) {
    const auto from = text.find_first_not_of(" \t");
    if (from == std::string_view::npos) return {};
    return text.substr(from, text.find_last_not_of(" \t") - from + 1);
}

Dimension multiplied(Dimension a, const Dimension& b, int times) {
    const auto add = [times](signed char& to, signed char n) { to = static_cast<signed char>(to + n * times); };
    add(a.length, b.length);
    add(a.mass, b.mass);
    add(a.time, b.time);
    add(a.temperature, b.temperature);
    add(a.angle, b.angle);
    add(a.current, b.current);
    add(a.amount, b.amount);
    return a;
}

struct UnitExpression {
    double factor = 1.0;
    Dimension dimension;
    double zero = 0.0;
};

/// The unit nearest in spelling; where it stands alone, only units of the wanted dimension are meant.
std::string nearest_unit(std::string_view name, const Dimension& wanted, bool alone) {
    std::vector<std::string> names;
    for (const auto& unit : units)
        if (!alone || unit.dimension == wanted) names.emplace_back(unit.name);
    return nearest(name, names);
}

/// Factors joined by '*', '.', '·' or '/', each with an optional whole exponent: "lbf*ft", "kg/m3", "N/mm^2".
constexpr std::size_t longest_unit = 24;

tl::expected<UnitExpression, std::string> read_unit(std::string_view text, const Dimension& wanted) {
    if (text.size() > longest_unit) return tl::make_unexpected(std::string("has a unit too long to be one"));
    UnitExpression result;
    int sign = 1;
    std::size_t factors = 0;
    while (!text.empty()) {
        // `/` turns the next factor only, as people write it: J/kg/K.
        auto end = text.find_first_of("*./");
        const auto middle_dot = text.find("\u00b7");
        std::size_t width = 1;
        if (middle_dot < end) {
            end = middle_dot;
            width = 2;
        }
        auto factor = trimmed(text.substr(0, end));
        if (factor.empty() && !(factors == 0 && end != std::string_view::npos && text[end] == '/'))
            return tl::make_unexpected(std::string("has a unit that ends in mid-word"));
        int exponent = 1;
        if (!factor.empty()) {
            auto name = factor;
            const auto digits = factor.find_last_not_of("0123456789-^");
            if (digits != std::string_view::npos && digits + 1 < factor.size()) {
                auto power = factor.substr(digits + 1);
                name = factor.substr(0, digits + 1);
                if (power.front() == '^') power.remove_prefix(1);
                const auto [rest, failure] = std::from_chars(power.data(), power.data() + power.size(), exponent);
                if (failure != std::errc{} || rest != power.data() + power.size() || exponent == 0 || std::abs(exponent) > 6)
                    return tl::make_unexpected(fmt::format("has the unknown unit \"{}\"", shown(factor, 40)));
            }
            const auto unit = std::find_if(units.begin(), units.end(), [&](const Unit& u) { return u.name == name; });
            if (unit == units.end()) {
                const auto close = nearest_unit(name, wanted, factors == 0 && end == std::string_view::npos);
                return tl::make_unexpected(fmt::format("has the unknown unit \"{}\"{}", shown(name, 40),
                                                       close.empty() ? "" : fmt::format(" (the nearest known unit is \"{}\")", close)));
            }
            const bool alone = factors == 0 && end == std::string_view::npos && exponent == 1;
            if (unit->dimension.point && !alone)
                return tl::make_unexpected(fmt::format("uses {} inside a product; a difference is counted in K", name));
            result.factor *= std::pow(unit->factor, sign * exponent);
            result.dimension = multiplied(result.dimension, unit->dimension, sign * exponent);
            result.dimension.point = unit->dimension.point;
            result.zero = unit->zero;
        }
        ++factors;
        if (end == std::string_view::npos) break;
        sign = text[end] == '/' ? -1 : 1;
        text.remove_prefix(end + width);
        if (trimmed(text).empty()) return tl::make_unexpected(std::string("has a unit that ends in mid-word"));
    }
    return result;
}

}  // namespace

std::string_view dimension_name(const Dimension& dimension) {
    for (const auto& known : known_dimensions)
        if (known.dimension == dimension) return known.name;
    return "quantity of another kind";
}

std::string_view dimension_example(const Dimension& dimension) {
    for (const auto& known : known_dimensions)
        if (known.dimension == dimension) return known.example;
    return "";
}

std::string wanted_phrase(const Dimension& wanted) {
    const auto name = dimension_name(wanted);
    const bool vowel = name.find_first_of("aeiou") == 0;
    return fmt::format("a{} {} is wanted, for example \"{}\"", vowel ? "n" : "", name, dimension_example(wanted));
}

tl::expected<Value, std::string> read_value(std::string_view text, const Dimension& wanted) {
    const auto whole = trimmed(text);
    const auto fail = [&](const std::string& found) { return tl::make_unexpected(fmt::format("{}; {}", found, wanted_phrase(wanted))); };
    double number = 0.0;
    const auto [rest, failure] = std::from_chars(whole.data(), whole.data() + whole.size(), number);
    if (failure == std::errc::result_out_of_range)
        return fail(fmt::format("is \"{}\", a number too large or too small to use", shown(whole, 40)));
    if (failure != std::errc{}) return fail(fmt::format("is \"{}\", which does not begin with a number", shown(whole, 40)));
    if (!std::isfinite(number)) return fail(fmt::format("is \"{}\", which is not a finite number", shown(whole, 40)));
    const auto unit_text = trimmed(whole.substr(static_cast<std::size_t>(rest - whole.data())));
    if (!unit_text.empty() && unit_text.front() == ',')
        return fail(fmt::format("is \"{}\"; the decimal sign is a point", shown(whole, 40)));
    if (unit_text.empty()) {
        if (wanted.is_ratio()) return Value(number);
        return fail(fmt::format("is \"{}\", which has no unit", shown(whole, 40)));
    }
    const auto unit = read_unit(unit_text, wanted);
    if (!unit) return fail(fmt::format("is \"{}\", which {}", shown(whole, 40), unit.error()));
    auto dimension = unit->dimension;
    double zero = unit->zero;
    if (wanted == point && dimension == difference && unit_text == "K") dimension = point;  // a reading in kelvin is a point
    if (dimension != wanted) {
        if (dimension == point && wanted == difference)
            return fail(fmt::format("is \"{}\", a point on the temperature scale", shown(whole, 40)));
        const auto name = dimension_name(dimension);
        const bool vowel = name.find_first_of("aeiou") == 0;
        return fail(fmt::format("is \"{}\", a{} {}", shown(whole, 40), vowel ? "n" : "", name));
    }
    const double si = number * unit->factor + zero;
    if (dimension == point && si < 0.0) return fail(fmt::format("is \"{}\", colder than absolute zero", shown(whole, 40)));
    // The printed unit may be smaller than the SI one: what would print as infinity is no use either.
    constexpr double largest = 1e290;
    if (!(std::abs(si) < largest)) return fail(fmt::format("is \"{}\", a number too large to use", shown(whole, 40)));
    return Value::of(si, wanted);
}

std::string print_number(double number, int significant) {
    if (!std::isfinite(number)) return number > 0 ? "beyond all numbers" : "no number";
    if (number == 0.0) return "0";
    double size = std::abs(number);
    // Beside a bound of the plain form it is the rounded number that counts, so that printing what was printed changes nothing.
    if (size > 0.9e-4 && size < 1e-4) size = std::strtod(fmt::format("{:.{}e}", size, significant - 1).c_str(), nullptr);
    if (size < 1e7 && size >= 1e7 - 0.5) size = 1e7;
    if (size < 1e-4 || size >= 1e7) {
        auto text = fmt::format("{:.{}e}", number, significant - 1);
        auto exponent_at = text.find('e');
        auto mantissa = text.substr(0, exponent_at);
        if (mantissa.find('.') != std::string::npos) {
            mantissa.erase(mantissa.find_last_not_of('0') + 1);
            if (mantissa.back() == '.') mantissa.pop_back();
        }
        return fmt::format("{}e{}", mantissa, std::atoi(text.c_str() + exponent_at + 1));
    }
    const int decimals = std::max(0, significant - 1 - static_cast<int>(std::floor(std::log10(size))));
    auto text = fmt::format("{:.{}f}", number, decimals);
    if (text.find('.') != std::string::npos) {
        text.erase(text.find_last_not_of('0') + 1);
        if (text.back() == '.') text.pop_back();
    }
    return text == "-0" ? "0" : text;
}

Printed in_customary_unit(const Value& value) {
    const auto& d = value.dimension();
    const double si = value.si();
    const double size = std::abs(si);
    if (d.is_ratio()) return {si, ""};
    if (d == length) return size != 0.0 && size < 0.9999e-4 ? Printed{si * 1e6, "um"} : Printed{si * 1e3, "mm"};
    if (d == area) return {si * 1e6, "mm2"};
    if (d == volume) return {si * 1e9, "mm3"};
    if (d == second_moment) return {si * 1e12, "mm4"};
    if (d == mass) return {si, "kg"};
    if (d == force) return size >= 1e3 ? Printed{si * 1e-3, "kN"} : Printed{si, "N"};
    if (d == moment) return size >= 1e4 ? Printed{si * 1e-3, "kN*m"} : Printed{si, "N*m"};
    if (d == stress) return size >= 1e10 ? Printed{si * 1e-9, "GPa"} : Printed{si * 1e-6, "MPa"};
    if (d == stiffness) return size >= 1e6 ? Printed{si * 1e-6, "kN/mm"} : Printed{si * 1e-3, "N/mm"};
    if (d == resilience) return {si * 1e9, "um/kN"};
    if (d == density) return {si, "kg/m3"};
    if (d == difference) return {si, "K"};
    if (d == point) return {si - 273.15, "degC"};
    if (d == expansion) return {si, "1/K"};
    if (d == angle) return {si * 180.0 / std::numbers::pi, "deg"};
    // No vehicle asked about is this slow, and no metal is eaten this fast.
    if (d == speed) return size < 1e-9 ? Printed{si * 31557600.0 * 1e6, "um/a"} : Printed{si, "m/s"};
    if (d == acceleration) return {si, "m/s2"};
    if (d == angular_acceleration) return {si, "1/s2"};
    if (d == current) return size < 0.1 ? Printed{si * 1e6, "uA"} : Printed{si, "A"};
    if (d == potential) return {si, "V"};
    if (d == resistance) return size >= 1e3 ? Printed{si * 1e-3, "kohm"} : Printed{si, "ohm"};
    if (d == charge) return {si, "C"};
    if (d == amount) return {si, "mol"};
    if (d == current_density) return {si * 1e2, "uA/cm2"};
    if (d == line_current) return {si * 1e4, "uA/cm"};
    if (d == conductivity) return {si * 1e-2, "S/cm"};
    if (d == surface_resistance) return {si * 1e4, "ohm*cm2"};
    if (d == molar_mass) return {si * 1e3, "g/mol"};
    if (d == molar_charge) return {si, "C/mol"};
    if (d == concentration) return {si * 1e-3, "mol/L"};
    if (d == diffusivity) return {si * 1e4, "cm2/s"};
    if (d == areal_mass) return {si * 1e3, "g/m2"};
    if (d == deposition) return {si * 86400.0 * 1e6, "mg/m2/d"};
    if (d == duration) {
        if (size >= 0.5 * 31557600.0) return {si / 31557600.0, "years"};
        if (size >= 86400.0) return {si / 86400.0, "days"};
        if (size >= 3600.0) return {si / 3600.0, "h"};
        return {si, "s"};
    }
    // Anything else a formula passes through: powers of N and mm where time allows, of SI base units otherwise.
    std::string unit;
    const auto part = [&unit](std::string_view name, int exponent) {
        if (exponent == 0) return;
        if (!unit.empty()) unit += '*';
        unit += name;
        if (exponent != 1) unit += fmt::format("^{}", exponent);
    };
    double number = si;
    if (d.time == -2 * d.mass && d.current == 0) {
        const int lengths = d.length - d.mass;
        part("N", d.mass);
        part("mm", lengths);
        number *= std::pow(1e3, lengths);
    } else {
        part("kg", d.mass);
        part("m", d.length);
        part("s", d.time);
    }
    part("K", d.temperature);
    part("rad", d.angle);
    part("A", d.current);
    part("mol", d.amount);
    return {number, unit};
}

Printed in_unit_of(const Value& value, const Value& like) {
    const auto unit = in_customary_unit(like);
    if (value.dimension() != like.dimension() || like.si() == 0.0 || like.dimension().point) return in_customary_unit(value);
    return {value.si() * (unit.number / like.si()), unit.unit};
}

std::string print(const Value& value, int significant) {
    const auto printed = in_customary_unit(value);
    const auto number = print_number(printed.number, significant);
    return printed.unit.empty() ? number : number + ' ' + printed.unit;
}

}  // namespace faywright
