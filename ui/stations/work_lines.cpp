#include "ui/stations/work_lines.h"

#include "core/plan/plan_in_force.h"
#include "core/work/evidence.h"
#include "ui/stations/amount_field.h"
#include "ui/stations/plan_text.h"
#include "ui/stations/plan_tools.h"
#include "ui/stations/work_page.h"
#include "ui/words/words.h"

#include <QKeyEvent>

#include <algorithm>
#include <array>

namespace hammerline {

namespace {

const StepOfWork* stepOfWork(const AdjustmentWork& work, const Piano& piano) {
    const auto note = work.lines.empty() ? std::nullopt : std::optional(work.lines.front().note);
    return stepOf(work.operation, note, piano);
}

} // namespace

WorkLines::WorkLines(Workbench& bench, WorkPage& page, const PlanTools& tools, QObject* parent)
    : QObject(parent), m_bench(bench), m_page(page), m_tools(tools) {
    RowTable& lines = m_page.lines();
    lines.setKeys([this](QKeyEvent* event) { return key(event); });
    connect(&lines, &RowTable::moved, this, [this](int at) { follow(at); });
    connect(&lines, &RowTable::boxClicked, this, [this](int key) { toggle(key); });
}

void WorkLines::reckon() {
    if (!m_bench.record() || !m_bench.pass()) return;
    auto plan = planInForce(*m_bench.record(), m_bench.sheet(), m_bench.passNumber(), m_tools.options());
    if (!plan) {
        Q_EMIT notice(words::sentence(plan.error()));
        return;
    }
    m_bench.setPlan(std::move(*plan));
}

void WorkLines::refresh() {
    const Plan* plan = m_bench.plan();
    const PassView* view = plan ? m_bench.view(plan->pass) : nullptr;
    m_works.clear();
    m_sheet = {};
    m_states = {};
    if (!view) return m_page.showNoPlan();
    const PianoRecord& record = *m_bench.record();
    m_sheet = adjustmentSheet(record, *view, *plan);
    m_states = lineStates(record, *plan);
    for (const AdjustmentVisit& visit : m_sheet.visits)
        for (const AdjustmentWork& each : visit.works)
            if (const StepOfWork* step = stepOfWork(each, record.piano)) m_works[step->id].push_back(&each);
    m_page.showNewer(newerReadings(record, *plan), plan->pass);
    m_page.showSetUp(plan->setUp, record.piano);
    m_page.showAsked(plan->setUp.waits() ? std::vector<std::string_view>{} : openQuestions(*plan, record),
                     record.piano);
    m_page.showLeads(planText(*plan, *view, record, m_sheet));
}

int WorkLines::openLines(const AdjustmentWork& work) const {
    const auto open = [&](const Step& step) { return !m_states.ticked.contains(step.id); };
    const auto lines = std::ranges::count_if(work.lines, [&](const auto& line) { return open(*line.step); });
    const auto moves = std::ranges::count_if(work.moves, [&](const auto& move) { return open(*move.step); });
    return static_cast<int>(lines + moves);
}

std::string_view WorkLines::firstOpenStep() const {
    for (const AdjustmentVisit& visit : m_sheet.visits)
        for (const AdjustmentWork& each : visit.works) {
            const StepOfWork* step = openLines(each) > 0 ? stepOfWork(each, *m_bench.piano()) : nullptr;
            if (step) return step->id;
        }
    return {};
}

bool WorkLines::isSpent() const {
    const Plan* plan = m_bench.plan();
    const bool ofBefore = plan && !plan->uuid.empty() && plan->pass < m_bench.passNumber();
    return ofBefore && firstOpenStep().empty();
}

void WorkLines::show(std::string_view step) {
    const auto found = m_works.find(step);
    if (found == m_works.end()) return;
    const auto& works = found->second;
    const auto open = std::ranges::find_if(works, [this](const AdjustmentWork* each) { return openLines(*each) > 0; });
    const bool another = std::exchange(m_step, found->first) != step;
    if (another || m_at >= works.size())
        m_at = static_cast<std::size_t>(open == works.end() ? 0 : open - works.begin());
    fillWork();
    if (!another) return;
    beginAtOpen();
    if (!meetNote()) follow(m_page.lines().currentKey());
}

/// At the first line that is not ticked. A trial stands above all others, whatever its notes.
void WorkLines::beginAtOpen() {
    RowTable& lines = m_page.lines();
    lines.setCurrentKey(lines.firstKey());
    const AdjustmentWork& shown = *work();
    const auto isOpen = [this](const AdjustmentLine& line) { return !m_states.ticked.contains(line.step->id); };
    const auto first = std::ranges::find_if(shown.lines, isOpen);
    if (!shown.trial && shown.moves.empty() && first != shown.lines.end())
        lines.setCurrentKey(static_cast<int>(first - shown.lines.begin()));
}

const AdjustmentWork* WorkLines::work() const {
    const auto found = m_works.find(m_step);
    return found == m_works.end() || m_at >= found->second.size() ? nullptr : found->second[m_at];
}

void WorkLines::fillWork() {
    if (const AdjustmentWork* shown = work()) m_page.showWork(*shown, *m_bench.piano(), m_states);
    sayWhy();
}

bool WorkLines::stepWork(int by) {
    const auto found = m_works.find(m_step);
    const auto to = static_cast<std::ptrdiff_t>(m_at) + by;
    if (found == m_works.end() || to < 0 || to >= std::ssize(found->second)) return false;
    m_at = static_cast<std::size_t>(to);
    fillWork();
    beginAtOpen();
    if (!meetNote()) follow(m_page.lines().currentKey());
    return true;
}

/// Where the hand is, the window is; and the page says why this line is there.
void WorkLines::follow(int at) {
    const AdjustmentWork* shown = work();
    const bool line = shown && at >= 0 && at < static_cast<int>(shown->lines.size());
    if (line) {
        const AdjustmentLine& here = shown->lines[static_cast<std::size_t>(at)];
        m_bench.setCell({here.note, here.step->aimDimension});
    }
    sayWhy();
}

void WorkLines::sayWhy() {
    const AdjustmentWork* shown = work();
    const Plan* plan = m_bench.plan();
    const int at = m_page.lines().currentKey();
    const bool line = plan && shown && at >= 0 && at < static_cast<int>(shown->lines.size());
    const PassView* view = line ? m_bench.view(plan->pass) : nullptr;
    if (!view) return m_page.showWhy({}, {});
    const Piano& piano = *m_bench.piano();
    const AdjustmentLine& here = shown->lines[static_cast<std::size_t>(at)];
    const std::optional<Zone> zone = m_bench.zones().at({here.note, here.step->aimDimension});
    m_page.showWhy(words::noteName(here.note, piano), whyText(here, *shown, zone, *plan, *view, piano));
}

bool WorkLines::meetNote() {
    const AdjustmentWork* shown = work();
    if (!shown) return false;
    const int here = m_page.lines().currentKey();
    const auto count = static_cast<int>(shown->lines.size());
    const auto isHere = [&](int key) {
        return key >= 0 && key < count && shown->lines[static_cast<std::size_t>(key)].note == m_bench.cell().note;
    };
    if (isHere(here)) return true;
    for (int key = 0; key < count; ++key)
        if (isHere(key)) {
            m_page.lines().setCurrentKey(key);
            sayWhy();
            return true;
        }
    return false;
}

bool WorkLines::key(QKeyEvent* event) {
    switch (event->key()) {
    case Qt::Key_Space:
        return toggle(m_page.lines().currentKey());
    case Qt::Key_Return:
    case Qt::Key_Enter:
        return tickOpen();
    case Qt::Key_Backspace:
        return takeBack();
    case Qt::Key_S:
        return stopped();
    case Qt::Key_PageDown:
        return nextWork(1);
    case Qt::Key_PageUp:
        return nextWork(-1);
    default:
        break;
    }
    const QString typed = event->text();
    const bool begins = typed.size() == 1 && (typed[0].isDigit() || QStringLiteral(".,/-").contains(typed[0]));
    return begins && askAmount(typed);
}

bool WorkLines::nextWork(int by) {
    if (!stepWork(by)) Q_EMIT stepAsked(by);
    return true;
}

const Step* WorkLines::currentStep() const {
    const AdjustmentWork* shown = work();
    return shown ? hammerline::stepOf(*shown, m_page.lines().currentKey()) : nullptr;
}

/// The field in the row, begun with the key that was typed.
bool WorkLines::askAmount(const QString& first) {
    const Step* step = currentStep();
    const bool measured = step && step->unit != AmountUnit::none;
    if (!measured) return true;
    auto* field = new AmountField(m_page.lines(), *step, *m_bench.piano(), first);
    connect(field, &AmountField::taken, this, [this, id = step->id](double amount) {
        if (tickStep(id, amount)) goOn();
    });
    return true;
}

/// Ticks the line, or says that it was not done after all; the hand stays at it.
bool WorkLines::toggle(int key) {
    const AdjustmentWork* shown = work();
    const Step* step = shown ? hammerline::stepOf(*shown, key) : nullptr;
    if (!step) return true;
    if (m_states.ticked.contains(step->id)) return notDone(step->id);
    (void)tickStep(step->id, {});
    return true;
}

/// Enter goes on: an open line is set to the aim, a ticked one stays as it is.
bool WorkLines::tickOpen() {
    const Step* step = currentStep();
    if (!step) return true;
    const bool stands = m_states.ticked.contains(step->id) || tickStep(step->id, {});
    if (stands) goOn();
    return true;
}

const Step* WorkLines::stepNamed(const std::string& id) const {
    if (!m_bench.plan()) return nullptr;
    const auto& steps = m_bench.plan()->steps;
    const auto found = std::ranges::find(steps, id, &Step::id);
    return found == steps.end() ? nullptr : &*found;
}

/// Ticks a line, or corrects it. False: the book refused it, and it was said.
bool WorkLines::tickStep(const std::string& id, std::optional<double> amount) {
    const Step* step = stepNamed(id);
    if (!step) return false;
    const int at = m_page.lines().currentKey();
    const auto ticked = tickOff(m_bench, Step(*step), amount);
    if (!ticked) Q_EMIT notice(words::sentence(ticked.error()));
    m_page.lines().setCurrentKey(at);
    return ticked.has_value();
}

/// To the next line as it stands in the list.
void WorkLines::goOn() {
    m_page.lines().stepRow(1);
    follow(m_page.lines().currentKey());
}

bool WorkLines::notDone(const std::string& id) {
    const int at = m_page.lines().currentKey();
    const auto taken = m_bench.untick(std::array{id});
    Q_EMIT notice(taken ? tr("Not done: the line is open again. Ctrl+Z brings its tick back.")
                        : words::sentence(taken.error()));
    m_page.lines().setCurrentKey(at);
    return true;
}

/// Backspace speaks of this line alone; what was typed elsewhere is not its to take back.
bool WorkLines::takeBack() {
    const Step* step = currentStep();
    const bool ticked = step && m_states.ticked.contains(step->id);
    if (ticked) return notDone(step->id);
    Q_EMIT notice(tr("This line is not ticked. Ctrl+Z takes back what was done last, wherever it was."));
    return true;
}

bool WorkLines::stopped() {
    const Step* step = currentStep();
    if (!step) return true;
    const auto note = step->note;
    const auto noted = noteSeized(m_bench, *step);
    if (!noted) {
        Q_EMIT notice(words::sentence(noted.error()));
        return true;
    }
    if (*noted && note)
        Q_EMIT notice(tr("Note %1: its screw does not turn. It went to the survey as seized. Ctrl+Z takes it back.")
                          .arg(note->value));
    else
        Q_EMIT notice(tr("This work turns no screw, so nothing was filed. Ctrl+2 takes a finding."));
    return true;
}

} // namespace hammerline
