#include "core/history/looks.h"

#include "core/history/visit.h"
#include "core/stats/climate.h"
#include "core/stats/robust.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

namespace {

constexpr std::int64_t kOneVisit = 12LL * 3600 * 1'000'000; // microseconds: the same working day
constexpr double kOtherWood = 1;                            // per cent of equilibrium moisture content
constexpr std::size_t kFewestNeighbours = 7, kEachSide = 6;

} // namespace

bool inOneVisit(const Pass& from, const Pass& to) {
    if (from.startedAt && to.startedAt && std::abs(to.startedAt - from.startedAt) > kOneVisit) return false;
    if (!from.climate || !to.climate) return true;
    const auto before = equilibriumMoisture(from.climate->celsius, from.climate->humidity);
    const auto after = equilibriumMoisture(to.climate->celsius, to.climate->humidity);
    return !before || !after || std::abs(*after - *before) <= kOtherWood;
}

namespace {

class Looking {
public:
    Looking(const PianoRecord& record, OperationId operation, const Answers& believed, double ratio)
        : m_record(record), m_piano(record.piano), m_operation(operation), m_believed(believed), m_ratio(ratio) {}

    std::vector<LooksAtNote> all() {
        std::vector<LooksAtNote> out;
        for (int n = 1; n <= m_piano.notes; ++n)
            if (workedAt({n})) at({n}, out);
        return out;
    }

private:
    struct Open {
        LooksAtNote so;
        double amount = 0, others = 0, variance = 0; // since the first look
        bool worked = false;                         // since the last look
        const Pass* last = nullptr;
    };

    bool workedAt(NoteNumber note) const {
        return std::any_of(m_record.done.begin(), m_record.done.end(),
                           [&](const Done& d) { return d.operation == m_operation && amountAt(d, note); });
    }
    bool touches(const Done& done, Cell cell) const {
        return std::any_of(done.notes.begin(), done.notes.end(),
                           [&](NoteNumber note) { return disturbs(done.operation, note, cell, m_piano); });
    }

    void at(NoteNumber note, std::vector<LooksAtNote>& out) {
        const Response* answer = m_believed.at(m_operation, note);
        if (!answer || answer->effects.empty()) return;
        const Cell cell{note, answer->effects.front().dimension};
        Open open;
        bool first = true;
        for (const Pass& pass : m_record.passes) {
            if (const auto told = read(cell, pass)) {
                const bool same =
                    open.last && inOneVisit(*open.last, pass) && otherMethod(cell.dimension, *open.last, pass).empty();
                if (!same) close(open, out);
                look(open, first ? withNeighbours(cell, pass, *told) : *told, note);
                open.last = &pass;
                first = false;
            }
            for (const Done& done : m_record.done)
                if (done.pass == pass.number) take(open, done, cell, out);
        }
        close(open, out);
    }

    /// A hammer held off its rail shows a blow that is short by R |M|: the rail's own is meant.
    std::optional<Told> read(Cell cell, const Pass& pass) const {
        const Measured* measured = pass.at(cell);
        if (!measured || !measured->value()) return std::nullopt;
        const double u = toTrade(uncertaintyOf(cell.dimension, m_piano), row(cell.dimension).kind);
        auto told = tell(cell.dimension, *measured, u);
        if (!told || cell.dimension != dimension::blow || !m_piano.vertical()) return told;
        if (const auto lost = pass.value({cell.note, dimension::lostMotion}))
            told->value += m_ratio * std::max(0.0, -toTrade(*lost, Kind::length));
        return told;
    }

    static void look(Open& open, const Told& told, NoteNumber note) {
        open.so.note = note;
        open.so.looks.push_back({open.amount, told.value - open.others, told.variance + open.variance});
        open.so.goes += open.worked;
        open.worked = false;
    }

    void take(Open& open, const Done& done, Cell cell, std::vector<LooksAtNote>& out) const {
        if (done.toAim) {
            if (touches(done, cell)) close(open, out); // by nobody knows how much
            return;
        }
        if (const auto own = amountAt(done, cell.note); own && done.operation == m_operation) {
            if (open.so.order == 0) open.so.order = std::max<std::int64_t>(1, done.order);
            open.amount += *own;
            open.worked = true;
        } else {
            add(open, done, cell.note, cell.dimension, 1);
        }
        if (cell.dimension != dimension::sharpHeight) return;
        const std::vector<NoteNumber> naturals = neighbouringNaturals(cell.note, m_piano);
        for (const NoteNumber natural : naturals)
            add(open, done, natural, dimension::keyHeight, -1.0 / static_cast<double>(naturals.size()));
    }
    void add(Open& open, const Done& done, NoteNumber from, DimensionId dimension, double share) const {
        const auto amount = amountAt(done, from);
        const Response* response = m_believed.at(done.operation, from);
        if (!amount || !response) return;
        for (const Effect& effect : response->effects)
            if (effect.dimension == dimension) {
                open.others += share * effect.perUnit * *amount;
                open.variance += std::pow(share * effect.sd * *amount, 2);
            }
    }

    static void close(Open& open, std::vector<LooksAtNote>& out) {
        const auto& looks = open.so.looks;
        const bool moved = std::any_of(looks.begin(), looks.end(),
                                       [&](const LookAfterTurns& each) { return each.amount != looks.front().amount; });
        if (moved) out.push_back(std::move(open.so));
        open = {};
    }

    /// The other readings of the pass beside a cell: of its section, and of its colour where colours differ.
    std::vector<double> beside(Cell cell, const Pass& pass, NoteNumber except) const {
        const bool byColour = cell.dimension == dimension::keyHeight || cell.dimension == dimension::sharpHeight ||
                              cell.dimension == dimension::keyDip;
        const NoteRange section = sectionsOf(m_piano)[sectionIndexOf(cell.note, m_piano)].range;
        std::vector<double> values;
        for (const int way : {-1, 1}) {
            std::size_t found = 0;
            for (int n = cell.note.value + way; section.contains({n}) && found < kEachSide; n += way) {
                if (NoteNumber{n} == except) continue;
                if (byColour && colourOf({n}, m_piano) != colourOf(cell.note, m_piano)) continue;
                if (const auto told = read({{n}, cell.dimension}, pass)) {
                    values.push_back(told->value);
                    ++found;
                }
            }
        }
        return values;
    }

    Told withNeighbours(Cell cell, const Pass& pass, const Told& told) const {
        const std::vector<double> around = beside(cell, pass, cell.note);
        if (around.size() + 1 < kFewestNeighbours) return told;
        // the spread of what each of the section reads against its own neighbours
        std::vector<double> residuals;
        const NoteRange section = sectionsOf(m_piano)[sectionIndexOf(cell.note, m_piano)].range;
        for (int n = section.first; n <= section.last; ++n)
            if (const auto each = read({{n}, cell.dimension}, pass))
                if (const auto line = median(beside({{n}, cell.dimension}, pass, {n})))
                    residuals.push_back(each->value - *line);
        if (residuals.size() < kFewestNeighbours) return told;
        constexpr double kOfMedian = 1.57 / 12; // variance of a median of twelve, in that of one
        const double u2 = told.variance, spread = kMadToDeviation * *medianAbsoluteDeviation(residuals);
        const double own = std::max(1.25 * (spread * spread / (1 + kOfMedian) - u2), u2 / 4);
        const double line = *median(around), prior = own + kOfMedian * (own + u2);
        constexpr double kOdd = 2.5; // beyond it the note may be the odd one, and starts from its own reading
        if (std::abs(told.value - line) > kOdd * std::sqrt(prior + u2)) return told;
        const double gain = prior / (prior + u2);
        return {line + gain * (told.value - line), (1 - gain) * prior};
    }

    const PianoRecord& m_record;
    const Piano& m_piano;
    OperationId m_operation;
    const Answers& m_believed;
    double m_ratio;
};

} // namespace

std::vector<LooksAtNote> looksOf(const PianoRecord& record, OperationId operation, const Answers& believed,
                                 double ratio) {
    const bool any = std::any_of(record.done.begin(), record.done.end(),
                                 [&](const Done& done) { return done.operation == operation; });
    return any ? Looking(record, operation, believed, ratio).all() : std::vector<LooksAtNote>{};
}

} // namespace hammerline
