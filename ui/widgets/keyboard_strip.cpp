#include "ui/widgets/keyboard_strip.h"

#include "core/survey/standing.h"
#include "ui/widgets/look.h"
#include "ui/words/words.h"

#include <QKeyEvent>
#include <QMouseEvent>

namespace hammerline {

namespace {
constexpr double kHeight = 27, kKeysTop = 9.25, kKeysHeight = 8; // units
constexpr double kLeastWidth = 7 * 88.0;
} // namespace

KeyboardStrip::KeyboardStrip(Workbench& bench, QWidget* parent) : QWidget(parent), m_bench(bench) {
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Keyboard"));
    setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Fixed);
    const auto whole = [this] {
        reckonBars();
        update();
    };
    connect(&m_bench, &Workbench::recordChanged, this, whole);
    connect(&m_bench, &Workbench::noteChanged, this, [this] {
        update();
        sayAnew(*this);
    });
    connect(&m_bench, &Workbench::dimensionChanged, this, whole);
    connect(&m_bench, &Workbench::pianoChanged, this, [this] { layOut(); });
}

void KeyboardStrip::setMarks(StripMarks marks) {
    if (marks == m_marks) return; // asked at every reading; the bars follow the record by themselves
    m_marks = std::move(marks);
    reckonBars();
    update();
}

void KeyboardStrip::setTool(StripTool* tool) {
    m_tool = tool;
    setMouseTracking(tool != nullptr);
    update();
}

QRect KeyboardStrip::keysRect() const {
    return {m_axis.begin(), u(kKeysTop), m_axis.end() - m_axis.begin(), u(kKeysHeight)};
}

QSize KeyboardStrip::sizeHint() const {
    return {u(300), u(kHeight)};
}
QSize KeyboardStrip::minimumSizeHint() const {
    return {qRound(kLeastWidth) + u(42), u(kHeight)};
}

void KeyboardStrip::resizeEvent(QResizeEvent*) {
    layOut();
}
void KeyboardStrip::changeEvent(QEvent* event) {
    if (event->type() == QEvent::PaletteChange || event->type() == QEvent::FontChange) {
        updateGeometry();
        layOut();
    }
    QWidget::changeEvent(event);
}

void KeyboardStrip::layOut() {
    m_axis = m_bench.piano() ? NoteAxis(rect(), *m_bench.piano()) : NoteAxis();
    m_keys = QPixmap();
    reckonBars();
    update();
}

void KeyboardStrip::reckonBars() {
    m_bars.assign(static_cast<std::size_t>(m_axis.notes()) + 1, {});
    const PassView* view = m_bench.view();
    if (m_axis.notes() == 0) return;
    if (view && !m_marks.plain)
        for (const Judged& judged : view->review.ranked) {
            if (m_marks.dimension && judged.cell.dimension != *m_marks.dimension) continue;
            Bar& bar = m_bars[static_cast<std::size_t>(judged.cell.note.value)];
            const int marks = judged.marks() * (judged.verdict == Verdict::low ? -1 : 1);
            if (std::abs(marks) > std::abs(bar.marks)) bar.marks = marks;
            bar.uneven = bar.uneven || judged.uneven;
        }
    if (m_bench.record()->findings.empty()) return;
    const Standing standing(m_bench.record()->findings, *m_bench.piano()); // once: it looks through every part
    for (int n = 1; n <= m_axis.notes(); ++n)
        m_bars[static_cast<std::size_t>(n)].mendFirst = !standing.blockersOf({n}).empty();
}

/// ", mend first": what the mark on the current key says.
QString KeyboardStrip::standingText() const {
    const auto n = static_cast<std::size_t>(m_bench.note().value);
    if (n < m_bars.size() && m_bars[n].mendFirst) return tr(", mend first");
    const auto mark = m_marks.keys.find(m_bench.note().value);
    if (mark == m_marks.keys.end()) return {};
    return mark->second == StripMarks::KeyMark::faulty ? tr(", to do") : tr(", mended");
}

QString KeyboardStrip::sentence() const {
    if (!m_bench.piano()) return {};
    const PassView* view = m_bench.view();
    if (view && !m_marks.plain)
        for (const Judged& judged : view->review.ranked)
            if (judged.cell.note == m_bench.note()) return words::cellSentence(judged, *m_bench.piano());
    return words::noteName(m_bench.note(), *m_bench.piano()) + standingText();
}

QString KeyboardStrip::spoken() const {
    if (!m_bench.piano()) return {};
    std::vector<NoteNumber> out, mendFirst;
    for (int n = 1; n <= m_axis.notes(); ++n) {
        const Bar& bar = m_bars[static_cast<std::size_t>(n)];
        if (bar.marks != 0) out.push_back({n});
        if (bar.mendFirst) mendFirst.push_back({n});
    }
    QStringList said;
    if (!out.empty())
        said << tr("%n note(s) out: %1.", nullptr, static_cast<int>(out.size()))
                    .arg(QString::fromStdString(writeNotes(out)));
    if (!mendFirst.empty()) said << tr("Mend first: %1.").arg(QString::fromStdString(writeNotes(mendFirst)));
    said << sentence();
    return said.join(u' ');
}

void KeyboardStrip::mousePressEvent(QMouseEvent* event) {
    if (m_axis.notes() == 0) return;
    if (m_tool && m_tool->press(event, m_axis, keysRect())) return update();
    if (event->pos().x() >= m_axis.begin() - u(1)) m_bench.setNote(m_axis.at(event->pos().x()));
}

void KeyboardStrip::mouseMoveEvent(QMouseEvent* event) {
    if (m_axis.notes() == 0) return;
    if (m_tool && m_tool->move(event, m_axis, keysRect())) return update();
    if (event->buttons() & Qt::LeftButton) m_bench.setNote(m_axis.at(event->pos().x()));
}

void KeyboardStrip::mouseReleaseEvent(QMouseEvent* event) {
    if (m_tool && m_axis.notes() > 0 && m_tool->release(event, m_axis, keysRect())) update();
}

void KeyboardStrip::keyPressEvent(QKeyEvent* event) {
    if (m_axis.notes() == 0) return QWidget::keyPressEvent(event);
    if (m_tool && m_tool->key(event)) return update();
    const int here = m_bench.note().value;
    switch (event->key()) {
    case Qt::Key_Left:
    case Qt::Key_Down:
        return m_bench.setNote({here - 1});
    case Qt::Key_Right:
    case Qt::Key_Up:
        return m_bench.setNote({here + 1});
    case Qt::Key_PageUp:
        return m_bench.setNote({std::min(m_axis.notes(), here + 12)});
    case Qt::Key_PageDown:
        return m_bench.setNote({std::max(1, here - 12)});
    case Qt::Key_Home:
        return m_bench.setNote({1});
    case Qt::Key_End:
        return m_bench.setNote({m_axis.notes()});
    default:
        QWidget::keyPressEvent(event);
    }
}

} // namespace hammerline
