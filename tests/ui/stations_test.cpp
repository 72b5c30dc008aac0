// Piano, Review, Adjust and Passes under a person's hands: what is chosen, changed and ticked there stands in the book.
#include "core/operation/operation.h"
#include "ui/stations/spec_panel.h"
#include "ui/widgets/key_drawing.h"
#include "ui/widgets/keyboard_strip.h"
#include "ui/words/words.h"

#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QLineEdit>

#include "window_bench.h"

using namespace hammerline;

class StationsTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void init() { open(); }
    void cleanup() { close(); }

    // --- Review

    void reviewRanksFiltersAndLeadsBackToTheCell() {
        readLetOff({{40, "6.0"}, {41, "7.5"}, {44, "0.9"}});
        QVERIFY(m_window->showStation(QStringLiteral("review")));
        RowTable* list = table(QStringLiteral("Readings, worst first"));
        QVERIFY(list);
        const QAbstractItemModelTester tester(list->model(), QAbstractItemModelTester::FailureReportingMode::Fatal);
        QCOMPARE(list->rows().size(), std::size_t{3});
        QCOMPARE(list->rows().front().cells.at(1).text,
                 words::noteName({41}, *m_bench->piano())); // farthest from its zone
        pick(QStringLiteral("Colour of key"), 2);           // sharps: of C4, C#4 and E4 the one between
        QCOMPARE(list->rows().size(), std::size_t{1});
        QCOMPARE(list->rows().front().cells.at(1).text, words::noteName({41}, *m_bench->piano()));
        pick(QStringLiteral("Colour of key"), 0);
        pick(QStringLiteral("Show"), 3);
        QCOMPARE(list->rows().size(), std::size_t{88});
    }

    void theRowThatIsChosenIsTheCurrentCellEverywhere() {
        readLetOff({{40, "6.0"}, {52, "0.9"}});
        QVERIFY(m_window->showStation(QStringLiteral("review")));
        RowTable* list = table(QStringLiteral("Readings, worst first"));
        QVERIFY(list && list->rows().size() == 2);
        m_bench->setCell({{1}, dimension::blow});
        list->setFocus();
        QTest::keyClick(list, Qt::Key_Down);
        const Cell second = m_bench->cell();
        QVERIFY(second == (Cell{{40}, dimension::letOff}) || second == (Cell{{52}, dimension::letOff}));
        QTest::keyClick(list, Qt::Key_Return);
        QCOMPARE(m_window->station()->objectName(), QStringLiteral("measure"));
        QCOMPARE(m_bench->cell(), second);
    }

    /// A station that is not in front follows; it never leads.
    void aStationInTheBackMovesNothing() {
        readLetOff({{40, "6.0"}});
        for (const char* id : {"review", "passes", "adjust", "measure"})
            QVERIFY(m_window->showStation(QLatin1String(id)));
        for (const DimensionId id : m_bench->columns()) {
            m_bench->setCell({{27}, id});
            QCOMPARE(m_bench->cell(), (Cell{{27}, id}));
            QVERIFY(m_bench->enter({{28}, dimension::letOff}, reading(id == dimension::blow ? "3.1" : "3.0")));
            QCOMPARE(m_bench->cell(), (Cell{{27}, id}));
        }
    }

    // --- Adjust

    void anotherIntentIsAnotherPlan() {
        std::vector<NewReading> all; // within the zone, yet well off its aim
        for (int n = 1; n <= 88; ++n) {
            const Zone zone = *m_bench->zones().at({{n}, dimension::letOff});
            Reading made = reading("3");
            made.count = zone.nominal + (*zone.high - zone.nominal) * 3 / 4;
            made.typed = std::to_string(static_cast<double>(made.count) / 1e6);
            all.push_back({{{n}, dimension::letOff}, made});
        }
        QVERIFY(m_bench->enterAll(all, "entry").has_value());
        QVERIFY(m_window->showStation(QStringLiteral("adjust")));
        QVERIFY(m_bench->plan());
        QCOMPARE(m_bench->plan()->options.intent, Intent::touchUp);
        const std::size_t least = letOffSteps();
        pick(QStringLiteral("Aim"), 1);
        QCOMPARE(m_bench->plan()->options.intent, Intent::full);
        QVERIFY(letOffSteps() > least);
        pick(QStringLiteral("May float"), 0);
        QCOMPARE(m_bench->plan()->options.floating, Float::dip);
        QVERIFY(m_bench->record()->plans.empty()); // a plan that is only thought of is not kept
    }

    void aTickStandsInTheBookAndIsTakenBack() {
        readLetOff({{40, "6.0"}, {44, "0.9"}});
        QVERIFY(m_window->showStation(QStringLiteral("adjust")));
        RowTable *order = table(QStringLiteral("Order of work")), *lines = table(QStringLiteral("Lines of this work"));
        QVERIFY(order && lines);
        const QAbstractItemModelTester first(order->model(), QAbstractItemModelTester::FailureReportingMode::Fatal);
        const QAbstractItemModelTester second(lines->model(), QAbstractItemModelTester::FailureReportingMode::Fatal);
        QVERIFY(choose(
            *order, [](const ListRow& row) { return row.cells.front().text == words::name(operation::letOffTurn); }));
        const auto note40 = [&](const ListRow& row) {
            return row.cells.at(1).text == words::noteName({40}, *m_bench->piano());
        };
        QVERIFY(choose(*lines, note40));
        QTest::keyClick(lines, Qt::Key_Space);
        QCOMPARE(m_bench->record()->done.size(), std::size_t{1});
        QVERIFY(m_bench->record()->done.front().toAim);
        QCOMPARE(m_bench->record()->done.front().notes, std::vector<NoteNumber>{{40}});
        QCOMPARE(m_bench->record()->plans.size(), std::size_t{1}); // the first tick freezes the plan
        for (const ListRow& row : lines->rows())
            if (row.heading.isEmpty()) QCOMPARE(row.cells.front().part, note40(row) ? 2 : 0);
        // a further window on the book sees the same tick
        Workbench other;
        QVERIFY(other.openBook(path()).has_value());
        QCOMPARE(other.record()->done.size(), std::size_t{1});
        QTest::keyClick(lines, Qt::Key_Backspace);
        QVERIFY(m_bench->record()->done.empty());
    }

    void aScrewThatDoesNotTurnIsAFinding() {
        readLetOff({{40, "6.0"}});
        QVERIFY(m_window->showStation(QStringLiteral("adjust")));
        RowTable *order = table(QStringLiteral("Order of work")), *lines = table(QStringLiteral("Lines of this work"));
        QVERIFY(choose(
            *order, [](const ListRow& row) { return row.cells.front().text == words::name(operation::letOffTurn); }));
        QVERIFY(stepsAt(40) > 0);
        QVERIFY(choose(*lines, [&](const ListRow& row) {
            return row.cells.at(1).text == words::noteName({40}, *m_bench->piano());
        }));
        QTest::keyClick(lines, Qt::Key_S);
        QCOMPARE(m_bench->record()->findings.size(), std::size_t{1});
        QCOMPARE(m_bench->record()->findings.front().part, std::string("let-off-screw"));
        QCOMPARE(m_bench->record()->findings.front().fault, std::string("seized"));
        QCOMPARE(stepsAt(40), 0); // to be mended first
    }

    // --- Passes

    void twoPassesStandSideBySide() {
        readLetOff({{40, "6.0"}, {44, "0.9"}, {60, "5.5"}});
        QVERIFY(m_window->showStation(QStringLiteral("passes")));
        QVERIFY(!table(QStringLiteral("Dimensions, before and now"))->isVisible()); // one pass: nothing to compare
        QVERIFY(m_bench->addPass({}).has_value());
        readLetOff({{60, "5.5"}});
        RowTable* both = table(QStringLiteral("Dimensions, before and now"));
        QVERIFY(both->isVisible());
        const QAbstractItemModelTester tester(both->model(), QAbstractItemModelTester::FailureReportingMode::Fatal);
        QCOMPARE(both->rows().size(), std::size_t{1});
        const auto cell = [&](std::size_t column) { return both->rows().front().cells.at(column).text; };
        QCOMPARE(cell(1), QStringLiteral("88"));
        QCOMPARE(cell(2), QStringLiteral("3"));
        QCOMPARE(cell(4), QStringLiteral("1"));
        QCOMPARE(both->rows().front().cells.at(3).value, 3.0);
        QCOMPARE(both->rows().front().cells.at(3).now, 1.0);
        QVERIFY(m_window->station()->context().contains(QStringLiteral("3 readings out before, 1 now")));
        pick(QStringLiteral("Now"), 0); // the first against itself
        QCOMPARE(cell(4), QStringLiteral("3"));
    }

    // --- Piano

    void aFieldOfTheSetUpIsKeptAndARefusedOneSaysWhy() {
        QVERIFY(m_window->showStation(QStringLiteral("piano")));
        QLineEdit* last = field(words::attributeName("last-damper"));
        QVERIFY(last);
        last->selectAll();
        QTest::keyClicks(last, QStringLiteral("60"));
        QTest::keyClick(last, Qt::Key_Return);
        QCOMPARE(m_bench->piano()->lastDamper, std::optional(60));
        last->selectAll();
        QTest::keyClicks(last, QStringLiteral("sixty"));
        QTest::keyClick(last, Qt::Key_Return);
        QCOMPARE(m_bench->piano()->lastDamper, std::optional(60));
        QCOMPARE(last->text(), QStringLiteral("60"));
        QVERIFY(m_bench->undo().has_value());
        QVERIFY(m_bench->piano()->lastDamper != std::optional(60));
    }

    void minutesAndTurnsOfTheWorkAreThisPianos() {
        QVERIFY(m_window->showStation(QStringLiteral("piano")));
        RowTable* work = table(QStringLiteral("Work"));
        QVERIFY(work);
        const QAbstractItemModelTester tester(work->model(), QAbstractItemModelTester::FailureReportingMode::Fatal);
        const auto letOff = [](const ListRow& row) {
            return row.cells.front().text == words::partName(operation::letOffTurn);
        };
        QVERIFY(choose(*work, letOff));
        QCOMPARE(minutesFor(operation::letOffTurn, *m_bench->piano()), 0.5); // bench-practice 2.7
        m_dialogs->typed = QStringLiteral("0,8");
        QTest::keyClick(work, Qt::Key_Return);
        QCOMPARE(minutesFor(operation::letOffTurn, *m_bench->piano()), 0.8);
        m_dialogs->typed = QStringLiteral("soon"); // refused, and nothing changes
        QTest::keyClick(work, Qt::Key_Return);
        QCOMPARE(minutesFor(operation::letOffTurn, *m_bench->piano()), 0.8);

        QTest::keyClick(work, Qt::Key_T);
        QCOMPARE(turnOf(operation::letOffTurn, *m_bench->piano()), std::optional(Turn::anticlockwise));
        Workbench other; // it stands in the book
        QVERIFY(other.openBook(path()).has_value());
        QCOMPARE(other.piano()->letOffIn, std::optional(Turn::anticlockwise));
        QTest::keyClick(work, Qt::Key_T); // the usual way is nothing said
        QVERIFY(!m_bench->piano()->letOffIn);
        QTest::keyClick(work, Qt::Key_T);
        QTest::keyClick(work, Qt::Key_Delete);
        QVERIFY(!m_bench->piano()->letOffIn);
        QVERIFY(m_bench->piano()->minutes.empty());

        QVERIFY(choose(
            *work, [](const ListRow& row) { return row.cells.front().text == words::accessName(Access::keysOff); }));
        m_dialogs->typed = QStringLiteral("25");
        QTest::keyClick(work, Qt::Key_Return);
        QCOMPARE(minutesToReach(Access::keysOff, *m_bench->piano())[0], 25.0);
    }

    void anEmptiedFieldIsAsIsCustomaryAgain() {
        QVERIFY(m_window->showStation(QStringLiteral("piano")));
        QLineEdit* arms = field(words::attributeName("arms-natural"));
        QVERIFY(arms);
        const auto type = [&](const QString& text) {
            arms->setFocus();
            arms->selectAll();
            QTest::keyClick(arms, Qt::Key_Delete);
            QTest::keyClicks(arms, text);
            QTest::keyClick(arms, Qt::Key_Return);
        };
        type(QStringLiteral("240,220,150,130"));
        QVERIFY(m_bench->piano()->armsOf(KeyColour::natural).measured);
        const auto* drawing = m_window->station()->findChild<KeyDrawing*>();
        QVERIFY(drawing && drawing->accessibleDescription().contains(QStringLiteral("240")));
        type({});
        QVERIFY(!m_bench->piano()->armsOf(KeyColour::natural).measured);
        QVERIFY(!drawing->accessibleDescription().contains(QStringLiteral("240")));
    }

    void breaksAndTheLastDamperAreMovedOnTheStrip() {
        QVERIFY(m_window->showStation(QStringLiteral("piano")));
        auto* strip = m_window->findChild<KeyboardStrip*>();
        strip->setFocus();
        const auto ends = [this] {
            std::vector<int> last;
            for (const Section& section : sectionsOf(*m_bench->piano()))
                last.push_back(section.range.last);
            return last;
        };
        QCOMPARE(ends(), (std::vector{26, 52, 70, 88}));
        QTest::keyClick(strip, Qt::Key_Right, Qt::ShiftModifier);
        QCOMPARE(ends(), (std::vector{27, 52, 70, 88}));
        QTest::keyClick(strip, Qt::Key_B);
        QTest::keyClick(strip, Qt::Key_Left, Qt::ShiftModifier);
        QCOMPARE(ends(), (std::vector{27, 51, 70, 88}));
        // by the mouse: the first break from behind note 27 to behind note 30
        const auto behind = [strip](int note) {
            return QPoint((strip->axis().right({note}) + strip->axis().left({note + 1})) / 2,
                          strip->keysRect().center().y());
        };
        QTest::mousePress(strip, Qt::LeftButton, {}, behind(27));
        QTest::mouseMove(strip, behind(30));
        QTest::mouseRelease(strip, Qt::LeftButton, {}, behind(30));
        QCOMPARE(ends(), (std::vector{30, 51, 70, 88}));
        for (int i = 0; i < 3; ++i)
            QTest::keyClick(strip, Qt::Key_B); // past the other two to the last damper
        QTest::keyClick(strip, Qt::Key_Left, Qt::ShiftModifier);
        QCOMPARE(m_bench->piano()->lastDamper, std::optional(87));
        QVERIFY(m_bench->undo().has_value());
        QVERIFY(!m_bench->piano()->lastDamper);
    }

    void aZoneIsChangedWithItsReason() {
        QVERIFY(m_window->showStation(QStringLiteral("piano")));
        RowTable* zones = table(QStringLiteral("Zones"));
        QVERIFY(zones);
        const QAbstractItemModelTester tester(zones->model(), QAbstractItemModelTester::FailureReportingMode::Fatal);
        const auto blow = [](const ListRow& row) { return row.cells.front().text == words::name(dimension::blow); };
        QVERIFY(choose(*zones, blow));
        const Zone before = *m_bench->zones().at({{40}, dimension::blow});
        answerZone({QStringLiteral("43"), QStringLiteral("45"), QStringLiteral("47")}, {}, {});
        QTest::keyClick(zones, Qt::Key_Return); // without a reason nothing is kept
        QCOMPARE(*m_bench->zones().at({{40}, dimension::blow}), before);
        answerZone({QStringLiteral("47"), QStringLiteral("45"), QStringLiteral("43")}, {},
                   QStringLiteral("trial notes"));
        QTest::keyClick(zones, Qt::Key_Return); // not in order
        QCOMPARE(*m_bench->zones().at({{40}, dimension::blow}), before);
        answerZone({QStringLiteral("43"), QStringLiteral("45"), QStringLiteral("1 7/8 in")}, {},
                   QStringLiteral("trial notes"));
        QTest::keyClick(zones, Qt::Key_Return);
        // 1 7/8 in = 47.625 mm exactly (25.4 mm to the inch)
        QCOMPARE(*m_bench->zones().at({{40}, dimension::blow}),
                 (Zone{fromMm(43).nm, fromMm(45).nm, std::int64_t{47'625'000}}));
        QVERIFY(m_bench->record()->spec.has_value());
        Workbench other; // it stands in the book, with its reason
        QVERIFY(other.openBook(path()).has_value());
        bool found = false;
        for (const ZoneRow& row : other.sheet().zones)
            found = found || (row.dimension == dimension::blow && row.source == "trial notes");
        QVERIFY(found);
        QVERIFY(m_bench->undo().has_value());
        QCOMPARE(*m_bench->zones().at({{40}, dimension::blow}), before);
    }

    void singleNotesGetAZoneOfTheirOwn() {
        QVERIFY(m_window->showStation(QStringLiteral("piano")));
        RowTable* zones = table(QStringLiteral("Zones"));
        QVERIFY(choose(
            *zones, [](const ListRow& row) { return row.cells.front().text == words::name(dimension::aftertouch); }));
        answerZone({QStringLiteral("0.2"), QStringLiteral("0.3"), QStringLiteral("0.8")}, QStringLiteral("31, 33"),
                   QStringLiteral("worn key, owner told"));
        QTest::keyClick(zones, Qt::Key_Return);
        QCOMPARE(m_bench->record()->overrides.size(), std::size_t{2});
        QVERIFY(m_bench->zones().overridden({{33}, dimension::aftertouch}));
        QVERIFY(!m_bench->zones().overridden({{32}, dimension::aftertouch}));
        QVERIFY(choose(*zones, [](const ListRow& row) { return row.cells.at(1).text.contains(QStringLiteral("33")); }));
        QTest::keyClick(zones, Qt::Key_Delete);
        QCOMPARE(m_bench->record()->overrides.size(), std::size_t{1});
        QVERIFY(!m_bench->zones().overridden({{33}, dimension::aftertouch}));
    }

private:
    /// All let-offs at 2.9 but those named.
    void readLetOff(const std::map<int, const char*>& others) {
        std::vector<NewReading> all;
        for (int n = 1; n <= 88; ++n) {
            const auto other = others.find(n);
            all.push_back({{{n}, dimension::letOff}, reading(other == others.end() ? "2.9" : other->second)});
        }
        QVERIFY(m_bench->enterAll(all, "entry").has_value());
    }
    int stepsAt(int note) const {
        int count = 0;
        for (const Step& step : m_bench->plan()->steps)
            count += step.operation == operation::letOffTurn && step.note == NoteNumber{note};
        return count;
    }
    std::size_t letOffSteps() const {
        std::size_t count = 0;
        for (const Step& step : m_bench->plan()->steps)
            count += step.operation == operation::letOffTurn;
        return count;
    }
    /// By the keys, as a person goes through a choice.
    void pick(const QString& name, int wanted) {
        QComboBox* box = nullptr;
        for (QComboBox* each : m_window->findChildren<QComboBox*>())
            if (each->accessibleName() == name && each->isVisible()) box = each;
        QVERIFY2(box, qPrintable(name));
        while (box->currentIndex() != wanted)
            QTest::keyClick(box, box->currentIndex() < wanted ? Qt::Key_Down : Qt::Key_Up);
    }
    QLineEdit* field(const QString& name) {
        for (QLineEdit* each : m_window->station()->findChildren<QLineEdit*>())
            if (each->accessibleName() == name) return each;
        return nullptr;
    }
    void answerZone(const QStringList& limits, const QString& notes, const QString& reason) {
        m_dialogs->onRun = [=](QDialog& dialog) {
            auto* zone = qobject_cast<ZoneDialog*>(&dialog);
            QVERIFY(zone);
            zone->fill(limits, notes, reason);
        };
    }
};

QTEST_MAIN(StationsTest)
#include "stations_test.moc"
