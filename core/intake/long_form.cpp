// The long form: one row a reading, the form of our own export.
#include "core/intake/cell.h"
#include "core/intake/dialect.h"
#include "core/intake/encoding.h"
#include "core/intake/outcome_rows.h"
#include "core/intake/records.h"
#include "core/intake/time_text.h"
#include "core/units/code_points.h"

#include <algorithm>
#include <charconv>
#include <set>

namespace hammerline {
namespace {

enum Field : std::size_t { fPiano, fPass, fNote, fDimension, fTrial, fText, fUnit, fState, fAt, kFields };
constexpr std::array<std::string_view, kFields> kHeads = {"piano", "pass", "note",  "dimension", "trial",
                                                          "text",  "unit", "state", "at"};

using Positions = std::array<std::optional<std::size_t>, kFields>;

Positions positionsOf(const std::vector<std::string>& heads) {
    Positions positions;
    for (std::size_t i = 0; i < heads.size(); ++i) {
        const auto found = std::find(kHeads.begin(), kHeads.end(), folded(heads[i]));
        if (found != kHeads.end()) positions[static_cast<std::size_t>(found - kHeads.begin())] = i;
    }
    return positions;
}

bool isComplete(const Positions& positions) {
    return positions[fNote] && positions[fDimension] && positions[fText];
}

/// An export puts an apostrophe before a text that a spreadsheet would run as a formula.
std::string_view withoutGuard(std::string_view text) {
    const bool guarded = text.size() > 1 && text[0] == '\'' && std::string_view{"=+-@\t\r"}.find(text[1]) != text.npos;
    return guarded ? text.substr(1) : text;
}

std::optional<int> wholeNumber(std::string_view text) {
    int value = 0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
    if (error != std::errc{} || end != text.data() + text.size()) return std::nullopt;
    return value;
}

class LongReader {
public:
    LongReader(const Piano& piano, const std::function<void(Sound&&)>& take, Positions positions)
        : m_piano(piano), m_take(take), m_positions(positions) {
        m_context.piano = &piano;
        m_context.bothMarks = true; // what stands in the long form was settled when it was typed
        m_context.compare = false;
    }

    void adopt(std::string_view name) { m_name = name; }

    void readRow(const std::vector<std::string>& fields, int line) {
        m_fields = &fields;
        m_line = line;
        if (isForeign(at(fPiano))) return;
        const auto note = parseNote(at(fNote), m_piano);
        if (!note) return refuseField(fNote, RefusalCode::unknownNote);
        const auto dimension = findDimension(at(fDimension));
        if (!dimension) return refuseField(fDimension, RefusalCode::unknownDimension);
        m_cell = Cell{*note, *dimension};
        const auto state = at(fState);
        if (state == "not-fitted") {
            m_intake.notFitted.push_back({m_cell, line, std::string{at(fPass)}});
            return;
        }
        if (!state.empty() && state != "taken") return refuseField(fState, RefusalCode::unknownState);
        readReading(state == "taken");
    }

    Intake finish() {
        m_intake.longForm = true;
        sortByPlace(m_intake);
        return std::move(m_intake);
    }

private:
    std::string_view at(Field field) const {
        const auto position = m_positions[field];
        return position && *position < m_fields->size() ? trimmedAscii((*m_fields)[*position]) : std::string_view{};
    }

    bool isForeign(std::string_view name) {
        if (!m_positions[fPiano]) return false;
        if (!m_name) m_name = name;
        if (name == *m_name) return false;
        if (m_foreign.emplace(name).second) refuseField(fPiano, RefusalCode::noSuchPiano);
        return true;
    }

    void readReading(bool taken) {
        const auto unit = at(fUnit);
        m_context.bare = row(m_cell.dimension).entryUnit;
        if (!unit.empty()) {
            const auto typed = parseUnit(unit);
            if (!typed) return refuseField(fUnit, RefusalCode::wrongUnit);
            m_context.bare = *typed;
        }
        const auto trial = at(fTrial).empty() ? std::optional{1} : wholeNumber(at(fTrial));
        if (!trial || *trial < 1) return refuseField(fTrial, RefusalCode::unreadable);
        const auto when = at(fAt).empty() ? std::optional<std::int64_t>{0} : readUtcTime(at(fAt));
        if (!when) return refuseField(fAt, RefusalCode::unreadable);
        forgetOtherNotes();
        auto entry = readCell(withoutGuard(at(fText)), m_cell, m_context);
        if (!entry) return refuseField(fText, entry.error().code);
        if (entry->fromBed) m_intake.references[dimension::keyHeight] = "bed";
        auto& reading = entry->sound ? entry->sound : entry->question->asTyped;
        if (reading) {
            reading->trial = *trial;
            reading->at = *when;
            reading->taken = taken || !entry->sound;
            const bool plain = !reading->word && reading->relation == Relation::equal;
            if (plain) m_context.known[m_cell.dimension] = reading->count;
        }
        if (entry->sound || (taken && reading))
            settle(Sound{m_cell, std::move(*reading), m_line, std::string{at(fPass)}});
        else
            ask(std::move(*entry->question));
    }

    /// The blow that a share refers to is that of the same note in the same pass.
    void forgetOtherNotes() {
        const auto pass = at(fPass);
        if (m_knownOf == m_cell.note && m_knownPass == pass) return;
        m_knownOf = m_cell.note;
        m_knownPass = pass;
        m_context.known = {};
    }

    void settle(Sound&& sound) {
        if (m_last && m_last->cell == sound.cell && m_last->pass == sound.pass &&
            m_last->reading.trial == sound.reading.trial && sameReading(m_last->reading, sound.reading))
            return;
        if (seenBefore(sound)) {
            ask(asQuestion(sound, 0, Doubt::duplicate, "differing-readings"));
            return;
        }
        m_last = sound;
        m_take(std::move(sound));
    }

    /// A bit for each trial of each cell of each pass; trials beyond the 64th are not compared.
    bool seenBefore(const Sound& sound) {
        if (sound.reading.trial > 64) return false;
        auto& trials = m_seen[sound.pass];
        trials.resize(static_cast<std::size_t>(m_piano.notes) * dimensions().size());
        const auto note = static_cast<std::size_t>(sound.cell.note.value - 1);
        std::uint64_t& bits = trials[note * dimensions().size() + sound.cell.dimension.row];
        const std::uint64_t bit = std::uint64_t{1} << static_cast<unsigned>(sound.reading.trial - 1);
        return (std::exchange(bits, bits | bit) & bit) != 0;
    }

    void ask(Question question) {
        question.place = {{}, m_line, column(fText), std::string{kHeads[fText]}};
        m_intake.questions.push_back(std::move(question));
    }

    int column(Field field) const { return static_cast<int>(m_positions[field].value_or(0)) + 1; }

    void refuseField(Field field, RefusalCode code) {
        std::optional<DimensionId> dimension;
        if (field == fText || field == fUnit) dimension = m_cell.dimension;
        m_intake.refused.push_back(
            {m_line, column(field), std::string{at(fNote)}, dimension, std::string{at(field)}, doubtOf(code), code});
    }

    const Piano& m_piano;
    const std::function<void(Sound&&)>& m_take;
    Positions m_positions;
    CellContext m_context;
    const std::vector<std::string>* m_fields{};
    int m_line{};
    Cell m_cell;
    std::optional<std::string> m_name;
    std::set<std::string, std::less<>> m_foreign;
    NoteNumber m_knownOf;
    std::string m_knownPass;
    std::optional<Sound> m_last;
    std::map<std::string, std::vector<std::uint64_t>> m_seen;
    Intake m_intake;
};

/// Whether some line begins with the name as its piano.
bool knowsPiano(std::string_view text, const std::string& name, char separator) {
    for (const std::string& begin : {"\n" + name + separator, "\r" + name + separator, "\n\"" + name + '"' + separator})
        if (text.find(begin) != text.npos) return true;
    return false;
}

/// The records behind a possible "sep=" line.
struct Records {
    std::string_view text;
    char separator{};
    int firstLine = 1;
};

Records recordsOf(std::string_view text, const TableOptions& options) {
    Records records{text, 0};
    const auto said = separatorLine(text);
    if (said) {
        records.text.remove_prefix(said->length);
        records.firstLine = 2;
    }
    records.separator = options.separator ? *options.separator : said ? said->separator : findSeparator(records.text);
    return records;
}

} // namespace

bool isLongForm(std::string_view bytes) {
    constexpr std::size_t kEnough = 1024; // holds the heads many times over
    const auto decoded = decodeText(bytes.substr(0, kEnough));
    if (!decoded) return false;
    const Records records = recordsOf(decoded->view(), {});
    std::vector<std::string> heads;
    const auto first = RecordReader(records.text, records.separator).next(heads);
    return first && *first && isComplete(positionsOf(heads));
}

Outcome<Intake> readLongForm(std::string_view bytes, const Piano& piano, const std::function<void(Sound&&)>& take,
                             const TableOptions& options) {
    const auto decoded = decodeText(bytes);
    if (!decoded) return tl::unexpected{decoded.error()};
    const Records records = recordsOf(decoded->view(), options);
    RecordReader source(records.text, records.separator);
    std::vector<std::string> fields;
    auto more = source.next(fields);
    if (more && !*more) return refuse(RefusalCode::emptyFile);
    const auto positions = positionsOf(fields);
    if (more && !isComplete(positions)) return refuse(RefusalCode::badTable, {}, "dimension-column", {{}, 1, 1, {}});
    const std::size_t width = fields.size();
    LongReader reader(piano, take, positions);
    if (knowsPiano(records.text, piano.name, records.separator)) reader.adopt(piano.name);
    while (more && *more) {
        more = source.next(fields, width);
        if (more && *more) reader.readRow(fields, source.line() + records.firstLine - 1);
    }
    if (!more) {
        Refusal refusal = more.error();
        refusal.place.line += records.firstLine - 1;
        return tl::unexpected{std::move(refusal)};
    }
    Intake intake = reader.finish();
    intake.dialect.encoding = decoded->encoding;
    intake.dialect.separator = records.separator;
    return intake;
}

} // namespace hammerline
