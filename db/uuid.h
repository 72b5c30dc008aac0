// Names that are the same in every book: sixteen random bytes.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace hammerline {

using Uuid = std::array<std::uint8_t, 16>;

/// Version 4 of RFC 9562, from the system's random source.
Uuid newUuid();
/// 8-4-4-4-12 lowercase hexadecimal.
std::string text(const Uuid&);
std::optional<Uuid> parseUuid(std::string_view);

} // namespace hammerline
