#include "ui/words/piano_record.h"

#include "ui/words/said.h"
#include "ui/words/survey_names.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <algorithm>
#include <array>

namespace hammerline::words {
namespace {

QString recordText(const char* source) {
    return QCoreApplication::translate("piano-record", source);
}

struct IdentityWords {
    std::string_view key;
    const char* name;
    const char* line; // in a line of several, %1 the value
    const char* hint;
};
const std::array kIdentityWords = {
    IdentityWords{.key = "maker",
                  .name = QT_TRANSLATE_NOOP("piano-record", "Maker"),
                  .line = "%1",
                  .hint = QT_TRANSLATE_NOOP("piano-record", "as it stands on the fallboard")},
    IdentityWords{.key = "serial",
                  .name = QT_TRANSLATE_NOOP("piano-record", "Serial number"),
                  .line = QT_TRANSLATE_NOOP("piano-record", "serial number %1"),
                  .hint = QT_TRANSLATE_NOOP("piano-record", "plate, top of the pin block, side of key 1")},
    IdentityWords{.key = "year",
                  .name = QT_TRANSLATE_NOOP("piano-record", "Year"),
                  .line = "%1",
                  .hint = QT_TRANSLATE_NOOP("piano-record", "1912, or about 1912")},
    IdentityWords{.key = "owner",
                  .name = QT_TRANSLATE_NOOP("piano-record", "Owner"),
                  .line = QT_TRANSLATE_NOOP("piano-record", "owner %1"),
                  .hint = QT_TRANSLATE_NOOP("piano-record", "whose it is")},
    IdentityWords{.key = "contact",
                  .name = QT_TRANSLATE_NOOP("piano-record", "Contact"),
                  .line = "%1",
                  .hint = QT_TRANSLATE_NOOP("piano-record", "telephone or mail")},
    IdentityWords{.key = "place",
                  .name = QT_TRANSLATE_NOOP("piano-record", "Place"),
                  .line = QT_TRANSLATE_NOOP("piano-record", "at %1"),
                  .hint = QT_TRANSLATE_NOOP("piano-record", "house, street, town")},
    IdentityWords{.key = "room",
                  .name = QT_TRANSLATE_NOOP("piano-record", "Room"),
                  .line = "%1",
                  .hint = QT_TRANSLATE_NOOP("piano-record", "such as: hall, first floor")},
    IdentityWords{.key = "worker",
                  .name = QT_TRANSLATE_NOOP("piano-record", "Who works on it"),
                  .line = QT_TRANSLATE_NOOP("piano-record", "worked on by %1"),
                  .hint = QT_TRANSLATE_NOOP("piano-record", "your name")},
};

const IdentityWords* identityRow(std::string_view key) {
    const auto found = std::ranges::find(kIdentityWords, key, &IdentityWords::key);
    return found == kIdentityWords.end() ? nullptr : &*found;
}

/// Case folded, and letters without their marks: an owner is found with or without the accents of the name.
QString plainLetters(const QString& text) {
    QString plain;
    for (const QChar c : text.normalized(QString::NormalizationForm_KD))
        if (!c.isMark()) plain += c;
    return plain.toCaseFolded();
}

} // namespace

QString identityName(std::string_view key) {
    if (key == kArchived) return recordText(QT_TRANSLATE_NOOP("piano-record", "Put away"));
    const IdentityWords* row = identityRow(key);
    return row ? recordText(row->name) : utf8(key);
}

QString identityHint(std::string_view key) {
    const IdentityWords* row = identityRow(key);
    return row ? recordText(row->hint) : QString();
}

QString identityLine(const Identity& identity) {
    QStringList said;
    for (const IdentityWords& row : kIdentityWords) {
        const std::string_view value = identityValue(identity, row.key);
        if (!value.empty()) said << recordText(row.line).arg(utf8(value));
    }
    return said.join(QStringLiteral(", "));
}

bool holdsWords(const QString& words, const QStringList& texts) {
    const QString all = plainLetters(texts.join(QLatin1Char('\n')));
    const QStringList wanted = plainLetters(words).split(QLatin1Char(' '), Qt::SkipEmptyParts);
    return std::ranges::all_of(wanted, [&](const QString& word) { return all.contains(word); });
}

QString aboutText(const About& about, const Piano& piano) {
    QStringList parts;
    if (about.pass) parts << recordText(QT_TRANSLATE_NOOP("piano-record", "pass %1")).arg(*about.pass);
    if (about.note) parts << recordText(QT_TRANSLATE_NOOP("piano-record", "note %1")).arg(noteName(*about.note, piano));
    if (!about.part.empty()) parts << partOfActionName(about.part).toLower();
    if (!about.fault.empty()) parts << faultName(about.fault);
    if (parts.isEmpty()) return recordText(QT_TRANSLATE_NOOP("piano-record", "the piano"));
    return parts.join(QStringLiteral(", "));
}

QString remarkKindName(RemarkKind kind) {
    switch (kind) {
    case RemarkKind::advice:
        return recordText(QT_TRANSLATE_NOOP("piano-record", "Advice"));
    case RemarkKind::decision:
        return recordText(QT_TRANSLATE_NOOP("piano-record", "Decision"));
    case RemarkKind::visit:
        return recordText(QT_TRANSLATE_NOOP("piano-record", "Visit due"));
    case RemarkKind::remark:
        break;
    }
    return recordText(QT_TRANSLATE_NOOP("piano-record", "Remark"));
}

QString photoSentence(const Photo& photo, const Piano& piano) {
    QString said = utf8(photo.on) + QStringLiteral(", ") + aboutText(photo.about, piano);
    if (!photo.who.empty()) said += QStringLiteral(", ") + utf8(photo.who);
    if (!photo.caption.empty()) said += QStringLiteral(": ") + utf8(photo.caption);
    return said;
}

QString remarkSentence(const Remark& remark, const Piano& piano) {
    QString head = utf8(remark.on);
    if (!remark.who.empty()) head += QStringLiteral(", ") + utf8(remark.who);
    if (remark.kind != RemarkKind::remark) head += QStringLiteral(", ") + remarkKindName(remark.kind).toLower();
    if (remark.accepted == "yes") head += recordText(QT_TRANSLATE_NOOP("piano-record", " (accepted)"));
    if (remark.accepted == "no") head += recordText(QT_TRANSLATE_NOOP("piano-record", " (not accepted)"));
    const bool ofThePiano = remark.about == About{};
    const QString about = ofThePiano ? QString() : aboutText(remark.about, piano) + QStringLiteral(": ");
    return head + QStringLiteral(": ") + about + utf8(remark.text);
}

} // namespace hammerline::words
