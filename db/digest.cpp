#include "db/digest.h"

#include <sodium.h>

namespace hammerline {

Digest digestOf(std::string_view bytes) {
    static const int ready = sodium_init(); // chooses the fastest form; without it the plain one is taken
    static_cast<void>(ready);
    Digest digest{};
    crypto_generichash(digest.data(), digest.size(), reinterpret_cast<const unsigned char*>(bytes.data()), bytes.size(),
                       nullptr, 0);
    return digest;
}

std::string digestText(std::string_view bytes) {
    std::string text;
    for (const std::uint8_t each : digestOf(bytes))
        for (const int half : {each >> 4, each & 15})
            text += "0123456789abcdef"[half];
    return text;
}

Canonical& Canonical::operator<<(std::int64_t number) {
    m_bytes += 'i' + std::to_string(number) + ';';
    return *this;
}

Canonical& Canonical::operator<<(std::string_view text) {
    m_bytes += 't' + std::to_string(text.size()) + ':';
    m_bytes += text;
    return *this;
}

Canonical& Canonical::operator<<(const Digest& digest) {
    m_bytes += 'd';
    m_bytes.append(digest.begin(), digest.end());
    return *this;
}

void DigestSum::add(const Digest& digest) {
    for (std::size_t lane = 0; lane < m_lanes.size(); ++lane) {
        std::uint64_t value = 0;
        for (std::size_t i = 0; i < 8; ++i) // the same on every machine
            value |= static_cast<std::uint64_t>(digest[8 * lane + i]) << (8 * i);
        m_lanes[lane] += value;
    }
    ++m_count;
}

void DigestSum::tell(Canonical& to) const {
    to << m_count;
    for (const std::uint64_t lane : m_lanes)
        to << static_cast<std::int64_t>(lane);
}

} // namespace hammerline
