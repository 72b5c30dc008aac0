// What is wrong, where, what to do and what is still safe: one place for window, paper and command line.
#include "ui/words/keeping.h"
#include "ui/words/plainly.h"
#include "ui/words/said.h"
#include "ui/words/set_up_answers.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <map>

namespace hammerline::words {
namespace {

QString refusalText(const char* source) {
    return QCoreApplication::translate("refusals", source);
}

/// %1 is the offending text, %2 the detail (a range, allowed values, a cause), %3 the field.
const std::map<RefusalCode, const char*>& sentences() {
    static const std::map<RefusalCode, const char*> table = {
        {RefusalCode::unreadable,
         QT_TRANSLATE_NOOP(
             "refusals",
             "\"%1\" is no number, fraction or word known here. Type a size such as 46, 46,5 or 1 13/16 in.")},
        {RefusalCode::twoDecimalMarks,
         QT_TRANSLATE_NOOP("refusals", "\"%1\" has two decimal marks. Type one point or one comma.")},
        {RefusalCode::zeroDenominator,
         QT_TRANSLATE_NOOP("refusals", "\"%1\" divides by zero. Type the fraction again.")},
        {RefusalCode::wrongUnit,
         QT_TRANSLATE_NOOP("refusals", "\"%1\" is in a unit of another kind. This dimension takes %2.")},
        {RefusalCode::outOfRange,
         QT_TRANSLATE_NOOP("refusals",
                           "\"%1\" cannot be: this dimension lies between %2. Measure again or look at the unit.")},
        {RefusalCode::likelySlip,
         QT_TRANSLATE_NOOP("refusals", "\"%1\" looks like a slip of the hand. Take the suggestion or type it again.")},
        {RefusalCode::unknownWord, QT_TRANSLATE_NOOP("refusals", "\"%1\" is no word of this dimension. Known: %2.")},
        {RefusalCode::unknownNote,
         QT_TRANSLATE_NOOP("refusals",
                           "There is no note \"%1\" on this piano. Type a number from 1 or a pitch such as C4.")},
        {RefusalCode::notFitted, QT_TRANSLATE_NOOP("refusals", "%1 is not fitted at this note.")},
        {RefusalCode::unknownDimension,
         QT_TRANSLATE_NOOP("refusals", "\"%1\" is no dimension. \"hammerline ids\" lists them all.")},
        {RefusalCode::unknownColumn,
         QT_TRANSLATE_NOOP("refusals", "The file has no column \"%1\". Look at its first line.")},
        {RefusalCode::unknownOperation, QT_TRANSLATE_NOOP("refusals", "\"%1\" is no operation on this action.")},
        {RefusalCode::unknownPart,
         QT_TRANSLATE_NOOP("refusals", "\"%1\" is no part of this action. \"hammerline ids\" lists them all.")},
        {RefusalCode::unknownFault, QT_TRANSLATE_NOOP("refusals", "\"%1\" is no fault of this part. Known: %2.")},
        {RefusalCode::unknownRemedy, QT_TRANSLATE_NOOP("refusals", "\"%1\" is no remedy of this part. Known: %2.")},
        {RefusalCode::unknownState, QT_TRANSLATE_NOOP("refusals", "\"%1\" is no state. Known: %2.")},
        {RefusalCode::unknownSymptom,
         QT_TRANSLATE_NOOP("refusals", "\"%1\" is no symptom known on this piano. Known: %2.")},
        {RefusalCode::unknownCause,
         QT_TRANSLATE_NOOP("refusals", "\"%1\" is no cause that stands here now (found: %2). Nothing was changed.")},
        {RefusalCode::unknownLook,
         QT_TRANSLATE_NOOP("refusals", "\"%1\" is no look that is answered by yes or no. Known: %2.")},
        {RefusalCode::unknownReference,
         QT_TRANSLATE_NOOP("refusals", "\"%1\" is no reference of this dimension. Known: %2.")},
        {RefusalCode::badLineSag,
         QT_TRANSLATE_NOOP("refusals",
                           "\"%1\" is no sag of a line. Type mm at its middle (0.28, at most 3), or material (steel, "
                           "brass, nylon), thickness and pull: steel 0.5 mm 10 N.")},
        {RefusalCode::otherDatum,
         QT_TRANSLATE_NOOP("refusals",
                           "\"%1\" is a height over another datum than this pass has (%2). One is not turned into the "
                           "other without the height between them, and never averaged: begin a pass of its own for "
                           "it.")},
        {RefusalCode::unknownAttribute,
         QT_TRANSLATE_NOOP("refusals", "\"%1\" is no attribute of an action. \"hammerline ids\" lists them all.")},
        {RefusalCode::badCompass, QT_TRANSLATE_NOOP("refusals", "A compass of %1 cannot be: it lies within %2.")},
        {RefusalCode::badSections,
         QT_TRANSLATE_NOOP(
             "refusals",
             "The sections \"%1\" do not follow each other over all notes (%2). Write them like 1-26, 27-52, 53-88, "
             "or their breaks alone: 26, 52.")},
        {RefusalCode::badIdentity,
         QT_TRANSLATE_NOOP("refusals", "The field %3 does not take that: %2. Nothing was changed.")},
        {RefusalCode::badDate,
         QT_TRANSLATE_NOOP("refusals", "\"%1\" is no day of the calendar. Type it as YYYY-MM-DD, such as "
                                       "2026-11-29. Nothing was changed.")},
        {RefusalCode::kindMeasured,
         QT_TRANSLATE_NOOP("refusals",
                           "Readings of %1 were taken on its kind of action, so the kind stays. Take them back, or "
                           "enter the piano anew; nothing was changed.")},
        {RefusalCode::noSuchRemark,
         QT_TRANSLATE_NOOP("refusals", "There is no remark %1 on this piano. \"hammerline remark\" lists them.")},
        {RefusalCode::noSuchPhoto,
         QT_TRANSLATE_NOOP("refusals", "There is no photograph %1 on this piano. \"hammerline photo\" lists them.")},
        {RefusalCode::otherPiano,
         QT_TRANSLATE_NOOP("refusals", "This answer is to a page of another piano than %1. Choose that piano with "
                                       "--piano; nothing was changed.")},
        {RefusalCode::otherPiano,
         QT_TRANSLATE_NOOP("refusals", "This answer is to a page of another piano than %1. Choose that piano with "
                                       "--piano; nothing was changed.")},
        {RefusalCode::badPicture,
         QT_TRANSLATE_NOOP("refusals", "%1 cannot be taken as a photograph: %2. Nothing was changed.")},
        {RefusalCode::badZone, QT_TRANSLATE_NOOP("refusals", "The zone \"%1\" is not in the order low, aim, high.")},
        {RefusalCode::badSpecSheet, QT_TRANSLATE_NOOP("refusals", "The spec sheet \"%1\" cannot be used: %2.")},
        {RefusalCode::reasonMissing,
         QT_TRANSLATE_NOOP("refusals", "This needs a reason. Say why, so that the next person knows.")},
        {RefusalCode::cannotRead, QT_TRANSLATE_NOOP("refusals", "%1 cannot be read: %2. Nothing was changed.")},
        {RefusalCode::cannotWrite, QT_TRANSLATE_NOOP("refusals", "%1 cannot be written: %2. Nothing was changed.")},
        {RefusalCode::emptyFile,
         QT_TRANSLATE_NOOP("refusals", "%1 is empty. Choose another file; nothing was changed.")},
        {RefusalCode::badTable,
         QT_TRANSLATE_NOOP("refusals", "This is no table that can be read: %2. Nothing was taken.")},
        {RefusalCode::badJson,
         QT_TRANSLATE_NOOP("refusals", "This is no JSON that can be read (%2). Nothing was taken.")},
        {RefusalCode::tooLarge,
         QT_TRANSLATE_NOOP("refusals", "%1 is larger than what can be taken in at once (%2). Nothing was changed.")},
        {RefusalCode::fileExists,
         QT_TRANSLATE_NOOP("refusals", "%1 is there already. Choose another name; it was left as it is.")},
        {RefusalCode::notABook, QT_TRANSLATE_NOOP("refusals", "%1 is no bench book: %2. It was left untouched.")},
        {RefusalCode::newerBook, QT_TRANSLATE_NOOP("refusals", "%1 was written by a newer version of this program%2. "
                                                               "Here it opens for reading only: write in it with that "
                                                               "version. Nothing was changed.")},
        {RefusalCode::damagedBook,
         QT_TRANSLATE_NOOP("refusals",
                           "%1 is damaged (%2). It was not written to. Restore a backup, or rescue what can be read "
                           "into a new book.")},
        {RefusalCode::lockedBook,
         QT_TRANSLATE_NOOP(
             "refusals",
             "%1 is in use by another program. Try again when that one has finished; nothing was changed.")},
        {RefusalCode::readOnlyBook, QT_TRANSLATE_NOOP("refusals", "%1 can only be read: %2. Nothing was changed.")},
        {RefusalCode::replacedFile, QT_TRANSLATE_NOOP("refusals", "%1 %2. What is being typed is kept in its field.")},
        {RefusalCode::diskFull,
         QT_TRANSLATE_NOOP(
             "refusals",
             "The disk is full: %1 could not be written. The book is as before; free some space and do it again.")},
        {RefusalCode::noSuchPiano, QT_TRANSLATE_NOOP("refusals", "There is no piano \"%1\" in this book.")},
        {RefusalCode::pianoExists,
         QT_TRANSLATE_NOOP("refusals", "There is a piano \"%1\" in this book already. Choose another name.")},
        {RefusalCode::severalPianos,
         QT_TRANSLATE_NOOP("refusals", "The book has several pianos. Say which one with --piano NAME.")},
        {RefusalCode::noSuchPass, QT_TRANSLATE_NOOP("refusals", "There is no pass \"%1\" of this piano.")},
        {RefusalCode::passExists,
         QT_TRANSLATE_NOOP("refusals", "There is a pass \"%1\" already. Choose another label.")},
        {RefusalCode::noSuchStep,
         QT_TRANSLATE_NOOP("refusals", "The plan has no step \"%1\". \"hammerline plan\" lists them.")},
        {RefusalCode::noPlan, QT_TRANSLATE_NOOP("refusals", "There is no plan for this pass yet.")},
        {RefusalCode::nothingToUndo, QT_TRANSLATE_NOOP("refusals", "There is nothing to take back.")},
        {RefusalCode::nothingToRedo, QT_TRANSLATE_NOOP("refusals", "There is nothing to bring back.")},
        {RefusalCode::goneOnSince,
         QT_TRANSLATE_NOOP("refusals",
                           "This cannot be taken back: somebody has gone on from there. Nothing was changed.")},
        {RefusalCode::cancelled, QT_TRANSLATE_NOOP("refusals", "Stopped. Nothing was changed.")},
        {RefusalCode::usage, QT_TRANSLATE_NOOP("refusals", "%1")},
        {RefusalCode::upNotBelowDown,
         QT_TRANSLATE_NOOP("refusals", "An up weight of %1 cannot be as much as the down weight (%2). Weigh again.")},
    };
    return table;
}

/// Why a value of an export cannot be taken.
QString exportCause(const std::string& cause) {
    static const std::map<std::string, const char*> causes = {
        {"missing", QT_TRANSLATE_NOOP("refusals", "it is missing")},
        {"type", QT_TRANSLATE_NOOP("refusals", "a value of another kind belongs there")},
        {"unknown", QT_TRANSLATE_NOOP("refusals", "it is not known here")},
        {"range", QT_TRANSLATE_NOOP("refusals", "it is outside what can be")},
        {"sequence", QT_TRANSLATE_NOOP("refusals", "passes are numbered from 1 in their order")},
        {"text-and-value", QT_TRANSLATE_NOOP("refusals", "the text beside it says another size")},
        {"twice", QT_TRANSLATE_NOOP("refusals", "it is there twice")},
        {"time", QT_TRANSLATE_NOOP("refusals", "a time looks like 2026-11-25T08:00:00Z")},
        {"syntax", QT_TRANSLATE_NOOP("refusals", "it is no JSON")},
        {"proof", QT_TRANSLATE_NOOP("refusals",
                                    "what was written then is no longer as it was exported. Export it again; or take "
                                    "\"proof\" out of the file, and it is taken as it stands")},
        {"spec-sheet", QT_TRANSLATE_NOOP("refusals", "the spec sheet cannot be used")},
        {"other-action", QT_TRANSLATE_NOOP("refusals", "the piano in the book has another action or fewer notes")},
    };
    const auto found = causes.find(cause);
    return found == causes.end() ? utf8(cause) : refusalText(found->second);
}

/// A value of an export by its path, or the place where a file stops being JSON.
QString exportSentence(const Refusal& refusal) {
    const QString source = refusal.place.source.empty() ? QString() : utf8(refusal.place.source) + QLatin1String(", ");
    if (refusal.place.line > 0)
        return source +
               refusalText(QT_TRANSLATE_NOOP("refusals",
                                             "line %1, column %2: from here on this is no JSON. Nothing was taken."))
                   .arg(refusal.place.line)
                   .arg(refusal.place.column);
    const QString said = refusal.offending.empty() ? QString() : QLatin1String(" ") + utf8(refusal.offending);
    return source + utf8(refusal.place.field) + said + QLatin1String(": ") + exportCause(refusal.detail) +
           refusalText(QT_TRANSLATE_NOOP("refusals", ". Nothing was taken."));
}

/// Behind the file, the line and the column that it is about, where it has one.
QString inItsPlace(const Refusal& refusal, const QString& said) {
    if (refusal.place.line <= 0) return said;
    const QString where = refusal.place.column > 0
                              ? refusalText(QT_TRANSLATE_NOOP("refusals", "line %1, column %2"))
                                    .arg(refusal.place.line)
                                    .arg(refusal.place.column)
                              : refusalText(QT_TRANSLATE_NOOP("refusals", "line %1")).arg(refusal.place.line);
    const QString source =
        refusal.place.source.empty() ? where : utf8(refusal.place.source) + QLatin1String(", ") + where;
    return source + QLatin1String(": ") + said;
}

} // namespace

QString sentence(const Refusal& refusal) {
    const bool ofExport =
        refusal.code == RefusalCode::badJson && (refusal.place.line > 0 || refusal.place.field.starts_with('/'));
    if (ofExport) return exportSentence(refusal);
    if (refusal.code == RefusalCode::badAttribute)
        return inItsPlace(refusal, refusedAnswer(refusal.place.field, refusal.offending, refusal.detail));
    constexpr std::string_view kPlaced = "placed:";
    if (refusal.code == RefusalCode::cannotWrite && refusal.detail.starts_with(kPlaced))
        return refusalText(QT_TRANSLATE_NOOP("refusals",
                                             "%1 was restored, but the disk has not said that it will stay: "
                                             "look at it again. The book that stood there is kept as %2."))
            .arg(utf8(refusal.offending), utf8(refusal.detail.substr(kPlaced.size())));
    if (refusal.code == RefusalCode::cannotWrite && (refusal.detail == "kept" || refusal.detail == "unsure"))
        return refusalText(refusal.detail == "kept"
                               ? QT_TRANSLATE_NOOP("refusals", "It was written to %1, but the disk has not said that "
                                                               "it will stay: look at it again.")
                               : QT_TRANSLATE_NOOP("refusals", "The disk failed in the moment of storing, and whether "
                                                               "it was kept in %1 cannot be seen now: look at it "
                                                               "again before you do it once more."))
            .arg(utf8(refusal.offending));
    const auto found = sentences().find(refusal.code);
    QString said = refusalText(found == sentences().end() ? QT_TRANSLATE_NOOP("refusals", "This was refused: %1.")
                                                          : found->second);
    // Replaced by hand and in this order: the offending text may itself hold a %.
    const std::string& subject = refusal.offending.empty() ? refusal.place.source : refusal.offending;
    const QString detail = refusal.code == RefusalCode::otherDatum ? referenceName(dimension::keyHeight, refusal.detail)
                                                                   : causeText(refusal.code, refusal.detail);
    // a cell of ten megabytes is not said in full; a name of a file and the program's own sentence are
    const bool isSentence = refusal.code == RefusalCode::usage;
    const bool isPath = subject.find('/') != std::string::npos;
    const int most = isSentence ? 1'000 : isPath ? 400 : 80;
    const QString parts[] = {shortened(utf8(subject), most), shortened(detail, 400),
                             shortened(utf8(refusal.place.field), 80)};
    QString out;
    for (qsizetype i = 0; i < said.size(); ++i) {
        if (said[i] == QLatin1Char('%') && i + 1 < said.size() && said[i + 1] >= QLatin1Char('1') &&
            said[i + 1] <= QLatin1Char('3')) {
            out += parts[said[i + 1].digitValue() - 1];
            ++i;
        } else {
            out += said[i];
        }
    }
    return inItsPlace(refusal, out);
}

namespace {

QString slipSentence(const Question& question) {
    static const std::map<std::string, const char*> slips = {
        {"inch-for-mm", QT_TRANSLATE_NOOP("refusals", "were inches meant?")},
        {"mm-for-inch", QT_TRANSLATE_NOOP("refusals", "were millimetres meant?")},
        {"lost-zero", QT_TRANSLATE_NOOP("refusals", "has a zero been lost?")},
        {"lost-mark", QT_TRANSLATE_NOOP("refusals", "has the decimal mark been lost?")},
        {"date-from-fraction",
         QT_TRANSLATE_NOOP("refusals", "it looks like a date that a spreadsheet made from a fraction")},
        {"repeat-far", QT_TRANSLATE_NOOP("refusals", "it is far from what was read here before: read it once more")},
        {"repeat-unit", QT_TRANSLATE_NOOP("refusals", "it was read in another unit before: is the unit right?")},
        {"off-rail", QT_TRANSLATE_NOOP("refusals", "is the hammer off the rail?")},
        {"negative-gap", QT_TRANSLATE_NOOP("refusals", "was a gap under the straightedge meant?")},
        {"grouping", QT_TRANSLATE_NOOP("refusals", "is the mark a decimal mark?")},
        {"mixed-datum",
         QT_TRANSLATE_NOOP("refusals",
                           "a height over another datum than the others; without the height between the two it is not "
                           "turned into theirs, nor averaged: begin a pass of its own for it")},
    };
    const auto found = slips.find(question.slip);
    if (found != slips.end()) return refusalText(found->second);
    switch (question.doubt) {
    case Doubt::duplicate:
        return refusalText(QT_TRANSLATE_NOOP("refusals", "the note has another value in this file; which one holds?"));
    case Doubt::date:
        return refusalText(
            QT_TRANSLATE_NOOP("refusals", "it looks like a date that a spreadsheet made from a fraction"));
    case Doubt::unitMismatch:
        return refusalText(QT_TRANSLATE_NOOP("refusals", "which unit was meant?"));
    case Doubt::outOfRange:
        return refusalText(QT_TRANSLATE_NOOP("refusals", "that is far from what an action has"));
    default:
        return refusalText(QT_TRANSLATE_NOOP("refusals", "that is unusual; is it right?"));
    }
}

} // namespace

QString sentence(const Question& question, const Piano& piano) {
    QString said;
    if (question.place.line > 0)
        said = refusalText(QT_TRANSLATE_NOOP("refusals", "line %1: ")).arg(question.place.line);
    if (question.cell)
        said += noteName(question.cell->note, piano) + QLatin1String(", ") + name(question.cell->dimension).toLower() +
                QLatin1String(" ");
    said += QLatin1Char('"') + utf8(question.text) + QLatin1String("\": ") + slipSentence(question);
    if (!question.suggestion.empty())
        said += refusalText(QT_TRANSLATE_NOOP("refusals", " Suggested: %1.")).arg(utf8(question.suggestion));
    return said;
}

QString sentence(const RefusedRow& refused) {
    Refusal refusal;
    refusal.code = refused.code;
    refusal.offending = refused.text.empty() ? refused.note : refused.text;
    refusal.place.line = refused.line;
    refusal.place.column = refused.column;
    if (refused.dimension) {
        const Dimension& d = row(*refused.dimension);
        refusal.detail = exactText(d.refuseLow, d.kind) + " .. " + exactText(d.refuseHigh, d.kind) + ' ' +
                         std::string(key(d.entryUnit));
        refusal.place.field = d.key;
        if (refused.code == RefusalCode::unknownWord) {
            refusal.detail = wordsAllowed(d.id);
            if (!d.wordsOnly) refusal.detail += refusal.detail.empty() ? "number" : "|number";
        }
    }
    return sentence(refusal);
}

} // namespace hammerline::words
