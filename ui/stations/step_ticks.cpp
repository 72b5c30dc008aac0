#include "ui/stations/step_ticks.h"

#include <QUuid>

#include <algorithm>

namespace hammerline {

Outcome<SaidOfStep> keepSaid(Workbench& bench, const StepSaid& said) {
    const Plan* plan = bench.plan();
    const std::string uuid = QUuid::createUuid().toString(QUuid::WithoutBraces).toStdString();
    const auto work = sayStep(said, *bench.record(), plan, uuid);
    if (!work) return tl::unexpected(work.error());
    if (work->empty()) return SaidOfStep{.nothing = true};
    std::optional<Plan> frozen;
    if (work->plan) {
        frozen = *plan;
        frozen->uuid = uuid;
    }
    if (const auto written = bench.sayWork(*work); !written) return tl::unexpected(written.error());
    if (frozen) bench.setPlan(std::move(frozen));
    return SaidOfStep{.lines = static_cast<int>(work->done.size())};
}

StepSaid lastKept(const std::string& step, const PianoRecord& record) {
    StepSaid said{.step = step, .what = StepSaid::What::undone, .notes = {}, .remark = {}};
    std::int64_t newest = -1;
    for (const WorkMark& mark : record.marks)
        if (mark.step == step) newest = std::max(newest, mark.order);
    for (const WorkMark& mark : record.marks)
        if (mark.step == step && mark.order == newest && mark.note) said.notes.push_back(*mark.note);
    return said;
}

} // namespace hammerline
