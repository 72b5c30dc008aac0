// What stands on what: a piano, pass or plan that was taken back must not leave the rows under it out of sight.
#pragma once

#include "db/subjects.h"

#include <string>
#include <vector>

namespace hammerline {

/// "EXISTS (...)": a row x of the table holds (or disputes) under the condition.
std::string isCurrent(std::string_view table, std::string_view condition);

struct Ground {
    std::string_view versions; // its subject, with a key of one column
    std::string_view key;
    std::string carries; // a condition on v, a version: something current stands on it
};
/// From the plan down to the piano: what is brought back first may stand on what comes after it.
const std::vector<Ground>& grounds();

} // namespace hammerline
