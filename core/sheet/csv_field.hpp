// How every table of text is written: quoted where the form needs it (RFC 4180), nothing that a spreadsheet would run.
#pragma once

#include <string>
#include <string_view>

namespace hammerline::sheet {

/// A spreadsheet runs a cell that begins with one of these as a formula; a number may begin with its sign.
inline bool runsAsFormula(std::string_view text) {
    const auto begin = text.find_first_not_of('\'');
    if (begin == std::string_view::npos || std::string_view("=+-@\t\r").find(text[begin]) == std::string_view::npos)
        return false;
    if (begin > 0) return true; // one apostrophe goes when it is read back: it must not be the text's own
    const bool sign = text.front() == '-' || text.front() == '+';
    return !sign || text.size() == 1 || text.find_first_not_of(".,0123456789/ ", 1) != std::string_view::npos;
}

/// A formula gets an apostrophe before it, which the import takes off again.
inline std::string csvField(std::string_view text) {
    std::string out;
    if (runsAsFormula(text)) out = "'";
    out += text;
    if (out.find_first_of(";\"\r\n") == std::string::npos && (out.empty() || (out.front() != ' ' && out.back() != ' ')))
        return out;
    std::string quoted = "\"";
    for (const char c : out)
        quoted += c == '"' ? std::string("\"\"") : std::string(1, c);
    return quoted + '"';
}

template <class Fields>
void csvLine(std::string& out, const Fields& fields) {
    bool first = true;
    for (const std::string& each : fields) {
        if (!first) out += ';';
        out += csvField(each);
        first = false;
    }
    out += "\r\n";
}

inline constexpr std::string_view kByteOrderMark = "\xEF\xBB\xBF";

} // namespace hammerline::sheet
