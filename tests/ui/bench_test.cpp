// The entry at the bench: digits and one key a reading, as a person uses it.
#include "ui/stations/bench_entry.h"
#include "ui/stations/bench_field.h"
#include "ui/stations/measure_acts.h"
#include "ui/widgets/keyboard_strip.h"
#include "ui/words/words.h"

#include <QTest>

#include "window_bench.h"

using namespace hammerline;

class BenchTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void init() { open(); }
    void cleanup() { close(); }

    void aWholePassIsDigitsAndEnter() {
        QVERIFY(m_window->showBenchEntry());
        for (int n = 1; n <= 88; ++n) {
            QCOMPARE(m_bench->note().value, n);
            type(QStringLiteral("2.%1").arg(n % 10));
            press(Qt::Key_Return);
        }
        for (int n = 1; n <= 88; ++n)
            QCOMPARE(valueAt(n, dimension::letOff), (20 + n % 10) * kTenth);
        // the walk goes on with the next dimension at its first note
        QCOMPARE(m_bench->cell(), (Cell{{1}, dimension::aftertouch}));
    }

    void everyOrderIsTheOneOfCore() {
        QVERIFY(m_window->showBenchEntry());
        const std::array asked{dimension::letOff};
        const auto follows = [&](const EntryOrder& order, WalkOrder walkOrder) {
            entry().setOrder(order);
            const auto expected = walk(walkOrder, *m_bench->piano(), asked, order.every, order.across, order.listed);
            m_bench->setCell(expected.front());
            for (std::size_t i = 1; i < std::min<std::size_t>(expected.size(), 40); ++i) {
                press(Qt::Key_Return); // empty: skip
                if (m_bench->cell() != expected[i]) return false;
            }
            press(Qt::Key_Return, Qt::ShiftModifier);
            return m_bench->cell() == expected[std::min<std::size_t>(expected.size(), 40) - 2];
        };
        using Kind = EntryOrder::Kind;
        EntryOrder order;
        QVERIFY(follows(order, WalkOrder::up));
        order.kind = Kind::naturalsThenSharps;
        QVERIFY(follows(order, WalkOrder::naturalsThenSharps));
        order.kind = Kind::everyNth;
        order.every = 7;
        QVERIFY(follows(order, WalkOrder::everyNth));
        order.kind = Kind::sectionEnds;
        QVERIFY(follows(order, WalkOrder::sectionEnds));
        order.kind = Kind::ownList;
        order.listed = {{40}, {3}, {77}};
        QVERIFY(follows(order, WalkOrder::listed));
    }

    void onlyWhatWasOutIsVisited() {
        QVERIFY(m_bench->enter({{9}, dimension::letOff}, reading("6.0")).has_value());
        QVERIFY(m_bench->enter({{50}, dimension::letOff}, reading("2.9")).has_value());
        QVERIFY(m_bench->enter({{70}, dimension::letOff}, reading("5.5")).has_value());
        QVERIFY(m_window->showBenchEntry());
        EntryOrder order;
        order.kind = EntryOrder::Kind::onlyOut;
        entry().setOrder(order);
        m_bench->setCell({{9}, dimension::letOff});
        press(Qt::Key_Return);
        QCOMPARE(m_bench->note().value, 70);
    }

    void noteByNoteTakesAllDimensionsFirst() {
        QVERIFY(m_window->showBenchEntry());
        EntryOrder order;
        order.across = true;
        entry().setOrder(order);
        m_bench->setCell({{1}, dimension::letOff});
        press(Qt::Key_Return);
        QCOMPARE(m_bench->cell(), (Cell{{1}, dimension::aftertouch}));
    }

    void wordsAreOneKeyEach() {
        QVERIFY(m_window->showBenchEntry());
        press(Qt::Key_B);
        QCOMPARE(m_bench->pass()->at({{1}, dimension::letOff})->word(), std::optional(word::blocks));
        QCOMPARE(m_bench->note().value, 2);
        press(Qt::Key_O); // a word of lost motion: nothing is entered there from here
        QVERIFY(!m_bench->pass()->at({{2}, dimension::lostMotion}));
        QCOMPARE(m_bench->cell(), (Cell{{2}, dimension::letOff}));
        m_bench->setCell({{2}, dimension::lostMotion});
        press(Qt::Key_O);
        QCOMPARE(m_bench->pass()->at({{2}, dimension::lostMotion})->word(), std::optional(word::offRail));
        m_bench->setCell({{2}, dimension::letOff});
        press(Qt::Key_N);
        QVERIFY(m_bench->pass()->at({{2}, dimension::letOff})->notFitted);
        QCOMPARE(m_bench->note().value, 3);
        press(Qt::Key_Z); // a letter without a meaning types nothing
        QVERIFY(entry().field().text().isEmpty());
    }

    void theNoteIsRightByOneKey() {
        QVERIFY(m_bench->enter({{1}, dimension::blow}, reading("46")).has_value());
        QVERIFY(m_window->showBenchEntry());
        press(Qt::Key_Y);
        QCOMPARE(m_bench->note().value, 2);
        QCOMPARE(m_bench->pass()->at({{1}, dimension::letOff})->word(), std::optional(word::ok));
        QCOMPARE(valueAt(1, dimension::blow), 460 * kTenth); // what was read stays
        QVERIFY(m_bench->undo().has_value());                // one act
        QVERIFY(!m_bench->pass()->at({{1}, dimension::letOff}) ||
                m_bench->pass()->at({{1}, dimension::letOff})->missing());
    }

    void pairsAndInequalitiesHold() {
        QVERIFY(m_window->showBenchEntry());
        type(QStringLiteral("2.2..3.7"));
        press(Qt::Key_Return);
        QCOMPARE(m_bench->pass()->at({{1}, dimension::letOff})->latest()->relation, Relation::between);
        type(QStringLiteral("<1"));
        press(Qt::Key_Return);
        QCOMPARE(m_bench->pass()->at({{2}, dimension::letOff})->latest()->relation, Relation::less);
    }

    void aRepeatIsAFurtherTrial() {
        QVERIFY(m_window->showBenchEntry());
        type(QStringLiteral("2.4"));
        press(Qt::Key_Return);
        press(Qt::Key_Return, Qt::ShiftModifier);
        press(Qt::Key_R);
        QVERIFY(entry().repeating());
        type(QStringLiteral("2.6"));
        press(Qt::Key_Return);
        QCOMPARE(m_bench->pass()->at({{1}, dimension::letOff})->trials.size(), std::size_t{2});
        QCOMPARE(valueAt(1, dimension::letOff), 25 * kTenth);
        QVERIFY(!entry().repeating());
    }

    void theSameAsTheNoteBefore() {
        QVERIFY(m_window->showBenchEntry());
        type(QStringLiteral("2.4"));
        press(Qt::Key_Return);
        press(Qt::Key_Asterisk);
        QCOMPARE(valueAt(2, dimension::letOff), 24 * kTenth);
        QCOMPARE(m_bench->note().value, 3);
    }

    void aDoubtfulValueIsAskedInPlace() {
        m_bench->setCell({{5}, dimension::keyDip});
        QVERIFY(m_window->showBenchEntry());
        type(QStringLiteral("99")); // 9.9 without its decimal mark
        press(Qt::Key_Return);
        QVERIFY(entry().asking());
        QVERIFY(!m_bench->pass());
        QCOMPARE(entry().meaning().suggestion, QStringLiteral("9.9"));
        QVERIFY(!m_window->showStation(QStringLiteral("review"))); // nothing typed is lost
        press(Qt::Key_Return);                                     // takes the suggestion
        QCOMPARE(valueAt(5, dimension::keyDip), 99 * kTenth);
        QCOMPARE(m_bench->note().value, 6);
        type(QStringLiteral("7")); // shallow, but it may be so
        press(Qt::Key_Return);
        QVERIFY(entry().asking());
        press(Qt::Key_F9);
        QCOMPARE(valueAt(6, dimension::keyDip), 70 * kTenth);
        QVERIFY(m_bench->pass()->at({{6}, dimension::keyDip})->latest()->taken);
    }

    void undoAndRedoFromInsideTheField() {
        QVERIFY(m_window->showBenchEntry());
        type(QStringLiteral("2.4"));
        press(Qt::Key_Return);
        press(Qt::Key_Z, Qt::ControlModifier);
        QVERIFY(!m_bench->pass()->value({{1}, dimension::letOff}));
        press(Qt::Key_Y, Qt::ControlModifier);
        QCOMPARE(valueAt(1, dimension::letOff), 24 * kTenth);
        type(QStringLiteral("3"));
        press(Qt::Key_Z, Qt::ControlModifier); // what is half typed first
        QVERIFY(entry().field().text().isEmpty());
        QCOMPARE(valueAt(1, dimension::letOff), 24 * kTenth);
    }

    void aClickOnTheStripStoresWhereItWasTyped() {
        QVERIFY(m_window->showBenchEntry());
        type(QStringLiteral("2.4"));
        m_bench->setNote({40}); // as the strip does
        QCOMPARE(valueAt(1, dimension::letOff), 24 * kTenth);
        QVERIFY(!m_bench->pass()->value({{40}, dimension::letOff}));
        QVERIFY(entry().field().text().isEmpty());
    }

    void escapeEmptiesTheFieldThenGoesBack() {
        QVERIFY(m_window->showBenchEntry());
        type(QStringLiteral("2.4"));
        press(Qt::Key_Escape);
        QVERIFY(m_window->atBench());
        QVERIFY(entry().field().text().isEmpty());
        press(Qt::Key_Escape);
        QVERIFY(!m_window->atBench());
        QVERIFY(!m_bench->pass());
    }

    void sharpsSkipWhatNaturalsHave() {
        m_bench->setCell({{2}, dimension::sharpHeight}); // A#0
        QVERIFY(m_window->showBenchEntry());
        press(Qt::Key_Backtab); // key height is not of this note: nothing before
        QCOMPARE(m_bench->dimension(), dimension::sharpHeight);
        press(Qt::Key_Tab);
        QCOMPARE(m_bench->dimension(), dimension::keyDip);
    }

    void theFieldFitsAndIsPaintedInBothThemes() {
        QVERIFY(m_bench->enter({{1}, dimension::letOff}, reading("6.0")).has_value());
        QVERIFY(m_window->showBenchEntry());
        entry().type(QStringLiteral("1 13/16"));
        const QFontMetricsF metrics(entry().field().font());
        QVERIFY(metrics.horizontalAdvance(entry().field().text()) < entry().field().width());
        entry().type({});
        // the verdict's fill of the ramp is there: colour means deviation
        for (const Theme theme : {Theme::dark, Theme::light}) {
            entry().setPalette(paletteOf(theme));
            const QImage image = entry().grab().toImage();
            const QColor fill = QColor::fromRgb(lookOf(theme).stop(3, true).fill);
            bool found = false;
            for (int y = 0; y < image.height() && !found; y += 3)
                for (int x = 0; x < image.width() && !found; x += 3)
                    found = image.pixelColor(x, y) == fill;
            QVERIFY(found);
        }
    }

private:
    BenchEntry& entry() { return *m_window->benchEntry(); }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QTest::keyClick(&entry().field(), key, modifiers);
    }
    void type(const QString& text) { QTest::keyClicks(&entry().field(), text); }
};

QTEST_MAIN(BenchTest)
#include "bench_test.moc"
