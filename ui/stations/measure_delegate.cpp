#include "ui/stations/measure_delegate.h"

#include "ui/stations/measure_editor.h"
#include "ui/widgets/marks.h"
#include "ui/words/words.h"

namespace hammerline {

namespace {

constexpr double kSide = 2, kTriangle = 2, kMarkGap = 0.75, kStep = 2.5, kMarkLeft = 1.25, kLeastMark = 0.5;

/// Everything one cell is painted from.
struct Cellpaint {
    const CellLook& cell;
    const Look& look;
    QRect box;
    QColor ink;
    bool current;
};

/// Gives the width of what was painted.
double paintNumber(QPainter& painter, const Cellpaint& p) {
    using As = CellLook::State;
    const QRect room = p.box.adjusted(u(1), 0, -u(kSide), 0);
    const bool word = p.cell.state == As::word;
    QFont font = face(word ? Text::body : Text::digits, p.current);
    if (p.cell.state == As::expected) font.setItalic(true);
    painter.setFont(font);
    painter.setPen(p.ink);
    painter.drawText(room, Qt::AlignRight | Qt::AlignVCenter, p.cell.text);
    if (p.cell.state == As::expected) {
        const QFontMetrics metrics(font);
        const int w = metrics.horizontalAdvance(p.cell.text);
        const int base = p.box.center().y() + metrics.capHeight() / 2 + u(1);
        painter.setPen(QPen(p.ink, 1, Qt::DotLine));
        painter.drawLine(room.right() - w, base, room.right(), base);
        const double y = p.box.center().y() + 0.5, x = room.right() - w - units(2);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(QPen(p.ink, 1));
        painter.drawLine(QPointF(x - units(2), y), QPointF(x, y));
        painter.drawLine(QPointF(x - units(0.7), y - units(0.7)), QPointF(x, y));
        painter.drawLine(QPointF(x - units(0.7), y + units(0.7)), QPointF(x, y));
        painter.setRenderHint(QPainter::Antialiasing, false);
    }
    const double number = QFontMetricsF(font).horizontalAdvance(p.cell.text);
    if (p.cell.aside.isEmpty()) return number;
    painter.setFont(face(Text::tiny));
    const double beside = QFontMetricsF(face(Text::tiny)).horizontalAdvance(p.cell.aside) + units(1.5);
    painter.drawText(QRectF(room).adjusted(0, 0, -number - units(1.5), 0), Qt::AlignRight | Qt::AlignVCenter,
                     p.cell.aside);
    return number + beside;
}

/// What the marks have to be drawn smaller by, so that they never meet the number.
double markScale(const Cellpaint& p, double numberWidth) {
    double wide = triangleWidth(p.cell.marks, units(kTriangle));
    if (p.cell.marks > 0) wide += units(kMarkGap);
    if (p.cell.undecided) wide += units(3);
    if (p.cell.uneven) wide += units(kStep) * 1.25 + units(kMarkGap);
    const double room = p.box.width() - units(kMarkLeft) - numberWidth - units(kSide);
    return wide > room ? std::clamp(room / wide, kLeastMark, 1.0) : 1.0;
}

void paintMarks(QPainter& painter, const Cellpaint& p, double numberWidth) {
    const double middle = p.box.center().y() + 0.5, scale = markScale(p, numberWidth);
    double x = p.box.left() + units(kMarkLeft);
    if (p.cell.marks > 0)
        x = paintTriangles(painter, x, middle, p.cell.marks, p.cell.high, p.ink, units(kTriangle) * scale) +
            units(kMarkGap) * scale;
    if (p.cell.undecided) {
        painter.setFont(face(Text::body, true));
        painter.setPen(p.ink);
        painter.drawText(QRectF(p.box.left() + units(1.5), p.box.top(), units(4), p.box.height()), Qt::AlignVCenter,
                         QStringLiteral("?"));
        x += units(3) * scale;
    }
    if (p.cell.uneven) paintStep(painter, x, middle, p.ink, units(kStep) * scale);
}

void paintFrames(QPainter& painter, const Cellpaint& p) {
    if (p.cell.undecided) {
        painter.setPen(QPen(QColor::fromRgb(p.look.ink2), 1.5, Qt::DashLine));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(QRectF(p.box).adjusted(2.5, 2.5, -3, -3));
    }
    if (p.cell.superseded || p.cell.disputed) {
        const double s = units(2);
        const QPointF corner(p.box.right(), p.box.top());
        painter.setRenderHint(QPainter::Antialiasing);
        painter.setPen(Qt::NoPen);
        painter.setBrush(QColor::fromRgb(p.cell.disputed     ? p.look.fault
                                         : p.cell.marks == 0 ? p.look.ink2
                                                             : p.ink.rgb()));
        painter.drawPolygon(QPolygonF{{corner, corner - QPointF(s, 0), corner + QPointF(0, s)}});
        painter.setRenderHint(QPainter::Antialiasing, false);
    }
}

void paintBand(QPainter& painter, const QRect& whole, const QModelIndex& index, const Look& look) {
    if (!index.data(MeasureModel::SectionStartRole).toBool()) return;
    const QRect band(whole.left(), whole.top(), whole.width(), sectionBandHeight());
    painter.fillRect(band, QColor::fromRgb(look.head));
    painter.fillRect(QRect(band.left(), band.top(), band.width(), 1), QColor::fromRgb(look.edge));
}

} // namespace

int sectionBandHeight() {
    return u(5.5);
}

ReadingDelegate::ReadingDelegate(Workbench&, QObject* parent) : QStyledItemDelegate(parent) {}

QRect ReadingDelegate::cellRect(const QRect& whole, const QModelIndex& index) {
    return index.data(MeasureModel::SectionStartRole).toBool() ? whole.adjusted(0, sectionBandHeight(), 0, 0) : whole;
}

std::pair<QRgb, QRgb> ReadingDelegate::inkAndGround(const CellLook& cell, bool sharpRow, bool currentRow,
                                                    const Look& look) {
    const QRgb plain = currentRow ? look.sel : sharpRow ? look.paper2 : look.paper;
    using As = CellLook::State;
    if (cell.marks > 0 && (cell.state == As::word || cell.state == As::number)) {
        const RampStop& stop = look.stop(cell.marks, cell.high);
        return {stop.text, stop.fill};
    }
    if (cell.state == As::expected || cell.state == As::empty || cell.state == As::dash) return {look.ink3, plain};
    if (cell.stale) return {look.ink2, plain};
    return {look.ink, plain};
}

void ReadingDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const auto* model = qobject_cast<const MeasureModel*>(index.model());
    if (!model) return;
    const Look& look = lookOf(option.palette);
    const CellLook& cell = model->lookAt(index);
    painter->save();
    paintBand(*painter, option.rect, index, look);
    const QRect box = cellRect(option.rect, index);
    const Cell at = model->cellAt(index);
    const bool sharp = colourOf(at.note, *model->bench().piano()) == KeyColour::sharp;
    const bool currentRow = at.note == model->bench().note();
    const bool current = currentRow && at.dimension == model->bench().dimension();
    const auto [ink, ground] = inkAndGround(cell, sharp, currentRow || (option.state & QStyle::State_Selected), look);
    painter->fillRect(box, QColor::fromRgb(ground));
    using As = CellLook::State;
    if (cell.state == As::notFitted) paintHatch(*painter, box, QColor::fromRgb(look.line));
    const Cellpaint p{cell, look, box.adjusted(0, 0, -1, -1), QColor::fromRgb(ink), current};
    if (cell.state == As::word || cell.state == As::number || cell.state == As::expected) {
        paintFrames(*painter, p);
        paintMarks(*painter, p, paintNumber(*painter, p));
    } else if (cell.state == As::dash || cell.state == As::empty) {
        painter->setFont(face(Text::digits));
        painter->setPen(p.ink);
        painter->drawText(p.box.adjusted(0, 0, -u(kSide), 0), Qt::AlignRight | Qt::AlignVCenter,
                          cell.state == As::dash ? QStringLiteral("\u2013") : QStringLiteral("\u00B7"));
    }
    if (model->mendFirst(index.row()) && index.column() == 0)
        painter->fillRect(QRect(box.left(), box.top(), u(1), box.height()), QColor::fromRgb(look.ink));
    // one hair line at the right and below; the section band has its own
    painter->fillRect(QRect(box.right(), box.top(), 1, box.height()), QColor::fromRgb(look.line));
    painter->fillRect(QRect(box.left(), box.bottom(), box.width(), 1), QColor::fromRgb(look.line));
    if (current && (option.state & QStyle::State_HasFocus)) {
        painter->setPen(QPen(QColor::fromRgb(look.halo), 2));
        painter->drawRect(QRectF(box).adjusted(4, 4, -5, -5));
        painter->setPen(QPen(QColor::fromRgb(look.ring), 3));
        painter->drawRect(QRectF(box).adjusted(1.5, 1.5, -2.5, -2.5));
    } else if (current) {
        painter->setPen(QPen(QColor::fromRgb(look.ring), 1));
        painter->drawRect(QRectF(box).adjusted(0.5, 0.5, -1.5, -1.5));
    }
    painter->restore();
}

QWidget* ReadingDelegate::createEditor(QWidget* parent, const QStyleOptionViewItem&, const QModelIndex& index) const {
    const auto* model = qobject_cast<const MeasureModel*>(index.model());
    if (!model) return nullptr;
    auto* editor = new ReadingEditor(model->bench(), model->cellAt(index), parent);
    editor->setAccessibleName(index.data(Qt::AccessibleTextRole).toString());
    return editor;
}

void ReadingDelegate::setEditorData(QWidget*, const QModelIndex&) const {
} // what was typed stays, whatever the model says

void ReadingDelegate::updateEditorGeometry(QWidget* editor, const QStyleOptionViewItem& option,
                                           const QModelIndex& index) const {
    if (auto* reading = qobject_cast<ReadingEditor*>(editor)) reading->placeAt(cellRect(option.rect, index));
}

bool ReadingDelegate::eventFilter(QObject*, QEvent*) {
    return false;
} // keys and focus belong to editor and view

} // namespace hammerline
