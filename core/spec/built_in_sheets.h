// The sheets of resources/spec as text, in a unit that the build writes from the JSON files.
#pragma once

#include <span>
#include <string_view>

namespace hammerline {

struct SheetText {
    std::string_view name; // file name without .json
    std::string_view json;
};
std::span<const SheetText> sheetTexts();

} // namespace hammerline
