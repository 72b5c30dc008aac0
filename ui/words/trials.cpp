#include "ui/words/trials.h"

#include "ui/words/words.h"

#include <QCoreApplication>

#include <algorithm>

namespace hammerline::words {

namespace {

QString trialText(TrialSays says) {
    switch (says) {
    case TrialSays::nothing:
        return QCoreApplication::translate("trials",
                                           "The trial says nothing (%1, notes %2): did the screws turn? Was it the "
                                           "right gauge? The same again on the same notes; the goes add up.");
    case TrialSays::otherWay:
        return QCoreApplication::translate("trials",
                                           "%1 answered the other way on notes %2. Three other notes are tried before "
                                           "any direction turns.");
    case TrialSays::turned:
        return QCoreApplication::translate("trials",
                                           "%1 answers the other way: two sets of notes say so (%2). The directions "
                                           "below are turned.");
    case TrialSays::doesNotAnswer:
        return QCoreApplication::translate("trials",
                                           "%1: these screws do not answer (notes %2): thread, glue, button, or the "
                                           "wrong screw. This work waits until it is found.");
    case TrialSays::answers:
        break;
    }
    return {};
}

} // namespace

QString trialSentence(const TrialAnswer& trial, const Piano& piano) {
    const QString notes = QString::fromStdString(writeNotes(trial.notes));
    if (trial.arms)
        return QCoreApplication::translate("trials",
                                           "%1 answers otherwise than the arms of the key allow (notes %2): measure "
                                           "the arms of this section.")
            .arg(name(trial.operation, piano), notes);
    const QString text = trialText(trial.says);
    return text.isEmpty() ? text : text.arg(name(trial.operation, piano), notes);
}

QString guessSentence(const Response& response, const Piano& piano) {
    const bool byOthers = response.others && !response.learned && !response.effects.empty();
    if (!byOthers) return {};
    const Effect& effect = response.effects.front();
    const double sign = effect.perUnit < 0 ? -1 : 1; // how much, not which way
    const auto figure = [&](double value) { return number(sign * value, 1); };
    const bool turns = unitOf(response.operation, piano) == AmountUnit::turn;
    const double low = std::min(sign * response.others->low95, sign * response.others->high95);
    const double high = std::max(sign * response.others->low95, sign * response.others->high95);
    return QCoreApplication::translate("trials",
                                       "%1: first guess %2 (%3 to %4), by %5 pianos of this book built alike; "
                                       "customary %6.")
        .arg(name(response.operation, piano),
             (turns ? QCoreApplication::translate("trials", "%1 mm a turn")
                    : QCoreApplication::translate("trials", "%1 mm a mm"))
                 .arg(figure(effect.perUnit)),
             number(low, 1), number(high, 1))
        .arg(response.others->pianos)
        .arg(figure(response.others->customary.perUnit));
}

} // namespace hammerline::words
