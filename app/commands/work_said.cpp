#include "app/commands/work_said.h"

#include "app/console.h"
#include "app/text_table.h"
#include "core/plan/trials_said.h"
#include "core/sheet/sheet.h"
#include "ui/words/finish.h"
#include "ui/words/said.h"
#include "ui/words/trials.h"
#include "ui/words/words.h"

#include <QCoreApplication>

#include <set>

namespace hammerline::app {
namespace {

using words::utf8;

QString whereOf(const Step& step, const Piano& piano) {
    return step.note ? words::noteName(*step.note, piano) : utf8(writeNotes(step.notes));
}

void sayStepsSpoken(const OperationGroup& group, const Piano& piano, bool json) {
    for (const Step* step : group.steps) {
        const QString by = words::byHowMuch(*step, piano);
        const QString what = words::headline(*step, piano) + (by.isEmpty() ? by : QStringLiteral("; ") + by);
        say(QStringLiteral("  [%1] %2: %3").arg(utf8(step->id), whereOf(*step, piano), what), json);
    }
}

void sayStepsTable(const OperationGroup& group, const Piano& piano, bool json) {
    TextTable table({{inConsole(QT_TRANSLATE_NOOP("console", "Note"))},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Do"))},
                     {inConsole(QT_TRANSLATE_NOOP("console", "By"))},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Set to")), true},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Then"))},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Step (tick --step)"))}},
                    4);
    for (const Step* step : group.steps)
        table.add({whereOf(*step, piano), words::directionWord(step->direction, step->operation, piano),
                   words::byHowMuch(*step, piano), step->aim ? words::aimText(*step) : QString(),
                   words::directionEffect(*step, piano), utf8(step->id)});
    say(QStringLiteral("  ") + words::name(group.operation, piano), json);
    say(table, json);
}

void sayTrials(const Plan& plan, const PianoRecord& record, bool json) {
    for (const TrialAnswer& each : trialsSaid(record))
        if (const QString said = words::trialSentence(each, record.piano); !said.isEmpty()) say(said, json);
    if (const QString bench = words::benchSentence(plan.setUp, record.piano); !bench.isEmpty()) ask(bench, json);
    std::set<OperationId> guessed; // once, though naturals and sharps have a guess each
    for (const Trial& trial : plan.trials)
        for (const Response& response : plan.responses)
            if (response.operation == trial.operation && guessed.insert(trial.operation).second)
                if (const QString guess = words::guessSentence(response, record.piano); !guess.isEmpty())
                    say(guess, json);
    for (const Trial& trial : plan.trials)
        say(inConsole(QT_TRANSLATE_NOOP("console", "Trial first: %1, notes %2, %3."))
                .arg(words::name(trial.operation, record.piano), utf8(writeNotes(trial.notes)),
                     words::directionWord(trial.direction, trial.operation, record.piano) + QChar(u' ') +
                         words::turnText(trial.amount)),
            json);
}

QString summaryOf(const Plan& plan) {
    const QStringList parts = {
        inConsole(QT_TRANSLATE_N_NOOP("console", "%n step(s)"), plan.steps.size()),
        inConsole(QT_TRANSLATE_N_NOOP("console", "about %n minute(s)"), qRound(plan.minutes)),
        inConsole(QT_TRANSLATE_N_NOOP("console", "%n reading(s) to take next"), plan.readNext.size())};
    return parts.join(QStringLiteral(", ")) + u'.';
}

} // namespace

void sayPlan(const Plan& plan, const PianoRecord& record, bool json) {
    const Piano& piano = record.piano;
    sayTrials(plan, record, json);
    for (const AccessGroup& access : groupSteps(plan, piano)) {
        say(inConsole(QT_TRANSLATE_NOOP("console", "%1 (%2 min to get there)"))
                .arg(words::accessName(access.access, piano))
                .arg(access.minutesToGetThere),
            json);
        for (const OperationGroup& group : access.operations)
            sentencesWanted() ? sayStepsSpoken(group, piano, json) : sayStepsTable(group, piano, json);
    }
    for (const Conflict& each : plan.conflicts)
        say(words::conflictSentence(each, piano), json);
    for (const BlockedNote& each : plan.blocked)
        say(inConsole(QT_TRANSLATE_NOOP("console", "%1: mend first. %2"))
                .arg(words::noteName(each.note, piano), words::findingSentence(each.finding, piano)),
            json);
    say(summaryOf(plan), json);
    if (plan.finish) say(words::finishSentence(*plan.finish), json);
}

void sayComparison(const Comparison& comparison, const FinishLine& finish, bool json) {
    say(inConsole(QT_TRANSLATE_NOOP("console", "Pass %1 to pass %2: %3."))
            .arg(comparison.from)
            .arg(comparison.to)
            .arg(words::gradeName(finish.grade)),
        json);
    TextTable table({{inConsole(QT_TRANSLATE_NOOP("console", "Dimension"))},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Read in both")), true},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Outside before")), true},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Outside now")), true},
                     {inConsole(QT_TRANSLATE_NOOP("console", "Got worse")), true}},
                    2);
    for (const DimensionComparison& each : comparison.dimensions) {
        if (!sentencesWanted()) {
            table.add({words::name(each.dimension), QString::number(each.n), QString::number(each.outsideBefore),
                       QString::number(each.outsideNow), QString::number(each.worseNow)});
            continue;
        }
        const QString read = inConsole(QT_TRANSLATE_N_NOOP("console", "%n note(s) read in both"), each.n);
        say(inConsole(QT_TRANSLATE_NOOP("console", "  %1: %2, outside %3 before, %4 now, %5 got worse"))
                .arg(words::name(each.dimension), read)
                .arg(each.outsideBefore)
                .arg(each.outsideNow)
                .arg(each.worseNow),
            json);
    }
    say(table, json);
    for (const auto& [id, why] : comparison.notComparable)
        say(QStringLiteral("  ") + words::notComparableSentence(id, why), json);
    if (const QString line = words::finishSentence(finish); !line.isEmpty()) say(line, json);
}

} // namespace hammerline::app
