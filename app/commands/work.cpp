// check, plan, tick, compare: from readings to what was done.
#include "app/commands/bench.h"
#include "app/commands/commands.h"
#include "app/console.h"
#include "core/operation/amount.h"
#include "core/plan/plan_in_force.h"
#include "core/plan/trials_said.h"
#include "core/sheet/sheet.h"
#include "ui/words/said.h"
#include "ui/words/survey_names.h"
#include "ui/words/trials.h"

#include <QString>
#include <QUuid>

#include <algorithm>
#include <array>

namespace hammerline::app {
namespace {

using words::utf8;

void sayReview(const PassView& view, const Piano& piano, bool json) {
    const Summary& s = view.review.summary;
    say(QStringLiteral("Pass %1, %2. Zones: %3 (%4).")
            .arg(view.pass.number)
            .arg(utf8(view.pass.label), words::specName(view.sheet.name), utf8(view.sheet.source)),
        json);
    say(QStringLiteral("%1 fitted, %2 within, %3 low, %4 high, %5 undecided, %6 missing, %7 uneven, %8 stale: %9.")
            .arg(s.fitted)
            .arg(s.within)
            .arg(s.low)
            .arg(s.high)
            .arg(s.undecided)
            .arg(s.missing)
            .arg(s.uneven)
            .arg(s.stale)
            .arg(words::gradeName(view.grade)),
        json);
    for (const Cause& cause : view.causes)
        say(words::causeSentence(cause, piano), json);
    for (const Judged& judged : view.review.ranked)
        if (judged.verdict != Verdict::within || judged.uneven || judged.step)
            say(words::cellSentence(judged, piano), json);
    for (const DoubtfulNote& each : view.review.doubtful)
        ask(QStringLiteral("Note %1: these readings cannot all be true; measure again, first %2.")
                .arg(words::noteName(each.note, piano), words::name(each.suspect).toLower()),
            json);
}

bool anythingOpen(const Review& review) {
    const Summary& s = review.summary;
    return s.outside() + s.undecided + s.uneven > 0 || !review.doubtful.empty();
}

} // namespace

int run(const CheckRequest& request, bool json) {
    const auto bench = openBench(request.at, json, OpenMode::readOnly);
    if (!bench) return refused(bench.error(), json);
    const auto rule = parseRule(request.rule);
    if (!rule) return refused(rule.error(), json);
    const auto pass = passOf(*bench, request.pass);
    if (!pass) return refused(pass.error(), json);
    std::optional<SpecSheet> sheet;
    if (!request.spec.empty()) {
        auto read = sheetFrom(request.spec);
        if (!read) return refused(read.error(), json);
        sheet = std::move(*read);
    }
    const auto view = viewPass(bench->record, *pass, *rule, sheet);
    if (!view) return refused(view.error(), json);
    printJson(checkJson(bench->record, *view), json);
    sayReview(*view, bench->record.piano, json);
    return anythingOpen(view->review) || !view->causes.empty() ? kOutside : kDone;
}

namespace {

void askFirst(const Plan& plan, const PianoRecord& record, bool json) {
    for (const auto question : openQuestions(plan, record)) {
        const auto check = checkQuestion(question);
        QString how;
        if (check && check->yesOrNo)
            how = QStringLiteral(" (survey --look \"%1 yes\" or \"%1 no\")").arg(utf8(question));
        else if (!check || !check->part.empty())
            how = QStringLiteral(" (survey --state \"%1\")")
                      .arg(words::surveyAnswer(check ? check->part : question, record.piano));
        ask(words::askFirstSentence(question, record.piano) + how, json);
    }
}

void sayPlan(const Plan& plan, const PianoRecord& record, bool json) {
    const Piano& piano = record.piano;
    for (const TrialAnswer& each : trialsSaid(record))
        if (const QString said = words::trialSentence(each, piano); !said.isEmpty()) say(said, json);
    if (const QString bench = words::benchSentence(plan.setUp, piano); !bench.isEmpty()) ask(bench, json);
    for (const Trial& trial : plan.trials)
        say(QStringLiteral("Trial first: %1, notes %2, %3.")
                .arg(words::name(trial.operation), utf8(writeNotes(trial.notes)),
                     words::directionWord(trial.direction, trial.operation, piano)),
            json);
    for (const AccessGroup& access : groupSteps(plan, piano)) {
        say(QStringLiteral("%1 (%2 min to get there)")
                .arg(words::accessName(access.access, piano))
                .arg(access.minutesToGetThere),
            json);
        for (const OperationGroup& group : access.operations)
            for (const Step* step : group.steps) {
                const QString where = step->note ? words::noteName(*step->note, piano) : utf8(writeNotes(step->notes));
                say(QStringLiteral("  [%1] %2: %3").arg(utf8(step->id), where, words::headline(*step, piano)), json);
            }
    }
    for (const Conflict& each : plan.conflicts)
        say(words::conflictSentence(each, piano), json);
    for (const BlockedNote& each : plan.blocked)
        say(QStringLiteral("%1: mend first. %2")
                .arg(words::noteName(each.note, piano), words::findingSentence(each.finding, piano)),
            json);
    say(QStringLiteral("%1 steps, about %2 minutes, %3 readings to take next.")
            .arg(plan.steps.size())
            .arg(plan.minutes, 0, 'f', 0)
            .arg(plan.readNext.size()),
        json);
}

bool anythingToDo(const Plan& plan) {
    return plan.setUp.waits() || !plan.steps.empty() || !plan.trials.empty() || !plan.conflicts.empty() ||
           !plan.blocked.empty();
}

} // namespace

int run(const PlanRequest& request, bool json) {
    const auto bench = openBench(request.at, json, OpenMode::readOnly);
    if (!bench) return refused(bench.error(), json);
    const auto plan = planFor(*bench, request);
    if (!plan) return refused(plan.error(), json);
    printJson(planJson(*plan, bench->record), json);
    askFirst(*plan, bench->record, json);
    sayPlan(*plan, bench->record, json);
    return anythingToDo(*plan) ? kOutside : kDone;
}

namespace {

/// What was said of a step is taken back; a step nothing was said of is refused.
int notDone(Bench& bench, const Plan& plan, const std::string& step, bool json) {
    const bool said = std::ranges::any_of(bench.record.done, [&](const Done& done) {
        return !plan.uuid.empty() && done.plan == plan.uuid && done.step == step;
    });
    if (!said) return refused({RefusalCode::noSuchStep, {}, step, {}}, json);
    const auto act = bench.book.untick(bench.record.uuid, plan.uuid, std::array{step});
    if (!act) return refused(act.error(), json);
    say(QStringLiteral("Not done: %1.").arg(QString::fromStdString(step)), json);
    return done(*act, json, ", \"plan\": \"" + plan.uuid + "\"");
}

} // namespace

int run(const TickRequest& request, bool json) {
    if (request.all == !request.step.empty() || (request.aim && !request.amount.empty()))
        return refused(
            {RefusalCode::usage, {}, "tick takes --all, or --step ID with --amount, --aim or --not-done", {}}, json);
    if (request.notDone && (request.all || request.aim || !request.amount.empty()))
        return refused({RefusalCode::usage, {}, "--not-done takes --step ID alone", {}}, json);
    auto bench = openBench(request.plan.at, json);
    if (!bench) return refused(bench.error(), json);
    auto plan = planFor(*bench, request.plan);
    if (!plan) return refused(plan.error(), json);
    if (request.notDone) return notDone(*bench, *plan, request.step, json);
    std::optional<FrozenPlan> frozen;
    if (plan->uuid.empty()) {
        frozen = freeze(*plan, QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString());
        plan->uuid = frozen->uuid;
    }
    std::vector<Done> doneNow;
    if (request.all) {
        doneNow = allDone(*plan);
        if (doneNow.empty()) return refused({RefusalCode::noPlan, {}, {}, {}}, json);
    } else {
        std::optional<double> amount;
        if (!request.amount.empty()) {
            const auto step = std::ranges::find(plan->steps, request.step, &Step::id);
            const auto read =
                parseAmount(request.amount, step == plan->steps.end() ? AmountUnit::turn
                                                                      : unitOf(step->operation, bench->record.piano));
            if (!read) return refused(read.error(), json);
            amount = *read;
        }
        auto one = doneBy(*plan, Tick{request.step, amount, request.aim});
        if (!one) return refused(one.error(), json);
        doneNow.push_back(std::move(*one));
    }
    const auto act = bench->book.tickAnew(bench->record.uuid, doneNow, frozen);
    if (!act) return refused(act.error(), json);
    say(QStringLiteral("%1 steps ticked off.").arg(doneNow.size()), json);
    return done(*act, json, ", \"plan\": \"" + plan->uuid + "\", \"ticked\": " + std::to_string(doneNow.size()));
}

int run(const CompareRequest& request, bool json) {
    const auto bench = openBench(request.at, json, OpenMode::readOnly);
    if (!bench) return refused(bench.error(), json);
    const auto to = passOf(*bench, request.to);
    if (!to) return refused(to.error(), json);
    auto from = Outcome<int>(std::max(1, *to - 1));
    if (!request.from.empty()) from = passOf(*bench, request.from);
    if (!from) return refused(from.error(), json);
    const auto comparison = comparePasses(bench->record, sheetOf(bench->record), *from, *to);
    if (!comparison) return refused(comparison.error(), json);
    printJson(comparisonJson(*comparison), json);
    say(QStringLiteral("Pass %1 to pass %2: %3.").arg(*from).arg(*to).arg(words::gradeName(comparison->grade)), json);
    int outside = 0;
    for (const DimensionComparison& each : comparison->dimensions) {
        outside += each.outsideNow;
        say(QStringLiteral("  %1: %2 notes read in both, outside %3 before, %4 now, %5 got worse")
                .arg(words::name(each.dimension))
                .arg(each.n)
                .arg(each.outsideBefore)
                .arg(each.outsideNow)
                .arg(each.worseNow),
            json);
    }
    for (const auto& [id, why] : comparison->notComparable)
        say(QStringLiteral("  ") + words::notComparableSentence(id, why), json);
    for (const auto why : comparison->missingForGrade)
        say(words::missingForGradeSentence(why), json);
    return outside > 0 || comparison->grade == Grade::notYet ? kOutside : kDone;
}

} // namespace hammerline::app
