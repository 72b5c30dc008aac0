#include "app/wrong_words.h"

#include <QCoreApplication>
#include <QString>

#include <algorithm>
#include <cctype>

namespace hammerline::app {
namespace {

using Words = std::vector<std::string>;

QString usageText(const char* text) {
    return QCoreApplication::translate("usage", text);
}

QString ofUtf8(const std::string& text) {
    return QString::fromStdString(text);
}

/// "in or out", "light, dark or none"
QString oneOf(const Words& choices) {
    QString out;
    for (std::size_t i = 0; i < choices.size(); ++i) {
        const bool last = i + 1 == choices.size();
        if (i > 0) out += last ? usageText(QT_TRANSLATE_NOOP("usage", " or ")) : QStringLiteral(", ");
        out += ofUtf8(choices[i]);
    }
    return out;
}

bool isChoice(const QString& value, const Words& choices) {
    return std::ranges::any_of(
        choices, [&value](const std::string& each) { return value.compare(ofUtf8(each), Qt::CaseInsensitive) == 0; });
}

/// What the option takes, for a sentence; empty where the value is right.
QString wantedInstead(const OptionRow& option, const QString& value) {
    if (!option.choices.empty()) return isChoice(value, option.choices) ? QString() : oneOf(option.choices);
    if (option.kind == OptionRow::Kind::text) return {};
    bool right = false;
    double number = 0;
    if (option.kind == OptionRow::Kind::whole)
        number = value.toInt(&right);
    else
        number = QString(value).replace(u',', u'.').toDouble(&right);
    if (!right)
        return option.kind == OptionRow::Kind::whole ? usageText(QT_TRANSLATE_NOOP("usage", "a whole number"))
                                                     : usageText(QT_TRANSLATE_NOOP("usage", "a number"));
    const bool inside = !option.range || (number >= option.range->first && number <= option.range->second);
    if (inside) return {};
    return usageText(QT_TRANSLATE_NOOP("usage", "%1 to %2")).arg(option.range->first).arg(option.range->second);
}

QString needs(const std::string& what, const OptionRow& row) {
    return usageText(QT_TRANSLATE_NOOP("usage", "%1 needs %2: %3."))
        .arg(ofUtf8(what), ofUtf8(row.name), ofUtf8(row.help));
}

/// The words as the library will sort them.
struct Sorted {
    Words byPlace;
    std::vector<std::string> given; // names of options
    QString wrong;
};

void takeOption(const Words& words, std::size_t& i, const CommandRow& command, Sorted& out) {
    const auto equals = words[i].find('=');
    const std::string name = words[i].substr(0, equals);
    const OptionRow* row = find(command, name);
    if (!row) return; // said elsewhere, with the nearest one
    out.given.push_back(name);
    if (row->value.empty()) return;
    std::string value;
    if (equals != std::string::npos) {
        value = words[i].substr(equals + 1);
    } else {
        const bool follows = i + 1 < words.size() && words[i + 1] != "--" && !find(command, words[i + 1]);
        if (!follows) {
            out.wrong =
                usageText(QT_TRANSLATE_NOOP("usage", "%1 needs a value: %2.")).arg(ofUtf8(name), ofUtf8(row->help));
            return;
        }
        value = words[++i];
    }
    const QString instead = wantedInstead(*row, ofUtf8(value));
    if (!instead.isEmpty())
        out.wrong = usageText(QT_TRANSLATE_NOOP("usage", "%1 takes %2; \"%3\" is none."))
                        .arg(ofUtf8(name), instead, ofUtf8(value));
}

Sorted sortWords(const Words& words, const CommandRow& command) {
    Sorted out;
    bool optionsEnded = false;
    for (std::size_t i = 1; i < words.size() && out.wrong.isEmpty(); ++i) {
        const bool option = !optionsEnded && words[i].starts_with("--");
        if (option && words[i] == "--")
            optionsEnded = true;
        else if (option)
            takeOption(words, i, command, out);
        else
            out.byPlace.push_back(words[i]);
    }
    return out;
}

} // namespace

bool isNegativeNumber(const std::string& word) {
    const auto digit = [&word](std::size_t i) {
        return i < word.size() && std::isdigit(static_cast<unsigned char>(word[i])) != 0;
    };
    const bool pointFirst = word.size() > 1 && (word[1] == '.' || word[1] == ',');
    return word.size() > 1 && word[0] == '-' && (digit(1) || (pointFirst && digit(2)));
}

std::string wrongWords(const Words& words, const CommandRow& command) {
    const Sorted sorted = sortWords(words, command);
    if (!sorted.wrong.isEmpty()) return sorted.wrong.toStdString();
    std::size_t places = 0;
    bool many = false;
    for (const OptionRow& row : command.options) {
        if (!row.byPlace) {
            const bool missing = row.required && std::ranges::find(sorted.given, row.name) == sorted.given.end();
            if (missing) return needs(command.name, row).toStdString();
            continue;
        }
        if (row.required && places >= sorted.byPlace.size()) return needs(command.name, row).toStdString();
        many = many || row.many;
        ++places;
    }
    if (many || sorted.byPlace.size() <= places) return {};
    return usageText(
               QT_TRANSLATE_NOOP("usage", "%1 has no place for \"%2\"; a text with blanks stands between quotes."))
        .arg(ofUtf8(command.name), ofUtf8(sorted.byPlace[places]))
        .toStdString();
}

void acceptDecimalComma(Words& words, const CommandRow& command) {
    const auto decimal = [&command](const std::string& name) {
        const OptionRow* row = find(command, name);
        return row && row->kind == OptionRow::Kind::decimal;
    };
    for (std::size_t i = 1; i < words.size() && words[i] != "--"; ++i) {
        const auto equals = words[i].find('=');
        if (!decimal(words[i].substr(0, equals))) continue;
        const bool apart = equals == std::string::npos;
        if (apart && i + 1 < words.size()) ++i;
        std::replace(words[i].begin() + static_cast<std::ptrdiff_t>(apart ? 0 : equals), words[i].end(), ',', '.');
    }
}

} // namespace hammerline::app
