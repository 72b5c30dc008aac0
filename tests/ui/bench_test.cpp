// The entry at the bench, the note card, how to measure, import by the menu, and what the window keeps: as a person
// uses them, one key after another.
#include "core/sheet/sheet.h"
#include "ui/key_sheet.h"
#include "ui/stations/bench_entry.h"
#include "ui/stations/bench_field.h"
#include "ui/stations/export_intake.h"
#include "ui/stations/how_to.h"
#include "ui/stations/measure_acts.h"
#include "ui/stations/measure_intake.h"
#include "ui/stations/measure_station.h"
#include "ui/stations/note_card.h"
#include "ui/widgets/action_drawing.h"
#include "ui/words/how_to.h"
#include "ui/words/words.h"

#include <QAbstractButton>
#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QDockWidget>
#include <QLabel>
#include <QMenu>
#include <QMenuBar>
#include <QSet>
#include <QTest>

#include "window_bench.h"

using namespace hammerline;

class BenchTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void init() { open(); }
    void cleanup() { close(); }

    // --- entry at the bench

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
        press(Qt::Key_O); // its own dimension; the hand stays
        QCOMPARE(m_bench->pass()->at({{2}, dimension::lostMotion})->word(), std::optional(word::offRail));
        QCOMPARE(m_bench->note().value, 2);
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

    // --- import

    void theFourFilesComeInByTheMenu() {
        struct Case {
            const char* file;
            ActionKind kind;
            int notes;
            std::size_t readings, questions;
        };
        // what is in them: tests/reference/cases/truth.json
        const std::array<Case, 4> cases{{{"filed_hammers.csv", ActionKind::upright, 88, 88 * 5, 0},
                                         {"sunk_rail.csv", ActionKind::upright, 88, 88 * 5, 0},
                                         {"player_85_slips.csv", ActionKind::upright, 85, 85 * 4 - 4, 5},
                                         {"grand_samples.tsv", ActionKind::grand, 88, 22 * 6, 0}}};
        for (const Case& each : cases) {
            addPiano(each.kind, each.notes, each.file);
            m_dialogs->file =
                QStringLiteral(HAMMERLINE_SOURCE_DIR "/tests/reference/cases/") + QString::fromLatin1(each.file);
            m_dialogs->onRun = [&](QDialog& dialog) {
                auto* preview = qobject_cast<IntakeDialog*>(&dialog);
                QVERIFY(preview);
                QVERIFY(preview->readable());
                QCOMPARE(preview->intake().questions.size(), each.questions);
                QCOMPARE(preview->intake().refused.size(), std::size_t{0});
            };
            const int before = m_dialogs->ran;
            shortcut(QStringLiteral("Ctrl+I"))->trigger();
            QCOMPARE(m_dialogs->ran, before + 1);
            QVERIFY(m_bench->pass());
            QCOMPARE(m_bench->pass()->readingCount(), each.readings);
        }
    }

    void aSlipIsTakenAsSuggestedOnlyWhenAPersonSaysSo() {
        addPiano(ActionKind::upright, 85, "With a player");
        m_dialogs->file = QStringLiteral(HAMMERLINE_SOURCE_DIR "/tests/reference/cases/player_85_slips.csv");
        m_dialogs->onRun = [&](QDialog& dialog) {
            auto* preview = qobject_cast<IntakeDialog*>(&dialog);
            QVERIFY(preview);
            const auto& questions = preview->intake().questions;
            const std::size_t before = preview->takenCount();
            for (std::size_t i = 0; i < questions.size(); ++i)
                if (questions[i].cell == Cell{{67}, dimension::blow}) { // D#6: 1 13/16 mm, inch meant (truth.json)
                    QVERIFY(!preview->answer(i, IntakeDialog::Answer::asTyped));
                    QVERIFY(preview->answer(i, IntakeDialog::Answer::suggested));
                }
            QCOMPARE(preview->takenCount(), before + 1);
        };
        shortcut(QStringLiteral("Ctrl+I"))->trigger();
        QCOMPARE(valueAt(67, dimension::blow), std::int64_t{46'037'500}); // 1 13/16 in at 25.4 mm to the inch
        QVERIFY(!m_bench->pass()->value({{31}, dimension::keyDip}));      // D#3: left out
    }

    void aColumnIsGivenAnotherMeaning() {
        QFile file(m_folder->filePath(QStringLiteral("odd.csv")));
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write("note,whatever\n1,2.5\n2,2.6\n");
        file.close();
        m_dialogs->file = file.fileName();
        m_dialogs->onRun = [&](QDialog& dialog) {
            auto* preview = qobject_cast<IntakeDialog*>(&dialog);
            QVERIFY(preview);
            QCOMPARE(preview->takenCount(), std::size_t{0});
            preview->mapColumn(QStringLiteral("whatever"), dimension::letOff);
            QCOMPARE(preview->takenCount(), std::size_t{2});
        };
        shortcut(QStringLiteral("Ctrl+I"))->trigger();
        QCOMPARE(valueAt(2, dimension::letOff), 26 * kTenth);
    }

    void anExportComesInByTheSameMenuAsOneStep() {
        m_dialogs->file = exported("From the shop", 10);
        m_dialogs->onRun = [&](QDialog& dialog) {
            auto* preview = qobject_cast<ExportIntakeDialog*>(&dialog);
            QVERIFY(preview);
            QCOMPARE(preview->incoming().size(), std::size_t{1});
            QVERIFY(preview->incoming().front().into.empty()); // the book has none of that name
            QCOMPARE(preview->summary(),
                     QStringLiteral("1 piano(s) to take, with 3 reading(s), as one step that can be "
                                    "undone."));
        };
        const std::string before = m_bench->record()->uuid;
        shortcut(QStringLiteral("Ctrl+I"))->trigger();
        QCOMPARE(m_bench->record()->piano.name, std::string("From the shop"));
        QCOMPARE(m_bench->pianos().size(), std::size_t{2});
        QCOMPARE(valueAt(2, dimension::keyDip), 10 * kNmPerMm);
        QCOMPARE(m_bench->record()->findings.size(), std::size_t{1});
        m_dialogs->onRun = [&](QDialog& dialog) {
            auto* preview = qobject_cast<ExportIntakeDialog*>(&dialog);
            QVERIFY(preview);
            QCOMPARE(preview->incoming().front().into, m_bench->record()->uuid);
        };
        shortcut(QStringLiteral("Ctrl+I"))->trigger(); // its own piano again: nothing new
        QCOMPARE(m_bench->pianos().size(), std::size_t{2});
        QVERIFY(m_bench->undo().has_value());
        QCOMPARE(m_bench->pianos().size(), std::size_t{1});
        QCOMPARE(m_bench->record()->uuid, before); // what was shown is gone: another is
        QVERIFY(m_bench->redo().has_value());
        QCOMPARE(m_bench->pianos().size(), std::size_t{2});
    }

    void anExportGoesIntoThePianoThatAPersonNames() {
        m_dialogs->file = exported("From the shop", 6); // a dip of 6 mm is doubtful
        m_dialogs->onRun = [&](QDialog& dialog) {
            auto* preview = qobject_cast<ExportIntakeDialog*>(&dialog);
            QVERIFY(preview);
            QVERIFY(preview->summary().contains(QStringLiteral("3 doubtful one(s) stay out.")));
            preview->put(0, m_bench->record()->uuid);
            preview->takeDoubtful(true);
            QCOMPARE(preview->incoming().front().into, m_bench->record()->uuid);
        };
        shortcut(QStringLiteral("Ctrl+I"))->trigger();
        QCOMPARE(m_bench->pianos().size(), std::size_t{1});
        QCOMPARE(m_bench->record()->piano.name, std::string("Test upright"));
        QCOMPARE(valueAt(3, dimension::keyDip), 6 * kNmPerMm);
        QVERIFY(m_bench->pass()->at({{3}, dimension::keyDip})->trials.front().taken);
    }

    void aFileThatIsNoExportIsSaidInThePreview() {
        QFile file(m_folder->filePath(QStringLiteral("odd.json")));
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write("{\"format\": \"cake\"}");
        file.close();
        m_dialogs->file = file.fileName();
        m_dialogs->onRun = [&](QDialog& dialog) {
            auto* preview = qobject_cast<ExportIntakeDialog*>(&dialog);
            QVERIFY(preview);
            QVERIFY(!preview->readable());
            QCOMPARE(preview->summary(),
                     QStringLiteral("odd.json, /format \"cake\": it is not known here. Nothing was taken."));
        };
        shortcut(QStringLiteral("Ctrl+I"))->trigger();
        QCOMPARE(m_bench->pianos().size(), std::size_t{1});
    }

    // --- Adjust

    void turnsReallyDoneAreTypedAsAFraction() {
        for (int n = 1; n <= 88; ++n)
            QVERIFY(m_bench->enter({{n}, dimension::letOff}, reading(n == 40 ? "6.0" : "2.9")).has_value());
        QVERIFY(m_window->showStation(QStringLiteral("adjust")));
        RowTable *order = nullptr, *lines = nullptr;
        for (RowTable* table : m_window->station()->findChildren<RowTable*>())
            (table->accessibleName() == QStringLiteral("Order of work") ? order : lines) = table;
        QVERIFY(order && lines);
        QVERIFY(choose(
            *order, [](const ListRow& row) { return row.cells.front().text == words::name(operation::letOffTurn); }));
        QVERIFY(!lines->rows().empty());
        m_dialogs->typed = QStringLiteral("0.5 in"); // a length is no turn
        QTest::keyClick(lines, Qt::Key_1);
        QVERIFY(m_bench->record()->done.empty());
        m_dialogs->typed = QStringLiteral("1/8");
        QTest::keyClick(lines, Qt::Key_1);
        QCOMPARE(m_bench->record()->done.size(), std::size_t{1});
        const Done& done = m_bench->record()->done.front();
        QCOMPARE(done.notes, std::vector<NoteNumber>{{40}});
        QVERIFY(done.amount.has_value());
        QVERIFY(std::abs(std::abs(*done.amount) - 0.125) < 1e-7);
    }

    // --- manners

    void theKeySheetIsComplete() {
        shortcut(QStringLiteral("F1"))->trigger();
        for (const QAction* action : m_window->actions())
            for (const QKeySequence& key : action->shortcuts())
                QVERIFY2(m_dialogs->said.contains(key.toString(QKeySequence::NativeText).toHtmlEscaped()),
                         qPrintable(key.toString()));
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

    void everyControlHasAName() {
        QStringList nameless;
        for (const char* id : {"piano", "survey", "measure", "review", "adjust", "passes"}) {
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
    /// A book's export, as the command line writes it.
    QString exported(const std::string& name, int reading) {
        Workbench other;
        if (!other.createBook(m_folder->filePath(QStringLiteral("other.hammerline")))) return {};
        auto piano = makePiano(ActionKind::upright);
        piano->name = name;
        if (!other.addPiano(*piano, "upright")) return {};
        for (int n = 1; n <= 3; ++n) {
            Reading dip;
            dip.typed = std::to_string(reading);
            dip.typedUnit = "mm";
            dip.count = reading * kNmPerMm;
            if (!other.enter({{n}, dimension::keyDip}, dip)) return {};
        }
        Finding finding;
        finding.note = NoteNumber{4};
        finding.part = "bridle-strap";
        finding.fault = "rotted";
        finding.state = FindingState::toDo;
        if (!other.addFindings(std::span(&finding, 1))) return {};
        QFile file(m_folder->filePath(QStringLiteral("other.json")));
        if (!file.open(QIODevice::WriteOnly)) return {};
        file.write(QByteArray::fromStdString(exportJson(*other.allRecords())));
        return file.fileName();
    }
    BenchEntry& entry() { return *m_window->benchEntry(); }
    void press(Qt::Key key, Qt::KeyboardModifiers modifiers = Qt::NoModifier) {
        QTest::keyClick(&entry().field(), key, modifiers);
    }
    void type(const QString& text) { QTest::keyClicks(&entry().field(), text); }
};

QTEST_MAIN(BenchTest)
#include "bench_test.moc"
