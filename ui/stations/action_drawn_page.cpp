// Page 3 of the wide note: the action drawn to scale, at any moment of the stroke.
#include "ui/stations/action_drawn_page.h"

#include "ui/widgets/linkage_painter.h"
#include "ui/words/linkage_names.h"
#include "ui/words/moments.h"
#include "ui/words/words.h"

#include <QMouseEvent>
#include <QPainter>
#include <QStyle>

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

constexpr double kDrawnMargin = 4, kMoments = 92, kSliderHigh = 15;      // units
constexpr double kBesideFrom = 200, kDrawingHigh = 92, kMomentHigh = 21; // units
constexpr int kFrame = 16, kPlayed = 3000;                               // ms: of a frame, of the whole way
constexpr double kFineStep = 0.1, kCoarseStep = 1;                       // mm of the key

} // namespace

DrawnPage::DrawnPage(ActionDesk& desk, QWidget* parent) : ActionPage(desk, parent) {
    m_play.setInterval(kFrame);
    connect(&m_play, &QTimer::timeout, this, &DrawnPage::playOn);
}

QString DrawnPage::title() const {
    return tr("Action drawn");
}

QString DrawnPage::sentence() const {
    if (!m_body) return m_refused;
    const QString moment = words::momentSentence(m_moment, m_travel, *m_body);
    return QStringList{moment, words::atAimSentence(*m_body)}.join(QLatin1Char(' '));
}

QList<KeyHint> DrawnPage::pageHints() const {
    return {{QStringLiteral("left right"), tr("through the stroke")},
            {QStringLiteral("up down"), tr("moment before, after")},
            {QStringLiteral("[ ]"), tr("note before, after")},
            {QStringLiteral("Space"), tr("play it once, slowly")}};
}

/// Both are placed anew only when what they are placed by has changed.
void DrawnPage::refreshPage() {
    m_body.reset();
    m_outline.reset();
    m_refused.clear();
    if (desk().ready()) place();
    toMoment(m_moment);
    setMinimumHeight(m_body ? wantedHeight(width()) : 0); // what it needs depends on what is drawn
}

void DrawnPage::place() {
    const Piano& piano = *desk().bench().piano();
    const NoteNumber note = desk().bench().note();
    const Ratio& ratio = desk().note().account.ratio;
    const Zones& zones = desk().bench().zones();
    const PassTable read(piano, desk().view().pass), after(piano, desk().passAfter());
    auto before = drawnNote(piano, read, zones, ratio, note);
    if (!before) {
        m_refused = words::notDrawnSentence(before.error(), read, note, piano);
        return;
    }
    if (!desk().note().accountAfter) {
        m_body = *std::move(before);
        return;
    }
    auto planned = drawnNote(piano, after, zones, ratio, note);
    m_outline = *std::move(before);
    if (planned)
        m_body = *std::move(planned);
    else
        std::swap(m_body, m_outline);
}

void DrawnPage::toMoment(Moment moment) {
    m_play.stop();
    m_moment = moment;
    m_travel = m_body ? travelAt(*m_body, moment) : 0;
    m_travelOfOutline = m_outline ? travelAt(*m_outline, moment) : 0;
    setAccessibleDescription(desk().ready() ? sentence() : QString());
    update();
}

void DrawnPage::toTravel(double mm) {
    if (!m_body) return;
    m_travel = std::clamp(mm, 0.0, m_body->linkage.distances().dip);
    m_travelOfOutline = m_travel;
    const Moment moment = momentAt(*m_body, m_travel);
    const bool sameMoment = moment == m_moment;
    m_moment = moment;
    // the moments at the side are painted anew only where another one is marked
    update(sameMoment ? QRect(0, 0, drawingWide(), drawingBottom()) : rect());
}

/// Once, in three seconds; where the desktop does without animation the key stands at the bottom at once.
void DrawnPage::play() {
    if (!m_body) return;
    if (style()->styleHint(QStyle::SH_Widget_Animation_Duration, nullptr, this) == 0) {
        toMoment(Moment::bottom);
        return;
    }
    toTravel(0);
    m_clock.start();
    m_play.start();
}

void DrawnPage::playOn() {
    const double share = std::min(1.0, static_cast<double>(m_clock.elapsed()) / kPlayed);
    toTravel(share * m_body->linkage.distances().dip);
    if (share >= 1) m_play.stop();
}

bool DrawnPage::useKey(int key, Qt::KeyboardModifiers modifiers) {
    const double step = modifiers & Qt::ShiftModifier ? kCoarseStep : kFineStep;
    switch (key) {
    case Qt::Key_Left:
        m_play.stop();
        toTravel(m_travel - step);
        return true;
    case Qt::Key_Right:
        m_play.stop();
        toTravel(m_travel + step);
        return true;
    case Qt::Key_Up:
        stepMoment(-1);
        return true;
    case Qt::Key_Down:
        stepMoment(1);
        return true;
    case Qt::Key_Space:
        play();
        return true;
    default:
        return false;
    }
}

void DrawnPage::stepMoment(int by) {
    if (!m_body) return;
    const auto moments = momentsOf(*m_body);
    const auto here = std::ranges::find(moments, m_moment);
    const auto at = here == moments.end() ? 0 : here - moments.begin();
    const auto wanted = std::clamp<std::ptrdiff_t>(at + by, 0, static_cast<std::ptrdiff_t>(moments.size()) - 1);
    toMoment(moments[static_cast<std::size_t>(wanted)]);
}

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

double DrawnPage::sliderX(double mm) const {
    const QRectF box = sliderBox();
    return box.left() + box.width() * mm / sliderMost();
}

double DrawnPage::sliderMost() const {
    const double dip = m_body ? m_body->linkage.distances().dip : 10;
    return std::max(11.0, std::ceil(dip + 0.3));
}

void DrawnPage::paintEvent(QPaintEvent* event) {
    QPainter painter(this);
    const DrawnStyle style = screenStyle(*this);
    painter.fillRect(rect(), ink(style.look.paper));
    if (!desk().ready()) return paintNothing(painter);
    painter.setRenderHint(QPainter::Antialiasing);
    if (!m_body) {
        painter.setFont(face(Text::body));
        painter.setPen(ink(style.look.ink));
        painter.drawText(QRectF(units(kDrawnMargin), units(6), width() - units(2 * kDrawnMargin), units(40)),
                         Qt::AlignLeft | Qt::TextWordWrap, m_refused);
        return;
    }
    const double wide = drawingWide(), top = headHigh(width());
    head().paint(painter, style, units(kDrawnMargin), wide - units(2 * kDrawnMargin));
    const QRectF box(units(kDrawnMargin), top, wide - units(2 * kDrawnMargin),
                     drawingBottom() - top - units(kSliderHigh + 2));
    LinkageScene scene{.body = &*m_body,
                       .outline = m_outline ? &*m_outline : nullptr,
                       .travel = m_travel,
                       .travelOfOutline = m_travelOfOutline,
                       .caught = m_moment == Moment::check,
                       .names = true};
    scene.letOffZone = desk().letOffZone();
    scene.lensTitle = words::lensTitle();
    scene.lensFigure = words::shown(dimension::letOff, fromTrade(m_body->linkage.distances().letOff, Kind::length));
    if (m_outline)
        scene.lensRemark = words::lensRemark(
            words::shown(dimension::letOff, fromTrade(m_outline->linkage.distances().letOff, Kind::length)));
    paintLinkage(painter, box, scene, style);
    paintSlider(painter, style);
    const QRect moments = beside(width()) ? QRect(drawingWide(), 0, u(kMoments), height())
                                          : QRect(0, drawingBottom(), width(), height() - drawingBottom());
    if (event->region().intersects(moments)) paintMoments(painter, style);
}

void DrawnPage::paintSlider(QPainter& painter, const DrawnStyle& style) {
    const QRectF box = sliderBox();
    const double line = box.top() + units(7);
    painter.fillRect(QRectF(0, box.top() - units(1), drawingWide(), 1), ink(style.look.line));
    painter.fillRect(QRectF(sliderX(0), line - 1, sliderX(sliderMost()) - sliderX(0), 2), ink(style.look.ink));
    painter.setPen(ink(style.look.ink2));
    for (int mm = 0; mm <= sliderMost(); ++mm) {
        painter.fillRect(QRectF(sliderX(mm) - 0.5, line, 1, units(1)), ink(style.look.ink));
        drawnText(painter, style, style.plain, {sliderX(mm), line + units(5)}, QString::number(mm), Qt::AlignHCenter);
    }
    double taken = -1e6;
    for (const Moment each : momentsOf(*m_body)) {
        if (each == Moment::check) continue;
        const double x = sliderX(travelAt(*m_body, each));
        painter.fillRect(QRectF(x - 1, line - units(2), 2, units(2)), ink(style.look.ink));
        const QString name = words::momentName(each);
        const double half = drawnWidth(style.plain, name) / 2;
        if (x - half < taken) continue;
        painter.setPen(ink(style.look.ink2));
        drawnText(painter, style, style.plain, {x, line - units(3)}, name, Qt::AlignHCenter);
        taken = x + half + units(2);
    }
    const QRectF handle(sliderX(m_travel) - units(1.3), line - units(2.8), units(2.6), units(5.6));
    painter.setPen(Qt::NoPen);
    painter.setBrush(ink(style.look.ink));
    painter.drawRoundedRect(handle, units(0.6), units(0.6));
    if (hasFocus()) {
        painter.setBrush(Qt::NoBrush);
        painter.setPen(QPen(ink(style.look.ring), 2));
        painter.drawRoundedRect(handle.adjusted(-3, -3, 3, 3), units(1), units(1));
    }
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

void DrawnPage::mousePressEvent(QMouseEvent* event) {
    setFocus();
    m_play.stop();
    if (!m_body) return;
    const auto moments = momentsOf(*m_body);
    for (std::size_t i = 0; i < moments.size(); ++i)
        if (momentBox(i, moments.size()).contains(event->position())) return toMoment(moments[i]);
    mouseMoveEvent(event);
}

void DrawnPage::mouseMoveEvent(QMouseEvent* event) {
    const QRectF box = sliderBox();
    const double y = event->position().y();
    if (!m_body || y < box.top() || y > box.bottom()) return;
    toTravel((event->position().x() - box.left()) / box.width() * sliderMost());
}

ActionPage* makeDrawnPage(ActionDesk& desk, QWidget* parent) {
    return new DrawnPage(desk, parent);
}

} // namespace hammerline
