// The entry at the bench, the note card and how to measure: what the window shows beside its stations.
#include "ui/glossary_dialog.h"
#include "ui/key_sheet.h"
#include "ui/main_window.h"
#include "ui/stations/bench_entry.h"
#include "ui/stations/how_to.h"
#include "ui/stations/measure_station.h"
#include "ui/stations/measure_view.h"
#include "ui/stations/note_card.h"
#include "ui/widgets/dialogs.h"
#include "ui/widgets/station_rail.h"
#include "ui/words/glossary.h"
#include "ui/words/words.h"

#include <QAction>
#include <QBoxLayout>
#include <QCoreApplication>
#include <QDockWidget>
#include <QKeyEvent>
#include <QLabel>
#include <QMenu>
#include <QMenuBar>
#include <QStackedWidget>

namespace hammerline {

void MainWindow::buildBenchActions() {
    QMenu *notes = nullptr, *view = nullptr, *help = nullptr;
    for (QAction* each : menuBar()->actions()) {
        if (each->text() == tr("&Notes")) notes = each->menu();
        if (each->text() == tr("&View")) view = each->menu();
        if (each->text() == tr("&Help")) help = each->menu();
    }
    if (!notes || !view || !help) return;
    notes->addSeparator();
    m_benchAction = notes->addAction(tr("Bench entry"), QKeySequence(QStringLiteral("F11")), this, [this] {
        if (atBench())
            leaveBenchEntry();
        else
            showBenchEntry();
    });
    notes->addAction(tr("Next order of entry"), QKeySequence(QStringLiteral("F3")), this, [this] {
        if (MeasureStation* station = measure()) station->stepOrder(1);
        if (atBench()) m_entry->arrive();
    });
    m_acrossAction = notes->addAction(tr("All of a note before the next"), QKeySequence(QStringLiteral("F4")), this,
                                      [this](bool on) {
                                          if (MeasureStation* station = measure()) station->setAcross(on);
                                      });
    m_acrossAction->setCheckable(true);
    view->addSeparator();
    view->addAction(tr("The note, wide"), QKeySequence(QStringLiteral("F7")), this, [this] {
        if (noteIsWide())
            leaveNoteWide();
        else
            showNoteWide();
    });
    m_cardAction = view->addAction(tr("Note card"), QKeySequence(QStringLiteral("Ctrl+L")), this, [this](bool on) {
        m_settings.set(Setting::noteCard, on);
        foldCard();
    });
    m_cardAction->setCheckable(true);
    m_cardAction->setChecked(m_settings.on(Setting::noteCard));
    QAction* dark = view->addAction(tr("Bench entry in dark"), this, [this](bool on) {
        m_settings.set(Setting::benchInDark, on);
        dressBench();
    });
    dark->setCheckable(true);
    dark->setChecked(m_settings.on(Setting::benchInDark));
    help->addAction(tr("How to measure"), QKeySequence(QStringLiteral("Shift+F1")), this, &MainWindow::showHowTo);
    // the menu bar is hidden at the bench: its keys work all the same
    for (QAction* each : menuBar()->actions())
        if (each->menu()) addActions(each->menu()->actions());
}

MeasureStation* MainWindow::measure() {
    return qobject_cast<MeasureStation*>(m_stations[static_cast<std::size_t>(stationIndex(QStringLiteral("measure")))]);
}

bool MainWindow::atBench() const {
    return m_entry && m_whole->currentWidget() == m_entry;
}

bool MainWindow::showBenchEntry() {
    if (!m_bench.piano() || atBench()) return atBench();
    if (!showStation(QStringLiteral("measure")) || !leaveStation()) return false;
    if (!m_entry) {
        m_entry = new BenchEntry(m_bench, m_whole);
        m_whole->addWidget(m_entry);
        connect(m_entry, &BenchEntry::left, this, &MainWindow::leaveBenchEntry);
        connect(m_entry, &BenchEntry::undoAsked, this, &MainWindow::undo);
        connect(m_entry, &BenchEntry::redoAsked, this, &MainWindow::redo);
        connect(m_entry, &BenchEntry::refused, this, &MainWindow::report);
        connect(m_entry, &BenchEntry::howToAsked, this, &MainWindow::showHowTo);
        dressBench();
    }
    m_entry->setOrder(measure()->order());
    m_whole->setCurrentWidget(m_entry);
    menuBar()->hide();
    m_entry->arrive();
    return true;
}

bool MainWindow::leaveBenchEntry() {
    if (!atBench()) return true;
    if (!m_entry->commit()) return false;
    m_whole->setCurrentWidget(m_house);
    menuBar()->show();
    if (station()) station()->arrive();
    return true;
}

void MainWindow::dressBench() {
    if (!m_entry) return;
    m_entry->setPalette(m_settings.on(Setting::benchInDark) ? paletteOf(Theme::dark) : QPalette());
}

void MainWindow::buildCard() {
    m_card = new NoteCard(m_bench);
    m_cardDock = new QDockWidget(tr("Note card"), m_stage);
    m_cardDock->setObjectName(QStringLiteral("noteCardDock"));
    m_cardDock->setTitleBarWidget(new QWidget(m_cardDock)); // the card has a head of its own
    m_cardDock->setFeatures(QDockWidget::NoDockWidgetFeatures);
    m_cardDock->setWidget(m_card);
    const bool left = m_settings.text(Setting::noteCardSide) == QLatin1String("left");
    m_stage->addDockWidget(left ? Qt::LeftDockWidgetArea : Qt::RightDockWidgetArea, m_cardDock);
    m_stage->resizeDocks({m_cardDock}, {m_card->sizeHint().width()}, Qt::Horizontal);
    connect(m_card, &NoteCard::howToAsked, this, &MainWindow::showHowTo);
}

/// F1: what the words mean that one stands at, then every key, whether or not it works now.
void MainWindow::showKeys() {
    const auto here = words::termsIn(wordsAt(focusWidget()));
    KeySheetDialog sheet(words::termsAsHtml(here) + keySheet(*menuBar()), this);
    Dialogs::now().run(sheet);
}

/// [ and ] where no field took them, and digits at Measure whose focus went astray.
void MainWindow::keyPressEvent(QKeyEvent* event) {
    if ((event->key() == Qt::Key_BracketLeft || event->key() == Qt::Key_BracketRight) && station() && !atBench())
        return station()->stepDimension(event->key() == Qt::Key_BracketLeft ? -1 : 1);
    const bool digit = event->text().size() == 1 && event->text().front().isDigit() && !event->modifiers();
    const bool astray = measure() && station() == measure() && !atBench() && !measure()->grid().hasFocus();
    if (digit && astray && !measure()->grid().editor()) { // a reading that nobody else took
        measure()->arrive();
        QCoreApplication::sendEvent(&measure()->grid(), event);
        return;
    }
    QMainWindow::keyPressEvent(event);
}

void MainWindow::showHowTo() {
    const Piano* piano = m_bench.piano();
    HowToDialog dialog(dimensionsToShow(piano), m_bench.dimension(), piano ? piano->action : ActionKind::upright, this);
    Dialogs::now().run(dialog);
}

void MainWindow::resizeEvent(QResizeEvent* event) {
    QMainWindow::resizeEvent(event);
    foldCard();
    layContextBar();
}

/// The line below the name is said whole: tools that leave it no room (large type, a narrow window) stand under it.
void MainWindow::layContextBar() {
    QWidget* tools = station() ? station()->tools() : nullptr;
    const int beside = u(8 + 3.5) + m_context->sizeHint().width() + (tools ? tools->sizeHint().width() : 0);
    const bool below = tools && beside > width() - m_rail->sizeHint().width();
    m_toolRow->setDirection(below ? QBoxLayout::TopToBottom : QBoxLayout::LeftToRight);
    m_toolRow->setSpacing(u(below ? 0.5 : 3.5));
    m_toolRow->setContentsMargins(u(4), 0, u(4), below ? u(1.5) : 0);
    m_toolRow->parentWidget()->setFixedHeight(u(below ? 21 : 13));
}

} // namespace hammerline
