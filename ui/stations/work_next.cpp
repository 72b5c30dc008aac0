#include "ui/stations/work_next.h"

#include "core/sheet/work_now.h"
#include "ui/stations/work_rows.h"
#include "ui/words/words.h"
#include "ui/words/work_now.h"

#include <QEvent>
#include <QHBoxLayout>
#include <QLabel>

#include <utility>

namespace hammerline {

namespace {
constexpr int kPauseMs = 200;
}

NextLine::NextLine(Workbench& bench, QWidget* parent)
    : QWidget(parent), m_bench(bench), m_text(new QLabel(this)), m_goes(new QLabel(tr("F8 goes there"), this)) {
    setAutoFillBackground(true);
    setBackgroundRole(QPalette::Base);
    QSizePolicy whole(QSizePolicy::Preferred, QSizePolicy::Minimum);
    whole.setHeightForWidth(true);
    setSizePolicy(whole);
    m_text->setObjectName(QStringLiteral("next"));
    m_text->setAccessibleName(tr("What comes next"));
    m_text->setTextFormat(Qt::PlainText);
    m_text->setWordWrap(true);
    auto* row = new QHBoxLayout(this);
    row->setContentsMargins(u(4), u(1.5), u(4), u(1.5));
    row->setSpacing(u(4));
    row->addWidget(m_text, 1);
    row->addWidget(m_goes);
    dress();
    m_pause.setSingleShot(true);
    m_pause.setInterval(kPauseMs);
    connect(&m_pause, &QTimer::timeout, this, &NextLine::refresh);
    for (const auto signal : {&Workbench::bookChanged, &Workbench::pianoChanged, &Workbench::recordChanged})
        connect(&m_bench, signal, this, &NextLine::later);
    refresh();
}

void NextLine::later() {
    m_pause.start();
}

void NextLine::refresh() {
    m_pause.stop();
    const PianoRecord* record = m_bench.record();
    const WorkNow now = record ? workNow(*record) : WorkNow{};
    m_text->setText(record ? words::nextSentence(now.next, record->piano) : words::nextWithoutPiano());
    const QString counted = record ? doneOfAll(now, now.whole) : QString();
    if (std::exchange(m_counted, counted) != counted) Q_EMIT counts();
}

/// In the size of the type as it is now.
void NextLine::dress() {
    m_text->setFont(face(Text::body, true));
    m_goes->setFont(face(Text::label));
}

void NextLine::changeEvent(QEvent* event) {
    QWidget::changeEvent(event);
    if (event->type() == QEvent::FontChange) dress();
    if (event->type() == QEvent::LanguageChange) refresh();
}

} // namespace hammerline
