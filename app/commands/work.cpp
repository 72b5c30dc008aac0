// plan, tick, compare: from a pass to what was done.
#include "app/commands/bench.h"
#include "app/commands/commands.h"
#include "app/commands/work_said.h"
#include "app/console.h"
#include "core/operation/amount.h"
#include "core/plan/plan_in_force.h"
#include "core/sheet/sheet.h"
#include "ui/words/said.h"
#include "ui/words/survey_names.h"

#include <QString>
#include <QUuid>

#include <algorithm>
#include <array>

namespace hammerline::app {
namespace {

using words::utf8;

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
    say(inConsole(QT_TRANSLATE_N_NOOP("console", "%n step(s) ticked off."), doneNow.size()), json);
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
    const auto finish = finishOf(bench->record, sheetOf(bench->record), *to);
    if (!finish) return refused(finish.error(), json);
    printJson(comparisonJson(*comparison, *finish), json);
    sayComparison(*comparison, *finish, json);
    int outside = 0;
    for (const DimensionComparison& each : comparison->dimensions)
        outside += each.outsideNow;
    return outside > 0 || finish->grade == Grade::notYet ? kOutside : kDone;
}

} // namespace hammerline::app
