#include "ui/stations/survey_letters.h"

#include "core/survey/filing.h"

#include <QString>

#include <algorithm>

namespace hammerline {

namespace {

const QString kKept = QStringLiteral("YMW");

/// The first letter of the fault that is still free: its initials first, then the rest of it, then the alphabet.
QChar freeLetter(std::string_view fault, const QString& taken) {
    QString wanted;
    for (std::size_t i = 0; i < fault.size(); ++i)
        if (i == 0 || fault[i - 1] == '-') wanted += QLatin1Char(fault[i]);
    for (const char c : fault)
        if (c != '-') wanted += QLatin1Char(c);
    wanted += QStringLiteral("abcdefghijklnopqrstuvxz");
    for (const QChar c : wanted)
        if (const QChar letter = c.toUpper(); !taken.contains(letter)) return letter;
    return {};
}

} // namespace

std::vector<std::pair<QChar, const Fault*>> faultLetters(const Part& part) {
    std::vector<std::pair<QChar, const Fault*>> out;
    QString taken = kKept;
    for (const Fault& fault : part.faults) {
        if (filingPass(fault.key) > 0) continue; // said by its millimetres, and numbered by itself
        const QChar letter = freeLetter(fault.key, taken);
        if (letter.isNull()) continue;
        taken += letter;
        out.emplace_back(letter, &fault);
    }
    return out;
}

const Fault* faultOf(const Part& part, QChar letter) {
    for (const auto& [each, fault] : faultLetters(part))
        if (each == letter.toUpper()) return fault;
    return nullptr;
}

} // namespace hammerline
