// What is asked in passing and answered there: looks before a plan, the size of a piece of leather.
#include "core/causes/causes.h"
#include "ui/questions/questions_page.h"
#include "ui/stations/survey_orders.h"

#include <QComboBox>
#include <QLineEdit>

#include "window_bench.h"

using namespace hammerline;

class AnswersTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void init() { open(); }
    void cleanup() { close(); }

    void aLookIsAnsweredByYesOrNoAndHoldsForThePass() {
        QVERIFY(m_bench->enter({{1}, dimension::lostMotion}, reading("-0.5")).has_value());
        QuestionRow row(*m_bench, "room-humidity", nullptr);
        QTest::keyClick(&row, Qt::Key_L); // not yet
        QVERIFY(!answerTo("room-humidity", *m_bench->record(), *m_bench->pass()));
        QTest::keyClick(&row, Qt::Key_Y);
        QCOMPARE(answerTo("room-humidity", *m_bench->record(), *m_bench->pass()), std::optional(true));
        QuestionRow mark(*m_bench, "mark-capstan", nullptr);
        QTest::keyClick(&mark, Qt::Key_N);
        QCOMPARE(answerTo("mark-capstan", *m_bench->record(), *m_bench->pass()), std::optional(false));
        QVERIFY(m_bench->undo().has_value());
        QVERIFY(!answerTo("mark-capstan", *m_bench->record(), *m_bench->pass()));
    }

    void aCheckOfAPartIsAnsweredByTheStateOfThatPart() {
        QVERIFY(m_bench->enter({{1}, dimension::lostMotion}, reading("0.3")).has_value());
        QuestionRow felts(*m_bench, "three-felts-compared", nullptr);
        QTest::keyClick(&felts, Qt::Key_Y);
        QCOMPARE(stateAt("balance-felt", {40}, m_bench->record()->findings), FindingState::sound);
        const std::size_t before = m_bench->record()->findings.size();
        QuestionRow bolts(*m_bench, "action-bolts", nullptr);
        QTest::keyClick(&bolts, Qt::Key_N); // what is wrong is said in place
        auto* fault = bolts.findChild<QComboBox*>();
        QVERIFY(fault && !fault->isHidden() && fault->count() > 1);
        QCOMPARE(m_bench->record()->findings.size(), before); // nothing is kept by the key alone
        QTest::keyClick(fault, Qt::Key_Return);
        const Finding& kept = m_bench->record()->findings.back();
        QCOMPARE(QString::fromStdString(kept.part), QStringLiteral("action-bolts"));
        QCOMPARE(QString::fromStdString(kept.fault), fault->itemData(0).toString());
    }

    /// All of them stand in one list; each is answered where it stands, and none is answered by Enter alone.
    void whatIsAskedFirstIsOneListThatIsAnsweredInPlace() {
        QVERIFY(m_bench->enter({{1}, dimension::letOff}, reading("6")).has_value());
        QVERIFY(m_window->showStation(QStringLiteral("work")));
        m_window->activateWindow();
        QVERIFY(QTest::qWaitForWindowActive(m_window.get()));
        QTest::keyClick(m_window.get(), Qt::Key_A);
        auto* page = m_window->findChild<QuestionsPage*>();
        QVERIFY2(page && page->isVisibleTo(m_window.get()), "the list");
        const auto rows = page->findChildren<QuestionRow*>();
        const int asked = static_cast<int>(rows.size());
        QVERIFY(asked >= 8);
        QCOMPARE(page->openCount(), asked);
        QuestionRow* screws = rows.front();
        QCOMPARE(m_window->focusWidget(), screws);
        QTest::keyClick(screws, Qt::Key_Return);
        QVERIFY(m_bench->record()->findings.empty()); // Enter only goes on: it swears to nothing
        QTest::keyClick(screws, Qt::Key_Y);
        auto* notes = screws->findChild<QLineEdit*>();
        QVERIFY(notes->isVisibleTo(screws) && notes->text().isEmpty()); // nothing is filled in beforehand
        QTest::keyClicks(notes, QStringLiteral("a"));
        QTest::keyClick(notes, Qt::Key_Return);
        QVERIFY(m_bench->record()->findings.empty()); // a letter alone is no note
        QCOMPARE(notes->text(), QStringLiteral("a"));
        notes->clear();
        QTest::keyClicks(notes, QStringLiteral("1-3, 27-29, 53-55, 71-73"));
        QTest::keyClick(notes, Qt::Key_Return);
        QCOMPARE(stateAt("let-off-screw", {28}, m_bench->record()->findings), FindingState::sound);
        QCOMPARE(stateAt("let-off-screw", {40}, m_bench->record()->findings), FindingState::notLookedAt);
        QCOMPARE(page->openCount(), asked - 1);
        QVERIFY(screws->spoken().contains(QStringLiteral("27-29"))); // its answer stays in the list
        QCOMPARE(m_window->focusWidget(), rows.at(1));
        QVERIFY(m_bench->undo().has_value());
        QCOMPARE(page->openCount(), asked);
        // Another piano has its own questions: none of them is answered because they are not those of the first.
        const auto grand = makePiano(ActionKind::grand);
        QVERIFY(grand);
        Piano piano = *grand;
        piano.name = "A grand";
        QVERIFY(m_bench->addPiano(piano, "grand").has_value());
        for (const QuestionRow* each : page->findChildren<QuestionRow*>())
            QVERIFY(each->isOpen());
        QVERIFY(m_bench->choosePiano("Test upright").has_value());
        QTest::keyClick(page, Qt::Key_Escape);
        QVERIFY(!page->isVisibleTo(m_window.get()));
    }

    void thePieceOfASheetIsMeasuredAndHoldsForThePiano() {
        QVERIFY(
            m_bench->addFindings(*parseFindings("all butt-leather dished releather", *m_bench->piano())).has_value());
        QVERIFY(m_window->showStation(QStringLiteral("survey")));
        auto& orders = *m_window->findChild<SurveyOrders*>();
        const auto row = [&](std::string_view part) {
            for (std::size_t i = 0; i < orders.lines().size(); ++i)
                if (orders.lines()[i].part == part) return static_cast<int>(i);
            return -1;
        };
        QVERIFY(row("butt-leather-sheet") >= 0);
        // 88 pieces of 10 x 30 mm and a tenth for the edges (common practice, no source)
        QCOMPARE(orders.lines()[static_cast<std::size_t>(row("butt-leather-sheet"))].needed, 300);
        orders.setCurrentItem(orders.topLevelItem(row("butt-leather-sheet")));
        m_dialogs->typed = QStringLiteral("9.5 x 28");
        QTest::keyClick(&orders, Qt::Key_Return);
        QCOMPARE(orders.lines()[static_cast<std::size_t>(row("butt-leather-sheet"))].needed, 260);
        m_dialogs->typed = QStringLiteral("large");
        QTest::keyClick(&orders, Qt::Key_Return);
        QCOMPARE(orders.lines()[static_cast<std::size_t>(row("butt-leather-sheet"))].needed, 260);
    }
};

QTEST_MAIN(AnswersTest)
#include "answers_test.moc"
