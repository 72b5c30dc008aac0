// The Work station under a person's hands: steps without numbers are ticked, with notes, and taken back; steps with
// numbers show their lines; what is left is shown as it stands in the book.
#include "ui/stations/step_page.h"
#include "ui/widgets/doing/doing_drawing.h"
#include "ui/words/words.h"
#include "ui/words/work_now.h"

#include <QAbstractButton>
#include <QLabel>
#include <QLineEdit>
#include <QScrollBar>
#include <QTextBrowser>

#include "window_bench.h"

using namespace hammerline;

class WorkTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void cleanup() { close(); }

    void notesDoneAreTypedAndTheLastOnesTakenBack() {
        RowTable& steps = openAt("ease-keys");
        typeAtFocus(QStringLiteral("31, 34-36\r"));
        QCOMPARE(notesDone("ease-keys"), QStringLiteral("31, 34-36"));
        QCOMPARE(QApplication::focusWidget(), &steps);
        QVERIFY2(shown().contains(QStringLiteral("4 of 88 done")), qPrintable(shown()));
        typeAtFocus(QStringLiteral("40\r"));
        QCOMPARE(notesDone("ease-keys"), QStringLiteral("31, 34-36, 40"));
        QTest::keyClick(&steps, Qt::Key_Backspace); // the notes kept last, of this step alone
        QCOMPARE(notesDone("ease-keys"), QStringLiteral("31, 34-36"));
        QTest::keyClick(&steps, Qt::Key_Backspace);
        QCOMPARE(notesDone("ease-keys"), QString());
        QTest::keyClick(&steps, Qt::Key_Backspace); // nothing of it is left to take back
        QVERIFY(shown().contains(QStringLiteral("not ticked by hand")));
    }

    /// The adjustment is drawn where the text leaves room for it, and never at the cost of the text.
    void theAdjustmentIsDrawnUnderTheText() {
        openAt("set-bridle-wires");
        m_window->resize(1280, 800);
        QApplication::processEvents();
        auto* page = m_window->findChild<StepPage*>();
        auto* drawing = page->findChild<DoingDrawing*>();
        const QString pictures = qEnvironmentVariable("HAMMERLINE_DOING_PICTURES");
        if (!pictures.isEmpty()) m_window->grab().save(pictures + QStringLiteral("/step.png"));
        QVERIFY(drawing->isVisible());
        QVERIFY(drawing->height() >= u(36));
        QVERIFY(drawing->accessibleDescription().contains(QStringLiteral("bridle wire")));
        QCOMPARE(page->text().verticalScrollBar()->maximum(), 0);
    }

    void aStepWithoutADrawingGivesItNoRoom() {
        openAt("clean-action");
        QVERIFY(!m_window->findChild<StepPage*>()->findChild<DoingDrawing*>()->isVisible());
    }

    void whatIsNoNoteIsSaidAndStaysInItsField() {
        openAt("ease-keys");
        typeAtFocus(QStringLiteral("31, 99\r"));
        QCOMPARE(notesDone("ease-keys"), QString());
        auto* field = qobject_cast<QLineEdit*>(QApplication::focusWidget());
        QVERIFY(field);
        QCOMPARE(field->text(), QStringLiteral("31, 99"));
        QVERIFY2(shown().contains(QStringLiteral("99")), qPrintable(shown()));
        QTest::keyClick(field, Qt::Key_Escape);
        QCOMPARE(QApplication::focusWidget(), table(QStringLiteral("The whole job")));
    }

    void spaceIsDoneAndNotDoneAfterAll() {
        RowTable& steps = openAt("take-photographs");
        QTest::keyClick(&steps, Qt::Key_Space);
        QCOMPARE(m_bench->record()->marks.size(), std::size_t{1});
        QCOMPARE(ringOf("take-photographs"), 2);
        QTest::keyClick(&steps, Qt::Key_Space);
        QVERIFY(m_bench->record()->marks.empty());
        QVERIFY(m_bench->undo().has_value());
        QCOMPARE(ringOf("take-photographs"), 2);
    }

    void notNeededWantsAReason() {
        RowTable& steps = openAt("take-photographs");
        m_dialogs->typed = QStringLiteral(" ");
        QTest::keyClick(&steps, Qt::Key_N);
        QVERIFY(m_bench->record()->marks.empty());
        QVERIFY(!shown().isEmpty());
        m_dialogs->typed = QStringLiteral("the owner has taken them");
        QTest::keyClick(&steps, Qt::Key_N);
        QCOMPARE(m_bench->record()->marks.size(), std::size_t{1});
        QCOMPARE(m_bench->record()->marks.front().remark, std::string("the owner has taken them"));
        QVERIFY(pageText().contains(QStringLiteral("the owner has taken them")));
    }

    void pagesOfStepsAndTheirLinesFollowTheList() {
        readLetOffs();
        RowTable& steps = openAt("set-let-off");
        RowTable* lines = table(QStringLiteral("Lines of this work"));
        QVERIFY(lines->isVisible());
        QTest::keyClick(&steps, Qt::Key_Return);
        QCOMPARE(QApplication::focusWidget(), lines);
        QTest::keyClick(lines, Qt::Key_PageUp); // a step without lines: its page, and the keys are the list's
        QVERIFY(!lines->isVisible());
        QVERIFY(!pageText().isEmpty());
        QCOMPARE(QApplication::focusWidget(), &steps);
        QTest::keyClick(&steps, Qt::Key_PageDown);
        QVERIFY(lines->isVisible());
        QCOMPARE(QApplication::focusWidget(), lines);
    }

    /// The distance over the edge is reckoned here by hand from the zone, to the last shown digit.
    void aLineSaysWhyItIsThere() {
        readLetOffs();
        RowTable& steps = openAt("set-let-off");
        QTest::keyClick(&steps, Qt::Key_Return);
        choose(*table(QStringLiteral("Lines of this work")),
               [&](const ListRow& row) { return row.cells[1].text == words::noteName({40}, *m_bench->piano()); });
        const double high = static_cast<double>(*m_bench->zones().at({{40}, dimension::letOff})->high) / 1e6;
        const QString said = QStringLiteral("Read 6.0: %1 beyond its limit of %2.")
                                 .arg(QString::number(6.0 - high, 'f', 1), QString::number(high, 'f', 1));
        QVERIFY2(shown().contains(said), qPrintable(said + QLatin1Char('\n') + shown()));
    }

    /// Few lines leave the drawing of the adjustment its room; many take all of it.
    void theDrawingStandsBelowFewLines() {
        readLetOffs();
        openAt("set-let-off");
        const auto drawing = [&]() -> const DoingDrawing* {
            for (const auto* each : m_window->station()->findChildren<DoingDrawing*>())
                if (each->isVisible()) return each;
            return nullptr;
        };
        QTRY_VERIFY(drawing());
        QVERIFY(drawing()->subject());
        const RowTable& lines = *table(QStringLiteral("Lines of this work"));
        QVERIFY(lines.verticalScrollBar()->maximum() == 0); // no line is hidden for it
        std::vector<NewReading> all;
        for (int n = 1; n <= 88; ++n)
            all.push_back({{{n}, dimension::letOff}, reading("6.0")});
        QVERIFY(m_bench->enterAll(all, "entry").has_value());
        openAt("set-let-off");
        QTRY_VERIFY(!drawing());
    }

    /// A whole step done ticks its lines in one act, says so, and one undo takes all of it back.
    void aStepDoneTicksItsLines() {
        readLetOffs();
        RowTable& steps = openAt("set-let-off");
        steps.setFocus();
        QTest::keyClick(&steps, Qt::Key_Space);
        QVERIFY(m_bench->record()->done.size() >= 3);
        QVERIFY2(shown().contains(QStringLiteral("were ticked with it")), qPrintable(shown()));
        QVERIFY(!m_bench->plan()->uuid.empty());
        QVERIFY(m_bench->undo().has_value());
        QVERIFY(m_bench->record()->done.empty());
        QVERIFY(m_bench->record()->marks.empty());
    }

    void theRailCountsWhatIsDone() {
        openAt("take-photographs");
        const QString before = railText();
        QTest::keyClick(table(QStringLiteral("The whole job")), Qt::Key_Space);
        QTRY_VERIFY(railText() != before);
    }

    void theFormerNameOfTheStationLeadsHere() {
        open();
        QVERIFY(m_window->showStation(QStringLiteral("adjust")));
        QCOMPARE(m_window->station()->objectName(), QStringLiteral("work"));
    }

private:
    /// The station with the step as the current row, and the window with the keys.
    RowTable& openAt(const char* step) {
        if (!m_window) open();
        (void)m_bench->setPreference("job", "whole");
        m_window->showStation(QStringLiteral("work"));
        m_window->activateWindow();
        (void)QTest::qWaitForWindowActive(m_window.get());
        RowTable& steps = *table(QStringLiteral("The whole job"));
        choose(steps, [&](const ListRow& row) { return row.cells.front().text == words::stepName(step); });
        steps.setFocus();
        return steps;
    }

    void readLetOffs() {
        open();
        std::vector<NewReading> all;
        for (int n = 1; n <= 88; ++n)
            all.push_back({{{n}, dimension::letOff}, reading(n == 30 || n == 40 || n == 60 ? "6.0" : "2.9")});
        QVERIFY(m_bench->enterAll(all, "entry").has_value());
    }

    static void typeAtFocus(const QString& keys) {
        for (const QChar key : keys)
            if (QWidget* focus = QApplication::focusWidget()) {
                if (key == QLatin1Char('\r'))
                    QTest::keyClick(focus, Qt::Key_Return);
                else
                    QTest::keyClick(focus, key.toLatin1());
            }
    }

    QString notesDone(const std::string& step) const {
        std::vector<NoteNumber> notes;
        for (const WorkMark& mark : m_bench->record()->marks)
            if (mark.step == step && mark.note) notes.push_back(*mark.note);
        return QString::fromStdString(writeNotes(notes));
    }

    int ringOf(const char* step) {
        for (const ListRow& row : table(QStringLiteral("The whole job"))->rows())
            if (!row.cells.empty() && row.cells.front().text == words::stepName(step)) return row.cells.front().part;
        return -1;
    }

    QString pageText() const { return m_window->findChild<StepPage*>()->text().toPlainText(); }

    QString railText() const {
        const auto* hammer = m_window->findChild<QAbstractButton*>(QStringLiteral("station5"));
        return hammer ? hammer->accessibleName() + hammer->accessibleDescription() : QString();
    }

    /// Every text of the window that is in view.
    QString shown() const {
        QStringList all;
        for (const QLabel* label : m_window->findChildren<QLabel*>())
            if (label->isVisible())
                all << QString(label->text()).remove(QStringLiteral("<b>")).remove(QStringLiteral("</b>"));
        return all.join(QLatin1Char('\n'));
    }
};

QTEST_MAIN(WorkTest)
#include "work_test.moc"
