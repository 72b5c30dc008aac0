// Words for causes, checks, remedies, conflicts, symptoms and grades. Ids without a sentence of their own are trade
// words already ("let-off-rail-screws") and are read out as such.
#include "ui/words/said.h"
#include "ui/words/survey_names.h"

#include <QCoreApplication>

#include <array>

namespace hammerline::words {

namespace {

constexpr std::array kCauses{
    KeyedText{"sunk-balance-rail", QT_TRANSLATE_NOOP("causes", "The balance rail has sunk")},
    KeyedText{"crushed-balance-felts", QT_TRANSLATE_NOOP("causes", "The balance felts are crushed")},
    KeyedText{"thick-back-cloth", QT_TRANSLATE_NOOP("causes", "The back-rail cloth is too thick")},
    KeyedText{"packed-cloths", QT_TRANSLATE_NOOP("causes", "The cloths between key and wippen are packed down")},
    KeyedText{"low-key-backs", QT_TRANSLATE_NOOP("causes", "The key backs stand low")},
    KeyedText{"moved-wood", QT_TRANSLATE_NOOP("causes", "The wood has moved with the damp")},
    KeyedText{"hammers-filed", QT_TRANSLATE_NOOP("causes", "The hammers have been filed")},
    KeyedText{"crushed-rest-cushions", QT_TRANSLATE_NOOP("causes", "The cushions of the rest rail are crushed")},
    KeyedText{"rail-end-or-piece", QT_TRANSLATE_NOOP("causes", "One end or piece of the rest rail stands wrong")},
    KeyedText{"blow-too-short", QT_TRANSLATE_NOOP("causes", "The blow is too short on the whole")},
    KeyedText{"jack-cannot-escape", QT_TRANSLATE_NOOP("causes", "The jacks cannot escape")},
    KeyedText{"loose-let-off-rail", QT_TRANSLATE_NOOP("causes", "The let-off rail is loose")},
    KeyedText{"checks-after-dip", QT_TRANSLATE_NOOP("causes", "The checking follows the dip")},
    KeyedText{"isolated-part", QT_TRANSLATE_NOOP("causes", "A part of this one note is at fault")},
    KeyedText{"section-block", QT_TRANSLATE_NOOP("causes", "A whole section stands off the rest")},
    KeyedText{"loose-capstan", QT_TRANSLATE_NOOP("causes", "The capstan is loose in its hole")},
    KeyedText{"unstable-rest", QT_TRANSLATE_NOOP("causes", "The keys do not come to rest at one height")},
    KeyedText{"finger-holds-wippen", QT_TRANSLATE_NOOP("causes", "The player's finger holds the wippen up")},
    KeyedText{"nothing-measurable", QT_TRANSLATE_NOOP("causes", "No dimension explains it")},
};

constexpr std::array kRemedies{
    KeyedText{"keep-blow", QT_TRANSLATE_NOOP("causes", "keep the blow as it is")},
    KeyedText{"restore-blow", QT_TRANSLATE_NOOP("causes", "restore the blow at the rest rail")},
    KeyedText{"wait", QT_TRANSLATE_NOOP("causes", "wait until the room has settled")},
    KeyedText{"turn-now", QT_TRANSLATE_NOOP("causes", "turn the capstans now")},
    KeyedText{"capstans", QT_TRANSLATE_NOOP("causes", "turn the capstans")},
    KeyedText{"shims", QT_TRANSLATE_NOOP("causes", "shim the key frame")},
    KeyedText{"tighten-rail", QT_TRANSLATE_NOOP("causes", "tighten the rail")},
    KeyedText{"replace-set", QT_TRANSLATE_NOOP("causes", "replace the set")},
    KeyedText{"read-stack-out", QT_TRANSLATE_NOOP("causes", "read again with the stack out")},
    KeyedText{"lengthen-blow", QT_TRANSLATE_NOOP("causes", "lengthen the blow at the rest rail")},
    KeyedText{"needs-dip", QT_TRANSLATE_NOOP("causes", "more dip, or a shorter blow")},
    KeyedText{"dip-first", QT_TRANSLATE_NOOP("causes", "set the dip first")},
};

constexpr std::array kMissing{
    KeyedText{"notes-outside", QT_TRANSLATE_NOOP("causes", "Notes are still outside their zone.")},
    KeyedText{"too-many-outside", QT_TRANSLATE_NOOP("causes", "More than one note in twenty is still outside.")},
    KeyedText{"notes-undecided", QT_TRANSLATE_NOOP("causes", "Some readings lie too near a limit to be decided.")},
    KeyedText{"notes-uneven", QT_TRANSLATE_NOOP("causes", "Some notes still stand off their neighbours.")},
    KeyedText{"steps-between-neighbours", QT_TRANSLATE_NOOP("causes", "Some steps between neighbours are too large.")},
    KeyedText{"note-stopped", QT_TRANSLATE_NOOP("causes", "A note blocks or has no let-off.")},
    KeyedText{"notes-not-read", QT_TRANSLATE_NOOP("causes", "Not every note has been read.")},
    KeyedText{"nothing-read", QT_TRANSLATE_NOOP("causes", "Nothing has been read in this pass.")},
};

constexpr std::array kAskFirst{
    KeyedText{"action-bolts", QT_TRANSLATE_NOOP("causes", "Are the bolts of the action tight?")},
    KeyedText{"room-humidity",
              QT_TRANSLATE_NOOP("causes", "Is the room damper now than when the action was last right?")},
    KeyedText{"three-felts-compared",
              QT_TRANSLATE_NOOP("causes", "Compare three balance felts with new ones: are they crushed?")},
    KeyedText{"felt-left", QT_TRANSLATE_NOOP("causes", "How much felt is left over the wood of the hammers?")},
    KeyedText{"wink-slow-press",
              QT_TRANSLATE_NOOP("causes", "Press a key very slowly: does the jack wink out under the butt?")},
    KeyedText{"inspect-check-and-catcher",
              QT_TRANSLATE_NOOP("causes", "Look at check felt and catcher leather: hard, bare or loose?")},
    KeyedText{"inspect-check-wire", QT_TRANSLATE_NOOP("causes", "Look at the check wire: loose or bent twice?")},
    KeyedText{"inspect-catcher", QT_TRANSLATE_NOOP("causes", "Look at the catcher: loose or tilted?")},
    KeyedText{"inspect-damper-spring",
              QT_TRANSLATE_NOOP("causes", "Look at the damper springs: broken, weak or too strong?")},
    KeyedText{"action-seated", QT_TRANSLATE_NOOP("causes", "Does the action sit on its studs at both ends?")},
    KeyedText{"seat-action", QT_TRANSLATE_NOOP("causes", "Does the action sit on its studs at both ends?")},
    KeyedText{"back-cloth-thickness",
              QT_TRANSLATE_NOOP("causes", "Is the back-rail cloth new, or thicker than it was?")},
    KeyedText{"capstan-reserve",
              QT_TRANSLATE_NOOP("causes", "Is less than 8 mm of thread left in the wood under the capstans?")},
    KeyedText{"capstan-threads", QT_TRANSLATE_NOOP("causes", "Do the capstans turn loosely in the wood?")},
    KeyedText{"mark-capstan",
              QT_TRANSLATE_NOOP("causes", "Mark a few capstans with a pen: do they turn by themselves?")},
    KeyedText{"hammers-follow-rail",
              QT_TRANSLATE_NOOP("causes", "Pull the rest rail gently: does every hammer follow at once?")},
    KeyedText{"rest-rail-pads", QT_TRANSLATE_NOOP("causes", "Are the cushions of the rest rail crushed or missing?")},
    KeyedText{"rest-rail-cushions",
              QT_TRANSLATE_NOOP("causes", "Are the cushions of the rest rail crushed or missing?")},
    KeyedText{"rest-rail-loose", QT_TRANSLATE_NOOP("causes", "Are the screws of the rest rail tight?")},
    KeyedText{"let-off-rail-screws", QT_TRANSLATE_NOOP("causes", "Are the screws of the let-off rail tight?")},
    KeyedText{"read-stack-out", QT_TRANSLATE_NOOP("causes", "Read lost motion again with the player stack out.")},
    KeyedText{
        "stack-out",
        QT_TRANSLATE_NOOP(
            "causes",
            "Do the fingers of the player stand clear of the wippens? With the stack out, lost motion is read again.")},
    KeyedText{"hammer-set",
              QT_TRANSLATE_NOOP("causes", "Are these hammers of another set, or glued at another length?")},
    KeyedText{"soft-rod", QT_TRANSLATE_NOOP("causes", "Does the soft rod leave the rest rail free?")},
    KeyedText{"dip-first", QT_TRANSLATE_NOOP("causes", "Set the dip first, then read the checks again.")},
    KeyedText{"symptom-checks",
              QT_TRANSLATE_NOOP("causes", "Look at the parts that the symptom names; no reading decides it.")},
    KeyedText{"key-frame", QT_TRANSLATE_NOOP("causes", "Do the key frame's screws hold, and is it flat on the bed?")},
    KeyedText{"repetition-spring",
              QT_TRANSLATE_NOOP(
                  "causes", "Does the spring lift the hammer without a kick? A weak spring looks like too much drop.")},
    KeyedText{"butt-spring",
              QT_TRANSLATE_NOOP("causes", "Look at the butt spring and its cord: broken, tired or off its slot?")},
    KeyedText{"jack-centre", QT_TRANSLATE_NOOP("causes", "Does the jack move freely on its centre?")},
    KeyedText{"heel-cloth", QT_TRANSLATE_NOOP("causes", "Look at the wippen heel cloths: dished or packed down?")},
    KeyedText{"back-cloth", QT_TRANSLATE_NOOP("causes", "Look at the back-rail cloth: packed down or moth-eaten?")},
    KeyedText{"rest-rail-cloth",
              QT_TRANSLATE_NOOP("causes", "Look at the cloth of the rest rail: grooved or packed down?")},
    KeyedText{"action-brackets",
              QT_TRANSLATE_NOOP("causes", "Are the action brackets whole, and their feet on the studs?")},
    KeyedText{"flange-screws", QT_TRANSLATE_NOOP("causes", "Are the flange screws of this section snug?")},
    KeyedText{"jack-spring", QT_TRANSLATE_NOOP("causes", "Look at the jack spring: broken, weak or off its seat?")},
    KeyedText{"hammer-centre",
              QT_TRANSLATE_NOOP("causes", "Does the hammer swing freely on its centre, without side play?")},
    KeyedText{"straightedge-on-rail",
              QT_TRANSLATE_NOOP("causes", "Lay a straightedge on the balance rail: is it hollow?")},
};

/// "let-off-rail-screws" as "let-off rail screws".
QString readOut(std::string_view id) {
    QString text = QString::fromUtf8(id.data(), static_cast<qsizetype>(id.size()));
    text.replace(u'-', u' ');
    text.replace(QStringLiteral("let off"), QStringLiteral("let-off"));
    return text;
}

QString begun(QString text) {
    if (!text.isEmpty()) text[0] = text[0].toUpper();
    return text;
}

QString mm(double value) {
    return QString::number(value, 'f', 1);
}

} // namespace

QString causeName(std::string_view id) {
    const QString known = saidOf(kCauses, id, "causes");
    return known.isEmpty() ? begun(readOut(id)) : known;
}

QString causeSentence(const Cause& cause, const Piano&) {
    const QString notes = QString::fromStdString(writeNotes(cause.notes));
    if (cause.explains.empty())
        return QCoreApplication::translate("causes", "%1 (notes %2).").arg(causeName(cause.key), notes);
    return QCoreApplication::translate("causes", "%1 (notes %2). It would explain %n reading(s).", nullptr,
                                       static_cast<int>(cause.explains.size()))
        .arg(causeName(cause.key), notes);
}

QString checkSentence(std::string_view check) {
    const QString known = saidOf(kAskFirst, check, "causes");
    return known.isEmpty() ? QCoreApplication::translate("causes", "Look at: %1.").arg(readOut(check)) : known;
}

QString remedyName(std::string_view id) {
    const QString known = saidOf(kRemedies, id, "causes");
    if (!known.isEmpty()) return known;
    if (const auto operation = findOperation(id)) return name(*operation);
    return readOut(id);
}

QString conflictSentence(const Conflict& conflict, const Piano& piano) {
    const QString note = noteName(conflict.note, piano);
    // One key is never raised for its aftertouch: its neighbours would lie below it.
    if (conflict.what == "dip-too-shallow-for-aftertouch")
        return QCoreApplication::translate(
                   "causes",
                   "%1 needs dip \u2265 %2 for aftertouch \u2265 %3; key can give %4. The whole key line up by "
                   "%5 at the balance pins (card under the rail, or every paper), or the blow of all notes "
                   "shorter by %6, or let this note's aftertouch be %7.")
            .arg(note, mm(conflict.needsDip), mm(conflict.aftertouchAtLeast), mm(conflict.keyGives),
                 mm(conflict.raiseKey), mm(conflict.shortenBlow), mm(conflict.aftertouchThen));
    if (conflict.what == "dip-too-deep-for-aftertouch")
        return QCoreApplication::translate(
                   "causes",
                   "%1 needs dip \u2264 %2 so that the aftertouch is not too much; the key's zone begins at %3. "
                   "The whole key line down by %4 at the balance pins, or the blow of all notes longer by %5, "
                   "or let this note's aftertouch be %6.")
            .arg(note, mm(conflict.needsDip), mm(conflict.keyGives), mm(conflict.raiseKey), mm(conflict.shortenBlow),
                 mm(conflict.aftertouchThen));
    if (conflict.what == "aftertouch-floats")
        return QCoreApplication::translate("causes",
                                           "%1: all comes in but the aftertouch, which will be about %2. That "
                                           "is left as it is: it is what may float.")
            .arg(note, mm(conflict.aftertouchThen));
    if (conflict.what == "cannot-come-in")
        return QCoreApplication::translate("causes",
                                           "%1: no one go of this work brings all of its readings in. What stands on "
                                           "the list is done first; then read the note again and look at its hammer, "
                                           "its felts and its key.")
            .arg(note);
    return QStringLiteral("%1: %2").arg(note, readOut(conflict.what));
}

namespace {

QString joined(const QStringList& list) {
    return list.join(QStringLiteral(", "));
}

/// "lost motion (its remedy brings about 0.5 mm of aftertouch; then: checks nearer)"
QString supportedCheck(const Advice::Check& check) {
    QStringList more;
    if (check.aftertouchGain)
        more << QCoreApplication::translate("causes", "its remedy brings about %1 mm of aftertouch")
                    .arg(mm(*check.aftertouchGain));
    QStringList effects;
    for (const std::string_view each : check.sideEffects)
        effects << sideEffectName(each);
    if (!effects.isEmpty()) more << QCoreApplication::translate("causes", "then %1").arg(joined(effects));
    if (more.isEmpty()) return symptomCheckName(check.id);
    return QStringLiteral("%1 (%2)").arg(symptomCheckName(check.id), more.join(QStringLiteral("; ")));
}

} // namespace

QString adviceSentence(const Advice& advice, const Piano&) {
    const QString where = advice.notes.first == advice.notes.last
                              ? QString::number(advice.notes.first)
                              : QStringLiteral("%1\u2013%2").arg(advice.notes.first).arg(advice.notes.last);
    QStringList supported, refuted, open;
    for (const Advice::Check& check : advice.checks)
        if (!check.supported)
            open << symptomCheckName(check.id);
        else if (*check.supported)
            supported << supportedCheck(check);
        else
            refuted << symptomCheckName(check.id);
    QString text = QCoreApplication::translate("causes", "%1, notes %2.").arg(symptomName(advice.symptom), where);
    if (advice.checks.empty())
        text += QCoreApplication::translate("causes", " No part of this action does that: what else is it?");
    if (advice.noDimensionExplains)
        text += QCoreApplication::translate("causes", " No reading explains it; nothing is adjusted for it.");
    if (!supported.isEmpty())
        text += QCoreApplication::translate("causes", " Readings and findings point at: %1.").arg(joined(supported));
    if (!open.isEmpty())
        text += QCoreApplication::translate("causes", " Still to look at, in this order: %1.").arg(joined(open));
    if (!refuted.isEmpty()) text += QCoreApplication::translate("causes", " Not it: %1.").arg(joined(refuted));
    return text;
}

QString gradeName(Grade grade) {
    switch (grade) {
    case Grade::even:
        return QCoreApplication::translate("causes", "even");
    case Grade::goodForThisPiano:
        return QCoreApplication::translate("causes", "good for this piano");
    case Grade::notYet:
        return QCoreApplication::translate("causes", "not yet");
    }
    return {};
}

QString missingForGradeSentence(std::string_view id) {
    const QString known = saidOf(kMissing, id, "causes");
    return known.isEmpty() ? begun(readOut(id)) + u'.' : known;
}

QString askFirstSentence(std::string_view id, const Piano& piano) {
    const bool ofSurvey = id == "try-let-off-screws" || findPart(id);
    return ofSurvey ? surveyQuestion(id, piano) : checkSentence(id);
}

} // namespace hammerline::words
