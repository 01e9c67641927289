// SPDX-License-Identifier: MIT
#include "joint/resolve.hpp"
#include "joint/trailer.hpp"
#include "loads/hanger.hpp"
#include "loads/kerb.hpp"

#include <array>
#include <map>

namespace faywright {

namespace {

struct TrailerResolver {
    const TrailerFile& file;
    const Node& root;
    const Tables& tables;
    Diagnostics& diagnostics;
    TrailerLoads out;

    void error(const std::string& code, const std::string& message, const std::string& path, const std::string& label = "",
               const std::string& help = "") {
        diagnostics.error({code, message, place_of(root, path), label, {}, help});
    }
    void note(const std::string& path, const std::string& meaning, const std::string& value) {
        out.defaults.push_back({path, meaning, value});
    }

    /// Whether a rule is one of this road's.
    [[nodiscard]] bool holds(const LoadRule& rule) const { return !rule.road || *rule.road == out.road.name; }

    void road();
    void states();
    void state(const std::string& name, const std::string& path, const VariantFile& differs);
    [[nodiscard]] Force thrust(const TrailerBody& body, Acceleration braking) const;
    void coupling();
    void coupling(const TrailerState& state, const Row<LoadRule>& rule);
    void warnings();
    void names();
    void joints();
};

void TrailerResolver::road() {
    const auto& table = tables.of<ServiceClass>();
    if (const auto* row = table.find(file.road); row != nullptr) {
        out.road = *row;
        out.road_at = place_of(root, "road");
        return;
    }
    error("name.unknown", fmt::format("road is \"{}\", which the table service does not have", shown(file.road)), "road",
          nearest_label(file.road, table.names()), "faywright table service lists them");
}

void TrailerResolver::state(const std::string& name, const std::string& path, const VariantFile& differs) {
    const auto before = diagnostics.count();
    TrailerState state{name, {}, {}};
    auto& body = state.body;
    const auto at = [&](const char* key) { return path.empty() ? std::string(key) : path + "." + key; };
    body.mass = differs.mass.value_or(file.mass);
    const auto unsprung = differs.unsprung_mass ? differs.unsprung_mass : file.unsprung_mass;
    body.unsprung = unsprung.value_or(body.mass / 10.0);
    body.centre = differs.centre_of_gravity.value_or(file.centre_of_gravity);
    body.centre_height = differs.centre_height.value_or(file.centre_height);
    body.axle = file.axle;
    const auto gyration = differs.gyration_radius ? differs.gyration_radius : file.gyration_radius;
    body.gyration = gyration.value_or(0.35 * file.body_length);
    body.track = file.track;
    body.coupling_height = file.coupling_height;
    if (!unsprung) note(at("unsprung-mass"), "axles and wheels, a tenth of the mass", print(Value(body.unsprung)));
    if (!gyration) note(at("gyration-radius"), "0.35 of the body's length", print(Value(body.gyration)));
    if (body.unsprung >= body.mass)
        error("trailer.mass",
              fmt::format("{} is {}, no less than the whole mass of {}", at("unsprung-mass"), print(Value(body.unsprung)),
                          print(Value(body.mass))),
              at("unsprung-mass"));
    if (body.mass > file.mass)
        error("trailer.mass",
              fmt::format("{} is {}, more than the greatest mass of {}", at("mass"), print(Value(body.mass)), print(Value(file.mass))),
              at("mass"), "", "the trailer's own mass is its greatest; a variant is lighter or laden otherwise");
    // Beyond a third of the way from the axle to the coupling, or as far behind it, this is no centre-axle trailer.
    if (body.centre < 2.0 / 3.0 * body.axle || body.centre > 4.0 / 3.0 * body.axle)
        error("trailer.centre",
              fmt::format("{} is {}; a centre-axle trailer with its axle at {} has it between {} and {}", at("centre-of-gravity"),
                          print(Value(body.centre)), print(Value(body.axle)), print(Value(2.0 / 3.0 * body.axle)),
                          print(Value(4.0 / 3.0 * body.axle))),
              at("centre-of-gravity"));
    if (diagnostics.count() != before) return;
    const auto on_axles = body.axle_load() / gravity;
    state.values = CouplingValues::compute({.towing_vehicle = file.towing_vehicle.mass,
                                            .trailer = body.mass,
                                            .on_axles = min(Mass(on_axles), body.mass),
                                            .on_fifth_wheel = {},
                                            .body_length = file.body_length,
                                            .drawbar_length = body.axle,
                                            .reference = file.towing_vehicle.air_sprung ? m_per_s2(1.8) : m_per_s2(2.4)});
    out.states.push_back(std::move(state));
}

void TrailerResolver::states() {
    if (file.variants.size() + 1 > most_states)
        error("trailer.variants", fmt::format("{} variants; at most {} are accepted", file.variants.size(), most_states - 1), "variant");
    state(file.state, "", {});
    std::map<std::string, std::size_t> seen;
    for (std::size_t i = 0; i < file.variants.size(); ++i) {
        const auto path = fmt::format("variant[{}]", i);
        const auto& name = file.variants[i].name;
        if (const auto [first, fresh] = seen.emplace(name, i); !fresh || name == file.state)
            error("name.duplicate", fmt::format("{}.name \"{}\" is given twice", path, shown(name)), path + ".name");
        state(name, path, file.variants[i]);
    }
}

void TrailerResolver::names() {
    std::map<std::string, std::size_t> seen;
    for (std::size_t i = 0; i < file.joints.size(); ++i) {
        const auto& name = std::visit([](const auto& joint) -> const std::string& { return joint.name; }, file.joints[i]);
        const auto path = fmt::format("joint[{}]", i);
        if (const auto [first, fresh] = seen.emplace(name, i); !fresh)
            diagnostics.error({"name.duplicate",
                               fmt::format("{}.name \"{}\" is given twice", path, shown(name)),
                               place_of(root, path + ".name"),
                               "",
                               {{place_of(root, fmt::format("joint[{}].name", first->second)), "first given here"}},
                               ""});
        if (const auto* lap = lap_fields(file.joints[i]); lap != nullptr) {
            const auto& fields = *lap;
            if (fields.front + fields.rear < mm(20))
                error("trailer.lap", fmt::format("{}: front and rear group stand less than 20 mm apart", path), path + ".front");
            if (fields.front + fields.rear > fields.length)
                error("trailer.lap",
                      fmt::format("{}: its groups stand {} apart, more than the lap of {}", path, print(Value(fields.front + fields.rear)),
                                  print(Value(fields.length))),
                      path + ".length");
            if (fields.middle - fields.front < mm(50))
                error("trailer.lap", fmt::format("{}: the front group reaches the coupling", path), path + ".front");
            if (fields.middle + fields.rear > file.axle + file.body_length)
                error("trailer.lap", fmt::format("{}: the rear group stands behind the trailer", path), path + ".middle");
            if (fields.lies == Placing::on_top)
                error("trailer.lap", fmt::format("{}.lies is \"on the rail\"; a drawbar lies under or beside it", path), path + ".lies");
        }
        if (const auto* frame = std::get_if<SuspensionFile>(&file.joints[i])) {
            if (frame->hangers % 2 != 0)
                error("trailer.hangers", fmt::format("{}.hangers is {}; both sides have as many, so it is even", path, frame->hangers),
                      path + ".hangers");
            if (frame->hanger_spacing && frame->hangers < 4)
                error("trailer.hangers", fmt::format("{}.hanger-spacing wants two hangers on a side, four in all", path),
                      path + ".hanger-spacing");
            if (frame->eye_offset >= frame->height)
                error("trailer.hangers", fmt::format("{}.eye-offset reaches the ground", path), path + ".eye-offset");
        }
    }
    if (file.joints.empty()) error("trailer.joints", "at least one [[joint]] is wanted", "joint");
}

Force TrailerResolver::thrust(const TrailerBody& body, Acceleration braking) const {
    const Force inertia = body.mass * braking;
    if (file.brakes.thrust_share) return min(inertia, body.weight() * *file.brakes.thrust_share);
    if (file.brakes.kind == BrakeKind::none) return inertia;
    if (file.brakes.kind == BrakeKind::electric) return newton(0);
    double share = 0.0;
    for (const auto& rule : tables.of<LoadRule>().rows)
        if (rule.kind == LoadKind::overrun_thrust && holds(rule)) share = max(share, *rule.multiple);
    return min(inertia, body.weight() * share);
}

void TrailerResolver::coupling(const TrailerState& state, const Row<LoadRule>& rule) {
    const auto& body = state.body;
    const auto multiple = rule.multiple.value_or(0.0);
    const auto told = [&](std::string_view what) { return fmt::format("{}: {}", rule.name, what); };
    const auto times = [&](std::string_view of) { return fmt::format("{} {}", print_number(multiple), of); };
    const auto at_coupling = [&](std::string name, const CouplingLoad& load, std::optional<double> cycles = {}) {
        out.coupling.push_back({std::move(name), state.name, rule, load, {}, {}, cycles});
    };
    const auto moving = [&](std::string name, const TrailerMotion& motion) {
        out.coupling.push_back(
            {std::move(name), state.name, rule, coupling_load(body, motion), motion, trailer_free_body(body, motion), {}});
    };
    switch (rule.kind) {
        case LoadKind::standing: {
            auto load = coupling_load(body, {});
            load.up = load.up * multiple;
            if (multiple == 1.0)
                moving(rule.name, {});
            else
                at_coupling(told(times("nose load")), load);
            break;
        }
        case LoadKind::along:
            at_coupling(told("push " + times("m g")), {.rearward = body.weight() * multiple});
            at_coupling(told("pull " + times("m g")), {.rearward = -(body.weight() * multiple)});
            break;
        case LoadKind::sideways:
            at_coupling(told("to the right " + times("m g")), {.right = body.weight() * multiple});
            at_coupling(told("to the left " + times("m g")), {.right = -(body.weight() * multiple)});
            break;
        case LoadKind::vertical: {
            const auto nose = body.nose_load();
            const Force by_nose = out.road.design_factor * (nose < newton(0) ? -nose : nose), by_weight = body.weight() * multiple;
            const auto size = max(by_nose, by_weight);
            const auto what = by_nose > by_weight ? fmt::format("{} x nose load", print_number(out.road.design_factor)) : times("m g");
            at_coupling(told("up " + what), {.up = size});
            at_coupling(told("down " + what), {.up = -size});
            break;
        }
        case LoadKind::braking: {
            const auto braking = gravity * multiple;
            moving(told(times("g")), {.braking = braking, .thrust = thrust(body, braking)});
            break;
        }
        case LoadKind::bump: moving(told(times("x sprung weight")), {.bump = body.sprung_weight() * multiple}); break;
        case LoadKind::cornering: {
            const auto yaw = rule.yaw.value_or(per_s2(0));
            const auto what = times("g") + (rule.yaw ? fmt::format(" and {}", print(Value(yaw))) : std::string());
            moving(told("to the right " + what), {.sideways = gravity * multiple, .yaw = yaw});
            moving(told("to the left " + what), {.sideways = -(gravity * multiple), .yaw = -yaw});
            break;
        }
        case LoadKind::kerb:
            for (const bool right : {true, false})
                moving(told(right ? "right wheel" : "left wheel"),
                       {.kerb = kerb_push(file.towing_vehicle.mass, body.mass, *rule.speed, *rule.stiffness), .kerb_right = right});
            break;
        case LoadKind::heave:
            if (*rule.air_sprung != file.towing_vehicle.air_sprung) break;
            moving(told("up " + print(Value(*rule.acceleration))), {.heave = *rule.acceleration});
            moving(told("down " + print(Value(*rule.acceleration))), {.heave = -*rule.acceleration});
            break;
        case LoadKind::fatigue: {
            const Force size = state.values.D * multiple;
            const auto angle = rule.angle->value();
            const auto along = size * std::cos(angle), upright = size * std::sin(angle);
            const auto what = fmt::format("+-{} D, {} cycles", print_number(multiple), print_number(*rule.cycles));
            at_coupling(told(what + ", forward and down"), {.up = -upright, .rearward = -along}, rule.cycles);
            at_coupling(told(what + ", forward and up"), {.up = upright, .rearward = -along}, rule.cycles);
            break;
        }
        case LoadKind::overrun_thrust:
        case LoadKind::accessory: break;
    }
}

void TrailerResolver::coupling() {
    for (const auto& rule : tables.of<LoadRule>().rows) {
        if (!holds(rule)) continue;
        if (rule.at.file) out.own_rules.push_back(rule.as_own());
        for (const auto& state : out.states) coupling(state, rule);
    }
}

PointFile as_point(const Point& p) { return {p.x, p.y, p.z}; }
ForceFile as_force(const Force3& f) { return {f.x, f.y, f.z}; }
MomentFile as_moment(const Moment3& m) { return {m.x, m.y, m.z}; }

/// Rounding of sums and differences is no load.
template <class Q>
void clear_rounding(Triple<Q>& v, Q whole) {
    for (auto* part : {&v.x, &v.y, &v.z})
        if (abs(*part) <= 1e-12 * whole) *part = Q{};
}

JointCase joint_case(const std::string& name, const std::string& state, const Row<LoadRule>& rule, Point at, Wrench load,
                     std::optional<double> cycles, Placing lies) {
    clear_rounding(load.force, magnitude(load.force));
    clear_rounding(load.moment, magnitude(load.moment));
    JointCase out{{}, rule, state};
    auto& written = out.load_case;
    written.name = name;
    written.format = rule.load_factor ? LoadFormat::dynamic_load : LoadFormat::static_load;
    written.load_factor = rule.load_factor;
    written.at = as_point(in_joint_axes(at, lies));
    written.force = as_force(in_joint_axes(load.force, lies));
    written.moment = as_moment(in_joint_axes(load.moment, lies));
    written.cycles = cycles;
    return out;
}

/// Force and moment about the joint's origin.
struct SixComponents {
    std::array<Force, 3> force;
    std::array<Moment, 3> moment;
};
SixComponents about_origin(const LoadCaseFile& c) {
    const auto arm = moment_of({c.at.x, c.at.y, c.at.z}, {c.force.x, c.force.y, c.force.z});
    return {{c.force.x, c.force.y, c.force.z}, {c.moment.x + arm.x, c.moment.y + arm.y, c.moment.z + arm.z}};
}

/// Whether no check can be worse under `b` than under `a`: `a` is a multiple of `b`, or of the same sign and no smaller in every component
/// and does not press the parts together more, for that relieves.
bool covers(const LoadCaseFile& a, const LoadCaseFile& b) {
    const auto one = about_origin(a), other = about_origin(b);
    bool larger = true, multiple = true;
    std::optional<double> ratio;
    const auto compare = [&](auto mine, auto theirs, auto whole) {
        const auto zero = decltype(mine){};
        if (abs(mine) < abs(theirs) || (mine < zero && theirs > zero) || (mine > zero && theirs < zero)) larger = false;
        if (abs(theirs) <= 1e-9 * whole) {
            if (abs(mine) > 1e-9 * whole) multiple = false;
        } else {
            const auto here = double(mine / theirs);
            if (!ratio) ratio = here;
            if (abs(here - *ratio) > 1e-9 * *ratio) multiple = false;
        }
    };
    const auto whole_force = max(abs(one.force[0]) + abs(one.force[1]) + abs(one.force[2]), newton(1e-6));
    const auto whole_moment = max(abs(one.moment[0]) + abs(one.moment[1]) + abs(one.moment[2]), Nm(1e-6));
    for (std::size_t i = 0; i < 3; ++i) {
        compare(one.force[i], other.force[i], whole_force);
        compare(one.moment[i], other.moment[i], whole_moment);
    }
    return larger && (multiple || one.force[2] >= other.force[2]);
}

/// Keeps of each case the states that no other state covers, and names the state where there are several.
void keep_worst(std::vector<JointCase>& cases, bool several_states) {
    std::vector<JointCase> kept;
    for (std::size_t i = 0; i < cases.size(); ++i) {
        bool covered = false;
        for (std::size_t j = 0; j < cases.size() && !covered; ++j) {
            if (i == j || cases[i].load_case.name != cases[j].load_case.name) continue;
            const bool there = covers(cases[j].load_case, cases[i].load_case), back = covers(cases[i].load_case, cases[j].load_case);
            covered = there && (!back || j < i);
        }
        if (!covered) kept.push_back(cases[i]);
    }
    // A case that is nothing at all at this joint is none.
    std::erase_if(kept, [](const JointCase& c) { return c.load_case.force == ForceFile{} && c.load_case.moment == MomentFile{}; });
    if (several_states)
        for (auto& each : kept) each.load_case.name += "; " + each.state;
    cases = std::move(kept);
}

void TrailerResolver::joints() {
    for (const auto& written : file.joints) {
        JointLoads joint;
        const auto begin = [&](const auto& given) {
            joint.name = given.name;
            joint.kind = std::string(given.kind);
            joint.lies = given.lies;
        };
        std::visit(begin, written);
        const auto* fields = lap_fields(written);
        const bool whole = std::holds_alternative<DrawbarLapFile>(written), front = std::holds_alternative<FrontGroupFile>(written);
        if (fields != nullptr) {
            const Lap lap{fields->middle, fields->front, fields->rear, fields->height, fields->legs_apart};
            const auto h_c = file.coupling_height;
            const Point at{lap.middle, mm(0), lap.height - h_c};
            if (whole) joint.lap = lap;
            joint.share = fmt::format(
                "the left leg: {} of what is vertical, half of push and pull; a side load is shared by the four groups of both legs as one "
                "elastic pattern, its tilt is a couple of the legs; the right leg is the mirror image",
                print_number(file.leg_share));
            joint.pinned_leg = newton(0);
            for (const auto& each : out.coupling) {
                joint.pinned_leg = max(*joint.pinned_leg, abs(pinned_leg_force(each.load, lap)));
                Wrench load;
                Point place;
                if (!whole) {
                    load.force = group_load(each.load, lap, h_c, file.leg_share, true, front);
                } else if (each.load.right == newton(0)) {
                    // Legible: the leg's share of the coupling's force, at the coupling.
                    place = at;
                    load.force = {-each.load.rearward / 2.0, newton(0), -each.load.up * file.leg_share};
                } else {
                    load = leg_load(each.load, lap, h_c, file.leg_share, true);
                }
                joint.cases.push_back(joint_case(each.name, each.state, each.rule, place, load, each.cycles, joint.lies));
                joint.drawbar.push_back({out.name_of(each), drawbar_free_body(each.load, lap, h_c), lap_couple(each.load, lap, h_c)});
            }
        } else if (const auto* frame = std::get_if<SuspensionFile>(&written)) {
            const Hangers hangers{static_cast<double>(frame->hangers), frame->eye_offset, frame->height - frame->eye_offset,
                                  frame->hanger_spacing.value_or(mm(0))};
            joint.share = fmt::format("one hanger of the left side, of {}: {} of what is vertical stands on that side, shared alike",
                                      frame->hangers, print_number(file.leg_share));
            const Point eye{mm(0), mm(0), frame->eye_offset};
            for (const auto& each : out.coupling) {
                // Forces at the coupling alone say nothing of the wheels; heave of the coupling hardly moves them.
                if (!each.motion || each.rule.kind == LoadKind::heave) continue;
                const auto& body = out.state_of(each).body;
                const bool couple = hangers.spacing > mm(0) && wheel_loads(body, *each.motion).brake > newton(0);
                for (const bool at_rear : {false, true}) {
                    if (at_rear && !couple) continue;
                    const auto name = couple ? each.name + (at_rear ? ", rear hanger" : ", front hanger") : each.name;
                    joint.cases.push_back(joint_case(name, each.state, each.rule, eye,
                                                     {hanger_load(body, *each.motion, hangers, file.leg_share, true, at_rear), {}}, {},
                                                     joint.lies));
                }
            }
        } else if (const auto* bracket = std::get_if<BracketFile>(&written)) {
            joint.share = "all of what it carries";
            const Force weight = bracket->mass * gravity;
            const auto add = [&](const Row<LoadRule>& rule, const std::string& name, const Force3& force) {
                // The place is given in the joint's axes already.
                auto made = joint_case(name, "", rule, {}, {force, {}}, {}, joint.lies);
                made.load_case.at = bracket->centre_of_gravity;
                joint.cases.push_back(std::move(made));
            };
            const auto none = newton(0);
            for (const auto& rule : tables.of<LoadRule>().rows) {
                if (!holds(rule)) continue;
                if (rule.kind == LoadKind::standing) add(rule, rule.name + ": its weight", {none, none, weight * *rule.multiple});
                if (rule.kind != LoadKind::accessory) continue;
                const Force size = weight * *rule.multiple;
                const auto name = fmt::format("{}: {} g", rule.name, print_number(*rule.multiple));
                switch (*rule.direction) {
                    case Direction::forward: add(rule, name, {size, none, weight}); break;
                    case Direction::rearward: add(rule, name, {-size, none, weight}); break;
                    case Direction::sideways:
                        add(rule, name + ", right", {none, size, weight});
                        add(rule, name + ", left", {none, -size, weight});
                        break;
                    case Direction::down: add(rule, name, {none, none, size}); break;
                    case Direction::up: add(rule, name, {none, none, -size}); break;
                }
            }
        }
        keep_worst(joint.cases, out.states.size() > 1 && !std::holds_alternative<BracketFile>(written));
        out.joints.push_back(std::move(joint));
    }
}

void TrailerResolver::warnings() {
    for (const auto& state : out.states) {
        const auto share = state.body.nose_share();
        const auto told = [&](const std::string& what) { out.warnings.push_back(out.states.size() > 1 ? state.name + ": " + what : what); };
        if (share < 0.0)
            told(fmt::format("the nose load is {}: the trailer lifts the coupling", print(Value(state.body.nose_load()))));
        else if (share < 0.05 || share > 0.15)
            told(fmt::format("the nose load is {:.1f} % of the weight; between 5 and 15 % is usual", 100 * share));
        const auto mass = state.body.nose_mass();
        if (mass > min(state.body.mass * 0.1 * (1.0 + 1e-9), kg(1000)))
            told(fmt::format("the nose load of {} is more than a tenth of the mass or 1000 kg: beyond what counts as a centre-axle trailer",
                             print(Value(mass))));
    }
    for (const auto& each : out.coupling) {
        if (!each.motion) continue;
        const auto wheels = wheel_loads(out.state_of(each).body, *each.motion);
        if (min(wheels.left, wheels.right) < newton(0))
            out.warnings.push_back(
                fmt::format("{}; {}: a wheel would have to pull on the ground, so the trailer tips over before: its loads hold "
                            "no more",
                            each.name, each.state));
    }
    if (file.brakes.kind == BrakeKind::none && file.mass > kg(750))
        out.warnings.push_back("no brakes at more than 750 kg: most rules ask for them");
}

}  // namespace

std::optional<TrailerLoads> read_trailer(const std::string& text, const std::string& file, const Tables& tables, Diagnostics& diagnostics) {
    const auto before = diagnostics.count();
    const auto root = parse_toml(text, file, diagnostics);
    if (!root) return std::nullopt;
    TrailerFile written;
    std::vector<DefaultTaken> defaults;
    read_node(*root, Path{}, written, ReadContext{diagnostics, &defaults});
    TrailerResolver r{written, *root, tables, diagnostics, {}};
    r.out.defaults = std::move(defaults);
    if (!written.road.empty()) r.road();
    if (diagnostics.count() != before) return std::nullopt;
    r.out.title = written.title;
    r.out.towing_vehicle = written.towing_vehicle.mass;
    r.out.greatest_mass = written.mass;
    r.out.brakes = written.brakes.kind;
    r.out.leg_share = written.leg_share;
    r.names();
    r.states();
    if (diagnostics.count() != before) return std::nullopt;
    r.coupling();
    r.joints();
    r.warnings();
    return std::move(r.out);
}

}  // namespace faywright
