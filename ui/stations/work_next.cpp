#include "ui/stations/work_next.h"

#include "core/sheet/work_now.h"
#include "ui/words/words.h"
#include "ui/words/work_now.h"

#include <QEvent>

namespace hammerline {

namespace {
constexpr int kPauseMs = 200;
}

NextLine::NextLine(Workbench& bench, QWidget* parent) : QLabel(parent), m_bench(bench) {
    setObjectName(QStringLiteral("next"));
    setAccessibleName(tr("What comes next"));
    setTextFormat(Qt::PlainText);
    setWordWrap(true);
    setAutoFillBackground(true);
    setBackgroundRole(QPalette::Base);
    setContentsMargins(u(4), u(1), u(4), u(1));
    setFont(face(Text::label));
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
    setText(record ? words::nextSentence(workNow(*record).next, record->piano) : words::nextWithoutPiano());
}

void NextLine::changeEvent(QEvent* event) {
    QLabel::changeEvent(event);
    if (event->type() == QEvent::LanguageChange) refresh();
}

} // namespace hammerline
