#include "ui/stations/measure_headers.h"

#include "ui/stations/measure_delegate.h"
#include "ui/widgets/marks.h"
#include "ui/words/words.h"

namespace hammerline {

namespace {
constexpr double kHeaderHeight = 14.5, kNoteWidth = 24, kHeaderSide = 2, kNearSide = 0.75;
}

DimensionHeader::DimensionHeader(Workbench& bench, const MeasureModel& readings, QWidget* parent)
    : QHeaderView(Qt::Horizontal, parent), m_bench(bench), m_readings(readings) {
    setSectionResizeMode(QHeaderView::Fixed);
    setMinimumSectionSize(u(8));
    setHighlightSections(false);
    setSectionsClickable(false);
}

// Only its height is asked for: the hint of QHeaderView would lay out the text of every section.
QSize DimensionHeader::sizeHint() const {
    return {u(kNoteWidth), u(kHeaderHeight)};
}

QStringList DimensionHeader::nameLines(int column) const {
    const QString name = words::shortName(m_readings.dimensionAt(column));
    if (const auto blank = name.lastIndexOf(u' '); blank > 0) return {name.left(blank), name.mid(blank + 1)};
    const auto hyphen = name.lastIndexOf(u'-') + 1; // stays with the first line; "Let-off" is short enough for one
    constexpr qsizetype kOneLine = 8;
    return hyphen > 0 && name.size() > kOneLine ? QStringList{name.left(hyphen), name.mid(hyphen)} : QStringList{name};
}

QString DimensionHeader::zoneLine(int column) const {
    const DimensionId dimension = m_readings.dimensionAt(column);
    const Piano& piano = *m_bench.piano();
    NoteNumber note = m_bench.note();
    if (dimension == dimension::strap) return tr("words");
    if (!fitted(dimension, note, piano)) {
        if (dimension == dimension::keyHeight || dimension == dimension::sharpHeight) {
            // the other key colour's own zone: at the next key of that colour
            for (const int by : {1, -1})
                if (piano.contains({note.value + by}) && fitted(dimension, {note.value + by}, piano))
                    note = {note.value + by};
        } else if (piano.lastDamper && !hasDamper(note, piano)) {
            return tr("to note %1").arg(*piano.lastDamper);
        }
    }
    const auto& zone = m_bench.zones().at({note, dimension});
    return zone ? words::zoneText(dimension, *zone) : QString();
}

void DimensionHeader::follow() {
    QStringList zones;
    for (int c = 0; m_bench.piano() && c < m_readings.columnCount(); ++c)
        zones << zoneLine(c);
    if (zones == m_zones && m_bench.dimension() == m_current) return;
    m_zones = zones;
    m_current = m_bench.dimension();
    viewport()->update();
}

int DimensionHeader::wantedWidth(int column) const {
    const QFontMetrics bold(face(Text::label, true)), tiny(face(Text::tiny)), words(face(Text::body));
    int width = tiny.horizontalAdvance(zoneLine(column));
    for (const QString& line : nameLines(column))
        width = std::max(width, bold.horizontalAdvance(line));
    for (const WordId id : row(m_readings.dimensionAt(column)).words)
        if (id != word::ok)
            width = std::max(width, words.horizontalAdvance(words::name(id)) + u(row(id).stopsNote ? 7.5 : 5));
    return width + u(kHeaderSide + kNearSide);
}

void DimensionHeader::paintSection(QPainter* painter, const QRect& rect, int column) const {
    if (!m_bench.piano()) return;
    const Look& look = lookOf(*this);
    painter->save();
    painter->fillRect(rect, QColor::fromRgb(look.head));
    painter->fillRect(QRect(rect.right(), rect.top(), 1, rect.height()), QColor::fromRgb(look.line));
    painter->fillRect(QRect(rect.left(), rect.bottom(), rect.width(), 1), QColor::fromRgb(look.edge));
    const bool current = m_readings.dimensionAt(column) == m_bench.dimension();
    if (current)
        painter->fillRect(QRect(rect.left(), rect.bottom() - 2, rect.width() - 1, 3), QColor::fromRgb(look.ink));
    const QRect room = rect.adjusted(u(0.5), 0, -u(kHeaderSide), 0);
    int y = rect.bottom() - u(2.75);
    painter->setFont(face(Text::tiny));
    painter->setPen(QColor::fromRgb(look.ink2));
    const auto line = [&](const QString& text) {
        painter->drawText(QRect(room.left(), y - u(4), room.width(), u(5)), Qt::AlignRight | Qt::AlignBottom, text);
    };
    line(zoneLine(column));
    y -= u(3.75);
    painter->setFont(face(Text::label, true));
    painter->setPen(QColor::fromRgb(look.ink));
    const QStringList lines = nameLines(column);
    for (auto it = lines.rbegin(); it != lines.rend(); ++it) {
        line(*it);
        y -= u(3.75);
    }
    painter->restore();
}

NoteHeader::NoteHeader(Workbench& bench, const MeasureModel& readings, QWidget* parent)
    : QHeaderView(Qt::Vertical, parent), m_bench(bench), m_readings(readings) {
    setSectionResizeMode(QHeaderView::Fixed);
    setMinimumSectionSize(u(4));
    setHighlightSections(false);
    setSectionsClickable(false);
}

// Only its width.
QSize NoteHeader::sizeHint() const {
    return {u(kNoteWidth), u(kHeaderHeight)};
}

void NoteHeader::paintBand(QPainter& painter, const QRect& rect, int row) const {
    const Look& look = lookOf(*this);
    const Piano& piano = *m_bench.piano();
    const auto sections = sectionsOf(piano);
    const std::size_t at = sectionIndexOf({row + 1}, piano);
    painter.fillRect(rect, QColor::fromRgb(look.head));
    painter.fillRect(QRect(rect.left(), rect.top(), rect.width(), 1), QColor::fromRgb(look.edge));
    painter.setPen(QColor::fromRgb(look.ink));
    painter.setFont(face(Text::label, true));
    painter.drawText(rect.adjusted(u(2.5), 0, 0, 0), Qt::AlignVCenter,
                     words::sectionName(sections[at], at, sections.size()));
}

void NoteHeader::paintSection(QPainter* painter, const QRect& whole, int row) const {
    if (!m_bench.piano() || row >= m_readings.rowCount()) return;
    const Look& look = lookOf(*this);
    const Piano& piano = *m_bench.piano();
    const NoteNumber note{row + 1};
    painter->save();
    QRect rect = whole;
    if (m_readings.startsSection(row)) {
        paintBand(*painter, QRect(whole.left(), whole.top(), whole.width(), sectionBandHeight()), row);
        rect.setTop(whole.top() + sectionBandHeight());
    }
    const bool current = note == m_bench.note();
    painter->fillRect(rect, QColor::fromRgb(current ? look.ink : look.head));
    painter->fillRect(QRect(rect.left(), rect.bottom(), rect.width(), 1), QColor::fromRgb(look.line));
    painter->fillRect(QRect(rect.right(), rect.top(), 1, rect.height()), QColor::fromRgb(look.edge));
    painter->setPen(QColor::fromRgb(current ? look.paper : look.ink));
    painter->setFont(face(Text::digits, true));
    painter->drawText(QRect(rect.left(), rect.top(), u(7.5), rect.height()), Qt::AlignRight | Qt::AlignVCenter,
                      QString::number(note.value));
    const double middle = rect.top() + rect.height() / 2.0;
    paintSwatch(*painter, QRectF(rect.left() + u(9.75) + 0.5, std::round(middle - units(1.6)) + 0.5, u(1.6), u(3.1)),
                colourOf(note, piano) == KeyColour::sharp, look);
    painter->setFont(face(Text::digits));
    const QFontMetricsF metrics(painter->font());
    paintNote(*painter, QPointF(rect.left() + u(13), middle + metrics.capHeight() / 2), words::pitch(note, piano));
    if (m_readings.mendFirst(row))
        paintNotch(*painter, QRectF(rect.right() - u(4.6), std::round(middle - units(1.4)), u(3), u(2.75)),
                   QColor::fromRgb(current ? look.paper : look.ink), QColor::fromRgb(current ? look.ink : look.head));
    painter->restore();
}

HeaderCorner::HeaderCorner(Workbench& bench, QWidget* parent) : QWidget(parent), m_bench(bench) {
    setAttribute(Qt::WA_TransparentForMouseEvents);
    connect(&m_bench, &Workbench::noteChanged, this, qOverload<>(&QWidget::update));
}

void HeaderCorner::paintEvent(QPaintEvent*) {
    const Look& look = lookOf(*this);
    QPainter painter(this);
    painter.fillRect(rect(), QColor::fromRgb(look.head));
    painter.fillRect(QRect(0, height() - 1, width(), 1), QColor::fromRgb(look.edge));
    painter.fillRect(QRect(width() - 1, 0, 1, height()), QColor::fromRgb(look.line));
    if (!m_bench.piano()) return;
    const bool sharp = colourOf(m_bench.note(), *m_bench.piano()) == KeyColour::sharp;
    painter.setPen(QColor::fromRgb(look.ink));
    painter.setFont(face(Text::label, true));
    painter.drawText(QPoint(u(3.5), u(4.5)), tr("Note"));
    painter.setPen(QColor::fromRgb(look.ink2));
    painter.setFont(face(Text::tiny));
    painter.drawText(QPoint(u(3.5), height() - u(2.5)), sharp ? tr("zones: sharps") : tr("zones: naturals"));
}

} // namespace hammerline
