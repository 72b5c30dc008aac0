#include "ui/stations/adjust_ticks.h"

#include "core/operation/amount.h"
#include "core/plan/plan_in_force.h"
#include "ui/widgets/dialogs.h"
#include "ui/words/words.h"

#include <QCoreApplication>
#include <QUuid>

namespace hammerline {

namespace {
QString tickText(const char* text) {
    return QCoreApplication::translate("AdjustStation", text);
}
} // namespace

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
    if (auto ticked = bench.tick(std::array{*done}, frozen); !ticked) return ticked;
    bench.setPlan(std::move(plan));
    return {};
}

ReallyDone askReallyDone(QWidget* parent, const Step& step, const Piano& piano, const QString& first) {
    if (step.unit == AmountUnit::none) return {};
    const AmountUnit unit = unitOf(step.operation, piano);
    const bool turns = unit == AmountUnit::turn;
    const auto typed = Dialogs::now().ask(parent, tickText(QT_TRANSLATE_NOOP("AdjustStation", "Really done")),
                                          turns ? tickText(QT_TRANSLATE_NOOP("AdjustStation", "Turns (1/8, 0.25):"))
                                                : tickText(QT_TRANSLATE_NOOP("AdjustStation", "Millimetres:")),
                                          first);
    if (!typed || typed->isEmpty()) return {};
    const auto read = parseAmount(typed->trimmed().toStdString(), unit);
    if (!read) {
        const char* said =
            turns ? QT_TRANSLATE_NOOP("AdjustStation", "\"%1\" is no amount of turns. Type a number or "
                                                       "a fraction, such as 1/8.")
                  : QT_TRANSLATE_NOOP("AdjustStation", "\"%1\" is no length. Type millimetres, such as 0.4.");
        return {{}, tickText(said).arg(*typed)};
    }
    // typed as a size; its sign is that of the line's direction
    return {step.positive.value_or(true) ? *read : -*read, {}};
}

Outcome<void> noteSeized(Workbench& bench, const Step& step) {
    const bool capstan = step.operation == operation::capstanTurn;
    if (!step.note || (step.operation != operation::letOffTurn && !capstan)) return {};
    const std::string text = std::to_string(step.note->value) + (capstan ? " capstan" : " let-off-screw") + " seized";
    const auto findings = parseFindings(text, *bench.piano());
    if (!findings) return tl::unexpected(findings.error());
    return bench.addFindings(*findings);
}

} // namespace hammerline
