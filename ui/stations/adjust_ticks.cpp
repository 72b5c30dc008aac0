#include "ui/stations/adjust_ticks.h"

#include "core/plan/plan_in_force.h"

#include <QUuid>

namespace hammerline {

Outcome<void> tickOff(Workbench& bench, const Step& step, std::optional<double> amount) {
    Plan plan = *bench.plan();
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

Outcome<bool> noteSeized(Workbench& bench, const Step& step) {
    const bool capstan = step.operation == operation::capstanTurn;
    if (!step.note || (step.operation != operation::letOffTurn && !capstan)) return false;
    const std::string text = std::to_string(step.note->value) + (capstan ? " capstan" : " let-off-screw") + " seized";
    const auto findings = parseFindings(text, *bench.piano());
    if (!findings) return tl::unexpected(findings.error());
    if (const auto added = bench.addFindings(*findings); !added) return tl::unexpected(added.error());
    return true;
}

} // namespace hammerline
