// Page 3 of the wide note: the action drawn to scale, at any moment of the stroke.
#include "ui/stations/action_drawn_page.h"

#include "ui/words/linkage_names.h"
#include "ui/words/moments.h"

#include <QMouseEvent>
#include <QStyle>

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

constexpr int kFrame = 16, kPlayed = 3000;         // ms: of a frame, of the whole way
constexpr double kFineStep = 0.1, kCoarseStep = 1; // mm of the key

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
    m_still.forget();
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

/// Colours, faces and sizes are others.
void DrawnPage::changeEvent(QEvent* event) {
    m_still.forget();
    ActionPage::changeEvent(event);
}

void DrawnPage::resizeEvent(QResizeEvent* event) {
    m_still.forget();
    ActionPage::resizeEvent(event);
}

void DrawnPage::hideEvent(QHideEvent* event) {
    m_still.forget(); // and its memory
    m_play.stop();
    ActionPage::hideEvent(event);
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
    if (!m_play.isActive()) setAccessibleDescription(sentence()); // sixty a second nobody can hear
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
    if (share >= 1) m_play.stop();
    toTravel(share * m_body->linkage.distances().dip);
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
    const double y = event->position().y();
    if (!m_body || y < sliderBox().top() || y > sliderBox().bottom()) return;
    toTravel(slider().mm(event->position().x()));
}

ActionPage* makeDrawnPage(ActionDesk& desk, QWidget* parent) {
    return new DrawnPage(desk, parent);
}

} // namespace hammerline
