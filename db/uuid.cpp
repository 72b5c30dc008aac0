#include "db/uuid.h"

#include <fmt/format.h>

#include <charconv>
#include <random>

namespace hammerline {

Uuid newUuid() {
    std::random_device source;
    Uuid uuid{};
    for (std::size_t i = 0; i < uuid.size(); i += 4) {
        const std::uint32_t word = source();
        for (std::size_t k = 0; k < 4; ++k)
            uuid[i + k] = static_cast<std::uint8_t>(word >> (8 * k));
    }
    uuid[6] = static_cast<std::uint8_t>((uuid[6] & 0x0f) | 0x40); // version 4
    uuid[8] = static_cast<std::uint8_t>((uuid[8] & 0x3f) | 0x80); // variant of RFC 9562
    return uuid;
}

std::string text(const Uuid& uuid) {
    std::string out;
    for (std::size_t i = 0; i < uuid.size(); ++i) {
        if (i == 4 || i == 6 || i == 8 || i == 10) out += '-';
        out += fmt::format("{:02x}", uuid[i]);
    }
    return out;
}

std::optional<Uuid> parseUuid(std::string_view typed) {
    std::string digits;
    for (const char c : typed)
        if (c != '-') digits += c;
    if (digits.size() != 32) return std::nullopt;
    Uuid uuid{};
    for (std::size_t i = 0; i < uuid.size(); ++i) {
        const char* from = digits.data() + 2 * i;
        const auto [end, error] = std::from_chars(from, from + 2, uuid[i], 16);
        if (error != std::errc{} || end != from + 2) return std::nullopt;
    }
    return uuid;
}

} // namespace hammerline
