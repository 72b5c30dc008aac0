// The book as a file, from the window: replaced underneath, gone, merged, restored, damaged. No typed text is lost.
#include "core/sheet/sheet.h"
#include "ui/print/sheets.h"
#include "ui/stations/station_words.h"

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QLabel>
#include <QPrintPreviewDialog>
#include <QPrintPreviewWidget>
#include <QPrinter>
#include <QProgressDialog>
#include <QStorageInfo>
#include <QTest>
#include <QTimer>
#include <QtEndian>

#include "window_bench.h"
#include <numeric>
#include <set>

using namespace hammerline;

class KeepingTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void init() {
        open();
        QVERIFY(m_bench->enter({{1}, dimension::letOff}, reading("3")).has_value());
        QVERIFY(QFile::copy(path(), other()));
        m_bench->setCell({{5}, dimension::letOff});
    }
    void cleanup() { close(); }

    void anotherProgramsReadingIsSeenAndTheOpenFieldStays() {
        typeInGrid(QStringLiteral("2.7"));
        QVERIFY(grid().editor());
        auto outside = BenchBook::open(path().toStdString());
        QVERIFY(outside.has_value());
        const NewReading one{{{9}, dimension::letOff}, reading("2.2")};
        QVERIFY(outside->store(m_bench->record()->uuid, 1, {&one, 1}).has_value());
        m_bench->look();
        QCOMPARE(m_bench->pass()->value({{9}, dimension::letOff}).value_or(0), 2'200'000);
        QVERIFY(grid().editor());
        QCOMPARE(grid().editor()->text(), QStringLiteral("2.7"));
        QVERIFY(m_window->leaveStation());
        QCOMPARE(m_bench->pass()->value({{5}, dimension::letOff}).value_or(0), 2'700'000);
    }

    void aCopyOnAnotherDiskIsAskedForAfterAMonthOfWork() {
        const auto said = [this] { return m_window->findChild<QLabel*>(QStringLiteral("notice"))->text(); };
        const auto workedUntil = [this](const QDate& day) { // the time of the file, told to it
            QFile file(path());
            return file.open(QIODevice::ReadWrite) &&
                   file.setFileTime(day.startOfDay(), QFileDevice::FileModificationTime);
        };
        const QDate today = QDate::currentDate();
        m_window->openBook(path());
        QVERIFY(!said().contains(QStringLiteral("another disk")));
        QVERIFY(workedUntil(today.addDays(40)));
        m_window->openBook(path());
        QVERIFY(said().contains(QStringLiteral("no copy of a month of work on another disk")));

        m_dialogs->file = m_folder->filePath(QStringLiteral("beside.hammerline"));
        m_window->backUpElsewhere();
        QVERIFY(said().contains(QStringLiteral("lies on the disk of the book")));
        QVERIFY(m_settings->value(Setting::copiesElsewhere).toMap().isEmpty());
        m_dialogs->file = path(); // never over the book itself
        m_window->backUpElsewhere();
        QVERIFY(said().contains(QStringLiteral("is there already")));

        const QTemporaryDir memory(QStringLiteral("/dev/shm/hammerline-XXXXXX"));
        if (!memory.isValid() || QStorageInfo(memory.path()) == QStorageInfo(m_folder->path()))
            QSKIP("no second disk here");
        m_dialogs->file = memory.filePath(QStringLiteral("stick.hammerline"));
        m_window->backUpElsewhere();
        QVERIFY(ok(m_dialogs->file));
        QVERIFY(!said().contains(QStringLiteral("lies on the disk of the book")));
        QVERIFY(workedUntil(today.addDays(20)));
        m_window->openBook(path());
        QVERIFY(!said().contains(QStringLiteral("another disk")));
        QVERIFY(workedUntil(today.addDays(40)));
        m_window->openBook(path());
        QVERIFY(said().contains(today.toString(Qt::ISODate)));
    }

    void whatAKilledRestoreLeftBehindIsOffered() {
        const auto said = [this] { return m_window->findChild<QLabel*>(QStringLiteral("notice"))->text(); };
        const QString left = m_folder->filePath(QStringLiteral(".%1.part-0a1b2c3d").arg(QFileInfo(path()).fileName()));
        const auto names = [this] {
            return QDir(m_folder->path()).entryList({QStringLiteral("*left-over*")}, QDir::Files);
        };
        QVERIFY(QFile::copy(other(), left));
        m_dialogs->choice = 2; // leave it as it is
        m_window->openBook(path());
        QVERIFY(m_dialogs->said.contains(QFileInfo(left).fileName()));
        QVERIFY(m_dialogs->said.contains(QStringLiteral("whole, sound book")));
        QVERIFY(QFile::exists(left));
        m_dialogs->choice = -1; // and closed
        m_window->openBook(path());
        QVERIFY(QFile::exists(left));
        m_dialogs->choice = 0; // keep it
        m_window->openBook(path());
        QVERIFY(!QFile::exists(left));
        QCOMPARE(names().size(), 1);
        QVERIFY(said().contains(names().first()));
        QVERIFY(BenchBook::open(m_folder->filePath(names().first()).toStdString()).has_value());

        QFile half(left); // the first page of a copy
        QFile whole(other());
        QVERIFY(half.open(QIODevice::WriteOnly) && whole.open(QIODevice::ReadOnly));
        half.write(whole.read(4096));
        half.close();
        m_dialogs->choice = 1; // leave it as it is: there is nothing to keep
        m_window->openBook(path());
        QVERIFY(m_dialogs->said.contains(QStringLiteral("no whole book")));
        QVERIFY(QFile::exists(left));
        m_dialogs->choice = 0;
        m_window->openBook(path());
        QVERIFY(!QFile::exists(left));
        m_dialogs->said.clear();
        m_window->openBook(path());
        QVERIFY(m_dialogs->said.isEmpty());
    }

    void aReplacedFileIsNoticedAndOpenedAgainWithTheTypedTextInItsField() {
        {
            auto outside = BenchBook::open(other().toStdString());
            QVERIFY(outside.has_value());
            const NewReading one{{{9}, dimension::letOff}, reading("2.2")};
            QVERIFY(outside->store(m_bench->record()->uuid, 1, {&one, 1}).has_value());
        }
        typeInGrid(QStringLiteral("2.7"));
        QVERIFY(QFile::rename(path(), path() + QStringLiteral(".old")));
        QVERIFY(QFile::rename(other(), path()));
        m_bench->look();
        QVERIFY(m_bench->trouble().has_value());
        QVERIFY(m_bench->trouble()->code == RefusalCode::replacedFile);
        QVERIFY(!m_bench->canWrite());
        QVERIFY(!m_window->leaveStation()); // nothing is written into the wrong file
        QVERIFY(grid().editor());
        m_window->reopenBook();
        QVERIFY(!m_bench->trouble());
        QVERIFY(grid().editor());
        QCOMPARE(grid().editor()->text(), QStringLiteral("2.7"));
        QVERIFY(m_window->leaveStation());
        QCOMPARE(m_bench->pass()->value({{5}, dimension::letOff}).value_or(0), 2'700'000);
        QCOMPARE(m_bench->pass()->value({{9}, dimension::letOff}).value_or(0), 2'200'000);
    }

    void aBookThatIsGoneIsNoticedAndGoesOnWhenItIsBack() {
        QVERIFY(QFile::rename(path(), path() + QStringLiteral(".away")));
        m_bench->look();
        QVERIFY(m_bench->trouble().has_value());
        QCOMPARE(QString::fromStdString(m_bench->trouble()->detail), QStringLiteral("gone"));
        QVERIFY(!m_bench->enter({{2}, dimension::letOff}, reading("3")).has_value());
        QVERIFY(QFile::rename(path() + QStringLiteral(".away"), path()));
        m_bench->look();
        QVERIFY(!m_bench->trouble());
        QVERIFY(m_bench->enter({{2}, dimension::letOff}, reading("3")).has_value());
    }

    void anotherBookIsMergedFromTheMenu() {
        {
            auto outside = BenchBook::open(other().toStdString());
            QVERIFY(outside.has_value());
            const NewReading one{{{9}, dimension::letOff}, reading("2.2")};
            QVERIFY(outside->store(m_bench->record()->uuid, 1, {&one, 1}).has_value());
        }
        m_dialogs->file = other();
        m_window->mergeBook();
        QCOMPARE(m_bench->pass()->value({{9}, dimension::letOff}).value_or(0), 2'200'000);
        QVERIFY(m_dialogs->said.isEmpty()); // nothing to settle
        const QString told = m_window->findChild<QLabel*>(QStringLiteral("notice"))->text();
        QVERIFY(told.contains(m_folder->filePath(QStringLiteral("t.before-merge-"))));
        QVERIFY(told.endsWith(QStringLiteral("goes with it: Book, Restore a backup.")));
    }

    void aBackupIsRestoredFromTheMenu() {
        QVERIFY(m_bench->enter({{1}, dimension::letOff}, reading("4")).has_value());
        m_dialogs->file = other();
        m_window->restoreBackup();
        QCOMPARE(m_bench->pass()->value({{1}, dimension::letOff}).value_or(0), 3'000'000);
        QVERIFY(!m_bench->trouble());
        QVERIFY(m_bench->enter({{1}, dimension::letOff}, reading("4")).has_value());
    }

    void aDamagedBookIsRescuedOnTheSpot() {
        QFile file(other());
        QVERIFY(file.open(QIODevice::ReadWrite));
        QVERIFY(file.seek(30 * 4096));
        QVERIFY(file.write(QByteArray(4096, '\x55')) == 4096);
        file.close();
        m_dialogs->choice = 1;
        m_window->openBook(other());
        QVERIFY(m_dialogs->said.contains(QStringLiteral("is damaged")));
        QVERIFY(QFileInfo(m_bench->path()).fileName().startsWith(QStringLiteral("other.rescued-")));
        QCOMPARE(QString::fromStdString(m_bench->piano()->name), QStringLiteral("Test upright"));
    }

    void aBookWithAHostileJournalIsRescuedWithoutIt() {
        const QByteArray named = "/precious.txt";
        QFile journal(other() + QStringLiteral("-journal"));
        QVERIFY(journal.open(QIODevice::WriteOnly));
        const auto number = [](int value) {
            QByteArray bytes(4, '\0');
            qToBigEndian(value, bytes.data());
            return bytes;
        };
        const QByteArray mark = QByteArray::fromHex("d9d505f920a163d7"); // sqlite.org/fileformat2.html, section 3
        journal.write(mark + QByteArray(504, '\0') + named + number(static_cast<int>(named.size())) +
                      number(std::accumulate(named.begin(), named.end(), 0)) + mark);
        journal.close();
        m_dialogs->choice = 1;
        m_window->openBook(other());
        QVERIFY(m_dialogs->said.contains(QStringLiteral("names another file")));
        QVERIFY(QFileInfo(m_bench->path()).fileName().startsWith(QStringLiteral("other.rescued-")));
    }

    void workOnAWholeBookShowsABarThatMoves_data() { works(); }
    void workOnAWholeBookShowsABarThatMoves() {
        QFETCH(QString, does);
        goApart();
        watchBar(false);
        QVERIFY(start(does));
        QVERIFY(m_seen.size() > 3);
        QVERIFY(*m_seen.rbegin() <= 1000);
        QVERIFY(m_dialogs->said.isEmpty() || does == QLatin1String("rescue"));
        QVERIFY(!m_bench->trouble());
    }

    void workOnAWholeBookIsStoppedAndLeavesAllAsItWas_data() { works(); }
    void workOnAWholeBookIsStoppedAndLeavesAllAsItWas() {
        QFETCH(QString, does);
        goApart();
        const auto before = everything();
        const std::string record = exportJson({*m_bench->record()});
        watchBar(true);
        QVERIFY(start(does));
        QCOMPARE(m_seen.size(), std::size_t{1});
        QVERIFY(m_window->findChild<QLabel*>(QStringLiteral("notice"))
                    ->text()
                    .contains(QStringLiteral("Stopped. Nothing was changed.")));
        QVERIFY(everything() == before);
        QVERIFY(exportJson({*m_bench->record()}) == record);
        // and the window goes on, here and with what another does
        m_stopper.stop();
        QVERIFY(m_bench->enter({{2}, dimension::letOff}, reading("3")).has_value());
        auto outside = BenchBook::open(path().toStdString());
        const NewReading one{{{9}, dimension::letOff}, reading("2.4")};
        QVERIFY(outside->store(m_bench->record()->uuid, 1, {&one, 1}).has_value());
        QTRY_COMPARE(valueAt(9, dimension::letOff), 24 * kTenth);
    }

    void aTakenNameIsNeverABookThatASheetIsPrintedOver() {
        const QByteArray before = bytesOf(other());
        const auto printed = printToPdf(SheetKind::check, *m_bench->record(), 1, nullptr, {}, other().toStdString());
        QVERIFY(!printed);
        QVERIFY(printed.error().code == RefusalCode::fileExists);
        QCOMPARE(bytesOf(other()), before);
    }

    void thePreviewPrintsNoBookOver() {
        const QByteArray before = bytesOf(other());
        const QString free = m_folder->filePath(QStringLiteral("check.pdf"));
        m_dialogs->onRun = [&](QDialog& dialog) {
            auto* preview = qobject_cast<QPrintPreviewDialog*>(&dialog);
            QVERIFY(preview);
            for (const QString& file : {other(), free}) {
                preview->printer()->setOutputFileName(file);
                preview->findChild<QPrintPreviewWidget*>()->print();
            }
        };
        QCOMPARE(previewSheet(m_window.get(), static_cast<int>(SheetKind::check), *m_bench->record(), 1, nullptr, 0),
                 QString());
        QVERIFY(m_dialogs->said.contains(QStringLiteral("other.hammerline")));
        QCOMPARE(bytesOf(other()), before);
        QVERIFY(bytesOf(free).startsWith("%PDF-"));
    }

private:
    static void works() {
        QTest::addColumn<QString>("does");
        for (const char* each : {"back up", "merge", "restore", "rescue", "open an older one"})
            QTest::newRow(each) << QString::fromLatin1(each);
    }
    /// By what a person clicks. The rescue is of the other book, damaged.
    bool start(const QString& does) {
        m_dialogs->file = other();
        m_dialogs->waits = 0;
        if (does == QLatin1String("merge")) m_window->mergeBook();
        if (does == QLatin1String("restore")) m_window->restoreBackup();
        if (does == QLatin1String("back up")) {
            QAction* action = nullptr;
            for (QAction* each : m_window->findChildren<QAction*>())
                if (each->shortcut() == QKeySequence(QStringLiteral("Ctrl+B"))) action = each;
            if (!action) return false;
            action->trigger();
        }
        if (does == QLatin1String("rescue")) {
            m_dialogs->choice = 1;
            m_window->openBook(damaged());
        }
        if (does == QLatin1String("open an older one")) m_window->openBook(older());
        return true;
    }
    /// The other book says what this one does not, and a third is damaged.
    void goApart() {
        std::vector<NewReading> repeats; // so many that there is something to see
        for (int note = 1; note <= 88; ++note)
            for (int trial = 0; trial < 20; ++trial) {
                repeats.push_back({{{note}, dimension::blow}, reading("45")});
                repeats.back().reading.trial = 0;
            }
        QVERIFY(m_bench->enterAll(repeats, "entry").has_value());
        QVERIFY(QFile::remove(other()) && QFile::copy(path(), other()));
        auto outside = BenchBook::open(other().toStdString());
        QVERIFY(outside.has_value());
        std::vector<NewReading> many;
        for (int note = 1; note <= 88; ++note)
            many.push_back({{{note}, dimension::keyDip}, reading("10")});
        QVERIFY(outside->store(m_bench->record()->uuid, 1, many).has_value());
        outside = BenchBook::open(path().toStdString());
        QVERIFY(
            QFile::copy(QStringLiteral(HAMMERLINE_SOURCE_DIR "/tests/reference/books/schema_1.hammerline"), older()));
        QVERIFY(QFile::copy(other(), damaged()));
        QFile file(damaged());
        QVERIFY(file.open(QIODevice::ReadWrite));
        QVERIFY(file.seek(30 * 4096));
        QVERIFY(file.write(QByteArray(4096, '\x55')) == 4096);
    }
    /// Notes every value of the bar that is seen, or presses Stop as soon as it is there.
    void watchBar(bool stop) {
        m_seen.clear();
        m_stopper.disconnect();
        QObject::connect(&m_stopper, &QTimer::timeout, &m_stopper, [this, stop] {
            for (auto* bar : m_window->findChildren<QProgressDialog*>()) {
                if (!bar->isVisible() || bar->wasCanceled()) continue;
                m_seen.insert(bar->value());
                if (stop) bar->cancel();
            }
        });
        m_stopper.start(0);
    }
    std::map<QString, QByteArray> everything() const {
        std::map<QString, QByteArray> all;
        for (const QString& name : QDir(m_folder->path()).entryList(QDir::Files | QDir::Hidden))
            if (name.contains(QLatin1String(".hammerline"))) all[name] = bytesOf(m_folder->filePath(name));
        return all;
    }
    static bool ok(const QString& book) {
        const auto opened = BenchBook::open(book.toStdString(), OpenMode::readOnly);
        const auto verified = opened ? opened->verify() : Outcome<Verification>();
        return opened && verified && verified->sound;
    }
    static QByteArray bytesOf(const QString& path) {
        QFile file(path);
        return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
    }
    QString damaged() const { return m_folder->filePath(QStringLiteral("damaged.hammerline")); }
    QString older() const { return m_folder->filePath(QStringLiteral("older.hammerline")); }
    QTimer m_stopper;
    std::set<int> m_seen;

    QString other() const { return m_folder->filePath(QStringLiteral("other.hammerline")); }
};

QTEST_MAIN(KeepingTest)
#include "keeping_test.moc"
