#include "ui/words/stroke_labels.h"

#include "ui/words/said.h"
#include "ui/words/words.h"

#include <cmath>

namespace hammerline::words {

namespace {

QString inStroke(const char* text) {
    return QCoreApplication::translate("stroke", text);
}

std::optional<double> readingIn(const DipAccount& account, DimensionId id) {
    for (const DipTerm& term : account.terms)
        if (term.dimension == id) return term.reading;
    return std::nullopt;
}

QString shownMm(DimensionId id, double mm) {
    return shown(id, fromTrade(mm, Kind::length));
}

/// "good", or the trade's word for the side and by how much: "late, 0.4 over the edge".
QString besideZone(DimensionId id, double mm, const std::optional<StrokeBand>& band) {
    if (!band) return {};
    const bool low = band->low && mm < *band->low;
    const bool high = band->high && mm > *band->high;
    if (!low && !high) return inStroke(QT_TRANSLATE_NOOP("stroke", "good"));
    const double over = low ? *band->low - mm : mm - *band->high;
    return inStroke(QT_TRANSLATE_NOOP("stroke", "%1, %2 over the edge")).arg(sideName(id, high), number(over, 2));
}

QString ofDamper(const NoteAction& action) {
    const QString zone = besideZone(dimension::damperStart, *action.stroke.damperStirs, action.zones.damperStirs);
    const auto blow = readingIn(action.account, dimension::blow);
    if (!blow || !action.stroke.moves) return zone;
    const double way = (*action.stroke.damperStirs - *action.stroke.moves) * action.account.ratio.value;
    const QString hammer =
        inStroke(QT_TRANSLATE_NOOP("stroke", "hammer %1 of %2")).arg(number(way, 0), shownMm(dimension::blow, *blow));
    return zone.isEmpty() ? hammer : QStringLiteral("%1 \u00B7 %2").arg(zone, hammer);
}

QString ofBottom(const NoteAction& action) {
    const Stroke& stroke = action.stroke;
    if (!stroke.aftertouch) return besideZone(dimension::keyDip, *stroke.bottom, action.zones.bottom);
    if (!stroke.jackEscapes())
        return inStroke(QT_TRANSLATE_NOOP("stroke", "%1 missing: no escape")).arg(number(-*stroke.aftertouch, 2));
    const QString left = inStroke(QT_TRANSLATE_NOOP("stroke", "%1 left")).arg(number(*stroke.aftertouch, 2));
    const QString zone = besideZone(dimension::aftertouch, *stroke.aftertouch, action.zones.aftertouch);
    return zone.isEmpty() ? left : QStringLiteral("%1: %2").arg(left, zone);
}

QString ofLetOff(const NoteAction& action) {
    const auto letOff = readingIn(action.account, dimension::letOff);
    QString out =
        letOff ? inStroke(QT_TRANSLATE_NOOP("stroke", "%1 from the string")).arg(shownMm(dimension::letOff, *letOff))
               : QString{};
    if (action.stroke.dropAtHammer)
        out += inStroke(QT_TRANSLATE_NOOP("stroke", ", then %1 back"))
                   .arg(shownMm(dimension::drop, *action.stroke.dropAtHammer));
    return out;
}

} // namespace

QString strokeRowName(bool afterPlan) {
    return afterPlan ? inStroke(QT_TRANSLATE_NOOP("stroke", "after the plan"))
                     : inStroke(QT_TRANSLATE_NOOP("stroke", "as read"));
}

QString strokeAllName(bool afterPlan, int keys) {
    const QString which = keys == 0   ? inStroke(QT_TRANSLATE_NOOP("stroke", "All, as read"))
                          : keys == 1 ? inStroke(QT_TRANSLATE_NOOP("stroke", "Naturals, as read"))
                                      : inStroke(QT_TRANSLATE_NOOP("stroke", "Sharps, as read"));
    return afterPlan ? inStroke(QT_TRANSLATE_NOOP("stroke", "After the plan")) : which;
}

QStringList strokeLegend(const Piano& piano) {
    QStringList out = {inStroke(QT_TRANSLATE_NOOP("stroke", "top: key at rest"))};
    if (fittedAnywhere(dimension::lostMotion, piano))
        out << inStroke(QT_TRANSLATE_NOOP("stroke", "solid: lost motion"));
    out << inStroke(QT_TRANSLATE_NOOP("stroke", "bar: damper"))
        << inStroke(QT_TRANSLATE_NOOP("stroke", "box: from let-off"))
        << inStroke(QT_TRANSLATE_NOOP("stroke", "to the bottom"))
        << inStroke(QT_TRANSLATE_NOOP("stroke", "triangle: out"));
    return out;
}

std::vector<StrokeLabel> strokeLabels(const NoteAction& action, const Piano& piano) {
    const Stroke& stroke = action.stroke;
    std::vector<StrokeLabel> out;
    if (stroke.letOff)
        out.push_back({StrokeEvent::letOff, *stroke.letOff, strokeEventText(StrokeEvent::letOff, *stroke.letOff),
                       ofLetOff(action)});
    if (stroke.bottom)
        out.push_back(
            {StrokeEvent::bottom, *stroke.bottom,
             inStroke(QT_TRANSLATE_NOOP("stroke", "bottom %1")).arg(strokePlace(StrokeEvent::bottom, *stroke.bottom)),
             ofBottom(action)});
    if (stroke.damperStirs)
        out.push_back({StrokeEvent::damperStirs, *stroke.damperStirs,
                       strokeEventText(StrokeEvent::damperStirs, *stroke.damperStirs), ofDamper(action)});
    if (stroke.moves && piano.vertical())
        out.push_back({StrokeEvent::moves, *stroke.moves,
                       inStroke(QT_TRANSLATE_NOOP("stroke", "lost motion %1"))
                           .arg(strokePlace(StrokeEvent::moves, *stroke.moves)),
                       besideZone(dimension::lostMotion, *stroke.moves, action.zones.moves)});
    return out;
}

QString strokeOutName(NoteNumber note, DimensionId id, const Piano& piano) {
    return noteName(note, piano) + QLatin1Char(' ') + shortName(id).toLower();
}

} // namespace hammerline::words
