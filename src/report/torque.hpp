// SPDX-License-Identifier: MIT
#pragma once

#include "assess/torque_table.hpp"

#include <string>

namespace faywright {

[[nodiscard]] std::string torque_text(const TorqueAnswer& answer);
[[nodiscard]] std::string torque_json(const TorqueAnswer& answer);

}  // namespace faywright
