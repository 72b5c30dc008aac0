#include "core/pass/height_datum.h"
#include "db/stores.h"
#include "db/versions.h"

#include <array>
#include <set>

namespace hammerline {
namespace {

constexpr std::array<std::string_view, 4> kRelations = {"=", "<", ">", ".."};
constexpr int kMostTrials = 99;
constexpr std::int64_t kLargest = 1'000'000'000'000; // as the CHECK of the table

using TrialName = std::pair<Cell, int>;

} // namespace

Key readingKey(OpenBook& book, std::int64_t pass, Cell cell, int trial) {
    return {pass, std::int64_t{cell.note.value}, book.dimensionRow(cell.dimension), std::int64_t{trial}};
}

CellTrials trialsOf(OpenBook& book, std::int64_t pass, Cell cell) {
    Query find = book.query("SELECT DISTINCT x.trial, x.relation FROM reading x WHERE x.pass_id = ? AND x.note = ? AND "
                            "x.dimension_id = ? AND x.withdrawn = 0 AND " +
                            isHead(subject("reading")) + " ORDER BY x.trial");
    find << pass << cell.note.value << book.dimensionRow(cell.dimension);
    CellTrials trials;
    while (find.step()) {
        trials.current.push_back(find.small(0));
        trials.notFitted = trials.notFitted || find.text(1) == "not-fitted";
    }
    return trials;
}

bool hasReadings(OpenBook& book, std::int64_t pass) {
    Query find = book.query("SELECT 1 FROM reading WHERE pass_id = ? LIMIT 1");
    find << pass;
    return find.step();
}

void requireStorable(const NewReading& each) {
    const Reading& reading = each.reading;
    const auto note = std::to_string(each.cell.note.value);
    if (each.cell.note.value < 1 || each.cell.note.value > 108) fail(RefusalCode::unknownNote, note);
    if (reading.trial < 0 || reading.trial > kMostTrials) fail(RefusalCode::outOfRange, reading.typed, "trial");
    if (reading.word) return;
    const bool pair = reading.relation == Relation::between;
    if (std::abs(reading.count) > kLargest || (pair && std::abs(reading.upper) > kLargest))
        fail(RefusalCode::outOfRange, reading.typed, "value");
    if (pair && reading.upper < reading.count) fail(RefusalCode::outOfRange, reading.typed, "pair");
}

std::string_view relationText(const Reading& reading) {
    return reading.word ? "word" : kRelations[static_cast<std::size_t>(reading.relation)];
}

void insertReading(ActUnderWay& act, const NewReading& each, const ReadingLine& line) {
    OpenBook& book = act.book();
    const Reading& reading = each.reading;
    Query insert =
        book.query("INSERT INTO reading (pass_id, note, dimension_id, trial, act_id, replaces, origin, relation, "
                   "value, upper, word, typed, unit, taken, reason) VALUES (?,?,?,?,?,?,?,?,?,?,?,?,?,?,?)");
    insert << line.pass << each.cell.note.value << book.dimensionRow(each.cell.dimension) << line.trial << act.id()
           << line.replaces << line.origin;
    insert << relationText(reading);
    if (reading.word)
        insert << std::nullopt << std::nullopt << row(*reading.word).key;
    else if (reading.relation == Relation::between)
        insert << reading.count << reading.upper << std::nullopt;
    else
        insert << reading.count << std::nullopt << std::nullopt;
    insert << reading.typed << reading.typedUnit << reading.taken << reading.reason;
    insert.run();
}

/// A repeat answers where the cell was said to be not fitted.
int trialFor(const NewReading& each, const CellTrials& trials, int lastInBatch) {
    if (each.reading.trial > 0) return each.reading.trial;
    const int last = trials.notFitted || trials.current.empty() ? 0 : trials.current.back();
    const int trial = std::max(last, lastInBatch) + 1;
    if (trial > kMostTrials) fail(RefusalCode::outOfRange, each.reading.typed, "trial");
    return trial;
}

namespace {

/// One pass has one datum of key heights (computation 15, situation 19).
void requireDatumOf(OpenBook& book, std::int64_t pass, std::span<const NewReading> readings) {
    std::optional<std::string> datum;
    for (const NewReading& each : readings) {
        if (each.cell.dimension != dimension::keyHeight) continue;
        if (!datum) datum = heightDatum(book, pass);
        if (isOverAnotherDatum(each.cell, each.reading, *datum))
            fail(RefusalCode::otherDatum, each.reading.typed, *datum);
    }
}

/// A pass without readings: nothing to look up, nothing to replace.
void storeInEmptyPass(ActUnderWay& act, std::int64_t pass, std::span<const NewReading> readings) {
    std::map<Cell, int> last;
    std::set<TrialName> seen;
    for (const NewReading& each : readings) {
        const int trial = trialFor(each, {}, last[each.cell]);
        if (!seen.insert({each.cell, trial}).second) fail(RefusalCode::usage, each.reading.typed, "duplicate");
        last[each.cell] = std::max(last[each.cell], trial);
        insertReading(act, each, {pass, trial, {}, {}});
    }
}

/// Cells whose first trial is measured anew, with the trials this batch gives them.
std::map<Cell, std::set<int>> startedAnew(std::span<const NewReading> readings) {
    std::map<Cell, std::set<int>> given;
    for (const NewReading& each : readings)
        given[each.cell].insert(each.reading.trial);
    std::erase_if(given, [](const auto& cell) { return !cell.second.contains(1); });
    return given;
}

void storeAmongOthers(ActUnderWay& act, std::int64_t pass, std::span<const NewReading> readings) {
    OpenBook& book = act.book();
    std::map<Cell, int> last;
    std::set<TrialName> seen;
    std::map<Cell, CellTrials> before;
    for (const NewReading& each : readings) {
        auto known = before.find(each.cell);
        if (known == before.end()) known = before.emplace(each.cell, trialsOf(book, pass, each.cell)).first;
        const int trial = trialFor(each, known->second, last[each.cell]);
        if (!seen.insert({each.cell, trial}).second) fail(RefusalCode::usage, each.reading.typed, "duplicate");
        last[each.cell] = std::max(last[each.cell], trial);
        insertReading(act, each,
                      {pass, trial, toReplace(act, subject("reading"), readingKey(book, pass, each.cell, trial)), {}});
    }
    // a first trial stored alone starts the cell anew: its further trials no longer count
    for (const auto& [cell, given] : startedAnew(readings))
        for (const int trial : before.at(cell).current)
            if (!seen.contains({cell, trial})) takeBack(act, subject("reading"), readingKey(book, pass, cell, trial));
}

} // namespace

ActId storeReadings(ActUnderWay& act, std::int64_t pass, std::span<const NewReading> readings) {
    if (readings.empty()) return 0;
    for (const NewReading& each : readings)
        requireStorable(each);
    requireDatumOf(act.book(), pass, readings);
    if (hasReadings(act.book(), pass))
        storeAmongOthers(act, pass, readings);
    else
        storeInEmptyPass(act, pass, readings);
    return act.id();
}

ActId withdrawCell(ActUnderWay& act, std::int64_t pass, Cell cell) {
    for (const int trial : trialsOf(act.book(), pass, cell).current)
        takeBack(act, subject("reading"), readingKey(act.book(), pass, cell, trial));
    return act.idOrNone();
}

ActId markCellNotFitted(ActUnderWay& act, std::int64_t pass, Cell cell) {
    OpenBook& book = act.book();
    const CellTrials trials = trialsOf(book, pass, cell);
    if (trials.notFitted) return 0;
    for (const int trial : trials.current)
        if (trial != 1) takeBack(act, subject("reading"), readingKey(book, pass, cell, trial));
    const auto replaces = toReplace(act, subject("reading"), readingKey(book, pass, cell, 1));
    Query insert = book.query("INSERT INTO reading (pass_id, note, dimension_id, trial, act_id, replaces, relation, "
                              "typed) VALUES (?, ?, ?, 1, ?, ?, 'not-fitted', '')");
    insert << pass << cell.note.value << book.dimensionRow(cell.dimension) << act.id() << replaces;
    insert.run();
    return act.id();
}

} // namespace hammerline
