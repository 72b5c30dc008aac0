// The grid of readings under a person's hands: typing, taking back, pasting, leaving with an open field.
#include "ui/stations/measure_intake.h"

#include <QAbstractItemModelTester>
#include <QPaintEvent>
#include <QScrollBar>
#include <QTest>

#include "window_bench.h"

using namespace hammerline;

namespace {

/// How much of a widget is asked to be painted while this lives.
class PaintedArea : public QObject {
public:
    explicit PaintedArea(QWidget& of) { of.installEventFilter(this); }
    int pixels() const { return m_pixels; }

protected:
    bool eventFilter(QObject*, QEvent* event) override {
        if (event->type() == QEvent::Paint)
            for (const QRect& part : static_cast<QPaintEvent*>(event)->region())
                m_pixels += part.width() * part.height();
        return false;
    }

private:
    int m_pixels = 0;
};

} // namespace

class MeasureTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void init() { open(); }
    void cleanup() { close(); }

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
            typeInGrid(QStringLiteral("2.%1").arg(n % 10));
            QTest::keyClick(focus(), Qt::Key_Return);
        }
        for (int n = 1; n <= 88; ++n)
            QCOMPARE(m_bench->pass()->value({{n}, dimension::letOff}).value_or(0), (20 + n % 10) * (kNmPerMm / 10));
    }

    /// Where Enter goes on below the last row seen, what is painted moves up: a small part of the grid is painted anew.
    void enterMovesTheRowsAndPaintsOnlyWhatIsNew() {
        QVERIFY(QTest::qWaitForWindowExposed(m_window.get()));
        m_bench->setCell({{40}, dimension::letOff});
        typeInGrid(QStringLiteral("2.5"));
        QCoreApplication::processEvents();
        const int top = grid().verticalScrollBar()->value();
        PaintedArea painted(*grid().viewport());
        QTest::keyClick(focus(), Qt::Key_Return);
        QTRY_VERIFY(painted.pixels() > 0);
        QCOMPARE(m_bench->note().value, 41);
        QVERIFY(grid().verticalScrollBar()->value() > top);
        QVERIFY(painted.pixels() < grid().viewport()->width() * grid().viewport()->height() / 2);
        // and the rows to come are seen before the hand gets there
        QVERIFY(grid().viewport()->rect().contains(
            grid().visualRect(grid().readings().indexOf({{43}, dimension::letOff}))));
    }

    void anyUnitHoldsAndTheTypedTextStays() {
        m_bench->setCell({{10}, dimension::blow});
        typeInGrid(QStringLiteral("1 13/16"));
        QVERIFY(grid().editor());
        QCOMPARE(grid().editor()->meaning().kind, Understanding::Kind::sound);
        QVERIFY(grid().editor()->plate().headline().contains(QStringLiteral("46.04 mm")));
        QTest::keyClick(focus(), Qt::Key_Return);
        // 1 13/16 in = 46.0375 mm exactly (25.4 mm to the inch)
        QCOMPARE(m_bench->pass()->value({{10}, dimension::blow}).value_or(0), std::int64_t{46'037'500});
        QCOMPARE(m_bench->pass()->at({{10}, dimension::blow})->latest()->typed, std::string("1 13/16"));
    }

    void undoAndRedoWorkFromInsideTheField() {
        typeInGrid(QStringLiteral("2.4"));
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
        typeInGrid(QStringLiteral("2.4"));
        QTest::keyClick(focus(), Qt::Key_Return);
        typeInGrid(QStringLiteral("9"));
        QTest::keyClick(focus(), Qt::Key_Escape);
        QVERIFY(!grid().editor());
        QCOMPARE(m_bench->pass()->readingCount(), std::size_t{1});
    }

    void aRefusedTextStaysInItsField() {
        m_bench->setCell({{3}, dimension::blow});
        typeInGrid(QStringLiteral("445"));
        QTest::keyClick(focus(), Qt::Key_Return);
        QVERIFY(grid().editor());
        QCOMPARE(grid().editor()->text(), QStringLiteral("445"));
        QVERIFY(grid().editor()->asking());
        QVERIFY(!m_window->showStation(QStringLiteral("review")));
        QTest::keyClick(focus(), Qt::Key_Escape);
        QVERIFY(m_window->showStation(QStringLiteral("review")));
    }

    void anotherStationTakesTheOpenFieldsReadingAlong() {
        typeInGrid(QStringLiteral("2.7"));
        QVERIFY(m_window->showStation(QStringLiteral("review")));
        QCOMPARE(m_bench->pass()->value({{1}, dimension::letOff}).value_or(0), 27 * (kNmPerMm / 10));
    }

    /// Whatever the station: what is open is stored, or stays in its field and in front.
    void everyStationTakesAnOpenFieldTheSameWay() {
        for (const char* id : {"piano", "survey", "review", "work", "passes"}) {
            QVERIFY(m_window->showStation(QStringLiteral("measure")));
            const int note = m_bench->note().value;
            typeInGrid(QStringLiteral("445")); // no let-off
            QVERIFY(!m_window->showStation(QLatin1String(id)));
            QCOMPARE(m_window->station()->objectName(), QStringLiteral("measure"));
            QCOMPARE(grid().editor()->text(), QStringLiteral("445"));
            QTest::keyClick(focus(), Qt::Key_Escape);
            typeInGrid(QStringLiteral("2.7"));
            QVERIFY(m_window->showStation(QLatin1String(id)));
            QCOMPARE(valueAt(note, dimension::letOff), 27 * kTenth);
            m_bench->setNote({note + 1});
        }
    }

    void anOpenFieldOutlivesAColumnThatAnotherWindowAdds() {
        const QAbstractItemModelTester tester(&grid().readings(),
                                              QAbstractItemModelTester::FailureReportingMode::Fatal);
        m_bench->setCell({{7}, dimension::letOff});
        typeInGrid(QStringLiteral("2.7"));
        const int columns = grid().readings().columnCount();
        Workbench other;
        QVERIFY(other.openBook(path()).has_value());
        QVERIFY(other.showColumn(dimension::sharpProud).has_value()); // before let-off in the catalogue's order
        QVERIFY(other.showColumn(dimension::downWeight).has_value()); // after it
        m_bench->look();
        QCOMPARE(grid().readings().columnCount(), columns + 2);
        QVERIFY(grid().editor());
        QCOMPARE(grid().editor()->text(), QStringLiteral("2.7"));
        // the field went along with its column
        QVERIFY(grid()
                    .visualRect(grid().readings().indexOf({{7}, dimension::letOff}))
                    .contains(grid().editor()->geometry().center()));
        QTest::keyClick(focus(), Qt::Key_Return);
        QCOMPARE(valueAt(7, dimension::letOff), 27 * kTenth);
        QCOMPARE(m_bench->cell(), (Cell{{8}, dimension::letOff}));
        QVERIFY(other.undo().has_value()); // and a column goes again
        typeInGrid(QStringLiteral("2.8"));
        m_bench->look();
        QCOMPARE(grid().readings().columnCount(), columns + 1);
        QCOMPARE(grid().editor()->text(), QStringLiteral("2.8"));
    }

    void anOpenFieldOutlivesAChangeOfTheSetUp() {
        typeInGrid(QStringLiteral("2.7"));
        Workbench other;
        QVERIFY(other.openBook(path()).has_value());
        Piano piano = *other.piano();
        QVERIFY(setAttribute(piano, "last-damper", "60").has_value());
        QVERIFY(other.changePiano(piano, other.record()->specName, {}).has_value());
        m_bench->look();
        QCOMPARE(m_bench->piano()->lastDamper, std::optional(60));
        QVERIFY(grid().editor());
        QCOMPARE(grid().editor()->text(), QStringLiteral("2.7"));
    }

    void wordsAreOneKeyEach() {
        QTest::keyClick(focus(), Qt::Key_B);
        QCOMPARE(m_bench->pass()->at({{1}, dimension::letOff})->word(), std::optional(word::blocks));
        QCOMPARE(m_bench->note().value, 2);
        QTest::keyClick(focus(), Qt::Key_O); // a word of lost motion: nothing is entered there from here
        QVERIFY(!m_bench->pass()->at({{2}, dimension::lostMotion}));
        QCOMPARE(m_bench->cell(), (Cell{{2}, dimension::letOff}));
        m_bench->setCell({{2}, dimension::lostMotion});
        QTest::keyClick(focus(), Qt::Key_O);
        QCOMPARE(m_bench->pass()->at({{2}, dimension::lostMotion})->word(), std::optional(word::offRail));
        m_bench->setCell({{2}, dimension::letOff});
        QTest::keyClick(focus(), Qt::Key_N);
        QVERIFY(m_bench->pass()->at({{2}, dimension::letOff})->notFitted);
    }

    void aColumnFromASpreadsheetIsLaidDownFromTheCell() {
        grid().pasteText(QStringLiteral("2,4\n2,6\nblocks\n2.8\n"));
        QCOMPARE(m_dialogs->ran, 1);
        QCOMPARE(m_bench->pass()->readingCount(), std::size_t{4});
        QVERIFY(m_bench->undo().has_value()); // one paste is one act
        QCOMPARE(m_bench->pass()->readingCount(), std::size_t{0});
    }

    void whatWasTypedIsThereAfterReopening() {
        typeInGrid(QStringLiteral("3.1"));
        QTest::keyClick(focus(), Qt::Key_Return);
        Workbench other;
        QVERIFY(other.openBook(path()).has_value());
        QCOMPARE(other.pass()->value({{1}, dimension::letOff}).value_or(0), 31 * (kNmPerMm / 10));
    }

    void twoWindowsOnOneBookFollowEachOther() {
        Workbench other;
        QVERIFY(other.openBook(path()).has_value());
        typeInGrid(QStringLiteral("3.1"));
        QTest::keyClick(focus(), Qt::Key_Return);
        QTRY_VERIFY_WITH_TIMEOUT(other.pass() && other.pass()->value({{1}, dimension::letOff}), 3000);
    }
};

QTEST_MAIN(MeasureTest)
#include "measure_test.moc"
