// The player that goes by the program: measure, plan, work, read what the plan asks for (computation 13).
#include "core/plan/plan.h"
#include "tests/virtual_action/players.h"

#include <algorithm>
#include <set>

namespace virtual_action {

using namespace hammerline;

namespace {

constexpr int kMostRounds = 24; // trials and reading rounds together; never reached by a plan that converges

class ByProgram {
public:
    ByProgram(Workshop& workshop, const SpecSheet& sheet, Watch watch)
        : m_shop(workshop), m_sheet(sheet), m_zones(sheet, workshop.piano()), m_watch(std::move(watch)) {
        m_record.piano = workshop.piano();
        m_record.specName = sheet.name;
    }

    Played play() {
        std::vector<Cell> asked = everything();
        m_played.passes = 1;
        for (int round = 0; round < kMostRounds && m_played.passes <= kMostPasses; ++round) {
            if (asked.empty()) break;
            read(asked);
            look(Moment::read);
            const Plan plan = planned();
            const bool worked = work(plan);
            nameConflicts(plan);
            if (worked) look(Moment::worked);
            if (m_played.finished) break;
            asked = whatToRead(plan);
            if (!worked && asked == m_lastAsked) break; // read twice, and still nothing to do about it
            m_lastAsked = worked ? std::vector<Cell>{} : asked;
            if (!midway(plan)) ++m_played.passes;
        }
        m_played.minutes = m_shop.minutes();
        m_played.record = std::move(m_record);
        return m_played;
    }

private:
    Plan planned() {
        const int pass = m_record.passes.back().number;
        const Plan plan = *makePlan(m_record, m_sheet, pass, {});
        const PlanOptions decided = answer(plan);
        return m_answered ? *makePlan(m_record, m_sheet, pass, decided) : plan;
    }

    /// What a cause holds back is asked of a person, who looks: the screws of a virtual piano are tight and its felts
    /// whole, and no season brings back what its wood lost.
    PlanOptions answer(const Plan& plan) {
        PlanOptions decided;
        m_answered = false;
        for (const Cause& cause : plan.causes) {
            const bool holds = std::any_of(plan.readNext.begin(), plan.readNext.end(), [&](const ToRead& each) {
                return each.why == kHeldBack &&
                       std::find(cause.explains.begin(), cause.explains.end(), each.cell) != cause.explains.end();
            });
            if (!holds) continue;
            m_answered = true;
            if (cause.remedy == "wait") decided.accepted[std::string(cause.key)] = "turn-now";
            for (const std::string_view check : cause.checks)
                lookAt(checkQuestion(check));
        }
        return decided;
    }

    void lookAt(const std::optional<CheckQuestion>& question) {
        if (!question || question->part.empty()) return;
        m_shop.lookAtPart();
        Finding sound;
        sound.part = question->part;
        sound.state = FindingState::sound;
        sound.order = ++m_order;
        m_record.findings.push_back(sound);
    }

    void look(Moment moment) const {
        if (m_watch) m_watch(moment, m_record, m_shop.action());
    }

    std::vector<Cell> everything() const {
        std::vector<Cell> cells;
        for (const DimensionId id : yardstickDimensions())
            for (int note = 1; note <= m_shop.piano().notes; ++note)
                if (fitted(id, {note}, m_shop.piano())) cells.push_back({{note}, id});
        return cells;
    }

    /// Readings after work open the next pass.
    void read(const std::vector<Cell>& cells) {
        Pass pass;
        pass.number = static_cast<int>(m_record.passes.size()) + 1;
        for (const Cell cell : cells) {
            hammerline::Reading reading;
            if (m_toLook.contains(cell))
                reading.word = m_shop.looksOnRail(cell.note.value) ? word::ok : word::offRail;
            else
                reading.count = fromTrade(*m_shop.read(cell), row(cell.dimension).kind);
            reading.order = ++m_order;
            pass.cells[cell].trials = {reading};
        }
        m_record.passes.push_back(std::move(pass));
    }

    /// While screws are tried or only half turned, only those are looked at: the rest is read when its work is done.
    std::vector<Cell> whatToRead(const Plan& plan) {
        std::vector<Cell> cells = m_looks;
        m_toLook.clear();
        for (const ToRead& each : plan.readNext)
            if (each.why == kLookAtRail) m_toLook.insert(each.cell);
        for (const Cell cell : m_looks)
            m_toLook.erase(cell);
        for (const ToRead& each : plan.readNext)
            if (ours(each.cell.dimension) && (midway(plan) ? each.why == "trial" : true)) cells.push_back(each.cell);
        std::sort(cells.begin(), cells.end());
        cells.erase(std::unique(cells.begin(), cells.end()), cells.end());
        return cells;
    }
    bool midway(const Plan& plan) const { return !plan.trials.empty() || !m_looks.empty(); }
    static bool ours(DimensionId id) {
        const auto all = yardstickDimensions();
        return std::find(all.begin(), all.end(), id) != all.end();
    }

    void nameConflicts(const Plan& plan) {
        m_played.conflicts.clear();
        for (const Conflict& conflict : plan.conflicts)
            m_played.conflicts.emplace_back(conflict.what);
    }

    bool work(const Plan& plan) {
        bool worked = false;
        m_waiting.clear();
        m_looks.clear();
        for (std::size_t i = 0; i < plan.steps.size();) {
            const OperationId operation = plan.steps[i].operation;
            std::vector<const Step*> group; // one kind of work along the keyboard
            for (; i < plan.steps.size() && plan.steps[i].operation == operation; ++i)
                group.push_back(&plan.steps[i]);
            if (operation == operation::balancePunching)
                worked = punchBalance(plan, group) || worked;
            else
                for (const Step* step : group)
                    worked = workStep(plan, *step) || worked;
            m_shop.playIn();
            const Standing now = standing(m_shop.action(), m_zones);
            m_played.nearly = now.nearlyDone();
            m_played.finished = now.done();
            if (m_played.finished) break;
        }
        return worked;
    }

    /// A screw whose answer is not learned waits for its trial, and with it everything that it will move.
    bool waits(const Step& step) {
        const bool unlearned = step.unit == AmountUnit::turn && !step.amount;
        const bool follows = std::any_of(step.after.begin(), step.after.end(),
                                         [&](const std::string& id) { return m_waiting.contains(id); });
        if (unlearned || follows) m_waiting.insert(step.id);
        return unlearned || follows;
    }

    bool punchBalance(const Plan& plan, const std::vector<const Step*>& group) {
        std::map<int, double> punchings;
        for (const Step* step : group)
            if (step->amount && !waits(*step)) {
                punchings[step->note->value] = *step->amount;
                tick(plan, *step, *step->amount);
            }
        m_shop.punchBalance(punchings);
        return !punchings.empty();
    }

    bool workStep(const Plan& plan, const Step& step) {
        if (waits(step)) return false;
        if (step.operation == operation::restRailShim)
            m_shop.padRail(step.amounts);
        else if (step.operation == operation::balanceRailShim)
            m_shop.shimBalanceRail(step.amounts);
        else if (step.operation == operation::backRailShim)
            m_shop.shimBackRail(*step.amount);
        else if (step.unit == AmountUnit::turn)
            return turn(plan, step);
        else if (step.operation == operation::frontPunching && step.amount)
            m_shop.punchFront(step.note->value, *step.amount);
        else if (step.operation == operation::railClothShim && step.amount)
            m_shop.shimRailCloth(step.note->value, *step.amount);
        else if (step.operation == operation::checkBend && step.now && step.aim)
            bendToAim(step);
        else
            return false;
        tick(plan, step, step.amount);
        return true;
    }

    /// "Set to the aim" is set by looking: bent, looked at, and bent once more where it does not read it.
    void bendToAim(const Step& step) {
        const double off = toTrade(*step.now, Kind::length) - *step.aim;
        m_shop.nearCheck(step.note->value, off);
        const double left = *m_shop.read({*step.note, step.aimDimension}) - *step.aim;
        if (std::abs(left) > toTrade(uncertaintyOf(step.aimDimension, m_shop.piano()), Kind::length))
            m_shop.nearCheck(step.note->value, left);
    }

    /// One go within the cap. What is left waits for the look, which is a reading like any other.
    bool turn(const Plan& plan, const Step& step) {
        if (!step.go) return false;
        if (step.operation == operation::capstanTurn)
            m_shop.turnCapstan(step.note->value, *step.go);
        else if (step.operation == operation::letOffTurn)
            m_shop.turnLetOff(step.note->value, *step.go);
        else
            return false;
        tick(plan, step, *step.go);
        if (std::abs(*step.amount - *step.go) > 1e-9) {
            m_looks.push_back({*step.note, step.aimDimension});
            m_waiting.insert(step.id);
        }
        return true;
    }

    void tick(const Plan& plan, const Step& step, std::optional<double> amount) {
        Done done;
        done.operation = step.operation;
        done.notes = step.notes;
        done.amount = amount;
        done.amounts = step.amounts;
        done.toAim = !amount;
        done.aim = step.aim;
        done.step = step.id;
        done.pass = plan.pass;
        done.order = ++m_order;
        m_record.done.push_back(done);
    }

    Workshop& m_shop;
    const SpecSheet& m_sheet;
    Zones m_zones;
    Watch m_watch;
    PianoRecord m_record;
    std::int64_t m_order = 0;
    bool m_answered = false;         // what the newest plan held back for an answer
    std::set<Cell> m_toLook;         // of what is asked: only whether the hammer lies on its rail
    std::vector<Cell> m_looks;       // screws that have more goes to come
    std::set<std::string> m_waiting; // ids of steps left for after the trial or the look
    std::vector<Cell> m_lastAsked;
    Played m_played;
};

} // namespace

Played playProgram(Workshop& workshop, const SpecSheet& sheet) {
    return ByProgram(workshop, sheet, {}).play();
}

Played watchProgram(Workshop& workshop, const SpecSheet& sheet, const Watch& watch) {
    return ByProgram(workshop, sheet, watch).play();
}

} // namespace virtual_action
