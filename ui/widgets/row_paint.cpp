#include "ui/widgets/row_paint.h"

#include "ui/widgets/marks.h"

#include <QPainter>
#include <QPainterPath>

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

constexpr double kPhraseGap = 1.5;   // between direction, "to" and aim
constexpr double kLeastShrink = 0.6; // of a direction's size, before it is cut

void paintText(QPainter& painter, const QRect& r, const RowCell& cell, Qt::Alignment align, const Look& look) {
    QFont font = face(cell.size, cell.bold);
    font.setItalic(cell.italic);
    // a direction is never cut: a long one is set smaller
    if (const double width = noteWidth(cell.text, font); cell.kind == RowCell::Kind::turn && width > r.width())
        font.setPointSizeF(font.pointSizeF() * std::max(kLeastShrink, r.width() / width * 0.98));
    painter.setFont(font);
    painter.setPen(QColor::fromRgb(cell.italic ? look.ink3 : cell.soft ? look.ink2 : look.ink));
    const QFontMetricsF metrics(font);
    const QString text =
        noteWidth(cell.text, font) <= r.width() ? cell.text : metrics.elidedText(cell.text, Qt::ElideRight, r.width());
    const double width = noteWidth(text, font);
    const double x = align & Qt::AlignRight     ? r.right() + 1 - width
                     : align & Qt::AlignHCenter ? r.left() + (r.width() - width) / 2
                                                : r.left();
    paintNote(painter, {x, r.center().y() + metrics.capHeight() / 2 + 1}, text);
}

/// "33 F3": the number bold and right-aligned, its key, the pitch.
void paintNoteCell(QPainter& painter, const QRect& r, const RowCell& cell, const Look& look) {
    const auto blank = cell.text.indexOf(QLatin1Char(' '));
    RowCell number(cell.text.left(blank), cell.bold), pitch(cell.text.mid(blank + 1));
    number.size = Text::listDigits;
    paintText(painter, QRect(r.left(), r.top(), u(6.5), r.height()), number, Qt::AlignRight, look);
    const QRectF key(r.left() + u(8), r.center().y() - units(1.5), units(1.5), units(3.2));
    paintSwatch(painter, key, cell.sharp, look);
    paintText(painter, r.adjusted(u(11), 0, 0, 0), pitch, Qt::AlignLeft, look);
}

void paintPlate(QPainter& painter, const QRect& r, const RowCell& cell, const Look& look) {
    const int marks = std::min(3, std::abs(cell.marks));
    const RampStop& stop = look.stop(marks, cell.marks > 0);
    const QRectF box = QRectF(r).adjusted(0, units(0.9), 0, -units(0.9));
    QFont font = face(cell.size, cell.bold);
    double sign = units(2);
    if (marks > 0) {
        // marks and text never meet: in a narrow plate the marks shrink first, then the text
        const double room = box.width() - units(3.75), text = QFontMetricsF(font).horizontalAdvance(cell.text);
        if (const double wide = triangleWidth(marks, sign); wide + text > room)
            sign *= std::clamp((room - text) / wide, kLeastShrink, 1.0);
        if (const double left = room - triangleWidth(marks, sign); text > left)
            font.setPointSizeF(font.pointSizeF() * std::max(kLeastShrink, left / text));
        painter.setPen(QPen(QColor::fromRgb(look.edge), 1));
        painter.setBrush(QColor::fromRgb(stop.fill));
        painter.drawRoundedRect(box.adjusted(0.5, 0.5, -0.5, -0.5), units(0.6), units(0.6));
        paintTriangles(painter, box.left() + units(1.5), box.center().y(), marks, cell.marks > 0,
                       QColor::fromRgb(stop.text), sign);
    }
    painter.setFont(font);
    painter.setPen(QColor::fromRgb(marks > 0 ? stop.text : look.ink));
    painter.drawText(box.adjusted(units(1), 0, -units(1.5), 0), Qt::AlignRight | Qt::AlignVCenter, cell.text);
}

/// The zone shaded from -1 to +1 on a rule from -4 to +4, a pointer where the reading lies, the excess in colour.
void paintRule(QPainter& painter, const QRect& r, const RowCell& cell, const Look& look) {
    const double middle = r.center().y(), half = r.width() / 2.0, unit = half / 4;
    const double centre = r.left() + half;
    painter.setPen(QPen(QColor::fromRgb(look.edge), 1));
    painter.drawLine(QPointF(r.left(), middle), QPointF(r.right(), middle));
    const QRectF zone(centre - unit, middle - units(1.9), 2 * unit, units(3.8));
    painter.setBrush(QColor::fromRgb(look.zone));
    painter.drawRect(zone);
    painter.drawLine(QPointF(centre, zone.top()), QPointF(centre, zone.bottom()));
    const double at = centre + std::clamp(cell.value, -4.0, 4.0) * unit;
    if (std::abs(cell.value) > 1) {
        const double edge = cell.value > 0 ? zone.right() : zone.left();
        painter.setBrush(
            QColor::fromRgb(look.stop(std::max(1, std::min(3, std::abs(cell.marks))), cell.value > 0).fill));
        painter.drawRect(
            QRectF(QPointF(std::min(edge, at), middle - units(1)), QPointF(std::max(edge, at), middle + units(1))));
    }
    painter.fillRect(QRectF(at - 1.5, middle - units(2.2), 3, units(4.4)), QColor::fromRgb(look.ink));
}

/// Hollow before over solid now.
void paintBars(QPainter& painter, const QRect& r, const RowCell& cell, const Look& look) {
    const double most = std::max(cell.most, 1.0), height = units(1.5);
    const double top = r.center().y() - height;
    painter.setPen(QPen(QColor::fromRgb(look.ink), 1));
    painter.setBrush(Qt::NoBrush);
    if (cell.value > 0)
        painter.drawRect(QRectF(r.left() + 0.5, top + 0.5, std::round(r.width() * cell.value / most), height - 1));
    if (cell.now > 0)
        painter.fillRect(QRectF(r.left(), top + height + 1, std::round(r.width() * cell.now / most) + 1, height - 1),
                         QColor::fromRgb(look.ink));
}

void paintTick(QPainter& painter, const QPointF& middle, double size, const Look& look) {
    painter.setPen(QPen(QColor::fromRgb(look.ink), size * 0.16, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin));
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(QPolygonF{{middle + QPointF(-size * 0.3, 0), middle + QPointF(-size * 0.08, size * 0.24),
                                    middle + QPointF(size * 0.32, -size * 0.26)}});
}

void paintBox(QPainter& painter, const QRect& r, const RowCell& cell, const Look& look) {
    const double size = units(4.4);
    const QRectF box(r.left(), r.center().y() - size / 2 + 0.5, size, size);
    painter.setPen(QPen(QColor::fromRgb(look.ink), 2));
    painter.setBrush(QColor::fromRgb(look.paper));
    painter.drawRoundedRect(box, units(0.6), units(0.6));
    if (cell.part == 2) paintTick(painter, box.center(), size, look);
    if (cell.part == 3) paintNotch(painter, box, QColor::fromRgb(look.ink), QColor::fromRgb(look.paper));
}

/// Open ring, part-filled, ticked, notch; dashed where it waits, with a point where something is to be read.
void paintState(QPainter& painter, const QRect& r, const RowCell& cell, const Look& look) {
    const double size = units(3.4);
    const QRectF box(r.left(), r.center().y() - size / 2 + 0.5, size, size);
    if (cell.part == 3) return paintNotch(painter, box, QColor::fromRgb(look.ink), QColor::fromRgb(look.paper));
    const bool waits = cell.part == 4;
    painter.setPen(QPen(QColor::fromRgb(cell.part == 2 ? look.ink
                                        : waits        ? look.ink3
                                                       : look.ink2),
                        1.6, waits ? Qt::DotLine : Qt::SolidLine));
    painter.setBrush(cell.part == 2 ? QBrush(QColor::fromRgb(look.ink)) : Qt::NoBrush);
    painter.drawEllipse(box);
    if (cell.part == 1) {
        painter.setBrush(QColor::fromRgb(look.ink));
        painter.drawPie(box.adjusted(2, 2, -2, -2), 90 * 16, -150 * 16);
    }
    if (cell.part == 5) {
        painter.setPen(Qt::NoPen);
        painter.setBrush(QColor::fromRgb(look.ink));
        painter.drawEllipse(box.center(), size * 0.16, size * 0.16);
    }
    if (cell.part == 2) {
        Look inverse = look;
        inverse.ink = look.paper;
        paintTick(painter, box.center(), size, inverse);
    }
}

void paintSign(QPainter& painter, const QRect& r, const RowCell& cell, const Look& look) {
    using Sign = RowCell::Sign;
    const double radius = units(1.7);
    const QPointF c(r.left() + units(2.5), r.center().y() + 0.5);
    painter.save();
    painter.translate(c);
    if (cell.sign == Sign::clockwise) painter.scale(-1, 1);
    painter.setPen(QPen(QColor::fromRgb(look.ink), std::max(1.6, radius * 0.26), Qt::SolidLine, Qt::FlatCap));
    painter.setBrush(Qt::NoBrush);
    const auto head = [&](QPointF tip, QPointF back) {
        const QPointF side(-(tip - back).y() * 0.6, (tip - back).x() * 0.6);
        painter.setBrush(QColor::fromRgb(look.ink));
        painter.setPen(Qt::NoPen);
        painter.drawPolygon(QPolygonF{{tip, back + side, back - side}});
    };
    switch (cell.sign) {
    case Sign::clockwise:
    case Sign::anticlockwise: {
        painter.drawArc(QRectF(-radius, -radius, 2 * radius, 2 * radius), -150 * 16, 270 * 16);
        const double angle = 120 * M_PI / 180;
        const QPointF end(radius * std::cos(angle), -radius * std::sin(angle));
        const QPointF along(-std::sin(angle), -std::cos(angle));
        head(end + along * radius * 0.75, end - along * radius * 0.2);
        break;
    }
    case Sign::add:
        painter.drawLine(QPointF(0, -radius), QPointF(0, radius));
        [[fallthrough]];
    case Sign::remove:
        painter.drawLine(QPointF(-radius, 0), QPointF(radius, 0));
        break;
    case Sign::toward:
    case Sign::away: {
        painter.drawLine(QPointF(-radius * 0.6, 0), QPointF(radius * 0.6, 0));
        painter.drawLine(QPointF(radius, -radius * 0.8), QPointF(radius, radius * 0.8));
        const double tip = cell.sign == Sign::toward ? radius * 0.85 : -radius;
        head({tip, 0}, {tip + (tip > 0 ? -radius * 0.7 : radius * 0.7), 0});
        break;
    }
    case Sign::look:
        painter.drawEllipse(QPointF(0, 0), radius * 0.6, radius * 0.6);
        break;
    case Sign::none:
        break;
    }
    painter.restore();
}

/// The small line or lines below a cell; gives the rest above them.
QRect paintBelow(QPainter& painter, const QRect& r, const RowCell& cell, int left, Qt::Alignment align,
                 const Look& look) {
    if (cell.below.isEmpty()) return r;
    const int line = QFontMetrics(face(Text::label)).height();
    QRect rest = r;
    const QStringList lines = cell.below.split(QLatin1Char('\n'));
    for (auto text = lines.rbegin(); text != lines.rend(); ++text) {
        RowCell small = soft(*text);
        small.size = Text::label;
        rest.adjust(0, 0, 0, -line);
        paintText(painter, QRect(r.left() + left, rest.bottom(), r.width() - left, line), small, align, look);
    }
    return rest;
}

/// Sign, direction, "to" and aim as one run.
void paintPhrase(QPainter& painter, const QRect& whole, const RowCell& cell, const Look& look) {
    const QRect r = paintBelow(painter, whole, cell, u(6), Qt::AlignLeft, look);
    paintSign(painter, r, cell, look);
    const QFont large = face(Text::aim, cell.bold), small = face(Text::body);
    double x = r.left() + units(6);
    const double base = r.center().y() + QFontMetricsF(large).capHeight() / 2 + 1;
    for (const auto& [text, font, ink] :
         {std::tuple{cell.text, large, look.ink}, {cell.joint, small, look.ink2}, {cell.aim, large, look.ink}}) {
        if (text.isEmpty()) continue;
        painter.setFont(font);
        painter.setPen(QColor::fromRgb(ink));
        paintNote(painter, {x, base}, text);
        x += noteWidth(text, font) + units(kPhraseGap);
    }
}

void paintCell(QPainter& painter, const QRect& r, const RowCell& cell, Qt::Alignment align, const Look& look) {
    using Kind = RowCell::Kind;
    switch (cell.kind) {
    case Kind::note:
        return paintNoteCell(painter, r, cell, look);
    case Kind::plate:
        return paintPlate(painter, paintBelow(painter, r, cell, 0, Qt::AlignRight, look), cell, look);
    case Kind::phrase:
        return paintPhrase(painter, r, cell, look);
    case Kind::rule:
        return paintRule(painter, r, cell, look);
    case Kind::bars:
        return paintBars(painter, r, cell, look);
    case Kind::tick:
        return paintBox(painter, r, cell, look);
    case Kind::state:
        paintState(painter, r, cell, look);
        return paintText(painter, r.adjusted(u(5), 0, 0, 0), cell, align, look);
    case Kind::turn:
        paintSign(painter, r, cell, look);
        return paintText(painter, r.adjusted(u(6), 0, 0, 0), cell, align, look);
    case Kind::plain:
        return paintText(painter, r, cell, align, look);
    }
}

} // namespace

/// Drawn things have a least size of their own.
int neededWidth(const RowCell& cell) {
    QFont font = face(cell.size, cell.bold);
    font.setItalic(cell.italic);
    const double text = noteWidth(cell.text, font);
    const auto beside = [&](double n) { return static_cast<int>(std::ceil(units(n) + text)); };
    switch (cell.kind) {
    case RowCell::Kind::note: {
        const QString pitch = cell.text.mid(cell.text.indexOf(QLatin1Char(' ')) + 1);
        return static_cast<int>(std::ceil(units(11) + noteWidth(pitch, face(Text::body))));
    }
    case RowCell::Kind::plate: {
        const double below = noteWidth(cell.below, face(Text::label));
        const double marks = triangleWidth(std::min(3, std::abs(cell.marks)), units(2) * kLeastShrink);
        const double plate = cell.marks == 0 ? units(2.5) + text : units(3.75) + kLeastShrink * text + marks;
        return static_cast<int>(std::ceil(std::max(plate, below)));
    }
    case RowCell::Kind::phrase: {
        double run = noteWidth(cell.text, face(Text::aim, cell.bold));
        for (const auto& [rest, type] :
             {std::pair{cell.joint, face(Text::body)}, {cell.aim, face(Text::aim, cell.bold)}})
            if (!rest.isEmpty()) run += units(kPhraseGap) + noteWidth(rest, type);
        for (const QString& line : cell.below.split(QLatin1Char('\n')))
            run = std::max(run, noteWidth(line, face(Text::label)));
        return static_cast<int>(std::ceil(units(6) + run + 1));
    }
    case RowCell::Kind::rule:
        return u(10);
    case RowCell::Kind::bars:
        return u(8);
    case RowCell::Kind::tick:
        return u(5);
    case RowCell::Kind::turn:
        return static_cast<int>(std::ceil(units(6) + text * kLeastShrink));
    case RowCell::Kind::state:
        return beside(5);
    case RowCell::Kind::plain:
        return static_cast<int>(std::ceil(text));
    }
    return 0;
}

void RowDelegate::paintHeading(QPainter& painter, const QRect& r, const ListRow& row, const Look& look) const {
    painter.fillRect(r, QColor::fromRgb(look.head));
    painter.setPen(QColor::fromRgb(look.ink));
    painter.setFont(face(Text::label, true));
    const QRect text = r.adjusted(u(3), 0, -u(3), 0);
    painter.drawText(text, Qt::AlignLeft | Qt::AlignVCenter, row.heading);
    painter.setFont(face(Text::label));
    painter.setPen(QColor::fromRgb(look.ink2));
    painter.drawText(text, Qt::AlignRight | Qt::AlignVCenter, row.headingRight);
}

void RowDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const auto* model = static_cast<const RowModel*>(index.model());
    const ListRow& row = model->row(index.row());
    const Look& look = lookOf(*m_table);
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    if (!row.heading.isEmpty()) {
        paintHeading(*painter, option.rect, row, look);
    } else {
        const bool current = index.row() == m_table->currentIndex().row();
        painter->fillRect(option.rect, QColor::fromRgb(current ? look.sel : look.paper));
        painter->fillRect(QRect(option.rect.left(), option.rect.bottom(), option.rect.width(), 1),
                          QColor::fromRgb(look.line));
        const auto column = static_cast<std::size_t>(index.column());
        if (column < row.cells.size())
            paintCell(*painter, option.rect.adjusted(u(2), 0, -u(2), -1), row.cells[column],
                      model->columns()[column].align, look);
        if (current && m_table->hasFocus()) {
            // One ring around the whole row, painted in pieces by its cells.
            const int last = model->columnCount() - 1;
            QRect whole = option.rect;
            whole.setLeft(m_table->columnViewportPosition(0));
            whole.setRight(m_table->columnViewportPosition(last) + m_table->columnWidth(last) - 1);
            painter->setClipRect(option.rect);
            painter->setPen(QPen(QColor::fromRgb(look.ring), 3));
            painter->setBrush(Qt::NoBrush);
            painter->drawRect(QRectF(whole).adjusted(1.5, 1.5, -1.5, -1.5));
        }
    }
    painter->restore();
}

} // namespace hammerline
