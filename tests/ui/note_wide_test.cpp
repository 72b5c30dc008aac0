// The note, wide: its pages and keys, what is supposed there is never stored, and what is taken over is an aim with a
// reason.
#include "ui/stations/action_drawn_page.h"
#include "ui/stations/action_what_if.h"
#include "ui/stations/action_wide.h"
#include "ui/words/action.h"

#include <QScrollArea>
#include <QScrollBar>
#include <QTest>

#include "window_bench.h"

using namespace hammerline;

class NoteWideTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void init() {
        open();
        for (const int note : {39, 40, 41}) {
            enter(note, dimension::keyDip, "10.0");
            enter(note, dimension::lostMotion, "0.4");
            enter(note, dimension::blow, "46");
            enter(note, dimension::letOff, "3.0");
        }
        m_bench->setCell({{40}, dimension::letOff});
    }
    void cleanup() { close(); }

    void itStandsInThePlaceOfTheStationAndGoesBack() {
        QVERIFY(!m_window->noteIsWide());
        shortcut(QStringLiteral("F7"))->trigger();
        QVERIFY(m_window->noteIsWide());
        QTest::keyClick(page(), Qt::Key_2);
        QCOMPARE(wide().page(), 1);
        QTest::keyClick(page(), Qt::Key_Right);
        QCOMPARE(m_bench->note().value, 41);
        QTest::keyClick(page(), Qt::Key_Escape);
        QVERIFY(!m_window->noteIsWide());
        QCOMPARE(m_window->station()->objectName(), QStringLiteral("measure"));
        shortcut(QStringLiteral("F7"))->trigger(); // the page is kept
        QCOMPARE(wide().page(), 1);
        QVERIFY(m_window->showStation(QStringLiteral("review"))); // and the rail leads away
        QVERIFY(!m_window->noteIsWide());
    }

    // 0.4 + 43/4.9: lost motion at its limit is within, so the plan leaves it alone
    void everyPageSaysWhatItShows() {
        shortcut(QStringLiteral("F7"))->trigger();
        for (const int key : {Qt::Key_1, Qt::Key_2, Qt::Key_3}) {
            QTest::keyClick(page(), static_cast<Qt::Key>(key));
            QVERIFY(!page()->accessibleName().isEmpty());
            QVERIFY2(page()->accessibleDescription().contains(QStringLiteral("46")) ||
                         page()->accessibleDescription().contains(QStringLiteral("9.18")),
                     qPrintable(page()->accessibleDescription()));
        }
    }

    // 9.0 - 43/4.9 by the customary ratio; let-off 1.0 farther gives 1/4.9 of a mm more.
    void supposingChangesTheAccountAndNothingElse() {
        shortcut(QStringLiteral("F7"))->trigger();
        QTest::keyClick(page(), Qt::Key_1);
        ActionDesk& desk = wide().desk();
        const double before = *desk.note().account.computed;
        const double ratio = desk.note().account.ratio.value;
        chooseHandle(dimension::letOff);
        for (int i = 0; i < 10; ++i)
            QTest::keyClick(page(), Qt::Key_Right, Qt::ShiftModifier);
        QVERIFY(std::abs(*desk.supposed(dimension::letOff) - 4.0) < 1e-6);
        QVERIFY(std::abs(*desk.note().accountAfter->computed - before - 1 / ratio) < 1e-6);
        QCOMPARE(valueAt(40, dimension::letOff), 30 * kTenth); // the book has what it had
        QVERIFY(m_bench->record()->overrides.empty());
        QTest::keyClick(page(), Qt::Key_Delete);
        QVERIFY(!desk.supposes());
        QTest::keyClick(page(), Qt::Key_Right, Qt::ShiftModifier);
        QTest::keyClick(page(), Qt::Key_Right); // another note: what was supposed is forgotten
        QCOMPARE(m_bench->note().value, 41);
        QVERIFY(!desk.supposes());
    }

    void whatIsTakenOverIsAnAimWithItsReason() {
        shortcut(QStringLiteral("F7"))->trigger();
        QTest::keyClick(page(), Qt::Key_1);
        chooseHandle(dimension::letOff);
        QTest::keyClick(page(), Qt::Key_Right, Qt::ShiftModifier);
        m_dialogs->typed = QString();
        QTest::keyClick(page(), Qt::Key_Return); // no reason, no aim
        QVERIFY(m_bench->record()->overrides.empty());
        m_dialogs->typed = QStringLiteral("string stands low");
        QTest::keyClick(page(), Qt::Key_Return);
        QCOMPARE(m_bench->record()->overrides.size(), std::size_t{1});
        const Override& own = m_bench->record()->overrides.front();
        QCOMPARE(own.cell, (Cell{{40}, dimension::letOff}));
        QCOMPARE(own.zone.nominal, fromTrade(3.1, Kind::length));
        QCOMPARE(QString::fromStdString(own.reason), QStringLiteral("string stands low"));
        QVERIFY(m_bench->undo().has_value());
        QVERIFY(m_bench->record()->overrides.empty());
    }

    // Pads alone: the hammer's way is shorter by 0.5, the key's empty way longer by 0.5/R: nothing is won. With the
    // capstans' round it is 0.5/R.
    void theRailAloneWinsNoAftertouch() {
        shortcut(QStringLiteral("F7"))->trigger();
        QTest::keyClick(page(), Qt::Key_1);
        ActionDesk& desk = wide().desk();
        const double before = *desk.note().account.computed, ratio = desk.note().account.ratio.value;
        for (int i = 0; i < 6; ++i)
            QTest::keyClick(page(), Qt::Key_Down); // the last handle is the rail
        for (int i = 0; i < 2; ++i)
            QTest::keyClick(page(), Qt::Key_Right, Qt::ShiftModifier);
        QVERIFY(std::abs(desk.rail() - 0.5) < 1e-9);
        QVERIFY(std::abs(*desk.note().accountAfter->computed - before) < 1e-5);
        QTest::keyClick(page(), Qt::Key_C);
        QVERIFY(std::abs(*desk.note().accountAfter->computed - before - 0.5 / ratio) < 1e-5);
        for (const int n : {39, 41})
            QVERIFY(desk.all()[static_cast<std::size_t>(n) - 1].accountAfter.has_value());
        QCOMPARE(valueAt(40, dimension::blow), 460 * kTenth);
    }

    // Customary arms F 235, P 214, T 142, C 127: 0.3 mm at the front is 0.113 mm of punching; dip 0.3 x 2.753/2.655 =
    // 0.3111 more, lost motion 0.3 x 0.1955/2.655 = 0.0221 less; both give aftertouch.
    void aHigherKeyGivesDipAndTakesLostMotion() {
        shortcut(QStringLiteral("F7"))->trigger();
        QTest::keyClick(page(), Qt::Key_1);
        ActionDesk& desk = wide().desk();
        const double before = *desk.note().account.computed;
        const double dip = *desk.readAt(dimension::keyDip), lost = *desk.readAt(dimension::lostMotion);
        const std::size_t acts = m_bench->record()->overrides.size();
        chooseHandle(dimension::keyHeight);
        for (int i = 0; i < 3; ++i)
            QTest::keyClick(page(), Qt::Key_Right, Qt::ShiftModifier);
        const double by = *desk.supposed(dimension::keyHeight) - desk.readAt(dimension::keyHeight).value_or(0);
        QVERIFY(std::abs(by - 0.3) < 1e-9);
        QVERIFY(std::abs(*desk.movedAlong(dimension::keyDip) - dip - 0.31109) < 1e-4);
        QVERIFY(std::abs(*desk.movedAlong(dimension::lostMotion) - lost + 0.02209) < 1e-4);
        QVERIFY(std::abs(*desk.note().accountAfter->computed - before - 0.33318) < 2e-4);
        QVERIFY(std::abs(*desk.note().strokeAfter->bottom - dip - 0.31109) < 1e-4);
        QCOMPARE(m_bench->record()->overrides.size(), acts); // playing keeps nothing
        // a dip supposed by hand stands, whatever the height does
        desk.suppose(dimension::keyDip, 10.5);
        QVERIFY(std::abs(*desk.afterAt(dimension::keyDip) - 10.5) < 1e-9);
        QTest::keyClick(page(), Qt::Key_Delete);
        QVERIFY(!desk.supposed(dimension::keyHeight));
        m_dialogs->typed = QStringLiteral("worn ivory");
        desk.suppose(dimension::keyHeight, 0.2);
        QTest::keyClick(page(), Qt::Key_Return);
        QVERIFY(m_bench->zones().overridden({{40}, dimension::keyHeight}));
        QVERIFY(m_bench->undo().has_value());
    }

    void theSliderGoesThroughTheStroke() {
        shortcut(QStringLiteral("F7"))->trigger();
        QTest::keyClick(page(), Qt::Key_3);
        auto* drawn = qobject_cast<DrawnPage*>(page());
        QVERIFY(drawn && drawn->body());
        QTest::keyClick(page(), Qt::Key_Up);
        QVERIFY(drawn->moment() != Moment::letOff);
        QTest::keyClick(page(), Qt::Key_Down);
        QCOMPARE(drawn->moment(), Moment::letOff);
        const double at = drawn->travel();
        QTest::keyClick(page(), Qt::Key_Right);
        QVERIFY(std::abs(drawn->travel() - at - 0.1) < 1e-9);
        const QString said = QStringLiteral("Key %1 mm").arg(drawn->travel(), 0, 'f', 1); // a screen reader follows
        QVERIFY2(drawn->accessibleDescription().contains(said), qPrintable(drawn->accessibleDescription()));
        QCOMPARE(m_bench->note().value, 40); // arrows move the key here; brackets the note
        QTest::keyClick(page(), Qt::Key_BracketRight);
        QCOMPARE(m_bench->note().value, 41);
    }

    // What stands still is painted once and kept: a page made anew must show the very same.
    void theKeptPictureIsNeverAnOldOne() {
        shortcut(QStringLiteral("F7"))->trigger();
        QTest::keyClick(page(), Qt::Key_3);
        const auto changes = std::to_array<std::function<void()>>({
            [] {},
            [this] { enter(40, dimension::letOff, "4.6"); },
            [this] { QTest::keyClick(page(), Qt::Key_BracketRight); },
            [this] { m_window->resize(m_window->width() - 90, m_window->height()); },
            [] { dress(Theme::dark, 100); },
            [] { dress(Theme::light, 125); },
        });
        for (const auto& change : changes) {
            page()->grab(); // kept as it is now
            change();
            QApplication::processEvents();
            QCOMPARE(pictureOf(*page()), pictureOfAnotherAs(*page()));
        }
        dress(Theme::light, 100);
    }

    void readingsThatCannotBeDrawnTogetherAreNamed() {
        enter(40, dimension::letOff, "47");
        shortcut(QStringLiteral("F7"))->trigger();
        QTest::keyClick(page(), Qt::Key_3);
        QVERIFY(!qobject_cast<DrawnPage*>(page())->body());
        QVERIFY2(page()->accessibleDescription().contains(QStringLiteral("47")),
                 qPrintable(page()->accessibleDescription()));
    }

    // A page that has less room than it needs is scrolled: the handles stand below the account, the moments below the
    // drawing, and the arrows stay the note's.
    void twiceTheTypeIsScrolledNotCut() {
        shortcut(QStringLiteral("F7"))->trigger();
        m_window->setTextSize(200);
        for (const int key : {Qt::Key_1, Qt::Key_2, Qt::Key_3}) {
            QTest::keyClick(page(), static_cast<Qt::Key>(key));
            QApplication::processEvents();
            QVERIFY(page()->height() >= page()->wantedHeight(page()->width()));
            auto* area = qobject_cast<QScrollArea*>(page()->parentWidget()->parentWidget());
            QVERIFY(area && area->verticalScrollBar()->maximum() > 0);
            QCOMPARE(area->horizontalScrollBar()->maximum(), 0);
            QTest::keyClick(page(), Qt::Key_PageDown);
            QVERIFY(area->verticalScrollBar()->value() > 0);
        }
        QTest::keyClick(page(), Qt::Key_1);
        auto* whatIf = page()->findChild<WhatIf*>();
        QVERIFY(whatIf->isVisible());
        QVERIFY(whatIf->geometry().bottom() <= page()->height());
        QVERIFY(whatIf->height() >= whatIf->sizeHint().height());
        for (int i = 0; i < 6; ++i) // the last handle comes into sight when it is chosen
            QTest::keyClick(page(), Qt::Key_Down);
        const QRect last = whatIf->currentRow().translated(whatIf->pos());
        QVERIFY(page()->visibleRegion().contains(last.center()));
        QTest::keyClick(page(), Qt::Key_Right);
        QCOMPARE(m_bench->note().value, 41);
        m_window->setTextSize(100);
    }

    void largerTypeKeepsThePage() {
        shortcut(QStringLiteral("F7"))->trigger();
        QTest::keyClick(page(), Qt::Key_2);
        m_window->setTextSize(150);
        QVERIFY(m_window->noteIsWide());
        QCOMPARE(wide().page(), 1);
    }

private:
    /// Without the slider, whose handle shows who has the focus.
    static QImage pictureOf(ActionPage& shown) {
        return shown.grab(QRect(0, 0, shown.width(), shown.height() - u(18))).toImage();
    }
    QImage pictureOfAnotherAs(const ActionPage& shown) {
        ActionDesk desk(*m_bench);
        const std::unique_ptr<ActionPage> another(makeDrawnPage(desk, nullptr));
        another->setAttribute(Qt::WA_DontShowOnScreen);
        another->resize(shown.size());
        another->show();
        return pictureOf(*another);
    }
    void enter(int note, DimensionId id, const char* typed) {
        QVERIFY(m_bench->enter({{note}, id}, reading(typed)).has_value());
    }
    ActionWide& wide() { return *m_window->findChild<ActionWide*>(); }
    ActionPage* page() {
        for (ActionPage* each : wide().findChildren<ActionPage*>())
            if (each->isVisible()) return each;
        return nullptr;
    }
    void chooseHandle(DimensionId id) {
        auto* whatIf = page()->findChild<WhatIf*>();
        for (int i = 0; i < 6 && whatIf->current() != id; ++i)
            QTest::keyClick(page(), Qt::Key_Down);
        QCOMPARE(whatIf->current(), id);
    }
};

QTEST_MAIN(NoteWideTest)
#include "note_wide_test.moc"
