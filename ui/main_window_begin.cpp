// What begins something from the window: a piano, a pass, readings from a file.
#include "db/files.h"
#include "ui/main_window.h"
#include "ui/stations/bench_entry.h"
#include "ui/stations/export_intake.h"
#include "ui/stations/measure_intake.h"
#include "ui/stations/measure_station.h"
#include "ui/widgets/bench_dialogs.h"
#include "ui/widgets/dialogs.h"
#include "ui/widgets/long_work.h"
#include "ui/words/words.h"

#include <QFile>
#include <QFileInfo>

#include <cerrno>

namespace hammerline {

namespace {
constexpr qint64 kMostBytes = qint64{256} << 20; // a book of readings that is larger comes in by the command line
}

void MainWindow::newPiano() {
    if (!leaveStation()) return;
    if (!m_bench.hasBook()) newBook();
    if (!m_bench.hasBook()) return;
    NewPianoDialog form(this);
    if (!Dialogs::now().run(form)) return;
    const auto piano = form.piano();
    if (!piano) return report(piano.error());
    if (const auto added = m_bench.addPiano(*piano, form.specName()); !added) return report(added.error());
    refreshWords();
    if (station()) station()->arrive(); // the dialog gave the focus back to whatever had it before there was a piano
}

void MainWindow::newPass() {
    if (!leaveStation() || !m_bench.record()) return;
    NewPassDialog form(*m_bench.record(), this);
    if (!Dialogs::now().run(form)) return;
    const auto pass = form.pass();
    if (!pass) return report(pass.error());
    if (const auto added = m_bench.addPass(*pass); !added) return report(added.error());
    if (station()) station()->arrive();
}

void MainWindow::importFile(const QString& path) {
    if (!leaveStation() || !m_bench.hasBook()) return;
    const QString chosen = path.isEmpty()
                               ? Dialogs::now().fileToOpen(this, tr("Import readings"),
                                                           tr("Tables and exports (*.csv *.tsv *.txt *.json)"))
                               : path;
    if (chosen.isEmpty()) return;
    QFile file(chosen);
    if (!file.open(QIODevice::ReadOnly)) {
        const QFileInfo there(chosen);
        const int error = !there.exists() ? ENOENT : there.isDir() ? EISDIR : !there.isReadable() ? EACCES : EIO;
        return report(readingRefusal(chosen.toStdString(), error));
    }
    if (file.size() > kMostBytes) return report({RefusalCode::tooLarge, {}, chosen.toStdString(), "256 MB"});
    const QByteArray bytes = file.readAll();
    const QString name = QFileInfo(chosen).fileName();
    if (looksLikeJson({bytes.constData(), static_cast<std::size_t>(bytes.size())})) return importPianos(bytes, name);
    if (!m_bench.record()) return report({RefusalCode::noSuchPiano, {}, {}, {}});
    IntakeDialog preview(m_bench, bytes, name, this);
    if (!Dialogs::now().run(preview)) return;
    const Intake taken = preview.taken();
    if (taken.sound.empty() && taken.notFitted.empty()) return;
    LongWork work(this, tr("Storing %1").arg(name), static_cast<std::int64_t>(taken.sound.size()));
    const auto stored = m_bench.importAll(taken, name.toStdString(),
                                          [&](std::size_t done) { return work.at(static_cast<std::int64_t>(done)); });
    if (!stored) report(stored.error());
}

void MainWindow::importPianos(const QByteArray& bytes, const QString& name) {
    ExportIntakeDialog preview(m_bench, bytes, name, this);
    if (!Dialogs::now().run(preview)) return;
    LongWork work(this, tr("Storing %1").arg(name));
    const auto stored =
        m_bench.importRecords(preview.incoming(), name.toStdString(), [&](double done) { return work.share(done); });
    if (!stored) report(stored.error());
    refreshWords();
}

/// The Measure station speaks to the window about undo, its order of entry and the entry at the bench.
void MainWindow::wireMeasure(Station* station) {
    auto* measure = qobject_cast<MeasureStation*>(station);
    if (!measure) return;
    connect(measure, &MeasureStation::undoAsked, this, &MainWindow::undo);
    connect(measure, &MeasureStation::redoAsked, this, &MainWindow::redo);
    connect(measure, &MeasureStation::benchAsked, this, &MainWindow::showBenchEntry);
    connect(measure, &MeasureStation::howToAsked, this, &MainWindow::showHowTo);
    const auto follow = [this](const EntryOrder& chosen) {
        m_acrossAction->setChecked(chosen.across);
        if (m_entry) m_entry->setOrder(chosen);
    };
    follow(measure->order());
    connect(measure, &MeasureStation::orderChosen, this, follow);
}

} // namespace hammerline
