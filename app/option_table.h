// Every command and option as plain rows: --help, the manual page and the completions of the shells are made from them.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace hammerline::app {

struct OptionRow {
    std::string name;  // "--pass", or "BOOK" for what stands by its place
    std::string value; // what follows an option: "FILE", "N"; empty for a switch
    std::string help;
    std::vector<std::string> choices;
    bool byPlace = false, required = false, isFile = false;
    bool many = false; // by place: as many as are typed
    enum class Kind { text, whole, decimal } kind = Kind::text;
    std::optional<std::pair<double, double>> range; // of a number, both ends inside
};

struct CommandRow {
    std::string name, help;
    std::vector<OptionRow> options; // by place first, in their order
};

using OptionTable = std::vector<CommandRow>;

const CommandRow* find(const OptionTable&, std::string_view command);
const OptionRow* find(const CommandRow&, std::string_view option);

/// An example line a command, without "hammerline"; empty for a name that is none.
std::string_view exampleOf(std::string_view command);

std::string helpText(const OptionTable&);
std::string helpText(const CommandRow&);
/// roff, for man(1).
std::string manualPage(const OptionTable&);
/// For "bash", "zsh" or "fish"; empty for another shell.
std::string completion(const OptionTable&, std::string_view shell);

/// The known word that was probably meant, empty where none is near.
std::string nearest(std::string_view typed, const std::vector<std::string>& known);

} // namespace hammerline::app
