#include "ui/widgets/profile.h"

#include "ui/words/words.h"

#include <QKeyEvent>
#include <QMouseEvent>

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

constexpr double kMargin = 0.07;      // above and below
constexpr double kMostZoneWidths = 6; // beyond it a reading stands at the edge
constexpr double kLeastStepUnits = 7; // u between two step lines

/// 1, 2 or 5 times a power of ten, at least `least`.
double roundStep(double least) {
    const double ten = std::pow(10, std::floor(std::log10(least)));
    for (const double factor : {1.0, 2.0, 5.0})
        if (factor * ten >= least * 0.999) return factor * ten;
    return 10 * ten;
}

} // namespace

ProfileScale ProfileScale::over(double zoneLow, double zoneHigh, double readLow, double readHigh) {
    const double width = std::max(zoneHigh - zoneLow, 1e-6);
    double low = std::min(zoneLow, std::max(readLow, zoneLow - kMostZoneWidths * width));
    double high = std::max(zoneHigh, std::min(readHigh, zoneHigh + kMostZoneWidths * width));
    const double margin = (high - low) * kMargin;
    low -= margin;
    high += margin;
    return {low, high, roundStep((high - low) / 6)};
}

double ProfileScale::first() const {
    return std::ceil(low / step - 1e-9) * step;
}

Profile::Profile(Workbench& bench, QWidget* parent) : QWidget(parent), m_bench(bench) {
    setFocusPolicy(Qt::StrongFocus);
    setAccessibleName(tr("Profile of the dimension"));
    const auto again = [this] {
        reckon();
        update();
    };
    connect(&m_bench, &Workbench::recordChanged, this, again);
    connect(&m_bench, &Workbench::pianoChanged, this, again);
    connect(&m_bench, &Workbench::passChanged, this, again);
    connect(&m_bench, &Workbench::dimensionChanged, this, again);
    connect(&m_bench, &Workbench::noteChanged, this, [this] {
        update();
        sayAnew(*this);
    });
    reckon();
}

void Profile::setPasses(int shown, int before) {
    m_shown = shown;
    m_before = before;
    reckon();
    update();
}

const PassView* Profile::view() const {
    return m_shown > 0 ? m_bench.view(m_shown) : m_bench.view();
}

QString Profile::legend() const {
    const DimensionId dimension = m_bench.dimension();
    return tr("%1: above = %2, below = %3")
        .arg(words::unitName(row(dimension).entryUnit), words::sideName(dimension, true),
             words::sideName(dimension, false));
}

QString Profile::spoken() const {
    const PassView* shown = m_bench.piano() ? view() : nullptr;
    if (!shown) return {};
    std::vector<NoteNumber> low, high;
    int within = 0;
    const auto count = [&](const Point& point) {
        if (point.judged->verdict == Verdict::low)
            low.push_back(point.note);
        else if (point.judged->verdict == Verdict::high)
            high.push_back(point.note);
        else
            ++within;
    };
    std::ranges::for_each(m_points, count);
    std::ranges::for_each(m_words, count);
    const DimensionId dimension = m_bench.dimension();
    QStringList said{tr("%1: %n note(s) not outside.", nullptr, within).arg(words::name(dimension))};
    for (const bool above : {false, true})
        if (const auto& notes = above ? high : low; !notes.empty())
            said << QStringLiteral("%1: %2.").arg(words::sideName(dimension, above),
                                                  QString::fromStdString(writeNotes(notes)));
    if (const Judged* here = shown->review.at({m_bench.note(), dimension}))
        said << words::cellSentence(*here, *m_bench.piano());
    return said.join(u' ');
}

QSize Profile::sizeHint() const {
    return {u(260), u(54)};
}
QSize Profile::minimumSizeHint() const {
    return {u(160), u(24)};
}

void Profile::resizeEvent(QResizeEvent*) {
    reckon();
}

void Profile::reckon() {
    m_points.clear();
    m_words.clear();
    m_axis = m_bench.piano() ? NoteAxis(0, width(), *m_bench.piano()) : NoteAxis();
    const PassView* shown = m_bench.piano() ? view() : nullptr;
    if (!shown) return;
    const DimensionId dimension = m_bench.dimension();
    const Kind kind = row(dimension).kind;
    double zoneLow = 1e9, zoneHigh = -1e9, low = 1e9, high = -1e9;
    const auto take = [](double value, double& least, double& most) {
        least = std::min(least, value);
        most = std::max(most, value);
    };
    for (int n = 1; n <= m_bench.piano()->notes; ++n) {
        const Cell cell{{n}, dimension};
        if (const auto zone = shown->review.zones.find(cell); zone != shown->review.zones.end()) {
            take(toTrade(zone->second.low.value_or(zone->second.nominal), kind), zoneLow, zoneHigh);
            take(toTrade(zone->second.high.value_or(zone->second.nominal), kind), zoneLow, zoneHigh);
        }
        const Judged* before = m_before > 0 ? m_bench.judged(m_before, cell) : nullptr;
        if (before && before->value) take(toTrade(*before->value, kind), low, high);
        const Judged* judged = shown->review.at(cell);
        if (!judged) continue;
        Point point{{n}, judged, 0, colourOf({n}, *m_bench.piano()) == KeyColour::sharp};
        if (judged->word) {
            m_words.push_back(point);
        } else if (judged->value) {
            point.value = toTrade(*judged->value, kind);
            take(point.value, low, high);
            m_points.push_back(point);
        }
    }
    if (zoneLow > zoneHigh) zoneLow = low, zoneHigh = high;
    if (zoneLow > zoneHigh) zoneLow = 0, zoneHigh = 1;
    if (low > high) low = zoneLow, high = zoneHigh;
    m_scale = ProfileScale::over(zoneLow, zoneHigh, low, high);
    // few lines in a low panel
    m_scale.step = roundStep(
        std::max(m_scale.step, (m_scale.high - m_scale.low) * units(kLeastStepUnits) / std::max(height(), 1)));
}

double Profile::y(double value) const {
    const double cut = std::clamp(value, m_scale.low, m_scale.high);
    return height() * (m_scale.high - cut) / (m_scale.high - m_scale.low);
}

void Profile::mousePressEvent(QMouseEvent* event) {
    if (m_axis.notes() > 0 && event->pos().x() >= m_axis.begin()) m_bench.setNote(m_axis.at(event->pos().x()));
}
void Profile::mouseMoveEvent(QMouseEvent* event) {
    if (event->buttons() & Qt::LeftButton) mousePressEvent(event);
}

void Profile::keyPressEvent(QKeyEvent* event) {
    const int here = m_bench.note().value;
    switch (event->key()) {
    case Qt::Key_Left:
        return m_bench.setNote({here - 1});
    case Qt::Key_Right:
        return m_bench.setNote({here + 1});
    case Qt::Key_Home:
        return m_bench.setNote({1});
    case Qt::Key_End:
        return m_bench.setNote({m_axis.notes()});
    default:
        QWidget::keyPressEvent(event);
    }
}

void Profile::focusInEvent(QFocusEvent*) {
    update();
}
void Profile::focusOutEvent(QFocusEvent*) {
    update();
}

} // namespace hammerline
