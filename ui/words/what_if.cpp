#include "ui/words/what_if.h"

#include "ui/words/action.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

namespace hammerline::words {

namespace {

QString supposedly(const char* text) {
    return QCoreApplication::translate("what-if", text);
}

QString verdictOfLeft(const DipAccount& account) {
    const auto judged = judgedLeft(account);
    if (!judged) return {};
    if (judged->verdict == Verdict::low) return sideName(dimension::aftertouch, false);
    if (judged->verdict == Verdict::high) return sideName(dimension::aftertouch, true);
    return supposedly(QT_TRANSLATE_NOOP("what-if", "within"));
}

} // namespace

QString whatIfRemark(const std::optional<double>& read, const std::optional<double>& supposed) {
    if (!read) return supposedly(QT_TRANSLATE_NOOP("what-if", "not read"));
    if (!supposed) return supposedly(QT_TRANSLATE_NOOP("what-if", "as read"));
    const double by = *supposed - *read;
    return (by < 0 ? QString{} : QStringLiteral("+")) + number(by, 2);
}

QString whatIfValue(DimensionId id, double mm) {
    return id == dimension::lostMotion ? number(mm, 2) : shown(id, fromTrade(mm, Kind::length));
}

QString outcomeText(const NoteAction& action) {
    if (!action.accountAfter || !action.accountAfter->computed)
        return supposedly(QT_TRANSLATE_NOOP("what-if", "not reckoned: a reading is wanting"));
    const double left = *action.accountAfter->computed;
    if (left < 0)
        return supposedly(QT_TRANSLATE_NOOP("what-if", "the jack does not escape: %1 missing")).arg(keyTravel(-left));
    return supposedly(QT_TRANSLATE_NOOP("what-if", "aftertouch %1, %2"))
        .arg(keyTravel(left), verdictOfLeft(*action.accountAfter));
}

QString outcomeRemark(const NoteAction& action) {
    QStringList parts;
    if (action.account.computed)
        parts << supposedly(QT_TRANSLATE_NOOP("what-if", "as read %1")).arg(keyTravel(*action.account.computed));
    if (action.strokeAfter && action.strokeAfter->letOff)
        parts << strokeEventText(StrokeEvent::letOff, *action.strokeAfter->letOff);
    return parts.join(QStringLiteral(" \u00B7 "));
}

QString railValue(double mm) {
    return (mm > 0 ? QStringLiteral("+") : QString{}) + number(mm, 2);
}

QString railOutcome(std::pair<int, int> within) {
    return supposedly(QT_TRANSLATE_NOOP("what-if", "aftertouch within at %1, as read at %2"))
        .arg(within.second)
        .arg(within.first);
}

QString railRemark(bool capstansFollow) {
    return capstansFollow
               ? supposedly(QT_TRANSLATE_NOOP("what-if", "with the round of the capstans that must follow"))
               : supposedly(QT_TRANSLATE_NOOP("what-if", "pads alone: more lost motion, aftertouch as it was"));
}

QString railSentence(double mm, bool capstansFollow, std::pair<int, int> within) {
    return supposedly(QT_TRANSLATE_NOOP("what-if", "Rest rail of all notes nearer by %1: %2; %3."))
        .arg(railValue(mm), railOutcome(within), railRemark(capstansFollow));
}

QString whatIfSentence(DimensionId id, const std::optional<double>& value, const NoteAction& action, bool supposed) {
    const QString here = value ? whatIfValue(id, *value) : supposedly(QT_TRANSLATE_NOOP("what-if", "not read"));
    QString out = QStringLiteral("%1 %2.").arg(name(id), here);
    if (supposed) out += QLatin1Char(' ') + outcomeText(action) + QLatin1Char('.');
    return out;
}

} // namespace hammerline::words
