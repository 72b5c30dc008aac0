// Menus of the window: every action has a name and a shortcut.
#include "ui/about.h"
#include "ui/glossary_dialog.h"
#include "ui/main_window.h"
#include "ui/print/sheets.h"
#include "ui/stations/note_card.h"
#include "ui/widgets/desktop_scheme.h"
#include "ui/widgets/dialogs.h"
#include "ui/widgets/house_style.h"
#include "ui/widgets/keyboard_strip.h"
#include "ui/widgets/row_table.h"
#include "ui/words/acts.h"
#include "ui/words/words.h"

#include <QAction>
#include <QActionGroup>
#include <QApplication>
#include <QDockWidget>
#include <QFileInfo>
#include <QLabel>
#include <QMenu>
#include <QMenuBar>

namespace hammerline {

namespace {
const char* const kBookFilter = QT_TRANSLATE_NOOP("hammerline::MainWindow", "Bench books (*.hammerline)");
}

void MainWindow::buildMenus() {
    m_bookLabel = new QLabel(this);
    m_bookLabel->setTextFormat(Qt::PlainText);
    m_bookLabel->setContentsMargins(0, u(0.5), u(3), 0); // on the line of the menus
    buildBookMenu();
    buildEditMenu();
    buildGoMenu();
    buildNotesMenu();
    buildViewMenu();
    buildPrintMenu();
    buildHelpMenu();
}

void MainWindow::buildBookMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&Book"));
    menu->addAction(tr("New bench book…"), QKeySequence(QStringLiteral("Ctrl+Shift+N")), this, &MainWindow::newBook);
    menu->addAction(tr("Open bench book…"), QKeySequence(QStringLiteral("Ctrl+O")), this, [this] { openBook({}); });
    QMenu* recent = menu->addMenu(tr("Recent"));
    connect(recent, &QMenu::aboutToShow, this, [this, recent] { fillRecent(recent); });
    menu->addSeparator();
    menu->addAction(tr("New piano…"), QKeySequence(QStringLiteral("Ctrl+N")), this, &MainWindow::newPiano);
    QMenu* pianos = menu->addMenu(tr("Piano"));
    connect(pianos, &QMenu::aboutToShow, this, [this, pianos] { fillPianos(pianos); });
    menu->addAction(tr("New pass…"), QKeySequence(QStringLiteral("Ctrl+M")), this, &MainWindow::newPass);
    QMenu* passes = menu->addMenu(tr("Pass"));
    connect(passes, &QMenu::aboutToShow, this, [this, passes] { fillPasses(passes); });
    menu->addSeparator();
    menu->addAction(tr("Import readings…"), QKeySequence(QStringLiteral("Ctrl+I")), this, [this] { importFile(); });
    buildExportMenu(menu);
    buildPhotographsMenu(menu);
    buildOpinionMenu(menu);
    menu->addAction(tr("Back up"), QKeySequence(QStringLiteral("Ctrl+B")), this, &MainWindow::backUpBook);
    menu->addAction(tr("Back up to another place…"), this, &MainWindow::backUpElsewhere);
    menu->addAction(tr("Is this book sound?"), this, &MainWindow::verifyBook);
    menu->addAction(tr("Restore a backup…"), this, [this] { restoreBackup(); });
    menu->addAction(tr("Merge another book…"), this, &MainWindow::mergeBook);
    menu->addAction(tr("Open again"), QKeySequence(QStringLiteral("F5")), this, &MainWindow::reopenBook);
    menu->addSeparator();
    menu->addAction(tr("Another window"), this, &MainWindow::openAnotherWindow);
    menu->addAction(tr("Quit"), QKeySequence(QStringLiteral("Ctrl+Q")), this, [this] { close(); });
}

void MainWindow::buildGoMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&Go"));
    for (std::size_t i = 0; i < stationRows().size(); ++i)
        menu->addAction(QCoreApplication::translate("Station", stationRows()[i].name),
                        QKeySequence(QStringLiteral("Ctrl+%1").arg(i + 1)), this,
                        [this, i] { showStation(static_cast<int>(i)); });
    menu->addSeparator();
    menu->addAction(tr("What comes next"), QKeySequence(QStringLiteral("F8")), this, &MainWindow::goToNext);
    menu->addAction(tr("Go to note…"), QKeySequence(QStringLiteral("Ctrl+G")), this, &MainWindow::goToNote);
    menu->addAction(tr("Next panel"), QKeySequence(QStringLiteral("F6")), this, [this] { stepPanel(1); });
    menu->addAction(tr("Panel before"), QKeySequence(QStringLiteral("Shift+F6")), this, [this] { stepPanel(-1); });
}

void MainWindow::buildNotesMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&Notes"));
    menu->addAction(tr("Next dimension"), QKeySequence(QStringLiteral("Ctrl+]")), this, [this] {
        if (station()) station()->stepDimension(1);
    });
    menu->addAction(tr("Dimension before"), QKeySequence(QStringLiteral("Ctrl+[")), this, [this] {
        if (station()) station()->stepDimension(-1);
    });
}

void MainWindow::buildViewMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&View"));
    auto* themes = new QActionGroup(this);
    const std::array<std::pair<QString, QString>, 3> rows{{{QStringLiteral("light"), tr("Light")},
                                                           {QStringLiteral("dark"), tr("Dark")},
                                                           {QStringLiteral("desktop"), tr("As the desktop")}}};
    for (const auto& [id, name] : rows) {
        QAction* action = menu->addAction(name, this, [this, id = id] { setTheme(id); });
        action->setCheckable(true);
        action->setChecked(m_settings.text(Setting::theme) == id);
        themes->addAction(action);
    }
    menu->addSeparator();
    menu->addAction(tr("Larger text"), QKeySequence(QStringLiteral("Ctrl++")), this,
                    [this] { setTextSize(textSize() + 10); });
    menu->addAction(tr("Smaller text"), QKeySequence(QStringLiteral("Ctrl+-")), this,
                    [this] { setTextSize(textSize() - 10); });
    menu->addAction(tr("Text as at first"), QKeySequence(QStringLiteral("Ctrl+0")), this, [this] { setTextSize(100); });
}

void MainWindow::buildPrintMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&Print"));
    menu->addAction(tr("Print this station…"), QKeySequence(QStringLiteral("Ctrl+P")), this, [this] {
        if (station() && leaveStation()) station()->print();
    });
    QMenu* sheets = menu->addMenu(tr("Sheet"));
    connect(sheets, &QMenu::aboutToShow, this, [this, sheets] { fillSheets(sheets, false); });
    QMenu* files = menu->addMenu(tr("Save as PDF"));
    connect(files, &QMenu::aboutToShow, this, [this, files] { fillSheets(files, true); });
    menu->addSeparator();
    const QString kept = m_settings.text(Setting::paper);
    if (!kept.isEmpty()) setUsualPaper(kept == QLatin1String("Letter") ? Paper::letter : Paper::a4);
    auto* papers = new QActionGroup(this);
    for (const auto& [paper, id, name] :
         {std::tuple{Paper::a4, "A4", tr("On A4")}, {Paper::letter, "Letter", tr("On Letter")}}) {
        QAction* action = menu->addAction(name, this, [this, paper = paper, id = QLatin1String(id)] {
            setUsualPaper(paper);
            m_settings.set(Setting::paper, id);
        });
        action->setCheckable(true);
        action->setChecked(usualPaper() == paper);
        papers->addAction(action);
    }
}

void MainWindow::buildHelpMenu() {
    QMenu* menu = menuBar()->addMenu(tr("&Help"));
    menu->addAction(tr("All keys"), QKeySequence(QStringLiteral("F1")), this, &MainWindow::showKeys);
    menu->addAction(tr("What words mean"), QKeySequence(QStringLiteral("Ctrl+F1")), this, [this] {
        GlossaryDialog glossary(this);
        Dialogs::now().run(glossary);
    });
    menu->addAction(tr("About Hammerline…"), this, [this] {
        AboutDialog about(this);
        Dialogs::now().run(about);
    });
}

void MainWindow::setTheme(const QString& theme) {
    m_settings.set(Setting::theme, theme);
    dress(theme == QLatin1String("dark")    ? Theme::dark
          : theme == QLatin1String("light") ? Theme::light
                                            : desktopTheme(),
          textSize());
    dressBench();
    refreshWords();
    refreshTrouble();
}

void MainWindow::followDesktop() {
    auto* scheme = new DesktopScheme(QDBusConnection::sessionBus(), this);
    connect(scheme, &DesktopScheme::motionTold, this, [](bool reduced) { HouseStyle::setReducedMotion(reduced); });
    connect(scheme, &DesktopScheme::told, this, [this](Theme theme) {
        setDesktopTheme(theme);
        if (m_settings.text(Setting::theme) == QLatin1String("desktop")) setTheme(QStringLiteral("desktop"));
    });
}

void MainWindow::setTextSize(int percent) {
    if (!leaveStation()) return;
    percent = std::clamp(percent, 80, 200);
    m_settings.set(Setting::textSize, percent);
    dress(themeOf(palette()), percent);
    rebuildStations();
    refreshBook();
}

void MainWindow::newBook() {
    if (!leaveStation()) return;
    QString path =
        Dialogs::now().fileToSave(this, tr("New bench book"), QStringLiteral("bench.hammerline"), tr(kBookFilter));
    if (path.isEmpty()) return;
    if (!path.endsWith(QLatin1String(".hammerline"))) path += QLatin1String(".hammerline");
    if (const auto made = m_bench.createBook(path); !made) return report(made.error());
    m_settings.rememberBook(path);
}

void MainWindow::fillPianos(QMenu* menu) {
    menu->clear();
    QMenu* away = nullptr; // only where something is put away
    for (const PianoLine& line : m_bench.pianos()) {
        const bool archived = isArchived(line.identity);
        if (archived && !away) away = new QMenu(tr("Put away"), menu);
        QMenu* into = archived ? away : menu;
        into->addAction(QString::fromStdString(line.name), this, [this, uuid = line.uuid] {
            if (!leaveStation()) return;
            if (const auto chosen = m_bench.choosePiano(uuid); !chosen) report(chosen.error());
        });
    }
    if (away) menu->addMenu(away);
}

void MainWindow::fillPasses(QMenu* menu) {
    menu->clear();
    if (!m_bench.record()) return;
    for (const Pass& pass : m_bench.record()->passes)
        menu->addAction(tr("%1, %2").arg(pass.number).arg(QString::fromStdString(pass.label)), this,
                        [this, number = pass.number] {
                            if (leaveStation()) m_bench.choosePass(number);
                        });
}

/// Says what it took back: the act may lie at another station or another note than the one in view.
void MainWindow::undo() {
    if (!leaveStation()) return;
    const PianoRecord before = m_bench.record() ? *m_bench.record() : PianoRecord{};
    const auto undone = m_bench.undo();
    if (!undone) return report(undone.error());
    const PianoRecord after = m_bench.record() ? *m_bench.record() : PianoRecord{};
    say(tr("Taken back: %1. Ctrl+Y does it again.").arg(words::actWords(undone->kind, before, after)));
}

void MainWindow::redo() {
    if (!leaveStation()) return;
    const PianoRecord before = m_bench.record() ? *m_bench.record() : PianoRecord{};
    const auto redone = m_bench.redo();
    if (!redone) return report(redone.error());
    const PianoRecord after = m_bench.record() ? *m_bench.record() : PianoRecord{};
    say(tr("Done again: %1. Ctrl+Z takes it back.").arg(words::actWords(redone->kind, after, before)));
}

void MainWindow::goToNote() {
    if (!m_bench.piano()) return;
    const auto typed = Dialogs::now().ask(this, tr("Go to note"), tr("Number or pitch:"));
    if (!typed) return;
    const auto note = parseNote(typed->toStdString(), *m_bench.piano());
    if (note)
        m_bench.setNote(*note);
    else
        report(note.error());
}

void MainWindow::stepPanel(int by) {
    if (!station()) return;
    QList<QWidget*> panels = station()->panels();
    if (m_card && m_card->isVisible()) panels << &m_card->rows();
    panels << m_strip;
    qsizetype here = -1;
    for (qsizetype i = 0; i < panels.size(); ++i)
        if (panels[i]->isAncestorOf(focusWidget()) || panels[i] == focusWidget()) here = i;
    if (!panels.isEmpty()) panels[(here + by + panels.size()) % panels.size()]->setFocus(Qt::ShortcutFocusReason);
}

} // namespace hammerline
