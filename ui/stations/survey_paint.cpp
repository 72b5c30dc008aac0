#include "ui/stations/survey_paint.h"

#include "ui/stations/survey_view.h"
#include "ui/widgets/marks.h"
#include "ui/words/survey_names.h"

#include <QPainter>

namespace hammerline {

namespace {

using PlaceKind = SurveyModel::Place;

/// The sign's field: narrower than high, as a key is.
QRectF signRect(const QRectF& cell) {
    const double height = std::min(cell.height() - units(1), units(3.25));
    const double width = std::min(cell.width() - units(0.75), units(2.25));
    return {cell.center().x() - width / 2, cell.center().y() - height / 2, width, height};
}

struct Sign {
    PlaceKind place;
    const char* name;
};
constexpr std::array kSigns = {
    Sign{PlaceKind::notLookedAt, QT_TRANSLATE_NOOP("hammerline::SurveyLegend", "not looked at")},
    Sign{PlaceKind::sound, QT_TRANSLATE_NOOP("hammerline::SurveyLegend", "sound")},
    Sign{PlaceKind::watch, QT_TRANSLATE_NOOP("hammerline::SurveyLegend", "watch")},
    Sign{PlaceKind::toDo, QT_TRANSLATE_NOOP("hammerline::SurveyLegend", "to do")},
    Sign{PlaceKind::blocks, QT_TRANSLATE_NOOP("hammerline::SurveyLegend", "mend first")},
    Sign{PlaceKind::mended, QT_TRANSLATE_NOOP("hammerline::SurveyLegend", "mended")},
    Sign{PlaceKind::notFitted, QT_TRANSLATE_NOOP("hammerline::SurveyLegend", "not fitted")},
};

} // namespace

void paintPlace(QPainter& painter, const QRectF& cell, PlaceKind place, const Look& look, const QColor& ground) {
    const QColor ink = QColor::fromRgb(look.ink);
    const QRectF box = signRect(cell);
    painter.save();
    painter.setRenderHint(QPainter::Antialiasing, place == PlaceKind::sound || place == PlaceKind::mended);
    switch (place) {
    case PlaceKind::notFitted:
        paintHatch(painter, cell, QColor::fromRgb(look.line));
        break;
    case PlaceKind::notLookedAt:
        break;
    case PlaceKind::sound:
        painter.setPen(Qt::NoPen);
        painter.setBrush(QColor::fromRgb(look.ink2));
        painter.drawEllipse(cell.center(), units(0.3), units(0.3));
        break;
    case PlaceKind::watch:
        painter.setPen(QPen(ink, std::max(1.0, units(0.35))));
        painter.setBrush(ground);
        painter.drawRect(box.adjusted(0.5, 0.5, -0.5, -0.5));
        break;
    case PlaceKind::toDo:
        painter.fillRect(box, ink);
        break;
    case PlaceKind::blocks:
        paintNotch(painter, box, ink, ground);
        break;
    case PlaceKind::mended:
        paintTick(painter, box, ink);
        break;
    }
    painter.restore();
}

PlaceDelegate::PlaceDelegate(SurveyView& view) : QStyledItemDelegate(&view), m_view(view) {}

void PlaceDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    const Look& look = lookOf(m_view);
    const NoteNumber note{index.column() + 1};
    const NoteAxis& axis = m_view.axis();
    // The column runs on over the gap at a section break; the cell does not.
    QRect cell = option.rect;
    cell.setWidth(axis.width(note));
    if (cell.width() < option.rect.width())
        painter->fillRect(QRect(cell.right() + 1, cell.top(), option.rect.width() - cell.width(), cell.height()),
                          QColor::fromRgb(look.head));
    const bool current = m_view.currentIndex() == index;
    const bool chosen = option.state.testFlag(QStyle::State_Selected);
    const bool crossing =
        m_view.currentIndex().row() == index.row() || m_view.currentIndex().column() == index.column();
    const QColor ground = QColor::fromRgb(chosen || crossing ? look.sel : index.row() % 2 ? look.paper : look.paper2);
    painter->fillRect(cell, ground);
    if (note.value % 5 == 0) {
        painter->setPen(QColor::fromRgb(look.line));
        painter->drawLine(cell.topRight(), cell.bottomRight());
    }
    paintPlace(*painter, cell, m_view.survey().place(index.row(), index.column()), look, ground);
    if (chosen && !current) {
        painter->setPen(QPen(QColor::fromRgb(look.edge), 1));
        painter->drawRect(QRectF(cell).adjusted(0.5, 0.5, -0.5, -0.5));
    }
    if (current && m_view.hasFocus())
        paintRing(*painter, cell, look, true);
    else if (current) {
        painter->setPen(QPen(QColor::fromRgb(look.ink), 1));
        painter->drawRect(QRectF(cell).adjusted(0.5, 0.5, -0.5, -0.5));
    }
}

NoteNumberHeader::NoteNumberHeader(SurveyView& view) : QHeaderView(Qt::Horizontal, &view), m_view(view) {
    setSectionResizeMode(Fixed);
    setMinimumSectionSize(1);
    setFixedHeight(u(5.5));
    setSectionsClickable(false);
}

void NoteNumberHeader::paintEvent(QPaintEvent*) {
    QPainter painter(viewport());
    const Look& look = lookOf(*this);
    painter.fillRect(rect(), QColor::fromRgb(look.head));
    const int current = m_view.currentIndex().column() + 1;
    for (int i = 1; i <= count(); ++i) {
        const bool now = i == current;
        const bool near = std::abs(i - current) < 2 && !now;
        if (!now && (near || (i != 1 && i % 5 != 0))) continue;
        const QRect place(sectionViewportPosition(i - 1), 0, m_view.axis().width(NoteNumber{i}), height());
        painter.setFont(face(Text::tiny, now));
        painter.setPen(QColor::fromRgb(now ? look.ink : look.ink2));
        painter.drawText(place.adjusted(-u(3), 0, u(3), 0), Qt::AlignCenter, QString::number(i));
    }
}

PartHeader::PartHeader(SurveyView& view) : QHeaderView(Qt::Vertical, &view), m_view(view) {
    setSectionResizeMode(Fixed);
    setMinimumSectionSize(1);
    setSectionsClickable(false);
}

void PartHeader::paintSection(QPainter* painter, const QRect& rect, int row) const {
    const Look& look = lookOf(*this);
    const bool now = m_view.currentIndex().row() == row;
    painter->fillRect(rect, QColor::fromRgb(now ? look.sel : row % 2 ? look.paper : look.paper2));
    painter->setFont(face(Text::label, now));
    painter->setPen(QColor::fromRgb(look.ink));
    const QRect text = rect.adjusted(u(3), 0, -u(1), 0);
    painter->drawText(text, Qt::AlignVCenter | Qt::AlignLeft, nameIn(text.width(), row, painter->fontMetrics()));
}

/// "Action brackets" for "Action brackets, rail ends" where there is no room and no other row is called so.
QString PartHeader::nameIn(int width, int row, const QFontMetrics& metrics) const {
    const auto nameOf = [this](int r) { return words::partOfActionName(m_view.survey().part(r).key); };
    const QString name = nameOf(row), first = name.section(u',', 0, 0);
    if (metrics.horizontalAdvance(name) <= width) return name;
    for (int r = 0; r < count(); ++r)
        if (r != row && nameOf(r).section(u',', 0, 0) == first) return metrics.elidedText(name, Qt::ElideRight, width);
    return metrics.elidedText(first, Qt::ElideRight, width);
}

SurveyLegend::SurveyLegend(QWidget* parent) : QWidget(parent) {
    setFont(face(Text::label));
    setAccessibleName(tr("Signs of the survey"));
}

QSize SurveyLegend::sizeHint() const {
    int width = 0;
    for (const Sign& sign : kSigns)
        width += u(4.5) + fontMetrics().horizontalAdvance(tr(sign.name)) + u(3);
    return {width, u(7)};
}

void SurveyLegend::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    const Look& look = lookOf(*this);
    double x = 0;
    for (const Sign& sign : kSigns) {
        if (x + units(4.5) + fontMetrics().horizontalAdvance(tr(sign.name)) > width()) return; // none is cut
        const QRectF cell(x, (height() - units(4.25)) / 2, units(3.4), units(4.25));
        const QRectF frame = signRect(cell).adjusted(0.5, 0.5, -0.5, -0.5);
        painter.setPen(QPen(ink(look.edge), 1, Qt::DotLine));
        if (sign.place == PlaceKind::notLookedAt) painter.drawRect(frame);
        if (sign.place == PlaceKind::notFitted) // one small square: darker than over a whole table
            paintHatch(painter, frame, ink(look.ink2));
        else
            paintPlace(painter, cell, sign.place, look, ink(look.head));
        painter.setPen(QColor::fromRgb(look.ink));
        painter.drawText(QPointF(x + units(4.5), height() / 2.0 + fontMetrics().ascent() / 2.0 - 1), tr(sign.name));
        x += units(4.5) + fontMetrics().horizontalAdvance(tr(sign.name)) + units(3);
    }
}

} // namespace hammerline
