// A file of several passes, and one that is long, taken in by the menu as a person does.
#include "ui/stations/measure_intake.h"

#include <QProgressDialog>
#include <QTimer>

#include "window_bench.h"

using namespace hammerline;

class IntakeTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void init() { open(); }
    void cleanup() { close(); }

    void everyPassOfAFileGoesIntoItsOwnAsOneStep() {
        m_dialogs->file = threePasses();
        m_dialogs->onRun = [](QDialog& dialog) {
            QCOMPARE(qobject_cast<IntakeDialog*>(&dialog)->takenCount(), std::size_t{6});
        };
        importNow();
        const auto& passes = m_bench->record()->passes;
        QCOMPARE(passes.size(), std::size_t{3});
        QCOMPARE(passes[0].value({{2}, dimension::letOff}), std::optional<std::int64_t>(52 * kTenth));
        QCOMPARE(passes[1].value({{2}, dimension::letOff}), std::optional<std::int64_t>(42 * kTenth));
        QVERIFY(passes[1].at({{88}, dimension::checking})->notFitted);
        QCOMPARE(passes[2].value({{2}, dimension::letOff}), std::optional<std::int64_t>(32 * kTenth));
        QCOMPARE(m_bench->pass()->number, 3); // what came last is shown
        QVERIFY(m_bench->undo().has_value());
        QVERIFY(m_bench->record()->passes.empty());
    }

    void onePassOfAFileGoesIntoThePassShown() {
        QVERIFY(m_bench->enter({{1}, dimension::blow}, reading("46")).has_value());
        m_dialogs->file = threePasses();
        m_dialogs->onRun = [](QDialog& dialog) {
            auto* preview = qobject_cast<IntakeDialog*>(&dialog);
            preview->choosePass(QStringLiteral("2"));
            QCOMPARE(preview->takenCount(), std::size_t{2});
        };
        importNow();
        QCOMPARE(m_bench->record()->passes.size(), std::size_t{1});
        QCOMPARE(valueAt(2, dimension::letOff), 42 * kTenth);
        QCOMPARE(valueAt(1, dimension::blow), 460 * kTenth);
    }

    void aPassThatFollowsIsReadTheSameWay() {
        NewPass first;
        first.label = "as found";
        first.references[dimension::keyDip] = "weight";
        first.references[dimension::keyHeight] = "bed";
        first.weightsOn = true;
        QVERIFY(m_bench->addPass(first).has_value());
        QVERIFY(m_bench->enter({{40}, dimension::letOff}, reading("5.0")).has_value());
        Done done;
        done.operation = operation::letOffTurn;
        done.notes = {{40}};
        done.amount = 0.25;
        done.pass = 1;
        QVERIFY(m_bench->tick(std::array{done}).has_value());
        QVERIFY(m_bench->enter({{40}, dimension::letOff}, reading("3.2")).has_value()); // opens the next pass
        QCOMPARE(m_bench->record()->passes.size(), std::size_t{2});
        first.references.erase(dimension::keyHeight); // the first height of the pass says which
        QCOMPARE(m_bench->pass()->references, first.references);
        QVERIFY(m_bench->pass()->weightsOn);
    }

    void readingALongFileCanBeStopped() {
        m_dialogs->file = longFile();
        m_dialogs->waits = 0;
        stopAt(QStringLiteral("Reading"));
        m_dialogs->onRun = [](QDialog& dialog) { QVERIFY(!qobject_cast<IntakeDialog*>(&dialog)->readable()); };
        importNow();
        QVERIFY(m_stopped);
        QVERIFY(m_bench->record()->passes.empty());
    }

    void storingALongFileCanBeStoppedAndKeepsNothing() {
        m_dialogs->file = longFile();
        m_dialogs->waits = 0;
        stopAt(QStringLiteral("Storing"));
        importNow();
        QVERIFY(m_stopped);
        QVERIFY(m_bench->record()->passes.empty());
        m_stopper.stop();
        importNow(); // and the same file comes in when it is left alone
        QCOMPARE(m_bench->record()->passes.size(), std::size_t{kLongPasses});
        QCOMPARE(m_bench->record()->passes.back().readingCount(), std::size_t{88});
    }

private:
    static constexpr int kLongPasses = 500;

    void importNow() { shortcut(QStringLiteral("Ctrl+I"))->trigger(); }

    QString fileOf(const QByteArray& text) {
        QFile file(m_folder->filePath(QStringLiteral("in.csv")));
        if (file.open(QIODevice::WriteOnly)) file.write(text);
        return file.fileName();
    }
    QString threePasses() {
        QByteArray text = "piano;pass;note;dimension;trial;text;unit;state;at\r\n";
        for (int pass = 1; pass <= 3; ++pass)
            for (int note = 1; note <= 2; ++note)
                text += ";" + QByteArray::number(pass) + ";" + QByteArray::number(note) + ";let-off;1;" +
                        QByteArray::number(6 - pass) + ".2;mm;;\r\n";
        text += ";2;88;checking;1;;;not-fitted;\r\n";
        return fileOf(text);
    }
    QString longFile() {
        QByteArray text = "piano;pass;note;dimension;trial;text;unit;state;at\r\n";
        for (int pass = 1; pass <= kLongPasses; ++pass)
            for (int note = 1; note <= 88; ++note)
                text += ";" + QByteArray::number(pass) + ";" + QByteArray::number(note) + ";let-off;1;3.0;mm;;\r\n";
        return fileOf(text);
    }
    /// Presses Stop in the bar that says so, as soon as it is there.
    void stopAt(const QString& word) {
        m_stopped = false;
        m_stopper.disconnect();
        QObject::connect(&m_stopper, &QTimer::timeout, &m_stopper, [this, word] {
            for (auto* bar : m_window->findChildren<QProgressDialog*>())
                if (bar->labelText().startsWith(word)) {
                    bar->cancel();
                    m_stopped = true;
                }
        });
        m_stopper.start(0);
    }

    QTimer m_stopper;
    bool m_stopped = false;
};

QTEST_MAIN(IntakeTest)
#include "intake_test.moc"
