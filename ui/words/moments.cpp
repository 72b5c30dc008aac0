#include "ui/words/moments.h"

#include "ui/words/action.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

namespace hammerline::words {

namespace {

QString atMoment(const char* text) {
    return QCoreApplication::translate("moments", text);
}

QString shownAs(DimensionId id, double mm) {
    return shown(id, fromTrade(mm, Kind::length));
}

} // namespace

QString momentName(Moment moment) {
    switch (moment) {
    case Moment::rest:
        return atMoment(QT_TRANSLATE_NOOP("moments", "at rest"));
    case Moment::damper:
        return atMoment(QT_TRANSLATE_NOOP("moments", "damper stirs"));
    case Moment::letOff:
        return atMoment(QT_TRANSLATE_NOOP("moments", "let-off"));
    case Moment::bottom:
        return atMoment(QT_TRANSLATE_NOOP("moments", "bottom"));
    case Moment::check:
        break;
    }
    return atMoment(QT_TRANSLATE_NOOP("moments", "check"));
}

QStringList momentLines(Moment moment, const DrawnNote& note) {
    const kinematics::Distances& mm = note.linkage.distances();
    const double ratio = (mm.blow - mm.letOff) / (mm.escapeAt - mm.lostMotion);
    QStringList out;
    switch (moment) {
    case Moment::rest:
        out << atMoment(QT_TRANSLATE_NOOP("moments", "blow %1")).arg(shownAs(dimension::blow, mm.blow));
        if (!note.linkage.build().grand)
            out << atMoment(QT_TRANSLATE_NOOP("moments", "lost motion %1 to go"))
                       .arg(shownAs(dimension::lostMotion, mm.lostMotion));
        break;
    case Moment::damper:
        out << atMoment(QT_TRANSLATE_NOOP("moments", "key %1"))
                   .arg(strokePlace(StrokeEvent::damperStirs, mm.lostMotion + mm.damperStart / ratio))
            << atMoment(QT_TRANSLATE_NOOP("moments", "hammer %1 of %2"))
                   .arg(shownAs(dimension::damperStart, mm.damperStart), shownAs(dimension::blow, mm.blow));
        break;
    case Moment::letOff:
        out << atMoment(QT_TRANSLATE_NOOP("moments", "key %1")).arg(strokePlace(StrokeEvent::letOff, mm.escapeAt))
            << atMoment(QT_TRANSLATE_NOOP("moments", "%1 from the string")).arg(shownAs(dimension::letOff, mm.letOff));
        break;
    case Moment::bottom:
        out << atMoment(QT_TRANSLATE_NOOP("moments", "key %1")).arg(strokePlace(StrokeEvent::bottom, mm.dip));
        if (mm.dip >= mm.escapeAt)
            out << atMoment(QT_TRANSLATE_NOOP("moments", "%1 after the jack")).arg(keyTravel(mm.dip - mm.escapeAt));
        else
            out << atMoment(QT_TRANSLATE_NOOP("moments", "the jack stays: %1 missing"))
                       .arg(keyTravel(mm.escapeAt - mm.dip));
        if (mm.drop > 0)
            out << atMoment(QT_TRANSLATE_NOOP("moments", "dropped %1")).arg(shownAs(dimension::drop, mm.drop));
        break;
    case Moment::check:
        out << (note.checks ? atMoment(QT_TRANSLATE_NOOP("moments", "caught %1 from the string"))
                            : atMoment(QT_TRANSLATE_NOOP("moments", "to be caught %1 from the string")))
                   .arg(shownAs(dimension::checking, mm.checking));
        break;
    }
    return out;
}

QString momentSentence(Moment moment, double travel, const DrawnNote& note) {
    return atMoment(QT_TRANSLATE_NOOP("moments", "Key %1 mm down. %2: %3."))
        .arg(number(travel, 1), momentName(moment), momentLines(moment, note).join(QStringLiteral(", ")));
}

QString lensTitle() {
    return atMoment(QT_TRANSLATE_NOOP("moments", "let-off, 10 : 1"));
}

QString lensRemark(const QString& letOffAsRead) {
    return atMoment(QT_TRANSLATE_NOOP("moments", "broken line: %1 as read")).arg(letOffAsRead);
}

} // namespace hammerline::words
