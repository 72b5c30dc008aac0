// Completions for the shells, from the rows that --help reads and the catalogues of core.
#include "app/option_table.h"
#include "core/piano/dimension.h"
#include "core/survey/survey.h"

#include <algorithm>

namespace hammerline::app {
namespace {

using Words = std::vector<std::string>;

std::string joined(const Words& words) {
    std::string out;
    for (const std::string& each : words)
        out += (out.empty() ? "" : " ") + each;
    return out;
}

Words dimensionWords() {
    Words out;
    for (const Dimension& each : dimensions())
        out.emplace_back(each.key);
    return out;
}

/// What may stand for this option besides a file: its choices, or the dimensions.
Words valuesOf(const OptionRow& option) {
    const bool ofDimension = option.name == "DIMENSION" || option.name == "--dimension";
    return ofDimension ? dimensionWords() : option.choices;
}

Words commandNames(const OptionTable& table) {
    Words out;
    for (const CommandRow& each : table)
        out.push_back(each.name);
    out.emplace_back("help");
    return out;
}

std::string shellQuoted(std::string_view text) {
    std::string out = "'";
    for (const char c : text)
        out += c == '\'' ? std::string("'\\''") : std::string(1, c);
    return out + "'";
}

std::string bash(const OptionTable& table) {
    std::string out = "# bash completion for hammerline; made by: hammerline completion bash\n"
                      "_hammerline() {\n"
                      "    local cur=${COMP_WORDS[COMP_CWORD]} prev=${COMP_WORDS[COMP_CWORD-1]} words= files=1\n"
                      "    COMPREPLY=()\n"
                      "    if [ \"$COMP_CWORD\" = 1 ]; then\n"
                      "        words=" +
                      shellQuoted(joined(commandNames(table)) + " --help --version") +
                      "\n    else\n        case \"${COMP_WORDS[1]} $prev\" in\n"
                      "        help\\ *) words=" +
                      shellQuoted(joined(commandNames(table))) + " files= ;;\n";
    for (const CommandRow& command : table)
        for (const OptionRow& each : command.options) {
            if (each.byPlace || each.value.empty()) continue;
            const Words values = valuesOf(each);
            if (values.empty() && each.isFile) continue;
            out += "        " + command.name + "\\ " + each.name + ") words=" + shellQuoted(joined(values)) +
                   " files= ;;\n";
        }
    out += "        *)\n            case \"${COMP_WORDS[1]}\" in\n";
    for (const CommandRow& command : table) {
        Words words{"--help"};
        for (const OptionRow& each : command.options) {
            const Words values = each.byPlace ? valuesOf(each) : Words{each.name};
            words.insert(words.end(), values.begin(), values.end());
        }
        out += "            " + command.name + ") words=" + shellQuoted(joined(words)) + " ;;\n";
    }
    out += "            esac\n            ;;\n        esac\n    fi\n"
           "    mapfile -t COMPREPLY < <(compgen -W \"$words\" -- \"$cur\")\n"
           "    [ -n \"$files\" ] && [ \"${cur#-}\" = \"$cur\" ] && compopt -o default 2>/dev/null\n"
           "    return 0\n}\ncomplete -F _hammerline hammerline\n";
    return out;
}

std::string fish(const OptionTable& table) {
    std::string out = "# fish completion for hammerline; made by: hammerline completion fish\n";
    for (const CommandRow& command : table) {
        out += "complete -c hammerline -n __fish_use_subcommand -a " + command.name + " -d " +
               shellQuoted(command.help) + "\n";
        const std::string in = "complete -c hammerline -n '__fish_seen_subcommand_from " + command.name + "' ";
        for (const OptionRow& each : command.options) {
            const std::string values = joined(valuesOf(each));
            if (each.byPlace) {
                if (!values.empty()) out += in + "-a " + shellQuoted(values) + "\n";
                continue;
            }
            out += in + "-l " + each.name.substr(2) + " -d " + shellQuoted(each.help);
            if (!each.value.empty()) out += each.isFile ? " -r" : " -x";
            if (!values.empty()) out += " -a " + shellQuoted(values);
            out += "\n";
        }
    }
    return out;
}

/// zsh's own quoting inside [...] and :...: .
std::string ofZsh(std::string_view text) {
    std::string out;
    for (const char c : text) {
        if (c == '[' || c == ']' || c == ':' || c == '\\') out += '\\';
        out += c;
    }
    return out;
}

std::string zsh(const OptionTable& table) {
    std::string out = "#compdef hammerline\n# made by: hammerline completion zsh\n"
                      "_hammerline() {\n  local -a commands\n  commands=(\n";
    for (const CommandRow& each : table)
        out += "    " + shellQuoted(ofZsh(each.name) + ':' + each.help) + "\n";
    out += "  )\n  if (( CURRENT == 2 )); then\n    _describe command commands\n    _files -g '*.hammerline'\n"
           "    return\n  fi\n  local command=$words[2]\n  shift words\n  (( CURRENT-- ))\n  case $command in\n";
    for (const CommandRow& command : table) {
        out += "  " + command.name + ")\n    _arguments";
        for (const OptionRow& each : command.options) {
            const std::string values = joined(valuesOf(each));
            const std::string what = values.empty() ? (each.isFile ? "_files" : " ") : '(' + values + ')';
            std::string spec = each.byPlace ? std::string(each.required ? ":" : "::") + ofZsh(each.name) + ':' + what
                                            : "*" + each.name + '[' + ofZsh(each.help) + ']';
            if (!each.byPlace && !each.value.empty()) spec += ':' + ofZsh(each.value) + ':' + what;
            out += " \\\n      " + shellQuoted(spec);
        }
        out += "\n    ;;\n";
    }
    return out + "  esac\n}\n_hammerline \"$@\"\n";
}

} // namespace

std::string completion(const OptionTable& table, std::string_view shell) {
    return shell == "bash" ? bash(table) : shell == "fish" ? fish(table) : shell == "zsh" ? zsh(table) : std::string{};
}

} // namespace hammerline::app
