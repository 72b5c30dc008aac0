// The manual page, from the rows that --help reads.
#include "app/option_table.h"

namespace hammerline::app {
namespace {

/// Text that roff takes literally: no line may begin with a point or a quote, a hyphen stays a hyphen.
std::string literal(std::string_view text) {
    std::string out;
    for (const char c : text) {
        if (c == '\\') {
            out += "\\e";
        } else if (c == '-') {
            out += "\\-";
        } else {
            if ((c == '.' || c == '\'') && (out.empty() || out.back() == '\n')) out += "\\&";
            out += c;
        }
    }
    return out;
}

std::string item(const std::string& head, const std::string& text) {
    return ".TP\n" + head + "\n" + literal(text) + "\n";
}

std::string headOf(const OptionRow& option) {
    if (option.byPlace) return ".I " + literal(option.name);
    if (option.value.empty()) return ".B " + literal(option.name);
    return ".BI " + literal(option.name) + " \" " + literal(option.value) + '"';
}

} // namespace

std::string manualPage(const OptionTable& table) {
    std::string out =
        ".TH HAMMERLINE 1 \"\" \"hammerline " HAMMERLINE_VERSION "\" \"User Commands\"\n"
        ".SH NAME\nhammerline \\- bench book and arithmetic of regulating piano actions\n"
        ".SH SYNOPSIS\n.B hammerline\n.RI [ FILE ]\n.br\n.B hammerline\n.I COMMAND\n.RI [ options ]\n"
        ".SH DESCRIPTION\n"
        "Without a command the window opens, on\n.I FILE\nwhere one is named (a bench book, .hammerline).\n"
        "With a command the same functions do one thing and end. "
        "Results go to standard output, questions and refusals to standard error.\n"
        ".SH OPTIONS\n";
    out += item(".BR \\-h \", \" \\-\\-help", "the commands, or with a command its options");
    out += item(".BR \\-V \", \" \\-\\-version", "the version");
    out += item(".B \\-\\-json", "with a command: print one JSON object");
    out += item(".B \\-\\-quiet", "with a command: results and refusals only, no cautions and remarks");
    out += ".SH COMMANDS\n";
    for (const CommandRow& command : table) {
        out += ".SS " + literal(command.name) + "\n" + literal(command.help) + ".\n";
        for (const OptionRow& each : command.options)
            if (each.name != "--json" && each.name != "--quiet") out += item(headOf(each), each.help);
        if (const auto example = exampleOf(command.name); !example.empty())
            out += ".PP\nExample:\n.PP\n.nf\n.RS\nhammerline " + literal(example) + "\n.RE\n.fi\n";
    }
    out += ".SH EXIT STATUS\n" + item(".B 0", "done and nothing outside") +
           item(".B 1", "done, and something is outside, open or questionable") +
           item(".B 2", "refused, nothing changed; or the output was lost");
    out += ".SH ENVIRONMENT\n.TP\n.B NO_COLOR\nnothing is ever coloured; the variable is respected by that\n";
    out += ".SH FILES\n.TP\n.I *.hammerline\na bench book: an SQLite file whose application id is 0x484C424B\n";
    return out;
}

} // namespace hammerline::app
