// SPDX-License-Identifier: MIT
#include "assess/state.hpp"

#include <string>

namespace faywright {

/// How a load case reaches the bolts: moments at the pattern's centroid, then each bolt's share.
void derive_bolt(const State& s, int load_case, int only_bolt, Recorder& steps) {
    const auto& joint = *s.joint;
    const auto& l = s.load_case(load_case);
    const auto turning = s.turning[static_cast<std::size_t>(load_case)];
    const bool heel = turning == Turning::heel;
    steps.heading("Load case \"" + l.name + "\" at the centroid of the bolts" +
                      (heel ? ", its tilting moment taken about the heel of the contact" : ""),
                  BoltGroupOutOfPlane::source(heel ? Pivot::heel : Pivot::centroid));
    FAYWRIGHT_STATED(F_x, "load along x", l.force_x);
    FAYWRIGHT_STATED(F_y, "load along y", l.force_y);
    FAYWRIGHT_STATED(F_z, "load along z, positive pulls the parts apart", l.force_z);
    FAYWRIGHT_STATED(m_x, "moment of the load about x", l.moment_x);
    FAYWRIGHT_STATED(m_y, "moment of the load about y", l.moment_y);
    FAYWRIGHT_STATED(m_z, "moment of the load about z", l.moment_z);
    FAYWRIGHT_STATED(a_x, "from the centroid to the load, along x", l.at_x - s.pattern.centroid.x);
    FAYWRIGHT_STATED(a_y, "from the centroid to the load, along y", l.at_y - s.pattern.centroid.y);
    FAYWRIGHT_STATED(a_z, "from the faying plane to the load, along z", l.at_z);
    FAYWRIGHT_STEP(M_x, m_x + a_y * F_z - a_z * F_y);
    FAYWRIGHT_STEP(M_y, m_y + a_z * F_x - a_x * F_z);
    FAYWRIGHT_STEP(M_z, m_z + a_x * F_y - a_y * F_x);
    FAYWRIGHT_STATED(n, "bolts", static_cast<double>(joint.positions.size()));
    FAYWRIGHT_STATED(I_xx, "Σx² about the centroid", s.pattern.xx);
    FAYWRIGHT_STATED(I_yy, "Σy² about the centroid", s.pattern.yy);
    FAYWRIGHT_STATED(I_xy, "Σxy about the centroid", s.pattern.xy);
    const bool plain = !heel && !s.pattern.is_line() && !s.pattern.is_point();
    const bool in_x_line = !heel && s.pattern.is_line() && s.pattern.yy < squared(um(1)) && !s.pattern.is_point();
    for (int bolt = 0; bolt < static_cast<int>(joint.positions.size()); ++bolt) {
        if (only_bolt >= 0 && bolt != only_bolt) continue;
        const auto& load = s.load(load_case, bolt);
        steps.heading("Bolt " + std::to_string(bolt + 1), BoltGroupInPlane::formula.source);
        FAYWRIGHT_STATED(x, "from the centroid, along x", joint.positions[static_cast<std::size_t>(bolt)].x - s.pattern.centroid.x);
        FAYWRIGHT_STATED(y, "from the centroid, along y", joint.positions[static_cast<std::size_t>(bolt)].y - s.pattern.centroid.y);
        if (s.pattern.is_point()) {
            FAYWRIGHT_STEP(V_x, F_x / n);
            FAYWRIGHT_STEP(V_y, F_y / n);
            FAYWRIGHT_STEP(V, sqrt(squared(V_x) + squared(V_y)));
            static_cast<void>(V);
        } else {
            FAYWRIGHT_STEP(V_x, F_x / n - M_z * y / (I_xx + I_yy));
            FAYWRIGHT_STEP(V_y, F_y / n + M_z * x / (I_xx + I_yy));
            FAYWRIGHT_STEP(V, sqrt(squared(V_x) + squared(V_y)));
            static_cast<void>(V);
        }
        if (plain) {
            FAYWRIGHT_STEP(T, F_z / n + (M_x * I_xx + M_y * I_xy) / (I_xx * I_yy - squared(I_xy)) * y -
                                  (M_y * I_yy + M_x * I_xy) / (I_xx * I_yy - squared(I_xy)) * x);
            static_cast<void>(T);
        } else if (in_x_line) {
            FAYWRIGHT_STEP(T, F_z / n - M_y * x / I_xx);
            static_cast<void>(T);
        } else {
            FAYWRIGHT_STATED(T,
                             heel ? "pull: F_z/n and the moments over Σa², a the arm from the heel on the other side; none below nothing"
                                  : "pull: F_z/n and the moment across the bolts' line over Σr²; none below nothing",
                             l.swings() ? load.tension : load.tension - load.press);
            static_cast<void>(T);
        }
        if (l.swings()) {
            FAYWRIGHT_STATED(T_most, "the greatest pull on it, as the load swings to its opposite", load.tension);
            static_cast<void>(T_most);
        }
    }
}

}  // namespace faywright
