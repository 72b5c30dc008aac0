// The book as a file, from the window: replaced underneath, gone, merged, restored, damaged. No typed text is lost.
#include <QFile>
#include <QFileInfo>
#include <QTest>

#include "window_bench.h"

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

private:
    QString other() const { return m_folder->filePath(QStringLiteral("other.hammerline")); }
};

QTEST_MAIN(KeepingTest)
#include "keeping_test.moc"
