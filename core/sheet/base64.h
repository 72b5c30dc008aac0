// Base 64 (RFC 4648, section 4): bytes of pictures in JSON and HTML.
#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace hammerline {

std::string toBase64(std::string_view bytes);
/// None where it is no base 64: another character, a wrong length, padding in the middle.
std::optional<std::string> fromBase64(std::string_view text);

} // namespace hammerline
