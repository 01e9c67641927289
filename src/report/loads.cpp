// SPDX-License-Identifier: MIT
#include "report/loads.hpp"

#include "input/toml_writer.hpp"
#include "report/json.hpp"
#include "report/layout.hpp"
#include "report/steps_text.hpp"

#include <fmt/format.h>

namespace faywright {

namespace {

/// "2.551 kN up"; empty where there is less than `least`.
template <class Q>
std::string with_direction(Q value, Q least, std::string_view positive, std::string_view negative) {
    if (abs(value) < least) return "";
    return fmt::format("{} {}", print(Value(abs(value)), 5), value > Q{} ? positive : negative);
}

std::string directions(const Force3& force, const Moment3& moment = {}) {
    const Force some = newton(0.05);
    const Moment turn = Nm(0.05);
    std::string out;
    for (const auto& part :
         {with_direction(force.x, some, "forward", "rearward"), with_direction(force.y, some, "right", "left"),
          with_direction(force.z, some, "down", "up"), with_direction(moment.x, turn, "turning right side down", "turning left side down"),
          with_direction(moment.y, turn, "turning nose up", "turning nose down"),
          with_direction(moment.z, turn, "turning nose right", "turning nose left")})
        if (!part.empty()) out += (out.empty() ? "" : ", ") + part;
    return out.empty() ? "nothing" : out;
}

std::string in_mm_text(Length length) { return print_number(in_mm(length), 5); }

/// A place as x, y, z from the coupling.
std::string place(const Point& p) { return fmt::format("({}, {}, {})", in_mm_text(p.x), in_mm_text(p.y), in_mm_text(p.z)); }

std::string body_text(const std::vector<PlacedForce>& forces) {
    std::string out;
    for (const auto& each : forces)
        out += wrapped(directions(each.force, each.moment), fmt::format("    {} at {}: ", each.name, place(each.at)), "        ");
    const auto left = resultant(forces);
    out += wrapped(
        fmt::format("{} N and {} N*m", print_number(in_N(magnitude(left.force)), 2), print_number(in_Nm(magnitude(left.moment)), 2)),
        "    sum of forces and moments: ", "        ");
    return out;
}

template <class Triple>
std::string components(const Triple& t) {
    return fmt::format("[\"{}\", \"{}\", \"{}\"]", print(Value(t.x), 6), print(Value(t.y), 6), print(Value(t.z), 6));
}

std::string block(const LoadCaseFile& c) {
    std::string out = fmt::format("[[load-case]]\nname = {}\nformat = \"{}\"\n", TomlWriter::quoted(c.name), word_of(c.format));
    if (c.load_factor) out += fmt::format("load-factor = {:.6g}\n", *c.load_factor);
    if (c.at.x != mm(0) || c.at.y != mm(0) || c.at.z != mm(0)) out += fmt::format("at = {}\n", components(c.at));
    out += fmt::format("force = {}\n", components(c.force));
    if (c.moment != MomentFile{}) out += fmt::format("moment = {}\n", components(c.moment));
    if (c.cycles) out += fmt::format("cycles = {}\n", print_number(*c.cycles));
    return out;
}

std::string heading(std::string_view text) { return fmt::format("\n{}\n", text); }

std::string states_text(const TrailerLoads& loads) {
    std::string out;
    for (const auto& state : loads.states) {
        const auto& body = state.body;
        const auto& values = state.values;
        out += heading("STATE  " + state.name);
        out += labelled("mass; weight", fmt::format("{}; {}", print(Value(body.mass)), print(Value(body.weight()))));
        out +=
            labelled("nose load S g; of the weight", fmt::format("{}; {:.1f} %", print(Value(body.nose_load())), 100 * body.nose_share()));
        out += labelled("static mass S at the coupling", print(Value(body.nose_mass())));
        out += labelled("axle load", print(Value(body.axle_load())));
        out += labelled("0.5 m g is as much as", body.nose_load() > newton(0)
                                                     ? fmt::format("{:.2f} x the nose load", double(body.weight() / body.nose_load()) / 2.0)
                                                     : std::string("no multiple of a nose load that lifts"));
        out += labelled("mass felt at the coupling", print(Value(body.mass_at_coupling())));
        out += labelled("bump of 1 under the axle: at the coupling", print_number(body.percussion_factor()));
        out += labelled("D", print(Value(values.D)) + ": balls, jaws, eyes and hooks; the fatigue force is taken from it");
        if (values.D_c) out += labelled("D_c", print(Value(*values.D_c)) + ": couplings, eyes and drawbars of centre-axle trailers");
        if (values.V)
            out += labelled(
                "V", print(Value(*values.V)) + (CouplingValues::V_counts(body.mass) ? ": amplitude up and down at the coupling, above 3.5 t"
                                                                                    : ": for comparison only; it counts above 3.5 t"));
    }
    return out;
}

}  // namespace

std::string loads_text(const TrailerLoads& loads) {
    std::string out = wrapped(loads.title);
    out += labelled("road; design factor on static load", fmt::format("{}; {}", loads.road.name, print_number(loads.road.design_factor)));
    out += labelled("towing vehicle; brakes", fmt::format("{}; {}", print(Value(loads.towing_vehicle)), word_of(loads.brakes)));
    out += states_text(loads);
    out += wrapped(source_text(CouplingValues::formula.source), "  D, D_c, V: ", "    ");

    out += heading("AT THE COUPLING  force of the towing vehicle on the trailer");
    const auto several = loads.states.size() > 1;
    for (const auto& state : loads.states) {
        out += fmt::format("  {}{}{}{}\n", fitted(several ? state.name : "", 46), fitted_right("up", 10), fitted_right("rearward", 11),
                           fitted_right("right", 11));
        for (const auto& each : loads.coupling) {
            if (each.state != state.name) continue;
            const auto number = [](Force value) { return print(Value(value)); };
            const auto values = fmt::format("{}{}{}\n", fitted_right(number(each.load.up), 10),
                                            fitted_right(number(each.load.rearward), 11), fitted_right(number(each.load.right), 11));
            if (display_width(each.name) <= 44)
                out += fmt::format("    {}{}", fitted(each.name, 44), values);
            else
                out += wrapped(each.name, "    ", "      ") + std::string(48, ' ') + values;
        }
    }
    out += "\n  rules\n";
    std::vector<std::string> told;
    for (const auto& each : loads.coupling) {
        if (std::find(told.begin(), told.end(), each.rule.name) != told.end()) continue;
        told.push_back(each.rule.name);
        const auto format = each.rule.load_factor ? fmt::format("peak load, load factor {}", print_number(*each.rule.load_factor))
                                                  : std::string("static, design factor of the service class");
        out += wrapped(fmt::format("{} [{}; {}]", each.rule.description, format, source_text(each.rule.source.view())),
                       fmt::format("  {}: ", each.rule.name), "    ");
    }

    for (const auto& joint : loads.joints) {
        out += heading(fmt::format("JOINT  {} ({}, {})", joint.name, joint.kind, word_of(joint.lies)));
        out += wrapped(joint.share + ".", "  share: ", "    ");
        if (joint.pinned_leg)
            out += wrapped(
                fmt::format("were the legs pinned in plan, the greatest side load would put {} along each: for legs and cross-member",
                            print(Value(*joint.pinned_leg))),
                "  in plan: ", "    ");
        out += wrapped("Load cases in the joint file's axes: x forward along the rail, z out of it towards the attached part.", "  ", "  ");
        for (const auto& each : joint.cases) out.append("\n").append(block(each.load_case));
    }

    out += heading("FREE BODY OF THE TRAILER");
    out += wrapped("Forces on it, places in mm from the coupling: forward, right, down. Its own inertia is among them.", "  ", "  ");
    for (const auto& each : loads.coupling)
        if (!each.free_body.empty()) {
            out += wrapped(loads.name_of(each), "  ", "  ");
            out += body_text(each.free_body);
        }
    for (const auto& joint : loads.joints) {
        if (joint.drawbar.empty()) continue;
        out += heading(fmt::format("FREE BODY OF THE DRAWBAR ahead of the lap of {}", joint.name));
        out += wrapped("Both legs alike; the cases that count for the joint.", "  ", "  ");
        for (const auto& body : joint.drawbar) {
            if (std::none_of(joint.cases.begin(), joint.cases.end(), [&](const auto& c) { return c.load_case.name == body.name; }))
                continue;
            out += wrapped(fmt::format("{}: M_A {}, R_A {}, R_B {}", body.name, print(Value(body.couple.at_front)),
                                       print(Value(body.couple.front)), print(Value(body.couple.rear))),
                           "  ", "    ");
            out += body_text(body.forces);
        }
    }
    if (!loads.warnings.empty()) {
        out += heading("WARNINGS");
        for (const auto& warning : loads.warnings) out += wrapped(warning, "  - ", "    ");
    }
    if (!loads.own_rules.empty()) {
        out += heading("OWN RULES");
        for (const auto& row : loads.own_rules) out += wrapped(row, "  ", "    ");
    }
    out += heading("ASSUMED");
    for (const auto& taken : loads.defaults)
        out += wrapped(fmt::format("{} ({})", taken.value, taken.meaning), fmt::format("  {} = ", taken.path), "      ");
    out += wrapped("The drawbar is stiff in plan: one that is flexible there shifts side load to the front groups.", "  ", "    ");
    out += wrapped("The drawbar pivots on its front group: where it bears on the rail's end ahead of it, the rear group gets less.", "  ",
                   "    ");
    out += wrapped("Own weight of the drawbar is left out: it relieves the lap slightly.", "  ", "    ");
    out += heading("CAUTIONS");
    out += wrapped("Local rules decide which loads bind; multiples from memory must be checked against the document.", "  - ", "    ");
    out += wrapped("Static load with a design factor and peak load are never multiplied.", "  - ", "    ");
    return out;
}

namespace {

using json::Json;

template <class Triple>
Json triple(const Triple& t) {
    return Json::array({json::of(Value(t.x)), json::of(Value(t.y)), json::of(Value(t.z))});
}

Json body_json(const std::vector<PlacedForce>& forces) {
    Json out;
    out["forces"] = Json::array();
    for (const auto& each : forces) {
        Json line{{"name", each.name}, {"at", triple(each.at)}, {"force", triple(each.force)}};
        if (each.moment != Moment3{}) line["moment"] = triple(each.moment);
        out["forces"].push_back(std::move(line));
    }
    const auto left = resultant(forces);
    out["left_over"] = {{"force", json::of(Value(magnitude(left.force)))}, {"moment", json::of(Value(magnitude(left.moment)))}};
    return out;
}

Json case_json(const JointCase& each) {
    const auto& c = each.load_case;
    Json out{{"name", c.name}, {"format", word_of(c.format)}};
    if (c.load_factor) out["load_factor"] = *c.load_factor;
    out["at"] = triple(c.at);
    out["force"] = triple(c.force);
    out["moment"] = triple(c.moment);
    if (c.cycles) out["cycles"] = *c.cycles;
    out["rule"] = each.rule.name;
    if (!each.state.empty()) out["state"] = each.state;
    out["source"] = json::of(each.rule.source.view());
    return out;
}

}  // namespace

std::string loads_json(const TrailerLoads& loads) {
    Json out;
    out["program"] = "faywright";
    out["version"] = FAYWRIGHT_VERSION;
    out["trailer"] = loads.title;
    out["road"] = loads.road.name;
    out["design_factor"] = loads.road.design_factor;
    out["brakes"] = word_of(loads.brakes);
    out["towing_vehicle"] = json::of(Value(loads.towing_vehicle));
    out["states"] = Json::array();
    for (const auto& state : loads.states) {
        Json line{{"name", state.name},
                  {"mass", json::of(Value(state.body.mass))},
                  {"weight", json::of(Value(state.body.weight()))},
                  {"nose_load", json::of(Value(state.body.nose_load()))},
                  {"static_mass", json::of(Value(state.body.nose_mass()))},
                  {"nose_share", state.body.nose_share()},
                  {"axle_load", json::of(Value(state.body.axle_load()))},
                  {"mass_at_coupling", json::of(Value(state.body.mass_at_coupling()))},
                  {"percussion_factor", state.body.percussion_factor()},
                  {"D", json::of(Value(state.values.D))}};
        if (state.values.D_c) line["D_c"] = json::of(Value(*state.values.D_c));
        if (state.values.V) {
            line["V"] = json::of(Value(*state.values.V));
            line["V_applies"] = CouplingValues::V_counts(state.body.mass);
        }
        out["states"].push_back(std::move(line));
    }
    out["coupling_values_source"] = json::of(CouplingValues::formula.source);
    out["coupling"] = Json::array();
    for (const auto& each : loads.coupling) {
        Json line{{"name", each.name}, {"state", each.state}, {"rule", each.rule.name}};
        line["up"] = json::of(Value(each.load.up));
        line["rearward"] = json::of(Value(each.load.rearward));
        line["right"] = json::of(Value(each.load.right));
        line["source"] = json::of(each.rule.source.view());
        if (!each.free_body.empty()) line["free_body"] = body_json(each.free_body);
        out["coupling"].push_back(std::move(line));
    }
    out["joints"] = Json::array();
    for (const auto& joint : loads.joints) {
        Json line{{"name", joint.name}, {"kind", joint.kind}, {"lies", word_of(joint.lies)}, {"share", joint.share}};
        if (joint.pinned_leg) line["pinned_leg"] = json::of(Value(*joint.pinned_leg));
        line["load_cases"] = Json::array();
        for (const auto& each : joint.cases) line["load_cases"].push_back(case_json(each));
        if (!joint.drawbar.empty()) {
            line["drawbar"] = Json::array();
            for (const auto& body : joint.drawbar) {
                auto drawn = body_json(body.forces);
                drawn["name"] = body.name;
                drawn["front_moment"] = json::of(Value(body.couple.at_front));
                drawn["front"] = json::of(Value(body.couple.front));
                drawn["rear"] = json::of(Value(body.couple.rear));
                line["drawbar"].push_back(std::move(drawn));
            }
        }
        out["joints"].push_back(std::move(line));
    }
    out["warnings"] = loads.warnings;
    out["own_rules"] = loads.own_rules;
    out["assumed"] = Json::array();
    for (const auto& taken : loads.defaults)
        out["assumed"].push_back({{"path", taken.path}, {"meaning", taken.meaning}, {"value", taken.value}});
    return json::printed(out);
}

}  // namespace faywright
