#include "ui/piano/figures.h"

#include "core/refusal/refusal.h"
#include "ui/piano/fold.h"
#include "ui/piano/key_arms.h"
#include "ui/piano/spec_panel.h"
#include "ui/piano/work_panel.h"
#include "ui/widgets/look.h"

#include <QScrollArea>
#include <QVBoxLayout>

namespace hammerline {

namespace {

/// Where the drawing has no room (large type) it is scrolled.
QScrollArea* scrolled(QWidget* page, QWidget* parent) {
    auto* area = new QScrollArea(parent);
    area->setFocusPolicy(Qt::NoFocus);
    area->setWidgetResizable(true);
    area->setFrameShape(QFrame::NoFrame);
    area->setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
    area->setWidget(page);
    return area;
}

} // namespace

PianoFigures::PianoFigures(Workbench& bench, QWidget* parent)
    : QWidget(parent)
    , m_bench(bench)
    , m_arms(new KeyArmsPage(this))
    , m_spec(new SpecPanel(bench, this))
    , m_work(new WorkPanel(bench, this)) {
    auto* armsPanel = new Panel({}, scrolled(m_arms, this), this);
    armsPanel->setTitle(tr("Key arms"), tr("mm from the balance pin"));
    m_pages = {armsPanel, m_spec, m_work};
    m_bars = {new FoldBar(tr("Key arms"), this), new FoldBar(tr("Zones"), this),
              new FoldBar(tr("Minutes and turns of the work"), this)};
    m_bars[1]->setKey(QStringLiteral("Z"));
    m_bars[2]->setKey(QStringLiteral("W"));
    auto* column = new QVBoxLayout(this);
    column->setContentsMargins(0, 0, 0, 0);
    column->setSpacing(0);
    for (std::size_t i = 0; i < m_bars.size(); ++i) {
        column->addWidget(m_bars[i]);
        column->addWidget(m_pages[i], 1);
        connect(m_bars[i], &FoldBar::clicked, this, [this, i] { open(static_cast<Page>(i)); });
    }
    connect(m_arms, &KeyArmsPage::said, this, &PianoFigures::said);
    connect(m_work, &WorkPanel::said, this, &PianoFigures::said);
    connect(m_spec, &SpecPanel::refused, this, &PianoFigures::refused);
    open(Page::arms);
}

void PianoFigures::open(Page page) {
    const bool hadFocus = isAncestorOf(window()->focusWidget());
    m_page = page;
    for (std::size_t i = 0; i < m_bars.size(); ++i) {
        const bool isOpen = i == static_cast<std::size_t>(page);
        m_bars[i]->setVisible(!isOpen);
        m_bars[i]->setChecked(false);
        m_pages[i]->setVisible(isOpen);
    }
    setFocusProxy(front());
    if (hadFocus) front()->setFocus(Qt::OtherFocusReason);
}

QWidget* PianoFigures::front() const {
    if (m_page == Page::zones) return &m_spec->table();
    if (m_page == Page::work) return &m_work->table();
    constexpr std::size_t kFrontPin = 1;
    return m_arms->field(KeyColour::natural, kFrontPin);
}

void PianoFigures::refresh() {
    m_spec->refresh();
    m_work->refresh();
    const Piano* piano = m_bench.piano();
    if (!piano) return;
    m_arms->show(*piano);
    const bool measured =
        piano->armsOf(KeyColour::natural).anyMeasured() || piano->armsOf(KeyColour::sharp).anyMeasured();
    m_bars[0]->setSummary(measured ? tr("measured") : tr("as is customary"));
    m_bars[1]->setSummary(zonesSummary());
    m_bars[2]->setSummary(workSummary());
}

QString PianoFigures::zonesSummary() const {
    const PianoRecord& record = *m_bench.record();
    QString text = record.spec ? tr("with figures of your own") : tr("as the sheet has them");
    const int own = static_cast<int>(record.overrides.size());
    if (own > 0) text += QStringLiteral(" · ") + tr("%n note(s) with a zone of their own", nullptr, own);
    return text;
}

QString PianoFigures::workSummary() const {
    const Piano& piano = *m_bench.piano();
    const int minutes = static_cast<int>(piano.minutes.size());
    const bool turned = piano.capstanUp || piano.letOffIn || piano.dropIn;
    QStringList said;
    if (minutes > 0) said += tr("%n of your own", nullptr, minutes);
    if (turned) said += tr("a screw the other way round");
    return said.isEmpty() ? tr("all customary") : said.join(QStringLiteral(" · "));
}

} // namespace hammerline
