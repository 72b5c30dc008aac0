// The survey under real keys: several rows at once, what is mended and what never was broken, the form reached from
// anywhere, and what the rail and the note card say then.
#include "ui/stations/note_card_rows.h"
#include "ui/stations/survey_form.h"
#include "ui/stations/survey_letters.h"
#include "ui/stations/survey_view.h"
#include "ui/widgets/station_rail.h"

#include <QComboBox>
#include <QLineEdit>
#include <QScrollBar>
#include <QWheelEvent>

#include "window_bench.h"

using namespace hammerline;

class SurveyHandsTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void init() {
        open("old-upright", {{"butt", "brass-rail"}});
        Dialogs::replace(nullptr); // the real ones
        QVERIFY(m_window->showStation(QStringLiteral("survey")));
        QApplication::setActiveWindow(m_window.get());
    }
    void cleanup() { close(); }

    /// Five broken plates and two torn straps in 2 x 88 places: M over all of them mends seven, not 176.
    void mendedIsSaidOnlyOfWhatWasFound() {
        for (const int note : {3, 17, 40, 66, 80})
            found("butt-plate", note, "broken");
        view().setCurrentPart("jack");
        for (const int note : {5, 6})
            found("jack", note, "slow");
        goTo("butt-plate", 1);
        key(Qt::Key_M); // note 1 is sound as far as anyone knows
        QCOMPARE(count(FindingState::mended), 0);
        key(Qt::Key_A, Qt::ControlModifier); // every row, every note
        key(Qt::Key_M);
        QCOMPARE(count(FindingState::mended), 7);
        QCOMPARE(count(FindingState::toDo), 0);
        QCOMPARE(surveyState(), QStringLiteral("none to mend"));
        key(Qt::Key_Z, Qt::ControlModifier); // one act
        QCOMPARE(count(FindingState::toDo), 7);
    }

    void theRailCountsWhatStands() {
        for (const int note : {3, 17, 40})
            found("butt-plate", note, "broken");
        goTo("butt-plate", 17);
        key(Qt::Key_M);
        goTo("butt-plate", 40);
        key(Qt::Key_Y);
        QCOMPARE(surveyState(), QStringLiteral("1 to mend"));
    }

    void aLetterOverSeveralPartsEntersNothing() {
        goTo("jack", 1);
        key(Qt::Key_A, Qt::ControlModifier);
        key(static_cast<Qt::Key>(faultLetters(*findPart("jack")).front().first.unicode()));
        QVERIFY(m_bench->record()->findings.empty());
    }

    /// A finding taken back by Del is on no card any more.
    void whatWasTakenBackIsOnNoCard() {
        goTo("balance-rail-pin", 1);
        key(Qt::Key_F2);
        keys(QStringLiteral("all"));
        key(Qt::Key_Return);
        QVERIFY(!noteCardFindings(*m_bench, {30}).isEmpty());
        goTo("balance-rail-pin", 1);
        key(Qt::Key_A, Qt::ControlModifier);
        key(Qt::Key_Delete);
        for (const int note : {1, 30, 88})
            QVERIFY(noteCardFindings(*m_bench, {note}).isEmpty());
    }

    /// Notes first, then the part from the list, then F2 and on: the finding is where it was typed.
    void aPartChosenInTheFormLeavesTheNotesTyped() {
        goTo("jack", 1);
        key(Qt::Key_F2);
        keys(QStringLiteral("40-45"));
        auto* part = m_window->findChild<SurveyForm*>()->findChildren<QComboBox*>().front();
        part->setFocus();
        part->setCurrentIndex(part->findData(QStringLiteral("hammer-head")));
        Q_EMIT part->activated(part->currentIndex());
        key(Qt::Key_F2); // from a choice too
        QCOMPARE(QApplication::focusWidget()->accessibleName(), QStringLiteral("Notes"));
        QCOMPARE(qobject_cast<QLineEdit*>(QApplication::focusWidget())->text(), QStringLiteral("40-45"));
        key(Qt::Key_Return);
        QCOMPARE(m_bench->record()->findings.size(), std::size_t{6});
        for (const Finding& each : m_bench->record()->findings) {
            QCOMPARE(each.part, std::string("hammer-head"));
            QVERIFY(each.note && each.note->value >= 40 && each.note->value <= 45);
        }
    }

    /// The wheel over a closed choice changes nothing, whether it has the focus or not.
    void theWheelChangesNoChoice() {
        QVERIFY(m_window->showStation(QStringLiteral("piano")));
        const Piano before = *m_bench->piano();
        int turned = 0;
        for (QComboBox* choice : m_window->station()->findChildren<QComboBox*>()) {
            const int index = choice->currentIndex();
            for (const bool focused : {false, true}) {
                if (focused) choice->setFocus();
                for (const int by : {-120, 120}) {
                    const QPointF at(choice->rect().center());
                    QWheelEvent wheel(at, choice->mapToGlobal(at), {}, {0, by}, Qt::NoButton, Qt::NoModifier,
                                      Qt::NoScrollPhase, false);
                    QApplication::sendEvent(choice, &wheel);
                    QCOMPARE(choice->currentIndex(), index);
                }
            }
            ++turned;
        }
        QVERIFY(turned > 3);
        QCOMPARE(*m_bench->piano(), before);
    }

private:
    SurveyView& view() { return *m_window->findChild<SurveyView*>(); }
    static void key(Qt::Key code, Qt::KeyboardModifiers held = Qt::NoModifier) {
        QTest::keyClick(QApplication::focusWidget(), code, held);
    }
    static void keys(const QString& text) { QTest::keyClicks(QApplication::focusWidget(), text); }
    void goTo(std::string_view part, int note) {
        view().setFocus();
        view().setCurrentPart(part);
        view().setCurrentIndex(view().survey().index(view().currentIndex().row(), note - 1));
    }
    void found(const char* part, int note, const char* fault) {
        Finding finding;
        finding.part = part;
        finding.note = NoteNumber{note};
        finding.fault = fault;
        QVERIFY(m_bench->addFindings({&finding, 1}).has_value());
    }
    /// The line under the second hammer, as it is read out.
    QString surveyState() {
        return m_window->findChild<StationRail*>()->findChildren<Hammer*>()[1]->accessibleDescription();
    }
    /// Places that stand so now.
    int count(FindingState state) {
        int places = 0;
        for (const Part& part : parts())
            for (const NoteNumber note : notesOf(part, *m_bench->piano()))
                places += stateAt(part.key, note, m_bench->record()->findings) == state;
        return places;
    }
};

QTEST_MAIN(SurveyHandsTest)
#include "survey_hands_test.moc"
