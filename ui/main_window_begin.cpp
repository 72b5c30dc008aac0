// What begins something from the window: a piano, a pass, readings from a file.
#include "db/files.h"
#include "ui/first/first_page.h"
#include "ui/main_window.h"
#include "ui/stations/bench_entry.h"
#include "ui/stations/export_intake.h"
#include "ui/stations/measure_intake.h"
#include "ui/stations/measure_station.h"
#include "ui/widgets/bench_dialogs.h"
#include "ui/widgets/dialogs.h"
#include "ui/widgets/long_work.h"
#include "ui/words/words.h"

#include <QCoreApplication>
#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <QProcess>
#include <QStackedWidget>
#include <QTemporaryDir>

#include <cerrno>

namespace hammerline {

namespace {
constexpr qint64 kMostBytes = qint64{256} << 20; // a book of readings that is larger comes in by the command line
}

void MainWindow::newPiano() {
    if (!leaveStation()) return;
    if (atFirstPage()) return m_first->form().begin(); // its questions stand there already
    NewPianoDialog dialog(this);
    if (!Dialogs::now().run(dialog)) return;
    if (!addPiano(dialog.form())) return;
    refreshWords();
    if (station()) station()->arrive(); // the dialog gave the focus back to whatever had it before there was a piano
}

/// False: refused, and said.
bool MainWindow::addPiano(const NewPianoForm& form) {
    const auto piano = form.piano();
    const auto identity = form.identity();
    const auto refused = [this](const Refusal& refusal) {
        report(refusal);
        return false;
    };
    if (!piano) return refused(piano.error());
    if (!identity) return refused(identity.error());
    const auto added = m_bench.addPiano(*piano, form.specName(), {}, *identity);
    return added ? true : refused(added.error());
}

bool MainWindow::atFirstPage() const {
    return m_first && m_whole->currentWidget() == m_first;
}

/// Stands in the place of everything else as long as no piano is chosen.
void MainWindow::showFirstPage() {
    const bool wanted = !m_bench.record();
    if (!wanted && !atFirstPage()) return;
    if (!wanted) {
        m_whole->setCurrentWidget(m_house);
        if (station()) station()->arrive();
        return;
    }
    if (!m_first) {
        m_first = new FirstPage(m_whole);
        m_whole->addWidget(m_first);
        connect(m_first, &FirstPage::begun, this, &MainWindow::beginFirst);
        connect(m_first, &FirstPage::openAsked, this, [this] { openBook({}); });
        connect(m_first, &FirstPage::demoAsked, this, &MainWindow::openDemo);
    }
    m_first->setBook(m_bench.path());
    m_whole->setCurrentWidget(m_first);
}

/// The first piano: its book is made where none is open, and the survey comes first.
void MainWindow::beginFirst() {
    if (!m_bench.hasBook()) {
        const QString path = m_first->path();
        QDir().mkpath(QFileInfo(path).absolutePath());
        if (const auto made = m_bench.createBook(path); !made) return report(made.error());
        m_settings.rememberBook(path);
    }
    if (addPiano(m_first->form())) showStation(QStringLiteral("survey"));
}

/// A copy of the demo in the temporary folder: whatever is tried in it, nothing of the person's own is touched.
void MainWindow::openDemo() {
    QTemporaryDir folder(QDir::temp().filePath(QStringLiteral("hammerline-XXXXXX")));
    folder.setAutoRemove(false); // the book is worked in now
    const QString path = folder.filePath(QStringLiteral("demo.hammerline"));
    const int status = folder.isValid() ? QProcess::execute(QCoreApplication::applicationFilePath(),
                                                            {QStringLiteral("demo"), path, QStringLiteral("--quiet")})
                                        : -1;
    if (status != 0)
        return say(tr("The demo could not be written into %1; nothing was changed.").arg(QDir::tempPath()));
    openBook(path);
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
    const bool nothing = taken.sound.empty() && taken.notFitted.empty() && taken.passes.empty();
    if (nothing) return;
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
