// Files by the menu: tables with their preview, and the export of a book.
#include "core/sheet/sheet.h"
#include "ui/stations/export_intake.h"
#include "ui/stations/measure_intake.h"
#include "ui/words/words.h"

#include <QAbstractItemModelTester>
#include <QComboBox>
#include <QLabel>
#include <QProgressDialog>
#include <QTest>
#include <QTimer>

#include "window_bench.h"

using namespace hammerline;

class ImportTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void init() { open(); }
    void cleanup() { close(); }

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

    void readingALongExportCanBeStopped() {
        const QString file = exported("From the shop", 10);
        {
            QFile longer(file);
            QVERIFY(longer.open(QIODevice::Append));
            longer.write(QByteArray(1 << 20, ' '));
        }
        m_dialogs->file = file;
        m_dialogs->waits = 0;
        QTimer stopper;
        QObject::connect(&stopper, &QTimer::timeout, [&] {
            for (QWidget* top : QApplication::topLevelWidgets())
                if (auto* bar = qobject_cast<QProgressDialog*>(top); bar && bar->isVisible()) bar->cancel();
        });
        stopper.start(0);
        m_dialogs->onRun = [&](QDialog& dialog) {
            auto* preview = qobject_cast<ExportIntakeDialog*>(&dialog);
            QVERIFY(preview);
            QVERIFY(!preview->readable());
            QCOMPARE(preview->summary(), QStringLiteral("Stopped. Nothing was changed."));
            QVERIFY(preview->incoming().empty());
        };
        shortcut(QStringLiteral("Ctrl+I"))->trigger();
        QCOMPARE(m_bench->pianos().size(), std::size_t{1});
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

    /// A file may hold markup in place of a name: it is shown as it stands, for Qt would open the
    /// picture that it names.
    void noMarkupOfAFileIsFollowed() {
        const QString markup = QStringLiteral("<img src=\"/secret.png\">");
        Piano named = *m_bench->piano();
        named.name = markup.toStdString();
        QVERIFY(m_bench->changePiano(named, "upright").has_value());
        int told = 0;
        for (QLabel* label : m_window->findChildren<QLabel*>()) {
            if (!label->toolTip().contains(QStringLiteral("secret.png"))) continue;
            ++told;
            QVERIFY(label->toolTip().contains(QStringLiteral("&lt;img")));
        }
        QCOMPARE(told, 1);

        QFile file(m_folder->filePath(QStringLiteral("odd.json")));
        QVERIFY(file.open(QIODevice::WriteOnly));
        file.write("{\"format\": \"" + QString(markup).replace(u'"', u'\'').toUtf8() + "\"}");
        file.close();
        m_dialogs->file = file.fileName();
        m_dialogs->onRun = [&](QDialog& dialog) {
            told = 0;
            for (QLabel* label : dialog.findChildren<QLabel*>()) {
                if (!label->text().contains(QStringLiteral("<img"))) continue;
                ++told;
                QCOMPARE(label->textFormat(), Qt::PlainText);
            }
            QCOMPARE(told, 1);
        };
        shortcut(QStringLiteral("Ctrl+I"))->trigger();
        m_dialogs->file = m_folder->filePath(QStringLiteral("no such <img>.csv"));
        shortcut(QStringLiteral("Ctrl+I"))->trigger();
        const auto* notice = m_window->findChild<QLabel*>(QStringLiteral("notice"));
        QVERIFY(notice->text().contains(QStringLiteral("no such <img>.csv cannot be read: there is no such file")));
        QCOMPARE(notice->textFormat(), Qt::PlainText);
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
};

QTEST_MAIN(ImportTest)
#include "import_test.moc"
