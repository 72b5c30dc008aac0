#include "core/intake/encoding.h"

#include "core/units/code_points.h"

#include <algorithm>
#include <array>

namespace hammerline {
namespace {

/// Windows-1252 from 0x80 to 0x9F (0: not assigned); the rest is Latin-1.
constexpr std::array<char16_t, 32> kWindows1252 = {0x20AC, 0,      0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021,
                                                   0x02C6, 0x2030, 0x0160, 0x2039, 0x0152, 0,      0x017D, 0,
                                                   0,      0x2018, 0x2019, 0x201C, 0x201D, 0x2022, 0x2013, 0x2014,
                                                   0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0,      0x017E, 0x0178};

Outcome<DecodedText> fromUtf16(std::string_view bytes, bool bigEndian) {
    DecodedText decoded;
    decoded.encoding = bigEndian ? "UTF-16BE" : "UTF-16LE";
    bytes.remove_prefix(2);
    const auto unit = [&](std::size_t at) {
        const auto first = static_cast<unsigned char>(bytes[at]);
        const auto second = static_cast<unsigned char>(bytes[at + 1]);
        return static_cast<char32_t>(bigEndian ? (first << 8U) | second : (second << 8U) | first);
    };
    const auto broken = [&] {
        return refuse(RefusalCode::badTable, {}, "half-character", placeOf(decoded.owned, decoded.owned.size()));
    };
    if (bytes.size() % 2 != 0) return broken();
    for (std::size_t at = 0; at < bytes.size(); at += 2) {
        char32_t point = unit(at);
        if (point >= 0xDC00 && point <= 0xDFFF) return broken();
        if (point >= 0xD800 && point <= 0xDBFF) {
            at += 2;
            if (at >= bytes.size() || unit(at) < 0xDC00 || unit(at) > 0xDFFF) return broken();
            point = 0x10000 + ((point - 0xD800) << 10U) + (unit(at) - 0xDC00);
        }
        appendUtf8(decoded.owned, point);
    }
    return decoded;
}

Outcome<DecodedText> fromWindows1252(std::string_view bytes) {
    DecodedText decoded;
    decoded.encoding = "Windows-1252";
    decoded.owned.reserve(bytes.size() + bytes.size() / 8);
    for (const char each : bytes) {
        const auto byte = static_cast<unsigned char>(each);
        const bool upper = byte >= 0x80 && byte <= 0x9F;
        const char32_t point = upper ? kWindows1252.at(byte - 0x80U) : char32_t{byte};
        if (upper && point == 0)
            return refuse(RefusalCode::badTable, {}, "encoding", placeOf(decoded.owned, decoded.owned.size()));
        appendUtf8(decoded.owned, point);
    }
    return decoded;
}

bool isUtf8(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        if (static_cast<unsigned char>(text[at]) < 0x80)
            ++at;
        else if (!nextCodePoint(text, at))
            return false;
    }
    return true;
}

Outcome<DecodedText> decodeBytes(std::string_view bytes) {
    if (bytes.starts_with("\xFF\xFE")) return fromUtf16(bytes, false);
    if (bytes.starts_with("\xFE\xFF")) return fromUtf16(bytes, true);
    const bool mark = bytes.starts_with("\xEF\xBB\xBF");
    if (mark) bytes.remove_prefix(3);
    if (!isUtf8(bytes)) return fromWindows1252(bytes);
    return DecodedText{bytes, {}, mark ? "UTF-8-BOM" : "UTF-8"};
}

} // namespace

Outcome<DecodedText> decodeText(std::string_view bytes) {
    auto decoded = decodeBytes(bytes);
    if (!decoded) return decoded;
    // RFC 4180 leaves control characters out; a zero byte is UTF-16 without its mark, or no text at all
    const auto zero = decoded->view().find('\0');
    if (zero != std::string_view::npos)
        return refuse(RefusalCode::badTable, {}, "zero-byte", placeOf(decoded->view(), zero));
    return decoded;
}

Place placeOf(std::string_view text, std::size_t at) {
    Place place{{}, 1, 1, {}};
    for (std::size_t i = 0; i < std::min(at, text.size()); ++i) {
        const char c = text[i];
        const bool cr = c == '\r' && !(i + 1 < text.size() && text[i + 1] == '\n');
        if (c == '\n' || cr) {
            ++place.line;
            place.column = 1;
        } else if ((static_cast<unsigned char>(c) & 0xC0U) != 0x80U) {
            ++place.column;
        }
    }
    return place;
}

} // namespace hammerline
