// The Survey station under a person's hands: a whole upright looked at by keyboard only, and what the window then says
// of it.
#include "core/survey/job.h"
#include "ui/questions/questions_page.h"
#include "ui/stations/survey_form.h"
#include "ui/stations/survey_job.h"
#include "ui/stations/survey_letters.h"
#include "ui/stations/survey_orders.h"
#include "ui/stations/survey_pages.h"
#include "ui/stations/survey_station.h"
#include "ui/stations/survey_symptoms.h"
#include "ui/stations/survey_view.h"
#include "ui/widgets/keyboard_strip.h"

#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>

#include "window_bench.h"

using namespace hammerline;

class SurveyTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void init() {
        open("old-upright", {{"butt", "brass-rail"}, {"last-damper", "66"}});
        m_window->resize(1280, 800);
        QVERIFY(m_window->showStation(QStringLiteral("survey")));
        m_window->activateWindow();
        QVERIFY(QTest::qWaitForWindowActive(m_window.get()));
        m_dialogs->choice = 0; // whatever is asked first is in order
    }
    void cleanup() { close(); }

    /// Scenario S4 and S6 by hand: every part of the action, most of it sound by one key a row.
    void aWholeUprightIsEnteredByKeyboardOnly() {
        view().setFocus();
        goTo("bridle-strap", 1);
        QTest::keyClick(&view(), Qt::Key_End, Qt::ShiftModifier); // the whole row
        QTest::keyClick(&view(), Qt::Key_R);                      // rotted
        for (const int n : {12, 23, 24, 40}) {
            goTo("butt-plate", n);
            QTest::keyClick(&view(), faultKey("butt-plate", "broken"));
        }
        goTo("let-off-screw", 44);
        QTest::keyClick(&view(), Qt::Key_S); // seized
        goTo("let-off-screw", 71);
        QTest::keyClick(&view(), faultKey("let-off-screw", "eye-broken"));
        goTo("hammer-head", 37);
        QTest::keyClick(&view(), Qt::Key_W);
        // Everything else: down the rows, and the rest of each is sound.
        goTo(view().survey().part(0).key, 1);
        for (int row = 0; row < view().survey().rowCount(); ++row) {
            QCOMPARE(view().currentIndex().row(), row);
            QTest::keyClick(&view(), Qt::Key_Y, Qt::ShiftModifier);
            QTest::keyClick(&view(), Qt::Key_Down);
        }
        const auto& findings = m_bench->record()->findings;
        const Piano& piano = *m_bench->piano();
        for (const Part& part : parts())
            for (const NoteNumber n : notesOf(part, piano)) {
                const bool felt = part.key.starts_with("damper-felt");
                if (!felt) QVERIFY2(stateAt(part.key, n, findings) != FindingState::notLookedAt, part.key.data());
            }
        int toDo = 0;
        for (const Finding& finding : findings)
            toDo += finding.state == FindingState::toDo;
        QCOMPARE(toDo, 88 + 4 + 2);
        QCOMPARE(stateAt("butt-plate", {23}, findings), FindingState::toDo);
        QCOMPARE(stateAt("butt-plate", {22}, findings), FindingState::sound);
        QCOMPARE(stateAt("hammer-head", {37}, findings), FindingState::watch);
        QVERIFY(askBeforePlan(findings, piano).empty());
        QCOMPARE(view().survey().counts().blocked, 88); // the straps come first everywhere
        const auto lines = partsList(findings, piano);
        const auto straps =
            std::find_if(lines.begin(), lines.end(), [](const PartsLine& l) { return l.part == "bridle-strap"; });
        QVERIFY(straps != lines.end());
        QCOMPARE(straps->quantity, 93); // 88 and 5 per cent, rounded up
    }

    void oneKeyIsOneActAndIsTakenBack() {
        goTo("jack", 30);
        QTest::keyClick(&view(), Qt::Key_Y, Qt::ShiftModifier);
        QCOMPARE(m_bench->record()->findings.size(), std::size_t{88});
        QTest::keyClick(&view(), Qt::Key_Z, Qt::ControlModifier);
        QVERIFY(m_bench->record()->findings.empty());
        QTest::keyClick(&view(), Qt::Key_Y, Qt::ControlModifier);
        QCOMPARE(m_bench->record()->findings.size(), std::size_t{88});
    }

    void restOfTheRowLeavesWhatWasFound() {
        goTo("jack", 30);
        QTest::keyClick(&view(), faultKey("jack", "slow"));
        QTest::keyClick(&view(), Qt::Key_Y, Qt::ShiftModifier);
        QCOMPARE(stateAt("jack", {30}, m_bench->record()->findings), FindingState::toDo);
        QCOMPARE(stateAt("jack", {29}, m_bench->record()->findings), FindingState::sound);
        QCOMPARE(stateAt("jack-spring", {29}, m_bench->record()->findings), FindingState::notLookedAt);
    }

    void oneFindingGoesToManyNotesThroughTheForm() {
        goTo("damper-felt-wedge", 14);
        QTest::keyClick(&view(), Qt::Key_F2);
        QCOMPARE(QApplication::focusWidget()->accessibleName(), QStringLiteral("Notes"));
        QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("11-28, 91"));
        QCOMPARE(form().named().size(), std::size_t{18}); // 91 is named, the others are kept
        QVERIFY(textsOf(form()).contains(QStringLiteral("91")));
        // The strip shows the notes in the entry.
        QCOMPARE(station().strip().named.size(), std::size_t{18});
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return, Qt::ControlModifier);
        const auto& findings = m_bench->record()->findings;
        QCOMPARE(findings.size(), std::size_t{18});
        QCOMPARE(findings.front().fault, std::string("hard"));
        // One act: one step back takes all of it.
        QVERIFY(m_bench->undo().has_value());
        QVERIFY(m_bench->record()->findings.empty());
    }

    void whatIsBlockedAndMendedShowsOnTheStrip() {
        goTo("butt-plate", 23);
        QTest::keyClick(&view(), faultKey("butt-plate", "broken"));
        goTo("jack-stop-felt", 30);
        QTest::keyClick(&view(), faultKey("jack-stop-felt", "gone"));
        auto* strip = m_window->findChild<KeyboardStrip*>();
        QVERIFY(strip);
        m_bench->setNote({23});
        QVERIFY2(strip->sentence().contains(QStringLiteral("mend first")), qPrintable(strip->sentence()));
        m_bench->setNote({30}); // to do, but the note can be regulated
        QVERIFY(strip->sentence().contains(QStringLiteral("to do")));
        m_bench->setNote({31});
        QVERIFY(!strip->sentence().contains(QStringLiteral("to do")));
        const QImage blocked = strip->grab().toImage();
        goTo("butt-plate", 23);
        QTest::keyClick(&view(), Qt::Key_M);
        QVERIFY(strip->sentence().contains(QStringLiteral("mended")));
        QCOMPARE(view().survey().counts().blocked, 0);
        const Finding* plate = standingAt("butt-plate", {23}, m_bench->record()->findings);
        QVERIFY(plate);
        QCOMPARE(plate->fault, std::string("broken")); // mended keeps what was found
        m_bench->setNote({31});
        QVERIFY(strip->grab().toImage() != blocked);
    }

    void sameAsLastAndForgetting() {
        goTo("jack-spring", 6);
        QTest::keyClick(&view(), faultKey("jack-spring", "weak"));
        goTo("jack-spring", 53);
        QTest::keyClick(&view(), Qt::Key_Asterisk, Qt::ShiftModifier);
        QCOMPARE(stateAt("jack-spring", {53}, m_bench->record()->findings), FindingState::toDo);
        QTest::keyClick(&view(), Qt::Key_Delete);
        QCOMPARE(stateAt("jack-spring", {53}, m_bench->record()->findings), FindingState::notLookedAt);
    }

    void everyPlaceHasItsSentence() {
        const QAbstractItemModelTester tester(&view().survey(), QAbstractItemModelTester::FailureReportingMode::Fatal);
        goTo("butt-plate", 23);
        QTest::keyClick(&view(), faultKey("butt-plate", "broken"));
        const auto said = [&](std::string_view part, int note) {
            const auto index = view().survey().index(view().survey().rowOf(part), note - 1);
            return view().survey().data(index, Qt::AccessibleTextRole).toString();
        };
        QVERIFY(said("butt-plate", 23).contains(QStringLiteral("broken")));
        QVERIFY(said("butt-plate", 22).contains(QStringLiteral("not looked at")));
        QVERIFY(said("damper-lever", 70).contains(QStringLiteral("not fitted")));
        for (QWidget* each : station().findChildren<QWidget*>())
            if (each->focusPolicy() != Qt::NoFocus && each->isVisible() &&
                (qobject_cast<QLineEdit*>(each) || qobject_cast<QComboBox*>(each) ||
                 qobject_cast<QAbstractItemView*>(each)))
                QVERIFY2(!each->accessibleName().isEmpty() || qobject_cast<QComboBox*>(each->parentWidget()) ||
                             each->parentWidget()->inherits("QComboBoxPrivateContainer"),
                         each->metaObject()->className());
        for (QPushButton* button : station().tools()->findChildren<QPushButton*>())
            QVERIFY(!button->text().isEmpty());
    }

    void theOrderTakesTheSetOrOnlyTheFaultyOnes() {
        for (int n = 1; n <= 9; ++n) {
            goTo("wippen-heel-cloth", n);
            QTest::keyClick(&view(), faultKey("wippen-heel-cloth", "moth"));
        }
        for (int i = 0; i < 4 && !station().pages().orders().hasFocus(); ++i)
            QTest::keyClick(m_window.get(), Qt::Key_F6); // table, form, order, strip
        QVERIFY(station().pages().orders().hasFocus());
        QCOMPARE(station().pages().orders().lines().front().needed, 88); // 9 of 88 are more than a tenth
        QTest::keyClick(&station().pages().orders(), Qt::Key_Space);
        QCOMPARE(station().pages().orders().lines().front().needed, 9);
        QTest::keyClick(&station().pages().orders(), Qt::Key_Space);
        QCOMPARE(station().pages().orders().lines().front().needed, 88);
        QTest::keyClick(&station().pages().orders(), Qt::Key_H);
        QVERIFY(jobTerms(m_bench->record()->preferences).inHand.contains("wippen-heel-cloth"));
        m_dialogs->answers << QStringLiteral("10 %");
        QTest::keyClick(&station().pages().orders(), Qt::Key_Return);
        QCOMPARE(station().pages().orders().lines().front().quantity, 97); // 88 and a tenth, rounded up
        m_dialogs->answers << QStringLiteral("plenty");
        QTest::keyClick(&station().pages().orders(), Qt::Key_Return);
        QCOMPARE(station().pages().orders().lines().front().quantity, 97);
    }

    void theWholeJobHasItsOrderAndItsHours() {
        goTo("jack-spring", 6);
        QTest::keyClick(&view(), faultKey("jack-spring", "broken"));
        QTest::keyClick(&view(), Qt::Key_PageDown, Qt::ControlModifier);
        QCOMPARE(station().pages().page(), SurveyPages::Page::job);
        SurveyJob& job = station().pages().job();
        QVERIFY(job.hasFocus());
        const auto found = job.findItems(QStringLiteral("Jack spring"), Qt::MatchExactly | Qt::MatchRecursive, 0);
        QCOMPARE(found.size(), 1);
        QVERIFY(found.front()->text(3).contains(QStringLiteral("waits")));
        QCOMPARE(found.front()->text(2),
                 QStringLiteral("6 min")); // one alone (core/survey/remedy_minutes: 6, in a set 5)
        job.setCurrentItem(found.front());
        m_dialogs->answers << QStringLiteral("8");
        QTest::keyClick(&job, Qt::Key_Return);
        QCOMPARE(job.currentItem()->text(2), QStringLiteral("8 min"));
        m_dialogs->answers << QStringLiteral("long");
        QTest::keyClick(&job, Qt::Key_Return);
        QCOMPARE(job.currentItem()->text(2), QStringLiteral("8 min"));
    }

    void aSymptomIsNotedAndAnswered() {
        goTo("jack-spring", 24);
        QTest::keyClick(&view(), faultKey("jack-spring", "weak"));
        QTest::keyClick(&view(), Qt::Key_PageUp, Qt::ControlModifier); // the last page: photographs
        QTest::keyClick(&view(), Qt::Key_PageUp, Qt::ControlModifier);
        QCOMPARE(station().pages().page(), SurveyPages::Page::symptoms);
        QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("20-30"));
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
        QCOMPARE(m_bench->record()->symptoms.size(), std::size_t{1});
        QVERIFY2(station().pages().symptoms().answers().contains(QStringLiteral("jack spring")),
                 qPrintable(station().pages().symptoms().answers()));
        QTest::keyClicks(QApplication::focusWidget(), QStringLiteral("200"));
        QTest::keyClick(QApplication::focusWidget(), Qt::Key_Return);
        QCOMPARE(m_bench->record()->symptoms.size(), std::size_t{1});
    }

    void numbersAreCheckedOnTheWayBack() {
        goTo("key", 1);
        m_dialogs->answers << QStringLiteral("1-20, 22, 21, 23-31, 31, 33-88");
        for (QPushButton* button : station().tools()->findChildren<QPushButton*>())
            if (button->text().contains(QStringLiteral("umbers"))) button->click();
        QVERIFY2(m_dialogs->said.contains(QStringLiteral("missing: 32")), qPrintable(m_dialogs->said));
        QVERIFY(m_dialogs->said.contains(QStringLiteral("there twice: 31")));
        QVERIFY(m_dialogs->said.contains(QStringLiteral("out of sequence: 2")));
    }

    void whatIsAskedBeforeAPlanIsAnsweredByKeyboard() {
        NewPass pass;
        QVERIFY(m_bench->addPass(pass).has_value());
        Reading reading;
        reading.count = 6 * kNmPerMm;
        reading.typed = "6";
        QVERIFY(m_bench->enter({{40}, dimension::letOff}, reading).has_value());
        QVERIFY(m_window->showStation(QStringLiteral("work")));
        const auto stillOpen = [&] { return askBeforePlan(m_bench->record()->findings, *m_bench->piano()).size(); };
        const auto before = stillOpen();
        QVERIFY(before > 5);
        QTest::keyClick(m_window.get(), Qt::Key_A);
        auto* page = m_window->findChild<QuestionsPage*>();
        const auto rows = page->findChildren<QuestionRow*>();
        const auto answer = [](QuestionRow* row, Qt::Key key, const QString& notes) {
            QTest::keyClick(row, key);
            auto* field = row->findChild<QLineEdit*>();
            if (!field->isVisibleTo(row)) return;
            QTest::keyClicks(field, notes);
            QTest::keyClick(field, Qt::Key_Return);
        };
        answer(rows.front(), Qt::Key_Y, QStringLiteral("1-3, 27-29, 53-55, 71, 72"));
        QCOMPARE(stillOpen(), before); // not tried at three of each section yet
        answer(rows.front(), Qt::Key_N, QStringLiteral("73"));
        QVERIFY2(stillOpen() == before - 1, qPrintable(textsOf(*rows.front())));
        QCOMPARE(stateAt("let-off-screw", {73}, m_bench->record()->findings), FindingState::toDo);
        QCOMPARE(stateAt("let-off-screw", {72}, m_bench->record()->findings), FindingState::sound);
        QCOMPARE(stateAt("let-off-screw", {74}, m_bench->record()->findings), FindingState::notLookedAt);
        for (QuestionRow* row : rows) {
            if (!row->isOpen()) continue;
            const auto left = stillOpen();
            answer(row, Qt::Key_Y, QStringLiteral("1, 27, 53, 71")); // capstans tried at single notes
            QVERIFY2(stillOpen() == left - 1, qPrintable(row->accessibleName()));
        }
        QCOMPARE(stillOpen(), std::size_t{0});
        QCOMPARE(page->openCount(), 0);
        QCOMPARE(stateAt("capstan", {2}, m_bench->record()->findings), FindingState::notLookedAt);
    }

private:
    SurveyStation& station() { return *m_window->findChild<SurveyStation*>(); }
    SurveyView& view() { return station().view(); }
    SurveyForm& form() { return station().form(); }
    /// By keyboard: rows by Up and Down, notes by Left and Right would do as well.
    void goTo(std::string_view part, int note) {
        const int row = view().survey().rowOf(part);
        QVERIFY2(row >= 0, part.data());
        view().setFocus();
        view().setCurrentIndex(view().survey().index(row, note - 1));
    }
    static Qt::Key faultKey(std::string_view part, std::string_view fault) {
        for (const auto& [letter, each] : faultLetters(*findPart(part)))
            if (each->key == fault) return static_cast<Qt::Key>(letter.unicode());
        return Qt::Key_unknown;
    }
    static QString textsOf(const QWidget& within) {
        QString all;
        for (const QLabel* label : within.findChildren<QLabel*>())
            all += label->text();
        return all;
    }
};

QTEST_MAIN(SurveyTest)
#include "survey_test.moc"
