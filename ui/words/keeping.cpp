#include "ui/words/keeping.h"

#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>
#include <QDateTime>

#include <array>

namespace hammerline::words {
namespace {

QString keepingText(const char* source) {
    return QCoreApplication::translate("keeping", source);
}

using enum RefusalCode;

struct CauseRow {
    RefusalCode code;
    std::string_view detail; // up to a colon
    const char* said;
};

const std::array kRefusalCauses = {
    CauseRow{cannotRead, "missing",
             QT_TRANSLATE_NOOP("keeping", "there is no such file; look at its name and its folder")},
    CauseRow{cannotRead, "permission", QT_TRANSLATE_NOOP("keeping", "you are not allowed to read it; ask its owner")},
    CauseRow{cannotRead, "folder", QT_TRANSLATE_NOOP("keeping", "it is a folder; choose a file in it")},
    CauseRow{cannotRead, "not-a-file", QT_TRANSLATE_NOOP("keeping", "it is a device or a link to nothing, not a file")},
    CauseRow{cannotRead, "input-output",
             QT_TRANSLATE_NOOP("keeping", "the disk, stick or network failed; try again, or copy it to another disk")},
    CauseRow{cannotRead, "cannot-open",
             QT_TRANSLATE_NOOP("keeping", "it cannot be opened; look at the rights of the file and its folder")},
    CauseRow{cannotRead, "name-too-long", QT_TRANSLATE_NOOP("keeping", "its name is too long; look at it again")},
    CauseRow{cannotRead, "circle-of-links",
             QT_TRANSLATE_NOOP("keeping", "it is a link that leads back to itself; name the file itself")},
    CauseRow{cannotRead, "", QT_TRANSLATE_NOOP("keeping", "it cannot be opened")},
    CauseRow{cannotWrite, "permission",
             QT_TRANSLATE_NOOP("keeping", "you are not allowed to write there; choose another folder")},
    CauseRow{cannotWrite, "missing", QT_TRANSLATE_NOOP("keeping", "there is no such folder; make it first")},
    CauseRow{cannotWrite, "folder", QT_TRANSLATE_NOOP("keeping", "it is a folder; give the file a name in it")},
    CauseRow{cannotWrite, "not-a-file",
             QT_TRANSLATE_NOOP("keeping", "it is a device or a link to nothing, not a file; choose another name")},
    CauseRow{cannotWrite, "input-output",
             QT_TRANSLATE_NOOP("keeping", "the disk, stick or network failed; try again, or work on another disk")},
    CauseRow{cannotWrite, "cannot-open",
             QT_TRANSLATE_NOOP("keeping", "it cannot be opened; look at the folder and its rights")},
    CauseRow{cannotWrite, "copy",
             QT_TRANSLATE_NOOP("keeping", "the copy did not come out like the book; try another disk")},
    CauseRow{cannotWrite, "name-too-long", QT_TRANSLATE_NOOP("keeping", "its name is too long; choose a shorter one")},
    CauseRow{cannotWrite, "circle-of-links",
             QT_TRANSLATE_NOOP("keeping", "it is a link that leads back to itself; choose another name")},
    CauseRow{
        cannotWrite, "journal-beside",
        QT_TRANSLATE_NOOP("keeping", "the older copy there was left in the middle of a change; choose another name")},
    CauseRow{cannotWrite, "", QT_TRANSLATE_NOOP("keeping", "it cannot be opened")},
    CauseRow{notABook, "empty", QT_TRANSLATE_NOOP("keeping", "the file is empty")},
    CauseRow{notABook, "not-a-database", QT_TRANSLATE_NOOP("keeping", "it is a file of another kind")},
    CauseRow{notABook, "other-application", QT_TRANSLATE_NOOP("keeping", "another program made it")},
    CauseRow{notABook, "no-version", QT_TRANSLATE_NOOP("keeping", "it carries no version")},
    CauseRow{notABook, "foreign", QT_TRANSLATE_NOOP("keeping", "another program has changed its tables (%1)")},
    CauseRow{notABook, "journal",
             QT_TRANSLATE_NOOP("keeping",
                               "the journal beside it (of the same name, with -journal) names another file, which none "
                               "of ours does; ask where it comes from, or rescue what can be read into a new book")},
    CauseRow{notABook, "", QT_TRANSLATE_NOOP("keeping", "it is a file of another kind")},
    CauseRow{badPicture, "large",
             QT_TRANSLATE_NOOP("keeping", "it is larger than 30 MB; make it smaller, or take it without --original")},
    CauseRow{badPicture, "wide",
             QT_TRANSLATE_NOOP("keeping", "it has more than 100 million points, which no camera of a telephone has")},
    CauseRow{badPicture, "", QT_TRANSLATE_NOOP("keeping", "it is no JPEG, PNG or other picture that can be read here")},
    CauseRow{badIdentity, "control-character",
             QT_TRANSLATE_NOOP("keeping", "it holds a character that no keyboard types; type it again")},
    CauseRow{badIdentity, "year",
             QT_TRANSLATE_NOOP("keeping", "a year has four digits, such as 1912, about 1912 or 1910-1914")},
    CauseRow{badIdentity, "empty", QT_TRANSLATE_NOOP("keeping", "it is empty; say something")},
    CauseRow{badIdentity, "longest", QT_TRANSLATE_NOOP("keeping", "it is longer than %1 characters; shorten it")},
    CauseRow{badIdentity, "", QT_TRANSLATE_NOOP("keeping", "there is no such field")},
    CauseRow{newerBook, "hot-journal",
             QT_TRANSLATE_NOOP("keeping", " and left in the middle of a change: open and close it there first")},
    CauseRow{newerBook, "", ""},
    CauseRow{readOnlyBook, "opened-read-only", QT_TRANSLATE_NOOP("keeping", "it was opened for reading")},
    CauseRow{readOnlyBook, "file",
             QT_TRANSLATE_NOOP("keeping", "the file is write-protected; take the protection off, or work on a copy")},
    CauseRow{readOnlyBook, "folder",
             QT_TRANSLATE_NOOP("keeping", "its folder is write-protected; move the book to a folder of your own")},
    CauseRow{readOnlyBook, "hot-journal",
             QT_TRANSLATE_NOOP("keeping",
                               "it was left in the middle of a change, and nothing may be written here to end it")},
    CauseRow{readOnlyBook, "read-only", QT_TRANSLATE_NOOP("keeping", "the disk is write-protected")},
    CauseRow{readOnlyBook, "older",
             QT_TRANSLATE_NOOP("keeping", "it is of an older version and has to be brought up to date, but %1")},
    CauseRow{readOnlyBook, "", QT_TRANSLATE_NOOP("keeping", "the file or its folder is write-protected")},
    CauseRow{badTable, "unterminated-quote",
             QT_TRANSLATE_NOOP("keeping", "a quotation mark is opened and never closed; close it")},
    CauseRow{
        badTable, "text-after-quote",
        QT_TRANSLATE_NOOP("keeping", "text stands after a closing quotation mark; take it out, or double the mark")},
    CauseRow{badTable, "too-many-columns",
             QT_TRANSLATE_NOOP("keeping", "a line has more than 4,096 columns; look at its separators")},
    CauseRow{badTable, "too-many-asked",
             QT_TRANSLATE_NOOP("keeping", "more than 10,000 of its values up to here cannot be read or are doubtful; "
                                          "look whether it is the right file, and at its units")},
    CauseRow{badTable, "too-many-cells",
             QT_TRANSLATE_NOOP("keeping", "it has more than 200,000 cells; split it, or save it in the form that "
                                          "export writes")},
    CauseRow{badTable, "too-many-passes",
             QT_TRANSLATE_NOOP("keeping", "it names more than 1,000 passes; look at its column \"pass\"")},
    CauseRow{badTable, "zero-byte",
             QT_TRANSLATE_NOOP("keeping", "it holds a zero byte, which no text does; save it anew as CSV")},
    CauseRow{badTable, "half-character",
             QT_TRANSLATE_NOOP("keeping", "it breaks off within a character; copy the file anew")},
    CauseRow{badTable, "encoding",
             QT_TRANSLATE_NOOP("keeping", "its letters are in no known encoding; save it as UTF-8")},
    CauseRow{badTable, "note-column",
             QT_TRANSLATE_NOOP("keeping", "no column says which note; head one with \"note\"")},
    CauseRow{badTable, "dimension-column",
             QT_TRANSLATE_NOOP("keeping", "no column is headed with the name of a dimension; head one with it")},
    CauseRow{badTable, "", QT_TRANSLATE_NOOP("keeping", "save it anew as CSV")},
    CauseRow{badJson, "depth",
             QT_TRANSLATE_NOOP("keeping", "it is nested deeper than 32 levels; look whether it is the right file")},
    CauseRow{
        badJson, "members",
        QT_TRANSLATE_NOOP("keeping",
                          "an object or a list in it has more than 10,000 members; look whether it is the right file")},
    CauseRow{badJson, "", QT_TRANSLATE_NOOP("keeping", "look whether it is the right file")},
    CauseRow{tooLarge, "256 MB", QT_TRANSLATE_NOOP("keeping", "256 MB; split it")},
    CauseRow{tooLarge, "8 MB",
             QT_TRANSLATE_NOOP("keeping", "8 MB, what a table of readings may have that is not in the form that export "
                                          "writes (in UTF-8); look whether it is the right file, or split it")},
    CauseRow{tooLarge, "1 MB", QT_TRANSLATE_NOOP("keeping", "1 MB; look whether it is the right file")},
    CauseRow{tooLarge, "memory", QT_TRANSLATE_NOOP("keeping", "there is not that much memory; close other programs")},
    CauseRow{tooLarge, "too-large",
             QT_TRANSLATE_NOOP("keeping", "a text in it is longer than 64 MB; look at where it comes from")},
    CauseRow{tooLarge, "", QT_TRANSLATE_NOOP("keeping", "split it")},
    CauseRow{replacedFile, "gone",
             QT_TRANSLATE_NOOP("keeping", "is no longer there; bring it back, or open the book where it is now")},
    CauseRow{replacedFile, "", QT_TRANSLATE_NOOP("keeping", "was replaced by another file; open it again")},
};

const CauseRow* rowOf(RefusalCode code, std::string_view detail) {
    for (const CauseRow& row : kRefusalCauses)
        if (row.code == code && row.detail == detail) return &row;
    return nullptr;
}

bool hasCauses(RefusalCode code) {
    return rowOf(code, {}) != nullptr;
}

QString whatName(const Dispute& dispute) {
    const QString at = dispute.dimension ? name(*dispute.dimension).toLower() : utf8(dispute.name);
    if (dispute.what == "reading")
        return keepingText(QT_TRANSLATE_NOOP("keeping", "note %1, %2")).arg(QString::number(dispute.note), at);
    if (dispute.what == "override")
        return keepingText(QT_TRANSLATE_NOOP("keeping", "zone of note %1, %2")).arg(QString::number(dispute.note), at);
    if (dispute.what == "finding")
        return dispute.note > 0 ? keepingText(QT_TRANSLATE_NOOP("keeping", "finding at note %1, %2"))
                                      .arg(QString::number(dispute.note), at)
                                : keepingText(QT_TRANSLATE_NOOP("keeping", "finding, %1")).arg(at);
    if (dispute.what == "identity") return keepingText(QT_TRANSLATE_NOOP("keeping", "record of the piano, %1")).arg(at);
    if (dispute.what == "remark") return keepingText(QT_TRANSLATE_NOOP("keeping", "remark"));
    if (dispute.what == "preference") return keepingText(QT_TRANSLATE_NOOP("keeping", "setting %1")).arg(at);
    return dispute.what == "pass" ? keepingText(QT_TRANSLATE_NOOP("keeping", "set-up of the pass"))
                                  : keepingText(QT_TRANSLATE_NOOP("keeping", "set-up of the piano"));
}

} // namespace

QString causeText(RefusalCode code, const std::string& detail) {
    if (code == damagedBook) return problemText(detail);
    if (!hasCauses(code)) return utf8(detail);
    if (const CauseRow* row = rowOf(code, detail)) return *row->said == '\0' ? QString() : keepingText(row->said);
    const auto colon = detail.find(':');
    const CauseRow* row = rowOf(code, std::string_view(detail).substr(0, colon));
    const std::string rest = colon == std::string::npos ? std::string() : detail.substr(colon + 1);
    if (row && row->detail == "older") return keepingText(row->said).arg(causeText(code, rest));
    if (row) return keepingText(row->said).replace(QLatin1String("%1"), utf8(rest));
    // a system's own words for what it would not do
    const bool words = code == cannotRead || code == cannotWrite;
    return words ? utf8(detail) : causeText(code, {});
}

bool canBeRescued(const Refusal& refusal) {
    return refusal.code == RefusalCode::damagedBook ||
           (refusal.code == RefusalCode::notABook && refusal.detail == "journal");
}

QString mergeSentence(const Merged& merged, const std::string& book) {
    const QString wayBack = book.empty()
                                ? keepingText(QT_TRANSLATE_NOOP("keeping", "Book, Restore a backup"))
                                : QStringLiteral("hammerline restore \"%1\" \"%2\"").arg(utf8(book), utf8(merged.kept));
    if (merged.acts == 0 && merged.disputes.empty())
        return keepingText(
            QT_TRANSLATE_NOOP("keeping", "The other book has nothing that this one has not. Nothing changed."));
    QString said =
        merged.acts == 0
            ? keepingText(
                  QT_TRANSLATE_NOOP("keeping", "The other book has nothing that this one has not. Nothing changed."))
            : QCoreApplication::translate("keeping", "Merged: %n reading(s) came", nullptr,
                                          static_cast<int>(merged.readings)) +
                  QCoreApplication::translate("keeping", " in %n act(s).", nullptr, static_cast<int>(merged.acts)) +
                  QLatin1Char(' ') +
                  keepingText(QT_TRANSLATE_NOOP("keeping",
                                                "The book as it was before is kept as %1. Undo does not take a merge "
                                                "back; restoring that copy does, and what is entered from now on goes "
                                                "with it: %2."))
                      .arg(utf8(merged.kept), wayBack);
    if (!merged.disputes.empty())
        said += QLatin1Char(' ') + QCoreApplication::translate("keeping", "Not settled: %n thing(s) said differently.",
                                                               nullptr, static_cast<int>(merged.disputes.size()));
    return said;
}

QString sentence(const Dispute& dispute) {
    if (dispute.what == "brought-back")
        return keepingText(QT_TRANSLATE_NOOP("keeping",
                                             "A %1 was taken back in one book and gone on from in the other: it is "
                                             "there again. Take it back once more if it is not wanted."))
            .arg(utf8(dispute.name));
    if (dispute.what == "same-name")
        return keepingText(QT_TRANSLATE_NOOP("keeping", "%1: %2 pianos have this name. Give one of them another."))
            .arg(utf8(dispute.piano), QString::number(dispute.said.size()));
    QStringList said;
    for (const std::string& each : dispute.said)
        said << QLatin1Char('"') + utf8(each) + QLatin1Char('"');
    const QString where =
        dispute.pass > 0
            ? keepingText(QT_TRANSLATE_NOOP("keeping", "%1, pass %2")).arg(utf8(dispute.piano)).arg(dispute.pass)
            : utf8(dispute.piano);
    return keepingText(QT_TRANSLATE_NOOP("keeping", "%1, %2: %3. The last holds until it is said anew."))
        .arg(where, whatName(dispute), said.join(keepingText(QT_TRANSLATE_NOOP("keeping", " and "))));
}

namespace {
QString dayOf(std::int64_t microseconds) {
    return QDateTime::fromMSecsSinceEpoch(microseconds / 1000).date().toString(Qt::ISODate);
}
} // namespace

QString problemText(const std::string& what) {
    const QStringList parts = utf8(what).split(QLatin1Char(':'));
    if (parts.front() == QLatin1String("digest") && parts.size() == 4)
        return keepingText(QT_TRANSLATE_NOOP("keeping", "what was written on %1 (%2, act %3) is no longer as it was "
                                                        "written: it was changed from outside, or the disk failed"))
            .arg(dayOf(parts[3].toLongLong()), parts[2], parts[1]);
    if (what == "clock-ahead")
        return keepingText(QT_TRANSLATE_NOOP("keeping", "something in it was written under a clock that was years "
                                                        "ahead; it cannot be put in order with what is here"));
    if (what == "seal:acts")
        return keepingText(QT_TRANSLATE_NOOP("keeping", "an act is missing from it, or one was put in from outside"));
    if (parts.front() == QLatin1String("seal"))
        return keepingText(QT_TRANSLATE_NOOP("keeping", "what it says of itself was changed from outside"));
    return utf8(what);
}

QString leftOutSentence(const PianoRecord& record) {
    if (record.leftOut.empty()) return {};
    const QStringList parts = utf8(record.leftOut.front()).split(QLatin1Char(':'));
    const QString note = parts.value(1), name = parts.mid(2).join(QLatin1Char(':')).left(80);
    const QString where =
        note.isEmpty() ? name : keepingText(QT_TRANSLATE_NOOP("keeping", "note %1, %2")).arg(note, name);
    return QCoreApplication::translate("keeping", "%n thing(s) that this piano cannot have are left out", nullptr,
                                       static_cast<int>(record.leftOut.size())) +
           QLatin1Char(' ') +
           keepingText(QT_TRANSLATE_NOOP("keeping", "(the first: %1, %2). They stay in the book: look at the number of "
                                                    "notes of %3, and whether the book is sound."))
               .arg(parts.front(), where, utf8(record.piano.name));
}

QString soundSentence(bool sound, std::int64_t olderAt) {
    if (!sound) return keepingText(QT_TRANSLATE_NOOP("keeping", "The book is not sound; restore a backup."));
    const QString said = keepingText(QT_TRANSLATE_NOOP("keeping", "The book is sound."));
    if (olderAt == 0) return said;
    return said + QLatin1Char(' ') +
           keepingText(QT_TRANSLATE_NOOP("keeping", "What was written before %1 is as it was on that day; from before "
                                                    "there is no proof."))
               .arg(dayOf(olderAt));
}

QString unprovenExportSentence() {
    return keepingText(QT_TRANSLATE_NOOP("keeping",
                                         "The book is not sound (verify says where), so nothing in the export "
                                         "proves it: look it over before it is used."));
}

QString rescueSentence(const Rescued& rescued, const std::string& path) {
    QString said = QCoreApplication::translate("keeping", "Rescued: %n row(s) could be read", nullptr,
                                               static_cast<int>(rescued.rows));
    said += rescued.lost == 0 ? keepingText(QT_TRANSLATE_NOOP("keeping", "; nothing is known to be lost."))
                              : QCoreApplication::translate("keeping", "; %n place(s) in it could not.", nullptr,
                                                            static_cast<int>(rescued.lost));
    said += QLatin1Char(' ') +
            keepingText(QT_TRANSLATE_NOOP("keeping", "They are in %1; the damaged book is as it was.")).arg(utf8(path));
    if (rescued.unproven == 0)
        return said + QLatin1Char(' ') +
               keepingText(QT_TRANSLATE_NOOP("keeping", "Every reading in it is proven to be as it was written."));
    said += QLatin1Char(' ') + QCoreApplication::translate("keeping", "%n reading(s) are proven to be as written;",
                                                           nullptr, static_cast<int>(rescued.proven));
    return said + QLatin1Char(' ') +
           QCoreApplication::translate("keeping",
                                       "%n are not: look them over, a value that was damaged may still look like one.",
                                       nullptr, static_cast<int>(rescued.unproven));
}

QString unprovenSentence(const UnprovenReading& reading) {
    return keepingText(QT_TRANSLATE_NOOP("keeping", "%1, pass %2, note %3, %4, trial %5: %6"))
        .arg(utf8(reading.piano))
        .arg(reading.pass)
        .arg(reading.cell.note.value)
        .arg(name(reading.cell.dimension))
        .arg(reading.trial)
        .arg(utf8(reading.typed));
}

} // namespace hammerline::words
