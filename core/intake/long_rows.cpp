#include "core/intake/long_rows.h"

#include "core/intake/outcome_rows.h"
#include "core/intake/time_text.h"
#include "core/units/code_points.h"

#include <algorithm>
#include <charconv>
#include <utility>

namespace hammerline {
namespace {

constexpr int kMostTrials = 99; // of a cell in the book
constexpr int kBits = 64;
constexpr std::array<std::string_view, 9> kNames = {"piano", "pass", "note",  "dimension", "trial",
                                                    "text",  "unit", "state", "at"};

/// An export puts an apostrophe before a text that a spreadsheet would run as a formula.
std::string_view withoutGuard(std::string_view text) {
    const auto begin = text.find_first_not_of('\'');
    const bool formula = begin != text.npos && std::string_view{"=+-@\t\r"}.find(text[begin]) != text.npos;
    return formula && begin > 0 ? text.substr(1) : text;
}

std::optional<int> wholeNumber(std::string_view text) {
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
    return value;
}

bool isPlain(const Reading& reading) {
    return !reading.word && reading.relation == Relation::equal;
}

} // namespace

std::string_view LongHeads::name(LongField field) {
    return kNames.at(index(field));
}

LongHeads::LongHeads(const std::vector<std::string>& heads) {
    for (std::size_t i = 0; i < heads.size(); ++i) {
        const auto found = std::find(kNames.begin(), kNames.end(), folded(heads[i]));
        if (found != kNames.end()) m_positions[static_cast<std::size_t>(found - kNames.begin())] = i;
    }
}

std::string_view LongHeads::of(LongField field, const std::vector<std::string>& fields) const {
    const auto position = m_positions[index(field)];
    return position && *position < fields.size() ? trimmedAscii(fields[*position]) : std::string_view{};
}

LongRows::LongRows(const Piano& piano, std::function<void(Sound&&)> take, LongHeads heads, bool named)
    : m_piano(piano), m_take(std::move(take)), m_heads(heads), m_named(named) {
    m_context.piano = &piano;
    m_context.bothMarks = true; // what stands in the long form was settled when it was typed
    m_context.compare = false;
    m_context.heightsFromSlip = true;
}

Outcome<void> LongRows::read(const std::vector<std::string>& fields, int line) {
    m_fields = &fields;
    m_line = line;
    const auto foreign = isForeign(withoutGuard(at(LongField::piano)));
    if (!foreign) return tl::unexpected{foreign.error()};
    if (!*foreign) readRow();
    const char* tooMany = m_intake.questions.size() + m_intake.refused.size() > kMostAsked ? "too-many-asked"
                          : m_intake.notFitted.size() > kMostCells                         ? "too-many-cells"
                          : m_seen.size() + m_saidPasses > kMostPasses                     ? "too-many-passes"
                                                                                           : nullptr;
    if (tooMany != nullptr) return refuse(RefusalCode::badTable, {}, tooMany, {{}, m_line, 1, {}});
    return {};
}

Outcome<bool> LongRows::isForeign(std::string_view name) {
    if (!m_heads.has(LongField::piano)) return false;
    if (name == m_piano.name && !m_only) m_named = true;
    if (!m_named) {
        if (!m_only) m_only = name;
        if (name != *m_only)
            return refuse(RefusalCode::severalPianos, std::string{name}, *m_only,
                          {{}, m_line, m_heads.column(LongField::piano), {}});
        return false;
    }
    if (name == m_piano.name) return false;
    if (m_foreign.emplace(name).second) refuseField(LongField::piano, RefusalCode::noSuchPiano);
    return true;
}

/// The text is the label; what stands in a row of a pass besides would be of a reading, and there is none.
void LongRows::readPass() {
    const auto name = at(LongField::pass);
    if (name.empty()) return refuseField(LongField::pass, RefusalCode::noSuchPass);
    SaidPass pass{std::string{name}, m_line, std::string{withoutGuard(at(LongField::text))}};
    ++m_saidPasses;
    if (m_said) return m_said(std::move(pass));
    m_intake.passes.push_back(std::move(pass));
}

void LongRows::readRow() {
    if (at(LongField::state) == "pass") return readPass();
    const auto note = parseNote(at(LongField::note), m_piano);
    if (!note) return refuseField(LongField::note, RefusalCode::unknownNote);
    const auto dimension = findDimension(at(LongField::dimension));
    if (!dimension) return refuseField(LongField::dimension, RefusalCode::unknownDimension);
    m_cell = Cell{*note, *dimension};
    const auto state = at(LongField::state);
    if (state == "not-fitted") {
        m_intake.notFitted.push_back({m_cell, m_line, std::string{at(LongField::pass)}});
        return;
    }
    if (!state.empty() && state != "taken") return refuseField(LongField::state, RefusalCode::unknownState);
    readReading(state == "taken");
}

void LongRows::readReading(bool taken) {
    const auto unit = at(LongField::unit);
    m_context.bare = row(m_cell.dimension).entryUnit;
    if (!unit.empty()) {
        const auto typed = parseUnit(unit);
        if (!typed) return refuseField(LongField::unit, RefusalCode::wrongUnit);
        m_context.bare = *typed;
    }
    const auto trial = at(LongField::trial).empty() ? std::optional{1} : wholeNumber(at(LongField::trial));
    if (!trial || *trial < 1) return refuseField(LongField::trial, RefusalCode::unreadable);
    if (*trial > kMostTrials) return refuseField(LongField::trial, RefusalCode::outOfRange);
    const auto when = at(LongField::at).empty() ? std::optional<std::int64_t>{0} : readUtcTime(at(LongField::at));
    if (!when) return refuseField(LongField::at, RefusalCode::unreadable);
    forgetOtherNotes();
    auto entry = readCell(withoutGuard(at(LongField::text)), m_cell, m_context);
    if (!entry) return refuseField(LongField::text, entry.error().code);
    if (entry->fromBed) m_intake.references[dimension::keyHeight] = "bed";
    auto& reading = entry->sound ? entry->sound : entry->question->asTyped;
    if (reading) {
        reading->trial = *trial;
        reading->at = *when;
        reading->taken = taken || !entry->sound;
        if (isPlain(*reading)) m_context.known[m_cell.dimension] = reading->count;
    }
    if (entry->sound || (taken && reading))
        settle(Sound{m_cell, std::move(*reading), m_line, std::string{at(LongField::pass)}});
    else
        ask(std::move(*entry->question));
}

/// The blow that a share refers to is that of the same note in the same pass.
void LongRows::forgetOtherNotes() {
    const auto pass = at(LongField::pass);
    if (m_knownOf == m_cell.note && m_knownPass == pass) return;
    m_knownOf = m_cell.note;
    m_knownPass = pass;
    m_context.known = {};
}

void LongRows::settle(Sound&& sound) {
    const bool again = m_last && m_last->cell == sound.cell && m_last->pass == sound.pass &&
                       m_last->reading.trial == sound.reading.trial && sameReading(m_last->reading, sound.reading);
    if (again) return;
    if (seenBefore(sound)) {
        sound.reading.trial = 0; // taken on purpose it is a repeat
        ask(asQuestion(sound, 0, Doubt::duplicate, "differing-readings"));
        return;
    }
    m_last = sound;
    m_take(std::move(sound));
}

/// A bit for each trial of each cell of each pass; the rare ones beyond the bits are listed.
bool LongRows::seenBefore(const Sound& sound) {
    const auto note = static_cast<std::size_t>(sound.cell.note.value - 1);
    const std::size_t cell = note * dimensions().size() + sound.cell.dimension.row;
    const int trial = sound.reading.trial;
    if (trial > kBits) return !m_seenBeyond.emplace(sound.pass, cell, trial).second;
    auto& trials = m_seen[sound.pass];
    trials.resize(static_cast<std::size_t>(m_piano.notes) * dimensions().size());
    std::uint64_t& bits = trials[cell];
    const std::uint64_t bit = std::uint64_t{1} << static_cast<unsigned>(trial - 1);
    return (std::exchange(bits, bits | bit) & bit) != 0;
}

void LongRows::ask(Question question) {
    question.place = {{}, m_line, m_heads.column(LongField::text), std::string{LongHeads::name(LongField::text)}};
    question.pass = at(LongField::pass);
    m_intake.questions.push_back(std::move(question));
}

void LongRows::refuseField(LongField field, RefusalCode code) {
    std::optional<DimensionId> dimension;
    if (field == LongField::text || field == LongField::unit) dimension = m_cell.dimension;
    m_intake.refused.push_back({m_line, m_heads.column(field), std::string{at(LongField::note)}, dimension,
                                std::string{at(field)}, doubtOf(code), code});
}

Intake LongRows::finish() {
    m_intake.longForm = true;
    sortByPlace(m_intake);
    return std::move(m_intake);
}

} // namespace hammerline
