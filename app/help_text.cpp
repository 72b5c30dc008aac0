// --help: what it is, how it is called, one example, every option with a word, aligned.
#include "app/option_table.h"

#include <algorithm>

namespace hammerline::app {
namespace {

constexpr std::size_t kWidth = 100;

std::string nameOf(const OptionRow& option) {
    return option.value.empty() ? option.name : option.name + ' ' + option.value;
}

/// `name` in a column, `text` beside it, broken at spaces.
void line(std::string& out, const std::string& name, const std::string& text, std::size_t column) {
    std::string head = "  " + name;
    head.resize(std::max(column, head.size() + 2), ' ');
    std::size_t used = head.size();
    out += head;
    std::size_t at = 0;
    while (at < text.size()) {
        const std::size_t end = std::min(text.find(' ', at), text.size());
        const bool full = used + (end - at) > kWidth && used > column;
        if (full) {
            out += '\n' + std::string(column, ' ');
            used = column;
        } else if (at > 0) {
            out += ' ';
            ++used;
        }
        out += text.substr(at, end - at);
        used += end - at;
        at = end + 1;
    }
    out += '\n';
}

std::string usage(const CommandRow& command) {
    std::string out = "hammerline " + command.name;
    for (const OptionRow& each : command.options)
        if (each.byPlace) out += each.required ? ' ' + each.name : " [" + each.name + ']';
    for (const OptionRow& each : command.options)
        if (!each.byPlace && each.required) out += ' ' + nameOf(each);
    return out + " [options]";
}

std::string withChoices(const OptionRow& option) {
    std::string out = option.help;
    for (const std::string& each : option.choices)
        if (out.find(each) == std::string::npos) return out + " (" + option.choices.front() + " ... )";
    return out;
}

} // namespace

std::string helpText(const CommandRow& command) {
    std::string out = "hammerline " + command.name + ": " + command.help + "\n\nUsage:\n  " + usage(command) + "\n";
    if (const auto example = exampleOf(command.name); !example.empty())
        out += "\nExample:\n  hammerline " + std::string(example) + "\n";
    std::size_t column = 0;
    for (const OptionRow& each : command.options)
        column = std::max(column, std::min<std::size_t>(nameOf(each).size() + 4, 28));
    out += "\nOptions:\n";
    for (const OptionRow& each : command.options)
        line(out, nameOf(each), withChoices(each), column);
    line(out, "-h, --help", "this text", column);
    return out;
}

std::string helpText(const OptionTable& table) {
    std::string out = "Hammerline: a bench book and the arithmetic of regulating piano actions.\n\n"
                      "Usage:\n"
                      "  hammerline                    open the window\n"
                      "  hammerline FILE               open the window on a bench book\n"
                      "  hammerline COMMAND ...        do one thing and end\n"
                      "  hammerline help COMMAND       the options of a command\n\nCommands:\n";
    for (const CommandRow& each : table)
        line(out, each.name, each.help, 13);
    out += "\nOptions:\n";
    line(out, "-h, --help", "this text", 18);
    line(out, "-V, --version", "the version", 18);
    line(out, "--json", "with a command: one JSON object on standard output", 18);
    line(out, "--quiet", "with a command: results and refusals only, no cautions and remarks", 18);
    out += "\nExample:\n  hammerline check hall.hammerline\n\n"
           "Exit status: 0 done and nothing outside; 1 done and something outside, open or questionable;\n"
           "2 refused, nothing changed.\n";
    return out;
}

} // namespace hammerline::app
