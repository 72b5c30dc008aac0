// What goes out of the window: every sheet by its name, exports, copied blocks; and what Find finds.
#include "core/plan/plan.h"
#include "db/document.h"
#include "ui/find_dialog.h"
#include "ui/print/sheets.h"
#include "ui/widgets/copy_block.h"

#include <QClipboard>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QPrintPreviewDialog>
#include <QTest>

#include "window_bench.h"

using namespace hammerline;

class OutletsTest : public QObject, protected WindowBench {
    Q_OBJECT
private Q_SLOTS:
    void init() { open(); }
    void cleanup() { close(); }

    // --- print

    void aSheetThatWouldBeEmptyIsGreyAndSaysWhy() {
        QAction* list = sheet("Adjustment list");
        QVERIFY(list && !list->isEnabled());
        QVERIFY(list->text().contains(QStringLiteral("no readings yet")));
        QVERIFY(sheet("Parts to order")->text().contains(QStringLiteral("nothing surveyed yet")));
        QVERIFY(sheet("Comparison of two passes")->text().contains(QStringLiteral("needs two passes")));
        for (const char* always : {"Marks and labels", "Record for the owner"})
            QVERIFY2(sheet(always)->isEnabled(), always);
        readings();
        QVERIFY(sheet("Adjustment list")->isEnabled());
        QVERIFY(sheet("Check sheet")->isEnabled());
    }

    void everySheetIsPreviewedUnderItsName() {
        readings();
        QVERIFY(m_bench->addPass({}).has_value());
        QVERIFY(m_bench->enter({{1}, dimension::letOff}, reading("3.1")).has_value());
        finding();
        QStringList titles;
        m_dialogs->onRun = [&](QDialog& dialog) {
            if (qobject_cast<QPrintPreviewDialog*>(&dialog)) titles << dialog.windowTitle();
        };
        for (const char* name : kNames) {
            QAction* action = sheet(name);
            QVERIFY2(action && action->isEnabled(), name);
            action->trigger();
        }
        QCOMPARE(titles.size(), qsizetype(std::size(kNames)));
        QCOMPARE(QSet<QString>(titles.begin(), titles.end()).size(), titles.size());
    }

    void aPdfIsNamedByPianoSheetAndDay() {
        readings();
        m_dialogs->file = m_folder->filePath(QStringLiteral("list")); // the ending is added
        QAction* action = sheet("Check sheet", "Save as PDF");
        QVERIFY(action);
        action->trigger();
        QFile pdf(m_folder->filePath(QStringLiteral("list.pdf")));
        QVERIFY(pdf.open(QIODevice::ReadOnly));
        QCOMPARE(pdf.read(5), QByteArray("%PDF-"));
        QVERIFY(notice().contains(QStringLiteral("list.pdf")));
    }

    // --- export

    void readingsPartsAndEverythingGoToFiles() {
        readings();
        finding();
        const QString csv = exported("Readings as a table (CSV)…", "r.csv");
        QVERIFY(csv.contains(QStringLiteral("Test upright;1;1;let-off;1;6.0")));
        QVERIFY(exported("Parts to order as a table (CSV)…", "p.csv").contains(QLatin1Char(';')));
        const QString json = exported("All pianos of the book (JSON)…", "all.json");
        QVERIFY(json.contains(QStringLiteral("\"Test upright\"")));
    }

    void nothingIsExportedOverABenchBook() {
        readings();
        const QByteArray before = bytesOf(path());
        m_dialogs->file = path();
        m_window->exportFile(MainWindow::Export::everything); // the ending makes another file of it
        QCOMPARE(bytesOf(path()), before);
        const QString disguised = m_folder->filePath(QStringLiteral("book.csv"));
        QVERIFY(QFile::copy(path(), disguised));
        m_dialogs->file = disguised;
        m_window->exportFile(MainWindow::Export::readings);
        QVERIFY(isBook(disguised.toStdString()));
        QVERIFY(notice().contains(QStringLiteral("book.csv")));
    }

    // --- edit

    void aBlockOfTheGridIsCopiedAsTextAndAsATable() {
        readings();
        QVERIFY(m_bench->enter({{1}, dimension::blow}, reading("46")).has_value());
        const int letOff = column(dimension::letOff), blow = column(dimension::blow);
        auto* chosen = grid().selectionModel();
        const auto& model = *grid().model();
        chosen->select(QItemSelection(model.index(0, std::min(letOff, blow)), model.index(1, std::max(letOff, blow))),
                       QItemSelectionModel::ClearAndSelect);
        shortcut(QStringLiteral("Ctrl+C"))->trigger();
        const QMimeData* copied = QGuiApplication::clipboard()->mimeData();
        const QStringList lines = copied->text().split(u'\n');
        QCOMPARE(lines.size(), 2);
        QCOMPARE(lines[0].count(u'\t'), std::abs(letOff - blow));
        QVERIFY(lines[0].contains(QStringLiteral("6.0")) && lines[0].contains(QStringLiteral("46.0")));
        QVERIFY(copied->hasHtml());
        QVERIFY(copied->html().contains(QStringLiteral("<td>46.0</td>")));
        QVERIFY(copied->html().contains(QStringLiteral("<th>1 A0</th>")));
    }

    void aWholeListIsCopiedWithItsHeadings() {
        readings();
        QVERIFY(m_window->showStation(QStringLiteral("review")));
        RowTable* list = table(QStringLiteral("Readings, worst first"));
        QVERIFY(list);
        list->setFocus();
        shortcut(QStringLiteral("Ctrl+C"))->trigger(); // the key itself: real_window/copy_and_print.sh
        const QString text = QGuiApplication::clipboard()->text();
        const QStringList lines = text.split(u'\n');
        QVERIFY2(lines.first().contains(QStringLiteral("dimension")), qPrintable(text));
        QCOMPARE(static_cast<std::size_t>(lines.size()), list->rows().size() + 1);
    }

    void copyPasteAndSelectAllServeAFieldOfText() {
        typeInGrid(QStringLiteral("3.25"));
        QVERIFY(grid().editor());
        QTest::keyClick(focus(), Qt::Key_A, Qt::ControlModifier);
        QTest::keyClick(focus(), Qt::Key_C, Qt::ControlModifier);
        QCOMPARE(QGuiApplication::clipboard()->text(), QStringLiteral("3.25"));
        QTest::keyClick(focus(), Qt::Key_V, Qt::ControlModifier);
        QCOMPARE(grid().editor()->text(), QStringLiteral("3.25"));
    }

    // --- find

    void findKnowsPianosNotesAndFindings() {
        addPiano(ActionKind::grand, 88, "Town hall grand");
        QVERIFY(m_bench->choosePiano("Test upright").has_value());
        finding();
        QCOMPARE(findInBook(*m_bench, QStringLiteral("HALL")).size(), std::size_t{1});
        QVERIFY(findInBook(*m_bench, QStringLiteral("   ")).empty());
        QVERIFY(findInBook(*m_bench, QStringLiteral("no such words")).empty());
        const auto note = findInBook(*m_bench, QStringLiteral("C4"));
        QCOMPARE(note.size(), std::size_t{1});
        QCOMPARE(note[0].note->value, 40);
        const auto found = findInBook(*m_bench, QStringLiteral("hammer remark"));
        QCOMPARE(found.size(), std::size_t{1});
        QCOMPARE(found[0].note->value, 20);
    }

    void findGoesThere() {
        finding();
        m_dialogs->onRun = [](QDialog& dialog) {
            auto* find = qobject_cast<FindDialog*>(&dialog);
            QVERIFY(find);
            QTest::keyClicks(find->findChild<QLineEdit*>(), QStringLiteral("remark"));
        };
        shortcut(QStringLiteral("Ctrl+F"))->trigger();
        QCOMPARE(m_window->station()->objectName(), QStringLiteral("survey"));
        QCOMPARE(m_bench->note().value, 20);
    }

private:
    static constexpr const char* kNames[] = {"Adjustment list",     "Check sheet",      "Survey",
                                             "Parts to order",      "Marks and labels", "Comparison of two passes",
                                             "Record for the owner"};
    void readings() {
        QVERIFY(m_bench->enter({{1}, dimension::letOff}, reading("6.0")).has_value());
        QVERIFY(m_bench->enter({{2}, dimension::letOff}, reading("3.0")).has_value());
    }
    void finding() {
        Finding made;
        made.note = NoteNumber{20};

        for (const Part& part : parts())
            if (part.key.find("hammer") != std::string::npos && !part.faults.empty()) {
                made.part = part.key;
                made.fault = part.faults.front().key;
                break;
            }
        made.remark = "a remark of mine";
        QVERIFY(m_bench->addFindings({&made, 1}).has_value());
    }
    QMenu* menu(const char* title) const {
        for (QMenu* each : m_window->findChildren<QMenu*>())
            if (each->title() == QLatin1String(title)) return each;
        return nullptr;
    }
    QAction* sheet(const char* name, const char* title = "Sheet") const {
        QMenu* found = menu(title);
        if (!found) return nullptr;
        Q_EMIT found->aboutToShow();
        for (QAction* each : found->actions())
            if (each->text().startsWith(QLatin1String(name))) return each;
        return nullptr;
    }
    QString exported(const char* action, const char* name) {
        const QString file = m_folder->filePath(QLatin1String(name));
        m_dialogs->file = file;
        QMenu* found = menu("Export");
        Q_EMIT found->aboutToShow();
        for (QAction* each : found->actions())
            if (each->text() == QString::fromUtf8(action) && each->isEnabled()) each->trigger();
        return QString::fromUtf8(bytesOf(file));
    }
    static QByteArray bytesOf(const QString& file) {
        QFile opened(file);
        return opened.open(QIODevice::ReadOnly) ? opened.readAll() : QByteArray();
    }
    QString notice() const { return m_window->findChild<QLabel*>(QStringLiteral("notice"))->text(); }
    int column(DimensionId id) {
        const auto& columns = m_bench->columns();
        return static_cast<int>(std::ranges::find(columns, id) - columns.begin());
    }
};

QTEST_MAIN(OutletsTest)
#include "outlets_test.moc"
