#include "ui/words/action.h"

#include "ui/words/said.h"
#include "ui/words/words.h"

namespace hammerline::words {

namespace {

constexpr double kTwoSided = 1.96; // standard uncertainties of an interval of 95 %

QString ofAction(const char* text) {
    return QCoreApplication::translate("action", text);
}

const DipTerm* firstUnread(const DipAccount& account) {
    for (const DipTerm& term : account.terms)
        if (!term.reading) return &term;
    return nullptr;
}

QString millimetres(DimensionId id, double mm) {
    return shown(id, fromTrade(mm, Kind::length));
}

/// "the dip took 0.70" or "the blow gave 0.20".
QString differenceText(const DipDifference& each) {
    const QString text = each.mm < 0 ? ofAction(QT_TRANSLATE_NOOP("action", "%1 took %2"))
                                     : ofAction(QT_TRANSLATE_NOOP("action", "%1 gave %2"));
    return text.arg(name(each.dimension).toLower(), keyTravel(std::abs(each.mm)));
}

} // namespace

QString keyTravel(double mm) {
    return number(mm, 2);
}

QString shareText(double mm) {
    return (mm < 0 ? QString{} : QStringLiteral("+")) + number(mm, 2);
}

QString shareWords(const DipTerm& term, const Ratio& ratio) {
    if (!term.reading) return ofAction(QT_TRANSLATE_NOOP("action", "not read"));
    const bool ofTheKey = term.dimension == dimension::keyDip || term.dimension == dimension::lostMotion;
    if (ofTheKey) return shareText(*term.share);
    const QString sign = term.dimension == dimension::letOff ? QStringLiteral("+") : QString(QChar(0x2212));
    return QStringLiteral("%1%2 \u00F7 %3 = %4")
        .arg(sign, millimetres(term.dimension, *term.reading), number(ratio.value, 2), shareText(*term.share));
}

QString termMeaning(DimensionId id) {
    if (id == dimension::keyDip) return ofAction(QT_TRANSLATE_NOOP("action", "the whole way of the key"));
    if (id == dimension::lostMotion) return ofAction(QT_TRANSLATE_NOOP("action", "the hammer does not stir yet"));
    if (id == dimension::letOff) return ofAction(QT_TRANSLATE_NOOP("action", "this much need not be driven"));
    if (id == dimension::blow) return ofAction(QT_TRANSLATE_NOOP("action", "driving the hammer"));
    return ofAction(QT_TRANSLATE_NOOP("action", "felt after the jack is free"));
}

QString ratioSentence(const Ratio& ratio) {
    const QString value = number(ratio.value, 2);
    if (ratio.entered)
        return ofAction(QT_TRANSLATE_NOOP("action", "Ratio of hammer to key %1, as it was set.")).arg(value);
    if (ratio.fromDefault())
        return ofAction(QT_TRANSLATE_NOOP("action", "Ratio of hammer to key %1, a customary one: nothing is said to "
                                                    "disagree."))
            .arg(value);
    return QCoreApplication::translate("action", "Ratio of hammer to key %1, from %n note(s) of this piano.", nullptr,
                                       ratio.notes)
        .arg(value);
}

QString aftertouchSentence(const DipAccount& account) {
    const QString read = account.read ? millimetres(dimension::aftertouch, *account.read) : QString{};
    if (!account.computed) {
        const DipTerm* unread = firstUnread(account);
        const QString what = unread ? name(unread->dimension).toLower() : QString{};
        return ofAction(QT_TRANSLATE_NOOP("action", "not reckoned: %1 is not read")).arg(what);
    }
    const QString computed = keyTravel(*account.computed);
    if (*account.computed < 0)
        return ofAction(QT_TRANSLATE_NOOP("action", "%1 reckoned: the jack does not escape")).arg(computed);
    switch (account.agreement) {
    case DipAgreement::agrees:
        return ofAction(QT_TRANSLATE_NOOP("action", "%1 reckoned, %2 read: they agree")).arg(computed, read);
    case DipAgreement::differs:
        return ofAction(QT_TRANSLATE_NOOP("action", "%1 reckoned, %2 read: one of the readings is off; dip first"))
            .arg(computed, read);
    case DipAgreement::customary:
        return ofAction(QT_TRANSLATE_NOOP("action", "about %1 by a customary ratio, %2 read")).arg(computed, read);
    case DipAgreement::unread:
        break;
    }
    return ofAction(QT_TRANSLATE_NOOP("action", "%1 reckoned \u00B1 %2, not read at the note"))
        .arg(computed, keyTravel(kTwoSided * account.uncertainty.value_or(0)));
}

QString inferredSentence(const DipAccount& account) {
    if (!account.inferred) return {};
    const DipInferred& each = *account.inferred;
    return ofAction(
               QT_TRANSLATE_NOOP("action", "%1 is not read; from the others and the aftertouch it is %2 \u00B1 %3."))
        .arg(name(each.dimension), number(each.value, 2), number(kTwoSided * each.uncertainty, 2));
}

QString againstSentence(const DipAccount& account) {
    if (!account.computed || !account.atAims || account.against.empty()) return {};
    const double apart = *account.computed - *account.atAims;
    QStringList parts;
    for (const DipDifference& each : account.against)
        parts << differenceText(each);
    const QString head = apart < 0 ? ofAction(QT_TRANSLATE_NOOP("action", "%1 less than the aims would leave: %2."))
                                   : ofAction(QT_TRANSLATE_NOOP("action", "%1 more than the aims would leave: %2."));
    return head.arg(keyTravel(std::abs(apart)), parts.join(QStringLiteral(", ")));
}

QStringList accountLines(const NoteAction& action) {
    QStringList lines;
    for (const DipTerm& term : action.account.terms)
        lines << QStringLiteral("%1: %2").arg(name(term.dimension), shareWords(term, action.account.ratio));
    lines << ofAction(QT_TRANSLATE_NOOP("action", "Aftertouch left: %1")).arg(aftertouchSentence(action.account));
    if (const QString inferred = inferredSentence(action.account); !inferred.isEmpty()) lines << inferred;
    if (const QString against = againstSentence(action.account); !against.isEmpty()) lines << against;
    if (action.account.zone)
        lines << ofAction(QT_TRANSLATE_NOOP("action", "Zone of the aftertouch: %1, set to %2"))
                     .arg(zoneText(dimension::aftertouch, *action.account.zone),
                          shown(dimension::aftertouch, action.account.zone->nominal));
    if (action.accountAfter && action.accountAfter->computed)
        lines << ofAction(QT_TRANSLATE_NOOP("action", "After the plan: %1 left"))
                     .arg(keyTravel(*action.accountAfter->computed));
    return lines;
}

QString strokeEventName(StrokeEvent event) {
    switch (event) {
    case StrokeEvent::moves:
        return ofAction(QT_TRANSLATE_NOOP("action", "hammer moves"));
    case StrokeEvent::damperStirs:
        return ofAction(QT_TRANSLATE_NOOP("action", "damper stirs"));
    case StrokeEvent::letOff:
        return ofAction(QT_TRANSLATE_NOOP("action", "let-off"));
    case StrokeEvent::bottom:
        break;
    }
    return ofAction(QT_TRANSLATE_NOOP("action", "bottom"));
}

QString strokePlace(StrokeEvent event, double mm) {
    switch (event) {
    case StrokeEvent::moves:
        return millimetres(dimension::lostMotion, mm);
    case StrokeEvent::damperStirs:
        return number(mm, 1);
    case StrokeEvent::letOff:
        return keyTravel(mm);
    case StrokeEvent::bottom:
        break;
    }
    return millimetres(dimension::keyDip, mm);
}

QString strokeEventText(StrokeEvent event, double mm) {
    return ofAction(QT_TRANSLATE_NOOP("action", "%1 at %2")).arg(strokeEventName(event), strokePlace(event, mm));
}

QString strokeSentence(const Stroke& stroke, const Piano& piano) {
    QStringList parts;
    const auto add = [&parts](StrokeEvent event, const std::optional<double>& at) {
        if (at) parts << strokeEventText(event, *at);
    };
    if (piano.vertical()) add(StrokeEvent::moves, stroke.moves);
    add(StrokeEvent::damperStirs, stroke.damperStirs);
    add(StrokeEvent::letOff, stroke.letOff);
    if (stroke.dropAtHammer)
        parts << ofAction(QT_TRANSLATE_NOOP("action", "the hammer drops %1"))
                     .arg(millimetres(dimension::drop, *stroke.dropAtHammer));
    add(StrokeEvent::bottom, stroke.bottom);
    if (stroke.aftertouch && stroke.jackEscapes())
        parts << ofAction(QT_TRANSLATE_NOOP("action", "%1 left")).arg(keyTravel(*stroke.aftertouch));
    if (stroke.aftertouch && !stroke.jackEscapes())
        parts << ofAction(QT_TRANSLATE_NOOP("action", "the jack does not escape: %1 of the way is missing"))
                     .arg(keyTravel(-*stroke.aftertouch));
    if (parts.isEmpty()) parts << ofAction(QT_TRANSLATE_NOOP("action", "nothing of the stroke is read"));
    return QStringLiteral("%1: %2.").arg(noteName(stroke.note, piano), parts.join(QStringLiteral("; ")));
}

} // namespace hammerline::words
