// What goes with every station: the note card, how to measure, names and keys of all that can be reached, and that the
// window comes back as it was left.
#include "ui/glossary_dialog.h"
#include "ui/key_sheet.h"
#include "ui/stations/bench_entry.h"
#include "ui/stations/bench_field.h"
#include "ui/stations/how_to.h"
#include "ui/stations/measure_acts.h"
#include "ui/stations/measure_station.h"
#include "ui/stations/note_card.h"
#include "ui/widgets/action_drawing.h"
#include "ui/words/glossary.h"
#include "ui/words/how_to.h"
#include "ui/words/words.h"

#include <QAbstractButton>
#include <QAbstractItemModelTester>
#include <QClipboard>
#include <QComboBox>
#include <QDockWidget>
#include <QLabel>
#include <QMenu>
#include <QMenuBar>
#include <QSet>
#include <QTest>
#include <QTextEdit>

#include "window_bench.h"

using namespace hammerline;

class MannersTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void init() { open(); }
    void cleanup() { close(); }

    // --- note card

    void theNoteCardExplainsOneNote() {
        QVERIFY(m_bench->enter({{40}, dimension::keyDip}, reading("10.0")).has_value());
        QVERIFY(m_bench->enter({{40}, dimension::blow}, reading("46")).has_value());
        QVERIFY(m_bench->enter({{40}, dimension::letOff}, reading("6.0")).has_value());
        QVERIFY(m_bench->enter({{41}, dimension::letOff}, reading("2.8")).has_value());
        m_bench->setCell({{40}, dimension::letOff});
        NoteCard* card = m_window->noteCard();
        QVERIFY(card && card->isVisible());
        const QAbstractItemModelTester tester(card->rows().model(),
                                              QAbstractItemModelTester::FailureReportingMode::Fatal);
        QString rows;
        for (const ListRow& row : card->rows().rows())
            if (row.key == dimension::letOff.row) rows = row.sentence;
        QVERIFY(rows.contains(QStringLiteral("6.0")));
        QVERIFY(card->text().contains(words::noteName({41}, *m_bench->piano())));
        // the sum is spelt out: dip = lost motion + (blow - let-off) / ratio + aftertouch, with R = 4.9 by default
        QVERIFY(card->text().contains(QStringLiteral("46.0 \u2212 6.0")));
        QVERIFY(card->text().contains(QStringLiteral("4.9")));
        // it can be taken along: all of it selected and copied by keys
        auto* text = card->findChild<QTextEdit*>();
        QVERIFY(text && (text->textInteractionFlags() & Qt::TextSelectableByMouse));
        text->setFocus();
        QTest::keyClick(text, Qt::Key_A, Qt::ControlModifier);
        QTest::keyClick(text, Qt::Key_C, Qt::ControlModifier);
        QVERIFY(QGuiApplication::clipboard()->text().contains(QStringLiteral("46.0 \u2212 6.0")));
        m_bench->setNote({41});
        QVERIFY(card->text().contains(words::noteName({40}, *m_bench->piano())));
        m_window->resize(1000, 700); // too narrow: folded
        QTRY_VERIFY(!card->isVisible());
    }

    void ctrlLHidesTheCardForGood() {
        QVERIFY(m_window->noteCard());
        QAction* action = shortcut(QStringLiteral("Ctrl+L"));
        QVERIFY(action);
        action->trigger();
        QVERIFY(!m_window->noteCard()->isVisible());
        m_window.reset();
        openWindow();
        QVERIFY(!m_window->noteCard() || !m_window->noteCard()->isVisible());
    }

    // --- how to measure

    void everyDimensionHasItsTextAndItsOwnDrawing() {
        for (const ActionKind kind : {ActionKind::upright, ActionKind::grand}) {
            auto piano = makePiano(kind);
            QVERIFY(setAttribute(*piano, "player", "above").has_value() || kind == ActionKind::grand);
            std::vector<QImage> drawn;
            for (const DimensionId id : dimensionsToShow(&*piano)) {
                const words::HowTo how = words::howTo(id, kind);
                QVERIFY2(!how.fromTo.isEmpty() && !how.how.isEmpty() && !how.with.isEmpty() &&
                             !how.reference.isEmpty() && !how.mistake.isEmpty(),
                         qPrintable(words::name(id)));
                QImage image(600, 440, QImage::Format_RGB32);
                image.fill(Qt::white);
                QPainter painter(&image);
                paintAction(painter, QRectF(0, 0, 600, 440), id, kind, lookOf(Theme::light));
                painter.end();
                for (const QImage& other : drawn)
                    QVERIFY2(other != image, qPrintable(words::name(id)));
                drawn.push_back(image);
            }
        }
    }

    void howToIsReachedFromEverywhere() {
        QStringList shown;
        m_dialogs->onRun = [&](QDialog& dialog) {
            auto* how = qobject_cast<HowToDialog*>(&dialog);
            QVERIFY(how);
            shown << words::name(how->dimension());
            how->step(1);
            QVERIFY(how->text().contains(words::howTo(how->dimension(), ActionKind::upright).how.toHtmlEscaped()));
        };
        shortcut(QStringLiteral("Shift+F1"))->trigger();
        Q_EMIT m_window->noteCard()->howToAsked();
        QVERIFY(m_window->showBenchEntry());
        press(Qt::Key_H);
        QCOMPARE(shown, QStringList(3, words::name(dimension::letOff)));
    }

    // --- manners

    void theKeySheetIsComplete() {
        QString sheet;
        m_dialogs->onRun = [&](QDialog& dialog) {
            sheet = dialog.findChild<QTextEdit*>()->toPlainText();
            QVERIFY(dialog.width() <= m_window->width() && dialog.height() <= m_window->height());
        };
        shortcut(QStringLiteral("F1"))->trigger();
        for (const QAction* action : m_window->actions())
            for (const QKeySequence& key : action->shortcuts())
                QVERIFY2(sheet.contains(key.toString(QKeySequence::NativeText)), qPrintable(key.toString()));
        for (const WordKey& key : wordKeys()) {
            bool named = false;
            for (const KeyGroup& group : keyGroups(*m_window->menuBar()))
                for (const KeyRow& row : group.rows)
                    named =
                        named ||
                        row.keys.split(QStringLiteral(", ")).contains(QString(QChar(static_cast<char16_t>(key.key))));
            QVERIFY(named);
        }
    }

    /// The glossary with real keys in its own window, no stand-in: typing narrows it, Escape leaves it.
    void wordsAreExplained() {
        QVERIFY(words::terms().size() >= 60);
        for (const words::Term& term : words::terms())
            QCOMPARE(words::termsIn(words::termName(term)).size(), std::size_t{1});
        QStringList names;
        for (const words::Term* term : words::termsIn(QStringLiteral("Let-off, lost motion and the rest rail; steps")))
            names << words::termName(*term);
        QCOMPARE(names,
                 (QStringList{QStringLiteral("let-off"), QStringLiteral("lost motion"), QStringLiteral("rest rail")}));

        GlossaryDialog glossary(m_window.get());
        glossary.show();
        QVERIFY(QTest::qWaitForWindowActive(&glossary));
        QVERIFY(glossary.focusWidget());
        QVERIFY(glossary.shownText().contains(QStringLiteral("wippen")));
        QTest::keyClicks(glossary.focusWidget(), QStringLiteral("drop"));
        QVERIFY(glossary.shownText().startsWith(QStringLiteral("drop")));
        QVERIFY(!glossary.shownText().contains(QStringLiteral("spoon")));
        QTest::keyClick(glossary.focusWidget(), Qt::Key_Escape);
        QVERIFY(!glossary.isVisible());

        // F1 first says what one stands at means.
        QVERIFY(m_window->showStation(QStringLiteral("measure")));
        m_bench->setCell({{40}, dimension::letOff});
        auto* measure = m_window->findChild<MeasureStation*>();
        measure->grid().setFocus();
        QString sheet;
        m_dialogs->onRun = [&](QDialog& dialog) { sheet = dialog.findChild<QTextEdit*>()->toPlainText(); };
        shortcut(QStringLiteral("F1"))->trigger();
        QVERIFY2(sheet.startsWith(QStringLiteral("let-off")), qPrintable(sheet.left(80)));
    }

    void everyControlHasAName() {
        QStringList nameless;
        for (const char* id : {"piano", "survey", "measure", "review", "work", "passes"}) {
            QVERIFY(m_window->showStation(QLatin1String(id)));
            QSet<const QWidget*> labelled; // a label's buddy is read out by its label
            for (const QLabel* label : m_window->station()->findChildren<QLabel*>())
                labelled.insert(label->buddy());
            for (const QWidget* widget : m_window->station()->findChildren<QWidget*>()) {
                if (!widget->isVisibleTo(m_window.get()) || !(widget->focusPolicy() & Qt::TabFocus)) continue;
                if (widget->objectName().startsWith(QLatin1String("qt_")) || widget->focusProxy()) continue;
                const auto* button = qobject_cast<const QAbstractButton*>(widget);
                if (widget->accessibleName().isEmpty() && !(button && !button->text().isEmpty()) &&
                    !labelled.contains(widget))
                    nameless << QStringLiteral("%1: %2 %3")
                                    .arg(QLatin1String(id), QLatin1String(widget->metaObject()->className()),
                                         widget->objectName());
            }
        }
        QVERIFY2(nameless.isEmpty(), qPrintable(nameless.join(QStringLiteral("; "))));
    }

    void stationsAreMadeAtTheirFirstVisit() {
        QCOMPARE(m_window->findChildren<Station*>().size(), 1);
        QVERIFY(!m_window->benchEntry());
        QVERIFY(m_window->showStation(QStringLiteral("review")));
        QCOMPARE(m_window->findChildren<Station*>().size(), 2);
    }

    void theWindowComesBackAsItWasLeft() {
        addPiano(ActionKind::grand, 88, "Second");
        QVERIFY(m_bench->addPass({}).has_value());
        QVERIFY(m_bench->addPass({}).has_value());
        m_bench->choosePass(1);
        QVERIFY(m_window->showStation(QStringLiteral("review")));
        m_window->resize(1400, 900);
        const std::string uuid = m_bench->record()->uuid;
        m_window->close();
        QCOMPARE(m_settings->text(Setting::station), QStringLiteral("review"));
        QCOMPARE(m_settings->text(Setting::lastPiano).toStdString(), uuid);
        QCOMPARE(m_settings->number(Setting::lastPass), 1);
        m_window.reset();
        openWindow();
        QCOMPARE(m_window->size(), QSize(1400, 900));
    }

    void twoWindowsOnOneBookFollowEachOther() {
        Workbench other;
        QVERIFY(other.openBook(path()).has_value());
        Settings settings(m_folder->filePath(QStringLiteral("other.ini")));
        MainWindow second(other, settings);
        QVERIFY(second.showStation(QStringLiteral("measure")));
        QVERIFY(m_window->showBenchEntry());
        type(QStringLiteral("3.1"));
        press(Qt::Key_Return);
        QTRY_VERIFY_WITH_TIMEOUT(other.pass() && other.pass()->value({{1}, dimension::letOff}), 3000);
        Reading back = reading("2.9");
        QVERIFY(other.enter({{1}, dimension::letOff}, back).has_value());
        QTRY_COMPARE_WITH_TIMEOUT(valueAt(1, dimension::letOff), 29 * kTenth, 3000);
    }

private:
    BenchEntry& entry() { return *m_window->benchEntry(); }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QTest::keyClick(&entry().field(), key, modifiers);
    }
    void type(const QString& text) { QTest::keyClicks(&entry().field(), text); }
};

QTEST_MAIN(MannersTest)
#include "manners_test.moc"
