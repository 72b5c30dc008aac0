#include "ui/piano/breaks.h"

#include "ui/widgets/look.h"
#include "ui/widgets/marks.h"
#include "ui/widgets/note_axis.h"

#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

namespace hammerline {

namespace {

constexpr double kPost = 1.75, kOver = 1.75, kReach = 2.5, kDamperLine = 4.5; // units

/// Between the note and the next one.
double behind(int note, const NoteAxis& axis) {
    const double right = axis.right({std::max(1, note)});
    return note < axis.notes() && note > 0 ? (right + axis.left({note + 1})) / 2 : right;
}

QRectF postAt(int note, bool damper, const NoteAxis& axis, const QRect& keys) {
    const double x = behind(note, axis), half = units(kPost) / 2;
    // the damper's post stands above the keys, where its line runs
    return damper ? QRectF(x - half, keys.top() - units(kDamperLine + 1), 2 * half, units(2))
                  : QRectF(x - half, keys.top() - units(kOver), 2 * half, keys.height() + 2 * units(kOver));
}

} // namespace

std::vector<PianoBreaks::Mark> PianoBreaks::marks() const {
    std::vector<Mark> all;
    const Piano* piano = m_bench.piano();
    if (!piano) return all;
    const auto sections = sectionsOf(*piano);
    for (std::size_t i = 0; i + 1 < sections.size(); ++i)
        all.push_back({sections[i].range.last, i});
    all.push_back({piano->lastDamper.value_or(piano->notes), {}});
    return all;
}

int PianoBreaks::within(const Mark& mark, int note) const {
    if (!mark.section) return std::clamp(note, 0, m_bench.piano()->notes);
    const auto sections = sectionsOf(*m_bench.piano());
    return std::clamp(note, sections[*mark.section].range.first, sections[*mark.section + 1].range.last - 1);
}

void PianoBreaks::place(const Mark& mark, int note) {
    if (note == mark.note) return;
    if (!mark.section) {
        Q_EMIT said(QStringLiteral("last-damper"), QString::number(note));
        return;
    }
    Piano piano = *m_bench.piano();
    piano.sections = sectionsOf(piano);
    piano.sections[*mark.section].range.last = note;
    piano.sections[*mark.section + 1].range.first = note + 1;
    for (const auto& [name, value] : attributePairs(piano))
        if (name == "sections") Q_EMIT said(QStringLiteral("sections"), QString::fromStdString(value));
}

void PianoBreaks::paint(QPainter& painter, const Look& look, const NoteAxis& axis, const QRect& keys) {
    const auto all = marks();
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing);
    for (std::size_t i = 0; i < all.size(); ++i) {
        const bool chosen = i == m_chosen;
        const int note = chosen && m_dragged ? *m_dragged : all[i].note;
        const QRectF post = postAt(note, !all[i].section, axis, keys);
        if (!all[i].section) {
            painter.setPen(QPen(ink(look.ink), 1.6));
            painter.drawLine(QPointF(axis.begin(), post.center().y()), QPointF(post.center().x(), post.center().y()));
        }
        painter.setPen(Qt::NoPen);
        painter.setBrush(ink(look.ink));
        painter.drawRoundedRect(post, units(0.5), units(0.5));
        if (chosen) paintRing(painter, post, look);
    }
    painter.restore();
}

bool PianoBreaks::press(QMouseEvent* event, const NoteAxis& axis, const QRect& keys) {
    const auto all = marks();
    const double reach = units(kReach);
    for (std::size_t i = 0; i < all.size(); ++i)
        if (postAt(all[i].note, !all[i].section, axis, keys)
                .adjusted(-reach, 0, reach, 0)
                .contains(event->position())) {
            m_chosen = i;
            m_dragged = all[i].note;
            return true;
        }
    return false;
}

bool PianoBreaks::move(QMouseEvent* event, const NoteAxis& axis, const QRect&) {
    if (!m_dragged) return false;
    const int x = qRound(event->position().x());
    const NoteNumber under = axis.at(x);
    m_dragged = within(marks().at(m_chosen), x < axis.centre(under) ? under.value - 1 : under.value);
    return true;
}

bool PianoBreaks::release(QMouseEvent*, const NoteAxis&, const QRect&) {
    if (!m_dragged) return false;
    const int note = *m_dragged;
    m_dragged.reset();
    place(marks().at(m_chosen), note);
    return true;
}

bool PianoBreaks::key(QKeyEvent* event) {
    const auto all = marks();
    if (all.empty()) return false;
    m_chosen = std::min(m_chosen, all.size() - 1);
    if (event->key() == Qt::Key_B && event->modifiers() == Qt::NoModifier) {
        m_chosen = (m_chosen + 1) % all.size();
        return true;
    }
    if (!(event->modifiers() & Qt::ShiftModifier)) return false;
    const int by = event->key() == Qt::Key_Left ? -1 : event->key() == Qt::Key_Right ? 1 : 0;
    if (by != 0) place(all[m_chosen], within(all[m_chosen], all[m_chosen].note + by));
    return by != 0;
}

} // namespace hammerline
