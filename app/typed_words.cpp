#include "app/typed_words.h"

#include "app/wrong_words.h"

#include <QCoreApplication>
#include <QString>

#include <algorithm>
#include <array>
#include <filesystem>

namespace hammerline::app {
namespace {

constexpr char kGuard = '\x01';

std::string sentence(const char* text, const std::string& first, const std::string& second = {}) {
    const QString out = QCoreApplication::translate("usage", text).arg(QString::fromStdString(first));
    return second.empty() ? out.toStdString() : out.arg(QString::fromStdString(second)).toStdString();
}

std::string meant(const std::string& typed, const std::vector<std::string>& known) {
    const std::string near = nearest(typed, known);
    return near.empty() ? std::string{} : ' ' + sentence(QT_TRANSLATE_NOOP("usage", "Did you mean %1?"), near);
}

std::vector<std::string> namesOf(const OptionTable& table) {
    std::vector<std::string> out;
    for (const CommandRow& each : table)
        out.push_back(each.name);
    return out;
}

std::string unknownCommand(const std::string& word, const OptionTable& table) {
    return sentence(QT_TRANSLATE_NOOP("usage", "%1 is no command and no file."), word) + meant(word, namesOf(table)) +
           ' ' + QCoreApplication::translate("usage", "See: hammerline --help").toStdString();
}

/// The sentence for the first option that the command does not have; empty where all are known.
std::string unknownOption(const std::vector<std::string>& words, const CommandRow& command) {
    for (std::size_t i = 1; i < words.size() && words[i] != "--"; ++i) {
        const std::string name = words[i].substr(0, words[i].find('='));
        const bool byPlace = !name.starts_with('-') || name.size() == 1 || isNegativeNumber(name);
        if (byPlace) continue;
        if (const OptionRow* option = find(command, name)) {
            const bool valueFollows = !option->value.empty() && words[i].size() == name.size();
            if (valueFollows) ++i;
            continue;
        }
        std::vector<std::string> known;
        for (const OptionRow& each : command.options)
            if (!each.byPlace) known.push_back(each.name);
        return sentence(QT_TRANSLATE_NOOP("usage", "%1 has no option %2."), command.name, name) + meant(name, known) +
               seeHelp(words);
    }
    return {};
}

/// What a lone first word asks for that is no command; nothing where it asks for nothing of the kind.
std::optional<std::string> answerTo(const std::vector<std::string>& typed, const OptionTable& table) {
    const std::string& first = typed.front();
    if (first == "-V" || first == "--version" || first == "version")
        return std::string("hammerline ") + HAMMERLINE_VERSION + '\n';
    const std::string second = typed.size() > 1 ? typed[1] : std::string{};
    if (first == "manual") return manualPage(table);
    if (first == "completion") {
        std::string script = completion(table, second);
        if (!script.empty()) return script;
    }
    const bool helped = first == "-h" || first == "--help" || first == "help";
    if (helped && (second.empty() || !find(table, second)))
        return second.empty() ? helpText(table) : std::optional<std::string>{};
    return helped ? std::optional(helpText(*find(table, second))) : std::nullopt;
}

bool asksForHelp(const std::vector<std::string>& typed) {
    const auto end = std::ranges::find(typed, "--");
    return std::any_of(typed.begin(), end, [](const std::string& each) { return each == "--help" || each == "-h"; });
}

bool looksLikeFile(const std::string& word) {
    std::error_code ignored;
    return word.find('/') != std::string::npos || word.find('.') != std::string::npos ||
           std::filesystem::exists(word, ignored);
}

} // namespace

std::string unguarded(const std::string& text) {
    return !text.empty() && text.front() == kGuard ? text.substr(1) : text;
}

std::string seeHelp(const std::vector<std::string>& words) {
    if (words.empty()) return {};
    return ' ' + sentence(QT_TRANSLATE_NOOP("usage", "See: hammerline help %1"), words.front());
}

TypedWords readTypedWords(const std::vector<std::string>& typed, const OptionTable& table) {
    TypedWords out{typed, {}, {}};
    if (typed.empty()) return out;
    if (auto answer = answerTo(typed, table)) {
        out.answer = std::move(answer);
        return out;
    }
    const std::string& first = typed.front();
    if (first == "help" || first == "completion") {
        const std::string& about = typed.size() > 1 ? typed[1] : first;
        out.refusal = first == "help" ? unknownCommand(about, table)
                                      : sentence(QT_TRANSLATE_NOOP("usage", "%1 takes bash, zsh or fish."), first);
        return out;
    }
    const CommandRow* command = find(table, first);
    if (!command) {
        const bool file = !first.starts_with('-') && looksLikeFile(first);
        if (!file) {
            out.refusal = first.starts_with("--")
                              ? sentence(QT_TRANSLATE_NOOP("usage", "%1 comes after a command."), first) + ' ' +
                                    QCoreApplication::translate("usage", "See: hammerline --help").toStdString()
                              : unknownCommand(first, table);
            return out;
        }
        out.words.insert(out.words.begin(), "window");
        command = find(table, "window");
    }
    if (asksForHelp(typed)) {
        out.answer = helpText(*command);
        return out;
    }
    out.refusal = unknownOption(out.words, *command);
    if (out.refusal.empty()) {
        out.refusal = wrongWords(out.words, *command);
        if (!out.refusal.empty()) out.refusal += seeHelp(out.words);
    }
    acceptDecimalComma(out.words, *command);
    const bool takesNumbers = command->name == "enter" || command->name == "override" || command->name == "tick";
    if (takesNumbers)
        for (auto word = out.words.begin(); word != out.words.end() && *word != "--"; ++word)
            if (isNegativeNumber(*word)) word->insert(word->begin(), kGuard);
    return out;
}

} // namespace hammerline::app
