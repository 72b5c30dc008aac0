#include "core/sheet/note_action.h"

#include "core/plan/after_plan.h"

namespace hammerline {

namespace {

std::optional<Pass> afterOf(const PassView& view, const Plan* plan) {
    if (!plan || plan->pass != view.pass.number) return std::nullopt;
    return passAfter(view.pass, *plan);
}

} // namespace

ActionReckoning::ActionReckoning(const PianoRecord& record, const PassView& view, const Plan* plan)
    : m_piano(record.piano)
    , m_view(view)
    , m_zones(view.sheet, record.piano, record.overrides)
    , m_after(afterOf(view, plan))
    , m_table(record.piano, view.pass)
    , m_touched(static_cast<std::size_t>(record.piano.notes) + 1, false) {
    if (!m_after) return;
    m_tableAfter.emplace(record.piano, *m_after);
    for (const Expected& each : plan->expected)
        m_touched[static_cast<std::size_t>(each.cell.note.value)] = true;
}

const Ratio& ActionReckoning::ratioOf(NoteNumber note) const {
    return m_view.ratio[static_cast<std::size_t>(colourOf(note, m_piano))];
}

NoteAction ActionReckoning::at(NoteNumber note) const {
    const Ratio& ratio = ratioOf(note);
    NoteAction out;
    out.note = note;
    out.account = dipAccount(m_piano, m_table, m_zones, ratio, note);
    out.stroke = strokeOf(m_piano, m_table, ratio, note);
    out.zones = strokeZones(m_piano, m_zones, ratio, note);
    if (!m_tableAfter || !m_touched[static_cast<std::size_t>(note.value)]) return out;
    out.accountAfter = dipAccount(m_piano, *m_tableAfter, m_zones, ratio, note);
    out.strokeAfter = strokeOf(m_piano, *m_tableAfter, ratio, note);
    return out;
}

std::vector<NoteAction> ActionReckoning::all() const {
    std::vector<NoteAction> out;
    out.reserve(static_cast<std::size_t>(m_piano.notes));
    for (int n = 1; n <= m_piano.notes; ++n)
        out.push_back(at({n}));
    return out;
}

std::optional<Judged> judgedLeft(const DipAccount& account) {
    if (!account.computed) return std::nullopt;
    return judgedDistance({account.note, dimension::aftertouch}, *account.computed, account.zone);
}

bool standsOut(const NoteAction& action) {
    if (action.account.agreement == DipAgreement::differs) return true;
    const auto left = judgedLeft(action.account);
    if (!left) return false;
    const bool outside = left->verdict == Verdict::low || left->verdict == Verdict::high;
    return outside || *action.account.computed < 0;
}

} // namespace hammerline
