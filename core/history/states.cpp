#include "core/history/states.h"

#include "core/history/beside.h"
#include "core/history/learning.h"
#include "core/stats/climate.h"

#include <algorithm>
#include <cmath>

namespace hammerline {

Answers::Answers(std::span<const Response> responses, const Piano& piano) : m_piano(&piano) {
    const auto enter = [](Table& table, const Response& response) {
        for (const KeyColour colour : {KeyColour::natural, KeyColour::sharp})
            if (!response.keys || *response.keys == colour)
                table.at(response.operation.row).at(static_cast<std::size_t>(colour)) = &response;
    };
    for (const Response& response : responses)
        if (!response.section) enter(m_whole, response);
    for (const Response& response : responses) {
        if (!response.section) continue;
        if (m_sections.empty()) m_sections.assign(sectionsOf(piano).size(), m_whole);
        enter(m_sections.at(*response.section), response);
    }
}

const Response* Answers::of(OperationId id, KeyColour colour) const {
    return m_whole.at(id.row).at(static_cast<std::size_t>(colour));
}

const Response* Answers::at(OperationId id, NoteNumber note) const {
    const KeyColour colour = colourOf(note, *m_piano);
    if (m_sections.empty()) return of(id, colour);
    return m_sections.at(sectionIndexOf(note, *m_piano)).at(id.row).at(static_cast<std::size_t>(colour));
}

double amountBetween(const std::map<int, double>& amounts, NoteNumber note) {
    const auto above = amounts.lower_bound(note.value);
    if (above == amounts.end()) return std::prev(above)->second;
    if (above->first == note.value || above == amounts.begin()) return above->second;
    const auto below = std::prev(above);
    const double share = double(note.value - below->first) / double(above->first - below->first);
    return below->second + share * (above->second - below->second);
}

std::optional<double> amountAt(const Done& done, NoteNumber note) {
    if (done.toAim || std::find(done.notes.begin(), done.notes.end(), note) == done.notes.end()) return std::nullopt;
    return done.amounts.empty() ? done.amount : amountBetween(done.amounts, note);
}

namespace {

constexpr double kMovesWood = 1; // per cent of equilibrium moisture content

NoteState& at(std::vector<NoteState>& notes, NoteNumber note) {
    return notes[static_cast<std::size_t>(note.value) - 1];
}

/// A natural that rises by `rise` (none: by nobody knows what) takes its share off the sharps beside it.
void lowerSharps(std::vector<NoteState>& notes, const Piano& piano, NoteNumber natural, std::optional<double> rise,
                 double variance) {
    for (const NoteNumber sharp : neighbouringSharps(natural, piano)) {
        NoteState& state = at(notes, sharp);
        if (!state.of(dimension::sharpHeight).known) continue;
        const double share = 1 / static_cast<double>(neighbouringNaturals(sharp, piano).size());
        shift(state, dimension::sharpHeight, -share * rise.value_or(0), share * share * variance);
        if (!rise) forget(state, dimension::sharpHeight);
    }
}

const Effect* heightEffect(const Response& response) {
    for (const Effect& effect : response.effects)
        if (effect.dimension == dimension::keyHeight) return &effect;
    return nullptr;
}

class Run {
public:
    Run(const StateQuestion& question, const Answers& answers)
        : m_question(question)
        , m_answers(answers)
        , m_notes(static_cast<std::size_t>(question.record->piano.notes))
        , m_readIn(m_notes.size()) {
        for (int n = 1; n <= piano().notes; ++n) {
            const bool natural = colourOf({n}, piano()) == KeyColour::natural;
            link(at({n}), {ratioAt({n}).value, ratioAt({n}).spread, piano().vertical(),
                           natural ? dimension::keyHeight : dimension::sharpHeight});
        }
        for (std::size_t i = 0; i < kDimensionCount; ++i) {
            const DimensionId id{static_cast<std::uint8_t>(i)};
            m_u[i] = toTrade(uncertaintyOf(id, piano()), row(id).kind);
        }
    }

    void pass(const Pass& pass, bool withWork) {
        std::vector<const Done*> work;
        for (const Done& done : m_question.record->done)
            if (done.pass == pass.number) work.push_back(&done);
        std::stable_sort(work.begin(), work.end(), [](auto* a, auto* b) { return a->order < b->order; });
        const std::int64_t firstWork = work.empty() ? 0 : work.front()->order;
        m_pass = &pass;
        m_otherAir = inOtherAir(pass);
        read(pass, [&](std::int64_t order) { return firstWork == 0 || order <= firstWork; });
        m_otherAir = false;
        if (!withWork) return;
        for (const Done* done : work)
            apply(*done);
        if (firstWork > 0) read(pass, [&](std::int64_t order) { return order > firstWork; });
    }

    std::vector<NoteState> take() { return std::move(m_notes); }

private:
    const Piano& piano() const { return m_question.record->piano; }
    NoteState& at(NoteNumber n) { return hammerline::at(m_notes, n); }
    const RatioOf& ratioAt(NoteNumber n) const {
        return m_question.ratio[static_cast<std::size_t>(colourOf(n, piano()))];
    }

    /// Whether the wood holds so much more or less water than in the pass before that what was known then is no
    /// expectation for a reading of now (computation 11: a difference over 1 % is said; 14: moved wood). The
    /// temperature counts for little; where it was not written down, a room's is taken.
    bool inOtherAir(const Pass& pass) {
        const auto humidity = pass.climate ? std::optional(pass.climate->humidity) : pass.humidity;
        const double celsius = pass.climate ? pass.climate->celsius : pass.temperature.value_or(20);
        const auto moisture = humidity ? equilibriumMoisture(celsius, *humidity) : std::nullopt;
        const bool other = moisture && m_moisture && std::abs(*moisture - *m_moisture) > kMovesWood;
        if (moisture) m_moisture = moisture;
        return other;
    }

    template <class Which>
    void read(const Pass& pass, Which which) {
        lookBeside(pass, which);
        // Blow after the others: the blow of the rail needs the lost motion; and then the aftertouch, which tells of
        // all of them.
        std::vector<std::pair<NoteNumber, const Measured*>> blows, aftertouches;
        for (const auto& [cell, measured] : pass.cells) {
            if (measured.missing() || !piano().contains(cell.note) || !which(measured.order())) continue;
            if (cell.dimension == dimension::blow)
                blows.emplace_back(cell.note, &measured);
            else if (cell.dimension == dimension::aftertouch)
                aftertouches.emplace_back(cell.note, &measured);
            else
                weighIn(cell.note, cell.dimension, measured);
        }
        for (const auto& [note, measured] : blows)
            weighIn(note, dimension::blow, *measured);
        for (const auto& [note, measured] : aftertouches)
            weighIn(note, dimension::aftertouch, *measured);
    }

    /// First readings of a row are weighed with what their neighbours say, once. Not the aftertouch: it has the
    /// relation.
    template <class Which>
    void lookBeside(const Pass& pass, Which which) {
        m_beside.clear();
        const auto sections = sectionsOf(piano());
        std::map<std::tuple<DimensionId, std::size_t, bool>, std::vector<FirstReading>> rows;
        for (const auto& [cell, measured] : pass.cells) {
            if (cell.dimension == dimension::aftertouch || !piano().contains(cell.note) || measured.missing()) continue;
            if (!measured.value() || !which(measured.order()) || at(cell.note).of(cell.dimension).known) continue;
            const auto told = tell(cell.dimension, measured, m_u[cell.dimension.row]);
            if (!told) continue;
            const bool apart = cell.dimension == dimension::keyHeight || cell.dimension == dimension::keyDip;
            const bool sharp = apart && colourOf(cell.note, piano()) == KeyColour::sharp;
            // The eye tells a hammer that hangs from one on its rail: those are two rows.
            const bool hangs = cell.dimension == dimension::lostMotion && piano().vertical() && told->value < 0;
            rows[{cell.dimension, sectionIndexOf(cell.note, piano()), sharp || hangs}].push_back(
                {cell.note, told->value});
        }
        for (const auto& [rowKey, row] : rows) {
            const DimensionId id = std::get<0>(rowKey);
            const auto beside = besideEach(row, m_u[id.row]);
            for (std::size_t i = 0; i < row.size(); ++i)
                if (beside[i]) m_beside[{row[i].note, id}] = *beside[i];
        }
    }

    void weighIn(NoteNumber note, DimensionId id, const Measured& measured) {
        const auto told = tell(id, measured, m_u[id.row]);
        if (!told) {
            // A look at the shank: all is well there, without a number.
            if (id == dimension::lostMotion && piano().vertical() && measured.word() == word::ok) seeOnRail(at(note));
            return;
        }
        // What was read in another way, or in other air, is no expectation for this reading.
        const Pass*& before = m_readIn[static_cast<std::size_t>(note.value) - 1][id.row];
        if (m_otherAir || (before && !otherMethod(id, *before, *m_pass).empty())) forget(at(note), id);
        before = m_pass;
        startBeside(note, id);
        if (id != dimension::blow) {
            readAt(at(note), id, *told);
            // Whoever reads it sees whether the hammer lies on its rail, and writes less than nothing where it does
            // not.
            if (id == dimension::lostMotion) at(note).of(id).onRail = piano().vertical() && told->value >= 0;
            return;
        }
        // Seen is B_rail + R min(M, 0): bring the reading to the rail first.
        NoteState seen;
        seen.of(dimension::lostMotion) = at(note).of(dimension::lostMotion);
        seen.takeShownBlow(told->value, ratioAt(note).value);
        readAt(at(note), id, {seen.of(id).value, told->variance, told->readings});
    }

    void startBeside(NoteNumber note, DimensionId id) {
        const auto beside = m_beside.find({note, id});
        if (beside == m_beside.end()) return;
        if (!at(note).of(id).known) begin(at(note), id, beside->second.value, beside->second.variance);
    }

    void apply(const Done& done) {
        for (const NoteNumber note : done.notes) {
            if (!piano().contains(note)) continue;
            const Response* response = m_answers.at(done.operation, note);
            if (!response) continue;
            if (const auto amount = amountAt(done, note))
                moveAt(m_notes, piano(), note, *response, *amount);
            else
                setToAimAt(m_notes, piano(), note, *response, done.aim, m_u[response->effects.front().dimension.row]);
        }
    }

    const StateQuestion& m_question;
    const Answers& m_answers;
    std::vector<NoteState> m_notes;
    std::vector<std::array<const Pass*, kDimensionCount>> m_readIn; // by note: the pass of the last reading
    const Pass* m_pass = nullptr;                                   // that is being read
    std::optional<double> m_moisture;                               // of the last pass that says it, per cent
    bool m_otherAir = false;
    std::map<Cell, Beforehand> m_beside; // of the first readings of the pass that is being read
    std::array<double, kDimensionCount> m_u{};
};

} // namespace

void moveAt(std::vector<NoteState>& notes, const Piano& piano, NoteNumber note, const Response& response,
            double amount) {
    const AmountUnit unit = unitOf(response.operation, piano);
    move(at(notes, note), response, amount, unit);
    if (colourOf(note, piano) == KeyColour::sharp) return;
    if (const Effect* height = heightEffect(response))
        lowerSharps(notes, piano, note, height->perUnit * amount,
                    std::pow(height->sd * amount, 2) +
                        std::pow(height->perUnit * handSd(response.operation, amount, unit), 2));
}

void setToAimAt(std::vector<NoteState>& notes, const Piano& piano, NoteNumber note, const Response& response,
                std::optional<double> aim, double u) {
    const Known before = at(notes, note).of(dimension::keyHeight);
    setToAim(at(notes, note), response, aim, u);
    if (colourOf(note, piano) == KeyColour::sharp || !heightEffect(response)) return;
    const Known& after = at(notes, note).of(dimension::keyHeight);
    if (before.known && after.known)
        lowerSharps(notes, piano, note, after.value - before.value, before.variance);
    else
        lowerSharps(notes, piano, note, std::nullopt, 0);
}

std::vector<NoteState> noteStates(const StateQuestion& question, const Answers& answers, bool workOfLast) {
    Run run(question, answers);
    for (const Pass* pass : question.passes)
        run.pass(*pass, workOfLast || pass != question.passes.back());
    return run.take();
}

State stateOf(const PianoRecord& record, int pass, std::span<const Response> responses, std::array<double, 2> ratio) {
    std::vector<const Pass*> passes;
    for (const Pass& each : record.passes)
        if (each.number <= pass) passes.push_back(&each);
    const StateQuestion question{
        &record, passes, {RatioOf{ratio[0], kUsualSpread * ratio[0]}, RatioOf{ratio[1], kUsualSpread * ratio[1]}}};
    const auto notes = noteStates(question, Answers(responses, record.piano));
    State state;
    for (std::size_t i = 0; i < notes.size(); ++i) {
        const NoteNumber note{static_cast<int>(i) + 1};
        const double R = ratio[static_cast<std::size_t>(colourOf(note, record.piano))];
        for (std::size_t d = 0; d < kDimensionCount; ++d) {
            const DimensionId id{static_cast<std::uint8_t>(d)};
            const Known& known = notes[i].of(id);
            if (!known.known) continue;
            const double value = id == dimension::blow ? notes[i].shownBlow(R) : known.value;
            state.emplace_hint(state.end(), Cell{note, id},
                               CellState{value, std::sqrt(known.variance), known.expected});
        }
    }
    return state;
}

} // namespace hammerline
