// Entry as a person's hand meets it: keys go to whatever has the focus, the dialogs are the real ones, and what counts
// is what the book holds then.
#include "ui/stations/bench_entry.h"
#include "ui/stations/bench_field.h"
#include "ui/stations/measure_order.h"
#include "ui/stations/measure_references.h"
#include "ui/widgets/plate.h"

#include <QComboBox>
#include <QDialog>
#include <QLineEdit>
#include <QTimer>

#include "window_bench.h"

using namespace hammerline;

class EntryTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void init() {
        open();
        Dialogs::replace(nullptr); // the real ones
        QApplication::setActiveWindow(m_window.get());
        QVERIFY(QApplication::focusWidget());
    }
    void cleanup() { close(); }

    /// Two notes in the list and four readings: the last two are not for the second note.
    void anOrderThatEndsTakesNothingMore_data() {
        QTest::addColumn<bool>("bench");
        QTest::newRow("grid") << false;
        QTest::newRow("bench") << true;
    }
    void anOrderThatEndsTakesNothingMore() {
        QFETCH(const bool, bench);
        order(EntryOrder::Kind::ownList, {{3}, {5}});
        m_bench->setCell({{3}, lastColumn()});
        if (bench) QVERIFY(m_window->showBenchEntry());
        for (const Qt::Key word : {Qt::Key_T, Qt::Key_S, Qt::Key_X, Qt::Key_K}) // one key each: the strap
            key(word);
        QCOMPARE(m_bench->pass()->at({{3}, lastColumn()})->word(), std::optional(word::tight));
        QCOMPARE(m_bench->pass()->at({{5}, lastColumn()})->word(), std::optional(word::slack));
        QCOMPARE(m_bench->pass()->readingCount(), std::size_t{2});
        QVERIFY(said().contains(QStringLiteral("Nothing was entered")));
        key(Qt::Key_Up); // a cell is chosen: its reading is taken
        const int chosen = m_bench->note().value;
        key(Qt::Key_X);
        QCOMPARE(m_bench->pass()->at({{chosen}, lastColumn()})->word(), std::optional(word::torn));
    }

    /// The last row of the grid, left by the arrow that leads nowhere: the second number is not for the same cell.
    void theEdgeOfTheGridIsAnEnd() {
        m_bench->setCell({{88}, dimension::letOff});
        keys(QStringLiteral("2.1"));
        key(Qt::Key_Down);
        keys(QStringLiteral("2.2"));
        key(Qt::Key_Down);
        QCOMPARE(typedAt(88, dimension::letOff), std::string("2.1"));
        key(Qt::Key_F2); // corrected on purpose
        keys(QStringLiteral("2.2"));
        key(Qt::Key_Return);
        QCOMPARE(typedAt(88, dimension::letOff), std::string("2.2"));
    }

    void anOrderWithoutACellTakesNothingUntilOneIsChosen() {
        order(EntryOrder::Kind::onlyOut, {});
        keys(QStringLiteral("2.1"));
        key(Qt::Key_Return);
        QVERIFY(!m_bench->pass());
        key(Qt::Key_Down);
        keys(QStringLiteral("3.3")); // within: nothing is out yet
        key(Qt::Key_Return);
        QCOMPARE(typedAt(2, dimension::letOff), std::string("3.3"));
        keys(QStringLiteral("3.4"));
        key(Qt::Key_Return);
        QCOMPARE(m_bench->pass()->readingCount(), std::size_t{1});
    }

    void whatHasSettledIsAskedForAndNothingElse() {
        order(EntryOrder::Kind::settled, {});
        QCOMPARE(EntryWalk(*m_bench, entryOrderOf(m_bench->record()), m_bench->columns()).size(), std::size_t{0});
        Finding fresh;
        fresh.part = "front-felt";
        fresh.fault = "hard";
        fresh.remedy = "new-set";
        fresh.state = FindingState::mended;
        fresh.note = NoteNumber{40};
        QVERIFY(m_bench->addFindings(std::vector{fresh}).has_value());
        const EntryWalk walk(*m_bench, entryOrderOf(m_bench->record()), m_bench->columns());
        // by hand: a thinner felt under the front moves dip, aftertouch and checking of its own note
        const std::vector<Cell> wanted{
            {{40}, dimension::keyDip}, {{40}, dimension::aftertouch}, {{40}, dimension::checking}};
        QCOMPARE(walk.cells(), wanted);
    }

    /// Sample notes first, then, after work, what was worked on: the round of a technician, by Enter alone.
    void sampleNotesAndWhatWasAdjustedAreOrdersOfTheirOwn() {
        order(EntryOrder::Kind::samples, {});
        const EntryWalk samples(*m_bench, entryOrderOf(m_bench->record()), std::vector{dimension::letOff});
        QCOMPARE(samples.size(), sampleNotes(*m_bench->piano()).size());
        m_bench->setCell(*samples.first());
        for (const char* typed : {"4.5", "4.6"}) {
            keys(QLatin1String(typed));
            key(Qt::Key_Return);
        }
        const auto& cells = samples.cells();
        QCOMPARE(typedAt(cells[1].note.value, dimension::letOff), std::string("4.6"));
        order(EntryOrder::Kind::adjusted, {});
        QCOMPARE(EntryWalk(*m_bench, entryOrderOf(m_bench->record()), m_bench->columns()).size(), std::size_t{0});
        Done done;
        done.operation = operation::letOffTurn;
        done.notes = {cells[1].note};
        done.amount = -0.125;
        done.pass = m_bench->passNumber();
        QVERIFY(m_bench->tick(std::vector{done}).has_value());
        const EntryWalk walk(*m_bench, entryOrderOf(m_bench->record()), m_bench->columns());
        QCOMPARE(walk.cells(), std::vector<Cell>{cells[1]});
    }

    /// A repeat that can hardly be the same distance, or stands in another unit, is asked about in the field itself.
    void aRepeatThatIsFarOffOrInAnotherUnitIsAskedAbout() {
        const Cell cell{{40}, dimension::letOff};
        const auto trials = [&] { return m_bench->pass()->at(cell)->trials.size(); };
        const auto again = [&](const char* typed) {
            m_bench->setCell(cell);
            key(Qt::Key_R);
            keys(QLatin1String(typed));
            key(Qt::Key_Return);
        };
        m_bench->setCell(cell);
        keys(QStringLiteral("3.0"));
        key(Qt::Key_Return);
        again("3.1"); // as two readings of one thing are
        QCOMPARE(trials(), std::size_t{2});
        again("6.5");
        QCOMPARE(trials(), std::size_t{2}); // asked first
        key(Qt::Key_Escape);
        QCOMPARE(trials(), std::size_t{2});
        again("6.5");
        key(Qt::Key_F9); // as typed
        QCOMPARE(trials(), std::size_t{3});
        again("1/8\"");
        QCOMPARE(trials(), std::size_t{3});
        key(Qt::Key_F9);
        QCOMPARE(trials(), std::size_t{4});
    }

    /// From what heights count is asked over the grid before the first one; what is typed meanwhile is a reading.
    void fromWhatHeightsCountIsAskedBeforeTheFirst() {
        auto* band = m_window->findChild<ReferenceBand*>();
        QVERIFY(band);
        m_bench->setCell({{1}, dimension::letOff});
        QVERIFY(band->isHidden()); // from the string, always
        m_bench->setCell({{1}, dimension::keyHeight});
        QVERIFY(!band->isHidden());
        band->choose(2);
        QCOMPARE(std::string(m_bench->pass()->referenceOf(dimension::keyHeight)), std::string("bed"));
        QVERIFY(band->isHidden());
        keys(QStringLiteral("65"));
        key(Qt::Key_Return);
        QCOMPARE(typedAt(1, dimension::keyHeight), std::string("65"));
        m_bench->setCell({{1}, dimension::keyDip}); // a reading without an answer takes what is marked
        QVERIFY(!band->isHidden());
        keys(QStringLiteral("10"));
        key(Qt::Key_Return);
        QVERIFY(band->isHidden());
        QCOMPARE(std::string(m_bench->pass()->referenceOf(dimension::keyDip)), std::string("finger"));
    }

    void eachPianoHasItsOwnOrder() {
        EntryOrder mine;
        mine.kind = EntryOrder::Kind::ownList;
        mine.listed = {{7}, {9}};
        mine.across = true;
        QVERIFY(keepEntryOrder(*m_bench, mine).has_value());
        QCOMPARE(grid().order(), mine);
        const std::string first = m_bench->record()->uuid;
        addPiano(ActionKind::grand, 88, "Second");
        QCOMPARE(grid().order(), EntryOrder{});
        QVERIFY(!shortcut(QStringLiteral("F4"))->isChecked());
        QVERIFY(m_bench->choosePiano(first).has_value());
        QCOMPARE(grid().order(), mine);
        QVERIFY(shortcut(QStringLiteral("F4"))->isChecked());
        // and the book keeps it
        Workbench other;
        QVERIFY(other.openBook(path(), first).has_value());
        QCOMPARE(entryOrderOf(other.record()), mine);
    }

    void typingAfterAQuestionTakesItsPlace_data() { anOrderThatEndsTakesNothingMore_data(); }
    void typingAfterAQuestionTakesItsPlace() {
        QFETCH(const bool, bench);
        if (bench) QVERIFY(m_window->showBenchEntry());
        keys(QStringLiteral("27")); // 2.7 without its decimal mark: asked
        key(Qt::Key_Return);
        QVERIFY(!m_bench->pass());
        keys(QStringLiteral("2.8"));
        key(Qt::Key_Return);
        QCOMPARE(typedAt(1, dimension::letOff), std::string("2.8"));
        keys(QStringLiteral("445")); // refused
        key(Qt::Key_Return);
        keys(QStringLiteral("2.9"));
        key(Qt::Key_Return);
        QCOMPARE(typedAt(2, dimension::letOff), std::string("2.9"));
    }

    /// Note 5 is a sharp: what is typed where its key height would be is its sharp height.
    void aSharpInTheColumnOfNaturalsGoesToItsOwn_data() { anOrderThatEndsTakesNothingMore_data(); }
    void aSharpInTheColumnOfNaturalsGoesToItsOwn() {
        QFETCH(const bool, bench);
        m_bench->setCell({{4}, dimension::keyHeight});
        if (bench) QVERIFY(m_window->showBenchEntry());
        m_bench->setNote({5}); // Ctrl+G, or a click on the strip
        QCOMPARE(m_bench->cell(), (Cell{{5}, dimension::sharpHeight}));
        keys(QStringLiteral("12"));
        key(Qt::Key_Return);
        QCOMPARE(typedAt(5, dimension::sharpHeight), std::string("12"));
    }

    void whatIsNotFittedSaysSo() {
        QVERIFY(m_bench->markNotFitted({{6}, dimension::letOff}).has_value());
        m_bench->setCell({{6}, dimension::letOff});
        keys(QStringLiteral("2.4"));
        key(Qt::Key_Return);
        QVERIFY(m_bench->pass()->at({{6}, dimension::letOff})->notFitted);
        m_bench->setCell({{6}, dimension::letOff});
        keys(QStringLiteral("2"));
        QVERIFY(said().contains(QStringLiteral("nothing was entered")));
    }

    /// Heights over the bed: what was typed is read in its cell, its place over the line of the keys beside it.
    void aHeightFromTheBedIsReadAsItWasTyped() {
        m_bench->setCell({{1}, dimension::keyHeight});
        for (const char* typed : {"65", "64.5", "65.2"}) {
            keys(QString::fromLatin1(typed));
            key(Qt::Key_Return);
        }
        const MeasureModel& model = grid().readings();
        const auto shown = [&](int note) { return model.lookAt(model.indexOf({{note}, dimension::keyHeight})); };
        QCOMPARE(shown(1).text, QStringLiteral("65.0"));
        QCOMPARE(shown(3).text, QStringLiteral("64.5"));
        QVERIFY(!shown(3).aside.isEmpty());
        QCOMPARE(typedAt(1, dimension::keyHeight), std::string("65"));
    }

    /// A letter enters a word of the dimension shown, never one of another.
    void aLetterNeverEntersAWordOfAnotherDimension_data() { anOrderThatEndsTakesNothingMore_data(); }
    void aLetterNeverEntersAWordOfAnotherDimension() {
        QFETCH(const bool, bench);
        QVERIFY(m_bench->enter({{1}, dimension::letOff}, reading("3.3")).has_value());
        m_bench->setCell({{1}, dimension::keyHeight});
        if (bench) QVERIFY(m_window->showBenchEntry());
        for (const Qt::Key letter : {Qt::Key_B, Qt::Key_L, Qt::Key_C, Qt::Key_O}) {
            key(letter);
            QVERIFY(said().contains(QStringLiteral("nothing was entered")));
        }
        key(Qt::Key_B);
        QVERIFY(said().contains(QStringLiteral("let-off")));
        QCOMPARE(m_bench->pass()->readingCount(), std::size_t{1});
        QCOMPARE(typedAt(1, dimension::letOff), std::string("3.3"));
        QCOMPARE(m_bench->cell(), (Cell{{1}, dimension::keyHeight}));
    }

    /// From an empty start: after the piano is named its first reading is typed, with no click between.
    void afterNewPianoTypingGoesToTheGrid() {
        m_window.reset();
        m_bench = std::make_unique<Workbench>();
        QVERIFY(m_bench->createBook(m_folder->filePath(QStringLiteral("empty.hammerline"))).has_value());
        openWindow();
        QApplication::setActiveWindow(m_window.get());
        m_window->newPiano();
        // kind, keys, player, spec sheet: Enter takes what stands there; the name is typed over the one put there
        for (int i = 0; i < 4; ++i)
            QTest::keyClick(m_window->focusWidget(), Qt::Key_Return);
        QTest::keyClicks(m_window->focusWidget(), QStringLiteral("Mine"));
        QTest::keyClick(m_window->focusWidget(), Qt::Key_Return);
        QVERIFY(m_bench->piano());
        QCOMPARE(m_bench->piano()->name, std::string("Mine"));
        QCOMPARE(m_window->station()->objectName(), QStringLiteral("survey"));
        QVERIFY(m_window->showStation(QStringLiteral("measure")));
        m_bench->setCell({{1}, dimension::blow});
        keys(QStringLiteral("46"));
        key(Qt::Key_Return);
        QCOMPARE(typedAt(1, dimension::blow), std::string("46"));
    }

    void afterAQuestionLeftAloneTypingGoesToTheGrid() {
        typeIntoDialog([this] { key(Qt::Key_Escape); });
        auto* choice = m_window->findChild<QComboBox*>(QStringLiteral("entryOrder"));
        QVERIFY(choice);
        choice->setFocus();
        Q_EMIT choice->activated(static_cast<int>(EntryOrder::Kind::everyNth)); // asks how many; Esc
        QApplication::setActiveWindow(m_window.get());
        keys(QStringLiteral("2.7"));
        key(Qt::Key_Return);
        QCOMPARE(typedAt(1, dimension::letOff), std::string("2.7"));
        choice->setFocus(); // and digits at a closed choice are a reading
        keys(QStringLiteral("2.8"));
        key(Qt::Key_Return);
        QCOMPARE(typedAt(2, dimension::letOff), std::string("2.8"));
        QCOMPARE(grid().order(), EntryOrder{});
    }

private:
    static void key(Qt::Key code) { QTest::keyClick(QApplication::focusWidget(), code); }
    static void keys(const QString& text) {
        for (const QChar each : text)
            QTest::keyClick(QApplication::focusWidget(), each.toLatin1());
    }
    /// What was typed into the cell and holds now.
    std::string typedAt(int note, DimensionId id) {
        const Measured* measured = m_bench->pass() ? m_bench->pass()->at({{note}, id}) : nullptr;
        return measured && measured->latest() ? measured->latest()->typed : std::string();
    }
    DimensionId lastColumn() { return m_bench->columns().back(); }
    void order(EntryOrder::Kind kind, std::vector<NoteNumber> listed) {
        EntryOrder chosen;
        chosen.kind = kind;
        chosen.listed = std::move(listed);
        QVERIFY(keepEntryOrder(*m_bench, chosen).has_value());
    }
    /// What stands beside the hand.
    QString said() {
        if (m_window->atBench()) return m_window->benchEntry()->field().accessibleDescription();
        return grid().word() ? grid().word()->headline() : QString();
    }
    /// Runs as soon as a dialog is up.
    static void typeIntoDialog(const std::function<void()>& then) {
        QTimer::singleShot(0, [then] {
            QWidget* dialog = QApplication::activeModalWidget();
            if (dialog && !dialog->isActiveWindow()) QApplication::setActiveWindow(dialog);
            if (dialog && dialog->isAncestorOf(QApplication::focusWidget())) return then();
            typeIntoDialog(then);
        });
    }
};

QTEST_MAIN(EntryTest)
#include "entry_test.moc"
