// SPDX-License-Identifier: MIT
#pragma once

#include "quantity/field.hpp"

namespace faywright {

/// The code of practice whose rule a resistance follows, where codes differ.
enum class DesignMethod { en_1993, en_1999, adm, as_4100 };

template <>
struct Words<DesignMethod> {
    static constexpr std::array<std::pair<DesignMethod, std::string_view>, 4> all{{
        {DesignMethod::en_1993, "EN 1993-1-8"},
        {DesignMethod::en_1999, "EN 1999-1-1"},
        {DesignMethod::adm, "Aluminum Design Manual"},
        {DesignMethod::as_4100, "AS 4100"},
    }};
};

}  // namespace faywright
