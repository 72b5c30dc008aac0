#include "ui/stations/action_desk.h"

#include "core/plan/plan_in_force.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

ActionDesk::ActionDesk(Workbench& bench, QObject* parent) : QObject(parent), m_bench(bench) {
    const auto again = [this] {
        m_ownPlan.reset();
        m_supposed.clear();
        m_rail = 0;
        m_readDue = true;
        stale();
    };
    for (const auto signal : {&Workbench::recordChanged, &Workbench::planChanged, &Workbench::passChanged})
        connect(&m_bench, signal, this, again);
    connect(&m_bench, &Workbench::noteChanged, this, [this] {
        m_supposed.clear();
        stale();
    });
}

bool ActionDesk::ready() const {
    return m_bench.piano() && m_bench.view() && m_bench.note().value <= m_bench.piano()->notes;
}

void ActionDesk::stale() {
    m_due = true;
    Q_EMIT changed();
}

const PassView& ActionDesk::view() const {
    return *m_bench.view();
}

/// The plan in force; where no station thought of one yet, the customary one of this pass.
const Plan* ActionDesk::plan() const {
    const Plan* known = m_bench.plan();
    if (known && known->pass == m_bench.passNumber()) return known;
    if (!m_ownPlan) {
        auto made = planInForce(*m_bench.record(), m_bench.sheet(), m_bench.passNumber(), {});
        if (!made) return nullptr;
        m_ownPlan = std::move(*made);
    }
    return &*m_ownPlan;
}

/// Without a supposition; kept while one is moved about.
void ActionDesk::reckonRead() const {
    if (!m_readDue) return;
    m_readDue = false;
    const ActionReckoning reckoning(*m_bench.record(), view(), plan());
    m_read = reckoning.all();
    m_planned = reckoning.after();
}

void ActionDesk::reckon() const {
    if (!m_due) return;
    m_due = false;
    reckonRead();
    m_all = m_read;
    const std::vector<Supposed> supposed = supposedCells();
    m_supposing = supposed.empty() ? std::nullopt : std::optional(passSupposing(view().pass, supposed));
    if (!m_supposing) return;
    const Piano& piano = m_bench.record()->piano;
    const PassTable table(piano, *m_supposing);
    for (NoteAction& each : m_all) {
        const bool meant = m_rail != 0 || each.note == m_bench.note();
        if (!meant) continue;
        const Ratio& ratio = each.account.ratio;
        each.accountAfter = dipAccount(piano, table, m_bench.zones(), ratio, each.note);
        each.strokeAfter = strokeOf(piano, table, ratio, each.note);
    }
}

/// The rail at every note, and over it what is supposed at the current one. The way the hammer has less the key has
/// more of, R times smaller, until the capstan takes it up.
std::vector<Supposed> ActionDesk::supposedCells() const {
    std::vector<Supposed> out;
    const auto ratioOf = [this](NoteNumber note) { return readOf(note).account.ratio.value; };
    for (int n = 1; m_rail != 0 && n <= m_bench.piano()->notes; ++n) {
        const Cell blow{{n}, dimension::blow}, lost{{n}, dimension::lostMotion};
        if (const auto read = view().pass.value(blow)) out.push_back({blow, toTrade(*read, Kind::length) - m_rail});
        const auto way = view().pass.value(lost);
        if (m_capstansFollow || !way) continue;
        const double added = m_rail / ratioOf({n});
        out.push_back({lost, std::max(0.0, toTrade(*way, Kind::length) + added)});
    }
    const NoteNumber note = m_bench.note();
    if (const auto height = supposed(heightId())) {
        const double from = readAt(heightId()).value_or(heightAim());
        const Pass railMoved = passSupposing(view().pass, out);
        for (const Supposed& each : raisedFront(*m_bench.piano(), railMoved, note, *height - from, ratioOf(note)))
            out.push_back(each);
    }
    for (const auto& [id, mm] : m_supposed)
        out.push_back({{note, id}, mm});
    return out;
}

DimensionId ActionDesk::heightId() const {
    const bool sharp = colourOf(m_bench.note(), *m_bench.piano()) == KeyColour::sharp;
    return sharp ? dimension::sharpHeight : dimension::keyHeight;
}

/// Where a height was not read, the key is taken to stand at its aim.
double ActionDesk::heightAim() const {
    const auto& zone = m_bench.zones().at({m_bench.note(), heightId()});
    return zone ? toTrade(zone->nominal, Kind::length) : 0;
}

std::optional<double> ActionDesk::movedAlong(DimensionId id) const {
    const bool byHeight = supposed(heightId()) && !supposed(id) && id != heightId();
    const bool byRail = m_rail != 0 && !supposed(id);
    if (!byHeight && !byRail) return std::nullopt;
    const auto after = afterAt(id), read = readAt(id);
    const bool moved = after && read && std::abs(*after - *read) > 1e-6;
    return moved ? after : std::nullopt;
}

std::pair<int, int> ActionDesk::notesWithin() const {
    const auto within = [](const DipAccount& account) {
        const auto judged = judgedLeft(account);
        return judged && judged->verdict == Verdict::within && *account.computed >= 0 ? 1 : 0;
    };
    std::pair<int, int> out;
    for (const NoteAction& each : all()) {
        out.first += within(each.account);
        out.second += within(each.accountAfter ? *each.accountAfter : each.account);
    }
    return out;
}

const std::vector<NoteAction>& ActionDesk::all() const {
    reckon();
    return m_all;
}

const NoteAction& ActionDesk::note() const {
    reckon();
    return m_all.at(static_cast<std::size_t>(m_bench.note().value) - 1);
}

const NoteAction& ActionDesk::readOf(NoteNumber note) const {
    return m_read.at(static_cast<std::size_t>(note.value) - 1);
}

const Pass& ActionDesk::passAfter() const {
    reckon();
    if (m_supposing) return *m_supposing;
    return m_planned ? *m_planned : view().pass;
}

std::optional<double> ActionDesk::readAt(DimensionId id) const {
    const auto value = view().pass.value({m_bench.note(), id});
    if (!value) return std::nullopt;
    return toTrade(*value, Kind::length);
}

std::optional<double> ActionDesk::afterAt(DimensionId id) const {
    const auto value = passAfter().value({m_bench.note(), id});
    if (!value) return std::nullopt;
    return toTrade(*value, Kind::length);
}

std::optional<StrokeBand> ActionDesk::letOffZone() const {
    const auto& zone = m_bench.zones().at({m_bench.note(), dimension::letOff});
    if (!zone) return std::nullopt;
    StrokeBand band{.low = {}, .high = {}, .aim = toTrade(zone->nominal, Kind::length)};
    if (zone->low) band.low = toTrade(*zone->low, Kind::length);
    if (zone->high) band.high = toTrade(*zone->high, Kind::length);
    return band;
}

void ActionDesk::suppose(DimensionId id, double mm) {
    m_supposed[id] = mm;
    stale();
}

void ActionDesk::supposeRail(double mm) {
    m_rail = mm;
    stale();
}

void ActionDesk::setCapstansFollow(bool follow) {
    m_capstansFollow = follow;
    stale();
}

void ActionDesk::forget(DimensionId id) {
    if (m_supposed.erase(id) > 0) stale();
}

void ActionDesk::forgetAll() {
    m_supposed.clear();
    m_rail = 0;
    stale();
}

std::optional<double> ActionDesk::supposed(DimensionId id) const {
    const auto found = m_supposed.find(id);
    if (found == m_supposed.end()) return std::nullopt;
    return found->second;
}

} // namespace hammerline
