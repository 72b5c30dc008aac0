#include "db/import_state.h"

#include "core/pass/height_datum.h"

#include <algorithm>

namespace hammerline {
namespace {

bool isNumber(std::string_view text) {
    return !text.empty() && text.find_first_not_of("0123456789") == text.npos;
}

/// A file's pass that becomes the pass of that number here: its number is not said twice.
NewPass passOfFile(std::string_view name, std::size_t number) {
    NewPass pass;
    if (name == "1")
        pass.label = "as found";
    else if (name != std::to_string(number))
        pass.label = isNumber(name) ? "pass " + std::string(name) : std::string(name);
    return pass;
}

bool holdsSame(OpenBook& book, std::int64_t pass, const NewReading& each, int trial) {
    const Reading& reading = each.reading;
    if (reading.at == 0) return false; // measured now
    Query find = book.query("SELECT x.value, x.upper, x.word, x.typed, x.unit, x.taken, x.relation, o.at FROM reading "
                            "x JOIN act o ON o.id = coalesce(x.origin, x.act_id) WHERE x.pass_id = ? AND x.note = ? "
                            "AND x.dimension_id = ? AND x.trial = ? AND x.withdrawn = 0 AND " +
                            isHead(subject("reading")));
    find << pass << each.cell.note.value << book.dimensionRow(each.cell.dimension) << trial;
    if (!find.step()) return false;
    const auto wordKey = reading.word ? std::string(row(*reading.word).key) : std::string();
    const bool pair = !reading.word && reading.relation == Relation::between;
    const bool same = find.maybe(0) == (reading.word ? std::nullopt : std::optional(reading.count)) &&
                      find.maybe(1) == (pair ? std::optional(reading.upper) : std::nullopt) &&
                      (find.null(2) ? std::string() : find.text(2)) == wordKey && find.text(3) == reading.typed &&
                      find.text(4) == reading.typedUnit && (find.number(5) != 0) == reading.taken &&
                      find.text(6) == relationText(reading) && find.number(7) == reading.at;
    return same && !find.step(); // two that hold are a dispute, and this settles it
}

bool standsLater(OpenBook& book, std::int64_t pass, const NewReading& each, int trial) {
    if (each.reading.order == 0) return false; // taken as read now
    Query find = book.query("SELECT 1 FROM reading x JOIN act o ON o.id = coalesce(x.origin, x.act_id) WHERE x.pass_id "
                            "= ? AND x.note = ? AND x.dimension_id = ? AND x.trial = ? AND x.withdrawn = 0 AND "
                            "o.place > ? AND " +
                            isHead(subject("reading")));
    find << pass << each.cell.note.value << book.dimensionRow(each.cell.dimension) << trial << each.reading.order;
    return find.step();
}

} // namespace

ImportState::ImportState(ActUnderWay& act, std::int64_t piano, BroughtActs& brought, Origin origin)
    : m_act(act), m_piano(piano), m_brought(brought), m_origin(std::move(origin)) {
    for (PassRow& each : passRows(act.book(), piano))
        m_passes.push_back({std::move(each), false, false, {}, {}, {}});
    m_before = m_passes.size();
    for (GivenPass& each : m_passes)
        each.hadRows = hasReadings(act.book(), each.row.id);
}

GivenPass& ImportState::at(int pass) {
    if (pass < 1 || static_cast<std::size_t>(pass) > m_passes.size())
        fail(RefusalCode::noSuchPass, std::to_string(pass), std::to_string(m_passes.size()));
    return m_passes[static_cast<std::size_t>(pass) - 1];
}

int ImportState::add(const NewPass& pass) {
    // passes stand in the order of the acts that started them: from the second on each has one of its own
    const ActId import = m_act.id();
    const std::int64_t now = m_act.at();
    return add(pass, newUuid(), {m_passes.size() == m_before ? import : m_brought.fresh(now, "pass"), now});
}

int ImportState::add(const NewPass& pass, const Uuid& uuid, Start start) {
    const std::int64_t row = insertPass(m_act, m_piano, pass, uuid, start);
    const int number = static_cast<int>(m_passes.size()) + 1;
    m_passes.push_back({{row, uuid, number, pass.label}, true, false, {}, {}, pass.references});
    return number;
}

int ImportState::named(std::string_view name, std::string_view label) {
    const auto known = m_names.find(name);
    if (known != m_names.end()) return known->second;
    int number = 0;
    if (isNumber(name) && name.size() < 9) {
        const auto wanted = std::stoul(std::string(name));
        if (wanted >= 1 && wanted <= m_before) number = static_cast<int>(wanted);
    }
    for (std::size_t i = m_before; i-- > 0 && number == 0;)
        if (m_passes[i].row.label == name) number = m_passes[i].row.number;
    if (number == 0) {
        NewPass made = passOfFile(name, m_passes.size() + 1);
        if (!label.empty()) made.label = label;
        number = add(made);
    }
    m_names.emplace(name, number);
    return number;
}

void ImportState::put(int number, const NewReading& each) {
    requireStorable(each);
    OpenBook& book = m_act.book();
    GivenPass& pass = at(number);
    const std::int64_t row = pass.row.id;
    if (each.cell.dimension == dimension::keyHeight && !each.reading.word)
        pass.heights.try_emplace(datumOf(each.reading.count), each.reading.typed);
    if (!pass.hadRows) {
        int trial = each.reading.trial;
        if (trial == 0) trial = trialFor(each, trialsOf(book, row, each.cell), 0);
        insertReading(m_act, each, {row, trial, {}, m_origin(each.reading)});
        return;
    }
    auto known = pass.cells.find(each.cell);
    if (known == pass.cells.end())
        known = pass.cells.emplace(each.cell, GivenCell{trialsOf(book, row, each.cell), {}, false}).first;
    GivenCell& cell = known->second;
    const int trial = trialFor(each, cell.before, cell.given.empty() ? 0 : *cell.given.rbegin());
    if (!cell.given.insert(trial).second) fail(RefusalCode::usage, each.reading.typed, "duplicate");
    if (holdsSame(book, row, each, trial)) return;
    if (standsLater(book, row, each, trial)) {
        cell.later = true;
        return;
    }
    const auto replaces = toReplace(m_act, subject("reading"), readingKey(book, row, each.cell, trial));
    insertReading(m_act, each, {row, trial, replaces, m_origin(each.reading)});
}

void ImportState::markNotFitted(int number, Cell cell) {
    OpenBook& book = m_act.book();
    const std::int64_t pass = at(number).row.id;
    Query given = book.query("SELECT 1 FROM reading WHERE pass_id = ? AND note = ? AND dimension_id = ? AND act_id "
                             "= ?");
    given << pass << cell.note.value << book.dimensionRow(cell.dimension) << m_act.idOrNone();
    if (!given.step()) markCellNotFitted(m_act, pass, cell);
}

void ImportState::writeReferences(const GivenPass& pass) {
    OpenBook& book = m_act.book();
    if (pass.references.empty()) return;
    if (!pass.made) {
        std::map<DimensionId, std::string> fresh = pass.references;
        Query held = book.query("SELECT r.dimension_id, r.reference FROM pass_reference r JOIN pass_version x ON "
                                "x.pass_id = r.pass_id AND x.act_id = r.act_id WHERE x.pass_id = ? AND "
                                "x.withdrawn = 0 AND " +
                                isHead(subject("pass_version")));
        held << pass.row.id;
        while (held.step())
            if (const auto id = book.dimensionOf(held.number(0)); id && fresh.contains(*id))
                if (fresh[*id] == held.text(1)) fresh.erase(*id);
        if (!fresh.empty()) setReferences(m_act, pass.row.id, fresh);
        return;
    }
    for (const auto& [dimension, reference] : pass.references) {
        const std::int64_t id = book.dimensionRow(dimension);
        Query insert = book.query("INSERT OR REPLACE INTO pass_reference VALUES (?, ?, ?, ?)");
        insert << pass.row.id << m_act.id() << id << reference;
        insert.run();
    }
}

void ImportState::requireOneDatum() const {
    for (const GivenPass& pass : m_passes) {
        if (pass.heights.empty()) continue;
        const std::string datum = heightDatum(m_act.book(), pass.row.id);
        for (const auto& [other, typed] : pass.heights)
            if (other != datum) fail(RefusalCode::otherDatum, typed, datum);
    }
}

void ImportState::finish() {
    for (const GivenPass& pass : m_passes) {
        writeReferences(pass);
        // a first trial measured anew starts the cell anew: its further trials no longer count
        for (const auto& [cell, state] : pass.cells)
            for (const int trial : state.before.current)
                if (!state.later && state.given.contains(1) && !state.given.contains(trial))
                    takeBack(m_act, subject("reading"), readingKey(m_act.book(), pass.row.id, cell, trial));
    }
}

} // namespace hammerline
