// What is said when a file, a book or a disk fails: what is wrong, where, what to do, and what is still safe.
#include "ui/words/words.h"

#include <QTest>

using namespace hammerline;
using enum RefusalCode;

namespace {

struct Said {
    RefusalCode code;
    const char *detail, *sentence;
};

/// Every cause that db, core and app give for a file or a book, with the sentence for it.
const std::vector<Said>& table() {
    static const std::vector<Said> rows = {
        {cannotRead, "missing",
         "F cannot be read: there is no such file; look at its name and its folder. Nothing was changed."},
        {cannotRead, "permission",
         "F cannot be read: you are not allowed to read it; ask its owner. Nothing was changed."},
        {cannotRead, "folder", "F cannot be read: it is a folder; choose a file in it. Nothing was changed."},
        {cannotRead, "not-a-file",
         "F cannot be read: it is a device or a link to nothing, not a file. Nothing was changed."},
        {cannotRead, "input-output",
         "F cannot be read: the disk, stick or network failed; try again, or copy it to another disk. Nothing was "
         "changed."},
        {cannotRead, "cannot-open",
         "F cannot be read: it cannot be opened; look at the rights of the file and its folder. Nothing was changed."},
        {cannotWrite, "permission",
         "F cannot be written: you are not allowed to write there; choose another folder. Nothing was changed."},
        {cannotWrite, "missing", "F cannot be written: there is no such folder; make it first. Nothing was changed."},
        {cannotWrite, "folder",
         "F cannot be written: it is a folder; give the file a name in it. Nothing was changed."},
        {cannotWrite, "not-a-file",
         "F cannot be written: it is a device or a link to nothing, not a file; choose another name. Nothing was "
         "changed."},
        {cannotWrite, "input-output",
         "F cannot be written: the disk, stick or network failed; try again, or work on another disk. Nothing was "
         "changed."},
        {cannotWrite, "cannot-open",
         "F cannot be written: it cannot be opened; look at the folder and its rights. Nothing was changed."},
        {cannotWrite, "copy:row-counts",
         "F cannot be written: the copy did not come out like the book; try another disk. Nothing was changed."},
        {diskFull, "disk-full",
         "The disk is full: F could not be written. The book is as before; free some space and do it again."},
        {fileExists, "", "F is there already. Choose another name; it was left as it is."},
        {notABook, "empty", "F is no bench book: the file is empty. It was left untouched."},
        {notABook, "not-a-database", "F is no bench book: it is a file of another kind. It was left untouched."},
        {notABook, "other-application", "F is no bench book: another program made it. It was left untouched."},
        {notABook, "no-version", "F is no bench book: it carries no version. It was left untouched."},
        {notABook, "foreign:trigger:x",
         "F is no bench book: another program has changed its tables (trigger:x). It was left untouched."},
        {notABook, "journal",
         "F is no bench book: the journal beside it (of the same name, with -journal) names another file, which none "
         "of ours does; ask where it comes from, or rescue what can be read into a new book. It was left untouched."},
        {newerBook, "9",
         "F was written by a newer version of this program. Here it opens for reading only: write in it with that "
         "version. Nothing was changed."},
        {newerBook, "hot-journal",
         "F was written by a newer version of this program and left in the middle of a change: open and close it there "
         "first. Here it opens for reading only: write in it with that version. Nothing was changed."},
        {damagedBook, "truncated",
         "F is damaged (truncated). It was not written to. Restore a backup, or rescue what can be read into a new "
         "book."},
        {lockedBook, "locked",
         "F is in use by another program. Try again when that one has finished; nothing was changed."},
        {readOnlyBook, "opened-read-only", "F can only be read: it was opened for reading. Nothing was changed."},
        {readOnlyBook, "file",
         "F can only be read: the file is write-protected; take the protection off, or work on a copy. Nothing was "
         "changed."},
        {readOnlyBook, "folder",
         "F can only be read: its folder is write-protected; move the book to a folder of your own. Nothing was "
         "changed."},
        {readOnlyBook, "hot-journal",
         "F can only be read: it was left in the middle of a change, and nothing may be written here to end it. "
         "Nothing was changed."},
        {readOnlyBook, "read-only", "F can only be read: the disk is write-protected. Nothing was changed."},
        {readOnlyBook, "older:folder",
         "F can only be read: it is of an older version and has to be brought up to date, but its folder is "
         "write-protected; move the book to a folder of your own. Nothing was changed."},
        {replacedFile, "", "F was replaced by another file; open it again. What is being typed is kept in its field."},
        {replacedFile, "gone",
         "F is no longer there; bring it back, or open the book where it is now. What is being typed is kept in its "
         "field."},
        {tooLarge, "256 MB", "F is larger than what can be taken in at once (256 MB; split it). Nothing was changed."},
        {tooLarge, "1 MB",
         "F is larger than what can be taken in at once (1 MB; look whether it is the right file). Nothing was "
         "changed."},
        {cannotWrite, "kept", "It was written to F, but the disk has not said that it will stay: look at it again."},
        {cannotWrite, "unsure",
         "The disk failed in the moment of storing, and whether it was kept in F cannot be seen now: look at it again "
         "before you do it once more."},
        {tooLarge, "memory",
         "F is larger than what can be taken in at once (there is not that much memory; close other programs). Nothing "
         "was changed."},
        {tooLarge, "too-large",
         "F is larger than what can be taken in at once (a text in it is longer than 64 MB; look at where it comes "
         "from). Nothing was changed."},
        {emptyFile, "", "F is empty. Choose another file; nothing was changed."},
        {badTable, "unterminated-quote",
         "This is no table that can be read: a quotation mark is opened and never closed; close it. Nothing was "
         "taken."},
        {badTable, "text-after-quote",
         "This is no table that can be read: text stands after a closing quotation mark; take it out, or double the "
         "mark. Nothing was taken."},
        {badTable, "too-many-columns",
         "This is no table that can be read: a line has more than 4,096 columns; look at its separators. Nothing was "
         "taken."},
        {badTable, "zero-byte",
         "This is no table that can be read: it holds a zero byte, which no text does; save it anew as CSV. Nothing "
         "was taken."},
        {badTable, "half-character",
         "This is no table that can be read: it breaks off within a character; copy the file anew. Nothing was taken."},
        {badTable, "encoding",
         "This is no table that can be read: its letters are in no known encoding; save it as UTF-8. Nothing was "
         "taken."},
        {badTable, "note-column",
         "This is no table that can be read: no column says which note; head one with \"note\". Nothing was taken."},
        {badTable, "dimension-column",
         "This is no table that can be read: no column is headed with the name of a dimension; head one with it. "
         "Nothing was taken."},
        {cancelled, "", "Stopped. Nothing was changed."},
        {goneOnSince, "", "This cannot be taken back: somebody has gone on from there. Nothing was changed."},
    };
    return rows;
}

} // namespace

class FailureWordsTest : public QObject {
    Q_OBJECT
private Q_SLOTS:
    void everyFailureIsSaidInFull() {
        for (const Said& row : table())
            QCOMPARE(words::sentence(Refusal{row.code, {}, "F", row.detail}), QString::fromUtf8(row.sentence));
    }

    void whereAFileIsWrongStandsBeforeIt() {
        QCOMPARE(
            words::sentence(Refusal{badTable, {"in.csv", 2, 3, {}}, {}, "zero-byte"}),
            QStringLiteral("in.csv, line 2, column 3: This is no table that can be read: it holds a zero byte, which "
                           "no text does; save it anew as CSV. Nothing was taken."));
    }

    /// A name may hold what a sentence is made with.
    void aPercentInANameIsANameAllTheSame() {
        QCOMPARE(words::sentence(Refusal{fileExists, {}, "50 %1 %2.hammerline", {}}),
                 QStringLiteral("50 %1 %2.hammerline is there already. Choose another name; it was left as it is."));
    }
};

QTEST_APPLESS_MAIN(FailureWordsTest)
#include "failure_words_test.moc"
