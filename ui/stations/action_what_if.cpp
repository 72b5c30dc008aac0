#include "ui/stations/action_what_if.h"

#include "ui/widgets/dialogs.h"
#include "ui/widgets/drawn_style.h"
#include "ui/widgets/hint_bar.h"
#include "ui/widgets/marks.h"
#include "ui/words/what_if.h"
#include "ui/words/words.h"

#include <QMouseEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

constexpr double kWhatIfWide = 92, kWhatIfHead = 9, kHandleHigh = 13, kOutcomeHigh = 16, kKeysHigh = 20; // units
constexpr double kTrackLeft = 34, kTrackRight = 14;
constexpr int kBigMove = 5; // steps

} // namespace

WhatIf::WhatIf(ActionDesk& desk, QWidget* parent) : QWidget(parent), m_desk(desk) {
    setObjectName(QStringLiteral("whatIf"));
    setAccessibleName(tr("What if"));
    setMinimumWidth(u(70));
    connect(&m_desk, &ActionDesk::changed, this, [this] {
        if (!isVisible()) return;
        setAccessibleDescription(sentence());
        update();
    });
}

QSize WhatIf::sizeHint() const {
    const double rows = static_cast<double>(std::max<std::size_t>(handles().size(), 1));
    return {u(kWhatIfWide), qRound(units(kWhatIfHead + rows * kHandleHigh + kOutcomeHigh + kKeysHigh))};
}

/// Tracks reach beyond the zone and beyond what was read.
WhatIf::Handle WhatIf::handleOf(DimensionId id, std::optional<double> read, std::optional<double> known) const {
    const std::optional<Zone>& zone = m_desk.bench().zones().at({m_desk.bench().note(), id});
    const double aim = known.value_or(read.value_or(0));
    double low = read.value_or(aim), high = low;
    if (zone && zone->low) low = std::min(low, toTrade(*zone->low, Kind::length));
    if (zone && zone->high) high = std::max(high, toTrade(*zone->high, Kind::length));
    const bool blow = id == dimension::blow, lost = id == dimension::lostMotion, height = id == m_desk.heightId();
    const double margin = std::max(high - low, blow ? 2.0 : 0.6) * 0.35;
    Handle handle{.id = id, .low = std::max(0.0, low - margin), .high = high + margin};
    if (height) handle.low = low - margin; // a key lies under the line as well
    if (blow) handle.step = 0.5;
    if (lost) handle.step = 0.05;
    return handle;
}

std::vector<WhatIf::Handle> WhatIf::handles() const {
    if (!m_desk.ready()) return {};
    std::vector<Handle> out;
    for (const DipTerm& term : m_desk.note().account.terms)
        out.push_back(handleOf(term.dimension, term.reading, term.aim));
    const DimensionId height = m_desk.heightId();
    out.push_back(handleOf(height, m_desk.readAt(height), m_desk.heightAim()));
    if (m_desk.bench().piano()->vertical())
        out.push_back({.id = dimension::blow, .low = -3, .high = 3, .step = 0.25, .rail = true});
    return out;
}

DimensionId WhatIf::current() const {
    const auto all = handles();
    return all.empty() ? DimensionId{} : all[std::min(m_current, all.size() - 1)].id;
}

QRect WhatIf::currentRow() const {
    return rowBox(m_current).toRect();
}

std::optional<double> WhatIf::valueOf(const Handle& handle) const {
    if (handle.rail) return m_desk.rail();
    if (const auto supposed = m_desk.supposed(handle.id)) return supposed;
    if (const auto moved = m_desk.movedAlong(handle.id)) return moved;
    return m_desk.readAt(handle.id);
}

std::optional<double> WhatIf::readOf(const Handle& handle) const {
    return handle.rail ? std::optional(0.0) : m_desk.readAt(handle.id);
}

bool WhatIf::onRail() const {
    const auto all = handles();
    return m_current < all.size() && all[m_current].rail;
}

QString WhatIf::sentence() const {
    if (!m_desk.ready()) return {};
    const auto all = handles();
    const Handle& handle = all[std::min(m_current, all.size() - 1)];
    if (handle.rail) return words::railSentence(m_desk.rail(), m_desk.capstansFollow(), m_desk.notesWithin());
    return words::whatIfSentence(handle.id, valueOf(handle), m_desk.note(), m_desk.supposes());
}

QRectF WhatIf::rowBox(std::size_t i) const {
    return {0, units(kWhatIfHead) + units(kHandleHigh) * static_cast<double>(i), static_cast<double>(width()),
            units(kHandleHigh)};
}

QRectF WhatIf::trackBox(std::size_t i) const {
    const QRectF row = rowBox(i);
    return {units(kTrackLeft), row.top(), row.width() - units(kTrackLeft + kTrackRight), row.height()};
}

void WhatIf::moveTo(std::size_t i, double mm) {
    const auto all = handles();
    if (i >= all.size()) return;
    const Handle& handle = all[i];
    const double stepped = std::round(mm / handle.step) * handle.step;
    const double wanted = std::clamp(stepped, handle.low, handle.high);
    if (handle.rail)
        m_desk.supposeRail(wanted);
    else
        m_desk.suppose(handle.id, wanted);
}

void WhatIf::moveBy(int steps) {
    const auto all = handles();
    if (m_current >= all.size()) return;
    const Handle& handle = all[m_current];
    const double from = handle.id == m_desk.heightId() ? m_desk.heightAim() : (handle.low + handle.high) / 2;
    moveTo(m_current, valueOf(handle).value_or(from) + steps * handle.step);
}

void WhatIf::choose(int by) {
    const auto count = static_cast<std::ptrdiff_t>(handles().size());
    if (count == 0) return;
    m_current =
        static_cast<std::size_t>(std::clamp<std::ptrdiff_t>(static_cast<std::ptrdiff_t>(m_current) + by, 0, count - 1));
    setAccessibleDescription(sentence());
    update();
}

bool WhatIf::useKey(int key, Qt::KeyboardModifiers modifiers) {
    const int steps = modifiers & Qt::ControlModifier ? kBigMove : 1;
    const bool moves = modifiers & Qt::ShiftModifier;
    switch (key) {
    case Qt::Key_Up:
        choose(-1);
        return true;
    case Qt::Key_Down:
        choose(1);
        return true;
    case Qt::Key_Left:
        if (moves) moveBy(-steps);
        return moves;
    case Qt::Key_Right:
        if (moves) moveBy(steps);
        return moves;
    case Qt::Key_Delete:
    case Qt::Key_Backspace:
        if (onRail())
            m_desk.supposeRail(0);
        else
            m_desk.forget(current());
        return true;
    case Qt::Key_C:
        m_desk.setCapstansFollow(!m_desk.capstansFollow());
        return true;
    case Qt::Key_Return:
    case Qt::Key_Enter:
        takeOver();
        return true;
    default:
        return false;
    }
}

/// Everything supposed becomes this note's own aim, its zone as wide as it was, under one reason.
void WhatIf::takeOver() {
    if (!m_desk.supposes()) {
        Q_EMIT refused(tr("Nothing is supposed yet: Shift with an arrow moves the handle, then Enter takes it over."));
        return;
    }
    const Piano& piano = *m_desk.bench().piano();
    const NoteNumber note = m_desk.bench().note();
    const auto reason = Dialogs::now().ask(this, tr("Take over as aim for this note"),
                                           tr("Why note %1 has an aim of its own:").arg(words::noteName(note, piano)));
    if (!reason) return;
    if (reason->trimmed().isEmpty()) {
        Q_EMIT refused(tr("An aim of its own needs a reason. Nothing was kept; the handles stand as they were."));
        return;
    }
    std::vector<Override> wanted;
    for (const Handle& handle : handles()) {
        if (handle.rail) continue; // what is common is planned, not aimed at note by note
        const auto mm = m_desk.supposed(handle.id);
        const Cell cell{note, handle.id};
        const std::optional<Zone>& zone = m_desk.bench().zones().at(cell);
        if (!mm || !zone) continue;
        Override own;
        own.cell = cell;
        own.reason = reason->trimmed().toStdString();
        own.zone = *zone;
        own.zone.nominal = fromTrade(*mm, Kind::length);
        const std::int64_t by = own.zone.nominal - zone->nominal;
        if (zone->low) own.zone.low = std::min(*zone->low + by, own.zone.nominal);
        if (zone->high) own.zone.high = std::max(*zone->high + by, own.zone.nominal);
        wanted.push_back(own);
    }
    for (const Override& own : wanted)
        if (const auto kept = m_desk.bench().setOverride(own); !kept) {
            Q_EMIT refused(words::sentence(kept.error()));
            return;
        }
}

void WhatIf::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const DrawnStyle style = screenStyle(*this);
    painter.fillRect(rect(), ink(style.look.paper));
    painter.fillRect(QRect(0, 0, width(), u(kWhatIfHead)), ink(style.look.head));
    painter.fillRect(QRect(0, 0, 1, height()), ink(style.look.line));
    painter.setRenderHint(QPainter::Antialiasing);
    if (!m_desk.ready()) return;
    painter.setPen(ink(style.look.ink));
    drawnText(painter, style, style.strong, {units(3), units(6)}, tr("What if"));
    painter.setPen(ink(style.look.ink2));
    drawnText(painter, style, style.plain, {width() - units(3), units(6)}, tr("nothing is kept until Enter"),
              Qt::AlignRight);
    const auto all = handles();
    for (std::size_t i = 0; i < all.size(); ++i)
        paintHandle(painter, i, all[i]);
    paintOutcome(painter, units(kWhatIfHead) + units(kHandleHigh) * static_cast<double>(all.size()));
}

void WhatIf::paintHandle(QPainter& painter, std::size_t i, const Handle& handle) {
    const DrawnStyle style = screenStyle(*this);
    const QRectF row = rowBox(i), track = trackBox(i);
    const bool here = i == m_current;
    if (here) painter.fillRect(row, ink(style.look.sel));
    painter.fillRect(QRectF(0, row.bottom() - 1, width(), 1), ink(style.look.line));
    painter.setPen(ink(style.look.ink));
    drawnText(painter, style, style.bold, {units(3), row.top() + units(5.6)},
              handle.rail ? tr("Rest rail, all") : words::name(handle.id));
    painter.setPen(ink(style.look.ink2));
    const auto read = readOf(handle);
    const auto moved = handle.rail ? std::nullopt : m_desk.movedAlong(handle.id);
    const auto supposed = handle.rail ? std::optional(m_desk.rail()) : moved ? moved : m_desk.supposed(handle.id);
    drawnText(painter, style, style.plain, {units(3), row.top() + units(10.2)},
              handle.rail ? tr("nearer the strings by") : words::whatIfRemark(read, supposed));
    const double middle = row.center().y();
    const auto x = [&](double mm) {
        return track.left() + track.width() * (mm - handle.low) / (handle.high - handle.low);
    };
    static const std::optional<Zone> none;
    const Cell cell{m_desk.bench().note(), handle.id};
    if (const auto& zone = handle.rail ? none : m_desk.bench().zones().at(cell)) {
        const double low = zone->low ? toTrade(*zone->low, Kind::length) : handle.low;
        const double high = zone->high ? toTrade(*zone->high, Kind::length) : handle.high;
        const QRectF good(x(std::max(low, handle.low)), middle - units(2.4), 0, units(4.8));
        painter.setPen(QPen(ink(style.look.edge), 1));
        painter.setBrush(zoneColour(style));
        painter.drawRect(QRectF(good.left(), good.top(), x(std::min(high, handle.high)) - good.left(), good.height()));
    }
    painter.setPen(QPen(ink(style.look.ink2), 1));
    painter.drawLine(QPointF(track.left(), middle), QPointF(track.right(), middle));
    if (read) {
        painter.setPen(dashedPen(style, 0.5));
        painter.drawLine(QPointF(x(*read), middle - units(3)), QPointF(x(*read), middle + units(3)));
    }
    const auto value = valueOf(handle);
    if (read && supposed)
        painter.fillRect(QRectF(std::min(x(*read), x(*supposed)), middle - 1.5, std::abs(x(*supposed) - x(*read)), 3),
                         ink(style.look.ink));
    if (value) {
        painter.setPen(QPen(ink(style.look.paper), 1));
        painter.setBrush(ink(style.look.ink));
        painter.drawRoundedRect(QRectF(x(*value) - units(1.1), middle - units(2.6), units(2.2), units(5.2)), units(0.5),
                                units(0.5));
    }
    painter.setPen(ink(style.look.ink));
    drawnText(painter, style, style.strong, {width() - units(3), middle + units(1.5)},
              value && handle.rail ? words::railValue(*value)
              : value              ? words::whatIfValue(handle.id, *value)
                                   : QString(QChar(0x2013)), // the line below the name says that it is not read
              Qt::AlignRight);
    if (here && (hasFocus() || parentWidget()->hasFocus())) paintRing(painter, row, style.look, true);
}

void WhatIf::paintOutcome(QPainter& painter, double top) {
    const DrawnStyle style = screenStyle(*this);
    const NoteAction& action = m_desk.note();
    if (m_desk.rail() != 0) return paintRail(painter, top);
    if (!m_desk.supposes()) {
        painter.setPen(ink(style.look.ink2));
        drawnText(painter, style, style.plain, {units(3), top + units(6)}, tr("Shift and an arrow move a handle;"));
        drawnText(painter, style, style.plain, {units(3), top + units(10.6)},
                  tr("account, stroke and drawing follow."));
        return;
    }
    painter.fillRect(QRectF(0, top, width(), units(kOutcomeHigh)), ink(style.look.sel));
    painter.setPen(ink(style.look.ink));
    drawnText(painter, style, style.strong, {units(3), top + units(6.2)}, words::outcomeText(action));
    painter.setPen(ink(style.look.ink2));
    drawnText(painter, style, style.plain, {units(3), top + units(11.6)}, words::outcomeRemark(action));
    painter.setFont(face(Text::label));
    painter.setPen(ink(style.look.ink));
    double x = units(3);
    const double y = top + units(kOutcomeHigh + 6);
    x = paintKeyCap(painter, x, y, tr("Enter"), style.look) + units(1.5);
    painter.setFont(style.plain);
    painter.setPen(ink(style.look.ink2));
    drawnText(painter, style, style.plain, {x, y + units(1)}, tr("take over as aim for this note"));
    x = paintKeyCap(painter, units(3), y + units(8), tr("Del"), style.look) + units(1.5);
    painter.setPen(ink(style.look.ink2));
    drawnText(painter, style, style.plain, {x, y + units(9)}, tr("put this one back"));
}

void WhatIf::paintRail(QPainter& painter, double top) {
    const DrawnStyle style = screenStyle(*this);
    painter.fillRect(QRectF(0, top, width(), units(kOutcomeHigh)), ink(style.look.sel));
    painter.setPen(ink(style.look.ink));
    drawnText(painter, style, style.strong, {units(3), top + units(6.2)}, words::railOutcome(m_desk.notesWithin()));
    painter.setPen(ink(style.look.ink2));
    drawnText(painter, style, style.plain, {units(3), top + units(11.6)}, words::railRemark(m_desk.capstansFollow()));
    const double y = top + units(kOutcomeHigh + 6);
    painter.setFont(face(Text::label));
    const double x = paintKeyCap(painter, units(3), y, tr("C"), style.look) + units(1.5);
    painter.setPen(ink(style.look.ink2));
    drawnText(painter, style, style.plain, {x, y + units(1)},
              m_desk.capstansFollow() ? tr("capstans stay as they are") : tr("capstans follow the rail"));
}

void WhatIf::mousePressEvent(QMouseEvent* event) {
    parentWidget()->setFocus();
    const auto all = handles();
    for (std::size_t i = 0; i < all.size(); ++i)
        if (rowBox(i).contains(event->position())) m_current = i;
    update();
    mouseMoveEvent(event);
}

void WhatIf::mouseMoveEvent(QMouseEvent* event) {
    const auto all = handles();
    if (m_current >= all.size()) return;
    const QRectF track = trackBox(m_current);
    const double x = event->position().x();
    const bool onTrack = x >= track.left() - units(2) && x <= track.right() + units(2);
    const bool inRow = rowBox(m_current).contains(event->position());
    if (!onTrack || !inRow) return;
    const Handle& handle = all[m_current];
    moveTo(m_current, handle.low + (x - track.left()) / track.width() * (handle.high - handle.low));
}

} // namespace hammerline
