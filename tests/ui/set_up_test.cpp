// The Piano station under a person's hands: fields, minutes and turns of the work, breaks on the strip, zones with
// their reason. What is said there stands in the book.
#include "core/operation/operation.h"
#include "ui/piano/fact_row.h"
#include "ui/piano/key_drawing.h"
#include "ui/piano/spec_panel.h"
#include "ui/widgets/keyboard_strip.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QAbstractItemModelTester>
#include <QLabel>
#include <QLineEdit>

#include "window_bench.h"

using namespace hammerline;

class SetUpTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void init() { open(); }
    void cleanup() { close(); }

    void aFieldOfTheSetUpIsKeptAndARefusedOneSaysWhy() {
        QVERIFY(m_window->showStation(QStringLiteral("piano")));
        QLineEdit* last = field(words::attributeName("last-damper"));
        QVERIFY(last);
        last->selectAll();
        QTest::keyClicks(last, QStringLiteral("60"));
        QTest::keyClick(last, Qt::Key_Return);
        QCOMPARE(m_bench->piano()->lastDamper, std::optional(60));
        last->selectAll();
        QTest::keyClicks(last, QStringLiteral("200"));
        QTest::keyClick(last, Qt::Key_Return);
        QCOMPARE(m_bench->piano()->lastDamper, std::optional(60));
        // What was typed stays in its field, and below it stands why: in words, with this piano's own range.
        QCOMPARE(last->text(), QStringLiteral("200"));
        QVERIFY(below(last).contains(QStringLiteral("0–88")) && below(last).contains(QStringLiteral("no note")));
        QVERIFY(!m_window->showStation(QStringLiteral("measure"))); // nothing typed is lost behind another station
        QTest::keyClick(last, Qt::Key_Escape);
        QCOMPARE(last->text(), QStringLiteral("60"));
        QVERIFY(m_window->showStation(QStringLiteral("measure")));
        QVERIFY(m_bench->undo().has_value());
        QVERIFY(m_bench->piano()->lastDamper != std::optional(60));
    }

    /// Where nothing was said, what is in force stands in the field for this very piano, in italics.
    void anEmptyFieldShowsWhatHoldsWithoutIt() {
        QVERIFY(m_window->showStation(QStringLiteral("piano")));
        QLineEdit* sections = field(words::attributeName("sections"));
        QVERIFY(sections && sections->text().isEmpty() && sections->font().italic());
        QCOMPARE(sections->placeholderText(), QStringLiteral("1–26, 27–52, 53–70, 71–88"));
        QTest::keyClicks(sections, QStringLiteral("28, 58"));
        QTest::keyClick(sections, Qt::Key_Return);
        QCOMPARE(sections->text(), QStringLiteral("1–28, 29–58, 59–88"));
        QVERIFY(!sections->font().italic());
        QCOMPARE(sectionsOf(*m_bench->piano()).size(), std::size_t{3});
    }

    void onlyWhatThisKindHasIsAsked() {
        QVERIFY(m_window->showStation(QStringLiteral("piano")));
        const auto asked = [this](const char* attribute) {
            const QWidget* row = nullptr;
            for (const QWidget* each : m_window->station()->findChildren<QWidget*>())
                if (each->accessibleName() == words::attributeName(attribute) && each->parentWidget())
                    row = each->parentWidget();
            return row && !row->isHidden();
        };
        for (const char* name : {"butt", "rest-rail", "brackets", "player", "keys"})
            QVERIFY2(asked(name), name);
        QVERIFY(!asked("player-works"));
        const auto grand = makePiano(ActionKind::grand);
        QVERIFY(grand);
        Piano piano = *grand;
        piano.name = "A grand";
        QVERIFY(m_bench->addPiano(piano, "grand").has_value());
        for (const char* name : {"butt", "rest-rail", "brackets", "player", "player-works", "keys", "damping"})
            QVERIFY2(!asked(name), name);
        QVERIFY(asked("capstan") && asked("last-damper") && asked("sections"));
    }

    /// Whatever the catalogue asks of a piano has its field here, with what it decides below it.
    void everyAttributeHasItsPlace() {
        QVERIFY(m_window->showStation(QStringLiteral("piano")));
        for (const AttributeRow& attribute : attributes()) {
            const QString name = words::utf8(attribute.name);
            const bool inDrawing = name.startsWith(QStringLiteral("arms-"));
            const bool inWork = name == QStringLiteral("minutes-OPERATION") || name == QStringLiteral("capstan-up") ||
                                name == QStringLiteral("let-off-in") || name == QStringLiteral("drop-in");
            const bool whereRead = name == QStringLiteral("gauge-DIMENSION");
            if (inDrawing || inWork || whereRead) continue;
            const FactRow* row = nullptr;
            for (const FactRow* each : m_window->station()->findChildren<FactRow*>())
                if (each->editor()->accessibleName() == words::attributeName(attribute.name)) row = each;
            QVERIFY2(row, qPrintable(name));
            QVERIFY2(!row->editor()->accessibleDescription().isEmpty(), qPrintable(name));
        }
    }

    void kindAndKeysChangeWhileNothingIsRead() {
        QVERIFY(m_window->showStation(QStringLiteral("piano")));
        QLineEdit* keys = field(QStringLiteral("Keys"));
        QVERIFY(keys && keys->isEnabled());
        QCOMPARE(keys->text(), QStringLiteral("88 from A0"));
        keys->selectAll();
        QTest::keyClicks(keys, QStringLiteral("85"));
        QTest::keyClick(keys, Qt::Key_Return);
        QCOMPARE(m_bench->piano()->notes, 85);
        keys->selectAll();
        QTest::keyClicks(keys, QStringLiteral("500 from A0"));
        QTest::keyClick(keys, Qt::Key_Return);
        QCOMPARE(m_bench->piano()->notes, 85);
        QCOMPARE(keys->text(), QStringLiteral("500 from A0"));
        QTest::keyClick(keys, Qt::Key_Escape);
        const Cell cell{{40}, dimension::letOff};
        QVERIFY(m_bench->enter(cell, *m_bench->understand("3", cell)->sound).has_value());
        QVERIFY(!keys->isEnabled());
        QVERIFY(below(keys).contains(QStringLiteral("readings were taken")));
    }

    void minutesAndTurnsOfTheWorkAreThisPianos() {
        QVERIFY(m_window->showStation(QStringLiteral("piano")));
        RowTable* work = table(QStringLiteral("Work"));
        QVERIFY(work);
        const QAbstractItemModelTester tester(work->model(), QAbstractItemModelTester::FailureReportingMode::Fatal);
        const auto letOff = [](const ListRow& row) {
            return row.cells.front().text == words::partName(operation::letOffTurn);
        };
        QVERIFY(choose(*work, letOff));
        QCOMPARE(minutesFor(operation::letOffTurn, *m_bench->piano()), 0.5); // bench-practice 2.7
        m_dialogs->typed = QStringLiteral("0,8");
        QTest::keyClick(work, Qt::Key_Return);
        QCOMPARE(minutesFor(operation::letOffTurn, *m_bench->piano()), 0.8);
        m_dialogs->typed = QStringLiteral("soon"); // refused, and nothing changes
        QTest::keyClick(work, Qt::Key_Return);
        QCOMPARE(minutesFor(operation::letOffTurn, *m_bench->piano()), 0.8);

        QTest::keyClick(work, Qt::Key_T);
        QCOMPARE(turnOf(operation::letOffTurn, *m_bench->piano()), std::optional(Turn::anticlockwise));
        Workbench other; // it stands in the book
        QVERIFY(other.openBook(path()).has_value());
        QCOMPARE(other.piano()->letOffIn, std::optional(Turn::anticlockwise));
        QTest::keyClick(work, Qt::Key_T); // the usual way is nothing said
        QVERIFY(!m_bench->piano()->letOffIn);
        QTest::keyClick(work, Qt::Key_T);
        QTest::keyClick(work, Qt::Key_Delete);
        QVERIFY(!m_bench->piano()->letOffIn);
        QVERIFY(m_bench->piano()->minutes.empty());

        QVERIFY(choose(
            *work, [](const ListRow& row) { return row.cells.front().text == words::accessName(Access::keysOff); }));
        m_dialogs->typed = QStringLiteral("25");
        QTest::keyClick(work, Qt::Key_Return);
        QCOMPARE(minutesToReach(Access::keysOff, *m_bench->piano())[0], 25.0);
    }

    void anEmptiedFieldIsAsIsCustomaryAgain() {
        QVERIFY(m_window->showStation(QStringLiteral("piano")));
        const auto arm = [this](const char* part) {
            return field(QStringLiteral("Natural, balance pin to %1, mm").arg(QLatin1String(part)));
        };
        QLineEdit *front = arm("front edge (F)"), *pin = arm("front pin (P)");
        QVERIFY(front && pin);
        const auto type = [](QLineEdit* at, const QString& text) {
            at->setFocus();
            at->selectAll();
            QTest::keyClick(at, Qt::Key_Delete);
            QTest::keyClicks(at, text);
        };
        const auto* drawing = m_window->station()->findChild<KeyDrawing*>();
        type(front, QStringLiteral("240"));
        QVERIFY(drawing && drawing->accessibleDescription().contains(QStringLiteral("240"))); // drawn as it is typed
        QVERIFY(!m_bench->piano()->armsOf(KeyColour::natural).anyMeasured());                 // and kept by Enter
        QTest::keyClick(front, Qt::Key_Return);
        const KeyArms& arms = m_bench->piano()->armsOf(KeyColour::natural);
        QCOMPARE(arms.front, fromMm(240));
        QVERIFY(arms.measured == (std::array{true, false, false, false})); // the others are still customary
        QVERIFY(pin->text().isEmpty() && pin->font().italic());
        type(pin, QStringLiteral("250")); // before the front edge: told, kept in its field
        QTest::keyClick(pin, Qt::Key_Return);
        QCOMPARE(pin->text(), QStringLiteral("250"));
        QVERIFY(!m_bench->piano()->armsOf(KeyColour::natural).measured[1]);
        QTest::keyClick(pin, Qt::Key_Escape);
        QVERIFY(pin->text().isEmpty());
        type(front, {});
        QTest::keyClick(front, Qt::Key_Return);
        QVERIFY(!m_bench->piano()->armsOf(KeyColour::natural).anyMeasured());
        QVERIFY(!drawing->accessibleDescription().contains(QStringLiteral("240")));
    }

    void breaksAndTheLastDamperAreMovedOnTheStrip() {
        QVERIFY(m_window->showStation(QStringLiteral("piano")));
        auto* strip = m_window->findChild<KeyboardStrip*>();
        strip->setFocus();
        const auto ends = [this] {
            std::vector<int> last;
            for (const Section& section : sectionsOf(*m_bench->piano()))
                last.push_back(section.range.last);
            return last;
        };
        QCOMPARE(ends(), (std::vector{26, 52, 70, 88}));
        QTest::keyClick(strip, Qt::Key_Right, Qt::ShiftModifier);
        QCOMPARE(ends(), (std::vector{27, 52, 70, 88}));
        QTest::keyClick(strip, Qt::Key_B);
        QTest::keyClick(strip, Qt::Key_Left, Qt::ShiftModifier);
        QCOMPARE(ends(), (std::vector{27, 51, 70, 88}));
        // by the mouse: the first break from behind note 27 to behind note 30
        const auto behind = [strip](int note) {
            return QPoint((strip->axis().right({note}) + strip->axis().left({note + 1})) / 2,
                          strip->keysRect().center().y());
        };
        QTest::mousePress(strip, Qt::LeftButton, {}, behind(27));
        QTest::mouseMove(strip, behind(30));
        QTest::mouseRelease(strip, Qt::LeftButton, {}, behind(30));
        QCOMPARE(ends(), (std::vector{30, 51, 70, 88}));
        for (int i = 0; i < 3; ++i)
            QTest::keyClick(strip, Qt::Key_B); // past the other two to the last damper
        QTest::keyClick(strip, Qt::Key_Left, Qt::ShiftModifier);
        QCOMPARE(m_bench->piano()->lastDamper, std::optional(87));
        QVERIFY(m_bench->undo().has_value());
        QVERIFY(!m_bench->piano()->lastDamper);
    }

    void aZoneIsChangedWithItsReason() {
        QVERIFY(m_window->showStation(QStringLiteral("piano")));
        RowTable* zones = table(QStringLiteral("Zones"));
        QVERIFY(zones);
        const QAbstractItemModelTester tester(zones->model(), QAbstractItemModelTester::FailureReportingMode::Fatal);
        const auto blow = [](const ListRow& row) { return row.cells.front().text == words::name(dimension::blow); };
        QVERIFY(choose(*zones, blow));
        const Zone before = *m_bench->zones().at({{40}, dimension::blow});
        answerZone({QStringLiteral("43"), QStringLiteral("45"), QStringLiteral("47")}, {}, {});
        QTest::keyClick(zones, Qt::Key_Return); // without a reason nothing is kept
        QCOMPARE(*m_bench->zones().at({{40}, dimension::blow}), before);
        answerZone({QStringLiteral("47"), QStringLiteral("45"), QStringLiteral("43")}, {},
                   QStringLiteral("trial notes"));
        QTest::keyClick(zones, Qt::Key_Return); // not in order
        QCOMPARE(*m_bench->zones().at({{40}, dimension::blow}), before);
        answerZone({QStringLiteral("43"), QStringLiteral("45"), QStringLiteral("1 7/8 in")}, {},
                   QStringLiteral("trial notes"));
        QTest::keyClick(zones, Qt::Key_Return);
        // 1 7/8 in = 47.625 mm exactly (25.4 mm to the inch)
        QCOMPARE(*m_bench->zones().at({{40}, dimension::blow}),
                 (Zone{fromMm(43).nm, fromMm(45).nm, std::int64_t{47'625'000}}));
        QVERIFY(m_bench->record()->spec.has_value());
        Workbench other; // it stands in the book, with its reason
        QVERIFY(other.openBook(path()).has_value());
        bool found = false;
        for (const ZoneRow& row : other.sheet().zones)
            found = found || (row.dimension == dimension::blow && row.source == "trial notes");
        QVERIFY(found);
        QVERIFY(m_bench->undo().has_value());
        QCOMPARE(*m_bench->zones().at({{40}, dimension::blow}), before);
    }

    void aUnitIsChosenForEachDimension() {
        QVERIFY(m_window->showStation(QStringLiteral("piano")));
        RowTable* zones = table(QStringLiteral("Zones"));
        QVERIFY(
            choose(*zones, [](const ListRow& row) { return row.cells.front().text == words::name(dimension::blow); }));
        const Unit letOff = m_bench->unitOf(dimension::letOff);
        for (int i = 0; i < 4 && m_bench->unitOf(dimension::blow) != Unit::inch; ++i)
            QTest::keyClick(zones, Qt::Key_U);
        QCOMPARE(m_bench->unitOf(dimension::blow), Unit::inch);
        QCOMPARE(m_bench->unitOf(dimension::letOff), letOff);
        // a bare 1 13/16 is 46.0375 mm then (25.4 mm to the inch)
        const auto entry = m_bench->understand("1 13/16", {{10}, dimension::blow});
        QVERIFY(entry && entry->sound);
        QCOMPARE(entry->sound->count, std::int64_t{46'037'500});
        Workbench other; // it stands in the book
        QVERIFY(other.openBook(path()).has_value());
        QCOMPARE(other.unitOf(dimension::blow), Unit::inch);
        QTest::keyClick(zones, Qt::Key_U); // and goes round: every unit of a length, none of a weight
        QVERIFY(m_bench->unitOf(dimension::blow) != Unit::inch);
        QCOMPARE(kindOf(m_bench->unitOf(dimension::blow)), Kind::length);
    }

    void singleNotesGetAZoneOfTheirOwn() {
        QVERIFY(m_window->showStation(QStringLiteral("piano")));
        RowTable* zones = table(QStringLiteral("Zones"));
        QVERIFY(choose(
            *zones, [](const ListRow& row) { return row.cells.front().text == words::name(dimension::aftertouch); }));
        answerZone({QStringLiteral("0.2"), QStringLiteral("0.3"), QStringLiteral("0.8")}, QStringLiteral("31, 33"),
                   QStringLiteral("worn key, owner told"));
        QTest::keyClick(zones, Qt::Key_Return);
        QCOMPARE(m_bench->record()->overrides.size(), std::size_t{2});
        QVERIFY(m_bench->zones().overridden({{33}, dimension::aftertouch}));
        QVERIFY(!m_bench->zones().overridden({{32}, dimension::aftertouch}));
        QVERIFY(choose(*zones, [](const ListRow& row) { return row.cells.at(1).text.contains(QStringLiteral("33")); }));
        QTest::keyClick(zones, Qt::Key_Delete);
        QCOMPARE(m_bench->record()->overrides.size(), std::size_t{1});
        QVERIFY(!m_bench->zones().overridden({{33}, dimension::aftertouch}));
    }

private:
    QLineEdit* field(const QString& name) {
        for (QLineEdit* each : m_window->station()->findChildren<QLineEdit*>())
            if (each->accessibleName() == name) return each;
        return nullptr;
    }
    /// What stands below a field.
    static QString below(const QLineEdit* field) {
        QString text;
        for (const QLabel* each : field->parentWidget()->findChildren<QLabel*>())
            if (each->buddy() != field) text += each->text();
        return text;
    }
    void answerZone(const QStringList& limits, const QString& notes, const QString& reason) {
        m_dialogs->onRun = [=](QDialog& dialog) {
            auto* zone = qobject_cast<ZoneDialog*>(&dialog);
            QVERIFY(zone);
            zone->fill(limits, notes, reason);
        };
    }
};

QTEST_MAIN(SetUpTest)
#include "set_up_test.moc"
