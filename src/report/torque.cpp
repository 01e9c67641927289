// SPDX-License-Identifier: MIT
#include "report/torque.hpp"

#include "assess/assessment.hpp"
#include "report/json.hpp"
#include "report/layout.hpp"
#include "report/steps_text.hpp"

namespace faywright {

std::string torque_text(const TorqueAnswer& answer) {
    std::string out = wrapped(fmt::format("class {}, {}; {}", answer.bolt_class, answer.finish.name, answer.method.name));
    out += wrapped(fmt::format("friction {} to {} in the thread, {} to {} under the nut; tool +-{} %", answer.finish.thread_friction_low,
                               answer.finish.thread_friction_high, answer.finish.head_friction_low, answer.finish.head_friction_high,
                               print_number(100 * answer.method.tool_scatter, 3)));
    out += fmt::format("\n  {}{}{}{}{}{}\n", fitted("size", 7), fitted_right("torque", 11), fitted_right("least clamp", 14),
                       fitted_right("mean", 11), fitted_right("greatest", 11), fitted_right("of proof", 11));
    for (const auto& line : answer.lines)
        out += fmt::format("  {}{}{}{}{}{}{}\n", fitted(line.size, 7), fitted_right(print(Value(line.plan.torque), 4), 11),
                           fitted_right(print(Value(line.plan.preload.least), 3), 14),
                           fitted_right(print(Value(line.plan.preload.mean), 3), 11),
                           fitted_right(print(Value(line.plan.preload.greatest), 3), 11),
                           fitted_right(fmt::format("{:.0f} %", 100 * line.proof_share), 11), line.proof_share > 1 ? "  YIELDS" : "");
    out += '\n';
    out += wrapped(
        "Hexagon nut turned on a medium clearance hole. Greatest: least friction and strongest pull of the tool; least: the other ends.");
    out += wrapped(source_text(answer.finish.source.view()), "friction: ", "  ") +
           wrapped(source_text(PreloadFromTorque::formula.source), "torque: ", "  ");
    out += wrapped(cautions()[1], "caution: ", "  ");
    return out;
}

std::string torque_json(const TorqueAnswer& answer) {
    json::Json out;
    out["class"] = answer.bolt_class;
    out["finish"] = answer.finish.name;
    out["tightening"] = answer.method.name;
    out["bolts"] = json::Json::array();
    for (const auto& line : answer.lines)
        out["bolts"].push_back({{"size", line.size},
                                {"torque", json::of(line.plan.torque)},
                                {"preload",
                                 {{"min", json::of(line.plan.preload.least)},
                                  {"mean", json::of(line.plan.preload.mean)},
                                  {"max", json::of(line.plan.preload.greatest)}}},
                                {"proof_utilisation", line.proof_share}});
    out["source"] = json::of(PreloadFromTorque::formula.source);
    out["friction_source"] = json::of(answer.finish.source.view());
    out["caution"] = cautions()[1];
    return json::printed(out);
}

}  // namespace faywright
