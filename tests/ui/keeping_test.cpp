// The book as a file, from the window: replaced underneath, gone, merged, restored, damaged. No typed text is lost.
#include "ui/main_window.h"
#include "ui/stations/measure_editor.h"
#include "ui/stations/measure_station.h"
#include "ui/stations/measure_view.h"
#include "ui/widgets/dialogs.h"

#include <QFile>
#include <QFileInfo>
#include <QTemporaryDir>
#include <QTest>

using namespace hammerline;

namespace {

/// Answers every question with what was laid ready.
class Answering : public Dialogs {
public:
    QString fileToOpen(QWidget*, const QString&, const QString&) override { return file; }
    int choose(QWidget*, const QString&, const QString& text, const QStringList&, const QString&) override {
        said = text;
        return choice;
    }
    void say(QWidget*, const QString&, const QString& text) override { said = text; }
    QString file, said;
    int choice = -1;
};

Reading reading(double mm) {
    Reading made;
    made.count = fromMm(mm).nm;
    made.typed = std::to_string(mm);
    made.typedUnit = "mm";
    return made;
}

} // namespace

class KeepingTest : public QObject {
    Q_OBJECT
private Q_SLOTS:
    void init() {
        m_folder = std::make_unique<QTemporaryDir>();
        dress(Theme::light, 100);
        auto answering = std::make_unique<Answering>();
        m_answers = answering.get();
        Dialogs::replace(std::move(answering));
        m_bench = std::make_unique<Workbench>();
        QVERIFY(m_bench->createBook(path()).has_value());
        auto piano = makePiano(ActionKind::upright);
        QVERIFY(piano.has_value());
        piano->name = "Test upright";
        QVERIFY(m_bench->addPiano(*piano, "upright").has_value());
        QVERIFY(m_bench->enter({{1}, dimension::letOff}, reading(3)).has_value());
        QVERIFY(QFile::copy(path(), other()));
        m_settings = std::make_unique<Settings>(m_folder->filePath(QStringLiteral("t.ini")));
        m_window = std::make_unique<MainWindow>(*m_bench, *m_settings);
        QVERIFY(m_window->showStation(QStringLiteral("measure")));
        m_window->show();
        m_bench->setCell({{5}, dimension::letOff});
        grid().setFocus();
    }
    void cleanup() {
        m_window.reset();
        m_bench.reset();
        Dialogs::replace(nullptr);
    }

    void anotherProgramsReadingIsSeenAndTheOpenFieldStays() {
        type(QStringLiteral("2.7"));
        QVERIFY(grid().editor());
        auto outside = BenchBook::open(path().toStdString());
        QVERIFY(outside.has_value());
        const NewReading one{{{9}, dimension::letOff}, reading(2.2)};
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
            const NewReading one{{{9}, dimension::letOff}, reading(2.2)};
            QVERIFY(outside->store(m_bench->record()->uuid, 1, {&one, 1}).has_value());
        }
        type(QStringLiteral("2.7"));
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
        QVERIFY(!m_bench->enter({{2}, dimension::letOff}, reading(3)).has_value());
        QVERIFY(QFile::rename(path() + QStringLiteral(".away"), path()));
        m_bench->look();
        QVERIFY(!m_bench->trouble());
        QVERIFY(m_bench->enter({{2}, dimension::letOff}, reading(3)).has_value());
    }

    void anotherBookIsMergedFromTheMenu() {
        {
            auto outside = BenchBook::open(other().toStdString());
            QVERIFY(outside.has_value());
            const NewReading one{{{9}, dimension::letOff}, reading(2.2)};
            QVERIFY(outside->store(m_bench->record()->uuid, 1, {&one, 1}).has_value());
        }
        m_answers->file = other();
        m_window->mergeBook();
        QCOMPARE(m_bench->pass()->value({{9}, dimension::letOff}).value_or(0), 2'200'000);
        QVERIFY(m_answers->said.isEmpty()); // nothing to settle
    }

    void aBackupIsRestoredFromTheMenu() {
        QVERIFY(m_bench->enter({{1}, dimension::letOff}, reading(4)).has_value());
        m_answers->file = other();
        m_window->restoreBackup();
        QCOMPARE(m_bench->pass()->value({{1}, dimension::letOff}).value_or(0), 3'000'000);
        QVERIFY(!m_bench->trouble());
        QVERIFY(m_bench->enter({{1}, dimension::letOff}, reading(4)).has_value());
    }

    void aDamagedBookIsRescuedOnTheSpot() {
        QFile file(other());
        QVERIFY(file.open(QIODevice::ReadWrite));
        QVERIFY(file.seek(30 * 4096));
        QVERIFY(file.write(QByteArray(4096, '\x55')) == 4096);
        file.close();
        m_answers->choice = 1;
        m_window->openBook(other());
        QVERIFY(m_answers->said.contains(QStringLiteral("is damaged")));
        QVERIFY(QFileInfo(m_bench->path()).fileName().startsWith(QStringLiteral("other.rescued-")));
        QCOMPARE(QString::fromStdString(m_bench->piano()->name), QStringLiteral("Test upright"));
    }

private:
    QString path() const { return m_folder->filePath(QStringLiteral("shop.hammerline")); }
    QString other() const { return m_folder->filePath(QStringLiteral("other.hammerline")); }
    MeasureView& grid() { return *m_window->findChild<MeasureView*>(); }
    /// As a person types: each key to whatever has the focus by then.
    void type(const QString& text) {
        for (const QChar key : text)
            QTest::keyClick(grid().editor() ? static_cast<QWidget*>(grid().editor()) : &grid(), key.toLatin1());
    }

    std::unique_ptr<QTemporaryDir> m_folder;
    std::unique_ptr<Workbench> m_bench;
    std::unique_ptr<Settings> m_settings;
    std::unique_ptr<MainWindow> m_window;
    Answering* m_answers = nullptr;
};

QTEST_MAIN(KeepingTest)
#include "keeping_test.moc"
