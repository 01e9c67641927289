// SPDX-License-Identifier: MIT
// Any bytes as a value with a unit: an error phrase or a finite value.
#include "quantity/text.hpp"

#include <cmath>
#include <cstdlib>

extern "C" int LLVMFuzzerTestOneInput(const unsigned char* data, std::size_t size) {
    using namespace faywright;
    const std::string_view text(reinterpret_cast<const char*>(data), size);
    for (const auto& wanted : {dimension_of<Length>, dimension_of<Force>, dimension_of<Moment>, dimension_of<Temperature>,
                               dimension_of<TemperatureDifference>, dimension_of<double>}) {
        const auto value = read_value(text, wanted);
        if (value ? !std::isfinite(value->si()) : value.error().empty()) std::abort();
    }
    return 0;
}
