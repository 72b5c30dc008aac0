#include "ui/words/work_now.h"

#include "ui/words/said.h"
#include "ui/words/step_texts.h"
#include "ui/words/survey_names.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <algorithm>
#include <cmath>

namespace hammerline::words {
namespace {

#define T(text) QT_TRANSLATE_NOOP("work", text)
constexpr std::array kStepStateNames{
    KeyedText{"waits", T("waits")}, KeyedText{"open", T("open")},           KeyedText{"part-done", T("part done")},
    KeyedText{"done", T("done")},   KeyedText{"not-here", T("not needed")},
};
constexpr std::array kStepReasons{
    KeyedText{"sound", T("every part of it was found sound")},
    KeyedText{"in-order", T("read and in order")},
    KeyedText{"gone-past", T("not ticked, and later work is done")},
    KeyedText{"comes-later", T("its turn comes later")},
    KeyedText{"not-asked", T("nothing that was read or found asks for it")},
    KeyedText{"part-off", QT_TRANSLATE_NOOP("work", "a part that has to go back is still off")},
    KeyedText{"no-work", T("nothing behind it is to be done")},
};
constexpr std::array kWorkPartNames{
    KeyedText{"before", T("Before anything is moved")},
    KeyedText{"opening", T("Opening and taking out")},
    KeyedText{"keys", T("Bed, frame and keys")},
    KeyedText{"bench", T("The action on the bench")},
    KeyedText{"seated", T("Back in, seated, fitted")},
    KeyedText{"regulating", T("Regulating")},
    KeyedText{"player", T("The player")},
    KeyedText{"after", T("The end, and after")},
};
#undef T

QString ofWork(const char* text) {
    return QCoreApplication::translate("work", text);
}

/// The notes, the first few of many.
QString noteList(const std::vector<NoteNumber>& notes) {
    return QString::fromStdString(writeNotes(notes));
}

QString supplyNames(const std::set<std::string>& supplies) {
    QStringList names;
    for (const std::string& each : supplies)
        names << supplyName(each);
    return names.join(QStringLiteral(", "));
}

QString partsToMend(const StepNow& now) {
    QStringList names;
    for (const std::string_view part : now.parts)
        names << partOfActionName(part);
    return names.join(QStringLiteral(", "));
}

/// Lines of the plan were carried out at every one of these notes.
bool turnedAt(const StepNow& now, const std::vector<NoteNumber>& notes) {
    return !notes.empty() && std::ranges::all_of(notes, [&](NoteNumber note) {
        return std::ranges::find(now.doneNotes, note) != now.doneNotes.end();
    });
}

/// What is done, without a full stop.
QString whatToDo(const NextAct& next) {
    const StepNow& now = *next.step;
    const QString step = stepName(now.step->id);
    const QString notes = noteList(next.notes);
    switch (now.asks) {
    case StepAsks::mend:
        if (notes.isEmpty()) return ofWork("%1 (%2)").arg(step, partsToMend(now));
        return ofWork("%1 (%2), notes %3").arg(step, partsToMend(now), notes);
    case StepAsks::turn:
        if (notes.isEmpty()) return ofWork("%1, all notes at once").arg(step);
        return ofWork("%1, notes %2").arg(step, notes);
    case StepAsks::trial:
        return ofWork("Turn the trial notes (%1), notes %2").arg(name(*now.operation).toLower(), notes);
    case StepAsks::readAgain:
        if (now.dimension)
            return ofWork("Read the trial notes again (%1), notes %2").arg(name(*now.dimension).toLower(), notes);
        return ofWork("Begin a pass and read again what was worked on, notes %1").arg(notes);
    case StepAsks::read:
        if (!now.dimension) return step;
        if (turnedAt(now, next.notes))
            return ofWork("%1: read %2 again where it was turned, notes %3")
                .arg(step, name(*now.dimension).toLower(), notes);
        return ofWork("%1, and read %2 as you go: not read yet at notes %3")
            .arg(step, name(*now.dimension).toLower(), notes);
    case StepAsks::tick:
        break;
    }
    return notes.isEmpty() ? step : ofWork("%1, notes %2").arg(step, notes);
}

/// Where the work is done, unless a reading or a look is meant.
QString whereToDo(const NextAct& next, const Piano& piano) {
    const bool reading = next.step->asks == StepAsks::readAgain;
    const bool opens = next.step->step->part == WorkPart::opening; // its name says where
    return reading || opens ? QString() : workAccessName(accessFor(*next.step->step, piano, next.notes.size()));
}

} // namespace

QString stepName(std::string_view id) {
    const StepText* text = stepText(id);
    return text ? QCoreApplication::translate("work", text->name) : QString();
}

QString tookSentence(std::string_view step, double customary, const TaughtMinutes& really) {
    const auto whole = [](double minutes) { return QString::number(std::llround(minutes)); };
    const QString usual =
        customary > 0 ? QCoreApplication::translate("work", "customary %1 min; ").arg(whole(customary)) : QString();
    return QCoreApplication::translate("work", "%1: %2really %3 min, median of %4 pianos (%5 to %6).")
        .arg(stepName(step), usual, whole(really.median))
        .arg(really.pianos)
        .arg(whole(really.least), whole(really.most));
}

QString stepStateName(StepState state) {
    return saidOf(kStepStateNames, key(state), "work");
}

QString workPartName(WorkPart part) {
    return saidOf(kWorkPartNames, key(part), "work");
}

QString stepReason(const StepNow& now) {
    if (!now.remark.empty()) return QString::fromStdString(now.remark);
    return saidOf(kStepReasons, now.reason, "work");
}

QString stepLeft(const StepNow& now, const Piano&) {
    QStringList out;
    if (now.asks == StepAsks::mend) out << partsToMend(now);
    if (now.lines > 0) out << QCoreApplication::translate("work", "%n line(s) of the plan", nullptr, now.lines);
    if (now.asks == StepAsks::read && now.dimension) out << ofWork("%1 not read").arg(name(*now.dimension));
    if (!now.notes.empty()) out << ofWork("notes %1").arg(noteList(now.notes));
    if (!now.supplies.empty()) out << ofWork("waits for parts: %1").arg(supplyNames(now.supplies));
    if (now.reason == "part-off") out << stepReason(now);
    if (!now.waitsFor.empty()) out << ofWork("after: %1").arg(stepName(now.waitsFor.front()));
    return out.join(QStringLiteral("; "));
}

QString nextWithoutPiano() {
    return ofWork("Next: enter the piano.");
}

QString nextSentence(const NextAct& next, const Piano& piano) {
    switch (next.kind) {
    case NextKind::piano:
        return nextWithoutPiano();
    case NextKind::bench:
        return ofWork("Next: read the reference notes on the bench; the plan waits until they agree with the piano.");
    case NextKind::measureAgain:
        return ofWork("Next: measure again, %1 first: the readings of notes %2 cannot all be true.")
            .arg(next.dimension ? name(*next.dimension).toLower() : QString(), noteList(next.notes));
    case NextKind::decide:
        return ofWork("Next: read %1 again at notes %2: one cause may explain them all, so none of them is turned yet.")
            .arg(next.dimension ? name(*next.dimension).toLower() : QString(), noteList(next.notes));
    case NextKind::look:
        return ofWork("Next, before a screw is turned: %1").arg(askFirstSentence(next.question, piano));
    case NextKind::wait:
        return ofWork("Next: get the parts that everything left waits for: %1.").arg(supplyNames(next.supplies));
    case NextKind::done:
        return ofWork("Nothing is left to do on this piano.");
    case NextKind::step:
        break;
    }
    const QString where = whereToDo(next, piano), what = whatToDo(next);
    if (where.isEmpty()) return ofWork("Next: %1.").arg(what);
    return ofWork("Next: %1 – %2.").arg(what, where);
}

std::vector<StepParagraph> stepParagraphs(const StepOfWork& step, const Piano& piano) {
    const StepText* text = stepText(step.id);
    std::vector<StepParagraph> out;
    if (!text) return out;
    const auto add = [&](const QString& heading, const char* body) {
        if (!ofStep(body, piano).isEmpty()) out.push_back({heading, ofStep(body, piano)});
    };
    add(ofWork("What for"), text->whatFor);
    add(ofWork("Tools"), text->tools);
    add(ofWork("How"), text->how);
    add(ofWork("Which way"), text->way);
    add(ofWork("Good when"), text->goodWhen);
    add(ofWork("Usual mistake"), text->mistake);
    for (const std::string_view each : cautionsOf(step, piano))
        out.push_back({ofWork("Caution"), caution(each, piano)});
    return out;
}

} // namespace hammerline::words
