// Bytes of a file as UTF-8 text.
#pragma once

#include "core/refusal/refusal.h"

namespace hammerline {

struct DecodedText {
    std::string_view text; // without a byte order mark; of the bytes themselves where they are UTF-8
    std::string owned;     // else of this
    std::string encoding;  // as Dialect::encoding

    std::string_view view() const { return owned.empty() ? text : std::string_view{owned}; }
};

/// UTF-8 with or without mark, UTF-16 with mark, else Windows-1252 (the text of old spreadsheets). Refuses badTable
/// with line and column: a zero byte, half a UTF-16 character, a byte that Windows-1252 does not have.
Outcome<DecodedText> decodeText(std::string_view bytes);

/// Line and column (both from 1, in characters) of a byte of UTF-8 text.
Place placeOf(std::string_view text, std::size_t at);

} // namespace hammerline
