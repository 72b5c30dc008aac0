// From a plan to the lines of its list (look.md 10; amounts by computation 9.5: in turns only where learned).
#include "core/sheet/adjustment_sheet.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

const Response* responseOf(const Plan& plan, OperationId operation) {
    const auto found = std::ranges::find(plan.responses, operation, &Response::operation);
    return found == plan.responses.end() ? nullptr : &*found;
}

const Trial* trialOf(const Plan& plan, OperationId operation) {
    const auto found = std::ranges::find(plan.trials, operation, &Trial::operation);
    return found == plan.trials.end() ? nullptr : &*found;
}

/// How a value lies against its zone, as the window marks it.
void mark(AdjustmentLine& line, const Step& step, const PassView& view) {
    const Cell cell{line.note, step.aimDimension};
    const auto zone = view.review.zones.find(cell);
    if (line.nowWord) {
        const double marks = row(*line.nowWord).marks;
        line.side = marks < 0 ? -1 : marks > 0 ? 1 : 0;
        line.marks = static_cast<int>(std::abs(marks));
        return;
    }
    const auto value = line.read ? line.read : line.now;
    if (!value || zone == view.review.zones.end()) return;
    const Deviation d = deviationOf(*value, zone->second);
    const double size = d.infinite ? 9 : std::abs(d.value.value_or(0));
    if (size <= 1) return;
    line.side = *value < zone->second.nominal ? -1 : 1;
    line.marks = size <= 1.5 ? 1 : size <= 2.5 ? 2 : 3;
}

/// The newest reading of the cell up to the plan's pass; none where something was done at it since.
std::optional<std::int64_t> lastRead(const PianoRecord& record, const PassView& view, Cell cell) {
    if (const auto value = view.pass.value(cell)) return value;
    for (auto pass = record.passes.rbegin(); pass != record.passes.rend(); ++pass) {
        if (pass->number >= view.pass.number) continue;
        const auto value = withRelativeHeights(record.piano, *pass).value(cell);
        if (!value) continue;
        const auto stale = staleCells(record, *pass);
        const bool workedSince = std::find(stale.begin(), stale.end(), cell) != stale.end();
        return workedSince ? std::nullopt : value;
    }
    return {};
}

AdjustmentLine lineOf(const Step& step, const PianoRecord& record, const PassView& view,
                      const std::map<std::string, int>& numbers, bool learned) {
    AdjustmentLine line;
    line.step = &step;
    line.note = *step.note;
    line.colour = colourOf(line.note, record.piano);
    line.section = sectionIndexOf(line.note, record.piano);
    line.now = step.now;
    line.nowWord = step.nowWord;
    line.read = lastRead(record, view, {line.note, step.aimDimension});
    for (const std::string& earlier : step.after)
        if (const auto found = numbers.find(earlier); found != numbers.end())
            line.afterStep = std::max(line.afterStep.value_or(0), found->second);
    mark(line, step, view);
    const std::optional<double> go = step.go ? step.go : step.amount;
    if (step.unit == AmountUnit::turn && learned && go) {
        // the whole amount: the hand's words say themselves where it goes on beyond one go
        line.handAmount = handAmount(step.amount.value_or(*go), capOf(step.operation, record.piano));
    }
    if (step.unit == AmountUnit::mm) line.mm = go;
    line.further = step.amount && go && std::abs(*step.amount) > std::abs(*go) * 1.000001;
    return line;
}

std::vector<SheetMove::Leads> leadsOf(const Step& step, const Plan& plan) {
    std::vector<SheetMove::Leads> leads;
    const Response* response = responseOf(plan, step.operation);
    if (!response || !step.amount) return leads;
    for (const Effect& effect : response->effects)
        leads.push_back({effect.dimension, effect.perUnit * *step.amount});
    return leads;
}

SheetMove moveOf(const Step& step, const Plan& plan) {
    SheetMove move;
    move.step = &step;
    if (!step.notes.empty()) move.range = {step.notes.front().value, step.notes.back().value};
    move.whole = step.amount;
    move.go = step.go ? step.go : step.amount;
    if (step.amount && step.go && *step.go != 0)
        move.goes = static_cast<int>(std::ceil(std::abs(*step.amount / *step.go) - 1e-9));
    for (const auto& [note, mm] : step.amounts)
        move.places.push_back({NoteNumber{note}, move.goes > 1 ? mm / move.goes : mm});
    move.leadsTo = leadsOf(step, plan);
    return move;
}

AdjustmentWork workOf(const OperationGroup& group, int number, const PianoRecord& record, const PassView& view,
                      const Plan& plan, const std::map<std::string, int>& numbers) {
    AdjustmentWork work;
    work.number = number;
    work.operation = group.operation;
    work.minutes = group.minutes;
    work.learned = group.learned;
    work.cap = capOf(group.operation, record.piano);
    work.guard = row(group.operation).guard;
    if (const Response* response = responseOf(plan, group.operation); response && !response->effects.empty())
        (group.learned ? work.answer : work.guess) = response->effects.front();
    if (!group.learned) work.trial = trialOf(plan, group.operation);
    for (const Step* step : group.steps) {
        if (step->note) {
            work.lines.push_back(lineOf(*step, record, view, numbers, group.learned));
            work.lines.back().ticked = std::ranges::any_of(record.done, [&](const Done& done) {
                return !plan.uuid.empty() && done.plan == plan.uuid && done.step == step->id;
            });
        } else
            work.moves.push_back(moveOf(*step, plan));
        work.opposite = work.opposite || step->opposite;
        if (std::ranges::find(work.directions, step->direction) == work.directions.end())
            work.directions.push_back(step->direction);
    }
    return work;
}

std::vector<MendFirst> mendFirst(const Plan& plan) {
    std::vector<MendFirst> list;
    for (const BlockedNote& blocked : plan.blocked) {
        const auto same = std::ranges::find_if(list, [&](const MendFirst& m) {
            return m.part == blocked.finding.part && m.fault == blocked.finding.fault;
        });
        MendFirst& entry =
            same != list.end() ? *same : list.emplace_back(MendFirst{blocked.finding.part, blocked.finding.fault, {}});
        if (std::ranges::find(entry.notes, blocked.note) == entry.notes.end()) entry.notes.push_back(blocked.note);
    }
    for (MendFirst& entry : list)
        std::ranges::sort(entry.notes);
    return list;
}

} // namespace

AdjustmentSheet adjustmentSheet(const PianoRecord& record, const PassView& view, const Plan& plan) {
    AdjustmentSheet sheet;
    sheet.mendFirst = mendFirst(plan);
    sheet.minutes = plan.minutes;
    std::map<std::string, int> numbers; // step id -> number of its work
    int number = 0;
    for (const AccessGroup& group : groupSteps(plan, record.piano)) {
        AdjustmentVisit visit{group.access, group.minutesToGetThere, {}};
        for (const OperationGroup& operation : group.operations) {
            visit.works.push_back(workOf(operation, ++number, record, view, plan, numbers));
            for (const Step* step : operation.steps)
                numbers[step->id] = number;
            sheet.rows += visit.works.back().lines.size() + visit.works.back().moves.size();
            sheet.trialFirst = sheet.trialFirst || visit.works.back().trial;
        }
        sheet.visits.push_back(std::move(visit));
    }
    return sheet;
}

} // namespace hammerline
