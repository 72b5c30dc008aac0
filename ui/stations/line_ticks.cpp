#include "ui/stations/line_ticks.h"

#include "core/operation/amount.h"
#include "core/plan/plan_in_force.h"
#include "ui/words/said.h"
#include "ui/words/words.h"

#include <QCoreApplication>
#include <QUuid>

#include <algorithm>
#include <cmath>

namespace hammerline {

Outcome<void> tickOff(Workbench& bench, const Step& step, std::optional<double> amount) {
    Plan plan = *bench.plan();
    // what is tried first is turned by the trial's amount, not to the aim: that is what the piano's answer comes from
    const bool trial = step.why == "trial" && step.amount;
    if (trial && !amount) amount = step.amount;
    auto done = doneBy(plan, {step.id, amount, !amount});
    if (!done) return tl::unexpected(done.error());
    std::optional<FrozenPlan> frozen;
    if (plan.uuid.empty()) {
        plan.uuid = QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString();
        frozen = freeze(plan, plan.uuid);
    }
    done->plan = plan.uuid;
    if (auto ticked = bench.tickAnew(std::array{*done}, frozen); !ticked) return ticked;
    bench.setPlan(std::move(plan));
    return {};
}

std::string_view screwOf(const Step& step) {
    if (step.operation == operation::capstanTurn) return "capstan";
    if (step.operation == operation::letOffTurn) return "let-off-screw";
    return {};
}

bool isStopped(const PianoRecord& record, const Step& step) {
    const std::string_view screw = screwOf(step);
    if (!step.note || screw.empty()) return false;
    const Finding* finding = standingAt(screw, *step.note, record.findings);
    return finding && finding->fault == "seized" && finding->state == FindingState::toDo;
}

namespace {

QString doneText(const Done& done, const Step* step, const Piano& piano) {
    const auto said = [](const char* text) { return QCoreApplication::translate("AdjustStation", text); };
    if (done.toAim) return said(QT_TRANSLATE_NOOP("AdjustStation", "to aim"));
    if (!done.amount) return said(QT_TRANSLATE_NOOP("AdjustStation", "done"));
    const bool turns = unitOf(done.operation, piano) == AmountUnit::turn;
    const bool against = step && (*done.amount >= 0) != step->positive.value_or(true);
    const double size = std::abs(*done.amount);
    const QString text = turns ? said(QT_TRANSLATE_NOOP("AdjustStation", "%1 turn")).arg(words::turnText(size))
                               : said(QT_TRANSLATE_NOOP("AdjustStation", "%1 mm")).arg(words::number(size, 2));
    return against ? QChar(0x2212) + text : text;
}

} // namespace

LineStates lineStates(const PianoRecord& record, const Plan& plan) {
    LineStates states;
    for (const Step& step : plan.steps)
        if (isStopped(record, step)) states.stopped.insert(step.id);
    for (const Done& done : record.done) {
        if (plan.uuid.empty() || done.plan != plan.uuid) continue;
        const auto step = std::ranges::find(plan.steps, done.step, &Step::id);
        states.ticked[done.step] = doneText(done, step == plan.steps.end() ? nullptr : &*step, record.piano);
    }
    return states;
}

int newerReadings(const PianoRecord& record, const Plan& plan) {
    const auto kept = std::ranges::find(record.plans, plan.uuid, &FrozenPlan::uuid);
    if (plan.uuid.empty() || kept == record.plans.end()) return 0;
    std::ptrdiff_t count = 0;
    for (const Pass& pass : record.passes)
        if (pass.number >= plan.pass)
            count +=
                std::ranges::count_if(pass.cells, [&](const auto& cell) { return cell.second.order() > kept->order; });
    return static_cast<int>(count);
}

Outcome<bool> noteSeized(Workbench& bench, const Step& step) {
    const std::string_view screw = screwOf(step);
    if (!step.note || screw.empty()) return false;
    const std::string text = std::to_string(step.note->value) + ' ' + std::string(screw) + " seized";
    const auto findings = parseFindings(text, *bench.piano());
    if (!findings) return tl::unexpected(findings.error());
    if (const auto added = bench.addFindings(*findings); !added) return tl::unexpected(added.error());
    return true;
}

} // namespace hammerline
