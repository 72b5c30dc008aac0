#include "db/loading.h"
#include "db/reading_rows.h"
#include "db/stores.h"
#include "db/versions.h"

#include <algorithm>

namespace hammerline {
namespace {

/// Current readings of every pass, in one scan of the table: a reading counts where none of its trial replaces it.
std::map<std::int64_t, std::size_t> readingCounts(OpenBook& book) {
    struct TrialRow {
        ActId act{};
        std::optional<ActId> replaces;
        bool counts = false;
    };
    Query find =
        book.query("SELECT pass_id, note, dimension_id, trial, act_id, replaces, withdrawn = 0 AND relation <> "
                   "'not-fitted' FROM reading ORDER BY pass_id, note, dimension_id, trial, act_id");
    std::map<std::int64_t, std::size_t> counts;
    std::vector<TrialRow> trial;
    std::tuple<std::int64_t, int, std::int64_t, int> name{};
    const auto close = [&] {
        const bool current = std::any_of(trial.begin(), trial.end(), [&](const TrialRow& row) {
            return row.counts && std::none_of(trial.begin(), trial.end(),
                                              [&](const TrialRow& other) { return other.replaces == row.act; });
        });
        if (current) ++counts[std::get<0>(name)];
        trial.clear();
    };
    while (find.step()) {
        const std::tuple here{find.number(0), find.small(1), find.number(2), find.small(3)};
        if (here != name) close();
        name = here;
        trial.push_back({find.number(4), find.maybe(5), find.number(6) != 0});
    }
    close();
    return counts;
}

/// Whose they are, by row of the piano.
std::map<std::int64_t, Identity> identities(OpenBook& book) {
    Query find = book.query("SELECT x.piano_id, x.key, x.value FROM identity x JOIN act a ON a.id = x.act_id JOIN "
                            "session s ON s.id = a.session_id WHERE x.withdrawn = 0 AND " +
                            isHead(subject("identity")) + " ORDER BY x.piano_id, x.key, a.place, s.uuid");
    std::map<std::int64_t, Identity> all;
    while (find.step())
        all[find.number(0)][find.text(1)] = find.text(2);
    return all;
}

} // namespace

std::vector<PianoLine> pianoNames(OpenBook& book) {
    const auto whose = identities(book);
    Query find = book.query("SELECT p.uuid, x.name, x.action, x.notes, p.id FROM piano p JOIN act b ON b.id = p.act_id "
                            "JOIN setup x ON x.piano_id = p.id JOIN act a ON a.id = x.act_id JOIN session s ON s.id = "
                            "a.session_id WHERE x.withdrawn = 0 AND " +
                            isHead(subject("setup")) + " ORDER BY b.place, p.uuid, a.place, s.uuid");
    std::vector<PianoLine> lines;
    while (find.step()) {
        PianoLine line{text(find.uuid(0)), find.text(1), orFail(parseActionKind(find.text(2))), find.small(3), {}, {}};
        if (const auto found = whose.find(find.number(4)); found != whose.end()) line.identity = found->second;
        if (!lines.empty() && lines.back().uuid == line.uuid) lines.pop_back(); // disputed set-up: the later
        lines.push_back(std::move(line));
    }
    return lines;
}

std::vector<PianoLine> pianoLines(OpenBook& book) {
    const auto counts = readingCounts(book);
    std::vector<PianoLine> lines = pianoNames(book);
    for (PianoLine& line : lines)
        for (const PassRow& pass : passRows(book, pianoRow(book, line.uuid))) {
            const auto count = counts.find(pass.id);
            line.passes.push_back({pass.number, pass.label, count == counts.end() ? 0 : count->second});
        }
    return lines;
}

std::vector<Reading> readingTrail(OpenBook& book, std::int64_t pass, Cell cell) {
    const auto dimension = book.knownDimensionRow(cell.dimension);
    if (!dimension) return {};
    Query find = book.query(readingRowsSql("x.pass_id = ? AND x.note = ? AND x.dimension_id = ?"));
    find << pass << cell.note.value << *dimension;
    ReadingRows rows(book, find);
    std::vector<Reading> trail;
    while (const auto* each = rows.nextCell())
        for (const ReadingRow* row : enteredIn(each->rows))
            trail.push_back(row->reading);
    std::stable_sort(trail.begin(), trail.end(), [](const Reading& a, const Reading& b) { return a.order < b.order; });
    return trail;
}

} // namespace hammerline
