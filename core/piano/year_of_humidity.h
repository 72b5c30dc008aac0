// The driest and the dampest month of a room, as it is said of a piano.
#pragma once

#include "core/refusal/refusal.h"

#include <map>
#include <optional>
#include <string>

namespace hammerline {

/// Per cent of relative humidity.
struct YearOfHumidity {
    double low{}, high{};
};

/// "35-70" or "35,5-70". Refuses usage: not two numbers from 0 to 100, the lower first.
Outcome<YearOfHumidity> parseYearOfHumidity(std::string_view);
/// What the settings of the job say ("yearly-humidity"); none where nothing is said.
std::optional<YearOfHumidity> yearOfHumidity(const std::map<std::string, std::string>& preferences);

} // namespace hammerline
