// Review, Work and Passes under a person's hands: what is chosen, changed and ticked there stands in the book.
#include "ui/print/sheets.h"
#include "ui/stations/amount_field.h"
#include "ui/stations/work_page.h"
#include "ui/widgets/row_paint.h"
#include "ui/words/finish.h"
#include "ui/words/words.h"
#include "ui/words/work_now.h"

#include <QAbstractItemModelTester>
#include <QApplication>
#include <QComboBox>
#include <QLabel>
#include <QMenuBar>
#include <QPrintPreviewDialog>
#include <QPrinter>

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
        for (const char* id : {"review", "passes", "work", "measure"})
            QVERIFY(m_window->showStation(QLatin1String(id)));
        for (const DimensionId id : m_bench->columns()) {
            if (!fitted(id, {27}, m_bench->record()->piano)) continue; // a natural has no sharp's height
            m_bench->setCell({{27}, id});
            QCOMPARE(m_bench->cell(), (Cell{{27}, id}));
            QVERIFY(m_bench->enter({{28}, dimension::letOff}, reading(id == dimension::blow ? "3.1" : "3.0")));
            QCOMPARE(m_bench->cell(), (Cell{{27}, id}));
        }
    }

    // --- Work

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
        QVERIFY(m_window->showStation(QStringLiteral("work")));
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
        QVERIFY(m_window->showStation(QStringLiteral("work")));
        RowTable *order = table(QStringLiteral("The whole job")), *lines = table(QStringLiteral("Lines of this work"));
        QVERIFY(order && lines);
        const QAbstractItemModelTester first(order->model(), QAbstractItemModelTester::FailureReportingMode::Fatal);
        const QAbstractItemModelTester second(lines->model(), QAbstractItemModelTester::FailureReportingMode::Fatal);
        QVERIFY(choose(*order,
                       [](const ListRow& row) { return row.cells.front().text == words::stepName("set-let-off"); }));
        const auto note40 = [&](const ListRow& row) {
            return row.cells.at(1).text == words::noteName({40}, *m_bench->piano());
        };
        QVERIFY(choose(*lines, note40));
        QTest::keyClick(lines, Qt::Key_Space);
        QCOMPARE(m_bench->record()->done.size(), std::size_t{1});
        QVERIFY(!m_bench->record()->done.front().toAim); // nothing learned yet: it is a trial, turned by its amount
        QVERIFY(std::abs(std::abs(m_bench->record()->done.front().amount.value_or(0)) - 0.125) < 1e-7);
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
        QVERIFY(m_window->showStation(QStringLiteral("work")));
        RowTable *order = table(QStringLiteral("The whole job")), *lines = table(QStringLiteral("Lines of this work"));
        QVERIFY(choose(*order,
                       [](const ListRow& row) { return row.cells.front().text == words::stepName("set-let-off"); }));
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

    void turnsReallyDoneAreTypedAsAFraction() {
        RowTable* lines = openLetOffLine();
        typeAtFocus(QStringLiteral("0.5 in\r")); // a length is no turn: the line is as it was, the field stays open
        QVERIFY(m_bench->record()->done.empty());
        QVERIFY(m_window->findChild<AmountField*>());
        QVERIFY(m_window->findChild<QLabel*>(QStringLiteral("amountEcho"))->text().contains(QStringLiteral("0.5 in")));
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Escape);
        QVERIFY(m_bench->record()->done.empty());
        QCOMPARE(QApplication::focusWidget(), lines);
        // every way to write an eighth, first key included
        for (const char* typed : {"1/8", ".125", "0.125", "0,125", "1/8 turn"}) {
            typeAtFocus(QString::fromLatin1(typed) + QLatin1Char('\r'));
            QCOMPARE(m_bench->record()->done.size(), std::size_t{1}); // typed over, not added to
            const Done& done = m_bench->record()->done.front();
            QCOMPARE(done.notes, std::vector<NoteNumber>{{40}});
            QVERIFY2(done.amount.has_value(), typed);
            QVERIFY2(std::abs(std::abs(*done.amount) - 0.125) < 1e-7, typed);
            QVERIFY(!m_window->findChild<AmountField*>() || !m_window->findChild<AmountField*>()->isVisible());
        }
    }

    void moreThanOneGoIsAskedAboutInTheRow() {
        openLetOffLine();
        typeAtFocus(QStringLiteral("1\r")); // a whole turn of a let-off screw
        QVERIFY(m_bench->record()->done.empty());
        const QString echo = m_window->findChild<QLabel*>(QStringLiteral("amountEcho"))->text();
        QVERIFY2(echo.contains(QStringLiteral("again")), qPrintable(echo));
        typeAtFocus(QStringLiteral("\r"));
        QCOMPARE(m_bench->record()->done.size(), std::size_t{1});
        QVERIFY(std::abs(std::abs(*m_bench->record()->done.front().amount) - 1.0) < 1e-7);
    }

    void aTickIsTakenBackByTheSameKeyAndByAClickOnItsBox() {
        RowTable* lines = openLetOffLine();
        QTest::keyClick(lines, Qt::Key_Space);
        QCOMPARE(m_bench->record()->done.size(), std::size_t{1});
        QTest::keyClick(lines, Qt::Key_Space);
        QVERIFY(m_bench->record()->done.empty());
        const QRect box = lines->visualRect(lines->currentIndex().siblingAtColumn(0));
        QTest::mouseClick(lines->viewport(), Qt::LeftButton, {}, box.center());
        QCOMPARE(m_bench->record()->done.size(), std::size_t{1});
        QTest::mouseDClick(lines->viewport(), Qt::LeftButton, {},
                           lines->visualRect(lines->currentIndex().siblingAtColumn(3)).center());
        QCOMPARE(m_bench->record()->done.size(), std::size_t{1}); // a double click elsewhere does nothing
        QTest::mouseClick(lines->viewport(), Qt::LeftButton, {}, box.center());
        QVERIFY(m_bench->record()->done.empty());
        QVERIFY(m_bench->undo().has_value()); // the tick comes back
        QCOMPARE(m_bench->record()->done.size(), std::size_t{1});
    }

    void backspaceTakesNothingElseAway() {
        RowTable* lines = openLetOffLine();
        const auto before = valueAt(40, dimension::letOff);
        QTest::keyClick(lines, Qt::Key_Backspace); // the line is open: nothing of it to take back
        QCOMPARE(valueAt(40, dimension::letOff), before);
        QVERIFY(before != 0);
    }

    /// Direction and aim are the largest type of the window: whole for every work, both ways, at every size of type and
    /// of window (a negative aim was once read as "to −…").
    void directionAndAimAreNeverCut() {
        const Piano upright = *m_bench->piano();
        for (const int size : {80, 100, 150, 200}) {
            dress(Theme::light, size);
            WorkPage page(*m_bench, nullptr);
            for (const int width : {1024, 1280, 1920, 3840}) {
                page.resize(width, 700);
                page.show();
                for (const Operation& row : operations()) {
                    if (!fittedOperation(row.id)) continue;
                    std::vector<Step> steps;
                    for (const double way : {1.0, -1.0}) {
                        Step step;
                        step.operation = row.id;
                        step.direction = directionOf(row.id, way, upright);
                        step.aimDimension = dimension::keyHeight;
                        step.aim = -0.5;
                        steps.push_back(step);
                    }
                    AdjustmentWork work;
                    work.operation = row.id;
                    for (const Step& step : steps) {
                        AdjustmentLine line;
                        line.step = &step;
                        line.note = {40};
                        work.lines.push_back(line);
                    }
                    page.showWork(work, upright, {});
                    const RowTable& lines = page.lines();
                    for (const ListRow& each : lines.rows())
                        for (std::size_t c = 0; c < each.cells.size(); ++c)
                            if (each.cells[c].kind == RowCell::Kind::phrase) {
                                QVERIFY(each.cells[c].aim.contains(QChar(0x2212)));
                                QVERIFY2(lines.columnWidth(static_cast<int>(c)) - u(4) >= neededWidth(each.cells[c]),
                                         qPrintable(each.cells[c].text));
                            }
                }
            }
        }
        dress(Theme::light, 100);
    }

    /// What was measured is shown as it was measured, also where the plan starts from something else.
    void theReadingOfALineIsTheReading() {
        RowTable* lines = openLetOffLine();
        QVERIFY(lines);
        Plan plan = *m_bench->plan();
        for (Step& step : plan.steps)
            if (step.note == NoteNumber{40}) step.now = 52 * kTenth;
        m_bench->setPlan(plan);
        const ListRow row = lineOf40(*lines);
        QCOMPARE(row.cells.at(2).text, QStringLiteral("6.0"));
        QCOMPARE(row.cells.at(2).below, QStringLiteral("taken as 5.2"));
    }

    void aStoppedLineSaysSo() {
        RowTable* lines = openLetOffLine();
        QVERIFY(lines);
        QTest::keyClick(lines, Qt::Key_Space); // the plan is kept, and its lines stay
        QTest::keyClick(lines, Qt::Key_Space);
        QTest::keyClick(lines, Qt::Key_S);
        QCOMPARE(m_bench->record()->findings.size(), std::size_t{1});
        const ListRow row = lineOf40(*lines);
        QCOMPARE(row.cells.at(0).part, 3);
        QCOMPARE(row.cells.at(3).text, QStringLiteral("STOPPED"));
        QVERIFY(shownText().contains(QStringLiteral("went to the survey")));
        takeBackOnce();
        QVERIFY2(shownText().contains(QStringLiteral("Taken back: 40 C4, let-off screw: seized")),
                 qPrintable(shownText()));
        QCOMPARE(lineOf40(*lines).cells.at(0).part, 0);
    }

    void undoNamesWhatItTookBack() {
        RowTable* lines = openLetOffLine();
        QVERIFY(lines);
        QVERIFY(m_bench->enter({{8}, dimension::keyDip}, reading("9.9")).has_value());
        takeBackOnce();
        QVERIFY2(shownText().contains(QStringLiteral("key dip 9.9")), qPrintable(shownText()));
        QVERIFY2(shownText().contains(words::noteName({8}, *m_bench->piano())), qPrintable(shownText()));
    }

    void readingsNewerThanTheKeptPlanAreSaid() {
        RowTable* lines = openLetOffLine();
        QVERIFY(lines);
        QTest::keyClick(lines, Qt::Key_Space);
        QVERIFY(!shownText().contains(QStringLiteral("newer than this plan")));
        QVERIFY(m_bench->enter({{50}, dimension::letOff}, reading("6.5")).has_value());
        QVERIFY(shownText().contains(QStringLiteral("newer than this plan")));
        QTest::keyClick(lines, Qt::Key_R, Qt::ControlModifier);
        QVERIFY(m_bench->plan()->uuid.empty());
        QVERIFY(stepsAt(50) > 0);
        QVERIFY(!shownText().contains(QStringLiteral("newer than this plan")));
    }

    /// What was not read is not in order.
    void reviewSaysNoMoreThanWasRead() {
        readLetOff({{40, "6.0"}, {44, "0.9"}});
        QVERIFY(m_window->showStation(QStringLiteral("review")));
        QString said = m_window->station()->context();
        QVERIFY2(said.contains(QStringLiteral("2 of 88 notes read are out</b> in let-off")), qPrintable(said));
        QVERIFY(!said.contains(QStringLiteral("in order")));
        QVERIFY(m_bench->addPass({}).has_value());
        QVERIFY(m_bench->enter({{44}, dimension::letOff}, reading("3.0")).has_value());
        said = m_window->station()->context();
        QVERIFY2(said.contains(QStringLiteral("0 of 1 notes read are out")), qPrintable(said));
        QVERIFY2(said.contains(QStringLiteral("1 out before and not read again")), qPrintable(said));
    }

    /// The grade is reckoned when it is looked at, and is that of the readings as they stand then.
    void theGradeFollowsWhatWasReadMeanwhile() {
        readLetOff({{40, "6.0"}});
        const auto grade = [&] {
            m_window->showStation(QStringLiteral("review"));
            const auto finish = finishOf(*m_bench->record(), m_bench->sheet(), m_bench->passNumber());
            return shownText().contains(words::finishSentence(*finish)) ? words::finishSentence(*finish) : QString();
        };
        const QString before = grade();
        QVERIFY(!before.isEmpty());
        QVERIFY(m_window->showStation(QStringLiteral("measure")));
        for (int n = 50; n < 70; ++n)
            QVERIFY(m_bench->enter({{n}, dimension::letOff}, reading("6.0")).has_value());
        const QString after = grade();
        QVERIFY(!after.isEmpty());
        QVERIFY(after != before);
    }

    /// A number beside mm that is not mm says so.
    void aDeviationIsNoLength() {
        readLetOff({{40, "6.0"}});
        QVERIFY(m_window->showStation(QStringLiteral("review")));
        const ListRow row = table(QStringLiteral("Readings, worst first"))->rows().front();
        QVERIFY2(row.cells.at(6).text.endsWith(QStringLiteral(" ×")), qPrintable(row.cells.at(6).text));
    }

    // --- paper

    void thePreviewIsOnThePaperChosenInTheMenu() {
        readLetOff({{40, "6.0"}});
        QVERIFY(m_window->showStation(QStringLiteral("review")));
        for (const auto& [name, size] : {std::pair{"On Letter", QPageSize::Letter}, {"On A4", QPageSize::A4}}) {
            QAction* paper = nullptr;
            for (QAction* each : m_window->menuBar()->findChildren<QAction*>())
                if (each->text() == QLatin1String(name)) paper = each;
            QVERIFY(paper);
            paper->trigger();
            QVERIFY(paper->isChecked());
            m_dialogs->onRun = [size = size](QDialog& dialog) {
                auto* preview = qobject_cast<QPrintPreviewDialog*>(&dialog);
                QVERIFY(preview);
                QCOMPARE(preview->printer()->pageLayout().pageSize().id(), size);
            };
            const int before = m_dialogs->ran;
            shortcut(QStringLiteral("Ctrl+P"))->trigger();
            QCOMPARE(m_dialogs->ran, before + 1);
            QCOMPARE(usualPaper(), size == QPageSize::Letter ? Paper::letter : Paper::a4);
        }
    }

private:
    /// Every text of the window that is in view.
    QString shownText() const {
        QStringList all;
        for (const QLabel* label : m_window->findChildren<QLabel*>())
            if (label->isVisible())
                all << QString(label->text()).remove(QStringLiteral("<b>")).remove(QStringLiteral("</b>"));
        return all.join(QLatin1Char('\n'));
    }

    void takeBackOnce() {
        for (QAction* action : m_window->findChildren<QAction*>())
            if (action->shortcut() == QKeySequence(QStringLiteral("Ctrl+Z"))) return action->trigger();
    }

    ListRow lineOf40(const RowTable& lines) {
        const QString name = words::noteName({40}, *m_bench->piano());
        for (const ListRow& row : lines.rows())
            if (row.cells.size() > 3 && row.cells[1].text == name) return row;
        return {};
    }

    static bool fittedOperation(OperationId id) { return id != operation::inspect; }

    /// Note 40 with its let-off far out, and the line of it at Work, with the focus.
    RowTable* openLetOffLine() {
        for (int n = 1; n <= 88; ++n)
            if (!m_bench->enter({{n}, dimension::letOff}, reading(n == 40 ? "6.0" : "2.9"))) return nullptr;
        m_window->showStation(QStringLiteral("work"));
        m_window->activateWindow();
        if (!QTest::qWaitForWindowActive(m_window.get())) return nullptr;
        RowTable *order = table(QStringLiteral("The whole job")), *lines = table(QStringLiteral("Lines of this work"));
        choose(*order, [](const ListRow& row) { return row.cells.front().text == words::stepName("set-let-off"); });
        lines->setFocus();
        return lines;
    }

    /// Keys one after another into whatever has the focus by then; "\r" is Enter.
    static void typeAtFocus(const QString& keys) {
        for (const QChar key : keys) {
            QWidget* focus = QApplication::focusWidget();
            if (!focus) return;
            if (key == QLatin1Char('\r'))
                QTest::keyClick(focus, Qt::Key_Return);
            else
                QTest::keyClick(focus, key.toLatin1());
        }
    }

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
};

QTEST_MAIN(StationsTest)
#include "stations_test.moc"
