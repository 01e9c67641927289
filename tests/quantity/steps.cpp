// SPDX-License-Identifier: MIT
#include "quantity/steps.hpp"
#include "input/nodes.hpp"

#include "assess/assessment.hpp"
#include "assess/calculator.hpp"
#include "quantity/formula_evaluator.hpp"
#include "quantity/text.hpp"

#include <doctest/doctest.h>
#include <fmt/format.h>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <memory>
#include <random>
#include <regex>
#include <set>
#include <string>
#include <vector>

using namespace faywright;

namespace {

/// Plausible inputs of each calculator: the middle of the cloud in which the samples lie.
const std::map<std::string_view, const char*>& plausible() {
    static const std::map<std::string_view, const char*> all{
        {"thread-geometry", R"(nominal-diameter = "12 mm"
            pitch = "1.75 mm")"},
        {"tightening-torque", R"(preload = "40 kN"
            nominal-diameter = "12 mm"
            pitch = "1.75 mm"
            pitch-diameter = "10.863 mm"
            thread-friction = 0.12
            head-friction = 0.14
            bearing-diameter = "18 mm"
            bearing-hole = "13.5 mm")"},
        {"nut-factor-torque", R"(preload = "40 kN"
            nominal-diameter = "12 mm"
            nut-factor = 0.2)"},
        {"preload-from-torque", R"(torque = "85 N*m"
            tool-scatter = 0.1
            thread-friction-low = 0.1
            thread-friction-high = 0.16
            head-friction-low = 0.1
            head-friction-high = 0.16
            pitch = "1.75 mm"
            pitch-diameter = "10.863 mm"
            bearing-diameter = "18 mm"
            bearing-hole = "13.5 mm"
            prevailing-torque = "2 N*m")"},
        {"assembly-stress", R"(preload = "40 kN"
            stress-area = "84.3 mm2"
            pitch-diameter = "10.863 mm"
            stress-diameter = "9 mm"
            pitch = "1.75 mm"
            thread-friction = 0.12
            proof-strength = "640 MPa"
            utilisation = 0.9)"},
        {"bolt-stiffness", R"(nominal-diameter = "12 mm"
            root-area = "60 mm2"
            stress-area = "84.3 mm2"
            shank-length = "50 mm"
            thread-length = "20 mm"
            elastic-modulus = "205 GPa"
            nut-modulus = "190 GPa")"},
        {"member-stiffness", R"(layers = [
                {thickness = "6 mm", elastic-modulus = "210 GPa", outside-diameter = "60 mm"},
                {thickness = "3 mm", elastic-modulus = "70 GPa", outside-diameter = "60 mm"},
                {thickness = "3 mm", elastic-modulus = "70 GPa", outside-diameter = "60 mm"}]
            head-bearing-diameter = "20 mm"
            nut-bearing-diameter = "20 mm"
            hole-diameter = "10 mm"
            tube-outside-diameter = "26 mm"
            tube-inside-diameter = "14 mm"
            tube-length = "54 mm"
            tube-modulus = "210 GPa"
            layers-above-tube = 2)"},
        {"load-factor", R"(bolt-resilience = "3.2 um/kN"
            part-resilience = "1.1 um/kN"
            introduction-factor = 0.5
            service-force = "6 kN")"},
        {"embedding-loss", R"(thread-amount = "3 um"
            face-amount = "4 um"
            interface-amount = "2 um"
            thread-count = 1
            face-count = 2
            interface-count = 4
            bolt-resilience = "3.2 um/kN"
            part-resilience = "1.1 um/kN")"},
        {"faraday-rate", R"(current-density = "30 uA/cm2"
            metal = "aluminium"
            molar-mass = "26.98 g/mol"
            valence = 3
            density = "2700 kg/m3"
            current-share = 0.8)"},
        {"mixed-potential", R"(oxygen-limit = "30 uA/cm2"
            members = [
                {metal = "aluminium", area = "1000 mm2"},
                {metal = "stainless", area = "100 mm2", dissolves-as = "nickel"},
                {area = "40 mm2", dissolves-as = "iron", polarisation = {behaviour = "active", anodic-reference = "20 uA/cm2", anodic-potential = "-0.65 V", anodic-slope = "0.06 V", cathodic-reference = "20 uA/cm2", cathodic-potential = "-0.5 V", limit-share = 0.5}}])"},
        {"throwing-length", R"(conductivity = "0.05 S/cm"
            film = "100 um"
            drive = "0.4 V"
            anode-resistance = "500 ohm*cm2"
            cathode-resistance = "10000 ohm*cm2"
            cathode-limit = "160 uA/cm2"
            anode-width = "10 mm"
            cathode-width = "12 mm"
            spacer = "1 mm")"},
        {"thermal-change", R"(grip = "70 mm"
            bolt-expansion = "11.5e-6 1/K"
            part-expansion = "23e-6 1/K"
            bolt-change = "-30 K"
            part-change = "-40 K"
            bolt-resilience = "3.2 um/kN"
            part-resilience = "1.1 um/kN")"},
        {"clamp-life", R"(assembled-least = "30 kN"
            assembled-greatest = "50 kN"
            embedding-loss = "3 kN"
            coating-creep = 0.05
            layer-creep = 0.1
            later-share = 0.3
            cold-change = "-2 kN"
            hot-change = "3 kN"
            load-relief = "2 kN")"},
        {"thread-stripping", R"(nominal-diameter = "12 mm"
            pitch = "1.75 mm"
            engagement = "8 mm"
            bolt-major-least = "11.7 mm"
            bolt-pitch-least = "10.68 mm"
            nut-minor-greatest = "10.44 mm"
            nut-pitch-greatest = "11.06 mm"
            width-across-flats = "18 mm"
            bolt-strength = "800 MPa"
            nut-strength = "800 MPa"
            bolt-shear-ratio = 0.65
            nut-shear-ratio = 0.65)"},
        {"bolt-fatigue", R"(force-amplitude = "2 kN"
            stress-area = "84.3 mm2"
            nominal-diameter = "12 mm"
            mean-force = "35 kN"
            proof-force = "54 kN"
            coating-factor = 0.8
            cycles = 3e6)"},
        {"surface-pressure", R"(force = "45 kN"
            bearing-diameter = "18 mm"
            bearing-hole = "12 mm"
            permissible-pressure = "300 MPa"
            washer-thickness = "2.5 mm"
            washer-diameter = "24 mm")"},
        {"bolt-group-in-plane", R"(positions = [["-60 mm", "-25 mm"], ["60 mm", "-25 mm"], ["-60 mm", "25 mm"], ["55 mm", "30 mm"]]
            force-x = "12 kN"
            force-y = "-7 kN"
            moment = "900 N*m"
            reference-x = "80 mm"
            reference-y = "-15 mm")"},
        {"bolt-group-out-of-plane", R"(positions = [["-60 mm", "-25 mm"], ["60 mm", "-25 mm"], ["-60 mm", "25 mm"], ["55 mm", "30 mm"]]
            force-z = "12 kN"
            moment-x = "700 N*m"
            moment-y = "900 N*m"
            reference-x = "8 mm"
            reference-y = "-15 mm"
            heel-x = "90 mm"
            heel-y = "50 mm")"},
        {"bolt-group-ultimate", R"(positions = [["-60 mm", "-25 mm"], ["60 mm", "-25 mm"], ["-60 mm", "25 mm"], ["55 mm", "30 mm"]]
            force-x = "12 kN"
            force-y = "-7 kN"
            moment = "900 N*m"
            reference-x = "80 mm"
            reference-y = "-15 mm"
            bolt-ultimate = "60 kN"
            greatest-deformation = "8.636 mm"
            deformation-scale = "2.54 mm"
            exponent = 0.55)"},
        {"bolt-shear", R"(bolt-diameter = "12 mm"
            area = "84.3 mm2"
            bolt-ultimate-strength = "800 MPa"
            shear-factor = 0.6
            planes = 2
            packing = "6 mm"
            joint-length = "300 mm"
            gamma-M2 = 1.25)"},
        {"bolt-tension", R"(stress-area = "84.3 mm2"
            bolt-ultimate-strength = "800 MPa"
            head-factor = 0.9
            gamma-M2 = 1.25)"},
        {"bolt-interaction", R"(shear = "12 kN"
            shear-resistance = "32 kN"
            tension = "9 kN"
            tension-resistance = "48 kN")"},
        {"bearing", R"(bolt-diameter = "12 mm"
            hole-diameter = "16 mm"
            thickness = "3 mm"
            ultimate-strength = "290 MPa"
            bolt-ultimate-strength = "800 MPa"
            end-distance = "30 mm"
            edge-distance = "25 mm"
            pitch = "50 mm"
            gauge = "45 mm"
            gamma-M2 = 1.25)"},
        {"tear-out", R"(bolt-diameter = "12 mm"
            hole-diameter = "16 mm"
            thickness = "3 mm"
            ultimate-strength = "290 MPa"
            end-distance = "30 mm"
            gamma-M2 = 1.25)"},
        {"edge-distance", R"(bolt-diameter = "12 mm"
            hole-diameter = "16 mm"
            thickness = "3 mm"
            end-distance = "30 mm"
            edge-distance = "25 mm"
            pitch = "50 mm"
            gauge = "45 mm")"},
        {"net-section", R"(gross-area = "1200 mm2"
            net-area = "700 mm2"
            yield-strength = "200 MPa"
            ultimate-strength = "310 MPa"
            gamma-M0 = 1.05
            gamma-M1 = 1.1
            gamma-M2 = 1.25)"},
        {"block-tearing", R"(net-tension-area = "150 mm2"
            net-shear-area = "220 mm2"
            gross-shear-area = "420 mm2"
            yield-strength = "200 MPa"
            ultimate-strength = "310 MPa"
            gamma-M0 = 1.05
            gamma-M1 = 1.1
            gamma-M2 = 1.25)"},
        {"pull-through", R"(across-flats = "18 mm"
            across-corners = "24 mm"
            washer-diameter = "30 mm"
            thickness = "3 mm"
            ultimate-strength = "290 MPa"
            gamma-M2 = 1.25)"},
        {"slip", R"(clamp = "35 kN"
            friction = 0.2
            planes = 2
            tension = "8 kN"
            tension-share = 0.8
            hole-factor = 0.9
            gamma-M3 = 1.25
            proof-strength = "250 MPa")"},
        {"nose-load", R"(mass = "2600 kg"
            centre = "3240 mm"
            axle = "3600 mm"
            centre-height = "1050 mm"
            coupling-height = "430 mm"
            braking = "4.9 m/s2"
            thrust = "2.5 kN")"},
        {"coupling-values", R"(towing-vehicle = "3 t"
            trailer = "2.6 t"
            on-axles = "2.34 t"
            body-length = "4.2 m"
            drawbar-length = "3.6 m"
            reference-acceleration = "2.4 m/s2")"},
        {"speed-scaling", R"(rated = "190 kN"
            speed = "40 km/h")"},
        {"lap-couple", R"(up = "12.75 kN"
            rearward = "3 kN"
            to-front = "1400 mm"
            to-rear = "2200 mm"
            above = "120 mm")"},
        {"prying", R"(effective-length = "80 mm"
            thickness = "8 mm"
            yield-strength = "275 MPa"
            bolt-to-web = "30 mm"
            bolt-to-edge = "28 mm"
            bolt-tension-resistance = "48 kN"
            bolts = 2
            washer-diameter = "24 mm"
            gamma-M0 = 1.05)"},
        {"member-fatigue", R"(stress-range = "30 MPa"
            category = "56 MPa"
            slope = 4
            second-slope = 6
            cycles = 3e6
            gamma-Mf = 1.15)"},
        {"tube-wall", R"(force = "60 kN"
            outside-diameter = "26 mm"
            wall = "4 mm"
            wall-tolerance = 0.1
            length = "54 mm"
            elastic-modulus = "210 GPa"
            proof-strength = "235 MPa"
            poisson-ratio = 0.3
            squareness = "0.05 mm"
            contact-outside = "24 mm"
            contact-inside = "14 mm"
            permissible-pressure = "250 MPa"
            gamma-M0 = 1.05)"},
        {"tube-length", R"(inside-height = "60 mm"
            height-tolerance = "0.3 mm"
            tube-length = "60 mm"
            length-tolerance = "0.1 mm"
            wall-stiffness = "20 kN/mm"
            first-yield-force = "6 kN"
            preload-least = "40 kN"
            closing-share = 0.1)"},
        {"hollow-section", R"(width = "80 mm"
            height = "100 mm"
            wall = "5 mm"
            web = "4 mm"
            hole-diameter = "13 mm"
            holes = 2
            hole-offset = "15 mm"
            hole-shift = "2 mm"
            axial = "9 kN"
            bending-y = "800 N*m"
            bending-z = "500 N*m")"},
        {"wall-bending", R"(clear-width = "54 mm"
            wall-thickness = "3 mm"
            web-thickness = "3 mm"
            inside-height = "54 mm"
            hole-diameter = "13 mm"
            washer-diameter = "30 mm"
            head-diameter = "18 mm"
            washer-thickness = "3 mm"
            washer-modulus = "210 GPa"
            elastic-modulus = "70 GPa"
            poisson-ratio = 0.33
            proof-strength = "250 MPa"
            force = "4 kN")"},
        {"couple", R"(own-rate = "2 um/a"
            own-scatter = 0.5
            multiplier = 4
            multiplier-band = 2.5
            pair-fit = 0.4
            cathode-strength = 0.3
            area-ratio = 2
            kinetic-bound = "7 um/a")"},
        {"isolation-effect", R"(own-rate = "2 um/a"
            couple-rate = "7 um/a"
            path-new = 0.01
            path-aged = 0.3
            electrolyte-new = 0.1
            electrolyte-middle = 0.3
            electrolyte-neglected = 0.8
            crevice = 3
            seal-life = "9 years"
            promised = "20 years")"},
        {"chloride-from-distance", R"(distance = "1 km")"},
        {"first-year-loss", R"(temperature = "18 degC"
            humidity = 0.75
            sulfur-dioxide = "4 mg/m2/d"
            chloride = "60 mg/m2/d")"},
        {"atmosphere-category", R"(first-year-rate = "3 um/a")"},
        {"long-term-loss", R"(first-year-rate = "2.1 um/a"
            time = "19 years")"},
        {"coating-life", R"(thickness = "50 um"
            rate-low = "2.1 um/a"
            rate-high = "4.2 um/a")"},
    };
    return all;
}

/// Inputs with formulas of their own that no cloud around the middle reaches.
const std::multimap<std::string_view, const char*>& corners() {
    static const std::multimap<std::string_view, const char*> all{
        {"bolt-group-in-plane", R"(positions = [["10 mm", "20 mm"]]
            force-x = "12 kN"
            force-y = "-7 kN"
            moment = "0 N*m"
            reference-x = "10 mm"
            reference-y = "20 mm")"},
        {"bolt-group-ultimate", R"(positions = [["-60 mm", "-25 mm"], ["60 mm", "-25 mm"], ["-60 mm", "25 mm"], ["55 mm", "30 mm"]]
            force-x = "0 kN"
            force-y = "0 kN"
            moment = "900 N*m"
            bolt-ultimate = "60 kN")"},
        {"atmosphere-category", R"(first-year-mass = "20 g/m2")"},
        {"long-term-loss", R"(first-year-rate = "2.1 um/a"
            time = "0.5 years")"},
        {"coating-life", R"(thickness = "5 um"
            rate-high = "25 um/a")"},
    };
    return all;
}

/// Formulas that stand behind a refusal, so that nobody can be shown them.
const std::set<std::string>& unreachable() {
    static const std::set<std::string> all{"V_nv=0.75*min(0.6*f_u*A_nv,0.6*f_y*A_nv)"};
    return all;
}

Node parsed(const char* toml) {
    Diagnostics diagnostics;
    const auto node = parse_toml(toml, "inputs", diagnostics);
    REQUIRE_MESSAGE(node.has_value(), diagnostics.text());
    return *node;
}

class Samples {
public:
    Samples(const Calculator& calculator, const Node& middle, unsigned seed)
        : fields_(calculator.fields()), middle_(middle), random_(seed) {}

    /// Every number moved away from the middle by a factor, words and switches by lot. What may be absent is all there, all
    /// left out, or left out by lot: a tube, for one, is given whole or not at all.
    Node near() {
        const double lot = share();
        const auto left_out = [&](const FieldHelp& field) {
            if (field.fallback.empty() || lot < 0.5) return false;
            return lot < 0.65 ? field.fallback == "may be left out" : share() < 0.3;
        };
        Node node;
        for (const auto& field : fields_) {
            const auto* value = middle_.find(field.key);
            if (field.kind == "word")
                node.entries.push_back({field.key, {}, node_tests::words(word(field))});
            else if (field.kind == "true or false")
                node.entries.push_back({field.key, {}, node_tests::flag(share() < 0.5)});
            else if (value != nullptr && !left_out(field))
                node.entries.push_back({field.key, {}, moved(*value, field)});
        }
        return node;
    }

    /// Every number anywhere in the range that help states.
    Node anywhere() {
        auto node = near();
        for (auto& entry : node.entries)
            for (const auto& field : fields_) {
                const auto to = field.accepted.find(" to ");
                if (field.key != entry.key || to == std::string::npos || field.kind == "word" || entry.value.kind == Node::Kind::array)
                    continue;
                const auto least = split(field.accepted.substr(0, to)), most = split(field.accepted.substr(to + 4));
                entry.value = within(field, least, most);
            }
        return node;
    }

private:
    using Amount = std::pair<double, std::string>;

    static Amount split(const std::string& shown) {
        char* end = nullptr;
        const double number = std::strtod(shown.c_str(), &end);
        return {number, std::string(end)};
    }
    /// SI's own spelling of every dimension that a bound may have.
    static const std::vector<std::pair<Dimension, const char*>>& spellings() {
        static const std::vector<std::pair<Dimension, const char*>> all{{dimension_of<Mass>, "kg"},
                                                                        {dimension_of<Speed>, "m/s"},
                                                                        {dimension_of<Acceleration>, "m/s2"},
                                                                        {dimension_of<Length>, "m"},
                                                                        {dimension_of<Area>, "m2"},
                                                                        {dimension_of<Force>, "N"},
                                                                        {dimension_of<Moment>, "Nm"},
                                                                        {dimension_of<Stress>, "Pa"},
                                                                        {dimension_of<Stiffness>, "N/m"},
                                                                        {dimension_of<Resilience>, "m/N"},
                                                                        {dimension_of<TemperatureDifference>, "K"},
                                                                        {dimension_of<Expansion>, "1/K"},
                                                                        {dimension_of<Potential>, "V"},
                                                                        {dimension_of<CurrentDensity>, "A/m2"},
                                                                        {dimension_of<Conductivity>, "S/m"},
                                                                        {dimension_of<SurfaceResistance>, "ohm*m2"},
                                                                        {dimension_of<MolarMass>, "kg/mol"},
                                                                        {dimension_of<Density>, "kg/m3"},
                                                                        {dimension_of<Temperature>, "K"},
                                                                        {dimension_of<Duration>, "s"},
                                                                        {dimension_of<ArealMass>, "kg/m2"},
                                                                        {dimension_of<Deposition>, "kg/m2/s"}};
        return all;
    }
    double share() { return std::uniform_real_distribution<double>(0, 1)(random_); }
    std::string word(const FieldHelp& field) {
        std::vector<std::string> words;
        for (std::size_t at = 0; (at = field.accepted.find('"', at)) != std::string::npos;) {
            const auto end = field.accepted.find('"', at + 1);
            words.push_back(field.accepted.substr(at + 1, end - at - 1));
            at = end + 1;
        }
        REQUIRE_FALSE(words.empty());
        return words[std::uniform_int_distribution<std::size_t>(0, words.size() - 1)(random_)];
    }
    Node moved(const Node& value, const FieldHelp& field) {
        if (value.kind == Node::Kind::array) {
            auto list = value;
            for (auto& item : list.items) item = moved(item, field);
            return list;
        }
        if (value.kind == Node::Kind::table) {
            auto record = value;
            for (auto& entry : record.entries) entry.value = moved(entry.value, field);
            return record;
        }
        if (field.kind == "whole number")
            return node_tests::number(std::max(0.0, value.number + std::uniform_int_distribution<int>(-1, 1)(random_)));
        const double factor = std::exp(std::uniform_real_distribution<double>(-spread_, spread_)(random_));
        spread_ = spread_ > 0.5 ? least_spread : spread_ * 1.02;
        if (value.kind == Node::Kind::number) return node_tests::number(value.number * factor);
        const auto [size, unit] = split(value.text);
        if (unit == value.text) return value;  // a word of a record
        return node_tests::words(fmt::format("{:.17g}{}", size * factor, unit));
    }
    Node within(const FieldHelp& field, const Amount& least, const Amount& most) {
        if (field.kind == "whole number")
            return node_tests::number(std::uniform_int_distribution<int>(static_cast<int>(least.first),
                                                                         static_cast<int>(std::min(most.first, least.first + 6)))(random_));
        const auto of = [&](const Amount& amount) {
            if (amount.second.empty()) return amount.first;
            for (const auto& [dimension, unit] : spellings())
                if (const auto read = read_value(fmt::format("{:.17g}{}", amount.first, amount.second), dimension)) return read->si();
            FAIL("help states a bound in an unknown unit: " << amount.second);
            return 0.0;
        };
        const double from = of(least), to = of(most);
        const double si = from > 0 ? from * std::pow(to / from, share()) : from + share() * (to - from);
        if (least.second.empty()) return node_tests::number(si);
        for (const auto& [dimension, unit] : spellings())
            if (read_value(fmt::format("1{}", least.second), dimension)) return node_tests::words(fmt::format("{:.17g} {}", si, unit));
        return node_tests::number(si);
    }

    std::vector<FieldHelp> fields_;
    const Node& middle_;
    std::mt19937 random_;
    /// Small first, for inputs that must fit each other closely, then wider and wider, and small again.
    static constexpr double least_spread = 0.02;
    double spread_ = least_spread;
};

std::string without_blanks(std::string text) {
    std::erase_if(text, [](char c) { return std::isspace(static_cast<unsigned char>(c)) != 0; });
    return text;
}

/// The symbols a reader of the printed calculation knows before each step.
std::map<std::string, double> given_symbols(const Calculation& calculation) {
    std::map<std::string, double> symbols;
    for (const auto& input : calculation.inputs)
        if (!input.symbol.empty() && input.text.empty()) symbols[input.symbol] = input.value.si();
    return symbols;
}

bool agree(double ours, double theirs) { return std::abs(ours - theirs) <= 1e-9 * std::abs(theirs); }

/// Works every expression out again, as the code has it and as it is printed. `symbols` are those known before the first step.
class Certifier {
public:
    std::set<std::string> proven;  ///< "symbol=code"
    int expressions = 0;

    void check(const std::vector<Step>& steps, std::map<std::string, double> symbols) {
        for (const auto& step : steps) {
            const double ours = step.value.si();
            if (step.kind == StepKind::derived && !step.substituted.empty()) check(step, ours, symbols);
            if (step.kind != StepKind::heading) symbols[step.symbol] = ours;
        }
    }

private:
    void check(const Step& step, double ours, const std::map<std::string, double>& symbols) {
        CAPTURE(step.symbol);
        CAPTURE(step.code);
        CAPTURE(step.evident);
        CAPTURE(step.formula);
        REQUIRE(std::isfinite(ours));
        REQUIRE_MESSAGE(!step.evident.empty(), "a symbol of this expression was never told");
        const double by_code = FormulaEvaluator()(step.evident);
        if (!agree(ours, by_code)) CHECK_MESSAGE(false, ours << " is printed, " << by_code << " by hand");
        const double by_print = FormulaEvaluator(symbols)(step.formula);
        if (!agree(ours, by_print)) CHECK_MESSAGE(false, ours << " is printed, " << by_print << " by hand from the printed formula");
        proven.insert(step.symbol + '=' + without_blanks(step.code));
        ++expressions;
    }
};

/// A joint whose checks need most of the program's formulas, and the same with its tube through the walls, with none, and as coded.
std::vector<std::string> joints() {
    const std::string joint = R"(title = "drawbar leg under a box rail"
service-class = "off road"
life = "20 years"
[bolt]
size = "M16"
class = "8.8"
finish = "hot-dip galvanised, waxed"
[tightening]
method = "torque wrench, friction class B"
[pattern]
positions = [["-480 mm", "0 mm"], ["-400 mm", "0 mm"], ["400 mm", "0 mm"], ["480 mm", "0 mm"]]
[[part]]
kind = "washer"
series = "ISO 7089"
[[part]]
kind = "plate"
name = "drawbar"
material = "S355, up to 16 mm"
thickness = "10 mm"
surface = "hot-dip galvanised, sweep blasted"
outline = {x-min = "-530 mm", y-min = "-40 mm", y-max = "40 mm"}
[[part]]
kind = "section"
name = "rail"
material = "EN AW-6082-T6 extruded, up to 5 mm"
width = "80 mm"
height = "100 mm"
wall = "5 mm"
height-tolerance = "0.2 mm"
surface = "blasted"
x-max = "540 mm"
tube = {arrangement = "between the walls", material = "E355+N precision tube"}
[[part]]
kind = "washer"
series = "ISO 7089"
[temperatures]
assembly = "20 degC"
coldest = "-15 degC"
hottest = "65 degC"
[[load-case]]
name = "standing"
format = "static"
at = ["1800 mm", "0 mm", "120 mm"]
force = ["0 kN", "0 kN", "-1.53 kN"]
[[load-case]]
name = "sideways"
format = "dynamic"
load-factor = 1.0
force = ["13.65 kN", "6.38 kN", "0 kN"]
moment = ["0 kN*m", "0 kN*m", "3.97 kN*m"]
[[load-case]]
name = "driving"
format = "dynamic"
load-factor = 1.0
at = ["1800 mm", "0 mm", "120 mm"]
force = ["3.96 kN", "0 kN", "1.27 kN"]
cycles = 2e6
)";
    const auto with = [&](const std::string& old_text, const std::string& new_text) {
        auto text = joint;
        return text.replace(text.find(old_text), old_text.size(), new_text);
    };
    return {joint, with("\"between the walls\"", "\"through the walls\", stock = \"steel 25 x 4\""),
            with("\"between the walls\", material = \"E355+N precision tube\"", "\"none\""), with("\"off road\"", "\"as coded\"")};
}

}  // namespace

TEST_SUITE("quantity/steps: the printed formula is the computed one") {
    TEST_CASE("every step of every calculator, over samples of its inputs, and of every check of a joint") {
        Certifier certifier;
        for (const auto& calculator : calculators()) {
            const std::string name(calculator.formula.name);
            CAPTURE(name);
            const auto found = plausible().find(calculator.formula.name);
            REQUIRE_MESSAGE(found != plausible().end(), "write plausible inputs of " << name << " into this test");
            const auto middle = parsed(found->second);
            std::map<std::string, std::set<std::string>> words_accepted;
            int accepted = 0;
            const int before = certifier.expressions;
            const auto run = [&](const Node& inputs, bool must_pass) {
                Diagnostics diagnostics;
                const auto calculation = calculator.run(inputs, diagnostics);
                if (must_pass) CHECK_MESSAGE(calculation.has_value(), diagnostics.text());
                if (!calculation) return;
                ++accepted;
                for (const auto& input : calculation->inputs) words_accepted[input.key].insert(input.text);
                certifier.check(calculation->steps, given_symbols(*calculation));
            };
            run(middle, true);
            const auto [first, last] = corners().equal_range(calculator.formula.name);
            for (auto corner = first; corner != last; ++corner) run(parsed(corner->second), true);
            Samples samples(calculator, middle, 20240u);
            for (int i = 0; i < 400; ++i) run(i % 4 == 0 ? samples.anywhere() : samples.near(), false);
            CHECK(accepted >= 50);
            CHECK(certifier.expressions > before);
            for (const auto& field : calculator.fields()) {
                if (field.kind != "word") continue;
                CAPTURE(field.key);
                CHECK(words_accepted[field.key].size() ==
                      static_cast<std::size_t>(std::count(field.accepted.begin(), field.accepted.end(), '"') / 2));
            }
        }

        Diagnostics diagnostics;
        const auto tables = load_tables(std::nullopt, diagnostics);
        for (const auto& text : joints()) {
            const auto joint = read_joint(text, "joint", tables, diagnostics);
            REQUIRE_MESSAGE(joint.has_value(), diagnostics.text());
            const auto assessment = std::make_unique<Assessment>();
            assess(*joint, *assessment);
            CHECK(assessment->count > 20);
            for (const auto& result : assessment->checks()) {
                const std::string id(result.info->id);
                CAPTURE(id);
                certifier.check(explain(*assessment, result).steps(), {});
            }
        }

        // No formula in the headers goes unproven.
        const std::regex line(R"re(FAYWRIGHT_STEP\((\w+), (.*)\);)re");
        std::size_t written = 0;
        for (const char* room : {"/src/mechanics", "/src/loads", "/src/corrosion"})
            for (const auto& entry : std::filesystem::directory_iterator(std::string(FAYWRIGHT_SOURCE_DIR) + room)) {
                std::ifstream file(entry.path());
                const std::string source{std::istreambuf_iterator<char>(file), {}};
                for (auto it = std::sregex_iterator(source.begin(), source.end(), line); it != std::sregex_iterator(); ++it, ++written) {
                    const auto step = display_symbol((*it)[1].str()) + '=' + without_blanks((*it)[2].str());
                    if (unreachable().contains(step)) continue;
                    CHECK_MESSAGE(certifier.proven.contains(step), entry.path().filename().string()
                                                                       << ": never reached by a sample: " << (*it)[0].str());
                }
            }
        CHECK(written > 200);
    }

    TEST_CASE("the bounds that help states are themselves accepted") {
        for (const auto& calculator : calculators()) {
            const auto middle = parsed(plausible().at(calculator.formula.name));
            for (const auto& field : calculator.fields()) {
                const auto to = field.accepted.find(" to ");
                if (to == std::string::npos || field.kind == "word") continue;
                for (const auto& bound : {field.accepted.substr(0, to), field.accepted.substr(to + 4)}) {
                    auto inputs = middle;
                    std::erase_if(inputs.entries, [&](const Entry& entry) { return entry.key == field.key; });
                    Node value;
                    value.kind = field.kind == "whole number" ? Node::Kind::number : Node::Kind::string;
                    value.number = std::strtod(bound.c_str(), nullptr);
                    value.text = bound;
                    inputs.entries.push_back({field.key, {}, value});
                    Diagnostics diagnostics;
                    (void)calculator.run(inputs, diagnostics);
                    for (const auto& each : diagnostics.sorted())
                        CHECK_MESSAGE(each.code == "calc.refused",
                                      calculator.formula.name << ": " << field.key << " = " << bound << ": " << each.message);
                }
            }
        }
    }
}

namespace {

struct Lever {
    Force force = kN(3);
    Length arm = mm(50);
    Stiffness k = N_per_mm(20e3);
    double mu = 0.12;
    int n = 2;
    std::optional<Length> gap;
    bool tight = true;

    template <class Visit, class Self>
    static void describe(Visit&& field, Self& self) {
        field(Name{"force", "F", "the pull"}, self.force);
        field(Name{"arm", "a_x", "the lever"}, self.arm);
        field(Name{"stiffness", "k", "of the spring"}, self.k);
        field(Name{"friction", "mu", "of the faces"}, self.mu);
        field(Name{"planes", "n", "of slip"}, self.n);
        field(Name{"gap", "g", "before contact"}, self.gap);
        field(Name{"tight", "", "or loose"}, self.tight);
    }
};

/// The last step after one expression over the lever's symbols.
struct Line {
    Recorder steps;
    Lever lever;
    explicit Line(Lever given = {}) : lever(given) { steps.given(lever); }
    const Step& last() const { return steps.steps().back(); }
};

}  // namespace

TEST_SUITE("quantity/steps: what is shown") {
    TEST_CASE("symbols") {
        CHECK(display_symbol("F") == "F");
        CHECK(display_symbol("F_b_Rd") == "F_b,Rd");
        CHECK(display_symbol("gamma_M2") == "\u03b3_M2");
        CHECK(display_symbol("mu") == "\u03bc");
        CHECK(display_symbol("Delta_H") == "\u0394_H");
        CHECK(display_symbol("Phi_n") == "\u03a6_n");
        CHECK(display_symbol("beta_Lf") == "\u03b2_Lf");
        CHECK(display_symbol("d_2min") == "d_2min");
        CHECK(display_symbol("mu_th_low") == "\u03bc_th,low");
        CHECK(display_symbol("sigma_red") == "\u03c3_red");
        CHECK(display_symbol("t_phi") == "t_\u03c6");
        CHECK(display_symbol("A_pi_rho") == "A_\u03c0,\u03c1");
        CHECK(display_symbol("mulch") == "mulch");
        CHECK(display_symbol("") == "");
    }

    TEST_CASE("inputs come first, with their meaning, what is absent is left out, a switch is told in words") {
        Line line;
        const auto& steps = line.steps.steps();
        REQUIRE(steps.size() == 6);
        CHECK(steps[0].kind == StepKind::input);
        CHECK(steps[0].symbol == "F");
        CHECK(steps[0].formula == "the pull");
        CHECK(print(steps[0].value) == "3 kN");
        CHECK(steps[3].symbol == "\u03bc");
        CHECK(print(steps[4].value) == "2");
        CHECK(steps[5].symbol == "tight");
        CHECK(steps[5].words == "yes");
        Lever with_gap;
        with_gap.gap = mm(1);
        CHECK(Line(with_gap).steps.steps().size() == 7);
    }

    TEST_CASE("a product") {
        Line line;
        const auto M = line.steps.record("M_x", "F * a_x", line.lever.force * line.lever.arm);
        CHECK(in_Nm(M) == doctest::Approx(150));
        CHECK(line.last().kind == StepKind::derived);
        CHECK(line.last().symbol == "M_x");
        CHECK(line.last().formula == "F\u00b7a_x");
        CHECK(line.last().substituted == "3 kN\u00b750 mm");
        CHECK(print(line.last().value) == "150 N*m");
        CHECK(line.last().code == "F * a_x");
        CHECK(FormulaEvaluator()(line.last().evident) == doctest::Approx(150));
    }

    TEST_CASE("powers, roots and logarithms as a person writes them") {
        Line line;
        (void)line.steps.record("A", "squared(a_x)", squared(mm(50)));
        CHECK(line.last().formula == "a_x\u00b2");
        CHECK(line.last().substituted == "(50 mm)\u00b2");
        (void)line.steps.record("V", "cubed(a_x + mm(40))", cubed(mm(90)));
        CHECK(line.last().formula == "(a_x + 40 mm)\u00b3");
        CHECK(line.last().substituted == "(50 mm + 40 mm)\u00b3");
        (void)line.steps.record("u", "squared(mu)", 0.12 * 0.12);
        CHECK(line.last().substituted == "0.12\u00b2");
        (void)line.steps.record("q", "log(mu) + exp(-mu)", std::log(0.12) + std::exp(-0.12));
        CHECK(line.last().formula == "ln(\u03bc) + exp(-\u03bc)");
        (void)line.steps.record("s", "std::sqrt(mu) * pi", std::sqrt(0.12) * pi);
        CHECK(line.last().formula == "sqrt(\u03bc)\u00b7\u03c0");
        (void)line.steps.record("r", "double(F / newton(500)) / 2.0", 3.0);
        CHECK(line.last().formula == "(F/500 N)/2");
        (void)line.steps.record("w", "min({mu, 2.50, 1e8})", 0.12);
        CHECK(line.last().formula == "min(\u03bc, 2.5, 1e8)");
        CHECK(FormulaEvaluator()(line.last().evident) == doctest::Approx(0.12));
    }

    TEST_CASE("the star that opens an optional is not printed") {
        Lever lever;
        lever.gap = mm(2);
        Line line(lever);
        (void)line.steps.record("x", "1.4 * *g / a_x - *g / a_x", 0.4 * 2.0 / 50.0);
        CHECK(line.last().formula == "1.4\u00b7g/a_x - g/a_x");
        CHECK(line.last().substituted == "1.4\u00b72 mm/50 mm - 2 mm/50 mm");
    }

    TEST_CASE("a negative value stands in parentheses") {
        Lever lever;
        lever.force = kN(-3);
        Line line(lever);
        (void)line.steps.record("y", "mu - F / newton(1)", 3000.12);
        CHECK(line.last().substituted == "0.12 - (-3 kN)/1 N");
        (void)line.steps.record("z", "squared(F)", squared(kN(-3)));
        CHECK(FormulaEvaluator()(line.last().evident) == doctest::Approx(9e6));
    }

    TEST_CASE("words stand where no expression computes the value") {
        Line line;
        (void)line.steps.stated("J", "sum of squares over the bolts", mm2(7));
        CHECK(line.last().formula == "sum of squares over the bolts");
        CHECK(line.last().substituted.empty());
        CHECK(line.last().evident.empty());
        (void)line.steps.record("k_J", "F / J", kN(3) / mm2(7));
        CHECK(line.last().formula == "F/J");
    }

    TEST_CASE("a symbol nobody gave leaves no evident text") {
        Line line;
        (void)line.steps.record("x", "F / nobody", kN(3));
        CHECK(line.last().evident.empty());
    }

    TEST_CASE("a ratio of quantities is recorded as a number, a heading keeps its source") {
        Recorder steps;
        steps.heading("Bearing", Source{"A document", "2005", "Table 1", Basis::published});
        CHECK(steps.steps().back().kind == StepKind::heading);
        CHECK(steps.steps().back().formula == "Bearing");
        CHECK(steps.steps().back().source.place == "Table 1");
        static_assert(std::same_as<decltype(steps.record("q", "1.0", mm(3) / mm(2))), double>);
        CHECK(steps.record("q", "1.0", mm(3) / mm(2)) == doctest::Approx(1.5));
    }

    // "3 kN/20 kN/mm" reads as 0.15 per mm: by the reader's own rule a stroke turns the next factor only.
    TEST_CASE("a value whose unit has a stroke is set off behind a stroke") {
        Line line;
        (void)line.steps.record("w", "F / k", kN(3) / N_per_mm(20e3));
        CHECK(line.last().substituted == "3 kN/(20 kN/mm)");
    }
}
