// SPDX-License-Identifier: MIT
#pragma once

#include "loads/trailer_body.hpp"

namespace faywright {

/// Push at the coupling when the trailer, reversed at a speed v, meets a kerb: H = v √(k m_r), m_r = T R / (T + R), where the
/// stiffness k is that of tyres and chassis together. Energy of two masses and one spring (practice).
[[nodiscard]] inline Force kerb_push(Mass towing_vehicle, Mass trailer, Speed speed, Stiffness stiffness) {
    const Mass reduced = towing_vehicle * (trailer / (towing_vehicle + trailer));
    return speed * sqrt(stiffness * reduced);
}

}  // namespace faywright
