#include "ui/main_window.h"

#include "core/survey/standing.h"
#include "ui/first/first_page.h"
#include "ui/pictures/offer_band.h"
#include "ui/stations/bench_entry.h"
#include "ui/stations/measure_station.h"
#include "ui/stations/work_next.h"
#include "ui/widgets/dialogs.h"
#include "ui/widgets/hint_bar.h"
#include "ui/widgets/keyboard_strip.h"
#include "ui/widgets/station_rail.h"
#include "ui/words/keeping.h"
#include "ui/words/words.h"

#include <QApplication>
#include <QCloseEvent>
#include <QCoreApplication>
#include <QDockWidget>
#include <QFileInfo>
#include <QHBoxLayout>
#include <QLabel>
#include <QLocale>
#include <QMenuBar>
#include <QPainter>
#include <QStackedWidget>
#include <QTextDocument>
#include <QVBoxLayout>

#include <algorithm>
#include <set>
#include <utility>

namespace hammerline {

namespace {

/// One line of plain text that ends in dots where it has no room.
class Elided : public QLabel {
public:
    explicit Elided(QWidget* parent) : QLabel(parent) {
        setTextFormat(Qt::PlainText);
        setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    }

protected:
    void paintEvent(QPaintEvent*) override {
        QPainter painter(this);
        painter.setPen(palette().color(QPalette::WindowText));
        painter.drawText(rect(), Qt::AlignLeft | Qt::AlignVCenter,
                         fontMetrics().elidedText(text(), Qt::ElideRight, width()));
    }
};

/// Places that block a note as things stand now: what was mended, taken back or said to be sound since is not counted.
int toMendNow(const PianoRecord& record) {
    const Standing standing(record.findings, record.piano);
    std::set<const Finding*> open;
    for (const Part& part : parts())
        for (const NoteNumber note : notesOf(part, record.piano))
            if (const Finding* finding = standing.at(part, note); finding && standing.blocks(*finding))
                open.insert(finding);
    return static_cast<int>(open.size());
}

} // namespace

MainWindow::MainWindow(Workbench& bench, Settings& settings, QWidget* parent)
    : QMainWindow(parent), m_bench(bench), m_settings(settings) {
    setAcceptDrops(true);
    buildFrame();
    buildMenus();
    buildBenchActions();
    buildWatchedFolder();
    connectBench();
    refreshBook();
    refreshRail();
    showFirstPage();
    resize(1280, 800);
    restoreGeometry(m_settings.value(Setting::geometry).toByteArray());
}

MainWindow::~MainWindow() = default;

void MainWindow::buildFrame() {
    m_whole = new QStackedWidget(this);
    setCentralWidget(m_whole);
    m_house = new QWidget(m_whole);
    m_whole->addWidget(m_house);
    auto* row = new QHBoxLayout(m_house);
    row->setContentsMargins(0, 0, 0, 0);
    row->setSpacing(0);

    QStringList names;
    for (const StationRow& station : stationRows())
        names << QCoreApplication::translate("Station", station.name);
    m_rail = new StationRail(names, m_house);
    connect(m_rail, &StationRail::asked, this, [this](int index) {
        if (!showStation(index)) m_rail->setCurrent(stationIndex(m_settings.text(Setting::station)));
    });
    row->addWidget(m_rail);

    auto* column = new QVBoxLayout;
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    row->addLayout(column, 1);

    auto* bar = new QWidget(m_house);
    bar->setObjectName(QStringLiteral("contextBar"));
    m_toolRow = new QBoxLayout(QBoxLayout::LeftToRight, bar);
    m_toolRow->setContentsMargins(u(4), 0, u(4), 0);
    m_toolRow->setSpacing(u(3.5));
    m_title = new Elided(bar);
    m_context = new QLabel(bar);
    m_context->setTextFormat(Qt::RichText);
    m_context->setForegroundRole(QPalette::WindowText);
    m_context->setSizePolicy(QSizePolicy::Ignored, QSizePolicy::Preferred);
    // one under the other: a long name leaves the line below it whole
    auto* said = new QVBoxLayout;
    said->setSpacing(0);
    said->addStretch(1);
    said->addWidget(m_title);
    said->addWidget(m_context);
    said->addStretch(1);
    m_toolRow->addLayout(said, 1);
    column->addWidget(bar);
    m_next = new NextLine(m_bench, m_house);
    connect(m_next, &NextLine::counts, this, &MainWindow::refreshRail);
    column->addWidget(m_next);

    m_notice = new QLabel(m_house);
    m_notice->setObjectName(QStringLiteral("notice"));
    m_notice->setWordWrap(true);
    m_notice->setTextFormat(Qt::PlainText);
    m_notice->setAutoFillBackground(true);
    m_notice->setContentsMargins(u(4), u(1.5), u(4), u(1.5));
    m_notice->hide();
    column->addWidget(m_notice);
    m_offer = new OfferBand(m_house);
    column->addWidget(m_offer);

    m_stage = new QMainWindow(m_house);
    m_stage->setWindowFlags(Qt::Widget); // a QMainWindow makes itself a window of its own, whatever it is asked for
    m_stage->setContextMenuPolicy(Qt::NoContextMenu);
    m_stack = new QStackedWidget(m_stage);
    m_stage->setCentralWidget(m_stack);
    column->addWidget(m_stage, 1);

    m_strip = new KeyboardStrip(m_bench, m_house);
    m_hints = new HintBar(m_house);
    column->addWidget(m_strip);
    column->addWidget(m_hints);
}

void MainWindow::connectBench() {
    connect(&m_bench, &Workbench::bookChanged, this, &MainWindow::refreshBook);
    connect(&m_bench, &Workbench::saved, this, &MainWindow::refreshBook);
    connect(&m_bench, &Workbench::pianoChanged, this, &MainWindow::refreshWords);
    connect(&m_bench, &Workbench::pianoChanged, this, &MainWindow::showFirstPage);
    connect(&m_bench, &Workbench::bookChanged, this, &MainWindow::showFirstPage);
    connect(&m_bench, &Workbench::passChanged, this, &MainWindow::refreshWords);
    connect(&m_bench, &Workbench::recordChanged, this, [this] {
        m_notice->setVisible(m_bench.trouble().has_value());
        const bool leftOut = m_bench.record() && !m_bench.record()->leftOut.empty();
        if (leftOut && !m_bench.trouble()) say(words::leftOutSentence(*m_bench.record()));
        refreshRail();
        refreshWords();
    });
    connect(&m_bench, &Workbench::planChanged, this, &MainWindow::refreshRail);
    connect(&m_bench, &Workbench::troubleChanged, this, &MainWindow::refreshTrouble);
}

Station* MainWindow::station() const {
    return qobject_cast<Station*>(m_stack->currentWidget());
}

bool MainWindow::showStation(const QString& id) {
    return showStation(stationIndex(id));
}

bool MainWindow::showStation(int index) {
    if (index < 0 || index >= static_cast<int>(m_stations.size()) || !leaveBenchEntry()) return false;
    Station* before = station();
    Station*& wanted = m_stations[static_cast<std::size_t>(index)];
    if (before && before == wanted) {
        before->arrive();
        return true;
    }
    if (before && !before->leave()) return false;
    if (!wanted) {
        wanted = stationRows()[static_cast<std::size_t>(index)].make(m_bench);
        wanted->setObjectName(QLatin1String(stationRows()[static_cast<std::size_t>(index)].id));
        m_stack->addWidget(wanted);
        connect(wanted, &Station::wordsChanged, this, &MainWindow::refreshWords);
        connect(wanted, &Station::goTo, this, [this](const QString& id) { showStation(id); });
        connect(wanted, &Station::goToStep, this, [this](const QString& id, const QString& step) {
            if (showStation(id)) station()->meetStep(step);
        });
        connect(wanted, &Station::notice, this, &MainWindow::say);
        wireMeasure(wanted);
    }
    if (before && before->tools()) {
        m_toolRow->removeWidget(before->tools());
        before->tools()->hide();
    }
    if (QWidget* tools = wanted->tools()) {
        m_toolRow->addWidget(tools, 0, Qt::AlignLeft); // as wide as it likes to be, also below the words
        tools->show();
    }
    m_stack->setCurrentWidget(wanted);
    m_strip->setTool(wanted->stripTool());
    m_rail->setCurrent(index);
    m_settings.set(Setting::station, QLatin1String(stationRows()[static_cast<std::size_t>(index)].id));
    m_notice->setVisible(m_bench.trouble().has_value());
    foldCard();
    refreshWords();
    wanted->arrive();
    return true;
}

bool MainWindow::leaveStation() {
    if (atBench() && !m_entry->commit()) return false;
    return !station() || station()->leave();
}

/// Anew in the size of the type: a station lays much of itself out by it once.
void MainWindow::rebuildStations() {
    const int wide = forgetNoteWide();
    const bool bench = atBench();
    const std::array<Station*, 6> before = std::exchange(m_stations, {});
    const int shown = static_cast<int>(std::find(before.begin(), before.end(), station()) - before.begin());
    for (Station* each : before)
        if (each) m_stack->removeWidget(each);
    showStation(shown);
    for (Station* each : before) {
        if (!each) continue;
        if (QWidget* tools = each->tools()) { // they stand in the window's own row
            m_toolRow->removeWidget(tools);
            delete tools;
        }
        delete each;
    }
    if (bench) showBenchEntry();
    if (wide >= 0) showNoteWide(wide);
}

void MainWindow::refreshWords() {
    const Piano* piano = m_bench.piano();
    m_title->setFont(face(Text::title, true));
    m_title->setText(piano ? QString::fromStdString(piano->name) : tr("No piano yet"));
    m_title->setToolTip(Qt::convertFromPlainText(m_title->text(), Qt::WhiteSpaceNormal));
    m_context->setFont(face(Text::body));
    if (Station* now = station()) {
        const QColor soft = QColor::fromRgb(lookOf(*this).ink2);
        m_context->setText(QStringLiteral("<span style='color:%1'>%2</span>").arg(soft.name(), now->context()));
        layContextBar();
        m_hints->setHints(now->hints(), now->hintRemark());
        m_strip->setMarks(now->strip());
    }
}

void MainWindow::refreshRail() {
    const PianoRecord* record = m_bench.record();
    QStringList lines{{}, {}, {}, {}, {}, {}};
    if (record) {
        lines[0] = tr("%n note(s)", nullptr, record->piano.notes);
        const int toMend = toMendNow(*record);
        lines[1] = toMend > 0                 ? tr("%1 to mend").arg(toMend)
                   : record->findings.empty() ? tr("not begun")
                                              : tr("none to mend");
        if (const PassView* view = m_bench.view()) {
            std::set<int> read, out;
            for (const Judged& judged : view->review.ranked) {
                read.insert(judged.cell.note.value);
                if (judged.verdict == Verdict::low || judged.verdict == Verdict::high)
                    out.insert(judged.cell.note.value);
            }
            lines[2] = tr("%1 of %2").arg(read.size()).arg(record->piano.notes);
            lines[3] = read.empty() ? QString() : tr("%1 of %2 out").arg(out.size()).arg(read.size());
        }
        lines[4] = m_next->counted();
        lines[5] = tr("%n pass(es)", nullptr, static_cast<int>(record->passes.size()));
    }
    for (qsizetype i = 0; i < lines.size(); ++i)
        m_rail->setState(static_cast<int>(i), lines[i]);
}

void MainWindow::refreshBook() {
    titleWindow();
    QString text;
    if (m_bench.hasBook())
        text = tr("Bench book: %1 \u00B7 saved %2")
                   .arg(QFileInfo(m_bench.path()).fileName(), m_bench.savedAt().toString(QStringLiteral("HH:mm")));
    if (const QFont font = face(Text::body); m_bookLabel->text() != text || m_bookLabel->font() != font) {
        m_bookLabel->setText(text);
        m_bookLabel->setFont(font);
        menuBar()->setCornerWidget(m_bookLabel, Qt::TopRightCorner); // it measures the label only here
        m_bookLabel->show();
    }
    refreshTrouble();
}

void MainWindow::refreshTrouble() {
    if (m_bench.trouble())
        report(*m_bench.trouble());
    else
        m_notice->hide();
}

void MainWindow::say(const QString& sentence) {
    if (atBench()) return m_entry->say(sentence);
    if (atFirstPage()) return m_first->say(sentence);
    const Look& look = lookOf(*this);
    QPalette palette = m_notice->palette();
    palette.setColor(QPalette::Window, QColor::fromRgb(look.faultBg));
    palette.setColor(QPalette::WindowText, QColor::fromRgb(look.ink));
    m_notice->setPalette(palette);
    m_notice->setFont(face(Text::body));
    m_notice->setText(sentence);
    m_notice->setVisible(!sentence.isEmpty());
}

void MainWindow::report(const Refusal& refusal) {
    say(words::sentence(refusal));
}

void MainWindow::foldCard() {
    constexpr double kFoldBelow = 275; // 1,100 px at the base font: larger type needs a wider window
    const bool shown =
        station() && station()->wantsNoteCard() && m_settings.on(Setting::noteCard) && width() >= u(kFoldBelow);
    if (shown && !m_cardDock) buildCard(); // made when it is first seen
    if (m_cardDock) m_cardDock->setVisible(shown);
    constexpr double kStripFrom = 140; // large type in a low window: what is worked on comes before the keyboard
    m_strip->setVisible(height() >= u(kStripFrom));
}

void MainWindow::remember() {
    m_settings.set(Setting::geometry, saveGeometry());
    if (const PianoRecord* record = m_bench.record()) {
        m_settings.set(Setting::lastPiano, QString::fromStdString(record->uuid));
        m_settings.set(Setting::lastPass, m_bench.passNumber());
    }
}

void MainWindow::closeEvent(QCloseEvent* event) {
    if (!leaveStation()) return event->ignore();
    remember();
    event->accept();
}

} // namespace hammerline
