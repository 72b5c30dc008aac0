// What is asked in passing and answered there: looks before a plan, the size of a piece of leather.
#include "ui/stations/plan_questions.h"
#include "ui/stations/survey_orders.h"

#include "window_bench.h"

using namespace hammerline;

class AnswersTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void init() { open(); }
    void cleanup() { close(); }

    void aLookIsAnsweredByYesOrNoAndHoldsForThePass() {
        QVERIFY(m_bench->enter({{1}, dimension::lostMotion}, reading("-0.5")).has_value());
        m_dialogs->choice = 2; // later
        QCOMPARE(answerQuestion(m_window.get(), *m_bench, {"room-humidity"}), QString());
        QVERIFY(!answerTo("room-humidity", *m_bench->record(), *m_bench->pass()));
        m_dialogs->choice = 0;
        QCOMPARE(answerQuestion(m_window.get(), *m_bench, {"room-humidity"}), QString());
        QCOMPARE(answerTo("room-humidity", *m_bench->record(), *m_bench->pass()), std::optional(true));
        m_dialogs->choice = 1;
        QCOMPARE(answerQuestion(m_window.get(), *m_bench, {"mark-capstan"}), QString());
        QCOMPARE(answerTo("mark-capstan", *m_bench->record(), *m_bench->pass()), std::optional(false));
        QVERIFY(m_bench->undo().has_value());
        QVERIFY(!answerTo("mark-capstan", *m_bench->record(), *m_bench->pass()));
    }

    void aCheckOfAPartIsAnsweredByTheStateOfThatPart() {
        QVERIFY(m_bench->enter({{1}, dimension::lostMotion}, reading("0.3")).has_value());
        m_dialogs->choice = 0; // sound
        QCOMPARE(answerQuestion(m_window.get(), *m_bench, {"three-felts-compared"}), QString());
        QCOMPARE(stateAt("balance-felt", {40}, m_bench->record()->findings), FindingState::sound);
        m_dialogs->choice = 1; // not sound: named in the survey
        QCOMPARE(answerQuestion(m_window.get(), *m_bench, {"straightedge-on-rail"}), QStringLiteral("survey"));
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
