// The grid of readings under a person's hands: typing, taking back, pasting, leaving with an open field.
#include "ui/main_window.h"
#include "ui/stations/measure_editor.h"
#include "ui/stations/measure_intake.h"
#include "ui/stations/measure_station.h"
#include "ui/stations/measure_view.h"
#include "ui/widgets/dialogs.h"

#include <QAbstractItemModelTester>
#include <QSignalSpy>
#include <QTemporaryDir>
#include <QTest>

using namespace hammerline;

namespace {

/// Takes every dialog of our own, so that no test waits for a person.
class Agreeing : public Dialogs {
public:
    bool run(QDialog&) override {
        ++asked;
        return true;
    }
    void say(QWidget*, const QString&, const QString& text) override { said = text; }
    int asked = 0;
    QString said;
};

} // namespace

class MeasureTest : public QObject {
    Q_OBJECT
private Q_SLOTS:
    void init() {
        m_folder = std::make_unique<QTemporaryDir>();
        dress(Theme::light, 100);
        m_bench = std::make_unique<Workbench>();
        QVERIFY(m_bench->createBook(path()).has_value());
        auto piano = makePiano(ActionKind::upright);
        QVERIFY(piano.has_value());
        piano->name = "Test upright";
        QVERIFY(m_bench->addPiano(*piano, "upright").has_value());
        m_settings = std::make_unique<Settings>(m_folder->filePath(QStringLiteral("t.ini")));
        m_window = std::make_unique<MainWindow>(*m_bench, *m_settings);
        QVERIFY(m_window->showStation(QStringLiteral("measure")));
        m_window->show();
        m_bench->setCell({{1}, dimension::letOff});
        grid().setFocus();
    }
    void cleanup() {
        Dialogs::replace(nullptr);
        m_window.reset();
        m_bench.reset();
    }

    void theModelKeepsItsPromises() {
        MeasureModel model(*m_bench);
        const QAbstractItemModelTester tester(&model, QAbstractItemModelTester::FailureReportingMode::Fatal);
        QCOMPARE(model.rowCount(), 88);
        QVERIFY(m_bench->enter({{5}, dimension::letOff}, reading("2.5")).has_value());
        QVERIFY(m_bench->undo().has_value());
        QVERIFY(model.data(model.indexOf({{5}, dimension::letOff}), Qt::AccessibleTextRole)
                    .toString()
                    .startsWith(QStringLiteral("Note 5")));
    }

    void aWholePassIsTypedWithDigitsAndEnter() {
        for (int n = 1; n <= 88; ++n) {
            QCOMPARE(m_bench->note().value, n);
            type(QStringLiteral("2.%1").arg(n % 10));
            QTest::keyClick(focus(), Qt::Key_Return);
        }
        for (int n = 1; n <= 88; ++n)
            QCOMPARE(m_bench->pass()->value({{n}, dimension::letOff}).value_or(0), (20 + n % 10) * (kNmPerMm / 10));
    }

    void anyUnitHoldsAndTheTypedTextStays() {
        m_bench->setCell({{10}, dimension::blow});
        type(QStringLiteral("1 13/16"));
        QVERIFY(grid().editor());
        QCOMPARE(grid().editor()->meaning().kind, Understanding::Kind::sound);
        QVERIFY(grid().editor()->plate().headline().contains(QStringLiteral("46.04 mm")));
        QTest::keyClick(focus(), Qt::Key_Return);
        // 1 13/16 in = 46.0375 mm exactly (25.4 mm to the inch)
        QCOMPARE(m_bench->pass()->value({{10}, dimension::blow}).value_or(0), std::int64_t{46'037'500});
        QCOMPARE(m_bench->pass()->at({{10}, dimension::blow})->latest()->typed, std::string("1 13/16"));
    }

    void undoAndRedoWorkFromInsideTheField() {
        type(QStringLiteral("2.4"));
        QTest::keyClick(focus(), Qt::Key_Return);
        grid().setCurrentIndex(grid().readings().indexOf({{1}, dimension::letOff}));
        QTest::keyClick(focus(), Qt::Key_F2);
        QVERIFY(grid().editor());
        QTest::keyClick(focus(), Qt::Key_Z, Qt::ControlModifier);
        QVERIFY(!m_bench->pass()->value({{1}, dimension::letOff}));
        QTest::keyClick(focus(), Qt::Key_F2);
        QTest::keyClick(focus(), Qt::Key_Y, Qt::ControlModifier);
        QCOMPARE(m_bench->pass()->value({{1}, dimension::letOff}).value_or(0), 24 * (kNmPerMm / 10));
    }

    void escapeRestoresOneCellOnly() {
        type(QStringLiteral("2.4"));
        QTest::keyClick(focus(), Qt::Key_Return);
        type(QStringLiteral("9"));
        QTest::keyClick(focus(), Qt::Key_Escape);
        QVERIFY(!grid().editor());
        QCOMPARE(m_bench->pass()->readingCount(), std::size_t{1});
    }

    void aRefusedTextStaysInItsField() {
        m_bench->setCell({{3}, dimension::blow});
        type(QStringLiteral("445"));
        QTest::keyClick(focus(), Qt::Key_Return);
        QVERIFY(grid().editor());
        QCOMPARE(grid().editor()->text(), QStringLiteral("445"));
        QVERIFY(grid().editor()->asking());
        QVERIFY(!m_window->showStation(QStringLiteral("review")));
        QTest::keyClick(focus(), Qt::Key_Escape);
        QVERIFY(m_window->showStation(QStringLiteral("review")));
    }

    void anotherStationTakesTheOpenFieldsReadingAlong() {
        type(QStringLiteral("2.7"));
        QVERIFY(m_window->showStation(QStringLiteral("review")));
        QCOMPARE(m_bench->pass()->value({{1}, dimension::letOff}).value_or(0), 27 * (kNmPerMm / 10));
    }

    void wordsAreOneKeyEach() {
        QTest::keyClick(focus(), Qt::Key_B);
        QCOMPARE(m_bench->pass()->at({{1}, dimension::letOff})->word(), std::optional(word::blocks));
        QCOMPARE(m_bench->note().value, 2);
        QTest::keyClick(focus(), Qt::Key_O); // its own dimension; the cursor stays
        QCOMPARE(m_bench->pass()->at({{2}, dimension::lostMotion})->word(), std::optional(word::offRail));
        QCOMPARE(m_bench->note().value, 2);
        QTest::keyClick(focus(), Qt::Key_N);
        QVERIFY(m_bench->pass()->at({{2}, dimension::letOff})->notFitted);
    }

    void aColumnFromASpreadsheetIsLaidDownFromTheCell() {
        auto agreeing = std::make_unique<Agreeing>();
        Agreeing* dialogs = agreeing.get();
        Dialogs::replace(std::move(agreeing));
        grid().pasteText(QStringLiteral("2,4\n2,6\nblocks\n2.8\n"));
        QCOMPARE(dialogs->asked, 1);
        QCOMPARE(m_bench->pass()->readingCount(), std::size_t{4});
        QVERIFY(m_bench->undo().has_value()); // one paste is one act
        QCOMPARE(m_bench->pass()->readingCount(), std::size_t{0});
    }

    void whatWasTypedIsThereAfterReopening() {
        type(QStringLiteral("3.1"));
        QTest::keyClick(focus(), Qt::Key_Return);
        Workbench other;
        QVERIFY(other.openBook(path()).has_value());
        QCOMPARE(other.pass()->value({{1}, dimension::letOff}).value_or(0), 31 * (kNmPerMm / 10));
    }

    void twoWindowsOnOneBookFollowEachOther() {
        Workbench other;
        QVERIFY(other.openBook(path()).has_value());
        type(QStringLiteral("3.1"));
        QTest::keyClick(focus(), Qt::Key_Return);
        QTRY_VERIFY_WITH_TIMEOUT(other.pass() && other.pass()->value({{1}, dimension::letOff}), 3000);
    }

private:
    QString path() const { return m_folder->filePath(QStringLiteral("t.hammerline")); }
    MeasureView& grid() { return *m_window->findChild<MeasureView*>(); }
    QWidget* focus() {
        if (grid().editor()) return grid().editor();
        return &grid();
    }
    /// As a person types: each key to whatever has the focus by then.
    void type(const QString& text) {
        for (const QChar key : text)
            QTest::keyClick(focus(), key.toLatin1());
    }
    static Reading reading(const char* typed) {
        Reading made;
        made.count = parseQuantity(typed, Unit::mm)->count;
        made.typed = typed;
        made.typedUnit = "mm";
        return made;
    }

    std::unique_ptr<QTemporaryDir> m_folder;
    std::unique_ptr<Workbench> m_bench;
    std::unique_ptr<Settings> m_settings;
    std::unique_ptr<MainWindow> m_window;
};

QTEST_MAIN(MeasureTest)
#include "measure_test.moc"
