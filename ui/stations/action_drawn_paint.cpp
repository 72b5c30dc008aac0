// Where everything of page 3 stands, and its painting.
#include "ui/stations/action_drawn_page.h"
#include "ui/words/linkage_names.h"
#include "ui/words/moments.h"
#include "ui/words/words.h"

#include <QPaintEvent>
#include <QPainter>

namespace hammerline {

namespace {
constexpr double kDrawnMargin = 4, kMoments = 92, kSliderHigh = 15;      // units
constexpr double kBesideFrom = 200, kDrawingHigh = 92, kMomentHigh = 21; // units
} // namespace

/// The moments stand beside the drawing where there is room for both, else below it.
bool DrawnPage::beside(int wide) const {
    return wide >= u(kBesideFrom);
}

int DrawnPage::drawingWide() const {
    return beside(width()) ? width() - u(kMoments) : width();
}

int DrawnPage::drawingBottom() const {
    if (beside(width())) return height();
    return qRound(headHigh(width()) + units(kDrawingHigh + kSliderHigh + 2));
}

int DrawnPage::wantedHeight(int wide) const {
    if (!m_body) return 0;
    const double moments = units(4 + kMomentHigh * static_cast<double>(momentsOf(*m_body).size()));
    if (beside(wide)) return qRound(moments);
    return qRound(headHigh(wide) + units(kDrawingHigh + kSliderHigh + 2) + moments);
}

DrawnHead DrawnPage::head() const {
    QStringList said{tr("the distances are true, the links typical")};
    if (m_outline) said << tr("broken lines: as read");
    if (const QString aim = words::atAimSentence(*m_body); !aim.isEmpty()) said << aim;
    return {m_outline ? tr("After the plan, to scale") : tr("As read, to scale"),
            said.join(QStringLiteral(" \u00B7 "))};
}

double DrawnPage::headHigh(int wide) const {
    const double room = (beside(wide) ? wide - u(kMoments) : wide) - units(2 * kDrawnMargin);
    return m_body ? head().height(screenStyle(*this), room) : 0;
}

QRectF DrawnPage::sliderBox() const {
    const double wide = drawingWide();
    return {units(kDrawnMargin + 9), drawingBottom() - units(kSliderHigh), wide - units(2 * kDrawnMargin + 18),
            units(kSliderHigh)};
}

StrokeSlider DrawnPage::slider() const {
    return {sliderBox(), *m_body};
}

QRectF DrawnPage::drawingBox() const {
    const double top = headHigh(width());
    return {units(kDrawnMargin), top, drawingWide() - units(2 * kDrawnMargin),
            drawingBottom() - top - units(kSliderHigh + 2)};
}

LinkageScene DrawnPage::scene() const {
    LinkageScene out{.body = &*m_body,
                     .outline = m_outline ? &*m_outline : nullptr,
                     .travel = m_travel,
                     .travelOfOutline = m_travelOfOutline,
                     .caught = m_moment == Moment::check,
                     .names = true};
    out.letOffZone = desk().letOffZone();
    out.lensTitle = words::lensTitle();
    out.lensFigure = words::shown(dimension::letOff, fromTrade(m_body->linkage.distances().letOff, Kind::length));
    if (m_outline)
        out.lensRemark = words::lensRemark(
            words::shown(dimension::letOff, fromTrade(m_outline->linkage.distances().letOff, Kind::length)));
    return out;
}

void DrawnPage::paintEvent(QPaintEvent* event) {
    QPainter painter(this);
    const DrawnStyle style = screenStyle(*this);
    if (!desk().ready() || !m_body) {
        painter.fillRect(rect(), ink(style.look.paper));
        return paintUndrawn(painter, style);
    }
    painter.setRenderHint(QPainter::Antialiasing);
    const QRect drawing(0, 0, drawingWide(), drawingBottom());
    m_still.lay(painter, drawing, ink(style.look.paper), [&](QPainter& into) { paintStill(into, style); });
    paintLinkageMoving(painter, drawingBox(), scene(), style);
    slider().paintHandle(painter, style, m_travel, hasFocus());
    const QRect moments = beside(width()) ? QRect(drawingWide(), 0, width() - drawingWide(), height())
                                          : QRect(0, drawingBottom(), width(), height() - drawingBottom());
    if (!event->region().intersects(moments)) return;
    painter.fillRect(moments, ink(style.look.paper));
    paintMoments(painter, style);
}

void DrawnPage::paintUndrawn(QPainter& painter, const DrawnStyle& style) const {
    if (!desk().ready()) return paintNothing(painter);
    painter.setFont(face(Text::body));
    painter.setPen(ink(style.look.ink));
    painter.drawText(QRectF(units(kDrawnMargin), units(6), width() - units(2 * kDrawnMargin), units(40)),
                     Qt::AlignLeft | Qt::TextWordWrap, m_refused);
}

/// What a frame of the play does not change.
void DrawnPage::paintStill(QPainter& painter, const DrawnStyle& style) const {
    head().paint(painter, style, units(kDrawnMargin), drawingWide() - units(2 * kDrawnMargin));
    paintLinkageStill(painter, drawingBox(), scene(), style);
    painter.fillRect(QRectF(0, sliderBox().top() - units(1), drawingWide(), 1), ink(style.look.line));
    slider().paintScale(painter, style);
}

QRectF DrawnPage::momentBox(std::size_t i, std::size_t count) const {
    if (!beside(width()))
        return {units(2), drawingBottom() + units(2 + kMomentHigh * static_cast<double>(i)), width() - units(4),
                units(kMomentHigh - 2)};
    const double high = (height() - units(4)) / static_cast<double>(count);
    const double left = width() - units(kMoments) + units(2);
    return {left, units(2) + static_cast<double>(i) * high, units(kMoments - 4), high - units(2)};
}

void DrawnPage::paintMoments(QPainter& painter, const DrawnStyle& style) {
    if (beside(width())) painter.fillRect(QRectF(drawingWide(), 0, 1, height()), ink(style.look.line));
    const auto moments = momentsOf(*m_body);
    for (std::size_t i = 0; i < moments.size(); ++i) {
        const QRectF box = momentBox(i, moments.size());
        const bool here = moments[i] == m_moment;
        painter.fillRect(box, ink(here ? style.look.sel : style.look.paper));
        painter.setPen(QPen(ink(here ? style.look.ring : style.look.line), here ? 3 : 1));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(box);
        const QRectF small(box.left() + units(2), box.top() + units(1), units(32), box.height() - units(2));
        DrawnStyle fine = style;
        fine.unit = style.unit * 0.6;
        paintLinkage(painter, small,
                     {.body = &*m_body,
                      .travel = travelAt(*m_body, moments[i]),
                      .caught = moments[i] == Moment::check,
                      .names = false,
                      .lens = false},
                     fine);
        const double left = small.right() + units(3);
        painter.setPen(ink(style.look.ink));
        drawnText(painter, style, style.strong, {left, box.top() + units(6.5)}, words::momentName(moments[i]));
        painter.setPen(ink(style.look.ink2));
        double y = box.top() + units(12);
        for (const QString& line : words::momentLines(moments[i], *m_body)) {
            drawnText(painter, style, style.plain, {left, y}, line);
            y += units(4.8);
        }
    }
}

} // namespace hammerline
