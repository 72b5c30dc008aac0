// What goes out of the window: every sheet by its name, to a printer or a PDF; readings, parts and everything to files.
#include "core/plan/plan_in_force.h"
#include "core/sheet/sheet.h"
#include "db/digest.h"
#include "db/document.h"
#include "ui/file_names.h"
#include "ui/main_window.h"
#include "ui/print/sheets.h"
#include "ui/stations/station_words.h"
#include "ui/widgets/dialogs.h"
#include "ui/words/keeping.h"
#include "ui/words/survey_names.h"
#include "ui/words/words.h"

#include <QAction>
#include <QDir>
#include <QFileInfo>
#include <QMenu>

namespace hammerline {

namespace {

struct SheetRow {
    SheetKind kind;
    const char* name;
};

constexpr std::array kSheetRows = {
    SheetRow{SheetKind::adjustment, QT_TRANSLATE_NOOP("hammerline::MainWindow", "Adjustment list")},
    SheetRow{SheetKind::largeAdjustment, QT_TRANSLATE_NOOP("hammerline::MainWindow", "Adjustment list, large print")},
    SheetRow{SheetKind::check, QT_TRANSLATE_NOOP("hammerline::MainWindow", "Check sheet")},
    SheetRow{SheetKind::action, QT_TRANSLATE_NOOP("hammerline::MainWindow", "Account of the dip")},
    SheetRow{SheetKind::work, QT_TRANSLATE_NOOP("hammerline::MainWindow", "The whole work")},
    SheetRow{SheetKind::survey, QT_TRANSLATE_NOOP("hammerline::MainWindow", "Survey")},
    SheetRow{SheetKind::parts, QT_TRANSLATE_NOOP("hammerline::MainWindow", "Parts to order")},
    SheetRow{SheetKind::labels, QT_TRANSLATE_NOOP("hammerline::MainWindow", "Marks and labels")},
    SheetRow{SheetKind::comparison, QT_TRANSLATE_NOOP("hammerline::MainWindow", "Comparison of two passes")},
    SheetRow{SheetKind::gauges, QT_TRANSLATE_NOOP("hammerline::MainWindow", "Gauges of paper")},
    SheetRow{SheetKind::estimate, QT_TRANSLATE_NOOP("hammerline::MainWindow", "Estimate")},
    SheetRow{SheetKind::card, QT_TRANSLATE_NOOP("hammerline::MainWindow", "Card for inside the piano")},
    SheetRow{SheetKind::record, QT_TRANSLATE_NOOP("hammerline::MainWindow", "Record for the owner")},
};

QString nameOf(const SheetRow& row) {
    return MainWindow::tr(row.name);
}

} // namespace

/// Why a sheet would be empty now; empty: it can be printed.
QString MainWindow::whyNotPrinted(SheetKind kind) const {
    const PianoRecord* record = m_bench.record();
    if (!record) return tr("no piano yet");
    const auto passes = record->passes.size();
    switch (kind) {
    case SheetKind::adjustment:
    case SheetKind::largeAdjustment:
    case SheetKind::check:
    case SheetKind::action:
        return passes == 0 ? tr("no readings yet") : QString();
    case SheetKind::comparison:
        return passes < 2 ? tr("needs two passes") : QString();
    case SheetKind::survey:
    case SheetKind::parts:
        return record->findings.empty() ? tr("nothing surveyed yet") : QString();
    case SheetKind::labels:
    case SheetKind::record:
    case SheetKind::gauges:
    case SheetKind::estimate:
    case SheetKind::card:
    case SheetKind::work:
        return {};
    }
    return {};
}

/// Filled when it opens: what can be printed changes with the piano and the pass.
void MainWindow::fillSheets(QMenu* menu, bool asPdf) {
    menu->clear();
    for (const SheetRow& row : kSheetRows) {
        const QString why = whyNotPrinted(row.kind);
        const QString text = asPdf ? nameOf(row) : tr("%1…").arg(nameOf(row));
        QAction* action = menu->addAction(why.isEmpty() ? text : tr("%1 (%2)").arg(nameOf(row), why), this,
                                          [this, kind = row.kind, asPdf] { printSheet(kind, asPdf); });
        action->setEnabled(why.isEmpty());
    }
}

/// The plan in force, as the Work station shows it, or as it would begin there.
Outcome<std::optional<Plan>> MainWindow::planFor(SheetKind kind) const {
    if (!printsPlan(kind)) return std::optional<Plan>();
    if (const Plan* plan = m_bench.plan()) return std::optional(*plan);
    auto plan = planInForce(*m_bench.record(), m_bench.sheet(), m_bench.passNumber(), std::nullopt);
    if (!plan) return tl::unexpected(plan.error());
    return std::optional(std::move(*plan));
}

void MainWindow::printSheet(SheetKind kind, bool asPdf) {
    if (!leaveStation() || !m_bench.record()) return;
    const auto plan = planFor(kind);
    if (!plan) return report(plan.error());
    const int pass = *plan ? (*plan)->pass : m_bench.passNumber();
    const Plan* shown = *plan ? &**plan : nullptr;
    if (!asPdf) {
        const QString refused = previewSheet(this, static_cast<int>(kind), *m_bench.record(), pass, shown);
        if (!refused.isEmpty()) say(refused);
        return;
    }
    const auto row = std::ranges::find(kSheetRows, kind, &SheetRow::kind);
    const QString suggested = fileNameOf({QString::fromStdString(m_bench.record()->piano.name), nameOf(*row),
                                          QDate::currentDate().toString(Qt::ISODate)},
                                         ".pdf");
    const QString file = withEnding(
        Dialogs::now().fileToSave(this, nameOf(*row), beside(suggested), tr("Paper as a file (*.pdf)")), ".pdf");
    if (file.isEmpty()) return;
    PaperOptions options;
    options.paper = usualPaper();
    const auto pages = printToPdf(kind, *m_bench.record(), pass, shown, options, file.toStdString());
    if (!pages) return report(pages.error());
    say(tr("Written: %1").arg(QDir::toNativeSeparators(file)));
}

/// A file beside the book: where a person looks for it first.
QString MainWindow::beside(const QString& name) const {
    return QFileInfo(m_bench.path()).dir().filePath(name);
}

void MainWindow::buildExportMenu(QMenu* book) {
    QMenu* menu = book->addMenu(tr("Export"));
    struct ExportRow {
        Export what;
        QString name;
    };
    const std::array<ExportRow, 3> rows{{{Export::readings, tr("Readings as a table (CSV)…")},
                                         {Export::parts, tr("Parts to order as a table (CSV)…")},
                                         {Export::everything, tr("All pianos of the book (JSON)…")}}};
    for (const ExportRow& row : rows)
        menu->addAction(row.name, this, [this, what = row.what] { exportFile(what); });
    connect(menu, &QMenu::aboutToShow, this, [this, menu] {
        for (QAction* each : menu->actions())
            each->setEnabled(m_bench.record());
    });
}

void MainWindow::exportFile(Export what) {
    if (!leaveStation() || !m_bench.record()) return;
    const PianoRecord& record = *m_bench.record();
    const QString piano = QString::fromStdString(record.piano.name);
    const QString date = QDate::currentDate().toString(Qt::ISODate);
    const bool all = what == Export::everything;
    const char* ending = all ? ".json" : ".csv";
    const QString name = all ? fileNameOf({QFileInfo(m_bench.path()).completeBaseName(), date}, ending)
                             : fileNameOf({piano, what == Export::parts ? tr("parts") : tr("readings"), date}, ending);
    const QString file =
        withEnding(Dialogs::now().fileToSave(this, tr("Export"), beside(name),
                                             all ? tr("Everything (*.json)") : tr("Tables of text (*.csv)")),
                   ending);
    if (file.isEmpty()) return;
    std::string bytes;
    bool sound = true;
    if (all) {
        const auto records = m_bench.allRecords();
        if (!records) return report(records.error());
        const auto verified = m_bench.verify({});
        if (!verified) return report(verified.error());
        sound = verified->sound;
        bytes = exportJson(*records, sound ? DigestText(digestText) : DigestText());
    } else {
        bytes = what == Export::parts ? words::partsTable(record) : exportCsv({record});
    }
    if (const auto written = writeDocument(file.toStdString(), bytes); !written) return report(written.error());
    const QString written = tr("Written: %1").arg(QDir::toNativeSeparators(file));
    say(sound ? written : written + QLatin1String(". ") + words::unprovenExportSentence());
}

} // namespace hammerline
