// How every table of text is written: quoted where the form needs it (RFC 4180), nothing that a spreadsheet would run.
#pragma once

#include <string>
#include <string_view>

namespace hammerline::sheet {

/// A text that a spreadsheet would run as a formula gets an apostrophe before it; numbers keep their minus.
inline std::string csvField(std::string_view text) {
    std::string out;
    const bool number = !text.empty() && text.find_first_not_of("+-.,0123456789/ ") == std::string_view::npos;
    if (!text.empty() && !number && std::string_view("=+-@\t\r").find(text.front()) != std::string_view::npos)
        out = "'";
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
