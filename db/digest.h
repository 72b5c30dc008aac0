// A short proof of content: BLAKE2b with 256 bits (RFC 7693), from libsodium.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

namespace hammerline {

using Digest = std::array<std::uint8_t, 32>;

Digest digestOf(std::string_view bytes);
/// The same as 64 hexadecimal digits, small letters.
std::string digestText(std::string_view bytes);

/// Bytes from which they can be told apart again: each value with its kind and length.
class Canonical {
public:
    Canonical& operator<<(std::int64_t number);
    Canonical& operator<<(std::string_view text);
    Canonical& operator<<(const char* text) { return *this << std::string_view(text); }
    Canonical& operator<<(const Digest&);
    void clear() { m_bytes.clear(); }
    Digest digest() const { return digestOf(m_bytes); }

private:
    std::string m_bytes;
};

/// The digests of rows, in whatever order they come: four lanes of 64 bits, each summed modulo 2^64, and their count.
class DigestSum {
public:
    void add(const Digest&);
    void clear() { m_lanes = {}, m_count = 0; }
    void tell(Canonical&) const;

private:
    std::array<std::uint64_t, 4> m_lanes{};
    std::int64_t m_count = 0;
};

} // namespace hammerline
