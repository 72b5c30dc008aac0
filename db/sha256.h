// SHA-256 (FIPS 180-4): pictures are named by it, so that the same one is kept once, whichever book it comes from.
#pragma once

#include <string>
#include <string_view>

namespace hammerline {

/// 64 hexadecimal digits, small letters.
std::string sha256(std::string_view bytes);

} // namespace hammerline
