// Reading and writing the values of the set-up's attributes: rows with a form of their own.
#pragma once

#include "core/piano/piano.h"

#include <span>

namespace hammerline::attribute {

struct Form {
    std::string_view name, form;
    Outcome<void> (*set)(Piano&, std::string_view name, std::string_view form, std::string_view value);
    std::string (*get)(const Piano&); // empty: as is customary
};

/// In an order in which setting all of them gives a piano back.
std::span<const Form> forms();

Outcome<void> bad(std::string_view name, std::string_view value, std::string_view allowed);
std::vector<std::string_view> split(std::string_view text, char at);
/// A number above 0.
std::optional<double> positiveNumber(std::string_view text);

} // namespace hammerline::attribute
